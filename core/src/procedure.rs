//! Procedures: the steps of a visit as data, and where a job stands in them.
//!
//! A procedure is a TOML file: id, version and steps. A step has a sentence,
//! says what it asks, how often (once, at each wheel …), under which
//! circumstances it applies, and which conditions hold it. Conditions come
//! from a closed list in [`Condition`], so a file can narrow and add, and
//! can't invent. The built-in files are embedded; a shop may add its own.
//!
//! [`Bay`] holds a job against its procedure: which tasks are done, which one
//! is next, and what a gate still waits for.

mod ask;
mod at_hand;
mod bay;
mod condition;
mod duals;
mod file;
mod learning;
mod order;

pub use ask::Ask;
pub use bay::{Bay, Task, TaskState};
pub use condition::{Condition, Mismatch, Unmet, Unsafe};
pub use file::{Bad, BadKind, Per, Procedure, Step};
pub use learning::{MUST_BE_SEEN, ToSee};
pub use order::Turn;

/// The built-in procedures' files: name and text.
const BUILT_IN: &[(&str, &str)] = &[
    ("rotation-on-a-lift", include_str!("../procedures/rotation-on-a-lift.toml")),
    ("rotation-lift-by-lift", include_str!("../procedures/rotation-lift-by-lift.toml")),
    ("rotation-with-jack-and-stands", include_str!("../procedures/rotation-with-jack-and-stands.toml")),
    ("wheel-off-and-on", include_str!("../procedures/wheel-off-and-on.toml")),
    ("spare-at-the-roadside", include_str!("../procedures/spare-at-the-roadside.toml")),
    ("seasonal-changeover", include_str!("../procedures/seasonal-changeover.toml")),
    ("dual-wheels-off-and-on", include_str!("../procedures/dual-wheels-off-and-on.toml")),
    ("dual-wheel-rotation", include_str!("../procedures/dual-wheel-rotation.toml")),
    ("trailer-wheels-off-and-on", include_str!("../procedures/trailer-wheels-off-and-on.toml")),
    ("recheck-visit", include_str!("../procedures/recheck-visit.toml")),
    ("tread-and-age-check", include_str!("../procedures/tread-and-age-check.toml")),
];

/// The built-in procedures, each checked.
///
/// # Errors
/// The first file that is bad, with line and reason; a test keeps this from happening.
///
/// ```
/// let ids: Vec<String> = lugbook::procedure::built_in()?.into_iter().map(|p| p.id).collect();
/// assert!(ids.contains(&"rotation-on-a-lift".to_owned()));
/// # Ok::<(), lugbook::procedure::Bad>(())
/// ```
pub fn built_in() -> Result<Vec<Procedure>, Bad> {
    BUILT_IN.iter().map(|(name, text)| Procedure::parse(name, text)).collect()
}
