//! What must hold, in one binary.
mod drive;
mod due;
mod inflation;
mod limits;
mod measure;
mod photos;
mod rotation;
mod standards;
mod store;
mod store;
mod torque;
mod words;
mod words;

mod sidewall;
mod standards;
mod store;
mod torque;
