//! Every step of opening, saving, backing up, restoring and rescuing fails once, in each way that a disk can.

use std::fs;
use std::path::Path;

use lugbook::entry::Entry;
use lugbook::ident::Digest;
use lugbook::store::{Again, Backup, BackupLock, StoreError};

use super::disk::{self, FAULTS, Fault, Watched};
use super::{at, book, customer, draft, id, memory, open, open_as};

/// What a run under a failing disk came to.
struct Came {
    /// The fault happened.
    fired: bool,
    /// What was acknowledged, and what the first thing that was not said.
    acknowledged: Vec<u64>,
    end: Result<(), StoreError>,
}

/// Does things until one fails; from `failing` on the disk fails.
fn until_failed(failing: impl FnOnce() -> Watched, work: impl FnOnce(&mut Vec<u64>) -> Result<(), StoreError>) -> Came {
    let watched = failing();
    let mut acknowledged = Vec::new();
    let end = work(&mut acknowledged);
    Came { fired: watched.fired(), acknowledged, end }
}

/// The kind of trouble that a person must be told.
fn right(fault: Fault, why: &StoreError) -> bool {
    match fault {
        Fault::Full | Fault::Short => *why == StoreError::FreeSpace,
        // What can't be read may be damaged; that it is not shows at the next opening.
        Fault::Read if matches!(why, StoreError::Restore { .. }) => true,
        _ => *why == StoreError::TryAgain { why: Again::Storage },
    }
}

/// Has each step fail in each way; gives back how many faults there were.
fn sweep(
    prepare: impl Fn(&Path),
    run: impl Fn(&Path, &dyn Fn() -> Watched) -> Came,
    holds: impl Fn(&Path, &Came, &str),
) -> usize {
    let mut faults = 0;
    for fault in FAULTS {
        for step in 1.. {
            let dir = memory();
            prepare(dir.path());
            let came = run(dir.path(), &|| disk::fail(dir.path(), fault, step));
            let place = format!("{fault:?} at {step}: {:?}", came.end);
            println!("{place}");
            if let Err(why) = &came.end {
                assert!(came.fired && right(fault, why), "{place}");
            }
            holds(dir.path(), &came, &place);
            if !came.fired {
                assert!(came.end.is_ok(), "{place}");
                break;
            }
            faults += 1;
            assert!(step < 500, "it never ends");
        }
    }
    println!("{faults} faults");
    faults
}

/// The book opens, without a rescue, with entries `1..=n` of which the acknowledged are a part; it goes on.
fn goes_on(folder: &Path, before: u64, came: &Came, place: &str) {
    let (store, opened) = open_as(folder, 1).unwrap_or_else(|why| panic!("{place}: {why:?}"));
    assert_eq!(opened.rescued, None, "{place}");
    let ids: Vec<_> = store.entries().unwrap().iter().map(Entry::id).collect();
    let count = u64::try_from(ids.len()).unwrap();
    assert_eq!(ids, (1..=count).map(id).collect::<Vec<_>>(), "{place}");
    assert!(came.acknowledged.iter().all(|number| *number <= count) && count >= before, "{place}: {count} are there");
    assert!(store.check().unwrap().ok(), "{place}");
    store.append(vec![draft(1_000)], at(9)).unwrap_or_else(|why| panic!("{place}: {why:?}"));
    store.close().unwrap();
}

#[test]
fn making_a_book_fails_at_any_step_and_it_is_made_the_next_time() {
    let faults = sweep(
        |_| {},
        |dir, failing| {
            until_failed(failing, |_| {
                let (store, _) = open(&dir.join("book"))?;
                store.close()
            })
        },
        |dir, came, place| goes_on(&dir.join("book"), 0, came, place),
    );
    assert!(faults > 40);
}

#[test]
fn saving_fails_at_any_step_and_nothing_acknowledged_is_lost() {
    let faults = sweep(
        |dir| book(dir, 3),
        |dir, failing| {
            let (store, _) = open(dir).unwrap();
            until_failed(failing, |acknowledged| {
                for number in 4..=6 {
                    store.append(vec![draft(number)], at(2))?;
                    acknowledged.push(number);
                }
                store.close()
            })
        },
        |dir, came, place| goes_on(dir, 3, came, place),
    );
    assert!(faults > 40);
}

#[test]
fn after_a_failed_save_the_same_program_goes_on() {
    let faults = sweep(
        |dir| book(dir, 3),
        |dir, failing| {
            let (store, _) = open(dir).unwrap();
            let mut came = until_failed(failing, |acknowledged| {
                store.append(vec![draft(4)], at(2))?;
                acknowledged.push(4);
                Ok(())
            });
            if matches!(came.end, Err(StoreError::Restore { .. })) {
                // Nothing more is written before the book was looked through.
                drop(store);
                return came;
            }
            // The same again, as a person does who was told to.
            for number in 4..=5 {
                store.append(vec![draft(number)], at(3)).unwrap_or_else(|why| panic!("{:?}: {why:?}", came.end));
                came.acknowledged.push(number);
            }
            came
        },
        |dir, came, place| goes_on(dir, 3, came, place),
    );
    assert!(faults > 4);
}

/// A book with entries in its log only, as a killed program leaves it.
fn killed(dir: &Path) {
    let calm = memory();
    book(calm.path(), 3);
    let (store, _) = open(calm.path()).unwrap();
    store.append(vec![draft(4), draft(5)], at(2)).unwrap();
    for name in ["book.db", "book.db-wal", "book.seen"] {
        fs::copy(calm.path().join(name), dir.join(name)).unwrap();
    }
}

#[test]
fn opening_fails_at_any_step_and_the_book_opens_the_next_time() {
    let faults = sweep(
        killed,
        |dir, failing| {
            until_failed(failing, |_| {
                let (store, _) = open(dir)?;
                store.entries()?;
                store.close()
            })
        },
        |dir, came, place| goes_on(dir, 5, came, place),
    );
    assert!(faults > 40);
}

#[test]
fn a_backup_fails_at_any_step_and_the_next_one_is_whole() {
    assert!(backups_fail(None) > 20);
}

#[test]
fn a_locked_backup_fails_at_any_step_and_the_next_one_is_whole() {
    assert!(backups_fail(Some(&BackupLock::new("wet chalk, dry rag").unwrap())) > 20);
}

fn backups_fail(lock: Option<&BackupLock>) -> usize {
    let photo = b"sidewall".repeat(9_000);
    sweep(
        |dir| {
            book(&dir.join("book"), 3);
            fs::create_dir(dir.join("backups")).unwrap();
            fs::write(dir.join("photo"), &photo).unwrap();
        },
        |dir, failing| {
            let (store, _) = open(&dir.join("book")).unwrap();
            let photos = [(Digest::of(&photo), dir.join("photo"))];
            until_failed(failing, |_| {
                let told = store.back_up(&dir.join("backups"), &photos, lock, at(3))?;
                // A photo that can't be read is told, not a failure.
                assert_eq!(u64::try_from(told.photos_missing.len()).unwrap() + told.photos, 1);
                Ok(())
            })
        },
        |dir, came, place| {
            let names = || fs::read_dir(dir.join("backups")).unwrap().map(|name| name.unwrap().path());
            let zips = || names().filter(|path| path.extension().is_some_and(|end| end == "zip"));
            if zips().count() > 0 {
                // A name says that it holds.
                let backup = Backup::newest(&dir.join("backups"), lock, dir).unwrap();
                assert_eq!(backup.map(|backup| backup.entries().len()), Some(3), "{place}");
            }
            assert!(came.end.is_err() || zips().count() == 1, "{place}");
            let (store, _) = open_as(&dir.join("book"), 1).unwrap();
            let told =
                store.back_up(&dir.join("backups"), &[(Digest::of(&photo), dir.join("photo"))], lock, at(4)).unwrap();
            assert_eq!((told.entries, told.photos), (3, 1), "{place}");
            drop(store);
            goes_on(&dir.join("book"), 3, came, place);
        },
    )
}

#[test]
fn restoring_fails_at_any_step_and_works_the_next_time() {
    let calm = memory();
    let (store, _) = open(&calm.path().join("book")).unwrap();
    store.append(vec![draft(1), draft(2), customer(3)], at(1)).unwrap();
    let zip = store.back_up(calm.path(), &[], None, at(2)).unwrap().path;
    drop(store);
    let restore = |dir: &Path| {
        let (store, _) = open_as(&dir.join("new"), 2)?;
        let told = store.take_backup(Backup::open(&dir.join("backup.zip"))?)?;
        assert_eq!(told.after, 3);
        store.close()
    };
    let faults = sweep(
        |dir| {
            fs::copy(&zip, dir.join("backup.zip")).unwrap();
        },
        |dir, failing| until_failed(failing, |_| restore(dir)),
        |dir, came, place| {
            restore(dir).unwrap_or_else(|why| panic!("{place}: {why:?}"));
            goes_on(&dir.join("new"), 3, came, place);
        },
    );
    assert!(faults > 60);
}

#[test]
fn a_migration_fails_at_any_step_and_is_done_the_next_time() {
    let text = include_str!("../../databases/book-v1.sql");
    let before = u64::try_from(text.lines().filter(|line| line.starts_with("INSERT INTO entry ")).count()).unwrap();
    let calm = memory();
    let old = calm.path().join("book.db");
    let conn = rusqlite::Connection::open(&old).unwrap();
    conn.execute_batch("PRAGMA journal_mode = WAL").unwrap();
    conn.execute_batch(text).unwrap();
    drop(conn);
    let faults = sweep(
        |dir| {
            fs::copy(&old, dir.join("book.db")).unwrap();
        },
        |dir, failing| {
            until_failed(failing, |_| {
                let (store, opened) = open_as(dir, 2)?;
                // What is damaged at the first look is looked at twice; it may be done by then.
                assert!(opened.migrated_from.is_none_or(|version| version == 1));
                store.close()
            })
        },
        |dir, came, place| {
            let (store, opened) = open_as(dir, 3).unwrap_or_else(|why| panic!("{place}: {why:?}"));
            assert!(opened.migrated_from.is_none_or(|version| version == 1), "{place}");
            store.close().unwrap();
            // Whoever was told that it was done has a whole copy of the older book.
            let copies = fs::read_dir(dir).unwrap().map(|name| name.unwrap().path());
            let mut copies = copies.filter(|path| path.to_string_lossy().contains("book-of-version-1"));
            let whole = copies.any(|path| {
                let conn = rusqlite::Connection::open(path).unwrap();
                conn.query_row("SELECT count(*) FROM entry", [], |row| row.get::<_, i64>(0)) == Ok(before as i64)
            });
            assert!(whole, "{place}");
            goes_on(dir, before, came, place);
        },
    );
    assert!(faults > 40);
}

#[test]
fn a_rescue_fails_at_any_step_and_is_finished_the_next_time() {
    let calm = memory();
    book(calm.path(), 6);
    let file = fs::read(calm.path().join("book.db")).unwrap();
    let text = b"valve cap 6 on";
    let place = file.windows(text.len()).position(|window| window == text).unwrap();
    let mut damaged = file;
    damaged[place] ^= 1;
    let faults = sweep(
        |dir| {
            fs::write(dir.join("book.db"), &damaged).unwrap();
            fs::write(dir.join("book.damaged"), b"").unwrap();
        },
        |dir, failing| {
            until_failed(failing, |_| {
                let (store, opened) = open_as(dir, 2)?;
                assert_eq!(opened.rescued.map(|told| told.entries), Some(5));
                store.close()
            })
        },
        |dir, came, place| {
            let (store, _) = open_as(dir, 3).unwrap_or_else(|why| panic!("{place}: {why:?}"));
            assert_eq!(store.entries().unwrap().len(), 5, "{place}");
            drop(store);
            // The damaged file is there as it was.
            let aside = fs::read_dir(dir).unwrap().map(|name| name.unwrap().path().join("book.db"));
            assert!(aside.filter(|path| path.is_file()).any(|path| fs::read(path).unwrap() == damaged), "{place}");
            goes_on(dir, 5, came, place);
        },
    );
    assert!(faults > 60);
}
