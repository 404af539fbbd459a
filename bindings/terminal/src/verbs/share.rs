//! Photos that go out: what is covered, and copies to give away.

use std::path::PathBuf;

use clap::Args;
use lugbook::engine::{Command, Trouble};
use serde_json::json;

use super::book::write;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};
use crate::tongue::say;

/// What is covered.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  lugbook cover 3 1210,840,420,130 200,60,260,310

Each box is left, top, width and height in pixels of the photo seen upright.
Cards, PDFs and shared copies show the boxes filled; the photo in the book stays
as it is. What is said last holds; no box at all uncovers the photo.")]
pub struct Cover {
    /// The photo, by its number in the job
    photo: usize,
    /// Each part to cover
    #[arg(value_name = "LEFT,TOP,WIDTH,HEIGHT")]
    boxes: Vec<String>,
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
}

impl From<Cover> for Command {
    fn from(Cover { photo, boxes, job }: Cover) -> Self {
        Self::Cover { photo, job, boxes }
    }
}

/// A copy to give away.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  lugbook share 3 --out hub.jpg

A JPEG of nothing but the picture: upright, covered parts filled, without place,
device or time.")]
pub struct Share {
    /// The photo, by its number in the job
    photo: usize,
    /// The file to write
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// The job's number; the last one when left out
    #[arg(long, value_name = "N")]
    job: Option<usize>,
}

impl Share {
    /// Writes it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let Self { photo, out, job } = self;
        let copy = options.open(Absent::Refuse)?.shared_photo(job, photo, options.speech())?;
        write(&out, &copy)?;
        let file = out.display().to_string();
        let mut page = Page::default();
        page.line(&say("photo-written", &[("file", file.as_str().into())]));
        Answer::new(&json!({"photo": photo, "file": file}), page)
    }
}
