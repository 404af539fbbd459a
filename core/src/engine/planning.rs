//! From the book's entries to the planner's question, and the tools at hand.

use crate::calendar::Day;
use crate::entry::{Kind, Shelf, ToolKind};
use crate::fastener::Wrench;
use crate::ident::{TireId, ToolId};
use crate::limits::Region;
use crate::logbook::{Book, Job, Vehicle};
use crate::measure::{Depth, DepthUnit, LoadUnit, PressureUnit, THIRTY_SECOND_MM};
use crate::procedure::Bay;
use crate::rotation::{self, AxleFacts, Limit, Mistake, Request, TireFacts};
use crate::sidewall::{self, Fitment, Marking, TinAge, Use, Word};
use crate::vehicle::Place;
use crate::wear::{self, Visits, lowest_of_each};

/// How many visits are planned ahead once rates and distances are known (a choice of this design).
const HORIZON: u8 = 4;

/// The planner's answer for the job in the bay, and what it rests on.
pub(super) struct Planned {
    /// Plans and refusals.
    pub answer: rotation::Answer,
    /// What the vehicle's readings say of its wear; nothing without one.
    pub wear: Option<wear::Answer>,
}

/// The planner's answer for the job in the bay.
pub(super) fn answer(bay: &Bay<'_>, today: Day) -> Result<Planned, Mistake> {
    let visits = Visits::of(bay.book, bay.vehicle.id);
    let wear = visits.answer(bay.vehicle, |axle| Some(limit(bay.job.rules().region, bay.vehicle, axle)?.depth));
    let mut request = request(bay, today);
    if let Some(wear) = &wear {
        for tire in request.tires.iter_mut().filter(|tire| tire.at != Place::Spare) {
            tire.rate = rate_at(wear, tire.at);
        }
        request.interval = visits.usual();
        let known = request.tires.iter().all(|tire| tire.rate.is_some() || tire.at == Place::Spare || tire.temporary);
        if known && request.interval.is_some() {
            request.horizon = HORIZON;
        }
    }
    Ok(Planned { answer: rotation::plan(&request)?, wear })
}

/// What the readings of the vehicle in the bay say of its wear.
pub(super) fn wear_of(vehicle: &Vehicle, book: &Book) -> Option<wear::Answer> {
    let running = book.in_bay().filter(|job| job.vehicle == vehicle.id);
    let region = running.map_or_else(|| book.limits.rules(), Job::rules).region;
    Visits::of(book, vehicle.id).answer(vehicle, |axle| Some(limit(region, vehicle, axle)?.depth))
}

/// The least depth on an axle where the vehicle is driven; the wear bars' where no minimum is carried.
fn limit(region: Region, vehicle: &Vehicle, axle: u8) -> Option<Limit> {
    let at = usize::from(axle).checked_sub(1)?;
    let steer = vehicle.layout.axles.get(at)?.steer;
    Limit::published(region, vehicle.class, steer).or_else(Limit::wear_bars)
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
                limit: limit(bay.job.rules().region, vehicle, number),
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
        facts.load_source = rotation::LOAD_BY_INDEX;
        facts.load_dual_kg = service.load_kg_dual();
        facts.max_kmh = service.max_kmh().map(f64::from);
    }
    // The load printed in mass is the tire maker's own word.
    let printed = |dual: bool| {
        let mut loads = marking.maximum_loads.iter();
        loads.find(|max| (max.fitment == Some(Fitment::Dual)) == dual).map(|max| max.load.in_unit(LoadUnit::Kilogram))
    };
    if let Some(single) = printed(false) {
        facts.load_kg = Some(single);
        facts.load_dual_kg = printed(true);
        facts.load_source = rotation::LOAD_PRINTED;
    }
}

/// The rate at a place, as far as the readings determine it.
fn rate_at(answer: &wear::Answer, at: Place) -> Option<rotation::Rate> {
    let rate = answer.positions.iter().find(|position| position.at == at)?.rate;
    let half_width = (rate.high - rate.mid).max(rate.mid - rate.low);
    Some(rotation::Rate { mm_per_1000_km: rate.mid, half_width })
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
        ToolKind::DepthGauge { resolution, .. } => Some(resolution),
        _ => None,
    });
    match gauges.last() {
        Some(resolution) => resolution.in_unit(DepthUnit::Millimetre),
        None if depth.unit() == DepthUnit::ThirtySecond => THIRTY_SECOND_MM,
        None => 0.1,
    }
}
