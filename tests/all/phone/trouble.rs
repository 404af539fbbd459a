//! What must not go wrong at the boundary: closed books, double taps, faults inside, threads, stopped tasks.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use lugbook_phone::{Engine, PhoneHost, Refusal};

use super::{ENGLISH, MORNING_MS, Phone, Shop, wait};

#[test]
fn a_new_book_is_empty_and_a_closed_one_says_so() {
    let shop = Shop::new();
    let bay = wait(shop.engine.bay(None, None, ENGLISH)).unwrap();
    assert_eq!((bay.job, bay.step), (None, None));
    assert_eq!(bay.empty.as_deref(), Some("No job is in the bay. Choose a vehicle and begin a visit."));
    assert!(matches!(wait(shop.engine.card(Some(3), ENGLISH)), Err(Refusal::MendInput { .. })));
    let again = wait(Engine::open(super::book(&shop.dir), shop.phone.clone(), ENGLISH));
    assert!(matches!(again, Err(Refusal::TryAgain { .. })), "one writer");
    wait(shop.engine.close_book()).unwrap();
    assert_eq!(wait(shop.engine.book(String::new(), ENGLISH)).unwrap_err(), Refusal::Closed);
    assert_eq!(wait(shop.engine.pause(ENGLISH)), Err(Refusal::Closed));
    assert_eq!(wait(shop.engine.act("x#y".to_owned(), Vec::new(), ENGLISH)).unwrap_err(), Refusal::Closed);
}

#[test]
fn a_second_tap_on_the_same_thing_is_no_second_entry() {
    let shop = Shop::new().with_car();
    let car = shop.vehicle("gray wagon");
    shop.tap_on(&car, "open-tread-and-age-check", &[]);
    let bay = shop.bay();
    let complain = bay.iter().find(|action| action.code == "complain").unwrap();
    shop.tap(complain, &[("complaint", "pulls left")]).unwrap();
    let why = shop.tap(complain, &[("complaint", "pulls left")]).unwrap_err();
    assert!(why.to_string().starts_with("The book changed since this screen was drawn."), "{why}");
    let log = wait(shop.engine.log(None, ENGLISH)).unwrap().lines;
    assert_eq!(log.iter().filter(|line| line.sentence.contains("pulls left")).count(), 1);
}

#[test]
fn what_no_screen_offers_can_not_be_said() {
    let shop = Shop::new().with_car();
    for token in ["", "#", "bay", r#"{"on":"bay"}#0123456789"#, r#"{"on":"nowhere"}#0"#, "\u{0}#\u{ffff}"] {
        let why = wait(shop.engine.act(token.to_owned(), Vec::new(), ENGLISH)).unwrap_err();
        assert!(matches!(why, Refusal::MendInput { .. }), "{token}: {why:?}");
    }
    let car = shop.vehicle("gray wagon");
    let open = car.iter().find(|action| action.code == "torque").unwrap();
    let stranger = shop.tap(open, &[("vehicle", "another")]).unwrap_err();
    assert_eq!(stranger.to_string(), "There is nothing named “vehicle” to fill in here.");
    let empty = shop.tap(open, &[("source", "page 1")]).unwrap_err();
    let Refusal::MendInput { at, .. } = &empty else { panic!("{empty:?}") };
    assert_eq!(at.as_deref(), Some("printed"), "{empty}");
}

#[test]
fn the_book_rests_in_the_background_and_comes_back_by_itself() {
    let shop = Shop::new().with_car();
    wait(shop.engine.pause(ENGLISH)).unwrap();
    wait(shop.engine.pause(ENGLISH)).unwrap();
    // Let go of: another program can open it meanwhile.
    let other = wait(Engine::open(super::book(&shop.dir), Phone::at(MORNING_MS), ENGLISH)).unwrap();
    assert!(matches!(wait(shop.engine.resume(ENGLISH)), Err(Refusal::TryAgain { .. })));
    wait(other.close_book()).unwrap();
    wait(shop.engine.resume(ENGLISH)).unwrap();
    wait(shop.engine.pause(ENGLISH)).unwrap();
    assert_eq!(wait(shop.engine.book(String::new(), ENGLISH)).unwrap().vehicles.len(), 1);
}

/// A phone whose clock breaks when it is told to.
struct Breaking {
    phone: Arc<Phone>,
    broken: AtomicBool,
}

impl PhoneHost for Breaking {
    fn clock_ms(&self) -> i64 {
        assert!(!self.broken.load(Ordering::Relaxed), "the clock is broken");
        self.phone.clock_ms()
    }

    fn random(&self) -> Vec<u8> {
        self.phone.random()
    }

    fn secret(&self) -> Option<Vec<u8>> {
        self.phone.secret()
    }

    fn models(&self) -> Option<String> {
        self.phone.models()
    }

    fn log(&self, line: String) {
        self.phone.log(line);
    }
}

#[test]
fn a_fault_inside_comes_back_as_an_error_and_leaves_the_book_whole() {
    let dir = tempfile::tempdir().unwrap();
    let host = Arc::new(Breaking { phone: Phone::at(MORNING_MS), broken: AtomicBool::new(false) });
    let engine = wait(Engine::open(super::book(&dir), host.clone(), ENGLISH)).unwrap();
    let shop = Shop { dir, phone: host.phone.clone(), engine, manner: ENGLISH }.with_car();
    host.broken.store(true, Ordering::Relaxed);
    let acted = shop.engine.act("x#y".to_owned(), Vec::new(), ENGLISH);
    assert!(matches!(wait(acted), Err(Refusal::Report { .. })));
    host.broken.store(false, Ordering::Relaxed);
    let book = wait(shop.engine.book(String::new(), ENGLISH)).unwrap();
    assert_eq!(book.vehicles.len(), 1);
    shop.tap_on(&book.actions, "add-jack", &[("name", "trolley jack"), ("marked", "2 t")]);
}

#[test]
fn two_threads_at_one_engine_lose_nothing_and_never_meet() {
    let shop = Arc::new(Shop::new().with_car());
    let threads: Vec<_> = (0..2)
        .map(|thread| {
            let shop = shop.clone();
            std::thread::spawn(move || {
                let mut kept = 0;
                for turn in 0..30 {
                    let actions = wait(shop.engine.book(String::new(), ENGLISH)).unwrap().actions;
                    let add = actions.iter().find(|action| action.code == "add-jack").unwrap();
                    match shop.tap(add, &[("name", &format!("jack {thread} {turn}"))]) {
                        Ok(_) => kept += 1,
                        // The other thread said something in between.
                        Err(why) => assert!(matches!(why, Refusal::MendInput { at: None, .. }), "{why:?}"),
                    }
                }
                kept
            })
        })
        .collect();
    let kept: usize = threads.into_iter().map(|thread| thread.join().unwrap()).sum();
    let book = wait(shop.engine.book(String::new(), ENGLISH)).unwrap();
    assert_eq!(book.tools.len(), kept);
    assert!(kept >= 30, "one of them always comes through: {kept}");
}

#[test]
fn a_stopped_backup_leaves_nothing_and_can_be_started_again() {
    let shop = Shop::new().with_car();
    let car = shop.vehicle("gray wagon");
    shop.tap_on(&car, "open-tread-and-age-check", &[]);
    let file = shop.dir.path().join("a.png");
    image::GrayImage::from_pixel(64, 48, image::Luma([90])).save(&file).unwrap();
    let bay = shop.bay();
    let photo = bay.iter().find(|action| action.code == "photo").unwrap();
    shop.tap(photo, &[("file", file.to_str().unwrap())]).unwrap();
    let into = shop.dir.path().join("backups");
    std::fs::create_dir(&into).unwrap();
    let backups = wait(shop.engine.backups(ENGLISH)).unwrap().actions;
    let back_up = backups.iter().find(|action| action.code == "back-up").unwrap();
    let entered = vec![lugbook_phone::Entered { code: "folder".to_owned(), value: into.to_str().unwrap().to_owned() }];
    let held = shop.phone.held.lock().unwrap();
    let task = shop.engine.start(back_up.token.clone(), entered.clone(), ENGLISH).unwrap();
    task.cancel().unwrap();
    drop(held);
    let stopped = "Stopped. Nothing was changed.".to_owned();
    assert_eq!(wait(task.outcome()), Err(Refusal::TryAgain { sentence: stopped }));
    assert_eq!(std::fs::read_dir(&into).unwrap().count(), 0, "half a backup is none");
    assert!(wait(task.next_progress()).unwrap().over);
    let task = shop.engine.start(back_up.token.clone(), entered, ENGLISH).unwrap();
    wait(task.outcome()).unwrap();
    assert_eq!(wait(task.outcome()), wait(task.outcome()), "asking again gives the same");
    let kept: Vec<_> = std::fs::read_dir(&into).unwrap().map(|file| file.unwrap().file_name()).collect();
    assert!(kept.iter().all(|name| name.to_str().unwrap().ends_with(".zip")), "{kept:?}");
}

#[test]
fn the_log_holds_kinds_and_times_and_no_name() {
    let shop = Shop::new().with_car();
    let lines = shop.phone.lines.lock().unwrap();
    assert!(lines.iter().any(|line| line.starts_with("tap done")), "{lines:?}");
    assert!(lines.iter().all(|line| !line.contains("Ana") && !line.contains("wagon")), "{lines:?}");
}
