use serde::{Deserialize, Serialize};

use crate::measure::Pressure;
use crate::vehicle::Place;

/// What the placard prints for the tires of one axle, or for the spare.
///
/// ```
/// use lugbook::limits::PlacardTire;
/// let tire = PlacardTire { cold: "35 psi".parse()?, full_load: "41 psi".parse().ok(), size: None };
/// assert!(tire.full_load.unwrap() > tire.cold);
/// # Ok::<(), lugbook::measure::Misread>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PlacardTire {
    /// The cold pressure, in the unit as printed.
    pub cold: Pressure,
    /// The cold pressure at full load, when printed apart.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub full_load: Option<Pressure>,
    /// The size as printed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<String>,
}

/// A vehicle's pressure placard, as printed on the door post or in the manual.
///
/// Entered once for a vehicle model; the record that holds it names the photo of the label.
///
/// ```
/// use lugbook::limits::{Placard, PlacardTire};
/// use lugbook::vehicle::Place;
/// let tire = |text: &str| text.parse().ok().map(|cold| PlacardTire { cold, full_load: None, size: None });
/// let placard = Placard { axles: vec![tire("35 psi"), tire("38 psi")], ..Placard::default() };
/// let rear = placard.at(Place::parse("RL").unwrap()).unwrap();
/// assert_eq!(rear.cold.to_string(), "38 psi");
/// ```
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Placard {
    /// Axle by axle from the front; `None` where nothing is printed or readable.
    pub axles: Vec<Option<PlacardTire>>,
    /// The spare.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spare: Option<PlacardTire>,
    /// Where it was read, as told.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub source: String,
}

impl Placard {
    /// What is printed for a place: by axle, never by where a tire came from.
    ///
    /// ```
    /// use lugbook::limits::Placard;
    /// use lugbook::vehicle::Place;
    /// // Nothing was read of it: no pressure is made up.
    /// assert_eq!(Placard::default().at(Place::Spare), None);
    /// ```
    pub fn at(&self, place: Place) -> Option<&PlacardTire> {
        match place {
            Place::Spare => self.spare.as_ref(),
            Place::Wheel(position) => self.axles.get(usize::from(position.axle).checked_sub(1)?)?.as_ref(),
        }
    }
}
