//! What goes out as a file, the photos by their paths, why a decision is so, and what seals prove.

use lugbook_phone::{Outgoing, OutgoingOf, Refusal};

use super::{ENGLISH, Shop, wait};

fn of() -> OutgoingOf {
    OutgoingOf { job: None, vehicle: None, person: None, photo: None, per_year: None, a4: false }
}

fn signed() -> Shop {
    let shop = Shop::new().with_car();
    let book = wait(shop.engine.book(String::new(), ENGLISH)).unwrap().actions;
    shop.tap_on(&book, "add-wrench", &[("name", "long wrench"), ("accuracy", "4 %"), ("scale-step", "5 N.m")]);
    super::played::open(&shop, "gray wagon", "rotation-on-a-lift");
    super::played::play(&shop, "");
    shop
}

#[test]
fn everything_that_goes_out_is_a_whole_file_of_its_kind() {
    let shop = signed();
    let folder = shop.dir.path().join("out");
    std::fs::create_dir(&folder).unwrap();
    let into = folder.to_str().unwrap().to_owned();
    let written = |what, of| wait(shop.engine.write_out(what, of, into.clone(), ENGLISH));
    let bytes = |what, of| std::fs::read(written(what, of).unwrap()).unwrap();

    let card = wait(shop.engine.card(None, ENGLISH)).unwrap();
    assert_eq!(bytes(Outgoing::Card, of()), card.as_bytes());
    assert!(written(Outgoing::Card, of()).unwrap().ends_with("card-1.html"));
    for what in [Outgoing::CardPaper, Outgoing::HistoryPaper] {
        assert!(bytes(what, of()).starts_with(b"%PDF-"), "{what:?}");
    }
    // As many rows as the spreadsheet room's own tests say: here that a general-purpose reader takes them.
    let readings = bytes(Outgoing::Readings, of());
    let mut table = csv::Reader::from_reader(readings.strip_prefix("\u{feff}".as_bytes()).unwrap_or(&readings));
    assert!(table.records().map(Result::unwrap).count() > 8);
    let jobs = String::from_utf8(bytes(Outgoing::Jobs, of())).unwrap();
    assert_eq!(jobs.lines().count(), 2, "{jobs}");
    let calendar = OutgoingOf { per_year: Some("12000 mi".to_owned()), ..of() };
    let calendar = String::from_utf8(bytes(Outgoing::Rechecks, calendar)).unwrap();
    assert!(calendar.starts_with("BEGIN:VCALENDAR"), "{calendar}");
    let photo = bytes(Outgoing::Photo, OutgoingOf { photo: Some(1), ..of() });
    assert_eq!(image::guess_format(&photo).unwrap(), image::ImageFormat::Jpeg);
    assert!(matches!(written(Outgoing::Photo, of()), Err(Refusal::MendInput { .. })), "no photo was named");
    assert!(matches!(written(Outgoing::Learner, of()), Err(Refusal::MendInput { .. })), "nobody learns here");

    let gone = shop.dir.path().join("gone").to_str().unwrap().to_owned();
    assert!(wait(shop.engine.write_out(Outgoing::Card, of(), gone, ENGLISH)).is_err());
    let left: Vec<_> = std::fs::read_dir(&folder).unwrap().map(|file| file.unwrap().file_name()).collect();
    assert!(left.iter().all(|name| !name.to_str().unwrap().starts_with('.')), "{left:?}");
}

#[test]
fn photos_come_by_their_paths_as_plain_jpegs_and_a_lost_one_is_told() {
    let shop = Shop::new().with_car();
    super::played::open(&shop, "gray wagon", "tread-and-age-check");
    let none = wait(shop.engine.photos(None, ENGLISH)).unwrap();
    assert_eq!(none.empty.as_deref(), Some("No photo was taken in this job."));
    super::played::play(&shop, "tread");
    let photos = wait(shop.engine.photos(None, ENGLISH)).unwrap().photos;
    let first = photos.first().expect("a sidewall was photographed");
    assert_eq!(first.caption, "FL: sidewall");
    for (path, most) in [(&first.small, 320), (&first.large, 1600)] {
        let picture = image::ImageReader::open(path.as_ref().unwrap()).unwrap().with_guessed_format().unwrap();
        assert_eq!(picture.format(), Some(image::ImageFormat::Jpeg));
        let mut decoder = jpeg_decoder::Decoder::new(std::fs::File::open(path.as_ref().unwrap()).unwrap());
        decoder.decode().unwrap();
        let info = decoder.info().unwrap();
        assert!(u32::from(info.width.max(info.height)) <= most);
    }
    let originals = shop.dir.path().join("book/photos/originals");
    for folder in [&originals, &shop.dir.path().join("book/photos/renditions")] {
        std::fs::remove_dir_all(folder).unwrap();
        std::fs::create_dir(folder).unwrap();
    }
    let lost = wait(shop.engine.photos(None, ENGLISH)).unwrap().photos;
    assert!(lost[0].large.is_none() && lost[0].trouble.as_ref().unwrap().contains("gone"), "{:?}", lost[0]);
}

#[test]
fn a_decision_is_explained_and_seals_are_told() {
    let shop = signed();
    let proven = wait(shop.engine.verify(ENGLISH)).unwrap();
    assert!(proven.ok && !proven.proven.is_empty() && !proven.not_proven.is_empty());
    let shop = Shop::new().with_car();
    super::played::up_to_the_plan(&shop);
    let why = wait(shop.engine.why("drive".to_owned(), ENGLISH)).unwrap();
    assert!(why.answer.contains("front"), "{why:?}");
    let Err(Refusal::MendInput { sentence, .. }) = wait(shop.engine.why("color".to_owned(), ENGLISH)) else { panic!() };
    assert_eq!(sentence, "“color” is no decision. There are drive, pattern, lifts, order, target.");
}
