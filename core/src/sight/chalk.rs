//! What is chalked on a tire: where it goes, or its number.
//!
//! Chalk is lighter than anything that is molded, its letters are as tall as a hand writes them, and it crumbles. So
//! what is much lighter than the rubber around it is taken out, its crumbs are joined, and what is left is read as
//! white on black: as the ring runs, from the other side, and as somebody wrote it who stood before the wheel. Only what
//! is chalked on tires is told from it.

use std::f32::consts::{FRAC_PI_2, PI, TAU};

use super::lines;
use super::models::Frames;
use super::picture::{Picture, Plane};
use super::reading::Eyes;
use super::regions::{self, Region};
use super::strip::Strip;
use super::tiles::Tile;

/// What is chalked on a tire: where it goes, or its number (common practice, no source).
const CHALKED: [&str; 18] =
    ["FL", "FR", "RL", "RR", "LF", "RF", "LR", "SP", "1", "2", "3", "4", "5", "6", "1L", "1R", "2L", "2R"];
/// The height at which a strip is looked at, and the least that it must have.
const HEIGHT: usize = 128;
const LEAST_HEIGHT: usize = 64;
/// What is lighter than the rubber around it by so much begins to be chalk, and is chalk by so much more.
const LIGHTER: (f32, f32) = (1.25, 0.6);
/// What is lighter than the usual rubber by more than this is no rubber.
const MUCH_LIGHTER: f32 = 1.15;
/// The height of chalked letters, as a share of the strip's, and the most of them side by side.
const TALL: (f32, f32) = (0.15, 0.9);
const WIDE: f32 = 2.6;
/// The least height of a letter by itself: what looks like one is found in any tread.
const TALL_ALONE: f32 = 0.25;
/// What is less than so much of its height apart belongs together.
const APART: f32 = 0.5;
/// The most places.
const MOST: usize = 6;
/// What is lighter than this, of 1, is chalk where chalk was found.
const SURELY: f32 = 0.5;
/// How much of its height is left free around what was found.
const MARGIN: f32 = 0.3;
/// Anything that is not chalked on tires, before it was looked at.
const OTHER: f64 = 0.02;
/// Below this a mark is no suggestion.
const LEAST_LIKELY: f64 = 0.5;

/// A mark that was read.
pub(super) struct Mark {
    pub text: &'static str,
    /// How likely, 0 to 1.
    pub likely: f64,
    pub place: Region,
}

/// How much lighter than the rubber around it each pixel is, from 0 for rubber to 1 for chalk.
fn light(small: &Plane, round: bool) -> Plane {
    // Beside gaps in the tread, and where the road lies in shadow, what is around a place is darker than rubber.
    let rubber = rubber(small).mean_of(48, 0, round);
    let mut ground = small.clone();
    for y in 0..small.height {
        for (value, rubber) in ground.row_mut(y).iter_mut().zip(rubber.row(0)) {
            *value = value.max(*rubber).min(MUCH_LIGHTER * rubber);
        }
    }
    let ground = ground.mean_of(24, 10, round);
    let mut light = small.clone();
    for (value, ground) in light.values.iter_mut().zip(&ground.values) {
        *value = ((*value / (ground + 6.0) - LIGHTER.0) / LIGHTER.1).clamp(0.0, 1.0);
    }
    light
}

/// The usual level of each column between tread and rim.
fn rubber(small: &Plane) -> Plane {
    let columns = small.turned();
    let (from, to) = (columns.width * 35 / 100, columns.width * 92 / 100);
    let usual = |x: usize| {
        let mut column = columns.row(x).get(from..to).unwrap_or_default().to_vec();
        column.sort_unstable_by(f32::total_cmp);
        column.get(column.len() / 2).copied().unwrap_or(0.0)
    };
    Plane { width: small.width, height: 1, values: (0..small.width).map(usual).collect() }
}

/// A frame around a place: left, top, right, bottom.
type Frame = [f32; 4];

fn frame(region: &Region) -> Frame {
    let down = region.half_down();
    [region.left(), region.y - down, region.right(), region.y + down]
}

/// Joins frames that are near each other for their size.
fn joined(frames: Vec<Frame>) -> Vec<Frame> {
    let mut all: Vec<Frame> = Vec::new();
    for mut one in frames {
        // A letter between two others joins both.
        while let Some(at) = all.iter().position(|other| near(&one, other)) {
            let other = all.swap_remove(at);
            one = [one[0].min(other[0]), one[1].min(other[1]), one[2].max(other[2]), one[3].max(other[3])];
        }
        all.push(one);
    }
    all
}

fn near(a: &Frame, b: &Frame) -> bool {
    let size = |of: &Frame| (of[2] - of[0]).max(of[3] - of[1]);
    let gap = (a[0] - b[2]).max(b[0] - a[2]).max(a[1] - b[3]).max(b[1] - a[3]);
    gap < APART * size(a).max(size(b)).min(0.6 * HEIGHT as f32)
}

/// Where chalk may stand, most of it first.
fn places(light: &Plane, round: bool) -> Vec<Frame> {
    let dense = light.mean_of(2, 2, round);
    // Around a ring, what stands over the strip's ends is seen whole beyond its right end.
    let width = light.width + if round { HEIGHT } else { 0 };
    let mut map = Plane::new(width, light.height, 0.0);
    for y in 0..map.height {
        for (value, dense) in map.row_mut(y).iter_mut().zip(dense.row(y).iter().cycle()) {
            *value = (*dense * 1.6).min(1.0);
        }
    }
    let bottom = map.height as f32 - 2.0;
    let tall = |of: &Frame| (of[3] - of[1]).max(of[2] - of[0]) / HEIGHT as f32;
    // What reaches beyond the ring is sky, ground or wheel.
    let whole = |of: &Frame| !round || (of[1] > 1.0 && of[3] < bottom);
    let letters = regions::plain(&map).iter().map(frame).filter(|of| whole(of) && tall(of) > TALL.0 * 0.6).collect();
    let mut marks = joined(letters);
    let all = marks.clone();
    let around = light.width as f32;
    marks.retain(|of| {
        let again = |other: &Frame| other[0] < of[0] + around + 1.0 && other[2] > of[2] + around - 1.0;
        if round && (of[0] < 1.5 || of[0] >= around || all.iter().any(again)) {
            return false;
        }
        let (width, height) = (of[2] - of[0], of[3] - of[1]);
        let (least, most) = (width.min(height), width.max(height));
        most > TALL.0 * HEIGHT as f32 && least < TALL.1 * HEIGHT as f32 && most < WIDE * least.max(0.3 * HEIGHT as f32)
    });
    let area = |of: &Frame| (of[2] - of[0]) * (of[3] - of[1]);
    marks.sort_by(|a, b| area(b).total_cmp(&area(a)));
    marks.truncate(MOST);
    marks
}

/// The region of the chalk in a frame when it is looked at turned.
fn turned(light: &Plane, of: &Frame, turn: f32) -> Option<Region> {
    let (sin, cos) = turn.sin_cos();
    let (x, y) = ((of[0] + of[2]) / 2.0, (of[1] + of[3]) / 2.0);
    let (mut along, mut down) = ((f32::MAX, f32::MIN), (f32::MAX, f32::MIN));
    for row in of[1].max(0.0) as usize..=of[3] as usize {
        for column in of[0].floor() as i64..=of[2] as i64 {
            let wrapped = column.rem_euclid(light.width as i64) as usize;
            if light.at(wrapped, row) < SURELY {
                continue;
            }
            let (px, py) = (column as f32 + 0.5 - x, row as f32 + 0.5 - y);
            let (u, v) = (px * cos + py * sin, py * cos - px * sin);
            along = (along.0.min(u), along.1.max(u));
            down = (down.0.min(v), down.1.max(v));
        }
    }
    let (width, height) = (along.1 - along.0, down.1 - down.0);
    if !(width > 0.0 && height > 0.0) {
        return None;
    }
    let (u, v) = ((along.0 + along.1) / 2.0, (down.0 + down.1) / 2.0);
    let more = MARGIN * height;
    Some(Region {
        x: x + u * cos - v * sin,
        y: y + u * sin + v * cos,
        width: width + more,
        height: height + more,
        turn,
        likely: 1.0,
    })
}

/// How likely each of what is chalked is, by what the recognizer sees along a line: all ways in which it can spell it
/// are added up.
///
/// A. Graves and others: Connectionist temporal classification (2006), the forward sums.
fn spelled(characters: &[char], frames: &Frames, word: &str) -> f64 {
    let letters: Vec<char> = word.chars().collect();
    // Before, between and behind letters may stand nothing, or a space: `sums` holds the likelihood of having come to
    // each of these and to each letter.
    let mut sums = vec![0.0; 2 * letters.len() + 1];
    for (at, row) in frames.rows.iter().enumerate() {
        let sum = |want: &dyn Fn(char) -> bool| -> f64 {
            characters.iter().zip(row).filter(|(c, _)| want(**c)).map(|(_, likely)| f64::from(*likely)).sum()
        };
        let nothing = sum(&|c| c == '\0' || c == ' ');
        let before = sums.clone();
        let was = |n: Option<usize>| n.and_then(|n| before.get(n)).copied().unwrap_or(0.0);
        for (n, sum_here) in sums.iter_mut().enumerate() {
            let letter = |n: usize| (n % 2 == 1).then(|| letters.get(n / 2)).flatten();
            let here = letter(n).map_or(nothing, |letter| sum(&|c| c.eq_ignore_ascii_case(letter)));
            let reached = match at {
                0 => f64::from(u8::from(n < 2)),
                _ => {
                    // A letter may follow another one at once, unless it is the same.
                    let skips = n >= 2 && letter(n).is_some() && letter(n) != letter(n - 2);
                    was(Some(n)) + was(n.checked_sub(1)) + if skips { was(Some(n - 2)) } else { 0.0 }
                }
            };
            *sum_here = reached * here;
        }
    }
    sums.iter().rev().take(2).sum()
}

/// How likely each of what is chalked is on a line of white on black.
fn likely(eyes: Eyes<'_>, line: &Picture) -> Option<[f64; CHALKED.len()]> {
    match eyes {
        Eyes::Own(models) => {
            let frames = models.characters_along(line.width(), line.levels())?;
            Some(CHALKED.map(|word| spelled(models.characters(), &frames, word)))
        }
        Eyes::Host(host) => {
            let tile = Tile { width: line.width(), height: line.height(), levels: line.levels() };
            let texts = host.read(&tile);
            let said: String =
                texts.iter().flat_map(|text| text.text.chars()).filter(char::is_ascii_alphanumeric).collect();
            let sure = texts.iter().map(|text| text.confidence).fold(1.0, f32::min).clamp(0.0, 1.0);
            Some(CHALKED.map(|word| if said.eq_ignore_ascii_case(word) { f64::from(sure) } else { 0.0 }))
        }
    }
}

/// Reads what is chalked on a strip.
pub(super) fn read(eyes: Eyes<'_>, strip: &Strip) -> Vec<Mark> {
    if strip.picture.height() < LEAST_HEIGHT {
        return Vec::new();
    }
    let shrink = HEIGHT as f32 / strip.picture.height() as f32;
    let small = strip.picture.scaled(shrink).plane();
    let light = light(&small, strip.round);
    let soft = light.mean(1, strip.round);
    let mut white = soft.clone();
    white.values.iter_mut().for_each(|value| *value = 20.0 + 220.0 * (1.5 * *value).min(1.0));
    let white = Strip { picture: white.picture(), round: strip.round, ring: None };
    let mut marks = Vec::new();
    for place in places(&light, strip.round) {
        let mut best: Option<Mark> = None;
        for turn in ways(strip, small.width, &place) {
            let Some(region) = turned(&soft, &place, turn) else { continue };
            let Some(likely) = lines::cut(&white, &region, false).and_then(|line| likely(eyes, &line)) else {
                continue;
            };
            let all = likely.iter().sum::<f64>() + OTHER;
            let tall = region.height / (1.0 + MARGIN) / HEIGHT as f32;
            for (text, one) in CHALKED.into_iter().zip(likely) {
                if text.len() == 1 && tall < TALL_ALONE {
                    continue;
                }
                if best.as_ref().is_none_or(|best| best.likely < one / all) {
                    best = Some(Mark { text, likely: one / all, place: region.times(1.0 / shrink) });
                }
            }
        }
        marks.extend(best.filter(|best| best.likely >= LEAST_LIKELY));
    }
    marks
}

/// How chalk may be turned on a strip: as the ring runs, the other way round, and upright as the photo was taken.
fn ways(strip: &Strip, width: usize, place: &Frame) -> Vec<f32> {
    if !strip.round {
        return vec![0.0];
    }
    // The strip begins at nine o'clock, where its up is the photo's left.
    let around = (place[0] + place[2]) / 2.0 / width as f32 * TAU;
    let upright = (FRAC_PI_2 - around + PI).rem_euclid(TAU) - PI;
    let mut ways = vec![0.0, PI];
    if ways.iter().all(|way| ((upright - way + PI).rem_euclid(TAU) - PI).abs() > 0.35) {
        ways.push(upright);
    }
    ways
}

#[cfg(test)]
mod tests {
    use super::{CHALKED, HEIGHT, light, places, read, spelled, ways};
    use crate::ident::Digest;
    use crate::sight::models::Frames;
    use crate::sight::picture::Plane;
    use crate::sight::reading::Eyes;
    use crate::sight::strip::Strip;
    use crate::sight::tiles::{Tile, TileReader, TileText};

    /// All ways to read so many frames, and what each says: runs of one character count once, blanks not at all.
    fn by_hand(characters: &[char], frames: &Frames, word: &str) -> f64 {
        let (count, places) = (characters.len(), frames.rows.len());
        let mut sum = 0.0;
        for path in 0..count.pow(places as u32) {
            let classes: Vec<usize> = (0..places).map(|place| path / count.pow(place as u32) % count).collect();
            let mut said = String::new();
            for (at, class) in classes.iter().enumerate() {
                let c = characters[*class];
                if !"\0 ".contains(c) && (at == 0 || !characters[classes[at - 1]].eq_ignore_ascii_case(&c)) {
                    said.push(c.to_ascii_uppercase());
                }
            }
            if said == word {
                sum += classes.iter().zip(&frames.rows).map(|(class, row)| f64::from(row[*class])).product::<f64>();
            }
        }
        sum
    }

    #[test]
    fn a_words_likelihood_is_the_sum_over_all_its_spellings() {
        let characters = ['\0', 'F', 'L', 'l', 'R', ' '];
        let row = |n: usize| (0..6).map(|class| ((n * 7 + class * 5) % 11) as f32 / 33.0).collect::<Vec<f32>>();
        let frames = Frames { rows: (0..5).map(row).collect() };
        for word in ["FL", "RR", "L", "LF", "F"] {
            let (sum, hand) = (spelled(&characters, &frames, word), by_hand(&characters, &frames, word));
            assert!(hand > 0.0 && (sum - hand).abs() < 1e-9, "{word}: {sum} {hand}");
        }
        assert_eq!(spelled(&characters, &Frames { rows: Vec::new() }, "FL"), 0.0);
    }

    /// A strip of rubber between a dark road and a light rim, with light bars: left, top, width, height.
    fn strip(bars: &[(usize, usize, usize, usize)]) -> Strip {
        let mut plane = Plane::new(1400, HEIGHT, 0.0);
        for y in 0..HEIGHT {
            for (x, value) in plane.row_mut(y).iter_mut().enumerate() {
                *value = match y {
                    0..12 => 20.0,
                    12..122 => 80.0 + ((x * 13 + y * 29) % 17) as f32,
                    _ => 230.0,
                };
                let inside = |bar: &&(usize, usize, usize, usize)| {
                    (bar.1..bar.1 + bar.3).contains(&y) && (x + 2 * 1400 - bar.0) % 1400 < bar.2
                };
                if bars.iter().find(inside).is_some() {
                    *value = 210.0;
                }
            }
        }
        Strip { picture: plane.picture(), round: true, ring: None }
    }

    #[test]
    fn chalk_is_found_once_wherever_it_stands_and_nothing_else_is() {
        // Two letters of two strokes each, in the middle and over the strip's ends.
        for x in [600, 1370] {
            let letter = |x: usize| [(x, 40, 7, 56), (x, 40, 24, 7)];
            let strip = strip(&[letter(x), letter(x + 42)].concat());
            let found = places(&light(&strip.picture.plane(), true), true);
            assert_eq!(found.len(), 1, "{found:?}");
            let [left, top, right, bottom] = found[0];
            assert!((left - x as f32).abs() < 5.0 && (right - x as f32 - 66.0).abs() < 5.0, "{found:?}");
            assert!((top - 40.0).abs() < 5.0 && (bottom - 96.0).abs() < 5.0, "{found:?}");
        }
        let nothing = strip(&[]);
        assert!(places(&light(&nothing.picture.plane(), true), true).is_empty());
        // As low as molded lettering.
        let low = strip(&[(600, 60, 5, 12), (610, 60, 5, 12)]);
        assert!(places(&light(&low.picture.plane(), true), true).is_empty());
    }

    #[test]
    fn pictures_of_any_form_are_looked_at() {
        // A long low picture would grow a hundredfold.
        for (width, height) in [(300, 64), (65_536, 1), (64, 2_000), (20_000, 70)] {
            let mut plane = Plane::new(width, height, 0.0);
            for y in 0..height {
                plane.row_mut(y).iter_mut().take(60).for_each(|value| *value = 251.0);
            }
            for round in [true, false] {
                let strip = Strip { picture: plane.picture(), round, ring: None };
                assert!(read(Eyes::Host(&Says("", 0.9)), &strip).is_empty(), "{width} x {height}");
            }
        }
    }

    #[test]
    fn it_is_looked_at_upright_as_the_photo_was_taken_too() {
        let strip = strip(&[]);
        let turn = |x: f32| ways(&strip, 1400, &[x - 20.0, 40.0, x + 20.0, 90.0]);
        // At twelve o'clock the ring runs upright, at six upside down, at three and nine across.
        assert_eq!((turn(350.0).len(), turn(1050.0).len()), (2, 2));
        let (three, nine) = (turn(700.0), turn(20.0));
        assert!((three[2] + std::f32::consts::FRAC_PI_2).abs() < 0.01, "{three:?}");
        assert!((nine[2] - std::f32::consts::FRAC_PI_2).abs() < 0.1, "{nine:?}");
        // At half past one the ring runs downward to the right, so upright lettering climbs.
        let half_past_one = turn(525.0);
        assert!((half_past_one[2] + std::f32::consts::FRAC_PI_4).abs() < 0.01, "{half_past_one:?}");
    }

    /// Says one thing of each line.
    struct Says(&'static str, f32);

    impl TileReader for Says {
        fn name(&self) -> String {
            "says-1".into()
        }

        fn model(&self) -> Digest {
            Digest::of(b"says-1")
        }

        fn read(&self, _: &Tile<'_>) -> Vec<TileText> {
            vec![TileText { text: self.0.into(), confidence: self.1, x: 24.0, y: 24.0, width: 40.0, height: 30.0 }]
        }
    }

    #[test]
    fn a_host_reads_chalk_and_only_what_is_chalked_on_tires_counts() {
        let letter = |x: usize| [(x, 40, 7, 56), (x, 40, 24, 7)];
        let strip = strip(&[letter(600), letter(642)].concat());
        let told = |says: Says| -> Vec<(&str, f64)> {
            read(Eyes::Host(&says), &strip).iter().map(|mark| (mark.text, mark.likely)).collect()
        };
        let [(text, likely)] = told(Says("f L", 0.9))[..] else { panic!("one mark stands there") };
        assert!(text == "FL" && likely > 0.9);
        assert!(told(Says("TALUS", 0.9)).is_empty() && told(Says("", 0.9)).is_empty());
        assert!(CHALKED.iter().all(|mark| mark.len() <= 2));
    }
}
