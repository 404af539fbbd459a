//! What each step asks for, as taps and fields.

use serde_json::Value;

use super::form::{Choice, FieldKind, Form, Groove, Option_, Slot, choice, named, options};
use super::offer::{Leads, Offers, Weight};
use crate::engine::act::photos_of;
use crate::entry::{Arm, Decision, Fact, LookAt, Pass, PhotoOf, Relearn, Role, SensorKind, SpareNuts};
use crate::finding::State;
use crate::measure::{DepthUnit, DistanceUnit, LoadUnit, PressureUnit, SpanUnit, SpeedUnit, TorqueUnit};
use crate::procedure::{Ask, Bay, Per, Task, TaskState, Unmet};
use crate::vehicle::hub::{
    AxleMotor, Differential, Engine as Motor, FreeHubs, Gear, Hub, OffGround, Opposite, ParkingBrake, ShaftMotion,
    WheelMotion,
};
use crate::vehicle::{Drive, Equipment, Letters, Place};
use crate::words::Words;

/// Every drive that a person can name.
pub(super) const DRIVES: [Drive; 4] = [Drive::Front, Drive::Rear, Drive::All, Drive::PartTime];

/// Every part that is looked at.
const PARTS: [LookAt; 18] = [
    LookAt::HubFace,
    LookAt::Studs,
    LookAt::Seats,
    LookAt::Valve,
    LookAt::Tire,
    LookAt::Rim,
    LookAt::Brake,
    LookAt::Pads,
    LookAt::Disc,
    LookAt::Hose,
    LookAt::Boots,
    LookAt::Damper,
    LookAt::Bearing,
    LookAt::HubBore,
    LookAt::Weights,
    LookAt::ValveCap,
    LookAt::CenteringRing,
    LookAt::Other,
];

/// Everything that a photo can show.
const PHOTOS: [PhotoOf; 9] = [
    PhotoOf::Sidewall,
    PhotoOf::Tread,
    PhotoOf::Hub,
    PhotoOf::Placard,
    PhotoOf::Manual,
    PhotoOf::Damage,
    PhotoOf::Plate,
    PhotoOf::Odometer,
    PhotoOf::Vehicle,
];

/// Most grooves that one reading has (design: 2 to 6).
const MOST_GROOVES: usize = 6;
/// Grooves that are asked for of a tire that was never measured.
const USUAL_GROOVES: usize = 3;

/// The taps of a job's steps.
pub(super) struct Doing<'d, 'o> {
    pub bay: &'d Bay<'d>,
    pub words: &'d Words,
    pub offers: &'d mut Offers<'o>,
    /// What photos of the tire in hand say, as it would be typed.
    pub read: Option<String>,
}

impl Doing<'_, '_> {
    /// A place as commands read it.
    fn code(&self, at: Place) -> String {
        self.bay.vehicle.layout.name(at, Letters::FrontFirst)
    }

    /// A place as this person names it.
    fn name(&self, at: Place) -> String {
        self.bay.vehicle.layout.name(at, self.words.speech().letters)
    }

    fn option_of(&self, at: Place) -> Option_ {
        let spoken = self.words.place_spoken(&self.bay.vehicle.layout, at);
        (Choice { code: self.code(at), text: self.name(at), spoken }, self.code(at).into())
    }

    /// Wheels on hubs.
    fn wheels(&self) -> Vec<Option_> {
        self.bay.vehicle.layout.positions().map(|position| self.option_of(Place::Wheel(position))).collect()
    }

    /// All places, the spare's carrier too.
    fn places(&self) -> Vec<Option_> {
        self.bay.vehicle.layout.places().map(|place| self.option_of(place)).collect()
    }

    /// The photos of the job by number.
    fn photos(&self) -> Vec<Option_> {
        let taken = photos_of(self.bay.job);
        let shows = |photo| {
            self.bay.job.lines.iter().find_map(|line| match &line.fact {
                Fact::PhotoTaken { photo: taken, of, at, .. } if *taken == photo => {
                    let of = self.words.photo_of(*of);
                    Some(at.map_or(of.clone(), |at| format!("{of} {}", self.name(at))))
                }
                _ => None,
            })
        };
        let option = |(photo, number): (_, usize)| {
            let text = format!("{number}: {}", shows(photo).unwrap_or_default());
            (choice(number.to_string(), text), Value::from(number))
        };
        taken.into_iter().zip(1..).map(option).collect()
    }

    fn coded(&self, kind: &str, code: &str) -> String {
        self.words.text(&format!("{kind}-{code}"), &[])
    }

    fn choices<T: serde::Serialize + Copy>(&self, kind: &str, all: &[T]) -> Vec<Option_> {
        options(all, |item| {
            let code = serde_json::to_value(item).ok().and_then(|code| code.as_str().map(str::to_owned));
            self.coded(kind, &code.unwrap_or_default())
        })
    }

    fn crew(&self) -> Vec<Option_> {
        let idle = self
            .bay
            .book
            .people
            .iter()
            .filter(|person| person.role != Role::Customer && person.id != self.bay.job.hands);
        named(idle.filter_map(|person| person.name.clone()))
    }

    /// Everything that can be done about one task, and beside it in the job.
    pub(super) fn task(&mut self, task: &Task<'_>) {
        if let TaskState::Held(unmet) = &task.state {
            for unmet in unmet {
                self.meets(unmet);
            }
            self.reasoned("open-gate", Weight::Grave, Some(task));
        } else if !task.state.is_over() || task.step.asks == Ask::Looks {
            self.answer(task);
        }
        if task.step.may_skip && !task.state.is_over() {
            self.reasoned("skip", Weight::Beside, Some(task));
        }
    }

    /// A command with a reason: of a task, or of the job.
    fn reasoned(&mut self, command: &str, weight: Weight, task: Option<&Task<'_>>) {
        let mut form = Form::of(command);
        if let Some(task) = task {
            form = form.with("step", task.step.id.as_str()).with("at", task.at.map(|at| self.code(at)));
        }
        let reason = Slot::text(self.words, "reason", FieldKind::LongText).required();
        self.offers.offer(command, weight, task.and_then(|task| task.at), form.ask(reason));
    }

    /// What meets a gate's condition, where that is no step of its own.
    fn meets(&mut self, unmet: &Unmet) {
        let at = unmet.at();
        match unmet {
            Unmet::Approved { .. } => self.approval(),
            Unmet::DriveKnown => self.drive(),
            Unmet::PlanChosen => self.plan(),
            Unmet::TorqueKnown => self.torque(),
            Unmet::UnsafeTold { .. } => self.unsafe_told(),
            Unmet::SeatSound { .. } => self.looks(at),
            Unmet::PairMatched { .. } | Unmet::PairSeen { .. } => {
                if let Some(at) = at {
                    self.around(at);
                    self.tread(at, false, Weight::Beside);
                }
            }
            Unmet::AnsweredFirst { decision } => self.answer_first(*decision),
            Unmet::InstructorSaw { .. } => self.sign_steps(),
            Unmet::GearRated { .. } => self.weigh(),
            _ => {}
        }
    }

    /// What answers a step.
    fn answer(&mut self, task: &Task<'_>) {
        let at = task.at;
        let coming = task.step.per == Per::Coming;
        match (task.step.asks, at) {
            (Ask::Seen | Ask::Ready, _) => self.said_of(task, "seen", "seen"),
            (Ask::Rocked, _) => self.said_of(task, "rocked", "seen"),
            (Ask::Choice, _) => self.choice_of(task),
            (Ask::Count, _) => self.count_of(task, 0, 200),
            (Ask::Studs, _) => self.count_of(task, 3, 12),
            (Ask::Equipment, _) => self.equipment(),
            (Ask::Weigh, _) => self.weigh(),
            (Ask::Damage, _) => self.damage(),
            (Ask::Approval, _) => self.approval(),
            (Ask::Odometer, _) => self.odometer(),
            (Ask::Placard, _) => self.placard(),
            (Ask::Torque, _) => self.torque(),
            (Ask::Drive, _) => self.drive(),
            (Ask::SidewallPhoto, _) => self.photo(PhotoOf::Sidewall, at, Weight::Main),
            (Ask::VehiclePhoto, _) => self.photo(PhotoOf::Vehicle, None, Weight::Main),
            (Ask::FlatPhoto | Ask::FindingPhoto, _) => self.photo(PhotoOf::Damage, at, Weight::Main),
            (Ask::Sidewall, Some(at)) => self.sidewall(at, coming),
            (Ask::Mark, Some(at)) => self.mark(at, coming),
            (Ask::Tread, Some(at)) => self.tread(at, coming, Weight::Main),
            (Ask::Plan, _) => self.plan(),
            (Ask::Wheels, _) => self.choose_wheels(),
            (Ask::Set, _) => self.set(),
            (Ask::Stored, _) => self.store(),
            (Ask::Spare, _) => self.spare(),
            (Ask::Cracked | Ask::Started | Ask::Snug | Ask::Final | Ask::Rechecked | Ask::Loosened, Some(at)) => {
                self.nuts(task, at);
            }
            (Ask::RaisedClear, _) => self.lift("raise-clear", Arm::Clear),
            (Ask::RaisedFull, _) => self.lift("raise-full", Arm::Full),
            (Ask::Held, _) => self.lift("held", Arm::Held),
            (Ask::AllClear, _) => self.lift("all-clear", Arm::AllClear),
            (Ask::Lowered, _) => self.lift("lower", Arm::Down),
            (Ask::WheelOff, Some(at)) => {
                let form = Form::of("wheel-off").with("at", self.code(at));
                self.offers.offer("wheel-off", Weight::Main, Some(at), form);
            }
            (Ask::Looks, at) => self.looks(at),
            (Ask::MarkRead, Some(at)) => self.hang(at),
            (Ask::Pressure, Some(at)) => self.pressure(at, true),
            (Ask::PressureFound, Some(at)) => self.pressure(at, false),
            (Ask::Lamp | Ask::LampBefore, _) => self.lamp(),
            (Ask::Recheck, _) => self.offers.offer("tell-recheck", Weight::Main, None, Form::of("tell-recheck")),
            (Ask::Signature, _) => {
                let form = Form::of("sign").ask(Slot::text(self.words, "drawn", FieldKind::Drawn));
                self.offers.offer("sign", Weight::Main, None, form);
            }
            _ => {}
        }
    }

    fn said_of(&mut self, task: &Task<'_>, code: &str, answer: &str) {
        let form = Form::of("answer")
            .with("step", task.step.id.as_str())
            .with("at", task.at.map(|at| self.code(at)))
            .with("answer", answer);
        self.offers.offer(code, Weight::Main, task.at, form);
    }

    /// One tap for each choice; the lesson of how sensors learn takes its way too.
    fn choice_of(&mut self, task: &Task<'_>) {
        for code in &task.step.choices {
            let label = self.words.choice(code);
            if task.step.id == "relearn" {
                let methods = [Relearn::Drive, Relearn::Menu, Relearn::WheelTool, Relearn::Socket];
                let method = Slot::one(self.words, "method", self.choices("relearn", &methods));
                let form = Form::of("relearn").with("outcome", code.as_str()).ask(method);
                self.offers.labelled("relearn", label, Weight::Main, task.at, form, Leads::Said);
                continue;
            }
            let form = Form::of("answer")
                .with("step", task.step.id.as_str())
                .with("at", task.at.map(|at| self.code(at)))
                .with("answer", code.as_str());
            self.offers.labelled(&format!("choose-{code}"), label, Weight::Main, task.at, form, Leads::Said);
        }
    }

    fn count_of(&mut self, task: &Task<'_>, least: u32, most: u32) {
        let form = Form::of("answer")
            .with("step", task.step.id.as_str())
            .with("at", task.at.map(|at| self.code(at)))
            .ask(Slot::count(self.words, "count", least, most).to("answer").spelled().required());
        self.offers.offer("count", Weight::Main, task.at, form);
    }

    fn equipment(&mut self) {
        let none = Form::of("equip").with("has", Vec::<String>::new());
        self.offers.offer("has-neither", Weight::Main, None, none);
        let all = self.choices("equipment", &[Equipment::AirSuspension, Equipment::HighVoltage]);
        let has = Slot::several(self.words, "has", all).required();
        self.offers.offer("has-equipment", Weight::Beside, None, Form::of("equip").ask(has));
    }

    fn weigh(&mut self) {
        let last = self.bay.gear_rated();
        let weight = Slot::reading::<LoadUnit>(self.words, "weight", FieldKind::Reading, None).required();
        let rating =
            Slot::reading(self.words, "rating", FieldKind::Reading, last.as_ref().map(|(_, rating)| rating)).required();
        self.offers.offer("weigh", Weight::Main, None, Form::of("weigh").ask(weight).ask(rating));
    }

    fn damage(&mut self) {
        self.offers.offer("no-damage", Weight::Main, None, Form::of("damage"));
        let form = Form::of("damage")
            .ask(Slot::text(self.words, "text", FieldKind::LongText).required())
            .ask(Slot::one(self.words, "at", self.places()))
            .ask_if(!photos_of(self.bay.job).is_empty(), || Slot::one(self.words, "photo", self.photos()));
        self.offers.offer("damage", Weight::Beside, None, form);
    }

    fn approval(&mut self) {
        for (code, approved, weight) in [("approve", true, Weight::Main), ("decline", false, Weight::Beside)] {
            let form = self.with_the_customer(Form::of("approve").with("approved", approved));
            self.offers.offer(code, weight, None, form);
        }
    }

    /// Who of the customers says so, and their signature.
    fn with_the_customer(&self, form: Form) -> Form {
        let customers = self.bay.book.people.iter().filter(|person| person.role == Role::Customer);
        let customers = named(customers.filter_map(|person| person.name.clone()));
        let by = if customers.is_empty() {
            Slot::text(self.words, "by", FieldKind::Text)
        } else {
            Slot::one(self.words, "by", customers)
        };
        form.ask(by).ask(Slot::text(self.words, "drawn", FieldKind::Drawn))
    }

    fn odometer(&mut self) {
        let before = self.bay.book.jobs.iter().rev().filter(|job| job.vehicle == self.bay.vehicle.id);
        let last = before.filter(|job| job.id != self.bay.job.id).find_map(|job| job.odometer());
        let reading = Slot::reading(self.words, "reading", FieldKind::Reading, last.as_ref()).required();
        let form = Form::of("odometer")
            .ask(reading)
            .ask(Slot::yes_no(self.words, "estimated"))
            .ask(Slot::yes_no(self.words, "replaced"));
        self.offers.offer("odometer", Weight::Main, None, form);
    }

    /// Where a page or label stands, with its photo.
    fn page(&self, form: Form) -> Form {
        form.ask(Slot::text(self.words, "source", FieldKind::Text).required())
            .ask_if(!photos_of(self.bay.job).is_empty(), || Slot::one(self.words, "photo", self.photos()))
    }

    fn placard(&mut self) {
        let axles = Slot::reading::<PressureUnit>(self.words, "axles", FieldKind::Lines, None).list().required();
        let form = Form::of("record-placard")
            .ask(axles)
            .ask_if(self.bay.vehicle.layout.spare, || {
                Slot::reading::<PressureUnit>(self.words, "spare", FieldKind::Reading, None)
            })
            .ask(Slot::text(self.words, "size", FieldKind::Text));
        let form = self.page(form);
        self.offers.offer("placard", Weight::Main, None, form);
        self.photo(PhotoOf::Placard, None, Weight::Beside);
        let not_known = Form::of("not-known").with("what", "placard");
        self.offers.offer("placard-not-known", Weight::Beside, None, not_known);
    }

    fn torque(&mut self) {
        let printed = Slot::reading::<TorqueUnit>(self.words, "printed", FieldKind::Lines, None).list().required();
        let form = Form::of("record-torque")
            .ask(printed)
            .ask(Slot::text(self.words, "thread", FieldKind::Text))
            .ask(Slot::text(self.words, "condition", FieldKind::Text))
            .ask(Slot::reading::<DistanceUnit>(self.words, "recheck", FieldKind::Lines, None).list())
            .ask(Slot::count(self.words, "studs", 3, 12));
        let form = self.page(form);
        self.offers.offer("torque", Weight::Main, None, form);
        self.photo(PhotoOf::Manual, None, Weight::Beside);
        let not_known = Form::of("not-known").with("what", "torque");
        self.offers.offer("torque-not-known", Weight::Beside, None, not_known);
    }

    fn drive(&mut self) {
        let hubs = [Hub::Shaft, Hub::NoShaft, Hub::ShaftEnd, Hub::CaplessUnit, Hub::Covered];
        let look = Form::of("hub")
            .with("evidence.axle", 1)
            .with("evidence.side", "left")
            .ask(Slot::one(self.words, "at", self.wheels()).required())
            .ask(Slot::one(self.words, "hub", self.choices("hub", &hubs)).to("evidence.hub").required());
        self.offers.offer("look-at-hub", Weight::Main, None, look);
        self.turn_wheel();
        let drives = options(&DRIVES, |drive| self.words.drive(drive));
        let manual = Form::of("record-drive")
            .ask(Slot::one(self.words, "drive", drives.clone()).required())
            .ask(Slot::text(self.words, "source", FieldKind::Text).required());
        self.offers.offer("drive-from-manual", Weight::Beside, None, manual);
        let owner = Form::of("owner-says-drive").ask(Slot::one(self.words, "drive", drives).required());
        self.offers.offer("drive-from-owner", Weight::Beside, None, owner);
    }

    /// A wheel turned by hand: what it was turned under, and what moved.
    fn turn_wheel(&mut self) {
        let words = self.words;
        let of = |code: &str, all: Vec<Option_>| Slot::one(words, code, all);
        let turned = |code: &str, all: Vec<Option_>| of(code, all).to(&turned_path(code)).required();
        let about = |code: &str, all: Vec<Option_>| of(code, all).to(&evidence_path(code));
        let form = Form::of("hub")
            .with("evidence.axle", 1)
            .with("evidence.side", "left")
            .ask(of("at", self.wheels()).required())
            .ask(turned("engine", self.choices("engine", &[Motor::Off, Motor::Running])))
            .ask(turned("gear", self.choices("gear", &[Gear::Neutral, Gear::Park, Gear::InGear])))
            .ask(turned(
                "brake",
                self.choices("brake", &[ParkingBrake::Released, ParkingBrake::Set, ParkingBrake::NotKnown]),
            ))
            .ask(turned("off-ground", self.choices("off-ground", &[OffGround::Both, OffGround::One, OffGround::None])))
            .ask(turned("wheel", self.choices("wheel", &[WheelMotion::Turns, WheelMotion::Held])))
            .ask(turned(
                "shaft",
                self.choices("shaft", &[ShaftMotion::WithWheel, ShaftMotion::Still, ShaftMotion::NotSeen]),
            ))
            .ask(turned(
                "opposite",
                self.choices("opposite", &[Opposite::OtherWay, Opposite::SameWay, Opposite::Still, Opposite::NotTried]),
            ))
            .ask(about(
                "differential",
                self.choices("differential", &[Differential::Open, Differential::Locking, Differential::NotKnown]),
            ))
            .ask(about(
                "free-hubs",
                self.choices("free-hubs", &[FreeHubs::NotFitted, FreeHubs::Free, FreeHubs::Locked, FreeHubs::NotKnown]),
            ))
            .ask(about("motor", self.choices("motor", &[AxleMotor::None, AxleMotor::Own, AxleMotor::NotKnown])));
        self.offers.offer("turn-wheel", Weight::Beside, None, form);
    }

    fn photo(&mut self, of: PhotoOf, at: Option<Place>, weight: Weight) {
        let Ok(code) = serde_json::to_value(of) else { return };
        let file = Slot::text(self.words, "file", FieldKind::Photo).required();
        let form = Form::of("photo").with("of", code).with("at", at.map(|at| self.code(at))).ask(file);
        let label = self.words.text("do-photo-of", &[("what", self.words.photo_of(of).into())]);
        self.offers.labelled("photo", label, weight, at, form, Leads::Said);
    }

    /// That the camera is about to open is in the book before it opens.
    fn photo_pending(&mut self, of: PhotoOf, at: Option<Place>) {
        let Ok(code) = serde_json::to_value(of) else { return };
        let form = Form::of("photo-pending").with("of", code).with("at", at.map(|at| self.code(at)));
        self.offers.offer("open-camera", Weight::Aside, at, form);
    }

    fn sidewall(&mut self, at: Place, coming: bool) {
        let tire = if coming { self.bay.job.coming().get(&at).copied() } else { self.tire_at(at) };
        let known = tire.and_then(|tire| self.bay.book.tires.get(&tire)).and_then(|tire| tire.outer.clone());
        let looks = ["directional", "asymmetric", "studded", "temporary", "retread", "regrooved"];
        let looks = looks.map(|code| (choice(code, self.coded("tire", code)), Value::from(code)));
        for (code, side, weight) in [("sidewall", "outer", Weight::Main), ("sidewall-inner", "inner", Weight::Beside)] {
            let form = Form::of("sidewall")
                .with("at", self.code(at))
                .with("side", side)
                .with("coming", coming)
                .with("looks", Value::Object(serde_json::Map::new()))
                .ask(
                    Slot::text(self.words, "text", FieldKind::Text)
                        .required()
                        .last(known.clone())
                        .filled(self.read.clone().filter(|_| side == "outer")),
                )
                .ask(Slot::several(self.words, "looks", looks.to_vec()).flags());
            self.offers.offer(code, weight, Some(at), form);
        }
        self.photo(PhotoOf::Sidewall, Some(at), Weight::Beside);
    }

    fn tire_at(&self, at: Place) -> Option<crate::ident::TireId> {
        self.bay.job.wanted_at(at).or_else(|| self.bay.job.fitted.get(&at).copied())
    }

    fn mark(&mut self, at: Place, coming: bool) {
        let form = Form::of("mark")
            .with("at", self.code(at))
            .with("coming", coming)
            .ask(Slot::text(self.words, "mark", FieldKind::Text).filled(self.read.clone().or(Some(self.code(at)))));
        self.offers.offer("mark", Weight::Main, Some(at), form);
    }

    fn tread(&mut self, at: Place, coming: bool, weight: Weight) {
        let tire = if coming { self.bay.job.coming().get(&at).copied() } else { self.bay.job.fitted.get(&at).copied() };
        let before = tire.and_then(|tire| self.bay.book.depth_before(tire, self.bay.job.id));
        let last = before.map(|seen| seen.lowest);
        let seen: Vec<_> = before.and_then(|seen| seen.grooves.first()).cloned().unwrap_or_default();
        let count = if seen.is_empty() { USUAL_GROOVES } else { seen.len().min(MOST_GROOVES) };
        let groove = |at: usize| {
            let id = match at {
                0 => "groove-outer",
                _ if at + 1 == count => "groove-inner",
                _ => "groove",
            };
            let label = self.words.text(id, &[("number", (at + 1).to_string().into())]);
            let last = seen.get(at).map(|depth| self.words.reading(depth));
            Groove { spoken: label.clone(), label, last }
        };
        let depths = Slot::reading(self.words, "depths", FieldKind::Grooves, last.as_ref())
            .required()
            .grooves((0..count).map(groove).collect());
        let form = Form::of("tread")
            .with("at", self.code(at))
            .with("coming", coming)
            .ask(depths)
            .ask(Slot::reading::<DepthUnit>(self.words, "lowest", FieldKind::Reading, last.as_ref()))
            .ask(Slot::text(self.words, "reason", FieldKind::LongText));
        self.offers.offer("tread", weight, Some(at), form);
    }

    fn around(&mut self, at: Place) {
        let pair = [Some(at), at.partner()].into_iter().flatten();
        for at in pair {
            let tire = self.tire_at(at);
            let last = tire.and_then(|tire| self.bay.job.around(tire));
            let around = Slot::reading(self.words, "around", FieldKind::Reading, last.as_ref()).required();
            let form = Form::of("around").with("at", self.code(at)).ask(around);
            self.offers.offer("around", Weight::Main, Some(at), form);
        }
    }

    fn plan(&mut self) {
        let plan = Slot::count(self.words, "plan", 1, 99).spelled().required();
        self.offers.offer("choose-plan", Weight::Main, None, Form::of("choose-plan").ask(plan));
    }

    /// One tap for each plan of an answer.
    pub(super) fn plans(&mut self, plans: &[(usize, String)]) {
        for (number, name) in plans {
            let weight = if *number == 1 { Weight::Main } else { Weight::Beside };
            let label = self.words.text("do-choose-this-plan", &[("plan", name.as_str().into())]);
            let form = Form::of("choose-plan").with("plan", number.to_string());
            self.offers.labelled(&format!("choose-plan-{number}"), label, weight, None, form, Leads::Said);
        }
    }

    fn choose_wheels(&mut self) {
        let at = Slot::several(self.words, "wheels", self.wheels()).to("at").required();
        self.offers.offer("choose-wheels", Weight::Main, None, Form::of("choose-wheels").ask(at));
    }

    fn set(&mut self) {
        if !self.bay.vehicle.stored.is_empty() {
            self.offers.offer("stored-set", Weight::Main, None, Form::of("bring-set").with("new", false));
        }
        self.offers.offer("new-set", Weight::Beside, None, Form::of("bring-set").with("new", true));
    }

    fn store(&mut self) {
        let rack = || Slot::text(self.words, "rack", FieldKind::Text).required();
        let all = Form::of("store").ask(rack());
        let one = Form::of("store").ask(rack()).ask(Slot::one(self.words, "at", self.wheels()).required());
        self.offers.offer("store-all", Weight::Main, None, all);
        self.offers.offer("store-one", Weight::Beside, None, one);
    }

    fn spare(&mut self) {
        let form = Form::of("spare")
            .ask(Slot::one(self.words, "flat", self.wheels()).required())
            .ask(Slot::text(self.words, "text", FieldKind::Text).required())
            .ask(Slot::reading::<PressureUnit>(self.words, "pressure", FieldKind::Reading, None))
            .ask(
                Slot::one(self.words, "nuts", self.choices("spare-nuts", &[SpareNuts::Same, SpareNuts::Own]))
                    .required(),
            )
            .ask(Slot::count(self.words, "studs", 3, 12).required())
            .ask(Slot::reading::<SpeedUnit>(self.words, "limit", FieldKind::Reading, None))
            .ask(Slot::reading::<DistanceUnit>(self.words, "replace-by", FieldKind::Reading, None));
        self.offers.offer("spare", Weight::Main, None, form);
    }

    /// The next nut by itself, or the wheel in order; with a click, whether it moved.
    fn nuts(&mut self, task: &Task<'_>, at: Place) {
        let Some(pass) = task.step.asks.pass() else { return };
        let Ok(code) = serde_json::to_value(pass) else { return };
        let left = self.bay.nuts_left_for(task, pass).unwrap_or_default();
        let order = self.bay.studs().and_then(crate::fastening::order).unwrap_or_default();
        let next = order.iter().copied().find(|nut| left.contains(nut));
        let clicks = matches!(pass, Pass::Final | Pass::Recheck);
        let ways: &[(&str, Option<bool>)] = match (clicks, pass) {
            (false, _) => &[("", None)],
            // At a recheck a nut that holds is the wanted answer.
            (true, Pass::Recheck) => &[("-still", Some(false)), ("-moved", Some(true))],
            (true, _) => &[("-moved", Some(true)), ("-still", Some(false))],
        };
        for ((way, moved), first) in ways.iter().zip([true, false]) {
            let weight = if first { Weight::Main } else { Weight::Beside };
            let form = Form::of("nuts").with("at", self.code(at)).with("pass", code.clone()).with("moved", *moved);
            if let Some(nut) = next {
                let label = self.words.text(&format!("do-nut{way}"), &[("nut", nut.to_string().into())]);
                let one = form.clone().with("nut", nut);
                self.offers.labelled(&format!("nut{way}"), label, weight, Some(at), one, Leads::Said);
            }
            let weight = if next.is_none() && first { Weight::Main } else { Weight::Beside };
            let label = self.words.text(&format!("do-nuts{way}"), &[]);
            self.offers.labelled(&format!("nuts{way}"), label, weight, Some(at), form, Leads::Said);
        }
    }

    fn lift(&mut self, code: &str, arm: Arm) {
        let Ok(data) = serde_json::to_value(arm) else { return };
        self.offers.offer(code, Weight::Main, None, Form::of("lift").with("arm", data));
    }

    fn looks(&mut self, at: Option<Place>) {
        let code = at.map(|at| self.code(at));
        let form = || Form::of("look").with("at", code.clone());
        if at.is_some() {
            self.offers.offer("all-sound", Weight::Main, at, form().with("state", "sound"));
        }
        let damage = [
            ("bulge", serde_json::json!({ "kind": "bulge" })),
            ("cut", serde_json::json!({ "kind": "cut" })),
            ("cord", serde_json::json!({ "kind": "cord" })),
            ("nail-tread", serde_json::json!({ "kind": "nail", "zone": "tread" })),
            ("nail-shoulder", serde_json::json!({ "kind": "nail", "zone": "shoulder" })),
            ("nail-sidewall", serde_json::json!({ "kind": "nail", "zone": "sidewall" })),
        ];
        let damage = damage.into_iter().map(|(code, data)| (choice(code, self.coded("found", code)), data)).collect();
        let one = form()
            .ask(Slot::one(self.words, "part", options(&PARTS, |part| self.words.part(part))).required())
            .ask(Slot::one(self.words, "state", options(&State::ALL, |state| self.words.state(state))).required())
            .ask(Slot::text(self.words, "note", FieldKind::LongText))
            .ask(Slot::one(self.words, "damage", damage))
            .ask(Slot::reading::<SpanUnit>(self.words, "thickness", FieldKind::Reading, None))
            .ask(Slot::reading::<SpanUnit>(self.words, "least", FieldKind::Reading, None))
            .ask_if(!photos_of(self.bay.job).is_empty(), || Slot::one(self.words, "photo", self.photos()));
        self.offers.offer("look", Weight::Beside, at, one);
    }

    fn hang(&mut self, at: Place) {
        // Every mark that a tire is known by: the one that is read is tapped, right or wrong.
        let coming = self.bay.job.coming();
        let tires = self.bay.job.fitted.values().chain(coming.values());
        let mut marks: Vec<String> = tires.filter_map(|tire| self.bay.job.known_by(*tire)).map(str::to_owned).collect();
        marks.dedup();
        let form = Form::of("hang").with("at", self.code(at));
        if !marks.is_empty() {
            let mark = Slot::one(self.words, "mark-read", named(marks)).to("mark").required();
            self.offers.offer("hang", Weight::Main, Some(at), form.clone().ask(mark));
        }
        let typed = Slot::text(self.words, "mark-read", FieldKind::Text).to("mark").required();
        self.offers.offer("hang-typed", Weight::Beside, Some(at), form.ask(typed));
    }

    fn pressure(&mut self, at: Place, set: bool) {
        let before = self.bay.book.jobs.iter().rev().filter(|job| job.vehicle == self.bay.vehicle.id);
        let last = before.filter(|job| job.id != self.bay.job.id).find_map(|job| job.pressure(at));
        let here = self.bay.job.pressure(at).or(last).map(|(pressure, _)| pressure);
        let form = Form::of("pressure")
            .with("at", self.code(at))
            .with("set", set)
            .ask(Slot::reading(self.words, "pressure", FieldKind::Reading, here.as_ref()).required())
            // Set by the placard, it is set cold; as it is found nobody knows, unless it is said.
            .ask(Slot::yes_no(self.words, "cold").filled(set.then_some("yes")));
        self.offers.offer(if set { "pressure" } else { "pressure-found" }, Weight::Main, Some(at), form);
    }

    fn lamp(&mut self) {
        let sensors = [SensorKind::Direct, SensorKind::Indirect, SensorKind::None, SensorKind::Unknown];
        for (code, on, weight) in [("lamp-off", false, Weight::Main), ("lamp-on", true, Weight::Beside)] {
            let kinds = Slot::one(self.words, "sensors", self.choices("sensors", &sensors)).filled(Some("unknown"));
            self.offers.offer(code, weight, None, Form::of("lamp").with("on", on).ask(kinds.required()));
        }
    }

    fn unsafe_told(&mut self) {
        for (code, accepts, weight) in
            [("unsafe-accepts", true, Weight::Main), ("unsafe-declines", false, Weight::Beside)]
        {
            let form = self.with_the_customer(Form::of("unsafe-told").with("accepts", accepts));
            self.offers.offer(code, weight, None, form);
        }
    }

    fn answer_first(&mut self, decision: Decision) {
        let answer = match decision {
            Decision::Drive => {
                let drives = options(&DRIVES, |drive| self.words.drive(drive));
                Slot::one(self.words, "answer", drives).required()
            }
            _ => Slot::text(self.words, "answer", FieldKind::Text).required(),
        };
        let form = Form::of("answer-decision").with("decision", decision.code()).ask(answer);
        let label = self.words.text(&format!("decision-{}", decision.code()), &[]);
        let label = self.words.text("do-answer-first", &[("what", label.into())]);
        self.offers.labelled("answer-first", label, Weight::Main, None, form, Leads::Said);
    }

    fn sign_steps(&mut self) {
        let instructors = self.bay.book.people.iter().filter(|person| person.role == Role::Instructor);
        let instructors = named(instructors.filter_map(|person| person.name.clone()));
        if instructors.is_empty() {
            return;
        }
        let form = Form::of("sign-steps")
            .with("steps", Vec::<String>::new())
            .ask(Slot::one(self.words, "by", instructors).required())
            .ask(Slot::text(self.words, "code", FieldKind::Secret).required())
            .ask(Slot::yes_no(self.words, "every-job"));
        self.offers.offer("sign-steps", Weight::Main, None, form);
    }

    /// What can be done in a job at any step.
    pub(super) fn beside(&mut self, task: Option<&Task<'_>>) {
        let words = self.words;
        let crew = self.crew();
        if !crew.is_empty() {
            let person = Slot::one(words, "person", crew.clone()).required();
            self.offers.offer("hands", Weight::Aside, None, Form::of("hands").ask(person));
        }
        let heavy = task.is_some_and(|task| self.bay.wants_two(task));
        if heavy {
            let person = Slot::text(words, "person", FieldKind::Text)
                .required()
                .filled(crew.first().map(|(c, _)| c.code.clone()));
            let form = Form::of("share-wheels").with("at", Vec::<String>::new()).ask(person);
            self.offers.offer("share-wheels", Weight::Main, None, form);
        }
        let tools = named(self.bay.book.tools_at_hand().map(|tool| tool.name.clone()));
        if !tools.is_empty() {
            let tool = Slot::one(words, "tool", tools).required();
            self.offers.offer("use-tool", Weight::Aside, None, Form::of("use-tool").ask(tool));
        }
        for (of, at) in PHOTOS.iter().map(|of| (*of, task.and_then(|task| task.at))) {
            if matches!(of, PhotoOf::Damage | PhotoOf::Hub | PhotoOf::Tread) || at.is_none() {
                self.photo(of, at, Weight::Aside);
            }
        }
        if let Some(task) = task {
            match task.step.asks {
                Ask::SidewallPhoto | Ask::Sidewall => self.photo_pending(PhotoOf::Sidewall, task.at),
                Ask::VehiclePhoto => self.photo_pending(PhotoOf::Vehicle, None),
                Ask::FlatPhoto | Ask::FindingPhoto => self.photo_pending(PhotoOf::Damage, task.at),
                Ask::Placard => self.photo_pending(PhotoOf::Placard, None),
                Ask::Torque => self.photo_pending(PhotoOf::Manual, None),
                _ => {}
            }
        }
        let complaint = Slot::text(words, "complaint", FieldKind::LongText).to("text").required();
        self.offers.offer("complain", Weight::Aside, None, Form::of("complain").ask(complaint));
        let at = Slot::one(words, "at", self.wheels()).required();
        let number = Slot::text(words, "number", FieldKind::Text).required();
        let sensor = Form::of("sensor").with("coming", false).ask(at).ask(number);
        self.offers.offer("sensor", Weight::Aside, None, sensor);
        if self.bay.job.looks().iter().any(|look| look.state == State::Unsafe) {
            self.unsafe_told();
        }
        if !self.bay.to_be_seen().iter().all(|seen| seen.by.is_some()) {
            self.sign_steps();
        }
        let learner = self.bay.book.person(self.bay.job.hands).is_some_and(|person| person.role == Role::Apprentice);
        if learner || self.bay.job.practice {
            let on = !self.bay.job.answers_first();
            let code = if on { "answers-first-on" } else { "answers-first-off" };
            self.offers.offer(code, Weight::Aside, None, Form::of("answer-first").with("on", on));
        }
        self.offers.offer("undo", Weight::Aside, None, Form::of("undo"));
        self.reasoned("park-job", Weight::Aside, None);
        self.reasoned("close-job", Weight::Grave, None);
    }

    /// Lines of the log that can be told anew or taken back.
    pub(super) fn lines(&mut self, lines: &[(usize, String)]) {
        let options = || {
            lines
                .iter()
                .map(|(line, text)| (choice(line.to_string(), format!("{line}: {text}")), Value::from(*line)))
                .collect()
        };
        if lines.is_empty() {
            return;
        }
        let line = || Slot::one(self.words, "line", options()).required();
        let reason = || Slot::text(self.words, "reason", FieldKind::LongText).required();
        let value = Slot::text(self.words, "value", FieldKind::Text).required();
        self.offers.offer("correct", Weight::Beside, None, Form::of("correct").ask(line()).ask(value).ask(reason()));
        self.offers.offer("withdraw", Weight::Grave, None, Form::of("withdraw").ask(line()).ask(reason()));
    }
}

fn turned_path(code: &str) -> String {
    format!("evidence.turned.{}", code.replace('-', "_"))
}

fn evidence_path(code: &str) -> String {
    format!("evidence.{}", code.replace('-', "_"))
}
