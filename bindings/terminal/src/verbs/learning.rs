//! Learning: why a decision is so, answers given first, an instructor's signature, a learner's logbook.

use std::path::{Path, PathBuf};

use clap::{Args, Subcommand, ValueEnum};
use lugbook::engine::{Command, Engine, LearnerView, Trouble};
use lugbook::entry::Decision;
use serde_json::json;

use super::book::{To, cannot, write};
use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options, mend, named};
use crate::secret;
use crate::tongue::say;

/// Decisions that can be asked about.
const DECISIONS: &[&str] = &["drive", "pattern", "lifts", "order", "target"];

/// Which decision.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook why pattern\n\nThe answer, what speaks for it and against it, the rule, and where it comes from."
)]
pub struct Why {
    /// Which axles drive, the moves, the order of lifts, the order of nuts, or the wrench
    #[arg(value_parser = code::<Decision>(DECISIONS))]
    decision: Decision,
}

/// A learner's answer.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  lugbook answer drive rear
  lugbook answer pattern rearward-cross
  lugbook answer lifts FL+FR RL+RR
  lugbook answer order 1 3 5 2 4
  lugbook answer target \"137 N.m\"

Lugbook's own answer is shown beside it; both stay in the job. The first answer
stands.")]
pub struct Answers {
    /// Which decision
    #[arg(value_parser = code::<Decision>(DECISIONS))]
    decision: Decision,
    /// The answer
    #[arg(required = true)]
    answer: Vec<String>,
}

/// On or off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Switch {
    /// The learner answers first
    On,
    /// Lugbook answers first
    Off,
}

/// Whether answers are given first.
#[derive(Debug, Args)]
pub struct First {
    /// From now on in this job, or no longer
    switch: Switch,
}

/// What an instructor does.
#[derive(Debug, Subcommand)]
pub enum Instructor {
    /// Set the code that an instructor signs with
    Code(Name),
    /// List what apprentices did and an instructor must see
    Waiting,
    /// Sign what was seen, several steps at once
    Sign(Sign),
}

/// Who.
#[derive(Debug, Args)]
#[command(after_help = "\
The code is asked for, never typed into the line: at a terminal it is not shown;
piped in, each code stands on a line of its own, the old one first.
At least 6 characters. It is kept as a salted hash that nobody can read back.")]
pub struct Name {
    /// The instructor
    name: String,
}

/// What is signed.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  lugbook instructor sign \"Ada Lund\"
  lugbook instructor sign \"Ada Lund\" final --where FL
  lugbook instructor sign \"Ada Lund\" --every-job

The code is asked for. After five wrong ones it is locked for a minute, and
longer each time. A step that is done again has to be signed again.")]
pub struct Sign {
    /// The instructor
    name: String,
    /// Steps by their names; all that wait when left out
    steps: Vec<String>,
    /// At this place alone
    #[arg(long = "where", value_name = "PLACE")]
    place: Option<String>,
    /// In every job that is open or parked: at the end of class
    #[arg(long)]
    every_job: bool,
}

/// A learner and what they did.
#[derive(Debug, Subcommand)]
pub enum Learner {
    /// Say what a learner has done, and what was seen of it
    Show(Who),
    /// Write the logbook to hand in
    Logbook(Logbook),
    /// Write the logbook as a bundle to take along
    Bundle(Bundle),
    /// Read a bundle again and verify it; no book is needed
    Read(Read),
}

/// A bundle.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook learner bundle --out kit.zip\n\nOne zip file: the logbook as HTML and PDF, its entries and its photos, covered\nparts filled. What a customer said, plates and codes are not in it."
)]
pub struct Bundle {
    /// The learner; the only apprentice when left out
    name: Option<String>,
    /// The file to write
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
}

/// A file.
#[derive(Debug, Args)]
pub struct Read {
    /// The bundle
    file: PathBuf,
}

/// Whose.
#[derive(Debug, Args)]
pub struct Who {
    /// The learner; the only apprentice when left out
    name: Option<String>,
}

/// A logbook.
#[derive(Debug, Args)]
#[command(
    after_help = "Examples:\n  lugbook learner logbook --out logbook.html\n  lugbook learner logbook \"Kit Marlowe\" --out logbook.pdf\n\nJobs, photos, answers and signatures; no plate and no customer's name."
)]
pub struct Logbook {
    /// The learner; the only apprentice when left out
    name: Option<String>,
    #[command(flatten)]
    to: To,
}

impl Why {
    /// Answers.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let view = options.open(Absent::Refuse)?.why(self.decision, options.speech())?;
        let mut page = Page::default();
        page.line(&view.answer);
        page.gap();
        let parts = [("why-for", &view.evidence), ("why-against", &view.against), ("why-source", &view.source)];
        page.indented(&format!("{}  ", say("why-rule", &[])), &view.rule);
        for (heading, sentences) in parts.into_iter().filter(|(_, sentences)| !sentences.is_empty()) {
            page.gap();
            page.line(&say(heading, &[]));
            for sentence in sentences {
                page.indented("   ", sentence);
            }
        }
        Answer::new(&view, page)
    }
}

impl From<Answers> for Command {
    fn from(Answers { decision, answer }: Answers) -> Self {
        Self::AnswerDecision { decision, answer: answer.join(" ") }
    }
}

impl From<First> for Command {
    fn from(said: First) -> Self {
        Self::AnswerFirst { on: said.switch == Switch::On }
    }
}

impl Instructor {
    /// Says it, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let command = match self {
            Self::Waiting => return waiting(options),
            Self::Code(Name { name }) => {
                let set = options.open(Absent::Refuse)?.has_code(&name);
                let current = if set { Some(secret::ask(&say("ask-old-code", &[]))?) } else { None };
                let code = secret::ask_new(&say("ask-new-code", &[]), &say("ask-code-again", &[]))?;
                Command::SetCode { person: name, code, current }
            }
            Self::Sign(Sign { name, steps, place, every_job }) => {
                let code = secret::ask(&say("ask-code", &[("name", name.as_str().into())]))?;
                Command::SignSteps { by: name, code, steps, at: place, every_job }
            }
        };
        Answer::of_change(&options.act(command, Absent::Refuse)?)
    }
}

fn waiting(options: &Options) -> Result<Answer, Trouble> {
    let waiting = options.open(Absent::Refuse)?.waiting(options.speech())?;
    let mut page = Page::default();
    if waiting.is_empty() {
        page.line(&say("nothing-waits", &[]));
    }
    let row = |line: &lugbook::engine::WaitingLine| {
        vec![line.job.to_string(), line.step.clone(), line.learner.clone(), line.text.clone()]
    };
    page.table(&waiting.iter().map(row).collect::<Vec<_>>());
    Answer::new(&json!({ "waiting": waiting }), page)
}

impl Learner {
    /// Answers, or writes.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let speech = options.speech();
        if let Self::Read(Read { file }) = &self {
            return read(file, options);
        }
        let engine = options.open(Absent::Refuse)?;
        match self {
            Self::Show(Who { name }) => {
                let view = engine.learner_view(name.as_deref(), speech)?;
                let mut page = Page::default();
                show(&view, &mut page);
                Answer::new(&view, page)
            }
            Self::Logbook(Logbook { name, to }) => {
                let name = name.as_deref();
                let html = || engine.learner_page(name, speech);
                to.page("logbook-written", ("learner", json!(name)), html, |sheet| {
                    engine.learner_pdf(name, sheet, speech)
                })
            }
            Self::Bundle(Bundle { name, out }) => {
                write(&out, &engine.learner_bundle(name.as_deref(), speech)?)?;
                let file = out.display().to_string();
                let mut page = Page::default();
                page.line(&say("bundle-written", &[("file", file.as_str().into())]));
                Answer::new(&json!({"learner": name, "file": file}), page)
            }
            Self::Read(Read { file }) => read(&file, options),
        }
    }
}

/// Prints what a learner did.
fn show(view: &LearnerView, page: &mut Page) {
    page.line(&format!("{}, {}", view.person.name, view.person.role));
    for standing in &view.competences {
        page.indented("  ", &standing.text);
    }
    page.gap();
    for answer in &view.answers {
        page.indented(&format!("{}  ", answer.job), &answer.text);
    }
}

/// The longest bundle that is read, in bytes: a year of photos has room.
const LONGEST: u64 = 1 << 30;

fn read(file: &Path, options: &Options) -> Result<Answer, Trouble> {
    let known = std::fs::metadata(file).map_err(|why| mend(cannot("read", &named(file), &why)))?;
    if !known.is_file() || known.len() > LONGEST {
        return Err(mend(say("no-file", &[("name", named(file).into())])));
    }
    let bytes = std::fs::read(file).map_err(|why| mend(cannot("read", &named(file), &why)))?;
    let view = Engine::read_learner_bundle(&bytes, options.speech())?;
    let mut page = Page::default();
    let counts = [
        ("day", view.made.as_str().into()),
        ("entries", view.entries.to_string().into()),
        ("photos", view.photos.to_string().into()),
    ];
    page.line(&say("bundle-made", &counts));
    page.line(&view.proves);
    page.gap();
    show(&view.learner, &mut page);
    Answer::new(&view, page)
}
