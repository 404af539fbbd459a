//! The bar on time: 10 ms a kilobyte, and one kilobyte more for a text of nothing.
//!
//! Instrumented code is slower than the code that people run, so here a slow text
//! fails nothing: it is kept in `slow/`, and `retime` judges it without instruments.

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use lugbook::sidewall;

/// What the strict reader is timed at.
pub fn strict(text: &str) {
    black_box(sidewall::parse(black_box(text)));
}

/// What the camera reader is timed at.
pub fn camera(text: &str) {
    black_box(sidewall::candidates(black_box(text), 4));
}

/// How long a text may take.
pub fn allowed(text: &str) -> Duration {
    Duration::from_secs_f64(0.010 * (1.0 + text.len() as f64 / 1024.0))
}

/// The best of so many times: the machine may be busy elsewhere. Stops at the first within the bar.
pub fn best_of(times: usize, text: &str, read: fn(&str)) -> Duration {
    let mut best = Duration::MAX;
    for _ in 0..times {
        let started = Instant::now();
        read(text);
        best = best.min(started.elapsed());
        if best <= allowed(text) {
            break;
        }
    }
    best
}

/// Keeps a text that took too long under the instruments, by its digest, in `slow/TARGET/`.
pub fn keep_if_slow(target: &str, text: &str, took: Duration, read: fn(&str)) {
    if took <= allowed(text) || best_of(5, text, read) <= allowed(text) {
        return;
    }
    let folder = Path::new("slow").join(target);
    std::fs::create_dir_all(&folder).expect("the folder for slow texts can be made");
    let name = lugbook::ident::Digest::of(text.as_bytes()).to_string();
    std::fs::write(folder.join(name), text).expect("a slow text can be kept");
}
