//! Derived state that another room keeps in the book to start faster.

use rusqlite::{Connection, OptionalExtension, params};

use super::rows::{self, count, kept};
use super::witness::Mark;
use crate::ident::Digest;

/// What another room made of the entries up to a mark, as it wrote it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Snapshot {
    /// The entries it was made of.
    pub mark: Mark,
    /// What was made of them.
    pub bytes: Vec<u8>,
}

pub(super) fn put(conn: &Connection, name: &str, version: u32, snapshot: &Snapshot) -> rusqlite::Result<bool> {
    // One of another book, or of entries that are not here, would be believed later.
    let (Some(last), arrived) = (snapshot.mark.last, snapshot.mark.arrived) else { return Ok(false) };
    if rows::digest_arrived(conn, arrived)? != Some(last) {
        return Ok(false);
    }
    let mut stmt = conn.prepare_cached(
        "INSERT INTO snapshot (name, version, arrived, head, bytes, digest) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
         ON CONFLICT (name) DO UPDATE SET version = excluded.version, arrived = excluded.arrived,
             head = excluded.head, bytes = excluded.bytes, digest = excluded.digest",
    )?;
    stmt.execute(params![
        name,
        version,
        kept(arrived),
        last.as_bytes(),
        snapshot.bytes,
        digest(version, &snapshot.mark, &snapshot.bytes).as_bytes(),
    ])?;
    Ok(true)
}

/// The snapshot, when it is of this version, whole, and of entries of this book.
pub(super) fn get(conn: &Connection, name: &str, version: u32) -> rusqlite::Result<Option<Snapshot>> {
    let mut stmt =
        conn.prepare_cached("SELECT arrived, head, bytes, digest FROM snapshot WHERE name = ?1 AND version = ?2")?;
    let found = stmt
        .query_row(params![name, version], |row| {
            Ok((
                row.get::<_, i64>(0)?,
                row.get::<_, [u8; 32]>(1)?,
                row.get::<_, Vec<u8>>(2)?,
                row.get::<_, [u8; 32]>(3)?,
            ))
        })
        .optional()?;
    let Some((arrived, head, bytes, kept)) = found else { return Ok(None) };
    let mark = Mark { arrived: count(arrived), last: Digest::from_bytes(&head).ok() };
    let whole = digest(version, &mark, &bytes).as_bytes() == &kept;
    let here = mark.last.is_some() && rows::digest_arrived(conn, mark.arrived)? == mark.last;
    Ok((whole && here).then_some(Snapshot { mark, bytes }))
}

/// Throws every snapshot away.
pub(super) fn forget(conn: &Connection) -> rusqlite::Result<()> {
    conn.execute("DELETE FROM snapshot", []).map(|_| ())
}

fn digest(version: u32, mark: &Mark, bytes: &[u8]) -> Digest {
    let mut all = version.to_be_bytes().to_vec();
    all.extend_from_slice(&mark.arrived.to_be_bytes());
    all.extend(mark.last.iter().flat_map(|digest| *digest.as_bytes()));
    all.extend_from_slice(bytes);
    Digest::of(&all)
}
