//! Opening, stopping and signing jobs; answers, gates and corrections.

use std::path::Path;

use super::{Acting, Done, Outcome, clipped};
use crate::caution;
use crate::due;
use crate::engine::{Trouble, TroubleKind};
use crate::entry::{
    Answer, Complaint, Decision, DriveSeen, Fact, Kind, NoStrokes, OdometerNote, Personal, PhotoOf, Shelf, Signature,
    Strokes, Thing,
};
use crate::ident::{JobId, PersonId};
use crate::logbook::Status;
use crate::measure::{Distance, DistanceUnit};
use crate::procedure::{Ask, Bay, Procedure, Step, Task, TaskState};
use crate::vehicle::hub::Evidence;
use crate::vehicle::{Drive, Place};
use crate::words::Units;

impl<'a> Acting<'a> {
    pub(super) fn open_job(&self, vehicle: &str, id: &str, given: Vec<String>, practice: bool) -> Done {
        let vehicle = self.vehicle(Some(vehicle))?;
        if self.book.is_archived(Thing::Vehicle(vehicle.id)) {
            let name = ("name", vehicle.name.as_str().into());
            return Err(Trouble::mend(self.words, "trouble-archived-vehicle", &[name]));
        }
        if let Some(open) = self.book.in_bay() {
            return Err(Trouble::mend(self.words, "trouble-bay-taken", &[("job", open.number.into())]));
        }
        let Some(procedure) = self.procedures.iter().find(|procedure| procedure.id == id.trim()) else {
            let known = self.words.list(self.procedures.iter().map(|procedure| procedure.id.clone()));
            let args = [("given", clipped(id).into()), ("known", known.into())];
            return Err(Trouble::mend(self.words, "trouble-procedure", &args));
        };
        let kind = caution::kind_of(vehicle.class, &vehicle.layout);
        if !caution::applies(&procedure.fits, &kind) {
            let known = self.words.list(procedure.fits.iter().map(|kind| self.words.circumstance(kind.code())));
            let args = [("title", self.words.title(procedure).into()), ("known", known.into())];
            return Err(Trouble::mend(self.words, "trouble-not-this-vehicle", &args));
        }
        let own = if vehicle.own { "own" } else { "customer" };
        let circumstances = self.settle(procedure, given, own)?;
        let at_hand = self.tools_for(procedure, &circumstances);
        let job = JobId::from_parts(self.now_ms(), self.host.random());
        let number = self.book.jobs.len().saturating_add(1);
        let said = self.words.text(
            "said-job-opened",
            &[
                ("job", number.into()),
                ("vehicle", vehicle.name.as_str().into()),
                ("title", self.words.title(procedure).into()),
            ],
        );
        let outcome = Outcome::fact(Fact::JobOpened {
            job,
            vehicle: vehicle.id,
            procedure: procedure.id.clone(),
            version: procedure.version,
            circumstances,
        })
        .note(said);
        let outcome = self.take_tools(job, at_hand, outcome);
        Ok(if practice { Outcome { practice, ..outcome.note(self.words.text("said-practice", &[])) } } else { outcome })
    }

    /// One circumstance of each row that the procedure leaves open: the only one,
    /// the vehicle's own, one that was given, or what the tools at hand say.
    fn settle(&self, procedure: &Procedure, given: Vec<String>, own: &str) -> Result<Vec<String>, Trouble> {
        let mut circumstances = Vec::new();
        let mut left = given;
        for row in &procedure.settle {
            let chosen = match row.as_slice() {
                [only] => Some(only.clone()),
                row if row.iter().any(|code| code == own) => Some(own.to_owned()),
                row => left.iter().find(|code| row.contains(code)).cloned().or_else(|| self.by_tools(row)),
            };
            let Some(chosen) = chosen else {
                let known = self.words.list(row.iter().cloned());
                return Err(Trouble::mend(self.words, "trouble-circumstance", &[("known", known.into())]));
            };
            left.retain(|code| *code != chosen);
            circumstances.push(chosen);
        }
        match left.first() {
            Some(unknown) => {
                let known = self.words.list(procedure.settle.iter().flatten().cloned());
                let args = [("given", clipped(unknown).into()), ("known", known.into())];
                Err(Trouble::mend(self.words, "trouble-unknown-circumstance", &args))
            }
            None => Ok(circumstances),
        }
    }

    pub(super) fn park_job(&self, bay: &Bay<'_>, reason: String) -> Done {
        let reason = self.text("what-reason", &reason)?;
        let said = self.words.text("said-parked", &[("job", bay.job.number.into())]);
        Ok(Outcome::fact(Fact::JobParked { job: bay.job.id, reason }).note(said))
    }

    pub(super) fn resume_job(&self, number: Option<usize>) -> Done {
        if let Some(open) = self.book.in_bay() {
            return Err(Trouble::mend(self.words, "trouble-bay-taken", &[("job", open.number.into())]));
        }
        let parked = |job: &&crate::logbook::Job| {
            job.status == Status::Parked && number.is_none_or(|number| job.number == number)
        };
        match self.book.jobs.iter().rev().find(parked) {
            Some(job) => Ok(Outcome::fact(Fact::JobResumed { job: job.id })),
            None => Err(Trouble::mend(self.words, "trouble-nothing-parked", &[])),
        }
    }

    pub(super) fn close_job(&self, bay: &Bay<'_>, reason: String) -> Done {
        let reason = self.text("what-reason", &reason)?;
        let said = self.words.text("said-closed", &[("job", bay.job.number.into())]);
        Ok(Outcome::fact(Fact::JobClosed { job: bay.job.id, reason }).note(said))
    }

    pub(super) fn sign(&self, bay: &Bay<'_>, author: PersonId, drawn: Option<String>) -> Done {
        self.gate(bay, Ask::Signature, None)?;
        let left = bay.tasks().into_iter().find(|task| !task.state.is_over() && task.step.asks != Ask::Signature);
        if let Some(task) = left {
            let sentence = self.task_sentence(bay, &task);
            let at = self.task_at(bay, &task);
            let args = [("step", sentence.into())];
            return Err(Trouble::new(TroubleKind::Held, self.words, "trouble-steps-left", &args).at(at));
        }
        let name = self.book.person(author).and_then(|person| person.name.clone()).unwrap_or_default();
        let (signature, personal) = self.signature(Some(name.clone()).filter(|_| drawn.is_some()), drawn)?;
        let fact = Fact::JobSigned { job: bay.job.id, signature, seen: self.head };
        let args = [("job", bay.job.number.into()), ("name", name.into())];
        let outcome = Outcome { facts: vec![(fact, personal)], ..Outcome::default() };
        Ok(outcome.note(self.words.text("said-signed", &args)))
    }

    fn task_sentence(&self, bay: &Bay<'_>, task: &Task<'_>) -> String {
        let place = task.at.map(|at| format!("{}: ", self.name_of(bay, at))).unwrap_or_default();
        format!("{place}{}", self.words.step(task.step))
    }

    fn task_at(&self, bay: &Bay<'_>, task: &Task<'_>) -> String {
        let place = task.at.map(|at| format!(" {}", self.name_of(bay, at))).unwrap_or_default();
        format!("{}{place}", task.step.id)
    }

    pub(super) fn complain(&self, bay: &Bay<'_>, text: &str) -> Done {
        let text = self.text("what-complaint", text)?;
        Ok(Outcome::fact(Fact::ComplaintHeard { job: bay.job.id, complaint: Complaint { text } }))
    }

    pub(super) fn damage(&self, bay: &Bay<'_>, at: Option<&str>, text: Option<String>, photo: Option<usize>) -> Done {
        let at = at.map(|at| self.place(bay, at)).transpose()?;
        let text = text.map(|text| self.text("what-damage", &text)).transpose()?;
        let photo = photo.map(|number| self.photo_numbered(bay, number)).transpose()?;
        Ok(Outcome::fact(Fact::DamageSeen { job: bay.job.id, at, text, photo }))
    }

    pub(super) fn approve(&self, bay: &Bay<'_>, approved: bool, by: Option<&str>, drawn: Option<String>) -> Done {
        let outcome = self.approval(bay, "work", approved, by, drawn)?;
        Ok(if approved { outcome } else { outcome.note(self.words.text("said-declined", &[])) })
    }

    pub(super) fn unsafe_told(&self, bay: &Bay<'_>, accepts: bool, by: Option<&str>, drawn: Option<String>) -> Done {
        self.approval(bay, Fact::UNSAFE_TOLD, accepts, by, drawn)
    }

    fn approval(&self, bay: &Bay<'_>, what: &str, approved: bool, by: Option<&str>, drawn: Option<String>) -> Done {
        let by = by.map(|name| self.text("what-name", name)).transpose()?;
        let (signature, personal) = self.signature(by, drawn)?;
        let fact = Fact::WorkApproved { job: bay.job.id, what: what.to_owned(), approved, signature };
        Ok(Outcome { facts: vec![(fact, personal)], ..Outcome::default() })
    }

    /// How somebody signed, and the name and what was drawn, which can be erased by that name.
    fn signature(&self, name: Option<String>, drawn: Option<String>) -> Result<(Signature, Option<Personal>), Trouble> {
        let Some(drawn) = drawn else {
            return Ok((Signature::Name, name.map(|name| Personal { name: Some(name), ..self.personal() })));
        };
        if name.is_none() {
            return Err(Trouble::mend(self.words, "trouble-whose-signature", &[]).at("by"));
        }
        let drawn: Strokes = drawn.parse().map_err(|why| {
            let id = match why {
                NoStrokes::TooLong => "trouble-signature-long",
                NoStrokes::Empty | NoStrokes::Point => "trouble-signature-drawn",
            };
            Trouble::mend(self.words, id, &[]).at("drawn")
        })?;
        let personal = Personal { name, drawn: Some(drawn.to_string()), ..self.personal() };
        Ok((Signature::Drawn { strokes: Vec::new() }, Some(personal)))
    }

    pub(super) fn odometer(&self, bay: &Bay<'_>, text: &str, estimated: bool, replaced: bool) -> Done {
        let default = match self.words.speech().units {
            Units::AsRead => None,
            Units::Metric => Some(DistanceUnit::Kilometre),
            Units::Us => Some(DistanceUnit::Mile),
        };
        let reading = self.reading(text, default)?;
        let note = match (estimated, replaced) {
            (_, true) => Some(OdometerNote::ClusterReplaced),
            (true, false) => Some(OdometerNote::Estimated),
            (false, false) => None,
        };
        if note.is_none() {
            self.not_behind(bay, &reading)?;
        }
        Ok(Outcome::fact(Fact::OdometerRead { job: bay.job.id, reading, note }))
    }

    /// An odometer does not run backwards, unless it was replaced.
    fn not_behind(&self, bay: &Bay<'_>, reading: &Distance) -> Result<(), Trouble> {
        let before = self
            .book
            .jobs
            .iter()
            .rev()
            .filter(|job| job.vehicle == bay.vehicle.id && job.id != bay.job.id && !job.practice)
            .find_map(crate::logbook::Job::odometer);
        match before {
            Some(before) if *reading < before => {
                let args =
                    [("now", self.words.reading(reading).into()), ("before", self.words.reading(&before).into())];
                Err(Trouble::mend(self.words, "trouble-odometer-behind", &args))
            }
            _ => Ok(()),
        }
    }

    pub(super) fn not_known(&self, bay: &Bay<'_>, what: Kind) -> Done {
        if !matches!(what, Kind::Torque | Kind::Placard) {
            return Err(Trouble::mend(self.words, "trouble-not-known", &[]));
        }
        let id = if what == Kind::Torque { "said-torque-unknown" } else { "said-placard-unknown" };
        Ok(Outcome::fact(Fact::SpecificationUnknown { job: bay.job.id, what }).note(self.words.text(id, &[])))
    }

    pub(super) fn hub(&self, bay: &Bay<'_>, at: Option<&str>, mut evidence: Evidence) -> Done {
        if let Some(place) = at.map(|at| self.wheel(bay, at)).transpose()?.and_then(Place::position) {
            (evidence.axle, evidence.side) = (place.axle, place.side);
        }
        let axles = bay.vehicle.layout.axles.len();
        if evidence.axle == 0 || usize::from(evidence.axle) > axles {
            return Err(Trouble::mend(self.words, "trouble-no-axle", &[("count", axles.into())]));
        }
        self.drive_seen(bay, DriveSeen::Hub { evidence })
    }

    pub(super) fn owner_says(&self, bay: &Bay<'_>, drive: Drive) -> Done {
        self.drive_seen(bay, DriveSeen::Owner { drive })
    }

    /// Keeps what was seen of the drive, and says what it comes to now.
    fn drive_seen(&self, bay: &Bay<'_>, seen: DriveSeen) -> Done {
        let noted: Vec<DriveSeen> = bay.job.drive_seen().cloned().chain([seen.clone()]).collect();
        let (evidence, told) = crate::drive::noted(&noted);
        let verdict = crate::drive::verdict(&bay.vehicle.layout, bay.vehicle.class, &evidence, &told);
        let outcome = Outcome::fact(Fact::DriveSeen { job: bay.job.id, seen });
        if bay.to_answer(Decision::Drive) {
            return Ok(outcome.note(self.words.text("said-look-kept", &[])));
        }
        Ok(outcome.note(self.words.verdict(&verdict, &bay.vehicle.layout)))
    }

    pub(super) fn photo_pending(&self, bay: &Bay<'_>, of: PhotoOf, at: Option<&str>) -> Done {
        let at = at.map(|at| self.place(bay, at)).transpose()?;
        Ok(Outcome::fact(Fact::PhotoPending { job: bay.job.id, of, at }))
    }

    pub(super) fn photo(&self, bay: &Bay<'_>, file: &Path, of: PhotoOf, at: Option<&str>) -> Done {
        let at = at.map(|at| self.place(bay, at)).transpose()?;
        let intake =
            self.photos.intake_file(file, self.host.now()).map_err(|why| Trouble::of_photos(&why, self.words))?;
        let number = super::photos_of(bay.job).len().saturating_add(1);
        let mut outcome = Outcome::fact(Fact::PhotoTaken {
            job: Some(bay.job.id),
            photo: intake.id,
            of,
            at,
            taken: intake.taken.as_ref().map(ToString::to_string),
        })
        .note(self.words.text("said-photo", &[("number", number.into())]));
        if intake.duplicate {
            outcome = outcome.note(self.words.text("said-photo-duplicate", &[]));
        }
        if !intake.judgement.is_good() {
            outcome = outcome.note(self.words.judgement(&intake.judgement));
        }
        Ok(outcome)
    }

    pub(super) fn tell_recheck(&self, bay: &Bay<'_>) -> Done {
        let left = bay.rechecks_left();
        let printed: Vec<Distance> = match bay.book.on_shelf(&bay.vehicle.model, Kind::Torque).map(|s| &s.shelf) {
            Some(Shelf::Torque { spec, .. }) => spec.recheck.iter().map(|recheck| recheck.by).collect(),
            _ => Vec::new(),
        };
        let after = if !left.is_empty() {
            left
        } else if printed.is_empty() {
            let unit = bay.job.odometer().map_or(DistanceUnit::Mile, |reading| reading.unit());
            due::trade_recheck(unit).map(|window| vec![window.by]).unwrap_or_default()
        } else {
            printed
        };
        let told = self.words.list(after.iter().map(|distance| self.words.reading(distance)));
        let said = self.words.text("said-recheck", &[("after", told.into())]);
        Ok(Outcome::fact(Fact::RecheckTold { job: bay.job.id, after }).note(said))
    }

    /// The task that a command means: the named step, else the next thing to do.
    fn task(&self, bay: &Bay<'a>, step: Option<&str>, at: Option<&str>) -> Result<(&'a Step, Option<Place>), Trouble> {
        let at = at.map(|at| self.place(bay, at)).transpose()?;
        let Some(id) = step else {
            return match bay.next() {
                Some(task) => Ok((task.step, task.at)),
                None => Err(Trouble::mend(self.words, "trouble-all-over", &[])),
            };
        };
        let of_step = |task: &&Task<'_>| task.step.id == id.trim() && (at.is_none() || task.at == at);
        let tasks = bay.tasks();
        // The first one that is still open, so that no place needs to be named.
        let open = tasks.iter().filter(of_step).find(|task| !task.state.is_over());
        match open.or_else(|| tasks.iter().find(of_step)) {
            Some(task) => Ok((task.step, task.at)),
            None => {
                let args = [("given", clipped(id).into())];
                Err(Trouble::mend(self.words, "trouble-no-step", &args))
            }
        }
    }

    pub(super) fn answer(&self, bay: &Bay<'a>, step: Option<&str>, at: Option<&str>, given: &str) -> Done {
        let (step, at) = self.task(bay, step, at)?;
        let wrong = || {
            let wanted = self.words.ask(step);
            let args = [("given", clipped(given).into()), ("wanted", wanted.into())];
            Trouble::mend(self.words, "trouble-answer", &args).at(step.id.clone())
        };
        let given = given.trim();
        let answer = match step.asks {
            Ask::Seen | Ask::Rocked | Ask::Ready if given.eq_ignore_ascii_case("seen") => Answer::Seen,
            Ask::Choice if step.choices.iter().any(|choice| choice == given) => Answer::Choice(given.to_owned()),
            Ask::Count | Ask::Studs => Answer::Count(given.parse().map_err(|_| wrong())?),
            _ => return Err(wrong()),
        };
        if !step.asks.takes(&answer) {
            return Err(wrong());
        }
        self.gate_of(bay, step, at)?;
        if step.choices.iter().any(|choice| choice == given) && bay.rests_on(step) {
            self.not_begun(bay)?;
        }
        Ok(Outcome::fact(Fact::StepDone { job: bay.job.id, step: step.id.clone(), at, answer }))
    }

    /// Skips a task; a step named without a place is skipped wherever it is still open.
    pub(super) fn skip(&self, bay: &Bay<'a>, step: Option<&str>, at: Option<&str>, reason: &str) -> Done {
        let everywhere = step.is_some() && at.is_none();
        let (step, at) = self.task(bay, step, at)?;
        let reason = self.text("what-reason", reason)?;
        if !step.may_skip {
            let args = [("step", self.words.step(step).into())];
            return Err(Trouble::new(TroubleKind::Held, self.words, "trouble-no-skip", &args).at(step.id.clone()));
        }
        let mut places = vec![at];
        if everywhere {
            let open = bay.tasks().into_iter().filter(|task| task.step.id == step.id && !task.state.is_over());
            places.extend(open.map(|task| task.at).filter(|place| *place != at));
        }
        let skipped = |at| Fact::StepSkipped { job: bay.job.id, step: step.id.clone(), at, reason: reason.clone() };
        Ok(places.into_iter().map(skipped).fold(Outcome::default(), Outcome::and))
    }

    pub(super) fn open_gate(&self, bay: &Bay<'a>, step: Option<&str>, at: Option<&str>, reason: &str) -> Done {
        let reason = self.text("what-reason", reason)?;
        let (step, at) = self.task(bay, step, at)?;
        let unmet = match bay.state(step, at) {
            TaskState::Held(unmet) => unmet,
            _ => Vec::new(),
        };
        // A mark that does not fit is held while the wheel is in the hands, before anything is kept.
        let conditions: Vec<_> = if unmet.is_empty() && step.asks == Ask::Started {
            vec![crate::procedure::Condition::MarkFits]
        } else {
            unmet.iter().map(crate::procedure::Unmet::condition).collect()
        };
        if conditions.is_empty() {
            let args = [("step", self.words.step(step).into())];
            return Err(Trouble::mend(self.words, "trouble-no-gate", &args).at(step.id.clone()));
        }
        let mut outcome = Outcome::default();
        for condition in conditions {
            outcome = outcome.and(Fact::GateOpened {
                job: bay.job.id,
                step: step.id.clone(),
                at,
                condition: condition.code().to_owned(),
                reason: reason.clone(),
            });
        }
        Ok(outcome.note(self.words.text("said-gate-opened", &[])))
    }

    fn line<'j>(&self, bay: &'j Bay<'_>, number: usize) -> Result<&'j crate::logbook::Line, Trouble> {
        number.checked_sub(1).and_then(|at| bay.job.lines.get(at)).ok_or_else(|| {
            let args = [("given", number.into()), ("count", bay.job.lines.len().into())];
            Trouble::mend(self.words, "trouble-no-line", &args)
        })
    }

    pub(super) fn correct(&self, bay: &Bay<'a>, number: usize, value: &str, reason: &str) -> Done {
        let line = self.line(bay, number)?;
        let reason = self.text("what-reason", reason)?;
        let fact = match &line.fact {
            Fact::OdometerRead { reading, note, .. } => {
                Fact::OdometerRead { job: bay.job.id, reading: self.reading(value, Some(reading.unit()))?, note: *note }
            }
            Fact::TreadMeasured { tire, at, lowest, .. } => {
                let (grooves, low) = self.depths(value, Some(lowest.unit()))?;
                Fact::TreadMeasured { job: bay.job.id, tire: *tire, at: *at, grooves, lowest: low, reason: None }
            }
            Fact::SidewallRead { tire, at, side, by, looks, .. } => Fact::SidewallRead {
                job: bay.job.id,
                tire: *tire,
                at: *at,
                side: *side,
                text: self.marking(value)?.0,
                by: by.clone(),
                looks: *looks,
            },
            Fact::PressureMeasured { at, pressure, set, cold, .. } => Fact::PressureMeasured {
                job: bay.job.id,
                at: *at,
                pressure: self.reading(value, Some(pressure.unit()))?,
                set: *set,
                cold: *cold,
            },
            Fact::MarkChalked { at, tire, photo, .. } => Fact::MarkChalked {
                job: bay.job.id,
                at: *at,
                tire: *tire,
                mark: self.text("what-mark", value)?,
                photo: *photo,
            },
            Fact::DamageSeen { at, photo, .. } => Fact::DamageSeen {
                job: bay.job.id,
                at: *at,
                text: Some(self.text("what-damage", value)?),
                photo: *photo,
            },
            Fact::ComplaintHeard { .. } => Fact::ComplaintHeard {
                job: bay.job.id,
                complaint: Complaint { text: self.text("what-complaint", value)? },
            },
            _ => return Err(Trouble::mend(self.words, "trouble-not-correctable", &[("line", number.into())])),
        };
        let said = self.words.text("said-corrected", &[("line", number.into())]);
        Ok(Outcome::fact(Fact::Corrected { target: line.entry, fact: Box::new(fact), reason }).note(said))
    }

    pub(super) fn withdraw(&self, bay: &Bay<'a>, number: usize, reason: &str) -> Done {
        let line = self.line(bay, number)?;
        let reason = self.text("what-reason", reason)?;
        if matches!(line.fact, Fact::JobOpened { .. }) {
            return Err(Trouble::mend(self.words, "trouble-not-withdrawn", &[]));
        }
        let said = self.words.text("said-withdrawn", &[("line", number.into())]);
        Ok(Outcome::fact(Fact::Withdrawn { target: line.entry, reason, undo: false }).note(said))
    }
}
