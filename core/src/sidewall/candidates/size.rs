//! Sizes in misread text, with the service description behind them.

use super::service::Tails;
use super::template::{Fit, Slot, Work, fits};
use super::{Found, RARE, Reading, UNUSUAL, push, starts};
use crate::sidewall::problem::{ProblemKind, Problems};
use crate::sidewall::scan::Scan;
use crate::sidewall::size::{Section, Size, Written};
use crate::sidewall::size_grammar;

const R_LETTERS: &[u8] = b"RDB-";

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
/// How many fits of each form are looked at.
const LOOKED_AT: usize = 6;
/// What looking at a fit takes, in trials.
const TRIALS_OF_A_FIT: usize = 20;
/// The widest gap before a service description, in spaces and brackets.
const WIDEST_GAP: usize = 4;

/// Finds sizes.
pub(super) fn find(bytes: &[u8], found: &mut Vec<Found>, tails: &mut Tails, work: &mut Work) {
    for start in starts(bytes) {
        for form in [METRIC, NO_ASPECT, INCH, FLOTATION] {
            for fit in fits(bytes, start, form, work).into_iter().take(LOOKED_AT) {
                if !work.spend(TRIALS_OF_A_FIT) {
                    return;
                }
                from_fit(bytes, start, fit, found, tails);
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

fn from_fit(bytes: &[u8], start: usize, mut fit: Fit, found: &mut Vec<Found>, tails: &mut Tails) {
    let (start, prefix) = prefix_before(bytes, start);
    let mut text: Vec<u8> = prefix.to_vec();
    text.extend_from_slice(fit.text());
    // Letters behind the rim that are read as they stand.
    let rest = bytes.get(fit.at..).unwrap_or_default();
    for suffix in [b"LT".as_slice(), b" LT", b"C", b"M/C", b"ST"] {
        let closed = rest.get(suffix.len()).is_none_or(|b| !b.is_ascii_alphanumeric());
        let opened = text.last().is_some_and(u8::is_ascii_digit);
        if opened && closed && rest.starts_with(suffix) {
            text.extend_from_slice(suffix);
            fit.at = fit.at.saturating_add(suffix.len());
            break;
        }
    }
    let Some((size, mut unusual)) = read_size(&text) else { return };
    // A figure that goes on behind the rim was not read to its end.
    let goes_on = match bytes.get(fit.at) {
        Some(b'.' | b',') => bytes.get(fit.at.saturating_add(1)).is_some_and(u8::is_ascii_digit),
        Some(b) => b.is_ascii_digit(),
        None => false,
    };
    if goes_on {
        unusual = unusual.saturating_add(UNUSUAL);
    }
    let rest = bytes.get(fit.at..).unwrap_or_default();
    let gap = rest.iter().take_while(|b| matches!(**b, b' ' | b'(')).count();
    let mut lone = 0;
    if gap <= WIDEST_GAP {
        for tail in tails.at(bytes, fit.at.saturating_add(gap)) {
            let Some(whole) = fit.join(&tail.fit) else { continue };
            lone = RARE;
            let cost = whole.cost.saturating_add(unusual).saturating_add(tail.unusual);
            push(found, Reading::Size { size, service: Some(tail.service) }, start, &whole, cost);
        }
    }
    let cost = fit.cost.saturating_add(unusual).saturating_add(lone);
    push(found, Reading::Size { size, service: None }, start, &fit, cost);
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
