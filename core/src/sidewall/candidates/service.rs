//! Service descriptions in misread text.

use std::collections::HashMap;

use super::template::{Fit, Slot, Work, fits};
use super::{Found, Reading, UNUSUAL, push, starts};
use crate::sidewall::problem::Problems;
use crate::sidewall::scan::Scan;
use crate::sidewall::service::{self, Service};

const SPEED: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWY";
const DUAL: &[Slot] = &[
    Slot::Digit,
    Slot::Digit,
    Slot::MaybeDigit,
    Slot::Mark(b'/'),
    Slot::Digit,
    Slot::Digit,
    Slot::MaybeDigit,
    Slot::One(SPEED),
];
const SINGLE: &[Slot] = &[Slot::Digit, Slot::Digit, Slot::MaybeDigit, Slot::One(SPEED)];

/// The dearest service description that is kept, tenths of a nat.
const DEAREST: u16 = 45;
/// Below this cost nothing is sought inside a reading, tenths of a nat.
const SURE: u16 = 40;
/// How many are kept at each place.
const KEPT: usize = 4;

/// A service description that can stand at a place.
#[derive(Debug, Clone)]
pub(super) struct Tail {
    pub service: Service,
    pub fit: Fit,
    /// What is unusual in it, tenths of a nat.
    pub unusual: u16,
}

/// The service descriptions at each place, found once.
#[derive(Debug)]
pub(super) struct Tails {
    places: HashMap<usize, Vec<Tail>>,
    work: Work,
}

impl Tails {
    pub(super) fn new(work: Work) -> Self {
        Self { places: HashMap::new(), work }
    }

    /// Those that can begin at a place, cheapest first.
    pub(super) fn at(&mut self, bytes: &[u8], at: usize) -> Vec<Tail> {
        let work = &mut self.work;
        self.places.entry(at).or_insert_with(|| find_at(bytes, at, work)).clone()
    }
}

fn find_at(bytes: &[u8], at: usize, work: &mut Work) -> Vec<Tail> {
    let mut tails = Vec::new();
    for form in [SINGLE, DUAL] {
        for fit in fits(bytes, at, form, work).into_iter().take(6) {
            // The letter ends it.
            if fit.cost > DEAREST || bytes.get(fit.at).is_some_and(u8::is_ascii_alphanumeric) {
                continue;
            }
            let Some((mut service, unusual)) = read_service(fit.text()) else { continue };
            let opened = at.checked_sub(1).and_then(|before| bytes.get(before)) == Some(&b'(');
            let closed = bytes.get(fit.at) == Some(&b')');
            service.above = opened && closed && Service::may_be_above(service.speed_symbol);
            tails.push(Tail { service, fit, unusual });
        }
    }
    tails.sort_by_key(|tail| tail.fit.cost.saturating_add(tail.unusual));
    tails.truncate(KEPT);
    tails
}

fn read_service(text: &[u8]) -> Option<(Service, u16)> {
    let mut scan = Scan::new(text);
    let mut problems = Problems::default();
    let service = service::read(&mut scan, true, &mut problems).flatten().filter(|_| scan.done())?;
    let mut extra = if problems.0.is_empty() { 0 } else { UNUSUAL };
    if !(60..=165).contains(&service.load_index) {
        extra = extra.saturating_add(UNUSUAL);
    }
    if service.speed_symbol.is_none_or(|s| s.max_kmh() < 100) {
        extra = extra.saturating_add(UNUSUAL);
    }
    Some((service, extra))
}

/// Finds service descriptions by themselves, as they stand in a line of their own.
pub(super) fn find(bytes: &[u8], found: &mut Vec<Found>, tails: &mut Tails) {
    let mut within = vec![false; bytes.len()];
    for candidate in found.iter().filter(|candidate| candidate.cost < SURE) {
        let places = within.get_mut(candidate.at..candidate.fit.at);
        places.unwrap_or_default().fill(true);
    }
    for start in starts(bytes) {
        let before = start.checked_sub(1).and_then(|at| bytes.get(at));
        if before.is_some_and(|b| b.is_ascii_alphanumeric()) {
            continue;
        }
        if within.get(start) == Some(&true) {
            continue;
        }
        for tail in tails.at(bytes, start).iter().take(3) {
            let cost = tail.fit.cost.saturating_add(tail.unusual);
            push(found, Reading::Service(tail.service), start, &tail.fit, cost);
            if cost < SURE {
                within.get_mut(start..tail.fit.at).unwrap_or_default().fill(true);
            }
        }
    }
}
