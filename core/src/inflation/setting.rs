use serde::{Deserialize, Serialize};

use super::gas::at_temperature;
use crate::measure::{Misread, Pressure, Temperature};
use crate::source::{Grade, Source};
use crate::vehicle::Class;

/// Whether a tire is cold: not driven more than a couple of miles at low speed
/// within the past three hours (a maker's glossary).
///
/// ```
/// use lugbook::inflation::{Ask, Finding, Warmth, cold_setting};
/// let mut ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
/// ask.warmth = Warmth::Warm;
/// ask.found = Some("39 psi".parse()?);
/// // Never bled down to the placard while warm.
/// assert!(cold_setting(&ask)?.findings.contains(&Finding::DoNotBleedWarm));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Warmth {
    /// Rested: it has the shop's temperature.
    Cold,
    /// Driven lately.
    Warm,
    /// Nobody said: taken as warm, which is the safe side for bleeding.
    #[default]
    NotKnown,
}

/// Whether the tires on the axle are those the placard is for.
///
/// ```
/// use lugbook::inflation::{Ask, Fitted, cold_setting};
/// let mut ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
/// ask.fitted = Fitted::SizeDiffers;
/// assert_eq!(cold_setting(&ask)?.set, None, "the placard does not hold");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fitted {
    /// Size and load range or index as the placard has them.
    AsPlacard,
    /// Another size: the placard does not hold.
    SizeDiffers,
    /// Another load range or index: the placard does not hold.
    LoadDiffers,
    /// Not compared yet.
    #[default]
    NotCompared,
}

/// What is known when a tire is to be set.
///
/// ```
/// use lugbook::inflation::{Ask, cold_setting};
/// let mut ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
/// ask.placard = None;
/// assert_eq!(cold_setting(&ask)?.set, None, "look at the door post");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Ask {
    /// The placard's cold pressure for the axle the tire is on now.
    pub placard: Option<Pressure>,
    /// The largest pressure molded on the sidewall.
    pub sidewall_max: Option<Pressure>,
    /// The temperature where the tire stands.
    pub shop: Temperature,
    /// The temperature it will be cold at, outside; `None` takes the shop's.
    pub outside: Option<Temperature>,
    /// The pressure as found.
    pub found: Option<Pressure>,
    /// Driven lately or not.
    pub warmth: Warmth,
    /// Whether the tire is the placard's.
    pub fitted: Fitted,
    /// The class of vehicle: rules for truck tires do not hold for cars.
    pub class: Class,
    /// A tire found low was taken off and inspected inside since.
    pub inspected: bool,
    /// The gauge's step; the setting is told in such steps.
    pub step: Option<Pressure>,
}

impl Ask {
    /// A cold tire of a car, of which placard and temperature are known.
    ///
    /// ```
    /// use lugbook::inflation::{Ask, Warmth};
    /// let ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
    /// assert_eq!((ask.warmth, ask.sidewall_max), (Warmth::Cold, None));
    /// # Ok::<(), lugbook::measure::Misread>(())
    /// ```
    pub fn new(placard: Pressure, shop: Temperature) -> Self {
        Self {
            placard: Some(placard),
            sidewall_max: None,
            shop,
            outside: None,
            found: None,
            warmth: Warmth::Cold,
            fitted: Fitted::NotCompared,
            class: Class::Car,
            inspected: false,
            step: None,
        }
    }
}

/// What to set a tire to.
///
/// ```
/// use lugbook::inflation::{Ask, cold_setting};
/// let ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
/// let setting = cold_setting(&ask)?;
/// assert_eq!(setting.set.map(|set| set.to_string()).as_deref(), Some("35 psi"));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Setting {
    /// What the gauge must show now; `None` when no figure can be given.
    pub set: Option<Pressure>,
    /// What that is once the tire is cold outside; `None` when not known.
    pub cold: Option<Pressure>,
    /// What to know.
    pub findings: Vec<Finding>,
}

/// What to know about a setting.
///
/// ```
/// use lugbook::inflation::{Ask, Finding, cold_setting};
/// let mut ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
/// ask.sidewall_max = Some("30 psi".parse()?);
/// let setting = cold_setting(&ask)?;
/// assert!(setting.set.is_none() && setting.findings.iter().any(|f| matches!(f, Finding::PlacardOverSidewall { .. })));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum Finding {
    /// No placard: look at the driver's door post or in the manual. No figure is given.
    PlacardNotKnown,
    /// The size differs from the placard's, so it does not hold. No figure is given.
    PlacardVoidBySize,
    /// The load range or index differs from the placard's, so it does not hold. No figure is given.
    PlacardVoidByLoad,
    /// Nobody compared size and load with the placard.
    FittedNotCompared,
    /// The placard asks for more than the sidewall allows: the tire does not suit the vehicle. No figure is given.
    PlacardOverSidewall {
        /// The placard's.
        placard: Pressure,
        /// The sidewall's.
        sidewall: Pressure,
    },
    /// The sidewall's maximum was not read.
    SidewallNotKnown,
    /// Set higher than the placard, because it is colder outside than in the shop.
    RaisedForCold {
        /// By so much, in the placard's unit.
        by: f64,
    },
    /// It is warmer outside than in the shop; the placard stays the least.
    HeldAtPlacard,
    /// Held at the sidewall's maximum: check it again cold, outside.
    CappedAtSidewall {
        /// What the cold outside would ask for.
        wanted: Pressure,
    },
    /// Once cold outside it will be under the placard: check it there.
    UnderPlacardOutside {
        /// By so much, in the placard's unit.
        by: f64,
    },
    /// Once at the warmer outside it will be over the sidewall's maximum: check it there.
    OverSidewallOutside {
        /// By so much, in the placard's unit.
        by: f64,
    },
    /// The tire is warm or may be: its reading is above what it is cold. Never bleed it to the placard; check it cold.
    DoNotBleedWarm,
    /// Under the placard although warm: it is lower still when cold. Fill, then check it cold.
    LowThoughWarm,
    /// A truck tire at 80 % of its pressure or less: inspect it before air goes in. At more
    /// than that it may be topped up on the vehicle (Army TM 9-2330-335-14&P). No figure is given.
    InspectBeforeFilling,
    /// So low that it may have been driven flat: inspect it inside before air goes in. That a
    /// tire run flat is never refilled uninspected was read in Army manuals; that it was run
    /// flat is a guess, so the figure is given all the same.
    MayHaveRunFlat,
    /// The gauge's step is coarser than the room between placard and sidewall.
    StepTooCoarse,
}

/// Under this share of the placard any tire may have been driven flat (common practice, no source).
const RUN_FLAT_SHARE: f64 = 0.5;
/// At this share or less a truck tire is inspected first.
const TRUCK_SHARE: f64 = 0.8;
const SLACK: f64 = 1e-9;

/// What to set a tire to now, so that it has the placard's pressure cold outside.
///
/// The placard is carried from outside to the shop by the gas law
/// ([`at_temperature`]); never under the placard, never over the sidewall's
/// maximum, never down on a warm tire. Answers are in the placard's unit; with a
/// step, rounded up to it, or down where up would pass the sidewall's maximum.
///
/// ```
/// use lugbook::inflation::{cold_setting, Ask, Finding};
/// let mut ask = Ask::new("35 psi".parse()?, "70 F".parse()?);
/// ask.outside = Some("20 F".parse()?);
/// ask.sidewall_max = Some("44 psi".parse()?);
/// let setting = cold_setting(&ask)?;
/// assert_eq!(setting.set.map(|p| (p.value() * 10.0).round() / 10.0), Some(40.2));
/// assert_eq!(setting.cold.map(|p| p.to_string()), Some("35 psi".to_owned()));
/// assert!(matches!(setting.findings[..], [Finding::FittedNotCompared, Finding::RaisedForCold { .. }]));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
///
/// # Errors
/// When a pressure leaves what a gauge pressure can be.
pub fn cold_setting(ask: &Ask) -> Result<Setting, Misread> {
    let mut findings = Vec::new();
    let Some(placard) = holding_placard(ask, &mut findings) else {
        return Ok(Setting { set: None, cold: None, findings });
    };
    if inspect_first(ask, placard, &mut findings) {
        return Ok(Setting { set: None, cold: None, findings });
    }
    if ask.warmth != Warmth::Cold {
        return Ok(Setting { set: warm_setting(ask, placard, &mut findings), cold: None, findings });
    }
    let outside = ask.outside.unwrap_or(ask.shop);
    let wanted = at_temperature(placard, outside, ask.shop)?;
    let set = hold(ask, placard, wanted, &mut findings)?;
    let set = on_step(ask, placard, set, &mut findings)?;
    let by = set.in_unit(placard.unit()) - placard.value();
    if by > SLACK && wanted > placard {
        findings.push(Finding::RaisedForCold { by });
    }
    let cold = same_if_near(at_temperature(set, ask.shop, outside)?, placard);
    let under = placard.value() - cold.value();
    if under > SLACK {
        findings.push(Finding::UnderPlacardOutside { by: under });
    }
    let over = ask.sidewall_max.map_or(0.0, |max| cold.value() - max.in_unit(placard.unit()));
    if over > SLACK {
        findings.push(Finding::OverSidewallOutside { by: over });
    }
    Ok(Setting { set: Some(set), cold: Some(cold), findings })
}

/// The placard, unless it is unknown or does not hold.
fn holding_placard(ask: &Ask, findings: &mut Vec<Finding>) -> Option<Pressure> {
    match ask.fitted {
        Fitted::SizeDiffers => findings.push(Finding::PlacardVoidBySize),
        Fitted::LoadDiffers => findings.push(Finding::PlacardVoidByLoad),
        Fitted::AsPlacard | Fitted::NotCompared => match (ask.placard, ask.sidewall_max) {
            (None, _) => findings.push(Finding::PlacardNotKnown),
            (Some(placard), Some(sidewall)) if placard > sidewall => {
                findings.push(Finding::PlacardOverSidewall { placard, sidewall });
            }
            (Some(placard), sidewall) => {
                if ask.fitted == Fitted::NotCompared {
                    findings.push(Finding::FittedNotCompared);
                }
                if sidewall.is_none() {
                    findings.push(Finding::SidewallNotKnown);
                }
                return Some(placard);
            }
        },
    }
    None
}

/// What the pressure as found says about the tire, and whether no air may go in yet.
fn inspect_first(ask: &Ask, placard: Pressure, findings: &mut Vec<Finding>) -> bool {
    let Some(found) = ask.found.filter(|_| !ask.inspected) else { return false };
    let share = found.in_unit(placard.unit()) / placard.value();
    let heavy = matches!(ask.class, Class::Truck | Class::Bus | Class::Trailer);
    if share < RUN_FLAT_SHARE {
        findings.push(Finding::MayHaveRunFlat);
    }
    let held = heavy && share <= TRUCK_SHARE + SLACK;
    if held {
        findings.push(Finding::InspectBeforeFilling);
    }
    held
}

/// A warm tire is filled up to the placard when it is under it, and else left alone.
fn warm_setting(ask: &Ask, placard: Pressure, findings: &mut Vec<Finding>) -> Option<Pressure> {
    match ask.found {
        Some(found) if found < placard => {
            findings.push(Finding::LowThoughWarm);
            Some(placard)
        }
        found => {
            findings.push(Finding::DoNotBleedWarm);
            found
        }
    }
}

/// Not under the placard, not over the sidewall's maximum.
fn hold(ask: &Ask, placard: Pressure, wanted: Pressure, findings: &mut Vec<Finding>) -> Result<Pressure, Misread> {
    let wanted = same_if_near(wanted, placard);
    if wanted < placard {
        findings.push(Finding::HeldAtPlacard);
        return Ok(placard);
    }
    match ask.sidewall_max {
        Some(max) if wanted > max => {
            findings.push(Finding::CappedAtSidewall { wanted });
            Ok(max.to_unit(placard.unit()))
        }
        _ => Ok(wanted),
    }
}

/// The step at or above the setting; the one below where that passes the sidewall's maximum.
fn on_step(ask: &Ask, placard: Pressure, set: Pressure, findings: &mut Vec<Finding>) -> Result<Pressure, Misread> {
    let Some(step) = ask.step.map(|step| step.in_unit(placard.unit())).filter(|step| *step > 0.0) else {
        return Ok(set);
    };
    let at = |count: f64| Pressure::new((count * step * 1e9).round() / 1e9, placard.unit());
    let count = set.value() / step;
    let up = at((count - SLACK).ceil())?;
    if ask.sidewall_max.is_none_or(|max| up <= max) {
        return Ok(up);
    }
    let down = at((count + SLACK).floor())?;
    if down < placard {
        findings.push(Finding::StepTooCoarse);
        return Ok(set);
    }
    Ok(down)
}

/// The placard itself where a conversion differs from it by binary noise alone.
fn same_if_near(pressure: Pressure, placard: Pressure) -> Pressure {
    if (pressure.in_unit(placard.unit()) - placard.value()).abs() < SLACK { placard } else { pressure }
}

/// A class of tire with its own reference pressure.
///
/// ```
/// use lugbook::inflation::{ReferenceClass, reference_pressures};
/// let high = reference_pressures().into_iter().find(|row| row.class == ReferenceClass::EuroMetricHighLoad);
/// assert!(!high.unwrap().source.grade.may_refuse(), "from memory");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ReferenceClass {
    /// P-metric, light or standard load.
    PMetricStandard,
    /// P-metric, extra load.
    PMetricExtraLoad,
    /// Euro-metric, standard.
    EuroMetricStandard,
    /// Euro-metric, reinforced or extra load.
    EuroMetricExtraLoad,
    /// Euro-metric, high load.
    EuroMetricHighLoad,
}

/// The pressure at which a class of tire carries its full load. Information
/// only: the placard says what to set, never this.
///
/// ```
/// use lugbook::inflation::reference_pressures;
/// assert_eq!((reference_pressures()[0].psi, reference_pressures()[0].kpa), (35.0, 240.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ReferencePressure {
    /// The class.
    pub class: ReferenceClass,
    /// In psi.
    pub psi: f64,
    /// In kPa, from memory: not a conversion of the other.
    pub kpa: f64,
    /// Of the psi figure.
    pub source: Source,
}

const READ: Source = Source::read(Grade::Secondary, "load range page");

/// Reference pressures by class (psi grade S, kPa from memory; high load all from memory).
///
/// ```
/// assert!(lugbook::inflation::reference_pressures().iter().all(|row| !row.source.grade.may_refuse()));
/// ```
pub fn reference_pressures() -> [ReferencePressure; 5] {
    let row = |class, psi, kpa, source| ReferencePressure { class, psi, kpa, source };
    [
        row(ReferenceClass::PMetricStandard, 35.0, 240.0, READ),
        row(ReferenceClass::PMetricExtraLoad, 41.0, 280.0, READ),
        row(ReferenceClass::EuroMetricStandard, 36.0, 250.0, READ),
        row(ReferenceClass::EuroMetricExtraLoad, 42.0, 290.0, READ),
        row(ReferenceClass::EuroMetricHighLoad, 42.0, 290.0, Source::MEMORY),
    ]
}
