//! Tire identification numbers in misread text.

use super::template::{Fit, Slot, Work, fits};
use super::{Found, MOST_STARTS, RARE, Reading, confusion, push};
use crate::sidewall::tin::Tin;
use crate::sidewall::tin_grammar::{is_clear, is_symbol};

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

/// Finds tire identification numbers.
pub(super) fn find(bytes: &[u8], found: &mut Vec<Found>, work: &mut Work) {
    let mut tried = 0_usize;
    for start in 0..bytes.len() {
        if start.checked_sub(1).and_then(|at| bytes.get(at)).is_some_and(u8::is_ascii_alphanumeric) {
            continue;
        }
        if tried >= MOST_STARTS {
            return;
        }
        let prefix = fits(bytes, start, &[Slot::One(b"D"), Slot::One(b"O"), Slot::One(b"T")], work);
        if let Some(prefix) = prefix.into_iter().find(|fit| fit.cost <= 30) {
            tried = tried.saturating_add(1);
            let mut fit = prefix;
            while bytes.get(fit.at).is_some_and(|b| matches!(b, b' ' | b':' | b'-')) {
                fit.at = fit.at.saturating_add(1);
            }
            tin_from(bytes, start, fit, true, found, work);
        }
        if bytes.get(start).is_some_and(u8::is_ascii_alphanumeric) {
            tried = tried.saturating_add(1);
            tin_from(bytes, start, Fit::at(start), false, found, work);
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

fn tin_from(bytes: &[u8], start: usize, prefix: Fit, prefixed: bool, found: &mut Vec<Found>, work: &mut Work) {
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
        numbers(start, prefix, symbols, length, found, work);
    }
}

/// The readings of so many symbols: those a number does not use are taken for
/// digits, the last four must be a week that exists.
fn numbers(start: usize, prefix: Fit, symbols: &[Symbol], length: u16, found: &mut Vec<Found>, work: &mut Work) {
    let (body, date) = symbols.split_at_checked(symbols.len().saturating_sub(4)).unwrap_or_default();
    let mut fit = prefix;
    if prefix.text().is_empty() {
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
            for digit in confusion::digits(symbol.read) {
                if let Some(cost) = confusion::cost(symbol.read, *digit) {
                    next.extend(fit.push(*digit, Some(symbol.read), cost));
                }
            }
        }
        if !work.spend(next.len()) {
            return;
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
        if tin.made().is_none() || !is_clear(&tin) {
            continue;
        }
        push(found, Reading::Tin(tin), start, &fit, fit.cost.saturating_add(length));
        kept = kept.saturating_add(1);
        if kept >= 4 {
            return;
        }
    }
}
