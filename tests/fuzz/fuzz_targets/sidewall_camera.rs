//! The camera reader: never a panic, every substitution inside the text, ranked
//! and within its limit, and what is slow is kept to be timed again.
#![no_main]

use std::time::Instant;

use libfuzzer_sys::fuzz_target;
use lugbook::sidewall::{self, Reading};
use lugbook_fuzz::{camera, keep_if_slow};

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
    keep_if_slow("sidewall_camera", text, took, camera);
});
