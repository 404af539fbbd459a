//! What the phone shells may call.
