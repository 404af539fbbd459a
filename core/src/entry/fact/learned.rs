//! What somebody who learns answered, and what an instructor signed as seen.

use serde::{Deserialize, Serialize};

use crate::measure::Torque;
use crate::vehicle::{Drive, Place};

/// A decision of a job that can be asked about, and answered by a learner first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Decision {
    /// Which axles drive.
    Drive,
    /// Which pattern the moves follow.
    Pattern,
    /// What is raised one after another.
    Lifts,
    /// In which order a wheel's nuts are tightened.
    Order,
    /// What the wrench is set to.
    Target,
}

impl Decision {
    /// All of them, in the order of a visit.
    pub const ALL: [Self; 5] = [Self::Drive, Self::Pattern, Self::Lifts, Self::Order, Self::Target];

    /// The code in data.
    pub fn code(self) -> &'static str {
        match self {
            Self::Drive => "drive",
            Self::Pattern => "pattern",
            Self::Lifts => "lifts",
            Self::Order => "order",
            Self::Target => "target",
        }
    }
}

/// What a learner answered, and what the core answered at that moment; none when it did not know.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "of", rename_all = "kebab-case")]
pub enum Learned {
    /// Which axles drive.
    Drive {
        /// The learner's.
        answer: Drive,
        /// The core's.
        core: Option<Drive>,
    },
    /// The pattern's code.
    Pattern {
        /// The learner's.
        answer: String,
        /// The core's.
        core: Option<String>,
    },
    /// What is raised, one lift after another.
    Lifts {
        /// The learner's.
        answer: Vec<Vec<Place>>,
        /// The core's.
        core: Option<Vec<Vec<Place>>>,
    },
    /// Nuts by clock position.
    Order {
        /// The learner's.
        answer: Vec<u8>,
        /// The core's.
        core: Option<Vec<u8>>,
    },
    /// What the wrench is set to.
    Target {
        /// The learner's.
        answer: Torque,
        /// The core's.
        core: Option<Torque>,
    },
}

impl Learned {
    /// Which decision it answers.
    pub fn decision(&self) -> Decision {
        match self {
            Self::Drive { .. } => Decision::Drive,
            Self::Pattern { .. } => Decision::Pattern,
            Self::Lifts { .. } => Decision::Lifts,
            Self::Order { .. } => Decision::Order,
            Self::Target { .. } => Decision::Target,
        }
    }
}

/// A step at a place that an instructor signed as seen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SeenStep {
    /// The step's id.
    pub step: String,
    /// Where, for a step at each wheel.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Place>,
}
