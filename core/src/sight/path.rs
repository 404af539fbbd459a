//! The cheapest closed path around a ring.

use super::picture::Plane;

/// How many rows a path may climb or fall from one column to the next.
const STEEPEST: i64 = 2;
/// What climbing one row costs.
const CLIMB: f32 = 0.15;

/// For each column the row of the cheapest path that ends where it began, the last column being beside the first.
pub(super) fn around(cost: &Plane) -> Vec<usize> {
    let open = cheapest(cost, 0, None);
    // Begin again in the middle of the path that was found, and end there.
    let middle = cost.width / 2;
    let from = open.get(middle).copied().unwrap_or(0);
    let mut path = cheapest(cost, middle, Some(from));
    path.rotate_right(middle);
    path
}

fn cheapest(cost: &Plane, first: usize, from: Option<usize>) -> Vec<usize> {
    let (rows, columns) = (cost.height, cost.width);
    let column = |x: usize| (first + x) % columns.max(1);
    const FAR: f32 = 1e9;
    let mut sums: Vec<f32> =
        (0..rows).map(|y| if from.is_none_or(|from| from == y) { cost.at(column(0), y) } else { FAR }).collect();
    let mut steps: Vec<Vec<i8>> = Vec::with_capacity(columns);
    for x in 1..columns {
        let mut next = Vec::with_capacity(rows);
        let mut step = Vec::with_capacity(rows);
        for y in 0..rows as i64 {
            let mut best = (FAR * 2.0, 0_i8);
            for climb in -STEEPEST..=STEEPEST {
                let Some(sum) = usize::try_from(y + climb).ok().and_then(|y| sums.get(y)) else { continue };
                let sum = sum + CLIMB * climb.unsigned_abs() as f32;
                if sum < best.0 {
                    best = (sum, climb as i8);
                }
            }
            next.push(best.0 + cost.at(column(x), y as usize));
            step.push(best.1);
        }
        sums = next;
        steps.push(step);
    }
    let near = |y: usize| from.is_none_or(|from| from.abs_diff(y) <= 3);
    let end = sums.iter().enumerate().filter(|(y, _)| near(*y)).min_by(|a, b| a.1.total_cmp(b.1)).map_or(0, |(y, _)| y);
    let mut path = vec![end; columns];
    let mut at = end;
    for x in (1..columns).rev() {
        let climb = steps.get(x - 1).and_then(|step| step.get(at)).copied().unwrap_or(0);
        at = at.saturating_add_signed(climb.into());
        if let Some(place) = path.get_mut(x - 1) {
            *place = at;
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::around;
    use crate::sight::picture::Plane;

    #[test]
    fn a_cheap_wave_is_followed_all_around() {
        let mut cost = Plane::new(90, 40, 1.0);
        let wave = |x: usize| (20.0 + 6.0 * (x as f32 / 90.0 * std::f32::consts::TAU).sin()).round() as usize;
        for x in 0..90 {
            cost.row_mut(wave(x))[x] = 0.0;
        }
        let path = around(&cost);
        assert!(path.iter().enumerate().all(|(x, y)| y.abs_diff(wave(x)) <= 1), "{path:?}");
    }
}
