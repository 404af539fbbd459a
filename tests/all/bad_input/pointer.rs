//! A refused marking is shown with a mark under the place, wherever it was typed.

use std::path::Path;

use crate::program::{done, say};

/// What a person reads on the error stream.
fn told(book: &Path, line: &str) -> Vec<String> {
    let said = say(book, line);
    assert_eq!(said.code, Some(2), "{line}: {said:?}");
    said.err.lines().map(str::to_owned).collect()
}

#[test]
fn a_refused_marking_is_shown_with_the_place_and_what_to_do() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add 'Ilse Marwitz'");
    done(&book, "lugbook vehicle add 'Red coupe' --model 'Invented coupe 2018' --own");
    done(&book, "lugbook job open 'Red coupe' rotation-on-a-lift electric");
    done(&book, "lugbook wall FL '225/45R17 91W'");
    let log = done(&book, "lugbook job log --json").json();
    let lines = log["log"].as_array().expect("the log has lines");
    let wall = lines.iter().find(|line| line["sentence"].as_str().unwrap().contains("225/45R17")).unwrap();
    let correct = format!("lugbook correct {} '225/45X17' 'read again'", wall["line"]);
    for line in [
        "lugbook sidewall '225/45X17'",
        "lugbook sizes '225/45R17 91W' '225/45X17'",
        "lugbook sizes '225/45X17' '225/45R17 91W'",
        "lugbook wall RL '225/45X17'",
        "lugbook shelf placard '35 psi' '35 psi' --size '225/45X17' --source label",
        &correct,
    ] {
        let lines = told(&book, line);
        assert_eq!(&lines[..2], ["  225/45X17", "        ^"], "{line}: {lines:?}");
        assert!(lines[2].ends_with("Look at the letter between the aspect ratio and the rim."), "{line}: {lines:?}");
        let json = say(&book, &format!("{line} --json"));
        assert_eq!(json.err.trim_end().lines().count(), 1, "one sentence beside the object: {json:?}");
        assert!(json.json()["error"]["at"].is_string(), "{json:?}");
    }
}

#[test]
fn a_place_is_marked_by_what_a_screen_shows() {
    let book = Path::new("/nonexistent");
    // Two columns each for the first two signs (UAX #11), none for the accent.
    let lines = told(book, "lugbook sidewall '轮胎 225/45R17 300W'");
    assert_eq!(&lines[..2], ["  轮胎 225/45R17 300W", "                 ^^^"], "{lines:?}");
    let lines = told(book, "lugbook sidewall 'e\u{301} 225/45R17 300W'");
    assert_eq!(&lines[..2], ["  e\u{301} 225/45R17 300W", "              ^^^"], "{lines:?}");
    let lines = told(book, &format!("lugbook sidewall '{} 225/45R17 300W'", "2021 ".repeat(60)));
    assert!(lines.iter().take(2).all(|line| line.chars().count() <= 76), "{lines:?}");
}
