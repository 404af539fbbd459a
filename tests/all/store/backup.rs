//! A backup is whole or it is told, and a book comes back from it.

use std::fs;
use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use lugbook::calendar::Moment;
use lugbook::ident::Digest;
use lugbook::store::{Backup, Mend, Merged, Problem, ProblemKind, Spot, Store, StoreError, backups_kept};
use proptest::prelude::*;
use tempfile::{TempDir, tempdir};

use super::{at, customer, draft, id, memory, open, open_as, stream};

/// Two photos in a folder of their own.
fn photos(dir: &Path) -> Vec<(Digest, PathBuf)> {
    [b"sidewall".repeat(400), b"odometer".repeat(900)]
        .iter()
        .map(|bytes| {
            let path = dir.join(Digest::of(bytes).to_string());
            fs::write(&path, bytes).unwrap();
            (Digest::of(bytes), path)
        })
        .collect()
}

/// A book with six entries, one of them erased, and its backup.
fn backed_up() -> (TempDir, Store, PathBuf) {
    let dir = tempdir().unwrap();
    let (store, _) = open(&dir.path().join("book")).unwrap();
    store.append(vec![customer(1), draft(2), customer(3)], at(1)).unwrap();
    store.append(vec![draft(4), draft(5), draft(6)], at(2)).unwrap();
    store.erase_personal(id(3)).unwrap();
    let into = dir.path().join("backups");
    fs::create_dir(&into).unwrap();
    let done = store.back_up(&into, &photos(dir.path()), None, at(3)).unwrap();
    assert_eq!((done.entries, done.photos, done.photos_missing, done.thinned), (6, 2, vec![], vec![]));
    (dir, store, done.path)
}

fn broken(result: Result<impl std::fmt::Debug, StoreError>) -> Mend {
    match result.unwrap_err() {
        StoreError::MendInput { why } => why,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_book_comes_back_from_its_backup_with_photos_and_goes_on_in_a_stream_of_its_own() {
    let (dir, store, path) = backed_up();
    let all = store.entries().unwrap();
    let mut ends = Vec::new();
    for device in [7, 8] {
        let new = tempdir().unwrap();
        let (restored, _) = open_as(new.path(), device).unwrap();
        let mut backup = Backup::open(&path).unwrap();
        assert_eq!(backup.made(), at(3));
        for photo in backup.photos().to_vec() {
            let bytes = backup.photo(&photo).unwrap();
            assert_eq!(bytes, fs::read(dir.path().join(photo.digest.to_string())).unwrap());
        }
        let told = restored.take_backup(backup).unwrap();
        assert_eq!((told.before, told.after, told.merged), (0, 6, Merged { new: 6, known: 0, completed: 0 }));
        assert_eq!(restored.entries().unwrap(), all);
        assert!(restored.check().unwrap().ok());
        // What was erased did not come back, and can't.
        assert_eq!(restored.entry(id(3)).unwrap().unwrap().personal(), None);
        // Again, and again after more was written: no harm.
        let own = restored.append(vec![draft(50 + device)], at(9)).unwrap();
        assert_eq!(own[0].envelope().stream, stream(device));
        let again = restored.take_backup(Backup::open(&path).unwrap()).unwrap();
        assert_eq!((again.before, again.after, again.merged.known), (7, 7, 6));
        ends.push(own);
    }
    // The same backup restored twice keeps its streams apart: both go together.
    for end in ends {
        assert_eq!(store.merge(end).unwrap().new, 1);
    }
    assert!(store.check().unwrap().ok());
}

#[test]
fn a_backup_fills_what_a_damaged_book_lost() {
    let (dir, store, path) = backed_up();
    let all = store.entries().unwrap();
    store.close().unwrap();
    let file = dir.path().join("book/book.db");
    let mut bytes = fs::read(&file).unwrap();
    let place = bytes.windows(11).position(|window| window == b"valve cap 4").unwrap();
    bytes[place] = b'V';
    fs::write(&file, bytes).unwrap();
    let (store, opened, left) =
        Store::open_and_read(&dir.path().join("book"), lugbook::store::Opening { stream: stream(9), now: at(5) })
            .unwrap();
    assert_eq!(left.len(), 5);
    assert_eq!(opened.rescued.unwrap().missing.len(), 1);
    let told = store
        .take_backup(Backup::newest(path.parent().unwrap(), None, path.parent().unwrap()).unwrap().unwrap())
        .unwrap();
    assert_eq!((told.before, told.after), (5, 6));
    assert_eq!(store.entries().unwrap(), all);
    assert!(store.check().unwrap().missing.is_empty());
}

#[test]
fn a_backup_of_a_book_with_a_known_gap_comes_back_with_that_gap() {
    let (dir, store, _) = backed_up();
    store.close().unwrap();
    let book = dir.path().join("book");
    let file = book.join("book.db");
    let mut bytes = fs::read(&file).unwrap();
    let place = bytes.windows(11).position(|window| window == b"valve cap 4").unwrap();
    bytes[place] = b'V';
    fs::write(&file, bytes).unwrap();
    let opening = lugbook::store::Opening { stream: stream(9), now: at(5) };
    let (store, opened, left) = Store::open_and_read(&book, opening).unwrap();
    let done = store.back_up(&dir.path().join("backups"), &[], None, at(6)).unwrap();
    let new = tempdir().unwrap();
    let (restored, _) = open_as(new.path(), 8).unwrap();
    restored.take_backup(Backup::open(&done.path).unwrap()).unwrap();
    assert_eq!(restored.entries().unwrap(), left);
    let check = restored.check().unwrap();
    assert!(check.ok());
    assert_eq!(check.missing, opened.missing);
}

#[test]
fn a_damaged_book_is_not_backed_up_over_a_good_backup() {
    let (dir, store, path) = backed_up();
    let conn = rusqlite::Connection::open(dir.path().join("book/book.db")).unwrap();
    conn.execute("UPDATE head SET number = 7", []).unwrap();
    let why = store.back_up(path.parent().unwrap(), &[], None, at(9)).unwrap_err();
    let problem = Problem { kind: ProblemKind::Head, at: Spot::Stream { stream: stream(1) } };
    assert_eq!(why, StoreError::Restore { problem });
    assert_eq!(fs::read_dir(path.parent().unwrap()).unwrap().count(), 1);
}

#[test]
fn a_photo_that_is_not_what_it_was_is_told_and_the_rest_is_kept() {
    let (dir, store, path) = backed_up();
    let mut photos = photos(dir.path());
    fs::write(&photos[0].1, b"something else").unwrap();
    photos.push((Digest::of(b"gone"), dir.path().join("gone")));
    let done = store.back_up(path.parent().unwrap(), &photos, None, at(9)).unwrap();
    let mut missing = vec![photos[0].0, photos[2].0];
    missing.sort();
    assert_eq!((done.photos, done.photos_missing), (1, missing));
}

#[test]
fn every_flipped_byte_of_a_backup_is_told_or_changes_nothing() {
    let (_dir, store, path) = backed_up();
    let all = store.entries().unwrap();
    let whole = fs::read(&path).unwrap();
    let photos = Backup::open(&path).unwrap().photos().to_vec();
    let place = memory();
    let changed_path = place.path().join("changed.zip");
    let step = if std::env::var_os("LUGBOOK_WHOLE").is_some() { 1 } else { whole.len() / 500 + 1 };
    let mut told = 0;
    for at in (0..whole.len()).step_by(step) {
        let mut changed = whole.clone();
        changed[at] ^= 1 << (at % 8);
        fs::write(&changed_path, changed).unwrap();
        let read = Backup::open(&changed_path).and_then(|mut backup| backup.verify_photos().map(|()| backup));
        match read {
            Ok(backup) => {
                let (entries, kept) = (backup.entries(), backup.photos());
                assert!(entries == all && kept == photos && backup.made() == super::at(3), "byte {at}");
            }
            Err(_) => told += 1,
        }
    }
    assert!(told > 100, "{told}");
}

#[test]
fn a_backup_that_is_cut_is_told() {
    let (_dir, _store, path) = backed_up();
    let whole = fs::read(&path).unwrap();
    for length in (0..whole.len()).step_by(whole.len() / 60 + 1) {
        let place = memory();
        let cut = place.path().join("cut.zip");
        fs::write(&cut, &whole[..length]).unwrap();
        assert!(Backup::open(&cut).is_err(), "cut at {length}");
    }
}

/// Writes the archive again with one part changed.
fn rewrite(path: &Path, change: impl Fn(&str, Vec<u8>) -> Option<(String, Vec<u8>)>) -> PathBuf {
    let mut archive = zip::ZipArchive::new(fs::File::open(path).unwrap()).unwrap();
    let changed = path.with_file_name("changed.zip");
    let mut writer = zip::ZipWriter::new(fs::File::create(&changed).unwrap());
    for index in 0..archive.len() {
        let mut file = archive.by_index(index).unwrap();
        let mut bytes = Vec::new();
        file.read_to_end(&mut bytes).unwrap();
        let name = file.name().unwrap().into_owned();
        if let Some((name, bytes)) = change(&name, bytes) {
            writer.start_file(name, zip::write::SimpleFileOptions::default()).unwrap();
            writer.write_all(&bytes).unwrap();
        }
    }
    writer.finish().unwrap();
    changed
}

fn text_changed(from: &str, to: &str) -> impl Fn(&str, Vec<u8>) -> Option<(String, Vec<u8>)> {
    move |name, bytes| {
        let text = String::from_utf8_lossy(&bytes).replace(from, to).into_bytes();
        let photo = name.starts_with("photos/");
        Some((name.to_owned(), if photo { bytes } else { text }))
    }
}

#[test]
fn an_archive_that_was_changed_with_care_is_told_all_the_same() {
    let (_dir, _store, path) = backed_up();
    assert!(Backup::open(&rewrite(&path, |name, bytes| Some((name.to_owned(), bytes)))).is_ok());
    let damaged = |result| matches!(broken(result), Mend::BackupDamaged { .. });
    assert!(damaged(Backup::open(&rewrite(&path, text_changed("valve cap 4", "valve cap 7")))));
    assert!(damaged(Backup::open(&rewrite(&path, text_changed("Wren", "Reed")))));
    let without = |gone: &'static str| move |name: &str, bytes| (name != gone).then(|| (name.to_owned(), bytes));
    assert!(damaged(Backup::open(&rewrite(&path, without("entries.jsonl")))));
    assert!(matches!(broken(Backup::open(&rewrite(&path, without("manifest.json")))), Mend::NotABackup { .. }));
    let shorter = rewrite(&path, |name, bytes| {
        let lines = bytes.split_inclusive(|byte| *byte == b'\n').collect::<Vec<_>>();
        let kept = if name == "entries.jsonl" { lines[..lines.len() - 1].concat() } else { bytes.clone() };
        Some((name.to_owned(), kept))
    });
    assert!(damaged(Backup::open(&shorter)));
    let newer = rewrite(&path, text_changed("\"version\":2,\"made\"", "\"version\":3,\"later\""));
    assert_eq!(broken(Backup::open(&newer)), Mend::NewerBackup { version: 3, known: 2 });
    let other = rewrite(&path, text_changed("lugbook-backup", "another-backup"));
    assert_eq!(broken(Backup::open(&other)), Mend::NotABackup { path: other });
}

#[test]
fn a_file_that_is_no_backup_is_told() {
    let dir = tempdir().unwrap();
    let path = dir.path().join("notes.txt");
    fs::write(&path, "grocery list").unwrap();
    assert_eq!(broken(Backup::open(&path)), Mend::NotABackup { path: path.clone() });
    let gone = dir.path().join("gone.zip");
    assert_eq!(broken(Backup::open(&gone)), Mend::Unreachable { path: gone.clone() });
    let (store, _) = open(&dir.path().join("book")).unwrap();
    assert_eq!(broken(store.back_up(&path, &[], None, at(1))), Mend::NoBackupFolder { path: path.clone() });
    assert_eq!(broken(store.back_up(&gone, &[], None, at(1))), Mend::NoBackupFolder { path: gone });
}

#[test]
fn the_newest_backup_that_holds_is_found() {
    let (_dir, store, path) = backed_up();
    let into = path.parent().unwrap();
    store.append(vec![draft(7)], at(4)).unwrap();
    let later = store.back_up(into, &[], None, at(5)).unwrap();
    assert_eq!(Backup::newest(into, None, into).unwrap().unwrap().entries().len(), 7);
    let mut bytes = fs::read(&later.path).unwrap();
    let middle = bytes.len() / 3;
    bytes[middle] ^= 1;
    fs::write(&later.path, bytes).unwrap();
    assert_eq!(Backup::newest(into, None, into).unwrap().unwrap().entries().len(), 6);
    assert!(Backup::newest(tempdir().unwrap().path(), None, into).unwrap().is_none());
}

#[test]
fn only_this_devices_own_backups_are_thinned_out() {
    let (_dir, store, first) = backed_up();
    let into = first.parent().unwrap();
    let hour = 3_600_000;
    let strange = ["lugbook-notes.zip", "lugbook-2026-05-04-1777886100003-ffffff.zip", "holiday.zip"];
    for name in strange {
        fs::write(into.join(name), "x").unwrap();
    }
    let second = store.back_up(into, &[], None, at(60_000)).unwrap();
    assert_eq!(second.thinned, Vec::<PathBuf>::new());
    // Two hours later only the last of that hour is kept.
    let third = store.back_up(into, &[], None, at(2 * hour)).unwrap();
    assert_eq!(third.thinned, std::slice::from_ref(&first));
    // A year later only the last.
    let fourth = store.back_up(into, &[], None, at(366 * 24 * hour)).unwrap();
    let mut thinned = fourth.thinned;
    thinned.sort();
    assert_eq!(thinned, [second.path, third.path]);
    assert!(fourth.path.exists());
    assert!(strange.iter().all(|name| into.join(name).exists()));
}

proptest! {
    #[test]
    fn thinning_keeps_the_last_and_never_more_than_the_plan(ages in prop::collection::vec(0_i64..400 * 24 * 60, 1..200)) {
        let now = Moment::from_unix_ms(1_777_886_100_000);
        let times: Vec<_> = ages.iter().map(|age| Moment::from_unix_ms(now.unix_ms() - age * 60_000)).collect();
        let kept = backups_kept(&times, now);
        prop_assert!(kept.iter().all(|made| times.contains(made)));
        prop_assert_eq!(kept.last(), times.iter().max());
        // 60 minutes, 24 + 1 hours, 14 days + 1, 24 weeks + 1, and one that is older.
        prop_assert!(kept.len() <= 60 + 25 + 15 + 26 + 1);
        prop_assert_eq!(backups_kept(&kept, now), kept.clone());
        // Everything of the last hour is there.
        let recent = |made: &&Moment| now.unix_ms() - made.unix_ms() < 3_600_000;
        prop_assert!(times.iter().filter(recent).all(|made| kept.contains(made)));
    }
}
