//! A height or ink map of a surface, and how letters get onto it.

use crate::letters::{Letters, lay};

/// Values on a grid over a rectangle of a surface, in millimeters.
pub(crate) struct Relief {
    left: f32,
    bottom: f32,
    cell: f32,
    columns: usize,
    rows: usize,
    /// The left edge is the right edge again, as around a tire.
    round: bool,
    values: Vec<f32>,
}

/// Where a line of text stands: the middle of its base line, what a unit along the grid is to the text, and its turn.
#[derive(Clone, Copy)]
pub(crate) struct Spot {
    pub at: (f32, f32),
    pub stretch: f32,
    pub turn: f32,
}

impl Relief {
    pub fn new(left: f32, bottom: f32, width: f32, height: f32, cell: f32, round: bool) -> Self {
        let columns = ((width / cell).round() as usize).max(2);
        let cell = width / columns as f32;
        let rows = (height / cell).ceil() as usize + 1;
        Self { left, bottom, cell, columns, rows, round, values: vec![0.0; columns * rows] }
    }

    fn index(&self, column: i64, row: i64) -> Option<usize> {
        let columns = self.columns as i64;
        let column = if self.round { column.rem_euclid(columns) } else { column };
        let inside = (0..columns).contains(&column) && (0..self.rows as i64).contains(&row);
        inside.then(|| row as usize * self.columns + column as usize)
    }

    /// The value between the four cells around a point; nothing outside.
    pub fn value(&self, x: f32, y: f32) -> f32 {
        let (column, row) = ((x - self.left) / self.cell, (y - self.bottom) / self.cell);
        let (left, low) = (column.floor(), row.floor());
        let (u, v) = (column - left, row - low);
        let (i, j) = (left as i64, low as i64);
        let inside = i >= 0 && j >= 0 && i + 1 < self.columns as i64 && j + 1 < self.rows as i64;
        let [a, b, c, d] = if inside {
            let at = j as usize * self.columns + i as usize;
            [at, at + 1, at + self.columns, at + self.columns + 1].map(|at| self.values[at])
        } else {
            [(i, j), (i + 1, j), (i, j + 1), (i + 1, j + 1)]
                .map(|(i, j)| self.index(i, j).map_or(0.0, |at| self.values[at]))
        };
        (a * (1.0 - u) + b * u) * (1.0 - v) + (c * (1.0 - u) + d * u) * v
    }

    /// How the value rises to the right and upward, for each millimeter.
    pub fn slope(&self, x: f32, y: f32) -> (f32, f32) {
        let step = self.cell;
        (
            (self.value(x + step, y) - self.value(x - step, y)) / (2.0 * step),
            (self.value(x, y + step) - self.value(x, y - step)) / (2.0 * step),
        )
    }

    /// Adds what a function gives for each cell's place.
    pub fn add(&mut self, more: impl Fn(f32, f32) -> f32) {
        for row in 0..self.rows {
            for column in 0..self.columns {
                let (x, y) = (self.left + column as f32 * self.cell, self.bottom + row as f32 * self.cell);
                self.values[row * self.columns + column] += more(x, y);
            }
        }
    }

    /// Writes a line of text, centered on the spot; `rise` is what it adds, `bevel` how wide its flanks are.
    /// Gives the length of the line.
    pub fn write(&mut self, text: &str, letters: &Letters, height: f32, spot: Spot, rise: f32, bevel: f32) -> f32 {
        let (glyphs, length) = lay(text, letters, height);
        let half = letters.weight * height / 2.0;
        for glyph in glyphs {
            let pieces: Vec<_> =
                glyph.pieces.iter().map(|[a, b]| [(a.0 - length / 2.0, a.1), (b.0 - length / 2.0, b.1)]).collect();
            self.stroke(&pieces, half, letters.outline, spot, rise, bevel);
        }
        length
    }

    /// The rows and columns that pieces reach, with a margin around them.
    fn reach(
        &self,
        pieces: &[[(f32, f32); 2]],
        margin: f32,
        spot: Spot,
    ) -> (std::ops::RangeInclusive<i64>, std::ops::RangeInclusive<i64>) {
        let points = || pieces.iter().flatten();
        let bound = |pick: fn(&(f32, f32)) -> f32, least: bool| {
            points().map(pick).fold(if least { f32::MAX } else { f32::MIN }, if least { f32::min } else { f32::max })
        };
        let (x0, x1) = (bound(|p| p.0, true) - margin, bound(|p| p.0, false) + margin);
        let (y0, y1) = (bound(|p| p.1, true) - margin, bound(|p| p.1, false) + margin);
        let (sin, cos) = spot.turn.sin_cos();
        // The corners of the text's box on the grid.
        let corners = [(x0, y0), (x0, y1), (x1, y0), (x1, y1)].map(|(x, y)| {
            let (x, y) = (x * cos - y * sin, x * sin + y * cos);
            ((spot.at.0 + x / spot.stretch - self.left) / self.cell, (spot.at.1 + y - self.bottom) / self.cell)
        });
        let range = |values: [f32; 4]| {
            let least = values.iter().copied().fold(f32::MAX, f32::min).floor() as i64;
            let most = values.iter().copied().fold(f32::MIN, f32::max).ceil() as i64;
            least..=most
        };
        (range(corners.map(|corner| corner.1)), range(corners.map(|corner| corner.0)))
    }

    /// Draws strokes given in the text's own coordinates around the spot.
    pub fn stroke(&mut self, pieces: &[[(f32, f32); 2]], half: f32, outline: bool, spot: Spot, rise: f32, bevel: f32) {
        let (rows, columns) = self.reach(pieces, half + bevel + self.cell * 2.0, spot);
        let (sin, cos) = spot.turn.sin_cos();
        for row in rows {
            for column in columns.clone() {
                let Some(index) = self.index(column, row) else { continue };
                let across = (self.left + column as f32 * self.cell - spot.at.0) * spot.stretch;
                let up = self.bottom + row as f32 * self.cell - spot.at.1;
                let point = (across * cos + up * sin, up * cos - across * sin);
                let mut distance = pieces.iter().map(|piece| away(point, *piece)).fold(f32::MAX, f32::min);
                let mut half = half;
                if outline {
                    distance = (distance - half * 0.8).abs();
                    half *= 0.2;
                }
                self.raise(index, distance - half, rise, bevel);
            }
        }
    }

    /// Raises what closed outlines hold, given in the text's own coordinates around the spot; with `line` only their
    /// edge, so wide.
    pub fn fill(&mut self, pieces: &[[(f32, f32); 2]], line: Option<f32>, spot: Spot, rise: f32, bevel: f32) {
        if pieces.is_empty() {
            return;
        }
        let margin = bevel + line.unwrap_or(0.0) + self.cell * 2.0;
        let (rows, columns) = self.reach(pieces, margin, spot);
        let (sin, cos) = spot.turn.sin_cos();
        for row in rows {
            for column in columns.clone() {
                let Some(index) = self.index(column, row) else { continue };
                let across = (self.left + column as f32 * self.cell - spot.at.0) * spot.stretch;
                let up = self.bottom + row as f32 * self.cell - spot.at.1;
                let point = (across * cos + up * sin, up * cos - across * sin);
                let mut distance = f32::MAX;
                let mut turns = 0;
                for piece in pieces {
                    distance = distance.min(away(point, *piece));
                    let [a, b] = *piece;
                    if (a.1 <= point.1) != (b.1 <= point.1) {
                        let t = (point.1 - a.1) / (b.1 - a.1);
                        if a.0 + t * (b.0 - a.0) > point.0 {
                            turns += if b.1 > a.1 { 1 } else { -1 };
                        }
                    }
                }
                let edge = match line {
                    Some(line) => distance - line / 2.0,
                    None if turns != 0 => -distance,
                    None => distance,
                };
                self.raise(index, edge, rise, bevel);
            }
        }
    }

    /// Raises a cell by how far beyond an edge it lies.
    fn raise(&mut self, index: usize, beyond: f32, rise: f32, bevel: f32) {
        let level = 1.0 - ((beyond + bevel / 2.0) / bevel).clamp(0.0, 1.0);
        let level = rise * level * level * (3.0 - 2.0 * level);
        if level.abs() > self.values[index].abs() {
            self.values[index] = level;
        }
    }

    /// A copy in which each value is the mean of its neighborhood.
    pub fn spread(&self, radius: f32) -> Self {
        let reach = (radius / self.cell).round().max(1.0) as i64;
        let mut values = self.values.clone();
        for along_rows in [true, false] {
            let before = values.clone();
            let (lines, length) = if along_rows { (self.rows, self.columns) } else { (self.columns, self.rows) };
            for line in 0..lines {
                let at = |i: i64| {
                    let i = if along_rows && self.round {
                        i.rem_euclid(length as i64)
                    } else {
                        i.clamp(0, length as i64 - 1)
                    };
                    if along_rows { line * self.columns + i as usize } else { i as usize * self.columns + line }
                };
                let mut sum: f32 = (-reach..=reach).map(|i| before[at(i)]).sum();
                for i in 0..length as i64 {
                    values[at(i)] = sum / (2 * reach + 1) as f32;
                    sum += before[at(i + reach + 1)] - before[at(i - reach)];
                }
            }
        }
        Self { values, ..*self }
    }
}

/// Distance of a point from a straight piece.
pub(crate) fn away(point: (f32, f32), [a, b]: [(f32, f32); 2]) -> f32 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let (px, py) = (point.0 - a.0, point.1 - a.1);
    let along = ((px * dx + py * dy) / (dx * dx + dy * dy).max(1e-9)).clamp(0.0, 1.0);
    (px - along * dx).hypot(py - along * dy)
}
