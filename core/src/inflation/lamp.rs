use serde::Serialize;

use crate::measure::{Misread, Pressure, PressureUnit};

use super::gas::gauge;

/// The share of the placard at which the warning lamp must light (49 CFR 571.138
/// S4.2(a), read in a copy).
const LAMP_SHARE: f64 = 0.75;

/// The pressure at which a tire-pressure warning lamp must light at the latest:
/// 25 % under the placard, or the rule's floor for the tire where that is higher
/// (49 CFR 571.138 S4.2(a)). In the placard's unit.
///
/// The floors stand in the rule's Table 1, which was not read, so the caller
/// gives one when known. **Not a service limit**: a tire between this and the
/// placard is low, lamp or not.
///
/// ```
/// use lugbook::inflation::lamp_threshold;
/// assert_eq!(lamp_threshold("35 psi".parse()?, None)?.to_string(), "26.25 psi");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
///
/// # Errors
/// Never for a placard that is a pressure; the conversion is checked all the same.
pub fn lamp_threshold(placard: Pressure, floor: Option<Pressure>) -> Result<Pressure, Misread> {
    let under = Pressure::new(placard.value() * LAMP_SHARE, placard.unit())?;
    match floor {
        Some(floor) if floor > under => gauge(floor.in_unit(PressureUnit::Kilopascal), placard.unit()),
        _ => Ok(under),
    }
}

/// How a cold reading stands to the placard. The lamp plays no part in *at or above*.
///
/// ```
/// use lugbook::inflation::{Standing, standing};
/// assert_eq!(standing("26 psi".parse()?, "35 psi".parse()?, None)?, Standing::LowWithLamp);
/// assert_eq!(standing("35 psi".parse()?, "35 psi".parse()?, None)?, Standing::AtPlacard);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// At the placard or above.
    AtPlacard,
    /// Below the placard, though the lamp need not light yet.
    Low,
    /// So low that the lamp must light.
    LowWithLamp,
}

/// How a cold reading stands to the placard.
///
/// ```
/// use lugbook::inflation::{standing, Standing};
/// assert_eq!(standing("30 psi".parse()?, "35 psi".parse()?, None)?, Standing::Low);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
///
/// # Errors
/// As [`lamp_threshold`].
pub fn standing(cold: Pressure, placard: Pressure, floor: Option<Pressure>) -> Result<Standing, Misread> {
    let lamp = lamp_threshold(placard, floor)?;
    Ok(if cold >= placard {
        Standing::AtPlacard
    } else if cold > lamp {
        Standing::Low
    } else {
        Standing::LowWithLamp
    })
}
