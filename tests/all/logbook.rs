//! A book that follows its entries one by one is the book of all of them.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use lugbook::calendar::Moment;
use lugbook::entry::{Draft, Entry, Fact, Head, Personal, ReadBy, Role, SidewallSide, Signature, TireLooks};
use lugbook::ident::{Digest, EntryId, JobId, PersonId, StreamId, TireId, VehicleId};
use lugbook::logbook::{Archive, Book, Logbook, Span};
use lugbook::vehicle::{Class, Layout, Place, Side};
use proptest::prelude::*;
use proptest::strategy::ValueTree;

fn ten(number: usize) -> [u8; 10] {
    let mut bytes = [0x5a; 10];
    bytes[2..].copy_from_slice(&(number as u64).to_be_bytes());
    bytes
}

fn id(number: usize) -> EntryId {
    EntryId::from_parts(1_777_000_000_000, ten(number))
}

fn job(number: usize) -> JobId {
    JobId::from_parts(1_777_000_000_000, ten(number))
}

fn tire(number: usize) -> TireId {
    TireId::from_parts(1_777_000_000_000, ten(number))
}

fn vehicle(number: usize) -> VehicleId {
    VehicleId::from_parts(1_777_000_000_000, ten(number))
}

fn place(number: usize) -> Place {
    Place::single(
        1 + u8::try_from(number / 2 % 2).unwrap(),
        if number.is_multiple_of(2) { Side::Left } else { Side::Right },
    )
}

/// A fact that is plain: no correction, no withdrawal. `some` varies it.
fn plain(kind: usize, some: usize) -> Fact {
    let (job, tire, at) = (job(some % 3), tire(some % 5), place(some));
    match kind % 14 {
        0 => Fact::PersonAdded { person: PersonId::from_parts(1, ten(some)), role: Role::Mechanic },
        1 => Fact::VehicleAdded {
            vehicle: vehicle(some % 2),
            name: format!("orchard truck {some}"),
            model: "Harrow 1500 2019".to_owned(),
            class: Class::LightTruck,
            layout: Layout::two_axles(false),
            own: false,
        },
        2 => Fact::JobOpened {
            job,
            vehicle: vehicle(some % 2),
            procedure: "rotation-on-a-lift".to_owned(),
            version: 1,
            circumstances: Vec::new(),
        },
        3 => Fact::TireFitted { tire, vehicle: vehicle(some % 2), at, job: some.is_multiple_of(2).then_some(job) },
        4 => Fact::OdometerRead { job, reading: format!("{} km", 40_000 + some).parse().unwrap(), note: None },
        5 => Fact::TreadMeasured {
            job,
            tire,
            at,
            grooves: vec![vec![
                "7/32".parse().unwrap(),
                if some.is_multiple_of(2) { "5.5 mm" } else { "6/32" }.parse().unwrap(),
            ]],
            lowest: format!("{}/32", 1 + some % 9).parse().unwrap(),
            reason: None,
        },
        6 => Fact::WheelOn { job, at, tire },
        7 => Fact::WheelOff { job, at },
        8 => Fact::JobParked { job, reason: "parts".to_owned() },
        9 => Fact::JobResumed { job },
        10 => Fact::JobSigned { job, signature: Signature::Name, seen: None },
        11 => Fact::SidewallRead {
            job,
            tire,
            at,
            side: SidewallSide::Outer,
            text: format!("225/45R17 {}W", 80 + some % 20),
            by: ReadBy::Typed,
            looks: TireLooks::default(),
        },
        12 => Fact::HandsChanged { job, person: PersonId::from_parts(1, ten(some)) },
        _ => Fact::DamageSeen { job, at: None, text: None, photo: Some(Digest::of(&some.to_be_bytes())) },
    }
}

/// One thing that one of three devices says.
#[derive(Debug, Clone)]
struct Step {
    device: u64,
    /// How far the device's clock is off, in milliseconds.
    skew: i64,
    kind: usize,
    some: usize,
    /// What it corrects (even) or takes back (odd): an entry so many places before or after it.
    about: Option<(usize, i8)>,
    /// It arrives together with the one before it.
    joined: bool,
    /// The book is kept and read back before it arrives.
    kept: bool,
}

fn step() -> impl Strategy<Value = Step> {
    let device = prop_oneof![6 => Just(0_u64), 1 => Just(1_u64), 1 => Just(2_u64)];
    let skew = prop_oneof![8 => Just(0_i64), 1 => -40_i64..40];
    let about = prop_oneof![5 => Just(None), 1 => (0_usize..4, -12_i8..3).prop_map(Some)];
    (device, skew, 0_usize..28, 0_usize..60, about, any::<bool>(), prop::bool::weighted(0.1)).prop_map(
        |(device, skew, kind, some, about, joined, kept)| Step { device, skew, kind, some, about, joined, kept },
    )
}

/// The entries as they arrive, in batches.
fn arrivals(steps: &[Step]) -> Vec<(bool, Vec<Entry>)> {
    let mut heads = BTreeMap::<u64, Head>::new();
    let mut batches = Vec::<(bool, Vec<Entry>)>::new();
    for (number, step) in steps.iter().enumerate() {
        let head = heads
            .entry(step.device)
            .or_insert_with(|| Head::empty(StreamId::from_parts(1_777_000_000_000 + step.device, [1; 10])));
        // Twice as likely a job is spoken of after it was opened than not.
        let said = if number < 4 { plain(number % 3, number) } else { plain(step.kind, step.some) };
        let target = |by: i8| id(number.saturating_add_signed(isize::from(by)));
        let fact = match step.about {
            Some((how, by)) if how % 2 == 0 => {
                Fact::Corrected { target: target(by), fact: Box::new(said), reason: "misread".to_owned() }
            }
            Some((_, by)) => Fact::Withdrawn { target: target(by), reason: "wrong vehicle".to_owned(), undo: false },
            None => said,
        };
        let personal = matches!(fact, Fact::PersonAdded { .. })
            .then(|| Personal { name: Some(format!("Wren {number}")), ..Personal::salted([3; 16]) });
        let author = PersonId::from_parts(1, ten(1));
        let draft = Draft { id: id(number), author, practice: step.some.is_multiple_of(11), fact, personal };
        let now = Moment::from_unix_ms(1_777_886_100_000 + i64::try_from(number).unwrap() * 10 + step.skew);
        let entry = draft.seal(head, now).unwrap();
        *head = head.then(&entry).unwrap();
        match batches.last_mut() {
            Some((_, batch)) if step.joined && !step.kept => batch.push(entry),
            _ => batches.push((step.kept, vec![entry])),
        }
    }
    batches
}

/// All entries so far, as a store keeps them.
#[derive(Default)]
struct Shelf(Mutex<Vec<Entry>>);

impl Archive for Shelf {
    fn entries(&self, spans: &[Span]) -> Vec<Entry> {
        let all = self.0.lock().unwrap();
        let of = |span: &Span| {
            let span = *span;
            all.iter().filter(move |entry| {
                let said = entry.envelope();
                said.stream == span.stream && (span.first..=span.last).contains(&said.number)
            })
        };
        spans.iter().flat_map(of).cloned().collect()
    }
}

/// How often the book could follow, and how often it had to be made anew.
#[derive(Debug, Default)]
struct Ways {
    followed: usize,
    anew: usize,
}

fn follow(steps: &[Step], ways: &mut Ways) -> Result<(), TestCaseError> {
    let shelf = Arc::new(Shelf::default());
    let archive: Arc<dyn Archive> = shelf.clone();
    let mut book = Book::default();
    for (kept, batch) in arrivals(steps) {
        if kept {
            let text = serde_json::to_vec(&book).unwrap();
            book = serde_json::from_slice(&text).unwrap();
            book.attach(&archive);
        }
        shelf.0.lock().unwrap().extend(batch.iter().cloned());
        let mut sorted = batch;
        sorted.sort_by_key(Entry::order);
        let whole = Logbook::from_iter(shelf.0.lock().unwrap().iter().cloned()).book();
        if book.follow(&sorted) {
            ways.followed += 1;
            prop_assert!(book == whole, "{book:#?}\n{whole:#?}");
        } else {
            ways.anew += 1;
            book = whole;
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn a_book_that_follows_is_the_book_of_all_entries(steps in prop::collection::vec(step(), 1..60)) {
        follow(&steps, &mut Ways::default())?;
    }
}

#[test]
fn most_of_what_is_said_can_be_followed() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut ways = Ways::default();
    for _ in 0..40 {
        let steps = prop::collection::vec(step(), 40).new_tree(&mut runner).unwrap().current();
        follow(&steps, &mut ways).expect("the same book");
    }
    println!("{ways:?}");
    assert!(ways.followed > 100 && ways.anew > 100, "{ways:?}");
}
