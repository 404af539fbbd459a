//! The demo's photos are what the renderer draws, and what a phone would have made.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use ::renderer::{self as drawn, Rotation, Sidewall, View, demo};
use image::RgbImage;
use lugbook::calendar::Moment;
use lugbook::photos::{Photos, Rendition};

fn demo_folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../bindings/terminal/demo")
}

fn decoded(jpeg: &[u8]) -> RgbImage {
    let mut decoder = jpeg_decoder::Decoder::new(jpeg);
    let pixels = decoder.decode().unwrap();
    let info = decoder.info().unwrap();
    RgbImage::from_raw(info.width.into(), info.height.into(), pixels).unwrap()
}

/// Sines and roots may differ in their last digit between systems, so pixels are compared, closely, and not bytes.
#[test]
fn the_demos_photos_are_what_the_renderer_draws() {
    let renew = std::env::var_os("LUGBOOK_RENEW").is_some();
    for photo in demo::photos() {
        let path = demo_folder().join(photo.name);
        let drawn = photo.file();
        if renew {
            fs::write(&path, &drawn).unwrap();
        }
        let kept = fs::read(&path).unwrap();
        if kept == drawn {
            continue;
        }
        let (kept, drawn) = (decoded(&kept), decoded(&drawn));
        assert_eq!(kept.dimensions(), drawn.dimensions(), "{}", photo.name);
        let differences = kept.as_raw().iter().zip(drawn.as_raw()).map(|(&a, &b)| u64::from(a.abs_diff(b)));
        let (sum, far) = differences.fold((0, 0), |(sum, far), d| (sum + d, far + usize::from(d > 16)));
        let all = kept.as_raw().len();
        assert!(sum < all as u64 / 4, "{}: differs by {sum} over {all}", photo.name);
        assert!(far < all / 2_000, "{}: {far} of {all} differ much", photo.name);
    }
}

#[test]
fn the_demos_photos_are_small_noted_and_good() {
    let folder = tempfile::tempdir().unwrap();
    let photos = Photos::open(folder.path()).unwrap();
    let mut times = Vec::new();
    let mut orientations = BTreeSet::new();
    for photo in demo::photos() {
        let path = demo_folder().join(photo.name);
        let taken_in = photos.intake_file(&path, Moment::from_unix_ms(0)).unwrap();
        assert!(taken_in.bytes <= 250_000, "{} has {} bytes", photo.name, taken_in.bytes);
        assert!(!taken_in.duplicate && taken_in.judgement.is_good(), "{}: {:?}", photo.name, taken_in.judgement);
        assert_eq!(taken_in.orientation.value(), photo.note.orientation);
        let taken = taken_in.taken.unwrap();
        assert_eq!((taken.day.to_string().as_str(), taken.offset_minutes), ("2026-05-04", Some(-7 * 60)));
        times.push((taken.hour, taken.minute, taken.second));
        orientations.insert(taken_in.orientation.value());
        let bytes = photos.read(taken_in.id, Rendition::Original).unwrap();
        let file: &[u8] = &bytes;
        assert!(file.windows(photo.note.model.len()).any(|part| part == photo.note.model.as_bytes()));
    }
    assert!(times.is_sorted(), "{times:?}");
    assert!(orientations.len() >= 3, "held in different ways");
}

/// The share of pixels that two pictures don't have in common.
fn unlike(a: &RgbImage, b: &RgbImage) -> f64 {
    let far = a.pixels().zip(b.pixels()).filter(|(a, b)| a.0.iter().zip(b.0).any(|(&a, b)| a.abs_diff(b) > 24)).count();
    far as f64 / f64::from(a.width() * a.height())
}

type Change = fn(&mut Sidewall);

#[test]
fn each_parameter_of_a_sidewall_shows() {
    let plain = Sidewall { view: View { noise: 0.0, ..View::ahead(810.0) }, ..Sidewall::default() };
    let picture = plain.render(480, 360);
    assert_eq!(picture, plain.render(480, 360), "the same parameters give the same picture");
    let with = |change: Change| {
        let mut tire = plain.clone();
        change(&mut tire);
        unlike(&picture, &tire.render(480, 360))
    };
    let changes: [(&str, Change); 12] = [
        ("size", |tire| tire.size = "LT235/85R16".into()),
        ("service", |tire| tire.service = "115/112Q".into()),
        ("TIN", |tire| tire.tin = "DOT 9X1 8AB2CD 0722".into()),
        ("name", |tire| tire.name = String::new()),
        ("direction", |tire| tire.direction = Some(Rotation::Clockwise)),
        ("outside", |tire| tire.outside = true),
        ("chalk", |tire| tire.chalk = Some("RL".into())),
        ("letters", |tire| tire.letters = drawn::Letters::PLAIN),
        ("turn", |tire| tire.turn = 30.0),
        ("dirt", |tire| tire.dirt = 1.0),
        ("light", |tire| tire.light = drawn::Light::LOW_SUN),
        ("blur", |tire| tire.view.blur = 3.0),
    ];
    for (what, change) in changes {
        assert!(with(change) > 0.0004, "{what} doesn't show: {}", with(change));
    }
    let arrow = |rotation| demo::directional(rotation).render(640, 480);
    let turned = unlike(&arrow(Rotation::Clockwise), &arrow(Rotation::Counterclockwise));
    assert!(turned > 0.0002, "the arrow doesn't turn: {turned}");
}
