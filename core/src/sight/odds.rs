//! From how much speaks for a reading to odds that hold.
//!
//! The share of all evidence that a reading has says which is likelier, not how likely it is. A table for each kind of
//! reading turns the share of the best into how often readings of that share were right; between its points odds run
//! straight. The points come from an isotonic regression (never falling; bins of eight and more) over the first 57 drawn
//! wheels of the tuning set (`draw-wheels`), each taken at the lower end of what so few wheels prove (one-sided, about
//! 80 %), since drawn lettering is cleaner than real. Of 32 chalked marks among the first 150 wheels of that set 31 were
//! found and told right, and none was told on the other 118; chalk is at most 0.9 likely, for real hands are less even.
//!
//! No reading is likelier than it is against its nearest rival alone; what the best leaves is shared among the others.

/// A kind of reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    Size,
    Service,
    Date,
    Tin,
    Chalk,
}

impl Kind {
    /// Shares, and how often readings of that share were right.
    const fn table(self) -> &'static [(f64, f64)] {
        match self {
            Self::Size => &[(0.0, 0.0), (0.2, 0.55), (0.47, 0.82), (0.75, 0.9), (0.9, 0.94), (1.0, 0.95)],
            Self::Service => &[(0.0, 0.0), (0.05, 0.15), (0.2, 0.65), (0.6, 0.85), (0.85, 0.9), (1.0, 0.93)],
            Self::Date => &[(0.0, 0.0), (0.53, 0.55), (0.87, 0.88), (1.0, 0.93)],
            Self::Tin => &[(0.0, 0.0), (0.36, 0.35), (0.6, 0.68), (0.87, 0.86), (1.0, 0.92)],
            Self::Chalk => &[(0.0, 0.0), (0.58, 0.5), (0.73, 0.88), (1.0, 0.9)],
        }
    }

    /// How likely readings are right, by what speaks for each, the most first; `none` is kept for "something else".
    pub fn all(self, sums: &[f64], none: f64) -> Vec<f64> {
        let total = sums.iter().sum::<f64>() + none;
        let Some((&best, others)) = sums.split_first().filter(|_| total > 0.0) else { return Vec::new() };
        let rival = others.first().copied().unwrap_or(0.0);
        let first = self.odds(best / total).min(best / (best + rival).max(f64::MIN_POSITIVE));
        let left = |sum: &f64| (sum / (total - best).max(f64::MIN_POSITIVE) * (1.0 - first)).min(first);
        std::iter::once(first).chain(others.iter().map(left)).collect()
    }

    /// How likely the best reading is right when it has this share of the evidence.
    fn odds(self, share: f64) -> f64 {
        let share = share.clamp(0.0, 1.0);
        let ends = self.table().windows(2).find(|ends| ends.last().is_some_and(|to| share <= to.0));
        let Some(&[(x0, y0), (x1, y1)]) = ends else { return 0.0 };
        // Rounding must not lift a point over the table's next one.
        if x1 > x0 { (y0 + (y1 - y0) * (share - x0) / (x1 - x0)).min(y1) } else { y1 }
    }
}

#[cfg(test)]
mod tests {
    use super::Kind;

    #[test]
    fn more_evidence_never_means_lower_odds() {
        for kind in [Kind::Size, Kind::Service, Kind::Date, Kind::Tin, Kind::Chalk] {
            let odds: Vec<f64> = (0..=1000).map(|n| kind.odds(f64::from(n) / 1000.0)).collect();
            assert!(odds.windows(2).all(|pair| pair[0] <= pair[1]), "{kind:?}");
            assert!(odds[0] >= 0.0 && odds[1000] <= 1.0, "{kind:?}");
            assert_eq!((kind.odds(-1.0), kind.odds(2.0)), (odds[0], odds[1000]));
        }
    }

    #[test]
    fn a_rival_halves_the_odds_and_all_together_are_at_most_one() {
        let alone = Kind::Size.all(&[2.0], 0.35);
        let rivals = Kind::Size.all(&[2.0, 2.0, 0.1], 0.35);
        assert!(alone[0] > 0.85 && (rivals[0] - 0.5).abs() < 1e-9 && rivals[1] <= rivals[0], "{alone:?} {rivals:?}");
        for sums in [&[1.0, 0.9, 0.8][..], &[5.0, 0.01], &[0.02, 0.02, 0.02, 0.01], &[0.3], &[]] {
            let odds = Kind::Tin.all(sums, 0.35);
            assert!(odds.len() == sums.len() && odds.iter().sum::<f64>() <= 1.0 + 1e-9, "{odds:?}");
            assert!(odds.windows(2).all(|pair| pair[0] >= pair[1]), "{odds:?}");
        }
        assert!(Kind::Date.all(&[0.0], 0.0).is_empty());
    }
}
