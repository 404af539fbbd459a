//! What stands on a sidewall, and one size in the place of another.

use clap::Args;
use lugbook::engine::{Host, SystemHost, Trouble};
use lugbook::sidewall::{self, Severity};
use lugbook::words::{Say, Words};
use serde_json::json;

use crate::answer::{Answer, Page};
use crate::options::{AtWord, Options, mend};

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
        let mut row = |name: &str, value: String| rows.push(vec![name.to_owned(), value]);
        let figure = |value: Option<f64>, unit: &str| value.map(|value| format!("{} {unit}", words.number(value, 1)));
        if let Some(size) = &view.size {
            row("Size", size.text.clone());
            row(
                "Diameter",
                figure(size.overall_diameter_mm, "mm").unwrap_or_else(|| "not known from this size".into()),
            );
            if let Some(height) = figure(size.section_height_mm, "mm") {
                row("Sidewall height", height);
            }
        }
        if let Some(service) = &view.service {
            row("Service", service.text.clone());
            if let Some(load) = figure(service.load_kg, "kg") {
                row("Load", load);
            }
            if let Some(speed) = service.max_kmh {
                row("Speed", format!("{speed} km/h"));
            }
        }
        if let Some(tin) = &marking.tin {
            row("DOT", tin.text().to_owned());
            row("Made", words.tin_age(tin, SystemHost::default().now().day()));
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
            None => mend("There is no size and no DOT number in this text.").at_word("0"),
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
                return Err(mend(format!("There is no size in “{}”.", crate::options::shorten(text))).at_word(text));
            }
            markings.push(marking);
        }
        let [first, second] = markings.as_slice() else { return Err(mend("Two sizes are compared.")) };
        let change = sidewall::equivalence(first, second);
        let figure = |value: Option<f64>, decimals: usize| match value {
            Some(value) => words.number(value, decimals),
            None => "not known".to_owned(),
        };
        let mut page = Page::default();
        let diameters: Vec<_> = change.diameter_mm.iter().map(|diameter| figure(diameter.0, 1)).collect();
        page.table(&[
            vec!["Diameter, mm".into(), diameters.join("  ")],
            vec!["Difference, %".into(), figure(change.difference_percent, 2)],
            vec!["True at 100".into(), figure(change.speedometer, 1)],
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
