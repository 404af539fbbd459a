//! Whether a photo is worth reading: sharp enough, light enough.

use serde::Serialize;

use super::decode::Pixels;

/// What to do differently when the photo is taken again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hint {
    /// No edge in it is sharp: hold still, let the camera focus, wipe the lens.
    Blurred,
    /// Even the brightest parts are dark: more light, from the side.
    TooDark,
    /// Much of it is blown out to white: out of the sun's glare, no flash from straight ahead.
    TooBright,
    /// Nothing stands out from anything else: covered or fogged lens, or too close.
    NothingStandsOut,
    /// Fewer pixels than lettering needs: move closer, or set the camera to a larger size.
    TooSmall,
}

/// What was measured on a photo, and what follows from it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judgement {
    /// 0 (no sharp edge at all) to 1, of the sharpest parts; the rest of a photo may be out of focus.
    pub sharpness: f64,
    /// Brightness that one pixel in twenty exceeds, 0 to 1.
    pub highlights: f64,
    /// Share of pixels blown out to white, 0 to 1.
    pub blown: f64,
    /// What to do differently; empty when nothing speaks against the photo.
    pub hints: Vec<Hint>,
}

impl Judgement {
    /// Nothing speaks against the photo.
    pub fn is_good(&self) -> bool {
        self.hints.is_empty()
    }
}

/// Tiles have this side in pixels, at the size of the large rendition.
const TILE: usize = 96;
/// Mean difference of neighboring pixels (of 255) under which a tile has nothing to be sharp.
const LEAST_CONTRAST: f64 = 1.5;
/// Under this the sharpest parts are blurred.
const LEAST_SHARPNESS: f64 = 0.50;
/// Shortest acceptable long side of the stored photo, in pixels.
const LEAST_SIDE: u32 = 800;

/// Judges by the large rendition; `stored_side` is the longest side of the photo itself.
///
/// The thresholds are ours, set on photos of tires and on pictures blurred by known amounts.
pub(super) fn judge(pixels: &Pixels, stored_side: u32) -> Judgement {
    let (width, height) = (pixels.width as usize, pixels.height as usize);
    let mut counts = [0_u32; 256];
    for pixel in pixels.rgb.chunks_exact(3).step_by(5) {
        if let Some(count) = counts.get_mut(usize::from(level(pixel))) {
            *count += 1;
        }
    }
    let all: u32 = counts.iter().sum::<u32>().max(1);
    let above = |least: usize| f64::from(counts.iter().skip(least).sum::<u32>()) / f64::from(all);
    let highlights =
        (0..=255_u8).rev().find(|&least| above(least.into()) >= 0.05).map_or(0.0, |l| f64::from(l) / 255.0);
    let blown = above(250);

    let mut sharpness: Vec<f64> = tiles(width, height)
        .filter_map(|(left, top)| Tile::cut(&pixels.rgb, width, height, left, top)?.sharpness())
        .collect();
    sharpness.sort_by(|a, b| b.total_cmp(a));
    let sharpest = sharpness.get(sharpness.len() / 5).copied();

    let mut hints = Vec::new();
    if stored_side < LEAST_SIDE {
        hints.push(Hint::TooSmall);
    }
    if highlights < 0.25 {
        hints.push(Hint::TooDark);
    } else if blown > 0.30 {
        hints.push(Hint::TooBright);
    }
    match sharpest {
        None if hints.is_empty() => hints.push(Hint::NothingStandsOut),
        Some(value) if value < LEAST_SHARPNESS => hints.push(Hint::Blurred),
        _ => {}
    }
    Judgement { sharpness: sharpest.unwrap_or(0.0), highlights, blown, hints }
}

fn level(pixel: &[u8]) -> u8 {
    // Rec. 601 luma in 8 bits.
    let weighted: u32 = pixel.iter().zip([77_u32, 150, 29]).map(|(&value, weight)| u32::from(value) * weight).sum();
    u8::try_from(weighted >> 8).unwrap_or(u8::MAX)
}

/// Top left corners of up to 7 × 7 tiles, evenly spread.
fn tiles(width: usize, height: usize) -> impl Iterator<Item = (usize, usize)> {
    let starts = |side: usize| {
        let count = (side / TILE).clamp(1, 7);
        let room = side.saturating_sub(TILE);
        (0..count).map(move |n| room * n / count.saturating_sub(1).max(1))
    };
    starts(height).flat_map(move |top| starts(width).map(move |left| (left, top)))
}

struct Tile {
    width: usize,
    levels: Vec<f32>,
}

impl Tile {
    fn cut(rgb: &[u8], width: usize, height: usize, left: usize, top: usize) -> Option<Self> {
        let (columns, rows) = (TILE.min(width), TILE.min(height));
        let mut levels = Vec::with_capacity(columns * rows);
        for y in top..top + rows {
            let start = (y * width + left) * 3;
            levels.extend(rgb.get(start..start + columns * 3)?.chunks_exact(3).map(|pixel| f32::from(level(pixel))));
        }
        Some(Self { width: columns, levels })
    }

    fn height(&self) -> usize {
        self.levels.len() / self.width.max(1)
    }

    fn row(&self, y: usize) -> &[f32] {
        self.levels.get(y * self.width..(y + 1) * self.width).unwrap_or_default()
    }

    fn turned(&self) -> Self {
        let height = self.height();
        let levels =
            (0..self.width).flat_map(|x| (0..height).filter_map(move |y| self.row(y).get(x).copied())).collect();
        Self { width: height, levels }
    }

    /// Mean difference of neighbors along the rows, of 255.
    fn contrast(&self) -> f64 {
        let pairs = (0..self.height()).flat_map(|y| self.row(y).windows(2));
        let sum: f64 = pairs.map(|pair| if let &[a, b] = pair { f64::from((b - a).abs()) } else { 0.0 }).sum();
        sum / self.levels.len().max(1) as f64
    }

    /// 0 (blurred) to 1 (sharp), in the worse direction of those that have edges at all; `None` without edges.
    fn sharpness(&self) -> Option<f64> {
        let along = |tile: &Self| (tile.contrast() >= LEAST_CONTRAST).then(|| 1.0 - tile.blur_along_rows());
        match (along(self), along(&self.turned())) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        }
    }

    /// 0 (sharp) to 1 (blurred): how little a blur over nine pixels changes.
    ///
    /// F. Crété, T. Dolmiere, P. Ladret, M. Nicolas: The blur effect: perception and estimation with a new
    /// no-reference perceptual blur metric (2007).
    fn blur_along_rows(&self) -> f64 {
        let (mut all, mut lost) = (0.0_f64, 0.0_f64);
        for y in 0..self.height() {
            let row = self.row(y);
            // Differences of neighbors, before and after a mean over nine: the mean's difference is that of the
            // pixels that enter and leave it.
            for window in row.windows(10) {
                if let &[first, _, _, _, left, right, _, _, _, last] = window {
                    let sharp = f64::from((right - left).abs());
                    let blurred = f64::from((last - first).abs()) / 9.0;
                    all += sharp;
                    lost += (sharp - blurred).max(0.0);
                }
            }
        }
        if all > 0.0 { (all - lost) / all } else { 1.0 }
    }
}
