//! What a card's file carries so that it can be verified by itself.
//!
//! The page is followed by one HTML comment, which no reader shows:
//!
//! ```text
//! <!-- lugbook-proof
//! base64 (RFC 4648) of a JSON object, 76 letters a line
//! -->
//! ```
//!
//! | in the object | what |
//! | --- | --- |
//! | `page` | what the device that wrote the file signed: digest of everything before the comment, the job, the digest of each entry |
//! | `seal` | the seal that was made when the job ended, when there is one |
//! | `entries` | the stored text of each entry of the job, in the order of the book; names stand apart and are not in it |

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};

use super::key::{Device, DeviceKey, Signature};
use super::seal::{JobSealed, Seal, SealBroken};
use crate::entry::{Broken, Entry};
use crate::ident::{Digest, JobId, StreamId};

/// What every page is signed for.
const DOMAIN: &str = "lugbook card 1";
/// The version of what a page's signature says.
const VERSION: u32 = 1;
const BEGIN: &str = "\n<!-- lugbook-proof\n";
const END: &str = "-->\n";
/// Letters on a line.
const LINE: usize = 76;

/// What the device that wrote a card's file signed. The order of the fields is the order of the signed bytes.
///
/// ```
/// use lugbook::ident::{Digest, JobId};
/// use lugbook::proof::{DeviceKey, PageSaid};
/// let said = PageSaid {
///     v: 1,
///     page: Digest::of(b"<!DOCTYPE html>"),
///     job: JobId::from_parts(1, [1; 10]),
///     entries: vec![],
///     device: DeviceKey::from_secret([7; 32]).device(),
/// };
/// assert!(serde_json::to_string(&said).unwrap().starts_with("{\"v\":1,\"page\":"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PageSaid {
    /// Version.
    pub v: u32,
    /// Digest of the page.
    pub page: Digest,
    /// The job that it shows.
    pub job: JobId,
    /// The digest of each entry of the job, in the order of the book.
    pub entries: Vec<Digest>,
    /// The device that wrote it.
    pub device: Device,
}

/// A text with its signature.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Signed {
    said: String,
    signature: Signature,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Proof {
    page: Option<Signed>,
    seal: Option<Signed>,
    entries: Vec<String>,
}

/// What does not hold in a card's file.
///
/// ```
/// use lugbook::proof::{CardFault, verify_card};
/// assert_eq!(verify_card("<!DOCTYPE html>", None).faults, [CardFault::NoProof]);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CardFault {
    /// The file carries no proof at all.
    NoProof,
    /// The proof is not as a device writes it.
    Unreadable,
    /// A newer program wrote the proof, or an entry in it.
    Newer {
        /// Its version.
        version: u32,
    },
    /// The device that wrote the file did not sign it.
    PageUnsigned,
    /// The signature under the page is not that device's.
    PageSignature,
    /// The page was changed after it was signed.
    PageChanged,
    /// An entry was changed after it was signed.
    EntryChanged {
        /// The entry's place on the card, from 1.
        line: usize,
    },
    /// An entry that was signed is not there.
    EntryMissing {
        /// Its place on the card, from 1.
        line: usize,
    },
    /// An entry stands in another place than it was signed in.
    EntryMoved {
        /// Its place on the card, from 1.
        line: usize,
    },
    /// An entry is there that was not signed.
    EntryAdded {
        /// Its place on the card, from 1.
        line: usize,
    },
    /// The seal of the job's end is not the device's.
    SealSignature,
    /// The seal is that of another job.
    SealOfAnother,
    /// The entries are not those that were sealed; the first place that differs.
    SealUnfit {
        /// The stream.
        stream: StreamId,
        /// The number of the entry.
        number: u64,
    },
    /// Another device signed it than the one that was asked for.
    OtherDevice {
        /// The device that signed.
        device: Device,
    },
}

/// What a card's file proves, and what in it does not hold.
///
/// ```
/// use lugbook::proof::CardCheck;
/// assert!(CardCheck::default().ok());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CardCheck {
    /// The device whose signature under the page holds.
    pub page: Option<Device>,
    /// How many entries the page was signed with, and are as they were.
    pub entries: usize,
    /// The device that sealed the job when it ended, and how many entries it sealed.
    pub sealed: Option<(Device, u64)>,
    /// Entries on the card that are not under that seal.
    pub after: usize,
    /// What does not hold; the first place each.
    pub faults: Vec<CardFault>,
}

impl CardCheck {
    /// Whether everything holds.
    ///
    /// ```
    /// assert!(!lugbook::proof::verify_card("a letter", None).ok());
    /// ```
    pub fn ok(&self) -> bool {
        self.faults.is_empty()
    }
}

/// The file of a card: the page, and after it what proves it. `entries` are those of the
/// job in the order of the book, `seal` is the one made when the job ended.
///
/// ```
/// use lugbook::ident::JobId;
/// use lugbook::proof::{DeviceKey, close_card, verify_card};
/// let key = DeviceKey::from_secret([7; 32]);
/// let job = JobId::from_parts(1, [1; 10]);
/// let file = close_card("<!DOCTYPE html><p>Front left: 7/32</p>", Some(&key), job, &[], None);
/// assert!(verify_card(&file, Some(&key.device().short())).ok());
/// assert!(!verify_card(&file.replace("7/32", "9/32"), None).ok());
/// ```
pub fn close_card(page: &str, key: Option<&DeviceKey>, job: JobId, entries: &[&Entry], seal: Option<&Seal>) -> String {
    let signed_page = key.and_then(|key| {
        let said = PageSaid {
            v: VERSION,
            page: Digest::of(page.as_bytes()),
            job,
            entries: entries.iter().map(|entry| entry.digest()).collect(),
            device: key.device(),
        };
        let said = serde_json::to_string(&said).ok()?;
        let signature = key.sign(DOMAIN, said.as_bytes());
        Some(Signed { said, signature })
    });
    let signed_end = seal.and_then(|seal| {
        let said = String::from_utf8(seal.bytes().to_vec()).ok()?;
        Some(Signed { said, signature: seal.signature() })
    });
    if signed_page.is_none() && signed_end.is_none() {
        return page.to_owned();
    }
    let text = |entry: &&Entry| String::from_utf8_lossy(entry.bytes()).into_owned();
    written(page, &Proof { page: signed_page, seal: signed_end, entries: entries.iter().map(text).collect() })
}

fn written(page: &str, proof: &Proof) -> String {
    let code = STANDARD.encode(serde_json::to_vec(proof).unwrap_or_default());
    let mut file = format!("{page}{BEGIN}");
    let mut rest = code.as_str();
    while !rest.is_empty() {
        let (line, after) = rest.split_at(rest.len().min(LINE));
        file.push_str(line);
        file.push('\n');
        rest = after;
    }
    file.push_str(END);
    file
}

/// Verifies a card's file by itself. `device` is the one that is expected, by what
/// stands on paper ([`Device::is_called`]); any device will do without it.
///
/// ```
/// use lugbook::ident::JobId;
/// use lugbook::proof::{CardFault, DeviceKey, close_card, verify_card};
/// let (shop, other) = (DeviceKey::from_secret([7; 32]), DeviceKey::from_secret([8; 32]));
/// let job = JobId::from_parts(1, [1; 10]);
/// let file = close_card("<p>Front left: 9/32</p>", Some(&other), job, &[], None);
/// let told = verify_card(&file, Some(&shop.device().short()));
/// assert_eq!(told.faults, [CardFault::OtherDevice { device: other.device() }]);
/// ```
pub fn verify_card(file: &str, device: Option<&str>) -> CardCheck {
    let mut check = CardCheck::default();
    if let Err(fault) = look(file, device, &mut check) {
        check.faults.push(fault);
    }
    check
}

/// Looks at one thing after the other; what makes the rest meaningless ends it.
fn look(file: &str, device: Option<&str>, check: &mut CardCheck) -> Result<(), CardFault> {
    let (page, proof) = read(file)?;
    let entries = opened(&proof.entries)?;
    let said = match &proof.page {
        Some(signed) => Some(read_page(signed)?),
        None => {
            check.faults.push(CardFault::PageUnsigned);
            None
        }
    };
    let seal = proof.seal.as_ref().map(|signed| Seal::open(signed.said.clone().into_bytes(), signed.signature));
    let seal = seal.transpose().map_err(|why| match why {
        SealBroken::Newer { version } => CardFault::Newer { version },
        SealBroken::Unreadable => CardFault::Unreadable,
        SealBroken::Signature => CardFault::SealSignature,
    })?;
    if let Some(device) = device {
        let signed = said.iter().map(|said| said.device).chain(seal.iter().map(|seal| seal.said().device));
        if let Some(device) = signed.into_iter().find(|signed| !signed.is_called(device)) {
            check.faults.push(CardFault::OtherDevice { device });
        }
    }
    if let Some(said) = &said {
        if said.page == Digest::of(page.as_bytes()) {
            check.page = Some(said.device);
        } else {
            check.faults.push(CardFault::PageChanged);
        }
        match differing(&said.entries, &entries) {
            None => check.entries = entries.len(),
            Some(fault) => check.faults.push(fault),
        }
    }
    let Some(seal) = &seal else { return Ok(()) };
    let job = said.map(|said| said.job);
    let sealed = seal.said().job.as_ref().filter(|sealed| job.is_none_or(|job| job == sealed.job));
    let sealed = sealed.ok_or(CardFault::SealOfAnother)?;
    let under: Vec<&Entry> = entries.iter().filter(|entry| is_under(sealed, entry)).collect();
    if let Some((stream, number)) = unfit(sealed, seal, &under) {
        return Err(CardFault::SealUnfit { stream, number });
    }
    check.sealed = Some((seal.said().device, sealed.entries()));
    check.after = entries.len().saturating_sub(under.len());
    Ok(())
}

/// The page and its proof; refused when the file is not exactly what a device writes.
fn read(file: &str) -> Result<(&str, Proof), CardFault> {
    let (page, rest) = file.rsplit_once(BEGIN).ok_or(CardFault::NoProof)?;
    let code: String = rest.strip_suffix(END).ok_or(CardFault::Unreadable)?.split('\n').collect();
    let bytes = STANDARD.decode(code).map_err(|_| CardFault::Unreadable)?;
    let proof: Proof = serde_json::from_slice(&bytes).map_err(|_| CardFault::Unreadable)?;
    if written(page, &proof) != file {
        return Err(CardFault::Unreadable);
    }
    Ok((page, proof))
}

fn opened(texts: &[String]) -> Result<Vec<Entry>, CardFault> {
    let mut entries = Vec::with_capacity(texts.len());
    for (line, text) in (1..).zip(texts) {
        let bytes = text.clone().into_bytes();
        let digest = Digest::of(&bytes);
        entries.push(Entry::open(bytes, digest, None).map_err(|why| match why {
            Broken::Newer { version } => CardFault::Newer { version },
            _ => CardFault::EntryChanged { line },
        })?);
    }
    Ok(entries)
}

fn read_page(signed: &Signed) -> Result<PageSaid, CardFault> {
    #[derive(Deserialize)]
    struct Version {
        v: u32,
    }
    let Version { v: version } = serde_json::from_str(&signed.said).map_err(|_| CardFault::Unreadable)?;
    if version > VERSION {
        return Err(CardFault::Newer { version });
    }
    let said: PageSaid = serde_json::from_str(&signed.said).map_err(|_| CardFault::Unreadable)?;
    if !said.device.signed(DOMAIN, signed.said.as_bytes(), &signed.signature) {
        return Err(CardFault::PageSignature);
    }
    Ok(said)
}

/// The first entry that is not what was signed.
fn differing(signed: &[Digest], entries: &[Entry]) -> Option<CardFault> {
    let found: Vec<Digest> = entries.iter().map(Entry::digest).collect();
    for at in 0..signed.len().max(found.len()) {
        let line = at.saturating_add(1);
        match (signed.get(at), found.get(at)) {
            (Some(wanted), Some(there)) if wanted == there => {}
            (Some(wanted), there) => {
                let elsewhere = found.contains(wanted);
                let known = there.is_some_and(|there| signed.contains(there));
                return Some(match (elsewhere, known, there) {
                    (true, true, _) => CardFault::EntryMoved { line },
                    (true, false, _) => CardFault::EntryAdded { line },
                    (false, false, Some(_)) => CardFault::EntryChanged { line },
                    (false, ..) => CardFault::EntryMissing { line },
                });
            }
            (None, _) => return Some(CardFault::EntryAdded { line }),
        }
    }
    None
}

fn is_under(sealed: &JobSealed, entry: &Entry) -> bool {
    sealed.holds(entry.envelope().stream, entry.envelope().number)
}

fn place(entry: &Entry) -> (StreamId, u64) {
    (entry.envelope().stream, entry.envelope().number)
}

/// The first place where the entries are not those that were sealed.
fn unfit(sealed: &JobSealed, seal: &Seal, under: &[&Entry]) -> Option<(StreamId, u64)> {
    let end = (seal.said().stream, seal.said().number);
    if sealed.is_of(under) {
        // The end of the stream is one of them: the entry that ended the job.
        let last = under.iter().find(|entry| place(entry) == end);
        return last.is_none_or(|entry| entry.digest() != seal.said().head).then_some(end);
    }
    let mut wanted = sealed.spans.iter().flat_map(|span| (span.first..=span.last).map(|number| (span.stream, number)));
    let mut there = under.iter();
    loop {
        match (wanted.next(), there.next()) {
            (Some(wanted), Some(entry)) if place(entry) == wanted => {}
            (Some(wanted), _) => return Some(wanted),
            (None, Some(entry)) => return Some(place(entry)),
            (None, None) => break,
        }
    }
    // All are in their places, so that one says something else: the next in its stream names another before it.
    let follows = |entry: &&&Entry, next: &&&Entry| {
        let (stream, number) = place(entry);
        place(next) == (stream, number.saturating_add(1))
    };
    let broken = under.iter().find(|entry| {
        let next = under.iter().find(|next| follows(entry, next));
        next.is_some_and(|next| next.envelope().previous != Some(entry.digest()))
    });
    Some(broken.map_or(end, |entry| place(entry)))
}
