//! The one door: open a book, say things to it, ask it things.
//!
//! A shell gives [`Command`]s and gets a [`Change`]; it asks for views and gets
//! finished, worded records. Whatever is refused changes nothing and comes back
//! as a [`Trouble`] with the sentence that a mechanic understands.

mod act;
mod ask;
mod code;
mod command;
mod erase;
mod host;
mod learning;
mod papers;
mod planning;
mod proof;
mod safekeeping;
pub mod screen;
mod seeing;
mod starting;
mod trouble;
mod undo;
mod view;

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

pub use code::Code;
pub use command::{Command, Kept};
pub use host::{Host, SystemHost};
pub use learning::{AnswerLine, BundleView, LearnerView, StandingLine, WaitingLine, WhyView};
pub use papers::{Calibrations, Papers};
pub use proof::verify_card;
pub use safekeeping::{BackupView, RestoredView, backup_is_locked};
pub use seeing::{ArrowView, Hinted, ReadView, Reader, RingView, Suggested};
pub use trouble::{Pointer, Trouble, TroubleKind};
pub use view::{
    ActionLine, BookView, CautionLine, Change, CheckLine, CheckView, Erased, JobLine, LiftsView, LimitsLine,
    LimitsView, LogLine, NextView, NutView, PersonLine, PlanLine, PlansView, ProofView, TaskLine, TurnView, UndoLine,
    VehicleLine,
};

use crate::entry::Draft;
use crate::ident::{EntryId, StreamId};
use crate::logbook::Book;
use crate::photos::Photos;
use crate::procedure::{self, Procedure};
use crate::proof::DeviceKey;
use crate::store::{Opened, Opening, Store, StoreError, piece};
pub use crate::store::{Unwatched, Watch};
use crate::words::{Say, Speech, Words};
use safekeeping::{CameBack, Safekeeping};
use starting::{Entries, Lag};

/// How long a photo that no entry names is kept: 30 days.
const GRACE: Duration = Duration::from_secs(30 * 24 * 60 * 60);

/// An open book.
pub struct Engine {
    folder: PathBuf,
    store: Arc<Store>,
    entries: Arc<Entries>,
    photos: Photos,
    host: Box<dyn Host>,
    procedures: Vec<Procedure>,
    book: Book,
    lag: Lag,
    opened: Opened,
    /// What this device signs with, where it keeps a key.
    key: Option<DeviceKey>,
    safekeeping: Safekeeping,
    /// What a backup gave back to a damaged book just now.
    came_back: Option<CameBack>,
    suggestions: screen::Suggestions,
}

impl std::fmt::Debug for Engine {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Engine").field("folder", &self.folder).finish_non_exhaustive()
    }
}

impl Engine {
    /// Opens the book in a folder, or makes a new one there.
    ///
    /// # Errors
    /// When another program writes this book, the folder can't be used, or the
    /// file in it is no book of ours, or a newer one. Nothing is changed then.
    pub fn open(folder: &Path, host: Box<dyn Host>, speech: Speech) -> Result<Self, Trouble> {
        let words = Words::new(speech);
        let now = host.now();
        let stream = StreamId::from_parts(now.unix_ms().unsigned_abs(), host.random());
        let trouble = |why| Trouble::of_store(&why, &words);
        let opening = Opening { stream, now };
        let key = host.device_key();
        let claim = |store: &mut Store, opened: &Opened| match &key {
            Some(key) if opened.writable => {
                store.claim(key.clone(), StreamId::from_parts(now.unix_ms().unsigned_abs(), host.random()))
            }
            _ => Ok(()),
        };
        let (mut store, mut opened) = Store::open(folder, opening).map_err(trouble)?;
        claim(&mut store, &opened).map_err(trouble)?;
        let mut store = Arc::new(store);
        let mut entries = Entries::new(&store);
        let mut read_whole = false;
        let started = match starting::usual(&store, &entries, now) {
            Some(started) => started,
            None => {
                drop(entries);
                let alone =
                    Arc::into_inner(store).ok_or_else(|| StoreError::report("the book is asked")).map_err(trouble)?;
                let (mut read, rescued, all) = alone.read_or_rescue(opened, opening).map_err(trouble)?;
                claim(&mut read, &rescued).map_err(trouble)?;
                (store, opened) = (Arc::new(read), rescued);
                entries = Entries::new(&store);
                read_whole = true;
                starting::whole(all, now)
            }
        };
        let (book, mut lag) = started;
        if opened.writable {
            lag.keep(&book, &store);
        }
        let photos = Photos::open(folder.join("photos")).map_err(|why| Trouble::of_photos(&why, &words))?;
        // To a book that lost entries, their photos are evidence.
        if read_whole && opened.writable && opened.rescued.is_none() && opened.missing.is_empty() {
            // What can't be removed now is removed another time.
            drop(photos.sweep(&book.photos.keys().copied().collect(), host.clock(), GRACE));
        }
        let safekeeping = Safekeeping::of(folder);
        let came_back = opened.rescued.as_ref().and_then(|_| safekeeping.fill(&store, &photos, now));
        let procedures = procedure::built_in().map_err(|why| Trouble {
            kind: TroubleKind::Report,
            sentence: words.bad_procedure(&why),
            at: Some(why.file.clone()),
            pointer: None,
        })?;
        let folder = folder.to_owned();
        let mut engine = Self {
            folder,
            store,
            entries,
            photos,
            host,
            procedures,
            book,
            lag,
            opened,
            key,
            safekeeping,
            came_back,
            suggestions: screen::Suggestions::default(),
        };
        if engine.came_back.is_some() {
            engine.fold_anew().map_err(trouble)?;
        }
        Ok(engine)
    }

    /// The book's folder.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// What a person must be told when the book was opened: what was damaged,
    /// what is safe, what is missing and what to do now. Mostly nothing.
    pub fn told_at_opening(&self, speech: Speech) -> Option<String> {
        let words = Words::new(speech);
        let mut said = vec![self.opened.rescued.as_ref()?.say(&words)];
        if let Some(came) = &self.came_back {
            said.push(words.text("rescued-from-backup", &[]));
            said.extend(came.sentences(&words));
        }
        Some(said.join(" "))
    }

    /// The book as it stands.
    pub fn book(&self) -> &Book {
        &self.book
    }

    /// The procedures that a job can be opened by.
    pub fn procedures(&self) -> &[Procedure] {
        &self.procedures
    }

    /// Adds a shop's own procedure for this session.
    ///
    /// # Errors
    /// With line and reason when the file is bad, or when it would take a built-in
    /// procedure's id; nothing is changed.
    pub fn add_procedure(&mut self, file: &str, text: &str, speech: Speech) -> Result<(), Trouble> {
        let words = Words::new(speech);
        let procedure = Procedure::parse(file, text)
            .map_err(|bad| Trouble::said(words.bad_procedure(&bad)).at(format!("{}:{}", bad.file, bad.line)))?;
        // Jobs that were opened by a built-in procedure go on by it.
        if procedure::built_in().is_ok_and(|known| known.iter().any(|known| known.id == procedure.id)) {
            return Err(Trouble::mend(&words, "trouble-built-in", &[("id", procedure.id.as_str().into())]).at(file));
        }
        self.procedures.retain(|known| known.id != procedure.id);
        self.procedures.push(procedure);
        Ok(())
    }

    /// Says one thing, as `author`; the only person in the book when none is named.
    ///
    /// # Errors
    /// When it is not understood, does not fit, is held by a gate, or can't be
    /// kept. Nothing is changed then, but that a wrong code was given is kept.
    pub fn act(&mut self, author: Option<&str>, command: Command, speech: Speech) -> Result<Change, Trouble> {
        self.act_watched(author, command, speech, &Unwatched)
    }

    /// The same, told to a watcher before anything is kept.
    fn act_watched(
        &mut self,
        author: Option<&str>,
        command: Command,
        speech: Speech,
        watch: &dyn Watch,
    ) -> Result<Change, Trouble> {
        let words = Words::new(speech);
        piece(watch, 0, 2).map_err(|why| Trouble::of_store(&why, &words))?;
        let spoken = match command {
            Command::Undo => undo::spoken(&self.store, &self.book, 1).map_err(|why| Trouble::of_store(&why, &words))?,
            _ => Vec::new(),
        };
        let said = act::Acting {
            book: &self.book,
            photos: &self.photos,
            procedures: &self.procedures,
            host: self.host.as_ref(),
            head: self.store.head().map_err(|why| Trouble::of_store(&why, &words))?.digest,
            words: &words,
            spoken: &spoken,
        }
        .carry_out(author, command)?;
        // A photo that no entry names is swept away after its time.
        piece(watch, 1, 2).map_err(|why| Trouble::of_store(&why, &words))?;
        let now = self.host.now();
        let ended = proof::ended(&said);
        let drafts = said
            .facts
            .into_iter()
            .map(|(fact, personal)| Draft {
                id: EntryId::from_parts(now.unix_ms().unsigned_abs(), self.host.random()),
                author: said.author,
                practice: said.practice
                    || fact.job().and_then(|job| self.book.job(job)).is_some_and(|job| job.practice),
                fact,
                personal,
            })
            .collect();
        // What was held against entries that can't be read must not be kept.
        self.entries.sound().map_err(|why| Trouble::of_store(&why, &words))?;
        let saved = match ended {
            Some(job) => self.gathered(job).and_then(|job| self.store.append_and_seal(drafts, now, job)),
            None => self.store.append(drafts, now),
        };
        let entries = saved.map_err(|why| Trouble::of_store(&why, &words))?;
        let ids = entries.iter().map(|entry| entry.id().to_string()).collect();
        let followed = if self.book.follow(&entries) { Ok(()) } else { self.fold_anew() };
        match followed {
            Ok(()) => self.lag.keep(&self.book, &self.store),
            // They are saved, and that is told. What they come to is not known, and that is told from now on.
            Err(why) => self.entries.failed(why),
        }
        match said.refusal {
            Some(refusal) => Err(refusal),
            None => {
                let again = spoken.first().and_then(|command| undo::again(command, &self.book));
                Ok(Change { entries: ids, said: said.sentences, next: self.next(speech), again })
            }
        }
    }

    /// Makes the book anew from all entries: for what reaches back.
    fn fold_anew(&mut self) -> Result<(), StoreError> {
        self.book = self.lag.whole(self.store.entries()?, self.host.now());
        Ok(())
    }

    /// Checks every entry and photo of the book.
    ///
    /// # Errors
    /// When the book can't be read at all.
    pub fn check(&self, speech: Speech) -> Result<CheckView, Trouble> {
        let words = Words::new(speech);
        let check = self.store.check().map_err(|why| Trouble::of_store(&why, &words))?;
        Ok(ask::check(&check, &self.photos, &self.book, &words))
    }
}
