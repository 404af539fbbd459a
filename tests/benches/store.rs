//! Saving, opening and merging, each beside its bare reference in the same run.
//!
//! Run on a real disk: in memory a commit costs nothing and the ratios say
//! nothing. `cargo bench -p lugbook-tests --bench store`; with `-- merge` or
//! `-- save` only that part.

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use lugbook::calendar::Moment;
use lugbook::engine::{Engine, SystemHost};
use lugbook::entry::{
    Draft, Entry, Fact, Head, Nuts, Pass, PhotoOf, ReadBy, Role, SidewallSide, Signature, TireLooks, Turned,
};
use lugbook::ident::{Digest, EntryId, JobId, PersonId, StreamId, TireId, ToolId, VehicleId};
use lugbook::logbook::Logbook;
use lugbook::store::{Mark, Opening, Snapshot, Store};
use lugbook::vehicle::{Class, Layout, Place, Side};
use lugbook::words::Speech;
use rusqlite::{Connection, params};
use serde::de::IgnoredAny;
use tempfile::TempDir;

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

/// A book of jobs of 90 entries each on one vehicle: opened, read, measured, most nuts to their final torque, signed.
fn draft(number: u64) -> Draft {
    let job = JobId::from_parts(1, ten(number / 90));
    let vehicle = VehicleId::from_parts(1, ten(1));
    let corner = number % 4;
    let at = Place::single(u8::try_from(1 + corner / 2).unwrap(), if corner < 2 { Side::Left } else { Side::Right });
    let tire = TireId::from_parts(1, ten(corner));
    let depths = || ["7/32", "6/32", "7/32"].map(|depth| depth.parse().unwrap()).to_vec();
    let fact = match (number, number % 90) {
        (0, _) => Fact::PersonAdded { person: PersonId::from_parts(1, ten(1)), role: Role::Mechanic },
        (1, _) => Fact::VehicleAdded {
            vehicle,
            name: "orchard truck".to_owned(),
            model: "Harrow 1500 2019".to_owned(),
            class: Class::LightTruck,
            layout: Layout::two_axles(false),
            own: false,
        },
        (_, 2) => Fact::JobOpened {
            job,
            vehicle,
            procedure: "rotation-on-a-lift".to_owned(),
            version: 1,
            circumstances: vec!["lift".to_owned()],
        },
        (_, 3) => {
            Fact::OdometerRead { job, reading: format!("{} km", 40_000 + number / 10).parse().unwrap(), note: None }
        }
        (_, 4..8) => Fact::TreadMeasured {
            job,
            tire,
            at,
            grooves: vec![depths()],
            lowest: "6/32".parse().unwrap(),
            reason: None,
        },
        (_, 8..12) => Fact::SidewallRead {
            job,
            tire,
            at,
            side: SidewallSide::Outer,
            text: "LT245/75R16 120/116Q DOT 1HKB 9FLP 0723".to_owned(),
            by: ReadBy::Typed,
            looks: TireLooks::default(),
        },
        (_, 12..18) => Fact::PhotoTaken {
            job: Some(job),
            photo: Digest::of(&number.to_be_bytes()),
            of: PhotoOf::Tread,
            at: Some(at),
            taken: None,
        },
        (_, 89) => Fact::JobSigned { job, signature: Signature::Name, seen: None },
        _ => Fact::NutTightened {
            job,
            at,
            nuts: Nuts::One(u8::try_from(1 + number % 5).unwrap()),
            pass: Pass::Final,
            turned: Some(Turned::Moved),
            setting: Some("137 N.m".parse().unwrap()),
            tool: Some(ToolId::from_parts(1, ten(2))),
        },
    };
    Draft {
        id: EntryId::from_parts(1_777_000_000_000 + number, ten(number)),
        author: PersonId::from_parts(1, ten(1)),
        practice: false,
        fact,
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
    let only =
        |part: &str| ["save", "merge"].iter().all(|name| *name == part || !std::env::args().any(|arg| arg == *name));
    if only("save") {
        save_and_open();
    }
    if only("merge") {
        merge();
    }
}

fn on_disk() -> TempDir {
    let base = std::env::var_os("LUGBOOK_BENCH_DIR").map_or_else(std::env::temp_dir, Into::into);
    tempfile::tempdir_in(base).unwrap()
}

fn save_and_open() {
    let dir = on_disk();
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
        // The real thing: the folded book that the engine keeps, and the entries since.
        let start = || {
            let host = Box::new(SystemHost { at: Some(at(from)) });
            Engine::open(&folder, host, Speech::default()).unwrap()
        };
        let jobs = start().book().jobs.len();
        let engine = |_| assert_eq!(start().book().jobs.len(), jobs);
        show(&format!("open {size} by the engine, as usual"), paired(rounds, engine, step));
        let (store, _, entries) = Store::open_and_read(&folder, opening()).unwrap();
        drop(store);
        let fold = |_| assert_eq!(Logbook::from_iter(entries.iter().cloned()).book().jobs.len(), jobs);
        show(&format!("fold {size}, with a copy of each entry"), paired(rounds.min(5), fold, step));
        let digests = |_| assert!(entries.iter().all(|entry| Digest::of(entry.bytes()) == entry.digest()));
        show(&format!("of {size}: digests alone, on one core"), paired(rounds, digests, step));
        let skipped = |_| {
            for entry in &entries {
                black_box(serde_json::from_slice::<IgnoredAny>(entry.bytes()).unwrap());
            }
        };
        show(&format!("of {size}: JSON skipped over, on one core"), paired(rounds, skipped, step));
        let opened = |_| {
            for entry in &entries {
                black_box(Entry::open(entry.bytes().to_vec(), entry.digest(), None).unwrap());
            }
        };
        show(&format!("of {size}: digest and decoding, on one core"), paired(rounds, opened, step));
    }
}

/// A stream of another device.
fn stream(length: u64) -> Vec<Entry> {
    let mut head = Head::empty(StreamId::from_parts(1, ten(2)));
    let seal = |number| {
        let entry = draft(number).seal(&head, at(number)).unwrap();
        head = head.then(&entry).unwrap();
        entry
    };
    (0..length).map(seal).collect()
}

/// Merging a whole stream beside inserting the same rows into the same tables.
fn merge() {
    for size in [1_000_u64, 10_000, 100_000, 1_000_000] {
        let entries = stream(size);
        let rounds = if size > 500_000 { 1 } else { 5 };
        let mut copies: Vec<_> = (0..rounds).map(|_| entries.clone()).collect();
        let dirs: Vec<_> = (0..2 * rounds).map(|_| on_disk()).collect();
        let folder = |at: u64| dirs[usize::try_from(at).unwrap()].path();
        for at in 0..2 * rounds {
            Store::open(folder(at), opening()).unwrap().0.close().unwrap();
        }
        let stores: Vec<_> = (0..rounds).map(|round| Store::open(folder(round), opening()).unwrap().0).collect();
        let ours = |round: u64| {
            let entries = copies.pop().unwrap();
            let merged = stores[usize::try_from(round).unwrap()].merge(entries).unwrap();
            assert_eq!(merged.new, size);
        };
        let reference = |round: u64| {
            let mut conn = Connection::open(folder(rounds + round).join("book.db")).unwrap();
            conn.execute_batch("PRAGMA synchronous = FULL;").unwrap();
            let transaction = conn.transaction().unwrap();
            let mut stmt = transaction
                .prepare(
                    "INSERT INTO entry (id, stream, number, ms, n, bytes, digest) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                )
                .unwrap();
            for entry in &entries {
                let said = entry.envelope();
                stmt.execute(params![
                    said.id.as_bytes(),
                    said.stream.as_bytes(),
                    i64::try_from(said.number).unwrap(),
                    said.time.wall.unix_ms(),
                    said.time.count,
                    entry.bytes(),
                    entry.digest().as_bytes()
                ])
                .unwrap();
            }
            drop(stmt);
            transaction.commit().unwrap();
        };
        show(&format!("merge {size}, chain verified"), paired(rounds, ours, reference));
    }
}
