//! Raising a vehicle and moving its wheels: against a breadth-first search of
//! its own, and every list of actions replayed by a checker that knows only
//! what must hold. Both share no code with the core.

use std::collections::BTreeMap;

use lugbook::caution::{CautionId, Circumstance};
use lugbook::lifting::{
    Act, BadRequest, Gear, GearNote, GearPart, Interchange, JackKind, Lacking, Plan, Refusal, Request, Site, Spare,
    Task, Vehicle, moves_for_flat, plan,
};
use lugbook::measure::Load;
use lugbook::vehicle::{Axle, Drive, Layout, Place, Row, Side};
use proptest::prelude::*;

#[path = "lifting/breadth.rs"]
mod breadth;

use breadth::{Bare, Corner, axle_hoists, corner_hoists};

// ---------------------------------------------------------------- vehicles

fn layout(duals: &[bool]) -> Layout {
    let axle = |(at, dual): (usize, &bool)| Axle { dual: *dual, steer: at == 0, rating: None };
    Layout { axles: duals.iter().enumerate().map(axle).collect(), spare: false }
}

fn car(spare: Spare) -> Vehicle {
    Vehicle::of(layout(&[false, false]), spare)
}

fn jack(stands: u8) -> Gear {
    Gear::Jack { jack: JackKind::Floor, rating: None, stands, stand_rating: None }
}

const TWO_POST: Gear = Gear::TwoPost { rating: None };

fn four_post(bridges: u8) -> Gear {
    Gear::FourPost { rating: None, bridges, bridge_rating: None }
}

fn named(vehicle: &Vehicle, moves: &[(&str, &str)]) -> Vec<(Place, Place)> {
    let place = |name: &str| vehicle.layout.parse(name).unwrap();
    moves.iter().map(|(from, to)| (place(from), place(to))).collect()
}

fn task(vehicle: Vehicle, gear: Gear, moves: &[(&str, &str)]) -> Task {
    let moves = named(&vehicle, moves);
    Task { vehicle, gear, site: Site::Yard, moves, here: vec![Circumstance::HandTools] }
}

fn load(text: &str) -> Option<Load> {
    Some(text.parse().unwrap())
}

// ---------------------------------------------------------------- the checker

fn corner(place: Place) -> Corner {
    let position = place.position().expect("on an axle");
    (position.axle, position.side == Side::Right)
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Nuts {
    Tight,
    Cracked,
    One,
    Bare,
    Started,
    Snug,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Held {
    Ground,
    Jack,
    /// On a stand, the jack still under load.
    StandSet,
    /// On stands or locks that bear the weight.
    Resting,
}

struct Checker<'a> {
    task: &'a Task,
    hub: BTreeMap<Place, Option<Place>>,
    nuts: BTreeMap<Place, Nuts>,
    held: BTreeMap<Corner, Held>,
    chocked: BTreeMap<Corner, bool>,
    seen: bool,
    rocked: bool,
    jack_at: Vec<Corner>,
    weight_taken: Vec<Corner>,
    under: Vec<(Corner, Place)>,
    clear: bool,
    came_off: Vec<Place>,
    loosened: Vec<Place>,
    torqued: Vec<Place>,
    fetched: bool,
    stowed: bool,
    runways_up: bool,
    hands_at: Option<Corner>,
    lifts: u32,
}

impl<'a> Checker<'a> {
    fn new(task: &'a Task) -> Self {
        let wheels: Vec<Place> = task.vehicle.layout.positions().map(Place::Wheel).collect();
        let corners: Vec<Corner> = wheels.iter().map(|place| corner(*place)).collect();
        Self {
            task,
            hub: wheels.iter().map(|place| (*place, Some(*place))).collect(),
            nuts: wheels.iter().map(|place| (*place, Nuts::Tight)).collect(),
            held: corners.iter().map(|c| (*c, Held::Ground)).collect(),
            chocked: corners.iter().map(|c| (*c, false)).collect(),
            seen: false,
            rocked: false,
            jack_at: vec![],
            weight_taken: vec![],
            under: vec![],
            clear: false,
            came_off: vec![],
            loosened: vec![],
            torqued: vec![],
            fetched: false,
            stowed: false,
            runways_up: false,
            hands_at: None,
            lifts: 0,
        }
    }

    fn stands(&self) -> Option<u8> {
        match self.task.gear {
            Gear::Jack { stands, .. } => Some(stands),
            _ => None,
        }
    }

    fn alone(&self) -> bool {
        self.stands() == Some(0)
    }

    fn two_post(&self) -> bool {
        matches!(self.task.gear, Gear::TwoPost { .. })
    }

    fn up(&self) -> Vec<Corner> {
        self.held.iter().filter(|(_, held)| **held != Held::Ground).map(|(c, _)| *c).collect()
    }

    fn loose(&self) -> Vec<Place> {
        let spare = (self.task.vehicle.spare != Spare::None).then_some(Place::Spare);
        let all = self.hub.keys().copied().chain(spare);
        all.filter(|wheel| !self.hub.values().any(|on| on.as_ref() == Some(wheel))).collect()
    }

    fn corners(at: &[Place]) -> Vec<Corner> {
        let mut corners: Vec<Corner> = at.iter().map(|place| corner(*place)).collect();
        corners.dedup();
        corners
    }

    fn inner_of(place: Place) -> Option<Place> {
        let position = place.position()?;
        (position.row == Row::Outer).then_some(Place::Wheel(lugbook::vehicle::Position { row: Row::Inner, ..position }))
    }

    fn outer_of(place: Place) -> Option<Place> {
        let position = place.position()?;
        (position.row == Row::Inner).then_some(Place::Wheel(lugbook::vehicle::Position { row: Row::Outer, ..position }))
    }

    /// Everything that must hold before a hand goes at a raised wheel.
    fn held_well(&self, c: Corner) {
        if self.alone() {
            assert_eq!(self.up(), [c], "without a stand, one corner only");
            assert_eq!(self.held[&c], Held::Jack);
        } else {
            assert_eq!(self.held[&c], Held::Resting, "rests on stands or locks");
            assert!(self.seen && self.rocked, "seen to hold, and rocked");
            assert!(self.held.values().all(|held| matches!(held, Held::Ground | Held::Resting)), "no jack holds");
        }
    }

    fn step(&mut self, act: Act, at: &[Place], wheel: Option<Place>, next: Option<(Act, &[Place])>) {
        let corners = Self::corners(at);
        let on_ground = |checker: &Self, c: &Corner| checker.held[c] == Held::Ground;
        match act {
            Act::SecureSite | Act::SecureVehicle => assert!(self.up().is_empty()),
            Act::FetchSpare => {
                assert!(!self.fetched && self.task.vehicle.spare != Spare::None);
                assert!(self.up().is_empty() && !self.runways_up, "nobody leans into a raised vehicle");
                self.fetched = true;
            }
            Act::Chock => {
                assert!(on_ground(self, &corners[0]) && !self.chocked[&corners[0]]);
                self.chocked.insert(corners[0], true);
            }
            Act::Unchock => {
                assert!(self.chocked[&corners[0]]);
                self.chocked.insert(corners[0], false);
            }
            Act::CrackNuts => {
                for place in at {
                    assert!(on_ground(self, &corner(*place)), "nuts are cracked while the tire stands");
                    assert!(matches!(self.nuts[place], Nuts::Tight | Nuts::Snug));
                    self.nuts.insert(*place, Nuts::Cracked);
                    self.loosened.push(*place);
                }
            }
            Act::RaiseRunways => {
                assert!(matches!(self.task.gear, Gear::FourPost { .. }) && !self.runways_up);
                assert!(self.chocked.values().all(|chocked| *chocked), "all wheels chocked on the runways");
                self.runways_up = true;
                self.lifts += 1;
            }
            Act::LowerRunways => {
                assert!(self.runways_up && self.up().is_empty() && self.clear);
                self.runways_up = false;
            }
            Act::SetArms => assert!(self.two_post() && self.up().is_empty()),
            Act::RaiseClear => {
                for c in corners {
                    self.held.insert(c, Held::Jack);
                }
                self.rocked = false;
            }
            Act::SetJack => {
                assert!(!self.two_post());
                self.jack_at = corners;
            }
            Act::Raise => {
                self.lifts += 1;
                if self.two_post() {
                    assert!(self.rocked, "rocked with the wheels just clear");
                    assert_eq!(corners, self.up());
                    return;
                }
                assert_eq!(corners, self.jack_at, "the jack is where it raises");
                let staying = self.held.iter().filter(|(c, held)| **held == Held::Ground && !corners.contains(c));
                for (c, _) in staying {
                    assert!(self.chocked[c], "{c:?} stays down and is chocked");
                }
                for c in &corners {
                    assert!(on_ground(self, c));
                    self.held.insert(*c, Held::Jack);
                }
                self.seen = false;
                self.rocked = false;
                self.stands_safely();
            }
            Act::SetStand => {
                assert_eq!(self.held[&corners[0]], Held::Jack);
                self.held.insert(corners[0], Held::StandSet);
                let in_use = self.held.values().filter(|held| **held != Held::Ground).count();
                assert!(in_use <= usize::from(self.stands().unwrap()), "no more stands than there are");
            }
            Act::RestOnStands => {
                for c in corners {
                    assert_eq!(self.held[&c], Held::StandSet);
                    self.held.insert(c, Held::Resting);
                }
            }
            Act::RestOnLocks => {
                let up = self.up();
                assert!(!up.is_empty() || self.runways_up);
                for c in up {
                    self.held.insert(c, Held::Resting);
                }
                self.seen = false;
            }
            Act::SeeStands => {
                assert!(self.stands() > Some(0));
                self.seen = true;
            }
            Act::SeeLocks => {
                assert!(self.stands().is_none());
                self.seen = true;
            }
            Act::Rock => {
                assert!(!self.alone(), "nobody rocks a vehicle on a jack alone");
                if !self.two_post() {
                    assert!(self.held.values().all(|held| matches!(held, Held::Ground | Held::Resting)));
                    assert!(self.seen);
                }
                self.rocked = true;
            }
            Act::WheelUnder => {
                let wheel = wheel.unwrap();
                assert!(self.alone() && self.loose().contains(&wheel));
                assert!(wheel != Place::Spare || self.fetched);
                assert!(!self.under.iter().any(|(_, w)| *w == wheel));
                self.under.push((corners[0], wheel));
            }
            Act::WheelOut => {
                let before = self.under.len();
                self.under.retain(|(c, w)| (*c, Some(*w)) != (corners[0], wheel));
                assert_eq!(self.under.len() + 1, before);
            }
            Act::NutsOff => {
                for place in at {
                    self.held_well(corner(*place));
                    let ready = if self.two_post() { Nuts::Tight } else { Nuts::Cracked };
                    assert_eq!(self.nuts[place], ready, "cracked first: {place}");
                    self.nuts.insert(*place, Nuts::One);
                    self.loosened.push(*place);
                }
            }
            Act::WheelOff => {
                let place = at[0];
                self.held_well(corner(place));
                assert_eq!(self.hub[&place], wheel);
                if let Some(outer) = Self::outer_of(place) {
                    assert_eq!(self.hub[&outer], None, "the outer wheel first");
                } else {
                    assert_eq!(self.nuts[&place], Nuts::One, "one nut until it is held");
                }
                if let Some(inner) = Self::inner_of(place) {
                    self.nuts.insert(inner, Nuts::Bare);
                    self.loosened.push(inner);
                }
                self.hub.insert(place, None);
                self.nuts.insert(place, Nuts::Bare);
                self.came_off.push(place);
                self.hands_at = Some(corner(place));
            }
            Act::HoldNut => {
                assert!(Self::outer_of(at[0]).is_some_and(|outer| self.hub[&outer].is_none()));
                self.nuts.insert(at[0], Nuts::One);
            }
            Act::WheelOn => {
                let (place, wheel) = (at[0], wheel.unwrap());
                self.held_well(corner(place));
                assert_eq!(self.hub[&place], None);
                assert!(self.loose().contains(&wheel) && !self.under.iter().any(|(_, w)| *w == wheel));
                assert!(wheel != Place::Spare || self.fetched);
                if let Some(inner) = Self::inner_of(place) {
                    assert!(self.hub[&inner].is_some(), "the inner wheel first");
                }
                self.hub.insert(place, Some(wheel));
                self.nuts.insert(place, Nuts::Bare);
                self.hands_at = Some(corner(place));
            }
            Act::StartNuts | Act::Snug => {
                let (from, to) =
                    if act == Act::StartNuts { (Nuts::Bare, Nuts::Started) } else { (Nuts::Started, Nuts::Snug) };
                for place in at {
                    self.held_well(corner(*place));
                    assert!(self.hub[place].is_some());
                    assert_eq!(self.nuts[place], from);
                    self.nuts.insert(*place, to);
                    if let Some(inner) = Self::inner_of(*place)
                        && !at.contains(&inner)
                    {
                        self.nuts.insert(inner, to);
                    }
                }
            }
            Act::ClearUnder => {
                assert!(self.under.is_empty(), "nothing under the vehicle");
                self.clear = true;
            }
            Act::TakeWeight => {
                assert!(self.clear);
                if self.stands().is_some() {
                    assert_eq!(corners, self.jack_at);
                }
                for c in &corners {
                    assert_eq!(self.held[c], Held::Resting);
                    self.held.insert(*c, Held::StandSet);
                }
                self.weight_taken = corners;
            }
            Act::RemoveStand => {
                assert!(self.weight_taken.contains(&corners[0]), "no weight on the stand");
                assert_eq!(self.held[&corners[0]], Held::StandSet);
                self.held.insert(corners[0], Held::Jack);
            }
            Act::Lower => {
                assert!(self.clear, "seen clear before lowering");
                for c in &corners {
                    let ready = if self.stands().is_some() { Held::Jack } else { Held::StandSet };
                    assert_eq!(self.held[c], ready);
                    self.held.insert(*c, Held::Ground);
                }
                for (place, on) in &self.hub {
                    if corners.contains(&corner(*place)) {
                        assert!(on.is_some(), "no bare hub is lowered");
                        assert!(
                            matches!(self.nuts[place], Nuts::Tight | Nuts::Snug),
                            "{place}: {:?}",
                            self.nuts[place]
                        );
                    }
                }
                self.stands_safely();
                if !self.up().is_empty() && !corners.iter().all(|c| self.chocked[c]) {
                    assert!(matches!(next, Some((Act::Chock, _))), "what stands down again is chocked next");
                }
            }
            Act::Stow => {
                let wheel = wheel.unwrap();
                assert!(self.up().is_empty() && self.loose() == [wheel]);
                self.stowed = true;
            }
            Act::FinalTorque => {
                assert!(self.up().is_empty() && !self.runways_up);
                for place in at {
                    assert_eq!(self.nuts[place], Nuts::Snug);
                    self.nuts.insert(*place, Nuts::Tight);
                    self.torqued.push(*place);
                }
            }
        }
        if !matches!(act, Act::ClearUnder | Act::SetJack | Act::TakeWeight | Act::RemoveStand) {
            self.clear = false;
        }
        self.always(act, corners_of(at).first().copied(), next);
    }

    /// What holds after every action.
    fn always(&mut self, act: Act, c: Option<Corner>, next: Option<(Act, &[Place])>) {
        if !matches!(act, Act::WheelOff | Act::WheelOn | Act::WheelUnder | Act::WheelOut | Act::FetchSpare) {
            self.hands_at = None;
        }
        for (place, on) in &self.hub {
            if on.is_some() && self.nuts[place] == Nuts::Bare {
                assert_eq!(self.hands_at, Some(corner(*place)), "{place} has a nut or hands on it");
            }
        }
        if self.alone() {
            for (place, on) in &self.hub {
                let here = corner(*place);
                if on.is_none() && !self.under.iter().any(|(c, _)| *c == here) {
                    // Only the wheel itself can go under, and only in the moment of off and on.
                    let others = self.loose().len() > 1 || self.hub.values().filter(|on| on.is_none()).count() > 1;
                    let moment = matches!(next, Some((Act::WheelUnder | Act::WheelOn, at)) if corner(at[0]) == here);
                    assert!(
                        moment && (!others || act == Act::WheelOut),
                        "a wheel lies under the sill while {place} is bare"
                    );
                }
            }
        }
        let _ = c;
    }

    fn stands_safely(&self) {
        let up = self.up();
        let axles: Vec<u8> = self.held.keys().map(|(axle, _)| *axle).collect();
        let one_end: Vec<Corner> =
            up.iter().copied().filter(|(axle, right)| !up.contains(&(*axle, !right)) && axles.contains(axle)).collect();
        assert!(one_end.windows(2).all(|pair| pair[0].1 == pair[1].1), "no diagonal: {up:?}");
    }

    fn finished(&self, plan: &Plan) {
        assert!(self.up().is_empty() && !self.runways_up && self.under.is_empty());
        assert!(self.chocked.values().all(|chocked| !chocked));
        let mut goal: BTreeMap<Place, Option<Place>> = self.hub.keys().map(|place| (*place, Some(*place))).collect();
        for (from, to) in &self.task.moves {
            if *to != Place::Spare {
                goal.insert(*to, Some(*from));
            } else if *from != Place::Spare {
                assert!(self.stowed, "the wheel that is left over is stowed");
            }
        }
        assert_eq!(self.hub, goal);
        for (from, to) in &self.task.moves {
            assert!(*from == Place::Spare || self.came_off.contains(from), "{from} came off on its way to {to}");
        }
        for place in &self.loosened {
            assert!(self.torqued.contains(place), "{place} was loosened and is tightened at the end");
        }
        assert!(self.nuts.values().all(|nuts| *nuts == Nuts::Tight));
        assert_eq!(self.lifts, plan.lifts);
        assert!(plan.at_least <= plan.lifts && plan.proved == (plan.at_least == plan.lifts));
    }
}

fn corners_of(at: &[Place]) -> Vec<Corner> {
    at.iter().filter(|place| place.position().is_some()).map(|place| corner(*place)).collect()
}

/// Replays a plan; panics at the first thing that must not be.
pub(crate) fn replay(task: &Task, plan: &Plan) {
    let mut checker = Checker::new(task);
    for (at, action) in plan.actions.iter().enumerate() {
        assert_eq!(action.n, at + 1);
        let next = plan.actions.get(at + 1).map(|next| (next.act, &next.at[..]));
        // A fetched or stowed spare has no corner.
        let places: Vec<Place> = action.at.iter().copied().filter(|place| *place != Place::Spare).collect();
        checker.step(action.act, &places, action.wheel, next);
        let danger = |caution: CautionId| action.cautions.contains(&caution);
        let by_jack = matches!(task.gear, Gear::Jack { .. });
        match action.act {
            Act::Lower | Act::LowerRunways | Act::ClearUnder => assert!(danger(CautionId::Lowering)),
            Act::Raise if by_jack => assert!(danger(CautionId::JackAlone)),
            Act::SecureSite => assert!(danger(CautionId::PassingTraffic) && danger(CautionId::Slope)),
            _ => {}
        }
        assert!(action.cautions.windows(2).all(|pair| pair[0].signal() >= pair[1].signal()), "gravest first");
    }
    checker.finished(plan);
}

fn planned(task: &Task) -> Plan {
    let plan = plan(task).unwrap_or_else(|why| panic!("{why:?} for {task:?}"));
    replay(task, &plan);
    plan
}

/// The moves that bring the wheels to these hubs; the wheel left over goes to the spare's place.
fn moves_to(vehicle: &Vehicle, hub: &[Option<usize>]) -> Vec<(Place, Place)> {
    let places: Vec<Place> = vehicle.layout.positions().map(Place::Wheel).collect();
    let place = |at: usize| places.get(at).copied().unwrap_or(Place::Spare);
    let mut moves: Vec<(Place, Place)> = hub
        .iter()
        .enumerate()
        .filter(|(at, wheel)| **wheel != Some(*at))
        .map(|(at, wheel)| (place(wheel.unwrap()), place(at)))
        .collect();
    if let Some(left) = (0..places.len()).find(|wheel| !hub.contains(&Some(*wheel))) {
        moves.push((place(left), Place::Spare));
    }
    moves
}

/// Every arrangement that the search by breadth reaches has the same number of lifts in the plan.
fn compare(vehicle: &Vehicle, gear: Gear, bare: &Bare, runways: u32) -> usize {
    let mut compared = 0;
    for ((hub, _), lifts) in bare.lifts(0) {
        let moves = moves_to(vehicle, &hub);
        let task = Task { vehicle: vehicle.clone(), gear, site: Site::Shop, moves, here: vec![] };
        let plan = planned(&task);
        let extra = if task.moves.is_empty() { 0 } else { runways };
        assert!(plan.proved && plan.bound <= lifts + extra, "the bound never claims more than is needed");
        assert_eq!(plan.lifts, lifts + extra, "{gear:?} {:?}", task.moves);
        compared += 1;
    }
    compared
}

#[test]
fn a_car_on_a_jack_needs_as_many_lifts_as_breadth_first_finds() {
    for (spare, kind) in [(false, Spare::None), (true, Spare::FullSize)] {
        for stands in 0..=4u8 {
            let bare = Bare::of(&[false, false], corner_hoists(2), usize::from(stands.max(1)), spare);
            let compared = compare(&car(kind), jack(stands), &bare, 0);
            let expected = match (spare, stands) {
                (false, 0 | 1) => 1,
                (false, _) => 24,
                (true, _) => 120,
            };
            assert_eq!(compared, expected, "{stands} stands, spare {spare}");
        }
    }
}

#[test]
fn a_car_raised_in_the_middle_of_its_axles_needs_as_many_lifts_as_breadth_first_finds() {
    for middles in [vec![1], vec![2], vec![1, 2]] {
        for stands in 2..=4u8 {
            let mut hoists = corner_hoists(2);
            hoists.extend(axle_hoists(2).into_iter().filter(|hoist| middles.contains(&hoist[0].0)));
            let bare = Bare::of(&[false, false], hoists, usize::from(stands), true);
            let vehicle = Vehicle { middles: middles.clone(), ..car(Spare::FullSize) };
            assert_eq!(compare(&vehicle, jack(stands), &bare, 0), 120);
        }
    }
}

#[test]
fn a_car_on_a_lift_needs_as_many_lifts_as_breadth_first_finds() {
    let whole = vec![axle_hoists(2).concat()];
    assert_eq!(compare(&car(Spare::None), TWO_POST, &Bare::of(&[false, false], whole.clone(), 4, false), 0), 24);
    assert_eq!(compare(&car(Spare::FullSize), TWO_POST, &Bare::of(&[false, false], whole, 4, true), 0), 120);
    for (bridges, compared) in [(1, 4), (2, 24)] {
        let bare = Bare::of(&[false, false], axle_hoists(2), 2 * usize::from(bridges), false);
        assert_eq!(compare(&car(Spare::None), four_post(bridges), &bare, 1), compared);
        let bare = Bare::of(&[false, false], axle_hoists(2), 2 * usize::from(bridges), true);
        assert_eq!(compare(&car(Spare::FullSize), four_post(bridges), &bare, 1), 120);
    }
}

#[test]
fn duals_on_a_bottle_jack_need_as_many_lifts_as_breadth_first_finds() {
    let bottle = |stands| Gear::Jack { jack: JackKind::Bottle, rating: None, stands, stand_rating: None };
    // One dual axle: four wheels, with and without a spare.
    for (spare, kind) in [(false, Spare::None), (true, Spare::FullSize)] {
        for stands in 0..=2u8 {
            let bare = Bare::of(&[true], corner_hoists(1), usize::from(stands.max(1)), spare);
            let compared = compare(&Vehicle::of(layout(&[true]), kind), bottle(stands), &bare, 0);
            assert_eq!(
                compared,
                if spare {
                    120
                } else if stands == 2 {
                    24
                } else {
                    4
                }
            );
        }
    }
    // Single wheels in front and duals behind: six wheels.
    for stands in [1, 2u8] {
        let bare = Bare::of(&[false, true], corner_hoists(2), usize::from(stands), false);
        let compared = compare(&Vehicle::of(layout(&[false, true]), Spare::None), bottle(stands), &bare, 0);
        assert_eq!(compared, if stands == 2 { 720 } else { 4 });
    }
}

#[test]
fn wheels_that_come_off_and_on_need_as_many_lifts_as_breadth_first_finds() {
    for stands in 0..=4u8 {
        let bare = Bare::of(&[false, false], corner_hoists(2), usize::from(stands.max(1)), false);
        let reached = bare.lifts(0b1111);
        for set in 1u32..16 {
            let home: Vec<Option<usize>> = (0..4).map(Some).collect();
            let best = reached.iter().filter(|((hub, off), _)| *hub == home && off & set == set).map(|(_, l)| *l).min();
            let vehicle = car(Spare::None);
            let places: Vec<Place> = vehicle.layout.positions().map(Place::Wheel).collect();
            let moves = (0..4).filter(|at| set & (1 << at) != 0).map(|at| (places[at], places[at])).collect();
            let plan = planned(&Task { vehicle, gear: jack(stands), site: Site::Yard, moves, here: vec![] });
            assert_eq!(Some(plan.lifts), best, "{stands} stands, set {set:04b}");
        }
    }
}

#[test]
fn a_temporary_spare_and_unequal_axles_need_as_many_lifts_as_breadth_first_finds() {
    // The temporary spare stands only where the moves put it.
    let vehicle = car(Spare::Temporary);
    for to in 0..4usize {
        let mut bare = Bare::of(&[false, false], corner_hoists(2), 1, true);
        bare.may[4] = (0..4).map(|hub| hub == to).collect();
        let mut compared = 0;
        for ((hub, _), lifts) in bare.lifts(0) {
            if hub[to] == Some(4) {
                let moves = moves_to(&vehicle, &hub);
                let task = Task { vehicle: vehicle.clone(), gear: jack(0), site: Site::Roadside, moves, here: vec![] };
                assert_eq!(planned(&task).lifts, lifts, "{:?}", task.moves);
                compared += 1;
            }
        }
        assert!(compared > 1);
    }
    // Unequal axles: wheels stay on their own axle, so swapping sides with two stands takes both axles in turn.
    let staggered = Vehicle { interchange: Interchange::OwnAxles, ..car(Spare::FullSize) };
    let swap = [("FL", "FR"), ("FR", "FL"), ("RL", "RR"), ("RR", "RL")];
    let plan = planned(&task(staggered, jack(2), &swap));
    for action in plan.actions.iter().filter(|a| a.act == Act::WheelOn) {
        let axle = |place: Place| place.position().map(|p| p.axle);
        let wheel = action.wheel.unwrap();
        assert!(wheel == Place::Spare || axle(wheel) == axle(action.at[0]));
    }
    assert_eq!(plan.lifts, 4);
}

// ---------------------------------------------------------------- known answers

#[test]
fn known_jobs_have_their_known_number_of_lifts() {
    // Counted by hand; common practice, no source.
    let rearward = [("RL", "FL"), ("RR", "FR"), ("FL", "RR"), ("FR", "RL")];
    let ring = [("FL", "FR"), ("FR", "RR"), ("RR", "FL")];
    let swap = [("FL", "RL"), ("RL", "FL")];
    let middles = Vehicle { middles: vec![1, 2], ..car(Spare::None) };
    let rows: [(&str, Task, u32); 12] = [
        ("two-post lift, all four", task(car(Spare::None), TWO_POST, &rearward), 1),
        ("four-post lift, two bridge jacks", task(car(Spare::None), four_post(2), &rearward), 3),
        ("four stands, corner by corner", task(car(Spare::None), jack(4), &rearward), 4),
        ("four stands, axle by axle", task(middles.clone(), jack(4), &rearward), 2),
        ("two stands, one swap on a side", task(car(Spare::None), jack(2), &swap), 2),
        ("one jack and the spare, one swap", task(car(Spare::FullSize), jack(0), &swap), 3),
        ("one jack and the spare, three in a ring", task(car(Spare::FullSize), jack(0), &ring), 4),
        ("one jack and the spare, four in a ring", task(car(Spare::FullSize), jack(0), &rearward), 5),
        ("one wheel off and on", task(car(Spare::None), jack(1), &[("RR", "RR")]), 1),
        ("one wheel off and on, no stand", task(car(Spare::None), jack(0), &[("RR", "RR")]), 1),
        ("a flat, the spare in its place", task(car(Spare::Temporary), jack(0), &[("SP", "FL"), ("FL", "SP")]), 1),
        (
            "a flat at a driven wheel, a good wheel forward",
            task(car(Spare::Temporary), jack(0), &[("FL", "SP"), ("SP", "RL"), ("RL", "FL")]),
            2,
        ),
    ];
    for (what, task, lifts) in rows {
        let plan = planned(&task);
        assert_eq!((plan.lifts, plan.proved, plan.at_least), (lifts, true, lifts), "{what}");
    }
}

#[test]
fn a_flat_at_a_driven_wheel_brings_a_good_wheel_forward_where_the_manual_wants_it() {
    let vehicle = car(Spare::Temporary);
    let flat = Place::single(1, Side::Right);
    let forward = moves_for_flat(&vehicle.layout, flat, Drive::Front, true).unwrap();
    assert_eq!(forward, named(&vehicle, &[("FR", "SP"), ("SP", "RR"), ("RR", "FR")]));
    let roadside = Gear::Jack { jack: JackKind::Roadside, rating: None, stands: 0, stand_rating: None };
    let task =
        Task { vehicle, gear: roadside, site: Site::Roadside, moves: forward, here: vec![Circumstance::HandTools] };
    let plan = planned(&task);
    assert_eq!(plan.lifts, 2);
    assert_eq!(plan.actions[0].act, Act::SecureSite);
    // The temporary spare goes to the free axle first; the flat is the last wheel left over.
    let on: Vec<_> =
        plan.actions.iter().filter(|a| a.act == Act::WheelOn).map(|a| (a.at[0], a.wheel.unwrap())).collect();
    let rear = Place::single(2, Side::Right);
    assert_eq!(on, [(rear, Place::Spare), (flat, rear)]);
    assert_eq!(plan.actions.iter().find(|a| a.act == Act::Stow).and_then(|a| a.wheel), Some(flat));

    let layout = &task.vehicle.layout;
    let plain = named(&task.vehicle, &[("FR", "SP"), ("SP", "FR")]);
    for (drive, wanted) in [(Drive::Front, false), (Drive::Rear, true), (Drive::All, true), (Drive::Unknown, true)] {
        assert_eq!(moves_for_flat(layout, flat, drive, wanted).as_ref(), Some(&plain), "{drive:?}");
    }
    assert_eq!(moves_for_flat(layout, Place::Spare, Drive::Front, true), None);
    assert_eq!(moves_for_flat(&Layout::two_axles(false), flat, Drive::Front, true), None);
}

#[test]
fn what_cannot_be_done_says_what_would_make_it_possible() {
    let swap = [("FL", "RL"), ("RL", "FL")];
    let lacking = |task: &Task| match plan(task) {
        Err(Refusal::NotWithThisGear { lacking }) => lacking,
        other => panic!("{other:?}"),
    };
    assert_eq!(
        lacking(&task(car(Spare::None), jack(0), &swap)),
        [Lacking::Stands { at_least: 2 }, Lacking::FullSizeSpare]
    );
    assert_eq!(
        lacking(&task(car(Spare::None), four_post(1), &swap)),
        [Lacking::BridgeJacks { at_least: 2 }, Lacking::FullSizeSpare]
    );
    assert_eq!(lacking(&task(car(Spare::None), four_post(0), &swap)), [Lacking::BridgeJacks { at_least: 2 }]);
    let truck = Vehicle::of(layout(&[false, true, true]), Spare::None);
    assert_eq!(lacking(&task(truck, TWO_POST, &[("2LO", "2LI"), ("2LI", "2LO")])), [Lacking::OtherGear]);
}

#[test]
fn gear_is_never_loaded_beyond_its_rating() {
    // 29 CFR 1910.244(a)(1), in a secondary page: the rating is marked and enough for the load.
    let vehicle =
        Vehicle { axle_weights: vec![load("1200 kg"), load("900 kg")], middles: vec![1, 2], ..car(Spare::None) };
    let gear = |rating: &str, stand: &str| Gear::Jack {
        jack: JackKind::Floor,
        rating: load(rating),
        stands: 4,
        stand_rating: load(stand),
    };
    let rearward = [("RL", "FL"), ("RR", "FR"), ("FL", "RR"), ("FR", "RL")];
    let lifts = |gear: Gear| plan(&task(vehicle.clone(), gear, &rearward)).map(|plan| plan.lifts);
    assert_eq!(lifts(gear("1200 kg", "600 kg")), Ok(2), "both axles in the middle");
    assert_eq!(lifts(gear("1199 kg", "600 kg")), Ok(3), "the front corner by corner");
    assert_eq!(lifts(gear("899 kg", "600 kg")), Ok(4), "all corner by corner");
    let Err(Refusal::Overloaded { parts }) = lifts(gear("3 t", "599 kg")) else { panic!("the stands are too weak") };
    assert!(parts.iter().all(|part| part.part == GearPart::Stand && part.load == load("600 kg").unwrap()));
    assert!(matches!(lifts(gear("449 kg", "3 t")), Err(Refusal::Overloaded { .. })));
    let lift = |rating: &str| plan(&task(vehicle.clone(), Gear::TwoPost { rating: load(rating) }, &rearward));
    assert!(lift("2100 kg").is_ok(), "the axles add up to 2,100 kg");
    assert!(matches!(lift("2099 kg"), Err(Refusal::Overloaded { .. })));

    // Axles unknown: each taken as 60 % of the whole (common practice, no source), and said.
    let heavy = Vehicle { weight: load("2000 kg"), ..car(Spare::None) };
    let one = |rating: &str| {
        let gear = Gear::Jack { jack: JackKind::Floor, rating: load(rating), stands: 1, stand_rating: load("1 t") };
        plan(&task(heavy.clone(), gear, &[("FL", "FL")]))
    };
    assert!(matches!(one("599 kg"), Err(Refusal::Overloaded { .. })));
    let notes = one("600 kg").unwrap().notes;
    assert!(notes.iter().any(|note| matches!(note, GearNote::AxleShareAssumed { percent: 60, .. })));
    // Nothing known: nothing is refused, and that is said.
    let unknown = plan(&task(car(Spare::None), jack(4), &rearward)).unwrap().notes;
    assert!(unknown.contains(&GearNote::NotChecked { part: GearPart::Jack }));
    assert!(unknown.contains(&GearNote::NotChecked { part: GearPart::Stand }));
    assert!(unknown.contains(&GearNote::CornersOnly));
}

// ---------------------------------------------------------------- hostile requests

#[test]
fn hostile_moves_are_refused_by_name() {
    let refusal = |vehicle: Vehicle, moves: &[(&str, &str)]| plan(&task(vehicle, jack(4), moves)).err();
    let at = |name: &str| Place::parse(name).unwrap();
    assert_eq!(refusal(car(Spare::None), &[]), None);
    assert_eq!(refusal(car(Spare::None), &[("FL", "RR")]), Some(Refusal::NowhereToGo { at: at("RR") }));
    assert_eq!(refusal(car(Spare::None), &[("FL", "RR"), ("RR", "RR")]), Some(Refusal::TwoWheels { to: at("RR") }));
    assert_eq!(refusal(car(Spare::None), &[("FL", "RR"), ("FL", "RL")]), Some(Refusal::MovedTwice { from: at("FL") }));
    let mut none = car(Spare::None);
    none.layout.axles.clear();
    assert_eq!(plan(&Task { moves: vec![], ..task(none, jack(4), &[]) }).err(), Some(Refusal::NoAxles));
    let many = Vehicle::of(layout(&[true; 9]), Spare::None);
    assert_eq!(plan(&task(many, jack(4), &[])).err(), Some(Refusal::TooManyAxles { most: 8 }));
    let strange = Task { moves: vec![(at("3L"), at("3L"))], ..task(car(Spare::None), jack(4), &[]) };
    assert_eq!(plan(&strange).err(), Some(Refusal::NoSuchPlace { at: at("3L") }));
    let spare = Task { moves: vec![(at("SP"), at("FL")), (at("FL"), at("SP"))], ..strange.clone() };
    assert_eq!(plan(&spare).err(), Some(Refusal::NoSuchPlace { at: Place::Spare }));
    assert_eq!(plan(&task(car(Spare::None), jack(17), &[])).err(), Some(Refusal::TooMuchGear { most: 16 }));
    assert_eq!(plan(&task(car(Spare::None), four_post(3), &[])).err(), Some(Refusal::TooMuchGear { most: 2 }));
}

#[test]
fn nothing_to_move_is_no_work() {
    let plan = plan(&task(car(Spare::FullSize), four_post(2), &[("SP", "SP")])).unwrap();
    assert_eq!((plan.actions.len(), plan.lifts, plan.proved), (0, 0, true));
}

#[test]
fn hostile_files_are_refused_with_the_place_of_the_slip() {
    let read = |text: &str| Request::read(text).expect_err(text);
    let base = "[gear]\nkind = \"floor-jack\"\nstands = 2\n[moves]\nFL = \"FR\"\nFR = \"FL\"\n";
    assert!(Request::read(base).is_ok());
    assert!(matches!(read(""), BadRequest::NotToml { .. }));
    assert!(matches!(read("gear = 3"), BadRequest::NotToml { line: 1, .. }));
    assert!(matches!(read(&base.replace("stands = 2", "stands = -1")), BadRequest::NotToml { line: 3, .. }));
    let many = Request::read(&base.replace("stands = 2", "stands = 300")).unwrap();
    assert_eq!(plan(&many).err(), Some(Refusal::TooMuchGear { most: 16 }));
    assert!(matches!(read(&base.replace("stands = 2", "stands = nan")), BadRequest::NotToml { line: 3, .. }));
    assert!(matches!(read(&base.replace("floor-jack", "magic")), BadRequest::NotToml { line: 2, .. }));
    assert!(matches!(read(&base.replace("stands", "wheels")), BadRequest::NotToml { line: 3, .. }));
    assert!(matches!(read(&base.replace("FL = ", "FL = \"RR\"\nFL = ")), BadRequest::NotToml { .. }));
    assert!(matches!(read(&base.replace("FL = ", "9L = ")), BadRequest::NoSuchPlace { given } if given == "9L"));
    assert!(matches!(read(&base.replace("FL = ", "LF = \"RR\"\nFL = ")), BadRequest::NamedTwice { .. }));
    let with = |line: &str| read(&base.replace("stands = 2", &format!("stands = 2\n{line}")));
    assert!(matches!(with("rating = \"NaN t\""), BadRequest::Reading { field: "rating", .. }));
    assert!(matches!(with("rating = \"-2 t\""), BadRequest::Reading { field: "rating", .. }));
    assert!(matches!(with("rating = \"0 kg\""), BadRequest::Zero { field: "rating" }));
    assert!(matches!(with("bridge_jacks = 1"), BadRequest::NotOfThisGear { field: "bridge_jacks" }));
    let vehicle = |line: &str| read(&format!("[vehicle]\n{line}\n{base}"));
    assert!(matches!(vehicle("jack_at_middle = [3]"), BadRequest::NoSuchAxle { given: 3 }));
    assert!(matches!(vehicle("axle_weights = [\"1 t\", \"1 t\", \"1 t\"]"), BadRequest::NoSuchAxle { given: 3 }));
    let forty = format!("axles = [{}]", ["\"dual\""; 10].join(", "));
    assert!(matches!(vehicle(&forty), BadRequest::TooManyAxles { most: 8 }));
    assert!(matches!(read(&"#".repeat(70_000)), BadRequest::TooLong { .. }));
}

#[test]
fn the_data_has_the_names_that_others_rely_on() {
    let task = Request::read(
        "tools = \"air\"\n[vehicle]\naxles = [\"single\", \"dual\"]\n[gear]\nkind = \"bottle-jack\"\nstands = 2\n[moves]\n2LO = \"2LI\"\n2LI = \"2LO\"\n",
    )
    .unwrap();
    let plan = planned(&task);
    let json = serde_json::to_value(plan.data(&task.vehicle.layout)).unwrap();
    assert_eq!((&json["lifts"], &json["proved"]), (&1.into(), &true.into()));
    let actions = json["actions"].as_array().unwrap();
    let find = |act: &str| actions.iter().find(|action| action["do"] == act).unwrap();
    assert_eq!(find("crack-nuts")["at"], "2LO 2LI");
    assert_eq!(find("wheel-off")["at"], "2LO");
    assert_eq!(find("wheel-off")["caution"], "heavy-wheel");
    assert_eq!(find("lower")["caution"], "lowering");
    assert_eq!(find("nuts-off")["caution"], "turning-socket");
    assert!(find("clear-under")["at"].is_null());
    for act in Act::ALL {
        assert_eq!(serde_json::to_value(act).unwrap(), act.code());
    }
}

// ---------------------------------------------------------------- words

/// Verbs that one person can do at once.
const VERBS: &[&str] = &[
    "Begin", "Chock", "Crack", "Fetch", "Hang", "Lay", "Look", "Lower", "Pull", "Raise", "Rock", "Run", "See", "Set",
    "Snug", "Stop", "Stow", "Take", "Tighten",
];

#[test]
fn every_action_is_one_short_sentence_with_a_verb_first() {
    use lugbook::words::{Lang, Speech, Words};
    for lang in Lang::ALL {
        let words = Words::new(Speech { lang, ..Speech::default() });
        for act in Act::ALL {
            let text = words.act(act);
            assert!(text.split(' ').count() <= 15 && text.ends_with('.') && text.matches('.').count() == 1, "{text}");
            let verbs = if lang == Lang::En { VERBS } else { crate::words::languages::SPANISH_VERBS };
            assert!(verbs.contains(&text.split(' ').next().unwrap()), "{text}");
            assert!(!text.contains("and then") && !text.contains("y luego"), "{text}");
            assert!(words.act_detail(act).is_none_or(|detail| detail != text));
        }
    }
}

#[test]
fn a_flat_at_the_roadside_reads_well() {
    use lugbook::words::{Speech, Words};
    let words = Words::new(Speech::default());
    let vehicle = car(Spare::Temporary);
    let moves = moves_for_flat(&vehicle.layout, Place::single(1, Side::Right), Drive::Front, true).unwrap();
    let gear = Gear::Jack { jack: JackKind::Roadside, rating: None, stands: 0, stand_rating: None };
    let task = Task { vehicle, gear, site: Site::Roadside, moves, here: vec![Circumstance::HandTools] };
    let plan = planned(&task);
    let mut told = words.lifts(&plan) + "\n";
    let mut shown = Vec::new();
    for action in &plan.actions {
        for caution in &action.cautions {
            if !shown.contains(caution) {
                shown.push(*caution);
                told += &format!("   {}: {}\n", words.signal(caution.signal()), words.caution(*caution));
            }
        }
        told += &format!("{:2} {}\n", action.n, words.action(action, &task.vehicle.layout));
    }
    insta::assert_snapshot!("a_flat_at_the_roadside", told);
}

#[test]
fn every_refusal_says_what_is_wrong_and_what_would_help() {
    use lugbook::words::{Say, Speech, Words};
    let words = Words::new(Speech::default());
    let say = |task: &Task| words.lift_refusal(&plan(task).unwrap_err(), &task.vehicle.layout);
    let swap = [("FL", "RL"), ("RL", "FL")];
    assert_eq!(
        say(&task(car(Spare::None), jack(0), &swap)),
        "It can't be done with this gear. It could with 2 stands or a full-size spare."
    );
    assert_eq!(
        say(&task(car(Spare::None), jack(4), &[("FL", "RR")])),
        "The wheel at RR has to make room and is sent nowhere. Say where it goes."
    );
    let at = Place::parse("3LO").unwrap();
    assert_eq!(
        say(&Task { moves: vec![(at, at)], ..task(car(Spare::None), jack(4), &[]) }),
        "This vehicle has no place 3LO. Name one of FL, FR, RL, RR."
    );
    let weak = Gear::Jack { jack: JackKind::Floor, rating: load("0.5 t"), stands: 2, stand_rating: load("1100 lb") };
    let heavy = Vehicle { weight: load("2000 kg"), ..car(Spare::None) };
    assert_eq!(
        say(&task(heavy, weak, &swap)),
        "The jack is rated 0.5 t and would have to carry 0.6 t. Use gear rated for it. \
         A stand is rated 1100 lb and would have to carry 1323 lb. Use gear rated for it."
    );
    let misread = Request::read("[gear]\nkind = \"floor-jack\"\nrating = \"2,500 kg\"\n[moves]\n").unwrap_err();
    assert_eq!(misread.say(&words), "rating: “2,500 kg” could mean two numbers. Type it without a thousands mark.");
    for note in plan(&task(car(Spare::None), jack(2), &swap)).unwrap().notes {
        assert!(note.say(&words).ends_with('.'));
    }
}

// ---------------------------------------------------------------- properties

fn any_gear() -> impl Strategy<Value = Gear> {
    prop_oneof![
        Just(TWO_POST),
        (0u8..=2).prop_map(four_post),
        (0u8..=6, prop_oneof![Just(JackKind::Floor), Just(JackKind::Bottle), Just(JackKind::Roadside)])
            .prop_map(|(stands, jack)| Gear::Jack { jack, rating: None, stands, stand_rating: None }),
    ]
}

fn any_task() -> impl Strategy<Value = Task> {
    let axles = prop_oneof![
        Just(vec![false, false]),
        Just(vec![false, true]),
        Just(vec![true]),
        Just(vec![false, false, false]),
        Just(vec![false, true, true]),
    ];
    let spare = prop_oneof![Just(Spare::None), Just(Spare::Temporary), Just(Spare::FullSize)];
    (axles, spare, any_gear(), any::<[bool; 3]>(), 2usize..=6, any::<bool>())
        .prop_flat_map(|(axles, spare, gear, flags, count, own)| {
            let vehicle = Vehicle::of(layout(&axles), spare);
            let places: Vec<Place> = vehicle.layout.places().collect();
            let count = count.min(places.len());
            (
                Just((vehicle, gear, flags, own)),
                proptest::sample::subsequence(places, count).prop_shuffle(),
                any::<u8>(),
            )
        })
        .prop_map(|((mut vehicle, gear, flags, own), places, turn)| {
            let count = vehicle.layout.axles.len();
            vehicle.middles = (1u8..).take(count).filter(|axle| flags[usize::from(*axle) - 1]).collect();
            if own {
                vehicle.interchange = Interchange::OwnAxles;
            }
            let by = usize::from(turn) % places.len();
            let moves = places.iter().enumerate().map(|(at, from)| (*from, places[(at + by) % places.len()])).collect();
            Task { vehicle, gear, site: Site::Yard, moves, here: vec![Circumstance::Air] }
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, ..ProptestConfig::default() })]

    #[test]
    fn whatever_is_asked_the_plan_keeps_what_must_hold_or_says_why_not(task in any_task()) {
        match plan(&task) {
            Ok(plan) => replay(&task, &plan),
            Err(Refusal::NotWithThisGear { .. }) => {
                // Four corners on stands or a whole vehicle on a lift that takes it can do anything.
                let enough = match task.gear {
                    Gear::TwoPost { .. } => task.vehicle.layout.axles.len() == 2,
                    Gear::FourPost { bridges, .. } => bridges == 2 && task.vehicle.layout.axles.len() <= 2,
                    Gear::Jack { stands, .. } => usize::from(stands) >= 2 * task.vehicle.layout.axles.len(),
                };
                prop_assert!(!enough, "{:?}", task);
            }
            Err(Refusal::TooLarge) => prop_assert!(task.vehicle.layout.positions().count() > 6),
            Err(other) => prop_assert!(false, "{:?}", other),
        }
    }

    #[test]
    fn more_stands_never_cost_more_lifts(task in any_task(), fewer in 0u8..4, more in 0u8..4) {
        let with = |stands| {
            let gear = Gear::Jack { jack: JackKind::Floor, rating: None, stands, stand_rating: None };
            plan(&Task { gear, ..task.clone() })
        };
        if let (Ok(one), Ok(other)) = (with(fewer), with(fewer + more)) && one.proved && other.proved {
            prop_assert!(other.lifts <= one.lifts);
        }
    }
}
