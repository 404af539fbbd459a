//! How a person wants to be spoken to.

use lugbook::vehicle::Letters;
use lugbook::words::{DecimalMark, Lang, Speech, Units};

use crate::cross::Cross;

/// Which language every sentence is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize, uniffi::Enum)]
#[serde(rename_all = "kebab-case")]
pub enum Language {
    /// English, US shop usage.
    English,
    /// Spanish, US shop usage.
    Spanish,
}

/// In which units readings are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize, uniffi::Enum)]
#[serde(rename_all = "kebab-case")]
pub enum UnitSystem {
    /// Each in the unit it was read in.
    AsRead,
    /// mm, N·m, kPa, km.
    Metric,
    /// 1/32 in, ft·lb, psi, mi.
    Us,
}

/// How positions of a two-axle vehicle are lettered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize, uniffi::Enum)]
#[serde(rename_all = "kebab-case")]
pub enum PositionLetters {
    /// FL FR RL RR.
    FrontFirst,
    /// LF RF LR RR.
    SideFirst,
}

/// How decimals are set apart in what is shown; what is typed may have either.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize, uniffi::Enum)]
#[serde(rename_all = "kebab-case")]
pub enum DecimalSign {
    /// 5.2
    Point,
    /// 5,2
    Comma,
}

/// How a person wants to be spoken to: language, units and letters, each apart from the others.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize, uniffi::Record)]
pub struct Manner {
    /// The language.
    pub language: Language,
    /// The units.
    pub units: UnitSystem,
    /// The position letters.
    pub letters: PositionLetters,
    /// The decimal sign.
    #[uniffi(default = None)]
    pub decimal: Option<DecimalSign>,
}

impl From<Manner> for Speech {
    fn from(manner: Manner) -> Self {
        Self {
            lang: match manner.language {
                Language::English => Lang::En,
                Language::Spanish => Lang::Es,
            },
            units: match manner.units {
                UnitSystem::AsRead => Units::AsRead,
                UnitSystem::Metric => Units::Metric,
                UnitSystem::Us => Units::Us,
            },
            letters: match manner.letters {
                PositionLetters::FrontFirst => Letters::FrontFirst,
                PositionLetters::SideFirst => Letters::SideFirst,
            },
            // The point, as US shops write it in both languages.
            decimal: match manner.decimal {
                Some(DecimalSign::Comma) => DecimalMark::Comma,
                Some(DecimalSign::Point) | None => DecimalMark::Point,
            },
        }
    }
}

impl Cross<Manner> for Speech {
    fn cross(self) -> Manner {
        Manner {
            language: match self.lang {
                Lang::En => Language::English,
                Lang::Es => Language::Spanish,
            },
            units: match self.units {
                Units::AsRead => UnitSystem::AsRead,
                Units::Metric => UnitSystem::Metric,
                Units::Us => UnitSystem::Us,
            },
            letters: match self.letters {
                Letters::FrontFirst => PositionLetters::FrontFirst,
                Letters::SideFirst => PositionLetters::SideFirst,
            },
            decimal: Some(match self.decimal {
                DecimalMark::Point => DecimalSign::Point,
                DecimalMark::Comma => DecimalSign::Comma,
            }),
        }
    }
}
