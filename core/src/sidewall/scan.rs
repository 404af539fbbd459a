//! A cursor over the upper-cased bytes of a marking.

/// Where in the text we stand. All positions are bytes of the upper-cased text.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scan<'a> {
    bytes: &'a [u8],
    at: usize,
}

/// A whole number and how many digits it was written with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Digits {
    pub value: u32,
    pub count: usize,
}

/// Marks that part items from each other as a space does.
pub(super) fn parts(byte: u8) -> bool {
    matches!(byte, b' ' | b'\t' | b'\n' | b'\r' | b',' | b';' | b'|' | b'[' | b']' | b'"')
}

impl<'a> Scan<'a> {
    pub(super) fn new(bytes: &'a [u8]) -> Self {
        Self { bytes, at: 0 }
    }

    pub(super) fn at(&self) -> usize {
        self.at
    }

    pub(super) fn go_to(&mut self, at: usize) {
        self.at = at.min(self.bytes.len());
    }

    pub(super) fn done(&self) -> bool {
        self.at >= self.bytes.len()
    }

    pub(super) fn peek(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    pub(super) fn peek_past(&self, ahead: usize) -> Option<u8> {
        self.bytes.get(self.at.saturating_add(ahead)).copied()
    }

    pub(super) fn step(&mut self) {
        self.at = self.at.saturating_add(1).min(self.bytes.len());
    }

    pub(super) fn eat(&mut self, byte: u8) -> bool {
        let found = self.peek() == Some(byte);
        if found {
            self.step();
        }
        found
    }

    pub(super) fn eat_text(&mut self, text: &[u8]) -> bool {
        let found = self.rest().starts_with(text);
        if found {
            self.go_to(self.at.saturating_add(text.len()));
        }
        found
    }

    pub(super) fn rest(&self) -> &'a [u8] {
        self.bytes.get(self.at..).unwrap_or_default()
    }

    pub(super) fn between(&self, from: usize, to: usize) -> &'a [u8] {
        self.bytes.get(from..to).unwrap_or_default()
    }

    /// Spaces only: what may stand inside one item.
    pub(super) fn spaces(&mut self) -> usize {
        let from = self.at;
        while self.peek() == Some(b' ') {
            self.step();
        }
        self.at.saturating_sub(from)
    }

    /// Whatever parts two items.
    pub(super) fn between_items(&mut self) {
        while self.peek().is_some_and(parts) {
            self.step();
        }
    }

    /// An item may end here.
    pub(super) fn at_end_of_item(&self) -> bool {
        self.peek().is_none_or(|b| parts(b) || matches!(b, b'(' | b')'))
    }

    /// Up to `most` digits in a row.
    pub(super) fn digits(&mut self, most: usize) -> Option<Digits> {
        let (mut value, mut count) = (0_u32, 0_usize);
        while count < most.min(9) {
            let Some(digit) = self.peek().filter(u8::is_ascii_digit) else { break };
            value = value.saturating_mul(10).saturating_add(u32::from(digit.saturating_sub(b'0')));
            count = count.saturating_add(1);
            self.step();
        }
        (count > 0).then_some(Digits { value, count })
    }

    /// The next run of letters and digits, without moving.
    pub(super) fn run(&self) -> &'a [u8] {
        let rest = self.rest();
        let end = rest.iter().position(|b| !b.is_ascii_alphanumeric()).unwrap_or(rest.len());
        rest.get(..end).unwrap_or_default()
    }

    /// The text up to the next space or other parting mark, without moving.
    pub(super) fn token(&self) -> &'a [u8] {
        let rest = self.rest();
        let end = rest.iter().position(|b| parts(*b)).unwrap_or(rest.len());
        rest.get(..end).unwrap_or_default()
    }
}
