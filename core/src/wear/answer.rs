//! What the readings say.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::measure::{Depth, DepthUnit, Distance, DistanceUnit, THIRTY_SECOND_MM};
use crate::source::{Grade, Source};
use crate::vehicle::Place;

use super::fit::{Combination, Fit, Prior};
use super::forecast::{Ahead, Interval, Left, Line};
use super::history::{History, Mistake, Sample, Samples};
use super::tread::{Check, TreadPattern, patterns};

/// What is asked of a history.
///
/// ```
/// use lugbook::wear::Question;
/// let question = Question { interval: "8000 km".parse().ok(), ..Question::default() };
/// assert!(question.limits.is_empty() && question.prior.is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Question {
    /// The limit depth by axle number; where none is given, the wear bars' 2/32 in.
    pub limits: BTreeMap<u8, Depth>,
    /// An expectation of rates; it only narrows a rate that the readings determine.
    pub prior: Option<Prior>,
    /// The usual distance between visits, when it is known.
    pub interval: Option<Distance>,
}

/// What the readings say.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm"), read("15000 km", "6.5 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// assert!(answer.unknown.is_none() && answer.slipped.is_empty());
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// Each tire that is on the vehicle or was read last, by place.
    pub tires: Vec<TireWear>,
    /// The rate at each position the readings determine.
    pub positions: Vec<PositionWear>,
    /// Readings that do not fit the others: counted less or not at all.
    pub slipped: Vec<Slipped>,
    /// What keeps rates from being told, when none or not all can be.
    pub unknown: Option<Unknown>,
    /// When to look again, as an odometer figure.
    pub next_visit: NextVisit,
}

/// One tire.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm"), read("15000 km", "6.5 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// let tire = &answer.tires[0];
/// assert!((tire.limit_mm - 1.5875).abs() < 1e-9 && tire.left_km.is_some());
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TireWear {
    /// Its name in the history.
    pub tire: String,
    /// Where it stands now; where it was read last when it was taken off.
    pub at: Place,
    /// Its shallowest groove at its last reading, in mm, by the fit of all readings.
    pub depth_mm: Interval,
    /// How fast the place where it stands wears, in mm per 1,000 km.
    pub rate: Option<Interval>,
    /// The distance it has left to its limit there, in km from its last reading.
    pub left_km: Option<Left>,
    /// Its depth further on, for a drawing; none where its rate is unknown, or on its carrier.
    #[serde(skip)]
    pub ahead: Option<Ahead>,
    /// The limit in mm.
    pub limit_mm: f64,
    /// How its wear lies; empty when it can't be told.
    pub pattern: Vec<TreadPattern>,
    /// What to check.
    pub check: Vec<Check>,
    /// The unit of its last odometer reading, for telling distances.
    #[serde(skip)]
    pub unit: DistanceUnit,
}

/// One position.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm"), read("15000 km", "6.5 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// assert!((answer.positions[0].rate.mid - 0.1).abs() < 1e-9);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PositionWear {
    /// The position.
    pub at: Place,
    /// Its rate in mm per 1,000 km.
    pub rate: Interval,
}

/// A reading that does not fit.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let readings = vec![read("0 km", "8.0 mm"), read("10000 km", "7.0 mm"), read("15000 km", "2.0 mm"), read("20000 km", "6.0 mm"), read("30000 km", "5.0 mm")];
/// let history = History { readings, moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// assert_eq!((answer.slipped[0].reading, answer.slipped[0].weight), (3, 0.0));
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Slipped {
    /// Which reading, from 1, as given.
    pub reading: usize,
    /// The tire.
    pub tire: String,
    /// Where it was read.
    pub at: Place,
    /// The odometer in km.
    pub odometer_km: f64,
    /// What was read, in mm.
    pub read_mm: f64,
    /// What the others let expect, in mm.
    pub expected_mm: f64,
    /// How much it still counts, 0 to 1.
    pub weight: f64,
    /// The unit its odometer was read in.
    #[serde(skip)]
    pub unit: DistanceUnit,
}

/// Why rates can't be told.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// assert_eq!(answer.unknown, Some(lugbook::wear::Unknown::OneVisit));
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unknown {
    /// There is one visit only.
    OneVisit,
    /// No tire was read at two odometer figures.
    NoTireTwice,
    /// Some positions can't be told apart yet.
    SomePositions,
}

/// When to look again.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// // The short end of a manual's interval, as nothing is known yet.
/// assert_eq!(answer.next_visit.odometer_km, 5_000.0);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct NextVisit {
    /// The odometer figure in km.
    pub odometer_km: f64,
    /// What it is set by.
    pub by: SetBy,
    /// The source of the distance, when it is a default.
    pub source: Option<Source>,
    /// The unit of the last odometer reading, for telling the figure.
    #[serde(skip)]
    pub unit: DistanceUnit,
}

/// What sets the next visit.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// assert_eq!(answer.next_visit.by, lugbook::wear::SetBy::UnknownWear);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SetBy {
    /// The usual distance between visits.
    Interval,
    /// No rate is known: the short end of a manual's interval.
    UnknownWear,
    /// A tire may reach its limit before the usual visit.
    Limit,
}

/// A manual's interval, in km: 5,000 to 10,000 (one maker's manual, grade O).
const MANUAL_KM: (f64, f64) = (5_000.0, 10_000.0);
const MANUAL: Source = Source::read(Grade::Manual, "an owner's manual: rotate every 5,000 to 10,000 km");
/// The depth of molded wear bars (FMVSS 119, NHTSA letter 11497).
const WEAR_BARS_MM: f64 = 2.0 * THIRTY_SECOND_MM;

/// Says what a history of readings tells.
///
/// # Errors
/// When there is no reading, a reading has no depth, two tires were at one place
/// at once, there are too many readings, or a setting is no number.
///
/// ```
/// use lugbook::wear::{wear, History, Question, Reading};
/// let read = |km: &str, depth: &str| Reading {
///     tire: "a".to_owned(),
///     odometer: km.parse().unwrap(),
///     at: lugbook::vehicle::Place::parse("FL").unwrap(),
///     grooves: vec![depth.parse().unwrap()],
///     lowest: None,
///     practice: false,
/// };
/// let history = History { readings: vec![read("0 km", "8.0 mm"), read("15000 km", "6.5 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// let rate = answer.tires[0].rate.unwrap();
/// assert!((rate.mid - 0.1).abs() < 1e-9);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
pub fn wear(history: &History, question: &Question) -> Result<Answer, Mistake> {
    if let Some(prior) = question.prior {
        let fine = prior.mm_per_1000_km.is_finite() && prior.deviation.is_finite();
        if !fine || prior.deviation <= 0.0 || prior.mm_per_1000_km < 0.0 {
            return Err(Mistake::Figure { what: "prior" });
        }
    }
    let samples = history.samples()?;
    let fit = Fit::of(&samples, question.prior);
    let positions: Vec<PositionWear> =
        fit.places().into_iter().filter_map(|at| Some(PositionWear { at, rate: rate_of(&fit, at)? })).collect();
    let tires = tires(history, &samples, &fit, question);
    let slipped = slipped(history, &samples, &fit);
    let unknown = unknown(&samples, &tires);
    let next_visit = next_visit(history, &samples, &tires, question);
    Ok(Answer { tires, positions, slipped, unknown, next_visit })
}

/// A rate with its interval, never below nothing.
fn rate_of(fit: &Fit, at: Place) -> Option<Interval> {
    if at == Place::Spare {
        return Some(Interval { low: 0.0, mid: 0.0, high: 0.0 });
    }
    let rate = fit.rate(at)?;
    Some(Interval::of_depth(rate.value, fit.reach * rate.variance.max(0.0).sqrt()))
}

fn tires(history: &History, samples: &Samples, fit: &Fit, question: &Question) -> Vec<TireWear> {
    let mut all: Vec<TireWear> = Vec::new();
    for (number, name) in samples.tires.iter().enumerate() {
        let Some(last) = samples.all.iter().rfind(|sample| sample.tire == number) else { continue };
        let stands = history.now_at(name, last.at_thousand, last.place);
        let at = stands.unwrap_or(last.place);
        let Some(depth) = depth_now(fit, last) else { continue };
        let axle = at.position().map(|position| position.axle);
        let limit = axle.and_then(|axle| question.limits.get(&axle));
        let limit_mm = limit.map_or(WEAR_BARS_MM, |limit| limit.in_unit(DepthUnit::Millimetre));
        let line = line(fit, last, at).filter(|_| at != Place::Spare);
        let found = history.readings.get(last.reading).and_then(|reading| {
            let lowest = reading.lowest;
            patterns(&reading.grooves, lowest, reading.step_mm())
        });
        let pattern = found.unwrap_or_default();
        let mut check: Vec<Check> = pattern.iter().flat_map(|pattern| pattern.checks().iter().copied()).collect();
        let mut told = Vec::new();
        check.retain(|c| {
            !told.contains(c) && {
                told.push(*c);
                true
            }
        });
        all.push(TireWear {
            tire: name.clone(),
            at,
            depth_mm: depth,
            rate: rate_of(fit, at),
            left_km: line.map(|line| line.until(limit_mm, fit.reach)),
            ahead: line.map(|line| Ahead { line, reach: fit.reach }),
            limit_mm,
            pattern,
            check,
            unit: unit_of(history, last),
        });
    }
    // A place that later took another tire is that tire's: what went before is off the vehicle.
    let newest = |tire: &str| {
        samples
            .all
            .iter()
            .filter(|s| samples.tires.get(s.tire).is_some_and(|t| t == tire))
            .map(|s| s.at_thousand)
            .fold(0.0, f64::max)
    };
    let places: Vec<(Place, f64, String)> = all.iter().map(|t| (t.at, newest(&t.tire), t.tire.clone())).collect();
    all.retain(|tire| {
        let mine = newest(&tire.tire);
        !places.iter().any(|(at, seen, name)| *at == tire.at && *name != tire.tire && *seen > mine)
    });
    all.sort_by(|a, b| a.at.cmp(&b.at).then(a.tire.cmp(&b.tire)));
    all
}

/// The depth at a sample by the fit; by the reading itself when the fit leaves it open.
fn depth_now(fit: &Fit, sample: &Sample) -> Option<Interval> {
    let half = |variance: f64| fit.reach * variance.max(0.0).sqrt();
    match fit.estimate(&depth_combination(fit, sample)) {
        Some(estimate) => Some(Interval::of_depth(estimate.value, half(estimate.variance))),
        None => Some(Interval::of_depth(sample.depth_mm, half(sample.error_mm.powi(2)))),
    }
}

fn depth_combination(fit: &Fit, sample: &Sample) -> Combination {
    let mut combination = vec![(sample.tire, 1.0)];
    for (place, thousand) in &sample.ran {
        if let Some(column) = fit.column(*place) {
            combination.push((column, -thousand));
        }
    }
    combination
}

fn line(fit: &Fit, sample: &Sample, at: Place) -> Option<Line> {
    let depth = depth_combination(fit, sample);
    let rate: Combination = vec![(fit.column(at)?, 1.0)];
    let (depth_now, rate_now) = (fit.estimate(&depth)?, fit.estimate(&rate)?);
    Some(Line {
        depth_mm: depth_now.value,
        rate: rate_now.value,
        depth_variance: depth_now.variance.max(0.0),
        rate_variance: rate_now.variance.max(0.0),
        covariance: fit.covariance_of(&depth, &rate),
    })
}

/// The unit a sample's odometer was read in.
fn unit_of(history: &History, sample: &Sample) -> DistanceUnit {
    history.readings.get(sample.reading).map_or(DistanceUnit::Kilometre, |reading| reading.odometer.unit())
}

fn slipped(history: &History, samples: &Samples, fit: &Fit) -> Vec<Slipped> {
    let mut slipped: Vec<Slipped> = samples
        .all
        .iter()
        .zip(fit.weights.iter().zip(&fit.expected))
        .filter(|(_, (weight, _))| **weight < 1.0)
        .filter_map(|(sample, (weight, expected))| {
            Some(Slipped {
                reading: sample.reading + 1,
                tire: samples.tires.get(sample.tire)?.clone(),
                at: sample.place,
                odometer_km: sample.at_thousand * 1000.0,
                read_mm: sample.depth_mm,
                expected_mm: *expected,
                weight: *weight,
                unit: unit_of(history, sample),
            })
        })
        .collect();
    slipped.sort_by_key(|slip| slip.reading);
    slipped
}

fn unknown(samples: &Samples, tires: &[TireWear]) -> Option<Unknown> {
    let first = samples.all.first().map(|s| s.at_thousand);
    let one_visit = samples.all.iter().all(|s| Some(s.at_thousand) == first);
    if one_visit {
        return Some(Unknown::OneVisit);
    }
    if samples.all.iter().all(|s| s.ran.is_empty()) {
        return Some(Unknown::NoTireTwice);
    }
    tires.iter().any(|tire| tire.rate.is_none()).then_some(Unknown::SomePositions)
}

fn next_visit(history: &History, samples: &Samples, tires: &[TireWear], question: &Question) -> NextVisit {
    let last = samples.all.iter().max_by(|a, b| a.at_thousand.total_cmp(&b.at_thousand));
    let now = last.map_or(0.0, |sample| sample.at_thousand * 1000.0);
    let unit = last.map_or(DistanceUnit::Kilometre, |sample| unit_of(history, sample));
    let known = tires.iter().all(|tire| tire.rate.is_some());
    let usual = question.interval.map(|interval| interval.in_unit(DistanceUnit::Kilometre));
    let (distance, by, source) = match (usual, known) {
        (Some(usual), _) => (usual, SetBy::Interval, None),
        (None, true) => (MANUAL_KM.1, SetBy::Interval, Some(MANUAL)),
        (None, false) => (MANUAL_KM.0, SetBy::UnknownWear, Some(MANUAL)),
    };
    // Distances left count from each tire's own last reading.
    let soonest = tires
        .iter()
        .filter_map(|tire| {
            let last = samples.all.iter().rfind(|s| samples.tires.get(s.tire) == Some(&tire.tire))?;
            Some(tire.left_km?.low + last.at_thousand * 1000.0)
        })
        .fold(f64::INFINITY, f64::min);
    if soonest < now + distance {
        return NextVisit { odometer_km: soonest.max(now), by: SetBy::Limit, source: None, unit };
    }
    NextVisit { odometer_km: now + distance, by, source, unit }
}
