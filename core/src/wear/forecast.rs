//! Depths and distances ahead, with intervals.

use serde::Serialize;

/// A value with its interval.
///
/// ```
/// use lugbook::wear::Interval;
/// let depth = Interval { low: 5.8, mid: 6.0, high: 6.2 };
/// assert!(depth.low <= depth.mid && depth.mid <= depth.high);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Interval {
    /// Pessimistic.
    pub low: f64,
    /// Best estimate.
    pub mid: f64,
    /// Optimistic.
    pub high: f64,
}

/// A distance ahead; what can't be bounded by the readings is open.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let history = History { readings: vec![read("0 km", "8.0 mm"), read("15000 km", "6.5 mm")], moves: vec![] };
/// let answer = wear(&history, &Question::default())?;
/// let left = answer.tires[0].left_km.unwrap();
/// assert!(left.low < left.mid.unwrap());
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Left {
    /// As little as this, in km.
    pub low: f64,
    /// Best estimate, in km; open when no wear was seen.
    pub mid: Option<f64>,
    /// As much as this, in km; open when the readings leave it so.
    pub high: Option<f64>,
}

impl Interval {
    /// A depth in mm and its half width, never below nothing.
    ///
    /// ```
    /// use lugbook::wear::Interval;
    /// assert_eq!(Interval::of_depth(0.2, 0.5), Interval { low: 0.0, mid: 0.2, high: 0.7 });
    /// ```
    pub fn of_depth(mid: f64, half: f64) -> Self {
        Self { low: (mid - half).max(0.0), mid: mid.max(0.0), high: (mid + half).max(0.0) }
    }
}

/// One stretch of a plan: how fast a place wears, and how far it goes there.
///
/// ```
/// use lugbook::wear::{Stretch, simulate};
/// let front = Stretch { rate: 0.2, half_width: 0.0, thousand_km: 10.0 };
/// let rear = Stretch { rate: 0.05, ..front };
/// assert_eq!(simulate(8.0, 0.0, &[front, rear])[1].mid, 5.5);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// In mm per 1,000 km.
    pub rate: f64,
    /// Half the width of the rate's interval.
    pub half_width: f64,
    /// In thousands of km.
    pub thousand_km: f64,
}

/// The depth after each stretch, in mm. The rates' doubts add up, as one position's
/// rate is one number throughout; the reading's own doubt comes in once.
///
/// ```
/// use lugbook::wear::{simulate, Stretch};
/// let front = Stretch { rate: 0.1, half_width: 0.01, thousand_km: 10.0 };
/// let ends = simulate(8.0, 0.3, &[front, front]);
/// assert!((ends[1].mid - 6.0).abs() < 1e-12);
/// assert!((ends[1].low - (6.0 - (0.3f64.powi(2) + 0.2f64.powi(2)).sqrt())).abs() < 1e-12);
/// ```
pub fn simulate(depth_mm: f64, half_width_mm: f64, stretches: &[Stretch]) -> Vec<Interval> {
    let (mut depth, mut doubt) = (depth_mm, 0.0);
    stretches
        .iter()
        .map(|stretch| {
            depth -= stretch.rate * stretch.thousand_km;
            doubt += stretch.half_width * stretch.thousand_km;
            Interval::of_depth(depth, half_width_mm.hypot(doubt))
        })
        .collect()
}

/// A tire's forecast from its last reading on, at the place where it stands.
///
/// ```
/// use lugbook::wear::{History, Question, Reading, wear};
/// # let read = |km: &str, depth: &str| Reading {
/// #     tire: "a".to_owned(),
/// #     odometer: km.parse().unwrap(),
/// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
/// #     grooves: vec![depth.parse().unwrap()],
/// #     lowest: None,
/// #     practice: false,
/// # };
/// let readings = vec![read("0 km", "8.0 mm"), read("10000 km", "7.0 mm"), read("20000 km", "6.0 mm")];
/// let answer = wear(&History { readings, moves: vec![] }, &Question::default())?;
/// let ahead = answer.tires[0].ahead.unwrap();
/// assert!((ahead.depth_after(10_000.0).mid - 5.0).abs() < 0.1);
/// # Ok::<(), lugbook::wear::Mistake>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ahead {
    pub(super) line: Line,
    pub(super) reach: f64,
}

impl Ahead {
    /// Its shallowest groove after so many km from its last reading, in mm, with a
    /// 95 % interval: the band that [`Left`] is where it meets the limit.
    ///
    /// ```
    /// use lugbook::wear::{History, Question, Reading, wear};
    /// # let read = |km: &str, depth: &str| Reading {
    /// #     tire: "a".to_owned(),
    /// #     odometer: km.parse().unwrap(),
    /// #     at: lugbook::vehicle::Place::parse("FL").unwrap(),
    /// #     grooves: vec![depth.parse().unwrap()],
    /// #     lowest: None,
    /// #     practice: false,
    /// # };
    /// let readings = vec![read("0 km", "8.0 mm"), read("10000 km", "7.0 mm"), read("20000 km", "6.0 mm")];
    /// let answer = wear(&History { readings, moves: vec![] }, &Question::default())?;
    /// let ahead = answer.tires[0].ahead.unwrap();
    /// let far = ahead.depth_after(30_000.0);
    /// assert!(far.low < far.mid && far.mid < far.high);
    /// # Ok::<(), lugbook::wear::Mistake>(())
    /// ```
    pub fn depth_after(&self, km: f64) -> Interval {
        self.line.after(km / 1000.0, self.reach)
    }
}

/// A line that falls from a depth, with what is not known of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Line {
    pub depth_mm: f64,
    pub rate: f64,
    pub depth_variance: f64,
    pub rate_variance: f64,
    /// Covariance of depth and rate.
    pub covariance: f64,
}

impl Line {
    /// The depth in mm after so many thousands of km, with the band of `reach` standard deviations.
    pub(super) fn after(&self, thousand_km: f64, reach: f64) -> Interval {
        let variance =
            self.depth_variance - 2.0 * self.covariance * thousand_km + self.rate_variance * thousand_km * thousand_km;
        Interval::of_depth(self.depth_mm - self.rate * thousand_km, reach * variance.max(0.0).sqrt())
    }

    /// The distance until the limit: where the line meets it, and where the edges
    /// of its band of `reach` standard deviations do (Fieller's interval).
    pub(super) fn until(&self, limit_mm: f64, reach: f64) -> Left {
        let above = self.depth_mm - limit_mm;
        if above <= 0.0 {
            return Left { low: 0.0, mid: Some(0.0), high: Some(0.0) };
        }
        let thousand = 1000.0;
        let mid = (self.rate > 0.0).then(|| above / self.rate * thousand);
        // (above - rate x)² = reach² (depth_variance - 2 covariance x + rate_variance x²)
        let square = reach * reach;
        let a = self.rate * self.rate - square * self.rate_variance;
        let b = -2.0 * (above * self.rate - square * self.covariance);
        let c = above * above - square * self.depth_variance;
        if c <= 0.0 {
            // The band touches the limit already.
            let high = self.upper_root(a, b, c).map(|x| x * thousand);
            return Left { low: 0.0, mid, high };
        }
        let disc = b * b - 4.0 * a * c;
        if a.abs() < 1e-15 {
            let low = if b < 0.0 { -c / b * thousand } else { f64::INFINITY };
            return Left { low, mid, high: None };
        }
        if disc < 0.0 {
            return Left { low: f64::INFINITY, mid, high: None };
        }
        let (p, q) = ((-b - disc.sqrt()) / (2.0 * a), (-b + disc.sqrt()) / (2.0 * a));
        let (first, second) = (p.min(q), p.max(q));
        if a > 0.0 {
            // Both roots lie ahead when the rate is surely positive.
            let high = (self.rate > 0.0).then_some(second * thousand);
            let low = if self.rate > 0.0 { first * thousand } else { f64::INFINITY };
            return Left { low, mid, high };
        }
        let ahead = if first > 0.0 { first } else { second };
        Left { low: if ahead > 0.0 { ahead * thousand } else { f64::INFINITY }, mid, high: None }
    }

    fn upper_root(&self, a: f64, b: f64, c: f64) -> Option<f64> {
        let disc = b * b - 4.0 * a * c;
        (a > 0.0 && disc >= 0.0 && self.rate > 0.0).then(|| (-b + disc.sqrt()) / (2.0 * a)).filter(|x| *x > 0.0)
    }
}
