//! What the planner answers: plans, refusals, and the typed reasons for both.

use serde::Serialize;

use crate::calendar::Age;
use crate::source::Source;
use crate::vehicle::{Place, Side};
use crate::wear::Interval;

use super::pattern::{DriveMove, Pattern};

/// The answer to a [`super::Request`].
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Front, tires);
/// let answer = plan(&request)?;
/// assert!(answer.proved && answer.gap_mm == 0.0);
/// assert_eq!(answer.plans.last().unwrap().pattern.code(), "leave-as-is");
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// Plans, best first; the last one is always to leave as is.
    pub plans: Vec<Plan>,
    /// The named patterns that this vehicle could have and must not, with why.
    pub refused: Vec<Refused>,
    /// What would have to be known first, most important first.
    pub look_next: Vec<LookNext>,
    /// Statements about the whole answer.
    pub notes: Vec<Note>,
    /// How many moves of all assemblies were weighed for this visit.
    pub searched: u64,
    /// Nothing better exists, within the order of preference.
    pub proved: bool,
    /// How far, in mm of final spread, an unseen plan could at most be better; 0 when proved.
    pub gap_mm: f64,
    /// The smallest spread of final depths that was found, when wear rates are known.
    pub least_spread_mm: Option<f64>,
    /// Two spreads this close together are not told apart.
    pub band_mm: Option<f64>,
}

/// One way to go on from this visit.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Rear, tires);
/// let plan = &plan(&request)?.plans[0];
/// assert_eq!((plan.pattern.code(), plan.moves.len()), ("rearward-cross", 4));
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// The name of this visit's moves.
    pub pattern: Pattern,
    /// This visit's moves, from and to, only of what moves, in the layout's order.
    pub moves: Vec<(Place, Place)>,
    /// The moves of every visit, this one first; later ones are a forecast, to be
    /// planned again with the readings of the day.
    pub visits: Vec<Vec<(Place, Place)>>,
    /// Tires that must be turned round on their rims for this visit's moves.
    pub remounts: Vec<Place>,
    /// What each tire will have left, when wear rates and distances are known.
    pub forecast: Vec<Forecast>,
    /// The difference between the deepest and the shallowest at the end of the
    /// horizon, summed over the sets of tires that may change places.
    pub spread_mm: Option<f64>,
    /// Why this plan, and what speaks against it.
    pub why: Vec<Reason>,
}

/// What one tire will have left: shallowest groove, in mm.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// for tire in &mut request.tires {
///     tire.depths = vec!["8 mm".parse().unwrap()];
///     tire.rate = Some(lugbook::rotation::Rate { mm_per_1000_km: 0.1, half_width: 0.0 });
/// }
/// request.interval = Some("10000 km".parse().unwrap());
/// let forecast = &plan(&request)?.plans[0].forecast[0];
/// assert!((forecast.next_visit_mm.mid - 7.0).abs() < 1e-9 && !forecast.below);
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Forecast {
    /// The tire, by where it is now.
    pub tire: Place,
    /// Where this visit puts it.
    pub to: Place,
    /// At the next visit.
    pub next_visit_mm: Interval,
    /// At the end of the horizon.
    pub horizon_mm: Interval,
    /// The limit that counts where this visit puts it.
    pub limit_mm: f64,
    /// The best estimate falls below that limit before the next visit.
    pub below: bool,
}

/// A named pattern that is not allowed.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// for tire in &mut request.tires {
///     tire.directional = Some(true);
/// }
/// let refused = &plan(&request)?.refused[0];
/// assert!(refused.because.iter().any(|because| because.force.refuses()));
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Refused {
    /// The pattern.
    pub pattern: Pattern,
    /// Its moves.
    pub moves: Vec<(Place, Place)>,
    /// What speaks against it: what refuses first, then advice.
    pub because: Vec<Because>,
}

/// One constraint's word on one move.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// for tire in &mut request.tires {
///     tire.directional = Some(true);
/// }
/// let because = plan(&request)?.refused[0].because[0].clone();
/// assert_eq!(because.constraint.code(), "direction");
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Because {
    /// The constraint.
    pub constraint: Name,
    /// How strongly it speaks.
    pub force: Force,
    /// What it saw.
    pub reason: Why,
    /// Where the rule comes from.
    pub source: Source,
    /// The tire, by where it is now.
    pub tire: Place,
    /// Where it would go.
    pub to: Place,
    /// What would lift it.
    pub lifted_by: Lift,
}

/// The constraints.
///
/// ```
/// use lugbook::rotation::Name;
/// assert_eq!(Name::ALL.map(Name::code)[0], "direction");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Name {
    /// A rotation arrow holds the tire to its side.
    Direction,
    /// Studs keep their side.
    Studs,
    /// The axle takes another size.
    Size,
    /// The wheel's offset is another than the axle's.
    Offset,
    /// The wheel would touch the brakes.
    BrakeClearance,
    /// The nuts don't fit the wheel's seats.
    Seat,
    /// A temporary spare takes no part.
    TemporarySpare,
    /// What may not run on a steer axle.
    SteerAxle,
    /// The two tires of a dual pair must match.
    DualMatch,
    /// The tire carries less than the axle needs.
    Load,
    /// The tire's speed symbol is too low.
    Speed,
    /// The tire is old.
    Age,
}

impl Name {
    /// All constraints, in the order in which they are told.
    pub const ALL: [Self; 12] = [
        Self::Direction,
        Self::Studs,
        Self::Size,
        Self::Offset,
        Self::BrakeClearance,
        Self::Seat,
        Self::TemporarySpare,
        Self::SteerAxle,
        Self::DualMatch,
        Self::Load,
        Self::Speed,
        Self::Age,
    ];

    /// The code in data; never translated.
    ///
    /// ```
    /// use lugbook::rotation::Name;
    /// assert_eq!(Name::DualMatch.code(), "dual-match");
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::Direction => "direction",
            Self::Studs => "studs",
            Self::Size => "size",
            Self::Offset => "offset",
            Self::BrakeClearance => "brake-clearance",
            Self::Seat => "seat",
            Self::TemporarySpare => "temporary-spare",
            Self::SteerAxle => "steer-axle",
            Self::DualMatch => "dual-match",
            Self::Load => "load",
            Self::Speed => "speed",
            Self::Age => "age",
        }
    }
}

/// How strongly a constraint speaks. Only the first two refuse.
///
/// ```
/// use lugbook::rotation::Force;
/// assert!(Force::Physical.refuses() && Force::Rule.refuses() && !Force::Advice.refuses());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Force {
    /// It can't be done safely with these parts.
    Physical,
    /// A rule whose text, or a manual, was read forbids it.
    Rule,
    /// It warns.
    Advice,
}

impl Force {
    /// Whether it refuses.
    ///
    /// ```
    /// use lugbook::rotation::Force;
    /// assert!(!Force::Advice.refuses());
    /// ```
    pub fn refuses(self) -> bool {
        self != Self::Advice
    }

    /// The code in data; never translated.
    ///
    /// ```
    /// use lugbook::rotation::Force;
    /// assert_eq!(Force::Physical.code(), "physical");
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::Physical => "physical",
            Self::Rule => "rule",
            Self::Advice => "advice",
        }
    }
}

/// What a constraint saw.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// for tire in &mut request.tires {
///     tire.directional = Some(true);
/// }
/// use lugbook::rotation::Why;
/// let because = plan(&request)?.refused[0].because[0].clone();
/// assert!(matches!(because.reason, Why::AgainstArrow { .. }));
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "saw")]
pub enum Why {
    /// The arrow would point backward.
    AgainstArrow {
        /// The side the tire is made for.
        made_for: Side,
    },
    /// The arrow would point backward, and inside and outside can't be exchanged either.
    DirectionalAndAsymmetric {
        /// The side the tire is made for.
        made_for: Side,
    },
    /// A directional spare whose side nobody told.
    ArrowNotSeen,
    /// Studs would run the other way round.
    StudsChangeSide,
    /// The axle takes another size.
    SizeDiffers {
        /// The tire's.
        tire: String,
        /// The axle's.
        axle: String,
    },
    /// The wheel's offset is another than the axle's.
    OffsetDiffers {
        /// The wheel's, in mm.
        wheel_mm: f64,
        /// The axle's, in mm.
        axle_mm: f64,
    },
    /// The wheel is too small inside for the brakes.
    WheelTouchesBrake,
    /// The nuts or bolts at hand don't fit the wheel's seats.
    SeatDoesNotFit,
    /// The tire is for an emergency only.
    ForEmergencyOnly,
    /// Shallower than a steer axle may have.
    TooShallowToSteer {
        /// The tire's, in mm.
        depth_mm: f64,
        /// The limit, in mm.
        limit_mm: f64,
    },
    /// A retread on the front wheels of a bus.
    RetreadOnSteer,
    /// A regrooved tire on the front wheels.
    RegroovedOnSteer,
    /// The diameters of the pair are too far apart.
    PairApart {
        /// The difference of diameters, in mm.
        difference_mm: f64,
        /// What is allowed, in mm.
        allowed_mm: f64,
    },
    /// The larger tire of a pair would be inside.
    LargerInside {
        /// The difference of diameters, in mm.
        difference_mm: f64,
    },
    /// The tire carries too little.
    CarriesTooLittle {
        /// What it carries, in kg.
        carries_kg: f64,
        /// What the position needs, in kg.
        needs_kg: f64,
    },
    /// The tire would carry too little if a passenger size on this class is counted at 1/1.1.
    PassengerSizeOnTruck {
        /// What it carries so counted, in kg.
        carries_kg: f64,
        /// What the position needs, in kg.
        needs_kg: f64,
    },
    /// The axle's placard pressure is below the pressure the tire's load is stated at.
    PlacardBelowReference {
        /// The placard, in kPa.
        placard_kpa: f64,
        /// The reference, in kPa.
        reference_kpa: f64,
    },
    /// A speed symbol below what the vehicle needs.
    SlowerThanNeeded {
        /// The tire's, in km/h.
        tire_kmh: f64,
        /// The vehicle's, in km/h.
        needed_kmh: f64,
        /// On a winter tire, where that is usual with a reminder to the driver.
        winter: bool,
    },
    /// Older than tires are used without a second thought.
    Old {
        /// Its age.
        age: Age,
    },
}

/// What would lift a constraint.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// for tire in &mut request.tires {
///     tire.directional = Some(true);
/// }
/// use lugbook::rotation::Lift;
/// let because = plan(&request)?.refused[0].because[0].clone();
/// assert_eq!(because.lifted_by, Lift::RemountOnRim);
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lift {
    /// Turning the tire round on its rim.
    RemountOnRim,
    /// Tires without an arrow, or a tire made for that side.
    AnotherTire,
    /// Keeping the tire on its side.
    KeepSide,
    /// Looking at the arrow on the sidewall.
    LookAtArrow,
    /// The same size on all axles, where the manual allows it.
    SameSizeAllRound,
    /// Wheels that are alike on all axles.
    LikeWheels,
    /// Nuts or bolts that fit that wheel.
    FittingNuts,
    /// A full-size spare like the other tires.
    FullSizeSpare,
    /// A deeper tire.
    DeeperTire,
    /// A new tire, neither retreaded nor regrooved.
    NewTire,
    /// A partner nearer in diameter.
    CloserPartner,
    /// Exchanging the two tires of the pair.
    SwapPair,
    /// A tire with a higher load index.
    StrongerTire,
    /// The vehicle maker's word on load and pressure.
    MakersWord,
    /// Keeping below the tire's speed.
    DriveSlower,
    /// An inspection by someone licensed to, or a newer tire.
    InspectOrReplace,
}

/// Something to look at before more can be said.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Unknown, tires);
/// use lugbook::rotation::LookNext;
/// assert_eq!(plan(&request)?.look_next[0], LookNext::WhichAxleDrives);
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum LookNext {
    /// Which axles drive: shaft at the hub, does it turn with the wheel, what does the opposite wheel do.
    WhichAxleDrives,
    /// The depths of all tires.
    Depths,
    /// Wear rates: a second reading with its odometer.
    WearRates,
    /// The distance between visits.
    Interval,
    /// The sizes on the sidewalls.
    Sizes,
    /// Whether there are rotation arrows.
    Arrows,
}

/// Statements about the whole answer.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let mut request = Request::new(layout, Class::Car, Drive::Front, tires);
/// for tire in &mut request.tires {
///     tire.directional = Some(true);
///     let front = tire.at.position().is_some_and(|position| position.axle == 1);
///     tire.size = Some(if front { "245/35R19" } else { "275/35R19" }.to_owned());
/// }
/// use lugbook::rotation::{Note, Pattern};
/// let notes = plan(&request)?.notes;
/// assert_eq!(notes, [Note::OnlyWithRemounting { allows: vec![Pattern::SideToSide] }]);
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "note")]
pub enum Note {
    /// Nothing may move.
    NothingMayMove,
    /// Nothing may move unless tires are remounted.
    OnlyWithRemounting {
        /// The patterns remounting would allow.
        allows: Vec<Pattern>,
    },
    /// Moves would be allowed, but without wear rates none has a reason.
    NoPatternFits,
    /// Leaving as is is as good as anything, within the uncertainty.
    LeavingIsAsGood,
    /// A tire that is below its limit wherever it goes.
    BelowLimitAnywhere {
        /// The tire, by where it is now.
        tire: Place,
    },
    /// The depths of an all-wheel-drive set lie apart: a finding on the set.
    SetApart {
        /// Deepest less shallowest, in mm, by the mean of the grooves.
        spread_mm: f64,
    },
    /// Some sources say X for permanent all-wheel drive.
    SomeSayX {
        /// Who says so.
        source: Source,
    },
    /// What speaks against a tire where it is now.
    Standing {
        /// What was seen.
        because: Because,
    },
}

/// Why a plan.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Front, tires);
/// use lugbook::rotation::{DefaultBy, Reason};
/// assert!(plan(&request)?.plans[0].why.contains(&Reason::TradesPattern { by: DefaultBy::FrontDrive }));
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "reason")]
pub enum Reason {
    /// The vehicle's manual gives this pattern, and nothing forecast is clearly better.
    MakersPattern,
    /// The trade's pattern for this drive or these tires.
    TradesPattern {
        /// What decides it.
        by: DefaultBy,
    },
    /// Why the driving wheels move to the free axle.
    DriveWheels {
        /// In which direction.
        goes: DriveMove,
    },
    /// No wear history: forecasts can't be told apart.
    NoHistory,
    /// Forecasts differ by less than their uncertainty.
    WithinUncertainty {
        /// How much better the best one looked, in mm of spread.
        better_mm: f64,
        /// What is not told apart, in mm.
        band_mm: f64,
    },
    /// Keeps so many tires above their limits until the next visit that would not be so as they stand.
    KeepsAboveLimit {
        /// How many.
        tires: u32,
    },
    /// So many tires fall below their limits before the next visit all the same.
    BelowLimit {
        /// How many.
        tires: u32,
    },
    /// After a part replacement the deepest pair goes to the rear.
    DeepestAtRear,
    /// Brings the tires closer together at the end than leaving them.
    ClosesSpread {
        /// Spread if left, in mm.
        left_mm: f64,
        /// Spread with the plan, in mm.
        plan_mm: f64,
    },
    /// Ends further apart than leaving them.
    WidensSpread {
        /// Spread if left, in mm.
        left_mm: f64,
        /// Spread with the plan, in mm.
        plan_mm: f64,
    },
    /// Of equal plans, the one that moves fewest assemblies.
    FewestMoved {
        /// How many move.
        moved: u32,
    },
    /// Tires must be turned round on their rims.
    Remounts {
        /// How many.
        tires: u32,
    },
    /// Mean depths of the axles after the moves, for a vehicle that drives both.
    AxleMeans {
        /// Front, in mm.
        front_mm: f64,
        /// Rear, in mm.
        rear_mm: f64,
    },
    /// Advice that the plan goes against, or that holds in spite of it.
    Advice {
        /// What was seen.
        because: Because,
    },
    /// A later visit of the forecast pairs duals that lie too far apart.
    LaterPairApart {
        /// Which visit, this one being 1.
        visit: u32,
    },
}

/// What decides the trade's default pattern. Common practice, no source.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::All, tires);
/// use lugbook::rotation::{DefaultBy, Reason};
/// assert!(plan(&request)?.plans[0].why.contains(&Reason::TradesPattern { by: DefaultBy::AllDrive }));
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum DefaultBy {
    /// Front drive: forward cross.
    FrontDrive,
    /// Rear drive: rearward cross.
    RearDrive,
    /// All-wheel drive: rearward cross.
    AllDrive,
    /// Part-time four-wheel drive: rearward cross.
    PartTimeDrive,
    /// Nothing drives: front to rear keeps each tire on its side.
    NothingDrives,
    /// Rotation arrows: front to rear.
    Arrows,
    /// Studs: front to rear keeps their side.
    Studs,
    /// Unequal sizes: side to side.
    UnequalSizes,
}
