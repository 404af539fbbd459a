//! Sets of wheels that change with the season: brought, and stored.

use super::{Acting, Done, Outcome};
use crate::engine::Trouble;
use crate::entry::{Fact, Laid, Thing};
use crate::ident::TireId;
use crate::procedure::{Ask, Bay};
use crate::vehicle::Place;

impl Acting<'_> {
    /// The set that goes on: the stored wheels, each at the corner where it came
    /// off; or wheels that are new to the book, one at each corner.
    pub(super) fn bring_set(&self, bay: &Bay<'_>, new: bool) -> Done {
        self.gate(bay, Ask::Set, None)?;
        let job = bay.job.id;
        if !new && self.book.is_archived(Thing::Set(bay.vehicle.id)) {
            return Err(Trouble::mend(self.words, "trouble-archived-set", &[]));
        }
        let wheels: Vec<Laid> = if new {
            let corners = bay.vehicle.layout.positions().map(Place::Wheel);
            corners.map(|at| Laid { tire: TireId::from_parts(self.now_ms(), self.host.random()), at }).collect()
        } else {
            // Of several sets the one that was put away last.
            let last = bay.vehicle.stored.iter().map(|stored| stored.when).max();
            let set = bay.vehicle.stored.iter().rev().find(|stored| Some(stored.when) == last).map(|stored| stored.job);
            let of_set = bay.vehicle.stored.iter().filter(|stored| Some(stored.job) == set);
            of_set.map(|stored| Laid { tire: stored.tire, at: stored.at }).collect()
        };
        if wheels.is_empty() {
            return Err(Trouble::mend(self.words, "trouble-nothing-stored", &[]));
        }
        let racks = bay.vehicle.stored.iter().filter(|stored| wheels.iter().any(|laid| laid.tire == stored.tire));
        let mut racks: Vec<String> = racks.map(|stored| stored.rack.clone()).collect();
        racks.dedup();
        let outcome = Outcome::fact(Fact::SetBrought { job, wheels });
        Ok(if racks.is_empty() {
            outcome
        } else {
            let racks = self.words.list(racks);
            outcome.note(self.words.text("said-set-from", &[("racks", racks.into())]))
        })
    }

    /// Stores the wheels that came off: one, or all that are not stored yet.
    pub(super) fn store(&self, bay: &Bay<'_>, rack: &str, at: Option<&str>) -> Done {
        self.gate(bay, Ask::Stored, None)?;
        let rack = self.text("what-rack", rack)?;
        let named = at.map(|at| self.wheel(bay, at)).transpose()?;
        let off: Vec<(Place, TireId)> = bay
            .job
            .fitted
            .iter()
            .filter(|(place, _)| named.is_none_or(|at| at == **place) && bay.job.came_off(**place))
            .filter(|(place, _)| named.is_some() || bay.job.stored().all(|(_, at, _)| at != **place))
            .map(|(place, tire)| (*place, *tire))
            .collect();
        if off.is_empty() {
            return Err(Trouble::mend(self.words, "trouble-nothing-to-store", &[]));
        }
        let stored =
            off.into_iter().map(|(at, tire)| Fact::TireStored { job: bay.job.id, tire, at, rack: rack.clone() });
        Ok(stored.fold(Outcome::default(), Outcome::and).note(self.words.text("said-labels", &[])))
    }
}
