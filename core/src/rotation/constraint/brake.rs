use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// A wheel clears the brakes of its class and of lower ones.
pub struct BrakeClearance;

impl Constraint for BrakeClearance {
    fn name(&self) -> Name {
        Name::BrakeClearance
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        if to.tire.at == to.to || to.tire.wheel.brake_class? >= to.axle_facts()?.brake_class? {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::WheelTouchesBrake,
            source: Source::GEOMETRY,
            lifted_by: Lift::LikeWheels,
        })
    }
}
