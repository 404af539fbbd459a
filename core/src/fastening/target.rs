use serde::Serialize;

use super::adapter::{Adapter, BadAdapter};
use crate::fastener::{Printed, TorqueSpec, UnitClash, Wrench};
use crate::measure::{Torque, TorqueUnit, Unit};

/// The printed range, in the unit of the wrench's scale.
///
/// ```
/// use lugbook::fastening::{TorqueSpec, Wrench, target};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let band = target(&spec, &wrench).unwrap().band.unwrap();
/// assert_eq!((band.min.value(), band.max.value()), (125.0, 150.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Band {
    /// The lower end.
    pub min: Torque,
    /// The upper end.
    pub max: Torque,
}

/// What to set the wrench to, and what to know about it.
///
/// ```
/// use lugbook::fastening::{TorqueSpec, Wrench, target};
/// let spec = TorqueSpec::printed(["100 ft.lb".parse()?]);
/// let wrench = Wrench::new(4.0, "5 ft.lb".parse()?);
/// let found = target(&spec, &wrench).unwrap();
/// assert_eq!((found.target.to_string(), found.band, found.margin), ("100 ft.lb".into(), None, None));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Target {
    /// The torque that the nut gets.
    pub target: Torque,
    /// What the wrench is set to: the same, unless an adapter lengthens it.
    pub setting: Torque,
    /// The published range; a single-value specification has none.
    pub band: Option<Band>,
    /// From the worst reading at the nut, target × (1 ± accuracy), to the nearer
    /// end of the range, in the target's unit; negative when it lies outside.
    pub margin: Option<f64>,
    /// What the person should know before setting it.
    pub problems: Vec<Problem>,
}

/// Something about a target that a person should know.
///
/// ```
/// use lugbook::fastening::{Problem, TorqueSpec, Wrench, target};
/// let spec = TorqueSpec::printed(["190..220 N.m".parse()?, "130..160 ft.lb".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let problems = target(&spec, &wrench).unwrap().problems;
/// assert!(matches!(problems[0], Problem::UnitClash(_)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum Problem {
    /// The manual's units disagree by more than rounding. The target lies in both printings.
    UnitClash(UnitClash),
    /// The manual does not print the scale's unit: its value was converted.
    Converted {
        /// The printing that was converted.
        from: Printed,
    },
    /// No step of the scale keeps both worst readings inside the range; the best one is given.
    WorstReadingOutside {
        /// How far outside, in the target's unit.
        by: f64,
    },
    /// The printed value is no step of the scale; the nearest step is given.
    NotOnScale {
        /// The printed value in the scale's unit.
        wanted: f64,
        /// How far the nut's torque is from it, percent.
        off_percent: f64,
    },
    /// The best setting lies outside the wrench's scale; the best on the scale is given.
    ScaleEnds {
        /// What would have been best.
        better: Torque,
    },
}

/// Why there is no target.
///
/// ```
/// use lugbook::fastening::{NoTarget, TorqueSpec, Wrench, target};
/// // Never guessed: nothing printed, no target.
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// assert_eq!(target(&TorqueSpec::printed([]), &wrench), Err(NoTarget::NothingPrinted));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "because", rename_all = "kebab-case")]
pub enum NoTarget {
    /// The specification prints no torque.
    NothingPrinted,
    /// The manual's units disagree so far that no torque satisfies both.
    UnitClash(UnitClash),
    /// Accuracy is not between 0 and 50 percent.
    Accuracy,
    /// No step of the scale lies in the range.
    NoStepInBand {
        /// The step under the range.
        below: f64,
        /// The step above the range.
        above: f64,
        /// The unit's code.
        unit: &'static str,
    },
    /// The wrench's scale does not reach the torque.
    OutsideScale,
    /// The adapter cannot be computed with.
    Adapter {
        /// Why.
        reason: BadAdapter,
    },
}

/// Ends of a range are compared with this slack, so that a converted end does
/// not fall out by the last binary digit. In any torque unit, far under what
/// can be read.
const SLACK: f64 = 1e-9;

/// What to set a wrench to for a specification.
///
/// With a range: of the scale's multiples from zero, the one with the largest
/// margin, where margin = min(t·(1 − a) − min, max − t·(1 + a)), a the accuracy
/// as a share. Of two with the same margin the lower one (a design choice: a
/// nut that is low shows at the recheck, a stretched stud does not). With a
/// single value: the nearest step, the lower of two.
///
/// The printing in the scale's own unit is used when there is one, else the
/// first is converted. When printings clash only their overlap counts.
///
/// ```
/// use lugbook::fastening::{target, TorqueSpec, Wrench};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let found = target(&spec, &Wrench::new(4.0, "1 N.m".parse()?)).unwrap();
/// assert_eq!(found.target.to_string(), "137 N.m");
/// assert!((found.margin.unwrap() - 6.52).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When nothing is printed, printings clash without overlap, no step lies in
/// the range, the scale does not reach, or the accuracy is none.
pub fn target(spec: &TorqueSpec, wrench: &Wrench) -> Result<Target, NoTarget> {
    through(spec, wrench, 1.0)
}

/// As [`target`], with an adapter on the wrench: the setting is a step of the
/// scale and the target what the nut gets by it.
///
/// ```
/// use lugbook::fastening::{target_through, Adapter, TorqueSpec, Wrench};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let adapter = Adapter { lever: "400 mm".parse()?, extension: "100 mm".parse()?, angle_degrees: 0.0 };
/// let found = target_through(&spec, &Wrench::new(4.0, "1 N.m".parse()?), &adapter).unwrap();
/// assert_eq!((found.setting.to_string(), found.target.to_string()), ("110 N.m".into(), "137.5 N.m".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// As [`target`], and when the adapter cannot be computed with.
pub fn target_through(spec: &TorqueSpec, wrench: &Wrench, adapter: &Adapter) -> Result<Target, NoTarget> {
    let factor = adapter.factor().map_err(|reason| NoTarget::Adapter { reason })?;
    through(spec, wrench, factor)
}

/// What the manual asks for, in the scale's unit.
struct Wanted {
    low: f64,
    high: Option<f64>,
}

fn through(spec: &TorqueSpec, wrench: &Wrench, factor: f64) -> Result<Target, NoTarget> {
    if !(0.0..50.0).contains(&wrench.accuracy_percent) {
        return Err(NoTarget::Accuracy);
    }
    let unit = wrench.step.unit();
    let mut problems = Vec::new();
    let wanted = wanted(spec, unit, &mut problems)?;
    match wanted.high {
        Some(high) => in_range(wrench, factor, wanted.low, high, problems),
        None => at_value(wrench, factor, wanted.low, problems),
    }
}

fn wanted(spec: &TorqueSpec, unit: TorqueUnit, problems: &mut Vec<Problem>) -> Result<Wanted, NoTarget> {
    let first = spec.printed.first().ok_or(NoTarget::NothingPrinted)?;
    if let Some(clash) = spec.unit_clash() {
        let all = || spec.printed.iter().map(|printed| printed.ends_in(unit));
        let low = all().map(|(low, _)| low).fold(f64::MIN, f64::max);
        let high = all().map(|(_, high)| high).fold(f64::MAX, f64::min);
        if low > high + SLACK {
            return Err(NoTarget::UnitClash(clash));
        }
        problems.push(Problem::UnitClash(clash));
        return Ok(Wanted { low, high: (high > low + SLACK).then_some(high) });
    }
    let printed = spec.printed.iter().find(|printed| printed.unit() == unit).unwrap_or(first);
    if printed.unit() != unit {
        problems.push(Problem::Converted { from: *printed });
    }
    let (low, high) = printed.ends_in(unit);
    Ok(Wanted { low, high: printed.high().is_some().then_some(high) })
}

/// The scale's steps, by their count from zero.
struct Steps {
    step: f64,
    /// Lowest and highest count on the scale.
    first: f64,
    last: f64,
}

impl Steps {
    fn of(wrench: &Wrench) -> Self {
        let unit = wrench.step.unit();
        let step = wrench.step.value();
        let count = |torque: Torque| torque.in_unit(unit) / step;
        let first = wrench.range.map_or(1.0, |scale| (count(scale.low) - SLACK).ceil().max(1.0));
        let last = wrench.range.map_or(f64::MAX, |scale| (count(scale.high) + SLACK).floor());
        Self { step, first, last }
    }

    /// The setting at a count, free of binary noise: a scale is read to a few decimals at most.
    fn at(&self, count: f64) -> f64 {
        (count * self.step * 1e9).round() / 1e9
    }

    /// The counts on both sides of a setting that are on the scale, lower first.
    fn around(&self, setting: f64) -> [f64; 2] {
        let count = setting / self.step;
        let near = count.round();
        let (below, above) = if (count - near).abs() < SLACK { (near, near) } else { (count.floor(), count.ceil()) };
        [below.clamp(self.first, self.last.max(self.first)), above.clamp(self.first, self.last.max(self.first))]
    }
}

fn in_range(wrench: &Wrench, factor: f64, min: f64, max: f64, mut problems: Vec<Problem>) -> Result<Target, NoTarget> {
    let unit = wrench.step.unit();
    let accuracy = wrench.accuracy_percent / 100.0;
    let steps = Steps::of(wrench);
    if steps.last < steps.first {
        return Err(NoTarget::OutsideScale);
    }
    let at_nut = |count: f64| steps.at(count) / factor;
    let margin = |count: f64| {
        let torque = at_nut(count);
        (torque * (1.0 - accuracy) - min).min(max - torque * (1.0 + accuracy))
    };
    let inside = |count: f64| at_nut(count) >= min - SLACK && at_nut(count) <= max + SLACK;
    // The margin rises up to the middle of the range and falls after it, so the
    // best step is one of the two beside the middle; one inside goes first.
    let best_of = |[below, above]: [f64; 2]| match (inside(below), inside(above)) {
        (true, false) => below,
        (false, true) => above,
        _ if margin(above) > margin(below) + SLACK => above,
        _ => below,
    };
    let middle = (min + max) / 2.0 * factor;
    let best = best_of(steps.around(middle));
    let free = Steps { first: 1.0, last: f64::MAX, step: steps.step };
    let freely = best_of(free.around(middle));
    if !inside(freely) {
        let [below, above] = free.around(middle);
        return Err(NoTarget::NoStepInBand { below: free.at(below), above: free.at(above), unit: unit.code() });
    }
    if !inside(best) {
        return Err(NoTarget::OutsideScale);
    }
    let torque = |value: f64| Torque::new(value, unit).map_err(|_| NoTarget::OutsideScale);
    if best != freely {
        problems.push(Problem::ScaleEnds { better: torque(free.at(freely))? });
    }
    let found = margin(best);
    if found < -SLACK {
        problems.push(Problem::WorstReadingOutside { by: -found });
    }
    Ok(Target {
        target: torque(at_nut(best))?,
        setting: torque(steps.at(best))?,
        band: Some(Band { min: torque(min)?, max: torque(max)? }),
        margin: Some(found),
        problems,
    })
}

fn at_value(wrench: &Wrench, factor: f64, wanted: f64, mut problems: Vec<Problem>) -> Result<Target, NoTarget> {
    let unit = wrench.step.unit();
    let steps = Steps::of(wrench);
    let setting = wanted * factor;
    let count = setting / steps.step;
    if steps.last < steps.first || count < steps.first - 0.5 || count > steps.last + 0.5 {
        return Err(NoTarget::OutsideScale);
    }
    let [below, above] = steps.around(setting);
    let off = |count: f64| (steps.at(count) - setting).abs();
    let best = if off(above) < off(below) - SLACK { above } else { below };
    let torque = |value: f64| Torque::new(value, unit).map_err(|_| NoTarget::OutsideScale);
    let at_nut = steps.at(best) / factor;
    if (at_nut - wanted).abs() > SLACK {
        problems.push(Problem::NotOnScale { wanted, off_percent: (at_nut - wanted).abs() / wanted * 100.0 });
    }
    Ok(Target { target: torque(at_nut)?, setting: torque(steps.at(best))?, band: None, margin: None, problems })
}
