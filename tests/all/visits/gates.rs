//! For each gate of each procedure: what meets it, how it is opened with a reason, what the card then says.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

use lugbook::engine::Command;
use lugbook::entry::LookAt;
use lugbook::finding::State;
use lugbook::logbook::Status;
use lugbook::procedure::{Condition, Procedure, TaskState};
use lugbook::vehicle::Place;
use lugbook::words::{Speech, Words};

use super::driver::{Question, Visit, procedures};
use crate::engine::text;

type Gate = (String, Condition);

const RECHECK: &str = "recheck-visit";

/// Steps that hands come to in a whole visit, each with where.
type Asked = BTreeSet<(String, Option<Place>)>;

/// The gates that a procedure's file names, and those of an order of lifts.
fn named(procedure: &Procedure) -> BTreeSet<Gate> {
    let by_file = procedure.steps.iter().flat_map(|step| step.needs.iter().map(|needs| (step.id.clone(), *needs)));
    let ordered = procedure.steps.iter().filter(|step| step.act.is_some());
    by_file.chain(ordered.map(|step| (step.id.clone(), Condition::InOrder))).collect()
}

/// Whether an order of lifts stands for a gate, so that it is never asked; see `procedure::Bay`.
fn stands_for(procedure: &Procedure, (step, condition): &Gate) -> bool {
    use Condition::{AllClear, AllSnug, Cracked, Down, Held};
    let acts = procedure.step(step).is_some_and(|step| step.act.is_some());
    acts && matches!(condition, AllClear | AllSnug | Cracked | Down | Held)
}

/// At the first wheel that is off: a seat that must be replaced, and is; then a tire that can't go on the road.
fn find_something_unsafe(visit: &mut Visit, at: &str, seen: &mut dyn FnMut(&mut Visit)) {
    visit.say(visit.look(at, Some(LookAt::Seats), State::Unsafe));
    visit.say(visit.look(at, Some(LookAt::Tire), State::Unsafe));
    seen(visit);
    visit.say(visit.look(at, Some(LookAt::Seats), State::Sound));
    seen(visit);
}

/// Whether hands are at a hub laid bare: where parts are looked at, else before a wheel is hung.
fn is_bare(procedure: &Procedure, next: &Question) -> bool {
    let asks = |asks: &str| procedure.steps.iter().any(|step| step.asks.code() == asks);
    match ["looks", "mark-read"].into_iter().find(|known| asks(known)) {
        Some(bare) => next.asks == bare,
        None => next.at.is_some(),
    }
}

fn begin(procedure: &Procedure, pick: usize) -> (tempfile::TempDir, Visit) {
    let folder = tempfile::tempdir().unwrap();
    // The nuts of duals are checked again after a visit that had them off.
    if procedure.id == RECHECK && pick == 1 {
        let duals = procedures().into_iter().find(|known| known.id == "dual-wheels-off-and-on").unwrap();
        let mut visit = Visit::begin(folder.path(), &duals, Speech::default(), 0);
        visit.play(|_| ());
        visit.procedure = procedure.clone();
        visit.open_again();
        return (folder, visit);
    }
    let visit = Visit::begin(folder.path(), procedure, Speech::default(), pick);
    (folder, visit)
}

/// Everything that a visit asks.
fn asked(procedure: &Procedure, pick: usize) -> Asked {
    let (_folder, mut visit) = begin(procedure, pick);
    let mut all = Asked::new();
    while let Some(next) = visit.next() {
        all.extend(visit.bay().unwrap().tasks().into_iter().map(|task| (task.step.id.clone(), task.at)));
        let answer = visit.answer(&next);
        visit.say(answer);
    }
    assert_eq!(visit.engine.book().jobs[0].status, Status::Signed, "{}", procedure.id);
    all
}

/// The gates that wait at any place where the visit comes to.
fn waiting(visit: &Visit, asked: &Asked) -> BTreeSet<Gate> {
    let Some(bay) = visit.bay() else { return BTreeSet::new() };
    // An action of an order of lifts waits for its turn, whatever else it waits for: its own conditions are asked apart.
    let own = asked.iter().flat_map(|(id, at)| {
        let step = visit.procedure.step(id).expect("a step");
        let needs = step.needs.iter().filter(|needs| !stands_for(&visit.procedure, &(id.clone(), **needs)));
        needs
            .filter_map(|needs| bay.check(*needs, *at))
            .map(|unmet| (id.clone(), unmet.condition()))
            .collect::<Vec<_>>()
    });
    let in_order = bay.tasks().into_iter().filter(|task| task.step.act.is_some());
    let in_order = in_order.filter(|task| match &task.state {
        TaskState::Held(unmet) => unmet.iter().any(|unmet| unmet.condition() == Condition::InOrder),
        _ => false,
    });
    let in_order = in_order.map(|task| (task.step.id.clone(), Condition::InOrder));
    own.chain(in_order).collect()
}

/// Plays a visit; each gate that waited, and the command that met it.
fn met(procedure: &Procedure, pick: usize) -> BTreeMap<Gate, String> {
    let asked = asked(procedure, pick);
    let (_folder, mut visit) = begin(procedure, pick);
    let (mut held, mut met, mut found) = (waiting(&visit, &asked), BTreeMap::<Gate, String>::new(), false);
    let mut note = |visit: &mut Visit, verb: &str| {
        let now = waiting(visit, &asked);
        // Met for the first time: a gate may wait again, once the vehicle is down.
        for gate in held.difference(&now) {
            met.entry(gate.clone()).or_insert_with(|| verb.to_owned());
        }
        held = now;
    };
    while let Some(next) = visit.next() {
        if is_bare(procedure, &next) && !found {
            found = true;
            find_something_unsafe(&mut visit, &next.at.clone().unwrap(), &mut |visit| note(visit, "look"));
        }
        if next.asks == "signature" && found {
            visit.say(Command::UnsafeTold { accepts: true, by: None, drawn: None });
            note(&mut visit, "unsafe-told");
        }
        let answer = visit.answer(&next);
        visit.say(answer.clone());
        note(&mut visit, serde_json::to_value(&answer).unwrap()["do"].as_str().unwrap());
    }
    met
}

/// Opens the gates of a step with a reason; none when nothing holds it.
fn open(visit: &mut Visit, step: &str, at: Option<String>) {
    let reason = text("the foreman looked at it");
    visit.say(Command::OpenGate { step: Some(step.to_owned()), at, reason });
}

/// Each gate that holds a task now and was not opened yet is opened, where it holds first.
fn open_what_waits(visit: &mut Visit, opened: &mut BTreeSet<Gate>) {
    let mut first: BTreeMap<(String, Option<String>), Vec<Gate>> = BTreeMap::new();
    let mut seen = opened.clone();
    for task in visit.bay().expect("a job").tasks() {
        let TaskState::Held(unmet) = &task.state else { continue };
        let at = visit.question(&task).at;
        for unmet in unmet {
            let gate = (task.step.id.clone(), unmet.condition());
            if seen.insert(gate.clone()) {
                first.entry((task.step.id.clone(), at.clone())).or_default().push(gate);
            }
        }
    }
    for ((step, at), gates) in first {
        open(visit, &step, at);
        opened.extend(gates);
    }
}

/// Answers that are put off to the end, so that what waits for them is opened.
fn put_off(next: &Question) -> bool {
    let paper = ["approval", "torque", "weigh", "equipment", "ready"].contains(&next.asks);
    paper || ["lock-key", "place"].contains(&next.step.as_str())
}

/// Plays a visit in which each gate is opened with a reason as soon as it waits; what its card says of each.
fn opened(procedure: &Procedure, pick: usize) -> BTreeMap<Gate, String> {
    let (_folder, mut visit) = begin(procedure, pick);
    let (mut opened, mut found, mut taped, mut count) = (BTreeSet::new(), false, false, 0);
    while visit.bay().is_some() {
        open_what_waits(&mut visit, &mut opened);
        let bay = visit.bay().unwrap();
        let tasks: Vec<_> = bay.tasks().into_iter().filter(|task| !task.state.is_over()).collect();
        let later = |task: &&lugbook::procedure::Task<'_>| {
            let next = visit.question(task);
            put_off(&next) || next.asks == "signature"
        };
        let task = tasks.iter().find(|task| !later(task)).or(tasks.first()).expect("a task");
        let next = visit.question(task);
        drop(tasks);
        // Before the first pair is hung a tape shows that its tires don't match.
        if let Some(pair) = next.at.as_ref().filter(|at| next.asks == "mark-read" && at.ends_with('I') && !taped) {
            taped = true;
            let outer = pair.replace('I', "O");
            for (at, around) in [(outer.as_str(), "3000 mm"), (pair.as_str(), "3100 mm")] {
                visit.say(Command::Around { at: text(at), around: text(around) });
            }
            open_what_waits(&mut visit, &mut opened);
        }
        let waits = visit.bay().unwrap().tasks().iter().any(|task| {
            visit.question(task).step == next.step
                && visit.question(task).at == next.at
                && matches!(task.state, TaskState::Held(_))
        });
        if waits {
            open(&mut visit, &next.step.clone(), next.at.clone());
        }
        if is_bare(procedure, &next) && !found {
            found = true;
            find_something_unsafe(&mut visit, &next.at.clone().unwrap(), &mut |visit| {
                open_what_waits(visit, &mut opened);
            });
        }
        let answer = visit.answer(&next);
        visit.say(answer);
        count += 1;
        assert!(count < 400, "{}: {next:?}", procedure.id);
    }
    assert_eq!(visit.engine.book().jobs[0].status, Status::Signed, "{}", procedure.id);
    let words = Words::new(Speech::default());
    let card = crate::report::text(&visit.engine.card(None, Speech::default()).unwrap());
    let card = card.split_whitespace().collect::<Vec<_>>().join(" ");
    let said = |(id, condition): Gate| {
        let step = words.step(procedure.step(&id).expect("a step"));
        let without = words.condition(condition);
        let said = format!("gate opened at “{step}” without this: {without}. Reason: the foreman looked at it.");
        assert!(card.to_lowercase().contains(&said.to_lowercase()), "{}: {said}: {card}", procedure.id);
        ((id, condition), format!("without this: {without}"))
    };
    opened.into_iter().map(said).collect()
}

/// Gates that can't be opened since nothing can be named before they are met: which wheels are meant is said
/// by the moves, the set, or the wheels that were chosen.
fn has_nothing_to_open(procedure: &Procedure, (step, condition): &Gate) -> bool {
    use lugbook::procedure::Per;
    let at_wheels = procedure.step(step).is_some_and(|step| step.per != Per::Job);
    let acts = procedure.step(step).is_some_and(|step| step.act.is_some());
    (at_wheels || acts) && matches!(condition, Condition::PlanChosen | Condition::WheelsChosen | Condition::SetBrought)
}

/// How many ways a procedure has: on a lift or on stands, hitched or not, by the gear at hand.
fn ways(procedure: &Procedure) -> usize {
    let gear = procedure.steps.iter().find(|step| step.id == "gear").map_or(1, |step| step.choices.len());
    let settled = |code: &str| procedure.settle.iter().find(|row| row.iter().any(|known| known == code));
    let support = ["lift", "hitched"].into_iter().filter_map(settled).map(Vec::len).max();
    gear.max(support.unwrap_or(1)).max(if procedure.id == RECHECK { 2 } else { 1 })
}

/// Gates that have nothing to wait for where they stand: a vehicle that is never raised, nuts that are not
/// set, and a torque that was known when the duals were set before.
fn can_not_wait(procedure: &Procedure, (step, condition): &Gate) -> bool {
    let asks = |asks: &str| procedure.steps.iter().any(|step| step.asks.code() == asks);
    match condition {
        Condition::Down => !asks("raised-clear") && !asks("raised-full"),
        Condition::FinalDone => !asks("final"),
        Condition::TorqueKnown => procedure.id == RECHECK && step == "final",
        _ => false,
    }
}

#[test]
fn each_gate_of_each_procedure_is_met_and_is_opened_with_a_reason_that_the_card_tells() {
    let (mut table, mut missing) = (String::new(), Vec::new());
    for procedure in procedures() {
        let (mut met, mut opened, named) = (BTreeMap::new(), BTreeMap::new(), named(&procedure));
        for way in 0..ways(&procedure) {
            met.extend(self::met(&procedure, way));
            opened.extend(self::opened(&procedure, way));
        }
        writeln!(table, "\n{}", procedure.id).unwrap();
        let first = procedure.steps.iter().find(|step| step.act.is_some()).map(|step| step.id.clone());
        let comes_first = |(step, condition): &Gate| *condition == Condition::InOrder && first.as_ref() == Some(step);
        for gate in named.iter().filter(|gate| !stands_for(&procedure, gate) && !comes_first(gate)) {
            if can_not_wait(&procedure, gate) {
                continue;
            }
            let (step, condition) = gate;
            let place = format!("{} {step}: {}", procedure.id, condition.code());
            let by = met.get(gate).cloned().unwrap_or_else(|| {
                missing.push(format!("{place}: nothing met it"));
                String::new()
            });
            let card = match opened.get(gate) {
                Some(card) => format!("opened, the card says “{card}”"),
                None if has_nothing_to_open(&procedure, gate) => "no wheel is named before".to_owned(),
                None => {
                    missing.push(format!("{place}: never opened"));
                    String::new()
                }
            };
            writeln!(table, "  {step}: {}: met by {by}; {card}", condition.code()).unwrap();
        }
        let all: BTreeSet<_> = met.keys().chain(opened.keys()).cloned().collect();
        assert!(all.is_subset(&named), "{}: {:?}", procedure.id, all.difference(&named).collect::<Vec<_>>());
    }
    assert!(missing.is_empty(), "{missing:#?}");
    insta::assert_snapshot!(table);
}
