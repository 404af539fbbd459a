//! Photos: whole or not at all, and nothing a file says is believed before it is looked at.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Duration;

use image::{ImageEncoder, Rgb, RgbImage};
use lugbook::calendar::Moment;
use lugbook::entry::CoverBox;
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

/// A folder in memory where there is one: these checks are not of the medium, and syncing it is slow.
fn folder() -> tempfile::TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).unwrap()
}

fn open() -> (tempfile::TempDir, Photos) {
    let folder = folder();
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
            let taken_in = photos.intake_bytes(&write(&picture(480, 240), Some(&block)), now()).unwrap();
            assert_eq!(taken_in.orientation, Orientation::new(value as u8).unwrap(), "{format:?}");
            assert_eq!(taken_in.taken.unwrap().to_string(), "2026-05-04 09:15:30-07:00");
            let upright = if value >= 5 { (240, 480) } else { (480, 240) };
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

/// The least box around what is red in a picture, with some pixels more for what JPEG smears.
fn red_box(picture: &RgbImage) -> CoverBox {
    let red: Vec<(u32, u32)> =
        picture.enumerate_pixels().filter(|(_, _, pixel)| is_red(pixel)).map(|(x, y, _)| (x, y)).collect();
    let (xs, ys) = (red.iter().map(|at| at.0), red.iter().map(|at| at.1));
    let (left, top) = (xs.clone().min().unwrap().saturating_sub(12), ys.clone().min().unwrap().saturating_sub(12));
    CoverBox { left, top, width: xs.max().unwrap() + 12 - left, height: ys.max().unwrap() + 12 - top }
}

fn is_red(pixel: &Rgb<u8>) -> bool {
    i32::from(pixel.0[0]) - i32::from(pixel.0[1]) > 40
}

#[test]
fn nothing_of_a_covered_part_is_in_a_copy_and_the_photo_stays_as_it_is() {
    // A red plate off the middle, so that a box turned or mirrored the wrong way would miss it.
    let plate = RgbImage::from_fn(2400, 1600, |x, y| match (300..700).contains(&x) && (200..320).contains(&y) {
        true => Rgb([230, 20, 20]),
        false => Rgb([60, 110, 150]),
    });
    for value in 1..=8 {
        for (format, write) in WRITERS {
            let (_folder, photos) = open();
            let bytes = write(&plate, Some(&exif(value, "2026:05:04 09:15:30", "+02:00")));
            let id = photos.intake_bytes(&bytes, now()).unwrap().id;
            let seen = decoded(&photos.share(id, Rendition::Original).unwrap());
            assert_eq!(photos.size(id).unwrap(), seen.dimensions());
            let cover = red_box(&seen);
            for rendition in [Rendition::Original, Rendition::Large, Rendition::Small] {
                let plain = decoded(&photos.share(id, rendition).unwrap());
                let covered = photos.share_covered(id, rendition, &[cover]).unwrap();
                assert!(!covered.windows(7).any(|part| part == b"Orchard"), "{value} {format:?}");
                let covered = decoded(&covered);
                assert_eq!(plain.dimensions(), covered.dimensions(), "{value} {format:?} {rendition:?}");
                assert!(
                    plain.pixels().any(is_red) && !covered.pixels().any(is_red),
                    "{value} {format:?} {rendition:?}"
                );
                // A box's edge reaches as far as the 16 pixels that JPEG keeps together at half the color, and one more.
                let (scale, margin) = (f64::from(plain.width()) / f64::from(seen.width()), 17.0);
                let near = |at: u32, from: u32, length: u32| {
                    let (at, from) = (f64::from(at), f64::from(from) * scale);
                    at > from - margin && at < from + f64::from(length) * scale + margin
                };
                let changed = plain.enumerate_pixels().zip(covered.pixels()).filter(|((x, y, was), is)| {
                    let inside = near(*x, cover.left, cover.width) && near(*y, cover.top, cover.height);
                    !inside && was.0.iter().zip(is.0).any(|(a, b)| a.abs_diff(b) > 16)
                });
                assert_eq!(changed.count(), 0, "the rest is as it was: {value} {format:?} {rendition:?}");
            }
            assert_eq!(photos.read(id, Rendition::Original).unwrap(), bytes);
            assert!(
                decoded(&photos.read(id, Rendition::Large).unwrap()).pixels().any(is_red),
                "the screen's own stays"
            );
        }
    }
}

#[test]
fn boxes_at_and_beyond_every_edge_cover_up_to_it() {
    let (_folder, photos) = open();
    let id = photos.intake_bytes(&jpeg(&picture(900, 500), None), now()).unwrap().id;
    let boxes = [(0, 0, 1, 1), (899, 499, 1, 1), (0, 0, u32::MAX, u32::MAX), (450, 0, u32::MAX, 3), (2000, 2000, 5, 5)];
    for (left, top, width, height) in boxes {
        let copy = photos.share_covered(id, Rendition::Original, &[CoverBox { left, top, width, height }]).unwrap();
        let seen = decoded(&copy);
        let (x, y) = (left.min(899), top.min(499));
        if left < 900 {
            let level = seen.get_pixel(x, y).0;
            assert!(level.iter().all(|level| level.abs_diff(0x70) < 24), "{level:?} at {x} {y}");
        }
    }
    let all = photos.share_covered(id, Rendition::Large, &[CoverBox { left: 0, top: 0, width: 900, height: 500 }]);
    assert!(decoded(&all.unwrap()).pixels().all(|pixel| pixel.0.iter().all(|level| level.abs_diff(0x70) <= 2)));
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

/// A PNG's header for a picture of any size, with right checksums and no pixels.
fn png_header(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n".to_vec();
    for (kind, data) in [
        (b"IHDR", [&width.to_be_bytes()[..], &height.to_be_bytes(), &[8, 6, 0, 0, 0]].concat()),
        (b"IDAT", vec![0x78, 0x9c, 0x03, 0, 0, 0, 0, 1]),
        (b"IEND", vec![]),
    ] {
        bytes.extend((data.len() as u32).to_be_bytes());
        bytes.extend(kind);
        bytes.extend(&data);
        bytes.extend(crc32([&kind[..], &data].concat()).to_be_bytes());
    }
    bytes
}

/// The checksum of a PNG's chunk (ISO 3309).
fn crc32(bytes: Vec<u8>) -> u32 {
    !bytes.iter().fold(u32::MAX, |crc, &byte| {
        (0..8).fold(crc ^ u32::from(byte), |crc, _| if crc & 1 == 1 { (crc >> 1) ^ 0xedb8_8320 } else { crc >> 1 })
    })
}

/// The frame header of a WebP, lossless: 14 bits for each side.
fn webp_header(width: u32, height: u32) -> Vec<u8> {
    let bits = (width - 1) | ((height - 1) << 14);
    let data = [&[0x2f][..], &bits.to_le_bytes(), &[0; 8]].concat();
    let chunk = [&b"VP8L"[..], &(data.len() as u32).to_le_bytes(), &data, &[0]].concat();
    [&b"RIFF"[..], &(chunk.len() as u32 + 4).to_le_bytes(), b"WEBP", &chunk].concat()
}

/// The bytes of a JPEG with the size in its header replaced, and what follows the header kept.
fn jpeg_header(width: u16, height: u16, progressive: bool) -> Vec<u8> {
    let mut bytes = jpeg(&picture(64, 64), None);
    let at = bytes.windows(2).position(|pair| pair == [0xff, 0xc0]).unwrap();
    bytes[at + 5..at + 7].copy_from_slice(&height.to_be_bytes());
    bytes[at + 7..at + 9].copy_from_slice(&width.to_be_bytes());
    if progressive {
        bytes[at + 1] = 0xc2;
    }
    bytes
}

/// Bytes of memory this process holds at most, so far; nothing where the system doesn't tell.
fn most_memory() -> Option<u64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmPeak"))?;
    Some(line.split_whitespace().nth(1)?.parse::<u64>().ok()? * 1024)
}

#[test]
fn headers_that_ask_for_too_much_are_refused_before_anything_is_allocated() {
    let (folder, photos) = open();
    let before = most_memory();
    for (bytes, side) in [
        (jpeg_header(30_000, 30_000, false), 30_000),
        (jpeg_header(30_000, 30_000, true), 30_000),
        (jpeg_header(65_535, 65_535, false), 65_535),
        (png_header(30_000, 30_000), 30_000),
        (png_header(0x7fff_ffff, 0x7fff_ffff), 0x7fff_ffff),
        (webp_header(16_383, 16_383), 16_383),
    ] {
        match refusal(photos.intake_bytes(&bytes, now())) {
            Refusal::TooManyPixels { width, height, .. } => assert_eq!((width, height), (side, side)),
            // The PNG decoder itself refuses rows that don't fit its limit.
            Refusal::Damaged { format: Format::Png } if side == 0x7fff_ffff => {}
            other => panic!("{side}: {other:?}"),
        }
    }
    // A progressive JPEG must be held whole, so it may have fewer pixels than a baseline one.
    let big = |progressive| photos.intake_bytes(&jpeg_header(10_000, 10_000, progressive), now());
    assert!(matches!(refusal(big(true)), Refusal::TooManyPixels { .. }));
    assert_eq!(files(folder.path()), [""; 0]);
    // Its data ends early; like other readers, ours shows what there is.
    assert_eq!(big(false).unwrap().width, 10_000);
    if let (Some(before), Some(after)) = (before, most_memory()) {
        // Other tests run beside this one; none of them, nor this one, comes near what the headers asked for.
        assert!(after < before + (1 << 30), "{before} {after}");
    }
}

#[test]
fn a_picture_without_width_or_height_is_damaged() {
    let (_folder, photos) = open();
    for bytes in [jpeg_header(0, 10, false), jpeg_header(10, 0, false), png_header(0, 5), png_header(5, 0)] {
        let refusal = refusal(photos.intake_bytes(&bytes, now()));
        // A JPEG may leave its height to a later marker, which no camera does.
        assert!(matches!(refusal, Refusal::Damaged { .. } | Refusal::UnusualForm { format: Format::Jpeg }));
    }
}

/// A WebP of the chunks given.
fn riff(chunks: &[(&[u8; 4], &[u8])]) -> Vec<u8> {
    let chunk = |(kind, data): &(&[u8; 4], &[u8])| {
        [&kind[..], &(data.len() as u32).to_le_bytes(), data, &[0][..data.len() % 2]].concat()
    };
    let body: Vec<u8> = chunks.iter().flat_map(chunk).collect();
    [&b"RIFF"[..], &(body.len() as u32 + 4).to_le_bytes(), b"WEBP", &body].concat()
}

#[test]
fn a_webp_whose_pieces_disagree_is_refused_before_they_are_decoded() {
    let (_folder, photos) = open();
    let sound = webp(&picture(40, 30), None);
    let lossless = &sound[20..];
    let extended = |flags: u8, width: u8| [flags, 0, 0, 0, width - 1, 0, 0, 29, 0, 0];
    let refused = |bytes: &[u8]| refusal(photos.intake_bytes(bytes, now()));
    assert!(photos.intake_bytes(&riff(&[(b"VP8X", &extended(0, 40)), (b"VP8L", lossless)]), now()).is_ok());
    let damaged = Refusal::Damaged { format: Format::Webp };
    let unusual = Refusal::UnusualForm { format: Format::Webp };
    assert_eq!(refused(&riff(&[(b"VP8X", &extended(0, 41)), (b"VP8L", lossless)])), damaged);
    assert_eq!(refused(&riff(&[(b"VP8X", &extended(0, 40))])), damaged);
    assert_eq!(refused(&riff(&[(b"VP8X", &extended(2, 40)), (b"VP8L", lossless)])), unusual);
    assert_eq!(refused(&riff(&[(b"VP8L", lossless), (b"VP8L", lossless)])), unusual);
    assert_eq!(refused(&riff(&[(b"VP8L", lossless), (b"ANMF", &[0; 40])])), unusual);
    // Notes that claim four gigabytes.
    let mut notes = riff(&[(b"VP8X", &extended(8, 40)), (b"VP8L", lossless), (b"EXIF", b"MM\0*")]);
    let at = notes.len() - 8;
    notes[at..at + 4].copy_from_slice(&u32::MAX.to_le_bytes());
    assert_eq!(refused(&notes), damaged);
}

#[test]
fn a_jpeg_of_thousands_of_scans_is_refused_without_walking_them() {
    let (_folder, photos) = open();
    let whole = jpeg(&picture(640, 480), None);
    let at = whole.windows(2).position(|pair| pair == [0xff, 0xda]).unwrap();
    let (head, scan) = (&whole[..at], &whole[at..whole.len() - 2]);
    let with = |scans: usize| [head, &scan.repeat(scans), &[0xff, 0xd9]].concat();
    assert!(photos.intake_bytes(&with(3), now()).is_ok(), "repeated scans are odd, but decode");
    assert_eq!(refusal(photos.intake_bytes(&with(101), now())), Refusal::Damaged { format: Format::Jpeg });
}

#[test]
fn every_truncation_is_refused_or_shows_the_whole_picture() {
    let (folder, photos) = open();
    for (format, write) in WRITERS {
        let bytes = write(&picture(48, 36), Some(&exif(6, "2026:05:04 09:15:30", "-07:00")));
        for length in 0..bytes.len() {
            match photos.intake_bytes(&bytes[..length], now()) {
                Err(PhotoError::Refused(_)) => {}
                Ok(taken_in) => {
                    // Only what follows the pixels may be missing.
                    assert!(length + 64 > bytes.len(), "{format:?} cut at {length} of {}", bytes.len());
                    assert_eq!((taken_in.width, taken_in.height), (36, 48), "{format:?} cut at {length}");
                }
                Err(other) => panic!("{format:?} cut at {length}: {other:?}"),
            }
        }
        assert!(photos.intake_bytes(&bytes, now()).is_ok());
    }
    assert!(files(folder.path()).iter().all(|file| !file.starts_with("incoming/")));
}

/// A disk on which the n-th thing that is asked of it fails, in a given way.
struct Failing {
    left: Arc<AtomicUsize>,
    kind: io::ErrorKind,
    /// The failing write first writes some of its bytes.
    short: bool,
}

impl Failing {
    fn step(&self) -> io::Result<()> {
        let left = self.left.load(Ordering::SeqCst);
        if left == usize::MAX {
            return Ok(());
        }
        match left {
            0 => Err(self.kind.into()),
            _ => {
                self.left.store(left - 1, Ordering::SeqCst);
                Ok(())
            }
        }
    }
}

impl Disk for Failing {
    fn create(&self, path: &Path) -> io::Result<File> {
        self.step()?;
        File::options().write(true).create_new(true).open(path)
    }

    fn write(&self, file: &mut File, bytes: &[u8]) -> io::Result<usize> {
        match self.step() {
            Ok(()) => io::Write::write(file, bytes),
            Err(error) if self.short => {
                io::Write::write_all(file, &bytes[..bytes.len() / 2])?;
                Err(error)
            }
            Err(error) => Err(error),
        }
    }

    fn stamp(&self, file: &File, at: std::time::SystemTime) -> io::Result<()> {
        self.step()?;
        file.set_modified(at)
    }

    fn sync(&self, file: &File) -> io::Result<()> {
        self.step()?;
        file.sync_all()
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step()?;
        fs::rename(from, to)
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<()> {
        self.step()?;
        File::open(folder)?.sync_all()
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.step()?;
        fs::remove_file(path)
    }
}

/// Whatever lies under a photo's name is that photo, whole.
fn assert_nothing_half_written(folder: &Path, original: &[u8]) {
    let photos = Photos::open(folder.join("photos")).unwrap();
    for file in files(folder) {
        if let Some(name) = file.strip_prefix("originals/") {
            let kept = fs::read(folder.join("photos/originals").join(name)).unwrap();
            assert_eq!(kept, original, "{file}");
        }
    }
    for id in photos.kept().unwrap() {
        assert!(photos.check([id]).problems.is_empty(), "where the original is, all is");
    }
}

#[test]
fn a_failure_at_any_step_of_intake_leaves_nothing_half_written() {
    let bytes = jpeg(&picture(64, 48), None);
    for kind in [io::ErrorKind::StorageFull, io::ErrorKind::Other, io::ErrorKind::ReadOnlyFilesystem] {
        for short in [false, true] {
            for duplicate in [false, true] {
                let mut step = 0;
                loop {
                    let folder = folder();
                    let left = Arc::new(AtomicUsize::new(usize::MAX));
                    let disk = Failing { left: Arc::clone(&left), kind, short };
                    let photos = Photos::open_on(folder.path().join("photos"), Box::new(disk)).unwrap();
                    if duplicate {
                        photos.intake_bytes(&bytes, now()).unwrap();
                    }
                    left.store(step, Ordering::SeqCst);
                    let result = photos.intake_bytes(&bytes, now());
                    let failed = left.swap(usize::MAX, Ordering::SeqCst) == 0;
                    match &result {
                        Ok(taken_in) => assert_eq!(taken_in.id, Digest::of(&bytes)),
                        Err(PhotoError::NoSpace { needed }) => {
                            assert!(kind == io::ErrorKind::StorageFull && *needed > bytes.len() as u64);
                        }
                        Err(PhotoError::Storage { .. }) => assert_ne!(kind, io::ErrorKind::StorageFull),
                        Err(other) => panic!("step {step}: {other:?}"),
                    }
                    assert_nothing_half_written(folder.path(), &bytes);
                    // The same photo goes in afterwards, and what is left over is swept.
                    assert_eq!(photos.intake_bytes(&bytes, now()).unwrap().id, Digest::of(&bytes));
                    let named = BTreeSet::from([Digest::of(&bytes)]);
                    photos.sweep(&named, later(DAY * 40_000), DAY).unwrap();
                    assert_eq!(files(folder.path()).len(), 3, "step {step}");
                    if !failed {
                        assert!(result.is_ok());
                        break;
                    }
                    step += 1;
                }
                assert!(step >= 12, "the steps were counted: {step}");
            }
        }
    }
}

#[test]
fn a_sweep_takes_what_no_entry_names_after_the_grace_period_and_nothing_else() {
    let (folder, photos) = open();
    let [named, unnamed, young] =
        [40, 60, 80].map(|size| jpeg(&picture(size, 90), None)).map(|bytes| (Digest::of(&bytes), bytes));
    photos.intake_bytes(&named.1, now()).unwrap();
    photos.intake_bytes(&unnamed.1, now()).unwrap();
    let unfinished = folder.path().join("photos/incoming/1-1.part");
    fs::write(&unfinished, b"half a photo").unwrap();
    File::options()
        .append(true)
        .open(&unfinished)
        .unwrap()
        .set_modified(std::time::UNIX_EPOCH + Duration::from_millis(NOW as u64))
        .unwrap();
    let stranger = folder.path().join("photos/originals/notes.txt");
    fs::write(&stranger, b"not ours").unwrap();

    photos.intake_bytes(&young.1, later(DAY * 6)).unwrap();
    let entries = BTreeSet::from([named.0]);
    let early = photos.sweep(&entries, later(DAY * 7), DAY * 7).unwrap();
    assert_eq!((early.photos.len(), early.waiting, early.unfinished, early.freed), (0, 2, 0, 0));
    let back = photos.sweep(&entries, Moment::from_unix_ms(NOW - 86_400_000), DAY * 7).unwrap();
    assert_eq!(back.photos.len(), 0, "a clock that went back removes nothing");

    let swept = photos.sweep(&entries, later(DAY * 7 + Duration::from_secs(1)), DAY * 7).unwrap();
    assert_eq!((&swept.photos[..], swept.waiting, swept.unfinished), (&[unnamed.0][..], 1, 1));
    assert_eq!(swept.freed, unnamed.1.len() as u64 + 12);
    assert_eq!(photos.kept().unwrap(), BTreeSet::from([named.0, young.0]).into_iter().collect::<Vec<_>>());
    assert!(photos.check([named.0, young.0]).problems.is_empty());
    assert!(stranger.exists());
    fs::remove_file(stranger).unwrap();
    assert_eq!(files(folder.path()).len(), 6);
}

#[test]
fn a_photo_taken_in_again_is_young_again() {
    let (_folder, photos) = open();
    let bytes = jpeg(&picture(90, 90), None);
    let id = photos.intake_bytes(&bytes, now()).unwrap().id;
    assert!(photos.intake_bytes(&bytes, later(DAY * 30)).unwrap().duplicate);
    let swept = photos.sweep(&BTreeSet::new(), later(DAY * 31), DAY * 7).unwrap();
    assert_eq!((swept.photos.len(), swept.waiting), (0, 1));
    let swept = photos.sweep(&BTreeSet::new(), later(DAY * 38), DAY * 7).unwrap();
    assert_eq!(swept.photos, [id]);
}

#[test]
fn every_flipped_byte_of_a_photo_or_rendition_is_noticed_and_renditions_are_made_again() {
    let (folder, photos) = open();
    let bytes = jpeg(&picture(60, 40), None);
    let id = photos.intake_bytes(&bytes, now()).unwrap().id;
    let before = photos.read(id, Rendition::Small).unwrap();
    for file in files(folder.path()) {
        let path = folder.path().join("photos").join(&file);
        let whole = fs::read(&path).unwrap();
        for at in 0..whole.len() {
            let mut flipped = whole.clone();
            flipped[at] ^= 1 << (at % 8);
            fs::write(&path, &flipped).unwrap();
            let problems = photos.check([id]).problems;
            assert_eq!(problems.len(), 1, "{file} {at}");
            assert_eq!(problems[0].damage, Damage::Changed);
        }
        if file.contains("-1600") {
            fs::write(&path, &whole).unwrap();
        }
        if file.starts_with("originals") {
            assert!(matches!(
                photos.read(id, Rendition::Original),
                Err(PhotoError::Lost { damage: Damage::Changed, .. })
            ));
            let mended = photos.intake_bytes(&bytes, now()).unwrap();
            assert!(mended.duplicate && mended.mended);
        }
    }
    assert_eq!(photos.read(id, Rendition::Small).unwrap(), before);
    photos.path(id, Rendition::Large).unwrap();
    assert!(photos.check([id]).problems.is_empty(), "asked for, they were made again");
    // One photo's rendition under another's name is noticed too.
    let other = photos.intake_bytes(&jpeg(&picture(61, 40), None), now()).unwrap().id;
    let renditions = folder.path().join("photos/renditions");
    fs::copy(renditions.join(format!("{id}-320.jpg")), renditions.join(format!("{other}-320.jpg"))).unwrap();
    assert_eq!(photos.check([other]).problems.len(), 1);
}

#[test]
fn a_missing_photo_is_told_and_a_missing_rendition_is_made() {
    let (folder, photos) = open();
    let id = photos.intake_bytes(&png(&picture(700, 500), None), now()).unwrap().id;
    for file in files(folder.path()).iter().filter(|file| file.starts_with("renditions")) {
        fs::remove_file(folder.path().join("photos").join(file)).unwrap();
    }
    assert_eq!(photos.check([id]).problems.len(), 2);
    assert!(photos.path(id, Rendition::Small).unwrap().is_file());
    assert!(photos.path(id, Rendition::Large).unwrap().is_file());
    assert!(photos.check([id]).problems.is_empty());
    fs::remove_file(photos.path(id, Rendition::Original).unwrap()).unwrap();
    let original = photos.path(id, Rendition::Original);
    assert!(matches!(original, Err(PhotoError::Lost { damage: Damage::Missing, .. })));
    let stranger = Digest::of(b"never taken");
    assert!(matches!(photos.path(stranger, Rendition::Small), Err(PhotoError::Lost { damage: Damage::Missing, .. })));
    assert!(photos.path(id, Rendition::Small).is_ok(), "what is left of a lost photo is still shown");
}

#[cfg(unix)]
#[test]
fn the_folder_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt;
    let (folder, _photos) = open();
    for inner in ["photos", "photos/originals", "photos/renditions", "photos/incoming"] {
        let mode = fs::metadata(folder.path().join(inner)).unwrap().permissions().mode();
        assert_eq!(mode & 0o077, 0, "{inner}");
    }
}

#[test]
fn hints_name_what_is_wrong_with_the_picture() {
    let (_folder, photos) = open();
    let hints = |picture: &RgbImage| photos.intake_bytes(&jpeg(picture, None), now()).unwrap().judgement.hints;
    let sharp = picture(1200, 900);
    assert_eq!(hints(&sharp), []);
    let blocks = image::imageops::resize(&picture(120, 90), 1200, 900, image::imageops::FilterType::Nearest);
    assert_eq!(hints(&blocks), []);
    assert_eq!(hints(&image::imageops::blur(&blocks, 6.0)), [Hint::Blurred]);
    let levels = |change: fn(u8) -> u8| {
        let mut picture = sharp.clone();
        picture.pixels_mut().for_each(|pixel| pixel.0 = pixel.0.map(change));
        picture
    };
    assert_eq!(hints(&levels(|level| level / 5)), [Hint::TooDark]);
    assert_eq!(hints(&levels(|level| level.saturating_mul(4))), [Hint::TooBright]);
    assert_eq!(hints(&RgbImage::from_pixel(1200, 900, Rgb([120, 120, 120]))), [Hint::NothingStandsOut]);
    assert_eq!(hints(&picture(600, 450)), [Hint::TooSmall]);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn no_bytes_make_intake_fail_otherwise_than_by_a_refusal(
        which in 0..3_usize,
        changes in proptest::collection::vec((any::<proptest::sample::Index>(), any::<u8>()), 1..12),
    ) {
        let (folder, photos) = open();
        let (_, write) = WRITERS[which];
        let mut bytes = write(&picture(40, 30), Some(&exif(3, "2026:05:04 09:15:30", "-07:00")));
        for (at, value) in changes {
            let at = at.index(bytes.len());
            bytes[at] = value;
        }
        match photos.intake_bytes(&bytes, now()) {
            Ok(taken_in) => {
                prop_assert_eq!(photos.read(taken_in.id, Rendition::Original).unwrap(), bytes);
                prop_assert!(photos.check([taken_in.id]).problems.is_empty());
                prop_assert!((0.0..=1.0).contains(&taken_in.judgement.sharpness));
            }
            Err(PhotoError::Refused(_)) => prop_assert_eq!(files(folder.path()).len(), 0),
            Err(other) => prop_assert!(false, "{:?}", other),
        }
    }

    #[test]
    fn exif_of_any_bytes_is_read_or_left_out(block in proptest::collection::vec(any::<u8>(), 0..200), start in 0..3_usize) {
        let (_folder, photos) = open();
        let start: &[u8] = [&b"MM\0*\0\0\0\x08\0\x04"[..], b"II*\0\x08\0\0\0\x04\0", b""][start];
        let block = [start, &block].concat();
        let taken_in = photos.intake_bytes(&jpeg(&picture(16, 16), Some(&block)), now()).unwrap();
        prop_assert!((1..=8).contains(&taken_in.orientation.value()));
    }

    #[test]
    fn renditions_keep_the_shape(width in 1..2500_u32, height in 1..20_u32) {
        let (_folder, photos) = open();
        let taken_in = photos.intake_bytes(&jpeg(&picture(width, height), None), now()).unwrap();
        let large = decoded(&photos.read(taken_in.id, Rendition::Large).unwrap());
        let longest = width.max(height).min(1600);
        prop_assert_eq!(large.width().max(large.height()), longest);
        let exact = |side: u32| (f64::from(side) * f64::from(longest) / f64::from(width.max(height))).max(1.0);
        prop_assert!((f64::from(large.width()) - exact(width)).abs() <= 0.5);
        prop_assert!((f64::from(large.height()) - exact(height)).abs() <= 0.5);
    }
}

/// Files written by other programs' encoders (libjpeg-turbo, zlib's PNG, libwebp) in the forms that cameras and
/// screens make: a yellow disc on dark gray, its middle stored at column 8, row 8 of 24 × 16.
#[test]
fn every_form_of_the_three_formats_is_shown_as_it_was_drawn() {
    let seeds = Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/seeds-photos");
    let mut seen = 0;
    for file in fs::read_dir(seeds).unwrap() {
        let path = file.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let (_folder, photos) = open();
        let result = photos.intake_file(&path, now());
        if name == "animated.webp" {
            assert_eq!(refusal(result), Refusal::UnusualForm { format: Format::Webp });
            continue;
        }
        let taken_in = result.unwrap_or_else(|why| panic!("{name}: {why:?}"));
        let noted = ["baseline.jpg", "progressive.jpg", "rgb.png", "lossy.webp", "lossless.webp", "alpha.webp"];
        assert_eq!(taken_in.orientation.value(), if noted.contains(&name.as_str()) { 6 } else { 1 }, "{name}");
        assert_eq!(taken_in.taken.is_some(), noted.contains(&name.as_str()), "{name}");
        for rendition in [Rendition::Original, Rendition::Large, Rendition::Small] {
            let shown = decoded(&photos.share(taken_in.id, rendition).unwrap());
            let turned = taken_in.orientation.swaps_sides();
            assert_eq!(shown.dimensions(), if turned { (16, 24) } else { (24, 16) }, "{name}");
            let [r, g, b] = shown.get_pixel(if turned { 7 } else { 8 }, 8).0.map(i32::from);
            let [dark, ..] =
                shown.get_pixel(if turned { 1 } else { 20 }, if turned { 20 } else { 14 }).0.map(i32::from);
            match name.as_str() {
                "gray.jpg" | "deep.png" => assert!((r - b).abs() < 12 && r > 130, "{name} {r} {g} {b}"),
                "bits.png" => {}
                // Half see-through, laid on white.
                "alpha.png" | "alpha.webp" => assert!(r > 190 && b < r - 40, "{name} {r} {g} {b}"),
                _ => assert!(r > 170 && g > 145 && b < 90 && dark < 110, "{name} {r} {g} {b} {dark}"),
            }
        }
        seen += 1;
    }
    assert!(seen >= 13, "{seen}");
}

/// The child of the kill test: takes in one photo after another and says each name once it is kept.
#[test]
fn child_that_takes_in_photos_until_it_is_killed() {
    let Some(folder) = std::env::var_os("LUGBOOK_TEST_PHOTOS") else { return };
    let photos = Photos::open(Path::new(&folder).join("photos")).unwrap();
    for number in 0..100_000_u32 {
        let mut small = picture(64, 48);
        small.put_pixel(number % 64, (number / 64) % 48, Rgb([(number / 3072) as u8, 7, 99]));
        let id = photos.intake_bytes(&jpeg(&small, None), now()).unwrap().id;
        println!("kept {id}");
    }
}

#[test]
fn a_killed_program_leaves_each_photo_whole_or_absent() {
    use std::io::BufRead;
    // On the medium itself, not in memory.
    let folder = tempfile::tempdir().unwrap();
    let mut told = BTreeSet::new();
    for round in 0..12_u64 {
        let mut child = std::process::Command::new(std::env::current_exe().unwrap())
            .args(["child_that_takes_in_photos_until_it_is_killed", "--nocapture", "--test-threads=1"])
            .env("LUGBOOK_TEST_PHOTOS", folder.path())
            .stdout(std::process::Stdio::piped())
            .stderr(std::process::Stdio::null())
            .spawn()
            .unwrap();
        let lines = io::BufReader::new(child.stdout.take().unwrap()).lines();
        let reader = std::thread::spawn(move || {
            let lines = lines.map_while(Result::ok);
            lines.filter_map(|line| line.split("kept ").nth(1)?.trim().parse::<Digest>().ok()).collect::<Vec<_>>()
        });
        std::thread::sleep(Duration::from_millis(120 + round * 37));
        child.kill().unwrap();
        child.wait().unwrap();
        told.extend(reader.join().unwrap());

        let photos = Photos::open(folder.path().join("photos")).unwrap();
        let kept: BTreeSet<Digest> = photos.kept().unwrap().into_iter().collect();
        assert!(told.is_subset(&kept), "what was told as kept is kept");
        let problems = photos.check(kept.iter().copied()).problems;
        assert!(problems.is_empty(), "{problems:?}");
    }
    assert!(!told.is_empty(), "the children got to work");
    // What the kills left over is swept; what entries name stays.
    let photos = Photos::open(folder.path().join("photos")).unwrap();
    photos.sweep(&told, later(DAY * 40_000), DAY).unwrap();
    assert_eq!(photos.kept().unwrap(), told.iter().copied().collect::<Vec<_>>());
    assert_eq!(files(folder.path()).len(), told.len() * 3);
}

/// A file system of its own, taken away when dropped; none where this user may not have one.
#[cfg(target_os = "linux")]
struct Mounted(tempfile::TempDir);

#[cfg(target_os = "linux")]
impl Mounted {
    fn new(size: &str) -> Option<Self> {
        let folder = tempfile::tempdir().unwrap();
        let done = std::process::Command::new("mount")
            .args(["-t", "tmpfs", "-o", &format!("size={size}"), "tmpfs"])
            .arg(folder.path())
            .stderr(std::process::Stdio::null())
            .status();
        done.is_ok_and(|status| status.success()).then_some(Self(folder))
    }

    fn remount(&self, how: &str) {
        let status = std::process::Command::new("mount").args(["-o", how]).arg(self.0.path()).status().unwrap();
        assert!(status.success());
    }
}

#[cfg(target_os = "linux")]
impl Drop for Mounted {
    fn drop(&mut self) {
        let _ = std::process::Command::new("umount").arg(self.0.path()).status();
    }
}

#[cfg(target_os = "linux")]
#[test]
fn a_device_that_fills_up_or_turns_read_only_keeps_whole_photos_only() {
    let Some(device) = Mounted::new("1m") else {
        eprintln!("skipped: only root may mount a file system of one megabyte");
        return;
    };
    let folder = device.0.path();
    let photos = Photos::open(folder.join("photos")).unwrap();
    let noisy = |seed: u32| {
        RgbImage::from_fn(300, 220, |x, y| {
            let mut value = x.wrapping_mul(0x9e37_79b1) ^ y.wrapping_mul(0x85eb_ca77) ^ seed.wrapping_mul(0xc2b2_ae3d);
            value ^= value >> 15;
            value = value.wrapping_mul(0x2c1b_3c6d);
            Rgb([value as u8, (value >> 8) as u8, (value >> 16) as u8])
        })
    };
    let mut kept = BTreeSet::new();
    let refused = (0..200).find_map(|seed| match photos.intake_bytes(&jpeg(&noisy(seed), None), now()) {
        Ok(taken_in) => {
            kept.insert(taken_in.id);
            None
        }
        Err(why) => Some(why),
    });
    assert!(matches!(refused, Some(PhotoError::NoSpace { .. })), "{refused:?}");
    assert!(!kept.is_empty());
    assert_eq!(photos.kept().unwrap(), kept.iter().copied().collect::<Vec<_>>());
    assert!(photos.check(kept.iter().copied()).problems.is_empty());
    assert!(files(folder).iter().all(|file| !file.starts_with("incoming")), "the space is given back");

    device.remount("remount,ro");
    let refused = photos.intake_bytes(&jpeg(&picture(20, 20), None), now());
    assert!(matches!(refused, Err(PhotoError::Storage { .. })), "{refused:?}");
    assert!(photos.check(kept.iter().copied()).problems.is_empty());
    assert!(matches!(Photos::open(folder.join("another")), Err(PhotoError::Storage { .. })));
}
