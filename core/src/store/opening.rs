//! Opening a book, or making one.

use std::fs::{self, File};
use std::io::Read;

use rusqlite::Connection;
use rusqlite::config::DbConfig;
use serde::Serialize;

use super::Store;
use super::error::{Mend, StoreError};
use super::folder::{Folder, Found, LOGGED, Lock};
use super::problem::{Missing, Problem, ProblemKind};
use super::reading;
use super::rescue::{self, Rescued};
use super::rows;
use super::schema;
use super::witness::Mark;
use super::writer::{Handle, Writer, of_book};
use crate::calendar::Moment;
use crate::entry::Head;
use crate::ident::StreamId;

/// What a caller gives for opening a book.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Opening {
    /// A fresh stream of this device, used when the book is new or has to be
    /// rebuilt after damage.
    pub stream: StreamId,
    /// The device's time.
    pub now: Moment,
}

/// What opening a book found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Opened {
    /// The book was made just now.
    pub created: bool,
    /// Entries can be added; false when the folder can't be written.
    pub writable: bool,
    /// The stream that this device writes.
    pub stream: StreamId,
    /// How far the book has come.
    pub mark: Mark,
    /// The version that the book had, when it was brought to today's.
    pub migrated_from: Option<u32>,
    /// What was lost to earlier damage and is known to be missing.
    pub missing: Vec<Missing>,
    /// What came back, when the book was damaged and had to be set aside just now.
    pub rescued: Option<Rescued>,
}

/// Opens the book of a folder.
pub(super) fn open(folder: Folder, opening: Opening) -> Result<(Store, Opened), StoreError> {
    schema::sound_sqlite()?;
    folder.make()?;
    let stranger = || StoreError::mend(Mend::NotABook { path: folder.book() });
    // Looked at before anything is touched, the lock included.
    match folder.look()? {
        Found::Stranger => return Err(stranger()),
        Found::Book { version } if version > schema::VERSION => return Err(newer(version)),
        _ => {}
    }
    let Some(lock) = Lock::take(&folder)? else { return read_only(folder) };
    folder.sweep();
    if let Some(damage) = rescue::interrupted(&folder) {
        return rescued(folder, damage, opening, lock);
    }
    // And again, now that nobody else can change it.
    match folder.look()? {
        Found::Stranger => Err(stranger()),
        Found::Nothing => {
            create(&folder, opening.stream)?;
            let sound = sound(&folder, opening.now)?;
            let (store, opened) = start(folder, sound, lock)?;
            Ok((store, Opened { created: true, ..opened }))
        }
        // A read that fails once looks like damage. So what is damaged is looked at twice.
        Found::Book { .. } => match sound(&folder, opening.now).or_else(|_| sound(&folder, opening.now)) {
            Ok(sound) => start(folder, sound, lock),
            Err(StoreError::Restore { problem }) => rescued(folder, problem, opening, lock),
            Err(other) => Err(other),
        },
        Found::Broken => rescued(folder, of_book(ProblemKind::Header), opening, lock),
        Found::Gone => rescued(folder, of_book(ProblemKind::FileGone), opening, lock),
    }
}

/// Sets the damaged book aside, and opens what came back.
fn rescued(folder: Folder, damage: Problem, opening: Opening, lock: Lock) -> Result<(Store, Opened), StoreError> {
    let rescued = rescue::rescue(&folder, damage, opening)?;
    let sound = sound(&folder, opening.now)?;
    let (store, opened) = start(folder, sound, lock)?;
    Ok((store, Opened { rescued: Some(rescued), ..opened }))
}

fn newer(version: u32) -> StoreError {
    StoreError::mend(Mend::Newer { version, known: schema::VERSION })
}

/// Makes an empty book under another name, and gives it its name when it is whole on the disk.
pub(super) fn create(folder: &Folder, stream: StreamId) -> Result<(), StoreError> {
    if folder.is_empty() {
        folder.keep_to_owner();
    }
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let io = |why: std::io::Error| StoreError::io(&why, folder.path());
    let path = folder.unfinished();
    let conn = schema::create(&path).map_err(fault)?;
    rows::put_own_stream(&conn, stream).map_err(fault)?;
    rows::put_head(&conn, &Head::empty(stream)).map_err(fault)?;
    finish(folder, conn)?;
    fs::rename(&path, folder.book()).map_err(io)?;
    folder.sync()
}

/// Brings an unfinished book into the form in which it takes its name: logged, whole on the disk.
pub(super) fn finish(folder: &Folder, conn: Connection) -> Result<(), StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let io = |why: std::io::Error| StoreError::io(&why, folder.path());
    let path = folder.unfinished();
    conn.query_row("PRAGMA journal_mode = WAL", [], |_| Ok(())).map_err(fault)?;
    conn.close().map_err(|(_, why)| fault(why))?;
    // Where that could not be written, the mode stays another without an error.
    let mut head = [0; 20];
    File::open(&path).and_then(|mut file| file.read_exact(&mut head)).map_err(io)?;
    if !head.ends_with(&LOGGED) {
        return Err(StoreError::no_reason(folder.path()));
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        fs::set_permissions(&path, fs::Permissions::from_mode(0o600)).map_err(io)?;
    }
    File::open(&path).and_then(|file| file.sync_all()).map_err(io)
}

/// A book that was looked at and holds.
struct Sound {
    conn: Connection,
    own: StreamId,
    migrated_from: Option<u32>,
}

/// Looks at a book that is there, and brings it to the version of today.
fn sound(folder: &Folder, now: Moment) -> Result<Sound, StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let mut conn = schema::writing(&folder.book()).map_err(fault)?;
    // Until all is known to hold, not even the log is written back.
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, true).map_err(fault)?;
    // The log may hold a newer version than the file.
    let version = schema::version(&conn).map_err(fault)?;
    if version > schema::VERSION {
        return Err(newer(version));
    }
    let migrated_from = schema::migrate(&mut conn, folder, now, schema::STEPS)?;
    let own = usual_look(&conn, folder).map_err(fault)??;
    if folder.damaged().exists() {
        let check = reading::check(&conn, Mark::read(&folder.witness())).map_err(fault)?;
        if let Some(problem) = check.problems.into_iter().next() {
            return Err(problem.into());
        }
        fs::remove_file(folder.damaged()).map_err(|why| StoreError::io(&why, folder.path()))?;
    }
    conn.set_db_config(DbConfig::SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, false).map_err(fault)?;
    Ok(Sound { conn, own, migrated_from })
}

/// Starts the writer of a book that holds.
fn start(folder: Folder, sound: Sound, lock: Lock) -> Result<(Store, Opened), StoreError> {
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let Sound { conn, own: stream, migrated_from } = sound;
    let mark = rows::mark(&conn).map_err(fault)?;
    let missing = rows::gaps(&conn).map_err(fault)?;
    let writer = Handle::start(Writer::new(conn, folder.clone(), stream, lock)?)?;
    let store = Store { folder, writer: Some(writer), readers: Default::default(), stream, alone: false };
    Ok((store, Opened { created: false, writable: true, stream, mark, migrated_from, missing, rescued: None }))
}

/// What every opening looks at, quickly: the ends of all streams, and what the witness saw.
fn usual_look(conn: &Connection, folder: &Folder) -> rusqlite::Result<Result<StreamId, Problem>> {
    let heads = rows::heads(conn)?;
    let Some(own) = rows::own_stream(conn)?.filter(|own| heads.contains_key(own)) else {
        return Ok(Err(of_book(ProblemKind::Tables)));
    };
    for head in heads.values() {
        let at_end = if head.number == 0 { None } else { rows::digest_at(conn, head.stream, head.number)? };
        let beyond = rows::digest_at(conn, head.stream, head.number.saturating_add(1))?;
        if at_end != head.digest || beyond.is_some() {
            let at = super::problem::Spot::Stream { stream: head.stream };
            return Ok(Err(Problem { kind: ProblemKind::Head, at }));
        }
    }
    Ok(reading::forgotten(conn, Mark::read(&folder.witness()))?.map_or(Ok(own), Err))
}

/// Opens a book in a folder that can't be written, for questions only.
fn read_only(folder: Folder) -> Result<(Store, Opened), StoreError> {
    let not_writable = || StoreError::mend(Mend::NotWritable { path: folder.path().to_owned() });
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    if !folder.book().exists() {
        return Err(not_writable());
    }
    if let Some(damage) = rescue::interrupted(&folder) {
        return Err(damage.into());
    }
    let alone = fs::metadata(folder.log()).map_or(true, |log| log.len() == 0);
    // A log without its index can't be read where nothing can be written.
    let conn = schema::reading(&folder.book(), alone).map_err(|_| not_writable())?;
    let version = match schema::version(&conn) {
        Ok(version) => version,
        Err(why) => {
            return Err(match fault(why) {
                StoreError::Report { .. } if !alone => not_writable(),
                why => why,
            });
        }
    };
    if version != schema::VERSION {
        // An older one would have to be written to be brought to today's.
        return Err(if version > schema::VERSION { newer(version) } else { not_writable() });
    }
    let own = usual_look(&conn, &folder).map_err(fault)??;
    let mark = rows::mark(&conn).map_err(fault)?;
    let missing = rows::gaps(&conn).map_err(fault)?;
    let store = Store { folder, writer: None, readers: vec![conn].into(), stream: own, alone };
    Ok((
        store,
        Opened { created: false, writable: false, stream: own, mark, migrated_from: None, missing, rescued: None },
    ))
}
