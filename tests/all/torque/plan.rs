use lugbook::fastener::{Fastener, Kind, LockKey, Lubrication, RecheckAt, Seat, Seating, TorqueSpec, Wrench};
use lugbook::fastening::{
    Bar, Caution, Gate, NoTarget, RecheckOrigin, Request, Stop, UnitClash, gate, outcome, plan, recheck,
};
use lugbook::measure::DistanceUnit;
use lugbook::source::Grade;

fn spec() -> TorqueSpec {
    TorqueSpec::printed(["125..150 N.m".parse().unwrap()])
}

fn wrench() -> Wrench {
    Wrench::new(4.0, "1 N.m".parse().unwrap())
}

#[test]
fn the_contracts_worked_answer_comes_out_whole() {
    let (spec, wrench) = (spec(), wrench());
    let plan = plan(&Request::new(&spec, &wrench, 5)).unwrap();
    let json = serde_json::to_value(&plan).unwrap();
    assert_eq!(json["target"]["value"], 137.0);
    assert_eq!(json["target"]["unit"], "N.m");
    assert!((json["margin"].as_f64().unwrap() - 6.52).abs() < 1e-9);
    assert_eq!(json["order"], serde_json::json!([1, 3, 5, 2, 4]));
    assert_eq!(json["band"]["max"]["value"], 150.0);
    assert_eq!(json["bar"], serde_json::Value::Null);
    assert_eq!(json["passes"][0]["stage"], "hand-start");
    assert_eq!(json["recheck"][0]["origin"], "trade-default");
    for key in ["target", "band", "margin", "order", "passes", "bar", "recheck", "cautions"] {
        assert!(json.get(key).is_some(), "{key}");
    }
}

#[test]
fn every_caution_and_stop_can_be_written_as_json() {
    let mut spec = TorqueSpec::printed(["190..220 N.m".parse().unwrap(), "130..160 ft-lb".parse().unwrap()]);
    spec.condition = Lubrication::Dry;
    spec.thread = "M14 x 1.5".parse().ok();
    let mut nut = Fastener::new(Kind::Nut);
    nut.thread = "M14 x 2".parse().ok();
    nut.lubrication = Lubrication::Oiled;
    nut.hand = lugbook::fastener::Hand::Left;
    nut.lock = Some(LockKey::default());
    let wrench = wrench();
    let bar = Bar::new("200 N.m".parse().unwrap());
    let mut request = Request::new(&spec, &wrench, 8);
    request.fastener = Some(&nut);
    request.bar = Some(&bar);
    request.today = "2026-11-24".parse().ok();
    let made = plan(&request).unwrap();
    let about: Vec<String> = serde_json::to_value(&made.cautions)
        .unwrap()
        .as_array()
        .unwrap()
        .iter()
        .map(|caution| caution["about"].as_str().unwrap().to_owned())
        .collect();
    let wanted = [
        "target",
        "bar",
        "bar",
        "bar",
        "calibration",
        "lubrication",
        "seat-not-known",
        "thread",
        "left-hand",
        "lock-key",
    ];
    assert_eq!(about, wanted);
    let clash: UnitClash = spec.unit_clash().unwrap();
    for stop in [
        Stop::Seat { difference: lugbook::fastener::Difference::Shape },
        Stop::Target(NoTarget::UnitClash(clash)),
        Stop::Target(NoTarget::NothingPrinted),
        Stop::Studs { given: 2 },
        Stop::MakersOrder,
    ] {
        assert!(serde_json::to_value(&stop).unwrap()["stop"].is_string());
    }
}

#[test]
fn a_seat_that_does_not_fit_stops_everything() {
    let (spec, wrench) = (spec(), wrench());
    let mut nut = Fastener::new(Kind::Nut);
    nut.seating = Some(Seating::of(Seat::Ball));
    let mut request = Request::new(&spec, &wrench, 5);
    request.fastener = Some(&nut);
    request.wheel = Some(Seating::of(Seat::Cone));
    assert!(matches!(plan(&request), Err(Stop::Seat { .. })));
}

#[test]
fn lubrication_is_asked_and_never_assumed() {
    let (mut spec, wrench) = (spec(), wrench());
    let asked = |spec: &TorqueSpec, nut: Option<&Fastener>| {
        let mut request = Request::new(spec, &wrench, 5);
        request.fastener = nut;
        plan(&request).unwrap().cautions
    };
    assert!(asked(&spec, None).contains(&Caution::LubricationNotKnown));
    spec.condition = Lubrication::Dry;
    let mut nut = Fastener::new(Kind::Bolt);
    assert!(asked(&spec, Some(&nut)).contains(&Caution::LubricationNotKnown));
    nut.lubrication = Lubrication::Dry;
    let cautions = asked(&spec, Some(&nut));
    assert!(!cautions.iter().any(|c| matches!(c, Caution::LubricationNotKnown | Caution::Lubrication { .. })));
    nut.lubrication = Lubrication::Oiled;
    assert!(asked(&spec, Some(&nut)).iter().any(|c| matches!(c, Caution::Lubrication { .. })));
}

#[test]
fn the_makers_order_goes_first_and_must_name_each_stud() {
    let (mut spec, wrench) = (spec(), wrench());
    spec.order = Some(vec![1, 4, 2, 5, 3]);
    let made = plan(&Request::new(&spec, &wrench, 5)).unwrap();
    assert!(made.makers_order && made.order == [1, 4, 2, 5, 3]);
    for order in [vec![1, 4, 2, 5], vec![1, 4, 2, 5, 5], vec![0, 1, 2, 3, 4]] {
        spec.order = Some(order);
        assert_eq!(plan(&Request::new(&spec, &wrench, 5)), Err(Stop::MakersOrder));
    }
    assert_eq!(plan(&Request::new(&self::spec(), &wrench, 13)), Err(Stop::Studs { given: 13 }));
}

#[test]
fn printed_rechecks_go_before_the_trades_and_the_trades_cannot_refuse() {
    let mut spec = spec();
    let trade = recheck(&spec, DistanceUnit::Kilometre);
    assert_eq!(trade.len(), 1);
    assert_eq!((trade[0].from.unwrap().to_string(), trade[0].by.to_string()), ("80 km".into(), "160 km".into()));
    assert_eq!((trade[0].origin, trade[0].source.grade), (RecheckOrigin::TradeDefault, Grade::Secondary));
    assert!(!trade[0].source.grade.may_refuse());
    spec.recheck = ["100 mi", "500 mi"].iter().map(|by| RecheckAt { from: None, by: by.parse().unwrap() }).collect();
    let printed = recheck(&spec, DistanceUnit::Kilometre);
    let shown: Vec<String> = printed.iter().map(|at| at.by.to_string()).collect();
    assert_eq!(shown, ["100 mi", "500 mi"], "as printed");
    assert!(printed.iter().all(|at| at.origin == RecheckOrigin::Printed));
}

#[test]
fn the_final_gate_stays_shut_while_no_torque_is_known() {
    assert_eq!(gate(None, false), Gate::Shut);
    assert_eq!(gate(Some(&TorqueSpec::printed([])), false), Gate::Shut);
    assert_eq!(gate(None, true), Gate::OpenedWithoutSpecification);
    assert_eq!(gate(Some(&spec()), false), Gate::Open);
}

#[test]
fn the_records_passes_with_a_click_have_an_outcome() {
    use lugbook::entry::{Pass, Turned};
    use lugbook::fastening::NutOutcome;
    assert_eq!(outcome(Pass::Recheck, Turned::Still), Some(NutOutcome::Held));
    assert_eq!(outcome(Pass::Recheck, Turned::Moved), Some(NutOutcome::MovedRecordAndRepeat));
    assert_eq!(outcome(Pass::Final, Turned::Moved), Some(NutOutcome::Proven));
    assert_eq!(outcome(Pass::Cracked, Turned::Still), None);
}

#[test]
fn a_specification_is_stored_and_read_back_whole() {
    let mut spec = TorqueSpec::printed(["190..220 N.m".parse().unwrap(), "130..160 ft-lb".parse().unwrap()]);
    spec.thread = "M14 x 1.5".parse().ok();
    spec.hex = "22 mm".parse().ok();
    spec.condition = Lubrication::AsManualSays("2 drops between nut and washer".to_owned());
    spec.recheck = vec![RecheckAt { from: "50 mi".parse().ok(), by: "100 mi".parse().unwrap() }];
    spec.order = Some(vec![1, 5, 3, 7, 2, 6, 4, 8]);
    spec.source = "owner's manual, page 255".to_owned();
    let stored = serde_json::to_string(&spec).unwrap();
    assert_eq!(serde_json::from_str::<TorqueSpec>(&stored).unwrap(), spec);
    let bare = serde_json::from_str::<TorqueSpec>(r#"{"printed":[{"low":{"value":100,"unit":"ft.lb"}}]}"#).unwrap();
    assert_eq!(bare, TorqueSpec::printed(["100 ft.lb".parse().unwrap()]));
}
