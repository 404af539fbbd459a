//! The book, its check, and the card of a job.

use std::path::PathBuf;

use clap::{Args, Subcommand};
use lugbook::engine::{ProofView, Trouble, TroubleKind, verify_card};
use lugbook::report::paper::Sheet;
use serde_json::{Value, json};

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::next;
use crate::options::{Absent, AtWord, Options, mend, named};
use crate::tongue::say;

/// Alone, the book's front page: vehicles, people, jobs, tools.
#[derive(Debug, Args)]
pub struct Books {
    #[command(subcommand)]
    what: Option<Book>,
}

/// What can be asked of the book.
#[derive(Debug, Subcommand)]
pub enum Book {
    /// Check every entry and photo of the book
    Check,
    /// Say what the seals of this book's devices prove, and what they do not
    Verify,
}

/// The card.
#[derive(Debug, Args)]
#[command(
    args_conflicts_with_subcommands = true,
    after_help = "Examples:\n  lugbook card --out card.html\n  lugbook card --job 3 --paper a4 --out card.pdf\n  lugbook card verify card.html\n\nOne HTML file with everything in it, for a screen and for paper; or, when the\nfile’s name ends in .pdf, a PDF with page numbers, bookmarks and tags."
)]
pub struct Card {
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
    #[command(flatten)]
    to: To,
    #[command(subcommand)]
    what: Option<Given>,
}

/// What can be done with a card's file.
#[derive(Debug, Subcommand)]
pub enum Given {
    /// Say what a card's HTML file proves; no book and no network is needed
    Verify {
        /// The file
        file: PathBuf,
        /// The device that must have signed it, as it stands on the paper copy
        #[arg(long, value_name = "DEVICE")]
        device: Option<String>,
    },
}

/// Where a page goes.
#[derive(Debug, Args)]
pub struct To {
    /// The file to write, .html or .pdf; without it the page goes to the screen or a pipe
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// The sheet of a PDF
    #[arg(long, value_name = "SHEET", default_value = "letter", value_parser = code::<Sheet>(&["letter", "a4"]))]
    paper: Sheet,
}

/// The history.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook history \"Orchard truck\" --out history.html\n  lugbook history \"Orchard truck\" --out history.pdf\n\nEvery visit, where each tire was, and how its tread wears, with a forecast."
)]
pub struct History {
    /// The vehicle; the one of the last job when left out
    vehicle: Option<String>,
    #[command(flatten)]
    to: To,
}

/// The labels.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook label --out labels.html\n  lugbook label --out labels.pdf\n\nOne page with a label for each wheel that was stored in the job."
)]
pub struct Label {
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
    #[command(flatten)]
    to: To,
}

impl Books {
    /// Answers.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        match self.what {
            None => front(options),
            Some(Book::Check) => check(options),
            Some(Book::Verify) => proof(&options.open(Absent::Refuse)?.verify(options.speech())?),
        }
    }
}

fn front(options: &Options) -> Result<Answer, Trouble> {
    let engine = options.open(Absent::Refuse)?;
    let view = engine.front(options.speech());
    let mut page = Page::default();
    page.line(&say("book-in", &[("folder", engine.folder().display().to_string().into())]));
    let mut part = |title: &str, rows: Vec<Vec<String>>| {
        if !rows.is_empty() {
            page.gap();
            page.line(&say(title, &[]));
            page.table(&rows);
        }
    };
    part("people", view.people.iter().map(|p| vec![format!("  {}", p.name), p.role.clone()]).collect());
    part("vehicles", view.vehicles.iter().map(|v| vec![format!("  {}", v.name), v.model.clone()]).collect());
    part("tools", view.tools.iter().map(|tool| vec![format!("  {tool}")]).collect());
    part("archived", view.archived.iter().map(|thing| vec![format!("  {thing}")]).collect());
    let jobs = view.jobs.iter().map(|job| {
        let practice = if job.practice { say("practice", &[]) } else { String::new() };
        let title = format!("{}: {} ({}{practice})", job.vehicle, job.title, job.status_text);
        vec![format!("  {}", job.job), job.opened.clone(), title]
    });
    part("jobs", jobs.collect());
    page.gap();
    super::backup::lines(&view.backups, &mut page);
    page.gap();
    match engine.next(options.speech()) {
        Some(view) => next::print(&view, &mut page),
        None => page.line(&next::no_job()),
    }
    Answer::new(&view, page)
}

fn check(options: &Options) -> Result<Answer, Trouble> {
    let view = options.open(Absent::Refuse)?.check(options.speech())?;
    let mut page = Page::default();
    for problem in &view.problems {
        page.indented(&format!("{}  ", problem.at), &problem.sentence);
    }
    let entries = usize::try_from(view.entries).unwrap_or(usize::MAX);
    let counts =
        [("entries", entries.into()), ("photos", view.photos.into()), ("problems", view.problems.len().into())];
    page.line(&say(if view.ok { "book-whole" } else { "book-damaged" }, &counts));
    Ok(Answer::new(&view, page)?.exit(if view.ok { 0 } else { 4 }))
}

/// The largest card's file that is read, in bytes: far more than any card holds.
const LARGEST_CARD: u64 = 256 << 20;

fn verify(file: &std::path::Path, device: Option<&str>, options: &Options) -> Result<Answer, Trouble> {
    let name = named(file);
    let unread = |why: &dyn std::fmt::Display| mend(cannot("read", &name, &why.to_string())).at_word("FILE");
    // A short name stands for many devices; nothing would be proven by it.
    if device.is_some_and(|device| device.chars().filter(char::is_ascii_hexdigit).count() < 16) {
        return Err(mend(say("device-short", &[])).at_word("--device"));
    }
    let about = std::fs::metadata(file).map_err(|why| unread(&why))?;
    if !about.is_file() || about.len() > LARGEST_CARD {
        return Err(mend(say("no-card", &[("name", name.as_str().into())])).at_word("FILE"));
    }
    let bytes = std::fs::read(file).map_err(|why| unread(&why))?;
    let text = String::from_utf8(bytes);
    let text = text.ok().filter(|text| text.starts_with("<!DOCTYPE html>"));
    let text = text.ok_or_else(|| mend(say("no-card", &[("name", name.as_str().into())])).at_word("FILE"))?;
    proof(&verify_card(&text, device, options.speech()))
}

/// What is proven, what does not hold and where, and what is not proven.
fn proof(view: &ProofView) -> Result<Answer, Trouble> {
    let mut page = Page::default();
    let mut part = |title: &str, sentences: Vec<(String, &str)>| {
        if !sentences.is_empty() {
            page.gap();
            page.line(&say(title, &[]));
            for (at, sentence) in sentences {
                page.indented(&format!("  {at}"), sentence);
            }
        }
    };
    part("proof-refused", view.refused.iter().map(|line| (format!("{}: ", line.at), line.sentence.as_str())).collect());
    part("proof-proven", view.proven.iter().map(|said| (String::new(), said.as_str())).collect());
    part("proof-not-proven", view.not_proven.iter().map(|said| (String::new(), said.as_str())).collect());
    Ok(Answer::new(view, page)?.exit(if view.ok { 0 } else { 4 }))
}

impl Card {
    /// Writes the card.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        if let Some(Given::Verify { file, device }) = self.what {
            return verify(&file, device.as_deref(), options);
        }
        let (engine, speech) = (options.open(Absent::Refuse)?, options.speech());
        let Self { job, to, .. } = self;
        let html = || engine.card(job, speech);
        to.page("card-written", ("job", json!(job)), html, |sheet| engine.card_pdf(job, sheet, speech))
    }
}

impl History {
    /// Writes the history.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let (engine, speech) = (options.open(Absent::Refuse)?, options.speech());
        let (vehicle, to) = (self.vehicle.as_deref(), self.to);
        let html = || engine.history(vehicle, speech);
        to.page("history-written", ("vehicle", json!(vehicle)), html, |sheet| {
            engine.history_pdf(vehicle, sheet, speech)
        })
    }
}

impl To {
    /// Writes a page to a file, as HTML or as a PDF by the file's name, or says it.
    pub fn page(
        self,
        written: &str,
        (name, of): (&str, Value),
        html: impl FnOnce() -> Result<String, Trouble>,
        pdf: impl FnOnce(Sheet) -> Result<Vec<u8>, Trouble>,
    ) -> Result<Answer, Trouble> {
        let mut page = Page::default();
        let Some(out) = self.out else {
            let html = html()?;
            page.push(html.trim_end());
            return Answer::new(&json!({name: of, "html": html}), page);
        };
        let is_pdf = out.extension().is_some_and(|end| end.eq_ignore_ascii_case("pdf"));
        write(&out, &if is_pdf { pdf(self.paper)? } else { html()?.into_bytes() })?;
        page.line(&say(written, &[("file", out.display().to_string().into())]));
        Answer::new(&json!({name: of, "file": out.display().to_string()}), page)
    }
}

impl Label {
    /// Writes the labels.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let (engine, speech) = (options.open(Absent::Refuse)?, options.speech());
        let Self { job, to } = self;
        let html = || engine.labels(job, speech);
        to.page("labels-written", ("job", json!(job)), html, |sheet| engine.labels_pdf(job, sheet, speech))
    }
}

/// What can't be done with a file or folder, and what the system says of it.
pub fn cannot(what: &str, name: &str, why: &impl ToString) -> String {
    say(&format!("not-{what}"), &[("name", name.into()), ("why", why.to_string().into())])
}

/// Writes a file whole or not at all.
pub fn write(file: &std::path::Path, bytes: &[u8]) -> Result<(), Trouble> {
    let name = named(file);
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(std::path::Path::new("."));
    let trouble = |why: &std::io::Error| match why.kind() {
        std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded => Trouble {
            kind: TroubleKind::FreeSpace,
            sentence: say("no-room", &[("name", name.as_str().into())]),
            at: Some("--out".to_owned()),
            pointer: None,
        },
        _ => Trouble { at: Some("--out".to_owned()), ..mend(cannot("written", &name, why)) },
    };
    let mut part = file.as_os_str().to_owned();
    part.push(format!(".{}.part", std::process::id()));
    let part = PathBuf::from(part);
    let written = std::fs::write(&part, bytes).and_then(|()| {
        if folder.is_dir() { std::fs::rename(&part, file) } else { Err(std::io::ErrorKind::NotFound.into()) }
    });
    written.map_err(|why| {
        // What could not be finished is not left behind; the first trouble is the one to tell.
        let _ = std::fs::remove_file(&part);
        trouble(&why)
    })
}
