//! The phone boundary, called as the shells call it.

use std::sync::Arc;

use lugbook_phone::{Device, Language, Logbook, Manner, PositionLetters, Refusal, UnitSystem};

struct Phone;

impl Device for Phone {
    fn clock_ms(&self) -> i64 {
        1_780_000_000_000
    }

    fn random(&self) -> Vec<u8> {
        vec![1, 2, 3]
    }

    fn secret(&self) -> Option<Vec<u8>> {
        Some(vec![4; 32])
    }
}

const MANNER: Manner =
    Manner { language: Language::English, units: UnitSystem::Metric, letters: PositionLetters::FrontFirst };

#[test]
fn a_new_book_is_empty_and_a_closed_one_says_so() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().to_str().unwrap().to_owned();
    let book = Logbook::open(path.clone(), Arc::new(Phone), MANNER).unwrap();
    assert_eq!(book.next_step(MANNER), Ok(None));
    assert_eq!(book.jobs(MANNER), Ok(Vec::new()));
    assert!(matches!(book.card(Some(3), MANNER), Err(Refusal::MendInput { .. })));
    assert!(matches!(Logbook::open(path, Arc::new(Phone), MANNER), Err(Refusal::TryAgain { .. })), "one writer");
    book.close_book();
    assert_eq!(book.jobs(MANNER), Err(Refusal::Closed));
}
