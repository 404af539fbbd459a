//! Real markings, read whole.

use lugbook::sidewall::{self, Answer};

#[test]
fn the_worked_marking_gives_its_worked_answer() {
    let answer = serde_json::to_value(Answer::of(&sidewall::parse("225/45R17 91W DOT 1HKB 9FLP 0723"))).unwrap();
    assert_eq!(answer["size"]["overall_diameter_mm"], 634.3);
    assert_eq!(answer["service"]["load_kg"], 615);
    assert_eq!(answer["service"]["max_kmh"], 270);
    assert_eq!(answer["tin"]["text"], "1HKB9FLP0723");
    assert_eq!(answer["tin"]["form"], "older");
    assert_eq!(answer["tin"]["plant"], "1H");
    assert_eq!(answer["tin"]["made"], serde_json::json!({"from": "2023-02-12", "to": "2023-02-18"}));
    assert_eq!(answer["problems"], serde_json::json!([]));
}
