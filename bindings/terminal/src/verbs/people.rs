//! People.

use clap::{Args, Subcommand};
use lugbook::engine::{Command, Trouble};
use lugbook::entry::Role;

use super::codes::code;
use crate::answer::{Answer, Page};
use crate::options::{Absent, Options};

/// What can be said of people.
#[derive(Debug, Subcommand)]
pub enum Person {
    /// Add a person; the first one begins the book
    Add(Add),
    /// List the people
    List,
}

/// A person.
#[derive(Debug, Args)]
#[command(after_help = "Example:\n  lugbook person add \"Rosa Keane\" --role mechanic")]
pub struct Add {
    /// The name, as it stands on the card
    name: String,
    /// What the person does: customers approve, the others work
    #[arg(long, default_value = "mechanic",
          value_parser = code::<Role>(&["mechanic", "apprentice", "instructor", "customer"]))]
    role: Role,
    /// A phone number; kept apart, so that it can be erased
    #[arg(long, value_name = "NUMBER", allow_hyphen_values = true)]
    phone: Option<String>,
}

impl Person {
    /// Says it, or lists.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        match self {
            Self::Add(Add { name, role, phone }) => {
                let change = options.act(Command::AddPerson { name, role, phone }, Absent::Make)?;
                Answer::of_change(&change)
            }
            Self::List => {
                let front = options.open(Absent::Refuse)?.front(options.speech());
                let mut page = Page::default();
                page.table(&front.people.iter().map(|p| vec![p.name.clone(), p.role.clone()]).collect::<Vec<_>>());
                Answer::new(&serde_json::json!({"people": front.people}), page)
            }
        }
    }
}
