//! Taking in entries of other devices.

use rusqlite::Connection;
use serde::Serialize;

use super::backup::Backup;
use super::chain;
use super::error::{Mend, StoreError};
use super::folder::Folder;
use super::problem::Missing;
use super::rows::{self, Part, Writing};
use super::seals;
use super::snapshot;
use crate::entry::{Entry, Head};
use crate::ident::StreamId;

/// What a merge did.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
pub struct Merged {
    /// Entries that are new in this book.
    pub new: u64,
    /// Entries that the book already had.
    pub known: u64,
    /// Personal parts that came for entries which had been without.
    pub completed: u64,
}

/// What to do about numbers that are missing between the entries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Holes {
    /// Refuse.
    Refused,
    /// Note them as missing.
    Noted,
}

/// From so many entries on, the database is given more room in memory: its own
/// default holds little more than the inner pages of a large book's indexes.
const MANY: usize = 10_000;

/// Puts the entries that are new into the tables. Each must follow the one
/// before it in its stream; one that the book has must be the same.
pub(super) fn take_in(
    conn: &Connection,
    folder: &Folder,
    entries: &[Entry],
    holes: Holes,
) -> Result<Merged, StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let room = |kib: i32| conn.pragma_update(None, "cache_size", -kib).map_err(fault);
    if entries.len() > MANY {
        room(64 << 10)?;
    }
    let heads = rows::heads(conn).map_err(fault)?;
    let gaps = rows::gaps(conn).map_err(fault)?;
    let mut writing = Writing::new(conn).map_err(fault)?;
    let mut merged = Merged::default();
    for (stream, entries) in chain::streams(entries) {
        let mut head = heads.get(&stream).copied().unwrap_or_else(|| Head::empty(stream));
        let mut filled = Vec::new();
        for entry in entries {
            let number = entry.envelope().number;
            let unchained = || StoreError::mend(Mend::Unchained { stream, number });
            if number <= head.number {
                match rows::digest_at(conn, stream, number).map_err(fault)? {
                    Some(digest) if digest == entry.digest() => {
                        merged.known += 1;
                        merged.completed += u64::from(complete(conn, entry).map_err(fault)?);
                        continue;
                    }
                    Some(_) => return Err(StoreError::mend(Mend::Forked { stream, number })),
                    None if gaps.iter().any(|gap| gap.stream == stream && (gap.first..=gap.last).contains(&number)) => {
                        filled.push(number);
                    }
                    None => return Err(unchained()),
                }
            } else {
                match head.then(entry) {
                    Ok(next) => head = next,
                    Err(_) if holes == Holes::Noted && number > head.number + 1 => {
                        let gap = Missing { stream, first: head.number + 1, last: number - 1 };
                        rows::put_gap(conn, &gap).map_err(fault)?;
                        head = chain::after(entry);
                    }
                    Err(_) => return Err(unchained()),
                }
            }
            if let Err(why) = writing.add(entry) {
                // Its place is free: what the tables refuse is an id that another entry has.
                let refused = why.sqlite_error_code() == Some(rusqlite::ErrorCode::ConstraintViolation);
                let taken = refused && rows::by_id(conn, entry.id()).map_err(fault)?.is_some();
                return Err(if taken { StoreError::mend(Mend::SameId { id: entry.id() }) } else { fault(why) });
            }
            merged.new += 1;
        }
        rows::put_head(conn, &head).map_err(fault)?;
        if !filled.is_empty() {
            close_gaps(conn, stream, &filled, &gaps).map_err(fault)??;
        }
    }
    if entries.len() > MANY {
        room(2 << 10)?;
    }
    if merged.completed > 0 {
        // What other rooms made of those entries was made without their names.
        snapshot::forget(conn).map_err(fault)?;
    }
    Ok(merged)
}

/// Takes in a backup. What the backup itself knows to be missing may be missing
/// here too; what was erased there is erased here.
pub(super) fn take_backup(conn: &Connection, folder: &Folder, backup: &Backup) -> Result<Merged, StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let before = rows::gaps(conn).map_err(fault)?;
    let merged = take_in(conn, folder, &backup.entries, Holes::Noted)?;
    for gap in rows::gaps(conn).map_err(fault)? {
        let within = |known: &Missing| known.stream == gap.stream && known.first <= gap.first && gap.last <= known.last;
        if !before.iter().chain(backup.missing()).any(within) {
            return Err(StoreError::mend(Mend::Unchained { stream: gap.stream, number: gap.last.saturating_add(1) }));
        }
    }
    seals::take_in(conn, folder, &backup.seals)?;
    for id in &backup.erased {
        rows::put_part(conn, *id, &Part::Erased).map_err(fault)?;
    }
    if !backup.erased.is_empty() {
        snapshot::forget(conn).map_err(fault)?;
    }
    Ok(merged)
}

/// Gives an entry that came without its personal part the part that came now.
/// One that was erased stays erased.
fn complete(conn: &Connection, entry: &Entry) -> rusqlite::Result<bool> {
    let Some(personal) = entry.personal() else { return Ok(false) };
    let absent = rows::part(conn, entry.id())?.get(&entry.id()) == Some(&Part::Absent);
    if absent {
        rows::put_part(conn, entry.id(), &Part::Kept(personal.clone()))?;
    }
    Ok(absent)
}

/// Looks where filled numbers leave the stream: each must follow the one
/// before it and be followed by the one after it, where those are there.
fn close_gaps(
    conn: &Connection,
    stream: StreamId,
    filled: &[u64],
    gaps: &[Missing],
) -> rusqlite::Result<Result<(), StoreError>> {
    for gap in gaps.iter().filter(|gap| gap.stream == stream) {
        let inside: Vec<u64> =
            filled.iter().copied().filter(|number| (gap.first..=gap.last).contains(number)).collect();
        if inside.is_empty() {
            continue;
        }
        rows::drop_gap(conn, gap)?;
        let mut first = gap.first;
        for number in &inside {
            if *number > first {
                rows::put_gap(conn, &Missing { stream, first, last: number - 1 })?;
            }
            first = number + 1;
        }
        if first <= gap.last {
            rows::put_gap(conn, &Missing { stream, first, last: gap.last })?;
        }
    }
    for number in filled.iter().flat_map(|number| [*number, number + 1]) {
        let (Some(before), Some(at)) = (number.checked_sub(1), rows::previous_at(conn, stream, number)?) else {
            continue;
        };
        let before = rows::digest_at(conn, stream, before)?;
        if number == 1 && at.is_some() || before.is_some() && before != at {
            return Ok(Err(StoreError::mend(Mend::Unchained { stream, number })));
        }
    }
    Ok(Ok(()))
}
