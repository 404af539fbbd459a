//! The search: over what stands where and which corners are up.
//!
//! A node says which corners are up, which wheel is mounted at each corner that
//! is down, and where each other wheel lies. Wheels of raised corners and loose
//! wheels form one pool; which of them goes on a hub is decided when its corner
//! comes down. A* orders by lifts first, then by the way that jack and wheels
//! are rolled around the vehicle. The bound counts the corners that are down and
//! still want work, each hoist taking at most its own; see [`Search::bound`].

use std::cell::Cell;

use pathfinding::prelude::astar;

use super::gear::{Hoist, Rules, corner_bit};
use super::task::{Interchange, Refusal, Spare, Vehicle};
use crate::vehicle::{Place, Position, Side};

/// No wheel.
const NONE: u8 = u8::MAX;

/// Nodes opened before the exact search gives up its proof.
const EXACT: usize = 40_000;
/// Nodes opened by the search that follows, which proves nothing.
const QUICK: usize = 40_000;
/// Up to so many wheels in play every choice is tried; beyond it, a wheel whose
/// own hub comes down is put on it at once, which never costs a lift.
const TRY_ALL: usize = 6;

/// One step of a solution.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Step {
    /// Corners go up.
    Raise(Hoist),
    /// Corners come down, with these wheels on: position and wheel, by index.
    Lower(Hoist, Vec<(usize, usize)>),
}

/// A solution.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub steps: Vec<Step>,
    pub lifts: u32,
    pub at_least: u32,
    pub bound: u32,
    pub walk: u32,
    pub proved: bool,
    pub opened: usize,
}

#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Node {
    /// Corners that are up.
    up: u32,
    /// Corners whose wheels still have to come off and on.
    todo: u32,
    /// Where each wheel is: a position's index, or the spare's.
    lies: Vec<u8>,
    /// The wheel mounted at each position that is down.
    on: Vec<u8>,
    /// Where the jack was used last.
    jack: u8,
}

/// A wheel's index is that of the place it starts from; the spare comes last.
pub(super) struct Search<'a> {
    rules: &'a Rules,
    positions: Vec<Position>,
    axles: usize,
    /// Where each wheel has to end, by index.
    goal: Vec<u8>,
    /// Corners that have to be raised in any case.
    todo: u32,
    /// Whether a wheel may stand at a position: `fits[wheel][position]`.
    fits: Vec<Vec<bool>>,
    /// Way between two places, in steps.
    way: Vec<Vec<u32>>,
    restricted: bool,
}

/// Lifts and walking as one number, lifts first.
const LIFT: u64 = 1 << 32;

/// Steps along one side from axle to axle, and across an end; a stride is about 0.75 m.
const ALONG: u32 = 4;
const ACROSS: u32 = 2;

/// The way around the vehicle between two places, in strides: along the sides
/// and around the ends, never under the vehicle. The spare is at the rear.
fn way(from: Option<Position>, to: Option<Position>, axles: usize) -> u32 {
    let rear = |position: Position| {
        let behind = u32::try_from(axles.saturating_sub(usize::from(position.axle))).unwrap_or(0);
        behind.saturating_mul(ALONG)
    };
    match (from, to) {
        (None, None) => 0,
        (Some(one), None) | (None, Some(one)) => rear(one).saturating_add(ACROSS / 2),
        (Some(one), Some(other)) if one.side == other.side => {
            u32::from(one.axle.abs_diff(other.axle)).saturating_mul(ALONG)
        }
        (Some(one), Some(other)) => {
            let front = |position: Position| u32::from(position.axle.saturating_sub(1)).saturating_mul(ALONG);
            let around_rear = rear(one).saturating_add(rear(other));
            let around_front = front(one).saturating_add(front(other));
            around_rear.min(around_front).saturating_add(ACROSS)
        }
    }
}

/// Whether a vehicle stands safely with these corners up: an axle is up as a
/// whole, or at one end, and all axles that are up at one end are so on the same side.
pub(super) fn stands_safely(up: u32, axles: usize) -> bool {
    let ends = (0..axles).map(|axle| (up >> (2 * axle)) & 0b11);
    let sides = ends.fold(0, |sides, end| if end == 0b11 { sides } else { sides | end });
    sides != 0b11
}

impl<'a> Search<'a> {
    pub(super) fn new(vehicle: &Vehicle, rules: &'a Rules, moves: &[(Place, Place)]) -> Result<Self, Refusal> {
        let positions: Vec<Position> = vehicle.layout.positions().collect();
        let axles = vehicle.layout.axles.len();
        let spare_moves = moves.iter().any(|(from, _)| *from == Place::Spare);
        let spare = spare_moves || vehicle.spare == Spare::FullSize;
        let count = positions.len();
        let index = |place: Place| match place {
            Place::Spare => Some(count),
            Place::Wheel(position) => positions.iter().position(|p| *p == position),
        };
        let wheels = count.saturating_add(usize::from(spare));
        let mut goal: Vec<u8> = (0..wheels).filter_map(|at| u8::try_from(at).ok()).collect();
        let mut todo = 0;
        for (from, to) in moves {
            let (Some(wheel), Some(target)) = (index(*from), index(*to)) else {
                return Err(Refusal::NoSuchPlace { at: *from });
            };
            if let Some(slot) = goal.get_mut(wheel) {
                *slot = u8::try_from(target).unwrap_or(NONE);
            }
            if let Place::Wheel(position) = from {
                todo |= corner_bit(position.axle, position.side);
            }
        }
        let place = |at: usize| positions.get(at).copied();
        let allowed = |wheel: usize, at: usize| {
            let target = goal.get(wheel).map(|g| usize::from(*g));
            if wheel == at || target == Some(at) {
                return true;
            }
            if wheel == count && vehicle.spare == Spare::Temporary {
                return false;
            }
            let own = |other: Option<usize>| other.and_then(place).map(|p| p.axle) == place(at).map(|p| p.axle);
            vehicle.interchange == Interchange::Any || own(Some(wheel)) || own(target)
        };
        let fits: Vec<Vec<bool>> = (0..wheels).map(|w| (0..count).map(|at| allowed(w, at)).collect()).collect();
        let restricted = fits.iter().flatten().any(|fit| !fit);
        let way = (0..=count).map(|a| (0..=count).map(|b| way(place(a), place(b), axles)).collect()).collect();
        Ok(Self { rules, positions, axles, goal, todo, fits, way, restricted })
    }

    fn start(&self) -> Node {
        let numbers = |count: usize| (0..count).filter_map(|at| u8::try_from(at).ok()).collect::<Vec<_>>();
        Node { up: 0, todo: self.todo, lies: numbers(self.goal.len()), on: numbers(self.positions.len()), jack: NONE }
    }

    fn done(&self, node: &Node) -> bool {
        node.up == 0 && node.todo == 0 && node.lies == self.goal
    }

    fn corner_of(&self, at: usize) -> u32 {
        self.positions.get(at).map_or(0, |position| corner_bit(position.axle, position.side))
    }

    /// Corners that are down and have a wheel that is not at home, or work to do.
    fn wanting(&self, node: &Node) -> u32 {
        let misplaced = node.on.iter().enumerate().filter(|(at, wheel)| {
            **wheel != NONE && self.goal.get(usize::from(**wheel)).map(|goal| usize::from(*goal)) != Some(*at)
        });
        misplaced.fold(node.todo, |set, (at, _)| set | self.corner_of(at)) & !node.up
    }

    fn has(&self, hoist: Hoist) -> bool {
        self.rules.hoists.contains(&hoist)
    }

    /// A number of lifts that no solution can be below.
    ///
    /// Every corner that is down and wants work has to be raised at least once.
    /// A hoist raises one end, one axle or the whole vehicle, so the corners of
    /// different axles never share a lift unless the whole vehicle goes up. With
    /// one corner up at a time [`Search::one_at_a_time`] says more.
    fn bound(&self, node: &Node) -> u32 {
        let wanting = self.wanting(node);
        if wanting == 0 {
            return 0;
        }
        if self.has(Hoist::Whole) {
            return 1;
        }
        if self.rules.most_up == 1 {
            return self.one_at_a_time(node, wanting);
        }
        let of_axle = |axle: u8| {
            let ends = [Side::Left, Side::Right].map(|side| wanting & corner_bit(axle, side) != 0);
            let count = u32::from(ends.contains(&true));
            if self.has(Hoist::Axle { axle }) { count } else { ends.into_iter().map(u32::from).sum() }
        };
        (1u8..).take(self.axles).map(of_axle).sum()
    }

    /// The bound with one corner up at a time.
    ///
    /// There is then at most one loose wheel whenever everything is down, so a
    /// lift brings at most one wheel to its corner from elsewhere. Three kinds of
    /// lifts never coincide: one that brings a wheel home to a corner, for each
    /// wheel that is not at its home corner; one at each corner that no wheel has
    /// to come to and that wants work all the same; and the first one in each
    /// group of corners that change wheels among themselves while the loose wheel
    /// belongs elsewhere: it can only bring a stand-in.
    fn one_at_a_time(&self, node: &Node, wanting: u32) -> u32 {
        let corners = self.axles.saturating_mul(2);
        // The loose wheels' own group; a raised corner and its wheels belong to it.
        let hand = corners;
        let mut group: Vec<usize> = (0..=corners).collect();
        let corner = |place: usize| {
            let bit = self.corner_of(place);
            if bit == 0 || bit & node.up != 0 { hand } else { usize::try_from(bit.trailing_zeros()).unwrap_or(hand) }
        };
        let (mut homeward, mut met, mut moving) = (0u32, 0u32, 0u32);
        for (wheel, goal) in self.goal.iter().enumerate() {
            let goal = usize::from(*goal);
            let place = node.on.iter().position(|mounted| usize::from(*mounted) == wheel);
            let (from, to) = (place.map_or(hand, corner), corner(goal));
            // Home at a raised corner is reached in the lift that goes on, from the pool only.
            let raised = self.corner_of(goal) & node.up != 0;
            if from == to && (from != hand || raised || self.corner_of(goal) == 0) {
                continue;
            }
            if self.corner_of(goal) != 0 {
                homeward = homeward.saturating_add(1);
            }
            for end in [from, to] {
                moving |= 1u32.checked_shl(u32::try_from(end).unwrap_or(u32::MAX)).unwrap_or(0);
            }
            if to != hand {
                met |= 1u32.checked_shl(u32::try_from(to).unwrap_or(u32::MAX)).unwrap_or(0);
            }
            let (one, other) = (group.get(from).copied(), group.get(to).copied());
            if let (Some(one), Some(other)) = (one, other) {
                for member in &mut group {
                    if *member == one {
                        *member = other;
                    }
                }
            }
        }
        let own = group.get(hand).copied();
        let mut apart: Vec<usize> = (0..corners)
            .filter(|at| moving & 1u32.checked_shl(u32::try_from(*at).unwrap_or(u32::MAX)).unwrap_or(0) != 0)
            .filter_map(|at| group.get(at).copied())
            .filter(|name| Some(*name) != own)
            .collect();
        apart.sort_unstable();
        apart.dedup();
        let groups = u32::try_from(apart.len()).unwrap_or(0);
        homeward.saturating_add((wanting & !met).count_ones()).saturating_add(groups)
    }

    /// The bound in lifts and walking: each wheel has at least its own way to go.
    fn estimate(&self, node: &Node, lifts: u64) -> u64 {
        let walk: u32 = node.lies.iter().zip(&self.goal).map(|(at, goal)| self.way_between(*at, *goal)).sum();
        u64::from(self.bound(node)).saturating_mul(lifts).saturating_add(u64::from(walk))
    }

    fn way_between(&self, from: u8, to: u8) -> u32 {
        self.way.get(usize::from(from)).and_then(|row| row.get(usize::from(to))).copied().unwrap_or(0)
    }

    /// The way the jack is rolled from one hoist to the next; the nearest end of an axle counts.
    fn jack_way(&self, from: u8, to: usize) -> u32 {
        let places = |hoist: usize| {
            let corners = self.rules.hoists.get(hoist).map_or(0, |hoist| hoist.corners(self.axles));
            (0..self.positions.len()).filter(move |at| self.corner_of(*at) & corners != 0)
        };
        if from == NONE {
            return 0;
        }
        let pairs = places(usize::from(from)).flat_map(|a| places(to).map(move |b| (a, b)));
        let byte = |at: usize| u8::try_from(at).unwrap_or(NONE);
        pairs.map(|(a, b)| self.way_between(byte(a), byte(b))).min().unwrap_or(0)
    }

    fn next(&self, node: &Node) -> Vec<(Node, u64)> {
        let mut out = Vec::new();
        for (at, hoist) in self.rules.hoists.iter().enumerate() {
            let corners = hoist.corners(self.axles);
            let jack = u8::try_from(at).unwrap_or(NONE);
            let walk = u64::from(self.jack_way(node.jack, at));
            if corners & node.up == 0 {
                let up = node.up | corners;
                if up.count_ones() <= self.rules.most_up && stands_safely(up, self.axles) {
                    let mut raised = node.clone();
                    raised.up = up;
                    raised.todo &= !corners;
                    raised.jack = jack;
                    for (position, slot) in raised.on.iter_mut().enumerate() {
                        if self.corner_of(position) & corners != 0 {
                            *slot = NONE;
                        }
                    }
                    out.push((raised, LIFT + walk));
                }
            } else if corners & node.up == corners && stands_safely(node.up & !corners, self.axles) {
                self.lowered(node, corners, jack, walk, &mut out);
            }
        }
        // The loose wheel goes to the spare's place once everything else is done.
        let spare = u8::try_from(self.positions.len()).unwrap_or(NONE);
        if node.up == 0
            && let Some(loose) = (0..node.lies.len()).find(|wheel| self.is_loose(node, *wheel))
            && let (Some(lies), Some(goal)) = (node.lies.get(loose), self.goal.get(loose))
            && *goal == spare
            && *lies != spare
        {
            let walk = self.way_between(*lies, spare);
            let mut stowed = node.clone();
            if let Some(slot) = stowed.lies.get_mut(loose) {
                *slot = spare;
            }
            out.push((stowed, u64::from(walk)));
        }
        out
    }

    fn is_loose(&self, node: &Node, wheel: usize) -> bool {
        !node.on.iter().any(|mounted| usize::from(*mounted) == wheel)
    }

    /// All ways to bring corners down: each free wheel on each of their hubs.
    fn lowered(&self, node: &Node, corners: u32, jack: u8, walk: u64, out: &mut Vec<(Node, u64)>) {
        let mut base = node.clone();
        base.up &= !corners;
        base.jack = jack;
        let hubs: Vec<usize> = (0..self.positions.len()).filter(|at| self.corner_of(*at) & corners != 0).collect();
        // With everything up, every wheel can go straight home.
        let whole = self.has(Hoist::Whole);
        let at_once = whole || (self.goal.len() > TRY_ALL && !self.restricted);
        let mut partial = vec![(base, walk)];
        for hub in hubs {
            let mut more = Vec::new();
            for (state, cost) in &partial {
                let home = self.goal.iter().position(|goal| usize::from(*goal) == hub);
                let free = |wheel: usize| {
                    self.is_loose(state, wheel) && self.fits.get(wheel).and_then(|f| f.get(hub)) == Some(&true)
                };
                let choices: Vec<usize> = match home.filter(|wheel| at_once && free(*wheel)) {
                    Some(wheel) => vec![wheel],
                    None => (0..state.lies.len()).filter(|wheel| free(*wheel)).collect(),
                };
                for wheel in choices {
                    let mut next = state.clone();
                    let from = next.lies.get(wheel).copied().unwrap_or(NONE);
                    let (Ok(place), Ok(name)) = (u8::try_from(hub), u8::try_from(wheel)) else { continue };
                    if let (Some(lies), Some(on)) = (next.lies.get_mut(wheel), next.on.get_mut(hub)) {
                        *lies = place;
                        *on = name;
                    }
                    more.push((next, cost.saturating_add(u64::from(self.way_between(from, place)))));
                }
            }
            partial = more;
        }
        out.extend(partial);
    }

    /// Corners that want work and that no hoist reaches.
    pub(super) fn out_of_reach(&self) -> bool {
        let reach = self.rules.hoists.iter().fold(0, |set, hoist| set | hoist.corners(self.axles));
        self.wanting(&self.start()) & !reach != 0
    }

    /// Fewest lifts, then the shortest way; `Ok(None)` when there is no way at all.
    pub(super) fn solve(&self) -> Result<Option<Found>, Refusal> {
        let start = self.start();
        let bound = self.bound(&start);
        let opened = Cell::new(0usize);
        let run = |most: usize, weight: u64| {
            opened.set(0);
            astar(
                &start,
                |node| {
                    opened.set(opened.get().saturating_add(1));
                    if opened.get() > most { Vec::new() } else { self.next(node) }
                },
                |node| self.estimate(node, LIFT.saturating_mul(weight)),
                |node| self.done(node),
            )
        };
        let exact = run(EXACT, 1);
        let gave_up = opened.get() > EXACT;
        let (answer, proved) = match exact {
            Some(answer) => (answer, !gave_up),
            None if !gave_up => return Ok(None),
            None => match run(QUICK, 4) {
                Some(answer) => (answer, false),
                None if opened.get() > QUICK => return Err(Refusal::TooLarge),
                None => return Ok(None),
            },
        };
        let (path, cost) = answer;
        let lifts = u32::try_from(cost / LIFT).unwrap_or(u32::MAX);
        let walk = u32::try_from(cost % LIFT).unwrap_or(u32::MAX);
        // An answer that meets the bound is proved by the bound alone.
        let proved = proved || lifts == bound;
        let at_least = if proved { lifts } else { bound };
        Ok(Some(Found { steps: self.steps(&path), lifts, at_least, bound, walk, proved, opened: opened.get() }))
    }

    fn steps(&self, path: &[Node]) -> Vec<Step> {
        let pairs = path.iter().zip(path.iter().skip(1));
        pairs
            .filter_map(|(before, after)| {
                let hoist = self.rules.hoists.get(usize::from(after.jack)).copied()?;
                if after.up.count_ones() > before.up.count_ones() {
                    return Some(Step::Raise(hoist));
                }
                let lowered = before.up & !after.up;
                let on = after.on.iter().enumerate().filter(|(at, _)| self.corner_of(*at) & lowered != 0);
                let mounted = on.map(|(at, wheel)| (at, usize::from(*wheel))).collect();
                (lowered != 0).then_some(Step::Lower(hoist, mounted))
            })
            .collect()
    }

    /// The positions, in the order of their indexes.
    pub(super) fn positions(&self) -> &[Position] {
        &self.positions
    }

    /// The place of an index.
    pub(super) fn place(&self, at: usize) -> Place {
        self.positions.get(at).map_or(Place::Spare, |position| Place::Wheel(*position))
    }

    /// Positions whose wheel has to come off in any case.
    pub(super) fn serviced(&self, moves: &[(Place, Place)]) -> Vec<usize> {
        let index = |place: Place| place.position().and_then(|p| self.positions.iter().position(|q| *q == p));
        moves.iter().filter(|(from, to)| from == to).filter_map(|(from, _)| index(*from)).collect()
    }
}
