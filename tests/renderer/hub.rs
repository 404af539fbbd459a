//! A hub without its wheel.

use image::RgbImage;

use crate::camera::{Light, View, photograph};
use crate::noise::{cloud, smooth};
use crate::surface::{Surface, dim, mix, polygon, profile, ramp, slope_of};

/// A hub with its studs and brake disc, the end of the axle shaft in its middle.
#[derive(Debug, Clone, PartialEq)]
pub struct Hub {
    /// Number of studs.
    pub studs: u8,
    /// Whether a splined shaft with its nut comes through the middle; else a smooth cap closes it.
    pub shaft: bool,
    /// Rust and dust, 0 to 1.
    pub dirt: f32,
    /// The light.
    pub light: Light,
    /// The camera.
    pub view: View,
    /// Everything that is left to chance follows from it.
    pub seed: u32,
}

impl Default for Hub {
    fn default() -> Self {
        Self { studs: 8, shaft: true, dirt: 0.4, light: Light::LAMP, view: View::ahead(420.0), seed: 1 }
    }
}

/// Radius of the brake disc, the raised middle, the circle of studs and the bore, in millimeters.
const DISC: f32 = 168.0;
const HAT: f32 = 108.0;
const CIRCLE: f32 = 82.5;
const BORE: f32 = 58.0;

impl Hub {
    /// Draws it.
    pub fn render(&self, width: u32, height: u32) -> RgbImage {
        photograph(width, height, &self.view, &self.light, self.seed, |x, y| self.surface(x, y))
    }

    /// The nearest stud: the way from its middle.
    fn stud(&self, x: f32, y: f32) -> f32 {
        let sector = std::f32::consts::TAU / f32::from(self.studs);
        let angle = (y.atan2(x) - 0.25 + sector / 2.0).rem_euclid(sector) - sector / 2.0;
        let r = x.hypot(y);
        (r * angle.cos() - CIRCLE).hypot(r * angle.sin())
    }

    /// Distance to the edge of the caliper, negative inside.
    fn caliper(x: f32, y: f32) -> f32 {
        // A block bent along the disc.
        let (out, along) = (x.hypot(y) - 150.0, y.atan2(-x) * 150.0);
        ((out.abs() - 30.0).max(0.0)).hypot((along.abs() - 66.0).max(0.0)) - 14.0
    }

    fn height(&self, x: f32, y: f32) -> f32 {
        let r = x.hypot(y);
        let mut height = profile(
            &[
                (BORE - 4.0, -6.0),
                (BORE, 32.0),
                (BORE + 2.5, 34.0),
                (HAT - 4.0, 34.0),
                (HAT + 3.0, 2.0),
                (DISC - 2.0, 0.0),
                (DISC, -6.0),
            ],
            r,
        );
        let stud = self.stud(x, y);
        height += 16.0 * ramp(7.4, 5.6, stud) - 1.2 * ramp(3.2, 2.2, stud);
        if self.shaft {
            // A washer, the nut, and the shaft's splined end through it.
            height += 8.0 * ramp(43.0, 40.0, r);
            let nut = polygon(x, y, 6, 27.0, 0.3);
            height += 14.0 * ramp(1.0, -1.5, nut) - 3.0 * ramp(25.0, 30.0, r) * ramp(0.0, -1.0, nut);
            let spline = 16.0 + 0.9 * (y.atan2(x) * 28.0).sin();
            height += 13.0 * ramp(spline + 0.8, spline - 1.2, r) - 5.0 * ramp(4.4, 2.2, r);
        } else {
            height += 26.0 * ramp(46.0, 36.0, r);
        }
        let caliper = Self::caliper(x, y);
        if caliper < 6.0 {
            let pins = [(-116.0, 62.0), (-116.0, -62.0)];
            let pin = pins.iter().map(|&(px, py)| (x - px).hypot(y - py)).fold(f32::MAX, f32::min);
            let window = ((x.hypot(y) - 152.0).abs() - 8.0).max(y.abs() - 34.0);
            let casting = 40.0 + 7.0 * ramp(12.0, 10.0, pin) - 12.0 * ramp(1.0, -3.0, window);
            height = height.max(0.0) * ramp(-2.0, 4.0, caliper) + casting * ramp(4.0, -3.0, caliper);
        }
        height
    }

    fn surface(&self, x: f32, y: f32) -> Surface {
        let r = x.hypot(y);
        let caliper = Self::caliper(x, y);
        let rust = ramp(0.38, 0.72, cloud(x / 21.0, y / 21.0, self.seed)) * self.dirt;
        let mut slope = slope_of(|x, y| self.height(x, y), x, y, 0.3);
        slope = (slope.0.clamp(-3.0, 3.0), slope.1.clamp(-3.0, 3.0));
        if caliper < 2.0 {
            let rough = |seed: u32| 0.2 * (cloud(x / 4.0, y / 4.0, self.seed + seed) - 0.5);
            let color = mix([0.075, 0.07, 0.065], [0.13, 0.062, 0.03], rust);
            let slope = (slope.0 + rough(1), slope.1 + rough(2));
            return Surface { slope, shine: 0.18, polish: 12.0, mirror: 0.03, ..Surface::matt(color) };
        }
        if r > DISC {
            return self.behind(x, y, r);
        }
        let stud = self.stud(x, y);
        // Studs and caliper stand high and throw shadows down and to the left, away from the lamp.
        let (ax, ay) = (self.light.around.to_radians().cos(), self.light.around.to_radians().sin());
        let thrown = (1..=5_u8)
            .map(|n| self.stud(x + ax * f32::from(n) * 4.0, y + ay * f32::from(n) * 4.0))
            .fold(f32::MAX, f32::min);
        let shadow = ramp(8.0, 5.5, thrown) * ramp(6.5, 8.0, stud) * f32::from(u8::from(r < HAT && r > BORE));
        let under = ramp(14.0, 0.0, caliper) * 0.8;
        let mut surface = if r > HAT {
            // The swept face: fine rings, bright; a band of rust where the pads don't reach.
            let rings = 0.05 * (r * 2.1).sin() + 0.09 * (smooth(r * 0.9, 0.5, self.seed + 4) - 0.5);
            slope.0 += rings * x / r;
            slope.1 += rings * y / r;
            let edge = ramp(DISC - 9.0, DISC - 4.0, r) + ramp(HAT + 9.0, HAT + 5.0, r);
            let color = mix([0.13, 0.13, 0.13], [0.13, 0.055, 0.025], edge.min(1.0) * 0.9);
            // A turned face shines along two rays, as a record does.
            let ray = ((y.atan2(x) - self.light.around.to_radians()).cos()).abs().powi(6);
            Surface {
                color,
                shine: 0.16 * (1.0 - edge.min(1.0)),
                polish: 16.0,
                mirror: (0.06 + 0.30 * ray) * (1.0 - edge.min(1.0)),
                ..Surface::matt(color)
            }
        } else if r > BORE {
            let color = mix([0.11, 0.105, 0.10], [0.15, 0.065, 0.03], (rust * 1.6).min(1.0));
            Surface { color, shine: 0.2, polish: 14.0, mirror: 0.06, ..Surface::matt(color) }
        } else if self.shaft {
            let nut = polygon(x, y, 6, 27.0, 0.3) < 0.5;
            let color = match r {
                r if r < 17.5 => [0.22, 0.215, 0.20],
                _ if nut => [0.20, 0.175, 0.11],
                r if r < 42.0 => [0.13, 0.125, 0.115],
                _ => [0.03, 0.025, 0.02],
            };
            let grease = ramp(0.5, 0.75, cloud(x / 9.0, y / 9.0, self.seed + 5)) * ramp(30.0, 50.0, r);
            Surface { shine: 0.5, polish: 24.0, mirror: 0.2, ..Surface::matt(mix(color, [0.03, 0.025, 0.02], grease)) }
        } else {
            Surface { shine: 0.5, polish: 30.0, mirror: 0.25, ..Surface::matt([0.3, 0.3, 0.3]) }
        };
        if stud < 7.6 {
            // Threads, seen end on.
            let color = [0.16, 0.145, 0.115];
            surface = Surface {
                shine: 0.6,
                polish: 22.0,
                mirror: 0.2,
                ..Surface::matt(dim(color, 0.75 + 0.35 * (stud * 4.2).sin()))
            };
        }
        surface.slope = slope;
        surface.lit = (1.0 - 0.85 * shadow) * (1.0 - under);
        surface.open = (1.0 - 0.5 * shadow) * (1.0 - 0.7 * under);
        // The gap around the shaft's nut is deep.
        if r < BORE && r > 43.0 {
            surface.open *= 0.35;
            surface.lit *= 0.35;
        }
        surface
    }

    /// Behind the disc: dust shield, knuckle, hose, the dark of the wheel well.
    fn behind(&self, x: f32, y: f32, r: f32) -> Surface {
        let dust = cloud(x / 30.0, y / 30.0, self.seed + 8);
        let shield = r < DISC + 16.0;
        if shield {
            let color = mix([0.08, 0.075, 0.07], [0.20, 0.15, 0.10], dust * self.dirt);
            let slope = (0.4 * x / r, 0.4 * y / r);
            return Surface { slope, open: 0.6, lit: 0.5, ..Surface::matt(color) };
        }
        // The lower arm and the coil above, out of the light.
        let arm = crate::relief::away((x, y), [(40.0, -190.0), (330.0, -150.0)]) < 20.0;
        let hose = crate::relief::away((x, y - 34.0 * (x / 46.0).sin()), [(-60.0, 182.0), (300.0, 214.0)]);
        let color = if arm {
            mix([0.05, 0.05, 0.05], [0.16, 0.12, 0.08], dust)
        } else if hose < 7.0 {
            dim([0.09, 0.09, 0.095], ramp(8.0, 0.0, hose))
        } else {
            dim([0.05, 0.045, 0.04], 0.5 + dust)
        };
        Surface { open: 0.55, lit: 0.22, ..Surface::matt(color) }
    }
}
