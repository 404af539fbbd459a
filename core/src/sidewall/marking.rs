//! A whole marking: everything that was read on one sidewall.

use std::fmt;
use std::str::FromStr;

use super::approval::Approval;
use super::grades::Utqg;
use super::load_class::LoadClass;
use super::maximum::{MaximumLoad, Printed};
use super::problem::{Problem, ProblemKind, Problems, Severity};
use super::reader::Reader;
use super::rim_width::RimWidth;
use super::service::Service;
use super::size::{Section, Size, Use};
use super::tin::Tin;
use super::words::Word;
use crate::measure::PressureUnit;

/// The most text that is read, in characters: far more than a sidewall bears.
pub const LONGEST: usize = 2000;
/// The most maximum load lines that are kept.
pub const MOST_LOADS: usize = 4;
/// The most approval marks that are kept.
pub const MOST_APPROVALS: usize = 12;

/// What was read on a sidewall.
///
/// Two markings are equal when they say the same; the places of their problems
/// belong to the text and are not compared. Printing gives the canonical form,
/// and reading that gives an equal marking.
///
/// ```
/// use lugbook::sidewall::parse;
/// let marking = parse("p215 / 65 r15 95h extra load");
/// assert_eq!(marking.to_string(), "P215/65R15 95H XL");
/// assert_eq!(parse("P215/65R15 95H XL"), marking);
/// assert!(marking.understood() && !parse("banana").understood());
/// ```
#[derive(Debug, Clone, Default)]
pub struct Marking {
    /// Size designation.
    pub size: Option<Size>,
    /// Service description.
    pub service: Option<Service>,
    /// A second service description, such as `(154/149L)` behind `152/148M`.
    pub second_service: Option<Service>,
    /// The load class as printed; see [`Marking::load_class`].
    pub load: Option<LoadClass>,
    /// Ply rating, such as 10 for `10PR`: a strength, not a count of plies.
    pub ply_rating: Option<u8>,
    /// Tire identification number.
    pub tin: Option<Tin>,
    /// Uniform tire quality grades.
    pub utqg: Option<Utqg>,
    /// Maximum load lines, at most [`MOST_LOADS`].
    pub maximum_loads: Vec<MaximumLoad>,
    /// Maximum pressure line.
    pub maximum_pressure: Option<Printed<PressureUnit>>,
    /// Measuring rim.
    pub rim: Option<RimWidth>,
    /// Approval marks, each once, in a fixed order, at most [`MOST_APPROVALS`].
    pub approvals: Vec<Approval>,
    /// Words and marks, each once, in a fixed order.
    pub words: Vec<Word>,
    /// What was wrong, in the order of the text.
    pub problems: Vec<Problem>,
}

impl PartialEq for Marking {
    fn eq(&self, other: &Self) -> bool {
        self.size == other.size
            && self.service == other.service
            && self.second_service == other.second_service
            && self.load == other.load
            && self.ply_rating == other.ply_rating
            && self.tin == other.tin
            && self.utqg == other.utqg
            && self.maximum_loads == other.maximum_loads
            && self.maximum_pressure == other.maximum_pressure
            && self.rim == other.rim
            && self.approvals == other.approvals
            && self.words == other.words
    }
}

impl Marking {
    /// Whether anything was read at all: false for nonsense.
    ///
    /// ```
    /// use lugbook::sidewall::parse;
    /// assert!(parse("225/45R17 91W").understood() && !parse("round and black").understood());
    /// ```
    pub fn understood(&self) -> bool {
        *self != Self::default()
    }

    /// Whether some part was refused: one of its problems is a [`Severity::Error`].
    ///
    /// ```
    /// use lugbook::sidewall::parse;
    /// assert!(parse("225/45X17").refused() && !parse("225/45R17 91W").refused());
    /// ```
    pub fn refused(&self) -> bool {
        self.problems.iter().any(|p| p.severity == Severity::Error)
    }

    /// The load class: as printed, or standard for a passenger size with a
    /// single load index and no load word (vehicle manuals: no word means
    /// standard load). `None` where nothing says it.
    ///
    /// ```
    /// use lugbook::sidewall::{LoadClass, parse};
    /// assert_eq!(parse("225/45R17 94W XL").load_class(), Some(LoadClass::Extra));
    /// ```
    pub fn load_class(&self) -> Option<LoadClass> {
        let passenger = |size: &Size| {
            matches!(size.made_for(), None | Some(Use::Passenger))
                // Widths of motorcycle tires end in 0.
                && matches!(size.section, Section::Metric { aspect: Some(_), width_mm } if width_mm % 10 == 5)
                && size.suffix.is_none()
                && size.rim_tenths.is_multiple_of(10)
        };
        self.load.or_else(|| {
            let single = self.service.is_some_and(|s| s.load_index_dual.is_none());
            (self.size.as_ref().is_some_and(passenger) && single).then_some(LoadClass::Standard)
        })
    }
}

impl fmt::Display for Marking {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut gap = "";
        let mut put = |item: &dyn fmt::Display| -> fmt::Result {
            write!(f, "{gap}{item}")?;
            gap = " ";
            Ok(())
        };
        if let Some(size) = &self.size {
            put(size)?;
        }
        if let Some(service) = &self.service {
            put(service)?;
        }
        if let Some(second) = &self.second_service {
            if second.above || Service::may_be_above(second.speed_symbol) {
                put(second)?;
            } else {
                put(&format_args!("({second})"))?;
            }
        }
        if let Some(load) =
            self.load.filter(|load| *load != LoadClass::High || !self.size.is_some_and(|s| s.is_high_load()))
        {
            put(&load)?;
        }
        if let Some(plies) = self.ply_rating {
            put(&format_args!("{plies}PR"))?;
        }
        for word in &self.words {
            put(word)?;
        }
        if let Some(utqg) = &self.utqg {
            put(utqg)?;
        }
        for load in &self.maximum_loads {
            put(load)?;
        }
        if let Some(pressure) = &self.maximum_pressure {
            put(&format_args!("MAX PRESSURE {pressure}"))?;
        }
        if let Some(rim) = &self.rim {
            put(rim)?;
        }
        for approval in &self.approvals {
            put(approval)?;
        }
        // Last, so that nothing behind it can be taken for its symbols.
        if let Some(tin) = &self.tin {
            put(tin)?;
        }
        Ok(())
    }
}

impl FromStr for Marking {
    type Err = std::convert::Infallible;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        Ok(parse(text))
    }
}

/// Capitals and plain marks, byte for byte where the text is plain ASCII.
pub(super) fn upper(text: &str) -> String {
    if text.is_ascii() {
        return text.to_ascii_uppercase();
    }
    // One character stays one character, so that places keep their meaning.
    text.chars()
        .map(|c| match c {
            '×' | '✕' => 'X',
            '‐' | '‑' | '‒' | '–' | '—' | '−' => '-',
            '\u{a0}' | '\u{2009}' | '\u{202f}' | '\u{3000}' => ' ',
            '⁄' | '∕' => '/',
            '→' | '←' | '↑' | '↓' | '↻' | '↺' | '▶' | '►' | '◀' | '◄' | '™' | '®' => ' ',
            '’' | '′' | '″' | '“' | '”' => '"',
            other => other.to_ascii_uppercase(),
        })
        .collect()
}

/// Turns a problem's place from bytes of the upper-cased text to characters.
pub(super) fn place(upper: &str, problem: &mut Problem) {
    if upper.is_ascii() {
        return;
    }
    let count = |from: usize, to: usize| upper.bytes().take(to).skip(from).filter(|b| (*b & 0xC0) != 0x80).count();
    let end = problem.at.saturating_add(problem.len);
    problem.len = count(problem.at, end);
    problem.at = count(0, problem.at);
}

/// Reads a sidewall marking. It never fails: what can't be read is told in
/// [`Marking::problems`], with its place and the reason.
///
/// ```
/// use lugbook::sidewall;
/// let marking = sidewall::parse("225/45R17 91W DOT 1HKB 9FLP 0723");
/// let size = marking.size.unwrap();
/// assert!((size.overall_diameter_mm().unwrap() - 634.3).abs() < 1e-9);
/// assert_eq!(marking.service.and_then(|s| s.load_kg()), Some(615.0));
/// assert!(marking.problems.is_empty());
/// ```
pub fn parse(text: &str) -> Marking {
    let mut problems = Problems::default();
    // `nth` stops early: a text of a megabyte is refused without reading it.
    if text.len() > LONGEST && text.chars().nth(LONGEST).is_some() {
        problems.add(LONGEST, 0, ProblemKind::TooLong { limit: LONGEST });
        return Marking { problems: problems.0, ..Marking::default() };
    }
    let upper = upper(text);
    let (mut marking, mut problems) = Reader::new(upper.as_bytes(), problems).read();
    if !upper.is_ascii() {
        for problem in &mut problems.0 {
            place(&upper, problem);
        }
    }
    for problem in &mut problems.0 {
        // As it stands in the text, not in capitals.
        if let ProblemKind::Unknown { text: shown, .. } | ProblemKind::Name { text: shown } = &mut problem.kind {
            *shown = text.chars().skip(problem.at).take(problem.len.min(24)).collect();
        }
    }
    if !marking.understood() && !problems.0.iter().any(|p| p.severity == Severity::Error) {
        problems.add(0, text.chars().count(), ProblemKind::NothingRead);
    }
    problems.0.sort_by_key(|p| (p.at, std::cmp::Reverse(p.severity)));
    marking.problems = problems.0;
    // Sound marks, then E marks, then named ones: in this order none is read as part of another.
    marking.approvals.sort_by(|a, b| (a.rank(), a).cmp(&(b.rank(), b)));
    marking.words.sort_unstable();
    marking.words.dedup();
    marking
}
