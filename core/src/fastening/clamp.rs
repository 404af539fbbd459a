use serde::Serialize;

use crate::fastener::Thread;
use crate::measure::{Torque, TorqueUnit};
use crate::source::{Grade, Source};

/// The finish of a thread, as a published table of nut factors tells them apart.
///
/// ```
/// use lugbook::fastening::{Finish, nut_factors};
/// let of = |finish| nut_factors().iter().find(|factor| factor.finish == finish).unwrap();
/// assert!(of(Finish::MachineOil).high > of(Finish::DrySteel).low, "the ranges overlap");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Finish {
    /// Dry steel on dry steel.
    DrySteel,
    /// Machine oil on steel.
    MachineOil,
    /// Cadmium.
    Cadmium,
    /// Phosphate and oil.
    PhosphateAndOil,
    /// Zinc.
    Zinc,
    /// Stainless on stainless.
    Stainless,
    /// Zinc flake.
    ZincFlake,
}

/// The range of nut factors K of a finish.
///
/// ```
/// use lugbook::fastening::nut_factors;
/// assert!(nut_factors().iter().all(|factor| factor.low < factor.high));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct NutFactor {
    /// The finish.
    pub finish: Finish,
    /// Lowest K, without unit.
    pub low: f64,
    /// Highest K, without unit.
    pub high: f64,
}

const FACTORS: [NutFactor; 7] = [
    NutFactor { finish: Finish::DrySteel, low: 0.18, high: 0.27 },
    NutFactor { finish: Finish::MachineOil, low: 0.10, high: 0.26 },
    NutFactor { finish: Finish::Cadmium, low: 0.15, high: 0.19 },
    NutFactor { finish: Finish::PhosphateAndOil, low: 0.15, high: 0.22 },
    NutFactor { finish: Finish::Zinc, low: 0.17, high: 0.35 },
    NutFactor { finish: Finish::Stainless, low: 0.30, high: 0.50 },
    NutFactor { finish: Finish::ZincFlake, low: 0.16, high: 0.32 },
];

/// The ranges of nut factors by finish (grade S: one seller's engineering data).
///
/// They overlap widely, which is why clamp load is information only.
///
/// ```
/// use lugbook::fastening::{nut_factors, Finish};
/// let dry = nut_factors().iter().find(|factor| factor.finish == Finish::DrySteel).unwrap();
/// assert_eq!((dry.low, dry.high), (0.18, 0.27));
/// ```
pub fn nut_factors() -> &'static [NutFactor] {
    &FACTORS
}

/// How far one tightening's clamp load scatters around the computed one, as a
/// share (grade S: about 30 percent of the preload).
pub const CLAMP_SCATTER: f64 = 0.30;

/// The clamp load that a torque gives, as a range. Information only: nothing is decided by it.
///
/// ```
/// use lugbook::fastening::{Finish, NutFactor, clamp_load};
/// let oiled = NutFactor { finish: Finish::MachineOil, low: 0.15, high: 0.15 };
/// let load = clamp_load(&"135 N.m".parse()?, "M12 x 1.5".parse()?, &oiled).unwrap();
/// // 103 % of a 10.9 stud's proof load: oil on a dry specification.
/// assert!(load.high_kn > 74.9 && load.scatter == 0.30);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ClampLoad {
    /// At the highest nut factor, kN.
    pub low_kn: f64,
    /// At the lowest nut factor, kN.
    pub high_kn: f64,
    /// How far a single tightening scatters around either, as a share.
    pub scatter: f64,
    /// How far to trust the nut factors.
    pub source: Source,
}

/// Clamp load F = T / (K·d): T in N·m, d the nominal diameter in m, K the nut
/// factor without unit; the answer in kN, from the highest K to the lowest.
///
/// The formula is the usual torque-tension relation; K ranges are grade S, and
/// [`CLAMP_SCATTER`] comes on top.
///
/// ```
/// use lugbook::fastening::{clamp_load, Finish, NutFactor};
/// let dry = NutFactor { finish: Finish::DrySteel, low: 0.20, high: 0.20 };
/// let load = clamp_load(&"135 N.m".parse()?, "M12 x 1.5".parse()?, &dry).unwrap();
/// assert_eq!((load.low_kn * 10.0).round(), 563.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// `None` when a nut factor is not above zero.
pub fn clamp_load(torque: &Torque, thread: Thread, factor: &NutFactor) -> Option<ClampLoad> {
    if !(factor.low > 0.0 && factor.high >= factor.low) {
        return None;
    }
    let per_factor = torque.in_unit(TorqueUnit::NewtonMetre) / thread.diameter_mm();
    Some(ClampLoad {
        low_kn: per_factor / factor.high,
        high_kn: per_factor / factor.low,
        scatter: CLAMP_SCATTER,
        source: Source::read(Grade::Secondary, "engineering data on nut factors"),
    })
}

/// The strength class marked on a metric bolt or stud. A wheel stud's is rarely known.
///
/// ```
/// use lugbook::fastening::{PropertyClass, proof_load_kn};
/// let proof = |class| proof_load_kn("M12 x 1.5".parse().ok()?, class);
/// assert!(proof(PropertyClass::Class8_8) < proof(PropertyClass::Class10_9));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum PropertyClass {
    /// 8.8.
    #[serde(rename = "8.8")]
    Class8_8,
    /// 10.9.
    #[serde(rename = "10.9")]
    Class10_9,
    /// 12.9.
    #[serde(rename = "12.9")]
    Class12_9,
}

/// Proof load in kN: proof stress times stress area. `None` when the pitch is not known.
///
/// Proof stresses 580 (8.8 up to 16 mm) and 600 (8.8 above), 830 and 970 MPa,
/// read from a printed ISO 898-1 proof-load table (grade S).
///
/// ```
/// use lugbook::fastening::{proof_load_kn, PropertyClass};
/// let proof = proof_load_kn("M12 x 1.5".parse()?, PropertyClass::Class10_9).unwrap();
/// assert_eq!((proof * 10.0).round(), 731.0);
/// # Ok::<(), lugbook::fastener::BadThread>(())
/// ```
pub fn proof_load_kn(thread: Thread, class: PropertyClass) -> Option<f64> {
    let stress_mpa = match class {
        PropertyClass::Class8_8 if thread.diameter_mm() <= 16.0 => 580.0,
        PropertyClass::Class8_8 => 600.0,
        PropertyClass::Class10_9 => 830.0,
        PropertyClass::Class12_9 => 970.0,
    };
    thread.stress_area_mm2().map(|area| area * stress_mpa / 1000.0)
}
