//! Draws the photos that a wheel job takes, of invented tires and vehicles, for tests and the demo.
//!
//! Everything is computed from parameters and a seed: the letters are our own strokes, the rubber is a relief that is
//! lit, the camera has a tilt, a lens and noise. A picture drawn twice is the same picture. [`wheels`] are drawn in any
//! number, to score readings on, with further styles of lettering from typefaces of the machine.
//!
//! ```
//! use renderer::{Light, Sidewall};
//! let tire = Sidewall { size: "215/65R16".into(), service: "98H".into(), ..Sidewall::default() };
//! let picture = tire.render(160, 120);
//! assert_eq!((picture.width(), picture.height()), (160, 120));
//! assert_eq!(picture, tire.render(160, 120));
//! ```

mod camera;
mod damage;
pub mod demo;
mod exif;
pub mod faces;
mod hub;
mod letters;
pub mod molding;
mod noise;
mod page;
mod relief;
mod sidewall;
mod surface;
mod tread;
mod wheel;
pub mod wheels;

pub use camera::{Light, View};
pub use damage::Cut;
pub use exif::{Note, jpeg};
pub use hub::Hub;
pub use letters::{Corner, Letters};
pub use page::{Line, Page, Paper};
pub use sidewall::{Rotation, Sidewall};
pub use tread::Tread;
