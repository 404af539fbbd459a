//! Steps, choices, gates and what is wrong with a procedure's file.

use super::{Arg, Say, Words};
use crate::lifting::Action;
use crate::measure::Span;
use crate::procedure::{Bad, BadKind, Condition, Mismatch, Procedure, Step, Unmet};
use crate::vehicle::{Layout, Place};

impl Words {
    /// A step's sentence: its own, or the shop's text.
    pub fn step(&self, step: &Step) -> String {
        match (&step.says, &step.text) {
            (Some(says), _) => self.text(says, &[]),
            (None, Some(text)) => text.clone(),
            (None, None) => step.id.clone(),
        }
    }

    /// A procedure's title.
    pub fn title(&self, procedure: &Procedure) -> String {
        match (&procedure.title, &procedure.text) {
            (Some(title), _) => self.text(title, &[]),
            (None, Some(text)) => text.clone(),
            (None, None) => procedure.id.clone(),
        }
    }

    /// One of a step's choices; a shop's own choice as it is written.
    pub fn choice(&self, code: &str) -> String {
        self.or_code("choice", code)
    }

    /// A circumstance that decides which steps apply.
    pub fn circumstance(&self, code: &str) -> String {
        self.or_code("circumstance", code)
    }

    /// The sentence `kind-code`, or the code itself where there is none.
    pub(super) fn or_code(&self, kind: &str, code: &str) -> String {
        let id = format!("{kind}-{code}");
        if self.has(&id) { self.text(&id, &[]) } else { code.to_owned() }
    }

    /// A condition's short name.
    pub fn condition(&self, condition: Condition) -> String {
        self.text(&format!("condition-{}", condition.code()), &[])
    }

    /// A place's name in the chosen letters; the vehicle for none.
    pub fn place(&self, layout: &Layout, at: Option<Place>) -> String {
        at.map_or_else(|| self.text("place-vehicle", &[]), |place| layout.name(place, self.speech().letters))
    }

    /// Several things in a sentence: `2`, `2 and 4`, `1, 2 and 4`.
    pub fn and_list<I: IntoIterator<Item = String>>(&self, items: I) -> String {
        let mut items: Vec<String> = items.into_iter().collect();
        let Some(last) = items.pop() else { return String::new() };
        if items.is_empty() {
            return last;
        }
        self.text("list-and", &[("before", self.list(items).into()), ("last", last.into())])
    }

    /// What a gate waits for and what to do, in one or two short sentences.
    ///
    /// ```
    /// use lugbook::procedure::Unmet;
    /// use lugbook::vehicle::{Layout, Place, Side};
    /// use lugbook::words::{Speech, Words};
    /// let unmet = Unmet::Started { at: Place::single(1, Side::Left), nuts: vec![2, 4] };
    /// assert_eq!(
    ///     Words::new(Speech::default()).unmet(&unmet, &Layout::two_axles(false)),
    ///     "FL: nuts 2 and 4 are not begun by hand. Begin each by hand first."
    /// );
    /// ```
    pub fn unmet(&self, unmet: &Unmet, layout: &Layout) -> String {
        let at = ("at", self.place(layout, unmet.at()).into());
        match unmet {
            Unmet::Approved { declined: true } => self.text("unmet-approved-declined", &[]),
            Unmet::PlaceSafe { why, .. } => match why {
                Some(why) => self.text(&format!("unmet-place-{}", why.code()), &[at]),
                None => self.text("unmet-place-safe", &[]),
            },
            Unmet::LockKey { missing: true } => self.text("unmet-lock-key-missing", &[]),
            Unmet::MarkFits { read, wanted, belongs, .. } => {
                self.mark_mismatch(at, read.as_deref(), wanted.as_deref(), belongs.map(|b| self.place(layout, Some(b))))
            }
            Unmet::Started { nuts, .. } => self.nuts_unmet("unmet-started", "unmet-not-counted", at, nuts),
            Unmet::AllSnug { nuts, .. } => self.nuts_unmet("unmet-snug", "unmet-wheel-missing", at, nuts),
            Unmet::FinalDone { nuts, .. } => self.nuts_unmet("unmet-final", "unmet-final-off", at, nuts),
            Unmet::Rechecked { nuts, .. } => self.nuts_unmet("unmet-rechecked", "unmet-not-counted", at, nuts),
            Unmet::TrayEmpty { left: None } => self.text("unmet-tray-uncounted", &[]),
            Unmet::TrayEmpty { left: Some(left) } => self.text("unmet-tray-left", &[("left", f64::from(*left).into())]),
            Unmet::UnsafeTold { part, .. } | Unmet::SeatSound { part, .. } => {
                self.text(&format!("unmet-{}", unmet.condition().code()), &[at, ("part", self.part(*part).into())])
            }
            Unmet::InOrder { n, act, at } => {
                let action =
                    Action { n: *n, act: *act, at: at.iter().copied().collect(), wheel: None, cautions: Vec::new() };
                let args = [("n", n.to_string().into()), ("action", self.action(&action, layout).into())];
                self.text("unmet-in-order", &args)
            }
            Unmet::InstructorSaw { asks, at } => {
                let what = super::entry::capital(&self.to_see(*asks, layout, *at));
                self.text("unmet-instructor-saw", &[("what", what.into())])
            }
            Unmet::AnsweredFirst { decision } => self.text(&format!("unmet-answered-first-{}", decision.code()), &[]),
            Unmet::OuterLoosened { nuts, .. } => self.nuts_unmet("unmet-outer-loosened", "unmet-not-counted", at, nuts),
            Unmet::InnerSet { nuts, .. } => self.nuts_unmet("unmet-inner-set", "unmet-not-counted", at, nuts),
            Unmet::PairMatched { why, .. } => {
                let span = |span: &Span| Arg::from(self.reading(span));
                match why {
                    Mismatch::NotKnown => self.text("unmet-pair-not-known", &[at]),
                    Mismatch::Apart { by, allowed } => {
                        self.text("unmet-pair-apart", &[at, ("by", span(by)), ("allowed", span(allowed))])
                    }
                    Mismatch::LargerInside { by } => self.text("unmet-pair-larger-inside", &[at, ("by", span(by))]),
                }
            }
            Unmet::GearRated { read: Some((weight, rating)) } => {
                let args = [("weight", self.reading(weight).into()), ("rating", self.reading(rating).into())];
                self.text("unmet-gear-overloaded", &args)
            }
            Unmet::NoOrder { refusal } => self.lift_refusal(refusal, layout),
            Unmet::Approved { .. }
            | Unmet::LockKey { .. }
            | Unmet::DriveKnown
            | Unmet::PlanChosen
            | Unmet::WheelsChosen
            | Unmet::SetBrought
            | Unmet::Cracked { .. }
            | Unmet::Clear
            | Unmet::Rocked
            | Unmet::Held
            | Unmet::WheelIsOff { .. }
            | Unmet::AllClear
            | Unmet::Down
            | Unmet::Ready
            | Unmet::GearRated { read: None }
            | Unmet::PairSeen { .. }
            | Unmet::TorqueKnown => self.text(&format!("unmet-{}", unmet.condition().code()), &[at]),
        }
    }

    /// What is wrong with a dual pair, as short as a table needs it.
    pub fn mismatch(&self, why: &Mismatch) -> String {
        let span = |span: &Span| Arg::from(self.reading(span));
        match why {
            Mismatch::NotKnown => self.text("pair-not-known", &[]),
            Mismatch::Apart { by, allowed } => self.text("pair-apart", &[("by", span(by)), ("allowed", span(allowed))]),
            Mismatch::LargerInside { by } => self.text("pair-larger-inside", &[("by", span(by))]),
        }
    }

    fn nuts_unmet(&self, id: &str, none: &str, at: (&str, Arg<'_>), nuts: &[u8]) -> String {
        if nuts.is_empty() {
            return self.text(none, &[at]);
        }
        let named = self.and_list(nuts.iter().map(u8::to_string));
        self.text(id, &[at, ("count", nuts.len().into()), ("nuts", named.into())])
    }

    /// Names both tires: the one read, with where it belongs, and the one wanted.
    fn mark_mismatch(
        &self,
        at: (&str, Arg<'_>),
        read: Option<&str>,
        wanted: Option<&str>,
        belongs: Option<String>,
    ) -> String {
        let Some(read) = read else { return self.text("unmet-mark-unread", &[at]) };
        let Some(wanted) = wanted else { return self.text("unmet-mark-unchalked", &[at, ("read", read.into())]) };
        let id = if belongs.is_some() { "unmet-mark-other" } else { "unmet-mark-stranger" };
        let belongs = belongs.unwrap_or_default();
        self.text(id, &[at, ("read", read.into()), ("wanted", wanted.into()), ("belongs", belongs.into())])
    }

    /// Why a procedure's file is not taken: file, line and reason.
    ///
    /// ```
    /// use lugbook::procedure::Procedure;
    /// use lugbook::words::{Speech, Words};
    /// let bad = Procedure::parse("mine.toml", "id = \"x\"\nversion = 1\n").unwrap_err();
    /// assert_eq!(
    ///     Words::new(Speech::default()).bad_procedure(&bad),
    ///     "mine.toml, line 1: there are no steps. Nothing of this file is used."
    /// );
    /// ```
    pub fn bad_procedure(&self, bad: &Bad) -> String {
        let reason = self.bad_kind(&bad.kind);
        let file: String = bad.file.chars().take(120).collect();
        self.text(
            "bad-procedure",
            &[("file", file.into()), ("line", bad.line.to_string().into()), ("reason", reason.into())],
        )
    }

    fn bad_kind(&self, kind: &BadKind) -> String {
        let step = |id: &str, step: &str| self.text(id, &[("step", step.into())]);
        let code = |id: &str, code: &str| self.text(id, &[("code", code.into())]);
        match kind {
            BadKind::Unreadable(why) => {
                let why = why.lines().next().unwrap_or_default().trim_end_matches('.');
                self.text("bad-unreadable", &[("why", why.into())])
            }
            BadKind::TooLarge => self.text("bad-too-large", &[]),
            BadKind::StepCount(count) => self.text("bad-step-count", &[("count", (*count).into())]),
            BadKind::TwiceTheId(id) => step("bad-twice-the-id", id),
            BadKind::NoSentence(id) => step("bad-no-sentence", id),
            BadKind::Choices(id) => step("bad-choices", id),
            BadKind::After(id) => step("bad-after", id),
            BadKind::Caution(what) => code("bad-caution", what),
            BadKind::Circumstance(what) => code("bad-circumstance", what),
            BadKind::Id => self.text("bad-id", &[]),
            BadKind::NothingToMeet { step, condition } => {
                let condition = self.condition(*condition);
                self.text("bad-nothing-to-meet", &[("step", step.as_str().into()), ("condition", condition.into())])
            }
            BadKind::DangerLeftOut(danger) => code("bad-danger-left-out", danger.code()),
            BadKind::NoSignature => self.text("bad-no-signature", &[]),
            BadKind::NoGate { step, condition } => {
                let condition = self.condition(*condition);
                self.text("bad-no-gate", &[("step", step.as_str().into()), ("condition", condition.into())])
            }
        }
    }
}

impl Say for Bad {
    fn say(&self, words: &Words) -> String {
        words.bad_procedure(self)
    }
}
