use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A tire older than is used without a second thought: advice (common practice, no source).
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].age = Some(lugbook::calendar::Age { years: 12, months: 0 });
/// use lugbook::rotation::constraint::{Constraint, Old, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Old.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Advice));
/// ```
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
