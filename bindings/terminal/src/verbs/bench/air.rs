//! What to set a tire to in this shop, so that it is right when cold.

use clap::Args;
use lugbook::engine::Trouble;
use lugbook::inflation::{self, Ask, Fitted, Warmth};
use lugbook::measure::{PressureUnit, TemperatureUnit};
use lugbook::vehicle::Class;
use lugbook::words::{Say, Words};
use serde_json::json;

use super::super::codes::code;
use super::{optional, reading, word};
use crate::answer::{Answer, Page};
use crate::options::{Options, mend};

/// What is known of the tire.
#[derive(Debug, Args)]
#[command(after_help = "\
Stand aside when inflating. Never refill a tire run flat before it is inspected.

Example:
  lugbook inflate --placard \"35 psi\" --shop \"70 F\" --outside \"20 F\" \\
    --max \"44 psi\" --cold")]
pub struct Inflate {
    /// The placard's cold pressure for the axle; leave it out when not known
    #[arg(long, value_name = "PRESSURE", allow_hyphen_values = true)]
    placard: Option<String>,
    /// The temperature where the tire stands
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    shop: String,
    /// The temperature it will be cold at, outside
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    outside: Option<String>,
    /// The largest pressure molded on the sidewall
    #[arg(long, value_name = "PRESSURE", allow_hyphen_values = true)]
    max: Option<String>,
    /// The pressure as found
    #[arg(long, value_name = "PRESSURE", allow_hyphen_values = true)]
    found: Option<String>,
    /// Not driven more than a couple of miles in three hours
    #[arg(long)]
    cold: bool,
    /// Driven lately
    #[arg(long, conflicts_with = "cold")]
    warm: bool,
    /// Whether the tire is the placard's
    #[arg(long, default_value = "not-compared",
          value_parser = code::<Fitted>(&["as-placard", "size-differs", "load-differs", "not-compared"]))]
    fitted: Fitted,
    /// The class of vehicle
    #[arg(long, default_value = "car",
          value_parser = code::<Class>(&["car", "light-truck", "truck", "bus", "light-trailer", "trailer"]))]
    class: Class,
    /// A tire found low was taken off and inspected inside
    #[arg(long)]
    inspected: bool,
    /// The gauge's step
    #[arg(long, value_name = "PRESSURE", allow_hyphen_values = true)]
    step: Option<String>,
}

impl Inflate {
    /// Computes it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let pressure = |option: &str, text: &Option<String>| optional::<PressureUnit>(&words, option, text.as_ref());
        let ask = Ask {
            placard: pressure("--placard", &self.placard)?,
            sidewall_max: pressure("--max", &self.max)?,
            shop: reading::<TemperatureUnit>(&words, "--shop", &self.shop)?,
            outside: optional::<TemperatureUnit>(&words, "--outside", self.outside.as_ref())?,
            found: pressure("--found", &self.found)?,
            warmth: match (self.cold, self.warm) {
                (true, _) => Warmth::Cold,
                (_, true) => Warmth::Warm,
                _ => Warmth::NotKnown,
            },
            fitted: self.fitted,
            class: self.class,
            inspected: self.inspected,
            step: pressure("--step", &self.step)?,
        };
        let unit = ask.placard.or(ask.found).map_or(PressureUnit::Psi, |reading| reading.unit());
        let setting = inflation::cold_setting(&ask)
            .map_err(|why| mend(words.misread::<PressureUnit>(self.placard.as_deref().unwrap_or_default(), &why)))?;
        let mut page = Page::default();
        page.line(&setting.say(&words));
        let mut findings = Vec::new();
        for finding in &setting.findings {
            let sentence = words.inflation_finding(finding, unit);
            page.indented("- ", &sentence);
            let mut data = serde_json::to_value(finding).unwrap_or_default();
            if let Some(object) = data.as_object_mut() {
                object.insert("sentence".to_owned(), json!(sentence));
            }
            findings.push(data);
        }
        let quantity = |reading: Option<lugbook::measure::Pressure>| reading.map(|reading| words.quantity(&reading));
        let mut view = json!({"set": quantity(setting.set), "cold": quantity(setting.cold), "findings": findings});
        word(&words, &mut view);
        Answer::new(&view, page)
    }
}
