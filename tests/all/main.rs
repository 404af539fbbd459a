//! What must hold, in one binary.
mod drive;
mod photos;
mod due;
