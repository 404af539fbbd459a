//! Who may go where, and who should: rotations for these tires on this vehicle.
//!
//! [`plan`] weighs every permutation of the assemblies over the places that no
//! constraint forbids (all of them for up to six assemblies, a bounded search
//! beyond) and answers the best plan, two alternatives and *leave as is*, each
//! with its forecast and typed reasons, and for each of the trade's patterns that
//! is not allowed, what forbids it and what would lift that.
//!
//! # Order of preference
//! 1. fewest tires below their limit before the next visit (or standing where a
//!    rule forbids them);
//! 2. after a part replacement, the deepest pair at the rear (two axles, single wheels);
//! 3. fewest moves that advice speaks against;
//! 4. end of life together: the least spread of final depths over the horizon, plus
//!    the price of remounting;
//! 5. what lies within the uncertainty of the best in 4: the maker's pattern, else
//!    the trade's, else the fewest assemblies moved, else the first in a fixed order.
//!    The maker's pattern needs no look at 3: the manual stands above advice.
//!
//! Only this visit's moves are an instruction. Later visits are a forecast and are
//! planned again with the readings of the day.
//!
//! # Files
//! `facts` what is told · `mistake` requests that can't be planned · `constraint/`
//! who may go where · `pattern` the trade's names · `board` the request by numbers ·
//! `matching` assignments · `spread` how close together a set can end · `search` the
//! choice · `explain` reasons and refusals · `answer` what comes out · `request` the
//! file form of a request.

mod answer;
mod board;
pub mod constraint;
mod explain;
mod facts;
mod matching;
mod mistake;
mod pattern;
mod request;
mod search;
mod spread;

pub use answer::{Answer, Because, DefaultBy, Force, Forecast, Lift, LookNext, Name, Note, Plan, Reason, Refused, Why};
pub use facts::{AxleFacts, LOAD_BY_INDEX, LOAD_PRINTED, Limit, Rate, Request, TireFacts, Uncertainty, WheelFacts};
pub use mistake::{Contradiction, Figure, MOST_AXLES, MOST_GROOVES, MOST_VISITS, Mistake};
pub use pattern::{DriveMove, NotAPattern, Pattern};
pub use request::{AxleEntry, Depths, FileMistake, RequestFile, TireEntry};

use board::Board;
use search::Search;

/// Answers who should go where.
///
/// # Errors
/// When the request can't be planned: no wheels, too many, two tires at one
/// place, figures that are no numbers, statements that contradict each other.
/// That nothing may move is an answer, not an error.
///
/// ```
/// use lugbook::rotation::{Request, TireFacts, plan};
/// use lugbook::vehicle::{Class, Drive, Layout};
/// # let layout = Layout::two_axles(false);
/// # let tires = layout.places().map(TireFacts::at).collect();
/// let request = Request::new(layout, Class::Car, Drive::Front, tires);
/// assert_eq!(plan(&request)?.plans[0].pattern.code(), "forward-cross");
/// # Ok::<(), lugbook::rotation::Mistake>(())
/// ```
pub fn plan(request: &Request) -> Result<Answer, Mistake> {
    mistake::look_over(request)?;
    let board = Board::new(request);
    let mut search = Search::new(&board);
    if !board.drive_known() {
        return Ok(explain::without_drive(&board, &mut search));
    }
    let defaults = explain::Defaults::of(&board);
    let found = search.run(defaults.makers(), defaults.trades());
    Ok(explain::answer(&board, &mut search, &defaults, found))
}
