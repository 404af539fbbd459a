use lugbook::caution::CautionId;
use lugbook::entry::{Decision, LookAt};
use lugbook::lifting::{Act, Lacking, Refusal};
use lugbook::procedure::{Ask, Bad, BadKind, Condition, Mismatch, Procedure, Unmet, Unsafe, built_in};
use lugbook::vehicle::{Layout, Place, Side};
use lugbook::words::{Lang, Speech, Words};

/// Words that a step may begin with: verbs that one person can do at once.
const FIRST: &[&str] = &[
    "Ask",
    "Begin",
    "Chalk",
    "Chock",
    "Choose",
    "Count",
    "Crack",
    "Fetch",
    "Find",
    "Hang",
    "Lay",
    "Look",
    "Loosen",
    "Lower",
    "Measure",
    "Note",
    "Photograph",
    "Pull",
    "Put",
    "Raise",
    "Read",
    "Relearn",
    "Rock",
    "See",
    "Set",
    "Settle",
    "Sign",
    "Snug",
    "Stop",
    "Stow",
    "Switch",
    "Take",
    "Tell",
    "Tighten",
];

fn everywhere() -> impl Iterator<Item = Words> {
    Lang::ALL.into_iter().map(|lang| Words::new(Speech { lang, ..Speech::default() }))
}

/// Those that raise a vehicle.
fn raising() -> Vec<Procedure> {
    let raises = |procedure: &Procedure| procedure.steps.iter().any(|step| step.asks == Ask::RaisedClear);
    procedures().into_iter().filter(raises).collect()
}

fn at_the_roadside(procedure: &Procedure) -> bool {
    procedure.settle.iter().flatten().any(|code| code == "roadside")
}

/// What can hurt a person at the roadside; nobody stands under the vehicle, and no air is let in.
const AT_THE_ROADSIDE: &[&str] = &[
    "passing-traffic",
    "slope",
    "not-seen",
    "vehicle-rolls",
    "jack-alone",
    "crack-on-ground",
    "lift-points",
    "falling-wheel",
    "heavy-wheel",
    "hot-brakes",
    "pinched-fingers",
    "crossed-thread",
    "crooked-seat",
    "lowering",
    "wheel-turns",
    "run-flat",
    "nuts-settle",
];

#[test]
fn the_roadside_begins_with_the_place_and_names_what_can_hurt_there() {
    for procedure in procedures().iter().filter(|procedure| at_the_roadside(procedure)) {
        let first = procedure.steps.first().expect("steps");
        assert!(first.id == "place" && first.choices.iter().any(|choice| choice == "slope"));
        let named: Vec<&String> = procedure.steps.iter().flat_map(|step| &step.cautions).collect();
        for hazard in AT_THE_ROADSIDE {
            assert!(named.iter().any(|code| code == hazard), "nobody is told of {hazard}");
        }
        let road = procedure.steps.iter().filter(|step| !step.van).count();
        assert!(road <= 12, "{road} answers at the road");
        let firm = [(Ask::Cracked, Condition::PlaceSafe), (Ask::RaisedClear, Condition::PlaceSafe)];
        for (ask, condition) in firm.into_iter().chain([(Ask::WheelOff, Condition::Clear)]) {
            let step = procedure.steps.iter().find(|step| step.asks == ask).expect("asked");
            assert!(step.needs.contains(&condition), "{}", step.id);
        }
    }
}

fn procedures() -> Vec<Procedure> {
    built_in().expect("built-in procedures are good")
}

#[test]
fn every_step_title_and_choice_has_a_sentence() {
    for words in everywhere() {
        for procedure in procedures() {
            assert!(words.has(procedure.title.as_deref().expect("built-in titles are words")), "{}", procedure.id);
            for step in &procedure.steps {
                let says = step.says.as_deref().expect("built-in steps are words");
                assert!(words.has(says), "{} has no sentence", says);
                for choice in &step.choices {
                    assert!(words.has(&format!("choice-{choice}")), "{choice} has no words");
                }
            }
            for circumstance in procedure.settle.iter().flatten() {
                assert!(words.has(&format!("circumstance-{circumstance}")), "{circumstance} has no words");
            }
        }
    }
}

#[test]
fn a_step_starts_with_a_verb_and_holds_one_action_in_at_most_15_words() {
    for words in everywhere() {
        let verbs = if words.speech().lang == Lang::En { FIRST } else { super::languages::SPANISH_VERBS };
        for step in procedures().iter().flat_map(|procedure| &procedure.steps) {
            let said = words.step(step);
            let all: Vec<&str> = said.split_whitespace().collect();
            assert!(verbs.contains(&all[0]), "“{said}” does not start with a known verb");
            assert!(all.len() <= 15, "“{said}” has {} words", all.len());
            assert!(said.ends_with('.') && said.matches('.').count() == 1, "“{said}” is not one sentence");
            let two = ["then", "luego", "después", ";"];
            assert!(two.iter().all(|word| !said.contains(word)), "“{said}” holds two actions");
        }
    }
}

#[test]
fn no_nut_is_cracked_while_a_corner_is_up_and_no_hand_goes_under_before_the_stands_were_rocked() {
    let procedures = procedures();
    let stands = procedures.iter().find(|p| p.id == "rotation-with-jack-and-stands").expect("built in");
    let at = |id: &str| stands.steps.iter().position(|step| step.id == id).unwrap_or_else(|| panic!("no step {id}"));
    let order = [
        "brake",
        "chock-rear",
        "cracked",
        "front-up",
        "front-stands",
        "front-rest",
        "rear-up",
        "rear-stands",
        "rear-rest",
        "clear",
        "rock",
        "held",
        "wheel-off",
        "snug",
        "all-clear",
        "rear-off-stands",
        "rear-stands-out",
        "rear-down",
        "chock-rear-again",
        "front-off-stands",
        "front-stands-out",
        "lower",
        "final",
    ];
    assert!(order.windows(2).all(|pair| at(pair[0]) < at(pair[1])), "the order of steps has changed");
    for raising in ["front-up", "clear"] {
        assert!(stands.steps[at(raising)].needs.contains(&Condition::Cracked), "{raising} waits for cracked nuts");
    }
    assert!(stands.steps[at("rear-off-stands")].needs.contains(&Condition::AllClear));
}

#[test]
fn every_procedure_that_raises_a_vehicle_gates_what_hands_do_near_a_raised_vehicle() {
    for procedure in raising().into_iter().filter(|procedure| !at_the_roadside(procedure)) {
        let lift_by_lift = procedure.steps.iter().any(|step| step.act.is_some());
        let needs = |ask: Ask| procedure.steps.iter().find(|step| step.asks == ask).map(|step| step.needs.clone());
        let has = |ask, condition| needs(ask).is_some_and(|all| all.contains(&condition));
        // Lift by lift, the order itself is the gate: `lift_by_lift` holds it against what comes first.
        assert!(lift_by_lift || has(Ask::Held, Condition::Rocked), "{}", procedure.id);
        let raised = if lift_by_lift { Ask::RaisedFull } else { Ask::RaisedClear };
        assert!(has(raised, Condition::Approved) && has(raised, Condition::LockKey), "{}", procedure.id);
        assert!(has(Ask::Lowered, Condition::TrayEmpty), "{}", procedure.id);
        assert!(has(Ask::MarkRead, Condition::SeatSound), "{}", procedure.id);
        assert!(procedure.steps.iter().any(|step| step.id.starts_with("rock")), "{}", procedure.id);
    }
}

/// One of each thing a gate can wait for, at a place with the longest name.
fn unmet() -> Vec<Unmet> {
    let at = Place::single(2, Side::Right);
    let all: Vec<u8> = (1..=12).collect();
    vec![
        Unmet::Approved { declined: false },
        Unmet::Approved { declined: true },
        Unmet::PlaceSafe { why: None, flat: None },
        Unmet::PlaceSafe { why: Some(Unsafe::Slope), flat: None },
        Unmet::PlaceSafe { why: Some(Unsafe::Close), flat: None },
        Unmet::PlaceSafe { why: Some(Unsafe::FlatSide), flat: Some(at) },
        Unmet::LockKey { missing: false },
        Unmet::LockKey { missing: true },
        Unmet::DriveKnown,
        Unmet::PlanChosen,
        Unmet::WheelsChosen,
        Unmet::SetBrought,
        Unmet::Cracked { at },
        Unmet::Clear,
        Unmet::Rocked,
        Unmet::Held,
        Unmet::WheelIsOff { at },
        Unmet::MarkFits { at, read: None, wanted: Some("B".into()), belongs: None },
        Unmet::MarkFits { at, read: Some("C".into()), wanted: None, belongs: None },
        Unmet::MarkFits { at, read: Some("Z".into()), wanted: Some("B".into()), belongs: None },
        Unmet::MarkFits {
            at,
            read: Some("C".into()),
            wanted: Some("B".into()),
            belongs: Some(Place::single(1, Side::Left)),
        },
        Unmet::Started { at, nuts: vec![3] },
        Unmet::Started { at, nuts: all.clone() },
        Unmet::Started { at, nuts: Vec::new() },
        Unmet::AllSnug { at, nuts: vec![1, 4] },
        Unmet::AllSnug { at, nuts: Vec::new() },
        Unmet::TrayEmpty { left: None },
        Unmet::TrayEmpty { left: Some(1) },
        Unmet::TrayEmpty { left: Some(3) },
        Unmet::AllClear,
        Unmet::Down,
        Unmet::TorqueKnown,
        Unmet::FinalDone { at, nuts: vec![5] },
        Unmet::FinalDone { at, nuts: all },
        Unmet::FinalDone { at, nuts: Vec::new() },
        Unmet::Rechecked { at, nuts: vec![2] },
        Unmet::Rechecked { at, nuts: vec![1, 2] },
        Unmet::Rechecked { at, nuts: Vec::new() },
        Unmet::UnsafeTold { at: Some(at), part: LookAt::Tire },
        Unmet::UnsafeTold { at: None, part: LookAt::Other },
        Unmet::SeatSound { at, part: LookAt::Studs },
        Unmet::InstructorSaw { asks: Ask::Final, at: Some(at) },
        Unmet::InstructorSaw { asks: Ask::Held, at: None },
        Unmet::AnsweredFirst { decision: Decision::Drive },
        Unmet::AnsweredFirst { decision: Decision::Pattern },
        Unmet::AnsweredFirst { decision: Decision::Lifts },
        Unmet::AnsweredFirst { decision: Decision::Order },
        Unmet::AnsweredFirst { decision: Decision::Target },
        Unmet::InOrder { n: 12, act: Act::SetStand, at: Some(at) },
        Unmet::InOrder { n: 1, act: Act::SecureVehicle, at: None },
        Unmet::Ready,
        Unmet::GearRated { read: None },
        Unmet::GearRated { read: Some(("17000 lb".parse().unwrap(), "3 t".parse().unwrap())) },
        Unmet::PairMatched { at, why: Mismatch::NotKnown },
        Unmet::PairMatched {
            at,
            why: Mismatch::Apart { by: "19.1 mm".parse().unwrap(), allowed: "12.7 mm".parse().unwrap() },
        },
        Unmet::PairMatched { at, why: Mismatch::LargerInside { by: "2.1 mm".parse().unwrap() } },
        Unmet::PairSeen { at },
        Unmet::OuterLoosened { at, nuts: vec![3] },
        Unmet::OuterLoosened { at, nuts: vec![1, 2] },
        Unmet::InnerSet { at, nuts: vec![3] },
        Unmet::InnerSet { at, nuts: vec![1, 2] },
        Unmet::NoOrder { refusal: Refusal::NotWithThisGear { lacking: vec![Lacking::Stands { at_least: 2 }] } },
    ]
}

#[test]
fn every_condition_has_a_name_and_its_gate_a_sentence() {
    let layout = Layout::two_axles(true);
    let all = unmet();
    for condition in Condition::ALL {
        assert!(all.iter().any(|unmet| unmet.condition() == condition), "{condition:?} is not tried here");
    }
    for words in everywhere() {
        for condition in Condition::ALL {
            assert!(words.has(&format!("condition-{}", condition.code())), "{condition:?} has no name");
        }
        for unmet in &all {
            let said = words.unmet(unmet, &layout);
            assert!(said.ends_with('.') && !said.contains("unmet-") && !said.contains('{'), "{said}");
        }
    }
}

#[test]
fn gates_say_what_they_wait_for_and_what_to_do() {
    let words = Words::new(Speech::default());
    let said: Vec<String> = unmet().iter().map(|unmet| words.unmet(unmet, &Layout::two_axles(true))).collect();
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn a_mark_that_does_not_fit_names_both_tires_and_where_the_one_read_belongs() {
    let words = Words::new(Speech::default());
    let unmet = Unmet::MarkFits {
        at: Place::single(1, Side::Right),
        read: Some("C".into()),
        wanted: Some("B".into()),
        belongs: Some(Place::single(2, Side::Left)),
    };
    let said = words.unmet(&unmet, &Layout::two_axles(false));
    assert!(said.contains("tire C") && said.contains("tire B") && said.contains("RL"), "{said}");
}

#[test]
fn a_bad_procedure_file_is_told_with_file_line_and_reason() {
    let words = Words::new(Speech::default());
    let kinds = [
        BadKind::Unreadable("expected a string".into()),
        BadKind::TooLarge,
        BadKind::StepCount(0),
        BadKind::StepCount(201),
        BadKind::TwiceTheId("rock".into()),
        BadKind::NoSentence("rock".into()),
        BadKind::Choices("rock".into()),
        BadKind::After("rock".into()),
        BadKind::Caution("boo".into()),
        BadKind::Circumstance("moon".into()),
        BadKind::Id,
        BadKind::NothingToMeet { step: "full".into(), condition: Condition::Rocked },
        BadKind::DangerLeftOut(CautionId::Lowering),
        BadKind::NoSignature,
        BadKind::NoGate { step: "off".into(), condition: Condition::Held },
    ];
    let said: Vec<String> =
        kinds.into_iter().map(|kind| words.bad_procedure(&Bad { file: "mine.toml".into(), line: 7, kind })).collect();
    insta::assert_snapshot!(said.join("\n"));
}

/// What can hurt a person in any rotation; a built-in procedure names each before some step.
const HAZARDS: &[&str] = &[
    "chips-and-noise",
    "turning-socket",
    "thrown-socket",
    "gun-direction",
    "socket-slips",
    "nut-in-socket",
    "falling-wheel",
    "unheld-wheel",
    "heavy-wheel",
    "loose-wheel",
    "lost-nuts",
    "hose-underfoot",
    "under-vehicle",
    "lift-points",
    "overloaded-gear",
    "lowering",
    "turning-wheel",
    "hot-brakes",
    "brake-dust",
    "pinched-fingers",
    "crossed-thread",
    "crooked-seat",
    "limiting-bar",
    "wheel-turns",
    "tire-bursts",
    "run-flat",
    "nuts-settle",
    "old-marks",
];

#[test]
fn every_hazard_stands_before_a_step_and_no_step_carries_more_than_six() {
    for procedure in raising().into_iter().filter(|procedure| !at_the_roadside(procedure)) {
        let named: Vec<&String> = procedure.steps.iter().flat_map(|step| &step.cautions).collect();
        let air = procedure.steps.iter().any(|step| step.asks == Ask::Pressure);
        let inflating = ["tire-bursts", "run-flat"];
        for hazard in HAZARDS.iter().filter(|hazard| air || !inflating.contains(hazard)) {
            assert!(named.iter().any(|code| code == hazard), "{}: nobody is told of {hazard}", procedure.id);
        }
        let on = |support: &str| procedure.settle.iter().flatten().any(|code| code == support);
        let mut own: Vec<&str> = Vec::new();
        if on("stands") {
            own.extend(["vehicle-rolls", "jack-alone", "crack-on-ground"]);
        }
        if on("lift") {
            own.push("falling-tools");
        }
        assert!(own.iter().all(|hazard| named.iter().any(|code| code == hazard)), "{}", procedure.id);
        for step in &procedure.steps {
            assert!(step.cautions.len() <= 6, "{}: {} cautions", step.id, step.cautions.len());
        }
    }
}

/// The actions a jack asks for, with one stand or more, without, and on the road.
#[test]
fn each_action_of_a_lift_has_its_step_with_all_the_cautions_of_that_action() {
    let procedures = procedures();
    let by_lift = procedures.iter().find(|procedure| procedure.id == "rotation-lift-by-lift").expect("built in");
    // Runways and arms belong to lifts, locks too; the second nut to duals, which no job has yet.
    let of_lifts = [
        Act::RaiseRunways,
        Act::LowerRunways,
        Act::SetArms,
        Act::RaiseClear,
        Act::RestOnLocks,
        Act::SeeLocks,
        Act::HoldNut,
    ];
    for act in Act::ALL.into_iter().filter(|act| !of_lifts.contains(act)) {
        let mut steps = by_lift.steps.iter().filter(|step| step.act == Some(act)).peekable();
        assert!(steps.peek().is_some(), "{act:?} has no step");
        let named: Vec<&String> = steps.flat_map(|step| &step.cautions).collect();
        for caution in act.cautions() {
            assert!(named.iter().any(|code| *code == caution.code()), "{act:?} leaves out {}", caution.code());
        }
    }
}

#[test]
fn every_caution_of_a_procedure_is_known_and_has_at_most_20_words() {
    for words in everywhere() {
        for code in procedures().iter().flat_map(|procedure| &procedure.steps).flat_map(|step| &step.cautions) {
            let caution = CautionId::of_code(code).unwrap_or_else(|| panic!("{code} is not known"));
            let said = words.caution(caution);
            assert!(!said.starts_with("caution-"), "{code} has no sentence");
            assert!(said.split_whitespace().count() <= 20, "“{said}”");
        }
    }
}

#[test]
fn a_file_with_a_caution_or_circumstance_nobody_knows_is_refused_at_its_line() {
    let head = "id = \"x\"\nversion = 1\n\n[[step]]\nid = \"a\"\ntext = \"Look.\"\nasks = \"seen\"\n";
    let caution = Procedure::parse("mine.toml", &format!("{head}cautions = [\"boo\"]\n")).expect_err("unknown");
    assert_eq!((caution.line, caution.kind), (4, BadKind::Caution("boo".into())));
    let when = Procedure::parse("mine.toml", &format!("{head}when = [\"moon\"]\n")).expect_err("unknown");
    assert_eq!((when.line, when.kind), (4, BadKind::Circumstance("moon".into())));
}

#[test]
fn no_file_leaves_out_a_danger_waits_for_nothing_or_has_an_id_that_names_a_path() {
    let lift = include_str!("../../../core/procedures/rotation-on-a-lift.toml");
    let stands = include_str!("../../../core/procedures/rotation-with-jack-and-stands.toml");
    let kind = |text: &str| Procedure::parse("mine.toml", text).map(|_| ()).map_err(|bad| bad.kind);
    assert_eq!(kind(lift), Ok(()));
    let without = |text: &str, code: &str| text.replace(&format!("\"{code}\""), "\"lost-nuts\"");
    assert_eq!(kind(&without(lift, "lowering")), Err(BadKind::DangerLeftOut(CautionId::Lowering)));
    assert_eq!(kind(&without(stands, "jack-alone")), Err(BadKind::DangerLeftOut(CautionId::JackAlone)));
    let rocked = lift.replace("asks = \"rocked\"", "asks = \"seen\"");
    assert_eq!(kind(&rocked), Err(BadKind::NothingToMeet { step: "full".into(), condition: Condition::Rocked }));
    for id in ["../../escaped", "a b", "", "a/b"] {
        assert_eq!(kind(&lift.replacen("rotation-on-a-lift", id, 1).replacen("# A", "#", 1)), Err(BadKind::Id), "{id}");
    }
}
