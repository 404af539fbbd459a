use crate::source::{Grade, Source};
use crate::vehicle::Class;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// What may not run on the steered wheels of trucks and buses. Never on a car.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Rear, tires);
/// request.class = Class::Bus;
/// request.tires[2].retread = true;
/// use lugbook::rotation::constraint::{Constraint, Move, SteerAxle};
/// use lugbook::vehicle::{Place, Side};
/// let to = Move { request: &request, tire: &request.tires[2], to: Place::single(1, Side::Left) };
/// assert_eq!(SteerAxle.of_move(&to).map(|word| word.force), Some(lugbook::rotation::Force::Rule));
/// // Never on a car.
/// let car = Request { class: Class::Car, ..request.clone() };
/// assert_eq!(SteerAxle.of_move(&Move { request: &car, ..to }), None);
/// ```
pub struct SteerAxle;

/// The bus rule's text of 1974 was read in a letter (grade P).
const BUS_FRONT: Source =
    Source::read(Grade::Rule, "49 CFR 393.75(d), quoted in an NHTSA letter of 1974: buses, front wheels");
/// Today's figure for trucks was read on a secondary page only.
const TRUCK_REGROOVED: Source = Source::read(Grade::Secondary, "49 CFR 393.75(e): regrooved, 2,232 kg and more");
/// The capacity from which the truck rule speaks, in kg (4,920 lb).
const REGROOVED_FROM_KG: f64 = 2232.0;

impl Constraint for SteerAxle {
    fn name(&self) -> Name {
        Name::SteerAxle
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        let class = to.request.class;
        if !to.axle()?.steer || !matches!(class, Class::Truck | Class::Bus) {
            return None;
        }
        if class == Class::Bus && (to.tire.retread || to.tire.regrooved) {
            let reason = if to.tire.regrooved { Why::RegroovedOnSteer } else { Why::RetreadOnSteer };
            return Some(Word { force: Force::Rule, reason, source: BUS_FRONT, lifted_by: Lift::NewTire });
        }
        let limit = to.axle_facts().and_then(|axle| axle.limit);
        if let (Some(limit), Some(depth_mm)) = (limit, to.tire.least_mm())
            && depth_mm < limit.mm()
        {
            let force = if limit.source.grade.may_refuse() { Force::Rule } else { Force::Advice };
            let reason = Why::TooShallowToSteer { depth_mm, limit_mm: limit.mm() };
            return Some(Word { force, reason, source: limit.source, lifted_by: Lift::DeeperTire });
        }
        if to.tire.regrooved && to.tire.load_kg.is_none_or(|kg| kg >= REGROOVED_FROM_KG) {
            return Some(Word {
                force: Force::Advice,
                reason: Why::RegroovedOnSteer,
                source: TRUCK_REGROOVED,
                lifted_by: Lift::NewTire,
            });
        }
        None
    }
}
