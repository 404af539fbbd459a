//! The two faces, and how wide their letters are.
//!
//! Letters are set side by side without kerning or ligatures. A letter that the
//! faces lack (they hold Latin, Greek and Cyrillic) stands as U+FFFD, a black
//! diamond, so that a missing letter is seen.

use krilla::text::{Font, GlyphId, KrillaGlyph};
use skrifa::instance::{LocationRef, Size};
use skrifa::{FontRef, MetadataProvider};

const REGULAR: &[u8] = include_bytes!("../../../fonts/NotoSans-Regular.ttf");
const BOLD: &[u8] = include_bytes!("../../../fonts/NotoSans-Bold.ttf");

/// What stands for a letter that a face lacks.
const MISSING: char = '\u{fffd}';

/// Regular and bold.
pub(super) struct Faces {
    regular: Face,
    bold: Face,
}

pub(super) struct Face {
    reader: FontRef<'static>,
    pub font: Font,
    units: f64,
}

impl Faces {
    pub fn load() -> Option<Self> {
        Some(Self { regular: Face::load(REGULAR)?, bold: Face::load(BOLD)? })
    }

    pub fn face(&self, bold: bool) -> &Face {
        if bold { &self.bold } else { &self.regular }
    }

    /// The width of a text, in points.
    pub fn width(&self, text: &str, size: f64, bold: bool) -> f64 {
        self.face(bold).glyphs(text).iter().map(|glyph| f64::from(glyph.x_advance)).sum::<f64>() * size
    }
}

impl Face {
    fn load(bytes: &'static [u8]) -> Option<Self> {
        let reader = FontRef::new(bytes).ok()?;
        let units = f64::from(reader.metrics(Size::unscaled(), LocationRef::default()).units_per_em);
        Some(Self { reader, font: Font::new(bytes.into(), 0)?, units })
    }

    /// The glyphs of a text, one a letter, in order.
    pub fn glyphs(&self, text: &str) -> Vec<KrillaGlyph> {
        let map = self.reader.charmap();
        let metrics = self.reader.glyph_metrics(Size::unscaled(), LocationRef::default());
        text.char_indices()
            .filter_map(|(at, c)| {
                let glyph = map.map(c).or_else(|| map.map(MISSING))?;
                let advance = f64::from(metrics.advance_width(glyph).unwrap_or_default()) / self.units;
                let range = at..at + c.len_utf8();
                Some(KrillaGlyph::new(GlyphId::new(glyph.to_u32()), advance as f32, 0.0, 0.0, 0.0, range, None))
            })
            .collect()
    }
}
