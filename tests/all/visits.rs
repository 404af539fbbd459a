//! Every built-in procedure, played from the first question to the signature.

mod cards;
mod driver;
mod gates;
