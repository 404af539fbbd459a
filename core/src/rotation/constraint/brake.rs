use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A wheel clears the brakes of its class and of lower ones.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].wheel.brake_class = Some(1);
/// request.axles.entry(2).or_default().brake_class = Some(2);
/// use lugbook::rotation::constraint::{Constraint, BrakeClearance, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(BrakeClearance.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
pub struct BrakeClearance;

impl Constraint for BrakeClearance {
    fn name(&self) -> Name {
        Name::BrakeClearance
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        if to.tire.at == to.to || to.tire.wheel.brake_class? >= to.axle_facts()?.brake_class? {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::WheelTouchesBrake,
            source: Source::GEOMETRY,
            lifted_by: Lift::LikeWheels,
        })
    }
}
