//! Lugbook: the core of a wheel-service logbook and planner.
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing, clippy::panic))]

pub mod calendar;
pub mod caution;
pub mod drive;
pub mod due;
pub mod engine;
pub mod entry;
pub mod fastener;
pub mod fastening;
pub mod finding;
pub mod ident;
pub mod inflation;
pub mod inspect;
pub mod lifting;
pub mod limits;
pub mod logbook;
pub mod measure;
pub mod photos;
pub mod procedure;
pub mod report;
pub mod rotation;
pub mod sidewall;
pub mod source;
pub mod store;
pub mod vehicle;
pub mod wear;
pub mod words;
