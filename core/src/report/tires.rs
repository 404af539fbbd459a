//! What stands on each tire, and where each one went.

use maud::{Markup, html};

use super::Sheet;
use crate::due::Window;
use crate::entry::{Fact, SidewallSide};
use crate::ident::TireId;
use crate::procedure::Ask;
use crate::sidewall::{self, Marking, TinAge};
use crate::vehicle::Place;

impl Sheet<'_> {
    /// A tire's mark in this job, or that it has none.
    pub(super) fn mark(&self, tire: TireId) -> String {
        self.job.known_by(tire).map_or_else(|| self.t("card-not-marked"), str::to_owned)
    }

    /// Where a tire was hung in this job, when it was.
    pub(super) fn hung_at(&self, tire: TireId) -> Option<Place> {
        let hung = self.job.last(|fact| match fact {
            Fact::WheelOn { at, tire: hung, .. } if *hung == tire => Some(*at),
            _ => None,
        })?;
        let since_off = self.job.is_off(hung);
        (!since_off).then_some(hung)
    }

    /// Whether some tire was hung at a place in this job.
    pub(super) fn hung_there(&self, place: Place) -> bool {
        self.job.lines.iter().any(|line| matches!(line.fact, Fact::WheelOn { at, .. } if at == place))
    }

    /// Where each tire was, is wanted and hangs, with the drawing.
    pub(super) fn moves(&self) -> Markup {
        let Some((pattern, moves)) = self.job.plan() else {
            return self.without_moves();
        };
        let planned = self.job.planned();
        let rows: Vec<Vec<Markup>> = self
            .places()
            .into_iter()
            .filter_map(|place| Some((place, *planned.get(&place)?)))
            // A tire that carries no mark and stays is not spoken of.
            .filter(|(place, tire)| {
                let stays = moves.iter().all(|m| m.tire != *tire || m.to == *place);
                !stays || self.job.known_by(*tire).is_some()
            })
            .map(|(place, tire)| {
                let to = moves.iter().find(|m| m.tire == tire).map_or(place, |m| m.to);
                let wanted = if to == place { self.t("card-stays") } else { self.place(to) };
                let hung = match self.hung_at(tire) {
                    Some(at) => self.place(at),
                    None if to == place => self.t("card-stayed"),
                    None if to == Place::Spare && self.hung_there(place) => self.t("card-on-carrier"),
                    None => self.t("card-not-hung"),
                };
                [self.mark(tire), self.place(place), wanted, hung].map(|text| html! { (text) }).to_vec()
            })
            .collect();
        let pattern = self.words.pattern(pattern);
        let contents = html! {
            p { strong { (pattern) } }
            div class="beside" {
                (self.drawing())
                (self.table("card-moves-table", &["card-tire", "card-was-at", "card-planned", "card-hung"], &rows))
            }
        };
        self.section("moves", "card-moves", Some(contents))
    }

    /// The spare that a driver now drives on: its limits are what must be read first.
    pub(super) fn spare(&self) -> Markup {
        let seen = self.job.last(|fact| match fact {
            Fact::SpareSeen { nuts, limit, replace_by, .. } => Some((nuts, limit, replace_by)),
            _ => None,
        });
        let contents = seen.map(|(nuts, limit, replace_by)| {
            let unknown = || self.t("card-not-known");
            let replace = replace_by.map_or_else(unknown, |distance| {
                let on = self.job.odometer().and_then(|start| Window::by(distance).on_odometer(start));
                let distance = self.words.reading(&distance);
                match on {
                    Some(window) => {
                        let odometer = self.words.reading(&window.by);
                        let args = [("distance", distance.into()), ("odometer", odometer.into())];
                        self.say("card-spare-replace-by", &args)
                    }
                    None => distance,
                }
            });
            let limit = limit.map_or_else(unknown, |limit| self.words.reading(&limit));
            html! {
                dl class="particulars" {
                    div { dt { (self.t("card-spare-limit")) } dd { strong { (limit) } } }
                    div { dt { (self.t("card-spare-replace")) } dd { strong { (replace) } } }
                    div { dt { (self.t("card-spare-nuts")) } dd { (self.words.spare_nuts(*nuts)) } }
                }
            }
        });
        self.section("spare", "card-spare", contents)
    }

    /// Which wheels came off and went back, where a visit moves none elsewhere.
    fn without_moves(&self) -> Markup {
        if self.asks(&[Ask::Plan]) {
            return self.section("moves", "card-moves", Some(html! { p { (self.t("card-no-plan")) } }));
        }
        let off = self.places().into_iter().filter(|place| self.job.came_off(*place));
        let off = self.words.and_list(off.map(|place| self.place(place)));
        let id = if off.is_empty() { "card-none-off" } else { "card-off-and-on" };
        let contents = self.asks(&[Ask::WheelOff]).then(|| {
            html! {
                p { (self.say(id, &[("at", off.as_str().into())])) }
                @if !off.is_empty() {
                    (self.drawing())
                    p class="small" { (self.t("card-drawing-filled")) }
                }
            }
        });
        self.section("moves", "card-wheels", contents)
    }

    /// Size, service, date and age of each tire, as read.
    pub(super) fn sidewalls(&self) -> Markup {
        let mut rows: Vec<Vec<Markup>> = Vec::new();
        let coming = self.job.coming();
        for place in self.places() {
            for tire in [self.job.fitted.get(&place), coming.get(&place)].into_iter().flatten() {
                for side in [SidewallSide::Outer, SidewallSide::Inner] {
                    rows.extend(self.sidewall(place, *tire, side));
                }
            }
        }
        if rows.is_empty() && !self.asks(&[Ask::Sidewall]) {
            return html! {};
        }
        let more = rows.iter().any(|row| row.last().is_some_and(|cell| !cell.0.is_empty()));
        for cell in rows.iter_mut().filter_map(|row| row.last_mut()).filter(|cell| cell.0.is_empty()) {
            *cell = html! { (self.t("card-nothing-more")) };
        }
        let all = ["card-tire", "card-size", "card-service", "card-tin", "card-made", "card-age", "card-more"];
        // The last column only where it says something.
        let columns = if more { all.as_slice() } else { all.split_last().map_or(all.as_slice(), |(_, rest)| rest) };
        let contents = (!rows.is_empty()).then(|| self.table("card-sidewalls-table", columns, &rows));
        let contents = contents.unwrap_or_else(|| html! { p { (self.t("card-no-sidewalls")) } });
        self.section("sidewalls", "card-sidewalls", Some(contents))
    }

    fn sidewall(&self, place: Place, tire: TireId, side: SidewallSide) -> Option<Vec<Markup>> {
        let (text, looks) = self.job.last(|fact| match fact {
            Fact::SidewallRead { tire: read, side: on, text, looks, .. } if *read == tire && *on == side => {
                Some((text, looks))
            }
            _ => None,
        })?;
        let marking = sidewall::parse(text);
        let unknown = || self.t("card-not-read");
        let (made, age) = self.made(&marking);
        let named = self.tire_at(tire, place);
        let inner = side == SidewallSide::Inner;
        let cells = [
            marking.size.as_ref().map_or_else(unknown, ToString::to_string),
            marking.service.as_ref().map_or_else(unknown, ToString::to_string),
            marking.tin.as_ref().map_or_else(unknown, |tin| tin.text().to_owned()),
            made,
            age,
        ];
        let mut row = vec![html! {
            (named)
            @if inner { br; span class="small" { (self.t("sidewall-inner")) } }
        }];
        row.extend(cells.into_iter().map(|cell| html! { (cell) }));
        let words = self.words.list(marking.words.iter().map(ToString::to_string));
        let looks = self.words.tire_looks(looks);
        row.push(html! { (self.words.list([words, looks].into_iter().filter(|part| !part.is_empty()))) });
        Some(row)
    }

    /// When a tire was made and how old it was when the job was opened.
    pub(super) fn made(&self, marking: &Marking) -> (String, String) {
        let unknown = (self.t("card-not-known"), self.t("card-not-known"));
        let Some(tin) = &marking.tin else { return unknown };
        let made = match tin.made() {
            Some(made) => {
                let (week, year) = (made.week.week().to_string(), made.week.year().to_string());
                let from = made.from.to_string();
                self.say("card-week", &[("week", week.into()), ("year", year.into()), ("from", from.into())])
            }
            None => {
                let years = self.words.list(tin.ambiguous().iter().map(ToString::to_string));
                if years.is_empty() { unknown.0.clone() } else { self.say("card-years", &[("years", years.into())]) }
            }
        };
        let age = match tin.age_on(self.job.opened.day()) {
            TinAge::Known { age } => self.words.age(age),
            TinAge::Between { least, most } => self.say(
                "card-age-between",
                &[("least", self.words.age(least).into()), ("most", self.words.age(most).into())],
            ),
            _ => unknown.1,
        };
        (made, age)
    }
}
