//! A sidewall that was cut.

use image::RgbImage;

use crate::camera::photograph;
use crate::noise::{cloud, smooth};
use crate::sidewall::{Sidewall, Tire};
use crate::surface::{Surface, mix, ramp};

/// A gash in a sidewall, seen from close by; the cords lie bare in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    /// The tire; its view says where the camera looks.
    pub on: Sidewall,
    /// Middle of the cut, in millimeters from the wheel's middle.
    pub at: (f32, f32),
    /// Its length in millimeters.
    pub long: f32,
    /// How far it gapes, in millimeters.
    pub wide: f32,
    /// Its direction, in degrees from the right.
    pub turn: f32,
}

impl Cut {
    /// Draws it.
    pub fn render(&self, width: u32, height: u32) -> RgbImage {
        let tire = Tire::mold(&self.on, height);
        let seed = self.on.seed;
        photograph(width, height, &self.on.view, &self.on.light, seed, |x, y| {
            let rubber = if x.hypot(y) > tire.bead { tire.surface(x, y) } else { None };
            let Some(rubber) = rubber else {
                return Surface { open: 0.4, lit: 0.1, ..Surface::matt([0.03, 0.03, 0.03]) };
            };
            let (sin, cos) = self.turn.to_radians().sin_cos();
            let (dx, dy) = (x - self.at.0, y - self.at.1);
            let (along, across) = (dx * cos + dy * sin, dy * cos - dx * sin);
            // The edge wanders; the gash is widest a little off its middle.
            let straight = along / (self.long / 2.0);
            let t = straight + 0.12 * (1.0 - straight * straight).max(0.0);
            let across = across
                + 3.4 * (smooth(along / 13.0, 0.5, seed + 50) - 0.5)
                + 1.4 * (smooth(along / 3.5, 0.5, seed + 51) - 0.5);
            let half = self.wide / 2.0 * (1.0 - t * t).max(0.0).powf(0.75);
            let inside = half - across.abs();
            let torn = ramp(9.0, 0.0, -inside) * ramp(1.0, 0.7, t.abs());
            if half < 0.3 || inside < 0.0 {
                // Lips curl outward beside the gash.
                let curl = 0.9 * torn * across.signum();
                let slope = (rubber.slope.0 + curl * sin, rubber.slope.1 - curl * cos);
                return Surface { slope, color: mix(rubber.color, [0.07, 0.07, 0.072], torn * 0.5), ..rubber };
            }
            let deep = ramp(0.0, 4.0, inside);
            // Cords of the ply run across, some of them broken, a little frayed.
            let lane = (along + 0.25 * across) / 2.5;
            let lane_number = lane.floor() as i32;
            let round = 1.0 - ((lane - lane.floor()) - 0.5).abs() * 2.0;
            let luck = |n: i32| crate::noise::speck(lane_number, n, seed + 52);
            let gap = if luck(3) < 0.4 { half * (0.25 + 0.4 * luck(4)) } else { -1.0 };
            let whole = ramp(gap - 0.6, gap + 0.8, (across - half * 0.5 * (luck(5) - 0.5)).abs());
            let fray = cloud(along * 1.2, across * 0.4, seed + 53);
            let cord = ramp(0.25, 0.6, round + 0.5 * (fray - 0.5)) * whole * ramp(1.5, 4.5, inside);
            let color = mix([0.012, 0.011, 0.011], [0.56, 0.50, 0.38], cord * (0.65 + 0.5 * (fray - 0.3)));
            let wall = 1.6 * (1.0 - deep) * -across.signum();
            let bend = (lane - lane.floor() - 0.5) * 1.6 * cord;
            Surface {
                slope: (wall * -sin - bend * cos, wall * cos - bend * sin),
                open: 0.30 + 0.45 * cord,
                lit: 0.15 + 0.55 * cord * ramp(-half, half * 0.4, -across),
                ..Surface::matt(color)
            }
        })
    }
}
