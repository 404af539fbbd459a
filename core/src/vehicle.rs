//! Vehicles: axles, positions, which axles drive, what class they are.

pub mod hub;

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::measure::Load;

/// Left or right, seen by the driver facing forward.
///
/// ```
/// use lugbook::vehicle::Side;
/// // The driver's left, also when somebody stands before the vehicle.
/// assert_eq!(serde_json::to_string(&Side::Left)?, "\"left\"");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Side {
    /// The driver's left facing forward.
    Left,
    /// The driver's right facing forward.
    Right,
}

impl Side {
    /// The other side.
    ///
    /// ```
    /// use lugbook::vehicle::Side;
    /// assert_eq!(Side::Left.other(), Side::Right);
    /// ```
    pub fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }
}

/// Which of the wheels on one end of an axle.
///
/// ```
/// use lugbook::vehicle::{Place, Row};
/// let row = |name| Place::parse(name)?.position().map(|position| position.row);
/// assert_eq!((row("1L"), row("2LO"), row("2LI")), (Some(Row::Single), Some(Row::Outer), Some(Row::Inner)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Row {
    /// The only wheel on this end.
    Single,
    /// The outer wheel of a dual pair.
    Outer,
    /// The inner wheel of a dual pair.
    Inner,
}

/// A wheel position on an axle.
///
/// ```
/// use lugbook::vehicle::{Place, Position, Row, Side};
/// let inner = Position { axle: 2, side: Side::Right, row: Row::Inner };
/// assert_eq!(Place::parse("2RI"), Some(Place::Wheel(inner)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Position {
    /// Axle number from the front, starting at 1; a trailer's axles run on.
    pub axle: u8,
    /// Side of the vehicle.
    pub side: Side,
    /// Single, outer or inner.
    pub row: Row,
}

/// Where an assembly can be: on an axle, or carried as a spare.
///
/// ```
/// use lugbook::vehicle::{Place, Side};
/// assert_eq!(Place::parse("fl"), Some(Place::single(1, Side::Left)));
/// assert_eq!(Place::parse("SP"), Some(Place::Spare));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// On an axle.
    Wheel(Position),
    /// The spare carrier.
    Spare,
}

/// How two-axle positions are lettered for people. JSON always uses [`Letters::FrontFirst`].
///
/// ```
/// use lugbook::vehicle::{Layout, Letters, Place};
/// let car = Layout::two_axles(false);
/// let front_left = Place::parse("LF").unwrap();
/// assert_eq!(car.name(front_left, Letters::FrontFirst), "FL");
/// assert_eq!(car.name(front_left, Letters::SideFirst), "LF");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Letters {
    /// FL FR RL RR.
    #[default]
    FrontFirst,
    /// LF RF LR RR.
    SideFirst,
}

/// What a vehicle is, as far as rules tell vehicles apart.
///
/// ```
/// use lugbook::limits::limits;
/// use lugbook::vehicle::Class;
/// // Steer-axle rules tell classes apart: there is none for a car.
/// let steer = |class| limits().iter().any(|limit| limit.steer == Some(true) && limit.classes.contains(&class));
/// assert!(steer(Class::Truck) && !steer(Class::Car));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// Passenger car.
    Car,
    /// Pickup, van or sport utility on light tires.
    LightTruck,
    /// Truck or tractor over 10,000 lb (4,536 kg) gross.
    Truck,
    /// Bus.
    Bus,
    /// Trailer behind a car or light truck.
    LightTrailer,
    /// Trailer or semitrailer behind a truck.
    Trailer,
    /// Motorcycle.
    Motorcycle,
}

/// Which axles drive.
///
/// ```
/// use lugbook::vehicle::Drive;
/// // Nobody has looked yet: it is never guessed.
/// assert_eq!(Drive::default(), Drive::Unknown);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Drive {
    /// The front axle.
    Front,
    /// The rear axle or axles.
    Rear,
    /// All axles, always or by themselves.
    All,
    /// One axle, the other engaged by the driver.
    PartTime,
    /// Not known: no pattern may be named.
    #[default]
    Unknown,
    /// No axle drives: a trailer.
    None,
}

/// One axle.
///
/// ```
/// use lugbook::vehicle::Axle;
/// let duals = Axle { dual: true, steer: false, rating: "8600 kg".parse().ok() };
/// assert_eq!(duals.rating.unwrap().value(), 8600.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Axle {
    /// Two wheels on each end.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub dual: bool,
    /// Steered by the driver.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub steer: bool,
    /// What the axle may carry, from the plate, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rating: Option<Load>,
}

/// The axles of a vehicle and whether it carries a spare.
///
/// ```
/// use lugbook::vehicle::{Axle, Layout};
/// let truck = Layout {
///     axles: vec![
///         Axle { dual: false, steer: true, rating: None },
///         Axle { dual: true, steer: false, rating: None },
///     ],
///     spare: false,
/// };
/// let names: Vec<_> = truck.places().map(|place| truck.name(place, Default::default())).collect();
/// assert_eq!(names, ["1L", "1R", "2LO", "2LI", "2RI", "2RO"]);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Layout {
    /// From the front; at least one, at most eight.
    pub axles: Vec<Axle>,
    /// A spare is carried.
    pub spare: bool,
}

impl Layout {
    /// A two-axle vehicle with single wheels: a car or a light truck.
    ///
    /// ```
    /// use lugbook::vehicle::{Layout, Letters};
    /// let names: Vec<_> = Layout::two_axles(true).places().map(|p| p.text(2, false, Letters::FrontFirst)).collect();
    /// assert_eq!(names, ["FL", "FR", "RL", "RR", "SP"]);
    /// ```
    pub fn two_axles(spare: bool) -> Self {
        Self {
            axles: vec![
                Axle { dual: false, steer: true, rating: None },
                Axle { dual: false, steer: false, rating: None },
            ],
            spare,
        }
    }

    /// Whether positions are lettered FL … RR: two axles, single wheels.
    ///
    /// ```
    /// use lugbook::vehicle::Layout;
    /// let mut layout = Layout::two_axles(false);
    /// assert!(layout.lettered());
    /// layout.axles[1].dual = true;
    /// assert!(!layout.lettered(), "duals go by axle number");
    /// ```
    pub fn lettered(&self) -> bool {
        self.axles.len() == 2 && self.axles.iter().all(|axle| !axle.dual)
    }

    /// All wheel positions, axle by axle from the front: left outer, left
    /// inner, right inner, right outer.
    ///
    /// ```
    /// use lugbook::vehicle::Layout;
    /// assert_eq!(Layout::two_axles(true).positions().count(), 4, "the spare is no wheel position");
    /// ```
    pub fn positions(&self) -> impl Iterator<Item = Position> + '_ {
        self.axles.iter().zip(1u8..).flat_map(|(axle, number)| {
            let rows: &[(Side, Row)] = if axle.dual {
                &[
                    (Side::Left, Row::Outer),
                    (Side::Left, Row::Inner),
                    (Side::Right, Row::Inner),
                    (Side::Right, Row::Outer),
                ]
            } else {
                &[(Side::Left, Row::Single), (Side::Right, Row::Single)]
            };
            rows.iter().map(move |&(side, row)| Position { axle: number, side, row })
        })
    }

    /// All places: the wheel positions, then the spare when there is one.
    ///
    /// ```
    /// use lugbook::vehicle::Layout;
    /// assert_eq!(Layout::two_axles(true).places().count(), 5);
    /// ```
    pub fn places(&self) -> impl Iterator<Item = Place> + '_ {
        self.positions().map(Place::Wheel).chain(self.spare.then_some(Place::Spare))
    }

    /// Whether the place exists on this vehicle.
    ///
    /// ```
    /// use lugbook::vehicle::{Layout, Place};
    /// let car = Layout::two_axles(false);
    /// assert!(car.has(Place::parse("RR").unwrap()) && !car.has(Place::Spare));
    /// ```
    pub fn has(&self, place: Place) -> bool {
        self.places().any(|p| p == place)
    }

    /// The place's name on this vehicle: `FL` or `1L`, `2RO`, `SP`.
    ///
    /// ```
    /// use lugbook::vehicle::{Layout, Letters, Place};
    /// let mut truck = Layout::two_axles(false);
    /// truck.axles[1].dual = true;
    /// assert_eq!(truck.name(Place::parse("FL").unwrap(), Letters::FrontFirst), "1L");
    /// ```
    pub fn name(&self, place: Place, letters: Letters) -> String {
        place.text(self.axles.len(), self.axles.iter().any(|axle| axle.dual), letters)
    }

    /// Reads a place of this vehicle: FL or LF and so on, axle numbers, SP; any case.
    ///
    /// ```
    /// use lugbook::vehicle::{Layout, Letters};
    /// let car = Layout::two_axles(false);
    /// let front_left = car.parse("lf").unwrap();
    /// assert_eq!(car.name(front_left, Letters::FrontFirst), "FL");
    /// assert_eq!(car.parse("SP"), None);
    /// ```
    pub fn parse(&self, text: &str) -> Option<Place> {
        Place::parse(text).filter(|place| self.has(*place))
    }
}

/// What a vehicle has that changes how it is raised.
///
/// ```
/// use lugbook::vehicle::Equipment;
/// assert_eq!(serde_json::to_string(&Equipment::HighVoltage)?, "\"high-voltage\"");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Equipment {
    /// Springs of air that level by themselves.
    AirSuspension,
    /// A high-voltage battery: electric or hybrid.
    HighVoltage,
}

impl Position {
    /// The other wheel of its dual pair; `None` for a single wheel.
    ///
    /// ```
    /// use lugbook::vehicle::{Position, Row, Side};
    /// let inner = Position { axle: 2, side: Side::Left, row: Row::Inner };
    /// assert_eq!(inner.partner().map(|outer| outer.row), Some(Row::Outer));
    /// assert_eq!(Position::single(1, Side::Left).partner(), None);
    /// ```
    pub fn partner(self) -> Option<Self> {
        let row = match self.row {
            Row::Single => return None,
            Row::Outer => Row::Inner,
            Row::Inner => Row::Outer,
        };
        Some(Self { row, ..self })
    }

    /// A single-wheel position.
    ///
    /// ```
    /// use lugbook::vehicle::{Position, Row, Side};
    /// assert_eq!(Position::single(1, Side::Left).row, Row::Single);
    /// ```
    pub fn single(axle: u8, side: Side) -> Self {
        Self { axle, side, row: Row::Single }
    }
}

impl Place {
    /// A place on a single-wheel axle.
    ///
    /// ```
    /// use lugbook::vehicle::{Place, Side};
    /// assert_eq!(Place::single(2, Side::Right).to_string(), "RR");
    /// ```
    pub fn single(axle: u8, side: Side) -> Self {
        Self::Wheel(Position::single(axle, side))
    }

    /// The wheel position, unless it is the spare.
    ///
    /// ```
    /// use lugbook::vehicle::{Place, Side};
    /// assert_eq!(Place::single(2, Side::Right).position().map(|position| position.axle), Some(2));
    /// assert_eq!(Place::Spare.position(), None);
    /// ```
    pub fn position(self) -> Option<Position> {
        match self {
            Self::Wheel(position) => Some(position),
            Self::Spare => None,
        }
    }

    /// Which of the wheels on its end of the axle; `None` for the spare.
    ///
    /// ```
    /// use lugbook::vehicle::{Place, Row};
    /// assert_eq!(Place::parse("2LI").and_then(Place::row), Some(Row::Inner));
    /// assert_eq!(Place::Spare.row(), None);
    /// ```
    pub fn row(self) -> Option<Row> {
        self.position().map(|position| position.row)
    }

    /// The other wheel of its dual pair; `None` for single wheels and the spare.
    ///
    /// ```
    /// use lugbook::vehicle::Place;
    /// assert_eq!(Place::parse("2LO").and_then(Place::partner), Place::parse("2LI"));
    /// ```
    pub fn partner(self) -> Option<Self> {
        self.position().and_then(Position::partner).map(Self::Wheel)
    }

    /// The name on a vehicle with so many axles, with or without duals.
    ///
    /// ```
    /// use lugbook::vehicle::{Letters, Place, Side};
    /// let rear_left = Place::single(2, Side::Left);
    /// assert_eq!(rear_left.text(2, false, Letters::FrontFirst), "RL");
    /// assert_eq!(rear_left.text(3, false, Letters::FrontFirst), "2L");
    /// ```
    pub fn text(self, axles: usize, duals: bool, letters: Letters) -> String {
        let Self::Wheel(position) = self else { return "SP".to_owned() };
        let side = match position.side {
            Side::Left => 'L',
            Side::Right => 'R',
        };
        if axles == 2 && !duals {
            let end = if position.axle == 1 { 'F' } else { 'R' };
            return match letters {
                Letters::FrontFirst => format!("{end}{side}"),
                Letters::SideFirst => format!("{side}{end}"),
            };
        }
        let row = match position.row {
            Row::Single => "",
            Row::Outer => "O",
            Row::Inner => "I",
        };
        format!("{}{side}{row}", position.axle)
    }

    /// Reads a name in any of the forms a person uses.
    ///
    /// ```
    /// use lugbook::vehicle::Place;
    /// assert_eq!(Place::parse("rl"), Place::parse("2L"));
    /// assert_eq!(Place::parse("front"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Self> {
        let text = text.trim().to_ascii_uppercase();
        match text.as_str() {
            "SP" => return Some(Self::Spare),
            "FL" | "LF" => return Some(Self::single(1, Side::Left)),
            "FR" | "RF" => return Some(Self::single(1, Side::Right)),
            "RL" | "LR" => return Some(Self::single(2, Side::Left)),
            "RR" => return Some(Self::single(2, Side::Right)),
            _ => {}
        }
        let letters = text.trim_start_matches(|c: char| c.is_ascii_digit());
        let axle: u8 = text.strip_suffix(letters)?.parse().ok().filter(|n| (1..=99).contains(n))?;
        let (side, row) = match letters {
            "L" => (Side::Left, Row::Single),
            "R" => (Side::Right, Row::Single),
            "LO" => (Side::Left, Row::Outer),
            "LI" => (Side::Left, Row::Inner),
            "RO" => (Side::Right, Row::Outer),
            "RI" => (Side::Right, Row::Inner),
            _ => return None,
        };
        Some(Self::Wheel(Position { axle, side, row }))
    }
}

impl fmt::Display for Place {
    /// The name as on a two-axle single-wheel vehicle where it can be, else by axle number.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let lettered = matches!(self, Self::Wheel(p) if p.axle <= 2 && p.row == Row::Single);
        f.write_str(&self.text(if lettered { 2 } else { 3 }, !lettered, Letters::FrontFirst))
    }
}
