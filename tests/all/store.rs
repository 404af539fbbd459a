//! The book on the disk keeps what it acknowledged, and says so when it can't.

mod backup;
mod damage;
#[cfg(all(target_os = "linux", target_env = "gnu"))]
mod disk;
mod faults;
mod flips;
mod folder;
mod golden;
mod keeping;
#[cfg(all(target_os = "linux", target_env = "gnu"))]
mod power;
mod seals;
mod starting;
#[cfg(all(target_os = "linux", target_env = "gnu"))]
mod sweep;
mod words;

use std::path::Path;

use lugbook::calendar::Moment;
use lugbook::entry::{Answer, Draft, Fact, Personal, Role};
use lugbook::ident::{EntryId, JobId, PersonId, StreamId};
use lugbook::store::{Opened, Opening, Store, StoreError};
use tempfile::TempDir;

/// 2026-05-04 09:15.
pub const NOON: i64 = 1_777_886_100_000;

pub fn at(ms: i64) -> Moment {
    Moment::from_unix_ms(NOON + ms)
}

/// Ten bytes that differ for each number.
pub fn ten(number: u64) -> [u8; 10] {
    let mut bytes = [0x5a; 10];
    bytes[2..].copy_from_slice(&number.to_be_bytes());
    bytes
}

pub fn stream(number: u64) -> StreamId {
    StreamId::from_parts(1_777_000_000_000, ten(number))
}

pub fn id(number: u64) -> EntryId {
    EntryId::from_parts(1_777_000_000_000 + number, ten(number))
}

pub fn job() -> JobId {
    JobId::from_parts(1_777_000_000_000, ten(1))
}

pub fn person(number: u64) -> PersonId {
    PersonId::from_parts(1_777_000_000_000, ten(number))
}

/// A draft that says something else for each number.
pub fn draft(number: u64) -> Draft {
    let step = format!("step-{}", number % 40);
    let text = format!("valve cap {number} on, seat wiped clean with a rag");
    Draft {
        id: id(number),
        author: person(1),
        practice: false,
        fact: Fact::StepDone { job: job(), step, at: None, answer: Answer::Text(text) },
        personal: None,
    }
}

/// A draft with a name and a phone number beside it.
pub fn customer(number: u64) -> Draft {
    let personal = Personal {
        name: Some("Wren Castellan".to_owned()),
        phone: Some("555 0142".to_owned()),
        ..Personal::salted([7; 16])
    };
    Draft {
        fact: Fact::PersonAdded { person: person(number), role: Role::Customer },
        personal: Some(personal),
        ..draft(number)
    }
}

pub fn open(folder: &Path) -> Result<(Store, Opened), StoreError> {
    open_as(folder, 1)
}

pub fn open_as(folder: &Path, device: u64) -> Result<(Store, Opened), StoreError> {
    Store::open(folder, Opening { stream: stream(device), now: at(0) })
}

/// A folder in memory, where the system has such a place: for many small books
/// whose safety on a real disk is not what is tested.
pub fn memory() -> TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).unwrap()
}

/// Says loudly that a check could not be made here, and why.
pub fn skip(what: &str, why: &str) {
    eprintln!("SKIPPED: {what}: {why}");
}

/// A closed book with this many entries.
pub fn book(folder: &Path, entries: u64) {
    let (store, _) = open(folder).unwrap();
    for number in 1..=entries {
        store.append(vec![draft(number)], at(i64::try_from(number).unwrap())).unwrap();
    }
    store.close().unwrap();
}
