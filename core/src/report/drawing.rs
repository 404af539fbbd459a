//! The vehicle from above, front at the top, with an arrow for each tire that moves.
//!
//! Names stand outside the wheels and arrows run between them, so that no
//! arrow crosses a name.

use maud::{Markup, html};

use super::Sheet;
use crate::entry::Move;
use crate::vehicle::{Place, Position, Row, Side};

/// Width of the drawing, in its own units.
const WIDTH: f64 = 320.0;
/// Half a wheel's width and half its height.
const WHEEL: (f64, f64) = (13.0, 27.0);
/// The middle of the first axle.
const FIRST: f64 = 84.0;
/// From one axle to the next.
const AXLE: f64 = 122.0;

/// A wheel as it is drawn.
struct Spot {
    place: Place,
    x: f64,
    y: f64,
}

impl Spot {
    /// Which way the vehicle's middle lies.
    fn inward(&self) -> f64 {
        if self.x < WIDTH / 2.0 { 1.0 } else { -1.0 }
    }
}

fn spot(place: Place, axles: usize) -> Spot {
    match place {
        Place::Wheel(Position { axle, side, row }) => {
            let out = match row {
                Row::Single => 66.0,
                Row::Inner => 56.0,
                Row::Outer => 88.0,
            };
            let x = WIDTH / 2.0 + if side == Side::Left { -out } else { out };
            Spot { place, x, y: FIRST + AXLE * (f64::from(axle) - 1.0) }
        }
        Place::Spare => {
            let last = u32::try_from(axles.saturating_sub(1)).map_or(0.0, f64::from);
            Spot { place, x: WIDTH / 2.0, y: FIRST + AXLE * last + 92.0 }
        }
    }
}

impl Sheet<'_> {
    /// The drawing, with its title and a description in words.
    pub(super) fn drawing(&self) -> Markup {
        let layout = &self.vehicle.layout;
        let axles = layout.axles.len();
        let spots: Vec<Spot> = layout.places().map(|place| spot(place, axles)).collect();
        let moves = self.job.plan().map(|(_, moves)| moves).unwrap_or_default();
        let moving: Vec<&Move> = moves.iter().filter(|m| m.from != m.to).collect();
        let bottom = spots.iter().map(|spot| spot.y).fold(FIRST, f64::max) + 50.0;
        let tail = FIRST + AXLE * (u32::try_from(axles).map_or(1.0, f64::from) - 1.0) + 46.0;
        let told = self.words.moves(moves, &self.context());
        let off = self.places().into_iter().filter(|place| self.came_off_and_stays(*place));
        let off = self.words.and_list(off.map(|place| self.place(place)));
        let told = match (told.is_empty(), off.is_empty()) {
            (false, _) => told,
            (true, false) => self.say("card-off-and-on", &[("at", off.as_str().into())]),
            (true, true) => self.t("card-drawing-still"),
        };
        html! {
            svg class="drawing" role="img" viewBox={ "0 0 " (WIDTH) " " (bottom) } aria-labelledby="drawing-title drawing-told" {
                title id="drawing-title" { (self.t("card-drawing")) }
                desc id="drawing-told" { (told) }
                defs {
                    marker id="head" viewBox="0 0 10 10" refX="8" refY="5" markerWidth="5.5" markerHeight="5.5" orient="auto-start-reverse" {
                        path class="arrow-head" d="M0 0 L10 5 L0 10 Z" {}
                    }
                }
                text class="front" x=(WIDTH / 2.0) y="14" text-anchor="middle" { (self.t("card-front")) }
                path class="front-mark" d="M154 26 L160 19 L166 26" {}
                rect class="body" x="112" y="34" width="96" height=(tail - 34.0) rx="26" {}
                @for axle in 0..axles { (axle_line(u32::try_from(axle).map_or(0.0, f64::from))) }
                @for spot in &spots { (self.wheel(spot)) }
                @for m in &moving { (self.arrow(m, axles)) }
            }
        }
    }

    /// Whether a wheel came off in a visit that moves none elsewhere.
    fn came_off_and_stays(&self, place: Place) -> bool {
        self.job.plan().is_none() && self.job.came_off(place)
    }

    /// A wheel with its name, and the tire that ends there.
    fn wheel(&self, spot: &Spot) -> Markup {
        let tire = self.job.wanted_at(spot.place).or_else(|| self.job.fitted.get(&spot.place).copied());
        // A mark that only names the place says nothing more.
        let name = self.place(spot.place);
        let mark = tire.and_then(|tire| self.job.known_by(tire)).filter(|mark| *mark != name).map(str::to_owned);
        let duals = self.vehicle.layout.axles.iter().any(|axle| axle.dual);
        let (half_w, half_h) = WHEEL;
        let beside = (half_w + 8.0) * -spot.inward();
        let inner = matches!(spot.place, Place::Wheel(Position { row: Row::Inner, .. }));
        let spare = spot.place == Place::Spare;
        // An inner wheel's name stands above it; the outer wheel is in the way.
        let (x, y, anchor) = match (spare, inner, spot.inward() > 0.0) {
            (true, ..) => (spot.x + half_h + 8.0, spot.y - 2.0, "start"),
            (_, true, _) => (spot.x, spot.y - half_h - 8.0, "middle"),
            (_, _, true) => (spot.x + beside, spot.y - 4.0, "end"),
            _ => (spot.x + beside, spot.y - 4.0, "start"),
        };
        html! {
            @if spare {
                circle class="wheel" cx=(spot.x) cy=(spot.y) r="25" {}
            } @else {
                rect class=(if self.came_off_and_stays(spot.place) { "wheel worked" } else { "wheel" }) x=(spot.x - half_w) y=(spot.y - half_h) width=(half_w * 2.0) height=(half_h * 2.0) rx="6" {}
            }
            text class="name" x=(x) y=(y) text-anchor=(anchor) { (name) }
            @if let (false, Some(mark)) = (inner, mark) {
                text class="mark" x=(x) y=(y + 18.0) text-anchor=(anchor) {
                    @if duals { (mark) } @else { (self.say("tire-marked", &[("mark", mark.into())])) }
                }
            }
        }
    }

    /// An arrow from a wheel's inner edge to another's; dashed until the wheel hangs there.
    fn arrow(&self, m: &Move, axles: usize) -> Markup {
        let (from, to) = (spot(m.from, axles), spot(m.to, axles));
        let hung = self.hung_at(m.tire) == Some(m.to) || (m.to == Place::Spare && self.hung_there(m.from));
        let class = if hung { "arrow" } else { "arrow planned" };
        html! { path class=(class) d=(path(&from, &to)) marker-end="url(#head)" {} }
    }
}

/// An arrow leaves low on a wheel and arrives high, so that two opposite ones stay apart.
fn path(from: &Spot, to: &Spot) -> String {
    let edge = |spot: &Spot, down: f64| match spot.place {
        Place::Spare => (spot.x + down, spot.y - 29.0),
        Place::Wheel(Position { row: Row::Outer, .. }) => (spot.x, spot.y + down.signum() * (WHEEL.1 + 4.0)),
        Place::Wheel(_) => (spot.x + spot.inward() * (WHEEL.0 + 5.0), spot.y + down),
    };
    let row = |spot: &Spot| spot.place.row();
    if row(from) == Some(Row::Outer) && row(to) == Some(Row::Outer) && (from.y - to.y).abs() < 1.0 {
        // Below the wheels from outer to outer, the way back inside the way there: no inner name is crossed.
        let (inward, deep) = if from.x < to.x { (-5.0, 52.0) } else { (5.0, 42.0) };
        let y = from.y + WHEEL.1 + 4.0;
        let (x1, x2) = (from.x + inward * from.inward(), to.x + inward * to.inward());
        return format!("M{x1} {y} C{x1} {} {x2} {} {x2} {y}", y + deep, y + deep);
    }
    let (x1, y1) = edge(from, 11.0);
    let (x2, y2) = edge(to, -11.0);
    let same_side = (from.x - to.x).abs() < 1.0 && from.place != Place::Spare;
    if same_side {
        // Down the side close to the wheels, back up further in.
        let bow = if y2 > y1 { 20.0 } else { 52.0 };
        let x = x1 + from.inward() * bow;
        return format!("M{x1} {y1} C{x} {y1} {x} {y2} {x2} {y2}");
    }
    format!("M{x1} {y1} L{x2} {y2}")
}

fn axle_line(axle: f64) -> Markup {
    let y = FIRST + AXLE * axle;
    html! { path class="axle" d={ "M94 " (y) " H226" } {} }
}
