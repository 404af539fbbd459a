//! What the tools and the people at hand change in a job.

use super::bay::Task;
use super::{Ask, Bay};
use crate::caution::{CautionId, Circumstance};
use crate::logbook::ToolClass;
use crate::vehicle::Place;

impl Bay<'_> {
    /// Whether the gear that a caution speaks of may be used in this job. A torque-limiting bar is
    /// ruled out only where the gun is known and no bar is among the tools.
    pub fn has_gear_of(&self, caution: CautionId) -> bool {
        let bars = || self.book.tools_at_hand().any(|tool| tool.class() == ToolClass::Bar);
        caution != CautionId::LimitingBar || bars() || self.book.tool_in(self.job, ToolClass::Gun).is_none()
    }

    /// The wheels that come off in this job, as far as that is settled; else all of them.
    pub fn wheels_handled(&self) -> Vec<Place> {
        let moving: Vec<Place> = self.moving().into_iter().filter(|at| *at != Place::Spare).collect();
        if moving.is_empty() { self.walk() } else { moving }
    }

    /// Whether a task handles a wheel for two people, and the second one is not
    /// named yet. It is not asked again once a wheel was handled by one person.
    pub fn wants_two(&self, task: &Task<'_>) -> bool {
        let handled = matches!(task.step.asks, Ask::WheelOff | Ask::MarkRead);
        let unnamed = task.at.is_some_and(|at| self.job.shared(at).next().is_none());
        let alone = self.walk().into_iter().any(|at| self.job.came_off(at) && self.job.shared(at).next().is_none());
        handled && unnamed && !alone && self.circumstances().contains(&Circumstance::HeavyWheel)
    }
}
