//! Wheels off and on, and what is seen while they are off.

use clap::{Args, ValueEnum};
use lugbook::engine::{Command, Trouble};
use lugbook::entry::{LookAt, SpareNuts, TireDamage, Zone};
use lugbook::finding::State;
use serde_json::Value;

use super::codes::code;
use crate::options::{AtWord, mend, shorten};
use crate::tongue::say;

/// Which wheels.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook wheels RL RR")]
pub struct Wheels {
    /// Where they come off
    #[arg(required = true)]
    at: Vec<String>,
}

/// The spare.
#[derive(Debug, Args)]
#[command(after_help = "\
What is not printed is left out; nothing is guessed.

Example:
  lugbook spare RL \"T125/70D16 96M DOT 7K2 4HL1PX 1419\" --nuts same --studs 5 \\
    --pressure \"58 psi\" --limit \"50 mph\" --replace-by \"50 mi\"")]
pub struct Spare {
    /// Where the flat tire is
    flat: String,
    /// What stands on the spare: size, load and speed, DOT with its date
    text: String,
    /// Its pressure
    #[arg(long, allow_hyphen_values = true)]
    pressure: Option<String>,
    /// Whose nuts hold it: those of the wheel that came off, or its own
    #[arg(long, default_value = "same", value_parser = code::<SpareNuts>(&["same", "own"]))]
    nuts: SpareNuts,
    /// How many nuts hold it
    #[arg(long, value_name = "N")]
    studs: Option<u8>,
    /// The highest speed printed on it or in the manual
    #[arg(long, value_name = "SPEED", allow_hyphen_values = true)]
    limit: Option<String>,
    /// The distance within which it is to be replaced, as printed
    #[arg(long, value_name = "DISTANCE", allow_hyphen_values = true)]
    replace_by: Option<String>,
}

/// Which set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Which {
    /// The one that was stored last
    Stored,
    /// Wheels that this book does not know yet
    New,
}

/// The set that goes on.
#[derive(Debug, Args)]
pub struct Set {
    /// Which set
    which: Which,
}

/// Wheels stored.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook store \"rack B 12\"\n\n\"lugbook label\" writes the labels.")]
pub struct Store {
    /// Where they are kept
    rack: String,
    /// Where the wheel came off; all that came off when left out
    #[arg(long = "where", value_name = "PLACE")]
    place: Option<String>,
}

/// A wheel off.
#[derive(Debug, Args)]
pub struct Off {
    /// Where it came off
    at: String,
}

/// A look.
#[derive(Debug, Args)]
#[command(after_help = "\
Parts: hub-face hub-bore centering-ring studs seats valve valve-cap weights rim\ntire, pads disc hose boots damper bearing, brake other.
States: sound, watch, at-limit, below-limit, unsafe.

Examples:
  lugbook look FL sound                 hub face, studs, seats, valve and tire
  lugbook look RL studs unsafe --note \"one stud stripped\"
  lugbook look FR tire watch --damage cut --photo 5
  lugbook look FL pads at-limit --thickness \"3 mm\"
  lugbook look FL disc sound --thickness \"24 mm\" --least \"22 mm\"")]
pub struct Look {
    /// Where, which part, and how it stands; the state is the last word
    #[arg(value_name = "PLACE|PART|STATE", num_args = 1..=3, required = true)]
    words: Vec<String>,
    /// In your words
    #[arg(long, value_name = "TEXT")]
    note: Option<String>,
    /// What was found on the tire
    #[arg(long, value_enum)]
    damage: Option<Damage>,
    /// How thick a pad or disc was measured
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    thickness: Option<String>,
    /// How thick it must be at the least, as printed on it
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    least: Option<String>,
    /// Its photo, by its number in the job
    #[arg(long, value_name = "N")]
    photo: Option<usize>,
}

/// What can be found on a tire.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Damage {
    /// A bump or knot
    Bulge,
    /// A cut or crack, no cord seen
    Cut,
    /// Cord seen
    Cord,
    /// A nail in the tread
    NailTread,
    /// A nail in a shoulder
    NailShoulder,
    /// A nail in a sidewall
    NailSidewall,
}

impl From<Damage> for TireDamage {
    fn from(found: Damage) -> Self {
        match found {
            Damage::Bulge => Self::Bulge,
            Damage::Cut => Self::Cut,
            Damage::Cord => Self::Cord,
            Damage::NailTread => Self::Nail(Zone::Tread),
            Damage::NailShoulder => Self::Nail(Zone::Shoulder),
            Damage::NailSidewall => Self::Nail(Zone::Sidewall),
        }
    }
}

/// A wheel on.
#[derive(Debug, Args)]
#[command(
    after_help = "Read the mark on the tire aloud before the first nut. A mark that does not fit\nthe plan is told, with both tires.\n\nExample:\n  lugbook hang RL FR"
)]
pub struct Hang {
    /// The corner
    at: String,
    /// The mark on the tire
    mark: String,
}

/// One of the core's codes.
fn coded<T: serde::de::DeserializeOwned>(word: &str) -> Option<T> {
    serde_json::from_value(Value::String(word.to_ascii_lowercase())).ok()
}

impl From<Wheels> for Command {
    fn from(said: Wheels) -> Self {
        Self::ChooseWheels { at: said.at }
    }
}

impl From<Spare> for Command {
    fn from(said: Spare) -> Self {
        let Spare { flat, text, pressure, nuts, studs, limit, replace_by } = said;
        Self::Spare { flat, text, pressure, nuts, studs, limit, replace_by }
    }
}

impl From<Set> for Command {
    fn from(said: Set) -> Self {
        Self::BringSet { new: said.which == Which::New }
    }
}

impl From<Store> for Command {
    fn from(said: Store) -> Self {
        Self::Store { rack: said.rack, at: said.place }
    }
}

impl From<Off> for Command {
    fn from(said: Off) -> Self {
        Self::WheelOff { at: said.at }
    }
}

impl TryFrom<Look> for Command {
    type Error = Trouble;

    fn try_from(said: Look) -> Result<Self, Trouble> {
        let mut words = said.words.iter().cloned();
        let word = words.next_back().unwrap_or_default();
        let state = coded::<State>(&word).ok_or_else(|| {
            let given = shorten(&word);
            mend(say("no-state", &[("given", given.into())])).at_word("STATE")
        })?;
        let (mut at, mut part) = (None, None);
        for word in words {
            match coded::<LookAt>(&word) {
                Some(known) if part.is_none() => part = Some(known),
                _ if at.is_none() => at = Some(word),
                _ => return Err(mend(say("no-part", &[("given", shorten(&word).into())])).at_word("PART")),
            }
        }
        let damage = said.damage.map(TireDamage::from);
        let Look { note, thickness, least, photo, .. } = said;
        Ok(Self::Look { at, part, state, note, damage, thickness, least, photo })
    }
}

impl From<Hang> for Command {
    fn from(said: Hang) -> Self {
        Self::Hang { at: said.at, mark: said.mark }
    }
}
