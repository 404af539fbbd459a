//! What must hold, in one binary.
mod drive;
mod due;
mod photos;
mod words;
