//! What must hold, in one binary.
mod drive;
mod due;
mod photos;
mod rotation;
mod sidewall;
mod standards;
mod store;
mod torque;
mod words;
