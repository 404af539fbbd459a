use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

/// A screw thread as it is written on a box or in a manual: `M12 x 1.5`, `1/2-20 UNF`.
///
/// Pitch or threads per inch may be unknown (`M20`, `1/2 in`); nothing is filled in.
///
/// ```
/// use lugbook::fastener::Thread;
/// let stud: Thread = "m12x1,5".parse()?;
/// assert_eq!(stud.to_string(), "M12 x 1.5");
/// assert_eq!(stud.stress_area_mm2().map(f64::round), Some(88.0));
/// assert_eq!("1-1/8-16 un".parse::<Thread>()?.to_string(), "1-1/8-16 UN");
/// # Ok::<(), lugbook::fastener::BadThread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Thread(Form);

#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Form {
    Metric { diameter_mm: u8, pitch_hundredths: Option<u16> },
    Inch { sixteenths: u8, per_inch: Option<u8>, series: Option<Series> },
}

/// The series of an inch thread.
///
/// ```
/// use lugbook::fastener::Thread;
/// assert_eq!("1/2-20 unf".parse::<Thread>()?.to_string(), "1/2-20 UNF");
/// # Ok::<(), lugbook::fastener::BadThread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Series {
    /// Fine.
    Unf,
    /// Coarse.
    Unc,
    /// Constant pitch.
    Un,
    /// Extra fine.
    Unef,
}

impl Series {
    const ALL: [(Self, &'static str); 4] =
        [(Self::Unf, "UNF"), (Self::Unc, "UNC"), (Self::Un, "UN"), (Self::Unef, "UNEF")];
}

/// Why text is no wheel thread.
///
/// ```
/// use lugbook::fastener::{BadThread, Thread};
/// assert_eq!("M99 x 1.5".parse::<Thread>(), Err(BadThread::Diameter));
/// assert_eq!("M twelve".parse::<Thread>(), Err(BadThread::Form));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, thiserror::Error)]
#[serde(rename_all = "kebab-case")]
pub enum BadThread {
    /// Neither `M12 x 1.5` nor `1/2-20`.
    #[error("not a thread")]
    Form,
    /// Metric diameters of wheel studs run from M6 to M36 here.
    #[error("no such diameter")]
    Diameter,
    /// Pitches run from 0.5 to 4 mm, threads per inch from 6 to 40.
    #[error("no such pitch")]
    Pitch,
    /// The series word is not UNF, UNC, UN or UNEF.
    #[error("no such series")]
    Series,
}

impl Thread {
    /// A metric thread; the pitch in hundredths of a millimetre when known.
    ///
    /// ```
    /// use lugbook::fastener::{BadThread, Thread};
    /// assert_eq!(Thread::metric(14, Some(150))?.to_string(), "M14 x 1.5");
    /// assert_eq!(Thread::metric(14, Some(900)), Err(BadThread::Pitch));
    /// # Ok::<(), lugbook::fastener::BadThread>(())
    /// ```
    ///
    /// # Errors
    /// When diameter or pitch is none that a wheel stud has.
    pub fn metric(diameter_mm: u8, pitch_hundredths: Option<u16>) -> Result<Self, BadThread> {
        if !(6..=36).contains(&diameter_mm) {
            return Err(BadThread::Diameter);
        }
        if pitch_hundredths.is_some_and(|pitch| !(50..=400).contains(&pitch)) {
            return Err(BadThread::Pitch);
        }
        Ok(Self(Form::Metric { diameter_mm, pitch_hundredths }))
    }

    /// An inch thread; the diameter in sixteenths of an inch.
    ///
    /// ```
    /// use lugbook::fastener::Thread;
    /// assert_eq!(Thread::inch(8, Some(20), None)?.to_string(), "1/2-20");
    /// # Ok::<(), lugbook::fastener::BadThread>(())
    /// ```
    ///
    /// # Errors
    /// When diameter or threads per inch is none that a wheel stud has.
    pub fn inch(sixteenths: u8, per_inch: Option<u8>, series: Option<Series>) -> Result<Self, BadThread> {
        if !(4..=24).contains(&sixteenths) {
            return Err(BadThread::Diameter);
        }
        if per_inch.is_some_and(|count| !(6..=40).contains(&count)) {
            return Err(BadThread::Pitch);
        }
        Ok(Self(Form::Inch { sixteenths, per_inch, series }))
    }

    /// The nominal diameter in millimetres.
    ///
    /// ```
    /// use lugbook::fastener::Thread;
    /// assert_eq!("1/2-20".parse::<Thread>()?.diameter_mm(), 12.7);
    /// # Ok::<(), lugbook::fastener::BadThread>(())
    /// ```
    pub fn diameter_mm(self) -> f64 {
        match self.0 {
            Form::Metric { diameter_mm, .. } => f64::from(diameter_mm),
            Form::Inch { sixteenths, .. } => f64::from(sixteenths) * 25.4 / 16.0,
        }
    }

    /// The pitch in millimetres, when written.
    ///
    /// ```
    /// use lugbook::fastener::Thread;
    /// assert_eq!("1/2-20".parse::<Thread>()?.pitch_mm(), Some(1.27));
    /// assert_eq!("M20".parse::<Thread>()?.pitch_mm(), None);
    /// # Ok::<(), lugbook::fastener::BadThread>(())
    /// ```
    pub fn pitch_mm(self) -> Option<f64> {
        match self.0 {
            Form::Metric { pitch_hundredths, .. } => pitch_hundredths.map(|pitch| f64::from(pitch) / 100.0),
            Form::Inch { per_inch, .. } => per_inch.map(|count| 25.4 / f64::from(count)),
        }
    }

    /// Whether it is a metric thread.
    ///
    /// ```
    /// use lugbook::fastener::Thread;
    /// assert!("M22 x 1.5".parse::<Thread>()?.is_metric());
    /// # Ok::<(), lugbook::fastener::BadThread>(())
    /// ```
    pub fn is_metric(self) -> bool {
        matches!(self.0, Form::Metric { .. })
    }

    /// Tensile stress area in mm²: π/4 · (d − 0.9382 p)², d and p in mm.
    ///
    /// The usual formula for 60° threads (ISO 898-1 by its printed loads; the
    /// standard itself was not read). `None` without a pitch.
    ///
    /// ```
    /// use lugbook::fastener::Thread;
    /// // 88.1 mm² for M12 x 1.5.
    /// let area = "M12 x 1.5".parse::<Thread>()?.stress_area_mm2().unwrap();
    /// assert!((area - 88.1).abs() < 0.1);
    /// # Ok::<(), lugbook::fastener::BadThread>(())
    /// ```
    pub fn stress_area_mm2(self) -> Option<f64> {
        let core = self.diameter_mm() - 0.9382 * self.pitch_mm()?;
        Some(std::f64::consts::FRAC_PI_4 * core * core)
    }
}

impl FromStr for Thread {
    type Err = BadThread;

    fn from_str(text: &str) -> Result<Self, BadThread> {
        if text.len() > 40 {
            return Err(BadThread::Form);
        }
        let upper = text.trim().to_uppercase();
        match upper.strip_prefix('M') {
            Some(rest) => metric_of(rest),
            None => inch_of(&upper),
        }
    }
}

/// `12 X 1.5`, `12×1,5`, `12-1.5`, `20`.
fn metric_of(rest: &str) -> Result<Thread, BadThread> {
    let (diameter, pitch) = match rest.split_once(['X', '×', '*', '-']) {
        Some((diameter, pitch)) => (diameter.trim(), Some(pitch.trim())),
        None => (rest.trim(), None),
    };
    let diameter = digits(diameter).ok_or(BadThread::Form)?;
    Thread::metric(u8::try_from(diameter).map_err(|_| BadThread::Diameter)?, pitch.map(pitch_of).transpose()?)
}

/// A pitch in millimetres with up to two decimals, point or comma, as hundredths.
fn pitch_of(text: &str) -> Result<u16, BadThread> {
    let (whole, part) = text.split_once(['.', ',']).unwrap_or((text, "0"));
    let whole = digits(whole).ok_or(BadThread::Form)?;
    let tenths = digits(part).filter(|_| part.len() <= 2).ok_or(BadThread::Form)?;
    let part = if part.len() == 1 { tenths * 10 } else { tenths };
    whole.checked_mul(100).and_then(|w| w.checked_add(part)).and_then(|p| u16::try_from(p).ok()).ok_or(BadThread::Pitch)
}

/// `1/2-20 UNF`, `1-1/8-16`, `1/2 IN`, `7/16"`.
fn inch_of(text: &str) -> Result<Thread, BadThread> {
    let text = text.trim();
    let size_end = text
        .char_indices()
        .find(|(_, c)| !(c.is_ascii_digit() || matches!(c, '/' | '-' | ' ')))
        .map_or(text.len(), |(at, _)| at);
    let (size, word) = text.split_at_checked(size_end).unwrap_or((text, ""));
    let series = match word.trim() {
        "" | "IN" | "INCH" | "\"" => None,
        word => Some(Series::ALL.iter().find(|(_, name)| *name == word).ok_or(BadThread::Series)?.0),
    };
    let mut parts = size.split(['-', ' ']).filter(|part| !part.is_empty()).peekable();
    let whole = match parts.next_if(|part| !part.contains('/')) {
        Some(whole) => digits(whole).ok_or(BadThread::Form)?,
        None => 0,
    };
    let (top, bottom) = match parts.next_if(|part| part.contains('/')).and_then(|part| part.split_once('/')) {
        Some((top, bottom)) => (digits(top).ok_or(BadThread::Form)?, digits(bottom).ok_or(BadThread::Form)?),
        None => (0, 1),
    };
    let per_inch = parts.next();
    if parts.next().is_some() || whole == 0 && top == 0 && bottom == 1 {
        return Err(BadThread::Form);
    }
    if !matches!(bottom, 1 | 2 | 4 | 8 | 16) || top >= bottom || whole > 2 || (bottom > 1 && top == 0) {
        return Err(BadThread::Diameter);
    }
    let sixteenths = whole * 16 + top * (16 / bottom);
    let per_inch = per_inch
        .map(|count| digits(count).ok_or(BadThread::Form))
        .transpose()?
        .map(|count| u8::try_from(count).map_err(|_| BadThread::Pitch))
        .transpose()?;
    Thread::inch(u8::try_from(sixteenths).map_err(|_| BadThread::Diameter)?, per_inch, series)
}

/// One to four digits and nothing else.
fn digits(text: &str) -> Option<u32> {
    let plain = !text.is_empty() && text.len() <= 4 && text.bytes().all(|b| b.is_ascii_digit());
    plain.then(|| text.parse().ok()).flatten()
}

impl fmt::Display for Thread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Form::Metric { diameter_mm, pitch_hundredths: None } => write!(f, "M{diameter_mm}"),
            Form::Metric { diameter_mm, pitch_hundredths: Some(pitch) } => {
                write!(f, "M{diameter_mm} x {}", crate::measure::plain(f64::from(pitch) / 100.0))
            }
            Form::Inch { sixteenths, per_inch, series } => {
                let (whole, mut top, mut bottom) = (sixteenths / 16, sixteenths % 16, 16);
                if top == 0 {
                    return write_inch(f, &format!("{whole}"), per_inch, series);
                }
                while top % 2 == 0 {
                    top /= 2;
                    bottom /= 2;
                }
                let size = if whole == 0 { format!("{top}/{bottom}") } else { format!("{whole}-{top}/{bottom}") };
                write_inch(f, &size, per_inch, series)
            }
        }
    }
}

fn write_inch(f: &mut fmt::Formatter<'_>, size: &str, per_inch: Option<u8>, series: Option<Series>) -> fmt::Result {
    f.write_str(size)?;
    if let Some(count) = per_inch {
        write!(f, "-{count}")?;
    }
    match series.and_then(|series| Series::ALL.iter().find(|(s, _)| *s == series)) {
        Some((_, name)) => write!(f, " {name}"),
        None if per_inch.is_none() => f.write_str(" in"),
        None => Ok(()),
    }
}

impl Serialize for Thread {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Thread {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}
