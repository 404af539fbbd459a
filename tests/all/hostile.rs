//! Photos, notes, backups and entries of strangers: a short replay of what the fuzz targets try.

#[path = "../fuzz/fuzz_targets/hostile.rs"]
mod targets;

use std::fs;
use std::io::Write;
use std::path::Path;

use lugbook::calendar::Moment;
use lugbook::entry::Entry;
use lugbook::ident::{Digest, JobId, StreamId};
use lugbook::proof::{DeviceKey, close_card};
use lugbook::store::{Backup, Opening, Store};
use zip::write::SimpleFileOptions;

use crate::kill::Chance;

/// Some changes of a seed: bytes set anew, a piece cut out or doubled, the end cut off.
fn changes(seed: &[u8], count: u64) -> Vec<Vec<u8>> {
    let mut chance = Chance(seed.len() as u64 + 11);
    let mut below = move |most: usize| usize::try_from(chance.below(most.max(1) as u64)).unwrap();
    let change = |number: u64| {
        let mut bytes = seed.to_vec();
        for _ in 0..=below(4) {
            let place = below(bytes.len());
            let end = (place + 1 + below(32)).min(bytes.len());
            match (number + below(4) as u64) % 4 {
                0 => bytes[place] = u8::try_from(below(256)).unwrap(),
                1 => drop(bytes.drain(place..end)),
                2 => {
                    let piece = bytes[place..end].to_vec();
                    bytes.splice(place..place, piece);
                }
                _ => bytes[place] ^= 1 << below(8),
            }
            if bytes.is_empty() {
                break;
            }
        }
        if number.is_multiple_of(7) {
            bytes.truncate(below(bytes.len()));
        }
        bytes
    };
    (0..count).map(change).collect()
}

fn seeds(folder: &str) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| fs::read(path).unwrap()).collect()
}

#[test]
fn changed_photos_are_kept_whole_or_refused() {
    let (mut kept, mut refused) = (0, 0);
    for seed in seeds("fuzz/seeds-photos") {
        for bytes in changes(&seed, 12) {
            if targets::photo(&bytes) { kept += 1 } else { refused += 1 }
        }
    }
    assert!(kept > 10 && refused > 10, "{kept} kept, {refused} refused");
}

#[test]
fn whatever_a_picture_and_a_host_show_there_is_a_reading_or_none() {
    let lines = "225/45R17 91W\nDOT 1HKB 9FLP 0723\nOUTSIDE\nROTATION\nMAX LOAD 615 KG";
    let pixels: Vec<u8> = (0..96_u8).map(|n| n.wrapping_mul(37)).collect();
    for head in [[79, 70, 40, 35, 32, 2], [127, 40, 0, 0, 0, 1], [0, 0, 0, 0, 0, 4], [70, 69, 35, 35, 30, 7]] {
        let seed = [&head[..], &pixels, lines.as_bytes()].concat();
        targets::sight(&seed);
        for bytes in changes(&seed, 3) {
            targets::sight(&bytes);
        }
    }
}

#[test]
fn whatever_notes_say_the_picture_is_kept() {
    let little = b"II*\0\x08\0\0\0\x02\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\x69\x87\x04\0\x01\0\0\0\x1a\0\0\0\0\0\0\0";
    targets::exif(little);
    targets::exif(b"");
    for bytes in changes(little, 60) {
        targets::exif(&bytes);
    }
}

const ENTRIES: &str = include_str!("../databases/entries-v1.jsonl");

fn entries(count: usize) -> Vec<Entry> {
    let open = |line: &str| Entry::open(line.as_bytes().to_vec(), Digest::of(line.as_bytes()), None).unwrap();
    ENTRIES.lines().take(count).map(open).collect()
}

#[test]
fn changed_entries_seals_and_cards_are_read_or_refused() {
    for line in ENTRIES.lines() {
        targets::payload(line.as_bytes());
        changes(line.as_bytes(), 6).iter().for_each(|bytes| targets::payload(bytes));
    }
    let entries = entries(4);
    let shown: Vec<&Entry> = entries.iter().collect();
    let key = DeviceKey::from_secret([7; 32]);
    let card = close_card("<!DOCTYPE html>", Some(&key), JobId::from_parts(1, [1; 10]), &shown, None);
    targets::payload(card.as_bytes());
    changes(card.as_bytes(), 60).iter().for_each(|bytes| targets::payload(bytes));
}

/// The bytes of a small backup with a photo in it.
fn small_backup() -> Vec<u8> {
    let place = tempfile::tempdir().unwrap();
    let now = Moment::from_unix_ms(1_777_886_100_000);
    let opening = Opening { stream: StreamId::from_parts(9, [9; 10]), now };
    let (store, _) = Store::open(&place.path().join("book"), opening).unwrap();
    store.merge(entries(4)).unwrap();
    let photo = place.path().join("photo");
    fs::write(&photo, b"a photo").unwrap();
    fs::read(store.back_up(place.path(), &[(Digest::of(b"a photo"), photo)], None, now).unwrap().path).unwrap()
}

#[test]
fn changed_backups_are_taken_whole_or_not_at_all() {
    let whole = small_backup();
    assert!(targets::backup(&whole));
    let taken = changes(&whole, 150).iter().filter(|bytes| targets::backup(bytes)).count();
    println!("{taken} of 150 changed backups were taken");
}

/// An archive made anew from another's parts, with more parts added.
fn with_parts(whole: &[u8], change: impl Fn(&str, &mut Vec<u8>), more: &[(&str, &[u8])]) -> Vec<u8> {
    let mut archive = zip::ZipArchive::new(std::io::Cursor::new(whole)).unwrap();
    let mut writer = zip::ZipWriter::new(std::io::Cursor::new(Vec::new()));
    for index in 0..archive.len() {
        let mut file = archive.by_index(index).unwrap();
        let name = file.name().unwrap().into_owned();
        let mut bytes = Vec::new();
        std::io::Read::read_to_end(&mut file, &mut bytes).unwrap();
        change(&name, &mut bytes);
        writer.start_file(name, SimpleFileOptions::default()).unwrap();
        writer.write_all(&bytes).unwrap();
    }
    for (name, bytes) in more {
        writer.start_file(*name, SimpleFileOptions::default()).unwrap();
        writer.write_all(bytes).unwrap();
    }
    writer.finish().unwrap().into_inner()
}

#[test]
fn names_in_an_archive_never_lead_out_of_the_folder() {
    let whole = small_backup();
    let evil: [(&str, &[u8]); 5] = [
        ("../evil", b"x"),
        ("/tmp/lugbook-evil", b"x"),
        ("photos/../../evil", b"x"),
        ("..\\evil", b"x"),
        ("book/book.db", b"x"),
    ];
    // Taken for what it is, and what else is in it stays there.
    assert!(targets::backup(&with_parts(&whole, |_, _| {}, &evil)));
    assert!(!Path::new("/tmp/lugbook-evil").exists());
    // A photo whose name is a path: names are digests, and nothing else is one.
    let digest = Digest::of(b"a photo").to_string();
    let named = |name: &str, bytes: &mut Vec<u8>| {
        if name == "manifest.json" {
            *bytes = String::from_utf8(bytes.clone()).unwrap().replace(&digest, "../../../../evil").into_bytes();
        }
    };
    assert!(!targets::backup(&with_parts(&whole, named, &[])));
}

#[test]
fn small_archives_that_would_grow_without_end_are_refused_at_once() {
    let whole = small_backup();
    let place = tempfile::tempdir().unwrap();
    let path = place.path().join("bomb.zip");
    // The same line a million times: refused where it comes for the second time.
    let again = |name: &str, bytes: &mut Vec<u8>| {
        if name == "entries.jsonl" {
            let line = bytes.split_inclusive(|byte| *byte == b'\n').next().unwrap().to_vec();
            *bytes = line.repeat(200_000);
        }
    };
    fs::write(&path, with_parts(&whole, again, &[])).unwrap();
    assert!(fs::metadata(&path).unwrap().len() < 2_000_000);
    let told = Backup::open(&path).unwrap_err();
    assert!(format!("{told:?}").contains("entries.jsonl:2"), "{told:?}");
    // One line without an end.
    let endless = |name: &str, bytes: &mut Vec<u8>| {
        if name == "entries.jsonl" {
            *bytes = vec![b' '; 64 << 20];
        }
    };
    fs::write(&path, with_parts(&whole, endless, &[])).unwrap();
    assert!(Backup::open(&path).is_err());
    // A photo that is said to be larger than any, and one that is longer than it is said to be.
    let huge = |name: &str, bytes: &mut Vec<u8>| {
        if name == "manifest.json" {
            let text = String::from_utf8(bytes.clone()).unwrap();
            assert!(text.contains("\"bytes\":7}"), "{text}");
            *bytes = text.replace("\"bytes\":7}", "\"bytes\":1099511627776}").into_bytes();
        }
    };
    fs::write(&path, with_parts(&whole, huge, &[])).unwrap();
    assert!(Backup::open(&path).unwrap().verify_photos().is_err());
    let long = |name: &str, bytes: &mut Vec<u8>| {
        if name.starts_with("photos/") {
            *bytes = vec![0; 64 << 20];
        }
    };
    fs::write(&path, with_parts(&whole, long, &[])).unwrap();
    assert!(Backup::open(&path).unwrap().verify_photos().is_err());
}
