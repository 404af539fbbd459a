//! A tread from close by.

use image::RgbImage;

use crate::camera::{Light, View, photograph};
use crate::noise::{cloud, speck};
use crate::surface::{Surface, mix, ramp, slope_of};

/// A tread, straight ahead, the tire's direction of travel upward.
#[derive(Debug, Clone, PartialEq)]
pub struct Tread {
    /// Width of the tread in millimeters.
    pub wide: f32,
    /// Depth of each major groove in millimeters, from the left edge to the right; two to six.
    pub depths: Vec<f32>,
    /// Height of the wear bars over the grooves' floor in millimeters.
    pub bars: f32,
    /// Dust, 0 to 1.
    pub dirt: f32,
    /// The light.
    pub light: Light,
    /// The camera.
    pub view: View,
    /// Everything that is left to chance follows from it.
    pub seed: u32,
}

impl Default for Tread {
    fn default() -> Self {
        Self {
            wide: 190.0,
            depths: vec![7.1, 7.5, 7.1],
            bars: 1.6,
            dirt: 0.3,
            light: Light::LAMP,
            view: View::ahead(150.0),
            seed: 1,
        }
    }
}

impl Tread {
    /// Draws it.
    pub fn render(&self, width: u32, height: u32) -> RgbImage {
        photograph(width, height, &self.view, &self.light, self.seed, |x, y| self.surface(x, y))
    }

    /// The groove at a place across: how far from its middle, and its number.
    fn groove(&self, x: f32, y: f32) -> Option<(f32, usize)> {
        let step = self.wide / (self.depths.len() + 1) as f32;
        // Zigzag along the groove.
        let bend = 2.6 * ((y / 19.0).rem_euclid(2.0) - 1.0).abs() - 1.3;
        let place = (x + self.wide / 2.0) / step;
        let number = (place.round() as usize).clamp(1, self.depths.len());
        let from = (place - number as f32) * step + bend;
        (from.abs() < 8.0).then_some((from, number - 1))
    }

    /// Height over the blocks' surface, negative in grooves.
    fn height(&self, x: f32, y: f32) -> f32 {
        if x.abs() > self.wide / 2.0 {
            return -((x.abs() - self.wide / 2.0) / 9.0).powi(2) * 2.0;
        }
        let mut height = 0.0_f32;
        if let Some((from, number)) = self.groove(x, y) {
            let bar = self.bars * ramp(6.5, 5.5, (y - 6.0).rem_euclid(130.0).min(130.0 - (y - 6.0).rem_euclid(130.0)));
            height = height.min((bar - self.depths[number]) * ramp(5.6, 3.4, from.abs()));
        }
        let step = self.wide / (self.depths.len() + 1) as f32;
        let rib = ((x + self.wide / 2.0) / step).floor();
        let slant = y + (x - rib * step) * 0.45 + rib * 17.0;
        // Cross grooves, shallower, and sipes between them.
        let cross = slant.rem_euclid(38.0) - 19.0;
        height = height.min(-4.2 * ramp(3.0, 1.8, cross.abs()));
        let wave = (slant + 1.6 * (x * 0.9).sin()).rem_euclid(12.67) - 6.33;
        height.min(-2.5 * ramp(0.65, 0.3, wave.abs()))
    }

    fn surface(&self, x: f32, y: f32) -> Surface {
        if x.abs() > self.wide / 2.0 + 26.0 {
            return Surface { open: 0.5, lit: 0.2, ..Surface::matt([0.05, 0.048, 0.044]) };
        }
        let height = self.height(x, y);
        let mut slope = slope_of(|x, y| self.height(x, y), x, y, 0.12);
        let rough = |seed: u32| 0.16 * (speck((x * 6.0) as i32, (y * 6.0) as i32, self.seed + seed) - 0.5);
        // Grooves are steep: limited, or they would mirror the horizon.
        slope = (slope.0.clamp(-2.5, 2.5) + rough(1), slope.1.clamp(-2.5, 2.5) + rough(2));
        let deep = ramp(0.0, -5.0, height);
        let dust = self.dirt * (0.35 + 0.65 * cloud(x / 11.0, y / 11.0, self.seed + 3)) * (1.0 - 0.5 * deep);
        Surface {
            slope,
            color: mix([0.05, 0.05, 0.051], [0.20, 0.16, 0.11], dust * 0.4),
            shine: 0.06,
            polish: 7.0,
            mirror: 0.0,
            open: 1.0 - 0.75 * deep,
            lit: 1.0 - 0.8 * deep,
        }
    }
}
