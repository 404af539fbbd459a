//! Each refusal and warning: where it stands and what it is.

use lugbook::sidewall::{self, LONGEST};

/// Text, then `code at len severity` of every problem.
pub const TOLD: &str = r#"
225/45X17 | not-a-construction 6 1 error
225/45 | size-unfinished 6 0 error
225/45R | size-unfinished 7 0 error
225/ | size-unfinished 4 0 error
225/45 17 | size-unfinished 7 0 error
31x10.50 | size-unfinished 8 0 error
225/45R99 | out-of-range 7 2 error
225/45R175 | out-of-range 7 3 error
225/450R17 | out-of-range 4 3 error
20/45R17 | out-of-range 0 2 error
225/45R17Q | after-size 9 1 error
225/45R17 91O | not-a-speed-symbol 12 1 error
225/45R17 91A9 | not-a-speed-symbol 12 2 error
225/45R17 391W | load-index-out-of-range 10 3 error
225/45R17 91 | no-speed-symbol 12 0 warning
215/65R16C 107/109T | dual-above-single 11 8 warning
226/45R17 91W | unusual 0 3 warning
225/46R17 91W | unusual 4 2 warning
225/45R31 91W | unusual 7 2 warning
225/45ZR17 91H | slow-for-zr 11 3 warning
HL245/40R19 98Y | high-load-form 0 2 note
185/70HR14 | old-speed-form 6 2 note
225/45R17 91W 205/55R16 91V | repeated 14 9 warning
225/45R17 91W 92W 93W | repeated 18 3 warning
LOAD RANGE Z | not-a-load-range 11 1 error
LT245/75R16 LOAD RANGE K | load-range-unclear 23 1 warning
LT245/75R16 LOAD RANGE E 8PR | ply-rating-unusual 25 1 warning
7PR | ply-rating-unusual 0 1 warning
DOT | tin-missing 0 3 error
DOT 1HKB?9FLP 0723 | tin-mark 8 1 error; unknown 14 4 warning
DOT ABCD 12 34 567 | tin-unclear 4 14 error
DOT 1HKB 9FLP 5315 | tin-week 14 4 error
DOT 1HKB 9FLP 0015 | tin-week 14 4 error
DOT 1HKB 9FLP 317 | tin-decade 14 3 warning
DOT 1HKB 9FLP | tin-partial 4 9 note
DOT 1HKB0723 | tin-maybe-partial 4 8 note
DOT 0723 | tin-date-only 4 4 note
0723 | tin-date-only 0 4 note
1HKB 9FLP 0723 | tin-no-prefix 0 14 note
DOT IHKB 9FLP 0723 | tin-symbol 4 1 warning
DOT 1HKB 9FLPX Y723 | tin-no-date 4 15 warning
DOT 1HKB9FLPX10723 | tin-too-long 4 14 error
DOT 1H | tin-too-short 4 2 error
TREADWEAR 410 | treadwear-step 10 3 warning
TRACTION D | not-a-grade 9 1 error
TEMPERATURE | not-a-grade 11 0 error
MAX LOAD | maximum-unread 8 0 error
MAX LOAD 615 STONE | maximum-unread 9 3 error; name 13 5 note
MAX LOAD 615 KG (1556 LBS) | units-disagree 0 26 warning
225/45R17 91W MAX LOAD 690 KG (1521 LBS) | loads-disagree 14 26 warning
RIM Q | rim-unread 4 1 error
225/45R17 91W ROTATIOM | unknown 14 8 warning
225/45R17 91W TOURING | name 14 7 note
225/45R17 91W ) | bracket 14 1 warning
225/45R17 91W ( | bracket 14 1 warning
banana | nothing-read 0 6 error; name 0 6 note
é 225/45X17 | unknown 0 1 warning; not-a-construction 8 1 error
"#;

#[test]
fn every_refusal_says_where_and_what() {
    let mut seen = Vec::new();
    for line in TOLD.trim().lines() {
        let (text, expected) = line.split_once(" | ").unwrap();
        let marking = sidewall::parse(text);
        let told: Vec<String> = marking
            .problems
            .iter()
            .map(|p| {
                seen.push(p.kind.code());
                let severity = serde_json::to_value(p.severity).unwrap();
                format!("{} {} {} {}", p.kind.code(), p.at, p.len, severity.as_str().unwrap())
            })
            .collect();
        assert_eq!(told.join("; "), expected, "{text}");
    }
    for (text, code) in [("", "empty"), (" \n", "empty"), ("x".repeat(LONGEST + 1).as_str(), "too-long")] {
        let marking = sidewall::parse(text);
        assert_eq!(marking.problems.iter().map(|p| p.kind.code()).collect::<Vec<_>>(), [code]);
        assert!(!marking.understood() && marking.refused());
    }
}

#[test]
fn the_code_of_a_problem_is_its_name_in_data() {
    for line in TOLD.trim().lines() {
        for problem in sidewall::parse(line.split_once(" | ").unwrap().0).problems {
            assert_eq!(serde_json::to_value(&problem.kind).unwrap()["what"], problem.kind.code());
        }
    }
}

#[test]
fn a_megabyte_is_refused_at_once() {
    let text = "225/45R17 91W ".repeat(75_000);
    let started = std::time::Instant::now();
    for _ in 0..100 {
        assert_eq!(sidewall::parse(&text).problems[0].kind.code(), "too-long");
        assert!(sidewall::candidates(&text, 5).is_empty());
        assert!(text.parse::<sidewall::Size>().is_err());
    }
    // A hundred times; reading the megabyte even once with the grammar takes longer.
    assert!(started.elapsed().as_millis() < 500, "{:?}", started.elapsed());
}

/// Approval numbers (E-mark, sound mark) are never dates.
#[test]
fn an_approval_number_is_never_a_date() {
    for text in
        ["E4 0212345", "E4 0723", "(E13) 0045678-S2WR2", "E11 02 0723 S1W", "CCC A0723", "ECE R117 0723", "S2WR2"]
    {
        let marking = sidewall::parse(text);
        assert_eq!(marking.tin, None, "{text}: {marking}");
        assert!(!marking.approvals.is_empty(), "{text}");
    }
}
