//! The wheels that readings are scored on.

use ::renderer::faces::{HELD_OUT, TUNING};
use ::renderer::wheels::{Set, Styles, Truth, wheel};

use crate::skipped::skipped;

/// The styles of a set, or `None` where a typeface is missing: then the caller's part is skipped, loudly.
fn styles(set: Set) -> Option<Styles> {
    Styles::load(set).map_err(|missing| skipped(&format!("drawn wheels: {missing}"))).ok()
}

#[test]
fn no_face_of_the_held_out_set_is_tuned_on() {
    assert!(HELD_OUT.iter().all(|held| TUNING.iter().all(|tuned| tuned.file != held.file)));
    let licensed = |face: &::renderer::faces::Face| !face.license.is_empty() && face.package.starts_with("fonts-");
    assert!(TUNING.iter().chain(&HELD_OUT).all(licensed));
}

#[test]
fn a_wheel_is_the_same_again_and_another_in_the_other_set() {
    let (Some(tuning), Some(held)) = (styles(Set::Tuning), styles(Set::HeldOut)) else { return };
    let draw = |styles: &Styles| wheel(styles, 5).0.render(160, 160);
    assert_eq!(draw(&tuning), draw(&tuning));
    assert_ne!(draw(&tuning), draw(&held));
    assert_ne!(wheel(&tuning, 5).1, wheel(&held, 5).1);
}

#[test]
fn a_third_of_the_wheels_is_hard_in_each_of_four_ways_and_all_truths_are_sound() {
    let Some(styles) = styles(Set::HeldOut) else { return };
    let truths: Vec<Truth> = (0..300).map(|number| wheel(&styles, number).1).collect();
    assert_eq!(truths.iter().filter(|truth| truth.kind == "hard").count(), 100);
    for why in ["tilt", "dirt", "low-light", "half-hidden"] {
        assert!(truths.iter().any(|truth| truth.why.contains(&why)), "{why}");
    }
    for truth in &truths {
        let marking = format!("{} {}", truth.size, truth.service);
        let read = lugbook::sidewall::parse(&marking);
        assert!(read.size.is_some() && read.service.is_some() && read.problems.is_empty(), "{marking}: {read:?}");
        assert!(truth.tin_body.chars().all(|symbol| !"GIOQSZ".contains(symbol)), "{truth:?}");
        assert!(!truth.why.contains(&"half-hidden") || truth.tin_body.is_empty(), "{truth:?}");
    }
    for some in [|t: &Truth| !t.date.is_empty(), |t: &Truth| t.words == "ROTATION", |t: &Truth| !t.chalk.is_empty()] {
        assert!(truths.iter().any(some) && !truths.iter().all(some));
    }
}
