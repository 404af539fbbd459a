//! A job held against its procedure: what is done, what is next, what a gate waits for.

use std::collections::BTreeSet;

use super::order::{Order, Turn};
use super::{Ask, Condition, Per, Procedure, Step, Unmet, Unsafe};
use crate::caution::{self, Circumstance};
use crate::drive;
use crate::due;
use crate::entry::{Answer, Arm, Fact, Kind, Look, LookAt, Pass, PhotoOf, Shelf, ToolKind, Turned};
use crate::finding::State;
use crate::ident::{EntryId, TireId};
use crate::inspect;
use crate::logbook::{Book, Job, Vehicle};
use crate::measure::{Distance, DistanceUnit, Load, Span};
use crate::sidewall;
use crate::vehicle::{Drive, Place, Row, Side};

/// One step at one place, and how it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Task<'a> {
    /// The step.
    pub step: &'a Step,
    /// Where; none for a step asked once.
    pub at: Option<Place>,
    /// How it stands.
    pub state: TaskState,
    /// Its turn in the order of lifts, when it is an action of one.
    pub turn: Option<Turn>,
}

/// How a task stands.
#[derive(Debug, Clone, PartialEq)]
pub enum TaskState {
    /// Answered; by this entry, when one entry is the answer.
    Done(Option<EntryId>),
    /// Skipped, with a reason.
    Skipped(String),
    /// Can be done.
    Ready,
    /// Held by a gate.
    Held(Vec<Unmet>),
}

impl TaskState {
    /// Whether nothing more is asked of it.
    pub fn is_over(&self) -> bool {
        matches!(self, Self::Done(_) | Self::Skipped(_))
    }
}

/// A job, its vehicle and its procedure.
#[derive(Debug, Clone, Copy)]
pub struct Bay<'a> {
    /// The procedure.
    pub procedure: &'a Procedure,
    /// The book.
    pub book: &'a Book,
    /// The job.
    pub job: &'a Job,
    /// The vehicle.
    pub vehicle: &'a Vehicle,
}

impl<'a> Bay<'a> {
    /// The bay of a job; none when its vehicle is not in the book.
    pub fn new(procedure: &'a Procedure, book: &'a Book, job: &'a Job) -> Option<Self> {
        Some(Self { procedure, book, job, vehicle: book.vehicle(job.vehicle)? })
    }

    /// Wheel positions in the order of a walk round the vehicle: down the
    /// left side, back up the right.
    pub fn walk(&self) -> Vec<Place> {
        let mut wheels: Vec<_> = self.vehicle.layout.positions().collect();
        wheels.sort_by_key(|p| match p.side {
            Side::Left => (0, i16::from(p.axle), u8::from(p.row == Row::Inner)),
            Side::Right => (1, -i16::from(p.axle), u8::from(p.row == Row::Inner)),
        });
        wheels.into_iter().map(Place::Wheel).collect()
    }

    /// The job's circumstances, with what the vehicle, its tires and what happened in the job bring along.
    pub fn circumstances(&self) -> Vec<Circumstance> {
        let largest = self
            .job
            .fitted
            .values()
            .filter_map(|tire| self.book.tires.get(tire)?.outer.as_deref())
            .filter_map(|text| sidewall::parse(text).size?.overall_diameter_mm())
            .reduce(f64::max);
        let said = self.job.circumstances.iter().filter_map(|code| Circumstance::of_code(code));
        let support = self.gear().map(|(gear, site)| gear.support(site)).unwrap_or_default();
        let vehicle = caution::of_vehicle(self.vehicle.class, &self.vehicle.layout, largest);
        let kind = caution::kind_of(self.vehicle.class, &self.vehicle.layout);
        let equipment = self.vehicle.equipment.iter().flatten().map(|has| caution::of_equipment(*has));
        let mut here: Vec<Circumstance> = said.chain(support).chain(vehicle).chain(kind).chain(equipment).collect();
        here.extend(self.stud_piloted().then_some(Circumstance::StudPiloted));
        here.extend((!self.rechecks_left().is_empty()).then_some(Circumstance::RecheckLeft));
        here
    }

    /// The wheels whose nuts were tightened at the vehicle's last visit, in walking
    /// order; all of them when this book knows of no such visit.
    pub fn loosened(&self) -> Vec<Place> {
        let walk = self.walk();
        let Some(last) = self.last_work() else { return walk };
        walk.into_iter().filter(|place| last.came_off(*place)).collect()
    }

    /// The last visit before this one in which a wheel came off.
    pub(super) fn last_work(&self) -> Option<&'a Job> {
        let off = |job: &&Job| job.lines.iter().any(|line| matches!(line.fact, Fact::WheelOff { .. }));
        self.earlier().rev().find(off)
    }

    /// This vehicle's jobs before this one, practice left out unless this is practice too.
    fn earlier(&self) -> impl DoubleEndedIterator<Item = &'a Job> + use<'a> {
        let (now, vehicle, practice) = (self.job.number, self.vehicle.id, self.job.practice);
        let jobs = self.book.jobs.iter();
        jobs.filter(move |job| job.number < now && job.vehicle == vehicle && (practice || !job.practice))
    }

    /// The rechecks that the manual prints and that were not done yet, this job's
    /// own counted as done; the last one again when a nut moved at it.
    pub fn rechecks_left(&self) -> Vec<Distance> {
        let rechecked = |job: &Job| {
            job.lines.iter().any(|line| matches!(line.fact, Fact::NutTightened { pass: Pass::Recheck, .. }))
        };
        if !rechecked(self.job) {
            return Vec::new();
        }
        let since = self.last_work().map_or(0, |work| work.number);
        let done = self.earlier().filter(|job| job.number >= since && rechecked(job)).count().saturating_add(1);
        let printed: Vec<Distance> = match self.book.on_shelf(&self.vehicle.model, Kind::Torque).map(|s| &s.shelf) {
            Some(Shelf::Torque { spec, .. }) => spec.recheck.iter().map(|recheck| recheck.by).collect(),
            _ => Vec::new(),
        };
        let left: Vec<Distance> = printed.iter().copied().skip(done).collect();
        let moved = || {
            self.walk()
                .into_iter()
                .any(|place| self.job.nuts(place, Pass::Recheck).values().any(|nut| nut.turned == Some(Turned::Moved)))
        };
        if !left.is_empty() || !moved() {
            return left;
        }
        match printed.last() {
            Some(last) => vec![*last],
            None => {
                let unit = self.job.odometer().map_or(DistanceUnit::Mile, |reading| reading.unit());
                due::trade_recheck(unit).map(|window| vec![window.by]).unwrap_or_default()
            }
        }
    }

    /// Places that wheels leave or reach by the plan, in walking order; the spare last.
    pub fn moving(&self) -> Vec<Place> {
        let mut places: BTreeSet<Place> = BTreeSet::new();
        if let Some((_, moves)) = self.job.plan() {
            for m in moves.iter().filter(|m| m.from != m.to) {
                places.extend([m.from, m.to]);
            }
        }
        places.extend(self.job.wheels_chosen());
        places.extend(self.job.coming().into_keys());
        places.extend(self.job.fitted.keys().filter(|place| self.job.came_off(**place)));
        // An inner wheel comes off over the place of the outer one.
        let over: Vec<Place> =
            places.iter().filter(|at| at.row() == Some(Row::Inner)).filter_map(|at| at.partner()).collect();
        places.extend(over);
        self.walk()
            .into_iter()
            .chain(self.vehicle.layout.spare.then_some(Place::Spare))
            .filter(|p| places.contains(p))
            .collect()
    }

    /// Moving places that have nuts: all but the spare carrier.
    pub(super) fn moving_wheels(&self) -> Vec<Place> {
        self.moving().into_iter().filter(|place| *place != Place::Spare).collect()
    }

    /// How many nuts a wheel has, when known: counted in this job, else from the shelf.
    pub fn studs(&self) -> Option<u8> {
        let counted = match self.answered(Ask::Studs) {
            Some(Answer::Count(count)) => u8::try_from(*count).ok(),
            _ => None,
        };
        let spares = || {
            self.job.last(|fact| match fact {
                Fact::SpareSeen { studs, .. } => *studs,
                _ => None,
            })
        };
        counted.or_else(spares).or_else(|| {
            match self.book.on_shelf(&self.vehicle.model, Kind::Torque).map(|spec| &spec.shelf) {
                Some(Shelf::Torque { studs, .. }) => *studs,
                _ => None,
            }
        })
    }

    /// Which axles drive: the manual's word on the shelf, else what was seen in this job.
    pub fn drive(&self) -> Drive {
        if let Some(Shelf::Drive { drive }) = self.book.on_shelf(&self.vehicle.model, Kind::Drive).map(|s| &s.shelf) {
            return *drive;
        }
        self.verdict().drive
    }

    /// What the looks under the vehicle and what was told say of the drive.
    pub fn verdict(&self) -> drive::Verdict {
        let (seen, told) = drive::noted(self.job.drive_seen());
        drive::verdict(&self.vehicle.layout, self.vehicle.class, &seen, &told)
    }

    /// Whether a kind of specification is on the shelf for this model.
    fn known(&self, kind: Kind) -> bool {
        self.book.on_shelf(&self.vehicle.model, kind).is_some()
    }

    /// The answer given to a step at a place.
    pub fn answer(&self, step: &str, at: Option<Place>) -> Option<&'a Answer> {
        self.job.last(|fact| match fact {
            Fact::StepDone { step: s, at: a, answer, .. } if s == step && *a == at => Some(answer),
            _ => None,
        })
    }

    /// Whether a step applies to this job, under these circumstances.
    pub(super) fn applies(&self, step: &Step, here: &[Circumstance]) -> bool {
        let fits = step.when.iter().all(|when| here.iter().any(|here| here.code() == when));
        let follows = step.after.as_ref().is_none_or(
            |(id, wanted)| matches!(self.answer(id, None), Some(Answer::Choice(choice)) if choice == wanted),
        );
        fits && follows
    }

    /// The places where a step is asked.
    fn places(&self, step: &Step) -> Vec<Option<Place>> {
        let places = match step.per {
            Per::Job => return vec![None],
            Per::Wheel => self.walk(),
            Per::Place => self.walk().into_iter().chain(self.vehicle.layout.spare.then_some(Place::Spare)).collect(),
            Per::Loosened => step.asks.pass().map_or_else(|| self.loosened(), |pass| self.turned(pass)),
            Per::Pair | Per::Outer | Per::Inner | Per::Bare => self.by_row(step.per, step.asks),
            Per::Found => self.walk().into_iter().filter(|at| self.found_at(*at)).collect(),
            Per::Coming => self.walk().into_iter().filter(|at| self.job.coming().contains_key(at)).collect(),
            Per::Hub | Per::Moving if step.asks.pass().is_some() => {
                step.asks.pass().map(|pass| self.turned(pass)).unwrap_or_default()
            }
            Per::Hub => self.moving_wheels(),
            Per::Moving if step.asks.works_on_nuts() => self.moving_wheels(),
            Per::Moving => self.moving(),
        };
        places.into_iter().map(Some).collect()
    }

    /// All tasks in the order they are asked: steps of one round place by place.
    pub fn tasks(&self) -> Vec<Task<'a>> {
        let here = self.circumstances();
        let steps: Vec<&Step> = self.procedure.steps.iter().filter(|step| self.applies(step, &here)).collect();
        let mut tasks = Vec::new();
        let mut rest = steps.as_slice();
        while let Some((first, _)) = rest.split_first() {
            if first.act.is_some() {
                let together = rest.iter().take_while(|step| step.act.is_some()).count();
                let (templates, after) = rest.split_at_checked(together).unwrap_or((rest, &[]));
                tasks.extend(self.ordered(templates));
                rest = after;
                continue;
            }
            let together = match &first.round {
                Some(round) => rest.iter().take_while(|step| step.round.as_ref() == Some(round)).count(),
                None => 1,
            };
            let (round, after) = rest.split_at_checked(together).unwrap_or((rest, &[]));
            for (step, at) in self.in_round(round) {
                tasks.push(Task { step, at, state: self.state(step, at), turn: None });
            }
            rest = after;
        }
        tasks
    }

    /// The steps of a round, end by end: all steps at one wheel, and then at the next. Of
    /// a dual pair the inner wheel is hung first; steps that say which wheel of a pair
    /// they mean are asked in the order of the file.
    fn in_round(&self, round: &[&'a Step]) -> Vec<(&'a Step, Option<Place>)> {
        let asked: Vec<(&'a Step, Vec<Option<Place>>)> = round.iter().map(|step| (*step, self.places(step))).collect();
        let by_row = round.iter().any(|step| matches!(step.per, Per::Pair | Per::Outer | Per::Inner));
        let hangs = round.iter().any(|step| matches!(step.asks, Ask::MarkRead | Ask::Started | Ask::Snug));
        let walk = self.walk().into_iter().map(Some);
        let all = std::iter::once(None).chain(walk).chain(std::iter::once(Some(Place::Spare)));
        let places: Vec<Option<Place>> = all.filter(|at| asked.iter().any(|(_, places)| places.contains(at))).collect();
        let end = |at: &Option<Place>| at.and_then(Place::position).map(|position| (position.axle, position.side));
        let mut tasks = Vec::new();
        for places in places.chunk_by(|one, two| end(one) == end(two)) {
            let mut places = places.to_vec();
            if hangs {
                places.sort_by_key(|at| at.and_then(Place::row) != Some(Row::Inner));
            }
            let here = |step: &&'a Step, at: &Option<Place>| {
                asked.iter().any(|(known, places)| known.id == step.id && places.contains(at))
            };
            if by_row {
                tasks.extend(round.iter().flat_map(|step| {
                    places.iter().filter(|at| here(step, at)).map(|at| (*step, *at)).collect::<Vec<_>>()
                }));
            } else {
                tasks.extend(places.iter().flat_map(|at| {
                    round.iter().filter(|step| here(step, at)).map(|step| (*step, *at)).collect::<Vec<_>>()
                }));
            }
        }
        tasks
    }

    /// The task to do next; none when all are over.
    pub fn next(&self) -> Option<Task<'a>> {
        self.tasks().into_iter().find(|task| !task.state.is_over())
    }

    /// The answer to a step that asks this, whichever of several it is.
    fn answered(&self, ask: Ask) -> Option<&'a Answer> {
        let asking = self.procedure.steps.iter().filter(|step| step.asks == ask);
        asking.filter_map(|step| self.answer(&step.id, None)).next_back()
    }

    /// The step that a fact of this kind answers, when the procedure asks for it.
    pub fn step_for(&self, ask: Ask) -> Option<&'a Step> {
        let here = self.circumstances();
        self.procedure.steps.iter().find(|step| step.asks == ask && self.applies(step, &here))
    }

    /// The step that asks for this at a place, else anywhere: several may ask, each at wheels of its own.
    pub(super) fn step_here(&self, ask: Ask, at: Option<Place>) -> Option<&'a Step> {
        let here = self.circumstances();
        let asking = self.procedure.steps.iter().filter(|step| step.asks == ask && self.applies(step, &here));
        let mut own = asking.filter(|step| self.places(step).contains(&at));
        own.next().or_else(|| self.step_for(ask))
    }

    /// How a step at a place stands.
    pub fn state(&self, step: &Step, at: Option<Place>) -> TaskState {
        if step.act.is_some() {
            let tasks = self.tasks();
            let of_step = |task: &&Task<'_>| task.step.id == step.id && task.at == at;
            let open = tasks.iter().filter(of_step).find(|task| !task.state.is_over());
            let found = open.or_else(|| tasks.iter().find(of_step));
            return found.map_or(TaskState::Ready, |task| task.state.clone());
        }
        if let Some(entry) = self.done(step, at) {
            return TaskState::Done(entry);
        }
        let skipped = self.job.last(|fact| match fact {
            Fact::StepSkipped { step: s, at: a, reason, .. } if *s == step.id && *a == at => Some(reason.clone()),
            _ => None,
        });
        if let Some(reason) = skipped {
            return TaskState::Skipped(reason);
        }
        let unmet = self.unmet(step, at);
        if unmet.is_empty() { TaskState::Ready } else { TaskState::Held(unmet) }
    }

    /// What still holds a step at a place: its conditions that are neither met nor opened.
    pub fn unmet(&self, step: &Step, at: Option<Place>) -> Vec<Unmet> {
        let order = step.act.is_some().then(|| self.order()).flatten();
        self.unmet_in(step, at, order.as_ref())
    }

    /// The same, the order of lifts at hand: what has to come before an action is
    /// done by the order, so that it stands for the gates that look at a whole vehicle.
    pub(super) fn unmet_in(&self, step: &Step, at: Option<Place>, order: Option<&Order<'_>>) -> Vec<Unmet> {
        let by_order = |condition: &Condition| {
            step.act.is_some()
                && matches!(
                    condition,
                    Condition::Held | Condition::Cracked | Condition::AllSnug | Condition::AllClear | Condition::Down
                )
        };
        let turn = order.and_then(|order| {
            let opened = self.job.opened_with(&step.id, at, Condition::InOrder.code()).is_some();
            order.unmet(&step.id, at).filter(|_| !opened)
        });
        let own = step
            .needs
            .iter()
            .filter(|condition| !by_order(condition))
            .filter(|condition| self.job.opened_with(&step.id, at, condition.code()).is_none())
            .filter_map(|condition| self.check(*condition, at));
        turn.into_iter().chain(own).chain(self.implied(step, at)).collect()
    }

    /// The entry that answers a step at a place; `Some(None)` when several do.
    pub(super) fn done(&self, step: &Step, at: Option<Place>) -> Option<Option<EntryId>> {
        let tires = if step.per == Per::Coming { self.job.coming() } else { self.job.fitted.clone() };
        let tire = at.and_then(|place| tires.get(&place)).copied();
        let entry = |wanted: &dyn Fn(&Fact) -> bool| {
            self.job.lines.iter().rev().find(|line| wanted(&line.fact)).map(|line| Some(line.entry))
        };
        match step.asks {
            Ask::Weigh => self.gear_rated().map(|_| None),
            Ask::Equipment => self.vehicle.equipment.is_some().then_some(None),
            Ask::Seen | Ask::Rocked | Ask::Ready | Ask::Choice | Ask::Count | Ask::Studs => {
                entry(&|fact| matches!(fact, Fact::StepDone { step: s, at: a, .. } if *s == step.id && *a == at))
            }
            Ask::Placard => self.specification(Kind::Placard),
            Ask::Torque => self.specification(Kind::Torque),
            Ask::Drive => (self.drive() != Drive::Unknown).then_some(None),
            Ask::Sidewall => entry(&|fact| matches!(fact, Fact::SidewallRead { tire: t, .. } if Some(*t) == tire)),
            Ask::Mark => entry(&|fact| matches!(fact, Fact::MarkChalked { tire: t, .. } if Some(*t) == tire)),
            Ask::Tread => entry(&|fact| matches!(fact, Fact::TreadMeasured { tire: t, .. } if Some(*t) == tire)),
            Ask::Stored => {
                let off = self.job.fitted.keys().filter(|place| self.job.came_off(**place));
                let mut left = off.filter(|place| self.job.stored().all(|(_, at, _)| at != **place));
                (self.job.stored().next().is_some() && left.next().is_none()).then_some(None)
            }
            Ask::Looks => {
                let place = at?;
                let looks = self.job.looks();
                let all = step.parts.iter().all(|part| looks.iter().any(|l| l.at == Some(place) && l.part == *part));
                all.then_some(None)
            }
            Ask::FindingPhoto => at.filter(|place| self.unphotographed(*place).is_none()).map(|_| None),
            Ask::LampBefore => self.lamp(true),
            Ask::Lamp if self.procedure.steps.iter().any(|step| step.asks == Ask::LampBefore) => self.lamp(false),
            Ask::WheelOff => {
                let place = at?;
                self.job.came_off(place).then_some(None)
            }
            Ask::MarkRead => {
                let place = at?;
                let hung = !self.job.is_off(place) && self.job.came_off(place);
                (hung && self.job.mark_read_at(place).is_some()).then_some(None)
            }
            Ask::Cracked | Ask::Started | Ask::Snug | Ask::Final | Ask::Rechecked | Ask::Loosened => {
                let (place, pass) = (at?, step.asks.pass()?);
                self.nuts_left(place, pass).is_some_and(|left| left.is_empty()).then_some(None)
            }
            Ask::RaisedClear => self.job.was_lifted(Arm::Clear).then_some(None),
            Ask::RaisedFull => self.job.was_lifted(Arm::Full).then_some(None),
            Ask::Held => self.job.was_lifted(Arm::Held).then_some(None),
            // Once the vehicle stands on its wheels again, what was said on the way down stays answered.
            Ask::AllClear => (self.all_clear() || self.is_down_again()).then_some(None),
            Ask::Lowered => self.is_down_again().then_some(None),
            Ask::PressureFound => entry(&|fact| matches!(fact, Fact::PressureMeasured { at: a, .. } if Some(*a) == at)),
            Ask::Approval => entry(
                &|fact| matches!(fact, Fact::WorkApproved { what, approved: true, .. } if what != Fact::UNSAFE_TOLD),
            ),
            asks => entry(&|fact| Ask::answered_by(fact) == Some((asks, at))),
        }
    }

    /// Whether something is not sound at a place.
    fn found_at(&self, place: Place) -> bool {
        self.job.looks().iter().any(|look| look.at == Some(place) && look.state != State::Sound)
    }

    /// The first part at a place that is not sound and was not photographed.
    pub fn unphotographed(&self, place: Place) -> Option<LookAt> {
        let unsound = self.job.looks();
        let mut unsound = unsound.iter().filter(|look| look.at == Some(place) && look.state != State::Sound);
        let taken = self
            .job
            .lines
            .iter()
            .any(|line| matches!(line.fact, Fact::PhotoTaken { of: PhotoOf::Damage, at, .. } if at == Some(place)));
        let own = |part: LookAt| {
            self.job.lines.iter().any(|line| match &line.fact {
                Fact::FindingNoted { look, photo, .. } => {
                    look.at == Some(place) && look.part == part && photo.is_some()
                }
                _ => false,
            })
        };
        unsound.find(|look| !taken && !own(look.part)).map(|look| look.part)
    }

    /// The lamp as it was seen before anything was raised, or after the vehicle
    /// stood on its wheels again.
    fn lamp(&self, before: bool) -> Option<Option<EntryId>> {
        let raised = self.job.lines.iter().position(|line| matches!(line.fact, Fact::Lifted { .. }));
        let down = self.job.lines.iter().rposition(|line| matches!(line.fact, Fact::Lifted { arm: Arm::Down, .. }));
        let lamp = |at: usize| {
            before && raised.is_none_or(|raised| at < raised) || !before && down.is_some_and(|down| at > down)
        };
        let seen = self
            .job
            .lines
            .iter()
            .enumerate()
            .rev()
            .find(|(at, line)| lamp(*at) && matches!(line.fact, Fact::SensorRead { lamp: Some(_), .. }));
        seen.map(|(_, line)| Some(line.entry))
    }

    /// How thick a part must be at the least: as printed on it, else as the manual gives it for pads.
    pub fn least_of(&self, look: &Look) -> Option<Span> {
        inspect::least_of(self.book, self.vehicle, look)
    }

    /// The weight that is raised and the lowest rating of the gear: as read in this job, else the weight
    /// read at an earlier visit on the same support, and the lowest rating of the gear used now.
    pub fn gear_rated(&self) -> Option<(Load, Load)> {
        if let Some(read) = self.job.gear_rated() {
            return Some(read);
        }
        let ratings = self.job.tools().filter_map(|id| match &self.book.tool(id)?.what {
            ToolKind::Jack { rating, .. } | ToolKind::Stand { rating, .. } | ToolKind::Lift { rating, .. } => *rating,
            _ => None,
        });
        let lowest = ratings.reduce(|low, next| if next < low { next } else { low })?;
        let on = |job: &Job| {
            let support = |code: &&String| {
                Circumstance::of_code(code).is_some_and(|known| known.kind() == caution::Kind::Support)
            };
            job.circumstances.iter().find(support).cloned()
        };
        let mut earlier = self.earlier().rev().filter(|job| on(job) == on(self.job));
        let (weight, _) = earlier.find_map(Job::gear_rated)?;
        Some((weight, lowest))
    }

    /// The parts that looks are asked for at a place, of all steps that apply.
    pub fn parts_at(&self, place: Option<Place>) -> Vec<LookAt> {
        let here = self.circumstances();
        let steps = self.procedure.steps.iter().filter(|step| step.asks == Ask::Looks && self.applies(step, &here));
        let mut parts: Vec<LookAt> = Vec::new();
        for step in steps.filter(|step| place.is_none() || self.places(step).contains(&place)) {
            parts.extend(step.parts.iter().filter(|part| !parts.contains(part)).copied().collect::<Vec<_>>());
        }
        if parts.is_empty() { Ask::PARTS.to_vec() } else { parts }
    }

    /// Nuts of a wheel that a pass has not finished, in clock order; none when
    /// the number of nuts is not known. At the final pass a nut that clicked
    /// without moving is not finished.
    pub fn nuts_left(&self, place: Place, pass: Pass) -> Option<Vec<u8>> {
        let said = self.job.nuts(place, pass);
        let finished =
            |nut: &u8| said.get(nut).is_some_and(|nut| pass != Pass::Final || nut.turned == Some(Turned::Moved));
        Some((1..=self.studs()?).filter(|nut| !finished(nut)).collect())
    }

    fn specification(&self, kind: Kind) -> Option<Option<EntryId>> {
        if let Some(on_shelf) = self.book.on_shelf(&self.vehicle.model, kind) {
            return Some(Some(on_shelf.entry));
        }
        self.job.lines.iter().rev().find_map(|line| match line.fact {
            Fact::SpecificationUnknown { what, .. } if what == kind => Some(Some(line.entry)),
            _ => None,
        })
    }

    /// Whether it was said that all is clear, and nothing was done under the vehicle since.
    fn all_clear(&self) -> bool {
        for line in self.job.lines.iter().rev() {
            match &line.fact {
                Fact::Lifted { arm: Arm::AllClear, .. } => return true,
                Fact::Lifted { arm: Arm::Down, .. } => return true,
                Fact::Lifted { .. }
                | Fact::WheelOff { .. }
                | Fact::WheelOn { .. }
                | Fact::NutTightened { .. }
                | Fact::FindingNoted { .. } => return false,
                _ => {}
            }
        }
        false
    }

    /// Whether the vehicle was raised and stands on its wheels again.
    fn is_down_again(&self) -> bool {
        matches!(self.job.arm(None), Some((Arm::Down, _)))
    }

    fn unsafe_looks(&self) -> impl Iterator<Item = (Option<Place>, LookAt)> {
        self.job.looks().into_iter().filter(|look| look.state == State::Unsafe).map(|look| (look.at, look.part))
    }

    /// Why the place is not safe to work at with this tire flat; `None` when it is,
    /// and where the procedure does not ask.
    pub fn unsafe_place(&self, flat: Option<Place>) -> Option<Unmet> {
        let step = self.procedure.steps.iter().find(|step| Condition::PlaceSafe.is_answered_by(step))?;
        let passes = |side: Side| flat.filter(|at| at.position().is_some_and(|position| position.side == side));
        let Some(Answer::Choice(choice)) = self.answer(&step.id, None) else {
            return Some(Unmet::PlaceSafe { why: None, flat: None });
        };
        let (why, flat) = match choice.as_str() {
            Unsafe::SLOPE => (Unsafe::Slope, None),
            Unsafe::CLOSE => (Unsafe::Close, None),
            Unsafe::LEFT => (Unsafe::FlatSide, Some(passes(Side::Left)?)),
            Unsafe::RIGHT => (Unsafe::FlatSide, Some(passes(Side::Right)?)),
            _ => return None,
        };
        Some(Unmet::PlaceSafe { why: Some(why), flat })
    }

    /// Something unsafe that was found after the customer was last told of what is unsafe.
    fn unsafe_untold(&self) -> Option<(Option<Place>, LookAt)> {
        for line in self.job.lines.iter().rev() {
            match &line.fact {
                Fact::WorkApproved { what, .. } if what == Fact::UNSAFE_TOLD => return None,
                Fact::FindingNoted { look, .. } => {
                    let found = self.unsafe_looks().find(|unsafe_look| *unsafe_look == (look.at, look.part));
                    if found.is_some() {
                        return found;
                    }
                }
                _ => {}
            }
        }
        None
    }

    /// Checks a condition for a step at a place; what is not met, when it is not.
    pub fn check(&self, condition: Condition, at: Option<Place>) -> Option<Unmet> {
        let job = self.job;
        let first_left = |pass: Pass| {
            let turned = self.turned(pass);
            let places = self.walk().into_iter().filter(|at| turned.contains(at) || job.is_off(*at));
            places.into_iter().find_map(|place| {
                let left = self.nuts_left(place, pass).filter(|_| turned.contains(&place)).unwrap_or_default();
                (job.is_off(place) || !left.is_empty() || self.studs().is_none())
                    .then(|| (place, if job.is_off(place) { Vec::new() } else { left }))
            })
        };
        match condition {
            Condition::Approved => {
                let said = job.last(|fact| match fact {
                    Fact::WorkApproved { what, approved, .. } if what != Fact::UNSAFE_TOLD => Some(*approved),
                    _ => None,
                });
                (!self.vehicle.own && said != Some(true)).then(|| Unmet::Approved { declined: said == Some(false) })
            }
            Condition::PlaceSafe => self.unsafe_place(job.flat()),
            Condition::LockKey => {
                let step = self.procedure.steps.iter().find(|step| Condition::LockKey.is_answered_by(step))?;
                match self.answer(&step.id, None) {
                    Some(Answer::Choice(choice)) if choice != "missing" => None,
                    answer => Some(Unmet::LockKey { missing: answer.is_some() }),
                }
            }
            Condition::DriveKnown => {
                let known = self.drive() != Drive::Unknown || self.known(Kind::Pattern);
                (!known).then_some(Unmet::DriveKnown)
            }
            Condition::PlanChosen => job.plan().is_none().then_some(Unmet::PlanChosen),
            Condition::SetBrought => job.coming().is_empty().then_some(Unmet::SetBrought),
            Condition::WheelsChosen => job.wheels_chosen().is_empty().then_some(Unmet::WheelsChosen),
            Condition::Cracked => self
                .turned(Pass::Cracked)
                .into_iter()
                .find(|place| self.nuts_left(*place, Pass::Cracked).is_none_or(|left| !left.is_empty()))
                .map(|at| Unmet::Cracked { at }),
            Condition::Clear => (!job.lifted(Arm::Clear)).then_some(Unmet::Clear),
            Condition::Rocked => self.answered(Ask::Rocked).is_none().then_some(Unmet::Rocked),
            Condition::Held => (!job.lifted(Arm::Held)).then_some(Unmet::Held),
            Condition::WheelIsOff => {
                let place = at?;
                (!job.came_off(place)).then_some(Unmet::WheelIsOff { at: place })
            }
            Condition::MarkFits => {
                let place = at?;
                let read = job.mark_read_at(place);
                let (hung, _) = self.wanted(place);
                if read.is_some_and(|mark| job.marked(mark).is_some() && job.marked(mark) == hung) {
                    return None;
                }
                let wanted = hung.and_then(|tire| job.known_by(tire));
                let belongs = read.and_then(|mark| job.marked(mark)).and_then(|tire| self.belongs(tire));
                Some(Unmet::MarkFits {
                    at: place,
                    read: read.map(str::to_owned),
                    wanted: wanted.map(str::to_owned),
                    belongs,
                })
            }
            Condition::Started => {
                let place = at?;
                let nuts = self.nuts_left(place, Pass::Started).unwrap_or_default();
                (!nuts.is_empty() || self.studs().is_none()).then_some(Unmet::Started { at: place, nuts })
            }
            // A nut that was not begun is not snug either.
            Condition::AllSnug => first_left(Pass::Snug).map(|(at, nuts)| Unmet::AllSnug { at, nuts }),
            Condition::TrayEmpty => match self.answered(Ask::Count) {
                Some(Answer::Count(0)) => None,
                Some(Answer::Count(left)) => Some(Unmet::TrayEmpty { left: Some(*left) }),
                _ => Some(Unmet::TrayEmpty { left: None }),
            },
            Condition::AllClear => (!self.all_clear()).then_some(Unmet::AllClear),
            // Checked with the order at hand, where there is one.
            Condition::InOrder => None,
            // Checked for each step by itself.
            Condition::AnsweredFirst => None,
            Condition::InstructorSaw => self.unseen(),
            Condition::Down => {
                let up = !matches!(job.arm(None), None | Some((Arm::Down, _)));
                up.then_some(Unmet::Down)
            }
            Condition::TorqueKnown => (!self.known(Kind::Torque)).then_some(Unmet::TorqueKnown),
            Condition::FinalDone => first_left(Pass::Final).map(|(at, nuts)| Unmet::FinalDone { at, nuts }),
            Condition::Rechecked => self.turned(Pass::Recheck).into_iter().find_map(|at| {
                let nuts = self.nuts_left(at, Pass::Recheck).unwrap_or_default();
                (!nuts.is_empty() || self.studs().is_none()).then_some(Unmet::Rechecked { at, nuts })
            }),
            Condition::Ready => {
                let here = self.circumstances();
                let asked = self.procedure.steps.iter().filter(|step| self.applies(step, &here));
                let mut asked = asked.filter(|step| matches!(step.asks, Ask::Ready | Ask::Equipment));
                asked.any(|step| self.done(step, None).is_none()).then_some(Unmet::Ready)
            }
            Condition::GearRated => match self.gear_rated() {
                Some((weight, rating)) => {
                    (rating < weight).then_some(Unmet::GearRated { read: Some((weight, rating)) })
                }
                None => {
                    let step = self.procedure.steps.iter().find(|step| Condition::GearRated.is_answered_by(step))?;
                    let skipped = |fact: &Fact| matches!(fact, Fact::StepSkipped { step: s, .. } if *s == step.id);
                    let skipped = job.lines.iter().any(|line| skipped(&line.fact));
                    (!skipped).then_some(Unmet::GearRated { read: None })
                }
            },
            Condition::PairMatched | Condition::PairSeen | Condition::OuterLoosened | Condition::InnerSet => {
                self.check_pair(condition, at)
            }
            Condition::UnsafeTold => self.unsafe_untold().map(|(at, part)| Unmet::UnsafeTold { at, part }),
            Condition::SeatSound => {
                let place = at?;
                self.unsafe_looks()
                    .find(|(at, part)| *at == Some(place) && matches!(part, LookAt::Seats | LookAt::Studs))
                    .map(|(_, part)| Unmet::SeatSound { at: place, part })
            }
        }
    }

    /// Where the plan wants a tire; in an order of lifts, where it goes next.
    pub fn belongs(&self, tire: TireId) -> Option<Place> {
        if let Some(place) = self.order().and_then(|order| order.goes_next(tire)) {
            return Some(place);
        }
        match self.job.plan() {
            Some((_, moves)) => moves.iter().find(|m| m.tire == tire).map(|m| m.to),
            None => self.job.planned().into_iter().find(|(_, fitted)| *fitted == tire).map(|(place, _)| place),
        }
    }
}
