//! Which axles drive: what was seen at the hubs, and what the owner says.

use clap::Args;
use lugbook::engine::{Command, Trouble};
use lugbook::vehicle::hub::{
    AxleMotor, Differential, Engine, Evidence, FreeHubs, Gear, Hub as Look, OffGround, Opposite, ParkingBrake,
    ShaftMotion, Turned, WheelMotion,
};
use lugbook::vehicle::{Drive, Side};

use super::codes::code;
use super::shelf::DRIVES;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// A look at one end of an axle.
#[derive(Debug, Args)]
#[command(after_help = "\
Looks: covered (a cap hides it), capless-unit (a closed bearing unit, which says
nothing), shaft-end (a spline or axle nut from outside), shaft or no-shaft (from
behind), not-looked (only turned).

Turning a wheel by hand: engine off, and on a lift, or both wheels of the axle
on stands with the others chocked.

Examples:
  lugbook hub RL shaft
  lugbook hub FL no-shaft
  lugbook hub RL not-looked --turned turns --shaft with-wheel --gear neutral \\
    --brake released --off-ground both --engine off --opposite other-way")]
pub struct Hub {
    /// The corner: FL, RR, 2L …
    at: String,
    /// What the hub shows
    #[arg(value_parser = code::<Look>(&["covered", "capless-unit", "shaft-end", "shaft", "no-shaft", "not-looked"]))]
    look: Look,
    /// What the wheel did under the hand
    #[arg(long, value_parser = code::<WheelMotion>(&["turns", "held"]), requires_all = ["gear", "brake", "off_ground", "engine"])]
    turned: Option<WheelMotion>,
    /// What the shaft did
    #[arg(long, default_value = "not-seen", requires = "turned",
          value_parser = code::<ShaftMotion>(&["with-wheel", "still", "not-seen"]))]
    shaft: ShaftMotion,
    /// What the opposite wheel did
    #[arg(long, default_value = "not-tried", requires = "turned",
          value_parser = code::<Opposite>(&["other-way", "same-way", "still", "not-tried"]))]
    opposite: Opposite,
    /// The gearbox
    #[arg(long, requires = "turned", value_parser = code::<Gear>(&["neutral", "park", "in-gear"]))]
    gear: Option<Gear>,
    /// The parking brake
    #[arg(long, requires = "turned", value_parser = code::<ParkingBrake>(&["released", "set", "not-known"]))]
    brake: Option<ParkingBrake>,
    /// Which wheels of the axle are off the ground
    #[arg(long, requires = "turned", value_parser = code::<OffGround>(&["none", "one", "both"]))]
    off_ground: Option<OffGround>,
    /// The engine
    #[arg(long, requires = "turned", value_parser = code::<Engine>(&["off", "running"]))]
    engine: Option<Engine>,
    /// The differential
    #[arg(long, default_value = "not-known",
          value_parser = code::<Differential>(&["open", "locking", "not-known"]))]
    differential: Differential,
    /// Free-wheeling hubs
    #[arg(long, default_value = "not-known",
          value_parser = code::<FreeHubs>(&["not-fitted", "free", "locked", "not-known"]))]
    free_hubs: FreeHubs,
    /// A motor of the axle's own
    #[arg(long, default_value = "not-known", value_parser = code::<AxleMotor>(&["own", "none", "not-known"]))]
    motor: AxleMotor,
}

/// The owner's word.
#[derive(Debug, Args)]
pub struct OwnerSays {
    /// The axles that drive, as the owner says
    #[arg(value_parser = code::<Drive>(DRIVES))]
    drive: Drive,
}

impl From<Hub> for Command {
    fn from(said: Hub) -> Self {
        let turned = match (said.turned, said.gear, said.brake, said.off_ground, said.engine) {
            (Some(wheel), Some(gear), Some(brake), Some(off_ground), Some(engine)) => {
                Some(Turned { gear, brake, off_ground, engine, wheel, shaft: said.shaft, opposite: said.opposite })
            }
            _ => None,
        };
        let evidence = Evidence {
            turned,
            differential: said.differential,
            free_hubs: said.free_hubs,
            motor: said.motor,
            // The engine takes axle and side from the corner.
            ..Evidence::look(1, Side::Left, said.look)
        };
        Self::Hub { at: Some(said.at), evidence }
    }
}

impl From<OwnerSays> for Command {
    fn from(said: OwnerSays) -> Self {
        Self::OwnerSaysDrive { drive: said.drive }
    }
}

/// What the evidence so far says.
pub fn verdict(options: &Options) -> Result<Answer, Trouble> {
    let sentence = options.open(Absent::Refuse)?.verdict(options.speech())?;
    let mut page = Page::default();
    page.line(&sentence);
    Answer::new(&serde_json::json!({"sentence": sentence}), page)
}
