//! Reading a book, whole or in part, with every digest verified.

use std::collections::BTreeMap;
use std::mem;
use std::sync::mpsc::{Receiver, TrySendError, sync_channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;

use rusqlite::Connection;

use super::backup::Content;
use super::chain;
use super::problem::{Check, Problem, ProblemKind, Spot};
use super::rows::{self, Part, Parts, Raw};
use super::schema;
use super::seals;
use super::witness::Mark;
use crate::entry::{Entry, Head};
use crate::ident::StreamId;
use crate::logbook::Span;
use crate::proof::Seal;

/// Rows that were read: the entries that hold, and what does not.
#[derive(Default)]
pub(super) struct Read {
    pub(super) entries: Vec<Entry>,
    pub(super) problems: Vec<Problem>,
}

/// How many rows are opened at a time. A book with fewer is opened on one core.
const SHARE: usize = 1_000;

/// Opens rows, keeping their order.
pub(super) fn open(raw: Vec<Result<Raw, Problem>>, parts: &Parts) -> Read {
    let mut read = Read { entries: Vec::with_capacity(raw.len()), problems: Vec::new() };
    for row in raw {
        match row.and_then(|row| row.open(parts)) {
            Ok(entry) => read.entries.push(entry),
            Err(problem) => read.problems.push(problem),
        }
    }
    read
}

/// Reads every row and opens it, in the order they came in. While this thread
/// takes rows out of the database the other cores open them; when they have
/// enough to do, it opens some itself.
fn open_all(conn: &Connection, parts: &Parts) -> rusqlite::Result<Read> {
    let others = thread::available_parallelism().map_or(0, |cores| cores.get().saturating_sub(1));
    let done = Mutex::new(Vec::new());
    let finish = |at: usize, share: Vec<_>| {
        let read = open(share, parts);
        done.lock().unwrap_or_else(PoisonError::into_inner).push((at, read));
    };
    let work = |queue: Arc<Mutex<Receiver<(usize, Vec<_>)>>>| {
        loop {
            // The guard is let go before the share is opened.
            let next = queue.lock().unwrap_or_else(PoisonError::into_inner).recv();
            let Ok((at, share)) = next else { return };
            finish(at, share);
        }
    };
    let work = &work;
    thread::scope(|scope| -> rusqlite::Result<()> {
        let (give, queue) = sync_channel(others.saturating_mul(2));
        let queue = Arc::new(Mutex::new(queue));
        let (mut share, mut at) = (Vec::new(), 0_usize);
        rows::each_after(conn, 0, |row| {
            share.push(row);
            if share.len() < SHARE {
                return;
            }
            if at == 0 {
                for _ in 0..others {
                    let queue = Arc::clone(&queue);
                    scope.spawn(move || work(queue));
                }
            }
            let full = (at, mem::take(&mut share));
            at = at.saturating_add(1);
            if let Err(TrySendError::Full((at, share)) | TrySendError::Disconnected((at, share))) = give.try_send(full)
            {
                finish(at, share);
            }
        })?;
        finish(at, share);
        drop(give);
        work(queue);
        Ok(())
    })?;
    let mut shares = done.into_inner().unwrap_or_else(PoisonError::into_inner);
    shares.sort_by_key(|(at, _)| *at);
    let mut all = Read { entries: Vec::with_capacity(shares.len().saturating_mul(SHARE)), problems: Vec::new() };
    for (_, mut read) in shares {
        all.entries.append(&mut read.entries);
        all.problems.append(&mut read.problems);
    }
    Ok(all)
}

/// All entries in the order they came in, with the chains of all streams verified.
pub(super) fn whole(conn: &Connection) -> rusqlite::Result<Read> {
    // One transaction, so that heads and entries are of the same moment.
    let transaction = conn.unchecked_transaction()?;
    whole_in(&transaction)
}

fn whole_in(transaction: &Connection) -> rusqlite::Result<Read> {
    let mut read = open_all(transaction, &rows::parts(transaction)?)?;
    let count = read.entries.len().saturating_add(read.problems.len());
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

/// The entries that came in after the first `arrived`. They must follow `heads`,
/// the ends that the streams had then, up to the ends they have now.
pub(super) fn tail(conn: &Connection, arrived: u64, heads: &[Head]) -> rusqlite::Result<Read> {
    let transaction = conn.unchecked_transaction()?;
    let raw = rows::after(&transaction, arrived)?;
    let parts = rows::parts_of(&transaction, &raw)?;
    let mut read = open(raw, &parts);
    let mut ends: BTreeMap<StreamId, Head> = heads.iter().map(|head| (head.stream, *head)).collect();
    for entry in &read.entries {
        let stream = entry.envelope().stream;
        let end = ends.entry(stream).or_insert_with(|| Head::empty(stream));
        match end.then(entry) {
            Ok(next) => *end = next,
            Err(_) => {
                let number = entry.envelope().number;
                read.problems.push(Problem { kind: ProblemKind::Chain, at: Spot::Entry { stream, number } });
            }
        }
    }
    for (stream, head) in rows::heads(&transaction)? {
        if ends.get(&stream).copied().unwrap_or_else(|| Head::empty(stream)) != head {
            read.problems.push(Problem { kind: ProblemKind::Head, at: Spot::Stream { stream } });
        }
    }
    Ok(read)
}

/// The entries of some stretches, each of which must be there.
pub(super) fn stretches(conn: &Connection, spans: &[Span]) -> rusqlite::Result<Read> {
    let mut all = Read::default();
    for span in spans {
        let raw = rows::stretch(conn, span)?;
        let parts = rows::parts_of(conn, &raw)?;
        let mut read = open(raw, &parts);
        all.problems.append(&mut read.problems);
        if u64::try_from(read.entries.len()) != Ok(span.last.saturating_sub(span.first).saturating_add(1)) {
            let kind = ProblemKind::Gap { first: span.first, last: span.last };
            all.problems.push(Problem { kind, at: Spot::Stream { stream: span.stream } });
        }
        all.entries.append(&mut read.entries);
    }
    Ok(all)
}

/// The whole book and its seals, of one moment.
pub(super) fn with_seals(conn: &Connection) -> rusqlite::Result<(Read, Vec<Result<Seal, Problem>>)> {
    let transaction = conn.unchecked_transaction()?;
    Ok((whole_in(&transaction)?, seals::all(&transaction)?))
}

/// Everything that goes into a backup, of one moment, or the first damage.
pub(super) fn content(conn: &Connection) -> rusqlite::Result<Result<Content, Problem>> {
    let transaction = conn.unchecked_transaction()?;
    let read = whole_in(&transaction)?;
    let seals = seals::all(&transaction)?;
    let unfit = seals::problems(&seals, &read.entries);
    if let Some(problem) = read.problems.into_iter().chain(unfit).next() {
        return Ok(Err(problem));
    }
    let erased = rows::parts(&transaction)?.into_iter().filter(|(_, part)| *part == Part::Erased).map(|(id, _)| id);
    Ok(Ok(Content {
        entries: read.entries,
        seals: seals.into_iter().flatten().collect(),
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
    let (mut read, seals) = with_seals(conn)?;
    check.problems.append(&mut read.problems);
    check.problems.extend(seals::problems(&seals, &read.entries));
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
