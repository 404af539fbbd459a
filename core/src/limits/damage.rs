use serde::{Deserialize, Serialize};

use crate::finding::State;
use crate::source::{Grade, Source};

/// What can be seen on a tire or wheel that makes a vehicle unsafe to drive.
///
/// ```
/// use lugbook::limits::Damage;
/// // Two of them stand in a rule for motorcycles; they are unsafe on any vehicle.
/// assert!(Damage::WheelFaulty.verdict().source.title.contains("COMAR 11.14.03.05"));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Damage {
    /// Cord or ply visible, also when a crack, cut or snag is lifted.
    CordVisible,
    /// A bump, bulge, knot or separation in sidewall or tread.
    Bulge,
    /// A boot or blowout patch.
    BootOrPatch,
    /// Marked as not for highway use.
    NotForHighway,
    /// No readable size or load marking.
    MarkingUnreadable,
    /// Bias and radial tires on one axle.
    BiasAndRadialMixed,
    /// A leaking valve.
    LeakingValve,
    /// Tire or wheel touches the body.
    TouchesBody,
    /// The axle weighs more than its tires are rated for.
    AxleOverRating,
    /// Loose, missing or damaged wheel bolts, studs or nuts.
    FastenersFaulty,
    /// The wheel is bent, cracked or rewelded.
    WheelFaulty,
}

/// What a damage means.
///
/// ```
/// use lugbook::limits::Damage;
/// use lugbook::finding::State;
/// let verdict = Damage::CordVisible.verdict();
/// assert_eq!((verdict.state, verdict.source.title), (State::Unsafe, "92 Ill. Adm. Code 428.20"));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Verdict {
    /// Always *unsafe: do not drive* for these.
    pub state: State,
    /// The rule that names it.
    pub source: Source,
}

const ILLINOIS: Source = Source::read(Grade::Rule, "92 Ill. Adm. Code 428.20");
const MARYLAND: Source = Source::read(Grade::Rule, "Maryland COMAR 11.22.04.06");
const MARYLAND_MOTORCYCLES: Source = Source::read(Grade::Rule, "Maryland COMAR 11.14.03.05");

impl Damage {
    /// All of them.
    pub const ALL: [Self; 11] = [
        Self::CordVisible,
        Self::Bulge,
        Self::BootOrPatch,
        Self::NotForHighway,
        Self::MarkingUnreadable,
        Self::BiasAndRadialMixed,
        Self::LeakingValve,
        Self::TouchesBody,
        Self::AxleOverRating,
        Self::FastenersFaulty,
        Self::WheelFaulty,
    ];

    /// What it means, with the rule that names it.
    ///
    /// The rule is one that was read, not the one that holds everywhere: two of
    /// them stand in a rule for motorcycles. The condition is unsafe on any vehicle.
    ///
    /// ```
    /// use lugbook::{finding::State, limits::Damage};
    /// assert!(Damage::ALL.iter().all(|damage| damage.verdict().state == State::Unsafe));
    /// ```
    pub fn verdict(self) -> Verdict {
        let source = match self {
            Self::CordVisible | Self::Bulge | Self::NotForHighway | Self::MarkingUnreadable => ILLINOIS,
            Self::BootOrPatch
            | Self::BiasAndRadialMixed
            | Self::LeakingValve
            | Self::TouchesBody
            | Self::AxleOverRating => MARYLAND,
            Self::FastenersFaulty | Self::WheelFaulty => MARYLAND_MOTORCYCLES,
        };
        Verdict { state: State::Unsafe, source }
    }
}
