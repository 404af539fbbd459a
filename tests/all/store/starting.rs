//! A large book starts from what was kept of it, and says no other thing than the whole book does.

use std::fs;
use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};

use lugbook::calendar::Moment;
use lugbook::engine::{Command, Engine, Host, TroubleKind};
use lugbook::entry::{Draft, Fact, Nuts, Pass, Personal, Role, Signature, Turned};
use lugbook::ident::{JobId, TireId, VehicleId};
use lugbook::logbook::Logbook;
use lugbook::vehicle::{Class, Layout, Place, Side};
use lugbook::words::Speech;
use rusqlite::Connection;
use tempfile::tempdir;

use super::{NOON, at, draft, open, person, ten};

const DAY: i64 = 86_400_000;

/// A device whose clock stands.
struct Clock(i64);

impl Host for Clock {
    fn now(&self) -> Moment {
        Moment::from_unix_ms(NOON + self.0)
    }

    fn random(&self) -> [u8; 10] {
        static COUNT: AtomicU64 = AtomicU64::new(1 << 40);
        ten(COUNT.fetch_add(1, Ordering::Relaxed))
    }
}

fn start(folder: &Path, ms: i64) -> Engine {
    Engine::open(folder, Box::new(Clock(ms)), Speech::default()).unwrap()
}

fn job(number: u64) -> JobId {
    JobId::from_parts(1_777_000_000_000, ten(number))
}

/// Jobs of 50 entries each on one vehicle, all signed but the last.
fn history(jobs: u64) -> Vec<Draft> {
    let vehicle = VehicleId::from_parts(1, ten(1));
    let wren = Personal { name: Some("Wren Castellan".to_owned()), ..Personal::salted([7; 16]) };
    let mut facts = vec![
        (Fact::PersonAdded { person: person(1), role: Role::Mechanic }, Some(wren)),
        (
            Fact::VehicleAdded {
                vehicle,
                name: "orchard truck".to_owned(),
                model: "Harrow 1500 2019".to_owned(),
                class: Class::LightTruck,
                layout: Layout::two_axles(false),
                own: true,
            },
            None,
        ),
    ];
    let fl = Place::single(1, Side::Left);
    for number in 1..=jobs {
        let job = job(number);
        let procedure = "rotation-on-a-lift".to_owned();
        facts.push((Fact::JobOpened { job, vehicle, procedure, version: 1, circumstances: Vec::new() }, None));
        let reading = format!("{} km", 20_000 + number * 100).parse().unwrap();
        facts.push((Fact::OdometerRead { job, reading, note: None }, None));
        let depth = "7/32".parse().unwrap();
        facts.push((
            Fact::TreadMeasured {
                job,
                tire: TireId::from_parts(1, ten(1)),
                at: fl,
                grooves: vec![vec![depth; 3]],
                lowest: depth,
                reason: None,
            },
            None,
        ));
        facts.extend((0..46).map(|nut| {
            let nuts = Nuts::One(u8::try_from(1 + nut % 5).unwrap());
            let (pass, turned) = (Pass::Final, Some(Turned::Moved));
            (Fact::NutTightened { job, at: fl, nuts, pass, turned, setting: None, tool: None }, None)
        }));
        if number < jobs {
            facts.push((Fact::JobSigned { job, signature: Signature::Name, seen: None }, None));
        }
    }
    (1..).zip(facts).map(|(number, (fact, personal))| Draft { fact, personal, ..draft(number) }).collect()
}

/// A closed book with 60 jobs, 3,001 entries, that was opened once, so that it was kept.
fn kept(folder: &Path) {
    let (store, _) = open(folder).unwrap();
    store.append(history(60), at(0)).unwrap();
    store.close().unwrap();
    assert_eq!(what_is_kept(folder), None);
    drop(start(folder, DAY));
    assert!(what_is_kept(folder).is_some());
}

/// How many entries were in the book when it was last kept.
fn what_is_kept(folder: &Path) -> Option<i64> {
    let conn = Connection::open(folder.join("book.db")).unwrap();
    conn.query_row("SELECT arrived FROM snapshot WHERE name = 'book'", [], |row| row.get(0)).ok()
}

/// Everything the engine says of the book, with the cards of some jobs.
fn answers(engine: &Engine) -> Vec<String> {
    let speech = Speech::default();
    let mut all = vec![format!("{:?}", engine.front(speech)), format!("{:?}", engine.next(speech))];
    for job in [1, 30, 60] {
        all.push(engine.card(Some(job), speech).unwrap());
        all.push(format!("{:?}", engine.log(Some(job), speech).unwrap()));
    }
    all
}

/// Changes one byte of an entry's digest in the file itself, past all triggers.
fn damage(folder: &Path, arrived: i64) {
    let conn = Connection::open(folder.join("book.db")).unwrap();
    let sql = "SELECT digest FROM entry WHERE arrived = ?1";
    let digest: Vec<u8> = conn.query_row(sql, [arrived], |row| row.get(0)).unwrap();
    drop(conn);
    let mut file = fs::read(folder.join("book.db")).unwrap();
    let place = file.windows(32).position(|window| window == digest).expect("the digest is in the file");
    file[place] ^= 1;
    fs::write(folder.join("book.db"), file).unwrap();
}

#[test]
fn a_kept_book_gives_the_answers_of_the_whole_book_and_goes_on_alike() {
    let dir = tempdir().unwrap();
    kept(dir.path());
    let usual = start(dir.path(), DAY);
    let kept_answers = answers(&usual);
    drop(usual);
    // A week later the whole book is read again.
    assert_eq!(answers(&start(dir.path(), 9 * DAY)), kept_answers);
    Connection::open(dir.path().join("book.db")).unwrap().execute("DELETE FROM snapshot", []).unwrap();
    assert_eq!(answers(&start(dir.path(), DAY)), kept_answers);

    // Commands after a usual start, a correction among them.
    let mut usual = start(dir.path(), 2 * DAY);
    let act = |engine: &mut Engine, command| engine.act(None, command, Speech::default()).unwrap();
    act(&mut usual, Command::Complain { text: "a hum at 80".to_owned() });
    act(&mut usual, Command::Correct { line: 2, value: "30000 km".to_owned(), reason: "misread".to_owned() });
    act(&mut usual, Command::Complain { text: "a rattle".to_owned() });
    let followed = usual.book().clone();
    let said = answers(&usual);
    drop(usual);
    let (store, _) = open(dir.path()).unwrap();
    assert_eq!(Logbook::from_iter(store.entries().unwrap()).book(), followed);
    store.close().unwrap();
    assert_eq!(answers(&start(dir.path(), 2 * DAY)), said);
}

#[test]
fn any_changed_byte_of_what_was_kept_has_the_whole_book_read() {
    let dir = tempdir().unwrap();
    kept(dir.path());
    let right = answers(&start(dir.path(), DAY));
    let conn = Connection::open(dir.path().join("book.db")).unwrap();
    let bytes: Vec<u8> = conn.query_row("SELECT bytes FROM snapshot", [], |row| row.get(0)).unwrap();
    // In a name and in a number, which would be believed, and here and there.
    let text = |text: &[u8]| bytes.windows(text.len()).position(|window| window == text).expect("it is kept") + 8;
    let told = [text(b"\"orchard truck\""), text(b"\"number\":30,"), text(b"\"opened\":1")];
    for place in told.into_iter().chain((0..bytes.len()).step_by(bytes.len() / 3)) {
        let mut changed = bytes.clone();
        changed[place] ^= 1;
        conn.execute("UPDATE snapshot SET bytes = ?1", [&changed]).unwrap();
        assert_eq!(answers(&start(dir.path(), DAY)), right, "byte {place}");
        conn.execute("UPDATE snapshot SET bytes = ?1", [&bytes]).unwrap();
    }
    for changed in ["version = 2", "arrived = arrived - 1", "head = zeroblob(32)", "digest = zeroblob(32)"] {
        conn.execute(&format!("UPDATE snapshot SET {changed}"), []).unwrap();
        assert_eq!(answers(&start(dir.path(), DAY)), right, "{changed}");
    }
}

#[test]
fn damage_that_a_usual_start_does_not_see_is_told_when_it_is_met_and_within_a_week() {
    let dir = tempdir().unwrap();
    kept(dir.path());
    // In the third job, which is signed.
    damage(dir.path(), 120);
    let engine = start(dir.path(), DAY);
    assert_eq!(engine.told_at_opening(Speech::default()), None);
    assert!(engine.card(Some(2), Speech::default()).is_ok());
    assert_eq!(engine.card(Some(3), Speech::default()).unwrap_err().kind, TroubleKind::Restore);
    assert_eq!(engine.log(Some(3), Speech::default()).unwrap_err().kind, TroubleKind::Restore);
    drop(engine);
    // It was met, so the next opening deals with it.
    assert!(start(dir.path(), DAY).told_at_opening(Speech::default()).is_some());

    let dir = tempdir().unwrap();
    kept(dir.path());
    damage(dir.path(), 120);
    assert!(start(dir.path(), 9 * DAY).told_at_opening(Speech::default()).is_some(), "a week later");

    let dir = tempdir().unwrap();
    kept(dir.path());
    // In the last job, which is running.
    damage(dir.path(), 2_990);
    assert!(start(dir.path(), DAY).told_at_opening(Speech::default()).is_some(), "the job in the bay");
}

#[test]
fn a_small_book_is_read_whole_each_time() {
    let dir = tempdir().unwrap();
    let (store, _) = open(dir.path()).unwrap();
    store.append(history(30), at(0)).unwrap();
    store.close().unwrap();
    drop(start(dir.path(), DAY));
    assert_eq!(what_is_kept(dir.path()), None);
    damage(dir.path(), 120);
    assert!(start(dir.path(), DAY).told_at_opening(Speech::default()).is_some());
}

#[test]
fn what_was_kept_is_kept_anew_after_some_hundred_entries() {
    let dir = tempdir().unwrap();
    kept(dir.path());
    let (store, _) = open(dir.path()).unwrap();
    let more = (10_000..10_600).map(|number| {
        let fact = Fact::ComplaintHeard {
            job: job(60),
            complaint: lugbook::entry::Complaint { text: format!("a hum, {number}") },
        };
        Draft { fact, ..draft(number) }
    });
    store.append(more.collect(), at(DAY)).unwrap();
    store.close().unwrap();
    let before = what_is_kept(dir.path()).unwrap();
    let engine = start(dir.path(), DAY);
    let last = engine.book().jobs.last().unwrap();
    assert_eq!(last.lines.len(), 49 + 600);
    drop(engine);
    assert_eq!(what_is_kept(dir.path()), Some(before + 600));
}
