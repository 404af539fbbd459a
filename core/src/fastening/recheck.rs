use serde::Serialize;

use crate::fastener::TorqueSpec;
use crate::measure::{Distance, DistanceUnit};
use crate::source::{Grade, Source};

/// One recheck, as distance driven after tightening.
///
/// ```
/// use lugbook::fastening::{TorqueSpec, recheck};
/// use lugbook::measure::DistanceUnit;
/// let list = recheck(&TorqueSpec::printed(["100 ft-lb".parse()?]), DistanceUnit::Kilometre);
/// assert_eq!((list[0].from.unwrap().to_string(), list[0].by.to_string()), ("80 km".into(), "160 km".into()));
/// # Ok::<(), lugbook::fastener::BadSpec>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Recheck {
    /// Not before this, when a window is given.
    pub from: Option<Distance>,
    /// At this distance at the latest.
    pub by: Distance,
    /// Whether the manual prints it.
    pub origin: RecheckOrigin,
    /// How far to trust it.
    pub source: Source,
}

/// Who says so.
///
/// ```
/// use lugbook::fastening::{RecheckAt, RecheckOrigin, TorqueSpec, recheck};
/// use lugbook::measure::DistanceUnit;
/// let mut spec = TorqueSpec::printed(["100 ft-lb".parse()?]);
/// spec.recheck = vec![RecheckAt { from: None, by: "25 mi".parse()? }];
/// assert_eq!(recheck(&spec, DistanceUnit::Mile)[0].origin, RecheckOrigin::Printed);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum RecheckOrigin {
    /// The vehicle's manual.
    Printed,
    /// The trade: the manual prints none.
    TradeDefault,
}

/// The rechecks of a specification: as printed, else the trade's 50 to 100 mi or
/// 80 to 160 km (grade S: generic installer charts), in the unit that is asked for.
///
/// ```
/// use lugbook::fastening::{recheck, RecheckOrigin, TorqueSpec};
/// use lugbook::measure::DistanceUnit;
/// let list = recheck(&TorqueSpec::printed(["100 ft-lb".parse()?]), DistanceUnit::Mile);
/// assert_eq!(list.first().map(|r| (r.by.to_string(), r.origin)), Some(("100 mi".to_owned(), RecheckOrigin::TradeDefault)));
/// # Ok::<(), lugbook::fastener::BadSpec>(())
/// ```
pub fn recheck(spec: &TorqueSpec, unit: DistanceUnit) -> Vec<Recheck> {
    if spec.recheck.is_empty() {
        return trade_default(unit).into_iter().collect();
    }
    let source = Source::read(Grade::Manual, "the vehicle's manual, as recorded");
    spec.recheck.iter().map(|at| Recheck { from: at.from, by: at.by, origin: RecheckOrigin::Printed, source }).collect()
}

/// Where the trade's recheck window was read: one secondary source, a generic
/// installer's chart; two truck makers' manuals print the same figures for their own wheels.
pub const TRADE_RECHECK: Source = Source::read(Grade::Secondary, "generic installer chart");

/// The trade's recheck window where no specification gives one: 50 to 100 mi or 80 to 160 km ([`TRADE_RECHECK`]).
///
/// ```
/// use lugbook::fastening::trade_recheck;
/// use lugbook::measure::DistanceUnit;
/// let (from, by) = trade_recheck(DistanceUnit::Mile).unwrap();
/// assert_eq!((from.value(), by.value()), (50.0, 100.0));
/// ```
pub fn trade_recheck(unit: DistanceUnit) -> Option<(Distance, Distance)> {
    let (from, by) = match unit {
        DistanceUnit::Mile => (50.0, 100.0),
        DistanceUnit::Kilometre => (80.0, 160.0),
    };
    Some((Distance::new(from, unit).ok()?, Distance::new(by, unit).ok()?))
}

fn trade_default(unit: DistanceUnit) -> Option<Recheck> {
    let (from, by) = trade_recheck(unit)?;
    Some(Recheck { from: Some(from), by, origin: RecheckOrigin::TradeDefault, source: TRADE_RECHECK })
}
