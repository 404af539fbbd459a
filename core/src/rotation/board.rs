//! The request as the search sees it: tires and places by number, what each move
//! costs, and who may go where.

use crate::vehicle::{Drive, Place, Row};

use super::answer::{Because, Force};
use super::constraint::{ALL, Direction, Move};
use super::facts::{Limit, Request, TireFacts, thousands_km};
use super::matching::{Costs, cheapest};
use super::spread::{Class, Set};

/// A permutation: the place of each tire, by number.
pub(super) type Perm = Vec<usize>;

/// What one tire at one place costs before spread and moves are looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Key {
    /// Tires below their limit before the next visit, or standing where they must not.
    pub bad: u32,
    /// After a part replacement: how far the rear falls short, in micrometres below 50 mm.
    pub rear: u32,
    /// Advice that speaks against it.
    pub advice: u32,
}

impl Key {
    fn plus(self, other: Self) -> Self {
        Self { bad: self.bad + other.bad, rear: self.rear + other.rear, advice: self.advice + other.advice }
    }

    /// Whether two are alike apart from advice.
    pub(super) fn alike_but_advice(self, other: Self) -> bool {
        (self.bad, self.rear) == (other.bad, other.rear)
    }

    /// One number in the same order, with 14 bits left below for what comes after it.
    pub(super) fn packed(self) -> i64 {
        (i64::from(self.bad) << 50) | (i64::from(self.rear) << 26) | (i64::from(self.advice) << 14)
    }
}

/// A cell of the board: one tire at one place.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cell {
    /// What the constraints say.
    pub words: Vec<Because>,
    /// Whether the tire may go there at this visit.
    pub open: bool,
    /// Whether it may go there at a later visit without remounting.
    pub later: bool,
    /// Whether going there needs remounting.
    pub remount: bool,
    /// What it costs.
    pub key: Key,
}

/// The board.
#[derive(Debug, Clone)]
pub(super) struct Board<'a> {
    /// The request.
    pub request: &'a Request,
    /// The tires, in the layout's order of places.
    pub tires: Vec<&'a TireFacts>,
    /// The places, in the same order: tire number i stands at place number i.
    pub places: Vec<Place>,
    /// Cells by tire and place.
    pub cells: Vec<Vec<Cell>>,
    /// Shallowest groove by tire, in mm; zeros when any is unknown.
    pub starts: Vec<f64>,
    /// Wear by place until the next visit, and between later visits, in mm; empty when unknown.
    pub wear: Option<(Vec<f64>, Vec<f64>)>,
    /// The half width of a forecast of the most worn place over the horizon, in mm.
    pub band: f64,
    /// Limit by place, in mm.
    pub limits: Vec<f64>,
    /// Which pairs of places are the outer and the inner of a dual.
    pub pairs: Vec<(usize, usize)>,
}

impl<'a> Board<'a> {
    pub(super) fn new(request: &'a Request) -> Self {
        let mut tires: Vec<&TireFacts> = Vec::new();
        for place in request.layout.places() {
            tires.extend(request.tires.iter().find(|tire| tire.at == place));
        }
        let places: Vec<Place> = tires.iter().map(|tire| tire.at).collect();
        let depths: Option<Vec<f64>> =
            tires.iter().map(|tire| if tire.temporary { Some(0.0) } else { tire.least_mm() }).collect();
        let wear = depths.as_ref().and_then(|_| wear(request, &tires));
        let limits: Vec<f64> = places.iter().map(|place| limit_mm(request, *place)).collect();
        let starts = depths.unwrap_or_else(|| vec![0.0; tires.len()]);
        let number = |place: Place| places.iter().position(|p| *p == place);
        let pairs = request
            .layout
            .positions()
            .filter(|position| position.row == Row::Outer)
            .filter_map(|outer| {
                let inner = crate::vehicle::Position { row: Row::Inner, ..outer };
                Some((number(Place::Wheel(outer))?, number(Place::Wheel(inner))?))
            })
            .collect();
        let mut board = Self { request, tires, places, cells: Vec::new(), starts, band: 0.0, wear, limits, pairs };
        board.band = board.band_mm();
        board.cells = board.make_cells();
        board
    }

    /// How many tires there are.
    pub(super) fn len(&self) -> usize {
        self.tires.len()
    }

    /// A cell; every tire and place number of the board has one.
    pub(super) fn cell(&self, tire: usize, place: usize) -> Option<&Cell> {
        self.cells.get(tire)?.get(place)
    }

    fn band_mm(&self) -> f64 {
        let Some((first, later)) = &self.wear else { return 0.0 };
        let intervals = self.request.horizon.saturating_sub(1);
        let first_km = self.first_km().unwrap_or(0.0);
        let later_km = self.request.interval.map_or(first_km, thousands_km);
        let distance = first_km + later_km * f64::from(intervals);
        let widest = self
            .tires
            .iter()
            .zip(first.iter().zip(later))
            .filter_map(|(tire, _)| tire.rate)
            .map(|rate| rate.half_width * distance)
            .fold(0.0, f64::max);
        self.request.uncertainty.depth_mm.hypot(widest)
    }

    /// Thousands of kilometres to the next visit.
    pub(super) fn first_km(&self) -> Option<f64> {
        self.request.next_visit.or(self.request.interval).map(thousands_km)
    }

    fn make_cells(&self) -> Vec<Vec<Cell>> {
        let rear_counts = self.request.after_part_replacement
            && self.request.layout.axles.len() == 2
            && self.request.layout.lettered()
            && self.tires.iter().all(|tire| tire.temporary || tire.least_mm().is_some());
        let mut cells: Vec<Vec<Cell>> = self
            .tires
            .iter()
            .enumerate()
            .map(|(i, tire)| {
                self.places
                    .iter()
                    .enumerate()
                    .map(|(p, place)| {
                        let to = Move { request: self.request, tire, to: *place };
                        let words = to.words();
                        let refused = words.iter().any(|word| word.force.refuses());
                        let advice = words.iter().filter(|word| word.force == Force::Advice).count();
                        let at_rear = place.position().is_some_and(|position| position.axle == 2);
                        let short = if rear_counts && at_rear { micrometres(50.0 - self.start(i)) } else { 0 };
                        let key = Key {
                            bad: u32::from(self.falls_below(i, p) || (i == p && refused)),
                            rear: short,
                            advice: u32::try_from(advice).unwrap_or(u32::MAX),
                        };
                        let remount = Direction::remounts(&to);
                        Cell { words, open: i == p || !refused, later: !refused && !remount, remount, key }
                    })
                    .collect()
            })
            .collect();
        // When no seating without the places tires must not stand at exists, they stay.
        let later: Costs = cells.iter().map(|row| row.iter().map(|cell| cell.later.then_some(0)).collect()).collect();
        if cheapest(&later).is_none() {
            for (i, row) in cells.iter_mut().enumerate() {
                if let Some(cell) = row.get_mut(i) {
                    cell.later = true;
                }
            }
        }
        cells
    }

    /// The depth of a tire at the start, in mm.
    pub(super) fn start(&self, tire: usize) -> f64 {
        self.starts.get(tire).copied().unwrap_or(0.0)
    }

    /// Wear at a place until the next visit, in mm.
    pub(super) fn first_wear(&self, place: usize) -> f64 {
        self.wear.as_ref().and_then(|wear| wear.0.get(place)).copied().unwrap_or(0.0)
    }

    /// Wear at a place between later visits, in mm.
    pub(super) fn later_wear(&self, place: usize) -> f64 {
        self.wear.as_ref().and_then(|wear| wear.1.get(place)).copied().unwrap_or(0.0)
    }

    /// The limit at a place, in mm.
    pub(super) fn limit(&self, place: usize) -> f64 {
        self.limits.get(place).copied().unwrap_or(0.0)
    }

    /// Whether a tire there is below the limit at the next visit. Where wear is
    /// not known, whether it is below now.
    pub(super) fn falls_below(&self, tire: usize, place: usize) -> bool {
        let Some(facts) = self.tires.get(tire) else { return false };
        let on_wheel = self.places.get(place).is_some_and(|place| *place != Place::Spare);
        if facts.temporary || facts.least_mm().is_none() || !on_wheel {
            return false;
        }
        // Without all depths `starts` are zeros; the tire's own depth is what counts.
        let now = facts.least_mm().unwrap_or(0.0);
        now - self.first_wear(place) < self.limit(place) - super::spread::SAME_MM
    }

    /// What a permutation costs before spread and moves.
    pub(super) fn key(&self, perm: &[usize]) -> Key {
        perm.iter()
            .enumerate()
            .filter_map(|(tire, place)| self.cell(tire, *place))
            .fold(Key::default(), |sum, cell| sum.plus(cell.key))
    }

    /// How many tires a permutation remounts.
    pub(super) fn remounts(&self, perm: &[usize]) -> u32 {
        let count = perm.iter().enumerate().filter(|(t, p)| self.cell(*t, **p).is_some_and(|c| c.remount)).count();
        u32::try_from(count).unwrap_or(u32::MAX)
    }

    /// Whether every tire may go where the permutation puts it, and pairs match.
    pub(super) fn allows(&self, perm: &[usize]) -> bool {
        perm.iter().enumerate().all(|(t, p)| self.cell(t, *p).is_some_and(|cell| cell.open))
            && !self.pair_words(perm).iter().any(|word| word.force.refuses())
    }

    /// The tires whose places together are not allowed: all of them when nothing
    /// moves, the two of the first dual pair that is refused; none when all is well.
    pub(super) fn clash(&self, perm: &[usize]) -> Vec<usize> {
        if Self::moved(perm) == 0 {
            return (0..self.len()).collect();
        }
        for (a, b, outer) in self.new_pairs(perm) {
            if self.pair(a, b, outer).iter().any(|word| word.force.refuses()) {
                return vec![a, b];
            }
        }
        Vec::new()
    }

    /// The dual pairs a permutation makes, outer and inner tire and the outer place;
    /// pairs that stay are left alone.
    fn new_pairs(&self, perm: &[usize]) -> Vec<(usize, usize, usize)> {
        let at = |place: usize| perm.iter().position(|p| *p == place);
        let pairs = self.pairs.iter().filter_map(|(outer, inner)| Some((at(*outer)?, at(*inner)?, *outer, *inner)));
        pairs.filter(|(a, b, outer, inner)| a != outer || b != inner).map(|(a, b, outer, _)| (a, b, outer)).collect()
    }

    /// What the constraints say about the dual pairs a permutation makes; pairs that stay are left alone.
    pub(super) fn pair_words(&self, perm: &[usize]) -> Vec<Because> {
        self.new_pairs(perm).into_iter().flat_map(|(a, b, outer)| self.pair(a, b, outer)).collect()
    }

    /// The constraints' words on two tires as outer and inner at a place.
    pub(super) fn pair(&self, outer: usize, inner: usize, place: usize) -> Vec<Because> {
        let (Some(a), Some(b), Some(to)) = (self.tires.get(outer), self.tires.get(inner), self.places.get(place))
        else {
            return Vec::new();
        };
        ALL.iter()
            .filter_map(|constraint| Some(constraint.of_pair(a, b)?.about(constraint.name(), a.at, *to)))
            .collect()
    }

    /// The permutation that some moves make; tires that are not named stay.
    pub(super) fn perm_of(&self, moves: &[(Place, Place)]) -> Option<Perm> {
        let number = |place: &Place| self.places.iter().position(|p| p == place);
        let mut perm: Perm = (0..self.len()).collect();
        for (from, to) in moves {
            let (from, to) = (number(from)?, number(to)?);
            if let Some(slot) = perm.get_mut(from) {
                *slot = to;
            }
        }
        Some(perm)
    }

    /// The moves a permutation makes, only of what moves.
    pub(super) fn moves_of(&self, perm: &[usize]) -> Vec<(Place, Place)> {
        let place = |number: usize| self.places.get(number).copied();
        perm.iter()
            .enumerate()
            .filter(|(from, to)| from != *to)
            .filter_map(|(from, to)| Some((place(from)?, place(*to)?)))
            .collect()
    }

    /// How many assemblies a permutation moves.
    pub(super) fn moved(perm: &[usize]) -> u32 {
        u32::try_from(perm.iter().enumerate().filter(|(from, to)| from != *to).count()).unwrap_or(u32::MAX)
    }

    /// The sets of tires that may change places with one another at this visit.
    pub(super) fn sets(&self) -> Vec<Vec<usize>> {
        let mut mark: Vec<usize> = (0..self.len()).collect();
        loop {
            let mut changed = false;
            for (i, row) in self.cells.iter().enumerate() {
                for (p, cell) in row.iter().enumerate().filter(|(_, cell)| cell.open) {
                    debug_assert!(cell.open);
                    let (a, b) = (mark.get(i).copied().unwrap_or(i), mark.get(p).copied().unwrap_or(p));
                    if a != b {
                        let low = a.min(b);
                        for m in mark.iter_mut().filter(|m| **m == a || **m == b) {
                            *m = low;
                        }
                        changed = true;
                    }
                }
            }
            if !changed {
                break;
            }
        }
        let mut sets: Vec<Vec<usize>> = Vec::new();
        for low in 0..self.len() {
            let members: Vec<usize> = (0..self.len()).filter(|i| mark.get(*i) == Some(&low)).collect();
            if !members.is_empty() {
                sets.push(members);
            }
        }
        sets
    }

    /// The stays of one set over some visits, as the spread search takes them:
    /// `starts` by tire of the board, `seats` the seats open by tire and place,
    /// and an allowed seating to begin with. Also the class of each place.
    pub(super) fn set(
        &self,
        members: &[usize],
        starts: &[f64],
        open: &dyn Fn(usize, usize) -> bool,
        seating: &[usize],
        visits: u8,
    ) -> (Set, Vec<usize>) {
        let mut classes: Vec<(Class, Vec<bool>)> = Vec::new();
        let mut class_of: Vec<usize> = vec![usize::MAX; self.len()];
        let mut sorted: Vec<usize> = members.to_vec();
        sorted.sort_by(|a, b| self.later_wear(*a).total_cmp(&self.later_wear(*b)).then(a.cmp(b)));
        for place in sorted {
            let column: Vec<bool> = members.iter().map(|tire| open(*tire, place)).collect();
            let wear = self.later_wear(place);
            let same = classes.iter().position(|(class, c)| (class.wear - wear).abs() < 1e-12 && *c == column);
            let at = same.unwrap_or(classes.len());
            match classes.get_mut(at) {
                Some((class, _)) => class.seats += 1,
                None => classes.push((Class { wear, seats: 1 }, column)),
            }
            if let Some(slot) = class_of.get_mut(place) {
                *slot = at;
            }
        }
        let bits = |row: usize| {
            classes.iter().zip(0u32..).fold(0u32, |bits, ((_, column), at)| {
                bits | (u32::from(column.get(row).copied().unwrap_or(false)) << at)
            })
        };
        let set = Set {
            starts: members.iter().map(|tire| starts.get(*tire).copied().unwrap_or(0.0)).collect(),
            open: (0..members.len()).map(bits).collect(),
            seated: members
                .iter()
                .map(|tire| seating.get(*tire).and_then(|p| class_of.get(*p)).copied().unwrap_or(0))
                .collect(),
            classes: classes.into_iter().map(|(class, _)| class).collect(),
            visits,
        };
        (set, class_of)
    }

    /// Whether the trade's or maker's pattern may count on the drive being known.
    pub(super) fn drive_known(&self) -> bool {
        self.request.drive != Drive::Unknown
    }
}

fn micrometres(mm: f64) -> u32 {
    let um = (mm.clamp(0.0, 50.0) * 1000.0).round();
    // Held within 0 to 50,000 above.
    um as u32
}

/// Wear by place until the next visit and between later ones; `None` unless the
/// rate of every wheel position and the distances are known.
fn wear(request: &Request, tires: &[&TireFacts]) -> Option<(Vec<f64>, Vec<f64>)> {
    let first = request.next_visit.or(request.interval).map(thousands_km)?;
    let later = if request.horizon > 1 { request.interval.map(thousands_km)? } else { first };
    let rates: Option<Vec<f64>> = tires
        .iter()
        .map(|tire| if tire.at == Place::Spare { Some(0.0) } else { tire.rate.map(|rate| rate.mm_per_1000_km) })
        .collect();
    let rates = rates?;
    Some((rates.iter().map(|rate| rate * first).collect(), rates.iter().map(|rate| rate * later).collect()))
}

/// The limit at a place: the axle's, else the wear bars'.
fn limit_mm(request: &Request, place: Place) -> f64 {
    let stated = place.position().and_then(|position| request.axles.get(&position.axle)).and_then(|axle| axle.limit);
    stated.or_else(Limit::wear_bars).map_or(0.0, |limit| limit.mm())
}
