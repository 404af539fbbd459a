//! Tread limits, unsafe conditions, heavy wheels, and where a statement comes from.

use super::{Say, Words};
use crate::finding::State;
use crate::limits::{Chosen, Damage, Force, Heaviness, HeavyWheel, Judgement, Limit, Spread};
use crate::measure::{Depth, DepthUnit};
use crate::source::Source;

impl Words {
    /// Where a statement comes from and how far to trust it.
    ///
    /// ```
    /// use lugbook::source::{Grade, Source};
    /// use lugbook::words::{Speech, Words};
    /// let words = Words::new(Speech::default());
    /// assert_eq!(words.source(&Source::read(Grade::Rule, "49 CFR 574.5")), "49 CFR 574.5 (rule, text read)");
    /// assert_eq!(words.source(&Source::MEMORY), "from memory");
    /// ```
    pub fn source(&self, source: &Source) -> String {
        let grade = self.coded("grade", &source.grade);
        if source.title.is_empty() {
            return grade;
        }
        let cited = self.or_title(source.title);
        self.text("source-titled", &[("title", cited.into()), ("grade", grade.into())])
    }

    /// A title as this language says it; one that is a name, such as that of a rule, as it stands.
    fn or_title(&self, title: &str) -> String {
        let plain = title.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric(), " ");
        let id = format!("cited-{}", plain.split_whitespace().collect::<Vec<_>>().join("-"));
        if self.has(&id) { self.text(&id, &[]) } else { title.to_owned() }
    }

    /// What was chosen of the limits, in a row; `typed` tells what somebody chose of it.
    pub(super) fn chosen_limits(&self, chosen: Chosen, typed: Chosen) -> String {
        let depth = |id: &str, depth: Option<Depth>, typed: bool| {
            let shown = depth.map(|depth| if typed { self.reading(&depth) } else { self.computed(&depth) });
            shown.map(|shown| self.text(id, &[("depth", shown.into())]))
        };
        let parts = [
            chosen.region.map(|region| self.coded("region", &region)),
            chosen.season.map(|season| self.coded("season", &season)),
            depth("limits-at-limit", chosen.at_limit, typed.at_limit.is_some()),
            depth("limits-watch", chosen.watch, typed.watch.is_some()),
        ];
        self.list(parts.into_iter().flatten())
    }

    /// Whose limits hold, in one sentence, and whether they are the default.
    ///
    /// ```
    /// use lugbook::limits::Chosen;
    /// use lugbook::words::{Speech, Words};
    /// let said = Words::new(Speech::default()).limits(Chosen::default());
    /// assert!(said.starts_with("Limits, by default: United States, no snow or ice expected"));
    /// ```
    pub fn limits(&self, chosen: Chosen) -> String {
        let id = if chosen == Chosen::default() { "limits-default" } else { "limits-held" };
        self.text(id, &[("chosen", self.chosen_limits(chosen.or_default(), chosen).into())])
    }

    fn depth_sentence(&self, id: &str, lowest: &Depth, limit: &Limit) -> String {
        let shown = limit.depth().map(|depth| self.reading(&depth)).unwrap_or_default();
        let source = self.source(&limit.source);
        self.text(id, &[("lowest", self.reading(lowest).into()), ("limit", shown.into()), ("source", source.into())])
    }
}

impl Say for Judgement {
    fn say(&self, words: &Words) -> String {
        let (Some(limit), Some(state)) = (&self.limit, self.state) else {
            let lowest = words.reading(&self.lowest);
            let unknown = words.text("depth-no-limit", &[("lowest", lowest.into())]);
            return match self.also.first() {
                Some(also) => format!("{unknown} {}", words.also(&self.lowest, also)),
                None => unknown,
            };
        };
        let id = match state {
            State::BelowLimit | State::Unsafe if self.refuses => "depth-refused",
            State::BelowLimit | State::Unsafe => "depth-below",
            // No minimum is known, and the wear bars are passed.
            State::AtLimit if self.also.contains(limit) => return words.also(&self.lowest, limit),
            State::AtLimit => "depth-at-limit",
            State::Watch => match self.also.first() {
                Some(also) => return words.also(&self.lowest, also),
                None => "depth-watch",
            },
            State::Sound => "depth-sound",
        };
        words.depth_sentence(id, &self.lowest, limit)
    }
}

impl Words {
    /// What else a reading fails: advice for winter, or the wear bars.
    pub fn also(&self, lowest: &Depth, limit: &Limit) -> String {
        let id = if limit.force == Force::WearBar { "depth-wear-bar" } else { "depth-advice" };
        self.depth_sentence(id, lowest, limit)
    }
}

impl Say for Spread {
    fn say(&self, words: &Words) -> String {
        let id = if self.over { "spread-over" } else { "spread-within" };
        let apart = Depth::new((self.apart_mm * 100.0).round() / 100.0, DepthUnit::Millimetre);
        let reading = |depth: Option<Depth>| depth.map(|depth| words.reading(&depth)).unwrap_or_default();
        let limit = reading(self.limit.depth());
        let source = words.source(&self.limit.source);
        words.text(id, &[("apart", reading(apart.ok()).into()), ("limit", limit.into()), ("source", source.into())])
    }
}

impl Say for Damage {
    fn say(&self, words: &Words) -> String {
        let source = words.source(&self.verdict().source);
        let damage = words.coded("damage", self);
        words.text("damage-unsafe", &[("damage", damage.into()), ("source", source.into())])
    }
}

impl Say for HeavyWheel {
    fn say(&self, words: &Words) -> String {
        let id = match self {
            Self::One => "heavy-one",
            Self::NotKnown => "heavy-not-known",
            Self::Two(Heaviness::Mass) => "heavy-mass",
            Self::Two(Heaviness::Class) => "heavy-class",
            Self::Two(Heaviness::Size) => "heavy-size",
        };
        words.text(id, &[])
    }
}
