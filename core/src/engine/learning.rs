//! Why a decision is as it is, what a learner did, and what waits for an instructor.

use serde::Serialize;

use super::view::PersonLine;
use super::{Engine, Trouble, TroubleKind, planning};
use crate::calendar::Day;
use crate::entry::{Answer, Decision, Entry, Fact, Kind, Learned, Shelf};
use crate::fastening;
use crate::ident::Digest;
use crate::learning::{competences, jobs_of};
use crate::lifting::{Act, Gear};
use crate::logbook::{Book, Job, Person};
use crate::photos::Rendition;
use crate::procedure::{Bay, Procedure};
use crate::report;
use crate::report::bundle::{self, BundleError, Contents, Named, is_taken};
use crate::report::paper::Sheet;
use crate::rotation::{Note, Reason};
use crate::source::Source;
use crate::vehicle::Drive;
use crate::words::{Speech, Words};

/// Why a decision is as it is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WhyView {
    /// The decision's code.
    pub decision: &'static str,
    /// The core's answer.
    pub answer: String,
    /// What speaks for it.
    pub evidence: Vec<String>,
    /// What speaks against it, or was refused, or has to be known about it.
    pub against: Vec<String>,
    /// The rule by which it was decided.
    pub rule: String,
    /// Where rule and figures come from, and how far to trust it.
    pub source: Vec<String>,
}

/// How a person stands with a competence.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StandingLine {
    /// The competence's code.
    pub competence: String,
    /// In words.
    pub name: String,
    /// In so many jobs done with own hands.
    pub done: usize,
    /// So many of them practice.
    pub practice: usize,
    /// In so many jobs seen by an instructor.
    pub seen: usize,
    /// Who signed, and in how many jobs.
    pub signed_by: Vec<(String, usize)>,
    /// All of it in a sentence.
    pub text: String,
}

/// A learner's answer beside the core's.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AnswerLine {
    /// The job's number.
    pub job: usize,
    /// The decision's code.
    pub decision: &'static str,
    /// Both answers, and whether they are the same, in a sentence.
    pub text: String,
    /// Whether they are the same; none where the core had none.
    pub same: Option<bool>,
}

/// What a learner has done.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LearnerView {
    /// Who.
    pub person: PersonLine,
    /// In so many jobs.
    pub jobs: usize,
    /// Competences in the order of a visit.
    pub competences: Vec<StandingLine>,
    /// Answers, oldest first.
    pub answers: Vec<AnswerLine>,
}

/// A learner's bundle, as it was read.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BundleView {
    /// The day it was made.
    pub made: String,
    /// How many entries are in it, each verified.
    pub entries: usize,
    /// How many photos, each verified.
    pub photos: usize,
    /// What the learner did.
    pub learner: LearnerView,
    /// What the bundle proves, and what not.
    pub proves: String,
}

/// A step that waits for an instructor's signature.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WaitingLine {
    /// The job's number.
    pub job: usize,
    /// The step's id.
    pub step: String,
    /// Where.
    pub at: Option<String>,
    /// Whose hands did it.
    pub learner: String,
    /// What an instructor must have seen.
    pub text: String,
}

/// The core's answer to a decision as it stands, in a [`Learned`] without a learner's; none when it has none yet.
pub(super) fn core_answer(bay: &Bay<'_>, today: Day, decision: Decision) -> Option<Learned> {
    match decision {
        Decision::Drive => {
            let drive = bay.drive();
            Some(Learned::Drive { answer: drive, core: (drive != Drive::Unknown).then_some(drive) })
        }
        Decision::Pattern => {
            let answer = planning::answer(bay, today).ok()?.answer;
            let code = answer.plans.first()?.pattern.code().to_owned();
            Some(Learned::Pattern { answer: code.clone(), core: Some(code) })
        }
        Decision::Lifts => {
            let plan = bay.lifts()?.ok()?;
            let raised = plan.actions.into_iter().filter(|action| action.act == Act::Raise);
            let lifts: Vec<_> = raised.map(|action| action.at).collect();
            Some(Learned::Lifts { answer: lifts.clone(), core: Some(lifts) })
        }
        Decision::Order => {
            let order = order(bay)?.0;
            Some(Learned::Order { answer: order.clone(), core: Some(order) })
        }
        Decision::Target => {
            let Some(Shelf::Torque { spec, .. }) = torque(bay) else { return None };
            let (_, wrench) = planning::wrench(bay.book, bay.job)?;
            let target = fastening::target(spec, &wrench).ok()?.target;
            Some(Learned::Target { answer: target, core: Some(target) })
        }
    }
}

/// The order of a wheel's nuts, and whether it is the maker's.
fn order(bay: &Bay<'_>) -> Option<(Vec<u8>, bool)> {
    let printed = match torque(bay) {
        Some(Shelf::Torque { spec, .. }) => spec.order.clone(),
        _ => None,
    };
    match printed {
        Some(order) => Some((order, true)),
        None => Some((fastening::order(bay.studs()?)?, false)),
    }
}

fn torque<'a>(bay: &Bay<'a>) -> Option<&'a Shelf> {
    bay.book.on_shelf(&bay.vehicle.model, Kind::Torque).map(|spec| &spec.shelf)
}

/// Holds back the core's answer until the learner gave one.
pub(super) fn not_before_answer(bay: &Bay<'_>, decision: Decision, words: &Words) -> Result<(), Trouble> {
    if !bay.to_answer(decision) {
        return Ok(());
    }
    Err(Trouble::new(TroubleKind::Held, words, &format!("unmet-answered-first-{}", decision.code()), &[]))
}

impl Engine {
    /// The same by the decision's code.
    ///
    /// # Errors
    /// When there is no such decision, and as [`why`](Self::why).
    pub fn why_coded(&self, code: &str, speech: Speech) -> Result<WhyView, Trouble> {
        let decision = Decision::ALL.into_iter().find(|decision| decision.code() == code.trim());
        let known = || Words::new(speech).list(Decision::ALL.map(|decision| decision.code().to_owned()));
        let unknown = || {
            let args = [("given", super::trouble::clipped(code).into()), ("known", known().into())];
            Trouble::mend(&Words::new(speech), "trouble-decision", &args)
        };
        self.why(decision.ok_or_else(unknown)?, speech)
    }

    /// Why a decision of the job in the bay is as it is: evidence, rule and source.
    ///
    /// # Errors
    /// When no job is open, the learner has not answered yet, or what it rests on is not known yet.
    pub fn why(&self, decision: Decision, speech: Speech) -> Result<WhyView, Trouble> {
        let words = Words::new(speech);
        let bay = self.bay().ok_or_else(|| Trouble::mend(&words, "trouble-no-job", &[]))?;
        not_before_answer(&bay, decision, &words)?;
        let early = || Trouble::mend(&words, &format!("trouble-why-{}", decision.code()), &[]);
        let view = match decision {
            Decision::Drive => why_drive(&bay, &words),
            Decision::Pattern => return self.answered(self.why_pattern(&bay, &words)?, &words),
            Decision::Lifts => why_lifts(&bay, &words).ok_or_else(early)?,
            Decision::Order => why_order(&bay, &words).ok_or_else(early)?,
            Decision::Target => why_target(&bay, &words).ok_or_else(early)?,
        };
        self.answered(view, &words)
    }

    fn why_pattern(&self, bay: &Bay<'_>, words: &Words) -> Result<WhyView, Trouble> {
        use crate::words::Say;
        let answer = planning::answer(bay, self.host.now().day()).map_err(|why| Trouble::said(why.say(words)))?.answer;
        let layout = &bay.vehicle.layout;
        let chosen = bay.job.plan().map(|(code, _)| code.to_owned());
        let plan = answer.plans.iter().find(|plan| Some(plan.pattern.code()) == chosen.as_deref());
        let plan = plan.or_else(|| answer.plans.first());
        let plan = plan.ok_or_else(|| Trouble::mend(words, "trouble-why-pattern", &[]))?;
        let makers = plan.why.contains(&Reason::MakersPattern);
        let shelf = bay.book.on_shelf(&bay.vehicle.model, Kind::Pattern).filter(|_| makers);
        let mut source = vec![shelf.map_or_else(|| words.source(&Source::PRACTICE), |spec| spec.source.clone())];
        source.extend(answer.notes.iter().filter_map(|note| match note {
            Note::SomeSayX { source } => Some(words.source(source)),
            _ => None,
        }));
        let refused = answer.refused.iter().map(|refused| words.refused(refused, layout));
        let notes = answer.notes.iter().map(|note| words.note(note, layout));
        Ok(WhyView {
            decision: Decision::Pattern.code(),
            answer: words.shout(plan, layout),
            evidence: plan.why.iter().map(|why| words.reason(why, layout)).collect(),
            against: refused.chain(notes).collect(),
            rule: words.text("rule-pattern", &[]),
            source,
        })
    }

    /// The person of a name; the only apprentice, or whoever has the hands, when none is named.
    fn learner(&self, name: Option<&str>, words: &Words) -> Result<&Person, Trouble> {
        let people = &self.book.people;
        let known = |name: &str| {
            people.iter().find(|p| p.name.as_deref().is_some_and(|own| own.eq_ignore_ascii_case(name.trim())))
        };
        let mut apprentices = people.iter().filter(|person| person.role == crate::entry::Role::Apprentice);
        let found = match (name, apprentices.next(), apprentices.next()) {
            (Some(name), ..) => known(name),
            (None, Some(only), None) => Some(only),
            _ => None,
        };
        found.ok_or_else(|| {
            let names = words.list(people.iter().filter_map(|person| person.name.clone()));
            match name {
                Some(name) => {
                    let given = ("given", super::trouble::clipped(name).into());
                    Trouble::mend(words, "trouble-unknown-person", &[given, ("names", names.into())])
                }
                None => Trouble::mend(words, "trouble-which-learner", &[("names", names.into())]),
            }
        })
    }

    /// What a learner has done, and what instructors signed of it.
    ///
    /// # Errors
    /// When there is no such person; without a name, when there is not one apprentice.
    pub fn learner_view(&self, name: Option<&str>, speech: Speech) -> Result<LearnerView, Trouble> {
        let words = Words::new(speech);
        let person = self.learner(name, &words)?;
        self.answered(learner_of(&self.book, &self.procedures, person, &words), &words)
    }

    /// A learner's logbook as a bundle to take along; see [`report::bundle`].
    ///
    /// # Errors
    /// As [`learner_view`](Self::learner_view), and when an entry can't be read.
    pub fn learner_bundle(&self, name: Option<&str>, speech: Speech) -> Result<Vec<u8>, Trouble> {
        let words = Words::new(speech);
        let person = self.learner(name, &words)?;
        let jobs = jobs_of(&self.book, person.id);
        let html = self.learner_page(name, speech)?;
        let pdf = super::ask::on_paper(&html, Sheet::default(), speech)?;
        let mut people = vec![person.id];
        let (mut tools, mut photos) = (Vec::new(), Vec::new());
        for job in &jobs {
            tools.extend(job.tools());
            for line in &job.lines {
                people.extend([line.author, line.hands]);
                match &line.fact {
                    Fact::StepsSeen { by, .. } => people.push(*by),
                    Fact::PhotoTaken { photo, .. } if line.hands == person.id => photos.push(*photo),
                    _ => {}
                }
            }
        }
        let of_jobs = |entry: &Entry| {
            let about = |job: &Job| entry.fact().job() == Some(job.id);
            jobs.iter().any(|job| about(job)) && is_taken(entry.fact())
        };
        let around = |entry: &Entry| match entry.fact() {
            Fact::PersonAdded { person, .. } => people.contains(person),
            Fact::VehicleAdded { vehicle, .. } | Fact::TireFitted { vehicle, job: None, .. } => {
                jobs.iter().any(|job| job.vehicle == *vehicle)
            }
            Fact::ToolAdded { tool, .. } => tools.contains(tool),
            Fact::SpecificationRecorded { model, .. } => jobs.iter().any(|job| {
                self.book.vehicle(job.vehicle).is_some_and(|known| known.model.eq_ignore_ascii_case(model.trim()))
            }),
            _ => false,
        };
        let mut entries = self.store.entries().map_err(|why| Trouble::of_store(&why, &words))?;
        // A line that was taken back is told by no page; here it stays, with what took it back.
        let withdrawn = |entry: &Entry| match entry.fact() {
            Fact::Withdrawn { target, .. } => jobs.iter().any(|job| job.lines.iter().any(|line| line.entry == *target)),
            _ => false,
        };
        entries.retain(|entry| of_jobs(entry) || around(entry) || withdrawn(entry));
        let named = self.book.people.iter().filter(|known| people.contains(&known.id));
        let named = named.map(|known| Named { id: known.id, name: known.name.clone(), role: known.role });
        photos.sort_unstable();
        photos.dedup();
        let copy = |id: Digest| {
            let jpeg = self.photos.share_covered(id, Rendition::Large, self.book.covers(id)).ok()?;
            Some((id, jpeg))
        };
        let contents = Contents {
            made: self.host.now(),
            learner: person.id,
            people: named.collect(),
            entries,
            html,
            pdf,
            photos: photos.into_iter().filter_map(copy).collect(),
        };
        let bundle = bundle::write(&contents).map_err(|why| of_bundle(&why, &words))?;
        self.answered(bundle, &words)
    }

    /// Reads a learner's bundle, verifies every part, and says what is in it. No book is needed.
    ///
    /// # Errors
    /// When it is no bundle, a newer one, or damaged.
    pub fn read_learner_bundle(bytes: &[u8], speech: Speech) -> Result<BundleView, Trouble> {
        let words = Words::new(speech);
        let read = bundle::read(bytes).map_err(|why| of_bundle(&why, &words))?;
        let book = read.book();
        let procedures = crate::procedure::built_in().unwrap_or_default();
        let at = bundle::BundleError::Damaged { at: "manifest.json".to_owned() };
        let person = book.person(read.learner).ok_or_else(|| of_bundle(&at, &words))?;
        Ok(BundleView {
            made: read.made.day().to_string(),
            entries: read.entries.len(),
            photos: read.photos.len(),
            learner: learner_of(&book, &procedures, person, &words),
            proves: words.text("learner-bundle-proves", &[]),
        })
    }

    /// Whether a person of this name has set a code: then the old one is asked before a new one.
    pub fn has_code(&self, name: &str) -> bool {
        let named = |person: &&Person| person.name.as_deref().is_some_and(|own| own.eq_ignore_ascii_case(name.trim()));
        self.book.people.iter().find(named).is_some_and(|person| person.code.is_some())
    }

    /// What waits for an instructor's signature, in every job that is open or parked.
    ///
    /// # Errors
    /// When an entry that is needed can't be read.
    pub fn waiting(&self, speech: Speech) -> Result<Vec<WaitingLine>, Trouble> {
        let words = Words::new(speech);
        let mut waiting = Vec::new();
        for job in self.book.jobs.iter().filter(|job| job.is_running()) {
            let Some(bay) = self.procedure_of(job).and_then(|procedure| Bay::new(procedure, &self.book, job)) else {
                continue;
            };
            let layout = &bay.vehicle.layout;
            waiting.extend(bay.to_be_seen().into_iter().filter(|seen| seen.by.is_none()).map(|seen| WaitingLine {
                job: job.number,
                step: seen.step.id.clone(),
                at: seen.at.map(|at| layout.name(at, speech.letters)),
                learner: words.person(&self.book, seen.learner),
                text: words.to_see(seen.step.asks, layout, seen.at),
            }));
        }
        self.answered(waiting, &words)
    }

    /// A learner's logbook to hand in: one self-contained HTML page with jobs, photos, answers and signatures.
    ///
    /// # Errors
    /// As [`learner_view`](Self::learner_view).
    pub fn learner_page(&self, name: Option<&str>, speech: Speech) -> Result<String, Trouble> {
        let words = Words::new(speech);
        let person = self.learner(name, &words)?;
        let photo = |id: Digest| self.photos.share_covered(id, Rendition::Large, self.book.covers(id)).ok();
        let page = report::learner(&self.book, person, &self.procedures, self.host.now().day(), &words, &photo);
        self.answered(page, &words)
    }

    /// The same as a PDF; see [`report::paper`].
    ///
    /// # Errors
    /// As [`learner_page`](Self::learner_page).
    pub fn learner_pdf(&self, name: Option<&str>, sheet: Sheet, speech: Speech) -> Result<Vec<u8>, Trouble> {
        super::ask::on_paper(&self.learner_page(name, speech)?, sheet, speech)
    }
}

/// What a learner of a book has done.
fn learner_of(book: &Book, procedures: &[Procedure], person: &Person, words: &Words) -> LearnerView {
    let asks = |job: &Job, step: &str| {
        let procedure = procedures.iter().find(|procedure| procedure.id == job.procedure)?;
        Some(procedure.step(step)?.asks)
    };
    let competences = competences(book, person.id, &asks)
        .iter()
        .map(|standing| StandingLine {
            competence: words.competence_code(standing.competence),
            name: words.competence(standing.competence),
            done: standing.done,
            practice: standing.practice,
            seen: standing.seen,
            signed_by: standing.signed_by.iter().map(|(by, jobs)| (words.person(book, *by), *jobs)).collect(),
            text: words.standing(standing, book),
        })
        .collect();
    let mut answers = Vec::new();
    for job in &book.jobs {
        let Some(vehicle) = book.vehicle(job.vehicle) else { continue };
        for line in job.lines.iter().filter(|line| line.hands == person.id || line.author == person.id) {
            if let Fact::AnswerGiven { learned, .. } = &line.fact {
                answers.push(AnswerLine {
                    job: job.number,
                    decision: learned.decision().code(),
                    text: words.both_answers(learned, &vehicle.layout),
                    same: crate::learning::agrees(learned),
                });
            }
        }
    }
    let line = PersonLine { name: words.person(book, person.id), role: words.role(person.role) };
    LearnerView { person: line, jobs: jobs_of(book, person.id).len(), competences, answers }
}

fn of_bundle(why: &BundleError, words: &Words) -> Trouble {
    match why {
        BundleError::NotABundle => Trouble::mend(words, "trouble-no-bundle", &[]),
        BundleError::Newer { version } => {
            Trouble::mend(words, "trouble-newer-bundle", &[("version", version.to_string().into())])
        }
        BundleError::Damaged { at } => Trouble::mend(words, "trouble-bundle-damaged", &[("at", at.as_str().into())]),
        BundleError::Unpacked { why } => {
            Trouble::new(TroubleKind::Report, words, "trouble-bundle-unpacked", &[("why", why.as_str().into())])
        }
    }
}

fn why_drive(bay: &Bay<'_>, words: &Words) -> WhyView {
    let (verdict, layout) = (bay.verdict(), &bay.vehicle.layout);
    let ground = |ground: &crate::drive::Ground| words.ground(ground, layout);
    let manual = bay.book.on_shelf(&bay.vehicle.model, Kind::Drive);
    let mut evidence: Vec<String> = verdict.for_.iter().map(ground).collect();
    let (answer, source) = match manual.map(|spec| (&spec.shelf, &spec.source)) {
        Some((Shelf::Drive { drive }, source)) => {
            let drive = ("drive", words.drive(*drive).into());
            evidence.insert(0, words.text("evidence-manual", &[drive]));
            (words.text("why-by-manual", &[("drive", words.drive(bay.drive()).into())]), source.clone())
        }
        _ => (words.verdict(&verdict, layout), words.source(&Source::PRACTICE)),
    };
    let silent = verdict.silent.iter().map(ground);
    WhyView {
        decision: Decision::Drive.code(),
        answer,
        evidence,
        against: verdict.against.iter().map(ground).chain(silent).collect(),
        rule: words.text("rule-drive", &[]),
        source: vec![source],
    }
}

fn why_lifts(bay: &Bay<'_>, words: &Words) -> Option<WhyView> {
    use crate::words::Say;
    let layout = &bay.vehicle.layout;
    let plan = bay.lifts()?.ok()?;
    let gear = bay.job.last(|fact| match fact {
        Fact::StepDone { answer: Answer::Choice(code), .. } if Gear::of_code(code).is_some() => {
            Some(words.choice(code))
        }
        _ => None,
    });
    let gear = gear.map(|gear| words.text("why-gear", &[("gear", gear.into())]));
    let raised =
        plan.actions.iter().filter(|action| action.act == Act::Raise).map(|action| words.action(action, layout));
    Some(WhyView {
        decision: Decision::Lifts.code(),
        answer: words.lifts(&plan),
        evidence: gear.into_iter().chain(raised).collect(),
        against: plan.notes.iter().map(|note| note.say(words)).collect(),
        rule: words.text("rule-lifts", &[]),
        source: vec![words.source(&Source::PRACTICE)],
    })
}

fn why_order(bay: &Bay<'_>, words: &Words) -> Option<WhyView> {
    let (order, makers) = order(bay)?;
    let shown = order.iter().map(u8::to_string).collect::<Vec<_>>().join(" ");
    let spec = bay.book.on_shelf(&bay.vehicle.model, Kind::Torque).filter(|_| makers);
    let id = if makers { "tighten-order-makers" } else { "tighten-order" };
    Some(WhyView {
        decision: Decision::Order.code(),
        answer: words.text(id, &[("order", shown.into())]),
        evidence: vec![words.text("why-studs", &[("count", order.len().into())])],
        against: Vec::new(),
        rule: words.text("rule-order", &[]),
        source: vec![spec.map_or_else(|| words.source(&fastening::OPPOSITE_FIRST), |spec| spec.source.clone())],
    })
}

fn why_target(bay: &Bay<'_>, words: &Words) -> Option<WhyView> {
    let on_shelf = bay.book.on_shelf(&bay.vehicle.model, Kind::Torque)?;
    let Shelf::Torque { spec, .. } = &on_shelf.shelf else { return None };
    let (tool, wrench) = planning::wrench(bay.book, bay.job)?;
    let target = fastening::target(spec, &wrench).ok()?;
    let [answer, band] = words.target_told(&target);
    let printed = words.text("why-printed", &[("printed", words.torque_spec(spec).into())]);
    let tool = bay.book.tool(tool);
    let papers = tool.map(|tool| {
        let told = words.list(words.tool_papers(&tool.what).into_iter().chain(words.tool_calibration(tool)));
        words.text("tool-line", &[("name", tool.name.as_str().into()), ("told", told.into())])
    });
    let unit = wrench.step.unit();
    Some(WhyView {
        decision: Decision::Target.code(),
        answer,
        evidence: [printed].into_iter().chain(papers).chain([band]).collect(),
        against: target.problems.iter().map(|problem| words.target_problem(problem, unit)).collect(),
        rule: words.text("rule-target", &[]),
        source: vec![on_shelf.source.clone()],
    })
}
