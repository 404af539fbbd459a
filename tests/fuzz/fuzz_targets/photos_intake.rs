//! Photos of any bytes: never a panic, refused or kept whole, and nothing left over.
#![no_main]

use std::collections::BTreeSet;
use std::sync::LazyLock;
use std::time::{Duration, Instant};

use libfuzzer_sys::fuzz_target;
use lugbook::calendar::Moment;
use lugbook::ident::Digest;
use lugbook::photos::{PhotoError, Photos, Rendition};

static PHOTOS: LazyLock<Photos> = LazyLock::new(|| {
    let memory = std::path::Path::new("/dev/shm");
    let folder = if memory.is_dir() { memory.to_owned() } else { std::env::temp_dir() };
    Photos::open(folder.join(format!("lugbook-fuzz-{}", std::process::id()))).expect("a folder for photos")
});

fuzz_target!(|bytes: &[u8]| {
    let started = Instant::now();
    match PHOTOS.intake_bytes(bytes, Moment::from_unix_ms(0)) {
        Ok(taken_in) => {
            assert_eq!(taken_in.id, Digest::of(bytes));
            assert!(taken_in.width > 0 && taken_in.height > 0);
            assert!(PHOTOS.check([taken_in.id]).problems.is_empty());
            let shared = PHOTOS.share(taken_in.id, Rendition::Small).expect("what was kept is shown");
            assert!(shared.starts_with(&[0xff, 0xd8]) && shared.ends_with(&[0xff, 0xd9]));
            let later = Moment::from_unix_ms(86_400_000);
            let swept = PHOTOS.sweep(&BTreeSet::new(), later, Duration::ZERO).expect("a sweep");
            assert_eq!(swept.photos, [taken_in.id]);
        }
        Err(PhotoError::Refused(_)) => assert!(PHOTOS.kept().expect("a listing").is_empty()),
        Err(other) => panic!("{other:?}"),
    }
    let took = started.elapsed();
    assert!(took < Duration::from_secs(20), "{took:?} for {} bytes", bytes.len());
});
