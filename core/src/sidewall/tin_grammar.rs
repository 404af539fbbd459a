//! Reading a tire identification number.

use crate::calendar::TireWeek;

use super::problem::{ProblemKind, Problems};
use super::scan::{Scan, parts};
use super::tin::{Tin, TinForm};

/// The most symbols a number has (49 CFR 574.5).
const MOST: usize = 13;
/// The most groups that are tried.
const GROUPS: usize = 7;

/// Whether a tire identification number uses the symbol: 30 of them do. That
/// there are 30 follows from 27,000 plant codes of three symbols (grade S);
/// which letters are left out (G I O Q S Z) is from memory, so others warn.
pub(super) fn is_symbol(byte: u8) -> bool {
    byte.is_ascii_digit() || (byte.is_ascii_uppercase() && !matches!(byte, b'G' | b'I' | b'O' | b'Q' | b'S' | b'Z'))
}

#[derive(Debug, Clone, Copy, Default)]
struct Group {
    at: usize,
    end: usize,
    /// Symbols up to and with this group.
    total: usize,
}

/// Reads a number that begins with `DOT`. `None`, with the cursor where it was,
/// when `DOT` is not there.
pub(super) fn read(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Option<Tin>> {
    let from = scan.at();
    if !scan.eat_text(b"DOT") {
        return None;
    }
    // `DOT-R` stands on retreads (from memory).
    if scan.peek() == Some(b'-') {
        scan.step();
        if scan.peek() == Some(b'R') && scan.peek_past(1).is_none_or(parts) {
            scan.step();
        }
    }
    scan.eat(b':');
    scan.spaces();
    let groups = groups(scan);
    let count = groups.iter().filter(|g| g.total > 0).count();
    if count == 0 {
        return Some(missing(scan, problems, from));
    }
    let (last, date_len) = dated(scan, &groups).unwrap_or_else(|| (undated_end(scan, &groups), 0));
    Some(take(scan, problems, &groups, last, date_len))
}

/// Reads a number without `DOT`: only a full one whose date is a week that exists.
pub(super) fn read_without_prefix(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Tin> {
    let from = scan.at();
    let groups = groups(scan);
    let (last, date_len) = dated(scan, &groups).filter(|(_, date)| *date == 4)?;
    let first = groups.first()?;
    let total = groups.get(last)?.total;
    let text = symbols(scan, &groups, last);
    // A plant code is never a whole word, and a maker's name is never dated.
    let mixed =
        text.bytes().all(is_symbol) && text.bytes().take(total.saturating_sub(4)).any(|b| b.is_ascii_alphabetic());
    let alone = first.total == total || first.total <= 4;
    if total < 8 || !mixed || !alone || !week_exists(text.as_bytes(), 4) {
        scan.go_to(from);
        return None;
    }
    let end = groups.get(last).map_or(from, |g| g.end);
    problems.add(from, end.saturating_sub(from), ProblemKind::TinNoPrefix);
    take(scan, problems, &groups, last, date_len)
}

/// Reads text that is a date of four digits and nothing else, as it may stand in
/// an oval by itself (from memory).
pub(super) fn read_date_alone(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Tin> {
    let (from, run) = (scan.at(), scan.run());
    if run.len() != 4 || !week_exists(run, 4) {
        return None;
    }
    let mut ahead = *scan;
    ahead.go_to(from.saturating_add(4));
    ahead.between_items();
    if !ahead.done() {
        return None;
    }
    problems.add(from, 4, ProblemKind::TinDateOnly);
    let text = run.iter().map(|b| char::from(*b)).collect();
    *scan = ahead;
    Some(Tin::new(text, 4))
}

fn missing(scan: &mut Scan<'_>, problems: &mut Problems, from: usize) -> Option<Tin> {
    // A mark that ends the first group, where only symbols should stand.
    let odd = scan.token();
    match odd.iter().position(|b| !b.is_ascii_alphanumeric()) {
        Some(at) if odd.get(at).is_some_and(|b| !matches!(b, b'(' | b')')) => {
            let mark = odd.get(at).map_or(' ', |b| char::from(*b));
            problems.add(scan.at().saturating_add(at), 1, ProblemKind::TinMark { mark });
            scan.go_to(scan.at().saturating_add(odd.len()));
        }
        _ => problems.add(from, 3, ProblemKind::TinMissing),
    }
    None
}

/// The groups of letters and digits ahead, as long as they can belong together.
fn groups(scan: &Scan<'_>) -> [Group; GROUPS] {
    let mut groups = [Group::default(); GROUPS];
    let mut ahead = *scan;
    let mut total = 0_usize;
    for group in &mut groups {
        let run = ahead.run();
        let at = ahead.at();
        let end = at.saturating_add(run.len());
        ahead.go_to(end);
        if run.is_empty() || !ahead.at_end_of_item() {
            break;
        }
        total = total.saturating_add(run.len());
        *group = Group { at, end, total };
        if total > MOST {
            break;
        }
        ahead.spaces();
    }
    groups
}

fn symbols(scan: &Scan<'_>, groups: &[Group], last: usize) -> String {
    let mut text = String::with_capacity(16);
    for group in groups.iter().take(last.saturating_add(1)).filter(|g| g.total > 0) {
        text.extend(scan.between(group.at, group.end).iter().map(|b| char::from(*b)));
    }
    text
}

/// The number of digits at the end of a slice.
fn trailing_digits(bytes: &[u8]) -> usize {
    bytes.iter().rev().take_while(|b| b.is_ascii_digit()).count()
}

fn two(bytes: &[u8]) -> Option<u8> {
    match bytes {
        [a @ b'0'..=b'9', b @ b'0'..=b'9'] => a.checked_sub(b'0')?.checked_mul(10)?.checked_add(b.checked_sub(b'0')?),
        _ => None,
    }
}

/// Whether the last three or four digits are a week that exists.
fn week_exists(bytes: &[u8], date_len: usize) -> bool {
    let Some(code) = bytes.len().checked_sub(date_len).and_then(|at| bytes.get(at..)) else { return false };
    let Some(week) = code.get(..2).and_then(two) else { return false };
    match code.get(2..) {
        Some(year @ [_, _]) => {
            two(year).is_some_and(|year| TireWeek::new(week, i16::from(year).saturating_add(2000)).is_some())
        }
        Some([_]) => (1..=53).contains(&week),
        _ => false,
    }
}

/// How many digits the date of a number with so many symbols has, when its last
/// group ends like this; 0 when it ends in none.
fn date_len(group: &[u8], total: usize) -> usize {
    let digits = trailing_digits(group);
    match total {
        3 | 4 if digits == total => total,
        7..=11 if digits == 3 => 3,
        7..=13 if digits >= 4 => 4,
        _ => 0,
    }
}

/// The group that ends the number with its date, and the date's length.
fn dated(scan: &Scan<'_>, groups: &[Group]) -> Option<(usize, usize)> {
    let bytes = |group: &Group| scan.between(group.at, group.end);
    let len_of = |group: &Group| if group.total > MOST { 0 } else { date_len(bytes(group), group.total) };
    let listed = || groups.iter().enumerate().filter(|(_, g)| g.total > 0);
    let find = |wanted: usize, must_exist: bool| {
        listed().find(|(_, g)| g.total >= 7 && len_of(g) == wanted && (!must_exist || week_exists(bytes(g), wanted)))
    };
    // Four digits that are a week; then four digits that are none; then three.
    let found = [(4, true), (4, false), (3, false)]
        .into_iter()
        .find_map(|(wanted, must)| Some((find(wanted, must)?.0, wanted)));
    if let Some((mut at, wanted)) = found {
        // A maker's group can look like a date: the last of several is the date.
        loop {
            let next = at.saturating_add(1);
            let later = groups.get(next).filter(|g| g.total > 0 && bytes(g).len() == wanted && len_of(g) == wanted);
            match later {
                Some(_) => at = next,
                None => return Some((at, wanted)),
            }
        }
    }
    let first = groups.first()?;
    Some((0, len_of(first))).filter(|(_, len)| *len > 0)
}

/// Where a number without a date ends: before the first group that is something
/// else. With a date so far behind that the number is too long, at the date.
fn undated_end(scan: &Scan<'_>, groups: &[Group]) -> usize {
    let mut last = 0;
    for (at, group) in groups.iter().enumerate().skip(1) {
        let bytes = scan.between(group.at, group.end);
        if group.total > MOST && bytes.len() == 4 && week_exists(bytes, 4) {
            return at;
        }
        if group.total == 0 || group.total > MOST || super::words::stands_alone(bytes) {
            break;
        }
        last = at;
    }
    last
}

/// Whether the printed number reads back as itself: with many digits in a row
/// the date can't always be told from the rest.
fn is_clear(tin: &Tin) -> bool {
    let mut run = 0_u8;
    let digits_in_a_row = tin.text().bytes().any(|b| {
        run = if b.is_ascii_digit() { run.saturating_add(1) } else { 0 };
        run >= 3
    });
    if !digits_in_a_row && tin.form() != TinForm::Partial {
        return true;
    }
    let printed = tin.to_string();
    let mut scan = Scan::new(printed.as_bytes());
    scan.eat_text(b"DOT ");
    let groups = groups(&scan);
    let (last, date_len) = dated(&scan, &groups).unwrap_or_else(|| (undated_end(&scan, &groups), 0));
    symbols(&scan, &groups, last) == tin.text() && tin.date_code().map_or(0, str::len) == date_len
}

fn take(scan: &mut Scan<'_>, problems: &mut Problems, groups: &[Group], last: usize, date_len: usize) -> Option<Tin> {
    let (first, end) = (groups.first()?, groups.get(last)?);
    scan.go_to(end.end);
    let len = end.end.saturating_sub(first.at);
    if end.total > MOST {
        problems.add(first.at, len, ProblemKind::TinTooLong { symbols: end.total });
        return None;
    }
    // A mark inside, as in `1HKB?9FLP`.
    if !scan.at_end_of_item() {
        let mark = scan.peek().map_or(' ', char::from);
        problems.add(scan.at(), 1, ProblemKind::TinMark { mark });
        let rest = scan.token().len();
        scan.go_to(scan.at().saturating_add(rest));
        return None;
    }
    let tin = Tin::new(symbols(scan, groups, last), date_len);
    if end.total < 4 && tin.form() != TinForm::DateOnly {
        problems.add(first.at, len, ProblemKind::TinTooShort { symbols: end.total });
        return None;
    }
    if !is_clear(&tin) {
        problems.add(first.at, len, ProblemKind::TinUnclear);
        return None;
    }
    for group in groups.iter().take(last.saturating_add(1)) {
        for (at, byte) in scan.between(group.at, group.end).iter().enumerate() {
            if !is_symbol(*byte) {
                problems.add(group.at.saturating_add(at), 1, ProblemKind::TinSymbol { symbol: char::from(*byte) });
            }
        }
    }
    let date_at = end.end.saturating_sub(date_len);
    match tin.form() {
        TinForm::Partial if end.total >= 10 => problems.add(first.at, len, ProblemKind::TinNoDate),
        TinForm::Partial => problems.add(first.at, len, ProblemKind::TinPartial),
        TinForm::DateOnly => problems.add(first.at, len, ProblemKind::TinDateOnly),
        TinForm::Older if end.total == 8 => problems.add(first.at, len, ProblemKind::TinMaybePartial),
        _ => {}
    }
    if date_len == 4 && tin.made().is_none() {
        let (week, year) = tin.week_and_year()?;
        let year = year.checked_add(2000);
        let weeks = year.and_then(TireWeek::weeks_in).unwrap_or(53);
        problems.add(date_at, 4, ProblemKind::TinWeek { week: u32::from(week), year, weeks });
    }
    if date_len == 3 {
        let years = tin.ambiguous();
        match tin.week_and_year() {
            Some((week, _)) if years.is_empty() => {
                problems.add(date_at, 3, ProblemKind::TinWeek { week: u32::from(week), year: None, weeks: 53 });
            }
            _ => problems.add(date_at, 3, ProblemKind::TinDecade { years }),
        }
    }
    Some(tin)
}
