//! Lines of text on a strip: regions are cut out, read, and joined along their base line.

use super::arrows::{self, Stands};
use super::models::{Frames, Models};
use super::numbers;
use super::picture::Picture;
use super::regions::{self, Region};
use super::strip::{Strip, even};
use super::tiles::Cut;

/// The height of a line as the recognizer takes it.
const LINE: usize = 48;
/// The most arrows that are sought on a tile; a sidewall bears one or two.
const MOST_ARROWS: usize = 4;
/// The longest line, in pixels at that height.
const LONGEST: usize = 960;
/// Below this a text is not kept.
const LEAST_CONFIDENCE: f32 = 0.3;

/// Text on a strip.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Line {
    pub text: String,
    /// The same in the symbols of identification numbers, what is none being a space.
    pub number: String,
    /// Mean likelihood of its characters, 0 to 1.
    pub confidence: f32,
    /// Where it says `ROTATION`.
    pub rotation: Option<Stands>,
    /// An arrow beside that: whether it points to the right along the strip, and how likely.
    pub arrow: Option<(bool, f32)>,
    /// It was read upside down.
    pub over: bool,
    /// Where it stands, in pixels of the strip.
    pub place: Region,
}

impl Line {
    /// Read without doubt.
    pub fn clear(&self) -> bool {
        self.confidence > 0.95
    }

    /// Lettering for sure, not an arrow that was taken for some.
    fn lettering(&self) -> bool {
        self.text.chars().filter(char::is_ascii_alphanumeric).count() >= arrows::LETTERING
    }
}

/// Cuts a region out of a strip, turned level and 48 pixels high; `over` turns it upside down.
pub(super) fn cut(strip: &Strip, region: &Region, over: bool) -> Option<Picture> {
    if region.width < 6.0 || region.height < 5.0 {
        return None;
    }
    let width = ((LINE as f32 * region.width / region.height).ceil() as usize).clamp(LINE, LONGEST);
    let (step_x, step_y) = (region.width / width as f32, region.height / LINE as f32);
    let (sin, cos) = region.turn.sin_cos();
    let looks = (step_x.max(step_y).ceil() as usize).clamp(1, 4);
    let share = 1.0 / (looks * looks) as f32;
    let around = strip.picture.width() as f32;
    let mut levels = Vec::with_capacity(width * LINE);
    for row in 0..LINE {
        for column in 0..width {
            let mut sum = 0.0;
            for look in 0..looks * looks {
                let inside = |n: usize| (n as f32 + 0.5) / looks as f32;
                let mut along = (column as f32 + inside(look % looks)) * step_x - region.width / 2.0;
                let mut down = (row as f32 + inside(look / looks)) * step_y - region.height / 2.0;
                if over {
                    (along, down) = (-along, -down);
                }
                let (mut x, y) = (region.x + along * cos - down * sin, region.y + along * sin + down * cos);
                if strip.round {
                    x = x.rem_euclid(around);
                }
                sum += strip.picture.between(x - 0.5, y - 0.5);
            }
            levels.push((sum * share).round() as u8);
        }
    }
    Picture::from_gray(u32::try_from(width).ok()?, LINE as u32, levels)
}

/// A region as it is shown to a person: level, a little more of it than was read.
pub(super) fn shown(strip: &Strip, region: &Region) -> Picture {
    let (width, height) = ((region.width * 1.04) as usize + 8, (region.height * 1.1) as usize + 8);
    let (left, top) = (region.x - width as f32 / 2.0, region.y - height as f32 / 2.0);
    let cut = strip.picture.window(left as i64, top as i64, width, height, strip.round);
    if height > 96 { cut.scaled(96.0 / height as f32) } else { cut }
}

/// What a line says.
#[derive(Debug, Default)]
struct Spelled {
    text: String,
    confidence: f32,
    number: String,
    /// Where each character stands along the line, 0 to 1.
    at: Vec<f32>,
}

/// The likeliest characters along a line, and how likely they are on the mean.
fn spell(models: &Models, frames: &Frames) -> Spelled {
    let mut spelled = Spelled::default();
    let (mut sum, mut count, mut last) = (0.0, 0.0, 0);
    for (place, row) in frames.rows.iter().enumerate() {
        let best = row.iter().enumerate().max_by(|a, b| a.1.total_cmp(b.1));
        let Some((class, likely)) = best else { continue };
        if class != last && class != 0 {
            spelled.text.extend(models.characters().get(class));
            spelled.at.push((place as f32 + 0.5) / frames.rows.len() as f32);
            sum += likely;
            count += 1.0;
        }
        last = class;
    }
    spelled.confidence = if count > 0.0 { sum / count } else { 0.0 };
    spelled.number = number(models, frames);
    spelled
}

/// The likeliest symbols of an identification number along a line: characters that stand for one symbol count together.
fn number(models: &Models, frames: &Frames) -> String {
    let symbols: Vec<char> =
        models.characters().iter().enumerate().map(|(n, c)| if n == 0 { '\0' } else { numbers::symbol(*c) }).collect();
    let mut text = String::new();
    let mut last = '\0';
    for row in &frames.rows {
        let mut sums = [0.0_f32; 128];
        for (symbol, likely) in symbols.iter().zip(row) {
            if let Some(sum) = sums.get_mut(*symbol as usize) {
                *sum += likely;
            }
        }
        let best = (0_u8..).zip(sums).max_by(|a, b| a.1.total_cmp(&b.1)).map_or('\0', |(symbol, _)| symbol.into());
        if best != last && best != '\0' {
            text.push(best);
        }
        last = best;
    }
    text
}

/// Reads a region.
pub(super) fn read(models: &Models, strip: &Strip, region: &Region, over: bool) -> Option<Line> {
    let line = even(&cut(strip, region, over)?, 12, false);
    let frames = models.characters_along(line.width(), line.levels())?;
    let Spelled { text, confidence, number, at } = spell(models, &frames);
    let rotation = arrows::stands(&text, &at, over);
    let text = text.trim().to_owned();
    (!text.is_empty() && confidence > LEAST_CONFIDENCE).then_some(Line {
        text,
        number,
        confidence,
        rotation,
        arrow: None,
        over,
        place: *region,
    })
}

/// How many pixels along a line the recognizer looks at for a region: what reading it costs.
pub(super) fn cost(region: &Region) -> usize {
    ((LINE as f32 * region.width / region.height.max(1.0)).ceil() as usize).clamp(LINE, LONGEST)
}

/// Regions of lettering on a tile of a strip, in the strip's own pixels.
pub(super) fn regions(models: &Models, cut: &Cut) -> Vec<Region> {
    let Cut { picture: tile, left, top, scale } = cut;
    // The detector halves five times.
    let side = |side: usize| (side as f32 / 32.0).round().max(1.0) as usize * 32;
    let (width, height) = (side(tile.width()), side(tile.height()));
    let fitted = tile.resized(width, height);
    let Some(map) = models.lettering(width, height, fitted.levels()) else { return Vec::new() };
    let (sx, sy) = (tile.width() as f32 / width as f32, tile.height() as f32 / height as f32);
    regions::of(&map)
        .into_iter()
        .map(|region| Region {
            x: region.x * sx * scale + left,
            y: region.y * sy * scale + top,
            width: region.width * sx * scale,
            height: region.height * sy * scale,
            ..region
        })
        .collect()
}

/// Seeks the arrow beside each `ROTATION` among texts, where no other lettering stands.
pub(super) fn with_arrows(strip: &Strip, mut texts: Vec<Line>) -> Vec<Line> {
    let places: Vec<Region> = texts.iter().filter(|text| text.lettering()).map(|text| text.place).collect();
    let sought = texts.iter_mut().filter(|text| text.rotation.is_some() && text.arrow.is_none()).take(MOST_ARROWS);
    for text in sought {
        let Some(stands) = text.rotation else { continue };
        let others: Vec<Region> = places.iter().filter(|place| **place != text.place).copied().collect();
        text.arrow = arrows::beside(strip, &text.place, stands, &others);
    }
    texts
}

/// Joins texts that stand on one base line, left to right.
pub(super) fn join(mut texts: Vec<Line>) -> Vec<Line> {
    texts.sort_by(|a, b| a.place.left().total_cmp(&b.place.left()));
    let mut lines: Vec<Vec<Line>> = Vec::new();
    for text in texts {
        let fits = |line: &Vec<Line>| {
            let last = line.last()?;
            let (a, b) = (&last.place, &text.place);
            let (low, high) = (a.height.min(b.height), a.height.max(b.height));
            let gap = b.left() - a.right();
            let apart = (a.y - b.y).abs();
            (apart < 0.45 * low && gap > -0.5 * low && gap < 3.5 * low && high < 1.7 * low).then_some(gap)
        };
        let nearest = lines
            .iter_mut()
            .filter_map(|line| fits(line).map(|gap| (gap, line)))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, line)| line);
        match nearest {
            Some(line) => line.push(text),
            None => lines.push(vec![text]),
        }
    }
    lines.into_iter().filter_map(joined).collect()
}

fn joined(parts: Vec<Line>) -> Option<Line> {
    let mut parts = parts.into_iter();
    let mut line = parts.next()?;
    let mut count = 1.0;
    for part in parts {
        line.text.push(' ');
        line.text.push_str(&part.text);
        line.confidence = (line.confidence * count + part.confidence) / (count + 1.0);
        count += 1.0;
        let (left, right) = (line.place.left(), part.place.right());
        line.place = Region {
            x: (left + right) / 2.0,
            y: (line.place.y + part.place.y) / 2.0,
            width: right - left,
            height: line.place.height.max(part.place.height),
            ..line.place
        };
        line.number.push(' ');
        line.number.push_str(&part.number);
        line.arrow = line.arrow.or(part.arrow);
    }
    Some(line)
}
