//! Reading a size designation.

use super::problem::{ProblemKind, Problems, SizePart, shown};
use super::scan::{Digits, Scan};
use super::service;
use super::size::{Inches, Prefix, Section, Size, Suffix, Written};

/// Section widths in millimetres that exist, and those that are usual on the road.
const WIDTH_MM: (u32, u32) = (40, 1300);
const USUAL_WIDTH_MM: (u32, u32) = (60, 605);
/// Aspect ratios that exist, percent.
const ASPECT: (u32, u32) = (15, 110);
/// Rim diameters that exist, in.
const RIM_IN: (u32, u32) = (4, 63);
/// Rim diameters with half inches that are usual.
const USUAL_HALF_RIMS_TENTHS: [u16; 6] = [145, 165, 175, 195, 225, 245];
/// Whole rim diameters that are usual on the road, in.
const USUAL_RIM_IN: (u16, u16) = (5, 30);
/// Section widths in inches that exist, in hundredths.
const WIDTH_HUNDREDTHS: (u32, u32) = (175, 5000);
/// Overall diameters in inches of flotation sizes, in hundredths.
const DIAMETER_HUNDREDTHS: (u32, u32) = (800, 7500);

/// Reads a size at the cursor. `None`, with the cursor where it was, when what
/// stands there is no size; `Some(None)` when it is one that can't be taken,
/// with its problem told.
pub(super) fn read(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Option<Size>> {
    let from = scan.at();
    let found = attempt(scan, problems);
    if found.is_none() {
        scan.go_to(from);
    }
    found
}

fn attempt(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Option<Size>> {
    let start = scan.at();
    let prefix = prefix(scan);
    if prefix.is_some() {
        scan.spaces();
    }
    let Some(first) = scan.digits(4) else {
        scan.go_to(start);
        return letter_size(scan, problems);
    };
    let first_at = scan.at().saturating_sub(first.count);
    let draft = match scan.peek()? {
        b'.' => inch(scan, first, true)?,
        b',' if scan.peek_past(1).is_some_and(|b| b.is_ascii_digit()) => inch(scan, first, true)?,
        b'X' => flotation(scan, first.value.checked_mul(100)?, false)?,
        _ => metric_or_inch(scan, first, prefix)?,
    };
    match draft {
        Draft::Whole { section, written, rim_tenths, rim_at } => {
            finish(scan, problems, Parts { start, first_at, prefix, section, written, rim_tenths, rim_at })
        }
        Draft::Broken { at, len, kind } => {
            problems.add(at, len, kind);
            // What is left of the broken size is not read as something else.
            let rest = scan.token().len();
            scan.go_to(scan.at().saturating_add(rest));
            Some(None)
        }
    }
}

/// A size whose figures were read, or the place where it broke.
enum Draft {
    Whole { section: Section, written: Written, rim_tenths: u16, rim_at: usize },
    Broken { at: usize, len: usize, kind: ProblemKind },
}

struct Parts {
    start: usize,
    first_at: usize,
    prefix: Option<Prefix>,
    section: Section,
    written: Written,
    rim_tenths: u16,
    rim_at: usize,
}

fn prefix(scan: &mut Scan<'_>) -> Option<Prefix> {
    let from = scan.at();
    let prefix = if scan.eat_text(b"LT") {
        Prefix::Lt
    } else if scan.eat_text(b"ST") {
        Prefix::St
    } else if scan.eat_text(b"HL") {
        Prefix::Hl
    } else if scan.eat(b'P') {
        Prefix::P
    } else if scan.eat(b'T') {
        Prefix::T
    } else if scan.eat(b'S') {
        Prefix::S
    } else {
        return None;
    };
    let mut ahead = *scan;
    ahead.spaces();
    if ahead.peek().is_some_and(|b| b.is_ascii_digit()) {
        return Some(prefix);
    }
    scan.go_to(from);
    None
}

/// `225/45 R17`, `195R14`, `10R22.5`: whole digits first.
fn metric_or_inch(scan: &mut Scan<'_>, first: Digits, prefix: Option<Prefix>) -> Option<Draft> {
    let after_first = scan.at();
    scan.spaces();
    if scan.eat(b'/') {
        return metric(scan, first, after_first, prefix);
    }
    if scan.peek() == Some(b'X') {
        return flotation(scan, first.value.checked_mul(100)?, false);
    }
    let (written, rim_tenths, rim_at) = construction_and_rim(scan)?;
    // `100R 14…` is a service description and something else.
    let letter_apart = scan.between(after_first, rim_at).first() == Some(&b' ');
    let rim_apart = scan.between(after_first, rim_at).last() == Some(&b' ');
    if rim_apart && !letter_apart {
        return None;
    }
    let millimetres = first.count == 3;
    if millimetres && first.value < 100 {
        return None;
    }
    if written == Written::Dash && scan.at() > after_first.saturating_add(8) {
        return None;
    }
    if millimetres {
        let width_mm = u16::try_from(first.value).ok()?;
        return Some(Draft::Whole { section: Section::Metric { width_mm, aspect: None }, written, rim_tenths, rim_at });
    }
    if first.count > 2 {
        return None;
    }
    let width = Inches { hundredths: first.value.checked_mul(100)?, decimals: false };
    Some(Draft::Whole { section: Section::Inch { width }, written, rim_tenths, rim_at })
}

/// Behind `225/`.
fn metric(scan: &mut Scan<'_>, first: Digits, after_first: usize, prefix: Option<Prefix>) -> Option<Draft> {
    scan.spaces();
    let width_mm = u16::try_from(first.value).ok()?;
    let aspect_at = scan.at();
    let Some(aspect) = scan.digits(3) else {
        // `185/R14C` is written too: no aspect.
        if let Some((written, rim_tenths, rim_at)) =
            construction_and_rim(scan).filter(|_| first.count == 3 && first.value >= 100)
        {
            return Some(Draft::Whole {
                section: Section::Metric { width_mm, aspect: None },
                written,
                rim_tenths,
                rim_at,
            });
        }
        scan.go_to(aspect_at);
        let broken =
            first.count == 3 && (scan.at_end_of_item() || scan.peek().is_some_and(|b| b.is_ascii_alphanumeric()));
        return broken.then_some(Draft::Broken {
            at: aspect_at,
            len: 0,
            kind: ProblemKind::SizeUnfinished { missing: SizePart::Aspect },
        });
    };
    let aspect_value = u16::try_from(aspect.value).ok()?;
    let after_aspect = scan.at();
    let behind_aspect = *scan;
    if let Some((written, rim_tenths, rim_at)) = construction_and_rim(scan) {
        // `120/116R 16PR` is a service description and a ply rating.
        let dual = aspect.value > ASPECT.1 && looks_like_service(&behind_aspect, first, aspect);
        if !dual && after_rim_is_fine(scan, prefix) {
            let section = Section::Metric { width_mm, aspect: Some(aspect_value) };
            return Some(Draft::Whole { section, written, rim_tenths, rim_at });
        }
    }
    scan.go_to(after_aspect);
    if looks_like_service(scan, first, aspect) {
        return None;
    }
    // `225/45` and something that is no construction with a rim.
    if first.count < 2 {
        scan.go_to(after_first);
        return None;
    }
    Some(broken_behind_aspect(scan))
}

fn broken_behind_aspect(scan: &mut Scan<'_>) -> Draft {
    scan.spaces();
    let at = scan.at();
    if scan.at_end_of_item() || scan.peek().is_some_and(|b| b.is_ascii_digit()) {
        return Draft::Broken { at, len: 0, kind: ProblemKind::SizeUnfinished { missing: SizePart::Construction } };
    }
    if construction(scan).is_some() {
        scan.spaces();
        let rim_at = scan.at();
        let token = scan.token();
        if !scan.peek().is_some_and(|b| b.is_ascii_digit()) {
            return Draft::Broken { at: rim_at, len: 0, kind: ProblemKind::SizeUnfinished { missing: SizePart::Rim } };
        }
        return match rim(scan) {
            Some(_) => {
                let odd_at = scan.at();
                let odd = scan.token();
                scan.go_to(odd_at.saturating_add(odd.len()));
                Draft::Broken { at: odd_at, len: odd.len(), kind: ProblemKind::AfterSize { found: shown(odd) } }
            }
            None => {
                let given = scan.digits(9).map_or(0, |d| d.value);
                Draft::Broken {
                    at: rim_at,
                    len: token.len(),
                    kind: out_of_range(SizePart::Rim, given.saturating_mul(100), RIM_IN),
                }
            }
        };
    }
    let letters = scan.rest().iter().take_while(|b| !b.is_ascii_digit() && !super::scan::parts(**b)).count();
    let rest = scan.between(at, at.saturating_add(letters.max(1)));
    Draft::Broken { at, len: letters.max(1), kind: ProblemKind::NotAConstruction { found: shown(rest) } }
}

/// `109/107T`, `109/107 T`, or `109/107` by itself: a service description.
fn looks_like_service(scan: &Scan<'_>, first: Digits, second: Digits) -> bool {
    let run = scan.run();
    let symbol = (1..=2).contains(&run.len()) && !run.iter().all(u8::is_ascii_digit);
    let alone = scan.at_end_of_item() && second.value >= service::LEAST_WITHOUT_SYMBOL;
    first.count >= 2 && service::near(first.value, second.value) && (symbol || alone)
}

/// `7.50R16`, `10.00-20`, `31.5x10.5`: the decimals of the first figure.
fn inch(scan: &mut Scan<'_>, first: Digits, decimals: bool) -> Option<Draft> {
    let hundredths = hundredths(scan, first)?;
    let mut ahead = *scan;
    ahead.spaces();
    if ahead.peek() == Some(b'X') {
        *scan = ahead;
        return flotation(scan, hundredths, true);
    }
    let (written, rim_tenths, rim_at) = construction_and_rim(scan)?;
    let width = Inches { hundredths, decimals };
    Some(Draft::Whole { section: Section::Inch { width }, written, rim_tenths, rim_at })
}

/// Behind the diameter of `31x10.50R15`, at the `x`.
fn flotation(scan: &mut Scan<'_>, diameter_hundredths: u32, diameter_decimals: bool) -> Option<Draft> {
    let apart = scan.at().checked_sub(1).is_some_and(|before| scan.between(before, scan.at()) == b" ");
    if !scan.eat(b'X') {
        return None;
    }
    scan.spaces();
    let width_at = scan.at();
    let known = |at: usize, missing: SizePart| {
        let in_range = (1200..=5000).contains(&diameter_hundredths) || diameter_decimals;
        in_range.then_some(Draft::Broken { at, len: 0, kind: ProblemKind::SizeUnfinished { missing } })
    };
    let Some(whole) = scan.digits(2) else {
        // `12 XL` is something else and a load word.
        return if apart { None } else { known(width_at, SizePart::Width) };
    };
    let decimal =
        scan.peek().is_some_and(|b| b == b'.' || b == b',') && scan.peek_past(1).is_some_and(|b| b.is_ascii_digit());
    let width = if decimal {
        Inches { hundredths: hundredths(scan, whole)?, decimals: true }
    } else {
        Inches { hundredths: whole.value.checked_mul(100)?, decimals: false }
    };
    let after_width = scan.at();
    let Some((written, rim_tenths, rim_at)) = construction_and_rim(scan) else {
        scan.go_to(after_width);
        return Some(broken_behind_aspect(scan));
    };
    Some(Draft::Whole { section: Section::Flotation { diameter_hundredths, width }, written, rim_tenths, rim_at })
}

/// The decimals behind a whole number of inches, at the point or comma.
fn hundredths(scan: &mut Scan<'_>, whole: Digits) -> Option<u32> {
    scan.step();
    let part = scan.digits(3)?;
    let part = match part.count {
        1 => part.value.checked_mul(10)?,
        2 => part.value,
        _ => return None,
    };
    whole.value.checked_mul(100)?.checked_add(part)
}

/// `MT90B16`, `MT90-16`, `G78-15`, `GR70-15`.
fn letter_size(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Option<Size>> {
    let start = scan.at();
    let first = scan.peek().filter(u8::is_ascii_uppercase)?;
    scan.step();
    let second = scan.peek()?;
    let (motorcycle, letter, radial) = match (first, second) {
        (b'M', letter) if letter.is_ascii_uppercase() => {
            scan.step();
            (true, letter, false)
        }
        (letter @ b'A'..=b'N', b'R') => {
            scan.step();
            (false, letter, true)
        }
        (letter @ b'A'..=b'N', digit) if digit.is_ascii_digit() => (false, letter, false),
        _ => return None,
    };
    let aspect = scan.digits(2).filter(|d| d.count == 2 && d.value >= 50)?;
    let aspect = u16::try_from(aspect.value).ok()?;
    let (written, rim_tenths, rim_at) = construction_and_rim(scan)?;
    if !motorcycle && written != Written::Dash {
        return None;
    }
    let section = Section::Letter { motorcycle, letter, radial, aspect };
    finish(scan, problems, Parts { start, first_at: start, prefix: None, section, written, rim_tenths, rim_at })
}

/// The construction letters or dash, with spaces around them.
fn construction(scan: &mut Scan<'_>) -> Option<Written> {
    let from = scan.at();
    scan.spaces();
    let written = match scan.peek() {
        Some(b'R') if scan.peek_past(1) == Some(b'F') => {
            scan.step();
            scan.step();
            Written::Rf
        }
        Some(b'R') => {
            scan.step();
            Written::R
        }
        Some(b'Z') if scan.eat_text(b"ZRF") => Written::Zrf,
        Some(b'Z') if scan.eat_text(b"ZR") => Written::Zr,
        Some(letter @ (b'Q' | b'S' | b'T' | b'H' | b'V')) if scan.peek_past(1) == Some(b'R') => {
            scan.step();
            scan.step();
            Written::Old(letter)
        }
        Some(b'D') => {
            scan.step();
            Written::D
        }
        Some(b'B') => {
            scan.step();
            Written::B
        }
        Some(b'-') => {
            scan.step();
            Written::Dash
        }
        _ => {
            scan.go_to(from);
            return None;
        }
    };
    Some(written)
}

fn construction_and_rim(scan: &mut Scan<'_>) -> Option<(Written, u16, usize)> {
    let written = construction(scan)?;
    scan.spaces();
    let rim_at = scan.at();
    Some((written, rim(scan)?, rim_at))
}

/// A rim diameter in tenths of an inch: `17`, `22.5`; a service description may
/// stand right behind it. The cursor stays when it is none.
fn rim(scan: &mut Scan<'_>) -> Option<u16> {
    let from = scan.at();
    let whole = scan.digits(2)?;
    let half = scan.peek().is_some_and(|b| b == b'.' || b == b',') && scan.peek_past(1) == Some(b'5');
    let tenths = u16::try_from(whole.value.checked_mul(10)?).ok()?;
    if half {
        scan.step();
        scan.step();
        scan.eat(b'0');
        if !scan.peek().is_some_and(|b| b.is_ascii_digit()) {
            return tenths.checked_add(5);
        }
        scan.go_to(from);
        return None;
    }
    if scan.peek().is_some_and(|b| b.is_ascii_digit()) {
        // `225/45R1791W`: only with a whole service description behind it.
        let mut ahead = *scan;
        if service::read(&mut ahead, false, &mut Problems::default()).flatten().is_none() {
            scan.go_to(from);
            return None;
        }
    }
    Some(tenths)
}

fn suffix(scan: &mut Scan<'_>, prefix: Option<Prefix>) -> Option<Suffix> {
    const SUFFIXES: [(&[u8], Suffix); 9] = [
        (b"M/C", Suffix::Motorcycle),
        (b"NHS", Suffix::Nhs),
        (b"CP", Suffix::Cp),
        (b"LT", Suffix::Lt),
        (b"ST", Suffix::St),
        (b"TR", Suffix::Tr),
        (b"ML", Suffix::Ml),
        (b"MH", Suffix::Mh),
        (b"C", Suffix::C),
    ];
    let from = scan.at();
    let spaced = scan.spaces() > 0;
    for (letters, suffix) in SUFFIXES {
        // `LT` apart from the size is one still; a lone `C` could be a load range.
        let fits = match prefix {
            None => !spaced || suffix != Suffix::C,
            Some(Prefix::Lt) => !spaced && matches!(suffix, Suffix::Lt | Suffix::Nhs),
            Some(_) => !spaced && suffix == Suffix::Nhs,
        };
        if !fits {
            continue;
        }
        let before = scan.at();
        if scan.eat_text(letters) {
            if scan.at_end_of_item() || scan.peek() == Some(b'/') {
                return Some(suffix);
            }
            scan.go_to(before);
        }
    }
    scan.go_to(from);
    None
}

/// Letters that may stand right behind a size although they are no part of it.
fn attached(run: &[u8]) -> bool {
    matches!(run, b"XL" | b"TL" | b"TT" | b"RFT" | b"SSR" | b"ROF" | b"RF" | b"LL" | b"M")
}

/// Whether what stands behind the rim can stand there.
fn after_rim_is_fine(scan: &Scan<'_>, prefix: Option<Prefix>) -> bool {
    let mut ahead = *scan;
    if suffix(&mut ahead, prefix).is_some() {
        return true;
    }
    ahead = *scan;
    ahead.at_end_of_item()
        || attached(ahead.run())
        || range_letter(&ahead)
        || ahead.peek().is_some_and(|b| b.is_ascii_digit())
}

/// `/E` behind the rim: a load range.
fn range_letter(scan: &Scan<'_>) -> bool {
    let mut ahead = *scan;
    ahead.eat(b'/') && ahead.peek().is_some_and(|b| b.is_ascii_uppercase()) && {
        ahead.step();
        ahead.at_end_of_item()
    }
}

fn out_of_range(part: SizePart, given_hundredths: u32, (lowest, highest): (u32, u32)) -> ProblemKind {
    ProblemKind::OutOfRange { part, given_hundredths, lowest, highest }
}

/// Ranges, suffix and what stands behind it.
fn finish(scan: &mut Scan<'_>, problems: &mut Problems, parts: Parts) -> Option<Option<Size>> {
    let Parts { start, first_at, prefix, section, written, rim_tenths, rim_at } = parts;
    let rim_end = scan.at();
    if !after_rim_is_fine(scan, prefix) {
        // Without a slash or an x this is too weak to be called a size at all.
        let sure = matches!(section, Section::Metric { aspect: Some(_), .. } | Section::Flotation { .. });
        let van =
            matches!(section, Section::Metric { aspect: None, .. }) && written != Written::Dash && rim_tenths >= 80;
        if !sure && !van {
            return None;
        }
        let odd = scan.token();
        problems.add(scan.at(), odd.len(), ProblemKind::AfterSize { found: shown(odd) });
        scan.go_to(scan.at().saturating_add(odd.len()));
        return Some(None);
    }
    let suffix = suffix(scan, prefix);
    let first_len = rim_at.saturating_sub(first_at);
    let mut fits = true;
    let mut check = |part: SizePart, at: usize, len: usize, given: u32, range: (u32, u32)| {
        if given < range.0.saturating_mul(100) || given > range.1.saturating_mul(100) {
            problems.add(at, len, out_of_range(part, given, range));
            fits = false;
        }
    };
    let figure_len =
        |value: u32| value.checked_ilog10().map_or(1, |log| usize::try_from(log).unwrap_or(0).saturating_add(1));
    match section {
        Section::Metric { width_mm, aspect } => {
            let width = u32::from(width_mm);
            check(SizePart::Width, first_at, figure_len(width), width.saturating_mul(100), WIDTH_MM);
            if let Some(aspect) = aspect {
                let aspect = u32::from(aspect);
                let at = first_at.saturating_add(figure_len(width)).saturating_add(1);
                check(SizePart::Aspect, at, figure_len(aspect), aspect.saturating_mul(100), ASPECT);
            }
        }
        Section::Inch { width } => {
            let (low, high) = WIDTH_HUNDREDTHS;
            if !(low..=high).contains(&width.hundredths) {
                return None;
            }
        }
        Section::Flotation { diameter_hundredths, .. } => {
            let (low, high) = DIAMETER_HUNDREDTHS;
            let rim_hundredths = u32::from(rim_tenths).saturating_mul(10);
            let above_rim = diameter_hundredths > rim_hundredths;
            if !(low..=high).contains(&diameter_hundredths) || !above_rim {
                let lowest = (rim_hundredths / 100).saturating_add(1).max(low / 100);
                problems.add(
                    first_at,
                    first_len,
                    out_of_range(SizePart::Diameter, diameter_hundredths, (lowest, high / 100)),
                );
                fits = false;
            }
        }
        Section::Letter { .. } => {}
    }
    let rim_len = rim_end.saturating_sub(rim_at);
    if !(RIM_IN.0.saturating_mul(10)..=RIM_IN.1.saturating_mul(10)).contains(&u32::from(rim_tenths)) {
        problems.add(rim_at, rim_len, out_of_range(SizePart::Rim, u32::from(rim_tenths).saturating_mul(10), RIM_IN));
        fits = false;
    }
    if !fits {
        return Some(None);
    }
    let size = Size { prefix, section, written, rim_tenths, suffix };
    told_unusual(&size, problems, start, first_at, rim_at, rim_len);
    Some(Some(size))
}

/// Warnings for figures that exist nowhere on the road (habit of the trade, from memory).
fn told_unusual(size: &Size, problems: &mut Problems, start: usize, first_at: usize, rim_at: usize, rim_len: usize) {
    if size.is_high_load() {
        problems.add(start, 2, ProblemKind::HighLoadForm);
    }
    if let Written::Old(letter) = size.written {
        problems.add(rim_at.saturating_sub(2), 2, ProblemKind::OldSpeedForm { letter: char::from(letter) });
    }
    if let Section::Metric { width_mm, aspect } = size.section {
        let width = u32::from(width_mm);
        if width % 5 != 0 || width < USUAL_WIDTH_MM.0 || width > USUAL_WIDTH_MM.1 {
            let given_hundredths = width.saturating_mul(100);
            problems.add(first_at, 3, ProblemKind::Unusual { part: SizePart::Width, given_hundredths });
        }
        if let Some(aspect) = aspect.filter(|a| a % 5 != 0 && *a != 82) {
            let given_hundredths = u32::from(aspect).saturating_mul(100);
            problems.add(
                first_at.saturating_add(4),
                2,
                ProblemKind::Unusual { part: SizePart::Aspect, given_hundredths },
            );
        }
    }
    let whole = size.rim_tenths.is_multiple_of(10);
    let usual = if whole {
        (USUAL_RIM_IN.0..=USUAL_RIM_IN.1).contains(&(size.rim_tenths / 10))
    } else {
        USUAL_HALF_RIMS_TENTHS.contains(&size.rim_tenths)
    };
    if !usual {
        let given_hundredths = u32::from(size.rim_tenths).saturating_mul(10);
        problems.add(rim_at, rim_len, ProblemKind::Unusual { part: SizePart::Rim, given_hundredths });
    }
}
