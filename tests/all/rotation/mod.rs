//! Who may go where: pattern names, constraints, choice, hostile requests.

mod brute;
mod choice;
mod highs;
mod hostile;
mod manuals;
mod words;

use lugbook::measure::{Depth, DepthUnit};
use lugbook::rotation::{Rate, Request, TireFacts};
use lugbook::vehicle::{Class, Drive, Layout, Place};

/// A car's tires with depths and rates by place.
pub(crate) fn car(drive: Drive, spare: bool) -> Request {
    let layout = Layout::two_axles(spare);
    let tires = layout.places().map(TireFacts::at).collect();
    Request::new(layout, Class::Car, drive, tires)
}

/// The tire at a place.
pub(crate) fn tire<'a>(request: &'a mut Request, at: &str) -> &'a mut TireFacts {
    let place = Place::parse(at).unwrap();
    request.tires.iter_mut().find(|tire| tire.at == place).unwrap()
}

/// One depth in mm.
pub(crate) fn mm(value: f64) -> Vec<Depth> {
    vec![Depth::new(value, DepthUnit::Millimetre).unwrap()]
}

/// A rate without an interval of its own.
pub(crate) fn rate(mm_per_1000_km: f64) -> Option<Rate> {
    Some(Rate { mm_per_1000_km, half_width: 0.0 })
}

/// Moves as text: `FL-RL FR-RR`.
pub(crate) fn told(request: &Request, moves: &[(Place, Place)]) -> String {
    let name = |place: Place| request.layout.name(place, lugbook::vehicle::Letters::FrontFirst);
    moves.iter().map(|(from, to)| format!("{}-{}", name(*from), name(*to))).collect::<Vec<_>>().join(" ")
}
