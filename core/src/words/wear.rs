//! Wear: rates, what is left, patterns and what to check.

use serde::Serialize;

use super::{Quantity, Say, Units, Words};
use crate::measure::{DepthUnit, Distance, DistanceUnit, THIRTY_SECOND_MM};
use crate::vehicle::{Layout, Letters, Place};
use crate::wear::{
    Answer, BadRow, Check, Interval, Mistake, NextVisit, RowMistake, SetBy, Slipped, TireWear, TreadPattern, Unknown,
};

/// An answer for a screen or as data.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WearView {
    /// The tires by place.
    pub tires: Vec<TireWearView>,
    /// Readings that do not fit.
    pub slipped: Vec<SlippedView>,
    /// Why rates are not all known; nothing when they are.
    pub unknown: Option<String>,
    /// When to look again.
    pub next_visit: NextVisitView,
}

/// One tire.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TireWearView {
    /// Its place, FL FR RL RR in data.
    pub at: String,
    /// Its name in the file.
    pub tire: String,
    /// The rate where it stands, in mm per 1,000 km.
    pub rate: Option<Quantity>,
    /// That rate with its interval.
    pub rate_mm_per_1000_km: Option<Interval>,
    /// Its depth by the fit, mm.
    pub depth_mm: Interval,
    /// What it has left.
    pub left: Option<LeftView>,
    /// How its wear lies: the first pattern's code.
    pub pattern: Option<&'static str>,
    /// All of its patterns' codes.
    pub patterns: Vec<&'static str>,
    /// What to check, a sentence each.
    pub check: Vec<String>,
    /// A sentence about it.
    pub sentence: String,
}

/// A distance left.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LeftView {
    /// As little as this.
    pub low: Option<Quantity>,
    /// Best estimate.
    pub mid: Option<Quantity>,
    /// As much as this.
    pub high: Option<Quantity>,
}

/// A reading that does not fit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SlippedView {
    /// Which row, from 1.
    pub row: usize,
    /// The place.
    pub at: String,
    /// What was read, mm.
    pub read_mm: f64,
    /// What would fit, mm.
    pub expected_mm: f64,
    /// How much it still counts, 0 to 1.
    pub weight: f64,
    /// The sentence.
    pub sentence: String,
}

/// When to look again.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NextVisitView {
    /// The odometer figure.
    pub odometer: Option<Quantity>,
    /// The sentence.
    pub sentence: String,
}

impl Words {
    /// An answer, worded.
    pub fn wear(&self, answer: &Answer, layout: &Layout) -> WearView {
        WearView {
            tires: answer.tires.iter().map(|tire| self.tire_wear(tire, layout)).collect(),
            slipped: answer
                .slipped
                .iter()
                .map(|slip| SlippedView {
                    row: slip.reading,
                    at: layout.name(slip.at, Letters::FrontFirst),
                    read_mm: slip.read_mm,
                    expected_mm: slip.expected_mm,
                    weight: slip.weight,
                    sentence: self.slipped(slip, layout),
                })
                .collect(),
            unknown: answer.unknown.map(|unknown| unknown.say(self)),
            next_visit: NextVisitView {
                odometer: self.told_km(answer.next_visit.odometer_km, answer.next_visit.unit),
                sentence: answer.next_visit.say(self),
            },
        }
    }

    fn tire_wear(&self, tire: &TireWear, layout: &Layout) -> TireWearView {
        let quantity = |value: f64| self.told_km(value, tire.unit);
        TireWearView {
            at: layout.name(tire.at, Letters::FrontFirst),
            tire: tire.tire.clone(),
            rate: tire.rate.map(|rate| Quantity {
                value: rate.mid,
                unit: "mm/1000km".to_owned(),
                text: self.wear_rate(rate.mid),
                spoken: self.wear_rate(rate.mid),
            }),
            rate_mm_per_1000_km: tire.rate,
            depth_mm: tire.depth_mm,
            left: tire.left_km.map(|left| LeftView {
                low: quantity(left.low),
                mid: left.mid.and_then(quantity),
                high: left.high.and_then(quantity),
            }),
            pattern: tire.pattern.first().map(|pattern| pattern.code()),
            patterns: tire.pattern.iter().map(|pattern| pattern.code()).collect(),
            check: tire.check.iter().map(|check| check.say(self)).collect(),
            sentence: self.tire_sentence(tire, layout),
        }
    }

    /// What a tire has left, and how its wear lies.
    pub fn tire_sentence(&self, tire: &TireWear, layout: &Layout) -> String {
        let at = layout.name(tire.at, self.speech().letters);
        let depth = self.depth_mm(tire.depth_mm.mid);
        let limit = self.depth_mm(tire.limit_mm);
        let distance = |value: f64| self.computed_km(value, tire.unit);
        let left = match (tire.left_km, tire.at) {
            (_, Place::Spare) => self.text("wear-off-axle", &[("at", at.as_str().into()), ("depth", depth.into())]),
            (None, _) => self.text("wear-no-rate", &[("at", at.as_str().into()), ("depth", depth.into())]),
            (Some(left), _) => {
                let base = [("at", at.as_str().into()), ("limit", limit.into()), ("low", distance(left.low).into())];
                let mut args = base.to_vec();
                args.extend(left.mid.map(|mid| ("mid", distance(mid).into())));
                args.extend(left.high.map(|high| ("high", distance(high).into())));
                let id = match (left.mid, left.high) {
                    (Some(0.0), _) => "wear-left-none",
                    (Some(_), Some(_)) => "wear-left",
                    (Some(_), None) => "wear-left-open",
                    (None, _) => "wear-left-unseen",
                };
                self.text(id, &args)
            }
        };
        let shown: Vec<String> =
            tire.pattern.iter().filter(|pattern| **pattern != TreadPattern::Even).map(|p| p.say(self)).collect();
        if shown.is_empty() {
            return left;
        }
        let checks: Vec<String> = tire.check.iter().map(|check| check.say(self)).collect();
        let args = [("at", at.into()), ("pattern", self.list(shown).into()), ("checks", checks.join(" ").into())];
        format!("{left} {}", self.text("wear-looks", &args))
    }

    /// A reading that does not fit, where it was taken and what would fit.
    pub fn slipped_reading(&self, slip: &Slipped, layout: &Layout) -> String {
        let args = [
            ("at", layout.name(slip.at, self.speech().letters).into()),
            ("odometer", self.computed_km(slip.odometer_km, slip.unit).into()),
            ("read", self.depth_mm(slip.read_mm).into()),
            ("expected", self.depth_mm(slip.expected_mm).into()),
        ];
        self.text("wear-slipped-reading", &args)
    }

    /// A wear rate, told per 1,000 km or per 1,000 miles.
    pub fn wear_rate(&self, mm_per_1000_km: f64) -> String {
        if self.speech().units == Units::Us {
            let km_in_a_mile =
                Distance::new(1.0, DistanceUnit::Mile).map_or(1.0, |one| one.in_unit(DistanceUnit::Kilometre));
            let rate = mm_per_1000_km * km_in_a_mile / THIRTY_SECOND_MM;
            return self.text("wear-rate-us", &[("rate", self.number(rate, 2).into())]);
        }
        self.text("wear-rate", &[("rate", self.number(mm_per_1000_km, 3).into())])
    }

    fn slipped(&self, slip: &Slipped, layout: &Layout) -> String {
        let odometer = self.computed_km(slip.odometer_km, slip.unit);
        let args = [
            ("row", slip.reading.into()),
            ("at", layout.name(slip.at, self.speech().letters).into()),
            ("odometer", odometer.into()),
            ("read", self.depth_mm(slip.read_mm).into()),
            ("expected", self.depth_mm(slip.expected_mm).into()),
        ];
        self.text("wear-slipped", &args)
    }
}

/// A computed distance, whole in a unit; nothing when the value has no end.
fn whole(km: f64, unit: DistanceUnit) -> Option<Distance> {
    let exact = Distance::new(km, DistanceUnit::Kilometre).ok()?;
    Distance::new(exact.in_unit(unit).round(), unit).ok()
}

impl Words {
    /// The unit a computed distance is told in: the chosen one, else that of the odometer.
    fn distance_unit(&self, read: DistanceUnit) -> DistanceUnit {
        match self.speech().units {
            Units::AsRead => read,
            Units::Metric => DistanceUnit::Kilometre,
            Units::Us => DistanceUnit::Mile,
        }
    }

    fn told_km(&self, km: f64, read: DistanceUnit) -> Option<Quantity> {
        whole(km, read).map(|distance| self.quantity(&distance))
    }

    /// A computed distance, told in one unit alone: it was not read.
    fn computed_km(&self, km: f64, read: DistanceUnit) -> String {
        whole(km, self.distance_unit(read)).map(|distance| self.reading(&distance)).unwrap_or_default()
    }
}

impl Say for TreadPattern {
    fn say(&self, words: &Words) -> String {
        words.coded("tread", self)
    }
}

impl Say for Check {
    fn say(&self, words: &Words) -> String {
        words.coded("check", self)
    }
}

impl Say for Unknown {
    fn say(&self, words: &Words) -> String {
        words.coded("wear-unknown", self)
    }
}

impl Say for NextVisit {
    fn say(&self, words: &Words) -> String {
        let odometer = words.computed_km(self.odometer_km, self.unit);
        let id = match self.by {
            SetBy::Interval => "wear-next-interval",
            SetBy::UnknownWear => "wear-next-unknown-wear",
            SetBy::Limit => "wear-next-limit",
        };
        let source = self.source.map(|source| words.source(&source)).unwrap_or_default();
        words.text(id, &[("odometer", odometer.into()), ("source", source.into())])
    }
}

impl Say for Mistake {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::NoReadings => words.text("wear-no-readings", &[]),
            Self::TooManyReadings { readings, most } => {
                words.text("wear-too-many-readings", &[("readings", (*readings).into()), ("most", (*most).into())])
            }
            Self::NoDepth { reading } => words.text("wear-no-depth", &[("row", (*reading).into())]),
            Self::TwoAt { at, km: odometer } => {
                let odometer = words.computed_km(*odometer, DistanceUnit::Kilometre);
                words.text("wear-two-at", &[("at", at.to_string().into()), ("odometer", odometer.into())])
            }
            Self::Figure { .. } => words.text("wear-figure", &[]),
        }
    }
}

impl Say for BadRow {
    fn say(&self, words: &Words) -> String {
        let (row, column) = (("row", self.row.into()), ("column", self.column.as_str().into()));
        match &self.mistake {
            RowMistake::MissingColumn => words.text("wear-row-missing-column", &[column]),
            RowMistake::NoSuchPlace { text } => {
                words.text("wear-row-no-such-place", &[row, ("text", text.as_str().into())])
            }
            RowMistake::Unreadable { text, why } => {
                let why = if self.column.starts_with("distance") {
                    words.misread::<DistanceUnit>(text, why)
                } else {
                    words.misread::<DepthUnit>(text, why)
                };
                words.text("wear-row-unreadable", &[row, column, ("why", why.into())])
            }
            RowMistake::NoDepth => words.text("wear-row-no-depth", &[row]),
            RowMistake::TooMany { most } => words.text("wear-row-too-many", &[("most", (*most).into())]),
        }
    }
}
