//! Whether the streams of a book are whole chains.

use std::collections::BTreeMap;

use super::problem::{Missing, Problem, ProblemKind, Spot};
use crate::entry::{Entry, Head};
use crate::ident::StreamId;

/// What does not hold in the streams of `entries`, which are all that the book
/// has; `heads` are the kept ends, `gaps` the numbers known to be missing.
pub(super) fn problems(entries: &[Entry], heads: &BTreeMap<StreamId, Head>, gaps: &[Missing]) -> Vec<Problem> {
    let mut found = Vec::new();
    let mut streams = streams(entries);
    for stream in heads.keys() {
        streams.entry(*stream).or_default();
    }
    for (stream, entries) in streams {
        let (head, missing, mut broken) = walk(stream, &entries);
        found.append(&mut broken);
        let unknown = missing.into_iter().filter(|gap| !gaps.contains(gap));
        found.extend(unknown.map(|gap| Problem {
            kind: ProblemKind::Gap { first: gap.first, last: gap.last },
            at: Spot::Stream { stream },
        }));
        if heads.get(&stream) != Some(&head) {
            found.push(Problem { kind: ProblemKind::Head, at: Spot::Stream { stream } });
        }
    }
    found
}

/// The entries of each stream, by number.
pub(super) fn streams(entries: &[Entry]) -> BTreeMap<StreamId, Vec<&Entry>> {
    let mut streams = BTreeMap::<StreamId, Vec<&Entry>>::new();
    for entry in entries {
        streams.entry(entry.envelope().stream).or_default().push(entry);
    }
    for entries in streams.values_mut() {
        entries.sort_by_key(|entry| entry.envelope().number);
    }
    streams
}

/// Follows one stream: its end, the numbers that are missing before it, and
/// the entries that do not follow the one before them.
pub(super) fn walk(stream: StreamId, entries: &[&Entry]) -> (Head, Vec<Missing>, Vec<Problem>) {
    let (mut missing, mut broken) = (Vec::new(), Vec::new());
    let mut head = Head::empty(stream);
    for entry in entries {
        let number = entry.envelope().number;
        match head.then(entry) {
            Ok(next) => head = next,
            Err(_) => {
                match number.checked_sub(1) {
                    Some(last) if last > head.number => missing.push(Missing { stream, first: head.number + 1, last }),
                    _ => broken.push(Problem { kind: ProblemKind::Chain, at: Spot::Entry { stream, number } }),
                }
                head = after(entry);
            }
        }
    }
    (head, missing, broken)
}

/// The head that an entry makes, whatever stands before it.
pub(super) fn after(entry: &Entry) -> Head {
    let said = entry.envelope();
    Head { stream: said.stream, number: said.number, time: said.time, digest: Some(entry.digest()) }
}
