//! A wheel whose lettering is given mark by mark, drawn in gray and quickly: what readings are scored on.

use std::sync::Arc;

use image::GrayImage;

use crate::camera::{Eye, Light, View, develop};
use crate::faces::Outlines;
use crate::letters::{Letters, lay};
use crate::noise::{cloud, smooth, speck};
use crate::relief::{Relief, Spot};
use crate::sidewall::{ground, lug, yard};
use crate::surface::{Surface, mix, ramp};
use crate::wheel::Wheel;

/// What the letters of a mark look like.
#[derive(Debug, Clone)]
pub enum Style {
    /// Our own strokes.
    Stroke(Letters),
    /// A typeface: how wide it is pulled, how far it leans, and whether only its edge stands out.
    Face {
        /// Its letters.
        face: Arc<Outlines>,
        /// 1 for as drawn.
        wide: f32,
        /// How far the tops lean forward, as a share of the height.
        slant: f32,
        /// More space between letters, in heights.
        space: f32,
        /// Only the edge.
        outline: bool,
    },
}

/// One line of lettering on the ring. A part in round brackets stands in an oval of its own.
#[derive(Debug, Clone)]
pub struct Mark {
    /// The text as molded.
    pub text: String,
    /// Its letters.
    pub style: Style,
    /// Where its middle stands, degrees clockwise from the top before the wheel was rolled.
    pub at: f32,
    /// The foot of its letters, as a share of the ring's height.
    pub base: f32,
    /// Height of a capital, as a share of the ring's height.
    pub height: f32,
    /// How far it stands out, in millimeters; less than nothing is cut in.
    pub rise: f32,
    /// Its feet point outward.
    pub over: bool,
}

/// A part of the ring that mud hides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mud {
    /// From here, degrees clockwise from the top before the wheel was rolled.
    pub from: f32,
    /// To here.
    pub to: f32,
}

/// A tire with its lettering, on a wheel, in a yard.
#[derive(Debug, Clone)]
pub struct Molded {
    /// All lettering.
    pub marks: Vec<Mark>,
    /// A chalked text, and where it stands, in degrees.
    pub chalk: Option<(String, f32)>,
    /// An arrow behind a mark: where, in degrees, its foot and height, and whether it points clockwise.
    pub arrow: Option<(f32, f32, f32, bool)>,
    /// Bands of fine ridges: foot, top, how far they stand out in millimeters, and how they lean.
    pub ridges: Vec<(f32, f32, f32, f32)>,
    /// Overall diameter in millimeters.
    pub overall: f32,
    /// Rim diameter in millimeters, at the bead seat.
    pub rim: f32,
    /// Studs of the wheel.
    pub studs: u8,
    /// How bright the wheel is painted, 0 to 1.
    pub paint: f32,
    /// How far the wheel has rolled, degrees clockwise.
    pub turn: f32,
    /// Dust and mud, 0 to 1.
    pub dirt: f32,
    /// Lighter color of what stands out, rubbed clean: 0 to 1.
    pub rubbed: f32,
    /// Grain of the rubber: how much its slope varies from one third of a millimeter to the next.
    pub rough: f32,
    /// Scratches along the ring.
    pub scratches: u32,
    /// A part that can't be seen.
    pub mud: Option<Mud>,
    /// The light.
    pub light: Light,
    /// The camera.
    pub view: View,
    /// Everything that is left to chance follows from it.
    pub seed: u32,
}

/// The strip that is molded, and where its unit of a millimeter holds.
struct Ring {
    bead: f32,
    outer: f32,
    middle: f32,
}

impl Ring {
    fn tall(&self) -> f32 {
        self.outer - self.bead
    }

    fn spot(&self, degrees: f32, base: f32, height: f32, over: bool) -> Spot {
        let foot = self.bead + base * self.tall();
        let tall = height * self.tall();
        let stretch = (foot + tall / 2.0) / self.middle;
        let at = (degrees.to_radians() * self.middle, if over { foot + tall } else { foot });
        Spot { at, stretch, turn: if over { std::f32::consts::PI } else { 0.0 } }
    }
}

/// A straight piece of a stroke or an outline.
type Piece = [(f32, f32); 2];

/// A line laid out: strokes or closed outlines of each letter, ovals as strokes, and its length.
struct Line {
    letters: Vec<Vec<Piece>>,
    ovals: Vec<Vec<Piece>>,
    length: f32,
}

fn letters_of(text: &str, style: &Style, height: f32) -> (Vec<Vec<Piece>>, f32) {
    match style {
        Style::Stroke(letters) => {
            let (glyphs, length) = lay(text, letters, height);
            (glyphs.into_iter().map(|glyph| glyph.pieces).collect(), length)
        }
        Style::Face { face, wide, slant, space, .. } => {
            let mut pen = 0.0;
            let mut letters = Vec::new();
            for letter in text.chars() {
                let Some(outline) = face.letter(letter) else { continue };
                let place = |(x, y): (f32, f32)| (pen + (x * wide + y * slant) * height, y * height);
                letters.push(outline.pieces.iter().map(|[a, b]| [place(*a), place(*b)]).collect());
                pen += (outline.advance * wide + space) * height;
            }
            (letters, (pen - space * height).max(0.0))
        }
    }
}

/// The edge of an oval around a text from one place to another.
fn oval(from: f32, to: f32, height: f32) -> Vec<Piece> {
    let (low, high) = (-0.38 * height, 1.38 * height);
    let r = (high - low) / 2.0;
    let (left, right, y) = (from - 0.05 * height, to + 0.05 * height, (low + high) / 2.0);
    let mut points = Vec::new();
    for n in 0..=8_u8 {
        let angle = std::f32::consts::PI * (0.5 - f32::from(n) / 8.0);
        points.push((right + r * angle.cos() * 0.8, y + r * angle.sin()));
    }
    for n in 0..=8_u8 {
        let angle = std::f32::consts::PI * (1.5 - f32::from(n) / 8.0);
        points.push((left + r * angle.cos() * 0.8, y + r * angle.sin()));
    }
    points.push(points[0]);
    points.windows(2).map(|pair| [pair[0], pair[1]]).collect()
}

fn line(mark: &Mark, height: f32) -> Line {
    let mut line = Line { letters: Vec::new(), ovals: Vec::new(), length: 0.0 };
    for part in mark.text.split_inclusive(' ') {
        let (inner, framed) = match part.trim_end().strip_prefix('(').and_then(|rest| rest.strip_suffix(')')) {
            Some(inner) => (inner, true),
            None => (part, false),
        };
        line.length += if framed { 0.75 * height } else { 0.0 };
        let (letters, length) = letters_of(inner, &mark.style, height);
        for mut letter in letters {
            letter.iter_mut().flatten().for_each(|point| point.0 += line.length);
            line.letters.push(letter);
        }
        if framed {
            line.ovals.push(oval(line.length, line.length + length, height));
        }
        line.length += length + if framed { 1.0 * height } else { 0.24 * height };
    }
    let half = line.length / 2.0;
    line.letters.iter_mut().chain(&mut line.ovals).flatten().flatten().for_each(|point| point.0 -= half);
    line
}

impl Molded {
    /// Draws it.
    pub fn render(&self, width: u32, height: u32) -> GrayImage {
        let ring = Ring {
            bead: self.rim / 2.0 + 15.0,
            outer: self.overall / 2.0,
            middle: (self.rim / 2.0 + 15.0 + self.overall / 2.0) / 2.0,
        };
        let tall = ring.tall();
        let around = std::f32::consts::TAU * ring.middle;
        let cell = self.view.tall / (height as f32 * 1.15);
        let strip = || Relief::new(0.0, ring.bead, around, tall, cell, true);
        let mut letters = strip();
        for mark in &self.marks {
            let height = mark.height * tall;
            let spot = ring.spot(mark.at, mark.base, mark.height, mark.over);
            let bevel = (height * 0.09).clamp(0.45, 1.6);
            let line = line(mark, height);
            for letter in &line.letters {
                match &mark.style {
                    Style::Stroke(style) => {
                        letters.stroke(letter, style.weight * height / 2.0, style.outline, spot, mark.rise, bevel);
                    }
                    Style::Face { outline, .. } => {
                        let edge = outline.then_some(height * 0.06);
                        letters.fill(letter, edge, spot, mark.rise, bevel);
                    }
                }
            }
            for oval in &line.ovals {
                letters.stroke(oval, height * 0.05, false, spot, mark.rise * 0.6, bevel);
            }
        }
        if let Some((at, base, height, clockwise)) = self.arrow {
            let spot = ring.spot(at, base, height, false);
            let (tall, way) = (height * tall, if clockwise { 1.0 } else { -1.0 });
            let point = |x: f32, y: f32| (x * tall * way, y * tall);
            let pieces = [
                [point(-1.5, 0.5), point(1.4, 0.5)],
                [point(1.4, 0.5), point(0.5, 0.95)],
                [point(1.4, 0.5), point(0.5, 0.05)],
            ];
            letters.stroke(&pieces, tall * 0.09, false, spot, 0.9, 0.8);
        }
        let pitch = around / (around / 40.0).round();
        let mut relief = strip();
        relief.add(|s, r| {
            let t = (r - ring.bead) / tall;
            let rib = |at: f32, wide: f32, high: f32| high * ramp(wide, wide * 0.55, (t - at).abs() * tall);
            let mut height = rib(0.05, 4.0, 1.8) + rib(0.80, 1.2, 0.8) + lug(s, pitch) * 6.0 * ramp(0.88, 0.90, t);
            for (foot, top, high, lean) in &self.ridges {
                let inside = ramp(*foot, foot + 0.01, t) * ramp(*top, top - 0.01, t);
                if inside > 0.0 {
                    height += inside * high * (std::f32::consts::TAU * (s + lean * r) / 2.4).sin();
                }
            }
            height
        });
        relief.add(|s, r| letters.value(s, r));
        let hollow = relief.spread(3.0);
        let wear = self.scratched(&ring, strip());
        let chalk = self.chalk.as_ref().map(|(text, at)| {
            let mut chalk = strip();
            let style = Letters { weight: 0.13, ..Letters::CHALK };
            let spot = Spot { turn: 0.08, ..ring.spot(*at, 0.2, 0.5, false) };
            chalk.write(text, &style, tall * 0.5, spot, 1.0, tall * 0.03);
            chalk
        });

        let wheel = Wheel {
            edge: ring.bead,
            studs: self.studs,
            circle: ring.bead * 0.375,
            holes: 8,
            turn: -self.turn.to_radians() + 0.3,
            dirt: self.dirt,
            paint: [self.paint; 3],
            seed: self.seed ^ 0x77,
        };
        let turn = self.turn.to_radians();
        let eye = Eye::new(width, height, &self.view, &self.light);
        let rubber = |x: f32, y: f32| -> Option<Surface> {
            let r = x.hypot(y);
            let clockwise = (std::f32::consts::FRAC_PI_2 - y.atan2(x) - turn).rem_euclid(std::f32::consts::TAU);
            let s = clockwise * ring.middle;
            let t = (r - ring.bead) / tall;
            let lugs = if t > 0.85 { lug(s, pitch) } else { 1.0 };
            if r > ring.outer - 7.0 * (1.0 - lugs) {
                return None;
            }
            let (along, out) = relief.slope(s, r);
            let along = along * ring.middle / r;
            let bulge = 0.42 * (std::f32::consts::PI * (0.2 + 0.74 * t)).cos();
            let rough = |seed: u32| {
                let fine = speck((x * 3.0) as i32, (y * 3.0) as i32, self.seed + seed) - 0.5;
                self.rough * (fine + 0.8 * (smooth(x / 1.1, y / 1.1, self.seed + seed + 20) - 0.5))
            };
            let (sin, cos) = (y / r, x / r);
            let out = out + bulge;
            let mut slope = (out * cos + along * sin + rough(3), out * sin - along * cos + rough(4));
            let raised = letters.value(s, r).abs().min(1.0);
            let depth = hollow.value(s, r) - relief.value(s, r);
            let dust = (ramp(0.30, 0.80, cloud(x / 45.0, y / 45.0, self.seed + 5)) * 0.7
                + 0.5 * (speck((x * 2.0) as i32, (y * 2.0) as i32, self.seed + 6) - 0.3)
                + 0.35 * ramp(0.8, 1.0, t))
                * self.dirt
                * (1.0 - 0.6 * raised);
            let worn = 1.0 + 2.2 * self.rubbed * ramp(0.2, 0.8, letters.value(s, r));
            let mut color = mix([0.034 * worn; 3], [0.16, 0.13, 0.10], (dust * 0.5).clamp(0.0, 0.75));
            color = mix(color, [0.11; 3], wear.value(s, r) * 0.8);
            let mut open = (1.0 - 0.30 * depth.max(0.0)).clamp(0.25, 1.0);
            let mut shine = 0.055;
            if let Some(mud) = &self.mud {
                let degrees = clockwise.to_degrees();
                let from = (degrees - mud.from).rem_euclid(360.0);
                let wide = (mud.to - mud.from).rem_euclid(360.0);
                let ragged = 2.0 * (cloud(x / 9.0, y / 9.0, self.seed + 12) - 0.5);
                let inside = (from + ragged).min(wide - from + ragged);
                if inside > 0.0 && from < wide {
                    let cover = ramp(0.0, 0.4, inside);
                    color = mix(color, [0.15, 0.115, 0.08], cover);
                    let lump = |seed: u32| cloud(x / 4.0, y / 4.0, self.seed + seed) - 0.5;
                    slope = (
                        slope.0 * (1.0 - cover) + cover * 0.8 * lump(13),
                        slope.1 * (1.0 - cover) + cover * 0.8 * lump(14),
                    );
                    open = open * (1.0 - cover) + cover;
                    shine *= 1.0 - cover;
                }
            }
            if let Some(chalk) = &chalk {
                let crumbs = cloud(x / 2.2, y / 2.2, self.seed + 8);
                let cover = ramp(0.62, 0.40, crumbs + 0.05 * depth) * chalk.value(s, r);
                color = mix(color, [0.72, 0.70, 0.62], cover * 0.9);
            }
            open *= 0.35 + 0.65 * ramp(0.0, 6.0, r - ring.bead);
            let lit = (1.0 - 0.22 * depth.max(0.0)).clamp(0.3, 1.0);
            Some(Surface { slope, color, shine, polish: 7.0, mirror: 0.012, open, lit })
        };
        let outer = ring.outer;
        let surface = |x: f32, y: f32| {
            let r = x.hypot(y);
            let floor = -outer + 5.0 + 4.0 * (smooth(x / 14.0, 0.5, self.seed + 40) - 0.5);
            if y < floor {
                ground(x, y, outer, self.seed)
            } else if r < ring.bead - 1.0 {
                wheel.surface(x, y)
            } else {
                rubber(x, y).unwrap_or_else(|| yard(x, y, outer, self.seed))
            }
        };
        let columns = width as usize;
        let mut linear = vec![0.0_f32; columns * height as usize];
        for at in 0..linear.len() {
            let (column, row) = (at % columns, at / columns);
            let (x, y) = eye.point(column as f32 + 0.5, row as f32 + 0.5);
            // Around the rubber nothing is read: four pixels look once.
            let plain = !(ring.bead - 4.0..outer + 4.0).contains(&x.hypot(y)) && y > 12.0 - outer;
            linear[at] = if plain && (column % 2 == 1 || row % 2 == 1) {
                linear[at - column % 2 - columns * (row % 2)]
            } else {
                let [red, green, blue] = eye.shade(&surface(x, y));
                0.2126 * red + 0.7152 * green + 0.0722 * blue
            };
        }
        develop(&linear, width, height, &self.view, self.seed)
    }

    fn scratched(&self, ring: &Ring, mut strip: Relief) -> Relief {
        for n in 0..self.scratches {
            let chance = |part: u32| speck(n as i32, part as i32, self.seed ^ 0x5c1a);
            let (at, up) = (chance(1) * 360.0, 0.2 + 0.6 * chance(2));
            let (long, lean) = (6.0 + 40.0 * chance(3), (chance(4) - 0.5) * 0.8);
            let spot = ring.spot(at, up, 0.0, false);
            strip.stroke(&[[(-long / 2.0, -long * lean), (long / 2.0, long * lean)]], 0.25, false, spot, 1.0, 0.5);
        }
        strip
    }
}
