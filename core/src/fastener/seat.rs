use serde::{Deserialize, Serialize};

use crate::measure::{Span, SpanUnit};

/// The shape of the face that centers and holds: on the nut or bolt, or in the wheel.
///
/// ```
/// use lugbook::fastener::{Fit, Seat, Seating};
/// // A ball in a cone touches on a line and loosens: a stop.
/// assert!(matches!(Seating::of(Seat::Ball).fit(Seating::of(Seat::Cone)), Fit::Mismatch(_)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Seat {
    /// Conical (tapered, acorn).
    Cone,
    /// Ball (spherical, radius).
    Ball,
    /// Flat with a captive or turning flange.
    Flange,
    /// Flat on a loose washer.
    Washer,
    /// A straight shank into the wheel's hole, flat above.
    Shank,
}

impl Seat {
    /// All seats.
    pub const ALL: [Self; 5] = [Self::Cone, Self::Ball, Self::Flange, Self::Washer, Self::Shank];
}

/// A seat with what was measured of it.
///
/// ```
/// use lugbook::fastener::{Fit, Seat, Seating};
/// let cone = |degrees| Seating { cone_degrees: Some(degrees), ..Seating::of(Seat::Cone) };
/// assert_eq!(cone(60).fit(cone(60)), Fit::Fits);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Seating {
    /// The shape.
    pub seat: Seat,
    /// Full angle of a cone in degrees, commonly 60 or 90 (common practice, no source).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cone_degrees: Option<u16>,
    /// Radius of a ball.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ball_radius: Option<Span>,
}

/// Radii nearer than this are the same marking (they are named in whole millimetres).
const SAME_RADIUS_MM: f64 = 0.5;

/// Whether a nut or bolt sits right in a wheel.
///
/// ```
/// use lugbook::fastener::{Fit, Seat, Seating};
/// let cone = Seating::of(Seat::Cone);
/// assert_eq!(cone.fit(cone), Fit::NotKnown, "nobody measured the angle");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fit {
    /// Both faces are known and agree.
    Fits,
    /// A face or its angle or radius is not known: look before tightening.
    NotKnown,
    /// They do not fit: a stop. The nut loosens however it is tightened.
    Mismatch(Difference),
}

/// In what two seats differ.
///
/// ```
/// use lugbook::fastener::{Difference, Fit, Seat, Seating};
/// let cone = |degrees| Seating { cone_degrees: Some(degrees), ..Seating::of(Seat::Cone) };
/// assert_eq!(cone(60).fit(cone(90)), Fit::Mismatch(Difference::ConeAngle));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Difference {
    /// The shape.
    Shape,
    /// The cone's angle.
    ConeAngle,
    /// The ball's radius.
    BallRadius,
}

impl Seating {
    /// A seat of which only the shape is known.
    ///
    /// ```
    /// use lugbook::fastener::{Seat, Seating};
    /// assert_eq!(Seating::of(Seat::Ball).ball_radius, None);
    /// ```
    pub fn of(seat: Seat) -> Self {
        Self { seat, cone_degrees: None, ball_radius: None }
    }

    /// Whether this seat of a nut or bolt fits that of the wheel.
    ///
    /// Flange and washer both sit on a flat face. Cones need the same angle and
    /// balls the same radius; when one side's is unknown the answer is
    /// [`Fit::NotKnown`]. Geometry of the parts.
    ///
    /// ```
    /// use lugbook::fastener::{Difference, Fit, Seat, Seating};
    /// let ball = Seating::of(Seat::Ball);
    /// assert_eq!(ball.fit(Seating::of(Seat::Cone)), Fit::Mismatch(Difference::Shape));
    /// assert_eq!(Seating::of(Seat::Flange).fit(Seating::of(Seat::Washer)), Fit::Fits);
    /// ```
    pub fn fit(self, wheel: Self) -> Fit {
        match (self.seat, wheel.seat) {
            (Seat::Cone, Seat::Cone) => match (self.cone_degrees, wheel.cone_degrees) {
                (Some(own), Some(other)) if own == other => Fit::Fits,
                (Some(_), Some(_)) => Fit::Mismatch(Difference::ConeAngle),
                _ => Fit::NotKnown,
            },
            (Seat::Ball, Seat::Ball) => match (self.ball_radius, wheel.ball_radius) {
                (Some(own), Some(other)) => {
                    let apart = own.in_unit(SpanUnit::Millimetre) - other.in_unit(SpanUnit::Millimetre);
                    if apart.abs() < SAME_RADIUS_MM { Fit::Fits } else { Fit::Mismatch(Difference::BallRadius) }
                }
                _ => Fit::NotKnown,
            },
            (Seat::Flange | Seat::Washer, Seat::Flange | Seat::Washer) | (Seat::Shank, Seat::Shank) => Fit::Fits,
            _ => Fit::Mismatch(Difference::Shape),
        }
    }
}
