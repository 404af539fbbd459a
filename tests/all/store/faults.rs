//! Killed programs, full disks, folders that can't be written, two programs at once.

use std::fs;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use lugbook::store::{Again, Mend, Snapshot, StoreError};
use tempfile::tempdir;

use super::{at, book, draft, id, open, open_as, skip};
use crate::kill::Chance;

/// Runs one of the ignored tests below in a program of its own.
fn child(test: &str, folder: &Path) -> Command {
    let mut command = Command::new(std::env::current_exe().unwrap());
    command.args(["--ignored", "--exact", "--nocapture", &format!("store::faults::{test}")]);
    command.env("LUGBOOK_CHILD_FOLDER", folder).stderr(Stdio::null());
    command
}

fn child_folder() -> std::path::PathBuf {
    std::env::var_os("LUGBOOK_CHILD_FOLDER").expect("run by its parent only").into()
}

/// Reads the numbers that a child acknowledged.
fn said(child: &mut Child) -> impl Iterator<Item = u64> + use<> {
    let lines = BufReader::new(child.stdout.take().unwrap()).lines();
    lines.map_while(Result::ok).filter_map(|line| line.split_once("saved ")?.1.trim().parse().ok())
}

#[test]
#[ignore = "the child of the kill test"]
fn child_saves_until_killed() {
    let folder = child_folder();
    let (mut store, opened) = open(&folder).unwrap();
    println!("open");
    let mut chance = Chance(opened.mark.arrived ^ u64::from(std::process::id()));
    let mut number = opened.mark.arrived;
    loop {
        let amount = if chance.below(4) == 0 { 1 + chance.below(6) } else { 1 };
        store.append((number + 1..=number + amount).map(draft).collect(), at(1)).unwrap();
        number += amount;
        println!("saved {number}");
        match chance.below(40) {
            0 => drop(store.check().unwrap()),
            1 => drop(store.back_up(&folder, &[], None, at(i64::try_from(number).unwrap())).unwrap()),
            2 => drop(store.entries().unwrap()),
            3 => {
                let mark = store.mark().unwrap();
                assert!(store.keep_snapshot("child", 1, Snapshot { mark, bytes: vec![7; 9_000] }).unwrap());
            }
            4 => {
                store.close().unwrap();
                store = open(&folder).unwrap().0;
            }
            _ => {}
        }
    }
}

/// How many times to kill: 30, or what `LUGBOOK_KILLS` says; `tests/long` asks for many.
fn kills() -> u64 {
    std::env::var("LUGBOOK_KILLS").ok().and_then(|text| text.parse().ok()).unwrap_or(30)
}

#[test]
fn a_killed_program_loses_and_doubles_nothing_it_acknowledged() {
    let dir = tempdir().unwrap();
    let (mut last, mut kept, mut busy) = (0, 0, 0);
    let mut chance = Chance(std::env::var("LUGBOOK_KILL_SEED").ok().and_then(|text| text.parse().ok()).unwrap_or(7));
    for round in 0..kills() {
        // A book does not grow without end over a long run.
        if kept > 3_000 {
            fs::remove_dir_all(dir.path()).unwrap();
            last = 0;
        }
        let mut running = child("child_saves_until_killed", dir.path()).stdout(Stdio::piped()).spawn().unwrap();
        let mut numbers = said(&mut running);
        // After so many were saved, whatever time that takes, and a little more; or while it starts.
        if chance.below(5) > 0 {
            let many = 1 + usize::try_from(chance.below(30)).unwrap();
            last = numbers.by_ref().take(many).last().expect("it saves");
            std::thread::sleep(Duration::from_micros(chance.below(4_000)));
        } else {
            std::thread::sleep(Duration::from_micros(chance.below(60_000)));
        }
        running.kill().unwrap();
        running.wait().unwrap();
        last = numbers.last().unwrap_or(last);
        busy += u64::from(dir.path().join("book.db-wal").exists());
        let (store, opened) = open_as(dir.path(), 1).unwrap();
        assert_eq!(opened.rescued, None, "round {round}");
        let ids: Vec<_> = store.entries().unwrap().iter().map(lugbook::entry::Entry::id).collect();
        kept = u64::try_from(ids.len()).unwrap();
        assert!(kept >= last, "round {round}: {last} were acknowledged, {kept} are there");
        assert_eq!(ids, (1..=kept).map(id).collect::<Vec<_>>(), "round {round}: each once, in order");
        assert!(store.check().unwrap().ok(), "round {round}");
        store.close().unwrap();
    }
    println!("{} kills, {busy} of them with the book open", kills());
    assert!(kept > 0 && last > 0);
}

#[test]
#[ignore = "the child of the second-program test"]
fn child_opens_and_waits() {
    let (_store, _) = open(&child_folder()).unwrap();
    println!("saved 0");
    std::thread::sleep(Duration::from_secs(60));
}

#[test]
fn a_second_program_is_told_and_gets_in_when_the_first_ends() {
    let dir = tempdir().unwrap();
    let mut first = child("child_opens_and_waits", dir.path()).stdout(Stdio::piped()).spawn().unwrap();
    assert_eq!(said(&mut first).next(), Some(0));
    let told = open(dir.path()).unwrap_err();
    first.kill().unwrap();
    first.wait().unwrap();
    assert_eq!(told, StoreError::TryAgain { why: Again::OpenElsewhere });
    open(dir.path()).unwrap();
}

/// A file system of its own, taken away when dropped.
struct Mounted<'a>(&'a Path);

impl Drop for Mounted<'_> {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0).status();
    }
}

fn mount<'a>(args: &[&str], at: &'a Path) -> Option<Mounted<'a>> {
    let done = Command::new("mount").args(args).arg(at).stderr(Stdio::null()).status();
    done.is_ok_and(|status| status.success()).then_some(Mounted(at))
}

#[test]
fn a_full_disk_is_told_and_the_book_stays_as_it_was() {
    let dir = tempdir().unwrap();
    let Some(_mounted) = mount(&["-t", "tmpfs", "-o", "size=1m", "tmpfs"], dir.path()) else {
        return skip("a disk that fills up", "no file system can be mounted here");
    };
    let folder = dir.path().join("book");
    let (store, _) = open(&folder).unwrap();
    let mut saved = Vec::new();
    let why = loop {
        let number = u64::try_from(saved.len()).unwrap() + 1;
        match store.append(vec![draft(number)], at(1)) {
            Ok(entries) => saved.extend(entries),
            Err(why) => break why,
        }
        assert!(saved.len() < 5_000, "it never fills up");
    };
    assert_eq!(why, StoreError::FreeSpace);
    assert!(saved.len() > 50);
    // Questions are still answered, and the same is told again.
    assert_eq!(store.entries().unwrap(), saved);
    let number = u64::try_from(saved.len()).unwrap() + 1;
    assert_eq!(store.append(vec![draft(number)], at(1)), Err(StoreError::FreeSpace));
    assert!(store.check().unwrap().ok());
    drop(store);
    // Opening it again does no harm, whether it can be written or not.
    match open_as(&folder, 2) {
        Ok((store, opened)) => {
            assert_eq!(opened.rescued, None);
            assert_eq!(store.entries().unwrap(), saved);
        }
        Err(why) => assert_eq!(why, StoreError::FreeSpace),
    }
    // With room again, it goes on.
    let done = Command::new("mount").args(["-o", "remount,size=8m"]).arg(dir.path()).status().unwrap();
    assert!(done.success());
    let (store, opened) = open_as(&folder, 2).unwrap();
    assert_eq!(opened.rescued, None);
    saved.extend(store.append(vec![draft(number)], at(1)).unwrap());
    assert_eq!(store.entries().unwrap(), saved);
}

#[test]
fn a_disk_too_small_for_a_new_book_is_told_and_nothing_is_left() {
    let dir = tempdir().unwrap();
    let Some(_mounted) = mount(&["-t", "tmpfs", "-o", "size=16k", "tmpfs"], dir.path()) else {
        return skip("a disk too small for a book", "no file system can be mounted here");
    };
    for _ in 0..2 {
        assert_eq!(open(dir.path()).unwrap_err(), StoreError::FreeSpace);
        assert!(!dir.path().join("book.db").exists());
    }
}

#[test]
fn a_folder_that_cant_be_written_is_read_or_told() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    let all = store.append((1..=5).map(draft).collect(), at(1)).unwrap();
    // As a killed program leaves it: the entries are in the log only.
    let killed = tempdir().unwrap();
    for name in ["book.db", "book.db-wal", "book.seen"] {
        fs::copy(dir.path().join(name), killed.path().join(name)).unwrap();
    }
    store.close().unwrap();

    let folder = dir.path().to_str().unwrap().to_owned();
    let Some(_mounted) = mount(&["--bind", "-o", "ro", &folder], dir.path()) else {
        return skip("a folder that can't be written", "no file system can be mounted here");
    };
    let (store, opened) = open_as(dir.path(), 2).unwrap();
    assert!(!opened.writable && !opened.created);
    assert_eq!(store.entries().unwrap(), all);
    assert!(store.check().unwrap().ok());
    let told = StoreError::MendInput { why: Mend::NotWritable { path: dir.path().to_owned() } };
    assert_eq!(store.append(vec![draft(6)], at(2)), Err(told));
    assert_eq!(store.entry(id(3)).unwrap().as_ref(), Some(&all[2]));
    store.close().unwrap();

    let folder = killed.path().to_str().unwrap().to_owned();
    let _mounted = mount(&["--bind", "-o", "ro", &folder], killed.path()).unwrap();
    let told = StoreError::MendInput { why: Mend::NotWritable { path: killed.path().to_owned() } };
    match open_as(killed.path(), 2) {
        Ok((store, _)) => assert_eq!(store.entries().unwrap(), all),
        Err(why) => assert_eq!(why, told),
    }
}

#[test]
fn an_empty_folder_that_cant_be_written_is_told() {
    let dir = tempdir().unwrap();
    let folder = dir.path().to_str().unwrap().to_owned();
    let Some(_mounted) = mount(&["--bind", "-o", "ro", &folder], dir.path()) else {
        return skip("an empty folder that can't be written", "no file system can be mounted here");
    };
    let told = |path: &Path| StoreError::MendInput { why: Mend::NotWritable { path: path.to_owned() } };
    assert_eq!(open(dir.path()).unwrap_err(), told(dir.path()));
    let below = dir.path().join("book");
    assert_eq!(open(&below).unwrap_err(), told(&below));
}

#[test]
fn a_book_moved_elsewhere_is_the_same_book() {
    let dir = tempdir().unwrap();
    book(dir.path(), 4);
    let elsewhere = tempdir().unwrap();
    let strange = elsewhere.path().join("100% truck? #1 räder");
    fs::rename(dir.path(), &strange).unwrap();
    let (store, opened) = open_as(&strange, 9).unwrap();
    assert_eq!((opened.mark.arrived, opened.rescued), (4, None));
    store.append(vec![draft(5)], at(5)).unwrap();
    store.close().unwrap();
    fs::create_dir(dir.path()).unwrap();
}
