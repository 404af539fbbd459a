//! Photo headers and pixels: kept whole with its renditions, or refused.
#![no_main]

mod hostile;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    hostile::photo(bytes);
});
