//! Everything that can be said to the book, as a shell says it: readings and
//! places as text, so that they are read in one place, here in the core.

use std::fmt;
use std::path::PathBuf;

use serde::{Deserialize, Serialize};

use super::code::Code;
use super::papers::Papers;
use crate::entry::{LookAt, PhotoOf, ReadBy, Role, SidewallSide, TireLooks};
use crate::finding::State;
use crate::limits::{Region, Season};
use crate::vehicle::hub::Evidence;
use crate::vehicle::{Class, Drive, Equipment};

/// What can be put away and brought back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kept {
    /// A vehicle.
    Vehicle,
    /// A person.
    Person,
    /// A tool.
    Tool,
    /// The stored wheels of a vehicle.
    Set,
}

/// A command. Its debug form tells its kind alone: names and numbers never get into a log.
#[derive(Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "kebab-case")]
pub enum Command {
    /// Adds a person.
    AddPerson {
        /// The name.
        name: String,
        /// What the person may do.
        role: Role,
        /// A phone number.
        phone: Option<String>,
    },
    /// Adds a vehicle with tires at all its places.
    AddVehicle {
        /// What it is called in the shop.
        name: String,
        /// Make, model and year as the owner says it.
        model: String,
        /// Its class.
        class: Class,
        /// Each axle from the front, `single` or `dual`; two single ones when none is given.
        #[serde(default)]
        axles: Vec<String>,
        /// What it has that changes how it is raised; `None` when nobody looked.
        #[serde(default)]
        has: Option<Vec<Equipment>>,
        /// A spare is carried.
        spare: bool,
        /// It belongs to the person who works on it.
        own: bool,
        /// The plate.
        plate: Option<String>,
    },
    /// What a vehicle has that changes how it is raised.
    Equip {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// What; empty when it was looked for and is not there.
        has: Vec<Equipment>,
    },
    /// Adds a tool, or what its papers say now.
    AddTool {
        /// What it is called.
        name: String,
        /// What it is, with what its papers say.
        papers: Papers,
    },
    /// Puts a tool away: no new job uses it.
    RetireTool {
        /// The tool.
        tool: String,
        /// Why.
        reason: String,
    },
    /// Records the wheel torque of the vehicle's model, as printed.
    RecordTorque {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// Each printing: `125..150 N.m`, `90..110 ft.lb`.
        printed: Vec<String>,
        /// The thread: `M14 x 1.5`.
        thread: Option<String>,
        /// Condition of the threads in the manual's words: `dry`, `oiled`, or as it says.
        condition: Option<String>,
        /// Recheck distances: `25 mi`.
        recheck: Vec<String>,
        /// Studs on each wheel.
        studs: Option<u8>,
        /// The manual's title and page.
        source: String,
        /// A photo of the page, by its number in the job.
        photo: Option<usize>,
    },
    /// Records the placard pressures of the vehicle's model.
    RecordPlacard {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// Each axle's cold pressure, from the front.
        axles: Vec<String>,
        /// The spare's.
        spare: Option<String>,
        /// The size on the placard.
        size: Option<String>,
        /// Where it stands.
        source: String,
        /// A photo of the label, by its number in the job.
        photo: Option<usize>,
    },
    /// Records which axles drive, from the manual.
    RecordDrive {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// The drive.
        drive: Drive,
        /// The manual's title and page.
        source: String,
    },
    /// Records the maker's rotation pattern.
    RecordPattern {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// The pattern's code.
        pattern: String,
        /// The manual's title and page.
        source: String,
    },
    /// Records the lift points in the manual's words.
    RecordLiftPoints {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// The words.
        text: String,
        /// The manual's title and page.
        source: String,
    },
    /// Records how thick brake pads must be at the least.
    RecordBrakes {
        /// The vehicle; the one in the bay when none is named.
        vehicle: Option<String>,
        /// Pads or linings: `2 mm`.
        pads: String,
        /// The manual's title and page.
        source: String,
    },
    /// The torque specification or the placard can't be had.
    NotKnown {
        /// `torque` or `placard`.
        what: crate::entry::Kind,
    },
    /// Chooses whose limits of tread depth hold; what is left out stays as it was.
    ChooseLimits {
        /// Whose limits.
        region: Option<Region>,
        /// The season before the next visit.
        season: Option<Season>,
        /// Up to so much above the limit a tire is at the limit: `1/32`.
        at_limit: Option<String>,
        /// Up to so much above the limit a tire is to be watched: `2/32`.
        watch: Option<String>,
        /// For the job in the bay alone, not for the book.
        this_job: bool,
    },
    /// Sets the code that an instructor signs with.
    SetCode {
        /// The instructor.
        person: String,
        /// The new code.
        code: Code,
        /// The code that holds until now, when one does.
        current: Option<Code>,
    },
    /// An instructor signs what they saw of an apprentice's work.
    SignSteps {
        /// The instructor.
        by: String,
        /// Their code.
        code: Code,
        /// Steps by their ids; all that wait when none is named.
        steps: Vec<String>,
        /// Where, for steps at each wheel.
        at: Option<String>,
        /// In every job that is open or parked, not only in the one in the bay.
        every_job: bool,
    },
    /// A learner answers each decision before the core does, or no longer.
    AnswerFirst {
        /// From now on, or no longer.
        on: bool,
    },
    /// A learner answers a decision; then the core's answer is shown beside it.
    AnswerDecision {
        /// Which.
        decision: crate::entry::Decision,
        /// `rear`, `rearward-cross`, `FL+FR RL+RR`, `1 3 5 2 4`, `137 N.m`.
        answer: String,
    },
    /// Takes back what this device said last.
    Undo,
    /// Puts a thing away: no new job uses it, and everything that was done with it stays.
    Archive {
        /// What kind of thing.
        kept: Kept,
        /// Its name; of a set, its vehicle's.
        name: String,
        /// Why.
        reason: String,
    },
    /// Brings back a thing that was put away.
    BringBack {
        /// What kind of thing.
        kept: Kept,
        /// Its name; of a set, its vehicle's.
        name: String,
    },
    /// Opens a job.
    OpenJob {
        /// The vehicle.
        vehicle: String,
        /// The procedure's id.
        procedure: String,
        /// Circumstances that the procedure leaves to be settled.
        circumstances: Vec<String>,
        /// Practice: kept out of wear, due dates and history.
        practice: bool,
    },
    /// Puts the job aside.
    ParkJob {
        /// Why.
        reason: String,
    },
    /// Takes a parked job up again.
    ResumeJob {
        /// Its number; the last parked one when none is given.
        job: Option<usize>,
    },
    /// Ends the job without a signature.
    CloseJob {
        /// Why.
        reason: String,
    },
    /// Signs the job, by name or by hand.
    Sign {
        /// What was drawn, as [`Strokes`](crate::entry::Strokes) are written; by name when nothing was.
        drawn: Option<String>,
    },
    /// Changes whose hands do the steps.
    Hands {
        /// The person.
        person: String,
    },
    /// Names who holds the other side of heavy wheels.
    ShareWheels {
        /// Who.
        person: String,
        /// Which wheels; all that come off when none is named.
        at: Vec<String>,
    },
    /// Uses a tool in this job.
    UseTool {
        /// The tool.
        tool: String,
    },
    /// The customer's complaint.
    Complain {
        /// The words.
        text: String,
    },
    /// Existing damage, or none.
    Damage {
        /// Where.
        at: Option<String>,
        /// What; none when nothing was found.
        text: Option<String>,
        /// Its photo, by its number in the job.
        photo: Option<usize>,
    },
    /// The customer approves or declines the work.
    Approve {
        /// Approved.
        approved: bool,
        /// By whom.
        by: Option<String>,
        /// What that person drew to sign, as [`Strokes`](crate::entry::Strokes) are written.
        drawn: Option<String>,
    },
    /// The customer was told of what is unsafe, and accepts or declines repair.
    UnsafeTold {
        /// The customer lets it be repaired, or leaves the vehicle.
        accepts: bool,
        /// Who was told.
        by: Option<String>,
        /// What that person drew to sign, as [`Strokes`](crate::entry::Strokes) are written.
        drawn: Option<String>,
    },
    /// The odometer.
    Odometer {
        /// The reading.
        reading: String,
        /// Guessed, not read.
        estimated: bool,
        /// The instrument was replaced.
        replaced: bool,
    },
    /// What was seen at a hub.
    Hub {
        /// At which corner; when given, it says axle and side.
        at: Option<String>,
        /// The look or the turn.
        evidence: Evidence,
    },
    /// What the owner says of the drive.
    OwnerSaysDrive {
        /// The drive.
        drive: Drive,
    },
    /// The camera is about to open.
    PhotoPending {
        /// Of what.
        of: PhotoOf,
        /// Where.
        at: Option<String>,
    },
    /// A photo.
    Photo {
        /// The file.
        file: PathBuf,
        /// Of what.
        of: PhotoOf,
        /// Where.
        at: Option<String>,
    },
    /// Covers parts of a photo wherever it goes out; none uncovers it. The photo itself stays as it is.
    Cover {
        /// The photo, by its number in the job.
        photo: usize,
        /// The job; the last one when none is given.
        job: Option<usize>,
        /// Each part: left, top, width and height in pixels of the upright photo: `120,80,300,90`.
        boxes: Vec<String>,
    },
    /// What stands on a sidewall.
    Sidewall {
        /// Where.
        at: String,
        /// Which side.
        side: SidewallSide,
        /// The text.
        text: String,
        /// What the tire looks like beyond its lettering.
        looks: TireLooks,
        /// The tire laid out there that goes on, not the one that is on.
        #[serde(default)]
        coming: bool,
        /// By whom or what it was read; typed when nothing is said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        by: Option<ReadBy>,
    },
    /// A mark chalked on a tire.
    Mark {
        /// Where the tire is.
        at: String,
        /// The mark; the place's own name when none is given.
        mark: Option<String>,
        /// The tire laid out there that goes on.
        #[serde(default)]
        coming: bool,
    },
    /// Tread depths.
    Tread {
        /// Where.
        at: String,
        /// Grooves from the outer one inward, several places around set apart by `/ ` or `;`.
        depths: String,
        /// The lowest spot seen, when lower than all of them.
        lowest: Option<String>,
        /// Why a reading that contradicts the last one stands.
        reason: Option<String>,
        /// The tire laid out there that goes on.
        #[serde(default)]
        coming: bool,
    },
    /// A tire measured around its tread with a tape.
    Around {
        /// Where.
        at: String,
        /// The circumference: `126 in`.
        around: String,
    },
    /// The weight that is raised, and what the gear is marked for.
    Weigh {
        /// From the vehicle's label or plate: `5200 lb`.
        weight: String,
        /// The lowest rating of the gear that carries it: `3 t`.
        rating: String,
    },
    /// Chooses a plan.
    ChoosePlan {
        /// Its number in the answer, from 1; or a pattern's code.
        plan: String,
    },
    /// Names the wheels that come off, when none goes elsewhere.
    ChooseWheels {
        /// Where.
        at: Vec<String>,
    },
    /// Changes a flat wheel for the spare: moves of their own, instead of a plan.
    Flat {
        /// Where the flat is.
        at: String,
        /// The manual wants no temporary spare at a driven wheel.
        good_wheel_forward: bool,
    },
    /// The flat tire, and the spare that takes its place.
    Spare {
        /// Where the flat tire is.
        flat: String,
        /// What stands on the spare's sidewall.
        text: String,
        /// The spare's pressure.
        pressure: Option<String>,
        /// Whose nuts hold it.
        nuts: crate::entry::SpareNuts,
        /// How many.
        studs: Option<u8>,
        /// The highest speed, as printed: `50 mph`.
        limit: Option<String>,
        /// To be replaced within this distance, as printed: `50 mi`.
        replace_by: Option<String>,
    },
    /// Names the set that goes on.
    BringSet {
        /// Wheels that this book does not know yet, not the stored ones.
        new: bool,
    },
    /// Stores wheels that came off.
    Store {
        /// Where they are kept.
        rack: String,
        /// Where the wheel came off; all that came off when none is named.
        at: Option<String>,
    },
    /// Raises, sets down or lowers the vehicle.
    Lift {
        /// What.
        arm: crate::entry::Arm,
    },
    /// Takes a wheel off.
    WheelOff {
        /// Where.
        at: String,
    },
    /// How a part stands.
    Look {
        /// Where.
        at: Option<String>,
        /// The part; all five parts of a wheel when none is named.
        part: Option<LookAt>,
        /// How it stands.
        state: State,
        /// In the mechanic's words.
        note: Option<String>,
        /// What was found on a tire.
        #[serde(default)]
        damage: Option<crate::entry::TireDamage>,
        /// How thick a pad or disc was measured: `4 mm`.
        #[serde(default)]
        thickness: Option<String>,
        /// How thick it must be at the least, as printed on it: `22 mm`.
        #[serde(default)]
        least: Option<String>,
        /// Its photo, by its number in the job.
        photo: Option<usize>,
    },
    /// Reads the mark at a corner and hangs the wheel.
    Hang {
        /// Where.
        at: String,
        /// The mark on the tire.
        mark: String,
    },
    /// Turns nuts.
    Nuts {
        /// Where.
        at: String,
        /// Which pass.
        pass: crate::entry::Pass,
        /// Which nut; the whole wheel in order when none is given.
        nut: Option<u8>,
        /// It moved before the click, at passes with a click.
        moved: Option<bool>,
    },
    /// A pressure.
    Pressure {
        /// Where.
        at: String,
        /// The reading.
        pressure: String,
        /// Set to this, not only found.
        set: bool,
        /// The tire is cold.
        cold: Option<bool>,
    },
    /// A sensor's number, or that it was relearned.
    Sensor {
        /// Where.
        at: String,
        /// Its number.
        number: String,
        /// In the wheel laid out there that goes on.
        #[serde(default)]
        coming: bool,
    },
    /// The sensors' places are learned anew, the owner is told how, or it is not needed.
    Relearn {
        /// `done`, `owner-told` or `not-needed`.
        outcome: String,
        /// How the vehicle learns them.
        method: Option<crate::entry::Relearn>,
    },
    /// The pressure warning lamp.
    Lamp {
        /// It is on.
        on: bool,
        /// What kind of system.
        sensors: crate::entry::SensorKind,
    },
    /// The recheck is told to the driver.
    TellRecheck,
    /// Answers a step that asks for a sight, a choice or a count.
    Answer {
        /// The step; the next one when none is named.
        step: Option<String>,
        /// Where.
        at: Option<String>,
        /// The answer: `seen`, a choice, a count.
        answer: String,
    },
    /// Skips a step.
    Skip {
        /// The step; the next one when none is named.
        step: Option<String>,
        /// Where.
        at: Option<String>,
        /// Why.
        reason: String,
    },
    /// Opens a gate.
    OpenGate {
        /// The held step; the next one when none is named.
        step: Option<String>,
        /// Where, for a step at each wheel.
        at: Option<String>,
        /// Why.
        reason: String,
    },
    /// Corrects a line of the job: same kind of value, told anew.
    Correct {
        /// The line's number in the job's log.
        line: usize,
        /// The value that holds.
        value: String,
        /// Why.
        reason: String,
    },
    /// Takes a line of the job back.
    Withdraw {
        /// The line's number in the job's log.
        line: usize,
        /// Why.
        reason: String,
    },
}

impl fmt::Debug for Command {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let kind = serde_json::to_value(self).ok().and_then(|said| Some(said.get("do")?.as_str()?.to_owned()));
        write!(f, "Command({})", kind.as_deref().unwrap_or("?"))
    }
}
