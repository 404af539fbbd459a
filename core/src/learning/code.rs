//! The code that an instructor signs with: what is too plain, and how long it is locked.

use crate::calendar::Moment;

/// So many wrong codes in a row lock it (a choice of this design; NIST SP 800-63B 5.2.2, from memory, wants
/// at most 100 and a wait that grows).
pub const TRIES: u32 = 5;

/// The first wait, in milliseconds: a minute. It doubles with each further wrong code, up to an hour.
const FIRST_WAIT_MS: i64 = 60_000;
const LONGEST_WAIT_MS: i64 = 60 * 60_000;

/// Fewest characters of a code (NIST SP 800-63B 5.1.1.1, from memory: six where it is a PIN).
const SHORTEST: usize = 6;
const LONGEST: usize = 64;

/// Until when a code is locked after so many wrong ones in a row, the last one at this time; none when it is not.
///
/// A clock that was set back does not open it: a time before this stays locked.
///
/// ```
/// use lugbook::calendar::Moment;
/// use lugbook::learning::locked_until;
/// let last = Moment::from_unix_ms(1_000_000);
/// assert_eq!(locked_until(4, last), None);
/// assert_eq!(locked_until(5, last), Some(Moment::from_unix_ms(1_060_000)));
/// assert_eq!(locked_until(6, last), Some(Moment::from_unix_ms(1_120_000)));
/// assert_eq!(locked_until(60, last), Some(Moment::from_unix_ms(1_000_000 + 3_600_000)));
/// ```
pub fn locked_until(wrong: u32, last: Moment) -> Option<Moment> {
    let over = wrong.checked_sub(TRIES)?;
    let wait = FIRST_WAIT_MS.checked_shl(over.min(16)).unwrap_or(LONGEST_WAIT_MS).min(LONGEST_WAIT_MS);
    Some(Moment::from_unix_ms(last.unix_ms().saturating_add(wait)))
}

/// Why a code will not do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Plain {
    /// Fewer than six characters.
    Short,
    /// More than 64.
    Long,
    /// One character over and over, or a row such as 123456.
    Row,
    /// The person's own name.
    Name,
}

/// Why a code will not do for a person; none when it will.
///
/// ```
/// use lugbook::learning::{Plain, too_plain};
/// assert_eq!(too_plain("12345", "Ada"), Some(Plain::Short));
/// assert_eq!(too_plain("654321", "Ada"), Some(Plain::Row));
/// assert_eq!(too_plain("Ada Lund", "ada lund"), Some(Plain::Name));
/// assert_eq!(too_plain("739204", "Ada Lund"), None);
/// ```
pub fn too_plain(code: &str, name: &str) -> Option<Plain> {
    let signs: Vec<u32> = code.chars().map(u32::from).collect();
    let steps: Vec<i64> =
        signs.windows(2).filter_map(|pair| Some(i64::from(*pair.last()?) - i64::from(*pair.first()?))).collect();
    let row = |step: i64| steps.iter().all(|own| *own == step);
    let letters = |text: &str| text.chars().filter(|c| c.is_alphanumeric()).collect::<String>().to_lowercase();
    if signs.len() < SHORTEST {
        Some(Plain::Short)
    } else if signs.len() > LONGEST {
        Some(Plain::Long)
    } else if row(0) || row(1) || row(-1) {
        Some(Plain::Row)
    } else if letters(code) == letters(name) {
        Some(Plain::Name)
    } else {
        None
    }
}
