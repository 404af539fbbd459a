//! The last command comes back filled; what was put away comes back; what is erased is gone from the files.

use std::path::Path;

use lugbook::engine::{Calibrations, Command, Engine, Erased, Kept, Papers, TroubleKind};
use lugbook::entry::{Fact, Personal, Role};
use lugbook::vehicle::Class;
use lugbook::words::Speech;

use crate::engine::{act, open, text};
use crate::program::{done, say};

/// A book with two people, a truck with a plate, and an open job.
fn begun(engine: &mut Engine) {
    for (name, role) in [("Wren Castellan", Role::Mechanic), ("Ash Merriwether", Role::Customer)] {
        act(engine, Command::AddPerson { name: text(name), role, phone: Some(text("555 0142")) });
    }
    let command = Command::AddVehicle {
        name: text("orchard truck"),
        model: text("Harrow 1500 2019"),
        class: Class::LightTruck,
        axles: vec![],
        has: None,
        spare: true,
        own: false,
        plate: Some(text("ORCHARD 7")),
    };
    act(engine, command);
    act(
        engine,
        Command::AddTool {
            name: text("wrench"),
            papers: Papers::Wrench {
                accuracy: text("4 %"),
                step: text("1 N.m"),
                range: None,
                calibration: Calibrations::default(),
            },
        },
    );
    let command = Command::OpenJob {
        vehicle: text("orchard truck"),
        procedure: text("rotation-on-a-lift"),
        circumstances: vec![text("electric")],
        practice: false,
    };
    act(engine, command);
}

fn undone(engine: &mut Engine) -> (Vec<String>, Option<Command>) {
    let change = engine.act(None, Command::Undo, Speech::default()).unwrap();
    (change.said, change.again)
}

fn refused(engine: &mut Engine, command: Command) -> String {
    let trouble = engine.act(None, command, Speech::default()).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::MendInput, "{trouble:?}");
    trouble.sentence
}

fn odometer(engine: &Engine) -> &'static str {
    let tasks = engine.tasks(Speech::default());
    tasks.iter().find(|task| task.step == "odometer").unwrap().state
}

#[test]
fn the_last_command_is_taken_back_whole_and_its_step_comes_back_filled() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begun(&mut engine);
    act(&mut engine, Command::Answer { step: Some(text("lock-key")), at: None, answer: text("none-fitted") });
    assert_eq!(odometer(&engine), "ready");
    let said = Command::Odometer { reading: text("84210 mi"), estimated: true, replaced: false };
    act(&mut engine, said.clone());
    assert_eq!(odometer(&engine), "done");
    let (told, again) = undone(&mut engine);
    assert_eq!(again, Some(said.clone()));
    assert!(told[0].starts_with("Taken back: ") && told[0].contains("210 mi"), "{told:?}");
    assert_eq!(odometer(&engine), "ready", "the step is open again");
    assert_eq!(engine.book().jobs[0].odometer(), None);
    // Said again it stands, and is taken back again.
    act(&mut engine, again.unwrap());
    assert!(engine.book().jobs[0].odometer().is_some());
    undone(&mut engine);
    // The next is the one before it; both values stay in the log of entries.
    let (_, again) = undone(&mut engine);
    let answer = Command::Answer { step: Some(text("lock-key")), at: None, answer: text("none-fitted") };
    assert_eq!(again, Some(answer));
    let card = engine.card(None, Speech::default()).unwrap();
    assert!(card.contains("taken back right away") && card.contains("Taken back"));
    drop(engine);
    let engine = open(folder.path());
    assert_eq!(engine.book().jobs[0].odometer(), None);
    assert!(engine.check(Speech::default()).unwrap().ok);
}

#[test]
fn a_command_of_many_entries_goes_and_an_opened_job_goes_until_nothing_is_left() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begun(&mut engine);
    let listed = engine.undo_list(Speech::default()).unwrap();
    assert_eq!(listed.len(), 5, "{listed:#?}");
    assert_eq!(listed[2].said.len(), 6, "a vehicle and its five tires in one go");
    undone(&mut engine);
    assert!(engine.book().jobs.is_empty());
    undone(&mut engine);
    let (told, _) = undone(&mut engine);
    assert!(engine.book().vehicles.is_empty() && told.last().unwrap().contains("3 more entries"), "{told:?}");
    undone(&mut engine);
    undone(&mut engine);
    assert!(engine.book().people.is_empty());
    assert!(engine.undo_list(Speech::default()).unwrap().is_empty());
    let trouble = engine.act(None, Command::Undo, Speech::default()).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::MendInput);
    // And the book is begun anew, in the same files.
    begun(&mut engine);
    assert_eq!(engine.book().jobs.len(), 1);
}

#[test]
fn a_correction_taken_back_leaves_the_one_before_it_and_a_withdrawal_taken_back_leaves_the_line() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begun(&mut engine);
    act(&mut engine, Command::Complain { text: text("pulls left") });
    let line = engine.book().jobs[0].lines.len();
    let stands = |engine: &Engine| {
        engine.book().jobs[0].last(|fact| match fact {
            Fact::ComplaintHeard { complaint, .. } => Some(complaint.text.clone()),
            _ => None,
        })
    };
    for value in ["pulls right", "pulls to the right"] {
        act(&mut engine, Command::Correct { line, value: text(value), reason: text("misheard") });
    }
    assert_eq!(stands(&engine).as_deref(), Some("pulls to the right"));
    undone(&mut engine);
    assert_eq!(stands(&engine).as_deref(), Some("pulls right"));
    undone(&mut engine);
    assert_eq!(stands(&engine).as_deref(), Some("pulls left"));
    act(&mut engine, Command::Withdraw { line, reason: text("another car") });
    assert_eq!(stands(&engine), None);
    undone(&mut engine);
    assert_eq!(stands(&engine).as_deref(), Some("pulls left"));
    undone(&mut engine);
    assert_eq!(stands(&engine), None);
}

#[test]
fn what_is_put_away_is_refused_until_it_comes_back_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begun(&mut engine);
    let archive = |kept, name: &str| Command::Archive { kept, name: text(name), reason: text("sold") };
    let back = |kept, name: &str| Command::BringBack { kept, name: text(name) };
    assert!(refused(&mut engine, archive(Kept::Vehicle, "orchard truck")).contains("still running"));
    assert!(refused(&mut engine, archive(Kept::Person, "Wren Castellan")).contains("Nobody else"));
    act(&mut engine, Command::CloseJob { reason: text("the customer left") });
    act(&mut engine, Command::AddPerson { name: text("Ilse Marwitz"), role: Role::Mechanic, phone: None });
    let with = |engine: &mut Engine, command| {
        engine.act(Some("Ilse Marwitz"), command, Speech::default()).unwrap_or_else(|why| panic!("{why:?}"))
    };
    for (kept, name) in [
        (Kept::Vehicle, "orchard truck"),
        (Kept::Set, "orchard truck"),
        (Kept::Person, "Wren Castellan"),
        (Kept::Tool, "wrench"),
    ] {
        with(&mut engine, archive(kept, name));
    }
    let front = engine.front(Speech::default());
    assert!(front.vehicles.is_empty() && front.people.len() == 2, "{front:#?}");
    assert_eq!(front.archived.len(), 4, "{:?}", front.archived);
    let job = Command::OpenJob {
        vehicle: text("orchard truck"),
        procedure: text("rotation-on-a-lift"),
        circumstances: vec![text("electric")],
        practice: false,
    };
    assert!(refused(&mut engine, job.clone()).contains("put away"));
    let as_wren = engine.act(Some("Wren Castellan"), back(Kept::Vehicle, "orchard truck"), Speech::default());
    assert!(as_wren.unwrap_err().sentence.contains("put away"));
    // It stays so when the book is read again, and comes back with all that was done.
    drop(engine);
    let mut engine = crate::proof::open_at(folder.path(), None, 1_000_000);
    for (kept, name) in [
        (Kept::Vehicle, "orchard truck"),
        (Kept::Set, "orchard truck"),
        (Kept::Person, "Wren Castellan"),
        (Kept::Tool, "wrench"),
    ] {
        with(&mut engine, back(kept, name));
        let again = engine.act(Some("Ilse Marwitz"), back(kept, name), Speech::default());
        assert!(again.unwrap_err().sentence.contains("Nothing of that name"));
    }
    assert!(engine.front(Speech::default()).archived.is_empty());
    assert_eq!(engine.front(Speech::default()).jobs.len(), 1);
    engine.act(Some("Wren Castellan"), job, Speech::default()).unwrap();
}

/// How often some text stands in the files of a folder, whatever they are.
fn traces(folder: &Path, what: &str) -> usize {
    let mut count = 0;
    for entry in std::fs::read_dir(folder).unwrap().map(Result::unwrap) {
        if entry.path().is_dir() {
            count += traces(&entry.path(), what);
        } else {
            let bytes = std::fs::read(entry.path()).unwrap();
            count += bytes.windows(what.len()).filter(|window| *window == what.as_bytes()).count();
        }
    }
    count
}

#[test]
fn an_erased_customer_is_gone_from_the_files_and_the_answers_and_the_book_still_verifies() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begun(&mut engine);
    act(&mut engine, Command::Approve { approved: true, by: Some(text("Ash Merriwether")), drawn: None });
    let drawn = Some(text("11,222 333,444 555,666"));
    act(&mut engine, Command::UnsafeTold { accepts: true, by: Some(text("Ash Merriwether")), drawn });
    let card = engine.card(None, Speech::default()).unwrap();
    assert!(card.contains("Drawn signature: Ash Merriwether") && card.contains("M33 222L999 444L1665 666"));
    let personal = ["Ash Merriwether", "ORCHARD 7", "11,222 333,444"];
    assert!(personal.iter().all(|what| traces(folder.path(), what) > 0));
    let said = engine.erase(Erased::Person, "ash merriwether", Speech::default()).unwrap();
    assert!(said[0].contains("3 entries") && said[1].contains("still hold it"), "{said:?}");
    engine.erase(Erased::Plate, "orchard truck", Speech::default()).unwrap();
    for what in personal {
        assert_eq!(traces(folder.path(), what), 0, "{what}");
    }
    // The answers of the same program are without it, and so are those of the next.
    for engine in [engine, open_again(folder.path())] {
        let front = serde_json::to_string(&engine.front(Speech::default())).unwrap();
        let card = engine.card(None, Speech::default()).unwrap();
        assert!(personal.iter().all(|what| !front.contains(what) && !card.contains(what)));
        assert!(!card.contains("Drawn signature") && card.contains("approved by a drawn signature"));
        assert!(engine.check(Speech::default()).unwrap().ok);
        assert!(engine.verify(Speech::default()).unwrap().ok);
    }
    let mut engine = open(folder.path());
    let again = engine.erase(Erased::Person, "Ash Merriwether", Speech::default()).unwrap_err();
    assert_eq!(again.kind, TroubleKind::MendInput);
    // The other person's number is there.
    assert!(traces(folder.path(), "555 0142") > 0);
    // Older files of the book are named: they still hold it.
    std::fs::write(folder.path().join("book-of-version-1-2026-05-04-0915.db"), "x").unwrap();
    let said = engine.erase(Erased::Person, "Wren Castellan", Speech::default()).unwrap();
    assert!(said.iter().any(|sentence| sentence.contains("book-of-version-1-2026-05-04-0915.db")), "{said:?}");
}

fn open_again(folder: &Path) -> Engine {
    // The first is closed by the time this one is asked: the lock is waited for.
    let copy = folder.with_extension("copy");
    std::fs::create_dir(&copy).unwrap();
    for name in ["book.db", "book.db-wal", "book.seen"] {
        if folder.join(name).exists() {
            std::fs::copy(folder.join(name), copy.join(name)).unwrap();
        }
    }
    let engine = open(&copy);
    std::fs::remove_dir_all(&copy).unwrap();
    engine
}

#[test]
fn nothing_personal_is_in_what_gets_into_a_log() {
    let folder = tempfile::tempdir().unwrap();
    let mut engine = open(folder.path());
    begun(&mut engine);
    act(&mut engine, Command::Approve { approved: true, by: Some(text("Ash Merriwether")), drawn: None });
    let personal = ["Castellan", "Merriwether", "ORCHARD 7", "555 0142", "0123456789", "11,22"];
    let part = Personal {
        name: Some(text("Wren Castellan")),
        phone: Some(text("555 0142")),
        plate: Some(text("ORCHARD 7")),
        drawn: Some(text("11,22 33,44")),
        ..Personal::salted(*b"0123456789abcdef")
    };
    let commands = [
        Command::AddPerson { name: text("Wren Castellan"), role: Role::Mechanic, phone: Some(text("555 0142")) },
        Command::Approve { approved: true, by: Some(text("Ash Merriwether")), drawn: Some(text("11,22 33,44")) },
        Command::Hands { person: text("Wren Castellan") },
    ];
    let mut shown =
        vec![format!("{part:?}"), format!("{engine:?}"), format!("{:?}", engine.book()), format!("{commands:?}")];
    drop(engine);
    // What goes wrong with the book, as the program and its makers see it.
    let opening = lugbook::store::Opening {
        stream: lugbook::ident::StreamId::from_parts(9, [9; 10]),
        now: lugbook::calendar::Moment::from_unix_ms(1_790_000_000_000),
    };
    let (store, opened) = lugbook::store::Store::open(folder.path(), opening).unwrap();
    let entries = store.entries().unwrap();
    shown.push(format!("{opened:?} {store:?} {entries:?}"));
    let named = entries.iter().find(|entry| entry.personal().is_some()).unwrap();
    let envelope = named.envelope().clone();
    let other = lugbook::entry::Draft {
        id: envelope.id,
        author: envelope.author,
        practice: false,
        fact: envelope.fact,
        personal: Some(part),
    };
    let why = store.append(vec![other], opening.now).unwrap_err();
    shown.push(format!("{why:?} {why} {}", serde_json::to_string(&why).unwrap()));
    store.close().unwrap();
    let conn = rusqlite::Connection::open(folder.path().join("book.db")).unwrap();
    conn.execute("UPDATE personal SET name = 'Wren Castellan the other' WHERE name IS NOT NULL", []).unwrap();
    drop(conn);
    let (store, _) = lugbook::store::Store::open(folder.path(), opening).unwrap();
    let why = store.entries().unwrap_err();
    let check = store.check().unwrap();
    shown.push(format!("{why:?} {why} {check:?} {}", serde_json::to_string(&check).unwrap()));
    for text in &shown {
        assert!(!text.is_empty());
        for what in personal {
            assert!(!text.contains(what), "{what} in {text}");
        }
    }
}

#[test]
fn the_program_takes_back_lists_and_says_the_line_to_type() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    for line in [
        "lugbook person add 'Ilse Marwitz'",
        "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own",
        "lugbook job open 'Red coupe' rotation-on-a-lift air",
        "lugbook complain 'it pulls to the left'",
        "lugbook odometer '84210 mi'",
    ] {
        done(&book, line);
    }
    let list = done(&book, "lugbook undo list --json").json();
    assert_eq!(list["commands"].as_array().unwrap().len(), 5, "{list}");
    let said = done(&book, "lugbook undo");
    assert!(said.out.starts_with("Again  lugbook odometer '84210 mi'\n"), "{}", said.out);
    assert!(said.out.contains("Next"), "{}", said.out);
    let data = done(&book, "lugbook undo --json").json();
    assert_eq!(data["type"], "lugbook complain 'it pulls to the left'");
    assert_eq!(data["again"]["do"], "complain");
    // The line that is said can be typed.
    done(&book, data["type"].as_str().unwrap());
    done(&book, "lugbook job close 'the customer left'");
    done(&book, "lugbook archive vehicle 'Red coupe' sold");
    assert!(done(&book, "lugbook book").out.contains("Put away"));
    let told = say(&book, "lugbook job open 'Red coupe' rotation-on-a-lift air");
    assert_eq!(told.code, Some(2), "{told:?}");
    done(&book, "lugbook bring-back vehicle 'Red coupe'");
    let told = done(&book, "lugbook erase person 'Ilse Marwitz'");
    assert!(told.out.contains("Backups, copies and cards made before still hold it"), "{}", told.out);
    assert!(!done(&book, "lugbook book").out.contains("Marwitz"));
}
