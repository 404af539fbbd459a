//! Codes that are typed: never in the line itself, which shells keep and other programs see.

use std::io::{self, BufRead, IsTerminal};

use lugbook::engine::{Code, Trouble};

use crate::options::mend;
use crate::tongue::say;

/// The longest line that is read as a code, in bytes.
const LONGEST: u64 = 1024;

/// Asks for a code: at a terminal without showing it, else the next line of what is piped in.
///
/// # Errors
/// When there is none, or it can't be read.
pub fn ask(question: &str) -> Result<Code, Trouble> {
    let typed =
        if io::stdin().is_terminal() { rpassword::prompt_password(format!("{question} ")) } else { next_line() };
    let typed = typed.map_err(|why| mend(say("no-code-read", &[("why", why.to_string().into())])))?;
    if typed.trim().is_empty() {
        return Err(mend(say("no-code", &[])));
    }
    Ok(typed.into())
}

/// Asks for a new code; at a terminal twice, since nobody sees what was typed.
///
/// # Errors
/// As [`ask`], and when the two differ.
pub fn ask_new(question: &str, again: &str) -> Result<Code, Trouble> {
    let code = ask(question)?;
    if io::stdin().is_terminal() && ask(again)? != code {
        return Err(mend(say("codes-differ", &[])));
    }
    Ok(code)
}

fn next_line() -> io::Result<String> {
    let mut line = String::new();
    // Read through one lock, line by line: what comes after belongs to the next question.
    let mut stdin = io::stdin().lock();
    io::Read::take(&mut stdin, LONGEST).read_line(&mut line)?;
    Ok(line.trim_end_matches(['\r', '\n']).to_owned())
}
