//! What can go wrong with a book, by what the person can do about it.

use std::io;
use std::path::{Path, PathBuf};

use rusqlite::ffi;
use serde::{Deserialize, Serialize};

use super::folder::Folder;
use super::problem::{Problem, ProblemKind, Spot};
use crate::entry::Broken;
use crate::ident::{EntryId, StreamId};

/// The system's number for storage that failed, the same on every Unix.
const EIO: i32 = 5;

/// Why a book could not be opened, written or read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum StoreError {
    /// What was given will not do.
    #[error("mend the input: {why:?}")]
    MendInput {
        /// What is wrong with it.
        why: Mend,
    },
    /// No room is left where the book lies. The book is unchanged.
    #[error("no space left")]
    FreeSpace,
    /// Something else is in the way just now. The book is unchanged.
    #[error("try again: {why:?}")]
    TryAgain {
        /// What is in the way.
        why: Again,
    },
    /// The book is damaged. Nothing more is written to it; opening it again
    /// sets it aside and salvages what holds.
    #[error("the book is damaged: {problem:?}")]
    Restore {
        /// The first damage that was found.
        problem: Problem,
    },
    /// Something that nobody foresaw.
    #[error("unforeseen: {what}")]
    Report {
        /// What the system or the database said; nothing personal.
        what: String,
    },
}

/// Input that will not do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum Mend {
    /// The book's path names something that is no folder.
    NotAFolder {
        /// The path.
        path: PathBuf,
    },
    /// The folder can't be made or reached.
    Unreachable {
        /// The path.
        path: PathBuf,
    },
    /// The file where the book should be is not a book of this program. It was not touched.
    NotABook {
        /// The file.
        path: PathBuf,
    },
    /// A newer program wrote the book. It was not touched.
    Newer {
        /// The book's version.
        version: u32,
        /// The newest version that this program reads.
        known: u32,
    },
    /// The book holds an entry that only a newer program can read. Nothing was changed.
    NewerEntry {
        /// The entry's version, when it says one that is newer.
        version: Option<u32>,
    },
    /// The fresh stream that was given is in the book already.
    StreamInUse {
        /// The stream.
        stream: StreamId,
    },
    /// The folder can't be written, so nothing can be added.
    NotWritable {
        /// The folder.
        path: PathBuf,
    },
    /// The id already names another entry of the book.
    SameId {
        /// The id.
        id: EntryId,
    },
    /// The draft can't be written down.
    Unwritable {
        /// The draft's id.
        id: EntryId,
    },
    /// An entry to merge does not follow the one before it.
    Unchained {
        /// The entry's stream.
        stream: StreamId,
        /// The entry's number.
        number: u64,
    },
    /// The book holds another entry at this place of the stream.
    Forked {
        /// The stream.
        stream: StreamId,
        /// The number that stands for two different entries.
        number: u64,
    },
    /// A seal is not over the entries that are there.
    SealUnfit {
        /// The stream.
        stream: StreamId,
        /// The number of the entry that it stands at.
        number: u64,
    },
    /// A stream is sealed by another device than before.
    Resealed {
        /// The stream.
        stream: StreamId,
        /// The number of the entry that the seal stands at.
        number: u64,
    },
    /// The file is no backup of a book.
    NotABackup {
        /// The file.
        path: PathBuf,
    },
    /// A newer program wrote the backup.
    NewerBackup {
        /// The backup's version.
        version: u32,
        /// The newest version that this program reads.
        known: u32,
    },
    /// The backup does not hold; nothing was taken from it.
    BackupDamaged {
        /// The file.
        path: PathBuf,
        /// The first place in the archive that does not hold.
        at: String,
    },
    /// The folder that a backup is to go to is none, or is not there.
    NoBackupFolder {
        /// The path.
        path: PathBuf,
    },
    /// The backup is locked with a passphrase.
    Locked {
        /// The file.
        path: PathBuf,
    },
    /// The passphrase does not open the backup.
    WrongPassphrase {
        /// The file.
        path: PathBuf,
    },
    /// The passphrase is too short to lock anything.
    ShortPassphrase {
        /// How many characters it must have at least.
        least: usize,
    },
    /// There is no such entry.
    NoEntry {
        /// The id.
        id: EntryId,
    },
}

/// What is in the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Again {
    /// Another program has the book open.
    OpenElsewhere,
    /// The file is held by another program.
    Held,
    /// The storage failed to read or write.
    Storage,
    /// The person stopped it. Nothing was changed.
    Stopped,
}

impl Mend {
    /// An entry whose digest holds is as it was written; what can't be read of it is newer.
    pub(super) fn newer_entry(why: &Broken) -> Self {
        Self::NewerEntry { version: if let Broken::Newer { version } = why { Some(*version) } else { None } }
    }
}

impl StoreError {
    /// The kind's code: `mend-input`, `free-space`, `try-again`, `restore`, `report`.
    ///
    /// ```
    /// use lugbook::store::StoreError;
    /// assert_eq!(StoreError::FreeSpace.code(), "free-space");
    /// ```
    pub fn code(&self) -> &'static str {
        match self {
            Self::MendInput { .. } => "mend-input",
            Self::FreeSpace => "free-space",
            Self::TryAgain { .. } => "try-again",
            Self::Restore { .. } => "restore",
            Self::Report { .. } => "report",
        }
    }

    pub(super) fn mend(why: Mend) -> Self {
        Self::MendInput { why }
    }

    pub(crate) fn report(what: impl std::fmt::Display) -> Self {
        Self::Report { what: what.to_string() }
    }

    /// A failure of the file system at a path of the book.
    pub(crate) fn io(why: &io::Error, path: &Path) -> Self {
        match why.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Self::FreeSpace,
            io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
                Self::mend(Mend::NotWritable { path: path.to_owned() })
            }
            _ if why.raw_os_error() == Some(EIO) => Self::TryAgain { why: Again::Storage },
            kind => Self::Report { what: kind.to_string() },
        }
    }

    /// A failure of the database, for a book in `folder`.
    pub(super) fn database(why: &rusqlite::Error, folder: &Path) -> Self {
        let Some(code) = why.sqlite_error() else {
            // A column of another type than the schema says: the file was changed.
            return match why {
                rusqlite::Error::FromSqlConversionFailure(..)
                | rusqlite::Error::InvalidColumnType(..)
                | rusqlite::Error::IntegralValueOutOfRange(..)
                | rusqlite::Error::Utf8Error(..)
                | rusqlite::Error::QueryReturnedNoRows => Self::damaged(why),
                _ => Self::report(why),
            };
        };
        match code.code {
            ffi::ErrorCode::DiskFull => Self::FreeSpace,
            ffi::ErrorCode::DatabaseBusy
            | ffi::ErrorCode::DatabaseLocked
            | ffi::ErrorCode::FileLockingProtocolFailed => Self::TryAgain { why: Again::Held },
            ffi::ErrorCode::DatabaseCorrupt | ffi::ErrorCode::NotADatabase | ffi::ErrorCode::TypeMismatch => {
                Self::damaged(why)
            }
            _ if code.extended_code == ffi::SQLITE_IOERR_SHORT_READ => Self::damaged(why),
            // The database does not say why; the folder may.
            ffi::ErrorCode::SystemIoFailure | ffi::ErrorCode::CannotOpen => Self::no_reason(folder),
            ffi::ErrorCode::ReadOnly | ffi::ErrorCode::PermissionDenied => {
                Self::mend(Mend::NotWritable { path: folder.to_owned() })
            }
            _ => Self::report(code),
        }
    }

    /// A failure for which the database gave no reason: no room in the folder, or else the storage.
    pub(super) fn no_reason(folder: &Path) -> Self {
        match Folder::new(folder).has_room() {
            Ok(()) => Self::TryAgain { why: Again::Storage },
            Err(why) => Self::io(&why, folder),
        }
    }

    fn damaged(why: &rusqlite::Error) -> Self {
        Self::Restore { problem: Problem { kind: ProblemKind::File { said: why.to_string() }, at: Spot::Book } }
    }
}

/// Who watches a long piece of work: told between its pieces, never while the book is being written.
pub trait Watch: Sync {
    /// So many pieces of so many are done. Whether to go on.
    fn goes_on(&self, done: u64, of: u64) -> bool;
}

/// Nobody watches: it goes on to its end.
#[derive(Debug, Clone, Copy, Default)]
pub struct Unwatched;

impl Watch for Unwatched {
    fn goes_on(&self, _: u64, _: u64) -> bool {
        true
    }
}

/// Stops when the watcher says so.
pub(crate) fn piece(watch: &dyn Watch, done: usize, of: usize) -> Result<(), StoreError> {
    let count = |count: usize| u64::try_from(count).unwrap_or(u64::MAX);
    if watch.goes_on(count(done), count(of)) { Ok(()) } else { Err(StoreError::TryAgain { why: Again::Stopped }) }
}
