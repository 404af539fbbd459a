//! Worked examples of the standards, and what may and may not be told.

use lugbook::measure::{Depth, DepthUnit, Distance};
use lugbook::vehicle::Place;
use lugbook::wear::{Check, History, Moved, Prior, Question, SetBy, TreadPattern, Unknown, wear};

use super::read;

fn history(readings: Vec<lugbook::wear::Reading>) -> History {
    History { readings, moves: Vec::new() }
}

/// The rows of worked_examples.csv that project wear: "8.0 mm at 0 km, 6.5 mm at 15000 km, limit 1.6 mm".
#[test]
fn worked_examples_of_wear_come_out() {
    let mut seen = 0;
    let mut rows = csv::Reader::from_reader(include_str!("../../standards/worked_examples.csv").as_bytes());
    for row in rows.records() {
        let row = row.unwrap();
        if !row[0].starts_with("wear projection") {
            continue;
        }
        seen += 1;
        let us = row[0].ends_with("US");
        let numbers: Vec<f64> =
            row[1].split(|c: char| !(c.is_ascii_digit() || c == '.')).filter_map(|part| part.parse().ok()).collect();
        let (depths, miles, unit) = if us {
            // 10/32 at 0, 7/32 at 12000 mi, limit 2/32
            ((numbers[0], numbers[3], numbers[6]), numbers[5], DepthUnit::ThirtySecond)
        } else {
            ((numbers[0], numbers[2], numbers[4]), numbers[3], DepthUnit::Millimetre)
        };
        let read_at = |distance: f64, depth: f64| {
            let mut reading = read("a", 0.0, "FL", "1 mm");
            reading.odometer = format!("{distance} {}", if us { "mi" } else { "km" }).parse().unwrap();
            reading.grooves = vec![Depth::new(depth, unit).unwrap()];
            reading
        };
        let history = history(vec![read_at(0.0, depths.0), read_at(miles, depths.1)]);
        let limits = [(1u8, Depth::new(depths.2, unit).unwrap())].into_iter().collect();
        let answer = wear(&history, &Question { limits, ..Question::default() }).unwrap();
        let tire = &answer.tires[0];
        let rate = tire.rate.unwrap().mid;
        let left = tire.left_km.unwrap();
        let mid = left.mid.unwrap();
        if us {
            let per_1000_mi = rate / 0.79375 * 1.609344;
            assert!(row[2].starts_with("0.25/32 per 1000 mi; 20000 mi left") && (per_1000_mi - 0.25).abs() < 1e-9);
            assert!((mid / 1.609344 - 20_000.0).abs() < 1e-6, "{mid}");
        } else {
            assert!(row[2].starts_with("0.1 mm/1000 km; 64000 km to 1.6 mm from new; 49000 km left"));
            assert!((rate - 0.1).abs() < 1e-9 && (mid - 49_000.0).abs() < 1e-6, "{rate} {mid}");
            assert!(((8.0 - 1.6) / rate * 1000.0 - 64_000.0).abs() < 1e-6);
        }
        assert!(left.low < mid && left.high.is_none_or(|high| high > mid));
    }
    assert_eq!(seen, 2);
}

#[test]
fn one_visit_is_unknown_and_gives_an_odometer_figure() {
    let answer = wear(
        &history(vec![read("a", 40_000.0, "FL", "6 mm"), read("b", 40_000.0, "FR", "6 mm")]),
        &Question::default(),
    )
    .unwrap();
    assert_eq!(answer.unknown, Some(Unknown::OneVisit));
    assert!(
        answer.positions.is_empty() && answer.tires.iter().all(|tire| tire.rate.is_none() && tire.left_km.is_none())
    );
    assert_eq!((answer.next_visit.odometer_km, answer.next_visit.by), (45_000.0, SetBy::UnknownWear));
    let usual: Distance = "8000 km".parse().unwrap();
    let question = Question { interval: Some(usual), ..Question::default() };
    let answer = wear(&history(vec![read("a", 40_000.0, "FL", "6 mm")]), &question).unwrap();
    assert_eq!((answer.next_visit.odometer_km, answer.next_visit.by), (48_000.0, SetBy::Interval));
}

#[test]
fn a_tire_near_its_limit_brings_the_next_visit_forward() {
    let readings = vec![read("a", 0.0, "FL", "5 mm"), read("a", 10_000.0, "FL", "2.2 mm")];
    let answer = wear(&history(readings), &Question::default()).unwrap();
    assert_eq!(answer.next_visit.by, SetBy::Limit);
    assert!((10_000.0..13_000.0).contains(&answer.next_visit.odometer_km));
}

#[test]
fn a_prior_makes_no_rate_and_narrows_one_that_was_read_twice() {
    let prior = Some(Prior { mm_per_1000_km: 0.12, deviation: 0.02 });
    let question = Question { prior, ..Question::default() };
    let one = vec![read("a", 0.0, "FL", "6 mm")];
    assert!(wear(&history(one), &question).unwrap().positions.is_empty());
    let two = history(vec![read("a", 0.0, "FL", "6.0 mm"), read("a", 4_000.0, "FL", "5.6 mm")]);
    let plain = wear(&two, &Question::default()).unwrap().positions[0].rate;
    let narrowed = wear(&two, &question).unwrap().positions[0].rate;
    assert!(narrowed.high - narrowed.low < (plain.high - plain.low) / 1.2);
    assert!(narrowed.mid > plain.mid && narrowed.mid < 0.12);
}

#[test]
fn tires_that_moved_give_each_position_its_own_rate() {
    // Two tires change ends at 10,000 km: front wears 0.2, rear 0.1 mm per 1,000 km.
    let readings = vec![
        read("a", 0.0, "FL", "8.0 mm"),
        read("b", 0.0, "RL", "8.0 mm"),
        read("a", 10_000.0, "FL", "6.0 mm"),
        read("b", 10_000.0, "RL", "7.0 mm"),
        read("a", 20_000.0, "RL", "5.0 mm"),
        read("b", 20_000.0, "FL", "5.0 mm"),
    ];
    let answer = wear(&history(readings), &Question::default()).unwrap();
    let rates: Vec<(String, f64)> = answer.positions.iter().map(|p| (p.at.to_string(), p.rate.mid)).collect();
    assert_eq!(rates.len(), 2);
    assert!((rates[0].1 - 0.2).abs() < 1e-9 && (rates[1].1 - 0.1).abs() < 1e-9, "{rates:?}");
}

#[test]
fn positions_that_can_not_be_told_apart_stay_unknown() {
    // The only tire ran 5,000 km at the front and 5,000 km at the rear, unread between.
    let moved =
        |km: &str, to: &str| Moved { tire: "a".to_owned(), odometer: km.parse().unwrap(), to: Place::parse(to) };
    let history = History {
        readings: vec![read("a", 0.0, "FL", "8.0 mm"), read("a", 10_000.0, "RL", "6.5 mm")],
        moves: vec![moved("5000 km", "RL")],
    };
    let answer = wear(&history, &Question::default()).unwrap();
    assert!(answer.positions.is_empty());
    assert_eq!(answer.unknown, Some(Unknown::SomePositions));
    assert!((answer.tires[0].depth_mm.mid - 6.5).abs() < 1e-9);
}

#[test]
fn practice_readings_stay_out() {
    let mut practice = read("a", 20_000.0, "FL", "1.0 mm");
    practice.practice = true;
    let readings = vec![read("a", 0.0, "FL", "8.0 mm"), read("a", 10_000.0, "FL", "7.0 mm"), practice];
    let answer = wear(&history(readings), &Question::default()).unwrap();
    assert!((answer.positions[0].rate.mid - 0.1).abs() < 1e-9);
}

#[test]
fn a_slipped_reading_is_shown_and_does_not_pull() {
    let readings = vec![
        read("a", 0.0, "FL", "8.0 mm"),
        read("a", 5_000.0, "FL", "7.5 mm"),
        read("a", 10_000.0, "FL", "3.0 mm"),
        read("a", 15_000.0, "FL", "6.5 mm"),
        read("a", 20_000.0, "FL", "6.0 mm"),
    ];
    let answer = wear(&history(readings), &Question::default()).unwrap();
    assert!((answer.positions[0].rate.mid - 0.1).abs() < 1e-6);
    assert_eq!(answer.slipped.len(), 1);
    let slip = &answer.slipped[0];
    assert_eq!((slip.reading, slip.weight), (3, 0.0));
    assert!((slip.expected_mm - 7.0).abs() < 1e-6);
}

#[test]
fn patterns_name_checks() {
    let mut reading = read("a", 0.0, "FL", "6 mm");
    let grooves = |texts: &[&str]| texts.iter().map(|t| t.parse().unwrap()).collect::<Vec<Depth>>();
    type Case<'a> = (&'a [&'a str], Option<&'a str>, &'a [TreadPattern], Option<Check>);
    let cases: [Case<'_>; 7] = [
        (&["6 mm", "4 mm", "6 mm"], None, &[TreadPattern::Center], Some(Check::PressureHigh)),
        (&["4 mm", "6 mm", "6 mm", "4.5 mm"], None, &[TreadPattern::BothShoulders], Some(Check::PressureLow)),
        (&["4 mm", "6 mm", "6 mm"], None, &[TreadPattern::OuterShoulder], Some(Check::Alignment)),
        (&["6 mm", "6 mm", "4 mm"], None, &[TreadPattern::InnerShoulder], Some(Check::Alignment)),
        (&["6 mm", "6 mm", "6 mm"], Some("4.5 mm"), &[TreadPattern::Spot], Some(Check::Balance)),
        (&["6 mm", "5.5 mm", "6 mm"], None, &[TreadPattern::Even], None),
        (&["7/32", "6/32", "7/32"], None, &[TreadPattern::Even], None),
    ];
    for (texts, lowest, pattern, check) in cases {
        reading.grooves = grooves(texts);
        reading.lowest = lowest.map(|text| text.parse().unwrap());
        let answer = wear(&history(vec![reading.clone()]), &Question::default()).unwrap();
        assert_eq!(answer.tires[0].pattern, pattern, "{texts:?}");
        assert_eq!(answer.tires[0].check.first().copied(), check, "{texts:?}");
    }
}
