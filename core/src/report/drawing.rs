//! The vehicle from above, with an arrow for each tire that moves.

use maud::{Markup, html};

use super::Sheet;
use super::from_above::{AXLE_ENDS, Arrow, BODY, FromAbove, SPARE, Spot, WHEEL, WIDTH};
use crate::entry::Move;
use crate::vehicle::{Place, Position, Row};

impl Sheet<'_> {
    /// The drawing, with its title and a description in words.
    pub(super) fn drawing(&self) -> Markup {
        let layout = &self.vehicle.layout;
        let drawn = FromAbove::of(layout);
        let moves = self.job.plan().map(|(_, moves)| moves).unwrap_or_default();
        let moving: Vec<&Move> = moves.iter().filter(|m| m.from != m.to).collect();
        let told = self.words.moves(moves, &self.context());
        let off = self.places().into_iter().filter(|place| self.came_off_and_stays(*place));
        let off = self.words.and_list(off.map(|place| self.place(place)));
        let told = match (told.is_empty(), off.is_empty()) {
            (false, _) => told,
            (true, false) => self.say("card-off-and-on", &[("at", off.as_str().into())]),
            (true, true) => self.t("card-drawing-still"),
        };
        html! {
            svg class="drawing" role="img" viewBox={ "0 0 " (WIDTH) " " (drawn.height) } aria-labelledby="drawing-title drawing-told" {
                title id="drawing-title" { (self.t("card-drawing")) }
                desc id="drawing-told" { (told) }
                defs {
                    marker id="head" viewBox="0 0 10 10" refX="8" refY="5" markerWidth="5.5" markerHeight="5.5" orient="auto-start-reverse" {
                        path class="arrow-head" d="M0 0 L10 5 L0 10 Z" {}
                    }
                }
                text class="front" x=(WIDTH / 2.0) y="14" text-anchor="middle" { (self.t("card-front")) }
                path class="front-mark" d="M154 26 L160 19 L166 26" {}
                rect class="body" x=(BODY.1) y=(BODY.0) width=(BODY.2) height=(drawn.tail - BODY.0) rx="26" {}
                @for axle in &drawn.axles { path class="axle" d={ "M" (AXLE_ENDS.0) " " (axle) " H" (AXLE_ENDS.1) } {} }
                @for spot in &drawn.spots { (self.wheel(spot)) }
                @for m in &moving { (self.arrow(m, &drawn)) }
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
        let inner = matches!(spot.place, Place::Wheel(Position { row: Row::Inner, .. }));
        let (x, y, anchor) = spot.name();
        let anchor = anchor.code();
        html! {
            @if spot.place == Place::Spare {
                circle class="wheel" cx=(spot.x) cy=(spot.y) r=(SPARE) {}
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

    /// Dashed until the wheel hangs there.
    fn arrow(&self, m: &Move, drawn: &FromAbove) -> Markup {
        let hung = self.hung_at(m.tire) == Some(m.to) || (m.to == Place::Spare && self.hung_there(m.from));
        let class = if hung { "arrow" } else { "arrow planned" };
        html! {
            @if let Some(arrow) = drawn.arrow(m.from, m.to) { path class=(class) d=(path(&arrow)) marker-end="url(#head)" {} }
        }
    }
}

fn path(arrow: &Arrow) -> String {
    let ((x1, y1), (x2, y2)) = (arrow.from, arrow.to);
    match arrow.bend {
        Some(((ax, ay), (bx, by))) => format!("M{x1} {y1} C{ax} {ay} {bx} {by} {x2} {y2}"),
        None => format!("M{x1} {y1} L{x2} {y2}"),
    }
}
