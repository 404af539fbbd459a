//! The demo plays a visit by running the program, and its printed lines can be typed again.

use std::path::Path;
use std::time::Instant;

use crate::program::{done, say, with};

/// A card without what differs from one playing to the next: ids, digests and times.
pub fn normal(card: &str) -> String {
    // What proves it differs with every id and digest.
    let card = card.split("<!-- lugbook-proof").next().unwrap_or_default();
    let mut out = String::new();
    let word = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | ':' | '.');
    let mut rest = card;
    while let Some(first) = rest.chars().next() {
        let end = rest.find(|c| word(c) != word(first)).unwrap_or(rest.len());
        let (part, after) = rest.split_at(end);
        rest = after;
        out.push_str(&if word(first) { part.split_inclusive('-').map(told).collect() } else { part.to_owned() });
    }
    out
}

/// Two cards that say the same; the first line that differs, when they don't.
pub fn same(one: &str, other: &str, what: &str) {
    let (one, other) = (normal(one).replace('>', ">\n"), normal(other).replace('>', ">\n"));
    let differs = one.lines().zip(other.lines()).find(|(a, b)| a != b);
    let short = |line: &str| line.chars().take(200).collect::<String>();
    assert!(differs.is_none(), "{what}: {:?}", differs.map(|(a, b)| (short(a), short(b))));
    assert_eq!(one.lines().count(), other.lines().count(), "{what}");
}

/// A piece of a word, or a dot where it is an id, a digest or a time.
fn told(piece: &str) -> String {
    let bare = piece.trim_end_matches(['-', '.', ':']);
    let hex = bare.chars().all(|c| c.is_ascii_hexdigit());
    let digit = bare.chars().any(|c| c.is_ascii_digit());
    let clock = bare.contains(':') && bare.chars().all(|c| c.is_ascii_digit() || matches!(c, ':' | '.' | 'Z' | 'T'));
    // Six hexadecimal digits stand in the names of drawings: a tire's id, shortened. They may all be letters.
    let id = hex && bare.len() >= 6;
    if id || digit && clock { format!("•{}", &piece[bare.len()..]) } else { piece.to_owned() }
}

fn lines(printed: &str) -> Vec<&str> {
    printed.lines().filter(|line| line.starts_with("lugbook ")).collect()
}

fn card(out: &Path) -> String {
    std::fs::read_to_string(out.join("card.html")).expect("the card is written")
}

#[test]
fn the_printed_lines_replayed_in_processes_of_their_own_give_the_same_card() {
    let folder = tempfile::tempdir().unwrap();
    let (first, second) = (folder.path().join("first"), folder.path().join("second"));
    let begun = Instant::now();
    let printed = done(&folder.path().join("unused"), &format!("lugbook demo --out {}", first.display()));
    let took = begun.elapsed();
    assert!(!folder.path().join("unused").exists(), "the demo keeps to its own book");
    let lines = lines(&printed.out);
    assert!(lines.len() > 100, "{}", lines.len());
    assert_eq!(printed.out.matches("was killed (SIGKILL)").count(), 1, "{}", printed.out);

    std::fs::create_dir(&second).unwrap();
    let (here, there) = (first.join("card.html"), second.join("card.html"));
    for line in lines {
        done(&second.join("book"), &line.replace(&here.display().to_string(), &there.display().to_string()));
    }
    same(&card(&first), &card(&second), "replayed");
    assert_ne!(card(&first), card(&second), "two visits have ids of their own");
    // A loaded machine is no reason to fail; the figure is printed for the one who looks.
    println!("the demo took {took:?}");
    assert!(took.as_secs() < 60, "{took:?}");
}

#[test]
fn the_demo_says_where_its_card_and_book_are_and_the_book_checks() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("visit to the orchard");
    let played: crate::program::Said =
        with(&folder.path().join("unused"), &["demo", "--json", "--out", out.to_str().unwrap()])
            .output()
            .unwrap()
            .into();
    assert_eq!(played.code, Some(0), "{played:?}");
    let view = played.json();
    assert!(Path::new(view["card"].as_str().unwrap()).is_file());
    assert!(view["played"].as_array().unwrap().len() > 100);
    let told = done(
        &folder.path().join("unused"),
        &format!("lugbook card verify '{}' --json", view["card"].as_str().unwrap()),
    );
    assert_eq!(
        (told.json()["ok"].clone(), told.json()["proven"].as_array().unwrap().len()),
        (true.into(), 3),
        "{told:?}"
    );
    let check = done(Path::new(view["book"].as_str().unwrap()), "lugbook book check --json").json();
    assert_eq!((check["ok"].as_bool(), check["photos"].as_u64()), (Some(true), Some(8)), "{check}");
    assert!(check["entries"].as_u64() > Some(130), "{check}");
}

#[test]
fn a_folder_that_is_not_empty_is_refused_and_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("letter.txt"), "mine").unwrap();
    let book = folder.path().join("unused");
    let said = say(&book, &format!("lugbook demo --out {} --json", folder.path().display()));
    assert_eq!(said.code, Some(2), "{said:?}");
    assert!(said.sentence().contains("is not empty"), "{said:?}");
    assert_eq!(said.json()["error"]["kind"], "mend-input");
    let names: Vec<_> = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name()).collect();
    assert_eq!(names, ["letter.txt"]);
}

#[test]
fn the_demo_on_a_full_disk_or_a_path_that_is_a_file_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("file");
    std::fs::write(&file, "x").unwrap();
    for out in [file.clone(), file.join("below")] {
        let said = say(&folder.path().join("unused"), &format!("lugbook demo --out {}", out.display()));
        assert_eq!(said.code, Some(2), "{said:?}");
        said.sentence();
    }
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "x");
}
