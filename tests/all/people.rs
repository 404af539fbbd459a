//! The tools and the people at hand: entered once, taken by themselves, told on the card.

use std::path::{Path, PathBuf};

use serde_json::Value;
use tempfile::TempDir;

use crate::program::{done, say};
use crate::report::text;

/// A book with a mechanic, an apprentice and two vehicles: a car of the mechanic's own, a truck of a customer's.
fn book() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    for line in [
        "lugbook person add 'Ilse Marwitz'",
        "lugbook person add 'Kit Marlowe' --role apprentice --as 'Ilse Marwitz'",
        "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own --as 'Ilse Marwitz'",
        "lugbook vehicle add 'Orchard truck' --class light-truck --model 'Yardmule 25, 2006' --as 'Ilse Marwitz'",
    ] {
        done(&book, line);
    }
    (folder, book)
}

/// Lines said by the mechanic; the last answer.
fn ilse(book: &Path, lines: &[&str]) -> String {
    let mut last = String::new();
    for line in lines {
        last = done(book, &format!("{line} --as 'Ilse Marwitz'")).out;
    }
    last.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn next(book: &Path) -> Value {
    done(book, "lugbook job --json").json()
}

fn log(book: &Path) -> Vec<String> {
    let log = done(book, "lugbook job log --json").json();
    log["log"].as_array().unwrap().iter().map(|line| line["sentence"].as_str().unwrap().to_owned()).collect()
}

fn card(book: &Path) -> String {
    text(&done(book, "lugbook card").out)
}

const WRENCH: &str = "lugbook tool wrench 'Long wrench' --accuracy 4% --step '1 N.m' --range '40..200 N.m'";

#[test]
fn a_new_job_takes_the_tools_at_hand_and_the_card_prints_their_papers() {
    let (_folder, book) = book();
    let wrench = format!("{WRENCH} --calibrated 2024-03-02 --every 12");
    let told = ilse(&book, &[&wrench]);
    // The interval is the owner's: without it a wrench is held against the published year, a gauge against nothing.
    assert!(told.contains("Long wrench: its calibration was due on 2025-03-02."), "{told}");
    let told =
        ilse(&book, &["lugbook tool air-gauge 'Dial gauge' --step '1 psi' --up-to '100 psi' --calibrated 2011-01-01"]);
    assert!(!told.contains("calibrat"), "{told}");
    let opened = ilse(
        &book,
        &[
            "lugbook tool gauge 'Brass gauge' --step '1 /32'",
            "lugbook tool gun 'Battery gun' electric --greatest '500 N.m'",
            "lugbook tool bar 'Grey bar' '80 ft.lb' --hex '21 mm'",
            "lugbook tool jack 'Floor jack' --rating '3 t'",
            "lugbook tool stands 'Red stands' --rating '3 t' --count 4",
            "lugbook tool lift 'Two-post'",
            "lugbook job open 'Red coupe' rotation-with-jack-and-stands",
        ],
    );
    assert!(opened.contains("Long wrench: its calibration was due on 2025-03-02."), "{opened}");
    // What turns the nuts is what the gun at hand is driven by; the lift has no part in this procedure.
    let said = log(&book);
    assert!(said[0].contains("electric gun"), "{said:#?}");
    let used: Vec<_> = said.iter().filter(|line| line.starts_with("Tool used")).collect();
    assert_eq!(used.len(), 7, "{used:#?}");
    assert!(!said.iter().any(|line| line.contains("Two-post")), "{said:#?}");
    let card = card(&book);
    for told in [
        "scale 40 N·m to 200 N·m",
        "calibrated 2024-03-02, again after 12 months",
        "Long wrench: its calibration was due on 2025-03-02.",
        "shows steps of 1/32 in",
        "calibration not known",
        "marked 80 ft·lb, socket 21 mm",
        "electric, marked 500 N·m",
        "4 of them, marked 3 t",
    ] {
        assert!(card.contains(told), "{told}: {card}");
    }
    let list = done(&book, "lugbook tool list").out;
    let list = list.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(list.contains("again after 12 months; was due on 2025-03-02"), "{list}");
    // Said again with new papers, it is the same tool.
    ilse(&book, &[&format!("{WRENCH} --calibrated 2026-03-02 --every 12")]);
    assert_eq!(done(&book, "lugbook tool list --json").json()["tools"].as_array().unwrap().len(), 8);
}

#[test]
fn of_several_tools_a_job_takes_the_one_used_last_and_asks_when_nobody_knows() {
    let (_folder, book) = book();
    let other = WRENCH.replace("Long wrench", "Short wrench");
    let asked = ilse(&book, &[WRENCH, &other, "lugbook job open 'Red coupe' rotation-on-a-lift air"]);
    assert!(asked.contains("Several would do: Long wrench, Short wrench. Say which one is used."), "{asked}");
    assert_eq!(log(&book).len(), 1);
    let again = ilse(&book, &["lugbook use 'short wrench'", "lugbook use 'Short wrench'"]);
    assert!(again.contains("Short wrench is in use in this job already."), "{again}");
    assert_eq!(log(&book).len(), 2);
    ilse(&book, &["lugbook job close 'the lift was needed'", "lugbook job open 'Red coupe' rotation-on-a-lift air"]);
    assert_eq!(log(&book)[1], "Tool used: Short wrench.");
    // Put away, it is taken by no new job, and its cards still name it.
    ilse(
        &book,
        &["lugbook job close 'the lift was needed'", "lugbook tool put-away 'Short wrench' 'fell from the lift'"],
    );
    assert_eq!(say(&book, "lugbook use 'Short wrench' --as 'Ilse Marwitz'").code, Some(2));
    ilse(&book, &["lugbook job open 'Red coupe' rotation-on-a-lift air"]);
    assert_eq!(log(&book)[1], "Tool used: Long wrench.");
    assert!(text(&done(&book, "lugbook card --job 2").out).contains("Short wrench"));
}

#[test]
fn what_is_driven_by_nothing_at_hand_is_still_asked() {
    let (_folder, book) = book();
    let open = "lugbook job open 'Red coupe' rotation-on-a-lift --as 'Ilse Marwitz'";
    // No gun was entered: that does not say that there is none.
    ilse(&book, &[WRENCH]);
    assert_eq!(say(&book, open).sentence(), "Say which it is: air, electric, hand-tools.");
    ilse(&book, &["lugbook tool gun 'Air gun' air", "lugbook tool gun 'Battery gun' electric"]);
    assert_eq!(say(&book, open).code, Some(2));
    ilse(&book, &["lugbook tool put-away 'Air gun' sold"]);
    done(&book, open);
    assert!(log(&book)[0].contains("electric gun"));
    assert!(log(&book).contains(&"Tool used: Battery gun.".to_owned()));
}

/// The cautions before each step of a job up to its nuts, by their codes.
fn cautions(book: &Path, power: &str) -> Vec<String> {
    let opened = ilse(book, &[&format!("lugbook job open 'Red coupe' wheel-off-and-on lift {power}")]);
    assert!(opened.contains("is open"), "{opened}");
    let mut seen = Vec::new();
    for _ in 0..30 {
        let next = next(book);
        let told = next["caution"].as_array().unwrap().iter().map(|line| line["code"].as_str().unwrap().to_owned());
        seen.extend(told);
        let Some(line) = next["type"].as_str() else { break };
        let line = line.replace("at-hand", "none-fitted").replace("wheels RL RR", "wheels RL").replace("MARK", "RL");
        if line.starts_with("lugbook torque") {
            break;
        }
        ilse(book, &[&line.replace("MANUAL, PAGE", "manual, page 9")]);
    }
    ilse(book, &["lugbook job close 'enough seen'"]);
    seen.sort();
    seen.dedup();
    seen
}

#[test]
fn cautions_of_tools_that_are_not_at_hand_are_not_shown() {
    let (_folder, book) = book();
    let has = |seen: &[String], code: &str| seen.iter().any(|known| known == code);
    let by_hand = cautions(&book, "hand-tools");
    for code in ["chips-and-noise", "turning-socket", "gun-direction", "limiting-bar", "hose-underfoot"] {
        assert!(!has(&by_hand, code), "{code}: {by_hand:?}");
    }
    assert!(has(&by_hand, "crossed-thread"));
    // With air there is a hose; whether there is a bar nobody said.
    let air = cautions(&book, "air");
    assert!(has(&air, "hose-underfoot") && has(&air, "limiting-bar"), "{air:?}");
    // The gun is in the book, and no bar.
    ilse(&book, &["lugbook tool gun 'Battery gun' electric"]);
    let no_bar = cautions(&book, "electric");
    assert!(has(&no_bar, "gun-direction") && !has(&no_bar, "limiting-bar"), "{no_bar:?}");
    assert!(!has(&no_bar, "hose-underfoot"));
    ilse(&book, &["lugbook tool bar 'Grey bar' '80 ft.lb'"]);
    assert!(has(&cautions(&book, "electric"), "limiting-bar"));
}

/// Brings the truck to the step where its first wheel comes off.
fn to_the_wheels(book: &Path) {
    ilse(
        book,
        &[
            "lugbook job open 'Orchard truck' wheel-off-and-on lift hand-tools",
            "lugbook skip 'no room to stand back' --step vehicle-photo",
            "lugbook damage none",
            "lugbook approve --by 'Odda Fenn'",
            "lugbook choose none-fitted",
            "lugbook odometer '48210 mi'",
            "lugbook shelf torque '125..150 N.m' --studs 6 --source 'manual, page 9'",
            "lugbook count 6",
            "lugbook wheels RL RR",
        ],
    );
    while next(book)["asks"] != "wheel-off" {
        let line = next(book)["type"].as_str().unwrap().to_owned();
        ilse(book, &[&line]);
    }
}

#[test]
fn a_heavy_wheel_has_two_names_and_hands_change_with_one_command() {
    let (_folder, book) = book();
    // A truck's tire of 774 mm is for two; a car's of 634 mm is not.
    ilse(&book, &["lugbook job open 'Orchard truck' tread-and-age-check", "lugbook odometer '48000 mi'"]);
    ilse(&book, &["lugbook wall RL 'LT245/75R16 120/116S'", "lugbook job close 'only the size was wanted'"]);
    to_the_wheels(&book);
    let asked = next(&book);
    assert_eq!(asked["crew"], serde_json::json!(["Kit Marlowe"]));
    assert!(asked["two"].as_str().unwrap().contains("two people"), "{asked:#}");
    assert!(done(&book, "lugbook job").out.contains("lugbook second \"Kit Marlowe\""));
    assert_eq!(say(&book, "lugbook second 'Ilse Marwitz' --as 'Ilse Marwitz'").code, Some(2));
    // One command changes the hands: what follows is written as done by them.
    ilse(&book, &["lugbook hands 'Kit Marlowe'"]);
    let changed = next(&book);
    assert_eq!((&changed["hands"], &changed["crew"]), (&"Kit Marlowe".into(), &serde_json::json!(["Ilse Marwitz"])));
    ilse(&book, &["lugbook second 'Ilse Marwitz' RL", "lugbook second 'Odo Brandt' RR"]);
    assert!(next(&book)["two"].is_null());
    ilse(&book, &["lugbook off RL", "lugbook off RR"]);
    let said = log(&book);
    assert!(said.contains(&"RL: Ilse Marwitz held the other side of the wheel.".to_owned()), "{said:#?}");
    assert!(said.contains(&"RR: Odo Brandt held the other side of the wheel.".to_owned()), "{said:#?}");
    let card = card(&book);
    assert!(card.contains("Ilse Marwitz held the other side of the wheel at RL"), "{card}");
    assert!(card.contains("Odo Brandt held the other side of the wheel at RR"), "{card}");
}

#[test]
fn who_handles_a_heavy_wheel_alone_is_asked_once_and_a_light_one_is_not_asked() {
    let (_folder, book) = book();
    to_the_wheels(&book);
    // The tires were not read, and a light truck is not heavy by its class.
    assert!(next(&book)["two"].is_null());
    ilse(&book, &["lugbook wall RL 'LT245/75R16 120/116S'"]);
    assert!(!next(&book)["two"].is_null());
    ilse(&book, &["lugbook off RL"]);
    assert!(next(&book)["two"].is_null());
}

#[test]
fn a_job_of_ones_own_needs_no_approval_and_its_card_says_so() {
    let (_folder, book) = book();
    ilse(&book, &["lugbook job open 'Red coupe' rotation-on-a-lift air"]);
    let steps = done(&book, "lugbook job steps --json").json();
    let steps: Vec<_> = steps["steps"].as_array().unwrap().iter().map(|step| step["step"].as_str().unwrap()).collect();
    assert!(!steps.contains(&"approval") && !steps.contains(&"damage"), "{steps:?}");
    assert!(card(&book).contains("Own vehicle: no approval was asked."));
    ilse(&book, &["lugbook job park lunch", "lugbook job open 'Orchard truck' rotation-on-a-lift air"]);
    assert_eq!(next(&book)["step"], "vehicle-photo");
}

/// A tread and age check of the class car, from opening to signature.
fn check(book: &Path, km: &str, depth: &str, practice: &str) {
    ilse(book, &[&format!("lugbook job open 'Red coupe' tread-and-age-check {practice}")]);
    ilse(book, &[&format!("lugbook odometer '{km} km'"), "lugbook shelf placard '35 psi' '35 psi' --source label"]);
    for at in ["FL", "RL", "RR", "FR"] {
        ilse(
            book,
            &[
                &format!("lugbook wall {at} '225/45R17 91W DOT 1HKB 9FLP 0723'"),
                &format!("lugbook chalk {at}"),
                &format!("lugbook tread {at} '{depth} {depth} {depth} mm'"),
            ],
        );
    }
    while let Some(line) = next(book)["type"].as_str().map(str::to_owned) {
        let skipped = ["photo", "lamp"].iter().any(|word| line.contains(word));
        ilse(book, &[if skipped { "lugbook skip 'not in this class'" } else { &line }]);
    }
}

#[test]
fn practice_on_the_class_car_stays_out_of_wear_due_dates_history_and_last_times() {
    let (_folder, book) = book();
    check(&book, "10000", "8.0", "");
    check(&book, "20000", "7.0", "");
    let history = done(&book, "lugbook history 'Red coupe'").out;
    let engine = |book: &Path| {
        let host = Box::new(lugbook::engine::SystemHost::default());
        lugbook::engine::Engine::open(book, host, lugbook::words::Speech::default()).unwrap()
    };
    let before = engine(&book).wear(lugbook::words::Speech::default()).unwrap();

    // The class wears the same car down on paper, over and over.
    check(&book, "20500", "3.0", "--practice");
    check(&book, "20600", "2.0", "--practice");
    let practiced = text(&done(&book, "lugbook card --job 4").out);
    assert!(practiced.contains("Practice job: kept out of wear, due dates and history."), "{practiced}");
    // The last time that a practice job speaks of is a real one.
    assert!(
        practiced.contains("Last time") && practiced.contains("7 mm") && !practiced.contains("3 mm"),
        "{practiced}"
    );
    assert_eq!(engine(&book).wear(lugbook::words::Speech::default()).unwrap(), before);
    assert_eq!(done(&book, "lugbook history 'Red coupe'").out, history);
    // An odometer told in practice is none that a real one could fall behind.
    check(&book, "20400", "6.9", "");
    let real = text(&done(&book, "lugbook card --job 5").out);
    assert!(real.contains("7 mm") && !real.contains("3 mm") && !real.contains("2 mm"), "{real}");

    // Nobody is called back for nuts that a class tightened on paper.
    ilse(&book, &["lugbook shelf torque '120 N.m' --studs 5 --recheck '50 km' --source manual --vehicle 'Red coupe'"]);
    for practice in ["--practice", ""] {
        ilse(&book, &[&format!("lugbook job open 'Red coupe' wheel-off-and-on lift hand-tools {practice}")]);
        ilse(&book, &["lugbook tell-recheck", "lugbook job close 'the class is over'"]);
    }
    let open = engine(&book);
    let due = |job: usize| lugbook::report::reminder::rechecks(open.book(), &open.book().jobs[job - 1]).len();
    assert_eq!((due(6), due(7)), (0, 1));
    drop(open);
    let front = done(&book, "lugbook book --json").json();
    assert_eq!((&front["jobs"][1]["practice"], &front["jobs"][0]["practice"]), (&true.into(), &false.into()));
    let due = say(&book, "lugbook export recheck --per-year '12000 km' --job 6");
    assert_eq!(due.sentence(), "This is a practice job: nothing falls due after it.");
}
