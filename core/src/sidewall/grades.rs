//! Uniform tire quality grades: treadwear, traction, temperature (49 CFR 575.104).

use std::fmt;

/// Wet traction, best first.
///
/// ```
/// use lugbook::sidewall::Traction;
/// assert_eq!(Traction::Aa.exceeds(), Some((0.54, 0.38)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Traction {
    /// More than 0.54 on asphalt and 0.38 on concrete.
    Aa,
    /// More than 0.47 and 0.35.
    A,
    /// More than 0.38 and 0.26.
    B,
    /// Anything less.
    C,
}

/// Resistance to heat on a test wheel, best first.
///
/// ```
/// use lugbook::sidewall::TemperatureGrade;
/// assert!(TemperatureGrade::A < TemperatureGrade::C);
/// assert_eq!(TemperatureGrade::B.from_mph(), 100);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TemperatureGrade {
    /// More than 115 mph (185 km/h).
    A,
    /// 100 to 115 mph.
    B,
    /// 85 to 100 mph, the least allowed.
    C,
}

impl Traction {
    /// All grades, best first.
    pub const ALL: [Self; 4] = [Self::Aa, Self::A, Self::B, Self::C];

    /// As molded.
    ///
    /// ```
    /// use lugbook::sidewall::Traction;
    /// assert_eq!(Traction::ALL[0].as_str(), "AA");
    /// ```
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Aa => "AA",
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
        }
    }

    pub(super) fn of(text: &[u8]) -> Option<Self> {
        Self::ALL.into_iter().find(|grade| grade.as_str().as_bytes() == text)
    }

    /// The friction on wet asphalt and on wet concrete that a tire of this grade
    /// exceeds; `None` for C. Three secondary pages agree (grade S).
    ///
    /// ```
    /// use lugbook::sidewall::Traction;
    /// let best = Traction::ALL[0];
    /// assert_eq!(best.exceeds(), Some((0.54, 0.38)));
    /// ```
    pub fn exceeds(self) -> Option<(f64, f64)> {
        match self {
            Self::Aa => Some((0.54, 0.38)),
            Self::A => Some((0.47, 0.35)),
            Self::B => Some((0.38, 0.26)),
            Self::C => None,
        }
    }

    /// The grade of a tire with this friction on wet asphalt and wet concrete.
    ///
    /// ```
    /// use lugbook::sidewall::Traction;
    /// assert_eq!(Traction::of_friction(0.55, 0.36), Traction::A); // both must be exceeded
    /// ```
    pub fn of_friction(asphalt: f64, concrete: f64) -> Self {
        let passes = |grade: &Self| grade.exceeds().is_none_or(|(a, c)| asphalt > a && concrete > c);
        Self::ALL.into_iter().find(passes).unwrap_or(Self::C)
    }
}

impl TemperatureGrade {
    /// All grades, best first.
    pub const ALL: [Self; 3] = [Self::A, Self::B, Self::C];

    /// As molded.
    ///
    /// ```
    /// use lugbook::sidewall::TemperatureGrade;
    /// assert_eq!(TemperatureGrade::ALL.map(|grade| grade.as_str()), ["A", "B", "C"]);
    /// ```
    pub fn as_str(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
        }
    }

    pub(super) fn of(text: &[u8]) -> Option<Self> {
        Self::ALL.into_iter().find(|grade| grade.as_str().as_bytes() == text)
    }

    /// The speed a tire of this grade stands on the test wheel, mph: A passes
    /// above it, B and C from it. Two secondary pages agree (grade S).
    ///
    /// ```
    /// use lugbook::sidewall::TemperatureGrade;
    /// assert_eq!(TemperatureGrade::ALL.map(|grade| grade.from_mph()), [115, 100, 85]);
    /// ```
    pub fn from_mph(self) -> u16 {
        match self {
            Self::A => 115,
            Self::B => 100,
            Self::C => 85,
        }
    }
}

/// The grades a sidewall prints; deep-tread, winter-type, temporary spare and
/// small-rim tires bear none (49 CFR 575.104(c)(1)).
///
/// ```
/// let marking = lugbook::sidewall::parse("TREADWEAR 400 TRACTION AA TEMPERATURE A");
/// assert_eq!(marking.utqg.unwrap().treadwear, Some(400));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Utqg {
    /// Treadwear: a ratio to a reference tire of 100, never a mileage.
    pub treadwear: Option<u16>,
    /// Wet traction.
    pub traction: Option<Traction>,
    /// Temperature.
    pub temperature: Option<TemperatureGrade>,
}

impl Utqg {
    /// The treadwear grade for a projected mileage, as a share of 30,000 miles,
    /// rounded down to a step of 20 (NHTSA interpretation letter 10811). `None`
    /// for a mileage below 0, above a million, or no number.
    ///
    /// ```
    /// use lugbook::sidewall::Utqg;
    /// assert_eq!(Utqg::treadwear_of(5_000.0), Some(0)); // the letter's own example: grade 00
    /// assert_eq!(Utqg::treadwear_of(60_000.0), Some(200));
    /// ```
    pub fn treadwear_of(projected_miles: f64) -> Option<u16> {
        if !(0.0..=1_000_000.0).contains(&projected_miles) {
            return None;
        }
        let steps = (projected_miles * 100.0 / 30_000.0 / 20.0).floor();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and 167")]
        Some((steps as u16).saturating_mul(20))
    }
}

impl fmt::Display for Utqg {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut gap = "";
        if let Some(treadwear) = self.treadwear {
            write!(f, "TREADWEAR {treadwear}")?;
            gap = " ";
        }
        if let Some(traction) = self.traction {
            write!(f, "{gap}TRACTION {}", traction.as_str())?;
            gap = " ";
        }
        if let Some(temperature) = self.temperature {
            write!(f, "{gap}TEMPERATURE {}", temperature.as_str())?;
        }
        Ok(())
    }
}
