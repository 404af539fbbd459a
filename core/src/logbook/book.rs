//! What the entries add up to: the book as it stands.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::sync::Arc;

use serde::{Deserialize, Serialize};

use super::kept::Kept;
use super::{Archive, Job, Line, Lines, Said, Span, Status, Tool, pairs};
use crate::calendar::Moment;
use crate::entry::{CoverBox, Entry, Fact, HybridTime, Kind, Role, Shelf, SidewallSide, Thing, TireLooks};
use crate::ident::{Digest, EntryId, JobId, PersonId, StreamId, TireId, ToolId, VehicleId};
use crate::limits::Chosen;
use crate::measure::{Depth, Distance};
use crate::vehicle::{Class, Equipment, Layout, Place};

/// A person.
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Person {
    /// The person's id.
    pub id: PersonId,
    /// The name, unless it was erased.
    pub name: Option<String>,
    /// What the person may do.
    pub role: Role,
    /// The salted hash of the code that an instructor signs with, when one was set.
    pub code: Option<String>,
    /// Wrong codes in a row since the last right one, and when the last one was given.
    pub refused: Option<(u32, Moment)>,
}

/// Without what is personal, which must not get into a log.
impl fmt::Debug for Person {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Person").field("id", &self.id).field("role", &self.role).finish_non_exhaustive()
    }
}

/// A vehicle.
#[derive(Clone, PartialEq, Serialize, Deserialize)]
pub struct Vehicle {
    /// Its id.
    pub id: VehicleId,
    /// What it is called in the shop.
    pub name: String,
    /// Make, model and year: the key of the shelf.
    pub model: String,
    /// The plate, unless it was erased or not given.
    pub plate: Option<String>,
    /// Its class.
    pub class: Class,
    /// Its axles and spare.
    pub layout: Layout,
    /// It belongs to the person who works on it.
    pub own: bool,
    /// Which tire is where now.
    #[serde(with = "pairs")]
    pub fitted: BTreeMap<Place, TireId>,
    /// Its wheels that are stored.
    pub stored: Vec<Stored>,
    /// What it has that changes how it is raised; `None` as long as nobody looked.
    pub equipment: Option<Vec<Equipment>>,
}

/// Without what is personal, which must not get into a log.
impl fmt::Debug for Vehicle {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Vehicle")
            .field("id", &self.id)
            .field("class", &self.class)
            .field("layout", &self.layout)
            .field("own", &self.own)
            .field("fitted", &self.fitted)
            .field("stored", &self.stored)
            .finish_non_exhaustive()
    }
}

/// A wheel in store.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stored {
    /// Its tire.
    pub tire: TireId,
    /// Where it was on the vehicle.
    pub at: Place,
    /// Where it is kept.
    pub rack: String,
    /// In which job it was put there.
    pub job: JobId,
    /// When.
    pub when: Moment,
}

/// What stands on the shelf for a model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Specification {
    /// What is printed.
    pub shelf: Shelf,
    /// Where.
    pub source: String,
    /// The photo of the page or label.
    pub photo: Option<Digest>,
    /// The entry.
    pub entry: EntryId,
    /// When it was recorded.
    pub at: Moment,
}

/// Tread as it was measured once.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(into = "Kept", try_from = "Kept")]
pub struct DepthSeen {
    /// In this job.
    pub job: JobId,
    /// Where the tire was.
    pub at: Place,
    /// The lowest spot.
    pub lowest: Depth,
    /// Each groove at each place around.
    pub grooves: Vec<Vec<Depth>>,
    /// The odometer reading of that job, when it had one.
    pub odometer: Option<Distance>,
    /// When.
    pub when: Moment,
    /// The entry.
    pub entry: EntryId,
}

/// One tire's life in this book.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct TireHistory {
    /// The outer sidewall's text, as last read.
    pub outer: Option<String>,
    /// The inner sidewall's text.
    pub inner: Option<String>,
    /// What it looks like beyond its lettering.
    pub looks: TireLooks,
    /// The number of the pressure sensor in its wheel: it goes wherever the wheel goes.
    pub sensor: Option<String>,
    /// Tread over time, practice jobs left out.
    pub depths: Vec<DepthSeen>,
}

/// The book as it stands.
///
/// It can be kept as it is, without the lines of its jobs: [`Book::attach`]
/// says where those are read again.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Book {
    /// People, in the order they were added.
    pub people: Vec<Person>,
    /// Vehicles, in the order they were added.
    pub vehicles: Vec<Vehicle>,
    /// The shelf, by model (lower case) and kind.
    #[serde(with = "pairs")]
    pub shelf: BTreeMap<(String, Kind), Specification>,
    /// Whose limits hold: what was chosen for the book.
    pub limits: Chosen,
    /// Tools.
    pub tools: Vec<Tool>,
    /// Tires.
    #[serde(with = "pairs")]
    pub tires: BTreeMap<TireId, TireHistory>,
    /// Jobs, in the order they were opened.
    pub jobs: Vec<Job>,
    /// Photos that belong to a job, the shelf or a finding, with the entry that says what they show.
    #[serde(with = "pairs")]
    pub photos: BTreeMap<Digest, EntryId>,
    /// What is covered of photos that go out.
    #[serde(with = "pairs")]
    pub covers: BTreeMap<Digest, Vec<CoverBox>>,
    /// The place of the last entry in it.
    pub(super) last: Option<(HybridTime, StreamId, u64)>,
    /// What corrections and withdrawals are about.
    pub(super) targets: BTreeSet<EntryId>,
    /// What was taken back and stays so.
    pub(super) taken_back: BTreeSet<EntryId>,
    /// What was put away.
    archived: BTreeSet<Thing>,
    /// Jobs that were spoken of and not opened.
    unopened: BTreeSet<JobId>,
}

impl Book {
    /// The person of this id.
    pub fn person(&self, id: PersonId) -> Option<&Person> {
        self.people.iter().find(|person| person.id == id)
    }

    /// The vehicle of this id.
    pub fn vehicle(&self, id: VehicleId) -> Option<&Vehicle> {
        self.vehicles.iter().find(|vehicle| vehicle.id == id)
    }

    /// Whether a vehicle has a job that is still running.
    pub fn in_work(&self, id: VehicleId) -> bool {
        self.jobs.iter().any(|job| job.vehicle == id && job.is_running())
    }

    /// What is covered of a photo that goes out.
    pub fn covers(&self, photo: Digest) -> &[CoverBox] {
        self.covers.get(&photo).map(Vec::as_slice).unwrap_or_default()
    }

    /// Whether an entry was taken back and stays so.
    pub fn is_taken_back(&self, entry: EntryId) -> bool {
        self.taken_back.contains(&entry)
    }

    /// Whether a thing was put away.
    pub fn is_archived(&self, thing: Thing) -> bool {
        self.archived.contains(&thing)
    }

    /// What was put away, tools apart.
    pub fn archived(&self) -> impl Iterator<Item = Thing> {
        self.archived.iter().copied()
    }

    /// The vehicle of this name; letters of either case.
    pub fn vehicle_named(&self, name: &str) -> Option<&Vehicle> {
        self.vehicles.iter().find(|vehicle| vehicle.name.eq_ignore_ascii_case(name.trim()))
    }

    /// The job of this id.
    pub fn job(&self, id: JobId) -> Option<&Job> {
        self.jobs.iter().rev().find(|job| job.id == id)
    }

    /// The job in the bay: the last one that is open.
    pub fn in_bay(&self) -> Option<&Job> {
        self.jobs.iter().rev().find(|job| job.status == Status::Open)
    }

    /// What the shelf holds for a model.
    pub fn on_shelf(&self, model: &str, kind: Kind) -> Option<&Specification> {
        self.shelf.get(&(model.trim().to_lowercase(), kind))
    }

    /// The tool of this id.
    pub fn tool(&self, id: ToolId) -> Option<&Tool> {
        self.tools.iter().find(|tool| tool.id == id)
    }

    /// The last time a tire's tread was measured before a job, practice left out.
    pub fn depth_before(&self, tire: TireId, job: JobId) -> Option<&DepthSeen> {
        self.tires.get(&tire)?.depths.iter().rev().find(|seen| seen.job != job)
    }

    /// Says where the entries are from which the lines of its jobs are told.
    pub fn attach(&mut self, archive: &Arc<dyn Archive>) {
        for job in &mut self.jobs {
            job.lines = Lines::kept(job.id, job.entries.clone(), Arc::clone(archive));
        }
    }

    /// Takes entries that come after all that it was made of, and gives the same
    /// book as all of them together do. Gives `false`, and takes none, when they
    /// reach back: then it has to be made anew from all entries.
    pub fn follow(&mut self, entries: &[Entry]) -> bool {
        let mut last = self.last;
        let mut spoken_of = self.unopened.clone();
        for entry in entries {
            let reaches_back = match entry.fact() {
                Fact::Corrected { .. } | Fact::Withdrawn { .. } => true,
                Fact::JobOpened { job, .. } => spoken_of.contains(job),
                _ => false,
            };
            if reaches_back || last >= Some(entry.order()) || self.targets.contains(&entry.id()) {
                return false;
            }
            last = Some(entry.order());
            spoken_of.extend(entry.fact().job());
        }
        for entry in entries {
            self.take(Said { entry, fact: entry.fact(), corrected_by: None });
            if let Some(job) = entry.fact().job() {
                self.note(job, entry);
            }
        }
        self.last = last;
        true
    }

    /// Notes an entry among those that are about a job.
    pub(super) fn note(&mut self, job: JobId, entry: &Entry) {
        match self.jobs.iter_mut().rev().find(|known| known.id == job) {
            Some(job) => Span::note(&mut job.entries, entry),
            None => drop(self.unopened.insert(job)),
        }
    }

    /// Takes one thing that holds, in order.
    pub(super) fn take(&mut self, said: Said<'_>) {
        let envelope = said.entry.envelope();
        let personal = said.entry.personal();
        let (entry, when) = (said.entry.id(), envelope.time.wall);
        match said.fact {
            Fact::PersonAdded { person, role } => self.people.push(Person {
                id: *person,
                name: personal.and_then(|part| part.name.clone()),
                role: *role,
                code: None,
                refused: None,
            }),
            Fact::CodeSet { person, hash } => self.of_person(*person, |known| {
                (known.code, known.refused) = (Some(hash.clone()), None);
            }),
            Fact::CodeRefused { person, clock } => self.of_person(*person, |known| {
                let before = known.refused.map_or(0, |(count, _)| count);
                known.refused = Some((before.saturating_add(1), *clock));
            }),
            Fact::StepsSeen { by, .. } => self.of_person(*by, |known| known.refused = None),
            Fact::VehicleAdded { vehicle, name, model, class, layout, own } => self.vehicles.push(Vehicle {
                id: *vehicle,
                name: name.clone(),
                model: model.clone(),
                plate: personal.and_then(|part| part.plate.clone()),
                class: *class,
                layout: layout.clone(),
                own: *own,
                fitted: BTreeMap::new(),
                stored: Vec::new(),
                equipment: None,
            }),
            Fact::VehicleEquipped { vehicle, has } => {
                if let Some(vehicle) = self.vehicles.iter_mut().find(|known| known.id == *vehicle) {
                    vehicle.equipment = Some(has.clone());
                }
            }
            Fact::SpecificationRecorded { model, shelf, source, photo } => {
                let key = (model.trim().to_lowercase(), shelf.kind());
                let specification =
                    Specification { shelf: shelf.clone(), source: source.clone(), photo: *photo, entry, at: when };
                self.shelf.insert(key, specification);
            }
            Fact::ToolAdded { tool, what, name, interval_months } => {
                let tool = Tool {
                    id: *tool,
                    what: what.clone(),
                    name: name.clone(),
                    interval_months: *interval_months,
                    retired: false,
                };
                self.tools.retain(|known| known.id != tool.id);
                self.tools.push(tool);
            }
            Fact::ToolRetired { tool, .. } => {
                self.tools.iter_mut().filter(|known| known.id == *tool).for_each(|known| known.retired = true);
            }
            Fact::Archived { thing, .. } => {
                self.archived.insert(*thing);
            }
            Fact::BroughtBack { thing } => {
                self.archived.remove(thing);
            }
            Fact::PhotoCovered { photo, boxes } => {
                self.covers.insert(*photo, boxes.clone());
            }
            Fact::LimitsChosen { job: None, chosen } => {
                self.limits = chosen.over(self.limits);
                // A job that has ended stays as it was judged.
                for job in self.jobs.iter_mut().filter(|job| job.is_running()) {
                    job.limits = self.limits;
                }
            }
            Fact::TireFitted { tire, vehicle, at, .. } => {
                self.tires.entry(*tire).or_default();
                self.fit(*vehicle, *at, *tire);
            }
            Fact::JobOpened { job, .. } if self.job(*job).is_some() => {}
            Fact::JobOpened { job, vehicle, procedure, version, circumstances } => {
                let fitted = self.vehicle(*vehicle).map(|v| v.fitted.clone()).unwrap_or_default();
                self.jobs.push(Job {
                    id: *job,
                    number: self.jobs.len().saturating_add(1),
                    vehicle: *vehicle,
                    procedure: procedure.clone(),
                    version: *version,
                    circumstances: circumstances.clone(),
                    practice: envelope.practice,
                    status: Status::Open,
                    opened: when,
                    hands: envelope.author,
                    lines: Lines::default(),
                    fitted,
                    entries: Vec::new(),
                    limits: self.limits,
                });
            }
            _ => {}
        }
        if let Some(photo) = said.fact.photo() {
            self.photos.entry(photo).or_insert(entry);
        }
        self.take_in_job(said, entry, when);
    }

    fn of_person(&mut self, id: PersonId, change: impl FnOnce(&mut Person)) {
        if let Some(person) = self.people.iter_mut().find(|person| person.id == id) {
            change(person);
        }
    }

    fn take_in_job(&mut self, said: Said<'_>, entry: EntryId, when: Moment) {
        let Some(id) = said.fact.job() else { return };
        let author = said.entry.envelope().author;
        let corrected_by = said.corrected_by.map(crate::entry::Entry::id);
        let Some(job) = self.jobs.iter_mut().rev().find(|job| job.id == id) else { return };
        match said.fact {
            Fact::JobParked { .. } => job.status = Status::Parked,
            Fact::JobResumed { .. } => job.status = Status::Open,
            Fact::JobClosed { .. } => job.status = Status::Closed,
            Fact::JobSigned { .. } => job.status = Status::Signed,
            Fact::HandsChanged { person, .. } => job.hands = *person,
            _ => {}
        }
        let hands = job.hands;
        let (named, drawn) =
            said.entry.personal().map(|part| (part.name.clone(), part.drawn.clone())).unwrap_or_default();
        job.lines.push(Line { entry, at: when, author, hands, fact: said.fact.clone(), named, drawn, corrected_by });
        let (vehicle, practice) = (job.vehicle, job.practice);
        match said.fact {
            Fact::WheelOn { at, tire, .. } => {
                self.fit(vehicle, *at, *tire);
                self.fit_the_spare(id, vehicle);
            }
            Fact::TireStored { tire, at, rack, .. } => {
                let stored = Stored { tire: *tire, at: *at, rack: rack.clone(), job: id, when };
                if let Some(vehicle) = self.vehicles.iter_mut().find(|v| v.id == vehicle) {
                    vehicle.fitted.retain(|_, fitted| fitted != tire);
                    vehicle.stored.retain(|stored| stored.tire != *tire);
                    vehicle.stored.push(stored);
                }
            }
            Fact::TireRemoved { tire, .. } => {
                if let Some(vehicle) = self.vehicles.iter_mut().find(|v| v.id == vehicle) {
                    vehicle.fitted.retain(|_, fitted| fitted != tire);
                }
            }
            Fact::SidewallRead { tire, side, text, looks, .. } => {
                let history = self.tires.entry(*tire).or_default();
                match side {
                    SidewallSide::Outer => history.outer = Some(text.clone()),
                    SidewallSide::Inner => history.inner = Some(text.clone()),
                }
                history.looks = *looks;
            }
            Fact::SensorRead { at: Some(at), number: Some(number), tire, .. } => {
                let on = self.vehicle(vehicle).and_then(|vehicle| vehicle.fitted.get(at)).copied();
                if let Some(tire) = tire.or(on) {
                    self.tires.entry(tire).or_default().sensor = Some(number.clone());
                }
            }
            Fact::TreadMeasured { tire, at, grooves, lowest, .. } if !practice => {
                let odometer = job.odometer();
                let history = self.tires.entry(*tire).or_default();
                history.depths.retain(|seen| seen.job != id);
                history.depths.push(DepthSeen {
                    job: id,
                    at: *at,
                    lowest: *lowest,
                    grooves: grooves.clone(),
                    odometer,
                    when,
                    entry,
                });
            }
            _ => {}
        }
    }

    /// Puts the tire that the plan makes the spare on its carrier, once it hangs
    /// nowhere and the carrier is free: it has no nuts, so nobody says that it hangs.
    fn fit_the_spare(&mut self, job: JobId, vehicle: VehicleId) {
        let planned = self.job(job).and_then(Job::plan).and_then(|(_, moves)| {
            moves.iter().find(|m| m.to == Place::Spare && m.from != Place::Spare).map(|m| m.tire)
        });
        let Some((tire, known)) = planned.zip(self.vehicle(vehicle)) else { return };
        let hangs = known.fitted.values().any(|fitted| *fitted == tire);
        if !hangs && !known.fitted.contains_key(&Place::Spare) {
            self.fit(vehicle, Place::Spare, tire);
        }
    }

    /// Puts a tire at a place; wherever it was before, it is no longer.
    fn fit(&mut self, vehicle: VehicleId, at: Place, tire: TireId) {
        for other in &mut self.vehicles {
            other.fitted.retain(|_, fitted| *fitted != tire);
            other.stored.retain(|stored| stored.tire != tire);
        }
        if let Some(vehicle) = self.vehicles.iter_mut().find(|v| v.id == vehicle) {
            vehicle.fitted.insert(at, tire);
        }
    }
}
