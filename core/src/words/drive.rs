//! Which axles drive, what speaks for and against it, and the next look.

use super::{Say, Words};
use crate::drive::{AxleState, Ground, NextLook, Unmet, Verdict};
use crate::vehicle::{Drive, Layout, Place, Position, Row, Side};

impl Words {
    /// Which axles drive, in a sentence; what contradicts, and the look that would settle it, after it.
    ///
    /// ```
    /// use lugbook::drive::{self, Told};
    /// use lugbook::vehicle::hub::{Evidence, Hub};
    /// use lugbook::vehicle::{Class, Layout, Side};
    /// use lugbook::words::{Speech, Words};
    /// let car = Layout::two_axles(false);
    /// let seen = [Evidence::look(1, Side::Left, Hub::Shaft)];
    /// let verdict = drive::verdict(&car, Class::Car, &seen, &Told::default());
    /// assert_eq!(
    ///     Words::new(Speech::default()).verdict(&verdict, &car),
    ///     "Which axles drive is not settled. Look behind the hub at RL: does a shaft run into it?"
    /// );
    /// ```
    pub fn verdict(&self, verdict: &Verdict, layout: &Layout) -> String {
        let said = match &verdict.contradiction {
            Some(clash) => {
                let one = self.ground(&clash.one, layout);
                let other = self.ground(&clash.other, layout);
                self.text("verdict-contradiction", &[("one", one.into()), ("other", other.into())])
            }
            None if verdict.or == Some(Drive::PartTime) => self.text("verdict-or-part-time", &[]),
            None => self.coded("verdict", &verdict.drive),
        };
        match verdict.next_look {
            Some(look) => {
                let next = self.next_look(&look, layout);
                self.text("verdict-and-next", &[("verdict", said.into()), ("next", next.into())])
            }
            None => said,
        }
    }

    /// How one axle stands.
    pub fn axle_state(&self, state: AxleState) -> String {
        self.coded("axle", &state)
    }

    /// One thing that was seen, turned or told.
    pub fn ground(&self, ground: &Ground, layout: &Layout) -> String {
        let at = match (ground.axle, ground.side) {
            (Some(axle), Some(side)) => self.end_of_axle(layout, axle, side),
            _ => self.text("place-vehicle", &[]),
        };
        let axle = ground.axle.unwrap_or_default().to_string();
        let drive = ground.told.map(|drive| self.drive(drive)).unwrap_or_default();
        let Ok(serde_json::Value::String(code)) = serde_json::to_value(ground.reason) else { return at };
        let args = [("at", at.into()), ("axle", axle.into()), ("drive", drive.into())];
        self.text(&format!("evidence-{code}"), &args)
    }

    /// The one look that would settle it.
    pub fn next_look(&self, look: &NextLook, layout: &Layout) -> String {
        match look {
            NextLook::BehindHub { axle, side } => {
                self.text("next-look-behind-hub", &[("at", self.end_of_axle(layout, *axle, *side).into())])
            }
            NextLook::TransferControl => self.text("next-look-transfer-control", &[]),
            NextLook::Manual => self.text("next-look-manual", &[]),
            NextLook::VehiclePlate => self.text("next-look-vehicle-plate", &[]),
        }
    }

    /// One end of an axle, by its wheel that is seen from outside.
    fn end_of_axle(&self, layout: &Layout, axle: u8, side: Side) -> String {
        let dual = axle.checked_sub(1).and_then(|at| layout.axles.get(usize::from(at))).is_some_and(|axle| axle.dual);
        let row = if dual { Row::Outer } else { Row::Single };
        layout.name(Place::Wheel(Position { axle, side, row }), self.speech().letters)
    }
}

impl Say for Unmet {
    fn say(&self, words: &Words) -> String {
        words.coded("turn", self)
    }
}
