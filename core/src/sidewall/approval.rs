//! Approval marks: recognized so that their digits are never taken for a date.

use std::fmt;

use super::scan::Scan;

/// An approval or certification mark with its number, in capitals and single
/// spaces: `E4 0212345 S2WR2`.
///
/// ```
/// let marking = lugbook::sidewall::parse("225/45R17 91W E4 0212345-S2WR2");
/// assert_eq!(marking.approvals[0].text(), "E4 0212345-S2WR2");
/// assert_eq!(marking.tin, None);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Approval(String);

impl Approval {
    /// The mark as it is printed.
    ///
    /// ```
    /// let marking = lugbook::sidewall::parse("225/45R17 91W E4 0212345");
    /// assert_eq!(marking.approvals[0].text(), "E4 0212345");
    /// assert!(marking.tin.is_none(), "an approval number is never taken for a date");
    /// ```
    pub fn text(&self) -> &str {
        &self.0
    }

    /// Sound marks alone, marks with a country's number, named marks.
    pub(super) fn rank(&self) -> u8 {
        match self.0.as_bytes() {
            [b'S', b'0'..=b'9', ..] => 0,
            [b'E', b'0'..=b'9', ..] => 1,
            _ => 2,
        }
    }
}

impl fmt::Display for Approval {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Marks of noise, wet grip and rolling resistance: `S2WR2`, `S1W` (from memory).
pub(super) fn is_sound_mark(run: &[u8]) -> bool {
    let rest = match run {
        [b'S', b'1' | b'2', rest @ ..] => rest,
        _ => return false,
    };
    matches!(rest, b"W" | b"R1" | b"R2" | b"WR1" | b"WR2" | b"WR1B" | b"WR2B" | b"R1B" | b"R2B")
}

/// An approval at the cursor: `E4` with its number, or a sound mark alone.
pub(super) fn read(scan: &mut Scan<'_>) -> Option<Approval> {
    let from = scan.at();
    let found = attempt(scan);
    if found.is_none() {
        scan.go_to(from);
    }
    found
}

fn attempt(scan: &mut Scan<'_>) -> Option<Approval> {
    let run = scan.run();
    if is_sound_mark(run) {
        scan.go_to(scan.at().saturating_add(run.len()));
        return scan.at_end_of_item().then(|| Approval(text(run)));
    }
    if !scan.eat(b'E') {
        return None;
    }
    let country = scan.digits(2).filter(|d| (1..=62).contains(&d.value))?;
    if !scan.at_end_of_item() {
        return None;
    }
    let mut mark = format!("E{}", country.value);
    append_number(scan, &mut mark, true);
    Some(Approval(mark))
}

/// Behind a named mark such as `ECE` or `CCC`: its number, if it has one.
pub(super) fn read_named(scan: &mut Scan<'_>, name: &str) -> Approval {
    let mut mark = name.to_owned();
    append_number(scan, &mut mark, false);
    Approval(mark)
}

/// The most characters an approval number has.
const LONGEST_NUMBER: usize = 24;

/// Whether a token is an approval number, judged by itself: four digits or more
/// and what hangs on them, as in `0212345-S2WR2`.
fn is_number(token: &[u8]) -> bool {
    let digits = token.iter().take_while(|b| b.is_ascii_digit()).count();
    let rest = token.get(digits..).unwrap_or_default();
    let hangs_on = |b: &u8| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'+');
    digits >= 4 && token.len() <= LONGEST_NUMBER && rest.iter().all(hangs_on)
}

/// Behind a named mark also one to three letters and digits: `R117`, `IS15633`.
fn is_lettered_number(token: &[u8]) -> bool {
    let letters = token.iter().take_while(|b| b.is_ascii_uppercase()).count();
    let (name, digits) = token.split_at_checked(letters).unwrap_or_default();
    (1..=3).contains(&letters)
        && !matches!(name, b"DOT" | b"E")
        && (2..=LONGEST_NUMBER).contains(&digits.len())
        && digits.iter().all(u8::is_ascii_digit)
}

/// Adds the number, and for a mark with a country's number the sound mark behind it.
fn append_number(scan: &mut Scan<'_>, mark: &mut String, country: bool) {
    let before = scan.at();
    while scan.peek().is_some_and(|b| matches!(b, b' ' | b'-' | b':' | b')')) {
        scan.step();
    }
    let token = scan.token().split(|b| matches!(b, b'(' | b')')).next().unwrap_or_default();
    if !(is_number(token) || (!country && is_lettered_number(token))) {
        scan.go_to(before);
        return;
    }
    mark.push(' ');
    mark.push_str(&text(token));
    scan.go_to(scan.at().saturating_add(token.len()));
    let before = scan.at();
    scan.spaces();
    let run = scan.run();
    if country && is_sound_mark(run) {
        mark.push(' ');
        mark.push_str(&text(run));
        scan.go_to(scan.at().saturating_add(run.len()));
    } else {
        scan.go_to(before);
    }
}

fn text(bytes: &[u8]) -> String {
    bytes.iter().map(|b| char::from(*b)).collect()
}
