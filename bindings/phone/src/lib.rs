//! What the phone shells may call, exported through uniffi.
//!
//! A shell opens a book, asks it for finished, worded records, and closes it.
//! Everything that thinks is in the core; nothing is computed or worded here.
//! Saying things to the book is not exported yet.

use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use lugbook::calendar::Moment;
use lugbook::engine::{self, Engine};
use lugbook::proof::DeviceKey;
use lugbook::vehicle::Letters;
use lugbook::words::{DecimalMark, Lang, Speech, Units};

uniffi::setup_scaffolding!();

/// What only the phone has.
#[uniffi::export(with_foreign)]
pub trait Device: Send + Sync {
    /// The phone's clock, in Unix milliseconds.
    fn clock_ms(&self) -> i64;
    /// Ten random bytes for a new id.
    fn random(&self) -> Vec<u8>;
    /// The 32 secret bytes that this phone seals with, from its vault: random, made when
    /// they are first asked for, the same ever after, and never in a backup of the phone.
    /// None where the vault can't be had: then nothing is sealed.
    fn secret(&self) -> Option<Vec<u8>>;
}

/// Which language every sentence is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Enum)]
pub enum Language {
    /// English, US shop usage.
    English,
    /// Spanish, US shop usage.
    Spanish,
}

/// In which units readings are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Enum)]
pub enum UnitSystem {
    /// Each in the unit it was read in.
    AsRead,
    /// mm, N·m, kPa, km.
    Metric,
    /// 1/32 in, ft·lb, psi, mi.
    Us,
}

/// How positions of a two-axle vehicle are lettered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Enum)]
pub enum PositionLetters {
    /// FL FR RL RR.
    FrontFirst,
    /// LF RF LR RR.
    SideFirst,
}

/// How a person wants to be spoken to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Record)]
pub struct Manner {
    /// The language.
    pub language: Language,
    /// The units, apart from the language.
    pub units: UnitSystem,
    /// The position letters.
    pub letters: PositionLetters,
}

impl From<Manner> for Speech {
    fn from(manner: Manner) -> Self {
        Self {
            lang: match manner.language {
                Language::English => Lang::En,
                Language::Spanish => Lang::Es,
            },
            units: match manner.units {
                UnitSystem::AsRead => Units::AsRead,
                UnitSystem::Metric => Units::Metric,
                UnitSystem::Us => Units::Us,
            },
            letters: match manner.letters {
                PositionLetters::FrontFirst => Letters::FrontFirst,
                PositionLetters::SideFirst => Letters::SideFirst,
            },
            // The point, as US shops write it in both languages.
            decimal: DecimalMark::Point,
        }
    }
}

/// A refusal, by what the person can do about it, with its sentence.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, uniffi::Error)]
pub enum Refusal {
    /// Say it differently.
    #[error("{sentence}")]
    MendInput {
        /// The sentence.
        sentence: String,
    },
    /// A gate holds it.
    #[error("{sentence}")]
    HeldByGate {
        /// The sentence.
        sentence: String,
    },
    /// Make room on the phone.
    #[error("{sentence}")]
    FreeSpace {
        /// The sentence.
        sentence: String,
    },
    /// Try again.
    #[error("{sentence}")]
    TryAgain {
        /// The sentence.
        sentence: String,
    },
    /// Restore a backup.
    #[error("{sentence}")]
    Restore {
        /// The sentence.
        sentence: String,
    },
    /// Report it.
    #[error("{sentence}")]
    Report {
        /// The sentence.
        sentence: String,
    },
    /// The book was closed.
    #[error("the book is closed")]
    Closed,
}

impl From<engine::Trouble> for Refusal {
    fn from(trouble: engine::Trouble) -> Self {
        let sentence = trouble.sentence;
        match trouble.kind {
            engine::TroubleKind::MendInput => Self::MendInput { sentence },
            engine::TroubleKind::Held => Self::HeldByGate { sentence },
            engine::TroubleKind::FreeSpace => Self::FreeSpace { sentence },
            engine::TroubleKind::TryAgain => Self::TryAgain { sentence },
            engine::TroubleKind::Restore => Self::Restore { sentence },
            engine::TroubleKind::Report => Self::Report { sentence },
        }
    }
}

/// A caution before a step.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct CautionLine {
    /// danger, warning, caution or notice, as a word.
    pub signal: String,
    /// The sentence.
    pub sentence: String,
    /// It was shown in full earlier in this job.
    pub again: bool,
}

/// The one next thing to do in the bay.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct NextStep {
    /// The job's number.
    pub job: u32,
    /// The vehicle's name.
    pub vehicle: String,
    /// Whose hands do the steps.
    pub hands: String,
    /// The step's id; none when all steps are over.
    pub step: Option<String>,
    /// What to do.
    pub sentence: String,
    /// What a screen reader says.
    pub spoken: String,
    /// Where.
    pub at: Option<String>,
    /// What the gate waits for; empty when the step is free.
    pub gate: Vec<String>,
    /// The cautions that stand before it.
    pub cautions: Vec<CautionLine>,
    /// Steps over.
    pub done: u32,
    /// All steps that apply.
    pub of: u32,
}

/// One line of a job's log.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct LogLine {
    /// Its number.
    pub line: u32,
    /// When, as far as the phone knew.
    pub time: String,
    /// Who said it.
    pub author: String,
    /// The sentence.
    pub sentence: String,
    /// It was corrected since.
    pub corrected: bool,
}

/// A job on the front page.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct JobLine {
    /// Its number.
    pub job: u32,
    /// The vehicle's name.
    pub vehicle: String,
    /// The procedure's title.
    pub title: String,
    /// How it stands, in words.
    pub status: String,
    /// The day it was opened.
    pub opened: String,
}

struct Phone(Arc<dyn Device>);

impl engine::Host for Phone {
    fn now(&self) -> Moment {
        Moment::from_unix_ms(self.0.clock_ms())
    }

    fn random(&self) -> [u8; 10] {
        let bytes = self.0.random();
        std::array::from_fn(|at| bytes.get(at).copied().unwrap_or_default())
    }

    fn device_key(&self) -> Option<DeviceKey> {
        let secret = self.0.secret()?.try_into().ok()?;
        Some(DeviceKey::from_secret(secret))
    }
}

/// An open book.
#[derive(Debug, uniffi::Object)]
pub struct Logbook {
    engine: Mutex<Option<Engine>>,
}

fn count(value: usize) -> u32 {
    u32::try_from(value).unwrap_or(u32::MAX)
}

impl Logbook {
    fn engine(&self) -> MutexGuard<'_, Option<Engine>> {
        // A panic elsewhere leaves the book on disk whole; what is held here can still be read.
        self.engine.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn asked<T>(&self, question: impl FnOnce(&Engine) -> Result<T, engine::Trouble>) -> Result<T, Refusal> {
        let engine = self.engine();
        Ok(question(engine.as_ref().ok_or(Refusal::Closed)?)?)
    }
}

#[uniffi::export]
impl Logbook {
    /// Opens the book in a folder, or makes a new one there.
    ///
    /// # Errors
    /// When another program writes the book, the folder can't be used, or what is in it is no book of ours.
    #[uniffi::constructor]
    pub fn open(folder: String, device: Arc<dyn Device>, manner: Manner) -> Result<Arc<Self>, Refusal> {
        let engine = Engine::open(Path::new(&folder), Box::new(Phone(device)), manner.into())?;
        Ok(Arc::new(Self { engine: Mutex::new(Some(engine)) }))
    }

    /// The one next thing to do; none when no job is open.
    ///
    /// # Errors
    /// When the book was closed.
    pub fn next_step(&self, manner: Manner) -> Result<Option<NextStep>, Refusal> {
        self.asked(|engine| {
            Ok(engine.next(manner.into()).map(|next| NextStep {
                job: count(next.job),
                vehicle: next.vehicle,
                hands: next.hands,
                step: next.step,
                sentence: next.sentence,
                spoken: next.spoken,
                at: next.at,
                gate: next.gate,
                cautions: next
                    .caution
                    .into_iter()
                    .map(|line| CautionLine { signal: line.signal, sentence: line.sentence, again: line.again })
                    .collect(),
                done: count(next.done),
                of: count(next.of),
            }))
        })
    }

    /// All jobs, newest first.
    ///
    /// # Errors
    /// When the book was closed.
    pub fn jobs(&self, manner: Manner) -> Result<Vec<JobLine>, Refusal> {
        self.asked(|engine| {
            let line = |job: engine::JobLine| JobLine {
                job: count(job.job),
                vehicle: job.vehicle,
                title: job.title,
                status: job.status_text,
                opened: job.opened,
            };
            Ok(engine.front(manner.into()).jobs.into_iter().map(line).collect())
        })
    }

    /// The log of a job; of the one in the bay when no number is given.
    ///
    /// # Errors
    /// When there is no such job, or the book was closed.
    pub fn log(&self, job: Option<u32>, manner: Manner) -> Result<Vec<LogLine>, Refusal> {
        let job = job.and_then(|job| usize::try_from(job).ok());
        self.asked(|engine| {
            let line = |line: engine::LogLine| LogLine {
                line: count(line.line),
                time: line.time,
                author: line.author,
                sentence: line.sentence,
                corrected: line.corrected,
            };
            Ok(engine.log(job, manner.into())?.into_iter().map(line).collect())
        })
    }

    /// A job's card: one self-contained HTML page.
    ///
    /// # Errors
    /// When there is no such job, or the book was closed.
    pub fn card(&self, job: Option<u32>, manner: Manner) -> Result<String, Refusal> {
        let job = job.and_then(|job| usize::try_from(job).ok());
        self.asked(|engine| engine.card(job, manner.into()))
    }

    /// Closes the book. Using it afterwards is an error.
    pub fn close_book(&self) {
        *self.engine() = None;
    }
}
