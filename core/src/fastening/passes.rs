use serde::Serialize;

use super::target::Target;
use crate::fastener::{Layer, Mounting, Pass, Stage, Wrench};
use crate::measure::Torque;

/// How tight the snug round is, percent of the target, while the wheel hangs
/// free (common practice, no source).
pub const SNUG_PERCENT: u8 = 50;

/// One round over a wheel's nuts.
///
/// ```
/// use lugbook::fastening::{Mounting, Pass, TorqueSpec, Wrench, passes, target};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let rounds = passes(&target(&spec, &wrench).unwrap(), &wrench, Mounting::OneSet, Pass::FirstFinal);
/// let last = rounds.last().unwrap();
/// assert!(last.on_ground && last.setting.unwrap().to_string() == "137 N.m");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Round {
    /// What is done.
    pub stage: Stage,
    /// To which nuts.
    pub layer: Layer,
    /// What the wrench is set to; `None` by hand, and where the scale does not reach so low.
    pub setting: Option<Torque>,
    /// Percent of the target.
    pub percent: Option<u8>,
    /// Weight on the tire, so that the wheel can't turn.
    pub on_ground: bool,
}

/// The rounds over a wheel's nuts, in order.
///
/// First fitting: each nut by hand, snug in order, then to the target with
/// weight on the tire ("do not tighten fully until the wheel is on the ground",
/// makers' manuals). Stud-piloted duals: both layers snug, then on the ground
/// loosen the outer nuts, set the inner ones, set the outer ones. At a recheck
/// the wrench alone, and on stud-piloted duals again by way of the outer nuts.
///
/// ```
/// use lugbook::fastening::{passes, target, Mounting, Pass, Stage, TorqueSpec, Wrench};
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let found = target(&TorqueSpec::printed(["125..150 N.m".parse()?]), &wrench).unwrap();
/// let stages: Vec<_> = passes(&found, &wrench, Mounting::OneSet, Pass::FirstFinal).iter().map(|r| r.stage).collect();
/// assert_eq!(stages, [Stage::HandStart, Stage::Snug, Stage::Final]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn passes(target: &Target, wrench: &Wrench, mounting: Mounting, pass: Pass) -> Vec<Round> {
    let hand = |layer| Round { stage: Stage::HandStart, layer, setting: None, percent: None, on_ground: false };
    let snug = |layer| Round {
        stage: Stage::Snug,
        layer,
        setting: snug_setting(target, wrench),
        percent: Some(SNUG_PERCENT),
        on_ground: false,
    };
    let full =
        |stage, layer| Round { stage, layer, setting: Some(target.setting), percent: Some(100), on_ground: true };
    let loosen = Round { stage: Stage::Loosen, layer: Layer::Outer, setting: None, percent: None, on_ground: true };
    match (mounting, pass) {
        (Mounting::OneSet, Pass::FirstFinal) => {
            vec![hand(Layer::Only), snug(Layer::Only), full(Stage::Final, Layer::Only)]
        }
        (Mounting::OneSet, Pass::Recheck) => vec![full(Stage::Recheck, Layer::Only)],
        (Mounting::StudPilotedDual, Pass::FirstFinal) => vec![
            hand(Layer::Inner),
            snug(Layer::Inner),
            hand(Layer::Outer),
            snug(Layer::Outer),
            loosen,
            full(Stage::Final, Layer::Inner),
            full(Stage::Final, Layer::Outer),
        ],
        (Mounting::StudPilotedDual, Pass::Recheck) => {
            vec![loosen, full(Stage::Recheck, Layer::Inner), full(Stage::Final, Layer::Outer)]
        }
    }
}

/// The step of the scale at or under the snug share of the setting.
fn snug_setting(target: &Target, wrench: &Wrench) -> Option<Torque> {
    let unit = target.setting.unit();
    let step = wrench.step.in_unit(unit);
    let share = target.setting.value() * f64::from(SNUG_PERCENT) / 100.0;
    let setting = Torque::new(((share / step + 1e-9).floor() * step * 1e9).round() / 1e9, unit).ok()?;
    wrench.range.is_none_or(|scale| setting >= scale.low && setting <= scale.high).then_some(setting)
}
