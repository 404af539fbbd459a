//! What is not as it should be.

use super::Words;
use super::entry::capital;
use crate::calendar::Age;
use crate::fastener::UnitClash;
use crate::inspect::{Finding, What};
use crate::limits::Limit;
use crate::logbook::Book;
use crate::measure::Depth;
use crate::source::Source;

impl Words {
    /// A finding in one sentence or two; place, state and source stand apart.
    pub fn finding(&self, finding: &Finding, book: &Book) -> String {
        match &finding.what {
            What::Seen { part, note, damage, thickness } => {
                let part = ("part", capital(&self.part(*part)).into());
                match &self.details(damage.as_ref(), (thickness.as_ref(), None), note.as_deref()) {
                    Some(note) => {
                        let note = note.trim().trim_end_matches('.');
                        self.text("finding-seen-note", &[part, ("note", note.into())])
                    }
                    None => self.text("finding-seen", &[part]),
                }
            }
            What::Thin { part, thickness, least } => {
                let part = capital(&self.part(*part));
                let (thickness, least) = (self.reading(thickness), self.reading(least));
                let args = [("part", part.into()), ("thickness", thickness.into()), ("least", least.into())];
                self.text("finding-thin", &args)
            }
            What::Tread { lowest, limit, also, .. } => self.tread_finding(lowest, limit.as_ref(), also),
            What::Deeper { now, before, when, explained } => {
                let id = if *explained { "finding-deeper-explained" } else { "finding-deeper" };
                let (now, before) = (self.reading(now), self.reading(before));
                self.text(id, &[("now", now.into()), ("before", before.into()), ("day", when.day().to_string().into())])
            }
            What::Uneven { axle, most, least } => self.text(
                "finding-uneven",
                &[
                    ("axle", axle.to_string().into()),
                    ("most", self.reading(most).into()),
                    ("least", self.reading(least).into()),
                ],
            ),
            What::UnevenSet { most, least } => self.text(
                "finding-uneven-set",
                &[("most", self.reading(most).into()), ("least", self.reading(least).into())],
            ),
            What::Old { age } => self.text("finding-old", &[("age", self.age(*age).into())]),
            What::NotPlacardSize { fitted, placard } => self.text(
                "finding-not-placard-size",
                &[("fitted", fitted.as_str().into()), ("placard", placard.as_str().into())],
            ),
            What::Low { pressure, placard, set } => {
                let id = if *set { "finding-low-set" } else { "finding-low-found" };
                let (pressure, placard) = (self.reading(pressure), self.reading(placard));
                self.text(id, &[("pressure", pressure.into()), ("placard", placard.into())])
            }
            What::LampOn => self.text("finding-lamp-on", &[]),
            What::Clash { clash } => self.clash_found(clash),
            What::NoTorque => self.text("finding-no-torque", &[]),
            What::NotProven { nuts } => self.nut_finding("finding-not-proven", nuts),
            What::MovedAtRecheck { nuts } => self.nut_finding("finding-moved", nuts),
            What::Uncalibrated { tool, calibration } => {
                book.tool(*tool).map(|tool| self.calibration_warning(tool, *calibration)).unwrap_or_default()
            }
        }
    }

    fn tread_finding(&self, lowest: &Depth, limit: Option<&Depth>, also: &[Limit]) -> String {
        let shown = ("lowest", self.reading(lowest).into());
        if let Some(limit) = limit.filter(|limit| lowest < *limit) {
            return self.text("finding-tread-under", &[shown, ("limit", self.reading(limit).into())]);
        }
        if let Some(advised) = also.first().and_then(Limit::depth) {
            return self.text("finding-tread-advice", &[shown, ("also", self.reading(&advised).into())]);
        }
        match limit {
            Some(limit) => self.text("finding-tread-over", &[shown, ("limit", self.reading(limit).into())]),
            None => self.text("finding-tread-unlimited", &[shown]),
        }
    }

    fn nut_finding(&self, id: &str, nuts: &[u8]) -> String {
        let named = self.and_list(nuts.iter().map(u8::to_string));
        self.text(id, &[("count", nuts.len().into()), ("nuts", named.into())])
    }

    fn clash_found(&self, clash: &UnitClash) -> String {
        let (first, second) = (self.printed(&clash.first), self.printed(&clash.second));
        self.text("finding-clash", &[("first", first.into()), ("second", second.into())])
    }

    /// An age in years and months.
    pub fn age(&self, age: Age) -> String {
        let years = f64::from(age.years);
        if age.months == 0 && age.years > 0 {
            return self.text("age-years", &[("years", years.into())]);
        }
        self.text("age-years-months", &[("years", years.into()), ("months", f64::from(age.months).into())])
    }

    /// Where a judgement comes from and how far to trust it; by eye for none.
    pub fn judged_by(&self, source: Option<&Source>) -> String {
        source.map_or_else(|| self.text("source-eye", &[]), |source| self.source(source))
    }
}
