//! `lugbook demo`: an invented visit, played by the program itself.
//!
//! The visit stands in `demo/visit.txt`, one command a line. Each is run as a
//! process of its own, as a person would type it; one is killed while its photo
//! is being written, to show that the book stands that.

mod pictures;
mod play;

use std::path::{Path, PathBuf};

use clap::Args;
use lugbook::engine::{Host, SystemHost, Trouble};

use crate::answer::{self, Answer, Page};
use crate::options::{Options, mend, named};

/// The visit.
const VISIT: &str = include_str!("../demo/visit.txt");

const INTRODUCTION: &str = "\
An invented visit: Wren Tolliver, a mobile tech, rotates the tires of a light
truck in an orchard yard, with one jack, four stands and an electric gun.
Each line that begins with \"lugbook\" was run as a command of its own, with
LUGBOOK_BOOK naming the book. To type them yourself on a new book, from this
folder:  export LUGBOOK_BOOK=another-folder
";

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
        show(options, INTRODUCTION);
        for line in VISIT.lines() {
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
        page.push(&format!("The card: {card}"));
        page.push(&format!("The book: {}", book.display()));
        page.line("Open the card in a browser. Then try:");
        let next = format!("  LUGBOOK_BOOK={} lugbook", quoted(&book));
        page.push(&format!("{next} job log"));
        page.push(&format!("{next} book"));
        page.push(&format!("{next} job open 'Orchard truck' \\"));
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
            Some(_) => Err(mend(format!("{name} is not empty: name an empty folder, or one to make."))),
        },
        Err(why) if why.kind() == std::io::ErrorKind::NotFound => match std::fs::create_dir_all(folder) {
            Ok(()) => Ok(folder.to_owned()),
            Err(why) => Err(play::disk(&format!("{name} can't be made"), &why)),
        },
        Err(_) => Err(mend(format!("{name} is no folder that can be used: name an empty one, or one to make."))),
    }
}

/// A path as a shell takes it.
fn quoted(path: &Path) -> String {
    shell_words::quote(&path.display().to_string()).into_owned()
}
