//! Every entry of the job with its time and person; corrections with both values.

use std::collections::BTreeSet;

use maud::{Markup, html};

use super::Sheet;
use crate::calendar::Day;
use crate::entry::{Entry, Fact};
use crate::ident::{EntryId, PersonId};

impl Sheet<'_> {
    /// The entries of this job in order, with corrections and withdrawals of them.
    pub(super) fn entries_of_job(&self) -> Vec<&Entry> {
        let mut known: BTreeSet<EntryId> = BTreeSet::new();
        let mut entries = Vec::new();
        for entry in self.logbook.entries() {
            let target = match entry.fact() {
                Fact::Withdrawn { target, .. } | Fact::Corrected { target, .. } => Some(target),
                _ => None,
            };
            let about = target.is_some_and(|target| known.contains(target));
            if entry.fact().job() == Some(self.job.id) || about {
                known.insert(entry.id());
                entries.push(entry);
            }
        }
        entries
    }

    /// Entries that were corrected or taken back: what stood, what holds, who says so and why.
    pub(super) fn corrections(&self) -> Markup {
        let entries = self.entries_of_job();
        let rows: Vec<Vec<Markup>> = entries.iter().filter_map(|entry| self.correction(entry, &entries)).collect();
        let columns = ["card-stood", "card-holds", "card-why", "card-who"];
        let contents = (!rows.is_empty()).then(|| self.table("card-corrections-table", &columns, &rows));
        self.section("corrections", "card-corrections", contents)
    }

    fn correction(&self, entry: &Entry, entries: &[&Entry]) -> Option<Vec<Markup>> {
        let (target, holds, reason) = match entry.fact() {
            Fact::Corrected { target, fact, reason } => (target, self.words.fact(fact, &self.context()), reason),
            Fact::Withdrawn { target, reason, .. } => (target, self.t("card-taken-back"), reason),
            _ => return None,
        };
        let stood = entries.iter().find(|entry| entry.id() == *target)?;
        let stood = self.words.fact(stood.fact(), &self.context());
        let who = self.words.person(self.book, entry.envelope().author);
        let who =
            self.say("card-by-at", &[("person", who.into()), ("at", self.moment(entry.envelope().time.wall).into())]);
        Some([stood, holds, reason.clone(), who].map(|text| html! { (text) }).to_vec())
    }

    /// The whole record, day by day.
    pub(super) fn record(&self) -> Markup {
        let entries = self.entries_of_job();
        let mut days: Vec<(Day, Vec<Markup>)> = Vec::new();
        let mut hands: Option<PersonId> = None;
        for entry in &entries {
            let row = self.entry(entry, hands);
            if let Fact::HandsChanged { person, .. } = entry.fact() {
                hands = Some(*person);
            }
            let day = entry.envelope().time.wall.day();
            match days.last_mut() {
                Some((last, rows)) if *last == day => rows.push(row),
                _ => days.push((day, vec![row])),
            }
        }
        let contents = html! {
            p class="small" { (self.say("card-entries", &[("count", entries.len().into())])) }
            @for (day, rows) in &days {
                h3 { (day.to_string()) }
                ol class="record" { @for row in rows { (row) } }
            }
        };
        self.section("record", "card-record", Some(contents))
    }

    /// One entry: time, person, whose hands when another's, and the sentence.
    fn entry(&self, entry: &Entry, hands: Option<PersonId>) -> Markup {
        let envelope = entry.envelope();
        let person = self.words.person(self.book, envelope.author);
        let other = hands.filter(|hands| *hands != envelope.author);
        let person = match other {
            Some(hands) => {
                let hands = self.words.person(self.book, hands);
                self.say("card-hands-of", &[("person", person.into()), ("hands", hands.into())])
            }
            None => person,
        };
        let wall = envelope.time.wall;
        html! {
            li {
                time datetime=(wall.to_string()) { (wall.clock()) }
                span class="who" { (person) }
                span { (self.words.fact(entry.fact(), &self.context())) }
            }
        }
    }
}
