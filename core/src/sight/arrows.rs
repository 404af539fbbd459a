//! The arrow beside `ROTATION`: which way a tire must roll.
//!
//! Nothing that reads lettering knows an arrow well. Its shape is simple, though: a head at one end of a shaft that runs
//! along the base line of its word. Heads and shafts of many sizes are laid over what stands beside the word, each
//! pointing either way: open and closed arrows, triangles, and halves. A molded line is light on one flank and dark on
//! the other along its whole length, so levels are added up along each line of a shape, where grain and ridges cancel
//! out. The shape all of whose lines stand out tells the way.

use super::evidence;
use super::lines;
use super::picture::{Picture, Plane};
use super::regions::Region;
use super::strip::{GAIN, Strip, even};

/// What stands beside an arrow.
const WORD: &str = "ROTATION";
/// How far an arrow stands out at least: of 56 looks beside words of the tuning set that have none four are above, of 56
/// looks at its 42 arrows three below.
const SEEN: f32 = 0.6;
/// How odds grow with how much better one way fits than the other, and how far: all 42 arrows were told right, 27 of
/// them by 0.19 and more, where odds end; where no arrow stands the ways never differ by more than 0.15.
const SURER: f32 = 2.2;
const SUREST: f32 = 0.92;
/// How far beside the word an arrow is sought, and how tall, in heights of its letters.
const FAR: f32 = 6.6;
const TALL: f32 = 1.9;
/// So many letters or digits beside the word are lettering; what is less may be an arrow, misread.
pub(super) const LETTERING: usize = 3;
/// The shortest arrow, in heights of letters.
const SHORTEST: f32 = 1.0;
/// The height of letters, as a share of the region that the detector lays around them.
const LETTERS: f32 = 0.62;
/// The height at which what is beside a word is looked at, and letters then.
const HEIGHT: usize = 48;
const LETTER: f32 = HEIGHT as f32 / TALL;
/// Lengths of arrows, and lengths and half heights of their heads, in heights of letters.
const LENGTHS: [f32; 5] = [1.3, 1.8, 2.4, 3.0, 3.7];
const HEADS: [(f32, f32); 6] = [(0.4, 0.28), (0.4, 0.45), (0.65, 0.28), (0.65, 0.45), (0.95, 0.45), (0.95, 0.6)];
/// The same of half an arrow, whose head stands on one side only.
const HALVES: [(f32, f32); 4] = [(0.8, 0.5), (0.8, 0.9), (1.3, 0.7), (1.3, 1.1)];
/// Half the height of a closed arrow's shaft, as a share of its head's.
const SHAFT: f32 = 0.4;
/// How far above and below the middle of the letters an arrow's middle may stand, in their heights.
const OFF_LINE: f32 = 0.3;

/// What is beside a word, light and dark against what is around it: molded lines are light on one flank and dark on
/// the other, all along.
struct Beside(Plane);

impl Beside {
    fn new(levels: &Picture) -> Self {
        let mut away = even(levels, 8, false).plane();
        away.values.iter_mut().for_each(|value| *value = (*value - 128.0) / GAIN);
        Self(away.mean(1, false))
    }

    fn mirrored(&self) -> Self {
        let mut other = self.0.clone();
        for row in 0..other.height {
            other.row_mut(row).reverse();
        }
        Self(other)
    }

    fn at(&self, x: f32, y: f32) -> f32 {
        if x < 0.0 || y < 0.0 { 0.0 } else { self.0.at(x as usize, y as usize) }
    }

    /// How far a straight line stands out, its flanks being up to three pixels beside it: grain and what crosses it
    /// cancels out.
    fn line(&self, from: (f32, f32), to: (f32, f32)) -> f32 {
        let (along, down) = (to.0 - from.0, to.1 - from.1);
        let long = along.hypot(down).max(1.0);
        let (across_x, across_y) = (-down / long, along / long);
        let count = long.round().max(3.0);
        let beside = |off: f32| {
            let (mut sum, mut n) = (0.0, 0.5);
            while n < count {
                let t = n / count;
                sum += self.at(from.0 + along * t + across_x * off, from.1 + down * t + across_y * off);
                n += 1.0;
            }
            (sum / count).abs()
        };
        [-3.0, -1.5, 0.0, 1.5, 3.0].into_iter().map(beside).fold(0.0, f32::max)
    }

    /// How well the best arrow that points right stands out.
    fn best(&self) -> f32 {
        let middle = self.0.height as f32 / 2.0;
        let off = OFF_LINE * LETTER;
        let mut best = 0.0_f32;
        let mut x = LETTER;
        while x < self.0.width as f32 {
            let mut y = middle - off;
            while y <= middle + off {
                for (long, half) in HEADS {
                    best = best.max(self.whole((x, y), long * LETTER, half * LETTER, best));
                }
                for (long, half) in HALVES {
                    for side in [-1.0, 1.0] {
                        best = best.max(self.half((x, y), long * LETTER, side * half * LETTER, best));
                    }
                }
                y += 2.0;
            }
            x += 2.0;
        }
        best
    }

    /// How well the best arrow with its tip here and this head stands out, when it may be better than another: with an
    /// open shaft or a closed one, or a triangle without any.
    fn whole(&self, (x, y): (f32, f32), long: f32, half: f32, better_than: f32) -> f32 {
        let up = self.line((x, y), (x - long, y - half));
        if up < better_than {
            return 0.0;
        }
        let down = self.line((x, y), (x - long, y + half));
        if up.min(down) < better_than {
            return 0.0;
        }
        let ahead = self.line((x + 4.0, y), (x + 4.0 + 0.5 * LETTER, y));
        let base = self.line((x - long, y - half), (x - long, y + half));
        let mut best = stands_out([up, down, base], [ahead, 0.0, 0.0]);
        for length in LENGTHS {
            let tail = x - length * LETTER;
            if tail < 0.0 {
                break;
            }
            let thick = half * SHAFT;
            let open = self.line((x - 2.0, y), (tail, y));
            let closed = [-thick, thick].map(|side| self.line((x - long, y + side), (tail, y + side)));
            let shaft = open.max(closed[0].min(closed[1]));
            // Where the head would be if it pointed the other way.
            let other = [-half, half].map(|side| self.line((tail, y), (tail + long, y + side)));
            best = best.max(stands_out([up, down, shaft], [ahead, other[0], other[1]]));
        }
        best
    }

    /// The same for half an arrow: one side is straight from tip to tail, the other has the head.
    fn half(&self, (x, y): (f32, f32), long: f32, half: f32, better_than: f32) -> f32 {
        let wing = self.line((x, y), (x - long, y + half));
        if wing < better_than {
            return 0.0;
        }
        let back = self.line((x - long, y + half), (x - long, y + SHAFT * half));
        let ahead = self.line((x + 4.0, y), (x + 4.0 + 0.5 * LETTER, y));
        let mut best = 0.0_f32;
        for length in LENGTHS {
            let tail = x - length * LETTER;
            if tail < 0.0 || length * LETTER < 1.2 * long {
                continue;
            }
            let straight = self.line((x, y), (tail, y));
            let other = self.line((tail, y), (tail + long, y + half));
            best = best.max(stands_out([wing, straight, back], [ahead, other, 0.0]));
        }
        best
    }
}

/// How well a shape stands out: all of its lines do, and those that another shape would have don't.
fn stands_out(own: [f32; 3], against: [f32; 3]) -> f32 {
    let least = own.into_iter().fold(f32::MAX, f32::min);
    0.5 * least + own.iter().sum::<f32>() / 6.0 - against.iter().sum::<f32>() / 6.0
}

/// Where the word stands along its region, from left to right on the strip, 0 to 1, and whether other lettering of the
/// same line stands on its left and on its right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stands {
    ends: (f32, f32),
    taken: (bool, bool),
}

/// Where `ROTATION` stands in a text, by where each of its characters does; the other way round when it was read upside
/// down. `None` when the text does not say so.
pub(super) fn stands(text: &str, at: &[f32], over: bool) -> Option<Stands> {
    let (_, first) = evidence::within(&text.to_ascii_uppercase(), WORD)?;
    let letters: Vec<(char, f32)> = text.chars().zip(at.iter().copied()).filter(|(c, _)| *c != ' ').collect();
    let last = (first + WORD.len()).min(letters.len()).checked_sub(1)?;
    let (from, to) = (letters.get(first)?.1, letters.get(last)?.1);
    let half = 0.6 * (to - from) / (last - first).max(1) as f32;
    let lettering = |part: Option<&[(char, f32)]>| {
        part.unwrap_or_default().iter().filter(|(c, _)| c.is_ascii_alphanumeric()).count() >= LETTERING
    };
    let (before, behind) = (lettering(letters.get(..first)), lettering(letters.get(last + 1..)));
    Some(if over {
        Stands { ends: (1.0 - to - half, 1.0 - from + half), taken: (behind, before) }
    } else {
        Stands { ends: (from - half, to + half), taken: (before, behind) }
    })
}

/// Which way an arrow beside a word points along the strip, and how likely: to the right is clockwise on the wheel. It
/// does not reach into other lettering. `None` when no arrow stands there.
pub(super) fn beside(strip: &Strip, word: &Region, stands: Stands, others: &[Region]) -> Option<(bool, f32)> {
    let letter = word.height * LETTERS;
    let (sin, cos) = word.turn.sin_cos();
    let (mut right, mut left) = (0.0_f32, 0.0_f32);
    let (from, to) = (word.width * (stands.ends.0 - 0.5), word.width * (stands.ends.1 - 0.5));
    for (side, end, taken) in [(1.0, to, stands.taken.1), (-1.0, from, stands.taken.0)] {
        // How far it is from the end of the word to the next lettering on that side.
        let gap = |other: &Region| {
            let (x, y) = (strip.apart(other.x, word.x), other.y - word.y);
            let (along, down) = (x * cos + y * sin, y * cos - x * sin);
            let gap = side * (along - end) - other.width / 2.0;
            (down.abs() < letter && gap > -letter).then_some(gap)
        };
        let far = others.iter().filter_map(gap).fold(FAR * letter, f32::min);
        if taken || far < SHORTEST * letter {
            continue;
        }
        let middle = end + side * far / 2.0;
        let (x, y) = (word.x + middle * cos, word.y + middle * sin);
        let place = Region { x, y, width: far, height: TALL * letter, ..*word };
        let Some(levels) = lines::cut(strip, &place, false) else { continue };
        let beside = Beside::new(&levels);
        right = right.max(beside.best());
        left = left.max(beside.mirrored().best());
    }
    let (most, least) = (right.max(left), right.min(left));
    (most > SEEN).then(|| (right > left, (0.5 + SURER * (most - least)).min(SUREST)))
}

#[cfg(test)]
mod tests {
    use super::{beside, stands};
    use crate::sight::picture::Plane;
    use crate::sight::regions::Region;
    use crate::sight::strip::Strip;

    const WORD: Region = Region { x: 600.0, y: 100.0, width: 210.0, height: 52.0, turn: 0.0, likely: 0.9 };
    const LETTER: f32 = 32.0;

    /// Grain, the same everywhere.
    fn grain(x: usize, y: usize) -> f32 {
        let mixed = (x as u32).wrapping_mul(0x9e37_79b9) ^ (y as u32).wrapping_mul(0x85eb_ca6b);
        let mixed = (mixed ^ (mixed >> 15)).wrapping_mul(0x2c1b_3c6d);
        ((mixed >> 16) % 1000) as f32 / 1000.0 - 0.5
    }

    /// A strip with molded lines: light above, dark below, as under a light from above.
    fn strip(lines: &[[(f32, f32); 2]]) -> Strip {
        let mut plane = Plane::new(1200, 200, 0.0);
        for y in 0..200 {
            for (x, value) in plane.row_mut(y).iter_mut().enumerate() {
                *value = 90.0 + 16.0 * grain(x, y);
                for [a, b] in lines {
                    let (along, down) = (b.0 - a.0, b.1 - a.1);
                    let long = along.hypot(down);
                    let (px, py) = (x as f32 - a.0, y as f32 - a.1);
                    let (t, off) = ((px * along + py * down) / long, (py * along - px * down) / long);
                    if (0.0..=long).contains(&t) && off.abs() < 4.0 {
                        // Which flank is lit hangs on the line's own direction.
                        let lit = if along.abs() > 1.0 { along.signum() } else { 1.0 };
                        *value -= 22.0 * lit * off.signum();
                    }
                }
            }
        }
        Strip { picture: plane.picture(), round: true, ring: None }
    }

    /// An arrow of a kind in heights of letters from its middle, pointing right or left.
    fn arrow(kind: &str, x: f32, right: bool) -> Vec<[(f32, f32); 2]> {
        let lines: &[[(f32, f32); 2]] = match kind {
            "open" => &[[(-1.4, 0.0), (1.4, 0.0)], [(0.6, -0.45), (1.4, 0.0)], [(0.6, 0.45), (1.4, 0.0)]],
            "closed" => &[
                [(-1.4, -0.2), (0.6, -0.2)],
                [(-1.4, 0.2), (0.6, 0.2)],
                [(0.6, -0.5), (1.4, 0.0)],
                [(0.6, 0.5), (1.4, 0.0)],
                [(0.6, -0.5), (0.6, -0.2)],
                [(0.6, 0.2), (0.6, 0.5)],
            ],
            "triangle" => &[[(-0.5, -0.5), (0.5, 0.0)], [(-0.5, 0.5), (0.5, 0.0)], [(-0.5, -0.5), (-0.5, 0.5)]],
            _ => &[[(-1.2, 0.3), (1.3, 0.3)], [(0.0, -0.7), (1.3, 0.3)], [(0.0, -0.7), (0.0, -0.1)]],
        };
        let way = if right { 1.0 } else { -1.0 };
        let place = |(u, v): (f32, f32)| (x + way * u * LETTER, WORD.y + v * LETTER);
        lines.iter().map(|[a, b]| [place(*a), place(*b)]).collect()
    }

    fn told(strip: &Strip, text: &str, over: bool) -> Option<(bool, f32)> {
        let at: Vec<f32> = (0..text.len()).map(|n| (n as f32 + 0.5) / text.len() as f32).collect();
        beside(strip, &WORD, stands(text, &at, over)?, &[])
    }

    #[test]
    fn an_arrow_of_any_kind_on_either_side_tells_its_way() {
        for kind in ["open", "closed", "triangle", "half"] {
            for x in [WORD.x - 200.0, WORD.x + 200.0] {
                for right in [true, false] {
                    let strip = strip(&arrow(kind, x, right));
                    let (way, likely) = told(&strip, "ROTATION", false).expect("it is seen");
                    assert_eq!(way, right, "{kind} at {x}, {likely}");
                    assert!(likely > 0.6 && told(&strip, "ROTATION", true).map(|told| told.0) == Some(right), "{kind}");
                }
            }
        }
    }

    #[test]
    fn without_an_arrow_or_its_word_nothing_is_told() {
        assert_eq!(told(&strip(&[]), "ROTATION", false), None);
        let beside_it = strip(&arrow("open", WORD.x + 200.0, true));
        assert_eq!(told(&beside_it, "OUTSIDE", false), None);
        assert_eq!(told(&beside_it, "", false), None);
        // A straight line is no arrow.
        let line = [[(WORD.x + 140.0, WORD.y), (WORD.x + 260.0, WORD.y)]];
        assert_eq!(told(&strip(&line), "ROTATION", false), None);
    }

    #[test]
    fn other_lettering_beside_the_word_is_no_arrow() {
        let x = WORD.x + 200.0;
        let strip = strip(&arrow("open", x, true));
        let at: Vec<f32> = (0..8).map(|n| (n as f32 + 0.5) / 8.0).collect();
        let stands = stands("ROTATION", &at, false).unwrap();
        let other = |x: f32, y: f32| Region { x, y, width: 120.0, height: 50.0, ..WORD };
        // Read as a word of its own, seen also over the strip's end; what stands above or further on hides nothing.
        assert_eq!(beside(&strip, &WORD, stands, &[other(x, WORD.y)]), None);
        assert_eq!(beside(&strip, &WORD, stands, &[other(x - 1200.0, WORD.y)]), None);
        for (x, y) in [(x, WORD.y - 90.0), (x + 130.0, WORD.y), (x - 400.0, WORD.y)] {
            assert_eq!(beside(&strip, &WORD, stands, &[other(x, y)]).map(|told| told.0), Some(true), "{x} {y}");
        }
    }

    #[test]
    fn beyond_lettering_of_the_same_line_no_arrow_is_sought() {
        let strip = strip(&arrow("open", WORD.x + 200.0, true));
        assert_eq!(told(&strip, "ROTATION ABC", false), None);
        assert_eq!(told(&strip, "ABC ROTATION", false).map(|told| told.0), Some(true));
    }

    #[test]
    fn lettering_of_the_same_line_takes_its_side() {
        let taken = |text: &str, over: bool| {
            let at: Vec<f32> = (0..text.len()).map(|n| (n as f32 + 0.5) / text.len() as f32).collect();
            stands(text, &at, over).map(|stands| stands.taken)
        };
        assert_eq!(taken("ROTATION OF STAFF", false), Some((false, true)));
        assert_eq!(taken("ROTATION OF STAFF", true), Some((true, false)));
        assert_eq!(taken("GRIP 2 ROTATION", false), Some((true, false)));
        assert_eq!(taken("I ROTATION -", false), Some((false, false)));
        assert_eq!(taken("GRIP 2", false), None);
    }
}
