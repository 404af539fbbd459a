use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A wheel whose seats the nuts or bolts at hand don't fit goes on no hub.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].wheel.seat_fits = Some(false);
/// use lugbook::rotation::constraint::{Constraint, Seat, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Seat.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
pub struct Seat;

impl Constraint for Seat {
    fn name(&self) -> Name {
        Name::Seat
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        to.position()?;
        if to.tire.wheel.seat_fits != Some(false) {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::SeatDoesNotFit,
            source: Source::GEOMETRY,
            lifted_by: Lift::FittingNuts,
        })
    }
}
