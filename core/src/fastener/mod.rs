//! What holds a wheel on: nut or bolt, thread, seat, hex, lock key; the torque
//! that a manual prints for it; the tools and passes that tighten it.
//!
//! What nobody looked at stays unknown. The thread's state (dry or oiled), the
//! seat and the wheel's material are asked, never assumed: published sources
//! contradict each other on lubrication for the same stud.

mod pass;
mod seat;
mod spec;
mod thread;
mod tool;

use serde::{Deserialize, Serialize};

pub use pass::{Layer, Mounting, NutOutcome, Pass, Stage, judge};
pub use seat::{Difference, Fit, Seat, Seating};
pub use spec::{BadSpec, CLASH_PERCENT, Printed, RecheckAt, TorqueSpec, UnitClash};
pub use thread::{BadThread, Series, Thread};
pub use tool::{Bar, Calibration, Gun, Power, Scale, Wrench, accuracy_of};

use crate::measure::Span;

/// A nut on a stud of the hub, or a bolt into the hub.
///
/// ```
/// use lugbook::fastener::{Fastener, Kind};
/// assert_ne!(Fastener::new(Kind::Nut).kind, Kind::Bolt);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// A lug nut on a stud.
    Nut,
    /// A wheel bolt into a threaded hub.
    Bolt,
}

/// Which way the thread tightens.
///
/// ```
/// use lugbook::fastener::{Fastener, Hand, Kind};
/// // The usual one until somebody sees an L on the stud.
/// assert_eq!(Fastener::new(Kind::Nut).hand, Hand::Right);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hand {
    /// Clockwise, the usual one.
    #[default]
    Right,
    /// Counterclockwise: found on the left side of some older cars and trucks (common practice, no source).
    Left,
}

/// What the wheel is made of.
///
/// ```
/// use lugbook::fastener::{Fastener, Kind, Material};
/// let nut = Fastener { wheel: Some(Material::Alloy), ..Fastener::new(Kind::Nut) };
/// assert_eq!(nut.wheel, Some(Material::Alloy));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Material {
    /// Steel.
    Steel,
    /// Aluminum or another light alloy.
    Alloy,
}

/// The state of thread and seat, or what a manual asks for.
///
/// It is asked, never assumed: oil on a thread that is specified dry raises
/// the clamp load at the same torque, possibly past the stud's proof load.
///
/// ```
/// use lugbook::fastener::Lubrication;
/// // Asked, never assumed: manuals contradict each other for one stud.
/// assert_eq!(Lubrication::default(), Lubrication::NotKnown);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lubrication {
    /// Nobody has said.
    #[default]
    NotKnown,
    /// Clean and dry.
    Dry,
    /// Oiled or greased on the thread.
    Oiled,
    /// In the manual's words, such as "2 drops between nut and washer, studs dry".
    AsManualSays(String),
}

/// The key of locking nuts or bolts.
///
/// ```
/// use lugbook::fastener::{Fastener, Kind, LockKey};
/// let key = LockKey { kept: Some("under the spare".to_owned()), code: None };
/// let nut = Fastener { lock: Some(key), ..Fastener::new(Kind::Nut) };
/// assert!(nut.lock.is_some_and(|key| key.code.is_none()));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub struct LockKey {
    /// Where it is kept in the vehicle, as told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kept: Option<String>,
    /// The code stamped on it, as read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub code: Option<String>,
}

/// One kind of wheel nut or bolt on a vehicle, as far as somebody looked.
///
/// ```
/// use lugbook::fastener::{Fastener, Kind, Lubrication};
/// let nut = Fastener::new(Kind::Nut);
/// assert_eq!((nut.thread, nut.lubrication), (None, Lubrication::NotKnown));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fastener {
    /// Nut or bolt.
    pub kind: Kind,
    /// The thread, when read or measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thread: Option<Thread>,
    /// The seating face, when looked at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seating: Option<Seating>,
    /// The hexagon across flats: which socket fits.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hex: Option<Span>,
    /// Which way it tightens.
    #[serde(default)]
    pub hand: Hand,
    /// The lock key, when one of each set is locking.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lock: Option<LockKey>,
    /// What wheel it sits in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wheel: Option<Material>,
    /// The state of thread and seat as found.
    #[serde(default)]
    pub lubrication: Lubrication,
}

impl Fastener {
    /// A nut or bolt of which nothing else is known yet.
    ///
    /// ```
    /// use lugbook::fastener::{Fastener, Fit, Kind};
    /// let bolt = Fastener::new(Kind::Bolt);
    /// assert_eq!((bolt.hex, bolt.fit(None)), (None, Fit::NotKnown));
    /// ```
    pub fn new(kind: Kind) -> Self {
        Self {
            kind,
            thread: None,
            seating: None,
            hex: None,
            hand: Hand::default(),
            lock: None,
            wheel: None,
            lubrication: Lubrication::default(),
        }
    }

    /// Whether its seat fits the wheel's: a [`Fit::Mismatch`] is a stop.
    ///
    /// ```
    /// use lugbook::fastener::{Fastener, Fit, Kind, Seat, Seating};
    /// let mut nut = Fastener::new(Kind::Nut);
    /// assert_eq!(nut.fit(Some(Seating::of(Seat::Cone))), Fit::NotKnown);
    /// nut.seating = Some(Seating::of(Seat::Ball));
    /// assert!(matches!(nut.fit(Some(Seating::of(Seat::Cone))), Fit::Mismatch(_)));
    /// ```
    pub fn fit(&self, wheel: Option<Seating>) -> Fit {
        match (self.seating, wheel) {
            (Some(own), Some(wheel)) => own.fit(wheel),
            _ => Fit::NotKnown,
        }
    }
}
