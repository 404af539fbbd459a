//! SIGKILL at random moments of the visit: nothing acknowledged is lost.
//!
//! 30 kills by default; `LUGBOOK_KILLS` asks for another number and
//! `LUGBOOK_KILL_SEED` plays the same moments again.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Stdio;
use std::time::{Duration, Instant};

use lugbook::engine::{Host, SystemHost};
use lugbook::ident::StreamId;
use lugbook::store::{Opening, Store};
use serde_json::Value;

use crate::demo::same;
use crate::program::{done, pictures, process, say, visit};

/// A small generator of random numbers: SplitMix64.
pub struct Chance(pub u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number below `end`.
    pub fn below(&mut self, end: u64) -> u64 {
        self.next() % end.max(1)
    }
}

/// The ids of all entries on the disk, read without the program.
fn ids(book: &Path) -> BTreeSet<String> {
    if !book.join("book.db").exists() {
        return BTreeSet::new();
    }
    let host = SystemHost::default();
    let opening = Opening { stream: StreamId::from_parts(0, host.random()), now: host.now() };
    let (store, _) = Store::open(book, opening).unwrap_or_else(|why| panic!("after a kill: {why}"));
    store.entries().expect("every entry reads").iter().map(|entry| entry.id().to_string()).collect()
}

/// The ids that a finished or killed process told on standard output.
fn acknowledged(out: &[u8]) -> Vec<String> {
    let Ok(value) = serde_json::from_slice::<Value>(out) else { return Vec::new() };
    let ids = value["entries"].as_array().cloned().unwrap_or_default();
    ids.iter().filter_map(|id| id.as_str().map(str::to_owned)).collect()
}

#[derive(Debug, Default)]
struct Count {
    killed: usize,
    before_the_entry: usize,
    after_the_entry: usize,
    acknowledged: usize,
}

/// Plays the visit on a new book, killing some of its lines on the way.
fn play(folder: &Path, kills: usize, chance: &mut Chance, count: &mut Count) -> String {
    let (book, card) = (folder.join("book"), folder.join("card.html"));
    let lines = visit(&pictures(), &card);
    let mut told: BTreeSet<String> = BTreeSet::new();
    let mut usual = Duration::from_millis(40);
    let goal = count.killed + kills;
    for (at, line) in lines.iter().enumerate() {
        let left = (lines.len() - at) as u64;
        let wanted = (goal - count.killed.min(goal)) as u64;
        // Each line may be killed several times over before it is let through.
        let mut tries = if wanted > 0 && chance.below(left) < wanted.max(1) { 1 + wanted / left } else { 0 };
        let mut through = false;
        while tries > 0 && !through {
            tries -= 1;
            let before = ids(&book);
            let mut child = process(&book, line)
                .arg("--json")
                .stdout(Stdio::piped())
                .stderr(Stdio::null())
                .spawn()
                .expect("the program runs");
            std::thread::sleep(Duration::from_micros(chance.below(usual.as_micros() as u64 * 5 / 4)));
            child.kill().expect("SIGKILL is sent");
            let output = child.wait_with_output().expect("it ends");
            told.extend(acknowledged(&output.stdout));
            if output.status.success() {
                // It was quicker than the signal.
                through = true;
                continue;
            }
            count.killed += 1;
            let after = ids(&book);
            assert!(after.is_superset(&before) && after.is_superset(&told), "an entry is gone after {line}");
            // A question writes nothing, so that it can be asked again.
            through = after.len() > before.len();
            count.after_the_entry += usize::from(through);
            count.before_the_entry += usize::from(!through);
            if book.join("book.db").exists() {
                let check = say(&book, "lugbook book check --json");
                assert_eq!(check.code, Some(0), "after a kill in {line}: {check:?}");
                assert_eq!(check.json()["ok"], true);
            }
        }
        if !through {
            let begun = Instant::now();
            let output = process(&book, line).arg("--json").output().expect("the program runs");
            assert!(output.status.success(), "{line}: {}", String::from_utf8_lossy(&output.stderr));
            usual = (usual * 3 + begun.elapsed()) / 4;
            told.extend(acknowledged(&output.stdout));
        }
    }
    count.acknowledged += told.len();
    assert!(ids(&book).is_superset(&told), "an acknowledged entry is gone");
    done(&book, &format!("lugbook card --out {}", card.display()));
    std::fs::read_to_string(card).expect("the card is written")
}

#[test]
fn killed_at_random_moments_the_book_keeps_every_acknowledged_entry() {
    let number = |name: &str| std::env::var(name).ok().and_then(|text| text.parse::<u64>().ok());
    let kills = number("LUGBOOK_KILLS").unwrap_or(30) as usize;
    let seed = number("LUGBOOK_KILL_SEED").unwrap_or_else(|| SystemHost::default().now().unix_ms() as u64);
    println!("LUGBOOK_KILL_SEED={seed}");
    let mut chance = Chance(seed);
    let mut count = Count::default();
    let calm = tempfile::tempdir().unwrap();
    let reference = play(calm.path(), 0, &mut chance, &mut count);
    while count.killed < kills {
        let folder = tempfile::tempdir().unwrap();
        let card = play(folder.path(), (kills - count.killed).min(60), &mut chance, &mut count);
        same(&card, &reference, &format!("seed {seed}: the job goes on as if nothing had happened"));
    }
    println!("{count:?}");
    assert!(count.killed >= kills);
}
