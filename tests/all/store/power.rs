//! The power goes at any moment: what was not forced to the disk is lost, torn or reordered.
//!
//! A job is recorded write by write. Then the disk is made as it may be after a
//! power cut at each of many moments: what was synced before is there; of later
//! writes to a file any may be there, each sector (512 bytes) for itself; later
//! names are there up to some point, as a journal keeps them.
//!
//! 300 cuts, or as many as `LUGBOOK_CUTS` says; `LUGBOOK_CUT_SEED` plays the same again.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use lugbook::entry::Entry;

use super::disk::{self, Op};
use super::{at, customer, draft, memory, open, open_as};
use crate::kill::Chance;

const SECTOR: usize = 512;

/// Saves, checkpoints and reopens, noting how many entries are acknowledged. Big
/// entries among small ones, so that the log is written back in between.
fn recorded(folder: &Path) -> (Vec<Op>, Vec<Entry>) {
    let book = folder.join("book");
    fs::create_dir(&book).unwrap();
    let watched = disk::record(folder);
    let mut number = 1;
    let mut all = Vec::new();
    for round in 0..4_u64 {
        let (store, _) = open(&book).unwrap();
        for _ in 0..6 {
            let amount = 1 + number % 3;
            let mut drafts: Vec<_> = (number..number + amount).map(draft).collect();
            if round % 2 == 1 {
                drafts.push(customer(number + amount));
            }
            number += u64::try_from(drafts.len()).unwrap();
            all.extend(store.append(drafts, at(i64::try_from(number).unwrap())).unwrap());
            watched.note(u64::try_from(all.len()).unwrap());
        }
        // Every other time as a killed program leaves it.
        if round % 2 == 0 {
            store.close().unwrap();
        } else {
            drop(store);
        }
    }
    (watched.done(), all)
}

/// One file's bytes that are on the disk for certain, and the writes that may be.
#[derive(Default, Clone)]
struct File {
    certain: Vec<u8>,
    pending: Vec<Op>,
}

impl File {
    fn apply(bytes: &mut Vec<u8>, op: &Op, chance: Option<&mut Chance>) {
        match op {
            Op::Write { at, bytes: new, .. } => {
                let at = usize::try_from(*at).unwrap();
                let mut keep = chance;
                let end = at + new.len();
                let mut from = at;
                while from < end {
                    let to = (from / SECTOR + 1) * SECTOR;
                    let to = to.min(end);
                    if keep.as_mut().is_none_or(|chance| chance.below(2) == 0) {
                        if bytes.len() < to {
                            bytes.resize(to, 0);
                        }
                        bytes[from..to].copy_from_slice(&new[from - at..to - at]);
                    }
                    from = to;
                }
            }
            Op::Cut { length, .. } => bytes.resize(usize::try_from(*length).unwrap(), 0),
            _ => {}
        }
    }

    fn sync(&mut self) {
        for op in std::mem::take(&mut self.pending) {
            Self::apply(&mut self.certain, &op, None);
        }
    }

    /// The file after a power cut: of what is pending each thing may be there or not.
    fn after_cut(&self, chance: &mut Chance) -> Vec<u8> {
        let mut bytes = self.certain.clone();
        // Mostly a mixture; sometimes all or nothing.
        let way = chance.below(6);
        for op in &self.pending {
            match way {
                0 => {}
                1 => Self::apply(&mut bytes, op, None),
                _ if chance.below(3) == 0 => {}
                _ if chance.below(3) == 0 => Self::apply(&mut bytes, op, Some(chance)),
                _ => Self::apply(&mut bytes, op, None),
            }
        }
        bytes
    }
}

/// Which file has which name: certain, and what may have changed since, in order.
#[derive(Default)]
struct Disk {
    files: Vec<File>,
    /// As the running program sees it.
    now: BTreeMap<PathBuf, usize>,
    certain: BTreeMap<PathBuf, usize>,
    pending: Vec<(PathBuf, Option<usize>)>,
}

impl Disk {
    fn file(&mut self, path: &Path) -> &mut File {
        let at = *self.now.entry(path.to_owned()).or_insert_with(|| {
            self.files.push(File::default());
            self.pending.push((path.to_owned(), Some(self.files.len() - 1)));
            self.files.len() - 1
        });
        &mut self.files[at]
    }

    fn name(&mut self, path: &Path, file: Option<usize>) {
        match file {
            Some(file) => drop(self.now.insert(path.to_owned(), file)),
            None => drop(self.now.remove(path)),
        }
        self.pending.push((path.to_owned(), file));
    }

    fn take(&mut self, op: &Op) {
        match op {
            Op::Create { path } => drop(self.file(path)),
            Op::Write { path, .. } | Op::Cut { path, .. } => {
                let op = op.clone();
                self.file(path).pending.push(op);
            }
            Op::Sync { path } if self.now.contains_key(path) => self.file(path).sync(),
            // A folder: its names are certain now.
            Op::Sync { .. } => {
                for (path, file) in std::mem::take(&mut self.pending) {
                    match file {
                        Some(file) => drop(self.certain.insert(path, file)),
                        None => drop(self.certain.remove(&path)),
                    }
                }
            }
            Op::Rename { from, to } => {
                let file = self.now.get(from).copied();
                self.name(to, file);
                self.name(from, None);
            }
            Op::Link { from, to } => {
                let file = self.now.get(from).copied();
                self.name(to, file);
            }
            Op::Remove { path } => self.name(path, None),
            Op::MakeFolder { .. } | Op::Note { .. } => {}
        }
    }

    /// Writes the disk as it may be after a power cut.
    fn cut(&self, from: &Path, to: &Path, chance: &mut Chance) {
        let mut names = self.certain.clone();
        let until = usize::try_from(chance.below(u64::try_from(self.pending.len()).unwrap() + 1)).unwrap();
        for (path, file) in &self.pending[..until] {
            match file {
                Some(file) => drop(names.insert(path.clone(), *file)),
                None => drop(names.remove(path)),
            }
        }
        for (path, file) in names {
            let path = to.join(path.strip_prefix(from).unwrap());
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, self.files[file].after_cut(chance)).unwrap();
        }
    }
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok().and_then(|text| text.parse().ok())
}

#[test]
fn after_a_power_cut_at_any_moment_the_book_is_a_beginning_with_all_that_was_acknowledged() {
    let dir = memory();
    let root = dir.path().canonicalize().unwrap();
    let (ops, all) = recorded(&root);
    let syncs = ops.iter().filter(|op| matches!(op, Op::Sync { .. })).count();
    assert!(ops.len() > 200 && syncs > 10, "{} things were done, {syncs} of them syncs", ops.len());
    let seed = number("LUGBOOK_CUT_SEED").unwrap_or(7);
    let cuts = number("LUGBOOK_CUTS").unwrap_or(300);
    let mut chance = Chance(seed);
    let (mut lengths, mut lost) = (BTreeSet::new(), 0_u64);
    for cut in 0..cuts {
        // Evenly over the whole job.
        let moment = usize::try_from(cut * u64::try_from(ops.len()).unwrap() / cuts).unwrap() + 1;
        let mut state = Disk::default();
        let (mut acknowledged, mut noted) = (0, 0);
        for op in &ops[..moment.min(ops.len())] {
            if let Op::Note { what } = op {
                acknowledged = usize::try_from(*what).unwrap();
                noted += 1;
            }
            state.take(op);
        }
        let after = memory();
        state.cut(&root, after.path(), &mut chance);
        let book = after.path().join("book");
        let (store, opened) = open_as(&book, 9).unwrap_or_else(|why| panic!("seed {seed}, cut {cut}: {why:?}"));
        let left = store.entries().unwrap();
        let place = format!("seed {seed}, cut {cut} after {moment}: {acknowledged} acknowledged, {} left", left.len());
        assert_eq!(opened.rescued, None, "{place}");
        assert!(left.len() >= acknowledged, "{place}");
        assert!(left[..] == all[..left.len()], "{place}: not a beginning");
        assert!(store.check().unwrap().ok(), "{place}");
        lost += u64::from(left.len() == acknowledged && noted > 0);
        lengths.insert(left.len());
        store.append(vec![draft(1_000)], at(9_000)).unwrap();
        store.close().unwrap();
    }
    println!("{cuts} cuts, {} different lengths, {lost} without the entry that was on its way", lengths.len());
    assert!(lengths.len() > 20);
}
