//! Lugbook: the core of a wheel-service logbook and planner.
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing, clippy::panic))]

pub mod calendar;
pub mod caution;
pub mod fastener;
pub mod fastening;
pub mod finding;
pub mod ident;
pub mod inflation;
pub mod limits;
pub mod measure;
pub mod source;
pub mod vehicle;
