//! A signature as a finger draws it.

use std::fmt;
use std::str::FromStr;

/// A signature drawn on the screen, stroke by stroke: each point across and down in thousandths of a field that is
/// three times as wide as it is high.
///
/// As text, strokes are set apart by `;`, points by a blank, and a point is `across,down`.
///
/// ```
/// use lugbook::entry::Strokes;
/// let drawn: Strokes = "0,500 120,480;300,1000 310,990".parse()?;
/// assert_eq!(drawn.strokes()[1], [(300, 1000), (310, 990)]);
/// assert_eq!(drawn.to_string(), "0,500 120,480;300,1000 310,990");
/// # Ok::<(), lugbook::entry::NoStrokes>(())
/// ```
#[derive(Clone, PartialEq, Eq)]
pub struct Strokes(Vec<Vec<(u16, u16)>>);

/// Why a text is no drawn signature.
///
/// ```
/// use lugbook::entry::{NoStrokes, Strokes};
/// assert_eq!("".parse::<Strokes>(), Err(NoStrokes::Empty));
/// assert_eq!("1,2 3,1001".parse::<Strokes>(), Err(NoStrokes::Point));
/// assert_eq!("1,2 ".repeat(2_001).parse::<Strokes>(), Err(NoStrokes::TooLong));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum NoStrokes {
    /// Nothing was drawn, or a single point.
    #[error("nothing drawn")]
    Empty,
    /// A point that is not two numbers from 0 to 1,000.
    #[error("not a point")]
    Point,
    /// More than 60 strokes or 2,000 points.
    #[error("too much drawn")]
    TooLong,
}

impl Strokes {
    /// The most strokes that a signature has (own choice: initials, dots and flourishes are fewer than 20).
    ///
    /// ```
    /// assert_eq!(lugbook::entry::Strokes::MOST, 60);
    /// ```
    pub const MOST: usize = 60;
    /// The most points that a signature has (own choice: some 20 kB, and finer than a fingertip).
    ///
    /// ```
    /// assert_eq!(lugbook::entry::Strokes::MOST_POINTS, 2_000);
    /// ```
    pub const MOST_POINTS: usize = 2_000;

    /// The strokes, each of at least one point.
    ///
    /// ```
    /// let drawn: lugbook::entry::Strokes = "5,5;7,7".parse()?;
    /// assert_eq!(drawn.strokes(), [[(5, 5)], [(7, 7)]]);
    /// # Ok::<(), lugbook::entry::NoStrokes>(())
    /// ```
    pub fn strokes(&self) -> &[Vec<(u16, u16)>] {
        &self.0
    }
}

/// Without what is personal, which must not get into a log.
impl fmt::Debug for Strokes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Strokes").field("count", &self.0.len()).finish_non_exhaustive()
    }
}

impl FromStr for Strokes {
    type Err = NoStrokes;

    fn from_str(text: &str) -> Result<Self, NoStrokes> {
        let number = |text: &str| text.parse::<u16>().ok().filter(|number| *number <= 1_000).ok_or(NoStrokes::Point);
        let (mut strokes, mut points) = (Vec::new(), 0);
        for stroke in text.split(';').filter(|stroke| !stroke.trim().is_empty()) {
            let mut drawn = Vec::new();
            for point in stroke.split_whitespace() {
                points += 1;
                if points > Self::MOST_POINTS || strokes.len() == Self::MOST {
                    return Err(NoStrokes::TooLong);
                }
                let (across, down) = point.split_once(',').ok_or(NoStrokes::Point)?;
                drawn.push((number(across)?, number(down)?));
            }
            strokes.push(drawn);
        }
        if points < 2 { Err(NoStrokes::Empty) } else { Ok(Self(strokes)) }
    }
}

impl fmt::Display for Strokes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, stroke) in self.0.iter().enumerate() {
            f.write_str(if at > 0 { ";" } else { "" })?;
            for (at, (across, down)) in stroke.iter().enumerate() {
                write!(f, "{}{across},{down}", if at > 0 { " " } else { "" })?;
            }
        }
        Ok(())
    }
}
