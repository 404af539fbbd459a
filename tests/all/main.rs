//! What must hold, in one binary.
mod drive;
mod due;
mod inflation;
mod limits;
mod measure;
mod photos;
mod rotation;
mod standards;
mod torque;
mod words;
mod store;

mod sidewall;
mod standards;
mod store;
mod torque;
