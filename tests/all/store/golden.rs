//! The bytes of entries and the tables of books that were released once stay readable.
//!
//! `LUGBOOK_RENEW=1` writes the files of `tests/databases/` anew: only for what
//! was never released.

use std::collections::BTreeSet;
use std::fmt::Write;
use std::fs;
use std::path::PathBuf;

use lugbook::entry::{Draft, Entry, Fact, Head, Personal};
use lugbook::ident::Digest;
use rusqlite::Connection;
use tempfile::tempdir;

use super::{at, id, open_as, person, stream};
use crate::facts::facts;

fn databases(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("databases").join(name)
}

/// The text of a file, after writing `fresh` into it when that is asked for.
fn golden(name: &str, fresh: &str) -> String {
    let path = databases(name);
    if std::env::var_os("LUGBOOK_RENEW").is_some() {
        fs::write(&path, fresh).unwrap();
    }
    fs::read_to_string(&path).unwrap()
}

macro_rules! kinds {
    ($($name:ident)*) => {
        /// Every kind of fact; a new one does not compile until it stands here.
        const KINDS: &[&str] = &[$(stringify!($name)),*];

        fn kind(fact: &Fact) -> &'static str {
            match fact { $(Fact::$name { .. } => stringify!($name),)* }
        }
    };
}

kinds! {
    PersonAdded VehicleAdded SpecificationRecorded SpecificationUnknown JobOpened JobParked
    JobResumed JobClosed JobSigned HandsChanged OdometerRead ComplaintHeard
    DamageSeen WorkApproved TireFitted TireRemoved MarkChalked MarkRead
    PhotoPending PhotoTaken SidewallRead TreadMeasured PressureMeasured SensorRead
    DriveSeen PlanChosen Lifted WheelOff WheelOn NutTightened
    ToolAdded ToolUsed StepDone StepSkipped GateOpened FindingNoted
    RecheckTold Corrected Withdrawn WheelsChosen SpareSeen SetBrought TireStored LimitsChosen PhotoCovered
    ToolRetired WheelShared AnswerFirst AnswerGiven StepsSeen CodeSet CodeRefused
    Archived BroughtBack
    VehicleEquipped GearRated AroundMeasured
}

/// The golden entries: one stream, a fixed id and time for each, a person with a name first.
fn golden_entries() -> Vec<Entry> {
    let mut head = Head::empty(stream(1));
    let mut entries = Vec::new();
    for (number, fact) in (1..).zip(facts()) {
        let entry = golden_draft(number, fact).seal(&head, at(i64::try_from(number / 3).unwrap())).unwrap();
        head = head.then(&entry).unwrap();
        entries.push(entry);
    }
    entries
}

fn golden_draft(number: u64, fact: Fact) -> Draft {
    let salted = Personal::salted([u8::try_from(number).unwrap(); 16]);
    let personal = match fact {
        Fact::PersonAdded { .. } => Some(Personal { name: Some("Wren Castellan".to_owned()), ..salted }),
        Fact::VehicleAdded { .. } => Some(Personal { plate: Some("ORCHARD 7".to_owned()), ..salted }),
        _ => None,
    };
    Draft { id: id(number), author: person(1), practice: number == 5, fact, personal }
}

#[test]
fn the_bytes_of_each_kind_of_entry_stay_as_they_are() {
    let entries = golden_entries();
    let shown: BTreeSet<&str> = entries.iter().map(|entry| kind(entry.fact())).collect();
    assert_eq!(shown, KINDS.iter().copied().collect(), "one of each kind");
    let fresh: String =
        entries.iter().map(|entry| format!("{}\n", std::str::from_utf8(entry.bytes()).unwrap())).collect();
    let kept = golden("entries-v1.jsonl", &fresh);
    assert_eq!(kept.lines().count(), entries.len());
    for (line, entry) in kept.lines().zip(&entries) {
        assert_eq!(line, std::str::from_utf8(entry.bytes()).unwrap());
    }
}

#[test]
fn the_kept_bytes_read_back_as_what_was_said() {
    let kept = fs::read_to_string(databases("entries-v1.jsonl")).unwrap();
    let mut head = Head::empty(stream(1));
    let mut count = 0;
    for (line, golden) in kept.lines().zip(golden_entries()) {
        let bytes = line.as_bytes().to_vec();
        let entry = Entry::open(bytes, Digest::of(line.as_bytes()), golden.personal().cloned()).unwrap();
        assert_eq!(entry, golden);
        head = head.then(&entry).unwrap();
        count += 1;
    }
    assert!(count >= KINDS.len());
}

/// The whole database as text that makes it again.
fn dump(conn: &Connection) -> String {
    let number = |pragma: &str| conn.query_row(&format!("PRAGMA {pragma}"), [], |row| row.get::<_, i64>(0)).unwrap();
    let mut text = String::new();
    for pragma in ["application_id", "user_version"] {
        writeln!(text, "PRAGMA {pragma} = {};", number(pragma)).unwrap();
    }
    let list = |sql: &str| -> Vec<(String, String)> {
        let mut stmt = conn.prepare(sql).unwrap();
        stmt.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).unwrap().collect::<Result<_, _>>().unwrap()
    };
    for (_, sql) in list("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY rowid") {
        writeln!(text, "{sql};").unwrap();
    }
    for (table, _) in list("SELECT name, type FROM sqlite_schema WHERE type = 'table' ORDER BY rowid") {
        let mut stmt = conn.prepare(&format!("SELECT * FROM {table}")).unwrap();
        let columns = stmt.column_count();
        let mut rows = stmt.query([]).unwrap();
        while let Some(row) = rows.next().unwrap() {
            let values: Vec<String> = (0..columns)
                .map(|column| match row.get_ref(column).unwrap() {
                    rusqlite::types::ValueRef::Null => "NULL".to_owned(),
                    rusqlite::types::ValueRef::Integer(number) => number.to_string(),
                    rusqlite::types::ValueRef::Real(number) => format!("{number:?}"),
                    rusqlite::types::ValueRef::Text(text) => {
                        format!("'{}'", std::str::from_utf8(text).unwrap().replace('\'', "''"))
                    }
                    rusqlite::types::ValueRef::Blob(bytes) => {
                        format!("x'{}'", bytes.iter().map(|byte| format!("{byte:02x}")).collect::<String>())
                    }
                })
                .collect();
            writeln!(text, "INSERT INTO {table} VALUES ({});", values.join(", ")).unwrap();
        }
    }
    text
}

/// Tables, indexes and triggers.
fn tables(conn: &Connection) -> Vec<(String, String, Option<String>)> {
    let mut stmt = conn.prepare("SELECT type, name, sql FROM sqlite_schema ORDER BY type, name").unwrap();
    stmt.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap().collect::<Result<_, _>>().unwrap()
}

#[test]
fn a_book_of_each_released_version_opens_with_all_it_held_and_todays_tables() {
    let fresh = tempdir().unwrap();
    let (store, _) = open_as(fresh.path(), 1).unwrap();
    let entries = golden_entries();
    for (number, entry) in (1..).zip(&entries) {
        let draft = golden_draft(number, entry.fact().clone());
        // The store makes the same bytes as the entry room does.
        assert_eq!(store.append(vec![draft], at(i64::try_from(number / 3).unwrap())).unwrap()[0], *entry);
    }
    store.close().unwrap();
    let conn = Connection::open(fresh.path().join("book.db")).unwrap();
    let today = tables(&conn);
    let newest = golden(&format!("book-v{}.sql", lugbook::store::VERSION), &dump(&conn));
    assert_eq!(newest, dump(&conn), "a book of today is the newest file");

    for version in 1..=lugbook::store::VERSION {
        let dir = tempdir().unwrap();
        let conn = Connection::open(dir.path().join("book.db")).unwrap();
        conn.execute_batch("PRAGMA journal_mode = WAL").unwrap();
        conn.execute_batch(&fs::read_to_string(databases(&format!("book-v{version}.sql"))).unwrap()).unwrap();
        drop(conn);
        let (store, opened) = open_as(dir.path(), 9).unwrap();
        assert_eq!(opened.migrated_from, (version < lugbook::store::VERSION).then_some(version));
        // An older file was written before the newer facts were known.
        let held = store.entries().unwrap();
        assert!(held.len() >= 86 && entries.starts_with(&held), "version {version}: {} entries", held.len());
        assert!(version < lugbook::store::VERSION || held == entries);
        assert!(store.check().unwrap().ok());
        store.close().unwrap();
        let conn = Connection::open(dir.path().join("book.db")).unwrap();
        assert_eq!(tables(&conn), today, "version {version}");
    }
}
