//! From the steps of a solution to numbered actions, in the order hands do them.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::gear::{Gear, Hoist, corner_bit};
use super::search::{Search, Step};
use super::task::{Site, Spare, Task};
use crate::caution::{CautionId, Circumstance};
use crate::vehicle::{Place, Position, Row, Side};

/// What is done. The names are codes in data.
///
/// ```
/// use lugbook::lifting::Act;
/// assert_eq!(Act::ALL.len(), 32);
/// assert_eq!(Act::SetStand.code(), "set-stand");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Act {
    /// Find a safe place, be seen, warn others (roadside).
    SecureSite,
    /// Parking brake set, park or a gear engaged, engine off, key away.
    SecureVehicle,
    /// Fetch the spare.
    FetchSpare,
    /// Chock a wheel that stays down, on both sides.
    Chock,
    /// Take the chocks of a wheel away.
    Unchock,
    /// Crack the nuts loose a quarter turn while the tire stands.
    CrackNuts,
    /// Raise the runways of a four-post lift, the vehicle standing on them.
    RaiseRunways,
    /// Lower them.
    LowerRunways,
    /// Set the arms of a two-post lift under the lift points.
    SetArms,
    /// Raise until the wheels are just clear.
    RaiseClear,
    /// Set the jack under a lift point.
    SetJack,
    /// Raise to working height.
    Raise,
    /// Set a stand.
    SetStand,
    /// Let the weight down onto the stands.
    RestOnStands,
    /// Let the weight down onto the locks.
    RestOnLocks,
    /// See that the stands hold.
    SeeStands,
    /// See that the locks hold.
    SeeLocks,
    /// Rock the vehicle.
    Rock,
    /// Lay a wheel flat under the sill.
    WheelUnder,
    /// Take the wheel out from under the sill.
    WheelOut,
    /// Take all nuts off but the one at twelve o'clock.
    NutsOff,
    /// Take the last nut off by hand and the wheel with it.
    WheelOff,
    /// Run one nut onto an inner wheel whose outer wheel is off.
    HoldNut,
    /// Hang a wheel on its hub.
    WheelOn,
    /// Begin each nut by hand.
    StartNuts,
    /// Snug the nuts in star order.
    Snug,
    /// See that nobody and nothing is under the vehicle.
    ClearUnder,
    /// Raise a little, until stands or locks are free of weight.
    TakeWeight,
    /// Take a stand away.
    RemoveStand,
    /// Lower.
    Lower,
    /// Stow the wheel that is left over.
    Stow,
    /// Tighten with the torque wrench, the tire on the ground.
    FinalTorque,
}

impl Act {
    /// All acts.
    pub const ALL: [Self; 32] = [
        Self::SecureSite,
        Self::SecureVehicle,
        Self::FetchSpare,
        Self::Chock,
        Self::Unchock,
        Self::CrackNuts,
        Self::RaiseRunways,
        Self::LowerRunways,
        Self::SetArms,
        Self::RaiseClear,
        Self::SetJack,
        Self::Raise,
        Self::SetStand,
        Self::RestOnStands,
        Self::RestOnLocks,
        Self::SeeStands,
        Self::SeeLocks,
        Self::Rock,
        Self::WheelUnder,
        Self::WheelOut,
        Self::NutsOff,
        Self::WheelOff,
        Self::HoldNut,
        Self::WheelOn,
        Self::StartNuts,
        Self::Snug,
        Self::ClearUnder,
        Self::TakeWeight,
        Self::RemoveStand,
        Self::Lower,
        Self::Stow,
        Self::FinalTorque,
    ];

    /// The code in data: `crack-nuts`, `wheel-off` …
    ///
    /// ```
    /// use lugbook::lifting::Act;
    /// assert_eq!(Act::FinalTorque.code(), "final-torque");
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::SecureSite => "secure-site",
            Self::SecureVehicle => "secure-vehicle",
            Self::FetchSpare => "fetch-spare",
            Self::Chock => "chock",
            Self::Unchock => "unchock",
            Self::CrackNuts => "crack-nuts",
            Self::RaiseRunways => "raise-runways",
            Self::LowerRunways => "lower-runways",
            Self::SetArms => "set-arms",
            Self::RaiseClear => "raise-clear",
            Self::SetJack => "set-jack",
            Self::Raise => "raise",
            Self::SetStand => "set-stand",
            Self::RestOnStands => "rest-on-stands",
            Self::RestOnLocks => "rest-on-locks",
            Self::SeeStands => "see-stands",
            Self::SeeLocks => "see-locks",
            Self::Rock => "rock",
            Self::WheelUnder => "wheel-under",
            Self::WheelOut => "wheel-out",
            Self::NutsOff => "nuts-off",
            Self::WheelOff => "wheel-off",
            Self::HoldNut => "hold-nut",
            Self::WheelOn => "wheel-on",
            Self::StartNuts => "start-nuts",
            Self::Snug => "snug",
            Self::ClearUnder => "clear-under",
            Self::TakeWeight => "take-weight",
            Self::RemoveStand => "remove-stand",
            Self::Lower => "lower",
            Self::Stow => "stow",
            Self::FinalTorque => "final-torque",
        }
    }

    /// The cautions that stand before it, gravest first, wherever they apply.
    ///
    /// ```
    /// use lugbook::caution::CautionId;
    /// use lugbook::lifting::Act;
    /// assert_eq!(Act::Raise.cautions()[0], CautionId::JackAlone);
    /// assert!(Act::Stow.cautions().is_empty());
    /// ```
    pub fn cautions(self) -> &'static [CautionId] {
        use CautionId as C;
        match self {
            Self::SecureSite => &[C::Slope, C::PassingTraffic, C::NotSeen],
            Self::SecureVehicle | Self::Chock => &[C::VehicleRolls],
            Self::CrackNuts => &[C::CrackOnGround, C::SocketSlips],
            Self::RaiseRunways | Self::RaiseClear => &[C::OverloadedGear, C::LiftPoints],
            Self::Raise => &[C::JackAlone, C::OverloadedGear],
            Self::SetArms | Self::SetJack => &[C::LiftPoints],
            Self::SetStand | Self::WheelUnder | Self::WheelOut => &[C::JackAlone],
            Self::Rock | Self::SeeStands | Self::SeeLocks => &[C::UnderVehicle],
            Self::NutsOff => &[C::TurningSocket, C::ChipsAndNoise, C::GunDirection, C::LostNuts],
            Self::WheelOff => &[C::HeavyWheel, C::FallingWheel, C::LooseWheel, C::HotBrakes],
            Self::HoldNut => &[C::InnerWheel],
            Self::WheelOn => &[C::HeavyWheel, C::PinchedFingers, C::UnheldWheel],
            Self::StartNuts => &[C::UnheldWheel, C::CrossedThread],
            Self::Snug => &[C::CrookedSeat, C::LimitingBar, C::TurningSocket],
            Self::ClearUnder | Self::TakeWeight | Self::Lower | Self::LowerRunways => &[C::Lowering],
            Self::RemoveStand => &[C::JackAlone, C::Lowering],
            Self::FinalTorque => &[C::WheelTurns, C::LimitingBar, C::NutsSettle],
            Self::FetchSpare | Self::Unchock | Self::RestOnStands | Self::RestOnLocks | Self::Stow => &[],
        }
    }
}

/// One action.
///
/// ```
/// use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
/// use lugbook::vehicle::{Layout, Place, Side};
/// # let at = Place::single(1, Side::Left);
/// # let vehicle = Vehicle::of(Layout::two_axles(false), Spare::None);
/// # let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands: 1, stand_rating: None };
/// # let task = Task { vehicle, gear, site: Site::Yard, moves: vec![(at, at)], here: vec![] };
/// let action = &plan(&task)?.actions[0];
/// assert!(action.n == 1 && action.at.is_empty() && action.wheel.is_none());
/// # Ok::<(), lugbook::lifting::Refusal>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Action {
    /// Its number, from 1.
    pub n: usize,
    /// What is done.
    #[serde(rename = "do")]
    pub act: Act,
    /// Where: one wheel, the wheels of an axle, or all; empty for the vehicle as a whole.
    pub at: Vec<Place>,
    /// Which wheel, by the place it stood at when the work began.
    pub wheel: Option<Place>,
    /// The cautions that apply, gravest first.
    pub cautions: Vec<CautionId>,
}

/// Writes the actions down while it keeps track of what stands where.
pub(super) struct Writer<'a> {
    task: &'a Task,
    search: &'a Search<'a>,
    here: Vec<Circumstance>,
    actions: Vec<Action>,
    /// The wheel at each position.
    on: Vec<Option<usize>>,
    loose: BTreeSet<usize>,
    /// Corners up, and corners chocked.
    up: u32,
    chocked: u32,
    /// Positions whose wheels still have to come off and on.
    service: BTreeSet<usize>,
    /// Positions whose nuts were loosened.
    touched: BTreeSet<usize>,
    /// Positions that wait for a wheel while their corner is up.
    bare: BTreeSet<usize>,
    /// The spare was fetched.
    fetched: bool,
}

impl<'a> Writer<'a> {
    pub(super) fn new(task: &'a Task, search: &'a Search<'a>, moves: &[(Place, Place)]) -> Self {
        let count = search.positions().len();
        let mut here = task.here.clone();
        here.extend(task.gear.support(task.site));
        let duals = search.positions().iter().any(|p| p.row != Row::Single);
        here.extend(duals.then_some(Circumstance::Duals));
        here.extend((duals || task.vehicle.heavy_wheels).then_some(Circumstance::HeavyWheel));
        Self {
            task,
            search,
            here,
            actions: Vec::new(),
            on: (0..count).map(Some).collect(),
            loose: (task.vehicle.spare != Spare::None).then_some(count).into_iter().collect(),
            up: 0,
            chocked: 0,
            service: search.serviced(moves).into_iter().collect(),
            touched: BTreeSet::new(),
            bare: BTreeSet::new(),
            fetched: false,
        }
    }

    fn push(&mut self, act: Act, at: Vec<Place>, wheel: Option<usize>) {
        let cautions = act.cautions().iter().copied().filter(|caution| caution.applies(&self.here)).collect();
        let wheel = wheel.map(|wheel| self.search.place(wheel));
        self.actions.push(Action { n: self.actions.len().saturating_add(1), act, at, wheel, cautions });
    }

    fn places(&self, positions: &[usize]) -> Vec<Place> {
        positions.iter().map(|at| self.search.place(*at)).collect()
    }

    /// The positions of a set of corners, outer before inner.
    fn positions_of(&self, corners: u32) -> Vec<usize> {
        let inside = |p: &Position| corner_bit(p.axle, p.side) & corners != 0;
        let all = self.search.positions();
        let mut found: Vec<usize> = (0..all.len()).filter(|at| all.get(*at).is_some_and(inside)).collect();
        found.sort_by_key(|at| all.get(*at).map(|p| (p.axle, p.side, p.row == Row::Inner)));
        found
    }

    /// The single corners of a set, in walking order.
    fn corners_of(&self, set: u32) -> Vec<u32> {
        let axles = self.task.vehicle.layout.axles.len();
        (1u8..)
            .take(axles)
            .flat_map(|axle| [Side::Left, Side::Right].map(|side| corner_bit(axle, side)))
            .filter(|corner| corner & set != 0)
            .collect()
    }

    /// The outer or only wheel of a corner: what stands on the ground there and is seen.
    fn face(&self, corner: u32) -> Vec<Place> {
        self.positions_of(corner).first().map(|at| self.search.place(*at)).into_iter().collect()
    }

    fn all_corners(&self) -> u32 {
        Hoist::Whole.corners(self.task.vehicle.layout.axles.len())
    }

    fn on_runways(&self) -> bool {
        matches!(self.task.gear, Gear::FourPost { .. })
    }

    /// All steps, written out.
    pub(super) fn write(mut self, steps: &[Step]) -> Vec<Action> {
        if steps.is_empty() {
            return Vec::new();
        }
        if self.task.site == Site::Roadside {
            self.push(Act::SecureSite, Vec::new(), None);
        }
        self.push(Act::SecureVehicle, Vec::new(), None);
        self.fetch(steps);
        if self.on_runways() {
            self.chock(self.all_corners());
            self.push(Act::RaiseRunways, self.places(&self.positions_of(self.all_corners())), None);
            self.push(Act::RestOnLocks, Vec::new(), None);
            self.push(Act::SeeLocks, Vec::new(), None);
        }
        for (at, step) in steps.iter().enumerate() {
            match step {
                Step::Raise(hoist) => self.raise(*hoist, steps.get(at.saturating_add(1)..).unwrap_or_default()),
                Step::Lower(hoist, mounted) => self.lower(*hoist, mounted),
            }
        }
        self.finish();
        self.actions
    }

    fn chock(&mut self, corners: u32) {
        for corner in self.corners_of(corners & !self.chocked) {
            self.push(Act::Chock, self.face(corner), None);
        }
        self.chocked |= corners;
    }

    /// The positions of these corners whose wheels come off before they are down again.
    fn coming_off(&mut self, corners: u32, later: &[Step]) -> Vec<usize> {
        // A wheel stays on when nothing else is mounted here, and it nowhere else, before its corner is down.
        let stays = |at: usize, wheel: Option<usize>| {
            let mounted = later.iter().flat_map(|step| match step {
                Step::Lower(_, mounted) => mounted.as_slice(),
                Step::Raise(_) => &[],
            });
            let mut meets = mounted.filter(|(hub, on)| *hub == at || Some(*on) == wheel);
            meets.next().is_none_or(|(hub, on)| *hub == at && Some(*on) == wheel)
        };
        let positions = self.positions_of(corners);
        let mut off: BTreeSet<usize> = positions
            .iter()
            .copied()
            .filter(|at| !stays(*at, self.on.get(*at).copied().flatten()) || self.service.contains(at))
            .collect();
        // The inner wheel comes off over the place of the outer one.
        let all = self.search.positions();
        let inner: Vec<_> = off.iter().filter_map(|at| all.get(*at)).filter(|p| p.row == Row::Inner).copied().collect();
        off.extend(positions.iter().copied().filter(|at| {
            all.get(*at)
                .is_some_and(|p| p.row == Row::Outer && inner.iter().any(|i| (i.axle, i.side) == (p.axle, p.side)))
        }));
        for at in &off {
            self.service.remove(at);
        }
        positions.into_iter().filter(|at| off.contains(at)).collect()
    }

    fn raise(&mut self, hoist: Hoist, later: &[Step]) {
        let corners = hoist.corners(self.task.vehicle.layout.axles.len());
        let off = self.coming_off(corners, later);
        let at = self.places(&self.positions_of(corners));
        if let Gear::TwoPost { .. } = self.task.gear {
            self.push(Act::SetArms, at.clone(), None);
            self.push(Act::RaiseClear, at.clone(), None);
            self.push(Act::Rock, Vec::new(), None);
            self.push(Act::Raise, at, None);
            self.push(Act::RestOnLocks, Vec::new(), None);
            self.push(Act::SeeLocks, Vec::new(), None);
        } else {
            let down = self.all_corners() & !self.up & !corners;
            self.chock(down);
            if !self.on_runways() {
                for corner in self.corners_of(corners & self.chocked) {
                    self.push(Act::Unchock, self.face(corner), None);
                }
                self.chocked &= !corners;
            }
            for corner in self.corners_of(corners) {
                let loose = self.within(&off, corner);
                if !loose.is_empty() {
                    self.push(Act::CrackNuts, self.places(&loose), None);
                }
            }
            self.push(Act::SetJack, at.clone(), None);
            self.push(Act::Raise, at.clone(), None);
            match self.task.gear {
                Gear::FourPost { .. } => {
                    self.push(Act::RestOnLocks, at, None);
                    self.push(Act::SeeLocks, Vec::new(), None);
                    self.push(Act::Rock, Vec::new(), None);
                }
                Gear::Jack { stands: 1.., .. } => {
                    for corner in self.corners_of(corners) {
                        self.push(Act::SetStand, self.face(corner), None);
                    }
                    self.push(Act::RestOnStands, at, None);
                    self.push(Act::SeeStands, Vec::new(), None);
                    self.push(Act::Rock, Vec::new(), None);
                }
                _ => {}
            }
        }
        self.up |= corners;
        if self.alone() {
            // The wheel goes under, off and on again at one corner, all before it comes down.
            self.bare = off.iter().copied().collect();
            return;
        }
        for corner in self.corners_of(corners) {
            let loose = self.within(&off, corner);
            self.wheels_off(&loose);
        }
        self.bare.extend(off);
    }

    fn alone(&self) -> bool {
        matches!(self.task.gear, Gear::Jack { stands: 0, .. })
    }

    fn within(&self, positions: &[usize], corner: u32) -> Vec<usize> {
        let own = self.positions_of(corner);
        own.into_iter().filter(|at| positions.contains(at)).collect()
    }

    /// Takes wheels of one corner off, outer first.
    fn wheels_off(&mut self, positions: &[usize]) {
        if positions.is_empty() {
            return;
        }
        self.push(Act::NutsOff, self.places(positions), None);
        for at in positions {
            self.wheel_off(*at);
        }
        self.hold_inner(positions);
    }

    fn wheel_off(&mut self, at: usize) {
        let wheel = self.on.get_mut(at).and_then(Option::take);
        self.loose.extend(wheel);
        self.touched.insert(at);
        self.push(Act::WheelOff, self.places(&[at]), wheel);
    }

    /// An inner wheel that stays on gets a nut while its outer wheel is off.
    fn hold_inner(&mut self, off: &[usize]) {
        let all = self.search.positions();
        let outer = off.iter().filter_map(|at| all.get(*at)).find(|p| p.row == Row::Outer).copied();
        let Some(outer) = outer else { return };
        let inner = Position { row: Row::Inner, ..outer };
        let Some(at) = all.iter().position(|p| *p == inner) else { return };
        if !off.contains(&at) {
            self.push(Act::HoldNut, vec![Place::Wheel(inner)], None);
            self.touched.insert(at);
        }
    }

    /// Hangs the wheels of one corner, inner first, and begins and snugs their nuts.
    fn wheels_on(&mut self, corner: u32, mounted: &[(usize, usize)]) {
        let mut positions = self.positions_of(corner);
        positions.retain(|at| self.bare.contains(at));
        if positions.is_empty() {
            return;
        }
        for at in positions.iter().rev() {
            let wheel = mounted.iter().find(|(hub, _)| hub == at).map(|(_, wheel)| *wheel);
            self.wheel_on(*at, wheel);
        }
        self.push(Act::StartNuts, self.places(&positions), None);
        self.push(Act::Snug, self.places(&positions), None);
    }

    fn wheel_on(&mut self, at: usize, wheel: Option<usize>) {
        let Some(wheel) = wheel else { return };
        self.loose.remove(&wheel);
        if let Some(slot) = self.on.get_mut(at) {
            *slot = Some(wheel);
        }
        self.bare.remove(&at);
        self.push(Act::WheelOn, self.places(&[at]), Some(wheel));
    }

    /// The spare comes out while the vehicle still stands: nobody leans into a raised one. It is wanted
    /// when it goes on a hub, and on the jack alone to lie under the sill.
    fn fetch(&mut self, steps: &[Step]) {
        let spare = self.search.positions().len();
        let mounts = |step: &Step| match step {
            Step::Lower(_, mounted) => mounted.iter().any(|(_, wheel)| *wheel == spare),
            Step::Raise(_) => false,
        };
        if self.loose.contains(&spare) && (self.alone() || steps.iter().any(mounts)) {
            self.fetched = true;
            self.push(Act::FetchSpare, vec![Place::Spare], Some(spare));
        }
    }

    /// One corner on the jack alone: a wheel lies flat under the sill as long as the hub is bare.
    fn change_on_the_jack(&mut self, corner: u32, mounted: &[(usize, usize)]) {
        let off = self.within(&self.bare.iter().copied().collect::<Vec<_>>(), corner);
        if off.is_empty() {
            return;
        }
        let face = self.face(corner);
        let goes_on: Vec<usize> = mounted.iter().filter(|(at, _)| off.contains(at)).map(|(_, wheel)| *wheel).collect();
        // Best a wheel that stays out, else one that goes on here, else the first that comes off.
        let stays_out = |wheel: &usize| !goes_on.contains(wheel);
        let mut under = self.loose.iter().copied().find(stays_out).or_else(|| self.loose.iter().copied().next());
        if under.is_some() {
            self.push(Act::WheelUnder, face.clone(), under);
        }
        self.push(Act::NutsOff, self.places(&off), None);
        for at in &off {
            let wheel = self.on.get(*at).copied().flatten();
            self.wheel_off(*at);
            // The wheel just taken off goes under when nothing lies there, or only a wheel that is needed here.
            let better = wheel.is_some_and(|wheel| stays_out(&wheel)) && under.is_some_and(|wheel| !stays_out(&wheel));
            if under.is_none() || better {
                self.push(Act::WheelUnder, face.clone(), wheel);
                if under.is_some() {
                    self.push(Act::WheelOut, face.clone(), under);
                }
                under = wheel;
            }
        }
        self.hold_inner(&off);
        for at in off.iter().rev() {
            let wheel = mounted.iter().find(|(hub, _)| hub == at).map(|(_, wheel)| *wheel);
            if wheel.is_some() && wheel == under {
                let other = self.loose.iter().copied().find(|other| Some(*other) != wheel);
                if other.is_some() {
                    self.push(Act::WheelUnder, face.clone(), other);
                }
                self.push(Act::WheelOut, face.clone(), wheel);
                under = other;
            }
            self.wheel_on(*at, wheel);
        }
        self.push(Act::StartNuts, self.places(&off), None);
        self.push(Act::Snug, self.places(&off), None);
        if under.is_some() {
            self.push(Act::WheelOut, face, under);
        }
    }

    fn lower(&mut self, hoist: Hoist, mounted: &[(usize, usize)]) {
        let corners = hoist.corners(self.task.vehicle.layout.axles.len());
        let at = self.places(&self.positions_of(corners));
        for corner in self.corners_of(corners) {
            if self.alone() {
                self.change_on_the_jack(corner, mounted);
            } else {
                self.wheels_on(corner, mounted);
            }
        }
        self.push(Act::ClearUnder, Vec::new(), None);
        match self.task.gear {
            Gear::TwoPost { .. } => self.push(Act::TakeWeight, at.clone(), None),
            Gear::FourPost { .. } => {
                self.push(Act::SetJack, at.clone(), None);
                self.push(Act::TakeWeight, at.clone(), None);
            }
            Gear::Jack { stands: 1.., .. } => {
                self.push(Act::SetJack, at.clone(), None);
                self.push(Act::TakeWeight, at.clone(), None);
                for corner in self.corners_of(corners) {
                    self.push(Act::RemoveStand, self.face(corner), None);
                }
            }
            Gear::Jack { .. } => {}
        }
        self.push(Act::Lower, at, None);
        self.up &= !corners;
        if self.up != 0 && !matches!(self.task.gear, Gear::TwoPost { .. }) {
            self.chock(corners);
        }
    }

    fn finish(&mut self) {
        if self.on_runways() {
            self.push(Act::ClearUnder, Vec::new(), None);
            self.push(Act::TakeWeight, Vec::new(), None);
            self.push(Act::LowerRunways, self.places(&self.positions_of(self.all_corners())), None);
        }
        for corner in self.corners_of(self.all_corners()) {
            let done = self.within(&self.touched.iter().copied().collect::<Vec<_>>(), corner);
            if !done.is_empty() {
                self.push(Act::FinalTorque, self.places(&done), None);
            }
        }
        for corner in self.corners_of(self.chocked) {
            self.push(Act::Unchock, self.face(corner), None);
        }
        self.chocked = 0;
        if let Some(wheel) = self.loose.iter().copied().next().filter(|_| self.fetched) {
            self.push(Act::Stow, vec![Place::Spare], Some(wheel));
        }
    }
}
