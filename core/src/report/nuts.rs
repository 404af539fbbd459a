//! Wheel nuts: a circle a wheel, with the order inside each nut.

use maud::{Markup, html};

use super::Sheet;
use crate::entry::{Kind, Pass, Shelf, Turned};
use crate::fastening;
use crate::logbook::NutSaid;
use crate::procedure::Ask;
use crate::vehicle::Place;

/// How far a nut has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Come {
    Nothing,
    Begun,
    Snug,
    NotProven,
    MovedAgain,
    Held,
    Final,
}

impl Come {
    const ALL: [Self; 7] =
        [Self::Final, Self::Held, Self::MovedAgain, Self::NotProven, Self::Snug, Self::Begun, Self::Nothing];

    fn code(self) -> &'static str {
        match self {
            Self::Nothing => "nothing",
            Self::Begun => "begun",
            Self::Snug => "snug",
            Self::NotProven => "not-proven",
            Self::MovedAgain => "moved-again",
            Self::Held => "held",
            Self::Final => "final",
        }
    }
}

impl Sheet<'_> {
    pub(super) fn nuts(&self) -> Markup {
        let places: Vec<Place> = self
            .places()
            .into_iter()
            .filter(|place| self.bay().map_or(*place != Place::Spare, |bay| bay.has_nuts(*place)))
            .filter(|place| {
                let said = |pass| !self.job.nuts(*place, pass).is_empty();
                self.job.came_off(*place) || said(Pass::Final) || said(Pass::Recheck)
            })
            .collect();
        if places.is_empty() && !self.asks(&[Ask::Final, Ask::Rechecked]) {
            return html! {};
        }
        let contents = html! {
            (self.specification())
            @if places.is_empty() { p { (self.t("card-no-nuts")) } }
            @else {
                div class="grid wheels" { @for place in &places { (self.wheel_nuts(*place)) } }
                (self.legend(&places))
            }
            (self.recheck())
        };
        self.section("nuts", "card-nuts", Some(contents))
    }

    fn studs(&self) -> Option<u8> {
        let shelf = self.book.on_shelf(&self.vehicle.model, Kind::Torque).map(|spec| &spec.shelf);
        let printed = match shelf {
            Some(Shelf::Torque { studs, .. }) => *studs,
            _ => None,
        };
        self.bay().and_then(|bay| bay.studs()).or(printed)
    }

    /// The order of a wheel's nuts: the maker's when printed, else the trade's.
    fn order(&self, studs: u8) -> Vec<u8> {
        let shelf = self.book.on_shelf(&self.vehicle.model, Kind::Torque).map(|spec| &spec.shelf);
        let printed = match shelf {
            Some(Shelf::Torque { spec, .. }) => spec.order.clone(),
            _ => None,
        };
        printed.or_else(|| fastening::order(studs)).unwrap_or_else(|| (1..=studs).collect())
    }

    fn come(&self, place: Place, nut: u8) -> Come {
        let said = |pass| self.job.nuts(place, pass).get(&nut).copied();
        let last = said(Pass::Final).map(|said| said.turned);
        match last {
            Some(Some(Turned::Moved)) => Come::Final,
            Some(_) => Come::NotProven,
            None => match said(Pass::Recheck).map(|said| said.turned) {
                Some(Some(Turned::Still)) => Come::Held,
                Some(_) => Come::MovedAgain,
                None => self.before_final(place, nut),
            },
        }
    }

    fn before_final(&self, place: Place, nut: u8) -> Come {
        let said = |pass| self.job.nuts(place, pass).contains_key(&nut);
        if said(Pass::Snug) {
            Come::Snug
        } else if said(Pass::Started) {
            Come::Begun
        } else {
            Come::Nothing
        }
    }

    fn wheel_nuts(&self, place: Place) -> Markup {
        let seen = [Pass::Final, Pass::Recheck, Pass::Loosened, Pass::Snug, Pass::Started, Pass::Cracked]
            .map(|pass| self.job.nuts(place, pass));
        let most = seen.iter().filter_map(|nuts| nuts.keys().next_back().copied()).max();
        let Some(studs) = self.studs().or(most).filter(|studs| *studs > 0) else {
            return html! { figure { figcaption { strong { (self.place(place)) } } p { (self.t("card-nuts-uncounted")) } } };
        };
        let come: Vec<Come> = (1..=studs).map(|nut| self.come(place, nut)).collect();
        let order = self.order(studs);
        let number = |nut: u8| order.iter().position(|at| *at == nut).map_or(usize::from(nut), |at| at + 1);
        let id = format!("nuts-{}", self.place(place).to_lowercase());
        let told = self.told(&come);
        html! {
            figure {
                figcaption { strong { (self.place(place)) } }
                svg class="nuts" role="img" viewBox="0 0 200 200" aria-labelledby={ (id) "-title " (id) "-told" } {
                    title id={ (id) "-title" } { (self.say("card-nuts-of", &[("at", self.place(place).into())])) }
                    desc id={ (id) "-told" } { (told) }
                    circle class="rim" cx="100" cy="100" r="92" {}
                    circle class="rim" cx="100" cy="100" r="24" {}
                    @for (nut, come) in (1..=studs).zip(&come) { (nut_shape(nut, studs, number(nut), *come)) }
                }
                p { (told) }
                @for line in self.final_lines(place) { p class="small" { (line) } }
            }
        }
    }

    /// How many nuts have come how far.
    fn told(&self, come: &[Come]) -> String {
        let counts = Come::ALL.into_iter().filter_map(|kind| {
            let count = come.iter().filter(|come| **come == kind).count();
            let id = format!("card-nuts-{}", kind.code());
            (count > 0).then(|| self.say(&id, &[("count", count.into()), ("of", come.len().into())]))
        });
        self.words.list(counts)
    }

    /// To which setting, and nut by nut or a wheel in order, as recorded.
    fn final_lines(&self, place: Place) -> Vec<String> {
        let mut lines = Vec::new();
        let finals = self.job.nuts(place, Pass::Final);
        let again = self.job.nuts(place, Pass::Recheck);
        let said: Vec<NutSaid> = if finals.is_empty() { &again } else { &finals }.values().copied().collect();
        if !said.is_empty() {
            let how = if said.iter().all(|said| said.in_order) {
                "card-nuts-in-order"
            } else if said.iter().any(|said| said.in_order) {
                "card-nuts-both-ways"
            } else {
                "card-nuts-one-by-one"
            };
            lines.push(self.t(how));
            let mut settings: Vec<String> =
                said.iter().filter_map(|said| said.setting).map(|setting| self.words.reading(&setting)).collect();
            settings.dedup();
            let settings = self.words.and_list(settings);
            let id = if settings.is_empty() { "card-setting-unknown" } else { "card-setting" };
            lines.push(self.say(id, &[("setting", settings.into())]));
        }
        if !again.is_empty() && !finals.is_empty() {
            let held = again.values().filter(|said| said.turned == Some(Turned::Still)).count();
            lines.push(self.say("card-rechecked", &[("held", held.into()), ("of", again.len().into())]));
        }
        lines
    }

    /// What the signs on these wheels mean.
    fn legend(&self, places: &[Place]) -> Markup {
        let studs = self.studs().unwrap_or_default();
        let shown: Vec<Come> = Come::ALL
            .into_iter()
            .filter(|kind| places.iter().any(|place| (1..=studs).any(|nut| self.come(*place, nut) == *kind)))
            .collect();
        html! {
            ul class="legend small" {
                @for come in shown {
                    li {
                        svg viewBox="0 0 40 40" class="legend-nut" aria-hidden="true" { (nut_at(20.0, 20.0, 1, come)) }
                        (self.t(&format!("card-legend-{}", come.code())))
                    }
                }
            }
            p class="small" { (self.t("card-order-how")) }
        }
    }
}

/// A nut at its clock position: 1 at the top, clockwise, seen from outside.
fn nut_shape(nut: u8, studs: u8, number: usize, come: Come) -> Markup {
    let turn = std::f64::consts::TAU * (f64::from(nut) - 1.0) / f64::from(studs);
    let reach = 60.0;
    let tenths = |value: f64| (value * 10.0).round() / 10.0;
    nut_at(tenths(100.0 + reach * turn.sin()), tenths(100.0 - reach * turn.cos()), number, come)
}

/// Solid when final, a ring with a bar when not proven, a thick ring when snug,
/// a thin one when begun, dashed when nothing was said.
fn nut_at(x: f64, y: f64, number: usize, come: Come) -> Markup {
    html! {
        circle class={ "nut nut-" (come.code()) } cx=(x) cy=(y) r="14" {}
        text class={ "nut-number nut-number-" (come.code()) } x=(x) y=(y + 5.0) text-anchor="middle" { (number) }
        @if matches!(come, Come::NotProven | Come::MovedAgain) { path class="nut-bar" d={ "M" (x - 17.0) " " (y + 17.0) " L" (x + 17.0) " " (y - 17.0) } {} }
    }
}
