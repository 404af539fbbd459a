//! What is typed wrong, on every command.

use std::collections::BTreeSet;
use std::path::Path;

use crate::program::{Said, done, lugbook, say, with};

/// A value that a command takes: one that would do, and what must be refused.
struct Slot {
    name: &'static str,
    good: &'static str,
    bad: &'static [&'static str],
}

const LONG: &str = "{long}";

const SLOTS: &[Slot] = &[
    Slot { name: "<text>", good: "words", bad: &["", "   ", "two\nlines", "bell\u{7}", LONG] },
    Slot { name: "<name>", good: "New name", bad: &["", " ", "tab\there", LONG] },
    Slot { name: "<person>", good: "Ilse Marwitz", bad: &["nobody", "", LONG] },
    Slot { name: "<vehicle>", good: "Red coupe", bad: &["no such vehicle", "", LONG] },
    Slot { name: "<tool>", good: "Wrench", bad: &["no such tool", "", LONG] },
    Slot { name: "<place>", good: "FL", bad: &["XX", "3L", "SP", "", "1LO", "F L", LONG] },
    Slot {
        name: "<distance>",
        good: "90000 km",
        bad: &["far", "", "90000", "-5 km", "90000 psi", "9000000000 km", "90,000 km", "1e999 km", LONG],
    },
    Slot { name: "<depth>", good: "5.2 mm", bad: &["deep", "", "-1 mm", "80 mm", "5 psi", "5.2.1 mm", LONG] },
    Slot {
        name: "<depths>",
        good: "5.2 4.8 5.3 mm",
        bad: &["deep", "", "5 4 5", "-5 4 5 mm", "80 4 5 mm", "5 4 5 psi", "1 2 3 4 5 6 7 mm", "; mm", LONG],
    },
    Slot { name: "<pressure>", good: "35 psi", bad: &["hard", "", "-5 psi", "35 mm", "5000 psi", LONG] },
    Slot { name: "<torque>", good: "120 N.m", bad: &["tight", "", "120", "-5 N.m", "120 psi", "99999 N.m", LONG] },
    Slot {
        name: "<printed>",
        good: "125..150 N.m",
        bad: &["tight", "", "125..150", "150..125 N.m", "125 N.m..100 ft.lb", "0 N.m", LONG],
    },
    Slot { name: "<percent>", good: "4%", bad: &["good", "", "-4%", "80%", LONG] },
    Slot { name: "<day>", good: "2024-03-02", bad: &["2199-01-01", "yesterday", "2024-13-40", "", "-1", LONG] },
    Slot { name: "<count>", good: "0", bad: &["some", "", "-1", "99999999999999999999", "1.5", LONG] },
    Slot { name: "<nut>", good: "1", bad: &["0", "13", "-1", "many", "", "256"] },
    Slot { name: "<line>", good: "1", bad: &["0", "9999", "-1", "last", ""] },
    Slot {
        name: "<marking>",
        good: "225/45R17 91W",
        bad: &["round and black", "", "225/45R99 91W", "-225/45R17", LONG],
    },
    Slot {
        name: "<axles>",
        good: "single,dual",
        bad: &["single", "many", "", "dual;dual", "single,dual,", "dual,dual,dual,dual,dual,dual,dual,dual,dual", LONG],
    },
    Slot { name: "<around>", good: "126 in", bad: &["round", "", "126", "-5 in", "1 in", "126 psi", "90000 mm", LONG] },
    Slot { name: "<weight>", good: "5200 lb", bad: &["heavy", "", "5200", "-5 lb", "5200 psi", LONG] },
    Slot { name: "<mark>", good: "A1", bad: &["", "a very long mark", "x\ny", LONG] },
    Slot { name: "<pattern>", good: "x", bad: &["zigzag", "", LONG] },
    Slot { name: "<plan>", good: "1", bad: &["0", "99", "zigzag", "", "-1", LONG] },
    Slot {
        name: "<file>",
        good: "{picture}",
        bad: &["no-such-file.jpg", "", "{folder}", "{letter}", "/dev/null", LONG],
    },
    // Any name that is not there yet is a folder to make; these are there, or can never be.
    Slot { name: "<new-folder>", good: "{folder}", bad: &["", "{folder}", "{letter}", "/dev/null", LONG] },
    Slot { name: "<backup-folder>", good: "{folder}", bad: &["", "{letter}", "{folder}/none", "/dev/null", LONG] },
    Slot { name: "<passphrase>", good: "{letter}", bad: &["", "{folder}", "{folder}/none", "/dev/null", LONG] },
    Slot { name: "<backup>", good: "", bad: &["", "{folder}", "{letter}", "{folder}/none", "/dev/null", LONG] },
    Slot { name: "<thread>", good: "M14 x 1.5", bad: &["thick", "", "M99 x 1.5", "M14 x -1", LONG] },
    Slot { name: "<job>", good: "1", bad: &["0", "99", "-1", "last"] },
    Slot {
        name: "<out>",
        good: "{folder}/out.html",
        bad: &["{folder}", "{letter}/out.html", "{folder}/none/out.html"],
    },
    Slot { name: "<speed>", good: "50 mph", bad: &["fast", "", "50", "-5 mph", "999 mph", "50 psi", LONG] },
    Slot { name: "<studs>", good: "5", bad: &["0", "2", "13", "-1", "300", "many", ""] },
    Slot { name: "<temperature>", good: "70 F", bad: &["hot", "", "70", "999 F", "-300 C", "70 psi", LONG] },
    Slot {
        name: "<adapter>",
        good: "12 in + 2 in @ 90",
        bad: &["long", "", "12 in", "12 in + 2 in @ 270", "12 in + 2 psi", "0 in + 2 in", LONG],
    },
    Slot {
        name: "<question>",
        good: "{question}",
        bad: &["no-such-file", "", "{folder}", "{letter}", "/dev/null", LONG],
    },
    Slot { name: "<few>", good: "4", bad: &["0", "-1", "300", "some", "", "1.5"] },
    Slot { name: "<months>", good: "12", bad: &["0", "121", "-1", "often", "", "1.5"] },
    Slot { name: "<scale>", good: "40..200 N.m", bad: &["wide", "", "120 N.m", "200..40 N.m", "40..200", LONG] },
    Slot { name: "<load>", good: "3 t", bad: &["heavy", "", "3", "-3 t", "3 psi", LONG] },
    Slot { name: "<span>", good: "21 mm", bad: &["wide", "", "21", "-21 mm", "21 psi", LONG] },
    Slot {
        name: "<circle>",
        good: "400,300,200",
        bad: &["round", "", "1,2", "1,2,3,4", "0,0,0", "-5,-5,9", "1e400,1,1", "nan,1,1", "400,300,-200", LONG],
    },
    Slot { name: "<device>", good: "0123456789abcdef", bad: &["mine", "", "0123-4567", LONG] },
    Slot { name: "<code>", good: "", bad: &["nonsense", "", "-1", LONG] },
];

/// Every command with its values. A code's good word stands after the equals sign.
const LINES: &[&str] = &[
    "demo --out <new-folder>",
    "person add <name> --role <code=mechanic> --phone <text>",
    "person list",
    "vehicle add <name> --model <text> --class <code=car> --plate <text>",
    "vehicle add <name> --model <text> --class <code=truck> --axles <axles> --has <code=neither>",
    "vehicle has <code=neither> --vehicle <vehicle>",
    "vehicle list",
    "tool wrench <name> --accuracy <percent> --step <torque> --range <scale> --calibrated <day> --every <months>",
    "tool gauge <name> --step <depth> --calibrated <day> --every <months>",
    "tool air-gauge <name> --step <pressure> --up-to <pressure> --calibrated <day>",
    "tool gun <name> <code=air> --greatest <torque>",
    "tool bar <name> <torque> --hex <span> --for-guns-up-to <torque>",
    "tool jack <name> --rating <load>",
    "tool stands <name> --rating <load> --count <few>",
    "tool lift <name> --rating <load>",
    "tool put-away <tool> <text>",
    "tool list",
    "shelf torque <printed> --source <text> --vehicle <vehicle> --thread <thread> --condition <text> --recheck <distance> --studs <nut>",
    "shelf placard <pressure> <pressure> --source <text> --vehicle <vehicle> --size <marking> --photo <line>",
    "shelf drive <code=rear> --source <text> --vehicle <vehicle>",
    "shelf pattern <pattern> --source <text> --vehicle <vehicle>",
    "shelf lift-points <text> --source <text> --vehicle <vehicle>",
    "shelf unknown <code=torque>",
    "shelf list",
    "limits <code=france> --season <code=winter> --at-limit <depth> --watch <depth>",
    "procedure add <question>",
    "procedure list",
    "book <code=check>",
    "book <code=verify>",
    "card verify <question> --device <device>",
    "card --job <job> --out <out>",
    "card --paper <code=a4>",
    "history <vehicle> --out <out>",
    "cover <line> 0,0,9,9 --job <job>",
    "share <line> --out <out> --job <job>",
    "backup into <backup-folder>",
    "backup now --into <backup-folder>",
    "backup lock --passphrase-file <passphrase>",
    "restore <backup>",
    "export readings --vehicle <vehicle> --out <out>",
    "export jobs --vehicle <vehicle> --out <out>",
    "label --job <job> --out <out>",
    "export recheck --per-year <distance> --job <job> --out <out>",
    "job open <vehicle> <code=rotation-on-a-lift> <code=air>",
    "job park <text>",
    "job resume <job>",
    "job close <text>",
    "job sign",
    "job steps",
    "job log <job>",
    "hands <person>",
    "second <name> <place>",
    "use <tool>",
    "complain <text>",
    "damage <text> --where <place> --photo <line>",
    "approve --by <text>",
    "decline --by <text>",
    "told <code=accepts>",
    "odometer <distance>",
    "hub <place> <code=shaft> --differential <code=open> --free-hubs <code=free> --motor <code=none>",
    "hub FL not-looked --turned <code=turns> --gear <code=neutral> --brake <code=released> --off-ground <code=both> --engine <code=off> --shaft <code=still> --opposite <code=still>",
    "owner-says <code=rear>",
    "drive",
    "photo <code=sidewall> <file> <place>",
    "wall <place> <marking>",
    "chalk <place> <mark>",
    "tread <place> <depths> --lowest <depth> --reason <text>",
    "tape <place> <around>",
    "plan choose <plan>",
    "wheels <place>",
    "spare <place> <marking> --pressure <pressure> --nuts <code=same> --studs <studs> --limit <speed> --replace-by <distance>",
    "set <code=stored>",
    "store <text> --where <place>",
    "weigh <weight> --rated <weight>",
    "raise <code=clear>",
    "held",
    "clear-under",
    "lower",
    "off <place>",
    "look <place> <code=tire> <code=watch> --note <text> --damage <code=cut> --photo <line>",
    "hang <place> <mark>",
    "crack <place> <nut>",
    "start <place> <nut>",
    "snug <place> <nut>",
    "torque <place> <nut> <code=moved>",
    "loosen <place> <nut>",
    "recheck <place> <nut> <code=still>",
    "air <place> <pressure>",
    "sensor <place> <text>",
    "lamp <code=off> --sensors <code=direct>",
    "relearn <code=done> --method <code=drive>",
    "tell-recheck",
    "why <code=drive>",
    "answer-first <code=on>",
    "answer <code=drive> <code=rear>",
    "instructor code <person>",
    "instructor sign <person> <code=held> --where <place>",
    "instructor waiting",
    "learner show <person>",
    "learner logbook <person> --out <out>",
    "learner bundle <person> --out <out>",
    "learner read <file>",
    "seen --step <code=rock> --where <place>",
    "choose <code=none-fitted> --step <code=lock-key>",
    "count <count> --step <code=tray>",
    "skip <text> --step <code=odometer> --where <place>",
    "gate <text> --step <code=lower> --where <place>",
    "correct <line> <distance> <text>",
    "withdraw <line> <text>",
    "undo <code=list>",
    "archive <code=vehicle> <vehicle> <text>",
    "bring-back <code=person> <person>",
    "erase person <person>",
    "erase plate <vehicle>",
    "read <file> --ring <circle>",
    "sidewall <marking>",
    "sizes <marking> <marking>",
    "tighten --range <printed> --studs <studs> --wrench <percent> --step <torque> --bar <torque> --adapter <adapter>",
    "tighten --spec <printed> --studs <studs> --wrench <percent> --step <torque>",
    "inflate --placard <pressure> --shop <temperature> --outside <temperature> --max <pressure> --found <pressure> --step <pressure> --fitted <code=as-placard> --class <code=car>",
    "rotate <question>",
    "lift <question>",
    "wear <question>",
];

fn good(token: &str) -> Option<(&'static Slot, String)> {
    let (name, code) = match token.strip_prefix("<code=") {
        Some(code) => ("<code>", code.trim_end_matches('>')),
        None => (token, ""),
    };
    let slot = SLOTS.iter().find(|slot| slot.name == name)?;
    Some((slot, if code.is_empty() { slot.good.to_owned() } else { code.to_owned() }))
}

/// A book with a job in which little has been done.
fn book(folder: &Path) -> std::path::PathBuf {
    let book = folder.join("book");
    std::fs::write(folder.join("letter.txt"), "not a picture").unwrap();
    for line in [
        "lugbook person add 'Ilse Marwitz'",
        "lugbook vehicle add 'Red coupe' --model 'Lerche 30, 2018' --own",
        "lugbook tool wrench Wrench --accuracy 4% --step '1 N.m'",
        "lugbook job open 'Red coupe' rotation-on-a-lift air",
        "lugbook choose none-fitted",
    ] {
        done(&book, line);
    }
    book
}

fn state(book: &Path) -> BTreeSet<String> {
    let log = done(book, "lugbook job log --json").json();
    let check = done(book, "lugbook book check --json").json();
    let ids = log["log"].as_array().unwrap().iter().map(|line| line["entry"].to_string());
    ids.chain([check["entries"].to_string(), check["photos"].to_string()]).collect()
}

/// What is wrong with a refusal; nothing when it is as it must be.
fn wrong(said: &Said) -> Option<String> {
    let sentence = said.err.trim_end();
    let told = sentence.chars().count() <= 400 && sentence.ends_with(['.', '?']) && sentence.contains(' ');
    let one = sentence.lines().count() == 1 && !sentence.contains("panicked");
    let kind = match said.code {
        Some(2) => "mend-input",
        Some(3) => "held",
        code => return Some(format!("exit code {code:?}: {sentence}")),
    };
    if !told || !one {
        return Some(format!("not one clear sentence: {sentence}"));
    }
    let view = said.json();
    let error = &view["error"];
    let whole = error["sentence"] == sentence && error["kind"] == kind && error.get("at").is_some();
    (!whole).then(|| format!("{error}"))
}

fn refused(said: &Said, words: &[String]) {
    assert_eq!(wrong(said), None, "{words:?}");
}

#[test]
fn each_value_of_each_command_typed_wrong_is_refused_in_one_sentence_and_changes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let before = state(&book);
    let long = "x".repeat(10_000);
    let filled = |value: &str| {
        value
            .replace("{long}", &long)
            .replace("{folder}", &folder.path().display().to_string())
            .replace("{letter}", &folder.path().join("letter.txt").display().to_string())
            .replace("{picture}", &crate::program::pictures().join("placard.jpg").display().to_string())
    };
    let mut tried = 0;
    let mut slips: Vec<String> = Vec::new();
    for line in LINES {
        let tokens: Vec<&str> = line.split(' ').collect();
        for (at, token) in tokens.iter().enumerate() {
            let Some((slot, _)) = good(token) else { continue };
            for bad in slot.bad {
                let mut words: Vec<String> = tokens
                    .iter()
                    .enumerate()
                    .map(|(n, t)| {
                        good(t).map_or_else(
                            || (*t).to_owned(),
                            |(_, value)| if n == at { (*bad).to_owned() } else { value },
                        )
                    })
                    .map(|word| filled(&word))
                    .collect();
                words.push("--json".to_owned());
                if let Some(why) = wrong(&with(&book, &words).output().unwrap().into()) {
                    let shown: Vec<String> = words.iter().map(|word| word.chars().take(40).collect()).collect();
                    slips.push(format!("{}: {}", shown.join(" | "), why.chars().take(200).collect::<String>()));
                }
                tried += 1;
            }
        }
        assert!(!slips.is_empty() || state(&book) == before, "{line} changed the book");
    }
    assert!(slips.is_empty(), "{slips:#?}");
    println!("{tried} bad values on {} lines", LINES.len());
    assert!(tried > 500, "{tried}");
}

#[test]
fn every_command_of_the_help_is_tried_with_bad_values() {
    let help: Said = std::process::Command::new(lugbook()).arg("--help").output().unwrap().into();
    let verbs: Vec<_> = help
        .out
        .lines()
        .take_while(|line| *line != "Options:")
        .filter_map(|line| line.strip_prefix("  ").and_then(|line| line.split(' ').next()))
        .filter(|verb| !verb.is_empty())
        .collect();
    assert!(verbs.len() > 45, "{verbs:?}");
    let tried = |verb: &str| LINES.iter().any(|line| line.split(' ').next() == Some(verb));
    let missing: Vec<_> = verbs.iter().filter(|verb| !tried(verb)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn what_is_missing_too_much_or_unknown_is_told_in_one_sentence() {
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let before = state(&book);
    for line in [
        "",
        "odomter '5 km'",
        "odometer",
        "odometer '5 km' '6 km'",
        "odometer --reading '5 km'",
        "--nonsense",
        "job opn",
        "shelf",
        "person",
        "tool",
        "torque FL",
        "torque FL 1 2 moved",
        "air FL '35 psi' --cold --warm",
        "hub FL shaft --turned turns",
        "hub FL shaft --gear neutral",
        "job --json=maybe",
        "--units furlongs job",
        "--lang xx job",
        "--letters abc job",
        "--at tomorrow complain words",
        "--at 2199-01-01T00:00:00Z complain words",
        "--at 1969-01-01T00:00:00Z complain words",
        "--as nobody complain words",
        "complain words --as ''",
        "odometer '5 km' --json --json",
    ] {
        let said = say(&book, &format!("lugbook {line} --json"));
        refused(&said, &[line.to_owned()]);
        assert_eq!(said.code, Some(2), "{line}: {said:?}");
    }
    assert_eq!(state(&book), before);
}

#[test]
fn text_that_is_not_text_is_refused() {
    use std::os::unix::ffi::OsStrExt;
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let words =
        [std::ffi::OsStr::new("complain"), std::ffi::OsStr::from_bytes(b"caf\xe9"), std::ffi::OsStr::new("--json")];
    refused(&with(&book, &words).output().unwrap().into(), &["complain".to_owned()]);
}

#[test]
fn help_is_no_failure_and_keeps_to_eighty_columns() {
    for line in ["--help", "-h", "--version", "job --help", "torque --help", "shelf torque --help"] {
        let said = say(Path::new("/nonexistent"), &format!("lugbook {line}"));
        assert_eq!((said.code, said.err.as_str()), (Some(0), ""), "{line}");
        let wide: Vec<_> = said.out.lines().filter(|line| line.chars().count() > 80).collect();
        assert!(!said.out.is_empty() && wide.is_empty(), "{line}: {wide:#?}");
    }
}
