//! What must hold, in one binary.
mod store;
