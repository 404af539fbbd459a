//! A shop's own procedures: files that stand beside the book.

use std::path::{Path, PathBuf};

use clap::{Args, Subcommand};
use lugbook::engine::{Engine, Trouble};
use lugbook::procedure::Procedure;
use lugbook::words::{Speech, Words};

use super::bench::text;
use super::book::{cannot, write};
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options, mend, named};

/// The folder beside the book that a shop's procedures stand in.
const FOLDER: &str = "procedures";

/// What can be said of procedures.
#[derive(Debug, Subcommand)]
pub enum Procedures {
    /// Check a shop's own procedure and keep it with the book
    Add(Add),
    /// List the procedures that a job can be opened by
    List,
}

/// A file.
#[derive(Debug, Args)]
#[command(after_help = "\
A file may add steps and cautions and narrow what is done; it can't leave out a
gate. A bad file is told with its line, and nothing is changed. Added again under
the same id, it replaces the one before; jobs that were opened by it go on.

Example:
  lugbook procedure add winter-changeover.toml")]
pub struct Add {
    /// The procedure, in TOML
    file: PathBuf,
}

impl Procedures {
    /// Adds, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let mut engine = options.open(Absent::Refuse)?;
        if let Self::Add(Add { file }) = self {
            add(&mut engine, &file, options.speech())?;
        }
        let words = Words::new(options.speech());
        let mut page = Page::default();
        let rows = engine.procedures().iter().map(|p| vec![p.id.clone(), words.title(p)]).collect::<Vec<_>>();
        page.table(&rows);
        let view: Vec<_> = engine
            .procedures()
            .iter()
            .map(|p| serde_json::json!({"id": p.id, "version": p.version, "title": words.title(p), "steps": p.steps.len()}))
            .collect();
        Answer::new(&serde_json::json!({"procedures": view}), page)
    }
}

fn add(engine: &mut Engine, file: &Path, speech: Speech) -> Result<(), Trouble> {
    let text = text(file)?;
    let name = named(file);
    engine.add_procedure(&name, &text, speech)?;
    let Some(Procedure { id, .. }) = engine.procedures().last() else { return Ok(()) };
    let folder = engine.folder().join(FOLDER);
    std::fs::create_dir_all(&folder).map_err(|why| mend(cannot("made", &named(&folder), &why)))?;
    write(&folder.join(format!("{id}.toml")), text.as_bytes())
}

/// Takes up the procedures that stand beside a book. One that was spoiled since
/// it was added is told and left out, so that the rest of the book can be used.
pub fn take_up(engine: &mut Engine, speech: Speech) {
    let Ok(files) = std::fs::read_dir(engine.folder().join(FOLDER)) else { return };
    let mut files: Vec<_> = files.flatten().map(|file| file.path()).collect();
    files.retain(|file| file.extension().is_some_and(|ext| ext == "toml"));
    files.sort();
    for file in files {
        let taken = text(&file).and_then(|text| engine.add_procedure(&named(&file), &text, speech));
        if let Err(trouble) = taken {
            eprintln!("{}", trouble.sentence);
        }
    }
}
