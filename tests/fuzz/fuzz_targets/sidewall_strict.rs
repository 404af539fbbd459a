//! The strict reader: never a panic, every place inside the text, what is
//! printed reads back as the same, and time in step with the length.
#![no_main]

use std::time::Instant;

use libfuzzer_sys::fuzz_target;
use lugbook::sidewall::{self, Answer};

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
    // 10 ms a kilobyte, and one more for a text of nothing.
    let allowed = 10.0 * (1.0 + text.len() as f64 / 1024.0);
    assert!(took.as_secs_f64() * 1000.0 <= allowed, "{took:?} for {} bytes", text.len());
});
