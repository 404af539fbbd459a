//! What a step wants as its answer, and places as they are spoken.

use super::Words;
use crate::procedure::{Ask, Step};
use crate::vehicle::{Layout, Letters, Place, Row, Side};

impl Words {
    /// What kind of answer a step wants.
    pub fn ask(&self, step: &Step) -> String {
        match step.asks {
            Ask::Seen | Ask::Rocked | Ask::Ready => self.text("ask-seen", &[]),
            Ask::Choice => {
                let choices = self.list(step.choices.iter().cloned());
                self.text("ask-choice", &[("choices", choices.into())])
            }
            Ask::Count => self.text("ask-count", &[]),
            Ask::Studs => self.text("ask-studs", &[]),
            _ => self.text("ask-other", &[]),
        }
    }

    /// A place as it is spoken: “front left”.
    pub fn place_spoken(&self, layout: &Layout, at: Place) -> String {
        let Place::Wheel(position) = at else { return self.text("place-spare", &[]) };
        let side = if position.side == Side::Left { "left" } else { "right" };
        if layout.lettered() {
            let end = if position.axle == 1 { "front" } else { "rear" };
            return self.text(&format!("place-{end}-{side}"), &[]);
        }
        let row = match position.row {
            Row::Single => "",
            Row::Outer => "-outer",
            Row::Inner => "-inner",
        };
        let axle = ("axle", position.axle.into());
        let spoken = self.text(&format!("place-axle-{side}{row}"), &[axle]);
        if spoken.starts_with("place-") { layout.name(at, Letters::FrontFirst) } else { spoken }
    }
}
