//! JPEG (ITU-T T.81), decoded reduced.

use std::io::{self, BufRead, Read, Seek, SeekFrom};

use jpeg_decoder::{CodingProcess, PixelFormat};

use super::decode::{Decoded, Pixels, Trouble, admit};
use super::error::Refusal;
use super::exif::notes;
use super::format::Format;
use super::limits::MAX_SCANS;

/// Decodes at the least of the four scales of its transform (1, 1/2, 1/4, 1/8) that still covers what was asked for.
pub(super) fn decode(mut file: impl BufRead + Seek, edge: u32) -> Result<Decoded, Trouble> {
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
    // The decoder is content when one side is covered; only the longer one may decide.
    let want = u16::try_from(edge.min(width.max(height).into())).unwrap_or(u16::MAX);
    let (want_width, want_height) = if width >= height { (want, u16::MAX) } else { (u16::MAX, want) };
    let (reduced_width, reduced_height) = decoder.scale(want_width, want_height).map_err(refused)?;
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
