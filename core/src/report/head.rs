//! The head of the card: vehicle, state, people, dates, odometer.

use std::collections::BTreeMap;

use maud::{Markup, html};

use super::Sheet;
use crate::calendar::Moment;
use crate::entry::{Decision, Fact, Kind};
use crate::ident::PersonId;
use crate::logbook::Status;
use crate::procedure::Ask;
use crate::vehicle::Drive;

impl Sheet<'_> {
    pub(super) fn head(&self) -> Markup {
        let number = self.job.number.to_string();
        html! {
            header {
                p class="kicker" { (self.say("card-kicker", &[("number", number.into())])) }
                h1 { (self.vehicle.name) }
                p { (self.status()) @if let Some(reason) = self.ended_because() { " " (self.say("card-because", &[("reason", reason.trim_end_matches('.').into())])) } }
                @if self.job.practice { p class="notice" { (self.t("card-practice")) } }
                (self.particulars())
                p class="small" { (self.say("card-places", &[("places", self.places_spoken().into())])) }
                @if let Some(complaint) = self.complaint() { p { (complaint) } }
            }
        }
    }

    /// What the letters of the places stand for: a customer has not learned them.
    fn places_spoken(&self) -> String {
        let layout = &self.vehicle.layout;
        let named = |place| {
            let args = [("at", self.place(place).into()), ("name", self.words.place_spoken(layout, place).into())];
            self.say("card-place-named", &args)
        };
        self.words.list(layout.places().map(named))
    }

    /// Why the job was parked or ended without a signature.
    fn ended_because(&self) -> Option<String> {
        self.job.last(|fact| match fact {
            Fact::JobParked { reason, .. } if self.job.status == Status::Parked => Some(reason.clone()),
            Fact::JobClosed { reason, .. } if self.job.status == Status::Closed => Some(reason.clone()),
            _ => None,
        })
    }

    fn complaint(&self) -> Option<String> {
        self.job.last(|fact| match fact {
            Fact::ComplaintHeard { .. } => Some(self.words.fact(fact, &self.context())),
            _ => None,
        })
    }

    /// Names beside values, in the order a person asks for them.
    fn particulars(&self) -> Markup {
        let mut rows: Vec<(&str, String)> = vec![
            ("card-model", self.vehicle.model.clone()),
            ("card-class", self.words.class(self.vehicle.class)),
            ("card-plate", self.vehicle.plate.clone().unwrap_or_else(|| self.t("card-not-recorded"))),
            ("card-drive", self.drive()),
            ("card-odometer", self.odometer()),
            ("card-work", self.work()),
            ("card-opened", self.moment(self.job.opened)),
        ];
        if self.drive_is_unknown() && !self.asks(&[Ask::Drive]) {
            rows.retain(|(name, _)| *name != "card-drive");
        }
        if self.job.odometer().is_none() && !self.asks(&[Ask::Odometer]) {
            rows.retain(|(name, _)| *name != "card-odometer");
        }
        if let Some(spec) = self.book.on_shelf(&self.vehicle.model, Kind::LiftPoints) {
            rows.push(("card-lift-points", self.words.specification(spec)));
        }
        if let Some((weight, rating)) = self.job.gear_rated() {
            let args = [("weight", self.words.reading(&weight).into()), ("rating", self.words.reading(&rating).into())];
            rows.push(("card-raised", self.say("card-raised-by", &args)));
        }
        if let Some(ended) = self.ended_at() {
            rows.push(("card-ended", self.moment(ended)));
        }
        html! {
            dl class="particulars" {
                @for (name, value) in &rows { div { dt { (self.t(name)) } dd { (value) } } }
                div { dt { (self.t("card-people")) } dd { ul class="plain" { @for person in self.people() { li { (person) } } } } }
            }
        }
    }

    fn drive_is_unknown(&self) -> bool {
        self.bay().is_none_or(|bay| bay.drive() == Drive::Unknown)
    }

    fn drive(&self) -> String {
        // What a learner answers first stands nowhere before.
        let bay = self.bay().filter(|bay| !bay.to_answer(Decision::Drive));
        self.words.drive(bay.map_or(Drive::Unknown, |bay| bay.drive()))
    }

    fn odometer(&self) -> String {
        let read = |fact: &Fact| matches!(fact, Fact::OdometerRead { .. });
        match self.job.lines.iter().rev().find(|line| read(&line.fact)).map(|line| &line.fact) {
            Some(Fact::OdometerRead { reading, note, .. }) => {
                let reading = self.words.reading(reading);
                match note {
                    Some(note) => self.list_of([reading, self.t(note_id(*note))]),
                    None => reading,
                }
            }
            _ => self.t("card-not-recorded"),
        }
    }

    fn list_of<const N: usize>(&self, parts: [String; N]) -> String {
        self.words.list(parts)
    }

    fn work(&self) -> String {
        let title = match self.procedure {
            Some(procedure) => self.words.title(procedure),
            None => self.job.procedure.clone(),
        };
        let circumstances = self.job.circumstances.iter().map(|code| self.words.circumstance(code));
        self.words.list(std::iter::once(title).chain(circumstances))
    }

    fn ended_at(&self) -> Option<Moment> {
        let ends = |fact: &Fact| matches!(fact, Fact::JobSigned { .. } | Fact::JobClosed { .. });
        self.job.lines.iter().rev().find(|line| ends(&line.fact)).map(|line| line.at)
    }

    pub(super) fn moment(&self, at: Moment) -> String {
        self.say("card-moment", &[("day", at.day().to_string().into()), ("clock", at.clock().into())])
    }

    /// Who wrote and whose hands worked, with how many entries; then who signed.
    fn people(&self) -> Vec<String> {
        let mut counts: BTreeMap<PersonId, (usize, usize)> = BTreeMap::new();
        let mut order: Vec<PersonId> = Vec::new();
        for line in &self.job.lines {
            for person in [line.author, line.hands] {
                if !order.contains(&person) {
                    order.push(person);
                }
            }
            counts.entry(line.author).or_default().0 += 1;
            counts.entry(line.hands).or_default().1 += 1;
        }
        let mut people: Vec<String> = order
            .into_iter()
            .map(|id| {
                let (wrote, hands) = counts.get(&id).copied().unwrap_or_default();
                let role = self.book.person(id).map(|person| self.words.role(person.role)).unwrap_or_default();
                self.say(
                    "card-person",
                    &[
                        ("name", self.words.person(self.book, id).into()),
                        ("role", role.into()),
                        ("wrote", wrote.into()),
                        ("hands", hands.into()),
                    ],
                )
            })
            .collect();
        people.extend(self.second_hands());
        people.extend(self.signed_by());
        people
    }

    /// Who held the other side of heavy wheels, and where.
    fn second_hands(&self) -> Vec<String> {
        let mut held: Vec<(String, Vec<String>)> = Vec::new();
        for line in &self.job.lines {
            let Fact::WheelShared { at, person, .. } = &line.fact else { continue };
            let known = person.map(|person| self.words.person(self.book, person));
            let name = known.or_else(|| line.named.clone()).unwrap_or_else(|| self.t("name-erased"));
            let at = self.place(*at);
            match held.iter_mut().find(|(known, _)| *known == name) {
                Some((_, places)) if places.contains(&at) => {}
                Some((_, places)) => places.push(at),
                None => held.push((name, vec![at])),
            }
        }
        let told = |(name, at): (String, Vec<String>)| {
            self.say("card-second-hands", &[("name", name.into()), ("at", self.words.and_list(at).into())])
        };
        held.into_iter().map(told).collect()
    }

    fn signed_by(&self) -> Option<String> {
        let (line, signature) = self.signed()?;
        let name = self.words.person(self.book, line.author);
        Some(self.say("card-signed-by", &[("name", name.into()), ("how", self.words.signature(signature).into())]))
    }
}

fn note_id(note: crate::entry::OdometerNote) -> &'static str {
    match note {
        crate::entry::OdometerNote::Estimated => "card-estimated",
        crate::entry::OdometerNote::ClusterReplaced => "card-cluster-replaced",
    }
}
