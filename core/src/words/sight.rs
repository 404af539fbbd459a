//! What is said of a reading from photos.

use super::{Say, Words};
use crate::sight::{Ask, Hint, NotTheModels, Part, Sight, UNSURE};

impl Say for NotTheModels {
    fn say(&self, words: &Words) -> String {
        words.text("sight-not-the-models", &[])
    }
}

impl Say for Hint {
    fn say(&self, words: &Words) -> String {
        let id = match self {
            Self::Closer => "sight-closer",
            Self::HoldSquare => "sight-hold-square",
            Self::LightFromTheSide => "sight-light-from-the-side",
            Self::Wipe => "sight-wipe",
            Self::NothingToRead => "sight-nothing-to-read",
        };
        words.text(id, &[])
    }
}

impl Say for Ask {
    fn say(&self, words: &Words) -> String {
        let id = match (self.part, self.hour) {
            (Part::Size, Some(_)) => "sight-ask-size-at",
            (Part::Size, None) => "sight-ask-size",
            (Part::Date, Some(_)) => "sight-ask-date-at",
            (Part::Date, None) => "sight-ask-date",
            (Part::Number, Some(_)) => "sight-ask-number-at",
            (Part::Number, None) => "sight-ask-number",
        };
        match self.hour {
            Some(hour) => words.text(id, &[("hour", usize::from(hour).into())]),
            None => words.text(id, &[]),
        }
    }
}

impl Words {
    /// What a reading is worth, and the one close-up that would settle most.
    pub fn sight(&self, sight: &Sight) -> String {
        let sure = sight.size.first().is_some_and(|best| best.odds >= UNSURE);
        let worth = self.text(if sure { "sight-confirm" } else { "sight-unsure" }, &[]);
        match &sight.ask {
            Some(ask) => format!("{worth} {}", ask.say(self)),
            None => worth,
        }
    }
}
