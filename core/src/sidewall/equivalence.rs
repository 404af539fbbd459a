//! One tire in the place of another: what changes.

use serde::Serialize;

use crate::source::Source;

use super::answer::figure;
use super::marking::Marking;
use super::service::Service;
use super::size::{Size, Use};

/// How far the diameter may differ before it is worth a word, percent
/// (common practice, no source).
pub const DIAMETER_WATCH_PERCENT: f64 = 2.0;
/// How far before it is a plain warning, percent (common practice, no source).
pub const DIAMETER_WARN_PERCENT: f64 = 3.0;

/// What one size changes against another.
///
/// Figures go from the first tire, the one the vehicle is made for, to the
/// second. Unknown is null in data.
///
/// ```
/// use lugbook::sidewall::{equivalence, parse};
/// let change = equivalence(&parse("205/55R16 91V"), &parse("225/45R17 91W"));
/// assert!((change.difference_percent.unwrap() - 0.380).abs() < 0.001);
/// assert!((change.speedometer.unwrap() - 100.380).abs() < 0.001);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Equivalence {
    /// Overall diameters, mm; null for a size without aspect.
    pub diameter_mm: [Diameter; 2],
    /// How much larger the second diameter is, percent of the first.
    #[serde(serialize_with = "figure")]
    pub difference_percent: Option<f64>,
    /// The true speed when the speedometer shows 100 and was right before:
    /// 100 × second diameter / first.
    #[serde(serialize_with = "figure")]
    pub speedometer: Option<f64>,
    /// What speaks against the change, or for looking again.
    pub findings: Vec<Change>,
}

/// An overall diameter in mm, or unknown.
///
/// ```
/// use lugbook::sidewall::{equivalence, parse};
/// let change = equivalence(&parse("195R14C"), &parse("205/55R16"));
/// assert_eq!(change.diameter_mm[0].0, None, "a size without aspect does not say its diameter");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Diameter(#[serde(serialize_with = "figure")] pub Option<f64>);

/// How much a change matters.
///
/// ```
/// use lugbook::sidewall::{Weight, equivalence, parse};
/// let change = equivalence(&parse("205/55R16 91V"), &parse("205/55R16 87V"));
/// assert_eq!(change.findings[0].weight, Weight::Warning);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// Good to know.
    Note,
    /// Look again before doing it.
    Warning,
}

/// One thing that changes.
///
/// ```
/// use lugbook::sidewall::{ChangeKind, equivalence, parse};
/// let change = equivalence(&parse("205/55R16 91V"), &parse("205/55R16 87V"));
/// assert_eq!(change.findings[0].kind, ChangeKind::LoadLower { from_kg: 615.0, to_kg: 545.0 });
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Change {
    /// What changes, with its figures.
    #[serde(flatten)]
    pub kind: ChangeKind,
    /// How much it matters.
    pub weight: Weight,
    /// Where that comes from.
    pub source: Source,
}

/// What changes from the first tire to the second.
///
/// ```
/// use lugbook::sidewall::{ChangeKind, equivalence, parse};
/// let change = equivalence(&parse("205/55R16"), &parse("225/45R17"));
/// assert!(change.findings.iter().any(|found| found.kind == ChangeKind::Rim { from_in: 16.0, to_in: 17.0 }));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum ChangeKind {
    /// A size without aspect: its diameter is not in the size.
    DiameterUnknown,
    /// The diameter changes by more than is usual.
    Diameter {
        /// Percent of the first.
        percent: f64,
        /// The threshold it passed, percent.
        threshold_percent: f64,
    },
    /// Another rim diameter: other wheels are needed.
    Rim {
        /// First, in.
        from_in: f64,
        /// Second, in.
        to_in: f64,
    },
    /// Another section width: rim width and clearance are to be checked.
    Width {
        /// First, mm.
        from_mm: f64,
        /// Second, mm.
        to_mm: f64,
    },
    /// The second carries less.
    LoadLower {
        /// First, kg.
        from_kg: f64,
        /// Second, kg.
        to_kg: f64,
    },
    /// The second carries less side by side.
    DualLoadLower {
        /// First, kg.
        from_kg: f64,
        /// Second, kg.
        to_kg: f64,
    },
    /// The load of one of the two is not known.
    LoadUnknown,
    /// The second has a lower speed symbol.
    SpeedLower {
        /// First, km/h.
        from_kmh: u16,
        /// Second, km/h.
        to_kmh: u16,
    },
    /// The speed symbol of one of the two is not known.
    SpeedUnknown,
    /// Radial in the place of diagonal, or the other way about: never on one
    /// axle (Maryland COMAR 11.22.04.06).
    Construction {
        /// First: `R`, `D` or `B`.
        from: &'static str,
        /// Second: `R`, `D` or `B`.
        to: &'static str,
    },
    /// Another load class: the placard pressure does not hold for it.
    LoadClass,
    /// A passenger size in the place of a light-truck or commercial one, or the
    /// like: another kind of service.
    Service {
        /// First, as its letters say.
        from: Option<&'static str>,
        /// Second, as its letters say.
        to: Option<&'static str>,
    },
    /// A run-flat structure on one of the two only.
    RunFlat,
}

const COMAR: Source =
    Source::read(crate::source::Grade::Rule, "Maryland COMAR 11.22.04.06, bias and radial mixed on one axle");

/// What changes when the second tire stands in the place of the first. Each
/// marking may lack parts; what can't be compared is said.
///
/// ```
/// use lugbook::sidewall::{equivalence, parse};
/// let change = equivalence(&parse("205/55R16 91V"), &parse("225/45R17 91W"));
/// assert_eq!(change.diameter_mm.map(|diameter| diameter.0.map(f64::round)), [Some(632.0), Some(634.0)]);
/// ```
pub fn equivalence(first: &Marking, second: &Marking) -> Equivalence {
    let (Some(a), Some(b)) = (&first.size, &second.size) else {
        return Equivalence {
            diameter_mm: [first, second].map(|m| Diameter(m.size.as_ref().and_then(Size::overall_diameter_mm))),
            difference_percent: None,
            speedometer: None,
            findings: vec![change(ChangeKind::DiameterUnknown, Weight::Warning, Source::GEOMETRY)],
        };
    };
    let mut findings = Vec::new();
    let diameters = (a.overall_diameter_mm(), b.overall_diameter_mm());
    let ratio = match diameters {
        (Some(from), Some(to)) if from > 0.0 => Some(to / from),
        _ => None,
    };
    let difference_percent = ratio.map(|r| (r - 1.0) * 100.0);
    diameter_findings(difference_percent, &mut findings);
    size_findings(a, b, &mut findings);
    service_findings(first.service.as_ref(), second.service.as_ref(), &mut findings);
    if first.load_class() != second.load_class() {
        findings.push(change(ChangeKind::LoadClass, Weight::Warning, Source::PRACTICE));
    }
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    Equivalence {
        diameter_mm: [Diameter(diameters.0), Diameter(diameters.1)],
        difference_percent,
        speedometer: ratio.map(|r| r * 100.0),
        findings,
    }
}

fn change(kind: ChangeKind, weight: Weight, source: Source) -> Change {
    Change { kind, weight, source }
}

fn diameter_findings(difference_percent: Option<f64>, findings: &mut Vec<Change>) {
    let Some(percent) = difference_percent else {
        findings.push(change(ChangeKind::DiameterUnknown, Weight::Warning, Source::GEOMETRY));
        return;
    };
    for (threshold_percent, weight) in
        [(DIAMETER_WARN_PERCENT, Weight::Warning), (DIAMETER_WATCH_PERCENT, Weight::Note)]
    {
        if percent.abs() > threshold_percent {
            findings.push(change(ChangeKind::Diameter { percent, threshold_percent }, weight, Source::PRACTICE));
            return;
        }
    }
}

fn size_findings(a: &Size, b: &Size, findings: &mut Vec<Change>) {
    if a.rim_in() != b.rim_in() {
        let kind = ChangeKind::Rim { from_in: a.rim_in(), to_in: b.rim_in() };
        findings.push(change(kind, Weight::Warning, Source::GEOMETRY));
    }
    if let (Some(from_mm), Some(to_mm)) = (a.width_mm(), b.width_mm())
        && (from_mm - to_mm).abs() > 0.05
    {
        findings.push(change(ChangeKind::Width { from_mm, to_mm }, Weight::Note, Source::PRACTICE));
    }
    if a.construction() != b.construction() {
        let kind = ChangeKind::Construction { from: a.construction().letter(), to: b.construction().letter() };
        findings.push(change(kind, Weight::Warning, COMAR));
    }
    let (from, to) = (a.made_for(), b.made_for());
    let passenger = |made_for: Option<Use>| matches!(made_for, None | Some(Use::Passenger));
    if from != to && !(passenger(from) && passenger(to)) {
        let kind = ChangeKind::Service { from: from.map(Use::letters), to: to.map(Use::letters) };
        findings.push(change(kind, Weight::Warning, Source::PRACTICE));
    }
    if a.is_run_flat() != b.is_run_flat() {
        findings.push(change(ChangeKind::RunFlat, Weight::Warning, Source::MEMORY));
    }
}

fn service_findings(first: Option<&Service>, second: Option<&Service>, findings: &mut Vec<Change>) {
    let loads = (first.and_then(Service::load_kg), second.and_then(Service::load_kg));
    match loads {
        (Some(from_kg), Some(to_kg)) if to_kg < from_kg => {
            findings.push(change(ChangeKind::LoadLower { from_kg, to_kg }, Weight::Warning, Source::PRACTICE));
        }
        (Some(_), Some(_)) => {}
        _ => findings.push(change(ChangeKind::LoadUnknown, Weight::Note, Source::PRACTICE)),
    }
    let duals = (first.and_then(Service::load_kg_dual), second.and_then(Service::load_kg_dual));
    if let (Some(from_kg), Some(to_kg)) = duals
        && to_kg < from_kg
    {
        findings.push(change(ChangeKind::DualLoadLower { from_kg, to_kg }, Weight::Warning, Source::PRACTICE));
    }
    match (first.and_then(Service::max_kmh), second.and_then(Service::max_kmh)) {
        (Some(from_kmh), Some(to_kmh)) if to_kmh < from_kmh => {
            findings.push(change(ChangeKind::SpeedLower { from_kmh, to_kmh }, Weight::Warning, Source::PRACTICE));
        }
        (Some(_), Some(_)) => {}
        _ => findings.push(change(ChangeKind::SpeedUnknown, Weight::Note, Source::PRACTICE)),
    }
}
