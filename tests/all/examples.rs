//! The example files of the terminal run, and what is hostile is told in one sentence.

use std::path::PathBuf;

use serde_json::Value;

use super::program::{Said, root, with};

fn say(words: &[&str]) -> Said {
    let folder = tempfile::tempdir().unwrap();
    with(&folder.path().join("book"), words).output().unwrap().into()
}

fn example(name: &str) -> String {
    root().join("bindings/terminal/examples").join(name).to_string_lossy().into_owned()
}

/// Runs a question, for people and as data: the first line, and the object.
fn answer(verb: &str, name: &str) -> (String, Value) {
    let told = say(&[verb, &example(name)]);
    assert_eq!((told.code, told.err.as_str()), (Some(0), ""), "{name}: {told:?}");
    let data = say(&[verb, &example(name), "--json"]);
    assert_eq!(data.code, Some(0), "{name}");
    (told.out.lines().next().unwrap().to_owned(), data.json())
}

#[test]
fn each_example_is_run_here() {
    let folder = root().join("bindings/terminal/examples");
    let mut names: Vec<String> =
        std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    let run = [
        "lift-bottle-jacks.toml",
        "lift-flat-at-the-roadside.toml",
        "lift-jack-and-spare.toml",
        "lift-two-stands.toml",
        "rotate-car.toml",
        "rotate-tractor.toml",
        "rotate-unequal-directional.toml",
        "wear.csv",
    ];
    assert_eq!(names, run);
}

#[test]
fn rotations_begin_with_what_a_tech_can_shout() {
    let (first, car) = answer("rotate", "rotate-car.toml");
    assert_eq!(first, "Fronts straight back, rears cross to the front.");
    assert_eq!(car["plans"][0]["pattern"], "forward-cross");
    assert!(car["plans"].as_array().unwrap().iter().all(|plan| plan["forecast"].as_array().unwrap().len() == 4));
    let (_, tractor) = answer("rotate", "rotate-tractor.toml");
    assert_eq!(tractor["plans"].as_array().unwrap().last().unwrap()["pattern"], "leave-as-is");
    assert!(tractor["proved"] == true || tractor["gap_mm"].as_f64().unwrap() < 0.1, "{tractor}");
    let told = say(&["rotate", &example("rotate-unequal-directional.toml")]).out;
    let head: Vec<&str> = told.lines().take(3).collect();
    assert_eq!(head[0], "Leave every wheel where it is.");
    assert!(head[1].starts_with("No rotation is possible with the tires as they sit on their rims."), "{told}");
    assert!(head.join(" ").contains("would allow: side to side."), "{told}");
}

#[test]
fn orders_of_lifting_begin_with_how_many_lifts() {
    for (name, lifts) in [
        ("lift-two-stands.toml", 5),
        ("lift-jack-and-spare.toml", 5),
        ("lift-flat-at-the-roadside.toml", 2),
        ("lift-bottle-jacks.toml", 2),
    ] {
        let (first, plan) = answer("lift", name);
        assert!(first.ends_with("No order needs fewer."), "{name}: {first}");
        assert_eq!((plan["lifts"].as_u64(), &plan["proved"]), (Some(lifts), &Value::Bool(true)), "{name}");
        assert!(!plan["actions"].as_array().unwrap().is_empty(), "{name}");
    }
}

#[test]
fn wear_begins_with_the_next_visit() {
    let (first, wear) = answer("wear", "wear.csv");
    assert!(first.starts_with("Next visit at "), "{first}");
    let rate = |at: &str| {
        let tires = wear["tires"].as_array().unwrap();
        tires.iter().find(|tire| tire["at"] == at).unwrap()["rate"]["value"].as_f64().unwrap()
    };
    // Fronts 1.6 mm in 10,000 km, rears 0.6; one reading slipped.
    assert!((rate("FL") - 0.16).abs() < 0.01 && (rate("RL") - 0.06).abs() < 0.01, "{wear}");
    assert_eq!(wear["slipped"].as_array().unwrap().len(), 1, "{wear}");
    assert_eq!(wear["slipped"][0]["at"], "RR");
}

/// A file of its own for a question.
fn asked(verb: &str, text: &str) -> Said {
    let folder = tempfile::tempdir().unwrap();
    let file: PathBuf = folder.path().join(if verb == "wear" { "asked.csv" } else { "asked.toml" });
    std::fs::write(&file, text).unwrap();
    with(&folder.path().join("book"), &[verb, &file.to_string_lossy(), "--json"]).output().unwrap().into()
}

#[test]
fn hostile_questions_end_with_2_and_one_sentence() {
    let car = |more: &str| format!("class = \"car\"\ndrive = \"front\"\n{more}");
    let tire = |at: &str, more: &str| format!("[[tires]]\nat = \"{at}\"\n{more}\n");
    let four = |more: &str| car(&["FL", "FR", "RL", "RR"].map(|at| tire(at, more)).concat());
    let forty: String =
        (1..=10).flat_map(|axle| ["LO", "LI", "RI", "RO"].map(|row| tire(&format!("{axle}{row}"), ""))).collect();
    let rotate = [
        ("no wheels", car("")),
        ("forty wheels", car(&forty)),
        ("a depth that is no number", four("depth_mm = nan")),
        ("a rate that is no number", four("rate_mm_per_1000_km = nan")),
        ("a rate that has no end", four("rate_mm_per_1000_km = inf")),
        ("a distance that is no number", format!("interval_km = nan\n{}", four(""))),
        ("an uncertainty that is no number", format!("uncertainty_mm = nan\n{}", four(""))),
        ("two tires at one place", car(&(tire("FL", "") + &tire("LF", "")))),
        ("a suited side without an arrow", four("made_for = \"left\"")),
        ("a temporary spare with studs", four("temporary = true\nstudded = true")),
        ("more as one of a pair than alone", four("load_kg = 600\nload_dual_kg = 700")),
        ("no visit", format!("horizon = 0\n{}", four(""))),
        ("300 visits", format!("horizon = 300\n{}", four(""))),
        ("a wheel missing", car(&tire("FL", ""))),
        ("a place that is none", car(&tire("XX", ""))),
        ("nothing", String::new()),
        ("no TOML", "{{{{".to_owned()),
    ];
    let gear = "[gear]\nkind = \"floor-jack\"\nstands = 2\n";
    let moves = "[moves]\nFL = \"RL\"\nRL = \"FL\"\n";
    let lift = [
        ("no gear", moves.to_owned()),
        ("no moves", gear.to_owned()),
        ("forty wheels", format!("[vehicle]\naxles = [{}]\n{gear}{moves}", ["\"dual\""; 10].join(","))),
        ("a weight that is no number", format!("[vehicle]\nweight = \"nan kg\"\n{gear}{moves}")),
        ("a rating of nothing", format!("[gear]\nkind = \"floor-jack\"\nrating = \"0 kg\"\n{moves}")),
        ("a jack rated below the load", format!("[vehicle]\nweight = \"9 t\"\n{gear}rating = \"1 t\"\n{moves}")),
        ("two wheels to one place", format!("{gear}[moves]\nFL = \"RL\"\nFR = \"RL\"\n")),
        ("one place under two names", format!("{gear}[moves]\nFL = \"RL\"\nLF = \"RL\"\n")),
        ("a wheel that has nowhere to go", format!("{gear}[moves]\nFL = \"RL\"\n")),
        ("a place that is none", format!("{gear}[moves]\n9L = \"RL\"\n")),
        ("250 stands", format!("[gear]\nkind = \"floor-jack\"\nstands = 250\n{moves}")),
        ("300 stands", format!("[gear]\nkind = \"floor-jack\"\nstands = 300\n{moves}")),
        ("nothing", String::new()),
    ];
    let head = "distance_km,at,depth_mm\n";
    let many: String = (0..5_001).map(|row| format!("{row},FL,8.0\n")).collect();
    let wear = [
        ("no reading", head.to_owned()),
        ("nothing", String::new()),
        ("a depth that is no number", format!("{head}0,FL,nan\n")),
        ("a distance that has no end", format!("{head}inf,FL,8.0\n")),
        ("a distance below nothing", format!("{head}-5,FL,8.0\n")),
        ("a place that is none", format!("{head}0,ZZ,8.0\n")),
        ("no depth", format!("{head}0,FL,\n")),
        ("two tires at one place", "tire,distance_km,at,depth_mm\na,0,FL,8\nb,0,FL,7\n".to_owned()),
        ("more rows than a history", format!("{head}{many}")),
        ("no column of depths", "distance_km,at\n0,FL\n".to_owned()),
    ];
    let all = rotate.iter().map(|q| ("rotate", q)).chain(lift.iter().map(|q| ("lift", q)));
    for (verb, (what, text)) in all.chain(wear.iter().map(|q| ("wear", q))) {
        let said = asked(verb, text);
        assert_eq!(said.code, Some(2), "{verb}, {what}: {said:?}");
        assert_eq!(said.json()["error"]["kind"], "mend-input", "{verb}, {what}");
        let sentence = said.err.trim_end();
        // Nothing of the program's own insides.
        let plain = !sentence.contains('\n') && !sentence.contains("u8") && sentence.chars().count() < 200;
        assert!(plain && sentence.ends_with('.'), "{verb}, {what}: {sentence}");
        println!("{verb}, {what}: {sentence}");
    }
}
