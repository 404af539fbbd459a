//! Wear: how fast tread goes at each position, what each tire has left, and what
//! its pattern says to check.
//!
//! [`wear`] takes a vehicle's whole history at once. Nothing is told that the
//! readings don't determine: a rate needs two odometer readings, and with one
//! visit the answer is *unknown*, with the odometer figure of the next visit.
//!
//! # Files
//! `history` what was read and where tires ran · `visits` a history from the book · `fit` rates and starts, robust ·
//! `forecast` depths and distances ahead · `tread` patterns and checks · `answer`
//! what comes out · `rows` the file form of a history.

mod answer;
mod fit;
mod forecast;
mod history;
mod rows;
mod tread;
mod visits;

pub use answer::{Answer, NextVisit, PositionWear, Question, SetBy, Slipped, TireWear, Unknown, wear};
pub use fit::{Prior, SLIP_FROM, SLIP_TO};
pub use forecast::{Ahead, Interval, Left, Stretch, simulate};
pub use history::{HANDLING_MM, History, MOST_READINGS, Mistake, Moved, Reading};
pub use rows::{BadRow, RowMistake, Rows};
pub use tread::{Check, TreadPattern, patterns};
pub(crate) use visits::{Visits, lowest_of_each};
