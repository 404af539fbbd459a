//! A search by breadth over what stands where: the reference for the fewest lifts.
//! It shares no code with the core.

use std::collections::{HashMap, VecDeque};

/// Axle and left or right.
pub type Corner = (u8, bool);

/// What the search by breadth knows of the gear: sets of corners that go up together, how many may be up.
pub struct Bare {
    hubs: Vec<Corner>,
    inner: Vec<bool>,
    hoists: Vec<Vec<Corner>>,
    most_up: usize,
    spare: bool,
    /// Which wheel may hang on which hub.
    pub may: Vec<Vec<bool>>,
}

#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Stand {
    up: Vec<Corner>,
    hub: Vec<Option<usize>>,
    came_off: u32,
}

impl Bare {
    /// Axles with single or dual wheels, and what the gear raises.
    pub fn of(duals: &[bool], hoists: Vec<Vec<Corner>>, most_up: usize, spare: bool) -> Self {
        let mut hubs = Vec::new();
        let mut inner = Vec::new();
        for (axle, dual) in (1u8..).zip(duals) {
            let rows: &[(bool, bool)] = if *dual {
                &[(false, false), (false, true), (true, true), (true, false)]
            } else {
                &[(false, false), (true, false)]
            };
            for (right, is_inner) in rows {
                hubs.push((axle, *right));
                inner.push(*is_inner);
            }
        }
        let wheels = hubs.len() + usize::from(spare);
        let may = vec![vec![true; hubs.len()]; wheels];
        Self { hubs, inner, hoists, most_up, spare, may }
    }

    fn safe(up: &[Corner]) -> bool {
        let ends: Vec<bool> = up.iter().filter(|c| !up.contains(&(c.0, !c.1))).map(|c| c.1).collect();
        ends.iter().all(|end| *end == ends[0])
    }

    /// Fewest lifts to each standing vehicle: wheels on the hubs, and which came off.
    pub fn lifts(&self, watch: u32) -> HashMap<(Vec<Option<usize>>, u32), u32> {
        let start = Stand { up: vec![], hub: (0..self.hubs.len()).map(Some).collect(), came_off: 0 };
        let mut best: HashMap<Stand, u32> = HashMap::from([(start.clone(), 0)]);
        let mut queue = VecDeque::from([start]);
        while let Some(state) = queue.pop_front() {
            let cost = best[&state];
            for (next, lift) in self.next(&state, watch) {
                let total = cost + lift;
                if best.get(&next).is_none_or(|known| total < *known) {
                    best.insert(next.clone(), total);
                    if lift == 0 { queue.push_front(next) } else { queue.push_back(next) }
                }
            }
        }
        best.into_iter().filter(|(s, _)| s.up.is_empty()).map(|(s, cost)| ((s.hub, s.came_off), cost)).collect()
    }

    fn next(&self, state: &Stand, watch: u32) -> Vec<(Stand, u32)> {
        let mut out = Vec::new();
        for hoist in &self.hoists {
            if hoist.iter().all(|c| !state.up.contains(c)) {
                let mut up: Vec<Corner> = state.up.iter().chain(hoist).copied().collect();
                up.sort();
                if up.len() <= self.most_up && Self::safe(&up) {
                    out.push((Stand { up, ..state.clone() }, 1));
                }
            } else if hoist.iter().all(|c| state.up.contains(c)) {
                let up: Vec<Corner> = state.up.iter().copied().filter(|c| !hoist.contains(c)).collect();
                let full = (0..self.hubs.len()).all(|hub| !hoist.contains(&self.hubs[hub]) || state.hub[hub].is_some());
                if full && Self::safe(&up) {
                    out.push((Stand { up, ..state.clone() }, 0));
                }
            }
        }
        let twin = |hub: usize| (0..self.hubs.len()).find(|o| *o != hub && self.hubs[*o] == self.hubs[hub]);
        for hub in 0..self.hubs.len() {
            if !state.up.contains(&self.hubs[hub]) {
                continue;
            }
            match state.hub[hub] {
                Some(_) => {
                    if self.inner[hub] && twin(hub).is_some_and(|outer| state.hub[outer].is_some()) {
                        continue;
                    }
                    let mut next = state.clone();
                    next.hub[hub] = None;
                    next.came_off |= (1 << hub) & watch;
                    out.push((next, 0));
                }
                None => {
                    if !self.inner[hub] && twin(hub).is_some_and(|inner| state.hub[inner].is_none()) {
                        continue;
                    }
                    let wheels = self.hubs.len() + usize::from(self.spare);
                    for wheel in (0..wheels).filter(|w| !state.hub.contains(&Some(*w)) && self.may[*w][hub]) {
                        let mut next = state.clone();
                        next.hub[hub] = Some(wheel);
                        out.push((next, 0));
                    }
                }
            }
        }
        out
    }
}

/// Each end of each axle by itself.
pub fn corner_hoists(axles: u8) -> Vec<Vec<Corner>> {
    (1..=axles).flat_map(|axle| [vec![(axle, false)], vec![(axle, true)]]).collect()
}

/// Each axle as a whole.
pub fn axle_hoists(axles: u8) -> Vec<Vec<Corner>> {
    (1..=axles).map(|axle| vec![(axle, false), (axle, true)]).collect()
}
