//! Maximum load and pressure lines, with both units as they are printed.

use std::fmt;

use crate::measure::{LoadUnit, PressureUnit, Reading, Unit, plain};

use super::problem::{Part, ProblemKind, Problems};
use super::scan::Scan;

/// A figure as printed, and the same in a second unit when that is printed too.
///
/// ```
/// use lugbook::measure::PressureUnit;
/// let pressure = lugbook::sidewall::parse("MAX PRESSURE 350 KPA (51 PSI)").maximum_pressure.unwrap();
/// assert_eq!(pressure.in_unit(PressureUnit::Psi), 51.0); // as printed, not 50.76
/// assert_eq!(pressure.in_unit(PressureUnit::Bar), 3.5);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Printed<U: Unit> {
    /// The figure that stands first.
    pub first: Reading<U>,
    /// The one behind it, usually in brackets.
    pub second: Option<Reading<U>>,
}

impl<U: Unit> Printed<U> {
    /// The figure in a unit: as printed where it is printed in that unit.
    ///
    /// ```
    /// use lugbook::measure::PressureUnit;
    /// let marking = lugbook::sidewall::parse("225/45R17 91W MAX PRESS 350 KPA (51 PSI)");
    /// let most = marking.maximum_pressure.unwrap();
    /// assert_eq!(most.in_unit(PressureUnit::Kilopascal), 350.0);
    /// ```
    pub fn in_unit(&self, unit: U) -> f64 {
        let printed = self.second.filter(|second| second.unit() == unit).unwrap_or(self.first);
        printed.in_unit(unit)
    }

    /// Whether both printed figures agree to `percent`; true when there is one.
    fn agrees(&self, percent: f64) -> bool {
        self.second.is_none_or(|second| {
            let (a, b) = (self.first.value(), second.in_unit(self.first.unit()));
            (a - b).abs() <= a.abs().max(b.abs()) * percent / 100.0
        })
    }
}

/// For which fitment a maximum load holds.
///
/// ```
/// use lugbook::sidewall::{Fitment, parse};
/// let marking = parse("MAX LOAD SINGLE 1400 KG (3086 LBS)");
/// assert_eq!(marking.maximum_loads[0].fitment, Some(Fitment::Single));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fitment {
    /// One wheel at each end of the axle.
    Single,
    /// Two wheels side by side.
    Dual,
}

/// A maximum load line.
///
/// ```
/// use lugbook::measure::{LoadUnit, PressureUnit};
/// use lugbook::sidewall::{self, Fitment};
/// let marking = sidewall::parse("MAX LOAD SINGLE 3000 KG (6614 LBS) AT 830 KPA (120 PSI) COLD");
/// let line = marking.maximum_loads[0];
/// assert_eq!(line.fitment, Some(Fitment::Single));
/// assert_eq!(line.load.in_unit(LoadUnit::Pound), 6614.0);
/// assert_eq!(line.at.map(|at| at.in_unit(PressureUnit::Psi)), Some(120.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MaximumLoad {
    /// Single or dual, where the line says so.
    pub fitment: Option<Fitment>,
    /// The load.
    pub load: Printed<LoadUnit>,
    /// The cold pressure it holds at, where the line says so.
    pub at: Option<Printed<PressureUnit>>,
}

/// What one maximum line said.
pub(super) enum Line {
    Load(MaximumLoad),
    Pressure(Printed<PressureUnit>),
}

/// How much two printed figures may differ, percent: rounding to the whole psi
/// or to ten pounds makes up to about 2.
pub(super) const ROUNDING_PERCENT: f64 = 2.5;

fn shown_unit<U: Unit>(unit: U) -> String {
    unit.code().to_uppercase()
}

impl<U: Unit> fmt::Display for Printed<U> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", plain(self.first.value()), shown_unit(self.first.unit()))?;
        match self.second {
            Some(second) => write!(f, " ({} {})", plain(second.value()), shown_unit(second.unit())),
            None => Ok(()),
        }
    }
}

impl fmt::Display for MaximumLoad {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("MAX LOAD ")?;
        match self.fitment {
            Some(Fitment::Single) => f.write_str("SINGLE ")?,
            Some(Fitment::Dual) => f.write_str("DUAL ")?,
            None => {}
        }
        write!(f, "{}", self.load)?;
        match self.at {
            Some(at) => write!(f, " AT {at}"),
            None => Ok(()),
        }
    }
}

const LOAD_UNITS: [(&[u8], LoadUnit); 6] = [
    (b"KGS", LoadUnit::Kilogram),
    (b"KG", LoadUnit::Kilogram),
    (b"LBS", LoadUnit::Pound),
    (b"LB", LoadUnit::Pound),
    (b"POUNDS", LoadUnit::Pound),
    (b"KILOGRAMS", LoadUnit::Kilogram),
];
const PRESSURE_UNITS: [(&[u8], PressureUnit); 3] =
    [(b"KPA", PressureUnit::Kilopascal), (b"PSI", PressureUnit::Psi), (b"BAR", PressureUnit::Bar)];

/// A number with up to three decimals and a unit of the kind.
fn quantity<U: Unit>(scan: &mut Scan<'_>, units: &[(&[u8], U)]) -> Option<Reading<U>> {
    let from = scan.at();
    let found = quantity_here(scan, units);
    if found.is_none() {
        scan.go_to(from);
    }
    found
}

fn quantity_here<U: Unit>(scan: &mut Scan<'_>, units: &[(&[u8], U)]) -> Option<Reading<U>> {
    let whole = scan.digits(6)?;
    let mut value = f64::from(whole.value);
    if scan.peek() == Some(b'.') && scan.peek_past(1).is_some_and(|b| b.is_ascii_digit()) {
        scan.step();
        let part = scan.digits(3)?;
        let text = format!("{}.{:0width$}", whole.value, part.value, width = part.count);
        value = text.parse().ok()?;
    }
    scan.spaces();
    let run = scan.run();
    let unit = units.iter().find(|(text, _)| *text == run).map(|(_, unit)| *unit)?;
    scan.go_to(scan.at().saturating_add(run.len()));
    scan.eat(b'.');
    Reading::new(value, unit).ok()
}

fn printed<U: Unit>(scan: &mut Scan<'_>, units: &[(&[u8], U)]) -> Option<Printed<U>> {
    let first = quantity(scan, units)?;
    let after_first = scan.at();
    scan.spaces();
    let bracket = scan.eat(b'(') || scan.eat(b'/');
    if bracket {
        scan.spaces();
    }
    let second = quantity(scan, units).filter(|second| second.unit() != first.unit());
    if second.is_none() {
        scan.go_to(after_first);
    } else if bracket {
        let before = scan.at();
        scan.spaces();
        if !scan.eat(b')') {
            scan.go_to(before);
        }
    }
    Some(Printed { first, second })
}

/// Words that may stand in a maximum line.
#[derive(Default)]
struct Said {
    load: bool,
    pressure: bool,
    fitment: Option<Fitment>,
}

fn line_words(scan: &mut Scan<'_>, said: &mut Said) {
    loop {
        let before = scan.at();
        while scan.peek().is_some_and(|b| matches!(b, b' ' | b'.' | b':')) {
            scan.step();
        }
        let run = scan.run();
        match run {
            b"LOAD" => said.load = true,
            b"PRESS" | b"PRESSURE" | b"INFL" | b"INFLATION" => said.pressure = true,
            b"SINGLE" => said.fitment = Some(Fitment::Single),
            b"DUAL" => said.fitment = Some(Fitment::Dual),
            b"MAX" | b"MAXIMUM" | b"COLD" | b"PERMISSIBLE" | b"TIRE" => {}
            _ => {
                if !scan.peek().is_some_and(|b| b.is_ascii_digit()) {
                    scan.go_to(before);
                }
                return;
            }
        }
        scan.go_to(scan.at().saturating_add(run.len()));
    }
}

/// Behind `MAX`: a load or a pressure line. `None`, with the problem told, when
/// its figure can't be read.
pub(super) fn read(scan: &mut Scan<'_>, at: usize, problems: &mut Problems) -> Option<Line> {
    let mut said = Said::default();
    line_words(scan, &mut said);
    let from = scan.at();
    if said.load || !said.pressure {
        if let Some(load) = printed(scan, &LOAD_UNITS) {
            return Some(load_line(scan, at, said.fitment, load, problems));
        }
        scan.go_to(from);
    }
    if !said.load
        && let Some(pressure) = printed(scan, &PRESSURE_UNITS)
    {
        tail(scan);
        told_disagreement(&pressure, Part::MaximumPressure, at, scan, problems);
        return Some(Line::Pressure(pressure));
    }
    scan.go_to(from);
    let part = if said.load || !said.pressure { Part::MaximumLoad } else { Part::MaximumPressure };
    let run = scan.run().len();
    scan.go_to(from.saturating_add(run));
    problems.add(from, run, ProblemKind::MaximumUnread { part });
    None
}

/// A figure with its unit in front, and `MAX` behind it: `51 PSI MAX PRESS`.
/// The cursor stays when there is none.
pub(super) fn read_figure_first(scan: &mut Scan<'_>, problems: &mut Problems) -> Option<Line> {
    let from = scan.at();
    if let Some(load) = printed(scan, &LOAD_UNITS) {
        let mut said = Said::default();
        let before = scan.at();
        line_words(scan, &mut said);
        if scan.at() > before {
            return Some(load_line(scan, from, said.fitment, load, problems));
        }
        scan.go_to(from);
    }
    let pressure = printed(scan, &PRESSURE_UNITS);
    let before = scan.at();
    tail(scan);
    match pressure {
        Some(pressure) if scan.at() > before => {
            told_disagreement(&pressure, Part::MaximumPressure, from, scan, problems);
            Some(Line::Pressure(pressure))
        }
        _ => {
            scan.go_to(from);
            None
        }
    }
}

/// `COLD`, `MAX PRESS` and the like behind a figure.
fn tail(scan: &mut Scan<'_>) {
    loop {
        let before = scan.at();
        scan.spaces();
        let run = scan.run();
        let known = matches!(run, b"COLD" | b"PRESS" | b"PRESSURE" | b"MAX" | b"MAXIMUM" | b"INFLATION" | b"INFL");
        let mut ahead = *scan;
        ahead.go_to(scan.at().saturating_add(run.len()));
        ahead.eat(b'.');
        ahead.spaces();
        // `MAX` that opens the next line is left alone.
        let opens = matches!(run, b"MAX" | b"MAXIMUM") && (ahead.run() == b"LOAD" || figure_follows(&ahead));
        if !known || opens {
            scan.go_to(before);
            return;
        }
        scan.go_to(scan.at().saturating_add(run.len()));
        scan.eat(b'.');
    }
}

fn figure_follows(scan: &Scan<'_>) -> bool {
    let mut ahead = *scan;
    while matches!(ahead.run(), b"PRESS" | b"PRESSURE" | b"INFLATION" | b"INFL") {
        ahead.go_to(ahead.at().saturating_add(ahead.run().len()));
        ahead.eat(b'.');
        ahead.spaces();
    }
    quantity(&mut ahead, &PRESSURE_UNITS).is_some() || quantity(&mut ahead, &LOAD_UNITS).is_some()
}

fn load_line(
    scan: &mut Scan<'_>,
    at: usize,
    fitment: Option<Fitment>,
    load: Printed<LoadUnit>,
    problems: &mut Problems,
) -> Line {
    let after_load = scan.at();
    told_disagreement(&load, Part::MaximumLoad, at, scan, problems);
    scan.spaces();
    let mut pressure = None;
    if scan.eat_text(b"AT ") || scan.eat(b'@') {
        scan.spaces();
        pressure = printed(scan, &PRESSURE_UNITS);
        match &pressure {
            Some(pressure) => {
                tail(scan);
                told_disagreement(pressure, Part::MaximumPressure, at, scan, problems);
            }
            None => {
                problems.add(scan.at(), scan.run().len(), ProblemKind::MaximumUnread { part: Part::MaximumPressure })
            }
        }
    } else {
        scan.go_to(after_load);
    }
    Line::Load(MaximumLoad { fitment, load, at: pressure })
}

fn told_disagreement<U: Unit>(printed: &Printed<U>, part: Part, at: usize, scan: &Scan<'_>, problems: &mut Problems) {
    if let Some(second) = printed.second.filter(|_| !printed.agrees(ROUNDING_PERCENT)) {
        let len = scan.at().saturating_sub(at);
        let (first, second) = (printed.first.to_string(), second.to_string());
        problems.add(at, len, ProblemKind::UnitsDisagree { part, first, second });
    }
}
