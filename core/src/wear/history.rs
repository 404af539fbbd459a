//! What was read of one vehicle's tires over its history, and where each tire ran.

use serde::Serialize;

use crate::measure::{Depth, DepthUnit, Distance, DistanceUnit};
use crate::vehicle::Place;

/// The most readings a history may have.
pub const MOST_READINGS: usize = 5_000;

/// How well a hand holds a tread gauge, in mm, one standard deviation: a choice
/// of this design, beside the gauge's own step.
pub const HANDLING_MM: f64 = 0.1;

/// One tire's tread, read at one visit, before anything was moved.
///
/// ```
/// use lugbook::vehicle::Place;
/// use lugbook::wear::Reading;
/// let reading = Reading {
///     tire: "left front".to_owned(),
///     odometer: "84210 mi".parse()?,
///     at: Place::parse("FL").unwrap(),
///     grooves: vec!["7/32".parse()?, "6/32".parse()?],
///     lowest: None,
///     practice: false,
/// };
/// assert!(reading.least_mm().is_some_and(|mm| (mm - 4.7625).abs() < 1e-9));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Reading {
    /// Which tire: any name that stays with the tire.
    pub tire: String,
    /// The odometer.
    pub odometer: Distance,
    /// Where the tire stood when it came in.
    pub at: Place,
    /// Each groove from the outer one inward.
    pub grooves: Vec<Depth>,
    /// The lowest spot seen anywhere on it.
    pub lowest: Option<Depth>,
    /// Read in a practice job: kept out.
    pub practice: bool,
}

/// A tire moved to another place, or off (`to` is `None`), between readings or after one.
///
/// ```
/// use lugbook::wear::Moved;
/// // Off the vehicle.
/// let moved = Moved { tire: "a".to_owned(), odometer: "90000 km".parse()?, to: None };
/// assert!(moved.to.is_none());
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Moved {
    /// Which tire.
    pub tire: String,
    /// The odometer.
    pub odometer: Distance,
    /// Where it went.
    pub to: Option<Place>,
}

/// The whole history of one vehicle's tires.
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
/// assert_eq!(wear(&history, &Question::default())?.tires.len(), 1);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct History {
    /// Readings in any order.
    pub readings: Vec<Reading>,
    /// Moves in any order. Without any, a tire is taken to have run where each
    /// reading found it since the reading before.
    pub moves: Vec<Moved>,
}

/// What keeps a history from being used.
///
/// ```
/// use lugbook::wear::{History, Mistake, Question, wear};
/// assert_eq!(wear(&History::default(), &Question::default()), Err(Mistake::NoReadings));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, thiserror::Error)]
#[serde(rename_all = "kebab-case", tag = "mistake")]
pub enum Mistake {
    /// There is no reading.
    #[error("no readings")]
    NoReadings,
    /// More readings than a vehicle has.
    #[error("{readings} readings, at most {most}")]
    TooManyReadings {
        /// How many.
        readings: usize,
        /// How many may be.
        most: usize,
    },
    /// A reading without a groove.
    #[error("reading {reading} has no depth")]
    NoDepth {
        /// Which reading, from 1, as given.
        reading: usize,
    },
    /// Two different tires read at one place at one odometer.
    #[error("two tires at {at} at {km} km")]
    TwoAt {
        /// The place.
        at: Place,
        /// The odometer in km.
        km: f64,
    },
    /// A spare of the vehicle is no place that wears, but a place has no such name.
    #[error("a figure is out of range: {what}")]
    Figure {
        /// Which setting.
        what: &'static str,
    },
}

/// A reading as the fit sees it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Sample {
    /// The tire by number.
    pub tire: usize,
    /// The odometer in thousands of km.
    pub at_thousand: f64,
    /// The place it stood at.
    pub place: Place,
    /// The shallowest groove in mm.
    pub depth_mm: f64,
    /// One standard deviation of the reading in mm.
    pub error_mm: f64,
    /// Thousands of km at each place since the tire's first reading.
    pub ran: Vec<(Place, f64)>,
    /// Which reading of the history it is.
    pub reading: usize,
}

/// The history in the fit's order: by tire, then by odometer.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Samples {
    /// The tires' names, sorted.
    pub tires: Vec<String>,
    /// The samples.
    pub all: Vec<Sample>,
}

impl Reading {
    /// The shallowest groove in mm.
    ///
    /// ```
    /// use lugbook::vehicle::Place;
    /// use lugbook::wear::Reading;
    /// let reading = Reading {
    ///     tire: "left front".to_owned(),
    ///     odometer: "84210 mi".parse()?,
    ///     at: Place::parse("FL").unwrap(),
    ///     grooves: vec!["7/32".parse()?, "6/32".parse()?],
    ///     lowest: None,
    ///     practice: false,
    /// };
    /// assert!(reading.least_mm().is_some_and(|mm| (mm - 4.7625).abs() < 1e-9));
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn least_mm(&self) -> Option<f64> {
        self.grooves.iter().map(|d| d.in_unit(DepthUnit::Millimetre)).min_by(f64::total_cmp)
    }

    /// The step of the gauge in mm, as far as the reading shows it: 1/32 in (half
    /// of it when a half was read), 0.1 mm.
    ///
    /// ```
    /// use lugbook::vehicle::Place;
    /// use lugbook::wear::Reading;
    /// let reading = Reading {
    ///     tire: "left front".to_owned(),
    ///     odometer: "84210 mi".parse()?,
    ///     at: Place::parse("FL").unwrap(),
    ///     grooves: vec!["7/32".parse()?, "6/32".parse()?],
    ///     lowest: None,
    ///     practice: false,
    /// };
    /// assert_eq!(reading.step_mm(), 0.79375);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn step_mm(&self) -> f64 {
        let halves = |d: &Depth| d.value().fract().abs() > 1e-9;
        match self.grooves.first().map(Depth::unit) {
            Some(DepthUnit::ThirtySecond) if self.grooves.iter().any(halves) => crate::measure::THIRTY_SECOND_MM / 2.0,
            Some(DepthUnit::ThirtySecond) => crate::measure::THIRTY_SECOND_MM,
            _ => 0.1,
        }
    }

    /// One standard deviation of the reading in mm: a step read to the nearest
    /// has that of a uniform distribution, step/√12, beside the hand's.
    ///
    /// ```
    /// use lugbook::vehicle::Place;
    /// use lugbook::wear::Reading;
    /// let reading = Reading {
    ///     tire: "left front".to_owned(),
    ///     odometer: "84210 mi".parse()?,
    ///     at: Place::parse("FL").unwrap(),
    ///     grooves: vec!["7/32".parse()?, "6/32".parse()?],
    ///     lowest: None,
    ///     practice: false,
    /// };
    /// assert!((reading.error_mm() - 0.25).abs() < 0.01);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn error_mm(&self) -> f64 {
        (self.step_mm() / 12f64.sqrt()).hypot(HANDLING_MM)
    }
}

fn thousand_km(distance: Distance) -> f64 {
    distance.in_unit(DistanceUnit::Kilometre) / 1000.0
}

impl History {
    /// Checks the history and follows each tire along its places.
    pub(super) fn samples(&self) -> Result<Samples, Mistake> {
        if self.readings.len() > MOST_READINGS {
            return Err(Mistake::TooManyReadings { readings: self.readings.len(), most: MOST_READINGS });
        }
        if let Some(at) = self.readings.iter().position(|reading| reading.grooves.is_empty()) {
            return Err(Mistake::NoDepth { reading: at + 1 });
        }
        let mut used: Vec<(usize, &Reading)> =
            self.readings.iter().enumerate().filter(|(_, reading)| !reading.practice).collect();
        if used.is_empty() {
            return Err(Mistake::NoReadings);
        }
        used.sort_by(|(i, a), (j, b)| {
            let far = |r: &Reading| thousand_km(r.odometer);
            a.tire.cmp(&b.tire).then(far(a).total_cmp(&far(b))).then(i.cmp(j))
        });
        for (i, a) in &used {
            let twin = used.iter().find(|(j, b)| {
                j > i && b.tire != a.tire && b.at == a.at && a.at != Place::Spare && b.odometer == a.odometer
            });
            if twin.is_some() {
                return Err(Mistake::TwoAt { at: a.at, km: thousand_km(a.odometer) * 1000.0 });
            }
        }
        let mut tires: Vec<String> = used.iter().map(|(_, reading)| reading.tire.clone()).collect();
        tires.dedup();
        let mut all: Vec<Sample> = Vec::with_capacity(used.len());
        for (number, name) in tires.iter().enumerate() {
            let mut moves: Vec<(f64, Option<Place>)> = self
                .moves
                .iter()
                .filter(|moved| moved.tire == *name)
                .map(|moved| (thousand_km(moved.odometer), moved.to))
                .collect();
            moves.sort_by(|a, b| a.0.total_cmp(&b.0));
            let mut ran: Vec<(Place, f64)> = Vec::new();
            let mut before: Option<(f64, Place)> = None;
            for (index, reading) in used.iter().filter(|(_, reading)| reading.tire == *name) {
                let now = thousand_km(reading.odometer);
                if let Some((then, place)) = before {
                    follow(&mut ran, then, place, now, reading.at, &moves);
                }
                before = Some((now, reading.at));
                all.push(Sample {
                    tire: number,
                    at_thousand: now,
                    place: reading.at,
                    depth_mm: reading.least_mm().unwrap_or(0.0),
                    error_mm: reading.error_mm(),
                    ran: ran.clone(),
                    reading: *index,
                });
            }
        }
        Ok(Samples { tires, all })
    }

    /// Where a tire stands after its last reading: `None` when it was taken off.
    pub(super) fn now_at(&self, tire: &str, last: f64, place: Place) -> Option<Place> {
        let after = self.moves.iter().filter(|m| m.tire == tire && thousand_km(m.odometer) >= last - 1e-9);
        let newest = after.max_by(|a, b| thousand_km(a.odometer).total_cmp(&thousand_km(b.odometer)));
        match newest {
            Some(moved) => moved.to,
            None => Some(place),
        }
    }
}

/// Adds where a tire ran between two readings: along its moves when there are
/// any, else where the later reading found it. The last stretch is where it was found.
fn follow(ran: &mut Vec<(Place, f64)>, then: f64, from: Place, now: f64, found: Place, moves: &[(f64, Option<Place>)]) {
    let between: Vec<(f64, Option<Place>)> =
        moves.iter().copied().filter(|(at, _)| *at >= then - 1e-9 && *at < now - 1e-9).collect();
    if between.is_empty() {
        add(ran, found, now - then);
        return;
    }
    let mut at = then;
    let mut place = Some(from);
    for (moved, to) in between {
        if let Some(place) = place {
            add(ran, place, moved - at);
        }
        (at, place) = (moved.max(at), to);
    }
    if place.is_some() {
        add(ran, found, now - at);
    }
}

fn add(ran: &mut Vec<(Place, f64)>, place: Place, thousand: f64) {
    // On its carrier a tire does not wear.
    if thousand <= 0.0 || place == Place::Spare {
        return;
    }
    match ran.iter_mut().find(|(p, _)| *p == place) {
        Some((_, sum)) => *sum += thousand,
        None => ran.push((place, thousand)),
    }
}
