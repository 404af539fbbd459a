//! Seals in the tables: what a device signed of its stream, held against the entries it signed.

use std::collections::BTreeMap;

use rusqlite::{Connection, OptionalExtension, Row, params};

use super::error::{Mend, StoreError};
use super::folder::Folder;
use super::problem::{Problem, ProblemKind, Spot};
use super::rows::{self, count, kept};
use crate::entry::Entry;
use crate::ident::{Digest, StreamId};
use crate::logbook::Span;
use crate::proof::{Device, Seal, Signature};

/// One row as the database gives it.
struct Raw {
    stream: [u8; 16],
    number: i64,
    bytes: Vec<u8>,
    signature: [u8; 64],
}

const COLUMNS: &str = "stream, number, bytes, signature";

impl Raw {
    fn of(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self { stream: row.get(0)?, number: row.get(1)?, bytes: row.get(2)?, signature: row.get(3)? })
    }

    /// The seal, when its signature holds and it stands where it says.
    fn open(self) -> Result<Seal, Problem> {
        let at = match StreamId::from_bytes(&self.stream) {
            Ok(stream) => Spot::Entry { stream, number: count(self.number) },
            Err(_) => Spot::Book,
        };
        let problem = Problem { kind: ProblemKind::Seal, at };
        let signature = Signature::from_bytes(&self.signature).map_err(|_| problem.clone())?;
        let seal = Seal::open(self.bytes, signature).map_err(|_| problem.clone())?;
        let said = seal.said();
        let here = said.stream.as_bytes() == &self.stream && i64::try_from(said.number) == Ok(self.number);
        if here { Ok(seal) } else { Err(problem) }
    }
}

/// Every seal that can be read, in the order of stream and number, and what does not hold.
pub(super) fn all(conn: &Connection) -> rusqlite::Result<Vec<Result<Seal, Problem>>> {
    let mut stmt = conn.prepare_cached(&format!("SELECT {COLUMNS} FROM seal ORDER BY stream, number"))?;
    let rows = stmt.query_map([], |row| Ok(Raw::of(row)))?;
    let unread = |_| Problem { kind: ProblemKind::Seal, at: Spot::Book };
    rows.map(|row| Ok(row?.map_err(unread).and_then(Raw::open))).collect()
}

/// The seal over the entry at this place of a stream.
pub(super) fn at(conn: &Connection, stream: StreamId, number: u64) -> rusqlite::Result<Option<Result<Seal, Problem>>> {
    let mut stmt = conn.prepare_cached(&format!("SELECT {COLUMNS} FROM seal WHERE stream = ?1 AND number = ?2"))?;
    let raw = stmt.query_row(params![stream.as_bytes(), kept(number)], Raw::of).optional()?;
    Ok(raw.map(Raw::open))
}

/// The first seal of a stream over the entry at this place or a later one.
pub(super) fn from(
    conn: &Connection,
    stream: StreamId,
    number: u64,
) -> rusqlite::Result<Option<Result<Seal, Problem>>> {
    let mut stmt = conn.prepare_cached(&format!(
        "SELECT {COLUMNS} FROM seal WHERE stream = ?1 AND number >= ?2 ORDER BY number LIMIT 1"
    ))?;
    let raw = stmt.query_row(params![stream.as_bytes(), kept(number)], Raw::of).optional()?;
    Ok(raw.map(Raw::open))
}

/// How far a stream is sealed; 0 when it is not.
pub(super) fn end(conn: &Connection, stream: StreamId) -> rusqlite::Result<u64> {
    let mut stmt = conn.prepare_cached("SELECT coalesce(max(number), 0) FROM seal WHERE stream = ?1")?;
    stmt.query_row([stream.as_bytes()], |row| row.get(0)).map(count)
}

/// The device whose seals a stream has: that of its first.
pub(super) fn device(conn: &Connection, stream: StreamId) -> rusqlite::Result<Option<Device>> {
    let mut stmt =
        conn.prepare_cached(&format!("SELECT {COLUMNS} FROM seal WHERE stream = ?1 ORDER BY number LIMIT 1"))?;
    let raw = stmt.query_row([stream.as_bytes()], Raw::of).optional()?;
    Ok(raw.and_then(|raw| raw.open().ok()).map(|seal| seal.said().device))
}

/// Keeps a seal. Its entry must be there, and no other seal over it.
pub(super) fn put(conn: &Connection, seal: &Seal) -> rusqlite::Result<()> {
    let mut stmt =
        conn.prepare_cached("INSERT INTO seal (stream, number, bytes, signature) VALUES (?1, ?2, ?3, ?4)")?;
    let said = seal.said();
    stmt.execute(params![
        said.stream.as_bytes(),
        kept(said.number),
        seal.bytes(),
        seal.signature().as_bytes().as_slice()
    ])?;
    Ok(())
}

/// Takes in seals of other devices, after their entries. Each must be over an entry
/// of the book, by the device that sealed its stream before.
pub(super) fn take_in(conn: &Connection, folder: &Folder, seals: &[Seal]) -> Result<(), StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let mut sorted: Vec<&Seal> = seals.iter().collect();
    sorted.sort_by_key(|seal| (seal.said().stream, seal.said().number));
    for seal in sorted {
        let said = seal.said();
        let (stream, number) = (said.stream, said.number);
        if let Some(there) = at(conn, stream, number).map_err(fault)? {
            if there.as_ref() == Ok(seal) {
                continue;
            }
            return Err(StoreError::mend(Mend::Resealed { stream, number }));
        }
        if rows::digest_at(conn, stream, number).map_err(fault)? != Some(said.head)
            || !job_fits(conn, seal).map_err(fault)?
        {
            return Err(StoreError::mend(Mend::SealUnfit { stream, number }));
        }
        let known = match rows::own_device(conn, stream).map_err(fault)? {
            Some(device) => Some(device),
            None => device(conn, stream).map_err(fault)?,
        };
        if known.is_some_and(|known| known != said.device) {
            return Err(StoreError::mend(Mend::Resealed { stream, number }));
        }
        put(conn, seal).map_err(fault)?;
    }
    Ok(())
}

/// Whether the entries of the job under a seal are those of the book; where one is
/// known to be missing, nobody can tell.
fn job_fits(conn: &Connection, seal: &Seal) -> rusqlite::Result<bool> {
    let Some(job) = &seal.said().job else { return Ok(true) };
    let mut digests = Vec::new();
    for span in &job.spans {
        let there = rows::digests(conn, span)?;
        if u64::try_from(there.len()) != Ok(span.count()) {
            return Ok(true);
        }
        there.iter().for_each(|digest| digests.extend_from_slice(digest.as_bytes()));
    }
    Ok(Digest::of(&digests) == job.digest)
}

/// What does not hold between seals and the entries of a whole book.
pub(super) fn problems(seals: &[Result<Seal, Problem>], entries: &[Entry]) -> Vec<Problem> {
    let mut found = Vec::new();
    if seals.is_empty() {
        return found;
    }
    let place = |entry: &Entry| (entry.envelope().stream, entry.envelope().number);
    let digests: BTreeMap<(StreamId, u64), Digest> =
        entries.iter().map(|entry| (place(entry), entry.digest())).collect();
    let mut devices = BTreeMap::<StreamId, Device>::new();
    for seal in seals {
        let seal = match seal {
            Ok(seal) => seal,
            Err(problem) => {
                found.push(problem.clone());
                continue;
            }
        };
        let said = seal.said();
        let at = Spot::Entry { stream: said.stream, number: said.number };
        let under = |span: &Span| -> Vec<Digest> {
            if span.first > span.last {
                return Vec::new();
            }
            digests.range((span.stream, span.first)..=(span.stream, span.last)).map(|(_, digest)| *digest).collect()
        };
        let fits = said.job.as_ref().is_none_or(|job| {
            let under: Vec<Vec<Digest>> = job.spans.iter().map(under).collect();
            let whole =
                job.spans.iter().zip(&under).all(|(span, there)| u64::try_from(there.len()) == Ok(span.count()));
            let bytes: Vec<u8> = under.iter().flatten().flat_map(|digest| *digest.as_bytes()).collect();
            !whole || Digest::of(&bytes) == job.digest
        });
        if digests.get(&(said.stream, said.number)) != Some(&said.head) || !fits {
            found.push(Problem { kind: ProblemKind::Seal, at });
        }
        if *devices.entry(said.stream).or_insert(said.device) != said.device {
            found.push(Problem { kind: ProblemKind::OtherDevice, at });
        }
    }
    found
}

/// Keeps what still holds of the seals of a damaged book.
pub(super) fn salvage(conn: &Connection, folder: &Folder, seals: &[Seal]) -> Result<(), StoreError> {
    for seal in seals {
        match take_in(conn, folder, std::slice::from_ref(seal)) {
            Ok(()) | Err(StoreError::MendInput { .. }) => {}
            Err(why) => return Err(why),
        }
    }
    Ok(())
}
