//! The card and the history on paper, read back by tools that have no part in making them.

use std::collections::HashMap;
use std::process::Command;

use lugbook::logbook::Logbook;
use lugbook::report::paper::{Sheet, pdf};
use lugbook::words::{Speech, Words};
use proptest::prelude::*;

use crate::program::{done, say};
use crate::report::visit::{called, whole};
use crate::report::{card_of, text};
use crate::skipped::skipped;

fn words() -> Words {
    Words::new(Speech::default())
}

fn paper(html: &str, sheet: Sheet) -> Vec<u8> {
    pdf(html, sheet, &words()).expect("a PDF")
}

fn whole_card() -> String {
    card_of(&whole(), Speech::default())
}

fn whole_history(logbook: &Logbook) -> String {
    let book = logbook.book();
    lugbook::report::history(&book, &book.vehicles[0], &lugbook::procedure::built_in().expect("built in"), &words())
}

/// What a tool of poppler says of a file; none when it is not installed.
pub fn poppler(tool: &str, options: &[&str], file: &[u8]) -> Option<String> {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("page.pdf");
    std::fs::write(&path, file).expect("the file");
    let mut command = Command::new(tool);
    command.args(options).arg(&path);
    if tool == "pdftotext" {
        command.arg("-");
    }
    let Ok(out) = command.output() else {
        skipped(&format!("a PDF looked at by {tool}: it is not installed (poppler-utils)"));
        return None;
    };
    // Older ones take the catalog's /Suspects false for a slip (ISO 32000-1, table 321: it is a boolean).
    let told = String::from_utf8_lossy(&out.stderr);
    let slips: Vec<&str> = told.lines().filter(|line| !line.is_empty() && !line.contains("Suspects object")).collect();
    assert!(out.status.success() && slips.is_empty(), "{tool}: {slips:?}");
    Some(String::from_utf8(out.stdout).expect("UTF-8"))
}

/// Letters only, so that where lines and words were cut does not matter.
pub fn letters(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// The text of a page of ours as a person reads it on paper, and in drawings.
fn said(html: &str) -> Vec<String> {
    let mut out = Vec::new();
    for line in text(html).lines() {
        let line = line.replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&").replace("&quot;", "\"");
        out.extend(line.split_whitespace().map(str::to_owned));
    }
    out
}

#[test]
fn the_same_page_gives_the_same_bytes_and_another_sheet_others() {
    let html = whole_card();
    let letter = paper(&html, Sheet::Letter);
    assert_eq!(letter, paper(&html, Sheet::Letter));
    assert_ne!(letter, paper(&html, Sheet::A4));
    assert!(letter.starts_with(b"%PDF-1.7") && letter.len() < 250_000, "{}", letter.len());
}

#[test]
fn nothing_that_the_page_says_is_left_out_on_paper() {
    for html in [whole_card(), whole_history(&whole())] {
        let Some(read) = poppler("pdftotext", &["-raw"], &paper(&html, Sheet::Letter)) else { return };
        let mut on_paper: HashMap<char, usize> = HashMap::new();
        letters(&read).chars().for_each(|c| *on_paper.entry(c).or_default() += 1);
        let read = letters(&read);
        // What only a screen reader is told stands in the tags, not in the text.
        let spoken = |word: &str| html.split("<title id").chain(html.split("<desc")).any(|part| part.contains(word));
        let lost: Vec<String> =
            said(&html).into_iter().filter(|word| !read.contains(&letters(word)) && !spoken(word)).collect();
        assert!(lost.is_empty(), "{lost:?}");
    }
}

#[test]
fn every_page_says_which_it_is_and_the_contents_list_is_right() {
    let html = whole_card();
    for sheet in [Sheet::Letter, Sheet::A4] {
        let Some(read) = poppler("pdftotext", &["-layout"], &paper(&html, sheet)) else { return };
        let pages: Vec<&str> = read.trim_end_matches('\u{c}').split('\u{c}').collect();
        assert!(pages.len() > 3, "{}", pages.len());
        for (page, number) in pages.iter().zip(1..) {
            assert!(page.contains(&format!("page {number} of {}", pages.len())), "{number}");
            assert!(page.contains("Wheel service card 2: Orchard truck"), "{number}");
        }
        let headings: Vec<&str> =
            html.split("<h2").skip(1).filter_map(|h| h.split_once('>')?.1.split('<').next()).collect();
        assert!(headings.len() > 10, "{headings:?}");
        let (_, contents) = pages[0].split_once("Contents").expect("a contents list");
        let mut lines = contents.lines().map(str::trim).filter(|line| !line.is_empty());
        for heading in headings {
            let line = lines.next().expect("a line");
            let number = line.strip_prefix(heading).unwrap_or_else(|| panic!("{line} is not {heading}"));
            let page: usize = number.trim().parse().unwrap_or_else(|why| panic!("{line}: {why}"));
            assert!(pages[page - 1].lines().any(|line| line.trim() == heading), "{heading} on page {page}");
        }
    }
}

#[test]
fn fonts_are_embedded_and_cut_and_the_file_is_tagged_on_the_right_sheet() {
    for (sheet, size) in [(Sheet::Letter, "612 x 792 pts (letter)"), (Sheet::A4, "595.276 x 841.89 pts (A4)")] {
        let file = paper(&whole_card(), sheet);
        let Some(fonts) = poppler("pdffonts", &[], &file) else { return };
        let fonts: Vec<&str> = fonts.lines().skip(2).collect();
        assert_eq!(fonts.len(), 2, "{fonts:?}");
        for font in fonts {
            let columns: Vec<&str> = font.split_whitespace().collect();
            let at = columns.iter().position(|word| word.starts_with("Identity")).expect("an encoding");
            assert_eq!(&columns[at + 1..at + 4], ["yes", "yes", "yes"], "embedded, subset, to Unicode: {font}");
        }
        let Some(about) = poppler("pdfinfo", &[], &file) else { return };
        let about: HashMap<&str, &str> = about.lines().filter_map(|line| line.split_once(':')).collect();
        assert_eq!(about["Title"].trim(), "Wheel service card 2: Orchard truck");
        assert_eq!(about["Tagged"].trim(), "yes");
        assert_eq!(about["Page size"].trim(), size);
        assert_eq!(about["JavaScript"].trim(), "no");
        let Some(tags) = poppler("pdfinfo", &["-struct"], &file) else { return };
        for tag in ["H1", "H2", "Table", "TH", "TD", "Figure", "LI", "TOC", "Link", "Caption"] {
            let found = tags.lines().any(|line| line.trim().split([' ', '(', ':']).next() == Some(tag));
            assert!(found, "{tag} is not in {tags}");
        }
    }
}

#[test]
fn a_table_that_goes_on_says_its_columns_again() {
    let rows: String = (0..90).map(|n| format!("<tr><th scope=\"row\">Tire {n}</th><td>{n}/32 in</td></tr>")).collect();
    let html = format!(
        "<html lang=\"en\"><head><title>Long</title></head><body><main><h1>Long</h1><section id=\"a\"><h2>Part</h2>\
         <table><caption>All</caption><thead><tr><th scope=\"col\">Mark</th><th scope=\"col\">Depth</th></tr></thead>\
         <tbody>{rows}</tbody></table></section></main></body></html>"
    );
    let Some(read) = poppler("pdftotext", &["-layout"], &paper(&html, Sheet::Letter)) else { return };
    let pages: Vec<&str> = read.trim_end_matches('\u{c}').split('\u{c}').collect();
    assert!(pages.len() >= 2, "{}", pages.len());
    for page in &pages {
        assert!(page.lines().any(|line| line.split_whitespace().eq(["Mark", "Depth"])), "{page}");
    }
    for n in 0..90 {
        assert_eq!(pages.iter().filter(|page| page.contains(&format!(" {n}/32"))).count(), 1, "{n}");
    }
}

#[test]
fn accents_and_what_the_font_lacks_are_seen() {
    let name = "Camión de Muñoz — ½ ¿señal? Łódź Жук 漢";
    let html = card_of(&called("Íñigo", name), Speech::default());
    let Some(read) = poppler("pdftotext", &["-raw"], &paper(&html, Sheet::Letter)) else { return };
    assert!(read.contains("Camión de Muñoz — ½ ¿señal? Łódź Жук"), "{read}");
    assert!(read.contains("Íñigo"));
}

#[test]
fn a_page_that_is_none_of_ours_is_set_as_text_or_refused() {
    let odd = "<html><title>x</title><main><blink>Told <em>all</em></blink> <td>the</td></li> same</main></html>";
    let read = poppler("pdftotext", &["-raw"], &paper(odd, Sheet::Letter));
    assert!(read.is_none_or(|read| read.contains("Told all the same")));
    assert!(pdf("", Sheet::Letter, &words()).is_err() && pdf("<p>no main", Sheet::A4, &words()).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]
    #[test]
    fn any_name_however_long_is_set(name in "[\\PC]{1,60}|[a-zñ]{400}", mechanic in "[\\PC]{1,30}") {
        let html = card_of(&called(&mechanic, &name), Speech::default());
        prop_assert!(paper(&html, Sheet::A4).len() > 5_000);
    }
}

#[test]
fn the_program_writes_pdfs_by_the_files_name() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    done(&book, "lugbook person add Wren");
    done(&book, "lugbook vehicle add \"Farm truck\" --model \"Yardmule 25\" --own");
    done(&book, "lugbook job open \"Farm truck\" rotation-on-a-lift air");
    let made = |line: &str, file: &str| -> Vec<u8> {
        let path = folder.path().join(file);
        done(&book, &format!("lugbook {line} --out {}", path.display()));
        std::fs::read(&path).unwrap()
    };
    let letter = made("card", "card.pdf");
    let a4 = made("card --paper a4", "CARD.PDF");
    let history = made("history \"farm truck\"", "history.pdf");
    for file in [&letter, &a4, &history] {
        assert!(file.starts_with(b"%PDF-"));
    }
    assert_ne!(letter, a4);
    assert!(made("history", "history.html").starts_with(b"<!DOCTYPE html>"));
    assert_eq!(say(&book, "lugbook card --paper tabloid --out x.pdf").code, Some(2));
    assert_eq!(say(&book, "lugbook history Barge").code, Some(2));
}
