//! What the phone shells may call, exported through uniffi.
//!
//! A shell opens an [`Engine`], asks it for finished, worded screens, and hands back
//! what was tapped on them with what was filled in. Everything that thinks is in the
//! core; nothing is computed or worded here. Each body runs on a thread of its own,
//! never on the caller's; a fault inside comes back as a [`Refusal`], and the book is
//! opened anew at the next call.

mod cross;
mod giving;
mod long;
mod manner;
mod reader;
mod refusal;
mod screens;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

use lugbook::calendar::Moment;
use lugbook::engine::{self, Unwatched, Watch};
use lugbook::proof::DeviceKey;
use lugbook::sight::TileReader;
use lugbook::words::Speech;

use cross::Cross;
pub use giving::{Outgoing, OutgoingOf};
pub use long::{LongTask, TaskProgress};
pub use manner::{DecimalSign, Language, Manner, PositionLetters, UnitSystem};
use reader::ReaderOfPhone;
pub use reader::{TextOnTile, TextReader, TextTile};
pub use refusal::Refusal;
pub use screens::*;

uniffi::setup_scaffolding!();

/// What only the phone has.
#[uniffi::export(with_foreign)]
pub trait PhoneHost: Send + Sync {
    /// The phone's clock, in Unix milliseconds.
    fn clock_ms(&self) -> i64;
    /// Ten random bytes for a new id.
    fn random(&self) -> Vec<u8>;
    /// The 32 secret bytes that this phone seals with, from its vault: random, made when
    /// they are first asked for, the same ever after, and never in a backup of the phone.
    /// None where the vault can't be had: then nothing is sealed.
    fn secret(&self) -> Option<Vec<u8>>;
    /// The folder with the models that read photos, as the app brings them; none where it brings none: then sidewalls
    /// are typed.
    fn models(&self) -> Option<String>;
    /// A line for the phone's own log: kinds and times, never a name, a number or a reading.
    fn log(&self, line: String);
}

struct Phone(Arc<dyn PhoneHost>, ReaderOfPhone);

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

    fn models(&self) -> Option<PathBuf> {
        self.0.models().map(PathBuf::from)
    }

    fn tile_reader(&self) -> Option<Arc<dyn TileReader>> {
        self.1.tiles()
    }
}

/// The threads that all work is done on.
pub(crate) fn runtime() -> &'static tokio::runtime::Runtime {
    static RUNTIME: OnceLock<tokio::runtime::Runtime> = OnceLock::new();
    RUNTIME.get_or_init(|| {
        let mut builder = tokio::runtime::Builder::new_multi_thread();
        builder.worker_threads(1).max_blocking_threads(4).thread_name("lugbook").enable_time();
        match builder.build() {
            Ok(runtime) => runtime,
            // Without a thread nothing can be done at all; the shell gets it as a fault.
            Err(why) => panic!("no thread: {why}"),
        }
    })
}

/// How the book stands in this process.
enum Held {
    Open(Box<engine::Engine>),
    /// Let go while the app is in the background, or after a fault inside: opened again at the next call.
    Rests,
    Closed,
}

struct Inside {
    folder: PathBuf,
    host: Arc<dyn PhoneHost>,
    reader: ReaderOfPhone,
    held: Mutex<Held>,
}

impl Inside {
    fn held(&self) -> MutexGuard<'_, Held> {
        // After a fault the book is let go of below; a poisoned lock says nothing more.
        self.held.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn open(&self, speech: Speech) -> Result<Box<engine::Engine>, engine::Trouble> {
        let host = Box::new(Phone(Arc::clone(&self.host), self.reader.clone()));
        engine::Engine::open(&self.folder, host, speech).map(Box::new)
    }

    /// Does something with the book, opening it first where it rests.
    fn with<T>(
        &self,
        speech: Speech,
        work: impl FnOnce(&mut engine::Engine) -> Result<T, engine::Trouble>,
    ) -> Result<T, Refusal> {
        let mut held = self.held();
        let done = catch_unwind(AssertUnwindSafe(|| {
            if let Held::Rests = *held {
                *held = Held::Open(self.open(speech)?);
            }
            match &mut *held {
                Held::Open(engine) => Ok(work(engine)?),
                Held::Rests | Held::Closed => Err(Refusal::Closed),
            }
        }));
        done.unwrap_or_else(|_| {
            // What was kept is on the disk; what is in memory may be half of something.
            *held = Held::Rests;
            Err(fault(speech))
        })
    }
}

/// Does something without the book; a fault in it is a refusal.
fn guarded<T>(speech: Speech, work: impl FnOnce() -> Result<T, engine::Trouble>) -> Result<T, Refusal> {
    let done = catch_unwind(AssertUnwindSafe(|| Ok(work()?)));
    done.unwrap_or_else(|_| Err(fault(speech)))
}

/// What the person is told of a fault inside.
fn fault(speech: Speech) -> Refusal {
    Refusal::Report { sentence: engine::screen::fault(speech) }
}

/// An open book.
#[derive(uniffi::Object)]
pub struct Engine {
    inside: Arc<Inside>,
}

impl std::fmt::Debug for Engine {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Engine").field("folder", &self.inside.folder).finish_non_exhaustive()
    }
}

/// Runs on a thread of its own; a fault there is a refusal.
async fn apart<T: Send + 'static>(
    speech: Speech,
    work: impl FnOnce() -> Result<T, Refusal> + Send + 'static,
) -> Result<T, Refusal> {
    match runtime().spawn_blocking(work).await {
        Ok(done) => done,
        Err(_) => Err(fault(speech)),
    }
}

impl Engine {
    async fn asked<A, B>(
        &self,
        manner: Manner,
        question: impl FnOnce(&engine::Engine, Speech) -> Result<A, engine::Trouble> + Send + 'static,
    ) -> Result<B, Refusal>
    where
        A: Cross<B>,
        B: Send + 'static,
    {
        let (inside, speech) = (Arc::clone(&self.inside), Speech::from(manner));
        apart(speech, move || inside.with(speech, |engine| question(engine, speech)).map(Cross::cross)).await
    }
}

/// Makes a backup where one is due, once no job is in the bay: nobody waits for it then.
fn keep_safe(inside: Arc<Inside>, speech: Speech) {
    runtime().spawn_blocking(move || {
        let backed_up = inside.with(speech, |engine| {
            if engine.book().in_bay().is_none() {
                // What went wrong is told on the bay's screen and on the backups'.
                drop(engine.back_up_when_due(speech));
            }
            Ok(())
        });
        // A book that was closed meanwhile needs none.
        drop(backed_up);
    });
}

/// Carries out a tap.
fn tapped(
    inside: &Inside,
    token: &str,
    entered: &[engine::screen::Entered],
    speech: Speech,
    watch: Option<&dyn Watch>,
) -> Result<Changed, Refusal> {
    let begun = inside.host.clock_ms();
    // Only what takes its time can be photos to read; they are read while the book serves others.
    let photos = match watch {
        Some(_) => inside.with(speech, |engine| engine.to_read(token, entered, speech)),
        None => Ok(None),
    };
    let watch = watch.unwrap_or(&Unwatched);
    let tapped = match photos {
        Ok(Some(photos)) => guarded(speech, || photos.read(speech, watch))
            .and_then(|read| inside.with(speech, |engine| Ok(engine.suggest(read)))),
        Ok(None) => inside.with(speech, |engine| engine.tap_watched(token, entered, speech, watch)),
        Err(refusal) => Err(refusal),
    };
    let took = inside.host.clock_ms().saturating_sub(begun);
    let how = match &tapped {
        Ok(_) => "done",
        Err(Refusal::MendInput { .. }) => "mend-input",
        Err(Refusal::HeldByGate { .. }) => "held",
        Err(Refusal::FreeSpace { .. }) => "free-space",
        Err(Refusal::TryAgain { .. }) => "try-again",
        Err(Refusal::Restore { .. }) => "restore",
        Err(Refusal::Report { .. }) => "report",
        Err(Refusal::Closed) => "closed",
    };
    inside.host.log(format!("tap {how} {took} ms"));
    tapped.map(Cross::cross)
}

#[uniffi::export]
impl Engine {
    /// Opens the book in a folder, or makes a new one there.
    ///
    /// # Errors
    /// When another program writes the book, the folder can't be used, or what is in it is no book of ours.
    #[uniffi::constructor]
    pub async fn open(folder: String, host: Arc<dyn PhoneHost>, manner: Manner) -> Result<Arc<Self>, Refusal> {
        let speech = Speech::from(manner);
        apart(speech, move || {
            let (folder, reader, held) = (PathBuf::from(folder), ReaderOfPhone::default(), Mutex::new(Held::Rests));
            let inside = Inside { folder, host, reader, held };
            inside.with(speech, |_| Ok(()))?;
            inside.host.log("open".to_owned());
            Ok(Arc::new(Self { inside: Arc::new(inside) }))
        })
        .await
    }

    /// From here on the phone's own text reader reads photos; the models do where none is given.
    ///
    /// # Errors
    /// None; it is a result so that a fault inside comes back as an error.
    pub fn read_by(&self, reader: Option<Arc<dyn TextReader>>) -> Result<(), Refusal> {
        self.inside.reader.lay(reader);
        Ok(())
    }

    /// The job in hand at its next step, or at another one that is named, with everything that can be tapped.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    #[uniffi::method(default(step = None, at = None))]
    pub async fn bay(&self, step: Option<String>, at: Option<String>, manner: Manner) -> Result<BayScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.bay_screen(step.as_deref(), at.as_deref(), speech)).await
    }

    /// Vehicles, jobs and tools; the vehicles that hold a text, or all for an empty one.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn book(&self, search: String, manner: Manner) -> Result<BookScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.book_screen(&search, speech)).await
    }

    /// People, what waits for an instructor, and what apprentices did.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn crew(&self, manner: Manner) -> Result<CrewScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.crew_screen(speech)).await
    }

    /// A vehicle with its tires from above.
    ///
    /// # Errors
    /// When there is no such vehicle, the book can't be read, or was closed.
    pub async fn vehicle(&self, name: String, manner: Manner) -> Result<VehicleScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.vehicle_screen(&name, speech)).await
    }

    /// A tire of a vehicle with its readings.
    ///
    /// # Errors
    /// When there is no such vehicle or place, the book can't be read, or was closed.
    pub async fn tire(&self, vehicle: String, at: String, manner: Manner) -> Result<TireScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.tire_screen(&vehicle, &at, speech)).await
    }

    /// A vehicle's tread over distance, a chart a tire.
    ///
    /// # Errors
    /// When there is no such vehicle, the book can't be read, or was closed.
    pub async fn history(&self, vehicle: String, manner: Manner) -> Result<HistoryScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.history_screen(&vehicle, speech)).await
    }

    /// The plans of the job in the bay, each drawn.
    ///
    /// # Errors
    /// When no job is open, its tires can't be planned with, a learner answers first, or the book was closed.
    pub async fn plan(&self, manner: Manner) -> Result<PlanScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.plan_screen(speech)).await
    }

    /// The order of lifts of the job in the bay.
    ///
    /// # Errors
    /// When no job is open, it has an order of its own, moves or gear are not settled, or the book was closed.
    pub async fn lifts(&self, manner: Manner) -> Result<LiftsScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.lifts_screen(speech)).await
    }

    /// What is not as it should be in a job: the one in the bay, else the last one, when none is named.
    ///
    /// # Errors
    /// When there is no such job, the book can't be read, or was closed.
    pub async fn findings(&self, job: Option<u32>, manner: Manner) -> Result<FindingsScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.findings_screen(number(job), speech)).await
    }

    /// The log of a job, with what can be told anew or taken back.
    ///
    /// # Errors
    /// When there is no such job, the book can't be read, or was closed.
    pub async fn log(&self, job: Option<u32>, manner: Manner) -> Result<LogScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.log_screen(number(job), speech)).await
    }

    /// A job's card: one self-contained HTML page, with all that proves it.
    ///
    /// # Errors
    /// When there is no such job, the book can't be read, or was closed.
    pub async fn card(&self, job: Option<u32>, manner: Manner) -> Result<String, Refusal> {
        self.asked(manner, move |engine, speech| engine.card(number(job), speech)).await
    }

    /// The photos of a job, by their paths.
    ///
    /// # Errors
    /// When there is no such job, the book can't be read, or was closed.
    pub async fn photos(&self, job: Option<u32>, manner: Manner) -> Result<PhotosScreen, Refusal> {
        self.asked(manner, move |engine, speech| engine.photos_screen(number(job), speech)).await
    }

    /// Why a decision of the job in the bay is as it is: `drive`, `pattern`, `lifts`, `order` or `target`.
    ///
    /// # Errors
    /// When it is none of these, no job is open, a learner answers first, what it rests on is not known, or the book was closed.
    pub async fn why(&self, decision: String, manner: Manner) -> Result<WhyView, Refusal> {
        self.asked(manner, move |engine, speech| engine.why_coded(&decision, speech)).await
    }

    /// What the book's seals prove, and what not.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn verify(&self, manner: Manner) -> Result<ProofView, Refusal> {
        self.asked(manner, |engine, speech| engine.verify(speech)).await
    }

    /// Writes something out into a folder, whole or not at all, and gives back the file's path.
    ///
    /// # Errors
    /// When there is no such job, vehicle, person or photo, there is nothing of it to write, the folder
    /// can't be written, or the book was closed.
    pub async fn write_out(
        &self,
        what: Outgoing,
        of: OutgoingOf,
        folder: String,
        manner: Manner,
    ) -> Result<String, Refusal> {
        let (what, of) = (what.cross(), of.into());
        let written = move |engine: &engine::Engine, speech| {
            engine.write_out(what, &of, std::path::Path::new(&folder), speech).map(|file| file.display().to_string())
        };
        self.asked(manner, written).await
    }

    /// The calculators.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn bench(&self, manner: Manner) -> Result<BenchScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.bench_screen(speech)).await
    }

    /// This phone's settings.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn settings(&self, manner: Manner) -> Result<SettingsScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.settings_screen(speech)).await
    }

    /// The first three cards.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn first_run(&self, manner: Manner) -> Result<FirstRunScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.first_run_screen(speech)).await
    }

    /// Backups.
    ///
    /// # Errors
    /// When the book can't be read, or was closed.
    pub async fn backups(&self, manner: Manner) -> Result<BackupsScreen, Refusal> {
        self.asked(manner, |engine, speech| engine.backups_screen(speech)).await
    }

    /// Carries out what was tapped, with what was filled in.
    ///
    /// # Errors
    /// When the book changed since the screen was drawn or it was tapped twice, a field
    /// is empty or not understood, a gate holds it, it can't be kept, or the book was
    /// closed. Nothing is changed then.
    pub async fn act(&self, token: String, entered: Vec<Entered>, manner: Manner) -> Result<Changed, Refusal> {
        let (inside, speech) = (Arc::clone(&self.inside), Speech::from(manner));
        let entered: Vec<engine::screen::Entered> = entered.into_iter().map(Into::into).collect();
        apart(speech, move || {
            let changed = tapped(&inside, &token, &entered, speech, None)?;
            keep_safe(inside, speech);
            Ok(changed)
        })
        .await
    }

    /// Starts what was tapped and takes its time: a photo, a backup, a restore.
    ///
    /// # Errors
    /// None; it is a result so that a fault inside comes back as an error.
    pub fn start(&self, token: String, entered: Vec<Entered>, manner: Manner) -> Result<Arc<LongTask>, Refusal> {
        let (inside, speech) = (Arc::clone(&self.inside), Speech::from(manner));
        let entered: Vec<engine::screen::Entered> = entered.into_iter().map(Into::into).collect();
        let (task, working) = LongTask::begin();
        runtime().spawn_blocking(move || {
            let done = catch_unwind(AssertUnwindSafe(|| tapped(&inside, &token, &entered, speech, Some(&working))));
            working.end(done.unwrap_or_else(|_| Err(fault(speech))));
            keep_safe(inside, speech);
        });
        Ok(task)
    }

    /// The app goes to the background: a backup that is due is made, and the book is let go
    /// of. It is opened again at the next call.
    ///
    /// # Errors
    /// When the book was closed.
    pub async fn pause(&self, manner: Manner) -> Result<(), Refusal> {
        let (inside, speech) = (Arc::clone(&self.inside), Speech::from(manner));
        apart(speech, move || {
            let mut held = inside.held();
            match &mut *held {
                Held::Closed => return Err(Refusal::Closed),
                Held::Rests => return Ok(()),
                Held::Open(engine) => {
                    // What went wrong is told on the bay's screen and on the backups'.
                    drop(catch_unwind(AssertUnwindSafe(|| engine.back_up_when_due(speech))));
                }
            }
            *held = Held::Rests;
            inside.host.log("pause".to_owned());
            Ok(())
        })
        .await
    }

    /// The app is in front again: the book is opened where it was let go of.
    ///
    /// # Errors
    /// As opening it, and when it was closed.
    pub async fn resume(&self, manner: Manner) -> Result<(), Refusal> {
        let (inside, speech) = (Arc::clone(&self.inside), Speech::from(manner));
        apart(speech, move || inside.with(speech, |_| Ok(()))).await
    }

    /// Closes the book. Using it afterwards is an error.
    ///
    /// # Errors
    /// None; it is a result so that a fault inside comes back as an error.
    pub async fn close_book(&self) -> Result<(), Refusal> {
        let inside = Arc::clone(&self.inside);
        apart(Speech::default(), move || {
            *inside.held() = Held::Closed;
            Ok(())
        })
        .await
    }
}

fn number(job: Option<u32>) -> Option<usize> {
    job.and_then(|job| usize::try_from(job).ok())
}
