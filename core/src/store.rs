//! The book on the disk: one folder with every entry, kept whole.
//!
//! A [`Store`] owns one thread that writes, and opens connections that only
//! read for questions. An entry that [`Store::append`] gave back is on the disk
//! and stays there, unchanged: the tables refuse to change or delete an entry,
//! each entry's digest is verified whenever it is read, and each stream is
//! followed link by link whenever the whole book is read.
//!
//! | file | what |
//! | --- | --- |
//! | `book.db`, `book.db-wal`, `book.db-shm` | the SQLite database, its log and the log's index |
//! | `book.seen` | how many entries were acknowledged: a second sign of it, outside the database |
//! | `book.damaged` | there while damage is known and not yet set aside |
//! | `damaged-<date>/` | the files of a damaged book, as they were |
//! | `book.lock` | held while a program has the book open for writing |
//! | `book.backup` | where this device's backups go, how the last went, and what locks them; of the engine |
//!
//! ```
//! use lugbook::calendar::Moment;
//! use lugbook::entry::{Draft, Fact};
//! use lugbook::ident::{EntryId, JobId, PersonId, StreamId};
//! use lugbook::store::{Opening, Store};
//!
//! let folder = std::env::temp_dir().join(format!("lugbook-doc-{}", std::process::id()));
//! let now: Moment = "2026-05-04T09:15:00Z".parse()?;
//! let opening = Opening { stream: StreamId::from_parts(1, [1; 10]), now };
//! let (store, opened) = Store::open(&folder, opening)?;
//! assert!(opened.created);
//!
//! let draft = Draft {
//!     id: EntryId::from_parts(2, [2; 10]),
//!     author: PersonId::from_parts(3, [3; 10]),
//!     practice: false,
//!     fact: Fact::JobResumed { job: JobId::from_parts(4, [4; 10]) },
//!     personal: None,
//! };
//! let first = store.append(vec![draft.clone()], now)?;
//! // The same again is the same entry, and harmless.
//! assert_eq!(store.append(vec![draft], now)?, first);
//! assert_eq!(store.entries()?, first);
//! assert!(store.check()?.ok());
//! store.close()?;
//! # std::fs::remove_dir_all(folder)?;
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod backup;
mod chain;
mod error;
mod folder;
pub mod lock;
mod merge;
mod opening;
mod problem;
mod reading;
mod rescue;
mod rows;
mod salvage;
mod schema;
mod seals;
mod snapshot;
mod witness;
mod writer;

use std::fmt;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use rusqlite::Connection;
use serde::Serialize;

pub use backup::{BackedUp, Backup, KeptPhoto, kept as backups_kept};
pub(crate) use error::piece;
pub use error::{Again, Mend, StoreError, Unwatched, Watch};
pub use lock::BackupLock;
pub use merge::Merged;
pub use opening::{Opened, Opening};
pub use problem::{Check, Missing, Problem, ProblemKind, Spot};
pub use rescue::Rescued;
pub use schema::VERSION;
pub use snapshot::Snapshot;
pub use witness::Mark;

use crate::calendar::Moment;
use crate::entry::{Draft, Entry, Head, HybridTime};
use crate::ident::{Digest, EntryId, StreamId};
use crate::logbook::Span;
use crate::proof::{Device, DeviceKey, Gathered, Seal};
use folder::Folder;
use merge::Holes;
use writer::Handle;

/// What a restored backup brought.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Restored {
    /// Entries in the book before.
    pub before: u64,
    /// Entries in the book after.
    pub after: u64,
    /// What came of the backup's entries.
    pub merged: Merged,
}

/// How far a stream is sealed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct SealedStream {
    /// The stream.
    pub stream: StreamId,
    /// The number of its last entry.
    pub entries: u64,
    /// The number of the last entry that a seal is over; 0 when none is.
    pub sealed: u64,
    /// The device that sealed it.
    pub device: Option<Device>,
}

/// An open book. See the [module](self) for an example.
pub struct Store {
    folder: Folder,
    /// None when the folder can't be written.
    writer: Option<Handle>,
    readers: Mutex<Vec<Connection>>,
    stream: StreamId,
    /// No other program can change the file, and it has no log.
    alone: bool,
}

impl fmt::Debug for Store {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Store").field("stream", &self.stream).field("writable", &self.writer.is_some()).finish()
    }
}

impl Store {
    /// Opens the book in a folder, or makes one when there is none. The folder
    /// is made for its owner only.
    ///
    /// A folder that can't be written gives a book that can be read.
    ///
    /// # Errors
    /// - [`Mend::NotABook`], [`Mend::Newer`]: the file is somebody else's or a
    ///   newer program's, and was not touched.
    /// - [`Again::OpenElsewhere`]: another program has the book open.
    /// - [`Mend::NewerEntry`]: an entry is whole, and only a newer program can read it.
    /// - [`StoreError::FreeSpace`], [`Mend::NotWritable`], [`Mend::NotAFolder`].
    /// - [`StoreError::Restore`]: the book is damaged, in a folder that can't be written.
    ///
    /// A book that is damaged is set aside, whole, and what holds of it goes on
    /// in a new one: [`Opened::rescued`] tells what came back. Damage that shows
    /// only when all is read is met by [`Store::entries`] or [`Store::check`],
    /// which stop all writing; the next opening then does the same.
    pub fn open(folder: &Path, opening: Opening) -> Result<(Self, Opened), StoreError> {
        opening::open(Folder::new(folder), opening)
    }

    /// Opens the book as [`Store::open`] does and reads all of it. Damage that
    /// shows only then is dealt with at once: the book is set aside, and what
    /// holds is opened and read.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn open_and_read(folder: &Path, opening: Opening) -> Result<(Self, Opened, Vec<Entry>), StoreError> {
        let (store, opened) = Self::open(folder, opening)?;
        store.read_or_rescue(opened, opening)
    }

    /// Reads all of a book that was just opened, as [`Store::open_and_read`] does.
    ///
    /// # Errors
    /// As [`Store::open`].
    pub fn read_or_rescue(self, opened: Opened, opening: Opening) -> Result<(Self, Opened, Vec<Entry>), StoreError> {
        match self.entries() {
            Ok(entries) => return Ok((self, opened, entries)),
            Err(StoreError::Restore { .. }) if opened.writable => {}
            Err(why) => return Err(why),
        }
        let folder = self.folder.path().to_owned();
        drop(self);
        let (store, opened) = Self::open(&folder, opening)?;
        let entries = store.entries()?;
        Ok((store, opened, entries))
    }

    /// Adds entries to this device's stream, all in one transaction, and gives
    /// each back as it is kept. They are on the disk when this returns.
    ///
    /// A draft whose id is in the book already is not added again: the entry
    /// comes back as it stands.
    ///
    /// # Errors
    /// [`Mend::SameId`] when the id names an entry that says something else;
    /// [`StoreError::FreeSpace`], [`Mend::NotWritable`], [`StoreError::Restore`].
    /// After an error the book is as it was before.
    pub fn append(&self, drafts: Vec<Draft>, now: Moment) -> Result<Vec<Entry>, StoreError> {
        self.ask(move |writer| writer.append(drafts, now, None))
    }

    /// Adds entries that end a job, as [`Store::append`] does, and seals this device's
    /// stream with them in the same transaction. `job` holds the entries of the job so
    /// far. Without a key ([`Store::claim`]) nothing is sealed.
    ///
    /// # Errors
    /// As [`Store::append`].
    pub fn append_and_seal(&self, drafts: Vec<Draft>, now: Moment, job: Gathered) -> Result<Vec<Entry>, StoreError> {
        self.ask(move |writer| writer.append(drafts, now, Some(job)))
    }

    /// Takes the book as this device's own to write, with the key that it signs with.
    ///
    /// Where the book's own stream was written with another key, or its file is a copy
    /// of the one that was written, that stream stays as it is and this device begins
    /// `fresh`: a book that was copied or restored never forks a stream.
    ///
    /// # Errors
    /// As [`Store::append`]. A book that can't be written is not claimed.
    pub fn claim(&mut self, key: DeviceKey, fresh: StreamId) -> Result<(), StoreError> {
        self.stream = self.ask(move |writer| writer.claim(key, fresh))?;
        Ok(())
    }

    /// Seals the end of this device's stream, unless it is sealed or there is no key.
    ///
    /// # Errors
    /// As [`Store::append`].
    pub fn seal(&self) -> Result<(), StoreError> {
        self.ask(writer::Writer::seal)
    }

    /// The first seal over this entry of a stream or a later one, with its signature verified.
    ///
    /// # Errors
    /// As [`Store::entries`].
    pub fn seal_from(&self, stream: StreamId, number: u64) -> Result<Option<Seal>, StoreError> {
        match self.read(|conn| seals::from(conn, stream, number))? {
            Some(Ok(seal)) => Ok(Some(seal)),
            Some(Err(problem)) => Err(self.damaged(problem)),
            None => Ok(None),
        }
    }

    /// Every seal, each verified, in the order of stream and number.
    ///
    /// # Errors
    /// As [`Store::entries`].
    pub fn seals(&self) -> Result<Vec<Seal>, StoreError> {
        let all = self.read(seals::all)?.into_iter().collect::<Result<Vec<_>, _>>();
        all.map_err(|problem| self.damaged(problem))
    }

    /// How far each stream of the book is sealed, and by which device.
    ///
    /// # Errors
    /// As [`Store::entries`]; damage that [`Store::check`] tells is not looked for here.
    pub fn sealed(&self) -> Result<Vec<SealedStream>, StoreError> {
        let (seals, heads) = self.read(|conn| Ok((seals::all(conn)?, rows::heads(conn)?)))?;
        let holding: Vec<Seal> = seals.into_iter().flatten().collect();
        let of_stream = |head: Head| {
            let own = holding.iter().filter(|seal| seal.said().stream == head.stream);
            let last = own.max_by_key(|seal| seal.said().number);
            SealedStream {
                stream: head.stream,
                entries: head.number,
                sealed: last.map_or(0, |seal| seal.said().number),
                device: last.map(|seal| seal.said().device),
            }
        };
        Ok(heads.into_values().map(of_stream).collect())
    }

    /// Takes in entries of other devices' streams, all or none. They may come
    /// in any order, and those that the book has do no harm.
    ///
    /// # Errors
    /// [`Mend::Unchained`] when one does not follow the one before it,
    /// [`Mend::Forked`] when the book has another entry in its place; both name
    /// the place.
    pub fn merge(&self, entries: Vec<Entry>) -> Result<Merged, StoreError> {
        self.merge_sealed(entries, Vec::new())
    }

    /// Takes in entries as [`Store::merge`] does, with the seals over them.
    ///
    /// # Errors
    /// [`Mend::SealUnfit`] when a seal is not over the entries that are there,
    /// [`Mend::Resealed`] when a stream is sealed by another device than before;
    /// both name the place. Nothing is taken in then.
    pub fn merge_sealed(&self, entries: Vec<Entry>, seals: Vec<Seal>) -> Result<Merged, StoreError> {
        self.ask(move |writer| {
            let folder = writer.folder.clone();
            writer.change(|transaction, _, _| {
                let merged = merge::take_in(transaction, &folder, &entries, Holes::Refused)?;
                seals::take_in(transaction, &folder, &seals)?;
                Ok(merged)
            })
        })
    }

    /// Every entry, in the book's order. Digests, personal parts and chains are verified.
    ///
    /// # Errors
    /// [`StoreError::Restore`] with the first damage that was met; nothing more
    /// is written then.
    pub fn entries(&self) -> Result<Vec<Entry>, StoreError> {
        let read = self.read(reading::whole)?;
        self.sound(read).map(reading::in_order)
    }

    /// The entries after a place in the book's order ([`Entry::order`]), in order.
    ///
    /// # Errors
    /// As [`Store::entries`].
    pub fn entries_after(&self, (time, stream, number): (HybridTime, StreamId, u64)) -> Result<Vec<Entry>, StoreError> {
        let read = self.read(|conn| {
            let raw = rows::later(conn, time, stream, number)?.into_iter().map(Ok).collect();
            Ok(reading::open(raw, &rows::parts(conn)?))
        })?;
        self.sound(read).map(reading::in_order)
    }

    /// The entries that came in after a mark, in the order they came in. Those
    /// of other devices may stand anywhere in the book's order.
    ///
    /// # Errors
    /// As [`Store::entries`].
    pub fn arrived_after(&self, mark: &Mark) -> Result<Vec<Entry>, StoreError> {
        let arrived = mark.arrived;
        let read = self.read(|conn| Ok(reading::open(rows::after(conn, arrived)?, &rows::parts(conn)?)))?;
        self.sound(read)
    }

    /// The entries that came in after the first `arrived`, in the order they came
    /// in; `heads` are the ends that the streams had then. Digests, personal
    /// parts and the chains from those ends to the ends of today are verified.
    ///
    /// # Errors
    /// [`StoreError::Restore`] when something does not hold, or `heads` are not
    /// of this book. Nothing is stopped: it may be `heads` that are wrong, and
    /// [`Store::entries`] tells.
    pub fn tail(&self, arrived: u64, heads: &[Head]) -> Result<Vec<Entry>, StoreError> {
        let read = self.read(|conn| reading::tail(conn, arrived, heads))?;
        match read.problems.into_iter().next() {
            Some(problem) => Err(StoreError::Restore { problem }),
            None => Ok(read.entries),
        }
    }

    /// The entries of some stretches of streams, stretch by stretch. Digests and
    /// personal parts are verified.
    ///
    /// # Errors
    /// As [`Store::entries`], and when one of them is not there.
    pub fn stretches(&self, spans: &[Span]) -> Result<Vec<Entry>, StoreError> {
        let read = self.read(|conn| reading::stretches(conn, spans))?;
        self.sound(read)
    }

    /// The entry with this id.
    ///
    /// # Errors
    /// As [`Store::entries`].
    pub fn entry(&self, id: EntryId) -> Result<Option<Entry>, StoreError> {
        match self.read(|conn| writer::entry(conn, id))? {
            Some(Ok(entry)) => Ok(Some(entry)),
            Some(Err(problem)) => Err(self.damaged(problem)),
            None => Ok(None),
        }
    }

    /// How far the book has come.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn mark(&self) -> Result<Mark, StoreError> {
        self.read(rows::mark)
    }

    /// The book's folder.
    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// Older files of the book in its folder, by name: they hold what they held then.
    pub fn older_files(&self) -> Vec<String> {
        self.folder.older()
    }

    /// The stream that this device writes.
    pub fn stream(&self) -> StreamId {
        self.stream
    }

    /// The end of this device's stream.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn head(&self) -> Result<Head, StoreError> {
        let heads = self.read(rows::heads)?;
        Ok(heads.get(&self.stream).copied().unwrap_or_else(|| Head::empty(self.stream)))
    }

    /// The ends of all streams, this device's among them.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn heads(&self) -> Result<Vec<Head>, StoreError> {
        Ok(self.read(rows::heads)?.into_values().collect())
    }

    /// Looks through the whole book: the database, each digest, each chain,
    /// each personal part, and what was acknowledged.
    ///
    /// # Errors
    /// When the book can't be read at all. Damage is no error here but the answer.
    pub fn check(&self) -> Result<Check, StoreError> {
        let witness = Mark::read(&self.folder.witness());
        let check = match self.read(|conn| reading::check(conn, witness)) {
            Err(StoreError::Restore { problem }) => Check { problems: vec![problem], ..Check::default() },
            other => other?,
        };
        let newer = |kind: &ProblemKind| matches!(kind, ProblemKind::NewerEntry { .. } | ProblemKind::Unreadable);
        if let Some(problem) = check.problems.iter().find(|problem| !newer(&problem.kind)) {
            self.stop(problem);
        }
        Ok(check)
    }

    /// Erases the name, phone number and plate that stand beside an entry, for
    /// good. The entry stays, and the chain still verifies. Backups that were
    /// made before still hold them.
    ///
    /// # Errors
    /// [`Mend::NoEntry`], and as [`Store::append`].
    pub fn erase_personal(&self, id: EntryId) -> Result<(), StoreError> {
        self.erase_all(&[id])
    }

    /// Erases the personal parts of several entries as [`Store::erase_personal`] does, all or none.
    ///
    /// # Errors
    /// As there.
    pub fn erase_all(&self, ids: &[EntryId]) -> Result<(), StoreError> {
        let ids = ids.to_vec();
        self.ask(move |writer| writer.erase(&ids))
    }

    /// Writes a backup into a folder: one file with every entry and every photo,
    /// read back before it takes its name. Older backups of this device are then
    /// thinned out ([`backups_kept`]); files of any other name stay untouched.
    ///
    /// `photos` are the photos' names and files. With a `lock` only the passphrase opens it.
    ///
    /// # Errors
    /// [`Mend::NoBackupFolder`], [`Mend::NotWritable`], [`StoreError::FreeSpace`];
    /// [`StoreError::Restore`] when the book is damaged: a backup of it would
    /// push a good one out.
    pub fn back_up(
        &self,
        into: &Path,
        photos: &[(Digest, PathBuf)],
        lock: Option<&BackupLock>,
        now: Moment,
    ) -> Result<BackedUp, StoreError> {
        self.back_up_watched(into, photos, lock, now, &Unwatched)
    }

    /// The same, told to a watcher between the photos.
    ///
    /// # Errors
    /// As [`back_up`](Self::back_up), and [`Again::Stopped`]; then no backup was made.
    pub fn back_up_watched(
        &self,
        into: &Path,
        photos: &[(Digest, PathBuf)],
        lock: Option<&BackupLock>,
        now: Moment,
        watch: &dyn Watch,
    ) -> Result<BackedUp, StoreError> {
        // What can't be sealed now is backed up all the same.
        drop(self.seal());
        let content = self.read(reading::content)?.map_err(|problem| self.damaged(problem))?;
        backup::write(into, &content, (photos, watch), (lock, self.folder.path()), &self.stream.short(), now)
    }

    /// Takes in every entry of a backup that the book does not have, all or
    /// none. Doing it again does no harm. The photos come first, by whoever
    /// keeps them ([`Backup::photo`]): an entry never names one that is not there.
    ///
    /// This device goes on in its own stream; the streams in the backup stay
    /// what they are, so that a backup that was restored twice can't fork them.
    ///
    /// # Errors
    /// [`Mend::Forked`] when the book holds another entry in a place of the
    /// backup's streams, and as [`Store::append`].
    pub fn take_backup(&self, backup: Backup) -> Result<Restored, StoreError> {
        let before = self.mark()?.arrived;
        let merged = self.ask(move |writer| {
            let folder = writer.folder.clone();
            writer.change(|transaction, _, _| merge::take_backup(transaction, &folder, &backup))
        })?;
        Ok(Restored { before, after: self.mark()?.arrived, merged })
    }

    /// Keeps what another room made of the entries up to a mark; it replaces
    /// the one of the same name. Gives back whether the mark is of this book.
    ///
    /// # Errors
    /// As [`Store::append`].
    pub fn keep_snapshot(&self, name: &'static str, version: u32, snapshot: Snapshot) -> Result<bool, StoreError> {
        self.ask(move |writer| {
            let folder = writer.folder.clone();
            writer.change(|transaction, _, _| {
                snapshot::put(transaction, name, version, &snapshot)
                    .map_err(|why| StoreError::database(&why, folder.path()))
            })
        })
    }

    /// The kept snapshot of this name, unless it is of another version, broken,
    /// or not of this book's entries: then it must be made anew from all entries.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn snapshot(&self, name: &'static str, version: u32) -> Result<Option<Snapshot>, StoreError> {
        self.read(|conn| snapshot::get(conn, name, version))
    }

    /// Closes the book: what is in the log is written back into the one file.
    ///
    /// # Errors
    /// When that failed. Every acknowledged entry is safe all the same.
    pub fn close(mut self) -> Result<(), StoreError> {
        self.readers.get_mut().unwrap_or_else(PoisonError::into_inner).clear();
        let Some(writer) = self.writer.take() else { return Ok(()) };
        let written = writer.ask(writer::Writer::write_back);
        writer.end()?;
        written
    }

    fn ask<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut writer::Writer) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        match &self.writer {
            Some(writer) => writer.ask(work),
            None => Err(StoreError::mend(Mend::NotWritable { path: self.folder.path().to_owned() })),
        }
    }

    /// Asks a question on a connection that can't write.
    fn read<T>(&self, question: impl FnOnce(&Connection) -> rusqlite::Result<T>) -> Result<T, StoreError> {
        let fault = |why: rusqlite::Error| StoreError::database(&why, self.folder.path());
        let idle = self.readers.lock().unwrap_or_else(PoisonError::into_inner).pop();
        let conn = match idle {
            Some(conn) => conn,
            None => schema::reading(&self.folder.book(), self.alone).map_err(fault)?,
        };
        match question(&conn) {
            Ok(answer) => {
                self.readers.lock().unwrap_or_else(PoisonError::into_inner).push(conn);
                Ok(answer)
            }
            Err(why) => {
                let why = fault(why);
                if let StoreError::Restore { problem } = &why {
                    self.stop(problem);
                }
                Err(why)
            }
        }
    }

    fn sound(&self, read: reading::Read) -> Result<Vec<Entry>, StoreError> {
        match read.problems.into_iter().next() {
            Some(problem) => Err(self.damaged(problem)),
            None => Ok(read.entries),
        }
    }

    fn damaged(&self, problem: Problem) -> StoreError {
        match problem.kind {
            // Not damage: the bytes are as they were written.
            ProblemKind::NewerEntry { version } => StoreError::mend(Mend::NewerEntry { version: Some(version) }),
            ProblemKind::Unreadable => StoreError::mend(Mend::NewerEntry { version: None }),
            _ => {
                self.stop(&problem);
                StoreError::Restore { problem }
            }
        }
    }

    /// Stops writing, and marks the book so that the next opening looks through all of it.
    fn stop(&self, problem: &Problem) {
        let problem = problem.clone();
        let stopped = self.ask(move |writer| {
            writer.stop(&problem);
            std::fs::write(writer.folder.damaged(), b"").map_err(|why| StoreError::io(&why, writer.folder.path()))
        });
        // In a folder that can't be written there is nothing to stop or mark.
        drop(stopped);
    }
}

impl Drop for Store {
    fn drop(&mut self) {
        self.readers.get_mut().unwrap_or_else(PoisonError::into_inner).clear();
        if let Some(writer) = self.writer.take() {
            // Everything acknowledged is on the disk already.
            let _ = writer.end();
        }
    }
}
