//! The history of a vehicle's tires from its jobs in the book.

use std::collections::{BTreeMap, BTreeSet};

use crate::entry::{Fact, OdometerNote};
use crate::ident::{TireId, VehicleId};
use crate::logbook::{Book, Job, Vehicle};
use crate::measure::{Depth, Distance, DistanceUnit};

use super::answer::{Answer, Question, wear};
use super::history::{History, Moved, Reading};

/// What the jobs of a vehicle tell of its wear, practice left out.
#[derive(Debug, Clone)]
pub(crate) struct Visits {
    history: History,
    /// What each tire is called in the history now.
    names: BTreeMap<TireId, String>,
    /// What the odometer is behind the history's distances, in km.
    behind_km: f64,
    /// Distances between one visit with tread readings and the next, in km.
    gaps: Vec<f64>,
}

/// While the jobs are walked through.
#[derive(Default)]
struct Walk {
    visits: Vec<f64>,
    /// How often a tire's way could not be followed.
    restarts: BTreeMap<TireId, u32>,
    /// The last odometer figure, and the same counted on from the first instrument.
    last: Option<(f64, f64)>,
}

impl Visits {
    /// The visits of a vehicle. A tire whose way between two readings is not known
    /// (moved without an odometer figure, or over a replaced instrument) starts anew,
    /// so that no rate rests on it. An estimated figure is no reading.
    pub(crate) fn of(book: &Book, vehicle: VehicleId) -> Self {
        let mut visits = Self { history: History::default(), names: BTreeMap::new(), behind_km: 0.0, gaps: Vec::new() };
        let mut walk = Walk::default();
        for job in book.jobs.iter().filter(|job| job.vehicle == vehicle && !job.practice) {
            visits.take(job, &mut walk);
        }
        if let Some((shown, counted)) = walk.last {
            visits.behind_km = counted - shown;
        }
        visits
    }

    fn take(&mut self, job: &Job, walk: &mut Walk) {
        let hung = |job: &Job| -> BTreeSet<TireId> {
            let on = job.lines.iter().filter_map(|line| match line.fact {
                Fact::WheelOn { tire, .. } | Fact::TireRemoved { tire, .. } => Some(tire),
                _ => None,
            });
            on.collect()
        };
        let read = job.last(|fact| match fact {
            Fact::OdometerRead { reading, note, .. } if *note != Some(OdometerNote::Estimated) => {
                Some((*reading, *note))
            }
            _ => None,
        });
        let Some((reading, note)) = read else {
            for tire in hung(job) {
                *walk.restarts.entry(tire).or_default() += 1;
            }
            return;
        };
        let shown = reading.in_unit(DistanceUnit::Kilometre);
        let counted = match walk.last {
            Some((before, counted)) if note == Some(OdometerNote::ClusterReplaced) || shown < before => {
                for tire in job.fitted.values() {
                    *walk.restarts.entry(*tire).or_default() += 1;
                }
                // How far it went between the two instruments is not known; no stretch crosses here.
                walk.visits.clear();
                counted + 1.0
            }
            Some((before, counted)) => counted + shown - before,
            None => shown,
        };
        walk.last = Some((shown, counted));
        let Some(odometer) = in_the_unit_read(counted, reading.unit()) else { return };
        let mut measured = false;
        for tire in job.fitted.values() {
            let name = self.name(*tire, walk);
            let told = job.last(|fact| match fact {
                Fact::TreadMeasured { tire: t, at, grooves, lowest, .. } if t == tire => Some((*at, grooves, *lowest)),
                _ => None,
            });
            let Some((at, grooves, lowest)) = told else { continue };
            measured = true;
            let grooves = lowest_of_each(grooves);
            self.history.readings.push(Reading {
                tire: name,
                odometer,
                at,
                grooves,
                lowest: Some(lowest),
                practice: false,
            });
        }
        if measured {
            if let Some(before) = walk.visits.last().filter(|before| counted > **before) {
                self.gaps.push(counted - before);
            }
            walk.visits.push(counted);
        }
        for line in &job.lines {
            let (tire, to) = match line.fact {
                Fact::WheelOn { tire, at, .. } => (tire, Some(at)),
                Fact::TireRemoved { tire, .. } => (tire, None),
                _ => continue,
            };
            let tire = self.name(tire, walk);
            self.history.moves.push(Moved { tire, odometer, to });
        }
    }

    /// What a tire is called, so long as its way is known.
    fn name(&mut self, tire: TireId, walk: &Walk) -> String {
        let name = match walk.restarts.get(&tire) {
            None => tire.to_string(),
            Some(restarts) => format!("{tire} {}", restarts + 1),
        };
        self.names.insert(tire, name.clone());
        name
    }

    /// The usual distance between visits: the middle one of those driven so far.
    pub(crate) fn usual(&self) -> Option<Distance> {
        let mut gaps = self.gaps.clone();
        gaps.sort_by(f64::total_cmp);
        let middle = gaps.get(gaps.len().checked_sub(1)? / 2)?;
        Distance::new(*middle, DistanceUnit::Kilometre).ok()
    }

    /// The tire that has this name in an answer.
    pub(crate) fn tire(&self, name: &str) -> Option<TireId> {
        self.names.iter().find(|(_, known)| *known == name).map(|(tire, _)| *tire)
    }

    /// The readings of a tire of an answer, in order: each with its number there,
    /// and with the figure that the odometer showed.
    pub(crate) fn readings_of(&self, name: &str) -> Vec<(usize, Reading)> {
        let shown = |reading: &Reading| {
            let km = reading.odometer.in_unit(DistanceUnit::Kilometre) - self.behind_km;
            in_the_unit_read(km, reading.odometer.unit())
        };
        let mine = (1..).zip(&self.history.readings).filter(|(_, reading)| reading.tire == name);
        mine.filter_map(|(number, reading)| Some((number, Reading { odometer: shown(reading)?, ..reading.clone() })))
            .collect()
    }

    /// How many readings are a tire's since its way is known.
    pub(crate) fn counted(&self) -> usize {
        let known: BTreeSet<&String> = self.names.values().collect();
        self.history.readings.iter().filter(|reading| known.contains(&reading.tire)).count()
    }

    /// What the readings say, by the limit of each axle; nothing when there is none.
    pub(crate) fn answer(&self, vehicle: &Vehicle, limit: impl Fn(u8) -> Option<Depth>) -> Option<Answer> {
        let axles = vehicle.layout.positions().map(|position| position.axle);
        let limits: BTreeMap<u8, Depth> = axles.filter_map(|axle| Some((axle, limit(axle)?))).collect();
        let question = Question { limits, prior: None, interval: self.usual() };
        let mut answer = wear(&self.history, &question).ok()?;
        // A tire that started anew is told by its newest name alone, and distances as the odometer shows them.
        answer.tires.retain(|tire| self.names.values().any(|name| *name == tire.tire));
        answer.next_visit.odometer_km -= self.behind_km;
        for slipped in &mut answer.slipped {
            slipped.odometer_km -= self.behind_km;
        }
        Some(answer)
    }
}

/// A distance in km, told in the unit the odometer was read in.
fn in_the_unit_read(km: f64, unit: DistanceUnit) -> Option<Distance> {
    Some(Distance::new(km, DistanceUnit::Kilometre).ok()?.to_unit(unit))
}

/// Each groove's lowest reading over the places around the tire.
pub(crate) fn lowest_of_each(places: &[Vec<Depth>]) -> Vec<Depth> {
    let count = places.iter().map(Vec::len).max().unwrap_or_default();
    (0..count)
        .filter_map(|groove| {
            places
                .iter()
                .filter_map(|place| place.get(groove).copied())
                .reduce(|low, next| if next < low { next } else { low })
        })
        .collect()
}
