use serde::{Deserialize, Serialize, Serializer};

use crate::measure::{Depth, DepthUnit};
use crate::source::{Grade, Source};
use crate::vehicle::Class;

/// The place whose rules are asked for, as far as sources were read.
///
/// ```
/// use lugbook::limits::{Region, limits};
/// let carried = |region| limits().iter().filter(|limit| limit.regions.contains(&region)).count();
/// assert!(carried(Region::France) > 0);
/// assert_eq!(serde_json::to_string(&Region::UsFederal)?, "\"us-federal\"");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Region {
    /// The United States, vehicles not in commerce; state rules are not carried unless named.
    UsFederal,
    /// The United States, vehicles in interstate commerce.
    UsCommercial,
    /// Maryland.
    UsMaryland,
    /// Vehicles of the US Army.
    UsArmy,
    /// The European Union; what a member state adds is not carried unless named.
    Eu,
    /// France.
    France,
    /// The United Kingdom.
    Uk,
    /// Anywhere else: no rule was read.
    Elsewhere,
}

/// The season a tire is judged for.
///
/// ```
/// use lugbook::limits::{Season, limits};
/// // Only advice asks for a season; no rule that is carried does.
/// assert!(limits().iter().filter(|limit| limit.season == Some(Season::Winter)).all(|limit| !limit.refuses()));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Season {
    /// No snow or ice is expected before the next visit.
    #[default]
    Summer,
    /// Snow or ice is expected.
    Winter,
}

/// What a limit is.
///
/// ```
/// use lugbook::limits::{Force, limits};
/// // Wear bars are a rule for the tire's maker: they never refuse a driver.
/// assert!(limits().iter().filter(|limit| limit.force == Force::WearBar).all(|limit| !limit.refuses()));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Force {
    /// A minimum for driving.
    Minimum,
    /// The height of molded wear bars: a rule for the tire's maker, not for the driver.
    WearBar,
    /// Advice.
    Advice,
    /// The largest difference between two tires of one axle.
    Spread,
}

/// Where on the tire the rule measures.
///
/// ```
/// use lugbook::limits::{Measured, limits};
/// let limit = limits().iter().find(|limit| limit.source.title.contains("393.75(b)")).unwrap();
/// assert_eq!(limit.measured, Measured::MajorGroove);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measured {
    /// Any point of a major tread groove, not at tie bars, humps or fillets. A major groove
    /// is one between two adjacent ribs or lugs that contains a wear bar (49 CFR 393.5, read).
    MajorGroove,
    /// Two adjacent major grooves at three places around the tire.
    TwoMajorGroovesThreePlaces,
    /// The main grooves.
    MainGrooves,
    /// Not more than one of four points below.
    FourPoints,
    /// The central three quarters of the tread, all around.
    CentralThreeQuarters,
    /// At the wear bars.
    WearBars,
    /// The lowest groove.
    LowestGroove,
}

/// One limit of tread depth.
///
/// ```
/// use lugbook::limits::limits;
/// use lugbook::vehicle::Class;
/// let limit = limits().iter().find(|limit| limit.source.title.contains("393.75(b)")).unwrap();
/// assert_eq!((limit.depth().unwrap().to_string(), limit.steer), ("4 1/32in".to_owned(), Some(true)));
/// assert!(!limit.classes.contains(&Class::Car));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    value: f64,
    unit: DepthUnit,
    /// What it is.
    pub force: Force,
    /// Where the rule measures.
    pub measured: Measured,
    /// `Some(true)`: on steered axles only; `Some(false)`: on the others only.
    pub steer: Option<bool>,
    /// Only when judged for this season.
    pub season: Option<Season>,
    /// Where it holds.
    pub regions: &'static [Region],
    /// For which vehicles.
    pub classes: &'static [Class],
    /// Where it comes from and how far to trust it.
    pub source: Source,
}

impl Limit {
    /// The depth as the rule writes it. `None` never happens for a limit of [`limits`].
    ///
    /// ```
    /// use lugbook::limits::limits;
    /// let limit = limits().iter().find(|limit| limit.source.title.contains("89/459/EEC")).unwrap();
    /// assert_eq!(limit.depth().unwrap().to_string(), "1.6 mm", "as the rule writes it");
    /// ```
    pub fn depth(&self) -> Option<Depth> {
        Depth::new(self.value, self.unit).ok()
    }

    /// The depth in millimetres.
    ///
    /// ```
    /// use lugbook::limits::limits;
    /// let limit = limits().iter().find(|limit| limit.source.title.contains("570.9")).unwrap();
    /// assert_eq!(limit.mm(), 1.5875, "2/32 in, not 1.6 mm");
    /// ```
    pub fn mm(&self) -> f64 {
        match self.unit {
            DepthUnit::Millimetre => self.value,
            DepthUnit::ThirtySecond => self.value * crate::measure::THIRTY_SECOND_MM,
        }
    }

    /// Whether a failure refuses, or only warns: a minimum or a spread whose rule was read.
    ///
    /// ```
    /// use lugbook::limits::limits;
    /// let refuses = |title: &str| limits().iter().any(|limit| limit.source.title.contains(title) && limit.refuses());
    /// assert!(refuses("JORFARTI000038987859"), "its text was read");
    /// assert!(!refuses("570.9") && !refuses("89/459/EEC"), "from memory; a secondary source");
    /// ```
    pub fn refuses(&self) -> bool {
        matches!(self.force, Force::Minimum | Force::Spread) && self.source.grade.may_refuse()
    }
}

impl Serialize for Limit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Shown {
            depth: Option<Depth>,
            force: Force,
            measured: Measured,
            refuses: bool,
            source: Source,
        }
        Shown {
            depth: self.depth(),
            force: self.force,
            measured: self.measured,
            refuses: self.refuses(),
            source: self.source,
        }
        .serialize(serializer)
    }
}

use Class::{Bus, Car, LightTrailer, LightTruck, Motorcycle, Trailer, Truck};
use DepthUnit::{Millimetre, ThirtySecond};
use Region::{Elsewhere, Eu, France, Uk, UsArmy, UsCommercial, UsFederal, UsMaryland};

const US: &[Region] = &[UsFederal, UsCommercial, UsMaryland];
const METRIC: &[Region] = &[Eu, France, Uk, Elsewhere];
/// Vehicles up to 10,000 lb gross; the European M1, N1, O1, O2 are told by the same classes.
const LIGHT: &[Class] = &[Car, LightTruck, LightTrailer];
const HEAVY: &[Class] = &[Truck, Bus, Trailer];
const FOUR_WHEELED: &[Class] = &[Car, LightTruck, LightTrailer, Truck, Bus, Trailer];

const fn limit(
    value: f64,
    unit: DepthUnit,
    (force, measured): (Force, Measured),
    steer: Option<bool>,
    regions: &'static [Region],
    classes: &'static [Class],
    (grade, title): (Grade, &'static str),
) -> Limit {
    Limit { value, unit, force, measured, steer, season: None, regions, classes, source: Source::read(grade, title) }
}

const fn winter(value: f64, unit: DepthUnit, regions: &'static [Region]) -> Limit {
    let read = (Grade::Secondary, "winter tread advice");
    let mut limit = limit(value, unit, (Force::Advice, Measured::LowestGroove), None, regions, FOUR_WHEELED, read);
    limit.season = Some(Season::Winter);
    limit
}

const MINIMUM_MAJOR: (Force, Measured) = (Force::Minimum, Measured::MajorGroove);
const MINIMUM_MAIN: (Force, Measured) = (Force::Minimum, Measured::MainGrooves);
const BAR: (Force, Measured) = (Force::WearBar, Measured::WearBars);
const ORDER_TEXT: &str = "France, order text JORFARTI000038987859";
const ARMY: &str = "Army TM 9-2610-200-14 2-24";

/// Steer-axle rows name no car: cars have no steer-axle rule anywhere in the sources.
///
/// The Maryland test for heavy vehicles was read, but which classes its chapter
/// covers was not: that it holds for these is from memory, so it only warns.
const LIMITS: &[Limit] = &[
    limit(4.0, ThirtySecond, MINIMUM_MAJOR, Some(true), US, &[Truck, Bus], (Grade::Secondary, "49 CFR 393.75(b)")),
    limit(
        4.0,
        ThirtySecond,
        MINIMUM_MAJOR,
        Some(true),
        &[UsCommercial],
        &[LightTruck],
        (Grade::Secondary, "49 CFR 393.75(b)"),
    ),
    limit(2.0, ThirtySecond, MINIMUM_MAJOR, Some(false), US, HEAVY, (Grade::Secondary, "49 CFR 393.75(c)")),
    limit(
        2.0,
        ThirtySecond,
        MINIMUM_MAJOR,
        Some(false),
        &[UsCommercial],
        &[LightTruck, LightTrailer],
        (Grade::Secondary, "49 CFR 393.75(c)"),
    ),
    limit(
        2.0,
        ThirtySecond,
        (Force::Minimum, Measured::TwoMajorGroovesThreePlaces),
        None,
        US,
        LIGHT,
        (Grade::Memory, "49 CFR 570.9(a)"),
    ),
    limit(2.0, ThirtySecond, BAR, None, US, FOUR_WHEELED, (Grade::Rule, "FMVSS 109/119 wear bars")),
    limit(2.0, ThirtySecond, BAR, None, US, &[Car, LightTruck], (Grade::Memory, "FMVSS 139 wear bars")),
    limit(1.0, ThirtySecond, BAR, None, US, &[Motorcycle], (Grade::Rule, "FMVSS 119 S6.4 motorcycle")),
    limit(1.6, Millimetre, MINIMUM_MAIN, None, &[Eu], LIGHT, (Grade::Secondary, "EU Directive 89/459/EEC")),
    limit(1.6, Millimetre, MINIMUM_MAIN, None, &[France], LIGHT, (Grade::Rule, ORDER_TEXT)),
    limit(
        1.0,
        Millimetre,
        (Force::Minimum, Measured::FourPoints),
        None,
        &[France],
        &[Truck, Bus, Trailer, Motorcycle],
        (Grade::Rule, ORDER_TEXT),
    ),
    limit(
        5.0,
        Millimetre,
        (Force::Spread, Measured::MainGrooves),
        None,
        &[France],
        FOUR_WHEELED,
        (Grade::Rule, ORDER_TEXT),
    ),
    limit(
        1.6,
        Millimetre,
        (Force::Minimum, Measured::CentralThreeQuarters),
        None,
        &[Uk],
        &[Car],
        (Grade::Secondary, "UK practice"),
    ),
    winter(5.0, ThirtySecond, US),
    winter(4.0, Millimetre, METRIC),
    limit(4.0, ThirtySecond, MINIMUM_MAJOR, Some(true), &[UsArmy], &[LightTruck, Truck, Bus], (Grade::Rule, ARMY)),
    limit(2.0, ThirtySecond, MINIMUM_MAJOR, Some(false), &[UsArmy], FOUR_WHEELED, (Grade::Rule, ARMY)),
    limit(
        1.0,
        ThirtySecond,
        (Force::Minimum, Measured::LowestGroove),
        None,
        &[UsMaryland],
        &[Motorcycle],
        (Grade::Rule, "Maryland COMAR 11.14.03.05"),
    ),
    limit(
        2.0,
        ThirtySecond,
        (Force::Minimum, Measured::TwoMajorGroovesThreePlaces),
        None,
        &[UsMaryland],
        HEAVY,
        (Grade::Memory, "Maryland COMAR 11.22.04.06"),
    ),
];

/// All limits of tread depth that are carried.
///
/// ```
/// use lugbook::limits::{limits, Region};
/// use lugbook::vehicle::Class;
/// let mut steer = limits().iter().filter(|limit| limit.steer == Some(true));
/// assert!(steer.all(|limit| !limit.classes.contains(&Class::Car)));
/// ```
pub fn limits() -> &'static [Limit] {
    LIMITS
}
