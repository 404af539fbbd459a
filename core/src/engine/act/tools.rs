//! Tools and their papers, and which of them a job works with.

use super::{Acting, Done, Outcome, clipped};
use crate::calendar::Day;
use crate::caution::Circumstance;
use crate::engine::{Calibrations, Papers, Trouble};
use crate::entry::{Fact, ToolKind};
use crate::fastener::{self, Bar, Gun, Power, Printed, Scale, Wrench};
use crate::ident::{JobId, ToolId};
use crate::logbook::{Tool, ToolClass};
use crate::measure::{DepthUnit, LoadUnit, PressureUnit, SpanUnit, TorqueUnit};
use crate::procedure::{Ask, Bay, Procedure};
use crate::words::Worded;

/// How many jobs back a tool is looked for when several of one class are at hand.
const LOOKED_BACK: usize = 30;

/// Of one class, the tool that a new job takes, or the question which.
pub(super) enum AtHand {
    /// This one.
    One(ToolId),
    /// Several, and nobody said which: their names.
    Several(String),
}

impl Acting<'_> {
    pub(super) fn add_tool(&self, name: &str, papers: &Papers) -> Done {
        let name = self.text("what-name", name)?;
        let (what, interval_months) = self.papers(papers)?;
        let tool = self.book.tool_named(&name).map(|tool| tool.id);
        let tool = tool.unwrap_or_else(|| ToolId::from_parts(self.now_ms(), self.host.random()));
        let said = self.words.text("said-tool", &[("name", name.as_str().into())]);
        let entered = Tool { id: tool, what: what.clone(), name: name.clone(), interval_months, retired: false };
        let outcome = Outcome::fact(Fact::ToolAdded { tool, what, name, interval_months }).note(said);
        Ok(self.warned(&entered, outcome))
    }

    fn papers(&self, papers: &Papers) -> Result<(ToolKind, Option<u16>), Trouble> {
        let torque = |text: &str| self.reading::<TorqueUnit>(text, None);
        let load = |text: &Option<String>| self.optional::<LoadUnit>(text.as_deref());
        Ok(match papers {
            Papers::Wrench { accuracy, step, range, calibration } => {
                let percent = fastener::accuracy_of(accuracy).map_err(|_| {
                    Trouble::mend(self.words, "trouble-accuracy", &[("given", clipped(accuracy).into())])
                })?;
                let (last_calibration, every) = self.calibration(calibration)?;
                let range = range.as_deref().map(|text| self.scale(text)).transpose()?;
                let papers = Wrench { range, last_calibration, ..Wrench::new(percent, torque(step)?) };
                (ToolKind::Wrench { papers }, every)
            }
            Papers::DepthGauge { step, calibration } => {
                let (calibrated, every) = self.calibration(calibration)?;
                (ToolKind::DepthGauge { resolution: self.reading::<DepthUnit>(step, None)?, calibrated }, every)
            }
            Papers::PressureGauge { step, highest, calibration } => {
                let (calibrated, every) = self.calibration(calibration)?;
                let resolution = self.optional::<PressureUnit>(step.as_deref())?;
                let highest = self.optional::<PressureUnit>(highest.as_deref())?;
                (ToolKind::PressureGauge { resolution, calibrated, highest }, every)
            }
            Papers::Gun { power, greatest } => {
                let greatest = self.optional::<TorqueUnit>(greatest.as_deref())?;
                (ToolKind::Gun { papers: Gun { greatest, power: Some(*power) } }, None)
            }
            Papers::Bar { rating, hex, for_guns_up_to } => {
                let hex = self.optional::<SpanUnit>(hex.as_deref())?;
                let for_guns_up_to = self.optional::<TorqueUnit>(for_guns_up_to.as_deref())?;
                (ToolKind::Bar { papers: Bar { hex, for_guns_up_to, ..Bar::new(torque(rating)?) } }, None)
            }
            Papers::Jack { rating } => (ToolKind::Jack { rating: load(rating)? }, None),
            Papers::Stand { count: Some(0), .. } => return Err(Trouble::mend(self.words, "trouble-stands", &[])),
            Papers::Stand { rating, count } => (ToolKind::Stand { rating: load(rating)?, count: *count }, None),
            Papers::Lift { rating } => (ToolKind::Lift { rating: load(rating)? }, None),
        })
    }

    fn optional<U: Worded>(&self, text: Option<&str>) -> Result<Option<crate::measure::Reading<U>>, Trouble> {
        text.map(|text| self.reading::<U>(text, None)).transpose()
    }

    /// The ends of a scale: `40..200 N.m`.
    fn scale(&self, text: &str) -> Result<Scale, Trouble> {
        let refused = || Trouble::mend(self.words, "trouble-scale", &[("given", clipped(text).into())]);
        let printed: Printed = text.parse().map_err(|_| refused())?;
        Ok(Scale { low: printed.low(), high: printed.high().ok_or_else(refused)? })
    }

    fn calibration(&self, given: &Calibrations) -> Result<(Option<Day>, Option<u16>), Trouble> {
        if given.every_months.is_some_and(|months| !(1..=120).contains(&months)) {
            return Err(Trouble::mend(self.words, "trouble-months", &[]));
        }
        let last = given.last.as_deref().map(|day| self.past_day(day)).transpose()?;
        Ok((last, given.every_months))
    }

    /// A day that has come already.
    fn past_day(&self, text: &str) -> Result<Day, Trouble> {
        let day: Day = text
            .trim()
            .parse()
            .map_err(|_| Trouble::mend(self.words, "trouble-day", &[("given", clipped(text).into())]))?;
        if day > self.host.now().day() {
            return Err(Trouble::mend(self.words, "trouble-future", &[("given", day.to_string().into())]));
        }
        Ok(day)
    }

    pub(super) fn tool(&self, name: &str) -> Result<&Tool, Trouble> {
        self.book.tool_named(name).ok_or_else(|| {
            let known = self.words.list(self.book.tools_at_hand().map(|tool| tool.name.clone()));
            let id = if known.is_empty() { "trouble-no-tool" } else { "trouble-unknown-tool" };
            Trouble::mend(self.words, id, &[("given", clipped(name).into()), ("names", known.into())])
        })
    }

    pub(super) fn retire_tool(&self, name: &str, reason: &str) -> Done {
        let (tool, reason) = (self.tool(name)?, self.text("what-reason", reason)?);
        let said = self.words.text("said-tool-retired", &[("name", tool.name.as_str().into())]);
        Ok(Outcome::fact(Fact::ToolRetired { tool: tool.id, reason }).note(said))
    }

    pub(super) fn use_tool(&self, bay: &Bay<'_>, name: &str) -> Done {
        let tool = self.tool(name)?;
        if self.book.tool_in(bay.job, tool.class()).map(|used| used.id) == Some(tool.id) {
            let said = self.words.text("said-tool-in-use", &[("name", tool.name.as_str().into())]);
            return Ok(Outcome::default().note(said));
        }
        Ok(self.warned(tool, Outcome::fact(Fact::ToolUsed { job: bay.job.id, tool: tool.id })))
    }

    /// The same, with a warning where the tool's calibration is out of date or not known.
    fn warned(&self, tool: &Tool, outcome: Outcome) -> Outcome {
        match tool.warns_on(self.host.now().day()) {
            Some(stands) => outcome.note(self.words.calibration_warning(tool, stands)),
            None => outcome,
        }
    }

    /// The tools that a job opened by this procedure, under these circumstances, takes by itself: of
    /// each class it needs the only one at hand, else the one used last.
    pub(super) fn tools_for(&self, procedure: &Procedure, circumstances: &[String]) -> Vec<AtHand> {
        let asks = |wanted: &[Ask]| procedure.steps.iter().any(|step| wanted.contains(&step.asks));
        let here = |code: Circumstance| circumstances.iter().any(|known| known == code.code());
        let gun = here(Circumstance::Air) || here(Circumstance::Electric);
        let ordered = procedure.steps.iter().any(|step| step.act.is_some());
        let raised = here(Circumstance::Stands) || ordered;
        let needed = |class: ToolClass| match class {
            ToolClass::Wrench => asks(&[Ask::Final, Ask::Rechecked]),
            ToolClass::DepthGauge => asks(&[Ask::Tread]),
            ToolClass::PressureGauge => asks(&[Ask::Pressure, Ask::PressureFound]),
            ToolClass::Gun | ToolClass::Bar => gun,
            ToolClass::Jack | ToolClass::Stand => raised,
            ToolClass::Lift => here(Circumstance::Lift),
        };
        let fits = |tool: &Tool| match &tool.what {
            ToolKind::Gun { papers } => papers.power.is_none_or(|power| here(driven_by(power))),
            _ => true,
        };
        let classes = ToolClass::ALL.into_iter().filter(|class| needed(*class));
        classes.filter_map(|class| self.at_hand(class, fits)).collect()
    }

    fn at_hand(&self, class: ToolClass, fits: impl Fn(&Tool) -> bool) -> Option<AtHand> {
        let known: Vec<&Tool> = self.book.tools_at_hand().filter(|tool| tool.class() == class && fits(tool)).collect();
        let (first, more) = known.split_first()?;
        if more.is_empty() {
            return Some(AtHand::One(first.id));
        }
        let jobs = self.book.jobs.iter().rev().take(LOOKED_BACK);
        let mut used = jobs.filter_map(|job| self.book.tool_in(job, class)).map(|tool| tool.id);
        match used.find(|id| known.iter().any(|tool| tool.id == *id)) {
            Some(last) => Some(AtHand::One(last)),
            None => Some(AtHand::Several(self.words.list(known.iter().map(|tool| tool.name.clone())))),
        }
    }

    /// Writes down the tools that a job takes by itself, and asks where several would do.
    pub(super) fn take_tools(&self, job: JobId, at_hand: Vec<AtHand>, mut outcome: Outcome) -> Outcome {
        for tool in at_hand {
            match tool {
                AtHand::One(tool) => {
                    outcome = outcome.and(Fact::ToolUsed { job, tool });
                    if let Some(tool) = self.book.tool(tool) {
                        outcome = self.warned(tool, outcome);
                    }
                }
                AtHand::Several(names) => {
                    outcome = outcome.note(self.words.text("said-which-tool", &[("names", names.into())]));
                }
            }
        }
        outcome
    }

    /// The circumstance of a row that the tools at hand leave: one kind of gun, a lift and no
    /// stands, or stands and no lift. Without a gun in the book nobody knows what turns the nuts.
    pub(super) fn by_tools(&self, row: &[String]) -> Option<String> {
        let mut found: Vec<Circumstance> = Vec::new();
        for tool in self.book.tools_at_hand() {
            let circumstance = match &tool.what {
                ToolKind::Gun { papers } => papers.power.map(driven_by),
                ToolKind::Lift { .. } => Some(Circumstance::Lift),
                ToolKind::Stand { .. } => Some(Circumstance::Stands),
                _ => None,
            };
            found.extend(circumstance.filter(|new| row.iter().any(|code| code == new.code()) && !found.contains(new)));
        }
        match found.as_slice() {
            [only] => Some(only.code().to_owned()),
            _ => None,
        }
    }
}

fn driven_by(power: Power) -> Circumstance {
    match power {
        Power::Air => Circumstance::Air,
        Power::Electric => Circumstance::Electric,
    }
}
