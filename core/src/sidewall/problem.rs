//! What was wrong in a marking, and where.

use serde::Serialize;

/// How much a problem matters.
///
/// ```
/// use lugbook::sidewall::{Severity, parse};
/// assert!(Severity::Error > Severity::Warning && Severity::Warning > Severity::Note);
/// assert_eq!(parse("225/45X17").problems[0].severity, Severity::Error);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// Good to know; nothing has to change.
    Note,
    /// Unusual or against a habit of the trade: look again.
    Warning,
    /// It can't be so: this part was not taken.
    Error,
}

/// A part of a size designation.
///
/// ```
/// use lugbook::sidewall::{ProblemKind, SizePart, parse};
/// let cut = parse("225/45R");
/// assert!(matches!(cut.problems[0].kind, ProblemKind::SizeUnfinished { missing: SizePart::Rim }));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SizePart {
    /// Overall diameter of a flotation size.
    Diameter,
    /// Section width.
    Width,
    /// Aspect ratio.
    Aspect,
    /// The letter or dash for the construction.
    Construction,
    /// Rim diameter.
    Rim,
}

/// A part of a marking that stands at most once (or, for a service description, twice).
///
/// ```
/// use lugbook::sidewall::{Part, ProblemKind, parse};
/// let twice = parse("225/45R17 205/55R16");
/// assert!(twice.problems.iter().any(|problem| problem.kind == ProblemKind::Repeated { part: Part::Size }));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Part {
    /// Size designation.
    Size,
    /// Service description.
    Service,
    /// Tire identification number.
    Tin,
    /// Load class.
    Load,
    /// Ply rating.
    PlyRating,
    /// Measuring rim.
    Rim,
    /// Treadwear grade.
    Treadwear,
    /// Traction grade.
    Traction,
    /// Temperature grade.
    Temperature,
    /// Maximum load.
    MaximumLoad,
    /// Maximum pressure.
    MaximumPressure,
    /// Approval mark.
    Approval,
}

/// What is wrong, with the figures that say why.
///
/// ```
/// use lugbook::sidewall::{ProblemKind, parse};
/// let late = parse("225/45R17 91W DOT 1HKB 9FLP 5315");
/// assert_eq!(late.problems[0].kind, ProblemKind::TinWeek { week: 53, year: Some(2015), weeks: 52 });
/// assert_eq!(late.problems[0].at, 28);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum ProblemKind {
    /// There is no text.
    Empty,
    /// Nothing in the text stands on a sidewall.
    NothingRead,
    /// More text than any sidewall bears.
    TooLong {
        /// The most that is read, in characters.
        limit: usize,
    },
    /// Nothing that stands on a sidewall begins like this.
    Unknown {
        /// The text as it stands.
        text: String,
        /// A known word one letter away.
        meant: Option<&'static str>,
    },
    /// A word that has no meaning for wheel service: a name, most likely.
    Name {
        /// The text as it stands.
        text: String,
    },
    /// A size that stops too early.
    SizeUnfinished {
        /// The first part that is missing.
        missing: SizePart,
    },
    /// No construction is written like this.
    NotAConstruction {
        /// What stands there.
        found: String,
    },
    /// A part of the size no tire has.
    OutOfRange {
        /// Which part.
        part: SizePart,
        /// As read, in hundredths of the part's unit (mm, %, in).
        given_hundredths: u32,
        /// The least there is, in the part's unit.
        lowest: u32,
        /// The most there is, in the part's unit.
        highest: u32,
    },
    /// A part of the size that is not usual (habit of the trade, from memory).
    Unusual {
        /// Which part.
        part: SizePart,
        /// As read, in hundredths of the part's unit (mm, %, in).
        given_hundredths: u32,
    },
    /// Letters behind the size that mean nothing there.
    AfterSize {
        /// What stands there.
        found: String,
    },
    /// `HL` before the size: high load, a form known from memory only.
    HighLoadForm,
    /// A speed letter inside the size, as in `185/70HR14`: an old form.
    OldSpeedForm {
        /// The letter.
        letter: char,
    },
    /// No load index has this number.
    LoadIndexOutOfRange {
        /// As read.
        given: u32,
        /// The highest there is.
        highest: u16,
    },
    /// No speed symbol is written like this.
    NotASpeedSymbol {
        /// What stands there.
        found: String,
    },
    /// A load index without a speed symbol.
    NoSpeedSymbol,
    /// The index for dual fitment above the one for single fitment.
    DualAboveSingle {
        /// The index for single fitment.
        single: u16,
        /// The index for dual fitment.
        dual: u16,
    },
    /// `ZR` in the size, which means above 240 km/h, with a slower symbol behind it.
    SlowForZr {
        /// The symbol's speed, km/h.
        max_kmh: u16,
    },
    /// A part that stands twice with different values.
    Repeated {
        /// Which part.
        part: Part,
    },
    /// A load range letter on which charts disagree.
    LoadRangeUnclear {
        /// The letter.
        letter: char,
    },
    /// A letter that is no load range.
    NotALoadRange {
        /// What stands there.
        found: String,
    },
    /// A ply rating that is odd, or that does not go with the load range.
    PlyRatingUnusual {
        /// As read.
        given: u32,
    },
    /// A letter that tire identification numbers do not use (the list is from memory).
    TinSymbol {
        /// The letter.
        symbol: char,
    },
    /// A mark other than a letter or digit in the tire identification number.
    TinMark {
        /// The mark.
        mark: char,
    },
    /// More symbols than any tire identification number has.
    TinTooLong {
        /// How many there are.
        symbols: usize,
    },
    /// Fewer symbols than any tire identification number has.
    TinTooShort {
        /// How many there are.
        symbols: usize,
    },
    /// So many digits in a row that the date can't be told from the rest.
    TinUnclear,
    /// `DOT` with nothing behind it.
    TinMissing,
    /// A full-length number whose last four symbols are not digits.
    TinNoDate,
    /// A number without its date: the other sidewall has the full one.
    TinPartial,
    /// Eight symbols: a full old number or the part of a newer one.
    TinMaybePartial,
    /// A date code alone.
    TinDateOnly,
    /// Taken as a tire identification number although `DOT` is not there.
    TinNoPrefix,
    /// The date's week does not exist in that year.
    TinWeek {
        /// The week as read.
        week: u32,
        /// The year, when the code fixes it.
        year: Option<i16>,
        /// How many weeks that year has, or any year can have.
        weeks: u8,
    },
    /// A three-digit date: the decade is not in it.
    TinDecade {
        /// The years it can mean.
        years: Vec<i16>,
    },
    /// A treadwear grade that is no multiple of 20.
    TreadwearStep {
        /// As read.
        given: u32,
    },
    /// A word that asks for a grade, with no such grade behind it.
    NotAGrade {
        /// Which grade.
        part: Part,
        /// What stands there; empty when nothing does.
        found: String,
    },
    /// A maximum line whose figure or unit can't be read.
    MaximumUnread {
        /// Which line.
        part: Part,
    },
    /// One figure printed in two units that do not agree.
    UnitsDisagree {
        /// Which line.
        part: Part,
        /// The first figure as printed.
        first: String,
        /// The second figure as printed.
        second: String,
    },
    /// A maximum load that is not what the load index says.
    LoadsDisagree {
        /// Printed, kg.
        printed_kg: f64,
        /// By the load index, kg.
        index_kg: f64,
    },
    /// `RIM` without a width.
    RimUnread,
    /// A bracket without its partner.
    Bracket,
}

impl ProblemKind {
    /// The kind's code in data, such as `tin-week`.
    ///
    /// ```
    /// use lugbook::sidewall::ProblemKind;
    /// assert_eq!(ProblemKind::TinUnclear.code(), "tin-unclear");
    /// ```
    pub fn code(&self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::NothingRead => "nothing-read",
            Self::TooLong { .. } => "too-long",
            Self::Unknown { .. } => "unknown",
            Self::Name { .. } => "name",
            Self::SizeUnfinished { .. } => "size-unfinished",
            Self::NotAConstruction { .. } => "not-a-construction",
            Self::OutOfRange { .. } => "out-of-range",
            Self::Unusual { .. } => "unusual",
            Self::AfterSize { .. } => "after-size",
            Self::HighLoadForm => "high-load-form",
            Self::OldSpeedForm { .. } => "old-speed-form",
            Self::LoadIndexOutOfRange { .. } => "load-index-out-of-range",
            Self::NotASpeedSymbol { .. } => "not-a-speed-symbol",
            Self::NoSpeedSymbol => "no-speed-symbol",
            Self::DualAboveSingle { .. } => "dual-above-single",
            Self::SlowForZr { .. } => "slow-for-zr",
            Self::Repeated { .. } => "repeated",
            Self::LoadRangeUnclear { .. } => "load-range-unclear",
            Self::NotALoadRange { .. } => "not-a-load-range",
            Self::PlyRatingUnusual { .. } => "ply-rating-unusual",
            Self::TinSymbol { .. } => "tin-symbol",
            Self::TinMark { .. } => "tin-mark",
            Self::TinTooLong { .. } => "tin-too-long",
            Self::TinTooShort { .. } => "tin-too-short",
            Self::TinUnclear => "tin-unclear",
            Self::TinMissing => "tin-missing",
            Self::TinNoDate => "tin-no-date",
            Self::TinPartial => "tin-partial",
            Self::TinMaybePartial => "tin-maybe-partial",
            Self::TinDateOnly => "tin-date-only",
            Self::TinNoPrefix => "tin-no-prefix",
            Self::TinWeek { .. } => "tin-week",
            Self::TinDecade { .. } => "tin-decade",
            Self::TreadwearStep { .. } => "treadwear-step",
            Self::NotAGrade { .. } => "not-a-grade",
            Self::MaximumUnread { .. } => "maximum-unread",
            Self::UnitsDisagree { .. } => "units-disagree",
            Self::LoadsDisagree { .. } => "loads-disagree",
            Self::RimUnread => "rim-unread",
            Self::Bracket => "bracket",
        }
    }

    /// How much it matters.
    ///
    /// ```
    /// use lugbook::sidewall::{ProblemKind, Severity};
    /// assert_eq!(ProblemKind::TinPartial.severity(), Severity::Note);
    /// ```
    pub fn severity(&self) -> Severity {
        match self {
            Self::Empty
            | Self::NothingRead
            | Self::TooLong { .. }
            | Self::SizeUnfinished { .. }
            | Self::NotAConstruction { .. }
            | Self::OutOfRange { .. }
            | Self::AfterSize { .. }
            | Self::LoadIndexOutOfRange { .. }
            | Self::NotASpeedSymbol { .. }
            | Self::NotALoadRange { .. }
            | Self::TinMark { .. }
            | Self::TinTooLong { .. }
            | Self::TinTooShort { .. }
            | Self::TinUnclear
            | Self::TinMissing
            | Self::TinWeek { .. }
            | Self::NotAGrade { .. }
            | Self::MaximumUnread { .. }
            | Self::RimUnread => Severity::Error,
            Self::Unknown { .. }
            | Self::Unusual { .. }
            | Self::NoSpeedSymbol
            | Self::DualAboveSingle { .. }
            | Self::SlowForZr { .. }
            | Self::Repeated { .. }
            | Self::LoadRangeUnclear { .. }
            | Self::PlyRatingUnusual { .. }
            | Self::TinSymbol { .. }
            | Self::TinNoDate
            | Self::TinDecade { .. }
            | Self::TreadwearStep { .. }
            | Self::UnitsDisagree { .. }
            | Self::LoadsDisagree { .. }
            | Self::Bracket => Severity::Warning,
            Self::Name { .. }
            | Self::HighLoadForm
            | Self::OldSpeedForm { .. }
            | Self::TinPartial
            | Self::TinMaybePartial
            | Self::TinDateOnly
            | Self::TinNoPrefix => Severity::Note,
        }
    }
}

/// A problem and where it stands.
///
/// ```
/// use lugbook::sidewall::{self, Severity};
/// let marking = sidewall::parse("225/45X17");
/// let problem = &marking.problems[0];
/// assert_eq!((problem.at, problem.len, problem.severity), (6, 1, Severity::Error));
/// assert_eq!(problem.kind.code(), "not-a-construction");
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// The first character it is about, counted from 0.
    pub at: usize,
    /// How many characters it is about; 0 when something is missing there.
    pub len: usize,
    /// What is wrong.
    pub kind: ProblemKind,
    /// How much it matters.
    pub severity: Severity,
}

/// Collects problems while reading.
#[derive(Debug, Default)]
pub(super) struct Problems(pub Vec<Problem>);

impl Problems {
    pub(super) fn add(&mut self, at: usize, len: usize, kind: ProblemKind) {
        let severity = kind.severity();
        self.0.push(Problem { at, len, kind, severity });
    }
}

/// Bytes as text for a problem; at most 24 characters of it.
pub(super) fn shown(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).chars().take(24).collect()
}
