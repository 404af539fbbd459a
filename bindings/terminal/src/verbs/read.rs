//! Reading a sidewall from photos, and scoring readings against what was read by eye.

mod score;

use std::path::{Path, PathBuf};

use clap::Args;
use lugbook::engine::{Host, ReadView, Reader, Suggested, SystemHost, Trouble};
use lugbook::sight::{Circle, Continue};

use crate::answer::{Answer, Page};
use crate::options::{AtWord, Options, mend, shorten};
use crate::tongue::say;

/// Photos of one wheel.
#[derive(Debug, Args)]
#[command(after_help = "\
Several photos are one wheel: the whole of it, and close-ups of its lettering.
Every answer is a suggestion; compare it with the tire.

Examples:
  lugbook read wheel.jpg
  lugbook read wheel.jpg date.jpg --json
  lugbook read wheel.jpg --ring 2010,1480,1320
  lugbook read --score index.csv photos
  lugbook read --score index.csv photos --keep readings.jsonl --minutes 30

The models that read are fetched once with core/models/fetch; LUGBOOK_MODELS
names their folder where it is another one.")]
pub struct Read {
    /// The photos; with --score the folder that holds them
    #[arg(required = true, value_name = "PHOTO")]
    photos: Vec<PathBuf>,

    /// The wheel in the first photo, in pixels: middle across, middle down, radius
    #[arg(long, value_name = "CX,CY,R", allow_hyphen_values = true)]
    ring: Option<String>,

    /// Hold readings against a table of what stands on each photo
    #[arg(long, value_name = "INDEX.csv", conflicts_with = "ring")]
    score: Option<PathBuf>,

    /// With --score: keep each reading in this file, and read no photo that it holds
    #[arg(long, value_name = "FILE.jsonl", requires = "score")]
    keep: Option<PathBuf>,

    /// With --score: read no further photo after so many minutes
    #[arg(long, value_name = "N", requires = "score")]
    minutes: Option<u64>,

    /// Use one core only, so that times can be compared
    #[arg(long)]
    one_core: bool,
}

impl Read {
    /// Reads them.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let ring = self.ring.as_deref().map(circle).transpose()?;
        let open = || {
            let reader = Reader::open(&folder()?, options.speech())?;
            Ok(if self.one_core { reader.on_one_thread() } else { reader })
        };
        if let Some(index) = &self.score {
            let [folder] = self.photos.as_slice() else { return Err(mend(say("one-folder", &[]))) };
            let run = score::Run { keep: self.keep.as_deref(), minutes: self.minutes };
            return score::run(&open, index, folder, run, options);
        }
        let reader = open()?;
        let today = SystemHost::default().now().day();
        let view = reader.read(&self.photos, ring, today, options.speech(), &mut |_| Continue::Yes)?;
        let page = page(&view);
        Answer::new(&view, page)
    }
}

/// The folder of the models.
fn folder() -> Result<PathBuf, Trouble> {
    let named = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    if let Some(folder) = named("LUGBOOK_MODELS") {
        return Ok(folder);
    }
    let home = || std::env::var_os("HOME").map(|home| Path::new(&home).join(".cache"));
    let cache = named("XDG_CACHE_HOME").or_else(home);
    cache.map(|cache| cache.join("lugbook/models")).ok_or_else(|| mend(say("no-home", &[])))
}

/// A circle as it is typed.
fn circle(text: &str) -> Result<Circle, Trouble> {
    let wrong = || mend(say("no-circle", &[("given", shorten(text).into())])).at_word("--ring");
    let figures: Vec<f64> =
        text.split(',').map(|part| part.trim().parse()).collect::<Result<_, _>>().map_err(|_| wrong())?;
    match figures.as_slice() {
        &[x, y, r] if [x, y, r].iter().all(|figure| figure.is_finite()) && r > 0.0 => Ok(Circle { x, y, r }),
        _ => Err(wrong()),
    }
}

fn page(view: &ReadView) -> Page {
    let mut page = Page::default();
    let mut rows = Vec::new();
    let fields = [("size", &view.size), ("service", &view.service), ("date", &view.date), ("tin", &view.tin)];
    for (name, suggestions) in fields {
        rows.push(vec![say(name, &[]), told(suggestions)]);
    }
    if !view.words.is_empty() {
        rows.push(vec![say("molded-words", &[]), view.words.join(", ")]);
    }
    if let Some(arrow) = &view.arrow {
        let key = if arrow.side == "left" { "arrow-left" } else { "arrow-right" };
        rows.push(vec![say("arrow", &[]), say(key, &[("odds", (arrow.odds * 100.0).round().to_string().into())])]);
    }
    if !view.chalk.is_empty() {
        rows.push(vec![say("chalk", &[]), told(&view.chalk)]);
    }
    page.table(&rows);
    page.gap();
    page.line(&view.sentence);
    for hint in &view.judgement {
        page.indented("- ", &hint.sentence);
    }
    page
}

/// Suggestions with their odds, best first.
fn told(suggestions: &[Suggested]) -> String {
    if suggestions.is_empty() {
        return say("nothing-read", &[]);
    }
    let one = |s: &Suggested| format!("{} ({} %)", s.text, (s.odds * 100.0).round());
    suggestions.iter().take(3).map(one).collect::<Vec<_>>().join(", ")
}
