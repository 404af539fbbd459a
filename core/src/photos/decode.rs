//! From a file to upright-or-not pixels, with every limit looked at first.

use std::io::{self, BufReader, Cursor, Read, Seek, SeekFrom};

use image::codecs::{png::PngDecoder, webp::WebPDecoder};
use image::{DynamicImage, ImageDecoder, ImageError, Limits};

use super::error::Refusal;
use super::exif::{Notes, notes};
use super::format::Format;
use super::limits::{MAX_MEMORY, MAX_PIXELS};
use super::{jpeg, webp};

/// Pixels of 8-bit red, green and blue, row after row.
pub(super) struct Pixels {
    pub width: u32,
    pub height: u32,
    pub rgb: Vec<u8>,
}

/// What a photo is, and its pixels at the least size that still covers what was asked for.
pub(super) struct Decoded {
    /// Width as stored, in pixels of the full photo.
    pub width: u32,
    /// Height as stored.
    pub height: u32,
    pub notes: Notes,
    /// Not turned yet.
    pub pixels: Pixels,
}

/// Decodes a photo so that its longest side has at least `edge` pixels, where it has that many.
pub(super) fn decode(format: Format, file: impl Read + Seek, edge: u32) -> Result<Decoded, Trouble> {
    let mut file = BufReader::with_capacity(1 << 16, file);
    match format {
        Format::Jpeg => jpeg::decode(file, edge),
        Format::Png => {
            let limits = limits();
            whole(Format::Png, PngDecoder::with_limits(file, limits).map_err(|error| trouble(Format::Png, error))?)
        }
        Format::Webp => {
            webp::inspect(&mut file)?;
            file.seek(SeekFrom::Start(0)).map_err(Trouble::Read)?;
            whole(Format::Webp, WebPDecoder::new(file).map_err(|error| trouble(Format::Webp, error))?)
        }
    }
}

/// Why there are no pixels.
pub(super) enum Trouble {
    /// It is the file's fault.
    Refused(Refusal),
    /// It is the storage's fault.
    Read(io::Error),
}

impl From<Refusal> for Trouble {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

fn limits() -> Limits {
    let mut limits = Limits::default();
    limits.max_alloc = Some(MAX_MEMORY);
    limits
}

/// Refuses a header that asks for too much, before anything is allocated for it.
///
/// `memory` is what decoding takes for each of the stored pixels, in bytes.
pub(super) fn admit(width: u32, height: u32, memory: u64) -> Result<(), Refusal> {
    let pixels = u64::from(width) * u64::from(height);
    let limit = MAX_PIXELS.min(MAX_MEMORY / memory.max(1));
    if pixels > limit { Err(Refusal::TooManyPixels { width, height, limit }) } else { Ok(()) }
}

/// A format that is decoded whole.
fn whole(format: Format, mut decoder: impl ImageDecoder) -> Result<Decoded, Trouble> {
    let (width, height) = decoder.dimensions();
    if width == 0 || height == 0 {
        return Err(Refusal::Damaged { format }.into());
    }
    // The decoder's own pixels twice (WebP holds planes beside them), and the pixels as RGB.
    let own = u64::from(decoder.color_type().bytes_per_pixel());
    admit(width, height, if format == Format::Webp { 2 * own } else { own } + 3)?;
    decoder.set_limits(limits()).map_err(|error| trouble(format, error))?;
    // Notes that can't be read are no reason to refuse the photo.
    let notes =
        decoder.exif_metadata().ok().flatten().filter(|block| block.len() <= 1 << 20).map(|block| notes(&block));
    let image = DynamicImage::from_decoder(decoder).map_err(|error| trouble(format, error))?;
    let rgb = flatten(image);
    Ok(Decoded { width, height, notes: notes.unwrap_or_default(), pixels: Pixels { width, height, rgb } })
}

/// Eight bits a channel, laid on white where it is see-through.
fn flatten(image: DynamicImage) -> Vec<u8> {
    if !image.color().has_alpha() {
        return image.into_rgb8().into_raw();
    }
    let over = |level: u8, alpha: u8| {
        let mixed = (u16::from(level) * u16::from(alpha) + 255 * (255 - u16::from(alpha))) / 255;
        u8::try_from(mixed).unwrap_or(u8::MAX)
    };
    image.into_rgba8().pixels().flat_map(|&image::Rgba([r, g, b, a])| [over(r, a), over(g, a), over(b, a)]).collect()
}

fn trouble(format: Format, error: ImageError) -> Trouble {
    match error {
        ImageError::IoError(error)
            if !matches!(error.kind(), io::ErrorKind::UnexpectedEof | io::ErrorKind::InvalidData) =>
        {
            Trouble::Read(error)
        }
        ImageError::Unsupported(_) => Refusal::UnusualForm { format }.into(),
        _ => Refusal::Damaged { format }.into(),
    }
}

/// Decodes a photo that is in memory.
pub(super) fn decode_bytes(format: Format, bytes: &[u8], edge: u32) -> Result<Decoded, Trouble> {
    decode(format, Cursor::new(bytes), edge)
}
