//! The one writer: a thread that owns the only connection that can write.

use std::collections::BTreeMap;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread::{self, JoinHandle};

use rusqlite::{Connection, Transaction, TransactionBehavior};

use super::error::{Mend, StoreError};
use super::folder::{Folder, Lock};
use super::problem::{Problem, Spot};
use super::rows::{self, Part, Writing};
use super::seals;
use super::snapshot;
use super::witness::{Mark, Witness};
use crate::calendar::Moment;
use crate::entry::{Draft, Entry, Head, HybridTime};
use crate::ident::{EntryId, StreamId};
use crate::proof::{DeviceKey, Gathered, Seal};

/// How far ahead of this device's clock another device's time may be and still
/// be followed: one day. Beyond it a wrong clock would drag every book along.
const AHEAD_MS: i64 = 24 * 60 * 60 * 1000;

/// How many entries may follow a seal before the next one is made without being asked for.
const OFTEN: u64 = 500;

type Job = Box<dyn FnOnce(&mut Writer) + Send>;

/// The writing side of a book; lives on its own thread.
pub(super) struct Writer {
    pub(super) conn: Connection,
    pub(super) folder: Folder,
    /// The end of this device's stream.
    head: Head,
    /// The latest time of any stream.
    latest: HybridTime,
    mark: Mark,
    witness: Option<Witness>,
    /// What this device signs with, once the book is its own to write.
    key: Option<DeviceKey>,
    /// How far this device's stream is sealed.
    sealed: u64,
    /// The first damage that was met; nothing is written after it.
    stopped: Option<Problem>,
    _lock: Lock,
}

impl Writer {
    pub(super) fn new(conn: Connection, folder: Folder, own: StreamId, lock: Lock) -> Result<Self, StoreError> {
        let witness = Witness::open(&folder.witness()).map_err(|why| StoreError::io(&why, folder.path()))?;
        let mut writer = Self {
            conn,
            folder,
            head: Head::empty(own),
            latest: HybridTime::START,
            mark: Mark::EMPTY,
            witness: Some(witness),
            key: None,
            sealed: 0,
            stopped: None,
            _lock: lock,
        };
        writer.look()?;
        writer.note();
        Ok(writer)
    }

    pub(super) fn fault(&self, why: &rusqlite::Error) -> StoreError {
        StoreError::database(why, self.folder.path())
    }

    /// Reads where the book stands.
    fn look(&mut self) -> Result<(), StoreError> {
        let read = || -> rusqlite::Result<(BTreeMap<StreamId, Head>, Mark)> {
            Ok((rows::heads(&self.conn)?, rows::mark(&self.conn)?))
        };
        let (heads, mark) = read().map_err(|why| self.fault(&why))?;
        self.latest = heads.values().map(|head| head.time).max().unwrap_or(HybridTime::START);
        self.head = heads.get(&self.head.stream).copied().unwrap_or(self.head);
        self.mark = mark;
        if self.key.is_some() {
            self.sealed = seals::end(&self.conn, self.head.stream).map_err(|why| self.fault(&why))?;
        }
        Ok(())
    }

    /// Notes what was acknowledged. The book itself is already safe on the
    /// disk, so a note that can't be written is given up, not told.
    fn note(&mut self) {
        if let Some(witness) = &mut self.witness
            && witness.note(&self.mark).is_err()
        {
            self.witness = None;
        }
    }

    /// Stops all writing because of damage.
    pub(super) fn stop(&mut self, problem: &Problem) {
        if self.stopped.is_none() {
            self.stopped = Some(problem.clone());
        }
    }

    /// Does `work` in one transaction; all of it is on the disk when this comes back, or none.
    pub(super) fn change<T>(
        &mut self,
        work: impl FnOnce(&Transaction<'_>, Head, HybridTime) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        if let Some(problem) = &self.stopped {
            return Err(StoreError::Restore { problem: problem.clone() });
        }
        let folder = self.folder.clone();
        let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
        let (head, latest) = (self.head, self.latest);
        let attempt = || {
            let transaction = self.conn.transaction_with_behavior(TransactionBehavior::Immediate).map_err(fault)?;
            let done = work(&transaction, head, latest)?;
            transaction.commit().map_err(fault)?;
            Ok(done)
        };
        let done = attempt();
        match done {
            Ok(done) => {
                self.look()?;
                self.note();
                Ok(done)
            }
            Err(StoreError::Restore { problem }) => {
                self.stop(&problem);
                Err(StoreError::Restore { problem })
            }
            Err(other) => Err(other),
        }
    }

    /// Takes the book as this device's own to write. A stream that another device
    /// wrote, or that was copied with its file, is left as it is, and `fresh` begun.
    /// Gives back the stream that is written from now on.
    pub(super) fn claim(&mut self, key: DeviceKey, fresh: StreamId) -> Result<StreamId, StoreError> {
        let folder = self.folder.clone();
        let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
        let own = self.head.stream;
        let (device, place) = (key.device(), folder.place());
        let known = rows::meta(&self.conn, "device").map_err(fault)?;
        let there = rows::meta(&self.conn, "file").map_err(fault)?;
        let signed = seals::device(&self.conn, own).map_err(fault)?;
        let noted = known.is_some() && there.is_some() == place.is_some();
        let foreign = known.is_some_and(|known| known != device.as_bytes())
            || signed.is_some_and(|signed| signed != device)
            || there.zip(place).is_some_and(|(there, place)| there != place);
        if noted && !foreign {
            self.key = Some(key);
            self.look()?;
            return Ok(own);
        }
        let stream = if foreign { fresh } else { own };
        self.change(|transaction, _, _| {
            if foreign {
                if rows::heads(transaction).map_err(fault)?.contains_key(&fresh) {
                    return Err(StoreError::mend(Mend::StreamInUse { stream: fresh }));
                }
                rows::put_own_stream(transaction, fresh).map_err(fault)?;
                rows::put_head(transaction, &Head::empty(fresh)).map_err(fault)?;
            }
            rows::put_meta(transaction, "device", device.as_bytes()).map_err(fault)?;
            if let Some(place) = place {
                rows::put_meta(transaction, "file", &place).map_err(fault)?;
            }
            Ok(())
        })?;
        self.head = Head::empty(stream);
        self.key = Some(key);
        self.look()?;
        Ok(stream)
    }

    /// Seals the end of this device's stream, unless it is sealed already, or there is no key.
    pub(super) fn seal(&mut self) -> Result<(), StoreError> {
        let Some(key) = self.key.clone() else { return Ok(()) };
        if self.head.number <= self.sealed {
            return Ok(());
        }
        let folder = self.folder.clone();
        self.change(|transaction, head, _| match Seal::make(&key, &head, None) {
            Some(seal) => seals::put(transaction, &seal).map_err(|why| StoreError::database(&why, folder.path())),
            None => Ok(()),
        })?;
        // Alone at the end of the log it could be lost without a sign. A reader may hold the log just now.
        drop(self.write_back());
        Ok(())
    }

    /// Adds what is new among the drafts; gives back an entry for each. With `ended`,
    /// the entries of a job so far, the job is sealed with what is added to it here.
    pub(super) fn append(
        &mut self,
        drafts: Vec<Draft>,
        now: Moment,
        ended: Option<Gathered>,
    ) -> Result<Vec<Entry>, StoreError> {
        let folder = self.folder.clone();
        let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
        let (key, sealed) = (self.key.clone(), self.sealed);
        self.change(|transaction, mut head, latest| {
            let before = head.number;
            let mut writing = Writing::new(transaction).map_err(fault)?;
            let (mut entries, mut part) = (Vec::with_capacity(drafts.len()), 0_u32);
            for draft in drafts {
                if let Some(there) = entry(transaction, draft.id).map_err(fault)? {
                    let there = there.map_err(|problem| StoreError::Restore { problem })?;
                    if !repeats(&draft, &there) {
                        return Err(StoreError::mend(Mend::SameId { id: draft.id }));
                    }
                    entries.push(there);
                    continue;
                }
                let id = draft.id;
                let unwritable = |_| StoreError::mend(Mend::Unwritable { id });
                let entry = draft.seal_part(&following(head, latest, now), now, part).map_err(unwritable)?;
                head = head.then(&entry).map_err(unwritable)?;
                writing.add(&entry).map_err(fault)?;
                part = part.saturating_add(1);
                entries.push(entry);
            }
            rows::put_head(transaction, &head).map_err(fault)?;
            let due = ended.is_some() || head.number.saturating_sub(sealed) >= OFTEN;
            if let Some(key) = key.filter(|_| due && head.number > before) {
                let job = ended.map(|mut gathered| {
                    let job = gathered.job();
                    entries
                        .iter()
                        .filter(|entry| entry.fact().job() == Some(job))
                        .for_each(|entry| gathered.add(entry));
                    gathered.finish()
                });
                if let Some(seal) = Seal::make(&key, &head, job) {
                    seals::put(transaction, &seal).map_err(fault)?;
                }
            }
            Ok(entries)
        })
    }

    /// Erases the personal parts of entries; the entries and their chains stay.
    pub(super) fn erase(&mut self, ids: &[EntryId]) -> Result<(), StoreError> {
        let folder = self.folder.clone();
        let fault = |why: rusqlite::Error| StoreError::database(&why, folder.path());
        self.change(|transaction, _, _| {
            for id in ids.iter().copied() {
                let there = entry(transaction, id).map_err(fault)?;
                let there = there.ok_or_else(|| StoreError::mend(Mend::NoEntry { id }))?;
                let there = there.map_err(|problem| StoreError::Restore { problem })?;
                if there.envelope().personal.is_some() {
                    rows::put_part(transaction, id, &Part::Erased).map_err(fault)?;
                }
            }
            // What other rooms made of it can be made again, without it.
            snapshot::forget(transaction).map_err(fault)?;
            Ok(())
        })?;
        // The old page still stands in the log until it is written back.
        self.write_back()
    }

    /// Writes the log back into the file and empties it.
    pub(super) fn write_back(&mut self) -> Result<(), StoreError> {
        let busy = self
            .conn
            .query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get::<_, bool>(0))
            .map_err(|why| self.fault(&why))?;
        if busy { Err(StoreError::TryAgain { why: super::error::Again::Held }) } else { Ok(()) }
    }
}

/// The entry with this id, or what is wrong with it.
pub(super) fn entry(conn: &Connection, id: EntryId) -> rusqlite::Result<Option<Result<Entry, Problem>>> {
    let Some(raw) = rows::by_id(conn, id)? else { return Ok(None) };
    Ok(Some(raw.open(&rows::part(conn, id)?)))
}

/// The head that the next entry follows: this stream's, at a time not before
/// any other stream's, unless that one's clock is far ahead.
fn following(head: Head, latest: HybridTime, now: Moment) -> Head {
    let near = latest.wall.unix_ms() <= now.unix_ms().saturating_add(AHEAD_MS);
    Head { time: if near { head.time.max(latest) } else { head.time }, ..head }
}

/// Whether a draft says what an entry of the same id already says.
fn repeats(draft: &Draft, there: &Entry) -> bool {
    let said = there.envelope();
    // Compared as written: a number read back may differ in its last bit.
    let Ok(fact) = serde_json::to_vec(&draft.fact) else { return false };
    let tail = [b"\"fact\":".as_slice(), &fact, b"}"].concat();
    said.author == draft.author
        && said.practice == draft.practice
        && said.personal == draft.personal.as_ref().map(crate::entry::Personal::digest)
        && there.bytes().ends_with(&tail)
}

/// The way to the writer's thread.
pub(super) struct Handle {
    jobs: Sender<Job>,
    thread: JoinHandle<()>,
}

impl Handle {
    pub(super) fn start(writer: Writer) -> Result<Self, StoreError> {
        let (jobs, queue) = channel();
        let thread = thread::Builder::new()
            .name("book-writer".to_owned())
            .spawn(move || run(writer, &queue))
            .map_err(StoreError::report)?;
        Ok(Self { jobs, thread })
    }

    /// Has the writer do something, and waits for it.
    pub(super) fn ask<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Writer) -> Result<T, StoreError> + Send + 'static,
    ) -> Result<T, StoreError> {
        let (answer, answered) = channel();
        let gone = || StoreError::report("the writer ended");
        let job: Job = Box::new(move |writer| {
            // The one who asked may have ended; what was written stays written.
            let _ = answer.send(work(writer));
        });
        self.jobs.send(job).map_err(|_| gone())?;
        answered.recv().map_err(|_| gone())?
    }

    /// Ends the thread after everything that was asked before.
    pub(super) fn end(self) -> Result<(), StoreError> {
        drop(self.jobs);
        self.thread.join().map_err(|_| StoreError::report("the writer ended"))
    }
}

fn run(mut writer: Writer, queue: &Receiver<Job>) {
    while let Ok(job) = queue.recv() {
        job(&mut writer);
    }
}

impl From<Problem> for StoreError {
    fn from(problem: Problem) -> Self {
        Self::Restore { problem }
    }
}

/// A problem of the file as a whole.
pub(super) fn of_book(kind: super::problem::ProblemKind) -> Problem {
    Problem { kind, at: Spot::Book }
}
