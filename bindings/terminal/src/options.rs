//! What every command takes, and the book it is said to.

use std::path::{Path, PathBuf};

use clap::Args;
use lugbook::calendar::Moment;
use lugbook::engine::{Change, Command, Engine, Host, SystemHost, Trouble, TroubleKind};
use lugbook::vehicle::Letters;
use lugbook::words::{DecimalMark, Lang, Speech, Units};

use crate::key::Machine;
use crate::tongue::say;
use crate::verbs::codes::code;
use crate::verbs::procedures;

/// Options of every command.
#[derive(Debug, Clone, Args)]
#[command(next_help_heading = "For every command")]
pub struct Options {
    /// The folder that holds the book [default: lugbook in your data folder]
    #[arg(long, global = true, value_name = "DIR", env = "LUGBOOK_BOOK", hide_env = true)]
    pub book: Option<PathBuf>,

    /// Who says it; not needed while only one person works from the book
    #[arg(long = "as", global = true, value_name = "PERSON", env = "LUGBOOK_AS", hide_env = true)]
    pub author: Option<String>,

    /// When it was, for entering what happened earlier: 2026-11-24T09:15:00Z
    #[arg(long = "at", global = true, value_name = "TIME", env = "LUGBOOK_AT", hide_env = true)]
    pub time: Option<String>,

    /// Language of the answers
    #[arg(long, global = true, env = "LUGBOOK_LANG", hide_env = true, default_value = "en",
          value_parser = code::<Lang>(&["en", "es"]))]
    pub lang: Lang,

    /// Units of the answers; what was read stays as it was read
    #[arg(long, global = true, env = "LUGBOOK_UNITS", hide_env = true, default_value = "as-read",
          value_parser = code::<Units>(&["as-read", "metric", "us"]))]
    pub units: Units,

    /// Letters of the positions: FL FR RL RR, or LF RF LR RR
    #[arg(long, global = true, env = "LUGBOOK_LETTERS", hide_env = true, default_value = "front-first",
          value_parser = code::<Letters>(&["front-first", "side-first"]))]
    pub letters: Letters,

    /// Decimals in the answers: 5.2 or 5,2; both are understood when typed
    #[arg(long, global = true, env = "LUGBOOK_DECIMAL", hide_env = true, default_value = "point",
          value_parser = code::<DecimalMark>(&["point", "comma"]))]
    pub decimal: DecimalMark,

    /// Answer with one JSON object
    #[arg(long, global = true)]
    pub json: bool,
}

/// Whether a command may make a book where there is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Absent {
    /// It makes one.
    Make,
    /// It says that there is none.
    Refuse,
}

impl Options {
    /// How the answers are worded.
    pub fn speech(&self) -> Speech {
        Speech { lang: self.lang, units: self.units, letters: self.letters, decimal: self.decimal }
    }

    /// The folder of the book.
    fn folder(&self) -> Result<PathBuf, Trouble> {
        if let Some(folder) = &self.book {
            return Ok(folder.clone());
        }
        let data = std::env::var_os("XDG_DATA_HOME").map(PathBuf::from).filter(|path| path.is_absolute());
        let home = || std::env::var_os("HOME").map(|home| Path::new(&home).join(".local/share"));
        data.or_else(home).map(|data| data.join("lugbook")).ok_or_else(|| mend(say("no-home", &[])))
    }

    /// The clock, or the time that was given.
    fn host(&self) -> Result<SystemHost, Trouble> {
        let Some(text) = &self.time else { return Ok(SystemHost::default()) };
        let at: Moment =
            text.parse().map_err(|_| mend(say("no-time", &[("given", shorten(text).into())])).at_word("--at"))?;
        // A clock that runs a little ahead on another device is forgiven; a wrong year is not.
        let latest = SystemHost::default().now().unix_ms().saturating_add(5 * 60 * 1000);
        if at.unix_ms() > latest {
            return Err(mend(say("time-to-come", &[("at", at.to_string().into())])).at_word("--at"));
        }
        Ok(SystemHost { at: Some(at) })
    }

    /// Opens the book.
    pub fn open(&self, absent: Absent) -> Result<Engine, Trouble> {
        let folder = self.folder()?;
        let host = self.host()?;
        if absent == Absent::Refuse && !folder.join("book.db").exists() && (!folder.exists() || folder.is_dir()) {
            let name = named(&folder);
            return Err(mend(say("no-book", &[("name", name.into())])));
        }
        let mut engine = Engine::open(&folder, Box::new(Machine(host)), self.speech())?;
        if let Some(told) = engine.told_at_opening(self.speech()) {
            eprintln!("{told}");
        }
        procedures::take_up(&mut engine, self.speech());
        Ok(engine)
    }

    /// Says one thing to the book.
    pub fn act(&self, command: Command, absent: Absent) -> Result<Change, Trouble> {
        let mut engine = self.open(absent)?;
        let change = engine.act(self.author.as_deref(), command, self.speech())?;
        if let Some(told) = engine.back_up_when_due(self.speech()) {
            eprintln!("{told}");
        }
        Ok(change)
    }
}

/// A refusal of the terminal's own.
pub fn mend(sentence: impl Into<String>) -> Trouble {
    Trouble { kind: TroubleKind::MendInput, sentence: sentence.into(), at: None, pointer: None }
}

/// Says which word was wrong.
pub trait AtWord {
    /// The same, with the word.
    fn at_word(self, word: &str) -> Self;
}

impl AtWord for Trouble {
    fn at_word(self, word: &str) -> Self {
        Self { at: Some(word.to_owned()), ..self }
    }
}

/// A word as it is told back: one line, not longer than a screen takes.
pub fn shorten(word: &str) -> String {
    clipped(word, 40)
}

/// A path as it is told back: its end says most.
pub fn named(path: &Path) -> String {
    let text: String = path.display().to_string().chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    let (count, most) = (text.chars().count(), 160);
    if count <= most { text } else { std::iter::once('…').chain(text.chars().skip(count - most)).collect() }
}

fn clipped(word: &str, most: usize) -> String {
    let plain: String = word.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    if plain.chars().count() <= most { plain } else { plain.chars().take(most - 1).chain(['…']).collect() }
}
