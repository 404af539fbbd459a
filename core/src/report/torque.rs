//! The torque specification as printed, and the recheck.

use maud::{Markup, html};

use super::Sheet;
use super::reminder::rechecks;
use crate::entry::{Fact, Kind, Shelf};
use crate::fastener::TorqueSpec;
use crate::procedure::{Ask, Condition};
use crate::words::Say;

impl Sheet<'_> {
    /// The torque as printed with its source, or that it is not known and why work went on.
    pub(super) fn specification(&self) -> Markup {
        let found = self.book.on_shelf(&self.vehicle.model, Kind::Torque);
        match found.map(|found| (found, &found.shelf)) {
            Some((found, Shelf::Torque { spec, studs })) => html! {
                dl class="particulars" {
                    div { dt { (self.t("card-torque")) } dd { (self.words.torque_spec(spec)) } }
                    @for (name, value) in self.spec_rows(spec, *studs) {
                        div { dt { (self.t(name)) } dd { (value) } }
                    }
                    div { dt { (self.t("card-source")) } dd { (self.or_not_told(&found.source)) } }
                    div { dt { (self.t("card-recorded")) } dd { (self.moment(found.at)) } }
                }
                @if let Some(photo) = found.photo { p class="small" { (self.photo_link(photo)) } }
            },
            _ => html! {
                p class="notice" {
                    strong { (self.t("card-torque-unknown")) }
                    @if let Some(reason) = self.torque_gate() { " " (self.say("card-opened-because", &[("reason", reason.into())])) }
                }
            },
        }
    }

    fn spec_rows(&self, spec: &TorqueSpec, studs: Option<u8>) -> Vec<(&'static str, String)> {
        let mut rows = Vec::new();
        rows.extend(spec.thread.as_ref().map(|thread| ("card-thread", thread.to_string())));
        rows.extend(spec.hex.as_ref().map(|hex| ("card-hex", self.words.reading(hex))));
        rows.extend(studs.map(|studs| ("card-studs", studs.to_string())));
        rows
    }

    fn or_not_told(&self, text: &str) -> String {
        if text.trim().is_empty() { self.t("card-not-recorded") } else { text.to_owned() }
    }

    /// The reason with which the final gate was opened without a specification.
    fn torque_gate(&self) -> Option<String> {
        self.job.last(|fact| match fact {
            Fact::GateOpened { condition, reason, .. } if condition == Condition::TorqueKnown.code() => {
                Some(reason.trim_end_matches('.').to_owned())
            }
            _ => None,
        })
    }

    /// When the nuts are to be checked again, as the driver was told.
    pub(super) fn recheck(&self) -> Markup {
        let told = self.job.last(|fact| match fact {
            Fact::RecheckTold { .. } => Some(self.words.fact(fact, &self.context())),
            _ => None,
        });
        if told.is_none() && !self.asks(&[Ask::Recheck]) {
            return html! {};
        }
        let held = self.asks(&[Ask::Rechecked]) && !self.asks(&[Ask::WheelOff]) && told.is_none();
        if held && self.bay().is_some_and(|bay| bay.rechecks_left().is_empty()) {
            return html! { h3 { (self.t("card-recheck")) } p { (self.t("card-recheck-none-left")) } };
        }
        html! {
            h3 { (self.t("card-recheck")) }
            @match told {
                Some(told) => p class="recheck" { (told) },
                None => p { (self.t("card-recheck-untold")) },
            }
            @for recheck in rechecks(self.book, self.job) { p { (recheck.say(self.words)) } }
        }
    }
}
