//! What to set a tire to, and why.

use super::{Say, Worded, Words};
use crate::inflation::{Act, AxleChange, Finding, Leak, Setting, Standing};
use crate::measure::{Pressure, PressureUnit};
use crate::vehicle::Layout;

impl Words {
    /// A difference of pressures in a unit.
    fn pressure_apart(&self, by: f64, unit: PressureUnit) -> String {
        let shown = self.number(by, unit.decimals().max(1));
        self.text(unit.sentence(), &[("value", shown.into()), ("count", by.into())])
    }

    /// What to know about a setting; `unit` is the placard's.
    pub fn inflation_finding(&self, finding: &Finding, unit: PressureUnit) -> String {
        let by = |id: &str, by: f64| self.text(id, &[("by", self.pressure_apart(by, unit).into())]);
        match finding {
            Finding::PlacardNotKnown => self.text("inflate-placard-not-known", &[]),
            Finding::PlacardVoidBySize => self.text("inflate-placard-void-by-size", &[]),
            Finding::PlacardVoidByLoad => self.text("inflate-placard-void-by-load", &[]),
            Finding::FittedNotCompared => self.text("inflate-fitted-not-compared", &[]),
            Finding::PlacardOverSidewall { placard, sidewall } => self.text(
                "inflate-placard-over-sidewall",
                &[("placard", self.reading(placard).into()), ("sidewall", self.reading(sidewall).into())],
            ),
            Finding::SidewallNotKnown => self.text("inflate-sidewall-not-known", &[]),
            Finding::RaisedForCold { by: above } => by("inflate-raised-for-cold", *above),
            Finding::HeldAtPlacard => self.text("inflate-held-at-placard", &[]),
            Finding::CappedAtSidewall { wanted } => {
                self.text("inflate-capped-at-sidewall", &[("wanted", self.computed(wanted).into())])
            }
            Finding::UnderPlacardOutside { by: under } => by("inflate-under-placard-outside", *under),
            Finding::OverSidewallOutside { by: over } => by("inflate-over-sidewall-outside", *over),
            Finding::DoNotBleedWarm => self.text("inflate-do-not-bleed-warm", &[]),
            Finding::LowThoughWarm => self.text("inflate-low-though-warm", &[]),
            Finding::InspectBeforeFilling => self.text("inflate-inspect-before-filling", &[]),
            Finding::MayHaveRunFlat => self.text("inflate-may-have-run-flat", &[]),
            Finding::StepTooCoarse => self.text("inflate-step-too-coarse", &[]),
        }
    }

    /// What a move asks of a tire's pressure.
    pub fn axle_change(&self, change: &AxleChange, layout: &Layout) -> String {
        let id = match change.act {
            Act::Keep => "pressure-keep",
            Act::Raise => "pressure-raise",
            Act::LowerWhenCold => "pressure-lower-when-cold",
            Act::Set => "pressure-set",
            Act::LookAtPlacard => "pressure-look-at-placard",
        };
        let shown = |pressure: Option<Pressure>| pressure.map(|p| self.reading(&p)).unwrap_or_default();
        self.text(
            id,
            &[
                ("to", layout.name(change.to, self.speech().letters).into()),
                ("was", shown(change.was).into()),
                ("now", shown(change.now).into()),
            ],
        )
    }

    /// How fast a tire loses air, in the unit that the gauge has.
    pub fn leak(&self, leak: &Leak, unit: PressureUnit) -> String {
        let id = match (leak.slow_leak, leak.temperature_known) {
            (true, true) => "leak-slow",
            (true, false) => "leak-slow-unknown",
            (false, _) if leak.kpa_per_30_days > 0.0 => "leak-none",
            _ => "leak-gained",
        };
        let rate = Pressure::new(leak.kpa_per_30_days.max(0.0), PressureUnit::Kilopascal)
            .map(|rate| self.pressure_apart(rate.in_unit(unit), unit))
            .unwrap_or_default();
        self.text(id, &[("rate", rate.into())])
    }
}

impl Say for Setting {
    fn say(&self, words: &Words) -> String {
        match (&self.set, &self.cold) {
            (Some(set), Some(cold)) => {
                let (set, cold) = (words.computed(set), words.computed(cold));
                words.text("inflate-set", &[("set", set.into()), ("cold", cold.into())])
            }
            (Some(set), None) => words.text("inflate-set-cold-unknown", &[("set", words.computed(set).into())]),
            (None, _) => words.text("inflate-no-figure", &[]),
        }
    }
}

impl Say for Standing {
    fn say(&self, words: &Words) -> String {
        words.coded("standing", self)
    }
}
