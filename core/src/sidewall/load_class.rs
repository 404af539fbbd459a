//! Load classes: standard, extra, light, high, and load ranges by letter.

use std::fmt;

/// The load class a marking prints, or that no load word stands for.
///
/// ```
/// use lugbook::sidewall::{LoadClass, parse};
/// assert_eq!(parse("225/45R17 94W Reinforced").load, Some(LoadClass::Extra));
/// assert_eq!(parse("225/45R17 91W").load_class(), Some(LoadClass::Standard));
/// assert_eq!(parse("LT245/75R16 LRE").load_class().unwrap().code(), "load-range-e");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LoadClass {
    /// `SL`, or a passenger size without any load word.
    Standard,
    /// `XL`, `EXTRA LOAD`, `REINFORCED`, `RF`.
    Extra,
    /// `LL`.
    Light,
    /// `HL` (from memory).
    High,
    /// A load range.
    Range(LoadRange),
}

/// A load range letter.
///
/// ```
/// use lugbook::sidewall::LoadRange;
/// let e = LoadRange::new('E').unwrap();
/// assert_eq!(e.ply_rating(), Some(10));
/// assert_eq!(LoadRange::new('K').and_then(LoadRange::ply_rating), None); // charts disagree
/// assert_eq!(LoadRange::new('I'), None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LoadRange(u8);

impl LoadRange {
    /// The range with this capital letter, A to N without I; `None` for others.
    ///
    /// ```
    /// use lugbook::sidewall::LoadRange;
    /// assert!(LoadRange::new('E').is_some() && LoadRange::new('I').is_none());
    /// ```
    pub fn new(letter: char) -> Option<Self> {
        u8::try_from(letter).ok().and_then(Self::of_byte)
    }

    pub(super) fn of_byte(letter: u8) -> Option<Self> {
        matches!(letter, b'A'..=b'H' | b'J'..=b'N').then_some(Self(letter))
    }

    /// The letter.
    ///
    /// ```
    /// use lugbook::sidewall::LoadRange;
    /// assert_eq!(LoadRange::new('E').map(LoadRange::letter), Some('E'));
    /// ```
    pub fn letter(self) -> char {
        char::from(self.0)
    }

    /// The ply rating the letter stands for. Three charts agree on A to J
    /// (grade S); above, charts shift the letters, so there is none.
    ///
    /// ```
    /// use lugbook::sidewall::LoadRange;
    /// assert_eq!(LoadRange::new('E').unwrap().ply_rating(), Some(10));
    /// assert_eq!(LoadRange::new('L').unwrap().ply_rating(), None, "charts differ above J");
    /// ```
    pub fn ply_rating(self) -> Option<u8> {
        let step = match self.0 {
            b'A'..=b'H' => self.0.saturating_sub(b'A'),
            b'J' => 8,
            _ => return None,
        };
        Some(step.saturating_add(1).saturating_mul(2))
    }
}

impl LoadClass {
    /// The class's code in data: `standard`, `extra-load`, `light-load`,
    /// `high-load`, `load-range-e` …
    ///
    /// ```
    /// let marking = lugbook::sidewall::parse("LT245/75R16 120/116S LOAD RANGE E");
    /// assert_eq!(marking.load_class().map(|class| class.code()).as_deref(), Some("load-range-e"));
    /// ```
    pub fn code(self) -> String {
        match self {
            Self::Standard => "standard".to_owned(),
            Self::Extra => "extra-load".to_owned(),
            Self::Light => "light-load".to_owned(),
            Self::High => "high-load".to_owned(),
            Self::Range(range) => format!("load-range-{}", range.letter().to_ascii_lowercase()),
        }
    }
}

impl fmt::Display for LoadClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Standard => f.write_str("SL"),
            Self::Extra => f.write_str("XL"),
            Self::Light => f.write_str("LL"),
            Self::High => f.write_str("HL"),
            Self::Range(range) => write!(f, "LOAD RANGE {}", range.letter()),
        }
    }
}
