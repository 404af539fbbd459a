//! A host that reads tiles in place of the models: it needs none of them.

use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use ::renderer::{Sidewall, View};
use lugbook::calendar::Day;
use lugbook::engine::Reader;
use lugbook::ident::Digest;
use lugbook::sight::{Asked, Continue, Picture, Tile, TileReader, TileText, read_through};
use lugbook::words::Speech;

/// Says one text in the middle of the tile of a number, and nothing elsewhere.
struct Saying {
    text: &'static str,
    on: usize,
    tiles: AtomicUsize,
}

impl Saying {
    fn new(text: &'static str, on: usize) -> Self {
        Self { text, on, tiles: AtomicUsize::new(0) }
    }
}

impl TileReader for Saying {
    fn name(&self) -> String {
        "saying-7".into()
    }

    fn model(&self) -> Digest {
        Digest::of(b"saying-7")
    }

    fn read(&self, tile: &Tile<'_>) -> Vec<TileText> {
        assert_eq!(tile.levels.len(), tile.width * tile.height);
        if self.tiles.fetch_add(1, Ordering::Relaxed) != self.on {
            return Vec::new();
        }
        let (x, y) = (tile.width as f32 / 2.0, tile.height as f32 / 2.0);
        vec![TileText { text: self.text.into(), confidence: 0.95, x, y, width: 200.0, height: 24.0 }]
    }
}

fn wheel() -> Picture {
    let drawn = Sidewall { view: View::ahead(900.0), ..Sidewall::default() }.render(900, 860);
    Picture::from_rgb(drawn.width(), drawn.height(), drawn.as_raw()).unwrap()
}

fn asked() -> Asked {
    Asked { ring: None, today: Day::new(2026, 5, 4).unwrap() }
}

#[test]
fn what_a_host_reads_stands_where_its_tile_stands_on_the_ring() {
    let mut hours = Vec::new();
    for on in [0, 1] {
        let host = Saying::new("225/45R17 91W", on);
        let sight = read_through(&host, &[wheel()], &asked(), &mut |_| Continue::Yes);
        let best = sight.size.first().expect("what the host said is suggested");
        assert_eq!(best.text, "225/45R17");
        assert_eq!(sight.service.first().map(|best| best.text.as_str()), Some("91W"));
        hours.push(best.hour.expect("the wheel is whole"));
    }
    // Two tiles go around, each on for another sixth: the first begins at nine o'clock, so its middle stands at one.
    assert_eq!(hours, [1, 7]);
}

#[test]
fn a_host_is_stopped_between_tiles() {
    let host = Saying::new("225/45R17 91W", 0);
    let sight = read_through(&host, &[wheel()], &asked(), &mut |progress| {
        assert!(progress.has_size() && progress.so_far().size[0].text == "225/45R17");
        Continue::No
    });
    assert_eq!((host.tiles.load(Ordering::Relaxed), sight.complete), (1, false));
}

#[test]
fn a_numbers_symbols_are_taken_from_what_a_host_reads() {
    let host = Saying::new("DOT IHKB GFLP (0723)", 0);
    let sight = read_through(&host, &[wheel()], &asked(), &mut |_| Continue::Yes);
    assert_eq!(sight.tin.first().map(|best| best.text.as_str()), Some("1HKB6FLP0723"), "{:?}", sight.tin);
    assert_eq!(sight.date.first().map(|best| best.text.as_str()), Some("0723"));
}

#[test]
fn a_reading_names_its_host_and_that_hosts_model() {
    let folder = tempfile::tempdir().unwrap();
    let photo = folder.path().join("close-up.png");
    image::GrayImage::from_pixel(400, 120, image::Luma([70])).save(&photo).unwrap();
    let reader = Reader::through(Arc::new(Saying::new("225/45R17 91W", 0)));
    let today = Day::new(2026, 5, 4).unwrap();
    let view = reader.read(&[photo], None, today, Speech::default(), &mut |_| Continue::Yes).unwrap();
    assert_eq!((view.reader.as_str(), view.model), ("saying-7", Digest::of(b"saying-7")));
    assert_eq!((reader.name(), reader.model()), (view.reader, view.model));
    assert_eq!(view.size[0].text, "225/45R17");
    assert!(view.first_ms.is_some_and(|first| first <= view.took_ms));
}
