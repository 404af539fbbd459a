//! Learning on the card: what an instructor signed, and answers beside each other.

use maud::{Markup, html};

use super::Sheet;
use crate::entry::{Fact, Role};
use crate::words::capital;

impl Sheet<'_> {
    /// What must be seen of an apprentice's work and who signed it; the learner's answers beside the core's.
    pub(super) fn learning(&self) -> Markup {
        let seen = self.seen_rows();
        let answers = self.answer_rows();
        let signed = self.job.lines.iter().any(|line| matches!(line.fact, Fact::StepsSeen { .. }));
        let contents = html! {
            @if !seen.is_empty() {
                (self.table("card-seen-table", &["card-seen-what", "card-seen-learner", "card-seen-by"], &seen))
            }
            @if signed { p { strong { (self.t("card-on-device")) } } }
            @if !answers.is_empty() {
                (self.table(
                    "card-answers-table",
                    &["card-decision", "card-own-answer", "card-core-answer", "card-compared"],
                    &answers,
                ))
            }
        };
        self.section("learning", "card-learning", (!contents.0.is_empty()).then_some(contents))
    }

    fn seen_rows(&self) -> Vec<Vec<Markup>> {
        let Some(bay) = self.bay() else { return Vec::new() };
        let instructor = self.book.people.iter().any(|person| person.role == Role::Instructor);
        let unsigned = if instructor { "card-not-seen" } else { "card-no-instructor" };
        let row = |seen: crate::procedure::ToSee<'_>| {
            let by = seen.by.map_or_else(|| self.t(unsigned), |by| self.words.person(self.book, by));
            let what = capital(&self.words.to_see(seen.step.asks, &self.vehicle.layout, seen.at));
            [what, self.words.person(self.book, seen.learner), by].map(|text| html! { (text) }).to_vec()
        };
        bay.to_be_seen().into_iter().map(row).collect()
    }

    fn answer_rows(&self) -> Vec<Vec<Markup>> {
        let given = self.job.lines.iter().filter_map(|line| match &line.fact {
            Fact::AnswerGiven { learned, .. } => Some(learned),
            _ => None,
        });
        given
            .map(|learned| {
                let [own, core, same] = self.words.answers(learned, &self.vehicle.layout);
                [capital(&self.words.decision(learned)), own, core, same].map(|text| html! { (text) }).to_vec()
            })
            .collect()
    }
}
