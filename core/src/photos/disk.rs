use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;
use std::time::SystemTime;

/// What keeping a photo asks of the file system, one method for each thing that can fail.
///
/// Every method does the real thing unless it is replaced, so that a check can make any single step fail.
pub trait Disk: Send + Sync {
    /// Makes a new file for writing; fails when there is one.
    ///
    /// # Errors
    /// Those of the operating system, as for every method here.
    fn create(&self, path: &Path) -> io::Result<File> {
        File::options().write(true).create_new(true).open(path)
    }

    /// Writes some of the bytes and says how many.
    fn write(&self, file: &mut File, bytes: &[u8]) -> io::Result<usize> {
        file.write(bytes)
    }

    /// Notes on the file when it was taken in.
    fn stamp(&self, file: &File, at: SystemTime) -> io::Result<()> {
        file.set_modified(at)
    }

    /// Waits until the file's bytes are on the medium.
    fn sync(&self, file: &File) -> io::Result<()> {
        file.sync_all()
    }

    /// Gives a finished file its name, over an older one of that name.
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    /// Waits until a folder's names are on the medium.
    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        File::open(folder)?.sync_all()
    }

    /// Removes a file.
    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }
}

/// The device's own file system.
#[derive(Debug, Clone, Copy, Default)]
pub struct RealDisk;

impl Disk for RealDisk {}
