//! The cautions that stand before a step, each once.
//!
//! Cautions are common practice of the trade without a source unless their
//! text names one. The vehicle maker's manual, local codes and licensed
//! practice stand above all of them. A caution names the hazard and what
//! follows from it; what to do about it is the step that comes after.

use serde::{Deserialize, Serialize};

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
        Hand "hand",
        /// On a lift.
        Lift "lift",
        /// On stands.
        Stands "stands",
        /// On a jack alone, off the road.
        JackAlone "jack-alone",
        /// At the roadside.
        Roadside "roadside",
        /// The person's own car.
        OwnCar "own-car",
        /// A customer's car.
        CustomersCar "customers-car",
        /// Dual wheels.
        Duals "duals",
        /// A wheel too heavy for one person.
        HeavyWheel "heavy-wheel",
    }
}

impl Circumstance {
    /// What it is about.
    pub fn kind(self) -> Kind {
        match self {
            Self::Air | Self::Electric | Self::Hand => Kind::Tools,
            Self::Lift | Self::Stands | Self::JackAlone | Self::Roadside => Kind::Support,
            Self::OwnCar | Self::CustomersCar => Kind::Owner,
            Self::Duals => Kind::Mounting,
            Self::HeavyWheel => Kind::Weight,
        }
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
        LastNut "last-nut",
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
        /// A vehicle that has not settled on its stands.
        StandsUnsettled "stands-unsettled",
        /// A vehicle that has not settled on the arms or locks of a lift.
        LiftUnsettled "lift-unsettled",
        /// A nut broken loose while the wheel hangs.
        PulledOffJack "pulled-off-jack",
        /// Gear loaded beyond its rating (29 CFR 1910.244(a)(1): the rating is marked and enough for the load).
        OverloadedGear "overloaded-gear",
        /// Somebody or something under a vehicle that comes down.
        UnderWhenLowered "under-when-lowered",
        /// A wheel turned by hand while the vehicle can drive off its support.
        DriveEngages "drive-engages",
        /// Hot brakes.
        HotBrakes "hot-brakes",
        /// Brake dust in the air.
        BrakeDust "brake-dust",
        /// Fingers between wheel and hub.
        PinchedFingers "pinched-fingers",
        /// A nut begun by a gun.
        CrossThread "cross-thread",
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
    }
}

impl CautionId {
    /// The signal word, by what may happen.
    ///
    /// ```
    /// use lugbook::caution::{CautionId, Signal};
    /// assert_eq!(CautionId::UnderWhenLowered.signal(), Signal::Danger);
    /// assert_eq!(CautionId::CrossThread.signal(), Signal::Notice);
    /// ```
    pub fn signal(self) -> Signal {
        match self {
            Self::JackAlone | Self::UnderWhenLowered | Self::Slope => Signal::Danger,
            Self::ChipsAndNoise
            | Self::TurningSocket
            | Self::HeavyWheel
            | Self::VehicleRolls
            | Self::StandsUnsettled
            | Self::LiftUnsettled
            | Self::PulledOffJack
            | Self::OverloadedGear
            | Self::DriveEngages
            | Self::BrakeDust
            | Self::CrookedSeat
            | Self::LimitingBar
            | Self::WheelTurns
            | Self::TireBursts
            | Self::RunFlat
            | Self::NutsSettle
            | Self::PassingTraffic
            | Self::NotSeen => Signal::Warning,
            Self::ThrownSocket
            | Self::SocketSlips
            | Self::LastNut
            | Self::UnheldWheel
            | Self::InnerWheel
            | Self::LooseWheel
            | Self::FallingTools
            | Self::HoseUnderfoot
            | Self::HotBrakes
            | Self::PinchedFingers => Signal::Caution,
            Self::GunDirection | Self::NutInSocket | Self::LostNuts | Self::CrossThread | Self::OldMarks => {
                Signal::Notice
            }
        }
    }

    /// When it applies; empty: always.
    pub fn when(self) -> &'static [Circumstance] {
        use Circumstance::{Air, Duals, Electric, HeavyWheel, JackAlone, Lift, Roadside, Stands};
        match self {
            Self::ChipsAndNoise
            | Self::TurningSocket
            | Self::ThrownSocket
            | Self::GunDirection
            | Self::NutInSocket
            | Self::CrossThread
            | Self::LimitingBar => &[Air, Electric],
            Self::HoseUnderfoot => &[Air],
            Self::FallingTools | Self::LiftUnsettled => &[Lift],
            Self::StandsUnsettled => &[Stands],
            Self::JackAlone | Self::PulledOffJack | Self::VehicleRolls => &[Stands, JackAlone, Roadside],
            Self::HeavyWheel => &[HeavyWheel],
            Self::InnerWheel => &[Duals],
            Self::PassingTraffic | Self::NotSeen | Self::Slope => &[Roadside],
            Self::SocketSlips
            | Self::LastNut
            | Self::UnheldWheel
            | Self::LooseWheel
            | Self::LostNuts
            | Self::OverloadedGear
            | Self::UnderWhenLowered
            | Self::DriveEngages
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
