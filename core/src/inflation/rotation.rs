use serde::Serialize;

use crate::limits::Placard;
use crate::measure::Pressure;
use crate::vehicle::Place;

/// What a move from one place to another asks of the pressure.
///
/// ```
/// use lugbook::inflation::after_rotation;
/// use lugbook::limits::Placard;
/// use lugbook::vehicle::{Place, Side};
/// let back = (Place::single(1, Side::Left), Place::single(2, Side::Left));
/// let change = &after_rotation(&Placard::default(), &[back])[0];
/// assert_eq!((change.was, change.now), (None, None));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AxleChange {
    /// Where the tire was.
    pub from: Place,
    /// Where it goes.
    pub to: Place,
    /// The placard's cold pressure where it was.
    pub was: Option<Pressure>,
    /// The placard's cold pressure where it goes.
    pub now: Option<Pressure>,
    /// What to do.
    pub act: Act,
}

/// What to do with the pressure of a tire that moved.
///
/// ```
/// use lugbook::inflation::{Act, after_rotation};
/// use lugbook::limits::Placard;
/// use lugbook::vehicle::{Place, Side};
/// let back = (Place::single(1, Side::Left), Place::single(2, Side::Left));
/// assert_eq!(after_rotation(&Placard::default(), &[back])[0].act, Act::LookAtPlacard);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Act {
    /// The axles have the same placard.
    Keep,
    /// Raise it to the new axle's.
    Raise,
    /// Lower it to the new axle's, cold only.
    LowerWhenCold,
    /// The placard of the new place is not known: look at it.
    LookAtPlacard,
    /// The placard of the old place is not known: set it to the new one's.
    Set,
}

/// What the moves of a rotation ask of the pressures: the placard goes by axle, not by tire.
///
/// ```
/// use lugbook::inflation::{after_rotation, Act};
/// use lugbook::limits::{Placard, PlacardTire};
/// use lugbook::vehicle::{Place, Side};
/// let tire = |cold| Some(PlacardTire { cold, full_load: None, size: None });
/// let placard = Placard { axles: vec![tire("35 psi".parse()?), tire("38 psi".parse()?)], ..Placard::default() };
/// let back = (Place::single(1, Side::Left), Place::single(2, Side::Left));
/// assert_eq!(after_rotation(&placard, &[back])[0].act, Act::Raise);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn after_rotation(placard: &Placard, moves: &[(Place, Place)]) -> Vec<AxleChange> {
    let cold = |place| placard.at(place).map(|tire| tire.cold);
    moves
        .iter()
        .map(|&(from, to)| {
            let (was, now) = (cold(from), cold(to));
            let act = match (was, now) {
                (_, None) => Act::LookAtPlacard,
                (None, Some(_)) => Act::Set,
                (Some(was), Some(now)) if was < now => Act::Raise,
                (Some(was), Some(now)) if was > now => Act::LowerWhenCold,
                _ => Act::Keep,
            };
            AxleChange { from, to, was, now, act }
        })
        .collect()
}
