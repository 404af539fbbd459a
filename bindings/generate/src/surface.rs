//! What the library exports, as text to read and to compare.

use std::collections::BTreeMap;
use std::fmt::Write;

use anyhow::Result;
use camino::Utf8Path;
use uniffi_bindgen::macro_metadata::extract_from_library;
use uniffi_meta::{
    DefaultValueMetadata, EnumShape, FieldMetadata, FnParamMetadata, LiteralMetadata, Metadata, ObjectImpl, Type,
};

/// One exported type or function: its heading, its docstring, and what belongs to it.
#[derive(Default)]
struct Item {
    heading: String,
    doc: Option<String>,
    parts: Vec<(String, Option<String>)>,
}

/// All names, types and docstrings that the library exports, one after another by name.
///
/// # Errors
/// When the library can't be read.
pub fn surface(library: &Utf8Path) -> Result<String> {
    let mut items: BTreeMap<String, Item> = BTreeMap::new();
    // The methods of a type come apart from it, in any order.
    for metadata in extract_from_library(library)? {
        match metadata {
            Metadata::Object(object) => {
                let item = items.entry(object.name.clone()).or_default();
                let kind = if object.imp == ObjectImpl::Struct { "object" } else { "given by the shell" };
                item.heading = format!("{kind} {}", object.name);
                item.doc = object.docstring;
            }
            Metadata::CallbackInterface(callback) => {
                let item = items.entry(callback.name.clone()).or_default();
                item.heading = format!("given by the shell {}", callback.name);
                item.doc = callback.docstring;
            }
            Metadata::Record(record) => {
                let item = items.entry(record.name.clone()).or_default();
                item.heading = format!("record {}", record.name);
                item.doc = record.docstring;
                item.parts = record.fields.into_iter().map(|field| (named(&field), field.docstring)).collect();
            }
            Metadata::Enum(choice) => {
                let item = items.entry(choice.name.clone()).or_default();
                let kind = if matches!(choice.shape, EnumShape::Error { .. }) { "error" } else { "enum" };
                item.heading = format!("{kind} {}", choice.name);
                item.doc = choice.docstring;
                for variant in choice.variants {
                    let fields: Vec<String> = variant.fields.iter().map(named).collect();
                    let fields = if fields.is_empty() { String::new() } else { format!("({})", fields.join(", ")) };
                    item.parts.push((format!("{}{fields}", variant.name), variant.docstring));
                }
            }
            Metadata::Func(function) => {
                let call = call("", function.is_async, &function.name, &function.inputs);
                let heading = call + &answer(function.return_type.as_ref(), function.throws.as_ref());
                items.insert(function.name, Item { heading, doc: function.docstring, parts: Vec::new() });
            }
            Metadata::Constructor(made) => {
                let call = call("make ", made.is_async, &made.name, &made.inputs);
                let line = call + &answer(None, made.throws.as_ref());
                items.entry(made.self_name).or_default().parts.push((line, made.docstring));
            }
            Metadata::Method(method) => {
                let call = call("", method.is_async, &method.name, &method.inputs);
                let line = call + &answer(method.return_type.as_ref(), method.throws.as_ref());
                items.entry(method.self_name).or_default().parts.push((line, method.docstring));
            }
            Metadata::TraitMethod(method) => {
                let call = call("", method.is_async, &method.name, &method.inputs);
                let line = call + &answer(method.return_type.as_ref(), method.throws.as_ref());
                items.entry(method.trait_name).or_default().parts.push((line, method.docstring));
            }
            Metadata::CustomType(custom) => {
                let heading = format!("{} as {}", custom.name, kind(&custom.builtin));
                items.insert(custom.name, Item { heading, doc: custom.docstring, parts: Vec::new() });
            }
            Metadata::Namespace(_) | Metadata::UdlFile(_) | Metadata::UniffiTrait(_) | Metadata::ObjectTraitImpl(_) => {
            }
        }
    }

    let mut text = String::new();
    for (_, mut item) in items {
        if item.heading.starts_with("object") || item.heading.starts_with("given") {
            item.parts.sort();
        }
        writeln!(text, "{}", item.heading)?;
        doc(&mut text, "    ", item.doc.as_deref())?;
        for (line, comment) in item.parts {
            writeln!(text, "  {line}")?;
            doc(&mut text, "      ", comment.as_deref())?;
        }
        text.push('\n');
    }
    Ok(text)
}

fn doc(text: &mut String, indent: &str, doc: Option<&str>) -> Result<()> {
    for line in doc.unwrap_or_default().trim().lines().filter(|line| !line.trim().is_empty()) {
        writeln!(text, "{indent}{}", line.trim())?;
    }
    Ok(())
}

fn named(field: &FieldMetadata) -> String {
    format!("{}: {}{}", field.name, kind(&field.ty), otherwise(field.default.as_ref()))
}

fn call(before: &str, is_async: bool, name: &str, inputs: &[FnParamMetadata]) -> String {
    let inputs: Vec<String> = inputs
        .iter()
        .map(|input| format!("{}: {}{}", input.name, kind(&input.ty), otherwise(input.default.as_ref())))
        .collect();
    format!("{before}{}{name}({})", if is_async { "async " } else { "" }, inputs.join(", "))
}

fn answer(value: Option<&Type>, error: Option<&Type>) -> String {
    let value = value.map(|value| format!(" -> {}", kind(value))).unwrap_or_default();
    let error = error.map(|error| format!(" or {}", kind(error))).unwrap_or_default();
    value + &error
}

fn otherwise(value: Option<&DefaultValueMetadata>) -> String {
    match value {
        None => String::new(),
        Some(DefaultValueMetadata::Default) => " = its default".to_owned(),
        Some(DefaultValueMetadata::Literal(value)) => match value {
            LiteralMetadata::Boolean(value) => format!(" = {value}"),
            LiteralMetadata::String(value) => format!(" = {value:?}"),
            LiteralMetadata::UInt(value, ..) => format!(" = {value}"),
            LiteralMetadata::Int(value, ..) => format!(" = {value}"),
            LiteralMetadata::Float(value, _) | LiteralMetadata::Enum(value, _) => format!(" = {value}"),
            LiteralMetadata::None => " = none".to_owned(),
            other => format!(" = {other:?}"),
        },
    }
}

fn kind(kind_of: &Type) -> String {
    match kind_of {
        Type::UInt8 => "u8".to_owned(),
        Type::Int8 => "i8".to_owned(),
        Type::UInt16 => "u16".to_owned(),
        Type::Int16 => "i16".to_owned(),
        Type::UInt32 => "u32".to_owned(),
        Type::Int32 => "i32".to_owned(),
        Type::UInt64 => "u64".to_owned(),
        Type::Int64 => "i64".to_owned(),
        Type::Float32 => "f32".to_owned(),
        Type::Float64 => "f64".to_owned(),
        Type::Boolean => "bool".to_owned(),
        Type::String => "text".to_owned(),
        Type::Bytes => "bytes".to_owned(),
        Type::Timestamp => "time".to_owned(),
        Type::Duration => "duration".to_owned(),
        Type::Object { name, .. }
        | Type::Record { name, .. }
        | Type::Enum { name, .. }
        | Type::CallbackInterface { name, .. }
        | Type::Custom { name, .. } => name.clone(),
        Type::Box { inner_type } => kind(inner_type),
        Type::Optional { inner_type } => format!("{}?", kind(inner_type)),
        Type::Sequence { inner_type } => format!("[{}]", kind(inner_type)),
        Type::Set { inner_type } => format!("{{{}}}", kind(inner_type)),
        Type::Map { key_type, value_type } => format!("{{{}: {}}}", kind(key_type), kind(value_type)),
    }
}
