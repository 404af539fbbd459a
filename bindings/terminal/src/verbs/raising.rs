//! Raising and lowering the vehicle.

use clap::{Args, ValueEnum};
use lugbook::engine::Command;
use lugbook::entry::Arm;

/// How high.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub enum Height {
    /// Wheels just clear of the ground
    Clear,
    /// At working height
    Full,
}

/// Raised.
#[derive(Debug, Args)]
pub struct Raise {
    /// How high it stands
    height: Height,
}

/// Weight and rating.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook weigh \"17000 lb\" --rated \"10 t\"\n\nOn a lift the whole vehicle is raised; on stands the axle is. What carries the least\ncounts: jack, stands or lift."
)]
pub struct Weigh {
    /// The weight that is raised, from the vehicle’s label or plate
    #[arg(allow_hyphen_values = true)]
    weight: String,
    /// The lowest rating marked on the gear that carries it
    #[arg(long, value_name = "WEIGHT", allow_hyphen_values = true)]
    rated: String,
}

impl From<Weigh> for Command {
    fn from(said: Weigh) -> Self {
        Self::Weigh { weight: said.weight, rating: said.rated }
    }
}

impl From<Raise> for Command {
    fn from(said: Raise) -> Self {
        Self::Lift {
            arm: match said.height {
                Height::Clear => Arm::Clear,
                Height::Full => Arm::Full,
            },
        }
    }
}
