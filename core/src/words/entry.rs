//! One plain sentence for each fact, as it stands in a log and on the card.

use super::{DecimalMark, Worded, Words};
use crate::entry::{
    Answer, Arm, DriveSeen, Fact, Look, Move, Nuts, OdometerNote, Pass, ReadBy, Shelf, SidewallSide, Thing, TireDamage,
    TireLooks, Turned, Zone,
};
use crate::fastener::{Lubrication, Printed, TorqueSpec};
use crate::ident::{PersonId, TireId, ToolId};
use crate::limits::{Placard, PlacardTire};
use crate::logbook::{Book, Job, Line, Specification};
use crate::measure::{Depth, Distance, Span, Speed};
use crate::procedure::{Condition, Procedure};
use crate::vehicle::hub::{AxleMotor, Differential, Evidence, FreeHubs};
use crate::vehicle::{Equipment, Layout, Place};

/// What a fact's ids stand for: the book, and where there is one the job and its procedure.
#[derive(Debug, Clone, Copy)]
pub struct FactContext<'a> {
    /// Names of persons and tools.
    pub book: &'a Book,
    /// The vehicle's layout, for the names of places.
    pub layout: Option<&'a Layout>,
    /// The job, for the marks of its tires.
    pub job: Option<&'a Job>,
    /// The procedure, for the sentences of its steps.
    pub procedure: Option<&'a Procedure>,
}

impl<'a> FactContext<'a> {
    /// The context of a job's facts.
    pub fn of_job(book: &'a Book, job: &'a Job, procedure: Option<&'a Procedure>) -> Self {
        Self { book, layout: book.vehicle(job.vehicle).map(|v| &v.layout), job: Some(job), procedure }
    }

    /// The context of facts that belong to no job.
    pub fn of_book(book: &'a Book) -> Self {
        Self { book, layout: None, job: None, procedure: None }
    }
}

/// Words without the full stop that the sentence around them brings.
fn bare(text: &str) -> &str {
    text.trim().trim_end_matches(['.', '!'])
}

/// The first letter in upper case.
pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

impl Words {
    /// A person's name.
    pub fn person(&self, book: &Book, id: PersonId) -> String {
        match book.person(id) {
            Some(person) => person.name.clone().unwrap_or_else(|| self.text("name-erased", &[])),
            None => self.text("person-unknown", &[]),
        }
    }

    /// A tire by the mark it carries in this job, else by the end of its id.
    pub fn tire(&self, job: Option<&Job>, tire: TireId) -> String {
        match job.and_then(|job| job.known_by(tire)) {
            Some(mark) => self.text("tire-marked", &[("mark", mark.into())]),
            None => self.text("tire-short", &[("short", tire.short().into())]),
        }
    }

    /// A thing that can be put away, by its name.
    pub fn thing(&self, book: &Book, thing: Thing) -> String {
        let vehicle = |id| match book.vehicle(id) {
            Some(vehicle) => vehicle.name.clone(),
            None => self.text("thing-unknown", &[]),
        };
        let (id, name) = match thing {
            Thing::Vehicle(id) => ("thing-vehicle", vehicle(id)),
            Thing::Set(id) => ("thing-set", vehicle(id)),
            Thing::Person(id) => ("thing-person", self.person(book, id)),
            Thing::Tool(id) => ("thing-tool", self.tool(book, id)),
        };
        self.text(id, &[("name", name.into())])
    }

    /// A tool's name.
    pub fn tool(&self, book: &Book, id: ToolId) -> String {
        book.tool(id).map_or_else(|| self.text("tool-unknown", &[]), |tool| tool.name.clone())
    }

    /// One plain sentence for a line of a job, with the person it names.
    pub fn line(&self, line: &Line, context: &FactContext<'_>) -> String {
        if let (Fact::WheelShared { at, .. }, Some(name)) = (&line.fact, &line.named) {
            let at = ("at", self.place_in(context, Some(*at)).into());
            let said = self.text("fact-wheel-shared-by", &[("person", name.as_str().into())]);
            return self.text("fact-at", &[at, ("said", said.into())]);
        }
        let said = self.fact(&line.fact, context);
        match &line.named {
            Some(name) => self.text("fact-named", &[("said", bare(&said).into()), ("name", name.as_str().into())]),
            None => said,
        }
    }

    /// One plain sentence for a fact.
    ///
    /// ```
    /// use lugbook::entry::Fact;
    /// use lugbook::ident::{JobId, TireId};
    /// use lugbook::logbook::Book;
    /// use lugbook::vehicle::{Place, Side};
    /// use lugbook::words::{FactContext, Speech, Words};
    /// let fact = Fact::TreadMeasured {
    ///     job: JobId::from_parts(1, [1; 10]),
    ///     tire: TireId::from_parts(1, [2; 10]),
    ///     at: Place::single(1, Side::Left),
    ///     grooves: vec![vec!["7/32".parse()?, "7/32".parse()?, "6/32".parse()?]],
    ///     lowest: "6/32".parse()?,
    ///     reason: None,
    /// };
    /// let words = Words::new(Speech::default());
    /// let said = words.fact(&fact, &FactContext::of_book(&Book::default()));
    /// assert_eq!(said, "FL: tread 7, 7, 6/32 in; lowest 6/32 in.");
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn fact(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        let said = self.said(fact, context);
        let said = match reason_of(fact) {
            Some(reason) => self.text("fact-reason", &[("said", said.into()), ("reason", bare(reason).into())]),
            None => said,
        };
        match stands_at(fact) {
            Some(at) => {
                let at = self.place_in(context, at);
                self.text("fact-at", &[("at", at.into()), ("said", said.into())])
            }
            None => capital(&said),
        }
    }

    fn place_in(&self, context: &FactContext<'_>, at: Option<Place>) -> String {
        match (context.layout, at) {
            (Some(layout), at) => self.place(layout, at),
            (None, Some(place)) => place.to_string(),
            (None, None) => self.text("place-vehicle", &[]),
        }
    }

    fn said(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        match fact {
            Fact::PersonAdded { .. }
            | Fact::VehicleAdded { .. }
            | Fact::SpecificationRecorded { .. }
            | Fact::SpecificationUnknown { .. }
            | Fact::ToolAdded { .. }
            | Fact::ToolRetired { .. }
            | Fact::CodeSet { .. }
            | Fact::CodeRefused { .. }
            | Fact::LimitsChosen { .. }
            | Fact::PhotoCovered { .. }
            | Fact::Archived { .. }
            | Fact::BroughtBack { .. }
            | Fact::VehicleEquipped { .. }
            | Fact::ToolUsed { .. } => self.said_of_book(fact, context),
            Fact::JobOpened { .. }
            | Fact::JobParked { .. }
            | Fact::JobResumed { .. }
            | Fact::JobClosed { .. }
            | Fact::JobSigned { .. }
            | Fact::HandsChanged { .. }
            | Fact::WheelShared { .. }
            | Fact::AnswerFirst { .. }
            | Fact::AnswerGiven { .. }
            | Fact::StepsSeen { .. }
            | Fact::ComplaintHeard { .. }
            | Fact::WorkApproved { .. }
            | Fact::RecheckTold { .. } => self.said_of_job(fact, context),
            Fact::OdometerRead { .. }
            | Fact::DamageSeen { .. }
            | Fact::PhotoPending { .. }
            | Fact::PhotoTaken { .. }
            | Fact::SensorRead { .. }
            | Fact::DriveSeen { .. }
            | Fact::FindingNoted { .. } => self.said_of_sight(fact),
            Fact::TireFitted { .. }
            | Fact::SetBrought { .. }
            | Fact::TireStored { .. }
            | Fact::TireRemoved { .. }
            | Fact::MarkChalked { .. }
            | Fact::MarkRead { .. }
            | Fact::SidewallRead { .. }
            | Fact::TreadMeasured { .. }
            | Fact::AroundMeasured { .. }
            | Fact::PressureMeasured { .. } => self.said_of_tire(fact, context),
            Fact::PlanChosen { .. }
            | Fact::WheelsChosen { .. }
            | Fact::SpareSeen { .. }
            | Fact::Lifted { .. }
            | Fact::GearRated { .. }
            | Fact::WheelOff { .. }
            | Fact::WheelOn { .. }
            | Fact::NutTightened { .. } => self.said_of_work(fact, context),
            Fact::StepDone { .. } | Fact::StepSkipped { .. } | Fact::GateOpened { .. } => {
                self.said_of_step(fact, context)
            }
            Fact::Corrected { fact, .. } => self.text("fact-corrected", &[("said", self.fact(fact, context).into())]),
            Fact::Withdrawn { .. } => self.text("fact-withdrawn", &[]),
        }
    }

    fn said_of_book(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        match fact {
            Fact::PersonAdded { person, role } => {
                let person = self.person(context.book, *person);
                self.text("fact-person-added", &[("person", person.into()), ("role", self.role(*role).into())])
            }
            Fact::VehicleAdded { name, model, class, own, .. } => {
                let id = if *own { "fact-vehicle-added-own" } else { "fact-vehicle-added" };
                let class = self.class(*class);
                self.text(
                    id,
                    &[("name", name.as_str().into()), ("model", model.as_str().into()), ("class", class.into())],
                )
            }
            Fact::SpecificationRecorded { model, shelf, source, .. } => {
                let id = if source.trim().is_empty() { "fact-specification-unsourced" } else { "fact-specification" };
                self.text(
                    id,
                    &[
                        ("what", self.kind(shelf.kind()).into()),
                        ("model", model.as_str().into()),
                        ("value", self.shelf(shelf).into()),
                        ("source", bare(source).into()),
                    ],
                )
            }
            Fact::SpecificationUnknown { what, .. } => {
                self.text("fact-specification-unknown", &[("what", self.kind(*what).into())])
            }
            Fact::ToolAdded { what, name, interval_months, .. } => self.text(
                "fact-tool-added",
                &[("name", name.as_str().into()), ("told", self.tool_told(what, *interval_months).into())],
            ),
            Fact::ToolRetired { tool, .. } => {
                self.text("fact-tool-retired", &[("name", self.tool(context.book, *tool).into())])
            }
            Fact::CodeSet { person, .. } => {
                self.text("fact-code-set", &[("person", self.person(context.book, *person).into())])
            }
            Fact::CodeRefused { person, .. } => {
                self.text("fact-code-refused", &[("person", self.person(context.book, *person).into())])
            }
            Fact::Archived { thing, .. } => {
                self.text("fact-archived", &[("what", self.thing(context.book, *thing).into())])
            }
            Fact::BroughtBack { thing } => {
                self.text("fact-brought-back", &[("what", self.thing(context.book, *thing).into())])
            }
            Fact::PhotoCovered { photo, boxes } => {
                self.text("fact-covered", &[("count", boxes.len().into()), ("digest", photo.short().into())])
            }
            Fact::VehicleEquipped { has, .. } => self.equipment(has),
            Fact::LimitsChosen { job, chosen } => {
                let id = if job.is_some() { "fact-limits-job" } else { "fact-limits-book" };
                self.text(id, &[("chosen", self.chosen_limits(*chosen, *chosen).into())])
            }
            Fact::ToolUsed { tool, .. } => {
                self.text("fact-tool-used", &[("name", self.tool(context.book, *tool).into())])
            }
            _ => String::new(),
        }
    }

    /// What a vehicle has that changes how it is raised.
    pub fn equipment(&self, has: &[Equipment]) -> String {
        let named = self.and_list(has.iter().map(|equipment| self.coded("equipment", equipment)));
        let id = if has.is_empty() { "fact-equipment-none" } else { "fact-equipment" };
        self.text(id, &[("has", named.into())])
    }

    fn said_of_job(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        match fact {
            Fact::JobOpened { procedure, circumstances, .. } => {
                let title = self.or_code("procedure", procedure);
                let circumstances = self.list(circumstances.iter().map(|code| self.circumstance(code)));
                let id = if circumstances.is_empty() { "fact-job-opened-bare" } else { "fact-job-opened" };
                self.text(id, &[("procedure", title.into()), ("circumstances", capital(&circumstances).into())])
            }
            Fact::JobParked { .. } => self.text("fact-job-parked", &[]),
            Fact::JobResumed { .. } => self.text("fact-job-resumed", &[]),
            Fact::JobClosed { .. } => self.text("fact-job-closed", &[]),
            Fact::JobSigned { signature, .. } => {
                self.text("fact-job-signed", &[("how", self.signature(signature).into())])
            }
            Fact::HandsChanged { person, .. } => {
                self.text("fact-hands-changed", &[("person", self.person(context.book, *person).into())])
            }
            Fact::WheelShared { person: Some(person), .. } => {
                self.text("fact-wheel-shared-by", &[("person", self.person(context.book, *person).into())])
            }
            Fact::AnswerFirst { on, .. } => {
                self.text(if *on { "fact-answer-first" } else { "fact-answer-first-off" }, &[])
            }
            Fact::AnswerGiven { learned, .. } => {
                let two_axles = Layout::two_axles(true);
                let both = self.both_answers(learned, context.layout.unwrap_or(&two_axles));
                self.text("fact-answer-given", &[("both", both.into())])
            }
            Fact::StepsSeen { by, steps, .. } => {
                let named = steps.iter().map(|seen| self.seen_named(&seen.step, seen.at, context));
                let named = self.and_list(named);
                let by = self.person(context.book, *by);
                self.text("fact-steps-seen", &[("person", by.into()), ("steps", named.into())])
            }
            Fact::WheelShared { person: None, .. } => self.text("fact-wheel-shared", &[]),
            Fact::ComplaintHeard { complaint, .. } => {
                self.text("fact-complaint", &[("text", bare(&complaint.text).into())])
            }
            Fact::WorkApproved { what, approved, signature, .. } => {
                let id = match (what.as_str(), *approved) {
                    (Fact::UNSAFE_TOLD, true) => "fact-unsafe-approved",
                    (Fact::UNSAFE_TOLD, false) => "fact-unsafe-declined",
                    (_, true) => "fact-approved",
                    (_, false) => "fact-declined",
                };
                let what = self.or_code("approved", bare(what));
                self.text(id, &[("what", what.into()), ("how", self.signature(signature).into())])
            }
            Fact::RecheckTold { after, .. } => {
                let after = self.and_list(after.iter().map(|distance| self.reading(distance)));
                let id = if after.is_empty() { "fact-recheck-none" } else { "fact-recheck" };
                self.text(id, &[("after", after.into())])
            }
            _ => String::new(),
        }
    }

    fn said_of_sight(&self, fact: &Fact) -> String {
        match fact {
            Fact::OdometerRead { reading, note, .. } => {
                let id = match note {
                    None => "fact-odometer",
                    Some(OdometerNote::Estimated) => "fact-odometer-estimated",
                    Some(OdometerNote::ClusterReplaced) => "fact-odometer-cluster-replaced",
                };
                self.text(id, &[("reading", self.reading(reading).into())])
            }
            Fact::DamageSeen { text: None, .. } => self.text("fact-damage-none", &[]),
            Fact::DamageSeen { text: Some(text), .. } => self.text("fact-damage", &[("text", bare(text).into())]),
            Fact::PhotoPending { of, .. } => self.text("fact-photo-pending", &[("of", self.photo_of(*of).into())]),
            Fact::PhotoTaken { photo, of, taken, .. } => {
                let id = if taken.is_some() { "fact-photo-dated" } else { "fact-photo" };
                let taken = taken.as_deref().unwrap_or_default();
                let of = self.photo_of(*of);
                self.text(id, &[("of", of.into()), ("digest", photo.short().into()), ("taken", taken.into())])
            }
            Fact::SensorRead { sensors, number, lamp, relearned, method, .. } => {
                let mut told = vec![self.coded("sensors", sensors)];
                told.extend(number.as_ref().map(|n| self.text("sensor-number", &[("number", n.as_str().into())])));
                told.extend(lamp.map(|on| self.text(if on { "lamp-on" } else { "lamp-off" }, &[])));
                told.extend(relearned.map(|done| self.text(if done { "relearned-yes" } else { "relearned-no" }, &[])));
                told.extend(method.map(|method| self.coded("relearn", &method)));
                self.text("fact-sensor", &[("told", self.list(told).into())])
            }
            Fact::DriveSeen { seen, .. } => self.drive_seen(seen),
            Fact::FindingNoted { look, .. } => self.look(look),
            _ => String::new(),
        }
    }

    /// What was seen of the drive.
    fn drive_seen(&self, seen: &DriveSeen) -> String {
        match seen {
            DriveSeen::Hub { evidence } => {
                let side = self.coded("side", &evidence.side);
                let place = self.text("hub-axle", &[("axle", evidence.axle.to_string().into()), ("side", side.into())]);
                self.text("fact-drive-hub", &[("place", place.into()), ("seen", self.hub(evidence).into())])
            }
            DriveSeen::Manual { drive } => self.text("fact-drive-manual", &[("drive", self.drive(*drive).into())]),
            DriveSeen::Owner { drive } => self.text("fact-drive-owner", &[("drive", self.drive(*drive).into())]),
        }
    }

    fn hub(&self, evidence: &Evidence) -> String {
        let mut told = vec![self.coded("hub", &evidence.hub)];
        if let Some(turned) = &evidence.turned {
            told.push(self.coded("wheel", &turned.wheel));
            told.push(self.coded("shaft", &turned.shaft));
            told.push(self.coded("opposite", &turned.opposite));
            told.push(self.coded("gear", &turned.gear));
            told.push(self.coded("brake", &turned.brake));
            told.push(self.coded("ground", &turned.off_ground));
            told.push(self.coded("engine", &turned.engine));
        }
        if evidence.differential != Differential::NotKnown {
            told.push(self.coded("differential", &evidence.differential));
        }
        if evidence.free_hubs != FreeHubs::NotKnown {
            told.push(self.coded("free-hubs", &evidence.free_hubs));
        }
        if evidence.motor != AxleMotor::NotKnown {
            told.push(self.coded("motor", &evidence.motor));
        }
        self.list(told)
    }

    /// What was found on a tire, how thick a part is, and the mechanic's words; `None` when nothing was told.
    pub(super) fn details(
        &self,
        damage: Option<&TireDamage>,
        (thickness, least): (Option<&Span>, Option<&Span>),
        note: Option<&str>,
    ) -> Option<String> {
        let damage = damage.map(|damage| {
            let id = match damage {
                TireDamage::Bulge => "found-bulge",
                TireDamage::Cut => "found-cut",
                TireDamage::Cord => "found-cord",
                TireDamage::Nail(Zone::Tread) => "found-nail-tread",
                TireDamage::Nail(Zone::Shoulder) => "found-nail-shoulder",
                TireDamage::Nail(Zone::Sidewall) => "found-nail-sidewall",
            };
            self.text(id, &[])
        });
        let thickness = thickness.map(|span| self.text("look-thickness", &[("thickness", self.reading(span).into())]));
        let note = note.map(|note| bare(note).to_owned());
        let least = least.map(|span| self.text("look-least", &[("least", self.reading(span).into())]));
        let told: Vec<String> = [damage, thickness, least, note].into_iter().flatten().collect();
        (!told.is_empty()).then(|| self.list(told))
    }

    /// A part and how it stands: `valve watch; cap missing.`
    fn look(&self, look: &Look) -> String {
        let part = ("part", self.part(look.part).into());
        let state = ("state", self.state(look.state).into());
        match self.details(look.damage.as_ref(), (look.thickness.as_ref(), look.least.as_ref()), look.note.as_deref()) {
            Some(told) => self.text("fact-finding-note", &[part, state, ("note", told.into())]),
            None => self.text("fact-finding", &[part, state]),
        }
    }

    fn said_of_tire(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        match fact {
            Fact::SetBrought { wheels, .. } => {
                let at = self.list(wheels.iter().map(|laid| self.place_in(context, Some(laid.at))));
                self.text("fact-set-brought", &[("at", at.into())])
            }
            Fact::TireStored { rack, .. } => self.text("fact-tire-stored", &[("rack", bare(rack).into())]),
            Fact::TireFitted { tire, .. } => {
                self.text("fact-tire-fitted", &[("tire", self.tire(context.job, *tire).into())])
            }
            Fact::TireRemoved { tire, .. } => {
                self.text("fact-tire-removed", &[("tire", self.tire(context.job, *tire).into())])
            }
            Fact::MarkChalked { mark, .. } => self.text("fact-mark-chalked", &[("mark", mark.as_str().into())]),
            Fact::MarkRead { mark, .. } => self.text("fact-mark-read", &[("mark", mark.as_str().into())]),
            Fact::SidewallRead { side, text, by, looks, .. } => {
                let looks = self.tire_looks(looks);
                let id = if looks.is_empty() { "fact-sidewall" } else { "fact-sidewall-looks" };
                self.text(
                    id,
                    &[
                        ("side", self.sidewall_side(*side).into()),
                        ("text", text.as_str().into()),
                        ("by", self.read_by(by).into()),
                        ("looks", looks.into()),
                    ],
                )
            }
            Fact::AroundMeasured { around, .. } => self.text("fact-around", &[("around", self.reading(around).into())]),
            Fact::TreadMeasured { grooves, lowest, .. } => self.text(
                "fact-tread",
                &[("grooves", self.depths(grooves).into()), ("lowest", self.reading(lowest).into())],
            ),
            Fact::PressureMeasured { pressure, set, cold, .. } => {
                let id = if *set { "fact-pressure-set" } else { "fact-pressure-found" };
                let cold = match cold {
                    Some(true) => "pressure-cold",
                    Some(false) => "pressure-warm",
                    None => "pressure-untold",
                };
                self.text(id, &[("pressure", self.reading(pressure).into()), ("cold", self.text(cold, &[]).into())])
            }
            _ => String::new(),
        }
    }

    fn sidewall_side(&self, side: SidewallSide) -> String {
        self.coded("sidewall", &side)
    }

    fn read_by(&self, by: &ReadBy) -> String {
        match by {
            ReadBy::Typed => self.text("read-by-typed", &[]),
            ReadBy::Camera { reader, model } => {
                self.text("read-by-camera", &[("reader", reader.as_str().into()), ("model", model.short().into())])
            }
        }
    }

    /// What a tire looks like beyond its lettering; empty when nothing was ticked.
    pub fn tire_looks(&self, looks: &TireLooks) -> String {
        let TireLooks { directional, asymmetric, studded, temporary, retread, regrooved } = *looks;
        let named = [
            (directional, "tire-directional"),
            (asymmetric, "tire-asymmetric"),
            (studded, "tire-studded"),
            (temporary, "tire-temporary"),
            (retread, "tire-retread"),
            (regrooved, "tire-regrooved"),
        ];
        self.list(named.into_iter().filter(|(is, _)| *is).map(|(_, id)| self.text(id, &[])))
    }

    /// Tread depths, groove by groove, places around the tire apart by a semicolon: `7, 7, 6/32 in`.
    pub fn depths(&self, places: &[Vec<Depth>]) -> String {
        let Some(first) = places.iter().flatten().next() else { return String::new() };
        let one_unit = places.iter().flatten().all(|depth| depth.unit() == first.unit());
        let join = |each: &dyn Fn(&Depth) -> String| {
            // A comma that marks decimals can't set numbers apart as well.
            let apart = if self.speech().decimal == DecimalMark::Comma { " " } else { ", " };
            let of_place = |grooves: &Vec<Depth>| grooves.iter().map(each).collect::<Vec<_>>().join(apart);
            places.iter().map(of_place).collect::<Vec<_>>().join("; ")
        };
        if !one_unit {
            return join(&|depth| self.reading(depth));
        }
        let in_unit =
            |values: String, unit: crate::measure::DepthUnit| self.text(unit.sentence(), &[("value", values.into())]);
        let read = in_unit(join(&|depth| self.number(depth.value(), 4)), first.unit());
        let unit = first.unit().in_system(self.speech().units);
        if unit == first.unit() {
            return read;
        }
        let shown = in_unit(join(&|depth| self.number(depth.in_unit(unit), unit.decimals())), unit);
        self.text("unit-converted", &[("shown", shown.into()), ("read", read.into())])
    }

    fn said_of_work(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        match fact {
            Fact::PlanChosen { pattern, moves, .. } => {
                let moves = self.moves(moves, context);
                let id = if moves.is_empty() { "fact-plan-bare" } else { "fact-plan" };
                self.text(id, &[("pattern", self.pattern(pattern).into()), ("moves", moves.into())])
            }
            Fact::WheelsChosen { at, .. } => {
                let at = self.and_list(at.iter().map(|place| self.place_in(context, Some(*place))));
                self.text("fact-wheels-chosen", &[("at", at.into())])
            }
            Fact::SpareSeen { flat, nuts, studs, limit, replace_by, .. } => {
                let at = self.place_in(context, Some(*flat));
                let mut told = vec![self.coded("spare-nuts", nuts)];
                told.extend(studs.map(|studs| self.text("spare-studs", &[("count", studs.into())])));
                told.push(self.spare_limit(limit.as_ref()));
                told.push(self.spare_replace(replace_by.as_ref()));
                self.text("fact-spare", &[("at", at.into()), ("told", self.list(told).into())])
            }
            Fact::Lifted { arm, means, .. } => {
                let id = match arm {
                    Arm::Clear => "fact-lifted-clear",
                    Arm::Full => "fact-lifted-full",
                    Arm::Held => "fact-lifted-held",
                    Arm::AllClear => "fact-lifted-all-clear",
                    Arm::Down => "fact-lifted-down",
                };
                self.text(id, &[("means", self.coded("means", means).into())])
            }
            Fact::GearRated { weight, rating, .. } => {
                let args = [("weight", self.reading(weight).into()), ("rating", self.reading(rating).into())];
                self.text("fact-gear-rated", &args)
            }
            Fact::WheelOff { .. } => self.text("fact-wheel-off", &[]),
            Fact::WheelOn { tire, .. } => self.text("fact-wheel-on", &[("tire", self.tire(context.job, *tire).into())]),
            Fact::NutTightened { nuts, pass, turned, setting, tool, .. } => {
                let setting = setting.map(|s| self.text("nut-setting", &[("setting", self.reading(&s).into())]));
                let tool = tool.map(|t| self.text("nut-tool", &[("tool", self.tool(context.book, t).into())]));
                self.text(
                    "fact-nuts",
                    &[
                        ("nuts", self.nuts(*nuts).into()),
                        ("pass", self.coded("nut-pass", pass).into()),
                        ("turned", self.turned(*pass, *turned).into()),
                        ("setting", setting.unwrap_or_default().into()),
                        ("tool", tool.unwrap_or_default().into()),
                    ],
                )
            }
            _ => String::new(),
        }
    }

    /// How fast a spare may be driven, as printed.
    pub fn spare_limit(&self, limit: Option<&Speed>) -> String {
        match limit {
            Some(limit) => self.text("spare-limit", &[("limit", self.reading(limit).into())]),
            None => self.text("spare-limit-unknown", &[]),
        }
    }

    /// Within which distance a spare is to be replaced, as printed.
    pub fn spare_replace(&self, replace_by: Option<&Distance>) -> String {
        match replace_by {
            Some(distance) => self.text("spare-replace", &[("distance", self.reading(distance).into())]),
            None => self.text("spare-replace-unknown", &[]),
        }
    }

    /// The moves that take a tire elsewhere: `FL to RL, RL to FR`.
    pub fn moves(&self, moves: &[Move], context: &FactContext<'_>) -> String {
        self.list(moves.iter().filter(|m| m.from != m.to).map(|m| {
            let from = self.place_in(context, Some(m.from));
            let to = self.place_in(context, Some(m.to));
            self.text("plan-move", &[("from", from.into()), ("to", to.into())])
        }))
    }

    fn nuts(&self, nuts: Nuts) -> String {
        match nuts {
            Nuts::One(nut) => self.text("nuts-one", &[("nut", nut.to_string().into())]),
            Nuts::WheelInOrder(count) => self.text("nuts-in-order", &[("count", count.into())]),
        }
    }

    fn turned(&self, pass: Pass, turned: Option<Turned>) -> String {
        match (pass, turned) {
            (_, None) => String::new(),
            (_, Some(Turned::Moved)) => self.text("nut-moved", &[]),
            (Pass::Recheck, Some(Turned::Still)) => self.text("nut-held", &[]),
            (_, Some(Turned::Still)) => self.text("nut-still", &[]),
        }
    }

    fn said_of_step(&self, fact: &Fact, context: &FactContext<'_>) -> String {
        match fact {
            Fact::StepDone { step, answer, .. } => {
                let step = ("step", self.step_named(step, context).into());
                let answer = match answer {
                    Answer::Seen => return self.text("fact-step-seen", &[step]),
                    Answer::Choice(code) => self.choice(code),
                    Answer::Count(count) => count.to_string(),
                    Answer::Text(text) => bare(text).to_owned(),
                };
                self.text("fact-step-answer", &[step, ("answer", answer.into())])
            }
            Fact::StepSkipped { step, .. } => {
                self.text("fact-step-skipped", &[("step", self.step_named(step, context).into())])
            }
            Fact::GateOpened { step, condition, .. } => {
                let named = Condition::ALL.into_iter().find(|known| known.code() == condition);
                let named = named.map_or_else(|| condition.clone(), |known| self.condition(known));
                let step = self.step_named(step, context);
                self.text("fact-gate-opened", &[("step", step.into()), ("condition", named.into())])
            }
            _ => String::new(),
        }
    }

    /// What an instructor saw: by what the step asks, else by its id.
    fn seen_named(&self, id: &str, at: Option<Place>, context: &FactContext<'_>) -> String {
        let step = context.procedure.and_then(|procedure| procedure.step(id));
        match (step, context.layout) {
            (Some(step), Some(layout)) => self.to_see(step.asks, layout, at),
            _ => id.to_owned(),
        }
    }

    /// A step's sentence by its id; the id where the procedure is not at hand.
    fn step_named(&self, id: &str, context: &FactContext<'_>) -> String {
        context.procedure.and_then(|procedure| procedure.step(id)).map_or_else(|| id.to_owned(), |step| self.step(step))
    }

    /// What stands on the shelf, with where it was read.
    ///
    /// ```
    /// use lugbook::calendar::Moment;
    /// use lugbook::entry::Shelf;
    /// use lugbook::ident::EntryId;
    /// use lugbook::logbook::Specification;
    /// use lugbook::words::{Speech, Words};
    /// let spec = Specification {
    ///     shelf: Shelf::LiftPoints { text: "Under the frame".to_owned() },
    ///     source: "owner's manual, page 280".to_owned(),
    ///     photo: None,
    ///     entry: EntryId::from_parts(1, [1; 10]),
    ///     at: Moment::START,
    /// };
    /// let said = Words::new(Speech::default()).specification(&spec);
    /// assert_eq!(said, "Under the frame (owner's manual, page 280)");
    /// ```
    pub fn specification(&self, spec: &Specification) -> String {
        let value = self.shelf(&spec.shelf);
        match bare(&spec.source) {
            "" => value,
            source => self.text("specification-from", &[("value", bare(&value).into()), ("source", source.into())]),
        }
    }

    /// What stands on the shelf, as printed.
    pub fn shelf(&self, shelf: &Shelf) -> String {
        match shelf {
            Shelf::Torque { spec, studs: None } => self.torque_spec(spec),
            Shelf::Torque { spec, studs: Some(studs) } => self.text(
                "shelf-torque-studs",
                &[("torque", self.torque_spec(spec).into()), ("studs", studs.to_string().into())],
            ),
            Shelf::Placard { placard } => self.placard(placard),
            Shelf::LiftPoints { text } => bare(text).to_owned(),
            Shelf::Drive { drive } => self.drive(*drive),
            Shelf::Pattern { pattern } => self.pattern(pattern),
            Shelf::Brakes { pads } => self.text("shelf-brakes", &[("pads", self.reading(pads).into())]),
        }
    }

    /// A placard as printed, axle by axle.
    pub fn placard(&self, placard: &Placard) -> String {
        let mut lines: Vec<String> = Vec::new();
        for (tire, axle) in placard.axles.iter().zip(1u8..) {
            let printed = match tire {
                Some(tire) => self.placard_tire(tire),
                None => self.text("placard-unread", &[]),
            };
            lines.push(self.text("placard-axle", &[("axle", axle.to_string().into()), ("printed", printed.into())]));
        }
        if let Some(spare) = &placard.spare {
            lines.push(self.text("placard-spare", &[("printed", self.placard_tire(spare).into())]));
        }
        lines.join("; ")
    }

    fn placard_tire(&self, tire: &PlacardTire) -> String {
        let full = tire.full_load.map(|full| self.text("placard-full", &[("pressure", self.reading(&full).into())]));
        let size = tire.size.as_ref().map(|size| self.text("placard-size", &[("size", size.as_str().into())]));
        self.list(std::iter::once(self.reading(&tire.cold)).chain(full).chain(size))
    }

    /// A torque specification as printed: each printing, and the thread's condition when told.
    pub fn torque_spec(&self, spec: &TorqueSpec) -> String {
        let mut parts: Vec<String> = spec.printed.iter().map(|printed| self.printed(printed)).collect();
        match &spec.condition {
            Lubrication::NotKnown => {}
            Lubrication::Dry => parts.push(self.text("printed-dry", &[])),
            Lubrication::Oiled => parts.push(self.text("printed-oiled", &[])),
            Lubrication::AsManualSays(said) => parts.push(self.text("printed-words", &[("words", bare(said).into())])),
        }
        self.list(parts)
    }

    /// One torque as printed: a value, or `125 to 150 N·m`.
    pub(super) fn printed(&self, printed: &Printed) -> String {
        let Some(high) = printed.high() else { return self.reading(&printed.low()) };
        let range = |unit: crate::measure::TorqueUnit, decimals: usize| {
            let low = self.number(printed.low().in_unit(unit), decimals);
            let high = self.number(high.in_unit(unit), decimals);
            let value = self.text("printed-range", &[("low", low.into()), ("high", high.into())]);
            self.text(unit.sentence(), &[("value", value.into())])
        };
        let read = range(printed.unit(), 4);
        let unit = printed.unit().in_system(self.speech().units);
        if unit == printed.unit() {
            return read;
        }
        self.text("unit-converted", &[("shown", range(unit, unit.decimals()).into()), ("read", read.into())])
    }
}

/// The reason that a fact gives.
fn reason_of(fact: &Fact) -> Option<&str> {
    match fact {
        Fact::JobParked { reason, .. }
        | Fact::JobClosed { reason, .. }
        | Fact::TireRemoved { reason, .. }
        | Fact::StepSkipped { reason, .. }
        | Fact::GateOpened { reason, .. }
        | Fact::ToolRetired { reason, .. }
        | Fact::Archived { reason, .. }
        | Fact::Corrected { reason, .. }
        | Fact::Withdrawn { reason, .. } => Some(reason),
        Fact::TreadMeasured { reason, .. } => reason.as_deref(),
        _ => None,
    }
}

/// Where a fact that names a place stands; `Some(None)` when it speaks of the whole vehicle.
fn stands_at(fact: &Fact) -> Option<Option<Place>> {
    match fact {
        Fact::TireFitted { at, .. }
        | Fact::TireStored { at, .. }
        | Fact::MarkChalked { at, .. }
        | Fact::MarkRead { at, .. }
        | Fact::SidewallRead { at, .. }
        | Fact::TreadMeasured { at, .. }
        | Fact::AroundMeasured { at, .. }
        | Fact::PressureMeasured { at, .. }
        | Fact::WheelOff { at, .. }
        | Fact::WheelOn { at, .. }
        | Fact::WheelShared { at, .. }
        | Fact::NutTightened { at, .. } => Some(Some(*at)),
        Fact::DamageSeen { at, .. } | Fact::Lifted { at, .. } => Some(*at),
        Fact::FindingNoted { look, .. } => Some(look.at),
        Fact::PhotoPending { at, .. }
        | Fact::PhotoTaken { at, .. }
        | Fact::SensorRead { at, .. }
        | Fact::StepDone { at, .. }
        | Fact::StepSkipped { at, .. }
        | Fact::GateOpened { at, .. } => at.map(Some),
        _ => None,
    }
}
