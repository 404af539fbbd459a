//! What is the device's own affair, no entry of the book: settings, the first three cards, backups.

use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use super::form::{FieldKind, Form, Slot, choice, named};
use super::offer::{Action, Deed, Offer, Offers, Weight, Where};
use super::shelf::add_person;
use crate::engine::{BackupView, Engine, Erased, Trouble, Watch};
use crate::entry::{Role, Thing};
use crate::ident::Digest;
use crate::store::StoreError;
use crate::vehicle::{Letters, Place};
use crate::words::{DecimalMark, Lang, Speech, Units, Words};

/// Which hand holds the device, so that the main action lies under its thumb.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Hand {
    /// The right one.
    #[default]
    Right,
    /// The left one.
    Left,
}

/// What screens are drawn on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ground {
    /// As the device has it.
    #[default]
    Device,
    /// Light paper, for the sun.
    Paper,
    /// Dark rubber, for the night.
    Rubber,
}

/// This device's settings. They lie beside the book, in `book.settings`, and are in no backup.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Settings {
    /// Language, units, position letters and decimal mark; none until somebody chose.
    #[serde(default)]
    pub speech: Option<Speech>,
    /// Which hand holds it.
    #[serde(default)]
    pub hand: Hand,
    /// What screens are drawn on.
    #[serde(default)]
    pub ground: Ground,
    /// The screen stays on while a job is in the bay.
    #[serde(default)]
    pub stays_on: bool,
    /// Who holds the device, by name.
    #[serde(default)]
    pub person: Option<String>,
    /// The first three cards were seen.
    #[serde(default)]
    pub begun: bool,
}

/// The settings, as a screen shows them.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SettingsScreen {
    /// What holds.
    pub settings: Settings,
    /// What this screen says of privacy and backups.
    pub notes: Vec<String>,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// One of the first three cards.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FirstCard {
    /// Its heading.
    pub heading: String,
    /// What it says.
    pub text: String,
}

/// The first three cards: what the book is, who is liable, who works.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FirstRunScreen {
    /// The cards.
    pub cards: Vec<FirstCard>,
    /// Nothing is left to do here: somebody works from the book.
    pub over: bool,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

/// Backups.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BackupsScreen {
    /// How they stand.
    pub backups: BackupView,
    /// What can be tapped.
    pub actions: Vec<Action>,
}

fn file(folder: &Path) -> PathBuf {
    folder.join("book.settings")
}

impl Settings {
    /// The settings beside a book; the usual ones where there are none, or they can't be read.
    fn of(folder: &Path) -> Self {
        fs::read(file(folder)).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok()).unwrap_or_default()
    }

    /// Writes them whole or not at all.
    fn keep(&self, folder: &Path) -> Result<(), StoreError> {
        let io = |why: std::io::Error| StoreError::io(&why, folder);
        let bytes = serde_json::to_vec_pretty(self).map_err(StoreError::report)?;
        let mut temporary = tempfile::Builder::new().prefix("book.settings.").tempfile_in(folder).map_err(io)?;
        temporary.write_all(&bytes).and_then(|()| temporary.as_file().sync_all()).map_err(io)?;
        temporary.persist(file(folder)).map_err(|why| io(why.error))?;
        #[cfg(unix)]
        File::open(folder).and_then(|folder| folder.sync_all()).map_err(io)?;
        Ok(())
    }
}

fn nowhere(_: Place) -> (String, String) {
    (String::new(), String::new())
}

impl Engine {
    /// This device's settings.
    pub fn settings(&self) -> Settings {
        Settings::of(&self.folder)
    }

    /// Forgets who holds the device, where that is the person of this name.
    pub(crate) fn forget_holder(&self, name: &str) -> Result<(), StoreError> {
        let now = self.settings();
        match &now.person {
            Some(person) if person.eq_ignore_ascii_case(name.trim()) => {
                Settings { person: None, ..now }.keep(&self.folder)
            }
            _ => Ok(()),
        }
    }

    /// The settings, with what can be changed.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn settings_screen(&self, speech: Speech) -> Result<SettingsScreen, Trouble> {
        let words = Words::new(speech);
        let notes = ["settings-offline", "settings-privacy"].map(|id| words.text(id, &[])).to_vec();
        Ok(SettingsScreen { settings: self.settings(), notes, actions: self.actions(&Where::Settings, &words)? })
    }

    /// The first three cards.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn first_run_screen(&self, speech: Speech) -> Result<FirstRunScreen, Trouble> {
        let words = Words::new(speech);
        let card = |id: &str| FirstCard {
            heading: words.text(&format!("first-{id}"), &[]),
            text: words.text(&format!("first-{id}-text"), &[]),
        };
        Ok(FirstRunScreen {
            cards: ["record", "safety", "hands"].map(card).to_vec(),
            over: self.settings().begun && !self.book.people.is_empty(),
            actions: self.actions(&Where::FirstRun, &words)?,
        })
    }

    /// Backups, with what can be done about them.
    ///
    /// # Errors
    /// When the book can't be read.
    pub fn backups_screen(&self, speech: Speech) -> Result<BackupsScreen, Trouble> {
        let words = Words::new(speech);
        Ok(BackupsScreen { backups: self.backups(speech), actions: self.actions(&Where::Backups, &words)? })
    }

    /// One field for each setting; what is left out stays as it is.
    fn settings_form(&self, words: &Words) -> Form {
        let now = self.settings();
        let speech = now.speech.unwrap_or(words.speech());
        let code = |value: Value| value.as_str().map(str::to_owned);
        let choices = |name: &str, codes: &[&str], now: Option<String>| {
            let option = |code: &&str| (choice(*code, words.text(&format!("{name}-{code}"), &[])), Value::from(*code));
            Slot::one(words, name, codes.iter().map(option).collect()).filled(now)
        };
        let told = |value: Result<Value, serde_json::Error>| value.ok().and_then(code);
        let works = self
            .book
            .people
            .iter()
            .filter(|person| person.role != Role::Customer && !self.book.is_archived(Thing::Person(person.id)));
        let works = named(works.filter_map(|person| person.name.clone()));
        let yes = |yes: bool| Some(if yes { "yes" } else { "no" });
        Form::of("settings")
            .ask(choices("language", &["en", "es"], Some(speech.lang.tag().to_owned())))
            .ask(choices("unit-system", &["as-read", "metric", "us"], told(serde_json::to_value(speech.units))))
            .ask(choices(
                "position-letters",
                &["front-first", "side-first"],
                told(serde_json::to_value(speech.letters)),
            ))
            .ask(choices("decimal-mark", &["point", "comma"], told(serde_json::to_value(speech.decimal))))
            .ask(choices("hand", &["right", "left"], told(serde_json::to_value(now.hand))))
            .ask(choices("ground", &["device", "paper", "rubber"], told(serde_json::to_value(now.ground))))
            .ask(Slot::yes_no(words, "stays-on").filled(yes(now.stays_on)))
            .ask_if(!works.is_empty(), || Slot::one(words, "me", works).filled(now.person))
    }

    pub(super) fn settings_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let mut offers = Offers::new(words, &Where::Settings, head, &nowhere);
        offers.deed("settings", Weight::Main, Deed::KeepSettings, self.settings_form(words));
        offers.made()
    }

    pub(super) fn first_run_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let mut offers = Offers::new(words, &Where::FirstRun, head, &nowhere);
        if self.book.people.is_empty() {
            add_person(&mut offers);
        }
        offers.deed("settings", Weight::Beside, Deed::KeepSettings, self.settings_form(words));
        if !self.book.people.is_empty() && !self.settings().begun {
            let begin = Form::of("settings").with("begun", true);
            offers.deed("begin", Weight::Main, Deed::KeepSettings, begin);
        }
        if self.book.vehicles.is_empty() && !self.book.people.is_empty() {
            self.add_vehicle(&mut offers);
        }
        offers.deed("restore", Weight::Aside, Deed::Restore, restore_form(words));
        offers.made()
    }

    pub(super) fn backup_offers(&self, head: Option<Digest>, words: &Words) -> Vec<Offer> {
        let mut offers = Offers::new(words, &Where::Backups, head, &nowhere);
        let view = self.backups(words.speech());
        let folder = |required: bool| {
            let slot = Slot::text(words, "folder", FieldKind::Folder);
            if required { slot.required() } else { slot }
        };
        let into = Form::of("back-up-into").ask(folder(true).filled(view.into.clone()));
        let now = Form::of("back-up").ask(folder(view.into.is_none()));
        let first = if view.into.is_none() { Weight::Main } else { Weight::Beside };
        offers.deed("back-up-into", first, Deed::BackUpInto, into);
        offers.deed("back-up", if view.into.is_none() { Weight::Beside } else { Weight::Main }, Deed::BackUp, now);
        if view.into.is_some() {
            offers.deed("no-backups", Weight::Aside, Deed::NoBackups, Form::of("no-backups"));
        }
        let passphrase = Slot::text(words, "passphrase", FieldKind::Secret).required();
        offers.deed("lock-backups", Weight::Aside, Deed::LockBackups, Form::of("lock-backups").ask(passphrase));
        if view.locked {
            offers.deed("unlock-backups", Weight::Aside, Deed::UnlockBackups, Form::of("unlock-backups"));
        }
        offers.deed("restore", Weight::Aside, Deed::Restore, restore_form(words));
        offers.made()
    }

    /// Carries out what is no entry, and tells what it came to.
    pub(super) fn carry_out(
        &mut self,
        deed: Deed,
        data: &Map<String, Value>,
        speech: Speech,
        watch: &dyn Watch,
    ) -> Result<Vec<String>, Trouble> {
        let words = Words::new(speech);
        let text = |key: &str| data.get(key).and_then(Value::as_str);
        match deed {
            Deed::KeepSettings => {
                let kept = self.changed(data, speech);
                kept.keep(&self.folder).map_err(|why| Trouble::of_store(&why, &words))?;
                // Said in the language that was chosen just now.
                Ok(vec![Words::new(kept.speech.unwrap_or(speech)).text("said-settings", &[])])
            }
            Deed::BackUp => Ok(self.back_up_watched(text("folder").map(Path::new), speech, watch)?.sentences),
            Deed::BackUpInto => Ok(self.back_up_into(text("folder").map(Path::new), speech)?.sentences),
            Deed::NoBackups => Ok(self.back_up_into(None, speech)?.sentences),
            Deed::LockBackups => Ok(self.lock_backups(text("passphrase"), speech)?.sentences),
            Deed::UnlockBackups => Ok(self.lock_backups(None, speech)?.sentences),
            Deed::Restore => {
                let file = Path::new(text("file").unwrap_or_default());
                Ok(self.restore_watched(file, text("passphrase"), speech, watch)?.sentences)
            }
            Deed::ErasePerson => self.erase(Erased::Person, text("name").unwrap_or_default(), speech),
            Deed::ErasePlate => self.erase(Erased::Plate, text("name").unwrap_or_default(), speech),
            Deed::ReadMarking | Deed::CompareSizes | Deed::SetWrench | Deed::SetPressure => {
                self.reckon(deed, data, &words)
            }
            // It leads to suggestions, not to sentences alone.
            Deed::ReadPhoto => Ok(Vec::new()),
        }
    }

    /// The settings with what was entered.
    fn changed(&self, data: &Map<String, Value>, speech: Speech) -> Settings {
        fn chosen<T: for<'de> Deserialize<'de>>(data: &Map<String, Value>, key: &str) -> Option<T> {
            data.get(key).cloned().and_then(|value| serde_json::from_value(value).ok())
        }
        let now = self.settings();
        let before = now.speech.unwrap_or(speech);
        let lang: Option<Lang> = chosen(data, "language");
        let units: Option<Units> = chosen(data, "unit_system");
        let letters: Option<Letters> = chosen(data, "position_letters");
        let decimal: Option<DecimalMark> = chosen(data, "decimal_mark");
        let spoken = lang.is_some() || units.is_some() || letters.is_some() || decimal.is_some();
        let after = Speech {
            lang: lang.unwrap_or(before.lang),
            units: units.unwrap_or(before.units),
            letters: letters.unwrap_or(before.letters),
            decimal: decimal.unwrap_or(before.decimal),
        };
        Settings {
            speech: if spoken { Some(after) } else { now.speech },
            hand: chosen(data, "hand").unwrap_or(now.hand),
            ground: chosen(data, "ground").unwrap_or(now.ground),
            stays_on: chosen(data, "stays_on").unwrap_or(now.stays_on),
            person: chosen(data, "me").or(now.person),
            begun: chosen(data, "begun").unwrap_or(now.begun),
        }
    }
}

fn restore_form(words: &Words) -> Form {
    Form::of("restore").ask(Slot::text(words, "backup-file", FieldKind::File).to("file").required()).ask(Slot::text(
        words,
        "passphrase",
        FieldKind::Secret,
    ))
}
