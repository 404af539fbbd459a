//! The `lugbook` program as a person runs it: one process a line.

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::sync::OnceLock;

use serde_json::Value;

/// The program, built once with the same settings as these tests.
pub fn lugbook() -> &'static Path {
    static PROGRAM: OnceLock<PathBuf> = OnceLock::new();
    PROGRAM.get_or_init(|| {
        // A copy for a long run, so that it is not built anew in between.
        if let Some(program) = std::env::var_os("LUGBOOK_PROGRAM") {
            return program.into();
        }
        let mut build = Command::new(env!("CARGO"));
        build.args(["build", "--quiet", "--package", "lugbook-terminal", "--message-format", "json"]);
        if !cfg!(debug_assertions) {
            build.arg("--release");
        }
        let built = build.current_dir(root()).stderr(Stdio::inherit()).output().expect("cargo runs");
        assert!(built.status.success(), "the program builds");
        let artifact = String::from_utf8_lossy(&built.stdout)
            .lines()
            .filter_map(|line| serde_json::from_str::<Value>(line).ok())
            .filter_map(|message| message["executable"].as_str().map(PathBuf::from))
            .next_back();
        artifact.expect("cargo names the program")
    })
}

/// The workspace.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("tests/ stands in the workspace")
}

/// A process for a line such as `lugbook chalk FL`, on a book.
pub fn process(book: &Path, line: &str) -> Command {
    let words = shell_words::split(line).unwrap_or_else(|why| panic!("{line}: {why}"));
    assert_eq!(words[0], "lugbook", "{line}");
    with(book, &words[1..])
}

/// A process with these words, on a book.
pub fn with<S: AsRef<std::ffi::OsStr>>(book: &Path, words: &[S]) -> Command {
    let mut process = Command::new(lugbook());
    // Beside the book: what a slip would write must not land among the sources.
    let here = book.parent().filter(|folder| folder.is_dir()).map_or_else(std::env::temp_dir, Path::to_owned);
    process.args(words).env("LUGBOOK_BOOK", book).current_dir(here).stdin(Stdio::null());
    // A device of the tests' own: its key is not this user's.
    process.env("XDG_STATE_HOME", env!("CARGO_TARGET_TMPDIR"));
    for name in ["LUGBOOK_AS", "LUGBOOK_AT", "LUGBOOK_LANG", "LUGBOOK_UNITS", "LUGBOOK_LETTERS", "LUGBOOK_DECIMAL"] {
        process.env_remove(name);
    }
    process
}

/// What a process said.
#[derive(Debug)]
pub struct Said {
    /// The exit code; none when it was killed.
    pub code: Option<i32>,
    /// Standard output.
    pub out: String,
    /// Standard error.
    pub err: String,
}

impl From<Output> for Said {
    fn from(output: Output) -> Self {
        Self {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).expect("answers are UTF-8"),
            err: String::from_utf8(output.stderr).expect("sentences are UTF-8"),
        }
    }
}

impl Said {
    /// The JSON object on standard output.
    pub fn json(&self) -> Value {
        let value: Value = serde_json::from_str(&self.out).unwrap_or_else(|why| panic!("{why}: {self:?}"));
        assert!(value.is_object() && self.out.trim_end().lines().count() == 1, "one object: {self:?}");
        value
    }

    /// The refusal's one sentence.
    pub fn sentence(&self) -> &str {
        let sentence = self.err.trim_end();
        assert!(!sentence.is_empty() && sentence.lines().count() == 1, "one sentence: {self:?}");
        sentence
    }
}

/// Runs a line on a book.
pub fn say(book: &Path, line: &str) -> Said {
    process(book, line).output().expect("the program runs").into()
}

/// Runs a line that must be done.
pub fn done(book: &Path, line: &str) -> Said {
    let said = say(book, line);
    assert_eq!(said.code, Some(0), "{line}: {said:?}");
    said
}

/// The lines of the demo's visit, as a person finds them in its file.
pub fn visit(pictures: &Path, card: &Path) -> Vec<String> {
    let text = std::fs::read_to_string(root().join("bindings/terminal/demo/visit.txt")).expect("the visit is there");
    text.lines()
        .map(|line| line.trim_start_matches('!'))
        .filter(|line| line.starts_with("lugbook "))
        .map(|line| {
            line.replace("{pictures}", &pictures.display().to_string())
                .replace("{card}", &card.display().to_string())
                .replace("{calibrated}", "2024-03-02")
        })
        .collect()
}

/// The folder with the demo's pictures.
pub fn pictures() -> PathBuf {
    root().join("bindings/terminal/demo")
}
