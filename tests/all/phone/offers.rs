//! What screens offer: every command can be said by some screen, and each label is a sentence of its language.

use std::collections::BTreeSet;

use lugbook_phone::{FieldKind, Language, Manner, PositionLetters, ScreenAction, UnitSystem};

use super::{ENGLISH, Shop, wait};

/// Every action of every screen that has some.
fn everything(shop: &Shop) -> Vec<ScreenAction> {
    let manner = shop.manner;
    let mut all = shop.bay();
    all.extend(wait(shop.engine.book(String::new(), manner)).unwrap().actions);
    all.extend(wait(shop.engine.crew(manner)).unwrap().actions);
    all.extend(wait(shop.engine.first_run(manner)).unwrap().actions);
    all.extend(wait(shop.engine.bench(manner)).unwrap().actions);
    all.extend(wait(shop.engine.settings(manner)).unwrap().actions);
    all.extend(wait(shop.engine.backups(manner)).unwrap().actions);
    if let Ok(log) = wait(shop.engine.log(None, manner)) {
        all.extend(log.actions);
    }
    if let Ok(vehicle) = wait(shop.engine.vehicle("gray wagon".to_owned(), manner)) {
        all.extend(vehicle.actions);
    }
    all
}

#[test]
fn each_offer_has_a_token_of_its_own_and_words_in_its_language() {
    let spanish = Manner {
        language: Language::Spanish,
        units: UnitSystem::Metric,
        letters: PositionLetters::FrontFirst,
        decimal: None,
    };
    for manner in [ENGLISH, spanish] {
        let shop = Shop::spoken(manner, super::MORNING_MS).with_car();
        super::played::up_to_the_nuts(&shop);
        let all = everything(&shop);
        let tokens: BTreeSet<_> = all.iter().map(|action| &action.token).collect();
        assert_eq!(tokens.len(), all.len(), "a token stands for one thing");
        for action in &all {
            let told = [&action.label, &action.spoken].into_iter().chain(&action.confirm);
            let fields = action.fields.iter().flat_map(|field| {
                [&field.label, &field.spoken].into_iter().chain(field.choices.iter().flat_map(|c| [&c.text, &c.spoken]))
            });
            for text in told.chain(fields) {
                let unworded = ["do-", "field-", "confirm-", "tire-", "unit-", "axle-", "power-", "region-"];
                assert!(!text.trim().is_empty(), "{action:?}");
                assert!(!unworded.iter().any(|id| text.starts_with(id)), "{text} in {}", action.code);
            }
            for field in &action.fields {
                let chosen = matches!(field.kind, FieldKind::One | FieldKind::Several | FieldKind::YesNo);
                assert_eq!(chosen, !field.choices.is_empty(), "{} {field:?}", action.code);
                let measured = field.unit.is_some();
                assert_eq!(measured, field.least.is_some() && !field.units.is_empty(), "{} {field:?}", action.code);
            }
        }
    }
}

#[test]
fn fields_of_readings_have_the_unit_and_the_bounds_that_the_person_works_in() {
    let shop = Shop::new().with_car();
    super::played::open(&shop, "gray wagon", "tread-and-age-check");
    super::played::play(&shop, "tread");
    let field = |units| {
        let manner = Manner { units, ..ENGLISH };
        let actions = wait(shop.engine.bay(None, None, manner)).unwrap().actions;
        let tread = actions.into_iter().find(|action| action.code == "tread").unwrap();
        tread.fields.into_iter().find(|field| field.code == "depths").unwrap()
    };
    // 50 mm is the deepest that is taken: 50 / 0.79375 thirty-seconds (25.4 mm to the inch, exact).
    let us = field(UnitSystem::Us);
    assert_eq!(us.unit.as_deref(), Some("1/32in"));
    assert!((us.most.unwrap() - 62.992_125_984).abs() < 1e-6);
    let metric = field(UnitSystem::Metric);
    assert_eq!((metric.unit.as_deref(), metric.least, metric.most), (Some("mm"), Some(0.0), Some(50.0)));
    assert_eq!(metric.grooves.len(), 3);
    assert_eq!(metric.grooves[0].label, "outer groove");
}

#[test]
fn a_held_step_offers_what_meets_its_gate_and_to_open_it_with_a_reason() {
    let shop = Shop::new().with_car();
    super::played::open(&shop, "gray wagon", "rotation-on-a-lift");
    super::played::play(&shop, "approval");
    let bay = shop.bay();
    shop.tap_on(&bay, "decline", &[]);
    // It is asked again, and what the work needs it for is held.
    assert!(shop.bay().iter().any(|action| action.code == "approve"));
    let held = wait(shop.engine.bay(Some("clear".to_owned()), None, ENGLISH)).unwrap();
    let step = held.step.unwrap();
    assert_eq!(step.state, "held", "{step:?}");
    let codes: Vec<_> = held.actions.iter().map(|action| action.code.as_str()).collect();
    assert!(codes.contains(&"approve") && !codes.contains(&"raise-clear"), "{codes:?}");
    let open = held.actions.iter().find(|action| action.code == "open-gate").unwrap();
    assert!(open.confirm.is_some() && open.fields[0].required);
}

#[test]
fn undo_comes_back_to_the_filled_step() {
    let shop = Shop::new().with_car();
    super::played::open(&shop, "gray wagon", "tread-and-age-check");
    super::played::play(&shop, "tread");
    let bay = shop.bay();
    shop.tap_on(&bay, "tread", &[("depths", "6 7 6 /32")]);
    let again = shop.tap_on(&shop.bay(), "undo", &[]).again.unwrap();
    assert_eq!((again.code.as_str(), again.at.as_deref()), ("tread", Some("FL")));
    let depths = again.filled.iter().find(|field| field.code == "depths").unwrap();
    assert_eq!(depths.value, "6 7 6 /32");
}

#[test]
fn settings_stay_and_forget_a_person_who_was_erased() {
    let mut shop = Shop::new().with_car();
    let settings = wait(shop.engine.settings(ENGLISH)).unwrap();
    assert_eq!(settings.settings.speech, None, "nobody chose yet");
    shop.tap_on(
        &settings.actions,
        "settings",
        &[("language", "es"), ("hand", "left"), ("me", "Ana"), ("stays-on", "yes")],
    );
    shop.reopen();
    let kept = wait(shop.engine.settings(ENGLISH)).unwrap();
    assert_eq!(kept.settings.speech.map(|speech| speech.language), Some(Language::Spanish));
    assert_eq!(kept.settings.hand, lugbook_phone::HoldingHand::Left);
    assert!(kept.settings.stays_on);
    assert_eq!(kept.settings.person.as_deref(), Some("Ana"));
    let crew = wait(shop.engine.crew(ENGLISH)).unwrap();
    shop.tap_on(&crew.actions, "erase-person", &[("person", "Ana")]);
    assert_eq!(wait(shop.engine.settings(ENGLISH)).unwrap().settings.person, None);
    let beside = std::fs::read_to_string(shop.dir.path().join("book/book.settings")).unwrap();
    assert!(!beside.contains("Ana"), "{beside}");
}
