//! The spread term beside HiGHS (`tests/vectors/make_plans.py`), which knows only counts of visits.

use lugbook::measure::{Distance, DistanceUnit};
use lugbook::rotation::{Request, TireFacts, plan};
use lugbook::vehicle::{Axle, Class, Drive, Layout};
use serde::Deserialize;

use super::{mm, rate};

#[derive(Deserialize)]
struct Vectors {
    cases: Vec<Case>,
}

/// One case of the vectors.
#[derive(Deserialize)]
pub(crate) struct Case {
    pub layout: String,
    pub places: Vec<String>,
    pub visits: u8,
    pub interval_km: f64,
    pub depths_mm: Vec<f64>,
    pub rates: Vec<f64>,
    pub spread_mm: f64,
}

pub(crate) fn cases() -> Vec<Case> {
    let vectors: Vectors = serde_json::from_str(include_str!("../../vectors/plans_highs.json")).unwrap();
    vectors.cases
}

pub(crate) fn request(case: &Case) -> Request {
    let axles = case.places.iter().filter_map(|p| p.chars().next()?.to_digit(10)).max().unwrap_or(2);
    let axle = |n: u32| Axle { dual: case.layout != "car" && n > 1, steer: n == 1, rating: None };
    let layout = Layout { axles: (1..=axles).map(axle).collect(), spare: false };
    let mut tires = Vec::new();
    for ((place, depth), wear) in case.places.iter().zip(&case.depths_mm).zip(&case.rates) {
        let mut tire = TireFacts::at(layout.parse(place).unwrap());
        tire.depths = mm(*depth);
        tire.rate = rate(*wear);
        tires.push(tire);
    }
    let mut request = Request::new(layout, Class::Truck, Drive::Rear, tires);
    request.horizon = case.visits;
    request.interval = Some(Distance::new(case.interval_km, DistanceUnit::Kilometre).unwrap());
    request.uncertainty.depth_mm = 0.0;
    request
}

#[test]
fn the_least_spread_is_that_of_highs_or_highs_lies_inside_the_gap() {
    let (mut proved, mut all) = (0, 0);
    let mut widest: f64 = 0.0;
    for case in cases() {
        let answer = plan(&request(&case)).unwrap();
        let least = answer.least_spread_mm.unwrap();
        if answer.proved {
            assert!(
                (least - case.spread_mm).abs() < 1e-6,
                "{} {}: {least} {}",
                case.layout,
                case.visits,
                case.spread_mm
            );
            proved += 1;
        } else {
            let inside = (least - answer.gap_mm - 1e-6..=least + 1e-6).contains(&case.spread_mm);
            assert!(inside, "{} {}: {least} gap {} {}", case.layout, case.visits, answer.gap_mm, case.spread_mm);
            widest = widest.max(answer.gap_mm);
        }
        // What is told of the best plan is what its visits lead to.
        assert!(answer.plans[0].spread_mm.unwrap() >= case.spread_mm - 1e-6);
        all += 1;
    }
    println!("{proved} of {all} proved; widest gap {widest:.4} mm");
    assert!(proved * 2 > all);
}

/// Times of the planner on the same cases, for `tests/vectors/beside_highs.py`.
#[test]
#[ignore = "prints times for a comparison; run by its script in a release build"]
fn times_beside_highs() {
    for case in cases() {
        let request = request(&case);
        let mut times: Vec<f64> = (0..15)
            .map(|_| {
                let began = std::time::Instant::now();
                std::hint::black_box(plan(std::hint::black_box(&request)).unwrap());
                began.elapsed().as_secs_f64()
            })
            .collect();
        times.sort_by(f64::total_cmp);
        let answer = plan(&request).unwrap();
        println!("time,{},{},{:.6},{},{:.4}", case.layout, case.visits, times[7], answer.proved, answer.gap_mm);
    }
}
