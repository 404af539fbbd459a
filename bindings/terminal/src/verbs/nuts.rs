//! Nuts: cracked, begun, snug, torqued, rechecked.

use clap::Args;
use lugbook::engine::{Command, Trouble};
use lugbook::entry::Pass;

use crate::options::{AtWord, mend, shorten};
use crate::tongue::say;

/// Nuts without a click.
#[derive(Debug, Args)]
#[command(
    after_help = "Nuts count by clock position from the top, seen from outside. Without NUT: all\nof the wheel, in order."
)]
pub struct Turn {
    /// Where
    at: String,
    /// Which nut; the whole wheel in order when left out
    nut: Option<String>,
}

/// Nuts with a click.
#[derive(Debug, Args)]
#[command(after_help = "\
Nuts count by clock position from the top, seen from outside. Without NUT: all
of the wheel, in order. Say what it did when the wrench clicked: moved, or
still.

At the final pass a nut that clicks without moving is not proven: back it off a
quarter turn and tighten it again. At a recheck still is the wanted answer.

Examples:
  lugbook torque FL 1 moved
  lugbook torque FL moved")]
pub struct Click {
    /// Where
    at: String,
    /// Which nut, then moved or still
    #[arg(value_name = "[NUT] moved|still", num_args = 1..=2, required = true)]
    words: Vec<String>,
}

fn nut_of(word: &str) -> Result<u8, Trouble> {
    word.parse().map_err(|_| mend(say("no-nut", &[("given", shorten(word).into())])).at_word("NUT"))
}

impl Turn {
    /// The nuts of this pass.
    pub fn pass(self, pass: Pass) -> Result<Command, Trouble> {
        let nut = self.nut.as_deref().map(nut_of).transpose()?;
        Ok(Command::Nuts { at: self.at, pass, nut, moved: None })
    }
}

impl Click {
    /// The nuts of this pass.
    pub fn pass(self, pass: Pass) -> Result<Command, Trouble> {
        let mut words = self.words.into_iter();
        let said = words.next_back().unwrap_or_default();
        let moved = match said.to_ascii_lowercase().as_str() {
            "moved" => true,
            "still" => false,
            _ => {
                let given = shorten(&said);
                return Err(mend(say("no-click", &[("given", given.into())])).at_word("moved|still"));
            }
        };
        let nut = words.next().as_deref().map(nut_of).transpose()?;
        Ok(Command::Nuts { at: self.at, pass, nut, moved: Some(moved) })
    }
}
