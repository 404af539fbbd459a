//! The cautions that stand before a step, each once.
//!
//! Cautions are common practice of the trade without a source unless their
//! text names one. The vehicle maker's manual, local codes and licensed
//! practice stand above all of them. A caution names the hazard and what
//! follows from it; what to do about it is the step that comes after.

use serde::{Deserialize, Serialize};

use crate::limits::{HeavyWheel, heavy_wheel};
use crate::vehicle::{Class, Equipment, Layout};

/// The four signal words of ANSI Z535, by what may happen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// Damage, no injury.
    Notice,
    /// Minor or moderate injury.
    Caution,
    /// Death or serious injury could follow.
    Warning,
    /// Death or serious injury will follow.
    Danger,
}

impl Signal {
    /// All signal words, mildest first.
    pub const ALL: [Self; 4] = [Self::Notice, Self::Caution, Self::Warning, Self::Danger];

    /// The word's code in data: `notice`, `caution`, `warning`, `danger`.
    pub fn code(self) -> &'static str {
        match self {
            Self::Notice => "notice",
            Self::Caution => "caution",
            Self::Warning => "warning",
            Self::Danger => "danger",
        }
    }
}

/// What a circumstance is about. Circumstances of one kind stand in for each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// What turns the nuts.
    Tools,
    /// What holds the vehicle.
    Support,
    /// Whose vehicle it is.
    Owner,
    /// One wheel or two on an end.
    Mounting,
    /// What a wheel weighs.
    Weight,
    /// What is left to do at a later visit.
    Left,
    /// Whether it drives by itself or is towed.
    Motion,
    /// Whether a towed one stands by itself.
    Hitch,
    /// How duals are held on their hubs.
    Piloting,
    /// How it is sprung.
    Springs,
    /// What stores its energy.
    Energy,
}

macro_rules! codes {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident $code:literal,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[derive(Serialize, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum $name {
            $($(#[$vdoc])* $variant,)*
        }

        impl $name {
            /// All of them, in order.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)*];

            /// The code in data, kebab-case; the same as in JSON.
            pub fn code(self) -> &'static str {
                match self { $(Self::$variant => $code,)* }
            }

            /// Reads a code.
            pub fn of_code(code: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|item| item.code() == code)
            }
        }
    };
}

codes! {
    /// What a step or a caution may depend on.
    Circumstance {
        /// Air tools.
        Air "air",
        /// Electric tools.
        Electric "electric",
        /// Hand tools.
        HandTools "hand-tools",
        /// On a lift.
        Lift "lift",
        /// On stands.
        Stands "stands",
        /// On a jack alone, off the road.
        JackAlone "jack-alone",
        /// At the roadside.
        Roadside "roadside",
        /// The person's own vehicle.
        Own "own",
        /// A customer's vehicle.
        Customer "customer",
        /// Dual wheels.
        Duals "duals",
        /// Single wheels on every axle.
        Singles "singles",
        /// It drives by itself.
        Powered "powered",
        /// A trailer.
        Towed "towed",
        /// A trailer on its tow vehicle.
        Hitched "hitched",
        /// A trailer that stands by itself.
        Unhitched "unhitched",
        /// Duals held by inner and outer cap nuts, centered by their seats.
        StudPiloted "stud-piloted",
        /// Springs of air.
        AirSuspension "air-suspension",
        /// A high-voltage battery.
        HighVoltage "high-voltage",
        /// A wheel too heavy for one person.
        HeavyWheel "heavy-wheel",
        /// Another recheck of the nuts is due after this one.
        RecheckLeft "recheck-left",
    }
}

impl Circumstance {
    /// What it is about.
    pub fn kind(self) -> Kind {
        match self {
            Self::Air | Self::Electric | Self::HandTools => Kind::Tools,
            Self::Lift | Self::Stands | Self::JackAlone | Self::Roadside => Kind::Support,
            Self::Own | Self::Customer => Kind::Owner,
            Self::Duals | Self::Singles => Kind::Mounting,
            Self::Powered | Self::Towed => Kind::Motion,
            Self::Hitched | Self::Unhitched => Kind::Hitch,
            Self::StudPiloted => Kind::Piloting,
            Self::AirSuspension => Kind::Springs,
            Self::HighVoltage => Kind::Energy,
            Self::HeavyWheel => Kind::Weight,
            Self::RecheckLeft => Kind::Left,
        }
    }
}

/// What the vehicle itself adds to the circumstances: duals, and wheels for two
/// people: those of every dual pair, and what [`heavy_wheel`] finds.
///
/// ```
/// use lugbook::caution::{Circumstance, of_vehicle};
/// use lugbook::vehicle::{Class, Layout};
/// let car = Layout::two_axles(false);
/// assert_eq!(of_vehicle(Class::Car, &car, Some(634.3)), []);
/// assert_eq!(of_vehicle(Class::LightTruck, &car, Some(801.0)), [Circumstance::HeavyWheel]);
/// ```
pub fn of_vehicle(class: Class, layout: &Layout, diameter_mm: Option<f64>) -> Vec<Circumstance> {
    let duals = layout.axles.iter().any(|axle| axle.dual);
    let heavy = duals || matches!(heavy_wheel(class, None, None, diameter_mm), HeavyWheel::Two(_));
    let found = [duals.then_some(Circumstance::Duals), heavy.then_some(Circumstance::HeavyWheel)];
    found.into_iter().flatten().collect()
}

/// What kind of vehicle it is: single wheels or duals, driving by itself or towed.
/// A procedure may be meant for some kinds alone.
///
/// ```
/// use lugbook::caution::{Circumstance, kind_of};
/// use lugbook::vehicle::{Class, Layout};
/// let car = kind_of(Class::Car, &Layout::two_axles(false));
/// assert_eq!(car, [Circumstance::Singles, Circumstance::Powered]);
/// ```
pub fn kind_of(class: Class, layout: &Layout) -> [Circumstance; 2] {
    let duals = layout.axles.iter().any(|axle| axle.dual);
    let towed = matches!(class, Class::LightTrailer | Class::Trailer);
    [
        if duals { Circumstance::Duals } else { Circumstance::Singles },
        if towed { Circumstance::Towed } else { Circumstance::Powered },
    ]
}

/// What a vehicle's equipment adds to the circumstances.
///
/// ```
/// use lugbook::caution::{Circumstance, of_equipment};
/// use lugbook::vehicle::Equipment;
/// assert_eq!(of_equipment(Equipment::AirSuspension), Circumstance::AirSuspension);
/// ```
pub fn of_equipment(equipment: Equipment) -> Circumstance {
    match equipment {
        Equipment::AirSuspension => Circumstance::AirSuspension,
        Equipment::HighVoltage => Circumstance::HighVoltage,
    }
}

/// Whether something that is meant for `when` applies `here`: for each kind of
/// circumstance that `when` names, one of those named must be here. An empty
/// `when` always applies.
///
/// ```
/// use lugbook::caution::{Circumstance as C, applies};
/// assert!(applies(&[C::Air, C::Electric], &[C::Electric, C::Stands]));
/// assert!(!applies(&[C::Air, C::Lift], &[C::Air, C::Stands]));
/// assert!(applies(&[], &[]));
/// ```
pub fn applies(when: &[Circumstance], here: &[Circumstance]) -> bool {
    when.iter().all(|named| when.iter().any(|other| other.kind() == named.kind() && here.contains(other)))
}

codes! {
    /// The cautions. All: common practice, no source, but where the text says otherwise.
    CautionId {
        /// Chips and noise of a power tool.
        ChipsAndNoise "chips-and-noise",
        /// A sleeve or glove wound up by a turning socket.
        TurningSocket "turning-socket",
        /// A socket thrown by a gun that is tried with it on.
        ThrownSocket "thrown-socket",
        /// A gun that runs the wrong way.
        GunDirection "gun-direction",
        /// A socket that is not home and square.
        SocketSlips "socket-slips",
        /// A nut stuck in the socket and started crooked.
        NutInSocket "nut-in-socket",
        /// The last nut comes off and the wheel drops.
        FallingWheel "falling-wheel",
        /// A wheel that nobody holds and no nut holds.
        UnheldWheel "unheld-wheel",
        /// The weight of a wheel.
        HeavyWheel "heavy-wheel",
        /// The inner wheel of a pair once the outer one is off.
        InnerWheel "inner-wheel",
        /// A loose wheel that rolls, tips or trips.
        LooseWheel "loose-wheel",
        /// Tools laid above head height.
        FallingTools "falling-tools",
        /// Nuts lost on the floor.
        LostNuts "lost-nuts",
        /// A hose across the way.
        HoseUnderfoot "hose-underfoot",
        /// A vehicle that rolls off its jack.
        VehicleRolls "vehicle-rolls",
        /// A vehicle on a jack alone (29 CFR 1910.244 and its state equals ask for stands at once after raising).
        JackAlone "jack-alone",
        /// A vehicle that slips off stands or locks onto somebody.
        UnderVehicle "under-vehicle",
        /// A vehicle raised away from its lift points.
        LiftPoints "lift-points",
        /// A nut broken loose while the wheel hangs.
        CrackOnGround "crack-on-ground",
        /// Gear loaded beyond its rating (29 CFR 1910.244(a)(1): the rating is marked and enough for the load).
        OverloadedGear "overloaded-gear",
        /// Somebody or something under a vehicle that comes down.
        Lowering "lowering",
        /// A wheel turned by hand while the vehicle can drive off its support.
        TurningWheel "turning-wheel",
        /// Hot brakes.
        HotBrakes "hot-brakes",
        /// Brake dust in the air.
        BrakeDust "brake-dust",
        /// Fingers between wheel and hub.
        PinchedFingers "pinched-fingers",
        /// A nut that is not begun by hand.
        CrossedThread "crossed-thread",
        /// A wheel that hangs crooked while its nuts are run down.
        CrookedSeat "crooked-seat",
        /// A torque-limiting bar taken for a torque wrench.
        LimitingBar "limiting-bar",
        /// A wrench used on a wheel that bears no weight.
        WheelTurns "wheel-turns",
        /// A tire that bursts while it is filled.
        TireBursts "tire-bursts",
        /// A tire run flat and filled again (never before inspection: text reprinted in an Army tire manual).
        RunFlat "run-flat",
        /// Nuts that settle in the first miles.
        NutsSettle "nuts-settle",
        /// Marks of an earlier job.
        OldMarks "old-marks",
        /// Traffic beside the work.
        PassingTraffic "passing-traffic",
        /// A vehicle that others see too late.
        NotSeen "not-seen",
        /// A slope under a jack.
        Slope "slope",
        /// Dual tires without a gap between them.
        DualsTouch "duals-touch",
        /// A damaged rim under pressure (29 CFR 1910.177 wants the air out first; from memory).
        RimFliesApart "rim-flies-apart",
        /// A trailer that stands by itself.
        TrailerTips "trailer-tips",
        /// Air springs that level while the vehicle is raised.
        AirLevels "air-levels",
        /// A lift's pad or a jack against a high-voltage battery.
        BatteryBelow "battery-below",
    }
}

impl CautionId {
    /// The signal word, by what may happen.
    ///
    /// ```
    /// use lugbook::caution::{CautionId, Signal};
    /// assert_eq!(CautionId::Lowering.signal(), Signal::Danger);
    /// assert_eq!(CautionId::CrossedThread.signal(), Signal::Notice);
    /// ```
    pub fn signal(self) -> Signal {
        match self {
            Self::JackAlone | Self::UnderVehicle | Self::Lowering | Self::Slope => Signal::Danger,
            Self::ChipsAndNoise
            | Self::TurningSocket
            | Self::HeavyWheel
            | Self::VehicleRolls
            | Self::LiftPoints
            | Self::CrackOnGround
            | Self::OverloadedGear
            | Self::TurningWheel
            | Self::BrakeDust
            | Self::CrookedSeat
            | Self::LimitingBar
            | Self::WheelTurns
            | Self::TireBursts
            | Self::RunFlat
            | Self::NutsSettle
            | Self::PassingTraffic
            | Self::NotSeen
            | Self::DualsTouch
            | Self::RimFliesApart
            | Self::TrailerTips
            | Self::AirLevels
            | Self::BatteryBelow => Signal::Warning,
            Self::ThrownSocket
            | Self::SocketSlips
            | Self::FallingWheel
            | Self::UnheldWheel
            | Self::InnerWheel
            | Self::LooseWheel
            | Self::FallingTools
            | Self::HoseUnderfoot
            | Self::HotBrakes
            | Self::PinchedFingers => Signal::Caution,
            Self::GunDirection | Self::NutInSocket | Self::LostNuts | Self::CrossedThread | Self::OldMarks => {
                Signal::Notice
            }
        }
    }

    /// When it applies; empty: always.
    pub fn when(self) -> &'static [Circumstance] {
        use Circumstance::{
            Air, AirSuspension, Duals, Electric, HeavyWheel, HighVoltage, JackAlone, Lift, Roadside, Stands, Towed,
        };
        match self {
            Self::ChipsAndNoise
            | Self::TurningSocket
            | Self::ThrownSocket
            | Self::GunDirection
            | Self::NutInSocket
            | Self::LimitingBar => &[Air, Electric],
            Self::HoseUnderfoot => &[Air],
            Self::FallingTools => &[Lift],
            Self::UnderVehicle => &[Stands, Lift],
            Self::JackAlone | Self::CrackOnGround | Self::VehicleRolls => &[Stands, JackAlone, Roadside],
            Self::HeavyWheel => &[HeavyWheel],
            Self::InnerWheel | Self::DualsTouch | Self::RimFliesApart => &[Duals],
            Self::TrailerTips => &[Towed],
            Self::AirLevels => &[AirSuspension],
            Self::BatteryBelow => &[HighVoltage],
            Self::PassingTraffic | Self::NotSeen | Self::Slope => &[Roadside],
            Self::SocketSlips
            | Self::FallingWheel
            | Self::UnheldWheel
            | Self::LooseWheel
            | Self::LostNuts
            | Self::CrossedThread
            | Self::LiftPoints
            | Self::OverloadedGear
            | Self::Lowering
            | Self::TurningWheel
            | Self::HotBrakes
            | Self::BrakeDust
            | Self::PinchedFingers
            | Self::CrookedSeat
            | Self::WheelTurns
            | Self::TireBursts
            | Self::RunFlat
            | Self::NutsSettle
            | Self::OldMarks => &[],
        }
    }

    /// Whether it applies here.
    pub fn applies(self, here: &[Circumstance]) -> bool {
        applies(self.when(), here)
    }

    /// Whether a shop's own file may leave it out: never a danger.
    pub fn may_be_left_out(self) -> bool {
        self.signal() != Signal::Danger
    }
}
