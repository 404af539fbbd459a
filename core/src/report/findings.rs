//! What is wrong, and what is still to do.

use maud::{Markup, html};

use super::Sheet;
use crate::inspect::{Finding, What, inspect};
use crate::logbook::Status;
use crate::procedure::{Task, TaskState};

impl Sheet<'_> {
    /// What the entries say is wrong, worst first; that nothing was found is said too.
    pub(super) fn findings(&self) -> Markup {
        let found = inspect(self.book, self.job, self.rules);
        let looked = self.job.looks().len();
        let contents = html! {
            @if found.is_empty() {
                p { (self.say("card-nothing-found", &[("count", looked.into())])) }
            } @else {
                ul class="findings" { @for finding in &found { li { (self.finding(finding)) } } }
                p class="small" { (self.say("card-looked", &[("count", looked.into())])) }
            }
        };
        self.section("findings", "card-findings", Some(contents))
    }

    fn finding(&self, finding: &Finding) -> Markup {
        let source = finding.source.map_or_else(|| self.t("card-by-eye"), |source| self.words.source(&source));
        let broken = matches!(finding.what, What::Tread { broken: true, .. });
        html! {
            (self.state(finding.state))
            div {
                p {
                    @if let Some(at) = finding.at { strong { (self.place(at)) } " " }
                    (self.words.finding(finding, self.book))
                }
                p class="small" {
                    (source)
                    @if broken { ". " (self.t("card-rule-broken")) }
                }
            }
        }
    }

    /// The steps that are not over, in a job that is not signed; the next one is marked.
    pub(super) fn to_do(&self) -> Markup {
        let tasks: Vec<Task<'_>> = self.bay().map(|bay| bay.tasks()).unwrap_or_default();
        let left: Vec<&Task<'_>> = tasks.iter().filter(|task| !task.state.is_over()).collect();
        let contents = (!left.is_empty() && self.job.status != Status::Signed).then(|| {
            html! {
                ol class="to-do" {
                    @for (at, task) in left.iter().enumerate() {
                        li class=[(at == 0 && self.job.is_running()).then_some("next")] { (self.task(task, at == 0)) }
                    }
                }
            }
        });
        self.section("to-do", "card-to-do", contents)
    }

    fn task(&self, task: &Task<'_>, first: bool) -> Markup {
        html! {
            @if first && self.job.is_running() { strong { (self.t("card-next")) } " " }
            @if let Some(at) = task.at { strong { (self.place(at)) } " " }
            (self.words.step(task.step))
            @if let (true, TaskState::Held(unmet)) = (first, &task.state) {
                ul class="plain small" {
                    @for unmet in unmet { li { (self.words.unmet(unmet, &self.vehicle.layout)) } }
                }
            }
        }
    }
}
