//! What fuzzing found worth keeping, replayed.

use std::path::Path;
use std::time::{Duration, Instant};

use lugbook::sidewall;

#[test]
fn every_kept_text_still_reads_and_prints() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/seeds");
    let mut seen = 0;
    let started = Instant::now();
    for entry in std::fs::read_dir(&folder).unwrap() {
        let path = entry.unwrap().path();
        let bytes = std::fs::read(&path).unwrap();
        let Ok(text) = String::from_utf8(bytes) else { continue };
        let marking = sidewall::parse(&text);
        let printed = marking.to_string();
        assert_eq!(sidewall::parse(&printed), marking, "{}: printed as {printed:?}", path.display());
        let characters = text.chars().count();
        assert!(marking.problems.iter().all(|p| p.at + p.len <= characters), "{}", path.display());
        assert!(marking.understood() || marking.refused(), "{}", path.display());
        for candidate in sidewall::candidates(&text, 4) {
            assert!(candidate.at + candidate.len <= characters, "{}", path.display());
            let typed = sidewall::parse(&candidate.text());
            assert_eq!(typed.to_string(), candidate.text(), "{}", path.display());
        }
        seen += 1;
    }
    assert!(seen > 100, "the corpus is missing");
    // Debug build, slow machine: growth would show as minutes.
    assert!(started.elapsed() < Duration::from_secs(60), "{:?}", started.elapsed());
}
