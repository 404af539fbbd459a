//! Labels for stored wheels: one for each, to be printed and tied to it.

use maud::{Markup, html};

use super::Sheet;
use crate::ident::TireId;
use crate::procedure::Ask;
use crate::sidewall;
use crate::vehicle::Place;

impl Sheet<'_> {
    /// The page of labels of the wheels that were stored in this job.
    pub(super) fn labels(&self) -> Markup {
        let labels: Vec<Markup> = self.job.stored().map(|(tire, at, rack)| self.label(tire, at, rack)).collect();
        html! {
            @if labels.is_empty() { p { (self.t("label-none")) } }
            @else { div class="labels" { @for label in &labels { (label) } } }
        }
    }

    fn label(&self, tire: TireId, at: Place, rack: &str) -> Markup {
        let read = self.book.tires.get(&tire).and_then(|history| history.outer.as_deref()).map(sidewall::parse);
        let unknown = || self.t("card-not-known");
        let size = read.as_ref().and_then(|marking| marking.size.as_ref()).map_or_else(unknown, ToString::to_string);
        let (made, age) = read.as_ref().map_or_else(|| (unknown(), unknown()), |marking| self.made(marking));
        let depth = self.job.tread(tire).map_or_else(unknown, |(_, lowest)| self.words.reading(&lowest));
        let odometer = self.job.odometer().map_or_else(unknown, |reading| self.words.reading(&reading));
        let rows = [
            ("label-tread", depth),
            ("card-size", size),
            ("card-made", made),
            ("card-age", age),
            ("card-rack", rack.to_owned()),
            ("label-stored", self.job.opened.day().to_string()),
            ("card-odometer", odometer),
        ];
        html! {
            section class="label" {
                p class="small" { (self.vehicle.name) @if let Some(plate) = &self.vehicle.plate { ", " (plate) } }
                p class="where" { (self.place(at)) }
                dl class="particulars" { @for (name, value) in &rows { div { dt { (self.t(name)) } dd { (value) } } } }
            }
        }
    }

    /// What was stored, on the card.
    pub(super) fn stored(&self) -> Markup {
        let rows: Vec<Vec<Markup>> = self
            .job
            .stored()
            .map(|(tire, at, rack)| {
                let depth = self.job.tread(tire).map(|(_, lowest)| self.words.reading(&lowest));
                let depth = depth.unwrap_or_else(|| self.t("card-not-known"));
                [self.place(at), depth, rack.to_owned()].map(|text| html! { (text) }).to_vec()
            })
            .collect();
        let asked = self.asks(&[Ask::Stored]) && !rows.is_empty();
        let table = asked.then(|| self.table("card-stored-table", &["card-was-at", "card-lowest", "card-rack"], &rows));
        self.section("stored", "card-stored", table)
    }
}
