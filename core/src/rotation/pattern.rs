//! The trade's names for rotations, and the moves each one makes.
//!
//! *Forward cross*, *rearward cross* and *side-to-side* are vehicle manuals'
//! names. In a forward cross the front assemblies go straight back and the rear
//! ones cross to the front; a rearward cross is its mirror. In a five-tire form
//! the spare takes the right rear, and whoever would have come there becomes the
//! spare (one secondary page for all of them; a second agrees for the rearward
//! cross).

use std::str::FromStr;

use serde::{Deserialize, Serialize};

use crate::vehicle::{Drive, Layout, Place, Position, Row, Side};

/// A rotation that has a name, or the two that need none.
///
/// ```
/// use lugbook::rotation::Pattern;
/// use lugbook::vehicle::Layout;
/// let moves = Pattern::ForwardCross.moves(&Layout::two_axles(false)).unwrap();
/// let text: Vec<_> = moves.iter().map(|(from, to)| format!("{from}-{to}")).collect();
/// assert_eq!(text, ["FL-RL", "FR-RR", "RL-FR", "RR-FL"]);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pattern {
    /// Rear straight forward, front crosses to the rear.
    RearwardCross,
    /// Front straight back, rear crosses to the front.
    ForwardCross,
    /// Both axles cross.
    X,
    /// Front and rear change places on each side.
    FrontToRear,
    /// Left and right change places on each axle.
    SideToSide,
    /// Rearward cross with a full-size spare.
    RearwardCrossFive,
    /// Forward cross with a full-size spare.
    ForwardCrossFive,
    /// X with a full-size spare.
    XFive,
    /// Front to rear with a full-size spare.
    FrontToRearFive,
    /// Nothing moves.
    LeaveAsIs,
    /// Moves without a name.
    Other,
}

/// Where the spare comes in, in the five-tire forms.
const RIGHT_REAR: Position = Position { axle: 2, side: Side::Right, row: Row::Single };

/// Text that names no pattern.
///
/// ```
/// use lugbook::rotation::Pattern;
/// assert!("backward".parse::<Pattern>().is_err());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not a pattern: {text}")]
pub struct NotAPattern {
    /// What was given.
    pub text: String,
}

/// Why the wheels of the driving axle go to the free axle: the driving axle
/// scrubs its tread most, so its tires are rested where they wear least, and
/// keep their side while the others take their turn. Common practice, no source.
///
/// ```
/// use lugbook::rotation::DriveMove;
/// use lugbook::vehicle::Drive;
/// assert_eq!(DriveMove::of(Drive::Front), Some(DriveMove::FrontStraightBack));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum DriveMove {
    /// Front wheels drive and steer and wear fastest: straight back.
    FrontStraightBack,
    /// Rear wheels drive: straight forward.
    RearStraightForward,
}

impl DriveMove {
    /// The sentence that fits a drive; `None` when it is unknown, nothing drives, or
    /// everything does and no axle is free.
    ///
    /// ```
    /// use lugbook::rotation::DriveMove;
    /// use lugbook::vehicle::Drive;
    /// // No axle is free.
    /// assert_eq!(DriveMove::of(Drive::All), None);
    /// ```
    pub fn of(drive: Drive) -> Option<Self> {
        match drive {
            Drive::Front => Some(Self::FrontStraightBack),
            Drive::Rear | Drive::PartTime => Some(Self::RearStraightForward),
            Drive::All | Drive::Unknown | Drive::None => None,
        }
    }
}

impl Pattern {
    /// The named rotations, in the order in which ties are always resolved.
    pub const NAMED: [Self; 9] = [
        Self::RearwardCross,
        Self::ForwardCross,
        Self::X,
        Self::FrontToRear,
        Self::SideToSide,
        Self::RearwardCrossFive,
        Self::ForwardCrossFive,
        Self::XFive,
        Self::FrontToRearFive,
    ];

    /// The code in data; never translated.
    ///
    /// ```
    /// use lugbook::rotation::Pattern;
    /// assert_eq!(Pattern::RearwardCross.code(), "rearward-cross");
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::RearwardCross => "rearward-cross",
            Self::ForwardCross => "forward-cross",
            Self::X => "x",
            Self::FrontToRear => "front-to-rear",
            Self::SideToSide => "side-to-side",
            Self::RearwardCrossFive => "rearward-cross-five",
            Self::ForwardCrossFive => "forward-cross-five",
            Self::XFive => "x-five",
            Self::FrontToRearFive => "front-to-rear-five",
            Self::LeaveAsIs => "leave-as-is",
            Self::Other => "other",
        }
    }

    /// Whether the spare takes part.
    ///
    /// ```
    /// use lugbook::rotation::Pattern;
    /// assert!(Pattern::XFive.takes_spare() && !Pattern::X.takes_spare());
    /// ```
    pub fn takes_spare(self) -> bool {
        matches!(self, Self::RearwardCrossFive | Self::ForwardCrossFive | Self::XFive | Self::FrontToRearFive)
    }

    /// The form with a full-size spare, where the trade has one.
    ///
    /// ```
    /// use lugbook::rotation::Pattern;
    /// assert_eq!(Pattern::X.with_spare(), Some(Pattern::XFive));
    /// ```
    pub fn with_spare(self) -> Option<Self> {
        match self {
            Self::RearwardCross => Some(Self::RearwardCrossFive),
            Self::ForwardCross => Some(Self::ForwardCrossFive),
            Self::X => Some(Self::XFive),
            Self::FrontToRear => Some(Self::FrontToRearFive),
            _ => None,
        }
    }

    /// The moves, from and to, in the layout's order of places; `None` when the
    /// pattern means nothing on this layout: names of front and rear need two
    /// axles with equally many wheels, the five-tire forms a car with a spare,
    /// and [`Pattern::Other`] has no moves of its own.
    ///
    /// ```
    /// use lugbook::rotation::Pattern;
    /// use lugbook::vehicle::Layout;
    /// assert_eq!(Pattern::X.moves(&Layout::two_axles(false)).map(|moves| moves.len()), Some(4));
    /// assert!(Pattern::XFive.moves(&Layout::two_axles(false)).is_none());
    /// ```
    pub fn moves(self, layout: &Layout) -> Option<Vec<(Place, Place)>> {
        if self == Self::LeaveAsIs {
            return Some(Vec::new());
        }
        if self == Self::Other || layout.positions().next().is_none() {
            return None;
        }
        let two_like = matches!(layout.axles.as_slice(), [a, b] if a.dual == b.dual);
        if self == Self::SideToSide {
            return Some(
                layout
                    .positions()
                    .map(|p| (Place::Wheel(p), Place::Wheel(Position { side: p.side.other(), ..p })))
                    .collect(),
            );
        }
        if !two_like || (self.takes_spare() && !(layout.spare && layout.lettered())) {
            return None;
        }
        Some(layout.places().filter_map(|place| self.to(place).map(|to| (place, to))).collect())
    }

    /// Where the pattern sends a place of a vehicle with two like axles.
    fn to(self, from: Place) -> Option<Place> {
        let Place::Wheel(at) = from else { return self.takes_spare().then_some(Place::Wheel(RIGHT_REAR)) };
        let front = at.axle == 1;
        let cross = match self {
            Self::X | Self::XFive => true,
            Self::ForwardCross | Self::ForwardCrossFive => !front,
            Self::RearwardCross | Self::RearwardCrossFive => front,
            _ => false,
        };
        let side = if cross { at.side.other() } else { at.side };
        let to = Position { axle: if front { 2 } else { 1 }, side, row: at.row };
        // The five-tire forms: whoever would come to the right rear rests on the
        // carrier, and the spare takes the right rear.
        if self.takes_spare() && to == RIGHT_REAR { Some(Place::Spare) } else { Some(Place::Wheel(to)) }
    }

    /// The pattern that makes exactly these moves; [`Pattern::LeaveAsIs`] for
    /// none, [`Pattern::Other`] when no name fits.
    ///
    /// ```
    /// use lugbook::rotation::Pattern;
    /// use lugbook::vehicle::Layout;
    /// let layout = Layout::two_axles(false);
    /// let moves = Pattern::X.moves(&layout).unwrap();
    /// assert_eq!(Pattern::of(&moves, &layout), Pattern::X);
    /// assert_eq!(Pattern::of(&[], &layout), Pattern::LeaveAsIs);
    /// ```
    pub fn of(moves: &[(Place, Place)], layout: &Layout) -> Self {
        let mut given: Vec<_> = moves.iter().copied().filter(|(from, to)| from != to).collect();
        given.sort();
        if given.is_empty() {
            return Self::LeaveAsIs;
        }
        Self::NAMED
            .into_iter()
            .find(|pattern| {
                pattern.moves(layout).is_some_and(|mut moves| {
                    moves.sort();
                    moves == given
                })
            })
            .unwrap_or(Self::Other)
    }
}

impl FromStr for Pattern {
    type Err = NotAPattern;

    fn from_str(text: &str) -> Result<Self, NotAPattern> {
        let code = text.trim().to_ascii_lowercase().replace([' ', '_'], "-");
        Self::NAMED
            .into_iter()
            .chain([Self::LeaveAsIs, Self::Other])
            .find(|pattern| pattern.code() == code)
            .ok_or_else(|| NotAPattern { text: text.to_owned() })
    }
}
