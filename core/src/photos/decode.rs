//! From a file to upright-or-not pixels, with every limit looked at first.

use std::io::{self, BufRead, BufReader, Cursor, Read, Seek, SeekFrom};

use image::codecs::{png::PngDecoder, webp::WebPDecoder};
use image::{DynamicImage, ImageDecoder, ImageError, Limits};
use jpeg_decoder::{CodingProcess, PixelFormat};

use super::error::Refusal;
use super::exif::{Notes, notes};
use super::format::Format;
use super::limits::{MAX_MEMORY, MAX_PIXELS, MAX_SCANS};

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
    let file = BufReader::with_capacity(1 << 16, file);
    match format {
        Format::Jpeg => jpeg(file, edge),
        Format::Png => {
            let limits = limits();
            whole(Format::Png, PngDecoder::with_limits(file, limits).map_err(|error| trouble(Format::Png, error))?)
        }
        Format::Webp => whole(Format::Webp, WebPDecoder::new(file).map_err(|error| trouble(Format::Webp, error))?),
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
fn admit(width: u32, height: u32, memory: u64) -> Result<(), Refusal> {
    let pixels = u64::from(width) * u64::from(height);
    let limit = MAX_PIXELS.min(MAX_MEMORY / memory.max(1));
    if pixels > limit { Err(Refusal::TooManyPixels { width, height, limit }) } else { Ok(()) }
}

fn jpeg(mut file: BufReader<impl Read + Seek>, edge: u32) -> Result<Decoded, Trouble> {
    let refused = |error| match error {
        // The end of the file inside a segment is the photo's fault; any other failure to read is the storage's.
        jpeg_decoder::Error::Io(error) if error.kind() != io::ErrorKind::UnexpectedEof => Trouble::Read(error),
        jpeg_decoder::Error::Unsupported(_) => Refusal::UnusualForm { format: Format::Jpeg }.into(),
        _ => Refusal::Damaged { format: Format::Jpeg }.into(),
    };
    let scans = scans(&mut file).map_err(|error| refused(jpeg_decoder::Error::Io(error)))?;
    if scans == 0 || scans > MAX_SCANS {
        return Err(Refusal::Damaged { format: Format::Jpeg }.into());
    }
    file.seek(SeekFrom::Start(0)).map_err(Trouble::Read)?;

    let mut decoder = jpeg_decoder::Decoder::new(file);
    decoder.read_info().map_err(refused)?;
    let info = decoder.info().ok_or(Refusal::Damaged { format: Format::Jpeg })?;
    let (width, height) = (info.width, info.height);
    if width == 0 || height == 0 {
        return Err(Refusal::Damaged { format: Format::Jpeg }.into());
    }
    let channels = match info.pixel_format {
        PixelFormat::L8 => 1,
        PixelFormat::RGB24 => 3,
        PixelFormat::CMYK32 => 4,
        PixelFormat::L16 => return Err(Refusal::UnusualForm { format: Format::Jpeg }.into()),
    };
    // Checked with the pixels alone first: choosing the scale below is cheap, but needs a sane size.
    admit(width.into(), height.into(), 1)?;
    let (reduced_width, reduced_height) = {
        let longest = u32::from(width.max(height));
        let want = |side: u16| {
            let side = (u64::from(side) * u64::from(edge.min(longest))).div_ceil(longest.max(1).into());
            u16::try_from(side.max(1)).unwrap_or(u16::MAX)
        };
        decoder.scale(want(width), want(height)).map_err(refused)?
    };
    let reduced = u64::from(reduced_width) * u64::from(reduced_height);
    let coefficients = match info.coding_process {
        CodingProcess::DctProgressive => 2 * channels,
        CodingProcess::DctSequential => 0,
        CodingProcess::Lossless => return Err(Refusal::UnusualForm { format: Format::Jpeg }.into()),
    };
    // The reduced planes, the pixels put together from them, and the pixels as RGB.
    let stored = u64::from(width) * u64::from(height);
    let memory = (reduced * (2 * channels + 3)).div_ceil(stored) + coefficients;
    admit(width.into(), height.into(), memory)?;

    let notes = decoder.exif_data().map(notes).unwrap_or_default();
    let decoded = decoder.decode().map_err(refused)?;
    let rgb = match info.pixel_format {
        PixelFormat::L8 => decoded.iter().flat_map(|&level| [level; 3]).collect(),
        PixelFormat::CMYK32 => decoded.chunks_exact(4).flat_map(rgb_of_cmyk).collect(),
        _ => decoded,
    };
    let pixels = Pixels { width: reduced_width.into(), height: reduced_height.into(), rgb };
    Ok(Decoded { width: width.into(), height: height.into(), notes, pixels })
}

/// Ink to light, without a profile.
fn rgb_of_cmyk(pixel: &[u8]) -> [u8; 3] {
    let light = |index: usize| 255 - u16::from(pixel.get(index).copied().unwrap_or(0));
    let mix = |index: usize| u8::try_from(light(index) * light(3) / 255).unwrap_or(u8::MAX);
    [mix(0), mix(1), mix(2)]
}

/// Counts a JPEG's scans by walking its segments (ITU-T T.81, B.1), up to one more than is allowed.
fn scans(file: &mut impl BufRead) -> io::Result<usize> {
    let mut found = 0;
    loop {
        // To the next marker; inside a scan, FF 00 is a byte of data.
        file.skip_until(0xff)?;
        let mut code = [0; 1];
        loop {
            match file.read(&mut code)? {
                0 => return Ok(found),
                _ if code == [0xff] => {}
                _ => break,
            }
        }
        match code[0] {
            0x00 | 0x01 | 0xd0..=0xd8 => {}
            0xd9 => return Ok(found),
            marker => {
                if marker == 0xda {
                    found += 1;
                    if found > MAX_SCANS {
                        return Ok(found);
                    }
                }
                let mut length = [0; 2];
                match file.read_exact(&mut length) {
                    Err(error) if error.kind() == io::ErrorKind::UnexpectedEof => return Ok(found),
                    other => other?,
                }
                let rest = u64::from(u16::from_be_bytes(length)).saturating_sub(2);
                io::copy(&mut file.take(rest), &mut io::sink())?;
            }
        }
    }
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
