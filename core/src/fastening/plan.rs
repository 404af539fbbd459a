use serde::Serialize;

use super::adapter::Adapter;
use super::bar::{BarAdvice, BarWarning, advise};
use super::order::order;
use super::passes::{Round, passes};
use super::recheck::{Recheck, recheck};
use super::target::{Band, NoTarget, Problem, Target, target, target_through};
use crate::calendar::Day;
use crate::fastener::{
    Bar, Calibration, Difference, Fastener, Fit, Gun, Hand, Lubrication, Mounting, Pass, Seating, Thread, TorqueSpec,
    Wrench,
};
use crate::measure::{DistanceUnit, Torque};

/// What is asked when a wheel is to be tightened. Unknown stays unknown.
///
/// ```
/// use lugbook::fastening::{Bar, Request, TorqueSpec, Wrench, plan};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let bar = Bar::new("80 ft.lb".parse()?);
/// let request = Request { bar: Some(&bar), ..Request::new(&spec, &wrench, 5) };
/// assert!(plan(&request).unwrap().bar.is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Request<'a> {
    /// What the manual prints.
    pub spec: &'a TorqueSpec,
    /// The wrench at hand.
    pub wrench: &'a Wrench,
    /// How many studs or bolts hold the wheel, 3 to 12.
    pub studs: u8,
    /// An adapter on the wrench.
    pub adapter: Option<&'a Adapter>,
    /// A torque-limiting bar for the first tightening.
    pub bar: Option<&'a Bar>,
    /// The impact gun it is used with.
    pub gun: Option<&'a Gun>,
    /// The nut or bolt as found.
    pub fastener: Option<&'a Fastener>,
    /// The seat in the wheel as found.
    pub wheel: Option<Seating>,
    /// How the wheel or the dual pair is held.
    pub mounting: Mounting,
    /// First fitting or recheck.
    pub pass: Pass,
    /// The day, to see how old the wrench's calibration is.
    pub today: Option<Day>,
    /// In which unit the trade's recheck is told where the manual prints none.
    pub distance: DistanceUnit,
}

impl<'a> Request<'a> {
    /// A first fitting of which only specification, wrench and stud count are known.
    ///
    /// ```
    /// use lugbook::fastening::{Pass, Request, TorqueSpec, Wrench};
    /// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
    /// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
    /// let request = Request::new(&spec, &wrench, 5);
    /// assert_eq!((request.studs, request.pass, request.adapter), (5, Pass::FirstFinal, None));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(spec: &'a TorqueSpec, wrench: &'a Wrench, studs: u8) -> Self {
        Self {
            spec,
            wrench,
            studs,
            adapter: None,
            bar: None,
            gun: None,
            fastener: None,
            wheel: None,
            mounting: Mounting::OneSet,
            pass: Pass::FirstFinal,
            today: None,
            distance: DistanceUnit::Mile,
        }
    }
}

/// How a wheel is tightened.
///
/// ```
/// use lugbook::fastening::{Request, TorqueSpec, Wrench, plan};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let plan = plan(&Request::new(&spec, &wrench, 5)).unwrap();
/// assert_eq!((plan.setting, plan.makers_order, plan.recheck.len()), (plan.target, false, 1));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plan {
    /// The torque at the nut.
    pub target: Torque,
    /// What the wrench is set to; differs from the target with an adapter only.
    pub setting: Torque,
    /// The published range.
    pub band: Option<Band>,
    /// From the worst reading to the nearer end of the range, in the target's unit.
    pub margin: Option<f64>,
    /// Clock positions, 1 at the top, seen from outside.
    pub order: Vec<u8>,
    /// The order is the maker's own.
    pub makers_order: bool,
    /// The rounds over the nuts.
    pub passes: Vec<Round>,
    /// The torque-limiting bar, when there is one.
    pub bar: Option<BarAdvice>,
    /// When to come back.
    pub recheck: Vec<Recheck>,
    /// What to know before starting.
    pub cautions: Vec<Caution>,
}

/// Something to know before a wheel is tightened.
///
/// ```
/// use lugbook::fastening::{Caution, Request, TorqueSpec, Wrench, plan};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// let plan = plan(&Request::new(&spec, &wrench, 5)).unwrap();
/// assert!(plan.cautions.contains(&Caution::LubricationNotKnown));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "about", rename_all = "kebab-case")]
pub enum Caution {
    /// About the target.
    Target(Problem),
    /// About the torque-limiting bar.
    Bar(BarWarning),
    /// The wrench's calibration is old, or nobody knows when it was.
    Calibration {
        /// How it stands.
        state: Calibration,
    },
    /// Whether the thread is dry or oiled was not asked, or the manual does not say.
    LubricationNotKnown,
    /// The thread was not found as the manual wants it: oil on a dry
    /// specification can pass the stud's proof load at the printed torque.
    Lubrication {
        /// What the manual says.
        manual: Lubrication,
        /// What was found.
        found: Lubrication,
    },
    /// The thread in the manual is not the one that was found: the specification may be another vehicle's.
    Thread {
        /// The manual's thread.
        manual: Thread,
        /// The thread found.
        found: Thread,
    },
    /// Nut seat or wheel seat was not looked at.
    SeatNotKnown,
    /// A left-hand thread: it tightens counterclockwise.
    LeftHand,
    /// A lock key is needed: by hand and wrench, never with the gun (common practice, no source).
    LockKey,
}

/// What stops the tightening.
///
/// ```
/// use lugbook::fastening::{Request, Stop, TorqueSpec, Wrench, plan};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "1 N.m".parse()?);
/// assert_eq!(plan(&Request::new(&spec, &wrench, 2)), Err(Stop::Studs { given: 2 }));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(tag = "stop", rename_all = "kebab-case")]
pub enum Stop {
    /// The nut's or bolt's seat does not fit the wheel.
    Seat {
        /// In what they differ.
        difference: Difference,
    },
    /// There is no target.
    Target(NoTarget),
    /// Wheels have 3 to 12 studs.
    Studs {
        /// The count that was given.
        given: u8,
    },
    /// The maker's order as recorded does not name each stud once.
    MakersOrder,
}

/// How to tighten a wheel: target, order, rounds, bar, rechecks, and what to know before.
///
/// ```
/// use lugbook::fastening::{plan, Request, TorqueSpec, Wrench};
/// let spec = TorqueSpec::printed(["125..150 N.m".parse()?]);
/// let wrench = Wrench::new(4.0, "5 N.m".parse()?);
/// let plan = plan(&Request::new(&spec, &wrench, 5)).unwrap();
/// assert_eq!((plan.target.to_string(), plan.order), ("135 N.m".to_owned(), vec![1, 3, 5, 2, 4]));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the seats do not fit, there is no target, or the stud count is none.
pub fn plan(request: &Request<'_>) -> Result<Plan, Stop> {
    let fit = request.fastener.map_or(Fit::NotKnown, |fastener| fastener.fit(request.wheel));
    if let Fit::Mismatch(difference) = fit {
        return Err(Stop::Seat { difference });
    }
    let trade_order = order(request.studs).ok_or(Stop::Studs { given: request.studs })?;
    let makers = request.spec.order.as_ref();
    if makers.is_some_and(|order| !names_each_once(order, request.studs)) {
        return Err(Stop::MakersOrder);
    }
    let found = match request.adapter {
        Some(adapter) => target_through(request.spec, request.wrench, adapter),
        None => target(request.spec, request.wrench),
    }
    .map_err(Stop::Target)?;
    let hex = request.fastener.and_then(|fastener| fastener.hex).or(request.spec.hex);
    let bar = request.bar.map(|bar| advise(&found.target, bar, request.gun, hex));
    let cautions = cautions(request, &found, bar.as_ref(), fit);
    Ok(Plan {
        target: found.target,
        setting: found.setting,
        band: found.band,
        margin: found.margin,
        order: makers.cloned().unwrap_or(trade_order),
        makers_order: makers.is_some(),
        passes: passes(&found, request.wrench, request.mounting, request.pass),
        bar,
        recheck: recheck(request.spec, request.distance),
        cautions,
    })
}

fn names_each_once(order: &[u8], studs: u8) -> bool {
    order.len() == usize::from(studs) && (1..=studs).all(|stud| order.contains(&stud))
}

fn cautions(request: &Request<'_>, found: &Target, bar: Option<&BarAdvice>, fit: Fit) -> Vec<Caution> {
    let mut cautions: Vec<Caution> = found.problems.iter().cloned().map(Caution::Target).collect();
    if let Some(bar) = bar {
        cautions.extend(bar.warnings.iter().cloned().map(Caution::Bar));
    }
    let calibration = request.today.map(|today| request.wrench.calibration_on(today));
    if let Some(state) = calibration.filter(|state| *state != Calibration::Current) {
        cautions.push(Caution::Calibration { state });
    }
    let manual = &request.spec.condition;
    let state = request.fastener.map_or(&Lubrication::NotKnown, |fastener| &fastener.lubrication);
    match (manual, state) {
        (Lubrication::NotKnown, _) | (_, Lubrication::NotKnown) => cautions.push(Caution::LubricationNotKnown),
        (manual, state) if manual == state => {}
        (manual, state) => cautions.push(Caution::Lubrication { manual: manual.clone(), found: state.clone() }),
    }
    if fit == Fit::NotKnown {
        cautions.push(Caution::SeatNotKnown);
    }
    let Some(fastener) = request.fastener else { return cautions };
    if let (Some(manual), Some(found)) = (request.spec.thread, fastener.thread)
        && manual != found
    {
        cautions.push(Caution::Thread { manual, found });
    }
    if fastener.hand == Hand::Left {
        cautions.push(Caution::LeftHand);
    }
    if fastener.lock.is_some() {
        cautions.push(Caution::LockKey);
    }
    cautions
}

/// Whether the final tightening may begin.
///
/// ```
/// use lugbook::fastening::{Gate, gate};
/// assert_eq!(gate(None, true), Gate::OpenedWithoutSpecification);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Gate {
    /// A specification is known.
    Open,
    /// None is known: look it up in the vehicle's manual.
    Shut,
    /// None is known and somebody opened the gate with a reason: the card prints *specification not known*.
    OpenedWithoutSpecification,
}

/// The gate before the final tightening: shut while no torque is known for this vehicle.
///
/// ```
/// use lugbook::fastening::{gate, Gate};
/// assert_eq!(gate(None, false), Gate::Shut);
/// ```
pub fn gate(spec: Option<&TorqueSpec>, opened_with_reason: bool) -> Gate {
    match spec.is_some_and(|spec| !spec.printed.is_empty()) {
        true => Gate::Open,
        false if opened_with_reason => Gate::OpenedWithoutSpecification,
        false => Gate::Shut,
    }
}
