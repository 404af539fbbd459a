use crate::entry::{self, Shelf, Turned};
use crate::fastener::{Lubrication, NutOutcome, Pass, Printed, RecheckAt, TorqueSpec, judge};

/// The torque specification on a shelf; `None` for another kind, or when its
/// two ends are no range.
///
/// The condition is taken as *dry* or *oiled* only when it is that one word;
/// anything longer stays in the manual's words. A thread that cannot be read
/// stays unknown.
///
/// ```
/// use lugbook::entry::Shelf;
/// use lugbook::fastening::spec_of;
/// let shelf = Shelf::Torque {
///     low: "125 N.m".parse()?,
///     high: "150 N.m".parse()?,
///     thread: Some("M14 x 1.5".to_owned()),
///     condition: Some("dry".to_owned()),
///     recheck: vec!["25 mi".parse()?],
///     studs: Some(5),
/// };
/// assert_eq!(spec_of(&shelf).unwrap().printed[0].to_string(), "125..150 N.m");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn spec_of(shelf: &Shelf) -> Option<TorqueSpec> {
    let Shelf::Torque { low, high, thread, condition, recheck, .. } = shelf else { return None };
    let mut spec = TorqueSpec::printed([Printed::range(*low, *high).ok()?]);
    spec.thread = thread.as_deref().and_then(|thread| thread.parse().ok());
    spec.condition = condition.as_deref().map_or(Lubrication::NotKnown, condition_of);
    spec.recheck = recheck.iter().map(|by| RecheckAt { from: None, by: *by }).collect();
    Some(spec)
}

fn condition_of(text: &str) -> Lubrication {
    match text.trim().to_lowercase().as_str() {
        "" => Lubrication::NotKnown,
        "dry" => Lubrication::Dry,
        "oiled" => Lubrication::Oiled,
        _ => Lubrication::AsManualSays(text.trim().to_owned()),
    }
}

/// What a nut's answer means, from the entry's words; `None` for passes without a click.
pub fn outcome(pass: entry::Pass, turned: Turned) -> Option<NutOutcome> {
    let pass = match pass {
        entry::Pass::Final => Pass::FirstFinal,
        entry::Pass::Recheck => Pass::Recheck,
        entry::Pass::Cracked | entry::Pass::Started | entry::Pass::Snug => return None,
    };
    Some(judge(pass, turned == Turned::Moved))
}
