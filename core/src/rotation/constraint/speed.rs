use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A speed symbol below what the vehicle needs: advice, and usual on winter tires.
pub struct Speed;

impl Constraint for Speed {
    fn name(&self) -> Name {
        Name::Speed
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        to.position()?;
        let (tire_kmh, needed_kmh) = (to.tire.max_kmh?, to.request.needed_speed_kmh?);
        if tire_kmh >= needed_kmh {
            return None;
        }
        Some(Word {
            force: Force::Advice,
            reason: Why::SlowerThanNeeded { tire_kmh, needed_kmh, winter: to.tire.winter },
            source: Source::PRACTICE,
            lifted_by: Lift::DriveSlower,
        })
    }
}
