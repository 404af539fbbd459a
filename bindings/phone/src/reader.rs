//! The phone's own text reader, where it reads tiles in place of the models.

use std::sync::{Arc, Mutex, PoisonError};

use lugbook::ident::Digest;
use lugbook::sight::{Tile, TileReader, TileText};

/// A gray tile that is to be read: upright, one level for each pixel from 0 for black to 255 for white, row after row.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct TextTile {
    /// Pixels across.
    pub width: u32,
    /// Pixels from top to bottom.
    pub height: u32,
    /// Its levels.
    pub levels: Vec<u8>,
}

/// A text that was read on a tile.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct TextOnTile {
    /// What it says.
    pub text: String,
    /// How sure the reader is, 0 to 1.
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

/// A text reader that the phone's system brings. Rings, grammar and odds stay the core's.
#[uniffi::export(with_foreign)]
pub trait TextReader: Send + Sync {
    /// The reader and its version: it is kept with each reading that a person accepts.
    fn name(&self) -> String;
    /// Reads a tile: each text with its place. It is called off the main thread, one tile after another, while nothing
    /// of the book is held.
    fn read(&self, tile: TextTile) -> Vec<TextOnTile>;
}

/// Where the shell lays its reader, and takes it away.
#[derive(Clone, Default)]
pub(crate) struct ReaderOfPhone(Arc<Mutex<Option<Arc<dyn TextReader>>>>);

impl ReaderOfPhone {
    pub(crate) fn lay(&self, reader: Option<Arc<dyn TextReader>>) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = reader;
    }

    /// As the core calls it.
    pub(crate) fn tiles(&self) -> Option<Arc<dyn TileReader>> {
        let reader = self.0.lock().unwrap_or_else(PoisonError::into_inner).clone()?;
        Some(Arc::new(Through(reader)))
    }
}

struct Through(Arc<dyn TextReader>);

impl TileReader for Through {
    fn name(&self) -> String {
        self.0.name()
    }

    /// A system's reader does not give its model away; name and version stand for it.
    fn model(&self) -> Digest {
        Digest::of(self.0.name().as_bytes())
    }

    fn read(&self, tile: &Tile<'_>) -> Vec<TileText> {
        let side = |side: usize| u32::try_from(side).unwrap_or(u32::MAX);
        let tile = TextTile { width: side(tile.width), height: side(tile.height), levels: tile.levels.to_vec() };
        let text = |read: TextOnTile| TileText {
            text: read.text,
            confidence: read.confidence,
            x: read.x,
            y: read.y,
            width: read.width,
            height: read.height,
        };
        self.0.read(tile).into_iter().map(text).collect()
    }
}
