use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::time::Duration;

use serde::Serialize;

use super::error::{Doing, PhotoError};
use super::keep::age;
use super::kept::original_name;
use super::{Photos, Rendition};
use crate::calendar::Moment;
use crate::ident::Digest;

/// What a sweep took away.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct Swept {
    /// Photos that no entry names.
    pub photos: Vec<Digest>,
    /// Photos that no entry names yet, still within the grace period.
    pub waiting: usize,
    /// Renditions whose original is gone.
    pub renditions: usize,
    /// Files that were never finished.
    pub unfinished: usize,
    /// Bytes freed.
    pub freed: u64,
}

impl Photos {
    /// Removes what no entry names and is older than the grace period, by the caller's clock.
    ///
    /// `named` must come from a book that opened whole: to a book that lost entries, their photos are evidence.
    /// A clock that went back removes nothing.
    ///
    /// # Errors
    /// When a folder can't be read or a file not removed; what was removed until then stays removed.
    pub fn sweep(&self, named: &BTreeSet<Digest>, now: Moment, grace: Duration) -> Result<Swept, PhotoError> {
        let mut swept = Swept::default();
        for path in self.listed(&self.incoming())? {
            if path.extension().is_some_and(|extension| extension == "part")
                && self.remove(&path, now, grace, &mut swept)?
            {
                swept.unfinished += 1;
            }
        }
        for path in self.listed(&self.originals())? {
            let Some(id) = original_name(&path).filter(|id| !named.contains(id)) else { continue };
            if !self.remove(&path, now, grace, &mut swept)? {
                swept.waiting += 1;
                continue;
            }
            for rendition in [Rendition::Large, Rendition::Small] {
                let _shelf = self.shelf();
                if self.original(id).is_none() {
                    // One that can't be removed now is an orphan of the next sweep.
                    let _ = self.disk().remove(&self.rendition_path(id, rendition));
                }
            }
            swept.photos.push(id);
        }
        for path in self.listed(&self.renditions())? {
            let Some(id) = rendition_name(&path).filter(|id| self.original(*id).is_none() && !named.contains(id))
            else {
                continue;
            };
            if self.original(id).is_none() && self.remove(&path, now, grace, &mut swept)? {
                swept.renditions += 1;
            }
        }
        swept.photos.sort();
        Ok(swept)
    }

    /// Removes a file when it is older than the grace period; a photo taken in again meanwhile is young again.
    fn remove(&self, path: &Path, now: Moment, grace: Duration, swept: &mut Swept) -> Result<bool, PhotoError> {
        let sweeping = PhotoError::storage(Doing::Sweeping, 1 << 20);
        let _shelf = self.shelf();
        if age(path, now).map_err(&sweeping)? <= grace {
            return Ok(false);
        }
        let bytes = fs::metadata(path).map_or(0, |about| about.len());
        self.disk().remove(path).map_err(&sweeping)?;
        swept.freed += bytes;
        Ok(true)
    }
}

/// The photo that a file in `renditions/` belongs to, by its name.
fn rendition_name(path: &Path) -> Option<Digest> {
    path.file_stem()?.to_str()?.split_once('-')?.0.parse().ok()
}
