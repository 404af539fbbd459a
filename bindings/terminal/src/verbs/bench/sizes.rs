//! What stands on a sidewall, and one size in the place of another.

use clap::Args;
use lugbook::engine::{Host, SystemHost, Trouble};
use lugbook::sidewall::{self, Severity};
use lugbook::words::{Say, Words};
use serde_json::json;

use crate::answer::{Answer, Page};
use crate::options::{AtWord, Options, mend};
use crate::tongue::say;

/// A marking.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook sidewall \"225/45R17 91W DOT 1HKB 9FLP 0723\"\n  lugbook sidewall \"31x10.5R15LT 109Q\""
)]
pub struct Sidewall {
    /// What stands on the sidewall: size, load and speed, DOT with its date
    text: String,
}

/// Two sizes.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook sizes \"205/55R16 91V\" \"225/45R17 91W\"")]
pub struct Sizes {
    /// The size the vehicle is made for
    first: String,
    /// The size in its place
    second: String,
}

impl Sidewall {
    /// Reads it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let marking = sidewall::parse(&self.text);
        let view = sidewall::Answer::of(&marking);
        let mut page = Page::default();
        let mut rows: Vec<Vec<String>> = Vec::new();
        let mut row = |name: &str, value: String| rows.push(vec![say(name, &[]), value]);
        let figure = |value: Option<f64>, unit: &str| value.map(|value| format!("{} {unit}", words.number(value, 1)));
        if let Some(size) = &view.size {
            row("size", size.text.clone());
            row("diameter", figure(size.overall_diameter_mm, "mm").unwrap_or_else(|| say("diameter-not-known", &[])));
            if let Some(height) = figure(size.section_height_mm, "mm") {
                row("sidewall-height", height);
            }
        }
        if let Some(service) = &view.service {
            row("service", service.text.clone());
            if let Some(load) = figure(service.load_kg, "kg") {
                row("load", load);
            }
            if let Some(speed) = service.max_kmh {
                row("speed", format!("{speed} km/h"));
            }
        }
        if let Some(tin) = &marking.tin {
            row("tin", tin.text().to_owned());
            row("made", words.tin_age(tin, SystemHost::default().now().day()));
        }
        page.table(&rows);
        for problem in &marking.problems {
            page.indented("- ", &format!("{} {}", problem.say(&words), words.sidewall_next(problem)));
        }
        let answer = Answer::new(&view, page)?;
        if !marking.refused() && marking.understood() {
            return Ok(answer);
        }
        let first = marking.problems.iter().find(|problem| problem.severity == Severity::Error);
        let trouble = match first.or(marking.problems.first()) {
            Some(problem) => mend(problem.say(&words)).at_word(&problem.at.to_string()),
            None => mend(say("no-size-no-tin", &[])).at_word("0"),
        };
        Ok(answer.refused(trouble))
    }
}

impl Sizes {
    /// Compares them.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let mut markings = Vec::new();
        for text in [&self.first, &self.second] {
            let marking = sidewall::parse(text);
            let error = marking.problems.iter().find(|problem| problem.severity == Severity::Error);
            if let Some(problem) = error.filter(|_| marking.refused()) {
                return Err(mend(problem.say(&words)).at_word(text));
            }
            if marking.size.is_none() {
                return Err(mend(say("no-size", &[("given", crate::options::shorten(text).into())])).at_word(text));
            }
            markings.push(marking);
        }
        let [first, second] = markings.as_slice() else { return Err(mend(say("two-sizes", &[]))) };
        let change = sidewall::equivalence(first, second);
        let figure = |value: Option<f64>, decimals: usize| match value {
            Some(value) => words.number(value, decimals),
            None => say("not-known", &[]),
        };
        let mut page = Page::default();
        let diameters: Vec<_> = change.diameter_mm.iter().map(|diameter| figure(diameter.0, 1)).collect();
        page.table(&[
            vec![say("diameter-mm", &[]), diameters.join("  ")],
            vec![say("difference", &[]), figure(change.difference_percent, 2)],
            vec![say("true-at-100", &[]), figure(change.speedometer, 1)],
        ]);
        let mut view = serde_json::to_value(&change).unwrap_or_default();
        for (at, finding) in change.findings.iter().enumerate() {
            let sentence = finding.say(&words);
            page.indented("- ", &sentence);
            if let Some(object) = view["findings"].get_mut(at).and_then(|finding| finding.as_object_mut()) {
                object.insert("sentence".to_owned(), json!(sentence));
            }
        }
        Answer::new(&view, page)
    }
}
