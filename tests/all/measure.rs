//! Readings: conversions against tables and a unit library, and reading back what is printed.

use std::fmt::Debug;

use lugbook::inflation::{ATMOSPHERE_KPA, at_temperature};
use lugbook::measure::{
    DepthUnit, DistanceUnit, KGF_N, LoadUnit, Misread, PressureUnit, Reading, SpanUnit, SpeedUnit, THIRTY_SECOND_MM,
    TemperatureUnit, TorqueUnit, Unit, number_of, plain,
};
use proptest::prelude::*;

use crate::standards::{table, vectors};

/// How far a conversion may be off, as a share: the unit crate gives some of its factors to seven digits.
const FACTOR: f64 = 1e-15;

fn of<U: Unit>(code: &str) -> Option<U> {
    U::ALL.iter().copied().find(|unit| unit.code() == code)
}

/// A value of a unit in the base unit of its kind, whichever kind has a unit of that code.
fn in_base(code: &str, value: f64) -> Option<(f64, &'static str)> {
    fn of_kind<U: Unit>(code: &str, value: f64) -> Option<(f64, &'static str)> {
        let base = U::ALL[0];
        Some((Reading::new(value, of::<U>(code)?).ok()?.in_unit(base), base.code()))
    }
    of_kind::<DepthUnit>(code, value)
        .or_else(|| of_kind::<TorqueUnit>(code, value))
        .or_else(|| of_kind::<PressureUnit>(code, value))
        .or_else(|| of_kind::<DistanceUnit>(code, value))
        .or_else(|| of_kind::<TemperatureUnit>(code, value))
        .or_else(|| of_kind::<LoadUnit>(code, value))
        .or_else(|| of_kind::<SpeedUnit>(code, value))
        .or_else(|| of_kind::<SpanUnit>(code, value))
}

fn close(found: f64, wanted: f64, what: &str) {
    assert!((found - wanted).abs() <= wanted.abs() * FACTOR, "{what}: {found}, not {wanted}");
}

#[test]
fn conversions_are_those_of_the_table() {
    // The table's exact rationals agree with a general-purpose unit library.
    let ours = |from: &str| match from {
        "in" => Some("in"),
        "mi" => Some("mi"),
        "lb" => Some("lb"),
        "lbf.ft" => Some("ft.lb"),
        "kgf.m" => Some("kgf.m"),
        "psi" => Some("psi"),
        "bar" => Some("bar"),
        "1/32 in" => Some("1/32in"),
        _ => None,
    };
    let mut compared = 0;
    for row in table("conversions.csv") {
        let (from, to) = (row.text("from"), row.text("to"));
        let what = format!("{from} to {to}");
        match (from, to) {
            ("bar", "psi") => {
                let bar = Reading::new(1.0, PressureUnit::Bar).unwrap();
                close(bar.in_unit(PressureUnit::Psi), row.number("factor"), &what);
            }
            ("kg", "lb") => {
                let kg = Reading::new(1.0, LoadUnit::Kilogram).unwrap();
                close(kg.in_unit(LoadUnit::Pound), row.number("factor"), &what);
            }
            ("N.m", "lbf.ft") => {
                let newton = Reading::new(1.0, TorqueUnit::NewtonMetre).unwrap();
                close(newton.in_unit(TorqueUnit::FootPound), row.number("factor"), &what);
            }
            ("gn", _) => assert_eq!(KGF_N, row.number("factor")),
            ("atm", _) => assert_eq!(ATMOSPHERE_KPA, row.number("factor")),
            ("degF", _) => {
                assert_eq!(row.text("factor"), "(F-32)/1.8");
                for f in [-40.0, 0.0, 32.0, 70.0, 212.0] {
                    let read = Reading::new(f, TemperatureUnit::Fahrenheit).unwrap();
                    assert!((read.in_unit(TemperatureUnit::Celsius) - (f - 32.0) / 1.8).abs() < 1e-9, "{f} °F");
                }
            }
            _ => {
                let Some(code) = ours(from) else { continue };
                let (found, base) = in_base(code, 1.0).unwrap();
                assert_eq!(base, to, "{what}");
                close(found, row.number("factor"), &what);
            }
        }
        compared += 1;
    }
    assert_eq!(compared, 14, "rows of units that the product has");
    assert_eq!(THIRTY_SECOND_MM, 25.4 / 32.0);
}

#[test]
fn the_tables_other_units_agree_with_each_other() {
    let rows = table("conversions.csv");
    let factor = |from: &str| rows.iter().find(|row| row.text("from") == from).unwrap().number("factor");
    let same = |found: f64, wanted: f64| assert!((found - wanted).abs() <= wanted * 1e-15, "{found}, not {wanted}");
    same(factor("ft"), factor("in") * 12.0 / 1000.0);
    same(factor("lbf"), factor("lb") * factor("gn"));
    same(factor("lbf.ft"), factor("lbf") * factor("ft"));
    same(factor("lbf.in"), factor("lbf.ft") / 12.0);
    same(factor("kgf/cm2"), factor("gn") * 10.0);
    same(factor("1/64 in"), factor("1/32 in") / 2.0);
    same(factor("mil (0.001 in)"), factor("in") / 1000.0);
    let kelvin = rows.iter().find(|row| row.text("to") == "K").unwrap().text("factor");
    let zero: f64 = kelvin.strip_prefix("C+").unwrap().parse().unwrap();
    let celsius = |value| Reading::new(value, TemperatureUnit::Celsius).unwrap();
    let gauge = Reading::new(250.0, PressureUnit::Kilopascal).unwrap();
    let warm = at_temperature(gauge, celsius(0.0), celsius(100.0)).unwrap().value();
    let wanted = (250.0 + ATMOSPHERE_KPA) * (zero + 100.0) / zero - ATMOSPHERE_KPA;
    assert!((warm - wanted).abs() < 1e-9, "{warm}, not {wanted}");
}

#[test]
fn conversions_are_those_of_a_unit_library() {
    for row in vectors("unit_values.csv") {
        let (found, base) = in_base(row.text("unit"), row.number("value")).unwrap();
        assert_eq!(base, row.text("base"), "line {}", row.line);
        let wanted = row.number("in_base");
        let off = (found - wanted).abs();
        assert!(off <= wanted.abs() * FACTOR + 1e-9, "line {}: {found}, not {wanted}", row.line);
    }
}

/// Every way of writing a value in a unit reads as that value in that unit.
fn reads_back<U: Unit + Debug>(tenths: u32) -> Result<(), TestCaseError> {
    for unit in U::ALL {
        let value = f64::from(tenths) / 10.0;
        let Ok(reading) = Reading::new(value, *unit) else { continue };
        prop_assert_eq!((reading.value(), reading.unit()), (value, *unit), "the unit as read is kept");
        prop_assert_eq!(reading.to_string().parse::<Reading<U>>(), Ok(reading));
        let stored = serde_json::to_string(&reading).unwrap();
        prop_assert_eq!(serde_json::from_str::<Reading<U>>(&stored).unwrap(), reading);
        for spelling in unit.spellings().iter().copied().chain([unit.code()]) {
            // `lbs` is a pressure and a mass in the trade; each kind reads it as its own.
            let mut texts = vec![
                format!("{} {spelling}", plain(value)),
                format!(" {} {} ", plain(value).replace('.', ","), spelling.to_uppercase()),
            ];
            // A spelling that begins with a digit needs the space: `71/32` is another number.
            if !spelling.starts_with(|c: char| c.is_ascii_digit()) {
                texts.push(format!("{}{spelling}", plain(value)));
            }
            for text in texts {
                prop_assert_eq!(text.parse::<Reading<U>>(), Ok(reading), "{:?}", text);
            }
        }
        prop_assert_eq!(Reading::parse(&plain(value), Some(*unit)), Ok(reading));
        prop_assert_eq!(plain(value).parse::<Reading<U>>(), Err(Misread::NoUnit));
        for other in U::ALL {
            let there = reading.to_unit(*other);
            prop_assert_eq!(there.unit(), *other);
            let back = there.in_unit(*unit);
            prop_assert!((back - value).abs() <= value.abs() * 1e-12 + 1e-9, "{} there and back: {}", reading, back);
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn every_measure_prints_and_reads_back_in_each_unit(tenths in 1u32..1990) {
        reads_back::<DepthUnit>(tenths)?;
        reads_back::<TorqueUnit>(tenths)?;
        reads_back::<PressureUnit>(tenths)?;
        reads_back::<DistanceUnit>(tenths)?;
        reads_back::<TemperatureUnit>(tenths)?;
        reads_back::<LoadUnit>(tenths)?;
        reads_back::<SpeedUnit>(tenths)?;
        reads_back::<SpanUnit>(tenths)?;
    }

    #[test]
    fn a_thousands_mark_is_never_guessed_at(whole in 1u32..999, part in 0u32..1000) {
        prop_assert_eq!(number_of(&format!("{whole},{part:03}")), Err(Misread::ThousandsMark));
        prop_assert_eq!(number_of(&format!("{whole}.{part:03},5")), Err(Misread::ThousandsMark));
        prop_assert_eq!(number_of(&format!("{whole},{part:03},{part:03}")), Err(Misread::ThousandsMark));
        let one = part % 10;
        prop_assert_eq!(number_of(&format!("{whole},{one}")), Ok(f64::from(whole) + f64::from(one) / 10.0));
    }

    #[test]
    fn readings_compare_alike_in_any_unit(a in 1u32..60_000, b in 1u32..60_000) {
        let psi = |v: u32| Reading::new(f64::from(v) / 1000.0, PressureUnit::Psi).unwrap();
        let (one, other) = (psi(a), psi(b));
        if a != b {
            let order = one.partial_cmp(&other);
            prop_assert_eq!(one.to_unit(PressureUnit::Bar).partial_cmp(&other), order);
            prop_assert_eq!(one.partial_cmp(&other.to_unit(PressureUnit::Kilopascal)), order);
        }
    }

    #[test]
    fn any_text_is_a_reading_or_is_refused(text in ".{0,40}") {
        for unit in TorqueUnit::ALL {
            if let Ok(reading) = Reading::parse(&text, Some(*unit)) {
                prop_assert!(reading.value().is_finite());
                prop_assert!((0.1 - 1e-9..=2000.0 + 1e-9).contains(&reading.in_unit(TorqueUnit::NewtonMetre)));
            }
        }
    }
}

#[test]
fn a_reading_outside_what_can_be_is_refused_with_the_bound() {
    let reading = |value, unit| Reading::new(value, unit);
    assert!(matches!(reading(-1.0, DepthUnit::Millimetre), Err(Misread::TooLow { .. })));
    assert!(matches!(reading(80.0, DepthUnit::Millimetre), Err(Misread::TooHigh { highest: 50.0, unit: "mm" })));
    assert_eq!(reading(f64::NAN, DepthUnit::Millimetre), Err(Misread::NotANumber));
    assert_eq!(reading(f64::INFINITY, DepthUnit::Millimetre), Err(Misread::NotANumber));
    assert!(matches!("5 psi".parse::<Reading<DepthUnit>>(), Err(Misread::WrongUnit { .. })));
}
