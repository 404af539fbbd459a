//! The request as a TOML file.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::gear::{Gear, JackKind};
use super::task::{Interchange, MOST_AXLES, Site, Spare, Task, Vehicle};
use crate::caution::Circumstance;
use crate::measure::{Load, Misread};
use crate::vehicle::{Axle, Layout, Place};

/// The most characters that are read.
const LONGEST: usize = 65_536;

/// What is asked, as it stands in the file.
///
/// ```
/// use lugbook::lifting::{Request, plan};
/// let task = Request::read(r#"
///     site = "yard"
///     tools = "hand"
///     [vehicle]
///     spare = "full-size"
///     weight = "4200 lb"
///     [gear]
///     kind = "floor-jack"
///     rating = "2.5 t"
///     [moves]
///     FL = "RR"
///     RR = "FL"
/// "#)?;
/// assert_eq!(plan(&task).map(|plan| plan.lifts), Ok(3));
/// # Ok::<(), lugbook::lifting::BadRequest>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Request {
    /// Where the work is done.
    #[serde(default)]
    pub site: Site,
    /// What turns the nuts.
    #[serde(default)]
    pub tools: Tools,
    /// The vehicle; a car with two axles and no spare when left out.
    #[serde(default)]
    pub vehicle: VehicleRequest,
    /// The gear.
    pub gear: GearRequest,
    /// From where to where; a wheel that goes to its own place comes off and on.
    pub moves: BTreeMap<String, String>,
}

/// What turns the nuts.
///
/// ```
/// use lugbook::lifting::Request;
/// let task = Request::read("tools = \"air\"\n[gear]\nkind = \"floor-jack\"\n[moves]\nFL = \"FL\"\n")?;
/// assert_eq!(task.here, [lugbook::caution::Circumstance::Air]);
/// # Ok::<(), lugbook::lifting::BadRequest>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tools {
    /// Hand tools.
    #[default]
    Hand,
    /// An air gun.
    Air,
    /// An electric gun.
    Electric,
}

/// The wheels on one end of an axle.
///
/// ```
/// use lugbook::lifting::{Request, RowKind};
/// let text = "[vehicle]\naxles = [\"single\", \"dual\"]\n[gear]\nkind = \"bottle-jack\"\n[moves]\n2LO = \"2LO\"\n";
/// assert!(Request::read(text)?.vehicle.layout.axles[1].dual);
/// assert_ne!(RowKind::Single, RowKind::Dual);
/// # Ok::<(), lugbook::lifting::BadRequest>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RowKind {
    /// One.
    Single,
    /// Two.
    Dual,
}

/// The vehicle in the file.
///
/// ```
/// use lugbook::lifting::{Spare, VehicleRequest};
/// let vehicle = VehicleRequest::default();
/// assert!(vehicle.axles.is_empty() && vehicle.spare == Spare::None);
/// ```
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct VehicleRequest {
    /// Each axle from the front; two with single wheels when empty.
    pub axles: Vec<RowKind>,
    /// The spare.
    pub spare: Spare,
    /// The whole vehicle's weight, with its unit.
    pub weight: Option<String>,
    /// Each axle's weight from the front, with its unit.
    pub axle_weights: Vec<String>,
    /// Axles that the manual allows to raise in the middle.
    pub jack_at_middle: Vec<u8>,
    /// Which wheel fits which hub.
    pub interchange: Interchange,
    /// Wheels too heavy for one person.
    pub heavy_wheels: bool,
}

/// The kind of gear in the file.
///
/// ```
/// use lugbook::lifting::Request;
/// let task = Request::read("[gear]\nkind = \"two-post-lift\"\n[moves]\nFL = \"FL\"\n")?;
/// assert_eq!(task.gear, lugbook::lifting::Gear::TwoPost { rating: None });
/// # Ok::<(), lugbook::lifting::BadRequest>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum GearKind {
    /// A two-post lift.
    TwoPostLift,
    /// A four-post lift with bridge jacks.
    FourPostLift,
    /// A floor jack.
    FloorJack,
    /// A bottle jack.
    BottleJack,
    /// The vehicle's own jack.
    RoadsideJack,
}

/// The gear in the file.
///
/// ```
/// use lugbook::lifting::{BadRequest, Request};
/// let text = "[gear]\nkind = \"two-post-lift\"\nstands = 2\n[moves]\nFL = \"FL\"\n";
/// assert_eq!(Request::read(text), Err(BadRequest::NotOfThisGear { field: "stands" }));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GearRequest {
    /// Its kind.
    pub kind: GearKind,
    /// The rating marked on the lift or jack, with its unit.
    #[serde(default)]
    pub rating: Option<String>,
    /// Stands.
    #[serde(default)]
    pub stands: u32,
    /// The rating of each stand, with its unit.
    #[serde(default)]
    pub stand_rating: Option<String>,
    /// Bridge jacks of a four-post lift.
    #[serde(default)]
    pub bridge_jacks: u32,
    /// The rating of each bridge jack, with its unit.
    #[serde(default)]
    pub bridge_jack_rating: Option<String>,
}

/// Why a file is no request.
///
/// ```
/// use lugbook::lifting::{BadRequest, Request};
/// let text = "[gear]\nkind = \"floor-jack\"\n[moves]\nXX = \"FL\"\n";
/// assert_eq!(Request::read(text), Err(BadRequest::NoSuchPlace { given: "XX".to_owned() }));
/// ```
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BadRequest {
    /// More text than is read.
    #[error("longer than {most} characters")]
    TooLong {
        /// The most.
        most: usize,
    },
    /// No TOML, or a field that is missing, unknown or of the wrong kind.
    #[error("line {line}: {said}")]
    NotToml {
        /// The line, from 1; 0 when the file as a whole is meant.
        line: usize,
        /// What the parser said, in English.
        said: String,
    },
    /// A weight or rating that can't be read.
    #[error("{field}: {given}: {why}")]
    Reading {
        /// The field.
        field: &'static str,
        /// What was given.
        given: String,
        /// Why not.
        why: Misread,
    },
    /// A weight or rating of zero.
    #[error("{field} is zero")]
    Zero {
        /// The field.
        field: &'static str,
    },
    /// A place that this vehicle does not have.
    #[error("no such place: {given}")]
    NoSuchPlace {
        /// What was given.
        given: String,
    },
    /// The same place twice under two names.
    #[error("named twice: {given}")]
    NamedTwice {
        /// What was given the second time.
        given: String,
    },
    /// An axle that this vehicle does not have.
    #[error("no such axle: {given}")]
    NoSuchAxle {
        /// What was given.
        given: u8,
    },
    /// More axles than are taken.
    #[error("more than {most} axles")]
    TooManyAxles {
        /// The most.
        most: usize,
    },
    /// A field that this kind of gear does not have.
    #[error("{field} does not belong to this gear")]
    NotOfThisGear {
        /// The field.
        field: &'static str,
    },
}

fn reading(field: &'static str, given: Option<&String>) -> Result<Option<Load>, BadRequest> {
    let Some(given) = given else { return Ok(None) };
    let load = Load::parse(given, None).map_err(|why| {
        let given = given.chars().take(40).collect();
        BadRequest::Reading { field, given, why }
    })?;
    if load.value() <= 0.0 { Err(BadRequest::Zero { field }) } else { Ok(Some(load)) }
}

impl Request {
    /// Reads a file's text.
    ///
    /// # Errors
    /// When it is no TOML of this form, or says something that can't be.
    ///
    /// ```
    /// use lugbook::lifting::{BadRequest, Request};
    /// assert!(matches!(Request::read("gear"), Err(BadRequest::NotToml { .. })));
    /// ```
    pub fn read(text: &str) -> Result<Task, BadRequest> {
        if text.len() > LONGEST {
            return Err(BadRequest::TooLong { most: LONGEST });
        }
        let request: Self = toml::from_str(text).map_err(|error| BadRequest::NotToml {
            line: error.span().map_or(0, |span| {
                text.get(..span.start).map_or(0, |before| before.matches('\n').count().saturating_add(1))
            }),
            said: error.message().lines().next().unwrap_or_default().to_owned(),
        })?;
        request.task()
    }

    /// The task that is asked.
    ///
    /// # Errors
    /// When it says something that can't be.
    ///
    /// ```
    /// use lugbook::lifting::Request;
    /// let task = Request::read("site = \"roadside\"\n[gear]\nkind = \"roadside-jack\"\n[moves]\nFL = \"FL\"\n")?;
    /// assert_eq!(task.site, lugbook::lifting::Site::Roadside);
    /// # Ok::<(), lugbook::lifting::BadRequest>(())
    /// ```
    pub fn task(&self) -> Result<Task, BadRequest> {
        let vehicle = self.vehicle.vehicle()?;
        let gear = self.gear.gear()?;
        let place = |given: &str| {
            vehicle
                .layout
                .parse(given)
                .ok_or_else(|| BadRequest::NoSuchPlace { given: given.chars().take(40).collect() })
        };
        let mut moves: Vec<(Place, Place)> = Vec::new();
        for (from, to) in &self.moves {
            let pair = (place(from)?, place(to)?);
            // FL and LF are one place under two names.
            if moves.iter().any(|(other, _)| *other == pair.0) {
                return Err(BadRequest::NamedTwice { given: from.chars().take(40).collect() });
            }
            moves.push(pair);
        }
        let tools = match self.tools {
            Tools::Hand => Circumstance::HandTools,
            Tools::Air => Circumstance::Air,
            Tools::Electric => Circumstance::Electric,
        };
        Ok(Task { vehicle, gear, site: self.site, moves, here: vec![tools] })
    }
}

impl VehicleRequest {
    fn vehicle(&self) -> Result<Vehicle, BadRequest> {
        if self.axles.len() > MOST_AXLES {
            return Err(BadRequest::TooManyAxles { most: MOST_AXLES });
        }
        let axle = |(at, rows): (usize, &RowKind)| Axle { dual: *rows == RowKind::Dual, steer: at == 0, rating: None };
        let layout = if self.axles.is_empty() {
            Layout::two_axles(false)
        } else {
            Layout { axles: self.axles.iter().enumerate().map(axle).collect(), spare: false }
        };
        let count = layout.axles.len();
        if let Some(given) = self.jack_at_middle.iter().find(|axle| **axle == 0 || usize::from(**axle) > count) {
            return Err(BadRequest::NoSuchAxle { given: *given });
        }
        if self.axle_weights.len() > count {
            return Err(BadRequest::NoSuchAxle { given: u8::try_from(self.axle_weights.len()).unwrap_or(u8::MAX) });
        }
        let axle_weights =
            self.axle_weights.iter().map(|text| reading("axle_weights", Some(text))).collect::<Result<_, _>>()?;
        Ok(Vehicle {
            weight: reading("weight", self.weight.as_ref())?,
            axle_weights,
            middles: self.jack_at_middle.clone(),
            interchange: self.interchange,
            heavy_wheels: self.heavy_wheels,
            ..Vehicle::of(layout, self.spare)
        })
    }
}

impl GearRequest {
    fn gear(&self) -> Result<Gear, BadRequest> {
        let rating = reading("rating", self.rating.as_ref())?;
        let stand_rating = reading("stand_rating", self.stand_rating.as_ref())?;
        let bridge_rating = reading("bridge_jack_rating", self.bridge_jack_rating.as_ref())?;
        let lift = matches!(self.kind, GearKind::TwoPostLift | GearKind::FourPostLift);
        let stray = [
            ("stands", lift && self.stands > 0),
            ("stand_rating", lift && stand_rating.is_some()),
            ("bridge_jacks", self.kind != GearKind::FourPostLift && self.bridge_jacks > 0),
            ("bridge_jack_rating", self.kind != GearKind::FourPostLift && bridge_rating.is_some()),
        ];
        if let Some((field, _)) = stray.into_iter().find(|(_, stray)| *stray) {
            return Err(BadRequest::NotOfThisGear { field });
        }
        // More than fits a count is more than is taken, and is told so.
        let count = |given: u32| u8::try_from(given).unwrap_or(u8::MAX);
        let jack = |jack| Gear::Jack { jack, rating, stands: count(self.stands), stand_rating };
        Ok(match self.kind {
            GearKind::TwoPostLift => Gear::TwoPost { rating },
            GearKind::FourPostLift => Gear::FourPost { rating, bridges: count(self.bridge_jacks), bridge_rating },
            GearKind::FloorJack => jack(JackKind::Floor),
            GearKind::BottleJack => jack(JackKind::Bottle),
            GearKind::RoadsideJack => jack(JackKind::Roadside),
        })
    }
}
