//! What is asked: the vehicle, the gear, which wheel goes where.

use serde::{Deserialize, Serialize};

use super::gear::{Gear, Overload};
use crate::caution::Circumstance;
use crate::measure::Load;
use crate::vehicle::{Layout, Place};

/// The most axles a vehicle can have here.
pub const MOST_AXLES: usize = 8;
/// The most stands that are taken into account.
pub const MOST_STANDS: u8 = 16;
/// The most bridge jacks on a four-post lift.
pub const MOST_BRIDGES: u8 = 2;

/// What is carried as a spare.
///
/// ```
/// use lugbook::lifting::{Spare, Vehicle};
/// use lugbook::vehicle::Layout;
/// assert!(Vehicle::of(Layout::two_axles(false), Spare::Temporary).layout.spare);
/// assert_eq!(Spare::default(), Spare::None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Spare {
    /// Nothing.
    #[default]
    None,
    /// A temporary spare: stands only where the moves put it.
    Temporary,
    /// A full-size spare: may stand in for another wheel while the work goes on.
    FullSize,
}

/// Where a wheel may stand for a while.
///
/// ```
/// use lugbook::lifting::Interchange;
/// assert_eq!(Interchange::default(), Interchange::Any);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Interchange {
    /// Every wheel fits every hub.
    #[default]
    Any,
    /// A wheel fits only the axles it comes from and goes to: unequal sizes, offsets or brakes.
    OwnAxles,
}

/// Where the work is done.
///
/// ```
/// use lugbook::lifting::Site;
/// assert_eq!(Site::default(), Site::Shop);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Site {
    /// A shop.
    #[default]
    Shop,
    /// A yard or driveway, firm and level.
    Yard,
    /// The roadside.
    Roadside,
}

/// The vehicle, as far as raising it goes.
///
/// ```
/// use lugbook::lifting::{Spare, Vehicle};
/// use lugbook::vehicle::Layout;
/// let mut vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// vehicle.axle_weights = vec![Some("800 kg".parse()?), Some("550 kg".parse()?)];
/// // The manual allows a jack under the middle of the front axle.
/// vehicle.middles = vec![1];
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Vehicle {
    /// Its axles; [`Layout::spare`] says whether a spare is carried.
    pub layout: Layout,
    /// What spare.
    pub spare: Spare,
    /// The whole vehicle's weight as it stands.
    pub weight: Option<Load>,
    /// Each axle's weight as it stands, from the front; may be shorter than the axles.
    pub axle_weights: Vec<Option<Load>>,
    /// Axles that the manual allows to raise in the middle.
    pub middles: Vec<u8>,
    /// Which wheel fits which hub.
    pub interchange: Interchange,
    /// Wheels too heavy for one person.
    pub heavy_wheels: bool,
}

impl Vehicle {
    /// A vehicle of which only the axles and the spare are known.
    ///
    /// ```
    /// use lugbook::lifting::{Spare, Vehicle};
    /// use lugbook::vehicle::Layout;
    /// assert!(Vehicle::of(Layout::two_axles(false), Spare::None).weight.is_none());
    /// ```
    pub fn of(layout: Layout, spare: Spare) -> Self {
        Self {
            layout: Layout { spare: spare != Spare::None, ..layout },
            spare,
            weight: None,
            axle_weights: Vec::new(),
            middles: Vec::new(),
            interchange: Interchange::Any,
            heavy_wheels: false,
        }
    }
}

/// Everything that is asked.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// assert!(plan(&task)?.proved);
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Task {
    /// The vehicle.
    pub vehicle: Vehicle,
    /// The gear.
    pub gear: Gear,
    /// Where.
    pub site: Site,
    /// From where to where; a wheel that goes to its own place comes off and on.
    pub moves: Vec<(Place, Place)>,
    /// Tools, owner and what else cautions depend on; what holds the vehicle is added.
    pub here: Vec<Circumstance>,
}

/// What would make an impossible task possible.
///
/// ```
/// use lugbook::lifting::{Gear, Lacking, Refusal, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// let (left, right) = (Place::single(1, Side::Left), Place::single(1, Side::Right));
/// let (gear, site) = Gear::of_code("jack-alone").unwrap();
/// let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// let task = Task { vehicle, gear, site, moves: vec![(left, right), (right, left)], here: vec![] };
/// let Err(Refusal::NotWithThisGear { lacking }) = plan(&task) else { panic!() };
/// assert_eq!(lacking, [Lacking::Stands { at_least: 2 }, Lacking::FullSizeSpare]);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case", tag = "need")]
pub enum Lacking {
    /// So many stands.
    Stands {
        /// The fewest that do.
        at_least: u8,
    },
    /// A full-size spare that stands in while wheels change places.
    FullSizeSpare,
    /// So many bridge jacks on the four-post lift.
    BridgeJacks {
        /// The fewest that do.
        at_least: u8,
    },
    /// Other gear: this kind does not raise such a vehicle.
    OtherGear,
}

/// Why there is no plan.
///
/// ```
/// use lugbook::lifting::{Gear, Refusal, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// let (left, right) = (Place::single(1, Side::Left), Place::single(1, Side::Right));
/// let (gear, site) = Gear::of_code("jack-alone").unwrap();
/// let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// let task = Task { vehicle, gear, site, moves: vec![(left, right), (right, left)], here: vec![] };
/// let Err(Refusal::NotWithThisGear { lacking }) = plan(&task) else { panic!() };
/// assert_eq!(lacking.len(), 2);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "refusal")]
pub enum Refusal {
    /// A vehicle without axles.
    NoAxles,
    /// More axles than are taken.
    TooManyAxles {
        /// The most.
        most: usize,
    },
    /// More stands or bridge jacks than are taken.
    TooMuchGear {
        /// The most.
        most: u8,
    },
    /// The vehicle has no such place.
    NoSuchPlace {
        /// The place.
        at: Place,
    },
    /// One wheel is sent to two places.
    MovedTwice {
        /// Where it stands.
        from: Place,
    },
    /// Two wheels are sent to one place.
    TwoWheels {
        /// The place.
        to: Place,
    },
    /// A wheel is displaced and sent nowhere.
    NowhereToGo {
        /// Where it stands.
        at: Place,
    },
    /// The gear is rated below what it would have to carry.
    Overloaded {
        /// Each part.
        parts: Vec<Overload>,
    },
    /// It can't be done with this gear.
    NotWithThisGear {
        /// Each alone would make it possible; empty when nothing tried does.
        lacking: Vec<Lacking>,
    },
    /// No order was found within the search's limit: split the moves.
    TooLarge,
}

impl Task {
    /// The moves that ask for something, checked.
    pub(super) fn checked(&self) -> Result<Vec<(Place, Place)>, Refusal> {
        let axles = self.vehicle.layout.axles.len();
        if axles == 0 {
            return Err(Refusal::NoAxles);
        }
        if axles > MOST_AXLES {
            return Err(Refusal::TooManyAxles { most: MOST_AXLES });
        }
        match self.gear {
            Gear::Jack { stands, .. } if stands > MOST_STANDS => {
                return Err(Refusal::TooMuchGear { most: MOST_STANDS });
            }
            Gear::FourPost { bridges, .. } if bridges > MOST_BRIDGES => {
                return Err(Refusal::TooMuchGear { most: MOST_BRIDGES });
            }
            _ => {}
        }
        for (at, (from, to)) in self.moves.iter().enumerate() {
            for place in [from, to] {
                if !self.vehicle.layout.has(*place) {
                    return Err(Refusal::NoSuchPlace { at: *place });
                }
            }
            let before = self.moves.iter().take(at);
            if before.clone().any(|(other, _)| other == from) {
                return Err(Refusal::MovedTwice { from: *from });
            }
            if before.clone().any(|(_, other)| other == to) {
                return Err(Refusal::TwoWheels { to: *to });
            }
        }
        if let Some((_, to)) = self.moves.iter().find(|(_, to)| !self.moves.iter().any(|(from, _)| from == to)) {
            return Err(Refusal::NowhereToGo { at: *to });
        }
        Ok(self.moves.iter().copied().filter(|pair| *pair != (Place::Spare, Place::Spare)).collect())
    }
}
