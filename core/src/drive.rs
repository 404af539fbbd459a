//! Which axles drive: from what was seen under the vehicle and what was told.
//!
//! Each look and each wheel turned by hand goes through a table ([`LOOKS`],
//! [`HAND_TURNS`]); the axle's looks are put together, then the axles. The
//! manual's answer is enough, or every end of the vehicle seen. Evidence that
//! contradicts is shown as a contradiction and never averaged: the answer is
//! then [`Drive::Unknown`].
//!
//! ```
//! use lugbook::drive::{self, Told};
//! use lugbook::vehicle::hub::{Evidence, Hub};
//! use lugbook::vehicle::{Class, Drive, Layout, Side};
//!
//! let seen = [Evidence::look(1, Side::Left, Hub::NoShaft), Evidence::look(2, Side::Left, Hub::Shaft)];
//! let verdict = drive::verdict(&Layout::two_axles(false), Class::LightTruck, &seen, &Told::default());
//! assert_eq!(verdict.drive, Drive::Rear);
//! ```

mod gate;
mod table;
mod told;

use serde::Serialize;

pub use gate::{Footing, MayTurn, Support, Unmet, may_turn};
pub use table::{HAND_TURNS, LOOKS, LookRow, Reason, Says, TurnRow, of_look, of_turn};
pub use told::{Told, noted};

use crate::vehicle::hub::{AxleMotor, Engine, Evidence, FreeHubs, Gear, OffGround, ParkingBrake, WheelMotion};
use crate::vehicle::{Class, Drive, Layout, Side};

/// One observation or statement and what it says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Ground {
    /// The axle; `None` for what was told about the whole vehicle.
    pub axle: Option<u8>,
    /// The end of the axle.
    pub side: Option<Side>,
    /// What it says.
    pub says: Says,
    /// Why.
    pub reason: Reason,
    /// The drive that was told, for [`Reason::Manual`] and [`Reason::Owner`].
    pub told: Option<Drive>,
}

/// How one axle stands after all its looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum AxleState {
    /// It drives.
    Driven,
    /// It can drive; the driver engages it.
    ByChoice,
    /// It can drive; it was not coupled when it was looked at.
    Uncoupled,
    /// It does not drive.
    NotDriven,
    /// Not settled yet.
    Unsettled,
    /// Its looks contradict each other.
    Contradicted,
}

impl AxleState {
    fn can_drive(self) -> bool {
        matches!(self, Self::Driven | Self::ByChoice | Self::Uncoupled)
    }
}

/// Two grounds that can't both be right.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Contradiction {
    /// The one.
    pub one: Ground,
    /// The other.
    pub other: Ground,
}

/// The one further look that would settle the question.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case", tag = "look")]
pub enum NextLook {
    /// Look at the hub from behind: does a shaft run into it?
    BehindHub {
        /// The axle.
        axle: u8,
        /// The end to look at.
        side: Side,
    },
    /// Look for a lever or switch that engages the second axle, or for free-wheeling hubs.
    TransferControl,
    /// Read the drive in the vehicle's manual.
    Manual,
    /// Read the drive on the vehicle's own plate or build sheet: one manual may cover several.
    VehiclePlate,
}

/// Which axles drive, and what speaks for and against it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Verdict {
    /// The answer; [`Drive::Unknown`] until it is settled or while evidence contradicts.
    pub drive: Drive,
    /// What it could be as well when shafts at every axle leave all-wheel and part-time open.
    pub or: Option<Drive>,
    /// Each axle from the front.
    pub axles: Vec<AxleState>,
    /// What speaks for the answer; while unknown, all that says something.
    #[serde(rename = "for")]
    pub for_: Vec<Ground>,
    /// What speaks against the answer.
    pub against: Vec<Ground>,
    /// What was looked at and says nothing.
    pub silent: Vec<Ground>,
    /// Two grounds that can't both be right.
    pub contradiction: Option<Contradiction>,
    /// The one further look that would settle it; `None` when nothing is open.
    pub next_look: Option<NextLook>,
}

/// Everything one piece of evidence says.
fn grounds_of(evidence: &Evidence) -> Vec<Ground> {
    let ground =
        |(says, reason)| Ground { axle: Some(evidence.axle), side: Some(evidence.side), says, reason, told: None };
    let mut grounds: Vec<_> = of_look(evidence.hub).map(ground).into_iter().collect();
    if matches!(evidence.free_hubs, FreeHubs::Free | FreeHubs::Locked) {
        grounds.push(ground((Says::ByChoice, Reason::FreeHubsFitted)));
    }
    if evidence.motor == AxleMotor::Own {
        grounds.push(ground((Says::Driven, Reason::OwnMotor)));
    }
    if let Some(turned) = &evidence.turned {
        grounds.push(ground(of_turn(turned, evidence.differential, evidence.free_hubs, evidence.motor)));
    }
    grounds
}

/// The same wheel held in gear or park and free in neutral: the gearbox holds it, so no brake does.
fn held_only_in_gear(seen: &[Evidence]) -> Vec<Ground> {
    let plain = |e: &Evidence| {
        e.turned
            .filter(|t| t.engine == Engine::Off && t.brake == ParkingBrake::Released && t.off_ground != OffGround::None)
    };
    seen.iter()
        .filter(|held| {
            plain(held).is_some_and(|t| t.wheel == WheelMotion::Held && t.gear != Gear::Neutral)
                && held.free_hubs != FreeHubs::Free
                && seen.iter().any(|free| {
                    (free.axle, free.side) == (held.axle, held.side)
                        && plain(free).is_some_and(|t| t.wheel == WheelMotion::Turns && t.gear == Gear::Neutral)
                })
        })
        .map(|held| Ground {
            axle: Some(held.axle),
            side: Some(held.side),
            says: Says::Driven,
            reason: Reason::HeldOnlyInGear,
            told: None,
        })
        .collect()
}

/// Puts one axle's grounds together.
fn axle_state(grounds: &[Ground]) -> (AxleState, Option<Contradiction>) {
    let find = |wanted: fn(Says) -> bool| grounds.iter().find(|ground| wanted(ground.says)).copied();
    let can = find(Says::can_drive);
    let not = find(|says| says == Says::NotDriven);
    match (can, not) {
        (Some(one), Some(other)) => (AxleState::Contradicted, Some(Contradiction { one, other })),
        (None, Some(_)) => (AxleState::NotDriven, None),
        (None, None) => (AxleState::Unsettled, None),
        (Some(_), None) => {
            let has = |says| grounds.iter().any(|ground| ground.says == says);
            let state = if has(Says::ByChoice) {
                AxleState::ByChoice
            } else if has(Says::Uncoupled) || has(Says::LeansNot) {
                // A shaft is there and yet the wheel turned alone: the axle was not coupled.
                AxleState::Uncoupled
            } else {
                AxleState::Driven
            };
            (state, None)
        }
    }
}

/// One end of a vehicle: its steered front axles, or the rest.
struct End<'a> {
    front: bool,
    /// Number of its first axle.
    first: usize,
    axles: &'a [AxleState],
}

impl End<'_> {
    fn holds(&self, ground: &Ground) -> bool {
        let range = self.first..self.first.saturating_add(self.axles.len());
        ground.axle.is_some_and(|axle| range.contains(&usize::from(axle)))
    }

    /// Whether the end drives: yes as soon as one axle can, no when all are seen not to.
    fn drives(&self) -> Option<bool> {
        if self.axles.iter().any(|axle| axle.can_drive()) {
            Some(true)
        } else {
            self.axles.iter().all(|axle| *axle == AxleState::NotDriven).then_some(false)
        }
    }

    /// What a drive wants of this end: that it can drive, or does not; `None` when it says nothing.
    fn wanted(&self, drive: Drive) -> Option<bool> {
        match drive {
            Drive::Front => Some(self.front),
            Drive::Rear => Some(!self.front),
            Drive::All | Drive::PartTime => Some(true),
            Drive::None => Some(false),
            Drive::Unknown => None,
        }
    }
}

/// The vehicle as it was seen.
struct View<'a> {
    grounds: &'a [Ground],
    states: &'a [AxleState],
    front: End<'a>,
    rear: End<'a>,
}

impl<'a> View<'a> {
    fn new(layout: &Layout, grounds: &'a [Ground], states: &'a [AxleState]) -> Self {
        let steered = layout.axles.iter().take_while(|axle| axle.steer).count();
        let split = steered.clamp(1, states.len().saturating_sub(1).max(1));
        let (front, rear) = states.split_at_checked(split).unwrap_or((states, &[]));
        Self {
            grounds,
            states,
            front: End { front: true, first: 1, axles: front },
            rear: End { front: false, first: split.saturating_add(1), axles: rear },
        }
    }

    fn ends(&self) -> [&End<'a>; 2] {
        [&self.front, &self.rear]
    }

    /// What the axles say together once both ends are settled.
    fn drive(&self) -> Option<Drive> {
        match (self.front.drives()?, self.rear.drives()?) {
            (true, false) => Some(Drive::Front),
            (false, true) => Some(Drive::Rear),
            (true, true) if self.states.contains(&AxleState::ByChoice) => Some(Drive::PartTime),
            (true, true) => Some(Drive::All),
            (false, false) => Some(Drive::None),
        }
    }

    fn find(&self, end: &End<'_>, says: fn(Says) -> bool) -> Option<Ground> {
        self.grounds.iter().find(|ground| end.holds(ground) && says(ground.says)).copied()
    }

    /// An observation that can't be right if the vehicle drives so.
    fn contradicts(&self, drive: Drive) -> Option<Ground> {
        self.ends().into_iter().find_map(|end| match end.wanted(drive)? {
            true if end.drives() == Some(false) => self.find(end, |says| says == Says::NotDriven),
            true if drive == Drive::All => self.find(end, |says| says == Says::ByChoice),
            true => None,
            false => self.find(end, Says::can_drive),
        })
    }

    /// Whether an observation or statement speaks against a drive. An axle of
    /// several that does not drive speaks against nothing: it rolls along.
    fn speaks_against(&self, ground: &Ground, drive: Drive) -> bool {
        if let Some(told) = ground.told {
            return told != drive;
        }
        let Some(end) = self.ends().into_iter().find(|end| end.holds(ground)) else { return false };
        match end.wanted(drive) {
            Some(true) => {
                let rolls = matches!(ground.says, Says::NotDriven | Says::LeansNot);
                (rolls && end.axles.len() == 1) || (drive == Drive::All && ground.says == Says::ByChoice)
            }
            Some(false) => ground.says.can_drive() || ground.says == Says::LeansDriven,
            None => false,
        }
    }

    /// A look from behind at the first axle of an end that is still open.
    fn behind_open_hub(&self, end: &End<'_>) -> Option<NextLook> {
        let offset = end.axles.iter().position(|axle| *axle == AxleState::Unsettled)?;
        let axle = u8::try_from(end.first.saturating_add(offset)).ok()?;
        let side = self.grounds.iter().find(|g| g.axle == Some(axle)).and_then(|g| g.side).unwrap_or(Side::Left);
        Some(NextLook::BehindHub { axle, side })
    }
}

/// A statement, as a ground; unknown says nothing.
fn statement(told: Option<Drive>, reason: Reason) -> Option<Ground> {
    told.filter(|drive| *drive != Drive::Unknown).map(|drive| Ground {
        axle: None,
        side: None,
        says: if drive == Drive::None { Says::NotDriven } else { Says::Driven },
        reason,
        told: Some(drive),
    })
}

/// What was seen at the hubs, the class of vehicle aside.
fn observed(seen: &[Evidence], axles: usize) -> Vec<Ground> {
    let mut grounds: Vec<Ground> = seen.iter().flat_map(grounds_of).chain(held_only_in_gear(seen)).collect();
    for ground in &mut grounds {
        if ground.axle.is_none_or(|axle| axle == 0 || usize::from(axle) > axles) {
            ground.says = Says::Nothing;
            ground.reason = Reason::NoSuchAxle;
        }
    }
    grounds
}

/// Which axles drive.
///
/// - The manual's answer is enough, or both ends of the vehicle seen. The end of
///   several axles drives as soon as one of them can.
/// - A trailer drives on no axle, unless a shaft is seen: a contradiction.
/// - The owner's word alone settles nothing, but tells all-wheel from part-time
///   drive once shafts are seen at both ends. Where a manual answers and nothing
///   seen contradicts it, the owner's other word is shown among `against`.
/// - Evidence about an axle that the vehicle does not have is kept among `silent`.
pub fn verdict(layout: &Layout, class: Class, seen: &[Evidence], told: &Told) -> Verdict {
    let grounds = observed(seen, layout.axles.len());
    let (axles, clashes): (Vec<_>, Vec<_>) = (1u8..)
        .take(layout.axles.len())
        .map(|number| axle_state(&grounds.iter().copied().filter(|g| g.axle == Some(number)).collect::<Vec<_>>()))
        .unzip();
    let view = View::new(layout, &grounds, &axles);
    let trailer = matches!(class, Class::LightTrailer | Class::Trailer);
    let firm = statement(told.manual, Reason::Manual)
        .or_else(|| statement(trailer.then_some(Drive::None), Reason::TrailerClass));
    let owner = statement(told.owner, Reason::Owner);

    let clash = |statement: Option<Ground>, drive: Option<Drive>| {
        let (one, other) = (statement?, view.contradicts(drive?)?);
        Some(Contradiction { one, other })
    };
    let within = clashes.into_iter().flatten().next();
    let nothing_drives = (view.drive() == Some(Drive::None) && firm.is_none())
        .then(|| {
            let not = |says| says == Says::NotDriven;
            Some(Contradiction { one: view.find(&view.front, not)?, other: view.find(&view.rear, not)? })
        })
        .flatten();
    let firm_clash = clash(firm, firm.and_then(|ground| ground.told));
    // "All-wheel" in an owner's mouth means part-time as well.
    let owner_drive = owner.and_then(|ground| ground.told);
    let owner_meant = owner_drive.map(|drive| if drive == Drive::All { Drive::PartTime } else { drive });
    let owner_clash = if firm.is_none() { clash(owner, owner_meant) } else { None };
    let contradiction = within.or(nothing_drives).or(firm_clash).or(owner_clash);

    let answer = firm.and_then(|ground| ground.told).or_else(|| view.drive()).unwrap_or_default();
    let drive = match (contradiction, answer, owner_drive) {
        (Some(_), ..) => Drive::Unknown,
        (None, Drive::All, Some(Drive::PartTime)) if firm.is_none() => Drive::PartTime,
        (None, answer, _) => answer,
    };
    let either = drive == Drive::All && firm.is_none() && owner_drive != Some(Drive::All);

    let next_look = if let Some(clash) = within.or(nothing_drives) {
        clash.other.axle.zip(clash.other.side).map(|(axle, side)| NextLook::BehindHub { axle, side })
    } else if firm_clash.is_some() {
        Some(NextLook::VehiclePlate)
    } else if owner_clash.is_some() {
        Some(NextLook::Manual)
    } else if drive == Drive::Unknown {
        let open: Vec<_> = view.ends().into_iter().filter(|end| end.drives().is_none()).collect();
        match open.as_slice() {
            [first, _, ..] if told.manual.is_some() => view.behind_open_hub(first),
            [only] => view.behind_open_hub(only),
            _ => Some(NextLook::Manual),
        }
    } else if either {
        Some(NextLook::TransferControl)
    } else {
        // Of several axles at an end that drives, each is worth knowing.
        let several = |end: &&End<'_>| end.axles.len() > 1 && end.wanted(drive) == Some(true);
        view.ends().into_iter().filter(several).find_map(|end| view.behind_open_hub(end))
    };

    let (silent, speaking): (Vec<_>, Vec<_>) = grounds.iter().copied().partition(|g| g.says == Says::Nothing);
    let spoken = firm.into_iter().chain(owner).chain(speaking);
    let (against, for_) = spoken.partition(|g| drive != Drive::Unknown && view.speaks_against(g, drive));
    Verdict {
        drive,
        or: either.then_some(Drive::PartTime),
        axles: axles.clone(),
        for_,
        against,
        silent,
        contradiction,
        next_look,
    }
}
