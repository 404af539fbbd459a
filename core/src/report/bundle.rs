//! A learner's logbook as a bundle to take along: one zip file that is read again without the book.
//!
//! Format 1, for anyone who reads it with other means:
//!
//! | name in the archive | what |
//! | --- | --- |
//! | `manifest.json` | format, version, when made, the learner, the people it names, digests and lengths of all that follows |
//! | `logbook.html`, `logbook.pdf` | the logbook as it is handed in |
//! | `entries.jsonl` | a line for each entry: `entry`, its stored text; `digest`, BLAKE3 of that text, as in a backup |
//! | `photos/<digest>.jpg` | each photo as it goes out, covered parts filled, named by the digest of the photo it was made from |
//!
//! It holds what the learner's hands did and what instructors signed. A customer's complaint, approval and
//! damage, plates, phone numbers and codes are not in it. What it proves: its entries are as they were
//! written. It does not prove that none is left out, or who wrote them.

use std::io::{Cursor, Read, Write};

use serde::{Deserialize, Serialize};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use crate::calendar::Moment;
use crate::entry::{Entry, Fact, Role};
use crate::ident::{Digest, PersonId};
use crate::logbook::{Book, Logbook};

/// The version that this build writes, and the newest it reads.
const VERSION: u32 = 1;
const FORMAT: &str = "lugbook-learner";
const MANIFEST: &str = "manifest.json";
const ENTRIES: &str = "entries.jsonl";
const HTML: &str = "logbook.html";
const PDF: &str = "logbook.pdf";

/// The largest manifest and the largest part that are read, in bytes.
const MANIFEST_LIMIT: u64 = 16 << 20;
const PART_LIMIT: u64 = 256 << 20;

/// Why bytes are no bundle, or none could be made.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum BundleError {
    /// Not a bundle of this program.
    #[error("not a bundle")]
    NotABundle,
    /// A newer program made it.
    #[error("a bundle of version {version}")]
    Newer {
        /// The version it has.
        version: u32,
    },
    /// A part is missing or not what it was.
    #[error("damaged at {at}")]
    Damaged {
        /// Which part.
        at: String,
    },
    /// It could not be packed.
    #[error("not packed: {why}")]
    Unpacked {
        /// What the library says.
        why: String,
    },
}

/// Somebody whom a bundle names.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Named {
    /// The person.
    pub id: PersonId,
    /// The name; none when it was erased.
    pub name: Option<String>,
    /// What the person may do.
    pub role: Role,
}

/// Everything that goes into a bundle.
#[derive(Debug, Clone)]
pub struct Contents {
    /// When it is made.
    pub made: Moment,
    /// Whose logbook.
    pub learner: PersonId,
    /// The learner, and who signed.
    pub people: Vec<Named>,
    /// Entries, in order.
    pub entries: Vec<Entry>,
    /// The page.
    pub html: String,
    /// The same on paper.
    pub pdf: Vec<u8>,
    /// Photos as they go out, by the digest of the photo each was made from.
    pub photos: Vec<(Digest, Vec<u8>)>,
}

/// A bundle whose every part was verified.
#[derive(Debug, Clone, PartialEq)]
pub struct Bundle {
    /// When it was made, by the device's clock.
    pub made: Moment,
    /// Whose logbook.
    pub learner: PersonId,
    /// The learner, and who signed.
    pub people: Vec<Named>,
    /// Entries, in order.
    pub entries: Vec<Entry>,
    /// The page.
    pub html: String,
    /// The photos' digests.
    pub photos: Vec<Digest>,
}

#[derive(Serialize, Deserialize)]
struct Part {
    digest: Digest,
    bytes: u64,
}

#[derive(Serialize, Deserialize)]
struct Photo {
    photo: Digest,
    #[serde(flatten)]
    part: Part,
}

#[derive(Serialize, Deserialize)]
struct Manifest {
    format: String,
    version: u32,
    made: Moment,
    learner: PersonId,
    people: Vec<Named>,
    count: u64,
    entries: Part,
    html: Part,
    pdf: Part,
    photos: Vec<Photo>,
}

#[derive(Serialize, Deserialize)]
struct Line {
    entry: String,
    digest: Digest,
}

/// Whether a bundle takes an entry of a learner's job: not what a customer said or was told.
pub fn is_taken(fact: &Fact) -> bool {
    match fact {
        Fact::ComplaintHeard { .. }
        | Fact::DamageSeen { .. }
        | Fact::WorkApproved { .. }
        | Fact::CodeSet { .. }
        | Fact::CodeRefused { .. } => false,
        Fact::Corrected { fact, .. } => is_taken(fact),
        _ => true,
    }
}

fn part(bytes: &[u8]) -> Part {
    Part { digest: Digest::of(bytes), bytes: u64::try_from(bytes.len()).unwrap_or(u64::MAX) }
}

fn photo_name(photo: &Digest) -> String {
    format!("photos/{photo}.jpg")
}

/// Packs a bundle.
///
/// # Errors
/// [`BundleError::Unpacked`]; only a bundle of more than 4 GiB does that.
pub fn write(contents: &Contents) -> Result<Vec<u8>, BundleError> {
    let unpacked = |why: &dyn std::fmt::Display| BundleError::Unpacked { why: why.to_string() };
    let mut lines = Vec::new();
    for entry in &contents.entries {
        let text = std::str::from_utf8(entry.bytes()).map_err(|why| unpacked(&why))?.to_owned();
        let line = Line { entry: text, digest: entry.digest() };
        serde_json::to_writer(&mut lines, &line).map_err(|why| unpacked(&why))?;
        lines.push(b'\n');
    }
    let manifest = Manifest {
        format: FORMAT.to_owned(),
        version: VERSION,
        made: contents.made,
        learner: contents.learner,
        people: contents.people.clone(),
        count: u64::try_from(contents.entries.len()).unwrap_or(u64::MAX),
        entries: part(&lines),
        html: part(contents.html.as_bytes()),
        pdf: part(&contents.pdf),
        photos: contents.photos.iter().map(|(photo, jpeg)| Photo { photo: *photo, part: part(jpeg) }).collect(),
    };
    let manifest = serde_json::to_vec_pretty(&manifest).map_err(|why| unpacked(&why))?;
    let packed = SimpleFileOptions::default().compression_method(CompressionMethod::Deflated);
    // Photos and PDFs do not get smaller.
    let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    let mut put = |name: &str, bytes: &[u8], options: SimpleFileOptions| {
        archive.start_file(name, options).map_err(|why| unpacked(&why))?;
        archive.write_all(bytes).map_err(|why| unpacked(&why))
    };
    put(MANIFEST, &manifest, packed)?;
    put(HTML, contents.html.as_bytes(), packed)?;
    put(PDF, &contents.pdf, stored)?;
    put(ENTRIES, &lines, packed)?;
    for (photo, jpeg) in &contents.photos {
        put(&photo_name(photo), jpeg, stored)?;
    }
    archive.finish().map(Cursor::into_inner).map_err(|why| unpacked(&why))
}

fn damaged(at: &str) -> BundleError {
    BundleError::Damaged { at: at.to_owned() }
}

/// Reads a bundle and verifies every part of it.
///
/// # Errors
/// When it is none, a newer program made it, or a part is missing or not what it was.
pub fn read(bytes: &[u8]) -> Result<Bundle, BundleError> {
    #[derive(Deserialize)]
    struct Version {
        format: String,
        version: u32,
    }
    let mut archive = ZipArchive::new(Cursor::new(bytes)).map_err(|_| BundleError::NotABundle)?;
    let mut text = Vec::new();
    let file = archive.by_name(MANIFEST).map_err(|_| BundleError::NotABundle)?;
    file.take(MANIFEST_LIMIT).read_to_end(&mut text).map_err(|_| damaged(MANIFEST))?;
    let said: Version = serde_json::from_slice(&text).map_err(|_| BundleError::NotABundle)?;
    if said.format != FORMAT {
        return Err(BundleError::NotABundle);
    }
    if said.version > VERSION {
        return Err(BundleError::Newer { version: said.version });
    }
    let manifest: Manifest = serde_json::from_slice(&text).map_err(|_| damaged(MANIFEST))?;
    let mut whole = |name: &str, part: &Part| -> Result<Vec<u8>, BundleError> {
        let file = archive.by_name(name).map_err(|_| damaged(name))?;
        let mut bytes = Vec::new();
        // Never more than the manifest says, whatever the archive holds.
        let most = part.bytes.min(PART_LIMIT).saturating_add(1);
        file.take(most).read_to_end(&mut bytes).map_err(|_| damaged(name))?;
        if Digest::of(&bytes) == part.digest { Ok(bytes) } else { Err(damaged(name)) }
    };
    let html = String::from_utf8(whole(HTML, &manifest.html)?).map_err(|_| damaged(HTML))?;
    whole(PDF, &manifest.pdf)?;
    let mut photos = Vec::new();
    for Photo { photo, part } in &manifest.photos {
        whole(&photo_name(photo), part)?;
        photos.push(*photo);
    }
    let lines = whole(ENTRIES, &manifest.entries)?;
    let mut entries = Vec::new();
    for (line, number) in lines.split(|byte| *byte == b'\n').filter(|line| !line.is_empty()).zip(1_usize..) {
        let at = || damaged(&format!("{ENTRIES}:{number}"));
        let line: Line = serde_json::from_slice(line).map_err(|_| at())?;
        entries.push(Entry::open(line.entry.into_bytes(), line.digest, None).map_err(|_| at())?);
    }
    if u64::try_from(entries.len()) != Ok(manifest.count) {
        return Err(damaged(ENTRIES));
    }
    Ok(Bundle { made: manifest.made, learner: manifest.learner, people: manifest.people, entries, html, photos })
}

impl Bundle {
    /// What its entries add up to, with the names of the people in it.
    pub fn book(&self) -> Book {
        let mut book = Logbook::from_iter(self.entries.iter().cloned()).book();
        for person in &mut book.people {
            person.name = self.people.iter().find(|named| named.id == person.id).and_then(|named| named.name.clone());
        }
        book
    }
}
