use crate::source::{Grade, Source};

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A tire with a rotation arrow keeps its side. Without an inside and an outside
/// it may be turned round on its rim when the request allows remounting.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].directional = Some(true);
/// use lugbook::rotation::constraint::{Constraint, Direction, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Direction.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
pub struct Direction;

/// A manual page that says so was read (grade O).
const KEEP_DIRECTION: Source = Source::read(Grade::Manual, "owner's manual, 1998: keep the direction of rotation");

impl Direction {
    /// Whether the move needs the tire turned round on its rim, and that may be done.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// request.tires[0].directional = Some(true);
    /// request.remount_allowed = true;
    /// use lugbook::rotation::constraint::{Direction, Move};
    /// use lugbook::vehicle::{Place, Side};
    /// let to = |side| Move { request: &request, tire: &request.tires[0], to: Place::single(2, side) };
    /// assert!(Direction::remounts(&to(Side::Right)) && !Direction::remounts(&to(Side::Left)));
    /// ```
    pub fn remounts(to: &Move<'_>) -> bool {
        to.request.remount_allowed && Self::crosses(to) == Some(true) && to.tire.asymmetric != Some(true)
    }

    /// Whether the arrow would point backward; `None` when it can't be told.
    fn crosses(to: &Move<'_>) -> Option<bool> {
        let Some(position) = to.position() else { return Some(false) };
        if to.tire.directional != Some(true) || to.tire.at == to.to {
            return Some(false);
        }
        to.tire.arrow_side().map(|side| side != position.side)
    }
}

impl Constraint for Direction {
    fn name(&self) -> Name {
        Name::Direction
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        let asymmetric = to.tire.asymmetric == Some(true);
        let (reason, lifted_by) = match (Self::crosses(to), to.tire.arrow_side()) {
            (Some(false), _) => return None,
            (Some(true), Some(made_for)) if asymmetric => {
                (Why::DirectionalAndAsymmetric { made_for }, Lift::AnotherTire)
            }
            (Some(true), Some(_)) if to.request.remount_allowed => return None,
            (Some(true), Some(made_for)) => (Why::AgainstArrow { made_for }, Lift::RemountOnRim),
            _ => (Why::ArrowNotSeen, Lift::LookAtArrow),
        };
        Some(Word { force: Force::Physical, reason, source: KEEP_DIRECTION, lifted_by })
    }
}
