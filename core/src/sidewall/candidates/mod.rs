//! What a camera made of a marking: several readings, each with its price.
//!
//! Nothing is replaced in silence. Every character that is taken for another is
//! listed with what it costs, and a person confirms the reading.

mod confusion;
mod service;
mod size;
mod template;
mod tin;

use super::marking::{LONGEST, upper};
use super::service::Service;
use super::size::Size;
use super::tin::Tin;
use service::Tails;
use template::{Fit, Taken, Work};

/// A reading of misread text.
///
/// ```
/// use lugbook::sidewall::{Reading, candidates};
/// let found = candidates("Z25/4SR17 9IW", 5);
/// assert_eq!(found[0].text(), "225/45R17 91W");
/// assert_eq!(found[0].substitutions.len(), 3);
/// assert_eq!((found[0].substitutions[0].read, found[0].substitutions[0].taken), (Some('Z'), Some('2')));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// What it says.
    pub reading: Reading,
    /// First character it was read from, counted from 0.
    pub at: usize,
    /// How many characters it was read from.
    pub len: usize,
    /// What the substitutions and the unusual in it cost, in nats; 0 for a
    /// plain reading of a usual marking.
    pub cost: f64,
    /// Its share among the readings of its kind, 0 to 1, one share being kept
    /// for none of them.
    pub odds: f64,
    /// Every character that was taken for another, in order.
    pub substitutions: Vec<Substitution>,
}

/// What a candidate says.
///
/// ```
/// use lugbook::sidewall::{Reading, candidates};
/// let best = &candidates("225/45R17 91W", 3)[0];
/// assert!(matches!(best.reading, Reading::Size { service: Some(_), .. }));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum Reading {
    /// A size, with the service description behind it when there is one.
    Size {
        /// The size.
        size: Size,
        /// The service description.
        service: Option<Service>,
    },
    /// A service description by itself.
    Service(Service),
    /// A tire identification number, or a date by itself.
    Tin(Tin),
}

/// A character taken for another.
///
/// ```
/// use lugbook::sidewall::candidates;
/// // O for 0: shown and priced, never silently replaced.
/// let best = &candidates("2O5/55R16 91V", 3)[0];
/// assert_eq!((best.substitutions[0].read, best.substitutions[0].taken), (Some('O'), Some('0')));
/// assert!(best.substitutions[0].cost > 0.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Substitution {
    /// Where it stands, in characters from 0.
    pub at: usize,
    /// What was read, in capitals; `None` where a mark was put in.
    pub read: Option<char>,
    /// What it was taken for; `None` where it was left out.
    pub taken: Option<char>,
    /// What that costs, in nats.
    pub cost: f64,
}

impl Candidate {
    /// Canonical form of the reading.
    ///
    /// ```
    /// use lugbook::sidewall::candidates;
    /// assert_eq!(candidates("2O5/55R16 91V", 3)[0].text(), "205/55R16 91V");
    /// ```
    pub fn text(&self) -> String {
        match &self.reading {
            Reading::Size { size, service: Some(service) } => format!("{size} {service}"),
            Reading::Size { size, service: None } => size.to_string(),
            Reading::Service(service) => service.to_string(),
            Reading::Tin(tin) => tin.to_string(),
        }
    }
}

impl Reading {
    fn kind(&self) -> u8 {
        match self {
            Self::Size { .. } => 0,
            Self::Service(_) => 1,
            Self::Tin(_) => 2,
        }
    }
}

/// The most places where a reading is begun.
const MOST_STARTS: usize = 500;
/// Tenths of a nat for what is not usual.
const UNUSUAL: u16 = 22;
const RARE: u16 = 12;

/// The share that stays for "none of these", as a cost in nats.
const NONE_OF_THESE: f64 = 6.0;

/// Reads what a camera made of a sidewall: the likeliest readings, best first,
/// at most `limit` of each kind (sizes, service descriptions by themselves, tire
/// identification numbers). Empty for text of more than [`LONGEST`] characters.
///
/// ```
/// use lugbook::sidewall::candidates;
/// let found = candidates("2O5/55R16 9IV", 3);
/// assert_eq!(found[0].text(), "205/55R16 91V");
/// assert!(found[0].odds > 0.5 && found[0].substitutions.len() == 2);
/// ```
pub fn candidates(text: &str, limit: usize) -> Vec<Candidate> {
    if text.len() > LONGEST && text.chars().nth(LONGEST).is_some() {
        return Vec::new();
    }
    // One byte for each character, so that places are characters.
    let bytes: Vec<u8> = upper(text)
        .chars()
        .map(|c| match c {
            '\n' | '\r' | '\t' => b' ',
            '[' | ']' | '¦' => b'|',
            'Ø' => b'0',
            c => u8::try_from(c).ok().filter(u8::is_ascii).unwrap_or(b'?'),
        })
        .collect();
    let mut found: Vec<Found> = Vec::new();
    // Each kind has its own share of work, so that one can't starve another.
    let work = || Work::for_length(bytes.len());
    let mut tails = Tails::new(work());
    size::find(&bytes, &mut found, &mut tails, &mut work());
    tin::find(&bytes, &mut found, &mut work());
    service::find(&bytes, &mut found, &mut tails);
    ranked(found, limit)
}

/// A reading as it was found, before it is ranked.
#[derive(Debug, Clone)]
struct Found {
    reading: Reading,
    at: usize,
    fit: Fit,
    /// Tenths of a nat.
    cost: u16,
}

impl Found {
    fn candidate(self) -> Candidate {
        let character = |b: u8| (b != 0).then(|| char::from(b));
        let substitutions = self.fit.substitutions().iter().map(|Taken { at, read, taken, cost }| Substitution {
            at: usize::from(*at),
            read: character(*read),
            taken: character(*taken),
            cost: f64::from(*cost) / 10.0,
        });
        Candidate {
            at: self.at,
            len: self.fit.at.saturating_sub(self.at),
            cost: f64::from(self.cost) / 10.0,
            odds: 0.0,
            substitutions: substitutions.collect(),
            reading: self.reading,
        }
    }
}

fn ranked(found: Vec<Found>, limit: usize) -> Vec<Candidate> {
    let mut order: Vec<(u8, u16, usize)> =
        found.iter().enumerate().map(|(at, found)| (found.reading.kind(), found.cost, at)).collect();
    order.sort_unstable();
    let mut kept: Vec<Candidate> = Vec::new();
    for kind in 0..=2_u8 {
        let first = kept.len();
        for found in order.iter().filter(|(of, ..)| *of == kind).filter_map(|(.., at)| found.get(*at)) {
            if kept.len().saturating_sub(first) >= limit {
                break;
            }
            let same = |k: &Candidate| k.reading == found.reading;
            // A size alone adds nothing to the same size with its service description.
            let within = |k: &Candidate| match (&k.reading, &found.reading) {
                (Reading::Size { size: a, .. }, Reading::Size { size: b, service: None }) => a == b && k.at == found.at,
                _ => false,
            };
            if !kept.iter().skip(first).any(|k| same(k) || within(k)) {
                kept.push(found.clone().candidate());
            }
        }
        let total: f64 = kept.iter().skip(first).map(|c| (-c.cost).exp()).sum::<f64>() + (-NONE_OF_THESE).exp();
        for candidate in kept.iter_mut().skip(first) {
            candidate.odds = (-candidate.cost).exp() / total;
        }
    }
    kept
}

fn push(found: &mut Vec<Found>, reading: Reading, at: usize, fit: &Fit, cost: u16) {
    found.push(Found { reading, at, fit: *fit, cost });
}

/// Whether a character can be a digit.
fn like_a_digit(byte: u8) -> bool {
    confusion::digits(byte).iter().any(|digit| confusion::cost(byte, *digit).is_some_and(|cost| cost < 20))
}

/// Whether a figure can begin here: at the first of several characters that can
/// be digits, or at the first digit among them.
fn may_start(bytes: &[u8], at: usize) -> bool {
    let Some(here) = bytes.get(at).copied().filter(|b| like_a_digit(*b)) else { return false };
    match at.checked_sub(1).and_then(|at| bytes.get(at)) {
        None => true,
        Some(b'/' | b'.') => false,
        Some(before) => !like_a_digit(*before) || (here.is_ascii_digit() && !before.is_ascii_digit()),
    }
}

fn starts(bytes: &[u8]) -> impl Iterator<Item = usize> + '_ {
    (0..bytes.len()).filter(|at| may_start(bytes, *at)).take(MOST_STARTS)
}
