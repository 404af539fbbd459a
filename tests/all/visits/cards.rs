//! Each procedure to a signed card, in both languages and both systems of units, on screen and on paper.

use lugbook::engine::Command;
use lugbook::finding::State;
use lugbook::logbook::Status;
use lugbook::report::paper::Sheet;
use lugbook::words::{Lang, Speech, Units, Words};

use super::driver::{MECHANIC, VEHICLE, Visit, procedures};
use crate::exports::paper::{letters, poppler};
use crate::report::text;

/// Units that only the other system has, as they are shown.
const METRIC: [&str; 5] = [" N·m", " kPa", " km", " mm", " kg"];
const US: [&str; 5] = [" ft·lb", " psi", " mi", "/32 in", " lb"];

/// Plays every procedure and holds its card against what was said.
fn every_card_says_what_was_done(lang: Lang, units: Units) {
    let speech = Speech { lang, units, ..Speech::default() };
    let (words, other) = (Words::new(speech), Words::new(Speech { lang: another(lang), ..speech }));
    for procedure in procedures() {
        let folder = tempfile::tempdir().unwrap();
        let mut visit = Visit::begin(folder.path(), &procedure, speech, 0);
        visit.play(|_| ());
        assert_eq!(visit.engine.book().jobs[0].status, Status::Signed, "{}", procedure.id);
        assert!(visit.engine.check(speech).unwrap().ok, "{}", procedure.id);

        let html = visit.engine.card(None, speech).unwrap();
        let card = text(&html);
        let place = format!("{} in {lang:?}, {units:?}", procedure.id);
        assert!(html.contains(&format!("<html lang=\"{}\">", lang.tag())), "{place}");
        for said in [VEHICLE, MECHANIC, &words.title(&procedure), &words.status(Status::Signed)] {
            assert!(card.contains(said), "{said}: {place}: {card}");
        }
        // No step is said in the other language; what both say alike tells nothing.
        for step in &procedure.steps {
            let foreign = other.step(step);
            assert!(!card.contains(&foreign) || foreign == words.step(step), "{foreign}: {place}");
        }
        // Everything was read in this system, so that the other one is not spoken of.
        let foreign = if units == Units::Us { METRIC } else { US };
        let number = |unit: &&str| {
            card.match_indices(*unit).any(|(at, _)| {
                let after = card[at + unit.len()..].chars().next();
                card[..at].ends_with(|c: char| c.is_ascii_digit()) && after.is_none_or(|c| !c.is_alphanumeric())
            })
        };
        let slips: Vec<&&str> = foreign.iter().filter(|unit| number(unit)).collect();
        // Limits are quoted as their rule writes them, and a jack's rating may be in tons.
        let rules = card.contains("2/32 in") || card.contains("1.6 mm");
        assert!(slips.iter().all(|unit| rules && [" mm", "/32 in"].contains(unit)), "{slips:?}: {place}: {card}");

        let pdf = visit.engine.card_pdf(None, Sheet::Letter, speech).unwrap();
        assert!(pdf.starts_with(b"%PDF-1.7"), "{place}");
        let Some(read) = poppler("pdftotext", &["-raw"], &pdf) else { continue };
        let read = letters(&read);
        for said in [VEHICLE, MECHANIC, &words.title(&procedure)] {
            assert!(read.contains(&letters(said)), "{said} is not on paper: {place}");
        }
    }
}

fn another(lang: Lang) -> Lang {
    if lang == Lang::En { Lang::Es } else { Lang::En }
}

#[test]
fn every_procedure_ends_in_a_signed_card_in_english_and_us_units() {
    every_card_says_what_was_done(Lang::En, Units::Us);
}

#[test]
fn every_procedure_ends_in_a_signed_card_in_english_and_metric_units() {
    every_card_says_what_was_done(Lang::En, Units::Metric);
}

#[test]
fn every_procedure_ends_in_a_signed_card_in_spanish_and_us_units() {
    every_card_says_what_was_done(Lang::Es, Units::Us);
}

#[test]
fn every_procedure_ends_in_a_signed_card_in_spanish_and_metric_units() {
    every_card_says_what_was_done(Lang::Es, Units::Metric);
}

#[test]
fn a_recheck_of_stud_piloted_duals_goes_by_way_of_the_outer_nuts() {
    let folder = tempfile::tempdir().unwrap();
    let by_id = |id: &str| procedures().into_iter().find(|procedure| procedure.id == id).expect("built in");
    let speech = Speech { units: Units::Us, ..Speech::default() };
    let mut visit = Visit::begin(folder.path(), &by_id("dual-wheels-off-and-on"), speech, 0);
    visit.play(|_| ());
    visit.procedure = by_id("recheck-visit");
    visit.open_again();
    let mut order = Vec::new();
    visit.play(|next| {
        if ["loosened", "rechecked", "final"].contains(&next.asks) {
            order.push(format!("{} {}", next.asks, next.at.clone().unwrap()));
        }
    });
    // Stud-piloted: loosen outer, set inner, set outer; both wheels of one pair came off.
    assert_eq!(order, ["loosened 2LO", "rechecked 2LI", "final 2LO"]);
    let card = text(&visit.engine.card(None, speech).unwrap());
    assert!(card.contains("5 of 5 held") && card.contains("5 of 5 at final torque"), "{card}");
}

#[test]
fn a_thin_disc_is_found_by_what_is_printed_on_it_and_thin_pads_by_the_manual() {
    let folder = tempfile::tempdir().unwrap();
    let procedure = procedures().into_iter().find(|procedure| procedure.id == "wheel-off-and-on").unwrap();
    let mut visit = Visit::begin(folder.path(), &procedure, Speech::default(), 0);
    let look = |at: &str, part, thickness: &str, least: Option<&str>| Command::Look {
        at: Some(at.to_owned()),
        part: Some(part),
        state: State::Sound,
        note: None,
        damage: None,
        thickness: Some(thickness.to_owned()),
        least: least.map(str::to_owned),
        photo: None,
    };
    use lugbook::entry::LookAt::{Disc, Pads};
    let notes = visit.say(look("FL", Disc, "21.8 mm", Some("22 mm"))).said;
    assert_eq!(notes, ["That is under the 22 mm that is printed. It is a finding."]);
    // Without a manual's figure nothing is said of pads: none is made up.
    assert!(visit.say(look("FL", Pads, "1 mm", None)).said.is_empty());
    let thin =
        |visit: &Visit| text(&visit.engine.card(None, Speech::default()).unwrap()).matches("is printed.").count();
    assert_eq!(thin(&visit), 1);
    let (pads, source) = ("2 mm".to_owned(), "owner's manual, page 301".to_owned());
    visit.say(Command::RecordBrakes { vehicle: None, pads, source });
    assert_eq!(thin(&visit), 2);
    visit.say(look("FR", Disc, "22 mm", Some("22 mm")));
    visit.say(look("FR", Pads, "2.1 mm", None));
    let card = text(&visit.engine.card(None, Speech::default()).unwrap());
    assert!(card.contains("Disc 21.8 mm thick; at least 22 mm is printed."), "{card}");
    assert!(card.contains("Pads 1 mm thick; at least 2 mm is printed."), "{card}");
    assert_eq!(thin(&visit), 3, "at the limit is told, over it is not: {card}");
}

#[test]
fn a_tractor_and_its_trailer_are_worked_with_true_figures() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    crate::replay::play("tractor-and-trailer.txt", &book);
    let card = text(&crate::program::done(&book, "lugbook card --job 1").out);
    let card = card.replace(['\u{202f}', '\u{a0}'], " ");
    for said in [
        "Taken off and hung where they were: 2LO, 2LI and 4RO.",
        "one set of nuts holds both wheels",
        "2LO and 2LI",
        "126 in",
        "125.75 in",
        "matched, by tape",
        "valves and gap seen",
        "19 000 lb, on gear rated 10 t",
        "10 of 10 at final torque",
        "Recheck the nuts after 500 mi, at 413 300 mi on the odometer",
        "5RO axle 5 right outer",
    ] {
        assert!(card.contains(said), "{said}: {card}");
    }
    // One set of nuts: the inner wheel has no circle of its own.
    assert!(!card.contains("Nuts of wheel 2LI"), "{card}");
    let last = text(&crate::program::done(&book, "lugbook card --job 3").out);
    assert!(last.contains("10 of 10 held") && last.contains("No further recheck is due"), "{last}");
}

#[test]
fn a_trailer_without_a_motor_is_worked_and_rechecked_three_times() {
    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    crate::replay::play("light-trailer-metric.txt", &book);
    let card = text(&crate::program::done(&book, "lugbook card --job 1").out);
    for said in ["standing by itself", "Wheel bearing: play.", "15 km", "40 km", "80 km", "no driven axle"] {
        assert!(card.contains(said), "{said}: {card}");
    }
    for not in ["lamp", "odometer."] {
        assert!(!card.contains(not), "{not}: {card}");
    }
    let last = text(&crate::program::done(&book, "lugbook card --job 4").out);
    assert!(last.contains("No further recheck is due"), "{last}");
}
