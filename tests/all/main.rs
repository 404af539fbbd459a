//! What must hold, in one binary.
