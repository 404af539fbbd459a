//! The `lugbook` command: every step of a wheel-service job from a terminal.
//!
//! | file | what |
//! | --- | --- |
//! | `options` | what every command takes: book, person, time, language, units |
//! | `usage` | help by groups, and what was typed wrong in one sentence |
//! | `verbs` | the commands, one file a subject |
//! | `tongue` | the terminal's own sentences, in the language of the run |
//! | `next` | the one next thing to do, and the line to type for it |
//! | `answer` | JSON or plain lines, failures and exit codes |
//! | `key` | the device's key, in a file of its own |
//! | `pointer` | what was typed, with a mark under the place that a refusal is about |
//! | `secret` | codes, which never stand in the line itself |
//! | `demo` | the visit that `lugbook demo` plays |
//!
//! Nothing here knows the trade: commands go to the engine as they were typed.

mod answer;
mod demo;
mod key;
mod next;
mod options;
mod pointer;
mod secret;
mod tongue;
mod usage;
mod verbs;

use std::process::ExitCode;

use lugbook::words::Speech;

fn main() -> ExitCode {
    let typed: Vec<_> = std::env::args_os().collect();
    let json = typed.iter().any(|word| word == "--json");
    let lang = tongue::asked(&typed);
    let line = match usage::read(typed) {
        Ok(line) => line,
        Err(stop) => {
            tongue::speak(Speech { lang, ..Speech::default() });
            return stop.show(json);
        }
    };
    tongue::speak(line.options.speech());
    match verbs::run(line.verb, &line.options) {
        Ok(answer) => answer.show(line.options.json),
        Err(trouble) => answer::fail(&trouble, line.options.json),
    }
}
