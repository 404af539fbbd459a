//! The constraints: each one small type with its name, force, reason and source.
//!
//! A constraint looks at one tire going to one place, or at the two tires of a
//! dual pair. It answers nothing where it knows nothing: unknown refuses nothing.

mod age;
mod brake;
mod direction;
mod dual;
mod load;
mod offset;
mod seat;
mod size;
mod speed;
mod steer;
mod studs;
mod temporary;

pub use age::Old;
pub use brake::BrakeClearance;
pub use direction::Direction;
pub use dual::{DUAL_MATCH, DualMatch, DualRow};
pub use load::Load;
pub use offset::Offset;
pub use seat::Seat;
pub use size::Size;
pub use speed::Speed;
pub use steer::SteerAxle;
pub use studs::Studs;
pub use temporary::TemporarySpare;

use crate::source::Source;
use crate::vehicle::{Axle, Place, Position};

use super::answer::{Because, Force, Lift, Name, Why};
use super::facts::{AxleFacts, Request, TireFacts};

/// One tire going to one place, with all that is known of both.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Front, tires);
/// use lugbook::rotation::constraint::Move;
/// use lugbook::vehicle::{Place, Side};
/// let rear = Place::single(2, Side::Right);
/// let to = Move { request: &request, tire: &request.tires[0], to: rear };
/// assert_eq!(to.position(), rear.position());
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Move<'a> {
    /// The whole request.
    pub request: &'a Request,
    /// The tire.
    pub tire: &'a TireFacts,
    /// Where it would go.
    pub to: Place,
}

/// What a constraint says, before it is put beside its tire and place.
///
/// ```
/// use lugbook::rotation::constraint::{Constraint, Move, Studs};
/// use lugbook::rotation::{Force, Lift, Request, TireFacts};
/// use lugbook::vehicle::{Class, Drive, Layout, Place, Side};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].studded = true;
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// let word = Studs.of_move(&to).unwrap();
/// assert_eq!((word.force, word.lifted_by), (Force::Advice, Lift::KeepSide));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Word {
    /// How strongly.
    pub force: Force,
    /// What was seen.
    pub reason: Why,
    /// Where the rule comes from.
    pub source: Source,
    /// What would lift it.
    pub lifted_by: Lift,
}

/// A rule about who may go where.
///
/// ```
/// use lugbook::rotation::constraint::ALL;
/// assert!(ALL.iter().any(|constraint| constraint.name().code() == "dual-match"));
/// ```
pub trait Constraint: Sync {
    /// Its name.
    ///
    /// ```
    /// use lugbook::rotation::constraint::{Constraint, Studs};
    /// assert_eq!(Studs.name().code(), "studs");
    /// ```
    fn name(&self) -> Name;

    /// Its word on one tire going to one place; nothing where it knows nothing.
    ///
    /// ```
    /// use lugbook::rotation::constraint::{ALL, Constraint, Move};
    /// use lugbook::rotation::{Request, TireFacts};
    /// use lugbook::vehicle::{Class, Drive, Layout, Place, Side};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
    /// assert!(ALL.iter().all(|constraint| constraint.of_move(&to).is_none()));
    /// ```
    fn of_move(&self, _: &Move<'_>) -> Option<Word> {
        None
    }

    /// Its word on two tires side by side on one end of an axle.
    ///
    /// ```
    /// use lugbook::rotation::TireFacts;
    /// use lugbook::rotation::constraint::{Constraint, Studs};
    /// use lugbook::vehicle::Place;
    /// let tire = TireFacts::at(Place::parse("2LO").unwrap());
    /// // Only dual matching looks at pairs.
    /// assert_eq!(Studs.of_pair(&tire, &tire), None);
    /// ```
    fn of_pair(&self, _outer: &TireFacts, _inner: &TireFacts) -> Option<Word> {
        None
    }
}

/// Every constraint, in the order in which they are told.
pub const ALL: [&dyn Constraint; 12] = [
    &Direction,
    &Studs,
    &Size,
    &Offset,
    &BrakeClearance,
    &Seat,
    &TemporarySpare,
    &SteerAxle,
    &DualMatch,
    &Load,
    &Speed,
    &Old,
];

impl<'a> Move<'a> {
    /// The wheel position it goes to, unless that is the spare carrier.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// use lugbook::rotation::constraint::Move;
    /// use lugbook::vehicle::{Place, Side};
    /// let rear = Place::single(2, Side::Right);
    /// let to = Move { request: &request, tire: &request.tires[0], to: rear };
    /// assert_eq!(to.position().map(|position| position.axle), Some(2));
    /// ```
    pub fn position(&self) -> Option<Position> {
        self.to.position()
    }

    /// The axle it goes to.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// use lugbook::rotation::constraint::Move;
    /// use lugbook::vehicle::{Place, Side};
    /// let rear = Place::single(2, Side::Right);
    /// let to = Move { request: &request, tire: &request.tires[0], to: rear };
    /// assert_eq!(to.axle().map(|axle| axle.steer), Some(false));
    /// ```
    pub fn axle(&self) -> Option<&'a Axle> {
        let number = self.position()?.axle;
        self.request.layout.axles.get(usize::from(number).checked_sub(1)?)
    }

    /// What is known of that axle.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// use lugbook::rotation::constraint::Move;
    /// use lugbook::vehicle::{Place, Side};
    /// let rear = Place::single(2, Side::Right);
    /// let to = Move { request: &request, tire: &request.tires[0], to: rear };
    /// assert!(to.axle_facts().is_none());
    /// ```
    pub fn axle_facts(&self) -> Option<&'a AxleFacts> {
        self.request.axles.get(&self.position()?.axle)
    }

    /// The tire that stands there now.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// use lugbook::rotation::constraint::Move;
    /// use lugbook::vehicle::{Place, Side};
    /// let rear = Place::single(2, Side::Right);
    /// let to = Move { request: &request, tire: &request.tires[0], to: rear };
    /// assert_eq!(to.standing().map(|tire| tire.at), Some(rear));
    /// ```
    pub fn standing(&self) -> Option<&'a TireFacts> {
        self.request.tires.iter().find(|tire| tire.at == self.to)
    }

    /// Everything the constraints say about it.
    ///
    /// ```
    /// use lugbook::rotation::{Request, TireFacts, plan};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// # let layout = Layout::two_axles(false);
    /// # let tires = layout.places().map(TireFacts::at).collect();
    /// let request = Request::new(layout, Class::Car, Drive::Front, tires);
    /// use lugbook::rotation::constraint::Move;
    /// use lugbook::vehicle::{Place, Side};
    /// let rear = Place::single(2, Side::Right);
    /// let to = Move { request: &request, tire: &request.tires[0], to: rear };
    /// // Nothing is known of this tire, so nothing speaks against the move.
    /// assert!(to.words().is_empty());
    /// ```
    pub fn words(&self) -> Vec<Because> {
        ALL.iter()
            .filter_map(|constraint| {
                let word = constraint.of_move(self)?;
                Some(word.about(constraint.name(), self.tire.at, self.to))
            })
            .collect()
    }
}

impl Word {
    /// Puts the word beside its constraint, tire and place.
    pub(super) fn about(self, constraint: Name, tire: Place, to: Place) -> Because {
        Because {
            constraint,
            force: self.force,
            reason: self.reason,
            source: self.source,
            tire,
            to,
            lifted_by: self.lifted_by,
        }
    }
}
