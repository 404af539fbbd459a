//! What must hold, in one binary.

mod drive;
mod due;
mod engine;
mod inflation;
mod lifting;
mod limits;
mod measure;
mod photos;
mod renderer;
mod report;
mod rotation;
mod sidewall;
mod standards;
mod store;
mod torque;
mod wear;
mod words;
