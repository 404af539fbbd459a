//! Reasons, forecasts and refusals.

use crate::source::{Grade, Source};
use crate::vehicle::{Drive, Place};
use crate::wear::{Stretch, simulate};

use super::answer::{Answer, Because, DefaultBy, Force, Forecast, LookNext, Note, Plan, Reason, Refused};
use super::board::{Board, Perm};
use super::facts::{Request, thousands_km};
use super::pattern::{DriveMove, Pattern};
use super::search::{Candidate, Found, Search};

/// A tire maker's public page: free-rolling axle crosses to the driving one; X for permanent four-wheel drive.
const SAYS_X: Source = Source::read(Grade::Secondary, "a tire maker's public page on rotation");

/// From this spread of an all-wheel-drive set on it is a finding (2/32 in; weak secondary sources).
const SET_APART_MM: f64 = 2.0 * crate::measure::THIRTY_SECOND_MM;

/// The patterns that win where forecasts can't be told apart.
pub(super) struct Defaults {
    makers: Option<Pattern>,
    trades: Vec<Pattern>,
    by: Option<DefaultBy>,
}

impl Defaults {
    /// The maker's pattern, else the trade's: front drive → forward cross; rear,
    /// part-time and all-wheel → rearward cross; directional, or studded, → front to
    /// rear; unequal sizes → side to side; X only when given. The five-tire form first
    /// where a full-size spare is carried.
    pub(super) fn of(board: &Board<'_>) -> Self {
        let request = board.request;
        let on_axles = || board.tires.iter().filter(|tire| tire.at != Place::Spare && !tire.temporary);
        let directional = on_axles().any(|tire| tire.directional == Some(true));
        let mut sizes: Vec<&String> = on_axles().filter_map(|tire| tire.size.as_ref()).collect();
        sizes.sort();
        sizes.dedup();
        let (by, pattern) = if sizes.len() > 1 {
            (DefaultBy::UnequalSizes, Pattern::SideToSide)
        } else if directional {
            (DefaultBy::Arrows, Pattern::FrontToRear)
        } else if on_axles().any(|tire| tire.studded) {
            (DefaultBy::Studs, Pattern::FrontToRear)
        } else {
            match request.drive {
                Drive::Front => (DefaultBy::FrontDrive, Pattern::ForwardCross),
                Drive::Rear => (DefaultBy::RearDrive, Pattern::RearwardCross),
                Drive::All => (DefaultBy::AllDrive, Pattern::RearwardCross),
                Drive::PartTime => (DefaultBy::PartTimeDrive, Pattern::RearwardCross),
                Drive::None | Drive::Unknown => (DefaultBy::NothingDrives, Pattern::FrontToRear),
            }
        };
        let trades = pattern.with_spare().into_iter().chain([pattern]).collect();
        Self { makers: request.makers_pattern, trades, by: Some(by) }
    }

    /// The maker's.
    pub(super) fn makers(&self) -> Option<Pattern> {
        self.makers
    }

    /// The trade's, in order of preference.
    pub(super) fn trades(&self) -> &[Pattern] {
        &self.trades
    }
}

/// Drive unknown: no pattern is named, only what to look at next.
pub(super) fn without_drive(board: &Board<'_>, search: &mut Search<'_, '_>) -> Answer {
    let mut look_next = vec![LookNext::WhichAxleDrives];
    look_next.extend(unknowns(board));
    Answer {
        plans: vec![leave(board, search)],
        refused: Vec::new(),
        look_next,
        notes: standing(board),
        searched: 0,
        proved: true,
        gap_mm: 0.0,
        least_spread_mm: None,
        band_mm: None,
    }
}

/// Puts what was found into words' raw material.
pub(super) fn answer(board: &Board<'_>, search: &mut Search<'_, '_>, defaults: &Defaults, found: Found) -> Answer {
    let stay = leave(board, search);
    let mut plans: Vec<Plan> = Vec::new();
    for (rank, candidate) in found.candidates.iter().enumerate() {
        let mut plan = describe(board, search, candidate, &stay);
        plan.why.splice(0..0, preference(board, defaults, candidate, &found, rank == 0));
        plans.push(plan);
    }
    let refused = refusals(board);
    let mut notes = Vec::new();
    if !found.movable {
        notes.push(with_remounting(board));
    } else if plans.is_empty() {
        notes.push(Note::NoPatternFits);
    } else if let Some(first) = found.candidates.first() {
        let identity: Perm = (0..board.len()).collect();
        let as_good = board.wear.is_some()
            && board.key(&identity) <= first.key
            && stay.spread_mm.is_some_and(|spread| spread <= found.least + board.band);
        if as_good {
            notes.push(Note::LeavingIsAsGood);
        }
    }
    notes.extend(standing(board));
    notes.extend(set_notes(board, &plans));
    plans.push(stay);
    let known = board.wear.is_some();
    Answer {
        plans,
        refused,
        look_next: unknowns(board),
        notes,
        searched: found.searched,
        proved: found.proved,
        gap_mm: found.gap,
        least_spread_mm: known.then_some(found.least).filter(|least| least.is_finite()),
        band_mm: known.then_some(board.band),
    }
}

/// What would have to be known for a better answer.
fn unknowns(board: &Board<'_>) -> Vec<LookNext> {
    let request = board.request;
    let on_axles = || board.tires.iter().filter(|tire| tire.at != Place::Spare && !tire.temporary);
    let mut look = Vec::new();
    if on_axles().any(|tire| tire.depths.is_empty()) {
        look.push(LookNext::Depths);
    }
    if on_axles().any(|tire| tire.size.is_none()) {
        look.push(LookNext::Sizes);
    }
    if on_axles().any(|tire| tire.directional.is_none()) {
        look.push(LookNext::Arrows);
    }
    if on_axles().any(|tire| tire.rate.is_none()) {
        look.push(LookNext::WearRates);
    }
    if request.interval.is_none() && (request.horizon > 1 || request.next_visit.is_none()) {
        look.push(LookNext::Interval);
    }
    look
}

/// What speaks against tires where they stand now, and tires that no place suits.
fn standing(board: &Board<'_>) -> Vec<Note> {
    let mut notes = Vec::new();
    for (i, row) in board.cells.iter().enumerate() {
        if let Some(cell) = row.get(i) {
            notes.extend(cell.words.iter().map(|because| Note::Standing { because: because.clone() }));
        }
        let wheels = row.iter().enumerate().filter(|(p, c)| c.open && board.places.get(*p) != Some(&Place::Spare));
        let mut open = wheels.peekable();
        if open.peek().is_some()
            && open.all(|(p, _)| board.falls_below(i, p))
            && let Some(tire) = board.places.get(i)
        {
            notes.push(Note::BelowLimitAnywhere { tire: *tire });
        }
    }
    for (outer, inner) in &board.pairs {
        notes.extend(board.pair(*outer, *inner, *outer).into_iter().map(|because| Note::Standing { because }));
    }
    notes
}

/// An all-wheel-drive set that lies apart, and who says X.
fn set_notes(board: &Board<'_>, plans: &[Plan]) -> Vec<Note> {
    let mut notes = Vec::new();
    if board.request.drive != Drive::All {
        return notes;
    }
    let on_axles = board.tires.iter().filter(|tire| tire.at != Place::Spare && !tire.temporary);
    let means: Option<Vec<f64>> = on_axles.map(|tire| tire.mean_mm()).collect();
    if let Some(means) = means {
        let spread_mm = super::spread::spread_of(&means);
        if spread_mm > SET_APART_MM {
            notes.push(Note::SetApart { spread_mm });
        }
    }
    if plans.iter().any(|plan| matches!(plan.pattern, Pattern::RearwardCross | Pattern::RearwardCrossFive)) {
        notes.push(Note::SomeSayX { source: SAYS_X });
    }
    notes
}

/// Nothing may move: whether remounting would change that.
fn with_remounting(board: &Board<'_>) -> Note {
    if board.request.remount_allowed {
        return Note::NothingMayMove;
    }
    let allowing = Request { remount_allowed: true, ..board.request.clone() };
    let other = Board::new(&allowing);
    let allows: Vec<Pattern> = Pattern::NAMED
        .into_iter()
        .filter(|pattern| {
            let perm = pattern.moves(&allowing.layout).and_then(|moves| other.perm_of(&moves));
            perm.is_some_and(|perm| other.allows(&perm))
        })
        .collect();
    if allows.is_empty() { Note::NothingMayMove } else { Note::OnlyWithRemounting { allows } }
}

/// The named patterns this vehicle could have and must not.
fn refusals(board: &Board<'_>) -> Vec<Refused> {
    Pattern::NAMED
        .into_iter()
        .filter_map(|pattern| {
            let moves = pattern.moves(&board.request.layout)?;
            let perm = board.perm_of(&moves)?;
            if board.allows(&perm) {
                return None;
            }
            Some(Refused { pattern, moves, because: because(board, &perm) })
        })
        .collect()
}

/// What the constraints say about a permutation: one word of each kind, what refuses first.
fn because(board: &Board<'_>, perm: &[usize]) -> Vec<Because> {
    let cells = perm.iter().enumerate().filter_map(|(t, p)| board.cell(t, *p).filter(|_| t != *p));
    let mut words: Vec<Because> = cells.flat_map(|cell| cell.words.iter().cloned()).collect();
    words.extend(board.pair_words(perm));
    words.sort_by_key(|word| (word.force, word.constraint));
    let mut told: Vec<Because> = Vec::new();
    for word in words {
        if !told
            .iter()
            .any(|t| t.constraint == word.constraint && t.force == word.force && t.lifted_by == word.lifted_by)
        {
            told.push(word);
        }
    }
    told
}

fn leave(board: &Board<'_>, search: &Search<'_, '_>) -> Plan {
    let identity: Perm = (0..board.len()).collect();
    let visits = vec![identity.clone(); usize::from(board.request.horizon)];
    let (forecast, spread_mm) = forecast(board, search, &visits);
    let below = forecast.iter().filter(|f| f.below).count();
    let mut why = Vec::new();
    if let Some(tires) = u32::try_from(below).ok().filter(|n| *n > 0) {
        why.push(Reason::BelowLimit { tires });
    }
    Plan {
        pattern: Pattern::LeaveAsIs,
        moves: Vec::new(),
        visits: vec![Vec::new(); usize::from(board.request.horizon)],
        remounts: Vec::new(),
        forecast,
        spread_mm,
        why,
    }
}

/// Depths at the next visit and at the end of the horizon under some visits.
fn forecast(board: &Board<'_>, search: &Search<'_, '_>, visits: &[Perm]) -> (Vec<Forecast>, Option<f64>) {
    if board.wear.is_none() {
        return (Vec::new(), None);
    }
    let reading = board.request.uncertainty.depth_mm;
    let first_km = board.first_km().unwrap_or(0.0);
    let later_km = board.request.interval.map_or(first_km, thousands_km);
    let mut ends = Vec::with_capacity(board.len());
    let mut forecasts = Vec::new();
    for (tire, from) in board.places.iter().enumerate() {
        let stretches: Vec<Stretch> = visits
            .iter()
            .enumerate()
            .map(|(number, perm)| {
                let place = perm.get(tire).copied().unwrap_or(tire);
                let rate = board.tires.get(place).filter(|_| board.places.get(place) != Some(&Place::Spare));
                let rate = rate.and_then(|standing| standing.rate);
                Stretch {
                    rate: rate.map_or(0.0, |rate| rate.mm_per_1000_km),
                    half_width: rate.map_or(0.0, |rate| rate.half_width),
                    thousand_km: if number == 0 { first_km } else { later_km },
                }
            })
            .collect();
        let ahead = simulate(board.start(tire), reading, &stretches);
        let depth = stretches.iter().fold(board.start(tire), |depth, s| depth - s.rate * s.thousand_km);
        ends.push(depth);
        let temporary = board.tires.get(tire).is_none_or(|facts| facts.temporary);
        let to = visits.first().and_then(|perm| perm.get(tire)).copied().unwrap_or(tire);
        if let (Some(next), Some(last), Some(to_place), false) =
            (ahead.first(), ahead.last(), board.places.get(to), temporary)
        {
            forecasts.push(Forecast {
                tire: *from,
                to: *to_place,
                next_visit_mm: *next,
                horizon_mm: *last,
                limit_mm: board.limit(to),
                below: board.falls_below(tire, to),
            });
        }
    }
    (forecasts, Some(search.spread_now(&ends)))
}

/// A candidate as a plan, with what speaks for and against it apart from preference.
fn describe(board: &Board<'_>, search: &mut Search<'_, '_>, candidate: &Candidate, stay: &Plan) -> Plan {
    let visits = search.visits(&candidate.perm);
    let (forecast, spread_mm) = forecast(board, search, &visits);
    let moves = board.moves_of(&candidate.perm);
    let mut why = Vec::new();
    let count = |forecast: &[Forecast]| u32::try_from(forecast.iter().filter(|f| f.below).count()).unwrap_or(u32::MAX);
    let (below, below_now) = (count(&forecast), count(&stay.forecast));
    if below < below_now {
        why.push(Reason::KeepsAboveLimit { tires: below_now - below });
    }
    if below > 0 {
        why.push(Reason::BelowLimit { tires: below });
    }
    if let (Some(plan_mm), Some(left_mm)) = (spread_mm, stay.spread_mm) {
        if plan_mm < left_mm - 0.05 {
            why.push(Reason::ClosesSpread { left_mm, plan_mm });
        } else if plan_mm > left_mm + 0.05 {
            why.push(Reason::WidensSpread { left_mm, plan_mm });
        }
    }
    if candidate.remounts > 0 {
        why.push(Reason::Remounts { tires: candidate.remounts });
    }
    why.extend(axle_means(board, &candidate.perm));
    let advice = because(board, &candidate.perm).into_iter().filter(|word| word.force == Force::Advice);
    why.extend(advice.map(|because| Reason::Advice { because }));
    let identity: Perm = (0..board.len()).collect();
    for (number, (perm, before)) in visits.iter().skip(1).zip(&visits).enumerate() {
        if perm != before && *perm != identity && board.pair_words(perm).iter().any(|word| word.force.refuses()) {
            why.push(Reason::LaterPairApart { visit: u32::try_from(number + 2).unwrap_or(u32::MAX) });
        }
    }
    // Each visit's moves name the places tires come from at that visit.
    let mut tables = Vec::with_capacity(visits.len());
    let mut now: Perm = identity.clone();
    for perm in &visits {
        let mut step: Perm = identity.clone();
        for (from, to) in now.iter().zip(perm) {
            if let Some(slot) = step.get_mut(*from) {
                *slot = *to;
            }
        }
        tables.push(board.moves_of(&step));
        now.clone_from(perm);
    }
    let remounts = candidate
        .perm
        .iter()
        .enumerate()
        .filter(|(t, p)| board.cell(*t, **p).is_some_and(|cell| cell.remount))
        .filter_map(|(t, _)| board.places.get(t).copied())
        .collect();
    Plan {
        pattern: Pattern::of(&moves, &board.request.layout),
        moves,
        visits: tables,
        remounts,
        forecast,
        spread_mm,
        why,
    }
}

/// Why this plan stands where it does.
fn preference(board: &Board<'_>, defaults: &Defaults, candidate: &Candidate, found: &Found, best: bool) -> Vec<Reason> {
    let request = board.request;
    let pattern = Pattern::of(&board.moves_of(&candidate.perm), &request.layout);
    let mut why = Vec::new();
    let makers = defaults.makers == Some(pattern);
    let trades = defaults.trades.contains(&pattern);
    if makers {
        why.push(Reason::MakersPattern);
    } else if let Some(by) = defaults.by.filter(|_| trades) {
        why.push(Reason::TradesPattern { by });
    }
    let by_drive = matches!(
        pattern,
        Pattern::ForwardCross | Pattern::ForwardCrossFive | Pattern::RearwardCross | Pattern::RearwardCrossFive
    );
    if trades
        && by_drive
        && let Some(goes) = DriveMove::of(request.drive)
    {
        why.push(Reason::DriveWheels { goes });
    }
    if board.wear.is_none() {
        why.push(Reason::NoHistory);
    } else if best {
        let price = f64::from(candidate.remounts) * request.remount_price_mm;
        let better_mm = candidate.spread + price - found.least;
        if (makers || trades) && better_mm > 1e-6 {
            why.push(Reason::WithinUncertainty { better_mm, band_mm: board.band });
        } else if !(makers || trades) {
            why.push(Reason::FewestMoved { moved: candidate.moved });
        }
    }
    let identity: Perm = (0..board.len()).collect();
    if request.after_part_replacement && candidate.key.rear < board.key(&identity).rear {
        why.push(Reason::DeepestAtRear);
    }
    why
}

/// Mean depths of front and rear after the moves, where both axles drive.
fn axle_means(board: &Board<'_>, perm: &[usize]) -> Option<Reason> {
    if board.request.drive != Drive::All || board.request.layout.axles.len() != 2 {
        return None;
    }
    let mean = |axle: u8| {
        let at = perm.iter().enumerate().filter(|(_, p)| {
            board.places.get(**p).and_then(|place| place.position()).is_some_and(|position| position.axle == axle)
        });
        let means: Option<Vec<f64>> = at.map(|(t, _)| board.tires.get(t).and_then(|tire| tire.mean_mm())).collect();
        let means = means?;
        let number = u32::try_from(means.len()).ok().filter(|n| *n > 0)?;
        Some(means.iter().sum::<f64>() / f64::from(number))
    };
    Some(Reason::AxleMeans { front_mm: mean(1)?, rear_mm: mean(2)? })
}
