//! Drawings in unit coordinates: the vehicle from above, a wheel's nuts, tread over distance.
//!
//! Widths are 1; heights are in the same measure. A shell scales them to its
//! screen and draws them with its own pens.

use serde::Serialize;

use crate::fastening;
use crate::procedure::Bay;
use crate::report::from_above::{Arrow as Drawn, BODY, FromAbove, SPARE, Spot, WHEEL, WIDTH};
use crate::vehicle::{Layout, Place};
use crate::words::{Quantity, Words};

/// A point.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Point {
    /// From the left, 0 to 1.
    pub x: f64,
    /// From the top.
    pub y: f64,
}

/// A wheel from above.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WheelShape {
    /// Its place's name.
    pub at: String,
    /// What a screen reader says.
    pub spoken: String,
    /// The mark on the tire that is there, or will be.
    pub mark: Option<String>,
    /// Its middle.
    pub middle: Point,
    /// Its width.
    pub width: f64,
    /// Its length; as its width for a spare, which lies flat.
    pub length: f64,
    /// Where its name stands.
    pub name_at: Point,
    /// Which end of the name stands there: `start`, `middle`, `end`.
    pub name_anchor: String,
}

/// An arrow from a wheel to the place it goes to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ArrowShape {
    /// From this place.
    pub from: String,
    /// To this one.
    pub to: String,
    /// Its start, the two points that pull at it, its head.
    pub points: Vec<Point>,
    /// The wheel hangs there already.
    pub done: bool,
}

/// A vehicle from above, its front at the top.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct VehicleDrawing {
    /// Its height, where its width is 1.
    pub height: f64,
    /// The body: its upper left corner.
    pub body_from: Point,
    /// The body: its lower right corner.
    pub body_to: Point,
    /// The height of each axle.
    pub axles: Vec<f64>,
    /// The wheels.
    pub wheels: Vec<WheelShape>,
    /// The moves.
    pub arrows: Vec<ArrowShape>,
    /// All of it in a sentence.
    pub spoken: String,
}

fn unit(value: f64) -> f64 {
    // A thousandth of a phone's width is less than a pixel.
    (value / WIDTH * 10_000.0).round() / 10_000.0
}

fn point((x, y): (f64, f64)) -> Point {
    Point { x: unit(x), y: unit(y) }
}

impl VehicleDrawing {
    /// The drawing of a vehicle with its moves.
    pub(super) fn of(
        layout: &Layout,
        moves: &[(Place, Place)],
        mark: &dyn Fn(Place) -> Option<String>,
        hung: &dyn Fn(Place) -> bool,
        spoken: String,
        words: &Words,
    ) -> Self {
        let drawn = FromAbove::of(layout);
        let name = |place| layout.name(place, words.speech().letters);
        let wheel = |spot: &Spot| {
            let (x, y, anchor) = spot.name();
            let spare = spot.place == Place::Spare;
            WheelShape {
                at: name(spot.place),
                spoken: words.place_spoken(layout, spot.place),
                mark: mark(spot.place),
                middle: point((spot.x, spot.y)),
                width: unit(if spare { SPARE * 2.0 } else { WHEEL.0 * 2.0 }),
                length: unit(if spare { SPARE * 2.0 } else { WHEEL.1 * 2.0 }),
                name_at: point((x, y)),
                name_anchor: anchor.code().to_owned(),
            }
        };
        let arrow = |(from, to): &(Place, Place)| {
            let Drawn { from: start, bend, to: end } = drawn.arrow(*from, *to)?;
            let third = |a: f64, b: f64, n: f64| a + (b - a) * n / 3.0;
            let straight = |n| (third(start.0, end.0, n), third(start.1, end.1, n));
            let (first, second) = bend.unwrap_or((straight(1.0), straight(2.0)));
            let points = [start, first, second, end].map(point).to_vec();
            Some(ArrowShape { from: name(*from), to: name(*to), points, done: hung(*to) })
        };
        Self {
            height: unit(drawn.height),
            body_from: point((BODY.1, BODY.0)),
            body_to: point((BODY.1 + BODY.2, drawn.tail)),
            axles: drawn.axles.iter().map(|axle| unit(*axle)).collect(),
            wheels: drawn.spots.iter().map(wheel).collect(),
            arrows: moves.iter().filter(|(from, to)| from != to).filter_map(arrow).collect(),
            spoken,
        }
    }
}

/// One nut of a wheel.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NutShape {
    /// Its number by clock position, 1 at the top, clockwise, seen from outside.
    pub nut: u8,
    /// Its turn in the order, from 1.
    pub turn: u32,
    /// Its middle.
    pub middle: Point,
    /// `done`, `next` or `waiting`.
    pub state: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// The nuts of a wheel, seen from outside.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NutCircle {
    /// The wheel.
    pub at: String,
    /// The nuts by clock position.
    pub nuts: Vec<NutShape>,
    /// The radius of a nut.
    pub radius: f64,
    /// What the wrench is set to, at the final pass and when it is known.
    pub target: Option<Quantity>,
    /// How many are done, in words.
    pub told: String,
}

/// How far a nut's middle is from the wheel's, where the drawing is 1 wide.
const REACH: f64 = 0.36;

impl NutCircle {
    pub(super) fn of(bay: &Bay<'_>, at: String, view: &crate::engine::NutView, words: &Words) -> Option<Self> {
        let studs = bay.studs()?;
        let order = fastening::order(studs)?;
        let round = |value: f64| (value * 10_000.0).round() / 10_000.0;
        let nut = |nut: u8| {
            let angle = std::f64::consts::TAU * (f64::from(nut) - 1.0) / f64::from(studs);
            let turn = order.iter().position(|known| *known == nut).map_or(1, |turn| turn.saturating_add(1));
            let state = match () {
                () if view.done.contains(&nut) => "done",
                () if view.next == Some(nut) => "next",
                () => "waiting",
            };
            let args = [("nut", nut.to_string().into()), ("turn", turn.to_string().into())];
            NutShape {
                nut,
                turn: u32::try_from(turn).unwrap_or(u32::MAX),
                middle: Point { x: round(0.5 + REACH * angle.sin()), y: round(0.5 - REACH * angle.cos()) },
                state: state.to_owned(),
                spoken: words.text(&format!("nut-spoken-{state}"), &args),
            }
        };
        let args = [("done", view.done.len().to_string().into()), ("of", studs.to_string().into())];
        // Neighbours never touch, and a finger still finds each.
        let apart = 2.0 * REACH * (std::f64::consts::PI / f64::from(studs)).sin();
        Some(Self {
            at,
            nuts: (1..=studs).map(nut).collect(),
            radius: round((apart * 0.45).min(0.11)),
            target: view.target.clone(),
            told: words.text("nuts-told", &args),
        })
    }
}
