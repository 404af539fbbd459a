//! What people read about a marking.

use lugbook::calendar::Day;
use lugbook::sidewall::{self, Tin, equivalence, parse};
use lugbook::words::{Say, Speech, Words};

use super::problems::TOLD;

/// The marking, a caret under each place, what is wrong and what to do next.
fn shown(text: &str, words: &Words) -> String {
    let mut out = format!("{text}\n");
    for problem in sidewall::parse(text).problems {
        let caret = format!("{}{}", " ".repeat(problem.at), "^".repeat(problem.len.max(1)));
        out += &format!("{caret}\n  {}\n  {}\n", problem.say(words), words.sidewall_next(&problem));
    }
    out
}

#[test]
fn every_problem_has_its_two_sentences() {
    let words = Words::new(Speech::default());
    let mut all = String::new();
    for line in TOLD.trim().lines().map(|line| line.split_once(" | ").unwrap().0).chain([
        "",
        "TRACTION",
        "TREADWEAR",
        "DOT 1HKB 540",
    ]) {
        for problem in sidewall::parse(line).problems {
            for sentence in [problem.say(&words), words.sidewall_next(&problem)] {
                assert!(!sentence.contains("sidewall-") && !sentence.contains("part-"), "{line}: {sentence}");
                assert!(!sentence.contains(['{', '}']) && sentence.ends_with('.'), "{line}: {sentence}");
                assert!(sentence.split_whitespace().count() <= 25, "{line}: {sentence}");
            }
        }
        all += &shown(line, &words);
        all += "\n";
    }
    insta::assert_snapshot!(all);
}

#[test]
fn every_change_has_its_sentence() {
    let words = Words::new(Speech::default());
    let mut all = String::new();
    for (a, b) in [
        ("225/45R17 91W", "225/50R17 88H"),
        ("205/55R16 91V", "225/45RF17 94W XL"),
        ("195R14C 106/104S", "195R14C 106/102S"),
        ("T145/80D18 103M", "T145/80R18"),
        ("T145/80D18 103M", "T145/80B18 103M"),
        ("LT235/85R16 120/116R", "235/85R16 120/116R"),
    ] {
        all += &format!("{a} -> {b}\n");
        for finding in equivalence(&parse(a), &parse(b)).findings {
            let sentence = finding.say(&words);
            assert!(sentence.ends_with('.') && !sentence.contains("change-"), "{sentence}");
            all += &format!("  {sentence}\n");
        }
    }
    insta::assert_snapshot!(all);
}

#[test]
fn a_date_is_told_as_an_age() {
    let words = Words::new(Speech::default());
    let today: Day = "2026-11-24".parse().unwrap();
    let told = |text: &str| words.tin_age(&text.parse::<Tin>().unwrap(), today);
    assert_eq!(told("DOT 1HKB 9FLP 0723"), "Made 2023-02-12 to 2023-02-18: 3 years, 9 months old.");
    assert!(
        told("DOT 1HKB 9FLP 317").starts_with("Made before July 2000, between 29 years"),
        "{}",
        told("DOT 1HKB 9FLP 317")
    );
    assert!(told("DOT 1HKB 9FLP 0127").contains("has not come yet"));
    assert_eq!(told("DOT 1HKB 9FLP"), "The date is not known. Look for the full DOT number on the other sidewall.");
}
