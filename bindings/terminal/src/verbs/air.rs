//! Pressures, sensors and the warning lamp.

use clap::{Args, ValueEnum};
use lugbook::engine::Command;
use lugbook::entry::{Relearn, SensorKind};

use super::codes::code;

/// A pressure.
#[derive(Debug, Args)]
#[command(
    after_help = "Stand aside when inflating. Never refill a tire run flat before it is inspected.\n\nExamples:\n  lugbook air FL \"38 psi\" --found\n  lugbook air FL \"50 psi\" --cold"
)]
pub struct Air {
    /// Where
    at: String,
    /// The pressure, with its unit
    #[arg(allow_hyphen_values = true)]
    pressure: String,
    /// Found, not set
    #[arg(long)]
    found: bool,
    /// The tire is cold: not driven more than a couple of miles in three hours
    #[arg(long)]
    cold: bool,
    /// The tire is warm
    #[arg(long, conflicts_with = "cold")]
    warm: bool,
}

/// A sensor.
#[derive(Debug, Args)]
pub struct Sensor {
    /// Where
    at: String,
    /// Its number
    number: String,
    /// In the wheel laid out there that goes on
    #[arg(long)]
    coming: bool,
}

/// Sensors learned anew.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook relearn done --method wheel-tool")]
pub struct Relearning {
    /// What came of it
    #[arg(value_parser = clap::builder::PossibleValuesParser::new(["done", "owner-told", "not-needed"]))]
    outcome: String,
    /// How the vehicle learns them
    #[arg(long, value_parser = code::<Relearn>(&["drive", "menu", "wheel-tool", "socket"]))]
    method: Option<Relearn>,
}

/// The lamp.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Light {
    /// It is on
    On,
    /// It is off
    Off,
}

/// The pressure warning lamp.
#[derive(Debug, Args)]
pub struct Lamp {
    /// How it is, with the ignition on
    light: Light,
    /// The system: a sensor in each wheel, by wheel speed, none
    #[arg(long, default_value = "unknown",
          value_parser = code::<SensorKind>(&["direct", "indirect", "none", "unknown"]))]
    sensors: SensorKind,
}

impl From<Air> for Command {
    fn from(said: Air) -> Self {
        let cold = match (said.cold, said.warm) {
            (true, _) => Some(true),
            (_, true) => Some(false),
            _ => None,
        };
        Self::Pressure { at: said.at, pressure: said.pressure, set: !said.found, cold }
    }
}

impl From<Sensor> for Command {
    fn from(said: Sensor) -> Self {
        Self::Sensor { at: said.at, number: said.number, coming: said.coming }
    }
}

impl From<Relearning> for Command {
    fn from(said: Relearning) -> Self {
        Self::Relearn { outcome: said.outcome, method: said.method }
    }
}

impl From<Lamp> for Command {
    fn from(said: Lamp) -> Self {
        Self::Lamp { on: said.light == Light::On, sensors: said.sensors }
    }
}
