//! Backups: nothing is believed that does not hold, nothing is written outside.
#![no_main]

mod hostile;

use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    hostile::backup(bytes);
});
