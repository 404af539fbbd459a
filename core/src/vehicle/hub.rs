//! What was seen and turned at a hub, to find which axles drive.

use serde::{Deserialize, Serialize};

use super::Side;

/// What looking at one hub showed.
///
/// ```
/// use lugbook::vehicle::hub::Hub;
/// // A closed bearing unit says nothing from outside, so it is a sight of its own.
/// assert_ne!(Hub::CaplessUnit, Hub::NoShaft);
/// assert_eq!(Hub::default(), Hub::NotLooked);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hub {
    /// Nobody looked.
    #[default]
    NotLooked,
    /// A cap or cover hides the middle of the hub.
    Covered,
    /// A closed bearing unit without a cap: a driven and a free-rolling one look the same from outside.
    CaplessUnit,
    /// From outside, a splined end or an axle nut in the middle of the hub.
    ShaftEnd,
    /// From behind, a shaft that runs into the hub, or an axle tube that comes from a differential housing.
    Shaft,
    /// From behind, nothing runs into the hub.
    NoShaft,
}

/// What the gearbox was set to while a wheel was turned by hand.
///
/// ```
/// use lugbook::vehicle::hub::Gear;
/// assert_eq!(serde_json::from_str::<Gear>("\"in-gear\"")?, Gear::InGear);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Gear {
    /// Neutral.
    Neutral,
    /// Park: the gearbox output is locked.
    Park,
    /// A gear of a manual gearbox: the standing engine holds the output.
    InGear,
}

/// The parking brake while a wheel was turned by hand.
///
/// ```
/// use lugbook::vehicle::hub::ParkingBrake;
/// // A set brake holds any wheel, so it is asked.
/// assert_eq!(serde_json::from_str::<ParkingBrake>("\"not-known\"")?, ParkingBrake::NotKnown);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ParkingBrake {
    /// Released.
    Released,
    /// Set.
    Set,
    /// Nobody knows.
    NotKnown,
}

/// Which wheels of the axle were off the ground.
///
/// ```
/// use lugbook::vehicle::hub::OffGround;
/// assert_eq!(serde_json::from_str::<OffGround>("\"both\"")?, OffGround::Both);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OffGround {
    /// None of them.
    None,
    /// One end.
    One,
    /// Both ends.
    Both,
}

/// What the wheel did under the hand.
///
/// ```
/// use lugbook::vehicle::hub::WheelMotion;
/// assert_eq!(serde_json::from_str::<WheelMotion>("\"held\"")?, WheelMotion::Held);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WheelMotion {
    /// It turned.
    Turns,
    /// It was held.
    Held,
}

/// What the shaft did while the wheel turned.
///
/// ```
/// use lugbook::vehicle::hub::ShaftMotion;
/// assert_eq!(serde_json::from_str::<ShaftMotion>("\"with-wheel\"")?, ShaftMotion::WithWheel);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ShaftMotion {
    /// It turned with the wheel.
    WithWheel,
    /// It stayed still.
    Still,
    /// Nobody watched it, or it can't be seen.
    NotSeen,
}

/// What the wheel on the other end of the axle did.
///
/// ```
/// use lugbook::vehicle::hub::Opposite;
/// // What an open differential does.
/// assert_eq!(serde_json::from_str::<Opposite>("\"other-way\"")?, Opposite::OtherWay);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Opposite {
    /// It turned the other way.
    OtherWay,
    /// It turned the same way.
    SameWay,
    /// It stayed still.
    Still,
    /// Nobody watched it.
    NotTried,
}

/// The differential of the axle, when its kind is known.
///
/// ```
/// use lugbook::vehicle::hub::Differential;
/// assert_eq!(Differential::default(), Differential::NotKnown);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Differential {
    /// Open.
    Open,
    /// Limited-slip or locking.
    Locking,
    /// Not known.
    #[default]
    NotKnown,
}

/// Free-wheeling hubs: couplings at the wheel that the driver, or air or vacuum, opens and closes.
///
/// ```
/// use lugbook::vehicle::hub::FreeHubs;
/// assert_eq!(FreeHubs::default(), FreeHubs::NotKnown);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum FreeHubs {
    /// There are none.
    NotFitted,
    /// Fitted, set free.
    Free,
    /// Fitted, locked.
    Locked,
    /// Not known.
    #[default]
    NotKnown,
}

/// A motor of the axle's own.
///
/// ```
/// use lugbook::vehicle::hub::AxleMotor;
/// assert_eq!(AxleMotor::default(), AxleMotor::NotKnown);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum AxleMotor {
    /// The axle has an electric motor of its own.
    Own,
    /// It has none.
    None,
    /// Not known.
    #[default]
    NotKnown,
}

/// The engine, or the vehicle's power where it is electric.
///
/// ```
/// use lugbook::vehicle::hub::Engine;
/// assert_eq!(serde_json::from_str::<Engine>("\"off\"")?, Engine::Off);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Engine {
    /// Off, and the key or card away.
    Off,
    /// Running, or ready to drive.
    Running,
}

/// What one turn of a wheel by hand showed, and how the vehicle stood.
///
/// ```
/// use lugbook::vehicle::hub::{Engine, Gear, OffGround, Opposite, ParkingBrake, ShaftMotion, Turned, WheelMotion};
/// let driven = Turned {
///     gear: Gear::Neutral,
///     brake: ParkingBrake::Released,
///     off_ground: OffGround::Both,
///     engine: Engine::Off,
///     wheel: WheelMotion::Turns,
///     shaft: ShaftMotion::WithWheel,
///     opposite: Opposite::OtherWay,
/// };
/// assert_eq!(driven.shaft, ShaftMotion::WithWheel);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Turned {
    /// The gearbox.
    pub gear: Gear,
    /// The parking brake.
    pub brake: ParkingBrake,
    /// The wheels of this axle.
    pub off_ground: OffGround,
    /// The engine.
    pub engine: Engine,
    /// The wheel under the hand.
    pub wheel: WheelMotion,
    /// Its shaft.
    pub shaft: ShaftMotion,
    /// The opposite wheel.
    pub opposite: Opposite,
}

/// One look at one end of one axle.
///
/// ```
/// use lugbook::vehicle::hub::{Evidence, Hub};
/// use lugbook::vehicle::Side;
/// let look = Evidence::look(2, Side::Left, Hub::NoShaft);
/// assert!(look.turned.is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Evidence {
    /// Axle number from the front, starting at 1.
    pub axle: u8,
    /// Which end.
    pub side: Side,
    /// What the hub showed.
    #[serde(default)]
    pub hub: Hub,
    /// What turning the wheel by hand showed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turned: Option<Turned>,
    /// The differential.
    #[serde(default)]
    pub differential: Differential,
    /// Free-wheeling hubs.
    #[serde(default)]
    pub free_hubs: FreeHubs,
    /// A motor of the axle's own.
    #[serde(default)]
    pub motor: AxleMotor,
}

impl Evidence {
    /// A look at a hub, nothing turned.
    ///
    /// ```
    /// use lugbook::vehicle::hub::{Evidence, Hub};
    /// use lugbook::vehicle::Side;
    /// let look = Evidence::look(1, Side::Left, Hub::Shaft);
    /// assert_eq!((look.axle, look.hub, look.turned), (1, Hub::Shaft, None));
    /// ```
    pub fn look(axle: u8, side: Side, hub: Hub) -> Self {
        Self {
            axle,
            side,
            hub,
            turned: None,
            differential: Differential::NotKnown,
            free_hubs: FreeHubs::NotKnown,
            motor: AxleMotor::NotKnown,
        }
    }

    /// A wheel turned by hand, hub not looked at.
    ///
    /// ```
    /// use lugbook::vehicle::hub::{Engine, Evidence, Gear, Hub, OffGround, Opposite, ParkingBrake, ShaftMotion, Turned, WheelMotion};
    /// use lugbook::vehicle::Side;
    /// let held = Turned {
    ///     gear: Gear::Park,
    ///     brake: ParkingBrake::Released,
    ///     off_ground: OffGround::Both,
    ///     engine: Engine::Off,
    ///     wheel: WheelMotion::Held,
    ///     shaft: ShaftMotion::NotSeen,
    ///     opposite: Opposite::NotTried,
    /// };
    /// assert_eq!(Evidence::turn(1, Side::Left, held).hub, Hub::NotLooked);
    /// ```
    pub fn turn(axle: u8, side: Side, turned: Turned) -> Self {
        Self { turned: Some(turned), ..Self::look(axle, side, Hub::NotLooked) }
    }
}
