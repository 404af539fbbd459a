//! A device's key: the secret half that signs, and the public half that everybody may know.

use std::fmt;
use std::str::FromStr;

use ed25519_dalek::{Signer, SigningKey, VerifyingKey};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::ident::NotAnIdent;

/// The secret half of a device's key. It is never written into a book, a backup or a card.
///
/// ```
/// use lugbook::proof::DeviceKey;
/// let key = DeviceKey::from_secret([1; 32]);
/// assert!(!format!("{key:?}").contains("0101"), "what is secret is not shown");
/// ```
#[derive(Clone)]
pub struct DeviceKey(SigningKey);

impl DeviceKey {
    /// The key of these 32 secret bytes, which must be random and the device's own.
    ///
    /// ```
    /// use lugbook::proof::DeviceKey;
    /// assert_ne!(DeviceKey::from_secret([1; 32]).device(), DeviceKey::from_secret([2; 32]).device());
    /// ```
    pub fn from_secret(secret: [u8; 32]) -> Self {
        Self(SigningKey::from_bytes(&secret))
    }

    /// The public half: what the device is known by.
    ///
    /// ```
    /// use lugbook::proof::DeviceKey;
    /// let device = DeviceKey::from_secret([1; 32]).device();
    /// assert_eq!(device.to_string().parse(), Ok(device));
    /// ```
    pub fn device(&self) -> Device {
        Device(self.0.verifying_key().to_bytes())
    }

    /// Signs bytes for one use only, named by `domain`: what is signed for one can't stand for another.
    pub(super) fn sign(&self, domain: &str, bytes: &[u8]) -> Signature {
        Signature(self.0.sign(&message(domain, bytes)).to_bytes())
    }
}

impl fmt::Debug for DeviceKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "DeviceKey({})", self.device())
    }
}

fn message(domain: &str, bytes: &[u8]) -> Vec<u8> {
    [domain.as_bytes(), b"\n", bytes].concat()
}

/// The public half of a device's key.
///
/// ```
/// use lugbook::proof::DeviceKey;
/// let device = DeviceKey::from_secret([9; 32]).device();
/// assert_eq!(device.to_string().len(), 64);
/// assert_eq!(device.short().len(), 17);
/// ```
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Device([u8; 32]);

impl Device {
    /// The thirty-two bytes as they are stored.
    ///
    /// ```
    /// use lugbook::proof::{Device, DeviceKey};
    /// let device = DeviceKey::from_secret([9; 32]).device();
    /// assert_eq!(Device::from_bytes(device.as_bytes()), Ok(device));
    /// ```
    pub fn as_bytes(&self) -> &[u8; 32] {
        &self.0
    }

    /// Reads a device back from its stored bytes.
    ///
    /// ```
    /// assert!(lugbook::proof::Device::from_bytes(&[1; 31]).is_err());
    /// ```
    ///
    /// # Errors
    /// When there are not exactly thirty-two bytes.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, NotAnIdent> {
        <[u8; 32]>::try_from(bytes).map(Self).map_err(|_| NotAnIdent { text: format!("{} bytes", bytes.len()) })
    }

    /// What a device is told apart by on paper: sixteen hexadecimal digits in two
    /// groups. Nobody can find another key that begins like this one: it would take
    /// 2⁶⁴ tries.
    ///
    /// ```
    /// use lugbook::proof::DeviceKey;
    /// let device = DeviceKey::from_secret([9; 32]).device();
    /// assert!(device.is_called(&device.short()));
    /// ```
    pub fn short(&self) -> String {
        let text = self.to_string();
        let (first, rest) = text.split_at_checked(8).unwrap_or_default();
        format!("{first}-{}", rest.get(..8).unwrap_or_default())
    }

    /// Whether this device is meant by what stands on paper: its short form or all of
    /// its digits, in letters of either case, with or without the hyphen.
    ///
    /// ```
    /// use lugbook::proof::DeviceKey;
    /// let device = DeviceKey::from_secret([9; 32]).device();
    /// assert!(device.is_called(&device.to_string().to_uppercase()));
    /// assert!(!device.is_called("") && !device.is_called(&device.short()[..8]));
    /// ```
    pub fn is_called(&self, name: &str) -> bool {
        let digits: String = name.chars().filter(|c| !matches!(c, '-' | ' ')).collect::<String>().to_lowercase();
        digits.len() >= 16 && self.to_string().starts_with(&digits)
    }

    /// Whether this device signed these bytes for this use.
    pub(super) fn signed(&self, domain: &str, bytes: &[u8], signature: &Signature) -> bool {
        let Ok(key) = VerifyingKey::from_bytes(&self.0) else { return false };
        let signature = ed25519_dalek::Signature::from_bytes(&signature.0);
        key.verify_strict(&message(domain, bytes), &signature).is_ok()
    }
}

/// An Ed25519 signature.
///
/// ```
/// use lugbook::proof::Signature;
/// assert!("00".parse::<Signature>().is_err());
/// assert_eq!(Signature::from_bytes(&[3; 64]).map(|signature| signature.to_string().len()), Ok(128));
/// ```
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Signature([u8; 64]);

impl Signature {
    /// The sixty-four bytes as they are stored.
    ///
    /// ```
    /// use lugbook::proof::Signature;
    /// assert_eq!(Signature::from_bytes(&[3; 64]).unwrap().as_bytes(), &[3; 64]);
    /// ```
    pub fn as_bytes(&self) -> &[u8; 64] {
        &self.0
    }

    /// Reads a signature back from its stored bytes.
    ///
    /// ```
    /// assert!(lugbook::proof::Signature::from_bytes(&[3; 63]).is_err());
    /// ```
    ///
    /// # Errors
    /// When there are not exactly sixty-four bytes.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, NotAnIdent> {
        <[u8; 64]>::try_from(bytes).map(Self).map_err(|_| NotAnIdent { text: format!("{} bytes", bytes.len()) })
    }
}

fn hex(bytes: &[u8], f: &mut fmt::Formatter<'_>) -> fmt::Result {
    bytes.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
}

fn unhex<const N: usize>(text: &str) -> Result<[u8; N], NotAnIdent> {
    let wrong = || NotAnIdent { text: text.to_owned() };
    let digits = text.as_bytes();
    // The one way of writing it, so that no two texts are the same bytes.
    let plain = digits.iter().all(|digit| digit.is_ascii_digit() || (b'a'..=b'f').contains(digit));
    if !plain || digits.len() != N.saturating_mul(2) {
        return Err(wrong());
    }
    let mut bytes = [0; N];
    for (byte, pair) in bytes.iter_mut().zip(digits.chunks_exact(2)) {
        let pair = std::str::from_utf8(pair).map_err(|_| wrong())?;
        *byte = u8::from_str_radix(pair, 16).map_err(|_| wrong())?;
    }
    Ok(bytes)
}

macro_rules! as_text {
    ($($name:ident)*) => {$(
        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                hex(&self.0, f)
            }
        }

        impl fmt::Debug for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{}({self})", stringify!($name))
            }
        }

        impl FromStr for $name {
            type Err = NotAnIdent;

            fn from_str(text: &str) -> Result<Self, NotAnIdent> {
                unhex(text).map(Self)
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
            }
        }
    )*};
}

as_text! { Device Signature }
