//! Every public item of a finished room has an example that runs.
//!
//! The compiler's own lint passes over what a private module holds and its room
//! gives out again, so the sources are read here; formatting is checked elsewhere.

use std::collections::BTreeMap;
use std::path::Path;

use crate::architecture::{room_of, sources};
use crate::program::root;

/// Rooms where nothing is missing: it stays so. A room joins when its last example is written.
const FINISHED: &[&str] = &[
    "ident",
    "calendar",
    "measure",
    "source",
    "sidewall",
    "tire",
    "fastener",
    "vehicle",
    "finding",
    "limits",
    "inflation",
    "fastening",
    "wear",
    "rotation",
    "lifting",
    "proof",
];

/// Whether a line begins an item that others can use: a type, a trait or a function.
fn is_item(line: &str, in_trait: bool) -> bool {
    let Some(rest) = line.trim_start().strip_prefix("pub ") else {
        return in_trait && line.starts_with("    fn ");
    };
    let rest = rest.strip_prefix("const ").unwrap_or(rest);
    ["struct ", "enum ", "trait ", "fn ", "union "].iter().any(|kind| rest.starts_with(kind))
}

/// The items of a source without an example, by line.
fn missing(source: &str) -> Vec<(usize, String)> {
    let (mut found, mut example, mut in_trait, mut in_attribute) = (Vec::new(), false, false, false);
    for (line, number) in source.lines().zip(1..) {
        let text = line.trim_start();
        if text.starts_with("///") || text.starts_with("#[doc") {
            example |= text.contains("```");
        } else if text.starts_with("#[") || in_attribute {
            in_attribute = !text.ends_with(']');
        } else {
            if is_item(line, in_trait) && !example {
                found.push((number, text.to_owned()));
            }
            example = false;
            in_trait = (in_trait || line.starts_with("pub trait ")) && !line.starts_with('}');
        }
    }
    found
}

#[test]
fn every_public_item_of_a_finished_room_has_an_example() {
    let mut by_room: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for file in sources(&root().join("core/src")) {
        let (room, _) = room_of(&file);
        let source = std::fs::read_to_string(&file).unwrap();
        let name = file.strip_prefix(root()).unwrap_or(Path::new("")).display().to_string();
        let lines = missing(&source).into_iter().map(|(line, text)| format!("{name}:{line}: {text}"));
        by_room.entry(room).or_default().extend(lines);
    }
    for room in FINISHED {
        let without = by_room.remove(*room).expect("the room is there");
        assert!(without.is_empty(), "{room}: no example:\n{}", without.join("\n"));
    }
    let left: usize = by_room.values().map(Vec::len).sum();
    println!("public items without an example, in the rooms that are not finished: {left}");
}

#[test]
fn an_item_without_an_example_is_seen() {
    let bare = "/// A thing.\n#[derive(Debug)]\npub struct Thing {\n    /// A field.\n    pub field: u8,\n}\n";
    assert_eq!(missing(bare), [(3, "pub struct Thing {".to_owned())]);
    let shown = bare.replace("#[derive", "/// ```\n/// ```\n#[derive");
    assert!(missing(&shown).is_empty());
    let inner = "impl Thing {\n    /// It.\n    pub fn of() {}\n    pub(super) fn own() {}\n}\n";
    assert_eq!(missing(inner).len(), 1);
    let asked = "/// ```\n/// ```\npub trait Asked {\n    /// It.\n    fn it(&self);\n}\n";
    assert_eq!(missing(asked).len(), 1);
}
