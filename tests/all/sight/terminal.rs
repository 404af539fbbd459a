//! `lugbook read`.

use serde_json::Value;

use super::{folder, models};
use crate::program::{Said, with};

fn read(words: &[&str], models: &std::path::Path) -> Said {
    let here = tempfile::tempdir().unwrap();
    let mut process = with(&here.path().join("book"), words);
    process.env("LUGBOOK_MODELS", models);
    process.output().unwrap().into()
}

fn demo(name: &str) -> String {
    format!("{}/../bindings/terminal/demo/{name}", env!("CARGO_MANIFEST_DIR"))
}

#[test]
fn without_models_it_says_how_to_get_them_and_that_typing_goes_on() {
    let empty = tempfile::tempdir().unwrap();
    for (lang, typing) in [("en", "type what stands"), ("es", "escriba lo que dice")] {
        let said = read(&["read", &demo("sidewall-front-left.jpg"), "--json", "--lang", lang], empty.path());
        assert_eq!(said.code, Some(2), "{said:?}");
        let error: Value = serde_json::from_str(&said.out).unwrap();
        assert_eq!(error["error"]["kind"], "mend-input");
        let sentence = error["error"]["sentence"].as_str().unwrap();
        assert!(sentence.contains("core/models/fetch") && sentence.contains(typing), "{sentence}");
        assert_eq!(said.err.trim(), sentence);
    }
    let broken = tempfile::tempdir().unwrap();
    for name in ["PP-OCRv6_det_small.onnx", "PP-OCRv6_rec_small.onnx"] {
        std::fs::write(broken.path().join(name), "cut short").unwrap();
    }
    let said = read(&["read", &demo("sidewall-front-left.jpg")], broken.path());
    assert_eq!(said.code, Some(2));
    assert!(said.err.contains("damaged"), "{said:?}");
}

#[test]
fn a_photo_gives_suggestions_with_all_their_keys() {
    if models("lugbook read").is_none() {
        return;
    }
    let said = read(&["read", &demo("sidewall-front-left.jpg"), "--json"], &folder());
    assert_eq!(said.code, Some(0), "{said:?}");
    let view: Value = serde_json::from_str(&said.out).unwrap();
    for key in ["size", "service", "date", "tin", "words", "ring", "judgement", "took_ms", "model"] {
        assert!(view.get(key).is_some(), "{key} is missing: {view}");
    }
    assert_eq!(view["size"][0]["text"], "LT245/75R16");
    let odds = view["size"][0]["odds"].as_f64().unwrap();
    assert!((0.0..=1.0).contains(&odds));
    assert!(view["ring"]["r"].as_f64().unwrap() > view["ring"]["rim_r"].as_f64().unwrap());
    assert_eq!(view["model"].as_str().unwrap().len(), 64);
}

#[test]
fn readings_are_scored_against_a_table() {
    if models("lugbook read --score").is_none() {
        return;
    }
    let index = tempfile::NamedTempFile::new().unwrap();
    let table = "file,kind,width,height,size,service,tin_body,date,words\n\
                 sidewall-front-left.jpg,wheel,1440,1080,LT245/75R16,120/116S,,1422,\n\
                 sidewall-front-right.jpg,wheel,1440,1080,155/80R13,,,,OUTSIDE\n";
    std::fs::write(index.path(), table).unwrap();
    let name = index.path().display().to_string();
    let said = read(&["read", "--score", &name, &demo(""), "--json"], &folder());
    assert_eq!(said.code, Some(0), "{said:?}");
    let view: Value = serde_json::from_str(&said.out).unwrap();
    let size = view["fields"].as_array().unwrap().iter().find(|field| field["field"] == "size").unwrap();
    assert_eq!((&size["of"], &size["right_first"]), (&2.into(), &1.into()), "{size}");
    let missed: Vec<_> = view["misses"].as_array().unwrap().iter().map(|miss| &miss["truth"]).collect();
    assert!(missed.contains(&&Value::from("155/80R13")), "{missed:?}");
}
