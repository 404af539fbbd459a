//! The book, its check, and the card of a job.

use std::path::PathBuf;

use clap::{Args, Subcommand};
use lugbook::engine::{Trouble, TroubleKind};

use crate::answer::{Answer, Page};
use crate::next;
use crate::options::{Absent, Options, mend, named};

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
    page.line(&format!("Book in {}", engine.folder().display()));
    let mut part = |title: &str, rows: Vec<Vec<String>>| {
        if !rows.is_empty() {
            page.gap();
            page.line(title);
            page.table(&rows);
        }
    };
    part("People", view.people.iter().map(|p| vec![format!("  {}", p.name), p.role.clone()]).collect());
    part("Vehicles", view.vehicles.iter().map(|v| vec![format!("  {}", v.name), v.model.clone()]).collect());
    part("Tools", view.tools.iter().map(|tool| vec![format!("  {tool}")]).collect());
    let jobs = view.jobs.iter().map(|job| {
        let practice = if job.practice { ", practice" } else { "" };
        let title = format!("{}: {} ({}{practice})", job.vehicle, job.title, job.status_text);
        vec![format!("  {}", job.job), job.opened.clone(), title]
    });
    part("Jobs", jobs.collect());
    page.gap();
    match engine.next(options.speech()) {
        Some(view) => next::print(&view, &mut page),
        None => page.line(next::NO_JOB),
    }
    Answer::new(&view, page)
}

fn check(options: &Options) -> Result<Answer, Trouble> {
    let view = options.open(Absent::Refuse)?.check(options.speech())?;
    let mut page = Page::default();
    for problem in &view.problems {
        page.indented(&format!("{}  ", problem.at), &problem.sentence);
    }
    let state = if view.ok { "The book is whole" } else { "The book is damaged" };
    page.line(&format!("{state}: {} entries, {} photos, {} problems.", view.entries, view.photos, view.problems.len()));
    Ok(Answer::new(&view, page)?.exit(if view.ok { 0 } else { 4 }))
}

impl Card {
    /// Writes the card.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let html = options.open(Absent::Refuse)?.card(self.job, options.speech())?;
        let mut page = Page::default();
        let Some(out) = self.out else {
            page.push(html.trim_end());
            return Answer::new(&serde_json::json!({"job": self.job, "html": html}), page);
        };
        write(&out, html.as_bytes())?;
        page.line(&format!("Card written to {}", out.display()));
        Answer::new(&serde_json::json!({"job": self.job, "file": out.display().to_string()}), page)
    }
}

/// Writes a file whole or not at all.
pub fn write(file: &std::path::Path, bytes: &[u8]) -> Result<(), Trouble> {
    let name = named(file);
    let folder = file.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(std::path::Path::new("."));
    let trouble = |why: &std::io::Error| match why.kind() {
        std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded => Trouble {
            kind: TroubleKind::FreeSpace,
            sentence: format!("There is no room to write {name}: make some and try again."),
            at: Some("--out".to_owned()),
            pointer: None,
        },
        _ => Trouble { at: Some("--out".to_owned()), ..mend(format!("{name} can't be written: {why}.")) },
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
