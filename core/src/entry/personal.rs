//! Personal data beside the payload: erasable, with a salted digest inside.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::ident::Digest;

/// A name, phone number or plate, with the salt that keeps its digest from being guessed.
///
/// ```
/// use lugbook::entry::Personal;
/// let part = Personal { name: Some("Wren Castellan".into()), ..Personal::salted([1; 16]) };
/// let other = Personal { salt: [2; 16], ..part.clone() };
/// assert_ne!(part.digest(), other.digest());
/// ```
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Personal {
    /// Sixteen random bytes from the caller.
    #[serde(with = "salt")]
    pub salt: [u8; 16],
    /// A person's name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// A phone number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phone: Option<String>,
    /// A license plate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plate: Option<String>,
    /// A signature drawn on the screen, as [`Strokes`](super::Strokes) are written.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drawn: Option<String>,
}

/// Without what is personal, which must not get into a log.
impl fmt::Debug for Personal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Personal").finish_non_exhaustive()
    }
}

impl Personal {
    /// A part that holds nothing yet.
    ///
    /// ```
    /// use lugbook::entry::Personal;
    /// let part = Personal { plate: Some("ORCHARD 7".into()), ..Personal::salted([4; 16]) };
    /// assert_eq!((part.salt, part.name), ([4; 16], None));
    /// ```
    pub fn salted(salt: [u8; 16]) -> Self {
        Self { salt, name: None, phone: None, plate: None, drawn: None }
    }

    /// The salted digest that the envelope holds: of the salt, then each
    /// field's length and bytes, so that no two parts read alike. A signature
    /// is told only where there is one: parts are older than it.
    pub fn digest(&self) -> Digest {
        let mut bytes = self.salt.to_vec();
        let signed = self.drawn.is_some().then_some(&self.drawn);
        for field in [&self.name, &self.phone, &self.plate].into_iter().chain(signed) {
            let length = field.as_ref().map_or(u64::MAX, |text| text.len() as u64);
            bytes.extend_from_slice(&length.to_be_bytes());
            bytes.extend_from_slice(field.as_deref().unwrap_or_default().as_bytes());
        }
        Digest::of(&bytes)
    }
}

mod salt {
    use serde::{Deserialize, Deserializer, Serializer};

    pub fn serialize<S: Serializer>(salt: &[u8; 16], serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&format!("{:032x}", u128::from_be_bytes(*salt)))
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<[u8; 16], D::Error> {
        let text = String::deserialize(deserializer)?;
        u128::from_str_radix(&text, 16).map(u128::to_be_bytes).map_err(serde::de::Error::custom)
    }
}
