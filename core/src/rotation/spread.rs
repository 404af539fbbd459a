//! How close together a set of tires can end, and by which stays.
//!
//! For equal intervals only the *number* of visits a tire spends at each
//! position matters: a table with tires as rows and positions as columns, whose
//! rows and columns sum to the number of visits. Such a table always splits into
//! that many permutations (an edge coloring of a regular bipartite multigraph).
//! Positions with equal wear, open to the same tires, count as one class.
//!
//! Bound: the deepest tire at the end is at least the mean of the k that start
//! deepest, less the largest wear that k tires can take together, for each k;
//! likewise from below. The same bound holds for the tires not yet seated in a
//! depth-first search, and prunes it.

/// Differences below this are no differences, in mm.
pub(super) const SAME_MM: f64 = 1e-9;
/// The most classes the search can tell apart; beyond, only local search runs.
const MOST_CLASSES: usize = 16;
/// The most stays of one tire the search will list.
const MOST_ROWS: usize = 60_000;

/// A class of positions: equal wear per visit, open to the same tires.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Class {
    /// Wear per visit, in mm.
    pub wear: f64,
    /// How many positions.
    pub seats: u8,
}

/// A set of tires that may change places over some visits.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Set {
    /// Depth at the start, in mm, by tire.
    pub starts: Vec<f64>,
    /// The classes open to each tire, one bit each.
    pub open: Vec<u32>,
    /// The classes.
    pub classes: Vec<Class>,
    /// A class for each tire that fills every seat, for a start that is allowed.
    pub seated: Vec<usize>,
    /// The number of visits.
    pub visits: u8,
}

/// What the search found.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Fill {
    /// Deepest less shallowest at the end, in mm.
    pub spread: f64,
    /// Visits by tire and class.
    pub counts: Vec<Vec<u8>>,
    /// No table has a smaller spread than this.
    pub bound: f64,
    /// Whether the search was exhausted, so that the spread is the least one.
    pub proved: bool,
}

/// Finds the table with the least spread.
///
/// Stops early once the spread is at or below `stop_at`, or after `limit` nodes;
/// then `proved` is false and `bound` still holds. Tables above `most` are of no
/// use: when the best one lies there, any of them comes back, with `bound` above
/// `most` once that is proved.
pub(super) fn solve(set: &Set, stop_at: f64, most: f64, limit: u64) -> Fill {
    let mut fill = local(set);
    fill.bound = root_bound(set).max(0.0);
    let done = |fill: &mut Fill| {
        if set.starts.len() < 2 || fill.spread <= fill.bound + SAME_MM {
            fill.bound = fill.spread;
            fill.proved = true;
        }
        fill.proved || fill.spread <= stop_at
    };
    if done(&mut fill) {
        return fill;
    }
    if set.starts.len() > FEW {
        roam(set, &mut fill, limit);
        if done(&mut fill) {
            return fill;
        }
    }
    let Some(rows) = rows(set) else { return fill };
    let mut search = Search::new(set, &rows, &fill, stop_at, limit);
    search.best = search.best.min(most + 2.0 * SAME_MM);
    let capacity = pack(set.classes.iter().map(|class| u32::from(class.seats) * u32::from(set.visits)));
    search.seat(0, capacity, f64::INFINITY, f64::NEG_INFINITY);
    if let Some(found) = search.found {
        fill.spread = search.best;
        fill.counts = found;
    }
    if !search.cut {
        fill.proved = true;
        fill.bound = fill.spread.min(search.best);
    }
    fill
}

/// Up to so many tires the depth-first search needs no better start than plain descent.
const FEW: usize = 6;
/// Kicks of the search that roams, at most.
const KICKS: u64 = 240;

/// No table of this set has a smaller spread.
pub(super) fn root_bound(set: &Set) -> f64 {
    let (top, bottom) = root_bounds(set);
    top - bottom
}

/// The least the deepest and the most the shallowest can end at.
fn root_bounds(set: &Set) -> (f64, f64) {
    let mut starts = set.starts.clone();
    starts.sort_by(f64::total_cmp);
    let items: Vec<(f64, u32)> =
        set.classes.iter().map(|class| (class.wear, u32::from(class.seats) * u32::from(set.visits))).collect();
    bounds(&starts, &items, u32::from(set.visits))
}

/// The least the deepest, and the most the shallowest, of some tires can end at.
/// `starts` ascending; `items` are wears ascending with how many are left.
fn bounds(starts: &[f64], items: &[(f64, u32)], visits: u32) -> (f64, f64) {
    let mut top = f64::NEG_INFINITY;
    let mut bottom = f64::INFINITY;
    let mut large = Taker::new(items.iter().rev());
    let mut small = Taker::new(items.iter());
    let (mut deep, mut shallow) = (0.0, 0.0);
    for (k, (low, high)) in (1u32..).zip(starts.iter().zip(starts.iter().rev())) {
        deep += high;
        shallow += low;
        let count = f64::from(k);
        top = top.max((deep - large.take(visits)) / count);
        bottom = bottom.min((shallow - small.take(visits)) / count);
    }
    (top, bottom)
}

/// Adds up wears from one end of the list.
struct Taker<I> {
    items: I,
    wear: f64,
    left: u32,
    sum: f64,
}

impl<'a, I: Iterator<Item = &'a (f64, u32)>> Taker<I> {
    fn new(items: I) -> Self {
        Self { items, wear: 0.0, left: 0, sum: 0.0 }
    }

    /// Takes so many more; the sum of all taken.
    fn take(&mut self, mut count: u32) -> f64 {
        while count > 0 {
            if self.left == 0 {
                let Some(&(wear, left)) = self.items.next() else { break };
                (self.wear, self.left) = (wear, left);
                continue;
            }
            let taken = count.min(self.left);
            self.sum += self.wear * f64::from(taken);
            self.left -= taken;
            count -= taken;
        }
        self.sum
    }
}

/// One way for a tire to spend its visits.
#[derive(Debug, Clone, Copy)]
struct Row {
    packed: u128,
    total: f64,
    uses: u32,
}

/// Counts side by side, eight bits each, the high bit of each kept clear.
fn pack(counts: impl Iterator<Item = u32>) -> u128 {
    counts.zip(0u32..).fold(0, |packed, (count, at)| packed | (u128::from(count.min(127)) << (8 * at)))
}

/// The high bit of every count.
const GUARD: u128 = 0x8080_8080_8080_8080_8080_8080_8080_8080;

/// Capacity less a row, when it is not overdrawn.
fn less(capacity: u128, row: u128) -> Option<u128> {
    let left = (capacity | GUARD) - row;
    (left & GUARD == GUARD).then_some(left & !GUARD)
}

/// The count of a class.
fn count(packed: u128, class: u32) -> u8 {
    u8::try_from((packed >> (8 * class)) & 0x7f).unwrap_or(0)
}

/// Every way a tire can spend its visits, by total wear ascending; `None` when
/// there are too many to list.
fn rows(set: &Set) -> Option<Vec<Row>> {
    let fits = set.classes.iter().all(|c| u32::from(c.seats) * u32::from(set.visits) <= 127);
    if set.classes.len() > MOST_CLASSES || !fits {
        return None;
    }
    let mut rows = vec![(Row { packed: 0, total: 0.0, uses: 0 }, set.visits)];
    let last = set.classes.len().saturating_sub(1);
    for (at, class) in set.classes.iter().enumerate() {
        let shift = u32::try_from(at).ok()?;
        let mut next = Vec::with_capacity(rows.len() * 2);
        for (row, left) in rows {
            let from = if at == last { left } else { 0 };
            for taken in from..=left {
                next.push((
                    Row {
                        packed: row.packed | (u128::from(taken) << (8 * shift)),
                        total: row.total + class.wear * f64::from(taken),
                        uses: row.uses | (u32::from(taken > 0) << shift),
                    },
                    left - taken,
                ));
            }
            if next.len() > MOST_ROWS {
                return None;
            }
        }
        rows = next;
    }
    let mut rows: Vec<Row> = rows.into_iter().map(|(row, _)| row).collect();
    rows.sort_by(|a, b| a.total.total_cmp(&b.total).then(a.packed.cmp(&b.packed)));
    Some(rows)
}

/// Depth-first over tires, the most extreme first.
struct Search<'a> {
    set: &'a Set,
    rows: &'a [Row],
    /// Tires in the order in which they are seated: index, start, open classes.
    order: Vec<(usize, f64, u32)>,
    /// Starts of the tires not yet seated, ascending, by depth of the search.
    rest: Vec<Vec<f64>>,
    chosen: Vec<(usize, usize)>,
    best: f64,
    found: Option<Vec<Vec<u8>>>,
    stop_at: f64,
    nodes: u64,
    limit: u64,
    cut: bool,
    done: bool,
    floor: f64,
}

impl<'a> Search<'a> {
    fn new(set: &'a Set, rows: &'a [Row], fill: &Fill, stop_at: f64, limit: u64) -> Self {
        let number = u32::try_from(set.starts.len()).map_or(1.0, f64::from);
        let mean = set.starts.iter().sum::<f64>() / number;
        let mut order: Vec<(usize, f64, u32)> =
            set.starts.iter().zip(&set.open).enumerate().map(|(i, (s, open))| (i, *s, *open)).collect();
        order.sort_by(|a, b| {
            let far = |x: &(usize, f64, u32)| (x.1 - mean).abs();
            far(b).total_cmp(&far(a)).then(a.1.total_cmp(&b.1)).then(a.2.cmp(&b.2)).then(a.0.cmp(&b.0))
        });
        let rest = (0..order.len())
            .map(|depth| {
                let mut starts: Vec<f64> = order.iter().skip(depth).map(|tire| tire.1).collect();
                starts.sort_by(f64::total_cmp);
                starts
            })
            .collect();
        Self {
            set,
            rows,
            order,
            rest,
            chosen: Vec::new(),
            best: fill.spread,
            found: None,
            stop_at,
            nodes: 0,
            limit,
            cut: false,
            done: false,
            floor: fill.bound,
        }
    }

    fn seat(&mut self, depth: usize, capacity: u128, low: f64, high: f64) {
        if self.done {
            return;
        }
        self.nodes += 1;
        if self.nodes > self.limit {
            self.cut = true;
            self.done = true;
            return;
        }
        let Some(&(tire, start, open)) = self.order.get(depth) else {
            self.take(high - low);
            return;
        };
        let items: Vec<(f64, u32)> = self
            .set
            .classes
            .iter()
            .zip(0u32..)
            .map(|(class, at)| (class.wear, u32::from(count(capacity, at))))
            .collect();
        let visits = u32::from(self.set.visits);
        let Some(rest) = self.rest.get(depth) else { return };
        let (least_top, most_bottom) = bounds(rest, &items, visits);
        let (top, bottom) = (high.max(least_top), low.min(most_bottom));
        if top - bottom >= self.best - SAME_MM {
            return;
        }
        // A tire like the one before it takes no earlier row: the mirror image was tried.
        let before = depth.checked_sub(1).and_then(|d| Some((self.order.get(d)?, self.chosen.get(d)?)));
        let first = match before {
            Some((&(_, s, o), &(_, row))) if s == start && o == open => row,
            _ => 0,
        };
        if depth + 1 == self.order.len() {
            let total: f64 = items.iter().map(|(wear, left)| wear * f64::from(*left)).sum();
            let uses = items.iter().zip(0u32..).fold(0, |uses, ((_, left), at)| uses | (u32::from(*left > 0) << at));
            let end = start - total;
            let spread = high.max(end) - low.min(end);
            if uses & !open == 0 && spread < self.best - SAME_MM {
                let row = self.rows.partition_point(|row| row.total < total - SAME_MM);
                let exact = self.rows.iter().enumerate().skip(row).find(|(_, row)| row.packed == capacity);
                if let Some((index, _)) = exact {
                    self.chosen.push((tire, index));
                    self.take(spread);
                    self.chosen.pop();
                }
            }
            return;
        }
        // Ends that can still lie in a window narrower than the best one.
        let most = start - (top - self.best);
        let least = start - (bottom + self.best);
        let middle = start - (top + bottom) / 2.0;
        let rows = self.rows;
        let from = rows.partition_point(|row| row.total < least).max(first);
        let until = rows.partition_point(|row| row.total <= most);
        let mut up = rows.partition_point(|row| row.total < middle).clamp(from, until.max(from));
        let mut down = up;
        loop {
            // The nearest to the middle first, so that good tables are met early.
            let above = rows.get(up).filter(|_| up < until).map(|row| row.total - middle);
            let below =
                down.checked_sub(1).filter(|d| *d >= from).and_then(|d| rows.get(d)).map(|row| middle - row.total);
            let index = match (above, below) {
                (None, None) => break,
                (Some(a), Some(b)) if a <= b => up,
                (Some(_), None) => up,
                _ => down - 1,
            };
            if index == up {
                up += 1;
            } else {
                down -= 1;
            }
            let Some(row) = rows.get(index) else { break };
            if row.uses & !open != 0 {
                continue;
            }
            let Some(left) = less(capacity, row.packed) else { continue };
            let end = start - row.total;
            let (next_low, next_high) = (low.min(end), high.max(end));
            if next_high.max(top) - next_low.min(bottom) >= self.best - SAME_MM {
                continue;
            }
            self.chosen.push((tire, index));
            self.seat(depth + 1, left, next_low, next_high);
            self.chosen.pop();
            if self.done {
                return;
            }
        }
    }

    fn take(&mut self, spread: f64) {
        if spread >= self.best - SAME_MM {
            return;
        }
        self.best = spread;
        let mut counts = vec![Vec::new(); self.order.len()];
        for (tire, index) in &self.chosen {
            if let (Some(slot), Some(row)) = (counts.get_mut(*tire), self.rows.get(*index)) {
                *slot = (0u32..).take(self.set.classes.len()).map(|class| count(row.packed, class)).collect();
            }
        }
        self.found = Some(counts);
        // At the floor nothing better exists: as good as exhausted.
        if spread <= self.floor + SAME_MM {
            self.done = true;
        } else if spread <= self.stop_at {
            self.done = true;
            self.cut = true;
        }
    }
}

/// A good table by exchanging single visits between an extreme tire and another.
fn local(set: &Set) -> Fill {
    let mut counts: Vec<Vec<u8>> = set
        .seated
        .iter()
        .map(|at| (0..set.classes.len()).map(|class| if class == *at { set.visits } else { 0 }).collect())
        .collect();
    let all_open = set.open.iter().all(|open| open.count_ones() as usize >= set.classes.len());
    if all_open {
        counts = dealt(set);
    }
    let mut ends: Vec<f64> = set.starts.iter().zip(&counts).map(|(s, row)| s - worn(set, row)).collect();
    for _ in 0..400 {
        let Some(step) = best_exchange(set, &counts, &ends) else { break };
        apply(set, &mut counts, &mut ends, &step);
    }
    let ends: Vec<f64> = set.starts.iter().zip(&counts).map(|(s, row)| s - worn(set, row)).collect();
    Fill { spread: spread_of(&ends), counts, bound: 0.0, proved: false }
}

/// Deepest less shallowest.
pub(super) fn spread_of(ends: &[f64]) -> f64 {
    let high = ends.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let low = ends.iter().copied().fold(f64::INFINITY, f64::min);
    if ends.is_empty() { 0.0 } else { high - low }
}

fn worn(set: &Set, row: &[u8]) -> f64 {
    set.classes.iter().zip(row).map(|(class, visits)| class.wear * f64::from(*visits)).sum()
}

/// Visit by visit, the deepest tire takes the hardest seat.
fn dealt(set: &Set) -> Vec<Vec<u8>> {
    let mut counts = vec![vec![0u8; set.classes.len()]; set.starts.len()];
    let mut seats: Vec<usize> = Vec::new();
    for (at, class) in set.classes.iter().enumerate() {
        seats.extend(std::iter::repeat_n(at, usize::from(class.seats)));
    }
    let wear = |class: usize| set.classes.get(class).map_or(0.0, |class| class.wear);
    seats.sort_by(|a, b| wear(*b).total_cmp(&wear(*a)));
    let mut depths: Vec<(f64, usize)> = set.starts.iter().copied().zip(0..).collect();
    for _ in 0..set.visits {
        depths.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
        for ((depth, tire), class) in depths.iter_mut().zip(&seats) {
            *depth -= wear(*class);
            if let Some(cell) = counts.get_mut(*tire).and_then(|row| row.get_mut(*class)) {
                *cell += 1;
            }
        }
    }
    counts
}

/// How far ends lie outside a window, squared.
#[derive(Clone, Copy)]
struct Window {
    low: f64,
    high: f64,
}

impl Window {
    fn outside(&self, end: f64) -> f64 {
        let far = (end - self.high).max(self.low - end).max(0.0);
        far * far
    }
}

/// Leaves the nearest good table by small random exchanges and descends again, as
/// often as the limit of nodes allows, always alike: the numbers are drawn from a
/// fixed start. Ends are drawn into the window that the bound leaves open.
fn roam(set: &Set, fill: &mut Fill, limit: u64) {
    let (top, bottom) = root_bounds(set);
    let middle = (top + bottom) / 2.0;
    let window = Window { low: bottom.min(middle), high: top.max(middle) };
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut draw = |below: usize| {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        usize::try_from(state % u64::try_from(below.max(1)).unwrap_or(1)).unwrap_or(0)
    };
    let mut counts = fill.counts.clone();
    let mut ends: Vec<f64> = set.starts.iter().zip(&counts).map(|(s, row)| s - worn(set, row)).collect();
    let cost = |ends: &[f64]| ends.iter().map(|end| window.outside(*end)).sum::<f64>();
    let mut kept = (cost(&ends), counts.clone(), ends.clone());
    let kicks = KICKS.min(limit / 64);
    for kick in 0..kicks {
        if kick > 0 {
            (_, counts, ends) = kept.clone();
            for _ in 0..2 + draw(3) {
                let (a, b) = (draw(set.starts.len()), draw(set.starts.len()));
                let (from, to) = (draw(set.classes.len()), draw(set.classes.len()));
                let step = Exchange { a, from, b, to };
                if a != b && from != to && possible(set, &counts, &step) {
                    apply(set, &mut counts, &mut ends, &step);
                }
            }
        }
        for _ in 0..200 {
            let Some(step) = inward(set, &counts, &ends, window) else { break };
            apply(set, &mut counts, &mut ends, &step);
        }
        // Sums of differences drift: the ends are counted anew before they are compared.
        ends = set.starts.iter().zip(&counts).map(|(s, row)| s - worn(set, row)).collect();
        let (spread, now) = (spread_of(&ends), cost(&ends));
        if spread < fill.spread - SAME_MM {
            fill.spread = spread;
            fill.counts.clone_from(&counts);
            if spread <= fill.bound + SAME_MM {
                return;
            }
        }
        if now <= kept.0 + 1e-12 {
            kept = (now, counts.clone(), ends.clone());
        }
    }
}

fn possible(set: &Set, counts: &[Vec<u8>], step: &Exchange) -> bool {
    let has = |tire: usize, class: usize| counts.get(tire).and_then(|row| row.get(class)).is_some_and(|n| *n > 0);
    let open = |tire: usize, class: usize| set.open.get(tire).is_some_and(|open| open >> class & 1 == 1);
    has(step.a, step.from) && has(step.b, step.to) && open(step.a, step.to) && open(step.b, step.from)
}

/// The exchange that brings ends nearest to the window.
fn inward(set: &Set, counts: &[Vec<u8>], ends: &[f64], window: Window) -> Option<Exchange> {
    let mut best = -1e-9;
    let mut found = None;
    for (a, ((end_a, row_a), open_a)) in ends.iter().zip(counts).zip(&set.open).enumerate() {
        let out_a = window.outside(*end_a);
        for (b, ((end_b, row_b), open_b)) in ends.iter().zip(counts).zip(&set.open).enumerate().skip(a + 1) {
            let out = out_a + window.outside(*end_b);
            if out <= 0.0 {
                continue;
            }
            for ((from, class_from), have_a) in set.classes.iter().enumerate().zip(row_a) {
                if *have_a == 0 || open_b >> from & 1 == 0 {
                    continue;
                }
                for ((to, class_to), have_b) in set.classes.iter().enumerate().zip(row_b) {
                    if *have_b == 0 || to == from || open_a >> to & 1 == 0 {
                        continue;
                    }
                    let gain = class_from.wear - class_to.wear;
                    let change = window.outside(end_a + gain) + window.outside(end_b - gain) - out;
                    if change < best {
                        best = change;
                        found = Some(Exchange { a, from, b, to });
                    }
                }
            }
        }
    }
    found
}

/// One visit of `a` at `from` for one of `b` at `to`.
struct Exchange {
    a: usize,
    from: usize,
    b: usize,
    to: usize,
}

/// The exchange that narrows the spread most; of equal ones, the one that lowers
/// the sum of squares most.
fn best_exchange(set: &Set, counts: &[Vec<u8>], ends: &[f64]) -> Option<Exchange> {
    let spread = spread_of(ends);
    let high = ends.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let low = ends.iter().copied().fold(f64::INFINITY, f64::min);
    let mut best: Option<(f64, f64, Exchange)> = None;
    for (a, (end_a, row_a)) in ends.iter().zip(counts).enumerate() {
        if *end_a < high - SAME_MM && *end_a > low + SAME_MM {
            continue;
        }
        for (b, (end_b, row_b)) in ends.iter().zip(counts).enumerate().filter(|(b, _)| *b != a) {
            let (open_a, open_b) = (set.open.get(a).copied()?, set.open.get(b).copied()?);
            let others = ends.iter().enumerate().filter(|(i, _)| *i != a && *i != b).map(|(_, end)| *end);
            let (mut rest_low, mut rest_high) = (f64::INFINITY, f64::NEG_INFINITY);
            for end in others {
                rest_low = rest_low.min(end);
                rest_high = rest_high.max(end);
            }
            for ((from, class_from), have_a) in set.classes.iter().enumerate().zip(row_a) {
                if *have_a == 0 || open_b >> from & 1 == 0 {
                    continue;
                }
                for ((to, class_to), have_b) in set.classes.iter().enumerate().zip(row_b) {
                    if *have_b == 0 || to == from || open_a >> to & 1 == 0 {
                        continue;
                    }
                    let gain = class_from.wear - class_to.wear;
                    let (new_a, new_b) = (end_a + gain, end_b - gain);
                    let new_spread = new_a.max(new_b).max(rest_high) - new_a.min(new_b).min(rest_low);
                    let squares = new_a * new_a + new_b * new_b - end_a * end_a - end_b * end_b;
                    let better = match &best {
                        None => true,
                        Some((s, q, _)) => {
                            new_spread < s - SAME_MM || (new_spread <= s + SAME_MM && squares < q - SAME_MM)
                        }
                    };
                    if better {
                        best = Some((new_spread, squares, Exchange { a, from, b, to }));
                    }
                }
            }
        }
    }
    best.filter(|(s, q, _)| *s < spread - SAME_MM || (*s <= spread + SAME_MM && *q < -1e-7)).map(|(_, _, step)| step)
}

fn apply(set: &Set, counts: &mut [Vec<u8>], ends: &mut [f64], step: &Exchange) {
    let wear = |class: usize| set.classes.get(class).map_or(0.0, |class| class.wear);
    let gain = wear(step.from) - wear(step.to);
    for (tire, gives, takes, gain) in [(step.a, step.from, step.to, gain), (step.b, step.to, step.from, -gain)] {
        if let Some(row) = counts.get_mut(tire) {
            if let Some(cell) = row.get_mut(gives) {
                *cell = cell.saturating_sub(1);
            }
            if let Some(cell) = row.get_mut(takes) {
                *cell = cell.saturating_add(1);
            }
        }
        if let Some(end) = ends.get_mut(tire) {
            *end += gain;
        }
    }
}
