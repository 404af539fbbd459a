//! Taking back, putting away, erasing.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Erased, Kept, Trouble};
use lugbook::entry::Pass;

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};
use crate::tongue::say;

/// Alone, takes back what this device said last, and says the line to type instead.
#[derive(Debug, Args)]
pub struct Undo {
    #[command(subcommand)]
    what: Option<Listed>,
}

/// What can be asked of it.
#[derive(Debug, Subcommand)]
pub enum Listed {
    /// List what can be taken back, newest first
    List,
}

/// What is put away.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook archive vehicle \"Orchard truck\" \"sold\"\n  lugbook archive set \"Orchard truck\" \"worn out\"\n\nNothing is deleted: “lugbook bring-back” undoes it."
)]
pub struct Archive {
    /// What kind of thing
    #[arg(value_parser = code::<Kept>(&["vehicle", "person", "tool", "set"]))]
    kind: Kept,
    /// Its name; of a set of stored wheels, its vehicle's
    name: String,
    /// Why
    reason: String,
}

/// What comes back.
#[derive(Debug, Args)]
pub struct BringBack {
    /// What kind of thing
    #[arg(value_parser = code::<Kept>(&["vehicle", "person", "tool", "set"]))]
    kind: Kept,
    /// Its name; of a set of stored wheels, its vehicle's
    name: String,
}

/// What is erased for good.
#[derive(Debug, Subcommand)]
pub enum Erase {
    /// A person's name and phone number, wherever they stand beside an entry
    Person {
        /// The name
        name: String,
    },
    /// A vehicle's plate
    Plate {
        /// The vehicle
        vehicle: String,
    },
}

impl Undo {
    /// Takes back, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        if self.what.is_none() {
            let change = options.act(Command::Undo, Absent::Refuse)?;
            let again = change.again.as_ref().and_then(typed);
            return Answer::of_undo(&change, again);
        }
        let list = options.open(Absent::Refuse)?.undo_list(options.speech())?;
        let mut page = Page::default();
        if list.is_empty() {
            page.line(&say("nothing-to-undo", &[]));
        }
        for line in &list {
            page.indented(&format!("{}  {}  ", line.time, line.author), &line.said.join(" "));
        }
        Answer::new(&serde_json::json!({"commands": list}), page)
    }
}

impl From<Archive> for Command {
    fn from(said: Archive) -> Self {
        Self::Archive { kept: said.kind, name: said.name, reason: said.reason }
    }
}

impl From<BringBack> for Command {
    fn from(said: BringBack) -> Self {
        Self::BringBack { kept: said.kind, name: said.name }
    }
}

impl Erase {
    /// Erases.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let (what, name) = match &self {
            Self::Person { name } => (Erased::Person, name),
            Self::Plate { vehicle } => (Erased::Plate, vehicle),
        };
        let said = options.open(Absent::Refuse)?.erase(what, name, options.speech())?;
        let mut page = Page::default();
        said.iter().for_each(|sentence| page.line(sentence));
        Answer::new(&serde_json::json!({"said": said}), page)
    }
}

/// The line that says a command again, to be changed before it is typed.
fn typed(command: &Command) -> Option<String> {
    let at = |at: &Option<String>, flag: &str| at.iter().map(|at| format!(" {flag} {at}")).collect::<String>();
    let quoted = |text: &str| shell_words::quote(text).into_owned();
    let flag = |on: bool, name: &str| if on { format!(" --{name}") } else { String::new() };
    let line = match command {
        Command::Odometer { reading, estimated, replaced } => {
            format!("odometer {}{}{}", quoted(reading), flag(*estimated, "estimated"), flag(*replaced, "replaced"))
        }
        Command::Complain { text } => format!("complain {}", quoted(text)),
        Command::Damage { at: place, text, .. } => {
            format!("damage {}{}", quoted(text.as_deref().unwrap_or("none")), at(place, "--where"))
        }
        Command::Sidewall { at, text, coming, .. } => format!("wall {at} {}{}", quoted(text), flag(*coming, "coming")),
        Command::Mark { at, mark, coming } => {
            format!("chalk {at} {}{}", quoted(mark.as_deref().unwrap_or_default()), flag(*coming, "coming"))
        }
        Command::Tread { at, depths, lowest, coming, .. } => {
            let lowest = lowest.iter().map(|low| format!(" --lowest {}", quoted(low))).collect::<String>();
            format!("tread {at} {}{lowest}{}", quoted(depths), flag(*coming, "coming"))
        }
        Command::Pressure { at, pressure, set, .. } => {
            format!("air {at} {}{}", quoted(pressure), flag(!set, "found"))
        }
        Command::Hang { at, mark } => format!("hang {at} {}", quoted(mark)),
        Command::Nuts { at, pass, nut, moved } => {
            let verb = match pass {
                Pass::Cracked => "crack",
                Pass::Started => "start",
                Pass::Snug => "snug",
                Pass::Final => "torque",
                Pass::Recheck => "recheck",
                Pass::Loosened => "loosen",
            };
            let nut = nut.iter().map(|nut| format!(" {nut}")).collect::<String>();
            let moved = moved.map(|moved| if moved { " moved" } else { " still" }).unwrap_or_default();
            format!("{verb} {at}{nut}{moved}")
        }
        Command::Answer { step: Some(step), at: place, answer } => {
            let verb = match answer.as_str() {
                "seen" => "seen".to_owned(),
                count if count.parse::<u32>().is_ok() => format!("count {count}"),
                choice => format!("choose {}", quoted(choice)),
            };
            format!("{verb} --step {step}{}", at(place, "--where"))
        }
        Command::Skip { step: Some(step), at: place, reason } => {
            format!("skip {} --step {step}{}", quoted(reason), at(place, "--where"))
        }
        Command::OpenGate { step: Some(step), at: place, reason } => {
            format!("gate {} --step {step}{}", quoted(reason), at(place, "--where"))
        }
        Command::ParkJob { reason } => format!("job park {}", quoted(reason)),
        Command::CloseJob { reason } => format!("job close {}", quoted(reason)),
        Command::WheelOff { at } => format!("off {at}"),
        _ => return None,
    };
    Some(format!("lugbook {line}"))
}
