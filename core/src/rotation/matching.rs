//! Cheapest assignments of tires to places, and the next cheapest after them.

use pathfinding::kuhn_munkres::kuhn_munkres_min;
use pathfinding::matrix::Matrix;

/// More than any sum of allowed costs.
const FORBIDDEN: i64 = 1 << 58;

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

/// The cheapest assignments without a `clash`, up to `count` of them, cheapest
/// first, solving at most `most` assignments.
///
/// Best first by Murty's partition. `clash` names the tires whose places together
/// are not allowed, none when all is well; only their pairs are forbidden one
/// after another, so that the partition aims at what is wrong.
pub(super) fn cheapest_that(
    costs: &Costs,
    most: usize,
    count: usize,
    clash: impl Fn(&[usize]) -> Vec<usize>,
) -> Vec<(i64, Vec<usize>)> {
    let mut found = Vec::new();
    let Some((cost, places)) = cheapest(costs) else { return found };
    let mut open: Vec<(i64, Vec<usize>, Costs)> = vec![(cost, places, costs.clone())];
    let mut solved = 1usize;
    while solved < most && found.len() < count {
        let next = open.iter().enumerate().min_by(|(_, a), (_, b)| (a.0, &a.1).cmp(&(b.0, &b.1))).map(|(at, _)| at);
        let Some(next) = next else { break };
        let (cost, places, mut fixed) = open.swap_remove(next);
        let mut wrong = clash(&places);
        if wrong.is_empty() {
            found.push((cost, places.clone()));
            wrong = (0..places.len()).collect();
        }
        for (tire, place) in places.iter().enumerate().filter(|(tire, _)| wrong.contains(tire)) {
            let mut without = fixed.clone();
            if let Some(cell) = without.get_mut(tire).and_then(|row| row.get_mut(*place)) {
                *cell = None;
            }
            if let Some((cost, places)) = cheapest(&without) {
                open.push((cost, places, without));
            }
            solved += 1;
            for (i, row) in fixed.iter_mut().enumerate() {
                for (p, cell) in row.iter_mut().enumerate() {
                    if (i == tire) != (p == *place) {
                        *cell = None;
                    }
                }
            }
        }
    }
    found
}
