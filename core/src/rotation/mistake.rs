//! Requests that can't be planned, and what is wrong with them.

use serde::Serialize;

use crate::vehicle::Place;

use super::facts::{Request, TireFacts};

/// The most axles a request may have.
pub const MOST_AXLES: usize = 6;
/// The most visits a request may plan.
pub const MOST_VISITS: u8 = 8;
/// The most grooves a tire may have readings of.
pub const MOST_GROOVES: usize = 6;

/// What is wrong with a request: the first thing found, front to rear.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires.clear();
/// assert_eq!(plan(&request), Err(lugbook::rotation::Mistake::NoWheels));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, thiserror::Error)]
#[serde(rename_all = "kebab-case", tag = "mistake")]
pub enum Mistake {
    /// There is no wheel.
    #[error("no wheels")]
    NoWheels,
    /// More axles than a vehicle with its trailer has.
    #[error("{axles} axles, at most {most}")]
    TooManyAxles {
        /// How many were given.
        axles: usize,
        /// How many may be.
        most: usize,
    },
    /// The number of visits is outside 1 to 8.
    #[error("{visits} visits, 1 to {most}")]
    Horizon {
        /// What was given.
        visits: u32,
        /// The most that may be.
        most: u8,
    },
    /// Two tires are said to be at one place.
    #[error("two tires at {at}")]
    TwoAt {
        /// The place.
        at: Place,
    },
    /// The vehicle has no such place.
    #[error("no place {at}")]
    NoSuchPlace {
        /// The place.
        at: Place,
    },
    /// A wheel position without a tire.
    #[error("no tire at {at}")]
    NothingAt {
        /// The place.
        at: Place,
    },
    /// A figure that is no number, negative, or beyond what can be.
    #[error("{what:?} is out of range")]
    Figure {
        /// Where, when it belongs to a tire.
        at: Option<Place>,
        /// Which figure.
        what: Figure,
    },
    /// Two statements about one tire that can't both be true.
    #[error("{what:?} at {at}")]
    Contradiction {
        /// The tire.
        at: Place,
        /// The statements.
        what: Contradiction,
    },
    /// More grooves than a tire has.
    #[error("{grooves} grooves at {at}, at most {most}")]
    Grooves {
        /// The tire.
        at: Place,
        /// How many were given.
        grooves: usize,
        /// How many may be.
        most: usize,
    },
    /// The maker's pattern does not exist on such a vehicle.
    #[error("{pattern} does not fit the axles")]
    PatternDoesNotFit {
        /// The pattern's code.
        pattern: &'static str,
    },
}

/// A figure of a request.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].max_kmh = Some(f64::NAN);
/// use lugbook::rotation::{Figure, Mistake};
/// assert!(matches!(plan(&request), Err(Mistake::Figure { what: Figure::Speed, .. })));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Figure {
    /// The distance between visits.
    Interval,
    /// The distance to the next visit.
    NextVisit,
    /// The wear rate: 0 to 20 mm per 1,000 km.
    Rate,
    /// The overall diameter: 200 to 2,500 mm.
    Diameter,
    /// The load: above 0, up to 50,000 kg.
    Load,
    /// The speed: above 0, up to 600 km/h.
    Speed,
    /// The wheel offset: -300 to 300 mm.
    Offset,
    /// A pressure: above 0, up to 1,500 kPa.
    Pressure,
    /// The uncertainty or the price of remounting: 0 to 50 mm.
    Margin,
}

/// Statements that can't both be true.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].made_for = Some(lugbook::vehicle::Side::Left);
/// use lugbook::rotation::{Contradiction, Mistake};
/// assert!(matches!(plan(&request), Err(Mistake::Contradiction { what: Contradiction::SideWithoutArrow, .. })));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Contradiction {
    /// A tire without an arrow is said to suit one side.
    SideWithoutArrow,
    /// A temporary spare with studs, retread or new grooves.
    TemporaryButWorked,
    /// Carries more as one of a pair than alone.
    DualAboveSingle,
    /// A spare on its carrier with a wear rate other than none.
    SpareWears,
}

fn within(value: Option<f64>, low: f64, high: f64) -> bool {
    value.is_none_or(|v| v.is_finite() && (low..=high).contains(&v))
}

/// Looks a request over.
///
/// # Errors
/// The first thing that keeps it from being planned.
pub(super) fn look_over(request: &Request) -> Result<(), Mistake> {
    let axles = request.layout.axles.len();
    if axles == 0 || request.tires.is_empty() {
        return Err(Mistake::NoWheels);
    }
    if axles > MOST_AXLES {
        return Err(Mistake::TooManyAxles { axles, most: MOST_AXLES });
    }
    if !(1..=MOST_VISITS).contains(&request.horizon) {
        return Err(Mistake::Horizon { visits: request.horizon.into(), most: MOST_VISITS });
    }
    let figure = |what| Mistake::Figure { at: None, what };
    if !within(Some(request.uncertainty.depth_mm), 0.0, 50.0) || !within(Some(request.remount_price_mm), 0.0, 50.0) {
        return Err(figure(Figure::Margin));
    }
    if !within(request.needed_speed_kmh, 1.0, 600.0) {
        return Err(figure(Figure::Speed));
    }
    for facts in request.axles.values() {
        if !within(facts.offset_mm, -300.0, 300.0) {
            return Err(figure(Figure::Offset));
        }
        if !within(facts.placard_kpa, 1.0, 1500.0) {
            return Err(figure(Figure::Pressure));
        }
    }
    if let Some(pattern) = request.makers_pattern
        && pattern.moves(&request.layout).is_none()
    {
        return Err(Mistake::PatternDoesNotFit { pattern: pattern.code() });
    }
    let mut seen: Vec<Place> = Vec::new();
    for tire in &request.tires {
        if !request.layout.has(tire.at) {
            return Err(Mistake::NoSuchPlace { at: tire.at });
        }
        if seen.contains(&tire.at) {
            return Err(Mistake::TwoAt { at: tire.at });
        }
        seen.push(tire.at);
        look_at(tire)?;
    }
    match request.layout.positions().map(Place::Wheel).find(|place| !seen.contains(place)) {
        Some(at) => Err(Mistake::NothingAt { at }),
        None => Ok(()),
    }
}

fn look_at(tire: &TireFacts) -> Result<(), Mistake> {
    let at = tire.at;
    if tire.depths.len() > MOST_GROOVES {
        return Err(Mistake::Grooves { at, grooves: tire.depths.len(), most: MOST_GROOVES });
    }
    let checks = [
        (Figure::Rate, within(tire.rate.map(|r| r.mm_per_1000_km), 0.0, 20.0)),
        (Figure::Rate, within(tire.rate.map(|r| r.half_width), 0.0, 20.0)),
        (Figure::Diameter, within(tire.overall_diameter_mm, 200.0, 2500.0)),
        (Figure::Load, within(tire.load_kg, 1.0, 50_000.0) && within(tire.load_dual_kg, 1.0, 50_000.0)),
        (Figure::Speed, within(tire.max_kmh, 1.0, 600.0)),
        (Figure::Offset, within(tire.wheel.offset_mm, -300.0, 300.0)),
        (Figure::Pressure, within(tire.reference_kpa, 1.0, 1500.0)),
    ];
    if let Some((what, _)) = checks.into_iter().find(|(_, fine)| !fine) {
        return Err(Mistake::Figure { at: Some(at), what });
    }
    let against = |what| Err(Mistake::Contradiction { at, what });
    if tire.made_for.is_some() && tire.directional != Some(true) {
        return against(Contradiction::SideWithoutArrow);
    }
    if tire.temporary && (tire.studded || tire.retread || tire.regrooved) {
        return against(Contradiction::TemporaryButWorked);
    }
    if matches!((tire.load_kg, tire.load_dual_kg), (Some(single), Some(dual)) if dual > single) {
        return against(Contradiction::DualAboveSingle);
    }
    if at == Place::Spare && tire.rate.is_some_and(|r| r.mm_per_1000_km != 0.0) {
        return against(Contradiction::SpareWears);
    }
    Ok(())
}
