//! A job whose wheels are raised lift by lift: the actions of `lifting` as its tasks.
//!
//! A procedure that works so has one step for each kind of action, with the key
//! `act`. The actions of the plan that was chosen, with the gear that was named, are
//! asked one after another by those steps. Each action has the gate
//! [`Condition::InOrder`]: what comes before it is done,
//! so that nuts are cracked before their corner goes up, stands are seen to hold
//! before a wheel comes off, and every nut of a corner is snug before it comes down.
//! An action is done when its facts exist; the second time the same is done at the
//! same place it takes a second fact.

use super::bay::{Task, TaskState};
use super::{Ask, Bay, Condition, Step, Unmet};
use crate::entry::{Answer, Arm, Fact, Nuts, Pass, Turned};
use crate::ident::TireId;
use crate::lifting::{self, Act, Action, Gear, Interchange, Plan, Refusal, Site, Spare, Vehicle};
use crate::sidewall::{self, Use};
use crate::vehicle::Place;

/// A task's turn in the order of lifts.
#[derive(Debug, Clone, PartialEq)]
pub struct Turn {
    /// The action.
    pub action: Action,
    /// How many actions there are.
    pub of: usize,
    /// Which lift it belongs to, from 1; 0 before the first.
    pub lift: u32,
    /// How many lifts there are.
    pub lifts: u32,
    /// The tire it handles, when it handles one.
    pub tire: Option<TireId>,
    /// Which time the same is asked at the same place, from 1.
    time: usize,
}

/// One task of an order.
struct Ordered<'a> {
    step: &'a Step,
    at: Option<Place>,
    turn: Turn,
    over: bool,
}

/// The order of lifts of a job.
pub(super) struct Order<'a> {
    tasks: Vec<Ordered<'a>>,
    refusal: Option<Refusal>,
}

/// The choices by which a mechanic names axles that may be raised in the middle.
const MIDDLES: [(&str, &[u8]); 4] =
    [("corners-only", &[]), ("front-middle", &[1]), ("rear-middle", &[2]), ("both-middles", &[1, 2])];

impl Order<'_> {
    /// The first task that is not over.
    fn next(&self) -> Option<&Ordered<'_>> {
        self.tasks.iter().find(|task| !task.over)
    }

    /// What keeps a step at a place from being the next action.
    pub(super) fn unmet(&self, step: &str, at: Option<Place>) -> Option<Unmet> {
        if let Some(refusal) = &self.refusal {
            return Some(Unmet::NoOrder { refusal: refusal.clone() });
        }
        let next = self.next()?;
        let turn = &next.turn.action;
        (next.step.id != step || next.at != at).then_some(Unmet::InOrder { n: turn.n, act: turn.act, at: next.at })
    }

    /// Where a tire is hung next.
    pub(super) fn goes_next(&self, tire: TireId) -> Option<Place> {
        let hung = |task: &&Ordered<'_>| task.step.asks == Ask::MarkRead && task.turn.tire == Some(tire);
        self.tasks.iter().filter(hung).find(|task| !task.over).and_then(|task| task.at)
    }
}

impl<'a> Bay<'a> {
    /// Whether this job is worked lift by lift.
    pub fn is_ordered(&self) -> bool {
        self.procedure.steps.iter().any(|step| step.act.is_some())
    }

    /// Whether the order of lifts rests on a step's answer: the gear, and where it may raise.
    pub fn rests_on(&self, step: &Step) -> bool {
        let known = |choice: &String| Gear::of_code(choice).is_some() || MIDDLES.iter().any(|(code, _)| code == choice);
        self.is_ordered() && step.choices.iter().any(known)
    }

    /// The gear at hand and where the work is done, once a mechanic named it.
    pub fn gear(&self) -> Option<(Gear, Site)> {
        self.job.last(|fact| match fact {
            Fact::StepDone { answer: Answer::Choice(choice), .. } => Gear::of_code(choice),
            _ => None,
        })
    }

    /// The order of lifts for the moves that were chosen and the gear that was named;
    /// nothing before, and in a procedure with an order of its own.
    pub fn lifts(&self) -> Option<Result<Plan, Refusal>> {
        if !self.is_ordered() {
            return None;
        }
        let (gear, site) = self.gear()?;
        let (_, moves) = self.job.plan()?;
        let moves = moves.iter().filter(|m| m.from != m.to).map(|m| (m.from, m.to)).collect();
        let circumstances = self.job.circumstances.iter();
        let here = circumstances.filter_map(|code| crate::caution::Circumstance::of_code(code)).collect();
        Some(lifting::plan(&lifting::Task { vehicle: self.raised(), gear, site, moves, here }))
    }

    /// The vehicle as far as raising it goes. Its weight is not in the book.
    fn raised(&self) -> Vehicle {
        let sizes = |road: bool| {
            let mut sizes: Vec<Option<String>> = self
                .job
                .fitted
                .iter()
                .filter(|(at, _)| (**at != Place::Spare) == road)
                .map(|(_, t)| self.size(*t))
                .collect();
            sizes.sort();
            sizes.dedup();
            sizes
        };
        let road = sizes(true);
        // A spare stands in for another wheel only when it is known to be like it.
        let like = road.len() == 1 && road.iter().all(Option::is_some) && sizes(false) == road;
        let spare = match self.job.fitted.get(&Place::Spare) {
            None => Spare::None,
            Some(tire) if like && !self.is_temporary(*tire) => Spare::FullSize,
            Some(_) => Spare::Temporary,
        };
        let mut vehicle = Vehicle::of(self.vehicle.layout.clone(), spare);
        if road.len() > 1 {
            vehicle.interchange = Interchange::OwnAxles;
        }
        let middles = self.job.last(|fact| match fact {
            Fact::StepDone { answer: Answer::Choice(choice), .. } => {
                MIDDLES.iter().find(|(code, _)| code == choice).map(|(_, axles)| axles.to_vec())
            }
            _ => None,
        });
        vehicle.middles = middles.unwrap_or_default();
        vehicle
    }

    fn size(&self, tire: TireId) -> Option<String> {
        let marking = sidewall::parse(self.book.tires.get(&tire)?.outer.as_deref()?);
        marking.size.map(|size| size.to_string())
    }

    fn is_temporary(&self, tire: TireId) -> bool {
        let Some(history) = self.book.tires.get(&tire) else { return false };
        let size = history.outer.as_deref().and_then(|text| sidewall::parse(text).size);
        history.looks.temporary || size.is_some_and(|size| size.made_for() == Some(Use::Temporary))
    }

    /// The order of lifts as tasks, and which of them are over.
    pub(super) fn order(&self) -> Option<Order<'a>> {
        let plan = match self.lifts()? {
            Ok(plan) => plan,
            Err(refusal) => return Some(Order { tasks: Vec::new(), refusal: Some(refusal) }),
        };
        let here = self.circumstances();
        let acting = self.procedure.steps.iter().filter(|step| step.act.is_some());
        let steps: Vec<&'a Step> = acting.filter(|step| self.applies(step, &here)).collect();
        let mut tasks: Vec<Ordered<'a>> = Vec::new();
        let (mut lift, of) = (0, plan.actions.len());
        for action in &plan.actions {
            lift += u32::from(action.act == Act::Raise);
            for step in steps.iter().filter(|step| step.act == Some(action.act)) {
                // Nuts are turned wheel by wheel; all else is done once, where the action begins.
                let each = if step.asks.works_on_nuts() { action.at.len() } else { action.at.len().min(1) };
                let places: Vec<Option<Place>> = match each {
                    0 => vec![None],
                    each => action.at.iter().take(each).copied().map(Some).collect(),
                };
                for at in places {
                    let before = tasks.iter().filter(|task| task.step.id == step.id && task.at == at).count();
                    let tire = action.wheel.and_then(|wheel| self.job.fitted.get(&wheel)).copied();
                    let turn = Turn {
                        action: action.clone(),
                        of,
                        lift,
                        lifts: plan.lifts,
                        tire,
                        time: before.saturating_add(1),
                    };
                    let over = self.turn_over(step, at, turn.time);
                    tasks.push(Ordered { step, at, turn, over });
                }
            }
        }
        Some(Order { tasks, refusal: None })
    }

    /// Whether an action was done so many times at its place.
    fn turn_over(&self, step: &Step, at: Option<Place>, time: usize) -> bool {
        let times =
            |wanted: &dyn Fn(&Fact) -> bool| self.job.lines.iter().filter(|line| wanted(&line.fact)).count() >= time;
        let lifted =
            |wanted: Arm| times(&|fact| matches!(fact, Fact::Lifted { arm, at: a, .. } if *arm == wanted && *a == at));
        match step.asks {
            Ask::RaisedFull => lifted(Arm::Full),
            Ask::Held => lifted(Arm::Held),
            Ask::AllClear => lifted(Arm::AllClear),
            Ask::Lowered => lifted(Arm::Down),
            Ask::WheelOff => times(&|fact| matches!(fact, Fact::WheelOff { at: a, .. } if Some(*a) == at)),
            Ask::MarkRead => times(&|fact| matches!(fact, Fact::WheelOn { at: a, .. } if Some(*a) == at)),
            Ask::Cracked => self.turned_all(at, Pass::Cracked, time.saturating_sub(1)),
            Ask::Started => self.turned_all(at, Pass::Started, time),
            Ask::Snug => self.turned_all(at, Pass::Snug, time),
            Ask::Seen | Ask::Rocked | Ask::Count | Ask::Choice => {
                times(&|fact| matches!(fact, Fact::StepDone { step: s, at: a, .. } if *s == step.id && *a == at))
            }
            _ => self.done(step, at).is_some(),
        }
    }

    fn turned_all(&self, at: Option<Place>, pass: Pass, offs: usize) -> bool {
        at.and_then(|place| self.left_after(place, pass, offs)).is_some_and(|left| left.is_empty())
    }

    /// Nuts that a pass has not finished since the wheel came off so many times,
    /// and before it came off again; nothing when the nuts were not counted.
    fn left_after(&self, place: Place, pass: Pass, offs: usize) -> Option<Vec<u8>> {
        let mut left: Vec<u8> = (1..=self.studs()?).collect();
        let mut seen = 0;
        for line in &self.job.lines {
            match &line.fact {
                Fact::WheelOff { at, .. } if *at == place => seen += 1,
                Fact::NutTightened { at, nuts, pass: p, turned, .. } if *at == place && *p == pass && seen == offs => {
                    let (first, last) = match nuts {
                        Nuts::One(nut) => (*nut, *nut),
                        Nuts::WheelInOrder(count) => (1, *count),
                    };
                    let proven = pass != Pass::Final || *turned == Some(Turned::Moved);
                    left.retain(|nut| !proven || !(first..=last).contains(nut));
                }
                _ => {}
            }
        }
        Some(left)
    }

    /// Nuts of a task's wheel that its pass has not finished.
    pub fn nuts_left_for(&self, task: &Task<'_>, pass: Pass) -> Option<Vec<u8>> {
        let place = task.at?;
        match (&task.turn, pass) {
            (Some(turn), Pass::Cracked) => self.left_after(place, pass, turn.time.saturating_sub(1)),
            (Some(turn), Pass::Started | Pass::Snug) => self.left_after(place, pass, turn.time),
            _ => self.nuts_left(place, pass),
        }
    }

    /// The actions of the order as tasks. When the moves can't be done with the gear
    /// at hand, the first step stands for all of them and says so.
    pub(super) fn ordered(&self, steps: &[&'a Step]) -> Vec<Task<'a>> {
        let Some(order) = self.order() else { return Vec::new() };
        if let (Some(_), Some(step)) = (&order.refusal, steps.first()) {
            let state = TaskState::Held(self.unmet_in(step, None, Some(&order)));
            return vec![Task { step, at: None, state, turn: None }];
        }
        let next = order.tasks.iter().position(|task| !task.over);
        let state = |(number, task): (usize, &Ordered<'a>)| {
            if task.over {
                return TaskState::Done(self.done(task.step, task.at).flatten());
            }
            // What comes later waits for what is next, whatever else it waits for.
            let opened = self.job.opened_with(&task.step.id, task.at, Condition::InOrder.code()).is_some();
            let unmet = match order.unmet(&task.step.id, task.at) {
                Some(first) if next != Some(number) && !opened => vec![first],
                _ => self.unmet_in(task.step, task.at, Some(&order)),
            };
            if unmet.is_empty() { TaskState::Ready } else { TaskState::Held(unmet) }
        };
        let tasks = order.tasks.iter().enumerate();
        let task = |(number, task): (usize, &Ordered<'a>)| Task {
            step: task.step,
            at: task.at,
            state: state((number, task)),
            turn: Some(task.turn.clone()),
        };
        tasks.map(task).collect()
    }

    /// The tires wanted at a place: the one that should hang there now, and the one that is hung there next.
    /// They differ only where a wheel stands in for another.
    pub fn wanted(&self, place: Place) -> (Option<TireId>, Option<TireId>) {
        let Some(order) = self.order() else {
            let wanted = self.job.wanted_at(place);
            return (wanted, wanted);
        };
        let hung = |task: &&Ordered<'_>| task.step.asks == Ask::MarkRead && task.at == Some(place);
        let now = order.tasks.iter().filter(hung).rfind(|task| task.over).and_then(|task| task.turn.tire);
        let next = order.tasks.iter().filter(hung).find(|task| !task.over).and_then(|task| task.turn.tire);
        (now.or_else(|| self.job.fitted.get(&place).copied()), next.or(now))
    }

    /// The step that a command of this kind answers at a place: the next such action
    /// of the order, else the procedure's own step.
    pub fn step_at(&self, ask: Ask, at: Option<Place>) -> Option<(&'a Step, Option<Place>)> {
        let fits = |task: &&Task<'_>| task.turn.is_some() && task.step.asks == ask && (at.is_none() || task.at == at);
        let tasks = if self.is_ordered() { self.tasks() } else { Vec::new() };
        let next = tasks.iter().filter(fits).find(|task| !task.state.is_over()).map(|task| (task.step, task.at));
        next.or_else(|| self.step_here(ask, at).map(|step| (step, at)))
    }
}
