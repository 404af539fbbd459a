//! How a book starts: small ones are read whole, large ones go on from what was kept of them.
//!
//! What is kept is the folded [`Book`] without the lines of its jobs, in the
//! store's `snapshot` table with a digest over all of it. It can be thrown away.
//!
//! | at opening | how it is trusted |
//! | --- | --- |
//! | what was kept | its version, its digest, and that its last entry and all ends of streams are this book's |
//! | entries that came in since | digest, personal part, and the chain from the kept ends to the ends of today |
//! | entries of a job that is still running | digest and personal part: its lines are told from them |
//! | all other entries | not looked at before they are needed; their digests are verified then |
//!
//! Whatever does not hold has the whole book read, with every digest and chain;
//! so has a reading of the whole book that is more than a week old.

use std::sync::{Arc, Mutex, PoisonError};

use serde::{Deserialize, Serialize};

use crate::calendar::Moment;
use crate::entry::{Entry, Head};
use crate::logbook::{Archive, Book, Job, Logbook, Span};
use crate::store::{Snapshot, Store, StoreError};

const NAME: &str = "book";
/// Counts up with every change of what a [`Book`] holds or how it is folded.
const VERSION: u32 = 9;

/// Fewer entries than these are read whole at each opening: it takes no time.
const MANY: u64 = 2_000;
/// How many entries may come in before what was kept is kept anew.
const OFTEN: u64 = 500;
/// After how many milliseconds the whole book is read again: a week.
const READ_AGAIN_MS: i64 = 7 * 24 * 60 * 60 * 1000;

/// What is kept.
#[derive(Serialize, Deserialize)]
struct Kept<B> {
    /// When the whole book was last read and verified.
    read: Moment,
    /// The ends of all streams.
    heads: Vec<Head>,
    book: B,
}

/// The entries of a store, for jobs whose lines are asked for.
pub(super) struct Entries {
    store: Arc<Store>,
    /// Why entries could not be given: then no answer can be trusted.
    fault: Mutex<Option<StoreError>>,
}

impl Entries {
    pub(super) fn new(store: &Arc<Store>) -> Arc<Self> {
        Arc::new(Self { store: Arc::clone(store), fault: Mutex::new(None) })
    }

    /// Whether every entry that was asked for could be given so far.
    pub(super) fn sound(&self) -> Result<(), StoreError> {
        match &*self.fault.lock().unwrap_or_else(PoisonError::into_inner) {
            Some(why) => Err(why.clone()),
            None => Ok(()),
        }
    }

    /// No answer can be trusted from now on.
    pub(super) fn failed(&self, why: StoreError) {
        self.fault.lock().unwrap_or_else(PoisonError::into_inner).get_or_insert(why);
    }

    /// The entries that are about a job, those that were taken back among them.
    pub(super) fn of_job(&self, job: &Job) -> Result<Logbook, StoreError> {
        self.store.stretches(&job.entries).map(Logbook::from_iter)
    }
}

impl Archive for Entries {
    fn entries(&self, spans: &[Span]) -> Vec<Entry> {
        self.store.stretches(spans).unwrap_or_else(|why| {
            self.failed(why);
            Vec::new()
        })
    }
}

/// How far what is kept of a book lags behind it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lag {
    /// When the whole book was last read and verified.
    read: Moment,
    /// How many entries had come in when it was last kept.
    kept_at: u64,
}

/// A book that was just read whole.
pub(super) fn whole(entries: Vec<Entry>, now: Moment) -> (Book, Lag) {
    let mut lag = Lag { read: now, kept_at: 0 };
    (lag.whole(entries, now), lag)
}

/// A book from what was kept and the entries since; none when that can't be trusted, or is old.
pub(super) fn usual(store: &Store, entries: &Arc<Entries>, now: Moment) -> Option<(Book, Lag)> {
    let snapshot = store.snapshot(NAME, VERSION).ok()??;
    let Kept { read, heads, mut book } = serde_json::from_slice::<Kept<Book>>(&snapshot.bytes).ok()?;
    let age = now.unix_ms().saturating_sub(read.unix_ms());
    if !(0..READ_AGAIN_MS).contains(&age) {
        return None;
    }
    let mut tail = store.tail(snapshot.mark.arrived, &heads).ok()?;
    tail.sort_by_key(Entry::order);
    let archive: Arc<dyn Archive> = Arc::<Entries>::clone(entries);
    book.attach(&archive);
    let follows = book.follow(&tail);
    // The lines of running jobs are asked for at every step: damage among them is met here.
    let told = book.jobs.iter().filter(|job| job.is_running()).all(|job| !job.lines.is_empty());
    let sound = follows && told && entries.sound().is_ok();
    sound.then_some((book, Lag { read, kept_at: snapshot.mark.arrived }))
}

impl Lag {
    /// The book of all entries, which were just read and verified.
    pub(super) fn whole(&mut self, entries: Vec<Entry>, now: Moment) -> Book {
        self.read = now;
        Logbook::from_iter(entries).book()
    }

    /// Keeps the book as it stands when what was kept lags too far behind. That
    /// it can't be kept is no trouble: it is made anew at the next opening.
    pub(super) fn keep(&mut self, book: &Book, store: &Store) {
        let Ok(mark) = store.mark() else { return };
        if mark.arrived < MANY || mark.arrived.saturating_sub(self.kept_at) < OFTEN {
            return;
        }
        let Ok(heads) = store.heads() else { return };
        let Ok(bytes) = serde_json::to_vec(&Kept { read: self.read, heads, book }) else { return };
        self.kept_at = mark.arrived;
        drop(store.keep_snapshot(NAME, VERSION, Snapshot { mark, bytes }));
    }
}
