//! Whose limits hold, for the book or for the job in the bay.

use super::{Acting, Done, Outcome};
use crate::engine::Trouble;
use crate::entry::Fact;
use crate::finding::State;
use crate::limits::{Chosen, Region, Season, judge};
use crate::measure::{Depth, DepthUnit};
use crate::procedure::Bay;
use crate::vehicle::Place;
use crate::words::{Say, Units};

impl Acting<'_> {
    pub(super) fn choose_limits(
        &self,
        region: Option<Region>,
        season: Option<Season>,
        thresholds: [Option<&str>; 2],
        this_job: bool,
    ) -> Done {
        let default = match self.words.speech().units {
            Units::AsRead => None,
            Units::Metric => Some(DepthUnit::Millimetre),
            Units::Us => Some(DepthUnit::ThirtySecond),
        };
        let depth = |text: Option<&str>| text.map(|text| self.reading::<DepthUnit>(text, default)).transpose();
        let [at_limit, watch] = thresholds;
        let chosen = Chosen { region, season, at_limit: depth(at_limit)?, watch: depth(watch)? };
        if chosen == Chosen::default() {
            return Err(Trouble::mend(self.words, "trouble-limits-empty", &[]));
        }
        let bay = if this_job { Some(self.bay()?) } else { None };
        let held = chosen.over(bay.as_ref().map_or(self.book.limits, |bay| bay.job.chosen()));
        if let Chosen { at_limit: Some(at_limit), watch: Some(watch), .. } = held.or_default()
            && watch < at_limit
        {
            let args = [("at", self.words.reading(&at_limit).into()), ("watch", self.words.reading(&watch).into())];
            return Err(Trouble::mend(self.words, "trouble-limits-order", &args).at("watch"));
        }
        let said = self.words.limits(held);
        Ok(Outcome::fact(Fact::LimitsChosen { job: bay.map(|bay| bay.job.id), chosen }).note(said))
    }

    /// How a tread depth stands where it was measured, when it is not clear of its limit.
    pub(super) fn judged(&self, bay: &Bay<'_>, at: Place, lowest: Depth) -> Option<String> {
        let rules = bay.job.rules();
        let judged = judge(lowest, rules.at(bay.vehicle.class, &bay.vehicle.layout, at), rules.thresholds);
        judged.state.filter(|state| *state != State::Sound).map(|_| judged.say(self.words))
    }
}
