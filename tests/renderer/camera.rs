//! Light, lens and noise: from surfaces to pixels.

use image::{GrayImage, Rgb, RgbImage};

use crate::noise::speck;
use crate::surface::{Color, Surface, dim, mix, ramp};

/// The light in which a picture is taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Light {
    /// Where the key light stands around the picture, in degrees, 0 to the right, 90 above.
    pub around: f32,
    /// How high it stands over the surface, in degrees; 90 is straight ahead.
    pub height: f32,
    /// Strength of the key light.
    pub key: f32,
    /// Strength of the light from all sides.
    pub fill: f32,
    /// How warm the key light is, 0 to 1.
    pub warm: f32,
}

impl Light {
    /// Under clouds: from all sides, a little from above.
    pub const OVERCAST: Self = Self { around: 100.0, height: 38.0, key: 1.3, fill: 0.75, warm: 0.1 };
    /// Low sun from the left.
    pub const LOW_SUN: Self = Self { around: 150.0, height: 28.0, key: 2.1, fill: 0.45, warm: 0.75 };
    /// A work lamp held at the right.
    pub const LAMP: Self = Self { around: 25.0, height: 33.0, key: 1.9, fill: 0.3, warm: 0.45 };
}

/// How the camera is held, and what it adds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct View {
    /// Millimeters from the middle of the thing to the middle of the picture.
    pub center: (f32, f32),
    /// Millimeters of the thing over the picture's height.
    pub tall: f32,
    /// Turned to the left or right of straight ahead, in degrees.
    pub yaw: f32,
    /// Looking down or up, in degrees.
    pub pitch: f32,
    /// Rolled, in degrees.
    pub roll: f32,
    /// Blur of the lens or the hand: standard deviation in pixels.
    pub blur: f32,
    /// Noise of the sensor: standard deviation in steps of 255.
    pub noise: f32,
    /// Brightness, 1 for right.
    pub exposure: f32,
}

impl View {
    /// Straight ahead at a thing of this height.
    pub const fn ahead(tall: f32) -> Self {
        Self { center: (0.0, 0.0), tall, yaw: 0.0, pitch: 0.0, roll: 0.0, blur: 0.6, noise: 2.2, exposure: 1.0 }
    }
}

/// Where a pixel looks, and what a surface there looks like.
pub(crate) struct Eye<'a> {
    view: &'a View,
    /// Sine and cosine of yaw, pitch and roll.
    turns: [(f32, f32); 3],
    light: &'a Light,
    toward: [f32; 3],
    sun: Color,
    width: f32,
    height: f32,
    scale: f32,
}

impl<'a> Eye<'a> {
    pub fn new(width: u32, height: u32, view: &'a View, light: &'a Light) -> Self {
        let (around, up) = (light.around.to_radians(), light.height.to_radians());
        Self {
            view,
            turns: [view.yaw, view.pitch, view.roll].map(|degrees| degrees.to_radians().sin_cos()),
            light,
            toward: [around.cos() * up.cos(), around.sin() * up.cos(), up.sin()],
            sun: mix([1.0, 1.0, 1.0], [1.15, 0.97, 0.74], light.warm),
            width: width as f32,
            height: height as f32,
            scale: view.tall / height as f32,
        }
    }

    /// The point of the plane that a ray through a pixel meets: the camera turns around the middle of the picture.
    pub fn point(&self, px: f32, py: f32) -> (f32, f32) {
        let view = self.view;
        let [(yaw_sin, yaw_cos), (pitch_sin, pitch_cos), (roll_sin, roll_cos)] = self.turns;
        // The camera stands twice the picture's height away.
        let far = view.tall * 2.0;
        let (x, y) = ((px - self.width / 2.0) * self.scale, (self.height / 2.0 - py) * self.scale);
        let (x, y) = (x * roll_cos - y * roll_sin, x * roll_sin + y * roll_cos);
        let turn = |[x, y, z]: [f32; 3]| {
            let (y, z) = (y * pitch_cos - z * pitch_sin, y * pitch_sin + z * pitch_cos);
            [x * yaw_cos + z * yaw_sin, y, z * yaw_cos - x * yaw_sin]
        };
        let (from, ray) = (turn([0.0, 0.0, far]), turn([x, y, -far]));
        let reach = -from[2] / ray[2].min(-1e-3);
        (from[0] + ray[0] * reach + view.center.0, from[1] + ray[1] * reach + view.center.1)
    }

    pub fn shade(&self, surface: &Surface) -> Color {
        shade(surface, self.toward, self.sun, self.light)
    }
}

/// Light to a gray picture: lens, exposure, the phone's contrast, noise.
pub(crate) fn develop(linear: &[f32], width: u32, height: u32, view: &View, seed: u32) -> GrayImage {
    let columns = width as usize;
    let mut plane = linear.to_vec();
    if view.blur >= 0.2 {
        let reach = (view.blur * 2.5).ceil() as usize;
        let weights: Vec<f32> =
            (0..=2 * reach).map(|i| (-((i as f32 - reach as f32) / view.blur).powi(2) / 2.0).exp()).collect();
        let all: f32 = weights.iter().sum();
        let pass = |plane: &[f32], step: usize| {
            let mut out = plane.to_vec();
            let margin = reach * step;
            for (at, value) in out.iter_mut().enumerate().take(plane.len().saturating_sub(margin)).skip(margin) {
                let from = at - margin;
                *value =
                    weights.iter().enumerate().map(|(i, weight)| weight * plane[from + i * step]).sum::<f32>() / all;
            }
            out
        };
        plane = pass(&pass(&plane, 1), columns);
    }
    GrayImage::from_fn(width, height, |x, y| {
        let level = plane[y as usize * columns + x as usize];
        let (dx, dy) = (x as f32 / width as f32 - 0.5, y as f32 / height as f32 - 0.5);
        let level = level * (1.0 - 0.45 * (dx * dx + dy * dy)) * view.exposure;
        let coded = coded(level);
        let grain = (0..3).map(|n| speck(x as i32, y as i32, (seed ^ 0x51ed) + n)).sum::<f32>() * 2.0 - 3.0;
        image::Luma([(coded * 255.0 + grain * view.noise + 0.5).clamp(0.0, 255.0) as u8])
    })
}

/// Linear light as a phone codes it, with the contrast that phones add.
fn coded(level: f32) -> f32 {
    let seen = 1.0 - (-1.3 * level).exp();
    let coded = if seen <= 0.003_130_8 { 12.92 * seen } else { 1.055 * seen.powf(1.0 / 2.4) - 0.055 };
    coded + 0.65 * (coded * coded * (3.0 - 2.0 * coded) - coded)
}

/// Draws what a function says of each point of a plane.
pub(crate) fn photograph(
    width: u32,
    height: u32,
    view: &View,
    light: &Light,
    seed: u32,
    surface: impl Fn(f32, f32) -> Surface + Sync,
) -> RgbImage {
    let eye = Eye::new(width, height, view, light);
    let lit = |px: f32, py: f32| -> Color {
        let (x, y) = eye.point(px, py);
        eye.shade(&surface(x, y))
    };

    let (columns, rows) = (width as usize, height as usize);
    let mut linear: Vec<Color> = vec![[0.0; 3]; columns * rows];
    let share = rows.div_ceil(std::thread::available_parallelism().map_or(1, |n| n.get())).max(1);
    std::thread::scope(|scope| {
        for (part, pixels) in linear.chunks_mut(share * columns).enumerate() {
            let lit = &lit;
            scope.spawn(move || {
                for (at, pixel) in pixels.iter_mut().enumerate() {
                    let (column, row) = ((at % columns) as f32, (part * share + at / columns) as f32);
                    for (dx, dy) in [(0.25, 0.25), (0.75, 0.25), (0.25, 0.75), (0.75, 0.75)] {
                        let color = lit(column + dx, row + dy);
                        *pixel = [0, 1, 2].map(|i| pixel[i] + color[i] / 4.0);
                    }
                }
            });
        }
    });
    blur(&mut linear, columns, rows, view.blur);

    RgbImage::from_fn(width, height, |x, y| {
        let color = linear[y as usize * columns + x as usize];
        let (dx, dy) = (x as f32 / width as f32 - 0.5, y as f32 / height as f32 - 0.5);
        let edge = 1.0 - 0.45 * (dx * dx + dy * dy);
        let mut channel = 0;
        Rgb(dim(color, edge * view.exposure).map(|level| {
            channel += 1;
            let coded = coded(level);
            // A sum of uniform numbers is close enough to the sensor's noise; most of it is gray.
            let grain = |seed: u32| (0..3).map(|n| speck(x as i32, y as i32, seed + n)).sum::<f32>() * 2.0 - 3.0;
            let noise = 0.85 * grain(seed ^ 0x51ed) + 0.5 * grain(seed ^ (0x7f4a + channel * 17));
            (coded * 255.0 + noise * view.noise + 0.5).clamp(0.0, 255.0) as u8
        }))
    })
}

fn shade(surface: &Surface, toward: [f32; 3], sun: Color, light: &Light) -> Color {
    let length = (surface.slope.0.powi(2) + surface.slope.1.powi(2) + 1.0).sqrt();
    let normal = [-surface.slope.0 / length, -surface.slope.1 / length, 1.0 / length];
    let dot = |a: [f32; 3], b: [f32; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    let key = dot(normal, toward).max(0.0) * light.key * surface.lit;
    let sky = mix([0.50, 0.46, 0.40], [0.86, 0.95, 1.08], normal[1] * 0.5 + 0.5);
    // The eye is straight ahead.
    let halfway = {
        let sum = [toward[0], toward[1], toward[2] + 1.0];
        let length = dot(sum, sum).sqrt();
        sum.map(|part| part / length)
    };
    let shine = surface.shine * dot(normal, halfway).max(0.0).powf(surface.polish) * light.key * surface.lit;
    // Upward the sky, level the bright horizon, downward the ground.
    let height = 2.0 * normal[2] * normal[1];
    let seen = mix(
        mix([0.16, 0.14, 0.12], [0.95, 0.93, 0.90], ramp(-0.35, 0.12, height)),
        [0.50, 0.62, 0.80],
        ramp(0.1, 0.9, height),
    );
    [0, 1, 2].map(|i| {
        surface.color[i] * (key * sun[i] + light.fill * sky[i] * surface.open)
            + shine * sun[i]
            + surface.mirror * seen[i] * surface.open * (light.fill + 0.35 * light.key)
    })
}

/// A Gaussian blur, by two passes of a short kernel.
fn blur(pixels: &mut [Color], columns: usize, rows: usize, deviation: f32) {
    if deviation < 0.2 {
        return;
    }
    let reach = (deviation * 2.5).ceil() as i64;
    let weights: Vec<f32> = (-reach..=reach).map(|i| (-(i as f32 / deviation).powi(2) / 2.0).exp()).collect();
    let all: f32 = weights.iter().sum();
    for along_rows in [true, false] {
        let before = pixels.to_vec();
        for row in 0..rows as i64 {
            for column in 0..columns as i64 {
                let mut sum = [0.0; 3];
                for (weight, i) in weights.iter().zip(-reach..) {
                    let (x, y) = if along_rows { (column + i, row) } else { (column, row + i) };
                    let at = y.clamp(0, rows as i64 - 1) as usize * columns + x.clamp(0, columns as i64 - 1) as usize;
                    sum = [0, 1, 2].map(|i| sum[i] + before[at][i] * weight / all);
                }
                pixels[row as usize * columns + column as usize] = sum;
            }
        }
    }
}
