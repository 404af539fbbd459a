//! Backups: one zip file with every entry and every photo, read back when it is written.
//!
//! Format 2, for anyone who reads it with other means:
//!
//! | name in the archive | what |
//! | --- | --- |
//! | `manifest.json` | format, version, when made, ends of all streams, digests of `entries.jsonl` and `seals.jsonl`, each photo's digest and length |
//! | `entries.jsonl` | a line for each entry, in the order they came in: `entry`, its stored text; `digest`, BLAKE3 of that text; `personal`, what stands beside it (format 1 had no drawn signatures); `erased`, true when that was erased |
//! | `seals.jsonl` | a line for each seal: `seal`, its signed text; `signature`, Ed25519 of that text by the device it names; not there in a book without seals |
//! | `photos/<digest>` | each photo as it was taken, named by its BLAKE3 digest |
//!
//! A backup that is locked with a passphrase is a zip file too, with another inside;
//! [`lock`](super::lock) says how it is opened by other means.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io::{self, BufRead, BufReader, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use zip::result::ZipError;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use super::error::{Mend, StoreError, Watch, piece};
use super::lock::{self, BackupLock, Opener};
use super::problem::Missing;
use crate::calendar::Moment;
use crate::entry::{Entry, Head, Personal};
use crate::ident::{Digest, EntryId};
use crate::proof::{Seal, Signature};

/// The version of backups that this build writes, and the newest it reads.
const VERSION: u32 = 2;
const FORMAT: &str = "lugbook-backup";
const MANIFEST: &str = "manifest.json";
const ENTRIES: &str = "entries.jsonl";
const SEALS: &str = "seals.jsonl";

/// The largest manifest that is read, in bytes: far more than a million photos need.
const MANIFEST_LIMIT: u64 = 256 << 20;
/// The longest line of an entry that is read, in bytes.
const LINE_LIMIT: u64 = 16 << 20;

/// The largest photo that is read, in bytes: far more than is ever taken in.
const PHOTO_LIMIT: u64 = 256 << 20;

/// A photo in a backup.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct KeptPhoto {
    /// The photo's name: the digest of its bytes.
    pub digest: Digest,
    /// Its length in bytes.
    pub bytes: u64,
}

/// What a backup says of itself.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Manifest {
    format: String,
    version: u32,
    made: Moment,
    entries: u64,
    digest: Digest,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    seals: Option<Digest>,
    heads: Vec<Head>,
    missing: Vec<Missing>,
    photos: Vec<KeptPhoto>,
}

#[derive(Serialize, Deserialize)]
struct Line {
    entry: String,
    digest: Digest,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    personal: Option<Personal>,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    erased: bool,
}

#[derive(Serialize, Deserialize)]
struct SealLine {
    seal: String,
    signature: Signature,
}

/// Everything that goes into a backup, read at one moment.
pub(super) struct Content {
    pub(super) entries: Vec<Entry>,
    pub(super) seals: Vec<Seal>,
    pub(super) erased: Vec<EntryId>,
    pub(super) heads: Vec<Head>,
    pub(super) missing: Vec<Missing>,
}

/// A backup that was written and read back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BackedUp {
    /// The file.
    pub path: PathBuf,
    /// How many entries are in it.
    pub entries: u64,
    /// How many photos are in it.
    pub photos: u64,
    /// Photos that could not be read, or are not what they were; they are not in it.
    pub photos_missing: Vec<Digest>,
    /// Older backups of this device that were thinned out.
    pub thinned: Vec<PathBuf>,
}

/// A backup whose every entry was verified.
pub struct Backup {
    archive: ZipArchive<BufReader<File>>,
    path: PathBuf,
    manifest: Manifest,
    pub(super) entries: Vec<Entry>,
    pub(super) seals: Vec<Seal>,
    pub(super) erased: Vec<EntryId>,
}

impl std::fmt::Debug for Backup {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Backup").field("path", &self.path).field("entries", &self.entries.len()).finish_non_exhaustive()
    }
}

impl Backup {
    /// Opens a backup and verifies every entry in it. Photos are verified as they are read.
    ///
    /// # Errors
    /// [`Mend::NotABackup`], [`Mend::NewerBackup`], [`Mend::BackupDamaged`] with
    /// the place in the archive; [`Mend::Locked`] when it takes a passphrase.
    pub fn open(path: &Path) -> Result<Self, StoreError> {
        let archive = archive(path)?;
        if lock::is_locked(&archive) {
            return Err(StoreError::mend(Mend::Locked { path: path.to_owned() }));
        }
        Self::read(archive, path)
    }

    /// Opens a backup that may be locked with a passphrase. What is in it lies for
    /// that time in a file without a name in the folder `scratch`.
    ///
    /// # Errors
    /// As [`open`](Self::open), and [`Mend::WrongPassphrase`].
    pub fn unlock(path: &Path, passphrase: &str, scratch: &Path) -> Result<Self, StoreError> {
        Self::open_by(path, Opener::Passphrase(passphrase), scratch)
    }

    /// Opens a backup, locked by this device's own lock or not at all.
    pub(super) fn open_by(path: &Path, opener: Opener<'_>, scratch: &Path) -> Result<Self, StoreError> {
        let mut archive = archive(path)?;
        if lock::is_locked(&archive) {
            let inner = lock::open(&mut archive, path, opener, scratch)?;
            let damaged = || damaged(path, lock::SEALED);
            archive = ZipArchive::new(BufReader::new(inner)).map_err(|why| unopened(why, path, damaged()))?;
        }
        Self::read(archive, path)
    }

    fn read(mut archive: ZipArchive<BufReader<File>>, path: &Path) -> Result<Self, StoreError> {
        let manifest = read_manifest(&mut archive, path)?;
        let (entries, erased) = read_entries(&mut archive, path, &manifest)?;
        let seals = read_seals(&mut archive, path, &manifest)?;
        Ok(Self { archive, path: path.to_owned(), manifest, entries, seals, erased })
    }

    /// The newest backup in a folder that holds, whatever device made it; locked
    /// ones only when `lock` opens them.
    ///
    /// # Errors
    /// When the folder can't be read.
    pub fn newest(folder: &Path, lock: Option<&BackupLock>, scratch: &Path) -> Result<Option<Self>, StoreError> {
        let mut named = list(folder)?;
        named.sort_by_key(|(made, path)| (*made, path.clone()));
        Ok(named.iter().rev().find_map(|(_, path)| {
            let opened = match lock {
                Some(lock) => Self::open_by(path, Opener::Own(lock), scratch),
                None => Self::open(path),
            };
            let mut backup = opened.ok()?;
            backup.verify_photos().is_ok().then_some(backup)
        }))
    }

    /// When it was made, by the device's clock.
    pub fn made(&self) -> Moment {
        self.manifest.made
    }

    /// The entries, in the order they came in.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The photos.
    pub fn photos(&self) -> &[KeptPhoto] {
        &self.manifest.photos
    }

    /// The seals over them, each with its signature verified.
    pub fn seals(&self) -> &[Seal] {
        &self.seals
    }

    /// What was known to be missing from the book.
    pub fn missing(&self) -> &[Missing] {
        &self.manifest.missing
    }

    /// The bytes of a photo, as it was taken.
    ///
    /// # Errors
    /// [`Mend::BackupDamaged`] when it is not there or not what it was.
    pub fn photo(&mut self, photo: &KeptPhoto) -> Result<Vec<u8>, StoreError> {
        let name = photo_name(&photo.digest);
        let damaged = || damaged(&self.path, &name);
        if photo.bytes > PHOTO_LIMIT {
            return Err(damaged());
        }
        let file = self.archive.by_name(&name).map_err(|why| unopened(why, &self.path, damaged()))?;
        let mut bytes = Vec::new();
        // Never more than the manifest says, whatever the archive holds.
        file.take(photo.bytes.saturating_add(1))
            .read_to_end(&mut bytes)
            .map_err(|why| unread(&why, &self.path, &name))?;
        if Digest::of(&bytes) == photo.digest { Ok(bytes) } else { Err(damaged()) }
    }

    /// Reads every photo.
    ///
    /// # Errors
    /// As [`Backup::photo`], with the first that does not hold.
    pub fn verify_photos(&mut self) -> Result<(), StoreError> {
        for photo in self.manifest.photos.clone() {
            self.photo(&photo)?;
        }
        Ok(())
    }
}

fn archive(path: &Path) -> Result<ZipArchive<BufReader<File>>, StoreError> {
    let stranger = || StoreError::mend(Mend::NotABackup { path: path.to_owned() });
    let unreachable = |why: io::Error| match why.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory | io::ErrorKind::InvalidFilename => {
            StoreError::mend(Mend::Unreachable { path: path.to_owned() })
        }
        _ => StoreError::io(&why, path),
    };
    // Asked before opening: opening a pipe would wait for its writer.
    if !fs::metadata(path).map_err(unreachable)?.is_file() {
        return Err(stranger());
    }
    let file = File::open(path).map_err(unreachable)?;
    ZipArchive::new(BufReader::new(file)).map_err(|why| unopened(why, path, stranger()))
}

pub(super) fn damaged(path: &Path, at: &str) -> StoreError {
    StoreError::mend(Mend::BackupDamaged { path: path.to_owned(), at: at.to_owned() })
}

/// What could not be found in an archive: the storage failed, or else it is `otherwise`.
pub(super) fn unopened(why: ZipError, path: &Path, otherwise: StoreError) -> StoreError {
    match why {
        ZipError::Io(why) if why.raw_os_error().is_some() => StoreError::io(&why, path),
        _ => otherwise,
    }
}

/// What could not be read: the storage failed, or else the archive is damaged there.
pub(super) fn unread(why: &io::Error, path: &Path, at: &str) -> StoreError {
    if why.raw_os_error().is_some() { StoreError::io(why, path) } else { damaged(path, at) }
}

fn photo_name(digest: &Digest) -> String {
    format!("photos/{digest}")
}

fn read_manifest(archive: &mut ZipArchive<impl Read + Seek>, path: &Path) -> Result<Manifest, StoreError> {
    #[derive(Deserialize)]
    struct Version {
        format: String,
        version: u32,
    }
    let stranger = || StoreError::mend(Mend::NotABackup { path: path.to_owned() });
    let file = archive.by_name(MANIFEST).map_err(|why| unopened(why, path, stranger()))?;
    let mut text = Vec::new();
    file.take(MANIFEST_LIMIT).read_to_end(&mut text).map_err(|why| unread(&why, path, MANIFEST))?;
    let said: Version = serde_json::from_slice(&text).map_err(|_| damaged(path, MANIFEST))?;
    if said.format != FORMAT {
        return Err(stranger());
    }
    if said.version > VERSION {
        return Err(StoreError::mend(Mend::NewerBackup { version: said.version, known: VERSION }));
    }
    serde_json::from_slice(&text).map_err(|_| damaged(path, MANIFEST))
}

fn read_entries(
    archive: &mut ZipArchive<impl Read + Seek>,
    path: &Path,
    manifest: &Manifest,
) -> Result<(Vec<Entry>, Vec<EntryId>), StoreError> {
    let damaged_at = |line: usize| damaged(path, &format!("{ENTRIES}:{line}"));
    let file = archive.by_name(ENTRIES).map_err(|why| unopened(why, path, damaged(path, ENTRIES)))?;
    let mut file = BufReader::new(file);
    let mut hasher = blake3::Hasher::new();
    let (mut entries, mut erased) = (Vec::new(), Vec::new());
    let (mut line, mut digests) = (Vec::new(), BTreeSet::new());
    for number in 1_usize.. {
        line.clear();
        let read = file
            .by_ref()
            .take(LINE_LIMIT)
            .read_until(b'\n', &mut line)
            .map_err(|why| unread(&why, path, &format!("{ENTRIES}:{number}")))?;
        if read == 0 {
            break;
        }
        hasher.update(&line);
        let said: Line = serde_json::from_slice(&line).map_err(|_| damaged_at(number))?;
        let entry = Entry::open(said.entry.into_bytes(), said.digest, said.personal).map_err(|why| match why {
            crate::entry::Broken::Newer { .. } | crate::entry::Broken::Unreadable { .. } => {
                StoreError::mend(Mend::newer_entry(&why))
            }
            _ => damaged_at(number),
        })?;
        if said.erased {
            erased.push(entry.id());
        }
        // A line that comes again and again would fill the memory from a small file.
        if !digests.insert(entry.digest()) {
            return Err(damaged_at(number));
        }
        entries.push(entry);
    }
    let right = hasher.finalize().as_bytes() == manifest.digest.as_bytes();
    // And it reaches the end of each stream that it names.
    let right = right && manifest.heads.iter().filter_map(|head| head.digest).all(|end| digests.contains(&end));
    if !right || u64::try_from(entries.len()) != Ok(manifest.entries) {
        return Err(damaged(path, ENTRIES));
    }
    Ok((entries, erased))
}

/// The seals, each verified; they are held against the entries when they are taken in.
fn read_seals(
    archive: &mut ZipArchive<impl Read + Seek>,
    path: &Path,
    manifest: &Manifest,
) -> Result<Vec<Seal>, StoreError> {
    let Some(digest) = manifest.seals else { return Ok(Vec::new()) };
    let file = archive.by_name(SEALS).map_err(|why| unopened(why, path, damaged(path, SEALS)))?;
    let mut text = Vec::new();
    file.take(MANIFEST_LIMIT).read_to_end(&mut text).map_err(|why| unread(&why, path, SEALS))?;
    if Digest::of(&text) != digest {
        return Err(damaged(path, SEALS));
    }
    let mut seals = Vec::new();
    for (number, line) in (1_usize..).zip(text.split_inclusive(|byte| *byte == b'\n')) {
        let damaged = || damaged(path, &format!("{SEALS}:{number}"));
        let said: SealLine = serde_json::from_slice(line).map_err(|_| damaged())?;
        seals.push(Seal::open(said.seal.into_bytes(), said.signature).map_err(|_| damaged())?);
    }
    Ok(seals)
}

/// Writes a backup under another name, reads it back, and only then gives it its name.
pub(super) fn write(
    into: &Path,
    content: &Content,
    photos: (&[(Digest, PathBuf)], &dyn Watch),
    (lock, scratch): (Option<&BackupLock>, &Path),
    device: &str,
    now: Moment,
) -> Result<BackedUp, StoreError> {
    if !into.is_dir() {
        return Err(StoreError::mend(Mend::NoBackupFolder { path: into.to_owned() }));
    }
    let name = format!("lugbook-{}-{}-{device}.zip", now.day(), now.unix_ms());
    let path = into.join(&name);
    let part = into.join(format!(".{name}.part"));
    let io = |why: io::Error| StoreError::io(&why, into);
    let written = match lock {
        None => File::create(&part).map_err(io).and_then(|file| fill(file, &part, content, photos, now)),
        Some(lock) => lock::without_name(scratch).and_then(|plain| {
            let inner = plain.try_clone().map_err(|why| StoreError::io(&why, scratch))?;
            let filled = fill(inner, scratch, content, photos, now)?;
            lock.close(plain, &part, scratch, now)?;
            Ok(filled)
        }),
    };
    let made = written.and_then(|(kept, photos_missing)| {
        let mut back = match lock {
            None => Backup::open(&part)?,
            Some(lock) => Backup::open_by(&part, Opener::Own(lock), scratch)?,
        };
        back.verify_photos()?;
        if back.entries != content.entries || back.seals != content.seals || back.photos() != kept {
            return Err(damaged(&path, ENTRIES));
        }
        fs::rename(&part, &path).map_err(io)?;
        #[cfg(unix)]
        File::open(into).and_then(|folder| folder.sync_all()).map_err(io)?;
        Ok((kept, photos_missing))
    });
    let (kept, photos_missing) = match made {
        Ok(made) => made,
        Err(why) => {
            // Half a backup is none; what remains of it is in the way of the next.
            let _ = fs::remove_file(&part);
            return Err(why);
        }
    };
    let thinned = thin(into, device, now)?;
    let count = |length: usize| u64::try_from(length).unwrap_or(u64::MAX);
    Ok(BackedUp { path, entries: count(content.entries.len()), photos: count(kept.len()), photos_missing, thinned })
}

fn fill(
    file: File,
    part: &Path,
    content: &Content,
    (photos, watch): (&[(Digest, PathBuf)], &dyn Watch),
    now: Moment,
) -> Result<(Vec<KeptPhoto>, Vec<Digest>), StoreError> {
    let io = |why: io::Error| StoreError::io(&why, part);
    let zip = |why: ZipError| match why {
        ZipError::Io(why) => StoreError::io(&why, part),
        other => StoreError::report(other),
    };
    let mut archive = ZipWriter::new(Steady::new(file));
    let packed = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated).large_file(true);
    // Photos do not get smaller.
    let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored).large_file(true);

    archive.start_file(ENTRIES, packed).map_err(zip)?;
    let mut hasher = blake3::Hasher::new();
    for entry in &content.entries {
        let text = std::str::from_utf8(entry.bytes()).map_err(StoreError::report)?;
        let line = Line {
            entry: text.to_owned(),
            digest: entry.digest(),
            personal: entry.personal().cloned(),
            erased: content.erased.contains(&entry.id()),
        };
        let mut line = serde_json::to_vec(&line).map_err(StoreError::report)?;
        line.push(b'\n');
        hasher.update(&line);
        archive.write_all(&line).map_err(io)?;
    }
    let mut sealed = Vec::new();
    for seal in &content.seals {
        let text = std::str::from_utf8(seal.bytes()).map_err(StoreError::report)?;
        let line = SealLine { seal: text.to_owned(), signature: seal.signature() };
        serde_json::to_writer(&mut sealed, &line).map_err(StoreError::report)?;
        sealed.push(b'\n');
    }
    if !sealed.is_empty() {
        archive.start_file(SEALS, packed).map_err(zip)?;
        archive.write_all(&sealed).map_err(io)?;
    }
    let (mut kept, mut missing) = (Vec::new(), Vec::new());
    let photos: BTreeMap<_, _> = photos.iter().map(|(digest, path)| (*digest, path)).collect();
    let of = photos.len();
    for (done, (digest, path)) in photos.into_iter().enumerate() {
        piece(watch, done, of)?;
        let Some(bytes) = fs::read(path).ok().filter(|bytes| Digest::of(bytes) == digest) else {
            missing.push(digest);
            continue;
        };
        archive.start_file(photo_name(&digest), stored).map_err(zip)?;
        archive.write_all(&bytes).map_err(io)?;
        kept.push(KeptPhoto { digest, bytes: u64::try_from(bytes.len()).unwrap_or(u64::MAX) });
    }
    let manifest = Manifest {
        format: FORMAT.to_owned(),
        version: VERSION,
        made: now,
        entries: u64::try_from(content.entries.len()).unwrap_or(u64::MAX),
        digest: Digest::from_bytes(hasher.finalize().as_bytes()).map_err(StoreError::report)?,
        seals: (!sealed.is_empty()).then(|| Digest::of(&sealed)),
        heads: content.heads.clone(),
        missing: content.missing.clone(),
        photos: kept.clone(),
    };
    archive.start_file(MANIFEST, packed).map_err(zip)?;
    serde_json::to_writer(&mut archive, &manifest).map_err(|why| match why.io_error_kind() {
        Some(kind) => io(io::Error::from(kind)),
        None => StoreError::report(why),
    })?;
    let file = archive.finish().map_err(zip)?.end().map_err(io)?;
    file.sync_all().map_err(io)?;
    Ok((kept, missing))
}

/// A file whose first failure is told at the end, and which takes whatever
/// comes after it: an archive that is told in between cannot be relied on to
/// let go of it.
pub(super) struct Steady {
    file: File,
    at: u64,
    end: u64,
    failed: Option<io::Error>,
}

impl Steady {
    pub(super) fn new(file: File) -> Self {
        Self { file, at: 0, end: 0, failed: None }
    }

    pub(super) fn end(self) -> io::Result<File> {
        match self.failed {
            Some(why) => Err(why),
            None => Ok(self.file),
        }
    }

    fn note(&mut self, why: io::Error) {
        self.failed.get_or_insert(why);
    }
}

impl Write for Steady {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let mut count = bytes.len();
        if self.failed.is_none() {
            match self.file.write(bytes) {
                Ok(written) => count = written,
                Err(why) if why.kind() == io::ErrorKind::Interrupted => return Err(why),
                Err(why) => self.note(why),
            }
        }
        self.at = self.at.saturating_add(u64::try_from(count).unwrap_or(u64::MAX));
        self.end = self.end.max(self.at);
        Ok(count)
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Seek for Steady {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let at = match to {
            SeekFrom::Start(at) => Some(at),
            SeekFrom::Current(by) => self.at.checked_add_signed(by),
            SeekFrom::End(by) => self.end.checked_add_signed(by),
        };
        self.at = at.ok_or(io::ErrorKind::InvalidInput)?;
        if self.failed.is_none()
            && let Err(why) = self.file.seek(SeekFrom::Start(self.at))
        {
            self.note(why);
        }
        Ok(self.at)
    }
}

/// The backups of a folder with the time in their name.
fn list(folder: &Path) -> Result<Vec<(Moment, PathBuf)>, StoreError> {
    let names = fs::read_dir(folder).map_err(|_| StoreError::mend(Mend::Unreachable { path: folder.to_owned() }))?;
    Ok(names.flatten().filter_map(|name| Some((made(&name.file_name().to_string_lossy())?.0, name.path()))).collect())
}

/// Time and device in a backup's name; `None` for any other file.
fn made(name: &str) -> Option<(Moment, &str)> {
    let (day, rest) = name.strip_prefix("lugbook-")?.strip_suffix(".zip")?.split_at_checked(10)?;
    let (ms, device) = rest.strip_prefix('-')?.split_once('-')?;
    let made = Moment::from_unix_ms(ms.parse().ok()?);
    (made.day().to_string() == day).then_some((made, device))
}

/// Removes what is thinned out of this device's backups.
fn thin(folder: &Path, device: &str, now: Moment) -> Result<Vec<PathBuf>, StoreError> {
    let own: Vec<_> = list(folder)?
        .into_iter()
        .filter(|(_, path)| {
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            made(&name).is_some_and(|(_, of)| of == device)
        })
        .collect();
    let times: Vec<_> = own.iter().map(|(made, _)| *made).collect();
    let mut thinned = Vec::new();
    for (made, path) in own {
        // One that can't be removed now is removed next time.
        if !kept(&times, now).contains(&made) && fs::remove_file(&path).is_ok() {
            thinned.push(path);
        }
    }
    Ok(thinned)
}

/// Which of the backups made at these times are kept at `now`: every one for an
/// hour, the last of each hour for a day, of each day for two weeks, of each
/// week for half a year (182 days); and always the last of all.
///
/// ```
/// use lugbook::calendar::Moment;
/// use lugbook::store::backups_kept;
/// let now = Moment::from_unix_ms(1_000 * 86_400_000);
/// let ago = |hours: i64| Moment::from_unix_ms(now.unix_ms() - hours * 3_600_000);
/// assert_eq!(backups_kept(&[ago(5_000)], now), [ago(5_000)]);
/// assert_eq!(backups_kept(&[ago(5_000), ago(0)], now), [ago(0)]);
/// ```
pub fn kept(times: &[Moment], now: Moment) -> Vec<Moment> {
    const HOUR: i64 = 3_600_000;
    const DAY: i64 = 24 * HOUR;
    let mut sorted = times.to_vec();
    sorted.sort_unstable();
    sorted.dedup();
    let mut last_of = BTreeMap::new();
    for made in sorted {
        let age = now.unix_ms().saturating_sub(made.unix_ms());
        let ms = made.unix_ms();
        let share = match age {
            // A clock that was set back is no reason to remove one.
            _ if age < HOUR => (0, ms),
            _ if age < DAY => (1, ms / HOUR),
            _ if age < 14 * DAY => (2, ms / DAY),
            _ if age < 182 * DAY => (3, ms / (7 * DAY)),
            _ => (4, 0),
        };
        last_of.insert(share, made);
    }
    if last_of.len() > 1 {
        last_of.remove(&(4, 0));
    }
    let mut kept: Vec<_> = last_of.into_values().collect();
    kept.sort_unstable();
    kept
}
