//! Saving and opening a book, each beside its bare reference in the same run.
//!
//! Run on a real disk: in memory a commit costs nothing and the ratios say
//! nothing. `cargo bench -p lugbook-tests --bench store`

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use lugbook::calendar::Moment;
use lugbook::entry::{Draft, Fact, Nuts, Pass, Turned};
use lugbook::ident::{EntryId, JobId, PersonId, StreamId, ToolId};
use lugbook::store::{Mark, Opening, Snapshot, Store};
use lugbook::vehicle::{Place, Side};
use rusqlite::{Connection, params};

const NOW: i64 = 1_777_886_100_000;

fn ten(number: u64) -> [u8; 10] {
    let mut bytes = [0x5a; 10];
    bytes[2..].copy_from_slice(&number.to_be_bytes());
    bytes
}

fn at(number: u64) -> Moment {
    Moment::from_unix_ms(NOW + i64::try_from(number).unwrap())
}

fn opening() -> Opening {
    Opening { stream: StreamId::from_parts(1, ten(1)), now: at(0) }
}

/// What a job says most often: one nut to its final torque.
fn draft(number: u64) -> Draft {
    Draft {
        id: EntryId::from_parts(1_777_000_000_000 + number, ten(number)),
        author: PersonId::from_parts(1, ten(1)),
        practice: false,
        fact: Fact::NutTightened {
            job: JobId::from_parts(1, ten(number / 90)),
            at: Place::single(1, Side::Left),
            nuts: Nuts::One(u8::try_from(1 + number % 5).unwrap()),
            pass: Pass::Final,
            turned: Some(Turned::Moved),
            setting: Some("137 N.m".parse().unwrap()),
            tool: Some(ToolId::from_parts(1, ten(2))),
        },
        personal: None,
    }
}

/// A table with the book's columns and keys, and nothing else around it.
fn bare(path: &Path) -> Connection {
    let conn = Connection::open(path).unwrap();
    conn.execute_batch(
        "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
         CREATE TABLE entry (arrived INTEGER NOT NULL PRIMARY KEY, id BLOB NOT NULL UNIQUE, stream BLOB NOT NULL,
             number INTEGER NOT NULL, ms INTEGER NOT NULL, n INTEGER NOT NULL, bytes BLOB NOT NULL,
             digest BLOB NOT NULL, UNIQUE (stream, number)) STRICT;",
    )
    .unwrap();
    conn
}

fn insert(conn: &Connection, number: u64, bytes: &[u8]) {
    let mut stmt = conn
        .prepare_cached(
            "INSERT INTO entry (id, stream, number, ms, n, bytes, digest) VALUES (?1, ?2, ?3, ?4, 0, ?5, ?6)",
        )
        .unwrap();
    let id = EntryId::from_parts(1_777_000_000_000 + number, ten(number));
    let kept = i64::try_from(number).unwrap();
    stmt.execute(params![id.as_bytes(), ten(1), kept, NOW + kept, bytes, [7_u8; 32]]).unwrap();
}

/// Times two things in turn, so that a slow moment of the machine falls on both.
fn paired(rounds: u64, mut ours: impl FnMut(u64), mut reference: impl FnMut(u64)) -> (Duration, Duration) {
    let (mut first, mut second) = (Vec::new(), Vec::new());
    for round in 0..rounds {
        let start = Instant::now();
        ours(round);
        first.push(start.elapsed());
        let start = Instant::now();
        reference(round);
        second.push(start.elapsed());
    }
    (median(&mut first), median(&mut second))
}

fn median(times: &mut [Duration]) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

fn show(what: &str, (ours, reference): (Duration, Duration)) {
    let ratio = ours.as_secs_f64() / reference.as_secs_f64();
    println!("{what}: {ours:.1?} beside {reference:.1?} = {ratio:.2} x");
}

fn main() {
    // `cargo test` and `cargo clippy` run benches too; only `cargo bench` measures.
    if !std::env::args().any(|arg| arg == "--bench") {
        return;
    }
    let base = std::env::var_os("LUGBOOK_BENCH_DIR").map_or_else(std::env::temp_dir, Into::into);
    let dir = tempfile::tempdir_in(base).unwrap();
    let mut from = 0_u64;
    let folder = dir.path().join("book");
    let reference = dir.path().join("bare.db");
    let plain = bare(&reference);
    for size in [1_000_u64, 10_000, 100_000] {
        let (store, _) = Store::open(&folder, opening()).unwrap();
        let mut bytes = Vec::new();
        for first in (from..size).step_by(1_000) {
            let drafts = (first..(first + 1_000).min(size)).map(draft).collect();
            let entries = store.append(drafts, at(first)).unwrap();
            let transaction = plain.unchecked_transaction().unwrap();
            for (number, entry) in (first..).zip(&entries) {
                insert(&plain, number + 1, entry.bytes());
            }
            transaction.commit().unwrap();
            bytes = entries[0].bytes().to_vec();
        }
        let saved = paired(
            400,
            |round| drop(store.append(vec![draft(size + round)], at(size + round)).unwrap()),
            |round| insert(&plain, size + round + 1, &bytes),
        );
        show(&format!("save one entry into {size} ({} bytes)", bytes.len()), saved);
        from = size + 400;
        // A snapshot as large as a folded state of so many entries may be, and a tail of 100.
        let mark = store.mark().unwrap();
        let state = vec![0x42; usize::try_from(size).unwrap() * 40];
        assert!(store.keep_snapshot("bench", 1, Snapshot { mark, bytes: state }).unwrap());
        store.append((from..from + 100).map(draft).collect(), at(from)).unwrap();
        for number in from..from + 100 {
            insert(&plain, number + 1, &bytes);
        }
        from += 100;
        store.close().unwrap();

        let step = |_| {
            let conn = Connection::open(&reference).unwrap();
            let mut stmt = conn.prepare("SELECT arrived, id, stream, number, ms, n, bytes, digest FROM entry").unwrap();
            let mut rows = stmt.query([]).unwrap();
            let mut count = 0;
            while let Some(row) = rows.next().unwrap() {
                for column in 0..8 {
                    black_box(row.get_ref(column).unwrap());
                }
                count += 1;
            }
            assert_eq!(count, from);
        };
        let rounds = if size > 50_000 { 15 } else { 30 };
        let whole = |_| {
            let (store, _, entries) = Store::open_and_read(&folder, opening()).unwrap();
            assert_eq!(entries.len() as u64, from);
            drop(entries);
            drop(store);
        };
        show(&format!("open {size} and read all, verified"), paired(rounds, whole, step));
        let usual = |_| {
            let (store, _) = Store::open(&folder, opening()).unwrap();
            let snapshot = store.snapshot("bench", 1).unwrap().unwrap();
            assert_eq!(store.arrived_after(&snapshot.mark).unwrap().len(), 100);
            assert!(store.mark().unwrap() != Mark::EMPTY);
        };
        show(&format!("open {size}, snapshot and tail of 100"), paired(rounds, usual, step));
    }
}
