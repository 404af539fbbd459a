//! EXIF notes: whatever they say, the picture is kept.
#![no_main]

mod hostile;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    hostile::exif(bytes);
});
