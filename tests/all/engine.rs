//! The door: commands, refusals, views.

use lugbook::calendar::Moment;
use lugbook::engine::{Calibrations, Command, Engine, Host, Papers, TroubleKind};
use lugbook::entry::{Arm, Kind, Pass, Role, SensorKind, SidewallSide, TireLooks};
use lugbook::finding::State;
use lugbook::vehicle::hub::{Evidence, Hub};
use lugbook::vehicle::{Class, Side};
use lugbook::words::Speech;
use std::sync::atomic::{AtomicU64, Ordering};

/// A device whose clock goes on by a minute with each look and whose randomness counts.
#[derive(Default)]
struct Device(AtomicU64);

impl Host for Device {
    fn now(&self) -> Moment {
        let n = self.0.fetch_add(1, Ordering::Relaxed);
        Moment::from_unix_ms(i64::try_from(1_780_000_000_000 + n * 1_000).unwrap())
    }

    fn random(&self) -> [u8; 10] {
        let n = self.0.fetch_add(1, Ordering::Relaxed).to_be_bytes();
        std::array::from_fn(|at| n.get(at).copied().unwrap_or(7))
    }
}

pub(crate) fn open(folder: &std::path::Path) -> Engine {
    Engine::open(folder, Box::new(Device::default()), Speech::default()).unwrap()
}

pub(crate) fn act(engine: &mut Engine, command: Command) -> Vec<String> {
    engine.act(None, command.clone(), Speech::default()).unwrap_or_else(|t| panic!("{command:?}: {t:?}")).said
}

fn refused(engine: &mut Engine, command: Command) -> (TroubleKind, String) {
    let before = engine.book().jobs.last().map(|job| job.lines.len());
    let trouble = engine.act(None, command, Speech::default()).unwrap_err();
    assert_eq!(before, engine.book().jobs.last().map(|job| job.lines.len()), "a refusal changes nothing");
    (trouble.kind, trouble.sentence)
}

pub(crate) fn text(t: &str) -> String {
    t.to_owned()
}

const WALK: [&str; 4] = ["FL", "RL", "RR", "FR"];

/// An open job on a lift with everything read and measured, up to the plan.
fn measured(engine: &mut Engine) {
    act(engine, Command::AddPerson { name: text("Wren Castellan"), role: Role::Mechanic, phone: None });
    act(
        engine,
        Command::AddVehicle {
            name: text("orchard truck"),
            model: text("Harrow 1500 2019"),
            class: Class::LightTruck,
            axles: vec![],
            has: Some(vec![]),
            spare: false,
            own: true,
            plate: None,
        },
    );
    act(
        engine,
        Command::AddTool {
            name: text("wrench"),
            papers: Papers::Wrench {
                accuracy: text("4 %"),
                step: text("1 N.m"),
                range: None,
                calibration: Calibrations::default(),
            },
        },
    );
    act(
        engine,
        Command::OpenJob {
            vehicle: text("orchard truck"),
            procedure: text("rotation-on-a-lift"),
            circumstances: vec![text("electric")],
            practice: false,
        },
    );
    act(engine, Command::UseTool { tool: text("wrench") });
    act(engine, Command::Answer { step: Some(text("lock-key")), at: None, answer: text("none-fitted") });
    act(engine, Command::Odometer { reading: text("84210 mi"), estimated: false, replaced: false });
    act(engine, Command::NotKnown { what: Kind::Placard });
    act(engine, Command::Answer { step: Some(text("studs")), at: None, answer: text("5") });
    for (axle, hub) in [(1, Hub::NoShaft), (2, Hub::Shaft)] {
        act(engine, Command::Hub { at: None, evidence: Evidence::look(axle, Side::Left, hub) });
    }
    act(engine, Command::Lamp { on: false, sensors: SensorKind::Direct });
    act(engine, Command::Skip { step: Some(text("sidewall-photo")), at: None, reason: text("camera broken") });
    for at in WALK {
        act(
            engine,
            Command::Sidewall {
                at: text(at),
                side: SidewallSide::Outer,
                text: text("LT245/75R16 120/116S"),
                looks: TireLooks::default(),
                coming: false,
                by: None,
            },
        );
        act(engine, Command::Mark { at: text(at), mark: None, coming: false });
        act(
            engine,
            Command::Tread { at: text(at), depths: text("9 9 9 /32"), lowest: None, reason: None, coming: false },
        );
    }
}

#[test]
fn a_whole_rotation_runs_from_opening_to_signature() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    act(
        &mut engine,
        Command::RecordTorque {
            vehicle: None,
            printed: vec![text("125..150 N.m")],
            thread: None,
            condition: None,
            recheck: vec![text("25 mi")],
            studs: None,
            source: text("owner manual p. 12"),
            photo: None,
        },
    );
    act(&mut engine, Command::ChoosePlan { plan: text("1") });
    act(&mut engine, Command::Answer { step: Some(text("lift-points")), at: None, answer: text("seen") });
    act(&mut engine, Command::Answer { step: Some(text("ready")), at: None, answer: text("seen") });
    act(&mut engine, Command::Weigh { weight: text("1780 kg"), rating: text("4 t") });
    act(&mut engine, Command::Lift { arm: Arm::Clear });
    act(&mut engine, Command::Answer { step: Some(text("rock")), at: None, answer: text("seen") });
    act(&mut engine, Command::Lift { arm: Arm::Full });
    act(&mut engine, Command::Lift { arm: Arm::Held });
    for at in WALK {
        act(&mut engine, Command::WheelOff { at: text(at) });
        act(
            &mut engine,
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
    // Rearward cross: rears straight forward, fronts cross to the rear.
    for (at, mark) in [("FL", "RL"), ("FR", "RR"), ("RL", "FR"), ("RR", "FL")] {
        let (kind, sentence) = refused(&mut engine, Command::Hang { at: text(at), mark: text(at) });
        assert_eq!(kind, TroubleKind::Held, "{sentence}");
        act(&mut engine, Command::Hang { at: text(at), mark: text(mark) });
        act(&mut engine, Command::Nuts { at: text(at), pass: Pass::Started, nut: None, moved: None });
        act(&mut engine, Command::Nuts { at: text(at), pass: Pass::Snug, nut: None, moved: None });
    }
    let (kind, _) = refused(&mut engine, Command::Lift { arm: Arm::Down });
    assert_eq!(kind, TroubleKind::Held);
    act(&mut engine, Command::Answer { step: Some(text("tray")), at: None, answer: text("0") });
    act(&mut engine, Command::Lift { arm: Arm::AllClear });
    let (kind, _) =
        refused(&mut engine, Command::Nuts { at: text("FL"), pass: Pass::Final, nut: None, moved: Some(true) });
    assert_eq!(kind, TroubleKind::Held);
    act(&mut engine, Command::Lift { arm: Arm::Down });
    let (kind, _) = refused(&mut engine, Command::Sign { drawn: None });
    assert_eq!(kind, TroubleKind::Held);
    for at in WALK {
        act(&mut engine, Command::Nuts { at: text(at), pass: Pass::Final, nut: None, moved: Some(true) });
    }
    for at in WALK {
        act(&mut engine, Command::Pressure { at: text(at), pressure: text("55 psi"), set: true, cold: Some(true) });
    }
    act(&mut engine, Command::Lamp { on: false, sensors: SensorKind::Direct });
    act(&mut engine, Command::Answer { step: Some(text("relearn")), at: None, answer: text("not-needed") });
    act(&mut engine, Command::TellRecheck);
    act(&mut engine, Command::Sign { drawn: None });
    assert!(engine.next(Speech::default()).is_none());
    let tires = &engine.book().vehicles[0].fitted;
    assert_eq!(tires.len(), 4);
    assert!(engine.check(Speech::default()).unwrap().ok);
}

#[test]
fn an_unknown_torque_keeps_the_final_gate_shut_until_it_is_opened_with_a_reason() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    act(&mut engine, Command::NotKnown { what: Kind::Torque });
    let (kind, sentence) =
        refused(&mut engine, Command::Nuts { at: text("FL"), pass: Pass::Final, nut: None, moved: Some(true) });
    assert_eq!(kind, TroubleKind::Held, "{sentence}");
}

#[test]
fn tread_deeper_than_last_time_is_held_until_a_reason_is_given() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    act(&mut engine, Command::CloseJob { reason: text("customer left") });
    act(
        &mut engine,
        Command::OpenJob {
            vehicle: text("orchard truck"),
            procedure: text("rotation-on-a-lift"),
            circumstances: vec![text("electric")],
            practice: false,
        },
    );
    let tread = |depths: &str, reason: Option<&str>| Command::Tread {
        at: text("FL"),
        depths: text(depths),
        lowest: None,
        reason: reason.map(text),
        coming: false,
    };
    // Both gauges show 1/32: 2/32 more is still within them, 3/32 is not.
    let (kind, _) = refused(&mut engine, tread("12 12 12 /32", None));
    assert_eq!(kind, TroubleKind::Held);
    act(&mut engine, tread("12 12 12 /32", Some("other tire")));
    act(&mut engine, tread("11 11 11 /32", None));
}

#[test]
fn what_is_said_in_a_practice_job_is_kept_as_practice_and_out_of_history() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    act(&mut engine, Command::CloseJob { reason: text("customer left") });
    let history = |engine: &Engine| engine.book().tires.values().map(|tire| tire.depths.len()).sum::<usize>();
    let before = history(&engine);
    let opened = act(
        &mut engine,
        Command::OpenJob {
            vehicle: text("orchard truck"),
            procedure: text("rotation-on-a-lift"),
            circumstances: vec![text("electric")],
            practice: true,
        },
    );
    assert!(opened.iter().any(|said| said.contains("practice")), "{opened:?}");
    assert!(engine.book().jobs.last().unwrap().practice);
    act(
        &mut engine,
        Command::Tread { at: text("FL"), depths: text("8 8 8 /32"), lowest: None, reason: None, coming: false },
    );
    assert_eq!(history(&engine), before);
}

#[test]
fn something_unsafe_found_after_the_customer_was_told_has_to_be_told_again() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    let cut = |at: &str| Command::Look {
        at: Some(text(at)),
        part: Some(lugbook::entry::LookAt::Tire),
        state: State::Unsafe,
        note: Some(text("cord")),
        damage: None,
        thickness: None,
        least: None,
        photo: None,
    };
    let untold = |engine: &Engine| {
        let procedures = engine.procedures();
        let job = engine.book().in_bay().unwrap();
        let procedure = procedures.iter().find(|p| p.id == job.procedure).unwrap();
        let bay = lugbook::procedure::Bay::new(procedure, engine.book(), job).unwrap();
        bay.check(lugbook::procedure::Condition::UnsafeTold, None).and_then(|unmet| unmet.at()).map(|at| at.to_string())
    };
    act(&mut engine, cut("FL"));
    assert_eq!(untold(&engine), Some(text("FL")));
    act(&mut engine, Command::UnsafeTold { accepts: false, by: None, drawn: None });
    assert_eq!(untold(&engine), None);
    act(&mut engine, cut("RR"));
    assert_eq!(untold(&engine), Some(text("RR")));
}

#[test]
fn all_sound_fills_in_what_was_not_looked_at_and_overrules_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    let look = |part, state| Command::Look {
        at: Some(text("FL")),
        part,
        state,
        note: None,
        damage: None,
        thickness: None,
        least: None,
        photo: None,
    };
    let studs = |engine: &Engine| {
        let job = engine.book().in_bay().unwrap();
        job.looks().iter().find(|look| look.part == lugbook::entry::LookAt::Studs).unwrap().state
    };
    act(&mut engine, look(Some(lugbook::entry::LookAt::Studs), State::Watch));
    act(&mut engine, look(None, State::Sound));
    assert_eq!(studs(&engine), State::Watch);
    // Named on its own, it is a new look at that part.
    act(&mut engine, look(Some(lugbook::entry::LookAt::Studs), State::Sound));
    assert_eq!(studs(&engine), State::Sound);
}

#[test]
fn a_shops_file_cannot_take_a_built_in_procedures_id() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    let built_in = include_str!("../../core/procedures/rotation-on-a-lift.toml");
    let trouble = engine.add_procedure("mine.toml", built_in, Speech::default()).unwrap_err();
    assert_eq!((trouble.kind, trouble.at.as_deref()), (TroubleKind::MendInput, Some("mine.toml")));
    assert_eq!(engine.procedures().len(), lugbook::procedure::built_in().unwrap().len());
}

/// Every sentence that the engine names by an id is in every language.
#[test]
fn the_engines_sentences_all_exist() {
    let words = lugbook::words::Words::new(Speech::default());
    let folder = crate::program::root().join("core/src/engine");
    let mut seen = 0;
    for file in ["act.rs", "act/job.rs", "act/set.rs", "act/shelf.rs", "act/wheel.rs", "ask.rs"] {
        let source = std::fs::read_to_string(folder.join(file)).unwrap();
        for id in source.split('"').filter(|text| {
            ["trouble-", "said-", "what-", "next-"].iter().any(|start| text.starts_with(start))
                && text.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
        }) {
            assert!(words.has(id), "{file}: {id}");
            seen += 1;
        }
    }
    assert!(seen > 60, "{seen}");
}

/// What the card of the job in the bay says of its limits.
fn card_limits(engine: &Engine) -> String {
    let card = engine.card(None, Speech::default()).unwrap();
    let from = card.find("Limits").expect("the card tells whose limits hold");
    card[from..].split('<').next().unwrap().to_owned()
}

#[test]
fn limits_are_chosen_once_for_the_book_and_otherwise_for_a_job() {
    use lugbook::limits::{Region, Season};
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    measured(&mut engine);
    let choose = |region, season, watch: Option<&str>, this_job| Command::ChooseLimits {
        region,
        season,
        at_limit: None,
        watch: watch.map(text),
        this_job,
    };
    let tread = |depths: &str| Command::Tread {
        at: text("FL"),
        depths: text(depths),
        lowest: None,
        reason: None,
        coming: false,
    };
    // 1.59 mm passes 2/32 in and fails 1.6 mm (standards page, section 5).
    let by_default = act(&mut engine, tread("1.59 1.59 mm"));
    assert!(by_default[0].starts_with("1.59 mm is at the limit of 2/32 in."), "{by_default:?}");
    assert_eq!(
        card_limits(&engine),
        "Limits, by default: United States, no snow or ice expected, at limit up to 1/32 in above, watch up to 2/32 in above."
    );
    let said = act(&mut engine, choose(Some(Region::France), None, None, false));
    assert!(said[0].starts_with("Limits: France, no snow or ice expected, at limit"), "{said:?}");
    let in_france = act(&mut engine, tread("1.59 1.59 mm"));
    assert!(in_france[0].starts_with("1.59 mm is below the limit of 1.6 mm. Replace the tire."), "{in_france:?}");
    assert!(engine.card(None, Speech::default()).unwrap().contains("France, order text"));
    assert!(act(&mut engine, tread("7 7 mm")).is_empty(), "nothing to say of a sound tire");
    // For this job alone: winter, and a shop that speaks early.
    act(&mut engine, choose(None, Some(Season::Winter), Some("6 mm"), true));
    let held = engine.limits(Speech::default());
    assert_eq!((held.book.season, held.job.as_ref().unwrap().season), (Season::Summer, Season::Winter));
    assert_eq!((held.book.region, held.job.as_ref().unwrap().region), (Region::France, Region::France));
    assert!(act(&mut engine, tread("7 7 mm"))[0].starts_with("7 mm is near 1.6 mm."));
    assert!(
        card_limits(&engine).contains("snow or ice expected, at limit up to 1/32 in above, watch up to 6 mm above")
    );
    // Refusals change nothing.
    let (kind, sentence) = refused(&mut engine, choose(None, None, None, false));
    assert_eq!(
        (kind, sentence.as_str()),
        (TroubleKind::MendInput, "Say what to choose: a place, a season, or a depth.")
    );
    let (_, sentence) = refused(&mut engine, choose(None, None, Some("0.1 mm"), true));
    assert!(sentence.starts_with("Watch, 0.1 mm above the limit, can't be less"), "{sentence}");
    // A job that has ended stays as it was judged; the book goes on.
    act(&mut engine, Command::CloseJob { reason: text("the customer left") });
    let before = card_limits(&engine);
    act(&mut engine, choose(Some(Region::UsCommercial), None, None, false));
    assert_eq!(card_limits(&engine), before);
    assert_eq!(engine.limits(Speech::default()).book.region, Region::UsCommercial);
    drop(engine);
    let engine = open(folder.path());
    assert_eq!(engine.limits(Speech::default()).book.region, Region::UsCommercial, "it is kept");
    assert_eq!(card_limits(&engine), before);
}
