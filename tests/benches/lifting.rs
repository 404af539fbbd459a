//! How long an order of lifts takes, beside the search by breadth that the tests
//! hold it against. The search by breadth finds every arrangement of the wheels at
//! once, so each pair plans every arrangement too: the times of a pair are one ratio.
//! A line `ratio` is printed for each pair: both medians of one run and their ratio.

use std::hint::black_box;
use std::time::Instant;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use lugbook::caution::Circumstance;
use lugbook::lifting::{Gear, JackKind, Site, Spare, Task, Vehicle, plan};
use lugbook::vehicle::{Axle, Layout, Place};

#[path = "../all/lifting/breadth.rs"]
mod breadth;

use breadth::{Bare, axle_hoists, corner_hoists};

fn vehicle(duals: &[bool], spare: Spare) -> Vehicle {
    let axle = |(at, dual): (usize, &bool)| Axle { dual: *dual, steer: at == 0, rating: None };
    Vehicle::of(Layout { axles: duals.iter().enumerate().map(axle).collect(), spare: false }, spare)
}

fn jack(jack: JackKind, stands: u8) -> Gear {
    Gear::Jack { jack, rating: None, stands, stand_rating: None }
}

fn task(vehicle: &Vehicle, gear: Gear, moves: &[(&str, &str)]) -> Task {
    let place = |name: &str| vehicle.layout.parse(name).unwrap();
    let moves = moves.iter().map(|(from, to)| (place(from), place(to))).collect();
    Task { vehicle: vehicle.clone(), gear, site: Site::Shop, moves, here: vec![Circumstance::HandTools] }
}

/// Every arrangement the search by breadth reaches, as tasks.
fn arrangements(vehicle: &Vehicle, gear: Gear, bare: &Bare) -> Vec<Task> {
    let places: Vec<Place> = vehicle.layout.positions().map(Place::Wheel).collect();
    let place = |at: usize| places.get(at).copied().unwrap_or(Place::Spare);
    let tasks = bare.lifts(0).into_keys().map(|(hub, _)| {
        let mut moves: Vec<(Place, Place)> = hub
            .iter()
            .enumerate()
            .filter(|(at, wheel)| **wheel != Some(*at))
            .map(|(at, wheel)| (place(wheel.unwrap()), place(at)))
            .collect();
        if let Some(left) = (0..places.len()).find(|wheel| !hub.contains(&Some(*wheel))) {
            moves.push((place(left), Place::Spare));
        }
        Task { vehicle: vehicle.clone(), gear, site: Site::Shop, moves, here: vec![] }
    });
    tasks.collect()
}

/// Both ways over all arrangements, alternating, so that a busy machine slows both.
fn beside(what: &str, vehicle: &Vehicle, gear: Gear, bare: &Bare) {
    let tasks = arrangements(vehicle, gear, bare);
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for _ in 0..7 {
        let began = Instant::now();
        for task in &tasks {
            black_box(plan(black_box(task)).ok());
        }
        ours.push(began.elapsed().as_secs_f64() * 1e3);
        let began = Instant::now();
        black_box(bare.lifts(black_box(0)));
        theirs.push(began.elapsed().as_secs_f64() * 1e3);
    }
    let middle = |times: &mut Vec<f64>| {
        times.sort_by(f64::total_cmp);
        times[times.len() / 2]
    };
    let (ours, theirs) = (middle(&mut ours), middle(&mut theirs));
    let each = ours / tasks.len() as f64;
    println!(
        "ratio  {what}: {} arrangements planned in {ours:.2} ms ({each:.3} ms each), by breadth {theirs:.2} ms, {:.2} x",
        tasks.len(),
        ours / theirs
    );
}

fn ratios(_: &mut Criterion) {
    let car = |spare| vehicle(&[false, false], spare);
    let one = |stands: u8, spare| Bare::of(&[false, false], corner_hoists(2), usize::from(stands.max(1)), spare);
    beside("car, jack and two stands", &car(Spare::None), jack(JackKind::Floor, 2), &one(2, false));
    beside("car, jack and four stands", &car(Spare::None), jack(JackKind::Floor, 4), &one(4, false));
    beside("car, jack alone and spare", &car(Spare::FullSize), jack(JackKind::Floor, 0), &one(0, true));
    let mut middles = car(Spare::None);
    middles.middles = vec![1, 2];
    let axles = Bare::of(&[false, false], axle_hoists(2).into_iter().chain(corner_hoists(2)).collect(), 4, false);
    beside("car, four stands, axles by the middle", &middles, jack(JackKind::Floor, 4), &axles);
    let duals = Bare::of(&[false, true], corner_hoists(2), 2, false);
    beside(
        "duals, bottle jack and two stands",
        &vehicle(&[false, true], Spare::None),
        jack(JackKind::Bottle, 2),
        &duals,
    );
}

fn orders(criterion: &mut Criterion) {
    let forward = [("FL", "RL"), ("FR", "RR"), ("RL", "FR"), ("RR", "FL")];
    let flat = [("FL", "SP"), ("SP", "RL"), ("RL", "FL")];
    let (car, spare) = (vehicle(&[false, false], Spare::None), vehicle(&[false, false], Spare::FullSize));
    let tractor = vehicle(&[false, true, true], Spare::None);
    let duals = [("2LO", "3LO"), ("3LO", "2LO"), ("2RO", "3RO"), ("3RO", "2RO")];
    let cases = [
        ("two-post lift", task(&car, Gear::TwoPost { rating: None }, &forward)),
        ("four-post lift", task(&car, Gear::FourPost { rating: None, bridges: 2, bridge_rating: None }, &forward)),
        ("jack and four stands", task(&car, jack(JackKind::Floor, 4), &forward)),
        ("jack and two stands", task(&car, jack(JackKind::Floor, 2), &forward)),
        ("jack alone and spare", task(&spare, jack(JackKind::Floor, 0), &forward)),
        ("roadside jack, flat", task(&spare, jack(JackKind::Roadside, 0), &flat)),
        ("bottle jack, four stands, duals", task(&tractor, jack(JackKind::Bottle, 4), &duals)),
    ];
    let mut group = criterion.benchmark_group("order of lifts");
    for (name, task) in cases {
        let id = BenchmarkId::from_parameter(name);
        group.bench_function(id, |bench| bench.iter(|| black_box(plan(black_box(&task)).unwrap())));
    }
    group.finish();
}

criterion_group!(benches, ratios, orders);
criterion_main!(benches);
