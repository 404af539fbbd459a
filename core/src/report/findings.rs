//! What is wrong, and what is still to do.

use maud::{Markup, html};

use super::Sheet;
use crate::inspect::{Finding, What, inspect};
use crate::logbook::Status;
use crate::procedure::{Task, TaskState};
use crate::vehicle::Place;

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
                    @if let Some(whereabouts) = self.whereabouts(finding) { strong { (whereabouts) } " " }
                    (self.words.finding(finding, self.book))
                }
                p class="small" {
                    (source)
                    @if broken { ". " (self.t("card-rule-broken")) }
                }
            }
        }
    }

    /// Where: the place; for a tire's own finding the tire, and where it goes.
    fn whereabouts(&self, finding: &Finding) -> Option<String> {
        let at = finding.at?;
        // A tire without a mark is named by where it is.
        let Some(tire) = finding.tire.filter(|tire| self.job.mark_of(*tire).is_some()) else {
            return Some(self.place(at));
        };
        let to = self.job.plan().and_then(|(_, moves)| moves.iter().find(|m| m.tire == tire)).map_or(at, |m| m.to);
        let id = if to == at { "card-tire-of" } else { "card-tire-of-to" };
        if to == at && self.mark(tire) == self.place(at) {
            return Some(self.place(at));
        }
        let (mark, at, to) = (self.mark(tire), self.place(at), self.place(to));
        Some(self.say(id, &[("mark", mark.into()), ("at", at.into()), ("to", to.into())]))
    }

    /// The steps that are not over, in a job that is not signed; the next one is marked.
    pub(super) fn to_do(&self) -> Markup {
        let tasks: Vec<Task<'_>> = self.bay().map(|bay| bay.tasks()).unwrap_or_default();
        let left: Vec<&Task<'_>> = tasks.iter().filter(|task| !task.state.is_over()).collect();
        let contents = (!left.is_empty() && self.job.status != Status::Signed).then(|| {
            html! {
                @if let Some((first, rest)) = left.split_first() {
                    @if self.job.is_running() { p class="next" { (self.next_task(first)) } }
                    @else { p { (self.task(first, &[first.at])) } }
                    ul { @for (step, places) in by_step(rest) { li { (self.task(step, &places)) } } }
                }
            }
        });
        self.section("to-do", "card-to-do", contents)
    }

    /// The next thing to do, and what its gate waits for.
    fn next_task(&self, task: &Task<'_>) -> Markup {
        html! {
            strong { (self.t("card-next")) } " " (self.task(task, &[task.at]))
            @if let TaskState::Held(unmet) = &task.state {
                @for unmet in unmet { br; span class="small" { (self.words.unmet(unmet, &self.vehicle.layout)) } }
            }
        }
    }

    /// A step with the places where it is left.
    fn task(&self, task: &Task<'_>, places: &[Option<Place>]) -> Markup {
        let named = self.words.list(places.iter().flatten().map(|place| self.place(*place)));
        html! {
            @if !named.is_empty() { strong { (named) } " " }
            (self.words.step(task.step))
        }
    }
}

/// Tasks of one step together, in the order in which each step is first left.
fn by_step<'t, 's>(tasks: &[&'t Task<'s>]) -> Vec<(&'t Task<'s>, Vec<Option<Place>>)> {
    let mut steps: Vec<(&Task<'_>, Vec<Option<Place>>)> = Vec::new();
    for task in tasks {
        match steps.iter_mut().find(|(known, _)| known.step.id == task.step.id) {
            Some((_, places)) => places.push(task.at),
            None => steps.push((task, vec![task.at])),
        }
    }
    steps
}
