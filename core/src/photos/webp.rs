//! What is looked at in a WebP before its decoder is: its pieces must be whole and of one size.

use std::io::{self, BufRead, Read, Seek, SeekFrom};

use super::decode::{Trouble, admit};
use super::error::Refusal;
use super::format::Format;

/// Walks the chunks of a WebP (RFC 9649).
///
/// Each must lie within the file, since the decoder makes room for what a chunk's length says; and the picture inside
/// must have the size that the extended header says, since the decoder makes room for it before it compares.
/// Animations are not photos.
pub(super) fn inspect(file: &mut (impl BufRead + Seek)) -> Result<(), Trouble> {
    const DAMAGED: Trouble = Trouble::Refused(Refusal::Damaged { format: Format::Webp });
    let end = file.seek(SeekFrom::End(0)).map_err(Trouble::Read)?;
    file.seek(SeekFrom::Start(4)).map_err(Trouble::Read)?;
    let riff = 8 + u64::from(u32::from_le_bytes(bytes(file)?));
    if riff > end {
        return Err(DAMAGED);
    }
    let mut canvas = None;
    let mut picture = None;
    let mut at = 12;
    while at + 8 <= riff {
        file.seek(SeekFrom::Start(at)).map_err(Trouble::Read)?;
        let kind: [u8; 4] = bytes(file)?;
        let length = u64::from(u32::from_le_bytes(bytes(file)?));
        at += 8 + length;
        if at > riff {
            return Err(DAMAGED);
        }
        at += length % 2;
        let side = |low: u8, high: u8| u32::from(u16::from_le_bytes([low, high]) & 0x3fff);
        match &kind {
            b"VP8X" => {
                let [flags, _, _, _, w0, w1, w2, h0, h1, h2] = bytes(file)?;
                if flags & 0x02 != 0 {
                    return Err(Refusal::UnusualForm { format: Format::Webp }.into());
                }
                canvas = Some((u32::from_le_bytes([w0, w1, w2, 0]) + 1, u32::from_le_bytes([h0, h1, h2, 0]) + 1));
            }
            b"VP8 " if picture.is_none() => {
                let [_, _, _, _, _, _, w0, w1, h0, h1] = bytes(file)?;
                picture = Some((side(w0, w1), side(h0, h1)));
            }
            b"VP8L" if picture.is_none() => {
                let [_, a, b, c, d] = bytes(file)?;
                let bits = u32::from_le_bytes([a, b, c, d]);
                picture = Some(((bits & 0x3fff) + 1, ((bits >> 14) & 0x3fff) + 1));
            }
            // A second picture, and a frame of an animation.
            b"VP8 " | b"VP8L" | b"ANMF" => return Err(Refusal::UnusualForm { format: Format::Webp }.into()),
            _ => {}
        }
    }
    let (width, height) = picture.ok_or(DAMAGED)?;
    admit(width, height, 1)?;
    if canvas.is_some_and(|canvas| canvas != (width, height)) { Err(DAMAGED) } else { Ok(()) }
}

fn bytes<const N: usize>(file: &mut impl Read) -> Result<[u8; N], Trouble> {
    let mut bytes = [0; N];
    match file.read_exact(&mut bytes) {
        Ok(()) => Ok(bytes),
        Err(error) if error.kind() == io::ErrorKind::UnexpectedEof => {
            Err(Refusal::Damaged { format: Format::Webp }.into())
        }
        Err(error) => Err(Trouble::Read(error)),
    }
}
