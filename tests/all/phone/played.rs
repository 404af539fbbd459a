//! Whole visits by taps alone: what each screen offers is enough to come to a signature.

use lugbook_phone::{
    ActionWeight, BayScreen, EntryField, FieldKind, Language, Manner, PositionLetters, ScreenAction, StepView,
    UnitSystem,
};

use super::{ENGLISH, MORNING_MS, Shop, wait};

/// What a person enters in a field; nothing where it may stay empty.
fn entered(shop: &Shop, step: &StepView, field: &EntryField) -> Option<String> {
    let text = |text: &str| Some(text.to_owned());
    if !field.required {
        return None;
    }
    match (field.code.as_str(), field.kind) {
        ("weight", _) => text("3200 lb"),
        ("rating", _) => text("4 t"),
        ("printed", _) => text("125..150 N.m"),
        ("axles", _) => text("35\n35"),
        ("depths", _) => text("7 7 7 /32"),
        ("pressure", _) => text("35 psi"),
        ("reading", _) => text("48210 mi"),
        ("around", _) => text("126 in"),
        ("text", _) if step.asks == "spare" => text("T125/70D16 96M"),
        ("text", _) => text("225/45R17 91W"),
        ("studs", _) => text("5"),
        ("count", _) if step.step == "studs" => text("5"),
        ("count", _) => text("0"),
        ("plan", _) => text("1"),
        ("flat", _) => text("RL"),
        ("drive", _) => text("front"),
        ("wheels", _) => Some(field.choices.iter().map(|choice| choice.code.clone()).collect::<Vec<_>>().join(" ")),
        (_, FieldKind::Photo) => {
            let file = shop.dir.path().join(format!("{}-{}.png", step.step, step.at.as_deref().unwrap_or_default()));
            let shade = step.sentence.len() + step.at.as_deref().map_or(0, str::len);
            image::GrayImage::from_pixel(320, 240, image::Luma([u8::try_from(shade % 200).unwrap()]))
                .save(&file)
                .unwrap();
            text(file.to_str().unwrap())
        }
        (_, FieldKind::One) => field.choices.first().map(|choice| choice.code.clone()),
        _ => text("manual, page 12"),
    }
}

fn fill(shop: &Shop, step: &StepView, action: &ScreenAction) -> Vec<(String, String)> {
    let filled = action.fields.iter().filter_map(|field| Some((field.code.clone(), entered(shop, step, field)?)));
    filled.collect()
}

/// The tap that goes on: mostly the main one.
fn tap_of<'a>(bay: &'a BayScreen, step: &StepView) -> &'a ScreenAction {
    let coded = |code: &str| bay.actions.iter().find(|action| action.code.starts_with(code));
    let chosen = match step.asks.as_str() {
        // What lies beside the main one is tapped, so that both are seen to work.
        "drive" => coded("drive-from-manual"),
        "cracked" | "started" | "snug" | "loosened" => coded("nuts"),
        "final" => coded("nuts-moved"),
        "rechecked" => coded("nuts-still"),
        "set" => coded("stored-set").or(coded("new-set")),
        _ => None,
    };
    let main = bay.actions.iter().find(|action| action.weight == ActionWeight::Main && action.code != "share-wheels");
    chosen.or(main).unwrap_or_else(|| {
        let codes: Vec<_> = bay.actions.iter().map(|action| &action.code).collect();
        panic!("{} {:?} {:?}: nothing to tap among {codes:?}; gate {:?}", step.step, step.at, step.asks, step.gate)
    })
}

/// Taps through a job until a step of this kind is in hand, or all are over. Gives back how many taps.
pub fn play(shop: &Shop, until: &str) -> usize {
    for taps in 0.. {
        assert!(taps < 600, "it never comes to an end");
        let bay = wait(shop.engine.bay(None, None, shop.manner)).unwrap();
        let Some(step) = &bay.step else { return taps };
        if step.asks == until {
            return taps;
        }
        let action = tap_of(&bay, step);
        let filled = fill(shop, step, action);
        let values: Vec<(&str, &str)> = filled.iter().map(|(code, value)| (code.as_str(), value.as_str())).collect();
        if step.asks == "mark-read" {
            // The mark that hangs there is the one that is not refused.
            let marks = action.fields.iter().find(|field| field.code == "mark-read").unwrap();
            let fits = |mark: &&lugbook_phone::FieldChoice| shop.tap(action, &[("mark-read", &mark.code)]).is_ok();
            assert!(marks.choices.iter().any(|mark| fits(&mark)), "{step:?}");
            continue;
        }
        shop.tap(action, &values).unwrap_or_else(|why| {
            panic!("{} {:?} by {} {values:?}: {why:?}\ngate {:?}", step.step, step.at, action.code, step.gate)
        });
    }
    unreachable!()
}

/// Opens a visit with the first choice of everything that it leaves to be settled.
pub fn open(shop: &Shop, vehicle: &str, procedure: &str) {
    let actions = shop.vehicle(vehicle);
    let code = format!("open-{procedure}");
    let open = actions.iter().find(|action| action.code == code).unwrap_or_else(|| panic!("no {code}"));
    let settled: Vec<(&str, &str)> = open
        .fields
        .iter()
        .filter(|field| field.required)
        .map(|field| (field.code.as_str(), field.choices.last().unwrap().code.as_str()))
        .collect();
    shop.tap(open, &settled).unwrap();
}

pub fn up_to_the_plan(shop: &Shop) {
    open(shop, "gray wagon", "rotation-on-a-lift");
    play(shop, "plan");
}

pub fn up_to_the_nuts(shop: &Shop) {
    open(shop, "gray wagon", "rotation-on-a-lift");
    play(shop, "started");
}

fn shop_with(vehicle: &[(&str, &str)], manner: Manner) -> Shop {
    let shop = Shop::spoken(manner, MORNING_MS);
    let first = wait(shop.engine.first_run(manner)).unwrap().actions;
    shop.tap_on(&first, "add-person", &[("name", "Ana"), ("role", "mechanic")]);
    let book = wait(shop.engine.book(String::new(), manner)).unwrap().actions;
    shop.tap_on(&book, "add-wrench", &[("name", "long wrench"), ("accuracy", "4 %"), ("scale-step", "5 N.m")]);
    let book = wait(shop.engine.book(String::new(), manner)).unwrap().actions;
    shop.tap_on(&book, "add-vehicle", vehicle);
    shop
}

const CAR: &[(&str, &str)] = &[("name", "unit"), ("model", "Sample 2019"), ("class", "car"), ("spare-carried", "yes")];
const TRUCK: &[(&str, &str)] =
    &[("name", "unit"), ("model", "Sample 2015"), ("class", "truck"), ("axle-1", "single"), ("axle-2", "dual")];
const TRAILER: &[(&str, &str)] =
    &[("name", "unit"), ("model", "Sample 2012"), ("class", "trailer"), ("axle-1", "dual"), ("axle-2", "single")];

#[test]
fn every_procedure_comes_to_a_signature_by_taps_in_both_languages() {
    let spanish = Manner {
        language: Language::Spanish,
        units: UnitSystem::Metric,
        letters: PositionLetters::SideFirst,
        decimal: None,
    };
    let mut played = 0;
    for procedure in lugbook::procedure::built_in().unwrap() {
        let fits = |kind: lugbook::caution::Circumstance| procedure.fits.contains(&kind);
        use lugbook::caution::Circumstance::{Duals, Towed};
        let vehicle = if fits(Duals) {
            TRUCK
        } else if fits(Towed) {
            TRAILER
        } else {
            CAR
        };
        for manner in [ENGLISH, spanish] {
            let mut shop = shop_with(vehicle, manner);
            open(&shop, "unit", &procedure.id);
            let taps = play(&shop, "");
            assert!(taps > 5, "{}", procedure.id);
            let job = wait(shop.engine.book(String::new(), manner)).unwrap().jobs.remove(0);
            assert_eq!(job.status, lugbook_phone::JobStatus::Signed, "{}", procedure.id);
            let card = wait(shop.engine.card(None, manner)).unwrap();
            shop.reopen();
            assert_eq!(wait(shop.engine.card(None, manner)).unwrap(), card, "{}", procedure.id);
            played += 1;
        }
    }
    assert_eq!(played, 22);
}
