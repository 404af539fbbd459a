//! Rotations: what to shout across the shop, the reasons, what is out and what would lift it.

use std::collections::BTreeMap;

use serde::Serialize;

use super::{Say, Units, Words};
use crate::measure::{
    Depth, DepthUnit, DistanceUnit, Load, LoadUnit, Pressure, PressureUnit, Span, SpanUnit, Speed, SpeedUnit,
};
use crate::rotation::{
    Answer, Because, Contradiction, DefaultBy, DriveMove, FileMistake, Forecast, Lift, LookNext, Mistake, Note,
    Pattern, Plan, Reason, Refused, Why,
};
use crate::vehicle::{Layout, Letters, Place, Side};
use crate::wear::Interval;

/// An answer for a screen or as data: every reason worded.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RotationView {
    /// Best first; leaving as is last.
    pub plans: Vec<PlanView>,
    /// Named patterns that are out.
    pub refused: Vec<RefusedView>,
    /// What to look at next.
    pub look_next: Vec<String>,
    /// Statements about the whole answer.
    pub notes: Vec<String>,
    /// How many moves of all assemblies were weighed.
    pub searched: u64,
    /// Nothing better exists.
    pub proved: bool,
    /// By how much an unseen plan could be better, mm.
    pub gap_mm: f64,
    /// The least spread found, mm.
    pub least_spread_mm: Option<f64>,
    /// What is not told apart, mm.
    pub band_mm: Option<f64>,
}

/// A plan, worded.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanView {
    /// The pattern's code.
    pub pattern: &'static str,
    /// What to shout across the shop.
    pub shout: String,
    /// From and to, of each wheel that moves.
    pub moves: BTreeMap<String, String>,
    /// The moves of each visit.
    pub visits: Vec<VisitView>,
    /// Tires to turn round on their rims.
    pub remounts: Vec<String>,
    /// What each tire will have left.
    pub forecast: Vec<ForecastView>,
    /// The same as one sentence; nothing while rates or distances are not known.
    pub left: Option<String>,
    /// Spread at the end, mm.
    pub spread_mm: Option<f64>,
    /// Why, a sentence each.
    pub why: Vec<String>,
}

/// One visit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct VisitView {
    /// From and to, of each wheel that moves.
    pub moves: BTreeMap<String, String>,
}

/// One tire ahead.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ForecastView {
    /// The tire, by where it is now.
    pub tire: String,
    /// Where this visit puts it.
    pub to: String,
    /// At the next visit, mm.
    pub next_visit_mm: Interval,
    /// At the end of the horizon, mm.
    pub horizon_mm: Interval,
    /// The limit there, mm.
    pub limit_mm: f64,
    /// Falls below it before the next visit.
    pub below: bool,
}

/// A pattern that is out, worded.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RefusedView {
    /// The pattern's code.
    pub pattern: &'static str,
    /// Its moves.
    pub moves: BTreeMap<String, String>,
    /// Why.
    pub because: Vec<BecauseView>,
}

/// One constraint's word.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BecauseView {
    /// The constraint's code.
    pub constraint: &'static str,
    /// Its force's code.
    pub force: &'static str,
    /// What it saw.
    pub reason: String,
    /// Where the rule comes from.
    pub source: String,
    /// The tire, by where it is now.
    pub tire: String,
    /// Where it would go.
    pub to: String,
    /// What would lift it.
    pub lifted_by: String,
}

impl Words {
    /// An answer, worded. Places are lettered FL FR RL RR in data, whatever the choice.
    pub fn rotation(&self, answer: &Answer, layout: &Layout) -> RotationView {
        RotationView {
            plans: answer.plans.iter().map(|plan| self.plan_view(plan, layout)).collect(),
            refused: answer
                .refused
                .iter()
                .map(|refused| RefusedView {
                    pattern: refused.pattern.code(),
                    moves: coded_moves(&refused.moves, layout),
                    because: refused.because.iter().map(|because| self.because_view(because, layout)).collect(),
                })
                .collect(),
            look_next: answer.look_next.iter().map(|look| look.say(self)).collect(),
            notes: answer.notes.iter().map(|note| self.note(note, layout)).collect(),
            searched: answer.searched,
            proved: answer.proved,
            gap_mm: answer.gap_mm,
            least_spread_mm: answer.least_spread_mm,
            band_mm: answer.band_mm,
        }
    }

    fn plan_view(&self, plan: &Plan, layout: &Layout) -> PlanView {
        let name = |place: Place| layout.name(place, Letters::FrontFirst);
        PlanView {
            pattern: plan.pattern.code(),
            shout: self.shout(plan, layout),
            moves: coded_moves(&plan.moves, layout),
            visits: plan.visits.iter().map(|moves| VisitView { moves: coded_moves(moves, layout) }).collect(),
            remounts: plan.remounts.iter().map(|place| name(*place)).collect(),
            forecast: self.forecast_data(plan, layout),
            left: self.forecast(plan, layout),
            spread_mm: plan.spread_mm,
            why: plan.why.iter().map(|reason| self.reason(reason, layout)).collect(),
        }
    }

    /// What each tire will have left, as data: places are lettered FL FR RL RR.
    pub fn forecast_data(&self, plan: &Plan, layout: &Layout) -> Vec<ForecastView> {
        let name = |place: Place| layout.name(place, Letters::FrontFirst);
        let view = |f: &Forecast| ForecastView {
            tire: name(f.tire),
            to: name(f.to),
            next_visit_mm: f.next_visit_mm,
            horizon_mm: f.horizon_mm,
            limit_mm: f.limit_mm,
            below: f.below,
        };
        plan.forecast.iter().map(view).collect()
    }

    /// What each tire will have left, by where it is now: at the next visit, and at
    /// the end when more visits are planned. Nothing while that is not known.
    ///
    /// ```
    /// use lugbook::rotation::{plan, RequestFile};
    /// use lugbook::words::{Speech, Words};
    /// let tire = |at: &str| format!("[[tires]]\nat = \"{at}\"\ndepth_mm = 8.0\nrate_mm_per_1000_km = 0.1\n");
    /// let head = "class = \"car\"\ndrive = \"front\"\ninterval_km = 10000\n".to_owned();
    /// let text = head + &tire("FL") + &tire("FR") + &tire("RL") + &tire("RR");
    /// let request = RequestFile::read(&text)?.request()?;
    /// let answer = plan(&request)?;
    /// let left = Words::new(Speech::default()).forecast(&answer.plans[0], &request.layout).unwrap();
    /// assert_eq!(left, "Left at the next visit: FL 7 mm, FR 7 mm, RL 7 mm, RR 7 mm.");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn forecast(&self, plan: &Plan, layout: &Layout) -> Option<String> {
        let name = |place: Place| layout.name(place, self.speech().letters);
        let told = |depth: &dyn Fn(&Forecast) -> f64| {
            self.list(plan.forecast.iter().map(|f| format!("{} {}", name(f.tire), self.depth_mm(depth(f)))))
        };
        if plan.forecast.is_empty() {
            return None;
        }
        let next = told(&|f| f.next_visit_mm.mid);
        if plan.visits.len() < 2 {
            return Some(self.text("forecast-next", &[("next", next.into())]));
        }
        let end = told(&|f| f.horizon_mm.mid);
        let args = [("next", next.into()), ("end", end.into()), ("visits", plan.visits.len().to_string().into())];
        Some(self.text("forecast", &args))
    }

    fn because_view(&self, because: &Because, layout: &Layout) -> BecauseView {
        let name = |place: Place| layout.name(place, Letters::FrontFirst);
        BecauseView {
            constraint: because.constraint.code(),
            force: because.force.code(),
            reason: self.why(because, layout),
            source: self.source(&because.source),
            tire: name(because.tire),
            to: name(because.to),
            lifted_by: because.lifted_by.say(self),
        }
    }

    /// The first line: what a tech can shout across the shop.
    ///
    /// ```
    /// use lugbook::rotation::{plan, Request, TireFacts};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// use lugbook::words::{Speech, Words};
    /// let layout = Layout::two_axles(false);
    /// let tires = layout.places().map(TireFacts::at).collect();
    /// let answer = plan(&Request::new(layout.clone(), Class::Car, Drive::Front, tires)).unwrap();
    /// let words = Words::new(Speech::default());
    /// assert_eq!(words.shout(&answer.plans[0], &layout), "Fronts straight back, rears cross to the front.");
    /// ```
    pub fn shout(&self, plan: &Plan, layout: &Layout) -> String {
        if plan.pattern != Pattern::Other {
            return self.text(&format!("shout-{}", plan.pattern.code()), &[]);
        }
        let name = |place: Place| layout.name(place, self.speech().letters);
        let to = |from: Place| plan.moves.iter().find(|(f, _)| *f == from).map(|(_, to)| *to);
        let mut told: Vec<Place> = Vec::new();
        let mut sentences = Vec::new();
        for (from, _) in &plan.moves {
            if told.contains(from) {
                continue;
            }
            // Around the circle that this wheel opens.
            let mut circle = vec![*from];
            let mut at = to(*from);
            while let Some(place) = at.filter(|place| !circle.contains(place)) {
                circle.push(place);
                at = to(place);
            }
            told.extend(&circle);
            if let [a, b] = circle.as_slice() {
                sentences.push(self.text("shout-swap", &[("a", name(*a).into()), ("b", name(*b).into())]));
                continue;
            }
            let next = circle.iter().skip(1).chain(circle.first());
            let steps = circle
                .iter()
                .zip(next)
                .map(|(from, to)| self.text("shout-cycle", &[("from", name(*from).into()), ("to", name(*to).into())]));
            sentences.push(self.text("shout-other", &[("moves", self.list(steps).into())]));
        }
        sentences.join(" ")
    }

    /// A plan's moves, from and to: `FL→RL  FR→RR`; nothing when nothing moves.
    ///
    /// ```
    /// use lugbook::rotation::{plan, Request, TireFacts};
    /// use lugbook::vehicle::{Class, Drive, Layout};
    /// use lugbook::words::{Speech, Words};
    /// let layout = Layout::two_axles(false);
    /// let tires = layout.places().map(TireFacts::at).collect();
    /// let answer = plan(&Request::new(layout.clone(), Class::Car, Drive::Rear, tires)).unwrap();
    /// assert_eq!(Words::new(Speech::default()).arrows(&answer.plans[0], &layout), "FL→RR  FR→RL  RL→FL  RR→FR");
    /// ```
    pub fn arrows(&self, plan: &Plan, layout: &Layout) -> String {
        let name = |place: Place| layout.name(place, self.speech().letters);
        plan.moves.iter().map(|(from, to)| format!("{}→{}", name(*from), name(*to))).collect::<Vec<_>>().join("  ")
    }

    /// What to shout when a flat wheel is changed for the spare: the moves of
    /// [`moves_for_flat`](crate::lifting::moves_for_flat).
    ///
    /// ```
    /// use lugbook::lifting::moves_for_flat;
    /// use lugbook::vehicle::{Drive, Layout, Place, Side};
    /// use lugbook::words::{Speech, Words};
    /// let car = Layout::two_axles(true);
    /// let moves = moves_for_flat(&car, Place::single(1, Side::Left), Drive::Front, true).unwrap();
    /// let told = Words::new(Speech::default()).shout_flat(&moves, &car);
    /// assert_eq!(told, "RL goes to FL, the spare goes on at RL, the flat comes off.");
    /// ```
    pub fn shout_flat(&self, moves: &[(Place, Place)], layout: &Layout) -> String {
        let name = |place: Place| layout.name(place, self.speech().letters);
        let to = |wanted: Place| moves.iter().find(|(from, _)| *from == wanted).map_or(wanted, |(_, to)| *to);
        let spare = to(Place::Spare);
        if to(spare) == Place::Spare {
            return self.text("shout-flat", &[("at", name(spare).into())]);
        }
        self.text("shout-flat-forward", &[("good", name(spare).into()), ("at", name(to(spare)).into())])
    }

    /// A pattern that is out: each reason, what would lift it, its source.
    pub fn refused(&self, refused: &Refused, layout: &Layout) -> String {
        let because: Vec<String> = refused
            .because
            .iter()
            .map(|because| {
                let args = [
                    ("reason", self.why(because, layout).into()),
                    ("lift", because.lifted_by.say(self).into()),
                    ("source", self.source(&because.source).into()),
                ];
                self.text("because", &args)
            })
            .collect();
        let pattern = self.pattern(refused.pattern.code());
        let mut letters = pattern.chars();
        let pattern: String = letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect();
        self.text("refused", &[("pattern", pattern.into()), ("because", because.join(" ").into())])
    }

    /// What a constraint saw.
    pub fn why(&self, because: &Because, layout: &Layout) -> String {
        self.seen(because, &|place| layout.name(place, self.speech().letters))
    }

    fn seen(&self, because: &Because, name: &dyn Fn(Place) -> String) -> String {
        let (tire, to) = (name(because.tire), name(because.to));
        let (tire, to) = (("tire", tire.into()), ("to", to.into()));
        let side = |side: &Side| self.text(if *side == Side::Left { "side-left" } else { "side-right" }, &[]);
        match &because.reason {
            Why::AgainstArrow { made_for } => {
                self.text("why-against-arrow", &[tire, to, ("side", side(made_for).into())])
            }
            Why::DirectionalAndAsymmetric { made_for } => {
                self.text("why-directional-and-asymmetric", &[tire, ("side", side(made_for).into())])
            }
            Why::ArrowNotSeen => self.text("why-arrow-not-seen", &[tire]),
            Why::StudsChangeSide => self.text("why-studs-change-side", &[tire, to]),
            Why::SizeDiffers { tire: size, axle } => self
                .text("why-size-differs", &[tire, to, ("size", size.as_str().into()), ("axle", axle.as_str().into())]),
            Why::OffsetDiffers { wheel_mm, axle_mm } => {
                // Offsets are told in mm everywhere, and may be negative.
                let offset = |mm: f64| self.text("unit-mm", &[("value", self.number(mm, 1).into())]);
                let (wheel, axle) = (offset(*wheel_mm), offset(*axle_mm));
                self.text("why-offset-differs", &[tire, to, ("wheel", wheel.into()), ("axle", axle.into())])
            }
            Why::WheelTouchesBrake => self.text("why-wheel-touches-brake", &[tire, to]),
            Why::SeatDoesNotFit => self.text("why-seat-does-not-fit", &[tire]),
            Why::ForEmergencyOnly => self.text("why-for-emergency-only", &[tire, to]),
            Why::TooShallowToSteer { depth_mm, limit_mm } => {
                let (depth, limit) = (self.depth_mm(*depth_mm), self.depth_mm(*limit_mm));
                self.text("why-too-shallow-to-steer", &[tire, ("depth", depth.into()), ("limit", limit.into())])
            }
            Why::RetreadOnSteer => self.text("why-retread-on-steer", &[tire]),
            Why::RegroovedOnSteer => self.text("why-regrooved-on-steer", &[tire]),
            Why::PairApart { difference_mm, allowed_mm } => {
                let (difference, allowed) = (self.span_mm(*difference_mm), self.span_mm(*allowed_mm));
                self.text("why-pair-apart", &[to, ("difference", difference.into()), ("allowed", allowed.into())])
            }
            Why::LargerInside { difference_mm } => {
                self.text("why-larger-inside", &[to, ("difference", self.span_mm(*difference_mm).into())])
            }
            Why::CarriesTooLittle { carries_kg, needs_kg } => {
                let (carries, needs) = (self.mass_kg(*carries_kg), self.mass_kg(*needs_kg));
                self.text("why-carries-too-little", &[tire, to, ("carries", carries.into()), ("needs", needs.into())])
            }
            Why::PassengerSizeOnTruck { carries_kg, needs_kg } => {
                let (carries, needs) = (self.mass_kg(*carries_kg), self.mass_kg(*needs_kg));
                let args = [tire, to, ("carries", carries.into()), ("needs", needs.into())];
                self.text("why-passenger-size-on-truck", &args)
            }
            Why::PlacardBelowReference { placard_kpa, reference_kpa } => {
                let (placard, reference) = (self.kpa(*placard_kpa), self.kpa(*reference_kpa));
                let args = [tire, ("placard", placard.into()), ("reference", reference.into())];
                self.text("why-placard-below-reference", &args)
            }
            Why::SlowerThanNeeded { tire_kmh, needed_kmh, winter } => {
                let (speed, needed) = (self.kmh(*tire_kmh), self.kmh(*needed_kmh));
                let id = if *winter { "why-slower-than-needed-winter" } else { "why-slower-than-needed" };
                self.text(id, &[tire, ("speed", speed.into()), ("needed", needed.into())])
            }
            Why::Old { age } => self.text("why-old", &[tire, ("years", f64::from(age.years).into())]),
        }
    }

    /// Why a plan, one sentence.
    pub fn reason(&self, reason: &Reason, layout: &Layout) -> String {
        self.reasoned(reason, &|place| layout.name(place, self.speech().letters))
    }

    fn reasoned(&self, reason: &Reason, name: &dyn Fn(Place) -> String) -> String {
        let count = |id: &str, name: &'static str, count: u32| self.text(id, &[(name, f64::from(count).into())]);
        match reason {
            Reason::MakersPattern => self.text("reason-makers-pattern", &[]),
            Reason::TradesPattern { by } => {
                let id = match by {
                    DefaultBy::FrontDrive => "reason-trades-front-drive",
                    DefaultBy::RearDrive => "reason-trades-rear-drive",
                    DefaultBy::AllDrive => "reason-trades-all-drive",
                    DefaultBy::PartTimeDrive => "reason-trades-part-time-drive",
                    DefaultBy::NothingDrives => "reason-trades-nothing-drives",
                    DefaultBy::Studs => "reason-trades-studs",
                    DefaultBy::Arrows => "reason-trades-arrows",
                    DefaultBy::UnequalSizes => "reason-trades-unequal-sizes",
                };
                self.text(id, &[])
            }
            Reason::DriveWheels { goes } => {
                let id = match goes {
                    DriveMove::FrontStraightBack => "reason-drive-front-straight-back",
                    DriveMove::RearStraightForward => "reason-drive-rear-straight-forward",
                };
                self.text(id, &[])
            }
            Reason::NoHistory => self.text("reason-no-history", &[]),
            Reason::WithinUncertainty { better_mm, band_mm } => {
                let (better, band) = (self.depth_mm(*better_mm), self.depth_mm(*band_mm));
                self.text("reason-within-uncertainty", &[("better", better.into()), ("band", band.into())])
            }
            Reason::KeepsAboveLimit { tires } => count("reason-keeps-above-limit", "tires", *tires),
            Reason::BelowLimit { tires } => count("reason-below-limit", "tires", *tires),
            Reason::DeepestAtRear => self.text("reason-deepest-at-rear", &[]),
            Reason::ClosesSpread { left_mm, plan_mm } => {
                let (left, plan) = (self.depth_mm(*left_mm), self.depth_mm(*plan_mm));
                self.text("reason-closes-spread", &[("left", left.into()), ("plan", plan.into())])
            }
            Reason::WidensSpread { left_mm, plan_mm } => {
                let (left, plan) = (self.depth_mm(*left_mm), self.depth_mm(*plan_mm));
                self.text("reason-widens-spread", &[("left", left.into()), ("plan", plan.into())])
            }
            Reason::FewestMoved { moved } => count("reason-fewest-moved", "moved", *moved),
            Reason::Remounts { tires } => count("reason-remounts", "tires", *tires),
            Reason::AxleMeans { front_mm, rear_mm } => {
                let (front, rear) = (self.depth_mm(*front_mm), self.depth_mm(*rear_mm));
                self.text("reason-axle-means", &[("front", front.into()), ("rear", rear.into())])
            }
            Reason::Advice { because } => {
                let args = [
                    ("reason", self.seen(because, name).into()),
                    ("lift", because.lifted_by.say(self).into()),
                    ("source", self.source(&because.source).into()),
                ];
                self.text("because", &args)
            }
            Reason::LaterPairApart { visit } => count("reason-later-pair-apart", "visit", *visit),
        }
    }

    /// A statement about the whole answer.
    pub fn note(&self, note: &Note, layout: &Layout) -> String {
        match note {
            Note::NothingMayMove => self.text("note-nothing-may-move", &[]),
            Note::OnlyWithRemounting { allows } => {
                let patterns = self.list(allows.iter().map(|pattern| self.pattern(pattern.code())));
                self.text("note-only-with-remounting", &[("patterns", patterns.into())])
            }
            Note::NoPatternFits => self.text("note-no-pattern-fits", &[]),
            Note::LeavingIsAsGood => self.text("note-leaving-is-as-good", &[]),
            Note::BelowLimitAnywhere { tire } => {
                let tire = layout.name(*tire, self.speech().letters);
                self.text("note-below-limit-anywhere", &[("tire", tire.into())])
            }
            Note::SetApart { spread_mm } => {
                self.text("note-set-apart", &[("spread", self.depth_mm(*spread_mm).into())])
            }
            Note::SomeSayX { source } => self.text("note-some-say-x", &[("source", self.source(source).into())]),
            Note::Standing { because } => {
                let args =
                    [("reason", self.why(because, layout).into()), ("source", self.source(&because.source).into())];
                self.text("note-standing", &args)
            }
        }
    }

    /// A computed depth, to a tenth of a millimeter or of 1/32 in. It was not read,
    /// so it is told in the chosen unit alone.
    pub(crate) fn depth_mm(&self, mm: f64) -> String {
        let depth = Depth::new(mm.max(0.0), DepthUnit::Millimetre);
        let unit = if self.speech().units == Units::Us { DepthUnit::ThirtySecond } else { DepthUnit::Millimetre };
        let tenths = depth.and_then(|depth| Depth::new((depth.in_unit(unit) * 10.0).round() / 10.0, unit));
        tenths.map(|depth| self.reading(&depth)).unwrap_or_default()
    }

    fn span_mm(&self, mm: f64) -> String {
        Span::new((mm * 10.0).round() / 10.0, SpanUnit::Millimetre).map(|span| self.reading(&span)).unwrap_or_default()
    }

    fn mass_kg(&self, kg: f64) -> String {
        Load::new(kg.round(), LoadUnit::Kilogram).map(|load| self.reading(&load)).unwrap_or_default()
    }

    fn kpa(&self, kpa: f64) -> String {
        Pressure::new(kpa.round(), PressureUnit::Kilopascal).map(|p| self.reading(&p)).unwrap_or_default()
    }

    pub(super) fn kmh(&self, kmh: f64) -> String {
        Speed::new(kmh, SpeedUnit::KilometrePerHour).map(|speed| self.reading(&speed)).unwrap_or_default()
    }
}

fn coded_moves(moves: &[(Place, Place)], layout: &Layout) -> BTreeMap<String, String> {
    let name = |place: Place| layout.name(place, Letters::FrontFirst);
    moves.iter().map(|(from, to)| (name(*from), name(*to))).collect()
}

impl Say for Reason {
    /// With the names of a two-axle vehicle's places; [`Words::reason`] takes the layout.
    fn say(&self, words: &Words) -> String {
        words.reasoned(self, &|place| place.to_string())
    }
}

impl Say for Lift {
    fn say(&self, words: &Words) -> String {
        words.coded("lift", self)
    }
}

impl Say for LookNext {
    fn say(&self, words: &Words) -> String {
        words.coded("look", self)
    }
}

impl Say for Mistake {
    fn say(&self, words: &Words) -> String {
        let count = |count: usize| super::Arg::from(count);
        match self {
            Self::NoWheels => words.text("rotation-no-wheels", &[]),
            Self::TooManyAxles { axles, most } => {
                words.text("rotation-too-many-axles", &[("axles", count(*axles)), ("most", count(*most))])
            }
            Self::Horizon { visits, most } => {
                words.text("rotation-horizon", &[("visits", visits.to_string().into()), ("most", (*most).into())])
            }
            Self::TwoAt { at } => words.text("rotation-two-at", &[("at", at.to_string().into())]),
            Self::NoSuchPlace { at } => words.text("rotation-no-such-place", &[("at", at.to_string().into())]),
            Self::NothingAt { at } => words.text("rotation-nothing-at", &[("at", at.to_string().into())]),
            Self::Figure { at, what } => {
                let what = words.coded("figure", what);
                match at {
                    Some(at) => {
                        words.text("rotation-figure-at", &[("what", what.into()), ("at", at.to_string().into())])
                    }
                    None => words.text("rotation-figure", &[("what", what.into())]),
                }
            }
            Self::Contradiction { at, what } => {
                let id = match what {
                    Contradiction::SideWithoutArrow => "rotation-side-without-arrow",
                    Contradiction::TemporaryButWorked => "rotation-temporary-but-worked",
                    Contradiction::DualAboveSingle => "rotation-dual-above-single",
                    Contradiction::SpareWears => "rotation-spare-wears",
                };
                words.text(id, &[("at", at.to_string().into())])
            }
            Self::Grooves { at, grooves, most } => {
                let args = [("at", at.to_string().into()), ("grooves", count(*grooves)), ("most", count(*most))];
                words.text("rotation-grooves", &args)
            }
            Self::PatternDoesNotFit { pattern } => {
                let name = words.pattern(pattern);
                words.text("rotation-pattern-does-not-fit", &[("pattern", name.into())])
            }
        }
    }
}

impl Say for FileMistake {
    fn say(&self, words: &Words) -> String {
        let named = |id: &str, text: &str| words.text(id, &[("text", text.into())]);
        match self {
            Self::NotARequest { line, message } => {
                words.text("rotation-file", &[("line", (*line).into()), ("message", message.as_str().into())])
            }
            Self::NoSuchPlace { text } => named("rotation-file-place", text),
            Self::NoSuchPattern { text } => named("rotation-file-pattern", text),
            Self::NotASize { text } => named("rotation-file-size", text),
            Self::NotAService { text } => named("rotation-file-service", text),
            Self::Unreadable { at, field, given, why } => {
                let why = match *field {
                    "interval_km" | "next_visit_km" => words.misread::<DistanceUnit>(given, why),
                    "rating_kg" => words.misread::<LoadUnit>(given, why),
                    _ => words.misread::<DepthUnit>(given, why),
                };
                let id = if at.is_empty() { "rotation-file-number-alone" } else { "rotation-file-number" };
                words.text(id, &[("at", at.as_str().into()), ("field", (*field).into()), ("why", why.into())])
            }
            Self::Unplannable(mistake) => mistake.say(words),
        }
    }
}
