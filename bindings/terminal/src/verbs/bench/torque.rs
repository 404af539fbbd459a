//! What to set a wrench to, and in which order.

use clap::Args;
use lugbook::engine::Trouble;
use lugbook::fastener::{self, Bar, Printed, TorqueSpec, Wrench};
use lugbook::fastening::{self, Adapter, Request};
use lugbook::measure::{DistanceUnit, SpanUnit, TorqueUnit};
use lugbook::words::{Say, Units, Words};
use serde_json::json;

use super::{optional, reading, word};
use crate::answer::{Answer, Page};
use crate::options::{AtWord, Options, mend, shorten};
use crate::tongue::say;

/// A specification and a wrench.
#[derive(Debug, Args)]
#[command(after_help = "\
Give what the vehicle's manual prints. Never guess a torque.

Examples:
  lugbook tighten --range \"125..150 N.m\" --studs 5 --wrench 4% --step \"1 N.m\"
  lugbook tighten --spec \"100 ft.lb\" --studs 6 --wrench 4% --step \"5 ft.lb\" \\
    --bar \"80 ft.lb\" --adapter \"12 in + 2 in @ 90\"")]
pub struct Tighten {
    /// The printed range, or several printings of it
    #[arg(long, required_unless_present = "spec", allow_hyphen_values = true)]
    range: Vec<String>,
    /// A printed single value
    #[arg(long, conflicts_with = "range", allow_hyphen_values = true)]
    spec: Vec<String>,
    /// Studs on the wheel
    #[arg(long, value_name = "N")]
    studs: u8,
    /// The wrench's accuracy
    #[arg(long, value_name = "PERCENT", allow_hyphen_values = true)]
    wrench: String,
    /// The step of its scale
    #[arg(long, value_name = "TORQUE", allow_hyphen_values = true)]
    step: String,
    /// A torque-limiting bar for the first tightening
    #[arg(long, value_name = "TORQUE", allow_hyphen_values = true)]
    bar: Option<String>,
    /// An extension on the wrench: "LEVER + EXTENSION @ DEGREES"
    #[arg(long, value_name = "LENGTHS", allow_hyphen_values = true)]
    adapter: Option<String>,
}

fn adapter(words: &Words, text: &str) -> Result<Adapter, Trouble> {
    let bad = || mend(say("no-adapter", &[("given", shorten(text).into())])).at_word("--adapter");
    let (lengths, angle) = text.split_once('@').unwrap_or((text, "0"));
    let (lever, extension) = lengths.split_once('+').ok_or_else(bad)?;
    let angle = angle.trim().trim_end_matches(['°', ' ']).parse::<f64>().map_err(|_| bad())?;
    Ok(Adapter {
        lever: reading::<SpanUnit>(words, "--adapter", lever.trim())?,
        extension: reading::<SpanUnit>(words, "--adapter", extension.trim())?,
        angle_degrees: angle,
    })
}

impl Tighten {
    /// Computes it.
    pub fn run(self, options: &Options) -> Result<Answer, Trouble> {
        let words = Words::new(options.speech());
        let (option, texts) = if self.spec.is_empty() { ("--range", &self.range) } else { ("--spec", &self.spec) };
        let mut printed = Vec::new();
        for text in texts {
            let one: Printed = text
                .parse()
                .map_err(|_| mend(say("no-printed-torque", &[("given", shorten(text).into())])).at_word(option))?;
            printed.push(one);
        }
        let spec = TorqueSpec::printed(printed);
        let accuracy = fastener::accuracy_of(&self.wrench)
            .map_err(|_| mend(say("no-accuracy", &[("given", shorten(&self.wrench).into())])).at_word("--wrench"))?;
        let wrench = Wrench::new(accuracy, reading::<TorqueUnit>(&words, "--step", &self.step)?);
        let bar = optional::<TorqueUnit>(&words, "--bar", self.bar.as_ref())?.map(Bar::new);
        let adapter = self.adapter.as_deref().map(|text| adapter(&words, text)).transpose()?;
        let mut request = Request::new(&spec, &wrench, self.studs);
        request.bar = bar.as_ref();
        request.adapter = adapter.as_ref();
        if options.units == Units::Metric {
            request.distance = DistanceUnit::Kilometre;
        }
        let plan = fastening::plan(&request).map_err(|stop| mend(stop.say(&words)))?;
        let unit = plan.target.unit();

        let mut page = Page::default();
        for sentence in words.tightening(&plan) {
            page.line(&sentence);
        }
        page.gap();
        for (number, round) in plan.passes.iter().enumerate() {
            page.indented(&format!("{}  ", number + 1), &round.say(&words));
        }
        if let Some(bar) = &plan.bar {
            page.indented("-  ", &bar.say(&words));
        }
        for recheck in &plan.recheck {
            page.indented("-  ", &recheck.say(&words));
        }
        for caution in &plan.cautions {
            page.indented("!  ", &words.tightening_caution(caution, unit));
        }

        let mut view = serde_json::to_value(&plan).unwrap_or_default();
        word(&words, &mut view);
        view["margin"] = json!(plan.margin.map(|margin| (margin * 1e4).round() / 1e4));
        let sentences = |list: &mut serde_json::Value, sentences: Vec<String>| {
            for (item, sentence) in list.as_array_mut().into_iter().flatten().zip(sentences) {
                if let Some(object) = item.as_object_mut() {
                    object.insert("sentence".to_owned(), json!(sentence));
                }
            }
        };
        sentences(&mut view["passes"], plan.passes.iter().map(|round| round.say(&words)).collect());
        sentences(&mut view["recheck"], plan.recheck.iter().map(|recheck| recheck.say(&words)).collect());
        sentences(
            &mut view["cautions"],
            plan.cautions.iter().map(|caution| words.tightening_caution(caution, unit)).collect(),
        );
        Answer::new(&view, page)
    }
}
