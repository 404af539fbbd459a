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

impl Export {
    /// Writes it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let engine = options.open(Absent::Refuse)?;
        let speech = options.speech();
        match self {
            Self::Readings(Sheet { vehicle, out }) => table(engine.readings_csv(vehicle.as_deref(), speech)?, out),
            Self::Jobs(Sheet { vehicle, out }) => table(engine.jobs_csv(vehicle.as_deref(), speech)?, out),
        }
    }
}

fn table(csv: String, out: Option<PathBuf>) -> Result<Answer, Trouble> {
    let mut page = Page::default();
    let Some(out) = out else {
        page.push(csv.trim_end());
        return Answer::new(&json!({"csv": csv}), page);
    };
    write(&out, csv.as_bytes())?;
    page.line(&say("table-written", &[("file", out.display().to_string().into())]));
    Answer::new(&json!({"file": out.display().to_string()}), page)
}
