//! What a tire's photos say, as suggestions on the step that asks for its sidewall.
//!
//! Reading takes seconds and needs no book: [`Engine::to_read`] says what a tap asks to be read, [`ToRead::read`] reads
//! it while the book serves others, and [`Engine::suggest`] puts the suggestions on the bay's screen. There they are
//! accepted, mended by typing, or left: "not on this side" is an answer too. They are no entries and last as long as the
//! book is open; the photos stay, and can be read again.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

use image::codecs::png::PngEncoder;
use image::{ExtendedColorType, ImageEncoder};
use serde::Serialize;
use serde_json::Value;

use super::form::{Choice, Entered, FieldKind, Form, Option_, Slot};
use super::offer::{Deed, Leads, Offers, Tapped, Weight};
use crate::calendar::Day;
use crate::engine::{Engine, ReadView, Reader, Suggested, Trouble, TroubleKind, Watch};
use crate::entry::{Fact, PhotoOf, ReadBy};
use crate::ident::{Digest, JobId, TireId};
use crate::photos::Rendition;
use crate::procedure::{Ask, Bay, Per, Task};
use crate::sight::{Circle, Continue, Picture, TileReader, UNSURE};
use crate::store::{Again, StoreError};
use crate::vehicle::{Place, Side};
use crate::words::{Speech, Words};

/// What was read on a tire's photos.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SightView {
    /// A line for each thing that is read: size, service description, DOT number.
    pub lines: Vec<SightLine>,
    /// Words that are molded on it.
    pub words: Vec<String>,
    /// Whether the arrow beside ROTATION fits the side of the vehicle that the tire is on; none without an arrow.
    pub arrow: Option<String>,
    /// What is chalked on it, and whether that is the mark of this tire; none without chalk.
    pub chalk: Option<String>,
    /// What to do differently when a photo is taken again.
    pub hints: Vec<String>,
    /// What the reading is worth, and the one close-up that would settle most.
    pub sentence: String,
}

/// One thing that is read, with what it may say.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SightLine {
    /// Its code: that of the field that takes it.
    pub code: String,
    /// What it is.
    pub label: String,
    /// What it may say, best first.
    pub suggestions: Vec<SightSuggestion>,
    /// What stands there without a suggestion.
    pub empty: Option<String>,
}

/// One suggestion.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SightSuggestion {
    /// What it says: the choice that accepts it.
    pub text: String,
    /// How likely it is right, 0 to 1.
    pub odds: f64,
    /// The same in words.
    pub odds_text: String,
    /// What a screen reader says.
    pub spoken: String,
    /// What it was read from: a picture, PNG.
    #[serde(skip)]
    pub cut: Option<Vec<u8>>,
}

/// What was read while the book is open, and what reads.
#[derive(Default)]
pub(in crate::engine) struct Suggestions {
    reader: Arc<OnceLock<Reader>>,
    read: BTreeMap<(JobId, TireId), ReadView>,
}

/// Photos of one tire that are to be read, and all that this needs.
pub struct ToRead {
    of: (JobId, TireId),
    photos: Vec<PathBuf>,
    ring: Option<Circle>,
    today: Day,
    models: Option<PathBuf>,
    device: Option<Arc<dyn TileReader>>,
    reader: Arc<OnceLock<Reader>>,
}

/// What was read, to be put on the bay's screen.
#[derive(Debug)]
pub struct WasRead {
    of: (JobId, TireId),
    view: ReadView,
}

impl std::fmt::Debug for ToRead {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("ToRead").field("photos", &self.photos.len()).finish_non_exhaustive()
    }
}

impl ToRead {
    /// Reads the photos; it takes seconds. The models are loaded when this is the first reading.
    ///
    /// # Errors
    /// When models or photos can't be read, or the watcher stopped it.
    pub fn read(&self, speech: Speech, watch: &dyn Watch) -> Result<WasRead, Trouble> {
        let words = Words::new(speech);
        let end = || Trouble::of_store(&StoreError::TryAgain { why: Again::Stopped }, &words);
        if !watch.goes_on(0, 0) {
            return Err(end());
        }
        let of_device = self.device.clone().map(Reader::through);
        let reader = match of_device.as_ref().or(self.reader.get()) {
            Some(reader) => reader,
            None => {
                let reader = Reader::open(self.models.as_deref().unwrap_or(Path::new("")), speech)?;
                self.reader.get_or_init(|| reader)
            }
        };
        let count = |count: usize| u64::try_from(count).unwrap_or(u64::MAX);
        let mut stopped = false;
        let view = reader.read(&self.photos, self.ring, self.today, speech, &mut |progress| {
            stopped |= !watch.goes_on(count(progress.done), count(progress.of));
            if stopped { Continue::No } else { Continue::Yes }
        })?;
        if stopped {
            return Err(end());
        }
        Ok(WasRead { of: self.of, view })
    }
}

/// The tire whose sidewall a task asks about.
fn tire_of(bay: &Bay<'_>, task: &Task<'_>) -> Option<(Place, TireId)> {
    tire_at(bay, task).filter(|_| task.step.asks == Ask::Sidewall)
}

/// The tire that a task is about.
fn tire_at(bay: &Bay<'_>, task: &Task<'_>) -> Option<(Place, TireId)> {
    let at = task.at?;
    let tire = match task.step.per {
        Per::Coming => bay.job.coming().get(&at).copied(),
        _ => bay.job.wanted_at(at).or_else(|| bay.job.fitted.get(&at).copied()),
    };
    Some((at, tire?))
}

/// The sidewall photos of a place, taken since another tire was read there; the newest first, since a circle is drawn
/// on the one that was taken last.
fn photos_of(bay: &Bay<'_>, at: Place, tire: TireId) -> Vec<Digest> {
    let mut photos = Vec::new();
    for line in &bay.job.lines {
        match &line.fact {
            Fact::SidewallRead { at: there, tire: other, .. } if *there == at && *other != tire => photos.clear(),
            Fact::PhotoTaken { photo, of: PhotoOf::Sidewall, at: Some(there), .. } if *there == at => {
                photos.push(*photo);
            }
            _ => {}
        }
    }
    photos.reverse();
    photos
}

/// What a circle says: middle across, middle down and radius as shares of the width.
fn circle(text: &str, width: u32) -> Option<Circle> {
    let shares: Vec<f64> = text.split_whitespace().map(|share| share.parse().ok()).collect::<Option<_>>()?;
    let &[x, y, r] = shares.as_slice() else { return None };
    let width = f64::from(width);
    let drawn = [x, y, r].iter().all(|share| share.is_finite()) && r > 0.0;
    drawn.then_some(Circle { x: x * width, y: y * width, r: r * width })
}

/// A picture as a file.
fn png(picture: &Picture) -> Option<Vec<u8>> {
    let mut file = Vec::new();
    let side = |side: usize| u32::try_from(side).ok();
    PngEncoder::new(&mut file)
        .write_image(picture.levels(), side(picture.width())?, side(picture.height())?, ExtendedColorType::L8)
        .ok()?;
    Some(file)
}

/// The parts of a reading with the codes of their fields, each text as it is typed.
fn parts(view: &ReadView) -> [(&'static str, Vec<(String, &Suggested)>); 3] {
    fn typed<'v>(suggested: &'v [Suggested], before: &'v str) -> impl Iterator<Item = (String, &'v Suggested)> {
        suggested.iter().map(move |one| (format!("{before}{}", one.text), one))
    }
    // A date by itself stands in for a number that could not be read.
    let dates = typed(&view.date, "DOT ").filter(|(text, _)| {
        let week = text.trim_start_matches("DOT ");
        view.tin.iter().all(|tin| !tin.text.ends_with(week))
    });
    let mut numbers: Vec<_> = typed(&view.tin, "DOT ").chain(dates).collect();
    numbers.sort_by(|a, b| b.1.odds.total_cmp(&a.1.odds));
    [
        ("printed-size", typed(&view.size, "").collect()),
        ("printed-service", typed(&view.service, "").collect()),
        ("dot-number", numbers),
    ]
}

/// The best of a part, where it is more likely right than not.
fn best<'p>(part: &'p [(String, &Suggested)]) -> Option<&'p str> {
    part.first().filter(|(_, one)| one.odds >= UNSURE).map(|(text, _)| text.as_str())
}

/// What is chalked on a tire, where that is more likely right than not.
fn chalk(view: &ReadView) -> Option<&Suggested> {
    view.chalk.first().filter(|best| best.odds >= UNSURE)
}

/// Odds as sentences give them.
fn percent(odds: f64) -> String {
    (odds * 100.0).round().to_string()
}

fn view_of(view: &ReadView, bay: &Bay<'_>, (at, tire): (Place, TireId), words: &Words) -> SightView {
    let line = |(code, part): (&str, Vec<(String, &Suggested)>)| {
        let one = |(text, suggested): (String, &Suggested)| {
            let percent = percent(suggested.odds);
            let args = [("text", text.as_str().into()), ("odds", percent.as_str().into())];
            SightSuggestion {
                odds_text: words.text("sight-odds", &[("odds", percent.as_str().into())]),
                spoken: words.text("sight-suggestion-spoken", &args),
                odds: suggested.odds,
                cut: suggested.cut.as_ref().and_then(png),
                text,
            }
        };
        SightLine {
            code: code.to_owned(),
            label: words.text(&format!("field-{code}"), &[]),
            empty: part.is_empty().then(|| words.text("sight-not-read", &[])),
            suggestions: part.into_iter().map(one).collect(),
        }
    };
    let arrow = view.arrow.as_ref().and_then(|arrow| {
        let Place::Wheel(position) = at else { return None };
        let fits = (arrow.side == "left") == (position.side == Side::Left);
        let odds = ("odds", percent(arrow.odds).into());
        Some(words.text(if fits { "sight-arrow-fits" } else { "sight-arrow-other-side" }, &[odds]))
    });
    let chalk = chalk(view).map(|mark| {
        let id = match bay.job.marked(&mark.text) {
            Some(marked) if marked == tire => "sight-chalk-fits",
            Some(_) => "sight-chalk-of-another",
            None => "sight-chalk",
        };
        let odds = percent(mark.odds);
        words.text(id, &[("mark", mark.text.as_str().into()), ("odds", odds.into())])
    });
    SightView {
        arrow,
        chalk,
        lines: parts(view).into_iter().map(line).collect(),
        words: view.words.iter().map(|word| (*word).to_owned()).collect(),
        hints: view.judgement.iter().map(|hint| hint.sentence.clone()).collect(),
        sentence: view.sentence.clone(),
    }
}

impl Engine {
    fn read_of(&self, bay: &Bay<'_>, task: &Task<'_>) -> Option<&ReadView> {
        let (_, tire) = tire_of(bay, task)?;
        self.suggestions.read.get(&(bay.job.id, tire))
    }

    /// What was read on the photos of the tire that a task asks about.
    pub(super) fn sight_view(&self, bay: &Bay<'_>, task: &Task<'_>, words: &Words) -> Option<SightView> {
        let of = tire_of(bay, task)?;
        self.read_of(bay, task).map(|view| view_of(view, bay, of, words))
    }

    /// The best of what was read, as it would be typed: for mending. Where the tire is marked it is what is chalked on it,
    /// unless another tire is known by that.
    pub(super) fn best_read(&self, bay: &Bay<'_>, task: &Task<'_>) -> Option<String> {
        let (_, tire) = tire_at(bay, task)?;
        let view = self.suggestions.read.get(&(bay.job.id, tire))?;
        match task.step.asks {
            Ask::Sidewall => {
                let parts = parts(view);
                let text: Vec<&str> = parts.iter().filter_map(|(_, part)| best(part)).collect();
                (!text.is_empty()).then(|| text.join(" "))
            }
            Ask::Mark => {
                let mark = &chalk(view)?.text;
                bay.job.marked(mark).is_none_or(|marked| marked == tire).then(|| mark.clone())
            }
            _ => None,
        }
    }

    /// Accepting what was read, and reading the photos.
    pub(super) fn sight_offers(&self, bay: &Bay<'_>, task: &Task<'_>, offers: &mut Offers<'_>) {
        let Some((at, tire)) = tire_of(bay, task).filter(|_| !task.state.is_over()) else { return };
        let words = offers.words;
        let code = bay.vehicle.layout.name(at, crate::vehicle::Letters::FrontFirst);
        let read = self.read_of(bay, task);
        if let Some(view) = read {
            let by = ReadBy::Camera { reader: view.reader.clone(), model: view.model };
            let mut form = Form::of("sidewall")
                .with("at", code.as_str())
                .with("side", "outer")
                .with("coming", task.step.per == Per::Coming)
                .with("looks", Value::Object(serde_json::Map::new()))
                .with("by", serde_json::to_value(by).unwrap_or_default());
            let mut asks = false;
            for (field, part) in parts(view) {
                if part.is_empty() {
                    continue;
                }
                asks = true;
                let best = best(&part).map(str::to_owned);
                let choices = part.iter().map(|(text, one)| {
                    let percent = percent(one.odds);
                    let args = [("text", text.as_str().into()), ("odds", percent.into())];
                    let choice = Choice {
                        code: text.clone(),
                        text: words.text("sight-suggestion", &args),
                        spoken: words.text("sight-suggestion-spoken", &args),
                    };
                    (choice, Value::from(text.as_str()))
                });
                let absent = words.text("sight-not-on-this-side", &[]);
                let absent: Option_ =
                    (Choice { code: "none".to_owned(), spoken: absent.clone(), text: absent }, Value::from(""));
                let slot = Slot::one(words, field, choices.chain([absent]).collect()).joined_to("text");
                form = form.ask(slot.required().filled(best));
            }
            if asks {
                offers.offer("accept-reading", Weight::Main, Some(at), form);
            }
        }
        let reads = self.host.tile_reader().is_some() || self.host.models().is_some();
        if let Some(newest) = photos_of(bay, at, tire).first().filter(|_| reads) {
            let shown = self.photos.path(*newest, Rendition::Large).ok().map(|path| path.display().to_string());
            // The tire is named, so that the tap is good for it alone.
            let form = Form::of("read-photo")
                .with("at", code.as_str())
                .with("step", task.step.id.as_str())
                .with("tire", tire.to_string())
                .ask(Slot::text(words, "ring", FieldKind::Ring).over(shown));
            let weight = if read.is_some() { Weight::Aside } else { Weight::Main };
            let label = words.text("do-read-photo", &[]);
            offers.labelled("read-photo", label, weight, Some(at), form, Leads::Deed(Deed::ReadPhoto));
        }
    }

    /// What a tap asks to be read: none for a tap on anything else.
    ///
    /// # Errors
    /// When the screen that offered it is no longer true, or the circle is none.
    pub fn to_read(&self, token: &str, entered: &[Entered], speech: Speech) -> Result<Option<ToRead>, Trouble> {
        let words = Words::new(speech);
        let offer = self.offer_of(token, &words)?;
        if offer.leads != Leads::Deed(Deed::ReadPhoto) {
            return Ok(None);
        }
        let data = offer.form.filled(entered, &words)?;
        let text = |key: &str| data.get(key).and_then(Value::as_str);
        let gone = || Trouble::mend(&words, "trouble-screen-changed", &[]);
        let bay = self.bay().ok_or_else(gone)?;
        let at = text("at").and_then(|at| bay.vehicle.layout.parse(at));
        let tasks = bay.tasks();
        let task = tasks.iter().find(|task| Some(task.step.id.as_str()) == text("step") && task.at == at);
        let (at, tire) = task.and_then(|task| tire_of(&bay, task)).ok_or_else(gone)?;
        let photos = photos_of(&bay, at, tire);
        let of_photos = |why| Trouble::of_photos(&why, &words);
        let ring = match (text("ring"), photos.first()) {
            (Some(ring), Some(first)) => {
                let (width, _) = self.photos.size(*first).map_err(of_photos)?;
                let outside = || Trouble::mend(&words, "sight-ring-outside", &[]).at("ring");
                Some(circle(ring, width).ok_or_else(outside)?)
            }
            _ => None,
        };
        let paths: Result<Vec<PathBuf>, _> =
            photos.iter().map(|photo| self.photos.path(*photo, Rendition::Original)).collect();
        Ok(Some(ToRead {
            of: (bay.job.id, tire),
            photos: paths.map_err(of_photos)?,
            ring,
            today: self.host.now().day(),
            models: self.host.models(),
            device: self.host.tile_reader(),
            reader: Arc::clone(&self.suggestions.reader),
        }))
    }

    /// Puts what was read on the bay's screen, and tells what it is worth.
    pub fn suggest(&mut self, read: WasRead) -> Tapped {
        let said = vec![read.view.sentence.clone()];
        self.suggestions.read.insert(read.of, read.view);
        Tapped { entries: Vec::new(), said, again: None }
    }

    /// Reads at once, for whoever may wait.
    pub(super) fn read_now(
        &mut self,
        token: &str,
        entered: &[Entered],
        speech: Speech,
        watch: &dyn Watch,
    ) -> Result<Tapped, Trouble> {
        let words = Words::new(speech);
        let report = || Trouble::new(TroubleKind::Report, &words, "trouble-form", &[]);
        let read = self.to_read(token, entered, speech)?.ok_or_else(report)?.read(speech, watch)?;
        Ok(self.suggest(read))
    }
}
