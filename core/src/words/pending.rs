//! shim
use super::{Say, Words};
use crate::vehicle::Layout;
macro_rules! dbg_say { ($($t:ty),*) => {$(impl Say for $t { fn say(&self, _: &Words) -> String { format!("{self:?}") } })*} }
dbg_say!(crate::sidewall::Problem, crate::rotation::Mistake, crate::rotation::Reason, crate::rotation::LookNext);
impl Words {
    /// x
    pub fn verdict(&self, v: &crate::drive::Verdict, _: &Layout) -> String {
        format!("{:?}", v.drive)
    }
    /// x
    pub fn shout(&self, p: &crate::rotation::Plan, _: &Layout) -> String {
        p.pattern.code().into()
    }
    /// x
    pub fn refused(&self, p: &crate::rotation::Refused, _: &Layout) -> String {
        format!("{p:?}")
    }
    /// x
    pub fn spot(&self, p: &crate::store::Spot) -> String {
        format!("{p:?}")
    }
}
impl crate::store::ProblemKind {
    /// x
    pub fn code(&self) -> String {
        serde_json::to_value(self)
            .ok()
            .and_then(|v| v.get("kind").and_then(|k| k.as_str().map(str::to_owned)))
            .unwrap_or_default()
    }
}
/// x
pub mod report {
    use super::*;
    use crate::{
        ident::Digest,
        logbook::{Book, Job},
        procedure::Procedure,
    };
    /// x
    pub fn card(
        _: &Book,
        job: &Job,
        _: Option<&Procedure>,
        _: &Words,
        _: &dyn Fn(Digest) -> Option<Vec<u8>>,
    ) -> String {
        format!("<html>{}</html>", job.number)
    }
}
