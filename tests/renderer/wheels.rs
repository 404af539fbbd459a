//! Wheels in any number, of known truth: a set that readings may be tuned on, and one that only scores them.
//!
//! Everything follows from the set and a number. A third are hard: seen from 20° or more, dirty, in low light, or with
//! half of the identification number hidden. The ranges stand around what was measured on seven private photos, on the
//! unwrapped ring between bead and shoulder: its height in pixels (270 to 470), the median level (57 to 119 of 255), the
//! local spread within eight pixels (median 4 to 24, ninetieth in a hundred 12 to 33), noise (J. Immerkaer, 1996; 0.7 to
//! 2) and the share of the finest detail; ten wheels drawn with them had 260 to 420, 24 to 112, 5 to 20 and 8 to 32.

use std::sync::Arc;

use crate::camera::{Light, View};
use crate::faces::{self, Outlines};
use crate::letters::{Corner, Letters};
use crate::molding::{Mark, Molded, Mud, Style};

/// Width and height of a picture.
pub const SIDES: (u32, u32) = (2400, 2400);

/// Which set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Set {
    /// Readings may be tuned on these.
    Tuning,
    /// Only scored: other seeds, other styles of lettering.
    HeldOut,
}

impl Set {
    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            Self::Tuning => "tuning",
            Self::HeldOut => "held-out",
        }
    }
}

/// What stands on a wheel, as far as it can be seen; empty where it can't.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Truth {
    /// `easy` or `hard`.
    pub kind: &'static str,
    /// What makes it hard.
    pub why: Vec<&'static str>,
    /// Size designation.
    pub size: String,
    /// Service description.
    pub service: String,
    /// Identification number without its date.
    pub tin_body: String,
    /// Date.
    pub date: String,
    /// `OUTSIDE`, `INSIDE` or `ROTATION`.
    pub words: String,
    /// Where an arrow points.
    pub arrow: &'static str,
    /// What is chalked.
    pub chalk: String,
}

/// Sizes with load index and speed symbol that go together (from memory; overall diameters by their geometry).
const SIZES: &[(&str, &str)] = &[
    ("155/65R14", "75T"),
    ("165/65R14", "79T"),
    ("165/70R14", "81T"),
    ("175/65R14", "82T"),
    ("175/65R15", "84H"),
    ("185/60R15", "84H"),
    ("185/65R15", "88T"),
    ("195/50R15", "82V"),
    ("195/55R15", "85V"),
    ("195/65R15", "91H"),
    ("195/55R16", "87V"),
    ("205/55R16", "91V"),
    ("205/60R16", "92H"),
    ("215/60R16", "95H"),
    ("215/65R16", "98H"),
    ("225/55R16", "95W"),
    ("225/70R16", "103T"),
    ("235/70R16", "106H"),
    ("205/45R17", "88W"),
    ("205/50R17", "89V"),
    ("215/45R17", "87W"),
    ("215/50R17", "95W"),
    ("215/55R17", "94V"),
    ("215/60R17", "96H"),
    ("225/45R17", "91W"),
    ("225/50R17", "94V"),
    ("225/55R17", "97W"),
    ("225/60R17", "99H"),
    ("225/65R17", "102H"),
    ("235/45R17", "94W"),
    ("235/55R17", "99V"),
    ("235/65R17", "108V"),
    ("265/65R17", "112H"),
    ("265/70R17", "115T"),
    ("215/55R18", "99V"),
    ("225/40R18", "92Y"),
    ("225/45R18", "95Y"),
    ("225/55R18", "98V"),
    ("225/60R18", "100H"),
    ("235/40R18", "95Y"),
    ("235/45R18", "94W"),
    ("235/50R18", "97V"),
    ("235/55R18", "100V"),
    ("235/65R18", "106H"),
    ("245/40R18", "93Y"),
    ("245/45R18", "96W"),
    ("245/60R18", "105H"),
    ("255/35R18", "94Y"),
    ("265/60R18", "110H"),
    ("275/65R18", "116T"),
    ("225/55R19", "99V"),
    ("235/35R19", "91Y"),
    ("235/55R19", "101V"),
    ("245/35R19", "93Y"),
    ("255/35R19", "96Y"),
    ("265/50R20", "107T"),
    ("275/40R20", "106Y"),
    ("275/55R20", "113T"),
    ("LT245/75R16", "120/116S"),
    ("LT265/70R17", "121/118S"),
    ("LT275/70R18", "125/122S"),
    ("195/75R16C", "107/105R"),
    ("215/65R16C", "109/107T"),
    ("225/65R16C", "112/110R"),
];
/// Symbols of identification numbers (49 CFR 574.5, from memory: no G, I, O, Q, S, Z).
const SYMBOLS: &[u8] = b"ABCDEFHJKLMNPRTUVWXY0123456789";
/// Invented words in large letters.
const NAMES: &[&str] = &["ORCHARD", "PROOF", "MERIDIAN", "TALUS", "NORTHERLY", "BASALT", "FELLWAY", "COASTER"];
/// Invented words behind them.
const MODELS: &[&str] = &["ROAD 3", "TERRAIN", "TOURING", "ALLROUND", "GRIP 2", "VAN PLUS"];

/// Numbers by chance, the same everywhere (S. Vigna: splitmix64).
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    fn unit(&mut self) -> f32 {
        (self.next() >> 40) as f32 / 16_777_216.0
    }

    fn between(&mut self, low: f32, high: f32) -> f32 {
        low + (high - low) * self.unit()
    }

    fn chance(&mut self, share: f32) -> bool {
        self.unit() < share
    }

    fn below(&mut self, count: usize) -> usize {
        (self.next() % count.max(1) as u64) as usize
    }

    fn pick<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }

    fn symbols(&mut self, count: usize) -> String {
        (0..count).map(|_| char::from(self.pick(SYMBOLS))).collect()
    }
}

/// The styles of a set.
#[derive(Debug)]
pub struct Styles {
    set: Set,
    faces: Vec<Arc<Outlines>>,
}

impl Styles {
    /// Loads them.
    ///
    /// # Errors
    /// When a face is not on this machine, with the package that brings it.
    pub fn load(set: Set) -> Result<Self, String> {
        let faces: &[faces::Face] = match set {
            Set::Tuning => &faces::TUNING,
            Set::HeldOut => &faces::HELD_OUT,
        };
        let faces = faces.iter().map(|face| face.load().map(Arc::new)).collect::<Result<_, _>>()?;
        Ok(Self { set, faces })
    }

    /// A style for letters of this kind; strokes of our own only where tuning is allowed.
    fn pick(&self, dice: &mut Dice, large: bool) -> Style {
        if self.set == Set::Tuning && dice.chance(0.35) {
            let corner = if dice.chance(0.5) { Corner::Cut } else { Corner::Round };
            return Style::Stroke(Letters {
                corner,
                weight: dice.between(0.13, 0.2),
                slant: 0.0,
                wide: dice.between(0.85, 1.15),
                space: dice.between(0.22, 0.36),
                outline: large && dice.chance(0.2),
            });
        }
        Style::Face {
            face: self.faces[dice.below(self.faces.len())].clone(),
            wide: dice.between(0.92, 1.15),
            slant: if large && dice.chance(0.25) { 0.18 } else { 0.0 },
            space: dice.between(0.0, 0.14),
            outline: large && dice.chance(0.3),
        }
    }
}

/// A wheel of a set by its number.
pub fn wheel(styles: &Styles, number: u32) -> (Molded, Truth) {
    let salt = if styles.set == Set::Tuning { 0x7a11 } else { 0x4e1d_0b57 };
    let mut dice = Dice(u64::from(number) << 32 | salt);
    let mut truth = Truth { kind: "easy", ..Truth::default() };
    let (size, service) = dice.pick(SIZES);
    (truth.size, truth.service) = (size.into(), service.into());
    let mut ring = Layout { marks: Vec::new() };

    // Size and service: large with the service beside it, or large without and once more in small letters.
    let at = dice.between(0.0, 360.0);
    let large = styles.pick(&mut dice, true);
    let small = styles.pick(&mut dice, false);
    let spaced = if dice.chance(0.25) { size.replace('R', " R ") } else { size.to_owned() };
    let clear = dice.between(0.7, 1.9);
    if dice.chance(0.35) {
        ring.mark(&spaced, &large, at, 0.42, dice.between(0.15, 0.22), clear);
        ring.mark(&format!("{size}  {service}"), &small, at, 0.14, dice.between(0.085, 0.11), clear * 0.8);
    } else {
        let (base, height) = (dice.between(0.14, 0.45), dice.between(0.105, 0.16));
        ring.mark(&format!("{spaced} {service}"), &large, at, base, height, clear);
    }

    // The identification number: full, without its date, or not on this side.
    let tin = dice.unit();
    let side = dice.pick(&[1.0, -1.0]);
    let tin_at = at + side * dice.between(88.0, 104.0);
    let mut hidden = None;
    if tin < 0.9 {
        let body = match dice.below(4) {
            0 => format!("{} {}", dice.symbols(3), dice.symbols(6)),
            1 => format!("{} {} {}", dice.symbols(2), dice.symbols(2), dice.symbols(3)),
            2 => format!("{} {} {}", dice.symbols(2), dice.symbols(2), dice.symbols(4)),
            _ => format!("{} {}", dice.symbols(4), dice.symbols(4)),
        };
        let date = format!("{:02}{:02}", 1 + dice.below(52), 12 + dice.below(14));
        truth.tin_body = body.replace(' ', "");
        let framed = dice.chance(0.3);
        let molded: Vec<String> =
            body.split(' ').map(|group| if framed { format!("({group})") } else { group.to_owned() }).collect();
        let mut text = format!("DOT {}", molded.join(" "));
        let dated = tin < 0.68;
        if dated {
            truth.date = date.clone();
            text += &if framed || dice.chance(0.6) { format!(" ({date})") } else { format!(" {date}") };
        }
        let style = styles.pick(&mut dice, false);
        let (base, height) = (dice.between(0.10, 0.40), dice.between(0.075, 0.12));
        let over = dice.chance(0.1);
        ring.push(Mark { text, style, at: tin_at, base, height, rise: dice.between(0.6, 1.6), over });
        hidden = Some((dated, over));
    }

    // What else stands on a sidewall.
    let other = styles.pick(&mut dice, false);
    let name = styles.pick(&mut dice, true);
    let opposite = at + 180.0 + dice.between(-12.0, 12.0);
    ring.mark(dice.pick(NAMES), &name, opposite, dice.between(0.38, 0.5), dice.between(0.16, 0.26), 1.2);
    ring.mark(dice.pick(MODELS), &name, opposite + side * 52.0, 0.45, dice.between(0.1, 0.16), 1.0);
    let load = load_line(service);
    let base = dice.between(0.1, 0.2);
    ring.mark(&load, &other, opposite - side * 40.0, base, 0.05, 0.5);
    ring.mark("MAX PRESS 350 KPA (51 PSI)", &other, opposite - side * 40.0, base + 0.08, 0.05, 0.5);
    ring.mark("TREADWEAR 420 TRACTION A TEMPERATURE A", &other, at + 52.0, 0.62, 0.05, 0.5);
    ring.mark("RADIAL TUBELESS", &other, at + 38.0, 0.16, 0.055, 0.5);
    ring.mark("TREAD PLIES 2 STEEL + 1 POLYESTER SIDEWALL 1 POLYESTER", &other, opposite + 20.0, 0.14, 0.04, 0.4);
    let approval = format!("(E4) 02{:05} S2WR2", dice.below(100_000));
    ring.mark(&approval, &other, at - 42.0, 0.14, 0.06, 0.5);
    if dice.chance(0.6) {
        ring.mark("M+S", &other, at - 30.0, 0.36, 0.07, 0.6);
    }
    if dice.chance(0.25) {
        ring.mark("EXTRA LOAD", &other, at + 30.0, 0.36, 0.07, 0.6);
    }
    let mut arrow = None;
    let word = dice.unit();
    let word_at = at - side * 84.0;
    let (base, height) = (dice.between(0.3, 0.55), dice.between(0.07, 0.13));
    if word < 0.3 {
        truth.words = "OUTSIDE".into();
        ring.mark("OUTSIDE", &other, word_at, base, height, dice.between(0.5, 1.2));
    } else if word < 0.4 {
        truth.words = "INSIDE".into();
        ring.mark("INSIDE", &other, word_at, base, height, dice.between(0.5, 1.2));
    } else if word < 0.7 {
        truth.words = "ROTATION".into();
        ring.mark("ROTATION", &other, word_at, base, height, dice.between(0.5, 1.2));
        let clockwise = dice.chance(0.5);
        truth.arrow = if clockwise { "clockwise" } else { "counterclockwise" };
        let away = 10.0 + 60.0 * height;
        arrow = Some((word_at + if clockwise { away } else { -away }, base, height, clockwise));
    }
    let chalk = dice.chance(0.25).then(|| {
        let text = dice.pick(&["FL", "FR", "RL", "RR", "LF", "RF", "LR"]);
        truth.chalk = text.into();
        (text.to_owned(), opposite - side * 40.0)
    });

    let (overall, rim) = sides(size);
    let tilt = dice.between(0.0, 11.0);
    let way = dice.between(0.0, std::f32::consts::TAU);
    let fill = dice.between(0.70, 0.95);
    let mut view = View {
        center: (dice.between(-18.0, 18.0), dice.between(-12.0, 12.0)),
        roll: dice.between(-5.0, 5.0),
        blur: dice.between(0.2, 0.8),
        noise: dice.between(1.0, 3.2),
        exposure: dice.between(0.9, 2.0),
        ..View::ahead(overall / fill)
    };
    let mut light = Light {
        around: dice.between(0.0, 360.0),
        height: dice.between(22.0, 60.0),
        key: dice.between(0.9, 2.0),
        fill: dice.between(0.35, 0.8),
        warm: dice.between(0.0, 0.6),
    };
    let mut dirt = dice.between(0.0, 0.45);
    let mut tilt = tilt;
    let mut mud = None;
    if number % 3 == 2 {
        truth.kind = "hard";
        let first = dice.below(4);
        let second = if dice.chance(0.3) { Some(dice.below(4)) } else { None };
        for hard in [Some(first), second.filter(|second| *second != first)].into_iter().flatten() {
            match hard {
                0 => {
                    tilt = dice.between(20.0, 32.0);
                    truth.why.push("tilt");
                }
                1 => {
                    dirt = dice.between(0.75, 1.1);
                    truth.why.push("dirt");
                }
                2 => {
                    view.exposure = dice.between(0.16, 0.32);
                    view.noise = dice.between(4.0, 7.0);
                    light.key *= 0.8;
                    truth.why.push("low-light");
                }
                _ => {
                    // Half of the number, from its middle on; read from the other side it is the other half.
                    let Some((dated, over)) = hidden else { continue };
                    let last = dice.chance(0.5);
                    let clockwise = last != over;
                    mud = Some(if clockwise {
                        Mud { from: tin_at, to: tin_at + 42.0 }
                    } else {
                        Mud { from: tin_at - 42.0, to: tin_at }
                    });
                    truth.tin_body.clear();
                    if dated && last {
                        truth.date.clear();
                    }
                    truth.why.push("half-hidden");
                }
            }
        }
    }
    (view.yaw, view.pitch) = (tilt * way.cos(), tilt * way.sin());
    view.tall *= 1.0 + (tilt / 60.0).powi(2);
    let ridges = if dice.chance(0.3) {
        vec![(0.36, 0.72, dice.between(0.06, 0.2), dice.pick(&[0.0, 0.7, -0.7]))]
    } else {
        Vec::new()
    };
    let molded = Molded {
        marks: ring.marks,
        chalk,
        arrow,
        ridges,
        overall,
        rim,
        studs: dice.pick(&[4, 5, 5, 5, 6]),
        paint: dice.between(0.2, 0.7),
        turn: dice.between(0.0, 360.0),
        dirt,
        rubbed: if dice.chance(0.5) { dice.between(0.0, 0.8) } else { 0.0 },
        rough: dice.between(0.10, 0.40),
        scratches: dice.below(120) as u32,
        mud,
        light,
        view,
        seed: number ^ salt as u32,
    };
    (molded, truth)
}

struct Layout {
    marks: Vec<Mark>,
}

impl Layout {
    fn push(&mut self, mark: Mark) {
        self.marks.push(mark);
    }

    fn mark(&mut self, text: &str, style: &Style, at: f32, base: f32, height: f32, rise: f32) {
        self.push(Mark { text: text.into(), style: style.clone(), at, base, height, rise, over: false });
    }
}

/// The line that gives the load, by an index near the service description's.
fn load_line(service: &str) -> String {
    let index: f32 = service.split(|c: char| !c.is_ascii_digit()).next().and_then(|n| n.parse().ok()).unwrap_or(90.0);
    // One index is about 2.9 %, and 90 stands for 600 kg (ISO 4000-1).
    let load = 600.0 * (0.0288 * (index - 90.0)).exp();
    format!("MAX LOAD {:.0} KG ({:.0} LBS)", (load / 5.0).round() * 5.0, load * 2.2046)
}

/// Overall and rim diameter of a size, in millimeters.
fn sides(size: &str) -> (f32, f32) {
    let digits: Vec<f32> = size
        .split(|c: char| !c.is_ascii_digit())
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().unwrap_or(0.0))
        .collect();
    let [width, aspect, rim] = digits[..] else { return (650.0, 406.4) };
    (rim * 25.4 + 2.0 * width * aspect / 100.0, rim * 25.4)
}
