//! Tools, what their papers say, and how their calibration stands.

use super::{Worded, Words};
use crate::calendar::Day;
use crate::entry::ToolKind;
use crate::fastener::Calibration;
use crate::logbook::{Tool, ToolClass};
use crate::measure::Reading;

impl Words {
    /// What kind of tool it is.
    pub fn tool_kind(&self, tool: &ToolKind) -> String {
        let id = match tool {
            ToolKind::Wrench { .. } => "tool-wrench",
            ToolKind::DepthGauge { .. } => "tool-depth-gauge",
            ToolKind::PressureGauge { .. } => "tool-pressure-gauge",
            ToolKind::Gun { .. } => "tool-gun",
            ToolKind::Bar { .. } => "tool-bar",
            ToolKind::Jack { .. } => "tool-jack",
            ToolKind::Stand { .. } => "tool-stand",
            ToolKind::Lift { .. } => "tool-lift",
        };
        self.text(id, &[])
    }

    /// What a tool's papers say of what it can do: range, steps, rating. Nothing when they say nothing.
    pub fn tool_papers(&self, tool: &ToolKind) -> Vec<String> {
        match tool {
            ToolKind::Wrench { papers } => {
                let accuracy = ("accuracy", self.number(papers.accuracy_percent, 2).into());
                let step = ("step", self.reading(&papers.step).into());
                let scale = papers.range.map(|scale| {
                    let ends = [("low", self.reading(&scale.low).into()), ("high", self.reading(&scale.high).into())];
                    self.text("tool-papers-scale", &ends)
                });
                std::iter::once(self.text("tool-papers-wrench", &[accuracy, step])).chain(scale).collect()
            }
            ToolKind::DepthGauge { resolution, .. } => vec![self.shows_steps(resolution)],
            ToolKind::PressureGauge { resolution, highest, .. } => {
                let highest =
                    highest.map(|most| self.text("tool-papers-highest", &[("highest", self.reading(&most).into())]));
                resolution.map(|step| self.shows_steps(&step)).into_iter().chain(highest).collect()
            }
            ToolKind::Gun { papers } => {
                let power = papers.power.map(|power| self.coded("power", &power));
                power.into_iter().chain(self.rating(papers.greatest.as_ref())).collect()
            }
            ToolKind::Bar { papers } => {
                let hex = papers.hex.map(|hex| self.text("tool-papers-socket", &[("hex", self.reading(&hex).into())]));
                let guns = papers
                    .for_guns_up_to
                    .map(|most| self.text("tool-papers-for-guns", &[("most", self.reading(&most).into())]));
                self.rating(Some(&papers.rating)).into_iter().chain(hex).chain(guns).collect()
            }
            ToolKind::Stand { rating, count } => {
                let count = count.map(|count| self.text("tool-papers-count", &[("count", count.into())]));
                count.into_iter().chain(self.rating(rating.as_ref())).collect()
            }
            ToolKind::Jack { rating } | ToolKind::Lift { rating } => self.rating(rating.as_ref()).into_iter().collect(),
        }
    }

    fn shows_steps<U: Worded>(&self, step: &Reading<U>) -> String {
        self.text("tool-papers-resolution", &[("resolution", self.reading(step).into())])
    }

    fn rating<U: Worded>(&self, rating: Option<&Reading<U>>) -> Option<String> {
        rating.map(|rating| self.text("tool-papers-rating", &[("rating", self.reading(rating).into())]))
    }

    /// When a tool that measures was last calibrated, or that nobody knows, and how often it is to be.
    pub fn tool_calibration(&self, tool: &Tool) -> Option<String> {
        tool.class().measures().then(|| self.list(self.calibrations(tool.calibrated(), tool.interval_months)))
    }

    fn calibrations(&self, last: Option<Day>, interval_months: Option<u16>) -> Vec<String> {
        let every =
            interval_months.map(|months| self.text("tool-calibrated-every", &[("count", f64::from(months).into())]));
        std::iter::once(self.calibrated(last)).chain(every).collect()
    }

    /// When a tool was last calibrated, or that nobody knows.
    pub fn calibrated(&self, day: Option<Day>) -> String {
        match day {
            Some(day) => self.text("tool-calibrated", &[("day", day.to_string().into())]),
            None => self.text("tool-calibrated-unknown", &[]),
        }
    }

    /// Everything of a tool but its name: kind, papers, calibration.
    pub(super) fn tool_told(&self, what: &ToolKind, interval_months: Option<u16>) -> String {
        let kind = std::iter::once(self.tool_kind(what)).chain(self.tool_papers(what));
        let last = match what {
            ToolKind::Wrench { papers } => papers.last_calibration,
            ToolKind::DepthGauge { calibrated, .. } | ToolKind::PressureGauge { calibrated, .. } => *calibrated,
            _ => None,
        };
        let measures = ToolClass::of(what).measures();
        let calibrations = if measures { self.calibrations(last, interval_months) } else { Vec::new() };
        self.list(kind.chain(calibrations))
    }

    /// A tool in one line, with a warning where its calibration wants one on this day.
    pub fn tool_line(&self, tool: &Tool, today: Day) -> String {
        let told = self.tool_told(&tool.what, tool.interval_months);
        let line = self.text("tool-line", &[("name", tool.name.as_str().into()), ("told", told.into())]);
        match tool.warns_on(today) {
            Some(Calibration::Overdue) => {
                self.text("tool-line-warned", &[("line", line.into()), ("warning", self.overdue(tool).into())])
            }
            _ => line,
        }
    }

    fn overdue(&self, tool: &Tool) -> String {
        match tool.due() {
            Some(day) => self.text("tool-due", &[("day", day.to_string().into())]),
            None => self.text("tool-old", &[]),
        }
    }

    /// What has to be said of a tool's calibration before it is used.
    pub fn calibration_warning(&self, tool: &Tool, stands: Calibration) -> String {
        let name = ("tool", tool.name.as_str().into());
        let id = match (stands, tool.due()) {
            (Calibration::Overdue, Some(day)) => {
                return self.text("finding-tool-overdue", &[name, ("day", day.to_string().into())]);
            }
            (Calibration::InTheFuture, _) => "finding-wrench-in-the-future",
            (Calibration::Overdue, None) => "finding-wrench-overdue",
            (Calibration::NotKnown | Calibration::Current, _) => "finding-wrench-not-known",
        };
        self.text(id, &[name])
    }
}
