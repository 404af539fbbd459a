//! Readings held against what was read by eye. Readings are kept in a file when one is named, so that a long run can be
//! stopped and goes on, and so that readings made otherwise are scored by the same rules.

use std::collections::BTreeMap;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use lugbook::engine::{Host, ReadView, Reader, Suggested, SystemHost, Trouble};
use lugbook::sight::Continue;
use serde::{Deserialize, Serialize};
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
    #[serde(default)]
    arrow: String,
    #[serde(default)]
    chalk: String,
}

/// One suggestion of a kept reading.
#[derive(Debug, Clone, Serialize, Deserialize)]
struct Said {
    text: String,
    odds: f64,
}

/// What was read on one photo, as it is kept: one line of JSON.
#[derive(Debug, Clone, Default, Serialize, Deserialize)]
#[serde(default)]
struct Kept {
    file: String,
    size: Vec<Said>,
    service: Vec<Said>,
    date: Vec<Said>,
    tin: Vec<Said>,
    words: Vec<String>,
    arrow: Vec<Said>,
    chalk: Vec<Said>,
    first_ms: Option<u64>,
    took_ms: u64,
}

impl Kept {
    fn of(file: &str, view: &ReadView) -> Self {
        let said = |all: &[Suggested]| all.iter().map(|s| Said { text: s.text.clone(), odds: s.odds }).collect();
        Self {
            file: file.to_owned(),
            size: said(&view.size),
            service: said(&view.service),
            date: said(&view.date),
            tin: said(&view.tin),
            words: view.words.iter().map(|word| (*word).to_owned()).collect(),
            arrow: view.arrow.iter().map(|arrow| Said { text: arrow.way.to_owned(), odds: arrow.odds }).collect(),
            chalk: said(&view.chalk),
            first_ms: view.first_ms,
            took_ms: view.took_ms,
        }
    }
}

/// How long a run goes on, and where its readings are kept.
#[derive(Debug, Clone, Copy)]
pub struct Run<'a> {
    pub keep: Option<&'a Path>,
    pub minutes: Option<u64>,
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
    photos: usize,
    times: Vec<u64>,
    firsts: Vec<u64>,
    false_words: usize,
    /// Fields that can't be seen, read with confidence.
    sure_of_nothing: usize,
}

/// Reads what is not kept yet, and scores all. `open` loads the models, once something must be read.
pub fn run(
    open: &dyn Fn() -> Result<Reader, Trouble>,
    index: &Path,
    folder: &Path,
    run: Run<'_>,
    options: &Options,
) -> Result<Answer, Trouble> {
    let name = named(index);
    let bad = |why: csv::Error| mend(cannot("csv", &name, &why)).at_word(&name);
    let text = text(index)?;
    let mut table = csv::ReaderBuilder::new().flexible(true).trim(csv::Trim::All).from_reader(text.as_bytes());
    let rows: Vec<Row> = table.deserialize().collect::<Result<_, _>>().map_err(bad)?;
    let today = SystemHost::default().now().day();
    let mut known = run.keep.map(kept).transpose()?.unwrap_or_default();
    let (began, until) = (Instant::now(), run.minutes.map(|minutes| Duration::from_secs(60 * minutes)));
    let mut score = Score::default();
    let mut reader = None;
    for row in &rows {
        let reading = match known.remove(&row.file) {
            Some(reading) => reading,
            None if until.is_some_and(|until| began.elapsed() >= until) => continue,
            None => {
                let photo: PathBuf = folder.join(&row.file);
                let reader = match &mut reader {
                    Some(reader) => reader,
                    none => none.insert(open()?),
                };
                let view = reader.read(&[photo], None, today, options.speech(), &mut |_| Continue::Yes)?;
                let reading = Kept::of(&row.file, &view);
                if let Some(file) = run.keep {
                    keep(file, &reading)?;
                }
                reading
            }
        };
        score.add(row, &reading);
    }
    score.answer()
}

/// The readings that a file holds, by photo. A line that was cut short when a run was stopped is read again.
fn kept(file: &Path) -> Result<BTreeMap<String, Kept>, Trouble> {
    if !file.exists() {
        return Ok(BTreeMap::new());
    }
    let text = text(file)?;
    let readings = text.lines().filter_map(|line| serde_json::from_str::<Kept>(line).ok());
    Ok(readings.map(|reading| (reading.file.clone(), reading)).collect())
}

fn keep(file: &Path, reading: &Kept) -> Result<(), Trouble> {
    let name = named(file);
    let line = serde_json::to_string(reading).map_err(|why| mend(cannot("write", &name, &why)))?;
    let add = || {
        let mut file = std::fs::OpenOptions::new().create(true).append(true).open(file)?;
        // Begins a line of its own behind one that was cut short.
        writeln!(file, "\n{line}")
    };
    add().map_err(|why| mend(cannot("write", &name, &why)).at_word(&name))
}

impl Score {
    fn add(&mut self, row: &Row, view: &Kept) {
        self.photos += 1;
        self.times.push(view.took_ms);
        self.firsts.extend(view.first_ms);
        let body = |s: &Said| body(&s.text, row);
        let same = |truth: &str, text: &str| text == truth;
        self.field(row, "size", &row.size, &view.size, |s| s.text.clone(), same);
        self.field(row, "service", &row.service, &view.service, |s| s.text.clone(), same);
        self.field(row, "date", &row.date, &view.date, |s| s.text.clone(), same);
        self.field(row, "tin", &row.tin_body, &view.tin, body, same);
        self.field(row, "arrow", &row.arrow, &view.arrow, |s| s.text.clone(), same);
        self.field(row, "chalk", &row.chalk, &view.chalk, |s| s.text.clone(), same);
        let wanted: Vec<&str> = row.words.split_whitespace().collect();
        for word in &wanted {
            let found = view.words.iter().any(|read| read == word);
            let tally = self.tallies.entry((row.kind.clone(), "words")).or_default();
            tally.of += 1;
            tally.first += usize::from(found);
            tally.in_three += usize::from(found);
        }
        self.false_words += view.words.iter().filter(|word| !wanted.contains(&word.as_str())).count();
    }

    fn field(
        &mut self,
        row: &Row,
        field: &'static str,
        truth: &str,
        read: &[Said],
        of: impl Fn(&Said) -> String,
        same: impl Fn(&str, &str) -> bool,
    ) {
        if truth.is_empty() {
            // Nothing of it can be seen: being sure of something is a mistake.
            let misled = read.first().is_some_and(|best| best.odds > CONFIDENT);
            self.sure_of_nothing += usize::from(misled);
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

    fn answer(mut self) -> Result<Answer, Trouble> {
        let photos = self.photos;
        self.times.sort_unstable();
        self.firsts.sort_unstable();
        let median = self.times.get(self.times.len() / 2).copied();
        let first = self.firsts.get(self.firsts.len() / 2).copied();
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
                ("first", first.unwrap_or(0).to_string().into()),
                ("nothing", self.sure_of_nothing.into()),
                ("false", self.false_words.into()),
            ],
        ));
        let view = json!({
            "photos": photos, "fields": fields, "calibration": classes, "false_words": self.false_words,
            "sure_of_nothing": self.sure_of_nothing, "first_median_ms": first, "median_ms": median, "worst_ms": worst, "misses": self.misses,
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
