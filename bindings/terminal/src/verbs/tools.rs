//! Tools and their papers.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Trouble};

use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// What can be said of tools.
#[derive(Debug, Subcommand)]
pub enum Tool {
    /// Add a torque wrench
    Wrench(Wrench),
    /// Add a tread depth gauge
    Gauge(Gauge),
    /// Add a torque-limiting bar, for the first tightening only
    Bar(Bar),
    /// List the tools
    List,
}

/// A torque wrench.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook tool wrench \"Red half-inch\" --accuracy 4% --step \"1 N.m\" \\\n    --calibrated 2026-03-02"
)]
pub struct Wrench {
    /// What it is called
    name: String,
    /// Accuracy from its papers
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    accuracy: String,
    /// The step of its scale, with the unit
    #[arg(long, allow_hyphen_values = true)]
    step: String,
    /// The day of the last calibration; leave it out when nobody knows
    #[arg(long, value_name = "DAY", allow_hyphen_values = true)]
    calibrated: Option<String>,
}

/// A depth gauge.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook tool gauge \"Brass gauge\" --step \"1 /32\"")]
pub struct Gauge {
    /// What it is called
    name: String,
    /// The smallest step it shows, with the unit
    #[arg(long, allow_hyphen_values = true)]
    step: String,
}

/// A torque-limiting bar.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook tool bar \"Grey bar\" \"80 ft.lb\"")]
pub struct Bar {
    /// What it is called
    name: String,
    /// The torque marked on it
    #[arg(allow_hyphen_values = true)]
    rating: String,
}

impl Tool {
    /// Says it, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let command = match self {
            Self::Wrench(Wrench { name, accuracy, step, calibrated }) => {
                Command::AddWrench { name, accuracy, step, calibrated }
            }
            Self::Gauge(Gauge { name, step }) => Command::AddDepthGauge { name, resolution: step },
            Self::Bar(Bar { name, rating }) => Command::AddBar { name, rating },
            Self::List => {
                let front = options.open(Absent::Refuse)?.front(options.speech());
                let mut page = Page::default();
                for tool in &front.tools {
                    page.line(tool);
                }
                return Answer::new(&serde_json::json!({"tools": front.tools}), page);
            }
        };
        Answer::of_change(&options.act(command, Absent::Refuse)?)
    }
}
