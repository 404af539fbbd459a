//! Learning: why a decision is so, answers given first, what an instructor signs, the logbook to hand in.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};

use lugbook::calendar::Moment;
use lugbook::engine::{Code, Command, Engine, Host, Trouble, TroubleKind};
use lugbook::entry::{Arm, Fact, Learned, Role};
use lugbook::learning::agrees;
use lugbook::report::bundle::BundleError;
use lugbook::vehicle::Class;
use lugbook::words::Speech;
use proptest::prelude::*;
use serde_json::Value;
use tempfile::TempDir;

use crate::demo::normal;
use crate::program::{Said, pictures, process};
use crate::report::text;

const INSTRUCTOR: &str = "Ada Lund";
const LEARNER: &str = "Kit Marlowe";
const CODE: &str = "739204";

/// A line said by somebody, or by nobody yet, at a time that does not move, with what is piped in.
fn told(book: &Path, who: &str, lang: &str, line: &str, piped: &str) -> Said {
    let mut process = process(book, line);
    if !who.is_empty() {
        process.env("LUGBOOK_AS", who);
    }
    process.env("LUGBOOK_LANG", lang).env("LUGBOOK_AT", "2026-11-24T09:15:00Z");
    process.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = process.spawn().expect("the program runs");
    // A program that asks for nothing may have ended before it is told.
    let _ = child.stdin.take().expect("a pipe").write_all(piped.as_bytes());
    child.wait_with_output().expect("an end").into()
}

fn say(book: &Path, who: &str, line: &str) -> Said {
    told(book, who, "en", line, "")
}

fn done(book: &Path, who: &str, line: &str) -> String {
    let said = say(book, who, line);
    assert_eq!(said.code, Some(0), "{line}: {said:?}");
    said.out.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn kit(book: &Path, lines: &[&str]) -> String {
    lines.iter().fold(String::new(), |_, line| done(book, LEARNER, line))
}

fn next(book: &Path) -> Value {
    say(book, LEARNER, "lugbook job --json").json()
}

/// A class: an instructor with a code, an apprentice, a car, a wrench and a gauge.
fn class() -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    for line in [
        "lugbook person add 'Ada Lund' --role instructor",
        "lugbook person add 'Kit Marlowe' --role apprentice",
        "lugbook vehicle add 'Class car' --model 'Lerche 30, 2018' --own --has neither",
        "lugbook vehicle add 'Orchard truck' --class light-truck --model 'Yardmule 25, 2006' --plate 'ORCH 12' --has neither",
        "lugbook tool wrench 'Long wrench' --accuracy 4% --step '1 N.m' --range '40..200 N.m' --calibrated 2026-03-02",
        "lugbook tool gauge 'Brass gauge' --step '0.1 mm'",
    ] {
        let who = if line.contains("Ada Lund") { "" } else { INSTRUCTOR };
        let said = say(&book, who, line);
        assert_eq!(said.code, Some(0), "{line}: {said:?}");
    }
    let set = told(&book, INSTRUCTOR, "en", "lugbook instructor code 'Ada Lund'", &format!("{CODE}\n"));
    assert!(set.code == Some(0) && set.out.contains("kept as a hash"), "{set:?}");
    (folder, book)
}

/// From the opening of a practice job to the choice of moves.
fn to_the_plan(book: &Path, first: bool) {
    kit(book, &["lugbook job open 'Class car' rotation-on-a-lift hand-tools --practice"]);
    if first {
        kit(book, &["lugbook answer-first on"]);
    }
    kit(
        book,
        &[
            "lugbook choose none-fitted",
            "lugbook odometer '20100 km'",
            "lugbook lamp off",
            "lugbook shelf placard '2.3 bar' '2.3 bar' --source 'door label'",
            "lugbook shelf torque '110..130 N.m' --studs 5 --source 'manual, page 9'",
            "lugbook count 5",
            "lugbook hub RL shaft",
            "lugbook hub RR shaft",
            "lugbook hub FL no-shaft",
            "lugbook hub FR no-shaft",
            "lugbook skip 'no camera' --step sidewall-photo",
        ],
    );
    for at in ["FL", "RL", "RR", "FR"] {
        kit(
            book,
            &[
                &format!("lugbook wall {at} '225/45R17 91W DOT 1HKB 9FLP 0723'"),
                &format!("lugbook chalk {at}"),
                &format!("lugbook tread {at} '7.0 6.8 7.1 mm'"),
            ],
        );
    }
}

/// From the choice of moves to the wheel that hangs first.
fn to_the_nuts(book: &Path) {
    kit(
        book,
        &[
            "lugbook plan choose 1",
            "lugbook seen --step ready",
            "lugbook weigh '1780 kg' --rated '4 t'",
            "lugbook seen",
            "lugbook raise clear",
            "lugbook seen",
            "lugbook raise full",
            "lugbook held",
        ],
    );
    for at in ["FL", "RL", "RR", "FR"] {
        kit(book, &[&format!("lugbook off {at}")]);
    }
    for at in ["FL", "RL", "RR", "FR"] {
        kit(book, &[&format!("lugbook look {at} sound")]);
    }
    kit(book, &["lugbook hang FL RL", "lugbook start FL"]);
}

/// From the first wheel's nuts to the vehicle on its wheels.
fn to_the_ground(book: &Path) {
    kit(book, &["lugbook snug FL"]);
    for (at, mark) in [("RL", "FR"), ("RR", "FL"), ("FR", "RR")] {
        kit(
            book,
            &[&format!("lugbook hang {at} {mark}"), &format!("lugbook start {at}"), &format!("lugbook snug {at}")],
        );
    }
    kit(book, &["lugbook count 0", "lugbook clear-under", "lugbook lower"]);
}

/// From the ground to the signature.
fn to_the_signature(book: &Path) {
    for at in ["FL", "RL", "RR", "FR"] {
        kit(book, &[&format!("lugbook torque {at} moved")]);
    }
    for at in ["FL", "RL", "RR", "FR"] {
        kit(book, &[&format!("lugbook air {at} '2.3 bar'")]);
    }
    kit(book, &["lugbook lamp off", "lugbook choose not-needed", "lugbook tell-recheck"]);
}

fn whole_job(book: &Path) {
    to_the_plan(book, false);
    to_the_nuts(book);
    to_the_ground(book);
    to_the_signature(book);
}

fn sign(book: &Path, more: &str, code: &str) -> Said {
    told(book, LEARNER, "en", &format!("lugbook instructor sign 'Ada Lund' {more}"), &format!("{code}\n"))
}

#[test]
fn a_learner_answers_first_and_nothing_shows_the_answer_before() {
    let (folder, book) = class();
    to_the_plan(&book, true);
    // The drive step is over, and nobody was told what it came to.
    let log = say(&book, LEARNER, "lugbook job log --json").out;
    assert!(!log.contains("rear drive") && !log.contains("The rear drives"), "{log}");
    assert_eq!(
        (say(&book, LEARNER, "lugbook drive").code, say(&book, LEARNER, "lugbook why drive").code),
        (Some(3), Some(3))
    );
    let card = text(&say(&book, LEARNER, "lugbook card").out);
    assert!(card.contains("drive not known") && !card.contains("rear drive"), "{card}");
    assert_eq!(next(&book)["answer_first"], "drive");
    assert_eq!(next(&book)["type"], "lugbook answer drive ANSWER");
    assert_eq!(say(&book, LEARNER, "lugbook plan choose 1").sentence(), "Say first which axles drive.");
    let both = kit(&book, &["lugbook answer drive front"]);
    assert!(both.contains("Which axles drive: learner front drive, Lugbook rear drive: not the same."), "{both}");
    assert_eq!(
        say(&book, LEARNER, "lugbook answer drive rear").sentence(),
        "That was answered already. The first answer stands."
    );
    assert!(kit(&book, &["lugbook drive"]).contains("The rear drives."));

    // The pattern, the order, the setting: each held until it is answered, each shown after.
    assert_eq!(say(&book, LEARNER, "lugbook plan").sentence(), "Say first which pattern you would choose.");
    let both = kit(&book, &["lugbook answer pattern rearward-cross"]);
    assert!(both.contains("learner rearward cross, Lugbook rearward cross: the same."), "{both}");
    to_the_nuts(&book);
    assert!(next(&book)["nuts"].is_null(), "{:#}", next(&book));
    assert_eq!(say(&book, LEARNER, "lugbook snug FL").code, Some(3));
    let both = kit(&book, &["lugbook answer order 1 4 2 5 3"]);
    assert!(both.contains("Lugbook 1 3 5 2 4: the same."), "mirrored it is the same star: {both}");
    assert_eq!(next(&book)["nuts"]["order"], serde_json::json!([1, 3, 5, 2, 4]));
    to_the_ground(&book);
    let held = next(&book);
    assert!(held["nuts"]["target"].is_null() && held["answer_first"] == "target", "{held:#}");
    assert_eq!(say(&book, LEARNER, "lugbook torque FL moved").code, Some(3));
    let both = kit(&book, &["lugbook answer target '100 N.m'"]);
    assert!(both.contains("learner 100 N·m, Lugbook 120 N·m: not the same."), "{both}");
    assert_eq!(next(&book)["nuts"]["target"]["value"], 120.0);

    // Both answers stay in the book, as they were then.
    let host = Box::new(lugbook::engine::SystemHost::default());
    let engine = Engine::open(&book, host, Speech::default()).unwrap();
    let kept: Vec<&Learned> = engine.book().jobs[0]
        .lines
        .iter()
        .filter_map(|line| match &line.fact {
            Fact::AnswerGiven { learned, .. } => Some(learned),
            _ => None,
        })
        .collect();
    assert_eq!(
        kept.iter().map(|learned| agrees(learned)).collect::<Vec<_>>(),
        [Some(false), Some(true), Some(true), Some(false)]
    );
    drop(engine);
    let card = text(&say(&book, LEARNER, "lugbook card").out);
    assert!(card.contains("The learner answered before Lugbook did.") && card.contains("front drive"), "{card}");
    drop(folder);
}

#[test]
fn an_answer_is_read_as_its_decision_wants_it_and_a_gate_may_be_opened_instead() {
    let (_folder, book) = class();
    kit(&book, &["lugbook job open 'Class car' rotation-lift-by-lift hand-tools"]);
    assert_eq!(say(&book, LEARNER, "lugbook answer drive rear").code, Some(2), "nobody asked for answers first");
    kit(&book, &["lugbook answer-first on"]);
    for line in ["drive sideways", "drive unknown", "order 1 2 3", "target 5", "lifts", "pattern zigzag"] {
        assert!(matches!(say(&book, LEARNER, &format!("lugbook answer {line}")).code, Some(2 | 3)), "{line}");
    }
    // What the core can't answer yet is not asked of the learner either.
    let early = say(&book, LEARNER, "lugbook answer lifts FL RL RR FR");
    assert_eq!(
        (early.code, early.sentence()),
        (Some(3), "Lugbook has no answer to compare with yet. Bring the job on first.")
    );
    kit(&book, &["lugbook answer-first off"]);
    assert_eq!(say(&book, LEARNER, "lugbook drive").code, Some(0));
}

/// Brings a job that is worked lift by lift to its first action, answers asked first.
fn to_the_lifts(book: &Path) {
    kit(book, &["lugbook job open 'Class car' rotation-lift-by-lift hand-tools", "lugbook answer-first on"]);
    for _ in 0..60 {
        let next = next(book);
        if next["answer_first"] == "lifts" {
            return;
        }
        let line = next["type"].as_str().unwrap_or_else(|| panic!("{next:#}")).to_owned();
        let line = match line.as_str() {
            "lugbook choose at-hand" => "lugbook choose none-fitted".to_owned(),
            "lugbook answer drive ANSWER" => "lugbook answer drive rear".to_owned(),
            "lugbook answer pattern ANSWER" => "lugbook answer pattern rearward-cross".to_owned(),
            line if line.contains("photo") => "lugbook skip 'no camera'".to_owned(),
            line => line.replace("MANUAL, PAGE", "manual, page 9"),
        };
        kit(book, &[&line]);
    }
    panic!("{:#}", next(book));
}

#[test]
fn the_order_of_lifts_is_answered_first_and_then_shown_beside() {
    let (_folder, book) = class();
    to_the_lifts(&book);
    // Neither the plan of lifts nor the list of steps gives it away.
    assert_eq!(say(&book, LEARNER, "lugbook job --json").json()["turn"], Value::Null);
    let steps = say(&book, LEARNER, "lugbook job steps --json").json();
    let raises =
        steps["steps"].as_array().unwrap().iter().filter(|step| step["sentence"].as_str().unwrap().contains("Raise"));
    assert_eq!(raises.count(), 0, "{steps:#}");
    assert_eq!(
        say(&book, LEARNER, "lugbook why lifts").sentence(),
        "Say first what is raised, one lift after another."
    );
    let both = kit(&book, &["lugbook answer lifts FL RL FR RR"]);
    assert!(both.contains("Order of lifts: learner FL, RL, FR, RR, Lugbook"), "{both}");
    let why = kit(&book, &["lugbook why lifts"]);
    assert!(
        why.contains("lifts do it") && why.contains("Raise to working height.") && why.contains("Gear at hand"),
        "{why}"
    );
    assert!(!say(&book, LEARNER, "lugbook job --json").json()["turn"].is_null());
}

#[test]
fn each_decision_says_why_with_evidence_rule_and_source() {
    let (_folder, book) = class();
    to_the_plan(&book, false);
    let mut page = String::new();
    for lang in ["en", "es"] {
        for decision in ["drive", "pattern", "order", "target"] {
            let said = told(&book, LEARNER, lang, &format!("lugbook why {decision}"), "");
            assert_eq!(said.code, Some(0), "{said:?}");
            page.push_str(&format!("$ lugbook why {decision}\n{}\n", said.out));
        }
    }
    insta::assert_snapshot!("why", page);
    let early = say(&book, LEARNER, "lugbook why lifts");
    assert_eq!((early.code, early.sentence()), (Some(2), "There is no order of lifts in this job yet."));
    // What a manual gives stands above what was seen, and is named.
    kit(
        &book,
        &["lugbook shelf pattern x --source 'manual, page 14'", "lugbook shelf drive all --source 'manual, page 3'"],
    );
    assert!(kit(&book, &["lugbook why pattern"]).contains("Source manual, page 14"));
    let drive = say(&book, LEARNER, "lugbook why drive --json").json();
    assert_eq!(
        (drive["answer"].as_str(), &drive["source"]),
        (Some("The manual decides: all-wheel drive."), &serde_json::json!(["manual, page 3"]))
    );
}

#[test]
fn an_apprentices_job_is_signed_only_when_an_instructor_saw_what_must_be_seen() {
    let (_folder, book) = class();
    whole_job(&book);
    let held = say(&book, LEARNER, "lugbook job sign");
    let sentence = "Locks or stands holding: no instructor has signed it. Ask for a look and a signature.";
    assert_eq!((held.code, held.sentence()), (Some(3), sentence));
    assert_eq!(next(&book)["type"], "lugbook instructor sign \"Ada Lund\"");
    let waiting = say(&book, LEARNER, "lugbook instructor waiting --json").json();
    let waiting: Vec<_> =
        waiting["waiting"].as_array().unwrap().iter().map(|line| line["text"].as_str().unwrap()).collect();
    let finals = ["FL: final torque", "RL: final torque", "RR: final torque", "FR: final torque"];
    assert_eq!(waiting[..2], ["locks or stands holding", "all clear before lowering"]);
    assert_eq!(waiting[2..], finals);

    let one = sign(&book, "final --where FL", CODE);
    assert!(one.out.starts_with("Ada Lund signed as seen: FL: final torque."), "{one:?}");
    // What is done again has to be seen again.
    kit(&book, &["lugbook torque FL 2 moved"]);
    let waiting = say(&book, LEARNER, "lugbook instructor waiting --json").json();
    assert_eq!(waiting["waiting"].as_array().unwrap().len(), 6, "{waiting:#}");
    let all = sign(&book, "", CODE);
    assert_eq!(all.code, Some(0), "{all:?}");
    assert_eq!(sign(&book, "", CODE).sentence(), "Nothing that an apprentice did waits for such a signature.");
    kit(&book, &["lugbook job sign"]);
    let card = text(&say(&book, LEARNER, "lugbook card").out);
    assert!(card.contains("Signed on the learner's device, with the instructor's code."), "{card}");
    assert!(card.contains("Signed by") && !card.contains("not signed"), "{card}");
}

#[test]
fn only_an_apprentices_own_hands_are_to_be_seen() {
    let (_folder, book) = class();
    // The instructor's own hands do what must be seen; the apprentice does the rest.
    to_the_plan(&book, false);
    kit(&book, &["lugbook plan choose 1", "lugbook seen --step ready", "lugbook weigh '1780 kg' --rated '4 t'"]);
    kit(&book, &["lugbook seen", "lugbook raise clear", "lugbook seen", "lugbook raise full"]);
    kit(&book, &["lugbook hands 'Ada Lund'", "lugbook held", "lugbook hands 'Kit Marlowe'", "lugbook off FL"]);
    let waiting = say(&book, LEARNER, "lugbook instructor waiting --json").json();
    assert_eq!(waiting["waiting"], serde_json::json!([]));
}

#[test]
fn a_shop_without_an_instructor_is_not_held_and_its_card_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    crate::program::done(&book, "lugbook person add 'Kit Marlowe' --role apprentice");
    kit(&book, &["lugbook vehicle add 'Class car' --model 'Lerche 30, 2018' --own --has neither"]);
    kit(&book, &["lugbook tool wrench 'Long wrench' --accuracy 4% --step '1 N.m'"]);
    whole_job(&book);
    kit(&book, &["lugbook job sign"]);
    let card = text(&say(&book, LEARNER, "lugbook card").out);
    assert!(card.contains("not signed: no instructor is in this book"), "{card}");
    assert!(!card.contains("Signed on the learner's device"), "{card}");
}

#[test]
fn at_the_end_of_class_one_code_signs_every_job_and_a_reason_opens_the_gate() {
    let (_folder, book) = class();
    let to_held = |vehicle: &str| {
        kit(&book, &[&format!("lugbook job open '{vehicle}' wheel-off-and-on lift hand-tools --practice")]);
        for _ in 0..30 {
            let line = next(&book)["type"].as_str().unwrap().to_owned();
            if line == "lugbook off RL" {
                return;
            }
            let line = line.replace("at-hand", "none-fitted").replace("MANUAL, PAGE", "manual, page 9");
            kit(&book, &[&line.replace("photo vehicle FILE", "skip 'no camera today'")]);
        }
        panic!("{:#}", next(&book));
    };
    to_held("Class car");
    kit(&book, &["lugbook job park 'the next one has the lift'"]);
    to_held("Orchard truck");
    let waiting = say(&book, LEARNER, "lugbook instructor waiting --json").json();
    let jobs: Vec<_> =
        waiting["waiting"].as_array().unwrap().iter().map(|line| line["job"].as_u64().unwrap()).collect();
    assert_eq!(jobs, [1, 2]);
    assert_eq!(sign(&book, "--every-job", CODE).code, Some(0));
    for job in [1, 2] {
        let log = say(&book, LEARNER, &format!("lugbook job log {job}")).out;
        assert!(log.contains("Seen by Ada Lund and signed on the"), "{log}");
    }
    assert_eq!(sign(&book, "--every-job", CODE).code, Some(2), "nothing is left");
}

/// A device whose clock is set by the test.
struct Device {
    clock: Arc<AtomicI64>,
    seed: AtomicU64,
    /// Entered as if it had been so long ago.
    ago: i64,
}

impl Host for Device {
    fn now(&self) -> Moment {
        Moment::from_unix_ms(self.clock.load(Ordering::Relaxed) - self.ago)
    }

    fn clock(&self) -> Moment {
        Moment::from_unix_ms(self.clock.load(Ordering::Relaxed))
    }

    fn random(&self) -> [u8; 10] {
        let n = self.seed.fetch_add(1, Ordering::Relaxed).to_be_bytes();
        std::array::from_fn(|at| n.get(at).copied().unwrap_or(7))
    }
}

const NOON: i64 = 1_780_000_000_000;

fn act(engine: &mut Engine, command: Command) -> Result<Vec<String>, Trouble> {
    engine.act(Some(INSTRUCTOR), command, Speech::default()).map(|change| change.said)
}

fn signing(code: &str) -> Command {
    let code = Code::from(code.to_owned());
    Command::SignSteps { by: INSTRUCTOR.to_owned(), code, steps: Vec::new(), at: None, every_job: false }
}

#[test]
fn after_wrong_codes_it_is_locked_by_the_hosts_clock_and_a_restart_or_a_clock_set_back_does_not_open_it() {
    let folder = tempfile::tempdir().unwrap();
    let clock = Arc::new(AtomicI64::new(NOON));
    let seed = AtomicU64::new(1);
    let open_ago = |ago: i64| {
        let seed = AtomicU64::new(seed.fetch_add(1_000, Ordering::Relaxed));
        let host = Device { clock: Arc::clone(&clock), seed, ago };
        Engine::open(folder.path(), Box::new(host), Speech::default()).unwrap()
    };
    let open = || open_ago(0);
    let mut engine = open();
    let name = |name: &str| name.to_owned();
    let add = |name: &str, role| Command::AddPerson { name: name.to_owned(), role, phone: None };
    act_first(&mut engine, add(INSTRUCTOR, Role::Instructor));
    act(&mut engine, add(LEARNER, Role::Apprentice)).unwrap();
    let (model, plate) = (name("Lerche 30, 2018"), None);
    let car = Command::AddVehicle {
        name: name("Class car"),
        model,
        class: Class::Car,
        axles: vec![],
        has: Some(vec![]),
        spare: false,
        own: true,
        plate,
    };
    act(&mut engine, car).unwrap();
    let set = |code: &str, current: Option<&str>| Command::SetCode {
        person: name(INSTRUCTOR),
        code: Code::from(code.to_owned()),
        current: current.map(|code| Code::from(code.to_owned())),
    };
    act(&mut engine, set(CODE, None)).unwrap();
    let (vehicle, procedure) = (name("Class car"), name("wheel-off-and-on"));
    let circumstances = vec![name("lift"), name("hand-tools")];
    act(&mut engine, Command::OpenJob { vehicle, procedure, circumstances, practice: true }).unwrap();
    act(&mut engine, Command::Hands { person: name(LEARNER) }).unwrap();
    // What must be seen is brought about without its gates: only the code is tried here.
    act(&mut engine, Command::ChooseWheels { at: vec![name("RL")] }).unwrap_or_default();
    held(&mut engine);

    let refused = |engine: &mut Engine, code: &str| act(engine, signing(code)).unwrap_err();
    for left in [4, 3, 2, 1] {
        let trouble = refused(&mut engine, "000000");
        assert_eq!(trouble.kind, TroubleKind::MendInput);
        assert!(trouble.sentence.contains(if left == 1 { "One try is left" } else { "tries are left" }), "{trouble:?}");
    }
    assert_eq!(refused(&mut engine, "000000").kind, TroubleKind::Held);
    let locked = refused(&mut engine, CODE);
    assert!(locked.sentence.starts_with("Too many wrong codes for Ada Lund. Try again after"), "{locked:?}");
    // Killed and started again, half a minute later: still locked, and it costs no try.
    drop(engine);
    let mut engine = open();
    for at in [NOON + 30_000, NOON - 86_400_000, NOON + 59_999] {
        clock.store(at, Ordering::Relaxed);
        assert_eq!(refused(&mut engine, CODE).kind, TroubleKind::Held, "{at}");
    }
    // A minute is over. One more wrong one locks it for two.
    clock.store(NOON + 61_000, Ordering::Relaxed);
    assert_eq!(refused(&mut engine, "000000").kind, TroubleKind::Held);
    clock.store(NOON + 61_000 + 119_000, Ordering::Relaxed);
    assert_eq!(refused(&mut engine, CODE).kind, TroubleKind::Held);
    clock.store(NOON + 61_000 + 121_000, Ordering::Relaxed);
    assert!(act(&mut engine, signing(CODE)).unwrap()[0].starts_with("Ada Lund signed as seen"));
    // The right one makes an end of the count; every wrong one stays in the book.
    assert_eq!(engine.book().people[0].refused, None);

    // A new code asks for the old one, and is refused while it is plain.
    assert_eq!(act(&mut engine, set("481516", None)).unwrap_err().kind, TroubleKind::MendInput);
    assert!(act(&mut engine, set("481516", Some("000000"))).unwrap_err().sentence.contains("4 tries"));
    for plain in ["12345", "123456", "777777", "ada lund"] {
        assert_eq!(act(&mut engine, set(plain, Some(CODE))).unwrap_err().kind, TroubleKind::MendInput, "{plain}");
    }
    act(&mut engine, set("481516", Some(CODE))).unwrap();
    held(&mut engine);
    assert!(refused(&mut engine, CODE).sentence.contains("not the code"));
    act(&mut engine, signing("481516")).unwrap();

    // Tries that are entered as if they had been a year ago count as those of now.
    held(&mut engine);
    drop(engine);
    let mut past = open_ago(365 * 86_400_000);
    for _ in 0..5 {
        refused(&mut past, "000000");
    }
    assert_eq!(refused(&mut past, "481516").kind, TroubleKind::Held);
    drop(past);
    assert_eq!(refused(&mut open(), "481516").kind, TroubleKind::Held);
}

fn act_first(engine: &mut Engine, command: Command) {
    engine.act(None, command, Speech::default()).unwrap();
}

/// The vehicle is seen to hold, by the apprentice's hands, whatever gate stands before it.
fn held(engine: &mut Engine) {
    for _ in 0..40 {
        let open =
            |step: Option<String>| Command::OpenGate { step, at: None, reason: "only the code is tried".to_owned() };
        match act(engine, Command::Lift { arm: Arm::Held }) {
            Ok(_) => return,
            Err(trouble) => {
                let step = trouble.at.as_deref().and_then(|at| at.split(' ').next()).map(str::to_owned);
                act(engine, open(step)).unwrap_or_else(|why| panic!("{why:?} after {trouble:?}"));
            }
        }
    }
    panic!("the gates before it are opened");
}

#[test]
fn a_code_is_kept_as_a_salted_argon2id_hash_and_stands_in_no_file_and_no_answer() {
    let (_folder, book) = class();
    done(&book, INSTRUCTOR, "lugbook person add 'Ben Falk' --role instructor");
    let set = told(&book, INSTRUCTOR, "en", "lugbook instructor code 'Ben Falk' --json", &format!("{CODE}\n"));
    assert!(set.code == Some(0) && !set.out.contains(CODE), "{set:?}");
    let host = Box::new(lugbook::engine::SystemHost::default());
    let engine = Engine::open(&book, host, Speech::default()).unwrap();
    let hashes: Vec<_> = engine.book().people.iter().filter_map(|person| person.code.clone()).collect();
    drop(engine);
    assert_eq!(hashes.len(), 2);
    assert_ne!(hashes[0], hashes[1], "the same code under another salt");
    for hash in &hashes {
        assert!(hash.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"), "{hash}");
    }
    for file in std::fs::read_dir(&book).unwrap().flatten().filter(|file| file.path().is_file()) {
        let bytes = std::fs::read(file.path()).unwrap();
        assert!(!bytes.windows(CODE.len()).any(|part| part == CODE.as_bytes()), "{}", file.path().display());
    }
    assert_eq!(format!("{:?}", Code::from(CODE.to_owned())), "Code(…)");
    // Nothing piped in and no terminal: it is asked for in a sentence, never taken from the line.
    let none = say(&book, LEARNER, "lugbook instructor sign 'Ada Lund'");
    assert!(none.code == Some(2) && none.sentence().starts_with("No code was given"), "{none:?}");
}

#[test]
fn the_logbook_tells_what_was_done_seen_and_answered_and_nothing_of_a_customer() {
    let (folder, book) = class();
    to_the_plan(&book, true);
    kit(&book, &["lugbook answer drive rear", "lugbook answer pattern x"]);
    to_the_nuts(&book);
    let hub = pictures().join("hub-rear-left.jpg").display().to_string();
    kit(&book, &[&format!("lugbook photo hub {hub} RL"), "lugbook look RL pads at-limit --note '3 mm left' --photo 1"]);
    kit(&book, &["lugbook answer order 1 2 3 4 5"]);
    to_the_ground(&book);
    kit(&book, &["lugbook answer target '120 N.m'"]);
    to_the_signature(&book);
    assert_eq!(sign(&book, "final", CODE).code, Some(0));
    kit(&book, &["lugbook gate 'the instructor signs the rest tomorrow'", "lugbook job sign"]);
    // A customer's truck, with names that have no place in what is handed in.
    kit(&book, &["lugbook job open 'Orchard truck' tread-and-age-check", "lugbook odometer '48210 mi'"]);
    kit(&book, &["lugbook complain 'Odda Fenn hears a rattle'", "lugbook approve --by 'Odda Fenn'"]);
    kit(&book, &["lugbook wall FL 'LT245/75R16 120/116S'", "lugbook job close 'only the size was wanted'"]);

    let show = say(&book, LEARNER, "lugbook learner show --json").json();
    let standing = |code: &str| {
        let found = show["competences"].as_array().unwrap().iter().find(|line| line["competence"] == code);
        found.unwrap_or_else(|| panic!("{code}: {show:#}")).clone()
    };
    assert_eq!((&standing("sidewall")["done"], &standing("sidewall")["practice"]), (&2.into(), &1.into()));
    let torque = standing("final-torque");
    assert_eq!((&torque["done"], &torque["seen"]), (&1.into(), &1.into()), "four wheels of one job count once");
    assert_eq!(torque["signed_by"], serde_json::json!([["Ada Lund", 1]]));
    assert_eq!(standing("locks")["seen"], 0);
    let same: Vec<_> = show["answers"].as_array().unwrap().iter().map(|line| line["same"].as_bool().unwrap()).collect();
    assert_eq!(same, [true, false, false, true]);

    let page = say(&book, LEARNER, "lugbook learner logbook").out;
    insta::assert_snapshot!("logbook", normal(&text(&page)));
    let spanish = told(&book, LEARNER, "es", "lugbook learner logbook", "").out;
    insta::assert_snapshot!("logbook_in_spanish", normal(&text(&spanish)));
    for secret in ["ORCH 12", "Odda Fenn", "argon2", CODE] {
        assert!(!page.contains(secret), "{secret}");
    }
    for forbidden in ["<script", "http://", "https://", "<link", "url(http"] {
        assert!(!page.contains(forbidden), "{forbidden}");
    }
    assert!(page.contains("src=\"data:image/jpeg;base64,"));
    let levels: Vec<u32> =
        page.match_indices("<h").filter_map(|(at, _)| page[at + 2..].chars().next()?.to_digit(10)).collect();
    assert!(levels.windows(2).all(|pair| pair[1] <= pair[0] + 1) && levels.iter().filter(|l| **l == 1).count() == 1);

    let file = folder.path().join("logbook.pdf");
    kit(&book, &[&format!("lugbook learner logbook 'kit marlowe' --out {}", file.display())]);
    assert!(std::fs::read(&file).unwrap().starts_with(b"%PDF-1.7"));
    let read = std::process::Command::new("pdftotext").args(["-raw".as_ref(), file.as_os_str(), "-".as_ref()]).output();
    let Ok(read) = read else { return crate::skipped::skipped("pdftotext is not installed") };
    let read: String = String::from_utf8(read.stdout).unwrap().chars().filter(|c| c.is_alphanumeric()).collect();
    let page = page.replace("&quot;", "\"").replace("&amp;", "&");
    let lost: Vec<String> = text(&page)
        .split_whitespace()
        .map(|word| word.chars().filter(|c| c.is_alphanumeric()).collect::<String>())
        .filter(|word| !read.contains(word.as_str()))
        .collect();
    assert!(lost.is_empty(), "not on paper: {lost:?}");

    bundle(&folder.path().join("kit.zip"), &book, &show);
}

/// A bundle with one part exchanged for another.
fn with_another(bytes: &[u8], name: &str) -> Vec<u8> {
    let mut from = zip::ZipArchive::new(std::io::Cursor::new(bytes)).unwrap();
    let mut to = zip::ZipWriter::new(std::io::Cursor::new(Vec::new()));
    for at in 0..from.len() {
        let mut file = from.by_index(at).unwrap();
        let mut part = Vec::new();
        std::io::Read::read_to_end(&mut file, &mut part).unwrap();
        let own = file.name().unwrap().into_owned();
        if own.starts_with(name) {
            part[10] ^= 1;
        }
        to.start_file(own, zip::write::SimpleFileOptions::default()).unwrap();
        to.write_all(&part).unwrap();
    }
    to.finish().unwrap().into_inner()
}

/// The bundle says the same as the book, holds nothing of a customer, and notices what was changed.
fn bundle(file: &Path, book: &Path, show: &Value) {
    kit(book, &[&format!("lugbook learner bundle --out {}", file.display())]);
    let nowhere = file.with_file_name("nowhere");
    let read = say(&nowhere, LEARNER, &format!("lugbook learner read {} --json", file.display()));
    assert_eq!(read.code, Some(0), "{read:?}");
    let read = read.json();
    // Jobs are numbered anew in a bundle that leaves others' jobs out; here it has all of them.
    assert_eq!(&read["learner"], show);
    assert_eq!(read["photos"], 1);
    let bytes = std::fs::read(file).unwrap();
    let whole = lugbook::report::bundle::read(&bytes).unwrap();
    let told: String = whole.entries.iter().map(|entry| String::from_utf8_lossy(entry.bytes()).into_owned()).collect();
    for secret in ["ORCH 12", "Odda Fenn", "argon2", CODE] {
        assert!(!told.contains(secret) && !whole.html.contains(secret), "{secret}");
        assert!(whole.people.iter().all(|person| person.name.as_deref() != Some(secret)));
    }
    assert_eq!(whole.people.iter().filter_map(|p| p.name.as_deref()).collect::<Vec<_>>(), [INSTRUCTOR, LEARNER]);
    // A flipped bit is noticed, or changes nothing that is read: the archive's own dates, say.
    for at in (0..bytes.len()).step_by(bytes.len() / 300) {
        let mut flipped = bytes.clone();
        flipped[at] ^= 1;
        assert!(
            lugbook::report::bundle::read(&flipped).is_ok_and(|read| read == whole)
                || lugbook::report::bundle::read(&flipped).is_err(),
            "{at}"
        );
    }
    // A part that was exchanged, its checksum in the archive with it, is told by its name.
    for part in ["logbook.html", "logbook.pdf", "entries.jsonl", "photos/"] {
        let told = lugbook::report::bundle::read(&with_another(&bytes, part)).unwrap_err();
        assert!(matches!(&told, BundleError::Damaged { at } if at.starts_with(part)), "{told:?}");
    }
    for half in [&bytes[..bytes.len() / 2], b"PK", b""] {
        assert!(lugbook::report::bundle::read(half).is_err());
    }
    std::fs::write(file, &bytes[..bytes.len() / 2]).unwrap();
    let told = say(&nowhere, LEARNER, &format!("lugbook learner read {}", file.display()));
    assert!(told.code == Some(2) && told.sentence().starts_with("That is no learner's bundle."), "{told:?}");
    // A backup is no bundle, and says so.
    let stranger = file.with_file_name("stranger.zip");
    std::fs::write(&stranger, b"not a zip").unwrap();
    assert_eq!(say(&nowhere, LEARNER, &format!("lugbook learner read {}", stranger.display())).code, Some(2));
}

proptest! {
    /// From whichever nut it begins and whichever way it runs, it is the same star; with two nuts
    /// exchanged it is another, unless the exchange turns or mirrors it.
    #[test]
    fn a_star_turned_or_mirrored_is_the_same(studs in 5_u8..=12, by in 0_u8..12, mirrored: bool, one in 0_usize..12, other in 0_usize..12) {
        let core = lugbook::fastening::order(studs).unwrap();
        let turned: Vec<u8> = core.iter().map(|nut| {
            let at = if mirrored { (studs - (nut - 1)) % studs } else { nut - 1 };
            (at + by % studs) % studs + 1
        }).collect();
        let order = |answer: &[u8]| agrees(&Learned::Order { answer: answer.to_vec(), core: Some(core.clone()) });
        prop_assert_eq!(order(&turned), Some(true));
        let (one, other) = (one % core.len(), other % core.len());
        let mut exchanged = turned.clone();
        exchanged.swap(one, other);
        // Told anew, by how far each nut lies from the one before it, both ways round.
        let steps = |order: &[u8], sign: i16| -> Vec<i16> {
            order.windows(2).map(|pair| (sign * (i16::from(pair[1]) - i16::from(pair[0]))).rem_euclid(i16::from(studs))).collect()
        };
        let same = steps(&exchanged, 1) == steps(&core, 1) || steps(&exchanged, -1) == steps(&core, 1);
        prop_assert_eq!(order(&exchanged), Some(same));
    }
}
