//! In what order to raise the vehicle and move its wheels, with the gear at hand.
//!
//! A search over what stands where and which corners are up finds the fewest
//! lifts, and among those the shortest way around the vehicle. A lift is each
//! time an end, an axle or the vehicle is raised off the ground; taking the
//! weight off a stand before lowering is none.
//!
//! What always holds in the actions (common practice, no source, but where
//! named):
//! - nuts are cracked loose while the tire still stands (jack work);
//! - the wheels that stay down are chocked on both sides;
//! - stands or locks are set and seen to hold, and the vehicle rocked, before a
//!   wheel comes off;
//! - without a stand, one corner only, with a wheel flat under the sill;
//! - a mounted wheel always has at least one nut, or hands on it;
//! - nobody and nothing is under the vehicle before anything is lowered;
//! - the last tightening is done with the tire on the ground;
//! - gear is never loaded beyond its marked rating (29 CFR 1910.244(a)(1)).
//!
//! The vehicle's manual, its lift points above all, and local rules stand above
//! all of this.
//!
//! ```
//! use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
//! use lugbook::vehicle::{Layout, Place, Side};
//!
//! let (left, right) = (Place::single(1, Side::Left), Place::single(1, Side::Right));
//! let task = Task {
//!     vehicle: Vehicle::of(Layout::two_axles(false), Spare::None),
//!     gear: Gear::Jack { jack: JackKind::Floor, rating: None, stands: 2, stand_rating: None },
//!     site: Site::Yard,
//!     moves: vec![(left, right), (right, left)],
//!     here: vec![],
//! };
//! let plan = plan(&task)?;
//! assert_eq!((plan.lifts, plan.proved), (2, true));
//! # Ok::<(), lugbook::lifting::Refusal>(())
//! ```

mod actions;
mod flat;
mod gear;
mod request;
mod search;
mod task;

use serde::Serialize;

pub use actions::{Act, Action};
pub use flat::moves_for_flat;
pub use gear::{AXLE_SHARE, Gear, GearNote, GearPart, Hoist, JackKind, Overload, RATING};
pub use request::{BadRequest, GearKind, GearRequest, Request, RowKind, Tools, VehicleRequest};
pub use task::{Interchange, Lacking, MOST_AXLES, MOST_BRIDGES, MOST_STANDS, Refusal, Site, Spare, Task, Vehicle};

use crate::caution::CautionId;
use crate::vehicle::{Layout, Letters};

/// The order of work.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// let plan = plan(&task)?;
/// assert_eq!((plan.lifts, plan.at_least, plan.proved), (1, 1, true));
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plan {
    /// What to do, in order.
    pub actions: Vec<Action>,
    /// How many times something is raised off the ground.
    pub lifts: u32,
    /// No order has fewer lifts than this; equal to `lifts` when that is proved.
    pub at_least: u32,
    /// What counting corners alone says that every order needs, before any search.
    pub bound: u32,
    /// That there is no order with fewer lifts is proved.
    pub proved: bool,
    /// The way that jack and wheels are rolled, in strides of about 0.75 m.
    pub strides: u32,
    /// How many states the search opened.
    pub opened: usize,
    /// What to know about the gear.
    pub notes: Vec<GearNote>,
}

/// Finds the order of work.
///
/// # Errors
/// When the request contradicts itself, when the gear is rated below the load,
/// when it can't be done with this gear, or when the search gave up.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// // One wheel off and on again.
/// assert_eq!(plan(&task)?.lifts, 1);
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
pub fn plan(task: &Task) -> Result<Plan, Refusal> {
    let moves = task.checked()?;
    let rules = task.gear.rules(&task.vehicle);
    let search = search::Search::new(&task.vehicle, &rules, &moves)?;
    if search.out_of_reach() {
        return Err(if rules.overloads.is_empty() {
            Refusal::NotWithThisGear { lacking: lacking(task) }
        } else {
            Refusal::Overloaded { parts: rules.overloads.clone() }
        });
    }
    let Some(found) = search.solve()? else {
        return Err(Refusal::NotWithThisGear { lacking: lacking(task) });
    };
    let actions = actions::Writer::new(task, &search, &moves).write(&found.steps);
    // The runways go up and come down once, whatever is done on them.
    let runways = u32::from(matches!(task.gear, Gear::FourPost { .. }) && !actions.is_empty());
    Ok(Plan {
        actions,
        lifts: found.lifts.saturating_add(runways),
        at_least: found.at_least.saturating_add(runways),
        bound: found.bound.saturating_add(runways),
        proved: found.proved,
        strides: found.walk,
        opened: found.opened,
        notes: rules.notes.clone(),
    })
}

/// Whether a task has an order at all.
fn solvable(task: &Task) -> bool {
    let Ok(moves) = task.checked() else { return false };
    let rules = task.gear.rules(&task.vehicle);
    search::Search::new(&task.vehicle, &rules, &moves)
        .is_ok_and(|search| !search.out_of_reach() && search.solve().is_ok_and(|found| found.is_some()))
}

/// What would each alone make the task possible.
fn lacking(task: &Task) -> Vec<Lacking> {
    let mut found = Vec::new();
    match task.gear {
        Gear::Jack { jack, rating, stands, stand_rating } => {
            let more = (stands.saturating_add(1)..=4).find(|stands| {
                let gear = Gear::Jack { jack, rating, stands: *stands, stand_rating };
                solvable(&Task { gear, ..task.clone() })
            });
            found.extend(more.map(|at_least| Lacking::Stands { at_least }));
        }
        Gear::FourPost { rating, bridges, bridge_rating } => {
            let more = (bridges.saturating_add(1)..=MOST_BRIDGES).find(|bridges| {
                solvable(&Task { gear: Gear::FourPost { rating, bridges: *bridges, bridge_rating }, ..task.clone() })
            });
            found.extend(more.map(|at_least| Lacking::BridgeJacks { at_least }));
        }
        Gear::TwoPost { .. } => return vec![Lacking::OtherGear],
    }
    if task.vehicle.spare != Spare::FullSize {
        let mut vehicle = task.vehicle.clone();
        vehicle.spare = Spare::FullSize;
        vehicle.layout.spare = true;
        if solvable(&Task { vehicle, ..task.clone() }) {
            found.push(Lacking::FullSizeSpare);
        }
    }
    found
}

/// A plan as data: positions by name.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// let data = plan(&task)?.data(&task.vehicle.layout);
/// assert_eq!(data.lifts, 1);
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanData {
    /// What to do, in order.
    pub actions: Vec<ActionData>,
    /// How many times something is raised off the ground.
    pub lifts: u32,
    /// No order has fewer lifts than this.
    pub at_least: u32,
    /// What counting corners alone says that every order needs.
    pub bound: u32,
    /// That there is no order with fewer lifts is proved.
    pub proved: bool,
    /// The way that jack and wheels are rolled, in strides.
    pub strides: u32,
    /// How many states the search opened.
    pub opened: usize,
    /// What to know about the gear.
    pub notes: Vec<GearNote>,
}

/// An action as data.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// let data = plan(&task)?.data(&task.vehicle.layout);
/// assert_eq!((data.actions[0].n, data.actions[0].act.code()), (1, "secure-vehicle"));
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ActionData {
    /// Its number, from 1.
    pub n: usize,
    /// What is done.
    #[serde(rename = "do")]
    pub act: Act,
    /// The places, by name with spaces between; `null` for the vehicle as a whole.
    pub at: Option<String>,
    /// The wheel, by the name of the place it stood at when the work began.
    pub wheel: Option<String>,
    /// The gravest caution before it.
    pub caution: Option<CautionId>,
    /// All cautions before it, gravest first.
    pub cautions: Vec<CautionId>,
}

impl Plan {
    /// The plan as data, positions by their names in JSON.
    ///
    /// ```
    /// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
    /// use lugbook::vehicle::{Layout, Place, Side};
    /// # let at = Place::single(1, Side::Left);
    /// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
    /// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
    /// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
    /// let data = plan(&task)?.data(&task.vehicle.layout);
    /// assert!(data.actions.iter().any(|action| action.at.as_deref() == Some("FL")));
    /// # Ok::<(), lugbook::lifting::Refusal>(())
    /// ```
    pub fn data(&self, layout: &Layout) -> PlanData {
        let name = |place: &crate::vehicle::Place| layout.name(*place, Letters::FrontFirst);
        let actions = self.actions.iter().map(|action| ActionData {
            n: action.n,
            act: action.act,
            at: (!action.at.is_empty()).then(|| action.at.iter().map(name).collect::<Vec<_>>().join(" ")),
            wheel: action.wheel.as_ref().map(name),
            caution: action.cautions.first().copied(),
            cautions: action.cautions.clone(),
        });
        PlanData {
            actions: actions.collect(),
            lifts: self.lifts,
            at_least: self.at_least,
            bound: self.bound,
            proved: self.proved,
            strides: self.strides,
            opened: self.opened,
            notes: self.notes.clone(),
        }
    }
}
