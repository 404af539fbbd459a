//! Pixels to a JPEG file with the notes a phone leaves in it.

use image::RgbImage;
use jpeg_encoder::{ColorType, Encoder, SamplingFactor};

/// What a phone notes beside a picture. Maker and model are invented.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// EXIF's orientation, 1 to 8: the picture is stored so that turning it by this shows it upright.
    pub orientation: u8,
    /// `2026:05:04 09:15:30`.
    pub time: String,
    /// `-07:00`.
    pub offset: String,
    /// An invented maker.
    pub maker: String,
    /// An invented model.
    pub model: String,
}

impl Note {
    /// The notes as a TIFF block, big-endian (EXIF 2.3).
    pub fn block(&self) -> Vec<u8> {
        let text = |text: &str| [text.as_bytes(), b"\0"].concat();
        let outer = [(0x010f_u16, text(&self.maker)), (0x0110, text(&self.model)), (0x0132, text(&self.time))];
        let inner = [(0x9003_u16, text(&self.time)), (0x9011, text(&self.offset))];
        // The orientation and the pointer to the inner folder stand in the outer one.
        let inner_at = 8 + 2 + 12 * (outer.len() as u32 + 2) + 4;
        let mut data_at = inner_at + 2 + 12 * inner.len() as u32 + 4;
        let mut data = Vec::new();
        let mut entry = |tag: u16, value: &[u8]| {
            let mut entry = [tag.to_be_bytes(), 2_u16.to_be_bytes()].concat();
            entry.extend((value.len() as u32).to_be_bytes());
            if value.len() <= 4 {
                entry.extend(value.iter().chain([0; 4].iter()).take(4));
            } else {
                entry.extend(data_at.to_be_bytes());
                data_at += value.len() as u32;
                data.extend_from_slice(value);
            }
            entry
        };
        let [maker, model, time] = outer.map(|(tag, value)| entry(tag, &value));
        let inner: Vec<u8> = inner.iter().flat_map(|(tag, value)| entry(*tag, value)).collect();
        let mut block = b"MM\0*\0\0\0\x08\0\x05".to_vec();
        block.extend([maker, model].concat());
        block.extend([&[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, self.orientation, 0, 0][..], &time].concat());
        block.extend([&[0x87, 0x69, 0, 4, 0, 0, 0, 1][..], &inner_at.to_be_bytes()].concat());
        block.extend([0, 0, 0, 0, 0, 2]);
        block.extend(inner);
        block.extend([0; 4]);
        block.extend(data);
        block
    }
}

/// Writes an upright picture as a phone would: stored turned as its orientation says (1, 3, 6 or 8), with its notes.
pub fn jpeg(upright: &RgbImage, note: &Note, quality: u8) -> Vec<u8> {
    use image::imageops::{rotate90, rotate180, rotate270};
    let stored = match note.orientation {
        1 => upright.clone(),
        3 => rotate180(upright),
        6 => rotate270(upright),
        8 => rotate90(upright),
        other => panic!("phones don't store orientation {other}"),
    };
    let (width, height) = (stored.width() as u16, stored.height() as u16);
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, quality);
    encoder.set_sampling_factor(SamplingFactor::R_4_2_0);
    encoder.add_exif_metadata(&note.block()).expect("the notes fit a segment");
    encoder.encode(&stored, width, height, ColorType::Rgb).expect("a picture that fits in memory is written");
    bytes
}
