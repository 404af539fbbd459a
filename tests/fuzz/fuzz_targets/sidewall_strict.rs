//! The strict reader: never a panic, every place inside the text, what is
//! printed reads back as the same, and time in step with the length.
#![no_main]

use std::time::{Duration, Instant};

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
    // 10 ms a kilobyte, and one more for a text of nothing. The machine may have
    // been busy elsewhere: only what is slow five times is slow.
    let allowed = Duration::from_secs_f64(0.010 * (1.0 + text.len() as f64 / 1024.0));
    let again = || {
        let started = Instant::now();
        std::hint::black_box(sidewall::parse(text));
        started.elapsed()
    };
    assert!(took <= allowed || (0..5).any(|_| again() <= allowed), "{took:?} for {} bytes", text.len());
});
