//! What a camera made of a marking: several readings, each with its price.
//!
//! Nothing is replaced in silence. Every character that is taken for another is
//! listed with what it costs, and a person confirms the reading.

use super::confusion;
use super::marking::{LONGEST, upper};
use super::problem::{ProblemKind, Problems};
use super::scan::Scan;
use super::service::{self, Service};
use super::size::{Section, Size, Written};
use super::size_grammar;
use super::template::{Fit, Slot, Taken, extend, fits};
use super::tin::Tin;
use super::tin_grammar::is_symbol;

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
const MOST_STARTS: usize = 160;
/// The share that stays for "none of these", as a cost in nats.
const NONE_OF_THESE: f64 = 6.0;
/// Tenths of a nat for what is not usual.
const UNUSUAL: u16 = 22;
const RARE: u16 = 12;

const R_LETTERS: &[u8] = b"RDB-";
const SPEED: &[u8] = b"ABCDEFGHJKLMNPQRSTUVWY";

const METRIC: &[Slot] = &[
    Slot::Digit,
    Slot::Digit,
    Slot::Digit,
    Slot::Mark(b'/'),
    Slot::Digit,
    Slot::Digit,
    Slot::Maybe(b"Z"),
    Slot::One(R_LETTERS),
    Slot::Digit,
    Slot::Digit,
    Slot::MaybeAll(b".5"),
];
const NO_ASPECT: &[Slot] =
    &[Slot::Digit, Slot::Digit, Slot::Digit, Slot::One(b"R"), Slot::Digit, Slot::Digit, Slot::One(b"C")];
const INCH: &[Slot] =
    &[Slot::Digit, Slot::MaybeDigit, Slot::One(b"R"), Slot::Digit, Slot::Digit, Slot::Mark(b'.'), Slot::One(b"5")];
const FLOTATION: &[Slot] = &[
    Slot::Digit,
    Slot::Digit,
    Slot::One(b"X"),
    Slot::Digit,
    Slot::MaybeDigit,
    Slot::Mark(b'.'),
    Slot::Digit,
    Slot::MaybeDigit,
    Slot::One(b"R-"),
    Slot::Digit,
    Slot::Digit,
];
const DUAL: &[Slot] = &[
    Slot::Digit,
    Slot::Digit,
    Slot::MaybeDigit,
    Slot::Mark(b'/'),
    Slot::Digit,
    Slot::Digit,
    Slot::MaybeDigit,
    Slot::One(SPEED),
];
const SINGLE: &[Slot] = &[Slot::Digit, Slot::Digit, Slot::MaybeDigit, Slot::One(SPEED)];

/// Reads what a camera made of a sidewall: the likeliest readings, best first,
/// at most `limit` of each kind (sizes, service descriptions by themselves, tire
/// identification numbers). Empty for text of more than [`LONGEST`] characters.
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
    let mut found: Vec<Candidate> = Vec::new();
    sizes(&bytes, &mut found);
    tins(&bytes, &mut found);
    services(&bytes, &mut found);
    ranked(found, limit)
}

fn ranked(mut found: Vec<Candidate>, limit: usize) -> Vec<Candidate> {
    found.sort_by(|a, b| a.reading.kind().cmp(&b.reading.kind()).then(a.cost.total_cmp(&b.cost)));
    let mut kept: Vec<Candidate> = Vec::new();
    for kind in 0..=2_u8 {
        let first = kept.len();
        for candidate in found.iter().filter(|c| c.reading.kind() == kind) {
            if kept.len().saturating_sub(first) >= limit {
                break;
            }
            let same = |k: &Candidate| k.reading == candidate.reading;
            // A size alone adds nothing to the same size with its service description.
            let within = |k: &Candidate| match (&k.reading, &candidate.reading) {
                (Reading::Size { size: a, .. }, Reading::Size { size: b, service: None }) => {
                    a == b && k.at == candidate.at
                }
                _ => false,
            };
            if !kept.iter().skip(first).any(|k| same(k) || within(k)) {
                kept.push(candidate.clone());
            }
        }
        let total: f64 = kept.iter().skip(first).map(|c| (-c.cost).exp()).sum::<f64>() + (-NONE_OF_THESE).exp();
        for candidate in kept.iter_mut().skip(first) {
            candidate.odds = (-candidate.cost).exp() / total;
        }
    }
    kept
}

/// Whether a figure can begin here: the character before is no part of one.
fn may_start(bytes: &[u8], at: usize) -> bool {
    let digit = |b: u8| b"0123456789".iter().any(|d| confusion::cost(b, *d).is_some_and(|c| c < 20));
    let here = bytes.get(at).copied().is_some_and(digit);
    let before = at.checked_sub(1).and_then(|at| bytes.get(at));
    here && before.is_none_or(|b| !b.is_ascii_digit() && *b != b'/' && *b != b'.')
}

fn starts(bytes: &[u8]) -> impl Iterator<Item = usize> + '_ {
    (0..bytes.len()).filter(|at| may_start(bytes, *at)).take(MOST_STARTS)
}

fn sizes(bytes: &[u8], found: &mut Vec<Candidate>) {
    for start in starts(bytes) {
        for form in [METRIC, NO_ASPECT, INCH, FLOTATION] {
            for fit in fits(bytes, start, form).into_iter().take(6) {
                size_from(bytes, start, fit, found);
            }
        }
    }
}

fn read_size(text: &[u8]) -> Option<(Size, u16)> {
    let mut problems = Problems::default();
    let mut scan = Scan::new(text);
    let size = size_grammar::read(&mut scan, &mut problems).flatten().filter(|_| scan.done())?;
    let odd = problems.0.iter().filter(|p| matches!(p.kind, ProblemKind::Unusual { .. })).count();
    Some((size, UNUSUAL.saturating_mul(u16::try_from(odd).unwrap_or(9)).saturating_add(habit(&size))))
}

/// What is rare on the road although it exists (habit of the trade, no source).
fn habit(size: &Size) -> u16 {
    let mut cost = 0_u16;
    if let Section::Metric { width_mm, aspect } = size.section {
        // Widths of car tires end in 5; those of motorcycle tires in 0.
        if width_mm % 10 != 5 {
            cost = cost.saturating_add(RARE);
        }
        if !(115..=395).contains(&width_mm) {
            cost = cost.saturating_add(RARE);
        }
        if aspect.is_some_and(|a| !(25..=95).contains(&a)) {
            cost = cost.saturating_add(RARE);
        }
    }
    if !(120..=245).contains(&size.rim_tenths) {
        cost = cost.saturating_add(RARE);
    }
    match size.written {
        Written::R | Written::Zr => cost,
        _ => cost.saturating_add(RARE),
    }
}

fn size_from(bytes: &[u8], start: usize, fit: Fit, found: &mut Vec<Candidate>) {
    let (start, prefix) = prefix_before(bytes, start);
    let mut text: Vec<u8> = prefix.to_vec();
    text.extend_from_slice(fit.text());
    let mut end = fit.at;
    // Letters behind the rim that are read as they stand.
    let rest = bytes.get(end..).unwrap_or_default();
    for suffix in [b"LT".as_slice(), b" LT", b"C", b"M/C", b"ST"] {
        let closed = rest.get(suffix.len()).is_none_or(|b| !b.is_ascii_alphanumeric());
        let opened = text.last().is_some_and(u8::is_ascii_digit);
        if opened && closed && rest.starts_with(suffix) {
            text.extend_from_slice(suffix);
            end = end.saturating_add(suffix.len());
            break;
        }
    }
    let Some((size, mut unusual)) = read_size(&text) else { return };
    // A figure that goes on behind the rim was not read to its end.
    let goes_on = match bytes.get(end) {
        Some(b'.' | b',') => bytes.get(end.saturating_add(1)).is_some_and(u8::is_ascii_digit),
        Some(b) => b.is_ascii_digit(),
        None => false,
    };
    if goes_on {
        unusual = unusual.saturating_add(UNUSUAL);
    }
    let cost = fit.cost.saturating_add(unusual);
    let gap = bytes.get(end..).unwrap_or_default().iter().take_while(|b| matches!(**b, b' ' | b'(')).count();
    let behind = end.saturating_add(gap);
    let mut with_service = false;
    if gap <= 4 {
        let mut fit = fit;
        fit.at = behind;
        let mut tails = service_tails(bytes, fit);
        tails.truncate(4);
        for (service, tail, extra) in tails {
            let cost = tail.cost.saturating_add(unusual).saturating_add(extra);
            with_service = true;
            push(found, Reading::Size { size, service: Some(service) }, start, &tail, cost);
        }
    }
    let lone = if with_service { RARE } else { 0 };
    let mut bare = fit;
    bare.at = end;
    push(found, Reading::Size { size, service: None }, start, &bare, cost.saturating_add(lone));
}

/// `P`, `LT`, `T` or `ST` before a size, as it stands.
fn prefix_before(bytes: &[u8], start: usize) -> (usize, &'static [u8]) {
    let before = bytes.get(..start).unwrap_or_default();
    let gap = before.iter().rev().take_while(|b| **b == b' ').count().min(1);
    let before = before.get(..before.len().saturating_sub(gap)).unwrap_or_default();
    for prefix in [b"LT".as_slice(), b"ST", b"P", b"T"] {
        if before.ends_with(prefix) {
            let at = before.len().saturating_sub(prefix.len());
            let alone = at.checked_sub(1).and_then(|at| before.get(at)).is_none_or(|b| !b.is_ascii_alphanumeric());
            if alone {
                return (at, prefix);
            }
        }
    }
    (start, b"")
}

/// Service descriptions that can stand where the fit ends, with what is unusual in them.
fn service_tails(bytes: &[u8], fit: Fit) -> Vec<(Service, Fit, u16)> {
    let taken = fit.text().len();
    let mut tails = Vec::new();
    for form in [SINGLE, DUAL] {
        for tail in extend(bytes, vec![fit], form).into_iter().take(6) {
            // The letter ends it.
            if bytes.get(tail.at).is_some_and(u8::is_ascii_alphanumeric) {
                continue;
            }
            let Some((service, extra)) = tail.text().get(taken..).and_then(read_service) else { continue };
            if tail.cost.saturating_sub(fit.cost) <= 45 {
                tails.push((service, tail, extra));
            }
        }
    }
    tails.sort_by_key(|(_, tail, extra)| tail.cost.saturating_add(*extra));
    tails
}

fn read_service(text: &[u8]) -> Option<(Service, u16)> {
    let mut scan = Scan::new(text);
    let mut problems = Problems::default();
    let service = service::read(&mut scan, true, &mut problems).flatten().filter(|_| scan.done())?;
    let mut extra = if problems.0.is_empty() { 0 } else { UNUSUAL };
    if !(60..=165).contains(&service.load_index) {
        extra = extra.saturating_add(UNUSUAL);
    }
    if service.speed_symbol.is_none_or(|s| s.max_kmh() < 100) {
        extra = extra.saturating_add(UNUSUAL);
    }
    Some((service, extra))
}

/// Service descriptions by themselves, as they stand in a line of their own.
fn services(bytes: &[u8], found: &mut Vec<Candidate>) {
    for start in starts(bytes) {
        let before = start.checked_sub(1).and_then(|at| bytes.get(at));
        if before.is_some_and(|b| b.is_ascii_alphanumeric()) {
            continue;
        }
        let within = |c: &Candidate| c.cost < 4.0 && c.at <= start && start < c.at.saturating_add(c.len);
        if found.iter().any(within) {
            continue;
        }
        for (service, fit, extra) in service_tails(bytes, Fit::at(start)).into_iter().take(3) {
            push(found, Reading::Service(service), start, &fit, fit.cost.saturating_add(extra));
        }
    }
}

/// Costs of a tire identification number by how many symbols it has: 12 and 13
/// are usual, 8 to 11 older.
fn length_cost(symbols: usize, prefixed: bool) -> Option<u16> {
    let cost = match symbols {
        12 | 13 => 0,
        11 => 7,
        10 | 9 => 10,
        8 => 9,
        7 | 4 if prefixed => 12,
        _ => return None,
    };
    Some(if prefixed { cost } else { cost.saturating_add(RARE) })
}

fn tins(bytes: &[u8], found: &mut Vec<Candidate>) {
    let mut tried = 0_usize;
    for start in 0..bytes.len() {
        if start.checked_sub(1).and_then(|at| bytes.get(at)).is_some_and(u8::is_ascii_alphanumeric) {
            continue;
        }
        if tried >= MOST_STARTS {
            return;
        }
        let prefix = fits(bytes, start, &[Slot::One(b"D"), Slot::One(b"O"), Slot::One(b"T")]);
        if let Some(prefix) = prefix.into_iter().find(|fit| fit.cost <= 30) {
            tried = tried.saturating_add(1);
            let mut fit = prefix;
            while bytes.get(fit.at).is_some_and(|b| matches!(b, b' ' | b':' | b'-')) {
                fit.at = fit.at.saturating_add(1);
            }
            tin_from(bytes, start, fit, true, found);
        }
        if bytes.get(start).is_some_and(u8::is_ascii_alphanumeric) {
            tried = tried.saturating_add(1);
            tin_from(bytes, start, Fit::at(start), false, found);
        }
    }
}

/// A symbol and where it was read.
#[derive(Debug, Clone, Copy)]
struct Symbol {
    at: usize,
    read: u8,
    ends_group: bool,
}

fn tin_from(bytes: &[u8], start: usize, prefix: Fit, prefixed: bool, found: &mut Vec<Candidate>) {
    let mut symbols: Vec<Symbol> = Vec::with_capacity(13);
    let mut at = prefix.at;
    let mut groups = 0_u8;
    while symbols.len() < 13 {
        let Some(read) = bytes.get(at).copied() else { break };
        if read == b' ' && bytes.get(at.saturating_add(1)) != Some(&b' ') && !symbols.is_empty() {
            at = at.saturating_add(1);
            continue;
        }
        if !(read.is_ascii_alphanumeric() || read == b'|') {
            break;
        }
        let next = bytes.get(at.saturating_add(1));
        let ends_group = next.is_none_or(|b| !(b.is_ascii_alphanumeric() || *b == b'|'));
        symbols.push(Symbol { at, read, ends_group });
        groups = groups.saturating_add(u8::from(ends_group));
        at = at.saturating_add(1);
        if groups >= 5 {
            break;
        }
    }
    for len in 4..=symbols.len() {
        let Some(length) = length_cost(len, prefixed) else { continue };
        let Some(symbols) = symbols.get(..len).filter(|s| s.last().is_some_and(|s| s.ends_group)) else { continue };
        numbers(start, prefix, symbols, length, prefixed, found);
    }
}

/// The readings of so many symbols: those a number does not use are taken for
/// digits, the last four must be a week that exists.
fn numbers(start: usize, prefix: Fit, symbols: &[Symbol], length: u16, prefixed: bool, found: &mut Vec<Candidate>) {
    let (body, date) = symbols.split_at_checked(symbols.len().saturating_sub(4)).unwrap_or_default();
    let mut fit = prefix;
    if !prefixed {
        let letters = body.iter().filter(|s| s.read.is_ascii_alphabetic()).count();
        let digits = body.iter().filter(|s| s.read.is_ascii_digit()).count();
        let grouped = !body.is_empty() && symbols.iter().filter(|s| s.ends_group).count() <= 3;
        if letters == 0 || digits == 0 || !grouped || date.iter().filter(|s| s.read.is_ascii_digit()).count() < 3 {
            return;
        }
    }
    for symbol in body {
        fit.at = symbol.at;
        let taken = if is_symbol(symbol.read) {
            Some((symbol.read, 0))
        } else {
            confusion::instead_in_tin(symbol.read).map(|d| (d, 3))
        };
        let Some(next) = taken.and_then(|(taken, cost)| fit.push(taken, Some(symbol.read), cost)) else { return };
        fit = next;
    }
    let mut dates = vec![fit];
    for symbol in date {
        let mut next = Vec::new();
        for fit in &dates {
            let mut fit = *fit;
            fit.at = symbol.at;
            for digit in b'0'..=b'9' {
                if let Some(cost) = confusion::cost(symbol.read, digit) {
                    next.extend(fit.push(digit, Some(symbol.read), cost));
                }
            }
        }
        next.sort_by_key(|fit| fit.cost);
        next.truncate(24);
        dates = next;
    }
    let skip = prefix.text().len();
    let mut kept = 0_u8;
    for fit in dates {
        let Some(text) = fit.text().get(skip..).and_then(|t| std::str::from_utf8(t).ok()) else { continue };
        let tin = Tin::new(text.to_owned(), 4);
        if tin.made().is_none() {
            continue;
        }
        push(found, Reading::Tin(tin), start, &fit, fit.cost.saturating_add(length));
        kept = kept.saturating_add(1);
        if kept >= 4 {
            return;
        }
    }
}

fn push(found: &mut Vec<Candidate>, reading: Reading, at: usize, fit: &Fit, cost: u16) {
    let character = |b: u8| (b != 0).then(|| char::from(b));
    let substitutions = fit
        .substitutions()
        .iter()
        .map(|Taken { at, read, taken, cost }| Substitution {
            at: usize::from(*at),
            read: character(*read),
            taken: character(*taken),
            cost: f64::from(*cost) / 10.0,
        })
        .collect();
    found.push(Candidate {
        reading,
        at,
        len: fit.at.saturating_sub(at),
        cost: f64::from(cost) / 10.0,
        odds: 0.0,
        substitutions,
    });
}
