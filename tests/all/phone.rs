//! The phone boundary, called as the shells call it.

mod drawn;
mod giving;
mod journeys;
mod offers;
mod played;
mod sight;
mod signing;
mod trouble;

use std::future::Future;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};

use lugbook_phone::{
    ActionPace, Changed, Engine, Entered, Language, Manner, PhoneHost, PositionLetters, Refusal, ScreenAction,
    UnitSystem,
};
use tempfile::TempDir;

/// A phone whose clock goes on a second at each look.
pub struct Phone {
    /// While somebody holds it, nobody can look at the clock: work stands before its first piece.
    pub held: std::sync::Mutex<()>,
    pub clock_ms: AtomicI64,
    pub random: AtomicU64,
    pub lines: std::sync::Mutex<Vec<String>>,
    /// The folder with the models that read photos.
    pub models: std::sync::Mutex<Option<String>>,
}

impl Phone {
    pub fn at(clock_ms: i64) -> Arc<Self> {
        Arc::new(Self {
            held: std::sync::Mutex::default(),
            clock_ms: AtomicI64::new(clock_ms),
            random: AtomicU64::new(1),
            lines: std::sync::Mutex::default(),
            models: std::sync::Mutex::default(),
        })
    }
}

impl PhoneHost for Phone {
    fn clock_ms(&self) -> i64 {
        let _held = self.held.lock().unwrap();
        self.clock_ms.fetch_add(1000, Ordering::Relaxed)
    }

    fn random(&self) -> Vec<u8> {
        let [a, b, c, d, e, f, g, h] = self.random.fetch_add(1, Ordering::Relaxed).to_be_bytes();
        vec![a, b, c, d, e, f, g, h, 7, 7]
    }

    fn secret(&self) -> Option<Vec<u8>> {
        Some(vec![4; 32])
    }

    fn models(&self) -> Option<String> {
        self.models.lock().unwrap().clone()
    }

    fn log(&self, line: String) {
        self.lines.lock().unwrap().push(line);
    }
}

pub const ENGLISH: Manner = Manner {
    language: Language::English,
    units: UnitSystem::AsRead,
    letters: PositionLetters::FrontFirst,
    decimal: None,
};

/// 2026-11-14 in the morning.
pub const MORNING_MS: i64 = 1_794_645_000_000;

/// Waits as a shell does.
pub fn wait<T>(future: impl Future<Output = T>) -> T {
    tokio::runtime::Builder::new_current_thread().enable_time().build().unwrap().block_on(future)
}

/// An open book in a folder of its own.
pub struct Shop {
    pub dir: TempDir,
    pub phone: Arc<Phone>,
    pub engine: Arc<Engine>,
    pub manner: Manner,
}

impl Shop {
    pub fn new() -> Self {
        Self::spoken(ENGLISH, MORNING_MS)
    }

    pub fn spoken(manner: Manner, clock_ms: i64) -> Self {
        let dir = tempfile::tempdir().unwrap();
        let phone = Phone::at(clock_ms);
        let engine = wait(Engine::open(book(&dir), phone.clone(), manner)).unwrap();
        Self { dir, phone, engine, manner }
    }

    pub fn reopen(&mut self) {
        wait(self.engine.close_book()).unwrap();
        self.engine = wait(Engine::open(book(&self.dir), self.phone.clone(), self.manner)).unwrap();
    }

    /// The bay's actions, of its next step.
    pub fn bay(&self) -> Vec<ScreenAction> {
        wait(self.engine.bay(None, None, self.manner)).unwrap().actions
    }

    /// Taps an action, with values for fields.
    pub fn tap(&self, action: &ScreenAction, values: &[(&str, &str)]) -> Result<Changed, Refusal> {
        let entered = values
            .iter()
            .map(|(code, value)| Entered { code: (*code).to_owned(), value: (*value).to_owned() })
            .collect();
        if action.pace == ActionPace::Long {
            let task = self.engine.start(action.token.clone(), entered, self.manner).unwrap();
            return wait(task.outcome());
        }
        wait(self.engine.act(action.token.clone(), entered, self.manner))
    }

    /// Taps the action of this code on a list.
    pub fn tap_on(&self, actions: &[ScreenAction], code: &str, values: &[(&str, &str)]) -> Changed {
        let action = actions.iter().find(|action| action.code == code);
        let action = action.unwrap_or_else(|| {
            panic!("no {code} among {:?}", actions.iter().map(|action| &action.code).collect::<Vec<_>>())
        });
        self.tap(action, values).unwrap_or_else(|why| panic!("{code} {values:?}: {why}"))
    }

    /// A person and a car.
    pub fn with_car(self) -> Self {
        let first = wait(self.engine.first_run(self.manner)).unwrap().actions;
        self.tap_on(&first, "add-person", &[("name", "Ana"), ("role", "mechanic")]);
        let book = wait(self.engine.book(String::new(), self.manner)).unwrap().actions;
        let car = [("name", "gray wagon"), ("model", "Sample wagon 2019"), ("class", "car")];
        self.tap_on(&book, "add-vehicle", &car);
        self
    }

    pub fn vehicle(&self, name: &str) -> Vec<ScreenAction> {
        wait(self.engine.vehicle(name.to_owned(), self.manner)).unwrap().actions
    }
}

fn book(dir: &TempDir) -> String {
    dir.path().join("book").to_str().unwrap().to_owned()
}
