//! A whole marking: everything that was read on one sidewall.

use std::fmt;
use std::str::FromStr;

use super::load_class::{LoadClass, LoadRange};
use super::problem::{Part, Problem, ProblemKind, Problems, Severity, shown};
use super::scan::Scan;
use super::service::Service;
use super::size::{Section, Size, Use};
use super::tin::Tin;
use super::words::{Meaning, Word};
use super::{service, size_grammar, tin_grammar, words};

/// The most text that is read, in characters: far more than a sidewall bears.
pub const LONGEST: usize = 2000;

/// What was read on a sidewall.
///
/// Two markings are equal when they say the same; the places of their problems
/// belong to the text and are not compared. Printing gives the canonical form,
/// and reading that gives an equal marking.
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
    /// Tire identification number.
    pub tin: Option<Tin>,
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
            && self.tin == other.tin
            && self.words == other.words
    }
}

impl Marking {
    /// Whether anything was read at all: false for nonsense.
    pub fn understood(&self) -> bool {
        *self != Self::default()
    }

    /// Whether some part was refused: one of its problems is a [`Severity::Error`].
    pub fn refused(&self) -> bool {
        self.problems.iter().any(|p| p.severity == Severity::Error)
    }

    /// The load class: as printed, or standard for a passenger size with a
    /// single load index and no load word (vehicle manuals: no word means
    /// standard load). `None` where nothing says it.
    pub fn load_class(&self) -> Option<LoadClass> {
        let passenger = |size: &Size| {
            matches!(size.made_for(), None | Some(Use::Passenger))
                && matches!(size.section, Section::Metric { aspect: Some(_), .. })
                && size.suffix.is_none()
                && size.rim_tenths % 10 == 0
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
        if let Some(tin) = &self.tin {
            put(tin)?;
        }
        for word in &self.words {
            put(word)?;
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
    let mut reader =
        Reader { scan: Scan::new(upper.as_bytes()), marking: Marking::default(), problems, after: After::Other };
    reader.read();
    let Reader { mut marking, mut problems, .. } = reader;
    if !upper.is_ascii() {
        for problem in &mut problems.0 {
            place(&upper, problem);
        }
    }
    if !marking.understood() && !problems.0.iter().any(|p| p.severity == Severity::Error) {
        problems.add(0, text.chars().count(), ProblemKind::NothingRead);
    }
    problems.0.sort_by_key(|p| p.at);
    marking.problems = problems.0;
    marking.words.sort_unstable();
    marking.words.dedup();
    marking
}

/// What stood last, as far as it matters for what comes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum After {
    Size,
    Service,
    Other,
}

struct Reader<'a> {
    scan: Scan<'a>,
    marking: Marking,
    problems: Problems,
    after: After,
}

impl Reader<'_> {
    fn read(&mut self) {
        self.scan.between_items();
        if self.scan.done() {
            self.problems.add(0, 0, ProblemKind::Empty);
        }
        while !self.scan.done() {
            let (from, after) = (self.scan.at(), self.after);
            self.after = After::Other;
            self.item(after);
            if self.scan.at() == from {
                self.unknown();
            }
            self.scan.between_items();
        }
    }

    /// Reads one item, or leaves the cursor where it is.
    fn item(&mut self, after: After) {
        let Some(first) = self.scan.peek() else { return };
        if after == After::Size && self.load_range_letter(b'/') {
            self.after = After::Size;
            return;
        }
        if first.is_ascii_digit() || first == b'(' {
            if self.size() || self.service(after == After::Size) || self.tin_without_prefix() {
                return;
            }
            if let Some((meaning, end)) = words::phrase(&self.scan) {
                self.meaning(meaning, end);
            }
            return;
        }
        if self.tin() || self.size() {
            return;
        }
        if let Some((meaning, end)) = words::phrase(&self.scan) {
            self.meaning(meaning, end);
            return;
        }
        if after != After::Other && self.scan.run().len() == 1 && self.load_range_letter(b' ') {
            return;
        }
        self.tin_without_prefix();
    }

    fn size(&mut self) -> bool {
        let at = self.scan.at();
        let Some(found) = size_grammar::read(&mut self.scan, &mut self.problems) else { return false };
        self.after = After::Size;
        let Some(size) = found else { return true };
        if self.marking.size.is_some_and(|earlier| earlier != size) {
            self.repeated(at, Part::Size);
        } else {
            self.marking.size = Some(size);
            if size.is_high_load() {
                self.load(at, LoadClass::High);
            }
        }
        true
    }

    fn service(&mut self, after_size: bool) -> bool {
        let at = self.scan.at();
        let Some(found) = service::read(&mut self.scan, after_size, &mut self.problems) else { return false };
        self.after = After::Service;
        let Some(found) = found else { return true };
        match (self.marking.service, self.marking.second_service) {
            (None, _) => {
                self.marking.service = Some(found.service);
                if let Some(symbol) = found.service.speed_symbol.filter(|s| s.max_kmh() < 240) {
                    if self.marking.size.is_some_and(|s| s.is_zr()) {
                        let len = self.scan.at().saturating_sub(at);
                        self.problems.add(at, len, ProblemKind::SlowForZr { max_kmh: symbol.max_kmh() });
                    }
                }
            }
            (Some(first), _) if first == found.service => {}
            (Some(_), None) => self.marking.second_service = Some(found.service),
            (Some(_), Some(second)) if second == found.service => {}
            _ => self.repeated(at, Part::Service),
        }
        let _ = found.bracketed;
        true
    }

    fn tin(&mut self) -> bool {
        let at = self.scan.at();
        if !self.scan.rest().starts_with(b"DOT") {
            return false;
        }
        // `DOTTED` is a word, `DOT1HKB9FLP0723` a number.
        let run = self.scan.run();
        if run.len() > 3 && !run.iter().any(u8::is_ascii_digit) && run.len() < 7 {
            return false;
        }
        let Some(found) = tin_grammar::read(&mut self.scan, &mut self.problems) else { return false };
        if let Some(tin) = found {
            self.take_tin(at, tin);
        }
        true
    }

    fn tin_without_prefix(&mut self) -> bool {
        let at = self.scan.at();
        let Some(tin) = tin_grammar::read_without_prefix(&mut self.scan, &mut self.problems) else { return false };
        self.take_tin(at, tin);
        true
    }

    fn take_tin(&mut self, at: usize, tin: Tin) {
        if self.marking.tin.as_ref().is_some_and(|earlier| *earlier != tin) {
            self.repeated(at, Part::Tin);
        } else {
            self.marking.tin = Some(tin);
        }
    }

    /// `/E` behind a size, or a lone `E` behind a size or service description.
    fn load_range_letter(&mut self, before: u8) -> bool {
        let mut ahead = self.scan;
        let at = ahead.at();
        if before == b'/' && !ahead.eat(b'/') {
            return false;
        }
        let Some(range) = ahead.peek().and_then(LoadRange::of_byte) else { return false };
        ahead.step();
        if !ahead.at_end_of_item() {
            return false;
        }
        self.scan = ahead;
        self.range(at, range);
        true
    }

    fn range(&mut self, at: usize, range: LoadRange) {
        if range.ply_rating().is_none() {
            let letter_at = self.scan.at().saturating_sub(1);
            self.problems.add(letter_at, 1, ProblemKind::LoadRangeUnclear { letter: range.letter() });
        }
        self.load(at, LoadClass::Range(range));
    }

    fn load(&mut self, at: usize, load: LoadClass) {
        if self.marking.load.is_some_and(|earlier| earlier != load) {
            self.repeated(at, Part::Load);
        } else {
            self.marking.load = Some(load);
        }
    }

    fn meaning(&mut self, meaning: Meaning, end: usize) {
        let at = self.scan.at();
        self.scan.go_to(end);
        match meaning {
            Meaning::Word(word) => self.marking.words.push(word),
            Meaning::ExtraLoad => self.load(at, LoadClass::Extra),
            Meaning::LightLoad => self.load(at, LoadClass::Light),
            Meaning::HighLoad => self.load(at, LoadClass::High),
            Meaning::StandardLoad => self.load(at, LoadClass::Standard),
            Meaning::LoadRange => {
                while self.scan.peek().is_some_and(|b| matches!(b, b' ' | b'-' | b':')) {
                    self.scan.step();
                }
                let run = self.scan.run();
                match run {
                    [letter] if LoadRange::of_byte(*letter).is_some() => {
                        self.scan.step();
                        if let Some(range) = LoadRange::of_byte(*letter) {
                            self.range(at, range);
                        }
                    }
                    _ => {
                        self.problems.add(self.scan.at(), run.len(), ProblemKind::NotALoadRange { found: shown(run) });
                        let len = run.len();
                        self.scan.go_to(self.scan.at().saturating_add(len));
                    }
                }
            }
            _ => self.scan.go_to(at),
        }
    }

    fn repeated(&mut self, at: usize, part: Part) {
        let len = self.scan.at().saturating_sub(at);
        self.problems.add(at, len, ProblemKind::Repeated { part });
    }

    /// Steps over what could not be read and tells it.
    fn unknown(&mut self) {
        let at = self.scan.at();
        let token = self.scan.token();
        // A bracket parts items where nothing else does.
        let end =
            token.iter().skip(1).position(|b| matches!(b, b'(' | b')')).map_or(token.len(), |p| p.saturating_add(1));
        let token = token.get(..end).unwrap_or(token);
        self.scan.go_to(at.saturating_add(token.len().max(1)));
        let text = shown(token);
        let kind = match token {
            [b'(' | b')', ..] if token.len() == 1 => ProblemKind::Bracket,
            _ if token.iter().all(u8::is_ascii_alphabetic) => match words::nearly(token) {
                Some(word) => ProblemKind::Unknown { text, meant: Some(word) },
                None => ProblemKind::Name { text },
            },
            _ => ProblemKind::Unknown { text, meant: words::nearly(token) },
        };
        self.problems.add(at, token.len(), kind);
    }
}
