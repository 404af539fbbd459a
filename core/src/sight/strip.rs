//! Strips of lettering: a ring laid straight, or a close-up as it is.

use std::f64::consts::{PI, TAU};

use super::picture::{Picture, Plane};
use super::ring::Ring;

/// How far beyond rim and outer edge a strip reaches, as a share of the ring's height.
const BEYOND_RIM: f64 = 0.04;
const BEYOND_TIRE: f64 = 0.10;
/// The tallest strip: lettering of a tenth of it is taller than the recognizer looks at.
pub(super) const TALLEST: usize = 512;

/// Spread of levels below which nothing is told apart from noise.
const SLIGHTEST: f32 = 4.0;
/// What a pixel becomes that stands as far out as those around it do on the mean.
pub(super) const GAIN: f32 = 48.0;

/// A strip.
#[derive(Debug, Clone)]
pub(super) struct Strip {
    pub picture: Picture,
    /// Its right end goes on at its left end.
    pub round: bool,
    /// The ring that it was, or `None` for a close-up.
    pub ring: Option<Ring>,
}

impl Strip {
    /// A close-up as it is.
    pub fn straight(picture: &Picture) -> Self {
        Self { picture: picture.clone(), round: false, ring: None }
    }

    /// How far one place along the strip is from another, the short way around a ring.
    pub fn apart(&self, to: f32, from: f32) -> f32 {
        let around = self.picture.width() as f32;
        if self.round { (to - from + around / 2.0).rem_euclid(around) - around / 2.0 } else { to - from }
    }

    /// The hour of a clock's face at which a place along the strip stands, 1 to 12; `None` on a close-up.
    pub fn hour(&self, x: f32) -> Option<u8> {
        self.ring?;
        // The strip begins at nine o'clock and runs clockwise.
        let hours = 9.0 + 12.0 * f64::from(x) / self.picture.width() as f64;
        Some(((hours.round() as i64 - 1).rem_euclid(12) + 1) as u8)
    }
}

/// Lays a ring straight: along it clockwise from nine o'clock, the outer edge above.
pub(super) fn unwrap(photo: &Picture, ring: &Ring) -> Strip {
    let (x, y) = ring.middle();
    let (rim, outer) = (ring.rim.mean_radius(), ring.outer.mean_radius());
    let tall = (outer - rim).max(1.0) * (1.0 + BEYOND_RIM + BEYOND_TIRE);
    let height = (tall.round() as usize).clamp(16, TALLEST);
    let scale = tall / height as f64;
    let width = ((TAU * (rim + outer) / 2.0 / scale).round() as usize).clamp(64, 16_000);
    // Where the photo is finer than the strip, a pixel is the mean of several.
    let looks = (scale.ceil() as usize).clamp(1, 3);
    let mut levels = vec![0.0_f32; width * height];
    let ways: Vec<_> = (0..width * looks)
        .map(|n| {
            let angle = PI + (n as f64 + 0.5) * TAU / (width * looks) as f64;
            let (a, b) = (ring.rim.reach(x, y, angle), ring.outer.reach(x, y, angle));
            (angle.cos() as f32, angle.sin() as f32, a as f32, (b - a) as f32)
        })
        .collect();
    let rows = height * looks;
    let share = 1.0 / (looks * looks) as f32;
    for (row, line) in levels.chunks_mut(width).enumerate() {
        for look in 0..looks {
            let along = (row * looks + look) as f64 + 0.5;
            let v = (1.0 + BEYOND_TIRE) - (1.0 + BEYOND_TIRE + BEYOND_RIM) * along / rows as f64;
            for (value, ways) in line.iter_mut().zip(ways.chunks(looks)) {
                for (cos, sin, near, deep) in ways {
                    let r = near + v as f32 * deep;
                    *value += photo.between(x as f32 + r * cos, y as f32 + r * sin) * share;
                }
            }
        }
    }
    let picture = Plane { width, height, values: levels }.picture();
    Strip { picture, round: true, ring: Some(*ring) }
}

/// Takes light and dark out: each pixel against the mean and spread around it.
pub(super) fn even(picture: &Picture, reach: usize, round: bool) -> Picture {
    let mut away = picture.plane();
    let around = |plane: &Plane| plane.mean(reach, round).mean(reach, round);
    let mean = around(&away);
    for (value, mean) in away.values.iter_mut().zip(&mean.values) {
        *value -= mean;
    }
    let mut square = away.clone();
    square.values.iter_mut().for_each(|value| *value *= *value);
    let spread = around(&square);
    for (value, spread) in away.values.iter_mut().zip(&spread.values) {
        *value = 128.0 + *value / (spread.max(0.0).sqrt() + SLIGHTEST) * GAIN;
    }
    away.picture()
}
