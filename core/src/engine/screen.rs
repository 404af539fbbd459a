//! Screens: finished, worded records of everything a shell shows, each with the
//! list of what can be tapped on it.
//!
//! A shell asks for a screen, draws it, and hands back the token of the
//! [`Action`] that was tapped with what was [`Entered`] in its fields. What a
//! screen does not offer can't be said; what it offered is good until the book
//! changes, so that a second tap on the same thing is no second entry.

mod bay;
mod bench;
mod device;
mod doing;
mod drawing;
mod form;
mod giving;
mod offer;
mod shelf;
mod suggesting;

pub use bay::{BayScreen, FindingLine, FindingsScreen, LiftsScreen, LogScreen, PlanCard, PlanScreen, StepView};
pub use bench::BenchScreen;
pub use device::{BackupsScreen, FirstCard, FirstRunScreen, Ground, Hand, Settings, SettingsScreen};
pub use drawing::{ArrowShape, NutCircle, NutShape, Point, VehicleDrawing, WheelShape};
pub use form::{Choice, Entered, Field, FieldKind, Groove};
pub use giving::{Outgoing, OutgoingOf, PhotoLine, PhotosScreen};
pub use offer::{Action, Again, Pace, Tapped, Weight, Where};
pub use shelf::{
    BandPoint, BookScreen, ChartPoint, ChartSeries, CrewScreen, DepthLine, HistoryScreen, TireLine, TireScreen,
    VehicleRow, VehicleScreen,
};

pub(in crate::engine) use suggesting::Suggestions;
pub use suggesting::{SightLine, SightSuggestion, SightView, ToRead, WasRead};

use crate::words::{Speech, Words};

/// What a person is told when something failed inside that nobody foresaw.
///
/// ```
/// use lugbook::words::Speech;
/// assert!(lugbook::engine::screen::fault(Speech::default()).contains("Everything that was said is kept"));
/// ```
pub fn fault(speech: Speech) -> String {
    Words::new(speech).text("trouble-inside", &[])
}
