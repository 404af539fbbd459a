use crate::measure::{Misread, Pressure, PressureUnit, Temperature, TemperatureUnit};

/// The standard atmosphere, kPa (exact by definition). Weather and height move
/// the real one by some percent, which moves an answer by far less than a gauge shows.
pub const ATMOSPHERE_KPA: f64 = 101.325;

const KELVIN: f64 = 273.15;

/// The gauge pressure of the same air at another temperature, the volume unchanged:
/// (Pg + Pa) · T2 / T1 − Pa, pressures in kPa, temperatures absolute (K).
///
/// The gas law at constant volume; Pa is [`ATMOSPHERE_KPA`]. The answer has the
/// unit of the reading.
///
/// ```
/// use lugbook::inflation::at_temperature;
/// let cold = at_temperature("35 psi".parse()?, "70 F".parse()?, "20 F".parse()?)?;
/// assert_eq!((cold.value() * 100.0).round() / 100.0, 30.31);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
///
/// # Errors
/// When the answer is no gauge pressure: below the atmosphere or out of range.
pub fn at_temperature(gauge: Pressure, from: Temperature, to: Temperature) -> Result<Pressure, Misread> {
    let kelvin = |t: Temperature| t.in_unit(TemperatureUnit::Celsius) + KELVIN;
    let ratio = kelvin(to) / kelvin(from);
    let kpa = (gauge.in_unit(PressureUnit::Kilopascal) + ATMOSPHERE_KPA) * ratio - ATMOSPHERE_KPA;
    self::gauge(kpa, gauge.unit())
}

/// A gauge pressure from kilopascals, told in a unit.
///
/// ```
/// use lugbook::{inflation::gauge, measure::PressureUnit};
/// assert_eq!(gauge(250.0, PressureUnit::Bar)?.to_string(), "2.5 bar");
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
///
/// # Errors
/// When it is no gauge pressure.
pub fn gauge(kpa: f64, unit: PressureUnit) -> Result<Pressure, Misread> {
    Ok(Pressure::new(kpa, PressureUnit::Kilopascal)?.to_unit(unit))
}
