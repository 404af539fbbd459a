//! What to set a tire to, in the shop, so that it is right cold on the road.
//!
//! The placard is the answer; this room only carries it through temperature,
//! over a rotation and against the sidewall's maximum. It never advises less
//! than the placard, never bleeds a warm tire, and where the placard does not
//! hold it gives no figure.

mod gas;
mod lamp;
mod leak;
mod rotation;
mod setting;

pub use gas::{ATMOSPHERE_KPA, at_temperature, gauge};
pub use lamp::{Standing, lamp_threshold, standing};
pub use leak::{Leak, Visit, leak};
pub use rotation::{Act, AxleChange, after_rotation};
pub use setting::{
    Ask, Finding, Fitted, ReferenceClass, ReferencePressure, Setting, Warmth, cold_setting, reference_pressures,
};
