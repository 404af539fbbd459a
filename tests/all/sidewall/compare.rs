//! One size in the place of another.

use lugbook::sidewall::{ChangeKind, Diameter, equivalence, parse};

fn kinds(a: &str, b: &str) -> Vec<String> {
    let change = equivalence(&parse(a), &parse(b));
    change.findings.iter().map(|f| serde_json::to_value(f).unwrap()["what"].as_str().unwrap().to_owned()).collect()
}

/// Geometry of the two sizes (standards page, worked examples: 631.9 and 634.3 mm).
#[test]
fn figures_go_from_the_first_to_the_second() {
    let change = equivalence(&parse("205/55R16 91V"), &parse("225/45R17 91W"));
    let [Diameter(Some(a)), Diameter(Some(b))] = change.diameter_mm else { panic!("{change:?}") };
    assert!((a - 631.9).abs() < 1e-9 && (b - 634.3).abs() < 1e-9);
    assert!((change.difference_percent.unwrap() - (634.3 / 631.9 - 1.0) * 100.0).abs() < 1e-9);
    assert!((change.speedometer.unwrap() - 100.0 * 634.3 / 631.9).abs() < 1e-9);
    let json = serde_json::to_value(&change).unwrap();
    assert_eq!(json["diameter_mm"], serde_json::json!([631.9, 634.3]));
    assert_eq!(json["difference_percent"], 0.3798);
    assert_eq!(json["speedometer"], 100.3798);
}

#[test]
fn the_same_tire_changes_nothing() {
    let change = equivalence(&parse("225/45R17 91W"), &parse("225/45R17 91W"));
    assert_eq!((change.difference_percent, change.speedometer), (Some(0.0), Some(100.0)));
    assert!(change.findings.is_empty(), "{:?}", change.findings);
}

#[test]
fn each_change_is_found() {
    assert_eq!(kinds("225/45R17 91W", "225/45R17 88W"), ["load-lower"]);
    assert_eq!(kinds("225/45R17 91W", "225/45R17 91H"), ["speed-lower"]);
    assert_eq!(kinds("225/45R17 91W", "225/50R17 94W"), ["diameter"]);
    assert_eq!(kinds("225/45R17 91W", "225/45R17 94W XL"), ["load-class"]);
    assert_eq!(kinds("225/45R17 91W", "225/45RF17 91W"), ["run-flat"]);
    assert_eq!(kinds("205/55R16 91V", "225/45R17 91W"), ["rim", "width"]);
    assert_eq!(kinds("195R14C 106/104S", "195R14C 106/103S"), ["diameter-unknown", "dual-load-lower"]);
    assert_eq!(kinds("225/45R17", "225/45R17 91W"), ["load-class", "load-unknown", "speed-unknown"]);
    assert_eq!(kinds("T145/80D18 103M", "T145/80R18 103M"), ["construction"]);
    assert_eq!(kinds("LT235/85R16 120/116R", "235/85R16 120/116R"), ["service"]);
}

/// Thresholds are common practice, no source: a note above 2 %, a warning above 3 %.
#[test]
fn a_diameter_is_told_from_two_percent() {
    let weight = |b: &str| {
        let change = equivalence(&parse("225/45R17 91W"), &parse(b));
        let found = change.findings.iter().find(|f| matches!(f.kind, ChangeKind::Diameter { .. }));
        found.map(|f| serde_json::to_value(f.weight).unwrap().as_str().unwrap().to_owned())
    };
    assert_eq!(weight("235/45R17 94W"), None); // 1.4 %
    assert_eq!(weight("245/45R17 95W").as_deref(), Some("note")); // 2.8 %
    assert_eq!(weight("225/50R17 94W").as_deref(), Some("warning")); // 3.5 %
}

#[test]
fn what_is_not_known_is_null_and_said() {
    let json = serde_json::to_value(equivalence(&parse("195R14C"), &parse("nonsense"))).unwrap();
    assert_eq!(json["diameter_mm"], serde_json::json!([null, null]));
    assert_eq!((json["difference_percent"].is_null(), json["speedometer"].is_null()), (true, true));
    assert_eq!(json["findings"][0]["what"], "diameter-unknown");
}
