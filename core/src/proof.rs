//! Seals: what a device signed, and what that proves to somebody who only holds the file.
//!
//! A device has one Ed25519 key (RFC 8032). It signs the end of its own stream when a
//! job is signed or closed, and now and then between: a [`Seal`]. The seal of a job also
//! holds the digest of every entry of that job, whoever's stream it stands in. A card's
//! file carries those entries, their seal, and a signature over the page itself, so that
//! [`verify_card`] needs nothing but the file.
//!
//! That proves that entries and page are unchanged since the device signed them. It does
//! not prove the time, or that a nut was really tightened.
//!
//! ```
//! use lugbook::entry::Head;
//! use lugbook::ident::{Digest, StreamId};
//! use lugbook::proof::{DeviceKey, Seal};
//! let key = DeviceKey::from_secret([7; 32]);
//! let stream = StreamId::from_parts(1, [1; 10]);
//! let head = Head { number: 3, digest: Some(Digest::of(b"the third entry")), ..Head::empty(stream) };
//! let seal = Seal::make(&key, &head, None).unwrap();
//! assert_eq!(Seal::open(seal.bytes().to_vec(), seal.signature()), Ok(seal.clone()));
//! assert_eq!(seal.said().device, key.device());
//! let mut changed = seal.bytes().to_vec();
//! changed[20] ^= 1;
//! assert!(Seal::open(changed, seal.signature()).is_err());
//! ```

mod card;
mod key;
mod seal;

pub use card::{CardCheck, CardFault, PageSaid, close_card, verify_card};
pub use key::{Device, DeviceKey, Signature};
pub use seal::{Gathered, JobSealed, Seal, SealBroken, Sealed};
