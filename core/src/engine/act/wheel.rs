//! What is done at the wheels: reading, marking, measuring, moving, tightening.

use super::{Acting, Done, Outcome, clipped};
use crate::caution::Circumstance;
use crate::engine::planning;
use crate::engine::{Trouble, TroubleKind};
use crate::entry::{
    Answer, Arm, Fact, Kind, Look, LookAt, Means, Move, Nuts, Pass, ReadBy, Relearn, SensorKind, Shelf, SidewallSide,
    SpareNuts, TireDamage, TireLooks, Turned,
};
use crate::fastener::{NutOutcome, TorqueSpec, Wrench, judge};
use crate::finding::State;
use crate::ident::TireId;
use crate::lifting::{Gear, moves_for_flat};
use crate::measure::{Depth, DepthUnit, DistanceUnit, LoadUnit, PressureUnit, SpanUnit, SpeedUnit};
use crate::procedure::{Ask, Bay, Condition, Unmet};
use crate::sidewall;
use crate::vehicle::{Place, Row};
use crate::words::{Say, Units};

/// What is read on a spare beside its sidewall.
pub(super) struct OnTheSpare {
    pub pressure: Option<String>,
    pub studs: Option<u8>,
    pub limit: Option<String>,
    pub replace_by: Option<String>,
}

/// How a part stands, as a person saw it.
pub(super) struct Seen {
    pub state: State,
    pub note: Option<String>,
    pub damage: Option<TireDamage>,
    pub thickness: Option<String>,
    pub least: Option<String>,
    pub photo: Option<usize>,
}

/// Most places around a tire where tread is measured.
const MOST_PLACES: usize = 12;
/// The pattern of a flat wheel that is changed for the spare, beside those of rotations.
const FLAT: &str = "flat";
/// What a tape around a tire can show, mm: from a wheelbarrow's to an earthmover's.
const AROUND_MM: std::ops::RangeInclusive<f64> = 800.0..=13_000.0;
/// Most grooves at one place.
const MOST_GROOVES: usize = 6;

impl Acting<'_> {
    /// The tire that was at a place when the job was opened.
    fn tire_at(&self, bay: &Bay<'_>, at: Place) -> Result<TireId, Trouble> {
        let now = bay.vehicle.fitted.get(&at).or_else(|| bay.job.fitted.get(&at));
        now.copied().ok_or_else(|| {
            let args = [("place", self.name_of(bay, at).into())];
            Trouble::mend(self.words, "trouble-no-tire", &args).at(self.name_of(bay, at))
        })
    }

    /// The tire that a person speaks of at a place: the one that is on, or the one
    /// laid out there that goes on.
    fn tire_spoken_of(&self, bay: &Bay<'_>, at: Place, coming: bool) -> Result<TireId, Trouble> {
        if !coming {
            return self.tire_at(bay, at);
        }
        bay.job.coming().get(&at).copied().ok_or_else(|| {
            let args = [("place", self.name_of(bay, at).into())];
            Trouble::mend(self.words, "trouble-nothing-laid-out", &args).at(self.name_of(bay, at))
        })
    }

    /// A marking that holds, as text, with what to know about it.
    pub(super) fn marking(&self, text: &str) -> Result<(String, Vec<String>), Trouble> {
        let marking = sidewall::parse(text);
        if let Some(trouble) = Trouble::of_marking(text, &marking, self.words) {
            return Err(trouble);
        }
        if marking.size.is_none() && marking.tin.is_none() {
            return Err(self.no_size(text));
        }
        let notes = marking.problems.iter().map(|problem| problem.say(self.words)).collect();
        Ok((text.trim().to_owned(), notes))
    }

    /// No size stands in what was typed.
    pub(super) fn no_size(&self, text: &str) -> Trouble {
        let trouble = Trouble::mend(self.words, "trouble-size", &[("given", clipped(text).into())]);
        trouble.pointing(text, 0, text.chars().count(), String::new())
    }

    pub(super) fn sidewall(
        &self,
        bay: &Bay<'_>,
        (at, coming): (&str, bool),
        (side, by): (SidewallSide, ReadBy),
        text: &str,
        looks: TireLooks,
    ) -> Done {
        let at = self.place(bay, at)?;
        let tire = self.tire_spoken_of(bay, at, coming)?;
        let (text, notes) = self.marking(text)?;
        let looks = looks.with_lettering(&sidewall::parse(&text));
        let fact = Fact::SidewallRead { job: Self::job_id(bay), tire, at, side, text, by, looks };
        Ok(notes.into_iter().fold(Outcome::fact(fact), Outcome::note))
    }

    pub(super) fn mark(&self, bay: &Bay<'_>, (at, coming): (&str, bool), mark: Option<String>) -> Done {
        let at = self.place(bay, at)?;
        let tire = self.tire_spoken_of(bay, at, coming)?;
        let mark = match mark {
            Some(mark) => self.text("what-mark", &mark)?,
            None => self.name_of(bay, at),
        };
        if mark.chars().count() > 8 {
            return Err(Trouble::mend(self.words, "trouble-mark-long", &[]));
        }
        if bay.job.marked(&mark).is_some_and(|other| other != tire) {
            let args = [("mark", mark.into())];
            return Err(Trouble::mend(self.words, "trouble-mark-twice", &args).at(self.name_of(bay, at)));
        }
        let said = self.words.text("said-mark", &[("mark", mark.as_str().into())]);
        Ok(Outcome::fact(Fact::MarkChalked { job: Self::job_id(bay), at, tire, mark, photo: None }).note(said))
    }

    /// Depths as typed: grooves set apart by spaces, places around by `;`, the
    /// unit once at the end.
    pub(super) fn depths(&self, text: &str, default: Option<DepthUnit>) -> Result<(Vec<Vec<Depth>>, Depth), Trouble> {
        let bad = || {
            let args = [("given", clipped(text).into())];
            Trouble::mend(self.words, "trouble-depths", &args)
        };
        let default = default.or(match self.words.speech().units {
            Units::AsRead => None,
            Units::Metric => Some(DepthUnit::Millimetre),
            Units::Us => Some(DepthUnit::ThirtySecond),
        });
        let unit_at =
            text.char_indices().find(|(_, c)| c.is_alphabetic() || *c == '/').map_or(text.len(), |(at, _)| at);
        let (numbers, unit) = text.split_at_checked(unit_at).ok_or_else(bad)?;
        // "7 6 7 1/32in" names its unit by a fraction: its 1 belongs to the unit.
        let (numbers, unit) = match numbers.trim_end().strip_suffix(" 1") {
            Some(rest) if unit.starts_with("/32") => (rest, "/32"),
            _ => (numbers, unit),
        };
        let mut places = Vec::new();
        for place in numbers.split(';') {
            let mut grooves = Vec::new();
            for number in place.split_whitespace() {
                let number = number.trim_end_matches(',');
                grooves.push(self.reading(&format!("{number}{unit}"), default)?);
            }
            if grooves.is_empty() || grooves.len() > MOST_GROOVES {
                return Err(bad());
            }
            places.push(grooves);
        }
        let lowest = places.iter().flatten().copied().reduce(|low, next| if next < low { next } else { low });
        match lowest {
            Some(lowest) if places.len() <= MOST_PLACES => Ok((places, lowest)),
            _ => Err(bad()),
        }
    }

    pub(super) fn tread(
        &self,
        bay: &Bay<'_>,
        (at, coming): (&str, bool),
        text: &str,
        lowest: Option<&str>,
        reason: Option<String>,
    ) -> Done {
        let at = self.place(bay, at)?;
        let tire = self.tire_spoken_of(bay, at, coming)?;
        let (grooves, mut low) = self.depths(text, None)?;
        if let Some(text) = lowest {
            let spot = self.reading(text, Some(low.unit()))?;
            if spot > low {
                return Err(Trouble::mend(self.words, "trouble-lowest", &[]).at(self.name_of(bay, at)));
            }
            low = spot;
        }
        let reason = reason.map(|reason| self.text("what-reason", &reason)).transpose()?;
        if reason.is_none() {
            self.not_deeper(bay, at, tire, low)?;
        }
        let measured =
            Outcome::fact(Fact::TreadMeasured { job: Self::job_id(bay), tire, at, grooves, lowest: low, reason });
        Ok(self.judged(bay, at, low).into_iter().fold(measured, Outcome::note))
    }

    /// Tread does not grow: deeper than last time by more than both gauges'
    /// resolution is a slip, another tire, or needs a reason.
    fn not_deeper(&self, bay: &Bay<'_>, at: Place, tire: TireId, low: Depth) -> Result<(), Trouble> {
        let Some(before) = self.book.depth_before(tire, bay.job.id) else { return Ok(()) };
        let resolution = |depth: Depth| planning::gauge_resolution_mm(self.book, bay.job, depth);
        let mm = |depth: Depth| depth.in_unit(DepthUnit::Millimetre);
        if mm(low) <= mm(before.lowest) + resolution(low) + resolution(before.lowest) {
            return Ok(());
        }
        let args = [
            ("place", self.name_of(bay, at).into()),
            ("now", self.words.reading(&low).into()),
            ("before", self.words.reading(&before.lowest).into()),
        ];
        let trouble = Trouble::new(TroubleKind::Held, self.words, "trouble-deeper", &args);
        Err(trouble.at(format!("tread {}", self.name_of(bay, at))))
    }

    pub(super) fn around(&self, bay: &Bay<'_>, at: &str, text: &str) -> Done {
        let at = self.place(bay, at)?;
        // A wheel that is off is spoken of where it belongs.
        let tire = match bay.job.wanted_at(at) {
            Some(tire) => tire,
            None => self.tire_at(bay, at)?,
        };
        let default = match self.words.speech().units {
            Units::AsRead => None,
            Units::Metric => Some(SpanUnit::Millimetre),
            Units::Us => Some(SpanUnit::Inch),
        };
        let around = self.reading(text, default)?;
        let args = [("place", self.name_of(bay, at).into()), ("given", clipped(text).into())];
        if !AROUND_MM.contains(&around.in_unit(SpanUnit::Millimetre)) {
            return Err(Trouble::mend(self.words, "trouble-around", &args).at(self.name_of(bay, at)));
        }
        Ok(Outcome::fact(Fact::AroundMeasured { job: Self::job_id(bay), at, tire, around }))
    }

    pub(super) fn weigh(&self, bay: &Bay<'_>, weight: &str, rating: &str) -> Done {
        let (weight, rating) = (self.reading::<LoadUnit>(weight, None)?, self.reading::<LoadUnit>(rating, None)?);
        let outcome = Outcome::fact(Fact::GearRated { job: Self::job_id(bay), weight, rating });
        if rating < weight {
            let args = [("weight", self.words.reading(&weight).into()), ("rating", self.words.reading(&rating).into())];
            return Ok(outcome.note(self.words.text("said-overloaded", &args)));
        }
        Ok(outcome)
    }

    pub(super) fn choose_plan(&self, bay: &Bay<'_>, text: &str) -> Done {
        self.gate(bay, Ask::Plan, None)?;
        self.not_begun(bay)?;
        let planned = planning::answer(bay, self.host.now().day());
        let answer = planned.map_err(|why| Trouble::said(why.say(self.words)))?.answer;
        let text = text.trim();
        let plan = match text.parse::<usize>() {
            Ok(number) => number.checked_sub(1).and_then(|at| answer.plans.get(at)),
            Err(_) => answer.plans.iter().find(|plan| plan.pattern.code() == text),
        };
        let Some(plan) = plan else {
            if let Some(refused) = answer.refused.iter().find(|refused| refused.pattern.code() == text) {
                let sentence = self.words.refused(refused, &bay.vehicle.layout);
                return Err(Trouble { kind: TroubleKind::Held, sentence, at: Some(text.to_owned()), pointer: None });
            }
            let args = [("given", clipped(text).into()), ("count", answer.plans.len().into())];
            return Err(Trouble::mend(self.words, "trouble-no-plan", &args));
        };
        let to = |from: Place| plan.moves.iter().find(|(f, _)| *f == from).map_or(from, |(_, to)| *to);
        let moves = bay.job.planned().into_iter().map(|(from, tire)| Move { tire, from, to: to(from) }).collect();
        let fact = Fact::PlanChosen { job: Self::job_id(bay), pattern: plan.pattern.code().to_owned(), moves };
        Ok(Outcome::fact(fact).note(self.words.shout(plan, &bay.vehicle.layout)))
    }

    pub(super) fn choose_wheels(&self, bay: &Bay<'_>, named: &[String]) -> Done {
        self.gate(bay, Ask::Wheels, None)?;
        let mut at: Vec<Place> = Vec::new();
        for text in named {
            let place = self.wheel(bay, text)?;
            // The outer wheel comes off before the inner one.
            let over = place.partner().filter(|_| place.row() == Some(Row::Inner));
            for place in over.into_iter().chain([place]) {
                if !at.contains(&place) {
                    at.push(place);
                }
            }
        }
        if at.is_empty() {
            return Err(Trouble::mend(self.words, "trouble-which-wheels", &[]));
        }
        Ok(Outcome::fact(Fact::WheelsChosen { job: Self::job_id(bay), at }))
    }

    pub(super) fn flat(&self, bay: &Bay<'_>, at: &str, good_wheel_forward: bool) -> Done {
        let at = self.wheel(bay, at)?;
        // Which wheel goes forward depends on which axle drives.
        if good_wheel_forward {
            self.gate(bay, Ask::Plan, None)?;
        }
        self.not_begun(bay)?;
        let layout = &bay.vehicle.layout;
        let Some(moves) = moves_for_flat(layout, at, bay.drive(), good_wheel_forward) else {
            let args = [("place", self.name_of(bay, at).into())];
            return Err(Trouble::mend(self.words, "trouble-no-flat", &args).at(self.name_of(bay, at)));
        };
        let to = |from: Place| moves.iter().find(|(f, _)| *f == from).map_or(from, |(_, to)| *to);
        let all = bay.job.fitted.iter().map(|(from, tire)| Move { tire: *tire, from: *from, to: to(*from) }).collect();
        let fact = Fact::PlanChosen { job: Self::job_id(bay), pattern: FLAT.to_owned(), moves: all };
        Ok(Outcome::fact(fact).note(self.words.shout_flat(&moves, layout)))
    }

    /// The spare as it was read, and the plan that follows: it goes where the flat
    /// tire is, and the flat tire where the spare was.
    pub(super) fn spare(&self, bay: &Bay<'_>, flat: &str, text: &str, nuts: SpareNuts, printed: &OnTheSpare) -> Done {
        let flat = self.wheel(bay, flat)?;
        // Held against the flat that is named now, so that a slip of the tongue can be said right.
        let unsafe_place = bay.unsafe_place(Some(flat));
        let held = unsafe_place.filter(|_| !self.is_opened(bay, Ask::Spare, None, Condition::PlaceSafe));
        if let Some(unmet) = held {
            return Err(self.held(bay, "spare", &unmet, None));
        }
        let Some(spare) = bay.job.fitted.get(&Place::Spare).copied() else {
            return Err(Trouble::mend(self.words, "trouble-no-spare", &[]));
        };
        let gone = self.tire_at(bay, flat)?;
        let (text, notes) = self.marking(text)?;
        if printed.studs.is_some_and(|studs| !(3..=12).contains(&studs)) {
            return Err(Trouble::mend(self.words, "trouble-studs", &[]));
        }
        let job = Self::job_id(bay);
        let limit = printed.limit.as_deref().map(|text| self.reading::<SpeedUnit>(text, None)).transpose()?;
        let replace_by =
            printed.replace_by.as_deref().map(|text| self.reading::<DistanceUnit>(text, None)).transpose()?;
        let looks = TireLooks::default().with_lettering(&sidewall::parse(&text));
        let at = Place::Spare;
        let mut outcome = Outcome::fact(Fact::SidewallRead {
            job,
            tire: spare,
            at,
            side: SidewallSide::Outer,
            text,
            by: ReadBy::Typed,
            looks,
        });
        if let Some(pressure) = &printed.pressure {
            let default = self.default_pressure();
            let pressure = self.reading(pressure, default)?;
            outcome = outcome.and(Fact::PressureMeasured { job, at, pressure, set: false, cold: None });
        }
        let moves = bay.job.fitted.iter().map(|(from, tire)| Move {
            tire: *tire,
            from: *from,
            to: if *tire == spare {
                flat
            } else if *tire == gone {
                at
            } else {
                *from
            },
        });
        outcome = outcome
            .and(Fact::SpareSeen { job, flat, nuts, studs: printed.studs, limit, replace_by })
            .and(Fact::PlanChosen { job, pattern: "spare".to_owned(), moves: moves.collect() });
        outcome = notes.into_iter().fold(outcome, Outcome::note);
        if looks.temporary && limit.is_none() {
            outcome = outcome.note(self.words.text("said-spare-no-limit", &[]));
        }
        Ok(outcome)
    }

    /// The unit of a pressure that is typed without one.
    fn default_pressure(&self) -> Option<PressureUnit> {
        match self.words.speech().units {
            Units::AsRead => None,
            Units::Metric => Some(PressureUnit::Kilopascal),
            Units::Us => Some(PressureUnit::Psi),
        }
    }

    pub(super) fn lift(&self, bay: &Bay<'_>, arm: Arm) -> Done {
        let ask = match arm {
            Arm::Clear => Ask::RaisedClear,
            Arm::Full => Ask::RaisedFull,
            Arm::Held => Ask::Held,
            Arm::AllClear => Ask::AllClear,
            Arm::Down => Ask::Lowered,
        };
        self.gate(bay, ask, None)?;
        let on = |support: Circumstance| bay.job.circumstances.iter().any(|code| code == support.code());
        let means = match bay.gear() {
            _ if on(Circumstance::Lift) => Means::Lift,
            _ if on(Circumstance::Roadside) || on(Circumstance::JackAlone) => Means::Jack,
            Some((Gear::Jack { stands: 0, .. }, _)) => Means::Jack,
            _ => Means::Stands,
        };
        let at = bay.step_at(ask, None).and_then(|(_, at)| at);
        Ok(Outcome::fact(Fact::Lifted { job: Self::job_id(bay), arm, means, at }))
    }

    pub(super) fn wheel_off(&self, bay: &Bay<'_>, at: &str) -> Done {
        let at = self.place(bay, at)?;
        self.gate(bay, Ask::WheelOff, Some(at))?;
        if bay.job.is_off(at) {
            let args = [("place", self.name_of(bay, at).into())];
            return Err(Trouble::mend(self.words, "trouble-already-off", &args).at(self.name_of(bay, at)));
        }
        if let Some(outer) = at.partner().filter(|outer| at.row() == Some(Row::Inner) && !bay.job.is_off(*outer)) {
            let args = [("place", self.name_of(bay, at).into()), ("outer", self.name_of(bay, outer).into())];
            return Err(Trouble::mend(self.words, "trouble-outer-on", &args).at(self.name_of(bay, at)));
        }
        Ok(Outcome::fact(Fact::WheelOff { job: Self::job_id(bay), at }))
    }

    pub(super) fn look(&self, bay: &Bay<'_>, at: Option<&str>, part: Option<LookAt>, seen: Seen) -> Done {
        let Seen { state, note, damage, thickness, least, photo } = seen;
        let at = at.map(|at| self.place(bay, at)).transpose()?;
        let note = note.map(|note| self.text("what-note", &note)).transpose()?;
        let photo = photo.map(|number| self.photo_numbered(bay, number)).transpose()?;
        let thickness = thickness.map(|text| self.reading::<SpanUnit>(&text, None)).transpose()?;
        let least = least.map(|text| self.reading::<SpanUnit>(&text, None)).transpose()?;
        let several = part.is_none();
        let parts = match part {
            Some(part) => vec![part],
            None if state == State::Sound => bay.parts_at(at),
            None if damage.is_some() => vec![LookAt::Tire],
            None => return Err(Trouble::mend(self.words, "trouble-which-part", &[])),
        };
        let looks = bay.job.looks();
        let mut outcome = Outcome::default();
        for part in parts {
            // "All sound" fills in what was not looked at yet; it does not overrule what was found.
            let found = looks.iter().any(|look| look.at == at && look.part == part && look.state != State::Sound);
            if several && found {
                continue;
            }
            let look = Look { at, part, state, note: note.clone(), damage, thickness, least };
            if let Some(least) = bay.least_of(&look).filter(|least| thickness.is_some_and(|thick| thick < *least)) {
                let args = [("least", self.words.reading(&least).into())];
                outcome = outcome.note(self.words.text("said-too-thin", &args));
            }
            outcome = outcome.and(Fact::FindingNoted { job: Self::job_id(bay), look, photo });
        }
        if state != State::Sound && photo.is_none() {
            outcome = outcome.note(self.words.text("said-finding-photo", &[]));
        }
        if state == State::Unsafe {
            outcome = outcome.note(self.words.text("said-unsafe", &[]));
        }
        Ok(outcome)
    }

    pub(super) fn hang(&self, bay: &Bay<'_>, at: &str, mark: &str) -> Done {
        let at = self.place(bay, at)?;
        let mark = self.text("what-mark", mark)?;
        self.gate(bay, Ask::MarkRead, Some(at))?;
        let Some(tire) = bay.job.marked(&mark) else {
            let marks =
                self.words.list(bay.job.planned().values().filter_map(|t| bay.job.known_by(*t)).map(str::to_owned));
            let args = [("mark", clipped(&mark).into()), ("marks", marks.into())];
            return Err(Trouble::mend(self.words, "trouble-no-mark", &args).at(self.name_of(bay, at)));
        };
        let partner = at.partner();
        if let Some(inner) = partner.filter(|inner| at.row() == Some(Row::Outer) && bay.job.is_off(*inner)) {
            let args = [("place", self.name_of(bay, at).into()), ("inner", self.name_of(bay, inner).into())];
            return Err(Trouble::mend(self.words, "trouble-inner-off", &args).at(self.name_of(bay, at)));
        }
        // The outer wheel covers the inner one's nuts.
        if let Some(inner) = partner.filter(|inner| at.row() == Some(Row::Outer) && bay.job.came_off(*inner)) {
            let nuts = bay.nuts_left(inner, Pass::Snug).filter(|_| bay.has_nuts(inner)).unwrap_or_default();
            if !nuts.is_empty() {
                return Err(self.held(bay, "mark-read", &Unmet::AllSnug { at: inner, nuts }, Some(at)));
            }
        }
        let (_, wanted) = bay.wanted(at);
        // The nuts that hold an inner wheel may be the outer one's: the gate is opened there.
        let nuts_at = partner.filter(|_| !bay.has_nuts(at)).unwrap_or(at);
        if wanted != Some(tire) && !self.is_opened(bay, Ask::Started, Some(nuts_at), Condition::MarkFits) {
            let unmet = Unmet::MarkFits {
                at,
                read: Some(mark),
                wanted: wanted.and_then(|tire| bay.job.known_by(tire)).map(str::to_owned),
                belongs: bay.belongs(tire),
            };
            return Err(self.held(bay, "started", &unmet, Some(at)));
        }
        let job = Self::job_id(bay);
        Ok(Outcome::fact(Fact::MarkRead { job, at, mark }).and(Fact::WheelOn { job, at, tire }))
    }

    pub(super) fn nuts(&self, bay: &Bay<'_>, at: &str, pass: Pass, nut: Option<u8>, moved: Option<bool>) -> Done {
        let at = self.wheel(bay, at)?;
        let place = self.name_of(bay, at);
        if let Some(outer) = at.partner().filter(|_| !bay.has_nuts(at)) {
            let args = [("place", place.as_str().into()), ("outer", self.name_of(bay, outer).into())];
            return Err(Trouble::mend(self.words, "trouble-nuts-at-outer", &args).at(place));
        }
        let Some(studs) = bay.studs() else {
            return Err(Trouble::mend(self.words, "trouble-count-nuts", &[]).at(place));
        };
        let ask = match pass {
            Pass::Cracked => Ask::Cracked,
            Pass::Started => Ask::Started,
            Pass::Snug => Ask::Snug,
            Pass::Recheck if bay.step_for(Ask::Rechecked).is_some() => Ask::Rechecked,
            Pass::Final | Pass::Recheck => Ask::Final,
            Pass::Loosened => Ask::Loosened,
        };
        self.gate(bay, ask, Some(at))?;
        if pass != Pass::Cracked && bay.job.is_off(at) {
            return Err(Trouble::mend(self.words, "trouble-wheel-off", &[("place", place.as_str().into())]).at(place));
        }
        if pass == Pass::Loosened && !bay.turned(pass).contains(&at) {
            return Err(Trouble::mend(self.words, "trouble-not-loosened", &[]).at(place));
        }
        if pass == Pass::Final && !bay.job.came_off(at) && !bay.turned(pass).contains(&at) {
            return Err(Trouble::mend(self.words, "trouble-not-moved", &[("place", place.as_str().into())]).at(place));
        }
        let nuts = match nut {
            Some(nut) if (1..=studs).contains(&nut) => Nuts::One(nut),
            Some(_) => {
                let args = [("count", studs.into())];
                return Err(Trouble::mend(self.words, "trouble-no-nut", &args).at(place));
            }
            None => Nuts::WheelInOrder(studs),
        };
        let clicks = matches!(pass, Pass::Final | Pass::Recheck);
        let turned = match (clicks, moved) {
            (false, _) => None,
            (true, Some(true)) => Some(Turned::Moved),
            (true, Some(false)) => Some(Turned::Still),
            (true, None) => return Err(Trouble::mend(self.words, "trouble-moved", &[]).at(place)),
        };
        let wrench = self.wrench(bay);
        let setting = self
            .specification(bay)
            .filter(|_| clicks)
            .zip(wrench.as_ref())
            .and_then(|(spec, (_, wrench))| crate::fastening::target(spec, wrench).ok())
            .map(|target| target.target);
        let tool = wrench.filter(|_| clicks).map(|(tool, _)| tool);
        let mut outcome =
            Outcome::fact(Fact::NutTightened { job: Self::job_id(bay), at, nuts, pass, turned, setting, tool });
        if let Some(moved) = moved.filter(|_| clicks) {
            let first =
                if pass == Pass::Final { crate::fastener::Pass::FirstFinal } else { crate::fastener::Pass::Recheck };
            let id = match judge(first, moved) {
                NutOutcome::Proven => None,
                NutOutcome::BackOffQuarterAndAgain => Some("said-back-off"),
                NutOutcome::Held => Some("said-held"),
                NutOutcome::MovedRecordAndRepeat => Some("said-moved"),
            };
            if let Some(id) = id {
                outcome = outcome.note(self.words.text(id, &[]));
            }
        }
        Ok(outcome)
    }

    /// The torque specification of the vehicle in the bay.
    fn specification<'b>(&self, bay: &Bay<'b>) -> Option<&'b TorqueSpec> {
        match bay.book.on_shelf(&bay.vehicle.model, Kind::Torque).map(|spec| &spec.shelf) {
            Some(Shelf::Torque { spec, .. }) => Some(spec),
            _ => None,
        }
    }

    /// The torque wrench used in this job.
    fn wrench(&self, bay: &Bay<'_>) -> Option<(crate::ident::ToolId, Wrench)> {
        planning::wrench(self.book, bay.job)
    }

    pub(super) fn pressure(&self, bay: &Bay<'_>, at: &str, text: &str, set: bool, cold: Option<bool>) -> Done {
        let at = self.place(bay, at)?;
        let pressure = self.reading(text, self.default_pressure())?;
        let mut outcome = Outcome::fact(Fact::PressureMeasured { job: Self::job_id(bay), at, pressure, set, cold });
        let placard = match bay.book.on_shelf(&bay.vehicle.model, Kind::Placard).map(|spec| &spec.shelf) {
            Some(Shelf::Placard { placard }) => placard.at(at).map(|tire| tire.cold),
            _ => None,
        };
        if let Some(placard) = placard.filter(|placard| set && pressure < *placard) {
            let args = [("placard", self.words.reading(&placard).into())];
            outcome = outcome.note(self.words.text("said-below-placard", &args));
        }
        Ok(outcome)
    }

    pub(super) fn relearn(&self, bay: &Bay<'_>, outcome: &str, method: Option<Relearn>) -> Done {
        let step = bay.procedure.steps.iter().find(|step| step.id == "relearn").map(|step| step.id.as_str());
        let Some(step) = step else { return Err(Trouble::mend(self.words, "trouble-no-relearn", &[])) };
        let answered = self.answer_choice(bay, step, outcome)?;
        let sensors = bay.job.last(|fact| match fact {
            Fact::SensorRead { sensors, .. } if *sensors != SensorKind::Unknown => Some(*sensors),
            _ => None,
        });
        let learned = Fact::SensorRead {
            job: Self::job_id(bay),
            at: None,
            sensors: sensors.unwrap_or(SensorKind::Unknown),
            number: None,
            lamp: None,
            relearned: Some(outcome == "done"),
            tire: None,
            method,
        };
        Ok(if method.is_some() { answered.and(learned) } else { answered })
    }

    /// The answer to a step that asks for a choice, wherever the job stands.
    fn answer_choice(&self, bay: &Bay<'_>, step: &str, choice: &str) -> Done {
        let offered = bay.procedure.step(step).is_some_and(|step| step.choices.iter().any(|known| known == choice));
        if !offered {
            return Err(Trouble::mend(self.words, "trouble-no-relearn", &[]));
        }
        let answer = Answer::Choice(choice.to_owned());
        Ok(Outcome::fact(Fact::StepDone { job: Self::job_id(bay), step: step.to_owned(), at: None, answer }))
    }

    pub(super) fn sensor(&self, bay: &Bay<'_>, (at, coming): (&str, bool), number: &str) -> Done {
        let at = self.place(bay, at)?;
        let tire = if coming { Some(self.tire_spoken_of(bay, at, coming)?) } else { None };
        let number = self.text("what-sensor", number)?;
        Ok(Outcome::fact(Fact::SensorRead {
            job: Self::job_id(bay),
            at: Some(at),
            sensors: SensorKind::Direct,
            number: Some(number),
            lamp: None,
            relearned: None,
            tire,
            method: None,
        }))
    }

    pub(super) fn lamp(&self, bay: &Bay<'_>, on: bool, sensors: SensorKind) -> Done {
        Ok(Outcome::fact(Fact::SensorRead {
            job: Self::job_id(bay),
            at: None,
            sensors,
            number: None,
            lamp: Some(on),
            relearned: None,
            tire: None,
            method: None,
        }))
    }
}
