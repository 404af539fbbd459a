//! Cautions and signal words.

use super::Words;
use crate::caution::{CautionId, Signal};

impl Words {
    /// One of the four signal words.
    pub fn signal(&self, signal: Signal) -> String {
        self.text(&format!("signal-{}", signal.code()), &[])
    }

    /// A caution: the hazard and what follows from it.
    ///
    /// ```
    /// use lugbook::caution::CautionId;
    /// use lugbook::words::{Speech, Words};
    /// let words = Words::new(Speech::default());
    /// assert_eq!(words.signal(CautionId::Lowering.signal()), "DANGER");
    /// assert_eq!(
    ///     words.caution(CautionId::Lowering),
    ///     "A vehicle coming down crushes whoever and whatever is under it."
    /// );
    /// ```
    pub fn caution(&self, caution: CautionId) -> String {
        self.text(&format!("caution-{}", caution.code()), &[])
    }
}
