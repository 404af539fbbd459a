//! One letter or figure of a valid marking changed by accident.

use std::collections::BTreeMap;

use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

use lugbook::sidewall;

use super::generate;

/// A change either says something else that is valid, or it is told.
///
/// "Leaves the grammar" is judged without the parser: a change that is not told
/// must be printed again with every letter and figure in it.
#[test]
fn one_changed_letter_is_told_or_makes_another_valid_marking() {
    let mut runner = TestRunner::new_with_rng(Config::default(), TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]));
    let letters: Vec<char> = ('A'..='Z').collect();
    let mut inside: BTreeMap<String, usize> = BTreeMap::new();
    let (mut told, mut silent, mut same) = (0, 0, 0);
    for round in 0..10_000_usize {
        let text = generate::marking().new_tree(&mut runner).unwrap().current();
        let before = sidewall::parse(&text);
        let mut chars: Vec<char> = text.chars().collect();
        let places: Vec<usize> = (0..chars.len()).filter(|at| chars[*at].is_ascii_alphanumeric()).collect();
        let at = places[(round * 7919) % places.len()];
        let to = letters[(round * 104_729) % letters.len()];
        if chars[at].eq_ignore_ascii_case(&to) {
            continue;
        }
        let from = chars[at];
        chars[at] = to;
        let changed: String = chars.iter().collect();
        let after = sidewall::parse(&changed);
        let reported = after.problems.iter().any(|p| !before.problems.iter().any(|b| b.kind == p.kind));
        if reported {
            told += 1;
            continue;
        }
        if after == before {
            // Only words that mean the same may do this.
            same += 1;
        }
        assert_ne!(after, before, "{text} -> {changed}: the change is neither told nor read");
        silent += 1;
        // Inside the grammar: every letter and figure stands in what was read.
        assert_eq!(
            symbols(&after.to_string()),
            symbols(&changed),
            "{text} -> {changed}: something vanished without a word"
        );
        let place =
            if text.find("DOT").is_some_and(|dot| at >= dot && at < dot + 20) { "number" } else { "size or service" };
        let from = if from.is_ascii_digit() { '9' } else { from };
        *inside.entry(format!("{place}: {from} to a letter")).or_default() += 1;
    }
    println!("told {told}, inside the grammar {silent}, {inside:?}");
    assert_eq!(same, 0);
    assert!(told + silent > 9_000 && told > silent, "told {told}, silent {silent}");
}

/// The letters and figures of a marking, sorted, one spelling for each load word.
fn symbols(text: &str) -> Vec<char> {
    let mut text = format!("{} ", text.to_uppercase());
    for (spelling, one) in
        [("EXTRA LOAD", "XL"), ("REINFORCED", "XL"), (" RF ", " XL "), (".50", ".5"), ("TUBELESS", "TL")]
    {
        text = text.replace(spelling, one);
    }
    let mut symbols: Vec<char> = text.chars().filter(|c| c.is_ascii_alphanumeric()).collect();
    symbols.sort_unstable();
    symbols
}
