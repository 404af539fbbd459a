use serde::Serialize;

use super::gas::at_temperature;
use crate::calendar::Moment;
use crate::measure::{Pressure, PressureUnit, Temperature};

/// What a gauge showed at one visit: as found, and as left.
///
/// ```
/// use lugbook::inflation::{Visit, leak};
/// let visit = |at: &str, found: &str| Visit {
///     at: at.parse().unwrap(),
///     found: found.parse().unwrap(),
///     left: None,
///     temperature: None,
/// };
/// assert_eq!(leak(&[visit("2026-05-01T09:00:00Z", "240 kPa")]), None, "one visit says nothing");
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Visit {
    /// When.
    pub at: Moment,
    /// The cold pressure as found.
    pub found: Pressure,
    /// The pressure it was set to; `None` when nothing was done.
    pub left: Option<Pressure>,
    /// The tire's temperature, the shop's for a tire that has rested.
    pub temperature: Option<Temperature>,
}

/// How fast a tire loses air.
///
/// ```
/// use lugbook::inflation::{Visit, leak};
/// let visit = |at: &str, found: &str| Visit {
///     at: at.parse().unwrap(),
///     found: found.parse().unwrap(),
///     left: None,
///     temperature: None,
/// };
/// let leak = leak(&[visit("2026-05-01T09:00:00Z", "240 kPa"), visit("2026-05-31T09:00:00Z", "235 kPa")]).unwrap();
/// assert!(!leak.temperature_known && !leak.slow_leak && leak.pairs == 1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Leak {
    /// Loss in kPa per 30 days; negative when it gained.
    pub kpa_per_30_days: f64,
    /// Over how many days.
    pub days: f64,
    /// From how many pairs of visits.
    pub pairs: usize,
    /// Each pair's temperatures were known and taken out. Without them a change
    /// of 10 °F alone looks like about 1 psi (computed).
    pub temperature_known: bool,
    /// Faster than a sound tire: look for a slow leak.
    pub slow_leak: bool,
}

/// A tire that loses more than this has a slow leak, kPa per 30 days: about
/// 3 psi; a sound one loses about 1 psi (common practice, no source).
const SLOW_LEAK_KPA: f64 = 20.0;
/// What a gauge and a temperature nobody noted may feign, kPa: about 4 psi (a design choice).
const UNKNOWN_TEMPERATURE_KPA: f64 = 28.0;
/// What two readings of a gauge may differ by themselves, kPa: about 1 psi (common practice, no source).
const GAUGE_KPA: f64 = 7.0;
const MS_PER_DAY: f64 = 86_400_000.0;

/// How fast a tire loses air, from visits in any order.
///
/// Between two visits the loss is from what was left to what was found, both
/// carried to the first visit's temperature by the gas law when both are known;
/// the rate is all losses over all days. `None` without two visits a day or
/// more apart.
///
/// ```
/// use lugbook::inflation::{leak, Visit};
/// let visit = |at: &str, found: &str, left: &str| Visit {
///     at: at.parse().unwrap(),
///     found: found.parse().unwrap(),
///     left: left.parse().ok(),
///     temperature: "20 C".parse().ok(),
/// };
/// let history = [visit("2026-05-01T09:00:00Z", "230 kPa", "240 kPa"), visit("2026-05-31T09:00:00Z", "200 kPa", "")];
/// let found = leak(&history).unwrap();
/// assert!(found.slow_leak && (found.kpa_per_30_days - 40.0).abs() < 1e-9);
/// ```
pub fn leak(history: &[Visit]) -> Option<Leak> {
    let mut visits = history.to_vec();
    visits.sort_by_key(|visit| visit.at);
    let kpa = |pressure: Pressure| pressure.in_unit(PressureUnit::Kilopascal);
    let (mut lost, mut days, mut pairs, mut temperature_known) = (0.0, 0.0, 0, true);
    for (before, after) in visits.iter().zip(visits.iter().skip(1)) {
        let apart = (after.at.unix_ms() - before.at.unix_ms()) as f64 / MS_PER_DAY;
        if apart < 1.0 {
            continue;
        }
        let found = match (before.temperature, after.temperature) {
            (Some(then), Some(now)) => match at_temperature(after.found, now, then) {
                Ok(found) => kpa(found),
                // So empty that the colder tire would be below the atmosphere: empty.
                Err(_) => 0.0,
            },
            _ => {
                temperature_known = false;
                kpa(after.found)
            }
        };
        lost += kpa(before.left.unwrap_or(before.found)) - found;
        days += apart;
        pairs += 1;
    }
    if pairs == 0 {
        return None;
    }
    let kpa_per_30_days = lost / days * 30.0;
    let doubt = if temperature_known { GAUGE_KPA } else { UNKNOWN_TEMPERATURE_KPA };
    let slow_leak = kpa_per_30_days > SLOW_LEAK_KPA && lost > doubt;
    Some(Leak { kpa_per_30_days, days, pairs, temperature_known, slow_leak })
}
