//! The `lugbook` command.

fn main() {}
