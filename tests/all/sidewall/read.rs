//! Markings as they stand on tires and in shops, read whole.

use lugbook::sidewall::{self, Answer, Severity, Word};

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

/// The contract's keys: unknown is null, never missing.
#[test]
fn every_key_is_there_even_when_nothing_is_known() {
    let answer = serde_json::to_value(Answer::of(&sidewall::parse("195R14C 106 DOT 1HKB 9FLP"))).unwrap();
    let keys = |of: &serde_json::Value| of.as_object().unwrap().keys().cloned().collect::<Vec<_>>();
    for key in ["size", "service", "load", "tin", "problems"] {
        assert!(keys(&answer).contains(&key.to_owned()), "{key}");
    }
    for key in [
        "text",
        "use",
        "width_mm",
        "aspect_percent",
        "construction",
        "rim_in",
        "section_height_mm",
        "overall_diameter_mm",
        "circumference_mm",
    ] {
        assert!(keys(&answer["size"]).contains(&key.to_owned()), "{key}");
    }
    for key in ["load_index", "load_index_dual", "load_kg", "speed_symbol", "max_kmh"] {
        assert!(keys(&answer["service"]).contains(&key.to_owned()), "{key}");
    }
    for key in ["text", "plant", "complete", "made", "ambiguous"] {
        assert!(keys(&answer["tin"]).contains(&key.to_owned()), "{key}");
    }
    for key in ["at", "len", "what", "severity"] {
        assert!(keys(&answer["problems"][0]).contains(&key.to_owned()), "{key}");
    }
    assert_eq!(answer["size"]["use"], "C");
    assert!(answer["size"]["overall_diameter_mm"].is_null() && answer["service"]["max_kmh"].is_null());
    assert!(answer["tin"]["made"].is_null() && answer["load"].is_null());
    let nothing = serde_json::to_value(Answer::of(&sidewall::parse("banana"))).unwrap();
    assert!(nothing["size"].is_null() && nothing["service"].is_null() && nothing["tin"].is_null());
    assert_eq!(nothing["problems"][0]["severity"], "error");
}

/// As written in shops and molded on tires, then the canonical form; common
/// practice, no source, but for the forms of the standards page.
const WRITTEN: [(&str, &str); 42] = [
    ("80/100-21 M/C 51M", "80/100-21M/C 51M"),
    ("130/90-16 M/C 67H TL", "130/90-16M/C 67H TUBELESS"),
    ("180/55ZR17 M/C (73W)", "180/55ZR17M/C (73W)"),
    ("MH90-21 54H", "MH90-21 54H"),
    ("MT90B16 74H", "MT90B16 74H"),
    ("GR70-15", "GR70-15"),
    ("3.00-18 47P", "3.00-18 47P"),
    ("205/55 R 16 91 V", "205/55R16 91V"),
    ("225/45R1791W", "225/45R17 91W"),
    ("225/45r17 91w xl", "225/45R17 91W XL"),
    ("LT285/70R17/E", "LT285/70R17 LOAD RANGE E"),
    ("LT265/70R17 121/118S LR E", "LT265/70R17 121/118S LOAD RANGE E"),
    ("35X12.50R20LT 121Q E", "35x12.50R20LT 121Q LOAD RANGE E"),
    ("LT 31x10.50 R 15", "LT31x10.50R15"),
    ("ST225/75R15 117/112M LRE", "ST225/75R15 117/112M LOAD RANGE E"),
    ("295/75R22.5 G 144/141L", "295/75R22.5 144/141L LOAD RANGE G"),
    ("315/80R22,5 156/150L (154/150M)", "315/80R22.5 156/150L (154/150M)"),
    ("12.00R20 154/150K (152/148L) 18PR", "12.00R20 154/150K (152/148L) 18PR"),
    ("9.00-20 14PR TT", "9.00-20 14PR TUBE TYPE"),
    ("10.00R20", "10.00R20"),
    ("10R20", "10R20"),
    ("185R14C 8PR", "185R14C 8PR"),
    ("185/R14C", "185R14C"),
    ("215/70R15CP 109/107S", "215/70R15CP 109/107S"),
    ("8.75R16.5LT D", "8.75R16.5LT LOAD RANGE D"),
    ("4.80-12 6 PLY RATING", "4.80-12 6PR"),
    ("20.5x8.0-10 LRC", "20.5x8.00-10 LOAD RANGE C"),
    ("25x8-12", "25x8-12"),
    ("225/45 ZR 17 (91Y)", "225/45ZR17 (91Y)"),
    ("245/40ZRF18 93Y", "245/40ZRF18 93Y"),
    ("T155/70D17 110M TEMPORARY USE ONLY", "T155/70D17 110M TEMPORARY USE ONLY"),
    ("225/45R17 94W Reinforced (E4) 0212345-S2WR2", "225/45R17 94W XL E4 0212345-S2WR2"),
    ("DOT9B34XYAB10224", "DOT 9B3 4XYAB1 0224"),
    ("DOT-R ABC 0723", "DOT ABC 0723"),
    ("UTQG 500 A A", "TREADWEAR 500 TRACTION A TEMPERATURE A"),
    ("UTQG 500AAA", "TREADWEAR 500 TRACTION AA TEMPERATURE A"),
    ("TREADWEAR 500 AA A", "TREADWEAR 500 TRACTION AA TEMPERATURE A"),
    ("350 kPa (51 psi) MAX. PRESS.", "MAX PRESSURE 350 KPA (51 PSI)"),
    (
        "MAX. LOAD SINGLE 3750 kg (8267 lbs) AT 900 kPa (130 psi) COLD MAX. LOAD DUAL 3350 kg (7385 lbs)",
        "MAX LOAD SINGLE 3750 KG (8267 LB) AT 900 KPA (130 PSI) MAX LOAD DUAL 3350 KG (7385 LB)",
    ),
    ("31×10.5–15LT", "31x10.50-15LT"),
    ("RADIAL TUBELESS PLIES: TREAD 2 STEEL + 2 POLYESTER SIDEWALL 2 POLYESTER", "TUBELESS RADIAL"),
    ("M&S 3PMSF ROTATION → OUTSIDE REGROOVABLE", "M+S 3PMSF ROTATION OUTSIDE REGROOVABLE"),
];

#[test]
fn what_shops_write_is_read_and_printed_in_one_form() {
    for (written, canonical) in WRITTEN {
        let marking = sidewall::parse(written);
        assert_eq!(marking.to_string(), canonical, "{written}");
        assert!(marking.problems.iter().all(|p| p.severity == Severity::Note), "{written}: {:?}", marking.problems);
        assert_eq!(sidewall::parse(canonical), marking, "{canonical}");
    }
}

#[test]
fn every_word_is_printed_as_it_is_read() {
    for word in Word::ALL {
        let marking = sidewall::parse(word.as_str());
        assert_eq!(marking.words, [word], "{word}");
        assert!(marking.problems.is_empty());
    }
}

/// No load word means standard load (vehicle manuals); it is said only where a
/// passenger size stands.
#[test]
fn standard_load_is_said_of_passenger_sizes_alone() {
    let class = |text: &str| sidewall::parse(text).load_class().map(|class| class.code());
    for text in ["225/45R17 91W", "P215/65R15 95H", "225/45R17 91W SL"] {
        assert_eq!(class(text).as_deref(), Some("standard"), "{text}");
    }
    for text in ["225/45R17", "LT235/85R16 120/116Q", "T145/80D18 103M", "315/80R22.5 156/150L", "120/70ZR17 (58W)"] {
        assert_eq!(class(text), None, "{text}");
    }
    assert_eq!(class("HL245/40R19 101Y").as_deref(), Some("high-load"));
    assert_eq!(class("225/45R17 91W LL").as_deref(), Some("light-load"));
    assert_eq!(class("LT245/75R16 LRE").as_deref(), Some("load-range-e"));
}

#[test]
fn both_sides_of_one_tire_give_one_number() {
    for text in ["DOT 1HKB 9FLP DOT 1HKB 9FLP 0723", "DOT 1HKB 9FLP 0723 DOT 1HKB 9FLP"] {
        let marking = sidewall::parse(text);
        assert_eq!(marking.tin.unwrap().text(), "1HKB9FLP0723");
        assert!(!marking.problems.iter().any(|p| p.kind.code() == "repeated"));
    }
}
