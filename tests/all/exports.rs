//! What goes out of the book, read back by libraries that know nothing of it.

mod cover;
mod history;
pub mod paper;
mod reminder;
mod spreadsheet;
