//! Learning: what a person has done, what an instructor saw of it, and how answers compare.
//!
//! Everything is told from the entries: a competence counts the jobs in which a person's own
//! hands did it, practice among them, and those in which an instructor signed it as seen.

mod code;
mod competence;

pub use code::{Plain, TRIES, locked_until, too_plain};
pub use competence::{Competence, Standing, competences, jobs_of};

use crate::entry::Learned;

/// Whether the learner's answer is the core's; none where the core had none.
///
/// An order of nuts is the same from whichever nut it begins and in whichever sense it runs:
/// turned or mirrored it is the same star.
///
/// ```
/// use lugbook::entry::Learned;
/// use lugbook::learning::agrees;
/// let order = |answer: &[u8]| Learned::Order { answer: answer.to_vec(), core: Some(vec![1, 3, 5, 2, 4]) };
/// assert_eq!(agrees(&order(&[2, 4, 1, 3, 5])), Some(true));
/// assert_eq!(agrees(&order(&[1, 4, 2, 5, 3])), Some(true));
/// assert_eq!(agrees(&order(&[1, 2, 3, 4, 5])), Some(false));
/// ```
pub fn agrees(learned: &Learned) -> Option<bool> {
    match learned {
        Learned::Drive { answer, core } => core.map(|core| core == *answer),
        Learned::Pattern { answer, core } => core.as_ref().map(|core| core == answer),
        Learned::Lifts { answer, core } => core.as_ref().map(|core| same_lifts(answer, core)),
        Learned::Order { answer, core } => core.as_ref().map(|core| same_star(answer, core)),
        // A scale is set to a mark: half the last digit apart is the same mark.
        Learned::Target { answer, core } => {
            core.as_ref().map(|core| (answer.in_unit(core.unit()) - core.value()).abs() < 0.5)
        }
    }
}

/// The same places in each lift, one lift after another.
fn same_lifts<T: Ord + Clone>(one: &[Vec<T>], other: &[Vec<T>]) -> bool {
    let sorted = |lifts: &[Vec<T>]| -> Vec<Vec<T>> {
        let mut lifts = lifts.to_vec();
        lifts.iter_mut().for_each(|lift| lift.sort());
        lifts
    };
    sorted(one) == sorted(other)
}

/// The same order of clock positions, turned or mirrored.
fn same_star(one: &[u8], other: &[u8]) -> bool {
    let count = other.len();
    let Ok(studs) = u8::try_from(count) else { return false };
    if studs == 0 || one.len() != count || one.iter().any(|nut| !(1..=studs).contains(nut)) {
        return false;
    }
    let turned = |nut: u8, by: u8, mirrored: bool| {
        let at = u32::from(nut.saturating_sub(1));
        let (studs, by) = (u32::from(studs), u32::from(by));
        let at = if mirrored { studs.saturating_sub(at).checked_rem(studs) } else { Some(at) };
        at.and_then(|at| at.saturating_add(by).checked_rem(studs)).map(|at| at.saturating_add(1))
    };
    (0..studs).any(|by| {
        [false, true].iter().any(|mirrored| {
            one.iter().zip(other).all(|(one, other)| turned(*other, by, *mirrored) == Some(u32::from(*one)))
        })
    })
}
