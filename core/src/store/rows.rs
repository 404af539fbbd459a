//! Entries as rows, and back.

use std::collections::{BTreeMap, HashMap};

use rusqlite::{CachedStatement, Connection, OptionalExtension, Row, params};

use super::problem::{Missing, Problem, ProblemKind, Spot};
use super::witness::Mark;
use crate::calendar::Moment;
use crate::entry::{Entry, Head, HybridTime, Personal};
use crate::ident::{Digest, EntryId, StreamId};
use crate::logbook::Span;
use crate::proof::Device;

/// One row as the database gives it.
pub(super) struct Raw {
    arrived: i64,
    id: [u8; 16],
    stream: [u8; 16],
    number: i64,
    ms: i64,
    n: i64,
    bytes: Vec<u8>,
    digest: [u8; 32],
}

/// What stands beside an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Part {
    /// The personal part.
    Kept(Personal),
    /// It was erased on purpose, and never comes back.
    Erased,
    /// The entry came without it.
    Absent,
}

pub(super) type Parts = HashMap<EntryId, Part>;

const COLUMNS: &str = "arrived, id, stream, number, ms, n, bytes, digest";

impl Raw {
    fn of(row: &Row<'_>) -> rusqlite::Result<Self> {
        Ok(Self {
            arrived: row.get(0)?,
            id: row.get(1)?,
            stream: row.get(2)?,
            number: row.get(3)?,
            ms: row.get(4)?,
            n: row.get(5)?,
            bytes: row.get(6)?,
            digest: row.get(7)?,
        })
    }

    fn spot(&self) -> Spot {
        Spot::Row { arrived: count(self.arrived) }
    }

    /// The entry, when bytes, digest, personal part and columns agree.
    pub(super) fn open(self, parts: &Parts) -> Result<Entry, Problem> {
        let spot = self.spot();
        let problem = |kind| Problem { kind, at: spot };
        let digest = Digest::from_bytes(&self.digest).map_err(|_| problem(ProblemKind::Digest))?;
        let id = EntryId::from_bytes(&self.id).map_err(|_| problem(ProblemKind::Row))?;
        let part = parts.get(&id);
        let personal = if let Some(Part::Kept(personal)) = part { Some(personal.clone()) } else { None };
        let entry = Entry::open(self.bytes, digest, personal).map_err(|why| problem(ProblemKind::from(&why)))?;
        let said = entry.envelope();
        let same = said.id == id
            && said.stream.as_bytes() == &self.stream
            && i64::try_from(said.number) == Ok(self.number)
            && said.time.wall.unix_ms() == self.ms
            && i64::from(said.time.count) == self.n;
        if !same {
            return Err(problem(ProblemKind::Row));
        }
        if said.personal.is_some() && part.is_none() {
            return Err(problem(ProblemKind::PersonalGone));
        }
        if said.personal.is_none() && part.is_some() {
            return Err(problem(ProblemKind::Personal));
        }
        Ok(entry)
    }
}

/// A count that the database keeps; never negative in a sound book.
pub(super) fn count(number: i64) -> u64 {
    u64::try_from(number).unwrap_or_default()
}

/// A number as the database keeps it.
pub(super) fn kept(number: u64) -> i64 {
    i64::try_from(number).unwrap_or(i64::MAX)
}

/// Gives each row that came in after the first `after` to `take`, in the order
/// they came in. A row that can't even be read is a problem in its place.
pub(super) fn each_after(
    conn: &Connection,
    after: u64,
    mut take: impl FnMut(Result<Raw, Problem>),
) -> rusqlite::Result<()> {
    let mut stmt = conn.prepare_cached(&format!("SELECT {COLUMNS} FROM entry WHERE arrived > ?1 ORDER BY arrived"))?;
    let mut rows = stmt.query([kept(after)])?;
    while let Some(row) = rows.next()? {
        take(Raw::of(row).map_err(|_| Problem {
            kind: ProblemKind::Row,
            at: Spot::Row { arrived: row.get(0).map(count).unwrap_or_default() },
        }));
    }
    Ok(())
}

/// The rows that came in after the first `after`.
pub(super) fn after(conn: &Connection, after: u64) -> rusqlite::Result<Vec<Result<Raw, Problem>>> {
    let mut out = Vec::new();
    each_after(conn, after, |row| out.push(row))?;
    Ok(out)
}

/// The rows whose place in the book's order is after this one.
pub(super) fn later(conn: &Connection, time: HybridTime, stream: StreamId, number: u64) -> rusqlite::Result<Vec<Raw>> {
    let mut stmt = conn.prepare_cached(&format!(
        "SELECT {COLUMNS} FROM entry WHERE (ms, n, stream, number) > (?1, ?2, ?3, ?4) ORDER BY arrived"
    ))?;
    let rows = stmt.query_map(params![time.wall.unix_ms(), time.count, stream.as_bytes(), kept(number)], Raw::of)?;
    rows.collect()
}

/// The rows of a stretch of a stream, by number.
pub(super) fn stretch(conn: &Connection, span: &Span) -> rusqlite::Result<Vec<Result<Raw, Problem>>> {
    let mut stmt = conn.prepare_cached(&format!(
        "SELECT {COLUMNS} FROM entry WHERE stream = ?1 AND number BETWEEN ?2 AND ?3 ORDER BY number"
    ))?;
    let rows = stmt.query_map(params![span.stream.as_bytes(), kept(span.first), kept(span.last)], Raw::of)?;
    rows.map(|row| row.map(Ok)).collect()
}

/// The personal parts of some rows.
pub(super) fn parts_of(conn: &Connection, rows: &[Result<Raw, Problem>]) -> rusqlite::Result<Parts> {
    let mut parts = Parts::new();
    for row in rows.iter().flatten() {
        if let Ok(id) = EntryId::from_bytes(&row.id) {
            parts.extend(part(conn, id)?);
        }
    }
    Ok(parts)
}

/// The row with this id.
pub(super) fn by_id(conn: &Connection, id: EntryId) -> rusqlite::Result<Option<Raw>> {
    let mut stmt = conn.prepare_cached(&format!("SELECT {COLUMNS} FROM entry WHERE id = ?1"))?;
    stmt.query_row([id.as_bytes()], Raw::of).optional()
}

/// The digest of the entry at this place of a stream.
pub(super) fn digest_at(conn: &Connection, stream: StreamId, number: u64) -> rusqlite::Result<Option<Digest>> {
    let mut stmt = conn.prepare_cached("SELECT digest FROM entry WHERE stream = ?1 AND number = ?2")?;
    let found = stmt.query_row(params![stream.as_bytes(), kept(number)], |row| row.get::<_, [u8; 32]>(0)).optional()?;
    Ok(found.and_then(|bytes| Digest::from_bytes(&bytes).ok()))
}

/// The digest of the entry that came in at this count.
pub(super) fn digest_arrived(conn: &Connection, arrived: u64) -> rusqlite::Result<Option<Digest>> {
    let mut stmt = conn.prepare_cached("SELECT digest FROM entry WHERE arrived = ?1")?;
    let found = stmt.query_row([kept(arrived)], |row| row.get::<_, [u8; 32]>(0)).optional()?;
    Ok(found.and_then(|bytes| Digest::from_bytes(&bytes).ok()))
}

/// The bytes and the digest of the entry that came in at this count.
pub(super) fn bytes_arrived(conn: &Connection, arrived: u64) -> rusqlite::Result<Option<(Vec<u8>, Digest)>> {
    let mut stmt = conn.prepare_cached("SELECT bytes, digest FROM entry WHERE arrived = ?1")?;
    let found = stmt
        .query_row([kept(arrived)], |row| Ok((row.get::<_, Vec<u8>>(0)?, row.get::<_, [u8; 32]>(1)?)))
        .optional()?;
    Ok(found.and_then(|(bytes, digest)| Some((bytes, Digest::from_bytes(&digest).ok()?))))
}

/// How far the book has come.
pub(super) fn mark(conn: &Connection) -> rusqlite::Result<Mark> {
    let mut stmt = conn.prepare_cached("SELECT arrived, digest FROM entry ORDER BY arrived DESC LIMIT 1")?;
    let found = stmt.query_row([], |row| Ok((row.get::<_, i64>(0)?, row.get::<_, [u8; 32]>(1)?))).optional()?;
    Ok(found.map_or(Mark::EMPTY, |(arrived, digest)| Mark {
        arrived: count(arrived),
        last: Digest::from_bytes(&digest).ok(),
    }))
}

/// Writes entries into the table; made once for many rows.
pub(super) struct Writing<'c> {
    entry: CachedStatement<'c>,
    conn: &'c Connection,
}

impl<'c> Writing<'c> {
    pub(super) fn new(conn: &'c Connection) -> rusqlite::Result<Self> {
        let entry = conn.prepare_cached(
            "INSERT INTO entry (id, stream, number, ms, n, bytes, digest) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        )?;
        Ok(Self { entry, conn })
    }

    /// Adds an entry, with its personal part as it stands.
    pub(super) fn add(&mut self, entry: &Entry) -> rusqlite::Result<()> {
        let said = entry.envelope();
        self.entry.execute(params![
            said.id.as_bytes(),
            said.stream.as_bytes(),
            kept(said.number),
            said.time.wall.unix_ms(),
            said.time.count,
            entry.bytes(),
            entry.digest().as_bytes(),
        ])?;
        if said.personal.is_some() {
            let part = match entry.personal() {
                Some(personal) => Part::Kept(personal.clone()),
                None => Part::Absent,
            };
            put_part(self.conn, said.id, &part)?;
        }
        Ok(())
    }
}

/// Every personal part.
pub(super) fn parts(conn: &Connection) -> rusqlite::Result<Parts> {
    let mut stmt = conn.prepare_cached("SELECT id, state, salt, name, phone, plate, drawn FROM personal")?;
    let rows = stmt.query_map([], read_part)?;
    rows.collect()
}

/// The personal part of one entry.
pub(super) fn part(conn: &Connection, id: EntryId) -> rusqlite::Result<Parts> {
    let mut stmt =
        conn.prepare_cached("SELECT id, state, salt, name, phone, plate, drawn FROM personal WHERE id = ?1")?;
    let rows = stmt.query_map([id.as_bytes()], read_part)?;
    rows.collect()
}

fn read_part(row: &Row<'_>) -> rusqlite::Result<(EntryId, Part)> {
    let id = EntryId::from_bytes(&row.get::<_, [u8; 16]>(0)?).map_err(|_| rusqlite::Error::QueryReturnedNoRows)?;
    let part = match row.get_ref(1)?.as_str()? {
        "kept" => Part::Kept(Personal {
            salt: row.get(2)?,
            name: row.get(3)?,
            phone: row.get(4)?,
            plate: row.get(5)?,
            drawn: row.get(6)?,
        }),
        "erased" => Part::Erased,
        _ => Part::Absent,
    };
    Ok((id, part))
}

/// Writes what stands beside an entry.
pub(super) fn put_part(conn: &Connection, id: EntryId, part: &Part) -> rusqlite::Result<()> {
    let (state, kept) = match part {
        Part::Kept(personal) => ("kept", Some(personal)),
        Part::Erased => ("erased", None),
        Part::Absent => ("absent", None),
    };
    let mut stmt = conn.prepare_cached(
        "INSERT INTO personal (id, state, salt, name, phone, plate, drawn) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
         ON CONFLICT (id) DO UPDATE SET state = excluded.state, salt = excluded.salt, name = excluded.name,
             phone = excluded.phone, plate = excluded.plate, drawn = excluded.drawn",
    )?;
    stmt.execute(params![
        id.as_bytes(),
        state,
        kept.map(|personal| personal.salt),
        kept.and_then(|personal| personal.name.as_deref()),
        kept.and_then(|personal| personal.phone.as_deref()),
        kept.and_then(|personal| personal.plate.as_deref()),
        kept.and_then(|personal| personal.drawn.as_deref()),
    ])?;
    Ok(())
}

/// The kept end of every stream.
pub(super) fn heads(conn: &Connection) -> rusqlite::Result<BTreeMap<StreamId, Head>> {
    let mut stmt = conn.prepare_cached("SELECT stream, number, ms, n, digest FROM head")?;
    let rows = stmt.query_map([], |row| {
        let stream = stream(row, 0)?;
        let digest = row.get::<_, Option<[u8; 32]>>(4)?.and_then(|bytes| Digest::from_bytes(&bytes).ok());
        let time = HybridTime { wall: Moment::from_unix_ms(row.get(2)?), count: row.get(3)? };
        Ok((stream, Head { stream, number: count(row.get(1)?), time, digest }))
    })?;
    rows.collect()
}

/// Writes the end of a stream.
pub(super) fn put_head(conn: &Connection, head: &Head) -> rusqlite::Result<()> {
    let mut stmt = conn.prepare_cached(
        "INSERT INTO head (stream, number, ms, n, digest) VALUES (?1, ?2, ?3, ?4, ?5)
         ON CONFLICT (stream) DO UPDATE SET number = excluded.number, ms = excluded.ms, n = excluded.n,
             digest = excluded.digest",
    )?;
    stmt.execute(params![
        head.stream.as_bytes(),
        kept(head.number),
        head.time.wall.unix_ms(),
        head.time.count,
        head.digest.map(|digest| *digest.as_bytes()),
    ])?;
    Ok(())
}

/// The numbers that are known to be missing.
pub(super) fn gaps(conn: &Connection) -> rusqlite::Result<Vec<Missing>> {
    let mut stmt = conn.prepare_cached("SELECT stream, first, last FROM gap ORDER BY stream, first")?;
    let rows = stmt.query_map([], |row| {
        Ok(Missing { stream: stream(row, 0)?, first: count(row.get(1)?), last: count(row.get(2)?) })
    })?;
    rows.collect()
}

/// Notes numbers as missing.
pub(super) fn put_gap(conn: &Connection, gap: &Missing) -> rusqlite::Result<()> {
    let mut stmt = conn.prepare_cached("INSERT INTO gap (stream, first, last) VALUES (?1, ?2, ?3)")?;
    stmt.execute(params![gap.stream.as_bytes(), kept(gap.first), kept(gap.last)])?;
    Ok(())
}

/// Forgets a gap that was filled.
pub(super) fn drop_gap(conn: &Connection, gap: &Missing) -> rusqlite::Result<()> {
    let mut stmt = conn.prepare_cached("DELETE FROM gap WHERE stream = ?1 AND first = ?2")?;
    stmt.execute(params![gap.stream.as_bytes(), kept(gap.first)])?;
    Ok(())
}

/// The stream that this device writes.
pub(super) fn own_stream(conn: &Connection) -> rusqlite::Result<Option<StreamId>> {
    let mut stmt = conn.prepare_cached("SELECT value FROM meta WHERE name = 'stream'")?;
    stmt.query_row([], |row| stream(row, 0)).optional()
}

/// Sets the stream that this device writes.
pub(super) fn put_own_stream(conn: &Connection, stream: StreamId) -> rusqlite::Result<()> {
    put_meta(conn, "stream", stream.as_bytes())
}

/// The device that writes a stream, when that is this device's own and is known.
pub(super) fn own_device(conn: &Connection, stream: StreamId) -> rusqlite::Result<Option<Device>> {
    if own_stream(conn)? != Some(stream) {
        return Ok(None);
    }
    Ok(meta(conn, "device")?.and_then(|bytes| Device::from_bytes(&bytes).ok()))
}

/// What is kept under a name.
pub(super) fn meta(conn: &Connection, name: &str) -> rusqlite::Result<Option<Vec<u8>>> {
    let mut stmt = conn.prepare_cached("SELECT value FROM meta WHERE name = ?1")?;
    stmt.query_row([name], |row| row.get(0)).optional()
}

/// Keeps something under a name.
pub(super) fn put_meta(conn: &Connection, name: &str, value: &[u8]) -> rusqlite::Result<()> {
    conn.execute(
        "INSERT INTO meta (name, value) VALUES (?1, ?2)
         ON CONFLICT (name) DO UPDATE SET value = excluded.value",
        params![name, value],
    )?;
    Ok(())
}

/// The digests of a stretch of a stream, by number.
pub(super) fn digests(conn: &Connection, span: &Span) -> rusqlite::Result<Vec<Digest>> {
    let mut stmt =
        conn.prepare_cached("SELECT digest FROM entry WHERE stream = ?1 AND number BETWEEN ?2 AND ?3 ORDER BY number")?;
    let rows = stmt.query_map(params![span.stream.as_bytes(), kept(span.first), kept(span.last)], |row| {
        Digest::from_bytes(&row.get::<_, [u8; 32]>(0)?).map_err(|_| rusqlite::Error::QueryReturnedNoRows)
    })?;
    rows.collect()
}

fn stream(row: &Row<'_>, column: usize) -> rusqlite::Result<StreamId> {
    StreamId::from_bytes(&row.get::<_, [u8; 16]>(column)?).map_err(|_| rusqlite::Error::QueryReturnedNoRows)
}

/// What the entry at this place of a stream says of the one before it; the
/// outer `None` when there is no such entry.
pub(super) fn previous_at(
    conn: &Connection,
    stream: StreamId,
    number: u64,
) -> rusqlite::Result<Option<Option<Digest>>> {
    let mut stmt = conn.prepare_cached(&format!("SELECT {COLUMNS} FROM entry WHERE stream = ?1 AND number = ?2"))?;
    let raw = stmt.query_row(params![stream.as_bytes(), kept(number)], Raw::of).optional()?;
    Ok(raw.and_then(|raw| {
        let digest = Digest::from_bytes(&raw.digest).ok()?;
        Entry::open(raw.bytes, digest, None).ok().map(|entry| entry.envelope().previous)
    }))
}
