//! Steps that ask for a sight, a choice or a count; skipping, gates, corrections.

use clap::Args;
use clap::builder::NonEmptyStringValueParser;
use lugbook::engine::Command;

/// Which step, when it is not the next one.
#[derive(Debug, Args)]
pub struct Which {
    /// The step's name in “lugbook job steps --json”; the next one when left out
    #[arg(long, value_name = "STEP")]
    step: Option<String>,
    /// Where, for a step at each wheel
    #[arg(long = "where", value_name = "PLACE", value_parser = NonEmptyStringValueParser::new())]
    place: Option<String>,
}

/// A sight.
#[derive(Debug, Args)]
pub struct Seen {
    #[command(flatten)]
    which: Which,
}

/// A choice.
#[derive(Debug, Args)]
pub struct Choose {
    /// One of the choices that “lugbook job” lists
    choice: String,
    #[command(flatten)]
    which: Which,
}

/// A count.
#[derive(Debug, Args)]
pub struct Count {
    /// How many
    #[arg(allow_hyphen_values = true)]
    count: String,
    #[command(flatten)]
    which: Which,
}

/// Why a step is skipped.
#[derive(Debug, Args)]
pub struct Skip {
    /// Why, in your words; it stands on the card
    reason: String,
    #[command(flatten)]
    which: Which,
}

/// Why a gate is opened.
#[derive(Debug, Args)]
#[command(
    after_help = "A gate holds a step until its conditions are met. Opened with a reason, the\nreason stands on the card."
)]
pub struct Gate {
    /// Why, in your words; it stands on the card
    reason: String,
    #[command(flatten)]
    which: Which,
}

/// A correction.
#[derive(Debug, Args)]
#[command(
    after_help = "Both stay in the book.\n\nExample:\n  lugbook correct 14 \"6 6 7 /32\" \"read the wrong groove\""
)]
pub struct Correct {
    /// The line's number in “lugbook job log”
    line: usize,
    /// The value that holds
    #[arg(allow_hyphen_values = true)]
    value: String,
    /// Why
    reason: String,
}

/// A line taken back.
#[derive(Debug, Args)]
pub struct Withdraw {
    /// The line's number in “lugbook job log”
    line: usize,
    /// Why
    reason: String,
}

impl From<Seen> for Command {
    fn from(said: Seen) -> Self {
        Self::Answer { step: said.which.step, at: said.which.place, answer: "seen".to_owned() }
    }
}

impl From<Choose> for Command {
    fn from(said: Choose) -> Self {
        Self::Answer { step: said.which.step, at: said.which.place, answer: said.choice }
    }
}

impl From<Count> for Command {
    fn from(said: Count) -> Self {
        Self::Answer { step: said.which.step, at: said.which.place, answer: said.count }
    }
}

impl From<Skip> for Command {
    fn from(said: Skip) -> Self {
        Self::Skip { step: said.which.step, at: said.which.place, reason: said.reason }
    }
}

impl From<Gate> for Command {
    fn from(said: Gate) -> Self {
        Self::OpenGate { step: said.which.step, at: said.which.place, reason: said.reason }
    }
}

impl From<Correct> for Command {
    fn from(said: Correct) -> Self {
        Self::Correct { line: said.line, value: said.value, reason: said.reason }
    }
}

impl From<Withdraw> for Command {
    fn from(said: Withdraw) -> Self {
        Self::Withdraw { line: said.line, reason: said.reason }
    }
}
