//! Learning: competences, answers beside each other, what an instructor must see.

use super::Words;
use super::entry::capital;
use crate::entry::Learned;
use crate::learning::{Competence, Standing, agrees};
use crate::logbook::Book;
use crate::procedure::Ask;
use crate::vehicle::{Layout, Place};

impl Words {
    /// A competence's code in data.
    pub fn competence_code(&self, competence: Competence) -> String {
        match serde_json::to_value(competence) {
            Ok(serde_json::Value::String(code)) => code,
            _ => String::new(),
        }
    }

    /// A competence by its name.
    ///
    /// ```
    /// use lugbook::learning::Competence;
    /// use lugbook::words::{Speech, Words};
    /// assert_eq!(Words::new(Speech::default()).competence(Competence::FinalTorque), "final torque");
    /// ```
    pub fn competence(&self, competence: Competence) -> String {
        self.coded("competence", &competence)
    }

    /// How a person stands with a competence: done, seen, signed by whom.
    pub fn standing(&self, standing: &Standing, book: &Book) -> String {
        let name = ("name", capital(&self.competence(standing.competence)).into());
        let done = self.text("learner-done", &[("count", standing.done.into())]);
        let practice = self.text("learner-practice", &[("count", standing.practice.into())]);
        let done = match standing.practice {
            0 => done,
            all if all == standing.done => self.text("learner-done-practice", &[("count", all.into())]),
            _ => self.list([done, practice]),
        };
        if standing.seen == 0 {
            return self.text("learner-standing", &[name, ("done", done.into())]);
        }
        let by = self.and_list(standing.signed_by.iter().map(|(by, _)| self.person(book, *by)));
        let seen = self.text("learner-seen", &[("count", standing.seen.into()), ("by", by.into())]);
        self.text("learner-standing-seen", &[name, ("done", done.into()), ("seen", seen.into())])
    }

    /// What an instructor must have seen, with its place.
    pub fn to_see(&self, asks: Ask, layout: &Layout, at: Option<Place>) -> String {
        let id = match asks {
            Ask::Held => "see-locks",
            Ask::AllClear => "see-before-lowering",
            _ => "see-final-torque",
        };
        let what = self.text(id, &[]);
        match at {
            Some(at) => {
                let at = layout.name(at, self.speech().letters);
                self.text("fact-at", &[("at", at.into()), ("said", what.into())])
            }
            None => what,
        }
    }

    /// A learner's answer as a person reads it; the core's by the same words.
    fn answer_told(&self, learned: &Learned, layout: &Layout, of_core: bool) -> Option<String> {
        let name = |at: &Place| layout.name(*at, self.speech().letters);
        let nuts = |order: &[u8]| order.iter().map(u8::to_string).collect::<Vec<_>>().join(" ");
        let lifts = |lifts: &[Vec<Place>]| {
            let lift = |lift: &Vec<Place>| lift.iter().map(name).collect::<Vec<_>>().join("+");
            self.list(lifts.iter().map(lift))
        };
        match learned {
            Learned::Drive { answer, .. } if !of_core => Some(self.drive(*answer)),
            Learned::Drive { core, .. } => core.map(|drive| self.drive(drive)),
            Learned::Pattern { answer, .. } if !of_core => Some(self.pattern(answer)),
            Learned::Pattern { core, .. } => core.as_ref().map(|code| self.pattern(code)),
            Learned::Lifts { answer, .. } if !of_core => Some(lifts(answer)),
            Learned::Lifts { core, .. } => core.as_ref().map(|core| lifts(core)),
            Learned::Order { answer, .. } if !of_core => Some(nuts(answer)),
            Learned::Order { core, .. } => core.as_ref().map(|core| nuts(core)),
            Learned::Target { answer, .. } if !of_core => Some(self.reading(answer)),
            Learned::Target { core, .. } => core.as_ref().map(|core| self.reading(core)),
        }
    }

    /// A decision by its name.
    pub fn decision(&self, learned: &Learned) -> String {
        self.coded("decision", &learned.decision())
    }

    /// The learner's answer, the core's, and whether they are the same: for a table.
    pub fn answers(&self, learned: &Learned, layout: &Layout) -> [String; 3] {
        let own = self.answer_told(learned, layout, false).unwrap_or_default();
        let core = self.answer_told(learned, layout, true).unwrap_or_else(|| self.text("answer-none", &[]));
        let same = match agrees(learned) {
            Some(true) => "answer-same",
            Some(false) => "answer-differs",
            None => "answer-open",
        };
        [own, core, self.text(same, &[])]
    }

    /// Both answers in a sentence.
    pub fn both_answers(&self, learned: &Learned, layout: &Layout) -> String {
        let [own, core, same] = self.answers(learned, layout);
        let decision = ("decision", capital(&self.decision(learned)).into());
        self.text("answer-both", &[decision, ("own", own.into()), ("core", core.into()), ("same", same.into())])
    }
}
