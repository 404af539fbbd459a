//! What is looked at before a pixel is decoded.

/// The most bytes a photo file may have: 50 MB.
///
/// A design choice: a 12-megapixel JPEG has 2 to 6 MB, one of 108 megapixels about 30.
pub const MAX_BYTES: u64 = 50_000_000;

/// The most pixels a photo may have: 128 million.
///
/// A design choice: phones make JPEG files of up to 108 million pixels. A header of 30,000 × 30,000 is refused.
pub const MAX_PIXELS: u64 = 128_000_000;

/// The most memory that decoding one photo may take: 256 MiB, by what its header asks for.
///
/// A design choice. A baseline JPEG is decoded reduced and takes a tenth of this for 12 megapixels; PNG, WebP and
/// progressive JPEG must be held whole.
pub const MAX_MEMORY: u64 = 256 << 20;

/// The most scans a JPEG may have: 100.
///
/// A design choice: a progressive photo has about ten. Each scan walks the whole picture, so thousands of them in a
/// small file would keep a phone busy for minutes.
pub(super) const MAX_SCANS: usize = 100;

/// Longest side that lettering on a whole wheel is read at, in pixels: that of a photo of 12 megapixels.
pub const FINE: u32 = 4032;

/// Longest side of the rendition that a screen shows, in pixels.
pub const LARGE: u32 = 1600;

/// Longest side of the rendition that a list shows, in pixels.
pub const SMALL: u32 = 320;

/// Longest side of a full-size copy for sharing, in pixels.
pub const SHARED: u32 = 6000;
