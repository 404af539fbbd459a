//! Seeing: what stands on a sidewall, read from a photo, as suggestions with odds.
//!
//! | step | file |
//! | --- | --- |
//! | the edges of rim and tire are found, or taken from a circle that a person drew | `ring`, `ellipse`, `path` |
//! | the ring between them is laid straight; a close-up stays as it is | `strip` |
//! | lettering is found on tiles that overlap, and where it hardly stands out, by how levels change along the ring | `regions`, `models`, `activity` |
//! | light marks on dark rubber are taken for chalk, and read as what is chalked on tires | `chalk` |
//! | each region is read, among the characters that a sidewall can bear, and what stands on one base line is joined | `lines`, `last_layer` |
//! | beside `ROTATION` an arrow is sought | `arrows` |
//! | the sidewall's grammar weighs what it can mean; looks add up | `evidence`, `numbers` |
//! | suggestions with calibrated odds, and what would make them better | `reading`, `odds`, `judging` |
//!
//! A host may read the tiles in place of the models (`tiles`). The room is pure: pictures and models come in as bytes,
//! and one call reads one wheel, telling between tiles how far it is. Nothing read here is a fact: a person confirms it.

mod activity;
mod arrows;
mod chalk;
mod ellipse;
mod evidence;
mod judging;
mod last_layer;
mod lines;
mod models;
mod numbers;
mod odds;
mod path;
mod picture;
mod reading;
mod regions;
mod ring;
mod strip;
mod tiles;

pub use judging::{Ask, Hint, Part, UNSURE};
pub use models::{Models, NotTheModels};
pub use picture::Picture;
pub use reading::{Arrow, Asked, Circle, Continue, Lettering, Progress, Sight, Suggestion, Wheel, read, read_through};
pub use tiles::{Tile, TileReader, TileText};
