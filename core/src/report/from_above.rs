//! Where a vehicle's wheels, names and arrows stand when it is drawn from above, front at the top.
//!
//! Names stand outside the wheels and arrows run between them, so that no
//! arrow crosses a name. The card draws it, and so does a phone.

use crate::vehicle::{Layout, Place, Position, Row, Side};

/// Width of the drawing, in its own units.
pub(crate) const WIDTH: f64 = 320.0;
/// Half a wheel's width and half its height.
pub(crate) const WHEEL: (f64, f64) = (13.0, 27.0);
/// The radius of a spare, which lies flat.
pub(crate) const SPARE: f64 = 25.0;
/// The middle of the first axle.
const FIRST: f64 = 84.0;
/// From one axle to the next.
const AXLE: f64 = 122.0;
/// The top of the body, its left edge and its width.
pub(crate) const BODY: (f64, f64, f64) = (34.0, 112.0, 96.0);
/// From where to where an axle reaches.
pub(crate) const AXLE_ENDS: (f64, f64) = (94.0, 226.0);

/// Which end of a name stands at its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Anchor {
    /// As SVG has it, and screens do.
    pub(crate) fn code(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A wheel as it is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Spot {
    /// Where it is on the vehicle.
    pub place: Place,
    /// Its middle.
    pub x: f64,
    /// Its middle.
    pub y: f64,
}

impl Spot {
    fn of(place: Place, axles: usize) -> Self {
        match place {
            Place::Wheel(Position { axle, side, row }) => {
                let out = match row {
                    Row::Single => 66.0,
                    Row::Inner => 56.0,
                    Row::Outer => 88.0,
                };
                let x = WIDTH / 2.0 + if side == Side::Left { -out } else { out };
                Self { place, x, y: axle_at(f64::from(axle) - 1.0) }
            }
            Place::Spare => Self { place, x: WIDTH / 2.0, y: axle_at(last(axles)) + 92.0 },
        }
    }

    /// Which way the vehicle's middle lies.
    fn inward(&self) -> f64 {
        if self.x < WIDTH / 2.0 { 1.0 } else { -1.0 }
    }

    fn is_inner(&self) -> bool {
        matches!(self.place, Place::Wheel(Position { row: Row::Inner, .. }))
    }

    /// Where its name stands: outside the wheel, and above an inner one, where the outer one is in the way.
    pub(crate) fn name(&self) -> (f64, f64, Anchor) {
        let (half_w, half_h) = WHEEL;
        let beside = (half_w + 8.0) * -self.inward();
        match (self.place == Place::Spare, self.is_inner(), self.inward() > 0.0) {
            (true, ..) => (self.x + half_h + 8.0, self.y - 2.0, Anchor::Start),
            (_, true, _) => (self.x, self.y - half_h - 8.0, Anchor::Middle),
            (_, _, true) => (self.x + beside, self.y - 4.0, Anchor::End),
            _ => (self.x + beside, self.y - 4.0, Anchor::Start),
        }
    }
}

/// An arrow: its ends, and where it bends between them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Arrow {
    /// From.
    pub from: (f64, f64),
    /// The two points that pull at a curve; none for a straight line.
    pub bend: Option<((f64, f64), (f64, f64))>,
    /// To: the head.
    pub to: (f64, f64),
}

/// A vehicle's drawing.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct FromAbove {
    /// Its wheels and its spare.
    pub spots: Vec<Spot>,
    /// The middle of each axle.
    pub axles: Vec<f64>,
    /// The lower end of the body.
    pub tail: f64,
    /// The height of all of it.
    pub height: f64,
}

fn axle_at(axle: f64) -> f64 {
    FIRST + AXLE * axle
}

fn last(axles: usize) -> f64 {
    u32::try_from(axles.saturating_sub(1)).map_or(0.0, f64::from)
}

impl FromAbove {
    /// The drawing of a vehicle.
    pub(crate) fn of(layout: &Layout) -> Self {
        let axles = layout.axles.len();
        let spots: Vec<Spot> = layout.places().map(|place| Spot::of(place, axles)).collect();
        Self {
            height: spots.iter().map(|spot| spot.y).fold(FIRST, f64::max) + 50.0,
            tail: axle_at(last(axles)) + 46.0,
            axles: (0..axles)
                .filter_map(|axle| u32::try_from(axle).ok())
                .map(|axle| axle_at(f64::from(axle)))
                .collect(),
            spots,
        }
    }

    /// An arrow from a wheel's inner edge to another's: it leaves low and arrives
    /// high, so that two opposite ones stay apart.
    pub(crate) fn arrow(&self, from: Place, to: Place) -> Option<Arrow> {
        let spot = |place| self.spots.iter().find(|spot| spot.place == place);
        let (from, to) = (spot(from)?, spot(to)?);
        let edge = |spot: &Spot, down: f64| match spot.place {
            Place::Spare => (spot.x + down, spot.y - SPARE - 4.0),
            Place::Wheel(Position { row: Row::Outer, .. }) => (spot.x, spot.y + down.signum() * (WHEEL.1 + 4.0)),
            Place::Wheel(_) => (spot.x + spot.inward() * (WHEEL.0 + 5.0), spot.y + down),
        };
        let row = |spot: &Spot| spot.place.row();
        if row(from) == Some(Row::Outer) && row(to) == Some(Row::Outer) && (from.y - to.y).abs() < 1.0 {
            // Below the wheels from outer to outer, the way back inside the way there: no inner name is crossed.
            let (inward, deep) = if from.x < to.x { (-5.0, 52.0) } else { (5.0, 42.0) };
            let y = from.y + WHEEL.1 + 4.0;
            let (x1, x2) = (from.x + inward * from.inward(), to.x + inward * to.inward());
            return Some(Arrow { from: (x1, y), bend: Some(((x1, y + deep), (x2, y + deep))), to: (x2, y) });
        }
        let (start, end) = (edge(from, 11.0), edge(to, -11.0));
        let same_side = (from.x - to.x).abs() < 1.0 && from.place != Place::Spare;
        let bend = same_side.then(|| {
            // Down the side close to the wheels, back up further in.
            let bow = if end.1 > start.1 { 20.0 } else { 52.0 };
            let x = start.0 + from.inward() * bow;
            ((x, start.1), (x, end.1))
        });
        Some(Arrow { from: start, bend, to: end })
    }
}
