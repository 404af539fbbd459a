//! The file form of a request, in TOML.
//!
//! ```
//! use lugbook::rotation::{plan, RequestFile};
//! let file = RequestFile::read(r#"
//!     drive = "front"
//!     class = "car"
//!     horizon = 4
//!     interval_km = 10000
//!
//!     [[tires]]
//!     at = "FL"
//!     size = "225/45R17"
//!     service = "91W"
//!     depth_mm = [6.1, 6.4, 6.2]
//!     rate_mm_per_1000_km = 0.09
//!
//!     [[tires]]
//!     at = "FR"
//!     depth_32 = [8, 8]
//!
//!     [[tires]]
//!     at = "RL"
//!
//!     [[tires]]
//!     at = "RR"
//! "#)?;
//! let answer = plan(&file.request()?)?;
//! assert_eq!(answer.plans[0].pattern.code(), "forward-cross");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::calendar::Age;
use crate::limits::Region;
use crate::measure::{Depth, DepthUnit, Distance, DistanceUnit, Load, LoadUnit, Misread};
use crate::sidewall::{Service, Size};
use crate::vehicle::{Axle, Class, Drive, Layout, Place, Row, Side};

use super::facts::{AxleFacts, LOAD_BY_INDEX, LOAD_PRINTED, Limit, Rate, Request, TireFacts, Uncertainty, WheelFacts};
use super::mistake::{MOST_AXLES, MOST_VISITS, Mistake};
use super::pattern::Pattern;

/// A request as a file holds it. Unknown keys are refused, so that a slip of the
/// pen is noticed; `[gear]` is another room's and passed over.
///
/// ```
/// use lugbook::rotation::RequestFile;
/// let file = RequestFile::read("class = \"car\"\ndrive = \"rear\"\n[[tires]]\nat = \"FL\"\ndepth_mm = 6.5\n")?;
/// assert_eq!((file.horizon, file.tires.len()), (1, 1));
/// # Ok::<(), lugbook::rotation::FileMistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RequestFile {
    /// Which axles drive: `front`, `rear`, `all`, `part-time`, `none`, `unknown`.
    #[serde(default)]
    pub drive: Drive,
    /// What the vehicle is: `car`, `light-truck`, `truck`, `bus`, `light-trailer`, `trailer`, `motorcycle`.
    pub class: Class,
    /// How many visits to plan, this one included.
    #[serde(default = "one")]
    pub horizon: u32,
    /// Distance between visits, km.
    #[serde(default)]
    pub interval_km: Option<f64>,
    /// Distance to the next visit, km, when it is another.
    #[serde(default)]
    pub next_visit_km: Option<f64>,
    /// The pattern the vehicle's manual gives.
    #[serde(default)]
    pub makers_pattern: Option<String>,
    /// Whose limits of tread depth count.
    #[serde(default)]
    pub region: Option<Region>,
    /// Tires may be turned round on their rims.
    #[serde(default)]
    pub remount_allowed: bool,
    /// What one remounted tire must gain, mm.
    #[serde(default)]
    pub remount_price_mm: Option<f64>,
    /// Some tires have just been replaced.
    #[serde(default)]
    pub after_part_replacement: bool,
    /// The speed the tires must stand, km/h.
    #[serde(default)]
    pub needed_speed_kmh: Option<f64>,
    /// Half the width of a depth reading's interval, mm.
    #[serde(default)]
    pub uncertainty_mm: Option<f64>,
    /// What is known of the axles.
    #[serde(default)]
    pub axles: Vec<AxleEntry>,
    /// The tires.
    #[serde(default)]
    pub tires: Vec<TireEntry>,
    /// What stands ready to lift with: not looked at here.
    #[serde(default)]
    pub gear: Option<toml::Value>,
}

/// An axle of a file.
///
/// ```
/// use lugbook::rotation::RequestFile;
/// let file = RequestFile::read("class = \"truck\"\n[[axles]]\naxle = 1\nrating_kg = 5450\n")?;
/// assert_eq!(file.axles[0].rating_kg, Some(5450.0));
/// # Ok::<(), lugbook::rotation::FileMistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AxleEntry {
    /// Its number from the front, from 1.
    pub axle: u8,
    /// Steered by the driver; the first axle of anything but a trailer, unless said otherwise.
    #[serde(default)]
    pub steer: Option<bool>,
    /// What it may carry, kg.
    #[serde(default)]
    pub rating_kg: Option<f64>,
    /// The size it is made for.
    #[serde(default)]
    pub size: Option<String>,
    /// The wheel offset it needs, mm.
    #[serde(default)]
    pub offset_mm: Option<f64>,
    /// How much room its brakes need.
    #[serde(default)]
    pub brake_class: Option<u8>,
    /// A limit of tread depth in mm, the person's own.
    #[serde(default)]
    pub limit_mm: Option<f64>,
    /// The same in 1/32 in.
    #[serde(default)]
    pub limit_32: Option<f64>,
    /// The cold placard pressure, kPa.
    #[serde(default)]
    pub placard_kpa: Option<f64>,
}

/// A tire of a file.
///
/// ```
/// use lugbook::rotation::RequestFile;
/// let file = RequestFile::read("class = \"car\"\ndrive = \"rear\"\n[[tires]]\nat = \"FL\"\ndepth_mm = 6.5\n")?;
/// assert_eq!((file.tires[0].at.as_str(), file.tires[0].directional), ("FL", None));
/// # Ok::<(), lugbook::rotation::FileMistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TireEntry {
    /// Where it is.
    pub at: String,
    /// Its size.
    #[serde(default)]
    pub size: Option<String>,
    /// Its service description.
    #[serde(default)]
    pub service: Option<String>,
    /// The load printed on its sidewall, kg; without it that of the load index counts, which only warns.
    #[serde(default)]
    pub load_kg: Option<f64>,
    /// The same as one of a pair.
    #[serde(default)]
    pub load_dual_kg: Option<f64>,
    /// It has a rotation arrow.
    #[serde(default)]
    pub directional: Option<bool>,
    /// The side its arrow suits.
    #[serde(default)]
    pub made_for: Option<Side>,
    /// It has an inside and an outside.
    #[serde(default)]
    pub asymmetric: Option<bool>,
    /// It is studded.
    #[serde(default)]
    pub studded: bool,
    /// It is a winter tire.
    #[serde(default)]
    pub winter: bool,
    /// It is a temporary spare.
    #[serde(default)]
    pub temporary: bool,
    /// It is retreaded.
    #[serde(default)]
    pub retread: bool,
    /// It is regrooved.
    #[serde(default)]
    pub regrooved: bool,
    /// Whole years since it was made.
    #[serde(default)]
    pub age_years: Option<u8>,
    /// Depths in mm from the outer groove inward; one number will do.
    #[serde(default)]
    pub depth_mm: Depths,
    /// Depths in 1/32 in.
    #[serde(default)]
    pub depth_32: Depths,
    /// Wear at the place where it is.
    #[serde(default)]
    pub rate_mm_per_1000_km: Option<f64>,
    /// Half the width of that rate's interval.
    #[serde(default)]
    pub rate_half_width: Option<f64>,
    /// Its wheel's offset, mm.
    #[serde(default)]
    pub offset_mm: Option<f64>,
    /// The highest brake class its wheel clears.
    #[serde(default)]
    pub brake_class: Option<u8>,
    /// Whether the nuts or bolts at hand fit its wheel's seats.
    #[serde(default)]
    pub seat_fits: Option<bool>,
}

/// One depth or several.
///
/// ```
/// use lugbook::rotation::{Depths, RequestFile};
/// let file = RequestFile::read("class = \"car\"\ndrive = \"rear\"\n[[tires]]\nat = \"FL\"\ndepth_mm = 6.5\n")?;
/// assert_eq!(file.tires[0].depth_mm, Depths::One(6.5));
/// # Ok::<(), lugbook::rotation::FileMistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(untagged)]
pub enum Depths {
    /// One groove.
    One(f64),
    /// From the outer groove inward.
    Several(Vec<f64>),
}

impl Default for Depths {
    fn default() -> Self {
        Self::Several(Vec::new())
    }
}

impl Depths {
    fn values(&self) -> &[f64] {
        match self {
            Self::One(value) => std::slice::from_ref(value),
            Self::Several(values) => values,
        }
    }
}

/// Why a file is no request.
///
/// ```
/// use lugbook::rotation::{FileMistake, RequestFile};
/// let slip = RequestFile::read("class = \"car\"\ncolor = 3\n");
/// assert!(matches!(slip, Err(FileMistake::NotARequest { line: 2, .. })));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, thiserror::Error)]
#[serde(rename_all = "kebab-case", tag = "mistake")]
pub enum FileMistake {
    /// It is not TOML, or has an unknown key or a value of another kind.
    #[error("line {line}: {message}")]
    NotARequest {
        /// The line from 1; 0 when it can't be told.
        line: usize,
        /// What the reader of the format says, in English.
        message: String,
    },
    /// No place of that name.
    #[error("no place {text}")]
    NoSuchPlace {
        /// What stands there.
        text: String,
    },
    /// No pattern of that name.
    #[error("no pattern {text}")]
    NoSuchPattern {
        /// What stands there.
        text: String,
    },
    /// A size that can't be read.
    #[error("no size {text}")]
    NotASize {
        /// What stands there.
        text: String,
    },
    /// A service description that can't be read.
    #[error("no service description {text}")]
    NotAService {
        /// What stands there.
        text: String,
    },
    /// A number that can't be such a reading.
    #[error("{field}: {why}")]
    Unreadable {
        /// The tire or axle, by its place or number; empty for the request itself.
        at: String,
        /// The key.
        field: &'static str,
        /// What stands there.
        given: String,
        /// Why not.
        #[serde(skip)]
        why: Misread,
    },
    /// A request that can't be planned.
    #[error(transparent)]
    Unplannable(Mistake),
}

fn one() -> u32 {
    1
}

fn unreadable(at: &str, field: &'static str, given: f64) -> impl Fn(Misread) -> FileMistake {
    let at = at.to_owned();
    move |why| FileMistake::Unreadable { at: at.clone(), field, given: given.to_string(), why }
}

impl RequestFile {
    /// Reads the text of a file.
    ///
    /// # Errors
    /// When it is not TOML, a key is unknown, or a value is of another kind.
    ///
    /// ```
    /// use lugbook::rotation::RequestFile;
    /// assert!(RequestFile::read("class = \"boat\"").is_err());
    /// ```
    pub fn read(text: &str) -> Result<Self, FileMistake> {
        toml::from_str(text).map_err(|error: toml::de::Error| {
            let before = error.span().and_then(|span| text.get(..span.start));
            let line = before.map_or(0, |before| before.matches('\n').count() + 1);
            FileMistake::NotARequest { line, message: error.message().lines().next().unwrap_or("").to_owned() }
        })
    }

    /// The request the file holds.
    ///
    /// # Errors
    /// The first thing in it that can't be read.
    ///
    /// ```
    /// use lugbook::rotation::RequestFile;
    /// let file = RequestFile::read("class = \"car\"\ndrive = \"rear\"\n[[tires]]\nat = \"FL\"\ndepth_mm = 6.5\n")?;
    /// // One wheel makes one end of an axle.
    /// assert_eq!(file.request()?.tires.len(), 1);
    /// # Ok::<(), lugbook::rotation::FileMistake>(())
    /// ```
    pub fn request(&self) -> Result<Request, FileMistake> {
        if self.tires.is_empty() {
            return Err(FileMistake::Unplannable(Mistake::NoWheels));
        }
        let mut tires = Vec::with_capacity(self.tires.len());
        for entry in &self.tires {
            tires.push(entry.facts()?);
        }
        let layout = self.layout(&tires)?;
        let km = |field: &'static str, value: Option<f64>| {
            value.map(|km| Distance::new(km, DistanceUnit::Kilometre).map_err(unreadable("", field, km))).transpose()
        };
        let makers_pattern = match &self.makers_pattern {
            Some(text) => Some(text.parse::<Pattern>().map_err(|_| FileMistake::NoSuchPattern { text: text.clone() })?),
            None => None,
        };
        let mut axles = BTreeMap::new();
        for (number, axle) in (1u8..).zip(&layout.axles) {
            let entry = self.axles.iter().find(|entry| entry.axle == number).cloned().unwrap_or_default();
            axles.insert(number, self.axle_facts(&entry, number, axle)?);
        }
        let mut request = Request::new(layout, self.class, self.drive, tires);
        request.horizon = u8::try_from(self.horizon)
            .map_err(|_| FileMistake::Unplannable(Mistake::Horizon { visits: self.horizon, most: MOST_VISITS }))?;
        request.interval = km("interval_km", self.interval_km)?;
        request.next_visit = km("next_visit_km", self.next_visit_km)?;
        request.makers_pattern = makers_pattern;
        request.axles = axles;
        request.remount_allowed = self.remount_allowed;
        request.remount_price_mm = self.remount_price_mm.unwrap_or(request.remount_price_mm);
        request.after_part_replacement = self.after_part_replacement;
        request.needed_speed_kmh = self.needed_speed_kmh;
        if let Some(depth_mm) = self.uncertainty_mm {
            request.uncertainty = Uncertainty { depth_mm };
        }
        Ok(request)
    }

    /// The axles that the places of the tires make.
    fn layout(&self, tires: &[TireFacts]) -> Result<Layout, FileMistake> {
        let positions = || tires.iter().filter_map(|tire| tire.at.position());
        let last = positions().map(|position| position.axle).max().unwrap_or(0);
        let count = usize::from(last);
        if count == 0 {
            return Err(FileMistake::Unplannable(Mistake::NoWheels));
        }
        if count > MOST_AXLES {
            return Err(FileMistake::Unplannable(Mistake::TooManyAxles { axles: count, most: MOST_AXLES }));
        }
        if let Some(entry) = self.axles.iter().find(|entry| !(1..=last).contains(&entry.axle)) {
            return Err(FileMistake::NoSuchPlace { text: entry.axle.to_string() });
        }
        let trailer = self.drive == Drive::None || matches!(self.class, Class::Trailer | Class::LightTrailer);
        let mut axles = Vec::with_capacity(count);
        for number in 1..=last {
            let entry = self.axles.iter().find(|entry| entry.axle == number);
            let rating = match entry.and_then(|entry| entry.rating_kg) {
                Some(kg) => {
                    let at = number.to_string();
                    Some(Load::new(kg, LoadUnit::Kilogram).map_err(unreadable(&at, "rating_kg", kg))?)
                }
                None => None,
            };
            axles.push(Axle {
                dual: positions().any(|position| position.axle == number && position.row != Row::Single),
                steer: entry.and_then(|entry| entry.steer).unwrap_or(number == 1 && !trailer),
                rating,
            });
        }
        Ok(Layout { axles, spare: tires.iter().any(|tire| tire.at == Place::Spare) })
    }

    fn axle_facts(&self, entry: &AxleEntry, number: u8, axle: &Axle) -> Result<AxleFacts, FileMistake> {
        let at = number.to_string();
        let stated = match (entry.limit_mm, entry.limit_32) {
            (Some(mm), _) => Some(Depth::new(mm, DepthUnit::Millimetre).map_err(unreadable(&at, "limit_mm", mm))?),
            (None, Some(parts)) => {
                Some(Depth::new(parts, DepthUnit::ThirtySecond).map_err(unreadable(&at, "limit_32", parts))?)
            }
            (None, None) => None,
        };
        let own = crate::source::Source::read(crate::source::Grade::Design, "the request");
        let limit = stated.map(|depth| Limit { depth, source: own }).or_else(|| self.published(axle));
        Ok(AxleFacts {
            size: entry.size.as_deref().map(canonical).transpose()?.map(|(text, _)| text),
            offset_mm: entry.offset_mm,
            brake_class: entry.brake_class,
            limit,
            placard_kpa: entry.placard_kpa,
        })
    }

    /// The published minimum for the class, region and axle.
    fn published(&self, axle: &Axle) -> Option<Limit> {
        let commercial = matches!(self.class, Class::Truck | Class::Bus | Class::Trailer);
        let usual = if commercial { Region::UsCommercial } else { Region::UsFederal };
        Limit::published(self.region.unwrap_or(usual), self.class, axle.steer)
    }
}

/// A size in canonical form, and its overall diameter.
fn canonical(text: &str) -> Result<(String, Option<Size>), FileMistake> {
    let size: Size = text.parse().map_err(|_| FileMistake::NotASize { text: text.chars().take(40).collect() })?;
    Ok((size.to_string(), Some(size)))
}

impl TireEntry {
    fn facts(&self) -> Result<TireFacts, FileMistake> {
        let place = Place::parse(&self.at)
            .ok_or_else(|| FileMistake::NoSuchPlace { text: self.at.chars().take(40).collect() })?;
        let mut tire = TireFacts::at(place);
        if let Some(text) = &self.size {
            let (text, size) = canonical(text)?;
            tire.size = Some(text);
            tire.overall_diameter_mm = size.and_then(|size| size.overall_diameter_mm());
            // No letter before the size, or P: a passenger size, unless it is a C or LT one.
            tire.passenger = size.map(|size| matches!(size.made_for(), None | Some(crate::sidewall::Use::Passenger)));
        }
        if let Some(text) = &self.service {
            let short = || text.chars().take(40).collect();
            let service: Service = text.parse().map_err(|_| FileMistake::NotAService { text: short() })?;
            tire.load_kg = service.load_kg();
            tire.load_source = LOAD_BY_INDEX;
            tire.load_dual_kg = service.load_kg_dual();
            tire.max_kmh = service.max_kmh().map(f64::from);
        }
        let printed = |field: &'static str, kg: Option<f64>| {
            kg.map(|kg| Load::new(kg, LoadUnit::Kilogram).map_err(unreadable(&self.at, field, kg))).transpose()
        };
        if let Some(single) = printed("load_kg", self.load_kg)? {
            tire.load_kg = Some(single.value());
            tire.load_dual_kg = printed("load_dual_kg", self.load_dual_kg)?.map(|dual| dual.value());
            tire.load_source = LOAD_PRINTED;
        }
        for (field, depths, unit) in
            [("depth_mm", &self.depth_mm, DepthUnit::Millimetre), ("depth_32", &self.depth_32, DepthUnit::ThirtySecond)]
        {
            for value in depths.values() {
                tire.depths.push(Depth::new(*value, unit).map_err(unreadable(&self.at, field, *value))?);
            }
        }
        tire.rate = self
            .rate_mm_per_1000_km
            .map(|mm_per_1000_km| Rate { mm_per_1000_km, half_width: self.rate_half_width.unwrap_or(0.0) });
        tire.directional = self.directional;
        tire.made_for = self.made_for;
        tire.asymmetric = self.asymmetric;
        tire.studded = self.studded;
        tire.winter = self.winter;
        tire.temporary = self.temporary;
        tire.retread = self.retread;
        tire.regrooved = self.regrooved;
        tire.age = self.age_years.map(|years| Age { years: i16::from(years), months: 0 });
        tire.wheel = WheelFacts { offset_mm: self.offset_mm, brake_class: self.brake_class, seat_fits: self.seat_fits };
        Ok(tire)
    }
}
