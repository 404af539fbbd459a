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

    /// Overall diameter after so much tread is worn off, mm: the new one less twice the wear.
    /// Plain geometry. `None` as for the new diameter, or when `worn_mm` is no depth.
    ///
    /// ```
    /// use lugbook::sidewall::Size;
    /// // 8.0 mm worn down to 1.6 mm: 2 % less to an all-wheel drive.
    /// let size: Size = "225/45R17".parse()?;
    /// assert_eq!(size.diameter_worn_mm(6.4).map(f64::round), Some(622.0));
    /// assert_eq!(size.diameter_worn_mm(-1.0), None);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn diameter_worn_mm(&self, worn_mm: f64) -> Option<f64> {
        let new = self.overall_diameter_mm()?;
        (0.0..=50.0).contains(&worn_mm).then_some(new - 2.0 * worn_mm)
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

/// Section width on a rim, mm, before it is rounded to the millimetre: the nominal
/// width + 0.4 × (rim width − nominal width × factor).
///
/// `nominal_mm` is the width in the designation, `rim_in` the rim's width in inches and
/// `factor` the ratio of theoretical rim to section that the maker gives, such as 0.85.
/// About 5 mm for each half inch of rim. `None` when a figure is no width.
/// Source: UN R30, 6.1.1.1, amendment text (grade P); the factor of a size is the maker's.
///
/// ```
/// use lugbook::sidewall::section_width_mm;
/// assert_eq!(section_width_mm(225.0, 7.5, 0.85).map(f64::round), Some(225.0));
/// assert_eq!(section_width_mm(225.0, 8.0, 0.85).map(f64::round), Some(230.0));
/// ```
pub fn section_width_mm(nominal_mm: f64, rim_in: f64, factor: f64) -> Option<f64> {
    let sound = (50.0..=600.0).contains(&nominal_mm) && (1.0..=30.0).contains(&rim_in);
    let width = nominal_mm + 0.4 * (rim_in * INCH_MM - nominal_mm * factor);
    (sound && (0.5..=1.0).contains(&factor)).then_some(width)
}
