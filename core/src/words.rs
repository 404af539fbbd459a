//! Every sentence a person reads, in each language.
//!
//! Sentences stand in Fluent files under `core/words/<language>/`, one file a
//! room; the files of this folder turn each room's typed reasons into them.
//! Numbers are formatted here, so that decimal mark and unit follow the
//! person's choice, each apart from the language.

mod caution;
mod drive;
mod due;
mod engine;
mod entry;
mod fastening;
mod inflation;
mod inspect;
mod learning;
mod lifting;
mod limits;
mod photos;
mod procedure;
mod proof;
mod rotation;
mod sidewall;
mod sight;
mod state;
mod store;
mod tools;
mod units;
mod wear;

pub use entry::FactContext;
pub(crate) use entry::capital;
pub use rotation::{BecauseView, ForecastView, PlanView, RefusedView, RotationView, VisitView};
pub use units::{Quantity, Worded};
pub use wear::{LeftView, NextVisitView, SlippedView, TireWearView, WearView};

use std::borrow::Cow;
use std::fmt;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde::{Deserialize, Serialize};

use crate::vehicle::Letters;

/// The Fluent files of a language, embedded.
macro_rules! files {
    ($language:literal: $($name:literal)*) => {
        &[$(include_str!(concat!("../words/", $language, "/", $name, ".ftl"))),*]
    };
}

/// One file a room, the same in each language.
macro_rules! rooms {
    ($language:literal) => {
        files! { $language:
            "cautions" "drive" "due" "engine" "entry" "fastening" "gates" "inflation" "inspect" "learning" "lifting"
            "limits" "photos" "procedures" "proof" "report" "rotation" "screens" "sidewall" "sight" "store" "terminal"
            "units" "wear"
        }
    };
}

const ENGLISH: &[&str] = rooms!("en");
const SPANISH: &[&str] = rooms!("es");

/// A language that has every sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lang {
    /// English, US shop usage.
    #[default]
    En,
    /// Spanish, US shop usage: the words of `core/words/glossary.toml`, "usted".
    Es,
}

impl Lang {
    /// All languages.
    pub const ALL: [Self; 2] = [Self::En, Self::Es];

    /// The language's tag: `en`, `es`.
    pub fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Es => "es",
        }
    }

    /// The texts of the language's Fluent files, in no set order.
    pub fn files(self) -> &'static [&'static str] {
        match self {
            Self::En => ENGLISH,
            Self::Es => SPANISH,
        }
    }
}

/// How decimals are set apart in what is shown: apart from language and units.
/// What is typed may have either.
///
/// The point stands for both languages, as US shops write it in either (CLDR:
/// the decimal mark of `en-US` and of `es-US` is the point); the comma is for
/// those whose papers have it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DecimalMark {
    /// 5.2
    #[default]
    Point,
    /// 5,2
    Comma,
}

/// In which units readings are shown. What was read stays as it was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Units {
    /// Each reading in the unit it was read in.
    #[default]
    AsRead,
    /// mm, N·m, kPa, km, °C, kg.
    Metric,
    /// 1/32 in, ft·lb, psi, mi, °F, lb.
    Us,
}

/// How a person wants to be spoken to: language, units, position letters, decimal mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct Speech {
    /// Language of every sentence.
    pub lang: Lang,
    /// Units of every shown reading, apart from the language.
    pub units: Units,
    /// FL FR RL RR, or LF RF LR RR.
    #[serde(default)]
    pub letters: Letters,
    /// 5.2 or 5,2.
    #[serde(default)]
    pub decimal: DecimalMark,
}

/// Something a sentence can be filled with.
#[derive(Debug, Clone)]
pub enum Arg<'a> {
    /// Text, as it is.
    Text(Cow<'a, str>),
    /// A number that chooses a plural, or is shown whole.
    Count(f64),
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Self::Text(Cow::Borrowed(text))
    }
}

impl From<String> for Arg<'_> {
    fn from(text: String) -> Self {
        Self::Text(Cow::Owned(text))
    }
}

impl From<f64> for Arg<'_> {
    fn from(count: f64) -> Self {
        Self::Count(count)
    }
}

impl From<usize> for Arg<'_> {
    fn from(count: usize) -> Self {
        Self::Count(u32::try_from(count).map_or(f64::from(u32::MAX), f64::from))
    }
}

impl From<u8> for Arg<'_> {
    fn from(count: u8) -> Self {
        Self::Count(f64::from(count))
    }
}

/// Something that has a sentence: a typed reason of another room.
pub trait Say {
    /// The sentence, in the words' language and units.
    fn say(&self, words: &Words) -> String;
}

/// The sentences of one language, and how to show numbers.
pub struct Words {
    speech: Speech,
    bundle: FluentBundle<FluentResource>,
}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Words").field("speech", &self.speech).finish_non_exhaustive()
    }
}

impl Words {
    /// The words for a person's choice.
    ///
    /// ```
    /// use lugbook::words::{Speech, Words};
    /// let words = Words::new(Speech::default());
    /// assert_eq!(words.text("unit-mm", &[("value", "5.2".into())]), "5.2 mm");
    /// ```
    pub fn new(speech: Speech) -> Self {
        let lang = speech.lang.tag().parse::<unic_langid::LanguageIdentifier>().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![lang]);
        bundle.set_use_isolating(false);
        for file in speech.lang.files() {
            // A file with a slip still gives its other sentences; a test finds the slip.
            let resource = match FluentResource::try_new((*file).to_owned()) {
                Ok(resource) | Err((resource, _)) => resource,
            };
            bundle.add_resource_overriding(resource);
        }
        Self { speech, bundle }
    }

    /// The person's choice.
    pub fn speech(&self) -> Speech {
        self.speech
    }

    /// Whether there is a sentence of this name.
    pub fn has(&self, id: &str) -> bool {
        self.bundle.get_message(id).and_then(|message| message.value()).is_some()
    }

    /// The sentence of this name, filled in. A name without a sentence comes
    /// back as it is, so that nothing is ever silently blank.
    pub fn text(&self, id: &str, args: &[(&str, Arg<'_>)]) -> String {
        let Some(pattern) = self.bundle.get_message(id).and_then(|message| message.value()) else {
            return id.to_owned();
        };
        let mut filled = FluentArgs::with_capacity(args.len());
        for (name, arg) in args {
            let value = match arg {
                Arg::Text(text) => FluentValue::from(text.as_ref()),
                Arg::Count(count) => FluentValue::from(*count),
            };
            filled.set(*name, value);
        }
        let mut slips = Vec::new();
        self.bundle.format_pattern(pattern, Some(&filled), &mut slips).into_owned()
    }

    /// A number with at most so many decimals and the chosen decimal mark.
    pub fn number(&self, value: f64, decimals: usize) -> String {
        let text = format!("{value:.decimals$}");
        let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        let text = if text == "-0" { "0" } else { text };
        match self.speech.decimal {
            DecimalMark::Point => text.to_owned(),
            DecimalMark::Comma => text.replace('.', ","),
        }
    }

    /// Whole kilometers or miles with groups of three, set apart by a thin space.
    pub fn grouped(&self, value: f64) -> String {
        let plain = format!("{:.0}", value.abs());
        let mut out = String::new();
        for (at, digit) in plain.chars().enumerate() {
            if at > 0 && (plain.len() - at).is_multiple_of(3) && plain.len() > 4 {
                out.push('\u{202f}');
            }
            out.push(digit);
        }
        if value < 0.0 { format!("-{out}") } else { out }
    }

    /// Several things in a row: `a, b, c`.
    pub fn list<I: IntoIterator<Item = String>>(&self, items: I) -> String {
        items.into_iter().collect::<Vec<_>>().join(", ")
    }
}
