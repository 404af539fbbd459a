use serde::{Deserialize, Serialize};

use crate::measure::{Span, SpanUnit};

/// An extension on the wrench's square drive, in the plane of the handle: a
/// crowfoot or a flat adapter. A plain drive extension on the socket's axis
/// changes nothing and is no adapter.
///
/// ```
/// use lugbook::fastening::Adapter;
/// // Navy training manual NAVEDTRA 14315: lever 12, extension 6, target 100 -> 66.67.
/// let adapter = Adapter { lever: "12 in".parse()?, extension: "6 in".parse()?, angle_degrees: 0.0 };
/// assert!((adapter.factor().unwrap() * 100.0 - 66.67).abs() < 0.005);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Adapter {
    /// From the middle of the grip to the wrench's drive.
    pub lever: Span,
    /// From the wrench's drive to the nut's middle.
    pub extension: Span,
    /// Between handle and extension: 0 straight on (longer), 90 square, 180 folded back (shorter).
    pub angle_degrees: f64,
}

/// Why an adapter cannot be computed with.
///
/// ```
/// use lugbook::fastening::{Adapter, BadAdapter};
/// let folded = Adapter { lever: "12 in".parse()?, extension: "8 in".parse()?, angle_degrees: 180.0 };
/// assert_eq!(folded.factor(), Err(BadAdapter::FoldedBack));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, thiserror::Error)]
#[serde(rename_all = "kebab-case")]
pub enum BadAdapter {
    /// The angle is no angle between 0 and 180 degrees.
    #[error("no angle between 0 and 180 degrees")]
    Angle,
    /// The lever has no length.
    #[error("no lever")]
    Lever,
    /// What is left of the lever is under half of it: too far from what the formula was made for.
    #[error("the nut lies too far back along the handle")]
    FoldedBack,
}

impl Adapter {
    /// What the wrench's setting is, as a share of the torque at the nut:
    /// L / (L + E·cos a), L and E in one unit, a in degrees.
    ///
    /// Source: TM 1-1500-204-23-9 and TM 9-254 (US Army), whose worked answers
    /// stand in the tests.
    ///
    /// ```
    /// use lugbook::fastening::Adapter;
    /// // Square to the handle nothing changes.
    /// let square = Adapter { lever: "400 mm".parse()?, extension: "50 mm".parse()?, angle_degrees: 90.0 };
    /// assert!((square.factor().unwrap() - 1.0).abs() < 1e-12);
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    ///
    /// # Errors
    /// When there is no lever, no such angle, or under half the lever is left.
    pub fn factor(&self) -> Result<f64, BadAdapter> {
        if !(0.0..=180.0).contains(&self.angle_degrees) {
            return Err(BadAdapter::Angle);
        }
        let lever = self.lever.in_unit(SpanUnit::Millimetre);
        if lever <= 0.0 {
            return Err(BadAdapter::Lever);
        }
        // The cosine of 90 degrees in binary is not quite nothing.
        let cosine = if self.angle_degrees == 90.0 { 0.0 } else { self.angle_degrees.to_radians().cos() };
        let reach = lever + self.extension.in_unit(SpanUnit::Millimetre) * cosine;
        if reach < lever / 2.0 {
            return Err(BadAdapter::FoldedBack);
        }
        Ok(lever / reach)
    }
}
