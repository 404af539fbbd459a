//! What an instructor must have seen, and what a learner answers before the core does.
//!
//! Neither stands in a procedure's file: both belong to the person whose hands do the step.

use super::{Ask, Bay, Condition, Step, Unmet};
use crate::entry::{Decision, Fact, Role};
use crate::ident::PersonId;
use crate::logbook::Line;
use crate::vehicle::Place;

/// What an instructor must see of an apprentice's work: that locks or stands hold, that all is
/// clear before lowering, and the final torque (common practice, no source).
pub const MUST_BE_SEEN: [Ask; 3] = [Ask::Held, Ask::AllClear, Ask::Final];

/// A step that an apprentice did and an instructor must see.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToSee<'a> {
    /// The step.
    pub step: &'a Step,
    /// Where.
    pub at: Option<Place>,
    /// Whose hands did it.
    pub learner: PersonId,
    /// Who signed it since it was last done.
    pub by: Option<PersonId>,
}

impl<'a> Bay<'a> {
    fn is_apprentice(&self, person: PersonId) -> bool {
        self.book.person(person).is_some_and(|known| known.role == Role::Apprentice)
    }

    /// The steps that an apprentice's hands did and an instructor must see, in the order they were done.
    pub fn to_be_seen(&self) -> Vec<ToSee<'a>> {
        let here = self.circumstances();
        let mut found: Vec<ToSee<'a>> = Vec::new();
        for line in &self.job.lines {
            let Some((asks, at)) = Ask::answered_by(&line.fact).filter(|(asks, _)| MUST_BE_SEEN.contains(asks)) else {
                continue;
            };
            let steps = self.procedure.steps.iter().filter(|step| step.asks == asks && self.applies(step, &here));
            for step in steps {
                let known = found.iter().any(|known| known.step.id == step.id && known.at == at);
                // An action of an order of lifts is done with its fact; a wheel with all its nuts.
                if !known && (step.act.is_some() || self.done(step, at).is_some()) {
                    found.extend(self.seen_of(step, at));
                }
            }
        }
        found
    }

    fn seen_of(&self, step: &'a Step, at: Option<Place>) -> Option<ToSee<'a>> {
        let lines: &'a [Line] = &self.job.lines;
        let does = |line: &Line| {
            Ask::answered_by(&line.fact)
                .is_some_and(|(asks, place)| asks == step.asks && (place == at || place.is_none()))
        };
        let last = lines.iter().rposition(does)?;
        // What was done before the wheel last came off counts for nothing any more.
        let begun = lines
            .iter()
            .take(last)
            .rposition(|line| matches!(line.fact, Fact::WheelOff { at: off, .. } if Some(off) == at));
        let own = lines.iter().take(last.saturating_add(1)).skip(begun.unwrap_or(0)).filter(|line| does(line));
        let learner = own.map(|line| line.hands).find(|hands| self.is_apprentice(*hands))?;
        let signed = lines.iter().skip(last).rev().find_map(|line| match &line.fact {
            Fact::StepsSeen { by, steps, .. } => {
                steps.iter().any(|seen| seen.step == step.id && seen.at == at).then_some(*by)
            }
            _ => None,
        });
        Some(ToSee { step, at, learner, by: signed })
    }

    /// The first step that no instructor signed, where the book has an instructor who could.
    pub(super) fn unseen(&self) -> Option<Unmet> {
        if !self.book.people.iter().any(|person| person.role == Role::Instructor) {
            return None;
        }
        let first = self.to_be_seen().into_iter().find(|seen| seen.by.is_none())?;
        Some(Unmet::InstructorSaw { asks: first.step.asks, at: first.at })
    }

    /// The decision that a learner answers before the core's answer may be shown; none once it was answered.
    pub fn to_answer(&self, decision: Decision) -> bool {
        self.job.answers_first() && self.job.learned(decision).is_none()
    }

    /// What a step waits for that no file asks for.
    pub(super) fn implied(&self, step: &Step, at: Option<Place>) -> Vec<Unmet> {
        let asked: &[Decision] = match step.asks {
            _ if step.act.is_some() => &[Decision::Lifts],
            Ask::Plan => &[Decision::Drive, Decision::Pattern],
            Ask::Snug => &[Decision::Order],
            Ask::Final | Ask::Rechecked => &[Decision::Order, Decision::Target],
            _ => &[],
        };
        let settled = self.procedure.steps.iter().any(|step| step.asks == Ask::Drive);
        let waits = |decision: &&Decision| self.to_answer(**decision) && (**decision != Decision::Drive || settled);
        let answer = asked.iter().find(waits).map(|decision| Unmet::AnsweredFirst { decision: *decision });
        let unseen = (step.asks == Ask::Signature).then(|| self.unseen()).flatten();
        let open = |unmet: &Unmet| self.job.opened_with(&step.id, at, unmet.condition().code()).is_none();
        [answer, unseen].into_iter().flatten().filter(open).collect()
    }
}

impl Condition {
    /// Conditions that belong to the person, not to a procedure's file.
    pub const OF_LEARNERS: [Self; 2] = [Self::InstructorSaw, Self::AnsweredFirst];
}
