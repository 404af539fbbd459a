//! Jobs that are worked lift by lift: the actions of `lifting` asked one after
//! another, their gates, and the tires where they belong in the end.

use std::collections::BTreeMap;

use lugbook::caution::Circumstance;
use lugbook::engine::{Command, Engine, NextView, TroubleKind};
use lugbook::entry::{Arm, Kind, Pass, Role, SensorKind, SidewallSide, TireLooks};
use lugbook::finding::State;
use lugbook::lifting::{self, Gear, JackKind, Site, Spare, Task, Vehicle};
use lugbook::vehicle::{Class, Drive, Layout};
use lugbook::words::Speech;

use super::engine::{act, open, text};
use super::lifting::replay;

/// What differs between the jobs.
struct Case {
    gear: &'static str,
    middles: &'static str,
    /// The size on the spare's sidewall; no spare when empty.
    spare: &'static str,
    temporary: bool,
    drive: Drive,
    moves: Command,
}

fn choose(pattern: &str) -> Command {
    Command::ChoosePlan { plan: text(pattern) }
}

fn flat(at: &str, good_wheel_forward: bool) -> Command {
    Command::Flat { at: text(at), good_wheel_forward }
}

fn begin(engine: &mut Engine, case: &Case) {
    act(engine, Command::AddPerson { name: text("Wren Castellan"), role: Role::Mechanic, phone: None });
    let vehicle = "green hatchback";
    act(
        engine,
        Command::AddVehicle {
            name: text(vehicle),
            model: text("Lerche 12 2018"),
            class: Class::Car,
            axles: vec![],
            has: Some(vec![]),
            spare: !case.spare.is_empty(),
            own: true,
            plate: None,
        },
    );
    act(engine, Command::RecordDrive { vehicle: Some(text(vehicle)), drive: case.drive, source: text("manual") });
    act(
        engine,
        Command::RecordTorque {
            vehicle: Some(text(vehicle)),
            printed: vec![text("110 N.m")],
            thread: None,
            condition: None,
            recheck: vec![],
            studs: Some(4),
            source: text("manual"),
            photo: None,
        },
    );
    // The manual's pattern leaves the spare out, so that it only stands in.
    let pattern = text("forward-cross");
    act(engine, Command::RecordPattern { vehicle: Some(text(vehicle)), pattern, source: text("manual") });
    act(
        engine,
        Command::OpenJob {
            vehicle: text(vehicle),
            procedure: text("rotation-lift-by-lift"),
            circumstances: vec![text("hand-tools")],
            practice: false,
        },
    );
}

/// The command that answers what is asked.
fn answer(next: &NextView, case: &Case) -> Command {
    let at = next.at.clone().unwrap_or_default();
    let here = || text(&at);
    let said = |answer: &str| Command::Answer { step: None, at: None, answer: text(answer) };
    let nuts = |pass, moved| Command::Nuts { at: here(), pass, nut: None, moved };
    match next.asks.as_deref().unwrap() {
        "seen" | "rocked" | "ready" => said("seen"),
        "weigh" => Command::Weigh { weight: text("1300 kg"), rating: text("2 t") },
        "count" => said("0"),
        "studs" => said("4"),
        "choice" => match next.step.as_deref().unwrap() {
            "lock-key" => said("none-fitted"),
            "gear" => said(case.gear),
            "middles" => said(case.middles),
            "relearn" => said("not-needed"),
            other => panic!("{other}"),
        },
        "odometer" => Command::Odometer { reading: text("80000 km"), estimated: false, replaced: false },
        "placard" => Command::NotKnown { what: Kind::Placard },
        "sidewall-photo" => Command::Skip { step: None, at: None, reason: text("no camera") },
        "sidewall" => {
            let size = if at == "SP" { case.spare } else { "205/55R16 91H" };
            let looks = TireLooks { temporary: at == "SP" && case.temporary, ..TireLooks::default() };
            Command::Sidewall {
                at: here(),
                side: SidewallSide::Outer,
                text: text(size),
                looks,
                coming: false,
                by: None,
            }
        }
        "mark" => Command::Mark { at: here(), mark: None, coming: false },
        "tread" => Command::Tread { at: here(), depths: text("7 7 7 mm"), lowest: None, reason: None, coming: false },
        "plan" => case.moves.clone(),
        "cracked" => nuts(Pass::Cracked, None),
        "raised-full" => Command::Lift { arm: Arm::Full },
        "held" => Command::Lift { arm: Arm::Held },
        "wheel-off" => Command::WheelOff { at: here() },
        "looks" => Command::Look {
            at: Some(here()),
            part: None,
            state: State::Sound,
            note: None,
            damage: None,
            thickness: None,
            least: None,
            photo: None,
        },
        "mark-read" => {
            let detail = &next.turn.as_ref().unwrap().detail;
            let mark = detail.split_once("the tire marked ").unwrap().1.split_once('.').unwrap().0;
            Command::Hang { at: here(), mark: text(mark) }
        }
        "started" => nuts(Pass::Started, None),
        "snug" => nuts(Pass::Snug, None),
        "all-clear" => Command::Lift { arm: Arm::AllClear },
        "lowered" => Command::Lift { arm: Arm::Down },
        "final" => nuts(Pass::Final, Some(true)),
        "pressure" => Command::Pressure { at: here(), pressure: text("230 kPa"), set: true, cold: Some(true) },
        "lamp" => Command::Lamp { on: false, sensors: SensorKind::Indirect },
        "recheck" => Command::TellRecheck,
        "signature" => Command::Sign { drawn: None },
        other => panic!("{other}"),
    }
}

/// Whatever is not next is held: raising, hands at a wheel, lowering.
fn nothing_else_goes(engine: &mut Engine, next: &NextView) {
    let asks = next.asks.as_deref().unwrap();
    let out_of_turn = [
        ("raised-full", Command::Lift { arm: Arm::Full }),
        ("held", Command::Lift { arm: Arm::Held }),
        ("all-clear", Command::Lift { arm: Arm::AllClear }),
        ("lowered", Command::Lift { arm: Arm::Down }),
        ("wheel-off", Command::WheelOff { at: text("FL") }),
        ("wheel-off", Command::WheelOff { at: text("RR") }),
        ("final", Command::Nuts { at: text("FL"), pass: Pass::Final, nut: None, moved: Some(true) }),
        ("plan", choose("side-to-side")),
    ];
    for (kind, command) in out_of_turn {
        let before_it_went_up = kind == "plan" && next.turn.as_ref().is_some_and(|turn| turn.lift <= 1);
        if kind == asks || before_it_went_up {
            continue;
        }
        let lines = engine.book().jobs[0].lines.len();
        let trouble = engine.act(None, command.clone(), Speech::default()).unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Held, "{asks}: {command:?}: {}", trouble.sentence);
        assert_eq!(engine.book().jobs[0].lines.len(), lines, "a refusal changes nothing");
    }
}

/// Works a whole job; the trace of the order, and which wheel stands where in the end.
fn work(case: &Case) -> (Vec<(usize, String)>, BTreeMap<String, String>) {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begin(&mut engine, case);
    let mut trace = Vec::new();
    let layout = engine.book().vehicles[0].layout.clone();
    let started: BTreeMap<_, _> = engine.book().jobs[0].fitted.clone();
    while let Some(next) = engine.next(Speech::default()) {
        if let Some(turn) = &next.turn {
            let at = next.at.clone().unwrap_or_default();
            trace.push((turn.n, format!("{} {at}", next.step.clone().unwrap())));
            assert!(next.gate.is_empty(), "{next:?}");
            if turn.n % 3 == 0 {
                nothing_else_goes(&mut engine, &next);
            }
        }
        assert!(trace.len() < 400);
        act(&mut engine, answer(&next, case));
    }
    assert_eq!(engine.book().jobs[0].status, lugbook::logbook::Status::Signed);
    assert!(engine.check(Speech::default()).unwrap().ok);
    let name = |place: lugbook::vehicle::Place| layout.name(place, lugbook::vehicle::Letters::FrontFirst);
    let from = |tire| started.iter().find(|(_, t)| **t == tire).map(|(place, _)| name(*place)).unwrap();
    let stands = engine.book().vehicles[0].fitted.iter().map(|(place, tire)| (name(*place), from(*tire))).collect();
    (trace, stands)
}

/// The same moves asked of `lifting` directly, and replayed by its checker.
fn planned(gear: Gear, site: Site, spare: Spare, middles: &[u8], moves: &[(&str, &str)]) -> lifting::Plan {
    let mut vehicle = Vehicle::of(Layout::two_axles(false), spare);
    vehicle.middles = middles.to_vec();
    let place = |name: &str| vehicle.layout.parse(name).unwrap();
    let moves = moves.iter().map(|(from, to)| (place(from), place(to))).collect();
    let task = Task { vehicle, gear, site, moves, here: vec![Circumstance::Own, Circumstance::HandTools] };
    let plan = lifting::plan(&task).unwrap();
    replay(&task, &plan);
    plan
}

/// Every action was asked, in the order of the plan that the checker replayed.
fn follows(trace: &[(usize, String)], plan: &lifting::Plan, layout: &Layout) {
    let mut numbers: Vec<usize> = trace.iter().map(|(n, _)| *n).collect();
    assert!(numbers.is_sorted(), "in order");
    numbers.dedup();
    assert_eq!(numbers, (1..=plan.actions.len()).collect::<Vec<_>>(), "every action is asked");
    for action in &plan.actions {
        let at =
            action.at.first().map(|at| layout.name(*at, lugbook::vehicle::Letters::FrontFirst)).unwrap_or_default();
        let asked = format!("{} {at}", action.act.code());
        assert!(trace.iter().any(|(n, told)| *n == action.n && *told == asked), "{asked} is asked as {}", action.n);
    }
}

fn jack(jack: JackKind, stands: u8) -> Gear {
    Gear::Jack { jack, rating: None, stands, stand_rating: None }
}

const FORWARD_CROSS: [(&str, &str); 4] = [("FL", "RL"), ("FR", "RR"), ("RL", "FR"), ("RR", "FL")];

fn stands_at(pairs: &[(&str, &str)]) -> BTreeMap<String, String> {
    pairs.iter().map(|(place, wheel)| (text(place), text(wheel))).collect()
}

#[test]
fn a_jack_and_two_stands_cross_four_wheels() {
    let case = Case {
        gear: "jack-two-stands",
        middles: "corners-only",
        spare: "",
        temporary: false,
        drive: Drive::Front,
        moves: choose("forward-cross"),
    };
    let (trace, stands) = work(&case);
    let plan = planned(jack(JackKind::Floor, 2), Site::Yard, Spare::None, &[], &FORWARD_CROSS);
    follows(&trace, &plan, &Layout::two_axles(false));
    assert_eq!(stands, stands_at(&[("FL", "RR"), ("FR", "RL"), ("RL", "FL"), ("RR", "FR")]));
}

#[test]
fn a_jack_alone_crosses_four_wheels_while_the_spare_stands_in() {
    let case = Case {
        gear: "jack-alone",
        middles: "",
        spare: "205/55R16 91H",
        temporary: false,
        drive: Drive::Front,
        moves: choose("forward-cross"),
    };
    let (trace, stands) = work(&case);
    let plan = planned(jack(JackKind::Floor, 0), Site::Yard, Spare::FullSize, &[], &FORWARD_CROSS);
    follows(&trace, &plan, &Layout::two_axles(true));
    assert!(plan.proved && plan.lifts > 4, "the corner that begins is raised twice");
    assert_eq!(stands, stands_at(&[("FL", "RR"), ("FR", "RL"), ("RL", "FL"), ("RR", "FR"), ("SP", "SP")]));
}

#[test]
fn the_roadside_jack_changes_a_flat_at_a_driven_wheel_and_brings_a_good_wheel_forward() {
    let case = Case {
        gear: "roadside-jack",
        middles: "",
        spare: "T125/80D16 97M",
        temporary: true,
        drive: Drive::Front,
        moves: flat("FL", true),
    };
    let (trace, stands) = work(&case);
    let moves = [("FL", "SP"), ("SP", "RL"), ("RL", "FL")];
    let plan = planned(jack(JackKind::Roadside, 0), Site::Roadside, Spare::Temporary, &[], &moves);
    follows(&trace, &plan, &Layout::two_axles(true));
    assert!(trace[0].1.starts_with("secure-site"), "{trace:?}");
    assert_eq!(stands, stands_at(&[("FL", "RL"), ("FR", "FR"), ("RL", "SP"), ("RR", "RR"), ("SP", "FL")]));
}

#[test]
fn what_the_gear_cannot_do_is_told_and_another_answer_goes_on() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    let case = Case {
        gear: "roadside-jack",
        middles: "corners-only",
        spare: "",
        temporary: false,
        drive: Drive::Front,
        moves: choose("forward-cross"),
    };
    begin(&mut engine, &case);
    let refused = |engine: &Engine| engine.lifts(Speech::default()).unwrap_err().sentence;
    assert!(refused(&engine).starts_with("There is no order of lifts yet"));
    for _ in 0..100 {
        if !engine.next(Speech::default()).unwrap().gate.is_empty() {
            break;
        }
        let next = engine.next(Speech::default()).unwrap();
        act(&mut engine, answer(&next, &case));
    }
    let held = engine.next(Speech::default()).unwrap().gate;
    assert_eq!(held, ["It can't be done with this gear. It could with 2 stands or a full-size spare."]);
    assert_eq!(refused(&engine), held[0]);
    let gear = |choice: &str| Command::Answer { step: Some(text("gear")), at: None, answer: text(choice) };
    act(&mut engine, gear("jack-two-stands"));
    act(&mut engine, Command::Answer { step: None, at: None, answer: text("both-middles") });
    let view = engine.lifts(Speech::default()).unwrap();
    assert!(view.proved && view.actions.iter().all(|action| !action.done));
    assert!(view.sentence.ends_with("No order needs fewer."), "{}", view.sentence);
    // Once it was raised, the gear is not changed any more.
    for _ in 0..100 {
        let next = engine.next(Speech::default()).unwrap();
        act(
            &mut engine,
            answer(&next, &Case { gear: "jack-two-stands", moves: choose("forward-cross"), ..case_of(&case) }),
        );
        if next.asks.as_deref() == Some("raised-full") {
            break;
        }
    }
    let trouble = engine.act(None, gear("jack-alone"), Speech::default()).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Held, "{}", trouble.sentence);
}

fn case_of(case: &Case) -> Case {
    Case { moves: case.moves.clone(), ..*case }
}

#[test]
fn an_action_taken_back_is_asked_again_and_only_that_one() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    let case = Case {
        gear: "jack-two-stands",
        middles: "corners-only",
        spare: "",
        temporary: false,
        drive: Drive::Front,
        moves: choose("forward-cross"),
    };
    begin(&mut engine, &case);
    let step = |engine: &Engine| engine.next(Speech::default()).unwrap().step.unwrap();
    for _ in 0..100 {
        if step(&engine) == "see-stands" {
            break;
        }
        let next = engine.next(Speech::default()).unwrap();
        act(&mut engine, answer(&next, &case));
    }
    let chocked =
        engine.log(None, Speech::default()).unwrap().into_iter().rev().find(|line| line.sentence.contains("Chock"));
    act(&mut engine, Command::Withdraw { line: chocked.unwrap().line, reason: text("the chock slipped") });
    assert_eq!(step(&engine), "chock");
    let held = engine.act(None, Command::Lift { arm: Arm::Held }, Speech::default()).unwrap_err();
    assert!(held.sentence.contains("comes first. ") && held.sentence.contains("Chock"), "{}", held.sentence);
    let next = engine.next(Speech::default()).unwrap();
    act(&mut engine, answer(&next, &case));
    assert_eq!(step(&engine), "see-stands");
}
