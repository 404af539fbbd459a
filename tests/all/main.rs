//! What must hold, in one binary.
mod drive;
mod due;
mod photos;
mod rotation;
mod store;
mod words;

mod sidewall;
