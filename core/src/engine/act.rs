//! Carrying out commands: each is read, held against the gates, and becomes facts.

mod archive;
mod job;
mod learn;
mod limits;
mod people;
mod set;
mod shelf;
mod tools;
mod wheel;

use super::trouble::clipped;
use super::undo::Spoken;
use super::{Command, Host, Trouble, TroubleKind};
use crate::entry::{Arm, CoverBox, Fact, Personal, ReadBy, Thing};
use crate::ident::{Digest, JobId, PersonId};
use crate::logbook::{Book, Job, Status, Vehicle};
use crate::measure::Reading;
use crate::photos::Photos;
use crate::procedure::{Ask, Bay, Condition, Procedure};
use crate::vehicle::Place;
use crate::words::{Worded, Words};

/// The longest text that is taken, in characters.
const LONGEST_TEXT: usize = 500;

/// What a command is carried out with.
pub(super) struct Acting<'a> {
    pub book: &'a Book,
    pub photos: &'a Photos,
    pub procedures: &'a [Procedure],
    pub host: &'a dyn Host,
    pub head: Option<Digest>,
    pub words: &'a Words,
    /// What this device said last, where the command takes it back.
    pub spoken: &'a [Spoken],
}

/// What a command came to: facts to keep and sentences to show.
pub(super) struct Said {
    pub author: PersonId,
    pub practice: bool,
    pub facts: Vec<(Fact, Option<Personal>)>,
    pub sentences: Vec<String>,
    /// It is refused all the same: the facts tell of the attempt.
    pub refusal: Option<Trouble>,
}

/// Facts and sentences on their way.
#[derive(Default)]
struct Outcome {
    facts: Vec<(Fact, Option<Personal>)>,
    sentences: Vec<String>,
    /// They open a practice job.
    practice: bool,
    /// It is refused all the same.
    refusal: Option<Trouble>,
}

impl Outcome {
    fn fact(fact: Fact) -> Self {
        Self { facts: vec![(fact, None)], ..Self::default() }
    }

    fn and(mut self, fact: Fact) -> Self {
        self.facts.push((fact, None));
        self
    }

    fn note(mut self, sentence: String) -> Self {
        self.sentences.push(sentence);
        self
    }
}

type Done = Result<Outcome, Trouble>;

impl<'a> Acting<'a> {
    /// Carries out one command.
    pub(super) fn carry_out(&self, author: Option<&str>, command: Command) -> Result<Said, Trouble> {
        let (author, outcome) = match command {
            Command::AddPerson { name, role, phone } => self.add_person(author, &name, role, phone)?,
            command => {
                let author = self.author(author)?;
                (author, self.of(author, command)?)
            }
        };
        let Outcome { facts, sentences, practice, refusal } = outcome;
        Ok(Said { author, practice, facts, sentences, refusal })
    }

    fn of(&self, author: PersonId, command: Command) -> Done {
        match command {
            Command::AddPerson { .. } => Ok(Outcome::default()),
            Command::AddVehicle { name, model, class, axles, has, spare, own, plate } => {
                let wheels = shelf::Wheels { class, axles: &axles, spare };
                self.add_vehicle(&name, &model, &wheels, has, own, plate)
            }
            Command::AddTool { name, papers } => self.add_tool(&name, &papers),
            Command::RetireTool { tool, reason } => self.retire_tool(&tool, &reason),
            Command::Equip { vehicle, has } => self.equip(vehicle.as_deref(), has),
            Command::RecordTorque { vehicle, printed, thread, condition, recheck, studs, source, photo } => self
                .record_torque(
                    vehicle.as_deref(),
                    &shelf::Page {
                        printed: &printed,
                        thread: thread.as_deref(),
                        condition: condition.as_deref(),
                        recheck: &recheck,
                        studs,
                    },
                    &source,
                    photo,
                ),
            Command::RecordPlacard { vehicle, axles, spare, size, source, photo } => {
                self.record_placard(vehicle.as_deref(), &axles, spare.as_deref(), size, &source, photo)
            }
            Command::RecordDrive { vehicle, drive, source } => self.record_drive(vehicle.as_deref(), drive, &source),
            Command::RecordPattern { vehicle, pattern, source } => {
                self.record_pattern(vehicle.as_deref(), &pattern, &source)
            }
            Command::RecordLiftPoints { vehicle, text, source } => {
                self.record_lift_points(vehicle.as_deref(), &text, &source)
            }
            Command::RecordBrakes { vehicle, pads, source } => self.record_brakes(vehicle.as_deref(), &pads, &source),
            Command::ChooseLimits { region, season, at_limit, watch, this_job } => {
                self.choose_limits(region, season, [at_limit.as_deref(), watch.as_deref()], this_job)
            }
            Command::SetCode { person, code, current } => self.set_code(&person, &code, current.as_ref()),
            Command::SignSteps { by, code, steps, at, every_job } => {
                self.sign_steps(&by, &code, &learn::Wanted { steps: &steps, at: at.as_deref(), every_job })
            }
            Command::OpenJob { vehicle, procedure, circumstances, practice } => {
                self.open_job(&vehicle, &procedure, circumstances, practice)
            }
            Command::Undo => self.undo(),
            Command::Archive { kept, name, reason } => self.archive(kept, &name, &reason),
            Command::BringBack { kept, name } => self.bring_back(kept, &name),
            Command::ResumeJob { job } => self.resume_job(job),
            Command::Cover { photo, job, boxes } => self.cover(photo, job, &boxes),
            command => self.in_job(author, command),
        }
    }

    fn in_job(&self, author: PersonId, command: Command) -> Done {
        let bay = self.bay()?;
        match command {
            Command::NotKnown { what } => self.not_known(&bay, what),
            Command::ParkJob { reason } => self.park_job(&bay, reason),
            Command::CloseJob { reason } => self.close_job(&bay, reason),
            Command::Sign { drawn } => self.sign(&bay, author, drawn),
            Command::Hands { person } => self.hands(&bay, &person),
            Command::AnswerFirst { on } => self.answer_first(&bay, on),
            Command::AnswerDecision { decision, answer } => self.answer_decision(&bay, decision, &answer),
            Command::ShareWheels { person, at } => self.share_wheels(&bay, &person, &at),
            Command::UseTool { tool } => self.use_tool(&bay, &tool),
            Command::Complain { text } => self.complain(&bay, &text),
            Command::Damage { at, text, photo } => self.damage(&bay, at.as_deref(), text, photo),
            Command::Approve { approved, by, drawn } => self.approve(&bay, approved, by.as_deref(), drawn),
            Command::UnsafeTold { accepts, by, drawn } => self.unsafe_told(&bay, accepts, by.as_deref(), drawn),
            Command::Odometer { reading, estimated, replaced } => self.odometer(&bay, &reading, estimated, replaced),
            Command::Hub { at, evidence } => self.hub(&bay, at.as_deref(), evidence),
            Command::OwnerSaysDrive { drive } => self.owner_says(&bay, drive),
            Command::PhotoPending { of, at } => self.photo_pending(&bay, of, at.as_deref()),
            Command::Photo { file, of, at } => self.photo(&bay, &file, of, at.as_deref()),
            Command::Sidewall { at, side, text, looks, coming, by } => {
                self.sidewall(&bay, (&at, coming), (side, by.unwrap_or(ReadBy::Typed)), &text, looks)
            }
            Command::Mark { at, mark, coming } => self.mark(&bay, (&at, coming), mark),
            Command::Tread { at, depths, lowest, reason, coming } => {
                self.tread(&bay, (&at, coming), &depths, lowest.as_deref(), reason)
            }
            Command::Around { at, around } => self.around(&bay, &at, &around),
            Command::Weigh { weight, rating } => self.weigh(&bay, &weight, &rating),
            Command::ChoosePlan { plan } => self.choose_plan(&bay, &plan),
            Command::ChooseWheels { at } => self.choose_wheels(&bay, &at),
            Command::Flat { at, good_wheel_forward } => self.flat(&bay, &at, good_wheel_forward),
            Command::Spare { flat, text, pressure, nuts, studs, limit, replace_by } => {
                let printed = wheel::OnTheSpare { pressure, studs, limit, replace_by };
                self.spare(&bay, &flat, &text, nuts, &printed)
            }
            Command::BringSet { new } => self.bring_set(&bay, new),
            Command::Store { rack, at } => self.store(&bay, &rack, at.as_deref()),
            Command::Lift { arm } => self.lift(&bay, arm),
            Command::WheelOff { at } => self.wheel_off(&bay, &at),
            Command::Look { at, part, state, note, damage, thickness, least, photo } => {
                let seen = wheel::Seen { state, note, damage, thickness, least, photo };
                self.look(&bay, at.as_deref(), part, seen)
            }
            Command::Hang { at, mark } => self.hang(&bay, &at, &mark),
            Command::Nuts { at, pass, nut, moved } => self.nuts(&bay, &at, pass, nut, moved),
            Command::Pressure { at, pressure, set, cold } => self.pressure(&bay, &at, &pressure, set, cold),
            Command::Sensor { at, number, coming } => self.sensor(&bay, (&at, coming), &number),
            Command::Relearn { outcome, method } => self.relearn(&bay, &outcome, method),
            Command::Lamp { on, sensors } => self.lamp(&bay, on, sensors),
            Command::TellRecheck => self.tell_recheck(&bay),
            Command::Answer { step, at, answer } => self.answer(&bay, step.as_deref(), at.as_deref(), &answer),
            Command::Skip { step, at, reason } => self.skip(&bay, step.as_deref(), at.as_deref(), &reason),
            Command::OpenGate { step, at, reason } => self.open_gate(&bay, step.as_deref(), at.as_deref(), &reason),
            Command::Correct { line, value, reason } => self.correct(&bay, line, &value, &reason),
            Command::Withdraw { line, reason } => self.withdraw(&bay, line, &reason),
            // Everything else needs no job and was carried out before.
            _ => Ok(Outcome::default()),
        }
    }

    /// The person a name stands for; the only one who can work when none is given.
    fn author(&self, name: Option<&str>) -> Result<PersonId, Trouble> {
        let Some(name) = name else {
            let works = |person: &&crate::logbook::Person| {
                person.role != crate::entry::Role::Customer && !self.book.is_archived(Thing::Person(person.id))
            };
            let mut workers = self.book.people.iter().filter(works);
            return match (workers.next(), workers.next()) {
                (Some(only), None) => Ok(only.id),
                (None, _) => Err(Trouble::mend(self.words, "trouble-no-person", &[])),
                _ => Err(Trouble::mend(self.words, "trouble-which-person", &[("names", self.names().into())])),
            };
        };
        self.person(name)
    }

    /// A person who was not put away.
    fn person(&self, name: &str) -> Result<PersonId, Trouble> {
        let person = self.known_person(name)?;
        if self.book.is_archived(Thing::Person(person)) {
            let name = ("name", clipped(name).into());
            return Err(Trouble::mend(self.words, "trouble-archived-person", &[name]));
        }
        Ok(person)
    }

    fn known_person(&self, name: &str) -> Result<PersonId, Trouble> {
        let known = |person: &&crate::logbook::Person| {
            person.name.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(name.trim()))
        };
        self.book.people.iter().find(known).map(|person| person.id).ok_or_else(|| {
            let args = [("given", clipped(name).into()), ("names", self.names().into())];
            Trouble::mend(self.words, "trouble-unknown-person", &args)
        })
    }

    fn names(&self) -> String {
        self.words.list(self.book.people.iter().filter_map(|person| person.name.clone()))
    }

    /// The job in the bay.
    fn bay(&self) -> Result<Bay<'a>, Trouble> {
        let Some(job) = self.book.in_bay() else {
            let parked = self.book.jobs.iter().any(|job| job.status == Status::Parked);
            let id = if parked { "trouble-job-parked" } else { "trouble-no-job" };
            return Err(Trouble::mend(self.words, id, &[]));
        };
        self.bay_of(job)
    }

    fn bay_of(&self, job: &'a Job) -> Result<Bay<'a>, Trouble> {
        self.procedures
            .iter()
            .find(|procedure| procedure.id == job.procedure)
            .and_then(|procedure| Bay::new(procedure, self.book, job))
            .ok_or_else(|| {
                Trouble::mend(self.words, "trouble-procedure-gone", &[("id", job.procedure.as_str().into())])
            })
    }

    /// The vehicle a name stands for; the one in the bay when none is given.
    fn vehicle(&self, name: Option<&str>) -> Result<&'a Vehicle, Trouble> {
        let Some(name) = name else {
            return match self.book.in_bay().and_then(|job| self.book.vehicle(job.vehicle)) {
                Some(vehicle) => Ok(vehicle),
                None => Err(Trouble::mend(self.words, "trouble-which-vehicle", &[])),
            };
        };
        self.book.vehicle_named(name).ok_or_else(|| Trouble::no_vehicle(self.book, name, self.words))
    }

    /// A place of the vehicle in the bay.
    fn place(&self, bay: &Bay<'_>, text: &str) -> Result<Place, Trouble> {
        bay.vehicle.layout.parse(text).ok_or_else(|| {
            let letters = self.words.speech().letters;
            let places =
                self.words.list(bay.vehicle.layout.places().map(|place| bay.vehicle.layout.name(place, letters)));
            let args = [("given", clipped(text).into()), ("places", places.into())];
            Trouble::mend(self.words, "trouble-no-place", &args).at(clipped(text))
        })
    }

    /// A place that has a wheel on a hub.
    fn wheel(&self, bay: &Bay<'_>, text: &str) -> Result<Place, Trouble> {
        match self.place(bay, text)? {
            Place::Spare => Err(Trouble::mend(self.words, "trouble-spare-has-no-hub", &[]).at("SP")),
            place => Ok(place),
        }
    }

    fn name_of(&self, bay: &Bay<'_>, place: Place) -> String {
        bay.vehicle.layout.name(place, self.words.speech().letters)
    }

    /// A reading as a person typed it.
    fn reading<U: Worded>(&self, text: &str, default: Option<U>) -> Result<Reading<U>, Trouble> {
        Reading::parse(text, default).map_err(|why| Trouble::said(self.words.misread::<U>(text, &why)))
    }

    /// Text that is not empty and not too long, without control characters.
    fn text(&self, what: &str, text: &str) -> Result<String, Trouble> {
        let text = text.trim();
        let what = ("what", self.words.text(what, &[]).into());
        if text.is_empty() {
            return Err(Trouble::mend(self.words, "trouble-empty", &[what]));
        }
        if text.chars().count() > LONGEST_TEXT {
            let most = ("most", LONGEST_TEXT.into());
            return Err(Trouble::mend(self.words, "trouble-too-long", &[what, most]));
        }
        if text.chars().any(char::is_control) {
            return Err(Trouble::mend(self.words, "trouble-control", &[what]));
        }
        Ok(text.to_owned())
    }

    /// A photo of this job by its number.
    fn photo_numbered(&self, bay: &Bay<'_>, number: usize) -> Result<Digest, Trouble> {
        photo_of_job(bay.job, number, self.words)
    }

    /// Covers parts of a photo of any job, signed ones too: it goes out after the work.
    fn cover(&self, number: usize, job: Option<usize>, parts: &[String]) -> Done {
        let job = match job {
            Some(number) => self.book.jobs.iter().find(|job| job.number == number),
            None => self.book.in_bay().or_else(|| self.book.jobs.last()),
        };
        let job = job.ok_or_else(|| Trouble::mend(self.words, "trouble-no-such-job", &[]))?;
        let photo = photo_of_job(job, number, self.words)?;
        let (width, height) = self.photos.size(photo).map_err(|why| Trouble::of_photos(&why, self.words))?;
        let boxes = parts.iter().map(|text| self.part(text, width, height)).collect::<Result<Vec<_>, _>>()?;
        let said =
            self.words.text("said-covered", &[("count", boxes.len().into()), ("number", number.to_string().into())]);
        Ok(Outcome::fact(Fact::PhotoCovered { photo, boxes }).note(said))
    }

    /// A part of a photo as a person types it.
    fn part(&self, text: &str, width: u32, height: u32) -> Result<CoverBox, Trouble> {
        let given = ("given", clipped(text).into());
        let numbers: Vec<u32> = text.split(',').map_while(|number| number.trim().parse().ok()).collect();
        let (&[left, top, wide, high], 4) = (numbers.as_slice(), text.split(',').count()) else {
            return Err(Trouble::mend(self.words, "trouble-box", &[given]));
        };
        if wide == 0 || high == 0 || left >= width || top >= height {
            let size = [given, ("width", width.to_string().into()), ("height", height.to_string().into())];
            return Err(Trouble::mend(self.words, "trouble-box-outside", &size));
        }
        Ok(CoverBox { left, top, width: wide, height: high })
    }

    /// Holds what is asked at a place against its gate.
    fn gate(&self, bay: &Bay<'_>, ask: Ask, at: Option<Place>) -> Result<(), Trouble> {
        match bay.step_at(ask, at) {
            Some((step, at)) => self.gate_of(bay, step, at),
            None => Ok(()),
        }
    }

    /// Once wheels are up in an order of lifts, what that order rests on stays as it is.
    fn not_begun(&self, bay: &Bay<'_>) -> Result<(), Trouble> {
        if bay.is_ordered() && bay.job.was_lifted(Arm::Full) {
            return Err(Trouble::new(TroubleKind::Held, self.words, "trouble-order-begun", &[]));
        }
        Ok(())
    }

    fn gate_of(&self, bay: &Bay<'_>, step: &crate::procedure::Step, at: Option<Place>) -> Result<(), Trouble> {
        let Some(unmet) = bay.unmet(step, at).into_iter().next() else { return Ok(()) };
        Err(self.held(bay, &step.id, &unmet, at))
    }

    fn held(&self, bay: &Bay<'_>, step: &str, unmet: &crate::procedure::Unmet, at: Option<Place>) -> Trouble {
        let sentence = self.words.unmet(unmet, &bay.vehicle.layout);
        let at = at.or(unmet.at()).map(|place| self.name_of(bay, place));
        Trouble {
            kind: TroubleKind::Held,
            sentence,
            at: Some(at.map_or_else(|| step.to_owned(), |at| format!("{step} {at}"))),
            pointer: None,
        }
    }

    /// Whether a condition of a step was opened with a reason.
    fn is_opened(&self, bay: &Bay<'_>, ask: Ask, at: Option<Place>, condition: Condition) -> bool {
        bay.step_at(ask, at).is_some_and(|(step, at)| bay.job.opened_with(&step.id, at, condition.code()).is_some())
    }

    fn job_id(bay: &Bay<'_>) -> JobId {
        bay.job.id
    }

    fn salt(&self) -> [u8; 16] {
        let (one, two) = (self.host.random(), self.host.random());
        std::array::from_fn(|at| one.iter().chain(&two).nth(at).copied().unwrap_or_default())
    }

    /// A personal part that holds nothing yet.
    fn personal(&self) -> Personal {
        Personal::salted(self.salt())
    }

    fn now_ms(&self) -> u64 {
        self.host.now().unix_ms().unsigned_abs()
    }
}

/// A photo of a job by its number.
pub(super) fn photo_of_job(job: &Job, number: usize, words: &Words) -> Result<Digest, Trouble> {
    let photos = photos_of(job);
    number.checked_sub(1).and_then(|at| photos.get(at)).copied().ok_or_else(|| {
        let args = [("given", number.into()), ("count", photos.len().into())];
        Trouble::mend(words, "trouble-no-photo", &args)
    })
}

/// The photos of a job, in the order they were taken: their numbers run from 1.
pub(super) fn photos_of(job: &Job) -> Vec<Digest> {
    job.lines
        .iter()
        .filter_map(|line| match line.fact {
            Fact::PhotoTaken { photo, .. } => Some(photo),
            _ => None,
        })
        .collect()
}
