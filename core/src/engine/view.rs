//! What a shell shows: finished, worded records.

use serde::Serialize;

use super::Command;
use crate::limits::{Region, Season};
use crate::logbook::Status;
use crate::words::{ForecastView, Quantity};

/// What a command changed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Change {
    /// Ids of the new entries.
    pub entries: Vec<String>,
    /// What was understood, and what to know about it, in sentences.
    pub said: Vec<String>,
    /// The next thing to do in the bay.
    pub next: Option<NextView>,
    /// What was taken back, to be said again: the step that it answered is open again.
    pub again: Option<Command>,
}

/// Something that can be taken back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct UndoLine {
    /// When it was said, as far as the device knew.
    pub time: String,
    /// Who said it.
    pub author: String,
    /// What was said, in sentences.
    pub said: Vec<String>,
}

/// What is erased.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Erased {
    /// A person's name and phone number.
    Person,
    /// A vehicle's plate.
    Plate,
}

/// The one next thing to do.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NextView {
    /// The job's number.
    pub job: usize,
    /// The vehicle's name.
    pub vehicle: String,
    /// `open` or `parked`.
    pub status: Status,
    /// Whose hands do the steps.
    pub hands: String,
    /// Who else can lend hands: two taps away.
    pub crew: Vec<String>,
    /// The step's id; none when all steps are over.
    pub step: Option<String>,
    /// What to do, a sentence.
    pub sentence: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Where.
    pub at: Option<String>,
    /// What is asked: the ask's code.
    pub asks: Option<String>,
    /// The choices, code and words.
    pub choices: Vec<(String, String)>,
    /// What the gate waits for; empty when the step is free.
    pub gate: Vec<String>,
    /// The cautions that stand before the step.
    pub caution: Vec<CautionLine>,
    /// Where it is answered, when that is not at the vehicle: in the van.
    pub van: Option<String>,
    /// Who holds the other side, where that is still to be named: a wheel for two people.
    pub two: Option<String>,
    /// The decision that the learner answers first, as a code.
    pub answer_first: Option<String>,
    /// The instructor whose signature the step waits for.
    pub seen_by: Option<String>,
    /// It is asked of the wheel laid out there that goes on.
    pub coming: bool,
    /// What the manual or a label prints that belongs to the step, when the step shows it.
    pub shows: Option<String>,
    /// Whether it may be skipped with a reason.
    pub may_skip: bool,
    /// The nuts, when the step turns nuts.
    pub nuts: Option<NutView>,
    /// Where it stands in the order of lifts, and what else belongs to it.
    pub turn: Option<TurnView>,
    /// Steps over.
    pub done: usize,
    /// All steps that apply.
    pub of: usize,
    /// The last step that was answered.
    pub last: Option<String>,
}

/// Whose limits of tread depth hold.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitsView {
    /// In the book.
    pub book: LimitsLine,
    /// In the job in the bay.
    pub job: Option<LimitsLine>,
}

/// Limits as they hold.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LimitsLine {
    /// Whose limits.
    pub region: Region,
    /// The season before the next visit.
    pub season: Season,
    /// Up to so much above the limit a tire is at the limit.
    pub at_limit: Option<Quantity>,
    /// Up to so much above the limit a tire is to be watched.
    pub watch: Option<Quantity>,
    /// Nothing was chosen: these are the default.
    pub default: bool,
    /// All of it in one sentence.
    pub text: String,
}

/// A caution before a step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CautionLine {
    /// The caution's code.
    pub code: String,
    /// danger, warning, caution or notice, as a word.
    pub signal: String,
    /// The same as a code: `danger`, `warning`, `caution` or `notice`.
    pub signal_code: String,
    /// The sentence.
    pub sentence: String,
    /// It was shown in full earlier in this job.
    pub again: bool,
}

/// Where an action stands in the order of lifts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TurnView {
    /// The action's number, from 1.
    pub n: usize,
    /// How many actions there are.
    pub of: usize,
    /// Which lift it belongs to; 0 before the first.
    pub lift: u32,
    /// How many lifts there are.
    pub lifts: u32,
    /// Where it stands, which tire it handles, and what else belongs to it.
    pub detail: String,
}

/// The order of lifts of a job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LiftsView {
    /// How many lifts, and whether fewer are possible.
    pub sentence: String,
    /// How many lifts.
    pub lifts: u32,
    /// No order has fewer lifts than this.
    pub at_least: u32,
    /// That there is no order with fewer lifts is proved.
    pub proved: bool,
    /// What to do, in order.
    pub actions: Vec<ActionLine>,
    /// What to know about the gear.
    pub notes: Vec<String>,
}

/// One action of the order of lifts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ActionLine {
    /// Its number, from 1.
    pub n: usize,
    /// What is done, as a code.
    #[serde(rename = "do")]
    pub act: String,
    /// Where.
    pub at: Vec<String>,
    /// The sentence, with its place and wheel.
    pub sentence: String,
    /// The cautions before it.
    pub caution: Vec<CautionLine>,
    /// It is done.
    pub done: bool,
}

/// The nuts of one wheel.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NutView {
    /// The order by clock position, 1 at the top, seen from outside.
    pub order: Vec<u8>,
    /// Nuts that this pass has finished.
    pub done: Vec<u8>,
    /// The next nut.
    pub next: Option<u8>,
    /// What the wrench is set to, at the final pass and when it is known.
    pub target: Option<Quantity>,
}

/// One task of the job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TaskLine {
    /// The step's id.
    pub step: String,
    /// Where.
    pub at: Option<String>,
    /// What to do.
    pub sentence: String,
    /// `done`, `skipped`, `ready` or `held`.
    pub state: &'static str,
    /// What the gate waits for, or why it was skipped.
    pub why: Vec<String>,
}

/// One line of the job's log.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LogLine {
    /// Its number, for corrections.
    pub line: usize,
    /// The entry's id.
    pub entry: String,
    /// When, as far as the device knew.
    pub time: String,
    /// The same as a person reads it: the day, hours and minutes in universal time.
    pub said_at: String,
    /// Who said it.
    pub author: String,
    /// The sentence.
    pub sentence: String,
    /// It was corrected since.
    pub corrected: bool,
}

/// The book's front page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BookView {
    /// Vehicles.
    pub vehicles: Vec<VehicleLine>,
    /// People.
    pub people: Vec<PersonLine>,
    /// Jobs, newest first.
    pub jobs: Vec<JobLine>,
    /// Tools by name.
    pub tools: Vec<String>,
    /// How backups stand.
    pub backups: super::BackupView,
    /// What was put away, in words.
    pub archived: Vec<String>,
}

/// A vehicle on the front page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct VehicleLine {
    /// Its name.
    pub name: String,
    /// Make, model and year.
    pub model: String,
    /// Its plate.
    pub plate: Option<String>,
    /// Its class.
    pub class: String,
    /// What the shelf holds for its model, in sentences.
    pub shelf: Vec<String>,
}

/// A person on the front page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PersonLine {
    /// The name.
    pub name: String,
    /// The role, in words.
    pub role: String,
}

/// A job on the front page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JobLine {
    /// Its number.
    pub job: usize,
    /// The vehicle's name.
    pub vehicle: String,
    /// The procedure's title.
    pub title: String,
    /// How it stands.
    pub status: Status,
    /// How it stands, in words.
    pub status_text: String,
    /// The day it was opened.
    pub opened: String,
    /// Practice.
    pub practice: bool,
}

/// The plans of the job in the bay.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlansView {
    /// What a tech can shout across the shop.
    pub shout: String,
    /// Plans, best first.
    pub plans: Vec<PlanLine>,
    /// Patterns that are not allowed, and why.
    pub refused: Vec<String>,
    /// What to look at next when no pattern can be named.
    pub look: Option<String>,
    /// Statements about the whole answer.
    pub notes: Vec<String>,
    /// Why wear rates are not all known, when there is a reading at all; nothing when they are.
    pub unknown: Option<String>,
    /// When to look again, as an odometer figure; nothing without an odometer reading.
    pub next_visit: Option<String>,
}

/// One plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanLine {
    /// Its number, from 1.
    pub plan: usize,
    /// The pattern's code.
    pub pattern: String,
    /// The pattern's name.
    pub name: String,
    /// Moves: from and to, for each wheel that moves.
    pub moves: Vec<(String, String)>,
    /// What each tire will have left, when rates and distances are known.
    pub forecast: Vec<ForecastView>,
    /// The same as one sentence.
    pub left: Option<String>,
    /// Why, in sentences.
    pub why: Vec<String>,
}

/// What is proven and what is not, of a card's file or a book.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ProofView {
    /// Everything that was signed holds.
    pub ok: bool,
    /// What is proven, in sentences; nothing when something does not hold.
    pub proven: Vec<String>,
    /// What is not proven, in sentences.
    pub not_proven: Vec<String>,
    /// What does not hold, and where.
    pub refused: Vec<CheckLine>,
}

/// What checking the book found.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckView {
    /// Nothing is wrong.
    pub ok: bool,
    /// Entries read.
    pub entries: u64,
    /// Photos kept.
    pub photos: usize,
    /// What is wrong.
    pub problems: Vec<CheckLine>,
}

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CheckLine {
    /// Its kind.
    pub kind: String,
    /// Where.
    pub at: String,
    /// The sentence.
    pub sentence: String,
}
