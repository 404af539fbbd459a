//! What the planner is told: the vehicle, its axles and its assemblies.

use std::collections::BTreeMap;

use crate::calendar::Age;
use crate::limits::{self, Region};
use crate::measure::{Depth, DepthUnit, Distance, DistanceUnit};
use crate::source::{Grade, Source};
use crate::vehicle::{Class, Drive, Layout, Place, Side};

use super::Pattern;

/// A question to the planner: who should go where.
///
/// ```
/// use lugbook::rotation::{plan, Request, TireFacts};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// let layout = Layout::two_axles(false);
/// let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Front, tires);
/// let answer = plan(&request)?;
/// assert_eq!(answer.plans[0].pattern.code(), "forward-cross");
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Request {
    /// Axles and spare; one to six axles.
    pub layout: Layout,
    /// What the vehicle is: rules tell classes apart.
    pub class: Class,
    /// Which axles drive.
    pub drive: Drive,
    /// How many visits to plan, 1 to 8; this visit is the first.
    pub horizon: u8,
    /// The distance driven between visits, when known.
    pub interval: Option<Distance>,
    /// The distance to the next visit, when it differs from the interval.
    pub next_visit: Option<Distance>,
    /// The pattern the vehicle's manual gives, when it gives one.
    pub makers_pattern: Option<Pattern>,
    /// What is known of each axle, by its number from 1.
    pub axles: BTreeMap<u8, AxleFacts>,
    /// The assemblies: one at each wheel position, and the spare when there is one.
    pub tires: Vec<TireFacts>,
    /// Tires may be taken off the rim and mounted the other way round.
    pub remount_allowed: bool,
    /// How much closer together, in millimetres of final depth, one remounted
    /// tire must bring the set to be worth its work (a design choice).
    pub remount_price_mm: f64,
    /// Some of the tires, not all, have just been replaced.
    pub after_part_replacement: bool,
    /// The speed the tires must stand, in km/h, when a manual or placard gives it.
    pub needed_speed_kmh: Option<f64>,
    /// How far a forecast can be off.
    pub uncertainty: Uncertainty,
}

impl Request {
    /// A request for one visit with nothing known beyond the tires.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// assert_eq!((request.horizon, request.makers_pattern), (1, None));
    /// # assert!(plan(&request).is_ok());
    /// ```
    pub fn new(layout: Layout, class: Class, drive: Drive, tires: Vec<TireFacts>) -> Self {
        Self {
            layout,
            class,
            drive,
            horizon: 1,
            interval: None,
            next_visit: None,
            makers_pattern: None,
            axles: BTreeMap::new(),
            tires,
            remount_allowed: false,
            remount_price_mm: 0.5,
            after_part_replacement: false,
            needed_speed_kmh: None,
            uncertainty: Uncertainty::default(),
        }
    }
}

/// How far a forecast depth can be off, beyond each rate's own interval.
///
/// ```
/// use lugbook::rotation::Uncertainty;
/// assert!((Uncertainty::default().depth_mm - 0.396875).abs() < 1e-9);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uncertainty {
    /// Half the width of a depth reading's interval, in mm.
    pub depth_mm: f64,
}

impl Default for Uncertainty {
    /// Half of 1/32 in: the step of a common tread gauge.
    fn default() -> Self {
        Self { depth_mm: crate::measure::THIRTY_SECOND_MM / 2.0 }
    }
}

/// What is known of an axle. Unknown stays `None` and refuses nothing.
///
/// ```
/// use lugbook::rotation::{AxleFacts, Limit};
/// let axle = AxleFacts { limit: Limit::wear_bars(), ..AxleFacts::default() };
/// assert!(axle.size.is_none() && axle.limit.is_some());
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AxleFacts {
    /// The size the axle is made for, in canonical form; otherwise the size fitted there counts.
    pub size: Option<String>,
    /// The wheel offset the axle needs, in mm; otherwise the offset fitted there counts.
    pub offset_mm: Option<f64>,
    /// How much room the brakes need, as a class: a wheel of a lower class touches them.
    pub brake_class: Option<u8>,
    /// The least depth allowed there, with the source of the limit.
    pub limit: Option<Limit>,
    /// The cold placard pressure in kPa, for the load comparison.
    pub placard_kpa: Option<f64>,
}

/// A least depth and where it comes from.
///
/// ```
/// use lugbook::rotation::Limit;
/// let bars = Limit::wear_bars().unwrap();
/// assert!(bars.source.grade.may_refuse());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// The least depth.
    pub depth: Depth,
    /// The rule's source; only a grade that may refuse makes it a refusal.
    pub source: Source,
}

impl Limit {
    /// The depth of the molded wear bars, 2/32 in: where a tire ends when no
    /// other limit is given (FMVSS 119 wear bars, NHTSA letter 11497).
    ///
    /// ```
    /// use lugbook::rotation::Limit;
    /// assert_eq!(Limit::wear_bars().unwrap().mm(), 1.5875);
    /// ```
    pub fn wear_bars() -> Option<Self> {
        let depth = Depth::new(2.0, DepthUnit::ThirtySecond).ok()?;
        Some(Self { depth, source: Source::read(Grade::Rule, "NHTSA letter 11497: wear bars at 2/32 in") })
    }

    /// The strictest published minimum of a region for a class of vehicle, on a
    /// steered axle or another; `None` where none is carried. Advice and seasons stay out.
    ///
    /// ```
    /// use lugbook::limits::Region;
    /// use lugbook::rotation::Limit;
    /// use lugbook::vehicle::Class;
    /// let steer = Limit::published(Region::UsCommercial, Class::Truck, true).unwrap();
    /// assert_eq!(steer.depth.to_string(), "4 1/32in");
    /// assert_eq!(Limit::published(Region::Elsewhere, Class::Truck, true), None);
    /// ```
    pub fn published(region: Region, class: Class, steer: bool) -> Option<Self> {
        limits::limits()
            .iter()
            .filter(|limit| limit.force == limits::Force::Minimum && limit.season.is_none())
            .filter(|limit| limit.regions.contains(&region) && limit.classes.contains(&class))
            .filter(|limit| limit.steer.is_none_or(|only| only == steer))
            .max_by(|a, b| a.mm().total_cmp(&b.mm()))
            .and_then(|limit| Some(Self { depth: limit.depth()?, source: limit.source }))
    }

    /// The limit in mm.
    ///
    /// ```
    /// use lugbook::rotation::Limit;
    /// assert_eq!(Limit::wear_bars().map(|limit| limit.mm()), Some(1.5875));
    /// ```
    pub fn mm(&self) -> f64 {
        self.depth.in_unit(DepthUnit::Millimetre)
    }
}

/// How fast tread goes at a position, in mm per 1,000 km.
///
/// ```
/// use lugbook::rotation::Rate;
/// let rate = Rate { mm_per_1000_km: 0.1, half_width: 0.02 };
/// assert_eq!(rate.mm_per_1000_km * 15.0, 1.5);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rate {
    /// The best estimate.
    pub mm_per_1000_km: f64,
    /// Half the width of its interval.
    pub half_width: f64,
}

/// What is known of the rim an assembly is on.
///
/// ```
/// use lugbook::rotation::WheelFacts;
/// assert_eq!(WheelFacts::default().seat_fits, None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WheelFacts {
    /// Offset in mm.
    pub offset_mm: Option<f64>,
    /// The highest brake class it clears.
    pub brake_class: Option<u8>,
    /// Whether the nuts or bolts at hand fit its seats.
    pub seat_fits: Option<bool>,
}

/// An assembly, tire and wheel, and where it is now.
///
/// ```
/// use lugbook::rotation::TireFacts;
/// use lugbook::vehicle::Place;
/// let mut tire = TireFacts::at(Place::parse("FL").unwrap());
/// tire.studded = true;
/// assert!(tire.size.is_none() && tire.depths.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct TireFacts {
    /// Where it is now.
    pub at: Place,
    /// The size in canonical form, so that equal sizes are equal text.
    pub size: Option<String>,
    /// The overall diameter new, in mm.
    pub overall_diameter_mm: Option<f64>,
    /// What one tire carries in a single fitment, in kg.
    pub load_kg: Option<f64>,
    /// Where that figure comes from: only one that may refuse makes too little load a refusal.
    pub load_source: Source,
    /// What it carries in a dual fitment, in kg, when its sidewall says so.
    pub load_dual_kg: Option<f64>,
    /// The pressure that load is stated at, in kPa.
    pub reference_kpa: Option<f64>,
    /// A passenger (P-metric or Euro-metric) size.
    pub passenger: Option<bool>,
    /// The speed of its symbol, in km/h.
    pub max_kmh: Option<f64>,
    /// It has a rotation arrow.
    pub directional: Option<bool>,
    /// The side its arrow suits; otherwise the side where it is now.
    pub made_for: Option<Side>,
    /// It has an inside and an outside.
    pub asymmetric: Option<bool>,
    /// It has studs in its tread.
    pub studded: bool,
    /// It is a winter tire.
    pub winter: bool,
    /// It is a temporary spare.
    pub temporary: bool,
    /// It is retreaded.
    pub retread: bool,
    /// It is regrooved.
    pub regrooved: bool,
    /// Its age by the date code, when known.
    pub age: Option<Age>,
    /// Depths from the outer groove inward, up to six.
    pub depths: Vec<Depth>,
    /// How fast tread goes at the position where it is now.
    pub rate: Option<Rate>,
    /// The rim it is on.
    pub wheel: WheelFacts,
}

impl TireFacts {
    /// A tire of which nothing is known but its place.
    ///
    /// ```
    /// use lugbook::rotation::TireFacts;
    /// use lugbook::vehicle::Place;
    /// let tire = TireFacts::at(Place::parse("FL").unwrap());
    /// assert_eq!(tire.directional, None);
    /// ```
    pub fn at(place: Place) -> Self {
        Self {
            at: place,
            size: None,
            overall_diameter_mm: None,
            load_kg: None,
            load_source: LOAD_PRINTED,
            load_dual_kg: None,
            reference_kpa: None,
            passenger: None,
            max_kmh: None,
            directional: None,
            made_for: None,
            asymmetric: None,
            studded: false,
            winter: false,
            temporary: false,
            retread: false,
            regrooved: false,
            age: None,
            depths: Vec::new(),
            rate: None,
            wheel: WheelFacts::default(),
        }
    }

    /// The shallowest groove in mm: what limits look at.
    ///
    /// ```
    /// use lugbook::rotation::TireFacts;
    /// use lugbook::vehicle::Place;
    /// let mut tire = TireFacts::at(Place::parse("FL").unwrap());
    /// tire.depths = vec!["6.2 mm".parse()?, "5.8 mm".parse()?];
    /// assert_eq!(tire.least_mm(), Some(5.8));
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn least_mm(&self) -> Option<f64> {
        self.depths.iter().map(|d| d.in_unit(DepthUnit::Millimetre)).min_by(f64::total_cmp)
    }

    /// The mean of the grooves in mm: what the rolling diameter follows.
    ///
    /// ```
    /// use lugbook::rotation::TireFacts;
    /// use lugbook::vehicle::Place;
    /// let mut tire = TireFacts::at(Place::parse("FL").unwrap());
    /// tire.depths = vec!["6 mm".parse()?, "5 mm".parse()?];
    /// assert_eq!(tire.mean_mm(), Some(5.5));
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn mean_mm(&self) -> Option<f64> {
        let sum: f64 = self.depths.iter().map(|d| d.in_unit(DepthUnit::Millimetre)).sum();
        let count = u32::try_from(self.depths.len()).ok().filter(|n| *n > 0)?;
        Some(sum / f64::from(count))
    }

    /// The side its arrow suits, when it has an arrow.
    ///
    /// ```
    /// use lugbook::rotation::TireFacts;
    /// use lugbook::vehicle::Place;
    /// let mut tire = TireFacts::at(Place::parse("FL").unwrap());
    /// use lugbook::vehicle::Side;
    /// assert_eq!(tire.arrow_side(), Some(Side::Left));
    /// tire.made_for = Some(Side::Right);
    /// assert_eq!(tire.arrow_side(), Some(Side::Right));
    /// ```
    pub fn arrow_side(&self) -> Option<Side> {
        self.made_for.or(self.at.position().map(|p| p.side))
    }
}

/// A load in mass, as it stands on the sidewall: the tire maker's own word.
pub const LOAD_PRINTED: Source = Source::read(Grade::Manual, "the load printed on the sidewall");
/// A load by its index: no standard's text was read, at best two secondary tables that agree.
pub const LOAD_BY_INDEX: Source = Source::read(Grade::Secondary, "load index tables, secondary");

/// A distance in thousands of kilometres: the unit rates are told in.
pub(super) fn thousands_km(distance: Distance) -> f64 {
    distance.in_unit(DistanceUnit::Kilometre) / 1000.0
}
