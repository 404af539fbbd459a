//! What must hold, in one binary.
mod rotation;
mod drive;
mod due;
mod photos;
mod standards;
mod torque;
mod words;
mod store;

mod sidewall;
