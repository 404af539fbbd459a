//! The state of what was looked at.

use serde::{Deserialize, Serialize};

/// How a part stands, best first.
///
/// ```
/// use lugbook::finding::State;
/// assert!(State::Unsafe > State::BelowLimit && State::Watch > State::Sound);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum State {
    /// Nothing wrong was seen.
    Sound,
    /// Look again before long.
    Watch,
    /// At the limit: plan the replacement now.
    AtLimit,
    /// Below the limit.
    BelowLimit,
    /// Unsafe: do not drive.
    Unsafe,
}

impl State {
    /// All states, best first.
    pub const ALL: [Self; 5] = [Self::Sound, Self::Watch, Self::AtLimit, Self::BelowLimit, Self::Unsafe];

    /// The state's code in data: `sound`, `watch`, `at-limit`, `below-limit`, `unsafe`.
    ///
    /// ```
    /// use lugbook::finding::State;
    /// let codes = State::ALL.map(State::code);
    /// assert_eq!(codes, ["sound", "watch", "at-limit", "below-limit", "unsafe"]);
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::Sound => "sound",
            Self::Watch => "watch",
            Self::AtLimit => "at-limit",
            Self::BelowLimit => "below-limit",
            Self::Unsafe => "unsafe",
        }
    }
}
