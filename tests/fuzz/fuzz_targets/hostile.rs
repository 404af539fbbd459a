//! What bytes of strangers are given to, and what must hold whatever they are.
//!
//! The fuzz targets call these, and so does the short replay in the tests.
#![allow(dead_code, reason = "each target calls one of them")]

use std::cell::RefCell;
use std::fs;
use std::path::Path;

use lugbook::calendar::{Day, Moment};
use lugbook::entry::Entry;
use lugbook::ident::{Digest, StreamId};
use lugbook::logbook::Logbook;
use lugbook::photos::{MAX_PIXELS, PhotoError, Photos, Rendition};
use lugbook::proof::{Seal, Signature, verify_card};
use lugbook::sight::{self, Asked, Circle, Continue, Picture, Tile, TileReader, TileText};
use lugbook::store::{Backup, Opening, Store};
use lugbook::words::{FactContext, Speech, Words};
use tempfile::TempDir;

/// How many photos are kept before the folder is begun anew.
const KEPT: usize = 64;

/// A JPEG without notes, to put notes into.
const BARE: &[u8] = include_bytes!("../seeds-photos/gray.jpg");

thread_local! {
    static SHELF: RefCell<Option<(TempDir, Photos, usize)>> = const { RefCell::new(None) };
    static WORDS: Words = Words::new(Speech::default());
}

/// A folder in memory, where the system has such a place.
fn memory() -> TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).expect("a folder for what is tried")
}

fn now() -> Moment {
    Moment::from_unix_ms(1_777_886_100_000)
}

/// Takes bytes in as a photo: it is kept whole with both renditions, or refused.
/// Gives back whether it was kept.
pub fn photo(bytes: &[u8]) -> bool {
    SHELF.with_borrow_mut(|shelf| {
        if shelf.as_ref().is_none_or(|(_, _, kept)| *kept >= KEPT) {
            let folder = memory();
            let photos = Photos::open(folder.path().join("photos")).expect("a folder for photos");
            *shelf = Some((folder, photos, 0));
        }
        let Some((_, photos, kept)) = shelf else { return false };
        match photos.intake_bytes(bytes, now()) {
            Ok(intake) => {
                *kept += 1;
                assert_eq!((intake.id, intake.bytes), (Digest::of(bytes), bytes.len() as u64));
                assert!(u64::from(intake.width) * u64::from(intake.height) <= MAX_PIXELS);
                assert!((1..=8).contains(&intake.orientation.value()));
                photos.share(intake.id, Rendition::Small).expect("what was kept is shown");
                true
            }
            Err(PhotoError::Refused(_)) => false,
            Err(other) => panic!("{other:?}"),
        }
    })
}

/// Puts bytes into a JPEG as its EXIF notes: the picture is kept, whatever they say.
pub fn exif(bytes: &[u8]) {
    let notes = &bytes[..bytes.len().min(60_000)];
    let length = u16::try_from(notes.len() + 8).expect("notes fit their segment");
    let (start, rest) = BARE.split_at(2);
    let jpeg = [start, b"\xff\xe1", &length.to_be_bytes(), b"Exif\0\0", notes, rest].concat();
    assert!(photo(&jpeg), "notes are no reason to refuse a picture");
}

/// A host that says what it was given to say, wherever it was told to.
struct Parrot<'a>(&'a [u8]);

impl TileReader for Parrot<'_> {
    fn name(&self) -> String {
        "parrot".into()
    }

    fn model(&self) -> Digest {
        Digest::of(self.0)
    }

    fn read(&self, tile: &Tile<'_>) -> Vec<TileText> {
        assert_eq!(tile.levels.len(), tile.width * tile.height);
        let said = String::from_utf8_lossy(self.0);
        let place = |bytes: &[u8], at: usize| bytes.get(at).map_or(0.0, |byte| f32::from(*byte) * 9.0 - 200.0);
        let text = |line: &str| TileText {
            text: line.into(),
            confidence: place(line.as_bytes(), 0) / 500.0,
            x: place(line.as_bytes(), 1),
            y: place(line.as_bytes(), 2),
            width: place(line.as_bytes(), 3),
            height: f32::from_bits(u32::from_le_bytes([0, 0, line.len() as u8, 0x42])),
        };
        said.lines().take(40).map(text).collect()
    }
}

/// Reads bytes as a picture, with a circle drawn on it and texts that a host claims to see: there is an answer, its
/// odds are odds, and it can be stopped.
pub fn sight(bytes: &[u8]) {
    let [width, height, x, y, r, stop, rest @ ..] = bytes else { return };
    // A ring is sought from 48 pixels on, which is slow under the instruments: half of the pictures are smaller.
    let most = if stop & 8 == 8 { 128 } else { 47 };
    let (width, height) = (u32::from(*width % most) + 1, u32::from(*height % most) + 1);
    // A few pixels are given; the rest repeats them with what their place adds.
    let (pixels, texts) = rest.split_at(rest.len().min(96));
    let level = |n: u32| {
        let given = pixels.get(n as usize % pixels.len().max(1)).copied().unwrap_or(90);
        given ^ ((n / width) as u8).wrapping_mul(stop & 1)
    };
    let picture = Picture::from_gray(width, height, (0..width * height).map(level).collect()).expect("sides fit");
    let drawn = Circle { x: f64::from(*x), y: f64::from(*y), r: f64::from(*r) };
    let today = Day::new(2026, 5, 4).expect("a day");
    let asked = Asked { ring: (stop & 2 == 2).then_some(drawn), today };
    let mut told = 0;
    let seen = sight::read_through(&Parrot(texts), &[picture], &asked, &mut |progress| {
        told += 1;
        assert!(progress.done <= progress.of);
        if stop & 4 == 4 { Continue::No } else { Continue::Yes }
    });
    assert_eq!(seen.complete, stop & 4 == 0 || told == 0);
    for suggestions in [&seen.size, &seen.service, &seen.date, &seen.tin, &seen.chalk] {
        assert!(suggestions.iter().all(|s| (0.0..=1.0).contains(&s.odds) && !s.text.is_empty()), "{suggestions:?}");
        assert!(suggestions.windows(2).all(|pair| pair[0].odds >= pair[1].odds), "{suggestions:?}");
    }
}

/// Opens bytes as a backup and takes it into a new book: the book holds whatever
/// came of it, and nothing is written anywhere else. Gives back whether it was taken.
pub fn backup(bytes: &[u8]) -> bool {
    let place = memory();
    let path = place.path().join("backup.zip");
    fs::write(&path, bytes).expect("the file can be written");
    let Ok(mut backup) = Backup::open(&path) else { return false };
    for photo in backup.photos().to_vec() {
        if let Ok(bytes) = backup.photo(&photo) {
            assert_eq!(Digest::of(&bytes), photo.digest);
        }
    }
    let opening = Opening { stream: StreamId::from_parts(9, [9; 10]), now: now() };
    let (store, _) = Store::open(&place.path().join("book"), opening).expect("a new book opens");
    let entries = backup.entries().len();
    let taken = store.take_backup(backup).is_ok();
    assert_eq!(store.entries().expect("the book is read").len(), if taken { entries } else { 0 });
    assert!(store.check().expect("the book is read").ok());
    drop(store);
    assert_eq!(names(place.path()), ["backup.zip", "book"]);
    let in_book = names(&place.path().join("book"));
    assert!(in_book.iter().all(|name| name.starts_with("book.")), "{in_book:?}");
    taken
}

/// The names in a folder.
fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .expect("the folder is read")
        .flatten()
        .map(|name| name.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// Reads bytes as an entry, a seal and a card's file. An entry is folded and said;
/// what it is written as again is the same entry.
pub fn payload(bytes: &[u8]) {
    if let Ok(entry) = Entry::open(bytes.to_vec(), Digest::of(bytes), None) {
        let written = serde_json::to_vec(entry.envelope()).expect("what was read is written");
        let again = Entry::open(written.clone(), Digest::of(&written), None).expect("and read again");
        assert_eq!(again.id(), entry.id());
        let book = Logbook::from_iter([entry.clone()]).book();
        WORDS.with(|words| words.fact(entry.fact(), &FactContext::of_book(&book)));
    }
    let none = Signature::from_bytes(&[0; 64]).expect("64 bytes");
    assert!(Seal::open(bytes.to_vec(), none).is_err(), "nobody signs with nothing");
    if let Ok(text) = std::str::from_utf8(bytes) {
        let told = verify_card(text, None);
        assert!(!told.ok() || told.page.is_some());
    }
}
