//! Pressures and lamp, gates and skipped steps, approvals and damage, tools, the foot.

use maud::{Markup, html};

use super::Sheet;
use crate::entry::{Fact, Kind, Shelf, Signature, Strokes};
use crate::ident::{TireId, ToolId};
use crate::logbook::{Line, Status};
use crate::measure::Pressure;
use crate::procedure::Ask;
use crate::vehicle::Place;

impl Sheet<'_> {
    /// Pressures found and set against the placard, then sensors and lamp.
    pub(super) fn pressures(&self) -> Markup {
        let rows: Vec<Vec<Markup>> = self.places().into_iter().filter_map(|place| self.pressure_row(place)).collect();
        let sensors = self.sentences(|fact| matches!(fact, Fact::SensorRead { .. }));
        if rows.is_empty() && sensors.is_empty() && !self.asks(&[Ask::Pressure, Ask::PressureFound, Ask::Lamp]) {
            return html! {};
        }
        let placard = self.book.on_shelf(&self.vehicle.model, Kind::Placard);
        let contents = html! {
            @if rows.is_empty() { p { (self.t("card-no-pressures")) } }
            @else { (self.table("card-pressures-table", &["card-at", "card-placard", "card-found", "card-set"], &rows)) }
            @match placard {
                Some(placard) => p class="small" {
                    (self.say("card-placard-from", &[("source", placard.source.as_str().into())]))
                    @if let Some(photo) = placard.photo { " " (self.photo_link(photo)) }
                },
                None => p class="small" { (self.t("card-no-placard")) },
            }
            @if let Some(numbers) = self.sensor_numbers() { (numbers) }
            @if !sensors.is_empty() || self.asks(&[Ask::Lamp, Ask::LampBefore]) {
                h3 { (self.t("card-sensors")) }
                @if sensors.is_empty() { p { (self.t("card-no-sensors")) } }
                @else { (self.list(&sensors)) }
            }
        };
        self.section("pressures", "card-pressures", Some(contents))
    }

    /// Which sensor is where after the moves: a sensor goes wherever its wheel goes.
    fn sensor_numbers(&self) -> Option<Markup> {
        let planned = self.job.planned();
        let ends = |place: Place, tire: TireId| match self.hung_at(tire) {
            Some(at) => at,
            None => place,
        };
        let mut rows: Vec<(Place, Place, String)> = planned
            .into_iter()
            .filter_map(|(place, tire)| {
                let number = self.book.tires.get(&tire)?.sensor.clone()?;
                Some((ends(place, tire), place, number))
            })
            .collect();
        rows.sort();
        let rows: Vec<Vec<Markup>> = rows
            .into_iter()
            .map(|(at, was, number)| [self.place(at), self.place(was), number].map(|text| html! { (text) }).to_vec())
            .collect();
        (!rows.is_empty())
            .then(|| self.table("card-sensor-table", &["card-at", "card-was-at", "card-sensor-number"], &rows))
    }

    fn pressure_row(&self, place: Place) -> Option<Vec<Markup>> {
        let last = |wanted: bool| {
            self.job.last(|fact| match fact {
                Fact::PressureMeasured { at, pressure, set, cold, .. } if *at == place && *set == wanted => {
                    Some((*pressure, *cold))
                }
                _ => None,
            })
        };
        let (found, set) = (last(false), last(true));
        let printed = match self.book.on_shelf(&self.vehicle.model, Kind::Placard).map(|found| &found.shelf) {
            Some(Shelf::Placard { placard }) => placard.at(place).map(|tire| tire.cold),
            _ => None,
        };
        found.or(set)?;
        let shown = |reading: Option<(Pressure, Option<bool>)>| match reading {
            Some((pressure, cold)) => {
                let cold = match cold {
                    Some(true) => self.t("pressure-cold"),
                    Some(false) => self.t("pressure-warm"),
                    None => String::new(),
                };
                format!("{}{cold}", self.words.reading(&pressure))
            }
            None => self.t("card-not-recorded"),
        };
        let printed = printed.map_or_else(|| self.t("card-not-known"), |pressure| self.words.reading(&pressure));
        Some([self.place(place), printed, shown(found), shown(set)].map(|text| html! { (text) }).to_vec())
    }

    /// Lines of this job that `pick` takes, as sentences.
    fn sentences(&self, pick: impl Fn(&Fact) -> bool) -> Vec<String> {
        let lines = self.job.lines.iter().filter(|line| pick(&line.fact));
        lines.map(|line| self.words.fact(&line.fact, &self.context())).collect()
    }

    fn list(&self, items: &[String]) -> Markup {
        html! { ul { @for item in items { li { (item) } } } }
    }

    /// A part with its heading; nothing when it has no items.
    fn part(&self, heading: &str, items: &[String]) -> Markup {
        html! { @if !items.is_empty() { h3 { (self.t(heading)) } (self.list(items)) } }
    }

    /// Gates opened and steps skipped, with their reasons.
    pub(super) fn gates(&self) -> Markup {
        let opened = self.sentences(|fact| matches!(fact, Fact::GateOpened { .. }));
        let skipped = self.sentences(|fact| matches!(fact, Fact::StepSkipped { .. }));
        let contents = html! {
            @if opened.is_empty() && skipped.is_empty() { p { (self.t("card-no-gates")) } }
            (self.part("card-opened-gates", &opened))
            (self.part("card-skipped", &skipped))
        };
        self.section("gates", "card-gates", Some(contents))
    }

    /// Approvals and damage that was there before.
    pub(super) fn given(&self) -> Markup {
        let approved = self.job.lines.iter().filter(|line| matches!(line.fact, Fact::WorkApproved { .. }));
        let approvals: Vec<String> = approved.clone().map(|line| self.by(line)).collect();
        let damage = self.sentences(|fact| matches!(fact, Fact::DamageSeen { .. }));
        let contents = html! {
            @if approvals.is_empty() && (self.vehicle.own || self.asks(&[Ask::Approval])) {
                p { (self.t(if self.vehicle.own { "card-own" } else { "card-no-approval" })) }
            }
            (self.part("card-approvals", &approvals))
            @for drawn in approved.filter_map(|line| self.drawn(line)) { (drawn) }
            (self.part("card-damage", &damage))
            @if damage.is_empty() && self.asks(&[Ask::Damage]) { p { (self.t("card-no-damage")) } }
        };
        self.section("given", "card-given", (!contents.0.is_empty()).then_some(contents))
    }

    /// The signature that was drawn for a line, unless it was erased.
    fn drawn(&self, line: &Line) -> Option<Markup> {
        let drawn: Strokes = line.drawn.as_deref()?.parse().ok()?;
        let name = line.named.as_deref().unwrap_or_default();
        let mut ink = String::new();
        for stroke in drawn.strokes() {
            // A dot is a line that ends where it begins.
            let dot = stroke.first().filter(|_| stroke.len() == 1);
            for (at, (across, down)) in stroke.iter().chain(dot).enumerate() {
                let command = if at == 0 { 'M' } else { 'L' };
                ink.push_str(&format!("{command}{} {down}", u32::from(*across) * 3));
            }
        }
        Some(html! {
            svg class="signature" role="img" viewBox="0 0 3000 1000" {
                title { (self.say("card-drawn", &[("name", name.into())])) }
                path class="baseline" d="M60 800 H2940" {}
                path class="ink" d=(ink) {}
            }
        })
    }

    /// A line with its time and the person who said it.
    fn by(&self, line: &Line) -> String {
        let said = self.words.line(line, &self.context());
        let person = self.words.person(self.book, line.author);
        let at = self.moment(line.at);
        self.say("card-said-by", &[("said", said.into()), ("person", person.into()), ("at", at.into())])
    }

    /// Tools, each with its calibration, or that it is not known.
    pub(super) fn tools(&self) -> Markup {
        let mut used: Vec<ToolId> = Vec::new();
        let turned = self.job.lines.iter().filter_map(|line| match line.fact {
            Fact::NutTightened { tool, .. } => tool,
            _ => None,
        });
        for tool in self.job.tools().chain(turned) {
            if !used.contains(&tool) {
                used.push(tool);
            }
        }
        let rows: Vec<Vec<Markup>> = used.into_iter().map(|tool| self.tool_row(tool)).collect();
        let contents = html! {
            @if rows.is_empty() { p { (self.t("card-no-tools")) } }
            @else { (self.table("card-tools-table", &["card-tool", "card-kind", "card-papers", "card-calibration"], &rows)) }
        };
        self.section("tools", "card-tools", Some(contents))
    }

    fn tool_row(&self, id: ToolId) -> Vec<Markup> {
        let name = self.words.tool(self.book, id);
        let tool = self.book.tool(id);
        let kind = tool.map(|tool| self.words.tool_kind(&tool.what)).unwrap_or_default();
        let papers = tool.map(|tool| self.words.list(self.words.tool_papers(&tool.what))).unwrap_or_default();
        let papers = if papers.is_empty() { self.t("card-not-known") } else { papers };
        let calibration = tool.and_then(|tool| self.words.tool_calibration(tool));
        let calibration = calibration.unwrap_or_else(|| self.t("card-no-calibration"));
        [name, kind, papers, calibration].map(|text| html! { (text) }).to_vec()
    }

    /// The line that signed the job.
    pub(super) fn signed(&self) -> Option<(&Line, &Signature)> {
        self.job.lines.iter().rev().find_map(|line| match &line.fact {
            Fact::JobSigned { signature, .. } => Some((line, signature)),
            _ => None,
        })
    }

    fn signature(&self) -> String {
        let Some((_, signature)) = self.signed().filter(|_| self.job.status == Status::Signed) else {
            return self.t("card-unsigned");
        };
        let how = ("how", self.words.signature(signature).into());
        match &self.seal.sealed_by {
            Some(device) => self.say("card-sealed", &[how, ("device", device.as_str().into())]),
            None => self.say("card-not-sealed", &[how]),
        }
    }

    fn after_the_seal(&self) -> Option<String> {
        let shown = self.seal.sealed_by.is_some() && self.seal.after > 0;
        shown.then(|| self.say("card-sealed-after", &[("count", self.seal.after.into())]))
    }

    /// How it is signed, what the digest is for, and who stands above this card.
    pub(super) fn foot(&self) -> Markup {
        let last = self.entries_of_job().last().map(|entry| entry.digest().short());
        html! {
            footer {
                @if let Some(drawn) = self.signed().and_then(|(line, _)| self.drawn(line)) { (drawn) }
                p { strong { (self.signature()) } @if let Some(after) = self.after_the_seal() { " " (after) } }
                @if let Some(last) = last { p { (self.say("card-digest", &[("digest", last.into())])) } }
                @if let Some(device) = &self.seal.written_by { p class="small" { (self.say("card-provable", &[("device", device.as_str().into())])) } }
                p { (self.t("card-deference")) }
                p class="small" { (self.t("card-times")) }
            }
        }
    }
}
