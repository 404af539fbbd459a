//! Lugbook: the core of a wheel-service logbook and planner.
//!
//! Rooms in the order in which they may use one another:
//!
//! | tier | rooms |
//! | --- | --- |
//! | measures | [`ident`], [`calendar`], [`measure`], [`source`] |
//! | vocabulary | [`sidewall`], [`tire`], [`fastener`], [`vehicle`], [`finding`], [`limits`], [`caution`] |
//! | record | [`entry`], [`logbook`], [`proof`] |
//! | reasoning | [`drive`], [`wear`], [`inflation`], [`fastening`], [`rotation`], [`lifting`], [`inspect`], [`due`], [`procedure`], [`learning`] |
//! | seeing | [`sight`] |
//! | keeping | [`store`], [`photos`] |
//! | going out | [`words`], [`report`] |
//! | the door | [`engine`] |
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
pub mod learning;
pub mod lifting;
pub mod limits;
pub mod logbook;
pub mod measure;
pub mod photos;
pub mod procedure;
pub mod proof;
pub mod report;
pub mod rotation;
pub mod sidewall;
pub mod sight;
pub mod source;
pub mod store;
pub mod tire;
pub mod vehicle;
pub mod wear;
pub mod words;
