//! The terminal's own sentences, in the language that this run speaks.
//!
//! One run says one thing: it has one language, set once, before anything is
//! said. The sentences stand with all others in `core/words`.

use std::ffi::OsString;
use std::sync::OnceLock;

use lugbook::words::{Arg, Lang, Speech, Words};

static WORDS: OnceLock<Words> = OnceLock::new();

/// Sets how this run speaks.
pub fn speak(speech: Speech) {
    // It is set at one place for each end that reading a line can come to.
    let _ = WORDS.set(Words::new(speech));
}

/// A sentence of the terminal's own.
pub fn say(id: &str, args: &[(&str, Arg<'_>)]) -> String {
    WORDS.get_or_init(|| Words::new(Speech::default())).text(&format!("terminal-{id}"), args)
}

/// The language of a line that was not understood: what `--lang` or
/// `LUGBOOK_LANG` names, as far as that can be told.
pub fn asked(typed: &[OsString]) -> Lang {
    let words: Vec<_> = typed.iter().map(|word| word.to_string_lossy()).collect();
    let joined = words.iter().find_map(|word| word.strip_prefix("--lang="));
    let apart = words.iter().position(|word| word == "--lang").and_then(|at| words.get(at.saturating_add(1)));
    let named = joined.map(str::to_owned).or_else(|| apart.map(ToString::to_string));
    let named = named.or_else(|| std::env::var("LUGBOOK_LANG").ok()).unwrap_or_default();
    Lang::ALL.into_iter().find(|lang| lang.tag() == named).unwrap_or_default()
}
