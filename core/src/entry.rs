//! The record: what was seen, measured or done, written once and never changed.
//!
//! An [`Entry`] is an envelope around one [`Fact`]. Its bytes are made once, by
//! [`Draft::seal`], and stored as they are; its digest is the digest of those
//! bytes, never of a second serialization. Each entry names the digest of the
//! entry before it in its device's stream, so that a stream is a chain.
//!
//! Names, phone numbers, plates and drawn signatures stand beside the payload in a [`Personal`]
//! part. The envelope holds only that part's salted digest, so that the part
//! can be erased later while the chain still verifies.

mod fact;
mod personal;
mod strokes;

use serde::{Deserialize, Serialize};

pub use fact::{
    Answer, Arm, Complaint, CoverBox, Decision, DriveSeen, Fact, Kind, Laid, Learned, Look, LookAt, Means, Move, Nuts,
    OdometerNote, Pass, PhotoOf, ReadBy, Relearn, Role, SeenStep, SensorKind, Shelf, Signature, SpareNuts, Thing,
    TireDamage, ToolKind, Turned, Zone,
};
pub use personal::Personal;
pub use strokes::{NoStrokes, Strokes};

pub use crate::tire::{SidewallSide, TireLooks};

use crate::calendar::Moment;
use crate::ident::{Digest, EntryId, PersonId, StreamId};

/// The version of the envelope that this build writes, and the newest it reads.
pub const VERSION: u32 = 1;

/// A hybrid logical time: the device's clock, never running backwards, and a
/// count within one millisecond. It orders entries; it does not prove the time.
///
/// ```
/// use lugbook::calendar::Moment;
/// use lugbook::entry::HybridTime;
/// let now = Moment::from_unix_ms(1_000);
/// let first = HybridTime::START.next(now);
/// // The clock was set back: the time goes on by counting.
/// let second = first.next(Moment::from_unix_ms(10));
/// assert!(second > first && second.wall == first.wall);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct HybridTime {
    /// The wall clock's part, Unix milliseconds.
    #[serde(rename = "ms")]
    pub wall: Moment,
    /// The count within that millisecond.
    #[serde(rename = "n")]
    pub count: u32,
}

impl HybridTime {
    /// Before any entry.
    pub const START: Self = Self { wall: Moment::START, count: 0 };

    /// The time of the next entry, when the clock says `now`.
    pub fn next(self, now: Moment) -> Self {
        if now > self.wall {
            Self { wall: now, count: 0 }
        } else if let Some(count) = self.count.checked_add(1) {
            Self { wall: self.wall, count }
        } else {
            Self { wall: Moment::from_unix_ms(self.wall.unix_ms().saturating_add(1)), count: 0 }
        }
    }
}

fn is_first(part: &u32) -> bool {
    *part == 0
}

/// What goes around a fact. The order of the fields is the order of the stored bytes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Envelope {
    /// Version of this envelope.
    pub v: u32,
    /// The entry's id, made by the caller.
    pub id: EntryId,
    /// The device's stream.
    pub stream: StreamId,
    /// The number in the stream, from 1 without a gap.
    pub number: u64,
    /// When, as far as the device knew.
    pub time: HybridTime,
    /// Who said it.
    pub author: PersonId,
    /// Part of a practice job: kept out of wear, due dates and history.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub practice: bool,
    /// Digest of the entry before it in this stream; none for the first.
    pub previous: Option<Digest>,
    /// Salted digest of the personal part, when there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub personal: Option<Digest>,
    /// Which part of its command it is, from 0: what was said in one go is taken back in one go.
    #[serde(default, skip_serializing_if = "is_first")]
    pub part: u32,
    /// What is said.
    pub fact: Fact,
}

/// One entry as it is kept: the envelope, the bytes it was read from and their
/// digest, and the personal part unless that was erased.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    envelope: Envelope,
    bytes: Vec<u8>,
    digest: Digest,
    personal: Option<Personal>,
}

/// What a caller gives for a new entry; the stream adds number, time and chain.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// The entry's id. The same id twice is the same entry.
    pub id: EntryId,
    /// Who says it.
    pub author: PersonId,
    /// Part of a practice job.
    pub practice: bool,
    /// What is said.
    pub fact: Fact,
    /// Name, phone or plate, kept apart.
    pub personal: Option<Personal>,
}

/// The end of a stream: what the next entry is chained to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Head {
    /// The stream.
    pub stream: StreamId,
    /// The last entry's number; 0 when there is none.
    pub number: u64,
    /// The last entry's time.
    pub time: HybridTime,
    /// The last entry's digest; none when there is none.
    pub digest: Option<Digest>,
}

/// Why stored bytes are not the entry they should be.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Broken {
    /// The bytes are not an entry.
    #[error("not an entry: {why}")]
    Unreadable {
        /// What the reader stumbled over.
        why: String,
    },
    /// A newer program wrote this.
    #[error("entry of version {version}, newer than {VERSION}")]
    Newer {
        /// The version it has.
        version: u32,
    },
    /// The bytes do not give the digest that was kept with them.
    #[error("the bytes do not match their digest")]
    Digest,
    /// The personal part does not give the digest in the envelope.
    #[error("the personal part does not match its digest")]
    Personal,
    /// The entry is not chained to the one before it.
    #[error("the chain is broken at number {number}")]
    Chain {
        /// The entry's number.
        number: u64,
    },
}

impl Head {
    /// The head of a stream without entries.
    pub fn empty(stream: StreamId) -> Self {
        Self { stream, number: 0, time: HybridTime::START, digest: None }
    }

    /// The head after `entry`.
    ///
    /// # Errors
    /// [`Broken::Chain`] when the entry does not follow this head.
    pub fn then(&self, entry: &Entry) -> Result<Self, Broken> {
        let e = &entry.envelope;
        let follows = e.stream == self.stream
            && Some(e.number) == self.number.checked_add(1)
            && e.previous == self.digest
            && e.time > self.time;
        if !follows {
            return Err(Broken::Chain { number: e.number });
        }
        Ok(Self { stream: self.stream, number: e.number, time: e.time, digest: Some(entry.digest) })
    }
}

impl Draft {
    /// Makes the entry that follows `head`, at the device's time `now`.
    ///
    /// # Errors
    /// When the fact cannot be written down (a number that is no number), or
    /// the stream is full.
    pub fn seal(self, head: &Head, now: Moment) -> Result<Entry, Broken> {
        self.seal_part(head, now, 0)
    }

    /// Makes the entry as [`Draft::seal`] does, as one of several that a command came
    /// to: `part` counts them from 0.
    ///
    /// # Errors
    /// As [`Draft::seal`].
    pub fn seal_part(self, head: &Head, now: Moment, part: u32) -> Result<Entry, Broken> {
        let number = head.number.checked_add(1).ok_or(Broken::Chain { number: head.number })?;
        let envelope = Envelope {
            v: VERSION,
            id: self.id,
            stream: head.stream,
            number,
            time: head.time.next(now),
            author: self.author,
            practice: self.practice,
            previous: head.digest,
            personal: self.personal.as_ref().map(Personal::digest),
            part,
            fact: self.fact,
        };
        let bytes = serde_json::to_vec(&envelope).map_err(|why| Broken::Unreadable { why: why.to_string() })?;
        let digest = Digest::of(&bytes);
        Ok(Entry { envelope, bytes, digest, personal: self.personal })
    }
}

impl Entry {
    /// Reads an entry from its stored bytes and the digest kept with them.
    ///
    /// # Errors
    /// When the bytes or the personal part do not match their digests, are no
    /// entry, or were written by a newer program.
    pub fn open(bytes: Vec<u8>, digest: Digest, personal: Option<Personal>) -> Result<Self, Broken> {
        #[derive(Deserialize)]
        struct Version {
            v: u32,
        }
        if Digest::of(&bytes) != digest {
            return Err(Broken::Digest);
        }
        let unreadable = |why: serde_json::Error| Broken::Unreadable { why: why.to_string() };
        let envelope = match serde_json::from_slice::<Envelope>(&bytes) {
            Ok(envelope) if envelope.v <= VERSION => envelope,
            Ok(Envelope { v: version, .. }) => return Err(Broken::Newer { version }),
            Err(why) => {
                let Version { v: version } = serde_json::from_slice(&bytes).map_err(unreadable)?;
                return Err(if version > VERSION { Broken::Newer { version } } else { unreadable(why) });
            }
        };
        if personal.as_ref().is_some_and(|part| Some(part.digest()) != envelope.personal) {
            return Err(Broken::Personal);
        }
        Ok(Self { envelope, bytes, digest, personal })
    }

    /// The envelope with the fact.
    pub fn envelope(&self) -> &Envelope {
        &self.envelope
    }

    /// The fact.
    pub fn fact(&self) -> &Fact {
        &self.envelope.fact
    }

    /// The entry's id.
    pub fn id(&self) -> EntryId {
        self.envelope.id
    }

    /// The bytes as they are stored.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// The digest of the stored bytes.
    pub fn digest(&self) -> Digest {
        self.digest
    }

    /// The personal part, unless there was none or it was erased.
    pub fn personal(&self) -> Option<&Personal> {
        self.personal.as_ref()
    }

    /// Where the entry stands in the book: time, then stream, then number.
    pub fn order(&self) -> (HybridTime, StreamId, u64) {
        (self.envelope.time, self.envelope.stream, self.envelope.number)
    }
}
