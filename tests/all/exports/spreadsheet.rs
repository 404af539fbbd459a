//! The tables: equal to the book when read back, and harmless in a spreadsheet.

use std::collections::HashMap;
use std::process::{Command, Stdio};

use lugbook::entry::Fact;
use lugbook::logbook::Book;
use lugbook::measure::{Depth, DepthUnit, Distance, DistanceUnit, Pressure, PressureUnit, Reading, Unit};
use lugbook::report::spreadsheet::{as_written, harmless, jobs, readings};
use proptest::prelude::*;

use crate::program::{done, say};
use crate::report::visit::{called, whole};
use crate::skipped::skipped;

/// The rows of a table by column name, by the `csv` crate, which takes the byte order mark off.
fn read(table: &str) -> Vec<HashMap<String, String>> {
    let mut reader = csv::Reader::from_reader(table.as_bytes());
    reader.deserialize().map(|row| row.expect("a row as wide as the header")).collect()
}

/// A value and its unit, as the table has them.
fn reading<U: Unit>(row: &HashMap<String, String>, metric: U) -> Reading<U> {
    let unit = U::ALL.iter().copied().find(|unit| unit.code() == row["unit"]).expect("a unit of this kind");
    let reading = Reading::new(row["value"].parse().expect("a number"), unit).expect("a reading");
    assert_eq!(row["metric_unit"], metric.code());
    let same: f64 = row["metric_value"].parse().expect("a number");
    assert!((same - reading.in_unit(metric)).abs() <= 0.00005, "{row:?}");
    reading
}

/// Takes the rows that a fact must have given from the front of the table.
fn take(
    fact: &Fact,
    place: &dyn Fn(lugbook::vehicle::Place) -> String,
    rows: &mut std::vec::IntoIter<HashMap<String, String>>,
) {
    let mut next = |kind: &str| {
        let row = rows.next().expect("a row");
        assert_eq!(row["reading"], kind, "{row:?}");
        row
    };
    match fact {
        Fact::TreadMeasured { at, tire, grooves, lowest, .. } => {
            for (around, depths) in grooves.iter().enumerate() {
                for (groove, depth) in depths.iter().enumerate() {
                    let row = next("tread");
                    assert_eq!(reading::<DepthUnit>(&row, DepthUnit::Millimetre), *depth as Depth);
                    assert_eq!((&row["position"], &row["tire"]), (&place(*at), &tire.to_string()));
                    assert_eq!(row["groove"], (groove + 1).to_string());
                    assert_eq!(row["around"], (around + 1).to_string());
                }
            }
            assert_eq!(reading::<DepthUnit>(&next("tread-lowest"), DepthUnit::Millimetre), *lowest);
        }
        Fact::PressureMeasured { at, pressure, set, .. } => {
            let row = next(if *set { "pressure-set" } else { "pressure-found" });
            assert_eq!(reading::<PressureUnit>(&row, PressureUnit::Kilopascal), *pressure as Pressure);
            assert_eq!(row["position"], place(*at));
        }
        Fact::OdometerRead { reading: odometer, .. } => {
            let row = next("odometer");
            assert_eq!(reading::<DistanceUnit>(&row, DistanceUnit::Kilometre), *odometer as Distance);
        }
        Fact::NutTightened { setting: Some(setting), at, .. } => {
            let row = rows.next().expect("a row");
            assert!(row["reading"].starts_with("torque-"), "{row:?}");
            assert_eq!(reading(&row, lugbook::measure::TorqueUnit::NewtonMetre), *setting);
            assert_eq!(row["position"], place(*at));
        }
        _ => {}
    }
}

fn equal_to(book: &Book, table: &str) {
    let mut rows = read(table).into_iter();
    for job in &book.jobs {
        let vehicle = book.vehicle(job.vehicle).expect("its vehicle");
        let place = |at| vehicle.layout.name(at, lugbook::vehicle::Letters::FrontFirst);
        for line in &job.lines {
            take(&line.fact, &place, &mut rows);
        }
    }
    assert_eq!(rows.next(), None, "nothing else is in the table");
}

#[test]
fn every_reading_read_back_is_the_one_in_the_book() {
    let book = whole().book();
    let table = readings(&book, None);
    assert!(read(&table).len() > 60, "{}", read(&table).len());
    equal_to(&book, &table);
}

#[test]
fn a_corrected_reading_stands_as_it_holds_and_says_that_it_was_corrected() {
    let table = read(&readings(&whole().book(), None));
    let odometer: Vec<_> = table.iter().filter(|row| row["reading"] == "odometer").collect();
    let told: Vec<_> = odometer.iter().map(|row| (row["value"].as_str(), row["corrected"].as_str())).collect();
    assert!(told.contains(&("48210", "yes")) || told.contains(&("48120", "yes")), "{told:?}");
    assert!(told.iter().any(|(_, corrected)| *corrected == "no"), "{told:?}");
}

#[test]
fn jobs_read_back_say_when_by_whom_and_how_they_ended() {
    let book = whole().book();
    let rows = read(&jobs(&book, None));
    assert_eq!(rows.len(), book.jobs.len());
    let last = rows.last().unwrap();
    let wanted = [
        ("job", "2"),
        ("status", "signed"),
        ("practice", "no"),
        ("vehicle", "Orchard truck"),
        ("signed_by", "Wren Tolliver"),
        ("hands", "Wren Tolliver; Kit Marlowe"),
        ("pattern", "rearward-cross"),
        ("wheels_off", "4"),
        ("steps_skipped", "1"),
        ("recheck_after", "50 mi"),
        ("odometer_unit", "mi"),
    ];
    for (column, value) in wanted {
        assert_eq!(last[column], value, "{column}");
    }
    let day: lugbook::calendar::Day = last["opened_date"].parse().expect("an ISO day");
    assert_eq!(day, book.jobs.last().unwrap().opened.day());
    let km: f64 = last["odometer_km"].parse().unwrap();
    let miles: f64 = last["odometer"].parse().unwrap();
    // 1 mi is 1.609344 km exactly (standards, conversions.csv).
    assert!((km - miles * 1.609344).abs() < 0.001, "{km} {miles}");
}

#[test]
fn a_table_is_utf_8_with_its_mark_and_no_plate_or_phone_stands_in_it() {
    for table in [readings(&whole().book(), None), jobs(&whole().book(), None)] {
        assert!(table.starts_with('\u{feff}'));
        assert!(table.lines().count() > 1 && table.matches("\r\n").count() == table.matches('\n').count());
        assert!(!table.contains("ORCH 12"), "the plate");
    }
}

#[test]
fn a_name_that_is_a_formula_is_written_harmless_and_read_back_whole() {
    let (mechanic, vehicle) = ("@SUM(1+1)*cmd|' /C calc'!A0", "=HYPERLINK(\"x\";=2+3)\u{e1}");
    let book = called(mechanic, vehicle).book();
    for table in [readings(&book, None), jobs(&book, None)] {
        let rows = read(&table);
        let row = &rows[0];
        assert_eq!(as_written(&row["vehicle"]), vehicle);
        assert_eq!(as_written(&row["hands"]), mechanic);
        assert!(row["vehicle"].starts_with("'=") && row["hands"].starts_with("'@"), "{row:?}");
        assert!(row["vehicle"].contains(";'=2"), "cut at a semicolon it is harmless too: {}", row["vehicle"]);
    }
}

proptest! {
    #[test]
    fn any_text_is_harmless_wherever_a_spreadsheet_cuts_it_and_comes_back_whole(text in "[-=+@'\" ;,|\t\n\r＝a-d0-3ñ]{0,16}") {
        let cell = harmless(&text);
        prop_assert_eq!(&as_written(&cell), &text);
        for piece in cell.split([';', ',', '|', '\t', '\r', '\n']) {
            let seen = piece.trim_start_matches([' ', '"']);
            prop_assert!(!seen.starts_with(['=', '+', '-', '@', '＝']), "{piece:?} of {cell:?}");
        }
    }
}

/// The same table by the CSV reader of another language, as JSON.
#[test]
fn another_languages_reader_sees_the_same_rows() {
    let script = "import csv,io,json,sys\n\
        text=sys.stdin.buffer.read().decode('utf-8-sig')\n\
        print(json.dumps(list(csv.DictReader(io.StringIO(text,newline='')))))";
    let process = Command::new("python3").args(["-c", script]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn();
    let Ok(mut process) = process else { return skipped("tables read by another language's library: no python3 here") };
    let table = readings(&called("Rose-Marie \u{201c}Ro\u{201d}, \"Ro\"", "=1+1; caf\u{e9}").book(), None);
    std::io::Write::write_all(&mut process.stdin.take().unwrap(), table.as_bytes()).unwrap();
    let out = process.wait_with_output().unwrap();
    assert!(out.status.success());
    let rows: Vec<HashMap<String, String>> = serde_json::from_slice(&out.stdout).unwrap();
    assert_eq!(rows, read(&table));
}

#[test]
fn the_program_writes_tables_and_refuses_a_vehicle_that_is_not_there() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add Wren");
    done(&book, "lugbook vehicle add \"Farm truck\" --model \"Yardmule 25\" --own");
    done(&book, "lugbook job open \"Farm truck\" rotation-on-a-lift air");
    done(&book, "lugbook odometer \"48210 mi\"");
    let file = folder.path().join("readings.csv");
    done(&book, &format!("lugbook export readings --out {}", file.display()));
    let written = std::fs::read_to_string(&file).unwrap();
    assert_eq!(read(&written)[0]["value"], "48210");
    let shown = done(&book, "lugbook export readings --vehicle \"farm TRUCK\"").out;
    assert_eq!(shown.trim_end(), written.replace("\r\n", "\n").trim_end().replace('\n', "\r\n"));
    assert_eq!(read(&done(&book, "lugbook export jobs").out).len(), 1);
    let refused = say(&book, "lugbook export jobs --vehicle Barge");
    assert_eq!(refused.code, Some(2));
    assert!(refused.sentence().contains("Farm truck"), "{refused:?}");
}
