//! Pictures that nobody should have taken: an answer or a clear "can't", never a crash.

use ::renderer::{Light, Line, Page, Paper, Sidewall, View};
use lugbook::calendar::Day;
use lugbook::sight::{Asked, Circle, Continue, Hint, Models, NotTheModels, Part, Picture, Sight, read};

use super::models;

fn asked() -> Asked {
    Asked { ring: None, today: Day::new(2026, 5, 4).unwrap() }
}

fn noise(width: u32, height: u32) -> Picture {
    let mut state = 0x2545_f491_u32;
    let levels = (0..width * height).map(|_| {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        (state >> 24) as u8
    });
    Picture::from_gray(width, height, levels.collect()).unwrap()
}

fn flat(width: u32, height: u32, level: u8) -> Picture {
    Picture::from_gray(width, height, vec![level; (width * height) as usize]).unwrap()
}

/// Nothing that could be taken for a reading.
fn nothing_sure(sight: &Sight) {
    for suggestions in [&sight.size, &sight.service, &sight.date, &sight.tin] {
        assert!(suggestions.iter().all(|s| s.odds < 0.6), "{suggestions:?}");
    }
}

#[test]
fn bytes_that_are_no_model_are_refused() {
    for bytes in [vec![], vec![0; 64], b"not a model at all".to_vec(), vec![0xff; 4096]] {
        assert_eq!(Models::load(bytes.clone(), bytes).err(), Some(NotTheModels));
    }
}

#[test]
fn pictures_with_nothing_on_them_give_no_reading() {
    let Some(models) = models("hostile pictures") else { return };
    let pictures = [
        flat(320, 240, 0),
        flat(320, 240, 255),
        flat(1, 1, 128),
        flat(1, 900, 0),
        flat(900, 1, 255),
        flat(2, 2, 0),
        flat(47, 47, 10),
        noise(320, 240),
        noise(33, 300),
    ];
    for picture in pictures {
        let (width, height) = (picture.width(), picture.height());
        let sight = read(models, &[picture], &asked(), &mut |_| Continue::Yes);
        nothing_sure(&sight);
        assert_eq!(sight.ask.map(|ask| ask.part), Some(Part::Size), "{width} x {height}");
        assert!(sight.complete, "{width} x {height}");
    }
    let sight = read(models, &[flat(300, 300, 90)], &asked(), &mut |_| Continue::Yes);
    assert_eq!(sight.hints, [Hint::NothingToRead]);
}

#[test]
fn forty_million_pixels_are_looked_at() {
    let Some(models) = models("a huge picture") else { return };
    // Stripes as of a tread, so that there is an edge at every turn.
    let (width, height) = (7_300, 5_500);
    let levels = (0..width * height).map(|n| if (n % width / 90 + n / width / 70) % 2 == 0 { 40 } else { 200 });
    let picture = Picture::from_gray(width, height, levels.collect()).unwrap();
    let sight = read(models, &[picture], &asked(), &mut |_| Continue::Yes);
    nothing_sure(&sight);
    assert!(sight.complete);
}

#[test]
fn other_lettering_is_no_sidewall() {
    let Some(models) = models("a printed page") else { return };
    let text = |y: f32, text: &str| Line::text(8.0, y, 7.0, text);
    let lines = vec![
        text(20.0, "INVOICE 2254 / 17"),
        text(36.0, "4 PCS AT 91.00 TAX 19 %"),
        text(52.0, "CALL 555 0142 BEFORE 12 30"),
        text(68.0, "ROTATION OF STAFF IN WEEK 3"),
    ];
    let page = Page {
        size: (150.0, 90.0),
        paper: Paper::Book,
        lines,
        dirt: 0.0,
        light: Light::OVERCAST,
        view: View::ahead(90.0),
        seed: 3,
    };
    let drawn = page.render(900, 600);
    let picture = Picture::from_rgb(drawn.width(), drawn.height(), drawn.as_raw()).unwrap();
    let sight = read(models, &[picture], &asked(), &mut |_| Continue::Yes);
    nothing_sure(&sight);
    assert!(sight.complete && sight.arrow.is_none() && sight.chalk.is_empty(), "{sight:?}");
    assert!(sight.lines.iter().any(|line| line.text.contains("INVOICE")), "{:?}", sight.lines);
}

#[test]
fn a_photo_of_a_photo_of_a_wheel_is_read_right_or_not_at_all() {
    let Some(models) = models("a photo of a photo") else { return };
    let wheel = Sidewall { view: View::ahead(900.0), ..Sidewall::default() };
    let (print, table) = (image::DynamicImage::from(wheel.render(900, 840)).into_luma8(), (1300, 1100));
    let mut photo = image::GrayImage::from_pixel(table.0, table.1, image::Luma([150]));
    image::imageops::replace(&mut photo, &image::GrayImage::from_pixel(960, 900, image::Luma([235])), 160, 90);
    image::imageops::replace(&mut photo, &print, 190, 120);
    let picture = Picture::from_gray(table.0, table.1, photo.into_raw()).unwrap();
    let sight = read(models, &[picture], &asked(), &mut |_| Continue::Yes);
    assert!(sight.complete);
    for (said, truth) in [(&sight.size, wheel.size.as_str()), (&sight.service, wheel.service.as_str())] {
        assert!(said.first().is_none_or(|best| best.text == truth || best.odds < 0.6), "{said:?}");
    }
}

#[test]
fn no_pictures_give_no_reading() {
    let Some(models) = models("no pictures") else { return };
    let sight = read(models, &[], &asked(), &mut |_| panic!("nothing is looked at"));
    assert!(sight.complete && sight.size.is_empty() && sight.wheels.is_empty());
}

#[test]
fn circles_that_lie_nowhere_are_survived() {
    let Some(models) = models("circles") else { return };
    for (x, y, r) in
        [(0.0, 0.0, 1.0), (1e9, -1e9, 5.0), (320.0, 240.0, 1e12), (f64::NAN, 0.0, 1.0), (320.0, 240.0, 0.0)]
    {
        let asked = Asked { ring: Some(Circle { x, y, r }), ..asked() };
        let sight = read(models, &[flat(320, 240, 60)], &asked, &mut |_| Continue::Yes);
        nothing_sure(&sight);
    }
}

#[test]
fn a_reading_stops_between_tiles() {
    let Some(models) = models("stopping") else { return };
    let mut told = Vec::new();
    let sight = read(models, &[flat(640, 200, 30), flat(640, 200, 30)], &asked(), &mut |progress| {
        told.push((progress.done, progress.of));
        assert!(!progress.so_far().complete);
        Continue::No
    });
    assert!(!sight.complete && told.len() == 1 && told[0].0 == 1, "{told:?}");
}
