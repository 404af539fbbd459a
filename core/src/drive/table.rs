//! What each combination means.
//!
//! All rows follow from how an open, a locking and a disengaged axle move;
//! the choice of rows is common practice without a source. The first row that
//! fits counts, and the last one fits everything.

use serde::Serialize;

use crate::vehicle::hub::{
    AxleMotor, Differential, Engine, FreeHubs, Gear, Hub, OffGround, Opposite, ParkingBrake, ShaftMotion, Turned,
    WheelMotion,
};

/// What one observation says about its axle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Says {
    /// The axle drives.
    Driven,
    /// The axle can drive and the driver engages it.
    ByChoice,
    /// The axle can drive and is not coupled just now.
    Uncoupled,
    /// Probably drives; settles nothing alone.
    LeansDriven,
    /// Probably does not drive; settles nothing alone.
    LeansNot,
    /// The axle does not drive.
    NotDriven,
    /// Nothing at all.
    Nothing,
}

impl Says {
    /// Whether it shows that the axle has shafts to drive with.
    pub fn can_drive(self) -> bool {
        matches!(self, Self::Driven | Self::ByChoice | Self::Uncoupled)
    }
}

/// Why an observation says what it says; one message each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reason {
    /// A shaft runs into the hub.
    ShaftSeen,
    /// Nothing runs into the hub from behind.
    NoShaftSeen,
    /// A splined end or axle nut in the middle of the hub, which may be a short stub that only clamps a bearing.
    ShaftEndSeen,
    /// A cover hides the middle of the hub.
    HubCovered,
    /// A closed bearing unit looks the same on both kinds of axle.
    CaplessUnit,
    /// Free-wheeling hubs belong to an axle that the driver engages.
    FreeHubsFitted,
    /// The axle has a motor of its own.
    OwnMotor,
    /// The engine was running.
    EngineRunning,
    /// The wheels stood on the ground.
    OnTheGround,
    /// The parking brake was set.
    BrakeSet,
    /// The wheel was held and nobody knows whether by the parking brake.
    BrakeNotKnown,
    /// The free-wheeling hubs were set free, which cuts the wheel off.
    HubsFree,
    /// The shaft turned with the wheel.
    ShaftTurned,
    /// The shaft turned with the wheel while the gearbox was held: the axle is not coupled to it just now.
    ShaftTurnedNotHeld,
    /// The shaft stayed still while the wheel turned: something at the hub is open.
    ShaftStayed,
    /// The opposite wheel turned the other way: a differential joins them.
    OtherWay,
    /// The opposite wheel turned the same way: a limited-slip or locking differential, or a dragging one, joins them.
    SameWay,
    /// The wheels turned together while the gearbox was held: the axle is not coupled to it just now.
    SameWayNotHeld,
    /// In neutral the drive line turns along, so a still opposite wheel says nothing.
    FreeInNeutral,
    /// Nobody watched the opposite wheel.
    OppositeNotWatched,
    /// The gearbox was held and the wheel turned alone.
    TurnsAloneInGear,
    /// The motor's gears turn along, so a still opposite wheel says nothing.
    MotorTurnsAlong,
    /// The wheel was held in neutral: a brake or a bearing drags.
    HeldInNeutral,
    /// Held by the gearbox through a locking differential.
    HeldThroughLocking,
    /// Held while the gearbox was held; a dragging brake would feel the same.
    HeldInGear,
    /// The same wheel was held in gear or park and turned in neutral.
    HeldOnlyInGear,
    /// The vehicle has no such axle.
    NoSuchAxle,
    /// It is a trailer.
    TrailerClass,
    /// The manual says so.
    Manual,
    /// The owner says so.
    Owner,
}

impl Reason {
    /// All reasons.
    pub const ALL: [Self; 30] = [
        Self::ShaftSeen,
        Self::NoShaftSeen,
        Self::ShaftEndSeen,
        Self::HubCovered,
        Self::CaplessUnit,
        Self::FreeHubsFitted,
        Self::OwnMotor,
        Self::EngineRunning,
        Self::OnTheGround,
        Self::BrakeSet,
        Self::BrakeNotKnown,
        Self::HubsFree,
        Self::ShaftTurned,
        Self::ShaftTurnedNotHeld,
        Self::ShaftStayed,
        Self::OtherWay,
        Self::SameWay,
        Self::SameWayNotHeld,
        Self::FreeInNeutral,
        Self::OppositeNotWatched,
        Self::TurnsAloneInGear,
        Self::MotorTurnsAlong,
        Self::HeldInNeutral,
        Self::HeldThroughLocking,
        Self::HeldInGear,
        Self::HeldOnlyInGear,
        Self::NoSuchAxle,
        Self::TrailerClass,
        Self::Manual,
        Self::Owner,
    ];
}

/// One row for a look at a hub.
#[derive(Debug, Clone, Copy)]
pub struct LookRow {
    /// What the hub showed.
    pub hub: Hub,
    /// What that says.
    pub says: Says,
    /// Why.
    pub reason: Reason,
}

/// What a look at a hub says. [`Hub::NotLooked`] has no row.
pub const LOOKS: &[LookRow] = &[
    LookRow { hub: Hub::Shaft, says: Says::Driven, reason: Reason::ShaftSeen },
    LookRow { hub: Hub::NoShaft, says: Says::NotDriven, reason: Reason::NoShaftSeen },
    LookRow { hub: Hub::ShaftEnd, says: Says::LeansDriven, reason: Reason::ShaftEndSeen },
    LookRow { hub: Hub::Covered, says: Says::Nothing, reason: Reason::HubCovered },
    LookRow { hub: Hub::CaplessUnit, says: Says::Nothing, reason: Reason::CaplessUnit },
];

/// One row for a wheel turned by hand; an empty list fits everything.
#[derive(Debug, Clone, Copy)]
pub struct TurnRow {
    engine: &'static [Engine],
    off_ground: &'static [OffGround],
    brake: &'static [ParkingBrake],
    gear: &'static [Gear],
    wheel: &'static [WheelMotion],
    shaft: &'static [ShaftMotion],
    opposite: &'static [Opposite],
    differential: &'static [Differential],
    free_hubs: &'static [FreeHubs],
    motor: &'static [AxleMotor],
    /// What that says.
    pub says: Says,
    /// Why.
    pub reason: Reason,
}

/// A row that fits everything.
const ANY: TurnRow = TurnRow {
    engine: &[],
    off_ground: &[],
    brake: &[],
    gear: &[],
    wheel: &[],
    shaft: &[],
    opposite: &[],
    differential: &[],
    free_hubs: &[],
    motor: &[],
    says: Says::Nothing,
    reason: Reason::OppositeNotWatched,
};

const HOLDING: &[Gear] = &[Gear::Park, Gear::InGear];
const NEUTRAL: &[Gear] = &[Gear::Neutral];
const TURNS: &[WheelMotion] = &[WheelMotion::Turns];
const HELD: &[WheelMotion] = &[WheelMotion::Held];
const BOTH: &[OffGround] = &[OffGround::Both];
const OWN: &[AxleMotor] = &[AxleMotor::Own];

/// What a wheel turned by hand says; the first row that fits counts.
pub const HAND_TURNS: &[TurnRow] = &[
    TurnRow { engine: &[Engine::Running], reason: Reason::EngineRunning, ..ANY },
    TurnRow { off_ground: &[OffGround::None], reason: Reason::OnTheGround, ..ANY },
    TurnRow { brake: &[ParkingBrake::Set], reason: Reason::BrakeSet, ..ANY },
    TurnRow { brake: &[ParkingBrake::NotKnown], wheel: HELD, reason: Reason::BrakeNotKnown, ..ANY },
    // A shaft that is watched says more than the opposite wheel.
    TurnRow { wheel: TURNS, shaft: &[ShaftMotion::Still], says: Says::Uncoupled, reason: Reason::ShaftStayed, ..ANY },
    TurnRow {
        wheel: TURNS,
        shaft: &[ShaftMotion::WithWheel],
        motor: OWN,
        says: Says::Driven,
        reason: Reason::ShaftTurned,
        ..ANY
    },
    TurnRow {
        wheel: TURNS,
        shaft: &[ShaftMotion::WithWheel],
        gear: HOLDING,
        off_ground: BOTH,
        opposite: &[Opposite::SameWay, Opposite::Still],
        says: Says::Uncoupled,
        reason: Reason::ShaftTurnedNotHeld,
        ..ANY
    },
    TurnRow {
        wheel: TURNS,
        shaft: &[ShaftMotion::WithWheel],
        gear: HOLDING,
        off_ground: &[OffGround::One],
        says: Says::Uncoupled,
        reason: Reason::ShaftTurnedNotHeld,
        ..ANY
    },
    TurnRow { wheel: TURNS, shaft: &[ShaftMotion::WithWheel], says: Says::Driven, reason: Reason::ShaftTurned, ..ANY },
    // Free hubs cut the wheel off, so what it does says nothing about the shafts.
    TurnRow { free_hubs: &[FreeHubs::Free], reason: Reason::HubsFree, ..ANY },
    // Both ends in the air, the wheel turns.
    TurnRow {
        wheel: TURNS,
        off_ground: BOTH,
        opposite: &[Opposite::OtherWay],
        says: Says::Driven,
        reason: Reason::OtherWay,
        ..ANY
    },
    TurnRow {
        wheel: TURNS,
        off_ground: BOTH,
        opposite: &[Opposite::SameWay],
        gear: NEUTRAL,
        says: Says::Driven,
        reason: Reason::SameWay,
        ..ANY
    },
    TurnRow {
        wheel: TURNS,
        off_ground: BOTH,
        opposite: &[Opposite::SameWay],
        motor: OWN,
        says: Says::Driven,
        reason: Reason::SameWay,
        ..ANY
    },
    TurnRow {
        wheel: TURNS,
        off_ground: BOTH,
        opposite: &[Opposite::SameWay],
        says: Says::Uncoupled,
        reason: Reason::SameWayNotHeld,
        ..ANY
    },
    TurnRow { wheel: TURNS, gear: NEUTRAL, opposite: &[Opposite::Still], reason: Reason::FreeInNeutral, ..ANY },
    TurnRow { wheel: TURNS, gear: NEUTRAL, off_ground: &[OffGround::One], reason: Reason::FreeInNeutral, ..ANY },
    TurnRow { wheel: TURNS, off_ground: BOTH, opposite: &[Opposite::NotTried], ..ANY },
    TurnRow { wheel: TURNS, motor: OWN, reason: Reason::MotorTurnsAlong, ..ANY },
    // In park or gear, alone: not coupled to the gearbox; a disengaged axle would do the same.
    TurnRow { wheel: TURNS, says: Says::LeansNot, reason: Reason::TurnsAloneInGear, ..ANY },
    // The wheel is held.
    TurnRow { gear: NEUTRAL, reason: Reason::HeldInNeutral, ..ANY },
    TurnRow {
        off_ground: BOTH,
        differential: &[Differential::Locking],
        says: Says::Driven,
        reason: Reason::HeldThroughLocking,
        ..ANY
    },
    TurnRow { says: Says::LeansDriven, reason: Reason::HeldInGear, ..ANY },
];

impl TurnRow {
    fn fits(&self, turned: &Turned, differential: Differential, free_hubs: FreeHubs, motor: AxleMotor) -> bool {
        fn any<T: PartialEq>(list: &[T], value: T) -> bool {
            list.is_empty() || list.contains(&value)
        }
        any(self.engine, turned.engine)
            && any(self.off_ground, turned.off_ground)
            && any(self.brake, turned.brake)
            && any(self.gear, turned.gear)
            && any(self.wheel, turned.wheel)
            && any(self.shaft, turned.shaft)
            && any(self.opposite, turned.opposite)
            && any(self.differential, differential)
            && any(self.free_hubs, free_hubs)
            && any(self.motor, motor)
    }
}

/// What a wheel turned by hand says about its axle.
///
/// ```
/// use lugbook::drive::{Reason, Says, of_turn};
/// use lugbook::vehicle::hub::*;
/// // Both wheels hang free, park, brake off: the other wheel turns backwards.
/// let turned = Turned {
///     gear: Gear::Park, brake: ParkingBrake::Released, off_ground: OffGround::Both, engine: Engine::Off,
///     wheel: WheelMotion::Turns, shaft: ShaftMotion::NotSeen, opposite: Opposite::OtherWay,
/// };
/// let (says, reason) = of_turn(&turned, Differential::NotKnown, FreeHubs::NotKnown, AxleMotor::NotKnown);
/// assert_eq!((says, reason), (Says::Driven, Reason::OtherWay));
/// ```
pub fn of_turn(turned: &Turned, differential: Differential, free_hubs: FreeHubs, motor: AxleMotor) -> (Says, Reason) {
    HAND_TURNS
        .iter()
        .find(|row| row.fits(turned, differential, free_hubs, motor))
        .map_or((ANY.says, ANY.reason), |row| (row.says, row.reason))
}

/// What a look at a hub says; `None` when nobody looked.
pub fn of_look(hub: Hub) -> Option<(Says, Reason)> {
    LOOKS.iter().find(|row| row.hub == hub).map(|row| (row.says, row.reason))
}
