//! Taking the last command back; putting things away, and bringing them back.

use super::{Acting, Done, Outcome};
use crate::engine::command::Kept;
use crate::engine::{Trouble, undo};
use crate::entry::{Fact, Role, Thing};
use crate::ident::PersonId;

/// How many sentences of a command are told when it is taken back.
const TOLD: usize = 3;

impl Acting<'_> {
    /// Takes back what this device said last.
    pub(super) fn undo(&self) -> Done {
        let Some(last) = self.spoken.first() else {
            return Err(Trouble::mend(self.words, "trouble-nothing-to-undo", &[]));
        };
        let reason = self.words.text("undo-reason", &[]);
        let mut outcome = Outcome::default();
        for entry in last.entries.iter().rev() {
            outcome = outcome.and(Fact::Withdrawn { target: entry.id(), reason: reason.clone(), undo: true });
        }
        let said = undo::sentences(last, self.book, self.words);
        for sentence in said.iter().take(TOLD) {
            outcome = outcome.note(self.words.text("said-undone", &[("said", sentence.as_str().into())]));
        }
        let rest = said.len().saturating_sub(TOLD);
        Ok(if rest > 0 {
            outcome.note(self.words.text("said-undone-more", &[("count", rest.into())]))
        } else {
            outcome
        })
    }

    /// What a name stands for among the things that can be put away.
    fn thing(&self, kept: Kept, name: &str) -> Result<Thing, Trouble> {
        Ok(match kept {
            Kept::Vehicle => Thing::Vehicle(self.vehicle(Some(name))?.id),
            Kept::Set => Thing::Set(self.vehicle(Some(name))?.id),
            Kept::Person => Thing::Person(self.known_person(name)?),
            Kept::Tool => Thing::Tool(self.tool(name)?.id),
        })
    }

    /// Puts a thing away. It stays in the book, with everything that was done with it.
    pub(super) fn archive(&self, kept: Kept, name: &str, reason: &str) -> Done {
        if kept == Kept::Tool {
            return self.retire_tool(name, reason);
        }
        let (thing, reason) = (self.thing(kept, name)?, self.text("what-reason", reason)?);
        if self.book.is_archived(thing) {
            return Err(Trouble::mend(self.words, "trouble-archived-already", &[]));
        }
        match thing {
            Thing::Vehicle(id) | Thing::Set(id) => {
                if self.book.in_work(id) {
                    return Err(Trouble::mend(self.words, "trouble-archive-in-work", &[]));
                }
            }
            Thing::Person(id) if self.works_alone(id) => {
                return Err(Trouble::mend(self.words, "trouble-archive-last", &[]));
            }
            Thing::Person(_) | Thing::Tool(_) => {}
        }
        let said = self.words.text("said-archived", &[]);
        Ok(Outcome::fact(Fact::Archived { thing, reason }).note(said))
    }

    /// Nobody else could work from the book.
    fn works_alone(&self, id: PersonId) -> bool {
        let works = |person: &&crate::logbook::Person| {
            person.role != Role::Customer && !self.book.is_archived(Thing::Person(person.id))
        };
        let mut workers = self.book.people.iter().filter(works);
        workers.all(|person| person.id == id)
    }

    /// Brings an archived thing back as it was.
    pub(super) fn bring_back(&self, kept: Kept, name: &str) -> Done {
        let said = self.words.text("said-brought-back", &[]);
        if kept == Kept::Tool {
            let named = |tool: &&crate::logbook::Tool| tool.name.eq_ignore_ascii_case(name.trim());
            let tool = self.book.tools.iter().find(named).filter(|tool| tool.retired);
            let tool = tool.ok_or_else(|| Trouble::mend(self.words, "trouble-not-archived", &[]))?;
            let fact = Fact::ToolAdded {
                tool: tool.id,
                what: tool.what.clone(),
                name: tool.name.clone(),
                interval_months: tool.interval_months,
            };
            return Ok(Outcome::fact(fact).note(said));
        }
        let thing = self.thing(kept, name)?;
        if !self.book.is_archived(thing) {
            return Err(Trouble::mend(self.words, "trouble-not-archived", &[]));
        }
        Ok(Outcome::fact(Fact::BroughtBack { thing }).note(said))
    }
}
