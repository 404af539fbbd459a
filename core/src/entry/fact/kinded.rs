//! Reading a fact in one go: its kind stands first, and the rest is read as it comes.

use std::borrow::Cow;
use std::fmt;

use serde::de::value::MapDeserializer;
use serde::de::{DeserializeSeed, EnumAccess, Error, IntoDeserializer, MapAccess, Unexpected, VariantAccess, Visitor};
use serde::{Deserialize, Deserializer, forward_to_deserialize_any};
use serde_json::{Map, Value};

use super::{Fact, FactByKind};

const KIND: &str = "kind";

/// Text that is borrowed where it can be.
#[derive(Deserialize)]
struct Text<'a>(#[serde(borrow)] Cow<'a, str>);

impl<'de> Deserialize<'de> for Fact {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Reader)
    }
}

struct Reader;

impl<'de> Visitor<'de> for Reader {
    type Value = Fact;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a fact")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut fields: A) -> Result<Fact, A::Error> {
        let first = fields.next_key::<Text<'de>>()?.ok_or_else(|| A::Error::missing_field(KIND))?;
        if first.0 == KIND {
            let kind = fields.next_value::<Text<'de>>()?;
            return FactByKind::deserialize(Kinded { kind: kind.0, fields });
        }
        // This program never writes it so; another may.
        let mut all = Map::new();
        all.insert(first.0.into_owned(), fields.next_value()?);
        while let Some((name, value)) = fields.next_entry::<String, Value>()? {
            all.insert(name, value);
        }
        let Some(Value::String(kind)) = all.remove(KIND) else { return Err(A::Error::missing_field(KIND)) };
        let fields = MapDeserializer::<_, serde_json::Error>::new(all.into_iter());
        FactByKind::deserialize(Kinded { kind: kind.into(), fields }).map_err(A::Error::custom)
    }
}

/// A fact's fields behind its kind, as serde reads an enum.
struct Kinded<'a, A> {
    kind: Cow<'a, str>,
    fields: A,
}

impl<'de, A: MapAccess<'de>> Deserializer<'de> for Kinded<'_, A> {
    type Error = A::Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, A::Error> {
        visitor.visit_enum(self)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit
        unit_struct newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

impl<'de, A: MapAccess<'de>> EnumAccess<'de> for Kinded<'_, A> {
    type Error = A::Error;
    type Variant = Fields<A>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Fields<A>), A::Error> {
        let kind = self.kind.as_ref().into_deserializer();
        Ok((seed.deserialize::<serde::de::value::StrDeserializer<'_, A::Error>>(kind)?, Fields(self.fields)))
    }
}

struct Fields<A>(A);

impl<'de, A: MapAccess<'de>> VariantAccess<'de> for Fields<A> {
    type Error = A::Error;

    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], visitor: V) -> Result<V::Value, A::Error> {
        visitor.visit_map(self.0)
    }

    // Every fact has named fields.
    fn unit_variant(self) -> Result<(), A::Error> {
        Err(A::Error::invalid_type(Unexpected::Map, &"no fields"))
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, _: S) -> Result<S::Value, A::Error> {
        Err(A::Error::invalid_type(Unexpected::Map, &"one value"))
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, A::Error> {
        Err(A::Error::invalid_type(Unexpected::Map, &"a list"))
    }
}
