//! The cases that HiGHS solved, as requests: for the test and for the bench beside it.

use lugbook::measure::{Depth, DepthUnit, Distance, DistanceUnit};
use lugbook::rotation::{Rate, Request, TireFacts};
use lugbook::vehicle::{Axle, Class, Drive, Layout};
use serde::Deserialize;

#[derive(Deserialize)]
struct Vectors {
    cases: Vec<Case>,
}

/// One case of the vectors.
#[derive(Deserialize)]
pub struct Case {
    /// What vehicle.
    pub layout: String,
    /// Its positions.
    pub places: Vec<String>,
    /// How many visits.
    pub visits: u8,
    /// Between visits.
    pub interval_km: f64,
    /// By position.
    pub depths_mm: Vec<f64>,
    /// By position, in mm per 1,000 km.
    pub rates: Vec<f64>,
    /// The least spread.
    pub spread_mm: f64,
}

/// The cases that HiGHS solved.
pub fn cases() -> Vec<Case> {
    let vectors: Vectors = serde_json::from_str(include_str!("../../../vectors/plans_highs.json")).unwrap();
    vectors.cases
}

/// A case as a request, nothing uncertain.
pub fn request(case: &Case) -> Request {
    let axles = case.places.iter().filter_map(|p| p.chars().next()?.to_digit(10)).max().unwrap_or(2);
    let axle = |n: u32| Axle { dual: case.layout != "car" && n > 1, steer: n == 1, rating: None };
    let layout = Layout { axles: (1..=axles).map(axle).collect(), spare: false };
    let mut tires = Vec::new();
    for ((place, depth), wear) in case.places.iter().zip(&case.depths_mm).zip(&case.rates) {
        let mut tire = TireFacts::at(layout.parse(place).unwrap());
        tire.depths = vec![Depth::new(*depth, DepthUnit::Millimetre).unwrap()];
        tire.rate = Some(Rate { mm_per_1000_km: *wear, half_width: 0.0 });
        tires.push(tire);
    }
    let mut request = Request::new(layout, Class::Truck, Drive::Rear, tires);
    request.horizon = case.visits;
    request.interval = Some(Distance::new(case.interval_km, DistanceUnit::Kilometre).unwrap());
    request.uncertainty.depth_mm = 0.0;
    request
}
