//! What is wrong at one place: tread, age, size, pressure.

use super::{Finding, Looking, What};
use crate::calendar::Age;
use crate::entry::{Fact, Kind, Shelf};
use crate::finding::State;
use crate::ident::TireId;
use crate::limits::{self, PlacardTire};
use crate::logbook::DepthSeen;
use crate::measure::{Depth, DepthUnit, PressureUnit};
use crate::sidewall::{self, Marking, TinAge};
use crate::source::Source;
use crate::vehicle::Place;

/// From this age in years a tire is spoken of; six and ten years are both told
/// in the trade (from memory).
const OLD_YEARS: i16 = 6;

impl Looking<'_> {
    /// Everything that is wrong at a place.
    pub(super) fn of_tire(self, place: Place) -> Vec<Finding> {
        let mut findings = Vec::new();
        if let Some(tire) = self.job.planned().get(&place).copied() {
            findings.extend(self.tread(place, tire));
            findings.extend(self.deeper(place, tire));
            let marking = self.marking(tire);
            findings.extend(marking.as_ref().and_then(|marking| self.old(place, marking)));
            findings.extend(marking.as_ref().and_then(|marking| self.placard_size(place, marking)));
        }
        findings.extend(self.low(place));
        findings
    }

    /// The lowest reading, judged where the tire ends.
    fn tread(self, place: Place, tire: TireId) -> Option<Finding> {
        let (_, lowest) = self.job.tread(tire)?;
        let judged = limits::judge(lowest, self.circumstances(self.ends_at(place)), self.rules.thresholds);
        let state = judged.state.filter(|state| *state != State::Sound)?;
        let source = judged.limit.map(|limit| limit.source).or(judged.also.first().map(|limit| limit.source));
        let limit = judged.limit.and_then(|limit| limit.depth());
        let what = What::Tread { lowest, limit, broken: judged.refuses, also: judged.also };
        Some(Finding { state, at: Some(place), tire: Some(tire), what, source })
    }

    /// The tread of a tire before this job.
    pub(super) fn last_time(self, tire: TireId) -> Option<DepthSeen> {
        let history = self.book.tires.get(&tire)?;
        history.depths.iter().rev().find(|seen| seen.job != self.job.id && seen.when < self.job.opened).cloned()
    }

    /// Deeper than last time by more than both gauges can be wrong.
    fn deeper(self, place: Place, tire: TireId) -> Option<Finding> {
        let (_, now) = self.job.tread(tire)?;
        let last = self.last_time(tire)?;
        let mm = |depth: Depth| depth.in_unit(DepthUnit::Millimetre);
        let then = self.book.jobs.iter().find(|job| job.id == last.job);
        let slack = self.depth_step_mm(self.job) + then.map_or(0.0, |job| self.depth_step_mm(job));
        if mm(now) - mm(last.lowest) <= slack + 1e-9 {
            return None;
        }
        let explained = self
            .job
            .last(|fact| match fact {
                Fact::TreadMeasured { tire: measured, reason, .. } if *measured == tire => Some(reason.is_some()),
                _ => None,
            })
            .unwrap_or(false);
        let what = What::Deeper { now, before: last.lowest, when: last.when, explained };
        Some(Finding { state: State::Watch, at: Some(place), tire: Some(tire), what, source: Some(Source::GEOMETRY) })
    }

    /// What stands on the tire, both sidewalls together: the outer one's text, then the inner one's.
    fn marking(self, tire: TireId) -> Option<Marking> {
        let history = self.book.tires.get(&tire)?;
        let read = |text: &Option<String>| text.as_deref().map(sidewall::parse);
        let outer = read(&history.outer);
        let inner = read(&history.inner);
        // The date of manufacture stands on one side only, often the inner one.
        match (outer, inner) {
            (Some(mut outer), Some(inner)) => {
                if outer.tin.as_ref().is_none_or(|tin| tin.date_code().is_none()) {
                    outer.tin = inner.tin.or(outer.tin);
                }
                outer.size = outer.size.or(inner.size);
                Some(outer)
            }
            (outer, inner) => outer.or(inner),
        }
    }

    /// Old: advice, never more.
    fn old(self, place: Place, marking: &Marking) -> Option<Finding> {
        let age: Age = match marking.tin.as_ref()?.age_on(self.job.opened.day()) {
            TinAge::Known { age } => age,
            TinAge::Between { least, .. } => least,
            _ => return None,
        };
        let what = What::Old { age };
        (age.years >= OLD_YEARS).then_some(Finding {
            state: State::Watch,
            at: Some(place),
            tire: self.job.planned().get(&place).copied(),
            what,
            source: Some(Source::MEMORY),
        })
    }

    fn placard(&self, place: Place) -> Option<&PlacardTire> {
        match &self.book.on_shelf(&self.vehicle.model, Kind::Placard)?.shelf {
            Shelf::Placard { placard } => placard.at(place),
            _ => None,
        }
    }

    /// The placard holds for its own size only.
    fn placard_size(self, place: Place, marking: &Marking) -> Option<Finding> {
        let printed = self.placard(place)?.size.as_deref()?;
        let wanted = sidewall::parse(printed).size?;
        let fitted = marking.size.as_ref()?;
        let what = What::NotPlacardSize { fitted: fitted.to_string(), placard: printed.to_owned() };
        (*fitted != wanted).then_some(Finding {
            state: State::Watch,
            at: Some(place),
            tire: self.job.planned().get(&place).copied(),
            what,
            source: Some(Source::PRACTICE),
        })
    }

    /// The pressure last read here, when it is under the placard.
    fn low(self, place: Place) -> Option<Finding> {
        let (pressure, set) = self.job.pressure(place)?;
        let placard = self.placard(place)?.cold;
        let kpa = |pressure: crate::measure::Pressure| pressure.in_unit(PressureUnit::Kilopascal);
        let what = What::Low { pressure, placard, set };
        // A figure that was only converted is not low.
        (kpa(pressure) < kpa(placard) - 0.05).then_some(Finding {
            state: State::Watch,
            at: Some(place),
            tire: None,
            what,
            source: Some(Source::PRACTICE),
        })
    }
}
