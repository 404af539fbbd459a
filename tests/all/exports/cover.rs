//! What is covered of a photo is on no card, no PDF and no shared copy.

use std::path::Path;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use crate::program::{Said, done, pictures, say};

/// A job with one photo; it has ended.
fn book(folder: &Path) -> std::path::PathBuf {
    let book = folder.join("book");
    done(&book, "lugbook person add Wren");
    done(&book, "lugbook vehicle add \"Farm truck\" --model \"Yardmule 25\" --own");
    done(&book, "lugbook job open \"Farm truck\" rotation-on-a-lift air");
    let photo = pictures().join("sidewall-front-left.jpg");
    done(&book, &format!("lugbook photo sidewall {} FL", photo.display()));
    done(&book, "lugbook job close \"only looked\"");
    book
}

fn is_gray(jpeg: &[u8]) -> bool {
    let picture = image(jpeg);
    picture.iter().all(|level| level.abs_diff(0x70) <= 2)
}

fn image(jpeg: &[u8]) -> Vec<u8> {
    jpeg_decoder::Decoder::new(jpeg).decode().expect("a JPEG")
}

/// The one picture of a card.
fn on_card(book: &Path) -> (Vec<u8>, String) {
    let card = done(book, "lugbook card").out;
    let data = card.split("data:image/jpeg;base64,").nth(1).and_then(|rest| rest.split('"').next()).expect("a picture");
    (STANDARD.decode(data).expect("base64"), card)
}

#[test]
fn a_covered_photo_is_covered_wherever_it_goes_out_and_stays_in_the_book() {
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let before = on_card(&book);
    assert!(!is_gray(&before.0) && !before.1.contains("Parts are covered."));
    let said = done(&book, "lugbook cover 1 0,0,100000,100000");
    assert!(said.out.contains("1 part of photo 1 is covered on cards and shared copies."), "{said:?}");
    let (picture, card) = on_card(&book);
    assert!(is_gray(&picture) && card.contains("Parts are covered."));
    assert!(!card.contains("goes out"), "the ended job's record stays as it was");
    let out = folder.path().join("shared.jpg");
    done(&book, &format!("lugbook share 1 --out {}", out.display()));
    assert!(is_gray(&std::fs::read(&out).unwrap()));
    let pdf = folder.path().join("card.pdf");
    done(&book, &format!("lugbook card --out {}", pdf.display()));
    let bytes = std::fs::read(&pdf).unwrap();
    assert!(bytes.windows(picture.len()).any(|part| part == picture), "the PDF holds the covered copy");
    assert!(!bytes.windows(1000).any(|part| part == &before.0[2000..3000]), "and not the photo");
    let check = done(&book, "lugbook book check --json").json();
    assert_eq!((check["ok"].as_bool(), check["photos"].as_u64()), (Some(true), Some(1)));

    done(&book, "lugbook cover 1");
    assert_eq!(on_card(&book).0, before.0, "uncovered again");
}

#[test]
fn what_covers_nothing_is_refused_and_covers_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let book = book(folder.path());
    let refused = |line: &str| -> Said {
        let said = say(&book, line);
        assert_eq!(said.code, Some(2), "{line}: {said:?}");
        said
    };
    for parts in ["1,2,3", "1,2,3,4,5", "a,b,c,d", "1,2,3,-4", "''"] {
        assert!(refused(&format!("lugbook cover 1 {parts}")).sentence().contains("is no box"), "{parts}");
    }
    for parts in ["99999,0,5,5", "0,99999,5,5", "5,5,0,9", "5,5,9,0"] {
        assert!(refused(&format!("lugbook cover 1 {parts}")).sentence().contains("covers nothing"), "{parts}");
    }
    refused("lugbook cover 2 1,2,3,4");
    refused("lugbook cover 1 1,2,3,4 --job 7");
    refused("lugbook share 2 --out x.jpg");
    assert!(!is_gray(&on_card(&book).0));
}
