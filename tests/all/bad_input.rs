//! Bad input on each command: one clear sentence, the right exit code, the book unchanged.

mod disks;
mod pointer;
mod words;
