//! An invented visit to an invented light truck, entry by entry.

use lugbook::calendar::Moment;
use lugbook::entry::{
    Answer, Arm, Complaint, Draft, DriveSeen, Entry, Fact, Head, Kind, Look, LookAt, Means, Move, Nuts, Pass, Personal,
    PhotoOf, ReadBy, Role, SensorKind, Shelf, SidewallSide, Signature, TireLooks, ToolKind, Turned,
};
use lugbook::fastener::{Lubrication, Printed, TorqueSpec, Wrench};
use lugbook::finding::State;
use lugbook::ident::{Digest, EntryId, JobId, PersonId, StreamId, TireId, ToolId, VehicleId};
use lugbook::limits::{Placard, PlacardTire};
use lugbook::logbook::Logbook;
use lugbook::measure::Depth;
use lugbook::vehicle::{Class, Drive, Layout, Place, Side};

const FL: Place = wheel(1, Side::Left);
const FR: Place = wheel(1, Side::Right);
const RL: Place = wheel(2, Side::Left);
const RR: Place = wheel(2, Side::Right);

const fn wheel(axle: u8, side: Side) -> Place {
    Place::Wheel(lugbook::vehicle::Position { axle, side, row: lugbook::vehicle::Row::Single })
}

/// Walking order, and the tire that starts at each place.
const WALK: [(Place, u8); 4] = [(FL, 1), (RL, 2), (RR, 3), (FR, 4)];
const MODEL: &str = "Yardmule 25, 2006";

/// Writes entries one minute apart.
struct Pen {
    head: Head,
    now: Moment,
    count: u8,
    entries: Vec<Entry>,
    wren: PersonId,
    kit: PersonId,
    vehicle: VehicleId,
    wrench: ToolId,
    gauge: ToolId,
    job: JobId,
}

fn tire(number: u8) -> TireId {
    TireId::from_parts(1_700_000_000_000, [number; 10])
}

fn depths(text: &str) -> Vec<Vec<Depth>> {
    text.split(';')
        .map(|place| place.split_whitespace().map(|depth| format!("{depth}/32").parse().expect("a depth")).collect())
        .collect()
}

impl Pen {
    fn new() -> Self {
        let stream = StreamId::from_parts(1_700_000_000_000, [9; 10]);
        Self {
            head: Head::empty(stream),
            now: "2026-03-02T08:00:00Z".parse().expect("a moment"),
            count: 0,
            entries: Vec::new(),
            wren: PersonId::from_parts(1_700_000_000_000, [1; 10]),
            kit: PersonId::from_parts(1_700_000_000_000, [2; 10]),
            vehicle: VehicleId::from_parts(1_700_000_000_000, [3; 10]),
            wrench: ToolId::from_parts(1_700_000_000_000, [4; 10]),
            gauge: ToolId::from_parts(1_700_000_000_000, [5; 10]),
            job: JobId::from_parts(1_700_000_000_000, [6; 10]),
        }
    }

    fn at(&mut self, moment: &str) {
        self.now = moment.parse().expect("a moment");
    }

    fn say(&mut self, fact: Fact) -> EntryId {
        self.say_with(fact, None)
    }

    fn say_with(&mut self, fact: Fact, personal: Option<Personal>) -> EntryId {
        self.count = self.count.wrapping_add(1);
        let id = EntryId::from_parts(self.now.unix_ms().unsigned_abs(), [self.count; 10]);
        let draft = Draft { id, author: self.wren, practice: false, fact, personal };
        let entry = draft.seal(&self.head, self.now).expect("an entry");
        self.head = self.head.then(&entry).expect("chained");
        self.entries.push(entry);
        self.now = Moment::from_unix_ms(self.now.unix_ms() + 60_000);
        id
    }

    fn named(name: &str, plate: Option<&str>) -> Option<Personal> {
        let name = (!name.is_empty()).then(|| name.to_owned());
        Some(Personal { name, plate: plate.map(str::to_owned), ..Personal::salted([7; 16]) })
    }

    fn book(&mut self) {
        self.book_of("Wren Tolliver", "Orchard truck");
    }

    fn book_of(&mut self, mechanic: &str, name: &str) {
        let (wren, kit, vehicle) = (self.wren, self.kit, self.vehicle);
        self.say_with(Fact::PersonAdded { person: wren, role: Role::Mechanic }, Self::named(mechanic, None));
        self.say_with(Fact::PersonAdded { person: kit, role: Role::Apprentice }, Self::named("Kit Marlowe", None));
        self.say_with(
            Fact::VehicleAdded {
                vehicle,
                name: name.into(),
                model: MODEL.into(),
                class: Class::LightTruck,
                layout: Layout::two_axles(true),
                own: false,
            },
            Self::named("", Some("ORCH 12")),
        );
        let mut papers = Wrench::new(4.0, "1 N.m".parse().expect("a torque"));
        papers.last_calibration = Some("2025-02-10".parse().expect("a day"));
        self.say(Fact::ToolAdded {
            tool: self.wrench,
            what: ToolKind::Wrench { papers },
            name: "Long wrench".into(),
            interval_months: None,
        });
        self.say(Fact::ToolAdded {
            tool: self.gauge,
            what: ToolKind::DepthGauge { resolution: "1/32".parse().expect("a depth"), calibrated: None },
            name: "Brass gauge".into(),
            interval_months: None,
        });
        for (at, number) in WALK {
            self.say(Fact::TireFitted { tire: tire(number), vehicle, at, job: None });
        }
    }

    fn open(&mut self, number: u8, procedure: &str, circumstances: &[&str]) {
        self.job = JobId::from_parts(1_700_000_000_000, [number; 10]);
        self.say(Fact::JobOpened {
            job: self.job,
            vehicle: self.vehicle,
            procedure: procedure.into(),
            version: 1,
            circumstances: circumstances.iter().map(|code| (*code).to_owned()).collect(),
        });
    }

    fn odometer(&mut self, reading: &str) -> EntryId {
        let reading = reading.parse().expect("a distance");
        self.say(Fact::OdometerRead { job: self.job, reading, note: None })
    }

    fn tread(&mut self, at: Place, number: u8, grooves: &str, lowest: &str) {
        self.say(Fact::TreadMeasured {
            job: self.job,
            tire: tire(number),
            at,
            grooves: depths(grooves),
            lowest: format!("{lowest}/32").parse().expect("a depth"),
            reason: None,
        });
    }

    fn approve(&mut self, what: &str) {
        let what = what.to_owned();
        self.say(Fact::WorkApproved { job: self.job, what, approved: true, signature: Signature::Name });
    }

    fn answer(&mut self, step: &str, answer: Answer) {
        self.say(Fact::StepDone { job: self.job, step: step.into(), at: None, answer });
    }

    fn photo(&mut self, what: &[u8], of: PhotoOf, at: Option<Place>) -> Digest {
        let photo = Digest::of(what);
        let job = Some(self.job);
        self.say(Fact::PhotoTaken { job, photo, of, at, taken: Some("2026-11-24 09:31".into()) });
        photo
    }

    fn lift(&mut self, arm: Arm) {
        self.say(Fact::Lifted { job: self.job, arm, means: Means::Stands, at: None });
    }

    fn turn(&mut self, at: Place, nuts: Nuts, pass: Pass, turned: Option<Turned>) {
        let last = pass == Pass::Final;
        self.say(Fact::NutTightened {
            job: self.job,
            at,
            nuts,
            pass,
            turned,
            setting: last.then(|| "137 N.m".parse().expect("a torque")),
            tool: last.then_some(self.wrench),
        });
    }

    fn look(&mut self, at: Place, part: LookAt, state: State, note: Option<&str>) {
        let look = Look {
            at: Some(at),
            part,
            state,
            note: note.map(str::to_owned),
            damage: None,
            thickness: None,
            least: None,
        };
        self.say(Fact::FindingNoted { job: self.job, look, photo: None });
    }

    /// Odometer and tread of an earlier visit.
    fn earlier(&mut self) {
        self.open(20, "rotation-on-a-lift", &["lift", "customer", "air"]);
        self.approve("rotation");
        self.odometer("42100 mi");
        self.tread(FL, 1, "11 10 11", "10");
        self.tread(RL, 2, "9 9 9", "9");
        self.tread(RR, 3, "9 8 8", "8");
        self.tread(FR, 4, "11 10 10", "10");
        self.say(Fact::JobClosed { job: self.job, reason: "the lift was needed".into() });
    }

    /// From opening to the choice of moves.
    fn before_work(&mut self) {
        self.at("2026-11-24T09:12:00Z");
        self.open(21, "rotation-with-jack-and-stands", &["stands", "customer", "electric"]);
        self.say(Fact::ToolUsed { job: self.job, tool: self.wrench });
        self.say(Fact::ToolUsed { job: self.job, tool: self.gauge });
        let text = "<b>steering</b> wheel shakes at highway speed".to_owned();
        self.say(Fact::ComplaintHeard { job: self.job, complaint: Complaint { text } });
        let text = Some("scrape along the tailgate".to_owned());
        self.say(Fact::DamageSeen { job: self.job, at: None, text, photo: None });
        self.approve("rotate five tires, set pressures");
        self.answer("lock-key", Answer::Choice("at-hand".into()));
        let wrong = self.odometer("48210 mi");
        let fact = Fact::OdometerRead { job: self.job, reading: "48120 mi".parse().expect("a distance"), note: None };
        self.say(Fact::Corrected { target: wrong, fact: Box::new(fact), reason: "two digits swapped".into() });
        self.say(Fact::DriveSeen { job: self.job, seen: DriveSeen::Manual { drive: Drive::Rear } });
    }

    fn papers(&mut self) {
        let placard = |cold: &str| {
            let size = Some("LT245/75R16".to_owned());
            Some(PlacardTire { cold: cold.parse().expect("a pressure"), full_load: None, size })
        };
        let photo = Some(self.photo(b"placard", PhotoOf::Placard, None));
        self.say(Fact::SpecificationRecorded {
            model: MODEL.into(),
            shelf: Shelf::Placard {
                placard: Placard {
                    axles: vec![placard("50 psi"), placard("65 psi")],
                    spare: None,
                    source: "door label".into(),
                },
            },
            source: "door label".into(),
            photo,
        });
        let printed = ["125..150 N.m", "90..110 ft.lb"].map(|text| text.parse::<Printed>().expect("printed"));
        let mut spec = TorqueSpec::printed(printed);
        spec.condition = Lubrication::Dry;
        spec.thread = Some("M14 x 1.5".parse().expect("a thread"));
        let photo = Some(self.photo(b"manual page", PhotoOf::Manual, None));
        self.say(Fact::SpecificationRecorded {
            model: MODEL.into(),
            shelf: Shelf::Torque { spec, studs: Some(8) },
            source: "owner's manual, page 7-19".into(),
            photo,
        });
        self.answer("studs", Answer::Count(8));
    }

    fn tires(&mut self) {
        let read = [
            (FL, 1, "A", "LT245/75R16 120/116S DOT 7K2 4HL1PX 1422", "9 8 9; 9 8 9; 9 8 8", "7"),
            (RL, 2, "B", "LT245/75R16 120/116S DOT 7K2 4HL1PX 0823", "7 6 6; 7 6 6; 7 6 7", "6"),
            (RR, 3, "C", "LT245/75R16 120/116S DOT 7K2 4HL1PX 3919", "4 3 3; 4 3 3; 4 3 3", "3"),
            (FR, 4, "D", "LT245/75R16 120/116S DOT 7K2 4HL1PX 1422", "13 13 13; 13 13 13; 13 13 13", "13"),
        ];
        for (at, number, mark, text, grooves, lowest) in read {
            let photo = self.photo(mark.as_bytes(), PhotoOf::Sidewall, Some(at));
            self.say(Fact::SidewallRead {
                job: self.job,
                tire: tire(number),
                at,
                side: SidewallSide::Outer,
                text: text.into(),
                by: ReadBy::Typed,
                looks: TireLooks::default(),
            });
            let mark = mark.to_owned();
            self.say(Fact::MarkChalked { job: self.job, at, tire: tire(number), mark, photo: Some(photo) });
            self.tread(at, number, grooves, lowest);
        }
        let moves = [(1, FL, RL), (2, RL, FR), (3, RR, FL), (4, FR, RR)];
        let moves = moves.map(|(number, from, to)| Move { tire: tire(number), from, to }).to_vec();
        self.say(Fact::PlanChosen { job: self.job, pattern: "rearward-cross".into(), moves });
    }

    /// Raised, wheels off and looked behind, wheels on again and down.
    fn work(&mut self) {
        for step in ["brake", "chock-rear"] {
            self.answer(step, Answer::Seen);
        }
        self.say(Fact::HandsChanged { job: self.job, person: self.kit });
        for (at, _) in WALK {
            self.turn(at, Nuts::WheelInOrder(8), Pass::Cracked, None);
        }
        for step in ["jack-points", "front-up", "front-stands", "front-rest", "rear-up", "rear-stands", "rear-rest"] {
            self.answer(step, Answer::Seen);
        }
        self.lift(Arm::Clear);
        self.answer("rock", Answer::Seen);
        self.lift(Arm::Held);
        for (at, _) in WALK {
            self.say(Fact::WheelOff { job: self.job, at });
        }
        for (at, _) in WALK {
            for part in [LookAt::HubFace, LookAt::Studs, LookAt::Seats, LookAt::Valve] {
                self.look(at, part, State::Sound, None);
            }
            match at == RL {
                true => self.look(at, LookAt::Tire, State::Watch, Some("shallow cut in the sidewall, no cord seen")),
                false => self.look(at, LookAt::Tire, State::Sound, None),
            }
        }
        for (at, number, mark) in [(FL, 3, "C"), (RL, 1, "A"), (RR, 4, "D"), (FR, 2, "B")] {
            self.say(Fact::MarkRead { job: self.job, at, mark: mark.into() });
            self.say(Fact::WheelOn { job: self.job, at, tire: tire(number) });
            self.turn(at, Nuts::WheelInOrder(8), Pass::Started, None);
            self.turn(at, Nuts::WheelInOrder(8), Pass::Snug, None);
        }
        self.answer("tray", Answer::Count(0));
        self.lift(Arm::AllClear);
        for step in ["rear-off-stands", "rear-stands-out", "rear-down", "chock-rear-again"] {
            self.answer(step, Answer::Seen);
        }
        for step in ["front-off-stands", "front-stands-out"] {
            self.answer(step, Answer::Seen);
        }
        self.lift(Arm::Down);
    }

    /// Final torque, pressures, lamp, recheck, signature.
    fn finish(&mut self) {
        for nut in [1, 5, 3, 7, 2, 6, 4] {
            self.turn(FL, Nuts::One(nut), Pass::Final, Some(Turned::Moved));
        }
        self.turn(FL, Nuts::One(8), Pass::Final, Some(Turned::Still));
        for (at, _) in WALK.into_iter().skip(1) {
            self.turn(at, Nuts::WheelInOrder(8), Pass::Final, Some(Turned::Moved));
        }
        let found =
            [(FL, "47 psi", "50 psi"), (RL, "61 psi", "65 psi"), (RR, "58 psi", "65 psi"), (FR, "49 psi", "48 psi")];
        for (at, was, set) in found {
            for (text, set) in [(was, false), (set, true)] {
                let pressure = text.parse().expect("a pressure");
                self.say(Fact::PressureMeasured { job: self.job, at, pressure, set, cold: Some(true) });
            }
        }
        self.say(Fact::SensorRead {
            job: self.job,
            at: None,
            sensors: SensorKind::Direct,
            number: None,
            lamp: Some(false),
            relearned: None,
            tire: None,
            method: None,
        });
        self.say(Fact::StepSkipped {
            job: self.job,
            step: "relearn".into(),
            at: None,
            reason: "no tool for these sensors".into(),
        });
        self.answer("key-back", Answer::Seen);
        let after = vec!["50 mi".parse().expect("a distance")];
        self.say(Fact::RecheckTold { job: self.job, after });
    }
}

/// The book with one earlier visit.
pub fn last_visit() -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    pen.earlier();
    Logbook::from_iter(pen.entries)
}

/// A visit by this mechanic to a vehicle of this name, with one tread reading.
pub fn called(mechanic: &str, vehicle: &str) -> Logbook {
    let mut pen = Pen::new();
    pen.book_of(mechanic, vehicle);
    pen.open(30, "rotation-on-a-lift", &["lift", "customer", "air"]);
    pen.tread(FL, 1, "7 6 6", "6");
    Logbook::from_iter(pen.entries)
}

/// A visit on 2 March 2026 at 48,000 mi to a vehicle of this name, in which these rechecks were told.
pub fn told_recheck(vehicle: &str, after: &[&str]) -> Logbook {
    let mut pen = Pen::new();
    pen.book_of("Wren Tolliver", vehicle);
    pen.open(30, "rotation-on-a-lift", &["lift", "customer", "air"]);
    pen.odometer("48000 mi");
    let after = after.iter().map(|text| text.parse().expect("a distance")).collect();
    pen.say(Fact::RecheckTold { job: pen.job, after });
    Logbook::from_iter(pen.entries)
}

/// Visits ninety days apart, each with its odometer figure, when one was read, and the four tires' depths
/// in walking order: front left, rear left, rear right, front right; in 1/32 in. The front ones change
/// sides after the second visit.
pub fn visits(list: &[(Option<&str>, [&str; 4])]) -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    let mut walk = WALK;
    for ((odometer, depths), number) in list.iter().zip(50..) {
        pen.open(number, "rotation-on-a-lift", &["lift", "customer", "air"]);
        if let Some(odometer) = odometer {
            pen.odometer(odometer);
        }
        for ((at, number), depth) in walk.into_iter().zip(depths) {
            pen.tread(at, number, &format!("{depth} {depth} {depth}"), depth);
        }
        if number == 51 {
            walk = [(FL, 4), (RL, 2), (RR, 3), (FR, 1)];
            for (at, number) in [(FL, 4), (FR, 1)] {
                pen.say(Fact::WheelOn { job: pen.job, at, tire: tire(number) });
            }
        }
        pen.say(Fact::JobSigned { job: pen.job, signature: Signature::Name, seen: None });
        pen.now = Moment::from_unix_ms(pen.now.unix_ms() + 90 * 24 * 3_600_000);
    }
    Logbook::from_iter(pen.entries)
}

/// A whole visit to its signature: one nut still to be proven, a figure
/// corrected, a step skipped, a tire deeper than last time.
pub fn whole() -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    pen.earlier();
    pen.before_work();
    pen.papers();
    pen.tires();
    pen.work();
    pen.finish();
    pen.say(Fact::JobSigned { job: pen.job, signature: Signature::Name, seen: None });
    Logbook::from_iter(pen.entries)
}

/// A visit without a torque specification that the customer ended.
pub fn no_torque() -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    pen.before_work();
    pen.say(Fact::SpecificationUnknown { job: pen.job, what: Kind::Torque });
    pen.tires();
    pen.work();
    pen.say(Fact::GateOpened {
        job: pen.job,
        step: "final".into(),
        at: Some(FL),
        condition: "torque-known".into(),
        reason: "no manual in the yard".into(),
    });
    pen.turn(FL, Nuts::WheelInOrder(8), Pass::Final, Some(Turned::Moved));
    let look = Look {
        at: Some(RR),
        part: LookAt::Tire,
        state: State::Unsafe,
        note: Some("cord seen".into()),
        damage: None,
        thickness: None,
        least: None,
    };
    pen.say(Fact::FindingNoted { job: pen.job, look, photo: None });
    pen.say(Fact::JobClosed { job: pen.job, reason: "the customer left".into() });
    Logbook::from_iter(pen.entries)
}

/// Two visits that measure one tire at the front left, both with the same gauge; depths in 1/32 in.
pub fn measured_twice(before: &str, now: &str) -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    for (number, depth) in [(30, before), (31, now)] {
        pen.open(number, "rotation-on-a-lift", &["lift", "customer", "air"]);
        pen.say(Fact::ToolUsed { job: pen.job, tool: pen.gauge });
        pen.tread(FL, 1, depth, depth);
    }
    Logbook::from_iter(pen.entries)
}

/// One visit that measures the tires in walking order: front left, rear left,
/// rear right, front right; depths in 1/32 in.
pub fn measured(depths: [&str; 4]) -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    pen.open(30, "rotation-on-a-lift", &["lift", "customer", "air"]);
    for ((at, number), depth) in WALK.into_iter().zip(depths) {
        pen.tread(at, number, depth, depth);
    }
    Logbook::from_iter(pen.entries)
}

/// One visit that sets the front left tire to this pressure under a placard of that.
pub fn inflated(placard: &str, set: &str) -> Logbook {
    let mut pen = Pen::new();
    pen.book();
    pen.open(30, "rotation-on-a-lift", &["lift", "customer", "air"]);
    let cold = placard.parse().expect("a pressure");
    let axle = Some(PlacardTire { cold, full_load: None, size: None });
    pen.say(Fact::SpecificationRecorded {
        model: MODEL.into(),
        shelf: Shelf::Placard { placard: Placard { axles: vec![axle], spare: None, source: "door label".into() } },
        source: "door label".into(),
        photo: None,
    });
    let pressure = set.parse().expect("a pressure");
    pen.say(Fact::PressureMeasured { job: pen.job, at: FL, pressure, set: true, cold: Some(true) });
    Logbook::from_iter(pen.entries)
}
