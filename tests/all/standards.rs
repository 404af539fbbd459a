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

/// The texts between quotes in each test's source, by file.
fn quoted() -> Vec<(String, Vec<String>)> {
    fn walk(folder: &Path, found: &mut Vec<(String, Vec<String>)>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|ext| ext == "rs") && !path.ends_with("all/standards.rs") {
                let source = std::fs::read_to_string(&path).unwrap();
                let texts = source.lines().filter(|line| !line.trim_start().starts_with("//"));
                let texts = texts.flat_map(|line| line.split('"').skip(1).step_by(2)).map(str::to_owned).collect();
                found.push((path.display().to_string(), texts));
            }
        }
    }
    let mut found = Vec::new();
    walk(&Path::new(env!("CARGO_MANIFEST_DIR")).join("all"), &mut found);
    found
}

#[test]
fn every_table_is_read_by_a_test() {
    let quoted = quoted();
    for entry in std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("standards")).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let read = quoted.iter().any(|(_, texts)| texts.iter().any(|text| text.ends_with(&name)));
        assert!(read || name == "worked_examples.csv", "no test reads {name}");
    }
}

/// A row is claimed by a test that names the beginning of its check. The four that
/// say so themselves are no test vectors.
#[test]
fn every_worked_example_is_claimed_by_a_test() {
    let reads = |texts: &[String]| texts.iter().any(|text| text.ends_with("worked_examples.csv"));
    let mut claims: Vec<String> = Vec::new();
    for (file, texts) in quoted() {
        let calls = std::fs::read_to_string(&file).unwrap().contains("worked(\"");
        if reads(&texts) || calls {
            claims.extend(texts.into_iter().filter(|text| text.len() >= 3));
        }
    }
    let mut none = 0;
    for row in table("worked_examples.csv") {
        let check = row.text("check");
        if row.text("expected").to_lowercase().contains("not a test vector") {
            none += 1;
            continue;
        }
        let claimed = claims.iter().any(|claim| check.starts_with(claim.as_str()));
        assert!(claimed, "line {}: no test claims “{check}”", row.line);
    }
    assert_eq!(none, 4);
}
