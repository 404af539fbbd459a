//! Readings held against what was read by eye.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use lugbook::engine::{Host, ReadView, Reader, Suggested, SystemHost, Trouble};
use lugbook::sight::Continue;
use serde::Deserialize;
use serde_json::{Value, json};

use super::super::bench::text;
use super::super::book::cannot;
use crate::answer::{Answer, Page};
use crate::options::{AtWord, Options, mend, named};
use crate::tongue::say;

/// Odds over which a wrong reading counts as confident.
const CONFIDENT: f64 = 0.9;
/// Bounds of the classes of odds in the table of calibration.
const CLASSES: [f64; 6] = [0.0, 0.5, 0.7, 0.8, 0.9, 1.001];

/// A row of the table: what stands on a photo; empty where it can't be seen.
#[derive(Debug, Deserialize)]
struct Row {
    file: String,
    #[serde(default)]
    kind: String,
    #[serde(default)]
    size: String,
    #[serde(default)]
    service: String,
    #[serde(default)]
    tin_body: String,
    #[serde(default)]
    date: String,
    #[serde(default)]
    words: String,
}

/// Rights of one field.
#[derive(Debug, Clone, Copy, Default)]
struct Tally {
    of: usize,
    first: usize,
    in_three: usize,
    /// Within one letter, of numbers.
    near: usize,
    /// Confident and wrong.
    misled: usize,
}

#[derive(Debug, Default)]
struct Score {
    tallies: BTreeMap<(String, &'static str), Tally>,
    /// By class of odds: how many, how many right, sum of the odds.
    calibration: [(usize, usize, f64); CLASSES.len() - 1],
    misses: Vec<Value>,
    times: Vec<u64>,
    false_words: usize,
}

pub fn run(reader: &Reader, index: &Path, folder: &Path, options: &Options) -> Result<Answer, Trouble> {
    let name = named(index);
    let bad = |why: csv::Error| mend(cannot("csv", &name, &why)).at_word(&name);
    let text = text(index)?;
    let mut table = csv::ReaderBuilder::new().flexible(true).trim(csv::Trim::All).from_reader(text.as_bytes());
    let rows: Vec<Row> = table.deserialize().collect::<Result<_, _>>().map_err(bad)?;
    let today = SystemHost::default().now().day();
    let mut score = Score::default();
    for row in &rows {
        let photo: PathBuf = folder.join(&row.file);
        let view = reader.read(&[photo], None, today, options.speech(), &mut |_| Continue::Yes)?;
        score.add(row, &view);
    }
    score.answer(rows.len())
}

impl Score {
    fn add(&mut self, row: &Row, view: &ReadView) {
        self.times.push(view.took_ms);
        let body = |s: &Suggested| body(&s.text, row);
        let same = |truth: &str, text: &str| text == truth;
        self.field(row, "size", &row.size, &view.size, |s| s.text.clone(), same);
        self.field(row, "service", &row.service, &view.service, |s| s.text.clone(), same);
        self.field(row, "date", &row.date, &view.date, |s| s.text.clone(), same);
        self.field(row, "tin", &row.tin_body, &view.tin, body, same);
        let wanted: Vec<&str> = row.words.split_whitespace().collect();
        for word in &wanted {
            let found = view.words.contains(word);
            let tally = self.tallies.entry((row.kind.clone(), "words")).or_default();
            tally.of += 1;
            tally.first += usize::from(found);
            tally.in_three += usize::from(found);
        }
        self.false_words += view.words.iter().filter(|word| !wanted.contains(word)).count();
    }

    fn field(
        &mut self,
        row: &Row,
        field: &'static str,
        truth: &str,
        read: &[Suggested],
        of: impl Fn(&Suggested) -> String,
        same: impl Fn(&str, &str) -> bool,
    ) {
        if truth.is_empty() {
            return;
        }
        let texts: Vec<String> = read.iter().map(of).collect();
        let right = |text: &String| same(truth, text);
        let first = texts.first().is_some_and(right);
        let tally = self.tallies.entry((row.kind.clone(), field)).or_default();
        tally.of += 1;
        tally.first += usize::from(first);
        tally.in_three += usize::from(texts.iter().take(3).any(right));
        tally.near += usize::from(texts.first().is_some_and(|text| within_one(truth, text)));
        if let Some(best) = read.first() {
            tally.misled += usize::from(!first && best.odds > CONFIDENT);
            let class = CLASSES.windows(2).position(|ends| matches!(ends, [a, b] if (*a..*b).contains(&best.odds)));
            if let Some((count, rights, odds)) = class.and_then(|class| self.calibration.get_mut(class)) {
                *count += 1;
                *rights += usize::from(first);
                *odds += best.odds;
            }
        }
        if !first {
            let read: Vec<Value> = read.iter().take(3).map(|s| json!({"text": s.text, "odds": s.odds})).collect();
            self.misses.push(json!({"file": row.file, "field": field, "truth": truth, "read": read}));
        }
    }

    fn answer(mut self, photos: usize) -> Result<Answer, Trouble> {
        self.times.sort_unstable();
        let median = self.times.get(self.times.len() / 2).copied();
        let worst = self.times.last().copied();
        let mut page = Page::default();
        let mut table = vec![
            ["kind", "field", "right-first", "in-three", "within-one", "confident-wrong"]
                .map(|name| say(&format!("score-{name}"), &[]))
                .to_vec(),
        ];
        let mut fields = Vec::new();
        for ((kind, field), tally) in &self.tallies {
            let of = |count: usize| format!("{count}/{}", tally.of);
            let near = if *field == "tin" { of(tally.near) } else { String::new() };
            let name = if *field == "words" { "molded-words" } else { *field };
            let cells = [of(tally.first), of(tally.in_three), near, tally.misled.to_string()];
            table.push([kind.clone(), say(name, &[])].into_iter().chain(cells).collect());
            fields.push(json!({
                "kind": kind, "field": field, "of": tally.of, "right_first": tally.first,
                "right_in_three": tally.in_three, "within_one_letter": tally.near, "confident_wrong": tally.misled,
            }));
        }
        page.table(&table);
        page.gap();
        let mut odds = vec![["odds", "readings", "right"].map(|name| say(&format!("score-{name}"), &[])).to_vec()];
        let mut classes = Vec::new();
        for ((count, rights, sum), ends) in self.calibration.iter().zip(CLASSES.windows(2)) {
            let &[from, to] = ends else { continue };
            let to = to.min(1.0);
            odds.push(vec![format!("{from:.1}..{to:.1}"), count.to_string(), rights.to_string()]);
            let mean = if *count > 0 { Some(sum / *count as f64) } else { None };
            classes.push(json!({"from": from, "to": to, "readings": count, "right": rights, "mean_odds": mean}));
        }
        page.table(&odds);
        page.gap();
        page.line(&say(
            "score-times",
            &[
                ("photos", photos.into()),
                ("median", median.unwrap_or(0).to_string().into()),
                ("worst", worst.unwrap_or(0).to_string().into()),
                ("false", self.false_words.into()),
            ],
        ));
        let view = json!({
            "photos": photos, "fields": fields, "calibration": classes, "false_words": self.false_words,
            "median_ms": median, "worst_ms": worst, "misses": self.misses,
        });
        Answer::new(&view, page)
    }
}

/// A number without its date, where one is known to stand behind it.
fn body(text: &str, row: &Row) -> String {
    let without = text.strip_suffix(row.date.as_str()).filter(|body| !body.is_empty() && !row.date.is_empty());
    without.unwrap_or(text).to_owned()
}

/// Whether two texts differ by at most one letter: put in, left out or taken for another.
fn within_one(a: &str, b: &str) -> bool {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let same = a.iter().zip(&b).take_while(|(a, b)| a == b).count();
    let (a, b) = (a.get(same..).unwrap_or_default(), b.get(same..).unwrap_or_default());
    let tail = |slice: &[char]| slice.get(1..).map(<[char]>::to_vec);
    a == b
        || tail(a).as_deref() == Some(b)
        || tail(b).as_deref() == Some(a)
        || (tail(a).is_some() && tail(a) == tail(b))
}

#[cfg(test)]
mod tests {
    use super::within_one;

    #[test]
    fn one_letter_may_differ_be_missing_or_too_many() {
        for near in ["1HKB9FLP", "1HKB9FLQ", "1HKB9FL", "1HKBB9FLP", "HKB9FLP", "1HKB9FLPX"] {
            assert!(within_one("1HKB9FLP", near) && within_one(near, "1HKB9FLP"), "{near}");
        }
        for far in ["", "1HKB9F", "1HKB9FQQ", "XHKB9FLQ", "1HKB9FLPXX"] {
            assert!(!within_one("1HKB9FLP", far), "{far}");
        }
    }
}
