//! Reading from photos: what holds without the models, and, where they are at hand, what is read on pictures of known
//! lettering.

mod host;
mod hostile;
mod rendered;
mod terminal;
mod wheels;

use std::path::PathBuf;
use std::sync::OnceLock;

use lugbook::sight::Models;

use crate::skipped::skipped;

/// The folder that `core/models/fetch` fills.
pub fn folder() -> PathBuf {
    let named = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    named("LUGBOOK_MODELS").unwrap_or_else(|| {
        let home = || PathBuf::from(std::env::var_os("HOME").unwrap_or_default()).join(".cache");
        named("XDG_CACHE_HOME").unwrap_or_else(home).join("lugbook/models")
    })
}

/// The models, or `None` where they were not fetched: then the caller's part is skipped, loudly.
pub fn models(part: &str) -> Option<&'static Models> {
    static MODELS: OnceLock<Option<Models>> = OnceLock::new();
    let loaded = MODELS.get_or_init(|| {
        let read = |name: &str| std::fs::read(folder().join(name)).ok();
        let models = Models::load(read("PP-OCRv6_det_small.onnx")?, read("PP-OCRv6_rec_small.onnx")?);
        Some(models.expect("fetched models load"))
    });
    if loaded.is_none() {
        skipped(&format!("{part}: the models are not here (core/models/fetch gets them)"));
    }
    loaded.as_ref()
}
