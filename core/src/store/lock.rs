//! Backups that only a passphrase opens.
//!
//! A device makes a key of its own once and locks that with the passphrase. So each
//! backup can be written, and read back, without asking for the passphrase again;
//! it is only needed to restore.
//!
//! A locked backup is a zip file that can be opened by other means. Its parts, the
//! two last in the [age format](https://age-encryption.org/v1), version 1:
//!
//! | name in the archive | what |
//! | --- | --- |
//! | `locked.json` | format, version, when made |
//! | `key.age` | the device's key, an age identity, encrypted with the passphrase |
//! | `backup.age` | the backup, encrypted to that key |
//!
//! `age -d key.age > key` asks for the passphrase; `age -d -i key backup.age > backup.zip` gives the backup.

use std::fs::File;
use std::io::{self, BufReader, BufWriter, Read, Seek, Write};
use std::iter;
use std::path::Path;

use age::secrecy::{ExposeSecret, SecretString};
use age::x25519;
use age::{DecryptError, Decryptor, Encryptor, scrypt};
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use serde::{Deserialize, Serialize};
use unicode_normalization::UnicodeNormalization;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use super::backup::{Steady, damaged, unopened, unread};
use super::error::{Mend, StoreError};
use crate::calendar::Moment;

const FORMAT: &str = "lugbook-locked-backup";
const VERSION: u32 = 1;
const ABOUT: &str = "locked.json";
const KEY: &str = "key.age";
/// The part of a locked backup with the backup in it.
pub(super) const SEALED: &str = "backup.age";

/// The fewest characters of a passphrase: the least that NIST SP 800-63B allows for a memorized secret.
pub const LEAST_CHARACTERS: usize = 8;
/// scrypt's cost as a power of two: 64 MiB for a moment, which a phone can spare.
const WORK: u8 = 16;
/// More work than this is not done for a file from elsewhere.
const MOST_WORK: u8 = 20;
/// The largest `locked.json` or `key.age` that is read, in bytes.
const SMALL: u64 = 64 << 10;

/// What locks this device's backups. Whoever reads it as data can open them all:
/// it is kept where only the book's owner reads.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "Written", into = "Written")]
pub struct BackupLock {
    key: x25519::Identity,
    /// The key, encrypted with the passphrase.
    sealed: Vec<u8>,
}

#[derive(Serialize, Deserialize)]
struct Written {
    key: String,
    sealed: String,
}

impl From<BackupLock> for Written {
    fn from(lock: BackupLock) -> Self {
        Self { key: lock.key.to_string().expose_secret().to_owned(), sealed: BASE64_STANDARD.encode(&lock.sealed) }
    }
}

impl TryFrom<Written> for BackupLock {
    type Error = String;

    fn try_from(written: Written) -> Result<Self, String> {
        Ok(Self {
            key: written.key.parse()?,
            sealed: BASE64_STANDARD.decode(written.sealed).map_err(|why| why.to_string())?,
        })
    }
}

impl std::fmt::Debug for BackupLock {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("BackupLock").finish_non_exhaustive()
    }
}

impl PartialEq for BackupLock {
    fn eq(&self, other: &Self) -> bool {
        self.sealed == other.sealed
    }
}

/// What opens a locked backup.
#[derive(Clone, Copy)]
pub(super) enum Opener<'a> {
    Passphrase(&'a str),
    /// The lock of the device that made it.
    Own(&'a BackupLock),
}

#[derive(Serialize, Deserialize)]
struct About {
    format: String,
    version: u32,
    made: Moment,
}

impl BackupLock {
    /// A new lock for a passphrase. Two ways to type the same letters are one
    /// passphrase: it is taken in Unicode's NFKC form, as NIST SP 800-63B asks.
    ///
    /// # Errors
    /// [`Mend::ShortPassphrase`] under [`LEAST_CHARACTERS`] characters.
    ///
    /// ```
    /// use lugbook::store::{BackupLock, StoreError, Mend};
    /// assert!(BackupLock::new("seven lugs, one left-hand").is_ok());
    /// let short = StoreError::MendInput { why: Mend::ShortPassphrase { least: 8 } };
    /// assert_eq!(BackupLock::new("lug").unwrap_err(), short);
    /// ```
    pub fn new(passphrase: &str) -> Result<Self, StoreError> {
        let passphrase = one_form(passphrase);
        if passphrase.expose_secret().chars().count() < LEAST_CHARACTERS {
            return Err(StoreError::mend(Mend::ShortPassphrase { least: LEAST_CHARACTERS }));
        }
        let key = x25519::Identity::generate();
        let mut recipient = scrypt::Recipient::new(passphrase);
        recipient.set_work_factor(WORK);
        let mut sealed = Vec::new();
        encrypt(&recipient, &mut key.to_string().expose_secret().as_bytes(), &mut sealed)
            .map_err(StoreError::report)?;
        Ok(Self { key, sealed })
    }

    /// Writes what is in `plain` into a locked file.
    pub(super) fn close(&self, mut plain: File, part: &Path, scratch: &Path, now: Moment) -> Result<(), StoreError> {
        let io = |why: io::Error| StoreError::io(&why, part);
        plain.rewind().map_err(|why| StoreError::io(&why, scratch))?;
        let mut archive = ZipWriter::new(Steady::new(File::create(part).map_err(io)?));
        // What is encrypted does not get smaller.
        let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored).large_file(true);
        let about = About { format: FORMAT.to_owned(), version: VERSION, made: now };
        let about = serde_json::to_vec(&about).map_err(StoreError::report)?;
        for (name, bytes) in [(ABOUT, &about), (KEY, &self.sealed)] {
            archive.start_file(name, stored).map_err(|why| unopened(why, part, StoreError::report(name)))?;
            archive.write_all(bytes).map_err(io)?;
        }
        archive.start_file(SEALED, stored).map_err(|why| unopened(why, part, StoreError::report(SEALED)))?;
        encrypt(&self.key.to_public(), &mut plain, &mut archive).map_err(io)?;
        let file = archive.finish().map_err(|why| unopened(why, part, StoreError::report(SEALED)))?;
        file.end().and_then(|file| file.sync_all()).map_err(io)
    }
}

/// Whether an archive is a locked backup.
pub(super) fn is_locked(archive: &ZipArchive<impl Read + Seek>) -> bool {
    archive.index_for_name(ABOUT).is_some()
}

/// What is in a locked backup, in a file without a name.
pub(super) fn open(
    archive: &mut ZipArchive<impl Read + Seek>,
    path: &Path,
    opener: Opener<'_>,
    scratch: &Path,
) -> Result<File, StoreError> {
    let about: About = serde_json::from_slice(&small(archive, path, ABOUT)?).map_err(|_| damaged(path, ABOUT))?;
    if about.format != FORMAT {
        return Err(StoreError::mend(Mend::NotABackup { path: path.to_owned() }));
    }
    if about.version > VERSION {
        return Err(StoreError::mend(Mend::NewerBackup { version: about.version, known: VERSION }));
    }
    let wrong = || StoreError::mend(Mend::WrongPassphrase { path: path.to_owned() });
    let key = match opener {
        Opener::Own(lock) => lock.key.clone(),
        Opener::Passphrase(passphrase) => {
            let sealed = small(archive, path, KEY)?;
            let mut identity = scrypt::Identity::new(one_form(passphrase));
            identity.set_max_work_factor(MOST_WORK);
            let mut key = String::new();
            match Decryptor::new_buffered(&*sealed).and_then(|file| file.decrypt(iter::once(&identity as _))) {
                Ok(mut read) => read.read_to_string(&mut key).map_err(|_| damaged(path, KEY))?,
                Err(DecryptError::DecryptionFailed | DecryptError::KeyDecryptionFailed) => return Err(wrong()),
                Err(_) => return Err(damaged(path, KEY)),
            };
            key.parse().map_err(|_| damaged(path, KEY))?
        }
    };
    let sealed = archive.by_name(SEALED).map_err(|why| unopened(why, path, damaged(path, SEALED)))?;
    let decrypted = Decryptor::new_buffered(BufReader::new(sealed));
    let mut read = match decrypted.and_then(|file| file.decrypt(iter::once(&key as _))) {
        Ok(read) => read,
        // Another device's, or of an earlier passphrase.
        Err(DecryptError::NoMatchingKeys) => return Err(wrong()),
        Err(DecryptError::Io(why)) => return Err(unread(&why, path, SEALED)),
        Err(_) => return Err(damaged(path, SEALED)),
    };
    let mut plain = without_name(scratch)?;
    let mut buffer = vec![0; 64 << 10];
    loop {
        let count = read.read(&mut buffer).map_err(|why| unread(&why, path, SEALED))?;
        let Some(part) = buffer.get(..count).filter(|part| !part.is_empty()) else { break };
        plain.write_all(part).map_err(|why| StoreError::io(&why, scratch))?;
    }
    plain.rewind().map_err(|why| StoreError::io(&why, scratch))?;
    Ok(plain)
}

/// A file that nobody else can open, and that is gone when it is closed.
pub(super) fn without_name(folder: &Path) -> Result<File, StoreError> {
    tempfile::tempfile_in(folder).map_err(|why| StoreError::io(&why, folder))
}

fn small(archive: &mut ZipArchive<impl Read + Seek>, path: &Path, name: &str) -> Result<Vec<u8>, StoreError> {
    let file = archive.by_name(name).map_err(|why| unopened(why, path, damaged(path, name)))?;
    let mut bytes = Vec::new();
    file.take(SMALL).read_to_end(&mut bytes).map_err(|why| unread(&why, path, name))?;
    Ok(bytes)
}

fn encrypt(to: &dyn age::Recipient, from: &mut impl Read, into: impl Write) -> io::Result<()> {
    let encryptor = Encryptor::with_recipients(iter::once(to)).map_err(io::Error::other)?;
    // The header is written in parts that must be taken whole.
    let mut sealed = encryptor.wrap_output(BufWriter::new(into))?;
    io::copy(from, &mut sealed)?;
    sealed.finish()?.flush()
}

fn one_form(passphrase: &str) -> SecretString {
    SecretString::from(passphrase.nfkc().collect::<String>())
}
