//! What is said of photos: why one was not taken in, what to do about it, how to take it better.

use super::{Arg, Say, Words};
use crate::photos::{Damage, Doing, Format, Hint, Judgement, OtherKind, PhotoError, Problem, Refusal, Rendition};

impl Say for PhotoError {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::Refused(why) => why.say(words),
            Self::NoSpace { needed } => words.text("photo-no-space", &[("megabytes", megabytes(*needed, words))]),
            Self::Storage { doing, source } => {
                let id = match doing {
                    Doing::Writing | Doing::Placing if not_writable(source) => "photo-storage-not-writable",
                    Doing::OpeningFolder => "photo-storage-opening",
                    Doing::ReadingSource => "photo-storage-source",
                    Doing::Writing | Doing::Placing => "photo-storage-writing",
                    Doing::ReadingKept => "photo-storage-reading",
                    Doing::Sweeping => "photo-storage-sweeping",
                };
                words.text(id, &[("cause", source.to_string().into())])
            }
            Self::Lost { id, damage } => words.text(lost(*damage), &[("photo", id.short().into())]),
        }
    }
}

impl Say for Refusal {
    fn say(&self, words: &Words) -> String {
        let plain = |id: &str| words.text(id, &[]);
        match self {
            Self::Unreachable => plain("photo-unreachable"),
            Self::Empty => plain("photo-empty"),
            Self::TooManyBytes { bytes, limit } => words.text(
                "photo-too-many-bytes",
                &[("megabytes", megabytes(*bytes, words)), ("limit", megabytes(*limit, words))],
            ),
            Self::TooManyPixels { width, height, .. } => words.text(
                "photo-too-many-pixels",
                &[("width", width.to_string().into()), ("height", height.to_string().into())],
            ),
            Self::Heic => plain("photo-heic"),
            Self::OtherKind { kind } => words.text("photo-other-kind", &[("kind", kind.say(words).into())]),
            Self::UnusualForm { format } => words.text("photo-unusual-form", &[("format", name(*format).into())]),
            Self::NotAPicture => plain("photo-not-a-picture"),
            Self::Damaged { format } => words.text("photo-damaged", &[("format", name(*format).into())]),
        }
    }
}

impl Say for OtherKind {
    fn say(&self, words: &Words) -> String {
        let id = match self {
            Self::Avif => "kind-avif",
            Self::Bmp => "kind-bmp",
            Self::Gif => "kind-gif",
            Self::JpegXl => "kind-jpeg-xl",
            Self::Tiff => "kind-tiff",
            Self::Film => "kind-film",
            Self::Pdf => "kind-pdf",
        };
        words.text(id, &[])
    }
}

impl Say for Problem {
    fn say(&self, words: &Words) -> String {
        let id = match (self.rendition, self.damage) {
            (Rendition::Original, damage) => lost(damage),
            (_, Damage::Missing) => "photo-copy-missing",
            (_, Damage::Changed) => "photo-copy-changed",
            (_, Damage::Unreadable) => "photo-copy-unreadable",
        };
        words.text(id, &[("photo", self.id.short().into())])
    }
}

impl Say for Hint {
    fn say(&self, words: &Words) -> String {
        let id = match self {
            Self::Blurred => "hint-blurred",
            Self::TooDark => "hint-too-dark",
            Self::TooBright => "hint-too-bright",
            Self::NothingStandsOut => "hint-nothing-stands-out",
            Self::TooSmall => "hint-too-small",
        };
        words.text(id, &[])
    }
}

impl Words {
    /// What a photo is worth: one sentence when it is good, else what to do differently.
    pub fn judgement(&self, judgement: &Judgement) -> String {
        if judgement.is_good() {
            return self.text("photo-good", &[]);
        }
        judgement.hints.iter().map(|hint| hint.say(self)).collect::<Vec<_>>().join(" ")
    }
}

fn lost(damage: Damage) -> &'static str {
    match damage {
        Damage::Missing => "photo-missing",
        Damage::Changed => "photo-changed",
        Damage::Unreadable => "photo-unreadable",
    }
}

/// The format's own name, the same in every language.
fn name(format: Format) -> &'static str {
    match format {
        Format::Jpeg => "JPEG",
        Format::Png => "PNG",
        Format::Webp => "WebP",
    }
}

/// Whole megabytes, rounded up.
fn megabytes(bytes: u64, words: &Words) -> Arg<'static> {
    words.number(bytes.div_ceil(1_000_000) as f64, 0).into()
}

/// Whether trying again is in vain until somebody gives the right to write.
fn not_writable(why: &std::io::Error) -> bool {
    matches!(why.kind(), std::io::ErrorKind::ReadOnlyFilesystem | std::io::ErrorKind::PermissionDenied)
}
