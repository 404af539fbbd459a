//! What goes out of the book for other programs.

use std::path::PathBuf;

use clap::{Args, Subcommand};
use lugbook::engine::Trouble;
use serde_json::json;

use super::book::write;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};
use crate::tongue::say;

/// What is written out.
#[derive(Debug, Subcommand)]
pub enum Export {
    /// Write every reading as a table for a spreadsheet (CSV)
    Readings(Sheet),
    /// Write every job as a table for a spreadsheet (CSV)
    Jobs(Sheet),
    /// Write the rechecks of a job for a calendar (iCalendar)
    Recheck(Recheck),
}

/// A table.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  lugbook export readings --vehicle \"Orchard truck\" --out readings.csv

One header row, then one row each; UTF-8, marked as such. Days are written
2026-11-24, times are universal time. A value stands as it was read, and again
in mm, kPa, km or N.m. Plates and phone numbers are left out.
An apostrophe stands before a name that a spreadsheet would take for a formula
(one that begins with = + - or @).")]
pub struct Sheet {
    /// Of this vehicle only
    #[arg(long, value_name = "NAME")]
    vehicle: Option<String>,
    /// The file to write; without it the table goes to the screen or a pipe
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

/// A calendar file.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  lugbook export recheck --per-year \"12000 mi\" --out recheck.ics

A recheck is due after a distance. It gets a date from what the owner drives in
a year, and the calendar's entry says that it is an estimate; the odometer's
figures stand beside it.")]
pub struct Recheck {
    /// What the owner drives in a year, by the owner's own estimate
    #[arg(long, value_name = "DISTANCE")]
    per_year: String,
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
    /// The file to write; without it the calendar goes to the screen or a pipe
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

impl Export {
    /// Writes it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let engine = options.open(Absent::Refuse)?;
        let speech = options.speech();
        match self {
            Self::Readings(Sheet { vehicle, out }) => {
                told("csv", "table-written", engine.readings_csv(vehicle.as_deref(), speech)?, out)
            }
            Self::Jobs(Sheet { vehicle, out }) => {
                told("csv", "table-written", engine.jobs_csv(vehicle.as_deref(), speech)?, out)
            }
            Self::Recheck(Recheck { per_year, job, out }) => {
                told("ics", "calendar-written", engine.recheck_calendar(job, &per_year, speech)?, out)
            }
        }
    }
}

/// Writes a text of this kind to a file, or says it.
fn told(kind: &str, written: &str, text: String, out: Option<PathBuf>) -> Result<Answer, Trouble> {
    let mut page = Page::default();
    let Some(out) = out else {
        page.push(text.trim_end());
        return Answer::new(&json!({ kind: text }), page);
    };
    write(&out, text.as_bytes())?;
    page.line(&say(written, &[("file", out.display().to_string().into())]));
    Answer::new(&json!({"file": out.display().to_string()}), page)
}
