//! What must hold, in one binary.
mod photos;
mod renderer;
