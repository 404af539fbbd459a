//! What a person reads about tightening.

use lugbook::fastener::{
    Bar, Calibration, Difference, Gun, Lubrication, NutOutcome, Printed, RecheckAt, TorqueSpec, Wrench,
};
use lugbook::fastening::{
    Adapter, BadAdapter, BarWarning, Caution, Finish, Gate, Mounting, NoTarget, Overrun, Pass, Plan, Problem, Request,
    Stop, advise, bench_chart, bench_rows, clamp_load, nut_factors, passes, plan, recheck, target,
};
use lugbook::measure::{DistanceUnit, Torque, TorqueUnit};
use lugbook::words::{Say, Speech, Units, Words};

fn words() -> Words {
    Words::new(Speech::default())
}

fn torque(text: &str) -> Torque {
    text.parse().unwrap()
}

fn printed(text: &str) -> Printed {
    text.parse().unwrap()
}

fn planned(spec: &str, step: &str, adapter: Option<&Adapter>) -> Plan {
    let spec = TorqueSpec::printed([printed(spec)]);
    let wrench = Wrench::new(4.0, torque(step));
    let mut request = Request::new(&spec, &wrench, 5);
    request.adapter = adapter;
    plan(&request).unwrap()
}

/// One of each caution, in the order of the types.
fn cautions() -> Vec<Caution> {
    let clash = TorqueSpec::printed([printed("190..220 N.m"), printed("130..160 ft-lb")]).unit_clash().unwrap();
    let span = |text: &str| text.parse().unwrap();
    let thread = |text: &str| text.parse().unwrap();
    vec![
        Caution::Target(Problem::UnitClash(clash)),
        Caution::Target(Problem::Converted { from: printed("90..110 ft-lb") }),
        Caution::Target(Problem::WorstReadingOutside { by: 2.08 }),
        Caution::Target(Problem::NotOnScale { wanted: 137.0, off_percent: 1.459 }),
        Caution::Target(Problem::ScaleEnds { better: torque("135 N.m") }),
        Caution::Bar(BarWarning::MayClickWithoutMoving),
        Caution::Bar(BarWarning::GunNotKnown),
        Caution::Bar(BarWarning::GunTooStrong { gun: torque("900 N.m"), bar: torque("600 N.m") }),
        Caution::Bar(BarWarning::HexNotKnown),
        Caution::Bar(BarWarning::HexDiffers { bar: span("19 mm"), nut: span("21 mm") }),
        Caution::Calibration { state: Calibration::NotKnown },
        Caution::Calibration { state: Calibration::Overdue },
        Caution::Calibration { state: Calibration::InTheFuture },
        Caution::LubricationNotKnown,
        Caution::Lubrication { manual: Lubrication::Dry, found: Lubrication::Oiled },
        Caution::Thread { manual: thread("M14 x 1.5"), found: thread("1/2-20 UNF") },
        Caution::SeatNotKnown,
        Caution::LeftHand,
        Caution::LockKey,
    ]
}

fn stops() -> Vec<Stop> {
    let clash = TorqueSpec::printed([printed("100 N.m"), printed("100 ft-lb")]).unit_clash().unwrap();
    let seat = |difference| Stop::Seat { difference };
    let adapter = |reason| Stop::Target(NoTarget::Adapter { reason });
    vec![
        seat(Difference::Shape),
        seat(Difference::ConeAngle),
        seat(Difference::BallRadius),
        Stop::Target(NoTarget::NothingPrinted),
        Stop::Target(NoTarget::UnitClash(clash)),
        Stop::Target(NoTarget::Accuracy),
        Stop::Target(NoTarget::NoStepInBand { below: 100.0, above: 105.0, unit: "ft.lb" }),
        Stop::Target(NoTarget::OutsideScale),
        adapter(BadAdapter::Angle),
        adapter(BadAdapter::Lever),
        adapter(BadAdapter::FoldedBack),
        Stop::Studs { given: 2 },
        Stop::MakersOrder,
    ]
}

/// Everything that the words about tightening can say.
fn all() -> Vec<String> {
    let words = words();
    let mut lines = words.tightening(&planned("125..150 N.m", "1 N.m", None));
    lines.extend(words.tightening(&planned("100..104 N.m", "1 N.m", None)));
    lines.extend(words.tightening(&planned("100 ft.lb", "5 ft.lb", None)));
    let adapter =
        Adapter { lever: "400 mm".parse().unwrap(), extension: "100 mm".parse().unwrap(), angle_degrees: 0.0 };
    lines.extend(words.tightening(&planned("125..150 N.m", "1 N.m", Some(&adapter))));
    lines.extend(cautions().iter().map(|caution| words.tightening_caution(caution, TorqueUnit::NewtonMetre)));
    lines.extend(stops().iter().map(|stop| stop.say(&words)));
    for rating in ["110 N.m", "125 N.m", "140 N.m"] {
        let gun = Gun { greatest: Some(torque("500 N.m")), power: None };
        lines.push(advise(&torque("135 N.m"), &Bar::new(torque(rating)), Some(&gun), None).say(&words));
    }
    let wrench = Wrench::new(4.0, torque("10 N.m"));
    let found = target(&TorqueSpec::printed([printed("610..678 N.m")]), &wrench).unwrap();
    for pass in [Pass::FirstFinal, Pass::Recheck] {
        for mounting in [Mounting::OneSet, Mounting::StudPilotedDual] {
            lines.extend(passes(&found, &wrench, mounting, pass).iter().map(|round| round.say(&words)));
        }
    }
    for outcome in
        [NutOutcome::Proven, NutOutcome::BackOffQuarterAndAgain, NutOutcome::Held, NutOutcome::MovedRecordAndRepeat]
    {
        lines.push(outcome.say(&words));
    }
    for overrun in [Overrun::Within, Overrun::LoosenLookAgain, Overrun::ReplaceStud] {
        lines.push(overrun.say(&words));
    }
    for gate in [Gate::Open, Gate::Shut, Gate::OpenedWithoutSpecification] {
        lines.push(gate.say(&words));
    }
    let mut spec = TorqueSpec::printed([printed("100 ft-lb")]);
    lines.extend(recheck(&spec, DistanceUnit::Kilometre).iter().map(|at| at.say(&words)));
    spec.recheck = vec![
        RecheckAt { from: None, by: "25 mi".parse().unwrap() },
        RecheckAt { from: "50 mi".parse().ok(), by: "100 mi".parse().unwrap() },
    ];
    lines.extend(recheck(&spec, DistanceUnit::Mile).iter().map(|at| at.say(&words)));
    lines.extend(bench_rows().map(|row| row.say(&words)));
    for thread in ["M14 x 1.5", "M8"] {
        lines.push(bench_chart(thread.parse().unwrap()).unwrap_err().say(&words));
    }
    let dry = nut_factors().iter().find(|factor| factor.finish == Finish::DrySteel).unwrap();
    lines.push(clamp_load(&torque("135 N.m"), "M12 x 1.5".parse().unwrap(), dry).unwrap().say(&words));
    lines
}

#[test]
fn everything_about_tightening_reads_as_plain_sentences() {
    insta::assert_snapshot!(all().join("\n"));
}

#[test]
fn no_sentence_about_tightening_is_missing_unfilled_or_long() {
    for line in all() {
        assert!(line.contains(' ') && line.ends_with('.'), "“{line}” is no sentence");
        assert!(!line.contains(['{', '}', '$']), "“{line}” is not filled");
        for sentence in line.split(['.', ':']) {
            assert!(sentence.split_whitespace().count() <= 24, "“{sentence}” is long");
        }
    }
}

#[test]
fn a_chart_value_is_never_shown_without_its_warning() {
    for row in bench_rows() {
        assert!(row.say(&words()).ends_with("Chart value, not for your car."));
    }
}

#[test]
fn a_wrench_is_told_its_own_unit_whatever_the_person_chose() {
    let words = Words::new(Speech { units: Units::Us, ..Speech::default() });
    let said = words.tightening(&planned("125..150 N.m", "1 N.m", None));
    assert_eq!(said[0], "Set the wrench to 137 N·m.");
}
