//! What a gate waits for, from a closed list.

use serde::{Deserialize, Serialize};

use super::{Ask, Per, Step};
use crate::entry::{Decision, LookAt};
use crate::lifting::{Act, Refusal};
use crate::measure::{Load, Span};
use crate::vehicle::Place;

/// A condition that holds a step until it is met, or opened with a reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Condition {
    /// The customer approved the work.
    Approved,
    /// The place is safe to work at: level, firm, and traffic away from the flat tire.
    PlaceSafe,
    /// The key for locking nuts is at hand, or there are none.
    LockKey,
    /// Which axles drive is settled.
    DriveKnown,
    /// Moves were chosen.
    PlanChosen,
    /// The wheels that come off were named.
    WheelsChosen,
    /// The set that goes on was named.
    SetBrought,
    /// Nuts were cracked loose while the tires still stood.
    Cracked,
    /// The vehicle was raised until its wheels were just clear.
    Clear,
    /// The vehicle was rocked.
    Rocked,
    /// Locks or stands were seen to hold.
    Held,
    /// The wheel was taken off here.
    WheelIsOff,
    /// The mark read at the corner is the planned tire's.
    MarkFits,
    /// Each nut was begun by hand.
    Started,
    /// Each nut of each wheel was begun and is snug, and no wheel is off.
    AllSnug,
    /// No nut and no tool is left over.
    TrayEmpty,
    /// Nobody and nothing is under the vehicle.
    AllClear,
    /// The vehicle stands on its wheels.
    Down,
    /// The torque specification is known.
    TorqueKnown,
    /// Each nut of each wheel that came off has its final torque.
    FinalDone,
    /// Each nut of each wheel that was tightened last time was checked again.
    Rechecked,
    /// The customer was told of everything unsafe and answered.
    UnsafeTold,
    /// No seat or stud is unsafe at this wheel.
    SeatSound,
    /// It is the next action of the order of lifts. Each action of that order has this gate.
    InOrder,
    /// An instructor signed what must be seen of an apprentice's work. Each signature has this gate.
    InstructorSaw,
    /// The learner answered before the core did. Each step that rests on a decision has this gate.
    AnsweredFirst,
    /// Everything was seen that makes the vehicle ready to be raised.
    Ready,
    /// The gear is rated for the weight that is raised.
    GearRated,
    /// The two tires of a dual pair are near in diameter, the larger one outside.
    PairMatched,
    /// Valves and gap of every dual pair that was apart were seen.
    PairSeen,
    /// The outer nuts of a stud-piloted pair were loosened again.
    OuterLoosened,
    /// The inner nuts of a stud-piloted pair are set.
    InnerSet,
}

impl Condition {
    /// All conditions.
    pub const ALL: [Self; 32] = [
        Self::Approved,
        Self::PlaceSafe,
        Self::LockKey,
        Self::DriveKnown,
        Self::PlanChosen,
        Self::WheelsChosen,
        Self::SetBrought,
        Self::Cracked,
        Self::Clear,
        Self::Rocked,
        Self::Held,
        Self::WheelIsOff,
        Self::MarkFits,
        Self::Started,
        Self::AllSnug,
        Self::TrayEmpty,
        Self::AllClear,
        Self::Down,
        Self::TorqueKnown,
        Self::FinalDone,
        Self::Rechecked,
        Self::UnsafeTold,
        Self::SeatSound,
        Self::InOrder,
        Self::InstructorSaw,
        Self::AnsweredFirst,
        Self::Ready,
        Self::GearRated,
        Self::PairMatched,
        Self::PairSeen,
        Self::OuterLoosened,
        Self::InnerSet,
    ];

    /// Whether it is met by an answer to a step of the procedure, so that a step must ask for it.
    pub(super) fn needs_an_answer(self) -> bool {
        matches!(
            self,
            Self::PlaceSafe
                | Self::LockKey
                | Self::Rocked
                | Self::TrayEmpty
                | Self::Ready
                | Self::GearRated
                | Self::PairSeen
        )
    }

    /// Whether a step's answer can meet it.
    pub(super) fn is_answered_by(self, step: &Step) -> bool {
        match self {
            Self::PlaceSafe => [Unsafe::SLOPE, Unsafe::CLOSE].iter().all(|code| step.choices.iter().any(|c| c == code)),
            Self::LockKey => step.choices.iter().any(|choice| choice == "missing"),
            Self::Rocked => step.asks == Ask::Rocked,
            Self::TrayEmpty => step.asks == Ask::Count,
            Self::Ready => step.asks == Ask::Ready,
            Self::GearRated => step.asks == Ask::Weigh,
            // The pair is looked at once it hangs, and the file may ask for it later.
            Self::PairSeen => step.per == Per::Pair && step.asks == Ask::Seen,
            _ => false,
        }
    }

    /// The code in procedure files and on cards.
    pub fn code(self) -> &'static str {
        match self {
            Self::Approved => "approved",
            Self::PlaceSafe => "place-safe",
            Self::LockKey => "lock-key",
            Self::DriveKnown => "drive-known",
            Self::PlanChosen => "plan-chosen",
            Self::WheelsChosen => "wheels-chosen",
            Self::SetBrought => "set-brought",
            Self::Cracked => "cracked",
            Self::Clear => "clear",
            Self::Rocked => "rocked",
            Self::Held => "held",
            Self::WheelIsOff => "wheel-is-off",
            Self::MarkFits => "mark-fits",
            Self::Started => "started",
            Self::AllSnug => "all-snug",
            Self::TrayEmpty => "tray-empty",
            Self::AllClear => "all-clear",
            Self::Down => "down",
            Self::TorqueKnown => "torque-known",
            Self::FinalDone => "final-done",
            Self::Rechecked => "rechecked",
            Self::UnsafeTold => "unsafe-told",
            Self::SeatSound => "seat-sound",
            Self::InOrder => "in-order",
            Self::InstructorSaw => "instructor-saw",
            Self::AnsweredFirst => "answered-first",
            Self::Ready => "ready",
            Self::GearRated => "gear-rated",
            Self::PairMatched => "pair-matched",
            Self::PairSeen => "pair-seen",
            Self::OuterLoosened => "outer-loosened",
            Self::InnerSet => "inner-set",
        }
    }
}

/// Why nobody starts at a roadside place: the vehicle is towed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unsafe {
    /// The ground slopes or gives way.
    Slope,
    /// Traffic passes close by.
    Close,
    /// Traffic passes on the side of the flat tire.
    FlatSide,
}

impl Unsafe {
    /// The code of its sentence.
    pub fn code(self) -> &'static str {
        match self {
            Self::Slope => "slope",
            Self::Close => "close",
            Self::FlatSide => "flat-side",
        }
    }

    /// The choice that says that the ground slopes.
    pub(super) const SLOPE: &'static str = "slope";
    /// The choice that says that traffic passes close by.
    pub(super) const CLOSE: &'static str = "close";
    /// The choice that says that traffic passes on the left, clear of the vehicle.
    pub(super) const LEFT: &'static str = "traffic-left";
    /// The choice that says that traffic passes on the right.
    pub(super) const RIGHT: &'static str = "traffic-right";
}

/// What is wrong with two tires that are to stand side by side.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "pair", rename_all = "kebab-case")]
pub enum Mismatch {
    /// Size or tread of one is not known, and neither was measured around.
    NotKnown,
    /// Their diameters differ by more than the matching table allows.
    Apart {
        /// By how much.
        by: Span,
        /// The most that is allowed.
        allowed: Span,
    },
    /// The larger one is inside.
    LargerInside {
        /// By how much.
        by: Span,
    },
}

/// What a gate still waits for.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "condition", rename_all = "kebab-case")]
pub enum Unmet {
    /// The customer has not approved, or declined.
    Approved {
        /// Declined, not only unanswered.
        declined: bool,
    },
    /// Nobody said that the place is safe, or it is not.
    PlaceSafe {
        /// Why not; none when nobody looked.
        why: Option<Unsafe>,
        /// The flat tire, when traffic passes on its side.
        flat: Option<Place>,
    },
    /// Whether there is a key for locking nuts was not answered, or there is none.
    LockKey {
        /// The key was looked for and is missing.
        missing: bool,
    },
    /// Which axles drive is not settled.
    DriveKnown,
    /// No moves were chosen.
    PlanChosen,
    /// No wheel was named that comes off.
    WheelsChosen,
    /// No set was named that goes on.
    SetBrought,
    /// Nuts are not cracked loose at these places.
    Cracked {
        /// The first such place.
        at: Place,
    },
    /// The wheels are not just clear yet.
    Clear,
    /// The vehicle was not rocked.
    Rocked,
    /// Locks or stands were not seen to hold.
    Held,
    /// The wheel is still on.
    WheelIsOff {
        /// Where.
        at: Place,
    },
    /// The mark at the corner is not the planned tire's, or was not read.
    MarkFits {
        /// Where.
        at: Place,
        /// The mark that was read; none when none was.
        read: Option<String>,
        /// The mark of the tire that belongs here.
        wanted: Option<String>,
        /// Where the tire that was read belongs.
        belongs: Option<Place>,
    },
    /// Nuts were not begun by hand.
    Started {
        /// Where.
        at: Place,
        /// Which, by clock position.
        nuts: Vec<u8>,
    },
    /// Nuts are not snug.
    AllSnug {
        /// Where.
        at: Place,
        /// Which; empty when the wheel itself is off.
        nuts: Vec<u8>,
    },
    /// Nuts or tools are left, or were not counted.
    TrayEmpty {
        /// How many; none when not counted.
        left: Option<u32>,
    },
    /// Nobody said that it is clear under the vehicle.
    AllClear,
    /// The vehicle does not stand on its wheels.
    Down,
    /// The torque specification is not known.
    TorqueKnown,
    /// Nuts have no final torque.
    FinalDone {
        /// Where.
        at: Place,
        /// Which.
        nuts: Vec<u8>,
    },
    /// Nuts were not checked again.
    Rechecked {
        /// Where.
        at: Place,
        /// Which.
        nuts: Vec<u8>,
    },
    /// The customer was not told of something unsafe.
    UnsafeTold {
        /// Where.
        at: Option<Place>,
        /// What.
        part: LookAt,
    },
    /// A seat or a stud here is unsafe.
    SeatSound {
        /// Where.
        at: Place,
        /// What.
        part: LookAt,
    },
    /// Another action of the order of lifts comes first.
    InOrder {
        /// Its number.
        n: usize,
        /// What is done.
        act: Act,
        /// Where.
        at: Option<Place>,
    },
    /// No instructor signed a step of an apprentice.
    InstructorSaw {
        /// What the step asks.
        asks: Ask,
        /// Where.
        at: Option<Place>,
    },
    /// A learner answers this first.
    AnsweredFirst {
        /// The decision.
        decision: Decision,
    },
    /// The moves can't be done with the gear at hand.
    NoOrder {
        /// Why, and what would help.
        refusal: Refusal,
    },
    /// Something that makes the vehicle ready to be raised was not seen.
    Ready,
    /// Weight and rating are not known, or the rating is too low.
    GearRated {
        /// Weight and rating, when they were read.
        read: Option<(Load, Load)>,
    },
    /// The two tires of a pair do not belong side by side, as far as anybody knows.
    PairMatched {
        /// The outer one's place.
        at: Place,
        /// What is wrong.
        why: Mismatch,
    },
    /// Valves or gap of a pair were not seen.
    PairSeen {
        /// The outer one's place.
        at: Place,
    },
    /// Outer nuts are not loosened again.
    OuterLoosened {
        /// The outer one's place.
        at: Place,
        /// Which.
        nuts: Vec<u8>,
    },
    /// Inner nuts are not set.
    InnerSet {
        /// The inner one's place.
        at: Place,
        /// Which.
        nuts: Vec<u8>,
    },
}

impl Unmet {
    /// The condition that is not met.
    pub fn condition(&self) -> Condition {
        match self {
            Self::Approved { .. } => Condition::Approved,
            Self::PlaceSafe { .. } => Condition::PlaceSafe,
            Self::LockKey { .. } => Condition::LockKey,
            Self::DriveKnown => Condition::DriveKnown,
            Self::PlanChosen => Condition::PlanChosen,
            Self::WheelsChosen => Condition::WheelsChosen,
            Self::SetBrought => Condition::SetBrought,
            Self::Cracked { .. } => Condition::Cracked,
            Self::Clear => Condition::Clear,
            Self::Rocked => Condition::Rocked,
            Self::Held => Condition::Held,
            Self::WheelIsOff { .. } => Condition::WheelIsOff,
            Self::MarkFits { .. } => Condition::MarkFits,
            Self::Started { .. } => Condition::Started,
            Self::AllSnug { .. } => Condition::AllSnug,
            Self::TrayEmpty { .. } => Condition::TrayEmpty,
            Self::AllClear => Condition::AllClear,
            Self::Down => Condition::Down,
            Self::TorqueKnown => Condition::TorqueKnown,
            Self::FinalDone { .. } => Condition::FinalDone,
            Self::Rechecked { .. } => Condition::Rechecked,
            Self::UnsafeTold { .. } => Condition::UnsafeTold,
            Self::SeatSound { .. } => Condition::SeatSound,
            Self::InstructorSaw { .. } => Condition::InstructorSaw,
            Self::AnsweredFirst { .. } => Condition::AnsweredFirst,
            Self::InOrder { .. } | Self::NoOrder { .. } => Condition::InOrder,
            Self::Ready => Condition::Ready,
            Self::GearRated { .. } => Condition::GearRated,
            Self::PairMatched { .. } => Condition::PairMatched,
            Self::PairSeen { .. } => Condition::PairSeen,
            Self::OuterLoosened { .. } => Condition::OuterLoosened,
            Self::InnerSet { .. } => Condition::InnerSet,
        }
    }

    /// Where the gate waits.
    pub fn at(&self) -> Option<Place> {
        match self {
            Self::Cracked { at }
            | Self::WheelIsOff { at }
            | Self::MarkFits { at, .. }
            | Self::Started { at, .. }
            | Self::AllSnug { at, .. }
            | Self::FinalDone { at, .. }
            | Self::Rechecked { at, .. }
            | Self::PairMatched { at, .. }
            | Self::PairSeen { at }
            | Self::OuterLoosened { at, .. }
            | Self::InnerSet { at, .. }
            | Self::SeatSound { at, .. } => Some(*at),
            Self::InstructorSaw { at, .. }
            | Self::UnsafeTold { at, .. }
            | Self::InOrder { at, .. }
            | Self::PlaceSafe { flat: at, .. } => *at,
            _ => None,
        }
    }
}
