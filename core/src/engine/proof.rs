//! What is proven: of a card's file by itself, and of a whole book.

use super::{CheckLine, Engine, ProofView, Trouble, act::Said};
use crate::entry::{Entry, Fact};
use crate::ident::JobId;
use crate::logbook::{Job, Logbook};
use crate::proof::{Gathered, Seal};
use crate::report::SealShown;
use crate::store::{Missing, Problem, ProblemKind, Spot, StoreError};
use crate::words::{Say, Speech, Words};

/// Verifies a card's file by itself: no book is needed, and no network. `device` is
/// the device that is expected, as it stands on a paper copy.
///
/// ```
/// use lugbook::engine::verify_card;
/// use lugbook::words::Speech;
/// let told = verify_card("<!DOCTYPE html><p>a page of somebody's</p>", None, Speech::default());
/// assert!(!told.ok && told.proven.is_empty());
/// assert_eq!(told.refused[0].kind, "no-proof");
/// ```
pub fn verify_card(file: &str, device: Option<&str>, speech: Speech) -> ProofView {
    let words = Words::new(speech);
    let check = crate::proof::verify_card(file, device);
    let refused = check.faults.iter().map(|fault| CheckLine {
        kind: fault.code().to_owned(),
        at: words.fault_place(fault),
        sentence: fault.say(&words),
    });
    ProofView {
        ok: check.ok(),
        proven: words.card_proven(&check),
        not_proven: words.card_not_proven(&check),
        refused: refused.collect(),
    }
}

/// The job that a command ends.
pub(super) fn ended(said: &Said) -> Option<JobId> {
    said.facts.iter().find_map(|(fact, _)| match fact {
        Fact::JobSigned { job, .. } | Fact::JobClosed { job, .. } => Some(*job),
        _ => None,
    })
}

impl Engine {
    /// The entries of a job so far, on the way into a seal.
    pub(super) fn gathered(&self, job: JobId) -> Result<Gathered, StoreError> {
        let mut gathered = Gathered::of(job);
        if let Some(job) = self.book.job(job) {
            self.entries.of_job(job)?.entries().for_each(|entry| gathered.add(entry));
        }
        Ok(gathered)
    }

    /// The seal that was made when a job ended for the last time.
    pub(super) fn seal_of(&self, job: &Job, logbook: &Logbook) -> Result<Option<Seal>, StoreError> {
        let ends = |entry: &&Entry| matches!(entry.fact(), Fact::JobSigned { .. } | Fact::JobClosed { .. });
        let Some(end) = logbook.entries().filter(ends).last() else { return Ok(None) };
        let (stream, number) = (end.envelope().stream, end.envelope().number);
        let Some(seal) = self.store.seal_from(stream, number)? else { return Ok(None) };
        let Some(sealed) = seal.said().job.as_ref().filter(|sealed| sealed.job == job.id) else { return Ok(None) };
        let under = |entry: &&Entry| sealed.holds(entry.envelope().stream, entry.envelope().number);
        if !sealed.is_of(&logbook.entries().filter(under).collect::<Vec<_>>()) {
            let at = Spot::Entry { stream: seal.said().stream, number: seal.said().number };
            return Err(StoreError::Restore { problem: Problem { kind: ProblemKind::Seal, at } });
        }
        Ok(Some(seal))
    }

    /// What a card says of its seal.
    pub(super) fn seal_shown(&self, seal: Option<&Seal>, logbook: &Logbook) -> SealShown {
        let job = seal.and_then(|seal| seal.said().job.as_ref());
        let after = logbook.entries().filter(|entry| {
            let said = entry.envelope();
            job.is_some_and(|job| !job.holds(said.stream, said.number))
        });
        SealShown {
            sealed_by: seal.map(|seal| seal.said().device.short()),
            after: after.count(),
            written_by: self.key.as_ref().map(|key| key.device().short()),
        }
    }

    /// What of the whole book is proven, and what not. Nothing is changed by it but
    /// that damage, when some is met, stops all writing.
    ///
    /// # Errors
    /// When the book can't be read at all.
    pub fn verify(&self, speech: Speech) -> Result<ProofView, Trouble> {
        let words = Words::new(speech);
        let view = self.check(speech)?;
        let trouble = |why: StoreError| Trouble::of_store(&why, &words);
        let streams = self.store.sealed().map_err(trouble)?;
        let proven =
            if view.ok { streams.iter().filter_map(|stream| words.stream_proven(stream)).collect() } else { vec![] };
        let mut not_proven: Vec<String> = streams.iter().filter_map(|stream| words.stream_not_proven(stream)).collect();
        let missing: u64 = self.opened.missing.iter().map(Missing::count).fold(0, u64::saturating_add);
        not_proven.extend(words.missing_not_proven(missing));
        not_proven.extend(words.never_proven());
        Ok(ProofView { ok: view.ok, proven, not_proven, refused: view.problems })
    }
}
