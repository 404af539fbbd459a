//! Questions: each builds a finished, worded record.

use super::learning::not_before_answer;
use super::trouble::clipped;
use super::view::{
    ActionLine, BookView, CautionLine, CheckLine, CheckView, JobLine, LiftsView, LimitsLine, LimitsView, LogLine,
    NextView, NutView, PersonLine, PlanLine, PlansView, TaskLine, TurnView, VehicleLine,
};
use super::{Engine, Trouble, TroubleKind, planning};
use crate::caution::CautionId;
use crate::due::YearlyEstimate;
use crate::entry::{Decision, Entry, Kind, Pass, Role, Shelf, Thing};
use crate::fastening;
use crate::ident::{Digest, JobId};
use crate::lifting::Action;
use crate::limits::Chosen;
use crate::logbook::{Book, Job, Logbook, Vehicle};
use crate::measure::{Distance, DistanceUnit};
use crate::photos::{Photos, Rendition};
use crate::procedure::{Ask, Bay, Per, Procedure, Task, TaskState, Unmet};
use crate::proof::{Seal, close_card};
use crate::report;
use crate::report::paper::Sheet;
use crate::store::Check;
use crate::vehicle::Place;
use crate::words::{FactContext, Quantity, Say, Speech, WearView, Words};

impl Engine {
    /// The job of a number; the one in the bay, else the last one, when none is given.
    pub(super) fn job(&self, number: Option<usize>) -> Option<&Job> {
        match number {
            Some(number) => self.book.jobs.iter().find(|job| job.number == number),
            None => self.book.in_bay().or_else(|| self.book.jobs.last()),
        }
    }

    pub(super) fn procedure_of(&self, job: &Job) -> Option<&Procedure> {
        self.procedures.iter().find(|procedure| procedure.id == job.procedure)
    }

    pub(super) fn bay(&self) -> Option<Bay<'_>> {
        let job = self.book.in_bay()?;
        Bay::new(self.procedure_of(job)?, &self.book, job)
    }

    /// The one next thing to do in the bay; none when no job is open.
    pub fn next(&self, speech: Speech) -> Option<NextView> {
        Some(next(&self.bay()?, &Words::new(speech)))
    }

    /// All tasks of the job in the bay, in order.
    pub fn tasks(&self, speech: Speech) -> Vec<TaskLine> {
        let words = Words::new(speech);
        let Some(bay) = self.bay() else { return Vec::new() };
        // The order of lifts is the answer that a learner gives first.
        let hidden = bay.to_answer(Decision::Lifts);
        let tasks = bay.tasks();
        let first = tasks.iter().position(|task| task.turn.is_some());
        let shown = tasks.iter().enumerate().filter(|(at, task)| !hidden || task.turn.is_none() || Some(*at) == first);
        shown.map(|(_, task)| task_line(&bay, task, &words)).collect()
    }

    /// The log of a job, line by line; of the one in the bay when no number is given.
    ///
    /// # Errors
    /// When there is no such job.
    pub fn log(&self, job: Option<usize>, speech: Speech) -> Result<Vec<LogLine>, Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        let context = FactContext::of_job(&self.book, job, self.procedure_of(job));
        let log = job
            .lines
            .iter()
            .enumerate()
            .map(|(at, line)| LogLine {
                line: at.saturating_add(1),
                entry: line.entry.to_string(),
                time: line.at.to_string(),
                said_at: words.text(
                    "log-moment",
                    &[("day", line.at.day().to_string().into()), ("clock", line.at.clock().into())],
                ),
                author: words.person(&self.book, line.author),
                sentence: words.line(line, &context),
                corrected: line.corrected_by.is_some(),
            })
            .collect();
        self.answered(log, &words)
    }

    /// An answer, unless an entry that it needs could not be read.
    pub(super) fn answered<T>(&self, answer: T, words: &Words) -> Result<T, Trouble> {
        self.entries.sound().map(|()| answer).map_err(|why| Trouble::of_store(&why, words))
    }

    /// The plans for the job in the bay.
    ///
    /// # Errors
    /// When no job is open, or its tires can't be planned with.
    pub fn plans(&self, speech: Speech) -> Result<PlansView, Trouble> {
        let words = Words::new(speech);
        let bay = self.bay().ok_or_else(|| Trouble::mend(&words, "trouble-no-job", &[]))?;
        not_before_answer(&bay, Decision::Pattern, &words)?;
        let planned = planning::answer(&bay, self.host.now().day()).map_err(|why| Trouble::said(why.say(&words)))?;
        let (answer, wear) = (planned.answer, planned.wear);
        let layout = &bay.vehicle.layout;
        let name = |place: Place| layout.name(place, speech.letters);
        let plans: Vec<PlanLine> = answer
            .plans
            .iter()
            .zip(1..)
            .map(|(plan, number)| PlanLine {
                plan: number,
                pattern: plan.pattern.code().to_owned(),
                name: words.pattern(plan.pattern.code()),
                moves: plan.moves.iter().map(|(from, to)| (name(*from), name(*to))).collect(),
                forecast: words.forecast_data(plan, layout),
                left: words.forecast(plan, layout),
                why: plan.why.iter().map(|why| words.reason(why, layout)).collect(),
            })
            .collect();
        let shout = answer.plans.first().map(|plan| words.shout(plan, layout)).unwrap_or_default();
        let refused = answer.refused.iter().map(|refused| words.refused(refused, layout)).collect();
        let look = answer.look_next.first().map(|look| look.say(&words));
        let notes = answer.notes.iter().map(|note| words.note(note, layout)).collect();
        let unknown = wear.as_ref().and_then(|wear| wear.unknown).map(|unknown| unknown.say(&words));
        let next_visit = wear.map(|wear| wear.next_visit.say(&words));
        self.answered(PlansView { shout, plans, refused, look, notes, unknown, next_visit }, &words)
    }

    /// The order of lifts for the job in the bay: every action, and which are done.
    ///
    /// # Errors
    /// When no job is open, its procedure has an order of its own, the moves or the
    /// gear are not settled, or the moves can't be done with that gear.
    pub fn lifts(&self, speech: Speech) -> Result<LiftsView, Trouble> {
        let words = Words::new(speech);
        let bay = self.bay().ok_or_else(|| Trouble::mend(&words, "trouble-no-job", &[]))?;
        let layout = &bay.vehicle.layout;
        if !bay.is_ordered() {
            return Err(Trouble::mend(&words, "trouble-no-order", &[]));
        }
        not_before_answer(&bay, Decision::Lifts, &words)?;
        let plan = bay.lifts().ok_or_else(|| Trouble::mend(&words, "trouble-order-waits", &[]))?;
        let plan = plan.map_err(|why| Trouble::said(words.lift_refusal(&why, layout)))?;
        let tasks = bay.tasks();
        let over = |n: usize| {
            let mut asked = tasks.iter().filter(|task| task.turn.as_ref().is_some_and(|turn| turn.action.n == n));
            asked.all(|task| task.state.is_over())
        };
        let line = |action: &Action| ActionLine {
            n: action.n,
            act: action.act.code().to_owned(),
            at: action.at.iter().map(|place| layout.name(*place, speech.letters)).collect(),
            sentence: words.action(action, layout),
            caution: action
                .cautions
                .iter()
                .filter(|caution| bay.has_gear_of(**caution))
                .map(|caution| caution_line(*caution, false, &words))
                .collect(),
            done: over(action.n),
        };
        Ok(LiftsView {
            sentence: words.lifts(&plan),
            lifts: plan.lifts,
            at_least: plan.at_least,
            proved: plan.proved,
            actions: plan.actions.iter().map(line).collect(),
            notes: plan.notes.iter().map(|note| note.say(&words)).collect(),
        })
    }

    /// What the readings of the vehicle in the bay say of its wear; of the last job's vehicle when no job is open.
    ///
    /// # Errors
    /// When there is no job, or no tread was measured with an odometer figure.
    pub fn wear(&self, speech: Speech) -> Result<WearView, Trouble> {
        let words = Words::new(speech);
        let vehicle = self.job(None).and_then(|job| self.book.vehicle(job.vehicle));
        let vehicle = vehicle.ok_or_else(|| Trouble::mend(&words, "trouble-no-job", &[]))?;
        let wear = planning::wear_of(vehicle, &self.book);
        let wear = wear.ok_or_else(|| Trouble::mend(&words, "trouble-no-wear", &[]))?;
        self.answered(words.wear(&wear, &vehicle.layout), &words)
    }

    /// Whose limits of tread depth hold, in the book and in the job in the bay.
    pub fn limits(&self, speech: Speech) -> LimitsView {
        let words = Words::new(speech);
        LimitsView {
            book: limits_line(self.book.limits, &words),
            job: self.book.in_bay().map(|job| limits_line(job.chosen(), &words)),
        }
    }

    /// What the looks under the vehicle in the bay say of its drive.
    ///
    /// # Errors
    /// When no job is open.
    pub fn verdict(&self, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let bay = self.bay().ok_or_else(|| Trouble::mend(&words, "trouble-no-job", &[]))?;
        not_before_answer(&bay, Decision::Drive, &words)?;
        self.answered(words.verdict(&bay.verdict(), &bay.vehicle.layout), &words)
    }

    /// The book's front page.
    pub fn front(&self, speech: Speech) -> BookView {
        let words = Words::new(speech);
        BookView {
            archived: self.archived(&words),
            vehicles: self
                .book
                .vehicles
                .iter()
                .filter(|known| !self.book.is_archived(Thing::Vehicle(known.id)))
                .map(|vehicle| vehicle_line(&self.book, vehicle, &words))
                .collect(),
            people: self
                .book
                .people
                .iter()
                .filter(|person| !self.book.is_archived(Thing::Person(person.id)))
                .map(|person| PersonLine { name: words.person(&self.book, person.id), role: words.role(person.role) })
                .collect(),
            jobs: self.book.jobs.iter().rev().map(|job| self.job_line(job, &words)).collect(),
            tools: self.book.tools_at_hand().map(|tool| words.tool_line(tool, self.host.now().day())).collect(),
            backups: self.backups(speech),
        }
    }

    /// What was put away, in words.
    pub(super) fn archived(&self, words: &Words) -> Vec<String> {
        let retired = self.book.tools.iter().filter(|tool| tool.retired).map(|tool| Thing::Tool(tool.id));
        self.book.archived().chain(retired).map(|thing| words.thing(&self.book, thing)).collect()
    }

    pub(super) fn job_line(&self, job: &Job, words: &Words) -> JobLine {
        JobLine {
            job: job.number,
            vehicle: self.book.vehicle(job.vehicle).map(|vehicle| vehicle.name.clone()).unwrap_or_default(),
            title: self.procedure_of(job).map_or_else(|| job.procedure.clone(), |procedure| words.title(procedure)),
            status: job.status,
            status_text: words.status(job.status),
            opened: job.opened.day().to_string(),
            practice: job.practice,
        }
    }

    /// A job's card: one self-contained HTML page, true at any step.
    ///
    /// # Errors
    /// When there is no such job.
    pub fn card(&self, job: Option<usize>, speech: Speech) -> Result<String, Trouble> {
        let (page, job, logbook, seal) = self.card_page(job, speech)?;
        let entries: Vec<&Entry> = logbook.entries().collect();
        Ok(close_card(&page, self.key.as_ref(), job, &entries, seal.as_ref()))
    }

    /// The card's page with what its proof is made from.
    fn card_page(&self, job: Option<usize>, speech: Speech) -> Result<(String, JobId, Logbook, Option<Seal>), Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        // What is covered is never shown instead: without the covered copy there is no picture.
        let photo = |id: Digest| self.photos.share_covered(id, Rendition::Large, self.book.covers(id)).ok();
        let logbook = self.entries.of_job(job).map_err(|why| Trouble::of_store(&why, &words))?;
        let seal = self.seal_of(job, &logbook).map_err(|why| Trouble::of_store(&why, &words))?;
        let shown = self.seal_shown(seal.as_ref(), &logbook);
        let page = report::sealed_card(&logbook, (&self.book, job), self.procedure_of(job), &words, &photo, shown);
        self.answered((page, job.id, logbook, seal), &words)
    }

    /// The vehicle of this name; none when none is named.
    ///
    /// # Errors
    /// When there is no such vehicle.
    fn vehicle(&self, name: Option<&str>, words: &Words) -> Result<Option<&Vehicle>, Trouble> {
        let acting = name.map(|name| self.book.vehicle_named(name).ok_or(name)).transpose();
        acting.map_err(|name| Trouble::no_vehicle(&self.book, name, words))
    }

    /// A copy of a photo to give away: upright, its covered parts filled, without place, device and time.
    ///
    /// # Errors
    /// When there is no such job or photo, or its file is gone or damaged.
    pub fn shared_photo(&self, job: Option<usize>, number: usize, speech: Speech) -> Result<Vec<u8>, Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        let photo = super::act::photo_of_job(job, number, &words)?;
        let copy = self.photos.share_covered(photo, Rendition::Original, self.book.covers(photo));
        copy.map_err(|why| Trouble::of_photos(&why, &words))
    }

    /// A vehicle's history: one self-contained HTML page.
    ///
    /// # Errors
    /// When there is no such vehicle; without a name, when none is in the bay.
    pub fn history(&self, vehicle: Option<&str>, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let in_bay = || self.job(None).and_then(|job| self.book.vehicle(job.vehicle));
        let vehicle = self.vehicle(vehicle, &words)?.or_else(in_bay);
        let vehicle = vehicle.ok_or_else(|| Trouble::mend(&words, "trouble-which-vehicle", &[]))?;
        self.answered(report::history(&self.book, vehicle, &self.procedures, &words), &words)
    }

    /// A job's card as a PDF; see [`report::paper`].
    ///
    /// # Errors
    /// When there is no such job.
    pub fn card_pdf(&self, job: Option<usize>, sheet: Sheet, speech: Speech) -> Result<Vec<u8>, Trouble> {
        on_paper(&self.card_page(job, speech)?.0, sheet, speech)
    }

    /// A vehicle's history as a PDF; see [`report::paper`].
    ///
    /// # Errors
    /// As [`history`](Self::history).
    pub fn history_pdf(&self, vehicle: Option<&str>, sheet: Sheet, speech: Speech) -> Result<Vec<u8>, Trouble> {
        on_paper(&self.history(vehicle, speech)?, sheet, speech)
    }

    /// The rechecks told in a job as a calendar file, dated by the owner's own
    /// estimate of the distance driven in a year; see [`report::reminder`].
    ///
    /// # Errors
    /// When there is no such job, no recheck was told in it, or the estimate gives no date.
    pub fn recheck_calendar(&self, job: Option<usize>, per_year: &str, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        let per_year_read = Distance::parse(per_year, None)
            .map_err(|why| Trouble::said(words.misread::<DistanceUnit>(per_year, &why)))?;
        if job.practice {
            return Err(Trouble::mend(&words, "trouble-practice-due", &[]));
        }
        if self.answered(report::reminder::rechecks(&self.book, job), &words)?.is_empty() {
            return Err(Trouble::mend(&words, "trouble-recheck-untold", &[]));
        }
        let estimate = YearlyEstimate { per_year: per_year_read };
        self.answered(report::reminder::calendar(&self.book, job, &estimate, self.host.now(), &words), &words)?
            .ok_or_else(|| Trouble::mend(&words, "trouble-per-year", &[("given", clipped(per_year).into())]))
    }

    /// Every reading as CSV, one row each, of one vehicle or of all; see [`report::spreadsheet`].
    ///
    /// # Errors
    /// When there is no such vehicle.
    pub fn readings_csv(&self, vehicle: Option<&str>, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let vehicle = self.vehicle(vehicle, &words)?;
        self.answered(report::spreadsheet::readings(&self.book, vehicle), &words)
    }

    /// Every job as CSV, one row each, of one vehicle or of all; see [`report::spreadsheet`].
    ///
    /// # Errors
    /// When there is no such vehicle.
    pub fn jobs_csv(&self, vehicle: Option<&str>, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let vehicle = self.vehicle(vehicle, &words)?;
        self.answered(report::spreadsheet::jobs(&self.book, vehicle), &words)
    }
}

impl Engine {
    /// The labels of the wheels that were stored in a job: one page to print.
    ///
    /// # Errors
    /// When there is no such job.
    pub fn labels(&self, job: Option<usize>, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        let logbook = self.entries.of_job(job).map_err(|why| Trouble::of_store(&why, &words))?;
        self.answered(report::labels(&logbook, &self.book, job, &words), &words)
    }

    /// The labels as a PDF; see [`report::paper`].
    ///
    /// # Errors
    /// As [`labels`](Self::labels).
    pub fn labels_pdf(&self, job: Option<usize>, sheet: Sheet, speech: Speech) -> Result<Vec<u8>, Trouble> {
        on_paper(&self.labels(job, speech)?, sheet, speech)
    }
}

fn limits_line(chosen: Chosen, words: &Words) -> LimitsLine {
    let held = chosen.or_default();
    let rules = held.rules();
    LimitsLine {
        region: rules.region,
        season: rules.season,
        at_limit: held.at_limit.map(|depth| words.quantity(&depth)),
        watch: held.watch.map(|depth| words.quantity(&depth)),
        default: chosen == Chosen::default(),
        text: words.limits(chosen),
    }
}

pub(super) fn on_paper(html: &str, sheet: Sheet, speech: Speech) -> Result<Vec<u8>, Trouble> {
    let words = Words::new(speech);
    report::paper::pdf(html, sheet, &words).map_err(|why| {
        let why = why.to_string().chars().take(160).collect::<String>();
        Trouble::new(TroubleKind::Report, &words, "trouble-unprintable", &[("why", why.into())])
    })
}

fn vehicle_line(book: &Book, vehicle: &Vehicle, words: &Words) -> VehicleLine {
    let kinds = [Kind::Torque, Kind::Placard, Kind::Drive, Kind::Pattern, Kind::LiftPoints, Kind::Brakes];
    VehicleLine {
        name: vehicle.name.clone(),
        model: vehicle.model.clone(),
        plate: vehicle.plate.clone(),
        class: words.class(vehicle.class),
        shelf: kinds
            .iter()
            .filter_map(|kind| book.on_shelf(&vehicle.model, *kind))
            .map(|spec| words.specification(spec))
            .collect(),
    }
}

fn next(bay: &Bay<'_>, words: &Words) -> NextView {
    let tasks = bay.tasks();
    let task = tasks.iter().find(|task| !task.state.is_over());
    task_view(bay, &tasks, task, words)
}

/// A task as the bay shows it; none when all steps are over.
pub(super) fn task_view(bay: &Bay<'_>, tasks: &[Task<'_>], task: Option<&Task<'_>>, words: &Words) -> NextView {
    let last = tasks.iter().rfind(|task| task.state.is_over());
    let unmet: &[Unmet] = match task.map(|task| &task.state) {
        Some(TaskState::Held(unmet)) => unmet,
        _ => &[],
    };
    let name = |at: Place| bay.vehicle.layout.name(at, words.speech().letters);
    let sentence = task.map_or_else(|| words.text("next-nothing", &[]), |task| words.step(task.step));
    let at = task.and_then(|task| task.at);
    let spoken = match at {
        Some(at) => format!("{}. {sentence}", words.place_spoken(&bay.vehicle.layout, at)),
        None => sentence.clone(),
    };
    NextView {
        job: bay.job.number,
        vehicle: bay.vehicle.name.clone(),
        status: bay.job.status,
        hands: words.person(bay.book, bay.job.hands),
        crew: crew(bay),
        step: task.map(|task| task.step.id.clone()),
        sentence,
        spoken,
        at: at.map(name),
        asks: task.map(|task| task.step.asks.code().to_owned()),
        choices: task
            .map(|task| task.step.choices.iter().map(|code| (code.clone(), words.choice(code))).collect())
            .unwrap_or_default(),
        gate: unmet.iter().map(|unmet| words.unmet(unmet, &bay.vehicle.layout)).collect(),
        caution: task.map(|task| cautions(bay, task, tasks, words)).unwrap_or_default(),
        van: task.filter(|task| task.step.van).map(|_| words.text("next-in-the-van", &[])),
        two: task.filter(|task| bay.wants_two(task)).map(|_| words.text("next-two-people", &[])),
        answer_first: unmet.iter().find_map(|unmet| match unmet {
            Unmet::AnsweredFirst { decision } => Some(decision.code().to_owned()),
            _ => None,
        }),
        seen_by: unmet
            .iter()
            .any(|unmet| matches!(unmet, Unmet::InstructorSaw { .. }))
            .then(|| bay.book.people.iter().find(|person| person.role == Role::Instructor)?.name.clone())
            .flatten(),
        coming: task.is_some_and(|task| task.step.per == Per::Coming),
        shows: task.and_then(|task| task.step.shows).map(|kind| {
            let printed = bay.book.on_shelf(&bay.vehicle.model, kind).map(|spec| words.specification(spec));
            let id = if printed.is_some() { "next-shows" } else { "next-shows-nothing" };
            words.text(id, &[("what", words.kind(kind).into()), ("printed", printed.unwrap_or_default().into())])
        }),
        may_skip: task.is_some_and(|task| task.step.may_skip),
        nuts: task.and_then(|task| nut_view(bay, task, words)),
        turn: task.and_then(|task| turn_view(bay, task, words)),
        done: tasks.iter().filter(|task| task.state.is_over()).count(),
        of: tasks.len(),
        last: last.map(|task| match task.at {
            Some(at) => format!("{}: {}", name(at), words.step(task.step)),
            None => words.step(task.step),
        }),
    }
}

/// Who works from this book and has no hands on the job now.
fn crew(bay: &Bay<'_>) -> Vec<String> {
    let idle = bay.book.people.iter().filter(|person| person.role != Role::Customer && person.id != bay.job.hands);
    idle.filter_map(|person| person.name.clone()).collect()
}

fn caution_line(caution: CautionId, again: bool, words: &Words) -> CautionLine {
    CautionLine {
        code: caution.code().to_owned(),
        signal: words.signal(caution.signal()),
        signal_code: caution.signal().code().to_owned(),
        sentence: words.caution(caution),
        again,
    }
}

/// The cautions before a task; one that stood before an earlier, finished task is marked as shown.
fn cautions(bay: &Bay<'_>, task: &Task<'_>, tasks: &[Task<'_>], words: &Words) -> Vec<CautionLine> {
    let here = bay.circumstances();
    let shown_before = |caution: CautionId| {
        tasks.iter().any(|other| other.state.is_over() && other.step.cautions.iter().any(|code| code == caution.code()))
    };
    task.step
        .cautions
        .iter()
        .filter_map(|code| CautionId::of_code(code))
        .filter(|caution| caution.applies(&here) && bay.has_gear_of(*caution))
        .map(|caution| caution_line(caution, shown_before(caution), words))
        .collect()
}

/// Where an action stands in the order of lifts, which tire it handles, and what else belongs to it.
fn turn_view(bay: &Bay<'_>, task: &Task<'_>, words: &Words) -> Option<TurnView> {
    let turn = task.turn.as_ref().filter(|_| !bay.to_answer(Decision::Lifts))?;
    let action = &turn.action;
    let args = [
        ("n", action.n.to_string().into()),
        ("of", turn.of.to_string().into()),
        ("lift", turn.lift.to_string().into()),
        ("lifts", turn.lifts.to_string().into()),
    ];
    let mut detail = vec![words.text(if turn.lift == 0 { "turn-before" } else { "turn" }, &args)];
    let name = |at: Place| bay.vehicle.layout.name(at, words.speech().letters);
    if let Some(mark) = turn.tire.and_then(|tire| bay.job.mark_of(tire)) {
        detail.push(words.text("turn-mark", &[("mark", mark.into())]));
    } else if let Some(wheel) = action.wheel.filter(|wheel| !action.at.contains(wheel)) {
        detail.push(words.text("turn-wheel", &[("wheel", name(wheel).into())]));
    }
    detail.extend(words.act_detail(action.act).filter(|_| task.step.act.is_some() && task.step.asks != Ask::Looks));
    Some(TurnView { n: action.n, of: turn.of, lift: turn.lift, lifts: turn.lifts, detail: detail.join(" ") })
}

fn nut_view(bay: &Bay<'_>, task: &Task<'_>, words: &Words) -> Option<NutView> {
    let pass = task.step.asks.pass()?;
    if bay.to_answer(Decision::Order) && pass != Pass::Cracked {
        return None;
    }
    let order = fastening::order(bay.studs()?)?;
    let left = bay.nuts_left_for(task, pass)?;
    Some(NutView {
        done: order.iter().copied().filter(|nut| !left.contains(nut)).collect(),
        next: order.iter().copied().find(|nut| left.contains(nut)),
        order,
        target: (matches!(pass, Pass::Final | Pass::Recheck) && !bay.to_answer(Decision::Target))
            .then(|| target(bay, words))
            .flatten(),
    })
}

/// What the wrench used in this job is set to, when specification and wrench are known.
fn target(bay: &Bay<'_>, words: &Words) -> Option<Quantity> {
    let Some(Shelf::Torque { spec, .. }) = bay.book.on_shelf(&bay.vehicle.model, Kind::Torque).map(|s| &s.shelf) else {
        return None;
    };
    let (_, wrench) = planning::wrench(bay.book, bay.job)?;
    fastening::target(spec, &wrench).ok().map(|target| words.quantity(&target.target))
}

pub(super) fn task_line(bay: &Bay<'_>, task: &Task<'_>, words: &Words) -> TaskLine {
    let (state, why) = match &task.state {
        TaskState::Done(_) => ("done", Vec::new()),
        TaskState::Skipped(reason) => ("skipped", vec![reason.clone()]),
        TaskState::Ready => ("ready", Vec::new()),
        TaskState::Held(unmet) => ("held", unmet.iter().map(|u| words.unmet(u, &bay.vehicle.layout)).collect()),
    };
    TaskLine {
        step: task.step.id.clone(),
        at: task.at.map(|at| bay.vehicle.layout.name(at, words.speech().letters)),
        sentence: words.step(task.step),
        state,
        why,
    }
}

/// What checking found, worded.
pub(super) fn check(check: &Check, photos: &Photos, book: &Book, words: &Words) -> CheckView {
    let checked = photos.check(book.photos.keys().copied());
    let mut problems: Vec<CheckLine> = check
        .problems
        .iter()
        .map(|problem| CheckLine {
            kind: problem.kind.code().to_owned(),
            at: words.spot(&problem.at),
            sentence: problem.say(words),
        })
        .collect();
    problems.extend(checked.problems.iter().map(|problem| CheckLine {
        kind: "photo".to_owned(),
        at: problem.id.short(),
        sentence: problem.say(words),
    }));
    CheckView { ok: problems.is_empty(), entries: check.entries, photos: checked.whole, problems }
}
