use serde::Serialize;

use crate::measure::{Load, LoadUnit};
use crate::vehicle::Class;

/// Whether one person may lift a wheel alone.
///
/// ```
/// use lugbook::limits::{HeavyWheel, heavy_wheel};
/// use lugbook::vehicle::Class;
/// // Nothing is known of it: ask before it is lifted.
/// assert_eq!(heavy_wheel(Class::Car, None, None, None), HeavyWheel::NotKnown);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum HeavyWheel {
    /// One person.
    One,
    /// Two people, one at each side, or a wheel lift; off and on.
    Two(Heaviness),
    /// Neither mass nor size is known: ask before it is lifted.
    NotKnown,
}

/// Why two people.
///
/// ```
/// use lugbook::limits::{Heaviness, HeavyWheel, heavy_wheel};
/// use lugbook::vehicle::Class;
/// assert_eq!(heavy_wheel(Class::Bus, None, None, None), HeavyWheel::Two(Heaviness::Class));
/// let mass = "60 lb".parse().ok();
/// assert_eq!(heavy_wheel(Class::Car, mass, None, None), HeavyWheel::Two(Heaviness::Mass));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Heaviness {
    /// By its mass.
    Mass,
    /// By the class of vehicle.
    Class,
    /// By its size.
    Size,
}

/// Heavier than this takes two people, kg (about 50 lb; from memory of the lifting
/// constant in general workplace guidance).
const ALONE_KG: f64 = 23.0;
/// From this rim on a wheel takes two people, inches (common practice, no source).
const RIM_IN: f64 = 20.0;
/// Over this overall diameter a wheel takes two people, mm: 30 in (common practice, no source).
const DIAMETER_MM: f64 = 762.0;

/// Whether a wheel takes two people, by mass when known, else by class and size
/// (common practice, no source).
///
/// `rim_in` in inches, `diameter_mm` overall.
///
/// ```
/// use lugbook::limits::{heavy_wheel, Heaviness, HeavyWheel};
/// use lugbook::vehicle::Class;
/// assert_eq!(heavy_wheel(Class::LightTruck, None, Some(17.0), Some(840.0)), HeavyWheel::Two(Heaviness::Size));
/// assert_eq!(heavy_wheel(Class::Car, None, None, None), HeavyWheel::NotKnown);
/// ```
pub fn heavy_wheel(class: Class, mass: Option<Load>, rim_in: Option<f64>, diameter_mm: Option<f64>) -> HeavyWheel {
    if let Some(mass) = mass {
        let heavy = mass.in_unit(LoadUnit::Kilogram) > ALONE_KG;
        return if heavy { HeavyWheel::Two(Heaviness::Mass) } else { HeavyWheel::One };
    }
    if matches!(class, Class::Truck | Class::Bus | Class::Trailer) {
        return HeavyWheel::Two(Heaviness::Class);
    }
    if rim_in.is_some_and(|rim| rim >= RIM_IN) || diameter_mm.is_some_and(|diameter| diameter > DIAMETER_MM) {
        return HeavyWheel::Two(Heaviness::Size);
    }
    if rim_in.is_none() && diameter_mm.is_none() { HeavyWheel::NotKnown } else { HeavyWheel::One }
}
