//! Requests that can't be planned are told in one typed mistake, and never panic.

use lugbook::rotation::{
    Contradiction, Figure, FileMistake, MOST_AXLES, Mistake, Pattern, Rate, RequestFile, TireFacts, plan,
};
use lugbook::vehicle::{Axle, Drive, Layout, Place, Side};
use proptest::prelude::*;

use super::{car, mm, tire};

#[test]
fn no_wheels_too_many_and_two_at_one_place_are_mistakes() {
    let mut none = car(Drive::Front, false);
    none.tires.clear();
    assert_eq!(plan(&none), Err(Mistake::NoWheels));
    let mut many = car(Drive::Front, false);
    let axle = Axle { dual: true, steer: false, rating: None };
    many.layout = Layout { axles: vec![axle; 10], spare: false };
    many.tires = many.layout.places().map(TireFacts::at).collect();
    assert_eq!(many.tires.len(), 40);
    assert_eq!(plan(&many), Err(Mistake::TooManyAxles { axles: 10, most: MOST_AXLES }));
    let mut two = car(Drive::Front, false);
    two.tires[1].at = two.tires[0].at;
    assert_eq!(plan(&two), Err(Mistake::TwoAt { at: two.tires[0].at }));
    let mut missing = car(Drive::Front, false);
    missing.tires.pop();
    assert!(matches!(plan(&missing), Err(Mistake::NothingAt { .. })));
    let mut stranger = car(Drive::Front, false);
    stranger.tires[0].at = Place::Spare;
    assert_eq!(plan(&stranger), Err(Mistake::NoSuchPlace { at: Place::Spare }));
}

#[test]
fn figures_that_are_no_numbers_and_contradictions_are_mistakes() {
    let wrong = |change: &dyn Fn(&mut lugbook::rotation::Request)| {
        let mut request = car(Drive::Front, true);
        change(&mut request);
        plan(&request).unwrap_err()
    };
    let at = Place::parse("FL").unwrap();
    let figure = |what| Mistake::Figure { at: Some(at), what };
    let nan = Some(Rate { mm_per_1000_km: f64::NAN, half_width: 0.0 });
    assert_eq!(wrong(&|r| tire(r, "FL").rate = nan), figure(Figure::Rate));
    assert_eq!(wrong(&|r| tire(r, "FL").load_kg = Some(f64::INFINITY)), figure(Figure::Load));
    assert_eq!(wrong(&|r| tire(r, "FL").max_kmh = Some(-5.0)), figure(Figure::Speed));
    assert_eq!(wrong(&|r| r.uncertainty.depth_mm = f64::NAN), Mistake::Figure { at: None, what: Figure::Margin });
    assert_eq!(wrong(&|r| r.horizon = 0), Mistake::Horizon { visits: 0, most: 8 });
    assert_eq!(wrong(&|r| r.horizon = 200), Mistake::Horizon { visits: 200, most: 8 });
    let against = |at: &str, what| Mistake::Contradiction { at: Place::parse(at).unwrap(), what };
    assert_eq!(wrong(&|r| tire(r, "FL").made_for = Some(Side::Left)), against("FL", Contradiction::SideWithoutArrow));
    assert_eq!(
        wrong(&|r| {
            tire(r, "SP").temporary = true;
            tire(r, "SP").studded = true;
        }),
        against("SP", Contradiction::TemporaryButWorked)
    );
    assert_eq!(
        wrong(&|r| tire(r, "SP").rate = Some(Rate { mm_per_1000_km: 0.1, half_width: 0.0 })),
        against("SP", Contradiction::SpareWears)
    );
    let mut five = car(Drive::Front, false);
    five.makers_pattern = Some(Pattern::XFive);
    assert_eq!(plan(&five), Err(Mistake::PatternDoesNotFit { pattern: "x-five" }));
}

#[test]
fn files_that_are_no_requests_are_told() {
    let wrong = |text: &str| match RequestFile::read(text) {
        Err(mistake) => mistake,
        Ok(file) => match file.request() {
            Err(mistake) => mistake,
            Ok(request) => FileMistake::Unplannable(plan(&request).unwrap_err()),
        },
    };
    let car = "class = \"car\"\ndrive = \"front\"\n";
    assert_eq!(wrong(car), FileMistake::Unplannable(Mistake::NoWheels));
    assert!(matches!(wrong("class = \"car\"\ncolour = 3"), FileMistake::NotARequest { line: 2, .. }));
    assert!(matches!(wrong("class = \"boat\""), FileMistake::NotARequest { line: 1, .. }));
    assert!(matches!(wrong("{"), FileMistake::NotARequest { .. }));
    assert_eq!(wrong(&format!("{car}[[tires]]\nat = \"XX\"")), FileMistake::NoSuchPlace { text: "XX".to_owned() });
    assert!(matches!(
        wrong(&format!("{car}[[tires]]\nat = \"FL\"\ndepth_mm = [nan]")),
        FileMistake::Unreadable { field: "depth_mm", .. }
    ));
    assert!(matches!(wrong(&format!("{car}[[tires]]\nat = \"FL\"\nsize = \"banana\"")), FileMistake::NotASize { .. }));
    let twice = format!("{car}[[tires]]\nat = \"FL\"\n[[tires]]\nat = \"LF\"\n");
    assert!(matches!(wrong(&twice), FileMistake::Unplannable(Mistake::TwoAt { .. })));
    let forty: String = (1..=10)
        .flat_map(|axle| ["LO", "LI", "RI", "RO"].map(|row| format!("[[tires]]\nat = \"{axle}{row}\"\n")))
        .collect();
    assert!(matches!(wrong(&format!("{car}{forty}")), FileMistake::Unplannable(Mistake::TooManyAxles { .. })));
}

#[test]
fn drive_unknown_names_no_pattern() {
    let mut request = car(Drive::Unknown, false);
    request.makers_pattern = Some(Pattern::X);
    let answer = plan(&request).unwrap();
    assert_eq!(answer.look_next[0], lugbook::rotation::LookNext::WhichAxleDrives);
    assert!(answer.plans.len() == 1 && answer.plans[0].pattern == Pattern::LeaveAsIs && answer.refused.is_empty());
}

proptest! {
    /// Whatever figures a request holds, it is planned or told; never a panic, and
    /// every plan is a permutation whose visits add up to its forecast.
    #[test]
    fn any_request_is_planned_or_told(
        depths in prop::collection::vec(prop_oneof![Just(0.0), 0.0..50.0f64], 5),
        rates in prop::collection::vec(prop_oneof![Just(f64::NAN), Just(0.0), 0.0..25.0f64, Just(0.1)], 5),
        horizon in 0u8..10,
        interval in prop_oneof![Just(0.0), 0.0..5_000_000.0f64],
        band in prop_oneof![Just(0.0), -1.0..60.0f64],
        arrows in any::<[bool; 5]>(),
        remount in any::<bool>(),
        replaced in any::<bool>(),
    ) {
        let mut request = car(Drive::All, true);
        request.horizon = horizon;
        request.interval = lugbook::measure::Distance::new(interval, lugbook::measure::DistanceUnit::Kilometre).ok();
        request.uncertainty.depth_mm = band;
        request.remount_allowed = remount;
        request.after_part_replacement = replaced;
        for (i, tire) in request.tires.iter_mut().enumerate() {
            tire.depths = mm(depths[i]);
            tire.directional = Some(arrows[i]);
            if tire.at != Place::Spare {
                tire.rate = Some(Rate { mm_per_1000_km: rates[i], half_width: rates[i] / 10.0 });
            }
        }
        if let Ok(answer) = plan(&request) {
            prop_assert_eq!(answer.plans.last().map(|plan| plan.pattern), Some(Pattern::LeaveAsIs));
            for plan in &answer.plans {
                let mut from: Vec<Place> = plan.moves.iter().map(|(from, _)| *from).collect();
                let mut to: Vec<Place> = plan.moves.iter().map(|(_, to)| *to).collect();
                from.sort();
                to.sort();
                prop_assert_eq!(from, to);
                prop_assert!(plan.visits.is_empty() || plan.visits[0] == plan.moves);
                prop_assert_eq!(plan.visits.len(), usize::from(horizon));
                // Following the visits wheel by wheel gives the forecast.
                for forecast in &plan.forecast {
                    let mut at = forecast.tire;
                    let index = |place: Place| request.tires.iter().position(|t| t.at == place).unwrap();
                    let mut depth = depths[index(at)];
                    for visit in &plan.visits {
                        at = visit.iter().find(|(from, _)| *from == at).map_or(at, |(_, to)| *to);
                        let rate = if at == Place::Spare { 0.0 } else { rates[index(at)] };
                        depth -= rate * interval / 1000.0;
                    }
                    prop_assert!((forecast.horizon_mm.mid - depth.max(0.0)).abs() < 1e-6);
                }
            }
        }
    }

    /// Any text is read or refused.
    #[test]
    fn any_text_is_a_request_or_a_mistake(text in ".{0,200}") {
        let _ = RequestFile::read(&text).map(|file| file.request());
    }
}
