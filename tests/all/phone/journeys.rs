//! Whole journeys from `tests/vectors/journeys`, which Kotlin and Swift read too: what is tapped,
//! what it comes to, and what the screen shows then.

use std::path::{Path, PathBuf};

use lugbook_phone::{ActionPace, Changed, Entered, Manner, Outgoing, OutgoingOf, Refusal, ScreenAction};
use serde_json::{Value, json};

use super::{Shop, wait};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("vectors/journeys")
}

/// Where a tree differs from a pattern: an object needs the pattern's keys, an array its length and
/// order, `{"has": […]}` some element for each, `{"count": n}` so many.
fn differs(pattern: &Value, found: &Value, at: &str) -> Option<String> {
    match (pattern, found) {
        (Value::Object(wanted), Value::Array(items)) if wanted.contains_key("count") => {
            (json!(items.len()) != wanted["count"]).then(|| format!("{at}: {} elements", items.len()))
        }
        (Value::Object(wanted), Value::Array(items)) if wanted.contains_key("has") => {
            let missing = wanted["has"]
                .as_array()?
                .iter()
                .find(|one| items.iter().all(|item| differs(one, item, at).is_some()))?;
            Some(format!("{at}: {missing} is not among {}", json!(items)))
        }
        (Value::Object(wanted), Value::Object(found)) => wanted.iter().find_map(|(key, wanted)| {
            let at = format!("{at}.{key}");
            match found.get(key) {
                Some(found) => differs(wanted, found, &at),
                None => Some(format!("{at}: not there")),
            }
        }),
        (Value::Array(wanted), Value::Array(found)) => {
            if wanted.len() != found.len() {
                return Some(format!("{at}: {} elements, not {}: {}", found.len(), wanted.len(), json!(found)));
            }
            let mut pairs = wanted.iter().zip(found).enumerate();
            pairs.find_map(|(n, (wanted, found))| differs(wanted, found, &format!("{at}[{n}]")))
        }
        (Value::Number(wanted), Value::Number(found)) => {
            let same = wanted.as_f64() == found.as_f64();
            (!same).then(|| format!("{at}: {found}, not {wanted}"))
        }
        (wanted, found) => (wanted != found).then(|| format!("{at}: {found}, not {wanted}")),
    }
}

fn text<'v>(step: &'v Value, key: &str) -> Option<&'v str> {
    step.get(key).and_then(Value::as_str)
}

fn of(step: &Value, key: &str) -> Option<String> {
    step.get("of").and_then(|of| text(of, key)).map(str::to_owned)
}

/// A screen as a tree.
fn screen(shop: &Shop, name: &str, step: &Value) -> Result<Value, Refusal> {
    fn tree<T: serde::Serialize>(screen: Result<T, Refusal>) -> Result<Value, Refusal> {
        screen.map(|screen| serde_json::to_value(screen).unwrap())
    }
    let (engine, manner) = (&shop.engine, shop.manner);
    let vehicle = of(step, "vehicle").unwrap_or_default();
    let job =
        step.get("of").and_then(|of| of.get("job")).and_then(Value::as_u64).map(|job| u32::try_from(job).unwrap());
    match name {
        "bay" => tree(wait(engine.bay(of(step, "step"), of(step, "at"), manner))),
        "book" => tree(wait(engine.book(of(step, "search").unwrap_or_default(), manner))),
        "crew" => tree(wait(engine.crew(manner))),
        "vehicle" => tree(wait(engine.vehicle(vehicle, manner))),
        "tire" => tree(wait(engine.tire(vehicle, of(step, "at").unwrap_or_default(), manner))),
        "history" => tree(wait(engine.history(vehicle, manner))),
        "plan" => tree(wait(engine.plan(manner))),
        "lifts" => tree(wait(engine.lifts(manner))),
        "findings" => tree(wait(engine.findings(job, manner))),
        "log" => tree(wait(engine.log(job, manner))),
        "card" => tree(wait(engine.card(job, manner))),
        "bench" => tree(wait(engine.bench(manner))),
        "settings" => tree(wait(engine.settings(manner))),
        "first-run" => tree(wait(engine.first_run(manner))),
        "backups" => tree(wait(engine.backups(manner))),
        "photos" => tree(wait(engine.photos(job, manner))),
        "why" => tree(wait(engine.why(of(step, "decision").unwrap_or_default(), manner))),
        "verify" => tree(wait(engine.verify(manner))),
        other => panic!("no screen {other}"),
    }
}

/// The actions of a screen.
fn actions(shop: &Shop, name: &str, step: &Value) -> Vec<ScreenAction> {
    let (engine, manner) = (&shop.engine, shop.manner);
    match name {
        "bay" => wait(engine.bay(of(step, "step"), of(step, "at"), manner)).unwrap().actions,
        "book" => wait(engine.book(String::new(), manner)).unwrap().actions,
        "crew" => wait(engine.crew(manner)).unwrap().actions,
        "vehicle" => wait(engine.vehicle(of(step, "vehicle").unwrap_or_default(), manner)).unwrap().actions,
        "plan" => wait(engine.plan(manner)).unwrap().actions,
        "log" => wait(engine.log(None, manner)).unwrap().actions,
        "bench" => wait(engine.bench(manner)).unwrap().actions,
        "settings" => wait(engine.settings(manner)).unwrap().actions,
        "first-run" => wait(engine.first_run(manner)).unwrap().actions,
        "backups" => wait(engine.backups(manner)).unwrap().actions,
        other => panic!("nothing is tapped on {other}"),
    }
}

/// What is written out, by its code.
fn outgoing(code: &str) -> Outgoing {
    match code {
        "card" => Outgoing::Card,
        "card-paper" => Outgoing::CardPaper,
        "history" => Outgoing::History,
        "readings" => Outgoing::Readings,
        "jobs" => Outgoing::Jobs,
        other => panic!("{other} is not written out here"),
    }
}

fn kind(why: &Refusal) -> &'static str {
    match why {
        Refusal::MendInput { .. } => "mend-input",
        Refusal::HeldByGate { .. } => "held-by-gate",
        Refusal::FreeSpace { .. } => "free-space",
        Refusal::TryAgain { .. } => "try-again",
        Refusal::Restore { .. } => "restore",
        Refusal::Report { .. } => "report",
        Refusal::Closed => "closed",
    }
}

fn check<T: serde::Serialize>(step: &Value, came: Result<T, Refusal>, at: &str) {
    match (step.get("refused"), came) {
        (Some(wanted), Err(why)) => {
            let found = json!({ "kind": kind(&why), "sentence": why.to_string() });
            assert_eq!(differs(wanted, &found, at), None);
        }
        (Some(_), Ok(came)) => panic!("{at}: not refused: {}", serde_json::to_string(&came).unwrap()),
        (None, Err(why)) => panic!("{at}: {why:?}"),
        (None, Ok(came)) => {
            let wanted = step.get("expect").cloned().unwrap_or(Value::Null);
            if !wanted.is_null() {
                let differs = differs(&wanted, &serde_json::to_value(came).unwrap(), at);
                assert!(differs.is_none(), "{}", differs.unwrap());
            }
        }
    }
}

fn tap(shop: &Shop, step: &Value, at: &str) -> Option<Result<Changed, Refusal>> {
    let code = text(step, "act").or(text(step, "start")).unwrap();
    let offered = actions(shop, text(step, "on").unwrap_or("bay"), step);
    let place = text(step, "at");
    let found = offered.iter().find(|action| action.code == code && (place.is_none() || action.at.as_deref() == place));
    let is_wanted = step.get("offered").and_then(Value::as_bool).unwrap_or(true);
    let codes: Vec<_> = offered.iter().map(|action| action.code.as_str()).collect();
    assert_eq!(found.is_some(), is_wanted, "{at}: {code} among {codes:?}");
    let action = found?;
    let entered = step.get("enter").and_then(Value::as_object).into_iter().flatten().map(|(code, value)| {
        let value = value.as_str().unwrap();
        let value = match value.strip_prefix("photo:").or(value.strip_prefix("folder:")) {
            Some(name) => shop.dir.path().join(name).to_str().unwrap().to_owned(),
            None => value.to_owned(),
        };
        Entered { code: code.clone(), value }
    });
    let entered: Vec<Entered> = entered.collect();
    if step.get("start").is_some() || action.pace == ActionPace::Long {
        // Work looks at the clock before its first piece, so that it is stopped there however quick it is.
        let held = shop.phone.held.lock().unwrap();
        let task = shop.engine.start(action.token.clone(), entered, shop.manner).unwrap();
        if step.get("cancel_at").is_some() {
            task.cancel().unwrap();
        }
        drop(held);
        return Some(wait(task.outcome()));
    }
    Some(wait(shop.engine.act(action.token.clone(), entered, shop.manner)))
}

fn walk(file: &Path) -> usize {
    let journey: Value = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
    let manner: Manner = serde_json::from_value(journey["manner"].clone()).unwrap();
    let mut shop = Shop::spoken(manner, journey["clock_ms"].as_i64().unwrap());
    let name = file.file_name().unwrap().to_str().unwrap();
    let steps = journey["steps"].as_array().unwrap();
    for (number, step) in steps.iter().enumerate() {
        let at = format!("{name} step {}", number + 1);
        if let Some(screen_name) = text(step, "screen") {
            check(step, screen(&shop, screen_name, step), &at);
        } else if text(step, "act").is_some() || text(step, "start").is_some() {
            if let Some(came) = tap(&shop, step, &at) {
                check(step, came, &at);
            }
        } else if let Some(manner) = step.get("manner") {
            shop.manner = serde_json::from_value(manner.clone()).unwrap();
        } else if step.get("reopen").is_some() {
            shop.reopen();
        } else if step.get("pause").is_some() {
            wait(shop.engine.pause(shop.manner)).unwrap();
        } else if step.get("resume").is_some() {
            wait(shop.engine.resume(shop.manner)).unwrap();
        } else if let Some(what) = text(step, "out") {
            let nothing = OutgoingOf { job: None, vehicle: None, person: None, photo: None, per_year: None, a4: false };
            let into = shop.dir.path().to_str().unwrap().to_owned();
            let file = wait(shop.engine.write_out(outgoing(what), nothing, into, shop.manner)).unwrap();
            let begins = text(step, "begins").unwrap().as_bytes();
            assert!(std::fs::read(&file).unwrap().starts_with(begins), "{at}: {file}");
        } else if let Some(folder) = text(step, "folder") {
            std::fs::create_dir_all(shop.dir.path().join(folder)).unwrap();
        } else if let Some(photo) = step.get("photo") {
            let size = |key: &str| u32::try_from(photo[key].as_u64().unwrap()).unwrap();
            let shade = u8::try_from(size("shade")).unwrap();
            let picture = image::GrayImage::from_pixel(size("width"), size("height"), image::Luma([shade]));
            picture.save(shop.dir.path().join(text(photo, "name").unwrap())).unwrap();
        } else {
            panic!("{at}: {step} is no step");
        }
    }
    steps.len()
}

#[test]
fn every_journey_goes_as_it_is_written() {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder()).unwrap().map(|file| file.unwrap().path()).collect();
    files.retain(|file| file.extension().is_some_and(|ext| ext == "json"));
    files.sort();
    assert!(files.len() >= 8, "{}", files.len());
    // Each is walked, so that all that is wrong is told in one run.
    let walked: Vec<_> = files.iter().map(|file| std::panic::catch_unwind(|| walk(file))).collect();
    assert!(walked.iter().all(Result::is_ok), "told above");
    let steps: usize = walked.into_iter().flatten().sum();
    println!("journeys: {} walked, {steps} steps", files.len());
}

#[test]
fn a_pattern_tells_where_it_differs() {
    let found = json!({ "a": [{ "b": 1.0 }, { "b": 2 }], "c": null });
    assert_eq!(differs(&json!({ "a": { "has": [{ "b": 2 }] }, "c": null }), &found, ""), None);
    assert_eq!(differs(&json!({ "a": { "count": 2 } }), &found, ""), None);
    for wrong in [
        json!({ "a": { "has": [{ "b": 3 }] } }),
        json!({ "a": { "count": 1 } }),
        json!({ "a": [{ "b": 1 }] }),
        json!({ "a": [{ "b": 1 }, { "b": 3 }] }),
        json!({ "c": 0 }),
        json!({ "d": null }),
    ] {
        assert!(differs(&wrong, &found, "").is_some(), "{wrong}");
    }
}
