//! What only the device has: its clock and its randomness.

use std::path::PathBuf;
use std::sync::Arc;

use crate::calendar::Moment;
use crate::proof::DeviceKey;
use crate::sight::TileReader;

/// The device that the engine runs on.
pub trait Host: Send + Sync {
    /// The device's clock now; an earlier time while what happened then is entered.
    fn now(&self) -> Moment;

    /// The device's clock, also while earlier events are entered.
    fn clock(&self) -> Moment {
        self.now()
    }

    /// Ten random bytes for a new id.
    fn random(&self) -> [u8; 10];

    /// The key that this device seals with, from its vault: the same at each call, made
    /// when it was first asked for, and kept where no backup or copy of the book takes
    /// it along. None where the device keeps none: then nothing is sealed, and cards say so.
    fn device_key(&self) -> Option<DeviceKey> {
        None
    }

    /// The folder with the models that read photos; none where they are not on the device.
    fn models(&self) -> Option<PathBuf> {
        None
    }

    /// A text reader of the device's own, which reads photos in place of the models; none where it brings none.
    fn tile_reader(&self) -> Option<Arc<dyn TileReader>> {
        None
    }
}

/// The machine's own clock and random numbers.
#[derive(Debug, Clone, Copy, Default)]
pub struct SystemHost {
    /// A fixed time instead of the clock, for entering history.
    pub at: Option<Moment>,
}

impl Host for SystemHost {
    fn now(&self) -> Moment {
        self.at.unwrap_or_else(|| self.clock())
    }

    fn clock(&self) -> Moment {
        let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH).unwrap_or_default();
        Moment::from_unix_ms(i64::try_from(since.as_millis()).unwrap_or(i64::MAX))
    }

    fn random(&self) -> [u8; 10] {
        let random = uuid::Uuid::new_v4();
        // The first ten bytes of a random UUID hold two fixed bits groups at bytes 6 and 8; the rest is random.
        let bytes = random.as_bytes();
        std::array::from_fn(|at| bytes.get(if at < 6 { at } else { at.saturating_add(3) }).copied().unwrap_or_default())
    }
}
