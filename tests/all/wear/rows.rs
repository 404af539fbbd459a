//! The file form of a history, and files that can't be used.

use lugbook::wear::{Mistake, Question, RowMistake, Rows, wear};

fn rows(text: &str) -> Rows {
    let cells = |line: &str| line.split(',').map(|cell| cell.trim().to_owned()).collect::<Vec<_>>();
    let mut lines = text.lines();
    Rows { header: cells(lines.next().unwrap_or("")), rows: lines.map(cells).collect() }
}

#[test]
fn a_file_without_tire_names_follows_places_and_notices_a_new_tire() {
    let history =
        rows("distance_km,at,depth_mm\n0,FL,5\n10000,FL,4\n10000,RL,6\n20000,FL,8\n30000,FL,7").history().unwrap();
    let names: Vec<&str> = history.readings.iter().map(|r| r.tire.as_str()).collect();
    assert_eq!(names, ["FL", "FL", "RL", "FL 2", "FL 2"]);
    let answer = wear(&history, &Question::default()).unwrap();
    assert!((answer.positions[0].rate.mid - 0.1).abs() < 1e-9);
    let told: Vec<&str> = answer.tires.iter().map(|t| t.tire.as_str()).collect();
    assert_eq!(told, ["FL 2", "RL"]);
}

#[test]
fn a_file_may_count_miles_thirty_seconds_and_several_grooves() {
    let history = rows("distance_mi,at,tire,depth_32,depth_32_2\n0,LF,a,10,9\n12000,LF,a,7,6").history().unwrap();
    assert_eq!(history.readings[0].grooves.len(), 2);
    let answer = wear(&history, &Question::default()).unwrap();
    assert!((answer.positions[0].rate.mid / 0.79375 * 1.609344 - 0.25).abs() < 1e-9);
}

#[test]
fn what_a_file_gets_wrong_is_told_by_row_and_column() {
    let bad = |text: &str| rows(text).history().unwrap_err();
    assert_eq!((bad("at,depth_mm\n").row, bad("at,depth_mm\n").column.as_str()), (0, "distance_km"));
    assert!(matches!(bad("distance_km,at,depth_mm\n0,XX,5").mistake, RowMistake::NoSuchPlace { .. }));
    assert!(matches!(bad("distance_km,at,depth_mm\n0,FL,NaN").mistake, RowMistake::Unreadable { .. }));
    assert!(matches!(bad("distance_km,at,depth_mm\n0,FL,-1").mistake, RowMistake::Unreadable { .. }));
    assert!(matches!(bad("distance_km,at,depth_mm\n0,FL,").mistake, RowMistake::NoDepth));
    assert_eq!(bad("distance_km,at,depth_mm\n0,FL,5\ninf,FL,4").row, 2);
}

#[test]
fn histories_that_contradict_themselves_are_told() {
    let two = rows("distance_km,at,tire,depth_mm\n100,FL,a,5\n100,FL,b,6").history().unwrap();
    assert!(matches!(wear(&two, &Question::default()), Err(Mistake::TwoAt { .. })));
    let none = rows("distance_km,at,depth_mm").history().unwrap();
    assert_eq!(wear(&none, &Question::default()), Err(Mistake::NoReadings));
}
