//! A flat tire and a spare.

use crate::vehicle::{Drive, Layout, Place, Position, Row};

/// Which moves change a flat wheel for the spare.
///
/// The spare goes where the flat was. Where the manual wants no temporary spare
/// at a driven wheel (`good_wheel_forward`), the wheel on the same side of the
/// axle that rolls free goes to the driven axle, and the spare takes its place.
/// That is done on two-axle vehicles with single wheels and one driven axle; on
/// all others the spare goes where the flat was.
///
/// `None` when the place does not exist, holds no wheel on an axle, or there is no spare.
///
/// ```
/// use lugbook::lifting::moves_for_flat;
/// use lugbook::vehicle::{Drive, Layout, Place, Side};
/// let car = Layout::two_axles(true);
/// let moves = moves_for_flat(&car, Place::single(1, Side::Left), Drive::Front, true).unwrap();
/// let names: Vec<_> = moves.iter().map(|(from, to)| format!("{from} {to}")).collect();
/// assert_eq!(names, ["FL SP", "SP RL", "RL FL"]);
/// ```
pub fn moves_for_flat(
    layout: &Layout,
    flat: Place,
    drive: Drive,
    good_wheel_forward: bool,
) -> Option<Vec<(Place, Place)>> {
    let position = flat.position()?;
    if !layout.spare || !layout.has(flat) {
        return None;
    }
    let driven = match drive {
        Drive::Front => Some(1),
        Drive::Rear => Some(2),
        _ => None,
    };
    let two_axles = layout.axles.len() == 2 && position.row == Row::Single;
    if good_wheel_forward && two_axles && driven == Some(position.axle) {
        let other = Place::Wheel(Position { axle: if position.axle == 1 { 2 } else { 1 }, ..position });
        if layout.has(other) {
            return Some(vec![(flat, Place::Spare), (Place::Spare, other), (other, flat)]);
        }
    }
    Some(vec![(flat, Place::Spare), (Place::Spare, flat)])
}
