//! Measured tread in few letters: it is most of what is kept of a large book.

use serde::{Deserialize, Serialize};

use super::DepthSeen;
use crate::calendar::Moment;
use crate::ident::{EntryId, JobId};
use crate::measure::{Depth, DepthUnit, Distance, Unit};
use crate::vehicle::Place;

/// Job, place, unit and value of the lowest spot, values by place around and
/// groove, their units where one is another, odometer, time, entry.
#[derive(Serialize, Deserialize)]
pub(super) struct Kept(JobId, String, u8, f64, Vec<Vec<f64>>, Vec<u8>, Option<Distance>, Moment, EntryId);

/// A unit by its place in the list of all.
fn number(unit: DepthUnit) -> u8 {
    DepthUnit::ALL.iter().position(|known| *known == unit).and_then(|at| u8::try_from(at).ok()).unwrap_or_default()
}

fn depth(value: f64, unit: u8) -> Result<Depth, String> {
    let unit = DepthUnit::ALL.get(usize::from(unit)).ok_or("no such unit")?;
    Depth::new(value, *unit).map_err(|why| why.to_string())
}

impl From<DepthSeen> for Kept {
    fn from(seen: DepthSeen) -> Self {
        let units: Vec<u8> = seen.grooves.iter().flatten().map(|depth| number(depth.unit())).collect();
        let unit = number(seen.lowest.unit());
        Self(
            seen.job,
            seen.at.to_string(),
            unit,
            seen.lowest.value(),
            seen.grooves.iter().map(|around| around.iter().map(|depth| depth.value()).collect()).collect(),
            if units.iter().all(|other| *other == unit) { Vec::new() } else { units },
            seen.odometer,
            seen.when,
            seen.entry,
        )
    }
}

impl TryFrom<Kept> for DepthSeen {
    type Error = String;

    fn try_from(Kept(job, at, unit, lowest, values, units, odometer, when, entry): Kept) -> Result<Self, String> {
        let mut units = units.into_iter();
        let grooves: Result<Vec<Vec<Depth>>, String> = values
            .into_iter()
            .map(|around| around.into_iter().map(|value| depth(value, units.next().unwrap_or(unit))).collect())
            .collect();
        Ok(Self {
            job,
            at: Place::parse(&at).ok_or("no such place")?,
            lowest: depth(lowest, unit)?,
            grooves: grooves?,
            odometer,
            when,
            entry,
        })
    }
}
