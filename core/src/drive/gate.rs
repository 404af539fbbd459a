//! The gate before a hand turns a wheel.

use serde::{Deserialize, Serialize};

use crate::vehicle::hub::Engine;

/// What holds the axle whose wheel is to be turned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Support {
    /// The wheels stand on the ground.
    Ground,
    /// A jack alone.
    Jack,
    /// A stand at one end of the axle.
    OneStand,
    /// Stands at both ends of the axle.
    BothStands,
    /// A lift with its locks set.
    Lift,
}

/// How the vehicle stands before a hand turns a wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Footing {
    /// The engine.
    pub engine: Engine,
    /// What holds the axle.
    pub support: Support,
    /// The wheels that stay on the ground are chocked on both sides. Says nothing on a lift.
    pub others_chocked: bool,
}

/// One thing that has to change before a hand turns a wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Unmet {
    /// The engine runs, or the vehicle is ready to drive.
    EngineRunning,
    /// The axle is neither on a lift nor on stands at both ends.
    NotOnLiftOrStands,
    /// The wheels that stay down are not chocked.
    OthersNotChocked,
}

/// Leave to turn a wheel by hand. Only [`may_turn`] gives it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MayTurn(());

/// Whether a wheel may be turned by hand: engine off, and on a lift or both
/// wheels of the axle on stands with the others chocked (common practice, no source).
///
/// # Errors
/// Everything that has to change first.
///
/// ```
/// use lugbook::vehicle::hub::Engine;
/// use lugbook::drive::{Footing, Support, Unmet, may_turn};
/// let footing = Footing { engine: Engine::Off, support: Support::Jack, others_chocked: true };
/// assert_eq!(may_turn(&footing), Err(vec![Unmet::NotOnLiftOrStands]));
/// assert!(may_turn(&Footing { support: Support::BothStands, ..footing }).is_ok());
/// ```
pub fn may_turn(footing: &Footing) -> Result<MayTurn, Vec<Unmet>> {
    let mut unmet = Vec::new();
    if footing.engine == Engine::Running {
        unmet.push(Unmet::EngineRunning);
    }
    if !matches!(footing.support, Support::BothStands | Support::Lift) {
        unmet.push(Unmet::NotOnLiftOrStands);
    }
    if footing.support != Support::Lift && !footing.others_chocked {
        unmet.push(Unmet::OthersNotChocked);
    }
    if unmet.is_empty() { Ok(MayTurn(())) } else { Err(unmet) }
}
