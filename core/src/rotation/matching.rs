//! Cheapest assignments of tires to places, and the next cheapest after them.

use pathfinding::kuhn_munkres::kuhn_munkres_min;
use pathfinding::matrix::Matrix;

/// More than any sum of allowed costs.
const FORBIDDEN: i64 = 1 << 54;

/// A cost for each tire and place; `None` where the tire may not go.
pub(super) type Costs = Vec<Vec<Option<i64>>>;

/// The cheapest assignment: its cost, and the place of each tire.
pub(super) fn cheapest(costs: &Costs) -> Option<(i64, Vec<usize>)> {
    let cells: Vec<i64> = costs.iter().flatten().map(|cost| cost.unwrap_or(FORBIDDEN)).collect();
    let matrix = Matrix::from_vec(costs.len(), costs.len(), cells).ok()?;
    if costs.is_empty() {
        return None;
    }
    let (total, places) = kuhn_munkres_min(&matrix);
    (total < FORBIDDEN).then_some((total, places))
}

/// The cheapest assignment that `fits`, trying at most `most` subproblems by
/// Murty's partition: each assignment that does not fit is split by forbidding
/// its pairs one after another.
pub(super) fn cheapest_that(costs: &Costs, most: usize, fits: impl Fn(&[usize]) -> bool) -> Option<(i64, Vec<usize>)> {
    let mut open: Vec<(i64, Vec<usize>, Costs)> = Vec::new();
    let (cost, places) = cheapest(costs)?;
    open.push((cost, places, costs.clone()));
    let mut tried = 0usize;
    while tried < most {
        let next = open.iter().enumerate().min_by(|(_, a), (_, b)| (a.0, &a.1).cmp(&(b.0, &b.1))).map(|(at, _)| at)?;
        let (cost, places, costs) = open.swap_remove(next);
        if fits(&places) {
            return Some((cost, places));
        }
        let mut fixed = costs;
        for (tire, place) in places.iter().enumerate() {
            let mut without = fixed.clone();
            if let Some(cell) = without.get_mut(tire).and_then(|row| row.get_mut(*place)) {
                *cell = None;
            }
            if let Some((cost, places)) = cheapest(&without) {
                open.push((cost, places, without));
            }
            tried += 1;
            for (i, row) in fixed.iter_mut().enumerate() {
                for (p, cell) in row.iter_mut().enumerate() {
                    if (i == tire) != (p == *place) {
                        *cell = None;
                    }
                }
            }
        }
    }
    None
}
