use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A wheel whose seats the nuts or bolts at hand don't fit goes on no hub.
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
