//! A marking as data: the object that stands for it in JSON.

use serde::{Serialize, Serializer};

use crate::calendar::Day;
use crate::measure::Unit;

use super::marking::Marking;
use super::maximum::Printed;
use super::problem::{ProblemKind, Severity};
use super::service::Service;
use super::size::Size;
use super::tin::Tin;

/// A marking and what follows from it, as data. Unknown is null, never missing.
///
/// ```
/// use lugbook::sidewall::{self, Answer};
/// let answer = Answer::of(&sidewall::parse("225/45R17 91W DOT 1HKB 9FLP 0723"));
/// let json = serde_json::to_value(&answer)?;
/// assert_eq!(json["size"]["overall_diameter_mm"], 634.3);
/// assert_eq!(json["size"]["use"], serde_json::Value::Null);
/// assert_eq!(json["tin"]["made"]["from"], "2023-02-12");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// The marking in its canonical form.
    pub text: String,
    /// Size designation.
    pub size: Option<SizeAnswer>,
    /// Service description.
    pub service: Option<ServiceAnswer>,
    /// Second service description.
    pub second_service: Option<ServiceAnswer>,
    /// Load class code; `standard` also where no load word stands.
    pub load: Option<String>,
    /// Ply rating.
    pub ply_rating: Option<u8>,
    /// Tire identification number.
    pub tin: Option<TinAnswer>,
    /// Uniform tire quality grades.
    pub utqg: Option<UtqgAnswer>,
    /// Maximum load lines.
    pub maximum_loads: Vec<MaximumLoadAnswer>,
    /// Maximum pressure as printed.
    pub maximum_pressure: Option<PrintedAnswer>,
    /// Measuring rim.
    pub rim: Option<RimAnswer>,
    /// Approval marks.
    pub approvals: Vec<String>,
    /// Word codes.
    pub words: Vec<&'static str>,
    /// What was wrong.
    pub problems: Vec<ProblemAnswer>,
}

/// A size as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let size = Answer::of(&parse("225/45R17 91W")).size.unwrap();
/// assert_eq!((size.overall_diameter_mm, size.construction), (Some(634.3), "R"));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SizeAnswer {
    /// Canonical form.
    pub text: String,
    /// `P`, `LT`, `T`, `ST`, `C` or null.
    #[serde(rename = "use")]
    pub made_for: Option<&'static str>,
    /// Nominal section width, mm.
    #[serde(serialize_with = "figure")]
    pub width_mm: Option<f64>,
    /// Aspect ratio, percent.
    pub aspect_percent: Option<u16>,
    /// `R`, `D` or `B`.
    pub construction: &'static str,
    /// Nominal rim diameter, in.
    #[serde(serialize_with = "figure")]
    pub rim_in: Option<f64>,
    /// Height of one sidewall, mm.
    #[serde(serialize_with = "figure")]
    pub section_height_mm: Option<f64>,
    /// Overall diameter, mm.
    #[serde(serialize_with = "figure")]
    pub overall_diameter_mm: Option<f64>,
    /// Circumference of the free tire, mm.
    #[serde(serialize_with = "figure")]
    pub circumference_mm: Option<f64>,
    /// Turns per kilometre at the free radius.
    #[serde(serialize_with = "figure")]
    pub revolutions_per_km: Option<f64>,
    /// Turns per mile at the free radius.
    #[serde(serialize_with = "figure")]
    pub revolutions_per_mile: Option<f64>,
}

/// A service description as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let service = Answer::of(&parse("225/45R17 91W")).service.unwrap();
/// assert_eq!((service.load_kg, service.max_kmh), (Some(615.0), Some(270)));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ServiceAnswer {
    /// Canonical form.
    pub text: String,
    /// Load index for single fitment.
    pub load_index: u16,
    /// Load index for dual fitment.
    pub load_index_dual: Option<u16>,
    /// Load for single fitment, kg.
    #[serde(serialize_with = "figure")]
    pub load_kg: Option<f64>,
    /// Load for dual fitment, kg.
    #[serde(serialize_with = "figure")]
    pub load_kg_dual: Option<f64>,
    /// Speed symbol.
    pub speed_symbol: Option<&'static str>,
    /// The symbol's speed, km/h.
    pub max_kmh: Option<u16>,
    /// Written in brackets: fit for more than that speed.
    pub above: bool,
}

/// A tire identification number as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let tin = Answer::of(&parse("DOT 1HKB 9FLP 0723")).tin.unwrap();
/// assert_eq!((tin.plant.as_deref(), tin.complete), (Some("1H"), true));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TinAnswer {
    /// The symbols, without `DOT` and spaces.
    pub text: String,
    /// `current`, `older`, `retread`, `partial` or `date-only`.
    pub form: &'static str,
    /// Plant code.
    pub plant: Option<String>,
    /// Whether plant and date both stand there.
    pub complete: bool,
    /// The week it was made in.
    pub made: Option<MadeAnswer>,
    /// The years a three-digit date can mean; empty for all other dates.
    pub ambiguous: Vec<i16>,
}

/// A week as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let made = Answer::of(&parse("DOT 1HKB 9FLP 0723")).tin.unwrap().made.unwrap();
/// assert_eq!(made.from.to_string(), "2023-02-12");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct MadeAnswer {
    /// Its Sunday.
    pub from: Day,
    /// Its Saturday.
    pub to: Day,
}

/// Uniform tire quality grades as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let grades = Answer::of(&parse("TREADWEAR 400 TRACTION AA TEMPERATURE A")).utqg.unwrap();
/// assert_eq!(grades.traction, Some("AA"));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct UtqgAnswer {
    /// Treadwear, a ratio to a reference tire of 100.
    pub treadwear: Option<u16>,
    /// `AA`, `A`, `B` or `C`.
    pub traction: Option<&'static str>,
    /// `A`, `B` or `C`.
    pub temperature: Option<&'static str>,
}

/// A printed figure as data, value and unit as they stand first.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let most = Answer::of(&parse("MAX PRESS 350 KPA (51 PSI)")).maximum_pressure.unwrap();
/// assert_eq!((most.value, most.unit), (Some(350.0), "kPa"));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PrintedAnswer {
    /// The figure.
    #[serde(serialize_with = "figure")]
    pub value: Option<f64>,
    /// Its unit.
    pub unit: &'static str,
}

/// A maximum load line as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let loads = Answer::of(&parse("MAX LOAD 615 KG (1356 LBS)")).maximum_loads;
/// assert_eq!(loads[0].load.value, Some(615.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct MaximumLoadAnswer {
    /// `single`, `dual` or null.
    pub fitment: Option<&'static str>,
    /// The load as printed.
    pub load: PrintedAnswer,
    /// The cold pressure it holds at.
    pub at: Option<PrintedAnswer>,
}

/// A measuring rim as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let rim = Answer::of(&parse("185/65R14 RIM 5 1/2J")).rim.unwrap();
/// assert_eq!((rim.width_in, rim.contour), (Some(5.5), Some("J")));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct RimAnswer {
    /// Width between the flanges, in.
    #[serde(serialize_with = "figure")]
    pub width_in: Option<f64>,
    /// Flange contour letters.
    pub contour: Option<&'static str>,
}

/// A problem as data.
///
/// ```
/// use lugbook::sidewall::{Answer, parse};
/// let problems = Answer::of(&parse("225/45X17")).problems;
/// assert_eq!((problems[0].at, problems[0].len), (6, 1));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ProblemAnswer {
    /// First character, counted from 0.
    pub at: usize,
    /// How many characters.
    pub len: usize,
    /// The kind's code, and its figures beside it.
    #[serde(flatten)]
    pub kind: ProblemKind,
    /// How much it matters.
    pub severity: Severity,
}

/// A bare number: whole where it is whole, at most four decimals.
pub(super) fn figure<S: Serializer>(value: &Option<f64>, serializer: S) -> Result<S::Ok, S::Error> {
    let Some(value) = value else { return serializer.serialize_none() };
    let rounded = (value * 10_000.0).round() / 10_000.0;
    if rounded.fract() == 0.0 && rounded.abs() < 9e15 {
        #[expect(clippy::cast_possible_truncation, reason = "whole and far below the limit")]
        return serializer.serialize_i64(rounded as i64);
    }
    serializer.serialize_f64(rounded)
}

fn printed<U: Unit>(printed: &Printed<U>) -> PrintedAnswer {
    PrintedAnswer { value: Some(printed.first.value()), unit: printed.first.unit().code() }
}

impl SizeAnswer {
    /// A size as data.
    ///
    /// ```
    /// use lugbook::sidewall::{Size, SizeAnswer};
    /// let size: Size = "225/45R17".parse()?;
    /// assert_eq!(SizeAnswer::of(&size).section_height_mm, Some(101.25));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn of(size: &Size) -> Self {
        Self {
            text: size.to_string(),
            made_for: size.made_for().map(super::Use::letters),
            width_mm: size.width_mm(),
            aspect_percent: size.aspect_percent(),
            construction: size.construction().letter(),
            rim_in: Some(size.rim_in()),
            section_height_mm: size.section_height_mm(),
            overall_diameter_mm: size.overall_diameter_mm(),
            circumference_mm: size.circumference_mm(),
            revolutions_per_km: size.revolutions_per_km(),
            revolutions_per_mile: size.revolutions_per_mile(),
        }
    }
}

impl ServiceAnswer {
    /// A service description as data.
    ///
    /// ```
    /// use lugbook::sidewall::{Service, ServiceAnswer};
    /// let service: Service = "109/107T".parse()?;
    /// assert_eq!(ServiceAnswer::of(&service).load_index_dual, Some(107));
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn of(service: &Service) -> Self {
        Self {
            text: service.to_string(),
            load_index: service.load_index,
            load_index_dual: service.load_index_dual,
            load_kg: service.load_kg(),
            load_kg_dual: service.load_kg_dual(),
            speed_symbol: service.speed_symbol.map(super::SpeedSymbol::as_str),
            max_kmh: service.max_kmh(),
            above: service.above,
        }
    }
}

impl TinAnswer {
    /// A number as data.
    ///
    /// ```
    /// use lugbook::sidewall::{Tin, TinAnswer};
    /// let tin: Tin = "DOT 1HKB 9FLP 317".parse()?;
    /// assert_eq!(TinAnswer::of(&tin).ambiguous, [1977, 1987, 1997]);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn of(tin: &Tin) -> Self {
        Self {
            text: tin.text().to_owned(),
            form: tin.form().code(),
            plant: tin.plant().map(str::to_owned),
            complete: tin.complete(),
            made: tin.made().map(|made| MadeAnswer { from: made.from, to: made.to }),
            ambiguous: tin.ambiguous(),
        }
    }
}

impl Answer {
    /// A marking as data.
    ///
    /// ```
    /// use lugbook::sidewall::{Answer, parse};
    /// assert!(Answer::of(&parse("round and black")).size.is_none());
    /// ```
    pub fn of(marking: &Marking) -> Self {
        Self {
            text: marking.to_string(),
            size: marking.size.as_ref().map(SizeAnswer::of),
            service: marking.service.as_ref().map(ServiceAnswer::of),
            second_service: marking.second_service.as_ref().map(ServiceAnswer::of),
            load: marking.load_class().map(super::LoadClass::code),
            ply_rating: marking.ply_rating,
            tin: marking.tin.as_ref().map(TinAnswer::of),
            utqg: marking.utqg.map(|utqg| UtqgAnswer {
                treadwear: utqg.treadwear,
                traction: utqg.traction.map(super::Traction::as_str),
                temperature: utqg.temperature.map(super::TemperatureGrade::as_str),
            }),
            maximum_loads: marking
                .maximum_loads
                .iter()
                .map(|line| MaximumLoadAnswer {
                    fitment: line.fitment.map(|fitment| match fitment {
                        super::Fitment::Single => "single",
                        super::Fitment::Dual => "dual",
                    }),
                    load: printed(&line.load),
                    at: line.at.as_ref().map(printed),
                })
                .collect(),
            maximum_pressure: marking.maximum_pressure.as_ref().map(printed),
            rim: marking.rim.map(|rim| RimAnswer { width_in: Some(rim.width_in()), contour: rim.contour() }),
            approvals: marking.approvals.iter().map(|approval| approval.text().to_owned()).collect(),
            words: marking.words.iter().map(|word| word.code()).collect(),
            problems: marking
                .problems
                .iter()
                .map(|p| ProblemAnswer { at: p.at, len: p.len, kind: p.kind.clone(), severity: p.severity })
                .collect(),
        }
    }
}
