//! How wear lies across and around the tread, and what to check for it.
//!
//! Causes are the trade's common practice, no source: each is something to check,
//! never a verdict.

use serde::Serialize;

use crate::measure::{Depth, DepthUnit};

/// A pattern of wear.
///
/// ```
/// use lugbook::wear::TreadPattern;
/// assert!(TreadPattern::Even.checks().is_empty());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum TreadPattern {
    /// Alike all over, within what the gauge tells.
    Even,
    /// The middle is shallower than both shoulders.
    Center,
    /// Both shoulders are shallower than the middle.
    BothShoulders,
    /// The outer shoulder is the shallowest.
    OuterShoulder,
    /// The inner shoulder is the shallowest.
    InnerShoulder,
    /// One spot is well below the grooves beside it.
    Spot,
}

/// Something to check.
///
/// ```
/// use lugbook::wear::{Check, TreadPattern};
/// assert_eq!(TreadPattern::Center.checks(), [Check::PressureHigh]);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Check {
    /// Pressure set too high for the load.
    PressureHigh,
    /// Pressure too low for the load, or a slow leak.
    PressureLow,
    /// More load than the placard allows.
    Overload,
    /// Wheel alignment: camber and toe.
    Alignment,
    /// Hard cornering.
    Cornering,
    /// Worn suspension or steering joints.
    Suspension,
    /// Shock absorbers.
    Shocks,
    /// Wheel balance.
    Balance,
    /// A wheel that was locked under braking, or a sticking brake.
    Brakes,
    /// Whether rotations were left out.
    RotationInterval,
}

impl TreadPattern {
    /// The code in data; never translated.
    ///
    /// ```
    /// use lugbook::wear::TreadPattern;
    /// assert_eq!(TreadPattern::BothShoulders.code(), "both-shoulders");
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::Even => "even",
            Self::Center => "center",
            Self::BothShoulders => "both-shoulders",
            Self::OuterShoulder => "outer-shoulder",
            Self::InnerShoulder => "inner-shoulder",
            Self::Spot => "spot",
        }
    }

    /// What to check, likeliest first.
    ///
    /// ```
    /// use lugbook::wear::{Check, TreadPattern};
    /// assert_eq!(TreadPattern::InnerShoulder.checks()[0], Check::Alignment);
    /// ```
    pub fn checks(self) -> &'static [Check] {
        match self {
            Self::Even => &[],
            Self::Center => &[Check::PressureHigh],
            Self::BothShoulders => &[Check::PressureLow, Check::Overload, Check::Cornering],
            Self::OuterShoulder => &[Check::Alignment, Check::Cornering, Check::Suspension],
            Self::InnerShoulder => &[Check::Alignment, Check::Suspension],
            Self::Spot => &[Check::Balance, Check::Shocks, Check::Brakes],
        }
    }
}

impl Check {
    /// The code in data; never translated.
    ///
    /// ```
    /// use lugbook::wear::Check;
    /// assert_eq!(Check::RotationInterval.code(), "rotation-interval");
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::PressureHigh => "pressure-high",
            Self::PressureLow => "pressure-low",
            Self::Overload => "overload",
            Self::Alignment => "alignment",
            Self::Cornering => "cornering",
            Self::Suspension => "suspension",
            Self::Shocks => "shocks",
            Self::Balance => "balance",
            Self::Brakes => "brakes",
            Self::RotationInterval => "rotation-interval",
        }
    }
}

/// From this difference on a pattern is told, in mm (a choice of this design; two
/// steps of the gauge when that is more).
const TELL_MM: f64 = 1.0;

/// The patterns of a tire by its grooves, from the outer one inward, and the
/// lowest spot seen; `None` with fewer than two grooves and no spot. A groove is
/// compared where its neighbours are, so that a tire can show two patterns.
///
/// ```
/// use lugbook::measure::{Depth, DepthUnit};
/// use lugbook::wear::{patterns, TreadPattern};
/// let mm = |v| Depth::new(v, DepthUnit::Millimetre).unwrap();
/// assert_eq!(patterns(&[mm(6.0), mm(4.5), mm(6.1)], None, 0.1), Some(vec![TreadPattern::Center]));
/// assert_eq!(patterns(&[mm(6.0)], None, 0.1), None);
/// ```
pub fn patterns(grooves: &[Depth], lowest: Option<Depth>, step_mm: f64) -> Option<Vec<TreadPattern>> {
    // A tolerance, so that two whole steps of 1/32 in count as two.
    let tell = TELL_MM.max(2.0 * step_mm) - 1e-6;
    let depths: Vec<f64> = grooves.iter().map(|d| d.in_unit(DepthUnit::Millimetre)).collect();
    let mut found = Vec::new();
    let across = across(&depths, tell);
    found.extend(across);
    let least = depths.iter().copied().fold(f64::INFINITY, f64::min);
    let spot = lowest.map(|d| d.in_unit(DepthUnit::Millimetre)).filter(|_| !depths.is_empty());
    if spot.is_some_and(|spot| least - spot >= tell) {
        found.push(TreadPattern::Spot);
    }
    if depths.len() < 2 && spot.is_none() {
        return None;
    }
    if found.is_empty() {
        found.push(TreadPattern::Even);
    }
    Some(found)
}

fn across(depths: &[f64], tell: f64) -> Option<TreadPattern> {
    let (outer, inner) = (*depths.first()?, *depths.last()?);
    if depths.len() < 2 {
        return None;
    }
    let middle = depths.iter().skip(1).take(depths.len() - 2);
    let least_middle = middle.clone().copied().fold(f64::INFINITY, f64::min);
    let most_middle = middle.copied().fold(f64::NEG_INFINITY, f64::max);
    if depths.len() > 2 {
        if outer.min(inner) - least_middle >= tell {
            return Some(TreadPattern::Center);
        }
        if most_middle - outer.max(inner) >= tell {
            return Some(TreadPattern::BothShoulders);
        }
    }
    let beside = |edge: f64| depths.iter().copied().fold(f64::NEG_INFINITY, f64::max) - edge >= tell;
    if outer < inner && beside(outer) {
        return Some(TreadPattern::OuterShoulder);
    }
    (inner < outer && beside(inner)).then_some(TreadPattern::InnerShoulder)
}
