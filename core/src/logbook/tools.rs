//! Tools that were entered once: what each is for, and how its calibration stands.

use serde::{Deserialize, Serialize};

use super::{Book, Job};
use crate::calendar::Day;
use crate::entry::ToolKind;
use crate::fastener::Calibration;
use crate::ident::ToolId;

/// A tool that was entered once.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Tool {
    /// Its id.
    pub id: ToolId,
    /// What it is, with what its papers say.
    pub what: ToolKind,
    /// What it is called.
    pub name: String,
    /// Calibrated again after so many months, by its papers or its owner's setting.
    pub interval_months: Option<u16>,
    /// It was put away: no new job uses it.
    pub retired: bool,
}

/// What a tool is for. Of each of these one is at hand in a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ToolClass {
    /// Torque wrench.
    Wrench,
    /// Tread depth gauge.
    DepthGauge,
    /// Pressure gauge.
    PressureGauge,
    /// Impact gun.
    Gun,
    /// Torque-limiting bar.
    Bar,
    /// Jack.
    Jack,
    /// Stands.
    Stand,
    /// Lift.
    Lift,
}

impl ToolClass {
    /// All of them, in the order they are told.
    pub const ALL: [Self; 8] = [
        Self::Wrench,
        Self::DepthGauge,
        Self::PressureGauge,
        Self::Gun,
        Self::Bar,
        Self::Jack,
        Self::Stand,
        Self::Lift,
    ];

    /// What a tool is for.
    ///
    /// ```
    /// use lugbook::entry::ToolKind;
    /// use lugbook::logbook::ToolClass;
    /// assert_eq!(ToolClass::of(&ToolKind::Jack { rating: None }), ToolClass::Jack);
    /// ```
    pub fn of(what: &ToolKind) -> Self {
        match what {
            ToolKind::Wrench { .. } => Self::Wrench,
            ToolKind::DepthGauge { .. } => Self::DepthGauge,
            ToolKind::PressureGauge { .. } => Self::PressureGauge,
            ToolKind::Gun { .. } => Self::Gun,
            ToolKind::Bar { .. } => Self::Bar,
            ToolKind::Jack { .. } => Self::Jack,
            ToolKind::Stand { .. } => Self::Stand,
            ToolKind::Lift { .. } => Self::Lift,
        }
    }

    /// Whether such a tool measures, and so is calibrated.
    pub fn measures(self) -> bool {
        matches!(self, Self::Wrench | Self::DepthGauge | Self::PressureGauge)
    }
}

impl Tool {
    /// What it is for.
    pub fn class(&self) -> ToolClass {
        ToolClass::of(&self.what)
    }

    /// The day of its last calibration; none when not known, and for tools that measure nothing.
    pub fn calibrated(&self) -> Option<Day> {
        match &self.what {
            ToolKind::Wrench { papers } => papers.last_calibration,
            ToolKind::DepthGauge { calibrated, .. } | ToolKind::PressureGauge { calibrated, .. } => *calibrated,
            _ => None,
        }
    }

    /// The day on which it was to be calibrated again, where papers or owner set an interval.
    ///
    /// ```
    /// use lugbook::entry::ToolKind;
    /// use lugbook::ident::ToolId;
    /// use lugbook::logbook::Tool;
    /// let what = ToolKind::PressureGauge { resolution: None, calibrated: "2026-01-31".parse().ok(), highest: None };
    /// let gauge = Tool {
    ///     id: ToolId::from_parts(1, [1; 10]),
    ///     what,
    ///     name: "Dial gauge".to_owned(),
    ///     interval_months: Some(6),
    ///     retired: false,
    /// };
    /// assert_eq!(gauge.due(), "2026-07-31".parse().ok());
    /// ```
    pub fn due(&self) -> Option<Day> {
        Some(self.calibrated()?.plus_months(self.interval_months?))
    }

    /// How its calibration stands on a day; none for tools that measure nothing.
    ///
    /// An interval is the papers' or the owner's, never ours. A wrench without one is held
    /// against the published year of [`Wrench::calibration_on`](crate::fastener::Wrench::calibration_on);
    /// a gauge without one is out of date on no day.
    pub fn calibration_on(&self, today: Day) -> Option<Calibration> {
        if !self.class().measures() {
            return None;
        }
        let Some(last) = self.calibrated() else { return Some(Calibration::NotKnown) };
        if last > today {
            return Some(Calibration::InTheFuture);
        }
        Some(match (self.due(), &self.what) {
            (Some(due), _) if today > due => Calibration::Overdue,
            (None, ToolKind::Wrench { papers }) => papers.calibration_on(today),
            _ => Calibration::Current,
        })
    }

    /// Whether a person has to be warned of its calibration on a day. Of a gauge only
    /// what its papers or owner asked for is told.
    pub fn warns_on(&self, today: Day) -> Option<Calibration> {
        self.calibration_on(today).filter(|stands| match stands {
            Calibration::Current => false,
            Calibration::NotKnown => self.class() == ToolClass::Wrench || self.interval_months.is_some(),
            Calibration::Overdue | Calibration::InTheFuture => true,
        })
    }
}

impl Book {
    /// The tools that were not put away, in the order they were entered.
    pub fn tools_at_hand(&self) -> impl Iterator<Item = &Tool> {
        self.tools.iter().filter(|tool| !tool.retired)
    }

    /// The tool of this name that was not put away; letters of either case.
    pub fn tool_named(&self, name: &str) -> Option<&Tool> {
        self.tools_at_hand().find(|tool| tool.name.eq_ignore_ascii_case(name.trim()))
    }

    /// The tool of a class that a job works with: the last one named in it.
    pub fn tool_in(&self, job: &Job, class: ToolClass) -> Option<&Tool> {
        let named: Vec<ToolId> = job.tools().collect();
        named.into_iter().rev().filter_map(|id| self.tool(id)).find(|tool| tool.class() == class)
    }
}
