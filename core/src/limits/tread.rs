use serde::{Deserialize, Serialize};

use super::table::{Force, Limit, Region, Season, limits};
use crate::finding::State;
use crate::measure::{Depth, DepthUnit};
use crate::source::Grade;
use crate::vehicle::Class;

/// What a tread depth is judged for.
///
/// ```
/// use lugbook::limits::{Circumstances, Region, Season, Thresholds, judge};
/// use lugbook::vehicle::Class;
/// let axle = |class, steer| Circumstances { region: Region::UsCommercial, class, steer, season: Season::Summer };
/// let state = |here| judge("3 /32".parse().unwrap(), here, Thresholds::default()).state.map(|state| state.code());
/// assert_eq!(state(axle(Class::Truck, true)), Some("below-limit"));
/// assert_eq!(state(axle(Class::Truck, false)), Some("at-limit"));
/// assert_eq!(state(axle(Class::Car, true)), state(axle(Class::Car, false)));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Circumstances {
    /// Whose rules.
    pub region: Region,
    /// What the vehicle is.
    pub class: Class,
    /// Whether the tire is on a steered axle. On a car it changes nothing.
    pub steer: bool,
    /// The season.
    #[serde(default)]
    pub season: Season,
}

/// When to speak of a tire that is still above the limit: a shop's setting.
///
/// Both in millimetres above the limit. By default 1/32 in (one step of a
/// common gauge) is *at limit* and 2/32 in is *watch*: a design choice.
///
/// ```
/// use lugbook::limits::Thresholds;
/// let usual = Thresholds::default();
/// assert_eq!((usual.at_limit_mm, usual.watch_mm), (0.79375, 1.5875));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Thresholds {
    /// Up to so many millimetres above the limit a tire is at the limit.
    pub at_limit_mm: f64,
    /// Up to so many millimetres above the limit a tire is to be watched.
    pub watch_mm: f64,
}

impl Default for Thresholds {
    fn default() -> Self {
        Self { at_limit_mm: 0.79375, watch_mm: 1.5875 }
    }
}

/// How a tire's lowest reading stands.
///
/// ```
/// use lugbook::limits::{Circumstances, Region, Season, Thresholds, judge};
/// use lugbook::vehicle::Class;
/// let here = Circumstances { region: Region::Elsewhere, class: Class::Car, steer: false, season: Season::Summer };
/// let judged = judge("1 mm".parse()?, here, Thresholds::default());
/// assert_eq!((judged.state, judged.limit), (None, None), "no rule was read: no verdict");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Judgement {
    /// How it stands; `None` when no limit is known for this place and vehicle.
    pub state: Option<State>,
    /// The lowest reading, as read.
    pub lowest: Depth,
    /// The strictest minimum, or the wear bars' height when no minimum is known.
    pub limit: Option<Limit>,
    /// Whether a rule whose text was read is broken; otherwise it warns.
    pub refuses: bool,
    /// What else the reading fails: advice, and wear bars.
    pub also: Vec<Limit>,
}

/// Readings compared through a conversion agree within this, far under what a gauge shows.
const SLACK_MM: f64 = 1e-9;

/// Judges a tire by its lowest reading.
///
/// Of the minima that hold, the strictest counts; a reading equal to it passes.
/// Whatever rule is failed, only one whose text was read refuses. Wear bars
/// and advice never make a tire *below limit*.
///
/// ```
/// use lugbook::finding::State;
/// use lugbook::limits::{judge, Circumstances, Region, Season, Thresholds};
/// use lugbook::vehicle::Class;
/// let here = |region| Circumstances { region, class: Class::Car, steer: true, season: Season::Summer };
/// let lowest = "1.59 mm".parse()?;
/// let america = judge(lowest, here(Region::UsFederal), Thresholds::default());
/// let france = judge(lowest, here(Region::France), Thresholds::default());
/// assert_eq!((america.state, france.state), (Some(State::AtLimit), Some(State::BelowLimit)));
/// assert!(france.refuses);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn judge(lowest: Depth, here: Circumstances, thresholds: Thresholds) -> Judgement {
    let holding = || limits().iter().filter(move |limit| holds(limit, here));
    let minima = || holding().filter(|limit| limit.force == Force::Minimum);
    let strictest = strictest(minima()).or_else(|| strictest(holding().filter(|limit| limit.force == Force::WearBar)));
    let failed = |limit: &&Limit| limit.depth().is_some_and(|depth| lowest < depth);
    let also: Vec<Limit> =
        holding().filter(|l| matches!(l.force, Force::Advice | Force::WearBar)).filter(failed).copied().collect();
    let state = strictest.map(|limit| {
        let above = lowest.in_unit(DepthUnit::Millimetre) - limit.mm();
        if minima().any(|limit| failed(&limit)) {
            State::BelowLimit
        } else if above <= thresholds.at_limit_mm + SLACK_MM {
            State::AtLimit
        } else if above <= thresholds.watch_mm + SLACK_MM || !also.is_empty() {
            State::Watch
        } else {
            State::Sound
        }
    });
    Judgement {
        state: state.or((!also.is_empty()).then_some(State::Watch)),
        lowest,
        limit: strictest.copied(),
        refuses: minima().filter(failed).any(Limit::refuses),
        also,
    }
}

/// How far the tires of one axle differ, against the largest allowed.
///
/// ```
/// use lugbook::limits::{Circumstances, Region, Season, judge_spread};
/// use lugbook::vehicle::Class;
/// let here = Circumstances { region: Region::France, class: Class::Car, steer: false, season: Season::Summer };
/// let spread = judge_spread("8 mm".parse()?, "3 mm".parse()?, here).unwrap();
/// assert!(!spread.over && (spread.apart_mm - spread.limit.mm()).abs() < 1e-9, "just 5 mm");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Spread {
    /// The difference, mm.
    pub apart_mm: f64,
    /// The largest difference the place allows.
    pub limit: Limit,
    /// It is larger.
    pub over: bool,
    /// And the rule's text was read.
    pub refuses: bool,
}

/// Compares the main grooves of the two tires of an axle; `None` where no rule about it is carried.
///
/// ```
/// use lugbook::limits::{judge_spread, Circumstances, Region, Season};
/// use lugbook::vehicle::Class;
/// let france = Circumstances { region: Region::France, class: Class::Car, steer: false, season: Season::Summer };
/// let spread = judge_spread("8.5 mm".parse()?, "3 mm".parse()?, france).unwrap();
/// assert!(spread.over && spread.refuses);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub fn judge_spread(one: Depth, other: Depth, here: Circumstances) -> Option<Spread> {
    let limit = *limits().iter().find(|limit| limit.force == Force::Spread && holds(limit, here))?;
    let apart_mm = (one.in_unit(DepthUnit::Millimetre) - other.in_unit(DepthUnit::Millimetre)).abs();
    let over = apart_mm > limit.mm() + SLACK_MM;
    Some(Spread { apart_mm, limit, over, refuses: over && limit.refuses() })
}

fn holds(limit: &Limit, here: Circumstances) -> bool {
    limit.regions.contains(&here.region)
        && limit.classes.contains(&here.class)
        && limit.season.is_none_or(|season| season == here.season)
        && match limit.steer {
            None => true,
            // A car's front axle is an axle like the others.
            Some(steer) => steer == (here.steer && here.class != Class::Car),
        }
}

/// The deepest limit; of equal ones that with the better source.
fn strictest<'a>(limits: impl Iterator<Item = &'a Limit>) -> Option<&'a Limit> {
    let trust = |limit: &Limit| match limit.source.grade {
        grade if grade.may_refuse() => 2,
        Grade::TwoSecondary | Grade::Secondary => 1,
        _ => 0,
    };
    limits.max_by(|a, b| a.mm().total_cmp(&b.mm()).then(trust(a).cmp(&trust(b))))
}
