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
