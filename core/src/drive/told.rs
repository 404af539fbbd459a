//! What people and papers say, and the book's drive entries as evidence.

use serde::{Deserialize, Serialize};

use crate::entry::DriveSeen;
use crate::vehicle::Drive;
use crate::vehicle::hub::Evidence;

/// What people and papers say; `None` and [`Drive::Unknown`] say nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct Told {
    /// The vehicle's manual, or the plate that names the drive.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub manual: Option<Drive>,
    /// The owner.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub owner: Option<Drive>,
}

/// The evidence and the statements in what the book's entries noted. Of
/// several words of the manual, or of the owner, the latest stands.
///
/// ```
/// use lugbook::drive;
/// use lugbook::entry::DriveSeen;
/// use lugbook::vehicle::{Drive, Side, hub::{Evidence, Hub}};
/// let noted = [
///     DriveSeen::Hub { evidence: Evidence::look(1, Side::Left, Hub::NoShaft) },
///     DriveSeen::Manual { drive: Drive::Rear },
/// ];
/// let (seen, told) = drive::noted(&noted);
/// assert_eq!((seen[0].hub, told.manual), (Hub::NoShaft, Some(Drive::Rear)));
/// ```
pub fn noted<'a>(entries: impl IntoIterator<Item = &'a DriveSeen>) -> (Vec<Evidence>, Told) {
    let mut seen = Vec::new();
    let mut told = Told::default();
    for entry in entries {
        match *entry {
            DriveSeen::Manual { drive } => told.manual = Some(drive),
            DriveSeen::Owner { drive } => told.owner = Some(drive),
            DriveSeen::Hub { evidence } => seen.push(evidence),
        }
    }
    (seen, told)
}
