//! Readings as text and as speech.

use serde::{Deserialize, Serialize};

use super::{Say, Units, Words};
use crate::measure::{
    DepthUnit, DistanceUnit, LoadUnit, Misread, PressureUnit, Reading, SpanUnit, SpeedUnit, TemperatureUnit,
    TorqueUnit, Unit,
};

/// A reading for a screen: as it was read, and worded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Quantity {
    /// The value as read.
    pub value: f64,
    /// The unit as read: `mm`, `1/32in`, `N.m` …
    pub unit: String,
    /// What a person reads, in the chosen units.
    pub text: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// A unit that can be worded.
pub trait Worded: Unit {
    /// Name of its sentence; the spoken one ends in `-spoken`.
    fn sentence(self) -> &'static str;
    /// Decimals that make sense on a gauge of this unit.
    fn decimals(self) -> usize;
    /// The unit of the same kind in a system of units.
    fn in_system(self, units: Units) -> Self;
}

macro_rules! worded {
    ($($unit:ident: metric $metric:ident, us $us:ident { $($variant:ident $sentence:literal $decimals:literal),* };)*) => {$(
        impl Worded for $unit {
            fn sentence(self) -> &'static str {
                match self { $(Self::$variant => $sentence,)* }
            }
            fn decimals(self) -> usize {
                match self { $(Self::$variant => $decimals,)* }
            }
            fn in_system(self, units: Units) -> Self {
                match units {
                    Units::AsRead => self,
                    Units::Metric => Self::$metric,
                    Units::Us => Self::$us,
                }
            }
        }
    )*};
}

worded! {
    DepthUnit: metric Millimetre, us ThirtySecond { Millimetre "unit-mm" 1, ThirtySecond "unit-32" 1 };
    TorqueUnit: metric NewtonMetre, us FootPound { NewtonMetre "unit-nm" 0, FootPound "unit-ftlb" 0, KilogramMetre "unit-kgfm" 1 };
    PressureUnit: metric Kilopascal, us Psi { Kilopascal "unit-kpa" 0, Psi "unit-psi" 1, Bar "unit-bar" 2 };
    DistanceUnit: metric Kilometre, us Mile { Kilometre "unit-km" 0, Mile "unit-mi" 0 };
    TemperatureUnit: metric Celsius, us Fahrenheit { Celsius "unit-c" 0, Fahrenheit "unit-f" 0 };
    LoadUnit: metric Kilogram, us Pound { Kilogram "unit-kg" 0, Pound "unit-lb" 0, Tonne "unit-t" 1 };
    SpeedUnit: metric KilometrePerHour, us MilePerHour { KilometrePerHour "unit-kmh" 0, MilePerHour "unit-mph" 0 };
    SpanUnit: metric Millimetre, us Inch { Millimetre "unit-mm" 1, Inch "unit-in" 2 };
}

impl Words {
    /// A reading in its own unit, as a person reads it.
    fn in_unit<U: Worded>(&self, value: f64, unit: U, decimals: usize, spoken: bool) -> String {
        let grouped = decimals == 0 && value.abs() >= 10_000.0;
        let shown = if grouped { self.grouped(value) } else { self.number(value, decimals) };
        let name = if spoken { format!("{}-spoken", unit.sentence()) } else { unit.sentence().to_owned() };
        self.text(&name, &[("value", shown.into()), ("count", value.into())])
    }

    /// A reading in the chosen units; when that is not the unit it was read
    /// in, what was read follows in brackets.
    pub fn reading<U: Worded>(&self, reading: &Reading<U>) -> String {
        self.worded(reading, false)
    }

    /// A computed figure in the chosen units, with as many decimals as a gauge
    /// shows. Nobody read it, so no reading stands beside it.
    ///
    /// ```
    /// use lugbook::measure::Load;
    /// use lugbook::words::{Speech, Units, Words};
    /// let words = Words::new(Speech { units: Units::Us, ..Speech::default() });
    /// let load: Load = "615 kg".parse()?;
    /// assert_eq!((words.computed(&load), words.reading(&load)), ("1356 lb".into(), "1356 lb (read 615 kg)".into()));
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn computed<U: Worded>(&self, figure: &Reading<U>) -> String {
        let unit = figure.unit().in_system(self.speech().units);
        let value = figure.in_unit(unit);
        let shown = self.number(value, unit.decimals());
        self.text(unit.sentence(), &[("value", shown.into()), ("count", value.into())])
    }

    /// A reading in the chosen units alone, for a picture whose text beside it
    /// says what was read.
    pub fn shown_alone<U: Worded>(&self, reading: &Reading<U>) -> String {
        let unit = reading.unit().in_system(self.speech().units);
        if unit == reading.unit() { self.reading(reading) } else { self.computed(reading) }
    }

    /// A figure in the unit it is printed in, whatever units are chosen.
    pub fn as_printed<U: Worded>(&self, reading: &Reading<U>) -> String {
        self.in_unit(reading.value(), reading.unit(), 4, false)
    }

    /// A reading for a screen: value and unit as read, text, and spoken text.
    pub fn quantity<U: Worded>(&self, reading: &Reading<U>) -> Quantity {
        Quantity {
            value: reading.value(),
            unit: reading.unit().code().to_owned(),
            text: self.worded(reading, false),
            spoken: self.worded(reading, true),
        }
    }

    fn worded<U: Worded>(&self, reading: &Reading<U>, spoken: bool) -> String {
        // What was read is shown with every decimal that was read.
        let read = self.in_unit(reading.value(), reading.unit(), 4, spoken);
        let unit = reading.unit().in_system(self.speech().units);
        if unit == reading.unit() {
            let whole = reading.value().fract() == 0.0;
            return if whole { self.in_unit(reading.value(), unit, 0, spoken) } else { read };
        }
        let shown = self.in_unit(reading.in_unit(unit), unit, unit.decimals(), spoken);
        self.text("unit-converted", &[("shown", shown.into()), ("read", read.into())])
    }

    /// Why text was not taken as a reading, with what was given and what would do.
    pub fn misread<U: Worded>(&self, given: &str, why: &Misread) -> String {
        let known = self.list(U::ALL.iter().map(|unit| unit.code().to_owned()));
        let given: String = given.chars().take(24).collect();
        let given = ("given", given.as_str().into());
        match why {
            Misread::NotANumber => self.text("misread-not-a-number", &[given]),
            Misread::ThousandsMark => self.text("misread-thousands", &[given]),
            Misread::NoUnit => self.text("misread-no-unit", &[given, ("known", known.into())]),
            Misread::WrongUnit { given: unit, .. } => {
                let unit: String = unit.chars().take(24).collect();
                self.text("misread-wrong-unit", &[("unit", unit.into()), ("known", known.into())])
            }
            Misread::TooLow { lowest: bound, unit } | Misread::TooHigh { highest: bound, unit } => {
                let id = if matches!(why, Misread::TooLow { .. }) { "misread-too-low" } else { "misread-too-high" };
                let bound = U::ALL
                    .iter()
                    .find(|u| u.code() == *unit)
                    .map_or_else(|| self.number(*bound, 1), |u| self.in_unit(*bound, *u, 1, false));
                self.text(id, &[given, ("bound", bound.into())])
            }
        }
    }
}

impl<U: Worded> Say for Reading<U> {
    fn say(&self, words: &Words) -> String {
        words.reading(self)
    }
}
