//! Every sentence is there, short enough, and starts as instructions do.

mod entry;
mod photos;
mod procedure;
