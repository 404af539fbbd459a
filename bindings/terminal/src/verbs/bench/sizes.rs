//! What stands on a sidewall, and one size in the place of another.

use clap::Args;
use lugbook::engine::{Host, SystemHost, Trouble};
use lugbook::measure::SpanUnit::Millimetre;
use lugbook::measure::SpeedUnit::KilometrePerHour;
use lugbook::measure::{Load, LoadUnit, Span, Speed};
use lugbook::sidewall::{self, Severity};
use lugbook::words::{Say, Words};
use serde_json::json;

use crate::answer::{Answer, Page};
use crate::options::{AtWord, Options, mend, shorten};
use crate::pointer;
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
        let span = |mm: Option<f64>| Some(words.computed(&Span::new((mm? * 10.0).round() / 10.0, Millimetre).ok()?));
        if let Some(size) = &view.size {
            row("size", size.text.clone());
            row("diameter", span(size.overall_diameter_mm).unwrap_or_else(|| say("diameter-not-known", &[])));
            if let Some(height) = span(size.section_height_mm) {
                row("sidewall-height", height);
            }
        }
        if let Some(service) = &view.service {
            row("service", service.text.clone());
            if let Some(load) = service.load_kg.and_then(|kg| Load::new(kg, LoadUnit::Kilogram).ok()) {
                row("load", words.computed(&load));
            }
            if let Some(speed) = service.max_kmh.and_then(|kmh| Speed::new(kmh.into(), KilometrePerHour).ok()) {
                row("speed", words.computed(&speed));
            }
        }
        if let Some(tin) = &marking.tin {
            row("tin", tin.text().to_owned());
            row("made", words.tin_age(tin, SystemHost::default().now().day()));
        }
        page.table(&rows);
        for problem in &marking.problems {
            if problem.severity > Severity::Note {
                page.gap();
                pointer::lines(&self.text, problem.at, problem.len).iter().for_each(|line| page.push(line));
            }
            page.indented("- ", &format!("{} {}", problem.say(&words), words.sidewall_next(problem)));
        }
        let answer = Answer::new(&view, page)?;
        if !marking.refused() && marking.understood() {
            return Ok(answer);
        }
        let trouble = Trouble::of_marking(&self.text, &marking, &words);
        Ok(answer.refused(trouble.unwrap_or_else(|| {
            let all = self.text.chars().count();
            let trouble = mend(say("no-size-no-tin", &[])).at_word("0");
            trouble.pointing(&self.text, 0, all, say("no-size-no-tin-next", &[]))
        })))
    }
}

impl Sizes {
    /// Compares them.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let mut markings = Vec::new();
        for text in [&self.first, &self.second] {
            let marking = sidewall::parse(text);
            if let Some(trouble) = Trouble::of_marking(text, &marking, &words) {
                return Err(trouble.at_word(text));
            }
            if marking.size.is_none() {
                let trouble = mend(say("no-size", &[("given", shorten(text).into())])).at_word(text);
                return Err(trouble.pointing(text, 0, text.chars().count(), say("no-size-next", &[])));
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
