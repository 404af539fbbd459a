//! A tire as it is seen: which side, and what it looks like beyond its lettering.

use serde::{Deserialize, Serialize};

use crate::sidewall::{Marking, Use, Word};

fn is_false(flag: &bool) -> bool {
    !flag
}

/// Which sidewall of a tire.
///
/// ```
/// use lugbook::tire::SidewallSide;
/// assert_eq!(serde_json::to_string(&SidewallSide::Inner)?, "\"inner\"");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SidewallSide {
    /// The one that faces out.
    Outer,
    /// The one that faces the vehicle.
    Inner,
}

/// What a tire looks like beyond its lettering.
///
/// ```
/// use lugbook::tire::TireLooks;
/// // Only what was seen is kept.
/// let looks = TireLooks { studded: true, ..TireLooks::default() };
/// assert_eq!(serde_json::to_string(&looks)?, r#"{"studded":true}"#);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct TireLooks {
    /// A rotation arrow: the tire rolls one way.
    #[serde(default, skip_serializing_if = "is_false")]
    pub directional: bool,
    /// Inside and outside are marked or differ.
    #[serde(default, skip_serializing_if = "is_false")]
    pub asymmetric: bool,
    /// Metal studs in the tread.
    #[serde(default, skip_serializing_if = "is_false")]
    pub studded: bool,
    /// A temporary-use spare.
    #[serde(default, skip_serializing_if = "is_false")]
    pub temporary: bool,
    /// Retreaded.
    #[serde(default, skip_serializing_if = "is_false")]
    pub retread: bool,
    /// Regrooved.
    #[serde(default, skip_serializing_if = "is_false")]
    pub regrooved: bool,
}

impl TireLooks {
    /// What was seen, with what the lettering says besides: an arrow's word,
    /// inside and outside, a temporary size, retread.
    ///
    /// ```
    /// use lugbook::sidewall;
    /// use lugbook::tire::TireLooks;
    /// let marking = sidewall::parse("225/45R18 95V ROTATION");
    /// assert!(TireLooks::default().with_lettering(&marking).directional);
    /// ```
    #[must_use]
    pub fn with_lettering(self, marking: &Marking) -> Self {
        let has = |word: Word| marking.words.contains(&word);
        let size = marking.size.as_ref().and_then(|size| size.made_for());
        Self {
            directional: self.directional || has(Word::Rotation),
            asymmetric: self.asymmetric || has(Word::Outside) || has(Word::Inside),
            temporary: self.temporary || has(Word::TemporaryUseOnly) || size == Some(Use::Temporary),
            retread: self.retread || has(Word::Retread),
            ..self
        }
    }
}
