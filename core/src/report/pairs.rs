//! Dual pairs: how they are held, whether their tires belong side by side, and what was seen of them.

use maud::{Markup, html};

use super::Sheet;
use crate::procedure::{Ask, Bay, Per};
use crate::vehicle::Place;

impl Sheet<'_> {
    pub(super) fn pairs(&self) -> Markup {
        let Some(bay) = self.bay() else { return html! {} };
        let looked_at = |step: &&crate::procedure::Step| step.per == Per::Pair && step.asks == Ask::Seen;
        let asked = bay.procedure.steps.iter().any(|step| looked_at(&step));
        let rows: Vec<Vec<Markup>> = bay.pairs().into_iter().filter_map(|outer| self.pair_row(&bay, outer)).collect();
        let contents = (asked && !rows.is_empty()).then(|| {
            let held = if bay.stud_piloted() { "choice-stud-piloted" } else { "choice-hub-piloted" };
            let columns =
                ["card-pair", "card-around-outer", "card-around-inner", "card-pair-match", "card-pair-looked-at"];
            html! {
                p { (self.say("card-pairs-held", &[("how", self.t(held).into())])) }
                (self.table("card-pairs-table", &columns, &rows))
            }
        });
        self.section("pairs", "card-pairs", contents)
    }

    fn pair_row(&self, bay: &Bay<'_>, outer: Place) -> Option<Vec<Markup>> {
        let inner = outer.partner()?;
        let around = |place: Place| {
            let measured = self.job.wanted_at(place).and_then(|tire| self.job.around(tire));
            (measured.is_some(), measured.map_or_else(|| self.t("card-not-measured"), |span| self.words.reading(&span)))
        };
        let ((by_tape, one), (also, two)) = (around(outer), around(inner));
        let matched = match bay.mismatch(outer) {
            Some(why) => self.words.mismatch(&why),
            None if by_tape && also => self.t("card-pair-by-tape"),
            None => self.t("card-pair-by-tread"),
        };
        let mut asked = bay.procedure.steps.iter().filter(|step| step.per == Per::Pair && step.asks == Ask::Seen);
        let seen = asked.all(|step| bay.answer(&step.id, Some(outer)).is_some());
        let seen = self.t(if seen { "card-pair-seen" } else { "card-pair-unseen" });
        let name = self.words.and_list([self.place(outer), self.place(inner)]);
        Some([name, one, two, matched, seen].map(|text| html! { (text) }).to_vec())
    }
}
