//! Where something stands on a ring that does not go all around: lettering that the detector overlooks because it
//! hardly stands out.
//!
//! Ribs, lines and the tread's edge run around a tire, so along the strip their levels hardly change; molded letters
//! change them every few millimeters.

use super::picture::{Picture, Plane};
use super::regions::{self, Region};

/// The height at which a strip is looked at: grain is gone, letters are ten pixels tall.
const HEIGHT: usize = 128;
/// How far around a place changes are counted, across and down.
const REACH: (usize, usize) = (8, 2);
/// How many times its row's usual change a place must show: a low bar finds faint lettering, a high one parts it from
/// what stands around it.
const TIMES: [f32; 2] = [1.3, 1.5];
/// The share of the strip's height that lettering can take.
const TALL: (f32, f32) = (0.06, 0.34);
/// The most places.
const MOST: usize = 16;

/// Places on a round strip where levels change along it more than they do elsewhere on the same row, most first.
pub(super) fn places(strip: &Picture) -> Vec<Region> {
    let shrink = HEIGHT as f32 / strip.height() as f32;
    let small = strip.scaled(shrink).plane();
    let light = small.mean(12, true);
    let mut changes = Plane::new(small.width, small.height, 0.0);
    for y in 0..small.height {
        let (row, light) = (small.row(y), light.row(y));
        let at = |x: usize| row.get(x % small.width.max(1)).copied().unwrap_or(0.0);
        for (x, value) in changes.row_mut(y).iter_mut().enumerate() {
            let change = (at(x + 1) - at(x + small.width - 1)).abs();
            *value = change / (light.get(x).copied().unwrap_or(0.0) + 12.0);
        }
    }
    let mut active = changes.mean_of(REACH.0, REACH.1, true);
    for y in 0..active.height {
        let mut sorted = active.row(y).to_vec();
        sorted.sort_by(f32::total_cmp);
        let usual = sorted.get(sorted.len() / 2).copied().unwrap_or(0.0) + 1e-4;
        for value in active.row_mut(y) {
            *value /= usual;
        }
    }
    let above = |times: f32| {
        let mut likely = active.clone();
        // As a likelihood: what is just active enough becomes what counts as likely.
        likely.values.iter_mut().for_each(|value| *value = (*value / times * regions::LIKELY).min(1.0));
        regions::plain(&likely)
    };
    let mut found: Vec<Region> = TIMES
        .into_iter()
        .flat_map(above)
        .filter(|region| {
            let tall = region.height / HEIGHT as f32;
            (TALL.0..TALL.1).contains(&tall) && region.width > 2.0 * region.height && region.turn.abs() < 0.2
        })
        .map(|region| Region {
            x: region.x / shrink,
            y: region.y / shrink,
            // Half a letter more at each end.
            width: (region.width + 0.5 * region.height) / shrink,
            height: region.height / shrink,
            ..region
        })
        .collect();
    found.sort_by(|a, b| (b.likely * b.width).total_cmp(&(a.likely * a.width)));
    found.truncate(MOST);
    found
}
