//! The ring of a wheel in a picture: the rim's edge and the tire's outer edge.

use std::f64::consts::TAU;

use super::ellipse::Ellipse;
use super::path;
use super::picture::{Picture, Plane};

/// Longest side of the picture in which the ring is sought.
const WORK: f32 = 640.0;
/// Directions that are looked along from the middle.
const AROUND: usize = 180;
/// How many middles are tried.
const MIDDLES: usize = 12;
/// Where the tire's outer edge may stand, as a multiple of the rim's radius: from low sections (30 %) on large rims to
/// high ones on small rims.
const OUTER: (f64, f64) = (1.17, 1.80);

/// A wheel's ring in a picture: the edge of the rim and the outer edge of the tire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ring {
    pub rim: Ellipse,
    pub outer: Ellipse,
    /// Share of the way around where an edge was seen, 0 to 1, the worse of the two.
    pub seen: f64,
}

impl Ring {
    /// The middle from which both are measured.
    pub fn middle(&self) -> (f64, f64) {
        (self.rim.x, self.rim.y)
    }

    fn scaled(self, by: f64) -> Self {
        Self { rim: self.rim.scaled(by), outer: self.outer.scaled(by), seen: self.seen }
    }
}

/// The picture as the ring is sought in it.
struct Search {
    /// Small and smooth.
    picture: Picture,
    /// Pixels of the photo for one of it.
    scale: f64,
}

/// Finds the ring. `hint` is a circle that a person drew on the tire's outer edge or on the rim's.
pub(super) fn find(photo: &Picture, hint: Option<(f64, f64, f64)>) -> Option<Ring> {
    let by = (WORK / photo.longest() as f32).min(1.0);
    let small = photo.scaled(by);
    if small.width() < 48 || small.height() < 48 {
        return None;
    }
    let smooth = small.plane().mean(1, false).mean(1, false);
    let search = Search { picture: smooth.picture(), scale: f64::from(1.0 / by) };
    let (width, height) = (small.width() as f64, small.height() as f64);
    if let Some((x, y, r)) = hint {
        let (x, y, r) = (x / search.scale, y / search.scale, r / search.scale);
        // The hand's circle is one of the two edges; the other is sought beside it.
        let as_outer = search.beside(x, y, Ellipse::circle(x, y, r * 0.68), (0.62, 0.86), (0.90, 1.10), r);
        let as_rim = search.beside(x, y, Ellipse::circle(x, y, r), (0.90, 1.10), (1.17, 1.75), r);
        let best = as_outer.into_iter().chain(as_rim).max_by(|a, b| a.seen.total_cmp(&b.seen));
        return best.map(|ring| ring.scaled(search.scale));
    }
    let mut middles = vec![(width / 2.0, height / 2.0)];
    middles.extend(middles_of_circles(&smooth));
    let mut best: Option<(f64, f64, f64, Vec<f64>)> = None;
    for (x, y) in middles {
        let (radii, seen) = search.rim(x, y);
        let score = seen - 0.25 * (x - width / 2.0).abs() / width - 0.25 * (y - height / 2.0).abs() / height;
        if best.as_ref().is_none_or(|best| score > best.0) {
            best = Some((score, x, y, radii));
        }
    }
    let (_, x, y, radii) = best?;
    let (rim, rim_seen) = fit(x, y, &radii)?;
    let (outer, outer_seen) = search.outer(&rim)?;
    Some(Ring { rim, outer, seen: rim_seen.min(outer_seen) }.scaled(search.scale))
}

impl Search {
    /// Levels along rays: columns go around, rows outward from `near` to `far` times the reach of each ray.
    fn rays(&self, x: f64, y: f64, rows: usize, near: f64, far: f64, reach: impl Fn(f64) -> f64) -> (Plane, Vec<bool>) {
        let mut levels = Plane::new(AROUND, rows, 0.0);
        let mut inside = Vec::with_capacity(AROUND * rows);
        let ways: Vec<_> = (0..AROUND)
            .map(|n| {
                let angle = n as f64 * TAU / AROUND as f64;
                (angle.cos(), angle.sin(), reach(angle))
            })
            .collect();
        let (width, height) = (self.picture.width() as f64, self.picture.height() as f64);
        for row in 0..rows {
            let k = near + (far - near) * row as f64 / (rows - 1).max(1) as f64;
            for ((cos, sin, reach), value) in ways.iter().zip(levels.row_mut(row)) {
                let (px, py) = (x + k * reach * cos, y + k * reach * sin);
                *value = self.picture.between(px as f32, py as f32);
                inside.push(px >= 0.0 && py >= 0.0 && px < width && py < height);
            }
        }
        (levels, inside)
    }

    /// The rim's edge around a middle: radii, and how much of an edge was seen.
    fn rim(&self, x: f64, y: f64) -> (Vec<f64>, f64) {
        const ROWS: usize = 160;
        let (width, height) = (self.picture.width() as f64, self.picture.height() as f64);
        let most = x.max(width - x).min(y.max(height - y)) * 1.02;
        let (levels, _) = self.rays(x, y, ROWS, 0.0, 1.0, |_| most);
        // Bright metal inside, dark rubber outside.
        let mut fall = rises(&levels);
        fall.values.iter_mut().for_each(|rise| *rise = (-*rise).max(0.0));
        let full = fall.share(0.97) + 1e-3;
        let mut cost = Plane::new(AROUND, ROWS, 2.0);
        for row in ROWS * 3 / 10..ROWS * 85 / 100 {
            let fall = fall.row(row).to_vec();
            for (cost, fall) in cost.row_mut(row).iter_mut().zip(fall) {
                *cost = 1.0 - (fall / full).min(1.0);
            }
        }
        let path = path::around(&cost);
        let sum: f32 = path.iter().enumerate().map(|(x, y)| cost.at(x, *y)).sum();
        let radii = path.iter().map(|row| *row as f64 * most / (ROWS - 1) as f64).collect();
        (radii, 1.0 - f64::from(sum) / AROUND as f64)
    }

    /// The tire's outer edge, beyond a rim.
    fn outer(&self, rim: &Ellipse) -> Option<(Ellipse, f64)> {
        self.edge(rim, (0.8, 1.95), OUTER, 0.25)
    }

    /// The strongest edge between two multiples of an ellipse; `outward` prefers those further out.
    fn edge(&self, of: &Ellipse, shown: (f64, f64), within: (f64, f64), outward: f32) -> Option<(Ellipse, f64)> {
        const ROWS: usize = 150;
        let reach = |angle: f64| of.reach(of.x, of.y, angle);
        let (levels, inside) = self.rays(of.x, of.y, ROWS, shown.0, shown.1, reach);
        let mut edges = rises(&levels);
        for (edge, inside) in edges.values.iter_mut().zip(&inside) {
            *edge = if *inside { edge.abs() } else { 0.0 };
        }
        let full = edges.share(0.95) + 1e-3;
        let row_of = |k: f64| ((k - shown.0) / (shown.1 - shown.0) * (ROWS - 1) as f64).clamp(0.0, (ROWS - 1) as f64);
        let (low, high) = (row_of(within.0) as usize, row_of(within.1) as usize);
        if high <= low {
            return None;
        }
        let mut cost = Plane::new(AROUND, ROWS, 2.0);
        for row in low..high {
            let edges = edges.row(row).to_vec();
            let lean = outward * (row - low) as f32 / (high - low) as f32;
            for (cost, edge) in cost.row_mut(row).iter_mut().zip(edges) {
                *cost = 1.0 - (edge / full).min(1.0) - lean;
            }
        }
        let path = path::around(&cost);
        let radii: Vec<f64> = path
            .iter()
            .enumerate()
            .map(|(n, row)| {
                let k = shown.0 + (shown.1 - shown.0) * *row as f64 / (ROWS - 1) as f64;
                k * reach(n as f64 * TAU / AROUND as f64)
            })
            .collect();
        fit(of.x, of.y, &radii)
    }

    /// Both edges near a circle that a person drew, each within multiples of its radius.
    fn beside(&self, x: f64, y: f64, rim: Ellipse, near: (f64, f64), far: (f64, f64), r: f64) -> Option<Ring> {
        let circle = Ellipse::circle(x, y, r);
        let (outer, outer_seen) = self.edge(&circle, (0.5, 1.9), far, 0.0)?;
        let (found, rim_seen) = self.edge(&circle, (0.5, 1.9), near, 0.0).unwrap_or((rim, 0.0));
        Some(Ring { rim: found, outer, seen: rim_seen.min(outer_seen) })
    }
}

/// How levels rise from row to row, smoothed across.
fn rises(levels: &Plane) -> Plane {
    let mut rises = Plane::new(levels.width, levels.height, 0.0);
    for y in 2..levels.height.saturating_sub(2) {
        for (x, value) in rises.row_mut(y).iter_mut().enumerate() {
            let row = |y: usize| {
                let left = levels.at((x + levels.width - 1) % levels.width, y);
                left + 2.0 * levels.at(x, y) + levels.at((x + 1) % levels.width, y)
            };
            *value = (row(y + 1) - row(y - 1)) * 2.0 + row(y + 2) - row(y - 2);
        }
    }
    rises
}

/// An ellipse through radii around a middle, without those that stand apart; and the share that does not.
fn fit(x: f64, y: f64, radii: &[f64]) -> Option<(Ellipse, f64)> {
    let angle = |n: usize| n as f64 * TAU / radii.len() as f64;
    let mut keep = vec![true; radii.len()];
    let mut best = None;
    for _ in 0..4 {
        let points: Vec<_> = radii
            .iter()
            .enumerate()
            .filter(|(n, _)| keep.get(*n) == Some(&true))
            .map(|(n, r)| (x + r * angle(n).cos(), y + r * angle(n).sin()))
            .collect();
        if points.len() < 20 {
            break;
        }
        let Some(ellipse) = Ellipse::fit(&points) else { break };
        let away: Vec<f64> = radii.iter().enumerate().map(|(n, r)| (r - ellipse.reach(x, y, angle(n))).abs()).collect();
        let mut sorted = away.clone();
        sorted.sort_by(f64::total_cmp);
        let middle = sorted.get(sorted.len() / 2).copied().unwrap_or(0.0);
        let far = (2.5 * middle).max(1.0);
        keep = away.iter().map(|away| *away < far).collect();
        let near = away.iter().filter(|away| **away < (0.025 * ellipse.mean_radius()).max(1.5)).count();
        best = Some((ellipse, near as f64 / radii.len() as f64));
    }
    best.filter(|(ellipse, _)| ellipse.stretch() < 3.0)
}

/// Middles that many edges point at: a vote of each strong edge along its slope, as circles are found.
///
/// R. Duda, P. Hart: Use of the Hough transformation to detect lines and curves in pictures (1972), the votes led by
/// the slope.
fn middles_of_circles(smooth: &Plane) -> Vec<(f64, f64)> {
    const CELL: f32 = 4.0;
    let least = smooth.width.min(smooth.height) as f32;
    let (from, to) = (least * 0.15, least * 0.55);
    let columns = (smooth.width as f32 / CELL).ceil() as usize;
    let rows = (smooth.height as f32 / CELL).ceil() as usize;
    let mut slopes = Vec::new();
    for y in 1..smooth.height.saturating_sub(1) {
        for x in 1..smooth.width.saturating_sub(1) {
            let (dx, dy) = (smooth.at(x + 1, y) - smooth.at(x - 1, y), smooth.at(x, y + 1) - smooth.at(x, y - 1));
            let strength = dx.hypot(dy);
            if strength > 12.0 {
                slopes.push((x as f32, y as f32, dx / strength, dy / strength, strength));
            }
        }
    }
    // Noise has slopes everywhere: a bounded number of the strongest is enough.
    slopes.sort_by(|a, b| b.4.total_cmp(&a.4));
    slopes.truncate(24_000);
    let mut votes = Plane::new(columns, rows, 0.0);
    for (x, y, dx, dy, _) in slopes {
        for way in [-1.0, 1.0] {
            let mut r = from;
            while r <= to {
                let (px, py) = ((x + way * r * dx) / CELL, (y + way * r * dy) / CELL);
                r += CELL;
                if px < 0.0 || py < 0.0 {
                    continue;
                }
                if let Some(vote) = votes.row_mut(py as usize).get_mut(px as usize) {
                    *vote += 1.0;
                }
            }
        }
    }
    let votes = votes.mean(1, false);
    let mut found: Vec<(f64, f64)> = Vec::new();
    let mut order: Vec<usize> = (0..votes.values.len()).collect();
    order.sort_by(|a, b| votes.values.get(*b).unwrap_or(&0.0).total_cmp(votes.values.get(*a).unwrap_or(&0.0)));
    for at in order {
        let (x, y) = ((at % columns) as f64, (at / columns) as f64);
        let middle = ((x + 0.5) * f64::from(CELL), (y + 0.5) * f64::from(CELL));
        let apart = |other: &(f64, f64)| (other.0 - middle.0).hypot(other.1 - middle.1) > f64::from(least) * 0.05;
        if found.iter().all(apart) {
            found.push(middle);
            if found.len() >= MIDDLES {
                break;
            }
        }
    }
    found
}
