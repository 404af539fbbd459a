//! Speed symbols.

use std::fmt;

/// A speed symbol: `A1` to `A8`, or a letter `B` to `Y`.
///
/// ```
/// use lugbook::sidewall::SpeedSymbol;
/// let h = SpeedSymbol::new("H").unwrap();
/// let u = SpeedSymbol::new("U").unwrap();
/// assert_eq!((h.max_kmh(), u.max_kmh()), (210, 200)); // H is out of alphabetical order
/// assert_eq!(SpeedSymbol::new("X"), None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SpeedSymbol {
    /// Place in the table, slowest first.
    place: u8,
}

/// Symbol and km/h, slowest first. One printed table (grade S); U from a shop
/// guide in miles per hour.
const SYMBOLS: [(&str, u16); 29] = [
    ("A1", 5),
    ("A2", 10),
    ("A3", 15),
    ("A4", 20),
    ("A5", 25),
    ("A6", 30),
    ("A7", 35),
    ("A8", 40),
    ("B", 50),
    ("C", 60),
    ("D", 65),
    ("E", 70),
    ("F", 80),
    ("G", 90),
    ("J", 100),
    ("K", 110),
    ("L", 120),
    ("M", 130),
    ("N", 140),
    ("P", 150),
    ("Q", 160),
    ("R", 170),
    ("S", 180),
    ("T", 190),
    ("U", 200),
    ("H", 210),
    ("V", 240),
    ("W", 270),
    ("Y", 300),
];

impl SpeedSymbol {
    /// The symbol written like this, in capitals; `None` when there is none.
    ///
    /// ```
    /// use lugbook::sidewall::SpeedSymbol;
    /// assert!(SpeedSymbol::new("A8").is_some() && SpeedSymbol::new("X").is_none());
    /// ```
    pub fn new(text: &str) -> Option<Self> {
        let place = SYMBOLS.iter().position(|(symbol, _)| *symbol == text)?;
        Some(Self { place: u8::try_from(place).ok()? })
    }

    pub(super) fn of_letter(letter: u8) -> Option<Self> {
        let place = match letter {
            b'B'..=b'G' => letter.saturating_sub(b'B').saturating_add(8),
            b'J'..=b'N' => letter.saturating_sub(b'J').saturating_add(14),
            b'P'..=b'U' => letter.saturating_sub(b'P').saturating_add(19),
            b'H' => 25,
            b'V' => 26,
            b'W' => 27,
            b'Y' => 28,
            _ => return None,
        };
        Some(Self { place })
    }

    pub(super) fn of_a(digit: u8) -> Option<Self> {
        (b'1'..=b'8').contains(&digit).then(|| Self { place: digit.saturating_sub(b'1') })
    }

    fn row(self) -> (&'static str, u16) {
        SYMBOLS.get(usize::from(self.place)).copied().unwrap_or(("A1", 5))
    }

    /// As molded.
    ///
    /// ```
    /// use lugbook::sidewall::SpeedSymbol;
    /// assert_eq!(SpeedSymbol::new("H").map(SpeedSymbol::as_str), Some("H"));
    /// ```
    pub fn as_str(self) -> &'static str {
        self.row().0
    }

    /// The highest speed at the full load, km/h. Source: one printed table (grade S).
    ///
    /// ```
    /// use lugbook::sidewall::SpeedSymbol;
    /// // H, 210 km/h, stands between U and V.
    /// let kmh = |text| SpeedSymbol::new(text).map(SpeedSymbol::max_kmh);
    /// assert_eq!((kmh("U"), kmh("H"), kmh("V")), (Some(200), Some(210), Some(240)));
    /// ```
    pub fn max_kmh(self) -> u16 {
        self.row().1
    }

    /// All symbols, slowest first.
    ///
    /// ```
    /// use lugbook::sidewall::SpeedSymbol;
    /// let speeds: Vec<u16> = SpeedSymbol::all().map(SpeedSymbol::max_kmh).collect();
    /// assert!(speeds.is_sorted() && speeds.first() == Some(&5));
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        (0..SYMBOLS.len()).filter_map(|place| u8::try_from(place).ok()).map(|place| Self { place })
    }
}

impl fmt::Display for SpeedSymbol {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}
