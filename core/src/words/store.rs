//! What is said of a book: what is safe, what is missing, what to do now.

use super::{Say, Words};
use crate::store::{Again, Mend, Missing, Problem, ProblemKind, Rescued, Restored, Spot, StoreError};

impl Say for StoreError {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::MendInput { why } => why.say(words),
            Self::FreeSpace => words.text("book-free-space", &[]),
            Self::TryAgain { why: Again::OpenElsewhere } => words.text("book-open-elsewhere", &[]),
            Self::TryAgain { why: Again::Storage } => words.text("book-storage", &[]),
            Self::TryAgain { why: Again::Stopped } => words.text("stopped", &[]),
            Self::TryAgain { why: Again::Held } => words.text("book-held", &[]),
            Self::Restore { problem } => words.text("book-damaged", &[("problem", problem.say(words).into())]),
            Self::Report { what } => words.text("book-unforeseen", &[("what", what.as_str().into())]),
        }
    }
}

impl Say for Mend {
    fn say(&self, words: &Words) -> String {
        let path = |id: &str, path: &std::path::Path| words.text(id, &[("path", shown(path).into())]);
        match self {
            Self::NotAFolder { path: at } => path("book-not-a-folder", at),
            Self::Unreachable { path: at } => path("book-unreachable", at),
            Self::NotABook { path: at } => path("book-not-a-book", at),
            Self::NotWritable { path: at } => path("book-not-writable", at),
            Self::Newer { version, known } => words
                .text("book-newer", &[("version", version.to_string().into()), ("known", known.to_string().into())]),
            Self::NotABackup { path: at } => path("book-not-a-backup", at),
            Self::NewerBackup { version, known } => words.text(
                "book-newer-backup",
                &[("version", version.to_string().into()), ("known", known.to_string().into())],
            ),
            Self::BackupDamaged { path, at } => {
                words.text("book-backup-damaged", &[("path", shown(path).into()), ("at", at.as_str().into())])
            }
            Self::NoBackupFolder { path: at } => path("book-no-backup-folder", at),
            Self::Locked { path: at } => path("book-backup-locked", at),
            Self::WrongPassphrase { path: at } => path("book-wrong-passphrase", at),
            Self::ShortPassphrase { least } => words.text("book-short-passphrase", &[("least", (*least).into())]),
            Self::NewerEntry { .. } => words.text("book-newer-entry", &[]),
            Self::SameId { id } => words.text("book-same-id", &[("id", id.to_string().into())]),
            Self::Unwritable { id } => words.text("book-unwritable", &[("id", id.short().into())]),
            Self::NoEntry { id } => words.text("book-no-entry", &[("id", id.to_string().into())]),
            Self::Unchained { stream, number } => words
                .text("book-unchained", &[("stream", stream.short().into()), ("number", number.to_string().into())]),
            Self::Forked { stream, number } => {
                words.text("book-forked", &[("stream", stream.short().into()), ("number", number.to_string().into())])
            }
            Self::SealUnfit { stream, number } => words
                .text("book-seal-unfit", &[("stream", stream.short().into()), ("number", number.to_string().into())]),
            Self::Resealed { stream, number } => {
                words.text("book-resealed", &[("stream", stream.short().into()), ("number", number.to_string().into())])
            }
            Self::StreamInUse { stream } => words.text("book-stream-in-use", &[("stream", stream.short().into())]),
        }
    }
}

impl Say for ProblemKind {
    fn say(&self, words: &Words) -> String {
        let plain = |id: &str| words.text(id, &[]);
        match self {
            Self::Digest => plain("problem-digest"),
            Self::Unreadable => plain("problem-unreadable"),
            Self::NewerEntry { .. } => plain("problem-newer-entry"),
            Self::Personal => plain("problem-personal"),
            Self::PersonalGone => plain("problem-personal-gone"),
            Self::Row => plain("problem-row"),
            Self::Chain => plain("problem-chain"),
            Self::Gap { first, last } => words.text(
                "problem-gap",
                &[
                    ("first", first.to_string().into()),
                    ("last", last.to_string().into()),
                    ("count", count(last.saturating_sub(*first).saturating_add(1)).into()),
                ],
            ),
            Self::Head => plain("problem-head"),
            Self::Forgotten { had, has } => {
                words.text("problem-forgotten", &[("had", had.to_string().into()), ("has", has.to_string().into())])
            }
            Self::Tables => plain("problem-tables"),
            Self::File { .. } => plain("problem-file"),
            Self::Interrupted => plain("problem-interrupted"),
            Self::Header => plain("problem-header"),
            Self::FileGone => plain("problem-file-gone"),
            Self::Seal => plain("problem-seal"),
            Self::OtherDevice => plain("problem-other-device"),
        }
    }
}

impl Say for Problem {
    fn say(&self, words: &Words) -> String {
        let kind = self.kind.say(words);
        match self.at {
            Spot::Book => kind,
            at => words.text("problem-at", &[("problem", kind.into()), ("at", words.spot(&at).into())]),
        }
    }
}

impl Words {
    /// Where something does not hold in a book.
    pub fn spot(&self, spot: &Spot) -> String {
        match spot {
            Spot::Book => self.text("spot-book", &[]),
            Spot::Row { arrived } => self.text("spot-row", &[("row", arrived.to_string().into())]),
            Spot::Stream { stream } => self.text("spot-stream", &[("stream", stream.short().into())]),
            Spot::Entry { stream, number } => {
                self.text("spot-entry", &[("stream", stream.short().into()), ("number", number.to_string().into())])
            }
        }
    }
}

impl Say for Rescued {
    /// What was found, what is safe, what is missing, what to do now.
    fn say(&self, words: &Words) -> String {
        let counted = |id: &str, number: u64| words.text(id, &[("count", count(number).into())]);
        let missing = self.missing.iter().map(Missing::count).fold(0, u64::saturating_add);
        let unfit = u64::try_from(self.unfit.len()).unwrap_or(u64::MAX);
        let mut said = vec![words.text("rescued-found", &[("problem", self.damage.say(words).into())])];
        said.push(counted("rescued-safe", self.entries));
        if let Some(had) = self.had.filter(|had| *had != self.entries) {
            said.push(words.text("rescued-of", &[("had", had.to_string().into())]));
        }
        for (id, number) in
            [("rescued-missing", missing), ("rescued-unfit", unfit), ("rescued-personal", self.personal_lost)]
        {
            if number > 0 {
                said.push(counted(id, number));
            }
        }
        let complete = missing == 0 && unfit == 0 && self.personal_lost == 0;
        match self.had {
            None => said.push(words.text("rescued-unknown", &[])),
            Some(had) if had == self.entries && complete => said.push(words.text("rescued-whole", &[])),
            Some(_) => {}
        }
        said.push(words.text("rescued-now", &[("aside", self.aside.display().to_string().into())]));
        said.join(" ")
    }
}

impl Say for Restored {
    /// How many entries there were, came, and are.
    fn say(&self, words: &Words) -> String {
        let new = words.text("restored", &[("count", count(self.merged.new).into())]);
        let (before, after) = (self.before.to_string(), self.after.to_string());
        let counts = words.text("restored-counts", &[("before", before.into()), ("after", after.into())]);
        format!("{new} {counts}")
    }
}

/// A path as it is told: one line, and of a long one its end, which says most.
fn shown(path: &std::path::Path) -> String {
    const MOST: usize = 160;
    let text: String = path.display().to_string().chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    let count = text.chars().count();
    if count <= MOST { text } else { std::iter::once('…').chain(text.chars().skip(count - MOST)).collect() }
}

/// A count for a plural.
fn count(number: u64) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}
