//! Photos: whole or not at all, and nothing a file says is believed before it is looked at.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io::{self, Cursor};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use image::{ImageEncoder, Rgb, RgbImage};
use lugbook::calendar::Moment;
use lugbook::ident::Digest;
use lugbook::photos::{
    Damage, Disk, Format, Hint, Intake, Orientation, OtherKind, PhotoError, Photos, Refusal, Rendition,
};
use proptest::prelude::*;

const NOW: i64 = 1_790_000_000_000;
const DAY: Duration = Duration::from_secs(86_400);

fn now() -> Moment {
    Moment::from_unix_ms(NOW)
}

fn later(by: Duration) -> Moment {
    Moment::from_unix_ms(NOW + i64::try_from(by.as_millis()).unwrap())
}

fn open() -> (tempfile::TempDir, Photos) {
    let folder = tempfile::tempdir().unwrap();
    let photos = Photos::open(folder.path().join("photos")).unwrap();
    (folder, photos)
}

/// A picture with edges, and one corner unlike the others.
fn picture(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        if x < width / 3 && y < height / 3 {
            Rgb([230, 40, 30])
        } else if (x / 8 + y / 8) % 2 == 0 {
            Rgb([200, 200, 190])
        } else {
            Rgb([40, 45, 50])
        }
    })
}

fn jpeg(picture: &RgbImage, exif: Option<&[u8]>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 85);
    if let Some(exif) = exif {
        encoder.add_exif_metadata(exif).unwrap();
    }
    let (width, height) = (picture.width() as u16, picture.height() as u16);
    encoder.encode(picture, width, height, jpeg_encoder::ColorType::Rgb).unwrap();
    bytes
}

fn png(picture: &RgbImage, exif: Option<&[u8]>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = image::codecs::png::PngEncoder::new(&mut bytes);
    if let Some(exif) = exif {
        encoder.set_exif_metadata(exif.to_vec()).unwrap();
    }
    encoder.write_image(picture, picture.width(), picture.height(), image::ExtendedColorType::Rgb8).unwrap();
    bytes
}

fn webp(picture: &RgbImage, exif: Option<&[u8]>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = image::codecs::webp::WebPEncoder::new_lossless(&mut bytes);
    if let Some(exif) = exif {
        encoder.set_exif_metadata(exif.to_vec()).unwrap();
    }
    encoder.write_image(picture, picture.width(), picture.height(), image::ExtendedColorType::Rgb8).unwrap();
    bytes
}

type Writer = fn(&RgbImage, Option<&[u8]>) -> Vec<u8>;
const WRITERS: [(Format, Writer); 3] = [(Format::Jpeg, jpeg), (Format::Png, png), (Format::Webp, webp)];

/// A TIFF block as EXIF 2.3 lays it out, big-endian: orientation, device and place, and the time with its offset.
fn exif(orientation: u16, time: &str, offset: &str) -> Vec<u8> {
    let mut block = b"MM\0*\0\0\0\x08".to_vec();
    let text = |text: &str| [text.as_bytes(), b"\0"].concat();
    let entry = |tag: u16, kind: u16, count: usize, value: [u8; 4]| {
        let mut entry = [tag.to_be_bytes(), kind.to_be_bytes()].concat();
        entry.extend((count as u32).to_be_bytes());
        entry.extend(value);
        entry
    };
    let [high, low] = orientation.to_be_bytes();
    let maker = text("Orchard Proof Camera");
    let (time, offset) = (text(time), text(offset));
    // Two folders of entries follow each other, then what they point at.
    let data = 8 + (2 + 3 * 12 + 4) + (2 + 2 * 12 + 4);
    let at = |from: usize| (from as u32).to_be_bytes();
    block.extend(3_u16.to_be_bytes());
    block.extend(entry(0x010f, 2, maker.len(), at(data)));
    block.extend(entry(0x0112, 3, 1, [high, low, 0, 0]));
    block.extend(entry(0x8769, 4, 1, at(8 + 2 + 3 * 12 + 4)));
    block.extend([0; 4]);
    block.extend(2_u16.to_be_bytes());
    block.extend(entry(0x9003, 2, time.len(), at(data + maker.len())));
    block.extend(entry(0x9011, 2, offset.len(), at(data + maker.len() + time.len())));
    block.extend([0; 4]);
    block.extend(maker);
    block.extend(time);
    block.extend(offset);
    block
}

fn refusal(result: Result<Intake, PhotoError>) -> Refusal {
    match result {
        Err(PhotoError::Refused(refusal)) => refusal,
        other => panic!("not refused: {other:?}"),
    }
}

fn decoded(jpeg: &[u8]) -> RgbImage {
    let mut decoder = jpeg_decoder::Decoder::new(jpeg);
    let pixels = decoder.decode().unwrap();
    let info = decoder.info().unwrap();
    RgbImage::from_raw(info.width.into(), info.height.into(), pixels).unwrap()
}

fn files(folder: &Path) -> Vec<String> {
    let mut found = Vec::new();
    for inner in ["originals", "renditions", "incoming"] {
        for entry in fs::read_dir(folder.join("photos").join(inner)).unwrap() {
            found.push(format!("{inner}/{}", entry.unwrap().file_name().to_string_lossy()));
        }
    }
    found.sort();
    found
}

#[test]
fn a_photo_is_kept_as_it_came_with_two_renditions_made_from_it() {
    for (format, write) in WRITERS {
        let (folder, photos) = open();
        let bytes = write(&picture(2000, 1500), None);
        let taken_in = photos.intake_bytes(&bytes, now()).unwrap();
        assert_eq!((taken_in.format, taken_in.width, taken_in.height), (format, 2000, 1500));
        assert_eq!((taken_in.id, taken_in.bytes), (Digest::of(&bytes), bytes.len() as u64));
        assert!(!taken_in.duplicate && taken_in.judgement.is_good(), "{:?}", taken_in.judgement);
        assert_eq!(photos.read(taken_in.id, Rendition::Original).unwrap(), bytes);
        let large = decoded(&photos.read(taken_in.id, Rendition::Large).unwrap());
        let small = decoded(&photos.read(taken_in.id, Rendition::Small).unwrap());
        assert_eq!((large.dimensions(), small.dimensions()), ((1600, 1200), (320, 240)));
        let id = taken_in.id;
        let ending = format.extension();
        assert_eq!(
            files(folder.path()),
            [
                format!("originals/{id}.{ending}"),
                format!("renditions/{id}-1600.jpg"),
                format!("renditions/{id}-320.jpg")
            ]
        );
        assert!(photos.check([id]).problems.is_empty());
        assert_eq!(photos.kept().unwrap(), [id]);
    }
}

#[test]
fn a_file_and_the_same_bytes_are_the_same_photo_and_stored_once() {
    let (folder, photos) = open();
    let bytes = jpeg(&picture(900, 700), None);
    let path = folder.path().join("named-like-a.png");
    fs::write(&path, &bytes).unwrap();
    let first = photos.intake_file(&path, now()).unwrap();
    assert_eq!(first.format, Format::Jpeg, "the name of a file says nothing");
    let second = photos.intake_bytes(&bytes, now()).unwrap();
    assert!(!first.duplicate && second.duplicate && !second.mended);
    assert_eq!(Intake { duplicate: false, ..second }, first);
    assert_eq!(files(folder.path()).len(), 3);
    assert!(path.exists(), "the source is left where it is");
}

#[test]
fn small_pictures_are_not_blown_up() {
    let (_folder, photos) = open();
    for (width, height) in [(1, 1), (7, 300), (320, 1), (321, 200)] {
        let taken_in = photos.intake_bytes(&png(&picture(width, height), None), now()).unwrap();
        let large = decoded(&photos.read(taken_in.id, Rendition::Large).unwrap());
        assert_eq!(large.dimensions(), (width, height));
        assert_eq!(taken_in.judgement.hints.first(), Some(&Hint::TooSmall));
    }
}

/// The eight orientations by the corners they name (EXIF 2.3, tag 0112: where row 0 and column 0 are seen).
#[test]
fn each_orientation_is_seen_upright() {
    for (value, corner) in [
        (1, (0.0, 0.0)),
        (2, (1.0, 0.0)),
        (3, (1.0, 1.0)),
        (4, (0.0, 1.0)),
        (5, (0.0, 0.0)),
        (6, (1.0, 0.0)),
        (7, (1.0, 1.0)),
        (8, (0.0, 1.0)),
    ] {
        for (format, write) in WRITERS {
            let (_folder, photos) = open();
            let block = exif(value, "2026:05:04 09:15:30", "-07:00");
            let taken_in = photos.intake_bytes(&write(&picture(1200, 600), Some(&block)), now()).unwrap();
            assert_eq!(taken_in.orientation, Orientation::new(value as u8).unwrap(), "{format:?}");
            assert_eq!(taken_in.taken.unwrap().to_string(), "2026-05-04 09:15:30-07:00");
            let upright = if value >= 5 { (600, 1200) } else { (1200, 600) };
            assert_eq!((taken_in.width, taken_in.height), upright);
            for rendition in [Rendition::Large, Rendition::Small, Rendition::Original] {
                let seen = decoded(&photos.share(taken_in.id, rendition).unwrap());
                // A third of the way in from the named corner, and the same from the opposite one.
                let at = |(x, y): (f64, f64)| {
                    let side = |end: f64, length: u32| ((end * 0.8 + 0.1) * f64::from(length)) as u32;
                    seen.get_pixel(side(x, seen.width()), side(y, seen.height())).0
                };
                let red = |[r, g, _]: [u8; 3]| i32::from(r) - i32::from(g) > 100;
                assert!(red(at(corner)), "{value} {format:?} {rendition:?}");
                assert!(!red(at((1.0 - corner.0, 1.0 - corner.1))), "{value} {format:?} {rendition:?}");
                // Rows became columns for 5 to 8: the red corner is a third of each side.
                assert_eq!(seen.width() < seen.height(), value >= 5);
            }
        }
    }
}

/// Mirrored orientations differ from turned ones only off the diagonal.
#[test]
fn mirrored_and_turned_photos_are_told_apart() {
    // Top left red, top right green, bottom left blue, bottom right white.
    let stored = RgbImage::from_fn(400, 400, |x, y| match (x < 200, y < 200) {
        (true, true) => Rgb([255, 0, 0]),
        (false, true) => Rgb([0, 255, 0]),
        (true, false) => Rgb([0, 0, 255]),
        (false, false) => Rgb([255, 255, 255]),
    });
    for (value, seen) in
        [(1, "RGBW"), (2, "GRWB"), (3, "WBGR"), (4, "BWRG"), (5, "RBGW"), (6, "BRWG"), (7, "WGBR"), (8, "GWRB")]
    {
        let (_folder, photos) = open();
        let block = exif(value, "2026:05:04 09:15:30", "-07:00");
        let taken_in = photos.intake_bytes(&png(&stored, Some(&block)), now()).unwrap();
        let large = decoded(&photos.read(taken_in.id, Rendition::Large).unwrap());
        let letters: String = [(100, 100), (300, 100), (100, 300), (300, 300)]
            .map(|(x, y)| match large.get_pixel(x, y).0.map(|level| level > 128) {
                [true, true, true] => 'W',
                [true, ..] => 'R',
                [_, true, _] => 'G',
                _ => 'B',
            })
            .iter()
            .collect();
        assert_eq!(letters, seen, "orientation {value}");
    }
}

#[test]
fn shared_copies_carry_nothing_but_the_picture() {
    let block = exif(6, "2026:05:04 09:15:30", "+02:00");
    for (format, write) in WRITERS {
        let (_folder, photos) = open();
        let mut bytes = write(&picture(1000, 800), Some(&block));
        // A film behind the picture, as some phones put one.
        bytes.extend_from_slice(b"ftypHIDDEN");
        let id = match photos.intake_bytes(&bytes, now()) {
            Ok(taken_in) => taken_in.id,
            Err(error) => panic!("{format:?}: {error:?}"),
        };
        let kept = photos.read(id, Rendition::Original).unwrap();
        assert!(kept.windows(7).any(|part| part == b"Orchard"), "the original keeps its notes");
        for rendition in [Rendition::Original, Rendition::Large, Rendition::Small] {
            let shared = photos.share(id, rendition).unwrap();
            for hidden in [&b"Orchard"[..], b"Exif", b"2026:", b"HIDDEN", b"JUMB", b"http"] {
                assert!(!shared.windows(hidden.len()).any(|part| part == hidden), "{format:?} {rendition:?}");
            }
            assert_eq!(shared.last_chunk(), Some(&[0xff, 0xd9]), "nothing follows the picture");
        }
    }
}

#[test]
fn a_camera_time_that_is_no_time_is_left_out() {
    for (time, offset, shown) in [
        ("2026:05:04 09:15:30", "", Some("2026-05-04 09:15:30")),
        ("2026:05:04 09:15:30", "+05:45", Some("2026-05-04 09:15:30+05:45")),
        ("2026:05:04 09:15:30", "+99:99", Some("2026-05-04 09:15:30")),
        ("0000:00:00 00:00:00", "+00:00", None),
        ("2026:13:04 09:15:30", "+00:00", None),
        ("2026:02:30 09:15:30", "+00:00", None),
        ("2026:05:04 25:15:30", "+00:00", None),
        ("    :  :     :  :  ", "   :  ", None),
        ("yesterday", "", None),
    ] {
        let (_folder, photos) = open();
        let taken_in = photos.intake_bytes(&jpeg(&picture(80, 60), Some(&exif(1, time, offset))), now()).unwrap();
        assert_eq!(taken_in.taken.map(|taken| taken.to_string()).as_deref(), shown, "{time} {offset}");
    }
}

#[test]
fn what_is_not_a_photo_is_refused_by_name() {
    let (folder, photos) = open();
    let other = |kind| Refusal::OtherKind { kind };
    for (bytes, expected) in [
        (&b""[..], Refusal::Empty),
        (b"\0\0\0\x24ftypheic\0\0\0\0mif1MiHE", Refusal::Heic),
        (b"\0\0\0\x1cftypmif1\0\0\0\0mif1heic", Refusal::Heic),
        (b"\0\0\0\x1cftypavif\0\0\0\0mif1avif", other(OtherKind::Avif)),
        (b"\0\0\0\x18ftypmp42\0\0\0\0isommp42", other(OtherKind::Film)),
        (b"\x1a\x45\xdf\xa3 film", other(OtherKind::Film)),
        (b"GIF89a\x01\0\x01\0", other(OtherKind::Gif)),
        (b"BM\x46\0\0\0\0\0\0\0", other(OtherKind::Bmp)),
        (b"II*\0\x08\0\0\0", other(OtherKind::Tiff)),
        (b"MM\0*\0\0\0\x08", other(OtherKind::Tiff)),
        (b"\0\0\0\x0cJXL \r\n\x87\n", other(OtherKind::JpegXl)),
        (b"%PDF-1.7", other(OtherKind::Pdf)),
        (b"left front 8/32", Refusal::NotAPicture),
        (b"\xff\xd8\xff", Refusal::Damaged { format: Format::Jpeg }),
        (b"\x89PNG\r\n\x1a\n", Refusal::Damaged { format: Format::Png }),
        (b"RIFF\x04\0\0\0WEBP", Refusal::Damaged { format: Format::Webp }),
    ] {
        assert_eq!(refusal(photos.intake_bytes(bytes, now())), expected, "{bytes:?}");
        let path = folder.path().join("file");
        fs::write(&path, bytes).unwrap();
        assert_eq!(refusal(photos.intake_file(&path, now())), expected, "{bytes:?}");
    }
    assert_eq!(refusal(photos.intake_file(&folder.path().join("absent"), now())), Refusal::Unreachable);
    assert_eq!(refusal(photos.intake_file(folder.path(), now())), Refusal::NotAPicture);
    assert_eq!(files(folder.path()), [""; 0], "a refusal leaves nothing");
}

#[test]
fn a_file_that_is_too_long_is_refused_before_it_is_copied() {
    let (folder, photos) = open();
    let path = folder.path().join("long.jpg");
    let file = File::create(&path).unwrap();
    file.set_len(lugbook::photos::MAX_BYTES + 1).unwrap();
    let bytes = lugbook::photos::MAX_BYTES + 1;
    let limit = lugbook::photos::MAX_BYTES;
    assert_eq!(refusal(photos.intake_file(&path, now())), Refusal::TooManyBytes { bytes, limit });
    assert_eq!(files(folder.path()), [""; 0]);
}
