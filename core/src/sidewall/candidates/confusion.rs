//! Which characters a camera takes for which, and what that costs.
//!
//! Costs are tenths of a nat (10 = one in *e*), set by hand from the shapes of
//! molded capitals: common practice, no source. Only their order matters.

/// Cost of taking `read` for `taken`: 0 when they are the same, `None` when
/// nobody would.
pub(super) fn cost(read: u8, taken: u8) -> Option<u16> {
    if read == taken {
        return Some(0);
    }
    let tenths = match (taken, read) {
        // Digits.
        (b'0', b'O') => 7,
        (b'0', b'Q' | b'D') => 12,
        (b'0', b'U' | b'C') => 20,
        (b'0', b'8' | b'6') => 36,
        (b'0', b'9') => 39,
        (b'1', b'I' | b'L' | b'|') => 7,
        (b'1', b'!' | b'\'') => 12,
        (b'1', b'T' | b'J' | b'/') => 20,
        (b'1', b'7') => 35,
        (b'1', b'4') => 42,
        (b'2', b'Z') => 8,
        (b'2', b'7' | b'3') => 38,
        (b'3', b'E' | b'B') => 20,
        (b'3', b'8') => 34,
        (b'3', b'5' | b'9' | b'2') => 38,
        (b'4', b'A') => 14,
        (b'4', b'H') => 22,
        (b'4', b'1' | b'9') => 42,
        (b'5', b'S') => 8,
        (b'5', b'6') => 34,
        (b'5', b'3' | b'9') => 38,
        (b'6', b'G') => 9,
        (b'6', b'B') => 17,
        (b'6', b'5' | b'8' | b'0') => 35,
        (b'7', b'T' | b'?') => 12,
        (b'7', b'Y') => 20,
        (b'7', b'1') => 35,
        (b'7', b'2') => 39,
        (b'8', b'B') => 8,
        (b'8', b'3' | b'6') => 34,
        (b'8', b'0' | b'S') => 24,
        (b'9', b'G' | b'P') => 18,
        (b'9', b'0' | b'3' | b'5') => 38,
        (b'9', b'4') => 40,
        // Marks.
        (b'/', b'\\') => 5,
        (b'/', b'|') => 8,
        (b'/', b'I' | b'L' | b'1') => 12,
        (b'/', b'-' | b'.' | b',') => 15,
        (b'/', b'7') => 18,
        (b'.', b',') => 3,
        (b'.', b'-' | b'\'') => 12,
        (b'-', b'_' | b'~' | b'=') => 5,
        (b'-', b'.') => 15,
        (b'X', b'*') => 5,
        (b'X', b'K' | b'%') => 18,
        // Letters.
        (b'R', b'P' | b'K' | b'A' | b'B') => 17,
        (b'R', b'F' | b'8' | b'H') => 24,
        (b'Z', b'2') => 8,
        (b'Z', b'7') => 20,
        (b'D', b'0' | b'O') => 10,
        (b'D', b'B') => 18,
        (b'B', b'8') => 8,
        (b'B', b'6' | b'3' | b'R') => 20,
        (b'C', b'G' | b'(') => 14,
        (b'C', b'0' | b'O') => 22,
        (b'E', b'F' | b'3') => 16,
        (b'F', b'E' | b'P') => 28,
        (b'G', b'6') => 9,
        (b'G', b'C') => 27,
        (b'H', b'N' | b'M' | b'K' | b'4') => 17,
        (b'J', b'1' | b'I' | b'3') => 20,
        (b'K', b'X' | b'R' | b'H') => 30,
        (b'L', b'1' | b'I') => 8,
        (b'M', b'N' | b'H' | b'W') => 30,
        (b'N', b'H' | b'M' | b'W') => 29,
        (b'P', b'R' | b'F') => 29,
        (b'P', b'9') => 22,
        (b'Q', b'0' | b'O') => 10,
        (b'S', b'5') => 8,
        (b'S', b'8' | b'3') => 22,
        (b'T', b'7' | b'I' | b'1') => 13,
        (b'T', b'Y') => 32,
        (b'U', b'V') => 29,
        (b'U', b'0' | b'O') => 20,
        (b'V', b'Y' | b'U') => 29,
        (b'V', b'W') => 34,
        (b'W', b'V' | b'M') => 32,
        (b'Y', b'V' | b'T') => 30,
        (b'O', b'0' | b'Q' | b'D') => 7,
        _ => return None,
    };
    Some(tenths)
}

/// The digits a character can be taken for, so that only those are priced.
pub(super) fn digits(read: u8) -> &'static [u8] {
    match read {
        b'C' | b'D' | b'O' | b'Q' | b'U' => b"0",
        b'9' => b"03459",
        b'8' => b"0368",
        b'6' => b"0568",
        b'0' => b"0689",
        b'!' | b'/' | b'I' | b'J' | b'L' | b'\'' | b'|' => b"1",
        b'7' => b"127",
        b'1' => b"147",
        b'4' => b"149",
        b'T' => b"17",
        b'Z' => b"2",
        b'3' => b"23589",
        b'2' => b"237",
        b'E' => b"3",
        b'5' => b"3569",
        b'B' => b"368",
        b'A' | b'H' => b"4",
        b'S' => b"58",
        b'G' => b"69",
        b'?' | b'Y' => b"7",
        b'P' => b"9",
        _ => b"",
    }
}

/// The digit a symbol stands for that tire identification numbers do not use.
pub(super) fn instead_in_tin(read: u8) -> Option<u8> {
    match read {
        b'G' => Some(b'6'),
        b'I' | b'|' => Some(b'1'),
        b'O' | b'Q' => Some(b'0'),
        b'S' => Some(b'5'),
        b'Z' => Some(b'2'),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{cost, digits};

    #[test]
    fn the_digits_of_a_character_are_those_with_a_price() {
        for read in 0..=u8::MAX {
            let priced: Vec<u8> = (b'0'..=b'9').filter(|digit| cost(read, *digit).is_some()).collect();
            assert_eq!(digits(read), priced, "{}", char::from(read));
        }
    }
}
