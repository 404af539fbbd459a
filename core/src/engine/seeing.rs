//! Reading a wheel from photos: the join of photos, models and sight. It needs no book.

use std::path::{Path, PathBuf};
use std::time::Instant;

use serde::Serialize;

use super::trouble::{Trouble, TroubleKind};
use crate::calendar::Day;
use crate::ident::Digest;
use crate::photos::{PhotoError, Upright};
use crate::sight::{self, Ask, Asked, Circle, Continue, Models, Picture, Progress, Sight, Suggestion};
use crate::words::{Say, Speech, Words};

/// The files of the two models, in the folder that keeps them.
const DETECTOR: &str = "PP-OCRv6_det_small.onnx";
const RECOGNIZER: &str = "PP-OCRv6_rec_small.onnx";
/// The reader's name in a record; its figures belong to it.
const READER: &str = "lugbook-sight-1";

/// What reads photos: models in memory.
#[derive(Debug)]
pub struct Reader {
    models: Models,
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
    /// How long it took, milliseconds.
    pub took_ms: u64,
    /// Name of the reader.
    pub reader: &'static str,
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
        Ok(Self { models })
    }

    /// The same, on one thread.
    #[must_use]
    pub fn on_one_thread(self) -> Self {
        Self { models: self.models.on_threads(1) }
    }

    /// The models' digest, as a record of a reading keeps it.
    pub fn model(&self) -> Digest {
        self.models.digest()
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
        let sight = sight::read(&self.models, &pictures, &Asked { ring, today }, watch);
        let mut hints: Vec<Hinted> = Vec::new();
        if !sight.hints.is_empty() {
            for hint in judged.iter().flat_map(|judgement| &judgement.hints) {
                add(&mut hints, hint, &words);
            }
        }
        for hint in &sight.hints {
            add(&mut hints, hint, &words);
        }
        let took_ms = u64::try_from(began.elapsed().as_millis()).unwrap_or(u64::MAX);
        Ok(self.view(&sight, &shrunk, hints, took_ms, &words))
    }

    fn view(&self, sight: &Sight, shrunk: &[f64], judgement: Vec<Hinted>, took_ms: u64, words: &Words) -> ReadView {
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
            ring,
            judgement,
            sentence: words.sight(sight),
            ask: sight.ask,
            complete: sight.complete,
            took_ms,
            reader: READER,
            model: self.models.digest(),
        }
    }
}

fn suggested(suggestions: &[Suggestion]) -> Vec<Suggested> {
    let one =
        |s: &Suggestion| Suggested { text: s.text.clone(), odds: hundredths(s.odds), hour: s.hour, cut: s.cut.clone() };
    suggestions.iter().map(one).collect()
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
