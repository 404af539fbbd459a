//! The bay: the job in hand, its next step, and everything that can be done about it.

use serde::Serialize;

use super::doing::Doing;
use super::drawing::{NutCircle, VehicleDrawing};
use super::form::{FieldKind, Form, Slot};
use super::offer::{Action, Offer, Offers, Weight, Where};
use super::suggesting::SightView;
use crate::engine::ask::{task_line, task_view};
use crate::engine::{ActionLine, CautionLine, Engine, LogLine, PlanLine, TaskLine, Trouble, TurnView, planning};
use crate::entry::{Decision, Fact};
use crate::ident::Digest;
use crate::logbook::Status;
use crate::procedure::{Bay, Task};
use crate::vehicle::Place;
use crate::words::{FactContext, Speech, Words};

/// A step as a screen shows it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepView {
    /// Its id.
    pub step: String,
    /// What to do, a sentence.
    pub sentence: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Where.
    pub at: Option<String>,
    /// What is asked, as a code.
    pub asks: String,
    /// The cautions that stand before it.
    pub cautions: Vec<CautionLine>,
    /// What its gate waits for; empty when the step is free.
    pub gate: Vec<String>,
    /// What else belongs to it: the printed figure, the van, the second person, the tire laid out.
    pub notes: Vec<String>,
    /// Where it stands in the order of lifts.
    pub turn: Option<TurnView>,
    /// The nuts, when it turns nuts.
    pub nuts: Option<NutCircle>,
    /// `done`, `skipped`, `ready` or `held`.
    pub state: String,
}

/// The bay.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BayScreen {
    /// The job's number; none when no job is open.
    pub job: Option<usize>,
    /// The vehicle's name.
    pub vehicle: String,
    /// The procedure's title.
    pub title: String,
    /// Whose hands do the steps.
    pub hands: String,
    /// It is practice.
    pub practice: bool,
    /// What a person must be told first: what was damaged and what came back, a backup that failed.
    pub told: Vec<String>,
    /// The step in hand; none when all steps are over or no job is open.
    pub step: Option<StepView>,
    /// What stands there instead of a step.
    pub empty: Option<String>,
    /// The last step that was answered.
    pub last: Option<String>,
    /// Steps over.
    pub done: usize,
    /// All steps that apply.
    pub of: usize,
    /// How far the job is, in words.
    pub progress: String,
    /// A photo whose camera was opened and that never came: what of.
    pub pending_photo: Option<String>,
    /// What was read on the photos of the tire that the step asks about.
    pub sight: Option<SightView>,
    /// Every task of the job.
    pub tasks: Vec<TaskLine>,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// The plans of the job in the bay.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanScreen {
    /// What a tech can shout across the shop.
    pub shout: String,
    /// Plans, best first.
    pub plans: Vec<PlanCard>,
    /// Patterns that are not allowed, and why.
    pub refused: Vec<String>,
    /// Statements about the whole answer, and what to look at next.
    pub notes: Vec<String>,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// One plan with its drawing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanCard {
    /// Its number, from 1.
    pub plan: usize,
    /// The pattern's code.
    pub pattern: String,
    /// The pattern's name.
    pub name: String,
    /// The vehicle from above with an arrow for each move.
    pub drawing: VehicleDrawing,
    /// What each tire will have left, as one sentence.
    pub left: Option<String>,
    /// Why, in sentences.
    pub why: Vec<String>,
    /// It is the chosen one.
    pub chosen: bool,
}

/// The order of lifts.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LiftsScreen {
    /// How many lifts, and whether fewer are possible.
    pub sentence: String,
    /// What to do, in order.
    pub lifts: Vec<ActionLine>,
    /// What to know about the gear.
    pub notes: Vec<String>,
}

/// The log of a job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LogScreen {
    /// Its lines.
    pub lines: Vec<LogLine>,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// One finding.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingLine {
    /// The state's code.
    pub state: String,
    /// The state in words.
    pub state_text: String,
    /// Where.
    pub at: Option<String>,
    /// What it is, and where the judgement comes from.
    pub sentence: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// What is not as it should be, worst first.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FindingsScreen {
    /// The findings.
    pub findings: Vec<FindingLine>,
    /// What stands there when there are none.
    pub empty: Option<String>,
    /// Whose limits hold.
    pub limits: String,
}

/// The task of a step, or the next one.
fn task_of<'t, 'b>(bay: &Bay<'_>, tasks: &'t [Task<'b>], step: Option<&str>, at: Option<&str>) -> Option<&'t Task<'b>> {
    let Some(step) = step else { return tasks.iter().find(|task| !task.state.is_over()) };
    let at = at.and_then(|at| bay.vehicle.layout.parse(at));
    let mut of_step = tasks.iter().filter(|task| task.step.id == step);
    of_step.find(|task| at.is_none() || task.at == at)
}

impl Engine {
    /// The bay at its next step, or at another one of the job.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn bay_screen(&self, step: Option<&str>, at: Option<&str>, speech: Speech) -> Result<BayScreen, Trouble> {
        let words = Words::new(speech);
        let screen = Where::Bay { step: step.map(str::to_owned), at: at.map(str::to_owned) };
        let actions = self.actions(&screen, &words)?;
        let mut told: Vec<String> = self.told_at_opening(speech).into_iter().collect();
        told.extend(self.backups(speech).trouble);
        let Some(bay) = self.bay() else {
            return Ok(BayScreen {
                job: None,
                vehicle: String::new(),
                title: String::new(),
                hands: String::new(),
                practice: false,
                told,
                step: None,
                empty: Some(words.text("bay-empty", &[])),
                last: None,
                done: 0,
                of: 0,
                progress: String::new(),
                pending_photo: None,
                sight: None,
                tasks: Vec::new(),
                actions,
            });
        };
        let tasks = bay.tasks();
        let task = task_of(&bay, &tasks, step, at);
        let next = task_view(&bay, &tasks, task, &words);
        let args = [("done", next.done.to_string().into()), ("of", next.of.to_string().into())];
        let screen = BayScreen {
            job: Some(bay.job.number),
            vehicle: bay.vehicle.name.clone(),
            title: words.title(bay.procedure),
            hands: next.hands.clone(),
            practice: bay.job.practice,
            told,
            step: task.map(|task| {
                let name = task.at.map(|at| bay.vehicle.layout.name(at, speech.letters)).unwrap_or_default();
                let coming = next.coming.then(|| words.text("step-of-the-set", &[]));
                StepView {
                    step: task.step.id.clone(),
                    sentence: next.sentence.clone(),
                    spoken: next.spoken.clone(),
                    at: next.at.clone(),
                    asks: task.step.asks.code().to_owned(),
                    cautions: next.caution.clone(),
                    gate: next.gate.clone(),
                    notes: [next.shows.clone(), next.van.clone(), next.two.clone(), coming]
                        .into_iter()
                        .flatten()
                        .collect(),
                    turn: next.turn.clone(),
                    nuts: next.nuts.as_ref().and_then(|view| NutCircle::of(&bay, name, view, &words)),
                    state: task_line(&bay, task, &words).state.to_owned(),
                }
            }),
            empty: task.is_none().then(|| next.sentence.clone()),
            last: next.last.clone(),
            done: next.done,
            of: next.of,
            progress: words.text("bay-progress", &args),
            pending_photo: pending(&bay).map(|(of, at)| {
                let what = words.photo_of(of);
                let at = at.map(|at| bay.vehicle.layout.name(at, speech.letters)).unwrap_or_default();
                words.text("photo-pending", &[("what", what.into()), ("at", at.into())])
            }),
            sight: task.and_then(|task| self.sight_view(&bay, task, &words)),
            tasks: self.tasks(speech),
            actions,
        };
        self.answered(screen, &words)
    }

    pub(super) fn bay_offers(
        &self,
        step: Option<&str>,
        at: Option<&str>,
        head: Option<Digest>,
        words: &Words,
    ) -> Vec<Offer> {
        let screen = Where::Bay { step: step.map(str::to_owned), at: at.map(str::to_owned) };
        let Some(bay) = self.bay() else {
            let nowhere = |_: Place| (String::new(), String::new());
            let mut offers = Offers::new(words, &screen, head, &nowhere);
            self.begin(&mut offers);
            return offers.made();
        };
        let layout = &bay.vehicle.layout;
        let place = |at: Place| (layout.name(at, words.speech().letters), words.place_spoken(layout, at));
        let mut offers = Offers::new(words, &screen, head, &place);
        let tasks = bay.tasks();
        let task = task_of(&bay, &tasks, step, at);
        if let Some(task) = task {
            self.sight_offers(&bay, task, &mut offers);
        }
        let read = task.and_then(|task| self.best_read(&bay, task));
        let mut doing = Doing { bay: &bay, words, offers: &mut offers, read };
        if let Some(task) = task {
            doing.task(task);
        }
        doing.beside(task);
        offers.made()
    }

    /// A job to begin or to take up, where none is in the bay.
    pub(super) fn begin(&self, offers: &mut Offers<'_>) {
        let words = offers.words;
        let parked = self.book.jobs.iter().rev().filter(|job| job.status == Status::Parked);
        for job in parked {
            let vehicle = self.book.vehicle(job.vehicle).map(|vehicle| vehicle.name.clone()).unwrap_or_default();
            let args = [("job", job.number.to_string().into()), ("vehicle", vehicle.into())];
            let label = words.text("do-resume-this-job", &args);
            let form = Form::of("resume-job").with("job", job.number);
            let code = format!("resume-job-{}", job.number);
            offers.labelled(&code, label, Weight::Main, None, form, super::offer::Leads::Said);
        }
        // What was said last can be taken back also when it ended a job.
        if !self.book.jobs.is_empty() {
            offers.offer("undo", Weight::Aside, None, Form::of("undo"));
        }
    }

    pub(super) fn plan_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let Some(bay) = self.bay() else { return Vec::new() };
        let layout = &bay.vehicle.layout;
        let place = |at: Place| (layout.name(at, words.speech().letters), words.place_spoken(layout, at));
        let mut offers = Offers::new(words, &Where::Plan, head, &place);
        if bay.to_answer(Decision::Pattern) || bay.step_for(crate::procedure::Ask::Plan).is_none() {
            return Vec::new();
        }
        if let Ok(planned) = planning::answer(&bay, self.host.now().day()) {
            let named = |(plan, number): (&crate::rotation::Plan, usize)| (number, words.pattern(plan.pattern.code()));
            let plans: Vec<_> = planned.answer.plans.iter().zip(1..).map(named).collect();
            Doing { bay: &bay, words, offers: &mut offers, read: None }.plans(&plans);
        }
        offers.made()
    }

    /// The plans of the job in the bay, each drawn.
    ///
    /// # Errors
    /// As [`plans`](Self::plans).
    pub fn plan_screen(&self, speech: Speech) -> Result<PlanScreen, Trouble> {
        let words = Words::new(speech);
        let plans = self.plans(speech)?;
        let bay = self.bay().ok_or_else(|| Trouble::mend(&words, "trouble-no-job", &[]))?;
        let layout = &bay.vehicle.layout;
        let chosen = bay.job.plan().map(|(_, moves)| moves.to_vec());
        let card = |line: &PlanLine| {
            let moves: Vec<(Place, Place)> =
                line.moves.iter().filter_map(|(from, to)| Some((layout.parse(from)?, layout.parse(to)?))).collect();
            let mark = |at: Place| {
                let from = moves.iter().find(|(_, to)| *to == at).map_or(at, |(from, _)| *from);
                let tire = bay.job.fitted.get(&from)?;
                bay.job.known_by(*tire).map(str::to_owned)
            };
            let is_chosen = chosen.as_ref().is_some_and(|chosen| {
                let moved: Vec<_> = chosen.iter().filter(|m| m.from != m.to).map(|m| (m.from, m.to)).collect();
                moved.len() == moves.len() && moves.iter().all(|pair| moved.contains(pair))
            });
            let spoken = line.moves.iter().map(|(from, to)| {
                words.text(
                    "move-spoken",
                    &[
                        ("from", spoken_place(&words, layout, from).into()),
                        ("to", spoken_place(&words, layout, to).into()),
                    ],
                )
            });
            let spoken = words.list(spoken);
            let spoken = if spoken.is_empty() { words.text("move-none", &[]) } else { spoken };
            let hung = |at: Place| is_chosen && bay.job.mark_fits(at) == Some(true);
            PlanCard {
                plan: line.plan,
                pattern: line.pattern.clone(),
                name: line.name.clone(),
                drawing: VehicleDrawing::of(layout, &moves, &mark, &hung, spoken, &words),
                left: line.left.clone(),
                why: line.why.clone(),
                chosen: is_chosen,
            }
        };
        let notes = [plans.look.clone(), plans.unknown.clone(), plans.next_visit.clone()].into_iter().flatten();
        Ok(PlanScreen {
            shout: plans.shout.clone(),
            plans: plans.plans.iter().map(card).collect(),
            refused: plans.refused.clone(),
            notes: plans.notes.iter().cloned().chain(notes).collect(),
            actions: self.actions(&Where::Plan, &words)?,
        })
    }

    /// The order of lifts of the job in the bay.
    ///
    /// # Errors
    /// As [`lifts`](Self::lifts).
    pub fn lifts_screen(&self, speech: Speech) -> Result<LiftsScreen, Trouble> {
        let lifts = self.lifts(speech)?;
        Ok(LiftsScreen { sentence: lifts.sentence, lifts: lifts.actions, notes: lifts.notes })
    }

    /// What is not as it should be in a job: the one in the bay, else the last one.
    ///
    /// # Errors
    /// When there is no job, or the book can't be read.
    pub fn findings_screen(&self, job: Option<usize>, speech: Speech) -> Result<FindingsScreen, Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        let layout = self.book.vehicle(job.vehicle).map(|vehicle| &vehicle.layout);
        let line = |finding: &crate::inspect::Finding| {
            let sentence = words.finding(finding, &self.book);
            let at =
                finding.at.and_then(|at| Some((layout?.name(at, speech.letters), words.place_spoken(layout?, at))));
            let state = words.state(finding.state);
            let spoken = match &at {
                Some((_, spoken)) => format!("{spoken}. {state}. {sentence}"),
                None => format!("{state}. {sentence}"),
            };
            FindingLine {
                state: finding.state.code().to_owned(),
                state_text: state,
                at: at.map(|(name, _)| name),
                sentence,
                spoken,
            }
        };
        let findings: Vec<_> = crate::inspect::inspect(&self.book, job, job.rules()).iter().map(line).collect();
        let screen = FindingsScreen {
            empty: findings.is_empty().then(|| words.text("findings-none", &[])),
            findings,
            limits: words.limits(job.chosen()),
        };
        self.answered(screen, &words)
    }

    /// The log of a job, with what can be told anew or taken back.
    ///
    /// # Errors
    /// When there is no such job, or the book can't be read.
    pub fn log_screen(&self, job: Option<usize>, speech: Speech) -> Result<LogScreen, Trouble> {
        let words = Words::new(speech);
        Ok(LogScreen { lines: self.log(job, speech)?, actions: self.actions(&Where::Log { job }, &words)? })
    }

    pub(super) fn log_offers(
        &self,
        job: Option<usize>,
        head: Option<Digest>,
        words: &Words,
    ) -> Result<Vec<Offer>, Trouble> {
        let job = self.job(job).ok_or_else(|| Trouble::mend(words, "trouble-no-such-job", &[]))?;
        let Some(layout) = self.book.vehicle(job.vehicle).map(|vehicle| &vehicle.layout) else { return Ok(Vec::new()) };
        let place = |at: Place| (layout.name(at, words.speech().letters), words.place_spoken(layout, at));
        let mut offers = Offers::new(words, &Where::Log { job: Some(job.number) }, head, &place);
        let photos = crate::engine::act::photos_of(job).len();
        if photos > 0 {
            let photo = Slot::count(words, "photo", 1, u32::try_from(photos).unwrap_or(u32::MAX)).required();
            let form =
                Form::of("cover").with("job", job.number).ask(photo).ask(Slot::text(words, "boxes", FieldKind::Lines));
            offers.offer("cover", Weight::Aside, None, form);
        }
        // Only the job in the bay can be corrected.
        if let Some(bay) = self.bay().filter(|bay| bay.job.id == job.id) {
            let context = FactContext::of_job(&self.book, job, self.procedure_of(job));
            let open = job
                .lines
                .iter()
                .zip(1..)
                .filter(|(line, _)| line.corrected_by.is_none() && !matches!(line.fact, Fact::JobOpened { .. }));
            let lines: Vec<(usize, String)> = open.map(|(line, number)| (number, words.line(line, &context))).collect();
            Doing { bay: &bay, words, offers: &mut offers, read: None }.lines(&lines);
        }
        Ok(offers.made())
    }
}

fn spoken_place(words: &Words, layout: &crate::vehicle::Layout, name: &str) -> String {
    layout.parse(name).map_or_else(|| name.to_owned(), |at| words.place_spoken(layout, at))
}

/// The photo whose camera was opened last and that never came.
fn pending(bay: &Bay<'_>) -> Option<(crate::entry::PhotoOf, Option<Place>)> {
    bay.job.lines.iter().rev().find_map(|line| match &line.fact {
        Fact::PhotoTaken { .. } => Some(None),
        Fact::PhotoPending { of, at, .. } => Some(Some((*of, *at))),
        _ => None,
    })?
}
