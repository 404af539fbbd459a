//! Everything that can go wrong with a book has a sentence: what is safe, what is missing, what to do now.

use std::path::PathBuf;

use lugbook::store::{Again, Mend, Missing, Problem, ProblemKind, Rescued, Spot, StoreError};
use lugbook::words::{Say, Speech, Words};

use super::{id, stream};

/// One of each.
fn kinds() -> Vec<ProblemKind> {
    vec![
        ProblemKind::Digest,
        ProblemKind::Unreadable,
        ProblemKind::NewerEntry { version: 2 },
        ProblemKind::Personal,
        ProblemKind::PersonalGone,
        ProblemKind::Row,
        ProblemKind::Chain,
        ProblemKind::Gap { first: 4, last: 4 },
        ProblemKind::Gap { first: 4, last: 9 },
        ProblemKind::Head,
        ProblemKind::Forgotten { had: 12, has: 9 },
        ProblemKind::Tables,
        ProblemKind::File { said: "row 3 missing from index".to_owned() },
        ProblemKind::Interrupted,
        ProblemKind::Header,
        ProblemKind::FileGone,
        ProblemKind::Seal,
        ProblemKind::OtherDevice,
    ]
}

fn errors() -> Vec<StoreError> {
    let path = PathBuf::from("/truck/book");
    let stream = stream(1);
    let mend = [
        Mend::NotAFolder { path: path.clone() },
        Mend::Unreachable { path: path.clone() },
        Mend::NotABook { path: path.join("book.db") },
        Mend::Newer { version: 2, known: 1 },
        Mend::NewerEntry { version: None },
        Mend::StreamInUse { stream },
        Mend::NoBackupFolder { path: path.to_owned() },
        Mend::Locked { path: path.join("backup.zip") },
        Mend::WrongPassphrase { path: path.join("backup.zip") },
        Mend::ShortPassphrase { least: 8 },
        Mend::NotABackup { path: path.join("backup.zip") },
        Mend::NewerBackup { version: 2, known: 1 },
        Mend::BackupDamaged { path: path.join("backup.zip"), at: "entries.jsonl:3".to_owned() },
        Mend::NotWritable { path },
        Mend::SameId { id: id(1) },
        Mend::Unwritable { id: id(1) },
        Mend::Unchained { stream, number: 4 },
        Mend::Forked { stream, number: 4 },
        Mend::NoEntry { id: id(1) },
        Mend::SealUnfit { stream, number: 4 },
        Mend::Resealed { stream, number: 4 },
    ];
    let mut errors: Vec<_> = mend.into_iter().map(|why| StoreError::MendInput { why }).collect();
    errors.extend([
        StoreError::FreeSpace,
        StoreError::TryAgain { why: Again::OpenElsewhere },
        StoreError::TryAgain { why: Again::Held },
        StoreError::TryAgain { why: Again::Storage },
        StoreError::TryAgain { why: Again::Stopped },
        StoreError::Restore { problem: Problem { kind: ProblemKind::Digest, at: Spot::Row { arrived: 7 } } },
        StoreError::Report { what: "disk I/O error".to_owned() },
    ]);
    errors
}

#[test]
fn every_trouble_with_a_book_has_one_sentence_of_its_own() {
    let words = Words::new(Speech::default());
    let said: Vec<_> = errors().iter().map(|why| format!("{}: {}", why.code(), why.say(&words))).collect();
    insta::assert_snapshot!(said.join("\n"));
    let mut kinds: Vec<_> = kinds().iter().map(|kind| kind.say(&words)).collect();
    let spots = [
        Spot::Book,
        Spot::Row { arrived: 3 },
        Spot::Stream { stream: stream(1) },
        Spot::Entry { stream: stream(1), number: 5 },
    ];
    kinds.extend(spots.map(|at| Problem { kind: ProblemKind::Chain, at }.say(&words)));
    insta::assert_snapshot!("problems", kinds.join("\n"));
}

#[test]
fn a_code_in_data_is_the_code_that_is_asked_for() {
    for kind in kinds() {
        assert_eq!(serde_json::to_value(&kind).unwrap()["kind"], kind.code());
    }
    for why in errors() {
        assert_eq!(serde_json::to_value(&why).unwrap()["kind"], why.code());
    }
}

#[test]
fn after_a_rescue_the_person_reads_what_is_safe_what_is_missing_and_what_to_do() {
    let words = Words::new(Speech::default());
    let whole = Rescued {
        damage: Problem { kind: ProblemKind::Header, at: Spot::Book },
        aside: PathBuf::from("/truck/book/damaged-2026-05-04-0915"),
        entries: 12,
        had: Some(12),
        missing: vec![],
        unfit: vec![],
        personal_lost: 0,
    };
    let partly = Rescued {
        entries: 9,
        missing: vec![Missing { stream: stream(1), first: 3, last: 4 }],
        unfit: vec![Spot::Entry { stream: stream(1), number: 7 }],
        personal_lost: 1,
        ..whole.clone()
    };
    let nothing = Rescued { entries: 0, had: None, ..whole.clone() };
    let said: Vec<_> = [whole, partly, nothing].iter().map(|told| told.say(&words)).collect();
    insta::assert_snapshot!(said.join("\n"));
}
