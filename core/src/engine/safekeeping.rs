//! Backups that are made by themselves, and what they give back.
//!
//! Where they go, how the last one went and what locks them is this device's own
//! affair, no entry: it lies in `book.backup` beside the book, for its owner only,
//! and outlives a damaged book.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};

use super::{Engine, Trouble};
use crate::calendar::Moment;
use crate::ident::Digest;
use crate::photos::{Photos, Rendition};
use crate::store::{Again, BackedUp, Backup, BackupLock, Mend, Restored, StoreError, Unwatched, Watch, piece};
use crate::words::{Say, Speech, Words};

/// After a backup, changes may wait this many times as long as it took, so that
/// backups never take more than a small part of the time.
const WAITS: i64 = 20;
/// After one that failed, the next is tried after so many milliseconds: ten minutes.
const TRY_AGAIN_MS: i64 = 10 * 60 * 1000;

/// What is noted of this device's backups.
#[derive(Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Safekeeping {
    /// The folder that backups go to by themselves.
    into: Option<PathBuf>,
    lock: Option<BackupLock>,
    good: Option<Good>,
    /// What went wrong since.
    failed: Option<Failed>,
    /// The note itself could not be read.
    #[serde(skip)]
    unreadable: bool,
}

/// The last backup that was read back.
#[derive(Debug, Serialize, Deserialize)]
struct Good {
    file: PathBuf,
    at: Moment,
    entries: u64,
    photos: u64,
    /// Entries in the book then.
    arrived: u64,
    took_ms: i64,
}

#[derive(Debug, Serialize, Deserialize)]
struct Failed {
    at: Moment,
    why: StoreError,
}

/// How this device's backups stand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BackupView {
    /// The folder that backups go to by themselves.
    pub into: Option<String>,
    /// They are locked with a passphrase.
    pub locked: bool,
    /// The file of the last good backup.
    pub last_good: Option<String>,
    /// When that was made.
    pub last_good_at: Option<String>,
    /// Entries of the book that are in no good backup of this device.
    pub not_in_it: u64,
    /// All of that in sentences.
    pub sentences: Vec<String>,
    /// What went wrong last, and what to do; none when all is well.
    pub trouble: Option<String>,
}

/// What a backup gave back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RestoredView {
    /// Entries before.
    pub before: u64,
    /// Entries now.
    pub after: u64,
    /// Photos that came back.
    pub photos: usize,
    /// Photos of the backup that could not be taken in.
    pub photos_missing: usize,
    /// All of that in sentences.
    pub sentences: Vec<String>,
}

/// Photos and entries that came out of a backup.
#[derive(Debug, Clone)]
pub(super) struct CameBack {
    restored: Restored,
    photos: usize,
    missing: usize,
}

impl Safekeeping {
    /// Reads the note of a book's folder.
    pub(super) fn of(folder: &Path) -> Self {
        match fs::read(note(folder)) {
            Ok(bytes) => {
                serde_json::from_slice(&bytes).unwrap_or_else(|_| Self { unreadable: true, ..Self::default() })
            }
            Err(why) => Self { unreadable: why.kind() != std::io::ErrorKind::NotFound, ..Self::default() },
        }
    }

    /// Writes the note whole or not at all.
    fn keep(&self, folder: &Path) -> Result<(), StoreError> {
        let io = |why: std::io::Error| StoreError::io(&why, folder);
        let bytes = serde_json::to_vec_pretty(self).map_err(StoreError::report)?;
        // A file of this kind is its owner's alone.
        let mut file = tempfile::Builder::new().prefix("book.backup.").tempfile_in(folder).map_err(io)?;
        file.write_all(&bytes).and_then(|()| file.as_file().sync_all()).map_err(io)?;
        file.persist(note(folder)).map_err(|why| io(why.error))?;
        #[cfg(unix)]
        File::open(folder).and_then(|folder| folder.sync_all()).map_err(io)?;
        Ok(())
    }

    /// Whether a backup is due: something is in none yet, and the last try is long
    /// enough ago. With no job in the bay it is not put off.
    fn due(&self, arrived: u64, at_work: bool, now: Moment) -> bool {
        let since = |at: Moment, wait: i64| {
            // A clock that was set back is no reason to wait.
            !(0..wait).contains(&now.unix_ms().saturating_sub(at.unix_ms()))
        };
        self.into.is_some()
            && self.good.as_ref().is_none_or(|good| {
                let wait = if at_work { good.took_ms.saturating_mul(WAITS) } else { 0 };
                good.arrived != arrived && since(good.at, wait)
            })
            && self.failed.as_ref().is_none_or(|failed| since(failed.at, TRY_AGAIN_MS))
    }

    /// Takes the newest good backup into a book that was just rescued.
    pub(super) fn fill(&self, store: &crate::store::Store, photos: &Photos, now: Moment) -> Option<CameBack> {
        let folder = self.into.as_deref()?;
        let backup = Backup::newest(folder, self.lock.as_ref(), store.folder()).ok()??;
        take(backup, store, photos, now, &Unwatched).ok()
    }
}

fn note(folder: &Path) -> PathBuf {
    folder.join("book.backup")
}

/// Photos first: an entry never names one that is not there.
fn take(
    mut backup: Backup,
    store: &crate::store::Store,
    photos: &Photos,
    now: Moment,
    watch: &dyn Watch,
) -> Result<CameBack, StoreError> {
    let (mut came, mut missing) = (0, 0);
    let all = backup.photos().to_vec();
    let of = all.len();
    for (done, photo) in all.into_iter().enumerate() {
        // Photos that no entry names yet are swept away after their time.
        piece(watch, done, of)?;
        let bytes = match backup.photo(&photo) {
            Ok(bytes) => bytes,
            // One photo that does not hold is no reason to leave every entry behind.
            Err(StoreError::MendInput { why: Mend::BackupDamaged { .. } }) => {
                missing += 1;
                continue;
            }
            Err(why) => return Err(why),
        };
        match photos.intake_bytes(&bytes, now) {
            Ok(intake) if !intake.duplicate || intake.mended => came += 1,
            Ok(_) => {}
            Err(crate::photos::PhotoError::NoSpace { .. }) => return Err(StoreError::FreeSpace),
            Err(_) => missing += 1,
        }
    }
    Ok(CameBack { restored: store.take_backup(backup)?, photos: came, missing })
}

/// Whether a backup takes a passphrase. One that takes none is read whole.
///
/// # Errors
/// When the file is no backup, or does not hold.
pub fn backup_is_locked(file: &Path, speech: Speech) -> Result<bool, Trouble> {
    match Backup::open(file) {
        Ok(_) => Ok(false),
        Err(StoreError::MendInput { why: Mend::Locked { .. } }) => Ok(true),
        Err(why) => Err(Trouble::of_store(&why, &Words::new(speech))),
    }
}

impl Engine {
    /// Chooses the folder that backups go to by themselves, or none. The first
    /// one is made at once.
    ///
    /// # Errors
    /// When the folder is not there or can't be written; nothing is changed then.
    pub fn back_up_into(&mut self, folder: Option<&Path>, speech: Speech) -> Result<BackupView, Trouble> {
        let words = Words::new(speech);
        let trouble = |why| Trouble::of_store(&why, &words);
        match folder {
            Some(folder) => {
                // A relative name would mean another folder tomorrow.
                let full = fs::canonicalize(folder)
                    .map_err(|_| StoreError::MendInput { why: Mend::NoBackupFolder { path: folder.to_owned() } })
                    .map_err(trouble)?;
                if fs::canonicalize(&self.folder).is_ok_and(|book| full.starts_with(book)) {
                    return Err(Trouble::mend(&words, "trouble-backup-inside", &[]));
                }
                let done = self.write_backup(&full, &Unwatched).map_err(trouble)?;
                self.safekeeping.into = Some(full);
                self.noted(Ok(done));
            }
            None => self.safekeeping.into = None,
        }
        self.safekeeping.unreadable = false;
        self.safekeeping.keep(&self.folder).map_err(trouble)?;
        Ok(self.backups(speech))
    }

    /// Locks this device's backups with a passphrase from now on, or no more.
    /// Those that were made before stay as they are.
    ///
    /// # Errors
    /// When the passphrase is too short, or the book's folder can't be written.
    pub fn lock_backups(&mut self, passphrase: Option<&str>, speech: Speech) -> Result<BackupView, Trouble> {
        let words = Words::new(speech);
        let trouble = |why| Trouble::of_store(&why, &words);
        let lock = passphrase.map(BackupLock::new).transpose().map_err(trouble)?;
        let before = std::mem::replace(&mut self.safekeeping.lock, lock);
        if let Err(why) = self.safekeeping.keep(&self.folder) {
            self.safekeeping.lock = before;
            return Err(trouble(why));
        }
        Ok(self.backups(speech))
    }

    /// Makes a backup now: into a folder, or into the chosen one.
    ///
    /// # Errors
    /// When no folder is chosen or given, it can't be written, or the book is damaged.
    pub fn back_up(&mut self, into: Option<&Path>, speech: Speech) -> Result<BackupView, Trouble> {
        self.back_up_watched(into, speech, &Unwatched)
    }

    /// The same, told to a watcher between the photos.
    pub(super) fn back_up_watched(
        &mut self,
        into: Option<&Path>,
        speech: Speech,
        watch: &dyn Watch,
    ) -> Result<BackupView, Trouble> {
        let words = Words::new(speech);
        let chosen = into.map(Path::to_owned).or_else(|| self.safekeeping.into.clone());
        let folder = chosen.ok_or_else(|| Trouble::mend(&words, "trouble-no-backup-folder", &[]))?;
        let done = self.write_backup(&folder, watch);
        let failed = done.as_ref().err().cloned();
        // One that goes elsewhere by hand says nothing of the chosen folder when it fails, nor one that was stopped.
        let stopped = matches!(failed, Some(StoreError::TryAgain { why: Again::Stopped }));
        if done.is_ok() || (into.is_none() && !stopped) {
            self.noted(done);
        }
        let kept = self.safekeeping.keep(&self.folder);
        match failed.map_or(kept, Err) {
            Ok(()) => Ok(self.backups(speech)),
            Err(why) => Err(Trouble::of_store(&why, &words)),
        }
    }

    /// Makes a backup by itself when one is due; for a shell to call after each
    /// change, and when it goes to sleep. Gives back what a person must be told
    /// when it failed.
    pub fn back_up_when_due(&mut self, speech: Speech) -> Option<String> {
        let into = self.safekeeping.into.clone()?;
        let arrived = self.store.mark().ok()?.arrived;
        if !self.safekeeping.due(arrived, self.book.in_bay().is_some(), self.host.clock()) {
            return None;
        }
        let done = self.write_backup(&into, &Unwatched);
        self.noted(done);
        if let Err(why) = self.safekeeping.keep(&self.folder) {
            self.safekeeping.failed = Some(Failed { at: self.host.clock(), why });
        }
        self.backups(speech).trouble
    }

    /// How this device's backups stand.
    pub fn backups(&self, speech: Speech) -> BackupView {
        let words = Words::new(speech);
        let Safekeeping { into, lock, good, failed, unreadable } = &self.safekeeping;
        let path = |path: &Path| path.display().to_string();
        let arrived = self.store.mark().map_or(0, |mark| mark.arrived);
        let not_in_it = good.as_ref().map_or(arrived, |good| arrived.saturating_sub(good.arrived));
        let count = |number: u64| usize::try_from(number).unwrap_or(usize::MAX);
        let mut sentences = vec![match good {
            None => words.text("backup-none", &[]),
            Some(good) => words.text(
                "backup-last-good",
                &[
                    ("day", good.at.day().to_string().into()),
                    ("clock", good.at.clock().into()),
                    ("entries", count(good.entries).into()),
                    ("photos", count(good.photos).into()),
                    ("file", path(&good.file).into()),
                ],
            ),
        }];
        if not_in_it > 0 && good.is_some() {
            sentences.push(words.text("backup-not-in-it", &[("count", count(not_in_it).into())]));
        }
        sentences.push(match into {
            Some(into) => words.text("backup-into", &[("folder", path(into).into())]),
            None => words.text("backup-nowhere", &[]),
        });
        if lock.is_some() {
            sentences.push(words.text("backup-locked", &[]));
        }
        let trouble =
            match failed {
                Some(failed) => Some(words.text(
                    "backup-failed",
                    &[("why", failed.why.say(&words).into()), ("count", count(not_in_it).into())],
                )),
                None if *unreadable => Some(words.text("backup-note-unreadable", &[])),
                None => None,
            };
        BackupView {
            into: into.as_deref().map(path),
            locked: lock.is_some(),
            last_good: good.as_ref().map(|good| path(&good.file)),
            last_good_at: good.as_ref().map(|good| good.at.to_string()),
            not_in_it,
            sentences,
            trouble,
        }
    }

    /// Takes in what a backup has and the book has not. The same one twice does no harm.
    ///
    /// # Errors
    /// When the file is no backup, does not hold, or takes another passphrase;
    /// nothing is changed then.
    pub fn restore(&mut self, file: &Path, passphrase: Option<&str>, speech: Speech) -> Result<RestoredView, Trouble> {
        self.restore_watched(file, passphrase, speech, &Unwatched)
    }

    /// The same, told to a watcher between the photos.
    pub(super) fn restore_watched(
        &mut self,
        file: &Path,
        passphrase: Option<&str>,
        speech: Speech,
        watch: &dyn Watch,
    ) -> Result<RestoredView, Trouble> {
        let words = Words::new(speech);
        let trouble = |why| Trouble::of_store(&why, &words);
        let backup = match passphrase {
            Some(passphrase) => Backup::unlock(file, passphrase, &self.folder),
            None => Backup::open(file),
        };
        let came =
            take(backup.map_err(trouble)?, &self.store, &self.photos, self.host.now(), watch).map_err(trouble)?;
        self.fold_anew().map_err(trouble)?;
        Ok(RestoredView {
            before: came.restored.before,
            after: came.restored.after,
            photos: came.photos,
            photos_missing: came.missing,
            sentences: came.sentences(&words),
        })
    }

    fn write_backup(&self, into: &Path, watch: &dyn Watch) -> Result<(BackedUp, i64), StoreError> {
        let photos: Vec<(Digest, PathBuf)> = self
            .book
            .photos
            .keys()
            // One that is gone is told by its missing file.
            .map(|id| (*id, self.photos.path(*id, Rendition::Original).unwrap_or_default()))
            .collect();
        let begun = self.host.clock();
        let done = self.store.back_up_watched(into, &photos, self.safekeeping.lock.as_ref(), begun, watch)?;
        Ok((done, self.host.clock().unix_ms().saturating_sub(begun.unix_ms()).max(0)))
    }

    /// Notes how a backup went.
    fn noted(&mut self, done: Result<(BackedUp, i64), StoreError>) {
        let at = self.host.clock();
        match done {
            Ok((done, took_ms)) => {
                self.safekeeping.failed = None;
                self.safekeeping.good = Some(Good {
                    file: done.path,
                    at,
                    entries: done.entries,
                    photos: done.photos,
                    arrived: done.entries,
                    took_ms,
                });
            }
            Err(why) => self.safekeeping.failed = Some(Failed { at, why }),
        }
    }
}

impl CameBack {
    /// What came, for a person.
    pub(super) fn sentences(&self, words: &Words) -> Vec<String> {
        let mut said = vec![self.restored.say(words)];
        for (id, count) in [("restored-photos", self.photos), ("restored-photos-missing", self.missing)] {
            if count > 0 {
                said.push(words.text(id, &[("count", count.into())]));
            }
        }
        said
    }
}
