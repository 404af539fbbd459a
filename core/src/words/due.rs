//! When rechecks and the next visit are due.

use super::{Say, Words};
use crate::due::{EstimatedDates, PRINTED, Recheck, SetBy, Standing, TOLD, Visit, Window};
use crate::source::Source;

impl Words {
    fn window(&self, window: &Window) -> Vec<(&'static str, super::Arg<'static>)> {
        let mut args = vec![("by", self.reading(&window.by).into())];
        args.extend(window.from.map(|from| ("from", self.reading(&from).into())));
        args
    }

    /// Who says so: the vehicle's own papers, the one who told the driver, or the trade.
    fn due_source(&self, kind: &str, source: &Source) -> String {
        let origin = match *source {
            PRINTED => "printed",
            TOLD if kind == "recheck" => "told",
            _ => "trade",
        };
        self.text(&format!("due-{kind}-{origin}"), &[])
    }

    pub(crate) fn sentences(&self, parts: Vec<String>) -> String {
        parts.join(" ")
    }
}

impl Say for Recheck {
    fn say(&self, words: &Words) -> String {
        let after = &self.due.after;
        let mut args = words.window(after);
        let mut id = if after.from.is_some() { "due-recheck-between" } else { "due-recheck-by" }.to_owned();
        if let Some(at) = &self.odometer {
            id.push_str("-at");
            args.push(("at-by", words.reading(&at.by).into()));
            args.extend(at.from.map(|from| ("at-from", words.reading(&from).into())));
        }
        words.sentences(vec![words.text(&id, &args), words.due_source("recheck", &self.due.source)])
    }
}

impl Say for Visit {
    fn say(&self, words: &Words) -> String {
        let (kind, window) = match &self.odometer {
            Some(window) => ("", window),
            None => ("no-odometer-", &self.interval.after),
        };
        let ends = if window.from.is_some() { "between" } else { "by" };
        let mut parts = vec![words.text(&format!("due-visit-{kind}{ends}"), &words.window(window))];
        match self.set_by {
            SetBy::Wear => parts.push(words.text("due-visit-wear", &[])),
            SetBy::Interval => parts.push(words.due_source("visit", &self.interval.source)),
        }
        if self.estimated {
            parts.push(words.text("due-visit-estimated", &[]));
        }
        words.sentences(parts)
    }
}

impl Say for Standing {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::Ahead { left } => words.text("due-ahead", &[("left", words.reading(left).into())]),
            Self::Due { left } => words.text("due-now", &[("left", words.reading(left).into())]),
            Self::Overdue { over } => words.text("due-overdue", &[("over", words.reading(over).into())]),
            Self::NotKnown => words.text("due-not-known", &[]),
        }
    }
}

impl Say for EstimatedDates {
    fn say(&self, words: &Words) -> String {
        let by = ("by", self.by.to_string().into());
        match self.from {
            Some(from) => words.text("due-date-between", &[("from", from.to_string().into()), by]),
            None => words.text("due-date-by", &[by]),
        }
    }
}
