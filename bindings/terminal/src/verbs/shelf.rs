//! The specification shelf: what manuals and door labels print, by vehicle model.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Trouble};
use lugbook::entry::Kind;
use lugbook::vehicle::Drive;

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// Drives that a manual or an owner can name.
pub const DRIVES: &[&str] = &["front", "rear", "all", "part-time"];

/// What can be put on the shelf.
#[derive(Debug, Subcommand)]
pub enum Shelf {
    /// Wheel torque as printed
    Torque(Torque),
    /// Cold pressures from the placard, front axle first
    Placard(Placard),
    /// Which axles drive, from the manual
    Drive(Drives),
    /// The maker's rotation pattern
    Pattern(Pattern),
    /// Where the vehicle may be lifted, in the manual's words
    LiftPoints(LiftPoints),
    /// How thick brake pads must be at the least
    Brakes(Brakes),
    /// Say that torque or placard was looked for and can't be had
    Unknown(Unknown),
    /// List what is on the shelf
    List,
}

/// Where it is printed, and for which vehicle.
#[derive(Debug, Args)]
pub struct Printed {
    /// Where it is printed: title and page, or door label
    #[arg(long, value_name = "TEXT")]
    source: String,
    /// The vehicle; the one in the bay when left out
    #[arg(long)]
    vehicle: Option<String>,
}

/// Wheel torque.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook shelf torque \"125..150 N.m\" \"90..110 ft.lb\" --studs 5 \\\n    --source \"owner's manual, page 278\"\n\n\
Give each printing as it stands, range or single value. Never guess a torque:\nwhen it can't be found, \"lugbook shelf unknown torque\"."
)]
pub struct Torque {
    /// Each printing: "125..150 N.m", "100 ft.lb"
    #[arg(required = true)]
    printed: Vec<String>,
    #[command(flatten)]
    place: Printed,
    /// The thread: "M14 x 1.5"
    #[arg(long)]
    thread: Option<String>,
    /// Threads dry, oiled, or in the manual's words
    #[arg(long, value_name = "TEXT")]
    condition: Option<String>,
    /// Recheck after this distance; may be given again
    #[arg(long, value_name = "DISTANCE", allow_hyphen_values = true)]
    recheck: Vec<String>,
    /// Studs on each wheel
    #[arg(long, value_name = "N")]
    studs: Option<u8>,
    /// A photo of the page, by its number in the job
    #[arg(long, value_name = "N")]
    photo: Option<usize>,
}

/// Placard pressures.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook shelf placard \"50 psi\" \"65 psi\" --size \"LT245/75R16\" \\\n    --source \"door label\""
)]
pub struct Placard {
    /// Cold pressure of each axle, front first
    #[arg(required = true, value_name = "PRESSURE")]
    axles: Vec<String>,
    #[command(flatten)]
    place: Printed,
    /// The spare's pressure
    #[arg(long, value_name = "PRESSURE", allow_hyphen_values = true)]
    spare: Option<String>,
    /// The tire size on the placard
    #[arg(long)]
    size: Option<String>,
    /// A photo of the label, by its number in the job
    #[arg(long, value_name = "N")]
    photo: Option<usize>,
}

/// The drive.
#[derive(Debug, Args)]
pub struct Drives {
    /// The axles that drive
    #[arg(value_parser = code::<Drive>(DRIVES))]
    drive: Drive,
    #[command(flatten)]
    place: Printed,
}

/// The maker's pattern.
#[derive(Debug, Args)]
#[command(
    after_help = "Patterns: rearward-cross, forward-cross, x, front-to-rear, side-to-side;\nwith the spare each ends in -five."
)]
pub struct Pattern {
    /// The pattern's name
    pattern: String,
    #[command(flatten)]
    place: Printed,
}

/// Lift points.
#[derive(Debug, Args)]
pub struct LiftPoints {
    /// The manual's words
    text: String,
    #[command(flatten)]
    place: Printed,
}

/// Brakes.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook shelf brakes \"2 mm\" --source \"owner's manual, page 301\"\n\nWhat is printed on a disc goes with the look: \"lugbook look FL disc sound\n--thickness \\\"24 mm\\\" --least \\\"22 mm\\\"\"."
)]
pub struct Brakes {
    /// The least thickness of pads or linings, as printed
    #[arg(allow_hyphen_values = true)]
    pads: String,
    #[command(flatten)]
    place: Printed,
}

/// What can't be had.
#[derive(Debug, Args)]
#[command(
    after_help = "The final torque stays held until it is known, or its gate is opened with a\nreason; the card then says that the specification was not known."
)]
pub struct Unknown {
    /// What was looked for
    #[arg(value_parser = code::<Kind>(&["torque", "placard"]))]
    what: Kind,
}

impl Shelf {
    /// Says it, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let command = match self {
            Self::Torque(Torque {
                printed,
                place: Printed { source, vehicle },
                thread,
                condition,
                recheck,
                studs,
                photo,
            }) => Command::RecordTorque { vehicle, printed, thread, condition, recheck, studs, source, photo },
            Self::Placard(Placard { axles, place: Printed { source, vehicle }, spare, size, photo }) => {
                Command::RecordPlacard { vehicle, axles, spare, size, source, photo }
            }
            Self::Drive(Drives { drive, place: Printed { source, vehicle } }) => {
                Command::RecordDrive { vehicle, drive, source }
            }
            Self::Pattern(Pattern { pattern, place: Printed { source, vehicle } }) => {
                Command::RecordPattern { vehicle, pattern, source }
            }
            Self::LiftPoints(LiftPoints { text, place: Printed { source, vehicle } }) => {
                Command::RecordLiftPoints { vehicle, text, source }
            }
            Self::Brakes(Brakes { pads, place: Printed { source, vehicle } }) => {
                Command::RecordBrakes { vehicle, pads, source }
            }
            Self::Unknown(Unknown { what }) => Command::NotKnown { what },
            Self::List => return list(options),
        };
        Answer::of_change(&options.act(command, Absent::Refuse)?)
    }
}

fn list(options: &Options) -> Result<Answer, Trouble> {
    let front = options.open(Absent::Refuse)?.front(options.speech());
    let mut page = Page::default();
    let mut models: Vec<(&str, &[String])> = Vec::new();
    for vehicle in &front.vehicles {
        if !models.iter().any(|(model, _)| *model == vehicle.model) {
            models.push((&vehicle.model, &vehicle.shelf));
        }
    }
    for (model, sentences) in &models {
        page.gap();
        page.line(model);
        for sentence in *sentences {
            page.indented("  ", sentence);
        }
    }
    let data: Vec<_> =
        models.iter().map(|(model, shelf)| serde_json::json!({"model": model, "shelf": shelf})).collect();
    Answer::new(&serde_json::json!({"models": data}), page)
}
