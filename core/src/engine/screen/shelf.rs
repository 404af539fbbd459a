//! The book, the crew, a vehicle, a tire and its history.

use serde::Serialize;

use super::drawing::VehicleDrawing;
use super::form::{FieldKind, Form, Slot, choice, named, options};
use super::offer::{Action, Deed, Leads, Offer, Offers, Weight, Where};
use crate::caution;
use crate::engine::{Engine, JobLine, LearnerView, PersonLine, Trouble, WaitingLine};
use crate::entry::{Kind, Role, Thing};
use crate::fastener::Power;
use crate::ident::{Digest, TireId};
use crate::inspect::inspect;
use crate::limits::{Region, Season};
use crate::logbook::{Job, Vehicle};
use crate::measure::{Depth, DepthUnit, DistanceUnit, LoadUnit, PressureUnit, SpanUnit, TorqueUnit};
use crate::sidewall;
use crate::vehicle::{Class, Equipment, Place};
use crate::wear::Visits;
use crate::words::{Quantity, Speech, Units, Words};

const CLASSES: [Class; 7] =
    [Class::Car, Class::LightTruck, Class::Truck, Class::Bus, Class::LightTrailer, Class::Trailer, Class::Motorcycle];
const REGIONS: [Region; 8] = [
    Region::UsFederal,
    Region::UsCommercial,
    Region::UsMaryland,
    Region::UsArmy,
    Region::Eu,
    Region::France,
    Region::Uk,
    Region::Elsewhere,
];
const ROLES: [Role; 4] = [Role::Mechanic, Role::Apprentice, Role::Instructor, Role::Customer];
/// Patterns that a manual can name.
const PATTERNS: [&str; 5] = ["rearward-cross", "forward-cross", "x", "front-to-rear", "side-to-side"];

/// A vehicle in the book.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct VehicleRow {
    /// Its name.
    pub name: String,
    /// Make, model and year.
    pub model: String,
    /// Its plate.
    pub plate: Option<String>,
    /// The day of its last visit.
    pub last_visit: Option<String>,
    /// When to look again, in words.
    pub due: Option<String>,
    /// How its worst finding stands, as a code; none when nothing was ever looked at.
    pub state: Option<String>,
    /// The same in words.
    pub state_text: Option<String>,
    /// What a screen reader says.
    pub spoken: String,
}

/// Vehicles, jobs, tools, and what is due.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BookScreen {
    /// Vehicles: those whose name, model or plate holds what was searched for.
    pub vehicles: Vec<VehicleRow>,
    /// Jobs of these vehicles, newest first.
    pub jobs: Vec<JobLine>,
    /// Tools in words.
    pub tools: Vec<String>,
    /// What was put away, in words.
    pub archived: Vec<String>,
    /// What stands there when there is nothing to show.
    pub empty: Option<String>,
    /// How many vehicles are shown, in words.
    pub told: String,
    /// Whose limits of tread depth hold.
    pub limits: String,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// People, and what waits for an instructor.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CrewScreen {
    /// People.
    pub people: Vec<PersonLine>,
    /// Steps that wait for an instructor's signature.
    pub waiting: Vec<WaitingLine>,
    /// What each apprentice has done.
    pub learners: Vec<LearnerView>,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// A tire of a vehicle.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TireLine {
    /// Where.
    pub at: String,
    /// What a screen reader says of the whole line.
    pub spoken: String,
    /// What stands on its sidewall.
    pub sidewall: Option<String>,
    /// Its lowest depth, as last measured.
    pub depth: Option<Quantity>,
    /// The day of that.
    pub measured: Option<String>,
    /// How deep it is beside a tire of 12 mm, 0 to 1, for a bar.
    pub bar: Option<f64>,
    /// The number of its pressure sensor.
    pub sensor: Option<String>,
    /// How old, in words.
    pub age: Option<String>,
}

/// A vehicle.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct VehicleScreen {
    /// Its name.
    pub name: String,
    /// Make, model and year.
    pub model: String,
    /// Its plate.
    pub plate: Option<String>,
    /// Its class, in words.
    pub class: String,
    /// The vehicle from above.
    pub drawing: VehicleDrawing,
    /// Its tires.
    pub tires: Vec<TireLine>,
    /// What the shelf holds for its model, in sentences.
    pub shelf: Vec<String>,
    /// Stored wheels, in words.
    pub stored: Vec<String>,
    /// When to look again.
    pub due: Option<String>,
    /// Its jobs, newest first.
    pub jobs: Vec<JobLine>,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// One reading of a tire's tread.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DepthLine {
    /// The day.
    pub day: String,
    /// Where the tire was.
    pub at: String,
    /// The lowest spot.
    pub lowest: Quantity,
    /// Each groove, in words.
    pub grooves: String,
    /// The odometer.
    pub odometer: Option<Quantity>,
}

/// A tire.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TireScreen {
    /// Where it is.
    pub tire: TireLine,
    /// What can be said of its wear.
    pub wear: Option<String>,
    /// Its readings, newest first.
    pub readings: Vec<DepthLine>,
    /// What stands there without one.
    pub empty: Option<String>,
}

/// A point of a chart.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ChartPoint {
    /// The odometer.
    pub distance: f64,
    /// The depth.
    pub depth: f64,
}

/// A stretch of a forecast.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct BandPoint {
    /// The odometer.
    pub distance: f64,
    /// The lowest depth it may have there.
    pub low: f64,
    /// The likeliest.
    pub mid: f64,
    /// The highest.
    pub high: f64,
}

/// One tire's tread over distance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChartSeries {
    /// Where the tire is.
    pub at: String,
    /// Its readings.
    pub readings: Vec<ChartPoint>,
    /// Its forecast; empty without a rate.
    pub band: Vec<BandPoint>,
    /// The least depth that is allowed.
    pub limit: f64,
    /// What the chart says, in a sentence.
    pub told: String,
}

/// A vehicle's history.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HistoryScreen {
    /// The unit of all distances: `km` or `mi`.
    pub distance_unit: String,
    /// The unit of all depths: `mm` or `1/32in`.
    pub depth_unit: String,
    /// A chart a tire.
    pub charts: Vec<ChartSeries>,
    /// When to look again.
    pub next_visit: Option<String>,
    /// Its jobs, newest first.
    pub jobs: Vec<JobLine>,
    /// What stands there when nothing was measured.
    pub empty: Option<String>,
}

/// The depth that fills a bar.
const FULL_MM: f64 = 12.0;
/// Into how many pieces a band is cut.
const PIECES: u32 = 12;
/// A forecast is shown no further ahead than this, km.
const FAR_KM: f64 = 60_000.0;

impl Engine {
    /// Vehicles that were not put away.
    pub(super) fn vehicles_at_hand(&self) -> impl Iterator<Item = &Vehicle> {
        self.book.vehicles.iter().filter(|vehicle| !self.book.is_archived(Thing::Vehicle(vehicle.id)))
    }

    fn vehicle_called(&self, name: &str, words: &Words) -> Result<&Vehicle, Trouble> {
        self.book.vehicle_named(name).ok_or_else(|| Trouble::no_vehicle(&self.book, name, words))
    }

    fn jobs_of<'j>(&'j self, vehicle: &'j Vehicle) -> impl Iterator<Item = &'j Job> {
        self.book.jobs.iter().rev().filter(|job| job.vehicle == vehicle.id)
    }

    /// The book: vehicles that hold a text in their name, model or plate; all for an empty one.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn book_screen(&self, search: &str, speech: Speech) -> Result<BookScreen, Trouble> {
        let words = Words::new(speech);
        let wanted = search.trim().to_lowercase();
        let holds = |vehicle: &&Vehicle| {
            wanted.is_empty()
                || [Some(&vehicle.name), Some(&vehicle.model), vehicle.plate.as_ref()]
                    .into_iter()
                    .flatten()
                    .any(|text| text.to_lowercase().contains(&wanted))
        };
        let found: Vec<&Vehicle> = self.vehicles_at_hand().filter(holds).collect();
        let jobs = self.book.jobs.iter().rev().filter(|job| found.iter().any(|vehicle| vehicle.id == job.vehicle));
        let jobs: Vec<JobLine> = jobs.map(|job| self.job_line(job, &words)).collect();
        let empty = found.is_empty().then(|| {
            let id = if wanted.is_empty() { "book-empty" } else { "book-nothing-found" };
            words.text(id, &[("search", search.trim().into())])
        });
        let screen = BookScreen {
            told: words.text("book-told", &[("count", found.len().into())]),
            vehicles: found.iter().map(|vehicle| self.vehicle_row(vehicle, &words)).collect(),
            jobs,
            tools: self.book.tools_at_hand().map(|tool| words.tool_line(tool, self.host.now().day())).collect(),
            archived: self.archived(&words),
            empty,
            limits: words.limits(self.book.limits),
            actions: self.actions(&Where::Book, &words)?,
        };
        self.answered(screen, &words)
    }

    fn vehicle_row(&self, vehicle: &Vehicle, words: &Words) -> VehicleRow {
        let last = self.jobs_of(vehicle).find(|job| !job.practice);
        let worst = last.map(|job| inspect(&self.book, job, job.rules())).and_then(|found| Some(found.first()?.state));
        let state = last.map(|_| worst.unwrap_or(crate::finding::State::Sound));
        let due = self.due_of(vehicle, words);
        let day = last.map(|job| job.opened.day().to_string());
        let state_text = state.map(|state| words.state(state));
        let spoken = [Some(vehicle.name.clone()), Some(vehicle.model.clone()), state_text.clone(), due.clone()];
        VehicleRow {
            name: vehicle.name.clone(),
            model: vehicle.model.clone(),
            plate: vehicle.plate.clone(),
            last_visit: day,
            due,
            state: state.map(|state| state.code().to_owned()),
            state_text,
            spoken: spoken.into_iter().flatten().collect::<Vec<_>>().join(". "),
        }
    }

    /// When to look again, from the readings; nothing without two.
    fn due_of(&self, vehicle: &Vehicle, words: &Words) -> Option<String> {
        // A row has no need of a forecast where nothing was measured twice.
        let measured = |tire: &TireId| self.book.tires.get(tire).is_some_and(|tire| tire.depths.len() > 1);
        vehicle.fitted.values().any(measured).then_some(())?;
        let answer = crate::engine::planning::wear_of(vehicle, &self.book)?;
        Some(crate::words::Say::say(&answer.next_visit, words))
    }

    /// People, what waits to be signed, and what apprentices did.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn crew_screen(&self, speech: Speech) -> Result<CrewScreen, Trouble> {
        let words = Words::new(speech);
        let front = self.front(speech);
        let learners = self.book.people.iter().filter(|person| person.role == Role::Apprentice);
        let learners = learners.filter_map(|person| self.learner_view(person.name.as_deref(), speech).ok());
        Ok(CrewScreen {
            people: front.people,
            waiting: self.waiting(speech)?,
            learners: learners.collect(),
            actions: self.actions(&Where::Crew, &words)?,
        })
    }

    /// A vehicle.
    ///
    /// # Errors
    /// When there is no such vehicle, or the book can't be read.
    pub fn vehicle_screen(&self, name: &str, speech: Speech) -> Result<VehicleScreen, Trouble> {
        let words = Words::new(speech);
        let vehicle = self.vehicle_called(name, &words)?;
        let layout = &vehicle.layout;
        let fitted = layout.places().filter_map(|at| Some((at, *vehicle.fitted.get(&at)?)));
        let tires: Vec<TireLine> = fitted.map(|(at, tire)| self.tire_line(vehicle, at, tire, &words)).collect();
        let kinds = [Kind::Torque, Kind::Placard, Kind::Drive, Kind::Pattern, Kind::LiftPoints, Kind::Brakes];
        let shelf = kinds.iter().filter_map(|kind| self.book.on_shelf(&vehicle.model, *kind));
        let nothing = |_: Place| None;
        let spoken = words.list(tires.iter().map(|tire| tire.spoken.clone()));
        let stored = vehicle.stored.iter().map(|stored| {
            let at = layout.name(stored.at, speech.letters);
            words.text("wheel-stored", &[("at", at.into()), ("rack", stored.rack.as_str().into())])
        });
        let screen = VehicleScreen {
            name: vehicle.name.clone(),
            model: vehicle.model.clone(),
            plate: vehicle.plate.clone(),
            class: words.class(vehicle.class),
            drawing: VehicleDrawing::of(layout, &[], &nothing, &|_| false, spoken, &words),
            tires,
            shelf: shelf.map(|spec| words.specification(spec)).collect(),
            stored: stored.collect(),
            due: self.due_of(vehicle, &words),
            jobs: self.jobs_of(vehicle).map(|job| self.job_line(job, &words)).collect(),
            actions: self.actions(&Where::Vehicle { vehicle: vehicle.name.clone() }, &words)?,
        };
        self.answered(screen, &words)
    }

    fn tire_line(&self, vehicle: &Vehicle, at: Place, tire: TireId, words: &Words) -> TireLine {
        let known = self.book.tires.get(&tire);
        let seen = known.and_then(|tire| tire.depths.last());
        let sidewall = known.and_then(|tire| tire.outer.clone());
        let tin = sidewall.as_deref().map(sidewall::parse).and_then(|marking| marking.tin);
        let depth = seen.map(|seen| words.quantity(&seen.lowest));
        let mm = seen.map(|seen| seen.lowest.in_unit(DepthUnit::Millimetre));
        let spoken = [
            Some(words.place_spoken(&vehicle.layout, at)),
            sidewall.clone(),
            depth.as_ref().map(|depth| depth.spoken.clone()),
        ];
        TireLine {
            at: vehicle.layout.name(at, words.speech().letters),
            spoken: spoken.into_iter().flatten().collect::<Vec<_>>().join(", "),
            sidewall,
            depth,
            measured: seen.map(|seen| seen.when.day().to_string()),
            bar: mm.map(|mm| ((mm / FULL_MM).clamp(0.0, 1.0) * 1000.0).round() / 1000.0),
            sensor: known.and_then(|tire| tire.sensor.clone()),
            age: tin.map(|tin| words.tin_age(&tin, self.host.now().day())),
        }
    }

    /// A tire of a vehicle, with its readings.
    ///
    /// # Errors
    /// When there is no such vehicle or place.
    pub fn tire_screen(&self, name: &str, at: &str, speech: Speech) -> Result<TireScreen, Trouble> {
        let words = Words::new(speech);
        let vehicle = self.vehicle_called(name, &words)?;
        let layout = &vehicle.layout;
        let found = layout.parse(at).and_then(|place| Some((place, *vehicle.fitted.get(&place)?)));
        let (place, tire) = found.ok_or_else(|| {
            let places = words.list(layout.places().map(|place| layout.name(place, speech.letters)));
            Trouble::mend(&words, "trouble-no-place", &[("given", at.into()), ("places", places.into())])
        })?;
        let depths = self.book.tires.get(&tire).map(|tire| tire.depths.as_slice()).unwrap_or_default();
        let wear = crate::engine::planning::wear_of(vehicle, &self.book);
        let wear = wear.as_ref().and_then(|wear| wear.tires.iter().find(|tire| tire.at == place));
        let line = |seen: &crate::logbook::DepthSeen| DepthLine {
            day: seen.when.day().to_string(),
            at: layout.name(seen.at, speech.letters),
            lowest: words.quantity(&seen.lowest),
            grooves: words.depths(&seen.grooves),
            odometer: seen.odometer.map(|read| words.quantity(&read)),
        };
        let screen = TireScreen {
            tire: self.tire_line(vehicle, place, tire, &words),
            wear: wear.map(|wear| words.tire_sentence(wear, layout)),
            readings: depths.iter().rev().map(line).collect(),
            empty: depths.is_empty().then(|| words.text("tire-never-measured", &[])),
        };
        self.answered(screen, &words)
    }

    /// A vehicle's tread over distance, a chart a tire.
    ///
    /// # Errors
    /// When there is no such vehicle, or the book can't be read.
    pub fn history_screen(&self, name: &str, speech: Speech) -> Result<HistoryScreen, Trouble> {
        let words = Words::new(speech);
        let vehicle = self.vehicle_called(name, &words)?;
        // What is computed goes by the vehicle's own odometer unless units are chosen.
        let read = self.jobs_of(vehicle).filter_map(Job::odometer).next();
        let us = match speech.units {
            Units::Us => true,
            Units::Metric => false,
            Units::AsRead => read.is_some_and(|read| read.unit() == DistanceUnit::Mile),
        };
        let (depth, distance) = if us {
            (DepthUnit::ThirtySecond, DistanceUnit::Mile)
        } else {
            (DepthUnit::Millimetre, DistanceUnit::Kilometre)
        };
        let told = Visits::of(&self.book, vehicle.id);
        let wear = crate::engine::planning::wear_of(vehicle, &self.book);
        let tires = wear.as_ref().map(|wear| wear.tires.as_slice()).unwrap_or_default();
        let mm = |mm: f64| Depth::new(mm.max(0.0), DepthUnit::Millimetre).map_or(0.0, |d| rounded(d.in_unit(depth)));
        let km = |km: f64| {
            crate::measure::Distance::new(km.max(0.0), DistanceUnit::Kilometre)
                .map_or(0.0, |d| rounded(d.in_unit(distance)))
        };
        let chart = |tire: &crate::wear::TireWear| {
            let mut readings: Vec<(f64, f64)> = told
                .readings_of(&tire.tire)
                .iter()
                .filter_map(|(_, reading)| {
                    Some((reading.odometer.in_unit(DistanceUnit::Kilometre), reading.least_mm()?))
                })
                .collect();
            readings.sort_by(|a, b| a.0.total_cmp(&b.0));
            let last = readings.last().map_or(0.0, |(at, _)| *at);
            let reach = tire.left_km.map_or(0.0, |left| left.mid.map_or(FAR_KM, |mid| mid * 1.5).clamp(0.0, FAR_KM));
            let band = tire.ahead.as_ref().filter(|_| reach > 0.0).map(|ahead| {
                let piece = |n: u32| {
                    let far = reach * f64::from(n) / f64::from(PIECES);
                    let at = ahead.depth_after(far);
                    BandPoint { distance: km(last + far), low: mm(at.low), mid: mm(at.mid), high: mm(at.high) }
                };
                (0..=PIECES).map(piece).collect::<Vec<_>>()
            });
            ChartSeries {
                at: vehicle.layout.name(tire.at, speech.letters),
                readings: readings
                    .iter()
                    .map(|(at, depth)| ChartPoint { distance: km(*at), depth: mm(*depth) })
                    .collect(),
                band: band.unwrap_or_default(),
                limit: mm(tire.limit_mm),
                told: words.tire_sentence(tire, &vehicle.layout),
            }
        };
        let charts: Vec<ChartSeries> = tires.iter().map(chart).collect();
        let screen = HistoryScreen {
            distance_unit: crate::measure::Unit::code(distance).to_owned(),
            depth_unit: crate::measure::Unit::code(depth).to_owned(),
            empty: charts.is_empty().then(|| words.text("history-no-tread", &[])),
            charts,
            next_visit: wear.map(|wear| crate::words::Say::say(&wear.next_visit, &words)),
            jobs: self.jobs_of(vehicle).map(|job| self.job_line(job, &words)).collect(),
        };
        self.answered(screen, &words)
    }
}

fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}

impl Engine {
    /// Each visit that fits a vehicle, with what it leaves to be settled.
    fn open_job(&self, vehicle: &Vehicle, offers: &mut Offers<'_>) {
        let words = offers.words;
        let kind = caution::kind_of(vehicle.class, &vehicle.layout);
        for procedure in self.procedures.iter().filter(|procedure| caution::applies(&procedure.fits, &kind)) {
            let mut form = Form::of("open-job")
                .with("vehicle", vehicle.name.as_str())
                .with("procedure", procedure.id.as_str())
                .with("circumstances", Vec::<String>::new());
            // Whose vehicle it is stands in the book, and a single circumstance needs no choice.
            let open = procedure.settle.iter().filter(|row| row.len() > 1 && row.iter().all(|code| code != "own"));
            for (row, number) in open.zip(1..) {
                let row: Vec<_> = row
                    .iter()
                    .map(|code| (choice(code.clone(), words.circumstance(code)), code.as_str().into()))
                    .collect();
                form = form
                    .ask(Slot::one(words, "settle", row).numbered(words, number).pushed_to("circumstances").required());
            }
            let form = form.ask(Slot::yes_no(words, "practice"));
            let code = format!("open-{}", procedure.id);
            offers.labelled(&code, words.title(procedure), Weight::Main, None, form, Leads::Said);
        }
    }

    pub(super) fn book_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let nowhere = |_: Place| (String::new(), String::new());
        let mut offers = Offers::new(words, &Where::Book, head, &nowhere);
        if self.book.people.is_empty() {
            add_person(&mut offers);
            return offers.made();
        }
        self.begin(&mut offers);
        self.add_vehicle(&mut offers);
        add_tools(&mut offers);
        let tools = || named(self.book.tools_at_hand().map(|tool| tool.name.clone()));
        if self.book.tools_at_hand().next().is_some() {
            let form = Form::of("retire-tool").ask(Slot::one(words, "tool", tools()).required()).ask(reason(words));
            offers.offer("retire-tool", Weight::Aside, None, form);
        }
        let limits = |form: Form| {
            form.ask(Slot::one(words, "region", options(&REGIONS, |region| coded(words, "region", region))))
                .ask(Slot::one(
                    words,
                    "season",
                    options(&[Season::Summer, Season::Winter], |season| coded(words, "season", season)),
                ))
                .ask(Slot::reading::<DepthUnit>(words, "at-limit", FieldKind::Reading, None))
                .ask(Slot::reading::<DepthUnit>(words, "watch", FieldKind::Reading, None))
        };
        offers.offer("choose-limits", Weight::Aside, None, limits(Form::of("choose-limits").with("this_job", false)));
        if self.book.in_bay().is_some() {
            let form = limits(Form::of("choose-limits").with("this_job", true));
            offers.offer("choose-limits-job", Weight::Aside, None, form);
        }
        for (kind, thing) in self.archived_things() {
            let name = words.thing(&self.book, thing);
            let Some(of) = self.name_of_thing(thing) else { continue };
            let label = words.text("do-bring-back", &[("thing", name.into())]);
            let form = Form::of("bring-back").with("kept", kind).with("name", of.as_str());
            offers.labelled(&format!("bring-back-{kind}-{of}"), label, Weight::Aside, None, form, Leads::Said);
        }
        offers.made()
    }

    /// What was put away, with what a command calls its kind.
    fn archived_things(&self) -> Vec<(&'static str, Thing)> {
        let retired = self.book.tools.iter().filter(|tool| tool.retired).map(|tool| Thing::Tool(tool.id));
        let all = self.book.archived().chain(retired);
        all.map(|thing| match thing {
            Thing::Vehicle(_) => ("vehicle", thing),
            Thing::Person(_) => ("person", thing),
            Thing::Tool(_) => ("tool", thing),
            Thing::Set(_) => ("set", thing),
        })
        .collect()
    }

    fn name_of_thing(&self, thing: Thing) -> Option<String> {
        match thing {
            Thing::Vehicle(id) | Thing::Set(id) => Some(self.book.vehicle(id)?.name.clone()),
            Thing::Person(id) => self.book.person(id)?.name.clone(),
            Thing::Tool(id) => Some(self.book.tool(id)?.name.clone()),
        }
    }

    pub(super) fn add_vehicle(&self, offers: &mut Offers<'_>) {
        let words = offers.words;
        let axle = |code: &str| (choice(code, coded_text(words, "axle", code)), code.into());
        let axle_of = |n: usize| {
            Slot::one(words, "axle", vec![axle("single"), axle("dual")]).numbered(words, n).pushed_to("axles")
        };
        let equipment =
            options(&[Equipment::AirSuspension, Equipment::HighVoltage], |item| coded(words, "equipment", item));
        let form = Form::of("add-vehicle")
            .with("axles", Vec::<String>::new())
            .ask(Slot::text(words, "name", FieldKind::Text).required())
            .ask(Slot::text(words, "model", FieldKind::Text).required())
            .ask(
                Slot::one(words, "class", options(&CLASSES, |class| words.class(class))).required().filled(Some("car")),
            )
            .ask(Slot::text(words, "plate", FieldKind::Text))
            .ask(Slot::yes_no(words, "spare-carried").to("spare"))
            .ask(Slot::yes_no(words, "own"));
        let form = (1..=crate::lifting::MOST_AXLES).fold(form, |form, n| form.ask(axle_of(n)));
        // Left empty, nobody looked: it is asked before the vehicle is raised.
        let form = form.ask(Slot::several(words, "has", equipment).unless_empty());
        offers.offer("add-vehicle", Weight::Beside, None, form);
    }

    pub(super) fn crew_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let nowhere = |_: Place| (String::new(), String::new());
        let mut offers = Offers::new(words, &Where::Crew, head, &nowhere);
        add_person(&mut offers);
        let at_hand = |wanted: &dyn Fn(Role) -> bool| {
            let people = self.book.people.iter();
            let people =
                people.filter(|person| wanted(person.role) && !self.book.is_archived(Thing::Person(person.id)));
            named(people.filter_map(|person| person.name.clone()))
        };
        let instructors = at_hand(&|role| role == Role::Instructor);
        if !instructors.is_empty() {
            let secret = |code: &str| Slot::text(words, code, FieldKind::Secret);
            let form = Form::of("set-code")
                .ask(Slot::one(words, "person", instructors.clone()).required())
                .ask(secret("code").required())
                .ask(secret("current"));
            offers.offer("set-code", Weight::Aside, None, form);
            let waits = self.waiting(words.speech()).is_ok_and(|waiting| !waiting.is_empty());
            if waits {
                let form = Form::of("sign-steps")
                    .with("steps", Vec::<String>::new())
                    .with("every_job", true)
                    .ask(Slot::one(words, "by", instructors).required())
                    .ask(secret("code").required());
                offers.offer("sign-steps", Weight::Main, None, form);
            }
        }
        let everyone = at_hand(&|_| true);
        if !everyone.is_empty() {
            let person = |code: &str| Slot::one(words, code, everyone.clone()).required();
            let form = Form::of("archive").with("kept", "person").ask(person("person").to("name")).ask(reason(words));
            offers.offer("archive-person", Weight::Aside, None, form);
            let erase = Form::of("erase-person").ask(person("person").to("name"));
            offers.deed("erase-person", Weight::Grave, Deed::ErasePerson, erase);
        }
        offers.made()
    }

    pub(super) fn vehicle_offers(
        &self,
        name: &str,
        head: Option<Digest>,
        words: &Words,
    ) -> Result<Vec<Offer>, Trouble> {
        let vehicle = self.vehicle_called(name, words)?;
        let layout = &vehicle.layout;
        let place = |at: Place| (layout.name(at, words.speech().letters), words.place_spoken(layout, at));
        let screen = Where::Vehicle { vehicle: vehicle.name.clone() };
        let mut offers = Offers::new(words, &screen, head, &place);
        let of = |command: &str| Form::of(command).with("vehicle", vehicle.name.as_str());
        let source = || Slot::text(words, "source", FieldKind::Text).required();
        if self.book.in_bay().is_none() && !self.book.people.is_empty() {
            self.open_job(vehicle, &mut offers);
        }
        let lines = |code: &str| Slot::reading::<PressureUnit>(words, code, FieldKind::Lines, None).list();
        let torque = of("record-torque")
            .ask(Slot::reading::<TorqueUnit>(words, "printed", FieldKind::Lines, None).list().required())
            .ask(Slot::text(words, "thread", FieldKind::Text))
            .ask(Slot::text(words, "condition", FieldKind::Text))
            .ask(Slot::reading::<DistanceUnit>(words, "recheck", FieldKind::Lines, None).list())
            .ask(Slot::count(words, "studs", 3, 12))
            .ask(source());
        offers.offer("torque", Weight::Beside, None, torque);
        let placard = of("record-placard")
            .ask(lines("axles").required())
            .ask_if(layout.spare, || Slot::reading::<PressureUnit>(words, "spare", FieldKind::Reading, None));
        let placard = placard.ask(Slot::text(words, "size", FieldKind::Text)).ask(source());
        offers.offer("placard", Weight::Beside, None, placard);
        let drives = options(&super::doing::DRIVES, |drive| words.drive(drive));
        let drive = of("record-drive").ask(Slot::one(words, "drive", drives).required()).ask(source());
        offers.offer("drive-from-manual", Weight::Beside, None, drive);
        let patterns = PATTERNS.map(|code| (choice(code, words.pattern(code)), code.into())).to_vec();
        let pattern = of("record-pattern").ask(Slot::one(words, "pattern", patterns).required()).ask(source());
        offers.offer("record-pattern", Weight::Beside, None, pattern);
        let points =
            of("record-lift-points").ask(Slot::text(words, "text", FieldKind::LongText).required()).ask(source());
        offers.offer("record-lift-points", Weight::Beside, None, points);
        let brakes = of("record-brakes")
            .ask(Slot::reading::<SpanUnit>(words, "pads", FieldKind::Reading, None).required())
            .ask(source());
        offers.offer("record-brakes", Weight::Beside, None, brakes);
        let equipment =
            options(&[Equipment::AirSuspension, Equipment::HighVoltage], |item| coded(words, "equipment", item));
        offers.offer("equip", Weight::Beside, None, of("equip").ask(Slot::several(words, "has", equipment)));
        if !self.book.in_work(vehicle.id) {
            let archive = |kept: &str| {
                Form::of("archive").with("kept", kept).with("name", vehicle.name.as_str()).ask(reason(words))
            };
            if !self.book.is_archived(Thing::Vehicle(vehicle.id)) {
                offers.offer("archive-vehicle", Weight::Aside, None, archive("vehicle"));
            }
            if !vehicle.stored.is_empty() && !self.book.is_archived(Thing::Set(vehicle.id)) {
                offers.offer("archive-set", Weight::Aside, None, archive("set"));
            }
        }
        if vehicle.plate.is_some() {
            let erase = Form::of("erase-plate").with("name", vehicle.name.as_str());
            offers.deed("erase-plate", Weight::Grave, Deed::ErasePlate, erase);
        }
        Ok(offers.made())
    }
}

fn reason(words: &Words) -> Slot {
    Slot::text(words, "reason", FieldKind::LongText).required()
}

fn coded<T: Serialize>(words: &Words, kind: &str, value: T) -> String {
    let code = serde_json::to_value(value).ok().and_then(|code| code.as_str().map(str::to_owned));
    coded_text(words, kind, &code.unwrap_or_default())
}

fn coded_text(words: &Words, kind: &str, code: &str) -> String {
    words.text(&format!("{kind}-{code}"), &[])
}

pub(super) fn add_person(offers: &mut Offers<'_>) {
    let words = offers.words;
    let form = Form::of("add-person")
        .ask(Slot::text(words, "name", FieldKind::Text).required())
        .ask(Slot::one(words, "role", options(&ROLES, |role| words.role(role))).required().filled(Some("mechanic")))
        .ask(Slot::text(words, "phone", FieldKind::Text));
    offers.offer("add-person", Weight::Main, None, form);
}

/// My tools: each kind with what its papers say.
fn add_tools(offers: &mut Offers<'_>) {
    let words = offers.words;
    let of = |kind: &str| {
        Form::of("add-tool").with("papers.tool", kind).ask(Slot::text(words, "name", FieldKind::Text).required())
    };
    let calibrated = |form: Form| {
        form.with("papers.calibration", serde_json::json!({}))
            .ask(Slot::text(words, "last-calibration", FieldKind::Day).to("papers.calibration.last"))
            .ask(Slot::count(words, "every-months", 1, 120).to("papers.calibration.every_months"))
    };
    let torque = |code: &str| Slot::reading::<TorqueUnit>(words, code, FieldKind::Reading, None);
    let load = |code: &str| Slot::reading::<LoadUnit>(words, code, FieldKind::Reading, None).to("papers.rating");
    let wrench = of("wrench")
        .ask(Slot::text(words, "accuracy", FieldKind::Text).to("papers.accuracy").required())
        .ask(torque("scale-step").to("papers.step").required())
        .ask(torque("scale").to("papers.range"));
    let depth = of("depth-gauge")
        .ask(Slot::reading::<DepthUnit>(words, "scale-step", FieldKind::Reading, None).to("papers.step").required());
    let pressure = |code: &str| Slot::reading::<PressureUnit>(words, code, FieldKind::Reading, None);
    let air = of("pressure-gauge")
        .ask(pressure("scale-step").to("papers.step"))
        .ask(pressure("highest").to("papers.highest"));
    let powers = options(&[Power::Air, Power::Electric], |power| coded(words, "power", power));
    let gun = of("gun")
        .ask(Slot::one(words, "power", powers).to("papers.power").required())
        .ask(torque("greatest").to("papers.greatest"));
    let bar = of("bar")
        .ask(torque("rated").to("papers.rating").required())
        .ask(Slot::reading::<SpanUnit>(words, "hex", FieldKind::Reading, None).to("papers.hex"))
        .ask(torque("for-guns-up-to").to("papers.for_guns_up_to"));
    let stand = of("stand").ask(load("marked")).ask(Slot::count(words, "count", 1, 12).to("papers.count"));
    let all = [
        ("add-wrench", calibrated(wrench)),
        ("add-depth-gauge", calibrated(depth)),
        ("add-pressure-gauge", calibrated(air)),
        ("add-gun", gun),
        ("add-bar", bar),
        ("add-jack", of("jack").ask(load("marked"))),
        ("add-stand", stand),
        ("add-lift", of("lift").ask(load("marked"))),
    ];
    for (code, form) in all {
        offers.offer(code, Weight::Aside, None, form);
    }
}
