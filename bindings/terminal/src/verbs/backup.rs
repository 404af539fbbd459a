//! Copies of the book that outlive this device, and what they give back.

use std::io::IsTerminal;
use std::path::{Path, PathBuf};

use clap::{Args, Subcommand};
use lugbook::engine::{BackupView, Trouble, backup_is_locked};

use super::cannot;
use crate::answer::{Answer, Page};
use crate::options::{Absent, AtWord, Options, mend, named};
use crate::tongue::say;

/// Alone, how backups stand.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  lugbook backup into /media/card/lugbook
  lugbook backup lock
  lugbook backup now --into /mnt/office

Each backup is one zip file with every entry and photo, read back when it is
written. Older ones thin out: all of the last hour, then one an hour for a day,
one a day for two weeks, one a week for half a year.")]
pub struct Backups {
    #[command(subcommand)]
    what: Option<Backup>,
}

/// What can be done about backups.
#[derive(Debug, Subcommand)]
pub enum Backup {
    /// Choose the folder that backups go to by themselves, and make one now
    Into {
        /// The folder; it must be there
        folder: PathBuf,
    },
    /// Make a backup now
    Now {
        /// Another folder than the chosen one
        #[arg(long, value_name = "FOLDER")]
        into: Option<PathBuf>,
    },
    /// Make no more backups by themselves; those that are there stay
    Off,
    /// Lock new backups with a passphrase
    Lock(Passphrase),
    /// Lock new backups no more; old ones stay locked
    Unlock,
}

/// Where a passphrase comes from.
#[derive(Debug, Args)]
pub struct Passphrase {
    /// A file with the passphrase as its first line; without it you are asked
    #[arg(long, value_name = "FILE")]
    passphrase_file: Option<PathBuf>,
}

/// Taking a backup in.
#[derive(Debug, Args)]
#[command(after_help = "\
Example:
  lugbook restore /media/card/lugbook/lugbook-2026-11-24-1795511700000-9F3K.zip

What the book has not is taken in, nothing is overwritten, and doing it twice
does no harm. Restoring into a book that is not there makes it.")]
pub struct Restore {
    /// The backup
    file: PathBuf,
    #[command(flatten)]
    passphrase: Passphrase,
}

impl Backups {
    /// Carries it out.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let (mut engine, speech) = (options.open(Absent::Refuse)?, options.speech());
        let view = match self.what {
            None => engine.backups(speech),
            Some(Backup::Into { folder }) => engine.back_up_into(Some(&folder), speech)?,
            Some(Backup::Off) => engine.back_up_into(None, speech)?,
            Some(Backup::Now { into }) => engine.back_up(into.as_deref(), speech)?,
            Some(Backup::Lock(passphrase)) => {
                let chosen = passphrase.read(Twice::Yes)?.ok_or_else(|| mend(say("no-passphrase", &[])))?;
                engine.lock_backups(Some(&chosen), speech)?
            }
            Some(Backup::Unlock) => engine.lock_backups(None, speech)?,
        };
        let mut page = Page::default();
        lines(&view, &mut page);
        Answer::new(&view, page)
    }
}

/// How backups stand, for people.
pub fn lines(view: &BackupView, page: &mut Page) {
    for sentence in view.sentences.iter().chain(&view.trouble) {
        page.line(sentence);
    }
    if view.into.is_none() {
        page.line(&say("backup-how", &[]));
    }
}

impl Restore {
    /// Takes it in.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let speech = options.speech();
        // Asked before a book is made for it.
        let passphrase = match backup_is_locked(&self.file, speech)? {
            true => Some(self.passphrase.read(Twice::No)?.ok_or_else(|| mend(say("no-passphrase", &[])))?),
            false => None,
        };
        let view = options.open(Absent::Make)?.restore(&self.file, passphrase.as_deref(), speech)?;
        let mut page = Page::default();
        for sentence in &view.sentences {
            page.line(sentence);
        }
        Answer::new(&view, page)
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Twice {
    Yes,
    No,
}

impl Passphrase {
    /// The passphrase from the file, or asked for at the keyboard; none where nobody can be asked.
    fn read(&self, twice: Twice) -> Result<Option<String>, Trouble> {
        if let Some(file) = &self.passphrase_file {
            return first_line(file).map(Some);
        }
        if !std::io::stdin().is_terminal() {
            return Ok(None);
        }
        let ask = |id: &str| {
            rpassword::prompt_password(format!("{} ", say(id, &[])))
                .map_err(|why| mend(cannot("read", &say("passphrase", &[]), &why)))
        };
        let typed = ask("passphrase-ask")?;
        if twice == Twice::Yes && ask("passphrase-again")? != typed {
            return Err(mend(say("passphrase-differs", &[])));
        }
        Ok(Some(typed))
    }
}

fn first_line(file: &Path) -> Result<String, Trouble> {
    let text = std::fs::read_to_string(file)
        .map_err(|why| mend(cannot("read", &named(file), &why)).at_word("--passphrase-file"))?;
    Ok(text.lines().next().unwrap_or_default().to_owned())
}
