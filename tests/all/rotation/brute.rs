//! The planner beside a brute force that shares no code with it: own types, own
//! reading of the rules, every permutation at every visit, in whole micrometres.
//!
//! `ROTATION_VEHICLES=10000` runs the long form (in a release build).

use std::collections::HashMap;

use lugbook::calendar::Age;
use lugbook::measure::{Depth, DepthUnit, Distance, DistanceUnit, Load, LoadUnit};
use lugbook::rotation::{AxleFacts, Limit, Pattern, Rate, Request, TireFacts, Uncertainty, plan};
use lugbook::source::{Grade, Source};
use lugbook::vehicle::{Axle, Class, Drive, Layout, Place, Position, Row, Side};

/// Splitmix64: the same vehicles on every machine.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % sides
    }

    fn one_in(&mut self, n: u64) -> bool {
        self.roll(n) == 0
    }
}

/// A seat of the car: axle from 1, left, kind of row (0 single, 1 outer, 2 inner); axle 0 is the carrier.
#[derive(Clone, Copy, PartialEq, Debug)]
struct Seat {
    axle: u8,
    left: bool,
    row: u8,
}

#[derive(Clone, Debug)]
struct Wheel {
    size: u8,
    arrow: bool,
    left_made: Option<bool>,
    asymmetric: bool,
    studs: bool,
    temporary: bool,
    retread: bool,
    regrooved: bool,
    old: bool,
    slow: bool,
    passenger: bool,
    carries: i64,
    offset: i64,
    clears: u8,
    bad_seat: bool,
    depth: i64,
}

#[derive(Clone, Debug)]
struct Vehicle {
    kind: Class,
    drive: Drive,
    seats: Vec<Seat>,
    wheels: Vec<Wheel>,
    /// Wear at each seat per visit, micrometres; empty when nothing is known.
    wear: Vec<i64>,
    steer_limit: Option<(i64, bool)>,
    axle_need: Option<i64>,
    brakes: Vec<u8>,
    visits: usize,
    remount: bool,
    price: i64,
    replaced: bool,
    band: i64,
    given: Option<&'static str>,
}

const BARS: i64 = 1587; // 2/32 in is 1,587.5 micrometres; depths here are whole hundreds of them.

fn seats(dice: &mut Dice) -> (Vec<Seat>, Class, Drive) {
    let pair = |axle: u8| [Seat { axle, left: true, row: 0 }, Seat { axle, left: false, row: 0 }];
    let quad = |axle: u8| [(true, 1), (true, 2), (false, 2), (false, 1)].map(|(left, row)| Seat { axle, left, row });
    let spare = Seat { axle: 0, left: false, row: 0 };
    let drive = [Drive::Front, Drive::Rear, Drive::All, Drive::PartTime][dice.roll(4) as usize];
    match dice.roll(8) {
        0..=2 => ([pair(1), pair(2)].concat(), Class::Car, drive),
        3 | 4 => ([pair(1).to_vec(), pair(2).to_vec(), vec![spare]].concat(), Class::LightTruck, drive),
        5 => {
            let kind = if dice.one_in(2) { Class::Truck } else { Class::Bus };
            ([pair(1).to_vec(), quad(2).to_vec()].concat(), kind, Drive::Rear)
        }
        6 => ([pair(1), pair(2), pair(3)].concat(), Class::Trailer, Drive::None),
        _ => (pair(1).to_vec(), Class::LightTrailer, Drive::None),
    }
}

fn vehicle(dice: &mut Dice) -> Vehicle {
    let (seats, kind, drive) = seats(dice);
    let n = seats.len();
    let staggered = dice.one_in(6);
    let arrows = dice.one_in(5);
    let studs = dice.one_in(8);
    let deep = 3000 + dice.roll(50) as i64 * 100;
    let equal_wear = dice.one_in(4);
    let common = 100 * (1 + dice.roll(20)) as i64;
    let mut wheels: Vec<Wheel> = seats
        .iter()
        .map(|seat| Wheel {
            size: if dice.one_in(25) {
                9
            } else if staggered && seat.axle >= 2 {
                2
            } else {
                1
            },
            arrow: arrows,
            left_made: None,
            asymmetric: dice.one_in(12),
            studs,
            temporary: false,
            retread: dice.one_in(8),
            regrooved: dice.one_in(12),
            old: dice.one_in(15),
            slow: dice.one_in(15),
            passenger: dice.one_in(3),
            carries: if dice.one_in(12) { 500 } else { 800 },
            offset: if dice.one_in(20) { 30 } else { 45 },
            clears: if dice.one_in(15) { 1 } else { 2 },
            bad_seat: dice.one_in(40),
            depth: deep + dice.roll(40) as i64 * 100,
        })
        .collect();
    if let Some((at, _)) = seats.iter().enumerate().find(|(_, seat)| seat.axle == 0) {
        wheels[at].temporary = dice.one_in(3);
        wheels[at].studs &= !wheels[at].temporary;
        wheels[at].retread &= !wheels[at].temporary;
        wheels[at].regrooved &= !wheels[at].temporary;
        if arrows && dice.one_in(2) {
            wheels[at].left_made = Some(dice.one_in(2));
        }
    }
    // Some tires are near their end.
    for wheel in &mut wheels {
        if dice.one_in(8) {
            wheel.depth = 1500 + dice.roll(20) as i64 * 100;
        }
    }
    let wear = seats
        .iter()
        .map(|seat| match seat.axle {
            0 => 0,
            _ if equal_wear => common,
            _ => 100 * (1 + dice.roll(20)) as i64,
        })
        .collect();
    let four = n == 4 || (n == 5 && seats[4].axle == 0);
    Vehicle {
        kind,
        drive,
        wear: if dice.one_in(6) { Vec::new() } else { wear },
        steer_limit: dice.one_in(2).then(|| (3175, dice.one_in(2))),
        axle_need: dice.one_in(2).then(|| 2 * (400 + 100 * dice.roll(4) as i64)),
        brakes: (0..4).map(|_| 1 + dice.roll(2) as u8).collect(),
        visits: 1 + dice.roll(match n {
            6 => 2,
            5 => 3,
            _ => 4,
        }) as usize,
        remount: dice.one_in(3),
        price: 100 * dice.roll(8) as i64,
        replaced: dice.one_in(4),
        band: [0, 0, 400, 1000][dice.roll(4) as usize],
        given: if four && dice.one_in(4) {
            Some(["x", "forward-cross", "rearward-cross", "front-to-rear", "side-to-side"][dice.roll(5) as usize])
        } else {
            None
        },
        seats,
        wheels,
    }
}

/// A named pattern by a drawing of the car, written out by hand.
fn drawn(vehicle: &Vehicle, name: &str) -> Option<Vec<usize>> {
    let n = vehicle.seats.len();
    let four = n == 4 && vehicle.seats[3].row == 0 && vehicle.seats[3].axle == 2;
    let five = n == 5;
    let table: &[(&str, [usize; 4])] = &[
        ("rearward-cross", [3, 2, 0, 1]),
        ("forward-cross", [2, 3, 1, 0]),
        ("x", [3, 2, 1, 0]),
        ("front-to-rear", [2, 3, 0, 1]),
        ("side-to-side", [1, 0, 3, 2]),
    ];
    let fives: &[(&str, [usize; 5])] = &[
        ("rearward-cross-five", [4, 2, 0, 1, 3]),
        ("forward-cross-five", [2, 4, 1, 0, 3]),
        ("x-five", [4, 2, 1, 0, 3]),
        ("front-to-rear-five", [2, 4, 0, 1, 3]),
    ];
    if four || five {
        if let Some((_, to)) = table.iter().find(|(n, _)| *n == name) {
            return Some(to.iter().copied().chain(five.then_some(4)).collect());
        }
        return fives.iter().find(|(n, _)| *n == name && five).map(|(_, to)| to.to_vec());
    }
    match (n, name) {
        (2, "side-to-side") => Some(vec![1, 0]),
        (6, "side-to-side") if vehicle.seats[3].row == 0 => Some(vec![1, 0, 3, 2, 5, 4]),
        (6, "side-to-side") => Some(vec![1, 0, 5, 4, 3, 2]),
        _ => None,
    }
}

const NAMES: [&str; 9] = [
    "rearward-cross",
    "forward-cross",
    "x",
    "front-to-rear",
    "side-to-side",
    "rearward-cross-five",
    "forward-cross-five",
    "x-five",
    "front-to-rear-five",
];

/// What the rules say about one wheel on one seat: refused, remounted, advice.
fn judge(v: &Vehicle, wheel: usize, seat: usize) -> (bool, bool, i64) {
    let (w, to, from) = (&v.wheels[wheel], v.seats[seat], v.seats[wheel]);
    let moves = wheel != seat;
    let on_hub = to.axle > 0;
    let (mut refused, mut remounted, mut advice) = (false, false, 0);
    if moves {
        refused |= w.size != v.wheels[seat].size;
        refused |= w.temporary || v.wheels[seat].temporary;
    }
    if moves && on_hub {
        refused |= w.offset != v.wheels[seat].offset;
        refused |= w.clears < v.brakes[to.axle as usize];
        if w.arrow {
            let side = w.left_made.or(if from.axle > 0 { Some(from.left) } else { None });
            match side {
                None => refused = true,
                Some(left) if left != to.left => {
                    if v.remount && !w.asymmetric {
                        remounted = true;
                    } else {
                        refused = true;
                    }
                }
                Some(_) => {}
            }
        }
    }
    if on_hub {
        refused |= w.bad_seat;
        if w.studs && from.axle > 0 && from.left != to.left {
            advice += 1;
        }
        if w.old {
            advice += 1;
        }
        if w.slow {
            advice += 1;
        }
        if let Some(need) = v.axle_need {
            let share = if to.row == 0 { need / 2 } else { need / 4 };
            if w.carries < share {
                refused = true;
            } else if w.passenger
                && matches!(v.kind, Class::LightTruck | Class::LightTrailer)
                && w.carries * 10 < share * 11
            {
                advice += 1;
            }
        }
        let steers = to.axle == 1 && matches!(v.kind, Class::Truck | Class::Bus);
        if steers {
            if v.kind == Class::Bus && (w.retread || w.regrooved) {
                refused = true;
            } else if let Some((limit, strict)) = v.steer_limit.filter(|(limit, _)| w.depth < *limit) {
                assert!(limit > 0);
                if strict {
                    refused = true;
                } else {
                    advice += 1;
                }
            } else if w.regrooved && w.carries >= 2232 {
                advice += 1;
            }
        }
    }
    (refused, remounted, advice)
}

fn dual_trouble(v: &Vehicle, to: &[usize]) -> bool {
    let who = |seat: usize| to.iter().position(|s| *s == seat).unwrap();
    for (outer, seat) in v.seats.iter().enumerate().filter(|(_, seat)| seat.row == 1) {
        let inner = v.seats.iter().position(|s| s.axle == seat.axle && s.left == seat.left && s.row == 2).unwrap();
        let (a, b) = (who(outer), who(inner));
        if a == outer && b == inner {
            continue;
        }
        // All sizes of these trucks are 1,014 mm across: 39.9 in: up to 3/8 in apart.
        if 2 * (v.wheels[a].depth - v.wheels[b].depth).abs() > 9_525 {
            return true;
        }
    }
    false
}

struct Brute<'a> {
    v: &'a Vehicle,
    groups: Vec<Vec<usize>>,
    stays_ok: Vec<bool>,
    memo: HashMap<(usize, Vec<i64>), i64>,
}

fn permutations(n: usize, may: &dyn Fn(usize, usize) -> bool) -> Vec<Vec<usize>> {
    fn go(n: usize, may: &dyn Fn(usize, usize) -> bool, now: &mut Vec<usize>, all: &mut Vec<Vec<usize>>) {
        if now.len() == n {
            all.push(now.clone());
            return;
        }
        for seat in 0..n {
            if !now.contains(&seat) && may(now.len(), seat) {
                now.push(seat);
                go(n, may, now, all);
                now.pop();
            }
        }
    }
    let mut all = Vec::new();
    go(n, may, &mut Vec::new(), &mut all);
    all
}

impl Brute<'_> {
    fn spread(&self, depth: &[i64]) -> i64 {
        self.groups
            .iter()
            .map(|group| {
                let of: Vec<i64> = group.iter().map(|i| depth[*i]).collect();
                of.iter().max().unwrap() - of.iter().min().unwrap()
            })
            .sum()
    }

    /// The least spread after so many more visits, each any of `all`.
    fn best(&mut self, depth: Vec<i64>, left: usize, all: &[Vec<usize>]) -> i64 {
        if left == 0 {
            return self.spread(&depth);
        }
        if let Some(known) = self.memo.get(&(left, depth.clone())) {
            return *known;
        }
        let mut least = i64::MAX;
        for to in all {
            let next: Vec<i64> = depth.iter().zip(to).map(|(d, seat)| d - self.v.wear[*seat]).collect();
            least = least.min(self.best(next, left - 1, all));
        }
        self.memo.insert((left, depth), least);
        least
    }

    /// Who may go where at later visits, after some were turned round on their rims.
    fn later(&self, turned: &[(usize, bool)]) -> Vec<Vec<usize>> {
        let v = self.v;
        permutations(v.seats.len(), &|wheel, seat| {
            let (refused, remounted, _) = judge(v, wheel, seat);
            match turned.iter().find(|(w, _)| *w == wheel) {
                None if wheel == seat => self.stays_ok[wheel],
                None => !refused && !remounted,
                Some((_, left)) => {
                    (wheel == seat || !refused) && (v.seats[seat].axle == 0 || v.seats[seat].left == *left)
                }
            }
        })
    }
}

/// The moves the brute force would choose; `None` when nothing may or should move.
fn chosen(v: &Vehicle) -> Option<Vec<usize>> {
    let n = v.seats.len();
    let may = |wheel: usize, seat: usize| wheel == seat || !judge(v, wheel, seat).0;
    // Sets of wheels that may change places with one another.
    let mut group: Vec<usize> = (0..n).collect();
    for _ in 0..n {
        for wheel in 0..n {
            for seat in 0..n {
                if may(wheel, seat) {
                    let low = group[wheel].min(group[seat]);
                    group[wheel] = low;
                    group[seat] = low;
                }
            }
        }
    }
    let groups = (0..n).map(|g| (0..n).filter(|i| group[*i] == g).collect()).filter(|g: &Vec<usize>| !g.is_empty());
    let mut brute = Brute { v, groups: groups.collect(), stays_ok: vec![true; n], memo: HashMap::new() };
    // A wheel that must not be where it is does not come back there, unless there is no other way to seat all.
    let wrong: Vec<bool> = (0..n).map(|i| judge(v, i, i).0).collect();
    brute.stays_ok = wrong.iter().map(|w| !w).collect();
    if brute.later(&[]).is_empty() {
        brute.stays_ok = vec![true; n];
    }
    let known = !v.wear.is_empty();
    let limit = |seat: usize| match v.steer_limit {
        Some((limit, _)) if v.seats[seat].axle == 1 => limit,
        _ => BARS + 1,
    };
    let rear_counts = v.replaced && v.seats.iter().filter(|s| s.axle > 0).count() == 4 && v.seats[2].axle == 2;
    let key = |to: &[usize]| {
        let (mut bad, mut rear, mut advice) = (0, 0, 0);
        for (wheel, seat) in to.iter().enumerate() {
            let (refused, _, warns) = judge(v, wheel, *seat);
            let wear = if known { v.wear[*seat] } else { 0 };
            let low =
                v.seats[*seat].axle > 0 && !v.wheels[wheel].temporary && v.wheels[wheel].depth - wear < limit(*seat);
            bad += i64::from(low || (refused && wheel == *seat));
            if rear_counts && v.seats[*seat].axle == 2 {
                // Temporary spares have no depth worth comparing.
                rear -= if v.wheels[wheel].temporary { 0 } else { v.wheels[wheel].depth };
            }
            advice += warns;
        }
        (bad, rear, advice)
    };
    let identity: Vec<usize> = (0..n).collect();
    let all: Vec<Vec<usize>> =
        permutations(n, &may).into_iter().filter(|to| *to != identity && !dual_trouble(v, to)).collect();
    let best_key = all.iter().map(|to| key(to)).min()?;
    let moved = |to: &[usize]| to.iter().enumerate().filter(|(w, s)| w != *s).count();
    let mut top: Vec<(Vec<usize>, i64)> = Vec::new();
    let plain = if known { brute.later(&[]) } else { Vec::new() };
    // The manual's moves stand above advice: they are weighed with the best in any case.
    let manuals = v.given.and_then(|name| drawn(v, name)).filter(|to| all.contains(to));
    let manuals = manuals.filter(|to| (key(to).0, key(to).1) == (best_key.0, best_key.1));
    for to in all.iter().filter(|to| key(to) == best_key || manuals.as_ref() == Some(to)) {
        let turned: Vec<(usize, bool)> = to
            .iter()
            .enumerate()
            .filter(|(wheel, seat)| judge(v, *wheel, **seat).1)
            .map(|(wheel, seat)| (wheel, v.seats[*seat].left))
            .collect();
        let value = if known {
            let depth: Vec<i64> = to
                .iter()
                .zip(&v.wheels)
                .map(|(seat, w)| (if w.temporary { 0 } else { w.depth }) - v.wear[*seat])
                .collect();
            if turned.is_empty() {
                brute.best(depth, v.visits - 1, &plain)
            } else {
                let later = brute.later(&turned);
                brute.memo.clear();
                let value = brute.best(depth, v.visits - 1, &later);
                brute.memo.clear();
                value
            }
        } else {
            0
        };
        top.push((to.clone(), value.saturating_add(v.price * turned.len() as i64)));
    }
    let least = top.iter().filter(|(to, _)| key(to) == best_key).map(|(_, value)| *value).min()?;
    let within: Vec<&Vec<usize>> =
        top.iter().filter(|(_, value)| !known || *value <= least.saturating_add(v.band)).map(|(to, _)| to).collect();
    let on_axles = || v.wheels.iter().zip(&v.seats).filter(|(w, seat)| seat.axle > 0 && !w.temporary).map(|(w, _)| w);
    let sizes = on_axles().any(|a| on_axles().any(|b| a.size != b.size));
    let usual = if sizes {
        "side-to-side"
    } else if on_axles().any(|w| w.arrow || w.studs) {
        "front-to-rear"
    } else {
        match v.drive {
            Drive::Front => "forward-cross",
            Drive::None => "front-to-rear",
            _ => "rearward-cross",
        }
    };
    if let Some(to) = manuals.filter(|to| within.contains(&to)) {
        return Some(to);
    }
    let within: Vec<&Vec<usize>> = within.into_iter().filter(|to| key(to) == best_key).collect();
    let wanted = [format!("{usual}-five"), usual.to_owned()];
    for name in wanted {
        if let Some(to) = drawn(v, &name).filter(|to| within.contains(&to)) {
            return Some(to);
        }
    }
    if known {
        return within.into_iter().min_by_key(|to| (moved(to), (*to).clone())).cloned();
    }
    if let Some(to) = NAMES.iter().filter_map(|name| drawn(v, name)).find(|to| within.contains(&to)) {
        return Some(to);
    }
    within.into_iter().min_by_key(|to| (moved(to), (*to).clone())).filter(|_| best_key < key(&identity)).cloned()
}

fn place(seat: Seat) -> Place {
    if seat.axle == 0 {
        return Place::Spare;
    }
    let side = if seat.left { Side::Left } else { Side::Right };
    let row = [Row::Single, Row::Outer, Row::Inner][seat.row as usize];
    Place::Wheel(Position { axle: seat.axle, side, row })
}

/// The same vehicle, as the planner is asked about it.
fn request(v: &Vehicle) -> Request {
    let axles = v.seats.iter().map(|s| s.axle).max().unwrap();
    let rating = v.axle_need.map(|kg| Load::new(kg as f64, LoadUnit::Kilogram).unwrap());
    let layout = Layout {
        axles: (1..=axles)
            .map(|axle| Axle {
                dual: v.seats.iter().any(|s| s.axle == axle && s.row > 0),
                steer: axle == 1 && v.drive != Drive::None,
                rating,
            })
            .collect(),
        spare: v.seats.iter().any(|s| s.axle == 0),
    };
    let tires = v
        .wheels
        .iter()
        .enumerate()
        .map(|(i, w)| {
            let mut tire = TireFacts::at(place(v.seats[i]));
            tire.size = Some(format!("size {}", w.size));
            tire.overall_diameter_mm = Some(1014.0);
            tire.load_kg = Some(w.carries as f64);
            tire.passenger = Some(w.passenger);
            tire.max_kmh = Some(if w.slow { 160.0 } else { 210.0 });
            tire.directional = Some(w.arrow);
            tire.made_for = w.left_made.map(|left| if left { Side::Left } else { Side::Right });
            tire.asymmetric = Some(w.asymmetric);
            tire.studded = w.studs;
            tire.temporary = w.temporary;
            tire.retread = w.retread;
            tire.regrooved = w.regrooved;
            tire.age = Some(Age { years: if w.old { 11 } else { 3 }, months: 0 });
            tire.depths = vec![Depth::new(w.depth as f64 / 1000.0, DepthUnit::Millimetre).unwrap()];
            tire.rate = v
                .wear
                .get(i)
                .filter(|_| tire.at != Place::Spare)
                .map(|wear| Rate { mm_per_1000_km: *wear as f64 / 10_000.0, half_width: 0.0 });
            tire.wheel.offset_mm = Some(w.offset as f64);
            tire.wheel.brake_class = Some(w.clears);
            tire.wheel.seat_fits = Some(!w.bad_seat);
            tire
        })
        .collect();
    let mut request = Request::new(layout, v.kind, v.drive, tires);
    request.horizon = v.visits as u8;
    request.interval = Some(Distance::new(10_000.0, DistanceUnit::Kilometre).unwrap());
    request.makers_pattern = v.given.map(|name| name.parse::<Pattern>().unwrap());
    request.remount_allowed = v.remount;
    request.remount_price_mm = v.price as f64 / 1000.0;
    request.after_part_replacement = v.replaced;
    request.needed_speed_kmh = Some(200.0);
    request.uncertainty = Uncertainty { depth_mm: v.band as f64 / 1000.0 };
    for axle in 1..=axles {
        let limit = v.steer_limit.filter(|_| axle == 1).map(|(_, strict)| Limit {
            depth: Depth::new(4.0, DepthUnit::ThirtySecond).unwrap(),
            source: Source::read(if strict { Grade::Rule } else { Grade::Secondary }, "test"),
        });
        let facts = AxleFacts { brake_class: Some(v.brakes[axle as usize]), limit, ..AxleFacts::default() };
        request.axles.insert(axle, facts);
    }
    request
}

#[test]
fn the_planner_chooses_what_a_brute_force_chooses() {
    let vehicles: u64 = std::env::var("ROTATION_VEHICLES").ok().and_then(|n| n.parse().ok()).unwrap_or(150);
    let (mut moving, mut unknown, mut proved) = (0, 0, 0);
    for number in 0..vehicles {
        let mut dice = Dice(number.wrapping_mul(0x1234_5678_9abc_def1));
        let v = vehicle(&mut dice);
        let expected = chosen(&v);
        let request = request(&v);
        let answer = plan(&request).unwrap();
        let best = answer.plans.first().filter(|plan| plan.pattern != Pattern::LeaveAsIs);
        let moves: Option<Vec<(Place, Place)>> = expected.map(|to| {
            to.iter()
                .enumerate()
                .filter(|(wheel, seat)| wheel != *seat)
                .map(|(wheel, seat)| (place(v.seats[wheel]), place(v.seats[*seat])))
                .collect()
        });
        assert_eq!(
            best.map(|plan| plan.moves.clone()),
            moves,
            "vehicle {number}: {v:?} {:?}",
            answer
                .refused
                .iter()
                .map(|r| (r.pattern, r.because.iter().map(|b| &b.reason).collect::<Vec<_>>()))
                .collect::<Vec<_>>()
        );
        moving += usize::from(best.is_some());
        unknown += usize::from(v.wear.is_empty());
        proved += usize::from(answer.proved);
    }
    println!("{vehicles} vehicles: {moving} with a plan, {unknown} without wear rates, {proved} proved");
    assert_eq!(proved as u64, vehicles);
    assert!(moving > 0 && unknown > 0);
}
