//! Pixels and a host's texts: a reading, whatever they are.
#![no_main]

mod hostile;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    hostile::sight(bytes);
});
