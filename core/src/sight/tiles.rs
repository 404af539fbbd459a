//! Tiles, and the seam where a host reads them in place of the models.

use super::arrows;
use super::lines::Line;
use super::numbers;
use super::picture::Picture;
use super::regions::Region;
use crate::ident::Digest;

/// A tile to look at: a picture, and how its pixels lie on the strip.
pub(super) struct Cut {
    pub picture: Picture,
    pub left: f32,
    pub top: f32,
    /// Pixels of the strip for one of the tile's.
    pub scale: f32,
}

/// A tile as a host gets it: gray, upright, one level for each pixel, row after row.
///
/// ```
/// use lugbook::sight::Tile;
/// let tile = Tile { width: 2, height: 1, levels: &[0, 255] };
/// assert_eq!(tile.levels.len(), tile.width * tile.height);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tile<'a> {
    /// Pixels across.
    pub width: usize,
    /// Pixels from top to bottom.
    pub height: usize,
    /// 0 for black to 255 for white.
    pub levels: &'a [u8],
}

/// A text that a host read on a tile.
///
/// ```
/// use lugbook::sight::TileText;
/// let text = TileText { text: "91W".into(), confidence: 0.8, x: 40.0, y: 12.0, width: 30.0, height: 10.0 };
/// assert!(text.confidence <= 1.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct TileText {
    /// What it says.
    pub text: String,
    /// How sure the host is, 0 to 1.
    pub confidence: f32,
    /// Its middle, in pixels of the tile from the left.
    pub x: f32,
    /// Its middle, from the top.
    pub y: f32,
    /// Its width in pixels.
    pub width: f32,
    /// Its height in pixels.
    pub height: f32,
}

/// A reader of the host's own: what a phone's system brings. Name and model go into each record of a reading.
///
/// ```
/// use lugbook::ident::Digest;
/// use lugbook::sight::{Tile, TileReader, TileText};
/// struct Blind;
/// impl TileReader for Blind {
///     fn name(&self) -> String {
///         "blind-1".into()
///     }
///     fn model(&self) -> Digest {
///         Digest::of(b"blind-1")
///     }
///     fn read(&self, _: &Tile<'_>) -> Vec<TileText> {
///         Vec::new()
///     }
/// }
/// assert_eq!(Blind.name(), "blind-1");
/// ```
pub trait TileReader: Send + Sync {
    /// The reader and its version.
    fn name(&self) -> String;

    /// What names its model: a digest of the model's bytes or, where those can't be had, of name and version.
    fn model(&self) -> Digest;

    /// Reads a tile: each text with its place. Called between two tellings of progress, one tile at a time; a mark that
    /// may be chalk comes as a short tile of its own, light on dark.
    fn read(&self, tile: &Tile<'_>) -> Vec<TileText>;
}

/// What a host reads on a tile, as lines on the strip. Texts without a place or with odd figures are left out.
pub(super) fn through(host: &dyn TileReader, cut: &Cut) -> Vec<Line> {
    let tile = Tile { width: cut.picture.width(), height: cut.picture.height(), levels: cut.picture.levels() };
    host.read(&tile)
        .into_iter()
        .filter(|text| {
            let figures = [text.x, text.y, text.width, text.height, text.confidence];
            figures.iter().all(|figure| figure.is_finite() && (-1e6..1e6).contains(figure))
                && text.width > 0.0
                && text.height > 0.0
        })
        .map(|text| {
            let confidence = text.confidence.clamp(0.0, 1.0);
            let place = Region {
                x: text.x * cut.scale + cut.left,
                y: text.y * cut.scale + cut.top,
                width: text.width * cut.scale,
                height: text.height * cut.scale,
                turn: 0.0,
                likely: confidence,
            };
            let number = text.text.chars().map(numbers::symbol).collect();
            // A host does not tell where each character stands: evenly along the text.
            let count = text.text.chars().count();
            let at: Vec<f32> = (0..count).map(|n| (n as f32 + 0.5) / count as f32).collect();
            let rotation = arrows::stands(&text.text, &at, false);
            Line { text: text.text, number, confidence, rotation, arrow: None, over: false, place }
        })
        .collect()
}
