//! A flipped bit is noticed, or changes nothing; a torn log gives the beginning of what was written.

use std::fs;
use std::path::Path;

use lugbook::entry::Entry;
use lugbook::proof::DeviceKey;
use lugbook::store::Store;
use tempfile::{TempDir, tempdir};

use super::{at, customer, draft, memory, open_as, stream};

/// How many places to try: a sample, or all of them when `LUGBOOK_WHOLE` is set.
fn sample(length: usize, few: usize) -> Vec<usize> {
    if std::env::var_os("LUGBOOK_WHOLE").is_some() || length <= few {
        return (0..length).collect();
    }
    // Spread by a step that shares no factor with the page size, and with the first bytes whole.
    let step = (length / few) | 1;
    (0..length.min(100)).chain((100..length).step_by(step)).collect()
}

/// A small book as a killed program leaves it: some entries and seals in the file, some only in the log.
fn killed_book() -> (TempDir, Vec<Entry>) {
    let dir = tempdir().unwrap();
    let open = || {
        let (mut store, _) = open_as(dir.path(), 1).unwrap();
        store.claim(DeviceKey::from_secret([1; 32]), stream(88)).unwrap();
        store
    };
    let store = open();
    store.append(vec![draft(1), customer(2), draft(3)], at(1)).unwrap();
    store.seal().unwrap();
    store.close().unwrap();
    let store = open();
    store.append(vec![draft(4)], at(2)).unwrap();
    store.seal().unwrap();
    store.append(vec![customer(5)], at(2)).unwrap();
    store.append(vec![draft(6)], at(3)).unwrap();
    let all = store.entries().unwrap();
    let copy = memory();
    copy_book(dir.path(), copy.path());
    (copy, all)
}

fn copy_book(from: &Path, to: &Path) {
    for name in ["book.db", "book.db-wal", "book.seen"] {
        if from.join(name).exists() {
            fs::copy(from.join(name), to.join(name)).unwrap();
        }
    }
}

/// What came of a changed file.
#[derive(Debug, PartialEq, Eq, PartialOrd, Ord, Clone, Copy)]
enum Outcome {
    Unchanged,
    Noticed,
}

/// Opens a changed book and holds it to the promise: each answer is the
/// unchanged book's, or the change is told.
fn judge(folder: &Path, all: &[Entry]) -> Outcome {
    let answers = |store: &Store| -> Option<bool> {
        let entries = store.entries().ok()?;
        let after = store.entries_after(all[2].order()).ok()?;
        let one = all.iter().map(|entry| store.entry(entry.id()).ok()).collect::<Option<Vec<_>>>()?;
        let one: Vec<_> = one.into_iter().flatten().collect();
        let sealed: Vec<_> = store.seals().ok()?.iter().map(|seal| seal.said().head).collect();
        let wanted = [all[2].digest(), all[3].digest()];
        Some(entries == all && after == all[3..] && one == all && sealed == wanted)
    };
    match open_as(folder, 77) {
        Err(_) => Outcome::Noticed,
        Ok((store, opened)) if opened.rescued.is_some() => {
            // What came back is part of what there was, and holds.
            assert!(store.check().unwrap().ok());
            assert!(store.entries().unwrap().iter().all(|entry| is_of(entry, all)));
            Outcome::Noticed
        }
        Ok((store, _)) => match answers(&store) {
            Some(true) if store.check().is_ok_and(|check| check.ok()) => Outcome::Unchanged,
            Some(true) | None => {
                assert!(!store.check().is_ok_and(|check| check.ok()), "told by an answer, and by the check");
                Outcome::Noticed
            }
            Some(false) => {
                // A wrong answer must at least be told by the check.
                assert!(!store.check().is_ok_and(|check| check.ok()), "a silent change");
                Outcome::Noticed
            }
        },
    }
}

fn is_of(entry: &Entry, all: &[Entry]) -> bool {
    all.iter().any(|other| other.bytes() == entry.bytes())
}

#[test]
fn every_flipped_byte_is_noticed_or_changes_nothing() {
    let (book, all) = killed_book();
    let mut noticed = 0;
    for name in ["book.db", "book.db-wal", "book.seen"] {
        let whole = fs::read(book.path().join(name)).unwrap();
        let mut counts = [0, 0];
        for place in sample(whole.len(), 150) {
            let dir = memory();
            copy_book(book.path(), dir.path());
            let mut changed = whole.clone();
            changed[place] ^= 1 << (place % 8);
            fs::write(dir.path().join(name), changed).unwrap();
            let outcome = judge(dir.path(), &all);
            counts[usize::from(outcome == Outcome::Noticed)] += 1;
        }
        println!("{name}: {} flips changed nothing, {} were noticed", counts[0], counts[1]);
        noticed += counts[1];
    }
    assert!(noticed > 100);
}

#[test]
fn a_log_torn_at_any_sector_gives_a_beginning_of_what_was_written() {
    let (book, all) = killed_book();
    let log = fs::read(book.path().join("book.db-wal")).unwrap();
    for (place, keep_witness) in sample(log.len() / 512 + 1, 24).into_iter().zip([false, true].into_iter().cycle()) {
        for garbage in [false, true] {
            let dir = memory();
            copy_book(book.path(), dir.path());
            let mut torn = log.clone();
            let from = (place * 512).min(torn.len());
            if garbage {
                torn[from..].fill(0xa5);
            } else {
                torn.truncate(from);
            }
            fs::write(dir.path().join("book.db-wal"), &torn).unwrap();
            if !keep_witness {
                // After a power cut the witness is older than the book.
                fs::remove_file(dir.path().join("book.seen")).unwrap();
            }
            let (store, opened) = open_as(dir.path(), 77).unwrap();
            let left = store.entries().unwrap();
            if opened.rescued.is_none() {
                assert_eq!(left[..], all[..left.len()], "torn at {from}");
            }
            assert!(left.iter().all(|entry| is_of(entry, &all)));
            assert!(left.len() >= 3, "what was in the file is there");
            assert!(store.check().unwrap().ok());
            if keep_witness {
                assert_eq!(opened.rescued.is_some(), torn.len() < log.len() || torn != log, "what is gone is told");
            }
        }
    }
}

#[test]
fn a_log_with_any_one_sector_lost_gives_whole_entries_only() {
    let (book, all) = killed_book();
    let log = fs::read(book.path().join("book.db-wal")).unwrap();
    for place in sample(log.len() / 512 + 1, 24) {
        let dir = memory();
        copy_book(book.path(), dir.path());
        let mut holed = log.clone();
        let end = ((place + 1) * 512).min(holed.len());
        holed[place * 512..end].fill(0);
        fs::write(dir.path().join("book.db-wal"), &holed).unwrap();
        let (store, opened) = open_as(dir.path(), 77).unwrap();
        let left = store.entries().unwrap();
        assert!(left.iter().all(|entry| is_of(entry, &all)));
        let lost: u64 = opened.rescued.iter().flat_map(|told| &told.missing).map(|gap| gap.count()).sum();
        assert!(left.len() >= 3 && left.len() as u64 + lost <= 6);
        assert!(left == all || opened.rescued.is_some(), "what is gone is told");
    }
}
