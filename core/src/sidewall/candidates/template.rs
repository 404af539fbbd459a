//! Fitting misread text to the forms a marking can have.
//!
//! A form is a row of slots. A beam of the cheapest fits goes along the row;
//! every character that is taken for another is written down with its price.

use super::confusion;

/// The most characters a form has.
const MOST_TAKEN: usize = 24;
/// The most substitutions in one fit; more is not a reading.
pub(super) const MOST_SUBSTITUTIONS: usize = 7;
/// How many fits are kept at each slot.
const BEAM: usize = 10;
/// The dearest fit that is kept, tenths of a nat.
pub(super) const DEAREST: u16 = 75;
/// How much dearer than the cheapest a fit may be on the way.
const WITHIN: u16 = 45;
/// A mark that is not there.
const MISSING_MARK: u16 = 18;
/// A mark in whose place there is only a gap.
const GAP_FOR_MARK: u16 = 8;
/// A mark that should not be there.
const ODD_MARK: u16 = 14;
/// A gap inside figures that belong together.
const GAP_IN_FIGURES: u16 = 9;

/// One place of a form.
#[derive(Debug, Clone, Copy)]
pub(super) enum Slot {
    /// Any digit.
    Digit,
    /// A digit that need not be there.
    MaybeDigit,
    /// One of these characters.
    One(&'static [u8]),
    /// One of these characters, or nothing.
    Maybe(&'static [u8]),
    /// A mark; it may be lost.
    Mark(u8),
    /// All of these characters or none of them: `.5`.
    MaybeAll(&'static [u8]),
}

/// A character taken for another; `taken` is 0 where a mark was left out, and
/// `read` where one was put in.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Taken {
    /// Character of the text; texts are short.
    pub at: u16,
    pub read: u8,
    pub taken: u8,
    pub cost: u16,
}

/// How much may still be tried. It bounds the time a text can take, whatever it
/// says; no text of a tire comes near it.
#[derive(Debug)]
pub(super) struct Work {
    left: usize,
}

impl Work {
    /// Enough for a text of so many characters.
    pub(super) fn for_length(characters: usize) -> Self {
        Self { left: characters.saturating_mul(150).saturating_add(8_000) }
    }

    /// Takes so many trials; false when none are left.
    pub(super) fn spend(&mut self, trials: usize) -> bool {
        self.left = self.left.saturating_sub(trials);
        self.left > 0
    }
}

/// Text fitted so far.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fit {
    text: [u8; MOST_TAKEN],
    len: u8,
    /// Where the next character stands.
    pub at: usize,
    pub cost: u16,
    substitutions: [Taken; MOST_SUBSTITUTIONS],
    substituted: u8,
}

impl Fit {
    pub(super) fn at(at: usize) -> Self {
        Self {
            text: [0; MOST_TAKEN],
            len: 0,
            at,
            cost: 0,
            substitutions: [Taken::default(); MOST_SUBSTITUTIONS],
            substituted: 0,
        }
    }

    pub(super) fn text(&self) -> &[u8] {
        self.text.get(..usize::from(self.len)).unwrap_or_default()
    }

    pub(super) fn substitutions(&self) -> &[Taken] {
        self.substitutions.get(..usize::from(self.substituted)).unwrap_or_default()
    }

    /// This one and, behind it, another that was fitted by itself.
    pub(super) fn join(&self, tail: &Self) -> Option<Self> {
        let mut whole = *self;
        for taken in tail.substitutions() {
            whole.pay(*taken)?;
        }
        whole.at = tail.at;
        Some(whole)
    }

    /// The same with one more character; `None` when it gets too dear.
    #[inline]
    pub(super) fn push(&self, taken: u8, read: Option<u8>, cost: u16) -> Option<Self> {
        if self.cost.saturating_add(cost) > DEAREST {
            return None;
        }
        let mut longer = *self;
        *longer.text.get_mut(usize::from(self.len))? = taken;
        longer.len = longer.len.saturating_add(1);
        longer.pay(Taken { at: u16::try_from(self.at).ok()?, read: read.unwrap_or(0), taken, cost })?;
        if read.is_some() {
            longer.at = longer.at.saturating_add(1);
        }
        Some(longer)
    }

    /// Adds a substitution and its cost, if it costs anything.
    #[inline]
    fn pay(&mut self, taken: Taken) -> Option<()> {
        if taken.cost > 0 {
            *self.substitutions.get_mut(usize::from(self.substituted))? = taken;
            self.substituted = self.substituted.saturating_add(1);
            self.cost = self.cost.saturating_add(taken.cost);
        }
        (self.cost <= DEAREST).then_some(())
    }

    /// The same past a character that says nothing.
    fn skip(&self, read: u8, cost: u16) -> Option<Self> {
        let mut past = *self;
        past.pay(Taken { at: u16::try_from(self.at).ok()?, read, taken: 0, cost })?;
        past.at = past.at.saturating_add(1);
        Some(past)
    }
}

/// The cheapest fits of a form at a place, cheapest first.
pub(super) fn fits(text: &[u8], from: usize, form: &[Slot], work: &mut Work) -> Vec<Fit> {
    let mut beam = vec![Fit::at(from)];
    let mut next = Vec::with_capacity(BEAM.saturating_mul(4));
    for slot in form {
        for fit in &beam {
            through(text, *fit, *slot, &mut next);
        }
        if next.is_empty() || !work.spend(next.len()) {
            return Vec::new();
        }
        let cheapest = next.iter().map(|fit| fit.cost).min().unwrap_or(0);
        next.retain(|fit| fit.cost <= cheapest.saturating_add(WITHIN));
        if next.len() > BEAM {
            next.select_nth_unstable_by_key(BEAM.saturating_sub(1), |fit| fit.cost);
            next.truncate(BEAM);
        }
        beam.clear();
        std::mem::swap(&mut beam, &mut next);
    }
    beam.sort_by_key(|fit| fit.cost);
    beam
}

fn through(text: &[u8], fit: Fit, slot: Slot, next: &mut Vec<Fit>) {
    match slot {
        Slot::Digit => consume(text, fit, confusion::digits, GAP_IN_FIGURES, next),
        Slot::MaybeDigit => {
            next.push(fit);
            consume(text, fit, confusion::digits, GAP_IN_FIGURES, next);
        }
        Slot::One(wanted) => consume(text, fit, |_| wanted, 0, next),
        Slot::Maybe(wanted) => {
            next.push(fit);
            consume(text, fit, |_| wanted, 0, next);
        }
        Slot::Mark(mark) => {
            let before = next.len();
            consume(text, fit, |_| std::slice::from_ref(&mark), 0, next);
            if next.len() == before || next.get(before).is_some_and(|found| found.cost > fit.cost) {
                let gap = text.get(fit.at) == Some(&b' ');
                next.extend(fit.push(mark, None, if gap { GAP_FOR_MARK } else { MISSING_MARK }));
            }
        }
        Slot::MaybeAll(wanted) => {
            next.push(fit);
            let mut whole = Some(fit);
            for byte in wanted {
                whole = whole.and_then(|fit| {
                    let read = *text.get(fit.at)?;
                    fit.push(*byte, Some(read), confusion::cost(read, *byte)?)
                });
            }
            next.extend(whole);
        }
    }
}

/// Takes the next character for one of those wanted of it; a gap or one odd mark may
/// stand before it.
fn consume<'a>(text: &[u8], fit: Fit, wanted: impl Fn(u8) -> &'a [u8], gap_cost: u16, next: &mut Vec<Fit>) {
    let mut here = fit;
    for _ in 0..3_u8 {
        let Some(read) = text.get(here.at).copied() else { return };
        for byte in wanted(read) {
            if let Some(cost) = confusion::cost(read, *byte) {
                next.extend(here.push(*byte, Some(read), cost));
            }
        }
        let first = here.at == fit.at && fit.len == 0;
        let skipped = match read {
            _ if first => None,
            b' ' => here.skip(read, if gap_cost > 0 && here.at == fit.at { gap_cost } else { 0 }),
            b'.' | b',' | b'\'' | b'-' | b':' | b'*' | b'_' | b'"' | b'`' => here.skip(read, ODD_MARK),
            _ => None,
        };
        let Some(skipped) = skipped else { return };
        here = skipped;
    }
}
