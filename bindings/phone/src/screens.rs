//! Screens as they cross the boundary: finished, worded, immutable records.
//!
//! Each is the core's record of the same name; where that name is Foundation's or
//! Kotlin's, it has another one here.

use lugbook::engine::{self, screen};

use crate::cross::{Cross, record, variants};
use crate::manner::Manner;

variants! {
    /// How a field is filled in.
    FieldKind of screen::FieldKind {
        /// A short text.
        Text,
        /// A text of some sentences.
        LongText,
        /// A code or passphrase: never shown, never kept by the shell.
        Secret,
        /// A reading in one of the field's units: the keypad. Without a unit typed, the field's own is taken.
        Reading,
        /// Several readings in a row, one a groove: the keypad goes on by itself.
        Grooves,
        /// A whole number.
        Count,
        /// One of the choices, by its code.
        One,
        /// Any number of the choices, their codes set apart by spaces.
        Several,
        /// `yes` or `no`.
        YesNo,
        /// A photo's file, by its path: the camera or the picker.
        Photo,
        /// A folder, by its path.
        Folder,
        /// A file, by its path.
        File,
        /// A day: `2026-03-31`.
        Day,
        /// Several short texts, one a line.
        Lines,
        /// A circle dragged over the photo in hand: middle across, middle down and radius, each as a share of the
        /// photo's width, set apart by spaces.
        Ring,
        /// A signature drawn with the finger on a field three times as wide as it is high: strokes set apart by `;`,
        /// points by a blank, each `across,down` in thousandths of the field; at most 60 strokes and 2,000 points.
        /// Empty signs by name.
        Drawn,
    }
}

variants! {
    /// How much an action weighs on its screen.
    ActionWeight of screen::Weight {
        /// The next thing to do: across the full width at the bottom.
        Main,
        /// Another answer to the same step.
        Beside,
        /// Something else that can be done now.
        Aside,
        /// What can't be taken back, or opens a gate: the shell asks once more.
        Grave,
    }
}

variants! {
    /// What an action leads to.
    ActionPace of screen::Pace {
        /// It is done when it comes back.
        Quick,
        /// It may take seconds: the shell starts it as a task, with progress and a way to stop it.
        Long,
    }
}

variants! {
    /// Which hand holds the device, so that the main action lies under its thumb.
    HoldingHand of screen::Hand {
        /// The right one.
        Right,
        /// The left one.
        Left,
    }
}

variants! {
    /// What screens are drawn on.
    ScreenGround of screen::Ground {
        /// As the device has it.
        Device,
        /// Light paper, for the sun.
        Paper,
        /// Dark rubber, for the night.
        Rubber,
    }
}

variants! {
    /// How a job stands.
    JobStatus of lugbook::logbook::Status {
        /// In the bay.
        Open,
        /// Put aside.
        Parked,
        /// Signed: finished.
        Signed,
        /// Ended without a signature.
        Closed,
    }
}

record! {
    /// A reading for a screen: as it was read, and worded.
    Quantity of lugbook::words::Quantity {
        /// The value as read.
        value: f64,
        /// The unit as read: `mm`, `1/32in`, `N.m` …
        unit: String,
        /// What a person reads, in the chosen units.
        text: String,
        /// What a screen reader says.
        spoken: String,
    }
}

record! {
    /// One of a field's choices.
    FieldChoice of screen::Choice {
        /// What is entered.
        code: String,
        /// What a person reads.
        text: String,
        /// What a screen reader says.
        spoken: String,
    }
}

record! {
    /// One groove of a tread reading.
    GrooveField of screen::Groove {
        /// Which groove.
        label: String,
        /// What a screen reader says.
        spoken: String,
        /// The last visit's value there, in words.
        last: Option<String>,
    }
}

record! {
    /// One thing to fill in.
    EntryField of screen::Field {
        /// Its code: what an entered value names.
        code: String,
        /// What stands beside it.
        label: String,
        /// What a screen reader says.
        spoken: String,
        /// How it is filled in.
        kind: FieldKind,
        /// It can't be left empty.
        required: bool,
        /// The choices, where there are some.
        choices: Vec<FieldChoice>,
        /// The unit of a value without one; none where there is no unit.
        unit: Option<String>,
        /// Units to choose from.
        units: Vec<FieldChoice>,
        /// Decimals that a gauge in each of these units is read to.
        decimals: Vec<u32>,
        /// The lowest value that is taken, in the field's own unit.
        least: Option<f64>,
        /// The highest value that is taken, in the field's own unit.
        most: Option<f64>,
        /// The last visit's value, in words.
        last: Option<String>,
        /// What it holds already.
        filled: Option<String>,
        /// The grooves, for a tread reading.
        grooves: Vec<GrooveField>,
        /// The photo that a circle is dragged over: its path, upright and of a screen's size; none for any other field.
        photo: Option<String>,
    }
}

record! {
    /// One thing that can be tapped now. A screen lists all of them; there is no other way to say something to the book.
    ScreenAction of screen::Action {
        /// What is handed back when it is tapped: good until the book changes.
        token: String,
        /// What it is, the same in every language.
        code: String,
        /// Where, for what is done at a wheel.
        at: Option<String>,
        /// What stands on it.
        label: String,
        /// What a screen reader says.
        spoken: String,
        /// How much it weighs.
        weight: ActionWeight,
        /// Whether it takes its time.
        pace: ActionPace,
        /// What is asked once more before it is carried out.
        confirm: Option<String>,
        /// What is to be filled in; empty for one tap.
        fields: Vec<EntryField>,
    }
}

record! {
    /// A caution before a step.
    CautionLine of engine::CautionLine {
        /// The caution's code.
        code: String,
        /// danger, warning, caution or notice, as a word.
        signal: String,
        /// The same as a code: `danger`, `warning`, `caution` or `notice`.
        signal_code: String,
        /// The sentence.
        sentence: String,
        /// It was shown in full earlier in this job.
        again: bool,
    }
}

record! {
    /// Where an action stands in the order of lifts.
    TurnView of engine::TurnView {
        /// The action's number, from 1.
        n: u32,
        /// How many actions there are.
        of: u32,
        /// Which lift it belongs to; 0 before the first.
        lift: u32,
        /// How many lifts there are.
        lifts: u32,
        /// Where it stands, which tire it handles, and what else belongs to it.
        detail: String,
    }
}

record! {
    /// One task of the job.
    TaskLine of engine::TaskLine {
        /// The step's id.
        step: String,
        /// Where.
        at: Option<String>,
        /// What to do.
        sentence: String,
        /// `done`, `skipped`, `ready` or `held`.
        state: String,
        /// What the gate waits for, or why it was skipped.
        why: Vec<String>,
    }
}

record! {
    /// One line of the job's log.
    LogLine of engine::LogLine {
        /// Its number, for corrections.
        line: u32,
        /// The entry's id.
        entry: String,
        /// When, as far as the device knew.
        time: String,
        /// The same as a person reads it: the day, hours and minutes in universal time.
        said_at: String,
        /// Who said it.
        author: String,
        /// The sentence.
        sentence: String,
        /// It was corrected since.
        corrected: bool,
    }
}

record! {
    /// A job on the front page.
    JobLine of engine::JobLine {
        /// Its number.
        job: u32,
        /// The vehicle's name.
        vehicle: String,
        /// The procedure's title.
        title: String,
        /// How it stands.
        status: JobStatus,
        /// How it stands, in words.
        status_text: String,
        /// The day it was opened.
        opened: String,
        /// Practice.
        practice: bool,
    }
}

record! {
    /// A person on the front page.
    PersonLine of engine::PersonLine {
        /// The name.
        name: String,
        /// The role, in words.
        role: String,
    }
}

record! {
    /// One action of the order of lifts.
    ActionLine of engine::ActionLine {
        /// Its number, from 1.
        n: u32,
        /// What is done, as a code.
        act: String,
        /// Where.
        at: Vec<String>,
        /// The sentence, with its place and wheel.
        sentence: String,
        /// The cautions before it.
        caution: Vec<CautionLine>,
        /// It is done.
        done: bool,
    }
}

record! {
    /// How this device's backups stand.
    BackupView of engine::BackupView {
        /// The folder that backups go to by themselves.
        into: Option<String>,
        /// They are locked with a passphrase.
        locked: bool,
        /// The file of the last good backup.
        last_good: Option<String>,
        /// When that was made.
        last_good_at: Option<String>,
        /// Entries of the book that are in no good backup of this device.
        not_in_it: u64,
        /// All of that in sentences.
        sentences: Vec<String>,
        /// What went wrong last, and what to do; none when all is well.
        trouble: Option<String>,
    }
}

record! {
    /// A step that waits for an instructor's signature.
    WaitingLine of engine::WaitingLine {
        /// The job's number.
        job: u32,
        /// The step's id.
        step: String,
        /// Where.
        at: Option<String>,
        /// Whose hands did it.
        learner: String,
        /// What an instructor must have seen.
        text: String,
    }
}

record! {
    /// How a person stands with a competence.
    StandingLine of engine::StandingLine {
        /// The competence's code.
        competence: String,
        /// In words.
        name: String,
        /// In so many jobs done with own hands.
        done: u32,
        /// So many of them practice.
        practice: u32,
        /// In so many jobs seen by an instructor.
        seen: u32,
        /// Who signed, and in how many jobs.
        signed_by: Vec<NamedCount>,
        /// All of it in a sentence.
        text: String,
    }
}

record! {
    /// A learner's answer beside the core's.
    AnswerLine of engine::AnswerLine {
        /// The job's number.
        job: u32,
        /// The decision's code.
        decision: String,
        /// Both answers, and whether they are the same, in a sentence.
        text: String,
        /// Whether they are the same; none where the core had none.
        same: Option<bool>,
    }
}

record! {
    /// What a learner has done.
    LearnerView of engine::LearnerView {
        /// Who.
        person: PersonLine,
        /// In so many jobs.
        jobs: u32,
        /// Competences in the order of a visit.
        competences: Vec<StandingLine>,
        /// Answers, oldest first.
        answers: Vec<AnswerLine>,
    }
}

record! {
    /// A point.
    DrawnPoint of screen::Point {
        /// From the left, 0 to 1.
        x: f64,
        /// From the top.
        y: f64,
    }
}

record! {
    /// A wheel from above.
    WheelShape of screen::WheelShape {
        /// Its place's name.
        at: String,
        /// What a screen reader says.
        spoken: String,
        /// The mark on the tire that is there, or will be.
        mark: Option<String>,
        /// Its middle.
        middle: DrawnPoint,
        /// Its width.
        width: f64,
        /// Its length; as its width for a spare, which lies flat.
        length: f64,
        /// Where its name stands.
        name_at: DrawnPoint,
        /// Which end of the name stands there: `start`, `middle`, `end`.
        name_anchor: String,
    }
}

record! {
    /// An arrow from a wheel to the place it goes to.
    ArrowShape of screen::ArrowShape {
        /// From this place.
        from: String,
        /// To this one.
        to: String,
        /// Its start, the two points that pull at it, its head.
        points: Vec<DrawnPoint>,
        /// The wheel hangs there already.
        done: bool,
    }
}

record! {
    /// A vehicle from above, its front at the top.
    VehicleDrawing of screen::VehicleDrawing {
        /// Its height, where its width is 1.
        height: f64,
        /// The body: its upper left corner.
        body_from: DrawnPoint,
        /// The body: its lower right corner.
        body_to: DrawnPoint,
        /// The height of each axle.
        axles: Vec<f64>,
        /// The wheels.
        wheels: Vec<WheelShape>,
        /// The moves.
        arrows: Vec<ArrowShape>,
        /// All of it in a sentence.
        spoken: String,
    }
}

record! {
    /// One nut of a wheel.
    NutShape of screen::NutShape {
        /// Its number by clock position, 1 at the top, clockwise, seen from outside.
        nut: u8,
        /// Its turn in the order, from 1.
        turn: u32,
        /// Its middle.
        middle: DrawnPoint,
        /// `done`, `next` or `waiting`.
        state: String,
        /// What a screen reader says.
        spoken: String,
    }
}

record! {
    /// The nuts of a wheel, seen from outside.
    NutCircle of screen::NutCircle {
        /// The wheel.
        at: String,
        /// The nuts by clock position.
        nuts: Vec<NutShape>,
        /// The radius of a nut.
        radius: f64,
        /// What the wrench is set to, at the final pass and when it is known.
        target: Option<Quantity>,
        /// How many are done, in words.
        told: String,
    }
}

record! {
    /// A step as a screen shows it.
    StepView of screen::StepView {
        /// Its id.
        step: String,
        /// What to do, a sentence.
        sentence: String,
        /// What a screen reader says.
        spoken: String,
        /// Where.
        at: Option<String>,
        /// What is asked, as a code.
        asks: String,
        /// The cautions that stand before it.
        cautions: Vec<CautionLine>,
        /// What its gate waits for; empty when the step is free.
        gate: Vec<String>,
        /// What else belongs to it: the printed figure, the van, the second person, the tire laid out.
        notes: Vec<String>,
        /// Where it stands in the order of lifts.
        turn: Option<TurnView>,
        /// The nuts, when it turns nuts.
        nuts: Option<NutCircle>,
        /// `done`, `skipped`, `ready` or `held`.
        state: String,
    }
}

record! {
    /// One suggestion.
    SightSuggestion of screen::SightSuggestion {
        /// What it says: the choice that accepts it.
        text: String,
        /// How likely it is right, 0 to 1.
        odds: f64,
        /// The same in words.
        odds_text: String,
        /// What a screen reader says.
        spoken: String,
        /// What it was read from: a picture, PNG.
        cut: Option<Vec<u8>>,
    }
}

record! {
    /// One thing that is read, with what it may say.
    SightLine of screen::SightLine {
        /// Its code: that of the field that takes it.
        code: String,
        /// What it is.
        label: String,
        /// What it may say, best first.
        suggestions: Vec<SightSuggestion>,
        /// What stands there without a suggestion.
        empty: Option<String>,
    }
}

record! {
    /// What was read on a tire's photos.
    SightView of screen::SightView {
        /// A line for each thing that is read: size, service description, DOT number.
        lines: Vec<SightLine>,
        /// Words that are molded on it.
        words: Vec<String>,
        /// Whether the arrow beside ROTATION fits the side of the vehicle that the tire is on; none without an arrow.
        arrow: Option<String>,
        /// What is chalked on it, and whether that is the mark of this tire; none without chalk.
        chalk: Option<String>,
        /// What to do differently when a photo is taken again.
        hints: Vec<String>,
        /// What the reading is worth, and the one close-up that would settle most.
        sentence: String,
    }
}

record! {
    /// The bay.
    BayScreen of screen::BayScreen {
        /// The job's number; none when no job is open.
        job: Option<u32>,
        /// The vehicle's name.
        vehicle: String,
        /// The procedure's title.
        title: String,
        /// Whose hands do the steps.
        hands: String,
        /// It is practice.
        practice: bool,
        /// What a person must be told first: what was damaged and what came back, a backup that failed.
        told: Vec<String>,
        /// The step in hand; none when all steps are over or no job is open.
        step: Option<StepView>,
        /// What stands there instead of a step.
        empty: Option<String>,
        /// The last step that was answered.
        last: Option<String>,
        /// Steps over.
        done: u32,
        /// All steps that apply.
        of: u32,
        /// How far the job is, in words.
        progress: String,
        /// A photo whose camera was opened and that never came: what of.
        pending_photo: Option<String>,
        /// What was read on the photos of the tire that the step asks about.
        sight: Option<SightView>,
        /// Every task of the job.
        tasks: Vec<TaskLine>,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// One plan with its drawing.
    PlanCard of screen::PlanCard {
        /// Its number, from 1.
        plan: u32,
        /// The pattern's code.
        pattern: String,
        /// The pattern's name.
        name: String,
        /// The vehicle from above with an arrow for each move.
        drawing: VehicleDrawing,
        /// What each tire will have left, as one sentence.
        left: Option<String>,
        /// Why, in sentences.
        why: Vec<String>,
        /// It is the chosen one.
        chosen: bool,
    }
}

record! {
    /// The plans of the job in the bay.
    PlanScreen of screen::PlanScreen {
        /// What a tech can shout across the shop.
        shout: String,
        /// Plans, best first.
        plans: Vec<PlanCard>,
        /// Patterns that are not allowed, and why.
        refused: Vec<String>,
        /// Statements about the whole answer, and what to look at next.
        notes: Vec<String>,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// The order of lifts.
    LiftsScreen of screen::LiftsScreen {
        /// How many lifts, and whether fewer are possible.
        sentence: String,
        /// What to do, in order.
        lifts: Vec<ActionLine>,
        /// What to know about the gear.
        notes: Vec<String>,
    }
}

record! {
    /// The log of a job.
    LogScreen of screen::LogScreen {
        /// Its lines.
        lines: Vec<LogLine>,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// One finding.
    FindingLine of screen::FindingLine {
        /// The state's code.
        state: String,
        /// The state in words.
        state_text: String,
        /// Where.
        at: Option<String>,
        /// What it is, and where the judgement comes from.
        sentence: String,
        /// What a screen reader says.
        spoken: String,
    }
}

record! {
    /// What is not as it should be, worst first.
    FindingsScreen of screen::FindingsScreen {
        /// The findings.
        findings: Vec<FindingLine>,
        /// What stands there when there are none.
        empty: Option<String>,
        /// Whose limits hold.
        limits: String,
    }
}

record! {
    /// A vehicle in the book.
    VehicleRow of screen::VehicleRow {
        /// Its name.
        name: String,
        /// Make, model and year.
        model: String,
        /// Its plate.
        plate: Option<String>,
        /// The day of its last visit.
        last_visit: Option<String>,
        /// When to look again, in words.
        due: Option<String>,
        /// How its worst finding stands, as a code; none when nothing was ever looked at.
        state: Option<String>,
        /// The same in words.
        state_text: Option<String>,
        /// What a screen reader says.
        spoken: String,
    }
}

record! {
    /// Vehicles, jobs, tools, and what is due.
    BookScreen of screen::BookScreen {
        /// Vehicles: those whose name, model or plate holds what was searched for.
        vehicles: Vec<VehicleRow>,
        /// Jobs of these vehicles, newest first.
        jobs: Vec<JobLine>,
        /// Tools in words.
        tools: Vec<String>,
        /// What was put away, in words.
        archived: Vec<String>,
        /// What stands there when there is nothing to show.
        empty: Option<String>,
        /// How many vehicles are shown, in words.
        told: String,
        /// Whose limits of tread depth hold.
        limits: String,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// People, and what waits for an instructor.
    CrewScreen of screen::CrewScreen {
        /// People.
        people: Vec<PersonLine>,
        /// Steps that wait for an instructor's signature.
        waiting: Vec<WaitingLine>,
        /// What each apprentice has done.
        learners: Vec<LearnerView>,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// A tire of a vehicle.
    TireLine of screen::TireLine {
        /// Where.
        at: String,
        /// What a screen reader says of the whole line.
        spoken: String,
        /// What stands on its sidewall.
        sidewall: Option<String>,
        /// Its lowest depth, as last measured.
        depth: Option<Quantity>,
        /// The day of that.
        measured: Option<String>,
        /// How deep it is beside a tire of 12 mm, 0 to 1, for a bar.
        bar: Option<f64>,
        /// The number of its pressure sensor.
        sensor: Option<String>,
        /// How old, in words.
        age: Option<String>,
    }
}

record! {
    /// A vehicle.
    VehicleScreen of screen::VehicleScreen {
        /// Its name.
        name: String,
        /// Make, model and year.
        model: String,
        /// Its plate.
        plate: Option<String>,
        /// Its class, in words.
        class: String,
        /// The vehicle from above.
        drawing: VehicleDrawing,
        /// Its tires.
        tires: Vec<TireLine>,
        /// What the shelf holds for its model, in sentences.
        shelf: Vec<String>,
        /// Stored wheels, in words.
        stored: Vec<String>,
        /// When to look again.
        due: Option<String>,
        /// Its jobs, newest first.
        jobs: Vec<JobLine>,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// One reading of a tire's tread.
    DepthLine of screen::DepthLine {
        /// The day.
        day: String,
        /// Where the tire was.
        at: String,
        /// The lowest spot.
        lowest: Quantity,
        /// Each groove, in words.
        grooves: String,
        /// The odometer.
        odometer: Option<Quantity>,
    }
}

record! {
    /// A tire.
    TireScreen of screen::TireScreen {
        /// Where it is.
        tire: TireLine,
        /// What can be said of its wear.
        wear: Option<String>,
        /// Its readings, newest first.
        readings: Vec<DepthLine>,
        /// What stands there without one.
        empty: Option<String>,
    }
}

record! {
    /// A point of a chart.
    ChartPoint of screen::ChartPoint {
        /// The odometer.
        distance: f64,
        /// The depth.
        depth: f64,
    }
}

record! {
    /// A stretch of a forecast.
    BandPoint of screen::BandPoint {
        /// The odometer.
        distance: f64,
        /// The lowest depth it may have there.
        low: f64,
        /// The likeliest.
        mid: f64,
        /// The highest.
        high: f64,
    }
}

record! {
    /// One tire's tread over distance.
    ChartSeries of screen::ChartSeries {
        /// Where the tire is.
        at: String,
        /// Its readings.
        readings: Vec<ChartPoint>,
        /// Its forecast; empty without a rate.
        band: Vec<BandPoint>,
        /// The least depth that is allowed.
        limit: f64,
        /// What the chart says, in a sentence.
        told: String,
    }
}

record! {
    /// A vehicle's history.
    HistoryScreen of screen::HistoryScreen {
        /// The unit of all distances: `km` or `mi`.
        distance_unit: String,
        /// The unit of all depths: `mm` or `1/32in`.
        depth_unit: String,
        /// A chart a tire.
        charts: Vec<ChartSeries>,
        /// When to look again.
        next_visit: Option<String>,
        /// Its jobs, newest first.
        jobs: Vec<JobLine>,
        /// What stands there when nothing was measured.
        empty: Option<String>,
    }
}

record! {
    /// The calculators.
    BenchScreen of screen::BenchScreen {
        /// What holds for all of them.
        notes: Vec<String>,
        /// One for each calculator.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// This device's settings. They lie beside the book, in `book.settings`, and are in no backup.
    PhoneSettings of screen::Settings {
        /// Language, units, position letters and decimal mark; none until somebody chose.
        speech: Option<Manner>,
        /// Which hand holds it.
        hand: HoldingHand,
        /// What screens are drawn on.
        ground: ScreenGround,
        /// The screen stays on while a job is in the bay.
        stays_on: bool,
        /// Who holds the device, by name.
        person: Option<String>,
        /// The first three cards were seen.
        begun: bool,
    }
}

record! {
    /// The settings, as a screen shows them.
    SettingsScreen of screen::SettingsScreen {
        /// What holds.
        settings: PhoneSettings,
        /// What this screen says of privacy and backups.
        notes: Vec<String>,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// One of the first three cards.
    FirstCard of screen::FirstCard {
        /// Its heading.
        heading: String,
        /// What it says.
        text: String,
    }
}

record! {
    /// The first three cards: what the book is, who is liable, who works.
    FirstRunScreen of screen::FirstRunScreen {
        /// The cards.
        cards: Vec<FirstCard>,
        /// Nothing is left to do here: somebody works from the book.
        over: bool,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// Backups.
    BackupsScreen of screen::BackupsScreen {
        /// How they stand.
        backups: BackupView,
        /// What can be tapped.
        actions: Vec<ScreenAction>,
    }
}

record! {
    /// A photo of a job.
    PhotoLine of screen::PhotoLine {
        /// Its number in the job.
        photo: u32,
        /// What it shows, and where.
        caption: String,
        /// A copy of at most 320 pixels, a JPEG; none when it is gone.
        small: Option<String>,
        /// A copy of at most 1600 pixels, a JPEG; none when it is gone.
        large: Option<String>,
        /// So many parts of it are covered where it goes out.
        covered: u32,
        /// What is wrong with it, when it is gone or damaged.
        trouble: Option<String>,
    }
}

record! {
    /// The photos of a job.
    PhotosScreen of screen::PhotosScreen {
        /// The photos, in the order they were taken.
        photos: Vec<PhotoLine>,
        /// What stands there without one.
        empty: Option<String>,
    }
}

record! {
    /// Why a decision is as it is.
    WhyView of engine::WhyView {
        /// The decision's code.
        decision: String,
        /// The core's answer.
        answer: String,
        /// What speaks for it.
        evidence: Vec<String>,
        /// What speaks against it, or was refused, or has to be known about it.
        against: Vec<String>,
        /// The rule by which it was decided.
        rule: String,
        /// Where rule and figures come from, and how far to trust it.
        source: Vec<String>,
    }
}

record! {
    /// One thing that is wrong.
    CheckLine of engine::CheckLine {
        /// Its kind.
        kind: String,
        /// Where.
        at: String,
        /// The sentence.
        sentence: String,
    }
}

record! {
    /// What is proven and what is not, of a card's file or a book.
    ProofView of engine::ProofView {
        /// Everything that was signed holds.
        ok: bool,
        /// What is proven, in sentences; nothing when something does not hold.
        proven: Vec<String>,
        /// What is not proven, in sentences.
        not_proven: Vec<String>,
        /// What does not hold, and where.
        refused: Vec<CheckLine>,
    }
}

record! {
    /// What was taken back, to be said again.
    TakenBack of screen::Again {
        /// The step that it answered, open again; none where it answered no step.
        step: Option<String>,
        /// The action's code.
        code: String,
        /// Where.
        at: Option<String>,
        /// What was filled in.
        filled: Vec<Entered>,
    }
}

record! {
    /// What a tap came to.
    Changed of screen::Tapped {
        /// Ids of the new entries.
        entries: Vec<String>,
        /// What was understood, and what to know about it, in sentences.
        said: Vec<String>,
        /// What was taken back: the action to take again, with what was entered then.
        again: Option<TakenBack>,
    }
}

/// How often one person did something.
#[derive(Debug, Clone, PartialEq, serde::Serialize, uniffi::Record)]
pub struct NamedCount {
    /// Who.
    pub name: String,
    /// So often.
    pub count: u32,
}

impl Cross<NamedCount> for (String, usize) {
    fn cross(self) -> NamedCount {
        NamedCount { name: self.0, count: self.1.cross() }
    }
}

/// A value as it was entered in a field.
#[derive(Clone, PartialEq, Eq, serde::Serialize, uniffi::Record)]
pub struct Entered {
    /// The field's code.
    pub code: String,
    /// The value, as text.
    pub value: String,
}

/// Without the value, which may be personal or secret.
impl std::fmt::Debug for Entered {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Entered").field("code", &self.code).finish_non_exhaustive()
    }
}

impl From<Entered> for screen::Entered {
    fn from(entered: Entered) -> Self {
        Self { code: entered.code, value: entered.value }
    }
}

impl Cross<Entered> for screen::Entered {
    fn cross(self) -> Entered {
        Entered { code: self.code, value: self.value }
    }
}
