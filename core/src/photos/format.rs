use serde::{Deserialize, Serialize};

use super::error::{OtherKind, Refusal};

/// The formats that are kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Format {
    /// JPEG (ITU-T T.81), baseline, extended or progressive, 8 bits.
    Jpeg,
    /// PNG; of an animation, the default picture.
    Png,
    /// WebP (RFC 9649), lossy or lossless, not an animation.
    Webp,
}

impl Format {
    /// All formats.
    pub const ALL: [Self; 3] = [Self::Jpeg, Self::Png, Self::Webp];

    /// The file name's ending, without a dot.
    pub fn extension(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
            Self::Webp => "webp",
        }
    }

    /// The media type.
    pub fn media_type(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::Webp => "image/webp",
        }
    }

    /// Tells the format by content; a file's name says nothing.
    ///
    /// The first 64 bytes are enough.
    ///
    /// ```
    /// use lugbook::photos::{Format, Refusal};
    /// assert_eq!(Format::sniff(b"\xff\xd8\xff\xe0rest"), Ok(Format::Jpeg));
    /// assert_eq!(Format::sniff(b"\0\0\0\x18ftypheic\0\0\0\0"), Err(Refusal::Heic));
    /// ```
    ///
    /// # Errors
    /// The refusal that fits the content.
    pub fn sniff(start: &[u8]) -> Result<Self, Refusal> {
        if start.is_empty() {
            return Err(Refusal::Empty);
        }
        match image::guess_format(start) {
            Ok(image::ImageFormat::Jpeg) => return Ok(Self::Jpeg),
            Ok(image::ImageFormat::Png) => return Ok(Self::Png),
            Ok(image::ImageFormat::WebP) => return Ok(Self::Webp),
            _ => {}
        }
        Err(other(start))
    }
}

/// Says what a file is that is not taken.
fn other(start: &[u8]) -> Refusal {
    let at = |from: usize, text: &[u8]| start.get(from..from + text.len()) == Some(text);
    let kind = if at(4, b"ftyp") {
        // ISO/IEC 14496-12: the file type box holds a major brand, a version and the compatible brands.
        let length = start.get(..4).and_then(|size| size.try_into().ok()).map_or(0, u32::from_be_bytes);
        let end = usize::try_from(length).unwrap_or(usize::MAX).min(start.len()).max(12.min(start.len()));
        let brands = || start.get(8..end).into_iter().flat_map(|all| all.chunks_exact(4));
        if brands().any(|brand| matches!(brand, b"avif" | b"avis")) {
            OtherKind::Avif
        } else if brands()
            .any(|brand| matches!(brand, b"heic" | b"heix" | b"hevc" | b"heim" | b"heis" | b"mif1" | b"msf1"))
        {
            return Refusal::Heic;
        } else {
            OtherKind::Film
        }
    } else if at(0, b"GIF8") {
        OtherKind::Gif
    } else if at(0, b"BM") {
        OtherKind::Bmp
    } else if at(0, b"II*\0") || at(0, b"MM\0*") {
        OtherKind::Tiff
    } else if at(0, b"\xff\x0a") || at(0, b"\0\0\0\x0cJXL ") {
        OtherKind::JpegXl
    } else if at(0, b"\x1a\x45\xdf\xa3") || (at(0, b"RIFF") && at(8, b"AVI ")) {
        OtherKind::Film
    } else if at(0, b"%PDF") {
        OtherKind::Pdf
    } else {
        return Refusal::NotAPicture;
    };
    Refusal::OtherKind { kind }
}
