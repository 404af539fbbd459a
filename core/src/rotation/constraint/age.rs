use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A tire older than is used without a second thought: advice (common practice, no source).
pub struct Old;

/// From this age on it is told.
const YEARS: i16 = 10;

impl Constraint for Old {
    fn name(&self) -> Name {
        Name::Age
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        to.position()?;
        let age = to.tire.age.filter(|age| age.years >= YEARS)?;
        Some(Word {
            force: Force::Advice,
            reason: Why::Old { age },
            source: Source::PRACTICE,
            lifted_by: Lift::InspectOrReplace,
        })
    }
}
