//! Where lettering stands on a tile.

use super::picture::Plane;

/// How likely a pixel must be lettering.
pub(super) const LIKELY: f32 = 0.3;
/// How likely a region must be on the mean.
const LIKELY_REGION: f32 = 0.45;
/// How far a region is widened: what was found is the core of the lettering.
const WIDEN: f32 = 1.8;
/// The most regions of a tile.
const MOST: usize = 60;

/// A turned rectangle around lettering, in pixels of a strip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Region {
    pub x: f32,
    pub y: f32,
    /// Along the lettering.
    pub width: f32,
    /// Across it.
    pub height: f32,
    /// How the lettering climbs to the right, radians, downward positive; within a quarter turn of level.
    pub turn: f32,
    /// 0 to 1.
    pub likely: f32,
}

impl Region {
    pub fn left(&self) -> f32 {
        self.x - self.half_across()
    }

    pub fn right(&self) -> f32 {
        self.x + self.half_across()
    }

    /// On a strip that is so many times as large.
    pub fn times(&self, by: f32) -> Self {
        let (x, y) = (self.x * by, self.y * by);
        Self { x, y, width: self.width * by, height: self.height * by, ..*self }
    }

    /// How far it reaches up and down from its middle.
    pub fn half_down(&self) -> f32 {
        (self.width * self.turn.sin().abs() + self.height * self.turn.cos()) / 2.0
    }

    fn half_across(&self) -> f32 {
        (self.width * self.turn.cos() + self.height * self.turn.sin().abs()) / 2.0
    }
}

/// Regions of lettering in a map of how likely each pixel is, each widened to the lettering around its core.
pub(super) fn of(map: &Plane) -> Vec<Region> {
    let widened = |region: Region| {
        let more = region.width * region.height * WIDEN / (region.width + region.height);
        Region { width: region.width + more, height: region.height + more, ..region }
    };
    plain(map).into_iter().map(widened).collect()
}

/// The same, as they are.
pub(super) fn plain(map: &Plane) -> Vec<Region> {
    let mut waiting: Vec<bool> = map.values.iter().map(|likely| *likely > LIKELY).collect();
    let mut regions = Vec::new();
    for start in 0..waiting.len() {
        if waiting.get(start) != Some(&true) {
            continue;
        }
        regions.extend(region(map, &connected(map, &mut waiting, start)));
        if regions.len() >= MOST {
            break;
        }
    }
    regions
}

/// All pixels that hang together with one, which are taken out of those that wait.
fn connected(map: &Plane, waiting: &mut [bool], start: usize) -> Vec<(usize, usize)> {
    let mut pixels = Vec::new();
    let mut open = vec![start];
    while let Some(at) = open.pop() {
        match waiting.get_mut(at) {
            Some(waits) if *waits => *waits = false,
            _ => continue,
        }
        let (x, y) = (at % map.width, at / map.width);
        pixels.push((x, y));
        for ny in y.saturating_sub(1)..=(y + 1).min(map.height - 1) {
            for nx in x.saturating_sub(1)..=(x + 1).min(map.width - 1) {
                open.push(ny * map.width + nx);
            }
        }
    }
    pixels
}

fn region(map: &Plane, pixels: &[(usize, usize)]) -> Option<Region> {
    let likely = pixels.iter().map(|(x, y)| map.at(*x, *y)).sum::<f32>() / pixels.len() as f32;
    if pixels.len() < 12 || likely < LIKELY_REGION {
        return None;
    }
    let least = least_rectangle(&hull(pixels))?;
    // A pixel has a size of its own.
    let (width, height) = (least.width + 1.0, least.height + 1.0);
    if height < 3.0 {
        return None;
    }
    let (x, y) = (least.x + 0.5, least.y + 0.5);
    Some(Region { x, y, width, height, turn: least.turn, likely })
}

/// The corners of the convex hull, in order around it.
///
/// A. Andrew: Another efficient algorithm for convex hulls in two dimensions (1979).
fn hull(pixels: &[(usize, usize)]) -> Vec<(f32, f32)> {
    // Of each row only the ends can be corners.
    let mut ends: std::collections::BTreeMap<usize, (usize, usize)> = std::collections::BTreeMap::new();
    for (x, y) in pixels {
        let end = ends.entry(*y).or_insert((*x, *x));
        *end = (end.0.min(*x), end.1.max(*x));
    }
    let mut points: Vec<(f32, f32)> =
        ends.iter().flat_map(|(y, (a, b))| [(*a as f32, *y as f32), (*b as f32, *y as f32)]).collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    points.dedup();
    let half = |points: &mut dyn Iterator<Item = (f32, f32)>| {
        let mut side: Vec<(f32, f32)> = Vec::new();
        for point in points {
            while let &[.., a, b] = side.as_slice() {
                if (b.0 - a.0) * (point.1 - a.1) - (b.1 - a.1) * (point.0 - a.0) > 0.0 {
                    break;
                }
                side.pop();
            }
            side.push(point);
        }
        side.pop();
        side
    };
    let mut around = half(&mut points.iter().copied());
    around.extend(half(&mut points.iter().rev().copied()));
    around
}

/// The smallest turned rectangle around a convex shape: one side lies along one of the shape's own.
///
/// H. Freeman, R. Shapira: Determining the minimum-area encasing rectangle for an arbitrary closed curve (1975).
fn least_rectangle(hull: &[(f32, f32)]) -> Option<Region> {
    let mut best: Option<(f32, Region)> = None;
    for (a, b) in hull.iter().zip(hull.iter().cycle().skip(1)) {
        let long = (b.0 - a.0).hypot(b.1 - a.1);
        if long <= 0.0 {
            continue;
        }
        let (cos, sin) = ((b.0 - a.0) / long, (b.1 - a.1) / long);
        let range = |of: &dyn Fn(&(f32, f32)) -> f32| {
            hull.iter().map(of).fold((f32::MAX, f32::MIN), |(low, high), v| (low.min(v), high.max(v)))
        };
        let along = range(&|p| p.0 * cos + p.1 * sin);
        let across = range(&|p| p.1 * cos - p.0 * sin);
        let (width, height) = (along.1 - along.0, across.1 - across.0);
        let area = (width + 1.0) * (height + 1.0);
        if best.as_ref().is_none_or(|best| area < best.0) {
            let (u, v) = ((along.0 + along.1) / 2.0, (across.0 + across.1) / 2.0);
            let (x, y) = (u * cos - v * sin, u * sin + v * cos);
            best = Some((area, Region { x, y, width, height, turn: sin.atan2(cos), likely: 0.0 }));
        }
    }
    let (_, mut region) = best?;
    if region.width < region.height {
        std::mem::swap(&mut region.width, &mut region.height);
        region.turn += std::f32::consts::FRAC_PI_2;
    }
    // Lettering has no way of its own here: level within a quarter turn.
    region.turn = region.turn.rem_euclid(std::f32::consts::PI);
    if region.turn > std::f32::consts::FRAC_PI_2 {
        region.turn -= std::f32::consts::PI;
    }
    Some(region)
}

#[cfg(test)]
mod tests {
    use super::of;
    use crate::sight::picture::Plane;

    fn bar(turn: f32, long: f32, tall: f32) -> Plane {
        let mut map = Plane::new(300, 200, 0.0);
        for y in 0..200 {
            for (x, value) in map.row_mut(y).iter_mut().enumerate() {
                let (dx, dy) = (x as f32 - 150.0, y as f32 - 100.0);
                let (u, v) = (dx * turn.cos() + dy * turn.sin(), dy * turn.cos() - dx * turn.sin());
                *value = if u.abs() <= long / 2.0 && v.abs() <= tall / 2.0 { 0.9 } else { 0.0 };
            }
        }
        map
    }

    #[test]
    fn a_turned_bar_is_found_with_its_sides_and_its_turn() {
        for degrees in [-60_i8, -10, 0, 3, 30, 80] {
            let turn = f32::from(degrees).to_radians();
            let regions = of(&bar(turn, 120.0, 20.0));
            assert_eq!(regions.len(), 1);
            let region = regions[0];
            let more = 121.0 * 21.0 * 1.8 / 142.0;
            assert!((region.turn - turn).abs() < 0.03, "{degrees}: {region:?}");
            assert!((region.width - 121.0 - more).abs() < 5.0, "{degrees}: {region:?}");
            assert!((region.height - 21.0 - more).abs() < 5.0, "{degrees}: {region:?}");
            assert!((region.x - 150.5).abs() < 1.5 && (region.y - 100.5).abs() < 1.5, "{degrees}: {region:?}");
        }
    }

    #[test]
    fn specks_and_faint_regions_are_left_out() {
        assert!(of(&bar(0.0, 2.0, 2.0)).is_empty());
        let mut faint = bar(0.0, 100.0, 20.0);
        faint.values.iter_mut().for_each(|value| *value *= 0.4);
        assert!(of(&faint).is_empty());
    }
}
