//! The camera reader: never a panic, every substitution inside the text, ranked
//! and within its limit, and time in step with the length.
#![no_main]

use std::time::{Duration, Instant};

use libfuzzer_sys::fuzz_target;
use lugbook::sidewall::{self, Reading};

fuzz_target!(|text: &str| {
    let started = Instant::now();
    let found = sidewall::candidates(text, 4);
    let took = started.elapsed();
    let characters = text.chars().count();
    assert!(found.len() <= 12);
    for candidate in &found {
        assert!(candidate.at + candidate.len <= characters);
        assert!(candidate.cost.is_finite() && (0.0..1.0).contains(&candidate.odds));
        for substitution in &candidate.substitutions {
            assert!(substitution.at <= characters && substitution.cost > 0.0);
        }
        // What is offered stands when it is typed.
        let typed = sidewall::parse(&candidate.text());
        match &candidate.reading {
            Reading::Size { size, service } => assert!(typed.size == Some(*size) && typed.service == *service),
            Reading::Service(service) => assert_eq!(typed.service, Some(*service)),
            Reading::Tin(tin) => assert_eq!(typed.tin.as_ref(), Some(tin)),
        }
    }
    // 10 ms a kilobyte, and one more for a text of nothing. The machine may have
    // been busy elsewhere: only what is slow five times is slow.
    let allowed = Duration::from_secs_f64(0.010 * (1.0 + text.len() as f64 / 1024.0));
    let again = || {
        let started = Instant::now();
        std::hint::black_box(sidewall::candidates(text, 4));
        started.elapsed()
    };
    assert!(took <= allowed || (0..5).any(|_| again() <= allowed), "{took:?} for {} bytes", text.len());
});
