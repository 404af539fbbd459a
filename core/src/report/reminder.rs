//! Rechecks of the nuts as a calendar file (iCalendar, RFC 5545).
//!
//! A recheck is due after a distance. It has a date only by the owner's own
//! estimate of a year's distance, and the event says so. Each recheck is one
//! event of whole days, shown as free time, with the odometer's figures in its
//! text; its name stays the same when the file is written again.

use icalendar::{Calendar, Component, Event, Property};

use crate::calendar::{Day, Moment};
use crate::due::{self, Odometer, Recheck, YearlyEstimate};
use crate::entry::{Fact, Kind, Shelf};
use crate::logbook::{Book, Job, Vehicle};
use crate::measure::{Distance, DistanceUnit, Unit};
use crate::words::{Say, Words};

/// When the nuts tightened in a job are to be checked again: the distances
/// that the driver was told, on the odometer of that job when it was read.
/// Empty when nobody was told.
///
/// Where the vehicle's papers print no distance and the trade's was told, it is
/// the trade's window.
pub fn rechecks(book: &Book, job: &Job) -> Vec<Recheck> {
    // Nobody is called back for what a class did on paper.
    if job.practice {
        return Vec::new();
    }
    let Some(told) = told(job) else { return Vec::new() };
    let read = job.last(|fact| match fact {
        Fact::OdometerRead { reading, note, .. } => Some(Odometer { at: *reading, note: *note }),
        _ => None,
    });
    let trade =
        |by: &Distance| DistanceUnit::ALL.iter().any(|unit| due::trade_recheck(*unit).is_some_and(|w| w.by == *by));
    let model = book.vehicle(job.vehicle).map(|vehicle| vehicle.model.as_str()).unwrap_or_default();
    let printed: Vec<Distance> = match book.on_shelf(model, Kind::Torque).map(|found| &found.shelf) {
        Some(Shelf::Torque { spec, .. }) => spec.recheck.iter().map(|recheck| recheck.by).collect(),
        _ => Vec::new(),
    };
    if printed.is_empty() && told.1.iter().all(trade) {
        return due::rechecks(&[], read.as_ref());
    }
    let mut rechecks = due::rechecks(told.1, read.as_ref());
    for recheck in rechecks.iter_mut().filter(|recheck| !printed.contains(&recheck.due.after.by)) {
        recheck.due.source = due::TOLD;
    }
    rechecks
}

/// When the recheck was told, and after which distances.
fn told(job: &Job) -> Option<(Moment, &[Distance])> {
    job.lines.iter().rev().find_map(|line| match &line.fact {
        Fact::RecheckTold { after, .. } if !after.is_empty() => Some((line.at, after.as_slice())),
        _ => None,
    })
}

/// The rechecks of a job as a calendar file, dated by the owner's estimate and
/// stamped `now`. `None` when no recheck was told, or the estimate is so small
/// that a date means nothing ([`due::dates`]).
pub fn calendar(book: &Book, job: &Job, estimate: &YearlyEstimate, now: Moment, words: &Words) -> Option<String> {
    let (since, _) = told(job)?;
    let vehicle = book.vehicle(job.vehicle)?;
    let mut calendar = Calendar::empty();
    let maker = concat!("-//Lugbook//Lugbook ", env!("CARGO_PKG_VERSION"), "//EN");
    for (name, value) in [("VERSION", "2.0"), ("PRODID", maker), ("CALSCALE", "GREGORIAN")] {
        calendar.append_property(Property::new(name, value));
    }
    for (recheck, number) in rechecks(book, job).iter().zip(1..) {
        let dates = due::dates(&recheck.due.after, since.day(), estimate)?;
        let estimated = words.sentences(vec![dates.say(words), per_year(estimate, words)]);
        let from = dates.from.unwrap_or(dates.by);
        let mut event = Event::new();
        event
            .uid(&format!("recheck-{number}-{}", job.id))
            .add_property("DTSTAMP", stamp(now))
            .append_property(day("DTSTART", from))
            // The day after the last one (RFC 5545, 3.6.1: the end is not part of the event).
            .append_property(day("DTEND", dates.by.plus_days(1)))
            .add_property("TRANSP", "TRANSPARENT")
            .summary(&words.text("calendar-recheck", &[("vehicle", vehicle.name.as_str().into())]))
            .description(&description(recheck, &estimated, job, vehicle, words));
        calendar.push(event);
    }
    Some(folded(&calendar.to_string()))
}

fn per_year(estimate: &YearlyEstimate, words: &Words) -> String {
    words.text("calendar-per-year", &[("distance", words.reading(&estimate.per_year).into())])
}

fn description(recheck: &Recheck, estimated: &str, job: &Job, vehicle: &Vehicle, words: &Words) -> String {
    let number = job.number.to_string();
    let about = words.text("card-title-of", &[("number", number.into()), ("name", vehicle.name.as_str().into())]);
    [recheck.say(words), estimated.to_owned(), words.text("calendar-deference", &[]), about].join("\n")
}

/// The file with no line longer than 75 octets (RFC 5545, 3.1). The library folds
/// too, but may leave a last piece of one octet more.
fn folded(file: &str) -> String {
    let mut out = String::with_capacity(file.len());
    let mut length = 0;
    for c in file.replace("\r\n ", "").chars() {
        match c {
            '\r' => length = 0,
            '\n' => {}
            c if length + c.len_utf8() > 75 => {
                out.push_str("\r\n ");
                length = 1 + c.len_utf8();
            }
            c => length += c.len_utf8(),
        }
        out.push(c);
    }
    out
}

/// A day as a property of that type.
fn day(name: &str, day: Day) -> Property {
    Property::new(name, day.to_string().replace('-', "")).add_parameter("VALUE", "DATE").done()
}

/// A moment as RFC 5545 writes it in universal time: `20261124T091500Z`.
fn stamp(at: Moment) -> String {
    let seconds = at.to_string();
    let whole = seconds.split(['.', 'Z']).next().unwrap_or_default();
    format!("{}Z", whole.replace(['-', ':'], ""))
}
