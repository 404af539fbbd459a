use serde::{Deserialize, Serialize};

/// How wheels are mounted at one end of an axle.
///
/// ```
/// use lugbook::fastener::Mounting;
/// assert_eq!(Mounting::default(), Mounting::OneSet);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Mounting {
    /// One wheel, or duals held by one set of nuts (hub-piloted).
    #[default]
    OneSet,
    /// Duals with inner and outer cap nuts (stud-piloted).
    StudPilotedDual,
}

/// Which nuts of a stud-piloted dual.
///
/// ```
/// use lugbook::fastener::Layer;
/// assert_eq!(serde_json::to_string(&Layer::Inner)?, "\"inner\"");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Layer {
    /// The only set there is.
    Only,
    /// The inner cap nuts.
    Inner,
    /// The outer cap nuts.
    Outer,
}

/// One round over the nuts of a wheel.
///
/// ```
/// use lugbook::fastener::Stage;
/// assert!(Stage::HandStart < Stage::Snug && Stage::Snug < Stage::Final);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// Every nut begun by hand.
    HandStart,
    /// Seated in order, well under the target.
    Snug,
    /// To the target with the wrench, weight on the tire.
    Final,
    /// Loosened again: the outer nuts, so that the inner ones can be set.
    Loosen,
    /// The wrench once more after some driving.
    Recheck,
}

/// What the wrench pass was: the two read a click without movement differently.
///
/// ```
/// use lugbook::fastener::{NutOutcome, Pass, judge};
/// // The same click without movement: not proven at first, wanted at a recheck.
/// assert_eq!(judge(Pass::FirstFinal, false), NutOutcome::BackOffQuarterAndAgain);
/// assert_eq!(judge(Pass::Recheck, false), NutOutcome::Held);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pass {
    /// The first pass to the target after the wheel was fitted.
    FirstFinal,
    /// A later look at the same nuts.
    Recheck,
}

/// What a nut's answer to the wrench means.
///
/// ```
/// use lugbook::fastener::{NutOutcome, Pass, judge};
/// assert_eq!(judge(Pass::Recheck, true), NutOutcome::MovedRecordAndRepeat);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NutOutcome {
    /// First final pass, moved and then clicked: tight as set.
    Proven,
    /// First final pass, clicked without moving: it may be tighter than set,
    /// or stuck. Back it off a quarter turn and tighten again.
    BackOffQuarterAndAgain,
    /// Recheck, clicked without moving: the wanted answer.
    Held,
    /// Recheck, moved before it clicked: write it down and do the recheck again.
    MovedRecordAndRepeat,
}

impl NutOutcome {
    /// Whether the nut needs nothing more now.
    ///
    /// ```
    /// use lugbook::fastener::NutOutcome;
    /// assert!(NutOutcome::Held.is_done() && !NutOutcome::BackOffQuarterAndAgain.is_done());
    /// ```
    pub fn is_done(self) -> bool {
        matches!(self, Self::Proven | Self::Held)
    }
}

/// Reads what a nut did under the wrench (common practice, no source).
///
/// ```
/// use lugbook::fastening::{judge, NutOutcome, Pass};
/// assert_eq!(judge(Pass::FirstFinal, false), NutOutcome::BackOffQuarterAndAgain);
/// assert_eq!(judge(Pass::Recheck, false), NutOutcome::Held);
/// ```
pub fn judge(pass: Pass, moved: bool) -> NutOutcome {
    match (pass, moved) {
        (Pass::FirstFinal, true) => NutOutcome::Proven,
        (Pass::FirstFinal, false) => NutOutcome::BackOffQuarterAndAgain,
        (Pass::Recheck, false) => NutOutcome::Held,
        (Pass::Recheck, true) => NutOutcome::MovedRecordAndRepeat,
    }
}
