//! The job card of invented visits, at every step of them.

pub mod visit;

use lugbook::entry::Fact;
use lugbook::ident::Digest;
use lugbook::logbook::{Logbook, Status};
use lugbook::report::card;
use lugbook::words::{Lang, Speech, Units, Words};

use visit::{last_visit, no_torque, whole};

/// A picture of one gray block: enough to be held in a file.
fn small(_: Digest) -> Option<Vec<u8>> {
    let mut jpeg = Vec::new();
    let encoder = jpeg_encoder::Encoder::new(&mut jpeg, 60);
    encoder.encode(&[128; 64], 8, 8, jpeg_encoder::ColorType::Luma).ok()?;
    Some(jpeg)
}

pub fn card_of(logbook: &Logbook, speech: Speech) -> String {
    let book = logbook.book();
    let job = book.jobs.last().expect("a job");
    let procedures = lugbook::procedure::built_in().expect("built in");
    let procedure = procedures.iter().find(|procedure| procedure.id == job.procedure);
    card(logbook, &book, job, procedure, &Words::new(speech), &small)
}

/// The text a person reads: tags, style and pictures left out.
pub fn text(html: &str) -> String {
    let body = html.split("<body>").nth(1).expect("a body");
    let mut out = String::new();
    let mut rest = body;
    while let Some((before, after)) = rest.split_once('<') {
        out.push_str(before);
        let (tag, after) = after.split_once('>').expect("a closed tag");
        let name = tag.trim_start_matches('/').split([' ', '/']).next().unwrap_or_default();
        if ["p", "li", "h1", "h2", "h3", "tr", "dt", "dd", "td", "th", "figure", "text", "title", "desc"]
            .contains(&name)
            && !out.ends_with('\n')
        {
            out.push('\n');
        }
        rest = after;
    }
    out.lines().map(str::trim).filter(|line| !line.is_empty()).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_whole_visit_reads_as_it_was() {
    insta::assert_snapshot!(text(&card_of(&whole(), Speech::default())));
}

#[test]
fn a_whole_visit_reads_as_it_was_in_spanish() {
    let speech = Speech { lang: Lang::Es, units: Units::Metric, ..Speech::default() };
    insta::assert_snapshot!(text(&card_of(&whole(), speech)));
}

#[test]
fn a_card_is_true_at_every_step() {
    let entries: Vec<_> = whole().entries().cloned().collect();
    let opened = entries.iter().rposition(|entry| matches!(entry.fact(), Fact::JobOpened { .. })).expect("a job");
    for upto in opened..=entries.len() {
        let logbook = Logbook::from_iter(entries.iter().take(upto.max(opened + 1)).cloned());
        let html = card_of(&logbook, Speech::default());
        let book = logbook.book();
        let status = book.jobs.last().expect("a job").status;
        let signed = html.contains("Signed by name, not sealed by the device.");
        assert_eq!(signed, status == Status::Signed, "after {upto} entries");
        assert!(html.contains("stand above everything on this card"));
        assert!(html.contains("Next:") || status != Status::Open, "an open job says what is next, after {upto}");
    }
}

#[test]
fn a_job_that_ended_without_a_signature_says_so_and_why() {
    let html = text(&card_of(&no_torque(), Speech::default()));
    assert!(html.contains("ended without a signature"));
    assert!(html.contains("the customer left"));
    assert!(html.contains("Not done"));
}

#[test]
fn an_unknown_torque_is_printed_with_the_reason_the_gate_was_opened_with() {
    let html = text(&card_of(&no_torque(), Speech::default()));
    assert!(html.contains("Specification not known."));
    assert!(html.contains("The final gate was opened with this reason: no manual in the yard."));
}

#[test]
fn last_times_tread_stands_beside_this_times() {
    let html = text(&card_of(&whole(), Speech::default()));
    let before = text(&card_of(&last_visit(), Speech::default()));
    assert!(html.contains("Last time") && !before.contains("Last time"));
}

#[test]
fn both_values_of_a_correction_are_on_the_card_with_author_and_reason() {
    let html = card_of(&whole(), Speech::default());
    let part = html.split("id=\"corrections\"").nth(1).and_then(|rest| rest.split("</section>").next()).expect("it");
    let part = text(&format!("<body>{part}"));
    for wanted in ["48\u{202f}210 mi", "48\u{202f}120 mi", "two digits swapped", "Wren Tolliver"] {
        assert!(part.contains(wanted), "{wanted} is not in {part}");
    }
}

#[test]
fn the_card_needs_nothing_from_outside_and_no_script() {
    let html = card_of(&whole(), Speech::default());
    for forbidden in ["<script", "http://", "https://", "<link", "@import", "url(http", "onload"] {
        assert!(!html.contains(forbidden), "{forbidden}");
    }
    assert!(html.contains("src=\"data:image/jpeg;base64,/9j/"));
}

#[test]
fn what_people_wrote_cannot_become_markup() {
    let html = card_of(&whole(), Speech::default());
    assert!(html.contains("&lt;b&gt;steering&lt;/b&gt;") && !html.contains("<b>steering"));
}

#[test]
fn headings_step_down_one_at_a_time_and_pictures_have_words() {
    for lang in Lang::ALL {
        let html = card_of(&whole(), Speech { lang, ..Speech::default() });
        let tag = html.split("<html lang=\"").nth(1).and_then(|rest| rest.split('"').next());
        assert_eq!(tag, Some(lang.tag()));
        let levels: Vec<u32> = html
            .match_indices("<h")
            .filter_map(|(at, _)| html[at + 2..].chars().next().and_then(|level| level.to_digit(10)))
            .collect();
        assert_eq!(levels.iter().filter(|level| **level == 1).count(), 1);
        assert!(levels.windows(2).all(|pair| pair[1] <= pair[0] + 1), "{levels:?}");
        for img in html.split("<img ").skip(1) {
            let tag = img.split('>').next().expect("a tag");
            assert!(tag.contains("alt=\"") && !tag.contains("alt=\"\""), "{tag}");
        }
        for svg in html.split("<svg ").skip(1) {
            let opening = svg.split('>').next().expect("a tag");
            assert!(opening.contains("aria-hidden") || opening.contains("role=\"img\""), "{opening}");
        }
        assert!(!html.contains("card-") || !text(&html).contains("card-"), "a name without a sentence");
        for table in html.split("<table>").skip(1) {
            assert!(table.contains("scope=\"col\"") && table.starts_with("<caption>"));
        }
    }
}

#[test]
fn units_are_chosen_apart_and_what_was_read_stays() {
    let speech = Speech { units: Units::Metric, ..Speech::default() };
    let html = text(&card_of(&whole(), speech));
    assert!(html.contains("mm (read 6/32 in)"), "depths are shown in mm with what was read");
}

/// Relative luminance and contrast ratio as WCAG 2.2 defines them.
fn contrast(one: &str, other: &str) -> f64 {
    let light = |color: &str| {
        let hex = color.trim_start_matches('#');
        let hex = if hex.len() == 3 { hex.chars().flat_map(|c| [c, c]).collect() } else { hex.to_owned() };
        let part = |at: usize| {
            let value = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).expect("hex")) / 255.0;
            if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
        };
        0.2126 * part(0) + 0.7152 * part(2) + 0.0722 * part(4)
    };
    let (a, b) = (light(one), light(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn lettering_stands_out_by_four_and_a_half_on_light_and_seven_on_dark() {
    let css = include_str!("../../core/src/report/card.css");
    let palettes: Vec<&str> = css.split(":root{").skip(1).filter_map(|rest| rest.split('}').next()).collect();
    assert_eq!(palettes.len(), 3, "light, dark, print");
    for (palette, least) in palettes.iter().zip([4.5, 7.0, 4.5]) {
        let color = |name: &str| {
            let wanted = format!("--{name}:");
            palette.split(';').find_map(|pair| pair.strip_prefix(wanted.as_str())).expect("a color")
        };
        for ground in ["ground", "panel"] {
            for letters in ["ink", "soft"] {
                let ratio = contrast(color(ground), color(letters));
                assert!(ratio >= least, "{letters} on {ground}: {ratio:.2}");
            }
        }
        assert!(contrast(color("accent"), color("on-accent")) >= least);
        assert!(contrast(color("ground"), color("fill")) >= 3.0 && contrast(color("ground"), color("line")) >= 3.0);
    }
}
