use crate::measure::LoadUnit;
use crate::source::Source;
use crate::vehicle::{Class, Row};

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A tire carries its share of the axle's rating: mechanics, so too little refuses.
/// A figure that rests on a secondary table of load indexes only warns.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// request.tires[0].load_kg = Some(500.0);
/// request.layout.axles[1].rating = "1200 kg".parse().ok();
/// use lugbook::rotation::constraint::{Constraint, Load, Move};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[0], to: Place::single(2, Side::Right) };
/// assert_eq!(Load.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Physical));
/// ```
pub struct Load;

/// A passenger size on a truck, van or trailer counts for less (from memory: FMVSS 110).
const PASSENGER_ON_TRUCK: f64 = 1.1;

impl Constraint for Load {
    fn name(&self) -> Name {
        Name::Load
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        let position = to.position()?;
        let axle = to.axle()?;
        let rating = axle.rating?.in_unit(LoadUnit::Kilogram);
        let needs_kg = rating / if axle.dual { 4.0 } else { 2.0 };
        let single = to.tire.load_kg?;
        let carries_kg = if position.row == Row::Single { single } else { to.tire.load_dual_kg.unwrap_or(single) };
        if carries_kg < needs_kg {
            let source = to.tire.load_source;
            return Some(Word {
                force: if source.grade.may_refuse() { Force::Physical } else { Force::Advice },
                reason: Why::CarriesTooLittle { carries_kg, needs_kg },
                source,
                lifted_by: Lift::StrongerTire,
            });
        }
        let derated = carries_kg / PASSENGER_ON_TRUCK;
        let light = matches!(to.request.class, Class::LightTruck | Class::LightTrailer);
        if light && to.tire.passenger == Some(true) && derated < needs_kg {
            return Some(Word {
                force: Force::Advice,
                reason: Why::PassengerSizeOnTruck { carries_kg: derated, needs_kg },
                source: Source::MEMORY,
                lifted_by: Lift::StrongerTire,
            });
        }
        let (placard_kpa, reference_kpa) = (to.axle_facts()?.placard_kpa?, to.tire.reference_kpa?);
        // Load falls with pressure, in proportion at the least favorable; only a warning, the law was not read.
        if placard_kpa < reference_kpa && carries_kg * placard_kpa / reference_kpa < needs_kg {
            return Some(Word {
                force: Force::Advice,
                reason: Why::PlacardBelowReference { placard_kpa, reference_kpa },
                source: Source::MEMORY,
                lifted_by: Lift::MakersWord,
            });
        }
        None
    }
}
