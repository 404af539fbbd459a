//! Tightening: settings, rounds, cautions, stops, and what a nut's answer means.

use super::{Say, Worded, Words};
use crate::fastener::{Layer, Lubrication, NutOutcome, Printed, Stage, UnitClash};
use crate::fastening::{
    BadAdapter, Band, BarAdvice, BarStanding, BarWarning, Caution, ChartRow, ClampLoad, Gate, NoChartValue, NoTarget,
    Overrun, Plan, Problem, Recheck, RecheckOrigin, Round, Stop, Target,
};
use crate::measure::{Torque, TorqueUnit, Unit};

impl Words {
    /// A torque to a tenth, always in the unit of the scale it is set on or marked
    /// in: a wrench is never told a figure that is not on it.
    fn torque(&self, torque: &Torque) -> String {
        self.torque_in(torque.value(), torque.unit())
    }

    /// A torque or a difference of torques in a unit, to a tenth.
    fn torque_in(&self, value: f64, unit: TorqueUnit) -> String {
        self.text(unit.sentence(), &[("value", self.number(value, 1).into()), ("count", value.into())])
    }

    fn printed_torque(&self, printed: &Printed) -> String {
        match printed.high() {
            None => self.torque(&printed.low()),
            Some(high) => {
                let unit = printed.unit();
                let low = self.number(printed.low().value(), 1);
                let both = format!("{low}\u{2013}{}", self.number(high.value(), 1));
                self.text(unit.sentence(), &[("value", both.into()), ("count", high.value().into())])
            }
        }
    }

    /// A state of thread and seat; the manual's own words as they stand.
    pub fn lubrication(&self, lubrication: &Lubrication) -> String {
        match lubrication {
            Lubrication::AsManualSays(text) => text.clone(),
            other => self.coded("lubrication", other),
        }
    }

    /// What to set the wrench to, what the manual prints, and the order: each a sentence.
    pub fn tightening(&self, plan: &Plan) -> Vec<String> {
        let setting = ("setting", self.torque(&plan.setting).into());
        let first = if plan.setting == plan.target {
            self.text("tighten-set", &[setting])
        } else {
            self.text("tighten-set-adapter", &[setting, ("target", self.torque(&plan.target).into())])
        };
        let order = plan.order.iter().map(|stud| stud.to_string()).collect::<Vec<_>>().join(" \u{2013} ");
        let id = if plan.makers_order { "tighten-order-makers" } else { "tighten-order" };
        vec![first, self.band(plan.band, plan.margin), self.text(id, &[("order", order.into())])]
    }

    /// What to set the wrench to, and how far its worst reading stays from the ends of the range.
    pub fn target_told(&self, target: &Target) -> [String; 2] {
        let setting = ("setting", self.torque(&target.setting).into());
        [self.text("tighten-set", &[setting]), self.band(target.band, target.margin)]
    }

    fn band(&self, band: Option<Band>, margin: Option<f64>) -> String {
        let (Some(Band { min, max }), Some(margin)) = (band, margin) else {
            return self.text("tighten-no-band", &[]);
        };
        let id = if margin < 0.0 { "tighten-band-outside" } else { "tighten-band-inside" };
        let ends = [("min", self.torque(&min).into()), ("max", self.torque(&max).into())];
        let shown = self.text(
            min.unit().sentence(),
            &[("value", self.number(margin.abs(), 2).into()), ("count", margin.abs().into())],
        );
        let [min, max] = ends;
        self.text(id, &[min, max, ("margin", shown.into())])
    }

    fn clash(&self, id: &str, clash: &UnitClash) -> String {
        self.text(
            id,
            &[
                ("first", self.printed_torque(&clash.first).into()),
                ("second", self.printed_torque(&clash.second).into()),
                ("percent", self.number(clash.percent, 0).into()),
            ],
        )
    }

    /// What to know about a target; `unit` is that of the wrench's scale.
    pub fn target_problem(&self, problem: &Problem, unit: TorqueUnit) -> String {
        match problem {
            Problem::UnitClash(clash) => self.clash("tighten-unit-clash", clash),
            Problem::Converted { from } => self.text(
                "tighten-converted",
                &[("unit", unit_name(unit).into()), ("from", self.printed_torque(from).into())],
            ),
            Problem::WorstReadingOutside { by } => {
                self.text("tighten-worst-outside", &[("by", self.torque_in(*by, unit).into())])
            }
            Problem::NotOnScale { wanted, off_percent } => self.text(
                "tighten-not-on-scale",
                &[("wanted", self.torque_in(*wanted, unit).into()), ("off", self.number(*off_percent, 1).into())],
            ),
            Problem::ScaleEnds { better } => self.text("tighten-scale-ends", &[("better", self.torque(better).into())]),
        }
    }

    /// Something to know before a wheel is tightened; `unit` is that of the wrench's scale.
    pub fn tightening_caution(&self, caution: &Caution, unit: TorqueUnit) -> String {
        match caution {
            Caution::Target(problem) => self.target_problem(problem, unit),
            Caution::Bar(warning) => warning.say(self),
            Caution::Calibration { state } => self.coded("tighten-calibration", state),
            Caution::LubricationNotKnown => self.text("tighten-lubrication-not-known", &[]),
            Caution::Lubrication { manual, found } => self.text(
                "tighten-lubrication-differs",
                &[("manual", self.lubrication(manual).into()), ("found", self.lubrication(found).into())],
            ),
            Caution::Thread { manual, found } => self.text(
                "tighten-thread-differs",
                &[("manual", manual.to_string().into()), ("found", found.to_string().into())],
            ),
            Caution::SeatNotKnown => self.text("tighten-seat-not-known", &[]),
            Caution::LeftHand => self.text("tighten-left-hand", &[]),
            Caution::LockKey => self.text("tighten-lock-key", &[]),
        }
    }
}

/// A unit's short name, the same in every language.
fn unit_name(unit: TorqueUnit) -> String {
    unit.code().replace('.', "\u{b7}")
}

/// The unit of a code.
fn unit_of(code: &str) -> TorqueUnit {
    TorqueUnit::ALL.iter().copied().find(|unit| unit.code() == code).unwrap_or(TorqueUnit::NewtonMetre)
}

impl Say for BarWarning {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::MayClickWithoutMoving => words.text("tighten-bar-may-click", &[]),
            Self::GunNotKnown => words.text("tighten-bar-gun-not-known", &[]),
            Self::GunTooStrong { gun, bar } => words.text(
                "tighten-bar-gun-too-strong",
                &[("gun", words.torque(gun).into()), ("bar", words.torque(bar).into())],
            ),
            Self::HexNotKnown => words.text("tighten-bar-hex-not-known", &[]),
            Self::HexDiffers { bar, nut } => words.text(
                "tighten-bar-hex-differs",
                &[("bar", words.reading(bar).into()), ("nut", words.reading(nut).into())],
            ),
        }
    }
}

impl Say for BarAdvice {
    fn say(&self, words: &Words) -> String {
        let id = match self.standing {
            BarStanding::Under => "tighten-bar-under",
            BarStanding::Near => "tighten-bar-near",
            BarStanding::AtOrOver => "tighten-bar-at-or-over",
        };
        // Down to the whole: bars are marked in whole figures, and over the share is over it.
        let advised = words.torque_in(self.advised.value().floor(), self.advised.unit());
        let rating = words.torque(&self.rating);
        words.text(id, &[("rating", rating.into()), ("advised", advised.into())])
    }
}

impl Say for NoTarget {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::NothingPrinted => words.text("tighten-nothing-printed", &[]),
            Self::UnitClash(clash) => words.clash("tighten-no-agreement", clash),
            Self::Accuracy => words.text("tighten-accuracy", &[]),
            Self::NoStepInBand { below, above, unit } => {
                let shown = |value: f64| words.torque_in(value, unit_of(unit));
                words.text("tighten-no-step", &[("below", shown(*below).into()), ("above", shown(*above).into())])
            }
            Self::OutsideScale => words.text("tighten-outside-scale", &[]),
            Self::Adapter { reason } => reason.say(words),
        }
    }
}

impl Say for BadAdapter {
    fn say(&self, words: &Words) -> String {
        words.coded("tighten-adapter", self)
    }
}

impl Say for Stop {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::Seat { difference } => words.coded("tighten-stop-seat", difference),
            Self::Target(none) => none.say(words),
            Self::Studs { given } => words.text("tighten-stop-studs", &[("given", (*given).into())]),
            Self::MakersOrder => words.text("tighten-stop-order", &[]),
        }
    }
}

impl Say for Round {
    fn say(&self, words: &Words) -> String {
        let setting = self.setting.map(|setting| words.torque(&setting));
        let round = match (self.stage, setting) {
            (Stage::HandStart, _) => words.text("round-hand-start", &[]),
            (Stage::Snug, Some(setting)) => words.text("round-snug-set", &[("setting", setting.into())]),
            (Stage::Snug, None) => words.text("round-snug", &[("percent", self.percent.unwrap_or_default().into())]),
            (Stage::Final, setting) => words.text("round-final", &[("setting", setting.unwrap_or_default().into())]),
            (Stage::Loosen, _) => words.text("round-loosen", &[]),
            (Stage::Recheck, setting) => {
                words.text("round-recheck", &[("setting", setting.unwrap_or_default().into())])
            }
        };
        match self.layer {
            _ if self.stage == Stage::Loosen => round,
            Layer::Only => round,
            Layer::Inner => words.text("round-of-inner", &[("round", round.into())]),
            Layer::Outer => words.text("round-of-outer", &[("round", round.into())]),
        }
    }
}

impl Say for NutOutcome {
    fn say(&self, words: &Words) -> String {
        words.coded("outcome", self)
    }
}

impl Say for Overrun {
    fn say(&self, words: &Words) -> String {
        words.coded("overrun", self)
    }
}

impl Say for Gate {
    fn say(&self, words: &Words) -> String {
        words.coded("torque-gate", self)
    }
}

impl Say for Recheck {
    fn say(&self, words: &Words) -> String {
        let by = ("by", words.reading(&self.by).into());
        let Some(from) = &self.from else { return words.text("recheck-by", &[by]) };
        let id = match self.origin {
            RecheckOrigin::Printed => "recheck-window",
            RecheckOrigin::TradeDefault => "recheck-trade",
        };
        words.text(id, &[("from", words.reading(from).into()), by])
    }
}

impl Say for ChartRow {
    fn say(&self, words: &Words) -> String {
        let (low, high) = self.ftlb;
        words.text(
            "chart-row",
            &[
                ("diameter", self.diameter.into()),
                ("low", words.number(low, 0).into()),
                ("high", words.number(high, 0).into()),
            ],
        )
    }
}

impl Say for NoChartValue {
    fn say(&self, words: &Words) -> String {
        let Self::MakersDisagree { makers_nm, chart_nm } = self else {
            return words.text("chart-not-on-chart", &[]);
        };
        words.text(
            "chart-makers-disagree",
            &[
                ("low", words.number(makers_nm.0, 0).into()),
                ("high", words.number(makers_nm.1, 0).into()),
                ("chartlow", words.number(chart_nm.0, 0).into()),
                ("charthigh", words.number(chart_nm.1, 0).into()),
            ],
        )
    }
}

impl Say for ClampLoad {
    fn say(&self, words: &Words) -> String {
        words.text(
            "clamp-load",
            &[
                ("low", words.number(self.low_kn, 0).into()),
                ("high", words.number(self.high_kn, 0).into()),
                ("scatter", words.number(self.scatter * 100.0, 0).into()),
            ],
        )
    }
}
