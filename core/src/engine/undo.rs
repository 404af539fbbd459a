//! What this device said last, to be taken back and said again.

use super::{Command, Engine, Trouble, UndoLine};
use crate::entry::{Answer, Entry, Fact, Nuts, OdometerNote, ReadBy, Turned};
use crate::ident::TireId;
use crate::logbook::{Book, Job, Span};
use crate::measure::{Depth, DepthUnit, plain};
use crate::store::{Store, StoreError};
use crate::vehicle::{Letters, Place};
use crate::words::{FactContext, Speech, Words};

/// How many entries are looked at in one go.
const STEP: u64 = 200;
/// How many commands are listed.
const LISTED: usize = 20;

/// One command, by the entries that it came to.
#[derive(Debug, Clone)]
pub(super) struct Spoken {
    pub entries: Vec<Entry>,
}

impl Spoken {
    /// It took other things back.
    fn is_undo(&self) -> bool {
        self.entries.iter().all(|entry| matches!(entry.fact(), Fact::Withdrawn { undo: true, .. }))
    }
}

/// The last commands that were said in this device's own stream and still stand, newest first.
/// Codes, wrong ones among them, and a learner's first answers are not taken back.
pub(super) fn spoken(store: &Store, book: &Book, most: usize) -> Result<Vec<Spoken>, StoreError> {
    let head = store.head()?;
    let (mut last, mut found, mut begun) = (head.number, Vec::new(), Vec::new());
    while last > 0 && found.len() < most {
        let first = last.saturating_sub(STEP).saturating_add(1).max(1);
        let entries = store.stretches(&[Span { stream: head.stream, first, last }])?;
        for entry in entries.into_iter().rev() {
            let starts = entry.envelope().part == 0;
            begun.push(entry);
            if starts {
                begun.reverse();
                let command = Spoken { entries: std::mem::take(&mut begun) };
                let stays = command.entries.iter().any(|entry| {
                    let fact = entry.fact();
                    matches!(fact, Fact::CodeSet { .. } | Fact::CodeRefused { .. } | Fact::AnswerGiven { .. })
                });
                let gone = command.entries.iter().all(|entry| book.is_taken_back(entry.id()));
                if !gone && !stays && !command.is_undo() && found.len() < most {
                    found.push(command);
                }
            }
        }
        last = first.saturating_sub(1);
    }
    Ok(found)
}

impl Engine {
    /// What can be taken back, newest first: each time the first of them is.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn undo_list(&self, speech: Speech) -> Result<Vec<UndoLine>, Trouble> {
        let words = Words::new(speech);
        let spoken = spoken(&self.store, &self.book, LISTED).map_err(|why| Trouble::of_store(&why, &words))?;
        let line = |command: &Spoken| {
            let first = command.entries.first().map(Entry::envelope);
            UndoLine {
                time: first.map(|said| said.time.wall.to_string()).unwrap_or_default(),
                author: first.map(|said| words.person(&self.book, said.author)).unwrap_or_default(),
                said: sentences(command, &self.book, &words),
            }
        };
        Ok(spoken.iter().map(line).collect())
    }
}

/// What a command said, entry by entry.
pub(super) fn sentences(command: &Spoken, book: &Book, words: &Words) -> Vec<String> {
    let say = |entry: &Entry| {
        let job = entry.fact().job().and_then(|job| book.job(job));
        let context = match job {
            Some(job) => FactContext::of_job(book, job, None),
            None => FactContext::of_book(book),
        };
        words.fact(entry.fact(), &context)
    };
    command.entries.iter().map(say).collect()
}

/// The command that says the same again, where what was said tells all of it: the
/// step that was reopened comes filled.
pub(super) fn again(command: &Spoken, book: &Book) -> Option<Command> {
    let [first, rest @ ..] = command.entries.as_slice() else { return None };
    let job = book.job(first.fact().job()?)?;
    let vehicle = book.vehicle(job.vehicle)?;
    let name = |at: Place| vehicle.layout.name(at, Letters::FrontFirst);
    Some(match first.fact() {
        Fact::OdometerRead { reading, note, .. } => Command::Odometer {
            reading: reading.to_string(),
            estimated: *note == Some(OdometerNote::Estimated),
            replaced: *note == Some(OdometerNote::ClusterReplaced),
        },
        Fact::ComplaintHeard { complaint, .. } => Command::Complain { text: complaint.text.clone() },
        Fact::DamageSeen { at, text, photo: None, .. } => {
            Command::Damage { at: at.map(name), text: text.clone(), photo: None }
        }
        Fact::SidewallRead { tire, at, side, text, looks, by, .. } => Command::Sidewall {
            at: name(*at),
            side: *side,
            text: text.clone(),
            looks: *looks,
            coming: comes(job, *tire),
            by: (*by != ReadBy::Typed).then(|| by.clone()),
        },
        Fact::MarkChalked { at, tire, mark, .. } => {
            Command::Mark { at: name(*at), mark: Some(mark.clone()), coming: comes(job, *tire) }
        }
        Fact::TreadMeasured { tire, at, grooves, lowest, reason, .. } => {
            let seen = grooves.iter().flatten().copied().reduce(|low, depth| if depth < low { depth } else { low });
            Command::Tread {
                at: name(*at),
                depths: depths(grooves),
                lowest: (seen != Some(*lowest)).then(|| lowest.to_string()),
                reason: reason.clone(),
                coming: comes(job, *tire),
            }
        }
        Fact::PressureMeasured { at, pressure, set, cold, .. } => {
            Command::Pressure { at: name(*at), pressure: pressure.to_string(), set: *set, cold: *cold }
        }
        Fact::MarkRead { at, mark, .. } => Command::Hang { at: name(*at), mark: mark.clone() },
        Fact::NutTightened { at, nuts, pass, turned, .. } if rest.is_empty() => Command::Nuts {
            at: name(*at),
            pass: *pass,
            nut: if let Nuts::One(nut) = nuts { Some(*nut) } else { None },
            moved: turned.map(|turned| turned == Turned::Moved),
        },
        Fact::StepDone { step, at, answer, .. } => Command::Answer {
            step: Some(step.clone()),
            at: at.map(name),
            answer: match answer {
                Answer::Seen => "seen".to_owned(),
                Answer::Choice(text) | Answer::Text(text) => text.clone(),
                Answer::Count(count) => count.to_string(),
            },
        },
        Fact::StepSkipped { step, at, reason, .. } => Command::Skip {
            step: Some(step.clone()),
            at: at.filter(|_| rest.is_empty()).map(name),
            reason: reason.clone(),
        },
        Fact::GateOpened { step, at, reason, .. } => {
            Command::OpenGate { step: Some(step.clone()), at: at.map(name), reason: reason.clone() }
        }
        Fact::JobParked { reason, .. } => Command::ParkJob { reason: reason.clone() },
        Fact::JobClosed { reason, .. } => Command::CloseJob { reason: reason.clone() },
        Fact::WheelOff { at, .. } if rest.is_empty() => Command::WheelOff { at: name(*at) },
        _ => return None,
    })
}

fn comes(job: &Job, tire: TireId) -> bool {
    job.coming().values().any(|laid| *laid == tire)
}

/// Depths as a person types them: `7 6 7 /32`.
fn depths(grooves: &[Vec<Depth>]) -> String {
    let unit = grooves.iter().flatten().next().map(|depth| depth.unit());
    let places = grooves.iter().map(|place| {
        let values: Vec<String> = place.iter().map(|depth| plain(depth.value())).collect();
        values.join(" ")
    });
    let places: Vec<String> = places.collect();
    let unit = if unit == Some(DepthUnit::ThirtySecond) { "/32" } else { "mm" };
    format!("{} {unit}", places.join("; "))
}
