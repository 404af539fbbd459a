use serde::{Deserialize, Serialize};

use crate::calendar::Day;
use crate::measure::{Misread, Span, Torque, number_of};

/// A torque wrench, as far as its owner knows it.
///
/// ```
/// use lugbook::fastener::Wrench;
/// let wrench = Wrench::new(4.0, "5 N.m".parse()?);
/// assert_eq!(wrench.calibration_on("2026-11-24".parse()?), lugbook::fastener::Calibration::NotKnown);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Wrench {
    /// Largest deviation in percent of the reading, from the wrench's papers.
    pub accuracy_percent: f64,
    /// The scale's step: it can be set to multiples of this, counted from zero.
    pub step: Torque,
    /// Lowest and highest setting of the scale, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub range: Option<Scale>,
    /// The day of the last calibration, or not known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub last_calibration: Option<Day>,
}

/// The ends of a wrench's scale.
///
/// ```
/// use lugbook::fastener::{Scale, Wrench};
/// let scale = Scale { low: "40 N.m".parse()?, high: "200 N.m".parse()? };
/// let wrench = Wrench { range: Some(scale), ..Wrench::new(4.0, "1 N.m".parse()?) };
/// assert_eq!(wrench.range.unwrap().high.value(), 200.0);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Scale {
    /// The lowest marked setting.
    pub low: Torque,
    /// The highest marked setting.
    pub high: Torque,
}

/// Whether a wrench was calibrated within a year.
///
/// ```
/// use lugbook::fastener::{Calibration, Wrench};
/// let mut wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// wrench.last_calibration = "2024-03-02".parse().ok();
/// assert_eq!(wrench.calibration_on("2026-05-04".parse().unwrap()), Calibration::Overdue);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Calibration {
    /// Nobody knows when.
    NotKnown,
    /// Within the year.
    Current,
    /// Longer ago.
    Overdue,
    /// On a day that has not come yet: one of the two dates is wrong.
    InTheFuture,
}

impl Wrench {
    /// A wrench of which only accuracy and step are known.
    ///
    /// ```
    /// use lugbook::fastener::Wrench;
    /// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
    /// assert_eq!((wrench.range, wrench.last_calibration), (None, None));
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn new(accuracy_percent: f64, step: Torque) -> Self {
        Self { accuracy_percent, step, range: None, last_calibration: None }
    }

    /// How its calibration stands on a day.
    ///
    /// At least once a year: quoted from FAA AC 43.13-1B 7-40 on a secondary
    /// page (grade S), so an old calibration warns and never refuses.
    ///
    /// ```
    /// use lugbook::fastener::{Calibration, Wrench};
    /// let mut wrench = Wrench::new(4.0, "1 N.m".parse()?);
    /// wrench.last_calibration = "2026-03-02".parse().ok();
    /// assert_eq!(wrench.calibration_on("2026-05-04".parse().unwrap()), Calibration::Current);
    /// assert_eq!(wrench.calibration_on("2026-01-01".parse().unwrap()), Calibration::InTheFuture);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn calibration_on(&self, today: Day) -> Calibration {
        match self.last_calibration.map(|day| day.age_on(today)) {
            None => Calibration::NotKnown,
            Some(None) => Calibration::InTheFuture,
            Some(Some(age)) if age.years < 1 => Calibration::Current,
            Some(Some(_)) => Calibration::Overdue,
        }
    }
}

/// Reads a wrench's accuracy such as `4%`, `±4 %` or `0,5 %`, in percent.
///
/// ```
/// assert_eq!(lugbook::fastener::accuracy_of("±4 %"), Ok(4.0));
/// ```
///
/// # Errors
/// When it is no number, negative, or 50 % and more: no wrench is that poor.
pub fn accuracy_of(text: &str) -> Result<f64, Misread> {
    let bare = text.trim().trim_start_matches("+/-").trim_start_matches('±').trim_end_matches('%').trim();
    let value = number_of(bare)?;
    if value < 0.0 {
        return Err(Misread::TooLow { lowest: 0.0, unit: "%" });
    }
    if value >= 50.0 {
        return Err(Misread::TooHigh { highest: 50.0, unit: "%" });
    }
    Ok(value)
}

/// A torque-limiting bar (torque stick): it flexes, so that an impact gun passes on only so much.
///
/// ```
/// use lugbook::fastener::Bar;
/// let bar = Bar::new("80 ft-lb".parse()?);
/// assert_eq!((bar.hex, bar.for_guns_up_to), (None, None));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bar {
    /// The torque marked on it.
    pub rating: Torque,
    /// Its socket, across flats, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hex: Option<Span>,
    /// The strongest gun its maker made the marking for, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub for_guns_up_to: Option<Torque>,
}

impl Bar {
    /// A bar of which only the marking is known.
    ///
    /// ```
    /// use lugbook::fastener::Bar;
    /// assert_eq!(Bar::new("65 ft.lb".parse()?).rating.value(), 65.0);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn new(rating: Torque) -> Self {
        Self { rating, hex: None, for_guns_up_to: None }
    }
}

/// What drives a gun.
///
/// ```
/// use lugbook::fastener::Power;
/// assert_eq!(serde_json::to_string(&Power::Air)?, "\"air\"");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Power {
    /// Air from a hose.
    Air,
    /// A battery or a cord.
    Electric,
}

/// An impact gun.
///
/// ```
/// use lugbook::fastener::Gun;
/// // Its strength decides what a bar passes on, so it is asked.
/// assert_eq!(Gun::default().greatest, None);
/// ```
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Gun {
    /// Its greatest tightening torque as marked, when known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub greatest: Option<Torque>,
    /// What drives it, when told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub power: Option<Power>,
}
