//! Signatures drawn with a finger: what is drawn is kept, and what is no signature is refused at its field.

use lugbook_phone::{FieldKind, Refusal};

use super::{ENGLISH, Shop, played, wait};

const DRAWN: &str = "100,800 300,200 500,800;700,300";

#[test]
fn who_approves_draws_and_who_works_draws_and_both_stand_on_the_card() {
    let shop = Shop::new().with_car();
    played::open(&shop, "gray wagon", "rotation-on-a-lift");
    played::play(&shop, "approval");
    let bay = shop.bay();
    let approve = bay.iter().find(|action| action.code == "approve").unwrap();
    let kinds: Vec<_> = approve.fields.iter().map(|field| (field.code.as_str(), field.kind, field.required)).collect();
    assert_eq!(kinds, [("by", FieldKind::Text, false), ("drawn", FieldKind::Drawn, false)]);

    let refused = |values: &[(&str, &str)], at: &str, words: &str| match shop.tap(approve, values) {
        Err(Refusal::MendInput { sentence, at: place }) => {
            assert_eq!(place.as_deref(), Some(at), "{values:?}");
            assert!(sentence.contains(words), "{sentence}");
        }
        other => panic!("{values:?}: {other:?}"),
    };
    refused(&[("drawn", DRAWN)], "by", "whose");
    for bad in ["500,500", "1,2 3,4000", "1,2 3", "1;2"] {
        refused(&[("by", "Odo Brandt"), ("drawn", bad)], "drawn", "can’t be read");
    }
    refused(&[("by", "Odo Brandt"), ("drawn", &"1,2 3,4;".repeat(61))], "drawn", "too many");
    shop.tap(approve, &[("by", "Odo Brandt"), ("drawn", DRAWN)]).unwrap();

    played::play(&shop, "signature");
    let log = wait(shop.engine.log(None, ENGLISH)).unwrap().lines;
    assert!(log.iter().any(|line| line.sentence == "Approved by a drawn signature: work, by Odo Brandt."));
    shop.tap_on(&shop.bay(), "sign", &[("drawn", "0,0 1000,1000")]);
    let card = wait(shop.engine.card(None, ENGLISH)).unwrap();
    for whole in [
        "Drawn signature: Odo Brandt",
        "d=\"M300 800L900 200L1500 800M2100 300L2100 300\"",
        "Drawn signature: Ana",
        "d=\"M0 0L3000 1000\"",
        "Signed by a drawn signature: Ana",
        "Signed by a drawn signature, and sealed by device ",
    ] {
        assert!(card.contains(whole), "{whole}");
    }
}
