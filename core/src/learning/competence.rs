//! Competences: what a person's own hands did, and what an instructor signed.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::entry::{Arm, Fact, Pass};
use crate::ident::PersonId;
use crate::logbook::{Book, Job};

/// Something that is learned at the vehicle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Competence {
    /// Looking which axles drive.
    Drive,
    /// Reading a sidewall.
    Sidewall,
    /// Measuring tread.
    Tread,
    /// Choosing who goes where.
    Moves,
    /// Raising a vehicle until its wheels are clear.
    Raising,
    /// Seeing that locks or stands hold.
    Locks,
    /// Taking a wheel off.
    WheelOff,
    /// Looking at what a wheel hides.
    Looks,
    /// Hanging a wheel by its mark.
    Hanging,
    /// Beginning nuts by hand.
    HandStart,
    /// Snugging nuts in order.
    Snug,
    /// Seeing that all is clear before lowering.
    BeforeLowering,
    /// Final torque.
    FinalTorque,
    /// Checking nuts again.
    Recheck,
    /// Setting pressures.
    Pressure,
}

impl Competence {
    /// What a fact shows of somebody's hands; none for facts that show nothing.
    ///
    /// ```
    /// use lugbook::entry::{Arm, Fact, Means};
    /// use lugbook::ident::JobId;
    /// use lugbook::learning::Competence;
    /// let held = Fact::Lifted { job: JobId::from_parts(1, [1; 10]), arm: Arm::Held, means: Means::Lift, at: None };
    /// assert_eq!(Competence::of(&held), Some(Competence::Locks));
    /// ```
    pub fn of(fact: &Fact) -> Option<Self> {
        Some(match fact {
            Fact::DriveSeen { .. } => Self::Drive,
            Fact::SidewallRead { .. } => Self::Sidewall,
            Fact::TreadMeasured { .. } => Self::Tread,
            Fact::PlanChosen { .. } => Self::Moves,
            Fact::Lifted { arm: Arm::Clear | Arm::Full, .. } => Self::Raising,
            Fact::Lifted { arm: Arm::Held, .. } => Self::Locks,
            Fact::Lifted { arm: Arm::AllClear, .. } => Self::BeforeLowering,
            Fact::WheelOff { .. } => Self::WheelOff,
            Fact::FindingNoted { .. } => Self::Looks,
            Fact::WheelOn { .. } => Self::Hanging,
            Fact::NutTightened { pass: Pass::Started, .. } => Self::HandStart,
            Fact::NutTightened { pass: Pass::Snug, .. } => Self::Snug,
            Fact::NutTightened { pass: Pass::Final, .. } => Self::FinalTorque,
            Fact::NutTightened { pass: Pass::Recheck, .. } => Self::Recheck,
            Fact::PressureMeasured { set: true, .. } => Self::Pressure,
            _ => return None,
        })
    }

    /// What a step that is signed as seen shows, by what it asks; see [`MUST_BE_SEEN`](crate::procedure::MUST_BE_SEEN).
    pub fn of_ask(asks: crate::procedure::Ask) -> Option<Self> {
        use crate::procedure::Ask;
        Some(match asks {
            Ask::Held => Self::Locks,
            Ask::AllClear => Self::BeforeLowering,
            Ask::Final => Self::FinalTorque,
            _ => return None,
        })
    }
}

/// How a person stands with a competence.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Standing {
    /// The competence.
    pub competence: Competence,
    /// In so many jobs the person's own hands did it.
    pub done: usize,
    /// So many of these were practice.
    pub practice: usize,
    /// In so many jobs an instructor signed it as seen.
    pub seen: usize,
    /// Who signed, and in how many jobs, most first.
    pub signed_by: Vec<(PersonId, usize)>,
}

/// The jobs in which a person's hands did something, in the order they were opened.
pub fn jobs_of(book: &Book, person: PersonId) -> Vec<&Job> {
    let own = |job: &&Job| job.lines.iter().any(|line| line.hands == person && Competence::of(&line.fact).is_some());
    book.jobs.iter().filter(own).collect()
}

/// How a person stands, competence by competence in the order of a visit; those never done are left out.
///
/// `asks` tells what a job's step asks, by the job and the step's id: a procedure may be gone.
pub fn competences(
    book: &Book,
    person: PersonId,
    asks: &dyn Fn(&Job, &str) -> Option<crate::procedure::Ask>,
) -> Vec<Standing> {
    let mut found: BTreeMap<Competence, Standing> = BTreeMap::new();
    for job in jobs_of(book, person) {
        let mut own: Vec<Competence> = job
            .lines
            .iter()
            .filter(|line| line.hands == person)
            .filter_map(|line| Competence::of(&line.fact))
            .collect();
        own.sort_unstable();
        own.dedup();
        for competence in &own {
            let standing = found.entry(*competence).or_insert_with(|| Standing {
                competence: *competence,
                done: 0,
                practice: 0,
                seen: 0,
                signed_by: Vec::new(),
            });
            standing.done = standing.done.saturating_add(1);
            standing.practice = standing.practice.saturating_add(usize::from(job.practice));
        }
        let mut signed: Vec<(Competence, PersonId)> = Vec::new();
        for line in &job.lines {
            let Fact::StepsSeen { by, steps, .. } = &line.fact else { continue };
            let shown = steps.iter().filter_map(|seen| Competence::of_ask(asks(job, &seen.step)?));
            signed.extend(shown.filter(|competence| own.contains(competence)).map(|competence| (competence, *by)));
        }
        signed.sort_unstable();
        signed.dedup();
        let mut last = None;
        for (competence, by) in signed {
            let Some(standing) = found.get_mut(&competence) else { continue };
            standing.seen = standing.seen.saturating_add(usize::from(last.replace(competence) != Some(competence)));
            match standing.signed_by.iter_mut().find(|(known, _)| *known == by) {
                Some((_, jobs)) => *jobs = jobs.saturating_add(1),
                None => standing.signed_by.push((by, 1)),
            }
        }
    }
    let mut standings: Vec<Standing> = found.into_values().collect();
    for standing in &mut standings {
        standing.signed_by.sort_by_key(|(_, jobs)| std::cmp::Reverse(*jobs));
    }
    standings
}
