//! Entries, seals and cards: read or refused, never a panic.
#![no_main]

mod hostile;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    hostile::payload(bytes);
});
