//! Personal data beside the payload: erasable, with a salted digest inside.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::ident::Digest;

/// A name, phone number or plate, with the salt that keeps its digest from being guessed.
///
/// ```
/// use lugbook::entry::Personal;
/// let part = Personal { salt: [1; 16], name: Some("Wren Castellan".into()), phone: None, plate: None };
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
}

/// Without what is personal, which must not get into a log.
impl fmt::Debug for Personal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Personal").finish_non_exhaustive()
    }
}

impl Personal {
    /// The salted digest that the envelope holds: of the salt, then each
    /// field's length and bytes, so that no two parts read alike.
    pub fn digest(&self) -> Digest {
        let mut bytes = self.salt.to_vec();
        for field in [&self.name, &self.phone, &self.plate] {
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
