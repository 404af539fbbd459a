//! Days, moments and the weeks of tire date codes.
//!
//! The week of a tire identification number is not the ISO week: week 01 is the
//! first full calendar week of the year, Sunday to Saturday (49 CFR
//! 574.5(b)(3)). Nothing in here reads a clock.

use std::fmt;
use std::str::FromStr;

use jiff::civil::{Date, Weekday};
use jiff::tz::Offset;
use serde::{Deserialize, Serialize};

/// A calendar day.
///
/// ```
/// use lugbook::calendar::Day;
/// let made: Day = "2023-02-12".parse()?;
/// let today: Day = "2026-11-24".parse()?;
/// assert_eq!(made.age_on(today).map(|age| (age.years, age.months)), Some((3, 9)));
/// # Ok::<(), lugbook::calendar::NotADay>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Day(Date);

/// Text that is no day in the form `2026-11-24`.
///
/// ```
/// use lugbook::calendar::{Day, NotADay};
/// // The second of December to some, the twelfth of February to others: not taken.
/// assert_eq!("02/12/2023".parse::<Day>(), Err(NotADay { text: "02/12/2023".to_owned() }));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not a day: {text}")]
pub struct NotADay {
    /// What was given.
    pub text: String,
}

/// A span in whole years and months, the way a tire's age is told.
///
/// ```
/// use lugbook::calendar::{Age, Day};
/// let (made, today) = (Day::new(2020, 5, 10).unwrap(), Day::new(2026, 6, 9).unwrap());
/// assert_eq!(made.age_on(today), Some(Age { years: 6, months: 0 }));
/// assert!(Age { years: 6, months: 0 } > Age { years: 5, months: 11 });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Age {
    /// Whole years.
    pub years: i16,
    /// Whole months beyond the years, 0 to 11.
    pub months: i8,
}

impl Day {
    /// A day from year, month 1–12 and day of month; `None` when there is no such day.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// assert!(Day::new(2024, 2, 29).is_some());
    /// assert_eq!(Day::new(2023, 2, 29), None);
    /// ```
    pub fn new(year: i16, month: i8, day: i8) -> Option<Self> {
        Date::new(year, month, day).ok().map(Self)
    }

    /// The year.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// assert_eq!(Day::new(2026, 11, 24).map(Day::year), Some(2026));
    /// ```
    pub fn year(self) -> i16 {
        self.0.year()
    }

    /// The month, 1 to 12.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// assert_eq!(Day::new(2026, 11, 24).map(Day::month), Some(11));
    /// ```
    pub fn month(self) -> i8 {
        self.0.month()
    }

    /// The day of the month.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// assert_eq!(Day::new(2026, 11, 24).map(Day::day), Some(24));
    /// ```
    pub fn day(self) -> i8 {
        self.0.day()
    }

    /// The day so many days later (or earlier); the last or first day there is, beyond them.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// let day: Day = "2026-02-27".parse()?;
    /// assert_eq!(day.plus_days(3).to_string(), "2026-03-02");
    /// assert_eq!(day.plus_days(-27).to_string(), "2026-01-31");
    /// # Ok::<(), lugbook::calendar::NotADay>(())
    /// ```
    pub fn plus_days(self, days: i32) -> Self {
        Self(self.0.saturating_add(jiff::Span::new().try_days(days).unwrap_or_default()))
    }

    /// The same day so many months later; the last one of the month where it has no such day,
    /// and the last day there is beyond it.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// let day: Day = "2026-01-31".parse()?;
    /// assert_eq!(day.plus_months(1).to_string(), "2026-02-28");
    /// assert_eq!(day.plus_months(12).to_string(), "2027-01-31");
    /// # Ok::<(), lugbook::calendar::NotADay>(())
    /// ```
    pub fn plus_months(self, months: u16) -> Self {
        Self(self.0.saturating_add(jiff::Span::new().try_months(months).unwrap_or_default()))
    }

    /// Days from this one to the other; negative when the other is earlier.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// let (one, other): (Day, Day) = ("2026-02-22".parse()?, "2026-03-01".parse()?);
    /// assert_eq!((one.days_until(other), other.days_until(one)), (7, -7));
    /// # Ok::<(), lugbook::calendar::NotADay>(())
    /// ```
    pub fn days_until(self, other: Self) -> i32 {
        self.0.until(other.0).map_or(0, |span| span.get_days())
    }

    /// Years and months from this day to `today`; `None` when this day is later.
    ///
    /// ```
    /// use lugbook::calendar::Day;
    /// let (made, today): (Day, Day) = ("2023-02-12".parse()?, "2026-02-11".parse()?);
    /// assert_eq!(made.age_on(today).map(|age| (age.years, age.months)), Some((2, 11)));
    /// assert_eq!(today.age_on(made), None, "a date that has not come yet");
    /// # Ok::<(), lugbook::calendar::NotADay>(())
    /// ```
    pub fn age_on(self, today: Self) -> Option<Age> {
        if today < self {
            return None;
        }
        let span = self.0.until((jiff::Unit::Year, today.0)).ok()?;
        Some(Age { years: span.get_years(), months: i8::try_from(span.get_months()).ok()? })
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl FromStr for Day {
    type Err = NotADay;

    fn from_str(text: &str) -> Result<Self, NotADay> {
        let plain = text.len() == 10 && text.chars().all(|c| c.is_ascii_digit() || c == '-');
        text.parse().ok().filter(|_| plain).map(Self).ok_or_else(|| NotADay { text: text.to_owned() })
    }
}

/// A moment as the device's clock told it, in Unix milliseconds.
///
/// ```
/// use lugbook::calendar::Moment;
/// let at: Moment = "2026-05-04T09:15:00Z".parse()?;
/// assert_eq!(at.to_string(), "2026-05-04T09:15:00Z");
/// # Ok::<(), lugbook::calendar::NotAMoment>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Moment(i64);

/// Text that is no moment in the form `2026-11-24T09:15:00Z` (or with an offset), or `2026-11-24 09:15`.
///
/// ```
/// use lugbook::calendar::{Moment, NotAMoment};
/// let said = "quarter past nine".to_owned();
/// assert_eq!(said.parse::<Moment>(), Err(NotAMoment { text: said }));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not a moment: {text}")]
pub struct NotAMoment {
    /// What was given.
    pub text: String,
}

impl Moment {
    /// The first moment there is: the start of 1970.
    pub const START: Self = Self(0);

    /// From Unix milliseconds, held within the years 1970 to 9000.
    ///
    /// ```
    /// use lugbook::calendar::Moment;
    /// assert_eq!(Moment::from_unix_ms(1_777_886_100_000).to_string(), "2026-05-04T09:15:00Z");
    /// assert_eq!(Moment::from_unix_ms(-1), Moment::START, "a clock that was never set");
    /// ```
    pub fn from_unix_ms(ms: i64) -> Self {
        Self(ms.clamp(0, 221_845_392_000_000))
    }

    /// Unix milliseconds.
    ///
    /// ```
    /// use lugbook::calendar::Moment;
    /// let at: Moment = "2026-05-04T09:15:00Z".parse()?;
    /// assert_eq!(at.unix_ms(), 1_777_886_100_000);
    /// # Ok::<(), lugbook::calendar::NotAMoment>(())
    /// ```
    pub fn unix_ms(self) -> i64 {
        self.0
    }

    /// The day in universal time.
    ///
    /// ```
    /// use lugbook::calendar::Moment;
    /// // Late in the evening five hours west of Greenwich: the next day in universal time.
    /// let at: Moment = "2026-05-04T23:30:00-05:00".parse()?;
    /// assert_eq!(at.day().to_string(), "2026-05-05");
    /// # Ok::<(), lugbook::calendar::NotAMoment>(())
    /// ```
    pub fn day(self) -> Day {
        Day(Offset::UTC.to_datetime(self.stamp()).date())
    }

    /// The clock time of the day, `09:15`, in universal time.
    ///
    /// ```
    /// use lugbook::calendar::Moment;
    /// let at: Moment = "2026-05-04T23:30:00-05:00".parse()?;
    /// assert_eq!(at.clock(), "04:30");
    /// # Ok::<(), lugbook::calendar::NotAMoment>(())
    /// ```
    pub fn clock(self) -> String {
        let time = Offset::UTC.to_datetime(self.stamp()).time();
        format!("{:02}:{:02}", time.hour(), time.minute())
    }

    fn stamp(self) -> jiff::Timestamp {
        jiff::Timestamp::from_millisecond(self.0).unwrap_or_default()
    }
}

impl fmt::Display for Moment {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.stamp().fmt(f)
    }
}

impl FromStr for Moment {
    type Err = NotAMoment;

    fn from_str(text: &str) -> Result<Self, NotAMoment> {
        let stamp = text
            .parse::<jiff::Timestamp>()
            .or_else(|_| text.parse::<jiff::civil::DateTime>().and_then(|civil| Offset::UTC.to_timestamp(civil)));
        match stamp {
            Ok(stamp) if stamp.as_millisecond() >= 0 => Ok(Self::from_unix_ms(stamp.as_millisecond())),
            _ => Err(NotAMoment { text: text.to_owned() }),
        }
    }
}

/// A week of a tire date code: week 1–53 of a year, by the Sunday rule.
///
/// ```
/// use lugbook::calendar::TireWeek;
/// // The rule's own example (49 CFR 574.5(b)(3)): 0109 is 4 to 10 January 2009.
/// let week = TireWeek::new(1, 2009).unwrap();
/// assert_eq!(week.first_day().to_string(), "2009-01-04");
/// assert_eq!(week.last_day().to_string(), "2009-01-10");
/// assert_eq!(TireWeek::new(53, 2015), None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct TireWeek {
    year: i16,
    week: u8,
}

impl TireWeek {
    /// The week of the year, or `None` when that year has no such week.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// // 2017 has a week 53, the six days that it reaches into 2018 included; 2015 has none.
    /// assert!(TireWeek::new(53, 2017).is_some());
    /// assert_eq!((TireWeek::new(53, 2015), TireWeek::new(0, 2015)), (None, None));
    /// ```
    pub fn new(week: u8, year: i16) -> Option<Self> {
        let known = (1..=Self::weeks_in(year)?).contains(&week);
        known.then_some(Self { year, week })
    }

    /// The year.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// let week = TireWeek::new(53, 2017).unwrap();
    /// assert_eq!((week.year(), week.last_day().year()), (2017, 2018));
    /// ```
    pub fn year(self) -> i16 {
        self.year
    }

    /// The week, 1 to 53.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// assert_eq!(TireWeek::new(15, 2026).map(TireWeek::week), Some(15));
    /// ```
    pub fn week(self) -> u8 {
        self.week
    }

    /// The Sunday that begins week 01 of a year: the first full calendar week
    /// (49 CFR 574.5(b)(3)). Years 1970 to 2099; `None` outside.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// // The ISO year 2026 begins on 29 December 2025; the first full week on 4 January.
    /// assert_eq!(TireWeek::first_sunday(2026).unwrap().to_string(), "2026-01-04");
    /// assert_eq!(TireWeek::first_sunday(1969), None);
    /// ```
    pub fn first_sunday(year: i16) -> Option<Day> {
        if !(1970..=2099).contains(&year) {
            return None;
        }
        Date::new(year, 1, 1).ok()?.nth_weekday_of_month(1, Weekday::Sunday).ok().map(Day)
    }

    /// How many weeks the year has by the rule: 52 or 53. The last may reach up
    /// to six days into the next year.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// assert_eq!((TireWeek::weeks_in(2023), TireWeek::weeks_in(2024)), (Some(53), Some(52)));
    /// ```
    pub fn weeks_in(year: i16) -> Option<u8> {
        let first = Self::first_sunday(year)?;
        let last_day = Day::new(year, 12, 31)?;
        u8::try_from(first.days_until(last_day) / 7 + 1).ok()
    }

    /// The Sunday that begins the week.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// // 1526: Sunday 12 April; the ISO week 15 would begin six days earlier.
    /// assert_eq!(TireWeek::new(15, 2026).unwrap().first_day().to_string(), "2026-04-12");
    /// ```
    pub fn first_day(self) -> Day {
        Self::first_sunday(self.year).map_or(Day(Date::MIN), |first| first.plus_days((i32::from(self.week) - 1) * 7))
    }

    /// The Saturday that ends the week.
    ///
    /// ```
    /// use lugbook::calendar::TireWeek;
    /// assert_eq!(TireWeek::new(53, 2017).unwrap().last_day().to_string(), "2018-01-06");
    /// ```
    pub fn last_day(self) -> Day {
        self.first_day().plus_days(6)
    }
}

impl fmt::Display for TireWeek {
    /// Four digits, week then year, as molded on the tire.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}{:02}", self.week, self.year.rem_euclid(100))
    }
}
