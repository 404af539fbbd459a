//! The book, its check, and the card of a job.

use std::path::{Path, PathBuf};

use clap::{Args, Subcommand};
use lugbook::engine::{Trouble, TroubleKind};

use crate::answer::{Answer, Page};
use crate::next;
use crate::options::{Absent, Options, mend, named};
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
}

/// The card.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook card --out card.html\n  lugbook card --job 3 --out card.html\n\nOne HTML file with everything in it, for a screen and for paper."
)]
pub struct Card {
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
    /// The file to write; without it the card goes to the screen or a pipe
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

/// The labels.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook label --out labels.html\n\nOne HTML page with a label for each wheel that was stored in the job."
)]
pub struct Label {
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
    /// The file to write; without it the page goes to the screen or a pipe
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

impl Books {
    /// Answers.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        match self.what {
            None => front(options),
            Some(Book::Check) => check(options),
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
    let jobs = view.jobs.iter().map(|job| {
        let practice = if job.practice { say("practice", &[]) } else { String::new() };
        let title = format!("{}: {} ({}{practice})", job.vehicle, job.title, job.status_text);
        vec![format!("  {}", job.job), job.opened.clone(), title]
    });
    part("jobs", jobs.collect());
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

impl Card {
    /// Writes the card.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let html = options.open(Absent::Refuse)?.card(self.job, options.speech())?;
        hand_over("card-written", self.job, &html, self.out.as_deref())
    }
}

impl Label {
    /// Writes the labels.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let html = options.open(Absent::Refuse)?.labels(self.job, options.speech())?;
        hand_over("labels-written", self.job, &html, self.out.as_deref())
    }
}

/// A page into its file, or to the screen.
fn hand_over(written: &str, job: Option<usize>, html: &str, out: Option<&Path>) -> Result<Answer, Trouble> {
    let mut page = Page::default();
    let Some(out) = out else {
        page.push(html.trim_end());
        return Answer::new(&serde_json::json!({"job": job, "html": html}), page);
    };
    write(out, html.as_bytes())?;
    page.line(&say(written, &[("file", out.display().to_string().into())]));
    Answer::new(&serde_json::json!({"job": job, "file": out.display().to_string()}), page)
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
