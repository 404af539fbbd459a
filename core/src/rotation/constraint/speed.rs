use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A speed symbol below what the vehicle needs: advice, and usual on winter tires.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].max_kmh = Some(190.0);
/// request.needed_speed_kmh = Some(210.0);
/// use lugbook::rotation::constraint::{Constraint, Speed, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Speed.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Advice));
/// ```
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
