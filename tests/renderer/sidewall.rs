//! A whole wheel from the side.

use image::RgbImage;

use crate::camera::{Light, View, photograph};
use crate::letters::{Letters, lay};
use crate::noise::{cloud, smooth, speck};
use crate::relief::{Relief, Spot};
use crate::surface::{Color, Surface, mix, ramp};
use crate::wheel::Wheel;

/// Which way a directional tire must turn, seen from this side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rotation {
    /// As the hands of a clock.
    Clockwise,
    /// Against them.
    Counterclockwise,
}

/// A tire on its wheel, on a vehicle in a yard, as a phone sees it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sidewall {
    /// Size designation as molded: `LT245/75R16`.
    pub size: String,
    /// Service description as molded: `120/116S`.
    pub service: String,
    /// Tire identification number with `DOT` and spaces, as molded; the last word is its date.
    pub tin: String,
    /// An invented word in large letters, or nothing.
    pub name: String,
    /// Further words in small letters.
    pub words: Vec<String>,
    /// An arrow and `ROTATION`.
    pub direction: Option<Rotation>,
    /// The word `OUTSIDE`.
    pub outside: bool,
    /// What was chalked on it by hand.
    pub chalk: Option<String>,
    /// Style of size and service.
    pub letters: Letters,
    /// Overall diameter in millimeters.
    pub overall: f32,
    /// Rim diameter in millimeters, at the bead seat.
    pub rim: f32,
    /// Studs of the wheel.
    pub studs: u8,
    /// How far the wheel has rolled, in degrees clockwise; at 0 the size stands at the top.
    pub turn: f32,
    /// Dust and mud, 0 to 1.
    pub dirt: f32,
    /// The light.
    pub light: Light,
    /// The camera.
    pub view: View,
    /// Everything that is left to chance follows from it.
    pub seed: u32,
}

impl Default for Sidewall {
    fn default() -> Self {
        Self {
            size: "LT245/75R16".into(),
            service: "120/116S".into(),
            tin: "DOT 7K2 4HL1PX 1422".into(),
            name: "ORCHARD PROOF".into(),
            words: vec!["LOAD RANGE E".into(), "RADIAL TUBELESS".into(), "M+S".into()],
            direction: None,
            outside: false,
            chalk: None,
            letters: Letters::MILLED,
            overall: 774.0,
            rim: 406.4,
            studs: 8,
            turn: 0.0,
            dirt: 0.3,
            light: Light::OVERCAST,
            view: View::ahead(810.0),
            seed: 1,
        }
    }
}

impl Sidewall {
    /// Draws it.
    pub fn render(&self, width: u32, height: u32) -> RgbImage {
        let tire = Tire::mold(self, height);
        let wheel = Wheel {
            edge: tire.bead,
            studs: self.studs,
            circle: tire.bead * 0.375,
            holes: 8,
            turn: -self.turn.to_radians() + 0.3,
            dirt: self.dirt,
            paint: [0.27, 0.28, 0.29],
            seed: self.seed ^ 0x77,
        };
        photograph(width, height, &self.view, &self.light, self.seed, |x, y| {
            let r = x.hypot(y);
            let outer = tire.outer;
            let floor =
                -outer + 6.0 + 5.0 * smooth(x / 14.0, 0.5, self.seed + 40) + 2.0 * smooth(x / 3.0, 0.5, self.seed + 41);
            if y < floor {
                return ground(x, y, outer, self.seed);
            }
            if r < tire.bead - 1.0 {
                return wheel.surface(x, y);
            }
            match tire.surface(x, y) {
                Some(rubber) => rubber,
                None => yard(x, y, outer, self.seed),
            }
        })
    }
}

/// The molded ring and what is on it.
pub(crate) struct Tire {
    pub bead: f32,
    pub outer: f32,
    /// The strip's unit is a millimeter at this radius.
    middle: f32,
    turn: f32,
    dirt: f32,
    seed: u32,
    relief: Relief,
    hollow: Relief,
    letters: Relief,
    chalk: Option<Relief>,
}

impl Tire {
    pub fn mold(of: &Sidewall, height: u32) -> Self {
        let (bead, outer) = (of.rim / 2.0 + 17.0, of.overall / 2.0);
        let (middle, tall) = ((bead + outer) / 2.0, outer - bead);
        let around = std::f32::consts::TAU * middle;
        // Finer than the pixels that look at it.
        let cell = of.view.tall / (height as f32 * 2.4);
        let strip = || Relief::new(0.0, bead, around, tall, cell, true);
        let mut letters = strip();
        let mut write = |text: &str, style: &Letters, degrees: f32, base: f32, height: f32, rise: f32| {
            let height = height * tall;
            let base = bead + base * tall;
            let stretch = (base + height / 2.0) / middle;
            let spot = Spot { at: (degrees.to_radians() * middle, base), stretch, turn: 0.0 };
            let length = letters.write(text, style, height, spot, rise, height * 0.075);
            (spot, length, height)
        };
        write(&format!("{}  {}", of.size, of.service), &of.letters, 0.0, 0.50, 0.165, 1.8);
        if !of.name.is_empty() {
            write(&of.name, &Letters::OUTLINED, 180.0, 0.46, 0.2, 1.5);
        }
        let (spot, length, height) = write(&of.tin, &Letters::PLAIN, 90.0, 0.40, 0.118, 1.4);
        for (word, degrees) in of.words.iter().zip([180.0, 318.0, 225.0, 135.0]) {
            write(word, &Letters::PLAIN, degrees, 0.20, 0.075, 1.0);
        }
        if let Some(direction) = of.direction {
            let arrow = if direction == Rotation::Clockwise { "ROTATION →" } else { "← ROTATION" };
            write(arrow, &Letters::PLAIN, 270.0, 0.50, 0.11, 1.2);
        }
        if of.outside {
            write("OUTSIDE", &Letters::PLAIN, 42.0, 0.20, 0.1, 1.1);
        }
        // The date stands in an inset of its own, changed each week in the mold.
        let (_, date) = lay(of.tin.split_whitespace().last().unwrap_or_default(), &Letters::PLAIN, height);
        if date > 0.0 {
            let (left, right) = (length / 2.0 - date - height * 0.3, length / 2.0 + height * 0.3);
            let (low, high) = (-height * 0.35, height * 1.35);
            let corners = [(left, low), (right, low), (right, high), (left, high), (left, low)];
            let frame: Vec<_> = corners.windows(2).map(|pair| [pair[0], pair[1]]).collect();
            letters.stroke(&frame, height * 0.04, false, spot, -0.7, height * 0.05);
        }

        let mut relief = strip();
        let pitch = around / (around / 46.0).round();
        relief.add(|s, r| {
            let t = (r - bead) / tall;
            let rib = |at: f32, wide: f32, high: f32| high * ramp(wide, wide * 0.55, (t - at).abs() * tall);
            let fine = (s * std::f32::consts::TAU / 3.1).sin() * 0.16 * ramp(0.795, 0.80, t) * ramp(0.85, 0.845, t);
            let lug = lug(s, pitch) * 7.0 * ramp(0.865, 0.885, t);
            rib(0.075, 6.0, 2.6) + rib(0.15, 1.3, 0.8) + rib(0.785, 1.2, 0.9) + rib(0.862, 1.6, 1.0) + fine + lug
        });
        relief.add(|s, r| letters.value(s, r));
        let hollow = relief.spread(3.0);

        let chalk = of.chalk.as_ref().map(|mark| {
            let (x, y) = (-middle + tall * 0.06, 0.0);
            let mut chalk = Relief::new(x - tall, y - tall, tall * 2.0, tall * 2.0, cell * 1.4, false);
            let spot = Spot { at: (x, y - tall * 0.18), stretch: 1.0, turn: 0.1 };
            chalk.write(mark, &Letters::CHALK, tall * 0.36, spot, 1.0, tall * 0.02);
            chalk
        });
        let turn = of.turn.to_radians();
        Self { bead, outer, middle, turn, dirt: of.dirt, seed: of.seed, relief, hollow, letters, chalk }
    }

    /// Where a point lies on the strip: along it clockwise from the size, and its radius.
    fn strip(&self, x: f32, y: f32) -> (f32, f32) {
        let clockwise = (std::f32::consts::FRAC_PI_2 - y.atan2(x) - self.turn).rem_euclid(std::f32::consts::TAU);
        (clockwise * self.middle, x.hypot(y))
    }

    /// The rubber at a point; nothing beyond the tread.
    pub fn surface(&self, x: f32, y: f32) -> Option<Surface> {
        let (s, r) = self.strip(x, y);
        let tall = self.outer - self.bead;
        let around = std::f32::consts::TAU * self.middle;
        let lugs = lug(s, around / (around / 46.0).round());
        if r > self.outer - 8.0 * (1.0 - lugs) {
            return None;
        }
        let t = (r - self.bead) / tall;
        let (along, out) = self.relief.slope(s, r);
        let along = along * self.middle / r;
        // The bulge of the sidewall between bead and shoulder.
        let bulge = 0.42 * (std::f32::consts::PI * (0.2 + 0.74 * t)).cos();
        let rough = |seed: u32| 0.11 * (speck((x * 3.0) as i32, (y * 3.0) as i32, self.seed + seed) - 0.5);
        let (sin, cos) = (y / r, x / r);
        let out = out + bulge;
        let slope = (out * cos + along * sin + rough(3), out * sin - along * cos + rough(4));

        let raised = ramp(0.2, 0.8, self.letters.value(s, r));
        let depth = self.hollow.value(s, r) - self.relief.value(s, r);
        let open = (1.0 - 0.30 * depth.max(0.0)).clamp(0.25, 1.0);
        let dust = (ramp(0.30, 0.80, cloud(x / 45.0, y / 45.0, self.seed + 5)) * 0.55
            + 0.45 * cloud(x / 7.0, y / 7.0, self.seed + 6)
            + 0.35 * ramp(0.8, 1.0, t))
            * self.dirt
            * (1.0 - 0.75 * raised);
        let worn = 1.0 + 1.9 * raised;
        let rubber: Color = [0.030, 0.031, 0.033].map(|level| level * worn);
        let mut surface = Surface {
            slope,
            color: mix(rubber, [0.17, 0.135, 0.095], (dust * 0.42).min(0.7)),
            shine: 0.060 + 0.06 * raised,
            polish: 7.0,
            mirror: 0.012,
            open,
            lit: (1.0 - 0.22 * depth.max(0.0)).clamp(0.3, 1.0),
        };
        // The rim's flange throws a narrow shadow onto the bead.
        surface.open *= 0.35 + 0.65 * ramp(0.0, 6.0, r - self.bead);
        if let Some(chalk) = &self.chalk {
            let crumbs =
                0.55 * cloud(x / 2.2, y / 2.2, self.seed + 8) + 0.45 * cloud(x / 11.0, y / 11.0, self.seed + 9);
            let cover = ramp(0.52, 0.36, crumbs - 0.16 + 0.05 * depth) * chalk.value(x, y);
            surface.color = mix(surface.color, [0.80, 0.79, 0.74], cover * 0.9);
            surface.shine *= 1.0 - cover;
        }
        Some(surface)
    }
}

/// The blocks of the shoulder along the strip, 0 in a groove and 1 on a block.
pub(crate) fn lug(s: f32, pitch: f32) -> f32 {
    let at = (s / pitch).rem_euclid(2.0);
    let (place, wide) = if at < 1.0 { (at - 0.5, 0.40) } else { (at - 1.5, 0.33) };
    ramp(wide + 0.03, wide - 0.03, place.abs())
}

/// The yard's floor in front of the wheel: gravel with grass between.
pub(crate) fn ground(x: f32, y: f32, outer: f32, seed: u32) -> Surface {
    let shadow = ramp(outer * 0.85, outer * 0.10, x.abs()) * ramp(-outer - 80.0, -outer + 6.0, y);
    let floor = gravel(x, y, 1.0, seed);
    Surface { open: 1.0 - 0.78 * shadow, lit: 1.0 - 0.85 * shadow, ..floor }
}

/// Gravel and grass, seen flat along the ground; `near` is the scale.
fn gravel(x: f32, y: f32, near: f32, seed: u32) -> Surface {
    let stones = cloud(x / (8.0 * near), y / (3.6 * near), seed + 20);
    let fine = smooth(x / (2.6 * near), y / (1.4 * near), seed + 22);
    let color = mix([0.075, 0.060, 0.045], [0.27, 0.24, 0.20], ramp(0.30, 0.75, stones * 0.65 + fine * 0.35));
    let blades = smooth(x / (2.0 * near), y / (11.0 * near), seed + 23);
    let patch = cloud(x / (110.0 * near), y / (34.0 * near), seed + 21);
    let green = mix([0.025, 0.040, 0.012], [0.13, 0.17, 0.055], blades);
    let color = mix(color, green, ramp(0.50, 0.62, patch + 0.22 * (blades - 0.5)) * 0.85);
    Surface { slope: (0.8 * (stones - 0.5), -0.30 + 0.5 * (fine - 0.5)), ..Surface::matt(color) }
}

/// What is seen around the tire: the body with its arch, the dark behind the wheel, the yard beyond.
pub(crate) fn yard(x: f32, y: f32, outer: f32, seed: u32) -> Surface {
    let r = x.hypot(y * 0.97);
    let sill = -0.22 * outer;
    let arch = 1.13 * outer;
    if y > sill && r > arch {
        // Painted metal, darker toward the arch's rolled edge.
        let lip = ramp(arch + 16.0, arch + 4.0, r);
        let paint = mix([0.085, 0.165, 0.125], [0.03, 0.055, 0.042], lip * 0.7);
        let dust = ramp(0.4, 0.8, cloud(x / 90.0, y / 90.0, seed + 30)) * ramp(0.6 * outer, sill, y) * 0.6;
        let slope = (lip * x / r * -1.2, lip * y / r * -1.2 - 0.15 + y / outer * 0.12);
        let color = mix(paint, [0.24, 0.19, 0.13], dust);
        return Surface { slope, shine: 0.5, polish: 60.0, mirror: 0.085 * (1.0 - dust), ..Surface::matt(color) };
    }
    if y > sill {
        return Surface { open: 0.35, lit: 0.06, ..Surface::matt([0.025, 0.024, 0.023]) };
    }
    // Under the body: dark near it, then the far side of the yard between the rows.
    let light = ramp(sill - 10.0, -outer * 0.92, y);
    let floor = gravel(x, y, 0.7, seed + 3);
    let color = mix([0.014, 0.014, 0.012], floor.color, light);
    let behind = ramp(1.35 * outer, 1.02 * outer, x.hypot(y));
    Surface {
        open: 0.35 + 0.65 * light - 0.25 * behind,
        lit: 0.1 + 0.7 * light * (1.0 - behind),
        ..Surface::matt(color)
    }
}
