//! Tread depth as bars, with the number always beside the bar.

use maud::{Markup, html};

use super::Sheet;
use crate::ident::TireId;
use crate::limits::{self, Force, Rules};
use crate::logbook::{DepthSeen, Vehicle};
use crate::measure::{Depth, DepthUnit};
use crate::procedure::Ask;
use crate::vehicle::Place;

/// The bar of a tire that is as deep as this fills the width, mm.
const FULL_MM: f64 = 12.0;
/// Where bars begin and how long a full one is, in the drawing's units.
const BAR: (f64, f64) = (78.0, 150.0);
/// From one bar to the next.
const STEP: f64 = 24.0;

/// One bar.
struct Row {
    name: String,
    depth: Depth,
    class: &'static str,
}

impl Sheet<'_> {
    pub(super) fn tread(&self) -> Markup {
        let coming = self.job.coming();
        let tires: Vec<Markup> = self
            .places()
            .into_iter()
            .flat_map(|place| [self.job.fitted.get(&place), coming.get(&place)].map(|tire| (place, tire.copied())))
            .filter_map(|(place, tire)| self.tire_bars(place, tire?))
            .collect();
        if tires.is_empty() && !self.asks(&[Ask::Tread]) {
            return html! {};
        }
        let contents = html! {
            @if tires.is_empty() { p { (self.t("card-no-tread")) } }
            @else {
                p class="small" {
                    (self.t("card-tread-how"))
                    @if self.job.plan().is_some() { " " (self.t("card-tread-places")) }
                }
                div class="grid" { @for tire in &tires { (tire) } }
            }
            p class="small" { (self.words.limits(self.job.chosen())) }
        };
        self.section("tread", "card-tread", Some(contents))
    }

    fn tire_bars(&self, place: Place, tire: TireId) -> Option<Markup> {
        let (grooves, lowest) = self.job.tread(tire)?;
        let mut rows = self.groove_rows(grooves);
        rows.push(Row { name: self.t("card-lowest"), depth: lowest, class: "bar lowest" });
        let before = self.before(tire);
        if let Some(before) = before {
            rows.push(Row { name: self.t("card-last-time"), depth: before.lowest, class: "bar before" });
        }
        let named = self.tire_at(tire, place);
        let id = format!("tread-{}", tire.short());
        let readings = self.words.depths(grooves);
        Some(html! {
            figure {
                figcaption { strong { (named) } }
                (self.bars(&id, &named, &rows, limit_at(self.vehicle, self.rules, place)))
                p class="small" { (self.say("card-readings", &[("readings", readings.into())])) }
                @if let Some(before) = before {
                    p class="small" { (self.since(before)) }
                }
            }
        })
    }

    /// For each groove, outer first, its lowest reading around the tire.
    fn groove_rows(&self, grooves: &[Vec<Depth>]) -> Vec<Row> {
        let count = grooves.iter().map(Vec::len).max().unwrap_or_default();
        (0..count)
            .filter_map(|at| {
                let readings = grooves.iter().filter_map(|place| place.get(at)).copied();
                let depth = readings.min_by(|a, b| mm(*a).total_cmp(&mm(*b)))?;
                let number = (at + 1).to_string();
                let id = match at {
                    0 => "card-groove-outer",
                    _ if at + 1 == count => "card-groove-inner",
                    _ => "card-groove",
                };
                Some(Row { name: self.say(id, &[("number", number.into())]), depth, class: "bar" })
            })
            .collect()
    }

    /// The tread of this tire before this job.
    fn before(&self, tire: TireId) -> Option<&DepthSeen> {
        let depths = &self.book.tires.get(&tire)?.depths;
        depths.iter().rev().find(|seen| seen.job != self.job.id && seen.when < self.job.opened)
    }

    fn since(&self, before: &DepthSeen) -> String {
        let odometer = before.odometer.map(|distance| self.words.reading(&distance)).unwrap_or_default();
        let id = if odometer.is_empty() { "card-before" } else { "card-before-at" };
        let day = before.when.day().to_string();
        let at = self.place(before.at);
        self.say(id, &[("day", day.into()), ("odometer", odometer.into()), ("at", at.into())])
    }

    /// The limit in the chosen units, and as it is printed where that is another.
    fn limit_named(&self, limit: &Depth) -> String {
        let (shown, printed) = (self.words.shown_alone(limit), self.words.as_printed(limit));
        let id = if shown == printed { "card-limit" } else { "card-limit-printed" };
        self.say(id, &[("limit", shown.into()), ("printed", printed.into())])
    }

    fn bars(&self, id: &str, named: &str, rows: &[Row], limit: Option<Depth>) -> Markup {
        let height = STEP * u32::try_from(rows.len()).map_or(0.0, f64::from);
        let told = self.words.list(rows.iter().map(|row| format!("{} {}", row.name, self.words.reading(&row.depth))));
        let most = rows.iter().map(|row| mm(row.depth)).fold(FULL_MM, f64::max);
        let length = |depth: Depth| BAR.1 * mm(depth) / most;
        let limit = limit.map(|limit| (BAR.0 + length(limit), self.limit_named(&limit)));
        // Beside the bar, and beside the limit's line where the bar ends short of it.
        let number_at = |long: f64| limit.as_ref().map_or(0.0, |(x, _)| *x).max(BAR.0 + long);
        html! {
            svg class="bars" role="img" viewBox={ "0 0 320 " (height + 22.0) } aria-labelledby={ (id) "-title " (id) "-told" } {
                title id={ (id) "-title" } { (self.say("card-bars", &[("tire", named.into())])) }
                desc id={ (id) "-told" } { (told) }
                @for (row, y) in rows.iter().zip((0u32..).map(|at| STEP * f64::from(at))) {
                    text class="bar-name" x="0" y=(y + 15.0) { (row.name) }
                    rect class=(row.class) x=(BAR.0) y=(y + 4.0) width=(tenths(length(row.depth))) height="14" {}
                    text class="bar-number" x=(tenths(number_at(length(row.depth)) + 6.0)) y=(y + 15.0) { (self.words.shown_alone(&row.depth)) }
                }
                @if let Some((x, limit)) = &limit {
                    path class="limit" d={ "M" (tenths(*x)) " 0 V" (height + 4.0) } {}
                    text class="bar-name" x=(tenths(*x)) y=(height + 17.0) text-anchor="start" {
                        (limit)
                    }
                }
            }
        }
    }
}

/// The strictest minimum at a place of a vehicle, else the wear bars' height.
pub(super) fn limit_at(vehicle: &Vehicle, rules: Rules, place: Place) -> Option<Depth> {
    let here = rules.at(vehicle.class, &vehicle.layout, place);
    let full = Depth::new(FULL_MM, DepthUnit::Millimetre).ok()?;
    let limit = limits::judge(full, here, rules.thresholds).limit?;
    matches!(limit.force, Force::Minimum | Force::WearBar).then(|| limit.depth()).flatten()
}

fn mm(depth: Depth) -> f64 {
    depth.in_unit(DepthUnit::Millimetre)
}

/// A coordinate without needless digits.
pub(super) fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}
