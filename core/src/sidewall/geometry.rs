//! What follows from a size by geometry alone.
//!
//! Rim diameters are the nominal inches times 25.4 mm, not the rounded
//! millimetres of some tables (17 in: 431.8 mm, not 432). All figures are
//! nominal: a real tire, worn or loaded, is a few percent smaller.

use std::f64::consts::PI;

use super::size::{Section, Size};

/// Millimetres to the inch, exact.
const INCH_MM: f64 = 25.4;
/// Millimetres to the mile, exact (1,760 yards of 914.4 mm).
const MILE_MM: f64 = 1_609_344.0;

impl Size {
    /// Height of one sidewall above the rim, mm: width × aspect / 100; half of
    /// diameter less rim for a flotation size. `None` for a size without
    /// aspect. Source: trade page (grade S).
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "225/45R17".parse()?;
    /// assert_eq!(size.section_height_mm(), Some(101.25));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn section_height_mm(&self) -> Option<f64> {
        match self.section {
            Section::Metric { width_mm, aspect: Some(aspect) } => Some(f64::from(width_mm) * f64::from(aspect) / 100.0),
            Section::Flotation { .. } => Some((self.overall_diameter_mm()? - self.rim_in() * INCH_MM) / 2.0),
            _ => None,
        }
    }

    /// Overall diameter, mm: rim × 25.4 + 2 × section height; as printed for a
    /// flotation size. `None` for a size without aspect: none is guessed.
    /// Source: trade page (grade S).
    ///
    /// ```
    /// use lugbook::sidewall::Size;
    /// let size: Size = "225/45R17".parse()?;
    /// assert!((size.overall_diameter_mm().unwrap() - 634.3).abs() < 1e-9);
    /// let van: Size = "195R14C".parse()?;
    /// assert_eq!(van.overall_diameter_mm(), None);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn overall_diameter_mm(&self) -> Option<f64> {
        match self.section {
            Section::Flotation { diameter_hundredths, .. } => Some(f64::from(diameter_hundredths) * INCH_MM / 100.0),
            Section::Metric { .. } => Some(self.rim_in() * INCH_MM + 2.0 * self.section_height_mm()?),
            _ => None,
        }
    }

    /// Circumference of the free, unloaded tire, mm: π × overall diameter.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "225/45R17".parse()?;
    /// assert_eq!(size.circumference_mm().map(f64::round), Some(1993.0));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn circumference_mm(&self) -> Option<f64> {
        Some(self.overall_diameter_mm()? * PI)
    }

    /// Turns per kilometre at the free radius; a loaded tire turns a few percent more.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "225/45R17".parse()?;
    /// assert_eq!(size.revolutions_per_km().map(f64::round), Some(502.0));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn revolutions_per_km(&self) -> Option<f64> {
        Some(1_000_000.0 / self.circumference_mm()?)
    }

    /// Turns per mile at the free radius; a loaded tire turns a few percent more.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "225/45R17".parse()?;
    /// assert_eq!(size.revolutions_per_mile().map(f64::round), Some(808.0));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn revolutions_per_mile(&self) -> Option<f64> {
        Some(MILE_MM / self.circumference_mm()?)
    }
}
