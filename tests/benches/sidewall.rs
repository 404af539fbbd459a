//! The whole grammar over real markings, beside a compiled regular expression
//! that only finds the size. Bar: at most 5 times its time, in one run.

use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use criterion::{Criterion, criterion_group, criterion_main};
use lugbook::sidewall;
use regex::{Regex, RegexBuilder};

#[path = "../all/sidewall/real.rs"]
mod real;

/// Finds the size forms of section 1 and their figures.
const SIZE: &str = r"\b(P|LT|T|ST|S)? ?(?:(\d{3})(?:/(\d{2,3}))?|(\d{2}(?:\.\d+)?)x(\d{1,2}(?:\.\d+)?)|(\d{1,2})) ?(ZR|R|D|B|-) ?(\d{2}(?:\.5)?) ?(LT|C)?\b";

/// Every text that fuzzing kept, and texts made to be slow.
fn texts() -> Vec<String> {
    let fuzz = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz");
    let mut texts: Vec<String> = ["seeds", "corpus/sidewall_strict", "corpus/sidewall_camera"]
        .iter()
        .filter_map(|folder| std::fs::read_dir(fuzz.join(folder)).ok())
        .flatten()
        .filter_map(|entry| String::from_utf8(std::fs::read(entry.ok()?.path()).ok()?).ok())
        .collect();
    for piece in ["0", "1|", "B1", "A1 ", "1 ", "225/45R17 ", "91W ", "31x10.", "DOT 1HKB ", "DOT"] {
        texts.extend([100, 1000, 2000].map(|length| piece.chars().cycle().take(length).collect::<String>()));
    }
    texts
}

/// The longest time of any text, in ms a kilobyte; short texts count as 64 bytes.
fn slowest(read: impl Fn(&str)) -> (f64, String) {
    let mut worst = (0.0, String::new());
    for text in texts() {
        let times = (0..5).map(|_| {
            let started = Instant::now();
            read(black_box(&text));
            started.elapsed().as_secs_f64() * 1000.0
        });
        let per_kilobyte = times.fold(f64::MAX, f64::min) * 1024.0 / text.len().max(64) as f64;
        if per_kilobyte > worst.0 {
            worst = (per_kilobyte, text.chars().take(60).collect());
        }
    }
    worst
}

/// Bar: no text takes more than 10 ms a kilobyte.
fn no_text_is_slow(_: &mut Criterion) {
    let strict = slowest(|text| drop(sidewall::parse(text)));
    let camera = slowest(|text| drop(sidewall::candidates(text, 5)));
    println!("slowest of {} texts, ms/kB: strict {:.3} {:?}", texts().len(), strict.0, strict.1);
    println!("                         camera {:.3} {:?}", camera.0, camera.1);
    assert!(strict.0 <= 10.0 && camera.0 <= 10.0);
}

/// The real markings that hold a size. The two sides must find the same ones, or the comparison says nothing.
fn with_size(size: &Regex) -> Vec<&'static str> {
    let found: Vec<_> = real::REAL.into_iter().filter(|text| size.captures(text).is_some()).collect();
    let parsed: Vec<_> = real::REAL.into_iter().filter(|text| sidewall::parse(text).size.is_some()).collect();
    assert_eq!(found, parsed);
    found
}

fn grammar_beside_regex(c: &mut Criterion) {
    let size = RegexBuilder::new(SIZE).case_insensitive(true).build().expect("the expression is valid");
    let markings = with_size(&size);
    let mut group = c.benchmark_group("real markings");
    group.bench_function("regex finds the size", |b| {
        b.iter(|| markings.iter().filter(|text| size.find(black_box(text)).is_some()).count());
    });
    group.bench_function("regex takes the size apart", |b| {
        b.iter(|| markings.iter().filter_map(|text| size.captures(black_box(text))?.get(8)).count());
    });
    group.bench_function("whole grammar", |b| {
        b.iter(|| markings.iter().filter(|text| sidewall::parse(black_box(text)).size.is_some()).count());
    });
    group.bench_function("camera reader", |b| {
        b.iter(|| markings.iter().map(|text| sidewall::candidates(black_box(text), 5).len()).sum::<usize>());
    });
    group.finish();
}

criterion_group! {
    name = benches;
    config = Criterion::default()
        .sample_size(30)
        .warm_up_time(Duration::from_millis(500))
        .measurement_time(Duration::from_secs(2));
    targets = no_text_is_slow, grammar_beside_regex
}
criterion_main!(benches);
