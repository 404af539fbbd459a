//! Pictures drawn with known lettering.

use ::renderer::{Rotation, Sidewall, View};
use image::RgbImage;
use lugbook::calendar::Day;
use lugbook::sight::{Asked, Circle, Continue, Picture, Sight, Suggestion, read};

use super::models;

fn picture(drawn: &RgbImage) -> Picture {
    Picture::from_rgb(drawn.width(), drawn.height(), drawn.as_raw()).unwrap()
}

fn tire(size: &str, service: &str, tin: &str) -> Sidewall {
    Sidewall {
        size: size.into(),
        service: service.into(),
        tin: tin.into(),
        outside: true,
        dirt: 0.1,
        view: View::ahead(900.0),
        ..Sidewall::default()
    }
}

fn look(sidewall: &Sidewall, ring: Option<Circle>) -> Option<Sight> {
    let models = models("a drawn sidewall")?;
    let asked = Asked { ring, today: Day::new(2026, 5, 4).unwrap() };
    Some(read(models, &[picture(&sidewall.render(1280, 1200))], &asked, &mut |_| Continue::Yes))
}

fn texts(suggestions: &[Suggestion]) -> Vec<&str> {
    suggestions.iter().map(|s| s.text.as_str()).collect()
}

const SIZES: [(&str, &str, &str); 2] =
    [("LT245/75R16", "120/116S", "DOT 7K2 4HL1PX 1422"), ("215/65R16", "98H", "DOT 4UX 9RT2MB 0823")];

#[test]
fn a_wheel_is_read_with_arrow_and_chalk_and_the_ring_is_where_it_was_drawn() {
    let marked = [(Some(Rotation::Counterclockwise), None), (None, Some("RR"))];
    for ((size, service, tin), (direction, chalk)) in SIZES.into_iter().zip(marked) {
        let drawn = Sidewall { direction, chalk: chalk.map(str::to_owned), ..tire(size, service, tin) };
        let Some(sight) = look(&drawn, None) else { return };
        assert_eq!(texts(&sight.size).first(), Some(&size), "{:?}", sight.size);
        assert_eq!(texts(&sight.service).first(), Some(&service), "{:?}", sight.service);
        let wheel = sight.wheels[0].expect("a whole wheel");
        let scale = 1200.0 / 900.0;
        let outer = f64::from(drawn.overall) / 2.0 * scale;
        assert!((wheel.x - 640.0).abs() < 12.0 && (wheel.y - 600.0).abs() < 12.0, "{wheel:?}");
        assert!((wheel.outer / outer - 1.0).abs() < 0.05, "{wheel:?} against {outer}");
        // Each suggestion can be shown beside what it was read from.
        assert!(sight.size[0].cut.as_ref().is_some_and(|cut| cut.width() > cut.height()));
        assert_eq!(sight.arrow.map(|arrow| arrow.clockwise), direction.map(|way| way == Rotation::Clockwise));
        // It was chalked upright at nine o'clock, where the ring runs upward.
        assert_eq!(texts(&sight.chalk).first().copied(), chalk);
        assert!(sight.chalk.first().is_none_or(|mark| mark.odds > 0.6 && mark.hour == Some(9)), "{:?}", sight.chalk);
    }
}

#[test]
fn a_circle_drawn_by_hand_leads_to_the_same_reading() {
    let (size, service, tin) = SIZES[0];
    let drawn = tire(size, service, tin);
    let outer = f64::from(drawn.overall) / 2.0 * 1200.0 / 900.0;
    for (x, y, r) in [(652.0, 592.0, outer * 0.98), (636.0, 608.0, outer * 0.60)] {
        let Some(sight) = look(&drawn, Some(Circle { x, y, r })) else { return };
        assert_eq!(texts(&sight.size).first(), Some(&size), "{x},{y},{r}: {:?}", sight.size);
    }
}

#[test]
fn where_the_lettering_stands_is_told_by_the_hours_of_a_clock() {
    let (size, service, tin) = SIZES[0];
    for (turn, hour) in [(90.0, 3), (180.0, 6)] {
        let Some(sight) = look(&Sidewall { turn, ..tire(size, service, tin) }, None) else { return };
        let told: i32 = sight.size.first().and_then(|best| best.hour).expect("the size is read").into();
        // A long line's middle may stand half an hour away.
        assert!((told - hour).abs() <= 1, "turned by {turn}: {told} for {hour}");
    }
}
