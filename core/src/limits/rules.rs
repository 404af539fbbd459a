use serde::{Deserialize, Serialize};

use super::table::{Region, Season};
use super::tread::{Circumstances, Thresholds};
use crate::measure::{Depth, DepthUnit};
use crate::vehicle::{Class, Layout, Place};

/// Whose limits hold, for which season, and when to speak of a tire above them.
///
/// ```
/// use lugbook::limits::{Region, Rules, Season};
/// let rules = Rules::default();
/// assert_eq!((rules.region, rules.season), (Region::UsFederal, Season::Summer));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rules {
    /// The region.
    pub region: Region,
    /// The season before the next visit.
    pub season: Season,
    /// When a tire above its limit is to be watched.
    pub thresholds: Thresholds,
}

impl Default for Rules {
    /// The United States, no snow expected: a design choice.
    fn default() -> Self {
        Self { region: Region::UsFederal, season: Season::Summer, thresholds: Thresholds::default() }
    }
}

impl Rules {
    /// What a tire is judged for at a place of a vehicle.
    ///
    /// ```
    /// use lugbook::limits::Rules;
    /// use lugbook::vehicle::{Class, Layout, Place};
    /// let truck = Layout::two_axles(false);
    /// let at = |name| Rules::default().at(Class::Truck, &truck, Place::parse(name).unwrap());
    /// assert!(at("FL").steer && !at("RL").steer);
    /// ```
    pub fn at(self, class: Class, layout: &Layout, place: Place) -> Circumstances {
        let steer = place.position().is_some_and(|position| {
            let axle = usize::from(position.axle).checked_sub(1).and_then(|at| layout.axles.get(at));
            axle.is_some_and(|axle| axle.steer)
        });
        Circumstances { region: self.region, class, steer, season: self.season }
    }
}

/// What was chosen of the [`Rules`], for a book or for one job; the rest stays as it was.
///
/// ```
/// use lugbook::limits::{Chosen, Region, Season};
/// let book = Chosen { region: Some(Region::France), ..Chosen::default() };
/// let job = Chosen { season: Some(Season::Winter), watch: "3 mm".parse().ok(), ..Chosen::default() };
/// let rules = job.over(book).rules();
/// assert_eq!((rules.region, rules.season), (Region::France, Season::Winter));
/// assert_eq!((rules.thresholds.at_limit_mm, rules.thresholds.watch_mm), (0.79375, 3.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Chosen {
    /// Whose limits.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub region: Option<Region>,
    /// The season before the next visit.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub season: Option<Season>,
    /// Up to so much above the limit a tire is at the limit; as typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_limit: Option<Depth>,
    /// Up to so much above the limit a tire is to be watched; as typed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub watch: Option<Depth>,
}

impl Chosen {
    /// This choice, and the other's where this one says nothing.
    ///
    /// ```
    /// use lugbook::limits::{Chosen, Region};
    /// let book = Chosen { region: Some(Region::Eu), ..Chosen::default() };
    /// let job = Chosen { region: Some(Region::France), ..Chosen::default() };
    /// assert_eq!(job.over(book), job);
    /// assert_eq!(Chosen::default().over(book), book);
    /// ```
    #[must_use]
    pub fn over(self, other: Self) -> Self {
        Self {
            region: self.region.or(other.region),
            season: self.season.or(other.season),
            at_limit: self.at_limit.or(other.at_limit),
            watch: self.watch.or(other.watch),
        }
    }

    /// The same with the default wherever nothing was chosen: the United States, no snow,
    /// at limit up to 1/32 in above and watch up to 2/32 in.
    ///
    /// ```
    /// use lugbook::limits::Chosen;
    /// let held = Chosen::default().or_default();
    /// assert_eq!(held.watch.map(|depth| depth.to_string()).as_deref(), Some("2 1/32in"));
    /// ```
    #[must_use]
    pub fn or_default(self) -> Self {
        let rules = Rules::default();
        let steps = |steps| Depth::new(steps, DepthUnit::ThirtySecond).ok();
        self.over(Self {
            region: Some(rules.region),
            season: Some(rules.season),
            at_limit: steps(1.0),
            watch: steps(2.0),
        })
    }

    /// The rules that hold by this choice.
    ///
    /// ```
    /// use lugbook::limits::{Chosen, Rules};
    /// assert_eq!(Chosen::default().rules(), Rules::default());
    /// ```
    pub fn rules(self) -> Rules {
        let rules = Rules::default();
        let mm = |depth: Option<Depth>, usual: f64| depth.map_or(usual, |depth| depth.in_unit(DepthUnit::Millimetre));
        Rules {
            region: self.region.unwrap_or(rules.region),
            season: self.season.unwrap_or(rules.season),
            thresholds: Thresholds {
                at_limit_mm: mm(self.at_limit, rules.thresholds.at_limit_mm),
                watch_mm: mm(self.watch, rules.thresholds.watch_mm),
            },
        }
    }
}
