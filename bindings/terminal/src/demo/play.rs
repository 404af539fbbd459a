//! Running the program itself, once a line, and killing it once.

use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::time::{Duration, Instant};

use lugbook::engine::{Trouble, TroubleKind};
use serde_json::Value;

use crate::options::Options;
use crate::tongue::say;
use crate::verbs::cannot;

/// The book that the visit is played on, and the program that plays it.
pub struct Stage {
    program: PathBuf,
    book: PathBuf,
    lang: String,
    units: String,
}

impl Stage {
    /// A stage in a folder.
    pub fn new(folder: &Path, options: &Options) -> Result<Self, Trouble> {
        let program = std::env::current_exe().map_err(|why| disk("found", "lugbook", &why))?;
        let code = |value: Value| value.as_str().unwrap_or_default().to_owned();
        Ok(Self {
            program,
            book: folder.join("book"),
            lang: code(serde_json::json!(options.lang)),
            units: code(serde_json::json!(options.units)),
        })
    }

    /// The process for a line, on this stage's book.
    fn process(&self, line: &str, json: bool) -> Result<Command, Trouble> {
        let words = shell_words::split(line).map_err(|why| report(line, &why.to_string()))?;
        let mut process = Command::new(&self.program);
        process.args(words.iter().skip(1));
        if json {
            process.arg("--json");
        }
        for name in ["LUGBOOK_AS", "LUGBOOK_AT", "LUGBOOK_LETTERS", "LUGBOOK_DECIMAL"] {
            process.env_remove(name);
        }
        process.env("LUGBOOK_BOOK", &self.book).env("LUGBOOK_LANG", &self.lang).env("LUGBOOK_UNITS", &self.units);
        process.stdin(Stdio::null());
        Ok(process)
    }

    fn output(&self, line: &str, json: bool) -> Result<Output, Trouble> {
        let output = self.process(line, json)?.output().map_err(|why| disk("run", "lugbook", &why))?;
        if output.status.success() {
            return Ok(output);
        }
        Err(report(line, String::from_utf8_lossy(&output.stderr).trim()))
    }

    /// Runs a line, and gives what it said, indented; of a question everything,
    /// of a command what comes before the next thing to do.
    pub fn run(&self, line: &str) -> Result<String, Trouble> {
        let output = self.output(line, false)?;
        let text = String::from_utf8_lossy(&output.stdout);
        let question = ["lugbook job", "lugbook plan"].contains(&line);
        let said = if question { &text } else { text.split("\n\n").next().unwrap_or_default() };
        let only_next = said.lines().any(|said| said.starts_with(&format!("{}  ", say("next", &[]))));
        if only_next && !question {
            return Ok(String::new());
        }
        Ok(said.lines().map(|said| format!("    {said}").trim_end().to_owned() + "\n").collect())
    }

    fn entries(&self) -> Result<u64, Trouble> {
        let output = self.output("lugbook book check", true)?;
        let check: Value =
            serde_json::from_slice(&output.stdout).map_err(|why| report("lugbook book check", &why.to_string()))?;
        Ok(check.get("entries").and_then(Value::as_u64).unwrap_or_default())
    }

    /// Starts a line that takes in a photo, kills it while the photo is being
    /// written, shows that the book is whole, and runs the line again unless
    /// its entry was kept.
    pub fn kill(&self, line: &str) -> Result<String, Trouble> {
        let before = self.entries()?;
        let mut child = self
            .process(line, false)?
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|why| disk("run", "lugbook", &why))?;
        let incoming = self.book.join("photos/incoming");
        let part = child.id().to_string();
        let begun = Instant::now();
        let mut writing = false;
        while !writing && begun.elapsed() < Duration::from_secs(5) && matches!(child.try_wait(), Ok(None)) {
            writing = std::fs::read_dir(&incoming).is_ok_and(|files| {
                files.flatten().any(|file| file.file_name().to_string_lossy().starts_with(&format!("{part}-")))
            });
            std::thread::sleep(Duration::from_micros(200));
        }
        // A child that has ended by itself can't be killed; what it kept is seen below.
        let _ = child.kill();
        let status = child.wait().map_err(|why| disk("waited-for", "lugbook", &why))?;
        let mut text = String::new();
        if !status.success() {
            for line in textwrap::wrap(&say("demo-killed", &[]), 76) {
                text.push_str(&format!("    {line}\n"));
            }
        }
        text.push_str(&format!("lugbook book check\n{}", self.run("lugbook book check")?));
        let said = if self.entries()? == before { self.run(line)? } else { String::new() };
        text.push_str(&format!("{line}\n{said}"));
        Ok(text)
    }
}

/// A line of the visit that did not go as it should.
fn report(line: &str, why: &str) -> Trouble {
    Trouble {
        kind: TroubleKind::Report,
        sentence: say("demo-stopped", &[("line", line.into()), ("why", why.into())]),
        at: Some(line.to_owned()),
        pointer: None,
    }
}

/// What can't be done with a folder, a file or the program.
pub fn disk(what: &str, name: &str, why: &std::io::Error) -> Trouble {
    let kind = match why.kind() {
        std::io::ErrorKind::StorageFull | std::io::ErrorKind::QuotaExceeded => TroubleKind::FreeSpace,
        std::io::ErrorKind::Interrupted | std::io::ErrorKind::WouldBlock => TroubleKind::TryAgain,
        _ => TroubleKind::MendInput,
    };
    Trouble { kind, sentence: cannot(what, name, why), at: None, pointer: None }
}
