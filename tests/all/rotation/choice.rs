//! The choice: what wins when, and what is told about it.

use lugbook::measure::{Depth, DepthUnit, Distance, DistanceUnit};
use lugbook::rotation::constraint::{Constraint, DUAL_MATCH, DualMatch};
use lugbook::rotation::{AxleFacts, Force, Limit, Name, Note, Pattern, Reason, Request, RequestFile, TireFacts, plan};
use lugbook::source::{Grade, Source};
use lugbook::vehicle::{Axle, Class, Drive, Layout};

use super::{car, mm, rate, tire};

fn worn(drive: Drive, depths: [f64; 4], rates: [f64; 4], visits: u8) -> Request {
    let mut request = car(drive, false);
    request.horizon = visits;
    request.interval = Some(Distance::new(10_000.0, DistanceUnit::Kilometre).unwrap());
    for (i, at) in ["FL", "FR", "RL", "RR"].into_iter().enumerate() {
        tire(&mut request, at).depths = mm(depths[i]);
        tire(&mut request, at).rate = rate(rates[i]);
        tire(&mut request, at).directional = Some(false);
        tire(&mut request, at).size = Some("225/45R17".to_owned());
    }
    request
}

#[test]
fn within_the_uncertainty_the_makers_pattern_wins_over_the_trades() {
    let mut request = worn(Drive::Front, [6.0, 6.0, 7.0, 7.0], [0.12, 0.12, 0.06, 0.06], 2);
    assert_eq!(plan(&request).unwrap().plans[0].pattern, Pattern::ForwardCross);
    request.makers_pattern = Some(Pattern::X);
    let answer = plan(&request).unwrap();
    assert_eq!(answer.plans[0].pattern, Pattern::X);
    assert!(answer.plans[0].why.contains(&Reason::MakersPattern));
}

#[test]
fn a_clearly_better_plan_beats_the_pattern() {
    // The pattern would put the shallowest tire where tread goes fastest.
    let mut request = worn(Drive::Front, [8.0, 8.0, 5.5, 8.0], [0.05, 0.3, 0.05, 0.05], 1);
    request.uncertainty.depth_mm = 0.1;
    let answer = plan(&request).unwrap();
    assert_ne!(answer.plans[0].pattern, Pattern::ForwardCross);
    // A forward cross would end at 7.5 and 2.5 mm.
    assert!(answer.plans[0].spread_mm.unwrap() < 4.0);
}

#[test]
fn nobody_below_the_limit_comes_before_everything_else() {
    // The front left would be at 1.4 mm by the next visit where it is; at the rear it lasts.
    let request = worn(Drive::Rear, [2.6, 3.4, 3.0, 3.0], [0.12, 0.12, 0.02, 0.02], 1);
    let answer = plan(&request).unwrap();
    assert!(answer.plans[0].forecast.iter().all(|forecast| !forecast.below));
    assert!(answer.plans[0].why.iter().any(|reason| matches!(reason, Reason::KeepsAboveLimit { .. })));
    assert!(answer.plans.last().unwrap().forecast.iter().any(|forecast| forecast.below));
}

#[test]
fn after_a_part_replacement_the_deepest_pair_goes_to_the_rear() {
    let mut request = worn(Drive::Front, [8.0, 8.0, 4.0, 4.0], [0.1, 0.1, 0.1, 0.1], 1);
    request.after_part_replacement = true;
    let answer = plan(&request).unwrap();
    let rear: Vec<String> = answer.plans[0]
        .moves
        .iter()
        .filter(|(from, _)| from.position().unwrap().axle == 1)
        .map(|(_, to)| to.to_string())
        .collect();
    assert_eq!(rear.len(), 2);
    assert!(rear.iter().all(|to| to.starts_with('R')));
    assert!(answer.plans[0].why.contains(&Reason::DeepestAtRear));
    for at in ["FL", "FR"] {
        tire(&mut request, at).depths = mm(4.0);
    }
    for at in ["RL", "RR"] {
        tire(&mut request, at).depths = mm(8.0);
    }
    let answer = plan(&request).unwrap();
    assert!(
        answer.plans[0].moves.iter().all(|(from, to)| from.position().unwrap().axle == to.position().unwrap().axle)
    );
}

#[test]
fn studs_warn_and_never_refuse() {
    let mut request = worn(Drive::Front, [8.0; 4], [0.1; 4], 1);
    for tire in &mut request.tires {
        tire.studded = true;
    }
    let answer = plan(&request).unwrap();
    assert!(answer.refused.is_empty());
    assert_eq!(answer.plans[0].pattern, Pattern::FrontToRear);
    request.makers_pattern = Some(Pattern::X);
    let answer = plan(&request).unwrap();
    // The manual stands above common practice, and the warning stands beside it.
    assert_eq!(answer.plans[0].pattern, Pattern::X);
    let warned = |reason: &Reason| matches!(reason, Reason::Advice { because } if because.constraint == Name::Studs);
    assert!(answer.plans[0].why.iter().any(warned));
}

fn truck(class: Class) -> Request {
    let axle = |dual, steer| Axle { dual, steer, rating: None };
    let layout = Layout { axles: vec![axle(false, true), axle(true, false)], spare: false };
    let tires = layout.places().map(TireFacts::at).collect();
    Request::new(layout, class, Drive::Rear, tires)
}

#[test]
fn a_retread_goes_to_the_front_of_a_truck_with_no_word_and_of_a_bus_never() {
    for (class, refused) in [(Class::Truck, false), (Class::Bus, true)] {
        let mut request = truck(class);
        for tire in &mut request.tires {
            tire.depths = mm(10.0);
            tire.rate = rate(0.1);
            tire.retread = tire.at.position().unwrap().axle == 2;
        }
        request.interval = Some(Distance::new(10_000.0, DistanceUnit::Kilometre).unwrap());
        let answer = plan(&request).unwrap();
        let to_front = answer.plans.iter().any(|plan| {
            plan.moves.iter().any(|(from, to)| from.position().unwrap().axle == 2 && to.position().unwrap().axle == 1)
        });
        assert!(!(refused && to_front));
        // The bus standing on retreads in front is told, whatever moves.
        request.tires[0].retread = true;
        let answer = plan(&request).unwrap();
        let told = answer
            .notes
            .iter()
            .any(|note| matches!(note, Note::Standing { because } if because.constraint == Name::SteerAxle));
        assert_eq!(told, refused);
    }
}

#[test]
fn a_steer_limit_of_a_weak_source_warns_and_of_a_read_one_refuses() {
    for (grade, refuses) in [(Grade::Secondary, false), (Grade::Rule, true)] {
        let mut request = truck(Class::Truck);
        let depth = Depth::new(4.0, DepthUnit::ThirtySecond).unwrap();
        let limit = Some(Limit { depth, source: Source::read(grade, "test") });
        request.axles.insert(1, AxleFacts { limit, ..AxleFacts::default() });
        for tire in &mut request.tires {
            tire.depths = mm(if tire.at.position().unwrap().axle == 2 { 3.0 } else { 9.0 });
            tire.rate = rate(0.05);
        }
        request.interval = Some(Distance::new(1_000.0, DistanceUnit::Kilometre).unwrap());
        request.horizon = 2;
        let answer = plan(&request).unwrap();
        let word =
            lugbook::rotation::constraint::Move { request: &request, tire: &request.tires[2], to: request.tires[0].at };
        let steer = word.words().into_iter().find(|because| because.constraint == Name::SteerAxle).unwrap();
        assert_eq!(steer.force.refuses(), refuses);
        assert!(answer.proved);
    }
    // Never on a car.
    let mut request = worn(Drive::Front, [8.0, 8.0, 3.0, 3.0], [0.01; 4], 1);
    let limit =
        Limit::wear_bars().map(|limit| Limit { depth: Depth::new(4.0, DepthUnit::ThirtySecond).unwrap(), ..limit });
    request.axles.insert(1, AxleFacts { limit, ..AxleFacts::default() });
    let to_front =
        lugbook::rotation::constraint::Move { request: &request, tire: &request.tires[2], to: request.tires[0].at };
    assert!(to_front.words().is_empty());
}

/// Every row of dual_match.csv (TM 9-2610-200-14, table 2-1).
#[test]
fn duals_match_as_the_table_says() {
    let fraction = |text: &str| -> f64 {
        text.split_whitespace()
            .map(|part| match part.split_once('/') {
                Some((a, b)) => a.parse::<f64>().unwrap() / b.parse::<f64>().unwrap(),
                None => part.parse().unwrap(),
            })
            .sum()
    };
    let rows = crate::standards::table("dual_match.csv");
    assert_eq!(rows.len(), DUAL_MATCH.len());
    for (row, ours) in rows.iter().zip(DUAL_MATCH) {
        let outside = row.text("outside_diameter");
        let bounds: Vec<f64> = outside.split(' ').filter_map(|word| word.parse().ok()).collect();
        let (open_above, bound) = (outside.starts_with("over"), *bounds.last().unwrap());
        assert_eq!(ours.below_in, if open_above { f64::INFINITY } else { bound }, "{outside}");
        assert_eq!(ours.difference_in, fraction(row.text("max_diameter_difference_in")), "{outside}");
        assert_eq!(ours.circumference_in, fraction(row.text("max_circumference_difference_in")), "{outside}");
        // A pair just inside the difference passes; just beyond, it is refused.
        let diameter = if open_above { bound + 1.0 } else { bound - 1.0 } * 25.4;
        let pair = |difference_mm: f64| {
            let place = |text: &str| lugbook::vehicle::Place::parse(text).unwrap();
            let (mut outer, mut inner) = (TireFacts::at(place("2LO")), TireFacts::at(place("2LI")));
            outer.overall_diameter_mm = Some(diameter);
            inner.overall_diameter_mm = Some(diameter);
            outer.depths = mm(12.0 + difference_mm / 2.0);
            inner.depths = mm(12.0);
            DualMatch.of_pair(&outer, &inner).is_some_and(|word| word.force.refuses())
        };
        let allowed = fraction(row.text("max_diameter_difference_in")) * 25.4;
        assert!(!pair(allowed - 0.01) && pair(allowed + 0.01), "{outside}");
    }
}

#[test]
fn the_same_question_has_the_same_answer() {
    let request = worn(Drive::Rear, [6.0; 4], [0.1; 4], 4);
    let first = plan(&request).unwrap();
    assert_eq!(first.plans[0].pattern, Pattern::RearwardCross);
    for _ in 0..20 {
        assert_eq!(plan(&request).unwrap(), first);
    }
    let mut shuffled = request.clone();
    shuffled.tires.reverse();
    assert_eq!(plan(&shuffled).unwrap(), first);
}

/// A load printed on the sidewall is the tire maker's word and refuses; the same load by its
/// index rests on secondary tables (load_index.csv, grades S2 and S) and warns.
#[test]
fn too_little_load_refuses_as_printed_and_warns_by_its_index() {
    let words = |printed: &str| {
        let tire = |at: &str, service: &str, more: &str| {
            format!(
                "[[tires]]\nat = \"{at}\"\nsize = \"205/55R16\"\nservice = \"{service}\"\ndirectional = false\n{more}\n"
            )
        };
        // 84 is 500 kg, 91 is 615 kg; the front axle needs 550 kg of each tire.
        let text = ["class = \"car\"\ndrive = \"front\"\n[[axles]]\naxle = 1\nrating_kg = 1100\n".to_owned()]
            .into_iter()
            .chain([tire("FL", "91H", ""), tire("FR", "91H", ""), tire("RL", "84H", printed), tire("RR", "91H", "")])
            .collect::<String>();
        let answer = plan(&RequestFile::read(&text).unwrap().request().unwrap()).unwrap();
        let refused = answer.refused.iter().flat_map(|refused| &refused.because);
        let of_load = refused.filter(|because| because.constraint == Name::Load);
        let mut forces: Vec<Force> = of_load.map(|because| because.force).collect();
        forces.sort();
        forces.dedup();
        (answer.plans[0].pattern, forces)
    };
    let (pattern, forces) = words("load_kg = 500");
    assert_eq!(forces, [Force::Physical]);
    assert!(pattern == Pattern::Other || pattern == Pattern::SideToSide, "{pattern:?}");
    let (_, forces) = words("");
    assert!(!forces.contains(&Force::Physical), "{forces:?}");
}
