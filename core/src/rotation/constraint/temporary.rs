use crate::source::{Grade, Source};

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A temporary spare takes no part, and nothing takes its place.
pub struct TemporarySpare;

const MANUALS: Source = Source::read(Grade::Manual, "owner's manuals: no dissimilar spare in a rotation");

impl Constraint for TemporarySpare {
    fn name(&self) -> Name {
        Name::TemporarySpare
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        if to.tire.at == to.to || !(to.tire.temporary || to.standing().is_some_and(|tire| tire.temporary)) {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::ForEmergencyOnly,
            source: MANUALS,
            lifted_by: Lift::FullSizeSpare,
        })
    }
}
