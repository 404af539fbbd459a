//! What is wrong with the papers and the work: torque, nuts, wrench, lamp.

use super::{Finding, Looking, What};
use crate::entry::{Fact, Kind, Pass, Shelf, Turned};
use crate::finding::State;
use crate::source::{Grade, Source};
use crate::vehicle::Place;

/// Where the yearly calibration of a wrench was read: see [`crate::fastener::Wrench::calibration_on`].
const YEARLY: Source = Source::read(Grade::Secondary, "FAA AC 43.13-1B 7-40");

/// An interval that the tool's papers print or its owner set.
const OWN_INTERVAL: Source = Source::read(Grade::Computed, "the tool's papers or its owner");

impl Looking<'_> {
    /// Everything that is wrong with papers, nuts, tools and the lamp.
    pub(super) fn of_work(self) -> Vec<Finding> {
        let mut findings = Vec::new();
        findings.extend(self.torque());
        for place in self.vehicle.layout.places() {
            findings.extend(self.not_proven(place));
            findings.extend(self.moved_at_recheck(place));
        }
        findings.extend(self.uncalibrated());
        findings.extend(self.lamp());
        findings
    }

    fn torque(self) -> Option<Finding> {
        let (what, source) = match self.book.on_shelf(&self.vehicle.model, Kind::Torque).map(|spec| &spec.shelf) {
            Some(Shelf::Torque { spec, .. }) => (What::Clash { clash: spec.unit_clash()? }, Source::GEOMETRY),
            _ => {
                let looked = |fact: &Fact| matches!(fact, Fact::SpecificationUnknown { what: Kind::Torque, .. });
                self.job.lines.iter().find(|line| looked(&line.fact))?;
                (What::NoTorque, Source::PRACTICE)
            }
        };
        Some(Finding { state: State::Watch, at: None, tire: None, what, source: Some(source) })
    }

    /// Nuts whose last word at a pass is this.
    fn nuts_that(self, place: Place, pass: Pass, turned: Turned) -> Vec<u8> {
        let said = self.job.nuts(place, pass);
        said.into_iter().filter(|(_, said)| said.turned == Some(turned)).map(|(nut, _)| nut).collect()
    }

    /// A click without movement proves nothing at the first final pass (common practice, no source).
    fn not_proven(self, place: Place) -> Option<Finding> {
        let nuts = self.nuts_that(place, Pass::Final, Turned::Still);
        (!nuts.is_empty()).then_some(Finding {
            state: State::Watch,
            at: Some(place),
            tire: None,
            what: What::NotProven { nuts },
            source: Some(Source::PRACTICE),
        })
    }

    /// A nut that moves at a recheck is recorded, and the recheck repeated (common practice, no source).
    fn moved_at_recheck(self, place: Place) -> Option<Finding> {
        let nuts = self.nuts_that(place, Pass::Recheck, Turned::Moved);
        (!nuts.is_empty()).then_some(Finding {
            state: State::Watch,
            at: Some(place),
            tire: None,
            what: What::MovedAtRecheck { nuts },
            source: Some(Source::PRACTICE),
        })
    }

    fn uncalibrated(self) -> Vec<Finding> {
        let day = self.job.opened.day();
        let mut tools: Vec<_> = self.job.tools().collect();
        tools.extend(self.job.lines.iter().filter_map(|line| match line.fact {
            Fact::NutTightened { tool, .. } => tool,
            _ => None,
        }));
        tools.sort();
        tools.dedup();
        let stale = tools.into_iter().filter_map(|id| {
            let tool = self.book.tool(id)?;
            let source = if tool.interval_months.is_some() { OWN_INTERVAL } else { YEARLY };
            Some((id, tool.warns_on(day)?, source))
        });
        stale
            .map(|(tool, calibration, source)| Finding {
                state: State::Watch,
                at: None,
                tire: None,
                what: What::Uncalibrated { tool, calibration },
                source: Some(source),
            })
            .collect()
    }

    fn lamp(self) -> Option<Finding> {
        let on = self.job.last(|fact| match fact {
            Fact::SensorRead { lamp, .. } => *lamp,
            _ => None,
        })?;
        on.then_some(Finding {
            state: State::Watch,
            at: None,
            tire: None,
            what: What::LampOn,
            source: Some(Source::PRACTICE),
        })
    }
}
