//! A pressed steel wheel as seen from outside.

use crate::noise::{cloud, smooth};
use crate::surface::{Color, Surface, dim, mix, polygon, profile, ramp, slope_of};

/// A steel wheel with hand holes, its nuts, its hub's cap and its valve.
pub(crate) struct Wheel {
    /// Radius of the rim's outer edge.
    pub edge: f32,
    pub studs: u8,
    /// Radius of the circle of studs.
    pub circle: f32,
    pub holes: u8,
    /// How the wheel stands turned, in radians.
    pub turn: f32,
    pub dirt: f32,
    pub paint: Color,
    pub seed: u32,
}

impl Wheel {
    /// The nearest of `n` evenly spread places on a circle, and the point seen from there, outward along x.
    fn nearest(&self, x: f32, y: f32, n: u8, circle: f32, turn: f32) -> (f32, f32) {
        let sector = std::f32::consts::TAU / f32::from(n);
        let angle = (y.atan2(x) - turn + sector / 2.0).rem_euclid(sector) - sector / 2.0;
        let r = x.hypot(y);
        (r * angle.cos() - circle, r * angle.sin())
    }

    /// Distance to the edge of the nearest hand hole, negative inside.
    fn hole(&self, x: f32, y: f32) -> f32 {
        let (out, along) = self.nearest(x, y, self.holes, self.edge * 0.60, self.turn);
        // A rounded slot along the circle.
        (along.abs() - self.edge * 0.045).max(0.0).hypot(out) - self.edge * 0.072
    }

    fn height(&self, x: f32, y: f32) -> f32 {
        let e = self.edge;
        let r = x.hypot(y);
        let disc = profile(
            &[
                (0.30 * e, 4.0),
                (0.47 * e, 2.0),
                (0.53 * e, 13.0),
                (0.66 * e, 6.0),
                (0.735 * e, -26.0),
                (0.77 * e, -30.0),
                (0.87 * e, -24.0),
                (0.93 * e, -2.0),
                (0.965 * e, 5.0),
                (0.985 * e, 5.0),
                (e, -4.0),
            ],
            r,
        );
        let hole = self.hole(x, y);
        let mut height = disc + 2.2 * ramp(7.0, 0.0, hole.abs()) - 12.0 * ramp(1.5, -5.0, hole);
        // Cap over the bearing.
        let cap = 0.255 * e;
        height += 20.0 * ramp(cap, cap - 9.0, r) - 3.0 * ramp(cap - 15.0, cap - 20.0, r) + 5.0 * ramp(22.0, 15.0, r);
        // Nuts on their seats.
        let (out, along) = self.nearest(x, y, self.studs, self.circle, self.turn + 0.2);
        let from = out.hypot(along);
        height -= 4.0 * ramp(17.0, 14.0, from);
        let hex = polygon(out, along, 6, 10.5, 0.35);
        height += 15.0 * ramp(0.8, -0.8, hex) - 3.0 * ramp(8.0, 11.5, from) * ramp(0.0, -1.0, hex);
        height -= 3.0 * ramp(6.4, 5.6, from);
        height + 1.5 * ramp(5.2, 4.4, from)
    }

    pub fn surface(&self, x: f32, y: f32) -> Surface {
        let r = x.hypot(y);
        let hole = self.hole(x, y);
        let mut slope = slope_of(|x, y| self.height(x, y), x, y, 0.35);
        // A little orange peel in the paint.
        slope.0 += 0.05 * (smooth(x / 4.0, y / 4.0, self.seed) - 0.5);
        slope.1 += 0.05 * (smooth(x / 4.0, y / 4.0, self.seed + 1) - 0.5);
        let (out, along) = self.nearest(x, y, self.studs, self.circle, self.turn + 0.2);
        let nut = polygon(out, along, 6, 10.5, 0.35) < 0.3;
        let from = out.hypot(along);

        let dust = ramp(0.35, 0.95, cloud(x / 60.0, y / 60.0, self.seed + 2) + 0.5 * self.dirt - 0.2) * self.dirt;
        let mut surface =
            Surface { color: self.paint, shine: 0.35, polish: 26.0, mirror: 0.16, ..Surface::matt(self.paint) };
        if nut {
            surface = Surface { color: [0.24, 0.23, 0.22], shine: 0.7, polish: 34.0, mirror: 0.30, ..surface };
            // The stud's end inside the nut.
            if from < 6.0 {
                surface.color = [0.13, 0.11, 0.09];
                surface.mirror = 0.1;
            }
        } else if r < 0.25 * self.edge {
            surface = Surface { color: [0.16, 0.16, 0.16], shine: 0.6, polish: 40.0, mirror: 0.30, ..surface };
        }
        surface.slope = slope;
        surface.color = mix(surface.color, [0.24, 0.18, 0.12], dust * 0.75);
        surface.mirror *= 1.0 - dust * 0.8;
        surface.shine *= 1.0 - dust * 0.7;
        // Rust that runs from the nuts and the edges of the holes.
        let rust = ramp(0.62, 0.8, cloud(x / 9.0, y / 9.0, self.seed + 3))
            * (ramp(22.0, 12.0, from) + ramp(6.0, 0.0, hole.abs())).min(1.0)
            * 0.55;
        surface.color = mix(surface.color, [0.20, 0.075, 0.03], rust);
        // Hollows get less of the sky; the well of the rim lies behind the lip.
        surface.open = 1.0 - 0.55 * ramp(0.70, 0.76, r / self.edge) * ramp(0.96, 0.90, r / self.edge);
        surface.open *= 1.0 - 0.5 * ramp(16.5, 11.0, from) * f32::from(u8::from(!nut));
        surface.lit = 1.0 - 0.6 * ramp(0.70, 0.76, r / self.edge) * ramp(0.96, 0.86, r / self.edge);
        if hole < -1.0 {
            // The brake drum in the dark behind.
            let depth = ramp(-1.0, -7.0, hole);
            surface.color = mix(surface.color, [0.035, 0.03, 0.027], depth);
            surface.mirror *= 1.0 - depth;
            surface.shine *= 1.0 - depth;
            surface.lit *= 1.0 - 0.85 * depth;
            surface.open *= 1.0 - 0.6 * depth;
        }
        // Valve: a rubber stem with a cap, through the well of the rim.
        let (toward, across) = {
            let (sin, cos) = (self.turn + 2.2).sin_cos();
            (x * cos + y * sin, y * cos - x * sin)
        };
        let stem = crate::relief::away((toward, across), [(0.80 * self.edge, 0.0), (0.90 * self.edge, 0.0)]);
        if stem < 5.2 {
            let cap = toward < 0.845 * self.edge;
            let color = if cap { [0.02, 0.02, 0.02] } else { [0.05, 0.05, 0.05] };
            let side = across / 5.5;
            let (sin, cos) = (self.turn + 2.2).sin_cos();
            let slope = (-side * sin * 1.6, side * cos * 1.6);
            let ridges = if cap { 0.5 + 0.5 * (toward * 2.4).sin().abs() } else { 1.0 };
            return Surface { slope, color: dim(color, ridges), shine: 0.3, polish: 18.0, ..Surface::matt(color) };
        }
        surface
    }
}
