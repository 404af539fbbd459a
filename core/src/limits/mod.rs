//! Legal and advised minima of tread depth by place and class of vehicle, the
//! conditions under which nobody should drive, the pressure placard, and which
//! wheels two people lift.
//!
//! Only a rule whose own text was read refuses; everything weaker warns. Depths
//! are compared in the unit they were written in: a tire at 1.59 mm passes
//! 2/32 in (1.5875 mm) and fails 1.6 mm.

mod damage;
mod heavy;
mod placard;
mod rules;
mod table;
mod tread;

pub use damage::{Damage, Verdict};
pub use heavy::{Heaviness, HeavyWheel, heavy_wheel};
pub use placard::{Placard, PlacardTire};
pub use rules::{Chosen, Rules};
pub use table::{Force, Limit, Measured, Region, Season, limits};
pub use tread::{Circumstances, Judgement, Spread, Thresholds, judge, judge_spread};
