//! What a check of a book can find.

use serde::{Deserialize, Serialize};

use crate::entry::Broken;
use crate::ident::StreamId;

/// What a check of the whole book found.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct Check {
    /// Entries that were read and hold.
    pub entries: u64,
    /// What does not hold.
    pub problems: Vec<Problem>,
    /// What was lost to earlier damage and is known to be missing.
    pub missing: Vec<Missing>,
}

impl Check {
    /// Whether all holds.
    pub fn ok(&self) -> bool {
        self.problems.is_empty()
    }
}

/// One thing that does not hold, and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Problem {
    /// What.
    #[serde(flatten)]
    pub kind: ProblemKind,
    /// Where.
    pub at: Spot,
}

/// What does not hold.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum ProblemKind {
    /// The bytes do not give their digest.
    Digest,
    /// The bytes are no entry.
    Unreadable,
    /// A newer program wrote the entry.
    NewerEntry {
        /// Its version.
        version: u32,
    },
    /// The personal part does not give the digest in the entry.
    Personal,
    /// The personal part is gone although nobody erased it.
    PersonalGone,
    /// The row says something else than the entry in it.
    Row,
    /// The entry is not chained to the one before it.
    Chain,
    /// Entries are missing from the stream.
    Gap {
        /// The first missing number.
        first: u64,
        /// The last missing number.
        last: u64,
    },
    /// The kept end of the stream is not the stream's end.
    Head,
    /// Entries that were acknowledged are gone from the end of the book.
    Forgotten {
        /// How many entries the book had.
        had: u64,
        /// How many it has.
        has: u64,
    },
    /// The tables are not those of a book of its version.
    Tables,
    /// The file is not a sound database.
    File {
        /// What the database said.
        said: String,
    },
    /// An earlier rescue was interrupted.
    Interrupted,
    /// The file's header is broken.
    Header,
    /// The book's file is gone, and other files of it are there.
    FileGone,
    /// A seal is not over the entries that are there.
    Seal,
    /// The stream is sealed by another device than before.
    OtherDevice,
}

impl ProblemKind {
    /// The kind's code in data: `digest`, `gap`, `forgotten` …
    ///
    /// ```
    /// use lugbook::store::ProblemKind;
    /// assert_eq!(ProblemKind::PersonalGone.code(), "personal-gone");
    /// ```
    pub fn code(&self) -> &'static str {
        match self {
            Self::Digest => "digest",
            Self::Unreadable => "unreadable",
            Self::NewerEntry { .. } => "newer-entry",
            Self::Personal => "personal",
            Self::PersonalGone => "personal-gone",
            Self::Row => "row",
            Self::Chain => "chain",
            Self::Gap { .. } => "gap",
            Self::Head => "head",
            Self::Forgotten { .. } => "forgotten",
            Self::Tables => "tables",
            Self::File { .. } => "file",
            Self::Interrupted => "interrupted",
            Self::Header => "header",
            Self::FileGone => "file-gone",
            Self::Seal => "seal",
            Self::OtherDevice => "other-device",
        }
    }
}

/// Where something does not hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "where", rename_all = "kebab-case")]
pub enum Spot {
    /// In the book's file as a whole.
    Book,
    /// In the row that came in at this count.
    Row {
        /// The count, from 1.
        arrived: u64,
    },
    /// In a stream.
    Stream {
        /// The stream.
        stream: StreamId,
    },
    /// At an entry.
    Entry {
        /// Its stream.
        stream: StreamId,
        /// Its number.
        number: u64,
    },
}

/// Numbers of a stream that were lost to damage and are known to be missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Missing {
    /// The stream.
    pub stream: StreamId,
    /// The first missing number.
    pub first: u64,
    /// The last missing number.
    pub last: u64,
}

impl Missing {
    /// How many entries are missing.
    pub fn count(&self) -> u64 {
        self.last.saturating_sub(self.first).saturating_add(1)
    }
}

impl From<&Broken> for ProblemKind {
    fn from(why: &Broken) -> Self {
        match why {
            Broken::Unreadable { .. } => Self::Unreadable,
            Broken::Newer { version } => Self::NewerEntry { version: *version },
            Broken::Digest => Self::Digest,
            Broken::Personal => Self::Personal,
            Broken::Chain { .. } => Self::Chain,
        }
    }
}
