use serde::Serialize;

use super::target::Target;
use crate::fastener::Wrench;
use crate::measure::Torque;

/// What to do with a nut by the torque it was found at or brought to.
///
/// ```
/// use lugbook::fastening::{Overrun, TorqueSpec, Wrench, overrun, target};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let found = target(&spec, &wrench).unwrap();
/// assert_eq!(overrun(&found, &wrench, &"140 N.m".parse()?, true), Overrun::Within);
/// assert_eq!(overrun(&found, &wrench, &"140 N.m".parse()?, false), Overrun::ReplaceStud);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Overrun {
    /// Not tighter than the specification allows.
    Within,
    /// Tighter than the specification allows: loosen it, look at stud and seat, tighten again.
    /// Never leave it, never only back it off to the mark.
    LoosenLookAgain,
    /// It turned on without getting tighter: the stud is stretched or the thread
    /// stripped. Replace the stud before the wheel carries weight.
    ReplaceStud,
}

/// The over-tight rule (common practice, no source; the maker's manual goes before it).
///
/// Too tight is above the published range's upper end, or, for a single-value
/// specification, above the target by more than the wrench's accuracy.
///
/// ```
/// use lugbook::fastening::{overrun, target, Overrun, TorqueSpec, Wrench};
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let found = target(&TorqueSpec::printed(["125..150 N.m".parse()?]), &wrench).unwrap();
/// assert_eq!(overrun(&found, &wrench, &"160 N.m".parse()?, true), Overrun::LoosenLookAgain);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn overrun(target: &Target, wrench: &Wrench, found: &Torque, got_tighter: bool) -> Overrun {
    if !got_tighter {
        return Overrun::ReplaceStud;
    }
    let unit = target.target.unit();
    let highest = match target.band {
        Some(band) => band.max.in_unit(unit),
        None => target.target.value() * (1.0 + wrench.accuracy_percent / 100.0),
    };
    if found.in_unit(unit) > highest + 1e-9 { Overrun::LoosenLookAgain } else { Overrun::Within }
}
