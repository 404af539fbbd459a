//! The facts: one variant for each kind of thing that can be said.
//!
//! Their serialized form is final: a released variant or field never changes
//! its name or meaning, and new fields have a default.

mod kinded;
mod learned;

use serde::{Deserialize, Serialize};

pub use learned::{Decision, Learned, SeenStep};

use crate::calendar::{Day, Moment};
use crate::fastener::{Bar, Gun, TorqueSpec, Wrench};
use crate::finding::State;
use crate::ident::{Digest, EntryId, JobId, PersonId, TireId, ToolId, VehicleId};
use crate::limits::{Chosen, Placard};
use crate::measure::{Depth, Distance, Load, Pressure, Span, Speed, Torque};
use crate::tire::{SidewallSide, TireLooks};
use crate::vehicle::hub::Evidence;
use crate::vehicle::{Class, Drive, Equipment, Layout, Place};

fn is_false(flag: &bool) -> bool {
    !flag
}

/// Makes [`Fact`], which is written with its kind first, and its reader: what
/// serde derives for such an enum keeps all of a fact apart before it reads it,
/// which takes longer than everything else that is done to open a book.
macro_rules! facts {
    ($(#[$about:meta])* pub enum Fact { $($kinds:tt)* }) => {
        $(#[$about])*
        #[derive(Debug, Clone, PartialEq, Serialize)]
        #[serde(tag = "kind", rename_all = "kebab-case")]
        pub enum Fact { $($kinds)* }

        #[derive(Deserialize)]
        #[serde(remote = "Fact", rename_all = "kebab-case")]
        #[allow(dead_code, reason = "only its reader is used")]
        enum FactByKind { $($kinds)* }
    };
}

facts! {
/// What is said.
pub enum Fact {
    /// A person was added; the name is in the personal part.
    PersonAdded {
        /// The person.
        person: PersonId,
        /// What the person may do.
        role: Role,
    },
    /// A vehicle was added; its plate is in the personal part.
    VehicleAdded {
        /// The vehicle.
        vehicle: VehicleId,
        /// What it is called in the shop.
        name: String,
        /// Make, model and year as the owner says it: the key of the specification shelf.
        model: String,
        /// Its class.
        class: Class,
        /// Its axles and spare.
        layout: Layout,
        /// It belongs to the person who works on it: no approval is asked.
        #[serde(default, skip_serializing_if = "is_false")]
        own: bool,
    },
    /// A specification was recorded for a vehicle model, as printed.
    SpecificationRecorded {
        /// The vehicle model it holds for.
        model: String,
        /// What is printed.
        shelf: Shelf,
        /// Where it is printed: manual and page, or door label.
        source: String,
        /// The photo of the page or label.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        photo: Option<Digest>,
    },
    /// The torque specification was looked for and not found.
    SpecificationUnknown {
        /// The job.
        job: JobId,
        /// What was looked for.
        what: Kind,
    },
    /// A job was opened on a vehicle by a procedure.
    JobOpened {
        /// The job.
        job: JobId,
        /// The vehicle.
        vehicle: VehicleId,
        /// The procedure's id.
        procedure: String,
        /// The procedure's version.
        version: u32,
        /// The circumstances that decide which steps apply, as codes.
        circumstances: Vec<String>,
    },
    /// A job was put aside.
    JobParked {
        /// The job.
        job: JobId,
        /// Why.
        reason: String,
    },
    /// A job was taken up again.
    JobResumed {
        /// The job.
        job: JobId,
    },
    /// A job was ended without a signature.
    JobClosed {
        /// The job.
        job: JobId,
        /// Why.
        reason: String,
    },
    /// A job was signed.
    JobSigned {
        /// The job.
        job: JobId,
        /// How.
        signature: Signature,
        /// Digest of the stream's head that the signer saw.
        seen: Option<Digest>,
    },
    /// The person whose hands do the steps changed.
    HandsChanged {
        /// The job.
        job: JobId,
        /// Whose hands now.
        person: PersonId,
    },
    /// The odometer was read.
    OdometerRead {
        /// The job.
        job: JobId,
        /// The reading.
        reading: Distance,
        /// What must be known about it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        note: Option<OdometerNote>,
    },
    /// The customer or the mechanic said what is wrong.
    ComplaintHeard {
        /// The job.
        job: JobId,
        /// Their words.
        complaint: Complaint,
    },
    /// Existing damage was seen, or none.
    DamageSeen {
        /// The job.
        job: JobId,
        /// Where.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
        /// What; none when the vehicle was looked over and nothing found.
        text: Option<String>,
        /// Its photo.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        photo: Option<Digest>,
    },
    /// The customer approved or declined the work, or was told of a danger.
    WorkApproved {
        /// The job.
        job: JobId,
        /// What was put to the customer.
        what: String,
        /// Approved.
        approved: bool,
        /// How.
        signature: Signature,
    },
    /// A tire was fitted at a place of a vehicle.
    TireFitted {
        /// The tire.
        tire: TireId,
        /// The vehicle.
        vehicle: VehicleId,
        /// Where.
        at: Place,
        /// In this job, when it was one.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        job: Option<JobId>,
    },
    /// A tire left its vehicle.
    TireRemoved {
        /// The tire.
        tire: TireId,
        /// In this job.
        job: JobId,
        /// Why.
        reason: String,
    },
    /// A mark was chalked on a tire.
    MarkChalked {
        /// The job.
        job: JobId,
        /// Where the tire is now.
        at: Place,
        /// The tire.
        tire: TireId,
        /// The mark.
        mark: String,
        /// Where on which photo the mark can be seen.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        photo: Option<Digest>,
    },
    /// A mark was read at a corner, before the nuts.
    MarkRead {
        /// The job.
        job: JobId,
        /// Where.
        at: Place,
        /// The mark.
        mark: String,
    },
    /// The camera is about to open for this photo.
    PhotoPending {
        /// The job.
        job: JobId,
        /// Of what.
        of: PhotoOf,
        /// Where.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
    },
    /// A photo was taken and is kept.
    PhotoTaken {
        /// The job, unless it belongs to the shelf.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        job: Option<JobId>,
        /// The photo.
        photo: Digest,
        /// Of what.
        of: PhotoOf,
        /// Where.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
        /// When by its own record.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        taken: Option<String>,
    },
    /// A sidewall was read.
    SidewallRead {
        /// The job.
        job: JobId,
        /// The tire.
        tire: TireId,
        /// Where it is.
        at: Place,
        /// Which side.
        side: SidewallSide,
        /// The text as it was read.
        text: String,
        /// By whom or what.
        by: ReadBy,
        /// What the tire looks like beyond its lettering.
        #[serde(default)]
        looks: TireLooks,
    },
    /// Tread was measured.
    TreadMeasured {
        /// The job.
        job: JobId,
        /// The tire.
        tire: TireId,
        /// Where it is.
        at: Place,
        /// Each groove from the outer one inward, at each place around the tire.
        grooves: Vec<Vec<Depth>>,
        /// The lowest spot seen anywhere.
        lowest: Depth,
        /// Why a reading that contradicts the last one stands.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        reason: Option<String>,
    },
    /// A pressure was measured or set.
    PressureMeasured {
        /// The job.
        job: JobId,
        /// Where.
        at: Place,
        /// The pressure.
        pressure: Pressure,
        /// Set to this, not only found.
        #[serde(default, skip_serializing_if = "is_false")]
        set: bool,
        /// Not driven more than a couple of miles at low speed in three hours.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        cold: Option<bool>,
    },
    /// A pressure sensor was read, or relearned.
    SensorRead {
        /// The job.
        job: JobId,
        /// Where.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
        /// What kind of system.
        sensors: SensorKind,
        /// The sensor's number.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        number: Option<String>,
        /// The warning lamp is on.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        lamp: Option<bool>,
        /// Relearned in this job; none when not asked.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        relearned: Option<bool>,
        /// The tire whose wheel carries the sensor, when it is not the one at the place.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tire: Option<TireId>,
        /// How the vehicle learns the places.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        method: Option<Relearn>,
    },
    /// What was seen of the drive: at a hub, in the manual, from the owner.
    DriveSeen {
        /// The job.
        job: JobId,
        /// What.
        seen: DriveSeen,
    },
    /// A choice of moves.
    PlanChosen {
        /// The job.
        job: JobId,
        /// The pattern's code, or `other`.
        pattern: String,
        /// Who goes where.
        moves: Vec<Move>,
    },
    /// A vehicle or a corner was raised or lowered.
    Lifted {
        /// The job.
        job: JobId,
        /// How high.
        arm: Arm,
        /// By what.
        means: Means,
        /// Where; none for the whole vehicle.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
    },
    /// A wheel came off.
    WheelOff {
        /// The job.
        job: JobId,
        /// Where.
        at: Place,
    },
    /// A wheel was hung on a hub.
    WheelOn {
        /// The job.
        job: JobId,
        /// Where.
        at: Place,
        /// The tire, by its mark or by the plan.
        tire: TireId,
    },
    /// A nut, or a wheel's nuts in order, was turned.
    NutTightened {
        /// The job.
        job: JobId,
        /// Where.
        at: Place,
        /// Which nuts.
        nuts: Nuts,
        /// Which pass.
        pass: Pass,
        /// Whether it moved before the wrench clicked; none for passes without a click.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        turned: Option<Turned>,
        /// What the tool was set to.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        setting: Option<Torque>,
        /// With what.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        tool: Option<ToolId>,
    },
    /// A tool was entered, or its papers changed.
    ToolAdded {
        /// The tool.
        tool: ToolId,
        /// What it is, with what its papers say.
        what: ToolKind,
        /// What it is called in the shop.
        name: String,
        /// Calibrated again after so many months, by the tool's papers or its owner's setting.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        interval_months: Option<u16>,
    },
    /// A tool is used in a job.
    ToolUsed {
        /// The job.
        job: JobId,
        /// The tool.
        tool: ToolId,
    },
    /// A step was answered.
    StepDone {
        /// The job.
        job: JobId,
        /// The step's id.
        step: String,
        /// Where, for a step at each wheel.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
        /// The answer.
        answer: Answer,
    },
    /// A step was skipped.
    StepSkipped {
        /// The job.
        job: JobId,
        /// The step's id.
        step: String,
        /// Where.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
        /// Why.
        reason: String,
    },
    /// A gate was opened without its conditions.
    GateOpened {
        /// The job.
        job: JobId,
        /// The held step's id.
        step: String,
        /// Where, for a step at each wheel.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        at: Option<Place>,
        /// The condition that was not met.
        condition: String,
        /// Why.
        reason: String,
    },
    /// A part was looked at.
    FindingNoted {
        /// The job.
        job: JobId,
        /// What was looked at and how it stands.
        look: Look,
        /// Its photo.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        photo: Option<Digest>,
    },
    /// The recheck was told to the driver.
    RecheckTold {
        /// The job.
        job: JobId,
        /// After these distances.
        after: Vec<Distance>,
    },
    /// Which wheels come off in a job that moves none elsewhere.
    WheelsChosen {
        /// The job.
        job: JobId,
        /// Where.
        at: Vec<Place>,
    },
    /// The spare was looked at, and takes the place of a flat tire.
    SpareSeen {
        /// The job.
        job: JobId,
        /// The flat tire's place.
        flat: Place,
        /// Whose nuts hold the spare.
        nuts: SpareNuts,
        /// How many nuts hold it, when they were counted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        studs: Option<u8>,
        /// The highest speed, as printed on the spare or in the manual; none when it was not found.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        limit: Option<Speed>,
        /// To be replaced within this distance, as printed; none when it was not found.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        replace_by: Option<Distance>,
    },
    /// A set of wheels was brought that goes on in this job, each laid out beside a corner.
    SetBrought {
        /// The job.
        job: JobId,
        /// Each wheel, and the corner it is laid out at: where it was before it was stored.
        wheels: Vec<Laid>,
    },
    /// A wheel with its tire came off and is stored.
    TireStored {
        /// The job.
        job: JobId,
        /// The tire.
        tire: TireId,
        /// Where it came off.
        at: Place,
        /// Where it is kept.
        rack: String,
    },
    /// Whose limits of tread depth hold, for which season, and when to speak of a tire above them.
    LimitsChosen {
        /// For this job alone; none for the book.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        job: Option<JobId>,
        /// What was chosen; the rest stays as it was.
        chosen: Chosen,
    },
    /// Parts of a photo are covered wherever it goes out: plates, faces. The photo itself stays as it is.
    PhotoCovered {
        /// The photo.
        photo: Digest,
        /// What is covered from now on; none when nothing is.
        boxes: Vec<CoverBox>,
    },
    /// A tool was put away: sold, broken, lost. What was done with it stays.
    ToolRetired {
        /// The tool.
        tool: ToolId,
        /// Why.
        reason: String,
    },
    /// A second person held the other side of a heavy wheel; one who is not in the book is named in the personal part.
    WheelShared {
        /// The job.
        job: JobId,
        /// Where.
        at: Place,
        /// Who, when that person is in the book.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        person: Option<PersonId>,
    },
    /// A learner answers each decision of the job before the core does, or no longer.
    AnswerFirst {
        /// The job.
        job: JobId,
        /// From now on, or no longer.
        on: bool,
    },
    /// A learner answered a decision before the core's answer was shown.
    AnswerGiven {
        /// The job.
        job: JobId,
        /// Both answers.
        learned: Learned,
    },
    /// An instructor saw steps of a learner, and signed them with a code on the learner's device.
    StepsSeen {
        /// The job.
        job: JobId,
        /// The instructor.
        by: PersonId,
        /// The steps.
        steps: Vec<SeenStep>,
    },
    /// An instructor set a code of their own.
    CodeSet {
        /// The instructor.
        person: PersonId,
        /// Its salted hash: a PHC string of Argon2id.
        hash: String,
    },
    /// A wrong code was given for an instructor.
    CodeRefused {
        /// The instructor.
        person: PersonId,
        /// When, by the device's own clock, also while earlier events are entered.
        clock: Moment,
    },
    /// What a vehicle has that changes how it is raised; none when it was looked for and not there.
    VehicleEquipped {
        /// The vehicle.
        vehicle: VehicleId,
        /// What.
        has: Vec<Equipment>,
    },
    /// The weight that is raised, and what the gear is marked for.
    GearRated {
        /// The job.
        job: JobId,
        /// The weight, from the vehicle's label or plate.
        weight: Load,
        /// The lowest rating marked on the gear that carries it.
        rating: Load,
    },
    /// A tire was measured around its tread with a tape.
    AroundMeasured {
        /// The job.
        job: JobId,
        /// Where the tire is or belongs.
        at: Place,
        /// The tire.
        tire: TireId,
        /// Its circumference.
        around: Span,
    },
    /// An earlier entry was wrong; this is what holds. Both stay.
    Corrected {
        /// The wrong entry.
        target: EntryId,
        /// What holds.
        fact: Box<Fact>,
        /// Why.
        reason: String,
    },
    /// An earlier entry is taken back. It stays in the book.
    Withdrawn {
        /// The entry.
        target: EntryId,
        /// Why.
        reason: String,
        /// It was the last thing that the device had said, and was taken back right away.
        #[serde(default, skip_serializing_if = "is_false")]
        undo: bool,
    },
    /// A thing was put away: no new job uses it. Everything that was done with it stays.
    Archived {
        /// The thing.
        thing: Thing,
        /// Why.
        reason: String,
    },
    /// A thing that was put away is in use again.
    BroughtBack {
        /// The thing.
        thing: Thing,
    },
}
}

impl Fact {
    /// What [`Fact::WorkApproved`] is about when the customer was told of what is unsafe.
    pub const UNSAFE_TOLD: &'static str = "unsafe-told";

    /// The job the fact belongs to.
    pub fn job(&self) -> Option<JobId> {
        match self {
            Self::JobOpened { job, .. }
            | Self::SpecificationUnknown { job, .. }
            | Self::JobParked { job, .. }
            | Self::JobResumed { job }
            | Self::JobClosed { job, .. }
            | Self::JobSigned { job, .. }
            | Self::HandsChanged { job, .. }
            | Self::OdometerRead { job, .. }
            | Self::ComplaintHeard { job, .. }
            | Self::DamageSeen { job, .. }
            | Self::WorkApproved { job, .. }
            | Self::TireRemoved { job, .. }
            | Self::MarkChalked { job, .. }
            | Self::MarkRead { job, .. }
            | Self::PhotoPending { job, .. }
            | Self::SidewallRead { job, .. }
            | Self::TreadMeasured { job, .. }
            | Self::PressureMeasured { job, .. }
            | Self::SensorRead { job, .. }
            | Self::DriveSeen { job, .. }
            | Self::PlanChosen { job, .. }
            | Self::Lifted { job, .. }
            | Self::WheelOff { job, .. }
            | Self::WheelOn { job, .. }
            | Self::NutTightened { job, .. }
            | Self::StepDone { job, .. }
            | Self::StepSkipped { job, .. }
            | Self::GateOpened { job, .. }
            | Self::FindingNoted { job, .. }
            | Self::ToolUsed { job, .. }
            | Self::WheelsChosen { job, .. }
            | Self::SpareSeen { job, .. }
            | Self::SetBrought { job, .. }
            | Self::TireStored { job, .. }
            | Self::WheelShared { job, .. }
            | Self::AnswerFirst { job, .. }
            | Self::AnswerGiven { job, .. }
            | Self::StepsSeen { job, .. }
            | Self::GearRated { job, .. }
            | Self::AroundMeasured { job, .. }
            | Self::RecheckTold { job, .. } => Some(*job),
            Self::TireFitted { job, .. } | Self::PhotoTaken { job, .. } | Self::LimitsChosen { job, .. } => *job,
            Self::Corrected { fact, .. } => fact.job(),
            Self::PersonAdded { .. }
            | Self::ToolAdded { .. }
            | Self::VehicleAdded { .. }
            | Self::VehicleEquipped { .. }
            | Self::SpecificationRecorded { .. }
            | Self::PhotoCovered { .. }
            | Self::ToolRetired { .. }
            | Self::CodeSet { .. }
            | Self::CodeRefused { .. }
            | Self::Archived { .. }
            | Self::BroughtBack { .. }
            | Self::Withdrawn { .. } => None,
        }
    }

    /// The photo whose file the fact needs.
    pub fn photo(&self) -> Option<Digest> {
        match self {
            Self::PhotoTaken { photo, .. } => Some(*photo),
            Self::SpecificationRecorded { photo, .. }
            | Self::DamageSeen { photo, .. }
            | Self::MarkChalked { photo, .. }
            | Self::FindingNoted { photo, .. } => *photo,
            Self::Corrected { fact, .. } => fact.photo(),
            _ => None,
        }
    }
}

/// What can be put away and brought back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Thing {
    /// A vehicle.
    Vehicle(VehicleId),
    /// A person.
    Person(PersonId),
    /// A tool.
    Tool(ToolId),
    /// The stored wheels of a vehicle.
    Set(VehicleId),
}

/// A part of a photo, in pixels of the photo as it came, seen upright; from its left and top.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct CoverBox {
    /// From the photo's left edge.
    pub left: u32,
    /// From its top.
    pub top: u32,
    /// How wide.
    pub width: u32,
    /// How high.
    pub height: u32,
}

/// What a person may do in the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Role {
    /// Works on vehicles and signs jobs.
    Mechanic,
    /// Learns: some steps are signed by an instructor.
    Apprentice,
    /// Teaches and signs an apprentice's steps.
    Instructor,
    /// Owns the vehicle, approves, drives.
    Customer,
}

/// What stands on the specification shelf.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "what", rename_all = "kebab-case")]
pub enum Shelf {
    /// Wheel nut torque, as printed.
    Torque {
        /// What is printed.
        spec: TorqueSpec,
        /// Studs on each wheel, when the manual or somebody told.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        studs: Option<u8>,
    },
    /// Cold pressure of each axle, from the placard.
    Placard {
        /// What is printed.
        placard: Placard,
    },
    /// Where the vehicle may be lifted.
    LiftPoints {
        /// As the manual says it.
        text: String,
    },
    /// Which axles drive, from the manual.
    Drive {
        /// The drive.
        drive: Drive,
    },
    /// The pattern the manual gives, by its code.
    Pattern {
        /// The pattern's code.
        pattern: String,
    },
    /// How thick brake pads must be at the least, from the manual.
    Brakes {
        /// Pads or linings.
        pads: Span,
    },
}

impl Shelf {
    /// What kind of specification it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Torque { .. } => Kind::Torque,
            Self::Placard { .. } => Kind::Placard,
            Self::LiftPoints { .. } => Kind::LiftPoints,
            Self::Drive { .. } => Kind::Drive,
            Self::Pattern { .. } => Kind::Pattern,
            Self::Brakes { .. } => Kind::Brakes,
        }
    }
}

/// The kinds of specification.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Wheel nut torque.
    Torque,
    /// Cold pressures.
    Placard,
    /// Lift points.
    LiftPoints,
    /// Which axles drive.
    Drive,
    /// The maker's rotation pattern.
    Pattern,
    /// Brake pads: their least thickness.
    Brakes,
}

/// What must be known about an odometer reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OdometerNote {
    /// Guessed, not read.
    Estimated,
    /// The instrument was replaced: it no longer counts from the start.
    ClusterReplaced,
}

/// A complaint in the words of the person who has it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Complaint {
    /// The words.
    pub text: String,
}

/// How somebody signed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "how", rename_all = "kebab-case")]
pub enum Signature {
    /// By name.
    Name,
    /// Drawn on the screen.
    Drawn {
        /// Empty: what was drawn stands in the personal part, where it can be erased.
        strokes: Vec<Vec<(u16, u16)>>,
    },
}

/// What a photo shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PhotoOf {
    /// A sidewall.
    Sidewall,
    /// The tread.
    Tread,
    /// A hub.
    Hub,
    /// The tire placard or door label.
    Placard,
    /// A manual's page.
    Manual,
    /// Damage or a finding.
    Damage,
    /// The license plate.
    Plate,
    /// The odometer.
    Odometer,
    /// The whole vehicle, as it came.
    Vehicle,
}

/// Who or what read a sidewall.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "source", rename_all = "kebab-case")]
pub enum ReadBy {
    /// A person, with eyes and a keypad.
    Typed,
    /// A camera reader, confirmed by the entry's author.
    Camera {
        /// The reader.
        reader: String,
        /// Digest of its model.
        model: Digest,
    },
}

/// What was seen of the drive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "from", rename_all = "kebab-case")]
pub enum DriveSeen {
    /// At a hub, under the vehicle.
    Hub {
        /// What.
        evidence: Evidence,
    },
    /// The manual's word.
    Manual {
        /// The drive.
        drive: Drive,
    },
    /// The owner's word.
    Owner {
        /// The drive.
        drive: Drive,
    },
}

/// One tire's move in a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Move {
    /// The tire.
    pub tire: TireId,
    /// From here.
    pub from: Place,
    /// To here; the same place when it stays.
    pub to: Place,
}

/// A wheel of a set, laid out beside a corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Laid {
    /// The tire.
    pub tire: TireId,
    /// The corner.
    pub at: Place,
}

/// Whose nuts hold a spare.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SpareNuts {
    /// The nuts of the wheel that came off: their seats fit the spare.
    Same,
    /// Nuts of its own, carried with the spare.
    Own,
}

/// How high a vehicle or a corner stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Arm {
    /// Wheels just clear of the ground.
    Clear,
    /// At working height.
    Full,
    /// Resting on locks or stands that were seen to hold.
    Held,
    /// Nobody and nothing is under the vehicle.
    AllClear,
    /// On the ground.
    Down,
}

/// By what a vehicle is raised.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Means {
    /// A two-post or four-post lift.
    Lift,
    /// A jack with stands.
    Stands,
    /// A jack alone.
    Jack,
}

/// Which nuts an entry speaks of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Nuts {
    /// One, by clock position from the top, seen from outside.
    One(u8),
    /// All of the wheel, one after another in order: so many.
    WheelInOrder(u8),
}

/// Which time over the nuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pass {
    /// Loosened a quarter turn while the tire still stands.
    Cracked,
    /// Begun by hand.
    Started,
    /// Drawn snug in order.
    Snug,
    /// To the final torque, with weight on the tire.
    Final,
    /// Checked again after some miles.
    Recheck,
    /// Loosened again with weight on the tire: the outer nuts of duals, so that the inner ones can be set.
    Loosened,
}

/// What a nut did when the wrench clicked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Turned {
    /// It moved before the click.
    Moved,
    /// It clicked without moving.
    Still,
}

/// What kind of sensors a vehicle has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SensorKind {
    /// A sensor in each wheel.
    Direct,
    /// By wheel speed: nothing in the wheel.
    Indirect,
    /// None.
    None,
    /// Not known.
    Unknown,
}

/// How a vehicle learns anew which sensor is where.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Relearn {
    /// By itself while it is driven.
    Drive,
    /// From its own menu or buttons.
    Menu,
    /// With a sensor tool at each wheel, or a magnet.
    WheelTool,
    /// With a tool at the diagnostic socket.
    Socket,
}

/// What a tool is, with what its papers say.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "tool", rename_all = "kebab-case")]
pub enum ToolKind {
    /// Torque wrench.
    Wrench {
        /// Its accuracy, step, range and calibration.
        papers: Wrench,
    },
    /// Tread depth gauge.
    DepthGauge {
        /// The smallest step it shows.
        resolution: Depth,
        /// Last calibration; none when not known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        calibrated: Option<Day>,
    },
    /// Pressure gauge.
    PressureGauge {
        /// The smallest step it shows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        resolution: Option<Pressure>,
        /// Last calibration; none when not known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        calibrated: Option<Day>,
        /// The highest pressure it shows.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        highest: Option<Pressure>,
    },
    /// Impact or air gun.
    Gun {
        /// Its power.
        papers: Gun,
    },
    /// Torque-limiting bar.
    Bar {
        /// Its marking and hex.
        papers: Bar,
    },
    /// Jack.
    Jack {
        /// What it lifts, as marked.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rating: Option<Load>,
    },
    /// Jack stand.
    Stand {
        /// What each holds, as marked.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rating: Option<Load>,
        /// How many there are, when told.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        count: Option<u8>,
    },
    /// Vehicle lift.
    Lift {
        /// What it lifts, as marked.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        rating: Option<Load>,
    },
}

/// A part that was looked at, where, and how it stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Look {
    /// Where; none for the vehicle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Place>,
    /// The part.
    pub part: LookAt,
    /// How it stands.
    pub state: State,
    /// In the mechanic's words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// What was found on a tire.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub damage: Option<TireDamage>,
    /// How thick a pad or disc was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Span>,
    /// How thick it must be at the least, as printed on the part itself.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<Span>,
}

/// What can be found on a tire.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(tag = "kind", content = "zone", rename_all = "kebab-case")]
pub enum TireDamage {
    /// A bump or knot.
    Bulge,
    /// A cut, crack or snag, no cord to be seen.
    Cut,
    /// Cord to be seen.
    Cord,
    /// A nail or screw, and where it sits.
    Nail(Zone),
}

/// Where on a tire's section something sits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Zone {
    /// In the tread, between the shoulders.
    Tread,
    /// In a shoulder.
    Shoulder,
    /// In a sidewall.
    Sidewall,
}

/// The parts that are looked at while a wheel is off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LookAt {
    /// The hub's face, where the wheel sits.
    HubFace,
    /// Studs and their threads.
    Studs,
    /// The seats of nuts and wheel.
    Seats,
    /// The valve; in older entries its cap too.
    Valve,
    /// The tire: cut, bulge, cord, nail.
    Tire,
    /// The wheel rim.
    Rim,
    /// Brake pads and disc, or shoes and drum.
    Brake,
    /// Brake pads or shoes: their thickness.
    Pads,
    /// Brake disc or drum: its thickness, cracks, scores.
    Disc,
    /// Brake hose.
    Hose,
    /// Boots of shafts and joints.
    Boots,
    /// Damper: leaks.
    Damper,
    /// Wheel bearing: play and noise.
    Bearing,
    /// The hub's bore; in older entries the centering ring too.
    HubBore,
    /// Balance weights.
    Weights,
    /// The valve's cap.
    ValveCap,
    /// The ring that centers the wheel on its hub.
    CenteringRing,
    /// Anything else.
    Other,
}

/// A step's answer, where no other fact holds it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Answer {
    /// It was seen.
    Seen,
    /// One of the step's choices.
    Choice(String),
    /// A count.
    Count(u32),
    /// Words.
    Text(String),
}
