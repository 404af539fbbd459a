//! What people read of wear.

use lugbook::measure::Depth;
use lugbook::vehicle::Layout;
use lugbook::wear::{Check, History, Question, Rows, TreadPattern, wear};
use lugbook::words::{Say, Speech, Units, Words};

use super::read;

#[test]
fn a_history_is_told() {
    let mut readings = vec![
        read("a", 0.0, "FL", "8.0 mm"),
        read("a", 10_000.0, "FL", "7.0 mm"),
        read("a", 20_000.0, "FL", "2.0 mm"),
        read("a", 30_000.0, "FL", "5.0 mm"),
        read("b", 0.0, "RL", "2.0 mm"),
        read("b", 10_000.0, "RL", "1.5 mm"),
        read("c", 30_000.0, "RR", "6.0 mm"),
    ];
    let grooves: Vec<Depth> = ["4 mm", "6 mm", "6 mm"].iter().map(|t| t.parse().unwrap()).collect();
    readings[6].grooves = grooves;
    let answer = wear(&History { readings, moves: Vec::new() }, &Question::default()).unwrap();
    let layout = Layout::two_axles(false);
    for (name, units) in [("metric", Units::AsRead), ("us", Units::Us)] {
        let words = Words::new(Speech { units, ..Speech::default() });
        let view = words.wear(&answer, &layout);
        let mut lines: Vec<String> = view.tires.iter().map(|tire| tire.sentence.clone()).collect();
        lines.extend(view.tires.iter().filter_map(|tire| tire.rate.as_ref().map(|rate| rate.text.clone())));
        lines.extend(view.slipped.iter().map(|slip| slip.sentence.clone()));
        lines.extend(view.unknown);
        lines.push(view.next_visit.sentence);
        insta::assert_snapshot!(name, lines.join("\n"));
    }
}

#[test]
fn every_pattern_and_check_has_words() {
    let words = Words::new(Speech::default());
    let patterns = [
        TreadPattern::Even,
        TreadPattern::Center,
        TreadPattern::BothShoulders,
        TreadPattern::OuterShoulder,
        TreadPattern::InnerShoulder,
        TreadPattern::Spot,
    ];
    for pattern in patterns {
        assert!(words.has(&format!("tread-{}", pattern.code())), "{pattern:?}");
        for check in pattern.checks() {
            assert!(check.say(&words).starts_with("Check "), "{check:?}");
        }
    }
    assert!(Check::RotationInterval.say(&words).starts_with("Check "));
}

#[test]
fn files_that_can_not_be_used_are_told() {
    let words = Words::new(Speech::default());
    let cells = |line: &str| line.split(',').map(str::to_owned).collect::<Vec<_>>();
    let mut lines = Vec::new();
    for text in [
        "at,depth_mm",
        "distance_km,at,depth_mm\n0,XX,5",
        "distance_km,at,depth_mm\n0,FL,99",
        "distance_km,at,depth_mm\nfar,FL,9",
        "distance_km,at,depth_mm\n0,FL,",
    ] {
        let mut rows = text.lines().map(cells);
        let rows = Rows { header: rows.next().unwrap(), rows: rows.collect() };
        lines.push(rows.history().unwrap_err().say(&words));
    }
    insta::assert_snapshot!(lines.join("\n"));
}
