use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// Studs that have run in keep their direction, hence their side: advice.
pub struct Studs;

impl Constraint for Studs {
    fn name(&self) -> Name {
        Name::Studs
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        let from = to.tire.at.position()?.side;
        if !to.tire.studded || from == to.position()?.side {
            return None;
        }
        Some(Word {
            force: Force::Advice,
            reason: Why::StudsChangeSide,
            source: Source::PRACTICE,
            lifted_by: Lift::KeepSide,
        })
    }
}
