//! shim
use super::{Say, Words};
macro_rules! dbg_say { ($($t:ty),*) => {$(impl Say for $t { fn say(&self, _: &Words) -> String { format!("{self:?}") } })*} }
dbg_say!(crate::photos::PhotoError, crate::photos::Problem);
impl Words {
    /// x
    pub fn judgement(&self, v: &crate::photos::Judgement) -> String {
        format!("{v:?}")
    }
}
