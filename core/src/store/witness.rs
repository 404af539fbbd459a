//! A second sign, outside the database, of what was acknowledged.
//!
//! The database drops the end of its log when a byte in it is damaged, and
//! says nothing. So after each commit the writer notes, in a small file of its
//! own, how many entries the book has and the digest of the last. The note is
//! not forced to the disk: after a power cut it may be older than the book,
//! never newer.

use std::fs::{self, File, OpenOptions};
use std::io::{Seek, SeekFrom, Write};
use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::ident::Digest;

/// How far a book has come: how many entries came in, and the digest of the last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// How many entries came in.
    pub arrived: u64,
    /// Digest of the entry that came in last; none in an empty book.
    pub last: Option<Digest>,
}

impl Mark {
    /// The mark of a book without entries.
    pub const EMPTY: Self = Self { arrived: 0, last: None };

    fn line(&self) -> String {
        let last = self.last.map_or_else(|| "-".repeat(64), |digest| digest.to_string());
        let text = format!("{:020} {last}", self.arrived);
        format!("{text} {}\n", Digest::of(text.as_bytes()))
    }

    /// The mark in a file; `None` when there is none, or its own digest does not hold.
    pub(super) fn read(path: &Path) -> Option<Self> {
        let line = fs::read_to_string(path).ok()?;
        let mut words = line.split_whitespace();
        let arrived = words.next()?.parse().ok()?;
        let last = words.next()?;
        let mark = Self { arrived, last: if last.starts_with('-') { None } else { Some(last.parse().ok()?) } };
        (mark.line() == line).then_some(mark)
    }
}

/// The file with the mark.
#[derive(Debug)]
pub(super) struct Witness {
    file: File,
}

impl Witness {
    pub(super) fn open(path: &Path) -> std::io::Result<Self> {
        let file = OpenOptions::new().create(true).truncate(false).write(true).open(path)?;
        Ok(Self { file })
    }

    /// Notes the mark. The line has always the same length, so that it needs no new room.
    pub(super) fn note(&mut self, mark: &Mark) -> std::io::Result<()> {
        self.file.seek(SeekFrom::Start(0))?;
        self.file.write_all(mark.line().as_bytes())
    }
}
