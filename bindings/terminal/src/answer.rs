//! What goes out: one JSON object, or plain lines of at most 80 columns.

use std::io::{self, Write};
use std::process::ExitCode;

use lugbook::engine::{Change, Trouble, TroubleKind};
use serde::Serialize;
use serde_json::{Value, json};

use crate::tongue::say;
use crate::{next, pointer};

/// The width that plain lines keep: 80 columns less the demo's indent.
const WIDTH: usize = 76;

/// An answer, both as data and as lines.
#[derive(Debug, Clone)]
pub struct Answer {
    data: Value,
    lines: String,
    exit: u8,
    /// A refusal that goes with it: what was understood is still told.
    trouble: Option<Trouble>,
}

impl Answer {
    /// An answer with its data and its lines.
    pub fn new(data: &impl Serialize, page: Page) -> Result<Self, Trouble> {
        let data = serde_json::to_value(data).map_err(|why| Trouble {
            kind: TroubleKind::Report,
            sentence: say("not-json", &[("why", why.to_string().into())]),
            at: None,
            pointer: None,
        })?;
        Ok(Self { data, lines: page.0, exit: 0, trouble: None })
    }

    /// What a command changed: what was understood, and what to do next.
    pub fn of_change(change: &Change) -> Result<Self, Trouble> {
        let mut page = Page::default();
        for sentence in &change.said {
            page.line(sentence);
        }
        if !change.said.is_empty() {
            page.gap();
        }
        match &change.next {
            Some(next) => next::print(next, &mut page),
            None => page.line(&next::no_job()),
        }
        let mut answer = Self::new(change, page)?;
        if let (Some(next), Some(object)) = (&change.next, answer.data.as_object_mut()) {
            object.insert("next".to_owned(), next::data(next));
        }
        Ok(answer)
    }

    /// What was taken back, and the line that says it again, above the next thing to do.
    pub fn of_undo(change: &Change, again: Option<String>) -> Result<Self, Trouble> {
        let mut answer = Self::of_change(change)?;
        if let Some(line) = &again {
            answer.lines = format!("{}  {line}\n{}", say("again", &[]), answer.lines);
        }
        if let Some(object) = answer.data.as_object_mut() {
            object.insert("type".to_owned(), json!(again));
        }
        Ok(answer)
    }

    /// The same, with another exit code.
    pub fn exit(self, code: u8) -> Self {
        Self { exit: code, ..self }
    }

    /// The same, refused: what was understood is told, with the refusal beside it.
    pub fn refused(mut self, trouble: Trouble) -> Self {
        if let Some(object) = self.data.as_object_mut() {
            object.insert("error".to_owned(), error(&trouble));
        }
        Self { trouble: Some(trouble), ..self }
    }

    /// Prints it.
    pub fn show(&self, json: bool) -> ExitCode {
        if let Some(trouble) = &self.trouble {
            let written = if json { print(&format!("{}\n", self.data)) } else { None };
            return written.unwrap_or_else(|| told(trouble, json));
        }
        let written = if json { print(&format!("{}\n", self.data)) } else { print(&self.lines) };
        written.unwrap_or(ExitCode::from(self.exit))
    }
}

/// Prints a refusal: one sentence, and the object when JSON was asked for. For
/// people what was typed stands before it with a mark under the place, and what
/// to look at or type next ends it.
pub fn fail(trouble: &Trouble, json: bool) -> ExitCode {
    if json {
        let object = json!({"error": error(trouble)});
        if let Some(code) = print(&format!("{object}\n")) {
            return code;
        }
    }
    told(trouble, json)
}

/// Tells a refusal on the error stream.
fn told(trouble: &Trouble, json: bool) -> ExitCode {
    let mut sentence = one_line(&trouble.sentence);
    if let Some(pointer) = trouble.pointer.as_ref().filter(|_| !json) {
        sentence = format!("{sentence} {}", one_line(&pointer.next)).trim_end().to_owned();
        if !pointer.text.trim().is_empty() {
            let lines = pointer::lines(&pointer.text, pointer.at, pointer.len);
            sentence = format!("{}\n{sentence}", lines.join("\n"));
        }
    }
    // Nobody is left to tell when the error stream is gone too.
    let _ = writeln!(io::stderr(), "{sentence}");
    ExitCode::from(match trouble.kind {
        TroubleKind::MendInput => 2,
        TroubleKind::Held => 3,
        TroubleKind::FreeSpace | TroubleKind::TryAgain | TroubleKind::Restore | TroubleKind::Report => 4,
    })
}

fn error(trouble: &Trouble) -> Value {
    json!({"kind": trouble.kind.code(), "sentence": one_line(&trouble.sentence), "at": trouble.at})
}

/// Writes to the screen, a file or a pipe; a code to end with when that fails.
pub fn print(text: &str) -> Option<ExitCode> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => None,
        // The reader has seen enough, as `head` does.
        Err(why) if why.kind() == io::ErrorKind::BrokenPipe => Some(ExitCode::SUCCESS),
        Err(why) => {
            let _ = writeln!(io::stderr(), "{}", say("not-written-out", &[("why", why.to_string().into())]));
            Some(ExitCode::from(4))
        }
    }
}

fn one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Plain lines for a screen as narrow as a phone's terminal.
#[derive(Debug, Clone, Default)]
pub struct Page(String);

impl Page {
    /// A sentence, wrapped.
    pub fn line(&mut self, text: &str) {
        self.indented("", text);
    }

    /// A sentence behind a first word; wrapped lines stand under the sentence.
    pub fn indented(&mut self, first: &str, text: &str) {
        let rest = " ".repeat(textwrap::core::display_width(first));
        let options = textwrap::Options::new(WIDTH)
            .initial_indent(first)
            .subsequent_indent(&rest)
            .break_words(false)
            .word_splitter(textwrap::WordSplitter::NoHyphenation);
        if text.trim().is_empty() {
            self.push(first.trim_end());
            return;
        }
        for line in textwrap::wrap(text, options) {
            self.push(line.trim_end());
        }
    }

    /// A line as it is.
    pub fn push(&mut self, line: &str) {
        self.0.push_str(line);
        self.0.push('\n');
    }

    /// An empty line, unless one stands there or nothing does.
    pub fn gap(&mut self) {
        if !self.0.is_empty() && !self.0.ends_with("\n\n") {
            self.0.push('\n');
        }
    }

    /// Rows in columns, each as wide as its widest word; the last one wraps.
    pub fn table(&mut self, rows: &[Vec<String>]) {
        let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
        let width = |column: usize| {
            rows.iter().filter_map(|row| row.get(column)).map(|cell| textwrap::core::display_width(cell)).max()
        };
        let widths: Vec<usize> = (0..columns).map(|column| width(column).unwrap_or(0)).collect();
        for row in rows {
            let mut first = String::new();
            let (last, before) = match row.split_last() {
                Some((last, before)) => (last.as_str(), before),
                None => continue,
            };
            for (cell, width) in before.iter().zip(&widths) {
                let space = width.saturating_sub(textwrap::core::display_width(cell)).saturating_add(2);
                first.push_str(cell);
                first.push_str(&" ".repeat(space));
            }
            self.indented(&first, last);
        }
    }
}
