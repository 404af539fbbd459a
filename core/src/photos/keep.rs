//! Files that are either whole and named, or not there.

use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, SystemTime};

use super::disk::Disk;
use crate::calendar::Moment;

/// A file that is being written, under a name that no photo has. Dropped before it is placed, it is removed.
pub(super) struct Unfinished<'a> {
    disk: &'a dyn Disk,
    path: PathBuf,
    file: File,
    placed: bool,
}

/// Tells apart the files that one process writes.
static COUNT: AtomicU64 = AtomicU64::new(0);

impl<'a> Unfinished<'a> {
    pub fn begin(disk: &'a dyn Disk, folder: &Path) -> io::Result<Self> {
        loop {
            let count = COUNT.fetch_add(1, Ordering::Relaxed);
            let path = folder.join(format!("{}-{count}.part", std::process::id()));
            match disk.create(&path) {
                Ok(file) => return Ok(Self { disk, path, file, placed: false }),
                // Left by an earlier process of the same number, until it is swept.
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
                Err(error) => return Err(error),
            }
        }
    }

    /// Opens what was written so far for reading.
    pub fn reread(&self) -> io::Result<File> {
        File::open(&self.path)
    }

    /// Waits until the bytes are on the medium; then the file may be placed.
    pub fn finish(&mut self, at: Option<Moment>) -> io::Result<()> {
        if let Some(at) = at {
            self.disk.stamp(&self.file, system_time(at))?;
        }
        self.disk.sync(&self.file)
    }

    /// Gives the file its name. The folder still has to be synced.
    pub fn place(mut self, path: &Path) -> io::Result<()> {
        self.disk.rename(&self.path, path)?;
        self.placed = true;
        Ok(())
    }
}

impl Write for Unfinished<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.disk.write(&mut self.file, bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl Drop for Unfinished<'_> {
    fn drop(&mut self) {
        if !self.placed {
            // What can't be removed now is swept later.
            let _ = self.disk.remove(&self.path);
        }
    }
}

/// The caller's moment as file systems note it.
pub(super) fn system_time(at: Moment) -> SystemTime {
    SystemTime::UNIX_EPOCH + Duration::from_millis(u64::try_from(at.unix_ms()).unwrap_or(0))
}

/// How old a file is by the caller's clock; nothing when the clock went back since.
pub(super) fn age(path: &Path, now: Moment) -> io::Result<Duration> {
    let stamped = fs::metadata(path)?.modified()?;
    Ok(system_time(now).duration_since(stamped).unwrap_or_default())
}

/// A file's digest, read in pieces.
pub(super) fn digest(file: &mut impl Read) -> io::Result<crate::ident::Digest> {
    let mut hasher = blake3::Hasher::new();
    io::copy(file, &mut hasher)?;
    finished(&hasher)
}

/// The digest that a hasher holds, in the book's own type.
pub(super) fn finished(hasher: &blake3::Hasher) -> io::Result<crate::ident::Digest> {
    crate::ident::Digest::from_bytes(hasher.finalize().as_bytes()).map_err(io::Error::other)
}
