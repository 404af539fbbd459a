//! What a tool's papers say, as a person types it.

use serde::{Deserialize, Serialize};

use crate::fastener::Power;

/// When a measuring tool was calibrated, and how often its papers or its owner want it.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Calibrations {
    /// The last time, a day; none when not known.
    pub last: Option<String>,
    /// Again after so many months, 1 to 120; none when nobody set that.
    pub every_months: Option<u16>,
}

/// What a tool is, with what its papers say.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "tool", rename_all = "kebab-case")]
pub enum Papers {
    /// A torque wrench.
    Wrench {
        /// Accuracy: `4 %`.
        accuracy: String,
        /// The scale's step: `1 N.m`.
        step: String,
        /// The ends of its scale: `40..200 N.m`.
        range: Option<String>,
        /// Its calibration.
        calibration: Calibrations,
    },
    /// A tread depth gauge.
    DepthGauge {
        /// The smallest step it shows.
        step: String,
        /// Its calibration.
        calibration: Calibrations,
    },
    /// A pressure gauge.
    PressureGauge {
        /// The smallest step it shows.
        step: Option<String>,
        /// The highest pressure it shows.
        highest: Option<String>,
        /// Its calibration.
        calibration: Calibrations,
    },
    /// An impact gun.
    Gun {
        /// What drives it.
        power: Power,
        /// Its greatest torque.
        greatest: Option<String>,
    },
    /// A torque-limiting bar.
    Bar {
        /// The torque marked on it.
        rating: String,
        /// Its socket across flats: `21 mm`.
        hex: Option<String>,
        /// The strongest gun that its marking holds for.
        for_guns_up_to: Option<String>,
    },
    /// A jack.
    Jack {
        /// What it lifts, as marked.
        rating: Option<String>,
    },
    /// Stands.
    Stand {
        /// What each holds, as marked.
        rating: Option<String>,
        /// How many there are.
        count: Option<u8>,
    },
    /// A lift.
    Lift {
        /// What it lifts, as marked.
        rating: Option<String>,
    },
}
