//! What is molded on a tire's sidewall: read, explained, printed, compared.
//!
//! - [`parse`] reads a whole marking: [`Size`], [`Service`] description, load
//!   class, [`Tin`] with its date and words, each problem with its place.
//! - [`equivalence`] compares two sizes, [`candidates`] reads what a camera made of a marking.
//! - [`Answer`] is a marking as data.
//! - [`load_of_index`], [`SpeedSymbol`] and the figures of [`Size`] say what follows.
//!
//! Nothing here is guessed: a diameter comes only from a size that prints its
//! aspect, a year only from a date code that has one.

mod answer;
mod approval;
mod candidates;
mod equivalence;
mod geometry;
mod grades;
mod load_class;
mod load_index;
mod marking;
mod maximum;
mod problem;
mod reader;
mod rim_width;
mod scan;
mod service;
mod size;
mod size_grammar;
mod speed_symbol;
mod stored;
mod tin;
mod tin_grammar;
mod words;

pub use answer::{
    Answer, MadeAnswer, MaximumLoadAnswer, PrintedAnswer, ProblemAnswer, RimAnswer, ServiceAnswer, SizeAnswer,
    TinAnswer, UtqgAnswer,
};
pub use approval::Approval;
pub use candidates::{Candidate, Reading, Substitution, candidates};
pub use equivalence::{
    Change, ChangeKind, DIAMETER_WARN_PERCENT, DIAMETER_WATCH_PERCENT, Diameter, Equivalence, Weight, equivalence,
};
pub use geometry::section_width_mm;
pub use grades::{TemperatureGrade, Traction, Utqg};
pub use load_class::{LoadClass, LoadRange};
pub use load_index::{HIGHEST_LOAD_INDEX, load_of_index};
pub use marking::{LONGEST, MOST_APPROVALS, MOST_LOADS, Marking, parse};
pub use maximum::{Fitment, MaximumLoad, Printed};
pub use problem::{Part, Problem, ProblemKind, Severity, SizePart};
pub use rim_width::RimWidth;
pub use service::Service;
pub use size::{Construction, Size, Use};
pub use speed_symbol::SpeedSymbol;
pub use tin::{Made, Tin, TinAge, TinForm};
pub use words::Word;

use problem::Problems;
use scan::Scan;

/// Reads text that is one item and nothing else.
fn read_alone<T>(text: &str, read: impl FnOnce(&mut Scan<'_>, &mut Problems) -> Option<T>) -> Result<T, Problem> {
    if text.chars().take(LONGEST.saturating_add(1)).count() > LONGEST {
        let kind = ProblemKind::TooLong { limit: LONGEST };
        return Err(Problem { at: LONGEST, len: 0, severity: kind.severity(), kind });
    }
    let upper = marking::upper(text);
    let mut scan = Scan::new(upper.as_bytes());
    let mut problems = Problems::default();
    scan.between_items();
    let found = read(&mut scan, &mut problems);
    scan.between_items();
    let error = problems.0.into_iter().find(|p| p.severity == Severity::Error);
    match (found, error) {
        (Some(found), None) if scan.done() => Ok(found),
        (_, Some(mut problem)) => {
            marking::place(&upper, &mut problem);
            Err(problem)
        }
        _ if upper.trim().is_empty() => {
            let kind = ProblemKind::Empty;
            Err(Problem { at: 0, len: 0, severity: kind.severity(), kind })
        }
        _ => {
            let kind = ProblemKind::Unknown { text: problem::shown(scan.token()), meant: None };
            let mut problem = Problem { at: scan.at(), len: scan.token().len(), severity: kind.severity(), kind };
            marking::place(&upper, &mut problem);
            Err(problem)
        }
    }
}
