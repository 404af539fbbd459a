//! Finding what still holds in a damaged file.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use rusqlite::Connection;
use serde::de::IgnoredAny;

use super::chain;
use super::error::{Mend, StoreError};
use super::problem::{Missing, Spot};
use super::rows::{self, Part};
use super::schema;
use super::seals;
use super::witness::Mark;
use crate::entry::{Entry, Head};
use crate::ident::{Digest, EntryId, StreamId};
use crate::proof::Seal;

/// How every stored entry begins.
const START: &[u8] = b"{\"v\":";

/// No entry takes less room in a file than this, in bytes.
const SMALLEST: u64 = 200;

/// What was found in a damaged file.
#[derive(Default)]
pub(super) struct Found {
    conn: Option<Connection>,
    /// Entries whose digest holds.
    proven: Vec<Entry>,
    /// Entries that hold only when another one names their digest.
    unproven: Vec<Entry>,
    /// Personal parts that were erased on purpose.
    erased: BTreeSet<EntryId>,
    /// The kept ends of the streams.
    heads: BTreeMap<StreamId, Head>,
    /// Seals whose signature holds.
    seals: Vec<Seal>,
}

/// What can stand in a new book.
#[derive(Default)]
pub(super) struct Fit {
    pub(super) entries: Vec<Entry>,
    /// Personal parts that were erased on purpose.
    pub(super) erased: BTreeSet<EntryId>,
    /// Seals that may be over some of the entries.
    pub(super) seals: Vec<Seal>,
    /// What is missing at the ends of streams, as far as is known.
    pub(super) lost_ends: Vec<Missing>,
    /// Entries that hold but do not follow the one before them.
    pub(super) unfit: Vec<Spot>,
    /// Personal parts that did not come back.
    pub(super) personal_lost: u64,
}

impl Found {
    /// Reads what the database still gives, row by row, and then what stands in
    /// the raw bytes of the file and its log, whatever the database thinks of them.
    ///
    /// # Errors
    /// Only when an entry holds and can't be read: then a newer program wrote
    /// it, and dropping it would be the damage. Or the files can't be read at all.
    pub(super) fn look(&mut self, book: &Path, log: &Path, witness: Option<Mark>) -> Result<(), StoreError> {
        self.conn = schema::reading(book, false).ok();
        if let Some(conn) = &self.conn {
            self.heads.extend(rows::heads(conn).unwrap_or_default());
            self.seals.extend(seals::all(conn).unwrap_or_default().into_iter().flatten());
        }
        let room = |path: &Path| fs::metadata(path).map_or(0, |file| file.len());
        // A kept count may itself be damaged: no more rows than there is room for.
        let room = room(book).saturating_add(room(log)) / SMALLEST;
        let said = self.conn.as_ref().and_then(|conn| rows::mark(conn).ok()).map_or(0, |mark| mark.arrived);
        let kept = self.heads.values().map(|head| head.number).fold(0, u64::saturating_add);
        let most = witness.map_or(0, |mark| mark.arrived).max(said).max(kept).min(room);
        for arrived in 1..=most {
            let row = self.conn.as_ref().and_then(|conn| rows::bytes_arrived(conn, arrived).ok().flatten());
            if let Some((bytes, digest)) = row {
                self.take(bytes, digest)?;
            }
        }
        for path in [book, log] {
            match fs::read(path) {
                Ok(raw) => self.carve(&raw)?,
                Err(why) if why.kind() == std::io::ErrorKind::NotFound => {}
                Err(why) => return Err(StoreError::io(&why, path)),
            }
        }
        Ok(())
    }

    fn take(&mut self, bytes: Vec<u8>, digest: Digest) -> Result<(), StoreError> {
        let right = Digest::of(&bytes);
        match Entry::open(bytes, right, None) {
            Ok(entry) => {
                let entry = self.with_part(entry);
                if right == digest { self.proven.push(entry) } else { self.unproven.push(entry) }
            }
            Err(why) if right == digest => return Err(StoreError::mend(Mend::newer_entry(&why))),
            Err(_) => {}
        }
        Ok(())
    }

    /// The entry with the personal part that stands beside it, when that holds.
    fn with_part(&mut self, entry: Entry) -> Entry {
        if entry.envelope().personal.is_none() {
            return entry;
        }
        let parts = self.conn.as_ref().and_then(|conn| rows::part(conn, entry.id()).ok());
        match parts.and_then(|mut parts| parts.remove(&entry.id())) {
            Some(Part::Kept(personal)) => {
                Entry::open(entry.bytes().to_vec(), entry.digest(), Some(personal)).unwrap_or(entry)
            }
            Some(Part::Erased) => {
                self.erased.insert(entry.id());
                entry
            }
            Some(Part::Absent) | None => entry,
        }
    }

    /// Looks for entries in raw bytes. The digest stands behind the bytes, as the columns do.
    fn carve(&mut self, raw: &[u8]) -> Result<(), StoreError> {
        let mut known: BTreeSet<Digest> = self.proven.iter().map(Entry::digest).collect();
        let mut rest = raw;
        while let Some(skip) = rest.windows(START.len()).position(|window| window == START) {
            let Some((_, from)) = rest.split_at_checked(skip) else { break };
            rest = from.get(1..).unwrap_or_default();
            let mut objects = serde_json::Deserializer::from_slice(from).into_iter::<IgnoredAny>();
            let Some(Ok(_)) = objects.next() else { continue };
            let Some((bytes, after)) = from.split_at_checked(objects.byte_offset()) else { continue };
            let Some(digest) = after.get(..32).and_then(|bytes| Digest::from_bytes(bytes).ok()) else { continue };
            if Digest::of(bytes) == digest && known.insert(digest) {
                self.take(bytes.to_vec(), digest)?;
            }
        }
        Ok(())
    }

    /// Chooses for each place of each stream the entry that stands there.
    pub(super) fn fit(self) -> Fit {
        let named: BTreeSet<Digest> = self
            .proven
            .iter()
            .filter_map(|entry| entry.envelope().previous)
            .chain(self.heads.values().filter_map(|head| head.digest))
            .collect();
        let mut places = BTreeMap::<(StreamId, u64), Vec<Entry>>::new();
        let unproven = self.unproven.into_iter().filter(|entry| named.contains(&entry.digest()));
        for entry in self.proven.into_iter().chain(unproven) {
            places.entry((entry.envelope().stream, entry.envelope().number)).or_default().push(entry);
        }
        let mut fit = Fit { erased: self.erased, seals: self.seals, ..Fit::default() };
        let mut ids = BTreeSet::new();
        let mut ends = BTreeMap::<StreamId, Head>::new();
        for ((stream, number), candidates) in places {
            let end = ends.entry(stream).or_insert_with(|| Head::empty(stream));
            // Two can claim one place when the log holds what was never acknowledged.
            let best = candidates
                .into_iter()
                .rev()
                .max_by_key(|entry| (end.then(entry).is_ok(), named.contains(&entry.digest())));
            let Some(entry) = best.filter(|entry| !ids.contains(&entry.id())) else { continue };
            if end.then(&entry).is_err() && number <= end.number.saturating_add(1) {
                fit.unfit.push(Spot::Entry { stream, number });
                continue;
            }
            *end = chain::after(&entry);
            ids.insert(entry.id());
            let part_lost = entry.envelope().personal.is_some() && entry.personal().is_none();
            if part_lost && !fit.erased.contains(&entry.id()) {
                fit.personal_lost += 1;
            }
            fit.entries.push(entry);
        }
        for (stream, head) in self.heads {
            let end = ends.get(&stream).map_or(0, |end| end.number);
            // A head that names no entry's digest may be damaged itself.
            if head.number > end && head.number - end < 1_000_000 {
                fit.lost_ends.push(Missing { stream, first: end + 1, last: head.number });
            }
        }
        // In the order of the book: the order in which they came in may be lost.
        fit.entries.sort_by_key(Entry::order);
        fit
    }
}
