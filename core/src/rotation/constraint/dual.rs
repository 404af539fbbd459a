use crate::source::{Grade, Source};

use super::{Constraint, Force, Lift, Name, TireFacts, Why, Word};

/// The two tires of a dual pair are near in diameter, the larger one outside.
///
/// ```
/// use lugbook::rotation::TireFacts;
/// use lugbook::rotation::constraint::{Constraint, DualMatch};
/// use lugbook::vehicle::Place;
/// let mut outer = TireFacts::at(Place::parse("2LO").unwrap());
/// outer.size = Some("295/75R22.5".to_owned());
/// outer.overall_diameter_mm = Some(1014.0);
/// outer.depths = vec!["14 mm".parse()?];
/// let mut inner = outer.clone();
/// assert_eq!(DualMatch.of_pair(&outer, &inner), None);
/// inner.depths = vec!["5 mm".parse()?];
/// assert!(DualMatch.of_pair(&outer, &inner).is_some_and(|word| word.force.refuses()));
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
pub struct DualMatch;

/// One row of the matching table.
///
/// ```
/// use lugbook::rotation::constraint::DUAL_MATCH;
/// assert!(DUAL_MATCH.iter().all(|row| row.difference_in > 0.0 && row.below_in > 0.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DualRow {
    /// Outside diameters up to this, in inches; the last row has no end.
    pub below_in: f64,
    /// The largest difference of diameters, in inches.
    pub difference_in: f64,
    /// The largest difference of circumferences, in inches.
    pub circumference_in: f64,
}

/// The matching table: TM 9-2610-200-14, table 2-1 (grade P).
pub const DUAL_MATCH: [DualRow; 4] = [
    DualRow { below_in: 30.0, difference_in: 0.25, circumference_in: 0.75 },
    DualRow { below_in: 40.0, difference_in: 0.375, circumference_in: 1.125 },
    DualRow { below_in: 50.0, difference_in: 0.5, circumference_in: 1.5 },
    DualRow { below_in: f64::INFINITY, difference_in: 0.75, circumference_in: 1.75 },
];

const TABLE: Source = Source::read(Grade::Rule, "TM 9-2610-200-14, table 2-1: dual matching");
const MM_PER_IN: f64 = 25.4;

impl DualMatch {
    /// The largest difference of diameters in mm for a pair of this outside diameter.
    ///
    /// ```
    /// use lugbook::rotation::constraint::DualMatch;
    /// // Larger tires may differ more.
    /// assert!(DualMatch::allowed_mm(1100.0) >= DualMatch::allowed_mm(700.0));
    /// ```
    pub fn allowed_mm(diameter_mm: f64) -> f64 {
        let inches = diameter_mm / MM_PER_IN;
        let row = DUAL_MATCH.iter().find(|row| inches < row.below_in);
        row.map_or(0.0, |row| row.difference_in * MM_PER_IN)
    }

    /// What is wrong with a pair whose diameters in mm were measured; `None` when nothing is.
    ///
    /// ```
    /// use lugbook::rotation::Why;
    /// use lugbook::rotation::constraint::DualMatch;
    /// assert_eq!(DualMatch::of_diameters(1014.0, 1010.0), None);
    /// // 40 to 50 in: half an inch at most.
    /// let word = DualMatch::of_diameters(1030.0, 1016.5).unwrap();
    /// assert!(word.force.refuses() && matches!(word.reason, Why::PairApart { .. }));
    /// ```
    pub fn of_diameters(outer_mm: f64, inner_mm: f64) -> Option<Word> {
        Self::word(outer_mm - inner_mm, Some(outer_mm.max(inner_mm)))
    }

    fn word(larger: f64, diameter: Option<f64>) -> Option<Word> {
        if let Some(diameter) = diameter {
            let allowed_mm = Self::allowed_mm(diameter);
            if larger.abs() > allowed_mm {
                return Some(Word {
                    force: Force::Rule,
                    reason: Why::PairApart { difference_mm: larger.abs(), allowed_mm },
                    source: TABLE,
                    lifted_by: Lift::CloserPartner,
                });
            }
        }
        // A gauge step of depth is two of diameter: less is not told apart.
        (larger < -2.0 * crate::measure::THIRTY_SECOND_MM - 1e-9).then_some(Word {
            force: Force::Advice,
            reason: Why::LargerInside { difference_mm: -larger },
            source: TABLE,
            lifted_by: Lift::SwapPair,
        })
    }

    /// How much larger the outer tire is, in mm, as far as it can be told: the
    /// difference new, and twice the difference of depths. Tires of one size are
    /// taken to have the same tread new.
    ///
    /// ```
    /// use lugbook::rotation::TireFacts;
    /// use lugbook::rotation::constraint::DualMatch;
    /// use lugbook::vehicle::Place;
    /// let bare = TireFacts::at(Place::parse("2LO").unwrap());
    /// assert_eq!(DualMatch::outer_larger_mm(&bare, &bare), None, "neither size nor tread is known");
    /// ```
    pub fn outer_larger_mm(outer: &TireFacts, inner: &TireFacts) -> Option<f64> {
        let new = match (outer.overall_diameter_mm, inner.overall_diameter_mm) {
            (Some(outer), Some(inner)) => outer - inner,
            _ if outer.size.is_some() && outer.size == inner.size => 0.0,
            _ => return None,
        };
        Some(new + 2.0 * (outer.mean_mm()? - inner.mean_mm()?))
    }
}

impl Constraint for DualMatch {
    fn name(&self) -> Name {
        Name::DualMatch
    }

    fn of_pair(&self, outer: &TireFacts, inner: &TireFacts) -> Option<Word> {
        let larger = Self::outer_larger_mm(outer, inner)?;
        Self::word(larger, outer.overall_diameter_mm.or(inner.overall_diameter_mm))
    }
}
