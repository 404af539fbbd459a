//! Reading a wheel from photos: the join of photos, models and sight. It needs no book.
//!
//! [`Reader::read`] is one call that tells how far it is between tiles and may be stopped there, so a long task of the
//! phones holds it as it stands: `watch` gets a [`Progress`] (tiles done, tiles in all), [`Progress::has_size`] says
//! when a first suggestion can be shown, [`Progress::so_far`] gives it, and [`Continue::No`] ends the call with what
//! was read so far ([`ReadView::complete`] is false then). Reading again is harmless: nothing is stored here.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Instant;

use serde::Serialize;

use super::trouble::{Trouble, TroubleKind};
use crate::calendar::Day;
use crate::ident::Digest;
use crate::photos::{PhotoError, Upright};
use crate::sight::{self, Ask, Asked, Circle, Continue, Models, Picture, Progress, Sight, Suggestion, TileReader};
use crate::words::{Say, Speech, Words};

/// The files of the two models, in the folder that keeps them.
const DETECTOR: &str = "PP-OCRv6_det_small.onnx";
const RECOGNIZER: &str = "PP-OCRv6_rec_small.onnx";
/// The reader's name in a record; its figures belong to it.
const READER: &str = "lugbook-sight-2";

/// What reads photos: models in memory, or a reader of the host's own.
#[derive(Debug)]
pub struct Reader {
    eyes: Eyes,
}

enum Eyes {
    Own(Box<Models>),
    Host(Arc<dyn TileReader>),
}

impl std::fmt::Debug for Eyes {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Own(models) => models.fmt(f),
            Self::Host(host) => f.debug_tuple("Host").field(&host.name()).finish(),
        }
    }
}

/// What was read on a wheel, worded.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReadView {
    /// Size designations, best first.
    pub size: Vec<Suggested>,
    /// Service descriptions, best first.
    pub service: Vec<Suggested>,
    /// Dates of making, best first.
    pub date: Vec<Suggested>,
    /// Identification numbers, best first.
    pub tin: Vec<Suggested>,
    /// Words as they are molded.
    pub words: Vec<&'static str>,
    /// Where the arrow beside `ROTATION` points.
    pub arrow: Option<ArrowView>,
    /// What is chalked on it, best first.
    pub chalk: Vec<Suggested>,
    /// All lettering, line by line, as it was read.
    pub lines: Vec<String>,
    /// The wheel of the first photo that shows a whole one.
    pub ring: Option<RingView>,
    /// What to do differently.
    pub judgement: Vec<Hinted>,
    /// What the reading is worth, and the one close-up that would settle most.
    pub sentence: String,
    /// The close-up that is asked for.
    pub ask: Option<Ask>,
    /// Whether everything was looked at.
    pub complete: bool,
    /// After how many milliseconds a size could be suggested; null when none was.
    pub first_ms: Option<u64>,
    /// How long it took, milliseconds.
    pub took_ms: u64,
    /// Name of the reader.
    pub reader: String,
    /// Digest of its models.
    pub model: Digest,
}

/// One suggestion.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Suggested {
    /// What it says.
    pub text: String,
    /// How likely it is right, 0 to 1.
    pub odds: f64,
    /// The hour of a clock's face where it stands on the ring.
    pub hour: Option<u8>,
    /// What it was read from, to be shown beside it.
    #[serde(skip)]
    pub cut: Option<Picture>,
}

/// The arrow of a directional tire.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ArrowView {
    /// `clockwise` or `counterclockwise`, as the camera saw it.
    pub way: &'static str,
    /// The vehicle's side on which the tire turns that way when this sidewall is outside: `left` or `right`.
    pub side: &'static str,
    /// How likely that is right, 0 to 1.
    pub odds: f64,
}

/// A wheel in a photo, in pixels after it was turned upright.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct RingView {
    /// Which photo, from 1.
    pub photo: usize,
    /// Middle, from the left.
    pub cx: f64,
    /// Middle, from the top.
    pub cy: f64,
    /// Mean radius of the tire's outer edge.
    pub r: f64,
    /// Mean radius of the rim's edge.
    pub rim_r: f64,
    /// Share of the edges that was seen, 0 to 1.
    pub seen: f64,
}

/// One thing to do differently.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Hinted {
    /// Its code.
    pub code: String,
    /// What to do.
    pub sentence: String,
}

impl Reader {
    /// Loads the models from the folder that `core/models/fetch` fills.
    ///
    /// # Errors
    /// When they are not there, with how to get them, or are no models of this program's kind.
    pub fn open(folder: &Path, speech: Speech) -> Result<Self, Trouble> {
        let words = Words::new(speech);
        let read = |name: &str| {
            std::fs::read(folder.join(name)).map_err(|_| {
                let sentence = words.text("sight-no-models", &[("folder", shown(folder).into())]);
                Trouble { kind: TroubleKind::MendInput, sentence, at: None, pointer: None }
            })
        };
        let models = Models::load(read(DETECTOR)?, read(RECOGNIZER)?).map_err(|why| {
            let sentence = why.say(&words);
            Trouble { kind: TroubleKind::MendInput, sentence, at: Some(shown(folder)), pointer: None }
        })?;
        Ok(Self { eyes: Eyes::Own(Box::new(models)) })
    }

    /// A reader that has the host read the tiles: rings, grammar and odds stay the core's. Its name and its model are
    /// kept with each reading.
    #[must_use]
    pub fn through(host: Arc<dyn TileReader>) -> Self {
        Self { eyes: Eyes::Host(host) }
    }

    /// The same, on one thread; a host's own reader is left as it is.
    #[must_use]
    pub fn on_one_thread(self) -> Self {
        match self.eyes {
            Eyes::Own(models) => Self { eyes: Eyes::Own(Box::new(models.on_threads(1))) },
            eyes @ Eyes::Host(_) => Self { eyes },
        }
    }

    /// The reader's name, as a record of a reading keeps it (`entry::ReadBy::Camera`).
    pub fn name(&self) -> String {
        match &self.eyes {
            Eyes::Own(_) => READER.to_owned(),
            Eyes::Host(host) => host.name(),
        }
    }

    /// The models' digest, as a record of a reading keeps it.
    pub fn model(&self) -> Digest {
        match &self.eyes {
            Eyes::Own(models) => models.digest(),
            Eyes::Host(host) => host.model(),
        }
    }

    /// Reads photos of one wheel. `ring` is a circle drawn on the first, in pixels after it was turned upright;
    /// `today` bounds dates. `watch` is told between tiles, and may stop with what was read so far.
    ///
    /// # Errors
    /// When a photo can't be opened, or the circle does not lie on it.
    pub fn read(
        &self,
        photos: &[PathBuf],
        ring: Option<Circle>,
        today: Day,
        speech: Speech,
        watch: &mut dyn FnMut(&Progress<'_>) -> Continue,
    ) -> Result<ReadView, Trouble> {
        let words = Words::new(speech);
        let began = Instant::now();
        let mut pictures = Vec::new();
        let mut shrunk = Vec::new();
        let mut judged = Vec::new();
        for path in photos {
            let named = |why: &PhotoError| Trouble { at: Some(shown(path)), ..Trouble::of_photos(why, &words) };
            let photo = Upright::open(path).map_err(|why| named(&why))?;
            let (width, height, rgb) = photo.rgb();
            let damaged = || Trouble {
                kind: TroubleKind::MendInput,
                sentence: words.text("photo-not-a-picture", &[]),
                at: Some(shown(path)),
                pointer: None,
            };
            pictures.push(Picture::from_rgb(width, height, rgb).ok_or_else(damaged)?);
            shrunk.push(f64::from(photo.width) / f64::from(width.max(1)));
            judged.push(photo.judgement());
        }
        let first = shrunk.first().copied().unwrap_or(1.0);
        let ring = ring.map(|Circle { x, y, r }| Circle { x: x / first, y: y / first, r: r / first });
        if let (Some(ring), Some(picture)) = (ring, pictures.first()) {
            let (width, height) = (picture.width() as f64, picture.height() as f64);
            let on_it = (0.0..=width).contains(&ring.x) && (0.0..=height).contains(&ring.y);
            if !on_it || !(8.0..=width + height).contains(&ring.r) {
                let sentence = words.text("sight-ring-outside", &[]);
                return Err(Trouble { kind: TroubleKind::MendInput, sentence, at: None, pointer: None });
            }
        }
        let asked = Asked { ring, today };
        let mut first_ms = None;
        let watch = &mut |progress: &Progress<'_>| {
            if first_ms.is_none() && progress.has_size() {
                first_ms = Some(elapsed(began));
            }
            watch(progress)
        };
        let sight = match &self.eyes {
            Eyes::Own(models) => sight::read(models, &pictures, &asked, watch),
            Eyes::Host(host) => sight::read_through(host.as_ref(), &pictures, &asked, watch),
        };
        let mut hints: Vec<Hinted> = Vec::new();
        if !sight.hints.is_empty() {
            for hint in judged.iter().flat_map(|judgement| &judgement.hints) {
                add(&mut hints, hint, &words);
            }
        }
        for hint in &sight.hints {
            add(&mut hints, hint, &words);
        }
        Ok(ReadView { first_ms, took_ms: elapsed(began), ..self.view(&sight, &shrunk, hints, &words) })
    }

    fn view(&self, sight: &Sight, shrunk: &[f64], judgement: Vec<Hinted>, words: &Words) -> ReadView {
        let ring = sight.wheels.iter().zip(shrunk).zip(1..).find_map(|((wheel, by), photo)| {
            wheel.map(|wheel| RingView {
                photo,
                cx: (wheel.x * by).round(),
                cy: (wheel.y * by).round(),
                r: (wheel.outer * by).round(),
                rim_r: (wheel.rim * by).round(),
                seen: hundredths(wheel.seen),
            })
        });
        ReadView {
            size: suggested(&sight.size),
            service: suggested(&sight.service),
            date: suggested(&sight.date),
            tin: suggested(&sight.tin),
            words: sight.words.iter().map(|word| word.as_str()).collect(),
            arrow: sight.arrow.map(|arrow| ArrowView {
                way: if arrow.clockwise { "clockwise" } else { "counterclockwise" },
                side: if arrow.agrees_on_left() { "left" } else { "right" },
                odds: hundredths(arrow.odds),
            }),
            chalk: suggested(&sight.chalk),
            lines: sight.lines.iter().map(|line| line.text.clone()).collect(),
            ring,
            judgement,
            sentence: words.sight(sight),
            ask: sight.ask,
            complete: sight.complete,
            first_ms: None,
            took_ms: 0,
            reader: self.name(),
            model: self.model(),
        }
    }
}

fn suggested(suggestions: &[Suggestion]) -> Vec<Suggested> {
    let one =
        |s: &Suggestion| Suggested { text: s.text.clone(), odds: hundredths(s.odds), hour: s.hour, cut: s.cut.clone() };
    suggestions.iter().map(one).collect()
}

fn elapsed(began: Instant) -> u64 {
    u64::try_from(began.elapsed().as_millis()).unwrap_or(u64::MAX)
}

fn hundredths(share: f64) -> f64 {
    (share * 100.0).round() / 100.0
}

fn add<H: Say + Serialize>(hints: &mut Vec<Hinted>, hint: &H, words: &Words) {
    let Ok(serde_json::Value::String(code)) = serde_json::to_value(hint) else { return };
    if hints.iter().all(|known| known.code != code) {
        hints.push(Hinted { code, sentence: hint.say(words) });
    }
}

/// A path as it is told back.
fn shown(path: &Path) -> String {
    path.display().to_string().chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}
