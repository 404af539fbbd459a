//! Vehicles.

use clap::{Args, Subcommand, ValueEnum};
use lugbook::engine::{Command, Trouble};
use lugbook::vehicle::{Class, Equipment};

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// What can be said of vehicles.
#[derive(Debug, Subcommand)]
pub enum Vehicle {
    /// Add a vehicle with a tire at each of its places
    Add(Add),
    /// Say what a vehicle has that changes how it is raised
    Has(Has),
    /// List the vehicles and what is on the shelf for them
    List,
}

/// Classes of vehicles.
const CLASSES: &[&str] = &["car", "light-truck", "truck", "bus", "light-trailer", "trailer"];

/// What changes how a vehicle is raised.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum What {
    /// Springs of air that level by themselves
    AirSuspension,
    /// A high-voltage battery: electric or hybrid
    HighVoltage,
    /// It was looked for: neither of them
    Neither,
}

/// What a vehicle has.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook vehicle has air-suspension high-voltage --vehicle \"Orchard truck\"")]
pub struct Has {
    /// What changes how it is raised
    #[arg(required = true, value_enum)]
    what: Vec<What>,
    /// The vehicle; the one in the bay when left out
    #[arg(long)]
    vehicle: Option<String>,
}

/// What was said, as the core has it; none when nothing was said.
fn equipment(said: &[What]) -> Option<Vec<Equipment>> {
    let mut has: Vec<Equipment> = said
        .iter()
        .filter_map(|what| match what {
            What::AirSuspension => Some(Equipment::AirSuspension),
            What::HighVoltage => Some(Equipment::HighVoltage),
            What::Neither => None,
        })
        .collect();
    has.sort();
    has.dedup();
    (!said.is_empty()).then_some(has)
}

/// A vehicle.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook vehicle add \"Orchard truck\" --class light-truck --spare \\\n    --model \"make, model, year\" --has neither\n  lugbook vehicle add \"Yard tractor\" --class truck --axles single,dual,dual \\\n    --model \"make, model, year\"\n\n\
Torque, placard, drive and lift points are kept for the model, so the next\nvehicle of the same model finds them on the shelf."
)]
pub struct Add {
    /// What it is called in the shop
    name: String,
    /// Make, model and year as the owner says them
    #[arg(long)]
    model: String,
    /// What kind of vehicle it is
    #[arg(long, default_value = "car", value_parser = code::<Class>(CLASSES))]
    class: Class,
    /// Each axle from the front, single or dual wheels; two single ones when left out
    #[arg(long, value_name = "AXLE,…", value_delimiter = ',')]
    axles: Vec<String>,
    /// What changes how it is raised; may be given again. Left out: asked in its first job
    #[arg(long, value_name = "WHAT", value_enum)]
    has: Vec<What>,
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
            Self::Add(Add { name, model, class, axles, has, spare, own, plate }) => {
                let has = equipment(&has);
                let command = Command::AddVehicle { name, model, class, axles, has, spare, own, plate };
                Answer::of_change(&options.act(command, Absent::Refuse)?)
            }
            Self::Has(Has { what, vehicle }) => {
                let command = Command::Equip { vehicle, has: equipment(&what).unwrap_or_default() };
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
