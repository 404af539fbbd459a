//! What goes out on paper and in files: the job card, and readings and jobs for a spreadsheet.
//!
//! The card is one HTML file that says what was seen and done, by whom and when.
//! A card is true at any step. It holds its pictures and its style, needs no
//! network and no script, reads on a phone and prints on paper. It says what
//! is not known instead of leaving it out.

pub mod bundle;
mod drawing;
mod findings;
pub(crate) mod from_above;
mod head;
mod history;
mod label;
mod learner;
mod learning;
mod nuts;
mod pairs;
pub mod paper;
mod photos;
mod record;
pub mod reminder;
mod sections;
mod shapes;
pub mod spreadsheet;
mod tires;
mod torque;
mod tread;

pub use history::history;
pub use learner::learner;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::ident::{Digest, TireId};
use crate::limits::Rules;
use crate::logbook::{Book, Job, Logbook, Vehicle};
use crate::procedure::{Ask, Bay, Procedure};
use crate::vehicle::Place;
use crate::words::{Arg, FactContext, Words};

/// The style of the card, embedded.
const STYLE: &str = include_str!("report/card.css");

/// A small JPEG of a photo, by its digest; none when its file is not at hand.
pub type SmallPhoto<'a> = dyn Fn(Digest) -> Option<Vec<u8>> + 'a;

/// What a card says of the seal over its job.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SealShown {
    /// The device that sealed the job when it ended, as it stands on paper.
    pub sealed_by: Option<String>,
    /// Entries that came after the seal.
    pub after: usize,
    /// The device that writes the card, when it signs the file.
    pub written_by: Option<String>,
}

/// Everything a card is made from.
struct Sheet<'a> {
    logbook: &'a Logbook,
    book: &'a Book,
    job: &'a Job,
    vehicle: &'a Vehicle,
    procedure: Option<&'a Procedure>,
    words: &'a Words,
    rules: Rules,
    photos: &'a SmallPhoto<'a>,
    seal: SealShown,
}

/// The card of a job: one self-contained HTML file.
///
/// `procedure` is the one the job was opened with; without it the card names
/// steps by their ids and can't say which are still to do. `photos` gives a
/// small JPEG for a digest, to be held in the file.
///
/// A job whose vehicle is not in the book gives a page that says so.
pub fn card(
    logbook: &Logbook,
    book: &Book,
    job: &Job,
    procedure: Option<&Procedure>,
    words: &Words,
    photos: &SmallPhoto<'_>,
) -> String {
    sealed_card(logbook, (book, job), procedure, words, photos, SealShown::default())
}

/// The card of a job as [`card`] makes it, with what it says of the job's seal.
pub fn sealed_card(
    logbook: &Logbook,
    (book, job): (&Book, &Job),
    procedure: Option<&Procedure>,
    words: &Words,
    photos: &SmallPhoto<'_>,
    seal: SealShown,
) -> String {
    let page = match book.vehicle(job.vehicle) {
        Some(vehicle) => {
            Sheet { logbook, book, job, vehicle, procedure, words, rules: job.rules(), photos, seal }.page()
        }
        None => shell(words, &words.text("card-title", &[]), &html! { p { (words.text("card-no-vehicle", &[])) } }),
    };
    page.into_string()
}

/// The labels of the wheels that were stored in a job: one self-contained HTML file to print.
pub fn labels(logbook: &Logbook, book: &Book, job: &Job, words: &Words) -> String {
    let none = |_: Digest| None;
    let title = words.text("label-title", &[]);
    let contents = match book.vehicle(job.vehicle) {
        Some(vehicle) => {
            let rules = job.rules();
            Sheet {
                logbook,
                book,
                job,
                vehicle,
                procedure: None,
                words,
                rules,
                photos: &none,
                seal: SealShown::default(),
            }
            .labels()
        }
        None => html! { p { (words.text("card-no-vehicle", &[])) } },
    };
    shell(words, &title, &contents).into_string()
}

/// The file around a card's contents.
fn shell(words: &Words, title: &str, contents: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(words.speech().lang.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (title) }
                style { (PreEscaped(STYLE)) }
            }
            body { main { (contents) } }
        }
    }
}

impl<'a> Sheet<'a> {
    fn page(&self) -> Markup {
        let number = self.job.number.to_string();
        let title =
            self.say("card-title-of", &[("number", number.into()), ("name", self.vehicle.name.as_str().into())]);
        let contents = html! {
            (self.head())
            (self.spare())
            (self.findings())
            (self.to_do())
            (self.moves())
            (self.stored())
            (self.tread())
            (self.sidewalls())
            (self.pairs())
            (self.nuts())
            (self.pressures())
            (self.gates())
            (self.given())
            (self.tools())
            (self.learning())
            (self.pictures())
            (self.corrections())
            (self.record())
            (self.foot())
        };
        shell(self.words, &title, &contents)
    }

    /// A sentence without anything to fill in.
    fn t(&self, id: &str) -> String {
        self.words.text(id, &[])
    }

    fn say(&self, id: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.words.text(id, args)
    }

    fn place(&self, place: Place) -> String {
        self.words.place(&self.vehicle.layout, Some(place))
    }

    /// Whether the procedure asks for one of these; without a procedure nobody can tell.
    fn asks(&self, asks: &[Ask]) -> bool {
        self.procedure.is_none_or(|procedure| procedure.steps.iter().any(|step| asks.contains(&step.asks)))
    }

    /// A tire by its mark and place; by its place alone when it carries no mark.
    fn tire_at(&self, tire: TireId, place: Place) -> String {
        let coming = self.job.coming();
        if !coming.is_empty() {
            let goes_on = coming.values().any(|laid| *laid == tire);
            let id = if goes_on { "card-goes-on" } else { "card-came-off" };
            return self.say(id, &[("at", self.place(place).into())]);
        }
        match self.job.mark_of(tire) {
            Some(mark) if mark == self.place(place) => mark.to_owned(),
            Some(mark) => self.say("card-tire-at", &[("mark", mark.into()), ("at", self.place(place).into())]),
            None => self.place(place),
        }
    }

    fn context(&self) -> FactContext<'a> {
        FactContext::of_job(self.book, self.job, self.procedure)
    }

    fn bay(&self) -> Option<Bay<'a>> {
        Bay::new(self.procedure?, self.book, self.job)
    }

    /// Places of the vehicle, and any other that a tire was at when the job was opened.
    fn places(&self) -> Vec<Place> {
        let mut places: Vec<Place> = self.vehicle.layout.places().collect();
        places.extend(self.job.fitted.keys().filter(|place| !self.vehicle.layout.has(**place)));
        places
    }

    /// A section with its heading; nothing when it has no contents.
    fn section(&self, id: &str, heading: &str, contents: Option<Markup>) -> Markup {
        section(self.words, id, heading, contents)
    }

    fn table(&self, caption: &str, columns: &[&str], rows: &[Vec<Markup>]) -> Markup {
        let names: Vec<String> = columns.iter().map(|id| self.t(id)).collect();
        table(&self.t(caption), &names, rows)
    }
}

/// A section with its heading; nothing when it has no contents.
fn section(words: &Words, id: &str, heading: &str, contents: Option<Markup>) -> Markup {
    let named = format!("{id}-heading");
    html! {
        @if let Some(contents) = contents {
            section id=(id) aria-labelledby=(named) {
                h2 id=(named) { (words.text(heading, &[])) }
                (contents)
            }
        }
    }
}

/// A table that becomes one block a row on a narrow screen: each cell carries its column's name.
fn table(caption: &str, names: &[String], rows: &[Vec<Markup>]) -> Markup {
    html! {
        table {
            caption { (caption) }
            thead { tr { @for name in names { th scope="col" { (name) } } } }
            tbody {
                @for row in rows {
                    tr {
                        @for (at, (cell, name)) in row.iter().zip(names).enumerate() {
                            @if at == 0 { th scope="row" data-name=(name) { (cell) } }
                            @else { td data-name=(name) { (cell) } }
                        }
                    }
                }
            }
        }
    }
}
