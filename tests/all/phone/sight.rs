//! A sidewall read from its photo by taps: suggestions, accepting, mending, and what is on the other side.
//!
//! The tire is drawn, so what stands on it is known; where the models are not fetched, the part is skipped, loudly.

use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use ::renderer::{Sidewall, View};
use lugbook::photos::Upright;
use lugbook_phone::{BayScreen, FieldKind, Refusal, ScreenAction, TextOnTile, TextReader, TextTile};

use super::{ENGLISH, Shop, played, wait};

const TIRE: (&str, &str) = ("LT245/75R16", "120/116S");

/// The bay at the step that asks what stands on FL, with a photo of it in the book; `None` without the models.
fn photographed() -> Option<Shop> {
    crate::sight::models("a sidewall read by taps")?;
    let shop = Shop::new().with_car();
    *shop.phone.models.lock().unwrap() = Some(crate::sight::folder().to_str().unwrap().to_owned());
    played::open(&shop, "gray wagon", "tread-and-age-check");
    played::play(&shop, "sidewall-photo");
    let drawn = Sidewall {
        size: TIRE.0.into(),
        service: TIRE.1.into(),
        tin: "DOT 7K2 4HL1PX 1422".into(),
        dirt: 0.1,
        view: View::ahead(900.0),
        ..Sidewall::default()
    };
    let file = shop.dir.path().join("wheel.png");
    drawn.render(1280, 1200).save(&file).unwrap();
    shop.tap_on(&shop.bay(), "photo", &[("file", file.to_str().unwrap())]);
    Some(shop)
}

fn bay(shop: &Shop) -> BayScreen {
    wait(shop.engine.bay(Some("sidewall".to_owned()), Some("FL".to_owned()), ENGLISH)).unwrap()
}

fn action<'a>(bay: &'a BayScreen, code: &str) -> Option<&'a ScreenAction> {
    bay.actions.iter().find(|action| action.code == code)
}

#[test]
fn a_photo_is_read_and_its_reading_is_accepted_by_taps() {
    let Some(shop) = photographed() else { return };
    let before = bay(&shop);
    assert!(before.sight.is_none() && action(&before, "accept-reading").is_none());
    let read = action(&before, "read-photo").expect("a photo can be read");
    assert_eq!(read.fields.iter().map(|field| field.kind).collect::<Vec<_>>(), [FieldKind::Ring]);
    // The wheel was drawn in the middle of the picture, 1280 pixels wide; a ring beside it is no ring.
    let beside = shop.tap(read, &[("ring", "9 9 0.4")]);
    assert!(matches!(beside, Err(Refusal::MendInput { .. })), "{beside:?}");
    let said = shop.tap(read, &[("ring", "0.5 0.469 0.36")]).unwrap();
    assert!(said.entries.is_empty() && !said.said.is_empty(), "{said:?}");

    let seen = bay(&shop);
    let sight = seen.sight.as_ref().expect("what was read stands on the step");
    let size = sight.lines.iter().find(|line| line.code == "printed-size").unwrap();
    assert_eq!(size.suggestions[0].text, TIRE.0);
    assert!(size.suggestions[0].spoken.contains("percent"));
    let cut = image::load_from_memory(size.suggestions[0].cut.as_ref().unwrap()).unwrap();
    assert!(cut.width() > cut.height());
    // Mending is typing, with the best standing there.
    let typed = action(&seen, "sidewall").unwrap().fields.iter().find(|field| field.code == "text").unwrap();
    assert!(typed.filled.as_ref().unwrap().starts_with(TIRE.0), "{:?}", typed.filled);

    let accept = action(&seen, "accept-reading").expect("it can be accepted");
    let mut values = vec![("printed-size", TIRE.0), ("printed-service", TIRE.1), ("dot-number", "none")];
    values.retain(|(code, _)| accept.fields.iter().any(|field| field.code == *code));
    assert_eq!(shop.tap(accept, &values).unwrap().entries.len(), 1);
    let log = wait(shop.engine.log(None, ENGLISH)).unwrap().lines;
    let line = log.iter().find(|line| line.sentence.contains(TIRE.0)).expect("it is in the log");
    assert!(line.sentence.contains("lugbook-sight"), "{}", line.sentence);
    assert!(!line.sentence.contains("DOT"), "{}", line.sentence);
}

#[test]
fn a_reading_that_is_stopped_suggests_nothing() {
    let Some(shop) = photographed() else { return };
    let token = action(&bay(&shop), "read-photo").unwrap().token.clone();
    let task = {
        // It reads the clock before anything else, and waits there.
        let _held = shop.phone.held.lock().unwrap();
        let task = shop.engine.start(token, Vec::new(), ENGLISH).unwrap();
        task.cancel().unwrap();
        task
    };
    assert!(matches!(wait(task.outcome()), Err(Refusal::TryAgain { .. })));
    assert!(bay(&shop).sight.is_none());
    assert!(action(&bay(&shop), "read-photo").is_some(), "it can be read again");
}

/// A reader that the phone brings: it says the same on the first tile, and nothing on others.
struct OfThePhone(AtomicUsize);

impl TextReader for OfThePhone {
    fn name(&self) -> String {
        "phone reader 3".to_owned()
    }

    fn read(&self, tile: TextTile) -> Vec<TextOnTile> {
        assert_eq!(tile.levels.len(), (tile.width * tile.height) as usize);
        if self.0.fetch_add(1, Ordering::Relaxed) > 0 {
            return Vec::new();
        }
        let (x, y) = (tile.width as f32 / 2.0, tile.height as f32 / 2.0);
        let text = format!("{} {}", TIRE.0, TIRE.1);
        vec![TextOnTile { text, confidence: 0.97, x, y, width: 160.0, height: 24.0 }]
    }
}

#[test]
fn a_reader_of_the_phones_own_reads_in_place_of_the_models() {
    let shop = Shop::new().with_car();
    played::open(&shop, "gray wagon", "tread-and-age-check");
    played::play(&shop, "sidewall-photo");
    let file = shop.dir.path().join("close.png");
    image::GrayImage::from_pixel(640, 200, image::Luma([120])).save(&file).unwrap();
    shop.tap_on(&shop.bay(), "photo", &[("file", file.to_str().unwrap())]);
    assert!(action(&bay(&shop), "read-photo").is_none(), "nothing here reads");
    let reader = Arc::new(OfThePhone(AtomicUsize::new(0)));
    shop.engine.read_by(Some(reader.clone())).unwrap();
    shop.engine.read_by(None).unwrap();
    assert!(action(&bay(&shop), "read-photo").is_none(), "it was taken away");
    shop.engine.read_by(Some(reader)).unwrap();
    let read = bay(&shop);
    shop.tap(action(&read, "read-photo").unwrap(), &[]).unwrap();
    let seen = bay(&shop);
    assert_eq!(seen.sight.as_ref().unwrap().lines[0].suggestions[0].text, TIRE.0);
    let accept = action(&seen, "accept-reading").unwrap();
    let values: Vec<_> = accept
        .fields
        .iter()
        .map(|field| (field.code.as_str(), if field.code == "printed-size" { TIRE.0 } else { TIRE.1 }))
        .collect();
    shop.tap(accept, &values).unwrap();
    let log = wait(shop.engine.log(None, ENGLISH)).unwrap().lines;
    assert!(log.iter().any(|line| line.sentence.contains("phone reader 3")), "{log:?}");
}

#[test]
fn a_circle_is_dragged_over_the_photo_that_was_taken_last() {
    let shop = Shop::new().with_car();
    shop.engine.read_by(Some(Arc::new(OfThePhone(AtomicUsize::new(0))))).unwrap();
    played::open(&shop, "gray wagon", "tread-and-age-check");
    played::play(&shop, "sidewall-photo");
    let field = || action(&bay(&shop), "read-photo").unwrap().fields[0].clone();
    let size = || {
        let path = field().photo.expect("a photo to drag it over");
        let shown = Upright::open(path.as_ref()).unwrap();
        (shown.width, shown.height)
    };
    // Wide enough that a rendition is smaller than what was taken, in the same form.
    for (number, (width, height), shown) in [(1, (900, 1200), (900, 1200)), (2, (3200, 800), (1600, 400))] {
        let file = shop.dir.path().join(format!("{number}.png"));
        image::GrayImage::from_pixel(width, height, image::Luma([120])).save(&file).unwrap();
        shop.tap_on(&bay(&shop).actions, "photo", &[("file", file.to_str().unwrap())]);
        assert_eq!(size(), shown);
    }
    // A middle that lies on the tall photo lies beside the wide one.
    let read = action(&bay(&shop), "read-photo").unwrap().clone();
    let beside = shop.tap(&read, &[("ring", "0.5 0.5 0.2")]);
    assert!(matches!(beside, Err(Refusal::MendInput { .. })), "{beside:?}");
    shop.tap(&read, &[("ring", "0.5 0.12 0.1")]).unwrap();
    let others =
        bay(&shop).actions.into_iter().flat_map(|action| action.fields).filter(|field| field.kind != FieldKind::Ring);
    assert!(others.into_iter().all(|field| field.photo.is_none()));
}

/// A reader that finds lettering nowhere but in chalk.
struct ReadsChalk(&'static str);

impl TextReader for ReadsChalk {
    fn name(&self) -> String {
        "phone reader 4".to_owned()
    }

    fn read(&self, tile: TextTile) -> Vec<TextOnTile> {
        // A line of chalk is as long as two letters are; a tile goes around a third of the ring.
        if tile.width > 4 * tile.height {
            return Vec::new();
        }
        vec![TextOnTile { text: self.0.to_owned(), confidence: 0.97, x: 24.0, y: 24.0, width: 40.0, height: 30.0 }]
    }
}

#[test]
fn chalk_on_a_photo_is_told_and_stands_at_the_step_that_marks() {
    let shop = Shop::new().with_car();
    shop.engine.read_by(Some(Arc::new(ReadsChalk("RR")))).unwrap();
    played::open(&shop, "gray wagon", "rotation-lift-by-lift");
    played::play(&shop, "sidewall-photo");
    let drawn = Sidewall { chalk: Some("RR".into()), dirt: 0.1, view: View::ahead(900.0), ..Sidewall::default() };
    let file = shop.dir.path().join("chalked.png");
    drawn.render(1280, 1200).save(&file).unwrap();
    shop.tap_on(&shop.bay(), "photo", &[("file", file.to_str().unwrap())]);
    let at = |step: &str, at: &str| wait(shop.engine.bay(Some(step.to_owned()), Some(at.to_owned()), ENGLISH)).unwrap();
    let filled = |place: &str| action(&at("mark", place), "mark").unwrap().fields[0].filled.clone();
    let told = || bay(&shop).sight.and_then(|sight| sight.chalk);
    let read = || shop.tap(action(&bay(&shop), "read-photo").unwrap(), &[]).unwrap();
    assert_eq!((told(), filled("FL").as_deref()), (None, Some("FL")));
    read();
    assert_eq!(told().as_deref(), Some("The chalk on it seems to read RR (88 %)."));
    assert_eq!((filled("FL").as_deref(), filled("RR").as_deref()), (Some("RR"), Some("RR")));
    // Once another tire is known by it, the photo contradicts, and is not repeated at the step.
    shop.tap_on(&at("mark", "RR").actions, "mark", &[("mark", "RR")]);
    assert!(told().unwrap().starts_with("The chalk on it seems to read RR, the mark of another tire"), "{:?}", told());
    assert_eq!(filled("FL").as_deref(), Some("FL"));
}
