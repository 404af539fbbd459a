use crate::source::{Grade, Source};

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A place takes the size its axle is made for, or else the size that is fitted
/// there; the spare's carrier takes the size of the spare. A dissimilar spare
/// so stays out (manuals: no dissimilar spare in a rotation).
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].size = Some("205/55R16".to_owned());
/// request.axles.entry(2).or_default().size = Some("225/50R16".to_owned());
/// use lugbook::rotation::constraint::{Constraint, Size, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Size.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
pub struct Size;

const MANUALS: Source = Source::read(Grade::Manual, "owner's manuals: side-to-side when front and rear sizes differ");

impl Constraint for Size {
    fn name(&self) -> Name {
        Name::Size
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        if to.tire.at == to.to {
            return None;
        }
        let tire = to.tire.size.as_ref()?;
        let stated = to.axle_facts().and_then(|axle| axle.size.as_ref());
        let axle = stated.or_else(|| to.standing().and_then(|standing| standing.size.as_ref()))?;
        if tire == axle {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::SizeDiffers { tire: tire.clone(), axle: axle.clone() },
            source: MANUALS,
            lifted_by: Lift::SameSizeAllRound,
        })
    }
}
