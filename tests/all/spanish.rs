//! A visit said and shown in Spanish, from the first line to the signed card.

use std::collections::BTreeSet;
use std::path::Path;

use crate::demo::normal;
use crate::program::{Said, pictures, process, root};
use crate::report::text;

/// Runs a line in Spanish, at a time that does not move.
fn say(book: &Path, line: &str, more: &[&str]) -> Said {
    let mut process = process(book, line);
    process.env("LUGBOOK_LANG", "es").env("LUGBOOK_AT", "2026-11-24T09:15:00Z").args(more);
    process.output().expect("the program runs").into()
}

fn visit(file: &str) -> Vec<String> {
    let text = std::fs::read_to_string(root().join("bindings/terminal/demo").join(file)).expect("a visit");
    text.lines().map(|line| line.trim_start_matches('!').to_owned()).collect()
}

/// What was printed, without what differs from run to run.
fn plain(book: &Path, printed: &str) -> String {
    let folder = book.parent().expect("a folder").display().to_string();
    let program = pictures().display().to_string();
    normal(&printed.replace(&folder, "CARPETA").replace(&program, "FOTOS"))
}

#[test]
fn both_visits_have_the_same_lines_but_for_what_people_say() {
    let (english, spanish) = (visit("visit.txt"), visit("visit-es.txt"));
    assert_eq!(english.len(), spanish.len());
    for (one, two) in english.iter().zip(&spanish) {
        if one.starts_with('#') {
            assert!(two.starts_with("# ") && one != two, "{one} / {two}");
            continue;
        }
        let (one, two) = (shell_words::split(one).unwrap(), shell_words::split(two).unwrap());
        assert_eq!(one.len(), two.len(), "{one:?}");
        for (one, two) in one.iter().zip(&two) {
            assert!(one == two || one.contains(' ') && two.contains(' '), "{one} / {two}");
        }
    }
}

#[test]
fn a_visit_in_spanish_is_answered_and_signed_in_spanish() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    let card = folder.path().join("card.html");
    let (mut printed, mut shown) = (String::new(), BTreeSet::new());
    for line in visit("visit-es.txt").iter().filter(|line| line.starts_with("lugbook ")) {
        let typed = line
            .replace("{pictures}", &pictures().display().to_string())
            .replace("{card}", &card.display().to_string())
            .replace("{calibrated}", "2026-03-02");
        let said = say(&book, &typed, &[]);
        assert_eq!(said.code, Some(0), "{line}: {said:?}");
        printed.push_str(&format!("{line}\n"));
        // What stood under an earlier line already is left out.
        for part in plain(&book, &said.out).split("\n\n").map(|part| part.trim_end()) {
            let told = part.split_once(':').map_or(part, |(before, _)| before).to_owned();
            if !part.is_empty() && shown.insert(if part.starts_with("Trabajo 1,") { told } else { part.to_owned() }) {
                printed.push_str(&format!("{part}\n"));
            }
        }
    }
    insta::assert_snapshot!("screens", printed);
    let html = std::fs::read_to_string(card).unwrap();
    assert!(html.contains("<html lang=\"es\">"));
    insta::assert_snapshot!("card", normal(&text(&html)));

    // The same card in the units and with the decimal mark of another shop; what was read stands beside.
    let shown = |more: &[&str]| text(&say(&book, "lugbook card", more).out);
    let metric = shown(&["--units", "metric", "--decimal", "comma"]);
    assert!(metric.contains("7,1 6,3 6,3 7,1; 7,1 6,3 6,3 7,1; 7,1 6,3 6,3 6,3 mm (leído 9 8 8 9;"), "{metric}");
    assert!(metric.contains("125 a 150 N·m, 122 a 149 N·m (leído 90 a 110 ft·lb), rosca seca"), "{metric}");
    assert!(metric.contains("345 kPa (leído 50 psi), en frío"), "{metric}");
    let us = shown(&["--units", "us"]);
    assert!(us.contains("92 a 111 ft·lb (leído 125 a 150 N·m), 90 a 110 ft·lb, rosca seca"), "{us}");
    assert!(us.contains("50 psi, en frío") && us.contains("48\u{202f}212 mi"), "{us}");
}

#[test]
fn what_is_refused_in_english_is_refused_in_spanish_for_the_same_reason() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    let file = root().join("tests/all/scenarios/refusals.txt");
    let scenario = std::fs::read_to_string(file).unwrap();
    let mut lines = scenario.lines().peekable();
    let mut told = String::new();
    while let Some(line) = lines.next() {
        if !line.starts_with("lugbook ") {
            continue;
        }
        let said = say(&book, line, &[]);
        let mut code = 0;
        while let Some(expected) = lines.next_if(|next| next.starts_with("  ")) {
            if let Some(refusal) = expected.trim_start().strip_prefix("! ") {
                code = refusal.split(' ').next().and_then(|code| code.parse().ok()).expect("an exit code");
                assert_ne!(Some(said.sentence()), refusal.split_once(' ').map(|(_, english)| english), "{line}");
            }
        }
        assert_eq!(said.code, Some(code), "{line}: {said:?}");
        if code > 0 {
            told.push_str(&format!("{line}\n  {}\n", plain(&book, said.sentence())));
        }
    }
    insta::assert_snapshot!("refusals", told);
}

#[test]
fn a_line_that_is_not_understood_is_told_in_the_language_that_was_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    let told = |line: &str, code: i32| {
        let said: Said = process(&book, line).output().unwrap().into();
        assert_eq!(said.code, Some(code), "{line}: {said:?}");
        said.sentence().to_owned()
    };
    assert_eq!(told("lugbook --lang fr book", 2), "“fr” will not do for --lang <LANG>: give one of en, es.");
    assert_eq!(told("lugbook book --lang=es --nonsense", 2), "“--nonsense” no va aquí: vea “lugbook book --help”.");
    assert_eq!(
        told("lugbook --lang es torque", 2).split(':').next(),
        Some("lugbook torque necesita <AT>, <[NUT] moved|still>...")
    );
    let none = told("lugbook --lang es book", 2);
    assert!(
        none.starts_with("No hay libro en ") && none.ends_with("empiece uno con “lugbook person add NOMBRE”."),
        "{none}"
    );
}
