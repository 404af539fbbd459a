//! What can be tapped on a screen, and carrying it out.

use serde::{Deserialize, Serialize};

use super::form::{Entered, Field, Form};
use crate::engine::{Command, Engine, Trouble, Unwatched, Watch};
use crate::ident::Digest;
use crate::vehicle::Place;
use crate::words::{Speech, Words};

/// How much an action weighs on its screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// The next thing to do: across the full width at the bottom.
    Main,
    /// Another answer to the same step.
    Beside,
    /// Something else that can be done now.
    Aside,
    /// What can't be taken back, or opens a gate: the shell asks once more.
    Grave,
}

/// What an action leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Pace {
    /// It is done when it comes back.
    Quick,
    /// It may take seconds: the shell starts it as a task, with progress and a way to stop it.
    Long,
}

/// One thing that can be tapped now. A screen lists all of them; there is no other way to say something to the book.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Action {
    /// What is handed back when it is tapped: good until the book changes.
    pub token: String,
    /// What it is, the same in every language.
    pub code: String,
    /// Where, for what is done at a wheel.
    pub at: Option<String>,
    /// What stands on it.
    pub label: String,
    /// What a screen reader says.
    pub spoken: String,
    /// How much it weighs.
    pub weight: Weight,
    /// Whether it takes its time.
    pub pace: Pace,
    /// What is asked once more before it is carried out.
    pub confirm: Option<String>,
    /// What is to be filled in; empty for one tap.
    pub fields: Vec<Field>,
}

/// Which screen an action stands on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "on", rename_all = "kebab-case")]
pub enum Where {
    /// The job in hand: the next step, or another one.
    Bay {
        /// The step; the next one when none is named.
        #[serde(default)]
        step: Option<String>,
        /// Where, for a step at each wheel.
        #[serde(default)]
        at: Option<String>,
    },
    /// Vehicles, jobs and tools.
    Book,
    /// People.
    Crew,
    /// One vehicle.
    Vehicle {
        /// Its name.
        vehicle: String,
    },
    /// The log of a job.
    Log {
        /// Its number; the one in the bay when none is given.
        job: Option<usize>,
    },
    /// The plans of the job in the bay.
    Plan,
    /// Calculators.
    Bench,
    /// The device's own settings.
    Settings,
    /// The first three cards.
    FirstRun,
    /// Backups.
    Backups,
}

/// What is carried out that is no entry of the book.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Deed {
    KeepSettings,
    BackUp,
    BackUpInto,
    NoBackups,
    LockBackups,
    UnlockBackups,
    Restore,
    ErasePerson,
    ErasePlate,
    ReadMarking,
    CompareSizes,
    SetWrench,
    SetPressure,
    ReadPhoto,
}

/// What an offer leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Leads {
    /// An entry of the book.
    Said,
    /// Something else.
    Deed(Deed),
}

/// An action with the form that it fills.
#[derive(Debug, Clone)]
pub(super) struct Offer {
    pub action: Action,
    pub form: Form,
    pub leads: Leads,
}

/// Makes the offers of one screen.
pub(super) struct Offers<'a> {
    pub words: &'a Words,
    screen: String,
    /// The book's last entry: an offer is good for what was seen.
    head: Option<Digest>,
    /// How a place is named and spoken.
    place: &'a dyn Fn(Place) -> (String, String),
    made: Vec<Offer>,
}

impl<'a> Offers<'a> {
    pub(super) fn new(
        words: &'a Words,
        screen: &Where,
        head: Option<Digest>,
        place: &'a dyn Fn(Place) -> (String, String),
    ) -> Self {
        let screen = serde_json::to_string(screen).unwrap_or_default();
        Self { words, screen, head, place, made: Vec::new() }
    }

    /// An offer with the label of its code.
    pub(super) fn offer(&mut self, code: &str, weight: Weight, at: Option<Place>, form: Form) {
        let label = self.words.text(&format!("do-{code}"), &[]);
        self.labelled(code, label, weight, at, form, Leads::Said);
    }

    /// An offer of something that is no entry.
    pub(super) fn deed(&mut self, code: &str, weight: Weight, deed: Deed, form: Form) {
        let label = self.words.text(&format!("do-{code}"), &[]);
        self.labelled(code, label, weight, None, form, Leads::Deed(deed));
    }

    /// An offer with a label of its own.
    pub(super) fn labelled(
        &mut self,
        code: &str,
        label: String,
        weight: Weight,
        at: Option<Place>,
        form: Form,
        leads: Leads,
    ) {
        let at = at.map(self.place);
        let spoken = match &at {
            Some((_, spoken)) => format!("{label}. {spoken}"),
            None => label.clone(),
        };
        let at = at.map(|(name, _)| name);
        let seen = format!("{}\n{code}\n{at:?}\n{leads:?}\n{}\n{:?}", self.screen, form.settled(), self.head);
        let action = Action {
            token: format!("{}#{}", self.screen, Digest::of(seen.as_bytes()).short()),
            code: code.to_owned(),
            at,
            confirm: (weight == Weight::Grave).then(|| self.words.text(&format!("confirm-{code}"), &[])),
            pace: match (leads, code) {
                (Leads::Deed(Deed::BackUp | Deed::Restore | Deed::ReadPhoto), _) | (Leads::Said, "photo") => Pace::Long,
                _ => Pace::Quick,
            },
            label,
            spoken,
            weight,
            fields: form.fields(),
        };
        self.made.push(Offer { action, form, leads });
    }

    pub(super) fn made(self) -> Vec<Offer> {
        self.made
    }
}

/// What a tap came to.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Tapped {
    /// Ids of the new entries.
    pub entries: Vec<String>,
    /// What was understood, and what to know about it, in sentences.
    pub said: Vec<String>,
    /// What was taken back: the action to take again, with what was entered then.
    pub again: Option<Again>,
}

/// What was taken back, to be said again.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Again {
    /// The step that it answered, open again; none where it answered no step.
    pub step: Option<String>,
    /// The action's code.
    pub code: String,
    /// Where.
    pub at: Option<String>,
    /// What was filled in.
    pub filled: Vec<Entered>,
}

impl Engine {
    /// What can be tapped on a screen.
    ///
    /// # Errors
    /// When there is no such vehicle or job, or the book can't be read.
    pub(super) fn offers(&self, screen: &Where, words: &Words) -> Result<Vec<Offer>, Trouble> {
        let head = self.store.head().map_err(|why| Trouble::of_store(&why, words))?.digest;
        match screen {
            Where::Bay { step, at } => Ok(self.bay_offers(step.as_deref(), at.as_deref(), head, words)),
            Where::Plan => Ok(self.plan_offers(head, words)),
            Where::Book => Ok(self.book_offers(head, words)),
            Where::Crew => Ok(self.crew_offers(head, words)),
            Where::Vehicle { vehicle } => self.vehicle_offers(vehicle, head, words),
            Where::Log { job } => self.log_offers(*job, head, words),
            Where::Bench => Ok(self.bench_offers(head, words)),
            Where::Settings => Ok(self.settings_offers(head, words)),
            Where::FirstRun => Ok(self.first_run_offers(head, words)),
            Where::Backups => Ok(self.backup_offers(head, words)),
        }
    }

    /// The actions of a screen.
    pub(super) fn actions(&self, screen: &Where, words: &Words) -> Result<Vec<Action>, Trouble> {
        Ok(self.offers(screen, words)?.into_iter().map(|offer| offer.action).collect())
    }

    /// Carries out what was tapped, with what was filled in.
    ///
    /// # Errors
    /// When the screen that offered it is no longer true (the book changed since, or
    /// it was tapped twice), when a field is empty or not understood, and as
    /// [`act`](Self::act). Nothing is changed then.
    pub fn tap(&mut self, token: &str, entered: &[Entered], speech: Speech) -> Result<Tapped, Trouble> {
        self.tap_watched(token, entered, speech, &Unwatched)
    }

    /// The same, told to a watcher between its pieces: for what takes its time ([`Pace::Long`]).
    ///
    /// # Errors
    /// As [`tap`](Self::tap), and when the watcher stopped it; then nothing was changed.
    pub fn tap_watched(
        &mut self,
        token: &str,
        entered: &[Entered],
        speech: Speech,
        watch: &dyn Watch,
    ) -> Result<Tapped, Trouble> {
        let words = Words::new(speech);
        let offer = self.offer_of(token, &words)?;
        match offer.leads {
            Leads::Deed(Deed::ReadPhoto) => self.read_now(token, entered, speech, watch),
            Leads::Deed(deed) => {
                let said = self.carry_out(deed, &offer.form.filled(entered, &words)?, speech, watch)?;
                Ok(Tapped { entries: Vec::new(), said, again: None })
            }
            Leads::Said => {
                let command = offer.form.command(entered, &words)?;
                let author = self.author_of(&command);
                let change = self.act_watched(author.as_deref(), command, speech, watch)?;
                let again = change.again.and_then(|command| self.again(&command, &words));
                Ok(Tapped { entries: change.entries, said: change.said, again })
            }
        }
    }

    /// The offer that a token stands for.
    pub(super) fn offer_of(&self, token: &str, words: &Words) -> Result<Offer, Trouble> {
        let gone = || Trouble::mend(words, "trouble-screen-changed", &[]);
        let (screen, _) = token.rsplit_once('#').ok_or_else(gone)?;
        let screen: Where = serde_json::from_str(screen).map_err(|_| gone())?;
        self.offers(&screen, words)?.into_iter().find(|offer| offer.action.token == token).ok_or_else(gone)
    }

    /// Who says it: whose hands do the steps, else who holds this device; nobody yet in an empty book.
    fn author_of(&self, command: &Command) -> Option<String> {
        let named = |id| self.book.person(id).and_then(|person| person.name.clone());
        // A job is begun by who holds the device.
        let hands = self.book.in_bay().filter(|_| !matches!(command, Command::OpenJob { .. })).map(|job| job.hands);
        hands.and_then(named).or_else(|| self.settings().person)
    }

    /// What was taken back, as the action that says it again: on the step that it answered.
    fn again(&self, command: &Command, words: &Words) -> Option<Again> {
        let data = serde_json::to_value(command).ok()?;
        let bay = self.bay()?;
        let open = bay.tasks().into_iter().filter(|task| !task.state.is_over());
        let steps = open.map(|task| {
            let at = task.at.map(|at| bay.vehicle.layout.name(at, words.speech().letters));
            (Some(task.step.id.clone()), at)
        });
        steps.chain([(None, None)]).find_map(|(step, at)| {
            let offers = self.offers(&Where::Bay { step: step.clone(), at }, words).ok()?;
            let offer = offers.into_iter().find(|offer| offer.form.says(&data))?;
            Some(Again { step, code: offer.action.code, at: offer.action.at, filled: offer.form.told(&data) })
        })
    }
}
