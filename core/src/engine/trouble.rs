//! What went wrong, by what the person can do about it.

use serde::Serialize;

use crate::logbook::Book;
use crate::photos::{Doing, PhotoError};
use crate::sidewall::{Marking, Severity};
use crate::store::StoreError;
use crate::words::{Arg, Say, Words};

/// What the person can do about it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum TroubleKind {
    /// Say it differently: the input was not understood or does not fit.
    MendInput,
    /// A gate holds this: meet its condition, or open it with a reason.
    Held,
    /// Make room on the device.
    FreeSpace,
    /// Try again: something else was in the way.
    TryAgain,
    /// Restore a backup: the book is damaged.
    Restore,
    /// Report it: this is a fault of the program.
    Report,
}

impl TroubleKind {
    /// The kind's code in data.
    pub fn code(self) -> &'static str {
        match self {
            Self::MendInput => "mend-input",
            Self::Held => "held",
            Self::FreeSpace => "free-space",
            Self::TryAgain => "try-again",
            Self::Restore => "restore",
            Self::Report => "report",
        }
    }
}

/// Where in what was typed a refusal points, so that a shell can show the place.
///
/// ```
/// use lugbook::engine::Trouble;
/// use lugbook::words::{Speech, Words};
/// let text = "225/45X17";
/// let trouble = Trouble::of_marking(text, &lugbook::sidewall::parse(text), &Words::new(Speech::default()));
/// let pointer = trouble.and_then(|trouble| trouble.pointer).unwrap();
/// assert_eq!((pointer.at, pointer.len), (6, 1));
/// assert_eq!(pointer.next, "Look at the letter between the aspect ratio and the rim.");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Pointer {
    /// What was typed.
    pub text: String,
    /// The first character of the place, from 0.
    pub at: usize,
    /// How many characters; none when something is missing there.
    pub len: usize,
    /// What to look at or type next; empty when the sentence says it.
    pub next: String,
}

/// A refusal, with the sentence that a mechanic understands. Nothing was changed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, thiserror::Error)]
#[error("{sentence}")]
pub struct Trouble {
    /// What the person can do about it.
    pub kind: TroubleKind,
    /// The sentence, in the asked language.
    pub sentence: String,
    /// Where: a place, a step, or a position in the input.
    pub at: Option<String>,
    /// The place in what was typed, when it was a marking.
    pub pointer: Option<Pointer>,
}

impl Trouble {
    /// A trouble with a sentence of the words room.
    pub(crate) fn new(kind: TroubleKind, words: &Words, id: &str, args: &[(&str, Arg<'_>)]) -> Self {
        Self { kind, sentence: words.text(id, args), at: None, pointer: None }
    }

    /// Input that must be mended.
    pub(crate) fn mend(words: &Words, id: &str, args: &[(&str, Arg<'_>)]) -> Self {
        Self::new(TroubleKind::MendInput, words, id, args)
    }

    /// Input that must be mended, with its sentence.
    pub(crate) fn said(sentence: String) -> Self {
        Self { kind: TroubleKind::MendInput, sentence, at: None, pointer: None }
    }

    /// A vehicle that is not in the book.
    pub(crate) fn no_vehicle(book: &Book, given: &str, words: &Words) -> Self {
        let names = words.list(book.vehicles.iter().map(|vehicle| vehicle.name.clone()));
        let id = if names.is_empty() { "trouble-no-vehicle" } else { "trouble-unknown-vehicle" };
        Self::mend(words, id, &[("given", clipped(given).into()), ("names", names.into())])
    }

    /// The same, told where.
    pub(crate) fn at(self, at: impl Into<String>) -> Self {
        Self { at: Some(at.into()), ..self }
    }

    /// The refusal of a marking that can't be so, pointing at the place; none when it can.
    ///
    /// ```
    /// use lugbook::engine::Trouble;
    /// use lugbook::words::{Speech, Words};
    /// let words = Words::new(Speech::default());
    /// let of = |text: &str| Trouble::of_marking(text, &lugbook::sidewall::parse(text), &words);
    /// assert_eq!(of("225/45R17 91W"), None);
    /// assert_eq!(of("225/45R17 300W").unwrap().at.as_deref(), Some("10"));
    /// ```
    pub fn of_marking(text: &str, marking: &Marking, words: &Words) -> Option<Self> {
        if !marking.refused() {
            return None;
        }
        let error = marking.problems.iter().find(|problem| problem.severity == Severity::Error)?;
        let next = words.sidewall_next(error);
        Some(Self::said(error.say(words)).at(error.at.to_string()).pointing(text, error.at, error.len, next))
    }

    /// The same, pointing at a place in what was typed; places are in characters.
    #[must_use]
    pub fn pointing(self, text: &str, at: usize, len: usize, next: String) -> Self {
        Self { pointer: Some(Pointer { text: text.to_owned(), at, len, next }), ..self }
    }

    /// A trouble of the store.
    pub(crate) fn of_store(why: &StoreError, words: &Words) -> Self {
        let kind = match why {
            StoreError::MendInput { .. } => TroubleKind::MendInput,
            StoreError::FreeSpace => TroubleKind::FreeSpace,
            StoreError::TryAgain { .. } => TroubleKind::TryAgain,
            StoreError::Restore { .. } => TroubleKind::Restore,
            StoreError::Report { .. } => TroubleKind::Report,
        };
        Self { kind, sentence: why.say(words), at: None, pointer: None }
    }

    /// A trouble of the photos.
    pub(crate) fn of_photos(why: &PhotoError, words: &Words) -> Self {
        let kind = match why {
            PhotoError::Refused(_) => TroubleKind::MendInput,
            PhotoError::NoSpace { .. } => TroubleKind::FreeSpace,
            PhotoError::Storage { doing: Doing::ReadingSource, .. } => TroubleKind::MendInput,
            PhotoError::Storage { source, .. }
                if matches!(
                    source.kind(),
                    std::io::ErrorKind::ReadOnlyFilesystem | std::io::ErrorKind::PermissionDenied
                ) =>
            {
                TroubleKind::MendInput
            }
            PhotoError::Storage { .. } => TroubleKind::TryAgain,
            PhotoError::Lost { .. } => TroubleKind::Restore,
        };
        Self { kind, sentence: why.say(words), at: None, pointer: None }
    }
}

/// The start of what was given, so that a refusal stays one short sentence.
pub(super) fn clipped(text: &str) -> String {
    let clean: String = text.chars().filter(|c| !c.is_control()).take(40).collect();
    if text.chars().count() > 40 { format!("{clean}…") } else { clean }
}
