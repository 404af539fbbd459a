//! What can't be tested on this machine: told loudly and counted, never passed in silence.

use std::io::Write;

/// Says that a test, or a part of one, is skipped. `tests/run` counts these lines.
pub fn skipped(reason: &str) {
    eprintln!("SKIPPED: {reason}");
    if let Some(list) = std::env::var_os("LUGBOOK_SKIPPED") {
        let mut list = std::fs::File::options().append(true).create(true).open(list).expect("the list of skips");
        writeln!(list, "{reason}").expect("the list of skips");
    }
}
