//! A photo's pixels, upright, for reading what is on it.

use std::fs::{self, File};
use std::path::Path;

use super::Format;
use super::decode::{Decoded, Pixels, Trouble, decode};
use super::error::{Doing, PhotoError, Refusal};
use super::intake::admit;
use super::judge::{Judgement, judge};
use super::limits::{FINE, LARGE};
use super::reduce::{reduce, turn};

/// Upright pixels of a photo that was not taken in.
pub struct Upright {
    /// Width of the photo itself, seen upright.
    pub width: u32,
    /// Height of the photo itself, seen upright.
    pub height: u32,
    pixels: Pixels,
}

impl std::fmt::Debug for Upright {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Upright").field("width", &self.width).field("height", &self.height).finish_non_exhaustive()
    }
}

impl Upright {
    /// Opens a photo, which stays where it is, and decodes it so that its longest side has at least [`FINE`] pixels,
    /// where it has that many.
    ///
    /// # Errors
    /// The refusal that fits the file, or storage that can't be read.
    pub fn open(path: &Path) -> Result<Self, PhotoError> {
        use std::io::{Read, Seek, SeekFrom};
        let unreachable = |_| PhotoError::Refused(Refusal::Unreachable);
        // Asked before opening: opening a pipe would wait for its writer.
        match fs::metadata(path).map_err(unreachable)? {
            about if about.is_file() => admit(about.len())?,
            _ => return Err(PhotoError::Refused(Refusal::NotAPicture)),
        }
        let storage = |source| PhotoError::Storage { doing: Doing::ReadingSource, source };
        let mut file = File::open(path).map_err(unreachable)?;
        let mut start = Vec::with_capacity(64);
        file.by_ref().take(64).read_to_end(&mut start).map_err(storage)?;
        let format = Format::sniff(&start).map_err(PhotoError::Refused)?;
        file.seek(SeekFrom::Start(0)).map_err(storage)?;
        Self::of(decode(format, file, FINE)).map_err(|trouble| match trouble {
            Trouble::Refused(refusal) => PhotoError::Refused(refusal),
            Trouble::Read(source) => storage(source),
        })
    }

    fn of(decoded: Result<Decoded, Trouble>) -> Result<Self, Trouble> {
        let Decoded { width, height, notes, pixels } = decoded?;
        let (width, height) = if notes.orientation.swaps_sides() { (height, width) } else { (width, height) };
        Ok(Self { width, height, pixels: turn(pixels, notes.orientation) })
    }

    /// Width, height, and red, green and blue of each decoded pixel.
    pub fn rgb(&self) -> (u32, u32, &[u8]) {
        (self.pixels.width, self.pixels.height, &self.pixels.rgb)
    }

    /// Whether it is worth reading: sharp enough, light enough.
    pub fn judgement(&self) -> Judgement {
        let side = self.width.max(self.height);
        match reduce(&self.pixels, LARGE) {
            Some(large) => judge(&large, side),
            None => judge(&self.pixels, side),
        }
    }
}
