//! The photos of the demo: a mobile tech's visit to a light truck in an orchard yard.

use image::RgbImage;

use crate::{Cut, Hub, Light, Line, Note, Page, Paper, Rotation, Sidewall, Tread, View, jpeg};

/// One photo of the demo.
pub struct Photo {
    /// File name.
    pub name: &'static str,
    /// When the phone says it was taken, and how it was held.
    pub note: Note,
    draw: fn() -> RgbImage,
}

impl Photo {
    /// The picture, upright.
    pub fn picture(&self) -> RgbImage {
        (self.draw)()
    }

    /// The file.
    pub fn file(&self) -> Vec<u8> {
        jpeg(&self.picture(), &self.note, 80)
    }
}

/// All of them, in the order in which they are taken.
pub fn photos() -> Vec<Photo> {
    let note = |time: &str, orientation: u8| Note {
        orientation,
        time: format!("2026:05:04 {time}"),
        offset: "-07:00".into(),
        maker: "Orchard Proof".into(),
        model: "Yard Phone 2".into(),
    };
    let photo = |name, time, orientation, draw| Photo { name, note: note(time, orientation), draw };
    vec![
        photo("placard.jpg", "08:12:41", 1, placard as fn() -> RgbImage),
        photo("manual-page.jpg", "08:14:09", 6, manual),
        photo("sidewall-front-left.jpg", "08:21:17", 1, || sidewall(0)),
        photo("sidewall-front-right.jpg", "08:22:50", 1, || sidewall(1)),
        photo("sidewall-rear-right.jpg", "08:24:02", 1, || sidewall(2)),
        photo("sidewall-rear-left.jpg", "08:25:36", 3, || sidewall(3)),
        photo("tread-front-left.jpg", "08:31:05", 1, tread),
        photo("cut-rear-left.jpg", "08:33:48", 6, cut),
        photo("hub-rear-left.jpg", "09:02:27", 1, hub),
    ]
}

const WIDE: (u32, u32) = (1440, 1080);
const TALL: (u32, u32) = (1080, 1440);

fn sidewall(number: usize) -> RgbImage {
    let tins = ["DOT 7K2 4HL1PX 1422", "DOT 7K2 4HL1PX 1422", "DOT 7K2 4HL1PX 3921", "DOT 7K2 4HL1PX 0823"];
    let chalks = ["FL", "FR", "RR", "RL"];
    let turns = [22.0, -22.0, 8.0, -15.0];
    let (yaw, pitch, roll) = [(5.0, -3.0, 1.0), (-6.0, -2.0, -1.5), (3.0, -4.0, 0.6), (-4.0, -3.0, -0.8)][number];
    Sidewall {
        tin: tins[number].into(),
        chalk: Some(chalks[number].into()),
        turn: turns[number],
        dirt: [0.30, 0.38, 0.46, 0.42][number],
        light: [
            Light::OVERCAST,
            Light { around: 120.0, ..Light::OVERCAST },
            Light::OVERCAST,
            Light { around: 75.0, ..Light::OVERCAST },
        ][number],
        view: View { center: (0.0, -4.0), yaw, pitch, roll, ..View::ahead(812.0) },
        seed: 301 + number as u32,
        ..Sidewall::default()
    }
    .render(WIDE.0, WIDE.1)
}

fn placard() -> RgbImage {
    let lines = vec![
        Line::heavy(7.0, 11.0, 4.6, "TIRE AND LOADING INFORMATION"),
        Line::rule((4.0, 15.5), (126.0, 15.5)),
        Line::text(7.0, 22.5, 3.1, "SEATING CAPACITY"),
        Line::text(58.0, 22.5, 3.1, "TOTAL 5   FRONT 2   REAR 3"),
        Line::rule((4.0, 26.5), (126.0, 26.5)),
        Line::text(7.0, 33.0, 2.5, "The combined weight of occupants and cargo"),
        Line::text(7.0, 38.0, 2.5, "should never exceed 880 kg or 1940 lb"),
        Line::rule((4.0, 41.5), (126.0, 41.5)),
        Line::text(7.0, 47.5, 2.5, "TIRE"),
        Line::text(32.0, 47.5, 2.5, "SIZE"),
        Line::text(79.0, 47.5, 2.5, "COLD TIRE PRESSURE"),
        Line::rule((4.0, 50.5), (126.0, 50.5)),
        Line::heavy(7.0, 57.5, 3.5, "FRONT"),
        Line::heavy(32.0, 57.5, 3.5, "LT245/75R16"),
        Line::heavy(79.0, 57.5, 3.5, "345 kPa, 50 psi"),
        Line::heavy(7.0, 66.0, 3.5, "REAR"),
        Line::heavy(32.0, 66.0, 3.5, "LT245/75R16"),
        Line::heavy(79.0, 66.0, 3.5, "450 kPa, 65 psi"),
        Line::heavy(7.0, 74.5, 3.5, "SPARE"),
        Line::heavy(32.0, 74.5, 3.5, "LT245/75R16"),
        Line::heavy(79.0, 74.5, 3.5, "450 kPa, 65 psi"),
        Line::rule((4.0, 78.5), (126.0, 78.5)),
        Line::rule((29.0, 41.5), (29.0, 78.5)),
        Line::rule((76.0, 41.5), (76.0, 78.5)),
        Line::text(7.0, 84.5, 2.2, "SEE OWNER'S MANUAL FOR ADDITIONAL INFORMATION"),
    ];
    let light = Light { around: 70.0, height: 48.0, ..Light::OVERCAST };
    let view = View { yaw: -7.0, pitch: -5.0, roll: -2.0, center: (2.0, 0.0), ..View::ahead(124.0) };
    Page { size: (130.0, 89.0), paper: Paper::Label, lines, dirt: 0.5, light, view, seed: 41 }.render(WIDE.0, WIDE.1)
}

fn manual() -> RgbImage {
    let mut lines = vec![
        Line::text(14.0, 12.0, 2.0, "WHEELS AND TIRES"),
        Line::text(116.0, 12.0, 2.0, "7-19"),
        Line::rule((14.0, 15.0), (126.0, 15.0)),
        Line::heavy(14.0, 27.0, 4.6, "Wheel nuts"),
    ];
    for (n, text) in [
        "Use only nuts with the seat that fits the wheel.",
        "Clean the studs. Do not oil the studs or the seats.",
        "Start each nut by hand. Tighten in a star, first",
        "snug, then with the weight of the vehicle on the",
        "tire, to the torque in this table.",
    ]
    .iter()
    .enumerate()
    {
        lines.push(Line::text(14.0, 37.0 + 6.4 * n as f32, 2.5, text));
    }
    let rows = [
        ("Wheel", "16 × 7, steel"),
        ("Studs", "8, on 165.1 mm"),
        ("Thread", "M14 × 1.5"),
        ("Seat", "Cone, 60°"),
        ("Hex", "21 mm"),
        ("Torque", "125–150 N·m"),
        ("", "(90–110 ft·lb)"),
    ];
    for (n, (what, value)) in rows.iter().enumerate() {
        let y = 81.0 + 10.0 * n as f32;
        let heavy = n >= 5;
        lines.push(Line::text(18.0, y, 3.0, what));
        lines.push(if heavy { Line::heavy(58.0, y, 3.6, value) } else { Line::text(58.0, y, 3.0, value) });
        if n != 5 {
            lines.push(Line::rule((14.0, y + 3.6), (126.0, y + 3.6)));
        }
    }
    lines.push(Line::rule((14.0, 73.6), (126.0, 73.6)));
    for (n, text) in [
        "Tighten again after 80 km (50 miles), and each",
        "time a wheel was off. A nut that turns then is",
        "noted, and the check repeated.",
    ]
    .iter()
    .enumerate()
    {
        lines.push(Line::text(14.0, 156.0 + 6.4 * n as f32, 2.5, text));
    }
    let light = Light { around: 60.0, height: 55.0, warm: 0.4, ..Light::OVERCAST };
    let view = View { yaw: 4.0, pitch: 6.0, roll: 2.2, ..View::ahead(198.0) };
    Page { size: (140.0, 186.0), paper: Paper::Book, lines, dirt: 0.45, light, view, seed: 57 }.render(TALL.0, TALL.1)
}

fn tread() -> RgbImage {
    let view =
        View { yaw: 4.0, pitch: 4.0, roll: -3.0, center: (-6.0, 4.0), exposure: 1.2, noise: 1.5, ..View::ahead(150.0) };
    Tread { view, dirt: 0.35, seed: 63, ..Tread::default() }.render(WIDE.0, WIDE.1)
}

fn cut() -> RgbImage {
    let view = View { center: (52.0, 316.0), roll: 2.0, yaw: 5.0, pitch: -4.0, exposure: 1.25, ..View::ahead(205.0) };
    let on = Sidewall {
        turn: -8.0,
        dirt: 0.35,
        light: Light { fill: 0.7, ..Light::LOW_SUN },
        view,
        seed: 304,
        ..Sidewall::default()
    };
    Cut { on, at: (62.0, 268.0), long: 74.0, wide: 15.0, turn: 24.0 }.render(TALL.0, TALL.1)
}

fn hub() -> RgbImage {
    let view = View { yaw: -6.0, pitch: -5.0, roll: 1.0, center: (-8.0, -2.0), ..View::ahead(396.0) };
    Hub { view, seed: 71, ..Hub::default() }.render(WIDE.0, WIDE.1)
}

/// A directional tire with lettering in the other style, for tests that need one.
pub fn directional(rotation: Rotation) -> Sidewall {
    Sidewall {
        size: "225/45R17".into(),
        service: "91W".into(),
        name: "ROW NINE".into(),
        words: vec!["RADIAL TUBELESS".into()],
        direction: Some(rotation),
        letters: crate::Letters::PLAIN,
        overall: 634.3,
        rim: 431.8,
        studs: 5,
        view: View::ahead(664.0),
        ..Sidewall::default()
    }
}
