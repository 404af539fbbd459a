//! Questions that stand in a file: rotations, orders of lifting, wear.

use std::collections::BTreeSet;
use std::io::Read;
use std::path::{Path, PathBuf};

use clap::Args;
use lugbook::engine::Trouble;
use lugbook::vehicle::{Layout, Letters};
use lugbook::words::{Say, WearView, Words};
use lugbook::{lifting, rotation, wear};
use serde_json::json;

use super::super::book::cannot;
use crate::answer::{Answer, Page};
use crate::options::{Absent, AtWord, Options, mend, named};
use crate::tongue::say;

/// The most that is read of a file: far more than any question holds.
const MOST_BYTES: u64 = 1 << 20;

/// A rotation.
#[derive(Debug, Args)]
#[command(after_help = "\
The file, in TOML:
  drive = \"rear\"            front, rear, all, part-time, unknown
  class = \"light-truck\"
  horizon = 4               visits looked ahead
  interval_km = 10000
  [[tires]]
  at = \"FL\"
  size = \"LT245/75R16\"
  service = \"120/116S\"
  depth_32 = [9, 8, 9]      or depth_mm, from the outer groove inward
  rate_mm_per_1000_km = 0.1 when it is known
and so on for each tire; directional, asymmetric, studded = true where they are.
Whole files to try stand in bindings/terminal/examples.")]
pub struct RotateFile {
    /// The file
    file: PathBuf,
}

/// An order of lifting; without a file that of the job in the bay.
#[derive(Debug, Args)]
#[command(after_help = "\
The file, in TOML:
  [gear]
  kind = \"floor-jack\"       two-post-lift, four-post-lift, bottle-jack …
  stands = 2
  [moves]
  FL = \"RL\"
  RL = \"FL\"
Whole files to try stand in bindings/terminal/examples.")]
pub struct LiftFile {
    /// The file; the job in the bay when it is left out
    file: Option<PathBuf>,
}

/// A history of tread; without a file that of the vehicle in the bay.
#[derive(Debug, Args)]
#[command(after_help = "\
The file, in CSV with a header:
  distance_km,at,depth_mm,depth_mm,depth_mm
  0,FL,8.0,8.1,8.0
  15000,FL,6.5,6.7,6.4
distance_mi and depth_32 are read as well; a column “tire” follows a tire that
moves. A whole file to try stands in bindings/terminal/examples.")]
pub struct WearFile {
    /// The file; the vehicle in the bay when it is left out
    file: Option<PathBuf>,
}

/// The text of a file that a question stands in.
pub fn text(file: &Path) -> Result<String, Trouble> {
    let name = named(file);
    let bad = |why: String| mend(why).at_word(&name);
    // Asked before opening: opening a pipe would wait for its writer.
    match std::fs::metadata(file) {
        Ok(about) if about.is_file() => {}
        Ok(_) => return Err(bad(say("no-file", &[("name", name.as_str().into())]))),
        Err(why) => return Err(bad(cannot("read", &name, &why))),
    }
    let opened = std::fs::File::open(file).map_err(|why| bad(cannot("read", &name, &why)))?;
    let mut bytes = Vec::new();
    opened.take(MOST_BYTES + 1).read_to_end(&mut bytes).map_err(|why| bad(cannot("read", &name, &why)))?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(bad(say("file-too-long", &[("name", name.as_str().into())])));
    }
    String::from_utf8(bytes).map_err(|_| bad(say("file-not-text", &[("name", name.as_str().into())])))
}

impl RotateFile {
    /// Plans it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let name = named(&self.file);
        let file =
            rotation::RequestFile::read(&text(&self.file)?).map_err(|why| mend(why.say(&words)).at_word(&name))?;
        let request = file.request().map_err(|why| mend(why.say(&words)).at_word(&name))?;
        let answer = rotation::plan(&request).map_err(|why| mend(why.say(&words)).at_word(&name))?;
        let view = words.rotation(&answer, &request.layout);
        let mut page = Page::default();
        if let Some(best) = view.plans.first() {
            page.line(&best.shout);
        }
        for note in &view.notes {
            page.line(note);
        }
        for ((number, plan), told) in (1..).zip(&view.plans).zip(&answer.plans) {
            page.gap();
            page.indented(&format!("{number}  "), &words.pattern(plan.pattern));
            page.indented("   ", &words.arrows(told, &request.layout));
            for sentence in plan.left.iter().chain(&plan.why) {
                page.indented("   ", sentence);
            }
        }
        if !answer.refused.is_empty() {
            page.gap();
            page.line("Not allowed");
            for refused in &answer.refused {
                page.indented("   ", &words.refused(refused, &request.layout));
            }
        }
        if !view.look_next.is_empty() {
            page.gap();
            page.line("To know more");
            for look in &view.look_next {
                page.indented("   ", look);
            }
        }
        Answer::new(&view, page)
    }
}

impl LiftFile {
    /// Plans it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let Some(file) = self.file else { return Self::of_job(options) };
        let name = named(&file);
        let task = lifting::Request::read(&text(&file)?).map_err(|why| mend(why.say(&words)).at_word(&name))?;
        let layout = &task.vehicle.layout;
        let plan = lifting::plan(&task).map_err(|why| mend(words.lift_refusal(&why, layout)).at_word(&name))?;
        let mut page = Page::default();
        page.line(&words.lifts(&plan));
        page.gap();
        let mut actions = Vec::new();
        let mut shown = BTreeSet::new();
        for action in &plan.actions {
            let cautions: Vec<_> = action.cautions.iter().map(|caution| words.caution(*caution)).collect();
            // In full the first time; the data has it at every action.
            for (caution, sentence) in action.cautions.iter().zip(&cautions) {
                if shown.insert(*caution) {
                    let signal = words.signal(caution.signal()).to_uppercase();
                    page.indented(&format!("    {signal}  "), sentence);
                }
            }
            let sentence = words.action(action, layout);
            page.indented(&format!("{:>2}  ", action.n), &sentence);
            actions.push(json!({
                "n": action.n,
                "do": action.act.code(),
                "at": action.at.iter().map(|place| layout.name(*place, Letters::FrontFirst)).collect::<Vec<_>>(),
                "wheel": action.wheel.map(|place| layout.name(place, Letters::FrontFirst)),
                "caution": cautions,
                "sentence": sentence,
            }));
        }
        let notes: Vec<_> = plan.notes.iter().map(|note| note.say(&words)).collect();
        for note in &notes {
            page.line(note);
        }
        let view = json!({
            "actions": actions, "lifts": plan.lifts, "at_least": plan.at_least, "proved": plan.proved,
            "strides": plan.strides, "notes": notes,
        });
        Answer::new(&view, page)
    }

    /// The order of the job in the bay, what is done struck off.
    fn of_job(options: &Options) -> Result<Answer, Trouble> {
        let view = options.open(Absent::Refuse)?.lifts(options.speech())?;
        let mut page = Page::default();
        page.line(&view.sentence);
        page.gap();
        for action in &view.actions {
            let done = if action.done { "done" } else { "" };
            page.indented(&format!("{:>2} {done:4}  ", action.n), &action.sentence);
        }
        page.gap();
        for note in &view.notes {
            page.line(note);
        }
        Answer::new(&view, page)
    }
}

impl WearFile {
    /// Reads it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let Some(file) = self.file else {
            let view = options.open(Absent::Refuse)?.wear(options.speech())?;
            let page = page_of_wear(&view);
            return Answer::new(&view, page);
        };
        let name = named(&file);
        let text = text(&file)?;
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .trim(csv::Trim::All)
            .from_reader(text.as_bytes());
        let mut rows = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|why| mend(cannot("csv", &name, &why)).at_word(&name))?;
            rows.push(record.iter().map(str::to_owned).collect::<Vec<_>>());
        }
        let mut rows = rows.into_iter();
        let rows = wear::Rows { header: rows.next().unwrap_or_default(), rows: rows.collect() };
        let history = rows.history().map_err(|why| mend(why.say(&words)).at_word(&name))?;
        let answer =
            wear::wear(&history, &wear::Question::default()).map_err(|why| mend(why.say(&words)).at_word(&name))?;
        // Names of places do not depend on the vehicle here: two axles are lettered, more are numbered.
        let layout = Layout::two_axles(true);
        let view = words.wear(&answer, &layout);
        let page = page_of_wear(&view);
        Answer::new(&view, page)
    }
}

/// What a history tells, for people: when to look again, then tire by tire.
fn page_of_wear(view: &WearView) -> Page {
    let mut page = Page::default();
    page.line(&view.next_visit.sentence);
    if let Some(sentence) = &view.unknown {
        page.line(sentence);
    }
    page.gap();
    for tire in &view.tires {
        page.line(&tire.sentence);
    }
    page.gap();
    for slipped in &view.slipped {
        page.line(&slipped.sentence);
    }
    page
}
