//! What goes out of the book as a file.

use lugbook::engine::screen;

use crate::cross::variants;

variants! {
    /// What is written out.
    Outgoing of screen::Outgoing {
        /// A job's card as a page, with all that proves it.
        Card,
        /// A job's card on paper.
        CardPaper,
        /// The labels of the wheels that were stored in a job, on paper.
        LabelsPaper,
        /// A vehicle's history as a page.
        History,
        /// A vehicle's history on paper.
        HistoryPaper,
        /// Every reading as a table.
        Readings,
        /// Every job as a table.
        Jobs,
        /// The rechecks of a job for a calendar.
        Rechecks,
        /// A learner's logbook as a page.
        Learner,
        /// A learner's logbook on paper.
        LearnerPaper,
        /// A learner's logbook to take along.
        LearnerBundle,
        /// A copy of a photo, its covered parts filled, without place, device and time.
        Photo,
    }
}

/// Of what; what is left out is the one in the bay, the last one or the only one.
#[derive(Debug, Clone, PartialEq, Eq, uniffi::Record)]
pub struct OutgoingOf {
    /// The job's number.
    #[uniffi(default = None)]
    pub job: Option<u32>,
    /// The vehicle; for tables all of them.
    #[uniffi(default = None)]
    pub vehicle: Option<String>,
    /// The learner.
    #[uniffi(default = None)]
    pub person: Option<String>,
    /// The photo, by its number in the job.
    #[uniffi(default = None)]
    pub photo: Option<u32>,
    /// What the owner drives in a year, by the owner's own estimate: `12000 mi`.
    #[uniffi(default = None)]
    pub per_year: Option<String>,
    /// On A4 instead of letter.
    #[uniffi(default = false)]
    pub a4: bool,
}

impl From<OutgoingOf> for screen::OutgoingOf {
    fn from(of: OutgoingOf) -> Self {
        let OutgoingOf { job, vehicle, person, photo, per_year, a4 } = of;
        Self { job: crate::number(job), vehicle, person, photo: crate::number(photo), per_year, a4 }
    }
}
