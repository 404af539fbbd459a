//! A learner's logbook to hand in: competences, jobs, answers, signatures, photos.
//!
//! Like the card it is one HTML file that needs nothing from outside. A plate or a customer's
//! name has no place in it: what is handed in tells of the learner.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use maud::{Markup, html};

use super::{SmallPhoto, section, shell, table};
use crate::calendar::Day;
use crate::entry::Fact;
use crate::finding::State;
use crate::ident::Digest;
use crate::learning::{Competence, competences, jobs_of};
use crate::logbook::{Book, Job, Person, Vehicle};
use crate::procedure::{Bay, Procedure};
use crate::vehicle::Place;
use crate::words::{Arg, FactContext, Words, capital};

/// Everything a learner's logbook is made from.
struct Pages<'a> {
    book: &'a Book,
    person: &'a Person,
    procedures: &'a [Procedure],
    today: Day,
    words: &'a Words,
    photos: &'a SmallPhoto<'a>,
    jobs: Vec<&'a Job>,
}

/// A learner's logbook: one self-contained HTML file. `photos` gives a small JPEG for a digest.
pub fn learner(
    book: &Book,
    person: &Person,
    procedures: &[Procedure],
    today: Day,
    words: &Words,
    photos: &SmallPhoto<'_>,
) -> String {
    let jobs = jobs_of(book, person.id);
    Pages { book, person, procedures, today, words, photos, jobs }.page().into_string()
}

impl Pages<'_> {
    fn page(&self) -> Markup {
        let name = self.words.person(self.book, self.person.id);
        let title = self.say("learner-title", &[("name", name.as_str().into())]);
        let contents = html! {
            (self.head(&name))
            (self.standings())
            @for job in &self.jobs { (self.job(job)) }
            footer {
                p { strong { (self.t("learner-foot")) } }
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

    fn head(&self, name: &str) -> Markup {
        let practice = self.jobs.iter().filter(|job| job.practice).count();
        let rows = [
            ("learner-role", self.words.role(self.person.role)),
            ("learner-jobs-count", self.jobs.len().to_string()),
            ("learner-practice-jobs", practice.to_string()),
            ("learner-until", self.today.to_string()),
        ];
        html! {
            header {
                p class="kicker" { (self.t("learner-kicker")) }
                h1 { (name) }
                dl class="particulars" { @for (name, value) in &rows { div { dt { (self.t(name)) } dd { (value) } } } }
                @if self.jobs.is_empty() { p class="notice" { (self.t("learner-none")) } }
            }
        }
    }

    fn procedure_of(&self, job: &Job) -> Option<&Procedure> {
        self.procedures.iter().find(|procedure| procedure.id == job.procedure)
    }

    fn standings(&self) -> Markup {
        let asks = |job: &Job, step: &str| Some(self.procedure_of(job)?.step(step)?.asks);
        let names = ["learner-competence", "learner-done-count", "learner-seen-count"].map(|id| self.t(id));
        let rows: Vec<Vec<Markup>> = competences(self.book, self.person.id, &asks)
            .into_iter()
            .map(|standing| {
                let args =
                    [("done", standing.done.to_string().into()), ("practice", standing.practice.to_string().into())];
                let done = match standing.practice {
                    0 => standing.done.to_string(),
                    all if all == standing.done => self.say("learner-of-practice", &args),
                    _ => self.say("learner-of", &args),
                };
                let by = self.words.list(standing.signed_by.iter().map(|(by, _)| self.words.person(self.book, *by)));
                let seen = match standing.seen {
                    0 => self.t("learner-not-seen"),
                    seen => self.say("learner-seen-by", &[("seen", seen.to_string().into()), ("by", by.into())]),
                };
                [capital(&self.words.competence(standing.competence)), done, seen].map(|text| html! { (text) }).to_vec()
            })
            .collect();
        let contents = (!rows.is_empty()).then(|| table(&self.t("learner-competences-table"), &names, &rows));
        section(self.words, "competences", "learner-competences", contents)
    }

    fn job(&self, job: &Job) -> Markup {
        let Some(vehicle) = self.book.vehicle(job.vehicle) else { return html! {} };
        let heading = self.say(
            "learner-job",
            &[
                ("number", job.number.to_string().into()),
                ("name", vehicle.name.as_str().into()),
                ("day", job.opened.day().to_string().into()),
            ],
        );
        let id = format!("job-{}", job.number);
        let named = format!("{id}-heading");
        html! {
            section id=(id) aria-labelledby=(named) {
                h2 id=(named) { (heading) }
                @if job.practice { p class="notice" { (self.t("card-practice")) } }
                (self.particulars(job, vehicle))
                (self.did(job, vehicle))
                (self.answers(job, vehicle))
                (self.seen(job, vehicle))
                (self.pictures(job, vehicle))
            }
        }
    }

    fn particulars(&self, job: &Job, vehicle: &Vehicle) -> Markup {
        let work = self.procedure_of(job).map_or_else(|| job.procedure.clone(), |p| self.words.title(p));
        let circumstances = job.circumstances.iter().map(|code| self.words.circumstance(code));
        let work = self.words.list(std::iter::once(work).chain(circumstances));
        let signed = job.lines.iter().rev().find(|line| matches!(line.fact, Fact::JobSigned { .. }));
        let signed = signed.map(|line| self.words.person(self.book, line.author));
        let mut rows = vec![
            ("card-model", vehicle.model.clone()),
            ("card-class", self.words.class(vehicle.class)),
            ("learner-work", work),
            ("learner-state", self.words.status(job.status)),
        ];
        rows.extend(signed.map(|name| ("learner-signed", name)));
        html! { dl class="particulars" { @for (name, value) in &rows { div { dt { (self.t(name)) } dd { (value) } } } } }
    }

    /// What the learner's own hands did, in order; parts that were found sound at one place in one line.
    fn did(&self, job: &Job, vehicle: &Vehicle) -> Markup {
        let context = self.context(job, vehicle);
        let mut told: Vec<String> = Vec::new();
        let mut sound: Option<(Option<Place>, usize, String)> = None;
        let close = |told: &mut Vec<String>, sound: &mut Option<(Option<Place>, usize, String)>| {
            if let Some((at, count, clock)) = sound.take() {
                let at = ("at", self.words.place(&vehicle.layout, at).into());
                let said = self.say("learner-all-sound", &[at, ("count", count.into())]);
                told.push(self.say("learner-line", &[("clock", clock.into()), ("said", said.into())]));
            }
        };
        for line in job.lines.iter().filter(|line| line.hands == self.person.id && is_told(&line.fact)) {
            if let Fact::FindingNoted { look, .. } = &line.fact
                && look.state == State::Sound
            {
                match &mut sound {
                    Some((at, count, _)) if *at == look.at => *count = count.saturating_add(1),
                    _ => {
                        close(&mut told, &mut sound);
                        sound = Some((look.at, 1, line.at.clock()));
                    }
                }
                continue;
            }
            close(&mut told, &mut sound);
            let said = self.words.fact(&line.fact, &context);
            told.push(self.say("learner-line", &[("clock", line.at.clock().into()), ("said", said.into())]));
        }
        close(&mut told, &mut sound);
        html! {
            @if !told.is_empty() {
                h3 { (self.t("learner-did")) }
                ul { @for said in &told { li { (said) } } }
            }
        }
    }

    fn context<'b>(&'b self, job: &'b Job, vehicle: &'b Vehicle) -> FactContext<'b> {
        FactContext {
            book: self.book,
            layout: Some(&vehicle.layout),
            job: Some(job),
            procedure: self.procedure_of(job),
        }
    }

    fn answers(&self, job: &Job, vehicle: &Vehicle) -> Markup {
        let names = ["card-decision", "card-own-answer", "card-core-answer", "card-compared"];
        let names: Vec<String> = names.iter().map(|id| self.t(id)).collect();
        let given = job.lines.iter().filter_map(|line| match &line.fact {
            Fact::AnswerGiven { learned, .. } => Some(learned),
            _ => None,
        });
        let rows: Vec<Vec<Markup>> = given
            .map(|learned| {
                let [own, core, same] = self.words.answers(learned, &vehicle.layout);
                [capital(&self.words.decision(learned)), own, core, same].map(|text| html! { (text) }).to_vec()
            })
            .collect();
        html! {
            @if !rows.is_empty() {
                h3 { (self.t("learner-answers")) }
                (table(&self.t("card-answers-table"), &names, &rows))
            }
        }
    }

    fn seen(&self, job: &Job, vehicle: &Vehicle) -> Markup {
        let bay = self.procedure_of(job).and_then(|procedure| Bay::new(procedure, self.book, job));
        let seen = bay.map(|bay| bay.to_be_seen()).unwrap_or_default();
        let own: Vec<_> = seen.into_iter().filter(|seen| seen.learner == self.person.id).collect();
        let signed = own.iter().any(|seen| seen.by.is_some());
        let rows: Vec<Vec<Markup>> = own
            .into_iter()
            .map(|seen| {
                let by = seen.by.map_or_else(|| self.t("card-not-seen"), |by| self.words.person(self.book, by));
                let what = capital(&self.words.to_see(seen.step.asks, &vehicle.layout, seen.at));
                [what, by].map(|text| html! { (text) }).to_vec()
            })
            .collect();
        let names = [self.t("card-seen-what"), self.t("card-seen-by")];
        html! {
            @if !rows.is_empty() {
                h3 { (self.t("learner-seen-heading")) }
                (table(&self.t("card-seen-table"), &names, &rows))
                @if signed { p class="small" { (self.t("card-on-device")) } }
            }
        }
    }

    fn pictures(&self, job: &Job, vehicle: &Vehicle) -> Markup {
        let context = self.context(job, vehicle);
        let own = job.lines.iter().filter(|line| line.hands == self.person.id);
        let taken: Vec<(Digest, String)> = own
            .filter(|line| matches!(line.fact, Fact::PhotoTaken { .. }))
            .filter_map(|line| Some((line.fact.photo()?, self.words.fact(&line.fact, &context))))
            .collect();
        html! {
            @if !taken.is_empty() {
                h3 { (self.t("learner-photos")) }
                div class="grid" { @for (photo, caption) in &taken { (self.picture(*photo, caption)) } }
            }
        }
    }

    fn picture(&self, photo: Digest, caption: &str) -> Markup {
        html! {
            figure {
                @match (self.photos)(photo) {
                    Some(jpeg) => img src={ "data:image/jpeg;base64," (STANDARD.encode(jpeg)) } alt=(caption) {},
                    None => p class="notice" { (self.t("card-photo-missing")) },
                }
                figcaption { (caption) }
            }
        }
    }
}

/// Whether the logbook tells a fact of a learner's own hands.
fn is_told(fact: &Fact) -> bool {
    matches!(fact, Fact::StepDone { .. } | Fact::GateOpened { .. } | Fact::StepSkipped { .. })
        || Competence::of(fact).is_some()
}
