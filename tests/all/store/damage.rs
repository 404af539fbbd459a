//! A damaged book is never made worse: it is set aside, and what holds goes on.

use std::fs;
use std::path::Path;

use lugbook::entry::Entry;
use lugbook::ident::Digest;
use lugbook::store::{Missing, Opened, ProblemKind, Rescued, Spot, Store, StoreError};
use rusqlite::Connection;
use tempfile::tempdir;

use super::{at, book, customer, draft, open_as, stream};

const FRESH: u64 = 77;

fn files(folder: &Path) -> Vec<(String, Vec<u8>)> {
    ["book.db", "book.db-wal", "book.seen"]
        .iter()
        .filter_map(|name| Some(((*name).to_owned(), fs::read(folder.join(name)).ok()?)))
        .collect()
}

/// Opens a damaged book: the old files are aside as they were, the new one
/// holds, goes on in a fresh stream, and the next opening finds nothing wrong.
fn rescued(folder: &Path) -> (Store, Opened, Rescued) {
    let before = files(folder);
    let (store, opened) = open_as(folder, FRESH).unwrap();
    let told = opened.rescued.clone().expect("the damage is noticed");
    // Compared by digest; an empty log is none.
    let digests = |files: Vec<(String, Vec<u8>)>| -> Vec<(String, Digest)> {
        files
            .into_iter()
            .filter(|(_, bytes)| !bytes.is_empty())
            .map(|(name, bytes)| (name, Digest::of(&bytes)))
            .collect()
    };
    assert_eq!(digests(files(&told.aside)), digests(before));
    assert_eq!(opened.stream, stream(FRESH));
    assert!(store.check().unwrap().ok());
    assert_eq!(u64::try_from(store.entries().unwrap().len()).unwrap(), told.entries);
    (store, opened, told)
}

fn entries(folder: &Path) -> Vec<Entry> {
    let (store, _) = open_as(folder, 1).unwrap();
    store.entries().unwrap()
}

fn change(path: &Path, at: usize, bytes: &[u8]) {
    let mut all = fs::read(path).unwrap();
    all[at..at + bytes.len()].copy_from_slice(bytes);
    fs::write(path, all).unwrap();
}

/// Where these bytes stand in a file.
fn find(path: &Path, needle: &[u8]) -> usize {
    fs::read(path).unwrap().windows(needle.len()).position(|window| window == needle).unwrap()
}

#[test]
fn a_broken_header_costs_nothing() {
    for (place, bytes) in [(0, b"none".as_slice()), (18, &[1, 1]), (18, &[9, 9]), (16, &[0, 0]), (68, &[0; 4])] {
        let dir = tempdir().unwrap();
        book(dir.path(), 30);
        let all = entries(dir.path());
        change(&dir.path().join("book.db"), place, bytes);
        let (store, _, told) = rescued(dir.path());
        assert_eq!(store.entries().unwrap(), all, "at {place}");
        assert_eq!((told.had, told.missing), (Some(30), vec![]));
    }
}

#[test]
fn an_entry_whose_bytes_changed_is_the_only_one_lost_and_is_named() {
    let dir = tempdir().unwrap();
    book(dir.path(), 30);
    let mut all = entries(dir.path());
    let path = dir.path().join("book.db");
    change(&path, find(&path, b"valve cap 17"), b"Valve");
    // It shows when all is read, not before.
    let (store, opened) = open_as(dir.path(), FRESH).unwrap();
    assert_eq!(opened.rescued, None);
    assert!(matches!(store.entries(), Err(StoreError::Restore { .. })));
    assert!(matches!(store.append(vec![draft(99)], at(99)), Err(StoreError::Restore { .. })));
    drop(store);
    let (store, opened, told) = rescued(dir.path());
    all.remove(16);
    assert_eq!(store.entries().unwrap(), all);
    assert_eq!(told.missing, [Missing { stream: stream(1), first: 17, last: 17 }]);
    assert_eq!(opened.missing, told.missing);
    assert_eq!(told.damage.at, Spot::Row { arrived: 17 });
    // What is known to be missing is no new damage.
    store.append(vec![draft(50)], at(50)).unwrap();
    store.close().unwrap();
    let (store, opened) = open_as(dir.path(), 78).unwrap();
    assert_eq!((opened.rescued, opened.missing), (None, told.missing));
    assert_eq!(store.check().unwrap().missing.len(), 1);
}

#[test]
fn what_is_known_to_be_missing_can_come_back_and_nothing_else_in_its_place() {
    let dir = tempdir().unwrap();
    book(dir.path(), 30);
    let all = entries(dir.path());
    let path = dir.path().join("book.db");
    change(&path, find(&path, b"valve cap 17"), b"Valve");
    fs::write(dir.path().join("book.damaged"), b"").unwrap();
    let (store, _, _) = rescued(dir.path());

    // Another entry at the same place of another telling of the stream.
    let other = tempdir().unwrap();
    let (teller, _) = open_as(other.path(), 1).unwrap();
    let told = teller.append((101..=130).map(draft).collect(), at(1)).unwrap();
    assert!(store.merge(vec![told[16].clone()]).is_err());

    assert_eq!(store.merge(all.clone()).unwrap().new, 1);
    assert_eq!(store.entries().unwrap(), all);
    let check = store.check().unwrap();
    assert!(check.ok() && check.missing.is_empty());
}

#[test]
fn a_digest_that_changed_is_put_right_by_the_next_entry() {
    let dir = tempdir().unwrap();
    book(dir.path(), 10);
    let all = entries(dir.path());
    let path = dir.path().join("book.db");
    change(&path, find(&path, all[4].digest().as_bytes()), &[0, 0]);
    fs::write(dir.path().join("book.damaged"), b"").unwrap();
    let (store, _, told) = rescued(dir.path());
    assert_eq!(store.entries().unwrap(), all);
    assert_eq!(told.missing, []);
}

#[test]
fn a_torn_page_costs_only_what_stood_in_it() {
    let dir = tempdir().unwrap();
    book(dir.path(), 60);
    let all = entries(dir.path());
    let path = dir.path().join("book.db");
    let at = find(&path, b"valve cap 31 ");
    let page = at / 4096 * 4096;
    change(&path, page, &vec![0; 4096]);
    let (store, _) = open_as(dir.path(), FRESH).unwrap();
    assert!(!store.check().unwrap().ok());
    drop(store);
    let (store, _, told) = rescued(dir.path());
    let left = store.entries().unwrap();
    let lost: u64 = told.missing.iter().map(Missing::count).sum();
    assert!(lost > 0 && lost < 15, "{lost}");
    assert_eq!(left.len() as u64 + lost, 60);
    assert!(left.iter().all(|entry| all.contains(entry)));
}

#[test]
fn a_book_whose_file_is_gone_gives_what_its_log_holds() {
    let dir = tempdir().unwrap();
    let (store, _) = open_as(dir.path(), 1).unwrap();
    let all = store.append(vec![draft(1), draft(2)], at(1)).unwrap();
    // As a killed program leaves it.
    let killed = tempdir().unwrap();
    for (name, bytes) in files(dir.path()) {
        fs::write(killed.path().join(name), bytes).unwrap();
    }
    fs::remove_file(killed.path().join("book.db")).unwrap();
    let (store, _, told) = rescued(killed.path());
    assert_eq!(told.damage.kind, ProblemKind::FileGone);
    assert_eq!(store.entries().unwrap(), all);
}

#[test]
fn an_empty_file_in_place_of_a_book_is_noticed() {
    let dir = tempdir().unwrap();
    book(dir.path(), 3);
    fs::write(dir.path().join("book.db"), b"").unwrap();
    let (store, _, told) = rescued(dir.path());
    assert_eq!((told.had, told.entries), (Some(3), 0));
    assert_eq!(store.entries().unwrap(), []);
}

#[test]
fn an_older_copy_of_the_file_is_noticed() {
    let dir = tempdir().unwrap();
    book(dir.path(), 3);
    let older = fs::read(dir.path().join("book.db")).unwrap();
    let (store, _) = open_as(dir.path(), 1).unwrap();
    store.append(vec![draft(4)], at(4)).unwrap();
    store.close().unwrap();
    fs::write(dir.path().join("book.db"), older).unwrap();
    let (_, _, told) = rescued(dir.path());
    assert_eq!(told.damage.kind, ProblemKind::Forgotten { had: 4, has: 3 });
    assert_eq!((told.had, told.entries), (Some(4), 3));
}

#[test]
fn names_come_back_with_their_entries_and_erased_ones_stay_erased() {
    let dir = tempdir().unwrap();
    let (store, _) = open_as(dir.path(), 1).unwrap();
    store.append(vec![customer(1), customer(2), draft(3)], at(1)).unwrap();
    store.erase_personal(super::id(2)).unwrap();
    let all = store.entries().unwrap();
    store.close().unwrap();
    change(&dir.path().join("book.db"), 68, &[0; 4]);
    let (store, _, told) = rescued(dir.path());
    assert_eq!(store.entries().unwrap(), all);
    assert_eq!(told.personal_lost, 0);
    // A merge with a book that still has the name does not bring it back.
    let other = tempdir().unwrap();
    let (teller, _) = open_as(other.path(), 1).unwrap();
    let whole = teller.append(vec![customer(1), customer(2), draft(3)], at(1)).unwrap();
    assert_eq!(store.merge(whole).unwrap().completed, 0);
    assert_eq!(store.entries().unwrap(), all);
}

#[test]
fn an_entry_of_a_newer_program_is_no_damage() {
    let dir = tempdir().unwrap();
    book(dir.path(), 2);
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    let all = entries_of(&conn);
    let newer = String::from_utf8(all[1].clone()).unwrap().replace("step-done", "wheel-weighed");
    conn.execute_batch("DROP TRIGGER entry_stays").unwrap();
    let digest = lugbook::ident::Digest::of(newer.as_bytes());
    conn.execute(
        "UPDATE entry SET bytes = ?1, digest = ?2 WHERE number = 2",
        rusqlite::params![newer.as_bytes(), digest.as_bytes()],
    )
    .unwrap();
    conn.execute("UPDATE head SET digest = ?1", [digest.as_bytes()]).unwrap();
    conn.execute_batch(
        "CREATE TRIGGER entry_stays BEFORE UPDATE ON entry
BEGIN
    SELECT RAISE(ABORT, 'an entry is never changed');
END",
    )
    .unwrap();
    drop(conn);
    fs::remove_file(dir.path().join("book.seen")).unwrap();
    let (store, _) = open_as(dir.path(), FRESH).unwrap();
    let newer = StoreError::MendInput { why: lugbook::store::Mend::NewerEntry { version: None } };
    assert_eq!(store.entries(), Err(newer.clone()));
    drop(store);
    // And when the file is damaged as well, the entry is not dropped.
    change(&dir.path().join("book.db"), 68, &[0; 4]);
    assert_eq!(open_as(dir.path(), FRESH).unwrap_err(), newer);
    assert_eq!(open_as(dir.path(), FRESH).unwrap_err(), newer);
}

fn entries_of(conn: &Connection) -> Vec<Vec<u8>> {
    let mut stmt = conn.prepare("SELECT bytes FROM entry ORDER BY arrived").unwrap();
    stmt.query_map([], |row| row.get(0)).unwrap().collect::<Result<_, _>>().unwrap()
}

#[test]
fn a_stream_that_is_in_the_book_is_not_taken_for_a_fresh_one() {
    let dir = tempdir().unwrap();
    book(dir.path(), 2);
    change(&dir.path().join("book.db"), 68, &[0; 4]);
    let why = open_as(dir.path(), 1).unwrap_err();
    assert_eq!(why, StoreError::MendInput { why: lugbook::store::Mend::StreamInUse { stream: stream(1) } });
    let (store, opened) = open_as(dir.path(), FRESH).unwrap();
    assert_eq!(opened.rescued.unwrap().entries, 2);
    assert!(store.check().unwrap().ok());
}

#[test]
fn a_rescue_that_was_interrupted_anywhere_is_done_again() {
    let dir = tempdir().unwrap();
    book(dir.path(), 12);
    let all = entries(dir.path());
    change(&dir.path().join("book.db"), 68, &[0; 4]);
    let aside = "damaged-2026-05-04-0915";
    // The states that a kill can leave, in the order in which they come about.
    for state in 0..5 {
        let torn = tempdir().unwrap();
        let put = |folder: &Path| {
            for (name, bytes) in files(dir.path()) {
                fs::write(folder.join(name), bytes).unwrap();
            }
        };
        put(torn.path());
        fs::create_dir(torn.path().join(aside)).unwrap();
        put(&torn.path().join(aside));
        if state > 0 {
            fs::write(torn.path().join("book.damaged"), aside).unwrap();
        }
        if state > 1 {
            fs::write(torn.path().join("book.db.new"), b"half a book").unwrap();
        }
        if state > 2 {
            fs::remove_file(torn.path().join("book.seen")).unwrap();
        }
        if state > 3 {
            // The new book has the name, and nobody was told.
            book(&torn.path().join("other"), 0);
            fs::rename(torn.path().join("other/book.db"), torn.path().join("book.db")).unwrap();
        }
        let (store, opened) = open_as(torn.path(), FRESH).unwrap();
        let told = opened.rescued.unwrap();
        assert_eq!((told.entries, told.had), (12, Some(12)), "state {state}");
        assert_eq!(store.entries().unwrap(), all);
        drop(store);
        let (store, opened) = open_as(torn.path(), 78).unwrap();
        assert_eq!(opened.rescued, None);
        assert_eq!(store.entries().unwrap(), all);
    }
}
