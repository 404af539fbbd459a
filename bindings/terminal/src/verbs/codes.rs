//! Codes that stand for the core's own values, as they are in its data.

use clap::builder::{PossibleValuesParser, TypedValueParser};
use serde::de::DeserializeOwned;
use serde_json::Value;

/// Reads one of these codes as the value that the core's data has for it.
pub fn code<T: DeserializeOwned + Clone + Send + Sync + 'static>(
    codes: &'static [&'static str],
) -> impl TypedValueParser<Value = T> {
    PossibleValuesParser::new(codes.iter().copied())
        .try_map(|code: String| serde_json::from_value::<T>(Value::String(code)))
}
