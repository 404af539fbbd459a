//! The order of lifts: actions, how many, and why there is none.

use super::{Say, Words};
use crate::lifting::{Act, Action, BadRequest, GearNote, Lacking, Plan, Refusal};
use crate::measure::LoadUnit;
use crate::vehicle::{Layout, Letters};

impl Words {
    /// What to do: one action, place and wheel apart.
    pub fn act(&self, act: Act) -> String {
        self.text(&format!("act-{}", act.code()), &[])
    }

    /// What else belongs to an action, when anything does.
    pub fn act_detail(&self, act: Act) -> Option<String> {
        let id = format!("detail-{}", act.code());
        self.has(&id).then(|| self.text(&id, &[]))
    }

    /// An action with its place, and with its wheel where that stood elsewhere.
    ///
    /// ```
    /// use lugbook::lifting::{Act, Action};
    /// use lugbook::vehicle::{Layout, Place, Side};
    /// use lugbook::words::{Speech, Words};
    /// let (front, rear) = (Place::single(1, Side::Left), Place::single(2, Side::Left));
    /// let action = Action { n: 9, act: Act::WheelOn, at: vec![front], wheel: Some(rear), cautions: vec![] };
    /// assert_eq!(
    ///     Words::new(Speech::default()).action(&action, &Layout::two_axles(false)),
    ///     "FL: Hang this wheel on the stud at twelve o'clock. It is the wheel from RL."
    /// );
    /// ```
    pub fn action(&self, action: &Action, layout: &Layout) -> String {
        let what = self.act(action.act);
        if action.at.is_empty() {
            return what;
        }
        let at = self.and_list(action.at.iter().map(|place| self.place(layout, Some(*place))));
        let mut args = vec![("at", at.into()), ("do", what.into())];
        let elsewhere = action.wheel.filter(|wheel| !action.at.contains(wheel));
        match elsewhere {
            Some(wheel) => {
                args.push(("wheel", self.place(layout, Some(wheel)).into()));
                self.text("action-wheel", &args)
            }
            None => self.text("action-at", &args),
        }
    }

    /// How many lifts, and whether fewer are possible.
    pub fn lifts(&self, plan: &Plan) -> String {
        if plan.lifts == 0 {
            return self.text("lifts-none", &[]);
        }
        let count = |number: u32| self.number(f64::from(number), 0);
        let args = [
            ("count", f64::from(plan.lifts).into()),
            ("lifts", count(plan.lifts).into()),
            ("least", count(plan.at_least).into()),
        ];
        self.text(if plan.proved { "lifts-proved" } else { "lifts-not-proved" }, &args)
    }

    /// Why there is no order of work, and what would help.
    pub fn lift_refusal(&self, refusal: &Refusal, layout: &Layout) -> String {
        let place = |at| ("at", self.place(layout, Some(at)).into());
        match refusal {
            Refusal::NoAxles => self.text("lift-no-axles", &[]),
            Refusal::TooManyAxles { most } => self.text("lift-too-many-axles", &[("most", most.to_string().into())]),
            Refusal::TooMuchGear { most } => self.text("lift-too-much-gear", &[("most", most.to_string().into())]),
            Refusal::NoSuchPlace { at } => {
                let known = layout.places().map(|place| self.place(layout, Some(place)));
                // The place is none of this vehicle's, so it is named as it is in data.
                let axles = layout.axles.len().max(3);
                let at = at.text(axles, true, Letters::FrontFirst);
                self.text("lift-no-such-place", &[("at", at.into()), ("known", self.list(known).into())])
            }
            Refusal::MovedTwice { from } => self.text("lift-moved-twice", &[place(*from)]),
            Refusal::TwoWheels { to } => self.text("lift-two-wheels", &[place(*to)]),
            Refusal::NowhereToGo { at } => self.text("lift-nowhere-to-go", &[place(*at)]),
            Refusal::Overloaded { parts } => {
                let mut sentences: Vec<String> = parts
                    .iter()
                    .map(|part| {
                        let mut load = part.load.to_unit(part.rating.unit());
                        if part.rating.unit() != LoadUnit::Tonne
                            && let Ok(whole) = crate::measure::Load::new(load.value().ceil(), load.unit())
                        {
                            load = whole;
                        }
                        let args = [
                            ("part", self.coded("gear", &part.part).into()),
                            ("rating", self.reading(&part.rating).into()),
                            ("load", self.reading(&load).into()),
                        ];
                        self.text("lift-overloaded", &args)
                    })
                    .collect();
                sentences.dedup();
                sentences.join(" ")
            }
            Refusal::NotWithThisGear { lacking } => {
                let mut needs: Vec<String> = lacking.iter().map(|need| need.say(self)).collect();
                let Some(last) = needs.pop() else { return self.text("lift-not-with-this-gear", &[]) };
                let needs = if needs.is_empty() {
                    last
                } else {
                    self.text("need-or", &[("one", self.list(needs).into()), ("other", last.into())])
                };
                self.text("lift-lacking", &[("needs", needs.into())])
            }
            Refusal::TooLarge => self.text("lift-too-large", &[]),
        }
    }
}

impl Say for Lacking {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::Stands { at_least } => words.text("need-stands", &[("count", (*at_least).into())]),
            Self::BridgeJacks { at_least } => words.text("need-bridge-jacks", &[("count", (*at_least).into())]),
            Self::FullSizeSpare => words.text("need-full-size-spare", &[]),
            Self::OtherGear => words.text("need-other-gear", &[]),
        }
    }
}

impl Say for GearNote {
    fn say(&self, words: &Words) -> String {
        match self {
            Self::NotChecked { part } => words.text("note-not-checked", &[("part", words.coded("gear", part).into())]),
            Self::AxleShareAssumed { percent, .. } => {
                words.text("note-axle-share-assumed", &[("percent", percent.to_string().into())])
            }
            Self::CornersOnly => words.text("note-corners-only", &[]),
        }
    }
}

impl Say for BadRequest {
    fn say(&self, words: &Words) -> String {
        let most = |most: &usize| [("most", most.to_string().into())];
        match self {
            Self::TooLong { most: chars } => words.text("request-too-long", &most(chars)),
            Self::NotToml { line: 0, said } => words.text("request-not-toml-whole", &[("said", said.as_str().into())]),
            Self::NotToml { line, said } => {
                words.text("request-not-toml", &[("line", line.to_string().into()), ("said", said.as_str().into())])
            }
            Self::Reading { field, given, why } => {
                let why = words.misread::<LoadUnit>(given, why);
                words.text("request-reading", &[("field", (*field).into()), ("why", why.into())])
            }
            Self::Zero { field } => words.text("request-zero", &[("field", (*field).into())]),
            Self::NoSuchPlace { given } => words.text("request-no-such-place", &[("given", given.as_str().into())]),
            Self::NamedTwice { given } => words.text("request-named-twice", &[("given", given.as_str().into())]),
            Self::NoSuchAxle { given } => words.text("request-no-such-axle", &[("given", given.to_string().into())]),
            Self::TooManyAxles { most: axles } => words.text("request-too-many-axles", &most(axles)),
            Self::NotOfThisGear { field } => words.text("request-not-of-this-gear", &[("field", (*field).into())]),
        }
    }
}
