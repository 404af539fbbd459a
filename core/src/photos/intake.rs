use std::fs::{self, File};
use std::io::{Read, Seek, SeekFrom, Write};
use std::path::Path;

use serde::Serialize;

use super::decode::{Decoded, Trouble, decode};
use super::error::{Doing, PhotoError, Refusal};
use super::exif::{Orientation, Taken};
use super::judge::{Judgement, judge};
use super::keep::{Unfinished, digest, finished, system_time};
use super::limits::{LARGE, MAX_BYTES};
use super::reduce::{reduce, turn, write};
use super::{Format, Photos, Rendition, seal};
use crate::calendar::Moment;
use crate::ident::Digest;

/// JPEG quality of the renditions: lettering stays as readable as in the photo.
const QUALITY: u8 = 82;

/// A photo that was taken in, durable when this is returned.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Intake {
    /// The photo's name: the digest of its bytes.
    pub id: Digest,
    /// Bytes in the file.
    pub bytes: u64,
    /// Its format, by content.
    pub format: Format,
    /// Width in pixels, seen upright.
    pub width: u32,
    /// Height in pixels, seen upright.
    pub height: u32,
    /// When the camera says it was taken.
    pub taken: Option<Taken>,
    /// How the stored pixels are turned to be upright.
    pub orientation: Orientation,
    /// Sharp enough, light enough.
    pub judgement: Judgement,
    /// The same photo was here before; it was not stored again.
    pub duplicate: bool,
    /// The same photo was here and its file had been damaged; it is whole again.
    pub mended: bool,
}

/// What one photo becomes before any of it has a name.
struct Made {
    decoded: Decoded,
    judgement: Judgement,
    large: Vec<u8>,
    small: Vec<u8>,
}

impl Photos {
    /// Takes in a photo from a file, which is left where it is.
    ///
    /// When this returns, the photo and its renditions are on the medium, and only then may an entry name it. Until
    /// an entry does, [`sweep`](Self::sweep) leaves it alone for the grace period that starts at `now`.
    ///
    /// # Errors
    /// The refusal that fits the file, a full device, or failing storage; in each case nothing half-written stays.
    pub fn intake_file(&self, path: &Path, now: Moment) -> Result<Intake, PhotoError> {
        let unreachable = |_| PhotoError::Refused(Refusal::Unreachable);
        // Asked before opening: opening a pipe would wait for its writer.
        let bytes = match fs::metadata(path).map_err(unreachable)? {
            about if about.is_file() => about.len(),
            _ => return Err(PhotoError::Refused(Refusal::NotAPicture)),
        };
        admit(bytes)?;
        self.intake(File::open(path).map_err(unreachable)?, bytes, now)
    }

    /// Takes in a photo from memory; otherwise as [`intake_file`](Self::intake_file).
    ///
    /// # Errors
    /// As there.
    pub fn intake_bytes(&self, bytes: &[u8], now: Moment) -> Result<Intake, PhotoError> {
        let length = bytes.len() as u64;
        admit(length)?;
        self.intake(bytes, length, now)
    }

    fn intake(&self, mut source: impl Read, expected: u64, now: Moment) -> Result<Intake, PhotoError> {
        let needed = expected + (1 << 20);
        let writing = PhotoError::storage(Doing::Writing, needed);
        let reading = PhotoError::storage(Doing::ReadingSource, needed);

        let mut start = Vec::with_capacity(64);
        source.by_ref().take(64).read_to_end(&mut start).map_err(&reading)?;
        let format = Format::sniff(&start).map_err(PhotoError::Refused)?;

        let mut original = Unfinished::begin(self.disk(), &self.incoming()).map_err(&writing)?;
        let mut hasher = blake3::Hasher::new();
        let mut bytes = 0;
        let mut piece = start;
        // A file that grows while it is read ends at the limit.
        while !piece.is_empty() && bytes <= MAX_BYTES {
            hasher.update(&piece);
            original.write_all(&piece).map_err(&writing)?;
            bytes += piece.len() as u64;
            piece.clear();
            source.by_ref().take(1 << 18).read_to_end(&mut piece).map_err(&reading)?;
        }
        admit(bytes)?;
        let id = finished(&hasher).map_err(&writing)?;
        drop(piece);

        // The copy is decoded, not the source: it can't change in between.
        let made = make(format, original.reread().map_err(&writing)?).map_err(|trouble| match trouble {
            Trouble::Refused(refusal) => PhotoError::Refused(refusal),
            Trouble::Read(error) => writing(error),
        })?;

        let kept = self.original(id);
        let whole = kept.as_ref().is_some_and(|(path, _)| {
            File::open(path).and_then(|mut file| digest(&mut file)).is_ok_and(|found| found == id)
        });
        if !whole {
            original.finish(Some(now)).map_err(&writing)?;
        }
        let renditions = [(Rendition::Large, made.large), (Rendition::Small, made.small)]
            .into_iter()
            .map(|(rendition, picture)| {
                self.finish_rendition(id, rendition, picture, Some(now)).map(|file| (rendition, file))
            })
            .collect::<Result<Vec<_>, _>>()
            .map_err(&writing)?;

        let placing = PhotoError::storage(Doing::Placing, needed);
        let shelf = self.shelf();
        for (rendition, file) in renditions {
            file.place(&self.rendition_path(id, rendition)).map_err(&placing)?;
        }
        self.disk().sync_folder(&self.renditions()).map_err(&placing)?;
        match &kept {
            // Touched, so that a sweep that is due doesn't take it before the new entry names it.
            Some((path, _)) if whole => File::options()
                .append(true)
                .open(path)
                .and_then(|file| self.disk().stamp(&file, system_time(now)))
                .map_err(&placing)?,
            Some((path, _)) => original.place(path).map_err(&placing)?,
            // Placed last: where the original is, all is.
            None => original.place(&self.original_path(id, format)).map_err(&placing)?,
        }
        self.disk().sync_folder(&self.originals()).map_err(&placing)?;
        drop(shelf);

        let Decoded { width, height, notes, .. } = made.decoded;
        let (width, height) = if notes.orientation.swaps_sides() { (height, width) } else { (width, height) };
        Ok(Intake {
            id,
            bytes,
            format,
            width,
            height,
            taken: notes.taken,
            orientation: notes.orientation,
            judgement: made.judgement,
            duplicate: kept.is_some(),
            mended: kept.is_some() && !whole,
        })
    }

    /// Makes a photo's renditions again from its original.
    pub(super) fn remake(&self, id: Digest, rendition: Rendition) -> Result<Vec<u8>, PhotoError> {
        let original = self.read_original(id)?;
        let format = Format::sniff(&original).map_err(PhotoError::Refused)?;
        let made = make(format, std::io::Cursor::new(original)).map_err(|trouble| match trouble {
            Trouble::Refused(refusal) => PhotoError::Refused(refusal),
            Trouble::Read(source) => PhotoError::Storage { doing: Doing::ReadingKept, source },
        })?;
        let picture = match rendition {
            Rendition::Small => made.small,
            _ => made.large,
        };
        let needed = (picture.len() as u64) + (1 << 20);
        let file = self
            .finish_rendition(id, rendition, picture.clone(), None)
            .map_err(PhotoError::storage(Doing::Writing, needed))?;
        let _shelf = self.shelf();
        file.place(&self.rendition_path(id, rendition))
            .and_then(|()| self.disk().sync_folder(&self.renditions()))
            .map_err(PhotoError::storage(Doing::Placing, needed))?;
        Ok(picture)
    }

    fn finish_rendition(
        &self,
        id: Digest,
        rendition: Rendition,
        picture: Vec<u8>,
        now: Option<Moment>,
    ) -> std::io::Result<Unfinished<'_>> {
        let mut file = Unfinished::begin(self.disk(), &self.incoming())?;
        file.write_all(&seal::close(id, rendition, picture))?;
        file.finish(now)?;
        Ok(file)
    }
}

pub(super) fn admit(bytes: u64) -> Result<(), PhotoError> {
    match bytes {
        0 => Err(PhotoError::Refused(Refusal::Empty)),
        bytes if bytes > MAX_BYTES => Err(PhotoError::Refused(Refusal::TooManyBytes { bytes, limit: MAX_BYTES })),
        _ => Ok(()),
    }
}

fn make(format: Format, mut file: impl Read + Seek) -> Result<Made, Trouble> {
    file.seek(SeekFrom::Start(0)).map_err(Trouble::Read)?;
    let mut decoded = decode(format, file, LARGE)?;
    let damaged = || Trouble::Refused(Refusal::Damaged { format });
    let large = reduce(&decoded.pixels, LARGE).ok_or_else(damaged)?;
    // The decoded pixels are the largest thing held; let go of them before the next.
    decoded.pixels.rgb = Vec::new();
    let judgement = judge(&large, decoded.width.max(decoded.height));
    let large = turn(large, decoded.notes.orientation);
    let small = reduce(&large, Rendition::Small.edge()).ok_or_else(damaged)?;
    let large = write(&large, QUALITY).ok_or_else(damaged)?;
    let small = write(&small, QUALITY).ok_or_else(damaged)?;
    Ok(Made { decoded, judgement, large, small })
}
