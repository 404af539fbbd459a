//! Scenarios given as plain lines, each run as a process of its own.
//!
//! A line under a command says what must come of it: `! 3 SENTENCE` a refusal
//! with its exit code and sentence, `> TEXT` something in the answer. Without
//! one the command must be done.

use std::path::Path;

use crate::program::{done, root, say};

pub fn play(file: &str, book: &Path) {
    let path = root().join("tests/all/scenarios").join(file);
    let text = std::fs::read_to_string(&path).expect("the scenario is there");
    let mut lines = text.lines().enumerate().peekable();
    while let Some((at, line)) = lines.next() {
        if !line.starts_with("lugbook ") {
            assert!(line.is_empty() || line.starts_with('#'), "{file}:{}: {line}", at + 1);
            continue;
        }
        let line = &line.replace("{pictures}", &crate::program::pictures().display().to_string());
        let said = say(book, line);
        let place = format!("{file}:{}: {line}: {said:#?}", at + 1);
        let mut code = 0;
        while let Some((_, expected)) = lines.next_if(|(_, next)| next.starts_with("  ")) {
            let expected = expected.trim_start();
            if let Some(refusal) = expected.strip_prefix("! ") {
                let (number, sentence) = refusal.split_once(' ').unwrap_or((refusal, ""));
                code = number.parse().expect("an exit code");
                let sentence = sentence.replace("{book}", &book.display().to_string());
                assert_eq!(said.sentence(), sentence, "{place}");
            } else {
                let text = expected.strip_prefix("> ").expect("`!` or `>`");
                let flat = said.out.split_whitespace().collect::<Vec<_>>().join(" ");
                assert!(!text.trim().is_empty() && flat.contains(text), "“{text}” in {place}");
            }
        }
        assert_eq!(said.code, Some(code), "{place}");
    }
}

#[test]
fn a_rotation_on_a_lift_in_metric_units_with_comma_decimals_is_signed() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("lift-directional-metric.txt", &book);
    let log = done(&book, "lugbook job log --json").json();
    let sentences: Vec<_> =
        log["log"].as_array().unwrap().iter().map(|line| line["sentence"].as_str().unwrap()).collect();
    // What was typed with a comma is the number it means, in the unit it was read in.
    assert!(sentences.iter().any(|s| s.contains("lowest 3.5 mm")), "{sentences:#?}");
    let front = done(&book, "lugbook book --json").json();
    assert_eq!(front["jobs"][0]["status"], "signed");
}

/// The card of the book's last job, as text without its style.
fn card(book: &Path) -> String {
    let html = done(book, "lugbook card").out;
    html.split("<main>").nth(1).expect("a card").to_owned()
}

#[test]
fn wheels_come_off_for_other_work_and_are_rechecked_until_all_held() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("wheels-off-on-stands.txt", &book);
    let first = done(&book, "lugbook card --job 1").out;
    assert!(first.contains("Taken off and hung where they were: RL and RR."), "{first}");
    let second = done(&book, "lugbook card --job 2").out;
    assert!(second.contains("1 of 4 moved when checked again"), "{second}");
    let third = card(&book);
    assert!(third.contains("4 of 4 held") && third.contains("No further recheck is due"), "{third}");
    // A recheck says nothing of tires that nobody looked at.
    assert!(!third.contains("No tread was measured"), "{third}");
}

#[test]
fn one_wheel_comes_off_on_a_lift_and_goes_back() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("wheel-off-on-lift-metric.txt", &book);
    assert!(card(&book).contains("hung where they were: FL."));
}

#[test]
fn tread_and_age_are_checked_on_the_ground_and_what_is_unsafe_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("tread-check-metric.txt", &book);
    let card = card(&book);
    for said in ["unsafe: do not drive", "work on it declined", "1.4 mm", "The tire pressure lamp is on"] {
        assert!(card.contains(said), "{said}: {card}");
    }
    assert!(!card.contains("Wheel nuts") && !card.contains("approval"), "{card}");
}

#[test]
fn a_spare_goes_on_at_the_roadside_with_at_most_twelve_answers_at_the_road() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    let text = std::fs::read_to_string(root().join("tests/all/scenarios/spare-at-the-roadside.txt")).unwrap();
    let opened = text.find("lugbook job open").expect("a job is opened");
    let (before, visit) = text.split_at(opened);
    for line in before.lines().filter(|line| line.starts_with("lugbook ")) {
        done(&book, line);
    }
    // An answer is a line that brings the job on; it is given at the road unless its step is answered in the van.
    let next = || done(&book, "lugbook job --json").json();
    let (mut at_the_road, mut in_the_van) = (Vec::new(), Vec::new());
    for line in visit.lines().filter(|line| line.starts_with("lugbook ")) {
        let before = next();
        let said = say(&book, line);
        let brought_on = said.code == Some(0) && before["done"] != next()["done"];
        match (brought_on && !line.contains("job open"), before["van"].is_null()) {
            (true, true) => at_the_road.push(line),
            (true, false) => in_the_van.push(line),
            _ => {}
        }
    }
    assert_eq!(done(&book, "lugbook book --json").json()["jobs"][0]["status"], "signed");
    assert!((10..=12).contains(&at_the_road.len()), "{at_the_road:#?}");
    assert!(at_the_road[0].starts_with("lugbook choose"), "it begins with the place: {at_the_road:#?}");
    assert!(in_the_van.len() >= 4, "{in_the_van:#?}");

    let card = card(&book);
    for said in ["50 mph", "by 88 170 mi on the odometer", "spare in place of the flat tire", "52 psi"] {
        assert!(card.replace('\u{202f}', " ").contains(said), "{said}: {card}");
    }
    // The spare is now on the hub and the flat tire on the carrier.
    done(&book, "lugbook job open 'Silver sedan' tread-and-age-check");
    let tasks = done(&book, "lugbook job steps --json").json();
    assert!(tasks["steps"].as_array().unwrap().iter().any(|task| task["at"] == "SP"), "{tasks}");
    let engine = lugbook::engine::Engine::open(
        &book,
        Box::new(lugbook::engine::SystemHost::default()),
        lugbook::words::Speech::default(),
    )
    .unwrap();
    let fitted = &engine.book().vehicles[0].fitted;
    let on = |text: &str| fitted[&lugbook::vehicle::Place::parse(text).unwrap()];
    let looks = |text: &str| engine.book().tires[&on(text)].looks;
    assert!(looks("RR").temporary && !looks("SP").temporary && fitted.len() == 5);
}

#[test]
fn the_roadside_visit_is_told_as_it_must_be() {
    let folder = tempfile::tempdir().unwrap();
    play("spare-at-the-roadside.txt", &folder.path().join("book"));
}

#[test]
fn nobody_starts_on_a_slope_and_the_vehicle_is_towed() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("towed-from-a-slope.txt", &book);
    assert!(card(&book).contains("Reason: towed to level ground."));
}

#[test]
fn a_winter_set_returns_after_two_seasons_and_goes_back_by_its_history() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("winter-set-returns.txt", &book);
    let labels = done(&book, "lugbook label --job 1").out;
    for said in ["class=\"where\">RL<", "6.9 mm", "week 39 of 2021", "2 years, 6 months", "rack B 12", "IM 20"] {
        assert!(labels.contains(said), "{said}: {labels}");
    }
    assert_eq!(labels.matches("<section class=\"label\"").count(), 4);
    // Worn at the front in the winter before, the deeper rear pair comes to the front.
    let card = card(&book);
    for said in ["forward cross", "RL, goes on", "RL, came off", "rack A 3", "Last time: 2024-04-10"] {
        assert!(card.contains(said), "{said}: {card}");
    }
    // What is stored now is the summer set, and it can be brought again.
    done(&book, "lugbook job open 'Blue estate' seasonal-changeover lift air");
    let brought = done(&book, "lugbook set stored").out;
    assert!(brought.contains("The set lies in rack A 3."), "{brought}");
}

#[test]
fn what_is_not_sound_asks_for_a_photo_and_sensors_follow_their_wheels() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    play("found-with-the-wheels-off.txt", &book);
    let card = card(&book);
    for said in [
        "Tire RL, RL to FR:",
        "Pads: 3 mm thick.",
        "Tire: nail in the shoulder.",
        "Boots: grease outside.",
        "by driving",
    ] {
        assert!(card.contains(said), "{said}: {card}");
    }
    // FL went to RL and RL to FR, each with its sensor.
    let flat: String =
        card.split_inclusive('>').filter_map(|part| part.split('<').next()).collect::<Vec<_>>().join("|");
    for moved in [["RL", "FL", "A1F0"], ["FR", "RL", "A1F1"]] {
        let row = moved.iter().map(|cell| format!("|{cell}|")).collect::<Vec<_>>().join("");
        assert!(flat.replace("||", "|").contains(&row.replace("||", "|")), "{row}: {flat}");
    }
    // Everything that one "sound" fills in was looked at, behind the wheel too.
    let log = done(&book, "lugbook job log 1 --json").json();
    let said = |what: &str| {
        log["log"].as_array().unwrap().iter().any(|line| line["sentence"].as_str().unwrap().contains(what))
    };
    assert!(said("FR: damper sound") && said("FR: hub face sound") && said("FL: pads at limit"));
}

#[test]
fn what_must_be_refused_or_held_is_told_in_one_sentence_and_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    play("refusals.txt", &folder.path().join("book"));
}

#[test]
fn a_second_program_on_one_book_is_told_so() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    let host = Box::new(lugbook::engine::SystemHost::default());
    let first = lugbook::engine::Engine::open(&book, host, lugbook::words::Speech::default()).unwrap();
    let second = say(&book, "lugbook job --json");
    assert_eq!(second.code, Some(4), "{second:?}");
    assert_eq!(second.json()["error"]["kind"], "try-again");
    drop(first);
    done(&book, "lugbook job");
}

#[test]
fn the_one_next_thing_names_the_line_to_type_and_that_line_is_understood() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    done(&book, "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own");
    done(&book, "lugbook job open 'Red coupe' rotation-with-jack-and-stands hand-tools");
    let picture = crate::program::pictures().join("sidewall-front-left.jpg");
    let mut steps = 0;
    // What the tool says is typed as it stands, but for the three words that only the yard knows.
    while let Some(line) = done(&book, "lugbook job --json").json()["type"].as_str().map(str::to_owned) {
        let next = done(&book, "lugbook job --json").json();
        let line = line.replace("FILE", &picture.display().to_string()).replace("MANUAL, PAGE", "manual, page 9");
        let line = if line.ends_with("MARK") { hang(&book, &line) } else { line };
        let line = if line == "lugbook choose at-hand" { "lugbook choose none-fitted".to_owned() } else { line };
        let said = say(&book, &line);
        assert_eq!(said.code, Some(0), "{line}: {said:?} at {next:#}");
        steps += 1;
        assert!(steps < 400, "the job comes to an end: {next:#}");
    }
    assert!(steps > 60, "{steps}");
    assert_eq!(done(&book, "lugbook book --json").json()["jobs"][0]["status"], "signed");
}

/// The mark that the plan wants at the corner of a `hang` line: rearward cross.
fn hang(_: &Path, line: &str) -> String {
    let mark = match line.split(' ').nth(2) {
        Some("FL") => "RL",
        Some("FR") => "RR",
        Some("RL") => "FR",
        _ => "FL",
    };
    line.replace("MARK", mark)
}

#[test]
fn a_shops_own_procedure_is_kept_with_the_book_and_a_bad_one_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    done(&book, "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own");
    let built_in = std::fs::read_to_string(root().join("core/procedures/rotation-on-a-lift.toml")).unwrap();
    let own = built_in.replacen("id = \"rotation-on-a-lift\"", "id = \"winter-changeover\"", 1);
    let file = folder.path().join("own.toml");
    std::fs::write(&file, &own).unwrap();
    let add = format!("lugbook procedure add {}", file.display());
    done(&book, &add);
    let kept = std::fs::read_to_string(book.join("procedures/winter-changeover.toml")).unwrap();
    assert_eq!(kept, own);

    // Without the gate before lowering: refused with file and line, and the good one stays.
    std::fs::write(&file, own.replacen("\"all-snug\", ", "", 1)).unwrap();
    let bad = say(&book, &format!("{add} --json"));
    assert_eq!(bad.code, Some(2), "{bad:?}");
    assert!(bad.json()["error"]["at"].as_str().unwrap().contains("own.toml:"), "{bad:?}");
    assert_eq!(std::fs::read_to_string(book.join("procedures/winter-changeover.toml")).unwrap(), own);

    // A kept file that was spoiled since is told and left out; the rest of the book can be used.
    std::fs::write(book.join("procedures/spoiled.toml"), "id = 3").unwrap();
    let front = say(&book, "lugbook book --json");
    assert!(front.code == Some(0) && front.err.contains("spoiled.toml"), "{front:?}");
    std::fs::remove_file(book.join("procedures/spoiled.toml")).unwrap();

    // An id that would lead out of the folder.
    std::fs::write(&file, own.replacen("winter-changeover", "../../escaped", 1)).unwrap();
    assert_eq!(say(&book, &add).code, Some(2));
    assert!(!folder.path().join("escaped.toml").exists());

    let list = done(&book, "lugbook procedure list --json").json();
    let ids: Vec<_> = list["procedures"].as_array().unwrap().iter().map(|p| p["id"].as_str().unwrap()).collect();
    let mut known: Vec<String> = lugbook::procedure::built_in().unwrap().into_iter().map(|p| p.id).collect();
    known.push("winter-changeover".to_owned());
    assert_eq!(ids, known);
    done(&book, "lugbook job open 'Red coupe' winter-changeover air");
    assert_eq!(done(&book, "lugbook job --json").json()["step"], "lock-key");
}

#[test]
fn a_rescue_at_opening_is_told_once_and_the_question_is_answered() {
    use std::io::{Seek, Write};
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    let mut file = std::fs::OpenOptions::new().write(true).open(book.join("book.db")).unwrap();
    file.seek(std::io::SeekFrom::Start(0)).unwrap();
    file.write_all(&[0; 16]).unwrap();
    drop(file);
    let told = say(&book, "lugbook person list --json");
    assert_eq!(told.code, Some(0), "{told:?}");
    for part in ["damaged", "One entry was brought back", "did not come back", "damaged-"] {
        assert!(told.err.contains(part), "{part}: {told:?}");
    }
    assert_eq!(told.json()["people"].as_array().map(Vec::len), Some(1));
    assert_eq!(say(&book, "lugbook person list --json").err, "");
}
