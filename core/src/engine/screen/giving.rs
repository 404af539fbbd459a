//! What goes out of the book as a file, and the photos of a job by their paths.

use std::io::Write;
use std::path::{Path, PathBuf};

use serde::Serialize;

use crate::engine::act::photos_of;
use crate::engine::{Engine, Trouble};
use crate::entry::Fact;
use crate::photos::Rendition;
use crate::report::paper::Sheet;
use crate::store::StoreError;
use crate::words::{Speech, Words};

/// What is written out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Outgoing {
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

/// Of what.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub struct OutgoingOf {
    /// The job's number; the one in the bay, else the last one.
    pub job: Option<usize>,
    /// The vehicle; for tables all of them.
    pub vehicle: Option<String>,
    /// The learner; the only one when none is named.
    pub person: Option<String>,
    /// The photo, by its number in the job.
    pub photo: Option<usize>,
    /// What the owner drives in a year, by the owner's own estimate: `12000 mi`.
    pub per_year: Option<String>,
    /// On A4 instead of letter.
    pub a4: bool,
}

/// A photo of a job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PhotoLine {
    /// Its number in the job.
    pub photo: usize,
    /// What it shows, and where.
    pub caption: String,
    /// A copy of at most 320 pixels, a JPEG; none when it is gone.
    pub small: Option<String>,
    /// A copy of at most 1600 pixels, a JPEG; none when it is gone.
    pub large: Option<String>,
    /// So many parts of it are covered where it goes out.
    pub covered: usize,
    /// What is wrong with it, when it is gone or damaged.
    pub trouble: Option<String>,
}

/// The photos of a job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PhotosScreen {
    /// The photos, in the order they were taken.
    pub photos: Vec<PhotoLine>,
    /// What stands there without one.
    pub empty: Option<String>,
}

impl Engine {
    /// Writes something out into a folder, whole or not at all, and gives back the file.
    ///
    /// # Errors
    /// When there is no such job, vehicle, person or photo, there is nothing of it to write,
    /// or the folder can't be written.
    pub fn write_out(
        &self,
        what: Outgoing,
        of: &OutgoingOf,
        folder: &Path,
        speech: Speech,
    ) -> Result<PathBuf, Trouble> {
        let words = Words::new(speech);
        let sheet = if of.a4 { Sheet::A4 } else { Sheet::Letter };
        let (job, vehicle, person) = (of.job, of.vehicle.as_deref(), of.person.as_deref());
        let (name, bytes) = match what {
            Outgoing::Card => ("card.html", self.card(job, speech)?.into_bytes()),
            Outgoing::CardPaper => ("card.pdf", self.card_pdf(job, sheet, speech)?),
            Outgoing::LabelsPaper => ("labels.pdf", self.labels_pdf(job, sheet, speech)?),
            Outgoing::History => ("history.html", self.history(vehicle, speech)?.into_bytes()),
            Outgoing::HistoryPaper => ("history.pdf", self.history_pdf(vehicle, sheet, speech)?),
            Outgoing::Readings => ("readings.csv", self.readings_csv(vehicle, speech)?.into_bytes()),
            Outgoing::Jobs => ("jobs.csv", self.jobs_csv(vehicle, speech)?.into_bytes()),
            Outgoing::Rechecks => {
                let per_year = of.per_year.as_deref().unwrap_or_default();
                ("recheck.ics", self.recheck_calendar(job, per_year, speech)?.into_bytes())
            }
            Outgoing::Learner => ("logbook.html", self.learner_page(person, speech)?.into_bytes()),
            Outgoing::LearnerPaper => ("logbook.pdf", self.learner_pdf(person, sheet, speech)?),
            Outgoing::LearnerBundle => ("logbook.zip", self.learner_bundle(person, speech)?),
            Outgoing::Photo => ("photo.jpg", self.shared_photo(job, of.photo.unwrap_or_default(), speech)?),
        };
        let number = self.job(job).filter(|_| of.vehicle.is_none() && of.person.is_none()).map(|job| job.number);
        let file = folder.join(match (number, name.split_once('.')) {
            (Some(number), Some((stem, end))) => format!("{stem}-{number}.{end}"),
            _ => name.to_owned(),
        });
        let io = |why: std::io::Error| Trouble::of_store(&StoreError::io(&why, folder), &words);
        let mut temporary = tempfile::Builder::new().prefix(".lugbook").tempfile_in(folder).map_err(io)?;
        temporary.write_all(&bytes).and_then(|()| temporary.as_file().sync_all()).map_err(io)?;
        temporary.persist(&file).map_err(|why| io(why.error))?;
        Ok(file)
    }

    /// The photos of a job: the one in the bay, else the last one, when none is named.
    ///
    /// # Errors
    /// When there is no such job, or the book can't be read.
    pub fn photos_screen(&self, job: Option<usize>, speech: Speech) -> Result<PhotosScreen, Trouble> {
        let words = Words::new(speech);
        let job = self.job(job).ok_or_else(|| Trouble::mend(&words, "trouble-no-such-job", &[]))?;
        let layout = self.book.vehicle(job.vehicle).map(|vehicle| &vehicle.layout);
        let caption = |photo| {
            job.lines.iter().find_map(|line| match &line.fact {
                Fact::PhotoTaken { photo: taken, of, at, .. } if *taken == photo => {
                    let at = at.and_then(|at| Some(layout?.name(at, speech.letters)));
                    let of = words.photo_of(*of);
                    Some(at.map_or(of.clone(), |at| format!("{at}: {of}")))
                }
                _ => None,
            })
        };
        let line = |(photo, number): (_, usize)| {
            let copy = |rendition| self.photos.path(photo, rendition);
            let large = copy(Rendition::Large);
            PhotoLine {
                photo: number,
                caption: caption(photo).unwrap_or_default(),
                small: copy(Rendition::Small).ok().map(|path| path.display().to_string()),
                trouble: large.as_ref().err().map(|why| Trouble::of_photos(why, &words).sentence),
                large: large.ok().map(|path| path.display().to_string()),
                covered: self.book.covers(photo).len(),
            }
        };
        let photos: Vec<PhotoLine> = photos_of(job).into_iter().zip(1..).map(line).collect();
        let empty = photos.is_empty().then(|| words.text("photos-none", &[]));
        self.answered(PhotosScreen { photos, empty }, &words)
    }
}
