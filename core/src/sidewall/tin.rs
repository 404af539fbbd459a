//! The tire identification number: what stands behind `DOT`.

use std::fmt;
use std::str::FromStr;

use crate::calendar::{Age, Day, TireWeek};

use super::problem::Problem;

/// How a tire identification number is built.
///
/// ```
/// use lugbook::sidewall::{Tin, TinForm};
/// let retread: Tin = "DOT 1HK 0723".parse()?;
/// assert_eq!((retread.form(), retread.form().code()), (TinForm::Retread, "retread"));
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TinForm {
    /// 13 symbols: three of the plant, six of the maker, four of the date
    /// (49 CFR 574.5 since 13 April 2015; the six from memory).
    Current,
    /// 7 to 12 symbols: two of the plant, two of the size, up to four of the
    /// maker's own, three or four of the date (grade S).
    Older,
    /// 7 symbols: three of the plant, four of the date (49 CFR 574.5(a)(2)).
    Retread,
    /// Without its date, as it may stand on the other sidewall (from memory).
    Partial,
    /// The date code alone.
    DateOnly,
}

impl TinForm {
    /// The form's code in data.
    ///
    /// ```
    /// use lugbook::sidewall::TinForm;
    /// assert_eq!((TinForm::Older.code(), TinForm::DateOnly.code()), ("older", "date-only"));
    /// ```
    pub fn code(self) -> &'static str {
        match self {
            Self::Current => "current",
            Self::Older => "older",
            Self::Retread => "retread",
            Self::Partial => "partial",
            Self::DateOnly => "date-only",
        }
    }
}

/// The week a tire was made in.
///
/// ```
/// // The rule's own example: 0109 is 4 to 10 January 2009 (49 CFR 574.5(b)(3)).
/// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP 0109".parse()?;
/// let made = tin.made().unwrap();
/// assert_eq!((made.from.to_string(), made.to.to_string()), ("2009-01-04".into(), "2009-01-10".into()));
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Made {
    /// The week of the date code.
    pub week: TireWeek,
    /// Its Sunday.
    pub from: Day,
    /// Its Saturday.
    pub to: Day,
}

impl Made {
    fn of(week: TireWeek) -> Self {
        Self { week, from: week.first_day(), to: week.last_day() }
    }
}

/// A tire identification number, or the part of one.
///
/// ```
/// use lugbook::sidewall::{Tin, TinForm};
/// let tin: Tin = "DOT 1HKB 9FLP 0723".parse()?;
/// assert_eq!((tin.text(), tin.plant(), tin.form()), ("1HKB9FLP0723", Some("1H"), TinForm::Older));
/// let made = tin.made().unwrap();
/// assert_eq!((made.from.to_string(), made.to.to_string()), ("2023-02-12".into(), "2023-02-18".into()));
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Tin {
    text: String,
    /// How many symbols at the end are the date: 0, 3 or 4.
    date_len: usize,
}

/// The first year of tire identification numbers that a three-digit date can
/// mean (from memory).
const FIRST_YEAR: i16 = 1971;
/// The last week of 2000 that may still bear three digits: four came in July
/// (64 FR 36807).
const LAST_SHORT_WEEK_OF_2000: u8 = 27;

impl Tin {
    pub(super) fn new(text: String, date_len: usize) -> Self {
        Self { text, date_len }
    }

    /// The symbols without `DOT` and without spaces.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP 0723".parse()?;
    /// assert_eq!(tin.text(), "1HKB9FLP0723");
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn text(&self) -> &str {
        &self.text
    }

    /// How it is built.
    ///
    /// ```
    /// use lugbook::sidewall::TinForm;
    /// let tin: lugbook::sidewall::Tin = "DOT 1HK 0723".parse()?;
    /// assert_eq!(tin.form(), TinForm::Retread);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn form(&self) -> TinForm {
        match (self.text.len(), self.date_len) {
            (_, 0) => TinForm::Partial,
            (len, date) if len == date => TinForm::DateOnly,
            (13, 4) => TinForm::Current,
            (7, 4) => TinForm::Retread,
            _ => TinForm::Older,
        }
    }

    /// The plant code: three symbols in the current form and on retreads, two
    /// in the older form; `None` with a date alone.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB9FLP4 0723".parse()?;
    /// assert_eq!(tin.plant(), Some("1HK"), "13 symbols: three of the plant");
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn plant(&self) -> Option<&str> {
        let len = match self.form() {
            TinForm::Current | TinForm::Retread => 3,
            TinForm::Partial if self.text.len() >= 9 => 3,
            TinForm::Older | TinForm::Partial => 2,
            TinForm::DateOnly => return None,
        };
        self.text.get(..len)
    }

    /// Whether plant and date both stand there.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP".parse()?;
    /// assert!(!tin.complete(), "the date stands on the other sidewall");
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn complete(&self) -> bool {
        !matches!(self.form(), TinForm::Partial | TinForm::DateOnly)
    }

    /// The date code, three or four digits.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP 0723".parse()?;
    /// assert_eq!(tin.date_code(), Some("0723"));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn date_code(&self) -> Option<&str> {
        self.text.get(self.text.len().checked_sub(self.date_len)?..).filter(|code| !code.is_empty())
    }

    /// Week and year digits of the date code.
    pub(super) fn week_and_year(&self) -> Option<(u8, i16)> {
        let code = self.date_code()?;
        Some((code.get(..2)?.parse().ok()?, code.get(2..)?.parse().ok()?))
    }

    /// The week it was made in, by a four-digit date: week 01 is the first full
    /// calendar week, Sunday to Saturday (49 CFR 574.5(b)(3)). `None` without
    /// such a date, or when that year has no such week.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP 5317".parse()?;
    /// let made = tin.made().unwrap();
    /// assert_eq!((made.from.to_string(), made.to.to_string()), ("2017-12-31".into(), "2018-01-06".into()));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn made(&self) -> Option<Made> {
        if self.date_len != 4 {
            return None;
        }
        let (week, year) = self.week_and_year()?;
        TireWeek::new(week, year.checked_add(2000)?).map(Made::of)
    }

    /// The years a three-digit date can mean, earliest first: the decade is not
    /// in it. Empty for all other dates.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP 317".parse()?;
    /// assert_eq!((tin.made(), tin.ambiguous()), (None, vec![1977, 1987, 1997]));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn ambiguous(&self) -> Vec<i16> {
        self.possible().iter().map(|made| made.week.year()).collect()
    }

    /// The weeks a three-digit date can mean, earliest first.
    ///
    /// ```
    /// let tin: lugbook::sidewall::Tin = "DOT 1HKB 9FLP 317".parse()?;
    /// let years: Vec<i16> = tin.possible().iter().map(|made| made.week.year()).collect();
    /// assert_eq!(years, [1977, 1987, 1997]);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn possible(&self) -> Vec<Made> {
        let Some((week, digit)) = self.week_and_year().filter(|_| self.date_len == 3) else {
            return Vec::new();
        };
        [1970_i16, 1980, 1990, 2000]
            .into_iter()
            .filter_map(|decade| decade.checked_add(digit))
            .filter(|year| *year >= FIRST_YEAR && (*year < 2000 || (*year == 2000 && week <= LAST_SHORT_WEEK_OF_2000)))
            .filter_map(|year| TireWeek::new(week, year))
            .map(Made::of)
            .collect()
    }

    /// The age on a day, in years and months, counted from the first day of the
    /// week it was made in. See [`TinAge`].
    ///
    /// ```
    /// use lugbook::sidewall::{Tin, TinAge};
    /// let tin: Tin = "DOT 1HKB 9FLP 0723".parse()?;
    /// let TinAge::Known { age } = tin.age_on("2026-11-24".parse().unwrap()) else { panic!() };
    /// assert_eq!((age.years, age.months), (3, 9));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn age_on(&self, today: Day) -> TinAge {
        match self.made() {
            Some(made) => made.from.age_on(today).map_or(TinAge::NotYetMade { made }, |age| TinAge::Known { age }),
            None => {
                let possible = self.possible();
                match (possible.first(), possible.last()) {
                    (Some(first), Some(last)) => match (first.from.age_on(today), last.from.age_on(today)) {
                        (Some(most), Some(least)) => TinAge::Between { least, most },
                        _ => TinAge::Unknown,
                    },
                    _ => TinAge::Unknown,
                }
            }
        }
    }
}

/// What a date code says about a tire's age.
///
/// ```
/// use lugbook::calendar::{Age, Day};
/// use lugbook::sidewall::{Tin, TinAge};
/// let tin: Tin = "DOT 1HKB 9FLP 0723".parse().unwrap();
/// let today: Day = "2026-11-24".parse().unwrap();
/// assert_eq!(tin.age_on(today), TinAge::Known { age: Age { years: 3, months: 9 } });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TinAge {
    /// Made so long ago.
    Known {
        /// Whole years and months.
        age: Age,
    },
    /// The decade is not known: between these.
    Between {
        /// In the latest decade it can be.
        least: Age,
        /// In the earliest decade it can be.
        most: Age,
    },
    /// The week lies after the given day: the code or the clock is wrong.
    NotYetMade {
        /// The week as read.
        made: Made,
    },
    /// There is no date, or it can't be.
    Unknown,
}

impl fmt::Display for Tin {
    /// `DOT`, then groups: plant with what follows, the maker's symbols, the date.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("DOT")?;
        let date_at = self.text.len().saturating_sub(self.date_len);
        let (body, date) = self.text.split_at_checked(date_at).unwrap_or((&self.text, ""));
        let first = match self.form() {
            TinForm::Current | TinForm::Retread => 3,
            TinForm::Older | TinForm::Partial | TinForm::DateOnly => 4,
        };
        let (front, rest) = body.split_at_checked(first).unwrap_or((body, ""));
        // Letters end a group of a number without date, so that no group looks like one.
        let apart = self.date_len > 0
            || [front, rest].iter().all(|group| {
                !super::words::stands_alone(group.as_bytes()) && group.bytes().any(|b| b.is_ascii_alphabetic())
            });
        for group in if apart { [front, rest] } else { [body, ""] } {
            if !group.is_empty() {
                write!(f, " {group}")?;
            }
        }
        if !date.is_empty() {
            write!(f, " {date}")?;
        }
        Ok(())
    }
}

impl FromStr for Tin {
    type Err = Problem;

    fn from_str(text: &str) -> Result<Self, Problem> {
        super::read_alone(text, |scan, problems| super::tin_grammar::read(scan, problems).flatten())
    }
}
