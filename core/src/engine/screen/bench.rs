//! The bench: calculators that need no job.

use serde::Serialize;
use serde_json::{Map, Value};

use super::form::{FieldKind, Form, Slot, choice};
use super::offer::{Action, Deed, Offer, Offers, Weight, Where};
use crate::engine::trouble::clipped;
use crate::engine::{Engine, Trouble};
use crate::fastener::{self, Bar, Printed, TorqueSpec, Wrench};
use crate::fastening;
use crate::ident::Digest;
use crate::inflation::{self, Ask, Fitted, Warmth};
use crate::measure::{
    DistanceUnit, Load, LoadUnit, Pressure, PressureUnit, Span, SpanUnit, Speed, SpeedUnit, Temperature,
    TemperatureUnit, Torque, TorqueUnit,
};
use crate::sidewall::{self, Marking};
use crate::vehicle::{Class, Place};
use crate::words::{Say, Speech, Units, Worded, Words};

/// The calculators.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BenchScreen {
    /// What holds for all of them.
    pub notes: Vec<String>,
    /// One for each calculator.
    pub actions: Vec<Action>,
}

impl Engine {
    /// The bench.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn bench_screen(&self, speech: Speech) -> Result<BenchScreen, Trouble> {
        let words = Words::new(speech);
        let notes = vec![words.text("bench-note", &[])];
        Ok(BenchScreen { notes, actions: self.actions(&Where::Bench, &words)? })
    }

    pub(super) fn bench_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let nowhere = |_: Place| (String::new(), String::new());
        let mut offers = Offers::new(words, &Where::Bench, head, &nowhere);
        let text = |code: &str| Slot::text(words, code, FieldKind::Text);
        let marking = Form::of("read-marking").ask(text("text").required());
        offers.deed("read-marking", Weight::Beside, Deed::ReadMarking, marking);
        let sizes = Form::of("compare-sizes").ask(text("first-size").required()).ask(text("second-size").required());
        offers.deed("compare-sizes", Weight::Beside, Deed::CompareSizes, sizes);
        let torque = |code: &str| Slot::reading::<TorqueUnit>(words, code, FieldKind::Reading, None);
        let wrench = Form::of("set-wrench")
            .ask(Slot::reading::<TorqueUnit>(words, "printed", FieldKind::Lines, None).list().required())
            .ask(Slot::count(words, "studs", 3, 12).required())
            .ask(text("accuracy").required())
            .ask(torque("scale-step").required())
            .ask(torque("bar"));
        offers.deed("set-wrench", Weight::Beside, Deed::SetWrench, wrench);
        let pressure = |code: &str| Slot::reading::<PressureUnit>(words, code, FieldKind::Reading, None);
        let air = |code: &str| Slot::reading::<TemperatureUnit>(words, code, FieldKind::Reading, None);
        let warmth = ["cold", "warm", "not-known"];
        let warmth = warmth.map(|code| (choice(code, words.text(&format!("warmth-{code}"), &[])), Value::from(code)));
        let set = Form::of("set-pressure")
            .ask(pressure("placard"))
            .ask(air("shop").required())
            .ask(air("outside"))
            .ask(pressure("sidewall-max"))
            .ask(pressure("found"))
            .ask(Slot::one(words, "warmth", warmth.to_vec()).filled(Some("not-known")));
        offers.deed("set-pressure", Weight::Beside, Deed::SetPressure, set);
        offers.made()
    }

    /// What a calculator answers, in sentences.
    pub(super) fn reckon(&self, deed: Deed, data: &Map<String, Value>, words: &Words) -> Result<Vec<String>, Trouble> {
        let text = |key: &str| data.get(key).and_then(Value::as_str);
        match deed {
            Deed::ReadMarking => self.read_marking(text("text").unwrap_or_default(), words),
            Deed::CompareSizes => {
                compare(text("first_size").unwrap_or_default(), text("second_size").unwrap_or_default(), words)
            }
            Deed::SetWrench => set_wrench(data, words),
            _ => set_pressure(data, words),
        }
    }

    fn read_marking(&self, text: &str, words: &Words) -> Result<Vec<String>, Trouble> {
        let marking = read(text, words)?;
        let view = sidewall::Answer::of(&marking);
        let mut said = Vec::new();
        let mut line = |id: &str, value: Option<String>| {
            said.extend(value.map(|value| words.text(id, &[("value", value.into())])));
        };
        let span = |mm: f64| Some(words.computed(&Span::new((mm * 10.0).round() / 10.0, SpanUnit::Millimetre).ok()?));
        if let Some(size) = &view.size {
            line("marking-size", Some(size.text.clone()));
            line("marking-diameter", size.overall_diameter_mm.and_then(span));
        }
        if let Some(service) = &view.service {
            let load = service.load_kg.and_then(|kg| Load::new(kg, LoadUnit::Kilogram).ok());
            line("marking-load", load.map(|load| words.computed(&load)));
            let speed = service.max_kmh.and_then(|kmh| Speed::new(kmh.into(), SpeedUnit::KilometrePerHour).ok());
            line("marking-speed", speed.map(|speed| words.computed(&speed)));
        }
        line("marking-made", marking.tin.as_ref().map(|tin| words.tin_age(tin, self.host.now().day())));
        said.extend(marking.problems.iter().map(|problem| problem.say(words)));
        if said.is_empty() {
            return Err(Trouble::mend(words, "trouble-no-marking", &[("given", clipped(text).into())]));
        }
        Ok(said)
    }
}

fn read(text: &str, words: &Words) -> Result<Marking, Trouble> {
    let marking = sidewall::parse(text);
    match Trouble::of_marking(text, &marking, words) {
        Some(trouble) => Err(trouble),
        None => Ok(marking),
    }
}

fn compare(first: &str, second: &str, words: &Words) -> Result<Vec<String>, Trouble> {
    let sized = |text: &str| {
        let marking = read(text, words)?;
        match marking.size {
            Some(_) => Ok(marking),
            None => Err(Trouble::mend(words, "trouble-no-size", &[("given", clipped(text).into())])),
        }
    };
    let change = sidewall::equivalence(&sized(first)?, &sized(second)?);
    let mut said = Vec::new();
    if let Some(percent) = change.difference_percent {
        said.push(words.text("sizes-difference", &[("percent", words.number(percent, 2).into())]));
    }
    if let Some(speed) = change.speedometer {
        said.push(words.text("sizes-speed", &[("speed", words.number(speed, 1).into())]));
    }
    said.extend(change.findings.iter().map(|finding| finding.say(words)));
    Ok(said)
}

/// A reading that was entered, or none.
fn reading<U: Worded>(
    data: &Map<String, Value>,
    key: &str,
    words: &Words,
) -> Result<Option<crate::measure::Reading<U>>, Trouble> {
    let text = data.get(key).and_then(Value::as_str);
    let read = text.map(|text| {
        let parsed = crate::measure::Reading::parse(text, None);
        parsed.map_err(|why| Trouble::said(words.misread::<U>(text, &why)).at(key.replace('_', "-")))
    });
    read.transpose()
}

fn set_wrench(data: &Map<String, Value>, words: &Words) -> Result<Vec<String>, Trouble> {
    let printed = data.get("printed").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str);
    let printed = printed.map(|text| {
        let parsed: Result<Printed, _> = text.parse();
        parsed.map_err(|_| Trouble::mend(words, "trouble-torque", &[("given", clipped(text).into())]).at("printed"))
    });
    let spec = TorqueSpec::printed(printed.collect::<Result<Vec<_>, _>>()?);
    let accuracy = data.get("accuracy").and_then(Value::as_str).unwrap_or_default();
    let percent = fastener::accuracy_of(accuracy)
        .map_err(|_| Trouble::mend(words, "trouble-accuracy", &[("given", clipped(accuracy).into())]).at("accuracy"))?;
    let step: Option<Torque> = reading(data, "scale_step", words)?;
    let step = step.ok_or_else(|| Trouble::mend(words, "trouble-form", &[]))?;
    let wrench = Wrench::new(percent, step);
    let studs =
        data.get("studs").and_then(Value::as_u64).and_then(|studs| u8::try_from(studs).ok()).unwrap_or_default();
    let bar = reading::<TorqueUnit>(data, "bar", words)?.map(Bar::new);
    let mut request = fastening::Request::new(&spec, &wrench, studs);
    request.bar = bar.as_ref();
    if words.speech().units == Units::Metric {
        request.distance = DistanceUnit::Kilometre;
    }
    let plan = fastening::plan(&request).map_err(|stop| Trouble::said(stop.say(words)))?;
    let mut said = words.tightening(&plan);
    said.extend(plan.passes.iter().map(|pass| pass.say(words)));
    said.extend(plan.bar.as_ref().map(|bar| bar.say(words)));
    said.extend(plan.recheck.iter().map(|recheck| recheck.say(words)));
    said.extend(plan.cautions.iter().map(|caution| words.tightening_caution(caution, plan.target.unit())));
    Ok(said)
}

fn set_pressure(data: &Map<String, Value>, words: &Words) -> Result<Vec<String>, Trouble> {
    let pressure = |key: &str| -> Result<Option<Pressure>, Trouble> { reading(data, key, words) };
    let air = |key: &str| -> Result<Option<Temperature>, Trouble> { reading(data, key, words) };
    let shop = air("shop")?.ok_or_else(|| Trouble::mend(words, "trouble-form", &[]))?;
    let ask = Ask {
        placard: pressure("placard")?,
        sidewall_max: pressure("sidewall_max")?,
        shop,
        outside: air("outside")?,
        found: pressure("found")?,
        warmth: match data.get("warmth").and_then(Value::as_str) {
            Some("cold") => Warmth::Cold,
            Some("warm") => Warmth::Warm,
            _ => Warmth::NotKnown,
        },
        fitted: Fitted::NotCompared,
        class: Class::Car,
        inspected: false,
        step: None,
    };
    let unit = ask.placard.or(ask.found).map_or(PressureUnit::Psi, |reading| reading.unit());
    let setting =
        inflation::cold_setting(&ask).map_err(|why| Trouble::said(words.misread::<PressureUnit>("", &why)))?;
    let mut said = vec![setting.say(words)];
    said.extend(setting.findings.iter().map(|finding| words.inflation_finding(finding, unit)));
    Ok(said)
}
