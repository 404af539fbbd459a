//! What happens to a damaged book: it is set aside, and what holds goes on in a new one.
//!
//! Nothing is deleted. The damaged files are in a folder of their own, whole,
//! before the new book takes the name, and a program that is killed in between
//! finds them there at the next opening and does it again.

use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::TransactionBehavior;
use serde::Serialize;

use super::error::{Mend, StoreError};
use super::folder::{DAMAGED, Folder};
use super::merge::{self, Holes};
use super::opening::{Opening, finish};
use super::problem::{Missing, Problem, ProblemKind, Spot};
use super::reading;
use super::rows::{self, Part};
use super::salvage::Found;
use super::schema;
use super::seals;
use super::witness::{Mark, Witness};
use super::writer::of_book;
use crate::entry::Head;

/// What came back from a damaged book.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Rescued {
    /// The damage that was found.
    pub damage: Problem,
    /// The folder with the damaged files, as they were.
    pub aside: PathBuf,
    /// Entries that came back.
    pub entries: u64,
    /// How many entries the book had, when that is known.
    pub had: Option<u64>,
    /// Entries that did not come back, as far as is known.
    pub missing: Vec<Missing>,
    /// Entries that are whole but do not follow the one before them; they are only in the damaged files.
    pub unfit: Vec<Spot>,
    /// Names, phone numbers and plates that did not come back.
    pub personal_lost: u64,
}

/// The files of a book that are set aside together.
const FILES: [&str; 3] = ["book.db", "book.db-wal", "book.seen"];

/// Sets the damaged book aside and makes a new one of what holds, with a
/// stream of its own: how far the old one came is not certain any more.
pub(super) fn rescue(folder: &Folder, damage: Problem, opening: Opening) -> Result<Rescued, StoreError> {
    let aside = set_aside(folder, opening)?;
    let witness = Mark::read(&aside.join("book.seen"));
    let mut found = Found::default();
    found.look(&aside.join("book.db"), &aside.join("book.db-wal"), witness)?;
    let fit = found.fit();

    folder.sweep();
    let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
    let mut conn = schema::create(&folder.unfinished()).map_err(fault)?;
    let transaction = conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(fault)?;
    merge::take_in(&transaction, folder, &fit.entries, Holes::Noted)?;
    seals::salvage(&transaction, folder, &fit.seals)?;
    for id in &fit.erased {
        rows::put_part(&transaction, *id, &Part::Erased).map_err(fault)?;
    }
    let heads = rows::heads(&transaction).map_err(fault)?;
    if heads.contains_key(&opening.stream) {
        return Err(StoreError::mend(Mend::StreamInUse { stream: opening.stream }));
    }
    rows::put_own_stream(&transaction, opening.stream).map_err(fault)?;
    rows::put_head(&transaction, &Head::empty(opening.stream)).map_err(fault)?;
    transaction.commit().map_err(fault)?;
    let check = reading::check(&conn, None).map_err(fault)?;
    if let Some(problem) = check.problems.first() {
        return Err(StoreError::report(format!("the rescued book does not hold: {problem:?}")));
    }
    let mark = rows::mark(&conn).map_err(fault)?;
    finish(folder, conn)?;

    take_the_name(folder, &mark)?;
    let missing = check.missing.into_iter().chain(fit.lost_ends).collect();
    Ok(Rescued {
        damage,
        aside,
        entries: check.entries,
        had: witness.map(|mark| mark.arrived),
        missing,
        unfit: fit.unfit,
        personal_lost: fit.personal_lost,
    })
}

/// Puts the damaged files into a folder of their own, and notes its name where
/// the next opening looks. An interrupted rescue left it there already.
fn set_aside(folder: &Folder, opening: Opening) -> Result<PathBuf, StoreError> {
    let io = |why: io::Error| StoreError::io(&why, folder.path());
    if let Some(aside) = noted(folder) {
        return Ok(aside);
    }
    let aside = folder.dated(DAMAGED, opening.now, "");
    let mut builder = fs::DirBuilder::new();
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(&aside).map_err(io)?;
    for name in FILES {
        let from = folder.path().join(name);
        if from.exists() {
            whole_copy(&from, &aside.join(name)).map_err(io)?;
        }
    }
    #[cfg(unix)]
    File::open(&aside).and_then(|aside| aside.sync_all()).map_err(io)?;
    let name = aside.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    fs::write(folder.damaged(), &name).map_err(io)?;
    File::open(folder.damaged()).and_then(|file| file.sync_all()).map_err(io)?;
    folder.sync()?;
    Ok(aside)
}

/// A second name for the same bytes, or a copy where the system has no such thing.
fn whole_copy(from: &Path, to: &Path) -> io::Result<()> {
    if fs::hard_link(from, to).is_ok() {
        return Ok(());
    }
    fs::copy(from, to)?;
    File::open(to)?.sync_all()
}

/// Lets the new book take the place of the damaged one.
fn take_the_name(folder: &Folder, mark: &Mark) -> Result<(), StoreError> {
    let io = |why: io::Error| StoreError::io(&why, folder.path());
    // The old log must not be read with the new file.
    for path in [folder.log(), folder.path().join("book.db-shm"), folder.witness()] {
        match fs::remove_file(path) {
            Err(why) if why.kind() != io::ErrorKind::NotFound => return Err(io(why)),
            _ => {}
        }
    }
    folder.sync()?;
    fs::rename(folder.unfinished(), folder.book()).map_err(io)?;
    folder.sync()?;
    Witness::open(&folder.witness()).and_then(|mut witness| witness.note(mark)).map_err(io)?;
    fs::remove_file(folder.damaged()).map_err(io)?;
    folder.sync()
}

/// The damage, when an earlier rescue did not come to its end.
pub(super) fn interrupted(folder: &Folder) -> Option<Problem> {
    noted(folder).map(|_| of_book(ProblemKind::Interrupted))
}

/// The folder of an interrupted rescue.
fn noted(folder: &Folder) -> Option<PathBuf> {
    let name = fs::read_to_string(folder.damaged()).ok()?;
    let name = name.trim();
    // Only a name of ours, never a path out of the folder.
    let path = folder.path().join(name);
    (name.starts_with("damaged-") && !name.contains(['/', '\\']) && path.is_dir()).then_some(path)
}
