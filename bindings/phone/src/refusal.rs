//! What went wrong, by what the person can do about it.

use lugbook::engine::{Trouble, TroubleKind};

/// A refusal, by what the person can do about it, with its sentence. Nothing was changed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error, uniffi::Error)]
pub enum Refusal {
    /// Say it differently.
    #[error("{sentence}")]
    MendInput {
        /// The sentence.
        sentence: String,
        /// Where: a field's code, a place, a step, or a position in the text.
        at: Option<String>,
    },
    /// A gate holds it.
    #[error("{sentence}")]
    HeldByGate {
        /// The sentence.
        sentence: String,
        /// The step, and the place.
        at: Option<String>,
    },
    /// Make room on the phone.
    #[error("{sentence}")]
    FreeSpace {
        /// The sentence.
        sentence: String,
    },
    /// Try again.
    #[error("{sentence}")]
    TryAgain {
        /// The sentence.
        sentence: String,
    },
    /// Restore a backup.
    #[error("{sentence}")]
    Restore {
        /// The sentence.
        sentence: String,
    },
    /// Report it.
    #[error("{sentence}")]
    Report {
        /// The sentence.
        sentence: String,
    },
    /// The book was closed, or the app is paused.
    #[error("the book is closed")]
    Closed,
}

impl From<Trouble> for Refusal {
    fn from(trouble: Trouble) -> Self {
        let Trouble { kind, sentence, at, .. } = trouble;
        match kind {
            TroubleKind::MendInput => Self::MendInput { sentence, at },
            TroubleKind::Held => Self::HeldByGate { sentence, at },
            TroubleKind::FreeSpace => Self::FreeSpace { sentence },
            TroubleKind::TryAgain => Self::TryAgain { sentence },
            TroubleKind::Restore => Self::Restore { sentence },
            TroubleKind::Report => Self::Report { sentence },
        }
    }
}
