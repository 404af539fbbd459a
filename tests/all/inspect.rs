//! What the entries of invented visits say is wrong, and what they do not.

use lugbook::finding::State;
use lugbook::inspect::{Finding, What, inspect};
use lugbook::limits::{Region, Rules, Thresholds};
use lugbook::logbook::Logbook;
use lugbook::vehicle::Place;
use lugbook::words::{Speech, Words};
use proptest::prelude::*;

use crate::report::visit::{inflated, last_visit, measured, measured_twice, no_torque, whole};

fn found_by(logbook: &Logbook, rules: Rules) -> Vec<Finding> {
    let book = logbook.book();
    inspect(&book, book.jobs.last().expect("a job"), rules)
}

fn found(logbook: &Logbook) -> Vec<Finding> {
    found_by(logbook, Rules::default())
}

fn any(findings: &[Finding], pick: impl Fn(&What) -> bool) -> bool {
    findings.iter().any(|finding| pick(&finding.what))
}

#[test]
fn a_whole_visit_shows_each_thing_that_is_wrong_worst_first() {
    let (logbook, words) = (whole(), Words::new(Speech::default()));
    let book = logbook.book();
    let lines = found(&logbook).into_iter().map(|finding| {
        let at = finding.at.map(|at: Place| at.to_string()).unwrap_or_default();
        let source = finding.source.map(|source| words.source(&source)).unwrap_or_default();
        format!("{} | {at} | {} | {source}", finding.state.code(), words.finding(&finding, &book))
    });
    insta::assert_snapshot!(lines.collect::<Vec<_>>().join("\n"));
}

#[test]
fn what_nobody_looked_at_is_not_called_wrong() {
    assert!(found(&last_visit()).is_empty());
}

#[test]
fn something_unsafe_and_an_unknown_torque_are_told_and_the_unsafe_stands_first() {
    let findings = found(&no_torque());
    assert_eq!(findings.first().map(|finding| finding.state), Some(State::Unsafe));
    assert!(any(&findings, |what| *what == What::NoTorque));
}

/// Both gauges show steps of 1/32 in: together they can err by 2/32 in.
#[test]
fn tread_is_deeper_only_beyond_what_both_gauges_can_err() {
    let deeper = |before, now| any(&found(&measured_twice(before, now)), |what| matches!(what, What::Deeper { .. }));
    assert!(!deeper("8", "7") && !deeper("8", "8") && !deeper("8", "10"));
    assert!(deeper("8", "10.5") && deeper("8", "11"));
}

/// 2/32 in for light vehicles (49 CFR 570.9(a), from memory): it warns, it never refuses.
#[test]
fn tread_is_judged_by_its_lowest_reading_at_the_limit_and_on_both_sides_of_it() {
    let state = |depth| {
        let findings = found(&measured([depth, "9", "9", "9"]));
        findings.into_iter().find(|finding| matches!(finding.what, What::Tread { .. }))
    };
    let at = |depth| state(depth).map(|finding| finding.state);
    assert_eq!(at("1.5"), Some(State::BelowLimit));
    assert_eq!(at("2"), Some(State::AtLimit));
    assert_eq!(at("3"), Some(State::AtLimit));
    assert_eq!(at("4"), Some(State::Watch));
    assert_eq!(at("5"), None);
    assert!(matches!(state("1.5").expect("found").what, What::Tread { broken: false, .. }));
}

/// France: at least 1.6 mm, its text read (order text JORFARTI000038987859); 2/32 in is 1.5875 mm.
#[test]
fn the_same_reading_passes_one_place_and_breaks_another_places_rule() {
    let rules = |region| Rules { region, thresholds: Thresholds::default(), ..Rules::default() };
    let logbook = measured(["2", "9", "9", "9"]);
    let here = found_by(&logbook, rules(Region::UsFederal));
    let there = found_by(&logbook, rules(Region::France));
    assert!(any(&here, |what| matches!(what, What::Tread { broken: false, .. })));
    assert!(any(&there, |what| matches!(what, What::Tread { broken: true, .. })));
}

/// 2/32 in between two tires of one axle: common practice, no source.
#[test]
fn a_pair_is_uneven_beyond_two_thirty_seconds() {
    let uneven = |left, right| {
        any(&found(&measured([left, "9", "9", right])), |what| matches!(what, What::Uneven { axle: 1, .. }))
    };
    assert!(!uneven("9", "9") && !uneven("9", "7") && uneven("9", "6.5") && uneven("6", "9"));
}

#[test]
fn a_pressure_is_low_only_under_the_placard_whatever_its_unit() {
    let low = |placard, set| any(&found(&inflated(placard, set)), |what| matches!(what, What::Low { set: true, .. }));
    assert!(!low("50 psi", "50 psi") && !low("50 psi", "52 psi") && low("50 psi", "49.5 psi"));
    assert!(!low("240 kPa", "2.4 bar") && low("240 kPa", "2.35 bar"));
}

proptest! {
    #[test]
    fn the_worst_always_stands_first(depths in prop::array::uniform4(0u8..14)) {
        let texts = depths.map(|depth| depth.to_string());
        let [a, b, c, d] = &texts;
        let findings = found(&measured([a, b, c, d]));
        prop_assert!(findings.windows(2).all(|pair| pair[0].state >= pair[1].state));
        let below = depths.iter().filter(|depth| **depth < 2).count();
        let told = findings.iter().filter(|finding| finding.state == State::BelowLimit).count();
        prop_assert_eq!(below, told);
    }
}
