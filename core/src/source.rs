//! Where a rule, a figure or a habit comes from, and how far to trust it.

use serde::Serialize;

/// How far a statement can be trusted.
///
/// Only [`Grade::Rule`] and [`Grade::Manual`] may refuse; everything weaker warns.
///
/// ```
/// use lugbook::source::Grade;
/// assert!(Grade::Manual.may_refuse() && !Grade::Memory.may_refuse());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Grade {
    /// The rule's own text was read (P).
    Rule,
    /// A vehicle or truck maker's manual page was read (O).
    Manual,
    /// Two secondary sources agree (S2).
    TwoSecondary,
    /// One secondary page was read (S).
    Secondary,
    /// Computed from stated inputs (C).
    Computed,
    /// A fact of the trade for which no source was found.
    CommonPractice,
    /// From memory, not looked up (M).
    Memory,
    /// A choice of this design, not a fact (D).
    Design,
}

impl Grade {
    /// Whether a statement of this grade may refuse something, or only warn.
    ///
    /// ```
    /// use lugbook::source::Grade;
    /// assert!(Grade::Rule.may_refuse() && !Grade::Secondary.may_refuse());
    /// ```
    pub fn may_refuse(self) -> bool {
        matches!(self, Self::Rule | Self::Manual | Self::Computed)
    }
}

/// A statement's source: its grade and, when something was read, its title.
///
/// ```
/// use lugbook::source::{Grade, Source};
/// assert_eq!((Source::MEMORY.grade, Source::MEMORY.title), (Grade::Memory, ""));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Source {
    /// How far to trust it.
    pub grade: Grade,
    /// The title of what was read, or how it was computed; empty for practice and memory.
    pub title: &'static str,
}

impl Source {
    /// A fact of the trade without a written source.
    pub const PRACTICE: Self = Self { grade: Grade::CommonPractice, title: "" };
    /// A fact nobody looked up.
    pub const MEMORY: Self = Self { grade: Grade::Memory, title: "" };
    /// Plain geometry or mechanics of the parts at hand.
    pub const GEOMETRY: Self = Self { grade: Grade::Computed, title: "geometry" };

    /// A source that was read, with its title.
    ///
    /// ```
    /// use lugbook::source::{Grade, Source};
    /// let rule = Source::read(Grade::Rule, "49 CFR 574.5");
    /// assert!(rule.grade.may_refuse() && rule.title.contains("574.5"));
    /// ```
    pub const fn read(grade: Grade, title: &'static str) -> Self {
        Self { grade, title }
    }
}
