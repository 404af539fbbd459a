//! What is wrong in a sidewall marking, and what another size changes.

use super::{Arg, Say, Words};
use crate::calendar::Day;
use crate::measure::{Load, LoadUnit, Reading, Span, SpanUnit};
use crate::sidewall::{Change, ChangeKind, Part, Problem, ProblemKind, SizePart, Tin, TinAge};

type Filled<'a> = (String, Vec<(&'static str, Arg<'a>)>);

fn size_part(part: SizePart) -> &'static str {
    match part {
        SizePart::Diameter => "diameter",
        SizePart::Width => "width",
        SizePart::Aspect => "aspect",
        SizePart::Construction => "construction",
        SizePart::Rim => "rim",
    }
}

fn part_name(part: Part) -> &'static str {
    match part {
        Part::Size => "part-size",
        Part::Service => "part-service",
        Part::Tin => "part-tin",
        Part::Load => "part-load",
        Part::PlyRating => "part-ply-rating",
        Part::Rim => "part-measuring-rim",
        Part::Treadwear => "part-treadwear",
        Part::Traction => "part-traction",
        Part::Temperature => "part-temperature",
        Part::MaximumLoad => "part-maximum-load",
        Part::MaximumPressure => "part-maximum-pressure",
        Part::Approval => "part-approval",
    }
}

/// The figure that looks like a letter which numbers do not use.
fn looks_like(symbol: char) -> Option<&'static str> {
    Some(match symbol {
        'G' => "6",
        'I' => "1",
        'O' | 'Q' => "0",
        'S' => "5",
        'Z' => "2",
        _ => return None,
    })
}

impl Words {
    /// The sentence that says what to look at or type next for a problem.
    ///
    /// ```
    /// use lugbook::words::{Speech, Words};
    /// let words = Words::new(Speech::default());
    /// let marking = lugbook::sidewall::parse("225/45X17");
    /// let next = words.sidewall_next(&marking.problems[0]);
    /// assert_eq!(next, "Look at the letter between the aspect ratio and the rim.");
    /// ```
    pub fn sidewall_next(&self, problem: &Problem) -> String {
        let (id, args) = self.sidewall_filled(&problem.kind);
        let id = match &problem.kind {
            ProblemKind::TinSymbol { symbol } if looks_like(*symbol).is_none() => {
                "sidewall-tin-symbol-plain".to_owned()
            }
            _ => id,
        };
        self.text(&format!("{id}-next"), &args)
    }

    fn hundredths(&self, part: SizePart, hundredths: u32) -> String {
        let value = f64::from(hundredths) / 100.0;
        let unit = match part {
            SizePart::Rim | SizePart::Diameter => SpanUnit::Inch,
            SizePart::Width => SpanUnit::Millimetre,
            SizePart::Aspect | SizePart::Construction => return self.number(value, 2),
        };
        Span::new(value, unit).map_or_else(|_| self.number(value, 2), |span| self.reading(&span))
    }

    fn sidewall_filled<'a>(&self, kind: &'a ProblemKind) -> Filled<'a> {
        let code = || format!("sidewall-{}", kind.code());
        let text = |text: &'a str| Arg::from(text);
        let part_of = |part: Part| Arg::from(self.text(part_name(part), &[]));
        match kind {
            ProblemKind::TooLong { limit } => (code(), vec![("limit", (*limit).into())]),
            ProblemKind::Unknown { text: given, meant: Some(meant) } => {
                ("sidewall-unknown-meant".to_owned(), vec![("text", text(given)), ("meant", text(meant))])
            }
            ProblemKind::Unknown { text: given, .. } | ProblemKind::Name { text: given } => {
                (code(), vec![("text", text(given))])
            }
            ProblemKind::SizeUnfinished { missing } => (format!("{}-{}", code(), size_part(*missing)), Vec::new()),
            ProblemKind::NotAConstruction { found }
            | ProblemKind::AfterSize { found }
            | ProblemKind::NotASpeedSymbol { found }
            | ProblemKind::NotALoadRange { found } => (code(), vec![("found", text(found))]),
            ProblemKind::OutOfRange { part, given_hundredths, lowest, highest } => (
                code(),
                vec![
                    ("part", self.text(&format!("size-{}", size_part(*part)), &[]).into()),
                    ("a-part", self.text(&format!("size-{}-article", size_part(*part)), &[]).into()),
                    ("given", self.hundredths(*part, *given_hundredths).into()),
                    ("lowest", f64::from(*lowest).into()),
                    ("highest", f64::from(*highest).into()),
                ],
            ),
            ProblemKind::Unusual { part, given_hundredths } => (
                code(),
                vec![
                    ("part", self.text(&format!("size-{}", size_part(*part)), &[]).into()),
                    ("given", self.hundredths(*part, *given_hundredths).into()),
                ],
            ),
            ProblemKind::OldSpeedForm { letter } | ProblemKind::LoadRangeUnclear { letter } => {
                (code(), vec![("letter", letter.to_string().into())])
            }
            ProblemKind::LoadIndexOutOfRange { given, highest } => {
                (code(), vec![("given", f64::from(*given).into()), ("highest", f64::from(*highest).into())])
            }
            ProblemKind::DualAboveSingle { single, dual } => {
                (code(), vec![("single", f64::from(*single).into()), ("dual", f64::from(*dual).into())])
            }
            ProblemKind::SlowForZr { max_kmh } => (code(), vec![("kmh", f64::from(*max_kmh).into())]),
            ProblemKind::Repeated { part } | ProblemKind::MaximumUnread { part } => {
                (code(), vec![("part", part_of(*part))])
            }
            ProblemKind::PlyRatingUnusual { given } | ProblemKind::TreadwearStep { given } => {
                (code(), vec![("given", f64::from(*given).into())])
            }
            ProblemKind::TinSymbol { symbol } => {
                let likely = looks_like(*symbol).unwrap_or("");
                (code(), vec![("symbol", symbol.to_string().into()), ("likely", likely.into())])
            }
            ProblemKind::TinMark { mark } => (code(), vec![("mark", mark.to_string().into())]),
            ProblemKind::TinTooLong { symbols } | ProblemKind::TinTooShort { symbols } => {
                (code(), vec![("symbols", (*symbols).into())])
            }
            ProblemKind::TinWeek { week, year, weeks } => {
                let week = Arg::from(f64::from(*week));
                match year {
                    Some(year) => {
                        (code(), vec![("week", week), ("year", year.to_string().into()), ("weeks", (*weeks).into())])
                    }
                    None => ("sidewall-tin-week-any".to_owned(), vec![("week", week)]),
                }
            }
            ProblemKind::TinDecade { years } => {
                (code(), vec![("years", self.list(years.iter().map(ToString::to_string)).into())])
            }
            ProblemKind::NotAGrade { part, .. } => {
                (part_name(*part).replace("part-", "sidewall-not-a-grade-"), Vec::new())
            }
            ProblemKind::UnitsDisagree { part, first, second } => {
                (code(), vec![("part", part_of(*part)), ("first", text(first)), ("second", text(second))])
            }
            ProblemKind::LoadsDisagree { printed_kg, index_kg } => (
                code(),
                vec![("printed", self.kilograms(*printed_kg).into()), ("index", self.kilograms(*index_kg).into())],
            ),
            ProblemKind::Empty
            | ProblemKind::NothingRead
            | ProblemKind::HighLoadForm
            | ProblemKind::NoSpeedSymbol
            | ProblemKind::TinUnclear
            | ProblemKind::TinMissing
            | ProblemKind::TinNoDate
            | ProblemKind::TinPartial
            | ProblemKind::TinMaybePartial
            | ProblemKind::TinDateOnly
            | ProblemKind::TinNoPrefix
            | ProblemKind::RimUnread
            | ProblemKind::Bracket => (code(), Vec::new()),
        }
    }

    fn kilograms(&self, kg: f64) -> String {
        Load::new(kg.round(), LoadUnit::Kilogram).map_or_else(|_| self.number(kg, 0), |load| self.reading(&load))
    }

    fn millimetres(&self, mm: f64) -> String {
        let span = Reading::new((mm * 10.0).round() / 10.0, SpanUnit::Millimetre);
        span.map_or_else(|_| self.number(mm, 1), |span: Span| self.reading(&span))
    }

    /// What a date code says about a tire's age on a day.
    pub fn tin_age(&self, tin: &Tin, today: Day) -> String {
        let day = |day: Day| Arg::from(day.to_string());
        match (tin.age_on(today), tin.made()) {
            (TinAge::Known { age }, Some(made)) => {
                self.text("tin-age", &[("from", day(made.from)), ("to", day(made.to)), ("age", self.age(age).into())])
            }
            (TinAge::Between { least, most }, _) => {
                self.text("tin-age-between", &[("least", self.age(least).into()), ("most", self.age(most).into())])
            }
            (TinAge::NotYetMade { made }, _) => {
                self.text("tin-age-not-yet", &[("from", day(made.from)), ("to", day(made.to))])
            }
            _ => self.text("tin-age-unknown", &[]),
        }
    }
}

impl Say for Problem {
    fn say(&self, words: &Words) -> String {
        let (id, args) = words.sidewall_filled(&self.kind);
        words.text(&id, &args)
    }
}

impl Say for Change {
    fn say(&self, words: &Words) -> String {
        let loads = |from: f64, to: f64| [("from", words.kilograms(from).into()), ("to", words.kilograms(to).into())];
        match self.kind {
            ChangeKind::DiameterUnknown => words.text("change-diameter-unknown", &[]),
            ChangeKind::Diameter { percent, threshold_percent } => {
                let way = words.text(if percent > 0.0 { "change-larger" } else { "change-smaller" }, &[]);
                let by = words.number(percent.abs(), 1);
                let threshold = words.number(threshold_percent, 1);
                words
                    .text("change-diameter", &[("by", by.into()), ("way", way.into()), ("threshold", threshold.into())])
            }
            ChangeKind::Rim { from_in, to_in } => {
                let (from, to) = (words.number(from_in, 1), words.number(to_in, 1));
                words.text("change-rim", &[("from", from.into()), ("to", to.into())])
            }
            ChangeKind::Width { from_mm, to_mm } => {
                let (from, to) = (words.millimetres(from_mm), words.millimetres(to_mm));
                words.text("change-width", &[("from", from.into()), ("to", to.into())])
            }
            ChangeKind::LoadLower { from_kg, to_kg } => words.text("change-load-lower", &loads(from_kg, to_kg)),
            ChangeKind::DualLoadLower { from_kg, to_kg } => {
                words.text("change-dual-load-lower", &loads(from_kg, to_kg))
            }
            ChangeKind::LoadUnknown => words.text("change-load-unknown", &[]),
            ChangeKind::SpeedLower { from_kmh, to_kmh } => {
                let (from, to) = (words.kmh(f64::from(from_kmh)), words.kmh(f64::from(to_kmh)));
                words.text("change-speed-lower", &[("from", from.into()), ("to", to.into())])
            }
            ChangeKind::SpeedUnknown => words.text("change-speed-unknown", &[]),
            ChangeKind::Construction { from, to } => {
                let radial = from == "R" || to == "R";
                words.text(if radial { "change-construction" } else { "change-construction-belted" }, &[])
            }
            ChangeKind::LoadClass => words.text("change-load-class", &[]),
            ChangeKind::Service { from, to } => {
                let named = |letters: Option<&str>| {
                    letters.map_or_else(|| words.text("change-service-none", &[]), str::to_owned)
                };
                words.text("change-service", &[("from", named(from).into()), ("to", named(to).into())])
            }
            ChangeKind::RunFlat => words.text("change-run-flat", &[]),
        }
    }
}
