//! One fact of every kind, as the golden bytes hold them and as a person reads them.

use lugbook::calendar::Moment;
use lugbook::entry::{
    Answer, Arm, Complaint, CoverBox, DriveSeen, Fact, Kind, Laid, Learned, Look, LookAt, Means, Move, Nuts,
    OdometerNote, Pass, PhotoOf, ReadBy, Relearn, Role, SeenStep, SensorKind, Shelf, SidewallSide, Signature,
    SpareNuts, Thing, TireDamage, TireLooks, ToolKind, Turned, Zone,
};
use lugbook::fastener::{Bar, Gun, Lubrication, Power, Printed, Scale, TorqueSpec, Wrench};
use lugbook::finding::State;
use lugbook::ident::{Digest, EntryId, JobId, PersonId, TireId, ToolId, VehicleId};
use lugbook::limits::{Chosen, Placard, PlacardTire, Region, Season};
use lugbook::measure::Depth;
use lugbook::vehicle::hub::{self, Evidence};
use lugbook::vehicle::{Class, Drive, Equipment, Layout, Place, Position, Row, Side};

const FL: Place = Place::Wheel(Position { axle: 1, side: Side::Left, row: Row::Single });

fn depths(text: &str) -> Vec<Depth> {
    text.split(' ').map(|depth| depth.parse().expect("a depth")).collect()
}

fn placard_tire(cold: &str) -> PlacardTire {
    PlacardTire { cold: cold.parse().expect("a pressure"), full_load: None, size: Some("LT245/75R16".into()) }
}

fn spec() -> TorqueSpec {
    let mut spec = TorqueSpec::printed(["125..150 N.m", "100 ft.lb"].map(|p| p.parse::<Printed>().expect("printed")));
    spec.condition = Lubrication::Dry;
    spec
}

/// At least one of each kind of fact, in the order in which they were added: golden bytes are never moved.
pub fn facts() -> Vec<Fact> {
    let job = JobId::from_parts(1, [1; 10]);
    let vehicle = VehicleId::from_parts(1, [2; 10]);
    let person = PersonId::from_parts(1, [3; 10]);
    let tire = TireId::from_parts(1, [4; 10]);
    let tool = ToolId::from_parts(1, [5; 10]);
    let target = EntryId::from_parts(1, [6; 10]);
    let photo = Digest::of(b"a picture");
    let rl = Place::single(2, Side::Left);
    let inner = Place::Wheel(Position { axle: 2, side: Side::Left, row: Row::Inner });
    let layout = Layout::two_axles(true);
    let shelf = |shelf| Fact::SpecificationRecorded {
        model: "Invented pickup 2019".into(),
        shelf,
        source: "Owner's manual, page 412.".into(),
        photo: Some(photo),
    };
    let nut = |nuts, pass, turned, setting: Option<&str>, tool| Fact::NutTightened {
        job,
        at: FL,
        nuts,
        pass,
        turned,
        setting: setting.map(|s| s.parse().expect("a torque")),
        tool,
    };
    let turned = hub::Turned {
        gear: hub::Gear::Neutral,
        brake: hub::ParkingBrake::Released,
        off_ground: hub::OffGround::Both,
        engine: hub::Engine::Off,
        wheel: hub::WheelMotion::Turns,
        shaft: hub::ShaftMotion::WithWheel,
        opposite: hub::Opposite::OtherWay,
    };
    vec![
        Fact::PersonAdded { person, role: Role::Mechanic },
        Fact::VehicleAdded {
            vehicle,
            name: "Orchard truck".into(),
            model: "Invented pickup 2019".into(),
            class: Class::LightTruck,
            layout,
            own: true,
        },
        shelf(Shelf::Torque { spec: spec(), studs: Some(6) }),
        shelf(Shelf::Placard {
            placard: Placard {
                axles: vec![Some(placard_tire("35 psi")), None],
                spare: Some(PlacardTire { full_load: Some("65 psi".parse().unwrap()), ..placard_tire("60 psi") }),
                source: "Door label".into(),
            },
        }),
        shelf(Shelf::LiftPoints { text: "Under the frame, behind the front wheels".into() }),
        shelf(Shelf::Drive { drive: Drive::PartTime }),
        shelf(Shelf::Pattern { pattern: "forward-cross-five".into() }),
        Fact::SpecificationUnknown { job, what: Kind::Torque },
        Fact::JobOpened {
            job,
            vehicle,
            procedure: "rotation-with-jack-and-stands".into(),
            version: 1,
            circumstances: vec!["stands".into(), "customer".into(), "electric".into()],
        },
        Fact::JobParked { job, reason: "waiting for a stud.".into() },
        Fact::JobResumed { job },
        Fact::JobClosed { job, reason: "the customer left".into() },
        Fact::JobSigned { job, signature: Signature::Name, seen: None },
        Fact::HandsChanged { job, person },
        Fact::OdometerRead { job, reading: "48210 mi".parse().unwrap(), note: None },
        Fact::OdometerRead { job, reading: "48210 mi".parse().unwrap(), note: Some(OdometerNote::Estimated) },
        Fact::OdometerRead { job, reading: "12 mi".parse().unwrap(), note: Some(OdometerNote::ClusterReplaced) },
        Fact::ComplaintHeard { job, complaint: Complaint { text: "Shakes at 60.".into() } },
        Fact::DamageSeen { job, at: None, text: None, photo: None },
        Fact::DamageSeen { job, at: Some(FL), text: Some("curb rash on the rim".into()), photo: None },
        Fact::WorkApproved { job, what: "rotate".into(), approved: true, signature: Signature::Name },
        Fact::WorkApproved { job, what: "rotate".into(), approved: false, signature: Signature::Name },
        Fact::WorkApproved {
            job,
            what: "unsafe-told".into(),
            approved: true,
            signature: Signature::Drawn { strokes: Vec::new() },
        },
        Fact::WorkApproved { job, what: "unsafe-told".into(), approved: false, signature: Signature::Name },
        Fact::TireFitted { tire, vehicle, at: FL, job: None },
        Fact::TireRemoved { tire, job, reason: "cord seen".into() },
        Fact::MarkChalked { job, at: FL, tire, mark: "A".into(), photo: None },
        Fact::MarkRead { job, at: FL, mark: "C".into() },
        Fact::PhotoPending { job, of: PhotoOf::Sidewall, at: Some(FL) },
        Fact::PhotoTaken {
            job: Some(job),
            photo,
            of: PhotoOf::Manual,
            at: None,
            taken: Some("2026-05-04 09:15".into()),
        },
        Fact::SidewallRead {
            job,
            tire,
            at: FL,
            side: SidewallSide::Outer,
            text: "LT245/75R16 120/116S DOT 1HKB 9FLP 0723".into(),
            by: ReadBy::Typed,
            looks: TireLooks { directional: true, studded: true, ..TireLooks::default() },
        },
        Fact::SidewallRead {
            job,
            tire,
            at: FL,
            side: SidewallSide::Inner,
            text: "DOT 1HKB 9FLP 0723".into(),
            by: ReadBy::Camera { reader: "ring reader 1".into(), model: photo },
            looks: TireLooks::default(),
        },
        Fact::TreadMeasured {
            job,
            tire,
            at: FL,
            grooves: vec![depths("7/32 7/32 6/32"), depths("7/32 6/32 6/32")],
            lowest: "6/32".parse().unwrap(),
            reason: Some("measured twice".into()),
        },
        Fact::PressureMeasured { job, at: FL, pressure: "33.5 psi".parse().unwrap(), set: false, cold: Some(false) },
        Fact::PressureMeasured { job, at: FL, pressure: "2.4 bar".parse().unwrap(), set: true, cold: Some(true) },
        Fact::SensorRead {
            job,
            at: None,
            sensors: SensorKind::Direct,
            number: Some("7F3A21".into()),
            lamp: Some(false),
            relearned: Some(true),
            tire: None,
            method: None,
        },
        Fact::DriveSeen { job, seen: DriveSeen::Hub { evidence: Evidence::look(2, Side::Left, hub::Hub::NoShaft) } },
        Fact::DriveSeen { job, seen: DriveSeen::Hub { evidence: Evidence::turn(1, Side::Right, turned) } },
        Fact::DriveSeen { job, seen: DriveSeen::Manual { drive: Drive::Rear } },
        Fact::DriveSeen { job, seen: DriveSeen::Owner { drive: Drive::All } },
        Fact::PlanChosen {
            job,
            pattern: "rearward-cross".into(),
            moves: vec![Move { tire, from: FL, to: rl }, Move { tire, from: rl, to: rl }],
        },
        Fact::PlanChosen { job, pattern: "leave-as-is".into(), moves: Vec::new() },
        Fact::Lifted { job, arm: Arm::Clear, means: Means::Jack, at: Some(FL) },
        Fact::Lifted { job, arm: Arm::Full, means: Means::Lift, at: None },
        Fact::Lifted { job, arm: Arm::Held, means: Means::Stands, at: None },
        Fact::Lifted { job, arm: Arm::AllClear, means: Means::Stands, at: None },
        Fact::Lifted { job, arm: Arm::Down, means: Means::Stands, at: None },
        Fact::WheelOff { job, at: FL },
        Fact::WheelOn { job, at: FL, tire },
        nut(Nuts::WheelInOrder(6), Pass::Cracked, None, None, None),
        nut(Nuts::WheelInOrder(6), Pass::Started, None, None, None),
        nut(Nuts::WheelInOrder(6), Pass::Snug, None, None, Some(tool)),
        nut(Nuts::One(3), Pass::Final, Some(Turned::Moved), Some("140 N.m"), Some(tool)),
        nut(Nuts::One(3), Pass::Final, Some(Turned::Still), Some("140 N.m"), None),
        nut(Nuts::One(3), Pass::Recheck, Some(Turned::Still), Some("140 N.m"), None),
        Fact::ToolAdded {
            tool,
            what: ToolKind::Wrench { papers: Wrench::new(4.0, "5 ft.lb".parse().unwrap()) },
            name: "Long wrench".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::DepthGauge { resolution: "1/32".parse().unwrap(), calibrated: None },
            name: "Depth gauge".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::PressureGauge {
                resolution: None,
                calibrated: Some("2026-02-01".parse().unwrap()),
                highest: None,
            },
            name: "Dial gauge".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Gun { papers: Gun::default() },
            name: "Gun".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Bar { papers: Bar::new("65 ft.lb".parse().unwrap()) },
            name: "Blue bar".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Jack { rating: Some("3 t".parse().unwrap()) },
            name: "Jack".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Stand { rating: None, count: None },
            name: "Stands".into(),
            interval_months: None,
        },
        Fact::ToolAdded { tool, what: ToolKind::Lift { rating: None }, name: "Two-post".into(), interval_months: None },
        Fact::ToolUsed { job, tool },
        Fact::StepDone { job, step: "rock".into(), at: None, answer: Answer::Seen },
        Fact::StepDone { job, step: "lock-key".into(), at: None, answer: Answer::Choice("at-hand".into()) },
        Fact::StepDone { job, step: "tray".into(), at: None, answer: Answer::Count(0) },
        Fact::StepSkipped { job, step: "lamp".into(), at: None, reason: "battery disconnected".into() },
        Fact::GateOpened {
            job,
            step: "final".into(),
            at: Some(FL),
            condition: "torque-known".into(),
            reason: "no manual in the yard".into(),
        },
        Fact::FindingNoted {
            job,
            look: Look {
                at: Some(FL),
                part: LookAt::Valve,
                state: State::Watch,
                note: Some("cap missing".into()),
                damage: None,
                thickness: None,
                least: None,
            },
            photo: None,
        },
        Fact::FindingNoted {
            job,
            look: Look {
                at: None,
                part: LookAt::Other,
                state: State::Unsafe,
                note: None,
                damage: None,
                thickness: None,
                least: None,
            },
            photo: None,
        },
        Fact::RecheckTold { job, after: vec!["50 mi".parse().unwrap(), "100 mi".parse().unwrap()] },
        Fact::Corrected {
            target,
            fact: Box::new(Fact::OdometerRead { job, reading: "48120 mi".parse().unwrap(), note: None }),
            reason: "two digits swapped".into(),
        },
        Fact::Withdrawn { target, reason: "said twice".into(), undo: false },
        // Kinds that came later stand after those that are older, so that older bytes stay.
        Fact::WheelsChosen { job, at: vec![FL, rl] },
        Fact::SpareSeen {
            job,
            flat: rl,
            nuts: SpareNuts::Own,
            studs: Some(5),
            limit: Some("50 mph".parse().unwrap()),
            replace_by: Some("50 mi".parse().unwrap()),
        },
        Fact::SpareSeen { job, flat: FL, nuts: SpareNuts::Same, studs: None, limit: None, replace_by: None },
        Fact::SetBrought { job, wheels: vec![Laid { tire, at: FL }] },
        Fact::TireStored { job, tire, at: FL, rack: "rack B 12".into() },
        Fact::LimitsChosen {
            job: None,
            chosen: Chosen {
                region: Some(Region::France),
                season: Some(Season::Winter),
                at_limit: "0,5 mm".parse().ok(),
                watch: "2 mm".parse().ok(),
            },
        },
        Fact::LimitsChosen {
            job: Some(job),
            chosen: Chosen { region: Some(Region::UsCommercial), ..Chosen::default() },
        },
        Fact::SensorRead {
            job,
            at: Some(FL),
            sensors: SensorKind::Direct,
            number: Some("7F3A21".into()),
            lamp: None,
            relearned: None,
            tire: Some(tire),
            method: Some(Relearn::WheelTool),
        },
        Fact::FindingNoted {
            job,
            look: Look {
                at: Some(FL),
                part: LookAt::Tire,
                state: State::BelowLimit,
                note: None,
                damage: Some(TireDamage::Nail(Zone::Shoulder)),
                thickness: None,
                least: None,
            },
            photo: None,
        },
        Fact::FindingNoted {
            job,
            look: Look {
                at: Some(rl),
                part: LookAt::Pads,
                state: State::AtLimit,
                note: None,
                damage: None,
                thickness: Some("3 mm".parse().unwrap()),
                least: None,
            },
            photo: None,
        },
        Fact::PhotoCovered { photo, boxes: vec![CoverBox { left: 1210, top: 840, width: 420, height: 130 }] },
        Fact::PhotoCovered { photo, boxes: Vec::new() },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Wrench {
                papers: Wrench {
                    range: Some(Scale { low: "40 N.m".parse().unwrap(), high: "200 N.m".parse().unwrap() }),
                    last_calibration: "2026-03-02".parse().ok(),
                    ..Wrench::new(4.0, "1 N.m".parse().unwrap())
                },
            },
            name: "Long wrench".into(),
            interval_months: Some(12),
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::PressureGauge {
                resolution: "1 psi".parse().ok(),
                calibrated: None,
                highest: "100 psi".parse().ok(),
            },
            name: "Dial gauge".into(),
            interval_months: Some(1),
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Gun { papers: Gun { greatest: "500 N.m".parse().ok(), power: Some(Power::Electric) } },
            name: "Battery gun".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Bar {
                papers: Bar {
                    hex: "21 mm".parse().ok(),
                    for_guns_up_to: "400 N.m".parse().ok(),
                    ..Bar::new("65 ft.lb".parse().unwrap())
                },
            },
            name: "Blue bar".into(),
            interval_months: None,
        },
        Fact::ToolAdded {
            tool,
            what: ToolKind::Stand { rating: "3 t".parse().ok(), count: Some(4) },
            name: "Red stands".into(),
            interval_months: None,
        },
        Fact::ToolRetired { tool, reason: "dropped".into() },
        Fact::WheelShared { job, at: FL, person: Some(person) },
        Fact::WheelShared { job, at: rl, person: None },
        Fact::AnswerFirst { job, on: true },
        Fact::AnswerFirst { job, on: false },
        Fact::AnswerGiven { job, learned: Learned::Drive { answer: Drive::Front, core: Some(Drive::Rear) } },
        Fact::AnswerGiven { job, learned: Learned::Drive { answer: Drive::Front, core: None } },
        Fact::AnswerGiven {
            job,
            learned: Learned::Pattern { answer: "x".into(), core: Some("rearward-cross".into()) },
        },
        Fact::AnswerGiven {
            job,
            learned: Learned::Lifts { answer: vec![vec![FL], vec![rl]], core: Some(vec![vec![FL, rl]]) },
        },
        Fact::AnswerGiven {
            job,
            learned: Learned::Order { answer: vec![1, 4, 2, 5, 3], core: Some(vec![1, 3, 5, 2, 4]) },
        },
        Fact::AnswerGiven {
            job,
            learned: Learned::Target { answer: "137 N.m".parse().unwrap(), core: "137 N.m".parse().ok() },
        },
        Fact::StepsSeen {
            job,
            by: person,
            steps: vec![SeenStep { step: "held".into(), at: None }, SeenStep { step: "final".into(), at: Some(FL) }],
        },
        Fact::CodeSet { person, hash: "$argon2id$v=19$m=19456,t=2,p=1$AQEBAQEBAQE$AQEBAQ".into() },
        Fact::CodeRefused { person, clock: Moment::from_unix_ms(1_780_000_000_000) },
        Fact::Withdrawn { target, reason: "taken back right away".into(), undo: true },
        Fact::Archived { thing: Thing::Vehicle(vehicle), reason: "sold".into() },
        Fact::Archived { thing: Thing::Set(vehicle), reason: "worn out".into() },
        Fact::BroughtBack { thing: Thing::Person(person) },
        Fact::BroughtBack { thing: Thing::Tool(tool) },
        Fact::VehicleEquipped { vehicle, has: vec![Equipment::AirSuspension, Equipment::HighVoltage] },
        Fact::VehicleEquipped { vehicle, has: Vec::new() },
        Fact::GearRated { job, weight: "17000 lb".parse().unwrap(), rating: "10 t".parse().unwrap() },
        Fact::AroundMeasured { job, at: inner, tire, around: "126.5 in".parse().unwrap() },
        nut(Nuts::WheelInOrder(10), Pass::Loosened, None, None, None),
        Fact::FindingNoted {
            job,
            look: Look {
                at: Some(FL),
                part: LookAt::Disc,
                state: State::Watch,
                note: None,
                damage: None,
                thickness: Some("22.5 mm".parse().unwrap()),
                least: Some("22 mm".parse().unwrap()),
            },
            photo: None,
        },
        shelf(Shelf::Brakes { pads: "2 mm".parse().unwrap() }),
    ]
}
