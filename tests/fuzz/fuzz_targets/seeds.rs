//! Writes what the targets begin with into `corpus/`: a backup, entries of every
//! kind, a seal, a card, and EXIF notes. `seeds FOLDER`

use std::fs;
use std::path::Path;

use lugbook::calendar::Moment;
use lugbook::entry::{Entry, Head};
use lugbook::ident::{Digest, JobId, StreamId};
use lugbook::proof::{DeviceKey, Gathered, Seal, close_card};
use lugbook::store::{Opening, Store};

/// One entry of every kind, a line each.
const ENTRIES: &str = include_str!("../../databases/entries-v1.jsonl");

fn keep(folder: &Path, name: &str, bytes: &[u8]) {
    fs::create_dir_all(folder).expect("the folder can be made");
    fs::write(folder.join(name), bytes).expect("a seed can be written");
}

fn main() {
    let corpus = std::env::args().nth(1).expect("the folder of the corpus");
    let corpus = Path::new(&corpus);
    let mut entries = Vec::new();
    for (number, line) in ENTRIES.lines().enumerate() {
        keep(&corpus.join("payload"), &format!("entry-{number}"), line.as_bytes());
        let bytes = line.as_bytes().to_vec();
        entries.push(Entry::open(bytes, Digest::of(line.as_bytes()), None).expect("a kept entry"));
    }
    let lines = "225/45R17 91W\nDOT 1HKB 9FLP 0723\nOUTSIDE\nROTATION\nMAX LOAD 615 KG";
    let pixels: Vec<u8> = (0..96_u8).map(|n| n.wrapping_mul(37)).collect();
    for (name, head) in [("ring", [119, 110, 60, 55, 50, 2]), ("close-up", [127, 40, 0, 0, 0, 1])] {
        keep(&corpus.join("sight"), name, &[&head[..], &pixels, lines.as_bytes()].concat());
    }
    let key = DeviceKey::from_secret([7; 32]);
    let job = JobId::from_parts(1, [1; 10]);
    let mut head = Head::empty(entries[0].envelope().stream);
    let mut gathered = Gathered::of(job);
    for entry in &entries[..4] {
        head = head.then(entry).expect("the entries are a chain");
        gathered.add(entry);
    }
    let seal = Seal::make(&key, &head, Some(gathered.finish())).expect("there is an end to seal");
    keep(&corpus.join("payload"), "seal", seal.bytes());
    let shown: Vec<&Entry> = entries[..4].iter().collect();
    let card = close_card("<!DOCTYPE html><p>7/32</p>", Some(&key), job, &shown, Some(&seal));
    keep(&corpus.join("payload"), "card", card.as_bytes());

    let place = tempfile::tempdir().expect("a folder");
    let now = Moment::from_unix_ms(1_777_886_100_000);
    let opening = Opening { stream: StreamId::from_parts(9, [9; 10]), now };
    let (store, _) = Store::open(&place.path().join("book"), opening).expect("a new book");
    store.merge_sealed(entries[..4].to_vec(), vec![seal]).expect("the entries are taken in");
    let photo = (Digest::of(b"a photo"), place.path().join("photo"));
    fs::write(&photo.1, b"a photo").expect("a photo");
    let zip = store.back_up(place.path(), &[photo], None, now).expect("a backup").path;
    keep(&corpus.join("backup"), "small.zip", &fs::read(zip).expect("the backup"));

    // TIFF 6.0 headers, little and big endian, with one and two directories of tags: orientation, a time, a pointer to EXIF.
    let notes: [(&str, &[u8]); 3] = [
        ("little", b"II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\0\0\0\0"),
        ("big", b"MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0"),
        (
            "time",
            b"II*\0\x08\0\0\0\x01\0\x69\x87\x04\0\x01\0\0\0\x1a\0\0\0\0\0\0\0\x01\0\x03\x90\x02\0\x14\0\0\0\x2c\0\0\0\0\0\0\02026:05:04 09:15:00\0",
        ),
    ];
    for (name, bytes) in notes {
        keep(&corpus.join("exif"), name, bytes);
    }
}
