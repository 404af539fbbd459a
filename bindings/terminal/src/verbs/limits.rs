//! Whose limits of tread depth hold, for the book or for the job in the bay.

use clap::Args;
use lugbook::engine::{Command, Trouble};
use lugbook::limits::{Region, Season};

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};
use crate::tongue::say;

/// Places whose rules can be chosen.
const REGIONS: &[&str] = &["us-federal", "us-commercial", "us-maryland", "us-army", "eu", "france", "uk", "elsewhere"];

/// Whose limits hold.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  lugbook limits\n  lugbook limits france --season winter\n  \
lugbook limits us-commercial --watch \"4/32\" --this-job\n\n\
Alone it says what holds. By default: us-federal, summer, at limit up to\n1/32 in above the limit and watch up to 2/32 in. \"elsewhere\" judges nothing:\n\
look up the local rule. Jobs that have ended stay as they were judged.")]
pub struct Limits {
    /// Whose limits of tread depth hold
    #[arg(value_parser = code::<Region>(REGIONS))]
    place: Option<Region>,
    /// Winter when snow or ice is expected before the next visit
    #[arg(long, value_parser = code::<Season>(&["summer", "winter"]))]
    season: Option<Season>,
    /// Up to so much above the limit a tire is at the limit
    #[arg(long, value_name = "DEPTH", allow_hyphen_values = true)]
    at_limit: Option<String>,
    /// Up to so much above the limit a tire is to be watched
    #[arg(long, value_name = "DEPTH", allow_hyphen_values = true)]
    watch: Option<String>,
    /// For the job in the bay alone, not for the book
    #[arg(long)]
    this_job: bool,
}

impl Limits {
    /// Chooses them, or says what holds.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let Self { place: region, season, at_limit, watch, this_job } = self;
        if region.is_some() || season.is_some() || at_limit.is_some() || watch.is_some() || this_job {
            let command = Command::ChooseLimits { region, season, at_limit, watch, this_job };
            return Answer::of_change(&options.act(command, Absent::Refuse)?);
        }
        let held = options.open(Absent::Refuse)?.limits(options.speech());
        let mut page = Page::default();
        let mut rows = vec![vec![say("limits-book", &[]), held.book.text.clone()]];
        if let Some(job) = &held.job {
            rows.push(vec![say("limits-job", &[]), job.text.clone()]);
        }
        page.table(&rows);
        Answer::new(&held, page)
    }
}
