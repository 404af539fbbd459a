//! The strict reader: never a panic, every place inside the text, what is
//! printed reads back as the same, and what is slow is kept to be timed again.
#![no_main]

use std::time::Instant;

use libfuzzer_sys::fuzz_target;
use lugbook::sidewall::{self, Answer};
use lugbook_fuzz::{keep_if_slow, strict};

fuzz_target!(|text: &str| {
    let started = Instant::now();
    let marking = sidewall::parse(text);
    let took = started.elapsed();
    let characters = text.chars().count();
    for problem in &marking.problems {
        assert!(problem.at + problem.len <= characters, "{problem:?} outside of {characters}");
    }
    assert!(marking.understood() || marking.refused());
    let printed = marking.to_string();
    let again = sidewall::parse(&printed);
    assert_eq!(marking, again, "printed as {printed:?}");
    assert_eq!(printed, again.to_string());
    let _ = Answer::of(&marking);
    keep_if_slow("sidewall_strict", text, took, strict);
});
