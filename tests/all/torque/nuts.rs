use lugbook::fastener::{
    BadThread, Calibration, Difference, Fastener, Fit, Kind, Scale, Seat, Seating, Series, Thread, TorqueSpec, Wrench,
};
use lugbook::fastening::{
    Bar, BarStanding, BarWarning, Gun, Layer, Mounting, NutOutcome, Overrun, Pass, Stage, advise, choose, judge,
    overrun, passes, target,
};
use lugbook::measure::Torque;
use proptest::prelude::*;

fn torque(text: &str) -> Torque {
    text.parse().unwrap()
}

#[test]
fn a_click_without_movement_is_proof_at_a_recheck_and_none_at_the_first_pass() {
    // Common practice, no source.
    assert_eq!(judge(Pass::FirstFinal, true), NutOutcome::Proven);
    assert_eq!(judge(Pass::FirstFinal, false), NutOutcome::BackOffQuarterAndAgain);
    assert_eq!(judge(Pass::Recheck, false), NutOutcome::Held);
    assert_eq!(judge(Pass::Recheck, true), NutOutcome::MovedRecordAndRepeat);
    assert!(NutOutcome::Proven.is_done() && NutOutcome::Held.is_done());
    assert!(!NutOutcome::BackOffQuarterAndAgain.is_done() && !NutOutcome::MovedRecordAndRepeat.is_done());
}

#[test]
fn a_bar_over_eighty_five_percent_warns_and_a_lower_one_does_not() {
    // Common practice, no source.
    let target = torque("100 ft.lb");
    let at = |text: &str| advise(&target, &Bar::new(torque(text)), None, None);
    assert_eq!(at("85 ft.lb").standing, BarStanding::Under);
    assert!(!at("85 ft.lb").warnings.contains(&BarWarning::MayClickWithoutMoving));
    for (rating, standing) in
        [("86 ft.lb", BarStanding::Near), ("100 ft.lb", BarStanding::AtOrOver), ("140 N.m", BarStanding::AtOrOver)]
    {
        let advice = at(rating);
        assert_eq!(advice.standing, standing, "{rating}");
        assert!(advice.warnings.contains(&BarWarning::MayClickWithoutMoving), "{rating}");
    }
    assert_eq!(at("65 ft.lb").advised.to_string(), "85 ft.lb");
}

#[test]
fn the_guns_power_and_the_hex_are_asked() {
    let target = torque("135 N.m");
    let mut bar = Bar::new(torque("100 N.m"));
    let unknown = advise(&target, &bar, None, None).warnings;
    assert_eq!(unknown, [BarWarning::GunNotKnown, BarWarning::HexNotKnown]);
    bar.for_guns_up_to = Some(torque("600 N.m"));
    bar.hex = Some("19 mm".parse().unwrap());
    let gun = Gun { greatest: Some(torque("900 N.m")), power: None };
    let warnings = advise(&target, &bar, Some(&gun), Some("21 mm".parse().unwrap())).warnings;
    assert!(matches!(warnings[..], [BarWarning::GunTooStrong { .. }, BarWarning::HexDiffers { .. }]));
    let gun = Gun { greatest: Some(torque("500 N.m")), power: None };
    assert!(
        advise(&target, &bar, Some(&gun), Some("3/4 in".replace("3/4", "0.75").parse().unwrap())).warnings.is_empty()
    );
}

#[test]
fn the_bar_chosen_is_the_strongest_clearly_under_the_target() {
    let bars: Vec<Bar> = ["65 ft.lb", "80 ft.lb", "100 ft.lb"].iter().map(|text| Bar::new(torque(text))).collect();
    assert_eq!(choose(&torque("135 N.m"), &bars).map(|bar| bar.rating.value()), Some(80.0));
    assert_eq!(choose(&torque("70 ft.lb"), &bars), None);
}

#[test]
fn tighter_than_the_range_is_loosened_and_looked_at() {
    let wrench = Wrench::new(4.0, torque("1 N.m"));
    let range = target(&TorqueSpec::printed(["125..150 N.m".parse().unwrap()]), &wrench).unwrap();
    let single = target(&TorqueSpec::printed(["100 N.m".parse().unwrap()]), &wrench).unwrap();
    for (plan, found, wanted) in [
        (&range, "150 N.m", Overrun::Within),
        (&range, "151 N.m", Overrun::LoosenLookAgain),
        (&range, "112 ft.lb", Overrun::LoosenLookAgain),
        (&single, "104 N.m", Overrun::Within),
        (&single, "104.1 N.m", Overrun::LoosenLookAgain),
    ] {
        assert_eq!(overrun(plan, &wrench, &torque(found), true), wanted, "{found}");
    }
    assert_eq!(overrun(&range, &wrench, &torque("100 N.m"), false), Overrun::ReplaceStud);
}

#[test]
fn rounds_go_from_hand_to_final_and_the_final_is_on_the_ground() {
    let wrench = Wrench::new(4.0, torque("5 N.m"));
    let plan = target(&TorqueSpec::printed(["125..150 N.m".parse().unwrap()]), &wrench).unwrap();
    let first = passes(&plan, &wrench, Mounting::OneSet, Pass::FirstFinal);
    assert_eq!(first.iter().map(|r| r.stage).collect::<Vec<_>>(), [Stage::HandStart, Stage::Snug, Stage::Final]);
    assert_eq!(first[1].setting, Some(torque("65 N.m")), "half of 135, down to the step");
    assert_eq!(first[2].setting, Some(plan.setting));
    for mounting in [Mounting::OneSet, Mounting::StudPilotedDual] {
        for pass in [Pass::FirstFinal, Pass::Recheck] {
            for round in passes(&plan, &wrench, mounting, pass) {
                assert_eq!(round.on_ground, matches!(round.stage, Stage::Final | Stage::Recheck | Stage::Loosen));
            }
        }
    }
    let mut high = wrench.clone();
    high.range = Some(Scale { low: torque("100 N.m"), high: torque("300 N.m") });
    assert_eq!(passes(&plan, &high, Mounting::OneSet, Pass::FirstFinal)[1].setting, None, "under the scale: by hand");
}

#[test]
fn stud_piloted_duals_are_set_inner_first_with_the_outer_loosened() {
    let wrench = Wrench::new(4.0, torque("10 N.m"));
    let plan = target(&TorqueSpec::printed(["610..678 N.m".parse().unwrap()]), &wrench).unwrap();
    let tail = |pass| {
        let rounds = passes(&plan, &wrench, Mounting::StudPilotedDual, pass);
        rounds[rounds.len() - 3..].iter().map(|r| (r.stage, r.layer)).collect::<Vec<_>>()
    };
    assert_eq!(
        tail(Pass::FirstFinal),
        [(Stage::Loosen, Layer::Outer), (Stage::Final, Layer::Inner), (Stage::Final, Layer::Outer)]
    );
    assert_eq!(
        tail(Pass::Recheck),
        [(Stage::Loosen, Layer::Outer), (Stage::Recheck, Layer::Inner), (Stage::Final, Layer::Outer)]
    );
}

#[test]
fn seats_of_different_shape_angle_or_radius_do_not_fit() {
    let cone = |degrees| Seating { cone_degrees: Some(degrees), ..Seating::of(Seat::Cone) };
    let ball = |mm: &str| Seating { ball_radius: Some(mm.parse().unwrap()), ..Seating::of(Seat::Ball) };
    assert_eq!(cone(60).fit(cone(60)), Fit::Fits);
    assert_eq!(cone(60).fit(cone(90)), Fit::Mismatch(Difference::ConeAngle));
    assert_eq!(cone(60).fit(Seating::of(Seat::Cone)), Fit::NotKnown);
    assert_eq!(ball("13 mm").fit(ball("13 mm")), Fit::Fits);
    assert_eq!(ball("13 mm").fit(ball("14 mm")), Fit::Mismatch(Difference::BallRadius));
    let flat = [Seat::Flange, Seat::Washer];
    for one in Seat::ALL {
        for other in Seat::ALL {
            let fit = Seating::of(one).fit(Seating::of(other));
            let alike = one == other || (flat.contains(&one) && flat.contains(&other));
            assert_eq!(matches!(fit, Fit::Mismatch(_)), !alike, "{one:?} in {other:?}");
        }
    }
    assert_eq!(Fastener::new(Kind::Nut).fit(Some(cone(60))), Fit::NotKnown);
}

#[test]
fn calibration_older_than_a_year_is_overdue() {
    let mut wrench = Wrench::new(4.0, torque("1 N.m"));
    let today = "2026-11-24".parse().unwrap();
    for (last, state) in [
        (None, Calibration::NotKnown),
        (Some("2025-11-25"), Calibration::Current),
        (Some("2025-11-24"), Calibration::Overdue),
        (Some("2026-12-01"), Calibration::InTheFuture),
    ] {
        wrench.last_calibration = last.map(|day| day.parse().unwrap());
        assert_eq!(wrench.calibration_on(today), state, "{last:?}");
    }
}

#[test]
fn threads_that_are_none_are_refused() {
    for (text, why) in [
        ("", BadThread::Form),
        ("M", BadThread::Form),
        ("M12 x", BadThread::Form),
        ("M12 x 1.555", BadThread::Form),
        ("M99 x 1.5", BadThread::Diameter),
        ("M999999 x 1.5", BadThread::Form),
        ("M12 x 99", BadThread::Pitch),
        ("1/3-20", BadThread::Diameter),
        ("3/2-20", BadThread::Diameter),
        ("0/2-20", BadThread::Diameter),
        ("1/2-200", BadThread::Pitch),
        ("1/2-20 XYZ", BadThread::Series),
        ("1/2-20-20", BadThread::Form),
        ("1/2 1/2", BadThread::Form),
    ] {
        assert_eq!(text.parse::<Thread>(), Err(why), "{text:?}");
    }
}

proptest! {
    #[test]
    fn threads_print_and_read_back(metric in any::<bool>(), size in 4u8..37, pitch in proptest::option::of(6u16..401), series in 0usize..5) {
        let series = [None, Some(Series::Unf), Some(Series::Unc), Some(Series::Un), Some(Series::Unef)][series];
        let thread = match metric {
            true => Thread::metric(size, pitch),
            false => Thread::inch(size, pitch.and_then(|p| u8::try_from(p).ok()), series),
        };
        if let Ok(thread) = thread {
            prop_assert_eq!(thread.to_string().parse::<Thread>(), Ok(thread));
            let stored = serde_json::to_string(&thread).unwrap();
            prop_assert_eq!(serde_json::from_str::<Thread>(&stored).unwrap(), thread);
        }
    }

    #[test]
    fn any_text_is_a_thread_or_is_refused(text in ".{0,48}") {
        if let Ok(thread) = text.parse::<Thread>() {
            prop_assert_eq!(thread.to_string().parse::<Thread>(), Ok(thread));
        }
    }
}
