//! One job as its entries tell it.

use std::collections::BTreeMap;
use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Lines, Span, pairs};

use crate::calendar::Moment;
use crate::entry::{Arm, Decision, DriveSeen, Fact, Learned, Look, Means, Move, Nuts, Pass, Turned};
use crate::ident::{EntryId, JobId, PersonId, TireId, ToolId, VehicleId};
use crate::limits::{Chosen, Rules};
use crate::measure::{Depth, Distance, Pressure, Torque};
use crate::vehicle::Place;

/// How a job stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Status {
    /// In the bay.
    Open,
    /// Put aside.
    Parked,
    /// Signed: finished.
    Signed,
    /// Ended without a signature.
    Closed,
}

/// One thing said in a job, as it holds.
#[derive(Clone, PartialEq)]
pub struct Line {
    /// The entry.
    pub entry: EntryId,
    /// When.
    pub at: Moment,
    /// Who said it.
    pub author: PersonId,
    /// Whose hands did it.
    pub hands: PersonId,
    /// What holds.
    pub fact: Fact,
    /// The person it names, from the personal part, unless that was erased.
    pub named: Option<String>,
    /// The signature that was drawn, from the personal part, unless that was erased.
    pub drawn: Option<String>,
    /// The entry that corrected it.
    pub corrected_by: Option<EntryId>,
}

/// Without what is personal, which must not get into a log.
impl fmt::Debug for Line {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Line")
            .field("entry", &self.entry)
            .field("at", &self.at)
            .field("author", &self.author)
            .field("hands", &self.hands)
            .field("fact", &self.fact)
            .field("corrected_by", &self.corrected_by)
            .finish_non_exhaustive()
    }
}

/// A job: what was said in it, in order.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Job {
    /// Its id.
    pub id: JobId,
    /// Its number in this book, from 1.
    pub number: usize,
    /// The vehicle.
    pub vehicle: VehicleId,
    /// The procedure's id.
    pub procedure: String,
    /// The procedure's version.
    pub version: u32,
    /// Circumstances that decide which steps apply.
    pub circumstances: Vec<String>,
    /// Kept out of wear, due dates and history.
    pub practice: bool,
    /// How it stands.
    pub status: Status,
    /// When it was opened.
    pub opened: Moment,
    /// Whose hands do the steps now.
    pub hands: PersonId,
    /// What was said, in order.
    #[serde(skip)]
    pub lines: Lines,
    /// Which tire was where when the job was opened.
    #[serde(with = "pairs")]
    pub fitted: BTreeMap<Place, TireId>,
    /// The entries that are about it, those that were taken back among them.
    pub entries: Vec<Span>,
    /// Whose limits held in the book while it was open.
    pub limits: Chosen,
}

/// One nut's latest word on one pass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NutSaid {
    /// What it did.
    pub turned: Option<Turned>,
    /// What the tool was set to.
    pub setting: Option<Torque>,
    /// Said of the whole wheel in order, not of this nut alone.
    pub in_order: bool,
    /// The entry.
    pub entry: EntryId,
}

impl Job {
    /// Whether things can still be said in it.
    pub fn is_running(&self) -> bool {
        matches!(self.status, Status::Open | Status::Parked)
    }

    /// The last fact that `pick` takes.
    pub fn last<'a, T>(&'a self, pick: impl Fn(&'a Fact) -> Option<T>) -> Option<T> {
        self.lines.iter().rev().find_map(|line| pick(&line.fact))
    }

    /// Whose limits it is judged by: what was chosen for it, else for the book.
    pub fn chosen(&self) -> Chosen {
        self.lines.iter().fold(self.limits, |held, line| match &line.fact {
            Fact::LimitsChosen { chosen, .. } => chosen.over(held),
            _ => held,
        })
    }

    /// The rules it is judged by; the default where nothing was chosen.
    pub fn rules(&self) -> Rules {
        self.chosen().rules()
    }

    /// The odometer reading of this job.
    pub fn odometer(&self) -> Option<Distance> {
        self.last(|fact| match fact {
            Fact::OdometerRead { reading, .. } => Some(*reading),
            _ => None,
        })
    }

    /// What was seen of the drive.
    pub fn drive_seen(&self) -> impl Iterator<Item = &DriveSeen> {
        self.lines.iter().filter_map(|line| match &line.fact {
            Fact::DriveSeen { seen, .. } => Some(seen),
            _ => None,
        })
    }

    /// The chosen plan: its pattern's code and its moves.
    pub fn plan(&self) -> Option<(&str, &[Move])> {
        self.last(|fact| match fact {
            Fact::PlanChosen { pattern, moves, .. } => Some((pattern.as_str(), moves.as_slice())),
            _ => None,
        })
    }

    /// The wheels that were named to come off.
    pub fn wheels_chosen(&self) -> &[Place] {
        let named = self.last(|fact| match fact {
            Fact::WheelsChosen { at, .. } => Some(at.as_slice()),
            _ => None,
        });
        named.unwrap_or_default()
    }

    /// The wheels of the set that was brought, by the corner each is laid out at.
    pub fn coming(&self) -> BTreeMap<Place, TireId> {
        let brought = self.last(|fact| match fact {
            Fact::SetBrought { wheels, .. } => Some(wheels),
            _ => None,
        });
        brought.into_iter().flatten().map(|laid| (laid.at, laid.tire)).collect()
    }

    /// The wheels that this job plans with: the set that was brought, else those that were on.
    pub fn planned(&self) -> BTreeMap<Place, TireId> {
        let coming = self.coming();
        if coming.is_empty() { self.fitted.clone() } else { coming }
    }

    /// Which wheels were stored in this job: the tire, where it came off, and the rack.
    pub fn stored(&self) -> impl Iterator<Item = (TireId, Place, &str)> {
        self.lines.iter().filter_map(|line| match &line.fact {
            Fact::TireStored { tire, at, rack, .. } => Some((*tire, *at, rack.as_str())),
            _ => None,
        })
    }

    /// The tire that the plan wants at a place.
    pub fn wanted_at(&self, place: Place) -> Option<TireId> {
        match self.plan() {
            Some((_, moves)) => moves.iter().find(|m| m.to == place).map(|m| m.tire),
            None => self.planned().get(&place).copied(),
        }
    }

    /// The mark chalked on a tire in this job.
    pub fn mark_of(&self, tire: TireId) -> Option<&str> {
        self.last(|fact| match fact {
            Fact::MarkChalked { tire: marked, mark, .. } if *marked == tire => Some(mark.as_str()),
            _ => None,
        })
    }

    /// What a tire is known by in this job: its mark; the spare on its carrier needs none.
    pub fn known_by(&self, tire: TireId) -> Option<&str> {
        let spare = self.fitted.get(&Place::Spare) == Some(&tire);
        self.mark_of(tire).or(spare.then_some("SP"))
    }

    /// The place of the flat tire whose place the spare takes.
    pub fn flat(&self) -> Option<Place> {
        self.last(|fact| match fact {
            Fact::SpareSeen { flat, .. } => Some(*flat),
            _ => None,
        })
    }

    /// The tire that carries a mark; letters of either case.
    pub fn marked(&self, mark: &str) -> Option<TireId> {
        self.planned()
            .into_values()
            .find(|tire| self.known_by(*tire).is_some_and(|chalked| chalked.eq_ignore_ascii_case(mark)))
    }

    /// The mark last read at a corner.
    pub fn mark_read_at(&self, place: Place) -> Option<&str> {
        self.last(|fact| match fact {
            Fact::MarkRead { at, mark, .. } if *at == place => Some(mark.as_str()),
            _ => None,
        })
    }

    /// Whether the mark last read at a corner is the planned tire's; none before it was read.
    pub fn mark_fits(&self, place: Place) -> Option<bool> {
        let read = self.mark_read_at(place)?;
        Some(self.marked(read).is_some() && self.marked(read) == self.wanted_at(place))
    }

    /// Whether the wheel at a place is off the hub now.
    pub fn is_off(&self, place: Place) -> bool {
        self.last(|fact| match fact {
            Fact::WheelOff { at, .. } if *at == place => Some(true),
            Fact::WheelOn { at, .. } if *at == place => Some(false),
            _ => None,
        })
        .unwrap_or(false)
    }

    /// Whether a wheel came off at this place in this job.
    pub fn came_off(&self, place: Place) -> bool {
        self.lines.iter().any(|line| matches!(line.fact, Fact::WheelOff { at, .. } if at == place))
    }

    /// Where the vehicle, or this corner of it, stands: the last word on it.
    pub fn arm(&self, place: Option<Place>) -> Option<(Arm, Means)> {
        self.last(|fact| match fact {
            Fact::Lifted { arm, means, at, .. } if at.is_none() || *at == place || place.is_none() => {
                Some((*arm, *means))
            }
            _ => None,
        })
    }

    /// Whether the vehicle reached this state at any time in this job.
    pub fn was_lifted(&self, arm: Arm) -> bool {
        self.lines.iter().any(|line| matches!(line.fact, Fact::Lifted { arm: said, .. } if said == arm))
    }

    /// Whether the vehicle reached this state since it last stood on its wheels.
    pub fn lifted(&self, arm: Arm) -> bool {
        for line in self.lines.iter().rev() {
            match &line.fact {
                Fact::Lifted { arm: said, .. } if *said == arm => return true,
                Fact::Lifted { arm: Arm::Down, .. } => return false,
                _ => {}
            }
        }
        false
    }

    /// Each nut's latest word on a pass at a place, by clock position. A wheel
    /// that came off again, or a nut that was begun again, starts over.
    pub fn nuts(&self, place: Place, pass: Pass) -> BTreeMap<u8, NutSaid> {
        let mut said = BTreeMap::new();
        for line in &self.lines {
            match &line.fact {
                // Cracking happens before the wheel comes off, everything else after it is on.
                Fact::WheelOff { at, .. } if *at == place && pass != Pass::Cracked => said.clear(),
                Fact::NutTightened { at, nuts, pass: p, turned, setting, .. } if *at == place => {
                    let (first, last, in_order) = match nuts {
                        Nuts::One(nut) => (*nut, *nut, false),
                        Nuts::WheelInOrder(count) => (1, *count, true),
                    };
                    // A nut that is loosened again has no final torque any more.
                    if *p == Pass::Loosened && pass == Pass::Final {
                        said.retain(|nut, _| !(first..=last).contains(nut));
                    }
                    if *p != pass {
                        continue;
                    }
                    for nut in first..=last {
                        said.insert(nut, NutSaid { turned: *turned, setting: *setting, in_order, entry: line.entry });
                    }
                }
                _ => {}
            }
        }
        said
    }

    /// The tread last measured on a tire: grooves at each place around it, and the lowest spot.
    pub fn tread(&self, tire: TireId) -> Option<(&[Vec<Depth>], Depth)> {
        self.last(|fact| match fact {
            Fact::TreadMeasured { tire: measured, grooves, lowest, .. } if *measured == tire => {
                Some((grooves.as_slice(), *lowest))
            }
            _ => None,
        })
    }

    /// The circumference last measured round a tire.
    pub fn around(&self, tire: TireId) -> Option<crate::measure::Span> {
        self.last(|fact| match fact {
            Fact::AroundMeasured { tire: measured, around, .. } if *measured == tire => Some(*around),
            _ => None,
        })
    }

    /// The weight that is raised and the lowest rating of the gear, as read last.
    pub fn gear_rated(&self) -> Option<(crate::measure::Load, crate::measure::Load)> {
        self.last(|fact| match fact {
            Fact::GearRated { weight, rating, .. } => Some((*weight, *rating)),
            _ => None,
        })
    }

    /// The pressure last measured or set at a place, and whether it was set.
    pub fn pressure(&self, place: Place) -> Option<(Pressure, bool)> {
        self.last(|fact| match fact {
            Fact::PressureMeasured { at, pressure, set, .. } if *at == place => Some((*pressure, *set)),
            _ => None,
        })
    }

    /// The latest look at each part.
    pub fn looks(&self) -> Vec<&Look> {
        let mut looks: Vec<&Look> = Vec::new();
        for line in &self.lines {
            if let Fact::FindingNoted { look, .. } = &line.fact {
                looks.retain(|old| (old.at, old.part) != (look.at, look.part));
                looks.push(look);
            }
        }
        looks
    }

    /// The tools used.
    pub fn tools(&self) -> impl Iterator<Item = ToolId> + '_ {
        self.lines.iter().filter_map(|line| match line.fact {
            Fact::ToolUsed { tool, .. } => Some(tool),
            _ => None,
        })
    }

    /// Whether a learner answers each decision first.
    pub fn answers_first(&self) -> bool {
        self.last(|fact| match fact {
            Fact::AnswerFirst { on, .. } => Some(*on),
            _ => None,
        })
        .unwrap_or(false)
    }

    /// What a learner answered of a decision, and what the core answered then.
    pub fn learned(&self, decision: Decision) -> Option<&Learned> {
        self.last(|fact| match fact {
            Fact::AnswerGiven { learned, .. } if learned.decision() == decision => Some(learned),
            _ => None,
        })
    }

    /// Who held the other side of the wheel at a place: somebody of the book, or a name.
    pub fn shared(&self, place: Place) -> impl Iterator<Item = (Option<PersonId>, Option<&str>)> {
        self.lines.iter().filter_map(move |line| match line.fact {
            Fact::WheelShared { at, person, .. } if at == place => Some((person, line.named.as_deref())),
            _ => None,
        })
    }

    /// The reason with which a gate was opened.
    pub fn opened_with(&self, step: &str, at: Option<Place>, condition: &str) -> Option<&str> {
        self.last(|fact| match fact {
            Fact::GateOpened { step: s, at: a, condition: c, reason, .. }
                if s == step && *a == at && c == condition =>
            {
                Some(reason.as_str())
            }
            _ => None,
        })
    }
}
