//! Short names: states, parts, drives, classes, roles, patterns.

use serde::Serialize;

use super::Words;
use crate::entry::{Kind, LookAt, PhotoOf, Role, Signature, SpareNuts};
use crate::finding::State;
use crate::logbook::Status;
use crate::vehicle::{Class, Drive};

impl Words {
    /// The sentence of a code that an enum has in data.
    pub(super) fn coded<T: Serialize>(&self, kind: &str, value: &T) -> String {
        match serde_json::to_value(value) {
            Ok(serde_json::Value::String(code)) => self.text(&format!("{kind}-{code}"), &[]),
            _ => kind.to_owned(),
        }
    }

    /// A finding's state: *sound* … *unsafe: do not drive*.
    pub fn state(&self, state: State) -> String {
        self.text(&format!("state-{}", state.code()), &[])
    }

    /// A part that is looked at.
    pub fn part(&self, part: LookAt) -> String {
        self.coded("part", &part)
    }

    /// Which axles drive.
    pub fn drive(&self, drive: Drive) -> String {
        self.coded("drive", &drive)
    }

    /// A vehicle's class.
    pub fn class(&self, class: Class) -> String {
        self.coded("class", &class)
    }

    /// What a person may do.
    pub fn role(&self, role: Role) -> String {
        self.coded("role", &role)
    }

    /// How a job stands.
    pub fn status(&self, status: Status) -> String {
        self.coded("status", &status)
    }

    /// A kind of specification.
    pub fn kind(&self, kind: Kind) -> String {
        self.coded("kind", &kind)
    }

    /// Whose nuts hold a spare.
    pub fn spare_nuts(&self, nuts: SpareNuts) -> String {
        self.coded("spare-nuts", &nuts)
    }

    /// What a photo shows.
    pub fn photo_of(&self, of: PhotoOf) -> String {
        self.coded("photo", &of)
    }

    /// How somebody signed.
    pub fn signature(&self, signature: &Signature) -> String {
        let id = match signature {
            Signature::Name => "signature-name",
            Signature::Drawn { .. } => "signature-drawn",
        };
        self.text(id, &[])
    }

    /// A rotation pattern's name; a code that has none as it is.
    ///
    /// ```
    /// use lugbook::words::{Speech, Words};
    /// let words = Words::new(Speech::default());
    /// assert_eq!(words.pattern("rearward-cross"), "rearward cross");
    /// assert_eq!(words.pattern("x-five"), "X, with the spare");
    /// ```
    pub fn pattern(&self, code: &str) -> String {
        match code.strip_suffix("-five") {
            Some(plain) => self.text("pattern-five", &[("pattern", self.or_code("pattern", plain).into())]),
            None => self.or_code("pattern", code),
        }
    }
}
