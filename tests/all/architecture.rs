//! The house stands as it is drawn: rooms in their order, nothing at the top that does not belong there.

use std::path::{Path, PathBuf};

use crate::program::root;

/// Rooms in dependency order; a room may use only rooms before it.
const ROOMS: &[&str] = &[
    "ident",
    "calendar",
    "measure",
    "source", // measures
    "sidewall",
    "tire",
    "fastener",
    "vehicle",
    "finding",
    "limits",
    "caution", // vocabulary
    "entry",
    "logbook",
    "proof", // record
    "drive",
    "wear",
    "inflation",
    "fastening",
    "rotation",
    "lifting",
    "inspect",
    "due",
    "procedure",
    "learning", // reasoning
    "sight",    // seeing
    "store",
    "photos", // keeping
    "words",
    "report",
    "exchange", // going out
    "engine",   // the door
];

/// The last room that knows neither disk nor clock nor sentences.
const LAST_PURE: &str = "learning";

fn place(room: &str) -> Option<usize> {
    ROOMS.iter().position(|known| *known == room)
}

pub fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder of the house") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            files.extend(sources(&path));
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            files.push(path);
        }
    }
    files.sort();
    files
}

/// The room of a file below `core/src`, and how many modules deep the file is.
pub fn room_of(file: &Path) -> (String, usize) {
    let inside = file.strip_prefix(root().join("core/src")).expect("a file of the core");
    let mut parts: Vec<_> = inside.with_extension("").iter().map(|part| part.to_string_lossy().into_owned()).collect();
    parts.retain(|part| part != "mod");
    (parts[0].clone(), parts.len())
}

/// Code without comments and without what stands between quotes; the quoted texts apart.
pub fn split(source: &str) -> (String, Vec<String>) {
    let (mut code, mut texts) = (String::new(), Vec::new());
    let mut rest = source;
    while let Some(first) = rest.chars().next() {
        if rest.starts_with("//") {
            rest = rest.find('\n').map_or("", |at| &rest[at..]);
        } else if let Some(raw) = rest.strip_prefix("r#\"") {
            let end = raw.find("\"#").unwrap_or(raw.len());
            texts.push(raw[..end].to_owned());
            rest = raw.get(end + 2..).unwrap_or("");
        } else if first == '"' {
            let mut text = String::new();
            let mut chars = rest.char_indices().skip(1);
            let mut end = rest.len();
            while let Some((at, c)) = chars.next() {
                match c {
                    '\\' => text.extend(chars.next().map(|(_, c)| c)),
                    '"' => {
                        end = at + 1;
                        break;
                    }
                    c => text.push(c),
                }
            }
            texts.push(text);
            code.push_str("\"\"");
            rest = &rest[end..];
        } else if rest.starts_with("'\"'") || rest.starts_with("'\\") {
            // A character, not the begin of a text.
            let end = rest[2..].find('\'').map_or(rest.len(), |at| at + 3);
            rest = &rest[end..];
        } else {
            code.push(first);
            rest = &rest[first.len_utf8()..];
        }
    }
    (code, texts)
}

fn word(text: &str) -> &str {
    let end = text.find(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).unwrap_or(text.len());
    &text[..end]
}

/// The names behind a path: one, or those in braces at the first level.
fn names(after: &str) -> Vec<&str> {
    let Some(group) = after.strip_prefix('{') else { return vec![word(after)] };
    let (mut names, mut depth, mut begins) = (Vec::new(), 0_usize, true);
    for (at, c) in group.char_indices() {
        match c {
            '{' => depth += 1,
            '}' if depth == 0 => break,
            '}' => depth -= 1,
            ',' if depth == 0 => begins = true,
            c if begins && depth == 0 && !c.is_whitespace() => {
                names.push(word(&group[at..]));
                begins = false;
            }
            _ => {}
        }
    }
    names
}

/// Rooms that a file names, by `crate::` or by climbing to the top with `super::`.
fn used(code: &str, depth: usize) -> Vec<String> {
    let mut used = Vec::new();
    for (at, _) in code.match_indices("crate::") {
        used.extend(names(&code[at + "crate::".len()..]).into_iter().map(str::to_owned));
    }
    let climb = "super::".repeat(depth);
    for (at, _) in code.match_indices(&climb) {
        if !code[..at].ends_with("super::") {
            used.extend(names(&code[at + climb.len()..]).into_iter().map(str::to_owned));
        }
    }
    used
}

/// Upward edges of one file.
fn upward(room: &str, depth: usize, source: &str) -> Vec<String> {
    let own = place(room).unwrap_or_else(|| panic!("the room {room} has no place in the order"));
    used(&split(source).0, depth).into_iter().filter(|name| place(name).is_some_and(|other| other > own)).collect()
}

#[test]
fn a_room_uses_only_rooms_before_it() {
    let mut bad = Vec::new();
    let mut edges = 0;
    for file in sources(&root().join("core/src")) {
        let (room, depth) = room_of(&file);
        if room == "lib" {
            continue;
        }
        let source = std::fs::read_to_string(&file).expect("a source file");
        edges += used(&split(&source).0, depth).len();
        bad.extend(upward(&room, depth, &source).into_iter().map(|used| format!("{}: {used}", file.display())));
    }
    assert!(bad.is_empty(), "{bad:#?}");
    assert!(edges > 100, "the reader finds what rooms use: {edges}");
}

#[test]
fn an_upward_edge_is_found_in_every_way_it_can_be_written() {
    let found = |depth, source| upward("measure", depth, source);
    assert_eq!(found(1, "use crate::words::Words;"), ["words"]);
    assert_eq!(found(1, "use crate::{ident::Digest, engine::{self, Engine}, store};"), ["engine", "store"]);
    assert_eq!(found(1, "fn f() -> crate::entry::Fact {}"), ["entry"]);
    assert_eq!(found(1, "use super::logbook::Book;"), ["logbook"]);
    assert_eq!(found(2, "use super::super::logbook::Book; use super::drive;"), ["logbook"]);
    assert!(
        found(1, "use crate::calendar::Day; // use crate::words::Words;\nconst A: &str = \"crate::engine\";")
            .is_empty()
    );
}

#[test]
fn every_room_of_the_core_has_a_place_in_the_order() {
    let lib = std::fs::read_to_string(root().join("core/src/lib.rs")).unwrap();
    let rooms: Vec<_> = lib.lines().filter_map(|line| line.strip_prefix("pub mod ")).map(word).collect();
    assert!(rooms.len() > 15, "{rooms:?}");
    for room in rooms {
        assert!(place(room).is_some(), "{room}");
    }
}

fn pure_sources() -> impl Iterator<Item = (PathBuf, String)> {
    sources(&root().join("core/src")).into_iter().filter_map(|file| {
        let (room, _) = room_of(&file);
        let pure = place(&room).is_some_and(|at| Some(at) <= place(LAST_PURE));
        pure.then(|| {
            let source = std::fs::read_to_string(&file).expect("a source file");
            let code = source.split("#[cfg(test)]").next().unwrap_or_default().to_owned();
            (file, code)
        })
    })
}

#[test]
fn rooms_that_reason_know_neither_disk_nor_clock_nor_network() {
    let outside = ["std::fs", "std::net", "std::env", "std::thread", "SystemTime", "Instant::now", "rusqlite", "tokio"];
    for (file, source) in pure_sources() {
        let code = split(&source).0;
        for name in outside {
            assert!(!code.contains(name), "{} names {name}", file.display());
        }
    }
}

/// A sentence for a person: a capital, at least three words, a full stop.
fn is_sentence(text: &str) -> bool {
    text.chars().next().is_some_and(char::is_uppercase)
        && text.ends_with(['.', '!', '?'])
        && text.split_whitespace().filter(|w| w.chars().next().is_some_and(char::is_lowercase)).count() >= 2
}

#[test]
fn rooms_that_reason_hold_no_sentence() {
    assert!(is_sentence("Lower the vehicle.") && !is_sentence("not a number") && !is_sentence("M14 x 1.5"));
    for (file, source) in pure_sources() {
        let sentences: Vec<_> = split(&source).1.into_iter().filter(|text| is_sentence(text)).collect();
        assert!(sentences.is_empty(), "{}: {sentences:#?}", file.display());
    }
}

/// Texts of a program that a person would read: three words of small letters or more, outside of help,
/// names of errors that nobody is told, lines to type and SQL.
fn spoken(source: &str) -> Vec<String> {
    let code = source.split("#[cfg(test)]").next().unwrap_or_default();
    let code = code.replace("#[error(", "after_help = ");
    let code: Vec<_> = code.split("after_help = ").collect();
    // Behind `after_help` stands one text of clap's, in English like all help; behind `error` a name for developers.
    let mut texts: Vec<String> = split(code[0]).1;
    texts.extend(code[1..].iter().flat_map(|rest| split(rest).1.into_iter().skip(1)));
    let small = |text: &str| {
        text.split(' ').filter(|word| word.len() > 1 && word.chars().all(|c| c.is_ascii_lowercase())).count()
    };
    texts.retain(|text| small(text) >= 3 && !text.starts_with("lugbook ") && !text.contains("  lugbook "));
    texts.retain(|text| {
        !["SELECT", "INSERT", "UPDATE", "DELETE", "CREATE", "PRAGMA"].iter().any(|sql| text.contains(sql))
    });
    texts
}

#[test]
fn only_words_holds_what_a_person_reads() {
    assert_eq!(spoken("#[command(after_help = \"a b that is help\")] say(\"there is no book\")"), ["there is no book"]);
    let mut found = Vec::new();
    for folder in ["core/src/report", "core/src/engine", "core/src/words", "core/src/exchange", "bindings"] {
        let folder = root().join(folder);
        for file in folder.is_dir().then(|| sources(&folder)).into_iter().flatten() {
            let source = std::fs::read_to_string(&file).expect("a source file");
            // A table for other programs has one wording in every language, and only developers run the generator.
            if file.ends_with("spreadsheet.rs") || file.starts_with(root().join("bindings/generate")) {
                continue;
            }
            // The help and what it is made of.
            let help = ["usage.rs", "verbs.rs"].iter().any(|name| file.ends_with(name));
            let texts = spoken(&source).into_iter().filter(|text| !help || text.contains('{') && !text.contains('\n'));
            found.extend(texts.map(|text| format!("{}: {text}", file.display())));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn the_core_reads_nothing_from_outside_its_folder() {
    let core = root().join("core");
    for file in sources(&core) {
        let source = std::fs::read_to_string(&file).unwrap();
        let (_, texts) = split(&source);
        let outside: Vec<_> =
            texts.iter().filter(|text| text.contains("tests/") || text.contains("bindings/")).collect();
        assert!(outside.is_empty(), "{}: {outside:?}", file.display());
        for text in texts.iter().filter(|text| text.starts_with("../")) {
            let path = file.parent().unwrap().join(text);
            let real = path.canonicalize().unwrap_or_else(|_| panic!("{}: {text}", file.display()));
            assert!(real.starts_with(core.canonicalize().unwrap()), "{}: {text}", file.display());
        }
    }
    let manifest = std::fs::read_to_string(core.join("Cargo.toml")).unwrap();
    assert!(!manifest.contains("uniffi") && !manifest.contains("lugbook-"), "the core stands alone");
}

#[test]
fn bindings_use_the_core_and_not_each_other() {
    for (binding, other) in [("terminal", "lugbook-phone"), ("phone", "lugbook-terminal")] {
        let manifest = std::fs::read_to_string(root().join("bindings").join(binding).join("Cargo.toml")).unwrap();
        assert!(!manifest.contains(other) && !manifest.contains("rusqlite"), "{binding}");
    }
}

#[test]
fn the_top_level_holds_only_what_belongs_there() {
    let allowed = [
        "Cargo.toml",
        "Cargo.lock",
        "DEVELOPERS.md",
        "LICENSE",
        "README.md",
        "android",
        "bindings",
        "core",
        "ios",
        "target",
        "tests",
    ];
    for entry in std::fs::read_dir(root()).unwrap() {
        let name = entry.unwrap().file_name().to_string_lossy().into_owned();
        assert!(name.starts_with('.') || allowed.contains(&name.as_str()), "{name} at the top level");
    }
}
