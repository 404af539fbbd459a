//! Words and marks that stand on a sidewall by themselves.

use std::fmt;

use super::scan::{Scan, parts};
use super::speed_symbol::SpeedSymbol;

/// A word or mark with a meaning for wheel service.
///
/// ```
/// use lugbook::sidewall::{Word, parse};
/// assert_eq!(parse("3PMSF M&S Rotation").words, [Word::MudAndSnow, Word::Alpine, Word::Rotation]);
/// ```
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

/// A phrase that was found.
#[derive(Debug, Clone, Copy)]
pub(super) struct Phrase {
    pub text: &'static str,
    pub meaning: Meaning,
    /// Where it ends.
    pub end: usize,
}

use Meaning as M;

/// Phrases by their first byte; a space stands for spaces, a hyphen or nothing.
fn starting_with(first: u8) -> &'static [(&'static str, Meaning)] {
    match first {
        b'3' => &[("3PMSF", M::Word(Word::Alpine))],
        b'A' => &[("ALPINE", M::Word(Word::Alpine))],
        b'B' => &[("BIAS", M::Word(Word::Bias)), ("BIAS PLY", M::Word(Word::Bias)), ("BIS", M::Approval)],
        b'C' => &[("CCC", M::Approval)],
        b'D' => &[("DIRECTION OF ROTATION", M::Word(Word::Rotation)), ("DIRECTIONAL", M::Word(Word::Rotation))],
        b'E' => &[("EXTERNAL", M::Word(Word::Outside)), ("EXTRA LOAD", M::ExtraLoad), ("ECE", M::Approval)],
        b'F' => &[("FRT", M::Word(Word::FreeRolling)), ("FRONT", M::Word(Word::Front))],
        b'G' => &[("GSO", M::Approval)],
        b'H' => &[("HL", M::HighLoad), ("HIGH LOAD", M::HighLoad)],
        b'I' => &[
            ("ICE", M::Word(Word::IceGrip)),
            ("INSIDE", M::Word(Word::Inside)),
            ("INNER", M::Word(Word::Inside)),
            ("INWARD", M::Word(Word::Inside)),
            ("INMETRO", M::Approval),
            ("ISI", M::Approval),
        ],
        b'J' => &[("JIS", M::Approval)],
        b'L' => &[
            ("LEFT", M::Word(Word::Left)),
            ("LL", M::LightLoad),
            ("LIGHT LOAD", M::LightLoad),
            ("LOAD RANGE", M::LoadRange),
            ("LR", M::LoadRange),
        ],
        b'M' => &[
            ("M+S", M::Word(Word::MudAndSnow)),
            ("M&S", M::Word(Word::MudAndSnow)),
            ("M.S.", M::Word(Word::MudAndSnow)),
            ("M/S", M::Word(Word::MudAndSnow)),
            ("M-S", M::Word(Word::MudAndSnow)),
            ("MUD AND SNOW", M::Word(Word::MudAndSnow)),
            ("MPT", M::Word(Word::Multipurpose)),
            ("MAX", M::Maximum),
            ("MAXIMUM", M::Maximum),
            ("MADE IN", M::MadeIn),
        ],
        b'N' => &[
            ("NOT FOR HIGHWAY USE", M::Word(Word::NotForHighway)),
            ("NOT FOR HIGHWAY SERVICE", M::Word(Word::NotForHighway)),
            ("NHS", M::Word(Word::NotForHighway)),
            ("NOM", M::Approval),
        ],
        b'O' => &[
            ("OUTSIDE", M::Word(Word::Outside)),
            ("OUTSIDE ONLY", M::Word(Word::Outside)),
            ("OUTER", M::Word(Word::Outside)),
            ("OUTWARD", M::Word(Word::Outside)),
        ],
        b'P' => &[("POR", M::Word(Word::ProfessionalOffRoad)), ("PLIES", M::Plies)],
        b'R' => &[
            ("ROTATION", M::Word(Word::Rotation)),
            ("REGROOVABLE", M::Word(Word::Regroovable)),
            ("RETREAD", M::Word(Word::Retread)),
            ("RETREADED", M::Word(Word::Retread)),
            ("RECAP", M::Word(Word::Retread)),
            ("RUN FLAT", M::Word(Word::RunFlat)),
            ("RFT", M::Word(Word::RunFlat)),
            ("ROF", M::Word(Word::RunFlat)),
            ("RADIAL", M::Word(Word::Radial)),
            ("REAR", M::Word(Word::Rear)),
            ("RIGHT", M::Word(Word::Right)),
            ("REINFORCED", M::ExtraLoad),
            ("REINF", M::ExtraLoad),
            ("RF", M::ExtraLoad),
            ("RIM", M::Rim),
        ],
        b'S' => &[
            ("SNOWFLAKE", M::Word(Word::Alpine)),
            ("SIDE FACING OUTWARD", M::Word(Word::Outside)),
            ("SIDE FACING OUTWARDS", M::Word(Word::Outside)),
            ("SIDE FACING INWARD", M::Word(Word::Inside)),
            ("SIDE FACING INWARDS", M::Word(Word::Inside)),
            ("SELF SUPPORTING", M::Word(Word::RunFlat)),
            ("SSR", M::Word(Word::RunFlat)),
            ("STEEL BELTED RADIAL", M::Word(Word::Radial)),
            ("STUDDABLE", M::Word(Word::Studdable)),
            ("SL", M::StandardLoad),
            ("STANDARD LOAD", M::StandardLoad),
            ("SONCAP", M::Approval),
            ("SNI", M::Approval),
            ("SIZE", M::Heading),
            ("SIDEWALL", M::Plies),
        ],
        b'T' => &[
            ("THIS SIDE OUT", M::Word(Word::Outside)),
            ("THIS SIDE IN", M::Word(Word::Inside)),
            ("TUBELESS", M::Word(Word::Tubeless)),
            ("TL", M::Word(Word::Tubeless)),
            ("TUBE TYPE", M::Word(Word::TubeType)),
            ("TT", M::Word(Word::TubeType)),
            ("TEMPORARY USE ONLY", M::Word(Word::TemporaryUseOnly)),
            ("TWI", M::Word(Word::WearBar)),
            ("TREADWEAR", M::Treadwear),
            ("TRACTION", M::Traction),
            ("TEMPERATURE", M::Temperature),
            ("TIN", M::Heading),
            ("TREAD", M::Plies),
        ],
        b'U' => &[("UTQG", M::Heading)],
        b'X' => &[("XL", M::ExtraLoad)],
        _ => &[],
    }
}

impl Word {
    /// All words.
    pub const ALL: [Self; 24] = [
        Self::MudAndSnow,
        Self::Alpine,
        Self::IceGrip,
        Self::Rotation,
        Self::Outside,
        Self::Inside,
        Self::Tubeless,
        Self::TubeType,
        Self::Regroovable,
        Self::Retread,
        Self::RunFlat,
        Self::Radial,
        Self::Bias,
        Self::Studdable,
        Self::TemporaryUseOnly,
        Self::WearBar,
        Self::FreeRolling,
        Self::ProfessionalOffRoad,
        Self::Multipurpose,
        Self::NotForHighway,
        Self::Front,
        Self::Rear,
        Self::Left,
        Self::Right,
    ];

    /// How it is printed.
    ///
    /// ```
    /// use lugbook::sidewall::Word;
    /// assert_eq!(Word::Rotation.as_str(), "ROTATION");
    /// ```
    pub fn as_str(self) -> &'static str {
        match self {
            Self::MudAndSnow => "M+S",
            Self::Alpine => "3PMSF",
            Self::IceGrip => "ICE",
            Self::Rotation => "ROTATION",
            Self::Outside => "OUTSIDE",
            Self::Inside => "INSIDE",
            Self::Tubeless => "TUBELESS",
            Self::TubeType => "TUBE TYPE",
            Self::Regroovable => "REGROOVABLE",
            Self::Retread => "RETREAD",
            Self::RunFlat => "RUN FLAT",
            Self::Radial => "RADIAL",
            Self::Bias => "BIAS",
            Self::Studdable => "STUDDABLE",
            Self::TemporaryUseOnly => "TEMPORARY USE ONLY",
            Self::WearBar => "TWI",
            Self::FreeRolling => "FRT",
            Self::ProfessionalOffRoad => "POR",
            Self::Multipurpose => "MPT",
            Self::NotForHighway => "NOT FOR HIGHWAY USE",
            Self::Front => "FRONT",
            Self::Rear => "REAR",
            Self::Left => "LEFT",
            Self::Right => "RIGHT",
        }
    }

    /// The word's code in data, such as `mud-and-snow`.
    ///
    /// ```
    /// use lugbook::sidewall::Word;
    /// assert_eq!(Word::TemporaryUseOnly.code(), "temporary-use-only");
    /// ```
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
pub(super) fn phrase(scan: &Scan<'_>) -> Option<Phrase> {
    let text = scan.rest();
    let first = *text.first()?;
    let mut best: Option<(&'static str, Meaning, usize)> = None;
    for (phrase, meaning) in starting_with(first) {
        let Some(len) = reach(text, phrase).filter(|len| best.is_none_or(|(_, _, most)| *len > most)) else { continue };
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
            best = Some((phrase, *meaning, len));
        }
    }
    best.map(|(text, meaning, len)| Phrase { text, meaning, end: scan.at().saturating_add(len) })
}

/// Whether a run of letters and digits has a meaning of its own, so that it is
/// no part of a tire identification number without date.
pub(super) fn stands_alone(run: &[u8]) -> bool {
    let scan = Scan::new(run);
    if phrase(&scan).is_some_and(|phrase| phrase.end == run.len()) || run == b"DOT" {
        return true;
    }
    if matches!(run, [b'E', b'1'..=b'9'] | [b'E', b'1'..=b'6', b'0'..=b'9']) || super::approval::is_sound_mark(run) {
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
    let all = (b'0'..=b'Z').flat_map(starting_with).map(|(phrase, _)| *phrase);
    all.filter(|phrase| !phrase.contains(' ') && phrase.len() == run.len())
        .find(|word| word.bytes().zip(run).filter(|(a, b)| a != *b).count() == 1)
}
