//! shim
use super::{Say, Words};
use crate::vehicle::Layout;
macro_rules! dbg_say { ($($t:ty),*) => {$(impl Say for $t { fn say(&self, _: &Words) -> String { format!("{self:?}") } })*} }
dbg_say!(crate::photos::PhotoError, crate::photos::Problem, crate::sidewall::Problem);
impl Words {
    /// x
    pub fn judgement(&self, v: &crate::photos::Judgement) -> String {
        format!("{v:?}")
    }
    /// x
    pub fn verdict(&self, v: &crate::drive::Verdict, _: &Layout) -> String {
        format!("{:?}", v.drive)
    }
}
/// x
pub mod report {
    use super::Words;
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
