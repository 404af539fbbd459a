//! The calendar file, read back by a calendar library that has no part in writing it.

use calcard::icalendar::{ICalendar, ICalendarComponent, ICalendarComponentType, ICalendarProperty, ICalendarValue};
use lugbook::calendar::Moment;
use lugbook::due::YearlyEstimate;
use lugbook::logbook::Book;
use lugbook::report::reminder::{calendar, rechecks};
use lugbook::words::{Say, Speech, Words};
use proptest::prelude::*;

use crate::program::{done, say};
use crate::report::visit::{called, no_torque, told_recheck, whole};

fn words() -> Words {
    Words::new(Speech::default())
}

fn file(book: &Book, per_year: &str) -> Option<String> {
    let estimate = YearlyEstimate { per_year: per_year.parse().expect("a distance") };
    let now: Moment = "2026-03-20T10:11:12.345Z".parse().expect("a moment");
    calendar(book, book.jobs.last().expect("a job"), &estimate, now, &words())
}

fn events(file: &str) -> Vec<ICalendarComponent> {
    let calendar = ICalendar::parse(file).expect("a calendar");
    calendar.components.into_iter().filter(|part| part.component_type == ICalendarComponentType::VEvent).collect()
}

fn value(event: &ICalendarComponent, name: ICalendarProperty) -> ICalendarValue {
    let mut found = event.entries.iter().filter(|entry| entry.name == name);
    let entry = found.next().unwrap_or_else(|| panic!("no {name:?} in {event:?}"));
    assert!(found.next().is_none() && entry.values.len() == 1, "{name:?} stands once");
    entry.values[0].clone()
}

fn text(event: &ICalendarComponent, name: ICalendarProperty) -> String {
    match value(event, name) {
        ICalendarValue::Text(text) => text,
        other => panic!("{other:?}"),
    }
}

/// Year, month and day of a date without a time.
fn day(event: &ICalendarComponent, name: ICalendarProperty) -> (u16, u8, u8) {
    match value(event, name) {
        ICalendarValue::PartialDateTime(at) => {
            assert_eq!((at.hour, at.tz_hour), (None, None), "a whole day");
            (at.year.unwrap(), at.month.unwrap(), at.day.unwrap())
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_recheck_is_an_event_of_whole_days_with_the_odometer_in_its_text() {
    let book = whole().book();
    let file = file(&book, "3652.4 mi").expect("a calendar");
    let events = events(&file);
    assert_eq!(events.len(), 1);
    // Told on the day of the visit after 50 mi; ten miles a day by the estimate make five days.
    let told = book.jobs.last().unwrap().lines.last().unwrap().at.day();
    assert_eq!(told.plus_days(5).to_string(), "2026-11-29");
    assert_eq!(day(&events[0], ICalendarProperty::Dtstart), (2026, 11, 29));
    assert_eq!(day(&events[0], ICalendarProperty::Dtend), (2026, 11, 30));
    insta::assert_snapshot!(text(&events[0], ICalendarProperty::Description));
    assert_eq!(text(&events[0], ICalendarProperty::Summary), "Recheck the wheel nuts: Orchard truck");
}

#[test]
fn the_trades_window_is_an_event_from_its_beginning_to_its_end() {
    // 50 to 100 mi at ten miles a day (standards, README 7: recheck distances).
    let book = told_recheck("Orchard truck", &["100 mi"]).book();
    let windows = rechecks(&book, book.jobs.last().unwrap());
    assert_eq!(windows.len(), 1);
    let odometer = windows[0].odometer.expect("the odometer was read");
    assert_eq!(odometer.from.map(|from| from.to_string()).as_deref(), Some("48050 mi"));
    assert_eq!(odometer.by.to_string(), "48100 mi");
    let events = events(&file(&book, "3652.4 mi").unwrap());
    let (from, end) = (day(&events[0], ICalendarProperty::Dtstart), day(&events[0], ICalendarProperty::Dtend));
    assert_eq!((from, end), ((2026, 3, 7), (2026, 3, 13)));
}

#[test]
fn each_distance_told_has_an_event_of_its_own_with_a_name_that_stays() {
    let book = told_recheck("Orchard truck", &["25 mi", "500 mi"]).book();
    let (one, other) = (file(&book, "10000 mi").unwrap(), file(&book, "20000 mi").unwrap());
    let names = |file: &str| events(file).iter().map(|e| text(e, ICalendarProperty::Uid)).collect::<Vec<_>>();
    assert_eq!(names(&one).len(), 2);
    assert_eq!(names(&one), names(&other));
    assert_ne!(names(&one)[0], names(&one)[1]);
    assert_ne!(one, other, "the days differ");
}

#[test]
fn the_file_keeps_the_forms_of_rfc_5545() {
    let file = file(&whole().book(), "12000 mi").unwrap();
    assert!(file.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:") && file.ends_with("END:VCALENDAR\r\n"));
    assert!(file.contains("DTSTAMP:20260320T101112Z\r\n"), "{file}");
    assert_eq!(file.matches("\r\n").count(), file.matches('\n').count(), "3.1: lines end in CR LF");
    for line in file.split("\r\n") {
        assert!(line.len() <= 75, "3.1: {} octets: {line}", line.len());
    }
}

#[test]
fn without_a_told_recheck_or_a_usable_estimate_there_is_no_file() {
    assert_eq!(file(&no_torque().book(), "12000 mi"), None);
    assert_eq!(file(&called("Wren", "Barn van").book(), "12000 mi"), None);
    assert_eq!(file(&whole().book(), "0.5 mi"), None, "a hundred years");
}

proptest! {
    #[test]
    fn any_name_comes_back_whole(name in "[-;:,\\\\\"a-zñ漢 ]{1,120}") {
        let file = file(&told_recheck(&name, &["100 mi"]).book(), "12000 mi").unwrap();
        for line in file.split("\r\n") {
            prop_assert!(line.len() <= 75, "{line}");
        }
        let events = events(&file);
        prop_assert_eq!(events.len(), 1);
        prop_assert_eq!(text(&events[0], ICalendarProperty::Summary), format!("Recheck the wheel nuts: {name}"));
        let book = told_recheck(&name, &["100 mi"]).book();
        let recheck = rechecks(&book, &book.jobs[0])[0].say(&words());
        prop_assert!(text(&events[0], ICalendarProperty::Description).starts_with(&recheck));
    }
}

#[test]
fn the_program_writes_the_file_and_refuses_what_gives_no_date() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add Wren");
    done(&book, "lugbook vehicle add \"Farm truck\" --model \"Yardmule 25\" --own");
    done(&book, "lugbook job open \"Farm truck\" rotation-on-a-lift air");
    done(&book, "lugbook odometer \"48210 mi\"");
    let untold = say(&book, "lugbook export recheck --per-year \"12000 mi\"");
    assert_eq!((untold.code, untold.sentence()), (Some(2), "No recheck was told in this job. Tell the driver first."));
    done(&book, "lugbook tell-recheck");
    let out = folder.path().join("recheck.ics");
    done(&book, &format!("lugbook export recheck --per-year \"12000 mi\" --out {}", out.display()));
    assert_eq!(events(&std::fs::read_to_string(&out).unwrap()).len(), 1);
    for (wrong, said) in [("12000", "has no unit"), ("0 mi", "fifty years"), ("much", "not a number")] {
        let refused = say(&book, &format!("lugbook export recheck --per-year \"{wrong}\""));
        assert_eq!(refused.code, Some(2), "{wrong}");
        assert!(refused.sentence().contains(said), "{wrong}: {refused:?}");
    }
}
