//! Reads the tables under `tests/`.

use std::collections::HashMap;
use std::path::Path;

/// One row by column name, with its line in the file.
#[derive(Debug, Clone)]
pub struct Row {
    /// The line, the header being line 1.
    pub line: usize,
    cells: HashMap<String, String>,
}

impl Row {
    /// The cell of a column that must exist.
    pub fn text(&self, column: &str) -> &str {
        self.cells.get(column).unwrap_or_else(|| panic!("no column {column}"))
    }

    /// The number in a cell.
    pub fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("line {}: {column} is {text}", self.line))
    }
}

/// All rows of a table in `standards/`.
pub fn table(name: &str) -> Vec<Row> {
    read("standards", name)
}

/// All rows of a table in `vectors/`.
pub fn vectors(name: &str) -> Vec<Row> {
    read("vectors", name)
}

/// The worked examples whose check begins with a word.
pub fn worked(check: &str) -> Vec<Row> {
    let rows: Vec<Row> =
        table("worked_examples.csv").into_iter().filter(|row| row.text("check").starts_with(check)).collect();
    assert!(!rows.is_empty(), "no worked example of {check}");
    rows
}

fn read(folder: &str, name: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder).join(name);
    let mut reader = csv::Reader::from_path(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
    let names = reader.headers().unwrap().clone();
    let rows: Vec<Row> = reader
        .records()
        .enumerate()
        .map(|(at, record)| {
            let record = record.unwrap_or_else(|e| panic!("{name}: {e}"));
            let cells = names.iter().zip(&record).map(|(n, c)| (n.to_owned(), c.to_owned())).collect();
            Row { line: at + 2, cells }
        })
        .collect();
    assert!(!rows.is_empty(), "{name} is empty");
    rows
}

/// The first number in a text: `set 214.29` gives 214.29.
pub fn first_number(text: &str) -> f64 {
    numbers(text).first().copied().unwrap_or_else(|| panic!("no number in {text}"))
}

/// All numbers in a text, in order; a sign counts only where a space stands before it.
pub fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'))
        .filter_map(|part| part.trim_end_matches(['.', '-']).parse().ok())
        .collect()
}
