//! One wheel read: from pictures to suggestions with odds.

use super::activity;
use super::chalk;
use super::evidence::{Evidence, Place, Weight, Weights};
use super::judging::{self, Ask, Hint, UNSURE};
use super::lines::{self, Line};
use super::models::Models;
use super::numbers;
use super::odds::Kind;
use super::picture::Picture;
use super::regions::Region;
use super::ring::{self, Ring};
use super::strip::{self, Strip};
use super::tiles::{self, Cut, TileReader};
use crate::calendar::Day;
use crate::sidewall::Word;

/// The height at which lettering is sought on a strip.
const TILE: usize = 256;
/// The longest way that a tile goes on its own, at that height: three tiles around most rings, so that little is looked
/// at twice and a first answer comes early.
const STEP: usize = 1600;
/// How much of the way around tiles share: a size with its service description takes up to 17 % of it, and must stand
/// on one tile whole.
const SHARED: f32 = 0.17;
/// From this share of an edge all around, a picture is taken for a whole wheel.
const WHEEL_SEEN: f64 = 0.72;
/// Longer than this for its height, a picture is no whole wheel.
const LONG: f64 = 2.2;
/// Longest sides at which a close-up is looked at.
const CLOSE_UPS: [f32; 2] = [640.0, 960.0];
/// Below this a text is tried upside down too.
const UPSIDE_DOWN_BELOW: f32 = 0.5;
/// Heights at which a place that the detector overlooked is read, as shares of what stood out there.
const CLOSER: [f32; 2] = [1.0, 0.8];
/// How the place of an identification number is looked at again: height and width as shares of what stood out there,
/// and how far the middle is moved along its height.
const AGAIN: [(f32, f32, f32); 4] = [(0.86, 1.0, 0.0), (1.0, 1.12, 0.06), (1.0, 1.12, -0.06), (1.16, 1.2, 0.0)];
/// From these odds on a number is not looked at again.
const SURE: f64 = 0.9;
/// The most that is read where the detector overlooked something, and where a number is looked at again, in pixels
/// along lines 48 pixels high: a thousand are about a tenth of a second on one core of 2024.
const MOST_CLOSER: usize = 8_000;
const MOST_AGAIN: usize = 4_000;
/// The most suggestions of a kind.
const MOST: usize = 5;

/// A circle drawn by hand on a wheel, in pixels of the upright picture: on the tire's outer edge or on the rim's.
///
/// ```
/// use lugbook::sight::Circle;
/// let drawn = Circle { x: 1500.0, y: 1100.0, r: 900.0 };
/// assert!(drawn.r > 0.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circle {
    /// Middle, from the left.
    pub x: f64,
    /// Middle, from the top.
    pub y: f64,
    /// Radius.
    pub r: f64,
}

/// What is asked of a reading.
///
/// ```
/// use lugbook::calendar::Day;
/// use lugbook::sight::Asked;
/// let asked = Asked { ring: None, today: Day::new(2026, 5, 4).unwrap() };
/// assert!(asked.ring.is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The wheel in the first picture, as a person drew it.
    pub ring: Option<Circle>,
    /// No tire was made after this day.
    pub today: Day,
}

/// Whether to go on.
///
/// ```
/// use lugbook::sight::Continue;
/// assert_ne!(Continue::Yes, Continue::No);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Continue {
    /// Read on.
    Yes,
    /// Stop with what was read so far.
    No,
}

/// How far a reading is, told between tiles.
///
/// ```
/// use lugbook::sight::{Continue, Progress};
/// // A shell shows a bar, and may stop.
/// let mut watch = |progress: &Progress<'_>| if progress.done < 5 { Continue::Yes } else { Continue::No };
/// # let _ = &mut watch;
/// ```
pub struct Progress<'a> {
    /// Tiles that were looked at.
    pub done: usize,
    /// All tiles, as far as is known yet.
    pub of: usize,
    state: &'a State,
}

impl std::fmt::Debug for Progress<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Progress").field("done", &self.done).field("of", &self.of).finish_non_exhaustive()
    }
}

impl Progress<'_> {
    /// What was read so far, ready to be shown: the quick first answer.
    ///
    /// ```
    /// use lugbook::sight::{Continue, Progress};
    /// // Enough for the size: stop there.
    /// let mut watch = |progress: &Progress<'_>| {
    ///     let sure = progress.so_far().size.first().is_some_and(|best| best.odds > 0.9);
    ///     if sure { Continue::No } else { Continue::Yes }
    /// };
    /// # let _ = &mut watch;
    /// ```
    pub fn so_far(&self) -> Sight {
        self.state.sight(false)
    }

    /// Whether a size can be suggested already; far cheaper than [`Self::so_far`].
    ///
    /// ```
    /// use lugbook::sight::{Continue, Progress};
    /// let mut first = None;
    /// let mut watch = |progress: &Progress<'_>| {
    ///     if first.is_none() && progress.has_size() {
    ///         first = Some(progress.done);
    ///     }
    ///     Continue::Yes
    /// };
    /// # let _ = &mut watch;
    /// ```
    pub fn has_size(&self) -> bool {
        !self.state.evidence.sizes.0.is_empty()
    }
}

/// One reading that a person may accept.
///
/// ```
/// use lugbook::sight::Suggestion;
/// let size = Suggestion { text: "225/45R17".into(), odds: 0.93, hour: Some(12), cut: None };
/// assert!(size.odds <= 1.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Suggestion {
    /// What it says, in canonical form.
    pub text: String,
    /// How likely it is right, 0 to 1.
    pub odds: f64,
    /// The hour of a clock's face where it stands on the ring, 1 to 12; `None` on a close-up.
    pub hour: Option<u8>,
    /// What it was read from, level, to be shown beside it.
    pub cut: Option<Picture>,
}

/// The arrow of a directional tire, as the camera saw it.
///
/// ```
/// use lugbook::sight::Arrow;
/// // Driving forward, the wheels on a vehicle's left turn counterclockwise as they are seen from outside.
/// assert!(Arrow { clockwise: false, odds: 0.8 }.agrees_on_left());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arrow {
    /// As the hands of a clock, seen from where the photo was taken.
    pub clockwise: bool,
    /// How likely that is right, 0 to 1.
    pub odds: f64,
}

impl Arrow {
    /// Whether a tire with this arrow outside belongs on the vehicle's left; otherwise on its right. Left is the
    /// driver's left facing forward (plain geometry: the top of a wheel that rolls forward moves forward).
    ///
    /// ```
    /// use lugbook::sight::Arrow;
    /// assert!(!Arrow { clockwise: true, odds: 0.8 }.agrees_on_left());
    /// ```
    pub fn agrees_on_left(self) -> bool {
        !self.clockwise
    }
}

/// A line of lettering, as it was read.
///
/// ```
/// use lugbook::sight::Lettering;
/// let line = Lettering { text: "TUBELESS".into(), likely: 0.97, hour: Some(2) };
/// assert!(line.likely <= 1.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Lettering {
    /// What it says.
    pub text: String,
    /// How likely its characters are on the mean, 0 to 1.
    pub likely: f32,
    /// The hour of a clock's face where it stands on the ring, 1 to 12; `None` on a close-up.
    pub hour: Option<u8>,
}

/// A wheel that was found, in pixels of the upright picture.
///
/// ```
/// use lugbook::sight::Wheel;
/// let wheel = Wheel { x: 1500.0, y: 1100.0, rim: 620.0, outer: 980.0, stretch: 1.05, seen: 0.9 };
/// assert!(wheel.outer > wheel.rim);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wheel {
    /// Middle, from the left.
    pub x: f64,
    /// Middle, from the top.
    pub y: f64,
    /// Mean radius of the rim's edge.
    pub rim: f64,
    /// Mean radius of the tire's outer edge.
    pub outer: f64,
    /// Long over short axis: 1 when the camera looked square.
    pub stretch: f64,
    /// Share of the edges that was seen, 0 to 1.
    pub seen: f64,
}

/// What was read on a wheel: suggestions, best first, and what would make them better.
///
/// ```no_run
/// use lugbook::calendar::Day;
/// use lugbook::sight::{Asked, Continue, Models, Picture, read};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let models = Models::load(std::fs::read("detector.onnx")?, std::fs::read("recognizer.onnx")?)
///     .map_err(|why| format!("{why:?}"))?;
/// let gray = vec![90; 64 * 48 * 3];
/// let picture = Picture::from_rgb(64, 48, &gray).ok_or("no picture")?;
/// let asked = Asked { ring: None, today: Day::new(2026, 5, 4).ok_or("no day")? };
/// let sight = read(&models, &[picture], &asked, &mut |_| Continue::Yes);
/// if let Some(size) = sight.size.first() {
///     println!("{} ({:.0} in 100)", size.text, size.odds * 100.0);
/// }
/// # Ok(())
/// # }
/// ```
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Sight {
    /// Size designations.
    pub size: Vec<Suggestion>,
    /// Service descriptions.
    pub service: Vec<Suggestion>,
    /// Dates of making, week and year.
    pub date: Vec<Suggestion>,
    /// Identification numbers without `DOT`, with their date when it was seen.
    pub tin: Vec<Suggestion>,
    /// Words that say how the tire must stand.
    pub words: Vec<Word>,
    /// Where the arrow beside `ROTATION` points.
    pub arrow: Option<Arrow>,
    /// What is chalked: where the tire goes, or its number.
    pub chalk: Vec<Suggestion>,
    /// All lines of lettering, as they were read.
    pub lines: Vec<Lettering>,
    /// The wheel in each picture; `None` where it is a close-up.
    pub wheels: Vec<Option<Wheel>>,
    /// What to do differently when a photo is taken again.
    pub hints: Vec<Hint>,
    /// The one close-up that would settle most.
    pub ask: Option<Ask>,
    /// Everything was looked at; not so when the reading was stopped.
    pub complete: bool,
}

/// Reads pictures of one wheel: whole wheels, close-ups, or both. `watch` is told between tiles and may stop.
///
/// Every answer is a suggestion: a person confirms it. A field stays empty when nothing was read for it, which is an
/// answer too.
///
/// ```no_run
/// # use lugbook::sight::{Asked, Continue, Models, Picture, read};
/// # fn f(models: &Models, picture: Picture, asked: Asked) {
/// let sight = read(models, &[picture], &asked, &mut |progress| {
///     if progress.done < progress.of { Continue::Yes } else { Continue::No }
/// });
/// # let _ = sight;
/// # }
/// ```
pub fn read(
    models: &Models,
    pictures: &[Picture],
    asked: &Asked,
    watch: &mut dyn FnMut(&Progress<'_>) -> Continue,
) -> Sight {
    through(Eyes::Own(models), pictures, asked, watch)
}

/// The same with a reader of the host's own in place of the models: rings, tiles, grammar and odds stay.
///
/// ```
/// use lugbook::calendar::Day;
/// use lugbook::ident::Digest;
/// use lugbook::sight::{Asked, Continue, Picture, Tile, TileReader, TileText, read_through};
/// struct Phone;
/// impl TileReader for Phone {
///     fn name(&self) -> String {
///         "phone-text-3".into()
///     }
///     fn model(&self) -> Digest {
///         Digest::of(b"phone-text-3")
///     }
///     fn read(&self, _: &Tile<'_>) -> Vec<TileText> {
///         vec![TileText { text: "225/45R17 91W".into(), confidence: 0.9, x: 60.0, y: 20.0, width: 90.0, height: 14.0 }]
///     }
/// }
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let close_up = Picture::from_gray(120, 40, vec![60; 4800]).ok_or("no picture")?;
/// let asked = Asked { ring: None, today: Day::new(2026, 5, 4).ok_or("no day")? };
/// let sight = read_through(&Phone, &[close_up], &asked, &mut |_| Continue::Yes);
/// assert_eq!(sight.size.first().map(|best| best.text.as_str()), Some("225/45R17"));
/// # Ok(())
/// # }
/// ```
pub fn read_through(
    host: &dyn TileReader,
    pictures: &[Picture],
    asked: &Asked,
    watch: &mut dyn FnMut(&Progress<'_>) -> Continue,
) -> Sight {
    through(Eyes::Host(host), pictures, asked, watch)
}

fn through(
    eyes: Eyes<'_>,
    pictures: &[Picture],
    asked: &Asked,
    watch: &mut dyn FnMut(&Progress<'_>) -> Continue,
) -> Sight {
    let mut state = State::new(asked.today);
    let complete = state.read(eyes, pictures, asked, watch) == Continue::Yes;
    state.sight(complete)
}

/// What reads tiles.
#[derive(Clone, Copy)]
pub(super) enum Eyes<'a> {
    /// The two models.
    Own(&'a Models),
    /// A reader of the host's own.
    Host(&'a dyn TileReader),
}

/// The ring of a whole wheel, when it is one.
fn whole_wheel(picture: &Picture, drawn: Option<Circle>) -> Option<Ring> {
    let (width, height) = (picture.width() as f64, picture.height() as f64);
    if let Some(Circle { x, y, r }) = drawn {
        // A circle that lies elsewhere is no hint.
        let on_it = (0.0..=width).contains(&x) && (0.0..=height).contains(&y);
        return if on_it && (8.0..=width + height).contains(&r) { ring::find(picture, Some((x, y, r))) } else { None };
    }
    if width.max(height) > LONG * width.min(height) {
        return None;
    }
    ring::find(picture, None).filter(|ring| ring.seen >= WHEEL_SEEN)
}

/// Tiles around a ring, each reaching into the next.
fn around(strip: &Strip) -> Vec<Cut> {
    let shrink = TILE as f32 / strip.picture.height() as f32;
    let seen = strip::even(&strip.picture.scaled(shrink), TILE / 16, true);
    let all = seen.width();
    let count = all.div_ceil(STEP).max(1);
    let length = (all.div_ceil(count) + (all as f32 * SHARED) as usize).min(all);
    (0..count)
        .map(|n| {
            let left = n * all / count;
            let picture = seen.window(left as i64, 0, length, TILE, true);
            Cut { picture, left: left as f32 / shrink, top: 0.0, scale: 1.0 / shrink }
        })
        .collect()
}

/// A close-up at several sizes, with a margin around it.
pub(super) fn straight(strip: &Strip) -> Vec<Cut> {
    const MARGIN: usize = 32;
    CLOSE_UPS
        .iter()
        .map(|longest| {
            let by = (longest / strip.picture.longest() as f32).min(4.0);
            let small = strip.picture.scaled(by);
            let (width, height) = (small.width() + 2 * MARGIN, small.height() + 2 * MARGIN);
            let picture = small.window(-(MARGIN as i64), -(MARGIN as i64), width, height, false);
            let margin = -(MARGIN as f32) / by;
            Cut { picture, left: margin, top: margin, scale: 1.0 / by }
        })
        .collect()
}

/// What was read so far.
pub(super) struct State {
    today: Day,
    strips: Vec<Strip>,
    rings: Vec<Option<Ring>>,
    evidence: Evidence,
    /// All lines, with the strip of each.
    pub lines: Vec<(usize, Line)>,
    done: usize,
    of: usize,
}

impl State {
    pub fn new(today: Day) -> Self {
        Self {
            today,
            strips: Vec::new(),
            rings: Vec::new(),
            evidence: Evidence::default(),
            lines: Vec::new(),
            done: 0,
            of: 0,
        }
    }

    /// Reads all tiles of all pictures, or until it is stopped.
    pub fn read(
        &mut self,
        eyes: Eyes<'_>,
        pictures: &[Picture],
        asked: &Asked,
        watch: &mut dyn FnMut(&Progress<'_>) -> Continue,
    ) -> Continue {
        for (at, picture) in pictures.iter().enumerate() {
            let ring = whole_wheel(picture, asked.ring.filter(|_| at == 0));
            self.rings.push(ring);
            let strip = match &ring {
                Some(ring) => strip::unwrap(picture, ring),
                None => Strip::straight(picture),
            };
            let plan = if strip.round { around(&strip) } else { straight(&strip) };
            self.of += plan.len();
            self.strips.push(strip);
            for tile in plan {
                match eyes {
                    Eyes::Own(models) => self.look(models, &tile),
                    Eyes::Host(host) => self.look_through(host, &tile),
                }
                self.done += 1;
                if watch(&Progress { done: self.done, of: self.of, state: self }) == Continue::No {
                    return Continue::No;
                }
            }
            self.look_for_chalk(eyes);
            let Eyes::Own(models) = eyes else { continue };
            if self.look_closer(models, watch) == Continue::No || self.look_again(models, watch) == Continue::No {
                return Continue::No;
            }
        }
        Continue::Yes
    }

    /// Looks where something stands on the ring that the detector overlooked, as long as size or date are missing.
    fn look_closer(&mut self, models: &Models, watch: &mut dyn FnMut(&Progress<'_>) -> Continue) -> Continue {
        let Some(strip) = self.strips.last().filter(|strip| strip.round) else { return Continue::Yes };
        if !self.missing() {
            return Continue::Yes;
        }
        let at = self.strips.len() - 1;
        let places: Vec<Region> = activity::places(&strip.picture)
            .into_iter()
            .filter(|place| {
                !self.lines.iter().any(|(strip, line)| *strip == at && line.clear() && covers(&line.place, place))
            })
            .collect();
        self.of += places.len() * CLOSER.len();
        let mut left = MOST_CLOSER;
        for (tall, place) in CLOSER.iter().flat_map(|tall| places.iter().map(move |place| (tall, place))) {
            self.read_closer(models, &Region { height: place.height * tall, ..*place }, false, &mut left);
            self.done += 1;
            if watch(&Progress { done: self.done, of: self.of, state: self }) == Continue::No {
                return Continue::No;
            }
            if !self.missing() {
                break;
            }
        }
        Continue::Yes
    }

    /// Looks a few times more, each a little otherwise, where an identification number seems to stand: its symbols
    /// have no grammar that would mend one misread look.
    fn look_again(&mut self, models: &Models, watch: &mut dyn FnMut(&Progress<'_>) -> Continue) -> Continue {
        let Some(best) = self.tins().into_iter().next().filter(|best| best.odds < SURE) else { return Continue::Yes };
        let at = self.strips.len() - 1;
        let place = self.evidence.tins.0.get(&best.text).and_then(|weight| weight.place);
        let Some(place) = place.filter(|place| place.strip == at) else { return Continue::Yes };
        let read = self.lines.iter().find(|(strip, line)| *strip == at && line.place == place.region);
        let over = read.is_some_and(|(_, line)| line.over);
        let mut left = MOST_AGAIN;
        if !read.is_some_and(|(_, line)| line.number.contains("D0T")) {
            // What stands before it may have been left out, `DOT` with it.
            let region = place.region;
            let before = if over { region.width } else { -region.width };
            let wide = Region { x: region.x + 0.6 * before, width: 2.2 * region.width, ..region };
            self.read_closer(models, &wide, over, &mut left);
        }
        for (tall, wide, down) in AGAIN {
            let region = place.region;
            let again = Region {
                y: region.y + down * region.height,
                width: region.width * wide,
                height: region.height * tall,
                ..region
            };
            self.read_closer(models, &again, over, &mut left);
        }
        self.done += 1;
        self.of += 1;
        watch(&Progress { done: self.done, of: self.of, state: self })
    }

    /// Reads a place on the last strip, as long as enough is left for it.
    fn read_closer(&mut self, models: &Models, place: &Region, over: bool, left: &mut usize) {
        let Some(rest) = left.checked_sub(lines::cost(place)) else { return };
        let Some(strip) = self.strips.last() else { return };
        *left = rest;
        let read = lines::read(models, strip, place, over).into_iter().collect();
        for line in lines::with_arrows(strip, read) {
            self.keep(line);
        }
    }

    /// Size or date are not read for sure.
    fn missing(&self) -> bool {
        let sight = self.sight(false);
        let unsure = |suggestions: &[Suggestion]| suggestions.first().is_none_or(|best| best.odds < UNSURE);
        unsure(&sight.size) || unsure(&sight.service) || unsure(&sight.date)
    }

    fn keep(&mut self, line: Line) {
        let strip = self.strips.len() - 1;
        self.evidence.add(&line, strip, self.today);
        self.lines.push((strip, line));
    }

    fn look(&mut self, models: &Models, tile: &Cut) {
        let Some(strip) = self.strips.last() else { return };
        let regions = lines::regions(models, tile);
        let around = strip.picture.width() as f32;
        let at = self.strips.len() - 1;
        // What was read without doubt is not read again; a tile may reach over the strip's end.
        let known = |region: &Region| {
            self.lines.iter().filter(|(strip, line)| *strip == at && line.clear()).find_map(|(_, line)| {
                let shifts = [0.0, around, -around].into_iter();
                let moved = |by: f32| Region { x: line.place.x + by, ..line.place };
                let place = shifts.map(moved).find(|place| covers(place, region))?;
                Some(Line { place, ..line.clone() })
            })
        };
        let texts: Vec<Line> = regions
            .iter()
            .filter_map(|region| {
                if let Some(line) = known(region).filter(|_| strip.round) {
                    // As part of a longer line it has been joined already.
                    return (line.place.width < 1.2 * region.width).then_some(line);
                }
                let upright = lines::read(models, strip, region, false);
                if upright.as_ref().is_some_and(|line| line.confidence >= UPSIDE_DOWN_BELOW) {
                    return upright;
                }
                let over = lines::read(models, strip, region, true);
                upright.into_iter().chain(over).max_by(|a, b| a.confidence.total_cmp(&b.confidence))
            })
            .collect();
        for line in lines::join(lines::with_arrows(strip, texts)) {
            self.keep(line);
        }
    }

    /// Has the host read a tile.
    fn look_through(&mut self, host: &dyn TileReader, tile: &Cut) {
        let Some(strip) = self.strips.last() else { return };
        let texts = lines::with_arrows(strip, tiles::through(host, tile));
        for line in lines::join(texts) {
            self.keep(line);
        }
    }

    /// Reads what is chalked on the last strip.
    fn look_for_chalk(&mut self, eyes: Eyes<'_>) {
        let Some(strip) = self.strips.last() else { return };
        let at = self.strips.len() - 1;
        for mark in chalk::read(eyes, strip) {
            self.evidence.chalk.add(mark.text.to_owned(), mark.likely, Place { strip: at, region: mark.place });
        }
    }

    /// Identification numbers, best first.
    fn tins(&self) -> Vec<Suggestion> {
        let mut all: Vec<(String, Weight)> =
            self.evidence.tins.0.iter().map(|(text, weight)| (text.clone(), *weight)).collect();
        all.sort_by(|a, b| b.1.sum.total_cmp(&a.1.sum));
        all.truncate(24);
        let weights: Vec<(String, f64)> = all.iter().map(|(text, weight)| (text.clone(), weight.sum)).collect();
        // Squared, since near readings support each other all alike.
        let support = numbers::supported(&weights);
        let ranked =
            all.into_iter().zip(support).map(|((text, weight), sum)| (text, Weight { sum: sum * sum, ..weight }));
        self.ranked(Kind::Tin, ranked)
    }

    fn arrow(&self) -> Option<Arrow> {
        let of = |way: bool| self.evidence.arrows.0.get(&way).copied().unwrap_or_default();
        let (clockwise, counter) = (of(true), of(false));
        let best = if clockwise.sum > counter.sum { clockwise } else { counter };
        let share = best.sum / (clockwise.sum + counter.sum);
        (best.sum > 0.0).then_some(Arrow { clockwise: clockwise.sum > counter.sum, odds: best.most * share })
    }

    pub fn sight(&self, complete: bool) -> Sight {
        let size = self.ranked(Kind::Size, self.evidence.sizes.0.iter().map(|(text, weight)| (text.clone(), *weight)));
        // A service description counts fully behind the size that won, and little elsewhere.
        let mut services: Vec<(String, Weight)> = Vec::new();
        for ((of, text), weight) in &self.evidence.services.0 {
            let own = size.first().is_some_and(|size| size.text == *of);
            let sum = weight.sum * if own { 1.0 } else { 0.2 };
            match services.iter_mut().find(|(known, _)| known == text) {
                Some((_, known)) => {
                    known.sum += sum;
                    if own {
                        (known.most, known.place) = (weight.most, weight.place);
                    }
                }
                None => services.push((text.clone(), Weight { sum, ..*weight })),
            }
        }
        let service = self.ranked(Kind::Service, services.into_iter());
        let plain = |weights: &Weights<String>| -> Vec<(String, Weight)> {
            weights.0.iter().map(|(text, weight)| (text.clone(), *weight)).collect()
        };
        let date = self.ranked(Kind::Date, plain(&self.evidence.dates).into_iter());
        let chalk = self.ranked(Kind::Chalk, plain(&self.evidence.chalk).into_iter());
        let tin = self.tins();
        let words =
            self.evidence.words.0.iter().filter(|(_, weight)| weight.sum > 0.5).map(|(word, _)| *word).collect();
        let mut sight = Sight {
            size,
            service,
            date,
            tin,
            words,
            arrow: self.arrow(),
            chalk,
            lines: self.lettering(),
            wheels: self.rings.iter().map(|ring| ring.as_ref().map(wheel)).collect(),
            hints: Vec::new(),
            ask: None,
            complete,
        };
        let confidence: f32 = self.lines.iter().map(|(_, line)| line.confidence).sum();
        let mean = confidence / self.lines.len().max(1) as f32;
        sight.hints = judging::hints(&self.rings, self.lines.len(), mean, &sight);
        sight.ask = judging::ask(&sight);
        sight
    }

    fn lettering(&self) -> Vec<Lettering> {
        let one = |(strip, line): &(usize, Line)| Lettering {
            text: line.text.clone(),
            likely: line.confidence,
            hour: self.strips.get(*strip).and_then(|strip| strip.hour(line.place.x)),
        };
        self.lines.iter().map(one).collect()
    }

    fn ranked(&self, kind: Kind, weights: impl Iterator<Item = (String, Weight)>) -> Vec<Suggestion> {
        /// The weight that is kept for "something else".
        const NONE: f64 = 0.35;
        let mut all: Vec<(String, Weight)> = weights.collect();
        all.sort_by(|a, b| b.1.sum.total_cmp(&a.1.sum));
        let sums: Vec<f64> = all.iter().map(|(_, weight)| weight.sum).collect();
        all.into_iter()
            .zip(kind.all(&sums, NONE))
            .take(MOST)
            .map(|((text, weight), odds)| {
                let strip = weight.place.and_then(|place| Some((self.strips.get(place.strip)?, place.region)));
                Suggestion {
                    text,
                    odds,
                    hour: strip.and_then(|(strip, region)| strip.hour(region.x)),
                    cut: strip.map(|(strip, region)| lines::shown(strip, &region)),
                }
            })
            .filter(|suggestion| suggestion.odds > 0.02)
            .collect()
    }
}

/// Whether a line takes up most of a place.
fn covers(line: &Region, place: &Region) -> bool {
    let shared = line.right().min(place.right()) - line.left().max(place.left());
    (line.y - place.y).abs() < place.height / 2.0 && shared > 0.7 * place.width
}

fn wheel(ring: &Ring) -> Wheel {
    let (x, y) = ring.middle();
    Wheel {
        x,
        y,
        rim: ring.rim.mean_radius(),
        outer: ring.outer.mean_radius(),
        stretch: ring.rim.stretch(),
        seen: ring.seen,
    }
}
