//! A device's signature over the end of its stream, and over the entries of a job.

use serde::{Deserialize, Serialize};

use super::key::{Device, DeviceKey, Signature};
use crate::entry::{Entry, Head};
use crate::ident::{Digest, JobId, StreamId};
use crate::logbook::Span;

/// What every seal is signed for.
const DOMAIN: &str = "lugbook seal 1";
/// The version of seals that this build writes, and the newest it reads.
const VERSION: u32 = 1;

/// What a seal says. The order of the fields is the order of the signed bytes.
///
/// ```
/// use lugbook::ident::{Digest, StreamId};
/// use lugbook::proof::{DeviceKey, Sealed};
/// let stream = StreamId::from_parts(1, [1; 10]);
/// let device = DeviceKey::from_secret([7; 32]).device();
/// let said = Sealed { v: 1, stream, number: 3, head: Digest::of(b"third"), device, job: None };
/// let text = serde_json::to_string(&said).unwrap();
/// assert_eq!(serde_json::from_str::<Sealed>(&text).unwrap(), said);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Sealed {
    /// Version of the seal.
    pub v: u32,
    /// The stream.
    pub stream: StreamId,
    /// The number of the entry at its end.
    pub number: u64,
    /// That entry's digest: the chain ties every earlier entry of the stream to it.
    pub head: Digest,
    /// The device that signs.
    pub device: Device,
    /// The job that ended here, with all its entries.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub job: Option<JobSealed>,
}

/// The entries of a job as they stood when it was sealed.
///
/// ```
/// use lugbook::ident::JobId;
/// use lugbook::proof::{Gathered, JobSealed};
/// let sealed: JobSealed = Gathered::of(JobId::from_parts(1, [1; 10])).finish();
/// assert!(sealed.spans.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct JobSealed {
    /// The job.
    pub job: JobId,
    /// Where its entries stand, in the order of the book.
    pub spans: Vec<Span>,
    /// Digest of their digests, in that order.
    pub digest: Digest,
}

/// The entries of a job on the way into a seal.
///
/// ```
/// use lugbook::ident::JobId;
/// use lugbook::proof::Gathered;
/// let none = Gathered::of(JobId::from_parts(1, [1; 10])).finish();
/// assert_eq!(none.entries(), 0);
/// ```
#[derive(Debug, Clone)]
pub struct Gathered {
    job: JobId,
    spans: Vec<Span>,
    digests: Vec<u8>,
}

impl Gathered {
    /// None yet.
    ///
    /// ```
    /// use lugbook::ident::JobId;
    /// use lugbook::proof::Gathered;
    /// let job = JobId::from_parts(1, [1; 10]);
    /// assert_eq!(Gathered::of(job).job(), job);
    /// ```
    pub fn of(job: JobId) -> Self {
        Self { job, spans: Vec::new(), digests: Vec::new() }
    }

    /// The job.
    ///
    /// ```
    /// use lugbook::ident::JobId;
    /// use lugbook::proof::Gathered;
    /// let job = JobId::from_parts(2, [1; 10]);
    /// assert_eq!(Gathered::of(job).job(), job);
    /// ```
    pub fn job(&self) -> JobId {
        self.job
    }

    /// Adds the next entry in the order of the book.
    ///
    /// ```
    /// # use lugbook::calendar::Moment;
    /// # use lugbook::entry::{Draft, Fact, Head};
    /// # use lugbook::ident::{EntryId, JobId, PersonId, StreamId};
    /// use lugbook::proof::Gathered;
    /// let job = JobId::from_parts(1, [1; 10]);
    /// # let draft = Draft { id: EntryId::from_parts(2, [2; 10]), author: PersonId::from_parts(3, [3; 10]),
    /// #     practice: false, fact: Fact::JobResumed { job }, personal: None };
    /// # let entry = draft.seal(&Head::empty(StreamId::from_parts(1, [1; 10])), Moment::from_unix_ms(5)).unwrap();
    /// let mut gathered = Gathered::of(job);
    /// gathered.add(&entry);
    /// assert_eq!(gathered.finish().entries(), 1);
    /// ```
    pub fn add(&mut self, entry: &Entry) {
        Span::note(&mut self.spans, entry);
        self.digests.extend_from_slice(entry.digest().as_bytes());
    }

    /// What a seal says of them.
    ///
    /// ```
    /// use lugbook::ident::JobId;
    /// use lugbook::proof::Gathered;
    /// let (one, two) = (JobId::from_parts(1, [1; 10]), JobId::from_parts(1, [2; 10]));
    /// assert_eq!(Gathered::of(one).finish().digest, Gathered::of(two).finish().digest);
    /// ```
    pub fn finish(self) -> JobSealed {
        JobSealed { job: self.job, spans: self.spans, digest: Digest::of(&self.digests) }
    }
}

impl JobSealed {
    /// How many entries it holds.
    ///
    /// ```
    /// use lugbook::ident::{Digest, JobId, StreamId};
    /// use lugbook::logbook::Span;
    /// use lugbook::proof::JobSealed;
    /// let span = Span { stream: StreamId::from_parts(1, [1; 10]), first: 4, last: 6 };
    /// let job = JobSealed { job: JobId::from_parts(1, [1; 10]), spans: vec![span], digest: Digest::of(b"") };
    /// assert_eq!(job.entries(), 3);
    /// ```
    pub fn entries(&self) -> u64 {
        self.spans.iter().map(Span::count).fold(0, u64::saturating_add)
    }

    /// Whether an entry at this place is among them.
    ///
    /// ```
    /// use lugbook::ident::{Digest, JobId, StreamId};
    /// use lugbook::logbook::Span;
    /// use lugbook::proof::JobSealed;
    /// let stream = StreamId::from_parts(1, [1; 10]);
    /// let span = Span { stream, first: 4, last: 6 };
    /// let job = JobSealed { job: JobId::from_parts(1, [1; 10]), spans: vec![span], digest: Digest::of(b"") };
    /// assert!(job.holds(stream, 4) && !job.holds(stream, 7));
    /// ```
    pub fn holds(&self, stream: StreamId, number: u64) -> bool {
        self.spans.iter().any(|span| span.stream == stream && (span.first..=span.last).contains(&number))
    }

    /// Whether these are the entries that were sealed: all of them, in order, as they were.
    ///
    /// ```
    /// use lugbook::ident::JobId;
    /// use lugbook::proof::Gathered;
    /// let none = Gathered::of(JobId::from_parts(1, [1; 10])).finish();
    /// assert!(none.is_of(&[]));
    /// ```
    pub fn is_of(&self, entries: &[&Entry]) -> bool {
        let mut gathered = Gathered::of(self.job);
        entries.iter().for_each(|entry| gathered.add(entry));
        gathered.finish() == *self
    }
}

/// A device's signature over the end of its stream.
///
/// ```
/// use lugbook::entry::Head;
/// use lugbook::ident::{Digest, StreamId};
/// use lugbook::proof::{DeviceKey, Seal};
/// let stream = StreamId::from_parts(1, [1; 10]);
/// let head = Head { number: 3, digest: Some(Digest::of(b"third")), ..Head::empty(stream) };
/// assert!(Seal::make(&DeviceKey::from_secret([7; 32]), &head, None).is_some());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seal {
    said: Sealed,
    bytes: Vec<u8>,
    signature: Signature,
}

/// Why bytes and a signature are no seal.
///
/// ```
/// use lugbook::proof::{Seal, SealBroken, Signature};
/// let signature = Signature::from_bytes(&[0; 64]).unwrap();
/// assert_eq!(Seal::open(b"{}".to_vec(), signature), Err(SealBroken::Unreadable));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum SealBroken {
    /// The bytes say nothing that this program understands.
    #[error("not a seal")]
    Unreadable,
    /// A newer program wrote it.
    #[error("a seal of version {version}, newer than {VERSION}")]
    Newer {
        /// The version it has.
        version: u32,
    },
    /// The device it names did not sign these bytes.
    #[error("the device did not sign this")]
    Signature,
}

impl Seal {
    /// Seals the end of a stream; nothing when it has no entry.
    ///
    /// ```
    /// use lugbook::entry::Head;
    /// use lugbook::ident::StreamId;
    /// use lugbook::proof::{DeviceKey, Seal};
    /// let empty = Head::empty(StreamId::from_parts(1, [1; 10]));
    /// assert_eq!(Seal::make(&DeviceKey::from_secret([7; 32]), &empty, None), None);
    /// ```
    pub fn make(key: &DeviceKey, head: &Head, job: Option<JobSealed>) -> Option<Self> {
        let device = key.device();
        let said = Sealed { v: VERSION, stream: head.stream, number: head.number, head: head.digest?, device, job };
        let bytes = serde_json::to_vec(&said).ok()?;
        let signature = key.sign(DOMAIN, &bytes);
        Some(Self { said, bytes, signature })
    }

    /// Reads a seal from its stored bytes, and verifies its signature.
    ///
    /// ```
    /// # use lugbook::entry::Head;
    /// # use lugbook::ident::{Digest, StreamId};
    /// # use lugbook::proof::{DeviceKey, Seal, SealBroken};
    /// # let stream = StreamId::from_parts(1, [1; 10]);
    /// # let head = Head { number: 3, digest: Some(Digest::of(b"third")), ..Head::empty(stream) };
    /// let seal = Seal::make(&DeviceKey::from_secret([7; 32]), &head, None).unwrap();
    /// let other = Seal::make(&DeviceKey::from_secret([8; 32]), &head, None).unwrap();
    /// assert_eq!(Seal::open(seal.bytes().to_vec(), other.signature()), Err(SealBroken::Signature));
    /// ```
    ///
    /// # Errors
    /// [`SealBroken`].
    pub fn open(bytes: Vec<u8>, signature: Signature) -> Result<Self, SealBroken> {
        #[derive(Deserialize)]
        struct Version {
            v: u32,
        }
        let Version { v: version } = serde_json::from_slice(&bytes).map_err(|_| SealBroken::Unreadable)?;
        if version > VERSION {
            return Err(SealBroken::Newer { version });
        }
        let said: Sealed = serde_json::from_slice(&bytes).map_err(|_| SealBroken::Unreadable)?;
        if !said.device.signed(DOMAIN, &bytes, &signature) {
            return Err(SealBroken::Signature);
        }
        Ok(Self { said, bytes, signature })
    }

    /// What it says.
    ///
    /// ```
    /// # use lugbook::entry::Head;
    /// # use lugbook::ident::{Digest, StreamId};
    /// # use lugbook::proof::{DeviceKey, Seal};
    /// # let stream = StreamId::from_parts(1, [1; 10]);
    /// # let head = Head { number: 3, digest: Some(Digest::of(b"third")), ..Head::empty(stream) };
    /// let seal = Seal::make(&DeviceKey::from_secret([7; 32]), &head, None).unwrap();
    /// assert_eq!((seal.said().stream, seal.said().number), (stream, 3));
    /// ```
    pub fn said(&self) -> &Sealed {
        &self.said
    }

    /// The bytes that were signed.
    ///
    /// ```
    /// # use lugbook::entry::Head;
    /// # use lugbook::ident::{Digest, StreamId};
    /// # use lugbook::proof::{DeviceKey, Seal};
    /// # let head = Head { number: 3, digest: Some(Digest::of(b"third")), ..Head::empty(StreamId::from_parts(1, [1; 10])) };
    /// let seal = Seal::make(&DeviceKey::from_secret([7; 32]), &head, None).unwrap();
    /// assert!(seal.bytes().starts_with(b"{\"v\":1,\"stream\":"));
    /// ```
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// The signature over them.
    ///
    /// ```
    /// # use lugbook::entry::Head;
    /// # use lugbook::ident::{Digest, StreamId};
    /// # use lugbook::proof::{DeviceKey, Seal};
    /// # let head = Head { number: 3, digest: Some(Digest::of(b"third")), ..Head::empty(StreamId::from_parts(1, [1; 10])) };
    /// let seal = Seal::make(&DeviceKey::from_secret([7; 32]), &head, None).unwrap();
    /// // The same seal made twice is the same: RFC 8032 takes no random number.
    /// assert_eq!(Seal::make(&DeviceKey::from_secret([7; 32]), &head, None).unwrap().signature(), seal.signature());
    /// ```
    pub fn signature(&self) -> Signature {
        self.signature
    }
}
