//! What a step asks for, from a closed list.

use serde::{Deserialize, Serialize};

use crate::entry::{Answer, Arm, Fact, LookAt, Pass, PhotoOf};
use crate::vehicle::Place;

/// What a step asks for. Each is answered by facts of its own kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ask {
    /// That something was seen.
    Seen,
    /// That the vehicle was rocked and stood.
    Rocked,
    /// That something was seen which makes the vehicle ready to be raised.
    Ready,
    /// What the vehicle has that changes how it is raised.
    Equipment,
    /// The weight that is raised, and the gear's rating.
    Weigh,
    /// Outer nuts of duals loosened again, so that the inner ones can be set.
    Loosened,
    /// One of the step's choices.
    Choice,
    /// How many.
    Count,
    /// How many nuts a wheel has, 3 to 12.
    Studs,
    /// The vehicle walked round: damage, or none.
    Damage,
    /// The customer's approval.
    Approval,
    /// The odometer.
    Odometer,
    /// The placard pressures, or not known.
    Placard,
    /// The wheel torque, or not known.
    Torque,
    /// Which axles drive.
    Drive,
    /// A photo of the outer sidewall.
    SidewallPhoto,
    /// What stands on the sidewall.
    Sidewall,
    /// A mark chalked on the tire.
    Mark,
    /// Tread depths.
    Tread,
    /// A choice of moves.
    Plan,
    /// Which wheels come off.
    Wheels,
    /// The set of wheels that goes on.
    Set,
    /// The wheels that came off stored, each with its rack.
    Stored,
    /// Which tire is flat, and the spare that takes its place.
    Spare,
    /// A photo of what made a tire flat.
    FlatPhoto,
    /// A photo of the whole vehicle as it came.
    VehiclePhoto,
    /// Nuts cracked loose on the ground.
    Cracked,
    /// Wheels just clear of the ground.
    RaisedClear,
    /// At working height.
    RaisedFull,
    /// On locks or stands seen to hold.
    Held,
    /// A wheel off.
    WheelOff,
    /// Parts looked at while the wheel is off.
    Looks,
    /// A photo of what is not sound.
    FindingPhoto,
    /// The mark read at the corner and the wheel hung.
    MarkRead,
    /// Each nut begun by hand.
    Started,
    /// Nuts snug in order.
    Snug,
    /// Nobody and nothing under the vehicle.
    AllClear,
    /// On the ground.
    Lowered,
    /// Final torque.
    Final,
    /// Nuts checked again after some miles.
    Rechecked,
    /// Cold pressure set.
    Pressure,
    /// The pressure as it was found.
    PressureFound,
    /// The pressure warning lamp.
    Lamp,
    /// The pressure warning lamp before anything is done.
    LampBefore,
    /// The recheck told.
    Recheck,
    /// The signature.
    Signature,
}

impl Ask {
    /// The parts that a step which asks for looks means when it names none.
    pub const PARTS: [LookAt; 5] = [LookAt::HubFace, LookAt::Studs, LookAt::Seats, LookAt::Valve, LookAt::Tire];

    /// The code in procedure files.
    pub fn code(self) -> &'static str {
        match self {
            Self::Seen => "seen",
            Self::Rocked => "rocked",
            Self::Ready => "ready",
            Self::Equipment => "equipment",
            Self::Weigh => "weigh",
            Self::Loosened => "loosened",
            Self::Choice => "choice",
            Self::Count => "count",
            Self::Studs => "studs",
            Self::Damage => "damage",
            Self::Approval => "approval",
            Self::Odometer => "odometer",
            Self::Placard => "placard",
            Self::Torque => "torque",
            Self::Drive => "drive",
            Self::SidewallPhoto => "sidewall-photo",
            Self::Sidewall => "sidewall",
            Self::Mark => "mark",
            Self::Tread => "tread",
            Self::Plan => "plan",
            Self::Wheels => "wheels",
            Self::Set => "set",
            Self::Stored => "stored",
            Self::Spare => "spare",
            Self::FlatPhoto => "flat-photo",
            Self::VehiclePhoto => "vehicle-photo",
            Self::Cracked => "cracked",
            Self::RaisedClear => "raised-clear",
            Self::RaisedFull => "raised-full",
            Self::Held => "held",
            Self::WheelOff => "wheel-off",
            Self::Looks => "looks",
            Self::FindingPhoto => "finding-photo",
            Self::MarkRead => "mark-read",
            Self::Started => "started",
            Self::Snug => "snug",
            Self::AllClear => "all-clear",
            Self::Lowered => "lowered",
            Self::Final => "final",
            Self::Rechecked => "rechecked",
            Self::Pressure => "pressure",
            Self::PressureFound => "pressure-found",
            Self::Lamp => "lamp",
            Self::LampBefore => "lamp-before",
            Self::Recheck => "recheck",
            Self::Signature => "signature",
        }
    }

    /// Whether the step turns nuts, so that it is not asked of a spare on its carrier.
    pub fn works_on_nuts(self) -> bool {
        self.pass().is_some() || matches!(self, Self::MarkRead | Self::Looks)
    }

    /// The pass over nuts that the step asks for.
    pub fn pass(self) -> Option<Pass> {
        Some(match self {
            Self::Cracked => Pass::Cracked,
            Self::Started => Pass::Started,
            Self::Snug => Pass::Snug,
            Self::Final => Pass::Final,
            Self::Rechecked => Pass::Recheck,
            Self::Loosened => Pass::Loosened,
            _ => return None,
        })
    }

    /// What a fact answers, and where; none for facts that answer no step. A
    /// generic answer ([`Fact::StepDone`]) names its step itself and is not in here.
    pub fn answered_by(fact: &Fact) -> Option<(Self, Option<Place>)> {
        Some(match fact {
            Fact::DamageSeen { .. } => (Self::Damage, None),
            Fact::WorkApproved { .. } => (Self::Approval, None),
            Fact::OdometerRead { .. } => (Self::Odometer, None),
            Fact::DriveSeen { .. } => (Self::Drive, None),
            Fact::PhotoTaken { of: PhotoOf::Sidewall, at, .. } => (Self::SidewallPhoto, *at),
            Fact::PhotoTaken { of: PhotoOf::Vehicle, .. } => (Self::VehiclePhoto, None),
            Fact::PhotoTaken { of: PhotoOf::Damage, .. } => (Self::FlatPhoto, None),
            Fact::SidewallRead { at, .. } => (Self::Sidewall, Some(*at)),
            Fact::MarkChalked { at, .. } => (Self::Mark, Some(*at)),
            Fact::TreadMeasured { at, .. } => (Self::Tread, Some(*at)),
            Fact::PlanChosen { .. } => (Self::Plan, None),
            Fact::WheelsChosen { .. } => (Self::Wheels, None),
            Fact::SetBrought { .. } => (Self::Set, None),
            Fact::SpareSeen { .. } => (Self::Spare, None),
            Fact::NutTightened { at, pass, .. } => (
                match pass {
                    Pass::Cracked => Self::Cracked,
                    Pass::Started => Self::Started,
                    Pass::Snug => Self::Snug,
                    Pass::Final => Self::Final,
                    Pass::Recheck => Self::Rechecked,
                    Pass::Loosened => Self::Loosened,
                },
                Some(*at),
            ),
            Fact::Lifted { arm, at, .. } => (
                match arm {
                    Arm::Clear => Self::RaisedClear,
                    Arm::Full => Self::RaisedFull,
                    Arm::Held => Self::Held,
                    Arm::AllClear => Self::AllClear,
                    Arm::Down => Self::Lowered,
                },
                *at,
            ),
            Fact::WheelOff { at, .. } => (Self::WheelOff, Some(*at)),
            Fact::FindingNoted { look, .. } => (Self::Looks, look.at),
            Fact::MarkRead { at, .. } => (Self::MarkRead, Some(*at)),
            Fact::PressureMeasured { at, set: true, .. } => (Self::Pressure, Some(*at)),
            Fact::SensorRead { lamp: Some(_), .. } => (Self::Lamp, None),
            Fact::RecheckTold { .. } => (Self::Recheck, None),
            Fact::GearRated { .. } => (Self::Weigh, None),
            Fact::JobSigned { .. } => (Self::Signature, None),
            _ => return None,
        })
    }

    /// Whether an answer is of the kind that this asks for.
    pub fn takes(self, answer: &Answer) -> bool {
        match self {
            Self::Seen | Self::Rocked | Self::Ready => matches!(answer, Answer::Seen),
            Self::Choice => matches!(answer, Answer::Choice(_)),
            Self::Count => matches!(answer, Answer::Count(_)),
            Self::Studs => matches!(answer, Answer::Count(3..=12)),
            _ => false,
        }
    }
}
