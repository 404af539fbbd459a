//! What a point of a thing looks like to light.

/// Red, green and blue, linear.
pub(crate) type Color = [f32; 3];

pub(crate) fn mix(a: Color, b: Color, t: f32) -> Color {
    let t = t.clamp(0.0, 1.0);
    [0, 1, 2].map(|i| a[i] + (b[i] - a[i]) * t)
}

pub(crate) fn dim(color: Color, by: f32) -> Color {
    color.map(|level| level * by)
}

/// 0 below `from`, 1 above `to`, smooth between; `from` may be the larger.
pub(crate) fn ramp(from: f32, to: f32, value: f32) -> f32 {
    let t = ((value - from) / (to - from)).clamp(0.0, 1.0);
    t * t * (3.0 - 2.0 * t)
}

/// A point of a surface.
#[derive(Clone, Copy)]
pub(crate) struct Surface {
    /// How the height rises to the right and upward.
    pub slope: (f32, f32),
    /// What part of the light each color throws back.
    pub color: Color,
    /// Strength of its shine.
    pub shine: f32,
    /// How narrow the shine is.
    pub polish: f32,
    /// How much of sky and ground it mirrors.
    pub mirror: f32,
    /// Share of the light that reaches it, 1 in the open.
    pub open: f32,
    /// Share of the key light that reaches it.
    pub lit: f32,
}

impl Surface {
    pub const fn matt(color: Color) -> Self {
        Self { slope: (0.0, 0.0), color, shine: 0.0, polish: 8.0, mirror: 0.0, open: 1.0, lit: 1.0 }
    }
}

/// Height along a radius, smooth between knots that are given from the inside out.
pub(crate) fn profile(knots: &[(f32, f32)], at: f32) -> f32 {
    for pair in knots.windows(2) {
        let [(r0, h0), (r1, h1)] = [pair[0], pair[1]];
        if at <= r1 {
            return h0 + (h1 - h0) * ramp(r0, r1, at);
        }
    }
    knots.last().map_or(0.0, |knot| knot.1)
}

/// Slope of a height function, by looking a little to each side.
pub(crate) fn slope_of(height: impl Fn(f32, f32) -> f32, x: f32, y: f32, step: f32) -> (f32, f32) {
    (
        (height(x + step, y) - height(x - step, y)) / (2.0 * step),
        (height(x, y + step) - height(x, y - step)) / (2.0 * step),
    )
}

/// Distance to the edge of a regular polygon, negative inside; `reach` is from its middle to a side.
pub(crate) fn polygon(x: f32, y: f32, sides: u8, reach: f32, turn: f32) -> f32 {
    let sector = std::f32::consts::TAU / f32::from(sides);
    let angle = y.atan2(x) - turn;
    let folded = (angle + sector / 2.0).rem_euclid(sector) - sector / 2.0;
    x.hypot(y) * folded.cos() - reach
}
