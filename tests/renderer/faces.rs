//! Typefaces of this machine, as outlines: further styles of lettering beside our own strokes.
//!
//! None is carried by this tree. Each comes with a package of Debian under a free license; its outlines are read where
//! that package puts them, and a face that is missing is named with its package.

use std::collections::BTreeMap;
use std::path::PathBuf;

use skrifa::instance::{LocationRef, Size};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, MetadataProvider};

/// A typeface in a package.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Face {
    /// Its name.
    pub name: &'static str,
    /// Where its package puts it, below `/usr/share/fonts`.
    pub file: &'static str,
    /// The package.
    pub package: &'static str,
    /// The license.
    pub license: &'static str,
}

const fn face(name: &'static str, file: &'static str, package: &'static str, license: &'static str) -> Face {
    Face { name, file, package, license }
}

/// Faces of wheels that readings may be tuned on.
pub const TUNING: [Face; 5] = [
    face("DejaVu Sans Bold", "truetype/dejavu/DejaVuSans-Bold.ttf", "fonts-dejavu-core", "Bitstream Vera"),
    face(
        "Liberation Sans Narrow Bold",
        "truetype/liberation/LiberationSansNarrow-Bold.ttf",
        "fonts-liberation",
        "OFL-1.1",
    ),
    face("Routed Gothic", "truetype/routed-gothic/routed-gothic.ttf", "fonts-routed-gothic", "OFL-1.1"),
    face("Routed Gothic Wide", "truetype/routed-gothic/routed-gothic-wide.ttf", "fonts-routed-gothic", "OFL-1.1"),
    face("B612 Bold", "opentype/b612/B612-Bold.otf", "fonts-b612", "OFL-1.1"),
];

/// Faces that are never tuned on: only readings that are scored see them.
pub const HELD_OUT: [Face; 6] = [
    face("osifont", "truetype/osifont/osifont.ttf", "fonts-osifont", "GPL-3 with font exception"),
    face("OSP-DIN", "truetype/opendin/OSP-DIN.ttf", "fonts-opendin", "GPL-2+"),
    face("Play Bold", "truetype/play/Play-Bold.ttf", "fonts-play", "OFL-1.1"),
    face("Lato Bold", "truetype/lato/Lato-Bold.ttf", "fonts-lato", "OFL-1.1"),
    face("Open Sans Condensed Bold", "truetype/open-sans/OpenSans-CondBold.ttf", "fonts-open-sans", "Apache-2.0"),
    face(
        "Roboto Condensed Bold",
        "truetype/roboto-fontface/roboto-condensed/Roboto-Condensed-Bold.ttf",
        "fonts-roboto-fontface",
        "Apache-2.0",
    ),
];

/// A letter's outline, and how far the next one stands, in heights of a capital.
#[derive(Debug, Clone, Default)]
pub(crate) struct Outline {
    pub pieces: Vec<[(f32, f32); 2]>,
    pub advance: f32,
}

/// The letters of a face.
#[derive(Debug)]
pub struct Outlines {
    letters: BTreeMap<char, Outline>,
}

impl Face {
    /// Reads the outlines of all printable ASCII.
    ///
    /// # Errors
    /// When the face is not on this machine, with the package that brings it.
    pub fn load(&self) -> Result<Outlines, String> {
        let path = PathBuf::from("/usr/share/fonts").join(self.file);
        let missing = || format!("{} is not here; the package {} brings it", self.name, self.package);
        let bytes = std::fs::read(path).map_err(|_| missing())?;
        let font = FontRef::new(&bytes).map_err(|why| format!("{}: {why}", self.name))?;
        let (map, glyphs) = (font.charmap(), font.outline_glyphs());
        let metrics = font.glyph_metrics(Size::unscaled(), LocationRef::default());
        let mut letters = BTreeMap::new();
        for letter in ' '..='~' {
            let Some(glyph) = map.map(letter) else { continue };
            let mut pen = Pen::default();
            if let Some(outline) = glyphs.get(glyph) {
                let plain = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
                outline.draw(plain, &mut pen).map_err(|why| format!("{}: {why}", self.name))?;
            }
            let advance = metrics.advance_width(glyph).unwrap_or_default();
            letters.insert(letter, Outline { pieces: pen.pieces, advance });
        }
        let tall = letters
            .get(&'H')
            .map(|h| h.pieces.iter().flatten().map(|point| point.1).fold(0.0, f32::max))
            .filter(|tall| *tall > 0.0)
            .ok_or_else(|| format!("{} has no letters", self.name))?;
        for outline in letters.values_mut() {
            outline.advance /= tall;
            for point in outline.pieces.iter_mut().flatten() {
                *point = (point.0 / tall, point.1 / tall);
            }
        }
        Ok(Outlines { letters })
    }
}

impl Outlines {
    pub(crate) fn letter(&self, letter: char) -> Option<&Outline> {
        self.letters.get(&letter)
    }
}

#[derive(Default)]
struct Pen {
    pieces: Vec<[(f32, f32); 2]>,
    start: (f32, f32),
    at: (f32, f32),
}

impl Pen {
    fn line(&mut self, to: (f32, f32)) {
        if self.at != to {
            self.pieces.push([self.at, to]);
        }
        self.at = to;
    }

    /// A curve, as six straight pieces.
    fn curve(&mut self, point: impl Fn(f32) -> (f32, f32)) {
        for n in 1..=6_u8 {
            self.line(point(f32::from(n) / 6.0));
        }
    }
}

impl OutlinePen for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        (self.start, self.at) = ((x, y), (x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.line((x, y));
    }

    fn quad_to(&mut self, bx: f32, by: f32, x: f32, y: f32) {
        let (ax, ay) = self.at;
        self.curve(|t| {
            let (a, b, c) = ((1.0 - t) * (1.0 - t), 2.0 * t * (1.0 - t), t * t);
            (a * ax + b * bx + c * x, a * ay + b * by + c * y)
        });
    }

    fn curve_to(&mut self, bx: f32, by: f32, cx: f32, cy: f32, x: f32, y: f32) {
        let (ax, ay) = self.at;
        self.curve(|t| {
            let u = 1.0 - t;
            let (a, b, c, d) = (u * u * u, 3.0 * t * u * u, 3.0 * t * t * u, t * t * t);
            (a * ax + b * bx + c * cx + d * x, a * ay + b * by + c * cy + d * y)
        });
    }

    fn close(&mut self) {
        self.line(self.start);
    }
}
