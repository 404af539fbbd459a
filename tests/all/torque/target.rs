use lugbook::fastener::{Printed, Scale, TorqueSpec, Wrench, accuracy_of};
use lugbook::fastening::{Adapter, BadAdapter, NoTarget, Problem, target, target_through};
use lugbook::measure::{Span, SpanUnit, Torque, TorqueUnit};
use proptest::prelude::*;

use crate::standards::{first_number, numbers, table, vectors, worked};

fn spec(text: &str) -> TorqueSpec {
    TorqueSpec::printed([text.parse().unwrap()])
}

fn wrench(percent: f64, step: &str) -> Wrench {
    Wrench::new(percent, step.parse().unwrap())
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-9
}

#[test]
fn the_target_is_the_step_with_the_largest_margin() {
    for (step, wanted, margin) in [("1 N.m", 137.0, 6.52), ("5 N.m", 135.0, 4.6)] {
        let found = target(&spec("125..150 N.m"), &wrench(4.0, step)).unwrap();
        assert_eq!((found.target.value(), found.setting.value()), (wanted, wanted));
        assert!(near(found.margin.unwrap(), margin), "{:?}", found.margin);
        let band = found.band.unwrap();
        assert_eq!((band.min.to_string(), band.max.to_string()), ("125 N.m".to_owned(), "150 N.m".to_owned()));
        assert!(found.problems.is_empty());
    }
}

#[test]
fn the_trades_habit_of_taking_the_middle_agrees() {
    // Common practice, no source: 72 to 87 ft·lb, the middle taken as 80 on a 5 ft·lb scale.
    let found = target(&spec("72..87 ft-lb"), &wrench(4.0, "5 ft-lb")).unwrap();
    assert_eq!(found.target.to_string(), "80 ft.lb");
    assert!(found.margin.unwrap() > 0.0);
}

#[test]
fn every_makers_row_gives_the_target_found_by_trying_all_steps() {
    let rows = table("wheel_torque.csv");
    let mut compared = 0;
    for frozen in vectors("torque_targets.csv") {
        let line = frozen.number("line") as usize;
        let row = rows.iter().find(|row| row.line == line).unwrap();
        assert_eq!(row.text("thread"), frozen.text("thread"), "line {line}");
        let [min_nm, max_nm, min_ftlb, max_ftlb] = ["min_Nm", "max_Nm", "min_ftlb", "max_ftlb"].map(|c| row.text(c));
        let printed = format!("{min_nm}..{max_nm} N.m, {min_ftlb}..{max_ftlb} ft.lb");
        assert_eq!(printed, frozen.text("printed"), "line {line}: make the vectors anew");
        let newton: Printed = format!("{min_nm}..{max_nm} N.m").parse().unwrap();
        let foot: Printed = format!("{min_ftlb}..{max_ftlb} ft.lb").parse().unwrap();
        let step = format!("{} {}", frozen.text("step"), frozen.text("unit"));
        let found = target(&TorqueSpec::printed([newton, foot]), &wrench(4.0, &step));
        if frozen.text("target") == "none" {
            assert!(matches!(found, Err(NoTarget::NoStepInBand { .. })), "line {line}, {step}: {found:?}");
            continue;
        }
        let found = found.unwrap_or_else(|e| panic!("line {line}, {step}: {e:?}"));
        assert!(near(found.target.value(), frozen.number("target")), "line {line}, {step}: {found:?}");
        match found.margin {
            None => assert_eq!(frozen.text("margin"), "", "line {line}"),
            Some(margin) => {
                // Where printed units clash one is converted, by factors of seven digits.
                let slack = if row.text("note").is_empty() { 1e-9 } else { 1e-4 };
                let off = (margin - frozen.number("margin")).abs();
                assert!(off < slack, "line {line}, {step}: {margin}");
            }
        }
        compared += 1;
    }
    assert_eq!(compared, rows.len() * 4);
}

#[test]
fn a_clash_of_units_gives_a_target_in_both_printings() {
    let spec = TorqueSpec::printed(["190..220 N.m".parse().unwrap(), "130..160 ft-lb".parse().unwrap()]);
    let found = target(&spec, &wrench(4.0, "1 N.m")).unwrap();
    assert!(matches!(found.problems.first(), Some(Problem::UnitClash(_))));
    for printed in &spec.printed {
        let (low, high) = printed.ends_in(TorqueUnit::NewtonMetre);
        assert!((low..=high).contains(&found.target.value()), "{printed}");
    }
}

#[test]
fn units_that_contradict_each_other_give_no_target() {
    let spec = TorqueSpec::printed(["100 N.m".parse().unwrap(), "100 ft-lb".parse().unwrap()]);
    assert!(matches!(target(&spec, &wrench(4.0, "1 N.m")), Err(NoTarget::UnitClash(_))));
}

#[test]
fn a_single_value_has_no_band() {
    let found = target(&spec("135 N.m"), &wrench(4.0, "1 N.m")).unwrap();
    assert_eq!((found.target.value(), found.band, found.margin), (135.0, None, None));
    assert!(found.problems.is_empty());
    let found = target(&spec("137 N.m"), &wrench(4.0, "5 N.m")).unwrap();
    assert_eq!(found.target.value(), 135.0);
    assert!(matches!(found.problems[..], [Problem::NotOnScale { wanted: 137.0, .. }]));
    let between = target(&spec("132.5 N.m"), &wrench(4.0, "5 N.m")).unwrap();
    assert_eq!(between.target.value(), 130.0, "of two steps as near, the lower");
}

#[test]
fn a_value_printed_in_another_unit_is_converted_and_told() {
    let found = target(&spec("125..150 N.m"), &wrench(4.0, "5 ft.lb")).unwrap();
    assert_eq!(found.target.to_string(), "100 ft.lb");
    assert!(matches!(found.problems.first(), Some(Problem::Converted { .. })));
    let both = TorqueSpec::printed(["125..150 N.m".parse().unwrap(), "90..110 ft-lb".parse().unwrap()]);
    let found = target(&both, &wrench(4.0, "5 ft.lb")).unwrap();
    assert_eq!(found.band.unwrap().min.to_string(), "90 ft.lb", "the printed figure, not a conversion");
    assert!(found.problems.is_empty());
}

#[test]
fn of_two_steps_with_the_same_margin_the_lower_is_taken() {
    let found = target(&spec("100..110 N.m"), &wrench(0.0, "2 N.m")).unwrap();
    assert_eq!((found.target.value(), found.margin), (104.0, Some(4.0)));
}

#[test]
fn a_wrench_too_poor_for_the_range_is_told() {
    let found = target(&spec("100..104 N.m"), &wrench(4.0, "1 N.m")).unwrap();
    assert_eq!(found.target.value(), 102.0);
    assert!(near(found.margin.unwrap(), -2.08));
    assert!(matches!(found.problems[..], [Problem::WorstReadingOutside { by }] if near(by, 2.08)));
}

#[test]
fn a_scale_without_a_step_in_the_range_gives_no_target() {
    let found = target(&spec("101..104 N.m"), &wrench(4.0, "5 N.m"));
    assert_eq!(found, Err(NoTarget::NoStepInBand { below: 100.0, above: 105.0, unit: "N.m" }));
}

#[test]
fn a_scale_that_ends_early_is_told_or_refused() {
    let mut short = wrench(4.0, "5 N.m");
    let scale = |low: &str, high: &str| Some(Scale { low: low.parse().unwrap(), high: high.parse().unwrap() });
    short.range = scale("40 N.m", "130 N.m");
    let found = target(&spec("125..150 N.m"), &short).unwrap();
    assert_eq!(found.target.value(), 130.0);
    assert!(found.problems.iter().any(|p| matches!(p, Problem::ScaleEnds { better } if better.value() == 135.0)));
    short.range = scale("40 N.m", "110 N.m");
    assert_eq!(target(&spec("125..150 N.m"), &short), Err(NoTarget::OutsideScale));
    assert_eq!(target(&spec("135 N.m"), &short), Err(NoTarget::OutsideScale));
    short.range = scale("30 N.m", "20 N.m");
    assert_eq!(target(&spec("125..150 N.m"), &short), Err(NoTarget::OutsideScale));
}

#[test]
fn nothing_printed_and_no_accuracy_give_no_target() {
    assert_eq!(target(&TorqueSpec::printed([]), &wrench(4.0, "1 N.m")), Err(NoTarget::NothingPrinted));
    for percent in [-1.0, 50.0, f64::NAN, f64::INFINITY] {
        assert_eq!(target(&spec("125..150 N.m"), &wrench(percent, "1 N.m")), Err(NoTarget::Accuracy));
    }
}

#[test]
fn printed_torques_read_in_every_form_and_refuse_what_is_none() {
    for (text, shown) in [
        ("125..150 N.m", "125..150 N.m"),
        ("125-150 Nm", "125..150 N.m"),
        ("125 \u{2013} 150 N·m", "125..150 N.m"),
        ("90 to 110 lb-ft", "90..110 ft.lb"),
        ("100 ft-lb", "100 ft.lb"),
        ("12,5..15,5 kgf.m", "12.5..15.5 kgf.m"),
        ("135 +/- 10 N.m", "125..145 N.m"),
        ("100..100 ft.lb", "100 ft.lb"),
    ] {
        let printed: Printed = text.parse().unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(printed.to_string(), shown, "{text}");
        let stored = serde_json::to_string(&printed).unwrap();
        assert_eq!(serde_json::from_str::<Printed>(&stored).unwrap(), printed, "{text}");
    }
    for text in ["", "N.m", "150..125 N.m", "100", "100 psi", "90 ft-lb..150 N.m", "5 +/- 10 N.m", "1..2..3 N.m"] {
        assert!(text.parse::<Printed>().is_err(), "{text}");
    }
}

#[test]
fn accuracy_reads_with_sign_percent_and_comma() {
    assert_eq!(accuracy_of("4%"), Ok(4.0));
    assert_eq!(accuracy_of("±4 %"), Ok(4.0));
    assert_eq!(accuracy_of("+/-2,5%"), Ok(2.5));
    assert!(["", "%", "-4%", "50%", "four"].iter().all(|text| accuracy_of(text).is_err()));
}

fn adapter(lever: f64, extension: f64, angle_degrees: f64, unit: SpanUnit) -> Adapter {
    let span = |value| Span::new(value, unit).unwrap();
    Adapter { lever: span(lever), extension: span(extension), angle_degrees }
}

#[test]
fn adapter_settings_are_those_of_the_worked_examples() {
    // Army TM 1-1500-204-23-9 and TM 9-254, a Navy manual, two aircraft manuals: rows name theirs.
    let mut compared = 0;
    for row in worked("torque extension") {
        let given = numbers(row.text("input"));
        let (wanted, lever) = (given[0], given[1]);
        let (extension, angle) = match given.get(2) {
            Some(extension) if row.text("check").ends_with("(shorter)") => (extension.abs(), 180.0),
            Some(extension) => (*extension, given.get(3).copied().unwrap_or(0.0)),
            None => panic!("{}", row.text("input")),
        };
        let factor = adapter(lever, extension, angle, SpanUnit::Inch).factor().unwrap();
        let expected = first_number(row.text("expected"));
        assert!((wanted * factor - expected).abs() < 0.005, "{}: {}", row.text("input"), wanted * factor);
        compared += 1;
    }
    assert_eq!(compared, 7);
}

#[test]
fn with_an_adapter_the_setting_is_on_the_scale_and_the_nut_in_the_range() {
    let long = adapter(400.0, 100.0, 0.0, SpanUnit::Millimetre);
    let found = target_through(&spec("125..150 N.m"), &wrench(4.0, "1 N.m"), &long).unwrap();
    assert_eq!(found.setting.value(), 110.0);
    assert!(near(found.target.value(), 137.5));
    assert!(near(found.margin.unwrap(), 7.0));
    let square = adapter(400.0, 100.0, 90.0, SpanUnit::Millimetre);
    assert_eq!(
        target_through(&spec("125..150 N.m"), &wrench(4.0, "1 N.m"), &square),
        target(&spec("125..150 N.m"), &wrench(4.0, "1 N.m"))
    );
}

#[test]
fn adapters_that_cannot_be_are_refused() {
    let mm = SpanUnit::Millimetre;
    assert_eq!(adapter(400.0, 50.0, 181.0, mm).factor(), Err(BadAdapter::Angle));
    assert_eq!(adapter(400.0, 50.0, f64::NAN, mm).factor(), Err(BadAdapter::Angle));
    assert_eq!(adapter(0.0, 50.0, 0.0, mm).factor(), Err(BadAdapter::Lever));
    assert_eq!(adapter(400.0, 300.0, 180.0, mm).factor(), Err(BadAdapter::FoldedBack));
}

fn any_unit() -> impl Strategy<Value = TorqueUnit> {
    prop_oneof![Just(TorqueUnit::NewtonMetre), Just(TorqueUnit::FootPound), Just(TorqueUnit::KilogramMetre)]
}

proptest! {
    #[test]
    fn no_step_inside_the_range_has_a_better_margin(
        low in 20u32..700, width in 1u32..120, tenths in 0u32..80, step in 1u32..25, halves in any::<bool>(),
    ) {
        let step = f64::from(step) / if halves { 2.0 } else { 1.0 };
        let (min, max) = (f64::from(low), f64::from(low + width));
        let accuracy = f64::from(tenths) / 1000.0;
        let spec = TorqueSpec::printed([Printed::range(
            Torque::new(min, TorqueUnit::NewtonMetre).unwrap(),
            Torque::new(max, TorqueUnit::NewtonMetre).unwrap(),
        ).unwrap()]);
        let wrench = Wrench::new(accuracy * 100.0, Torque::new(step, TorqueUnit::NewtonMetre).unwrap());
        let margin = |t: f64| (t * (1.0 - accuracy) - min).min(max - t * (1.0 + accuracy));
        let inside: Vec<f64> = (1..).map(|n| f64::from(n) * step).take_while(|t| *t <= max).filter(|t| *t >= min).collect();
        match target(&spec, &wrench) {
            Err(NoTarget::NoStepInBand { below, above, .. }) => {
                prop_assert!(inside.is_empty());
                prop_assert!(below < min && above > max);
            }
            Err(other) => prop_assert!(false, "{other:?}"),
            Ok(found) => {
                let t = found.target.value();
                prop_assert!(t >= min && t <= max);
                prop_assert!(((t / step).round() * step - t).abs() < 1e-9, "{t} is a multiple of {step}");
                prop_assert!((found.margin.unwrap() - margin(t)).abs() < 1e-9);
                let best = inside.iter().copied().map(margin).fold(f64::MIN, f64::max);
                prop_assert!(margin(t) > best - 1e-9, "{t}: {} against {best}", margin(t));
                let first = inside.iter().copied().find(|t| margin(*t) > best - 1e-9).unwrap();
                prop_assert!((first - t).abs() < 1e-9, "the lower of equals");
                prop_assert_eq!(margin(t) < -1e-9, found.problems.iter().any(|p| matches!(p, Problem::WorstReadingOutside { .. })));
            }
        }
    }

    #[test]
    fn a_target_is_never_outside_the_printed_range(
        low in 20.0f64..700.0, width in 0.5f64..120.0, percent in 0.0f64..10.0, step in 0.1f64..20.0,
        printed_in in any_unit(), scale_in in any_unit(), lever in 200.0f64..800.0, extension in 0.0f64..300.0, angle in 0.0f64..120.0,
    ) {
        let torque = |newton: f64, unit| Torque::new(newton, TorqueUnit::NewtonMetre).unwrap().to_unit(unit);
        let spec = TorqueSpec::printed([Printed::range(torque(low, printed_in), torque(low + width, printed_in)).unwrap()]);
        let wrench = Wrench::new(percent, torque(step, scale_in));
        let adapter = adapter(lever, extension, angle, SpanUnit::Millimetre);
        for found in [target(&spec, &wrench), target_through(&spec, &wrench, &adapter)].into_iter().flatten() {
            let newton = found.target.in_unit(TorqueUnit::NewtonMetre);
            prop_assert!(newton > low - 1e-6 && newton < low + width + 1e-6, "{newton} in {low}..{}", low + width);
            let count = found.setting.value() / wrench.step.value();
            prop_assert!((count - count.round()).abs() < 1e-6);
            prop_assert_eq!(found.target.unit(), scale_in);
        }
    }
}
