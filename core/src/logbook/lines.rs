//! What was said in a job, told from its entries when it is first asked for.

use std::fmt;
use std::ops::Deref;
use std::sync::{Arc, OnceLock};

use serde::{Deserialize, Serialize};

use super::{Line, Logbook};
use crate::entry::Entry;
use crate::ident::{JobId, StreamId};

/// Entries that follow each other in one stream.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Span {
    /// The stream.
    pub stream: StreamId,
    /// The first one's number.
    pub first: u64,
    /// The last one's number.
    pub last: u64,
}

impl Span {
    /// How many entries.
    pub fn count(&self) -> u64 {
        self.last.saturating_sub(self.first).saturating_add(1)
    }

    /// Adds an entry to spans that are kept in the order of the book.
    pub fn note(spans: &mut Vec<Self>, entry: &Entry) {
        let (stream, number) = (entry.envelope().stream, entry.envelope().number);
        match spans.last_mut() {
            Some(span) if span.stream == stream && span.last.checked_add(1) == Some(number) => span.last = number,
            _ => spans.push(Self { stream, first: number, last: number }),
        }
    }
}

/// Where entries can be read again when they are needed.
pub trait Archive: Send + Sync {
    /// The entries of these spans, verified; none when one of them can't be
    /// read, which the archive has to tell by itself.
    fn entries(&self, spans: &[Span]) -> Vec<Entry>;
}

/// The lines of a job, in order; a slice of [`Line`]s.
#[derive(Default, Clone)]
pub struct Lines {
    told: OnceLock<Vec<Line>>,
    kept: Option<(JobId, Vec<Span>, Arc<dyn Archive>)>,
}

impl Lines {
    /// The lines of a job whose entries lie in an archive.
    pub(super) fn kept(job: JobId, spans: Vec<Span>, archive: Arc<dyn Archive>) -> Self {
        Self { told: OnceLock::new(), kept: Some((job, spans, archive)) }
    }

    pub(super) fn push(&mut self, line: Line) {
        // Those before it are told first.
        let _ = self.len();
        if let Some(told) = self.told.get_mut() {
            told.push(line);
        }
    }
}

impl Deref for Lines {
    type Target = [Line];

    fn deref(&self) -> &[Line] {
        self.told.get_or_init(|| {
            let Some((job, spans, archive)) = &self.kept else { return Vec::new() };
            let told = Logbook::from_iter(archive.entries(spans)).book();
            let job = told.jobs.into_iter().find(|told| told.id == *job);
            job.and_then(|job| job.lines.told.into_inner()).unwrap_or_default()
        })
    }
}

impl<'a> IntoIterator for &'a Lines {
    type Item = &'a Line;
    type IntoIter = std::slice::Iter<'a, Line>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

impl PartialEq for Lines {
    fn eq(&self, other: &Self) -> bool {
        **self == **other
    }
}

impl fmt::Debug for Lines {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.iter()).finish()
    }
}
