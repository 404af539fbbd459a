//! The gear at hand: what it may raise, what it may hold, and its ratings.

use serde::{Deserialize, Serialize};

use super::task::{Site, Vehicle};
use crate::caution::Circumstance;
use crate::measure::{Load, LoadUnit};
use crate::source::{Grade, Source};
use crate::vehicle::Side;

/// What kind of jack.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind};
/// let (gear, _) = Gear::of_code("roadside-jack").unwrap();
/// assert!(matches!(gear, Gear::Jack { jack: JackKind::Roadside, .. }));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum JackKind {
    /// A trolley jack.
    Floor,
    /// A bottle jack, set under an axle.
    Bottle,
    /// The vehicle's own jack.
    Roadside,
}

/// The gear at hand. Ratings as marked on the gear; `None` when it bears no mark.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind};
/// let rating = Some("2 t".parse()?);
/// let gear = Gear::Jack { jack: JackKind::Floor, rating, stands: 4, stand_rating: rating };
/// assert_eq!(gear, gear.clone());
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "kind")]
pub enum Gear {
    /// A lift with four arms: the wheels hang free.
    TwoPost {
        /// Of the lift.
        rating: Option<Load>,
    },
    /// A lift with two runways: the wheels stand on them, and bridge jacks with locks raise axle by axle.
    FourPost {
        /// Of the lift.
        rating: Option<Load>,
        /// Bridge jacks, at most two.
        bridges: u8,
        /// Of each bridge jack.
        bridge_rating: Option<Load>,
    },
    /// One jack that is used in turn, with or without stands.
    Jack {
        /// Its kind.
        jack: JackKind,
        /// Of the jack.
        rating: Option<Load>,
        /// Stands, at most sixteen.
        stands: u8,
        /// Of each stand.
        stand_rating: Option<Load>,
    },
}

/// One way to raise a part of the vehicle.
///
/// ```
/// use lugbook::lifting::Hoist;
/// use lugbook::vehicle::Side;
/// assert_ne!(Hoist::Axle { axle: 1 }, Hoist::Corner { axle: 1, side: Side::Left });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hoist {
    /// One end of one axle.
    Corner {
        /// Axle from the front, starting at 1.
        axle: u8,
        /// Which end.
        side: Side,
    },
    /// Both ends of one axle at once.
    Axle {
        /// Axle from the front, starting at 1.
        axle: u8,
    },
    /// The whole vehicle.
    Whole,
}

impl Hoist {
    /// The corners it raises, as a set: bit 2(axle - 1) is the axle's left end, the next bit its right end.
    pub(super) fn corners(self, axles: usize) -> u32 {
        match self {
            Self::Corner { axle, side } => corner_bit(axle, side),
            Self::Axle { axle } => corner_bit(axle, Side::Left) | corner_bit(axle, Side::Right),
            Self::Whole => (0..axles.saturating_mul(2)).fold(0, |set, bit| set | 1u32.wrapping_shl(bit as u32)),
        }
    }
}

/// The bit of one end of an axle.
pub(super) fn corner_bit(axle: u8, side: Side) -> u32 {
    let bit = u32::from(axle.saturating_sub(1)).saturating_mul(2) + u32::from(side == Side::Right);
    1u32.checked_shl(bit).unwrap_or(0)
}

/// Something about the gear that a person should know before starting; none of these refuses.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// use lugbook::lifting::{GearNote, GearPart};
/// // The vehicle was not weighed.
/// assert!(plan(&task)?.notes.contains(&GearNote::NotChecked { part: GearPart::Jack }));
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "note")]
pub enum GearNote {
    /// A rating or the weight is not known, so the gear was not checked against the load.
    NotChecked {
        /// What was not checked.
        part: GearPart,
    },
    /// The weights of the axles are not known: each was taken as this share of the whole.
    AxleShareAssumed {
        /// Percent of the vehicle's weight.
        percent: u8,
        /// Common practice, no source.
        source: Source,
    },
    /// Where the vehicle may be raised in the middle of an axle is not known: corners only.
    CornersOnly,
}

/// A part of the gear that has a rating.
///
/// ```
/// use lugbook::lifting::GearPart;
/// use lugbook::words::{Speech, Words};
/// assert_ne!(GearPart::Jack, GearPart::Stand);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum GearPart {
    /// The lift.
    Lift,
    /// A bridge jack.
    BridgeJack,
    /// The jack.
    Jack,
    /// A stand.
    Stand,
}

/// Gear rated below what it would have to carry.
///
/// ```
/// use lugbook::lifting::{Refusal, Request, plan};
/// let task = Request::read(r#"
///     [vehicle]
///     weight = "3 t"
///     [gear]
///     kind = "floor-jack"
///     rating = "0.5 t"
///     stands = 1
///     [moves]
///     FL = "FL"
/// "#)?;
/// let Err(Refusal::Overloaded { parts }) = plan(&task) else { panic!() };
/// assert_eq!(parts[0].rating, "0.5 t".parse().unwrap());
/// # Ok::<(), lugbook::lifting::BadRequest>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Overload {
    /// The part.
    pub part: GearPart,
    /// Its rating.
    pub rating: Load,
    /// What it would have to carry.
    pub load: Load,
    /// The rule: the rating must be enough for the load. Only a secondary
    /// account of it was read; that gear fails above its rating is mechanics.
    pub source: Source,
}

/// The rating must be marked and enough for the load: 29 CFR 1910.244(a)(1), read in a secondary page;
/// that a jack can't be asked to carry more than it is built for is mechanics.
pub const RATING: Source = Source::read(Grade::Computed, "29 CFR 1910.244(a)(1)");

/// The share of the weight taken for one axle when the axles' own weights are not
/// known, in percent (common practice, no source).
pub const AXLE_SHARE: u8 = 60;

/// What the gear allows for this vehicle.
#[derive(Debug, Clone)]
pub(super) struct Rules {
    /// Ways to raise, in a fixed order.
    pub hoists: Vec<Hoist>,
    /// How many corners may be up at a time.
    pub most_up: u32,
    /// What is worth telling.
    pub notes: Vec<GearNote>,
    /// Ways left out because of a rating.
    pub overloads: Vec<Overload>,
}

/// Loads in kilograms, where they are known.
struct Loads {
    whole: Option<f64>,
    axles: Vec<Option<f64>>,
    assumed: bool,
}

impl Loads {
    fn of(vehicle: &Vehicle) -> Self {
        let kilograms = |load: &Load| load.in_unit(LoadUnit::Kilogram);
        let own: Vec<Option<f64>> = vehicle.axle_weights.iter().map(|load| load.as_ref().map(kilograms)).collect();
        let all: Option<f64> = own.iter().copied().sum();
        let whole = vehicle.weight.as_ref().map(kilograms).or(all.filter(|_| !own.is_empty()));
        let share = whole.map(|whole| whole * f64::from(AXLE_SHARE) / 100.0);
        let count = vehicle.layout.axles.len();
        let axles: Vec<_> = (0..count).map(|at| own.get(at).copied().flatten().or(share)).collect();
        let assumed = share.is_some() && (0..count).any(|at| own.get(at).copied().flatten().is_none());
        Self { whole, axles, assumed }
    }

    fn of_hoist(&self, hoist: Hoist) -> Option<f64> {
        match hoist {
            Hoist::Whole => self.whole,
            Hoist::Axle { axle } => self.axle(axle),
            Hoist::Corner { axle, .. } => self.axle(axle).map(|load| load / 2.0),
        }
    }

    fn axle(&self, axle: u8) -> Option<f64> {
        self.axles.get(usize::from(axle.checked_sub(1)?)).copied().flatten()
    }
}

/// Judges one part against the load it would carry.
fn judge(
    part: GearPart,
    rating: Option<Load>,
    load: Option<f64>,
    notes: &mut Vec<GearNote>,
    overloads: &mut Vec<Overload>,
) -> bool {
    let (Some(rating), Some(load)) = (rating, load) else {
        let note = GearNote::NotChecked { part };
        if !notes.contains(&note) {
            notes.push(note);
        }
        return true;
    };
    if rating.in_unit(LoadUnit::Kilogram) >= load {
        return true;
    }
    if let Ok(load) = Load::new(load, LoadUnit::Kilogram) {
        let overload = Overload { part, rating, load, source: RATING };
        if !overloads.contains(&overload) {
            overloads.push(overload);
        }
    }
    false
}

impl Gear {
    /// The gear a mechanic names in a job, with the site that goes with it: a jack and
    /// two stands, a jack alone, the vehicle's own jack at the roadside. Ratings are
    /// not known.
    ///
    /// ```
    /// use lugbook::lifting::{Gear, Site};
    /// let (gear, site) = Gear::of_code("roadside-jack").unwrap();
    /// assert_eq!(site, Site::Roadside);
    /// assert!(matches!(gear, Gear::Jack { stands: 0, .. }));
    /// assert!(Gear::of_code("a plank").is_none());
    /// ```
    pub fn of_code(code: &str) -> Option<(Self, Site)> {
        let (jack, stands, site) = match code {
            "jack-two-stands" => (JackKind::Floor, 2, Site::Yard),
            "jack-alone" => (JackKind::Floor, 0, Site::Yard),
            "roadside-jack" => (JackKind::Roadside, 0, Site::Roadside),
            _ => return None,
        };
        Some((Self::Jack { jack, rating: None, stands, stand_rating: None }, site))
    }

    /// What it allows for this vehicle.
    pub(super) fn rules(&self, vehicle: &Vehicle) -> Rules {
        let loads = Loads::of(vehicle);
        let (mut notes, mut overloads) = (Vec::new(), Vec::new());
        let axles = vehicle.layout.axles.len();
        let numbers = || (1u8..).take(axles);
        let corners = || numbers().flat_map(|axle| [Side::Left, Side::Right].map(|side| Hoist::Corner { axle, side }));
        let mut fits = |part, rating, hoist| judge(part, rating, loads.of_hoist(hoist), &mut notes, &mut overloads);
        let (hoists, most_up): (Vec<Hoist>, u32) = match *self {
            Self::TwoPost { rating } => {
                let fit = axles == 2 && fits(GearPart::Lift, rating, Hoist::Whole);
                (if fit { vec![Hoist::Whole] } else { Vec::new() }, u32::MAX)
            }
            Self::FourPost { rating, bridges, bridge_rating } => {
                let lift = fits(GearPart::Lift, rating, Hoist::Whole);
                let hoists = numbers()
                    .map(|axle| Hoist::Axle { axle })
                    .filter(|hoist| bridges > 0 && fits(GearPart::BridgeJack, bridge_rating, *hoist) && lift)
                    .collect();
                (hoists, u32::from(bridges).saturating_mul(2))
            }
            Self::Jack { rating, stands: 0, .. } => {
                (corners().filter(|hoist| fits(GearPart::Jack, rating, *hoist)).collect(), 1)
            }
            Self::Jack { jack, rating, stands, stand_rating } => {
                let middles = numbers()
                    .filter(|axle| vehicle.middles.contains(axle) && stands >= 2 && jack != JackKind::Roadside)
                    .map(|axle| Hoist::Axle { axle });
                let hoists: Vec<_> = middles
                    .chain(corners())
                    .filter(|hoist| {
                        let held = match *hoist {
                            Hoist::Axle { axle } => Hoist::Corner { axle, side: Side::Left },
                            other => other,
                        };
                        fits(GearPart::Jack, rating, *hoist) & fits(GearPart::Stand, stand_rating, held)
                    })
                    .collect();
                (hoists, u32::from(stands))
            }
        };
        if loads.assumed && !matches!(self, Self::TwoPost { .. }) {
            notes.push(GearNote::AxleShareAssumed { percent: AXLE_SHARE, source: Source::PRACTICE });
        }
        let trolley = matches!(self, Self::Jack { jack: JackKind::Floor, stands: 2.., .. });
        if trolley && vehicle.middles.is_empty() {
            notes.push(GearNote::CornersOnly);
        }
        Rules { hoists, most_up, notes, overloads }
    }

    /// What holds the vehicle and where, as circumstances.
    ///
    /// ```
    /// use lugbook::caution::Circumstance;
    /// use lugbook::lifting::{Gear, Site};
    /// let (gear, site) = Gear::of_code("roadside-jack").unwrap();
    /// assert_eq!(gear.support(site), [Circumstance::JackAlone, Circumstance::Roadside]);
    /// assert_eq!(Gear::TwoPost { rating: None }.support(Site::Shop), [Circumstance::Lift]);
    /// ```
    pub fn support(&self, site: Site) -> Vec<Circumstance> {
        let support = match self {
            Self::TwoPost { .. } | Self::FourPost { .. } => Circumstance::Lift,
            Self::Jack { stands: 0, .. } => Circumstance::JackAlone,
            Self::Jack { .. } => Circumstance::Stands,
        };
        [Some(support), (site == Site::Roadside).then_some(Circumstance::Roadside)].into_iter().flatten().collect()
    }
}
