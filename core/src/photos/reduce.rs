//! From decoded pixels to the renditions: reduced, turned upright, written as JPEG.

use fast_image_resize::images::{TypedImage, TypedImageRef};
use fast_image_resize::pixels::U8x3;
use fast_image_resize::{FilterType, ResizeAlg, ResizeOptions, Resizer};
use jpeg_encoder::{ColorType, Encoder, SamplingFactor};

use super::decode::Pixels;
use super::exif::Orientation;

/// Reduces so that the longest side has at most `edge` pixels; smaller pictures stay as they are.
///
/// A tent filter over the area of each new pixel: no ringing around chalk and lettering. `None` when the sizes don't
/// fit the pixels, which no decoded photo can bring about.
pub(super) fn reduce(pixels: &Pixels, edge: u32) -> Option<Pixels> {
    let longest = pixels.width.max(pixels.height).max(1);
    let side = |side: u32| {
        let exact = u64::from(side) * u64::from(edge.min(longest));
        let rounded = (exact + u64::from(longest / 2)) / u64::from(longest);
        u32::try_from(rounded.max(1)).unwrap_or(u32::MAX)
    };
    let (width, height) = (side(pixels.width), side(pixels.height));
    let source = TypedImageRef::<U8x3>::from_buffer(pixels.width, pixels.height, &pixels.rgb).ok()?;
    let mut rgb = vec![0; width as usize * height as usize * 3];
    let mut reduced = TypedImage::<U8x3>::from_buffer(width, height, &mut rgb).ok()?;
    let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::Bilinear));
    // Of one kind of pixel: asked by its name at run time, the library brings in all kinds, 3 MB of them.
    Resizer::new().resize_typed(&source, &mut reduced, &options).ok()?;
    Some(Pixels { width, height, rgb })
}

/// Turns stored pixels upright (EXIF 2.3, tag 0112, orientation).
pub(super) fn turn(pixels: Pixels, orientation: Orientation) -> Pixels {
    if orientation == Orientation::UPRIGHT {
        return pixels;
    }
    let Pixels { width, height, rgb } = pixels;
    let (columns, rows) = if orientation.swaps_sides() { (height, width) } else { (width, height) };
    let mut turned = Vec::with_capacity(rgb.len());
    for y in 0..rows {
        for x in 0..columns {
            // Where the pixel seen at (x, y) is stored.
            let (from_x, from_y) = match orientation.value() {
                2 => (width - 1 - x, y),
                3 => (width - 1 - x, height - 1 - y),
                4 => (x, height - 1 - y),
                5 => (y, x),
                6 => (y, height - 1 - x),
                7 => (width - 1 - y, height - 1 - x),
                _ => (width - 1 - y, x),
            };
            let at = (from_y as usize * width as usize + from_x as usize) * 3;
            turned.extend_from_slice(rgb.get(at..at + 3).unwrap_or(&[0; 3]));
        }
    }
    Pixels { width: columns, height: rows, rgb: turned }
}

/// Writes pixels as a JPEG that carries nothing but the picture.
///
/// `None` when a side is longer than JPEG allows (65,535).
pub(super) fn write(pixels: &Pixels, quality: u8) -> Option<Vec<u8>> {
    let (width, height) = (u16::try_from(pixels.width).ok()?, u16::try_from(pixels.height).ok()?);
    let mut bytes = Vec::with_capacity(pixels.rgb.len() / 8);
    let mut encoder = Encoder::new(&mut bytes, quality);
    encoder.set_sampling_factor(SamplingFactor::R_4_2_0);
    encoder.encode(&pixels.rgb, width, height, ColorType::Rgb).ok()?;
    Some(bytes)
}
