//! Gray pictures, and planes of numbers made from them.

use fast_image_resize::images::{TypedImage, TypedImageRef};
use fast_image_resize::pixels::U8;
use fast_image_resize::{FilterType, ResizeAlg, ResizeOptions, Resizer};

/// The most pixels of a side that are looked at.
const LONGEST_SIDE: usize = 1 << 16;

/// A gray picture, upright, row after row, 0 (black) to 255 (white).
///
/// ```
/// use lugbook::sight::Picture;
/// let picture = Picture::from_rgb(2, 1, &[0, 0, 0, 255, 255, 255]).unwrap();
/// assert_eq!((picture.width(), picture.height()), (2, 1));
/// assert!(Picture::from_rgb(2, 1, &[0, 0, 0]).is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    width: usize,
    height: usize,
    levels: Vec<u8>,
}

impl Picture {
    /// From red, green and blue of each pixel. `None` when the bytes don't fit the sides, a side is 0 or over 65,536.
    ///
    /// Gray is Rec. 601 luma.
    ///
    /// ```
    /// use lugbook::sight::Picture;
    /// assert!(Picture::from_rgb(1, 1, &[10, 10, 10]).is_some());
    /// assert!(Picture::from_rgb(0, 1, &[]).is_none());
    /// ```
    pub fn from_rgb(width: u32, height: u32, rgb: &[u8]) -> Option<Self> {
        let level = |pixel: &[u8]| {
            let sum: u32 = pixel.iter().zip([77_u32, 150, 29]).map(|(&value, weight)| u32::from(value) * weight).sum();
            u8::try_from(sum >> 8).unwrap_or(u8::MAX)
        };
        Self::from_gray(width, height, rgb.chunks_exact(3).map(level).collect())
            .filter(|picture| picture.levels.len() * 3 == rgb.len())
    }

    /// From one level for each pixel. `None` when they don't fit the sides, a side is 0 or over 65,536.
    ///
    /// ```
    /// use lugbook::sight::Picture;
    /// assert!(Picture::from_gray(2, 2, vec![0; 4]).is_some());
    /// assert!(Picture::from_gray(2, 2, vec![0; 3]).is_none());
    /// ```
    pub fn from_gray(width: u32, height: u32, levels: Vec<u8>) -> Option<Self> {
        let (width, height) = (usize::try_from(width).ok()?, usize::try_from(height).ok()?);
        let fits = width > 0 && height > 0 && width <= LONGEST_SIDE && height <= LONGEST_SIDE;
        (fits && width * height == levels.len()).then_some(Self { width, height, levels })
    }

    /// Pixels across.
    ///
    /// ```
    /// # use lugbook::sight::Picture;
    /// assert_eq!(Picture::from_gray(3, 2, vec![0; 6]).unwrap().width(), 3);
    /// ```
    pub fn width(&self) -> usize {
        self.width
    }

    /// Pixels from top to bottom.
    ///
    /// ```
    /// # use lugbook::sight::Picture;
    /// assert_eq!(Picture::from_gray(3, 2, vec![0; 6]).unwrap().height(), 2);
    /// ```
    pub fn height(&self) -> usize {
        self.height
    }

    /// Levels of gray, row by row from the top.
    ///
    /// ```
    /// # use lugbook::sight::Picture;
    /// assert_eq!(Picture::from_gray(2, 1, vec![0, 9]).unwrap().levels(), [0, 9]);
    /// ```
    pub fn levels(&self) -> &[u8] {
        &self.levels
    }

    /// The longer side.
    pub(super) fn longest(&self) -> usize {
        self.width.max(self.height)
    }

    /// The same picture, its sides changed by a factor; smaller ones are means, larger ones are smooth.
    pub(super) fn scaled(&self, by: f32) -> Self {
        let side = |side: usize| ((side as f32 * by).round() as usize).max(1);
        self.resized(side(self.width), side(self.height))
    }

    /// The same picture with these sides.
    pub(super) fn resized(&self, width: usize, height: usize) -> Self {
        if (width, height) == (self.width, self.height) {
            return self.clone();
        }
        let side = |side: usize| u32::try_from(side).unwrap_or(1).max(1);
        let resized = || {
            let source = TypedImageRef::<U8>::from_buffer(side(self.width), side(self.height), &self.levels).ok()?;
            let mut levels = vec![0; side(width) as usize * side(height) as usize];
            let mut target = TypedImage::<U8>::from_buffer(side(width), side(height), &mut levels).ok()?;
            let filter = if width < self.width { FilterType::Bilinear } else { FilterType::CatmullRom };
            let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(filter));
            // Of one kind of pixel: named at run time, the library brings in all kinds.
            Resizer::new().resize_typed(&source, &mut target, &options).ok()?;
            Some(levels)
        };
        let levels = resized().unwrap_or_else(|| vec![0; width * height]);
        Self { width, height, levels }
    }

    /// A part of it; beyond its sides the nearest pixel goes on, and around a round strip its other end.
    pub(super) fn window(&self, left: i64, top: i64, width: usize, height: usize, round: bool) -> Self {
        let mut levels = Vec::with_capacity(width * height);
        for y in 0..height as i64 {
            let row = self.row((top + y).clamp(0, self.height as i64 - 1) as usize);
            for x in 0..width as i64 {
                let at = if round {
                    (left + x).rem_euclid(self.width as i64)
                } else {
                    (left + x).clamp(0, self.width as i64 - 1)
                };
                levels.push(row.get(at as usize).copied().unwrap_or(0));
            }
        }
        Self { width, height, levels }
    }

    pub(super) fn row(&self, y: usize) -> &[u8] {
        self.levels.get(y * self.width..(y + 1) * self.width).unwrap_or_default()
    }

    /// The level between four pixels; beyond the sides the nearest pixel goes on.
    pub(super) fn between(&self, x: f32, y: f32) -> f32 {
        let (x, y) = (x.clamp(0.0, (self.width - 1) as f32), y.clamp(0.0, (self.height - 1) as f32));
        let (left, top) = (x as usize, y as usize);
        let (u, v) = (x - left as f32, y - top as f32);
        let right = (left + 1).min(self.width - 1);
        let (above, below) = (self.row(top), self.row((top + 1).min(self.height - 1)));
        let at = |row: &[u8], x: usize| f32::from(row.get(x).copied().unwrap_or(0));
        let (a, b) = (at(above, left), at(above, right));
        let (c, d) = (at(below, left), at(below, right));
        (a + (b - a) * u) * (1.0 - v) + (c + (d - c) * u) * v
    }

    /// As numbers.
    pub(super) fn plane(&self) -> Plane {
        Plane {
            width: self.width,
            height: self.height,
            values: self.levels.iter().map(|&level| f32::from(level)).collect(),
        }
    }
}

/// Numbers on a grid.
#[derive(Debug, Clone)]
pub(super) struct Plane {
    pub width: usize,
    pub height: usize,
    pub values: Vec<f32>,
}

impl Plane {
    pub fn new(width: usize, height: usize, value: f32) -> Self {
        Self { width, height, values: vec![value; width * height] }
    }

    pub fn row(&self, y: usize) -> &[f32] {
        self.values.get(y * self.width..(y + 1) * self.width).unwrap_or_default()
    }

    pub fn row_mut(&mut self, y: usize) -> &mut [f32] {
        self.values.get_mut(y * self.width..(y + 1) * self.width).unwrap_or_default()
    }

    pub fn at(&self, x: usize, y: usize) -> f32 {
        self.row(y).get(x).copied().unwrap_or(0.0)
    }

    /// The mean over a square of `2 * reach + 1`, by running sums; beyond the sides the nearest value goes on, and
    /// around a round strip its other end.
    pub fn mean(&self, reach: usize, round: bool) -> Self {
        self.mean_of(reach, reach, round)
    }

    /// The same over a rectangle.
    pub fn mean_of(&self, across: usize, down: usize, round: bool) -> Self {
        self.run(across, round).turned().run(down, false).turned()
    }

    fn run(&self, reach: usize, round: bool) -> Self {
        let mut out = Self::new(self.width, self.height, 0.0);
        let (reach, width) = (reach as i64, self.width as i64);
        for y in 0..self.height {
            let row = self.row(y);
            let at = |x: i64| {
                let x = if round { x.rem_euclid(width) } else { x.clamp(0, width - 1) };
                row.get(x as usize).copied().unwrap_or(0.0)
            };
            let mut sum: f32 = (-reach..=reach).map(at).sum();
            let share = 1.0 / (2 * reach + 1) as f32;
            for (x, value) in (0..).zip(out.row_mut(y)) {
                *value = sum * share;
                sum += at(x + reach + 1) - at(x - reach);
            }
        }
        out
    }

    /// Rows become columns.
    pub fn turned(&self) -> Self {
        let mut values = Vec::with_capacity(self.values.len());
        for x in 0..self.width {
            values.extend(self.values.iter().skip(x).step_by(self.width));
        }
        Self { width: self.height, height: self.width, values }
    }

    /// As a picture; what is beyond 0 to 255 is cut.
    pub fn picture(&self) -> Picture {
        let levels = self.values.iter().map(|value| value.round().clamp(0.0, 255.0) as u8).collect();
        Picture { width: self.width, height: self.height, levels }
    }

    /// The value that this share of all values does not exceed.
    pub fn share(&self, share: f32) -> f32 {
        let mut values: Vec<f32> = self.values.iter().copied().step_by(1 + self.values.len() / 20_000).collect();
        if values.is_empty() {
            return 0.0;
        }
        let at = ((values.len() - 1) as f32 * share.clamp(0.0, 1.0)) as usize;
        *values.select_nth_unstable_by(at, f32::total_cmp).1
    }
}
