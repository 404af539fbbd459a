//! Service descriptions: load index and speed symbol.

use std::fmt;
use std::str::FromStr;

use super::load_index::{HIGHEST_LOAD_INDEX, load_of_index};
use super::problem::{Problem, ProblemKind, Problems, shown};
use super::scan::Scan;
use super::speed_symbol::SpeedSymbol;

/// A service description: `91W`, `109/107T`, `(95Y)`.
///
/// ```
/// use lugbook::sidewall::Service;
/// let service: Service = "109/107 T".parse()?;
/// assert_eq!((service.load_kg(), service.load_kg_dual()), (Some(1030.0), Some(975.0)));
/// assert_eq!(service.max_kmh(), Some(190));
/// assert_eq!(service.to_string(), "109/107T");
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Service {
    /// Load index for single fitment, 0 to 279.
    pub load_index: u16,
    /// Load index for dual fitment, when there is one.
    pub load_index_dual: Option<u16>,
    /// Speed symbol, when it could be read.
    pub speed_symbol: Option<SpeedSymbol>,
    /// Written in brackets, as in `(95Y)`: fit for more than the symbol's
    /// speed; the tire maker states how much (from memory).
    pub above: bool,
}

impl Service {
    /// The load for single fitment, kg, by the table of load indices.
    ///
    /// ```
    /// use lugbook::sidewall::Service;
    /// let service: Service = "91W".parse()?;
    /// assert_eq!(service.load_kg(), Some(615.0));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn load_kg(&self) -> Option<f64> {
        load_of_index(self.load_index)
    }

    /// The load for dual fitment, kg, by the table of load indices.
    ///
    /// ```
    /// use lugbook::sidewall::Service;
    /// let service: Service = "120/116S".parse()?;
    /// assert_eq!((service.load_kg(), service.load_kg_dual()), (Some(1400.0), Some(1250.0)));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn load_kg_dual(&self) -> Option<f64> {
        load_of_index(self.load_index_dual?)
    }

    /// The speed of the speed symbol, km/h. For a description in brackets the
    /// limit lies above it and only the tire maker knows where.
    ///
    /// ```
    /// use lugbook::sidewall::Service;
    /// let service: Service = "91W".parse()?;
    /// assert_eq!(service.max_kmh(), Some(270));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn max_kmh(&self) -> Option<u16> {
        self.speed_symbol.map(SpeedSymbol::max_kmh)
    }

    /// Percent of the load that may be carried at a speed in km/h; `None` above
    /// the symbol's speed, without a symbol, or for a speed that is no number.
    ///
    /// V: 100 % to 210 km/h, 91 % at 240; W: 100 % to 240, 85 % at 270, linear
    /// between (one secondary page, grade S); Y: 100 % to 270, 85 % at 300 (from
    /// memory). All others: 100 % up to the symbol's speed.
    ///
    /// ```
    /// use lugbook::sidewall::Service;
    /// let service: Service = "91W".parse()?;
    /// assert_eq!(service.load_percent_at(240.0), Some(100.0));
    /// assert_eq!(service.load_percent_at(270.0), Some(85.0));
    /// assert_eq!(service.load_percent_at(280.0), None);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn load_percent_at(&self, kmh: f64) -> Option<f64> {
        let symbol = self.speed_symbol?;
        let top = f64::from(symbol.max_kmh());
        if !(0.0..=top).contains(&kmh) {
            return None;
        }
        let (full_to, percent) = match symbol.as_str() {
            "V" => (210.0, 91.0),
            "W" => (240.0, 85.0),
            "Y" => (270.0, 85.0),
            _ => return Some(100.0),
        };
        if kmh <= full_to { Some(100.0) } else { Some(100.0 - (100.0 - percent) * (kmh - full_to) / (top - full_to)) }
    }

    /// The load at a speed, kg: [`Service::load_kg`] times [`Service::load_percent_at`].
    ///
    /// ```
    /// use lugbook::sidewall::Service;
    /// let service: Service = "91W".parse()?;
    /// assert_eq!(service.load_kg_at(270.0), Some(615.0 * 0.85));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn load_kg_at(&self, kmh: f64) -> Option<f64> {
        Some(self.load_kg()? * self.load_percent_at(kmh)? / 100.0)
    }

    /// Whether a description in brackets with this symbol means "above the symbol's speed".
    pub(super) fn may_be_above(symbol: Option<SpeedSymbol>) -> bool {
        symbol.is_some_and(|s| matches!(s.as_str(), "W" | "Y"))
    }
}

impl fmt::Display for Service {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.above {
            f.write_str("(")?;
        }
        write!(f, "{}", self.load_index)?;
        if let Some(dual) = self.load_index_dual {
            write!(f, "/{dual}")?;
        }
        if let Some(symbol) = self.speed_symbol {
            f.write_str(symbol.as_str())?;
        }
        if self.above {
            f.write_str(")")?;
        }
        Ok(())
    }
}

/// Dual fitment costs one to six steps of load index; some more are let through,
/// and far apart it is a size.
pub(super) fn near(single: u32, dual: u32) -> bool {
    dual <= single.saturating_add(6) && single <= dual.saturating_add(20)
}

/// Below it, two figures with a slash and no symbol are the start of a size.
pub(super) const LEAST_WITHOUT_SYMBOL: u32 = 60;

/// Reads a service description at the cursor. `after_size`: right behind a
/// size, where a bare number or an unknown letter is a service description too.
/// `None`, with the cursor where it was, when there is none; `Some(None)`
/// when there is one that can't be taken, with its problem told.
pub(super) fn read(scan: &mut Scan<'_>, after_size: bool, problems: &mut Problems) -> Option<Option<Service>> {
    let from = scan.at();
    let found = attempt(scan, after_size, problems);
    if found.is_none() {
        scan.go_to(from);
    }
    found
}

fn attempt(scan: &mut Scan<'_>, after_size: bool, problems: &mut Problems) -> Option<Option<Service>> {
    let start = scan.at();
    let bracketed = scan.eat(b'(');
    scan.spaces();
    let single = scan.digits(3)?;
    let single_at = scan.at().saturating_sub(single.count);
    if scan.peek().is_some_and(|b| b.is_ascii_digit()) {
        return None;
    }
    let mut dual = None;
    let before_slash = scan.at();
    let spaced = scan.spaces() > 0;
    if scan.eat(b'/') {
        scan.spaces();
        let at = scan.at();
        let digits = scan.digits(3).filter(|_| !scan.peek().is_some_and(|b| b.is_ascii_digit()))?;
        if !near(single.value, digits.value) {
            return None;
        }
        dual = Some((digits, at));
    } else if spaced {
        scan.go_to(before_slash);
    }
    let before_symbol = scan.at();
    let gap = scan.spaces() > 0;
    let symbol_at = scan.at();
    let run = scan.run();
    let mut symbol = None;
    let mut wrong = false;
    match run {
        // The symbols the table has, with nothing behind them.
        [letter] if SpeedSymbol::of_letter(*letter).is_some() => symbol = SpeedSymbol::of_letter(*letter),
        [b'A', digit] if SpeedSymbol::of_a(*digit).is_some() => symbol = SpeedSymbol::of_a(*digit),
        [letter] if letter.is_ascii_alphabetic() => wrong = true,
        [b'A', digit] if digit.is_ascii_digit() => wrong = true,
        _ => {}
    }
    let whole_of_run = symbol.is_some() || wrong;
    let ends_after = || {
        let mut ahead = *scan;
        ahead.go_to(symbol_at.saturating_add(run.len()));
        ahead.at_end_of_item()
    };
    let symbol_ends = whole_of_run && ends_after();
    // `400 A` or `12 X` far from a size is no service description.
    let apart = gap && !(after_size || bracketed || dual.is_some());
    if symbol_ends && !apart && !(wrong && gap && !after_size) {
        scan.go_to(symbol_at.saturating_add(run.len()));
    } else if after_size || bracketed || dual.is_some() {
        symbol = None;
        scan.go_to(before_symbol);
        if !scan.at_end_of_item() {
            // `91WX` right behind a size: letters that are no symbol.
            let odd = scan.run();
            if !after_size
                || odd.is_empty()
                || single.count < 2
                || !odd.iter().all(u8::is_ascii_alphabetic)
                || odd.len() > 2
            {
                return None;
            }
            problems.add(scan.at(), odd.len(), ProblemKind::NotASpeedSymbol { found: shown(odd) });
            scan.go_to(scan.at().saturating_add(odd.len()));
            return Some(None);
        }
        wrong = false;
        let enough = match dual {
            Some((digits, _)) => digits.value >= LEAST_WITHOUT_SYMBOL,
            None => single.value >= 10 && after_size,
        };
        if !enough {
            return None;
        }
    } else {
        return None;
    }
    let end_at = scan.at();
    if bracketed {
        scan.spaces();
        if !scan.eat(b')') {
            return None;
        }
    }
    let mut taken = true;
    let highest = u32::from(HIGHEST_LOAD_INDEX);
    for (digits, at) in [Some((single, single_at)), dual].into_iter().flatten() {
        if digits.value > highest {
            problems.add(
                at,
                digits.count,
                ProblemKind::LoadIndexOutOfRange { given: digits.value, highest: HIGHEST_LOAD_INDEX },
            );
            taken = false;
        }
    }
    if wrong {
        problems.add(symbol_at, run.len(), ProblemKind::NotASpeedSymbol { found: shown(run) });
        taken = false;
    }
    if !taken {
        return Some(None);
    }
    let load_index = u16::try_from(single.value).ok()?;
    let load_index_dual = match dual {
        Some((digits, _)) => Some(u16::try_from(digits.value).ok()?),
        None => None,
    };
    if symbol.is_none() {
        problems.add(end_at, 0, ProblemKind::NoSpeedSymbol);
    }
    if let Some(dual) = load_index_dual.filter(|dual| *dual > load_index) {
        problems.add(start, end_at.saturating_sub(start), ProblemKind::DualAboveSingle { single: load_index, dual });
    }
    let above = bracketed && Service::may_be_above(symbol);
    Some(Some(Service { load_index, load_index_dual, speed_symbol: symbol, above }))
}

impl FromStr for Service {
    type Err = Problem;

    fn from_str(text: &str) -> Result<Self, Problem> {
        super::read_alone(text, |scan, problems| read(scan, true, problems).flatten())
    }
}
