//! Readings with the unit they were read in.
//!
//! A reading keeps its value and its unit as they stood on the gauge: 2/32 in
//! is 1.5875 mm and passes one rule; 1.59 mm passes it too, and fails 1.6 mm.
//! Conversions go through the `uom` crate and happen only when two readings
//! are compared or shown in another unit.

use std::borrow::Cow;
use std::cmp::Ordering;
use std::fmt;

use serde::{Deserialize, Serialize};
use uom::si::f64::{Length, Pressure as UomPressure, ThermodynamicTemperature, Velocity};

/// A unit of one kind of measure: how it is written and what it is in the base unit.
///
/// ```
/// use lugbook::measure::{TorqueUnit, Unit};
/// let units: Vec<&str> = TorqueUnit::ALL.iter().map(|unit| unit.code()).collect();
/// assert_eq!(units, ["N.m", "ft.lb", "kgf.m"]);
/// ```
pub trait Unit: Copy + PartialEq + fmt::Debug + Sized + 'static {
    /// All units of this kind, the base unit first.
    const ALL: &'static [Self];
    /// The unit as it stands in data: `mm`, `1/32in`, `N.m` …
    ///
    /// ```
    /// use lugbook::measure::{DepthUnit, Unit};
    /// assert_eq!(DepthUnit::ThirtySecond.code(), "1/32in");
    /// ```
    fn code(self) -> &'static str;
    /// Other ways a person writes it, in lower case.
    ///
    /// ```
    /// use lugbook::measure::{TorqueUnit, Unit};
    /// assert!(TorqueUnit::FootPound.spellings().contains(&"lb-ft"));
    /// ```
    fn spellings(self) -> &'static [&'static str];
    /// A value in this unit, in the base unit.
    ///
    /// ```
    /// use lugbook::measure::{PressureUnit, Unit};
    /// // 35 psi in kilopascals.
    /// assert!((PressureUnit::Psi.to_base(35.0) - 241.316_505).abs() < 1e-6);
    /// ```
    fn to_base(self, value: f64) -> f64;
    /// A value in the base unit, in this unit.
    ///
    /// ```
    /// use lugbook::measure::{TorqueUnit, Unit};
    /// // 103 N·m in foot-pounds.
    /// assert!((TorqueUnit::FootPound.of_base(103.0) - 75.97).abs() < 0.005);
    /// ```
    fn of_base(self, value: f64) -> f64;
    /// The lowest value in the base unit that makes physical sense for a reading.
    const LOWEST: f64;
    /// The highest value in the base unit that a reading can have: beyond it, it is a slip.
    const HIGHEST: f64;
    /// A point before exactly three digits may be a thousands mark: read in
    /// whole units up to many thousands, as an odometer is.
    const POINT_MAY_GROUP: bool;
}

/// A value and the unit it was read in.
///
/// ```
/// use lugbook::measure::{Depth, DepthUnit};
/// let depth: Depth = "7/32".parse()?;
/// assert_eq!((depth.value(), depth.unit()), (7.0, DepthUnit::ThirtySecond));
/// assert!((depth.in_unit(DepthUnit::Millimetre) - 5.55625).abs() < 1e-12);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading<U: Unit> {
    value: f64,
    unit: U,
}

impl<U: Unit> Reading<U> {
    /// A reading of `value` in `unit`.
    ///
    /// ```
    /// use lugbook::measure::{Depth, DepthUnit, Misread};
    /// assert!(Depth::new(7.0, DepthUnit::ThirtySecond).is_ok());
    /// let deep = Depth::new(80.0, DepthUnit::Millimetre);
    /// assert_eq!(deep, Err(Misread::TooHigh { highest: 50.0, unit: "mm" }));
    /// ```
    ///
    /// # Errors
    /// When the value is not a number or lies outside what such a reading can be.
    pub fn new(value: f64, unit: U) -> Result<Self, Misread> {
        let base = unit.to_base(value);
        if !value.is_finite() {
            return Err(Misread::NotANumber);
        }
        if base < U::LOWEST {
            return Err(Misread::TooLow { lowest: bound(U::LOWEST, unit), unit: unit.code() });
        }
        if base > U::HIGHEST {
            return Err(Misread::TooHigh { highest: bound(U::HIGHEST, unit), unit: unit.code() });
        }
        Ok(Self { value, unit })
    }

    /// The value as read.
    ///
    /// ```
    /// use lugbook::measure::Pressure;
    /// let pressure: Pressure = "2,4 bar".parse()?;
    /// assert_eq!(pressure.value(), 2.4);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn value(&self) -> f64 {
        self.value
    }

    /// The unit as read.
    ///
    /// ```
    /// use lugbook::measure::{Pressure, PressureUnit};
    /// let pressure: Pressure = "2,4 bar".parse()?;
    /// assert_eq!(pressure.unit(), PressureUnit::Bar);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn unit(&self) -> U {
        self.unit
    }

    /// The value in another unit of the same kind.
    ///
    /// ```
    /// use lugbook::measure::{Torque, TorqueUnit};
    /// let torque: Torque = "100 ft-lb".parse()?;
    /// assert!((torque.in_unit(TorqueUnit::NewtonMetre) - 135.581_795).abs() < 1e-6);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn in_unit(&self, unit: U) -> f64 {
        if unit == self.unit { self.value } else { unit.of_base(self.unit.to_base(self.value)) }
    }

    /// The same reading, told in another unit.
    ///
    /// ```
    /// use lugbook::measure::{Distance, DistanceUnit};
    /// let interval: Distance = "5000 mi".parse()?;
    /// assert_eq!(interval.to_unit(DistanceUnit::Kilometre).to_string(), "8046.72 km");
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn to_unit(&self, unit: U) -> Self {
        Self { value: self.in_unit(unit), unit }
    }

    /// Reads text such as `5.2 mm`, `5,2mm`, `7/32` or `100 ft-lb`; a bare
    /// number takes `default`. Decimal point and comma are both understood; a
    /// thousands mark is not, and is told.
    ///
    /// ```
    /// use lugbook::measure::{Distance, Misread};
    /// assert_eq!(Distance::parse("41.250 km", None), Err(Misread::ThousandsMark));
    /// ```
    ///
    /// # Errors
    /// When the text is no number, has a unit of another kind, has no unit and
    /// there is no default, or lies outside what such a reading can be.
    pub fn parse(text: &str, default: Option<U>) -> Result<Self, Misread> {
        let text = text.trim();
        let split = text
            .char_indices()
            .find(|(_, c)| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+')))
            .map_or(text.len(), |(at, _)| at);
        let (number, rest) = text.split_at_checked(split).unwrap_or((text, ""));
        let written = rest.trim().to_lowercase().replace('·', ".").replace('\u{2011}', "-");
        let value = number_of(number)?;
        if U::POINT_MAY_GROUP && number.split_once('.').is_some_and(|(_, part)| part.len() == 3) {
            return Err(Misread::ThousandsMark);
        }
        let unit = if written.is_empty() {
            default.ok_or(Misread::NoUnit)?
        } else {
            U::ALL
                .iter()
                .copied()
                .find(|unit| unit.code().to_lowercase() == written || unit.spellings().contains(&written.as_str()))
                .ok_or(Misread::WrongUnit { given: written, known: U::ALL.iter().map(|u| u.code()).collect() })?
        };
        Self::new(value, unit)
    }
}

/// A bound in the unit that was used, rounded so that it reads well.
fn bound<U: Unit>(base: f64, unit: U) -> f64 {
    (unit.of_base(base) * 10.0).round() / 10.0
}

/// A number as a person types it: `5.2` or `5,2`, never `1,234`.
///
/// ```
/// use lugbook::measure::{Misread, number_of};
/// assert_eq!((number_of("5.2"), number_of("5,2")), (Ok(5.2), Ok(5.2)));
/// assert_eq!(number_of("1,234"), Err(Misread::ThousandsMark));
/// ```
///
/// # Errors
/// When it is not a number, or a comma or point could be a thousands mark.
pub fn number_of(text: &str) -> Result<f64, Misread> {
    let marks = text.chars().filter(|c| matches!(c, '.' | ',')).count();
    if text.is_empty() || text.len() > 24 {
        return Err(Misread::NotANumber);
    }
    if marks > 1 {
        return Err(Misread::ThousandsMark);
    }
    let grouped = text
        .split_once(',')
        .is_some_and(|(whole, part)| part.len() == 3 && !whole.trim_start_matches(['-', '+', '0']).is_empty());
    if grouped {
        return Err(Misread::ThousandsMark);
    }
    text.replace(',', ".").parse::<f64>().ok().filter(|v| v.is_finite()).ok_or(Misread::NotANumber)
}

impl<U: Unit> std::str::FromStr for Reading<U> {
    type Err = Misread;

    fn from_str(text: &str) -> Result<Self, Misread> {
        Self::parse(text, None)
    }
}

impl<U: Unit> PartialOrd for Reading<U> {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        if self.unit == other.unit {
            return self.value.partial_cmp(&other.value);
        }
        self.unit.to_base(self.value).partial_cmp(&other.unit.to_base(other.value))
    }
}

impl<U: Unit> fmt::Display for Reading<U> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", plain(self.value), self.unit.code())
    }
}

/// A value without needless digits: at most four decimals, no trailing zeros.
///
/// ```
/// use lugbook::measure::plain;
/// assert_eq!((plain(137.0), plain(6.52), plain(-0.0)), ("137".into(), "6.52".into(), "0".into()));
/// ```
pub fn plain(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

#[derive(Serialize, Deserialize)]
struct Stored<'a> {
    value: f64,
    #[serde(borrow)]
    unit: Cow<'a, str>,
}

impl<U: Unit> Serialize for Reading<U> {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Stored { value: self.value, unit: self.unit.code().into() }.serialize(serializer)
    }
}

impl<'de, U: Unit> Deserialize<'de> for Reading<U> {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let stored = Stored::deserialize(deserializer)?;
        let unit = U::ALL
            .iter()
            .copied()
            .find(|unit| unit.code() == stored.unit)
            .ok_or_else(|| serde::de::Error::custom(format!("unknown unit {}", stored.unit)))?;
        Self::new(stored.value, unit).map_err(serde::de::Error::custom)
    }
}

/// Why text could not be taken as a reading.
///
/// ```
/// use lugbook::measure::{Misread, Torque};
/// assert_eq!("120".parse::<Torque>(), Err(Misread::NoUnit), "120 of what?");
/// assert!(matches!("120 psi".parse::<Torque>(), Err(Misread::WrongUnit { .. })));
/// ```
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Misread {
    /// There is no number.
    #[error("not a number")]
    NotANumber,
    /// A comma or point that may be a thousands mark: the number could mean two things.
    #[error("a thousands mark is not understood")]
    ThousandsMark,
    /// A number without a unit where none can be assumed.
    #[error("the unit is missing")]
    NoUnit,
    /// A unit of another kind, or none that is known.
    #[error("unknown unit {given}; known: {known:?}")]
    WrongUnit {
        /// The unit as it was written.
        given: String,
        /// The units that would do.
        known: Vec<&'static str>,
    },
    /// Lower than such a reading can be.
    #[error("below {lowest} {unit}")]
    TooLow {
        /// The lowest value that would do.
        lowest: f64,
        /// In this unit.
        unit: &'static str,
    },
    /// Higher than such a reading can be.
    #[error("above {highest} {unit}")]
    TooHigh {
        /// The highest value that would do.
        highest: f64,
        /// In this unit.
        unit: &'static str,
    },
}

macro_rules! unit {
    (
        $(#[$doc:meta])* $reading:ident, $unit:ident, $low:expr, $high:expr, $base:expr;
        $($(#[$vdoc:meta])* $variant:ident $code:literal [$($spelling:literal),*] $to:expr, $from:expr;)*
    ) => {
        $(#[$doc])*
        pub type $reading = Reading<$unit>;

        #[doc = concat!("Units of [`", stringify!($reading), "`]; the base is ", $base, ".")]
        ///
        /// ```
        #[doc = concat!("use lugbook::measure::{", stringify!($reading), ", ", stringify!($unit), ", Unit};")]
        #[doc = concat!("for unit in ", stringify!($unit), "::ALL {")]
        #[doc = concat!("    let reading: ", stringify!($reading), " = format!(\"1 {}\", unit.code()).parse()?;")]
        ///     assert_eq!(reading.unit(), *unit);
        /// }
        /// # Ok::<(), lugbook::measure::Misread>(())
        /// ```
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum $unit {
            $($(#[$vdoc])* $variant,)*
        }

        impl Unit for $unit {
            const ALL: &'static [Self] = &[$(Self::$variant),*];
            const LOWEST: f64 = $low;
            const HIGHEST: f64 = $high;
            const POINT_MAY_GROUP: bool = $high >= 1_000_000.0;

            fn code(self) -> &'static str {
                match self { $(Self::$variant => $code,)* }
            }

            fn spellings(self) -> &'static [&'static str] {
                match self { $(Self::$variant => &[$($spelling),*],)* }
            }

            fn to_base(self, value: f64) -> f64 {
                match self { $(Self::$variant => $to(value),)* }
            }

            fn of_base(self, value: f64) -> f64 {
                match self { $(Self::$variant => $from(value),)* }
            }
        }
    };
}

use uom::si::{length, pressure, thermodynamic_temperature as temperature, velocity};

/// One thirty-second of an inch in millimetres, exact (0.3048 m to the foot).
pub const THIRTY_SECOND_MM: f64 = 0.79375;

unit! {
    /// Tread or groove depth, 0 to 50 mm.
    Depth, DepthUnit, 0.0, 50.0, "the millimetre";
    /// Millimetres.
    Millimetre "mm" ["millimetre", "millimeter", "millimetres", "millimeters", "milímetro", "milímetros"] |v| v, |v| v;
    /// Thirty-seconds of an inch.
    ThirtySecond "1/32in" ["/32", "/32in", "/32 in", "32nds", "1/32 in", "/32\"", "1/32", "/32 pulg", "/32 pulg.", "treintaidosavo de pulgada", "treintaidosavos de pulgada"] |v: f64| v * THIRTY_SECOND_MM, |v: f64| v / THIRTY_SECOND_MM;
}

unit! {
    /// A tightening torque, above 0 and up to 2,000 N·m.
    Torque, TorqueUnit, 0.1, 2000.0, "the newton metre";
    /// Newton metres.
    NewtonMetre "N.m" ["nm", "n m", "n*m", "newton metre", "newton meter", "newton metro", "newton metros"] |v| v, |v| v;
    /// Foot-pounds.
    FootPound "ft.lb" ["ft-lb", "ft lb", "ftlb", "lb-ft", "lb.ft", "lb ft", "lbft", "ft-lbs", "ft lbs", "ft-lbf", "foot-pounds", "lb-pie", "pie-lb", "pie-libra", "pies-libra", "libras-pie"]
        |v: f64| v * FOOT_POUND_NM, |v: f64| v / FOOT_POUND_NM;
    /// Kilogram-force metres, printed in older manuals.
    KilogramMetre "kgf.m" ["kgm", "kg.m", "kgf m", "kgfm", "mkg", "m.kg", "kilogramo-fuerza metro", "kilogramos-fuerza metro"]
        |v: f64| v * KGF_N, |v: f64| v / KGF_N;
}

/// One pound in kilograms, exact by definition. (`uom` gives this and the two below to seven digits.)
pub const POUND_KG: f64 = 0.453_592_37;

/// One foot-pound in newton metres: pound × standard gravity × foot, exact.
pub const FOOT_POUND_NM: f64 = 1.355_817_948_331_400_4;

/// One pound per square inch in kilopascals, rounded from the exact quotient.
pub const PSI_KPA: f64 = 6.894_757_293_168_361;

/// One kilogram-force in newtons, exact by definition of standard gravity.
pub const KGF_N: f64 = 9.80665;

unit! {
    /// A gauge pressure, 0 to 1,500 kPa.
    Pressure, PressureUnit, 0.0, 1500.0, "the kilopascal";
    /// Kilopascals.
    Kilopascal "kPa" ["kpa", "kilopascal", "kilopascales"] |v| v, |v| v;
    /// Pounds per square inch.
    Psi "psi" ["lb/in2", "lbs", "libra por pulgada cuadrada", "libras por pulgada cuadrada"]
        |v: f64| v * PSI_KPA, |v: f64| v / PSI_KPA;
    /// Bar.
    Bar "bar" ["bars", "bares"]
        |v| UomPressure::new::<pressure::bar>(v).get::<pressure::kilopascal>(),
        |v| UomPressure::new::<pressure::kilopascal>(v).get::<pressure::bar>();
}

unit! {
    /// A distance driven or an odometer reading, 0 to 5,000,000 km.
    Distance, DistanceUnit, 0.0, 5_000_000.0, "the kilometre";
    /// Kilometres.
    Kilometre "km" ["kms", "kilometres", "kilometers", "kilómetro", "kilómetros"] |v| v, |v| v;
    /// Miles.
    Mile "mi" ["mile", "miles", "milla", "millas"]
        |v| Length::new::<length::mile>(v).get::<length::kilometer>(),
        |v| Length::new::<length::kilometer>(v).get::<length::mile>();
}

unit! {
    /// An air or tire temperature, -90 to 200 °C.
    Temperature, TemperatureUnit, -90.0, 200.0, "the degree Celsius";
    /// Degrees Celsius.
    Celsius "degC" ["c", "°c", "celsius", "grado celsius", "grados celsius"] |v| v, |v| v;
    /// Degrees Fahrenheit.
    Fahrenheit "degF" ["f", "°f", "fahrenheit", "grado fahrenheit", "grados fahrenheit"]
        |v| ThermodynamicTemperature::new::<temperature::degree_fahrenheit>(v).get::<temperature::degree_celsius>(),
        |v| ThermodynamicTemperature::new::<temperature::degree_celsius>(v).get::<temperature::degree_fahrenheit>();
}

unit! {
    /// A mass that a tire, jack or stand carries, 0 to 200,000 kg.
    Load, LoadUnit, 0.0, 200_000.0, "the kilogram";
    /// Kilograms.
    Kilogram "kg" ["kgs", "kilogram", "kilograms", "kilo", "kilos", "kilogramo", "kilogramos"] |v| v, |v| v;
    /// Pounds.
    Pound "lb" ["lbs", "pound", "pounds", "libra", "libras"]
        |v: f64| v * POUND_KG, |v: f64| v / POUND_KG;
    /// Metric tonnes.
    Tonne "t" ["ton", "tonne", "tonnes", "tonelada métrica", "toneladas métricas"] |v: f64| v * 1000.0, |v: f64| v / 1000.0;
}

unit! {
    /// A road speed, 0 to 600 km/h.
    Speed, SpeedUnit, 0.0, 600.0, "the kilometre per hour";
    /// Kilometres per hour.
    KilometrePerHour "km/h" ["kmh", "kph", "kilómetro por hora", "kilómetros por hora"] |v| v, |v| v;
    /// Miles per hour.
    MilePerHour "mph" ["mi/h", "milla por hora", "millas por hora"]
        |v| Velocity::new::<velocity::mile_per_hour>(v).get::<velocity::kilometer_per_hour>(),
        |v| Velocity::new::<velocity::kilometer_per_hour>(v).get::<velocity::mile_per_hour>();
}

unit! {
    /// A length on a wheel, a tool or a thread, 0 to 20,000 mm.
    Span, SpanUnit, 0.0, 20_000.0, "the millimetre";
    /// Millimetres.
    Millimetre "mm" ["millimetre", "millimeter", "milímetro", "milímetros"] |v| v, |v| v;
    /// Inches.
    Inch "in" ["inch", "inches", "\"", "pulg", "pulg.", "pulgada", "pulgadas"]
        |v| Length::new::<length::inch>(v).get::<length::millimeter>(),
        |v| Length::new::<length::millimeter>(v).get::<length::inch>();
}
