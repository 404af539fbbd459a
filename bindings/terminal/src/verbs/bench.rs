//! The bench: calculators that keep nothing. They take no book and ask the core's own rooms.

mod air;
mod files;
mod sizes;
mod torque;

pub use air::Inflate;
pub use files::{LiftFile, RotateFile, WearFile, text};
pub use sizes::{Sidewall, Sizes};
pub use torque::Tighten;

use lugbook::engine::Trouble;
use lugbook::measure::{DistanceUnit, LoadUnit, PressureUnit, Reading, SpanUnit, TorqueUnit};
use lugbook::words::{Worded, Words};
use serde_json::{Value, json};

use crate::options::{AtWord, mend};

/// A reading as it was typed, with the option's name when it is none.
fn reading<U: Worded>(words: &Words, option: &str, text: &str) -> Result<Reading<U>, Trouble> {
    Reading::parse(text, None).map_err(|why| mend(words.misread::<U>(text, &why)).at_word(option))
}

/// The same for an option that may be left out.
fn optional<U: Worded>(words: &Words, option: &str, text: Option<&String>) -> Result<Option<Reading<U>>, Trouble> {
    text.map(|text| reading(words, option, text)).transpose()
}

/// Puts the words beside every bare `{value, unit}` in an answer.
fn word(words: &Words, value: &mut Value) {
    if let Some(worded) = worded(words, value) {
        *value = worded;
        return;
    }
    match value {
        Value::Array(items) => items.iter_mut().for_each(|item| word(words, item)),
        Value::Object(fields) => fields.values_mut().for_each(|field| word(words, field)),
        _ => {}
    }
}

fn worded(words: &Words, value: &Value) -> Option<Value> {
    fn of<U: Worded>(words: &Words, value: &Value) -> Option<Value> {
        let reading: Reading<U> = serde_json::from_value(value.clone()).ok()?;
        Some(json!(words.quantity(&reading)))
    }
    let bare = value.as_object().is_some_and(|o| o.len() == 2 && o.contains_key("value") && o.contains_key("unit"));
    if !bare {
        return None;
    }
    of::<TorqueUnit>(words, value)
        .or_else(|| of::<PressureUnit>(words, value))
        .or_else(|| of::<DistanceUnit>(words, value))
        .or_else(|| of::<SpanUnit>(words, value))
        .or_else(|| of::<LoadUnit>(words, value))
}
