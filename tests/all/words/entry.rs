use crate::facts::facts;
use lugbook::finding::State;
use lugbook::logbook::{Book, Status};
use lugbook::vehicle::{Layout, Letters};
use lugbook::words::{FactContext, Lang, Speech, Units, Words};

fn said(words: &Words) -> Vec<String> {
    let procedures = lugbook::procedure::built_in().expect("built in");
    let procedure = procedures.iter().find(|p| p.id == "rotation-with-jack-and-stands");
    let (book, layout) = (Book::default(), Layout::two_axles(true));
    let context = FactContext { book: &book, layout: Some(&layout), job: None, procedure };
    facts().iter().map(|fact| words.fact(fact, &context)).collect()
}

#[test]
fn each_fact_reads_as_a_plain_sentence() {
    insta::assert_snapshot!(said(&Words::new(Speech::default())).join("\n"));
}

#[test]
fn in_metric_units_each_fact_still_shows_what_was_read() {
    let speech = Speech { units: Units::Metric, letters: Letters::SideFirst, ..Speech::default() };
    let said = said(&Words::new(speech));
    let tread = said.iter().find(|said| said.contains("tread")).expect("a tread sentence");
    assert!(tread.starts_with("LF: "), "{tread}");
    assert!(tread.contains("5.6, 5.6, 4.8; 5.6, 4.8, 4.8 mm (read 7, 7, 6; 7, 6, 6/32 in)"), "{tread}");
}

#[test]
fn every_kind_of_fact_is_tried_and_none_leaves_a_name_without_a_sentence() {
    let source = include_str!("../../../core/src/entry/fact.rs");
    let body =
        source.split("pub enum Fact {").nth(1).and_then(|rest| rest.split("\nimpl Fact").next()).expect("the enum");
    let variants = body
        .lines()
        .filter_map(|line| line.strip_prefix("    ").filter(|l| l.starts_with(char::is_uppercase)))
        .filter_map(|line| line.strip_suffix(" {"));
    let tried: Vec<String> = facts().iter().map(|fact| format!("{fact:?}")).collect();
    for variant in variants {
        assert!(tried.iter().any(|fact| fact.split(' ').next() == Some(variant)), "{variant} is not tried here");
    }
    for lang in Lang::ALL {
        for said in said(&Words::new(Speech { lang, ..Speech::default() })) {
            assert!(said.ends_with(['.', '”']) && !said.contains('{'), "{said}");
            let said = said.replace("part-time", "");
            for kind in ["fact-", "state-", "part-", "hub-", "tool-", "nut-", "sensors-", "means-", "kind-"] {
                assert!(!said.contains(kind), "{said}");
            }
        }
    }
}

#[test]
fn states_and_statuses_have_the_words_of_the_trade() {
    let words = Words::new(Speech::default());
    let states: Vec<String> = State::ALL.into_iter().map(|state| words.state(state)).collect();
    assert_eq!(states, ["sound", "watch", "at limit", "below limit", "unsafe: do not drive"]);
    let statuses = [Status::Open, Status::Parked, Status::Signed, Status::Closed].map(|status| words.status(status));
    assert_eq!(statuses, ["open", "parked", "signed", "ended without a signature"]);
}
