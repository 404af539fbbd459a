use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::{Lubrication, Thread};
use crate::measure::{Distance, Misread, Span, Torque, TorqueUnit, plain};

/// One torque as a manual prints it: a single value or a range, in one unit.
///
/// ```
/// use lugbook::fastener::Printed;
/// let range: Printed = "125..150 N.m".parse()?;
/// assert_eq!(range.to_string(), "125..150 N.m");
/// assert!("100 ft-lb".parse::<Printed>()?.high().is_none());
/// assert_eq!("135 ± 10 N.m".parse::<Printed>()?.to_string(), "125..145 N.m");
/// # Ok::<(), lugbook::fastener::BadSpec>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Printed {
    low: Torque,
    high: Option<Torque>,
}

/// Why text is no printed torque.
///
/// ```
/// use lugbook::fastener::{BadSpec, Printed};
/// assert_eq!("150..125 N.m".parse::<Printed>(), Err(BadSpec::Backward));
/// assert_eq!("125 N.m..100 ft.lb".parse::<Printed>(), Err(BadSpec::TwoUnits));
/// ```
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BadSpec {
    /// A value that is no torque.
    #[error("{0}")]
    Value(#[from] Misread),
    /// The range runs downward.
    #[error("the range runs downward")]
    Backward,
    /// The two ends have different units.
    #[error("two units in one range")]
    TwoUnits,
}

impl Printed {
    /// A single value.
    ///
    /// ```
    /// use lugbook::fastener::Printed;
    /// let printed = Printed::single("100 ft.lb".parse().unwrap());
    /// assert_eq!(printed.high(), None, "no band is made up around it");
    /// ```
    pub fn single(value: Torque) -> Self {
        Self { low: value, high: None }
    }

    /// A range; both ends in one unit. Equal ends are a single value.
    ///
    /// ```
    /// use lugbook::fastener::{BadSpec, Printed};
    /// let torque = |text: &str| text.parse().unwrap();
    /// assert!(Printed::range(torque("125 N.m"), torque("150 N.m")).is_ok());
    /// assert_eq!(Printed::range(torque("125 N.m"), torque("110 ft.lb")), Err(BadSpec::TwoUnits));
    /// ```
    ///
    /// # Errors
    /// When it runs downward or the units differ.
    pub fn range(low: Torque, high: Torque) -> Result<Self, BadSpec> {
        if low.unit() != high.unit() {
            return Err(BadSpec::TwoUnits);
        }
        if high < low {
            return Err(BadSpec::Backward);
        }
        Ok(Self { low, high: (high > low).then_some(high) })
    }

    /// The single value, or the lower end.
    ///
    /// ```
    /// use lugbook::fastener::Printed;
    /// assert_eq!("125..150 N.m".parse::<Printed>()?.low().value(), 125.0);
    /// # Ok::<(), lugbook::fastener::BadSpec>(())
    /// ```
    pub fn low(&self) -> Torque {
        self.low
    }

    /// The upper end of a range.
    ///
    /// ```
    /// use lugbook::fastener::Printed;
    /// assert_eq!("125..150 N.m".parse::<Printed>()?.high().map(|high| high.value()), Some(150.0));
    /// # Ok::<(), lugbook::fastener::BadSpec>(())
    /// ```
    pub fn high(&self) -> Option<Torque> {
        self.high
    }

    /// The unit it is printed in.
    ///
    /// ```
    /// use lugbook::fastener::Printed;
    /// use lugbook::measure::TorqueUnit;
    /// assert_eq!("90..110 ft-lb".parse::<Printed>()?.unit(), TorqueUnit::FootPound);
    /// # Ok::<(), lugbook::fastener::BadSpec>(())
    /// ```
    pub fn unit(&self) -> TorqueUnit {
        self.low.unit()
    }

    /// Lower and upper end in a unit; the same twice for a single value.
    ///
    /// ```
    /// use lugbook::fastener::Printed;
    /// use lugbook::measure::TorqueUnit;
    /// let (low, high) = "130..160 ft-lb".parse::<Printed>()?.ends_in(TorqueUnit::NewtonMetre);
    /// assert_eq!((low.round(), high.round()), (176.0, 217.0));
    /// # Ok::<(), lugbook::fastener::BadSpec>(())
    /// ```
    pub fn ends_in(&self, unit: TorqueUnit) -> (f64, f64) {
        (self.low.in_unit(unit), self.high.unwrap_or(self.low).in_unit(unit))
    }
}

impl FromStr for Printed {
    type Err = BadSpec;

    /// Reads `125..150 N.m`, `125-150 N.m`, `125 to 150 N.m`, `100 ft-lb`, `135 ± 10 N.m`.
    fn from_str(text: &str) -> Result<Self, BadSpec> {
        let text = text.trim();
        if let Some((middle, off)) = text.split_once('±').or_else(|| text.split_once("+/-")) {
            let off: Torque = off.parse()?;
            let middle = Torque::parse(middle, Some(off.unit()))?;
            if middle.unit() != off.unit() {
                return Err(BadSpec::TwoUnits);
            }
            let low = Torque::new(middle.value() - off.value(), off.unit())?;
            return Self::range(low, Torque::new(middle.value() + off.value(), off.unit())?);
        }
        let range = ["..", " to ", "\u{2013}"].iter().find_map(|mark| text.split_once(mark)).or_else(|| hyphen(text));
        let Some((low, high)) = range else { return Ok(Self::single(text.parse()?)) };
        let high: Torque = high.parse()?;
        Self::range(Torque::parse(low, Some(high.unit()))?, high)
    }
}

/// Splits `125-150 N.m` and `125 - 150 N.m`, but not `100 ft-lb`.
fn hyphen(text: &str) -> Option<(&str, &str)> {
    let (low, high) = text.split_once('-')?;
    let digit = |c: char| c.is_ascii_digit();
    (low.trim_end().ends_with(digit) && high.trim_start().starts_with(digit)).then_some((low, high))
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.high {
            None => self.low.fmt(f),
            Some(high) => write!(f, "{}..{}", plain(self.low.value()), high),
        }
    }
}

#[derive(Serialize, Deserialize)]
struct Stored {
    low: Torque,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    high: Option<Torque>,
}

impl Serialize for Printed {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Stored { low: self.low, high: self.high }.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Printed {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let stored = Stored::deserialize(deserializer)?;
        match stored.high {
            None => Ok(Self::single(stored.low)),
            Some(high) => Self::range(stored.low, high).map_err(serde::de::Error::custom),
        }
    }
}

/// When a recheck is due after the wheel was tightened, as distance driven.
///
/// ```
/// use lugbook::fastener::RecheckAt;
/// let window = RecheckAt { from: "50 mi".parse().ok(), by: "100 mi".parse()? };
/// assert!(window.from.unwrap() < window.by);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct RecheckAt {
    /// Not before this distance, when a window is printed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from: Option<Distance>,
    /// At this distance at the latest.
    pub by: Distance,
}

/// What a manual says about tightening one wheel fastener, as printed.
///
/// Recorded once for a vehicle model, then reused and corrected; the record that
/// holds it also names the photo of the page. Nothing in it is filled in from elsewhere.
///
/// ```
/// use lugbook::fastener::TorqueSpec;
/// let spec = TorqueSpec::printed(["190..220 N.m".parse()?, "130..160 ft-lb".parse()?]);
/// assert!(spec.unit_clash().is_some());
/// # Ok::<(), lugbook::fastener::BadSpec>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct TorqueSpec {
    /// Each printing in each unit, in the manual's order.
    pub printed: Vec<Printed>,
    /// The thread the manual names.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thread: Option<Thread>,
    /// The socket the manual names, across flats.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hex: Option<Span>,
    /// Dry, oiled or in the manual's words.
    #[serde(default)]
    pub condition: Lubrication,
    /// Rechecks as printed; empty when none is printed.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub recheck: Vec<RecheckAt>,
    /// The maker's own order by clock position, when printed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub order: Option<Vec<u8>>,
    /// Where it stands: the manual's title and page, as told.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub source: String,
}

/// A torque printed in two units whose values disagree by more than rounding.
///
/// ```
/// use lugbook::fastener::TorqueSpec;
/// // One flanged nut, as a manual prints it in two units.
/// let spec = TorqueSpec::printed(["190..220 N.m".parse()?, "130..160 ft-lb".parse()?]);
/// assert_eq!(spec.unit_clash().map(|clash| clash.percent.round()), Some(7.0));
/// # Ok::<(), lugbook::fastener::BadSpec>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct UnitClash {
    /// The earlier printing.
    pub first: Printed,
    /// The later printing that disagrees.
    pub second: Printed,
    /// The largest difference of the two low or high ends, percent of the larger.
    pub percent: f64,
}

/// Two printings that differ by more than this many percent clash.
///
/// Manuals round to 5 ft·lb; on published wheel torques that makes up to 2.4 %.
/// A design choice (grade D).
pub const CLASH_PERCENT: f64 = 3.0;

impl TorqueSpec {
    /// A specification of which only the printed torque is known.
    ///
    /// ```
    /// use lugbook::fastener::{Lubrication, TorqueSpec};
    /// let spec = TorqueSpec::printed(["100 ft-lb".parse()?]);
    /// assert_eq!((spec.thread, spec.condition), (None, Lubrication::NotKnown));
    /// # Ok::<(), lugbook::fastener::BadSpec>(())
    /// ```
    pub fn printed(printed: impl IntoIterator<Item = Printed>) -> Self {
        Self {
            printed: printed.into_iter().collect(),
            thread: None,
            hex: None,
            condition: Lubrication::NotKnown,
            recheck: Vec::new(),
            order: None,
            source: String::new(),
        }
    }

    /// The first two printings that disagree by more than [`CLASH_PERCENT`].
    ///
    /// ```
    /// use lugbook::fastener::TorqueSpec;
    /// let rounded = TorqueSpec::printed(["125..150 N.m".parse()?, "90..110 ft-lb".parse()?]);
    /// assert_eq!(rounded.unit_clash(), None);
    /// # Ok::<(), lugbook::fastener::BadSpec>(())
    /// ```
    pub fn unit_clash(&self) -> Option<UnitClash> {
        self.printed.iter().enumerate().find_map(|(at, first)| {
            self.printed.iter().skip(at + 1).find_map(|second| {
                let percent = apart_percent(first, second);
                (percent > CLASH_PERCENT).then_some(UnitClash { first: *first, second: *second, percent })
            })
        })
    }
}

/// The largest difference of low and high ends, in percent of the larger value.
fn apart_percent(first: &Printed, second: &Printed) -> f64 {
    let (a, b) = (first.ends_in(TorqueUnit::NewtonMetre), second.ends_in(TorqueUnit::NewtonMetre));
    [(a.0, b.0), (a.1, b.1)].into_iter().map(|(x, y)| (x - y).abs() / x.max(y) * 100.0).fold(0.0, f64::max)
}
