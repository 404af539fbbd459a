//! What lines of text say, weighed and added up.

use std::collections::BTreeMap;

use super::lines::Line;
use super::numbers::{self, Meaning};
use super::regions::Region;
use crate::calendar::Day;
use crate::sidewall::{Candidate, Reading, Service, Size, Use, Word, candidates};

/// How many readings of a line are weighed.
const READINGS: usize = 6;
/// Words that are told, with what counts as them.
const WORDS: &[(Word, &str)] = &[(Word::Outside, "OUTSIDE"), (Word::Inside, "INSIDE"), (Word::Rotation, "ROTATION")];

/// What speaks for one reading.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Weight {
    /// All of it, 1 for one look that is sure.
    pub sum: f64,
    /// The most that one look gave, and where it looked.
    pub most: f64,
    pub place: Option<Place>,
}

/// Where a line stood: which strip, and where on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    pub strip: usize,
    pub region: Region,
}

/// Weights of what was read, by what it says.
#[derive(Debug, Clone, Default)]
pub(super) struct Evidence {
    /// Sizes without the `P` of passenger tires, which leaves the size what it is.
    pub sizes: Weights<String>,
    /// What was read with a `P` before it.
    pub passenger: Weights<String>,
    /// Service descriptions by the size that they stood behind; by themselves under no size.
    pub services: Weights<(String, String)>,
    pub tins: Weights<String>,
    pub dates: Weights<String>,
    pub words: Weights<Word>,
    /// Whether an arrow beside `ROTATION` points clockwise.
    pub arrows: Weights<bool>,
    /// What is chalked.
    pub chalk: Weights<String>,
}

/// Weights by reading.
#[derive(Debug, Clone)]
pub(super) struct Weights<K>(pub BTreeMap<K, Weight>);

impl<K> Default for Weights<K> {
    fn default() -> Self {
        Self(BTreeMap::new())
    }
}

impl<K: Ord> Weights<K> {
    pub fn add(&mut self, reading: K, weight: f64, place: Place) {
        let all = self.0.entry(reading).or_default();
        all.sum += weight;
        if weight > all.most {
            all.most = weight;
            all.place = Some(place);
        }
    }
}

impl Evidence {
    /// Adds what a line says; `today` bounds dates.
    pub fn add(&mut self, line: &Line, strip: usize, today: Day) {
        let text = line.text.to_ascii_uppercase();
        let confidence = f64::from(line.confidence);
        let place = Place { strip, region: line.place };
        self.size(&text, confidence, place);
        self.number(&text, line, place, today);
        for (word, letters) in WORDS {
            let found = closeness(&text, letters);
            if found > 0.0 {
                self.words.add(*word, confidence * found, place);
                // An arrow stands on one base line with its word.
                if let (Word::Rotation, Some((clockwise, likely))) = (word, line.arrow) {
                    self.arrows.add(clockwise, f64::from(likely), place);
                }
            }
        }
    }

    fn size(&mut self, text: &str, confidence: f64, place: Place) {
        // Marks between the parts of a size are dirt or a mold's own.
        let plain: String =
            text.chars().map(|c| if matches!(c, '-' | '_' | '~' | '.' | '&' | '+') { ' ' } else { c }).collect();
        let mut texts = vec![text.to_owned()];
        for spaced in [plain.clone(), apart(&plain)] {
            if !texts.contains(&spaced) {
                texts.push(spaced);
            }
        }
        // The best of the spellings counts, each reading once.
        let mut sizes: BTreeMap<String, f64> = BTreeMap::new();
        let mut services: BTreeMap<(String, String), f64> = BTreeMap::new();
        let mut passenger: BTreeMap<String, f64> = BTreeMap::new();
        let best = |map: &mut f64, weight: f64| *map = map.max(weight);
        for text in &texts {
            for Candidate { reading, cost, .. } in candidates(text, READINGS) {
                match reading {
                    Reading::Size { size, service } => {
                        let weight = confidence * (-cost - unusual(&size, service.as_ref())).exp();
                        let name = bare(&size);
                        if size.made_for() == Some(Use::Passenger) {
                            best(passenger.entry(name.clone()).or_default(), weight);
                        }
                        best(
                            sizes.entry(name.clone()).or_default(),
                            weight * if service.is_some() { 1.5 } else { 1.0 },
                        );
                        if let Some(service) = service {
                            best(services.entry((name, service.to_string())).or_default(), weight);
                        }
                    }
                    Reading::Service(service) => {
                        let weight = 0.15 * confidence * (-cost).exp();
                        best(services.entry((String::new(), service.to_string())).or_default(), weight);
                    }
                    Reading::Tin(_) => {}
                }
            }
        }
        for (size, weight) in sizes {
            self.sizes.add(size, weight, place);
        }
        for (size, weight) in passenger {
            self.passenger.add(size, weight, place);
        }
        for (service, weight) in services {
            self.services.add(service, weight, place);
        }
    }

    fn number(&mut self, text: &str, line: &Line, place: Place, today: Day) {
        let meanings = numbers::meanings(text, &line.number, today);
        // A size without its stroke is no number.
        let size = |c: &Candidate| matches!(c.reading, Reading::Size { .. }) && c.cost < 4.0;
        let announced = meanings.iter().any(|meaning| meaning.announced);
        if !announced && candidates(text, 1).iter().any(size) {
            return;
        }
        let mut dates: BTreeMap<String, f64> = BTreeMap::new();
        for Meaning { body, date, share, announced } in meanings {
            let weight = f64::from(line.confidence) * share * if announced { 2.0 } else { 0.7 };
            if let Some(date) = &date {
                *dates.entry(date.clone()).or_default() += weight;
            }
            if !body.is_empty() {
                self.tins.add(body + date.as_deref().unwrap_or_default(), weight, place);
            }
        }
        for (date, weight) in dates {
            self.dates.add(date, weight, place);
        }
    }
}

/// A size without the `P` of passenger tires.
fn bare(size: &Size) -> String {
    let text = size.to_string();
    if size.made_for() == Some(Use::Passenger) { text.trim_start_matches('P').to_owned() } else { text }
}

/// Puts a space behind each speed symbol that something follows, as in `98VM161`.
fn apart(text: &str) -> String {
    let chars: Vec<char> = text.chars().collect();
    let mut spaced = String::with_capacity(text.len() + 4);
    for (at, c) in chars.iter().enumerate() {
        spaced.push(*c);
        let digits = at >= 2 && chars.get(at - 2..at).is_some_and(|two| two.iter().all(char::is_ascii_digit));
        let goes_on = chars.get(at + 1).is_some_and(char::is_ascii_alphanumeric);
        if digits && goes_on && "QSTHVWY".contains(*c) {
            spaced.push(' ');
        }
    }
    spaced
}

/// How unusual a size is with its load index, in nats.
///
/// A road tire's overall diameter and the load that its size can carry are bounded by its geometry. The load is the
/// passenger formula K · P^0.5 · Sd^1.39 · (Dr + Sd) as told in a secondary source, good to a few indices only; so it
/// is a leaning here, never a figure that is shown.
fn unusual(size: &Size, service: Option<&Service>) -> f64 {
    let mut nats = 0.0;
    if size.is_motorcycle() {
        nats += 2.0;
    }
    if let Some(diameter) = size.overall_diameter_mm() {
        let heavy = matches!(size.made_for(), Some(Use::LightTruck | Use::Commercial));
        let (low, high) = if heavy { (600.0, 900.0) } else { (530.0, 800.0) };
        let beyond = (low - diameter).max(diameter - high).max(0.0);
        nats += (beyond / 25.0).min(4.0);
        // Low sections stand on large rims (habit of the trade, from memory).
        if let Some(aspect) = size.aspect_percent().filter(|_| !heavy) {
            let away = (size.rim_in() - (24.0 - 0.14 * f64::from(aspect))) / 1.6;
            nats += (away * away / 2.0 - 1.0).clamp(0.0, 4.0);
        }
    }
    if !size.rim_in().fract().eq(&0.0) && size.rim_in() < 19.0 {
        nats += 2.0;
    }
    if let (Some(expected), Some(service)) = (expected_load_kg(size), service)
        && let Some(load) = service.load_kg()
    {
        // One index is about 2.9 %; extra load adds about 9 %, commercial tires far more.
        let indices = (load / expected).ln() / 0.0288;
        let beyond = (-5.0 - indices).max(indices - if size.made_for().is_some() { 24.0 } else { 7.0 }).max(0.0);
        nats += (0.5 * beyond).min(5.0);
    }
    nats
}

/// The load a passenger size can be expected to carry at 250 kPa, kg.
fn expected_load_kg(size: &Size) -> Option<f64> {
    let (width, aspect) = (size.width_mm()?, f64::from(size.aspect_percent()?) / 100.0);
    let section = (0.34848 + 0.6497 * aspect) * width;
    let rim = size.rim_in() * 25.4;
    Some(6.67e-5 * 250.0_f64.sqrt() * section.powf(1.39) * (rim + section))
}

/// How near a text comes to a word that is long enough to be told by most of its letters: 0 for not at all.
fn closeness(text: &str, word: &str) -> f64 {
    within(text, word).map_or(0.0, |(close, _)| close)
}

/// The same, and at which of the text's characters, spaces aside, the word begins.
pub(super) fn within(text: &str, word: &str) -> Option<(f64, usize)> {
    let chars: Vec<char> = text
        .chars()
        .filter(|c| *c != ' ')
        .map(|c| match c {
            '0' => 'O',
            '1' => 'I',
            c => c,
        })
        .collect();
    let word: Vec<char> = word.chars().collect();
    let slip = |from: usize| {
        let window = chars.get(from..(from + word.len()).min(chars.len())).unwrap_or_default();
        window.iter().zip(&word).filter(|(a, b)| a != b).count() + word.len() - window.len()
    };
    let (least, from) = (0..chars.len()).map(|from| (slip(from), from)).min()?;
    // The first letter may be cut off by a tile's edge.
    let tail = word.get(1..).unwrap_or_default();
    let cut = chars.windows(tail.len().max(1)).position(|window| window == tail);
    match (least, cut) {
        (0, _) => Some((1.0, from)),
        (_, Some(from)) => Some((0.7, from)),
        (1, _) if word.len() >= 7 => Some((0.6, from)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{Evidence, numbers};
    use crate::calendar::Day;
    use crate::sidewall::Word;
    use crate::sight::lines::Line;
    use crate::sight::regions::Region;

    fn of(texts: &[&str]) -> Evidence {
        let place = Region { x: 0.0, y: 0.0, width: 100.0, height: 20.0, turn: 0.0, likely: 0.9 };
        let mut evidence = Evidence::default();
        for text in texts {
            let number = text.chars().map(numbers::symbol).collect();
            let line = Line {
                text: (*text).to_owned(),
                number,
                confidence: 0.95,
                rotation: None,
                arrow: None,
                over: false,
                place,
            };
            evidence.add(&line, 0, Day::new(2026, 5, 4).unwrap());
        }
        evidence
    }

    fn best(weights: &super::Weights<String>) -> Option<&str> {
        weights.0.iter().max_by(|a, b| a.1.sum.total_cmp(&b.1.sum)).map(|(text, _)| text.as_str())
    }

    #[test]
    fn a_size_is_read_through_marks_confusions_and_what_follows() {
        for text in ["225/45R17 91W", "225/45 R17-91W", "2Z5/4SR17 9IW", "P225/45R17 91WM161", "XX 225/45R17 91W"] {
            assert_eq!(best(&of(&[text]).sizes), Some("225/45R17"), "{text}");
        }
        let evidence = of(&["225/45R17-91WM161"]);
        assert!(evidence.services.0.contains_key(&("225/45R17".into(), "91W".into())), "{:?}", evidence.services);
    }

    #[test]
    fn a_p_before_a_size_is_kept_apart() {
        let evidence = of(&["P225/45R17 91W", "225/45R17 91W"]);
        assert_eq!(best(&evidence.sizes), Some("225/45R17"));
        assert!(evidence.passenger.0.contains_key("225/45R17"));
        assert!(of(&["225/45R17 91W"]).passenger.0.is_empty());
    }

    #[test]
    fn looks_at_the_same_add_up() {
        let sum = |texts: &[&str]| of(texts).sizes.0.get("225/45R17").map_or(0.0, |weight| weight.sum);
        assert!(sum(&["225/45R17 91W"; 3]) > 2.5 * sum(&["225/45R17 91W"]));
        assert!(sum(&["225/45R17 91W"]) > sum(&["2Z5/4SR17 91W"]));
    }

    #[test]
    fn the_oval_around_a_date_is_no_part_of_it() {
        for text in ["DOT 1HKB 9FLP 0723", "DOT 1HKB 9FLP (0723)", "DOT 1HKB 9FLP O0723)", "D0T 1HKB 9FLP 07230"] {
            let evidence = of(&[text]);
            assert_eq!(best(&evidence.dates), Some("0723"), "{text}");
            assert!(evidence.tins.0.contains_key("1HKB9FLP0723"), "{text}: {:?}", evidence.tins);
        }
    }

    #[test]
    fn a_number_without_its_date_is_a_number() {
        let evidence = of(&["DOT 1HKB 9FLP"]);
        assert_eq!((best(&evidence.tins), best(&evidence.dates)), (Some("1HKB9FLP"), None));
    }

    #[test]
    fn approvals_loads_and_weeks_to_come_are_no_dates() {
        for text in ["MAX LOAD 850 KG", "0211814 S2WR2", "350 KPA", "TREADWEAR 300", "DOT 1HKB 9FLP 5126"] {
            assert_eq!(best(&of(&[text]).dates), None, "{text}");
        }
    }

    #[test]
    fn words_are_told_with_a_letter_missing_and_not_from_others() {
        for (text, word) in [("OUTSIDE", Word::Outside), ("0UTSIDE", Word::Outside), ("OTATION", Word::Rotation)] {
            assert!(of(&[text]).words.0.contains_key(&word), "{text}");
        }
        for text in ["SIDEWALL 2 POLYESTER", "STATION", "TUBELESS", ""] {
            assert!(of(&[text]).words.0.is_empty(), "{text}");
        }
    }
}
