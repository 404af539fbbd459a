//! Tires that wear together: two of an axle, and the set of a vehicle that drives all wheels.

use super::{Finding, Looking, What};
use crate::drive;
use crate::entry::{Kind, Shelf};
use crate::finding::State;
use crate::limits;
use crate::measure::{Depth, DepthUnit};
use crate::source::{Grade, Source};
use crate::vehicle::{Drive, Place};

/// Two tires of one axle, or a set on driven axles, that differ by more than
/// this are told: 2/32 in, a figure of the trade (common practice, no source).
const APART_MM: f64 = 1.5875;

impl Looking<'_> {
    /// What is uneven, where the tires end in this job.
    pub(super) fn of_axles(self) -> Vec<Finding> {
        let ends: Vec<(Place, Depth)> = self
            .job
            .planned()
            .into_iter()
            .filter_map(|(place, tire)| Some((self.ends_at(place), self.job.tread(tire)?.1)))
            .collect();
        let on_axle = |axle: u8| -> Vec<Depth> {
            let here = |place: &Place| place.position().is_some_and(|position| position.axle == axle);
            ends.iter().filter(|(place, _)| here(place)).map(|(_, depth)| *depth).collect()
        };
        let mut findings: Vec<Finding> = (1u8..)
            .take(self.vehicle.layout.axles.len())
            .filter_map(|axle| self.uneven(axle, &on_axle(axle)))
            .collect();
        let rolling: Vec<Depth> = ends.iter().filter(|(p, _)| p.position().is_some()).map(|(_, d)| *d).collect();
        if self.drives_all() {
            findings.extend(uneven_set(&rolling));
        }
        findings
    }

    fn uneven(self, axle: u8, depths: &[Depth]) -> Option<Finding> {
        let (most, least) = ends_of(depths)?;
        let place = Place::single(axle, crate::vehicle::Side::Left);
        let ruled = limits::judge_spread(most, least, self.circumstances(place)).filter(|spread| spread.over);
        let what = What::Uneven { axle, most, least };
        match ruled {
            Some(spread) => Some(Finding {
                state: State::BelowLimit,
                at: None,
                tire: None,
                what,
                source: Some(spread.limit.source),
            }),
            None => (apart_mm(most, least) > APART_MM + 1e-9).then_some(Finding {
                state: State::Watch,
                at: None,
                tire: None,
                what,
                source: Some(Source::PRACTICE),
            }),
        }
    }

    fn drives_all(self) -> bool {
        if let Some(Shelf::Drive { drive }) = self.book.on_shelf(&self.vehicle.model, Kind::Drive).map(|s| &s.shelf) {
            return *drive == Drive::All;
        }
        let (seen, told) = drive::noted(self.job.drive_seen());
        drive::verdict(&self.vehicle.layout, self.vehicle.class, &seen, &told).drive == Drive::All
    }
}

/// A spread over an all-wheel-drive set strains what joins the axles (common practice, no source).
fn uneven_set(depths: &[Depth]) -> Option<Finding> {
    let (most, least) = ends_of(depths)?;
    let source = Some(Source { grade: Grade::CommonPractice, title: "" });
    let what = What::UnevenSet { most, least };
    (apart_mm(most, least) > APART_MM + 1e-9).then_some(Finding {
        state: State::Watch,
        at: None,
        tire: None,
        what,
        source,
    })
}

fn mm(depth: Depth) -> f64 {
    depth.in_unit(DepthUnit::Millimetre)
}

fn apart_mm(most: Depth, least: Depth) -> f64 {
    mm(most) - mm(least)
}

/// The deepest and the shallowest of two or more.
fn ends_of(depths: &[Depth]) -> Option<(Depth, Depth)> {
    let most = depths.iter().copied().max_by(|a, b| mm(*a).total_cmp(&mm(*b)))?;
    let least = depths.iter().copied().min_by(|a, b| mm(*a).total_cmp(&mm(*b)))?;
    (depths.len() > 1).then_some((most, least))
}
