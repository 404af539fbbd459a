//! Help by groups, and what was typed wrong in one sentence.

use std::ffi::OsString;
use std::fmt::Write as _;
use std::process::ExitCode;

use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{CommandFactory, FromArgMatches, Parser};

use crate::answer;
use crate::options::{Options, mend, shorten};
use crate::tongue::say;
use crate::verbs::{GROUPS, Verb};

/// A logbook and planner for wheel service: rotations, tread, tightening.
///
/// Say what you saw, measured or did, one line at a time; each is written once
/// and stays. `lugbook job` says the one next thing to do and the line to type
/// for it. The maker's manual, local rules and licensed practice come first.
#[derive(Debug, Parser)]
#[command(name = "lugbook", version, disable_help_subcommand = true, disable_help_flag = true, max_term_width = 80)]
pub struct Line {
    /// What to do.
    #[command(subcommand)]
    pub verb: Verb,

    /// Options of every command.
    #[command(flatten)]
    pub options: Options,

    /// Print this help
    #[arg(short, long, global = true, action = clap::ArgAction::HelpShort)]
    help: Option<bool>,
}

const EXAMPLES: &str = "\
A first job:
  lugbook person add \"Your name\"
  lugbook vehicle add \"Farm truck\" --model \"make, model, year\" --own
  lugbook job open \"Farm truck\" rotation-with-jack-and-stands hand-tools
  lugbook job

Positions are FL FR RL RR and SP, or LF RF LR RR; both are understood.
Values are a number and its unit: \"7/32\", \"5,2 mm\", \"45 psi\", \"140 N.m\".
\"lugbook COMMAND --help\" explains one command. LUGBOOK_BOOK, LUGBOOK_AS,
LUGBOOK_LANG and LUGBOOK_UNITS stand in for the options of these names.";

/// The top-level help: commands in the order of a visit.
fn command() -> clap::Command {
    let plain = Line::command();
    let mut list = String::new();
    for (title, verbs) in GROUPS {
        let _ = writeln!(list, "{title}:");
        for verb in *verbs {
            let about = plain.find_subcommand(verb).and_then(clap::Command::get_about);
            let _ = writeln!(list, "  {verb:<13} {}", about.map(ToString::to_string).unwrap_or_default());
        }
        list.push('\n');
    }
    let about = textwrap::fill(&plain.get_long_about().map(ToString::to_string).unwrap_or_default(), 80);
    let template =
        format!("{about}\n\nUsage: lugbook COMMAND [OPTIONS]\n\n{list}Options:\n{{options}}\n\n{{after-help}}\n");
    plain.help_template(template).after_help(EXAMPLES)
}

/// Reads what was typed.
pub fn read(typed: Vec<OsString>) -> Result<Line, Stop> {
    let mut command = command();
    let matches = command.try_get_matches_from_mut(typed).map_err(|why| Stop(Box::new(why)))?;
    Line::from_arg_matches(&matches).map_err(|why| Stop(Box::new(why)))
}

/// Help was asked for, or something was typed wrong.
#[derive(Debug)]
pub struct Stop(Box<clap::Error>);

impl Stop {
    /// Prints the help, or the sentence.
    pub fn show(&self, json: bool) -> ExitCode {
        match self.0.kind() {
            ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
                answer::print(&self.0.render().to_string()).unwrap_or(ExitCode::SUCCESS)
            }
            _ => answer::fail(&mend(self.sentence()), json),
        }
    }

    fn word(&self, kind: ContextKind) -> Option<String> {
        match self.0.get(kind)? {
            ContextValue::String(word) => Some(shorten(word)),
            ContextValue::Strings(words) => Some(words.iter().map(|w| shorten(w)).collect::<Vec<_>>().join(", ")),
            _ => None,
        }
    }

    /// The command that was meant, as far as it was understood: `lugbook tool wrench`.
    fn command(&self) -> String {
        let usage = match self.0.get(ContextKind::Usage) {
            Some(ContextValue::StyledStr(usage)) => usage.to_string(),
            _ => String::new(),
        };
        let words: Vec<_> = usage
            .trim_start_matches("Usage:")
            .split_whitespace()
            .take_while(|word| word.chars().all(|c| c.is_ascii_lowercase() || c == '-') && !word.starts_with('-'))
            .collect();
        if words.is_empty() { "lugbook".to_owned() } else { words.join(" ") }
    }

    /// What was typed wrong, and what would do.
    fn sentence(&self) -> String {
        let command = self.command();
        let given = self.word(ContextKind::InvalidValue).unwrap_or_default();
        let arg = self.word(ContextKind::InvalidArg).unwrap_or_default();
        let told = |id: &str, more: &[(&str, &str)]| {
            let own = [("command", command.as_str()), ("given", given.as_str()), ("arg", arg.as_str())];
            let args: Vec<_> = own.iter().chain(more).map(|(name, text)| (*name, (*text).into())).collect();
            say(&format!("line-{id}"), &args)
        };
        match self.0.kind() {
            ErrorKind::InvalidSubcommand => {
                let word = self.word(ContextKind::InvalidSubcommand).unwrap_or_default();
                match self.word(ContextKind::SuggestedSubcommand) {
                    Some(near) => told("no-command-near", &[("word", &word), ("near", &near)]),
                    None => told("no-command", &[("word", &word)]),
                }
            }
            ErrorKind::UnknownArgument => told("out-of-place", &[]),
            ErrorKind::InvalidValue if given.is_empty() => told("no-value", &[]),
            ErrorKind::InvalidValue => match self.word(ContextKind::ValidValue) {
                Some(good) => told("one-of", &[("good", &good)]),
                None => told("bad-value", &[]),
            },
            ErrorKind::ValueValidation => told("bad-value", &[]),
            ErrorKind::MissingRequiredArgument => told("missing", &[]),
            ErrorKind::MissingSubcommand | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
                told("what-to-do", &[])
            }
            ErrorKind::ArgumentConflict => {
                let other = self.word(ContextKind::PriorArg).unwrap_or_default();
                if other.is_empty() || other == arg { told("once", &[]) } else { told("apart", &[("other", &other)]) }
            }
            ErrorKind::TooManyValues | ErrorKind::TooFewValues | ErrorKind::WrongNumberOfValues => {
                told("number-of-values", &[])
            }
            ErrorKind::InvalidUtf8 => told("not-text", &[]),
            _ => told("not-understood", &[]),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_command_stands_in_one_group_of_the_help() {
        Line::command().debug_assert();
        let mut grouped: Vec<_> = GROUPS.iter().flat_map(|(_, verbs)| verbs.iter().copied()).collect();
        let mut known: Vec<_> = Line::command().get_subcommands().map(|c| c.get_name().to_owned()).collect();
        grouped.sort_unstable();
        known.sort_unstable();
        assert_eq!(grouped, known);
    }

    #[test]
    fn help_keeps_to_eighty_columns() {
        let mut line = command();
        let mut pages = vec![line.render_long_help().to_string()];
        line.build();
        let mut rest: Vec<_> = line.get_subcommands().cloned().collect();
        while let Some(mut verb) = rest.pop() {
            pages.push(verb.render_long_help().to_string());
            rest.extend(verb.get_subcommands().cloned());
        }
        let long: Vec<_> = pages.iter().flat_map(|p| p.lines()).filter(|l| l.chars().count() > 80).collect();
        assert!(pages.len() > 40 && long.is_empty(), "{} pages, {long:#?}", pages.len());
    }
}
