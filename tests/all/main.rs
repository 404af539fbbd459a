//! What must hold, in one binary.
mod drive;
mod due;
mod photos;
mod rotation;
mod standards;
mod torque;
mod words;
mod store;
mod words;

mod sidewall;
