//! What is printed reads back as the same, for generated and for real markings.

use proptest::prelude::*;
use proptest::test_runner::{Config, TestRunner};

use lugbook::sidewall::{self, Answer, Marking, Severity};

use super::generate;
use super::real::REAL;

fn back(text: &str) -> (Marking, Marking) {
    let marking = sidewall::parse(text);
    let again = sidewall::parse(&marking.to_string());
    (marking, again)
}

fn worst(marking: &Marking) -> Option<Severity> {
    marking.problems.iter().map(|p| p.severity).max()
}

#[test]
fn every_real_marking_reads_whole_and_round_trips() {
    for text in REAL {
        let (marking, again) = back(text);
        assert_eq!(marking, again, "{text} printed as {marking}");
        assert_eq!(again.to_string(), marking.to_string(), "{text}");
        let told_decade = text.ends_with(" 317");
        assert!(
            worst(&marking) < Some(if told_decade { Severity::Error } else { Severity::Note }),
            "{text}: {:?}",
            marking.problems
        );
        assert_eq!(serde_json::from_value::<Marking>(serde_json::to_value(&marking).unwrap()).unwrap(), marking);
    }
}

#[test]
fn ten_thousand_valid_markings_round_trip_without_a_warning() {
    let mut runner = TestRunner::new(Config { cases: 10_000, failure_persistence: None, ..Config::default() });
    let outcome = runner.run(&generate::marking(), |text| {
        let (marking, again) = back(&text);
        prop_assert_eq!(&marking, &again, "{} printed as {}", text, marking);
        // `(97Y)` behind a slow ZR size is the generator's own doing; nothing else may be told.
        let told: Vec<_> =
            marking.problems.iter().filter(|p| p.severity > Severity::Note).map(|p| p.kind.code()).collect();
        prop_assert!(told.iter().all(|code| *code == "slow-for-zr"), "{}: {:?}", text, told);
        prop_assert!(marking.size.is_some(), "{}", text);
        prop_assert_eq!(marking.tin.is_some(), text.contains("DOT"), "{}", text);
        let answer = Answer::of(&marking);
        prop_assert_eq!(answer.size.is_some(), true);
        for stored in [serde_json::to_string(&marking.size).unwrap(), serde_json::to_string(&marking.service).unwrap()]
        {
            prop_assert!(stored == "null" || stored.starts_with('"'));
        }
        let size = marking.size.unwrap();
        let service = marking.service;
        let tin = marking.tin.clone();
        prop_assert_eq!(serde_json::from_str::<sidewall::Size>(&serde_json::to_string(&size).unwrap()).unwrap(), size);
        prop_assert_eq!(
            serde_json::from_str::<Option<sidewall::Service>>(&serde_json::to_string(&service).unwrap()).unwrap(),
            service
        );
        prop_assert_eq!(
            serde_json::from_str::<Option<sidewall::Tin>>(&serde_json::to_string(&tin).unwrap()).unwrap(),
            tin
        );
        Ok(())
    });
    outcome.unwrap();
}

#[test]
fn any_text_at_all_reads_the_same_once_printed() {
    let mut runner = TestRunner::new(Config { cases: 40_000, failure_persistence: None, ..Config::default() });
    // Pieces that a marking is made of, in any order: the printed form must still stand.
    let piece = proptest::sample::select(vec![
        "225/45",
        "R",
        "17",
        " ",
        "91W",
        "(",
        ")",
        "/",
        "DOT",
        "1HKB",
        "0723",
        "317",
        "XL",
        "E4",
        "02",
        "LOAD RANGE",
        "E",
        "MAX",
        "LOAD",
        "615",
        "KG",
        "PSI",
        "51",
        "TREADWEAR",
        "400",
        "AA",
        "A",
        "-",
        "x",
        "10.5",
        "31",
        "LT",
        "C",
        "M+S",
        "10PR",
        "RIM",
        "5 1/2J",
        "ZR",
        "120",
        "T",
        "Z",
        "é",
        "×",
    ]);
    let text = proptest::collection::vec(piece, 0..14).prop_map(|pieces| pieces.concat());
    runner
        .run(&text, |text| {
            let (marking, again) = back(&text);
            prop_assert_eq!(&marking, &again, "{:?} printed as {:?}", text, marking.to_string());
            let characters = text.chars().count();
            for problem in &marking.problems {
                prop_assert!(problem.at + problem.len <= characters, "{:?}: {:?}", text, problem);
            }
            prop_assert!(marking.understood() || marking.refused(), "{:?}", text);
            Ok(())
        })
        .unwrap();
}
