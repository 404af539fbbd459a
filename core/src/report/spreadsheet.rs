//! Readings and jobs as CSV (RFC 4180), for a spreadsheet.
//!
//! One header row; one row a reading, or a job. UTF-8 with the byte order mark
//! by which spreadsheets tell it; lines end in CR LF. Days are ISO 8601, times
//! universal; positions `FL FR RL RR`, codes and units are those of the JSON
//! answers, in every language. A value stands as it was read, beside the same
//! in one unit of its kind: mm, kPa, km, N·m. Plates and phone numbers are left out.
//!
//! # Formulas
//! A spreadsheet takes a cell that begins with `=`, `+`, `-` or `@` for a
//! formula. [`harmless`] puts an apostrophe before such a sign wherever a cell
//! may begin, and [`as_written`] takes it away again.

use std::collections::BTreeSet;

use crate::entry::{Fact, Nuts};
use crate::ident::PersonId;
use crate::inspect::inspect;
use crate::logbook::{Book, Job, Line, Vehicle};
use crate::measure::{Depth, DepthUnit, DistanceUnit, PressureUnit, Reading, TorqueUnit, Unit, plain};
use crate::vehicle::{Letters, Place};

/// The columns of [`readings`].
pub const READING_COLUMNS: [&str; 21] = [
    "date",
    "time_utc",
    "job",
    "practice",
    "vehicle",
    "model",
    "reading",
    "position",
    "tire",
    "mark",
    "groove",
    "around",
    "value",
    "unit",
    "metric_value",
    "metric_unit",
    "note",
    "detail",
    "said_by",
    "hands",
    "corrected",
];

/// The columns of [`jobs`].
pub const JOB_COLUMNS: [&str; 24] = [
    "job",
    "opened_date",
    "opened_time_utc",
    "ended_date",
    "ended_time_utc",
    "status",
    "practice",
    "vehicle",
    "model",
    "class",
    "procedure",
    "circumstances",
    "odometer",
    "odometer_unit",
    "odometer_km",
    "odometer_note",
    "hands",
    "signed_by",
    "pattern",
    "wheels_off",
    "worst_finding",
    "gates_opened",
    "steps_skipped",
    "recheck_after",
];

/// By what a spreadsheet tells UTF-8.
const BYTE_ORDER_MARK: &str = "\u{feff}";

/// Signs that begin a formula, full-width ones too.
const FORMULA: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

/// Signs after which a cell may begin: a spreadsheet set to another separator
/// cuts there, in or out of quotes.
const CUTS: [char; 6] = [',', ';', '|', '\t', '\r', '\n'];

/// Text that no spreadsheet takes for a formula: an apostrophe stands before
/// each sign that could begin one, wherever a cell may begin.
///
/// ```
/// use lugbook::report::spreadsheet::{as_written, harmless};
/// assert_eq!(harmless("=1+1"), "'=1+1");
/// assert_eq!(harmless("Truck; @home"), "Truck; '@home");
/// assert_eq!(harmless("Rose-Marie"), "Rose-Marie");
/// assert_eq!(as_written("'=1+1"), "=1+1");
/// ```
pub fn harmless(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut begins = true;
    for c in text.chars() {
        if begins && FORMULA.contains(&c) {
            out.push('\'');
        }
        out.push(c);
        begins = still_begins(begins, c);
    }
    out
}

/// The text that [`harmless`] was given.
pub fn as_written(cell: &str) -> String {
    let mut out = String::with_capacity(cell.len());
    let mut begins = true;
    for c in cell.chars() {
        if begins && FORMULA.contains(&c) && out.ends_with('\'') {
            out.pop();
        }
        out.push(c);
        begins = still_begins(begins, c);
    }
    out
}

/// Whether a cell may still begin behind this sign: spaces and quotes don't count.
fn still_begins(begins: bool, c: char) -> bool {
    CUTS.contains(&c) || begins && (c.is_whitespace() || matches!(c, '\'' | '"'))
}

/// A table as it is written: cells of ours as they are, people's words made harmless.
struct Table {
    writer: csv::Writer<Vec<u8>>,
}

impl Table {
    fn new(columns: &[&str]) -> Self {
        let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
        // Writing to memory does not fail.
        let _ = writer.write_record(columns);
        Self { writer }
    }

    fn row<const N: usize>(&mut self, cells: [String; N]) {
        let _ = self.writer.write_record(cells.iter().map(|cell| harmless(cell)));
    }

    fn text(self) -> String {
        let bytes = self.writer.into_inner().unwrap_or_default();
        format!("{BYTE_ORDER_MARK}{}", String::from_utf8_lossy(&bytes))
    }
}

/// A figure that was read.
struct Figure {
    value: String,
    unit: &'static str,
    metric: String,
    metric_unit: &'static str,
}

impl Figure {
    fn of<U: Unit>(reading: &Reading<U>, metric: U) -> Self {
        Self {
            value: reading.value().to_string(),
            unit: reading.unit().code(),
            metric: plain(reading.in_unit(metric)),
            metric_unit: metric.code(),
        }
    }

    fn depth(depth: &Depth) -> Self {
        Self::of(depth, DepthUnit::Millimetre)
    }
}

/// What was read, where, and what must be known about it.
struct Row {
    reading: String,
    at: Option<Place>,
    groove: Option<usize>,
    around: Option<usize>,
    figure: Figure,
    note: String,
    detail: String,
}

impl Row {
    fn new(reading: &str, at: Option<Place>, figure: Figure) -> Self {
        Self {
            reading: reading.to_owned(),
            at,
            groove: None,
            around: None,
            figure,
            note: String::new(),
            detail: String::new(),
        }
    }
}

/// The readings of a line: each groove at each place around a tire is one.
fn rows(fact: &Fact) -> Vec<Row> {
    match fact {
        Fact::TreadMeasured { at, grooves, lowest, reason, .. } => {
            let detail = reason.clone().unwrap_or_default();
            let mut rows = Vec::new();
            for (place, around) in grooves.iter().zip(1..) {
                for (depth, groove) in place.iter().zip(1..) {
                    let row = Row::new("tread", Some(*at), Figure::depth(depth));
                    rows.push(Row { groove: Some(groove), around: Some(around), detail: detail.clone(), ..row });
                }
            }
            rows.push(Row { detail, ..Row::new("tread-lowest", Some(*at), Figure::depth(lowest)) });
            rows
        }
        Fact::PressureMeasured { at, pressure, set, cold, .. } => {
            let reading = if *set { "pressure-set" } else { "pressure-found" };
            let note = match cold {
                Some(true) => "cold",
                Some(false) => "warm",
                None => "",
            };
            vec![Row {
                note: note.to_owned(),
                ..Row::new(reading, Some(*at), Figure::of(pressure, PressureUnit::Kilopascal))
            }]
        }
        Fact::OdometerRead { reading, note, .. } => {
            let figure = Figure::of(reading, DistanceUnit::Kilometre);
            vec![Row { note: note.as_ref().map(code).unwrap_or_default(), ..Row::new("odometer", None, figure) }]
        }
        Fact::NutTightened { at, nuts, pass, turned, setting: Some(setting), .. } => {
            let detail = match nuts {
                Nuts::One(nut) => format!("nut {nut}"),
                Nuts::WheelInOrder(count) => format!("in-order {count}"),
            };
            let reading = format!("torque-{}", code(pass));
            let row = Row::new(&reading, Some(*at), Figure::of(setting, TorqueUnit::NewtonMetre));
            vec![Row { note: turned.as_ref().map(code).unwrap_or_default(), detail, ..row }]
        }
        _ => Vec::new(),
    }
}

fn yes(flag: bool) -> String {
    if flag { "yes" } else { "no" }.to_owned()
}

/// A person's name; empty when it was erased.
fn name(book: &Book, person: PersonId) -> String {
    book.person(person).and_then(|person| person.name.clone()).unwrap_or_default()
}

/// The jobs of a vehicle, or all, with their vehicles.
fn chosen<'b>(book: &'b Book, vehicle: Option<&Vehicle>) -> impl Iterator<Item = (&'b Job, &'b Vehicle)> {
    let only = vehicle.map(|vehicle| vehicle.id);
    let jobs = book.jobs.iter().filter(move |job| only.is_none_or(|only| job.vehicle == only));
    jobs.filter_map(|job| Some((job, book.vehicle(job.vehicle)?)))
}

/// Every reading that holds, in the order it was said: tread by groove and
/// place around the tire, pressures, odometer, wrench settings. Of one
/// vehicle, or of all.
pub fn readings(book: &Book, vehicle: Option<&Vehicle>) -> String {
    let mut table = Table::new(&READING_COLUMNS);
    for (job, vehicle) in chosen(book, vehicle) {
        for line in &job.lines {
            for row in rows(&line.fact) {
                table.row(reading(book, job, vehicle, line, row));
            }
        }
    }
    table.text()
}

fn reading(book: &Book, job: &Job, vehicle: &Vehicle, line: &Line, row: Row) -> [String; READING_COLUMNS.len()] {
    let tire = match line.fact {
        Fact::TreadMeasured { tire, .. } => Some(tire),
        _ => None,
    };
    let number = |number: Option<usize>| number.map(|number| number.to_string()).unwrap_or_default();
    [
        line.at.day().to_string(),
        line.at.clock(),
        job.number.to_string(),
        yes(job.practice),
        vehicle.name.clone(),
        vehicle.model.clone(),
        row.reading,
        row.at.map(|at| vehicle.layout.name(at, Letters::FrontFirst)).unwrap_or_default(),
        tire.map(|tire| tire.to_string()).unwrap_or_default(),
        tire.and_then(|tire| job.mark_of(tire)).unwrap_or_default().to_owned(),
        number(row.groove),
        number(row.around),
        row.figure.value,
        row.figure.unit.to_owned(),
        row.figure.metric,
        row.figure.metric_unit.to_owned(),
        row.note,
        row.detail,
        name(book, line.author),
        name(book, line.hands),
        yes(line.corrected_by.is_some()),
    ]
}

/// Every job, in the order they were opened. Of one vehicle, or of all.
pub fn jobs(book: &Book, vehicle: Option<&Vehicle>) -> String {
    let mut table = Table::new(&JOB_COLUMNS);
    for (job, vehicle) in chosen(book, vehicle) {
        table.row(job_row(book, job, vehicle));
    }
    table.text()
}

fn job_row(book: &Book, job: &Job, vehicle: &Vehicle) -> [String; JOB_COLUMNS.len()] {
    let count = |pick: fn(&Fact) -> bool| job.lines.iter().filter(|line| pick(&line.fact)).count().to_string();
    let ended =
        job.lines.iter().rev().find(|line| matches!(line.fact, Fact::JobSigned { .. } | Fact::JobClosed { .. }));
    let odometer = job.last(|fact| match fact {
        Fact::OdometerRead { reading, note, .. } => Some((*reading, *note)),
        _ => None,
    });
    let figure = odometer.map(|(reading, _)| Figure::of(&reading, DistanceUnit::Kilometre));
    let (value, unit, km) = figure.map(|f| (f.value, f.unit.to_owned(), f.metric)).unwrap_or_default();
    let mut hands: Vec<PersonId> = Vec::new();
    for line in &job.lines {
        if !hands.contains(&line.hands) {
            hands.push(line.hands);
        }
    }
    let hands: Vec<String> = hands.into_iter().map(|person| name(book, person)).collect();
    let signed = job.lines.iter().rev().find(|line| matches!(line.fact, Fact::JobSigned { .. }));
    let off: BTreeSet<Place> = job
        .lines
        .iter()
        .filter_map(|line| match line.fact {
            Fact::WheelOff { at, .. } => Some(at),
            _ => None,
        })
        .collect();
    let worst = inspect(book, job, job.rules()).iter().map(|found| found.state).max();
    let recheck = job.last(|fact| match fact {
        Fact::RecheckTold { after, .. } => Some(after.iter().map(ToString::to_string).collect::<Vec<_>>()),
        _ => None,
    });
    [
        job.number.to_string(),
        job.opened.day().to_string(),
        job.opened.clock(),
        ended.map(|line| line.at.day().to_string()).unwrap_or_default(),
        ended.map(|line| line.at.clock()).unwrap_or_default(),
        code(&job.status),
        yes(job.practice),
        vehicle.name.clone(),
        vehicle.model.clone(),
        code(&vehicle.class),
        job.procedure.clone(),
        job.circumstances.join(" "),
        value,
        unit,
        km,
        odometer.and_then(|(_, note)| note.as_ref().map(code)).unwrap_or_default(),
        hands.join("; "),
        signed.map(|line| name(book, line.author)).unwrap_or_default(),
        job.plan().map(|(pattern, _)| pattern.to_owned()).unwrap_or_default(),
        off.len().to_string(),
        worst.map(|state| state.code().to_owned()).unwrap_or_default(),
        count(|fact| matches!(fact, Fact::GateOpened { .. })),
        count(|fact| matches!(fact, Fact::StepSkipped { .. })),
        recheck.unwrap_or_default().join("; "),
    ]
}

/// The code that a value has in data.
fn code<T: serde::Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(code)) => code,
        _ => String::new(),
    }
}
