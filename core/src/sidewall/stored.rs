//! Sizes, service descriptions and numbers are stored as their canonical text.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{Marking, Service, Size, SpeedSymbol, Tin};

macro_rules! as_text {
    ($($kind:ty),*) => {$(
        impl Serialize for $kind {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $kind {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let text = String::deserialize(deserializer)?;
                text.parse().map_err(|problem: super::Problem| {
                    serde::de::Error::custom(format!("{text:.60}: {} at {}", problem.kind.code(), problem.at))
                })
            }
        }
    )*};
}

as_text!(Size, Service, Tin);

impl Serialize for SpeedSymbol {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.as_str())
    }
}

impl<'de> Deserialize<'de> for SpeedSymbol {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::new(&text).ok_or_else(|| serde::de::Error::custom(format!("no speed symbol: {text:.60}")))
    }
}

impl Serialize for Marking {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Marking {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Ok(super::parse(&String::deserialize(deserializer)?))
    }
}
