//! Jobs: open, park, resume, sign; what is next and what was said.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Trouble};

use crate::answer::{Answer, Page};
use crate::next;
use crate::options::{Absent, Options};
use crate::tongue::say;

/// The job in the bay; alone, the one next thing to do.
#[derive(Debug, Args)]
#[command(
    after_help = "Alone it says the one next thing to do, what its gate waits for, its cautions,\nand the line to type."
)]
pub struct Jobs {
    #[command(subcommand)]
    what: Option<Job>,
}

/// What can be said of a job.
#[derive(Debug, Subcommand)]
pub enum Job {
    /// Open a job on a vehicle by a procedure
    Open(Open),
    /// Put the job aside
    Park(Reason),
    /// Take a parked job up again
    Resume(Number),
    /// End the job without a signature
    Close(Reason),
    /// Sign the job by name
    Sign,
    /// List all steps and how they stand
    Steps,
    /// List what was said, with the numbers for corrections
    Log(Number),
}

/// A new job.
#[derive(Debug, Args)]
#[command(after_help = "\
Procedures: \"lugbook procedure list\" names them.
Circumstances, where the procedure leaves them open: what holds the vehicle
(lift or stands), and what drives the gun (air, electric or hand-tools).

Example:
  lugbook job open \"Orchard truck\" rotation-with-jack-and-stands electric")]
pub struct Open {
    /// The vehicle
    vehicle: String,
    /// The procedure
    procedure: String,
    /// Circumstances that decide which steps apply
    circumstances: Vec<String>,
    /// Practice: kept out of wear, due dates and history
    #[arg(long)]
    practice: bool,
}

/// Why.
#[derive(Debug, Args)]
pub struct Reason {
    /// Why, in your words
    reason: String,
}

/// Which job.
#[derive(Debug, Args)]
pub struct Number {
    /// Its number; the one at hand when left out
    job: Option<usize>,
}

impl Jobs {
    /// Says it, or answers.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let command = match self.what {
            None => return alone(options),
            Some(Job::Steps) => return steps(options),
            Some(Job::Log(Number { job })) => return log(options, job),
            Some(Job::Open(Open { vehicle, procedure, circumstances, practice })) => {
                Command::OpenJob { vehicle, procedure, circumstances, practice }
            }
            Some(Job::Park(Reason { reason })) => Command::ParkJob { reason },
            Some(Job::Resume(Number { job })) => Command::ResumeJob { job },
            Some(Job::Close(Reason { reason })) => Command::CloseJob { reason },
            Some(Job::Sign) => Command::Sign { drawn: None },
        };
        Answer::of_change(&options.act(command, Absent::Refuse)?)
    }
}

fn alone(options: &Options) -> Result<Answer, Trouble> {
    let engine = options.open(Absent::Refuse)?;
    let mut page = Page::default();
    match engine.next(options.speech()) {
        Some(view) => {
            next::print(&view, &mut page);
            Answer::new(&next::data(&view), page)
        }
        None => {
            page.line(&next::no_job());
            Answer::new(&next::nothing(), page)
        }
    }
}

fn steps(options: &Options) -> Result<Answer, Trouble> {
    let tasks = options.open(Absent::Refuse)?.tasks(options.speech());
    let mut page = Page::default();
    let rows: Vec<_> = tasks
        .iter()
        .map(|task| {
            let why = if task.why.is_empty() { String::new() } else { format!(" ({})", task.why.join(" ")) };
            vec![say(task.state, &[]), task.at.clone().unwrap_or_default(), format!("{}{why}", task.sentence)]
        })
        .collect();
    page.table(&rows);
    if rows.is_empty() {
        page.line(&next::no_job());
    }
    Answer::new(&serde_json::json!({"steps": tasks}), page)
}

fn log(options: &Options, job: Option<usize>) -> Result<Answer, Trouble> {
    let lines = options.open(Absent::Refuse)?.log(job, options.speech())?;
    let mut page = Page::default();
    let rows: Vec<_> = lines
        .iter()
        .map(|line| {
            let mark = if line.corrected { say("corrected", &[]) } else { String::new() };
            let time = line.time.get(..16).unwrap_or(&line.time).replace('T', " ");
            vec![line.line.to_string(), time, format!("{} {mark}[{}]", line.sentence, line.author)]
        })
        .collect();
    page.table(&rows);
    Answer::new(&serde_json::json!({"log": lines}), page)
}
