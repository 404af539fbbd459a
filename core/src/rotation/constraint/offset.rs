use crate::source::Source;

use super::{Constraint, Force, Lift, Move, Name, Why, Word};

/// An axle takes the wheel offset it is made for, or else the one fitted there.
pub struct Offset;

/// Offsets are told in whole or half millimetres; less is the same offset.
const SAME_MM: f64 = 0.5;

impl Constraint for Offset {
    fn name(&self) -> Name {
        Name::Offset
    }

    fn of_move(&self, to: &Move<'_>) -> Option<Word> {
        to.position()?;
        if to.tire.at == to.to {
            return None;
        }
        let wheel_mm = to.tire.wheel.offset_mm?;
        let stated = to.axle_facts().and_then(|axle| axle.offset_mm);
        let axle_mm = stated.or_else(|| to.standing().and_then(|standing| standing.wheel.offset_mm))?;
        if (wheel_mm - axle_mm).abs() < SAME_MM {
            return None;
        }
        Some(Word {
            force: Force::Physical,
            reason: Why::OffsetDiffers { wheel_mm, axle_mm },
            source: Source::GEOMETRY,
            lifted_by: Lift::LikeWheels,
        })
    }
}
