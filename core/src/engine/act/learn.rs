//! Learning: an instructor's code and signature, a learner's answers.

use super::{Acting, Done, Outcome, clipped};
use crate::calendar::Moment;
use crate::engine::code::Code;
use crate::engine::learning::core_answer;
use crate::engine::{Trouble, TroubleKind};
use crate::entry::{Decision, Fact, Learned, Role, SeenStep};
use crate::learning::{Plain, TRIES, locked_until, too_plain};
use crate::logbook::{Job, Person};
use crate::measure::TorqueUnit;
use crate::procedure::Bay;
use crate::rotation::Pattern;
use crate::vehicle::{Drive, Place};

/// Which steps are signed.
pub(super) struct Wanted<'w> {
    /// By their ids; all when none is named.
    pub steps: &'w [String],
    /// At this place alone.
    pub at: Option<&'w str>,
    /// In every running job.
    pub every_job: bool,
}

impl<'a> Acting<'a> {
    /// The instructor of a name.
    fn instructor(&self, name: &str) -> Result<&'a Person, Trouble> {
        let id = self.person(name)?;
        let known = self.book.person(id).filter(|person| person.role == Role::Instructor);
        known.ok_or_else(|| {
            let given = ("given", clipped(name).into());
            let instructors = self.book.people.iter().filter(|person| person.role == Role::Instructor);
            let names = self.words.list(instructors.filter_map(|person| person.name.clone()));
            let id = if names.is_empty() { "trouble-no-instructor" } else { "trouble-not-instructor" };
            Trouble::mend(self.words, id, &[given, ("names", names.into())])
        })
    }

    pub(super) fn set_code(&self, name: &str, code: &Code, current: Option<&Code>) -> Done {
        let person = self.instructor(name)?;
        let own = person.name.clone().unwrap_or_default();
        if person.code.is_some() {
            let Some(current) = current else {
                return Err(Trouble::mend(self.words, "trouble-current-code", &[("name", own.into())]));
            };
            if let Some(refused) = self.tried(person, current)? {
                return Ok(refused);
            }
        }
        if let Some(plain) = too_plain(code.typed(), &own) {
            let id = match plain {
                Plain::Short => "trouble-code-short",
                Plain::Long => "trouble-code-long",
                Plain::Row => "trouble-code-row",
                Plain::Name => "trouble-code-name",
            };
            return Err(Trouble::mend(self.words, id, &[]));
        }
        let hash = code.hash(&self.salt()).map_err(|why| {
            Trouble::new(TroubleKind::Report, self.words, "trouble-code-hash", &[("why", why.into())])
        })?;
        let said = self.words.text("said-code-set", &[("name", own.into())]);
        Ok(Outcome::fact(Fact::CodeSet { person: person.id, hash }).note(said))
    }

    /// Tries a code: nothing when it is right, what to keep and to say when it is wrong.
    fn tried(&self, person: &Person, code: &Code) -> Result<Option<Outcome>, Trouble> {
        let name = || ("name", person.name.clone().unwrap_or_default().into());
        let Some(hash) = &person.code else {
            return Err(Trouble::mend(self.words, "trouble-no-code", &[name()]));
        };
        let (now, wrong) = (self.host.clock(), person.refused);
        if let Some(until) = wrong.and_then(|(count, last)| locked_until(count, last)).filter(|until| now < *until) {
            return Err(self.locked(person, until));
        }
        if code.is(hash) {
            return Ok(None);
        }
        let wrong = wrong.map_or(0, |(count, _)| count).saturating_add(1);
        let refusal = match locked_until(wrong, now) {
            Some(until) => self.locked(person, until),
            None => {
                let left = ("left", f64::from(TRIES.saturating_sub(wrong)).into());
                Trouble::mend(self.words, "trouble-wrong-code", &[name(), left])
            }
        };
        let fact = Fact::CodeRefused { person: person.id, clock: now };
        Ok(Some(Outcome { refusal: Some(refusal), ..Outcome::fact(fact) }))
    }

    fn locked(&self, person: &Person, until: Moment) -> Trouble {
        // Told to the minute: the next whole one, so that what is told is never too early.
        let until = Moment::from_unix_ms(until.unix_ms().saturating_add(59_999));
        let at =
            self.words.text("card-moment", &[("day", until.day().to_string().into()), ("clock", until.clock().into())]);
        let name = person.name.clone().unwrap_or_default();
        Trouble::new(
            TroubleKind::Held,
            self.words,
            "trouble-code-locked",
            &[("name", name.into()), ("until", at.into())],
        )
    }

    pub(super) fn sign_steps(&self, by: &str, code: &Code, wanted: &Wanted<'_>) -> Done {
        let person = self.instructor(by)?;
        let running: Vec<&'a Job> = match wanted.every_job {
            true => self.book.jobs.iter().filter(|job| job.is_running()).collect(),
            false => vec![self.bay()?.job],
        };
        let mut facts: Vec<Fact> = Vec::new();
        let mut told: Vec<String> = Vec::new();
        for job in running {
            let bay = self.bay_of(job)?;
            let at = wanted.at.map(|at| self.place(&bay, at)).transpose()?;
            let seen = bay.to_be_seen().into_iter().filter(|seen| {
                seen.by.is_none()
                    && (wanted.steps.is_empty() || wanted.steps.contains(&seen.step.id))
                    && (at.is_none() || seen.at == at)
            });
            let mut steps = Vec::new();
            for seen in seen {
                told.push(self.words.to_see(seen.step.asks, &bay.vehicle.layout, seen.at));
                steps.push(SeenStep { step: seen.step.id.clone(), at: seen.at });
            }
            if !steps.is_empty() {
                facts.push(Fact::StepsSeen { job: job.id, by: person.id, steps });
            }
        }
        if facts.is_empty() {
            return Err(Trouble::mend(self.words, "trouble-nothing-to-see", &[]));
        }
        if let Some(refused) = self.tried(person, code)? {
            return Ok(refused);
        }
        let name = ("name", person.name.clone().unwrap_or_default().into());
        let steps = ("steps", self.words.and_list(told).into());
        let said = self.words.text("said-steps-seen", &[name, steps]);
        Ok(facts.into_iter().fold(Outcome::default(), Outcome::and).note(said))
    }

    pub(super) fn answer_first(&self, bay: &Bay<'_>, on: bool) -> Done {
        let id = if on { "said-answer-first" } else { "said-answer-first-off" };
        Ok(Outcome::fact(Fact::AnswerFirst { job: bay.job.id, on }).note(self.words.text(id, &[])))
    }

    pub(super) fn answer_decision(&self, bay: &Bay<'_>, decision: Decision, answer: &str) -> Done {
        if !bay.job.answers_first() {
            return Err(Trouble::mend(self.words, "trouble-answer-first-off", &[]));
        }
        if bay.job.learned(decision).is_some() {
            return Err(Trouble::mend(self.words, "trouble-answered", &[]));
        }
        let wrong = || {
            let id = format!("trouble-answer-{}", decision.code());
            Trouble::mend(self.words, &id, &[("given", clipped(answer).into())])
        };
        let text = answer.trim();
        let core = core_answer(bay, self.host.now().day(), decision);
        let learned = match (decision, core) {
            (Decision::Drive, core) => {
                let drive: Option<Drive> = serde_json::from_value(serde_json::Value::String(text.to_owned())).ok();
                let answer = drive.filter(|drive| *drive != Drive::Unknown).ok_or_else(wrong)?;
                let core = match core {
                    Some(Learned::Drive { core, .. }) => core,
                    _ => None,
                };
                Learned::Drive { answer, core }
            }
            (Decision::Pattern, Some(Learned::Pattern { core, .. })) => {
                let pattern: Pattern = text.parse().map_err(|_| wrong())?;
                Learned::Pattern { answer: pattern.code().to_owned(), core }
            }
            (Decision::Lifts, Some(Learned::Lifts { core, .. })) => {
                let lifts: Vec<&str> = text.split([' ', ',']).filter(|lift| !lift.is_empty()).collect();
                let read =
                    |lift: &str| lift.split('+').map(|at| self.wheel(bay, at)).collect::<Result<Vec<Place>, _>>();
                let answer = lifts.into_iter().map(read).collect::<Result<Vec<_>, _>>()?;
                if answer.is_empty() {
                    return Err(wrong());
                }
                Learned::Lifts { answer, core }
            }
            (Decision::Order, Some(Learned::Order { core, .. })) => {
                let numbers: Vec<&str> = text.split([' ', ',', '-']).filter(|number| !number.is_empty()).collect();
                let answer: Vec<u8> = numbers.iter().map_while(|number| number.parse().ok()).collect();
                let mut each = answer.clone();
                each.sort_unstable();
                let all = bay.studs().is_some_and(|studs| each.iter().copied().eq(1..=studs));
                if answer.len() != numbers.len() || !all {
                    return Err(wrong());
                }
                Learned::Order { answer, core }
            }
            (Decision::Target, Some(Learned::Target { core, .. })) => {
                let unit = core.map(|core| core.unit());
                Learned::Target { answer: self.reading::<TorqueUnit>(text, unit)?, core }
            }
            _ => return Err(Trouble::new(TroubleKind::Held, self.words, "trouble-answer-early", &[])),
        };
        let said = self.words.both_answers(&learned, &bay.vehicle.layout);
        Ok(Outcome::fact(Fact::AnswerGiven { job: bay.job.id, learned }).note(said))
    }
}
