//! When the wheels want to be looked at again: rechecks and the next visit.
//!
//! Everything is a distance driven or an odometer figure. A date is given only
//! from the owner's own estimate of the distance driven in a year, and carries
//! that label. What the vehicle's manual prints comes first; the trade's usual
//! figures stand in with their grade.
//!
//! ```
//! use lugbook::due::{self, Interval, Odometer};
//! let last = Odometer::read("41230 mi".parse()?);
//! let visit = due::next_visit(Some(&last), &Interval::Trade, None).unwrap();
//! let odometer = visit.odometer.unwrap();
//! assert_eq!(odometer.by.to_string(), "46230 mi");
//! assert!(!visit.interval.source.grade.may_refuse());
//! # Ok::<(), lugbook::measure::Misread>(())
//! ```

use serde::{Deserialize, Serialize};

use crate::calendar::Day;
use crate::entry::OdometerNote;
use crate::fastening::{self, TRADE_RECHECK};
use crate::measure::{Distance, DistanceUnit};
use crate::source::{Grade, Source};

/// From one distance to another, in one unit: driven since the work, or on the odometer.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Window {
    /// Not before; `None` when only the end is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<Distance>,
    /// At this distance at the latest.
    pub by: Distance,
}

impl Window {
    /// Up to a distance.
    pub fn by(by: Distance) -> Self {
        Self { from: None, by }
    }

    /// From one distance to another; the order does not matter.
    pub fn between(one: Distance, other: Distance) -> Self {
        if other < one { Self { from: Some(other), by: one } } else { Self { from: Some(one), by: other } }
    }

    /// The window on an odometer that stood at `start`, in the odometer's unit;
    /// `None` beyond what an odometer can show.
    pub fn on_odometer(&self, start: Distance) -> Option<Self> {
        let shift = |distance: Distance| {
            let unit = start.unit();
            Distance::new((start.value() + distance.in_unit(unit)).round(), unit).ok()
        };
        let from = match self.from {
            Some(from) => Some(shift(from)?),
            None => None,
        };
        Some(Self { from, by: shift(self.by)? })
    }
}

/// A window and where it comes from.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Sourced {
    /// Distance driven since the work.
    pub after: Window,
    /// How far to trust it.
    pub source: Source,
}

/// An odometer as it was read.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Odometer {
    /// The figure.
    pub at: Distance,
    /// What must be known about it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<OdometerNote>,
}

impl Odometer {
    /// A figure that was read.
    pub fn read(at: Distance) -> Self {
        Self { at, note: None }
    }
}

/// One recheck of the nuts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Recheck {
    /// After which distance, and who says so.
    pub due: Sourced,
    /// On this vehicle's odometer, when it was read at the work.
    pub odometer: Option<Window>,
}

/// A manual's printed figure: the grade of an owner's manual page.
pub const PRINTED: Source = Source::read(Grade::Manual, "the vehicle's own specification, as printed");

/// A distance that was told to the driver and stands on no paper of this book.
pub const TOLD: Source = Source::MEMORY;

/// The trade's rotation interval was not looked up as a whole: of its figures only
/// the 5,000 mi end stands in secondary pages.
pub const TRADE_INTERVAL: Source = Source::MEMORY;

/// A window of whole figures in a unit.
fn window(from: f64, by: f64, unit: DistanceUnit) -> Option<Window> {
    Some(Window::between(Distance::new(from, unit).ok()?, Distance::new(by, unit).ok()?))
}

/// The trade's recheck window ([`fastening::trade_recheck`]) as a window.
pub fn trade_recheck(unit: DistanceUnit) -> Option<Window> {
    let (from, by) = fastening::trade_recheck(unit)?;
    Some(Window::between(from, by))
}

/// The trade's rotation interval, in the unit of the vehicle: 5,000–8,000 km or
/// 3,000–5,000 mi, from memory; secondary pages name 5,000 mi as the end.
pub fn trade_interval(unit: DistanceUnit) -> Option<Window> {
    match unit {
        DistanceUnit::Mile => window(3_000.0, 5_000.0, unit),
        DistanceUnit::Kilometre => window(5_000.0, 8_000.0, unit),
    }
}

/// When the nuts are to be checked again: as printed, in order of distance and
/// each once; where nothing is printed, the trade's window.
///
/// ```
/// use lugbook::due;
/// let printed = ["500 mi".parse()?, "100 mi".parse()?];
/// let told: Vec<_> = due::rechecks(&printed, None).iter().map(|r| r.due.after.by.to_string()).collect();
/// assert_eq!(told, ["100 mi", "500 mi"]);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn rechecks(printed: &[Distance], tightened: Option<&Odometer>) -> Vec<Recheck> {
    let mut windows: Vec<Sourced> =
        printed.iter().map(|by| Sourced { after: Window::by(*by), source: PRINTED }).collect();
    windows.sort_by(|a, b| a.after.by.partial_cmp(&b.after.by).unwrap_or(std::cmp::Ordering::Equal));
    // 100 mi (160 km) is one distance printed in two rounded units.
    let km = |sourced: &Sourced| sourced.after.by.in_unit(DistanceUnit::Kilometre);
    windows.dedup_by(|later, kept| (km(later) - km(kept)).abs() <= km(kept) * 0.01);
    if windows.is_empty() {
        let unit = tightened.map_or(DistanceUnit::Mile, |odometer| odometer.at.unit());
        windows.extend(trade_recheck(unit).map(|after| Sourced { after, source: TRADE_RECHECK }));
    }
    windows
        .into_iter()
        .map(|due| Recheck { due, odometer: tightened.and_then(|odometer| due.after.on_odometer(odometer.at)) })
        .collect()
}

/// Who says how far it is to the next rotation.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Interval {
    /// The vehicle's manual, as printed.
    Manual(Window),
    /// Nobody: the trade's usual figures.
    Trade,
}

/// What sets the end of the window to the next visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SetBy {
    /// The interval.
    Interval,
    /// A tire that may reach its limit before the interval ends.
    Wear,
}

/// The next visit.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Visit {
    /// The distance between visits, and who says so.
    pub interval: Sourced,
    /// On the odometer; `None` when it was not read.
    pub odometer: Option<Window>,
    /// The figure it starts from was estimated.
    pub estimated: bool,
    /// What sets the end.
    pub set_by: SetBy,
}

/// When to rotate next; `None` for an interval that ends at zero, which says nothing.
///
/// `limit_at` is the odometer figure at which the first tire may reach its
/// limit (the low end of its forecast): when that comes before the interval
/// ends, it sets the end, but never before the odometer's own figure.
pub fn next_visit(last: Option<&Odometer>, interval: &Interval, limit_at: Option<Distance>) -> Option<Visit> {
    let unit = last.map_or(DistanceUnit::Kilometre, |odometer| odometer.at.unit());
    let interval = match interval {
        Interval::Manual(window) => Sourced { after: *window, source: PRINTED },
        Interval::Trade => Sourced { after: trade_interval(unit)?, source: TRADE_INTERVAL },
    };
    if interval.after.by.value() <= 0.0 {
        return None;
    }
    let estimated = last.is_some_and(|odometer| odometer.note == Some(OdometerNote::Estimated));
    let window = last.and_then(|odometer| interval.after.on_odometer(odometer.at));
    let (odometer, set_by) = match (window, limit_at, last) {
        (Some(window), Some(limit), Some(last)) if limit < window.by => {
            let by = if limit < last.at { last.at } else { limit.to_unit(unit) };
            let from = window.from.filter(|from| *from < by);
            (Some(Window { from, by }), SetBy::Wear)
        }
        (window, ..) => (window, SetBy::Interval),
    };
    Some(Visit { interval, odometer, estimated, set_by })
}

/// How a window stands against today's odometer.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "state")]
pub enum Standing {
    /// Not yet.
    Ahead {
        /// Distance left until the window opens.
        left: Distance,
    },
    /// Now.
    Due {
        /// Distance left until the window closes.
        left: Distance,
    },
    /// Late.
    Overdue {
        /// Distance driven beyond the window.
        over: Distance,
    },
    /// The odometers can't be compared: the instrument was replaced, or it shows less than before.
    NotKnown,
}

/// How a window on the odometer, counted from `start`, stands now. A window
/// without a beginning is ahead until its end is reached.
///
/// ```
/// use lugbook::due::{Odometer, Standing, Window, standing};
/// let start = "80000 km".parse()?;
/// let window = Window::between("85000 km".parse()?, "88000 km".parse()?);
/// let now = Odometer::read("86000 km".parse()?);
/// assert_eq!(standing(&window, start, &now), Standing::Due { left: "2000 km".parse()? });
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn standing(window: &Window, start: Distance, now: &Odometer) -> Standing {
    let unit = window.by.unit();
    let at = now.at.in_unit(unit);
    if now.note == Some(OdometerNote::ClusterReplaced) || at < start.in_unit(unit) {
        return Standing::NotKnown;
    }
    let gap = |value: f64| Distance::new(value, unit).ok();
    let by = window.by.value();
    let from = window.from.map_or(by, |from| from.in_unit(unit));
    let found = if at > by {
        gap(at - by).map(|over| Standing::Overdue { over })
    } else if at >= from {
        gap(by - at).map(|left| Standing::Due { left })
    } else {
        gap(from - at).map(|left| Standing::Ahead { left })
    };
    found.unwrap_or(Standing::NotKnown)
}

/// The owner's own estimate of the distance driven in a year.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct YearlyEstimate {
    /// Distance in a year.
    pub per_year: Distance,
}

/// Dates that rest on the owner's estimate, and say so by their type.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct EstimatedDates {
    /// Not before; `None` when only the end is given.
    pub from: Option<Day>,
    /// On this day at the latest.
    pub by: Day,
}

/// Mean length of a year in days (Gregorian calendar, 365 + 1/4 - 1/100 + 1/400).
const DAYS_IN_A_YEAR: f64 = 365.2425;

/// The days on which a distance will have been driven, by the owner's estimate.
///
/// `None` when the estimate is zero, or so small that the end lies more than
/// fifty years ahead: such a date would mean nothing.
///
/// ```
/// use lugbook::due::{Window, YearlyEstimate, dates};
/// let after = Window::by("7500 km".parse()?);
/// let estimate = YearlyEstimate { per_year: "15000 km".parse()? };
/// let dates = dates(&after, "2026-01-01".parse().unwrap(), &estimate).unwrap();
/// assert_eq!(dates.by.to_string(), "2026-07-02");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn dates(after: &Window, since: Day, estimate: &YearlyEstimate) -> Option<EstimatedDates> {
    let day = |distance: Distance| {
        let years = distance.in_unit(DistanceUnit::Kilometre) / estimate.per_year.in_unit(DistanceUnit::Kilometre);
        // The cast is exact: at most 18,263 whole days.
        (years.is_finite() && years <= 50.0).then(|| since.plus_days((years * DAYS_IN_A_YEAR).floor() as i32))
    };
    let by = day(after.by)?;
    Some(EstimatedDates { from: after.from.and_then(day), by })
}
