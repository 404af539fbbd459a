use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// Studs that have run in keep their direction, hence their side: advice.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].studded = true;
/// use lugbook::rotation::constraint::{Constraint, Studs, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Studs.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Advice));
/// ```
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
