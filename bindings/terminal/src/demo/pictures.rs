//! The photos of the visit, drawn by the project's own renderer.

use std::path::Path;

use lugbook::engine::Trouble;

use super::play::disk;
use crate::options::named;

macro_rules! pictures {
    ($($name:literal)*) => {
        const PICTURES: &[(&str, &[u8])] = &[$(($name, include_bytes!(concat!("../../demo/", $name)))),*];
    };
}

pictures! {
    "placard.jpg" "manual-page.jpg" "hub-rear-left.jpg" "cut-rear-left.jpg"
    "sidewall-front-left.jpg" "sidewall-front-right.jpg" "sidewall-rear-left.jpg" "sidewall-rear-right.jpg"
}

/// Writes them into a folder.
pub fn write(folder: &Path) -> Result<(), Trouble> {
    let trouble = |why: &std::io::Error| disk("written", &named(folder), why);
    std::fs::create_dir_all(folder).map_err(|why| trouble(&why))?;
    for (name, bytes) in PICTURES {
        std::fs::write(folder.join(name), bytes).map_err(|why| trouble(&why))?;
    }
    Ok(())
}
