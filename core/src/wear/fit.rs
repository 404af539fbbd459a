//! The fit: depth falls in a straight line with distance, at each position at its
//! own rate, for all tires of the vehicle together; each tire has its own start.
//!
//! Weighted least squares by the gauge's error, made robust against slipped
//! readings: a start by least absolute deviations, then Hampel's weights, which
//! are exactly one for every reading within [`SLIP_FROM`] of its place. Without
//! slips the answer is therefore that of plain weighted least squares.

use std::collections::BTreeMap;

use nalgebra::{DMatrix, DVector};

use crate::vehicle::Place;

use super::history::Samples;

/// A residual of so many standard deviations begins to count less.
pub const SLIP_FROM: f64 = 3.5;
/// A residual of so many standard deviations no longer counts.
pub const SLIP_TO: f64 = 8.0;

/// An expectation of the rate at any position, from elsewhere.
///
/// ```
/// use lugbook::wear::{History, Prior, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm"), read("15000 km", "6.5 mm")], moves: vec![] };
/// let prior = Some(Prior { mm_per_1000_km: 0.1, deviation: 0.05 });
/// let answer = wear(&history, &Question { prior, ..Question::default() })?;
/// assert!((answer.positions[0].rate.mid - 0.1).abs() < 1e-3);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prior {
    /// In mm per 1,000 km.
    pub mm_per_1000_km: f64,
    /// One standard deviation of it.
    pub deviation: f64,
}

/// What the fit found.
#[derive(Debug, Clone)]
pub(super) struct Fit {
    /// The column of each position's rate.
    columns: BTreeMap<Place, usize>,
    /// Starts of the tires, then rates.
    values: DVector<f64>,
    /// Covariance of the values.
    covariance: DMatrix<f64>,
    /// Projection onto what the readings determine.
    determined: DMatrix<f64>,
    /// How many standard deviations a 95 % interval reaches.
    pub reach: f64,
    /// The weight of each sample, 1 for a good one.
    pub weights: Vec<f64>,
    /// What each sample was expected to read, in mm.
    pub expected: Vec<f64>,
}

/// A combination of values, with its variance; `None` when the readings do not determine it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Estimate {
    pub value: f64,
    pub variance: f64,
}

/// A combination: factors by column.
pub(super) type Combination = Vec<(usize, f64)>;

impl Fit {
    /// Fits the samples, with a prior on the rates that they determine themselves.
    pub(super) fn of(samples: &Samples, prior: Option<Prior>) -> Self {
        let mut columns: BTreeMap<Place, usize> = BTreeMap::new();
        for sample in &samples.all {
            for (place, _) in &sample.ran {
                let next = samples.tires.len() + columns.len();
                columns.entry(*place).or_insert(next);
            }
        }
        let width = samples.tires.len() + columns.len();
        let mut design = DMatrix::<f64>::zeros(samples.all.len(), width);
        for (row, sample) in samples.all.iter().enumerate() {
            set(&mut design, row, sample.tire, 1.0);
            for (place, thousand) in &sample.ran {
                if let Some(column) = columns.get(place) {
                    set(&mut design, row, *column, -thousand);
                }
            }
        }
        let depths = DVector::from_iterator(samples.all.len(), samples.all.iter().map(|s| s.depth_mm));
        let errors: Vec<f64> = samples.all.iter().map(|s| s.error_mm).collect();
        let plain = Solver { design: &design, depths: &depths, errors: &errors, prior: None };
        let weights = plain.robust_weights();
        let unaided = plain.solve(&weights);
        let aided = prior.map(|prior| {
            let rates = columns.values().copied().filter(|column| unaided.determines(&[(*column, 1.0)])).collect();
            Solver { prior: Some((prior, rates)), ..plain }.solve(&weights)
        });
        let solved = aided.as_ref().unwrap_or(&unaided);
        let expected = &design * &solved.values;
        let freedom = weights.iter().filter(|w| **w > 0.0).count().saturating_sub(unaided.rank);
        let strain: f64 = weights
            .iter()
            .zip(&errors)
            .zip(expected.iter().zip(depths.iter()))
            .map(|((w, error), (e, d))| w * ((d - e) / error).powi(2))
            .sum();
        // Readings that scatter more than the gauge explains widen every interval.
        let ratio = u32::try_from(freedom).ok().filter(|f| *f > 0).map_or(1.0, |f| strain / f64::from(f));
        let (scale, reach) = if ratio > 1.0 { (ratio, student(freedom)) } else { (1.0, NORMAL_95) };
        Self {
            columns,
            values: solved.values.clone(),
            covariance: &solved.covariance * scale,
            determined: unaided.determined.clone(),
            reach,
            weights,
            expected: expected.iter().copied().collect(),
        }
    }

    /// The rate at a position.
    pub(super) fn rate(&self, place: Place) -> Option<Estimate> {
        self.estimate(&[(*self.columns.get(&place)?, 1.0)])
    }

    /// The column of a position's rate.
    pub(super) fn column(&self, place: Place) -> Option<usize> {
        self.columns.get(&place).copied()
    }

    /// A combination of values.
    pub(super) fn estimate(&self, combination: &[(usize, f64)]) -> Option<Estimate> {
        if !determines(&self.determined, combination) {
            return None;
        }
        let value = combination.iter().map(|(c, f)| f * self.values.get(*c).copied().unwrap_or(0.0)).sum();
        Some(Estimate { value, variance: self.covariance_of(combination, combination) })
    }

    /// The covariance of two combinations.
    pub(super) fn covariance_of(&self, a: &[(usize, f64)], b: &[(usize, f64)]) -> f64 {
        let mut sum = 0.0;
        for (i, f) in a {
            for (j, g) in b {
                sum += f * g * self.covariance.get((*i, *j)).copied().unwrap_or(0.0);
            }
        }
        sum
    }

    /// The places whose wear the readings determine.
    pub(super) fn places(&self) -> Vec<Place> {
        self.columns.keys().copied().filter(|place| self.rate(*place).is_some()).collect()
    }
}

fn set(matrix: &mut DMatrix<f64>, row: usize, column: usize, value: f64) {
    if let Some(cell) = matrix.get_mut((row, column)) {
        *cell += value;
    }
}

/// One weighted problem.
#[derive(Clone)]
struct Solver<'a> {
    design: &'a DMatrix<f64>,
    depths: &'a DVector<f64>,
    errors: &'a [f64],
    prior: Option<(Prior, Vec<usize>)>,
}

struct Solved {
    values: DVector<f64>,
    covariance: DMatrix<f64>,
    determined: DMatrix<f64>,
    rank: usize,
}

impl Solved {
    fn determines(&self, combination: &[(usize, f64)]) -> bool {
        determines(&self.determined, combination)
    }
}

/// Whether a combination lies in what the readings determine: the projection leaves it as it is.
fn determines(projection: &DMatrix<f64>, combination: &[(usize, f64)]) -> bool {
    let mut factors = DVector::<f64>::zeros(projection.nrows());
    for (column, factor) in combination {
        if let Some(cell) = factors.get_mut(*column) {
            *cell += factor;
        }
    }
    let size = factors.norm().max(1e-12);
    (projection * &factors - &factors).norm() <= 1e-6 * size
}

impl Solver<'_> {
    fn solve(&self, weights: &[f64]) -> Solved {
        let width = self.design.ncols();
        let mut scaled = self.design.clone();
        let mut target = self.depths.clone();
        for ((row, mut line), (weight, error)) in scaled.row_iter_mut().enumerate().zip(weights.iter().zip(self.errors))
        {
            let factor = weight.sqrt() / error;
            line *= factor;
            if let Some(cell) = target.get_mut(row) {
                *cell *= factor;
            }
        }
        // Columns of like size, so that small distances don't look undetermined.
        let sizes: Vec<f64> = scaled.column_iter().map(|c| c.norm()).map(|n| if n > 0.0 { n } else { 1.0 }).collect();
        for (mut column, size) in scaled.column_iter_mut().zip(&sizes) {
            column /= *size;
        }
        let mut normal = scaled.transpose() * &scaled;
        let mut right = scaled.transpose() * &target;
        let mut spectrum = normal.clone().symmetric_eigen();
        let tolerance = 1e-9 * spectrum.eigenvalues.iter().copied().fold(0.0, f64::max);
        let kept = |value: f64| value > tolerance;
        let rank = spectrum.eigenvalues.iter().filter(|v| kept(**v)).count();
        let part = |value: f64| if kept(value) { 1.0 } else { 0.0 };
        let vectors = spectrum.eigenvectors.clone();
        let projection = &vectors * DMatrix::from_diagonal(&spectrum.eigenvalues.map(part)) * vectors.transpose();
        if let Some((prior, rates)) = &self.prior {
            for column in rates {
                let size = sizes.get(*column).copied().unwrap_or(1.0);
                let information = 1.0 / (prior.deviation * size).powi(2);
                if let Some(cell) = normal.get_mut((*column, *column)) {
                    *cell += information;
                }
                if let Some(cell) = right.get_mut(*column) {
                    *cell += information * prior.mm_per_1000_km * size;
                }
            }
            spectrum = normal.clone().symmetric_eigen();
        }
        let inverse = |value: f64| if kept(value) { 1.0 / value } else { 0.0 };
        let inverted = &spectrum.eigenvectors
            * DMatrix::from_diagonal(&spectrum.eigenvalues.map(inverse))
            * spectrum.eigenvectors.transpose();
        let mut values = &inverted * right;
        // One step of refinement takes out what forming the normal equations cost.
        if self.prior.is_none() {
            let left = &target - &scaled * &values;
            values += &inverted * (scaled.transpose() * left);
        }
        let unscale = DVector::from_iterator(width, sizes.iter().map(|size| 1.0 / size));
        let unscaled = DMatrix::from_diagonal(&unscale);
        // The projection of the scaled problem, as one of the plain columns: a
        // combination c is determined when c·diag(1/size) is.
        let determined = DMatrix::from_diagonal(&unscale.map(|v| 1.0 / v)) * projection * &unscaled;
        Solved {
            values: values.component_mul(&unscale),
            covariance: &unscaled * inverted * &unscaled,
            determined,
            rank,
        }
    }

    fn residuals(&self, solved: &Solved) -> Vec<f64> {
        let expected = self.design * &solved.values;
        self.depths.iter().zip(expected.iter()).zip(self.errors).map(|((d, e), error)| (d - e) / error).collect()
    }

    /// Hampel's weights from a start by least absolute deviations. The scale is
    /// the gauge's error, or the readings' own scatter when that is larger.
    fn robust_weights(&self) -> Vec<f64> {
        let ones = vec![1.0; self.errors.len()];
        let mut solved = self.solve(&ones);
        if self.residuals(&solved).iter().all(|r| r.abs() < 1e-9) {
            return ones;
        }
        for _ in 0..60 {
            let weights: Vec<f64> = self.residuals(&solved).iter().map(|r| 1.0 / r.abs().max(1e-3)).collect();
            solved = self.solve(&weights);
        }
        let freedom = self.errors.len().saturating_sub(solved.rank);
        let scale = scatter(&self.residuals(&solved), freedom).max(1.0);
        let mut weights = ones;
        for _ in 0..60 {
            let next: Vec<f64> = self.residuals(&solved).iter().map(|r| hampel(r.abs() / scale)).collect();
            let change = next.iter().zip(&weights).map(|(a, b)| (a - b).abs()).fold(0.0, f64::max);
            weights = next;
            solved = self.solve(&weights);
            if change < 1e-10 {
                break;
            }
        }
        weights
    }
}

/// One to [`SLIP_FROM`], then falling to nothing at [`SLIP_TO`] (Hampel's last two parts).
fn hampel(deviations: f64) -> f64 {
    if deviations <= SLIP_FROM {
        1.0
    } else if deviations >= SLIP_TO {
        0.0
    } else {
        SLIP_FROM / deviations * (SLIP_TO - deviations) / (SLIP_TO - SLIP_FROM)
    }
}

/// Scatter of residuals as a standard deviation: 1.4826 times the median absolute
/// deviation of those not forced to nothing by the fit.
fn scatter(residuals: &[f64], freedom: usize) -> f64 {
    let mut sizes: Vec<f64> = residuals.iter().map(|r| r.abs()).collect();
    sizes.sort_by(|a, b| b.total_cmp(a));
    sizes.truncate(freedom);
    sizes.get(sizes.len() / 2).map_or(0.0, |median| 1.4826 * median)
}

/// Half the width of a 95 % interval of the normal distribution, in standard deviations.
const NORMAL_95: f64 = 1.959_963_984_540_054;

/// The same of Student's distribution, by expansion in 1/freedom (Abramowitz and
/// Stegun, 26.7.5); exact values for one and two.
fn student(freedom: usize) -> f64 {
    match freedom {
        0 => NORMAL_95,
        1 => 12.706_204_736,
        2 => 4.302_652_730,
        _ => {
            let n = u32::try_from(freedom).map_or(f64::INFINITY, f64::from);
            let z = NORMAL_95;
            let g1 = (z.powi(3) + z) / 4.0;
            let g2 = (5.0 * z.powi(5) + 16.0 * z.powi(3) + 3.0 * z) / 96.0;
            let g3 = (3.0 * z.powi(7) + 19.0 * z.powi(5) + 17.0 * z.powi(3) - 15.0 * z) / 384.0;
            let g4 =
                (79.0 * z.powi(9) + 776.0 * z.powi(7) + 1482.0 * z.powi(5) - 1920.0 * z.powi(3) - 945.0 * z) / 92_160.0;
            z + g1 / n + g2 / n.powi(2) + g3 / n.powi(3) + g4 / n.powi(4)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn student_agrees_with_printed_tables() {
        // Two-sided 5 % points, any printed table of the t distribution.
        for (freedom, printed) in [(1, 12.706), (2, 4.303), (3, 3.182), (5, 2.571), (10, 2.228), (30, 2.042)] {
            assert!((student(freedom) - printed).abs() < 0.005, "{freedom}: {}", student(freedom));
        }
    }
}
