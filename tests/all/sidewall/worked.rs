//! The worked examples of the standards page that concern sidewalls.

use lugbook::sidewall::{self, Size, Utqg, load_of_index, section_width_mm};

use super::rows;

/// The numbers in a sentence, in order.
fn figures(text: &str) -> Vec<f64> {
    let mut figures = Vec::new();
    for word in text.split(|c: char| !(c.is_ascii_digit() || c == '.')) {
        figures.extend(word.trim_end_matches('.').parse::<f64>());
    }
    figures
}

fn close(ours: Option<f64>, expected: f64, half_step: f64, what: &str) {
    let ours = ours.unwrap_or(f64::NAN);
    assert!((ours - expected).abs() <= half_step + 1e-9, "{what}: {ours} against {expected}");
}

#[test]
fn every_size_row_gives_its_figures() {
    let mut seen = 0;
    for row in rows("worked_examples.csv") {
        let Some(text) = row["check"].strip_prefix("size ") else { continue };
        let size: Size = text.parse().unwrap_or_else(|_| panic!("{text}"));
        let expected = figures(&row["expected"]);
        if row["input"] == "flotation" {
            let [diameter, _, width, side] = expected[..] else { panic!("{expected:?}") };
            close(size.overall_diameter_mm(), diameter, 0.05, text);
            close(size.width_mm(), width, 0.05, text);
            close(size.section_height_mm(), side, 0.05, text);
        } else {
            let [height, diameter, inches, circumference, per_mile] = expected[..] else { panic!("{expected:?}") };
            let input = figures(&row["input"]);
            assert_eq!((size.width_mm(), size.rim_in()), (Some(input[0]), input[2]), "{text}");
            assert_eq!(size.aspect_percent().map(f64::from), Some(input[1]), "{text}");
            close(size.section_height_mm(), height, 0.005, text);
            close(size.overall_diameter_mm(), diameter, 0.05, text);
            close(size.overall_diameter_mm().map(|mm| mm / 25.4), inches, 0.005, text);
            close(size.circumference_mm(), circumference, 0.5, text);
            close(size.revolutions_per_mile(), per_mile, 0.5, text);
            close(size.revolutions_per_km().map(|r| r * 1.609344), per_mile, 0.5, text);
        }
        seen += 1;
    }
    assert_eq!(seen, 12);
}

#[test]
fn every_date_row_gives_its_days() {
    let mut seen = 0;
    for row in rows("worked_examples.csv") {
        let Some(code) = row["check"].strip_prefix("TIN date ") else { continue };
        let marking = sidewall::parse(&format!("DOT 1HKB 9FLP {code}"));
        let tin = marking.tin.as_ref().unwrap();
        if code.len() == 3 {
            assert!(row["expected"].contains("1977/1987/1997"));
            assert_eq!((tin.made(), tin.ambiguous()), (None, vec![1977, 1987, 1997]));
        } else if row["expected"].starts_with("invalid") {
            assert_eq!((tin.made(), marking.problems[0].kind.code()), (None, "tin-week"));
        } else {
            let made = tin.made().unwrap();
            assert!(row["expected"].starts_with(&format!("{} to {}", made.from, made.to)), "{code}: {made:?}");
        }
        seen += 1;
    }
    assert_eq!(seen, 9);
}

#[test]
fn every_load_index_and_grade_row_holds() {
    let mut seen = 0;
    for row in rows("worked_examples.csv") {
        let expected = figures(&row["expected"]);
        if let Some(index) = row["check"].strip_prefix("LI ") {
            let kg = load_of_index(index.parse().unwrap());
            close(kg, expected[0], 0.0, index);
            close(kg.map(|kg| (kg / 0.453_592_37).round()), expected[1], 0.0, index);
            seen += 1;
        } else if row["check"] == "UTQG" {
            // 60,000 miles at the base course wear rate 1.34 over 402 is the letter's share of 30,000.
            assert_eq!(Utqg::treadwear_of(60_000.0).map(f64::from), Some(expected[0]));
            seen += 1;
        } else if row["check"].starts_with("UTQG before") {
            assert_eq!(Utqg::treadwear_of(5_000.0), Some(0));
            seen += 1;
        }
    }
    assert_eq!(seen, 6);
}

#[test]
fn every_row_of_width_and_wear_holds() {
    let mut seen = 0;
    for row in rows("worked_examples.csv") {
        if row["check"] == "R30 width" {
            // "S1=225, … rim 7.5J, … x=0.85 (assumed)"; "A=190.5, …, S=225-0.3=224.7 -> 225 mm".
            let rim = figures(&row["input"].replace("S1=225", "")).into_iter().find(|rim| [7.5, 8.0].contains(rim));
            let width = section_width_mm(225.0, rim.unwrap(), 0.85).unwrap();
            let [.., exact, rounded] = figures(&row["expected"])[..] else { panic!("{row:?}") };
            close(Some(width), exact, 0.05, &row["input"]);
            close(Some(width.round()), rounded, 0.0, &row["input"]);
            seen += 1;
        } else if row["check"] == "wear vs diameter" {
            let size: Size = "225/45R17".parse().unwrap();
            let [fall, worn, percent] = figures(&row["expected"])[..] else { panic!("{row:?}") };
            let [new, left] = [size.diameter_worn_mm(0.0), size.diameter_worn_mm(8.0 - 1.6)].map(Option::unwrap);
            close(Some(new - left), fall, 0.05, "fall");
            close(Some(left), worn, 0.05, "worn");
            close(Some(100.0 * (new - left) / new), percent, 0.005, "percent");
            seen += 1;
        }
    }
    assert_eq!(seen, 3);
    assert_eq!(section_width_mm(225.0, 7.5, f64::NAN), None);
}
