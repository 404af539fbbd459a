//! Erasing what is personal: names, phone numbers, plates.

use super::{Engine, Erased, Trouble};
use crate::entry::{Entry, Fact};
use crate::ident::EntryId;
use crate::store::StoreError;
use crate::words::{Speech, Words};

impl Engine {
    /// Erases a person's name and phone number wherever they stand beside an entry, or a
    /// vehicle's plate, for good. Every entry stays, and the book and its seals still
    /// verify: they hold only salted digests of what was erased.
    ///
    /// Words in reasons and complaints, a vehicle's name in the shop, photos, cards that
    /// went out and backups that were made are not reached, and that is said.
    ///
    /// # Errors
    /// When nothing of that name is kept, or the book can't be written.
    pub fn erase(&mut self, what: Erased, name: &str, speech: Speech) -> Result<Vec<String>, Trouble> {
        let words = Words::new(speech);
        let trouble = |why: StoreError| Trouble::of_store(&why, &words);
        let entries = self.store.entries().map_err(trouble)?;
        let found = match what {
            Erased::Person => of_person(&entries, name),
            Erased::Plate => self.plate_of(&entries, name, &words)?,
        };
        if found.is_empty() {
            return Err(Trouble::mend(&words, "trouble-nothing-to-erase", &[]));
        }
        self.store.erase_all(&found).map_err(trouble)?;
        self.fold_anew().map_err(trouble)?;
        if what == Erased::Person {
            self.forget_holder(name).map_err(trouble)?;
        }
        let mut said = vec![words.text("said-erased", &[("count", found.len().into())])];
        said.push(words.text("said-erased-elsewhere", &[]));
        let older = self.store.older_files();
        if !older.is_empty() {
            said.push(words.text("said-erased-older", &[("names", words.list(older).into())]));
        }
        said.push(words.text("said-erased-not", &[]));
        Ok(said)
    }

    /// The entries that hold a vehicle's plate.
    fn plate_of(&self, entries: &[Entry], name: &str, words: &Words) -> Result<Vec<EntryId>, Trouble> {
        let vehicle = self.book.vehicle_named(name).ok_or_else(|| Trouble::no_vehicle(&self.book, name, words))?.id;
        let holds = |entry: &&Entry| {
            entry.personal().is_some_and(|part| part.plate.is_some())
                && matches!(entry.fact(), Fact::VehicleAdded { vehicle: of, .. } if *of == vehicle)
        };
        Ok(entries.iter().filter(holds).map(Entry::id).collect())
    }
}

/// The entries beside which this name stands: the person's own, and where they approved or lent a hand.
fn of_person(entries: &[Entry], name: &str) -> Vec<EntryId> {
    let name = name.trim();
    let named = |entry: &&Entry| {
        let part = entry.personal().and_then(|part| part.name.as_deref());
        part.is_some_and(|known| known.trim().eq_ignore_ascii_case(name))
    };
    entries.iter().filter(named).map(Entry::id).collect()
}
