//! What a camera makes of a sidewall: candidates with their substitutions.

use lugbook::sidewall::{Candidate, Reading, candidates};

use super::real::REAL;

fn sizes(found: &[Candidate]) -> Vec<String> {
    found.iter().filter(|c| matches!(c.reading, Reading::Size { .. })).map(Candidate::text).collect()
}

fn numbers(found: &[Candidate]) -> Vec<String> {
    found.iter().filter(|c| matches!(c.reading, Reading::Tin(_))).map(Candidate::text).collect()
}

/// Misread texts and what stands on the tire. Which letters are confused is
/// common practice, no source.
const MISREAD: [(&str, &str); 16] = [
    ("Z25/4SR17 9IW", "225/45R17 91W"),
    ("225/45RI7 91W", "225/45R17 91W"),
    ("22S/45R17 91W", "225/45R17 91W"),
    ("225/45 K17 91W", "225/45R17 91W"),
    ("225\\45R17 91W", "225/45R17 91W"),
    ("22545R17 91W", "225/45R17 91W"),
    ("225 45 R17 91W", "225/45R17 91W"),
    ("225/45P17 91W", "225/45R17 91W"),
    ("205/5SR16 9lV", "205/55R16 91V"),
    ("2O5/55R16 91V", "205/55R16 91V"),
    ("LT24S/75R16 120/116Q", "LT245/75R16 120/116Q"),
    ("P2l5/65R15 95H", "P215/65R15 95H"),
    ("315/80R22,5 156/150L", "315/80R22.5 156/150L"),
    ("3lX10.50R15LT", "31x10.50R15LT"),
    ("RADIAL 225/4SR17\n91W XL M+S", "225/45R17 91W"),
    ("195R14C l06/104S", "195R14C 106/104S"),
];

#[test]
fn the_likeliest_reading_of_misread_text_is_what_stands_on_the_tire() {
    for (read, molded) in MISREAD {
        let found = candidates(read, 5);
        assert_eq!(sizes(&found).first().map(String::as_str), Some(molded), "{read}: {:?}", sizes(&found));
    }
}

#[test]
fn a_number_takes_digits_for_letters_it_does_not_use() {
    for (read, molded) in [
        ("DOT 1HKB 9FLP 0723", "DOT 1HKB 9FLP 0723"),
        ("D0T IHKB 9FLP O723", "DOT 1HKB 9FLP 0723"),
        ("DOT 1HKB 9FLP 07Z3", "DOT 1HKB 9FLP 0723"),
        ("1HKB 9FLP 0723", "DOT 1HKB 9FLP 0723"),
        ("DOT 1HK B9FLPX 0723", "DOT 1HK B9FLPX 0723"),
    ] {
        let found = candidates(read, 5);
        assert_eq!(numbers(&found).first().map(String::as_str), Some(molded), "{read}: {:?}", numbers(&found));
    }
}

#[test]
fn a_plain_marking_costs_nothing_and_is_nearly_sure() {
    for text in ["225/45R17 91W", "P215/65R15 95H", "LT235/85R16", "DOT 1HKB 9FLP 0723"] {
        let best = &candidates(text, 3)[0];
        assert_eq!((best.text().as_str(), best.cost), (text, 0.0));
        assert!(best.substitutions.is_empty() && best.odds > 0.8, "{text}: {}", best.odds);
    }
}

#[test]
fn every_real_size_is_its_own_likeliest_reading() {
    for text in REAL {
        let Some(size) = lugbook::sidewall::parse(text).size else { continue };
        let found = candidates(text, 5);
        let first = found.iter().find_map(|c| match &c.reading {
            Reading::Size { size, .. } => Some(size.to_string()),
            _ => None,
        });
        // `S` before a size is a letter a camera sees in any 5, so it is left out.
        assert_eq!(first, Some(size.to_string().trim_start_matches('S').to_owned()), "{text}");
    }
}

#[test]
fn every_substitution_is_listed_at_its_place_and_adds_up() {
    for (read, _) in MISREAD {
        let characters: Vec<char> = read.to_uppercase().chars().collect();
        for candidate in candidates(read, 5) {
            let mut paid = 0.0;
            for substitution in &candidate.substitutions {
                if let Some(seen) = substitution.read {
                    let there = characters[substitution.at];
                    assert!(there == seen || there == '\n', "{read}: {substitution:?}");
                }
                assert!(substitution.cost > 0.0);
                paid += substitution.cost;
            }
            assert!(candidate.cost >= paid - 1e-9, "{read}: {candidate:?}");
            assert!(candidate.at + candidate.len <= characters.len());
        }
    }
}

#[test]
fn candidates_are_ranked_and_their_odds_stay_below_one() {
    let found = candidates("2Z5/4SR1? 9IW D0T IHKB 9FLP O723", 6);
    assert!(found.len() > 3);
    for kind in [sizes as fn(&[Candidate]) -> Vec<String>, numbers] {
        let texts = kind(&found);
        let mut unique = texts.clone();
        unique.dedup();
        assert_eq!(texts, unique);
    }
    let of_sizes: Vec<&Candidate> = found.iter().filter(|c| matches!(c.reading, Reading::Size { .. })).collect();
    assert!(of_sizes.is_sorted_by(|a, b| a.cost <= b.cost && a.odds >= b.odds));
    assert!(of_sizes.iter().map(|c| c.odds).sum::<f64>() < 1.0);
    assert!(of_sizes.len() <= 6);
}

#[test]
fn words_alone_give_no_reading() {
    for text in ["", "TUBELESS RADIAL", "MADE IN COUNTRY", "STEEL BELTED", "?????", "0000000000"] {
        assert!(candidates(text, 5).iter().all(|c| c.odds < 0.5), "{text}: {:?}", candidates(text, 5));
    }
}

/// The work that is bounded is far more than a whole sidewall needs: what stands
/// at its end is found as well as what stands at its start.
#[test]
fn a_size_behind_a_whole_sidewall_of_text_is_found() {
    let before = "TREADWEAR 5OO TRACT1ON A TEMPERATURE A\nMAX LOAD 75O KG (1653 LBS) MAX PRESS 34O KPA (5O PSI)\n\
                  PLIES: TREAD 2 STEEL + 2 POLYESTER SIDEWALL 2 POLYESTER\nE4 0212345-S2WR2 DOT 4B9R Y1LX 2318\n";
    for repeated in 1..=3 {
        let text = format!("{}Z25/4SR17 9IW", before.repeat(repeated));
        let found = candidates(&text, 5);
        assert!(sizes(&found).contains(&"225/45R17 91W".to_owned()), "{repeated}: {:?}", sizes(&found));
        assert_eq!(numbers(&found).first().map(String::as_str), Some("DOT 4B9R Y1LX 2318"));
    }
}
