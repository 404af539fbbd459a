//! Wear: the fit against a statistics library, worked examples, what is told and what is not.

mod examples;
mod library;
mod rows;
mod words;

use lugbook::measure::Distance;
use lugbook::measure::DistanceUnit;
use lugbook::vehicle::Place;
use lugbook::wear::Reading;

/// A reading of one groove.
pub(crate) fn read(tire: &str, km: f64, at: &str, depth: &str) -> Reading {
    Reading {
        tire: tire.to_owned(),
        odometer: Distance::new(km, DistanceUnit::Kilometre).unwrap(),
        at: Place::parse(at).unwrap(),
        grooves: vec![depth.parse().unwrap()],
        lowest: None,
        practice: false,
    }
}
