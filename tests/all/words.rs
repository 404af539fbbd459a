//! Every sentence is there, short enough, and starts as instructions do.

mod entry;
pub mod languages;
mod photos;
mod procedure;
