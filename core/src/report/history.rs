//! A vehicle's history: every visit, who was where, and how its tread wears.
//!
//! Like the card it is one HTML file that needs nothing from outside. Practice
//! jobs are kept out of it.

mod chart;

use std::collections::{BTreeMap, BTreeSet};

use maud::{Markup, html};

use super::tread::limit_at;
use super::{section, shell, table};
use crate::ident::{PersonId, TireId};
use crate::inspect::inspect;
use crate::logbook::{Book, Job, Vehicle};
use crate::measure::{Depth, Distance, DistanceUnit};
use crate::procedure::Procedure;
use crate::vehicle::Place;
use crate::wear::{Answer, Visits};
use crate::words::{Arg, Say, Speech, Units, Words};

/// A reading of a tire's tread at a visit.
struct Reading<'a> {
    tire: TireId,
    seen: &'a crate::logbook::DepthSeen,
}

/// Everything a history is made from.
struct History<'a> {
    book: &'a Book,
    vehicle: &'a Vehicle,
    procedures: &'a [Procedure],
    words: &'a Words,
    /// For what was computed, not read: in the units of the vehicle's own odometer unless others are chosen.
    computed: Words,
    visits: Vec<&'a Job>,
    readings: Vec<Reading<'a>>,
}

/// The history of a vehicle: one self-contained HTML file.
pub fn history(book: &Book, vehicle: &Vehicle, procedures: &[Procedure], words: &Words) -> String {
    let visits: Vec<&Job> = book.jobs.iter().filter(|job| job.vehicle == vehicle.id && !job.practice).collect();
    let mut readings = Vec::new();
    for (tire, life) in &book.tires {
        for seen in life.depths.iter().filter(|seen| visits.iter().any(|job| job.id == seen.job)) {
            readings.push(Reading { tire: *tire, seen });
        }
    }
    readings.sort_by_key(|reading| (reading.seen.when, reading.seen.at));
    let miles = visits.iter().rev().find_map(|job| job.odometer()).is_none_or(|read| read.unit() == DistanceUnit::Mile);
    let units = match words.speech().units {
        Units::AsRead if miles => Units::Us,
        Units::AsRead => Units::Metric,
        chosen => chosen,
    };
    let computed = Words::new(Speech { units, ..words.speech() });
    History { book, vehicle, procedures, words, computed, visits, readings }.page().into_string()
}

impl History<'_> {
    fn page(&self) -> Markup {
        let title = self.say("history-title", &[("name", self.vehicle.name.as_str().into())]);
        let contents = html! {
            (self.head())
            (self.wear())
            (self.list_of_visits())
            (self.whereabouts())
            (self.list_of_readings())
            footer {
                p { (self.t("history-forecast-how")) }
                p { (self.t("calendar-deference")) }
                p class="small" { (self.t("card-times")) }
            }
        };
        shell(self.words, &title, &contents)
    }

    fn t(&self, id: &str) -> String {
        self.words.text(id, &[])
    }

    fn say(&self, id: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.words.text(id, args)
    }

    fn place(&self, place: Place) -> String {
        self.words.place(&self.vehicle.layout, Some(place))
    }

    /// A tire's mark in a job, else the last one it had, else the end of its id.
    fn mark(&self, tire: TireId, job: Option<&Job>) -> String {
        let newest = || self.visits.iter().rev().find_map(|job| job.mark_of(tire));
        job.and_then(|job| job.mark_of(tire)).or_else(newest).map_or_else(|| tire.short(), str::to_owned)
    }

    fn head(&self) -> Markup {
        let last = self.visits.iter().rev().find_map(|job| Some((job, job.odometer()?)));
        let odometer = match last {
            Some((job, odometer)) => self.say(
                "history-odometer-on",
                &[("odometer", self.words.reading(&odometer).into()), ("day", job.opened.day().to_string().into())],
            ),
            None => self.t("card-not-recorded"),
        };
        let rows = [
            ("card-model", self.vehicle.model.clone()),
            ("card-class", self.words.class(self.vehicle.class)),
            ("card-plate", self.vehicle.plate.clone().unwrap_or_else(|| self.t("card-not-recorded"))),
            ("card-odometer", odometer),
            ("history-visits", self.visits.len().to_string()),
        ];
        html! {
            header {
                p class="kicker" { (self.t("history-kicker")) }
                h1 { (self.vehicle.name) }
                dl class="particulars" { @for (name, value) in &rows { div { dt { (self.t(name)) } dd { (value) } } } }
                @if self.visits.is_empty() { p class="notice" { (self.t("history-no-visit")) } }
            }
        }
    }

    fn limit(&self, axle: u8) -> Option<Depth> {
        let mut places = self.vehicle.layout.positions().filter(|position| position.axle == axle);
        limit_at(self.vehicle, self.book.limits.rules(), Place::Wheel(places.next()?))
    }

    /// Charts with their forecast, a sentence a tire, and when to look again.
    fn wear(&self) -> Markup {
        let told = Visits::of(self.book, self.vehicle.id);
        let left_out = self.readings.len().saturating_sub(told.counted());
        let contents = html! {
            @match told.answer(self.vehicle, |axle| self.limit(axle)) {
                Some(answer) => (self.forecast(&told, &answer)),
                None => p { (self.t("history-no-tread")) },
            }
            @if left_out > 0 { p class="small" { (self.say("history-left-out", &[("count", left_out.into())])) } }
        };
        section(self.words, "wear", "history-wear", Some(contents))
    }

    fn forecast(&self, told: &Visits, answer: &Answer) -> Markup {
        html! {
            p class="recheck" { (answer.next_visit.say(&self.computed)) }
            @if let Some(unknown) = answer.unknown { p { (unknown.say(&self.computed)) } }
            (self.charts(told, answer))
            @if !answer.slipped.is_empty() {
                h3 { (self.t("history-slipped")) }
                ul { @for slip in &answer.slipped { li { (self.computed.slipped_reading(slip, &self.vehicle.layout)) } } }
            }
        }
    }

    fn list_of_visits(&self) -> Markup {
        let names = ["history-day", "card-odometer", "card-work", "history-state", "history-hands", "history-worst"];
        let names: Vec<String> = names.iter().map(|id| self.t(id)).collect();
        let rows: Vec<Vec<Markup>> = self.visits.iter().map(|job| self.visit(job)).collect();
        let contents = (!rows.is_empty()).then(|| table(&self.t("history-visits-table"), &names, &rows));
        section(self.words, "visits", "history-visits", contents)
    }

    fn visit(&self, job: &Job) -> Vec<Markup> {
        let procedure = self.procedures.iter().find(|procedure| procedure.id == job.procedure);
        let work = procedure.map_or_else(|| job.procedure.clone(), |procedure| self.words.title(procedure));
        let odometer = self.odometer(job.odometer());
        let mut hands: Vec<PersonId> = Vec::new();
        for line in &job.lines {
            if !hands.contains(&line.hands) {
                hands.push(line.hands);
            }
        }
        let hands = self.words.list(hands.into_iter().map(|person| self.words.person(self.book, person)));
        let worst = inspect(self.book, job, job.rules()).iter().map(|found| found.state).max();
        let worst = worst.map_or_else(|| self.t("history-nothing-found"), |state| self.words.state(state));
        let day = self.say(
            "history-visit",
            &[("day", job.opened.day().to_string().into()), ("number", job.number.to_string().into())],
        );
        [day, odometer, work, self.words.status(job.status), hands, worst].map(|text| html! { (text) }).to_vec()
    }

    fn odometer(&self, read: Option<Distance>) -> String {
        read.map_or_else(|| self.t("card-not-recorded"), |read| self.words.reading(&read))
    }

    /// Which tire came in at each place at each visit, and where each is now.
    fn whereabouts(&self) -> Markup {
        let mut places: BTreeSet<Place> = self.vehicle.layout.places().collect();
        places.extend(self.visits.iter().flat_map(|job| job.fitted.keys().copied()));
        let names: Vec<String> =
            std::iter::once(self.t("history-day")).chain(places.iter().map(|place| self.place(*place))).collect();
        let row = |first: String, job: Option<&Job>, fitted: &BTreeMap<Place, TireId>| {
            let tires = places.iter().map(|place| match fitted.get(place) {
                Some(tire) => html! { (self.mark(*tire, job)) },
                None => html! { "–" },
            });
            std::iter::once(html! { (first) }).chain(tires).collect::<Vec<_>>()
        };
        let mut rows: Vec<Vec<Markup>> =
            self.visits.iter().map(|job| row(job.opened.day().to_string(), Some(job), &job.fitted)).collect();
        let contents = (!rows.is_empty()).then(|| {
            rows.push(row(self.t("history-now"), None, &self.vehicle.fitted));
            table(&self.t("history-places-table"), &names, &rows)
        });
        section(self.words, "places", "history-places", contents)
    }

    /// Every tread reading, by tire.
    fn list_of_readings(&self) -> Markup {
        let names = ["card-tire", "history-day", "card-odometer", "card-at", "history-grooves", "card-lowest"];
        let names: Vec<String> = names.iter().map(|id| self.t(id)).collect();
        let mut ordered: Vec<&Reading<'_>> = self.readings.iter().collect();
        ordered.sort_by_key(|reading| (self.mark(reading.tire, None), reading.tire, reading.seen.when));
        let rows: Vec<Vec<Markup>> = ordered
            .into_iter()
            .map(|Reading { tire, seen }| {
                let cells = [
                    self.mark(*tire, None),
                    seen.when.day().to_string(),
                    self.odometer(seen.odometer),
                    self.place(seen.at),
                    self.words.depths(&seen.grooves),
                    self.words.reading(&seen.lowest),
                ];
                cells.map(|text| html! { (text) }).to_vec()
            })
            .collect();
        let contents = (!rows.is_empty()).then(|| table(&self.t("history-readings-table"), &names, &rows));
        section(self.words, "readings", "history-readings", contents)
    }
}
