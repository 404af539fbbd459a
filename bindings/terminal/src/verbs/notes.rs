//! What the customer says, what the vehicle shows, and whose hands do the steps.

use clap::{Args, ValueEnum};
use lugbook::engine::Command;

/// Whose hands.
#[derive(Debug, Args)]
pub struct Hands {
    /// The person whose hands do the steps from now on
    person: String,
}

/// Who holds the other side.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  lugbook second \"Kit Marlowe\"\n  lugbook second \"Kit Marlowe\" FL FR")]
pub struct Second {
    /// The person; anybody, known to the book or not
    person: String,
    /// Which wheels; all that come off when left out
    at: Vec<String>,
}

/// Which tool.
#[derive(Debug, Args)]
pub struct Use {
    /// The tool, by its name
    tool: String,
}

/// The complaint.
#[derive(Debug, Args)]
pub struct Complain {
    /// The customer's own words
    text: String,
}

/// Existing damage.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook damage \"scrape along the rear bumper\" --where RR --photo 2")]
pub struct Damage {
    /// What was seen, or none
    text: String,
    /// Where
    #[arg(long = "where", value_name = "PLACE")]
    place: Option<String>,
    /// Its photo, by its number in the job
    #[arg(long, value_name = "N")]
    photo: Option<usize>,
}

/// Who says it.
#[derive(Debug, Args)]
pub struct By {
    /// Who says it, when it is not written by that person
    #[arg(long, value_name = "NAME")]
    by: Option<String>,
}

/// What the customer said of a danger.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Reply {
    /// Lets it be repaired, or leaves the vehicle
    Accepts,
    /// Declines the repair
    Declines,
}

/// The customer was told.
#[derive(Debug, Args)]
pub struct Told {
    /// What the customer said
    reply: Reply,
    #[command(flatten)]
    by: By,
}

/// The odometer.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook odometer \"48210 mi\"\n\nNo thousands mark: 48,210 could mean two things.")]
pub struct Odometer {
    /// The reading, with its unit
    #[arg(allow_hyphen_values = true)]
    reading: String,
    /// Guessed, not read
    #[arg(long)]
    estimated: bool,
    /// The instrument was replaced and counts anew
    #[arg(long)]
    replaced: bool,
}

impl From<Hands> for Command {
    fn from(said: Hands) -> Self {
        Self::Hands { person: said.person }
    }
}

impl From<Second> for Command {
    fn from(said: Second) -> Self {
        Self::ShareWheels { person: said.person, at: said.at }
    }
}

impl From<Use> for Command {
    fn from(said: Use) -> Self {
        Self::UseTool { tool: said.tool }
    }
}

impl From<Complain> for Command {
    fn from(said: Complain) -> Self {
        Self::Complain { text: said.text }
    }
}

impl From<Damage> for Command {
    fn from(said: Damage) -> Self {
        let text = (!said.text.trim().eq_ignore_ascii_case("none")).then_some(said.text);
        Self::Damage { at: said.place, text, photo: said.photo }
    }
}

impl By {
    /// The approval, or its refusal.
    pub fn approval(self, approved: bool) -> Command {
        Command::Approve { approved, by: self.by, drawn: None }
    }
}

impl From<Told> for Command {
    fn from(said: Told) -> Self {
        Self::UnsafeTold { accepts: said.reply == Reply::Accepts, by: said.by.by, drawn: None }
    }
}

impl From<Odometer> for Command {
    fn from(said: Odometer) -> Self {
        Self::Odometer { reading: said.reading, estimated: said.estimated, replaced: said.replaced }
    }
}
