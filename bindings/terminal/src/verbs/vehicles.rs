//! Vehicles.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Trouble};
use lugbook::vehicle::Class;

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// What can be said of vehicles.
#[derive(Debug, Subcommand)]
pub enum Vehicle {
    /// Add a vehicle with a tire at each of its places
    Add(Add),
    /// List the vehicles and what is on the shelf for them
    List,
}

/// A vehicle.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook vehicle add \"Orchard truck\" --class light-truck --spare \\\n    --model \"make, model, year\"\n\n\
Torque, placard, drive and lift points are kept for the model, so the next\nvehicle of the same model finds them on the shelf."
)]
pub struct Add {
    /// What it is called in the shop
    name: String,
    /// Make, model and year as the owner says them
    #[arg(long)]
    model: String,
    /// What kind of vehicle it is
    #[arg(long, default_value = "car", value_parser = code::<Class>(&["car", "light-truck"]))]
    class: Class,
    /// It carries a spare
    #[arg(long)]
    spare: bool,
    /// It is your own: no approval is asked
    #[arg(long)]
    own: bool,
    /// The plate; kept apart, so that it can be erased
    #[arg(long)]
    plate: Option<String>,
}

impl Vehicle {
    /// Says it, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        match self {
            Self::Add(Add { name, model, class, spare, own, plate }) => {
                let command = Command::AddVehicle { name, model, class, spare, own, plate };
                Answer::of_change(&options.act(command, Absent::Refuse)?)
            }
            Self::List => {
                let front = options.open(Absent::Refuse)?.front(options.speech());
                let mut page = Page::default();
                for vehicle in &front.vehicles {
                    page.gap();
                    let plate = vehicle.plate.as_ref().map(|plate| format!(", {plate}")).unwrap_or_default();
                    page.line(&format!("{}: {} ({}){plate}", vehicle.name, vehicle.model, vehicle.class));
                    for sentence in &vehicle.shelf {
                        page.indented("  ", sentence);
                    }
                }
                Answer::new(&serde_json::json!({"vehicles": front.vehicles}), page)
            }
        }
    }
}
