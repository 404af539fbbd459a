//! The cautions that stand before a step, each once.
//!
//! Cautions are common practice of the trade without a source unless their
//! text names one. The vehicle maker's manual, local codes and licensed
//! practice stand above all of them.

use serde::{Deserialize, Serialize};

/// The four signal words of ANSI Z535, by what may happen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// Damage, no injury.
    Notice,
    /// Minor or moderate injury.
    Caution,
    /// Death or serious injury could follow.
    Warning,
    /// Death or serious injury will follow.
    Danger,
}
