//! Sidewall markings against the tables of the trade.

use std::collections::HashMap;
use std::path::Path;

mod camera;
mod compare;
mod corpus;
mod generate;
mod mutation;
mod problems;
mod read;
mod real;
mod round_trip;
mod tables;
mod words;
mod worked;

/// The rows of a table in `standards/`, by column.
fn rows(table: &str) -> Vec<HashMap<String, String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("standards").join(table);
    let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    reader.deserialize().map(|row| row.unwrap()).collect()
}
