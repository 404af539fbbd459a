//! My tools and their papers.

use clap::{Args, Subcommand};
use lugbook::engine::{Calibrations, Command, Papers, Trouble};
use lugbook::fastener::Power;

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// What can be said of tools.
#[derive(Debug, Subcommand)]
pub enum Tool {
    /// Add a torque wrench
    Wrench(Wrench),
    /// Add a tread depth gauge
    Gauge(Gauge),
    /// Add a pressure gauge
    AirGauge(AirGauge),
    /// Add an impact gun
    Gun(Gun),
    /// Add a torque-limiting bar, for the first tightening only
    Bar(Bar),
    /// Add a jack
    Jack(Rated),
    /// Add jack stands
    Stands(Stands),
    /// Add a vehicle lift
    Lift(Rated),
    /// Put a tool away that is sold, broken or lost
    PutAway(PutAway),
    /// List the tools with their papers
    List,
}

/// When it was calibrated.
#[derive(Debug, Args)]
pub struct Calibrated {
    /// The day of the last calibration; leave it out when nobody knows
    #[arg(long, value_name = "DAY", allow_hyphen_values = true)]
    calibrated: Option<String>,
    /// Calibrated again after so many months, as its papers or you want it
    #[arg(long, value_name = "MONTHS")]
    every: Option<u16>,
}

/// A torque wrench.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  lugbook tool wrench \"Red half-inch\" --accuracy 4% --step \"1 N.m\" \\\n    --range \"40..200 N.m\" --calibrated 2026-03-02 --every 12\n\n\
A new job takes the tools at hand by itself: of each kind the only one, else\nthe one used last. \"lugbook use\" changes that. Said again under the same name,\nthe papers are those of today."
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
    /// Both ends of its scale: "40..200 N.m"
    #[arg(long, value_name = "ENDS", allow_hyphen_values = true)]
    range: Option<String>,
    #[command(flatten)]
    when: Calibrated,
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
    #[command(flatten)]
    when: Calibrated,
}

/// A pressure gauge.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook tool air-gauge \"Dial gauge\" --step \"1 psi\" --up-to \"100 psi\"")]
pub struct AirGauge {
    /// What it is called
    name: String,
    /// The smallest step it shows, with the unit
    #[arg(long, allow_hyphen_values = true)]
    step: Option<String>,
    /// The highest pressure it shows, with the unit
    #[arg(long, value_name = "PRESSURE", allow_hyphen_values = true)]
    up_to: Option<String>,
    #[command(flatten)]
    when: Calibrated,
}

/// An impact gun.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook tool gun \"Battery gun\" electric --greatest \"500 N.m\"")]
pub struct Gun {
    /// What it is called
    name: String,
    /// What drives it
    #[arg(value_parser = code::<Power>(&["air", "electric"]))]
    power: Power,
    /// The greatest torque marked on it, with the unit
    #[arg(long, value_name = "TORQUE", allow_hyphen_values = true)]
    greatest: Option<String>,
}

/// A torque-limiting bar.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook tool bar \"Grey bar\" \"80 ft.lb\" --hex \"21 mm\"")]
pub struct Bar {
    /// What it is called
    name: String,
    /// The torque marked on it
    #[arg(allow_hyphen_values = true)]
    rating: String,
    /// Its socket across the flats
    #[arg(long, value_name = "SPAN", allow_hyphen_values = true)]
    hex: Option<String>,
    /// The strongest gun that its marking holds for
    #[arg(long, value_name = "TORQUE", allow_hyphen_values = true)]
    for_guns_up_to: Option<String>,
}

/// A jack or a lift.
#[derive(Debug, Args)]
pub struct Rated {
    /// What it is called
    name: String,
    /// What it lifts, as marked on it; leave it out when it bears no mark
    #[arg(long, value_name = "LOAD", allow_hyphen_values = true)]
    rating: Option<String>,
}

/// Stands.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook tool stands \"Four red stands\" --rating \"3 t\" --count 4")]
pub struct Stands {
    /// What they are called
    name: String,
    /// What each holds, as marked on it; leave it out when it bears no mark
    #[arg(long, value_name = "LOAD", allow_hyphen_values = true)]
    rating: Option<String>,
    /// How many there are
    #[arg(long, value_name = "N")]
    count: Option<u8>,
}

/// A tool that is put away.
#[derive(Debug, Args)]
pub struct PutAway {
    /// The tool, by its name
    tool: String,
    /// Why
    reason: String,
}

impl From<Calibrated> for Calibrations {
    fn from(Calibrated { calibrated, every }: Calibrated) -> Self {
        Self { last: calibrated, every_months: every }
    }
}

impl Tool {
    /// Says it, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let (name, papers) = match self {
            Self::Wrench(Wrench { name, accuracy, step, range, when }) => {
                (name, Papers::Wrench { accuracy, step, range, calibration: when.into() })
            }
            Self::Gauge(Gauge { name, step, when }) => (name, Papers::DepthGauge { step, calibration: when.into() }),
            Self::AirGauge(AirGauge { name, step, up_to, when }) => {
                (name, Papers::PressureGauge { step, highest: up_to, calibration: when.into() })
            }
            Self::Gun(Gun { name, power, greatest }) => (name, Papers::Gun { power, greatest }),
            Self::Bar(Bar { name, rating, hex, for_guns_up_to }) => (name, Papers::Bar { rating, hex, for_guns_up_to }),
            Self::Jack(Rated { name, rating }) => (name, Papers::Jack { rating }),
            Self::Stands(Stands { name, rating, count }) => (name, Papers::Stand { rating, count }),
            Self::Lift(Rated { name, rating }) => (name, Papers::Lift { rating }),
            Self::PutAway(PutAway { tool, reason }) => {
                return Answer::of_change(&options.act(Command::RetireTool { tool, reason }, Absent::Refuse)?);
            }
            Self::List => {
                let front = options.open(Absent::Refuse)?.front(options.speech());
                let mut page = Page::default();
                for tool in &front.tools {
                    page.line(tool);
                }
                return Answer::new(&serde_json::json!({"tools": front.tools}), page);
            }
        };
        Answer::of_change(&options.act(Command::AddTool { name, papers }, Absent::Refuse)?)
    }
}
