//! The set of entries: their order, their union, and what they add up to.
//!
//! A [`Logbook`] is a union: merging is commutative, associative and
//! idempotent. [`Logbook::book`] folds it into a [`Book`]: people, vehicles,
//! the specification shelf, tools, tires and jobs as they stand. The fold can
//! be thrown away and made again at any time.

mod book;
mod job;
mod kept;
mod lines;
mod pairs;
mod tools;

use std::collections::{BTreeMap, BTreeSet};

pub use book::{Book, DepthSeen, Person, Specification, Stored, TireHistory, Vehicle};
pub use job::{Job, Line, NutSaid, Status};
pub use lines::{Archive, Lines, Span};
pub use tools::{Tool, ToolClass};

use crate::entry::{Entry, Fact, HybridTime};
use crate::ident::{EntryId, JobId, StreamId};

/// The union of entries, in order.
#[derive(Debug, Clone, Default)]
pub struct Logbook {
    entries: BTreeMap<(HybridTime, StreamId, u64), Entry>,
    ids: BTreeSet<EntryId>,
}

/// An entry with the fact that holds for it after corrections.
#[derive(Debug, Clone, Copy)]
pub struct Said<'a> {
    /// The entry.
    pub entry: &'a Entry,
    /// What holds: its own fact, or its last correction's.
    pub fact: &'a Fact,
    /// The entry that corrected it.
    pub corrected_by: Option<&'a Entry>,
}

impl Logbook {
    /// Adds an entry; `false` when it was there already.
    pub fn insert(&mut self, entry: Entry) -> bool {
        if !self.ids.insert(entry.id()) {
            return false;
        }
        self.entries.insert(entry.order(), entry);
        true
    }

    /// Adds all entries of another logbook.
    pub fn merge(&mut self, other: Self) {
        for entry in other.entries.into_values() {
            self.insert(entry);
        }
    }

    /// The entries in order.
    pub fn entries(&self) -> impl Iterator<Item = &Entry> {
        self.entries.values()
    }

    /// How many entries there are.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// What holds: each entry with its last correction, without those that
    /// were withdrawn. Corrections and withdrawals themselves are not in it.
    pub fn said(&self) -> impl Iterator<Item = Said<'_>> {
        let withdrawn = self.withdrawn();
        let mut corrections: BTreeMap<EntryId, (&Entry, &Fact)> = BTreeMap::new();
        for entry in self.entries() {
            // A correction that was itself withdrawn no longer holds, and the one before it does again.
            if let Fact::Corrected { target, fact, .. } = entry.fact()
                && !withdrawn.contains(&entry.id())
            {
                corrections.insert(*target, (entry, fact));
            }
        }
        self.entries().filter_map(move |entry| {
            let silent = matches!(entry.fact(), Fact::Withdrawn { .. } | Fact::Corrected { .. });
            if silent || withdrawn.contains(&entry.id()) {
                return None;
            }
            Some(match corrections.get(&entry.id()) {
                Some(&(by, fact)) => Said { entry, fact, corrected_by: Some(by) },
                None => Said { entry, fact: entry.fact(), corrected_by: None },
            })
        })
    }

    /// What was taken back and stays so: a withdrawal that was itself taken back no longer holds.
    fn withdrawn(&self) -> BTreeSet<EntryId> {
        let mut withdrawn = BTreeSet::new();
        for entry in self.entries.values().rev() {
            if let Fact::Withdrawn { target, .. } = entry.fact()
                && !withdrawn.contains(&entry.id())
            {
                withdrawn.insert(*target);
            }
        }
        withdrawn
    }

    /// What the entries add up to.
    pub fn book(&self) -> Book {
        let mut book = Book::default();
        for said in self.said() {
            book.take(said);
        }
        book.last = self.entries.keys().next_back().copied();
        let targeted = self.targeted();
        for entry in self.entries() {
            let target = target(entry);
            let about = [Some(entry.id()), target].into_iter().flatten().filter_map(|id| targeted.get(&id));
            let jobs: BTreeSet<JobId> = about.flatten().copied().chain(entry.fact().job()).collect();
            for job in jobs {
                book.note(job, entry);
            }
        }
        book.targets = targeted.into_keys().collect();
        book.taken_back = self.withdrawn();
        // A photo stays in the book when what was said with it was taken back.
        book.photos.clear();
        for entry in self.entries() {
            if let Some(photo) = entry.fact().photo() {
                book.photos.entry(photo).or_insert(entry.id());
            }
        }
        book
    }

    /// What corrections and withdrawals are about, with the jobs that each
    /// touches: its own, and those of what corrects it.
    fn targeted(&self) -> BTreeMap<EntryId, BTreeSet<JobId>> {
        let mut targeted = BTreeMap::<EntryId, BTreeSet<JobId>>::new();
        for entry in self.entries() {
            if let Some(target) = target(entry) {
                targeted.entry(target).or_default().extend(entry.fact().job());
            }
        }
        let about: Vec<&Entry> = self.entries().filter(|entry| targeted.contains_key(&entry.id())).collect();
        // A correction can itself be withdrawn: that is about the same jobs, in whatever order they came.
        loop {
            let before: usize = targeted.values().map(BTreeSet::len).sum();
            for entry in &about {
                let through = target(entry).and_then(|target| targeted.get(&target)).cloned().unwrap_or_default();
                targeted.entry(entry.id()).or_default().extend(entry.fact().job().into_iter().chain(through));
            }
            if before == targeted.values().map(BTreeSet::len).sum::<usize>() {
                break;
            }
        }
        targeted
    }
}

/// What a correction or withdrawal is about.
fn target(entry: &Entry) -> Option<EntryId> {
    match entry.fact() {
        Fact::Withdrawn { target, .. } | Fact::Corrected { target, .. } => Some(*target),
        _ => None,
    }
}

impl FromIterator<Entry> for Logbook {
    fn from_iter<I: IntoIterator<Item = Entry>>(entries: I) -> Self {
        let mut logbook = Self::default();
        for entry in entries {
            logbook.insert(entry);
        }
        logbook
    }
}
