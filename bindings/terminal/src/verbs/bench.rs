//! The bench: calculators that keep nothing. They take no book and ask the core's own rooms.

mod air;
mod files;
mod sizes;
mod torque;

pub use air::Inflate;
pub use files::{LiftFile, RotateFile, WearFile};
pub use sizes::{Sidewall, Sizes};
pub use torque::Tighten;

use lugbook::engine::Trouble;
use lugbook::measure::Reading;
use lugbook::words::{Worded, Words};

use crate::options::{AtWord, mend};

/// A reading as it was typed, with the option's name when it is none.
fn reading<U: Worded>(words: &Words, option: &str, text: &str) -> Result<Reading<U>, Trouble> {
    Reading::parse(text, None).map_err(|why| mend(words.misread::<U>(text, &why)).at_word(option))
}

/// The same for an option that may be left out.
fn optional<U: Worded>(words: &Words, option: &str, text: Option<&String>) -> Result<Option<Reading<U>>, Trouble> {
    text.map(|text| reading(words, option, text)).transpose()
}
