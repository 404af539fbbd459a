//! Randomness that is the same everywhere: integer hashes, and smooth noise made from them.

/// A number from 0 to 1 for a lattice point.
pub(crate) fn speck(x: i32, y: i32, seed: u32) -> f32 {
    let mut h =
        (x as u32).wrapping_mul(0x9e37_79b1) ^ (y as u32).wrapping_mul(0x85eb_ca77) ^ seed.wrapping_mul(0xc2b2_ae3d);
    h ^= h >> 15;
    h = h.wrapping_mul(0x2c1b_3c6d);
    h ^= h >> 12;
    h = h.wrapping_mul(0x297a_2d39);
    h ^= h >> 15;
    (h >> 8) as f32 / 16_777_216.0
}

/// Smooth noise from 0 to 1, one bump for each unit.
pub(crate) fn smooth(x: f32, y: f32, seed: u32) -> f32 {
    let (left, bottom) = (x.floor(), y.floor());
    let ease = |t: f32| t * t * (3.0 - 2.0 * t);
    let (u, v) = (ease(x - left), ease(y - bottom));
    let (i, j) = (left as i32, bottom as i32);
    let mix = |a: f32, b: f32, t: f32| a + (b - a) * t;
    mix(mix(speck(i, j, seed), speck(i + 1, j, seed), u), mix(speck(i, j + 1, seed), speck(i + 1, j + 1, seed), u), v)
}

/// Noise with detail at four sizes, from 0 to 1.
pub(crate) fn cloud(x: f32, y: f32, seed: u32) -> f32 {
    let mut sum = 0.0;
    for octave in 0..4_u8 {
        let scale = f32::from(1_u8 << octave);
        sum += smooth(x * scale, y * scale, seed.wrapping_add(octave.into())) / scale;
    }
    sum / 1.875
}
