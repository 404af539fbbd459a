//! Words and marks that stand on a sidewall by themselves.

use std::fmt;

use super::scan::{Scan, parts};
use super::speed_symbol::SpeedSymbol;

/// A word or mark with a meaning for wheel service.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Word {
    /// `M+S`: mud and snow, by the shape of the tread alone (grade S).
    MudAndSnow,
    /// The three-peak mountain with snowflake, typed `3PMSF`: passed a snow test.
    Alpine,
    /// Ice grip symbol, typed `ICE` (from memory).
    IceGrip,
    /// `ROTATION`: directional; the arrow gives the way it turns.
    Rotation,
    /// `OUTSIDE`: this side faces outward.
    Outside,
    /// `INSIDE`: this side faces inward.
    Inside,
    /// `TUBELESS`.
    Tubeless,
    /// `TUBE TYPE`: needs a tube.
    TubeType,
    /// `REGROOVABLE` (49 CFR 569).
    Regroovable,
    /// `RETREAD`.
    Retread,
    /// `RUN FLAT` or one of the letter groups for it (from memory).
    RunFlat,
    /// `RADIAL`.
    Radial,
    /// `BIAS`.
    Bias,
    /// `STUDDABLE`: may be fitted with studs.
    Studdable,
    /// `TEMPORARY USE ONLY`.
    TemporaryUseOnly,
    /// `TWI`: here is a wear bar.
    WearBar,
    /// `FRT`: free-rolling axles only (from memory).
    FreeRolling,
    /// `POR`: professional off-road use (from memory).
    ProfessionalOffRoad,
    /// `MPT`: multipurpose (from memory).
    Multipurpose,
    /// `NOT FOR HIGHWAY USE`, `NHS`.
    NotForHighway,
    /// `FRONT`: for the front wheel of a motorcycle.
    Front,
    /// `REAR`: for the rear wheel of a motorcycle.
    Rear,
    /// `LEFT`: for the left side.
    Left,
    /// `RIGHT`: for the right side.
    Right,
}

/// What a word or phrase means for the reading of a marking.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Meaning {
    Word(Word),
    ExtraLoad,
    LightLoad,
    HighLoad,
    StandardLoad,
    LoadRange,
    Treadwear,
    Traction,
    Temperature,
    Maximum,
    Rim,
    Approval,
    /// Letters that announce something and carry nothing themselves.
    Heading,
    /// Text that runs on to something of no use here: plies, country.
    Plies,
    MadeIn,
}

use Meaning as M;

/// Phrases; a space stands for spaces, a hyphen or nothing. The first of a word
/// is how it is printed.
const PHRASES: &[(&str, Meaning)] = &[
    ("M+S", M::Word(Word::MudAndSnow)),
    ("M&S", M::Word(Word::MudAndSnow)),
    ("M.S.", M::Word(Word::MudAndSnow)),
    ("M/S", M::Word(Word::MudAndSnow)),
    ("M-S", M::Word(Word::MudAndSnow)),
    ("MUD AND SNOW", M::Word(Word::MudAndSnow)),
    ("3PMSF", M::Word(Word::Alpine)),
    ("ALPINE", M::Word(Word::Alpine)),
    ("SNOWFLAKE", M::Word(Word::Alpine)),
    ("ICE", M::Word(Word::IceGrip)),
    ("ROTATION", M::Word(Word::Rotation)),
    ("DIRECTION OF ROTATION", M::Word(Word::Rotation)),
    ("DIRECTIONAL", M::Word(Word::Rotation)),
    ("OUTSIDE", M::Word(Word::Outside)),
    ("OUTSIDE ONLY", M::Word(Word::Outside)),
    ("OUTER", M::Word(Word::Outside)),
    ("OUTWARD", M::Word(Word::Outside)),
    ("EXTERNAL", M::Word(Word::Outside)),
    ("SIDE FACING OUTWARD", M::Word(Word::Outside)),
    ("SIDE FACING OUTWARDS", M::Word(Word::Outside)),
    ("THIS SIDE OUT", M::Word(Word::Outside)),
    ("INSIDE", M::Word(Word::Inside)),
    ("INNER", M::Word(Word::Inside)),
    ("INWARD", M::Word(Word::Inside)),
    ("SIDE FACING INWARD", M::Word(Word::Inside)),
    ("SIDE FACING INWARDS", M::Word(Word::Inside)),
    ("THIS SIDE IN", M::Word(Word::Inside)),
    ("TUBELESS", M::Word(Word::Tubeless)),
    ("TL", M::Word(Word::Tubeless)),
    ("TUBE TYPE", M::Word(Word::TubeType)),
    ("TT", M::Word(Word::TubeType)),
    ("REGROOVABLE", M::Word(Word::Regroovable)),
    ("RETREAD", M::Word(Word::Retread)),
    ("RETREADED", M::Word(Word::Retread)),
    ("RECAP", M::Word(Word::Retread)),
    ("RUN FLAT", M::Word(Word::RunFlat)),
    ("SELF SUPPORTING", M::Word(Word::RunFlat)),
    ("RFT", M::Word(Word::RunFlat)),
    ("SSR", M::Word(Word::RunFlat)),
    ("ROF", M::Word(Word::RunFlat)),
    ("RADIAL", M::Word(Word::Radial)),
    ("STEEL BELTED RADIAL", M::Word(Word::Radial)),
    ("BIAS", M::Word(Word::Bias)),
    ("BIAS PLY", M::Word(Word::Bias)),
    ("STUDDABLE", M::Word(Word::Studdable)),
    ("TEMPORARY USE ONLY", M::Word(Word::TemporaryUseOnly)),
    ("TWI", M::Word(Word::WearBar)),
    ("FRT", M::Word(Word::FreeRolling)),
    ("POR", M::Word(Word::ProfessionalOffRoad)),
    ("MPT", M::Word(Word::Multipurpose)),
    ("NOT FOR HIGHWAY USE", M::Word(Word::NotForHighway)),
    ("NOT FOR HIGHWAY SERVICE", M::Word(Word::NotForHighway)),
    ("NHS", M::Word(Word::NotForHighway)),
    ("FRONT", M::Word(Word::Front)),
    ("REAR", M::Word(Word::Rear)),
    ("LEFT", M::Word(Word::Left)),
    ("RIGHT", M::Word(Word::Right)),
    ("XL", M::ExtraLoad),
    ("EXTRA LOAD", M::ExtraLoad),
    ("REINFORCED", M::ExtraLoad),
    ("REINF", M::ExtraLoad),
    ("RF", M::ExtraLoad),
    ("LL", M::LightLoad),
    ("LIGHT LOAD", M::LightLoad),
    ("HL", M::HighLoad),
    ("HIGH LOAD", M::HighLoad),
    ("SL", M::StandardLoad),
    ("STANDARD LOAD", M::StandardLoad),
    ("LOAD RANGE", M::LoadRange),
    ("LR", M::LoadRange),
    ("TREADWEAR", M::Treadwear),
    ("TRACTION", M::Traction),
    ("TEMPERATURE", M::Temperature),
    ("MAX", M::Maximum),
    ("MAXIMUM", M::Maximum),
    ("RIM", M::Rim),
    ("ECE", M::Approval),
    ("CCC", M::Approval),
    ("INMETRO", M::Approval),
    ("GSO", M::Approval),
    ("SONCAP", M::Approval),
    ("NOM", M::Approval),
    ("SNI", M::Approval),
    ("BIS", M::Approval),
    ("ISI", M::Approval),
    ("JIS", M::Approval),
    ("UTQG", M::Heading),
    ("TIN", M::Heading),
    ("SIZE", M::Heading),
    ("PLIES", M::Plies),
    ("TREAD", M::Plies),
    ("SIDEWALL", M::Plies),
    ("MADE IN", M::MadeIn),
];

impl Word {
    /// How it is printed.
    pub fn as_str(self) -> &'static str {
        PHRASES.iter().find(|(_, meaning)| *meaning == M::Word(self)).map_or("", |(text, _)| text)
    }

    /// The word's code in data, such as `mud-and-snow`.
    pub fn code(self) -> &'static str {
        match self {
            Self::MudAndSnow => "mud-and-snow",
            Self::Alpine => "alpine",
            Self::IceGrip => "ice-grip",
            Self::Rotation => "rotation",
            Self::Outside => "outside",
            Self::Inside => "inside",
            Self::Tubeless => "tubeless",
            Self::TubeType => "tube-type",
            Self::Regroovable => "regroovable",
            Self::Retread => "retread",
            Self::RunFlat => "run-flat",
            Self::Radial => "radial",
            Self::Bias => "bias",
            Self::Studdable => "studdable",
            Self::TemporaryUseOnly => "temporary-use-only",
            Self::WearBar => "wear-bar",
            Self::FreeRolling => "free-rolling",
            Self::ProfessionalOffRoad => "professional-off-road",
            Self::Multipurpose => "multipurpose",
            Self::NotForHighway => "not-for-highway",
            Self::Front => "front",
            Self::Rear => "rear",
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

impl fmt::Display for Word {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// How far a phrase reaches at the start of the text; `None` when it is not there.
fn reach(text: &[u8], phrase: &str) -> Option<usize> {
    let mut at = 0_usize;
    for expected in phrase.bytes() {
        if expected == b' ' {
            while text.get(at).is_some_and(|b| matches!(b, b' ' | b'-')) {
                at = at.saturating_add(1);
            }
            continue;
        }
        if text.get(at) != Some(&expected) {
            return None;
        }
        at = at.saturating_add(1);
    }
    Some(at)
}

/// The longest phrase at the cursor, and where it ends; the cursor stays. It
/// ends before a space, a mark, or (for `LOAD RANGE` and the grades) a figure.
pub(super) fn phrase(scan: &Scan<'_>) -> Option<(Meaning, usize)> {
    let text = scan.rest();
    let first = text.first()?;
    let mut best: Option<(Meaning, usize)> = None;
    for (phrase, meaning) in PHRASES {
        if phrase.as_bytes().first() != Some(first) {
            continue;
        }
        let Some(len) = reach(text, phrase).filter(|len| best.is_none_or(|(_, most)| *len > most)) else { continue };
        let ends = match text.get(len) {
            None => true,
            Some(b) if parts(*b) => true,
            Some(b'(' | b')' | b'.' | b':') => true,
            Some(b'-') => matches!(meaning, M::LoadRange | M::Approval),
            Some(b) => match meaning {
                M::LoadRange => text.get(len.saturating_add(1)).is_none_or(|b| parts(*b)) && b.is_ascii_uppercase(),
                M::Treadwear | M::Maximum => b.is_ascii_digit(),
                _ => false,
            },
        };
        if ends {
            best = Some((*meaning, len));
        }
    }
    best.map(|(meaning, len)| (meaning, scan.at().saturating_add(len)))
}

/// Whether a run of letters and digits has a meaning of its own, so that it is
/// no part of a tire identification number without date.
pub(super) fn stands_alone(run: &[u8]) -> bool {
    let scan = Scan::new(run);
    if phrase(&scan).is_some_and(|(_, end)| end == run.len()) || run == b"DOT" {
        return true;
    }
    // A service description: two or three digits and a symbol.
    let digits = run.iter().take_while(|b| b.is_ascii_digit()).count();
    let symbol = run.get(digits..).unwrap_or_default();
    (2..=3).contains(&digits) && matches!(symbol, [letter] if SpeedSymbol::of_letter(*letter).is_some())
}

/// A known word of at least five letters that is one letter away from `run`.
pub(super) fn nearly(run: &[u8]) -> Option<&'static str> {
    if run.len() < 5 {
        return None;
    }
    let words =
        PHRASES.iter().map(|(phrase, _)| *phrase).filter(|phrase| !phrase.contains(' ') && phrase.len() == run.len());
    words.into_iter().find(|word| word.bytes().zip(run).filter(|(a, b)| a != *b).count() == 1)
}
