//! What would make a reading better, by what was seen of it.

use serde::Serialize;

use super::reading::Sight;
use super::ring::Ring;

/// What to do differently when the photo is taken again.
///
/// ```
/// use lugbook::sight::Hint;
/// assert_eq!(serde_json::to_value(Hint::HoldSquare)?, "hold-square");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hint {
    /// Lettering has too few pixels.
    Closer,
    /// The wheel is seen from the side.
    HoldSquare,
    /// Lettering stands out so little that light from the side would help.
    LightFromTheSide,
    /// Lettering was found, but little of it can be read.
    Wipe,
    /// No wheel and no lettering were found.
    NothingToRead,
}

/// The one close-up that would settle most.
///
/// ```
/// use lugbook::sight::{Ask, Part};
/// let ask = Ask { part: Part::Size, hour: Some(4) };
/// assert_eq!(serde_json::to_value(ask)?, serde_json::json!({"part": "size", "hour": 4}));
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Ask {
    /// What is to be seen on it.
    pub part: Part,
    /// The hour of a clock's face where it seems to stand, 1 to 12; `None` where nothing hints at a place.
    pub hour: Option<u8>,
}

/// Part of a marking.
///
/// ```
/// use lugbook::sight::Part;
/// assert_eq!(serde_json::to_value(Part::Date)?, "date");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// Size with service description.
    Size,
    /// The date behind `DOT`.
    Date,
    /// The whole identification number behind `DOT`.
    Number,
}

/// Below these odds a close-up is asked for rather than a guess offered.
pub const UNSURE: f64 = 0.6;
/// Fewer pixels between rim and outer edge than this, and small lettering is lost.
const LEAST_TALL: f64 = 200.0;
/// More than this long over short, and lettering is pressed together.
const MOST_STRETCH: f64 = 1.2;
/// Below this mean confidence lettering counts as hard to read.
const LEAST_MEAN: f32 = 0.72;
/// A whole wheel has more lines than this.
const FEW_LINES: usize = 8;

pub(super) fn hints(rings: &[Option<Ring>], lines: usize, mean: f32, sight: &Sight) -> Vec<Hint> {
    let sure = |suggestions: &[super::Suggestion]| suggestions.first().is_some_and(|best| best.odds >= UNSURE);
    // Nothing speaks against a photo that was read.
    if sure(&sight.size) && (sure(&sight.date) || sure(&sight.tin)) {
        return Vec::new();
    }
    if lines == 0 {
        return vec![Hint::NothingToRead];
    }
    let mut hints = Vec::new();
    let tall = |ring: &Ring| ring.outer.mean_radius() - ring.rim.mean_radius();
    if rings.iter().flatten().any(|ring| tall(ring) < LEAST_TALL) {
        hints.push(Hint::Closer);
    }
    if rings.iter().flatten().any(|ring| ring.rim.stretch() > MOST_STRETCH) {
        hints.push(Hint::HoldSquare);
    }
    let whole = rings.iter().any(Option::is_some);
    if whole && lines < FEW_LINES {
        hints.push(Hint::LightFromTheSide);
    }
    if mean < LEAST_MEAN {
        hints.push(Hint::Wipe);
    }
    hints
}

pub(super) fn ask(sight: &Sight) -> Option<Ask> {
    let unsure = |suggestions: &[super::Suggestion]| suggestions.first().is_none_or(|best| best.odds < UNSURE);
    let hour = |suggestions: &[super::Suggestion]| suggestions.first().and_then(|best| best.hour);
    if unsure(&sight.size) {
        return Some(Ask { part: Part::Size, hour: hour(&sight.size) });
    }
    if unsure(&sight.date) {
        let hour = hour(&sight.date).or_else(|| hour(&sight.tin));
        return Some(Ask { part: Part::Date, hour });
    }
    if unsure(&sight.tin) {
        let hour = hour(&sight.tin).or_else(|| hour(&sight.date));
        return Some(Ask { part: Part::Number, hour });
    }
    None
}

#[cfg(test)]
mod tests {
    use super::{Ask, Part, ask};
    use crate::sight::{Sight, Suggestion};

    #[test]
    fn one_close_up_is_asked_for_of_what_is_missing_first_size_then_date_then_number() {
        let read = |odds: f64, hour: u8| vec![Suggestion { text: "read".into(), odds, hour: Some(hour), cut: None }];
        let mut sight = Sight::default();
        assert_eq!(ask(&sight), Some(Ask { part: Part::Size, hour: None }));
        sight.size = read(0.9, 2);
        sight.tin = read(0.5, 7);
        assert_eq!(ask(&sight), Some(Ask { part: Part::Date, hour: Some(7) }));
        sight.date = read(0.9, 8);
        assert_eq!(ask(&sight), Some(Ask { part: Part::Number, hour: Some(7) }));
        sight.tin.clear();
        assert_eq!(ask(&sight), Some(Ask { part: Part::Number, hour: Some(8) }));
        sight.tin = read(0.7, 7);
        assert_eq!(ask(&sight), None);
    }
}
