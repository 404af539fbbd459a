use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// An axle takes the wheel offset it is made for, or else the one fitted there.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].wheel.offset_mm = Some(45.0);
/// request.axles.entry(2).or_default().offset_mm = Some(30.0);
/// use lugbook::rotation::constraint::{Constraint, Offset, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Offset.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
pub struct Offset;

/// Offsets are told in whole or half millimetres; less is the same offset.
const SAME_MM: f64 = 0.5;

impl Constraint for Offset {
    fn name(&self) -> Name {
        Name::Offset
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        to.position()?;
        if to.tire.at == to.to {
            return None;
        }
        let wheel_mm = to.tire.wheel.offset_mm?;
        let stated = to.axle_facts().and_then(|axle| axle.offset_mm);
        let axle_mm = stated.or_else(|| to.standing().and_then(|standing| standing.wheel.offset_mm))?;
        if (wheel_mm - axle_mm).abs() < SAME_MM {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::OffsetDiffers { wheel_mm, axle_mm },
            source: Source::GEOMETRY,
            lifted_by: Lift::LikeWheels,
        })
    }
}
