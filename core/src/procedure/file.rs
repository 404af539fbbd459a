//! A procedure's file: reading and checking it.

use std::collections::BTreeSet;

use serde::Deserialize;

use super::{Ask, Condition};
use crate::caution::{CautionId, Circumstance};
use crate::entry::{Kind, LookAt};
use crate::lifting::Act;

/// How often a step is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// Once in the job.
    Job,
    /// At each wheel on the ground.
    Wheel,
    /// At each wheel and the spare.
    Place,
    /// At each wheel that the plan moves, or that otherwise comes off.
    Moving,
    /// At each place where something is not sound.
    Found,
    /// At each wheel of the set that was brought.
    Coming,
    /// At each wheel on a hub that the plan moves or that was named: not at the spare's carrier.
    Hub,
    /// At each wheel whose nuts were tightened at the vehicle's last visit; at
    /// every wheel when this book knows of none.
    Loosened,
    /// At each dual pair of which a wheel comes off, by its outer wheel.
    Pair,
    /// At each outer or single wheel whose nuts are turned.
    Outer,
    /// At each inner wheel with nuts of its own that are turned.
    Inner,
    /// At each hub that is laid bare: single and inner wheels that come off.
    Bare,
}

/// One step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// Its id within the procedure.
    pub id: String,
    /// The name of its sentence; none when the file holds its own text.
    pub says: Option<String>,
    /// A shop's own text.
    pub text: Option<String>,
    /// What it asks for.
    pub asks: Ask,
    /// How often.
    pub per: Per,
    /// It is asked at each such action of the order of lifts, in that order.
    pub act: Option<Act>,
    /// All circumstances under which it applies.
    pub when: Vec<String>,
    /// It applies only after this step was answered so.
    pub after: Option<(String, String)>,
    /// Steps of one round are done place by place.
    pub round: Option<String>,
    /// What holds it.
    pub needs: Vec<Condition>,
    /// May be skipped with a reason.
    pub may_skip: bool,
    /// Answered in the van, away from the road.
    pub van: bool,
    /// The choices it offers.
    pub choices: Vec<String>,
    /// The parts that it wants looked at.
    pub parts: Vec<LookAt>,
    /// The cautions that stand before it, by code.
    pub cautions: Vec<String>,
    /// The specification that is shown with it, when it is on the shelf.
    pub shows: Option<Kind>,
}

/// A procedure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Procedure {
    /// Its id.
    pub id: String,
    /// Its version; a job keeps the one it was opened with.
    pub version: u32,
    /// The name of its title's sentence; none when the file holds its own.
    pub title: Option<String>,
    /// A shop's own title.
    pub text: Option<String>,
    /// The kinds of vehicle it is meant for; empty: any.
    pub fits: Vec<Circumstance>,
    /// The circumstances that opening a job must settle, one of each row.
    pub settle: Vec<Vec<String>>,
    /// Its steps in order.
    pub steps: Vec<Step>,
}

/// Why a file is no procedure, and where.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}, line {line}: {kind:?}")]
pub struct Bad {
    /// The file.
    pub file: String,
    /// The line, from 1.
    pub line: usize,
    /// Why.
    pub kind: BadKind,
}

/// Why a file is no procedure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BadKind {
    /// Not TOML, or a key or value that is not known.
    Unreadable(String),
    /// Larger than 256 kB.
    TooLarge,
    /// No steps, or more than 200.
    StepCount(usize),
    /// Two steps have one id.
    TwiceTheId(String),
    /// A step has neither sentence nor text, or both.
    NoSentence(String),
    /// A choice step without choices, or choices on another.
    Choices(String),
    /// It comes after a step that does not stand before it.
    After(String),
    /// A caution that is not known.
    Caution(String),
    /// A circumstance that is not known.
    Circumstance(String),
    /// Its id is not made of letters, digits and hyphens, 64 at most: it names the procedure everywhere.
    Id,
    /// A condition waits for an answer that no step before asks for.
    NothingToMeet {
        /// The step.
        step: String,
        /// The condition.
        condition: Condition,
    },
    /// A danger of what the procedure does stands before none of its steps.
    DangerLeftOut(CautionId),
    /// The last step is not the signature.
    NoSignature,
    /// A step that works on nuts or under the vehicle lacks its gate.
    NoGate {
        /// The step.
        step: String,
        /// The condition it must have.
        condition: Condition,
    },
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawProcedure {
    id: String,
    version: u32,
    title: Option<String>,
    text: Option<String>,
    #[serde(default)]
    fits: Vec<Circumstance>,
    #[serde(default)]
    settle: Vec<Vec<String>>,
    #[serde(default)]
    step: Vec<toml::Spanned<RawStep>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RawStep {
    id: String,
    says: Option<String>,
    text: Option<String>,
    asks: Ask,
    #[serde(default = "once")]
    per: Per,
    act: Option<Act>,
    #[serde(default)]
    when: Vec<String>,
    after: Option<[String; 2]>,
    round: Option<String>,
    #[serde(default)]
    needs: Vec<Condition>,
    #[serde(default)]
    may_skip: bool,
    #[serde(default)]
    van: bool,
    #[serde(default)]
    choices: Vec<String>,
    #[serde(default)]
    parts: Vec<LookAt>,
    #[serde(default)]
    cautions: Vec<String>,
    shows: Option<Kind>,
}

fn once() -> Per {
    Per::Job
}

/// The largest file that is read.
const LARGEST: usize = 256 * 1024;

/// The gates that no file can leave out: what hands do near a raised vehicle, and what a signature stands for.
const FIRM: &[(Ask, Condition)] = &[
    (Ask::Started, Condition::MarkFits),
    (Ask::Snug, Condition::Started),
    (Ask::Lowered, Condition::AllSnug),
    (Ask::Lowered, Condition::AllClear),
    (Ask::Final, Condition::Down),
    (Ask::Final, Condition::TorqueKnown),
    (Ask::Signature, Condition::FinalDone),
    (Ask::Signature, Condition::UnsafeTold),
    (Ask::Rechecked, Condition::TorqueKnown),
];

/// Where stands or a lift hold the vehicle.
const FIRM_IN_THE_SHOP: &[(Ask, Condition)] = &[(Ask::WheelOff, Condition::Held)];

/// Where only a jack holds it: nobody starts at a place that is not safe.
const FIRM_AT_THE_ROADSIDE: &[(Ask, Condition)] = &[
    (Ask::Cracked, Condition::PlaceSafe),
    (Ask::RaisedClear, Condition::PlaceSafe),
    (Ask::RaisedClear, Condition::Cracked),
    (Ask::WheelOff, Condition::Clear),
];

impl Procedure {
    /// Reads and checks a file.
    ///
    /// # Errors
    /// With the line and the reason; nothing of a bad file is used.
    ///
    /// ```
    /// use lugbook::procedure::Procedure;
    /// let bad = Procedure::parse("mine.toml", "id = \"x\"\nversion = 1\n\n[[step]]\nid = 3\n").unwrap_err();
    /// assert_eq!(bad.line, 5);
    /// ```
    pub fn parse(file: &str, text: &str) -> Result<Self, Bad> {
        let bad = |line, kind| Bad { file: file.to_owned(), line, kind };
        let line_of = |byte: usize| text.bytes().take(byte).filter(|b| *b == b'\n').count().saturating_add(1);
        if text.len() > LARGEST {
            return Err(bad(1, BadKind::TooLarge));
        }
        let raw: RawProcedure = toml::from_str(text).map_err(|why| {
            let line = why.span().map_or(1, |span| line_of(span.start));
            bad(line, BadKind::Unreadable(why.message().to_owned()))
        })?;
        if let Some(code) = raw.settle.iter().flatten().find(|code| Circumstance::of_code(code).is_none()) {
            return Err(bad(1, BadKind::Circumstance(code.clone())));
        }
        let plain = |c: char| c.is_ascii_alphanumeric() || c == '-';
        if raw.id.is_empty() || raw.id.len() > 64 || !raw.id.chars().all(plain) {
            return Err(bad(1, BadKind::Id));
        }
        if raw.step.is_empty() || raw.step.len() > 200 {
            return Err(bad(1, BadKind::StepCount(raw.step.len())));
        }
        let roadside = raw.settle.iter().flatten().any(|code| code == Circumstance::Roadside.code());
        let mut seen = BTreeSet::new();
        let mut steps: Vec<Step> = Vec::with_capacity(raw.step.len());
        for spanned in raw.step {
            let line = line_of(spanned.span().start);
            let step = spanned.into_inner();
            check(&step, &steps, &mut seen, roadside).map_err(|kind| bad(line, kind))?;
            steps.push(Step {
                id: step.id,
                says: step.says,
                text: step.text,
                asks: step.asks,
                per: step.per,
                act: step.act,
                when: step.when,
                after: step.after.map(|[step, answer]| (step, answer)),
                round: step.round,
                needs: step.needs,
                may_skip: step.may_skip,
                van: step.van,
                choices: step.choices,
                parts: match step.asks {
                    Ask::Looks if step.parts.is_empty() => Ask::PARTS.to_vec(),
                    _ => step.parts,
                },
                cautions: step.cautions,
                shows: step.shows,
            });
        }
        if steps.last().map(|step| step.asks) != Some(Ask::Signature) {
            return Err(bad(line_of(text.len()), BadKind::NoSignature));
        }
        if let Some(danger) = danger_left_out(&steps, &raw.fits, &raw.settle) {
            return Err(bad(line_of(text.len()), BadKind::DangerLeftOut(danger)));
        }
        Ok(Self {
            id: raw.id,
            version: raw.version,
            title: raw.title,
            text: raw.text,
            fits: raw.fits,
            settle: raw.settle,
            steps,
        })
    }

    /// The step of this id.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }
}

fn check(step: &RawStep, before: &[Step], seen: &mut BTreeSet<String>, roadside: bool) -> Result<(), BadKind> {
    if !seen.insert(step.id.clone()) {
        return Err(BadKind::TwiceTheId(step.id.clone()));
    }
    if step.says.is_some() == step.text.is_some() {
        return Err(BadKind::NoSentence(step.id.clone()));
    }
    if (step.asks == Ask::Choice) == step.choices.is_empty() {
        return Err(BadKind::Choices(step.id.clone()));
    }
    if let Some([after, answer]) = &step.after {
        let known = before.iter().any(|b| b.id == *after && b.choices.contains(answer));
        if !known {
            return Err(BadKind::After(after.clone()));
        }
    }
    if let Some(code) = step.cautions.iter().find(|code| CautionId::of_code(code).is_none()) {
        return Err(BadKind::Caution(code.clone()));
    }
    if let Some(code) = step.when.iter().find(|code| Circumstance::of_code(code).is_none()) {
        return Err(BadKind::Circumstance(code.clone()));
    }
    let firm = if roadside { FIRM_AT_THE_ROADSIDE } else { FIRM_IN_THE_SHOP };
    for (asks, condition) in FIRM.iter().chain(firm) {
        if step.asks == *asks && !step.needs.contains(condition) {
            return Err(BadKind::NoGate { step: step.id.clone(), condition: *condition });
        }
    }
    for condition in &step.needs {
        if condition.needs_an_answer() && !before.iter().any(|b| condition.is_answered_by(b)) {
            return Err(BadKind::NothingToMeet { step: step.id.clone(), condition: *condition });
        }
    }
    Ok(())
}

/// The first danger that a procedure which raises a vehicle names before none of its steps.
fn danger_left_out(steps: &[Step], fits: &[Circumstance], settle: &[Vec<String>]) -> Option<CautionId> {
    let settled = settle.iter().flatten().filter_map(|code| Circumstance::of_code(code));
    let here: Vec<Circumstance> = settled.chain(fits.iter().copied()).collect();
    let raises = steps.iter().any(|step| matches!(step.asks, Ask::RaisedClear | Ask::RaisedFull | Ask::Held));
    let named = |caution: CautionId| steps.iter().any(|step| step.cautions.iter().any(|code| code == caution.code()));
    CautionId::ALL
        .iter()
        .copied()
        .filter(|caution| raises && !caution.may_be_left_out() && caution.applies(&here))
        .find(|caution| !named(*caution))
}
