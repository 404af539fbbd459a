//! Which permutation is best at this visit, and how the visits after it go.

use std::cell::Cell;
use std::collections::BTreeMap;

use super::board::{Board, Key, Perm};
use super::matching::{Costs, cheapest, cheapest_that};
use super::pattern::Pattern;
use super::spread::{Fill, SAME_MM, root_bound, solve, spread_of};

/// Up to this many permutations, each one is weighed; beyond, the search is bounded.
pub(super) const WEIGH_ALL: usize = 720;
/// Nodes of one search when each permutation is weighed: far more than six assemblies need.
const NODES_WEIGHING_ALL: u64 = 2_000_000;
/// Nodes of one bounded search, and of those that are only compared with it.
const NODES: u64 = 40_000;
const NODES_NEAR: u64 = 14_000;
const NODES_COMPARED: u64 = 2_000;
/// How many first visits are tried when the best table holds none that is allowed.
const NEAR: usize = 8;
/// Subproblems of one search for the next cheapest assignment.
const ASSIGNMENTS: usize = 400;

/// The search's view of one permutation.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Candidate {
    pub perm: Perm,
    pub key: Key,
    pub remounts: u32,
    pub moved: u32,
    /// Spread at the end of the horizon with the best visits after this one.
    pub spread: f64,
}

/// What was found.
#[derive(Debug, Clone)]
pub(super) struct Found {
    /// The permutations worth showing, best first, without leaving as is.
    pub candidates: Vec<Candidate>,
    /// Whether anything may move at all.
    pub movable: bool,
    pub searched: u64,
    pub proved: bool,
    pub gap: f64,
    /// The least spread among the permutations of the best key, price of remounting included.
    pub least: f64,
}

/// Runs the search on a board.
pub(super) struct Search<'a, 'b> {
    board: &'b Board<'a>,
    sets: Vec<Vec<usize>>,
    /// A seating that is allowed at later visits.
    seating: Perm,
    limit: u64,
    /// Some search was cut short.
    cut: Cell<bool>,
    values: BTreeMap<Perm, f64>,
    /// The visits after a permutation, set by set, as found for its value.
    ways: BTreeMap<Perm, Vec<(Fill, Vec<usize>)>>,
}

impl<'a, 'b> Search<'a, 'b> {
    pub(super) fn new(board: &'b Board<'a>) -> Self {
        let later: Costs =
            board.cells.iter().map(|row| row.iter().map(|cell| cell.later.then_some(0)).collect()).collect();
        let seating = cheapest(&later).map_or_else(|| (0..board.len()).collect(), |(_, places)| places);
        Self {
            board,
            sets: board.sets(),
            seating,
            limit: NODES_WEIGHING_ALL,
            cut: Cell::new(false),
            values: BTreeMap::new(),
            ways: BTreeMap::new(),
        }
    }

    /// Visits after this one.
    fn later_visits(&self) -> u8 {
        self.board.request.horizon.saturating_sub(1)
    }

    /// Whether a tire that this visit did or did not remount may go to a place later.
    fn open_later(&self, perm: &[usize], tire: usize, place: usize) -> bool {
        let Some(cell) = self.board.cell(tire, place) else { return false };
        let remounted = perm.get(tire).and_then(|to| self.board.cell(tire, *to)).is_some_and(|cell| cell.remount);
        if !remounted {
            return cell.later;
        }
        // Turned round on its rim, it suits the other side, and only that.
        let side = |p: usize| self.board.places.get(p).and_then(|place| place.position()).map(|at| at.side);
        let to = perm.get(tire).and_then(|to| side(*to));
        cell.open && (side(place).is_none() || side(place) == to)
    }

    /// Depths after the interval that follows this visit.
    fn after(&self, perm: &[usize]) -> Vec<f64> {
        perm.iter().enumerate().map(|(tire, place)| self.board.start(tire) - self.board.first_wear(*place)).collect()
    }

    /// The best visits after this one, set by set, unless their spread must exceed `most`.
    fn fills(&self, perm: &[usize], most: f64, good_enough: bool) -> Option<Vec<(Fill, Vec<usize>)>> {
        let after = self.after(perm);
        let open = |tire: usize, place: usize| self.open_later(perm, tire, place);
        let remounts = self.board.remounts(perm) > 0;
        let seating = if remounts { self.seating_after(perm)? } else { self.seating.clone() };
        let sets: Vec<_> = self
            .sets
            .iter()
            .map(|members| self.board.set(members, &after, &open, &seating, self.later_visits()))
            .collect();
        let floors: Vec<f64> = sets.iter().map(|(set, _)| root_bound(set).max(0.0)).collect();
        let mut rest: f64 = floors.iter().sum();
        let mut sum = 0.0;
        let mut fills = Vec::with_capacity(sets.len());
        for ((set, class_of), floor) in sets.into_iter().zip(floors) {
            rest -= floor;
            if sum + floor + rest > most + SAME_MM {
                return None;
            }
            let stop_at = if good_enough { most - sum - rest } else { f64::NEG_INFINITY };
            let cap = most - sum - rest;
            let fill = solve(&set, stop_at, cap, self.limit);
            if !fill.proved && fill.spread > stop_at {
                self.cut.set(true);
            }
            sum += fill.spread;
            fills.push((fill, class_of));
        }
        (sum <= most + SAME_MM).then_some(fills)
    }

    fn seating_after(&self, perm: &[usize]) -> Option<Perm> {
        let numbers = 0..self.board.len();
        let costs: Costs = numbers
            .clone()
            .map(|tire| numbers.clone().map(|p| self.open_later(perm, tire, p).then_some(0)).collect())
            .collect();
        cheapest(&costs).map(|(_, places)| places)
    }

    /// The spread a permutation leads to with the best visits after it; infinite
    /// when it must exceed `most`.
    fn value(&mut self, perm: &[usize], most: f64) -> f64 {
        if self.board.wear.is_none() {
            return 0.0;
        }
        if let Some(value) = self.values.get(perm) {
            return *value;
        }
        let value = match self.later_visits() {
            0 => self.spread_now(&self.after(perm)),
            _ => match self.fills(perm, most, false) {
                Some(fills) => {
                    let sum = fills.iter().map(|(fill, _)| fill.spread).sum();
                    self.ways.insert(perm.to_vec(), fills);
                    sum
                }
                None => return f64::INFINITY,
            },
        };
        self.values.insert(perm.to_vec(), value);
        value
    }

    /// Whether a permutation can lead to a spread of at most `most`.
    fn reaches(&mut self, perm: &[usize], most: f64) -> bool {
        if self.board.wear.is_none() {
            return true;
        }
        if let Some(value) = self.values.get(perm) {
            return *value <= most + SAME_MM;
        }
        match self.later_visits() {
            0 => self.spread_now(&self.after(perm)) <= most + SAME_MM,
            _ => self.fills(perm, most, true).is_some(),
        }
    }

    /// Spread of given depths, summed over the sets.
    pub(super) fn spread_now(&self, depths: &[f64]) -> f64 {
        self.sets
            .iter()
            .map(|members| {
                let ends: Vec<f64> = members.iter().filter_map(|i| depths.get(*i).copied()).collect();
                spread_of(&ends)
            })
            .sum()
    }

    fn candidate(&self, perm: Perm) -> Candidate {
        Candidate {
            key: self.board.key(&perm),
            remounts: self.board.remounts(&perm),
            moved: Board::moved(&perm),
            spread: f64::INFINITY,
            perm,
        }
    }

    fn price(&self, candidate: &Candidate) -> f64 {
        f64::from(candidate.remounts) * self.board.request.remount_price_mm
    }

    /// Finds what is worth showing. The maker's pattern, then the trade's, win
    /// where nothing is clearly better.
    pub(super) fn run(&mut self, makers: Option<Pattern>, trades: &[Pattern]) -> Found {
        match self.all_permutations() {
            Some(all) => self.weigh_all(all, makers, trades),
            None => self.bounded(makers, trades),
        }
    }

    /// Every permutation that moves something and is allowed; `None` when there are too many.
    fn all_permutations(&self) -> Option<Vec<Perm>> {
        let mut partial: Vec<Perm> = vec![Vec::new()];
        for row in &self.board.cells {
            let mut next = Vec::new();
            for perm in &partial {
                for (place, _) in row.iter().enumerate().filter(|(_, cell)| cell.open) {
                    if !perm.contains(&place) {
                        let mut longer = perm.clone();
                        longer.push(place);
                        next.push(longer);
                    }
                }
            }
            // Partial rows only multiply; a dead end frees at most what it held.
            if next.len() > WEIGH_ALL * 8 {
                return None;
            }
            partial = next;
        }
        if partial.len() > WEIGH_ALL {
            return None;
        }
        Some(partial)
    }

    fn weigh_all(&mut self, all: Vec<Perm>, makers: Option<Pattern>, trades: &[Pattern]) -> Found {
        let searched = u64::try_from(all.len()).unwrap_or(u64::MAX);
        let mut candidates: Vec<Candidate> = all
            .into_iter()
            .filter(|perm| Board::moved(perm) > 0 && self.board.allows(perm))
            .map(|perm| self.candidate(perm))
            .collect();
        candidates.sort_by(|a, b| (a.key, a.moved, &a.perm).cmp(&(b.key, b.moved, &b.perm)));
        let Some(best_key) = candidates.first().map(|candidate| candidate.key) else {
            return Found { candidates, movable: false, searched, proved: true, gap: 0.0, least: 0.0 };
        };
        let top: Vec<Candidate> = candidates.iter().filter(|c| c.key == best_key).cloned().collect();
        let (least, argmin) = self.least(&top);
        let within = least + self.board.band;
        let makers = makers.and_then(|pattern| self.perm_of(pattern));
        let makers = makers.and_then(|perm| candidates.iter().find(|c| c.perm == perm));
        let named = trades.iter().filter_map(|pattern| self.perm_of(*pattern));
        let trades: Vec<&Candidate> = named.filter_map(|perm| top.iter().find(|c| c.perm == perm)).collect();
        let wanted = makers.into_iter().filter(|c| c.key.alike_but_advice(best_key)).chain(trades);
        let mut chosen = None;
        for candidate in wanted {
            if self.reaches(&candidate.perm, within - self.price(candidate)) {
                chosen = Some(candidate.clone());
                break;
            }
        }
        if chosen.is_none() {
            chosen = match self.board.wear {
                Some(_) => top.iter().find(|c| self.reaches(&c.perm, within - self.price(c))).cloned(),
                None => self.without_history(&top),
            };
        }
        let gap = if self.cut.get() { (least - self.loose_floor()).max(0.0) } else { 0.0 };
        let proved = !self.cut.get();
        let candidates = self.ranked(chosen, argmin, &candidates);
        Found { candidates, movable: true, searched, proved, gap, least }
    }

    /// The least spread, price of remounting included, and a permutation that reaches it.
    fn least(&mut self, top: &[Candidate]) -> (f64, Option<Perm>) {
        if self.board.wear.is_none() {
            return (0.0, None);
        }
        if let Some(found) = self.joint(top) {
            return found;
        }
        let mut order: Vec<(f64, &Candidate)> = top.iter().map(|c| (self.floor(&c.perm) + self.price(c), c)).collect();
        order.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (mut least, mut argmin) = (f64::INFINITY, None);
        for (floor, candidate) in order {
            if floor >= least - SAME_MM {
                break;
            }
            let price = self.price(candidate);
            let value = self.value(&candidate.perm, least - price) + price;
            if value < least - SAME_MM {
                (least, argmin) = (value, Some(candidate.perm.clone()));
            }
        }
        (least, argmin)
    }

    /// No way on from a permutation has a smaller spread than this.
    fn floor(&self, perm: &[usize]) -> f64 {
        let after = self.after(perm);
        if self.later_visits() == 0 {
            return self.spread_now(&after);
        }
        let open = |tire: usize, place: usize| self.open_later(perm, tire, place);
        self.sets
            .iter()
            .map(|members| {
                let (set, _) = self.board.set(members, &after, &open, &self.seating, self.later_visits());
                root_bound(&set).max(0.0)
            })
            .sum()
    }

    /// Whether this visit's interval wears like the later ones, and the same moves are open.
    fn uniform(&self) -> bool {
        let Some((first, later)) = &self.board.wear else { return false };
        let cells = self.board.cells.iter().flatten().all(|cell| cell.open == cell.later);
        cells && first.iter().zip(later).all(|(a, b)| (a - b).abs() < 1e-12)
    }

    /// All visits at once, as one table; then a first visit among `top` that fits
    /// into it. `None` when none does, or the visits differ.
    fn joint(&mut self, top: &[Candidate]) -> Option<(f64, Option<Perm>)> {
        if !self.uniform() || self.later_visits() == 0 {
            return None;
        }
        let fills = self.table()?;
        let least: f64 = fills.iter().map(|(fill, _)| fill.spread).sum();
        if fills.iter().any(|(fill, _)| !fill.proved) {
            self.cut.set(true);
        }
        let used = self.used(&fills);
        let fits = |perm: &Perm| {
            perm.iter().enumerate().all(|(t, p)| used.get(t).and_then(|row| row.get(*p)).copied().unwrap_or(false))
        };
        let first = top.iter().find(|c| fits(&c.perm))?.perm.clone();
        self.take_from_table(&first, fills);
        Some((least, Some(first)))
    }

    /// Takes a permutation out of a table as its first visit: what is left are the visits after it.
    fn take_from_table(&mut self, perm: &Perm, mut fills: Vec<(Fill, Vec<usize>)>) {
        for (members, (fill, class_of)) in self.sets.iter().zip(&mut fills) {
            for (tire, row) in members.iter().zip(&mut fill.counts) {
                let class = perm.get(*tire).and_then(|place| class_of.get(*place));
                if let Some(count) = class.and_then(|class| row.get_mut(*class)) {
                    *count = count.saturating_sub(1);
                }
            }
        }
        self.values.insert(perm.clone(), fills.iter().map(|(fill, _)| fill.spread).sum());
        self.ways.insert(perm.clone(), fills);
    }

    /// The table of all visits, this one included, with the least spread.
    fn table(&self) -> Option<Vec<(Fill, Vec<usize>)>> {
        let open = |tire: usize, place: usize| self.board.cell(tire, place).is_some_and(|cell| cell.later);
        let fills = self
            .sets
            .iter()
            .map(|members| {
                let (set, class_of) =
                    self.board.set(members, &self.board.starts, &open, &self.seating, self.board.request.horizon);
                (solve(&set, f64::NEG_INFINITY, f64::INFINITY, self.limit), class_of)
            })
            .collect();
        Some(fills)
    }

    /// Which places a table uses, by tire and place of the board.
    fn used(&self, fills: &[(Fill, Vec<usize>)]) -> Vec<Vec<bool>> {
        let mut used = vec![vec![false; self.board.len()]; self.board.len()];
        for (members, (fill, class_of)) in self.sets.iter().zip(fills) {
            for (tire, row) in members.iter().zip(&fill.counts) {
                for place in members {
                    let count = class_of.get(*place).and_then(|class| row.get(*class)).copied().unwrap_or(0);
                    if let Some(cell) = used.get_mut(*tire).and_then(|row| row.get_mut(*place)) {
                        *cell = count > 0;
                    }
                }
            }
        }
        used
    }

    /// How much more or less a tire would wear at a place than at the nearest one
    /// its table holds, in steps of 0.02 mm, at most 600 so that sums stay within 14 bits.
    fn strays(&self, used: &[Vec<bool>], tire: usize, place: usize) -> i64 {
        let row = used.get(tire).map(Vec::as_slice).unwrap_or_default();
        let held = row.iter().enumerate().filter(|(_, held)| **held).map(|(p, _)| self.board.later_wear(p));
        let apart = held.map(|wear| (wear - self.board.later_wear(place)).abs()).fold(f64::INFINITY, f64::min);
        // Held within 0 to 600.
        (apart * 50.0).clamp(0.0, 600.0).round() as i64
    }

    fn perm_of(&self, pattern: Pattern) -> Option<Perm> {
        self.board.perm_of(&pattern.moves(&self.board.request.layout)?)
    }

    /// Without history only named patterns are proposed, unless something must be put right.
    fn without_history(&self, top: &[Candidate]) -> Option<Candidate> {
        let named = Pattern::NAMED.into_iter().filter_map(|pattern| self.perm_of(pattern));
        let mut allowed = named.filter_map(|perm| top.iter().find(|c| c.perm == perm).cloned());
        if let Some(candidate) = allowed.next() {
            return Some(candidate);
        }
        let identity: Perm = (0..self.board.len()).collect();
        top.first().filter(|candidate| candidate.key < self.board.key(&identity)).cloned()
    }

    /// The chosen one first, then two alternatives: the named patterns that are
    /// allowed and the one with the least spread.
    fn ranked(&mut self, chosen: Option<Candidate>, argmin: Option<Perm>, known: &[Candidate]) -> Vec<Candidate> {
        // Nothing to choose: no alternative may take the first place either.
        if chosen.is_none() {
            return Vec::new();
        }
        let mut others: Vec<Candidate> = Vec::new();
        let named: Vec<Perm> = Pattern::NAMED.into_iter().filter_map(|pattern| self.perm_of(pattern)).collect();
        for perm in named.into_iter().chain(argmin) {
            let taken = chosen.iter().chain(&others).any(|c| c.perm == perm);
            if !taken && let Some(candidate) = known.iter().find(|c| c.perm == perm) {
                others.push(candidate.clone());
            }
        }
        for candidate in &mut others {
            candidate.spread = self.value(&candidate.perm, f64::INFINITY);
        }
        others.sort_by(|a, b| {
            let spread = |c: &Candidate| c.spread + f64::from(c.remounts) * self.board.request.remount_price_mm;
            let apart = spread(a) - spread(b);
            a.key
                .cmp(&b.key)
                .then(if apart.abs() < 1e-6 { std::cmp::Ordering::Equal } else { apart.total_cmp(&0.0) })
                .then((a.moved, &a.perm).cmp(&(b.moved, &b.perm)))
        });
        let mut ranked: Vec<Candidate> = chosen.into_iter().collect();
        for candidate in &mut ranked {
            candidate.spread = self.value(&candidate.perm, f64::INFINITY);
        }
        ranked.extend(others);
        ranked.truncate(3);
        ranked
    }

    /// For more assemblies than can be weighed one by one.
    fn bounded(&mut self, makers: Option<Pattern>, trades: &[Pattern]) -> Found {
        self.limit = NODES;
        let board = self.board;
        let named: Vec<Perm> = Pattern::NAMED
            .into_iter()
            .filter_map(|pattern| self.perm_of(pattern))
            .filter(|perm| board.allows(perm))
            .collect();
        let numbers: Vec<usize> = (0..board.len()).collect();
        let costs = |extra: &dyn Fn(usize, usize) -> Option<i64>| -> Costs {
            let cost = |tire: usize, place: usize| {
                let cell = board.cell(tire, place).filter(|cell| cell.open && !cell.remount)?;
                Some(cell.key.packed() + extra(tire, place)? + i64::from(tire != place))
            };
            numbers.iter().map(|t| numbers.iter().map(|p| cost(*t, *p)).collect()).collect()
        };
        let clash = |perm: &[usize]| board.clash(perm);
        let mut perms = named;
        let best_known = cheapest_that(&costs(&|_, _| Some(0)), ASSIGNMENTS, 1, clash);
        let key_proved = !best_known.is_empty();
        perms.extend(best_known.into_iter().map(|(_, perm)| perm));
        let mut floor = 0.0;
        // Worth the whole effort each: what keeps nearest to the best table.
        let mut near: Vec<Perm> = Vec::new();
        if board.wear.is_some() {
            if self.uniform()
                && let Some(fills) = self.table()
            {
                floor = fills.iter().map(|(fill, _)| fill.bound).sum();
                let used = self.used(&fills);
                let in_table = |t: usize, p: usize| used.get(t).and_then(|row| row.get(p)).copied().unwrap_or(false);
                let inside = costs(&|t, p| in_table(t, p).then_some(0));
                if let Some((_, perm)) = cheapest_that(&inside, ASSIGNMENTS, 1, clash).into_iter().next() {
                    if self.later_visits() > 0 {
                        self.take_from_table(&perm, fills);
                    }
                    perms.push(perm);
                } else {
                    let beside = costs(&|t, p| Some(self.strays(&used, t, p)));
                    near.extend(cheapest_that(&beside, ASSIGNMENTS, NEAR, clash).into_iter().map(|(_, perm)| perm));
                }
            } else {
                floor = self.loose_floor();
            }
        }
        self.limit = NODES_NEAR;
        let mut closest = f64::INFINITY;
        let mut kept: Option<Perm> = None;
        for perm in near {
            let value = self.value(&perm, closest);
            if value < closest - SAME_MM {
                (closest, kept) = (value, Some(perm));
            }
        }
        perms.extend(kept);
        perms.sort();
        perms.dedup();
        // The others are compared only, with less effort.
        self.limit = NODES_COMPARED;
        let mut candidates: Vec<Candidate> = perms.into_iter().map(|perm| self.candidate(perm)).collect();
        candidates.sort_by(|a, b| (a.key, a.moved, &a.perm).cmp(&(b.key, b.moved, &b.perm)));
        let searched = u64::try_from(candidates.len()).unwrap_or(u64::MAX);
        let Some(best_key) = candidates.first().map(|c| c.key) else {
            return Found { candidates, movable: false, searched, proved: key_proved, gap: 0.0, least: 0.0 };
        };
        let (mut least, mut argmin) = (f64::INFINITY, None);
        for candidate in &mut candidates {
            candidate.spread = self.value(&candidate.perm, f64::INFINITY);
            let value = candidate.spread + f64::from(candidate.remounts) * board.request.remount_price_mm;
            if candidate.key == best_key && value < least - SAME_MM {
                (least, argmin) = (value, Some(candidate.perm.clone()));
            }
        }
        let within = least + board.band;
        let top: Vec<&Candidate> = candidates.iter().filter(|c| c.key == best_key).collect();
        let price = |c: &Candidate| f64::from(c.remounts) * board.request.remount_price_mm;
        let reached = |c: &Candidate| c.spread + price(c) <= within + SAME_MM;
        let makers = makers.and_then(|pattern| self.perm_of(pattern));
        let makers = makers.and_then(|perm| candidates.iter().find(|c| c.perm == perm));
        let named = trades.iter().filter_map(|pattern| self.perm_of(*pattern));
        let trades: Vec<&Candidate> = named.filter_map(|perm| top.iter().copied().find(|c| c.perm == perm)).collect();
        let wanted = makers.into_iter().filter(|c| c.key.alike_but_advice(best_key)).chain(trades);
        let by_name = wanted.into_iter().find(|c| reached(c)).cloned();
        let chosen = match (by_name, &board.wear) {
            (Some(candidate), _) => Some(candidate),
            (None, Some(_)) => top.iter().find(|c| reached(c)).map(|c| (*c).clone()),
            (None, None) => {
                let top: Vec<Candidate> = top.into_iter().cloned().collect();
                self.without_history(&top)
            }
        };
        let gap = if board.wear.is_some() { (least - floor).max(0.0) } else { 0.0 };
        let gap = if gap <= 1e-6 { 0.0 } else { gap };
        let proved = gap == 0.0 && key_proved;
        let ranked = self.ranked(chosen, argmin, &candidates);
        Found { candidates: ranked, movable: true, searched, proved, gap, least }
    }

    /// A bound for visits that differ: as if every tire could be anywhere.
    fn loose_floor(&self) -> f64 {
        let (Some((first, later)), visits) = (&self.board.wear, self.later_visits()) else { return 0.0 };
        self.sets
            .iter()
            .map(|members| {
                let of = |wears: &Vec<f64>| -> Vec<f64> {
                    let mut wears: Vec<f64> = members.iter().filter_map(|p| wears.get(*p).copied()).collect();
                    wears.sort_by(f64::total_cmp);
                    wears
                };
                let (first, later) = (of(first), of(later));
                let mut starts = of(&self.board.starts);
                starts.reverse();
                let sum = |wears: &mut dyn Iterator<Item = &f64>| wears.sum::<f64>();
                let mut top = f64::NEG_INFINITY;
                let mut bottom = f64::INFINITY;
                for k in 1..=members.len() {
                    let number = u32::try_from(k).map_or(1.0, f64::from);
                    let large =
                        sum(&mut first.iter().rev().take(k)) + f64::from(visits) * sum(&mut later.iter().rev().take(k));
                    let small = sum(&mut first.iter().take(k)) + f64::from(visits) * sum(&mut later.iter().take(k));
                    top = top.max((sum(&mut starts.iter().take(k)) - large) / number);
                    bottom = bottom.min((sum(&mut starts.iter().rev().take(k)) - small) / number);
                }
                (top - bottom).max(0.0)
            })
            .sum()
    }

    /// Every visit of a plan, this one first: permutations of tires over places.
    pub(super) fn visits(&mut self, perm: &Perm) -> Vec<Perm> {
        let mut visits = vec![perm.clone()];
        let later = self.later_visits();
        if later == 0 || self.board.wear.is_none() {
            return visits;
        }
        let known = self.ways.remove(perm);
        let Some(fills) = known.or_else(|| self.fills(perm, f64::INFINITY, false)) else { return visits };
        let mut left: Vec<Vec<u8>> = vec![Vec::new(); self.board.len()];
        let mut class_of: Vec<(usize, usize)> = vec![(usize::MAX, 0); self.board.len()];
        for (number, (members, (fill, classes))) in self.sets.iter().zip(&fills).enumerate() {
            for (tire, row) in members.iter().zip(&fill.counts) {
                if let Some(slot) = left.get_mut(*tire) {
                    slot.clone_from(row);
                }
            }
            for place in members {
                if let (Some(slot), Some(class)) = (class_of.get_mut(*place), classes.get(*place)) {
                    *slot = (number, *class);
                }
            }
        }
        let set_of: Vec<usize> =
            (0..self.board.len()).map(|t| class_of.get(t).map_or(usize::MAX, |(number, _)| *number)).collect();
        let mut now = perm.clone();
        for _ in 0..later {
            // Any seating inside what is left keeps it splittable; the one that moves least is taken.
            let costs: Costs = (0..self.board.len())
                .map(|tire| {
                    class_of
                        .iter()
                        .enumerate()
                        .map(|(place, (number, class))| {
                            let mine = set_of.get(tire) == Some(number);
                            let count = left.get(tire).and_then(|row| row.get(*class)).copied().unwrap_or(0);
                            let stays = now.get(tire) == Some(&place);
                            (mine && count > 0).then_some(if stays { 0 } else { 1 })
                        })
                        .collect()
                })
                .collect();
            let Some((_, next)) = cheapest(&costs) else { break };
            for (tire, place) in next.iter().enumerate() {
                let class = class_of.get(*place).map_or(0, |(_, class)| *class);
                if let Some(count) = left.get_mut(tire).and_then(|row| row.get_mut(class)) {
                    *count = count.saturating_sub(1);
                }
            }
            visits.push(next.clone());
            now = next;
        }
        visits
    }
}
