use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::decode::{Pixels, Trouble, decode_bytes};
use super::error::{Damage, Doing, PhotoError, Problem, Refusal};
use super::keep::digest;
use super::reduce::{reduce, turn, write};
use super::{Format, Photos, Rendition, seal};
use crate::entry::CoverBox;
use crate::ident::Digest;

/// The gray of what is covered: neither a dark tire's nor a light car's.
const COVER: u8 = 0x70;

/// JPEG quality of a full-size copy for sharing.
const SHARED_QUALITY: u8 = 90;

/// What a check of photos found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Checked {
    /// Photos whose original is whole.
    pub whole: usize,
    /// Everything that is not as it was kept.
    pub problems: Vec<Problem>,
}

impl Photos {
    /// Where a photo's file is, for a screen to show.
    ///
    /// A rendition is looked at first, and made again when it is missing or damaged. The original's bytes are not
    /// compared here; [`check`](Self::check) does that.
    ///
    /// # Errors
    /// When the photo is gone, or a rendition had to be made again and could not.
    pub fn path(&self, id: Digest, rendition: Rendition) -> Result<PathBuf, PhotoError> {
        if rendition == Rendition::Original {
            return self.original(id).map(|(path, _)| path).ok_or(missing(id));
        }
        self.read(id, rendition)?;
        Ok(self.rendition_path(id, rendition))
    }

    /// A photo's bytes, proven to be those that were kept. A rendition that is missing or damaged is made again.
    ///
    /// # Errors
    /// When the photo is gone or changed, can't be read, or a rendition had to be made again and could not.
    pub fn read(&self, id: Digest, rendition: Rendition) -> Result<Vec<u8>, PhotoError> {
        if rendition == Rendition::Original {
            return self.read_original(id);
        }
        match fs::read(self.rendition_path(id, rendition)).ok().and_then(|sealed| seal::open(id, rendition, sealed)) {
            Some(picture) => Ok(picture),
            None => self.remake(id, rendition),
        }
    }

    /// A copy to give away: a JPEG of nothing but the picture, upright; no place, no device, no time, no preview.
    ///
    /// The original is decoded and written again, at most 6000 pixels on its longest side, so that nothing that
    /// hides in its file can come along.
    ///
    /// # Errors
    /// As [`read`](Self::read).
    pub fn share(&self, id: Digest, rendition: Rendition) -> Result<Vec<u8>, PhotoError> {
        self.share_covered(id, rendition, &[])
    }

    /// As [`share`](Self::share), with parts filled so that nothing of them is in the copy. The copy is made from the
    /// original, which stays as it is. A box that reaches beyond the photo covers up to its edge.
    ///
    /// # Errors
    /// As [`read`](Self::read).
    pub fn share_covered(&self, id: Digest, rendition: Rendition, covers: &[CoverBox]) -> Result<Vec<u8>, PhotoError> {
        if rendition != Rendition::Original && covers.is_empty() {
            return self.read(id, rendition);
        }
        let bytes = self.read_original(id)?;
        let format = Format::sniff(&bytes).map_err(PhotoError::Refused)?;
        let edge = rendition.edge();
        let decoded = decode_bytes(format, &bytes, edge).map_err(|trouble| match trouble {
            Trouble::Refused(refusal) => PhotoError::Refused(refusal),
            Trouble::Read(source) => PhotoError::Storage { doing: Doing::ReadingKept, source },
        })?;
        drop(bytes);
        let (orientation, stored) = (decoded.notes.orientation, (decoded.width, decoded.height));
        let pixels = match decoded.pixels {
            large if large.width.max(large.height) > edge => reduce(&large, edge),
            fitting => Some(fitting),
        };
        let upright = if orientation.swaps_sides() { (stored.1, stored.0) } else { stored };
        let covered = |pixels| {
            let mut turned = turn(pixels, orientation);
            covers.iter().for_each(|part| cover(&mut turned, *part, upright));
            write(&turned, SHARED_QUALITY)
        };
        pixels.and_then(covered).ok_or(PhotoError::Refused(Refusal::Damaged { format }))
    }

    /// Width and height of a photo as it came, seen upright, in pixels.
    ///
    /// # Errors
    /// As [`read`](Self::read).
    pub fn size(&self, id: Digest) -> Result<(u32, u32), PhotoError> {
        let bytes = self.read_original(id)?;
        let format = Format::sniff(&bytes).map_err(PhotoError::Refused)?;
        let decoded = decode_bytes(format, &bytes, Rendition::Small.edge()).map_err(|trouble| match trouble {
            Trouble::Refused(refusal) => PhotoError::Refused(refusal),
            Trouble::Read(source) => PhotoError::Storage { doing: Doing::ReadingKept, source },
        })?;
        let swapped = decoded.notes.orientation.swaps_sides();
        Ok(if swapped { (decoded.height, decoded.width) } else { (decoded.width, decoded.height) })
    }

    /// Every photo in the folder, whether an entry names it or not, in order.
    ///
    /// # Errors
    /// When the folder can't be read.
    pub fn kept(&self) -> Result<Vec<Digest>, PhotoError> {
        let mut found: Vec<Digest> =
            self.listed(&self.originals())?.iter().filter_map(|path| original_name(path)).collect();
        found.sort();
        found.dedup();
        Ok(found)
    }

    /// Compares the bytes of these photos with their names, and their renditions with their seals.
    ///
    /// Nothing is changed. Call it with a few at a time to show how far it is.
    pub fn check(&self, ids: impl IntoIterator<Item = Digest>) -> Checked {
        let mut checked = Checked { whole: 0, problems: Vec::new() };
        for id in ids {
            let damage = match self.original(id) {
                None => Some(Damage::Missing),
                Some((path, _)) => match File::open(path).and_then(|mut file| digest(&mut file)) {
                    Ok(found) => (found != id).then_some(Damage::Changed),
                    Err(_) => Some(Damage::Unreadable),
                },
            };
            match damage {
                None => checked.whole += 1,
                Some(damage) => checked.problems.push(Problem { id, rendition: Rendition::Original, damage }),
            }
            for rendition in [Rendition::Large, Rendition::Small] {
                let damage = match fs::read(self.rendition_path(id, rendition)) {
                    Ok(sealed) => seal::open(id, rendition, sealed).is_none().then_some(Damage::Changed),
                    Err(error) if error.kind() == io::ErrorKind::NotFound => Some(Damage::Missing),
                    Err(_) => Some(Damage::Unreadable),
                };
                checked.problems.extend(damage.map(|damage| Problem { id, rendition, damage }));
            }
        }
        checked
    }

    /// The original's file and format, where there is one.
    pub(super) fn original(&self, id: Digest) -> Option<(PathBuf, Format)> {
        Format::ALL.into_iter().map(|format| (self.original_path(id, format), format)).find(|(path, _)| path.is_file())
    }

    pub(super) fn read_original(&self, id: Digest) -> Result<Vec<u8>, PhotoError> {
        let (path, _) = self.original(id).ok_or(missing(id))?;
        let bytes = fs::read(path).map_err(PhotoError::storage(Doing::ReadingKept, 1 << 20))?;
        if Digest::of(&bytes) == id { Ok(bytes) } else { Err(PhotoError::Lost { id, damage: Damage::Changed }) }
    }

    /// The files of a folder.
    pub(super) fn listed(&self, folder: &Path) -> Result<Vec<PathBuf>, PhotoError> {
        fs::read_dir(folder)
            .and_then(|entries| entries.map(|entry| entry.map(|entry| entry.path())).collect())
            .map_err(PhotoError::storage(Doing::ReadingKept, 1 << 20))
    }
}

/// Fills a part, given in pixels of the whole photo seen upright, with one gray.
fn cover(pixels: &mut Pixels, part: CoverBox, (whole_width, whole_height): (u32, u32)) {
    // Every pixel of the copy that holds anything of the part: rounded outward, and one more, as
    // reducing mixes neighbors.
    let range = |from: u32, length: u32, whole: u32, side: u32| {
        let (whole, side) = (u64::from(whole.max(1)), u64::from(side));
        let begin = (u64::from(from) * side / whole).saturating_sub(1).min(side);
        let end = ((u64::from(from) + u64::from(length)) * side).div_ceil(whole).saturating_add(1).min(side);
        usize::try_from(begin).unwrap_or(0)..usize::try_from(end).unwrap_or(0)
    };
    let columns = range(part.left, part.width, whole_width, pixels.width);
    let rows = range(part.top, part.height, whole_height, pixels.height);
    let line = usize::try_from(pixels.width).unwrap_or(0) * 3;
    for row in rows {
        let (begin, end) = (row * line + columns.start * 3, row * line + columns.end * 3);
        if let Some(filled) = pixels.rgb.get_mut(begin..end) {
            filled.fill(COVER);
        }
    }
}

fn missing(id: Digest) -> PhotoError {
    PhotoError::Lost { id, damage: Damage::Missing }
}

/// The photo that a file in `originals/` is, by its name.
pub(super) fn original_name(path: &Path) -> Option<Digest> {
    let extension = path.extension()?.to_str()?;
    Format::ALL.iter().find(|format| format.extension() == extension)?;
    path.file_stem()?.to_str()?.parse().ok()
}
