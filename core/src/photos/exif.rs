//! What is kept of a photo's own notes: which way up it is, and when it was taken.

use std::fmt;

use exif::{In, Tag, Value};
use serde::{Deserialize, Serialize};

use crate::calendar::Day;

/// How the stored pixels must be turned to be seen upright: EXIF's orientation, 1 to 8.
///
/// ```
/// use lugbook::photos::Orientation;
/// assert_eq!(Orientation::new(6).map(|o| o.swaps_sides()), Some(true));
/// assert_eq!(Orientation::new(9), None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Orientation(u8);

impl Orientation {
    /// Stored upright.
    pub const UPRIGHT: Self = Self(1);

    /// From EXIF's number; `None` outside 1 to 8.
    pub fn new(value: u8) -> Option<Self> {
        (1..=8).contains(&value).then_some(Self(value))
    }

    /// EXIF's number, 1 to 8.
    pub fn value(self) -> u8 {
        self.0
    }

    /// Whether width and height change places when the photo is turned upright.
    pub fn swaps_sides(self) -> bool {
        self.0 >= 5
    }
}

impl Default for Orientation {
    fn default() -> Self {
        Self::UPRIGHT
    }
}

/// When the camera says the photo was taken: its own clock, with the offset from universal time when it noted one.
///
/// It is evidence of what the camera's clock said, not of the time.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Taken {
    /// The day.
    pub day: Day,
    /// Hour of the day, 0 to 23.
    pub hour: u8,
    /// Minute, 0 to 59.
    pub minute: u8,
    /// Second, 0 to 60.
    pub second: u8,
    /// Minutes ahead of universal time, where the camera noted them.
    pub offset_minutes: Option<i16>,
}

impl fmt::Display for Taken {
    /// `2026-05-04 09:15:00`, and `+02:00` where known.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {:02}:{:02}:{:02}", self.day, self.hour, self.minute, self.second)?;
        match self.offset_minutes {
            Some(offset) => {
                let sign = if offset < 0 { '-' } else { '+' };
                write!(f, "{sign}{:02}:{:02}", offset.unsigned_abs() / 60, offset.unsigned_abs() % 60)
            }
            None => Ok(()),
        }
    }
}

/// What was noted beside the pixels.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Notes {
    pub orientation: Orientation,
    pub taken: Option<Taken>,
}

/// Reads the notes from a TIFF-structured block; anything that can't be read is left out.
pub(super) fn notes(block: &[u8]) -> Notes {
    let block = block.strip_prefix(b"Exif\0\0").unwrap_or(block);
    let mut reader = exif::Reader::new();
    reader.continue_on_error(true);
    let read = match reader.read_raw(block.to_vec()) {
        Ok(read) => read,
        Err(exif::Error::PartialResult(part)) => part.into_inner().0,
        Err(_) => return Notes::default(),
    };
    let orientation = read
        .get_field(Tag::Orientation, In::PRIMARY)
        .and_then(|field| field.value.get_uint(0))
        .and_then(|value| u8::try_from(value).ok())
        .and_then(Orientation::new)
        .unwrap_or_default();
    let taken = [
        (Tag::DateTimeOriginal, Tag::OffsetTimeOriginal),
        (Tag::DateTimeDigitized, Tag::OffsetTimeDigitized),
        (Tag::DateTime, Tag::OffsetTime),
    ]
    .into_iter()
    .find_map(|(time, offset)| taken(ascii(&read, time)?, ascii(&read, offset)));
    Notes { orientation, taken }
}

fn ascii(read: &exif::Exif, tag: Tag) -> Option<&[u8]> {
    match &read.get_field(tag, In::PRIMARY)?.value {
        Value::Ascii(lines) => lines.first().map(Vec::as_slice),
        _ => None,
    }
}

fn taken(time: &[u8], offset: Option<&[u8]>) -> Option<Taken> {
    let mut read = exif::DateTime::from_ascii(time).ok()?;
    let noted = offset.is_some_and(|text| read.parse_offset(text).is_ok());
    let plausible = read.hour < 24 && read.minute < 60 && read.second <= 60;
    let day = Day::new(i16::try_from(read.year).ok()?, i8::try_from(read.month).ok()?, i8::try_from(read.day).ok()?)?;
    plausible.then_some(Taken {
        day,
        hour: read.hour,
        minute: read.minute,
        second: read.second,
        // Offsets in use reach from 12 hours behind to 14 ahead.
        offset_minutes: read.offset.filter(|minutes| noted && (-720..=840).contains(minutes)),
    })
}
