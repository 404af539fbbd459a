//! Every row of the tables in `standards/` against the core's own constants.

use lugbook::calendar::{Day, TireWeek};
use lugbook::measure::{Load, LoadUnit};
use lugbook::sidewall::{
    self, HIGHEST_LOAD_INDEX, LoadRange, Service, SpeedSymbol, TemperatureGrade, Tin, TinForm, Traction, Utqg,
    load_of_index,
};

use super::rows;

#[test]
fn every_load_index_carries_what_the_table_says() {
    let rows = rows("load_index.csv");
    assert_eq!(rows.len(), usize::from(HIGHEST_LOAD_INDEX) + 1);
    for row in rows {
        let index: u16 = row["load_index"].parse().unwrap();
        let kg: f64 = row["max_load_kg"].parse().unwrap();
        assert_eq!(load_of_index(index), Some(kg), "load index {index}");
        let pounds: f64 = row["max_load_lb_rounded"].parse().unwrap();
        let ours = Load::new(kg, LoadUnit::Kilogram).unwrap().in_unit(LoadUnit::Pound);
        assert_eq!(ours.round(), pounds, "load index {index} in pounds");
    }
    assert_eq!(load_of_index(HIGHEST_LOAD_INDEX + 1), None);
}

/// A property of the R80 preferred numbers, used as a check; 11 pairs differ by
/// rounding alone (standards page, section 2).
#[test]
fn eighty_steps_carry_ten_times_the_load() {
    let mut rounded = Vec::new();
    for index in 0..=HIGHEST_LOAD_INDEX - 80 {
        let (low, high) = (load_of_index(index).unwrap(), load_of_index(index + 80).unwrap());
        if (high - 10.0 * low).abs() > 1e-9 {
            assert!((high / (10.0 * low) - 1.0).abs() < 0.006, "load index {index}");
            rounded.push(index);
        }
    }
    assert_eq!(rounded.len(), 11, "{rounded:?}");
    assert!((1..=HIGHEST_LOAD_INDEX).all(|i| load_of_index(i) > load_of_index(i - 1)));
}

#[test]
fn every_speed_symbol_has_the_speed_of_the_table() {
    let mut listed = Vec::new();
    for row in rows("speed_symbol.csv") {
        let Some(symbol) = SpeedSymbol::new(&row["symbol"]) else {
            // Not symbols by themselves: a description in brackets and two forms inside a size.
            let (odd, speed) = (row["symbol"].as_str(), row["max_kmh"].as_str());
            match odd {
                "(Y)" => {
                    let above: Service = "(95Y)".parse().unwrap();
                    assert!(above.above && format!("over {}", above.max_kmh().unwrap()) == speed);
                }
                "ZR" => {
                    assert!(sidewall::parse("225/45ZR17").size.unwrap().is_zr());
                    assert_eq!(speed, "over 240");
                    let slow = sidewall::parse("225/45ZR17 91H");
                    assert!(slow.problems.iter().any(|p| p.kind.code() == "slow-for-zr"));
                    assert!(sidewall::parse("225/45ZR17 91V").problems.is_empty());
                }
                "VR (old)" => assert_eq!(sidewall::parse("225/50VR16").problems[0].kind.code(), "old-speed-form"),
                _ => panic!("unknown row {odd}"),
            }
            continue;
        };
        assert_eq!(symbol.max_kmh().to_string(), row["max_kmh"], "{symbol}");
        let mph = f64::from(symbol.max_kmh()) / 1.609344;
        assert_eq!(mph.round().to_string(), row["max_mph_rounded"], "{symbol}");
        listed.push(symbol);
    }
    assert_eq!(listed, SpeedSymbol::all().collect::<Vec<_>>());
}

#[test]
fn load_falls_with_speed_as_the_table_says() {
    let mut rows_seen = 0;
    for row in rows("speed_load_reduction.csv") {
        let service: Service = format!("95{}", row["symbol"]).parse().unwrap();
        let [full, top, percent] =
            ["up_to_kmh_full_load", "at_kmh", "load_percent"].map(|key| row[key].parse::<f64>().unwrap());
        assert_eq!(service.load_percent_at(full), Some(100.0));
        assert_eq!(service.load_percent_at(top), Some(percent));
        let middle = service.load_percent_at(f64::midpoint(full, top)).unwrap();
        assert!((middle - f64::midpoint(100.0, percent)).abs() < 1e-9, "linear between");
        assert_eq!(service.load_percent_at(top + 0.1), None);
        rows_seen += 1;
    }
    assert_eq!(rows_seen, 3);
    let slow: Service = "95T".parse().unwrap();
    assert_eq!((slow.load_percent_at(190.0), slow.load_percent_at(191.0)), (Some(100.0), None));
}

#[test]
fn every_load_range_has_the_ply_rating_of_the_table_where_charts_agree() {
    for row in rows("load_range.csv") {
        let letter = row["letter"].chars().next().unwrap();
        let range = LoadRange::new(letter).unwrap_or_else(|| panic!("{letter} is a load range"));
        let expected: Option<u8> = (row["status"] == "S").then(|| row["ply_rating"].parse().unwrap());
        assert_eq!(range.ply_rating(), expected, "load range {letter}");
        let marking = sidewall::parse(&format!("LT245/75R16 120/116Q LOAD RANGE {letter}"));
        assert_eq!(
            marking.load_class().map(|c| c.code()),
            Some(format!("load-range-{}", row["letter"].to_lowercase()))
        );
        assert_eq!(marking.problems.iter().any(|p| p.kind.code() == "load-range-unclear"), expected.is_none());
    }
    // The second chart's letter is accepted and told.
    assert_eq!(sidewall::parse("LOAD RANGE K").problems[0].kind.code(), "load-range-unclear");
    assert_eq!(LoadRange::new('I'), None);
}

#[test]
fn every_year_has_the_weeks_of_the_table() {
    for row in rows("tin_weeks.csv") {
        let year: i16 = row["year"].parse().unwrap();
        let weeks: u8 = row["weeks_in_year_by_rule"].parse().unwrap();
        let code = |week: u8| format!("DOT 1HKB 9FLP {week:02}{:02}", year % 100);
        let made = |week: u8| code(week).parse::<Tin>().ok().and_then(|tin| tin.made());
        let first: Day = row["week01_sunday_rule_start"].parse().unwrap();
        assert_eq!(made(1).unwrap().from, first, "{year}");
        for week in 1..=weeks {
            let made = made(week).unwrap();
            assert_eq!(made.from, first.plus_days((i32::from(week) - 1) * 7));
            assert_eq!(made.to, made.from.plus_days(6));
            assert_eq!(made.week, TireWeek::new(week, year).unwrap());
        }
        assert!(made(weeks + 1).is_none() && made(0).is_none(), "{year}");
        // The last week may hold up to six days of the next year (49 CFR 574.5(b)(3)).
        let last = made(weeks).unwrap();
        assert!(last.from.year() == year && last.from.plus_days(7).year() == year + 1);
    }
}

#[test]
fn quality_grades_follow_their_table() {
    let mut rules = 0;
    for row in rows("utqg.csv") {
        rules += 1;
        match (row["item"].as_str(), row["grade"].as_str()) {
            ("traction", "method") | ("temperature", "method") | ("treadwear", "course" | "base course wear rate") => {}
            ("traction", "C") => assert_eq!(Traction::C.exceeds(), None),
            ("traction", grade) => {
                let grade = *Traction::ALL.iter().find(|t| t.as_str() == grade).unwrap();
                let (asphalt, concrete) = grade.exceeds().unwrap();
                assert!(row["rule"].contains(&format!("> {asphalt:.2}")), "{}", row["rule"]);
                assert!(row["rule"].contains(&format!("> {concrete:.2}")), "{}", row["rule"]);
                assert_eq!(Traction::of_friction(asphalt + 0.001, concrete + 0.001), grade);
                assert!(Traction::of_friction(asphalt, concrete + 0.001) > grade, "must exceed, not reach");
            }
            ("temperature", grade) => {
                let grade = *TemperatureGrade::ALL.iter().find(|t| t.as_str() == grade).unwrap();
                assert!(row["rule"].contains(&grade.from_mph().to_string()), "{}", row["rule"]);
            }
            ("treadwear", "number") => {
                assert!(sidewall::parse("TREADWEAR 400").problems.is_empty());
                assert_eq!(sidewall::parse("TREADWEAR 410").problems[0].kind.code(), "treadwear-step");
            }
            // From memory; agrees with the letter's share of 30,000 miles.
            ("treadwear", "projected mileage") => {}
            ("treadwear", "grade") => assert_eq!(Utqg::treadwear_of(30_000.0 * 402.0 / 402.0), Some(100)),
            ("treadwear", "percentage") => assert_eq!(Utqg::treadwear_of(30_000.0), Some(100)),
            ("scope", "excluded") => {}
            other => panic!("unknown row {other:?}"),
        }
    }
    assert_eq!(rules, 16);
}

/// The rule's text fixes the lengths; the list of letters is from memory, so a
/// letter outside it warns and is kept.
#[test]
fn numbers_follow_the_rules_of_their_table() {
    let body = |symbols: usize| "1HKB9FLP4"[..symbols].to_owned();
    let parse = |text: &str| sidewall::parse(&format!("DOT {text}"));
    let mut rules = 0;
    for row in rows("tin_rules.csv") {
        rules += 1;
        match row["rule"].as_str() {
            "new tire TIN length, current form" => {
                assert!(row["value"].starts_with("13 symbols = 3 plant + 6"));
                let tin = parse(&format!("{} 0723", body(9))).tin.unwrap();
                assert_eq!((tin.form(), tin.plant(), tin.complete()), (TinForm::Current, Some("1HK"), true));
                assert_eq!(parse(&format!("{}B 0723", body(9))).problems[0].kind.code(), "tin-too-long");
            }
            "new tire TIN length, older form" => {
                for optional in 0..=4 {
                    let tin = parse(&format!("{} 0723", body(4 + optional))).tin.unwrap();
                    assert_eq!((tin.form(), tin.plant(), tin.complete()), (TinForm::Older, Some("1H"), true));
                }
            }
            "older TIN minimum with 3-digit date" => {
                for symbols in 4..=8 {
                    let tin = parse(&format!("{} 317", body(symbols))).tin.unwrap();
                    assert_eq!((tin.form(), tin.text().len()), (TinForm::Older, symbols + 3));
                    assert_eq!(tin.ambiguous(), [1977, 1987, 1997]);
                }
            }
            "partial TIN hazard" => {
                let marking = parse("1HKB0723");
                assert_eq!(marking.problems[0].kind.code(), "tin-maybe-partial");
                assert!(marking.tin.unwrap().made().is_some());
            }
            "partial TIN content" => {
                let tin = parse("1HKB 9FLP").tin.unwrap();
                assert_eq!((tin.form(), tin.complete(), tin.made()), (TinForm::Partial, false, None));
            }
            "retread TIN" => {
                let tin = parse("1HK 0723").tin.unwrap();
                assert_eq!((tin.form(), tin.plant(), tin.text().len()), (TinForm::Retread, Some("1HK"), 7));
            }
            "date code" => assert!(parse("1HKB 9FLP 0723").problems.is_empty()),
            "old date code" => {
                let tin = parse("1HKB 9FLP 317").tin.unwrap();
                assert_eq!((tin.made(), tin.ambiguous().last()), (None, Some(&1997)));
            }
            "allowed symbols" => {
                assert_eq!(30_u32.pow(3), 27_000);
                let allowed: Vec<char> =
                    row["value"].split(" and ").next().unwrap().chars().filter(|c| *c != ' ').collect();
                assert_eq!(allowed.len() + 10, 30);
                for letter in ('A'..='Z').chain('0'..='9') {
                    let marking = parse(&format!("1{letter}KB 9FLP 0723"));
                    let told = marking.problems.iter().any(|p| p.kind.code() == "tin-symbol" && p.at == 5);
                    assert_eq!(told, !(allowed.contains(&letter) || letter.is_ascii_digit()), "{letter}");
                    assert!(marking.tin.is_some(), "warned, not refused");
                }
            }
            "DOT prefix" => {
                let with = parse("1HKB 9FLP 0723").tin;
                assert_eq!(sidewall::parse("1HKB 9FLP 0723").tin, with);
                assert_eq!(with.unwrap().text().len(), 12);
            }
            "Date-only stamps" => assert_eq!(parse("0723").tin.unwrap().form(), TinForm::DateOnly),
            // Rows about dates of the rule itself and the weeks, which have their own table.
            "full TIN side"
            | "effective date of 3-symbol plant codes"
            | "end of phase-in"
            | "week 01"
            | "calendar week" => {}
            other => panic!("unknown row {other}"),
        }
    }
    assert_eq!(rules, 16);
}
