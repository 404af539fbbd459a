//! Names for things that must stay the same on every device: ids and digests.
//!
//! Ids are UUIDs of version 7. They are made by the caller, never in here, so
//! that giving the same command twice names the same entry and does no harm.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// Text that should have been an id or a digest and was not.
///
/// ```
/// use lugbook::ident::{NotAnIdent, TireId};
/// assert_eq!("the left one".parse::<TireId>(), Err(NotAnIdent { text: "the left one".to_owned() }));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("not an id: {text}")]
pub struct NotAnIdent {
    /// What was given.
    pub text: String,
}

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident;)*) => {$(
        $(#[$doc])*
        ///
        /// ```
        #[doc = concat!("use lugbook::ident::", stringify!($name), ";")]
        #[doc = concat!("let id = ", stringify!($name), "::from_parts(1_700_000_000_000, [7; 10]);")]
        #[doc = concat!("assert_eq!(id.to_string().parse::<", stringify!($name), ">(), Ok(id));")]
        /// ```
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(Uuid);

        impl $name {
            /// Makes an id from Unix milliseconds and ten random bytes, both the caller's.
            ///
            /// ```
            #[doc = concat!("use lugbook::ident::", stringify!($name), ";")]
            #[doc = concat!("let id = ", stringify!($name), "::from_parts(1_700_000_000_000, [7; 10]);")]
            #[doc = concat!("let later = ", stringify!($name), "::from_parts(1_700_000_000_001, [0; 10]);")]
            /// assert!(id < later, "ids stand in the order of their time");
            /// ```
            pub fn from_parts(unix_ms: u64, random: [u8; 10]) -> Self {
                Self(uuid::Builder::from_unix_timestamp_millis(unix_ms, &random).into_uuid())
            }

            /// The sixteen bytes as they are stored.
            ///
            /// ```
            #[doc = concat!("use lugbook::ident::", stringify!($name), ";")]
            #[doc = concat!("let id = ", stringify!($name), "::from_parts(1_700_000_000_000, [7; 10]);")]
            #[doc = concat!("assert_eq!(", stringify!($name), "::from_bytes(id.as_bytes()), Ok(id));")]
            /// ```
            pub fn as_bytes(&self) -> &[u8; 16] {
                self.0.as_bytes()
            }

            /// Reads an id back from its sixteen stored bytes.
            ///
            /// ```
            #[doc = concat!("use lugbook::ident::", stringify!($name), ";")]
            #[doc = concat!("assert!(", stringify!($name), "::from_bytes(&[0; 15]).is_err());")]
            /// ```
            ///
            /// # Errors
            /// When there are not exactly sixteen bytes.
            pub fn from_bytes(bytes: &[u8]) -> Result<Self, NotAnIdent> {
                Uuid::from_slice(bytes)
                    .map(Self)
                    .map_err(|_| NotAnIdent { text: format!("{} bytes", bytes.len()) })
            }

            /// The last six letters, enough to tell things apart on a card or a terminal.
            ///
            /// ```
            #[doc = concat!("use lugbook::ident::", stringify!($name), ";")]
            #[doc = concat!("let id = ", stringify!($name), "::from_parts(1_700_000_000_000, [7; 10]);")]
            /// assert_eq!(id.short().len(), 6);
            /// assert!(id.to_string().ends_with(&id.short()));
            /// ```
            pub fn short(&self) -> String {
                let text = self.0.simple().to_string();
                text.chars().skip(26).collect()
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }

        impl FromStr for $name {
            type Err = NotAnIdent;

            fn from_str(text: &str) -> Result<Self, NotAnIdent> {
                Uuid::parse_str(text)
                    .map(Self)
                    .map_err(|_| NotAnIdent { text: text.to_owned() })
            }
        }
    )*};
}

ids! {
    /// One entry of the book.
    EntryId;
    /// One visit's work on one vehicle.
    JobId;
    /// One vehicle.
    VehicleId;
    /// One person: whose hands did a step, who signed.
    PersonId;
    /// One tire, wherever it is fitted.
    TireId;
    /// One device's stream of entries.
    StreamId;
    /// One tool that was entered once and is named on cards.
    ToolId;
}

/// A BLAKE3 digest of stored bytes; also the name of a photo.
///
/// ```
/// use lugbook::ident::Digest;
/// let digest = Digest::of(b"wheel");
/// assert_eq!(digest.to_string().parse::<Digest>(), Ok(digest));
/// assert_eq!(digest.short().len(), 10);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Digest([u8; 32]);

impl Digest {
    /// The digest of these bytes.
    ///
    /// ```
    /// use lugbook::ident::Digest;
    /// assert_ne!(Digest::of(b"7/32"), Digest::of(b"8/32"));
    /// ```
    pub fn of(bytes: &[u8]) -> Self {
        Self(*blake3::hash(bytes).as_bytes())
    }

    /// The thirty-two bytes as they are stored.
    ///
    /// ```
    /// use lugbook::ident::Digest;
    /// let digest = Digest::of(b"wheel");
    /// assert_eq!(Digest::from_bytes(digest.as_bytes()), Ok(digest));
    /// ```
    pub fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// Reads a digest back from its stored bytes.
    ///
    /// ```
    /// use lugbook::ident::Digest;
    /// assert!(Digest::from_bytes(&[0; 31]).is_err());
    /// ```
    ///
    /// # Errors
    /// When there are not exactly thirty-two bytes.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, NotAnIdent> {
        <[u8; 32]>::try_from(bytes).map(Self).map_err(|_| NotAnIdent { text: format!("{} bytes", bytes.len()) })
    }

    /// The first ten hexadecimal digits, for a card: enough to notice a swap, not a proof.
    ///
    /// ```
    /// use lugbook::ident::Digest;
    /// let digest = Digest::of(b"wheel");
    /// assert!(digest.to_string().starts_with(&digest.short()));
    /// ```
    pub fn short(&self) -> String {
        self.to_string().chars().take(10).collect()
    }
}

impl fmt::Debug for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Digest({})", self.short())
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        blake3::Hash::from_bytes(self.0).to_hex().fmt(f)
    }
}

impl FromStr for Digest {
    type Err = NotAnIdent;

    fn from_str(text: &str) -> Result<Self, NotAnIdent> {
        blake3::Hash::from_hex(text)
            .map(|hash| Self(*hash.as_bytes()))
            .map_err(|_| NotAnIdent { text: text.to_owned() })
    }
}

impl Serialize for Digest {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Digest {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;

        impl serde::de::Visitor<'_> for Reader {
            type Value = Digest;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("64 hexadecimal digits")
            }

            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Digest, E> {
                text.parse().map_err(E::custom)
            }
        }

        deserializer.deserialize_str(Reader)
    }
}
