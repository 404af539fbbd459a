//! Printed things: a label on a door's pillar, a page of a manual.

use image::RgbImage;

use crate::camera::{Light, View, photograph};
use crate::letters::{Letters, lay};
use crate::noise::{cloud, smooth};
use crate::relief::{Relief, Spot};
use crate::surface::{Surface, mix, ramp};

/// What a page is printed on, and what it lies on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// A glossy label on painted metal.
    Label,
    /// A page of a book that lies open on a bench.
    Book,
}

/// Something printed at a place of the page, in millimeters from its top left corner.
#[derive(Debug, Clone, PartialEq)]
pub enum Line {
    /// Text that begins at this place, its capitals this high; heavy or not.
    Text {
        /// From the left.
        x: f32,
        /// Base line, from the top.
        y: f32,
        /// Height of capitals.
        height: f32,
        /// Heavy print.
        heavy: bool,
        /// The words.
        text: String,
    },
    /// A straight rule.
    Rule {
        /// From here, from the left and from the top.
        from: (f32, f32),
        /// To here.
        to: (f32, f32),
        /// Its width.
        wide: f32,
    },
}

impl Line {
    /// Text in plain print.
    pub fn text(x: f32, y: f32, height: f32, text: &str) -> Self {
        Self::Text { x, y, height, heavy: false, text: text.into() }
    }

    /// Text in heavy print.
    pub fn heavy(x: f32, y: f32, height: f32, text: &str) -> Self {
        Self::Text { x, y, height, heavy: true, text: text.into() }
    }

    /// A rule of 0.4 mm.
    pub fn rule(from: (f32, f32), to: (f32, f32)) -> Self {
        Self::Rule { from, to, wide: 0.4 }
    }
}

/// A printed page.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Width and height in millimeters.
    pub size: (f32, f32),
    /// On what.
    pub paper: Paper,
    /// What is printed.
    pub lines: Vec<Line>,
    /// Wear and dirt, 0 to 1.
    pub dirt: f32,
    /// The light.
    pub light: Light,
    /// The camera.
    pub view: View,
    /// Everything that is left to chance follows from it.
    pub seed: u32,
}

impl Page {
    /// Draws it.
    pub fn render(&self, width: u32, height: u32) -> RgbImage {
        let ink = self.print(height);
        photograph(width, height, &self.view, &self.light, self.seed, |x, y| self.surface(&ink, x, y))
    }

    fn print(&self, height: u32) -> Relief {
        let (wide, tall) = self.size;
        let mut ink = Relief::new(-wide / 2.0, -tall / 2.0, wide, tall, self.view.tall / (height as f32 * 2.4), false);
        for line in &self.lines {
            let place = |(x, y): (f32, f32)| (x - wide / 2.0, tall / 2.0 - y);
            match line {
                Line::Text { x, y, height, heavy, text } => {
                    let letters =
                        if *heavy { Letters { weight: 0.19, wide: 1.05, ..Letters::PRINT } } else { Letters::PRINT };
                    let (_, length) = lay(text, &letters, *height);
                    let spot = Spot { at: place((x + length / 2.0, *y)), stretch: 1.0, turn: 0.0 };
                    ink.write(text, &letters, *height, spot, 1.0, height * 0.05);
                }
                Line::Rule { from, to, wide } => {
                    let spot = Spot { at: (0.0, 0.0), stretch: 1.0, turn: 0.0 };
                    ink.stroke(&[[place(*from), place(*to)]], wide / 2.0, false, spot, 1.0, wide * 0.4);
                }
            }
        }
        ink
    }

    fn surface(&self, ink: &Relief, x: f32, y: f32) -> Surface {
        let (wide, tall) = self.size;
        // Distance to the page's edge, negative inside, with rounded corners.
        let corner = if self.paper == Paper::Label { 4.0 } else { 1.0 };
        let out = ((x.abs() - wide / 2.0 + corner).max(0.0)).hypot((y.abs() - tall / 2.0 + corner).max(0.0)) - corner;
        let spots = ramp(0.60, 0.82, cloud(x / 16.0, y / 16.0, self.seed)) * self.dirt;
        let covered = ink.value(x, y) * (1.0 - 0.12 * spots);
        match self.paper {
            Paper::Label if out > 0.0 => {
                // Painted pillar with a seam to the left and a pressed bead to the right.
                let seam = ramp(2.2, 0.6, (x + wide * 0.62).abs());
                let bead = (x - wide * 0.66) / 9.0;
                let slope =
                    (-bead * 0.9 * (-bead * bead).exp() - 0.02, 0.03 * (smooth(x / 30.0, y / 30.0, self.seed) - 0.5));
                let color = mix([0.085, 0.165, 0.125], [0.01, 0.01, 0.01], seam);
                let color = mix(color, [0.2, 0.16, 0.11], spots * 0.6);
                let shadow = ramp(2.0, 0.0, out) * 0.35;
                Surface {
                    slope,
                    shine: 0.35,
                    polish: 50.0,
                    mirror: 0.08,
                    lit: 1.0 - shadow,
                    open: 1.0 - shadow,
                    ..Surface::matt(color)
                }
            }
            Paper::Label => {
                let scratch = ramp(0.985, 1.0, smooth(x * 1.3 + y * 0.2, y / 40.0, self.seed + 3)) * 0.5;
                let color = mix([0.60, 0.59, 0.53], [0.014, 0.014, 0.018], covered * (1.0 - scratch));
                let color = mix(color, [0.26, 0.21, 0.14], spots * 0.35);
                let ripple = 0.05 * (smooth(x / 22.0, y / 18.0, self.seed + 4) - 0.5);
                Surface { slope: (ripple, ripple), shine: 0.16, polish: 30.0, mirror: 0.02, ..Surface::matt(color) }
            }
            Paper::Book if out > 0.0 => {
                // A bench of worn boards.
                let grain = cloud(x / 60.0, y / 3.0, self.seed + 5);
                let gap =
                    ramp(1.6, 0.4, (y - 0.31 * tall).rem_euclid(95.0).min(95.0 - (y - 0.31 * tall).rem_euclid(95.0)));
                let color = mix([0.10, 0.055, 0.025], [0.22, 0.135, 0.07], grain);
                let color = mix(color, [0.02, 0.015, 0.01], gap);
                let shadow = ramp(9.0, 0.0, out) * 0.6;
                Surface {
                    slope: (0.0, 0.25 * (grain - 0.5)),
                    lit: 1.0 - shadow,
                    open: 1.0 - 0.7 * shadow,
                    ..Surface::matt(color)
                }
            }
            Paper::Book => {
                // The page curves down into the fold at the left.
                let fold = ramp(0.45, 0.0, (x + wide / 2.0) / wide);
                let fiber = cloud(x * 1.5, y * 1.5, self.seed + 6);
                let paper = mix([0.53, 0.50, 0.43], [0.59, 0.56, 0.49], fiber);
                let thumb = ramp(0.55, 0.78, cloud(x / 24.0, y / 24.0, self.seed + 7)) * self.dirt;
                let color = mix(mix(paper, [0.016, 0.016, 0.02], covered), [0.20, 0.16, 0.12], thumb * 0.45);
                Surface {
                    slope: (-0.35 * fold * fold, 0.0),
                    open: 1.0 - 0.45 * fold * fold,
                    shine: 0.02,
                    ..Surface::matt(color)
                }
            }
        }
    }
}
