//! The commands, in the order of a visit.

mod air;
mod backup;
mod bench;
mod book;
pub mod codes;
mod drive;
mod export;
mod jobs;
mod learning;
mod limits;
mod notes;
mod nuts;
mod people;
mod plan;
pub mod procedures;
mod raising;
mod read;
mod share;
mod shelf;
mod steps;
mod tires;
mod tools;
mod undo;
mod vehicles;
mod wheels;

pub use book::cannot;
use clap::Subcommand;
use lugbook::engine::{Command, Trouble};
use lugbook::entry::{Arm, Pass};

use crate::answer::Answer;
use crate::demo;
use crate::options::{Absent, Options};

/// The groups of the help, with their commands.
pub const GROUPS: &[(&str, &[&str])] = &[
    ("See it work", &["demo"]),
    (
        "The book",
        &[
            "person",
            "vehicle",
            "tool",
            "shelf",
            "limits",
            "procedure",
            "book",
            "card",
            "label",
            "history",
            "export",
            "cover",
            "share",
            "backup",
            "restore",
            "archive",
            "bring-back",
            "erase",
        ],
    ),
    ("The job", &["job", "hands", "second", "use", "complain", "damage", "approve", "decline", "told", "odometer"]),
    ("Which axles drive", &["hub", "owner-says", "drive"]),
    ("Tires", &["photo", "wall", "chalk", "tread", "tape", "plan", "wheels", "spare", "set", "store"]),
    ("Up and down", &["weigh", "raise", "held", "clear-under", "lower"]),
    ("Wheels", &["off", "look", "hang"]),
    ("Nuts", &["crack", "start", "snug", "torque", "loosen", "recheck"]),
    ("Air", &["air", "sensor", "lamp", "relearn", "tell-recheck"]),
    ("Learning", &["why", "answer-first", "answer", "instructor", "learner"]),
    ("Any step", &["seen", "choose", "count", "skip", "gate", "correct", "withdraw", "undo"]),
    ("The bench, which keeps nothing", &["read", "sidewall", "sizes", "tighten", "inflate", "rotate", "lift", "wear"]),
];

/// A command.
#[derive(Debug, Subcommand)]
pub enum Verb {
    /// Play an invented visit on a book of its own, and write its card
    Demo(demo::Demo),

    /// Add or list people
    #[command(subcommand)]
    Person(people::Person),
    /// Add or list vehicles
    #[command(subcommand)]
    Vehicle(vehicles::Vehicle),
    /// Add or list tools and what their papers say
    #[command(subcommand)]
    Tool(tools::Tool),
    /// Keep what manuals and door labels print
    #[command(subcommand)]
    Shelf(shelf::Shelf),
    /// Choose whose limits of tread depth hold
    Limits(limits::Limits),
    /// Add a shop's own procedure, or list them
    #[command(subcommand)]
    Procedure(procedures::Procedures),
    /// Show the book's front page, or check the book
    Book(book::Books),
    /// Write the card of a job
    Card(book::Card),
    /// Write labels for the wheels that were stored
    Label(book::Label),
    /// Write the history of a vehicle
    History(book::History),
    /// Write readings, jobs or rechecks for other programs
    #[command(subcommand)]
    Export(export::Export),

    /// Cover plates and faces on a photo before it goes out
    Cover(share::Cover),
    /// Write a copy of a photo to give away
    Share(share::Share),
    /// Show how backups stand, choose where they go, make one
    Backup(backup::Backups),
    /// Take in what a backup has and the book has not
    Restore(backup::Restore),

    /// Put a vehicle, person, tool or stored set away
    Archive(undo::Archive),
    /// Bring back what was put away
    BringBack(undo::BringBack),
    /// Erase a name, phone number or plate for good
    #[command(subcommand)]
    Erase(undo::Erase),

    /// Say the one next thing to do; open, park, sign a job
    Job(jobs::Jobs),
    /// Change whose hands do the steps
    Hands(notes::Hands),
    /// Name who holds the other side of a heavy wheel
    Second(notes::Second),
    /// Use a tool in this job
    Use(notes::Use),
    /// Write down the customer's complaint
    Complain(notes::Complain),
    /// Write down existing damage, or none
    Damage(notes::Damage),
    /// The customer approves the work
    Approve(notes::By),
    /// The customer declines the work
    Decline(notes::By),
    /// The customer was told of what is unsafe
    Told(notes::Told),
    /// Read the odometer
    Odometer(notes::Odometer),

    /// Write down what a hub shows of the drive
    Hub(drive::Hub),
    /// Write down what the owner says of the drive
    OwnerSays(drive::OwnerSays),

    /// Say which axles drive, as far as was seen
    Drive,

    /// Take a photo into the book
    Photo(tires::Photo),
    /// Write down what stands on a sidewall
    Wall(tires::Wall),
    /// Chalk a mark on a tire
    Chalk(tires::Chalk),
    /// Measure tread
    Tread(tires::Tread),
    /// Write down a tire's circumference, measured around its tread
    Tape(tires::Tape),
    /// Show the plans that are allowed, or choose one
    Plan(plan::Plans),
    /// Name the wheels that come off, where none goes elsewhere
    Wheels(wheels::Wheels),

    /// Read the spare that goes on for a flat tire
    Spare(wheels::Spare),

    /// Name the set of wheels that goes on: stored, or new
    Set(wheels::Set),
    /// Store the wheels that came off
    Store(wheels::Store),

    /// Write down the weight that is raised, and the rating
    Weigh(raising::Weigh),
    /// Raise the vehicle: clear of the ground, then full height
    Raise(raising::Raise),
    /// Locks or stands were seen to hold
    Held,
    /// Nobody and nothing is under the vehicle
    ClearUnder,
    /// Lower the vehicle to the ground
    Lower,

    /// Take a wheel off
    Off(wheels::Off),
    /// Write down how a part stands
    Look(wheels::Look),
    /// Read the mark at a corner and hang the wheel
    Hang(wheels::Hang),

    /// Crack nuts loose on the ground
    Crack(nuts::Turn),
    /// Begin nuts by hand
    Start(nuts::Turn),
    /// Draw nuts snug in order
    Snug(nuts::Turn),
    /// Torque nuts with the wrench: moved, or still
    Torque(nuts::Click),
    /// Loosen the outer nuts of duals before setting inner ones
    Loosen(nuts::Turn),
    /// Recheck nuts after some miles: moved, or still
    Recheck(nuts::Click),

    /// Set a pressure, or write down the one found
    Air(air::Air),
    /// Write down a sensor's number
    Sensor(air::Sensor),
    /// Write down the pressure warning lamp
    Lamp(air::Lamp),
    /// Learn the sensors' places anew, or tell the owner how
    Relearn(air::Relearning),
    /// Tell the driver when to come back for the recheck
    TellRecheck,

    /// Say why: evidence, rule and source of a decision
    Why(learning::Why),
    /// Let a learner answer before Lugbook does
    AnswerFirst(learning::First),
    /// Give a learner's answer to a decision
    Answer(learning::Answers),
    /// Sign what an instructor saw, set the code for it
    #[command(subcommand)]
    Instructor(learning::Instructor),
    /// Show what a learner did, or write the logbook
    #[command(subcommand)]
    Learner(learning::Learner),

    /// Answer a step that asks for a sight
    Seen(steps::Seen),
    /// Answer a step that asks for a choice
    Choose(steps::Choose),
    /// Answer a step that asks for a count
    Count(steps::Count),
    /// Skip a step with a reason
    Skip(steps::Skip),
    /// Open a gate with a reason
    Gate(steps::Gate),
    /// Correct a line of the job
    Correct(steps::Correct),
    /// Take a line of the job back
    Withdraw(steps::Withdraw),
    /// Take back what was said last, and say it again
    Undo(undo::Undo),

    /// Read a sidewall from photos of a wheel
    Read(read::Read),
    /// Read a sidewall: size, load, speed, date
    Sidewall(bench::Sidewall),
    /// Compare one size with another
    Sizes(bench::Sizes),
    /// Say what to set a wrench to, and in which order
    Tighten(bench::Tighten),
    /// Say what to set a tire to, so that it is right when cold
    Inflate(bench::Inflate),
    /// Plan a rotation from a file
    Rotate(bench::RotateFile),
    /// Plan an order of lifting from a file
    Lift(bench::LiftFile),
    /// Say how tread wears, from a file
    Wear(bench::WearFile),
}

/// Carries a command out.
pub fn run(verb: Verb, options: &Options) -> Result<Answer, Trouble> {
    let command: Command = match verb {
        Verb::Demo(said) => return said.run(options),
        Verb::Person(said) => return said.run(options),
        Verb::Vehicle(said) => return said.run(options),
        Verb::Tool(said) => return said.run(options),
        Verb::Shelf(said) => return said.run(options),
        Verb::Limits(said) => return said.run(options),
        Verb::Procedure(said) => return said.run(options),
        Verb::Book(said) => return said.run(options),
        Verb::Card(said) => return said.run(options),
        Verb::History(said) => return said.run(options),
        Verb::Export(said) => return said.run(options),
        Verb::Label(said) => return said.run(options),
        Verb::Share(said) => return said.run(options),
        Verb::Backup(said) => return said.run(options),
        Verb::Restore(said) => return said.run(options),
        Verb::Job(said) => return said.run(options),
        Verb::Plan(said) => return said.run(options),
        Verb::Read(said) => return said.run(options),
        Verb::Sidewall(said) => return said.run(options),
        Verb::Sizes(said) => return said.run(options),
        Verb::Tighten(said) => return said.run(options),
        Verb::Inflate(said) => return said.run(options),
        Verb::Rotate(said) => return said.run(options),
        Verb::Lift(said) => return said.run(options),
        Verb::Wear(said) => return said.run(options),
        Verb::Why(said) => return said.run(options),
        Verb::Instructor(said) => return said.run(options),
        Verb::Learner(said) => return said.run(options),
        Verb::AnswerFirst(said) => said.into(),
        Verb::Answer(said) => said.into(),
        Verb::Undo(said) => return said.run(options),
        Verb::Erase(said) => return said.run(options),
        Verb::Archive(said) => said.into(),
        Verb::BringBack(said) => said.into(),
        Verb::Cover(said) => said.into(),
        Verb::Hands(said) => said.into(),
        Verb::Second(said) => said.into(),
        Verb::Use(said) => said.into(),
        Verb::Complain(said) => said.into(),
        Verb::Damage(said) => said.into(),
        Verb::Approve(said) => said.approval(true),
        Verb::Decline(said) => said.approval(false),
        Verb::Told(said) => said.into(),
        Verb::Odometer(said) => said.into(),
        Verb::Hub(said) => said.into(),
        Verb::OwnerSays(said) => said.into(),
        Verb::Drive => return drive::verdict(options),
        Verb::Photo(said) => said.into(),
        Verb::Wall(said) => said.into(),
        Verb::Chalk(said) => said.into(),
        Verb::Tread(said) => said.into(),
        Verb::Tape(said) => said.into(),
        Verb::Wheels(said) => said.into(),
        Verb::Spare(said) => said.into(),
        Verb::Set(said) => said.into(),
        Verb::Store(said) => said.into(),
        Verb::Weigh(said) => said.into(),
        Verb::Raise(said) => said.into(),
        Verb::Held => Command::Lift { arm: Arm::Held },
        Verb::ClearUnder => Command::Lift { arm: Arm::AllClear },
        Verb::Lower => Command::Lift { arm: Arm::Down },
        Verb::Off(said) => said.into(),
        Verb::Look(said) => said.try_into()?,
        Verb::Hang(said) => said.into(),
        Verb::Crack(said) => said.pass(Pass::Cracked)?,
        Verb::Start(said) => said.pass(Pass::Started)?,
        Verb::Snug(said) => said.pass(Pass::Snug)?,
        Verb::Torque(said) => said.pass(Pass::Final)?,
        Verb::Loosen(said) => said.pass(Pass::Loosened)?,
        Verb::Recheck(said) => said.pass(Pass::Recheck)?,
        Verb::Air(said) => said.into(),
        Verb::Sensor(said) => said.into(),
        Verb::Lamp(said) => said.into(),
        Verb::Relearn(said) => said.into(),
        Verb::TellRecheck => Command::TellRecheck,
        Verb::Seen(said) => said.into(),
        Verb::Choose(said) => said.into(),
        Verb::Count(said) => said.into(),
        Verb::Skip(said) => said.into(),
        Verb::Gate(said) => said.into(),
        Verb::Correct(said) => said.into(),
        Verb::Withdraw(said) => said.into(),
    };
    Answer::of_change(&options.act(command, Absent::Refuse)?)
}
