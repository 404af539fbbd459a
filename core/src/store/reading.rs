//! Reading a book, whole or in part, with every digest verified.

use std::mem;
use std::num::NonZero;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Mutex, PoisonError};
use std::thread;

use rusqlite::Connection;

use super::backup::Content;
use super::chain;
use super::problem::{Check, Problem, ProblemKind, Spot};
use super::rows::{self, Part, Parts, Raw};
use super::schema;
use super::witness::Mark;
use crate::entry::Entry;

/// Rows that were read: the entries that hold, and what does not.
#[derive(Default)]
pub(super) struct Read {
    pub(super) entries: Vec<Entry>,
    pub(super) problems: Vec<Problem>,
}

/// From how many rows on they are opened on all cores.
const MANY: usize = 2_000;

/// Opens rows, keeping their order.
pub(super) fn open(raw: Vec<Result<Raw, Problem>>, parts: &Parts) -> Read {
    let cores = thread::available_parallelism().map_or(1, NonZero::get);
    if raw.len() < MANY || cores == 1 {
        return open_here(raw, parts);
    }
    // A few more shares than cores, so that a busy core does not hold up the others.
    let share = raw.len().div_ceil(cores.saturating_mul(4));
    let mut shares = Vec::new();
    let mut rows = raw.into_iter();
    loop {
        let share: Vec<_> = rows.by_ref().take(share).collect();
        if share.is_empty() {
            break;
        }
        shares.push(Mutex::new((share, Read::default())));
    }
    let next = AtomicUsize::new(0);
    thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                while let Some(share) = shares.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let mut share = share.lock().unwrap_or_else(PoisonError::into_inner);
                    share.1 = open_here(mem::take(&mut share.0), parts);
                }
            });
        }
    });
    let mut all = Read::default();
    for share in shares {
        let (_, mut read) = share.into_inner().unwrap_or_else(PoisonError::into_inner);
        all.entries.append(&mut read.entries);
        all.problems.append(&mut read.problems);
    }
    all
}

fn open_here(raw: Vec<Result<Raw, Problem>>, parts: &Parts) -> Read {
    let mut read = Read { entries: Vec::with_capacity(raw.len()), problems: Vec::new() };
    for row in raw {
        match row.and_then(|row| row.open(parts)) {
            Ok(entry) => read.entries.push(entry),
            Err(problem) => read.problems.push(problem),
        }
    }
    read
}

/// All entries in the order they came in, with the chains of all streams verified.
pub(super) fn whole(conn: &Connection) -> rusqlite::Result<Read> {
    // One transaction, so that heads and entries are of the same moment.
    let transaction = conn.unchecked_transaction()?;
    whole_in(&transaction)
}

fn whole_in(transaction: &Connection) -> rusqlite::Result<Read> {
    let raw = rows::after(transaction, 0)?;
    let count = raw.len();
    let mut read = open(raw, &rows::parts(transaction)?);
    let mark = rows::mark(transaction)?;
    if usize::try_from(mark.arrived) != Ok(count) {
        let has = u64::try_from(count).unwrap_or(u64::MAX);
        let kind = ProblemKind::Forgotten { had: mark.arrived, has };
        read.problems.push(Problem { kind, at: Spot::Book });
    }
    if read.problems.is_empty() {
        let (heads, gaps) = (rows::heads(transaction)?, rows::gaps(transaction)?);
        read.problems = chain::problems(&read.entries, &heads, &gaps);
        if !rows::own_stream(transaction)?.is_some_and(|own| heads.contains_key(&own)) {
            read.problems.push(Problem { kind: ProblemKind::Tables, at: Spot::Book });
        }
    }
    Ok(read)
}

/// Everything that goes into a backup, of one moment, or the first damage.
pub(super) fn content(conn: &Connection) -> rusqlite::Result<Result<Content, Problem>> {
    let transaction = conn.unchecked_transaction()?;
    let read = whole_in(&transaction)?;
    if let Some(problem) = read.problems.into_iter().next() {
        return Ok(Err(problem));
    }
    let erased = rows::parts(&transaction)?.into_iter().filter(|(_, part)| *part == Part::Erased).map(|(id, _)| id);
    Ok(Ok(Content {
        entries: read.entries,
        erased: erased.collect(),
        heads: rows::heads(&transaction)?.into_values().collect(),
        missing: rows::gaps(&transaction)?,
    }))
}

/// Puts entries into the book's order: time, then stream, then number.
pub(super) fn in_order(mut entries: Vec<Entry>) -> Vec<Entry> {
    entries.sort_by_key(Entry::order);
    entries
}

/// Looks through the whole book.
pub(super) fn check(conn: &Connection, witness: Option<Mark>) -> rusqlite::Result<Check> {
    let mut check = Check::default();
    if !schema::tables_hold(conn, schema::STEPS)? {
        check.problems.push(Problem { kind: ProblemKind::Tables, at: Spot::Book });
    }
    let mut stmt = conn.prepare("PRAGMA integrity_check(20)")?;
    let said = stmt.query_map([], |row| row.get::<_, String>(0))?.collect::<rusqlite::Result<Vec<_>>>()?;
    check.problems.extend(
        said.into_iter()
            .filter(|said| said != "ok")
            .map(|said| Problem { kind: ProblemKind::File { said }, at: Spot::Book }),
    );
    let mut stmt = conn.prepare("PRAGMA foreign_key_check")?;
    if stmt.exists([])? {
        check.problems.push(Problem { kind: ProblemKind::Personal, at: Spot::Book });
    }
    let mut read = whole(conn)?;
    check.problems.append(&mut read.problems);
    check.problems.extend(forgotten(conn, witness)?);
    check.entries = u64::try_from(read.entries.len()).unwrap_or(u64::MAX);
    check.missing = rows::gaps(conn)?;
    Ok(check)
}

/// Whether entries are gone that the witness saw acknowledged.
pub(super) fn forgotten(conn: &Connection, witness: Option<Mark>) -> rusqlite::Result<Option<Problem>> {
    let Some(seen) = witness.filter(|seen| seen.arrived > 0) else { return Ok(None) };
    if rows::digest_arrived(conn, seen.arrived)? == seen.last {
        return Ok(None);
    }
    let has = rows::mark(conn)?.arrived;
    Ok(Some(Problem { kind: ProblemKind::Forgotten { had: seen.arrived, has }, at: Spot::Book }))
}
