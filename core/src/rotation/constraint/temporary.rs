use crate::source::{Grade, Source};

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A temporary spare takes no part, and nothing takes its place.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].temporary = true;
/// use lugbook::rotation::constraint::{Constraint, TemporarySpare, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(TemporarySpare.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
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
