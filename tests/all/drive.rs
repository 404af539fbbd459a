//! Which axles drive: every row of the table, the axles put together, the gate.
//!
//! No published table was found for any row here: each stands as
//! "common practice, no source", from how an open, a locking and a disengaged
//! axle move.

use lugbook::drive::{
    self, AxleState, Footing, NextLook, Reason, Says, Support, Told, Unmet, Verdict, may_turn, of_look, of_turn,
};
use lugbook::vehicle::hub::{
    AxleMotor, Differential, Engine, Evidence, FreeHubs, Gear, Hub, OffGround, Opposite, ParkingBrake, ShaftMotion,
    Turned, WheelMotion,
};
use lugbook::vehicle::{Axle, Class, Drive, Layout, Side};
use proptest::prelude::*;

/// Both ends in the air, engine and brake off, neutral, the wheel turns, nothing else watched.
const TURN: Turned = Turned {
    gear: Gear::Neutral,
    brake: ParkingBrake::Released,
    off_ground: OffGround::Both,
    engine: Engine::Off,
    wheel: WheelMotion::Turns,
    shaft: ShaftMotion::NotSeen,
    opposite: Opposite::NotTried,
};

struct Row {
    id: &'static str,
    turned: Turned,
    differential: Differential,
    free_hubs: FreeHubs,
    motor: AxleMotor,
    says: Says,
    reason: Reason,
}

const fn row(id: &'static str, turned: Turned, says: Says, reason: Reason) -> Row {
    Row {
        id,
        turned,
        differential: Differential::NotKnown,
        free_hubs: FreeHubs::NotKnown,
        motor: AxleMotor::NotKnown,
        says,
        reason,
    }
}

/// All rows: common practice, no source.
fn rows() -> Vec<Row> {
    use Gear::{InGear, Park};
    use OffGround::One;
    use Opposite::{OtherWay, SameWay};
    let held = Turned { wheel: WheelMotion::Held, ..TURN };
    let with_shaft = Turned { shaft: ShaftMotion::WithWheel, ..TURN };
    let still = Turned { opposite: Opposite::Still, ..TURN };
    let same = Turned { opposite: SameWay, ..TURN };
    let other = Turned { opposite: OtherWay, ..TURN };
    vec![
        row("engine-runs", Turned { engine: Engine::Running, ..other }, Says::Nothing, Reason::EngineRunning),
        row("on-ground", Turned { off_ground: OffGround::None, ..other }, Says::Nothing, Reason::OnTheGround),
        row("brake-set", Turned { brake: ParkingBrake::Set, ..other }, Says::Nothing, Reason::BrakeSet),
        row("brake-set-held", Turned { brake: ParkingBrake::Set, gear: Park, ..held }, Says::Nothing, Reason::BrakeSet),
        row(
            "brake-unknown-held",
            Turned { brake: ParkingBrake::NotKnown, gear: Park, ..held },
            Says::Nothing,
            Reason::BrakeNotKnown,
        ),
        row(
            "brake-unknown-other-way",
            Turned { brake: ParkingBrake::NotKnown, ..other },
            Says::Driven,
            Reason::OtherWay,
        ),
        row("shaft-stays", Turned { shaft: ShaftMotion::Still, ..TURN }, Says::Uncoupled, Reason::ShaftStayed),
        row("shaft-turns-neutral", with_shaft, Says::Driven, Reason::ShaftTurned),
        row("shaft-turns-one-off", Turned { off_ground: One, ..with_shaft }, Says::Driven, Reason::ShaftTurned),
        row(
            "shaft-turns-park-other-way",
            Turned { gear: Park, opposite: OtherWay, ..with_shaft },
            Says::Driven,
            Reason::ShaftTurned,
        ),
        row(
            "shaft-turns-park-still",
            Turned { gear: Park, opposite: Opposite::Still, ..with_shaft },
            Says::Uncoupled,
            Reason::ShaftTurnedNotHeld,
        ),
        row(
            "shaft-turns-park-one-off",
            Turned { gear: Park, off_ground: One, ..with_shaft },
            Says::Uncoupled,
            Reason::ShaftTurnedNotHeld,
        ),
        Row {
            motor: AxleMotor::Own,
            ..row(
                "own-motor-shaft-turns-park",
                Turned { gear: Park, opposite: SameWay, ..with_shaft },
                Says::Driven,
                Reason::ShaftTurned,
            )
        },
        row("other-way-neutral", other, Says::Driven, Reason::OtherWay),
        row("other-way-park", Turned { gear: Park, ..other }, Says::Driven, Reason::OtherWay),
        row("other-way-in-gear", Turned { gear: InGear, ..other }, Says::Driven, Reason::OtherWay),
        row("same-way-neutral", same, Says::Driven, Reason::SameWay),
        row("same-way-park", Turned { gear: Park, ..same }, Says::Uncoupled, Reason::SameWayNotHeld),
        Row {
            motor: AxleMotor::Own,
            ..row("own-motor-same-way-park", Turned { gear: Park, ..same }, Says::Driven, Reason::SameWay)
        },
        row("still-neutral", still, Says::Nothing, Reason::FreeInNeutral),
        row("one-off-neutral", Turned { off_ground: One, ..TURN }, Says::Nothing, Reason::FreeInNeutral),
        row("not-watched", TURN, Says::Nothing, Reason::OppositeNotWatched),
        row("not-watched-park", Turned { gear: Park, ..TURN }, Says::Nothing, Reason::OppositeNotWatched),
        row("still-park", Turned { gear: Park, ..still }, Says::LeansNot, Reason::TurnsAloneInGear),
        row("still-in-gear", Turned { gear: InGear, ..still }, Says::LeansNot, Reason::TurnsAloneInGear),
        row(
            "one-off-park-turns",
            Turned { gear: Park, off_ground: One, ..TURN },
            Says::LeansNot,
            Reason::TurnsAloneInGear,
        ),
        Row {
            motor: AxleMotor::Own,
            ..row("own-motor-still-park", Turned { gear: Park, ..still }, Says::Nothing, Reason::MotorTurnsAlong)
        },
        Row {
            free_hubs: FreeHubs::Free,
            ..row("hubs-free-still-park", Turned { gear: Park, ..still }, Says::Nothing, Reason::HubsFree)
        },
        Row {
            free_hubs: FreeHubs::Locked,
            ..row("hubs-locked-other-way", Turned { gear: Park, ..other }, Says::Driven, Reason::OtherWay)
        },
        Row {
            free_hubs: FreeHubs::Free,
            ..row(
                "hubs-free-shaft-stays",
                Turned { shaft: ShaftMotion::Still, ..TURN },
                Says::Uncoupled,
                Reason::ShaftStayed,
            )
        },
        row("held-neutral", held, Says::Nothing, Reason::HeldInNeutral),
        row("held-park", Turned { gear: Park, ..held }, Says::LeansDriven, Reason::HeldInGear),
        row("held-park-one-off", Turned { gear: Park, off_ground: One, ..held }, Says::LeansDriven, Reason::HeldInGear),
        Row {
            differential: Differential::Locking,
            ..row("held-park-locking", Turned { gear: Park, ..held }, Says::Driven, Reason::HeldThroughLocking)
        },
        Row {
            differential: Differential::Locking,
            ..row("held-neutral-locking", held, Says::Nothing, Reason::HeldInNeutral)
        },
        Row {
            differential: Differential::Open,
            ..row("held-in-gear-open", Turned { gear: InGear, ..held }, Says::LeansDriven, Reason::HeldInGear)
        },
    ]
}

#[test]
fn each_wheel_turned_by_hand_says_what_the_table_says() {
    for row in rows() {
        let found = of_turn(&row.turned, row.differential, row.free_hubs, row.motor);
        assert_eq!(found, (row.says, row.reason), "{}", row.id);
    }
}

#[test]
fn each_look_at_a_hub_says_what_the_table_says() {
    // Common practice, no source.
    let rows = [
        (Hub::Shaft, Some((Says::Driven, Reason::ShaftSeen))),
        (Hub::NoShaft, Some((Says::NotDriven, Reason::NoShaftSeen))),
        (Hub::ShaftEnd, Some((Says::LeansDriven, Reason::ShaftEndSeen))),
        (Hub::Covered, Some((Says::Nothing, Reason::HubCovered))),
        (Hub::CaplessUnit, Some((Says::Nothing, Reason::CaplessUnit))),
        (Hub::NotLooked, None),
    ];
    for (hub, says) in rows {
        assert_eq!(of_look(hub), says, "{hub:?}");
    }
}

const BRAKES: [ParkingBrake; 3] = [ParkingBrake::Released, ParkingBrake::Set, ParkingBrake::NotKnown];
const GROUND: [OffGround; 3] = [OffGround::None, OffGround::One, OffGround::Both];
const GEARS: [Gear; 3] = [Gear::Neutral, Gear::Park, Gear::InGear];
const ENGINES: [Engine; 2] = [Engine::Off, Engine::Running];
const MOTIONS: [WheelMotion; 2] = [WheelMotion::Turns, WheelMotion::Held];
const SHAFTS: [ShaftMotion; 3] = [ShaftMotion::WithWheel, ShaftMotion::Still, ShaftMotion::NotSeen];
const OPPOSITES: [Opposite; 4] = [Opposite::OtherWay, Opposite::SameWay, Opposite::Still, Opposite::NotTried];
const DIFFERENTIALS: [Differential; 3] = [Differential::Open, Differential::Locking, Differential::NotKnown];
const HUBS: [FreeHubs; 4] = [FreeHubs::NotFitted, FreeHubs::Free, FreeHubs::Locked, FreeHubs::NotKnown];
const MOTORS: [AxleMotor; 3] = [AxleMotor::Own, AxleMotor::None, AxleMotor::NotKnown];

fn every_turn() -> Vec<(Turned, Differential, FreeHubs, AxleMotor)> {
    let mut all = Vec::new();
    for gear in GEARS {
        for brake in BRAKES {
            for off_ground in GROUND {
                for engine in ENGINES {
                    for wheel in MOTIONS {
                        for shaft in SHAFTS {
                            for opposite in OPPOSITES {
                                let turned = Turned { gear, brake, off_ground, engine, wheel, shaft, opposite };
                                for differential in DIFFERENTIALS {
                                    for hubs in HUBS {
                                        for motor in MOTORS {
                                            all.push((turned, differential, hubs, motor));
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
    all
}

#[test]
fn no_combination_breaks_what_the_design_fixes() {
    let mut reasons = std::collections::HashSet::new();
    for (turned, differential, hubs, motor) in every_turn() {
        let (says, reason) = of_turn(&turned, differential, hubs, motor);
        reasons.insert(reason);
        let context = format!("{turned:?} {differential:?} {hubs:?} {motor:?}");
        if turned.brake == ParkingBrake::Set || turned.engine == Engine::Running || turned.off_ground == OffGround::None
        {
            assert_eq!(says, Says::Nothing, "{context}");
        }
        // A wheel turned by hand never proves that there is no shaft.
        assert_ne!(says, Says::NotDriven, "{context}");
        if turned.wheel == WheelMotion::Held && turned.gear == Gear::Neutral {
            assert_eq!(says, Says::Nothing, "{context}");
        }
        if says.can_drive() && turned.wheel == WheelMotion::Turns && turned.shaft == ShaftMotion::NotSeen {
            assert!(matches!(turned.opposite, Opposite::OtherWay | Opposite::SameWay), "{context}");
            assert_eq!(turned.off_ground, OffGround::Both, "{context}");
        }
    }
    let in_rows: std::collections::HashSet<_> = rows().iter().map(|row| row.reason).collect();
    assert_eq!(reasons, in_rows, "each reason of the table has a row in this file");
    assert_eq!(
        drive::HAND_TURNS.iter().map(|row| row.reason).collect::<std::collections::HashSet<_>>(),
        reasons,
        "each row of the table can be reached"
    );
}

fn car() -> Layout {
    Layout::two_axles(false)
}

fn axle(dual: bool, steer: bool) -> Axle {
    Axle { dual, steer, rating: None }
}

fn looks(hubs: &[(u8, Hub)]) -> Vec<Evidence> {
    hubs.iter().map(|(axle, hub)| Evidence::look(*axle, Side::Left, *hub)).collect()
}

fn of(seen: &[Evidence], manual: Option<Drive>, owner: Option<Drive>) -> Verdict {
    drive::verdict(&car(), Class::Car, seen, &Told { manual, owner })
}

#[test]
fn both_axles_seen_are_enough() {
    // Common practice, no source.
    let rows = [
        (Hub::Shaft, Hub::NoShaft, Drive::Front, None, None),
        (Hub::NoShaft, Hub::Shaft, Drive::Rear, None, None),
        (Hub::Shaft, Hub::Shaft, Drive::All, Some(Drive::PartTime), Some(NextLook::TransferControl)),
    ];
    for (front, rear, drive, or, next) in rows {
        let verdict = of(&looks(&[(1, front), (2, rear)]), None, None);
        assert_eq!((verdict.drive, verdict.or, verdict.next_look), (drive, or, next));
        assert_eq!(verdict.for_.len(), 2);
        assert!(verdict.against.is_empty() && verdict.contradiction.is_none() && verdict.silent.is_empty());
    }
}

#[test]
fn one_axle_seen_is_not_enough_and_the_other_hub_is_next() {
    for (seen, axle) in [((1, Hub::Shaft), 2), ((1, Hub::NoShaft), 2), ((2, Hub::Shaft), 1), ((2, Hub::NoShaft), 1)] {
        let verdict = of(&looks(&[seen]), None, None);
        assert_eq!(verdict.drive, Drive::Unknown, "{seen:?}");
        assert_eq!(verdict.next_look, Some(NextLook::BehindHub { axle, side: Side::Left }));
        assert_eq!(verdict.for_.len(), 1);
    }
}

#[test]
fn nothing_seen_asks_for_the_manual_first_and_then_for_a_hub() {
    let nothing = of(&[], None, None);
    assert_eq!((nothing.drive, nothing.next_look), (Drive::Unknown, Some(NextLook::Manual)));
    let silent_manual = of(&[], Some(Drive::Unknown), None);
    assert_eq!(silent_manual.next_look, Some(NextLook::BehindHub { axle: 1, side: Side::Left }));
}

#[test]
fn the_manual_is_enough_and_the_owner_is_not() {
    for drive in [Drive::Front, Drive::Rear, Drive::All, Drive::PartTime] {
        let manual = of(&[], Some(drive), None);
        assert_eq!((manual.drive, manual.next_look, manual.or), (drive, None, None));
        let owner = of(&[], None, Some(drive));
        assert_eq!((owner.drive, owner.next_look), (Drive::Unknown, Some(NextLook::Manual)));
        assert_eq!(owner.for_.len(), 1, "the owner's word is still shown");
    }
}

#[test]
fn hubs_that_say_nothing_settle_nothing() {
    for hub in [Hub::Covered, Hub::CaplessUnit] {
        let verdict = of(&looks(&[(1, hub), (2, hub)]), None, None);
        assert_eq!(verdict.drive, Drive::Unknown);
        assert_eq!((verdict.silent.len(), verdict.for_.len()), (2, 0));
    }
    // A nut in the middle of the hub leans, and a stub shaft would look the same.
    let ends = of(&looks(&[(1, Hub::ShaftEnd), (2, Hub::NoShaft)]), None, None);
    assert_eq!((ends.drive, ends.axles.clone()), (Drive::Unknown, vec![AxleState::Unsettled, AxleState::NotDriven]));
    assert_eq!(ends.next_look, Some(NextLook::BehindHub { axle: 1, side: Side::Left }));
}

#[test]
fn contradictions_are_shown_and_never_averaged() {
    let same_axle = [
        Evidence::look(1, Side::Left, Hub::Shaft),
        Evidence::look(1, Side::Right, Hub::Shaft),
        Evidence::look(1, Side::Right, Hub::NoShaft),
        Evidence::look(2, Side::Left, Hub::NoShaft),
    ];
    let verdict = of(&same_axle, None, None);
    assert_eq!((verdict.drive, verdict.axles[0]), (Drive::Unknown, AxleState::Contradicted));
    let clash = verdict.contradiction.expect("shown");
    assert_eq!((clash.one.reason, clash.other.reason), (Reason::ShaftSeen, Reason::NoShaftSeen));
    assert_eq!(verdict.next_look, Some(NextLook::BehindHub { axle: 1, side: Side::Right }));
    // Even the manual does not outvote an axle that contradicts itself.
    assert_eq!(of(&same_axle, Some(Drive::Front), None).drive, Drive::Unknown);

    let neither = of(&looks(&[(1, Hub::NoShaft), (2, Hub::NoShaft)]), None, None);
    assert_eq!(neither.drive, Drive::Unknown);
    assert!(neither.contradiction.is_some());
}

#[test]
fn what_was_told_against_what_was_seen_is_a_contradiction() {
    let rear = looks(&[(1, Hub::NoShaft), (2, Hub::Shaft)]);
    for told in [Drive::Front, Drive::All, Drive::PartTime, Drive::None] {
        let manual = of(&rear, Some(told), None);
        assert_eq!((manual.drive, manual.next_look), (Drive::Unknown, Some(NextLook::VehiclePlate)), "{told:?}");
        assert_eq!(manual.contradiction.map(|c| c.one.reason), Some(Reason::Manual));
        let owner = of(&rear, None, Some(told));
        assert_eq!((owner.drive, owner.next_look), (Drive::Unknown, Some(NextLook::Manual)), "{told:?}");
        assert_eq!(owner.contradiction.map(|c| c.one.reason), Some(Reason::Owner));
        // The manual and the hubs agree: the owner is shown against, and decides nothing.
        let both = of(&rear, Some(Drive::Rear), Some(told));
        assert_eq!((both.drive, both.contradiction), (Drive::Rear, None));
        assert_eq!(both.against.iter().map(|g| g.reason).collect::<Vec<_>>(), [Reason::Owner]);
    }
    // One hub is enough to contradict.
    let one = of(&looks(&[(2, Hub::Shaft)]), Some(Drive::Front), None);
    assert!(one.contradiction.is_some());
}

#[test]
fn part_time_is_told_from_all_wheel_by_hubs_lever_or_word() {
    let both = looks(&[(1, Hub::Shaft), (2, Hub::Shaft)]);
    assert_eq!(of(&both, None, Some(Drive::PartTime)).drive, Drive::PartTime);
    let all = of(&both, None, Some(Drive::All));
    assert_eq!((all.drive, all.or, all.next_look), (Drive::All, None, None));

    let mut hubs = both.clone();
    hubs[0].free_hubs = FreeHubs::Locked;
    let verdict = of(&hubs, None, None);
    assert_eq!((verdict.drive, verdict.axles[0]), (Drive::PartTime, AxleState::ByChoice));
    // "All-wheel" in an owner's mouth means part-time as well: shown, no contradiction.
    let owner = of(&hubs, None, Some(Drive::All));
    assert_eq!((owner.drive, owner.contradiction), (Drive::PartTime, None));
    assert_eq!(owner.against.len(), 1);
    // In a manual it does not.
    assert!(of(&hubs, Some(Drive::All), None).contradiction.is_some());
}

#[test]
fn a_motor_on_each_axle_is_all_wheel_drive() {
    let own = |axle| Evidence { motor: AxleMotor::Own, ..Evidence::look(axle, Side::Right, Hub::NotLooked) };
    let verdict = of(&[own(1), own(2)], None, None);
    assert_eq!(verdict.drive, Drive::All);
    // A motor in the wheel leaves nothing to be seen behind the hub: shown as a contradiction.
    let hub_motor = Evidence { hub: Hub::NoShaft, ..own(1) };
    assert!(of(&[hub_motor, own(2)], None, None).contradiction.is_some());
}

#[test]
fn a_shaft_on_an_axle_that_turned_alone_is_an_uncoupled_axle() {
    let alone = Turned { gear: Gear::Park, opposite: Opposite::Still, ..TURN };
    let seen = [
        Evidence { hub: Hub::Shaft, ..Evidence::turn(1, Side::Left, alone) },
        Evidence::look(2, Side::Left, Hub::Shaft),
    ];
    let verdict = of(&seen, None, None);
    assert_eq!(verdict.axles, [AxleState::Uncoupled, AxleState::Driven]);
    assert_eq!((verdict.drive, verdict.contradiction), (Drive::All, None));
}

#[test]
fn held_in_gear_and_free_in_neutral_proves_the_axle() {
    let held = Turned { gear: Gear::InGear, wheel: WheelMotion::Held, ..TURN };
    let free = TURN;
    let pair = [Evidence::turn(1, Side::Left, held), Evidence::turn(1, Side::Left, free)];
    assert_eq!(of(&pair, None, None).axles[0], AxleState::Driven);
    // Not when it was another wheel, another axle, or a brake may have held it.
    let other_side = [Evidence::turn(1, Side::Left, held), Evidence::turn(1, Side::Right, free)];
    assert_eq!(of(&other_side, None, None).axles[0], AxleState::Unsettled);
    let other_axle = [Evidence::turn(1, Side::Left, held), Evidence::turn(2, Side::Left, free)];
    assert_eq!(of(&other_axle, None, None).axles[0], AxleState::Unsettled);
    let braked = Turned { brake: ParkingBrake::NotKnown, ..held };
    let unsure = [Evidence::turn(1, Side::Left, braked), Evidence::turn(1, Side::Left, free)];
    assert_eq!(of(&unsure, None, None).axles[0], AxleState::Unsettled);
}

#[test]
fn a_rear_tandem_drives_as_soon_as_one_of_its_axles_does() {
    let tractor = Layout { axles: vec![axle(false, true), axle(true, false), axle(true, false)], spare: false };
    let seen = looks(&[(1, Hub::NoShaft), (2, Hub::Shaft), (3, Hub::NoShaft)]);
    let tag = drive::verdict(&tractor, Class::Truck, &seen, &Told::default());
    assert_eq!((tag.drive, tag.contradiction, tag.next_look), (Drive::Rear, None, None));
    assert_eq!(tag.axles, [AxleState::NotDriven, AxleState::Driven, AxleState::NotDriven]);
    assert!(tag.against.is_empty(), "a tag axle that rolls along is no evidence against");

    let open = drive::verdict(&tractor, Class::Truck, &seen[..2], &Told::default());
    assert_eq!(open.drive, Drive::Rear);
    assert_eq!(open.next_look, Some(NextLook::BehindHub { axle: 3, side: Side::Left }));

    let none = looks(&[(1, Hub::Shaft), (2, Hub::NoShaft), (3, Hub::NoShaft)]);
    let manual = Told { manual: Some(Drive::Rear), owner: None };
    assert!(drive::verdict(&tractor, Class::Truck, &none, &manual).contradiction.is_some());

    // Two steered axles in front belong together.
    let eight = Layout {
        axles: vec![axle(false, true), axle(false, true), axle(true, false), axle(true, false)],
        spare: false,
    };
    let seen = looks(&[(1, Hub::NoShaft), (2, Hub::NoShaft), (3, Hub::Shaft), (4, Hub::Shaft)]);
    assert_eq!(drive::verdict(&eight, Class::Truck, &seen, &Told::default()).drive, Drive::Rear);
    // Steering on both axles leaves a front and a rear end.
    let four_steer = Layout { axles: vec![axle(false, true), axle(false, true)], spare: false };
    let seen = looks(&[(1, Hub::NoShaft), (2, Hub::Shaft)]);
    assert_eq!(drive::verdict(&four_steer, Class::Truck, &seen, &Told::default()).drive, Drive::Rear);
}

#[test]
fn a_trailer_drives_on_no_axle_unless_a_shaft_is_seen() {
    for axles in 1..=3 {
        let trailer = Layout { axles: vec![axle(true, false); axles], spare: false };
        let verdict = drive::verdict(&trailer, Class::Trailer, &[], &Told::default());
        assert_eq!((verdict.drive, verdict.next_look), (Drive::None, None));
        let seen = looks(&[(1, Hub::Shaft)]);
        let clash = drive::verdict(&trailer, Class::Trailer, &seen, &Told::default());
        assert_eq!(clash.drive, Drive::Unknown);
        assert_eq!(clash.contradiction.map(|c| c.one.reason), Some(Reason::TrailerClass));
    }
}

#[test]
fn an_axle_the_vehicle_does_not_have_says_nothing() {
    for number in [0, 3, 255] {
        let verdict = of(&looks(&[(number, Hub::Shaft)]), None, None);
        assert_eq!(verdict.drive, Drive::Unknown);
        assert_eq!(verdict.silent.iter().map(|g| g.reason).collect::<Vec<_>>(), [Reason::NoSuchAxle]);
    }
    let empty = Layout { axles: vec![], spare: false };
    assert_eq!(drive::verdict(&empty, Class::Car, &[], &Told::default()).axles, []);
}

#[test]
fn no_hand_turns_a_wheel_before_the_gate_is_met() {
    for engine in ENGINES {
        for support in [Support::Ground, Support::Jack, Support::OneStand, Support::BothStands, Support::Lift] {
            for others_chocked in [false, true] {
                let unmet = may_turn(&Footing { engine, support, others_chocked }).err().unwrap_or_default();
                assert_eq!(unmet.contains(&Unmet::EngineRunning), engine == Engine::Running);
                assert_eq!(
                    unmet.contains(&Unmet::NotOnLiftOrStands),
                    matches!(support, Support::Ground | Support::Jack | Support::OneStand)
                );
                assert_eq!(unmet.contains(&Unmet::OthersNotChocked), !others_chocked && support != Support::Lift);
            }
        }
    }
}

#[test]
fn the_answer_reads_well_as_data() {
    let verdict = of(&looks(&[(1, Hub::NoShaft), (2, Hub::Shaft)]), None, Some(Drive::Rear));
    let json = serde_json::to_value(&verdict).unwrap();
    assert_eq!(json["drive"], "rear");
    assert_eq!(json["for"][1]["reason"], "no-shaft-seen");
    assert_eq!(json["axles"][0], "not-driven");
    assert!(json["next_look"].is_null() && json["contradiction"].is_null());
}

fn any_evidence() -> impl Strategy<Value = Evidence> {
    use proptest::sample::select;
    let every = every_turn();
    let hub = select(vec![Hub::NotLooked, Hub::Covered, Hub::CaplessUnit, Hub::ShaftEnd, Hub::Shaft, Hub::NoShaft]);
    (1u8..=2, any::<bool>(), hub, select(every), any::<bool>()).prop_map(|(axle, left, hub, turn, turned)| {
        let (motion, differential, free_hubs, motor) = turn;
        let side = if left { Side::Left } else { Side::Right };
        Evidence { axle, side, hub, turned: turned.then_some(motion), differential, free_hubs, motor }
    })
}

fn any_told() -> impl Strategy<Value = Option<Drive>> {
    proptest::sample::select(vec![
        None,
        Some(Drive::Front),
        Some(Drive::Rear),
        Some(Drive::All),
        Some(Drive::PartTime),
        Some(Drive::Unknown),
    ])
}

proptest! {
    #[test]
    fn the_order_of_looking_never_changes_the_answer(
        seen in prop::collection::vec(any_evidence(), 0..6), manual in any_told(), owner in any_told(), turn in 0usize..6
    ) {
        let one = of(&seen, manual, owner);
        let mut turned = seen.clone();
        if !turned.is_empty() {
            let by = turn % turned.len();
            turned.rotate_left(by);
        }
        let other = of(&turned, manual, owner);
        prop_assert_eq!(one.drive, other.drive);
        prop_assert_eq!(one.axles, other.axles);
        prop_assert_eq!(one.contradiction.is_some(), other.contradiction.is_some());
    }

    #[test]
    fn every_answer_stands_on_the_manual_or_on_both_axles(
        seen in prop::collection::vec(any_evidence(), 0..6), manual in any_told(), owner in any_told()
    ) {
        let verdict = of(&seen, manual, owner);
        let told = manual.is_some_and(|drive| drive != Drive::Unknown);
        let settled = verdict.axles.iter().all(|a| !matches!(a, AxleState::Unsettled | AxleState::Contradicted));
        if verdict.drive != Drive::Unknown {
            prop_assert!(told || settled);
            prop_assert!(verdict.contradiction.is_none());
        } else {
            prop_assert!(verdict.next_look.is_some(), "an open question names the look that would settle it");
            prop_assert!(!told || verdict.contradiction.is_some());
        }
        // Nothing that was noted gets lost.
        let kept = verdict.for_.len() + verdict.against.len() + verdict.silent.len();
        prop_assert!(kept >= seen.iter().filter(|e| e.turned.is_some()).count());
    }

    #[test]
    fn silent_evidence_changes_nothing(
        seen in prop::collection::vec(any_evidence(), 0..5), axle in 1u8..=2, manual in any_told()
    ) {
        let mut more = seen.clone();
        more.push(Evidence::look(axle, Side::Left, Hub::CaplessUnit));
        let one = of(&seen, manual, None);
        let other = of(&more, manual, None);
        prop_assert_eq!((one.drive, one.axles), (other.drive, other.axles));
    }
}

#[test]
fn every_reason_look_and_answer_has_a_sentence() {
    use lugbook::drive::{Ground, Says};
    use lugbook::words::{Lang, Say, Speech, Words};
    let car = car();
    for lang in Lang::ALL {
        let words = Words::new(Speech { lang, ..Speech::default() });
        let worded = |text: String| {
            assert!(text.contains(' ') && text.ends_with(['.', '?']), "{text}");
            assert!(!text.contains('{') && text.split(' ').count() <= 25, "{text}");
        };
        for reason in Reason::ALL {
            let told = matches!(reason, Reason::Manual | Reason::Owner).then_some(Drive::Rear);
            worded(
                words
                    .ground(&Ground { axle: Some(1), side: Some(Side::Left), says: Says::Nothing, reason, told }, &car),
            );
        }
        for look in [
            NextLook::BehindHub { axle: 2, side: Side::Right },
            NextLook::TransferControl,
            NextLook::Manual,
            NextLook::VehiclePlate,
        ] {
            worded(words.next_look(&look, &car));
        }
        for state in [
            AxleState::Driven,
            AxleState::ByChoice,
            AxleState::Uncoupled,
            AxleState::NotDriven,
            AxleState::Unsettled,
            AxleState::Contradicted,
        ] {
            assert_ne!(
                words.axle_state(state),
                format!("axle-{}", serde_json::to_value(state).unwrap().as_str().unwrap())
            );
        }
        for unmet in [Unmet::EngineRunning, Unmet::NotOnLiftOrStands, Unmet::OthersNotChocked] {
            worded(unmet.say(&words));
        }
        for drive in [Drive::Front, Drive::Rear, Drive::All, Drive::PartTime, Drive::None] {
            worded(words.verdict(&of(&[], Some(drive), None), &car));
        }
    }
}

#[test]
fn a_verdict_says_what_contradicts_and_where_to_look() {
    use lugbook::words::{Speech, Words};
    let words = Words::new(Speech::default());
    let say = |verdict: &Verdict| words.verdict(verdict, &car());
    assert_eq!(say(&of(&looks(&[(1, Hub::NoShaft), (2, Hub::Shaft)]), None, None)), "The rear drives.");
    assert_eq!(
        say(&of(&looks(&[(1, Hub::Shaft), (2, Hub::Shaft)]), None, None)),
        "All axles can drive, either always or when the driver engages them. \
         Look for a lever, switch or locking hubs that engage the second axle."
    );
    assert_eq!(
        say(&of(&looks(&[(2, Hub::Shaft)]), Some(Drive::Front), None)),
        "What was found can't all be right. The manual says front drive. RL: a shaft runs into the hub. \
         Read the drive on the vehicle's own plate or build sheet: one manual may cover several."
    );
    let tandem = Layout { axles: vec![axle(false, true), axle(true, false), axle(true, false)], spare: false };
    let seen = looks(&[(1, Hub::NoShaft), (2, Hub::Shaft)]);
    let verdict = drive::verdict(&tandem, Class::Truck, &seen, &Told::default());
    assert_eq!(
        words.verdict(&verdict, &tandem),
        "The rear drives. Look behind the hub at 3LO: does a shaft run into it?"
    );
}
