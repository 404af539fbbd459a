//! What people read of a rotation.

use lugbook::calendar::Age;
use lugbook::measure::{Distance, DistanceUnit, Load, LoadUnit};
use lugbook::rotation::{
    Contradiction, Figure, FileMistake, LookNext, Mistake, Pattern, Request, RequestFile, TireFacts, plan,
};
use lugbook::vehicle::{Axle, Class, Drive, Layout, Letters, Place};
use lugbook::words::{Say, Speech, Units, Words};

use super::{car, mm, rate, tire};

fn told(request: &Request, words: &Words) -> String {
    let answer = plan(request).unwrap();
    let view = words.rotation(&answer, &request.layout);
    let mut lines = Vec::new();
    for plan in &view.plans {
        lines.push(format!("{}: {}", plan.pattern, plan.shout));
        lines.extend(plan.why.iter().map(|why| format!("  {why}")));
        lines.extend(plan.forecast.iter().map(|f| {
            format!(
                "  {} to {}: {:.1}, then {:.1} ({:.1} to {:.1}) mm",
                f.tire, f.to, f.next_visit_mm.mid, f.horizon_mm.mid, f.horizon_mm.low, f.horizon_mm.high
            )
        }));
    }
    lines.extend(answer.refused.iter().map(|refused| words.refused(refused, &request.layout)));
    lines.extend(view.notes);
    lines.extend(view.look_next);
    lines.join("\n")
}

fn worn(drive: Drive) -> Request {
    let mut request = car(drive, false);
    request.horizon = 3;
    request.interval = Some(Distance::new(10_000.0, DistanceUnit::Kilometre).unwrap());
    for (at, depth, wear) in [("FL", 5.0, 0.12), ("FR", 5.2, 0.11), ("RL", 6.8, 0.06), ("RR", 6.9, 0.06)] {
        tire(&mut request, at).depths = mm(depth);
        tire(&mut request, at).rate = rate(wear);
        tire(&mut request, at).size = Some("225/45R17".to_owned());
        tire(&mut request, at).directional = Some(false);
    }
    request
}

#[test]
fn a_worn_front_drive_car_is_told() {
    insta::assert_snapshot!(told(&worn(Drive::Front), &Words::new(Speech::default())));
}

#[test]
fn an_all_wheel_drive_set_apart_is_told_in_us_units() {
    let speech = Speech { units: Units::Us, letters: Letters::SideFirst, ..Speech::default() };
    insta::assert_snapshot!(told(&worn(Drive::All), &Words::new(speech)));
}

#[test]
fn unequal_and_directional_is_told_plainly() {
    let mut request = worn(Drive::Rear);
    for tire in &mut request.tires {
        tire.directional = Some(true);
        if tire.at.position().unwrap().axle == 2 {
            tire.size = Some("255/40R17".to_owned());
        }
    }
    insta::assert_snapshot!(told(&request, &Words::new(Speech::default())));
}

#[test]
fn an_unknown_drive_is_told() {
    insta::assert_snapshot!(told(&car(Drive::Unknown, false), &Words::new(Speech::default())));
}

/// A truck and a light truck that everything speaks against.
#[test]
fn what_speaks_against_is_told() {
    let axle = |dual, steer| Axle { dual, steer, rating: Load::new(9_000.0, LoadUnit::Kilogram).ok() };
    let layout = Layout { axles: vec![axle(false, true), axle(true, false)], spare: true };
    let tires = layout.places().map(TireFacts::at).collect();
    let mut request = Request::new(layout, Class::Bus, Drive::Rear, tires);
    request.needed_speed_kmh = Some(120.0);
    for (i, tire) in request.tires.iter_mut().enumerate() {
        tire.depths = mm(if i % 2 == 0 { 14.0 } else { 5.0 });
        tire.overall_diameter_mm = Some(1014.0);
        tire.load_kg = Some(3_000.0);
        tire.max_kmh = Some(110.0);
        tire.winter = i == 1;
        tire.retread = i == 2;
        tire.regrooved = i == 3;
        tire.studded = true;
        tire.age = Some(Age { years: 12, months: 2 });
        tire.wheel.offset_mm = Some(if i == 0 { 120.0 } else { -12.5 });
        tire.wheel.seat_fits = Some(i != 4);
        tire.wheel.brake_class = Some(1);
    }
    request.axles.entry(1).or_default().brake_class = Some(2);
    let words = Words::new(Speech::default());
    let mut sentences = Vec::new();
    for tire in &request.tires {
        for to in request.layout.places() {
            let to = lugbook::rotation::constraint::Move { request: &request, tire, to };
            sentences.extend(to.words().iter().map(|because| {
                let (why, lift) = (words.why(because, &request.layout), because.lifted_by.say(&words));
                // One of each kind is enough to read.
                let kind = format!("{:?}", because.reason).split([' ', '(']).next().unwrap_or("").to_owned();
                (
                    because.constraint.code(),
                    kind,
                    format!("{} ({}) {why} {lift}", because.constraint.code(), because.force.code()),
                )
            }));
        }
    }
    sentences.sort();
    sentences.dedup_by(|a, b| a.0 == b.0 && a.1 == b.1);
    let lines: Vec<String> = sentences.into_iter().map(|(_, _, line)| line).collect();
    insta::assert_snapshot!(lines.join("\n"));
}

#[test]
fn mistakes_are_one_sentence_each() {
    let at = Place::parse("FL").unwrap();
    let contradictions = [
        Contradiction::SideWithoutArrow,
        Contradiction::TemporaryButWorked,
        Contradiction::DualAboveSingle,
        Contradiction::SpareWears,
    ];
    let figures = [
        Figure::Interval,
        Figure::NextVisit,
        Figure::Rate,
        Figure::Diameter,
        Figure::Load,
        Figure::Speed,
        Figure::Offset,
        Figure::Pressure,
        Figure::Margin,
    ];
    let mut mistakes = vec![
        Mistake::NoWheels,
        Mistake::TooManyAxles { axles: 10, most: 6 },
        Mistake::Horizon { visits: 0, most: 8 },
        Mistake::TwoAt { at },
        Mistake::NoSuchPlace { at },
        Mistake::NothingAt { at },
        Mistake::Grooves { at, grooves: 9, most: 6 },
        Mistake::PatternDoesNotFit { pattern: "x-five" },
        Mistake::Figure { at: None, what: Figure::Margin },
    ];
    mistakes.extend(contradictions.map(|what| Mistake::Contradiction { at, what }));
    mistakes.extend(figures.map(|what| Mistake::Figure { at: Some(at), what }));
    let words = Words::new(Speech::default());
    let mut lines: Vec<String> = mistakes.iter().map(|mistake| mistake.say(&words)).collect();
    for text in [
        "class = \"boat\"",
        "class = \"car\"\n[[tires]]\nat = \"XX\"",
        "class = \"car\"\n[[tires]]\nat = \"FL\"\ndepth_mm = 99",
    ] {
        let mistake = RequestFile::read(text).and_then(|file| file.request()).unwrap_err();
        assert!(matches!(
            mistake,
            FileMistake::NotARequest { .. } | FileMistake::NoSuchPlace { .. } | FileMistake::Unreadable { .. }
        ));
        lines.push(mistake.say(&words));
    }
    insta::assert_snapshot!(lines.join("\n"));
}

#[test]
fn every_pattern_and_look_has_words() {
    let words = Words::new(Speech::default());
    for pattern in Pattern::NAMED.into_iter().chain([Pattern::LeaveAsIs]) {
        assert!(words.has(&format!("shout-{}", pattern.code())), "{pattern:?}");
        assert!(!words.pattern(pattern.code()).contains("pattern-"), "{pattern:?}");
    }
    for look in [
        LookNext::WhichAxleDrives,
        LookNext::Depths,
        LookNext::WearRates,
        LookNext::Interval,
        LookNext::Sizes,
        LookNext::Arrows,
    ] {
        assert!(look.say(&words).ends_with('.'), "{look:?}");
    }
}

#[test]
fn moves_without_a_name_are_told_as_swaps_and_circles() {
    let mut request = worn(Drive::Front);
    request.uncertainty.depth_mm = 0.0;
    for (at, depth) in [("FL", 4.0), ("FR", 7.0), ("RL", 7.0), ("RR", 6.9)] {
        tire(&mut request, at).depths = mm(depth);
    }
    request.horizon = 1;
    let answer = plan(&request).unwrap();
    let words = Words::new(Speech::default());
    let shout = words.shout(&answer.plans[0], &request.layout);
    assert_eq!((answer.plans[0].pattern, shout.as_str()), (Pattern::Other, "Swap FL and RL."));
}
