//! Tread depth over distance, a chart a tire, all to one scale: readings, the
//! forecast with its band, and the limit. What is drawn is told in words too.

use maud::{Markup, html};

use super::super::tread::tenths;
use super::History;
use crate::measure::{Depth, DepthUnit, Distance, DistanceUnit};
use crate::wear::{self, Answer, TireWear, Visits};
use crate::words::{Units, Words};

/// The drawing's size, in its own units.
const SIZE: (f64, f64) = (340.0, 240.0);
/// Where the scales stand: left, right, top, bottom.
const FRAME: (f64, f64, f64, f64) = (30.0, 322.0, 30.0, 206.0);
/// Drawn ahead of the last reading where a forecast has no end, km.
const FAR_KM: f64 = 60_000.0;
/// Drawn ahead of the last reading where there is no forecast, km.
const NEAR_KM: f64 = 5_000.0;
/// Into how many pieces a band is drawn.
const PIECES: u32 = 24;

/// From distance and depth to the drawing.
struct Scale {
    depth: DepthUnit,
    distance: DistanceUnit,
    from: f64,
    to: f64,
    deepest: f64,
    depth_step: f64,
    distance_step: f64,
}

impl Scale {
    /// A scale that holds every reading and forecast.
    fn of(readings: &[wear::Reading], answer: &Answer, units: Units) -> Self {
        let (depth, distance) = match units {
            Units::Us => (DepthUnit::ThirtySecond, DistanceUnit::Mile),
            _ => (DepthUnit::Millimetre, DistanceUnit::Kilometre),
        };
        let at = |reading: &wear::Reading| reading.odometer.in_unit(distance);
        let first = readings.iter().map(at).fold(f64::INFINITY, f64::min);
        let last = readings.iter().map(at).fold(0.0, f64::max);
        let ahead = answer.tires.iter().map(reach_km).fold(NEAR_KM, f64::max);
        let ahead = Distance::new(ahead, DistanceUnit::Kilometre).map_or(0.0, |far| far.in_unit(distance));
        let depths = readings.iter().filter_map(wear::Reading::least_mm);
        let deepest = depths.chain(answer.tires.iter().map(|tire| tire.depth_mm.high)).fold(0.0, f64::max);
        let deepest = in_unit(deepest, depth);
        let distance_step = step(last + ahead - first, 6.0);
        let depth_step = step(deepest, 4.0).max(1.0);
        Self {
            depth,
            distance,
            from: (first / distance_step).floor() * distance_step,
            to: ((last + ahead) / distance_step).ceil() * distance_step,
            deepest: ((deepest / depth_step).ceil() * depth_step).max(depth_step),
            depth_step,
            distance_step,
        }
    }

    fn x(&self, distance: f64) -> f64 {
        let (left, right, ..) = FRAME;
        tenths(left + (right - left) * (distance - self.from) / (self.to - self.from).max(1.0))
    }

    /// The height of a depth in mm.
    fn y(&self, mm: f64) -> f64 {
        self.height(in_unit(mm, self.depth))
    }

    fn height(&self, depth: f64) -> f64 {
        let (.., top, bottom) = FRAME;
        tenths(bottom - (bottom - top) * depth / self.deepest)
    }

    fn km(&self, distance: f64) -> f64 {
        Distance::new(distance.max(0.0), self.distance).map_or(0.0, |d| d.in_unit(DistanceUnit::Kilometre))
    }

    fn ticks(from: f64, to: f64, step: f64) -> impl Iterator<Item = f64> {
        (0u32..=20).map(move |n| from + step * f64::from(n)).take_while(move |at| *at <= to + step * 0.01)
    }
}

fn in_unit(mm: f64, unit: DepthUnit) -> f64 {
    match unit {
        DepthUnit::Millimetre => mm,
        DepthUnit::ThirtySecond => mm / crate::measure::THIRTY_SECOND_MM,
    }
}

/// How far ahead of its last reading a tire's forecast is drawn, km.
fn reach_km(tire: &TireWear) -> f64 {
    let Some(left) = tire.left_km else { return 0.0 };
    let far = left.high.or(left.mid.map(|mid| mid * 2.0)).unwrap_or(FAR_KM);
    // A band that is open far out would press the readings together.
    far.min(left.mid.map_or(FAR_KM, |mid| mid * 2.0)).clamp(0.0, FAR_KM)
}

/// A step of 1, 2 or 5 times a power of ten that cuts a span into about so many.
fn step(span: f64, pieces: f64) -> f64 {
    let rough = (span / pieces).max(1e-6);
    let power = 10f64.powf(rough.log10().floor());
    let size = [1.0, 2.0, 5.0, 10.0].into_iter().find(|size| rough <= size * power * 1.001).unwrap_or(10.0);
    size * power
}

impl History<'_> {
    pub(super) fn charts(&self, told: &Visits, answer: &Answer) -> Markup {
        let all: Vec<wear::Reading> =
            answer.tires.iter().flat_map(|tire| told.readings_of(&tire.tire)).map(|(_, reading)| reading).collect();
        let scale = Scale::of(&all, answer, self.computed.speech().units);
        html! {
            p class="small" { (self.t("history-chart-how")) }
            div class="grid" { @for tire in &answer.tires { (self.chart(told, answer, tire, &scale)) } }
        }
    }

    fn chart(&self, told: &Visits, answer: &Answer, tire: &TireWear, scale: &Scale) -> Markup {
        let mark = told.tire(&tire.tire).map(|id| self.mark(id, None)).unwrap_or_default();
        let named = self.say("card-tire-at", &[("mark", mark.into()), ("at", self.place(tire.at).into())]);
        let sentence = self.computed.tire_sentence(tire, &self.vehicle.layout);
        let mut readings = told.readings_of(&tire.tire);
        let km = |reading: &wear::Reading| reading.odometer.in_unit(DistanceUnit::Kilometre);
        readings.sort_by(|(_, a), (_, b)| km(a).total_cmp(&km(b)));
        let read = self.words.list(readings.iter().filter_map(|(_, reading)| self.point(reading)));
        let id = format!("chart-{}", self.place(tire.at).to_lowercase());
        let dots: Vec<(f64, f64, bool)> = readings
            .iter()
            .filter_map(|(number, reading)| {
                let slipped = answer.slipped.iter().any(|slip| slip.reading == *number);
                Some((scale.x(reading.odometer.in_unit(scale.distance)), scale.y(reading.least_mm()?), slipped))
            })
            .collect();
        let last = readings.last().map(|(_, reading)| reading.odometer.in_unit(scale.distance));
        html! {
            figure {
                figcaption { strong { (named) } }
                svg class="chart" role="img" viewBox={ "0 0 " (SIZE.0) " " (SIZE.1) } aria-labelledby={ (id) "-title " (id) "-told" } {
                    title id={ (id) "-title" } { (self.say("history-chart", &[("tire", named.as_str().into())])) }
                    desc id={ (id) "-told" } { (self.say("history-chart-read", &[("readings", read.into())])) " " (sentence) }
                    (scale.frame(&self.computed))
                    @if let Some(last) = last { (forecast(tire, last, scale)) }
                    (self.limit_line(tire, scale))
                    @for pair in dots.windows(2) {
                        @if let [(x, y, _), (to_x, to_y, _)] = pair { path class="read" d={ "M" (x) " " (y) " L" (to_x) " " (to_y) } {} }
                    }
                    @for (x, y, slipped) in &dots {
                        circle class=(if *slipped { "dot-slipped" } else { "dot" }) cx=(x) cy=(y) r="4.5" {}
                    }
                }
                p { (sentence) }
            }
        }
    }

    /// A reading in words: its shallowest groove, and at which odometer.
    fn point(&self, reading: &wear::Reading) -> Option<String> {
        let mm = |depth: &Depth| depth.in_unit(DepthUnit::Millimetre);
        let least = reading.grooves.iter().min_by(|a, b| mm(a).total_cmp(&mm(b)))?;
        let (depth, odometer) = (self.words.reading(least), self.words.reading(&reading.odometer));
        Some(self.say("history-point", &[("depth", depth.into()), ("odometer", odometer.into())]))
    }

    fn limit_line(&self, tire: &TireWear, scale: &Scale) -> Markup {
        let (left, right, ..) = FRAME;
        let y = scale.y(tire.limit_mm);
        let limit = self.computed.depth_mm(tire.limit_mm);
        html! {
            path class="limit" d={ "M" (left) " " (y) " H" (right) } {}
            text class="tick" x=(left + 4.0) y=(tenths(y - 4.0)) { (self.say("card-limit", &[("limit", limit.into())])) }
        }
    }
}

impl Scale {
    /// Lines and numbers of both scales; the unit stands at the end of each.
    fn frame(&self, words: &Words) -> Markup {
        let (left, right, top, bottom) = FRAME;
        let depths: Vec<f64> = Self::ticks(0.0, self.deepest, self.depth_step).collect();
        let distances: Vec<f64> = Self::ticks(self.from, self.to, self.distance_step).collect();
        let depth_unit = match self.depth {
            DepthUnit::Millimetre => "history-depth-mm",
            DepthUnit::ThirtySecond => "history-depth-32",
        };
        let distance_unit = match self.distance {
            DistanceUnit::Kilometre => "history-distance-km",
            DistanceUnit::Mile => "history-distance-mi",
        };
        html! {
            @for depth in &depths {
                path class="grid-line" d={ "M" (left) " " (self.height(*depth)) " H" (right) } {}
                text class="tick" x=(left - 6.0) y=(tenths(self.height(*depth) + 4.0)) text-anchor="end" { (words.number(*depth, 1)) }
            }
            @for (distance, number) in distances.iter().zip(0usize..) {
                path class="grid-line" d={ "M" (self.x(*distance)) " " (bottom) " V" (bottom + 5.0) } {}
                // Every second one, so that long numbers don't touch.
                @if number % 2 == 0 {
                    @let anchor = if self.x(*distance) > right - 20.0 { "end" } else { "middle" };
                    text class="tick" x=(self.x(*distance)) y=(bottom + 18.0) text-anchor=(anchor) { (words.grouped(*distance)) }
                }
            }
            text class="tick" x="2" y=(top - 16.0) { (words.text(depth_unit, &[])) }
            text class="tick" x=(right) y=(bottom + 32.0) text-anchor="end" { (words.text(distance_unit, &[])) }
        }
    }
}

/// The forecast of a tire from its last reading on: a dashed line in its band.
fn forecast(tire: &TireWear, last: f64, scale: &Scale) -> Markup {
    let Some(ahead) = tire.ahead else { return html! {} };
    let span = scale.to - last;
    let points: Vec<(f64, wear::Interval)> = (0..=PIECES)
        .map(|piece| last + span * f64::from(piece) / f64::from(PIECES))
        .map(|at| (scale.x(at), ahead.depth_after(scale.km(at - last))))
        .collect();
    // Beyond the point where even its best is worn through there is nothing to draw.
    let worn = points.iter().position(|(_, depth)| depth.high <= 0.0).unwrap_or(points.len());
    let points: Vec<_> = points.into_iter().take(worn + 1).collect();
    let line = |pick: fn(&wear::Interval) -> f64| {
        points.iter().map(move |(x, depth)| format!("{x} {}", scale.y(pick(depth).min(in_mm(scale)))))
    };
    let band: Vec<String> = line(|d| d.high).chain(line(|d| d.low).collect::<Vec<_>>().into_iter().rev()).collect();
    let gone = points.iter().position(|(_, depth)| depth.mid <= 0.0).unwrap_or(points.len());
    let middle: Vec<String> = line(|d| d.mid).take(gone + 1).collect();
    html! {
        path class="band" d={ "M" (band.join(" L")) " Z" } {}
        path class="forecast" d={ "M" (middle.join(" L")) } {}
    }
}

/// The deepest that the scale holds, mm.
fn in_mm(scale: &Scale) -> f64 {
    Depth::new(scale.deepest, scale.depth).map_or(scale.deepest, |depth| depth.in_unit(DepthUnit::Millimetre))
}
