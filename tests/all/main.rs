//! What must hold, in one binary.
mod store;
mod drive;
mod due;
mod photos;
