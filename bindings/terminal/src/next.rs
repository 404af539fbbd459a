//! The one next thing to do, and the line to type for it.

use lugbook::engine::NextView;
use serde_json::{Value, json};

use crate::answer::Page;
use crate::tongue::say;

/// What to do when no job is open.
pub fn no_job() -> String {
    say("no-job", &[])
}

/// The next thing to do as data, with the line to type.
pub fn data(next: &NextView) -> Value {
    let mut data = serde_json::to_value(next).unwrap_or(Value::Null);
    if let Some(object) = data.as_object_mut() {
        object.insert("type".to_owned(), json!(line(next)));
    }
    data
}

/// The same keys when there is no job in the bay.
pub fn nothing() -> Value {
    json!({
        "job": null, "vehicle": null, "status": null, "hands": null, "step": null, "sentence": no_job(),
        "spoken": no_job(), "at": null, "asks": null, "choices": [], "gate": [], "caution": [],
        "van": null, "crew": [], "two": null, "answer_first": null, "seen_by": null, "coming": false, "shows": null, "may_skip": false,
        "nuts": null, "turn": null, "done": 0, "of": 0, "last": null, "type": null,
    })
}

/// Prints the next thing to do.
pub fn print(next: &NextView, page: &mut Page) {
    let place = next.at.as_ref().map(|at| format!("{at}  ")).unwrap_or_default();
    for caution in &next.caution {
        page.indented(&format!("{}  ", caution.signal.to_uppercase()), &caution.sentence);
    }
    page.indented(&format!("{}  {place}", say("next", &[])), &next.sentence);
    if let Some(turn) = &next.turn {
        page.indented("  ", &turn.detail);
    }
    if let Some(shows) = &next.shows {
        page.indented("  ", shows);
    }
    if let Some(van) = &next.van {
        page.indented("      ", van);
    }
    if let Some(two) = &next.two {
        page.indented("      ", two);
        let name = next.crew.first().map_or_else(|| say("sample-name", &[]), Clone::clone);
        page.push(&format!("  {}  lugbook second \"{name}\"", say("also", &[])));
    }
    if !next.gate.is_empty() {
        for wait in &next.gate {
            page.indented(&format!("  {} ", say("holds", &[])), wait);
        }
    }
    if let Some(nuts) = &next.nuts {
        let order = nuts.order.iter().map(u8::to_string).collect::<Vec<_>>().join(" ");
        page.indented(&format!("  {} ", say("order", &[])), &order);
        if let Some(target) = &nuts.target {
            page.indented(&format!("  {} ", say("wrench", &[])), &target.text);
        }
    }
    if !next.choices.is_empty() {
        let rows: Vec<_> = next.choices.iter().map(|(code, words)| vec![format!("  {code}"), words.clone()]).collect();
        page.table(&rows);
    }
    if let Some(line) = line(next) {
        page.push(&format!("{}  {line}", say("type", &[])));
    }
    if next.asks.as_deref() == Some("drive") {
        page.push(&format!("  {}  lugbook hub RL shaft", say("or", &[])));
    }
    if next.may_skip {
        page.push(&format!("  {}  lugbook skip \"{}\"", say("or", &[]), say("sample-reason", &[])));
    }
    page.gap();
    page.line(&say(
        "job-stands",
        &[
            ("job", next.job.to_string().into()),
            ("vehicle", next.vehicle.as_str().into()),
            ("done", next.done.to_string().into()),
            ("of", next.of.to_string().into()),
            ("hands", next.hands.as_str().into()),
        ],
    ));
}

/// The line to type for the next thing to do: a command and one value.
pub fn line(next: &NextView) -> Option<String> {
    if let Some(decision) = next.answer_first.as_deref() {
        return Some(format!("lugbook answer {decision} {}", say("sample-answer", &[])));
    }
    if let Some(name) = &next.seen_by {
        return Some(format!("lugbook instructor sign \"{name}\""));
    }
    let asks = next.asks.as_deref()?;
    let at = next.at.as_deref().unwrap_or("FL");
    let nut = || match next.nuts.as_ref().and_then(|nuts| nuts.next) {
        Some(nut) => format!("{at} {nut}"),
        None => at.to_owned(),
    };
    let coming = if next.coming { " --coming" } else { "" };
    Some(match asks {
        "seen" | "rocked" | "ready" => "lugbook seen".to_owned(),
        "equipment" => "lugbook vehicle has neither".to_owned(),
        "weigh" => "lugbook weigh \"5200 lb\" --rated \"3 t\"".to_owned(),
        "loosened" => format!("lugbook loosen {}", nut()),
        "choice" => format!("lugbook choose {}", next.choices.first().map_or("", |(code, _)| code.as_str())),
        "count" => "lugbook count 0".to_owned(),
        "studs" => "lugbook count 6".to_owned(),
        "damage" => "lugbook damage none".to_owned(),
        "approval" => "lugbook approve".to_owned(),
        "odometer" => "lugbook odometer \"48210 mi\"".to_owned(),
        "placard" => format!("lugbook shelf placard \"35 psi\" \"35 psi\" --source \"{}\"", say("sample-label", &[])),
        "torque" => format!("lugbook shelf torque \"125..150 N.m\" --source \"{}\"", say("sample-page", &[])),
        "drive" => format!("lugbook shelf drive rear --source \"{}\"", say("sample-page", &[])),
        "sidewall-photo" => format!("lugbook photo sidewall {} {at}", say("sample-file", &[])),
        "sidewall" => format!("lugbook wall {at} \"225/45R17 91W\"{coming}"),
        "mark" => format!("lugbook chalk {at}{coming}"),
        "tread" => format!("lugbook tread {at} \"7 6 7 /32\"{coming}"),
        "set" => "lugbook set stored".to_owned(),
        "stored" => format!("lugbook store \"{}\"", say("sample-rack", &[])),
        "plan" => "lugbook plan choose 1".to_owned(),
        "wheels" => "lugbook wheels RL RR".to_owned(),
        "spare" => format!("lugbook spare {at} \"T125/70D16 96M\" --limit \"50 mph\""),
        "vehicle-photo" => format!("lugbook photo vehicle {}", say("sample-file", &[])),
        "flat-photo" => format!("lugbook photo damage {}", say("sample-file", &[])),
        "cracked" => format!("lugbook crack {at}"),
        "raised-clear" => "lugbook raise clear".to_owned(),
        "raised-full" => "lugbook raise full".to_owned(),
        "held" => "lugbook held".to_owned(),
        "wheel-off" => format!("lugbook off {at}"),
        "looks" => format!("lugbook look {at} sound"),
        "mark-read" => format!("lugbook hang {at} {}", say("sample-mark", &[])),
        "started" => format!("lugbook start {}", nut()),
        "snug" => format!("lugbook snug {}", nut()),
        "all-clear" => "lugbook clear-under".to_owned(),
        "lowered" => "lugbook lower".to_owned(),
        "final" => format!("lugbook torque {} moved", nut()),
        "rechecked" => format!("lugbook recheck {} still", nut()),
        "pressure-found" => format!("lugbook air {at} \"33 psi\" --found"),
        "pressure" => format!("lugbook air {at} \"35 psi\""),
        "finding-photo" => format!("lugbook photo damage FILE {at}"),
        "lamp-before" => "lugbook lamp off".to_owned(),
        "lamp" => "lugbook lamp off".to_owned(),
        "recheck" => "lugbook tell-recheck".to_owned(),
        "signature" => "lugbook job sign".to_owned(),
        _ => return None,
    })
}
