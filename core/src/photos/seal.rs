//! A digest behind each rendition, so that a flipped bit in one is noticed and the rendition made again.
//!
//! A JPEG ends with its end-of-image marker and readers ignore what follows, so the file stays a plain JPEG.

use super::Rendition;
use crate::ident::Digest;

const LENGTH: usize = 32;

/// Changes when renditions are made in another way, so that old ones are made again.
const MADE_AS: &[u8] = b"rendition 1";

fn digest(id: Digest, rendition: Rendition, picture: &[u8]) -> [u8; LENGTH] {
    let mut hasher = blake3::Hasher::new();
    hasher.update(MADE_AS).update(id.as_bytes()).update(&rendition.edge().to_be_bytes()).update(picture);
    *hasher.finalize().as_bytes()
}

/// Puts the seal behind a rendition.
pub(super) fn close(id: Digest, rendition: Rendition, mut picture: Vec<u8>) -> Vec<u8> {
    let seal = digest(id, rendition, &picture);
    picture.extend_from_slice(&seal);
    picture
}

/// Takes the seal off; `None` when it doesn't fit.
pub(super) fn open(id: Digest, rendition: Rendition, mut sealed: Vec<u8>) -> Option<Vec<u8>> {
    let (picture, seal) = sealed.split_last_chunk::<LENGTH>().map(|(picture, seal)| (picture.len(), *seal))?;
    sealed.truncate(picture);
    (digest(id, rendition, &sealed) == seal).then_some(sealed)
}
