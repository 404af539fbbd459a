//! The plan: who may go where, and which plan was chosen.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Trouble};

use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};
use crate::tongue::say;

/// Alone, the plans that are allowed, best first, and why the others are not.
#[derive(Debug, Args)]
pub struct Plans {
    #[command(subcommand)]
    what: Option<Plan>,
}

/// What can be said of the plan.
#[derive(Debug, Subcommand)]
pub enum Plan {
    /// Choose one
    Choose(Choose),
    /// Change a flat wheel for the spare instead
    Flat(Flat),
}

/// Which wheel is flat.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  lugbook plan flat RL\n  lugbook plan flat FL --good-wheel-forward")]
pub struct Flat {
    /// Where it is
    at: String,
    /// The manual wants no temporary spare at a driven wheel
    #[arg(long)]
    good_wheel_forward: bool,
}

/// Which plan.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  lugbook plan choose 1\n  lugbook plan choose rearward-cross")]
pub struct Choose {
    /// Its number in “lugbook plan”, or its pattern's name
    plan: String,
}

impl Plans {
    /// Says it, or answers.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let said = match self.what {
            Some(Plan::Choose(Choose { plan })) => Some(Command::ChoosePlan { plan }),
            Some(Plan::Flat(Flat { at, good_wheel_forward })) => Some(Command::Flat { at, good_wheel_forward }),
            None => None,
        };
        if let Some(said) = said {
            return Answer::of_change(&options.act(said, Absent::Refuse)?);
        }
        let view = options.open(Absent::Refuse)?.plans(options.speech())?;
        let mut page = Page::default();
        page.line(&view.shout);
        if let Some(look) = &view.look {
            page.line(look);
        }
        for plan in &view.plans {
            page.gap();
            page.line(&format!("{}  {}", plan.plan, plan.name));
            let moves: Vec<_> = plan.moves.iter().map(|(from, to)| format!("{from}→{to}")).collect();
            page.indented("   ", &moves.join("  "));
            for sentence in plan.left.iter().chain(&plan.why) {
                page.indented("   ", sentence);
            }
        }
        if !view.refused.is_empty() {
            page.gap();
            page.line(&say("not-allowed", &[]));
            for refused in &view.refused {
                page.indented("   ", refused);
            }
        }
        page.gap();
        for sentence in view.notes.iter().chain(&view.unknown).chain(&view.next_visit) {
            page.line(sentence);
        }
        page.gap();
        if !view.plans.is_empty() {
            page.push(&format!("{}  lugbook plan choose 1", say("type", &[])));
        }
        Answer::new(&view, page)
    }
}
