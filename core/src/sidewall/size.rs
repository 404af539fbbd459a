//! Size designations: what they are, and how they are printed.

use std::fmt;
use std::str::FromStr;

use super::problem::Problem;

/// How the carcass is built.
///
/// ```
/// use lugbook::sidewall::{Construction, Size};
/// let bias: Size = "7.50-16LT".parse()?;
/// assert_eq!((bias.construction(), bias.construction().letter()), (Construction::Diagonal, "D"));
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Construction {
    /// Radial (`R`).
    Radial,
    /// Diagonal, also called bias (`D` or a dash).
    Diagonal,
    /// Belted bias (`B`).
    BeltedBias,
}

impl Construction {
    /// The letter in data: `R`, `D` or `B`.
    ///
    /// ```
    /// use lugbook::sidewall::Construction;
    /// assert_eq!((Construction::Radial.letter(), Construction::BeltedBias.letter()), ("R", "B"));
    /// ```
    pub fn letter(self) -> &'static str {
        match self {
            Self::Radial => "R",
            Self::Diagonal => "D",
            Self::BeltedBias => "B",
        }
    }
}

/// The service a size is made for, as its letters say.
///
/// ```
/// use lugbook::sidewall::{Size, Use};
/// let size: Size = "31x10.50R15LT".parse()?;
/// assert_eq!((size.made_for(), Use::LightTruck.letters()), (Some(Use::LightTruck), "LT"));
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Use {
    /// `P`: passenger, United States form.
    Passenger,
    /// `LT`: light truck.
    LightTruck,
    /// `T` or `S`: temporary spare.
    Temporary,
    /// `ST`: special trailer.
    Trailer,
    /// `C` or `CP`: commercial van.
    Commercial,
}

impl Use {
    /// The letters in data: `P`, `LT`, `T`, `ST` or `C`.
    ///
    /// ```
    /// use lugbook::sidewall::Use;
    /// assert_eq!((Use::LightTruck.letters(), Use::Trailer.letters()), ("LT", "ST"));
    /// ```
    pub fn letters(self) -> &'static str {
        match self {
            Self::Passenger => "P",
            Self::LightTruck => "LT",
            Self::Temporary => "T",
            Self::Trailer => "ST",
            Self::Commercial => "C",
        }
    }
}

/// Letters before the size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Prefix {
    P,
    Lt,
    T,
    S,
    St,
    Hl,
}

impl Prefix {
    pub(super) fn letters(self) -> &'static str {
        match self {
            Self::P => "P",
            Self::Lt => "LT",
            Self::T => "T",
            Self::S => "S",
            Self::St => "ST",
            Self::Hl => "HL",
        }
    }
}

/// Letters behind the size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Suffix {
    C,
    Cp,
    Lt,
    St,
    Motorcycle,
    Tr,
    Ml,
    Mh,
    Nhs,
}

impl Suffix {
    pub(super) fn letters(self) -> &'static str {
        match self {
            Self::C => "C",
            Self::Cp => "CP",
            Self::Lt => "LT",
            Self::St => "ST",
            Self::Motorcycle => "M/C",
            Self::Tr => "TR",
            Self::Ml => "ML",
            Self::Mh => "MH",
            Self::Nhs => "NHS",
        }
    }
}

/// The construction as it is written in the size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Written {
    R,
    Zr,
    Rf,
    Zrf,
    /// `SR`, `HR`, `VR` …: the old form with a speed letter.
    Old(u8),
    D,
    B,
    Dash,
}

impl Written {
    pub(super) fn construction(self) -> Construction {
        match self {
            Self::R | Self::Zr | Self::Rf | Self::Zrf | Self::Old(_) => Construction::Radial,
            Self::D | Self::Dash => Construction::Diagonal,
            Self::B => Construction::BeltedBias,
        }
    }
}

impl fmt::Display for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::R => f.write_str("R"),
            Self::Zr => f.write_str("ZR"),
            Self::Rf => f.write_str("RF"),
            Self::Zrf => f.write_str("ZRF"),
            Self::Old(letter) => write!(f, "{}R", char::from(*letter)),
            Self::D => f.write_str("D"),
            Self::B => f.write_str("B"),
            Self::Dash => f.write_str("-"),
        }
    }
}

/// Inches in hundredths, and whether they were written with decimals:
/// `10.00R20` and `10R20` are two sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) struct Inches {
    pub hundredths: u32,
    pub decimals: bool,
}

impl fmt::Display for Inches {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.hundredths / 100)?;
        if self.decimals { write!(f, ".{:02}", self.hundredths % 100) } else { Ok(()) }
    }
}

/// The figures in front of the construction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) enum Section {
    /// `225/45` or, without aspect, `195`.
    Metric { width_mm: u16, aspect: Option<u16> },
    /// `10`, `7.50`.
    Inch { width: Inches },
    /// `31x10.50`.
    Flotation { diameter_hundredths: u32, width: Inches },
    /// `MT90`, `G78`: a letter for the width (`motorcycle`: with an M in front).
    Letter { motorcycle: bool, letter: u8, radial: bool, aspect: u16 },
}

/// A size designation.
///
/// ```
/// use lugbook::sidewall::{Construction, Size};
/// let size: Size = "P215 / 65 R15".parse()?;
/// assert_eq!(size.to_string(), "P215/65R15");
/// assert_eq!((size.width_mm(), size.aspect_percent(), size.rim_in()), (Some(215.0), Some(65), 15.0));
/// assert_eq!(size.construction(), Construction::Radial);
/// # Ok::<(), lugbook::sidewall::Problem>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Size {
    pub(super) prefix: Option<Prefix>,
    pub(super) section: Section,
    pub(super) written: Written,
    pub(super) rim_tenths: u16,
    pub(super) suffix: Option<Suffix>,
}

impl Size {
    /// The service the letters before or behind the size stand for; `None` for a
    /// European passenger size and others without such letters.
    ///
    /// ```
    /// use lugbook::sidewall::{Size, Use};
    /// let use_of = |text: &str| text.parse::<Size>().ok()?.made_for();
    /// assert_eq!(use_of("P215/65R15"), Some(Use::Passenger));
    /// assert_eq!(use_of("195R14C"), Some(Use::Commercial));
    /// assert_eq!(use_of("215/65R15"), None, "a European passenger size");
    /// ```
    pub fn made_for(&self) -> Option<Use> {
        match (self.prefix, self.suffix) {
            (Some(Prefix::P), _) => Some(Use::Passenger),
            (Some(Prefix::Lt), _) | (_, Some(Suffix::Lt)) => Some(Use::LightTruck),
            (Some(Prefix::T | Prefix::S), _) => Some(Use::Temporary),
            (Some(Prefix::St), _) | (_, Some(Suffix::St)) => Some(Use::Trailer),
            (_, Some(Suffix::C | Suffix::Cp)) => Some(Use::Commercial),
            _ => None,
        }
    }

    /// How the carcass is built.
    ///
    /// ```
    /// use lugbook::sidewall::{Construction, Size};
    /// let size: Size = "T145/80D18".parse()?;
    /// assert_eq!(size.construction(), Construction::Diagonal);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn construction(&self) -> Construction {
        match self.section {
            Section::Letter { radial: true, .. } => Construction::Radial,
            _ => self.written.construction(),
        }
    }

    /// `ZR` in the size: made for more than 240 km/h (grade S).
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "315/35ZR22".parse()?;
    /// assert!(size.is_zr());
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn is_zr(&self) -> bool {
        matches!(self.written, Written::Zr | Written::Zrf)
    }

    /// `RF` or `ZRF` in the size: a run-flat structure (grade S).
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "225/45RF17".parse()?;
    /// assert!(size.is_run_flat());
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn is_run_flat(&self) -> bool {
        matches!(self.written, Written::Rf | Written::Zrf)
    }

    /// `HL` in front: high load (from memory).
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "HL245/40R19".parse()?;
    /// assert!(size.is_high_load());
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn is_high_load(&self) -> bool {
        self.prefix == Some(Prefix::Hl)
    }

    /// `M/C` behind, or a letter size that begins with M: for motorcycles only.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "MT90B16".parse()?;
    /// assert!(size.is_motorcycle());
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn is_motorcycle(&self) -> bool {
        self.suffix == Some(Suffix::Motorcycle) || matches!(self.section, Section::Letter { motorcycle: true, .. })
    }

    /// Nominal section width, mm; from inches at 25.4 where the size is in
    /// inches; `None` where a letter stands for it.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "31x10.50R15LT".parse()?;
    /// assert!((size.width_mm().unwrap() - 266.7).abs() < 1e-9);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn width_mm(&self) -> Option<f64> {
        match self.section {
            Section::Metric { width_mm, .. } => Some(f64::from(width_mm)),
            Section::Inch { width } | Section::Flotation { width, .. } => {
                Some(f64::from(width.hundredths) * 25.4 / 100.0)
            }
            Section::Letter { .. } => None,
        }
    }

    /// Aspect ratio, percent; `None` where the size does not print one.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "225/45R17".parse()?;
    /// assert_eq!(size.aspect_percent(), Some(45));
    /// let van: lugbook::sidewall::Size = "195R14C".parse()?;
    /// assert_eq!(van.aspect_percent(), None, "none is guessed");
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn aspect_percent(&self) -> Option<u16> {
        match self.section {
            Section::Metric { aspect, .. } => aspect,
            Section::Letter { aspect, .. } => Some(aspect),
            _ => None,
        }
    }

    /// Nominal rim diameter, in.
    ///
    /// ```
    /// let size: lugbook::sidewall::Size = "295/75R22.5".parse()?;
    /// assert_eq!(size.rim_in(), 22.5);
    /// # Ok::<(), lugbook::sidewall::Problem>(())
    /// ```
    pub fn rim_in(&self) -> f64 {
        f64::from(self.rim_tenths) / 10.0
    }
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(prefix) = self.prefix {
            f.write_str(prefix.letters())?;
        }
        match self.section {
            Section::Metric { width_mm, aspect: Some(aspect) } => write!(f, "{width_mm}/{aspect}")?,
            Section::Metric { width_mm, aspect: None } => write!(f, "{width_mm}")?,
            Section::Inch { width } => write!(f, "{width}")?,
            Section::Flotation { diameter_hundredths, width } => {
                let inches = crate::measure::plain(f64::from(diameter_hundredths) / 100.0);
                write!(f, "{inches}x{width}")?;
            }
            Section::Letter { motorcycle, letter, radial, aspect } => {
                let (m, r) = (if motorcycle { "M" } else { "" }, if radial { "R" } else { "" });
                write!(f, "{m}{}{r}{aspect}", char::from(letter))?;
            }
        }
        write!(f, "{}", self.written)?;
        write!(f, "{}", self.rim_tenths / 10)?;
        if !self.rim_tenths.is_multiple_of(10) {
            write!(f, ".{}", self.rim_tenths % 10)?;
        }
        if let Some(suffix) = self.suffix {
            f.write_str(suffix.letters())?;
        }
        Ok(())
    }
}

impl FromStr for Size {
    type Err = Problem;

    fn from_str(text: &str) -> Result<Self, Problem> {
        super::read_alone(text, |scan, problems| super::size_grammar::read(scan, problems).flatten())
    }
}
