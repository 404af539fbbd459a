//! Photos: taken in whole or not at all, kept as they came, found again by their digest.
//!
//! A folder holds three:
//!
//! | folder | what |
//! | --- | --- |
//! | `originals/` | each photo as it came, named by the BLAKE3 digest of its bytes |
//! | `renditions/` | two smaller JPEG files of each, upright, without notes; made again when missing or damaged |
//! | `incoming/` | files being written; nothing in here is a photo yet |
//!
//! A photo is copied into `incoming/`, synced, renamed, and its folder synced; only then does [`Photos::intake_file`]
//! return and may the caller write the entry that names it. A process that dies earlier leaves nothing under a
//! photo's name, or a whole photo that no entry names, which [`Photos::sweep`] removes after a grace period.
//!
//! What a file is, is told by content. Its size, and what its header asks for, are looked at before a pixel is
//! decoded. The original keeps all its notes; renditions and [shared copies](Photos::share) carry nothing but the
//! picture, colors taken as sRGB.
//!
//! ```
//! use lugbook::calendar::Moment;
//! use lugbook::photos::{PhotoError, Photos, Refusal};
//!
//! let folder = std::env::temp_dir().join(format!("lugbook-photos-doc-{}", std::process::id()));
//! let photos = Photos::open(&folder)?;
//! let refused = photos.intake_bytes(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", Moment::from_unix_ms(0));
//! assert!(matches!(refused, Err(PhotoError::Refused(Refusal::Heic))));
//! # std::fs::remove_dir_all(&folder).ok();
//! # Ok::<(), PhotoError>(())
//! ```

mod decode;
mod disk;
mod error;
mod exif;
mod format;
mod intake;
mod jpeg;
mod judge;
mod keep;
mod kept;
mod limits;
mod reduce;
mod seal;
mod sweep;
mod upright;
mod webp;

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use serde::{Deserialize, Serialize};

pub use disk::{Disk, RealDisk};
pub use error::{Damage, Doing, OtherKind, PhotoError, Problem, Refusal};
pub use exif::{Orientation, Taken};
pub use format::Format;
pub use intake::Intake;
pub use judge::{Hint, Judgement};
pub use kept::Checked;
pub use limits::{FINE, LARGE, MAX_BYTES, MAX_MEMORY, MAX_PIXELS, SHARED, SMALL};
pub use sweep::Swept;
pub use upright::Upright;

/// Which of a photo's files.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rendition {
    /// As it came, with all its notes.
    Original,
    /// For a screen: longest side at most 1600 pixels.
    Large,
    /// For a list: longest side at most 320 pixels.
    Small,
}

impl Rendition {
    /// The longest side in pixels; of the original, that of a shared copy.
    fn edge(self) -> u32 {
        match self {
            Self::Original => SHARED,
            Self::Large => LARGE,
            Self::Small => SMALL,
        }
    }
}

/// A folder of photos. One program at a time writes to it; the book's own lock sees to that.
pub struct Photos {
    folder: PathBuf,
    disk: Box<dyn Disk>,
    /// Held while a photo gets its name and while a sweep takes one away.
    shelf: Mutex<()>,
}

impl std::fmt::Debug for Photos {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Photos").field("folder", &self.folder).finish_non_exhaustive()
    }
}

impl Photos {
    /// Opens a folder of photos, and makes it, for its owner only, where there is none.
    ///
    /// # Errors
    /// When the folder can't be made.
    pub fn open(folder: impl Into<PathBuf>) -> Result<Self, PhotoError> {
        Self::open_on(folder, Box::new(RealDisk))
    }

    /// As [`open`](Self::open), with another way to the disk, for checks that make it fail.
    ///
    /// # Errors
    /// When the folder can't be made.
    pub fn open_on(folder: impl Into<PathBuf>, disk: Box<dyn Disk>) -> Result<Self, PhotoError> {
        let photos = Self { folder: folder.into(), disk, shelf: Mutex::new(()) };
        let opening = PhotoError::storage(Doing::OpeningFolder, 1 << 20);
        for folder in [photos.originals(), photos.renditions(), photos.incoming()] {
            if !folder.is_dir() {
                private(&folder).map_err(&opening)?;
                photos.disk.sync_folder(&photos.folder).map_err(&opening)?;
            }
        }
        Ok(photos)
    }

    fn disk(&self) -> &dyn Disk {
        &*self.disk
    }

    fn shelf(&self) -> MutexGuard<'_, ()> {
        self.shelf.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn originals(&self) -> PathBuf {
        self.folder.join("originals")
    }

    fn renditions(&self) -> PathBuf {
        self.folder.join("renditions")
    }

    fn incoming(&self) -> PathBuf {
        self.folder.join("incoming")
    }

    fn original_path(&self, id: crate::ident::Digest, format: Format) -> PathBuf {
        self.originals().join(format!("{id}.{}", format.extension()))
    }

    fn rendition_path(&self, id: crate::ident::Digest, rendition: Rendition) -> PathBuf {
        self.renditions().join(format!("{id}-{}.jpg", rendition.edge()))
    }
}

/// Makes a folder that only its owner may enter.
fn private(folder: &Path) -> std::io::Result<()> {
    let mut builder = fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder)
}
