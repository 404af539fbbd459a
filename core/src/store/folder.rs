//! The book's folder: its files, whose they are, and who has them open.

use std::fs::{self, DirBuilder, File, OpenOptions, TryLockError};
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use super::error::{Again, Mend, StoreError};
use super::witness::Mark;
use crate::calendar::Moment;

/// `LUGB`: the application id in the header of every book.
pub(super) const APPLICATION: i32 = 0x4C55_4742;

const MAGIC: &[u8] = b"SQLite format 3\0";
/// Bytes 18 and 19 of a file with which its log must be read.
pub(super) const LOGGED: [u8; 2] = [2, 2];
/// Stands in the stored text of the first table.
const SIGN: &[u8] = b"-- lugbook book";

/// How the name of a book begins that was kept before it was brought to a newer
/// version, and that of a damaged one's folder.
pub(super) const BEFORE: &str = "book-of-version-";
pub(super) const DAMAGED: &str = "damaged";

/// How often the lock is asked for before somebody is told, 10 ms apart.
const PATIENCE: u32 = 200;

/// The paths of one book.
#[derive(Debug, Clone)]
pub(super) struct Folder {
    path: PathBuf,
}

/// Whose file lies where the book should be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Found {
    /// No file, and no trace of one.
    Nothing,
    /// A book of this version.
    Book { version: u32 },
    /// A book, but its header is broken.
    Broken,
    /// Traces of a book, but its file is gone.
    Gone,
    /// Something else.
    Stranger,
}

impl Folder {
    pub(super) fn new(path: &Path) -> Self {
        Self { path: path.to_owned() }
    }

    pub(super) fn path(&self) -> &Path {
        &self.path
    }

    pub(super) fn book(&self) -> PathBuf {
        self.path.join("book.db")
    }

    pub(super) fn log(&self) -> PathBuf {
        self.path.join("book.db-wal")
    }

    pub(super) fn witness(&self) -> PathBuf {
        self.path.join("book.seen")
    }

    /// The file in which a new book is made before it takes its name.
    pub(super) fn unfinished(&self) -> PathBuf {
        self.path.join("book.db.new")
    }

    /// A marker that the last use found damage.
    pub(super) fn damaged(&self) -> PathBuf {
        self.path.join("book.damaged")
    }

    /// Makes the folder, for its owner only, when it is not there.
    pub(super) fn make(&self) -> Result<(), StoreError> {
        match fs::metadata(&self.path) {
            Ok(there) if there.is_dir() => Ok(()),
            Ok(_) => Err(StoreError::mend(Mend::NotAFolder { path: self.path.clone() })),
            Err(why) if why.kind() == io::ErrorKind::NotFound => {
                let mut builder = DirBuilder::new();
                builder.recursive(true);
                #[cfg(unix)]
                std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
                builder.create(&self.path).map_err(|why| match why.kind() {
                    io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => {
                        StoreError::mend(Mend::NotAFolder { path: self.path.clone() })
                    }
                    _ => StoreError::io(&why, &self.path),
                })
            }
            Err(why) if why.kind() == io::ErrorKind::NotADirectory => {
                Err(StoreError::mend(Mend::NotAFolder { path: self.path.clone() }))
            }
            Err(_) => Err(StoreError::mend(Mend::Unreachable { path: self.path.clone() })),
        }
    }

    /// What tells this book's file from a copy of it; the system's number of the
    /// file, which stays when it is moved and not when it is copied. `None` where
    /// the system has no such thing.
    pub(super) fn place(&self) -> Option<[u8; 8]> {
        #[cfg(unix)]
        {
            use std::os::unix::fs::MetadataExt;
            fs::metadata(self.book()).ok().map(|file| file.ino().to_be_bytes())
        }
        #[cfg(not(unix))]
        None
    }

    /// Whether the folder holds nothing at all.
    pub(super) fn is_empty(&self) -> bool {
        fs::read_dir(&self.path).is_ok_and(|mut names| names.next().is_none())
    }

    /// Keeps a folder that was empty to its owner; one with other things in it stays as it is.
    pub(super) fn keep_to_owner(&self) {
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            // A file system without permissions is no reason to refuse the book.
            let _ = fs::set_permissions(&self.path, fs::Permissions::from_mode(0o700));
        }
    }

    /// Looks whose file the book is by its raw bytes, without touching it.
    pub(super) fn look(&self) -> Result<Found, StoreError> {
        let book = self.book();
        let traces = self.log().exists() || Mark::read(&self.witness()).is_some();
        let mut head = Vec::new();
        match File::open(&book) {
            Ok(file) => {
                if !file.metadata().is_ok_and(|meta| meta.is_file()) {
                    return Ok(Found::Stranger);
                }
                file.take(65_536).read_to_end(&mut head).map_err(|why| StoreError::io(&why, &book))?
            }
            Err(why) if why.kind() == io::ErrorKind::NotFound => {
                return Ok(if traces { Found::Gone } else { Found::Nothing });
            }
            Err(why) => return Err(StoreError::io(&why, &book)),
        };
        let number = |at: usize| head.get(at..at + 4).and_then(|four| four.try_into().ok()).map(u32::from_be_bytes);
        let magic = head.starts_with(MAGIC);
        let ours = number(68) == u32::try_from(APPLICATION).ok();
        let signed = head.windows(SIGN.len()).any(|window| window == SIGN);
        let logged = head.get(18..20) == Some(&LOGGED);
        Ok(match (magic && ours, ours || signed || (traces && !magic)) {
            (true, _) if logged => Found::Book { version: number(60).unwrap_or_default() },
            (_, true) => Found::Broken,
            (_, false) => Found::Stranger,
        })
    }

    /// Removes what a killed program left of a book that had no name yet.
    pub(super) fn sweep(&self) {
        for end in ["", "-journal", "-wal", "-shm"] {
            let mut path = self.unfinished().into_os_string();
            path.push(end);
            // Nothing was acknowledged from in there; making the next one tells if it is in the way.
            let _ = fs::remove_file(path);
        }
    }

    /// Whether a small file can be made and written here.
    pub(super) fn has_room(&self) -> io::Result<()> {
        let path = self.path.join("book.room");
        let made = File::create(&path).and_then(|mut file| io::Write::write_all(&mut file, &[0; 4096]));
        match (made, fs::remove_file(&path)) {
            (Err(why), _) => Err(why),
            (Ok(()), removed) => removed,
        }
    }

    /// Writes the folder's own list of names to the disk.
    pub(super) fn sync(&self) -> Result<(), StoreError> {
        #[cfg(unix)]
        File::open(&self.path).and_then(|folder| folder.sync_all()).map_err(|why| StoreError::io(&why, &self.path))?;
        Ok(())
    }

    /// Older files of the book: as it was before it was brought to a newer version,
    /// and damaged ones that were set aside.
    pub(super) fn older(&self) -> Vec<String> {
        let mut older: Vec<String> = fs::read_dir(&self.path)
            .into_iter()
            .flatten()
            .flatten()
            .map(|name| name.file_name().to_string_lossy().into_owned())
            .filter(|name| [BEFORE, DAMAGED].iter().any(|start| name.starts_with(start)))
            .collect();
        older.sort();
        older
    }

    /// A name with the date in it that no file of the folder has.
    pub(super) fn dated(&self, stem: &str, now: Moment, end: &str) -> PathBuf {
        let clock = now.clock().replace(':', "");
        let name = format!("{stem}-{}-{clock}", now.day());
        (1_u32..)
            .map(|count| if count == 1 { format!("{name}{end}") } else { format!("{name}-{count}{end}") })
            .map(|name| self.path.join(name))
            .find(|path| !path.exists())
            .unwrap_or_default()
    }
}

/// Says that a book is open for writing; let go when dropped, or when the program ends in any way.
#[derive(Debug)]
pub(super) struct Lock {
    _file: File,
}

impl Lock {
    /// Takes the lock, or `None` when the folder can't be written.
    pub(super) fn take(folder: &Folder) -> Result<Option<Self>, StoreError> {
        let path = folder.path().join("book.lock");
        let file = match OpenOptions::new().create(true).truncate(false).write(true).open(&path) {
            Ok(file) => file,
            Err(why) if matches!(why.kind(), io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem) => {
                return Ok(None);
            }
            Err(why) => return Err(StoreError::io(&why, &path)),
        };
        // A program that is just ending, or starting another one, holds it for a moment longer.
        for _ in 0..PATIENCE {
            match file.try_lock() {
                Ok(()) => return Ok(Some(Self { _file: file })),
                Err(TryLockError::WouldBlock) => thread::sleep(Duration::from_millis(10)),
                Err(TryLockError::Error(why)) => return Err(StoreError::io(&why, &path)),
            }
        }
        Err(StoreError::TryAgain { why: Again::OpenElsewhere })
    }
}
