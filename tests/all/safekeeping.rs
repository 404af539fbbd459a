//! Backups that are made by themselves, locked or not, and what they give back.

use std::fs;
use std::io::{Read, Write};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};

use lugbook::calendar::Moment;
use lugbook::engine::{Command, Engine, Host, TroubleKind, backup_is_locked};
use lugbook::entry::{PhotoOf, Role};
use lugbook::photos::Photos;
use lugbook::vehicle::Class;
use lugbook::words::{Lang, Speech};
use tempfile::{TempDir, tempdir};

use crate::program::{done, pictures, say};

const PASSPHRASE: &str = "wet chalk, dry rag";

/// A device whose clock stands until it is turned.
struct Device {
    clock: Arc<AtomicI64>,
    count: AtomicU64,
}

impl Host for Device {
    fn now(&self) -> Moment {
        Moment::from_unix_ms(self.clock.load(Ordering::Relaxed))
    }

    fn random(&self) -> [u8; 10] {
        static DEVICE: AtomicU64 = AtomicU64::new(0);
        let n = self.count.fetch_add(1, Ordering::Relaxed);
        let n = if n == 0 { DEVICE.fetch_add(1, Ordering::Relaxed) << 32 } else { n };
        let bytes = n.to_be_bytes();
        std::array::from_fn(|at| bytes.get(at).copied().unwrap_or(7))
    }
}

struct Shop {
    dir: TempDir,
    clock: Arc<AtomicI64>,
    engine: Engine,
}

impl Shop {
    fn new() -> Self {
        let dir = tempdir().unwrap();
        for name in ["card", "other"] {
            fs::create_dir(dir.path().join(name)).unwrap();
        }
        let clock = Arc::new(AtomicI64::new(1_780_000_000_000));
        let engine = open(&dir.path().join("book"), &clock);
        Self { dir, clock, engine }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.dir.path().join(name)
    }

    fn minutes(&self, count: i64) {
        self.clock.fetch_add(count * 60_000, Ordering::Relaxed);
    }

    /// Something is said, and what a shell does after it.
    fn act(&mut self, command: Command) -> Option<String> {
        self.minutes(1);
        let author = (!self.engine.book().people.is_empty()).then_some("Ilse Marwitz");
        self.engine.act(author, command, Speech::default()).unwrap();
        self.engine.back_up_when_due(Speech::default())
    }

    fn person(&mut self, name: &str) -> Option<String> {
        self.act(Command::AddPerson { name: name.to_owned(), role: Role::Mechanic, phone: None })
    }
}

fn open(folder: &Path, clock: &Arc<AtomicI64>) -> Engine {
    let device = Device { clock: Arc::clone(clock), count: AtomicU64::new(0) };
    Engine::open(folder, Box::new(device), Speech::default()).unwrap()
}

fn zips(folder: &Path) -> Vec<PathBuf> {
    let mut zips: Vec<_> = fs::read_dir(folder).unwrap().map(|name| name.unwrap().path()).collect();
    assert!(zips.iter().all(|path| path.extension().is_some_and(|end| end == "zip")), "{zips:?}");
    zips.sort();
    zips
}

#[test]
fn each_change_is_backed_up_by_itself_once_a_folder_is_chosen() {
    let mut shop = Shop::new();
    let card = shop.path("card");
    assert_eq!(shop.person("Ilse Marwitz"), None);
    let view = shop.engine.backups(Speech::default());
    assert_eq!((view.into, view.last_good, view.not_in_it), (None, None, 1));
    assert_eq!(view.sentences[0], "There is no backup yet. A lost phone would take this book with it.");

    let view = shop.engine.back_up_into(Some(&card), Speech::default()).unwrap();
    assert_eq!((view.not_in_it, view.trouble), (0, None));
    assert_eq!(zips(&card).len(), 1);
    for (count, name) in [(2, "Wren Castellan"), (3, "Odile Farrow")] {
        assert_eq!(shop.person(name), None);
        assert_eq!(zips(&card).len(), count);
    }
    // Nothing new, nothing made.
    assert_eq!(shop.engine.back_up_when_due(Speech::default()), None);
    assert_eq!(zips(&card).len(), 3);

    // A program that starts again goes on with it.
    let (book, clock) = (shop.path("book"), Arc::clone(&shop.clock));
    drop(shop.engine);
    shop.engine = open(&book, &clock);
    assert_eq!(shop.person("Tove Brand"), None);
    assert_eq!(zips(&card).len(), 4);
    shop.engine.back_up_into(None, Speech::default()).unwrap();
    assert_eq!(shop.person("Per Holm"), None);
    assert_eq!(zips(&card).len(), 4);
    assert_eq!(shop.engine.backups(Speech::default()).not_in_it, 1);
}

#[test]
fn a_backup_that_fails_is_told_with_what_is_safe_and_tried_again_after_ten_minutes() {
    let mut shop = Shop::new();
    let card = shop.path("card");
    shop.person("Ilse Marwitz");
    shop.engine.back_up_into(Some(&card), Speech::default()).unwrap();
    let away = shop.path("away");
    fs::rename(&card, &away).unwrap();

    let told = shop.person("Wren Castellan").unwrap();
    insta::assert_snapshot!(told.replace(&card.display().to_string(), "CARD"));
    let view = shop.engine.backups(Speech::default());
    assert_eq!(view.not_in_it, 1);
    assert!(view.last_good.is_some(), "the last good one stays visible");
    // Told once, not at each change.
    assert_eq!(shop.person("Odile Farrow"), None);
    assert!(shop.engine.backups(Speech::default()).trouble.is_some());

    fs::rename(&away, &card).unwrap();
    shop.minutes(10);
    assert_eq!(shop.person("Tove Brand"), None);
    let view = shop.engine.backups(Speech::default());
    assert_eq!((view.trouble, view.not_in_it), (None, 0));
    assert_eq!(zips(&card).len(), 2);
}

#[test]
fn a_folder_that_would_be_lost_with_the_book_or_is_none_is_refused_and_changes_nothing() {
    let mut shop = Shop::new();
    shop.person("Ilse Marwitz");
    let inside = shop.path("book/photos");
    for folder in [inside, shop.path("book"), shop.path("none")] {
        let why = shop.engine.back_up_into(Some(&folder), Speech::default()).unwrap_err();
        assert_eq!(why.kind, TroubleKind::MendInput);
    }
    assert_eq!(shop.engine.backups(Speech::default()).into, None);
    let why = shop.engine.back_up(None, Speech::default()).unwrap_err();
    assert_eq!(why.sentence, "No folder is chosen for backups. Name one.");
}

/// A book with a photo, and where its backup is.
fn with_photo(lock: Option<&str>) -> (Shop, PathBuf) {
    let mut shop = Shop::new();
    let card = shop.path("card");
    shop.person("Ilse Marwitz");
    shop.act(Command::AddVehicle {
        name: "Red coupe".to_owned(),
        model: "Lerche 30, 2018".to_owned(),
        class: Class::Car,
        axles: vec![],
        has: Some(vec![]),
        spare: false,
        own: true,
        plate: Some("KX 1204".to_owned()),
    });
    shop.act(Command::OpenJob {
        vehicle: "Red coupe".to_owned(),
        procedure: "rotation-on-a-lift".to_owned(),
        circumstances: vec!["hand-tools".to_owned()],
        practice: false,
    });
    shop.act(Command::Photo { file: pictures().join("placard.jpg"), of: PhotoOf::Placard, at: None });
    if let Some(passphrase) = lock {
        shop.engine.lock_backups(Some(passphrase), Speech::default()).unwrap();
    }
    shop.engine.back_up_into(Some(&card), Speech::default()).unwrap();
    let zip = zips(&card).remove(0);
    (shop, zip)
}

#[test]
fn a_backup_gives_a_new_device_the_same_book_and_twice_does_no_harm() {
    for lock in [None, Some(PASSPHRASE)] {
        let (shop, zip) = with_photo(lock);
        assert_eq!(backup_is_locked(&zip, Speech::default()), Ok(lock.is_some()));
        let mut new = open(&shop.path("new"), &shop.clock);
        let told = new.restore(&zip, lock, Speech::default()).unwrap();
        assert_eq!((told.before, told.photos, told.photos_missing), (0, 1, 0));
        assert!(told.after >= 4);
        let front = |engine: &Engine| {
            let mut front = engine.front(Speech::default());
            front.backups = engine.backups(Speech::default());
            (front.people, front.vehicles, front.jobs)
        };
        assert_eq!(front(&new), front(&shop.engine));
        assert!(new.check(Speech::default()).unwrap().ok);
        let again = new.restore(&zip, lock, Speech::default()).unwrap();
        assert_eq!((again.before, again.after, again.photos), (told.after, told.after, 0));
        insta::assert_snapshot!(
            format!("restored {}", if lock.is_some() { "locked" } else { "open" }),
            format!("{}\n{}", told.sentences.join("\n"), again.sentences.join("\n"))
        );
    }
}

#[test]
fn a_locked_backup_opens_with_its_passphrase_alone_and_shows_nothing_without() {
    let (shop, zip) = with_photo(Some(PASSPHRASE));
    let mut new = open(&shop.path("new"), &shop.clock);
    let refused = |why: Result<lugbook::engine::RestoredView, lugbook::engine::Trouble>| why.unwrap_err().sentence;
    let told = refused(new.restore(&zip, None, Speech::default()));
    assert!(told.contains("is locked"), "{told}");
    let told = refused(new.restore(&zip, Some("wet chalk, dry rug"), Speech::default()));
    assert!(told.contains("does not open"), "{told}");
    assert_eq!(new.front(Speech::default()).people.len(), 0);

    let bytes = fs::read(&zip).unwrap();
    for plain in ["Marwitz", "Red coupe", "KX 1204", "AGE-SECRET-KEY"] {
        assert!(!bytes.windows(plain.len()).any(|window| window == plain.as_bytes()), "{plain}");
    }
    let short = new.lock_backups(Some("lug nut"), Speech::default()).unwrap_err();
    assert!(short.sentence.starts_with("A passphrase needs at least 8 characters."));
}

#[test]
fn the_same_letters_typed_another_way_are_the_same_passphrase() {
    // “é” as one character, and as “e” with an accent after it.
    let (shop, zip) = with_photo(Some("caf\u{e9} y tuercas"));
    let mut new = open(&shop.path("new"), &shop.clock);
    assert!(new.restore(&zip, Some("cafe\u{301} y tuercas"), Speech::default()).is_ok());
}

#[test]
fn a_locked_backup_is_opened_by_other_means_as_its_page_says() {
    let (_shop, zip) = with_photo(Some(PASSPHRASE));
    let mut archive = zip::ZipArchive::new(fs::File::open(&zip).unwrap()).unwrap();
    let mut part = |name: &str| {
        let mut bytes = Vec::new();
        archive.by_name(name).unwrap().read_to_end(&mut bytes).unwrap();
        bytes
    };
    let passphrase = age::scrypt::Identity::new(age::secrecy::SecretString::from(PASSPHRASE.to_owned()));
    let key = age::decrypt(&passphrase, &part("key.age")).unwrap();
    let key: age::x25519::Identity = std::str::from_utf8(&key).unwrap().parse().unwrap();
    let inner = age::decrypt(&key, &part("backup.age")).unwrap();
    let mut inner = zip::ZipArchive::new(std::io::Cursor::new(inner)).unwrap();
    let mut entries = String::new();
    inner.by_name("entries.jsonl").unwrap().read_to_string(&mut entries).unwrap();
    assert!(entries.contains("Ilse Marwitz"));
}

#[test]
fn a_damaged_book_takes_its_newest_good_backup_by_itself() {
    for lock in [None, Some(PASSPHRASE)] {
        let (shop, _) = with_photo(lock);
        let (book, clock) = (shop.path("book"), Arc::clone(&shop.clock));
        let dir = shop.dir;
        drop(shop.engine);
        let file = book.join("book.db");
        let mut bytes = fs::read(&file).unwrap();
        let place = bytes.windows(9).position(|window| window == b"Red coupe").unwrap();
        bytes[place] = b'B';
        fs::write(&file, bytes).unwrap();
        let engine = open(&book, &clock);
        let told = engine.told_at_opening(Speech::default()).unwrap();
        assert!(told.contains("The newest good backup was taken in. One entry came back"), "{told}");
        assert_eq!(engine.front(Speech::default()).vehicles[0].name, "Red coupe");
        assert!(engine.check(Speech::default()).unwrap().ok);
        drop(dir);
    }
}

#[test]
fn a_photo_that_does_not_hold_in_a_backup_is_told_and_the_entries_come() {
    let (shop, zip) = with_photo(None);
    let changed = shop.path("changed.zip");
    let mut archive = zip::ZipArchive::new(fs::File::open(&zip).unwrap()).unwrap();
    let mut writer = zip::ZipWriter::new(fs::File::create(&changed).unwrap());
    for at in 0..archive.len() {
        let mut file = archive.by_index(at).unwrap();
        let mut bytes = Vec::new();
        file.read_to_end(&mut bytes).unwrap();
        let name = file.name().unwrap().into_owned();
        if name.starts_with("photos/") {
            let middle = bytes.len() / 2;
            bytes[middle] ^= 1;
        }
        writer.start_file(name, zip::write::SimpleFileOptions::default()).unwrap();
        writer.write_all(&bytes).unwrap();
    }
    writer.finish().unwrap();
    let mut new = open(&shop.path("new"), &shop.clock);
    let told = new.restore(&changed, None, Speech::default()).unwrap();
    assert_eq!((told.photos, told.photos_missing), (0, 1));
    assert_eq!(new.front(Speech::default()).vehicles.len(), 1);
}

#[test]
fn a_note_that_cannot_be_read_is_told_and_the_book_opens() {
    let (shop, _) = with_photo(None);
    let (book, clock) = (shop.path("book"), Arc::clone(&shop.clock));
    let card = shop.path("card");
    let dir = shop.dir;
    drop(shop.engine);
    fs::write(book.join("book.backup"), "{\"into\": 7").unwrap();
    let mut engine = open(&book, &clock);
    let view = engine.backups(Speech { lang: Lang::Es, ..Speech::default() });
    assert_eq!(view.trouble.unwrap(), "No se puede leer a dónde van los respaldos. Elija otra vez la carpeta.");
    assert_eq!(engine.back_up_into(Some(&card), Speech::default()).unwrap().trouble, None);
    drop(dir);
}

#[cfg(unix)]
#[test]
fn the_note_and_what_it_locks_are_for_the_owner_alone() {
    use std::os::unix::fs::PermissionsExt;
    let (shop, _) = with_photo(Some(PASSPHRASE));
    let mode = fs::metadata(shop.path("book/book.backup")).unwrap().permissions().mode();
    assert_eq!(mode & 0o777, 0o600);
}

#[test]
fn backups_in_a_terminal_from_the_first_to_a_new_device() {
    let dir = tempdir().unwrap();
    let (book, new, card) = (dir.path().join("book"), dir.path().join("new"), dir.path().join("card"));
    fs::create_dir(&card).unwrap();
    fs::write(dir.path().join("words"), format!("{PASSPHRASE}\n")).unwrap();
    done(&book, "lugbook person add 'Ilse Marwitz'");
    done(&book, &format!("lugbook backup lock --passphrase-file {}", dir.path().join("words").display()));
    done(&book, &format!("lugbook backup into {}", card.display()));
    done(&book, "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own");
    assert_eq!(zips(&card).len(), 2);
    let told = done(&book, "lugbook backup --json").json();
    assert_eq!((told["not_in_it"].as_u64(), told["locked"].as_bool()), (Some(0), Some(true)));

    let newest = zips(&card).pop().unwrap();
    let asked = say(&new, &format!("lugbook restore {}", newest.display()));
    assert_eq!(asked.code, Some(2));
    assert!(asked.sentence().contains("--passphrase-file"), "{asked:?}");
    assert!(!new.exists());
    let words = dir.path().join("words");
    done(&new, &format!("lugbook restore {} --passphrase-file {}", newest.display(), words.display()));
    assert!(done(&new, "lugbook book").out.contains("Red coupe"));

    fs::remove_dir_all(&card).unwrap();
    let told = done(&book, "lugbook vehicle add 'Blue van' --model 'Lerche 90, 2020' --own");
    assert!(told.err.contains("Every entry is safe on this device; 5 are in no good backup yet."), "{told:?}");
    assert!(done(&book, "lugbook book").out.contains("The last backup failed."));
}

#[test]
fn a_photo_that_no_entry_names_is_kept_for_thirty_days_and_others_for_good() {
    let (mut shop, _) = with_photo(None);
    // Taken back, and so named by an entry all the same.
    let line = shop.engine.log(None, Speech::default()).unwrap().len();
    shop.act(Command::Withdraw { line, reason: "wrong label".to_owned() });
    let (book, clock) = (shop.path("book"), Arc::clone(&shop.clock));
    let photos = Photos::open(book.join("photos")).unwrap();
    let now = Moment::from_unix_ms(clock.load(Ordering::Relaxed));
    let orphan = photos.intake_file(&pictures().join("hub-rear-left.jpg"), now).unwrap().id;
    let before = photos.kept().unwrap();
    assert_eq!(before.len(), 2);
    let dir = shop.dir;
    drop(shop.engine);
    for (days, left) in [(29, 2), (2, 1)] {
        clock.fetch_add(days * 86_400_000, Ordering::Relaxed);
        drop(open(&book, &clock));
        assert_eq!(photos.kept().unwrap().len(), left, "after {days} more days");
    }
    assert!(!photos.kept().unwrap().contains(&orphan));
    drop(dir);
}
