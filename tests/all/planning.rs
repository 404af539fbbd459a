//! What the vehicle's own history does to the plan of a job.

use lugbook::engine::{Command, Engine, PlansView};
use lugbook::entry::{Arm, Kind, Pass, Role, SidewallSide, TireLooks};
use lugbook::finding::State;
use lugbook::vehicle::{Class, Drive};
use lugbook::words::{Speech, Units};

use super::engine::{act, open, text};

const WALK: [&str; 4] = ["FL", "RL", "RR", "FR"];
/// Where the wheels of a forward cross come from: hub and wheel.
const FORWARD_CROSS: [(&str, &str); 4] = [("FL", "RR"), ("FR", "RL"), ("RL", "FL"), ("RR", "FR")];

/// A front-driven car in the book.
fn book(engine: &mut Engine) {
    act(engine, Command::AddPerson { name: text("Wren Castellan"), role: Role::Mechanic, phone: None });
    act(
        engine,
        Command::AddVehicle {
            name: text("green hatchback"),
            model: text("Lerche 12 2018"),
            class: Class::Car,
            axles: vec![],
            has: Some(vec![]),
            spare: false,
            own: true,
            plate: None,
        },
    );
    act(
        engine,
        Command::RecordDrive { vehicle: Some(text("green hatchback")), drive: Drive::Front, source: text("manual") },
    );
}

/// A visit up to the plan: odometer and one depth in mm a tire, in the order of [`WALK`].
fn visit(engine: &mut Engine, odometer: &str, depths: [f64; 4], practice: bool) {
    act(
        engine,
        Command::OpenJob {
            vehicle: text("green hatchback"),
            procedure: text("rotation-on-a-lift"),
            circumstances: vec![text("hand-tools")],
            practice,
        },
    );
    act(engine, Command::Answer { step: Some(text("lock-key")), at: None, answer: text("none-fitted") });
    if !odometer.is_empty() {
        act(engine, Command::Odometer { reading: text(odometer), estimated: false, replaced: false });
    }
    act(engine, Command::NotKnown { what: Kind::Placard });
    act(engine, Command::NotKnown { what: Kind::Torque });
    act(engine, Command::Answer { step: Some(text("studs")), at: None, answer: text("5") });
    for (at, depth) in WALK.into_iter().zip(depths) {
        let (side, looks) = (SidewallSide::Outer, TireLooks::default());
        act(
            engine,
            Command::Sidewall { at: text(at), side, text: text("205/55R16 91H"), looks, coming: false, by: None },
        );
        act(engine, Command::Mark { at: text(at), mark: None, coming: false });
        let depths = format!("{depth} {depth} {depth} mm");
        act(
            engine,
            Command::Tread {
                at: text(at),
                depths,
                lowest: None,
                reason: Some(text("as the test wants it")),
                coming: false,
            },
        );
    }
}

/// The wheels change places on a lift, each hub with the wheel it gets.
fn rotate(engine: &mut Engine, plan: &str, hubs: [(&str, &str); 4]) {
    act(engine, Command::ChoosePlan { plan: text(plan) });
    act(engine, Command::Answer { step: Some(text("ready")), at: None, answer: text("seen") });
    act(engine, Command::Weigh { weight: text("1780 kg"), rating: text("4 t") });
    act(engine, Command::Lift { arm: Arm::Clear });
    act(engine, Command::Answer { step: Some(text("rock")), at: None, answer: text("seen") });
    act(engine, Command::Lift { arm: Arm::Full });
    act(engine, Command::Lift { arm: Arm::Held });
    for at in WALK {
        act(engine, Command::WheelOff { at: text(at) });
        act(
            engine,
            Command::Look {
                at: Some(text(at)),
                part: None,
                state: State::Sound,
                note: None,
                damage: None,
                thickness: None,
                least: None,
                photo: None,
            },
        );
    }
    for (at, mark) in hubs {
        act(engine, Command::Hang { at: text(at), mark: text(mark) });
        act(engine, Command::Nuts { at: text(at), pass: Pass::Started, nut: None, moved: None });
        act(engine, Command::Nuts { at: text(at), pass: Pass::Snug, nut: None, moved: None });
    }
}

fn leave(engine: &mut Engine) {
    act(engine, Command::CloseJob { reason: text("the test looks at the plan alone") });
}

/// With plain spaces, however thousands and units are set apart.
fn plain(told: &str) -> String {
    told.chars().map(|c| if c.is_whitespace() { ' ' } else { c }).collect()
}

fn plans(engine: &Engine) -> PlansView {
    engine.plans(Speech::default()).unwrap()
}

fn rates(engine: &Engine) -> Vec<(String, f64)> {
    let told = engine.wear(Speech::default()).unwrap().tires;
    let rate = |rate: lugbook::words::Quantity| (rate.value * 1000.0).round() / 1000.0;
    told.into_iter().filter_map(|tire| Some((tire.at, rate(tire.rate?)))).collect()
}

/// Worn at the right rear, and the fronts wear four times as fast as the rears.
const FIRST: [f64; 4] = [8.0, 7.5, 3.5, 8.0];
const SECOND: [f64; 4] = [6.0, 7.0, 3.0, 6.0];

#[test]
fn with_one_visit_wear_is_unknown_and_the_next_visit_is_an_odometer_figure() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    book(&mut engine);
    visit(&mut engine, "80000 km", SECOND, false);
    let view = plans(&engine);
    assert_eq!(view.shout, "Fronts straight back, rears cross to the front.");
    assert!(view.plans.iter().all(|plan| plan.forecast.is_empty() && plan.left.is_none()));
    assert!(view.unknown.unwrap().starts_with("One visit was read: wear rates are unknown"));
    let next = plain(&view.next_visit.unwrap());
    assert!(next.starts_with("Next visit at 85 000 km on the odometer: the wear is not known yet"), "{next}");
    // The figure is told as the odometer shows it, or as the person chose.
    let us = Speech { units: Units::Us, ..Speech::default() };
    assert!(plain(&engine.plans(us).unwrap().next_visit.unwrap()).starts_with("Next visit at 52 817 mi"));
    assert!(rates(&engine).is_empty());
}

#[test]
fn rates_of_two_visits_give_the_forecast_and_keep_a_worn_tire_off_the_axle_that_would_finish_it() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    book(&mut engine);
    visit(&mut engine, "80000 km", FIRST, false);
    leave(&mut engine);
    visit(&mut engine, "90000 km", SECOND, false);
    assert_eq!(
        rates(&engine),
        [("FL".to_owned(), 0.2), ("FR".to_owned(), 0.2), ("RL".to_owned(), 0.05), ("RR".to_owned(), 0.05)]
    );
    let view = plans(&engine);
    // Without rates the forward cross puts the worn right rear at the front, where it would end at 1.0 mm.
    let best = &view.plans[0];
    assert_ne!(best.pattern, "forward-cross");
    assert_eq!(
        best.moves.iter().find(|(from, _)| from == "RR").map_or("RR", |(_, to)| to.as_str()).chars().next(),
        Some('R')
    );
    let of = |plan: usize, tire: &str| view.plans[plan].forecast.iter().find(|f| f.tire == tire).unwrap().clone();
    assert!((of(0, "RR").next_visit_mm.mid - 2.5).abs() < 0.01 && !of(0, "RR").below);
    let as_is = view.plans.len() - 1;
    assert!((of(as_is, "FL").next_visit_mm.mid - 4.0).abs() < 0.01);
    let left = plain(view.plans[as_is].left.as_ref().unwrap());
    assert!(
        left.starts_with("Left at the next visit: FL 4 mm, FR 4 mm, RL 6.5 mm, RR 2.5 mm; after 4 visits: "),
        "{left}"
    );
    assert_eq!(view.unknown, None);
    assert_eq!(view.next_visit.as_deref().map(plain).as_deref(), Some("Next visit at 100 000 km on the odometer."));
}

#[test]
fn practice_stays_out_of_rates_and_of_the_next_visit() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    book(&mut engine);
    visit(&mut engine, "80000 km", FIRST, false);
    leave(&mut engine);
    visit(&mut engine, "85000 km", [1.0; 4], true);
    leave(&mut engine);
    visit(&mut engine, "90000 km", SECOND, false);
    assert_eq!(rates(&engine)[0], ("FL".to_owned(), 0.2));
    assert_eq!(
        plans(&engine).next_visit.as_deref().map(plain).as_deref(),
        Some("Next visit at 100 000 km on the odometer.")
    );
}

#[test]
fn wear_is_counted_where_each_tire_ran_after_it_was_moved() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    book(&mut engine);
    visit(&mut engine, "80000 km", [8.0; 4], false);
    rotate(&mut engine, "forward-cross", FORWARD_CROSS);
    leave(&mut engine);
    // Places as before; the tires at the front came from the rear.
    visit(&mut engine, "90000 km", [6.0, 7.5, 7.5, 6.0], false);
    rotate(&mut engine, "forward-cross", FORWARD_CROSS);
    leave(&mut engine);
    visit(&mut engine, "100000 km", [5.5, 5.5, 5.5, 5.5], false);
    assert_eq!(
        rates(&engine),
        [("FL".to_owned(), 0.2), ("FR".to_owned(), 0.2), ("RL".to_owned(), 0.05), ("RR".to_owned(), 0.05)]
    );
}

#[test]
fn no_rate_rests_on_a_way_that_is_not_known() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    book(&mut engine);
    visit(&mut engine, "80000 km", [8.0; 4], false);
    leave(&mut engine);
    // Moved at an unknown distance: what went before can't be told apart by place.
    visit(&mut engine, "", [7.0; 4], false);
    rotate(&mut engine, "forward-cross", FORWARD_CROSS);
    leave(&mut engine);
    visit(&mut engine, "90000 km", [6.0; 4], false);
    assert!(rates(&engine).is_empty());
    leave(&mut engine);
    // A replaced instrument counts from elsewhere; the figure told next is its own.
    visit(&mut engine, "", [5.5; 4], false);
    act(&mut engine, Command::Odometer { reading: text("120 km"), estimated: false, replaced: true });
    let next = plain(&plans(&engine).next_visit.unwrap());
    assert!(rates(&engine).is_empty());
    assert!(next.starts_with("Next visit at 10 120 km"), "{next}");
}
