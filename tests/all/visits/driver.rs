//! Plays a visit by any procedure: each thing that is asked is answered.

use std::path::Path;

use lugbook::caution::Circumstance;
use lugbook::engine::{Calibrations, Change, Command, Engine, Papers};
use lugbook::entry::{Arm, Pass, Role, SensorKind, SidewallSide, SpareNuts, TireLooks};
use lugbook::finding::State;
use lugbook::procedure::{Bay, Per, Procedure, Task, built_in};
use lugbook::vehicle::{Class, Drive, Equipment};
use lugbook::words::{Speech, Units};

use crate::engine::{open, text};

/// A visit that is being played.
pub struct Visit {
    pub engine: Engine,
    pub speech: Speech,
    pub procedure: Procedure,
    /// Of each choice that is left open, which one: the first, the second …
    pub pick: usize,
}

/// What is asked, and where.
#[derive(Debug, Clone)]
pub struct Question {
    pub step: String,
    pub asks: &'static str,
    pub at: Option<String>,
    pub choices: Vec<String>,
    pub coming: bool,
}

/// The vehicle's name in the book.
pub const VEHICLE: &str = "Yard unit 7";
/// Who works.
pub const MECHANIC: &str = "Nell Varga";

pub fn procedures() -> Vec<Procedure> {
    built_in().expect("built-in procedures are good")
}

impl Visit {
    /// Opens a job by a procedure, on a customer's vehicle of the kind it is meant for, with
    /// all that changes how it is raised; of each choice that opening settles, this one.
    pub fn begin(folder: &Path, procedure: &Procedure, speech: Speech, pick: usize) -> Self {
        let mut visit = Self { engine: open(folder), speech, procedure: procedure.clone(), pick };
        visit.say(Command::AddPerson { name: text(MECHANIC), role: Role::Mechanic, phone: None });
        let fits = |kind| procedure.fits.contains(&kind);
        let (class, axles, spare) = match (fits(Circumstance::Duals), fits(Circumstance::Towed)) {
            (true, _) => (Class::Truck, vec![text("single"), text("dual")], false),
            (false, true) => (Class::Trailer, vec![text("dual"), text("single")], false),
            (false, false) => (Class::Car, vec![], true),
        };
        let (name, model) = (text(VEHICLE), text("Basalt 480, 2015"));
        visit.say(Command::AddVehicle { name, model, class, axles, has: None, spare, own: false, plate: None });
        let step = if visit.us() { "5 ft.lb" } else { "5 N.m" };
        let (accuracy, step, calibration) = (text("4 %"), text(step), Calibrations::default());
        let papers = Papers::Wrench { accuracy, step, range: None, calibration };
        visit.say(Command::AddTool { name: text("Long wrench"), papers });
        visit.open_again();
        visit
    }

    /// Opens another job by the same procedure.
    pub fn open_again(&mut self) {
        let by_vehicle = |code: &String| code == "customer";
        let open = self.procedure.settle.iter().filter(|row| row.len() > 1 && !row.iter().any(by_vehicle));
        let circumstances = open.filter_map(|row| row.get(self.pick).or(row.last()).cloned()).collect();
        let (vehicle, procedure) = (text(VEHICLE), self.procedure.id.clone());
        self.say(Command::OpenJob { vehicle, procedure, circumstances, practice: false });
        self.say(Command::UseTool { tool: text("Long wrench") });
    }

    fn us(&self) -> bool {
        self.speech.units != Units::Metric
    }

    /// Says a command that must be taken.
    pub fn say(&mut self, command: Command) -> Change {
        let said = self.engine.act(None, command.clone(), self.speech);
        said.unwrap_or_else(|why| panic!("{}: {command:?}: {why:?}", self.procedure.id))
    }

    pub fn bay(&self) -> Option<Bay<'_>> {
        let book = self.engine.book();
        Bay::new(&self.procedure, book, book.in_bay()?)
    }

    /// What a task asks.
    pub fn question(&self, task: &Task<'_>) -> Question {
        let layout = &self.engine.book().vehicles[0].layout;
        Question {
            step: task.step.id.clone(),
            asks: task.step.asks.code(),
            at: task.at.map(|at| layout.name(at, Default::default())),
            choices: task.step.choices.clone(),
            coming: task.step.per == Per::Coming,
        }
    }

    /// What is asked next; none when the job is signed.
    pub fn next(&self) -> Option<Question> {
        Some(self.question(&self.bay()?.next()?))
    }

    /// Answers everything up to the signature; `before` sees each question before it is answered.
    pub fn play(&mut self, mut before: impl FnMut(&Question)) {
        let mut count = 0;
        while let Some(next) = self.next() {
            before(&next);
            let answer = self.answer(&next);
            self.say(answer);
            count += 1;
            assert!(count < 400, "{}: {next:?}", self.procedure.id);
        }
    }

    /// The command that answers what is asked.
    pub fn answer(&self, next: &Question) -> Command {
        let at = next.at.clone().unwrap_or_default();
        let here = || text(&at);
        let said =
            |answer: &str| Command::Answer { step: Some(next.step.clone()), at: next.at.clone(), answer: text(answer) };
        let skip = |why: &str| Command::Skip { step: Some(next.step.clone()), at: None, reason: text(why) };
        let nuts = |pass, moved| Command::Nuts { at: here(), pass, nut: None, moved };
        let either = |us: &str, metric: &str| text(if self.us() { us } else { metric });
        let source = || text("owner's manual, page 9");
        let coming = next.coming;
        match next.asks {
            "seen" | "rocked" | "ready" => said("seen"),
            "choice" => said(match next.step.as_str() {
                "lock-key" => "none-fitted",
                "mounting" => "stud-piloted",
                "gear" => &next.choices[self.pick],
                _ => next.choices.first().expect("choices"),
            }),
            "count" => said("0"),
            "studs" => said("5"),
            "vehicle-photo" | "sidewall-photo" | "flat-photo" | "finding-photo" => skip("no camera today"),
            "damage" => Command::Damage { at: None, text: None, photo: None },
            "approval" => Command::Approve { approved: true, by: Some(text("Odo Brandt")), drawn: None },
            "odometer" => {
                Command::Odometer { reading: either("48210 mi", "77590 km"), estimated: false, replaced: false }
            }
            "placard" => Command::RecordPlacard {
                vehicle: None,
                axles: vec![either("35 psi", "240 kPa"), either("35 psi", "240 kPa")],
                spare: None,
                size: None,
                source: text("door label"),
                photo: None,
            },
            "torque" => Command::RecordTorque {
                vehicle: None,
                printed: vec![either("90..110 ft.lb", "125..150 N.m")],
                thread: None,
                condition: None,
                recheck: vec![either("50 mi", "80 km"), either("100 mi", "160 km")],
                studs: None,
                source: source(),
                photo: None,
            },
            "drive" => Command::RecordDrive { vehicle: None, drive: Drive::Rear, source: source() },
            "sidewall" => Command::Sidewall {
                at: here(),
                side: SidewallSide::Outer,
                text: text(if self.is_heavy() { "295/75R22.5 144/141L" } else { "205/55R16 91H" }),
                looks: TireLooks::default(),
                coming,
                by: None,
            },
            "mark" => Command::Mark { at: here(), mark: None, coming },
            "tread" => {
                let depths = either("9 9 9 /32", "7.1 7.1 7.1 mm");
                Command::Tread { at: here(), depths, lowest: None, reason: None, coming }
            }
            // The vehicle's own jack at the roadside is for one wheel.
            "plan" if self.pick == 2 => Command::Flat { at: text("RR"), good_wheel_forward: false },
            "plan" => Command::ChoosePlan { plan: text("1") },
            "wheels" => {
                let wheels: Vec<String> = self.places().into_iter().take(2).collect();
                Command::ChooseWheels { at: wheels }
            }
            "set" => Command::BringSet { new: true },
            "stored" => Command::Store { rack: text("rack B 12"), at: None },
            "spare" => Command::Spare {
                flat: text("RR"),
                text: text("T125/80D16 97M"),
                pressure: Some(either("60 psi", "420 kPa")),
                nuts: SpareNuts::Same,
                studs: Some(5),
                limit: Some(either("50 mph", "80 km/h")),
                replace_by: None,
            },
            "equipment" => {
                let has = vec![Equipment::AirSuspension, Equipment::HighVoltage];
                Command::Equip { vehicle: None, has }
            }
            "weigh" => Command::Weigh { weight: either("3900 lb", "1770 kg"), rating: either("9000 lb", "4 t") },
            "cracked" => nuts(Pass::Cracked, None),
            "raised-clear" => Command::Lift { arm: Arm::Clear },
            "raised-full" => Command::Lift { arm: Arm::Full },
            "held" => Command::Lift { arm: Arm::Held },
            "wheel-off" => Command::WheelOff { at: here() },
            "looks" => self.look(&at, None, State::Sound),
            "mark-read" => Command::Hang { mark: self.wanted(&at), at: here() },
            "started" => nuts(Pass::Started, None),
            "snug" => nuts(Pass::Snug, None),
            "all-clear" => Command::Lift { arm: Arm::AllClear },
            "lowered" => Command::Lift { arm: Arm::Down },
            "loosened" => nuts(Pass::Loosened, None),
            "final" => nuts(Pass::Final, Some(true)),
            "rechecked" => nuts(Pass::Recheck, Some(false)),
            "pressure" | "pressure-found" => Command::Pressure {
                at: here(),
                pressure: either("35 psi", "240 kPa"),
                set: next.asks == "pressure",
                cold: Some(true),
            },
            "lamp" | "lamp-before" => Command::Lamp { on: false, sensors: SensorKind::Indirect },
            "recheck" => Command::TellRecheck,
            "signature" => Command::Sign { drawn: None },
            other => panic!("{other} is asked and not answered here"),
        }
    }

    pub fn look(&self, at: &str, part: Option<lugbook::entry::LookAt>, state: State) -> Command {
        let at = Some(text(at));
        Command::Look { at, part, state, note: None, damage: None, thickness: None, least: None, photo: None }
    }

    fn is_heavy(&self) -> bool {
        let fits = &self.procedure.fits;
        fits.contains(&Circumstance::Duals) || fits.contains(&Circumstance::Towed)
    }

    /// The vehicle's wheels as typed, from the front.
    fn places(&self) -> Vec<String> {
        let layout = &self.engine.book().vehicles[0].layout;
        let wheels = layout.positions().map(lugbook::vehicle::Place::Wheel).collect::<Vec<_>>();
        let duals: Vec<_> = wheels.iter().filter(|at| at.partner().is_some()).copied().collect();
        let chosen = if duals.is_empty() { wheels } else { duals };
        chosen.into_iter().map(|at| layout.name(at, Default::default())).collect()
    }

    /// The mark of the tire that belongs at a place now.
    fn wanted(&self, at: &str) -> String {
        let bay = self.bay().expect("a job in the bay");
        let place = bay.vehicle.layout.parse(at).expect("a place");
        let (_, tire) = bay.wanted(place);
        tire.and_then(|tire| bay.job.known_by(tire)).expect("a marked tire").to_owned()
    }
}
