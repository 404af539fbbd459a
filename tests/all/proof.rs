//! A card's file proves itself, and a card that was touched is refused at its place.

use std::fs;
use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};

use lugbook::calendar::Moment;
use lugbook::engine::{Command, Engine, Host, verify_card as verify_in_words};
use lugbook::entry::{Draft, Entry, Fact, Head, Role};
use lugbook::ident::{EntryId, JobId, PersonId, StreamId};
use lugbook::proof::{CardFault, DeviceKey, Gathered, Seal, close_card, verify_card};
use lugbook::vehicle::Class;
use lugbook::words::{Lang, Speech};
use proptest::prelude::*;

use crate::program::{done, say};

const PAGE: &str = "<!DOCTYPE html><p>Front left: 7/32</p>";

fn key(number: u8) -> DeviceKey {
    DeviceKey::from_secret([number; 32])
}

fn job() -> JobId {
    JobId::from_parts(1, [1; 10])
}

/// The entries of a small job in one stream, and the seal of its end.
fn small(device: &DeviceKey, entries: u64) -> (Vec<Entry>, Seal) {
    let mut head = Head::empty(StreamId::from_parts(1, [2; 10]));
    let mut gathered = Gathered::of(job());
    let mut kept = Vec::new();
    for number in 1..=entries {
        let draft = Draft {
            id: EntryId::from_parts(number, [3; 10]),
            author: PersonId::from_parts(1, [4; 10]),
            practice: false,
            fact: Fact::JobParked { job: job(), reason: format!("lunch {number}") },
            personal: None,
        };
        let entry = draft.seal(&head, Moment::from_unix_ms(i64::try_from(number).unwrap())).unwrap();
        head = head.then(&entry).unwrap();
        gathered.add(&entry);
        kept.push(entry);
    }
    let seal = Seal::make(device, &head, Some(gathered.finish())).unwrap();
    (kept, seal)
}

fn card(entries: &[Entry], seal: Option<&Seal>, page_key: Option<&DeviceKey>) -> String {
    close_card(PAGE, page_key, job(), &entries.iter().collect::<Vec<_>>(), seal)
}

#[test]
fn a_card_as_it_was_written_proves_its_page_and_its_entries() {
    let (entries, seal) = small(&key(1), 4);
    let told = verify_card(&card(&entries, Some(&seal), Some(&key(1))), Some(&key(1).device().short()));
    assert_eq!(told.faults, []);
    assert_eq!((told.page, told.entries), (Some(key(1).device()), 4));
    assert_eq!((told.sealed, told.after), (Some((key(1).device(), 4)), 0));
    // Written by another device of the shop, without the seal, or with entries that came later.
    let other = verify_card(&card(&entries, Some(&seal), Some(&key(2))), None);
    assert_eq!((other.page, other.sealed, other.ok()), (Some(key(2).device()), Some((key(1).device(), 4)), true));
    let open = verify_card(&card(&entries, None, Some(&key(1))), None);
    assert_eq!((open.sealed, open.ok()), (None, true));
    let (more, _) = small(&key(1), 6);
    let later = verify_card(&card(&more, Some(&seal), Some(&key(1))), None);
    assert_eq!((later.sealed, later.after, later.ok()), (Some((key(1).device(), 4)), 2, true));
}

#[test]
fn a_card_without_a_key_says_that_its_page_is_not_signed() {
    let (entries, seal) = small(&key(1), 4);
    assert_eq!(verify_card(&card(&entries, None, None), None).faults, [CardFault::NoProof]);
    let told = verify_card(&card(&entries, Some(&seal), None), None);
    assert_eq!(told.faults, [CardFault::PageUnsigned]);
}

#[test]
fn every_flipped_bit_of_a_small_card_is_refused() {
    let (entries, seal) = small(&key(1), 2);
    let whole = card(&entries, Some(&seal), Some(&key(1))).into_bytes();
    assert!(verify_card(std::str::from_utf8(&whole).unwrap(), None).ok());
    let mut flips = 0;
    for place in 0..whole.len() {
        for bit in [1_u8 << (place % 8), 1 << ((place + 5) % 8)] {
            let mut changed = whole.clone();
            changed[place] ^= bit;
            // What is no text is no card.
            let Ok(text) = String::from_utf8(changed) else { continue };
            assert!(!verify_card(&text, None).ok(), "byte {place} of {}, bit {bit}", whole.len());
            flips += 1;
        }
    }
    assert!(flips > 3_000, "{flips}");
    println!("{flips} flips, each refused");
}

#[test]
fn a_card_cut_anywhere_or_with_anything_added_is_refused() {
    let (entries, seal) = small(&key(1), 2);
    let whole = card(&entries, Some(&seal), Some(&key(1)));
    for length in 0..whole.len() {
        assert!(!verify_card(&whole[..length], None).ok(), "cut at {length}");
    }
    assert!(!verify_card(&format!("{whole}\n"), None).ok());
    assert!(!verify_card(&format!(" {whole}"), None).ok());
    // A second proof behind the first covers what stands before it, and that is another page.
    assert!(!verify_card(&format!("{whole}{}", &whole[PAGE.len()..]), None).ok());
}

/// What somebody without the device's key can do to a card.
#[derive(Debug, Clone)]
enum Tampering {
    Changed(usize),
    Removed(usize),
    Swapped(usize),
    Doubled(usize),
    Cut(usize),
    Replayed,
}

fn tampering() -> impl Strategy<Value = (Tampering, bool)> {
    let how = prop_oneof![
        (0_usize..6).prop_map(Tampering::Changed),
        (0_usize..6).prop_map(Tampering::Removed),
        (0_usize..5).prop_map(Tampering::Swapped),
        (0_usize..6).prop_map(Tampering::Doubled),
        (1_usize..6).prop_map(Tampering::Cut),
        Just(Tampering::Replayed),
    ];
    (how, any::<bool>())
}

/// An entry that says something else, with its digest made anew.
fn other(entry: &Entry) -> Entry {
    let bytes = String::from_utf8(entry.bytes().to_vec()).unwrap().replace("lunch", "LUNCH").into_bytes();
    let digest = lugbook::ident::Digest::of(&bytes);
    Entry::open(bytes, digest, None).unwrap()
}

proptest! {
    #[test]
    fn tampered_entries_are_refused_at_their_place((how, signed_anew) in tampering()) {
        let (whole, seal) = small(&key(1), 6);
        let mut entries = whole.clone();
        match how {
            Tampering::Changed(at) => entries[at] = other(&entries[at]),
            Tampering::Removed(at) => drop(entries.remove(at)),
            Tampering::Swapped(at) => entries.swap(at, at + 1),
            Tampering::Doubled(at) => entries.insert(at, whole[at].clone()),
            Tampering::Cut(left) => entries.truncate(left),
            Tampering::Replayed => {}
        }
        // The seal of another job, which is this device's and holds.
        let elsewhere = {
            let gathered = Gathered::of(JobId::from_parts(9, [9; 10]));
            let head = Head { number: 6, digest: Some(whole[5].digest()), ..Head::empty(whole[0].envelope().stream) };
            Seal::make(&key(1), &head, Some(gathered.finish())).unwrap()
        };
        let seal = if matches!(how, Tampering::Replayed) { &elsewhere } else { &seal };
        let stream = whole[0].envelope().stream;
        if signed_anew {
            // The page is signed anew with another key: the seal still tells.
            let told = verify_card(&card(&entries, Some(seal), Some(&key(7))), None);
            let wanted = match how {
                Tampering::Changed(at) | Tampering::Removed(at) => {
                    CardFault::SealUnfit { stream, number: at as u64 + 1 }
                }
                Tampering::Swapped(at) => CardFault::SealUnfit { stream, number: at as u64 + 1 },
                // The second of the two stands where the next should.
                Tampering::Doubled(5) => CardFault::SealUnfit { stream, number: 6 },
                Tampering::Doubled(at) => CardFault::SealUnfit { stream, number: at as u64 + 2 },
                Tampering::Cut(left) => CardFault::SealUnfit { stream, number: left as u64 + 1 },
                Tampering::Replayed => CardFault::SealOfAnother,
            };
            prop_assert_eq!(&told.faults, &[wanted]);
            prop_assert!(!verify_card(&card(&entries, None, Some(&key(7))), Some(&key(1).device().short())).ok());
        } else {
            // The device's own signature under the page, with other entries put beside it.
            let told = verify_card(&spliced(&card(&whole, Some(seal), Some(&key(1))), &entries), None);
            let line = |at: usize| at + 1;
            let wanted = match how {
                Tampering::Changed(at) => CardFault::EntryChanged { line: line(at) },
                Tampering::Removed(at) => CardFault::EntryMissing { line: line(at) },
                Tampering::Swapped(at) => CardFault::EntryMoved { line: line(at) },
                Tampering::Doubled(5) => CardFault::EntryAdded { line: 7 },
                Tampering::Doubled(at) => CardFault::EntryMoved { line: line(at + 1) },
                Tampering::Cut(left) => CardFault::EntryMissing { line: line(left) },
                Tampering::Replayed => CardFault::SealOfAnother,
            };
            prop_assert_eq!(told.faults.first(), Some(&wanted));
        }
    }
}

/// The file with other entries in its proof, written as a device writes it.
fn spliced(file: &str, entries: &[Entry]) -> String {
    use base64::Engine as _;
    let code = base64::engine::general_purpose::STANDARD;
    let (page, rest) = file.split_once("\n<!-- lugbook-proof\n").unwrap();
    let text: String = rest.strip_suffix("-->\n").unwrap().split('\n').collect();
    let mut proof: serde_json::Value = serde_json::from_slice(&code.decode(text).unwrap()).unwrap();
    let texts = entries.iter().map(|entry| String::from_utf8(entry.bytes().to_vec()).unwrap());
    proof["entries"] = serde_json::json!(texts.collect::<Vec<String>>());
    let text = code.encode(serde_json::to_vec(&proof).unwrap());
    let lines: Vec<&str> = text.as_bytes().chunks(76).map(|line| std::str::from_utf8(line).unwrap()).collect();
    format!("{page}\n<!-- lugbook-proof\n{}\n-->\n", lines.join("\n"))
}

/// A device whose clock goes on by a second with each look, with a key.
struct Device(AtomicU64, Option<DeviceKey>);

impl Host for Device {
    fn now(&self) -> Moment {
        let n = self.0.fetch_add(1, Ordering::Relaxed);
        Moment::from_unix_ms(i64::try_from(1_780_000_000_000 + n * 1_000).unwrap())
    }

    fn random(&self) -> [u8; 10] {
        let n = self.0.fetch_add(1, Ordering::Relaxed).to_be_bytes();
        std::array::from_fn(|at| n.get(at).copied().unwrap_or(7))
    }

    fn device_key(&self) -> Option<DeviceKey> {
        self.1.clone()
    }
}

fn open(folder: &Path, key: Option<DeviceKey>) -> Engine {
    open_at(folder, key, 0)
}

/// Opens a book with a clock that begins so many seconds later: what it makes differs from what was made before.
pub(crate) fn open_at(folder: &Path, key: Option<DeviceKey>, later: u64) -> Engine {
    Engine::open(folder, Box::new(Device(AtomicU64::new(later), key)), Speech::default()).unwrap()
}

/// A job that was opened, complained of and closed.
fn closed(engine: &mut Engine) {
    for command in [
        Command::AddPerson { name: "Wren Castellan".to_owned(), role: Role::Mechanic, phone: None },
        Command::AddVehicle {
            name: "orchard truck".to_owned(),
            model: "Harrow 1500 2019".to_owned(),
            class: Class::LightTruck,
            axles: vec![],
            has: Some(vec![]),
            spare: false,
            own: true,
            plate: None,
        },
        Command::OpenJob {
            vehicle: "orchard truck".to_owned(),
            procedure: "rotation-on-a-lift".to_owned(),
            circumstances: vec!["electric".to_owned()],
            practice: false,
        },
        Command::Complain { text: "it pulls to the left".to_owned() },
        Command::CloseJob { reason: "the customer left".to_owned() },
    ] {
        engine.act(None, command, Speech::default()).unwrap();
    }
}

#[test]
fn the_engine_seals_a_job_that_ends_and_its_card_proves_it() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path(), Some(key(1)));
    closed(&mut engine);
    let file = engine.card(None, Speech::default()).unwrap();
    let told = verify_card(&file, Some(&key(1).device().short()));
    assert_eq!(
        (told.faults.as_slice(), told.sealed.map(|(_, entries)| entries), told.after),
        ([].as_slice(), Some(3), 0)
    );
    assert!(file.contains(&format!("Written by device {}", key(1).device().short())));
    let view = engine.verify(Speech::default()).unwrap();
    assert!(view.ok && view.refused.is_empty());
    insta::assert_snapshot!(
        "book_proven",
        [view.proven.join("\n"), view.not_proven.join("\n")]
            .join("\n--\n")
            .replace(&engine_stream(folder.path(), engine), "SSSSSS")
    );
    // Without a key nothing is sealed, and the card says so.
    let bare = tempfile::tempdir().unwrap();
    let mut engine = open(bare.path(), None);
    closed(&mut engine);
    let file = engine.card(None, Speech::default()).unwrap();
    assert_eq!(verify_card(&file, None).faults, [CardFault::NoProof]);
    assert!(!file.contains("Written by device"));
}

/// The short name of the book's own stream, which is closed by this.
fn engine_stream(folder: &Path, engine: Engine) -> String {
    drop(engine);
    let opening = lugbook::store::Opening {
        stream: StreamId::from_parts(1, [9; 10]),
        now: Moment::from_unix_ms(1_780_000_000_000),
    };
    lugbook::store::Store::open(folder, opening).unwrap().0.stream().short()
}

#[test]
fn what_is_proven_and_what_not_is_said_in_both_languages() {
    let (entries, seal) = small(&key(1), 4);
    let (more, _) = small(&key(1), 5);
    let whole = card(&more, Some(&seal), Some(&key(2)));
    let mut said = Vec::new();
    for lang in Lang::ALL {
        let speech = Speech { lang, ..Speech::default() };
        for file in [&whole, &card(&entries, None, Some(&key(1))), &whole.replace("7/32", "9/32")] {
            let view = verify_in_words(file, None, speech);
            said.push(format!("ok: {}", view.ok));
            said.extend(view.proven.iter().map(|line| format!("+ {line}")));
            said.extend(view.refused.iter().map(|line| format!("! {} | {} | {}", line.kind, line.at, line.sentence)));
            said.extend(view.not_proven.iter().map(|line| format!("- {line}")));
        }
        let stream = entries[0].envelope().stream;
        let faults = [
            CardFault::NoProof,
            CardFault::Unreadable,
            CardFault::Newer { version: 2 },
            CardFault::PageUnsigned,
            CardFault::PageSignature,
            CardFault::PageChanged,
            CardFault::EntryChanged { line: 3 },
            CardFault::EntryMissing { line: 3 },
            CardFault::EntryMoved { line: 3 },
            CardFault::EntryAdded { line: 3 },
            CardFault::SealSignature,
            CardFault::SealOfAnother,
            CardFault::SealUnfit { stream, number: 4 },
            CardFault::OtherDevice { device: key(2).device() },
        ];
        let words = lugbook::words::Words::new(speech);
        said.extend(
            faults
                .iter()
                .map(|fault| format!("{} | {}", words.fault_place(fault), lugbook::words::Say::say(fault, &words))),
        );
    }
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn the_program_verifies_a_card_and_a_book_and_names_what_was_changed() {
    let folder = tempfile::tempdir().unwrap();
    let (book, file) = (folder.path().join("book"), folder.path().join("card.html"));
    for line in [
        "lugbook person add 'Ilse Marwitz'",
        "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own",
        "lugbook job open 'Red coupe' rotation-on-a-lift air",
        "lugbook job close 'the customer left'",
    ] {
        done(&book, line);
    }
    done(&book, &format!("lugbook card --out {}", file.display()));
    let nowhere = folder.path().join("no-book");
    let whole = done(&nowhere, &format!("lugbook card verify {} --json", file.display())).json();
    assert_eq!(whole["ok"], true);
    assert_eq!(whole["proven"].as_array().unwrap().len(), 3, "{whole}");
    assert!(whole["not_proven"].as_array().unwrap().len() >= 3, "{whole}");
    assert!(!nowhere.exists(), "no book is made for it");
    let card = fs::read_to_string(&file).unwrap();
    fs::write(&file, card.replacen("Red coupe", "Red sedan", 1)).unwrap();
    let touched = say(&nowhere, &format!("lugbook card verify {}", file.display()));
    assert_eq!(touched.code, Some(4), "{touched:?}");
    assert!(touched.out.contains("The page was changed") && !touched.out.contains("Proven\n"), "{touched:?}");
    let other = say(&nowhere, &format!("lugbook card verify {} --device 0123456789abcdef --json", file.display()));
    assert_eq!(other.json()["refused"][0]["kind"], "other-device", "{other:?}");
    let told = done(&book, "lugbook book verify --json").json();
    assert_eq!((told["ok"].clone(), told["refused"].clone()), (true.into(), serde_json::json!([])));
    assert_eq!(told["proven"].as_array().unwrap().len(), 1, "{told}");
}

#[cfg(unix)]
#[test]
fn the_key_is_made_once_for_its_owner_only_and_stands_away_from_the_book() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let (book, state) = (folder.path().join("book"), folder.path().join("state"));
    let run = |words: &[&str]| {
        let mut process = crate::program::with(&book, words);
        process.env("XDG_STATE_HOME", &state);
        crate::program::Said::from(process.output().unwrap())
    };
    assert_eq!(run(&["person", "add", "Ilse Marwitz"]).code, Some(0));
    let path = state.join("lugbook/device.key");
    let key = fs::read_to_string(&path).unwrap();
    assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
    assert_eq!(fs::metadata(path.parent().unwrap()).unwrap().permissions().mode() & 0o777, 0o700);
    assert_eq!(fs::read_dir(path.parent().unwrap()).unwrap().count(), 1, "nothing is left beside it");
    // Opened to others it is closed again, and stays the same key.
    fs::set_permissions(&path, fs::Permissions::from_mode(0o644)).unwrap();
    assert_eq!(run(&["person", "list"]).code, Some(0));
    assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
    assert_eq!(fs::read_to_string(&path).unwrap(), key);
    // No file of the book holds it.
    let secret = key.lines().last().unwrap();
    let bytes: Vec<u8> = (0..32).map(|at| u8::from_str_radix(&secret[at * 2..at * 2 + 2], 16).unwrap()).collect();
    for entry in fs::read_dir(&book).unwrap().map(Result::unwrap).filter(|entry| entry.path().is_file()) {
        let file = fs::read(entry.path()).unwrap();
        let holds = |what: &[u8]| file.windows(what.len()).any(|window| window == what);
        assert!(!holds(&bytes) && !holds(secret.as_bytes()), "{:?}", entry.path());
    }
    // A key that is damaged is left as it is: the work goes on, told and not sealed.
    fs::write(&path, "lugbook device key 1\nzz\n").unwrap();
    let said = run(&["person", "list"]);
    assert_eq!(said.code, Some(0));
    assert!(said.sentence().contains("nothing is sealed"), "{said:?}");
    assert_eq!(fs::read_to_string(&path).unwrap(), "lugbook device key 1\nzz\n");
}
