//! Identification numbers: what their symbols can be, which number a line can mean, and how looks at one agree.

use crate::calendar::{Day, TireWeek};

/// Letters that identification numbers don't use, and the digits that they resemble (49 CFR 574.5, from memory).
const RESEMBLE: &[(char, char)] = &[('G', '6'), ('I', '1'), ('O', '0'), ('Q', '0'), ('S', '5'), ('Z', '2')];
/// What the end of an oval around a group is read as.
const OVAL_ENDS: &str = "0CDJ";
/// What the right end of an oval around a date is read as, beyond those.
const DATE_ENDS: &str = "153U";
/// Parts of words that stand in lines with digits that are no identification number.
const OTHER_LINES: &[&str] = &[
    "KPA", "LOAD", "L0AD", "PSI", "MAX", "KG", "LBS", "2W", "PLIES", "TREAD", "STEEL", "POLY", "SAFETY", "WARN", "RIM",
    "RADIAL", "TUBE", "MADE", "TRACT", "TEMP", "INFLAT", "PRESS", "ROTAT", "OUTSIDE",
];

/// The symbol that a character stands for in a number; a space for what is none.
pub(super) fn symbol(character: char) -> char {
    let upper = character.to_ascii_uppercase();
    if !upper.is_ascii_alphanumeric() {
        return ' ';
    }
    RESEMBLE.iter().find(|(letter, _)| *letter == upper).map_or(upper, |(_, digit)| *digit)
}

/// One meaning of a line.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Meaning {
    /// Without its date, no spaces; may be empty.
    pub body: String,
    /// Week and year.
    pub date: Option<String>,
    /// How likely it is among the line's meanings, 0 to 1.
    pub share: f64,
    /// `DOT` announces it.
    pub announced: bool,
}

/// What a line can mean as a number. `text` is the line as it reads, `number` the same in symbols of numbers.
pub(super) fn meanings(text: &str, number: &str, today: Day) -> Vec<Meaning> {
    if text.contains('/') {
        return Vec::new();
    }
    let (rest, announced) = match behind_dot(number) {
        Some(rest) => {
            let end = OTHER_LINES
                .iter()
                .filter_map(|word| rest.find(&word.chars().map(symbol).collect::<String>()))
                .min()
                .unwrap_or(rest.len());
            (rest.get(..end).unwrap_or_default(), true)
        }
        None if OTHER_LINES.iter().any(|word| text.contains(word)) => return Vec::new(),
        None => (number, false),
    };
    let all = rest.split(' ').filter(|group| !group.is_empty());
    let mut groups: Vec<Vec<char>> = all.map(|group| group.chars().collect()).collect();
    let end = (1..groups.len()).find(|at| groups.get(*at..).is_some_and(approval)).unwrap_or(groups.len());
    groups.truncate(end);
    // Nothing of the number stands behind its date.
    let dated = (2..groups.len()).find(|at| {
        let plain = |group: &Vec<char>| group.len() == 4 && group.iter().all(char::is_ascii_digit);
        groups.get(*at).is_some_and(|group| plain(group) && week(group, today).is_some())
    });
    if let Some(at) = dated.filter(|_| announced) {
        groups.truncate(at + 1);
    }
    let all: Vec<Symbol> = groups
        .iter()
        .enumerate()
        .flat_map(|(number, group)| {
            let last = group.len() - 1;
            let one = move |(at, symbol): (usize, &char)| Symbol {
                symbol: *symbol,
                edge: at == 0 || at == last,
                group: number,
                size: group.len(),
            };
            group.iter().enumerate().map(one)
        })
        .collect();
    if !(3..=22).contains(&all.len()) {
        return Vec::new();
    }
    let mut found: Vec<(String, Option<String>, f64)> = Vec::new();
    // The right end of an oval around the date reads as one more character, and so does its left end.
    for (cut, cost) in [(0, 0.0), (1, 0.3)] {
        let Some(kept) = all.len().checked_sub(cut).and_then(|len| all.get(..len)) else { continue };
        if cut == 1
            && !all.last().is_some_and(|last| OVAL_ENDS.contains(last.symbol) || DATE_ENDS.contains(last.symbol))
        {
            continue;
        }
        let Some((body, digits)) = kept.len().checked_sub(4).and_then(|at| kept.split_at_checked(at)) else { continue };
        let four: Vec<char> = digits.iter().map(|s| s.symbol).collect();
        let Some((date, changed)) = week(&four, today) else { continue };
        if changed > 1 {
            continue;
        }
        let cost = cost + 0.5 * changed as f64 + unlikely(&date, today);
        if body.len() <= 1 {
            found.push((String::new(), Some(date), cost + 1.0));
            continue;
        }
        // A date's own group holds little more than the date: what stands before it there is the oval's left end.
        let of_date = |s: &Symbol| digits.first().is_some_and(|first| first.group == s.group && first.size <= 6);
        let own = body.iter().rev().take_while(|s| of_date(s) && OVAL_ENDS.contains(s.symbol)).count();
        let body = body.get(..body.len() - own).unwrap_or(body);
        let letters = body.iter().filter(|s| s.symbol.is_ascii_alphabetic()).count();
        if announced || ((3..=13).contains(&body.len()) && letters > 0) {
            for (body, more) in bodies(body) {
                found.push((body, Some(date.clone()), cost + more));
            }
        }
    }
    let letters = all.iter().filter(|s| s.symbol.is_ascii_alphabetic()).count();
    if announced && letters > 0 {
        // Without a date, or with one that can't be read.
        for (body, more) in bodies(&all) {
            found.push((body, None, 0.8 + more));
        }
    }
    let digits = all.iter().filter(|s| s.symbol.is_ascii_digit()).count();
    if !announced
        && found.is_empty()
        && (8..=9).contains(&all.len())
        && letters >= 2
        && digits >= 2
        && groups.len() >= 2
    {
        // What looks like a number, where `DOT` was not read.
        found.extend(bodies(&all).into_iter().map(|(body, more)| (body, None, 1.2 + more)));
    }
    let total: f64 = found.iter().map(|(_, _, cost)| (-cost).exp()).sum();
    // Where nothing fits well, little is left for any meaning.
    let total = total.max(0.7);
    found
        .into_iter()
        .map(|(body, date, cost)| Meaning { body, date, share: (-cost).exp() / total, announced })
        .collect()
}

/// Whether an approval mark begins here, which stands beside the number on many tires: `E4 0225611` (UN R30, from
/// memory).
fn approval(groups: &[Vec<char>]) -> bool {
    let digits = |group: &[char]| group.iter().all(char::is_ascii_digit);
    let long = |group: &[char], least: usize| group.len() >= least && digits(group);
    match groups {
        // Six digits may be a date between the ends of its oval.
        [first, ..] if long(first, 7) => true,
        [first, rest @ ..] => match first.as_slice() {
            ['E', own @ ..] if digits(own) && own.len() >= 7 => true,
            ['E', own @ ..] if digits(own) && (1..=2).contains(&own.len()) => {
                rest.first().is_some_and(|next| long(next, 6))
            }
            _ => false,
        },
        [] => false,
    }
}

#[derive(Debug, Clone, Copy)]
struct Symbol {
    symbol: char,
    /// First or last of its group.
    edge: bool,
    /// Which group, and how many symbols that has.
    group: usize,
    size: usize,
}

/// A body as it stands, and without what may be ends of ovals, each with its cost.
fn bodies(symbols: &[Symbol]) -> Vec<(String, f64)> {
    let oval = |s: &Symbol| s.edge && OVAL_ENDS.contains(s.symbol);
    let ends: Vec<usize> = symbols.iter().enumerate().filter(|(_, s)| oval(s)).map(|(at, _)| at).collect();
    let without = |left: &[usize]| -> String {
        symbols.iter().enumerate().filter(|(at, _)| !left.contains(at)).map(|(_, s)| s.symbol).collect()
    };
    let mut found = vec![(without(&[]), 0.0)];
    for end in &ends {
        found.push((without(&[*end]), 0.7));
    }
    for (at, a) in ends.iter().enumerate() {
        for b in ends.iter().skip(at + 1) {
            found.push((without(&[*a, *b]), 1.2));
        }
    }
    found.retain(|(body, _)| body.len() >= 3);
    found.iter_mut().for_each(|(body, cost)| *cost += unusual_length(body.len()));
    found.sort_by(|a, b| a.1.total_cmp(&b.1));
    found.truncate(12);
    found
}

/// How unusual a length is without the date, in nats: three symbols of the plant and six more since 2015, before
/// that two of the plant, two of the size and up to four more (49 CFR 574.5, from memory).
fn unusual_length(symbols: usize) -> f64 {
    match symbols {
        8 | 9 => 0.0,
        7 => 0.5,
        6 | 10 => 1.2,
        4 | 5 => 1.4,
        3 => 2.0,
        _ => 2.5,
    }
}

/// The text behind `DOT`, as a camera reads those three letters.
fn behind_dot(number: &str) -> Option<&str> {
    let bytes = number.as_bytes();
    (0..bytes.len()).find_map(|at| {
        // Read as it is, it may have been joined to a neighbor; read as something like it, it stands apart.
        if bytes.get(at..at + 3)? == b"D0T" {
            return number.get(at + 3..);
        }
        let before = at.checked_sub(1).and_then(|at| bytes.get(at));
        if before.is_some_and(u8::is_ascii_alphabetic) {
            return None;
        }
        if matches!(bytes.get(at..at + 3)?, [b'D' | b'0', b'0' | b'D', b'T' | b'1' | b'7']) {
            return number.get(at + 3..);
        }
        // A worn T may be missing altogether.
        (bytes.get(at..at + 3)? == b"D0 ").then(|| number.get(at + 3..)).flatten()
    })
}

/// The digits of a week that was, and how many symbols were taken for others.
fn week(symbols: &[char], today: Day) -> Option<(String, usize)> {
    let mut digits = String::with_capacity(4);
    let mut changed = 0;
    for symbol in symbols {
        let digit = match symbol {
            '0'..='9' => *symbol,
            'D' | 'U' | 'C' => '0',
            'L' | 'J' => '1',
            'E' => '3',
            'A' => '4',
            'T' => '7',
            'B' => '8',
            _ => return None,
        };
        changed += usize::from(digit != *symbol);
        digits.push(digit);
    }
    let (week, year) = (digits.get(..2)?.parse().ok()?, digits.get(2..)?.parse::<i16>().ok()?);
    let made = TireWeek::new(week, 2000 + year)?;
    (made.first_day() <= today).then_some((digits, changed))
}

/// How unlikely it is that a tire of this date is still in use, in nats: few are older than some years (habit of the
/// trade, no source).
fn unlikely(date: &str, today: Day) -> f64 {
    let year = date.get(2..).and_then(|year| year.parse::<i16>().ok()).unwrap_or(0);
    let age = f64::from(today.year() - 2000 - year);
    (age - 6.0).max(0.0) / 6.0
}

/// What looks at a number support each reading: its own weight, and that of readings near it, which are mostly the
/// same number with a symbol misread.
pub(super) fn supported(readings: &[(String, f64)]) -> Vec<f64> {
    /// What each symbol of difference leaves.
    const PER_SYMBOL: f64 = 0.2;
    readings
        .iter()
        .map(|(text, _)| readings.iter().map(|(other, weight)| weight * PER_SYMBOL.powi(apart(text, other))).sum())
        .collect()
}

/// How many symbols two numbers differ by: put in, left out or taken for another (V. Levenshtein, 1965).
fn apart(a: &str, b: &str) -> i32 {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<i32> = (0..=i32::try_from(b.len()).unwrap_or(i32::MAX)).collect();
    for (at, x) in a.chars().enumerate() {
        let mut left = i32::try_from(at).unwrap_or(i32::MAX - 1) + 1;
        let mut next = Vec::with_capacity(row.len());
        next.push(left);
        for (y, above) in b.iter().zip(row.windows(2)) {
            let &[diagonal, above] = above else { continue };
            left = (left + 1).min(above + 1).min(diagonal + i32::from(x != *y));
            next.push(left);
        }
        row = next;
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::{apart, meanings, supported, symbol};
    use crate::calendar::Day;

    fn best(text: &str) -> (String, Option<String>) {
        let number: String = text.chars().map(symbol).collect();
        let found = meanings(text, &number, Day::new(2026, 5, 4).unwrap());
        let best = found.into_iter().max_by(|a, b| a.share.total_cmp(&b.share));
        best.map_or_else(Default::default, |meaning| (meaning.body, meaning.date))
    }

    #[test]
    fn ends_of_ovals_are_no_part_of_a_number() {
        for text in ["DOT 1HKB 9FLP 0723", "DOT (1HKB) (9FLP) (0723)", "DOT 1HKB 9FLP 00723", "DOT 1HKB 9FLP 07230"] {
            assert_eq!(best(text), ("1HKB9FLP".into(), Some("0723".into())), "{text}");
        }
    }

    #[test]
    fn letters_that_numbers_lack_are_the_digits_they_resemble() {
        assert_eq!(best("DOT IHKB GFLS"), ("1HKB6FL5".into(), None));
    }

    #[test]
    fn what_stands_beside_a_number_is_no_part_of_it() {
        let number = ("1HKB9FLP".to_owned(), Some("0723".to_owned()));
        for text in [
            "DOT 1HKB 9FLP 0723 E4 0225611",
            "MLDOT 1HKB 9FLP 0723",
            "DOT 1HKB 9FLP 0723 MAX LOAD 615 KG",
            "DOT 1HKB 9FLP 0723 RUBALE",
        ] {
            assert_eq!(best(text), number, "{text}");
        }
        assert_eq!(best("DOT 1HKB 9FLP 007230"), number);
        for text in ["DOT 1HKB 9FLP E4 0225611", "DOT 1HKB 9FLP E40225611 S2WR2", "DOT 1HKB 9FLP 0225611"] {
            assert_eq!(best(text), ("1HKB9FLP".into(), None), "{text}");
        }
    }

    #[test]
    fn other_lines_and_weeks_to_come_give_no_number() {
        for text in ["MAX LOAD 850 KG", "350 KPA", "TREADWEAR 300", "0211814 S2WR2", "225/45R17 91W"] {
            assert_eq!(best(text), Default::default(), "{text}");
        }
        assert_eq!(best("DOT 1HKB 9FLP 5126").1, None);
    }

    #[test]
    fn readings_near_one_another_support_each_other() {
        let looks = [("1HKB9FLP", 0.5), ("1HKB9FLR", 0.45), ("1HKB9FLP1", 0.3), ("XXXXXXXX", 0.6)];
        let looks: Vec<_> = looks.iter().map(|(text, weight)| ((*text).to_owned(), *weight)).collect();
        let support = supported(&looks);
        assert!(support[0] > support[1] && support[0] > support[2] && support[0] > support[3], "{support:?}");
    }

    #[test]
    fn differences_are_counted_symbol_by_symbol() {
        for (a, b, symbols) in [("", "", 0), ("AB", "AB", 0), ("AB", "A", 1), ("AB", "XB", 1), ("ABC", "BCD", 2)] {
            assert_eq!((apart(a, b), apart(b, a)), (symbols, symbols), "{a} {b}");
        }
    }
}
