//! What is said of photos.

use lugbook::ident::Digest;
use lugbook::photos::{
    Damage, Doing, Format, Hint, Judgement, MAX_BYTES, MAX_PIXELS, OtherKind, PhotoError, Problem, Refusal, Rendition,
};
use lugbook::words::{Say, Speech, Words};

#[test]
fn each_trouble_with_a_photo_says_what_to_do() {
    let words = Words::new(Speech::default());
    let id = Digest::of(b"wheel");
    let mut said: Vec<String> = [
        Refusal::Unreachable,
        Refusal::Empty,
        Refusal::TooManyBytes { bytes: MAX_BYTES + 1, limit: MAX_BYTES },
        Refusal::TooManyPixels { width: 30_000, height: 30_000, limit: MAX_PIXELS },
        Refusal::Heic,
        Refusal::OtherKind { kind: OtherKind::Film },
        Refusal::OtherKind { kind: OtherKind::Avif },
        Refusal::UnusualForm { format: Format::Jpeg },
        Refusal::NotAPicture,
        Refusal::Damaged { format: Format::Png },
    ]
    .map(|refusal| PhotoError::Refused(refusal).say(&words))
    .to_vec();
    said.push(PhotoError::NoSpace { needed: 5_200_000 }.say(&words));
    for doing in [Doing::OpeningFolder, Doing::ReadingSource, Doing::Writing, Doing::ReadingKept, Doing::Sweeping] {
        said.push(PhotoError::Storage { doing, source: std::io::ErrorKind::ReadOnlyFilesystem.into() }.say(&words));
    }
    for damage in [Damage::Missing, Damage::Changed, Damage::Unreadable] {
        said.push(PhotoError::Lost { id, damage }.say(&words));
        said.push(Problem { id, rendition: Rendition::Small, damage }.say(&words));
    }
    let judgement = |hints| Judgement { sharpness: 0.8, highlights: 0.7, blown: 0.0, hints };
    said.push(words.judgement(&judgement(vec![])));
    said.push(words.judgement(&judgement(vec![
        Hint::TooSmall,
        Hint::TooDark,
        Hint::TooBright,
        Hint::NothingStandsOut,
        Hint::Blurred,
    ])));
    insta::assert_snapshot!(said.join("\n"));
}
