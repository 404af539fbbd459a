//! How long a plan takes: 4, 6 and 10 positions over 4 visits, with distinct and
//! with equal wear rates.

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use lugbook::measure::{Depth, DepthUnit, Distance, DistanceUnit};
use lugbook::rotation::{Rate, Request, TireFacts, plan};
use lugbook::vehicle::{Axle, Class, Drive, Layout};

#[path = "../all/rotation/highs/cases.rs"]
mod cases;

/// A vehicle with so many wheels: a car, a truck, a tractor.
fn request(wheels: usize, visits: u8, equal: bool, number: u64) -> Request {
    let axle = |dual, steer| Axle { dual, steer, rating: None };
    let (axles, class) = match wheels {
        4 => (vec![axle(false, true), axle(false, false)], Class::Car),
        6 => (vec![axle(false, true), axle(true, false)], Class::Truck),
        _ => (vec![axle(false, true), axle(true, false), axle(true, false)], Class::Truck),
    };
    let layout = Layout { axles, spare: false };
    let mut state = number.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
    let mut draw = |low: f64, high: f64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * ((state >> 40) as f64 / (1u64 << 24) as f64)
    };
    let tires = layout
        .places()
        .map(|place| {
            let mut tire = TireFacts::at(place);
            let depth = (draw(7.0, 13.0) * 10.0).round() / 10.0;
            tire.depths = vec![Depth::new(depth, DepthUnit::Millimetre).unwrap()];
            let rate = if equal { 0.1 } else { (draw(0.03, 0.18) * 1000.0).round() / 1000.0 };
            tire.rate = Some(Rate { mm_per_1000_km: rate, half_width: 0.0 });
            tire.size = Some("295/75R22.5".to_owned());
            tire.overall_diameter_mm = Some(1014.0);
            tire.directional = Some(false);
            tire
        })
        .collect();
    let mut request = Request::new(layout, class, Drive::Rear, tires);
    request.horizon = visits;
    request.interval = Some(Distance::new(10_000.0, DistanceUnit::Kilometre).unwrap());
    request
}

fn plans(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("plan");
    for wheels in [4, 6, 10] {
        for (name, equal, band) in
            [("distinct", false, 0.4), ("distinct, nothing uncertain", false, 0.0), ("equal", true, 0.4)]
        {
            let requests: Vec<Request> = (0..16)
                .map(|number| {
                    let mut request = request(wheels, 4, equal, number);
                    request.uncertainty.depth_mm = band;
                    request
                })
                .collect();
            let mut next = 0;
            group.bench_function(BenchmarkId::new(format!("{wheels} wheels, 4 visits"), name), |bench| {
                bench.iter(|| {
                    next = (next + 1) % requests.len();
                    black_box(plan(black_box(&requests[next])).unwrap())
                });
            });
        }
    }
    group.finish();
}

fn growth(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("growth");
    group.sample_size(10);
    for wheels in [4, 6, 10] {
        for visits in [1, 2, 3, 4, 5, 6] {
            for (name, equal) in [("distinct", false), ("equal", true)] {
                let request = request(wheels, visits, equal, 3);
                group.bench_function(BenchmarkId::new(format!("{wheels} wheels, {name}"), visits), |bench| {
                    bench.iter(|| black_box(plan(black_box(&request)).unwrap()));
                });
            }
        }
    }
    group.finish();
}

/// Times of the planner on the cases that HiGHS solved, for `tests/vectors/beside_highs.py`:
/// one line a case, when the filter is `beside-highs`.
fn beside_highs(_: &mut Criterion) {
    if !std::env::args().any(|word| word == "beside-highs") {
        return;
    }
    for case in cases::cases() {
        let request = cases::request(&case);
        let mut times: Vec<f64> = (0..15)
            .map(|_| {
                let began = std::time::Instant::now();
                black_box(plan(black_box(&request)).unwrap());
                began.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        let answer = plan(&request).unwrap();
        let least = answer.least_spread_mm.unwrap() - case.spread_mm;
        println!(
            "time,{},{},{:.6},{},{:.4},{least:.6}",
            case.layout, case.visits, times[7], answer.proved, answer.gap_mm
        );
    }
}

criterion_group!(benches, plans, growth, beside_highs);
criterion_main!(benches);
