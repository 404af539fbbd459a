//! `lugbook demo`: an invented visit, played by the program itself.
//!
//! The visit stands in `demo/visit.txt`, one command a line, and in a file beside it in each other language. Each is run as a
//! process of its own, as a person would type it; one is killed while its photo
//! is being written, to show that the book stands that.

mod pictures;
mod play;

use std::path::{Path, PathBuf};

use clap::Args;
use lugbook::engine::{Host, SystemHost, Trouble};
use lugbook::words::Lang;

use crate::answer::{self, Answer, Page};
use crate::options::{Options, mend, named};
use crate::tongue::say;

/// The visit, told in a language: the same commands, with the words of the people in it.
fn visit(lang: Lang) -> &'static str {
    match lang {
        Lang::En => include_str!("../demo/visit.txt"),
        Lang::Es => include_str!("../demo/visit-es.txt"),
    }
}

/// Where the demo goes.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook demo --out visit\n\nWrites visit/book, visit/pictures and visit/card.html. The folder must be empty\nor not there yet."
)]
pub struct Demo {
    /// An empty folder, or one to make
    #[arg(long, value_name = "DIR")]
    out: PathBuf,
}

impl Demo {
    /// Plays the visit.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let folder = empty(&self.out)?;
        pictures::write(&folder.join("pictures"))?;
        let stage = play::Stage::new(&folder, options)?;
        let card = folder.join("card.html");
        let calibrated = SystemHost::default().now().day().plus_days(-240);
        let mut played = Vec::new();
        for line in textwrap::wrap(&say("demo-introduction", &[]), 78) {
            show(options, &format!("{line}\n"));
        }
        show(options, &format!("{}  export LUGBOOK_BOOK=another-folder\n", say("demo-type-them", &[])));
        for line in visit(options.lang).lines() {
            let line = line
                .replace("{pictures}", &quoted(&folder.join("pictures")))
                .replace("{card}", &quoted(&card))
                .replace("{calibrated}", &calibrated.to_string());
            match line.strip_prefix('!') {
                Some(line) => {
                    show(options, &stage.kill(line)?);
                    played.push("lugbook book check".to_owned());
                    played.push(line.to_owned());
                }
                None if line.starts_with("lugbook ") => {
                    let said = stage.run(&line)?;
                    show(options, &format!("{line}\n{said}"));
                    played.push(line);
                }
                None => show(options, &format!("{line}\n")),
            }
        }
        let (book, card) = (folder.join("book"), card.display().to_string());
        let mut page = Page::default();
        page.gap();
        page.push(&format!("{} {card}", say("demo-card", &[])));
        page.push(&format!("{} {}", say("demo-book", &[]), book.display()));
        page.line(&say("demo-try", &[]));
        let next = format!("  LUGBOOK_BOOK={} lugbook", quoted(&book));
        page.push(&format!("{next} job log"));
        page.push(&format!("{next} book"));
        page.push(&format!("{next} job open '{}' \\", say("demo-truck", &[])));
        page.push("    rotation-on-a-lift air");
        Answer::new(&serde_json::json!({"card": card, "book": book.display().to_string(), "played": played}), page)
    }
}

/// Prints as it goes, unless one JSON object was asked for.
fn show(options: &Options, text: &str) {
    if !options.json {
        // A reader that has seen enough does not stop the visit.
        let _ = answer::print(text);
    }
}

/// The folder, made when it is not there; refused when something is in it.
fn empty(folder: &Path) -> Result<PathBuf, Trouble> {
    let name = named(folder);
    match std::fs::read_dir(folder) {
        Ok(mut entries) => match entries.next() {
            None => Ok(folder.to_owned()),
            Some(_) => Err(mend(say("folder-not-empty", &[("name", name.into())]))),
        },
        Err(why) if why.kind() == std::io::ErrorKind::NotFound => match std::fs::create_dir_all(folder) {
            Ok(()) => Ok(folder.to_owned()),
            Err(why) => Err(play::disk("made", &name, &why)),
        },
        Err(_) => Err(mend(say("no-folder", &[("name", name.into())]))),
    }
}

/// A path as a shell takes it.
fn quoted(path: &Path) -> String {
    shell_words::quote(&path.display().to_string()).into_owned()
}
