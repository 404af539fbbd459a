use serde::Serialize;

use crate::fastener::{Bar, Gun};
use crate::measure::{Span, SpanUnit, Torque, TorqueUnit};

/// The largest advised marking of a torque-limiting bar, as a share of the target
/// (common practice, no source).
pub const BAR_SHARE: f64 = 0.85;

/// What a torque-limiting bar is good for on this wheel: the first tightening, never the last word.
///
/// ```
/// use lugbook::fastening::{Bar, advise};
/// let advice = advise(&"100 N.m".parse()?, &Bar::new("60 N.m".parse()?), None, None);
/// assert_eq!(advice.advised.to_string(), "85 N.m");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BarAdvice {
    /// The bar's marking.
    pub rating: Torque,
    /// The largest marking that is advised, in the target's unit.
    pub advised: Torque,
    /// Where the marking stands to the target.
    pub standing: BarStanding,
    /// What to know before using it.
    pub warnings: Vec<BarWarning>,
}

/// Where a bar's marking stands to the target.
///
/// ```
/// use lugbook::fastening::{Bar, BarStanding, advise};
/// let advice = advise(&"100 N.m".parse()?, &Bar::new("95 N.m".parse()?), None, None);
/// assert_eq!(advice.standing, BarStanding::Near);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum BarStanding {
    /// Clearly under it.
    Under,
    /// Over [`BAR_SHARE`] of it: nuts may click without moving.
    Near,
    /// At it or over it: nuts may click without moving, or be too tight already.
    AtOrOver,
}

/// What to know before using a bar.
///
/// ```
/// use lugbook::fastening::{Bar, BarWarning, advise};
/// let advice = advise(&"100 N.m".parse()?, &Bar::new("60 N.m".parse()?), None, None);
/// assert!(advice.warnings.contains(&BarWarning::GunNotKnown));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum BarWarning {
    /// So near the target that nuts may click without moving under the wrench.
    MayClickWithoutMoving,
    /// The gun's power is not known; the marking holds for some guns only.
    GunNotKnown,
    /// The gun is stronger than the bar was marked for.
    GunTooStrong {
        /// The gun's greatest torque.
        gun: Torque,
        /// What the bar is marked for.
        bar: Torque,
    },
    /// The bar's hex or the nut's is not known.
    HexNotKnown,
    /// The bar's socket does not fit the nut.
    HexDiffers {
        /// The bar's hex.
        bar: Span,
        /// The nut's hex.
        nut: Span,
    },
}

/// Sockets nearer than this are the same size (next sizes lie 0.4 mm apart and more).
const SAME_HEX_MM: f64 = 0.3;

/// What to say of a bar for a target (common practice, no source).
///
/// ```
/// use lugbook::fastening::{advise, Bar, BarStanding};
/// let advice = advise(&"135 N.m".parse()?, &Bar::new("110 N.m".parse()?), None, None);
/// assert_eq!(advice.standing, BarStanding::Under);
/// let advice = advise(&"135 N.m".parse()?, &Bar::new("100 ft.lb".parse()?), None, None);
/// assert_eq!(advice.standing, BarStanding::AtOrOver);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn advise(target: &Torque, bar: &Bar, gun: Option<&Gun>, nut: Option<Span>) -> BarAdvice {
    let wanted = target.in_unit(TorqueUnit::NewtonMetre);
    let rating = bar.rating.in_unit(TorqueUnit::NewtonMetre);
    let standing = if rating >= wanted {
        BarStanding::AtOrOver
    } else if rating > wanted * BAR_SHARE + 1e-9 {
        BarStanding::Near
    } else {
        BarStanding::Under
    };
    let mut warnings = Vec::new();
    if standing != BarStanding::Under {
        warnings.push(BarWarning::MayClickWithoutMoving);
    }
    match (gun.and_then(|gun| gun.greatest), bar.for_guns_up_to) {
        (Some(gun), Some(limit)) if gun > limit => warnings.push(BarWarning::GunTooStrong { gun, bar: limit }),
        (Some(_), Some(_)) => {}
        _ => warnings.push(BarWarning::GunNotKnown),
    }
    match (bar.hex, nut) {
        (Some(bar), Some(nut)) => {
            let apart = bar.in_unit(SpanUnit::Millimetre) - nut.in_unit(SpanUnit::Millimetre);
            if apart.abs() >= SAME_HEX_MM {
                warnings.push(BarWarning::HexDiffers { bar, nut });
            }
        }
        _ => warnings.push(BarWarning::HexNotKnown),
    }
    // A share under one of a valid torque is only invalid under the lowest torque there is.
    let advised = Torque::new(target.value() * BAR_SHARE, target.unit()).unwrap_or(*target);
    BarAdvice { rating: bar.rating, advised, standing, warnings }
}

/// The bar to take from a set: the one with the highest marking that stands clearly under the target.
///
/// ```
/// use lugbook::fastening::{choose, Bar};
/// let bars = [Bar::new("80 ft.lb".parse()?), Bar::new("100 ft.lb".parse()?)];
/// assert_eq!(choose(&"135 N.m".parse()?, &bars), bars.first());
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn choose<'a>(target: &Torque, bars: &'a [Bar]) -> Option<&'a Bar> {
    bars.iter()
        .filter(|bar| advise(target, bar, None, None).standing == BarStanding::Under)
        .max_by(|a, b| a.rating.partial_cmp(&b.rating).unwrap_or(std::cmp::Ordering::Equal))
}
