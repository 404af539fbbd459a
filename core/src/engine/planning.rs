//! From the book's entries to the planner's question, and the tools at hand.

use crate::calendar::Day;
use crate::entry::{Kind, Shelf, ToolKind};
use crate::fastener::Wrench;
use crate::ident::{TireId, ToolId};
use crate::logbook::{Book, Job};
use crate::measure::{Depth, DepthUnit, PressureUnit, THIRTY_SECOND_MM};
use crate::procedure::Bay;
use crate::rotation::{self, AxleFacts, Limit, Mistake, Request, TireFacts};
use crate::sidewall::{self, Marking, TinAge, Use, Word};
use crate::vehicle::Place;

/// The planner's answer for the job in the bay.
pub(super) fn answer(bay: &Bay<'_>, today: Day) -> Result<rotation::Answer, Mistake> {
    rotation::plan(&request(bay, today))
}

fn request(bay: &Bay<'_>, today: Day) -> Request {
    let vehicle = bay.vehicle;
    let tires = bay.job.planned().into_iter().map(|(at, tire)| tire_facts(bay, at, tire, today)).collect();
    let mut request = Request::new(vehicle.layout.clone(), vehicle.class, bay.drive(), tires);
    request.makers_pattern = match bay.book.on_shelf(&vehicle.model, Kind::Pattern).map(|spec| &spec.shelf) {
        Some(Shelf::Pattern { pattern }) => pattern.parse().ok(),
        _ => None,
    };
    let placard = match bay.book.on_shelf(&vehicle.model, Kind::Placard).map(|spec| &spec.shelf) {
        Some(Shelf::Placard { placard }) => Some(placard),
        _ => None,
    };
    for number in vehicle.layout.positions().map(|position| position.axle) {
        let printed = placard
            .and_then(|placard| placard.axles.get(usize::from(number).saturating_sub(1)))
            .and_then(Option::as_ref);
        request.axles.insert(
            number,
            AxleFacts {
                limit: Limit::wear_bars(),
                placard_kpa: printed.map(|tire| tire.cold.in_unit(PressureUnit::Kilopascal)),
                ..AxleFacts::default()
            },
        );
    }
    request
}

fn tire_facts(bay: &Bay<'_>, at: Place, tire: TireId, today: Day) -> TireFacts {
    let mut facts = TireFacts::at(at);
    let Some(history) = bay.book.tires.get(&tire) else { return facts };
    if let Some((grooves, _)) = bay.job.tread(tire) {
        facts.depths = lowest_of_each(grooves);
    }
    let looks = history.looks;
    facts.studded = looks.studded;
    facts.temporary = looks.temporary;
    facts.retread = looks.retread;
    facts.regrooved = looks.regrooved;
    let Some(text) = &history.outer else { return facts };
    let marking = sidewall::parse(text);
    facts.directional = Some(looks.directional);
    facts.asymmetric = Some(looks.asymmetric);
    facts.winter = marking.words.contains(&Word::Alpine) || looks.studded;
    take_size(&mut facts, &marking);
    if let Some(TinAge::Known { age }) = marking.tin.as_ref().map(|tin| tin.age_on(today)) {
        facts.age = Some(age);
    }
    facts
}

fn take_size(facts: &mut TireFacts, marking: &Marking) {
    if let Some(size) = &marking.size {
        facts.size = Some(size.to_string());
        facts.overall_diameter_mm = size.overall_diameter_mm();
        facts.passenger = Some(matches!(size.made_for(), None | Some(Use::Passenger)));
        facts.temporary |= size.made_for() == Some(Use::Temporary);
    }
    if let Some(service) = &marking.service {
        facts.load_kg = service.load_kg();
        facts.load_dual_kg = service.load_kg_dual();
        facts.max_kmh = service.max_kmh().map(f64::from);
    }
}

/// Each groove's lowest reading over the places around the tire.
fn lowest_of_each(places: &[Vec<Depth>]) -> Vec<Depth> {
    let count = places.iter().map(Vec::len).max().unwrap_or_default();
    (0..count)
        .filter_map(|groove| {
            places
                .iter()
                .filter_map(|place| place.get(groove).copied())
                .reduce(|low, next| if next < low { next } else { low })
        })
        .collect()
}

/// The torque wrench used in a job, the last one named.
pub(super) fn wrench(book: &Book, job: &Job) -> Option<(ToolId, Wrench)> {
    let mut wrenches = job.tools().filter_map(|id| match book.tool(id).map(|tool| &tool.what) {
        Some(ToolKind::Wrench { papers }) => Some((id, papers.clone())),
        _ => None,
    });
    wrenches.by_ref().last()
}

/// The smallest step of the gauge that gave a reading, in mm: the job's gauge,
/// else what the reading itself shows: 1/32 in, or 0.1 mm.
pub(super) fn gauge_resolution_mm(book: &Book, job: &Job, depth: Depth) -> f64 {
    let gauges = job.tools().filter_map(|id| match book.tool(id)?.what {
        ToolKind::DepthGauge { resolution } => Some(resolution),
        _ => None,
    });
    match gauges.last() {
        Some(resolution) => resolution.in_unit(DepthUnit::Millimetre),
        None if depth.unit() == DepthUnit::ThirtySecond => THIRTY_SECOND_MM,
        None => 0.1,
    }
}
