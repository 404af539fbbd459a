use crate::entry::{self, Turned};
use crate::fastener::{NutOutcome, Pass, judge};

/// What a nut's answer means, from the words of the record; `None` for passes
/// without a click.
///
/// ```
/// use lugbook::entry::{self, Turned};
/// use lugbook::fastening::{outcome, NutOutcome};
/// assert_eq!(outcome(entry::Pass::Final, Turned::Still), Some(NutOutcome::BackOffQuarterAndAgain));
/// assert_eq!(outcome(entry::Pass::Snug, Turned::Moved), None);
/// ```
pub fn outcome(pass: entry::Pass, turned: Turned) -> Option<NutOutcome> {
    let pass = match pass {
        entry::Pass::Final => Pass::FirstFinal,
        entry::Pass::Recheck => Pass::Recheck,
        entry::Pass::Cracked | entry::Pass::Started | entry::Pass::Snug | entry::Pass::Loosened => return None,
    };
    Some(judge(pass, turned == Turned::Moved))
}
