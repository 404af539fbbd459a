//! What a device sealed is refused when it is changed, and named; copies of a book keep their streams apart.

use std::fs;
use std::path::Path;

use lugbook::entry::{Draft, Entry, Fact, Head};
use lugbook::ident::Digest;
use lugbook::proof::{DeviceKey, Gathered, Seal};
use lugbook::store::{Backup, Mend, Problem, ProblemKind, Spot, Store, StoreError};
use proptest::prelude::*;
use rusqlite::Connection;
use tempfile::tempdir;

use super::{at, book, customer, draft, id, job, memory, open_as, stream};

fn key(number: u8) -> DeviceKey {
    DeviceKey::from_secret([number; 32])
}

/// Opens a book as a device with a key; `fresh` is the stream it would begin.
fn open_with(folder: &Path, device: u8, fresh: u64) -> Store {
    let (mut store, _) = open_as(folder, fresh).unwrap();
    store.claim(key(device), stream(fresh + 1_000)).unwrap();
    store
}

fn ending(number: u64) -> Draft {
    Draft { fact: Fact::JobClosed { job: job(), reason: "the customer left".to_owned() }, ..draft(number) }
}

/// Seven entries of one job, the last of which ends it and is sealed; then two more, and a seal over them.
fn sealed(folder: &Path) -> Store {
    let store = open_with(folder, 1, 1);
    store.append((1..=6).map(draft).collect(), at(1)).unwrap();
    let mut gathered = Gathered::of(job());
    store.entries().unwrap().iter().for_each(|entry| gathered.add(entry));
    store.append_and_seal(vec![ending(7)], at(2), gathered).unwrap();
    store.append(vec![draft(8), customer(9)], at(3)).unwrap();
    store.seal().unwrap();
    store
}

fn mend(result: Result<impl std::fmt::Debug, StoreError>) -> Mend {
    match result.unwrap_err() {
        StoreError::MendInput { why } => why,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_job_that_ends_is_sealed_with_all_its_entries_in_the_same_transaction() {
    let dir = tempdir().unwrap();
    let store = sealed(dir.path());
    let entries = store.entries().unwrap();
    let seals = store.seals().unwrap();
    assert_eq!(seals.iter().map(|seal| seal.said().number).collect::<Vec<_>>(), [7, 9]);
    let of_job = seals[0].said().job.as_ref().unwrap();
    assert!(of_job.is_of(&entries[..7].iter().collect::<Vec<_>>()) && of_job.entries() == 7);
    assert!(!of_job.is_of(&entries[..6].iter().collect::<Vec<_>>()));
    assert_eq!((seals[1].said().head, seals[1].said().job.as_ref()), (entries[8].digest(), None));
    assert!(store.check().unwrap().ok());
    // The same again is the same entry and the same seal; sealing what is sealed changes nothing.
    store.append_and_seal(vec![ending(7)], at(9), Gathered::of(job())).unwrap();
    store.seal().unwrap();
    assert_eq!(store.seals().unwrap(), seals);
    let told = store.sealed().unwrap();
    assert_eq!((told[0].entries, told[0].sealed, told[0].device), (9, 9, Some(key(1).device())));
}

#[test]
fn a_device_without_a_key_seals_nothing_and_says_so() {
    let dir = tempdir().unwrap();
    book(dir.path(), 3);
    let (store, _) = open_as(dir.path(), 1).unwrap();
    store.append_and_seal(vec![ending(7)], at(2), Gathered::of(job())).unwrap();
    store.seal().unwrap();
    assert_eq!(store.seals().unwrap(), []);
    assert_eq!((store.sealed().unwrap()[0].sealed, store.sealed().unwrap()[0].device), (0, None));
}

#[test]
fn a_long_stream_is_sealed_now_and_then_without_being_asked() {
    let dir = memory();
    let store = open_with(dir.path(), 1, 1);
    for number in 0..1_100 {
        store.append(vec![draft(number)], at(1)).unwrap();
    }
    assert_eq!(store.seals().unwrap().iter().map(|seal| seal.said().number).collect::<Vec<_>>(), [500, 1_000]);
}

#[test]
fn the_tables_refuse_to_change_delete_or_replace_a_seal() {
    let dir = tempdir().unwrap();
    sealed(dir.path()).close().unwrap();
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    let same = "INSERT OR REPLACE INTO seal SELECT stream, number, x'00', signature FROM seal";
    for change in ["UPDATE seal SET number = 8 WHERE number = 7", "DELETE FROM seal", same] {
        let why = conn.execute(change, []).unwrap_err().to_string();
        assert!(why.contains("a seal is never"), "{change}: {why}");
    }
}

/// Runs a change that the triggers forbid, and puts the triggers back as they were.
fn force(folder: &Path, change: &str, values: impl rusqlite::Params) {
    let conn = Connection::open(folder.join("book.db")).unwrap();
    let triggers: Vec<(String, String)> = conn
        .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
        .unwrap()
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap();
    triggers.iter().for_each(|(name, _)| conn.execute_batch(&format!("DROP TRIGGER {name}")).unwrap());
    conn.execute(change, values).unwrap();
    triggers.iter().for_each(|(_, sql)| conn.execute_batch(sql).unwrap());
}

#[test]
fn every_flipped_byte_of_a_kept_seal_is_noticed() {
    let dir = memory();
    sealed(dir.path()).close().unwrap();
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    let read = |column: &str| -> Vec<u8> {
        conn.query_row(&format!("SELECT {column} FROM seal WHERE number = 7"), [], |row| row.get(0)).unwrap()
    };
    let columns = [("bytes", read("bytes")), ("signature", read("signature"))];
    let stayed = conn
        .query_row("SELECT sql FROM sqlite_schema WHERE name = 'seal_stays'", [], |row| row.get::<_, String>(0))
        .unwrap();
    conn.execute_batch("DROP TRIGGER seal_stays").unwrap();
    let seal_at_seven = Problem { kind: ProblemKind::Seal, at: Spot::Entry { stream: stream(1), number: 7 } };
    for (column, whole) in columns {
        for place in 0..whole.len() {
            let mut changed = whole.clone();
            changed[place] ^= 1 << (place % 8);
            conn.execute(&format!("UPDATE seal SET {column} = ?1 WHERE number = 7"), [&changed]).unwrap();
            let found = lugbook_seals(&conn);
            assert_eq!(found, std::slice::from_ref(&seal_at_seven), "{column} {place}");
        }
        conn.execute(&format!("UPDATE seal SET {column} = ?1 WHERE number = 7"), [&whole]).unwrap();
    }
    conn.execute_batch(&stayed).unwrap();
    assert_eq!(lugbook_seals(&conn), []);
    drop(conn);
    // And by the check of an open book, which stops all writing.
    force(dir.path(), "UPDATE seal SET signature = zeroblob(64) WHERE number = 9", []);
    let store = open_with(dir.path(), 1, 1);
    let problem = Problem { kind: ProblemKind::Seal, at: Spot::Entry { stream: stream(1), number: 9 } };
    assert_eq!(store.check().unwrap().problems, std::slice::from_ref(&problem));
    assert_eq!(store.append(vec![draft(20)], at(9)), Err(StoreError::Restore { problem }));
}

/// What opening the seals of a file says, as the store reads them.
fn lugbook_seals(conn: &Connection) -> Vec<Problem> {
    let mut stmt = conn.prepare("SELECT number, bytes, signature FROM seal ORDER BY number").unwrap();
    let rows = stmt
        .query_map([], |row| Ok((row.get::<_, i64>(0)?, row.get::<_, Vec<u8>>(1)?, row.get::<_, Vec<u8>>(2)?)))
        .unwrap();
    rows.map(Result::unwrap)
        .filter(|(_, bytes, signature)| {
            let signature = lugbook::proof::Signature::from_bytes(signature).unwrap();
            Seal::open(bytes.clone(), signature).is_err()
        })
        .map(|(number, ..)| Problem {
            kind: ProblemKind::Seal,
            at: Spot::Entry { stream: stream(1), number: u64::try_from(number).unwrap() },
        })
        .collect()
}

#[test]
fn a_rescue_brings_the_seals_back_that_still_hold() {
    let dir = tempdir().unwrap();
    let store = sealed(dir.path());
    let seals = store.seals().unwrap();
    store.close().unwrap();
    let file = dir.path().join("book.db");
    let mut bytes = fs::read(&file).unwrap();
    let place = bytes.windows(11).position(|window| window == b"valve cap 8").unwrap();
    bytes[place] = b'V';
    fs::write(&file, bytes).unwrap();
    fs::write(dir.path().join("book.damaged"), b"").unwrap();
    let store = open_with(dir.path(), 1, 5);
    assert_eq!(store.entries().unwrap().len(), 8);
    assert_eq!(store.seals().unwrap(), seals, "entry 9 came back, and so its seal");
    assert_eq!(store.stream(), stream(5));
    assert!(store.check().unwrap().ok());
}

/// A copy of a closed book's folder.
fn copied(from: &Path) -> tempfile::TempDir {
    let to = tempdir().unwrap();
    for name in ["book.db", "book.seen"] {
        fs::copy(from.join(name), to.path().join(name)).unwrap();
    }
    to
}

#[test]
fn a_copied_book_and_a_new_key_begin_streams_of_their_own_and_a_moved_book_does_not() {
    let dir = tempdir().unwrap();
    let first = dir.path().join("book");
    sealed(&first).close().unwrap();
    let moved = dir.path().join("moved");
    fs::rename(&first, &moved).unwrap();
    let copies = [copied(&moved), copied(&moved)];
    let store = open_with(&moved, 1, 40);
    assert_eq!(store.stream(), stream(1), "moved, and the same book");
    // The same device on two copies, and another device on the first copy later.
    let mut written = vec![store.append(vec![draft(30)], at(5)).unwrap()];
    for (number, copy) in (31..).zip(&copies) {
        let store = open_with(copy.path(), 1, number * 2);
        assert_eq!(store.stream(), stream(number * 2 + 1_000));
        written.push(store.append(vec![draft(number)], at(5)).unwrap());
        store.close().unwrap();
        let again = open_with(copy.path(), 1, 90);
        assert_eq!(again.stream(), stream(number * 2 + 1_000), "once begun it goes on");
    }
    let other = open_with(copies[0].path(), 2, 70);
    assert_eq!(other.stream(), stream(1_070));
    written.push(other.append(vec![draft(33)], at(6)).unwrap());
    // All go together.
    for entries in &written[1..] {
        let other: Vec<Entry> = entries.clone();
        store.merge(other).unwrap();
    }
    assert_eq!(store.entries().unwrap().len(), 9 + 4);
    assert!(store.check().unwrap().ok());
}

#[test]
fn a_book_from_before_there_were_keys_goes_on_in_its_own_stream() {
    let dir = tempdir().unwrap();
    book(dir.path(), 3);
    let store = open_with(dir.path(), 1, 9);
    assert_eq!(store.stream(), stream(1));
    store.seal().unwrap();
    assert_eq!(store.sealed().unwrap()[0].sealed, 3);
    store.close().unwrap();
    assert_eq!(open_with(dir.path(), 2, 20).stream(), stream(1_020), "and not with another key");
}

#[test]
fn a_backup_carries_the_seals_and_a_restored_book_is_held_to_them() {
    let dir = tempdir().unwrap();
    let store = sealed(&dir.path().join("book"));
    store.append(vec![draft(10)], at(4)).unwrap();
    let zip = store.back_up(dir.path(), &[], None, at(5)).unwrap().path;
    let seals = store.seals().unwrap();
    assert_eq!(seals.last().unwrap().said().number, 10, "what was not sealed yet is sealed for the backup");
    let new = open_with(&dir.path().join("new"), 2, 50);
    for _ in 0..2 {
        new.take_backup(Backup::open(&zip).unwrap()).unwrap();
        assert_eq!(new.seals().unwrap(), seals);
        assert!(new.check().unwrap().ok());
    }
    // A book that knows the stream as another device's refuses it, and takes nothing.
    let wrong = open_with(&dir.path().join("wrong"), 3, 60);
    let entries = store.entries().unwrap();
    let head = Head { number: 1, digest: Some(entries[0].digest()), ..Head::empty(stream(1)) };
    let forged = Seal::make(&key(4), &head, None).unwrap();
    wrong.merge_sealed(entries[..1].to_vec(), vec![forged]).unwrap();
    let told = mend(wrong.take_backup(Backup::open(&zip).unwrap()));
    assert_eq!(told, Mend::Resealed { stream: stream(1), number: 7 });
    assert_eq!(wrong.entries().unwrap().len(), 1);
}

#[test]
fn every_flipped_byte_of_a_sealed_backup_is_told_or_changes_nothing() {
    let dir = memory();
    let store = sealed(&dir.path().join("book"));
    let (entries, seals) = (store.entries().unwrap(), store.seals().unwrap());
    let zip = store.back_up(dir.path(), &[], None, at(5)).unwrap().path;
    let whole = fs::read(&zip).unwrap();
    let changed_path = dir.path().join("changed.zip");
    let step = if std::env::var_os("LUGBOOK_WHOLE").is_some() { 1 } else { whole.len() / 400 + 1 };
    let mut told = 0;
    for place in (0..whole.len()).step_by(step) {
        let mut changed = whole.clone();
        changed[place] ^= 1 << (place % 8);
        fs::write(&changed_path, changed).unwrap();
        match Backup::open(&changed_path) {
            Ok(backup) => assert!(backup.entries() == entries && backup.seals() == seals, "byte {place}"),
            Err(_) => told += 1,
        }
    }
    assert!(told > 100, "{told}");
}

/// The entry with other words in it, its digest made anew, chained to `previous`.
fn rewritten(entry: &Entry, previous: Option<Digest>, words: bool) -> Entry {
    let mut text = String::from_utf8(entry.bytes().to_vec()).unwrap();
    if words {
        text = text.replacen("seat wiped", "seat wIped", 1).replacen("customer left", "customer lEft", 1);
        text = text.replacen("\"role\":\"customer\"", "\"role\":\"mechanic\"", 1);
    }
    if let (Some(was), Some(now)) = (entry.envelope().previous, previous) {
        text = text.replace(&was.to_string(), &now.to_string());
    }
    let bytes = text.into_bytes();
    let digest = Digest::of(&bytes);
    Entry::open(bytes, digest, entry.personal().cloned()).unwrap()
}

/// What somebody without the key can do to the entries of a device on their way.
#[derive(Debug, Clone)]
enum Tampering {
    Changed(usize),
    Removed(usize),
    /// Changed, and everything after it chained anew.
    Rechained(usize),
    /// A seal signed anew with another key.
    Resealed(usize),
    /// A seal put over another entry.
    Replayed(usize),
    /// A seal without the end of the stream that it is over.
    Cut(usize),
}

fn tampering() -> impl Strategy<Value = Tampering> {
    prop_oneof![
        (0_usize..9).prop_map(Tampering::Changed),
        (0_usize..9).prop_map(Tampering::Removed),
        (0_usize..9).prop_map(Tampering::Rechained),
        (0_usize..2).prop_map(Tampering::Resealed),
        (0_usize..2).prop_map(Tampering::Replayed),
        (1_usize..9).prop_map(Tampering::Cut),
    ]
}

/// The entries and seals after tampering, and the number that the refusal must name.
fn tampered(entries: &[Entry], seals: &[Seal], how: &Tampering) -> (Vec<Entry>, Vec<Seal>, Mend) {
    let (mut entries, mut seals) = (entries.to_vec(), seals.to_vec());
    let stream = stream(1);
    let count = entries.len();
    let unchained = |number: usize| Mend::Unchained { stream, number: number as u64 };
    let unfit = |number: u64| Mend::SealUnfit { stream, number };
    // The first seal over this entry or a later one.
    let seal_from = |at: usize| if at < 7 { 7 } else { 9 };
    let told = match how {
        Tampering::Changed(at) => {
            entries[*at] = rewritten(&entries[*at], None, true);
            if at + 1 < count { unchained(at + 2) } else { unfit(9) }
        }
        Tampering::Removed(at) => {
            entries.remove(*at);
            if at + 1 < count { unchained(at + 2) } else { unfit(9) }
        }
        Tampering::Rechained(at) => {
            let mut previous = at.checked_sub(1).map(|before| entries[before].digest());
            for (place, entry) in entries.iter_mut().enumerate().skip(*at) {
                *entry = rewritten(entry, previous, place == *at);
                previous = Some(entry.digest());
            }
            unfit(seal_from(*at))
        }
        Tampering::Resealed(at) => {
            let said = seals[*at].said();
            let head = Head { number: said.number, digest: Some(said.head), ..Head::empty(stream) };
            let number = if *at == 0 { 9 } else { said.number };
            seals[*at] = Seal::make(&key(6), &head, said.job.clone()).unwrap();
            Mend::Resealed { stream, number }
        }
        Tampering::Replayed(at) => {
            // A true seal of this device, over another stream's entry of the same number.
            let said = seals[*at].said();
            let head = Head { number: said.number, digest: Some(Digest::of(b"elsewhere")), ..Head::empty(stream) };
            let number = said.number;
            seals[*at] = Seal::make(&key(1), &head, None).unwrap();
            unfit(number)
        }
        Tampering::Cut(left) => {
            entries.truncate(*left);
            unfit(seal_from(*left))
        }
    };
    (entries, seals, told)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn what_was_tampered_with_is_refused_at_its_place_and_nothing_is_taken(how in tampering(), shuffled in any::<bool>()) {
        let dir = memory();
        let store = sealed(&dir.path().join("book"));
        let (entries, seals) = (store.entries().unwrap(), store.seals().unwrap());
        let (mut entries, seals, told) = tampered(&entries, &seals, &how);
        if shuffled {
            entries.reverse();
        }
        let new = open_with(&dir.path().join("new"), 2, 50);
        prop_assert_eq!(mend(new.merge_sealed(entries, seals)), told);
        prop_assert_eq!(new.entries().unwrap().len(), 0);
        prop_assert_eq!(new.seals().unwrap().len(), 0);
        // And what was not tampered with is taken, in any order.
        let mut entries = store.entries().unwrap();
        entries.reverse();
        prop_assert_eq!(new.merge_sealed(entries, store.seals().unwrap()).unwrap().new, 9);
    }
}

#[test]
fn an_erased_name_leaves_every_seal_in_force() {
    let dir = tempdir().unwrap();
    let store = sealed(dir.path());
    store.erase_personal(id(9)).unwrap();
    assert_eq!(store.entry(id(9)).unwrap().unwrap().personal(), None);
    assert!(store.check().unwrap().ok());
    assert_eq!(store.sealed().unwrap()[0].sealed, 9);
}
