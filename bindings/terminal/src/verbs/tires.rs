//! Tires: photos, sidewalls, marks, tread.

use std::path::PathBuf;

use clap::Args;
use lugbook::engine::Command;
use lugbook::entry::{PhotoOf, SidewallSide, TireLooks};

use super::codes::code;

/// A photo.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  lugbook photo sidewall fl.jpg FL\n  lugbook photo placard label.jpg")]
pub struct Photo {
    /// What it shows
    #[arg(value_parser = code::<PhotoOf>(&[
        "sidewall", "tread", "hub", "placard", "manual", "damage", "plate", "odometer", "vehicle"
    ]))]
    of: PhotoOf,
    /// The file: JPEG, PNG or WebP; it is copied into the book
    file: PathBuf,
    /// Where
    at: Option<String>,
}

/// A sidewall.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook wall FL \"LT245/75R16 120/116S DOT 1HKB 9FLP 0723\" --directional")]
pub struct Wall {
    /// Where the tire is
    at: String,
    /// What stands on it: size, load and speed, DOT with its date
    text: String,
    /// The sidewall that faces the vehicle
    #[arg(long)]
    inner: bool,
    /// A rotation arrow: the tire rolls one way
    #[arg(long)]
    directional: bool,
    /// Inside and outside are marked or differ
    #[arg(long)]
    asymmetric: bool,
    /// Metal studs in the tread
    #[arg(long)]
    studded: bool,
    /// A temporary-use spare
    #[arg(long)]
    temporary: bool,
    /// Retreaded
    #[arg(long)]
    retread: bool,
    /// Regrooved
    #[arg(long)]
    regrooved: bool,
    /// The tire laid out there that goes on, not the one that is on
    #[arg(long)]
    coming: bool,
}

/// A mark.
#[derive(Debug, Args)]
#[command(after_help = "Wipe old marks off first. Without MARK the tire gets its place's name.")]
pub struct Chalk {
    /// Where the tire is
    at: String,
    /// The mark
    mark: Option<String>,
    /// The tire laid out there that goes on, not the one that is on
    #[arg(long)]
    coming: bool,
}

/// Tread.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook tread FL \"7 6 7 /32\"\n  lugbook tread FL \"5,2 4,8 5,3 mm\"\n  lugbook tread FL \"7 6 7; 6 6 7; 7 6 6 /32\" --lowest \"5 /32\"\n\n\
Grooves from the outer one inward; places around the tire apart by “;”."
)]
pub struct Tread {
    /// Where the tire is
    at: String,
    /// The depths, with one unit at the end
    #[arg(allow_hyphen_values = true)]
    depths: String,
    /// The lowest spot seen, when lower than all of them
    #[arg(long, value_name = "DEPTH", allow_hyphen_values = true)]
    lowest: Option<String>,
    /// Why a reading that contradicts the last one stands
    #[arg(long, value_name = "TEXT")]
    reason: Option<String>,
    /// The tire laid out there that goes on, not the one that is on
    #[arg(long)]
    coming: bool,
}

/// A tape around a tire.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook tape 2LI \"126.25 in\"\n\nTwo tires that stand side by side are matched by it; the larger one goes outside."
)]
pub struct Tape {
    /// Where the tire is or belongs
    at: String,
    /// Its circumference around the tread
    #[arg(allow_hyphen_values = true)]
    around: String,
}

impl From<Tape> for Command {
    fn from(said: Tape) -> Self {
        Self::Around { at: said.at, around: said.around }
    }
}

impl From<Photo> for Command {
    fn from(said: Photo) -> Self {
        Self::Photo { file: said.file, of: said.of, at: said.at }
    }
}

impl From<Wall> for Command {
    fn from(said: Wall) -> Self {
        Self::Sidewall {
            at: said.at,
            side: if said.inner { SidewallSide::Inner } else { SidewallSide::Outer },
            text: said.text,
            looks: TireLooks {
                directional: said.directional,
                asymmetric: said.asymmetric,
                studded: said.studded,
                temporary: said.temporary,
                retread: said.retread,
                regrooved: said.regrooved,
            },
            coming: said.coming,
            by: None,
        }
    }
}

impl From<Chalk> for Command {
    fn from(said: Chalk) -> Self {
        Self::Mark { at: said.at, mark: said.mark, coming: said.coming }
    }
}

impl From<Tread> for Command {
    fn from(said: Tread) -> Self {
        let Tread { at, depths, lowest, reason, coming } = said;
        Self::Tread { at, depths, lowest, reason, coming }
    }
}
