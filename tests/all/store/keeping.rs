//! What is appended is there again, once, unchanged and in order.

use lugbook::entry::{Entry, Fact, Head};
use lugbook::store::{Mark, Mend, Problem, ProblemKind, Snapshot, Spot, StoreError};
use rusqlite::Connection;
use tempfile::tempdir;

use super::{at, book, customer, draft, id, job, open, open_as, person, stream};

#[test]
fn what_was_appended_is_there_after_reopening() {
    let dir = tempdir().unwrap();
    let (store, opened) = open(dir.path()).unwrap();
    assert!(opened.created && opened.writable);
    assert_eq!(opened.mark, Mark::EMPTY);
    let first = store.append(vec![draft(1), customer(2)], at(1)).unwrap();
    let second = store.append(vec![draft(3)], at(2)).unwrap();
    let all = [first, second].concat();
    assert_eq!(store.entries().unwrap(), all);
    store.close().unwrap();

    let (store, opened) = open_as(dir.path(), 9).unwrap();
    assert!(!opened.created);
    assert_eq!((opened.stream, opened.mark.arrived), (stream(1), 3));
    assert_eq!(store.entries().unwrap(), all);
    assert_eq!(store.entry(id(2)).unwrap().unwrap().personal(), all[1].personal());
    let mut head = Head::empty(stream(1));
    for entry in &all {
        head = head.then(entry).unwrap();
    }
    assert_eq!(store.head().unwrap(), head);
    let check = store.check().unwrap();
    assert_eq!((check.entries, check.problems), (3, vec![]));
}

#[test]
fn the_same_draft_twice_is_one_entry() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    let first = store.append(vec![draft(1), customer(2)], at(1)).unwrap();
    assert_eq!(
        store.append(vec![customer(2), draft(1), draft(3)], at(5)).unwrap()[..2],
        [first[1].clone(), first[0].clone()]
    );
    assert_eq!(store.append(vec![draft(4), draft(4)], at(6)).unwrap().len(), 2);
    assert_eq!(store.entries().unwrap().len(), 4);
}

#[test]
fn an_id_never_names_two_entries() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    store.append(vec![draft(1), customer(2)], at(1)).unwrap();
    let other_fact = lugbook::entry::Draft { fact: Fact::JobResumed { job: job() }, ..draft(1) };
    let other_author = lugbook::entry::Draft { author: person(2), ..draft(1) };
    let mut other_name = customer(2);
    other_name.personal.as_mut().unwrap().name = Some("Ash Merriwether".to_owned());
    for wrong in [other_fact, other_author, other_name] {
        let id = wrong.id;
        // The whole command fails, its other draft with it.
        let why = store.append(vec![draft(7), wrong], at(2)).unwrap_err();
        assert_eq!(why, StoreError::MendInput { why: Mend::SameId { id } });
        assert_eq!(store.entries().unwrap().len(), 2);
    }
}

#[test]
fn a_clock_set_back_keeps_the_order() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    let numbers = [5_000, 100, -50_000, 5_001];
    for (number, ms) in (1..).zip(numbers) {
        store.append(vec![draft(number)], at(ms)).unwrap();
    }
    let ids: Vec<_> = store.entries().unwrap().iter().map(Entry::id).collect();
    assert_eq!(ids, [id(1), id(2), id(3), id(4)]);
    assert!(store.check().unwrap().ok());
}

#[test]
fn entries_can_be_asked_for_from_a_place_on() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    let all = store.append((1..=20).map(draft).collect(), at(1)).unwrap();
    assert_eq!(store.entries_after(all[14].order()).unwrap(), all[15..]);
    assert_eq!(store.entries_after(all[19].order()).unwrap(), []);
    let mark = Mark { arrived: 15, last: Some(all[14].digest()) };
    assert_eq!(store.arrived_after(&mark).unwrap(), all[15..]);
    assert_eq!(store.arrived_after(&Mark::EMPTY).unwrap(), all);
}

#[test]
fn the_tables_refuse_to_change_or_delete_an_entry() {
    let dir = tempdir().unwrap();
    book(dir.path(), 3);
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    let same = "INSERT OR REPLACE INTO entry SELECT arrived, id, stream, number, ms, n, x'00', digest FROM entry";
    let same_id = "INSERT OR REPLACE INTO entry
        SELECT 99, id, stream, 99, ms, n, bytes, digest FROM entry WHERE number = 1";
    let same_place = "INSERT OR REPLACE INTO entry
        SELECT 99, zeroblob(16), stream, number, ms, n, bytes, digest FROM entry WHERE number = 1";
    for change in ["UPDATE entry SET ms = 0", "DELETE FROM entry WHERE number = 3", same, same_id, same_place] {
        let why = conn.execute(change, []).unwrap_err().to_string();
        assert!(why.contains("an entry is never"), "{change}: {why}");
    }
    drop(conn);
    let (store, _) = open(dir.path()).unwrap();
    assert!(store.check().unwrap().ok());
}

#[test]
fn an_erased_name_leaves_a_chain_that_holds_and_no_trace_in_the_files() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    store.append(vec![customer(1), draft(2)], at(1)).unwrap();
    let mark = store.mark().unwrap();
    assert!(store.keep_snapshot("names", 1, Snapshot { mark, bytes: b"Wren Castellan".to_vec() }).unwrap());
    let traces = || {
        let files = ["book.db", "book.db-wal"].map(|name| std::fs::read(dir.path().join(name)).unwrap_or_default());
        files.concat().windows(14).filter(|window| window == b"Wren Castellan").count()
    };
    assert!(traces() > 0);
    store.erase_personal(id(1)).unwrap();
    assert_eq!(traces(), 0);
    let entries = store.entries().unwrap();
    assert_eq!(entries[0].personal(), None);
    assert!(entries[0].envelope().personal.is_some());
    assert!(store.check().unwrap().ok());
    // Repeating the command that brought the name does not bring it back.
    store.append(vec![customer(1)], at(9)).unwrap();
    assert_eq!(store.entry(id(1)).unwrap().unwrap().personal(), None);
    let why = store.erase_personal(id(77)).unwrap_err();
    assert_eq!(why, StoreError::MendInput { why: Mend::NoEntry { id: id(77) } });
}

#[test]
fn a_snapshot_is_believed_only_for_this_book_and_version() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    let all = store.append((1..=5).map(draft).collect(), at(1)).unwrap();
    let snapshot = Snapshot { mark: store.mark().unwrap(), bytes: vec![1, 2, 3] };
    assert!(store.keep_snapshot("state", 1, snapshot.clone()).unwrap());
    store.append(vec![draft(6)], at(2)).unwrap();
    assert_eq!(store.snapshot("state", 1).unwrap(), Some(snapshot.clone()));
    assert_eq!(store.snapshot("state", 2).unwrap(), None);
    assert_eq!(store.snapshot("other", 1).unwrap(), None);
    let elsewhere = Mark { arrived: 4, last: Some(all[4].digest()) };
    assert!(!store.keep_snapshot("state", 1, Snapshot { mark: elsewhere, ..snapshot }).unwrap());
    assert_eq!(store.snapshot("state", 1).unwrap().unwrap().mark.arrived, 5);
    store.close().unwrap();
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    conn.execute("UPDATE snapshot SET bytes = x'010204'", []).unwrap();
    drop(conn);
    let (store, _) = open(dir.path()).unwrap();
    assert_eq!(store.snapshot("state", 1).unwrap(), None);
}

/// Two devices with the same customer each.
fn two_books() -> (Vec<Entry>, Vec<Entry>) {
    let fill = |device: u64, first: u64| {
        let dir = tempdir().unwrap();
        let (store, _) = open_as(dir.path(), device).unwrap();
        for number in first..first + 4 {
            store.append(vec![draft(number)], at(i64::try_from(number * 10 % 97).unwrap())).unwrap();
        }
        store.append(vec![customer(first + 4)], at(200)).unwrap();
        store.entries().unwrap()
    };
    (fill(2, 20), fill(3, 30))
}

#[test]
fn merging_is_a_union_in_any_order_and_harmless_when_repeated() {
    let (two, three) = two_books();
    let mut results = Vec::new();
    for order in [[&two, &three], [&three, &two]] {
        let dir = tempdir().unwrap();
        let (store, _) = open(dir.path()).unwrap();
        store.append(vec![draft(1)], at(3)).unwrap();
        for entries in order {
            let mut backward = entries.clone();
            backward.reverse();
            assert_eq!(store.merge(backward).unwrap().new, 5);
            let again = store.merge(entries.clone()).unwrap();
            assert_eq!((again.new, again.known), (0, 5));
        }
        assert!(store.check().unwrap().ok());
        // An own entry after the merge comes after everything that was seen.
        let last = store.append(vec![draft(2)], at(4)).unwrap();
        let all = store.entries().unwrap();
        assert_eq!(all.last(), last.first());
        results.push(all.into_iter().map(|entry| entry.id()).collect::<Vec<_>>());
    }
    assert_eq!(results[0], results[1]);
}

#[test]
fn a_far_ahead_clock_of_another_device_is_not_followed() {
    let dir = tempdir().unwrap();
    let (other, _) = open_as(dir.path(), 2).unwrap();
    let ahead = other.append(vec![draft(1)], at(3 * 24 * 3_600_000)).unwrap();
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    store.merge(ahead).unwrap();
    let own = store.append(vec![draft(2)], at(5)).unwrap();
    assert_eq!(own[0].envelope().time.wall, at(5));
}

#[test]
fn a_merge_that_does_not_hold_changes_nothing_and_names_the_place() {
    let (two, three) = two_books();
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    store.merge(two[..2].to_vec()).unwrap();
    let before = store.entries().unwrap();

    let gap = [three.clone(), two[3..].to_vec()].concat();
    let unchained = Mend::Unchained { stream: stream(2), number: 4 };
    assert_eq!(store.merge(gap), Err(StoreError::MendInput { why: unchained }));
    assert_eq!(store.entries().unwrap(), before);

    // The same device's stream, told twice: another second entry.
    let dir = tempdir().unwrap();
    let (other, _) = open_as(dir.path(), 2).unwrap();
    let forked = other.append(vec![draft(20), draft(41)], at(20 * 10 % 97)).unwrap();
    let fork = Mend::Forked { stream: stream(2), number: 2 };
    assert_eq!(forked[0], two[0]);
    assert_eq!(store.merge(forked), Err(StoreError::MendInput { why: fork }));
    assert_eq!(store.entries().unwrap(), before);
    assert!(store.check().unwrap().ok());
}

/// Rewrites the tables behind the store's back.
fn tamper(dir: &std::path::Path, sql: &str) {
    let conn = Connection::open(dir.join("book.db")).unwrap();
    let triggers: Vec<(String, String)> = conn
        .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
        .unwrap()
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap();
    for (name, _) in &triggers {
        conn.execute_batch(&format!("DROP TRIGGER {name}")).unwrap();
    }
    conn.execute_batch(sql).unwrap();
    for (_, sql) in &triggers {
        conn.execute_batch(sql).unwrap();
    }
}

#[test]
fn changed_removed_and_reordered_entries_are_noticed_with_their_place() {
    let row = |arrived| Spot::Row { arrived };
    let cases = [
        (
            "UPDATE entry SET bytes = CAST(replace(CAST(bytes AS TEXT), 'cap 3', 'cap 4') AS BLOB) WHERE number = 3",
            row(3),
        ),
        ("UPDATE entry SET digest = zeroblob(32) WHERE number = 2", row(2)),
        ("UPDATE entry SET ms = ms + 1 WHERE number = 4", row(4)),
        ("UPDATE entry SET id = zeroblob(16) WHERE number = 4", row(4)),
        ("UPDATE entry SET number = 9 WHERE number = 4", row(4)),
        ("DELETE FROM entry WHERE number = 3", Spot::Book),
        (
            "DELETE FROM entry WHERE number = 3; UPDATE entry SET arrived = arrived - 1 WHERE arrived > 3",
            Spot::Stream { stream: stream(1) },
        ),
        (
            "CREATE TEMP TABLE b AS SELECT number, bytes, digest FROM entry;
          UPDATE entry SET bytes = CAST(b.bytes AS BLOB), digest = b.digest FROM b
              WHERE (entry.number = 2 AND b.number = 3) OR (entry.number = 3 AND b.number = 2)",
            row(2),
        ),
        ("INSERT INTO personal SELECT id, 'absent', NULL, NULL, NULL, NULL, NULL FROM entry WHERE number = 2", row(2)),
    ];
    for (sql, at) in cases {
        let dir = tempdir().unwrap();
        book(dir.path(), 5);
        let (store, _) = open(dir.path()).unwrap();
        tamper(dir.path(), sql);
        let check = store.check().unwrap();
        assert!(check.problems.iter().any(|problem| problem.at == at), "{sql}: {:?}", check.problems);
        assert!(matches!(store.entries(), Err(StoreError::Restore { .. })), "{sql}");
        // Nothing more is written to a damaged book.
        assert!(matches!(store.append(vec![draft(50)], super::at(50)), Err(StoreError::Restore { .. })), "{sql}");
    }
}

#[test]
fn a_link_to_another_entry_is_noticed() {
    // The third entry of another stream of the same device: each digest holds, the chain does not.
    let dir = tempdir().unwrap();
    book(dir.path(), 5);
    let other = tempdir().unwrap();
    let (store, _) = open(other.path()).unwrap();
    let entries = store.append(vec![draft(1), draft(60), draft(61)], at(1)).unwrap();
    let (damaged, _) = open(dir.path()).unwrap();
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    conn.execute_batch("DROP TRIGGER entry_stays").unwrap();
    let said = entries[2].envelope();
    conn.execute(
        "UPDATE entry SET id = ?1, ms = ?2, n = ?3, bytes = ?4, digest = ?5 WHERE number = 3",
        rusqlite::params![
            said.id.as_bytes(),
            said.time.wall.unix_ms(),
            said.time.count,
            entries[2].bytes(),
            entries[2].digest().as_bytes()
        ],
    )
    .unwrap();
    conn.execute_batch(
        "CREATE TRIGGER entry_stays BEFORE UPDATE ON entry
BEGIN
    SELECT RAISE(ABORT, 'an entry is never changed');
END",
    )
    .unwrap();
    let broken = |number| Problem { kind: ProblemKind::Chain, at: Spot::Entry { stream: stream(1), number } };
    assert_eq!(damaged.check().unwrap().problems, [broken(3), broken(4)]);
}

#[test]
fn every_table_is_strict_and_the_file_says_whose_it_is() {
    let dir = tempdir().unwrap();
    book(dir.path(), 1);
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    let number = |pragma: &str| conn.query_row(&format!("PRAGMA {pragma}"), [], |row| row.get::<_, i64>(0)).unwrap();
    assert_eq!(number("application_id"), i64::from(u32::from_be_bytes(*b"LUGB")));
    assert_eq!(number("user_version"), i64::from(lugbook::store::VERSION));
    let mode: String = conn.query_row("PRAGMA journal_mode", [], |row| row.get(0)).unwrap();
    assert_eq!(mode, "wal");
    let mut stmt = conn
        .prepare("SELECT name, strict FROM pragma_table_list WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
        .unwrap();
    let tables: Vec<(String, bool)> =
        stmt.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).unwrap().collect::<Result<_, _>>().unwrap();
    assert!(tables.len() >= 6 && tables.iter().all(|(_, strict)| *strict), "{tables:?}");
    // The database that is built in; an older one is refused at opening.
    assert!(rusqlite::version_number() >= 3_051_003, "{}", rusqlite::version());
}

#[test]
fn a_name_that_comes_later_has_what_was_kept_made_anew() {
    let (first, second) = (tempdir().unwrap(), tempdir().unwrap());
    let (from, _) = open_as(first.path(), 1).unwrap();
    let named = from.append(vec![customer(1)], at(1)).unwrap();
    let nameless = Entry::open(named[0].bytes().to_vec(), named[0].digest(), None).unwrap();
    let (store, _) = open_as(second.path(), 2).unwrap();
    store.merge(vec![nameless]).unwrap();
    let mark = store.mark().unwrap();
    assert!(store.keep_snapshot("book", 1, Snapshot { mark, bytes: vec![1] }).unwrap());
    assert_eq!(store.merge(named).unwrap().completed, 1);
    assert_eq!((store.snapshot("book", 1).unwrap(), store.mark().unwrap()), (None, mark));
}
