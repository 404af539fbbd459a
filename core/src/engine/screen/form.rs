//! What a person fills in on a screen, and the command that it becomes.
//!
//! A form knows the command it is for: what is settled stands in it already, and
//! each field says where its value goes. So a shell shows fields and hands back
//! text, and a command that the screen does not offer can't be put together.

use serde::Serialize;
use serde_json::{Map, Value};

use super::super::{Command, Trouble, TroubleKind};
use crate::engine::trouble::clipped;
use crate::measure::{Reading, plain};
use crate::words::{Units, Worded, Words};

/// How a field is filled in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FieldKind {
    /// A short text.
    Text,
    /// A text of some sentences.
    LongText,
    /// A code or passphrase: never shown, never kept by the shell.
    Secret,
    /// A reading in one of the field's units: the keypad. Without a unit typed, the field's own is taken.
    Reading,
    /// Several readings in a row, one a groove: the keypad goes on by itself.
    Grooves,
    /// A whole number.
    Count,
    /// One of the choices, by its code.
    One,
    /// Any number of the choices, their codes set apart by spaces.
    Several,
    /// `yes` or `no`.
    YesNo,
    /// A photo's file, by its path: the camera or the picker.
    Photo,
    /// A folder, by its path.
    Folder,
    /// A file, by its path.
    File,
    /// A day: `2026-03-31`.
    Day,
    /// Several short texts, one a line.
    Lines,
    /// A circle dragged over the photo in hand: middle across, middle down and radius, each as a share of the photo's
    /// width, set apart by spaces.
    Ring,
    /// A signature drawn with the finger, as [`Strokes`](crate::entry::Strokes) are written; empty signs by name.
    Drawn,
}

/// One of a field's choices.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Choice {
    /// What is entered.
    pub code: String,
    /// What a person reads.
    pub text: String,
    /// What a screen reader says.
    pub spoken: String,
}

/// One groove of a tread reading.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Groove {
    /// Which groove.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
    /// The last visit's value there, in words.
    pub last: Option<String>,
}

/// One thing to fill in.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Field {
    /// Its code: what an entered value names.
    pub code: String,
    /// What stands beside it.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
    /// How it is filled in.
    pub kind: FieldKind,
    /// It can't be left empty.
    pub required: bool,
    /// The choices, where there are some.
    pub choices: Vec<Choice>,
    /// The unit of a value without one; none where there is no unit.
    pub unit: Option<String>,
    /// Units to choose from.
    pub units: Vec<Choice>,
    /// Decimals that a gauge in each of these units is read to.
    pub decimals: Vec<usize>,
    /// The lowest value that is taken, in the field's own unit.
    pub least: Option<f64>,
    /// The highest value that is taken, in the field's own unit.
    pub most: Option<f64>,
    /// The last visit's value, in words.
    pub last: Option<String>,
    /// What it holds already.
    pub filled: Option<String>,
    /// The grooves, for a tread reading.
    pub grooves: Vec<Groove>,
    /// The photo that a circle is dragged over: its path, upright and of a screen's size; none for any other field.
    pub photo: Option<String>,
}

/// A value as it was entered.
#[derive(Clone, PartialEq, Eq, Serialize)]
pub struct Entered {
    /// The field's code.
    pub code: String,
    /// The value, as text.
    pub value: String,
}

/// Without the value, which may be personal or secret.
impl std::fmt::Debug for Entered {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Entered").field("code", &self.code).finish_non_exhaustive()
    }
}

/// What a value is in the command's data.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Becomes {
    Text,
    Number,
    /// A list of texts.
    List,
    /// The value of the choice.
    Chosen,
    /// One more element of a list.
    Pushed,
    /// An object with a `true` for each choice.
    Flags,
    /// The value of the choice as one more part of a text.
    Joined,
}

/// A field and where its value goes.
#[derive(Debug, Clone)]
pub(super) struct Slot {
    field: Field,
    /// Keys from the outermost, set apart by dots.
    path: String,
    becomes: Becomes,
    /// What each choice is in data.
    values: Vec<Value>,
    /// Left empty, nothing is said of it.
    silent: bool,
}

/// A choice with what it is in data.
pub(super) type Option_ = (Choice, Value);

impl Slot {
    fn new(words: &Words, code: &str, kind: FieldKind, becomes: Becomes) -> Self {
        let label = words.text(&format!("field-{code}"), &[]);
        let field = Field {
            code: code.to_owned(),
            spoken: label.clone(),
            label,
            kind,
            required: false,
            choices: Vec::new(),
            unit: None,
            units: Vec::new(),
            decimals: Vec::new(),
            least: None,
            most: None,
            last: None,
            filled: None,
            grooves: Vec::new(),
            photo: None,
        };
        Self { field, path: code.replace('-', "_"), becomes, values: Vec::new(), silent: false }
    }

    /// One of several fields of a kind, set apart by their numbers.
    pub(super) fn numbered(mut self, words: &Words, number: usize) -> Self {
        self.field.label = words.text(&format!("field-{}", self.field.code), &[("number", number.to_string().into())]);
        self.field.spoken.clone_from(&self.field.label);
        self.field.code = format!("{}-{number}", self.field.code);
        self
    }

    /// A text of any of the kinds that are only text.
    pub(super) fn text(words: &Words, code: &str, kind: FieldKind) -> Self {
        let becomes = if kind == FieldKind::Lines { Becomes::List } else { Becomes::Text };
        Self::new(words, code, kind, becomes)
    }

    /// A reading, in the unit that the person works in; the last one's when readings stay as they were read.
    pub(super) fn reading<U: Worded>(words: &Words, code: &str, kind: FieldKind, last: Option<&Reading<U>>) -> Self {
        let mut slot = Self::new(words, code, kind, Becomes::Text);
        let usual = U::ALL.first().map(|unit| unit.in_system(Units::Us));
        let unit = match words.speech().units {
            Units::AsRead => last.map(Reading::unit).or(usual),
            system => U::ALL.first().map(|unit| unit.in_system(system)),
        };
        let named = |unit: &U| Choice {
            code: unit.code().to_owned(),
            text: words.text(unit.sentence(), &[("value", "".into()), ("count", 2.0.into())]).trim().to_owned(),
            spoken: words
                .text(&format!("{}-spoken", unit.sentence()), &[("value", "".into()), ("count", 2.0.into())])
                .trim()
                .to_owned(),
        };
        slot.field.units = U::ALL.iter().map(named).collect();
        slot.field.decimals = U::ALL.iter().map(|unit| unit.decimals()).collect();
        if let Some(unit) = unit {
            slot.field.unit = Some(unit.code().to_owned());
            slot.field.least = Some(unit.of_base(U::LOWEST));
            slot.field.most = Some(unit.of_base(U::HIGHEST));
        }
        slot.field.last = last.map(|last| words.reading(last));
        slot
    }

    /// A whole number between two.
    pub(super) fn count(words: &Words, code: &str, least: u32, most: u32) -> Self {
        let mut slot = Self::new(words, code, FieldKind::Count, Becomes::Number);
        slot.field.least = Some(f64::from(least));
        slot.field.most = Some(f64::from(most));
        slot
    }

    /// One of some choices.
    pub(super) fn one(words: &Words, code: &str, options: Vec<Option_>) -> Self {
        Self::choosing(words, code, FieldKind::One, Becomes::Chosen, options)
    }

    /// Any number of some choices.
    pub(super) fn several(words: &Words, code: &str, options: Vec<Option_>) -> Self {
        Self::choosing(words, code, FieldKind::Several, Becomes::List, options)
    }

    /// Yes or no; no when nothing is said.
    pub(super) fn yes_no(words: &Words, code: &str) -> Self {
        let option = |code: &str, value: bool| (choice(code, words.text(&format!("answer-{code}"), &[])), value.into());
        let options = vec![option("yes", true), option("no", false)];
        let mut slot = Self::choosing(words, code, FieldKind::YesNo, Becomes::Chosen, options);
        slot.field.filled = Some("no".to_owned());
        slot
    }

    fn choosing(words: &Words, code: &str, kind: FieldKind, becomes: Becomes, options: Vec<Option_>) -> Self {
        let mut slot = Self::new(words, code, kind, becomes);
        (slot.field.choices, slot.values) = options.into_iter().unzip();
        slot
    }

    /// It can't be left empty.
    pub(super) fn required(mut self) -> Self {
        self.field.required = true;
        self
    }

    /// Its value goes here in the command's data, where that is not the field's own name.
    pub(super) fn to(mut self, path: &str) -> Self {
        path.clone_into(&mut self.path);
        self
    }

    /// Its choice is one more element of a list.
    pub(super) fn pushed_to(mut self, path: &str) -> Self {
        path.clone_into(&mut self.path);
        self.becomes = Becomes::Pushed;
        self
    }

    /// Its choice is one more part of a text; the empty one adds nothing.
    pub(super) fn joined_to(mut self, path: &str) -> Self {
        path.clone_into(&mut self.path);
        self.becomes = Becomes::Joined;
        self
    }

    /// Its choices are the flags of an object.
    pub(super) fn flags(mut self) -> Self {
        self.becomes = Becomes::Flags;
        self
    }

    /// Several readings, one a line.
    pub(super) fn list(mut self) -> Self {
        self.becomes = Becomes::List;
        self
    }

    /// Left empty, nothing is said of it; otherwise an empty list is said.
    pub(super) fn unless_empty(mut self) -> Self {
        self.silent = true;
        self
    }

    /// A number that the command takes as text.
    pub(super) fn spelled(mut self) -> Self {
        self.becomes = Becomes::Text;
        self
    }

    /// What was read last, in words.
    pub(super) fn last(mut self, last: Option<String>) -> Self {
        self.field.last = last;
        self
    }

    /// What it holds already.
    pub(super) fn filled(mut self, filled: Option<impl Into<String>>) -> Self {
        self.field.filled = filled.map(Into::into);
        self
    }

    /// The grooves of a tread reading.
    pub(super) fn grooves(mut self, grooves: Vec<Groove>) -> Self {
        self.field.grooves = grooves;
        self
    }

    /// The photo that its circle is dragged over.
    pub(super) fn over(mut self, photo: Option<String>) -> Self {
        self.field.photo = photo;
        self
    }

    /// The value in data; none for a field that was left empty.
    fn value(&self, given: Option<&str>, words: &Words) -> Result<Option<Value>, Trouble> {
        let field = ("field", self.field.label.as_str().into());
        let given = given.map(str::trim).filter(|given| !given.is_empty());
        let Some(given) = given.or(self.field.filled.as_deref().filter(|_| self.field.kind == FieldKind::YesNo)) else {
            return match self.becomes {
                _ if self.field.required => Err(Trouble::mend(words, "trouble-field-empty", &[field])),
                Becomes::List if !self.silent => Ok(Some(Value::Array(Vec::new()))),
                _ => Ok(None),
            };
        };
        let chosen = |code: &str| {
            let at = self.field.choices.iter().position(|choice| choice.code == code);
            at.and_then(|at| self.values.get(at)).cloned().ok_or_else(|| {
                let args = [field.clone(), ("given", clipped(code).into())];
                Trouble::mend(words, "trouble-field-choice", &args)
            })
        };
        Ok(Some(match (self.becomes, self.field.kind) {
            (Becomes::Chosen | Becomes::Pushed | Becomes::Joined, _) => chosen(given)?,
            (Becomes::List, FieldKind::Several) => {
                Value::Array(given.split_whitespace().map(chosen).collect::<Result<_, _>>()?)
            }
            (Becomes::Flags, _) => {
                let codes = given.split_whitespace().map(|code| chosen(code).map(|_| (code.to_owned(), true.into())));
                Value::Object(codes.collect::<Result<_, _>>()?)
            }
            (Becomes::List, _) => {
                let lines = given.split(['\n', ';']).map(str::trim).filter(|line| !line.is_empty());
                Value::Array(lines.map(|line| Value::from(self.with_unit(line))).collect())
            }
            (becomes, FieldKind::Count) => {
                let count = given.parse::<u32>().ok().filter(|count| {
                    let count = f64::from(*count);
                    self.field.least.is_none_or(|least| count >= least)
                        && self.field.most.is_none_or(|most| count <= most)
                });
                let Some(count) = count else {
                    let bound = |bound: Option<f64>| bound.map(plain).unwrap_or_default();
                    let args = [
                        field,
                        ("given", clipped(given).into()),
                        ("least", bound(self.field.least).into()),
                        ("most", bound(self.field.most).into()),
                    ];
                    return Err(Trouble::mend(words, "trouble-field-count", &args));
                };
                if becomes == Becomes::Text { count.to_string().into() } else { count.into() }
            }
            _ => self.with_unit(given).into(),
        }))
    }

    /// A reading without a unit gets the field's own.
    fn with_unit(&self, given: &str) -> String {
        // Thirty-seconds are written behind a number of grooves as they are behind one.
        let told = match &self.field.unit {
            Some(unit) if !given.chars().any(|letter| letter.is_alphabetic() || letter == '/') => {
                format!("{given} {unit}")
            }
            _ => given.to_owned(),
        };
        match told.strip_suffix("1/32in") {
            Some(number) => format!("{number}/32"),
            None => told,
        }
    }
}

/// A choice that is read aloud as it is written.
pub(super) fn choice(code: impl Into<String>, text: String) -> Choice {
    Choice { code: code.into(), spoken: text.clone(), text }
}

/// Choices whose code is what the command takes.
pub(super) fn options<T: Serialize + Copy>(all: &[T], text: impl Fn(T) -> String) -> Vec<Option_> {
    all.iter()
        .filter_map(|item| {
            let value = serde_json::to_value(item).ok()?;
            let code = value.as_str()?.to_owned();
            Some((choice(code, text(*item)), value))
        })
        .collect()
}

/// Choices that are texts of the book: names and places.
pub(super) fn named(names: impl IntoIterator<Item = String>) -> Vec<Option_> {
    names.into_iter().map(|name| (choice(name.clone(), name.clone()), name.into())).collect()
}

/// A command on its way: what is settled, and what is to be filled in.
#[derive(Debug, Clone)]
pub(super) struct Form {
    settled: Map<String, Value>,
    slots: Vec<Slot>,
}

impl Form {
    /// A form for the command of this code.
    pub(super) fn of(command: &str) -> Self {
        let mut settled = Map::new();
        settled.insert("do".to_owned(), command.into());
        Self { settled, slots: Vec::new() }
    }

    /// Something that is settled; keys set apart by dots.
    pub(super) fn with(mut self, path: &str, value: impl Into<Value>) -> Self {
        put(&mut self.settled, path, value.into(), Becomes::Text);
        self
    }

    /// One more field.
    pub(super) fn ask(mut self, slot: Slot) -> Self {
        self.slots.push(slot);
        self
    }

    /// Another field, where it applies.
    pub(super) fn ask_if(self, applies: bool, slot: impl FnOnce() -> Slot) -> Self {
        if applies { self.ask(slot()) } else { self }
    }

    /// What a person fills in.
    pub(super) fn fields(&self) -> Vec<Field> {
        self.slots.iter().map(|slot| slot.field.clone()).collect()
    }

    /// What is settled, as text: it tells one offer from another.
    pub(super) fn settled(&self) -> String {
        Value::Object(self.settled.clone()).to_string()
    }

    /// Whether it is for what a command's data say.
    pub(super) fn says(&self, data: &Value) -> bool {
        self.settled.iter().all(|(key, value)| data.get(key) == Some(value))
    }

    /// What a command's data say in its fields.
    pub(super) fn told(&self, data: &Value) -> Vec<Entered> {
        let told = |slot: &Slot| {
            if slot.becomes == Becomes::Joined {
                // Parts of a text can't be told apart again; the best stand filled in.
                return None;
            }
            let value = slot.path.split('.').try_fold(data, |data, key| data.get(key))?;
            let chosen = slot.values.iter().position(|known| known == value);
            let text = match (chosen.and_then(|at| slot.field.choices.get(at)), value) {
                (Some(choice), _) => choice.code.clone(),
                (None, Value::String(text)) => text.clone(),
                (None, Value::Number(number)) => number.to_string(),
                _ => return None,
            };
            Some(Entered { code: slot.field.code.clone(), value: text })
        };
        self.slots.iter().filter_map(told).collect()
    }

    /// The data of the command, with what was entered.
    ///
    /// # Errors
    /// Naming the field that is not there, left empty, or not understood.
    pub(super) fn filled(&self, entered: &[Entered], words: &Words) -> Result<Map<String, Value>, Trouble> {
        if let Some(stranger) = entered.iter().find(|said| self.slots.iter().all(|slot| slot.field.code != said.code)) {
            return Err(Trouble::mend(words, "trouble-no-field", &[("given", clipped(&stranger.code).into())]));
        }
        let mut data = self.settled.clone();
        for slot in &self.slots {
            let given = entered.iter().rfind(|said| said.code == slot.field.code).map(|said| said.value.as_str());
            let value = slot.value(given, words).map_err(|why| why.at(slot.field.code.clone()))?;
            if let Some(value) = value {
                put(&mut data, &slot.path, value, slot.becomes);
            }
        }
        Ok(data)
    }

    /// The command.
    ///
    /// # Errors
    /// As [`filled`](Self::filled).
    pub(super) fn command(&self, entered: &[Entered], words: &Words) -> Result<Command, Trouble> {
        let data = self.filled(entered, words)?;
        serde_json::from_value(Value::Object(data))
            .map_err(|_| Trouble::new(TroubleKind::Report, words, "trouble-form", &[]))
    }
}

/// Puts a value at a path, making the objects on the way.
fn put(into: &mut Map<String, Value>, path: &str, value: Value, becomes: Becomes) {
    match path.split_once('.') {
        Some((key, rest)) => {
            let inner = into.entry(key.to_owned()).or_insert_with(|| Value::Object(Map::new()));
            if let Value::Object(inner) = inner {
                put(inner, rest, value, becomes);
            }
        }
        None if becomes == Becomes::Pushed => {
            match into.entry(path.to_owned()).or_insert_with(|| Value::Array(Vec::new())) {
                Value::Array(list) => list.push(value),
                other => *other = value,
            }
        }
        None if becomes == Becomes::Joined => {
            let text = into.get(path).and_then(Value::as_str).unwrap_or_default();
            let text = format!("{text} {}", value.as_str().unwrap_or_default());
            into.insert(path.to_owned(), text.trim().into());
        }
        None => {
            into.insert(path.to_owned(), value);
        }
    }
}
