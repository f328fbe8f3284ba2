//! Wording at the foot of every page that names a treatment.

pub(crate) const LAW: &str = "Law and limits: ask your local regulator";
pub(crate) const HELP: &str = "If something has happened: whom to call";
pub(crate) const NUMBERS_ARE_RECALLED: &str =
    "These numbers are from memory: check those for where you live before you need them.";
