//! Whose hands do the steps, and who lends a second pair.

use super::{Acting, Done, Outcome, Trouble};
use crate::entry::{Fact, Personal};
use crate::procedure::Bay;

impl Acting<'_> {
    pub(super) fn hands(&self, bay: &Bay<'_>, name: &str) -> Done {
        let person = self.person(name)?;
        Ok(Outcome::fact(Fact::HandsChanged { job: bay.job.id, person }))
    }

    /// Two names on one wheel, or on every wheel that comes off: somebody of the book, or a name that
    /// is kept apart.
    pub(super) fn share_wheels(&self, bay: &Bay<'_>, name: &str, at: &[String]) -> Done {
        let named = at.iter().map(|at| self.wheel(bay, at)).collect::<Result<Vec<_>, _>>()?;
        let name = self.text("what-name", name)?;
        let known = self.person(&name).ok();
        if known == Some(bay.job.hands) {
            return Err(Trouble::mend(self.words, "trouble-same-hands", &[("name", name.into())]));
        }
        let places = if named.is_empty() { bay.wheels_handled() } else { named };
        let facts = places.into_iter().map(|at| {
            let personal = Personal { name: Some(name.clone()), ..self.personal() };
            (Fact::WheelShared { job: bay.job.id, at, person: known }, known.is_none().then_some(personal))
        });
        Ok(Outcome { facts: facts.collect(), ..Outcome::default() })
    }
}
