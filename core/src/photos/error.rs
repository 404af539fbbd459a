use std::io;

use serde::Serialize;

use super::{Format, Rendition};
use crate::ident::Digest;

/// Why a photo could not be taken in, shown or kept, by what the person can do about it.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum PhotoError {
    /// This file is not taken; another one, or another camera setting, is.
    #[error("photo refused: {0:?}")]
    Refused(Refusal),
    /// The device is full. Nothing was kept; free some space and do it again.
    #[error("no space left for {needed} bytes")]
    NoSpace {
        /// Bytes that should be free before trying again.
        needed: u64,
    },
    /// The device's storage failed while doing this. Nothing half-written stays under a photo's name; try again.
    #[error("{doing:?} failed: {source}")]
    Storage {
        /// What was being done.
        doing: Doing,
        /// What the operating system said.
        #[source]
        source: io::Error,
    },
    /// A photo that was kept is gone or no longer what it was; restore it from a backup.
    #[error("photo {id} is {damage:?}")]
    Lost {
        /// The photo.
        id: Digest,
        /// What is wrong with it.
        damage: Damage,
    },
}

impl PhotoError {
    /// Tells a full device from any other failure of its storage.
    pub(super) fn storage(doing: Doing, needed: u64) -> impl Fn(io::Error) -> Self {
        move |source| match source.kind() {
            io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Self::NoSpace { needed },
            _ => Self::Storage { doing, source },
        }
    }
}

/// What was being done when storage failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Doing {
    /// Making or reading the folder the photos are kept in.
    OpeningFolder,
    /// Reading the file that was given.
    ReadingSource,
    /// Writing the photo or one of its renditions.
    Writing,
    /// Giving the finished file its name.
    Placing,
    /// Reading a photo that was kept.
    ReadingKept,
    /// Removing what no entry names.
    Sweeping,
}

/// Why a file is not taken as a photo.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "why")]
#[non_exhaustive]
pub enum Refusal {
    /// There is no such file, or it can't be opened by this program.
    Unreachable,
    /// The file has no bytes: the camera was stopped before it wrote.
    Empty,
    /// More bytes than a photo needs.
    TooManyBytes {
        /// Bytes in the file.
        bytes: u64,
        /// The most that is taken.
        limit: u64,
    },
    /// More pixels than are decoded, by what the header says; no pixel was decoded.
    TooManyPixels {
        /// Width in pixels, as stored.
        width: u32,
        /// Height in pixels, as stored.
        height: u32,
        /// The most pixels taken for a file stored this way.
        limit: u64,
    },
    /// A HEIC or HEIF file: the camera's setting for compatible files gives JPEG.
    Heic,
    /// A picture or film, of a kind that is not taken.
    OtherKind {
        /// What it is.
        kind: OtherKind,
    },
    /// A photo of a known format in a form that is not decoded (lossless, arithmetic or
    /// 12-bit JPEG, an animated WebP).
    UnusualForm {
        /// The format.
        format: Format,
    },
    /// Nothing in the content says that this is a picture.
    NotAPicture,
    /// The file begins as a photo but does not decode: cut short or damaged.
    Damaged {
        /// The format it began as.
        format: Format,
    },
}

/// Pictures and films that are recognized and not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum OtherKind {
    /// AVIF.
    Avif,
    /// BMP.
    Bmp,
    /// GIF.
    Gif,
    /// JPEG XL.
    JpegXl,
    /// TIFF, and the raw files of cameras that build on it.
    Tiff,
    /// A film.
    Film,
    /// A PDF document.
    Pdf,
}

/// What is wrong with a photo that should be there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Damage {
    /// The file is gone.
    Missing,
    /// The file's bytes are not those that were kept.
    Changed,
    /// The file is there and can't be read.
    Unreadable,
}

/// One thing found by [`Photos::check`](super::Photos::check).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// The photo.
    pub id: Digest,
    /// Which of its files; a damaged rendition is made again when it is next asked for.
    pub rendition: Rendition,
    /// What is wrong.
    pub damage: Damage,
}
