//! What must hold, in one binary.

mod architecture;
mod bad_input;
mod caution;
mod demo;
mod drive;
mod due;
mod engine;
mod inflation;
mod kill;
mod lifting;
mod limits;
mod measure;
mod phone;
mod photos;
mod program;
mod renderer;
mod replay;
mod report;
mod rotation;
mod sidewall;
mod skipped;
mod standards;
mod store;
mod torque;
mod wear;
mod words;
