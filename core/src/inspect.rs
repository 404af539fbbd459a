//! What the entries of a job say is wrong.
//!
//! [`inspect`] reads looks, tread, sidewalls, pressures, torque papers and
//! tools, and gives one [`Finding`] for each thing that is not as it should
//! be, with its state, its place and where the rule comes from. Nothing here
//! refuses: gates do that, on their own grounds.

mod axle;
mod tire;
mod work;

use serde::Serialize;

use crate::calendar::{Age, Moment};
use crate::entry::{Fact, Kind, Look, LookAt, Shelf, TireDamage, ToolKind};
use crate::fastener::{Calibration, UnitClash};
use crate::finding::State;
use crate::ident::{TireId, ToolId};
use crate::limits::{Circumstances, Limit, Rules};
use crate::logbook::{Book, Job, Vehicle};
use crate::measure::{Depth, DepthUnit, Pressure, Span, THIRTY_SECOND_MM};
use crate::source::{Grade, Source};
use crate::vehicle::Place;

/// One thing that is not as it should be.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Finding {
    /// How it stands.
    pub state: State,
    /// Where; none for the vehicle, its papers and tools.
    pub at: Option<Place>,
    /// The tire, when it is the tire's own: it takes this along wherever it goes.
    pub tire: Option<TireId>,
    /// What it is.
    pub what: What,
    /// Where the judgement comes from; none when a mechanic judged by eye.
    pub source: Option<Source>,
}

/// What is not as it should be.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum What {
    /// A part that a mechanic looked at.
    Seen {
        /// The part.
        part: LookAt,
        /// In the mechanic's words.
        note: Option<String>,
        /// What was found on a tire.
        damage: Option<TireDamage>,
        /// How thick a pad or disc was measured.
        thickness: Option<Span>,
    },
    /// A brake part that is not thicker than it must be at the least.
    Thin {
        /// The part.
        part: LookAt,
        /// How thick it was measured.
        thickness: Span,
        /// How thick it must be.
        least: Span,
    },
    /// The lowest reading of a tire against the limit.
    Tread {
        /// The lowest reading, as read.
        lowest: Depth,
        /// The limit, as its rule writes it.
        limit: Option<Depth>,
        /// A rule whose own text was read is broken.
        broken: bool,
        /// Advice or wear bars that the reading fails, deepest first.
        also: Vec<Limit>,
    },
    /// A tire is deeper than last time: a slipped gauge, or another tire.
    Deeper {
        /// The lowest reading now.
        now: Depth,
        /// The lowest reading last time.
        before: Depth,
        /// When that was.
        when: Moment,
        /// Somebody gave a reason for it.
        explained: bool,
    },
    /// Two tires of one axle differ.
    Uneven {
        /// The axle, from the front, 1 first.
        axle: u8,
        /// The deepest lowest reading on it.
        most: Depth,
        /// The shallowest.
        least: Depth,
    },
    /// The tires of a vehicle that drives all its wheels differ.
    UnevenSet {
        /// The deepest lowest reading.
        most: Depth,
        /// The shallowest.
        least: Depth,
    },
    /// An old tire.
    Old {
        /// At the least.
        age: Age,
    },
    /// The size on the tire is not the placard's.
    NotPlacardSize {
        /// On the tire.
        fitted: String,
        /// On the placard.
        placard: String,
    },
    /// The pressure last read is under the placard.
    Low {
        /// Last read or set.
        pressure: Pressure,
        /// The placard's.
        placard: Pressure,
        /// It was set to this, not only found.
        set: bool,
    },
    /// The pressure warning lamp is on.
    LampOn,
    /// Two printings of the torque do not agree.
    Clash {
        /// Which.
        clash: UnitClash,
    },
    /// The torque was looked for and not found.
    NoTorque,
    /// A nut clicked without moving at its final pass, and was not tightened again.
    NotProven {
        /// Which nuts, by clock position.
        nuts: Vec<u8>,
    },
    /// A nut moved when it was checked again.
    MovedAtRecheck {
        /// Which nuts.
        nuts: Vec<u8>,
    },
    /// A tool whose calibration is old or not known.
    Uncalibrated {
        /// The tool.
        tool: ToolId,
        /// How its calibration stands.
        calibration: Calibration,
    },
}

/// A job, its vehicle and the rules it is judged by.
#[derive(Clone, Copy)]
struct Looking<'a> {
    book: &'a Book,
    job: &'a Job,
    vehicle: &'a Vehicle,
    rules: Rules,
}

/// How thick a part must be at the least: as printed on it, else as the manual gives
/// it for pads. Never a figure that nobody read.
pub fn least_of(book: &Book, vehicle: &Vehicle, look: &Look) -> Option<Span> {
    let manual = || match book.on_shelf(&vehicle.model, Kind::Brakes).map(|spec| &spec.shelf) {
        Some(Shelf::Brakes { pads }) if look.part == LookAt::Pads => Some(*pads),
        _ => None,
    };
    look.least.or_else(manual)
}

/// Where the least thickness stands when it is printed on the part.
const PRINTED: Source = Source::read(Grade::Manual, "minimum printed on the part");
/// Where it stands when the manual gives it.
const MANUAL: Source = Source::read(Grade::Manual, "the vehicle's manual, as recorded");

/// What the entries of a job say is wrong, worst first, then in the order of places.
///
/// ```
/// use lugbook::inspect::inspect;
/// use lugbook::limits::Rules;
/// use lugbook::logbook::Book;
/// // A book without jobs has nothing to look at.
/// let book = Book::default();
/// assert!(book.jobs.iter().all(|job| inspect(&book, job, Rules::default()).is_empty()));
/// ```
pub fn inspect(book: &Book, job: &Job, rules: Rules) -> Vec<Finding> {
    let Some(vehicle) = book.vehicle(job.vehicle) else { return Vec::new() };
    let looking = Looking { book, job, vehicle, rules };
    let mut findings = looking.seen();
    findings.extend(looking.thin());
    for place in vehicle.layout.places() {
        findings.extend(looking.of_tire(place));
    }
    findings.extend(looking.of_axles());
    findings.extend(looking.of_work());
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.state));
    findings
}

impl<'a> Looking<'a> {
    /// What a mechanic looked at and did not call sound.
    fn seen(self) -> Vec<Finding> {
        let looks = self.job.looks().into_iter().filter(|look| look.state != State::Sound);
        looks
            .map(|look| Finding {
                state: look.state,
                at: look.at,
                tire: self.tire_looked_at(look),
                what: What::Seen {
                    part: look.part,
                    note: look.note.clone(),
                    damage: look.damage,
                    thickness: look.thickness,
                },
                source: None,
            })
            .collect()
    }

    /// Parts that were measured, and are at their least thickness or under it.
    fn thin(self) -> Vec<Finding> {
        let thin = |look: &Look| {
            let (thickness, least) = (look.thickness?, least_of(self.book, self.vehicle, look)?);
            let state = if thickness < least {
                State::BelowLimit
            } else if thickness > least {
                return None;
            } else {
                State::AtLimit
            };
            let what = What::Thin { part: look.part, thickness, least };
            let source = Some(if look.least.is_some() { PRINTED } else { MANUAL });
            Some(Finding { state, at: look.at, tire: None, what, source })
        };
        self.job.looks().into_iter().filter_map(thin).collect()
    }

    /// The tire that a look at tire, valve, rim or weights speaks of: the one that
    /// was at the place then. It takes what was found along wherever it goes.
    fn tire_looked_at(self, look: &Look) -> Option<TireId> {
        if !matches!(look.part, LookAt::Tire | LookAt::Valve | LookAt::ValveCap | LookAt::Rim | LookAt::Weights) {
            return None;
        }
        let place = look.at?;
        let noted = |fact: &Fact| matches!(fact, Fact::FindingNoted { look: said, .. } if said == look);
        let until = self.job.lines.iter().rposition(|line| noted(&line.fact))?;
        let hung = self.job.lines.iter().take(until).rev().find_map(|line| match line.fact {
            Fact::WheelOn { at, tire, .. } if at == place => Some(tire),
            _ => None,
        });
        hung.or_else(|| self.job.fitted.get(&place).copied())
    }

    fn circumstances(self, place: Place) -> Circumstances {
        self.rules.at(self.vehicle.class, &self.vehicle.layout, place)
    }

    /// Where a tire ends in this job: by the plan, else where it is.
    fn ends_at(self, place: Place) -> Place {
        let tire = self.job.planned().get(&place).copied();
        let planned = self.job.plan().and_then(|(_, moves)| moves.iter().find(|m| Some(m.tire) == tire));
        planned.map_or(place, |planned| planned.to)
    }

    /// The coarsest step of the depth gauges named in a job, mm; a common gauge's when none is named.
    fn depth_step_mm(self, job: &Job) -> f64 {
        let steps = job.tools().filter_map(|id| match self.book.tool(id).map(|tool| &tool.what) {
            Some(ToolKind::DepthGauge { resolution, .. }) => Some(resolution.in_unit(DepthUnit::Millimetre)),
            _ => None,
        });
        steps.fold(None, |most: Option<f64>, step| Some(most.map_or(step, |m| m.max(step)))).unwrap_or(THIRTY_SECOND_MM)
    }
}
