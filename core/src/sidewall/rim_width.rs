//! The measuring rim some sidewalls print: `RIM 5 1/2J`.

use std::fmt;

use super::scan::Scan;

/// Flange contours that are read, longest first (from memory).
const CONTOURS: [&str; 10] = ["JJ", "JK", "J", "K", "B", "C", "D", "E", "F", "P"];

/// Width and flange contour of a rim.
///
/// ```
/// let rim = lugbook::sidewall::parse("185/65R14 RIM 5 1/2J").rim.unwrap();
/// assert_eq!((rim.width_in(), rim.contour()), (5.5, Some("J")));
/// assert_eq!(rim.to_string(), "RIM 5 1/2J");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct RimWidth {
    hundredths: u32,
    contour: Option<&'static str>,
}

impl RimWidth {
    /// Width between the flanges, in.
    ///
    /// ```
    /// let rim = lugbook::sidewall::parse("185/65R14 RIM 5 1/2J").rim.unwrap();
    /// assert_eq!(rim.width_in(), 5.5);
    /// ```
    pub fn width_in(&self) -> f64 {
        f64::from(self.hundredths) / 100.0
    }

    /// Flange contour letters.
    ///
    /// ```
    /// let rim = lugbook::sidewall::parse("185/65R14 RIM 5 1/2J").rim.unwrap();
    /// assert_eq!(rim.contour(), Some("J"));
    /// ```
    pub fn contour(&self) -> Option<&'static str> {
        self.contour
    }
}

impl fmt::Display for RimWidth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (whole, part) = (self.hundredths / 100, self.hundredths % 100);
        match part {
            0 => write!(f, "RIM {whole}")?,
            50 => write!(f, "RIM {whole} 1/2")?,
            _ => write!(f, "RIM {whole}.{part:02}")?,
        }
        f.write_str(self.contour.unwrap_or(""))
    }
}

/// Reads the width and contour behind `RIM`.
pub(super) fn read(scan: &mut Scan<'_>) -> Option<RimWidth> {
    while scan.peek().is_some_and(|b| matches!(b, b' ' | b':')) {
        scan.step();
    }
    let whole = scan.digits(2)?;
    let mut hundredths = whole.value.checked_mul(100)?;
    let after_whole = scan.at();
    if scan.peek() == Some(b'.') {
        scan.step();
        let part = scan.digits(2)?;
        hundredths = hundredths.checked_add(if part.count == 1 { part.value.checked_mul(10)? } else { part.value })?;
    } else {
        while scan.peek().is_some_and(|b| matches!(b, b' ' | b'-')) {
            scan.step();
        }
        if scan.eat_text(b"1/2") {
            hundredths = hundredths.checked_add(50)?;
        } else {
            scan.go_to(after_whole);
        }
    }
    let before = scan.at();
    scan.spaces();
    let run = scan.run();
    let contour = CONTOURS.into_iter().find(|contour| contour.as_bytes() == run);
    match contour {
        Some(contour) => scan.go_to(scan.at().saturating_add(contour.len())),
        None => scan.go_to(before),
    }
    ((150..=2500).contains(&hundredths) && scan.at_end_of_item()).then_some(RimWidth { hundredths, contour })
}
