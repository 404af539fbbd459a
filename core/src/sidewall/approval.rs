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
    append_number(scan, &mut mark, 4, true);
    Some(Approval(mark))
}

/// Behind a named mark such as `ECE` or `CCC`: its number, if it has one.
pub(super) fn read_named(scan: &mut Scan<'_>, name: &str) -> Approval {
    let mut mark = name.to_owned();
    append_number(scan, &mut mark, 2, false);
    Approval(mark)
}

/// Adds the number and the sound marks behind it. At least so many digits, so
/// that nothing else is swallowed.
fn append_number(scan: &mut Scan<'_>, mark: &mut String, least: usize, sound: bool) {
    let before = scan.at();
    while scan.peek().is_some_and(|b| matches!(b, b' ' | b'-' | b':' | b')')) {
        scan.step();
    }
    let token = scan.token();
    let token = token.split(|b| matches!(b, b'(' | b')')).next().unwrap_or_default();
    let digits = token.iter().filter(|b| b.is_ascii_digit()).count();
    let plain = token.iter().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'.' | b'+'));
    let starts =
        token.first().is_some_and(|b| b.is_ascii_digit()) || (!sound && token.len() >= 3 && token.len() > digits);
    // `ECE R30`, `BIS IS15633`, `E4 0212345-S2WR2`; never a size or a service description.
    if digits < least || token.len() > 24 || !plain || !starts || other_item(scan) {
        scan.go_to(before);
        return;
    }
    mark.push(' ');
    mark.push_str(&text(token));
    scan.go_to(scan.at().saturating_add(token.len()));
    let before = scan.at();
    scan.spaces();
    let run = scan.run();
    if sound && is_sound_mark(run) {
        mark.push(' ');
        mark.push_str(&text(run));
        scan.go_to(scan.at().saturating_add(run.len()));
    } else {
        scan.go_to(before);
    }
}

fn other_item(scan: &Scan<'_>) -> bool {
    let mut unheard = super::problem::Problems::default();
    let (mut size, mut service) = (*scan, *scan);
    super::size_grammar::read(&mut size, &mut unheard).is_some()
        || super::service::read(&mut service, false, &mut unheard).is_some()
}

fn text(bytes: &[u8]) -> String {
    bytes.iter().map(|b| char::from(*b)).collect()
}
