//! Dual wheels in a job: whose nuts hold what, and whether two tires belong side by side.
//!
//! Hub-piloted duals hang on one set of nuts, which is spoken of at the outer
//! wheel. Stud-piloted ones have cap nuts for the inner wheel and others for the
//! outer one; whenever the outer nuts were off, they are loosened again with
//! weight on the tires, the inner ones are set, and the outer ones after them
//! (common practice, no source; truck makers' manuals say the same).

use std::f64::consts::PI;

use super::{Ask, Bay, Condition, Mismatch, Per, Unmet};
use crate::entry::{Answer, Fact, Pass};
use crate::ident::TireId;
use crate::logbook::Job;
use crate::measure::{Span, SpanUnit};
use crate::rotation::constraint::{Constraint, DualMatch};
use crate::rotation::{TireFacts, Why};
use crate::sidewall;
use crate::vehicle::{Place, Row};
use crate::wear::lowest_of_each;

/// The choice that says that inner and outer cap nuts hold the duals.
const STUD_PILOTED: &str = "stud-piloted";
/// The choice that says that one set of nuts does.
const HUB_PILOTED: &str = "hub-piloted";

impl<'a> Bay<'a> {
    /// Whether the duals have inner and outer cap nuts: as seen in this job, else at the last work.
    pub fn stud_piloted(&self) -> bool {
        if self.vehicle.layout.axles.iter().all(|axle| !axle.dual) {
            return false;
        }
        let said = |job: &'a Job| {
            job.last(|fact| match fact {
                Fact::StepDone { answer: Answer::Choice(choice), .. } if choice == STUD_PILOTED => Some(true),
                Fact::StepDone { answer: Answer::Choice(choice), .. } if choice == HUB_PILOTED => Some(false),
                _ => None,
            })
        };
        said(self.job).or_else(|| said(self.last_work()?)).unwrap_or(false)
    }

    /// Whether a place has wheel nuts of its own: not the spare's carrier, and not
    /// an inner wheel that the outer one's nuts hold.
    pub fn has_nuts(&self, place: Place) -> bool {
        match place.row() {
            None => false,
            Some(Row::Inner) => self.stud_piloted(),
            Some(Row::Single | Row::Outer) => true,
        }
    }

    /// Whether this is a visit that checks nuts again.
    fn rechecks(&self) -> bool {
        self.procedure.steps.iter().any(|step| step.asks == Ask::Rechecked)
    }

    /// The wheels that this job is about.
    fn worked(&self) -> Vec<Place> {
        if self.rechecks() { self.loosened() } else { self.moving_wheels() }
    }

    /// The dual pairs of which a wheel is worked on, each by its outer wheel, in walking order.
    pub fn pairs(&self) -> Vec<Place> {
        let worked = self.worked();
        let touched = |at: &Place| worked.contains(at) || at.partner().is_some_and(|inner| worked.contains(&inner));
        self.walk().into_iter().filter(|at| at.row() == Some(Row::Outer) && touched(at)).collect()
    }

    /// Where nuts are turned on a pass, in walking order.
    pub fn turned(&self, pass: Pass) -> Vec<Place> {
        let (worked, pairs, stud_piloted) = (self.worked(), self.pairs(), self.stud_piloted());
        let of_pair = |at: &Place| at.partner().is_some_and(|outer| pairs.contains(&outer));
        let outer_set_anew = self.rechecks() && pass == Pass::Final || pass == Pass::Loosened;
        let turned = |at: &Place| match at.row() {
            None => false,
            Some(Row::Single) => worked.contains(at) && !outer_set_anew,
            Some(Row::Outer) if outer_set_anew => stud_piloted && pairs.contains(at),
            Some(Row::Outer) => worked.contains(at) && !(stud_piloted && pass == Pass::Recheck),
            Some(Row::Inner) if !stud_piloted || outer_set_anew => false,
            // The inner nuts are set again whenever the outer ones were off.
            Some(Row::Inner) if matches!(pass, Pass::Final | Pass::Recheck) => of_pair(at),
            Some(Row::Inner) => worked.contains(at),
        };
        self.walk().into_iter().filter(turned).collect()
    }

    /// The places of a step that names which wheel of a pair it means, or lays hubs bare.
    pub(super) fn by_row(&self, per: Per, ask: Ask) -> Vec<Place> {
        let places = match ask.pass() {
            Some(pass) => self.turned(pass),
            None if per == Per::Pair => self.pairs(),
            None => self.moving_wheels(),
        };
        let meant = |at: &Place| match per {
            Per::Pair => at.row() == Some(Row::Outer),
            Per::Outer => at.row() != Some(Row::Inner),
            Per::Inner => at.row() == Some(Row::Inner),
            Per::Bare => at.row() != Some(Row::Outer),
            _ => true,
        };
        places.into_iter().filter(meant).collect()
    }

    /// What a condition about duals waits for at a place.
    pub(super) fn check_pair(&self, condition: Condition, at: Option<Place>) -> Option<Unmet> {
        let left = |place: Place, pass: Pass| self.nuts_left(place, pass).unwrap_or_default();
        match condition {
            Condition::PairMatched => {
                let place = at?;
                let outer = if place.row() == Some(Row::Inner) { place.partner()? } else { place };
                let why = self.mismatch(outer)?;
                Some(Unmet::PairMatched { at: outer, why })
            }
            Condition::PairSeen => {
                let here = self.circumstances();
                let asked = self.procedure.steps.iter().filter(|step| Condition::PairSeen.is_answered_by(step));
                let asked: Vec<_> = asked.filter(|step| self.applies(step, &here)).collect();
                let unseen = |at: &Place| asked.iter().any(|step| self.answer(&step.id, Some(*at)).is_none());
                self.pairs().into_iter().find(unseen).map(|at| Unmet::PairSeen { at })
            }
            Condition::OuterLoosened => {
                let outer = at.filter(|at| at.row() == Some(Row::Inner) && self.stud_piloted())?.partner()?;
                let nuts = left(outer, Pass::Loosened);
                (!nuts.is_empty()).then_some(Unmet::OuterLoosened { at: outer, nuts })
            }
            Condition::InnerSet => {
                let inner = at.filter(|at| at.row() == Some(Row::Outer) && self.stud_piloted())?.partner()?;
                let pass = if self.rechecks() { Pass::Recheck } else { Pass::Final };
                let nuts = left(inner, pass);
                (!nuts.is_empty()).then_some(Unmet::InnerSet { at: inner, nuts })
            }
            _ => None,
        }
    }

    /// What is wrong with the two tires that end side by side, the outer one at this
    /// place: by the tape when both were measured around, else by sizes and tread.
    pub fn mismatch(&self, outer: Place) -> Option<Mismatch> {
        let inner = outer.partner()?;
        let (one, two) = (self.job.wanted_at(outer)?, self.job.wanted_at(inner)?);
        let diameter = |tire: TireId| Some(self.job.around(tire)?.in_unit(SpanUnit::Millimetre) / PI);
        let word = match (diameter(one), diameter(two)) {
            (Some(outer_mm), Some(inner_mm)) => DualMatch::of_diameters(outer_mm, inner_mm),
            _ => {
                let (one, two) = (self.facts_of(outer, one), self.facts_of(inner, two));
                if DualMatch::outer_larger_mm(&one, &two).is_none() {
                    return Some(Mismatch::NotKnown);
                }
                DualMatch.of_pair(&one, &two)
            }
        }?;
        let span = |mm: f64| Span::new((mm * 10.0).round() / 10.0, SpanUnit::Millimetre).ok();
        match word.reason {
            Why::PairApart { difference_mm, allowed_mm } => {
                Some(Mismatch::Apart { by: span(difference_mm)?, allowed: span(allowed_mm)? })
            }
            Why::LargerInside { difference_mm } => Some(Mismatch::LargerInside { by: span(difference_mm)? }),
            _ => None,
        }
    }

    /// What is known of a tire's size and tread: as read in this job, else before.
    fn facts_of(&self, at: Place, tire: TireId) -> TireFacts {
        let mut facts = TireFacts::at(at);
        let Some(history) = self.book.tires.get(&tire) else { return facts };
        let before = || history.depths.last().map(|seen| seen.grooves.as_slice());
        if let Some(grooves) = self.job.tread(tire).map(|(grooves, _)| grooves).or_else(before) {
            facts.depths = lowest_of_each(grooves);
        }
        if let Some(size) = history.outer.as_deref().and_then(|text| sidewall::parse(text).size) {
            facts.overall_diameter_mm = size.overall_diameter_mm();
            facts.size = Some(size.to_string());
        }
        facts
    }
}
