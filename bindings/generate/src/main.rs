//! `cargo run -p lugbook-generate`: builds the phone library, and writes the Kotlin and the Swift that call it
//! into `target/phone`, or into the folder that is named.

use anyhow::{Context, Result};
use camino::Utf8PathBuf;
use generate::{generate, library_beside};

fn main() -> Result<()> {
    let program = Utf8PathBuf::try_from(std::env::current_exe()?)?;
    let out = match std::env::args().nth(1) {
        Some(folder) => Utf8PathBuf::from(folder),
        None => program.ancestors().nth(2).context("this program lies in a target folder")?.join("phone"),
    };
    let library = library_beside(&program)?;
    generate(&library, &out)?;
    println!("Kotlin, Swift and libraries from {library} in {out}");
    Ok(())
}
